//! The window in every language: nothing left in English, figures by locale, and no label cut or run over by another,
//! with English, German and text two fifths longer, at the sizes and scales that the window may have.

mod in_hand;

use crate::hand;
use std::collections::BTreeSet;

use crate::hand::{Desk, example, plans, settle, window};
use desktop::Opening;
use desktop::editor::{ManyMessage, Message, Page, ShapesMessage};
use desktop::tool::{Drawn, Tool};
use drawing::Thing;
use egui::{Key, Modifiers, Rect, Shape};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Plan;
use words::texts::{Commands, Many, Rolls, Window as WindowText, wordings};
use words::{Language, Units, Words};

/// The usual window and the smallest; the smallest and a large one as tall as their longest page.
const SIZES: [[f32; 2]; 4] = [[1280.0, 800.0], [900.0, 600.0], [1920.0, 4200.0], [900.0, 4200.0]];

/// The example with something on every page: soil, wind, gates, a pin, a side that rises, a fault, grass, readings.
fn rich() -> Plan {
    plans::faulty(plans::stated(plans::read_on(example())))
}

const GERMAN: Words = Words { language: Language::German, units: Units::Metric };

/// Height of the head.
const HEAD: f32 = 44.0;

/// A state of the window: its name, and what is said to come to it.
fn states() -> Vec<(&'static str, Vec<Message>)> {
    let pages = [
        ("ground", Page::Ground),
        ("run", Page::Run),
        ("power", Page::Power),
        ("moves", Page::Moves),
        ("book", Page::Book),
        ("sheet", Page::Sheet),
    ];
    let mut states: Vec<_> = pages.map(|(name, page)| (name, vec![Message::Open(page)])).into();
    states.push(("shapes", vec![Message::Shapes(ShapesMessage::Open(true))]));
    states.push(("question", vec![Message::AskRolls]));
    states.push(("compare", vec![Message::Compare(true)]));
    states.push(("list", vec![Message::Many(ManyMessage::List(true))]));
    states.push(("unroll", vec![Message::UseOn(Page::Run, Tool::outline(Drawn::Run))]));
    states
}

fn open(words: Words, size: [f32; 2], messages: Vec<Message>) -> Desk {
    let opening = Opening { plan: rich(), words, ..Opening::default() };
    let mut desk = hand::built(Harness::builder().with_size(size), opening, messages);
    hand::settle(&mut desk);
    desk
}

/// A text that is painted.
struct Painted {
    text: String,
    rect: Rect,
    clip: Rect,
    elided: bool,
    /// Where a line ends inside a word, what stands before and after.
    broken: Option<String>,
    /// How many opaque grounds were painted before it.
    over: usize,
}

/// Where a line of a text ends inside a word. A line may end at a space, after a hyphen, and where one was asked for.
fn broken(galley: &egui::Galley) -> Option<String> {
    galley.rows.windows(2).find_map(|two| {
        let [above, below] = [&two[0], &two[1]].map(|row| row.glyphs.iter().map(|glyph| glyph.chr).collect::<String>());
        let (last, first) = (above.chars().last()?, below.chars().next()?);
        let inside = !two[0].ends_with_newline && last.is_alphanumeric() && first.is_alphanumeric();
        inside.then(|| format!("{above:?} and {below:?}"))
    })
}

/// Every text that is painted, at least in part, and the opaque grounds that hide what was painted before.
fn painted(desk: &Desk) -> (Vec<Painted>, Vec<Rect>) {
    fn of(shape: &Shape, clip: Rect, found: &mut (Vec<Painted>, Vec<Rect>)) {
        match shape {
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| of(shape, clip, found)),
            Shape::Rect(shape) if shape.fill.is_opaque() => found.1.push(shape.rect.intersect(clip)),
            // Plates with a cut corner.
            Shape::Path(shape) if shape.closed && shape.fill.is_opaque() && shape.points.len() < 7 => {
                found.1.push(shape.visual_bounding_rect().intersect(clip));
            }
            Shape::Text(shape) => {
                let rect = shape.visual_bounding_rect();
                if rect.is_positive() && clip.intersects(rect) && shape.angle == 0.0 {
                    let (text, elided) = (shape.galley.text().to_owned(), shape.galley.elided);
                    let broken = broken(&shape.galley);
                    found.0.push(Painted { text, rect, clip, elided, broken, over: found.1.len() });
                }
            }
            _ => {}
        }
    }
    let mut found = (Vec::new(), Vec::new());
    desk.output().shapes.iter().for_each(|one| of(&one.shape, one.clip_rect, &mut found));
    found
}

/// What is cut: shortened, broken inside a word, reaching out of its place to a side, or run over by another.
fn cut(desk: &Desk) -> Vec<String> {
    let (painted, grounds) = painted(desk);
    let language = window(desk).editor().words().language;
    let leads = |wording: &&str| wording.ends_with('…');
    let wordings: Vec<String> = wordings(language).into_iter().filter(leads).map(str::to_owned).collect();
    let mut cut = Vec::new();
    for one in &painted {
        // Paper is shortened by its own pen; what leads to a question ends in dots by itself.
        let dotted = one.text.ends_with('…') && !wordings.iter().any(|wording| one.text.ends_with(wording.as_str()));
        // What the keeper named may be shortened where the window is small.
        if (one.elided || dotted) && one.text != window(desk).editor().plan().title {
            cut.push(format!("shortened: {:?}", one.text));
        }
        if let Some(broken) = &one.broken {
            cut.push(format!("broken inside a word, between {broken}: {:?}", one.text));
        }
        let (left, right) = (one.clip.left() - one.rect.left(), one.rect.right() - one.clip.right());
        if left > 0.5 || right > 0.5 {
            cut.push(format!("out of its place by {:.1}: {:?}", left.max(right), one.text));
        }
    }
    // In the head a plate stands beside names, never over a part of one.
    for one in painted.iter().filter(|one| one.rect.bottom() < HEAD) {
        let seen = one.rect.intersect(one.clip);
        let mut over = grounds[one.over..].iter().map(|ground| ground.intersect(seen));
        if let Some(over) = over.find(|over| over.width() > 0.5 && over.height() > 2.0) {
            cut.push(format!("covered by {:.1}: {:?}", over.width(), one.text));
        }
    }
    for (index, one) in painted.iter().enumerate() {
        for other in &painted[index + 1..] {
            let both = one.rect.intersect(one.clip).intersect(other.rect).intersect(other.clip);
            let hidden = grounds[one.over..other.over].iter().any(|ground| ground.contains_rect(both));
            if both.width() > 1.0 && both.height() > 2.0 && one.text != other.text && !hidden {
                let (wide, tall) = (both.width(), both.height());
                cut.push(format!("over each other by {wide:.1} x {tall:.1}: {:?} and {:?}", one.text, other.text));
            }
        }
    }
    cut
}

fn none_cut(language: Language) {
    let mut found = Vec::new();
    let words = |units| Words { language, units };
    for (name, messages) in states() {
        for size in SIZES {
            let desk = open(words(Units::Metric), size, messages.clone());
            found.extend(cut(&desk).into_iter().map(|cut| format!("{name} at {size:?}: {cut}")));
        }
        // Feet and pounds are longer, and the narrow page is where that tells.
        let desk = open(words(Units::Feet), SIZES[3], messages);
        found.extend(cut(&desk).into_iter().map(|cut| format!("{name} in feet: {cut}")));
    }
    assert!(found.is_empty(), "{} labels in {language:?}:\n{}", found.len(), found.join("\n"));
}

#[test]
fn no_label_is_cut_in_english() {
    none_cut(Language::English);
}

#[test]
fn no_label_is_cut_in_german() {
    none_cut(Language::German);
}

#[test]
fn no_label_is_cut_where_text_is_two_fifths_longer() {
    none_cut(Language::Longer);
}

/// What the window says, on the screen and to a screen reader.
fn said(desk: &Desk) -> Vec<String> {
    let mut said: Vec<String> = painted(desk).0.into_iter().map(|one| one.text).collect();
    for node in desk.root().children_recursive() {
        let node = node.accesskit_node();
        said.extend([node.label(), node.value(), node.description()].into_iter().flatten());
    }
    said
}

/// The pieces between the places of English wordings that are long enough to be told from German, and names.
fn english() -> BTreeSet<String> {
    let pieces = |wording: &'static str| wording.split(['{', '}']).step_by(2);
    let german = wordings(Language::German);
    wordings(Language::English)
        .into_iter()
        .flat_map(pieces)
        .map(|piece| piece.trim_matches(|letter: char| !letter.is_alphanumeric()))
        .filter(|piece| piece.chars().filter(|letter| letter.is_alphabetic()).count() > 11)
        .filter(|piece| !german.iter().any(|wording| wording.contains(piece)))
        .map(str::to_owned)
        .collect()
}

/// A decimal point between figures, where it parts no thousands.
fn pointed(text: &str) -> bool {
    let letters: Vec<char> = text.chars().collect();
    letters.windows(3).enumerate().any(|(at, three)| {
        let point = three[1] == '.' && three[0].is_ascii_digit() && three[2].is_ascii_digit();
        let after = letters[at + 2..].iter().take_while(|letter| letter.is_ascii_digit()).count();
        point && after != 3
    })
}

#[test]
fn in_german_nothing_is_left_in_english_and_figures_have_commas() {
    let english = english();
    assert!(english.len() > 800, "{}", english.len());
    let (mut left, mut commas) = (BTreeSet::new(), 0);
    for (name, messages) in states() {
        let desk = open(GERMAN, [1280.0, 4200.0], messages);
        for text in said(&desk) {
            if let Some(piece) = english.iter().find(|piece| text.contains(piece.as_str())) {
                left.insert(format!("{name}: {piece:?} in {text:?}"));
            }
            // A paragraph of a law is no figure.
            if pointed(&text) && !text.contains("CFR") {
                left.insert(format!("{name}: a point in {text:?}"));
            }
            let letters: Vec<char> = text.chars().collect();
            let comma = |three: &[char]| three[0].is_ascii_digit() && three[1] == ',' && three[2].is_ascii_digit();
            commas += usize::from(letters.windows(3).any(comma));
        }
    }
    let left: Vec<String> = left.into_iter().collect();
    assert!(left.is_empty(), "{}", left.join("\n"));
    assert!(commas > 100, "{commas}");
}

#[test]
fn in_german_keys_are_called_as_on_a_german_keyboard() {
    const ENGLISH: [&str; 6] = ["Ctrl", "Shift", "Enter", "Backspace", "Delete", "Space"];
    let texts = |desk: &Desk| painted(desk).0.into_iter().map(|one| one.text).collect::<Vec<_>>();
    let in_english = |texts: &[String]| {
        let key = |text: &&String| text.split_whitespace().any(|word| ENGLISH.contains(&word));
        texts.iter().filter(key).cloned().collect::<Vec<_>>()
    };
    let words = Words { language: Language::German, units: Units::Metric };
    let tall = [1280.0, 1400.0];
    let unrolling = open(GERMAN, tall, vec![Message::UseOn(Page::Run, Tool::outline(Drawn::Run))]);
    let on_page = texts(&unrolling);
    for key in ["Eingabe", "Tab", "Alt", "Rücktaste", "Esc"] {
        assert!(on_page.iter().any(|text| text == key), "{key} is not among {on_page:?}");
    }
    assert_eq!(in_english(&on_page), [""; 0]);
    let mut desk = open(GERMAN, tall, vec![Message::Pick(Some(Thing::Run { run: 0 }))]);
    assert!(texts(&desk).iter().any(|text| text == "Strg K"), "the head names the keys that list the commands");
    for (name, keys) in [
        (words.text(Many::Copy), "Strg C"),
        (words.text(Many::PasteHere), "Strg Umschalt V"),
        (words.text(Commands::Remove), "Entf"),
        (words.text(Commands::LeaveTool), "Esc"),
    ] {
        desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
        desk.run();
        let all = texts(&desk);
        assert_eq!(in_english(&all), [""; 0]);
        desk.event(egui::Event::Text(name.to_owned()));
        desk.run();
        assert!(texts(&desk).iter().any(|text| text == keys), "{name}: {keys} is not among {:?}", texts(&desk));
        desk.key_press(Key::Escape);
        desk.run();
    }
}

/// Windows and the scale of all that is in them: the least, the largest, and screens with more pixels to a point.
const SCREENS: [([f32; 2], f32); 7] = [
    ([900.0, 600.0], 0.75),
    ([900.0, 600.0], 1.0),
    ([1280.0, 800.0], 1.25),
    ([1920.0, 1080.0], 1.5),
    ([1920.0, 1080.0], 2.0),
    ([3840.0, 2160.0], 1.0),
    ([3840.0, 2160.0], 2.0),
];

/// A window of that many pixels, each point that many pixels wide; one too small for its scale is not made smaller
/// than it can be.
fn on_screen(language: Language, pixels: [f32; 2], scale: f32, page: Page) -> Desk {
    let size = [(pixels[0] / scale).max(900.0), (pixels[1] / scale).max(600.0)];
    let words = Words { language, units: Units::Metric };
    let opening = Opening { plan: rich(), words, ..Opening::default() };
    let builder = Harness::builder().with_size(size).with_pixels_per_point(scale);
    let mut desk = hand::built(builder, opening, vec![Message::Open(page)]);
    settle(&mut desk);
    desk
}

#[test]
fn at_every_size_and_scale_pages_figures_and_what_is_found_are_in_sight() {
    let names = ["Gelände", "Auslauf", "Strom", "Umzüge", "Buch", "Blatt"];
    for (pixels, scale) in SCREENS {
        for page in Page::ALL {
            let desk = on_screen(Language::German, pixels, scale, page);
            let at = format!("{page:?} at {pixels:?} px and {scale}");
            let all = desk.ctx.content_rect();
            let painted = painted(&desk).0;
            let in_sight = |text: &str| {
                let whole =
                    |one: &&Painted| one.clip.expand(0.5).contains_rect(one.rect) && all.contains_rect(one.rect);
                painted.iter().filter(whole).any(|one| one.text.starts_with(text))
            };
            for name in names {
                assert!(in_sight(name), "{at}: {name} is not in sight");
            }
            for figure in ["Linie", "Pfähle", "Netze", "Schwächster"] {
                assert!(in_sight(figure), "{at}: {figure} is not in sight");
            }
            let nodes: Vec<String> =
                desk.root().children_recursive().filter_map(|node| node.accesskit_node().label()).collect();
            let found = nodes.iter().any(|label| label.starts_with("Warnung") || label.starts_with("Hinweise"));
            assert!(found, "{at}: nothing leads to what was found: {nodes:?}");
            assert_eq!(cut(&desk), [""; 0], "{at}");
        }
    }
}

/// Windows in which the scale leaves the pages another width than at 1: texts are as wide as whole pixels make them.
const SCALED: [([f32; 2], f32); 3] = [([900.0, 600.0], 0.75), ([1280.0, 800.0], 1.25), ([1920.0, 1080.0], 2.0)];

#[test]
fn no_label_is_cut_at_any_scale_in_any_language() {
    let mut found = Vec::new();
    for language in [Language::English, Language::Longer] {
        for (pixels, scale) in SCALED {
            for page in Page::ALL {
                let desk = on_screen(language, pixels, scale, page);
                let at = format!("{page:?} in {language:?} at {pixels:?} px and {scale}");
                found.extend(cut(&desk).into_iter().map(|cut| format!("{at}: {cut}")));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_head_of_the_example_has_room_for_its_name_and_for_the_way_to_a_plan_of_ones_own() {
    for language in [Language::English, Language::German, Language::Longer] {
        for size in SIZES {
            let words = Words { language, units: Units::Metric };
            let example = example();
            let opening = Opening {
                plan: example.clone(),
                is_example: true,
                example: Some(example),
                words,
                ..Opening::default()
            };
            let mut desk = hand::built(Harness::builder().with_size(size), opening, vec![Message::Open(Page::Ground)]);
            settle(&mut desk);
            let at = format!("{language:?} at {size:?}");
            assert_eq!(cut(&desk), [""; 0], "{at}");
            let own = desk.get_by_label(words.text(Rolls::StartOwn)).rect();
            let undo = desk.get_by_label(words.text(WindowText::Undo)).rect();
            assert!(
                own.right() <= undo.left() + 0.5,
                "{at}: the way to one's own ends at {own:?}, undo is at {undo:?}"
            );
            // What is left of the plan's name is still a name.
            let name = painted(&desk).0.into_iter().find(|one| one.text == window(&desk).editor().plan().title);
            assert!(name.is_some_and(|name| name.rect.width() > 64.0), "{at}");
        }
    }
}

#[test]
fn the_choices_over_the_sheet_take_a_second_line_rather_than_run_off_the_window() {
    let mut plan = example();
    let mut other = plan.runs[0].clone();
    other.id = "other".to_owned();
    plan.runs.truncate(1);
    plan.runs.push(other);
    let words = Words { language: Language::German, units: Units::Metric };
    let desk = hand::on_page(plan, Page::Sheet, [900.0, 600.0], words);
    for text in [WindowText::A4, WindowText::AllRuns, WindowText::ThisRun] {
        let rect = desk.get_by_label(words.text(text)).rect();
        assert!(rect.right() <= 892.0, "{}: {rect:?}", words.text(text));
    }
    let sheet = desk.get_by_label_contains("Seite 1 von ").rect();
    assert!(sheet.right() <= 892.0, "{sheet:?}");
}
