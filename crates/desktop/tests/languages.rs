//! The window in every language: nothing left in English, figures by locale, and no label cut or run over by another,
//! with English, German and text two fifths longer, at the sizes and scales that the window may have.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use std::collections::BTreeSet;

use desktop::editor::{ManyMessage, Message, Page, Progress, ShapesMessage};
use desktop::tool::{Drawn, Tool};
use desktop::{Opening, Window};
use egui::{Rect, Shape};
use egui_kittest::kittest::NodeT;
use hand::{Desk, example, settle};
use plan::{Fault, FaultKind, Gate, GateKind, Pin, PinKind, Plan, Point, Reading, ReadingKind, Rest, SideSlope, Today};
use words::texts::wordings;
use words::{Language, Units, Words};

/// The usual window and the smallest, and both as tall as their longest page.
const SIZES: [[f32; 2]; 4] = [[1280.0, 800.0], [900.0, 600.0], [1280.0, 4200.0], [900.0, 4200.0]];

/// The example with something on every page: soil, wind, gates, a pin, a side that rises, a fault, grass, readings.
fn rich() -> Plan {
    let mut plan = example();
    plan.ground.soil.by_foot = Some(plan::ByFoot::PushesIn);
    plan.ground.wind_m_per_s = Some(15.0);
    plan.ground.today = Some(Today::Wet);
    let reading = |kind, along_m, value, when: &str| Reading {
        run: plan.runs[0].id.clone(),
        kind,
        along_m,
        value: Some(value),
        rest: Rest::from_iter([("when".to_owned(), when.into())]),
    };
    plan.readings = vec![
        reading(ReadingKind::FenceKv, Some(0.0), 4.4, "2027-05-01"),
        reading(ReadingKind::FenceKv, Some(70.0), 3.1, "2027-05-08"),
        reading(ReadingKind::EarthKv, None, 0.2, "2027-05-08"),
    ];
    let run = &mut plan.runs[0];
    run.gates = vec![Gate::new(GateKind::Foot), Gate::new(GateKind::Wheels)];
    run.pins = vec![Pin::new(PinKind::Corner, run.outline[1])];
    let (one, other) = (run.outline[0], run.outline[1]);
    let middle = Point::new(0.5 * (one.east_m + other.east_m), 0.5 * (one.north_m + other.north_m));
    run.side_slopes = vec![SideSlope { at: middle, rises_m: Some(1.0), one_in: None, rest: Rest::new() }];
    let at = run.outline[2];
    run.faults =
        vec![Fault { at, kind: FaultKind::Short, ohm: Some(300.0), lines: None, cause: None, rest: Rest::new() }];
    plan
}

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

fn open(language: Language, size: [f32; 2], messages: Vec<Message>) -> Desk {
    let words = Words { language, units: Units::Metric };
    let mut desk = hand::open(Opening { plan: rich(), words, ..Opening::default() }, size);
    for message in messages {
        desk.state_mut().as_mut().unwrap().say(message);
    }
    for _ in 0..2000 {
        settle(&mut desk);
        let editor = window(&desk).editor();
        let reckoned = editor.page() != Page::Power || editor.study().is_some_and(|(_, stale)| !stale);
        let searched = !editor.shapes().is_open() || editor.shapes().progress() == Progress::Rests;
        if reckoned && searched {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    desk.run();
    desk
}

fn window(desk: &Desk) -> &Window {
    desk.state().as_ref().unwrap()
}

/// A text that is painted.
struct Painted {
    text: String,
    rect: Rect,
    clip: Rect,
    elided: bool,
    /// How many opaque grounds were painted before it.
    over: usize,
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
                    found.0.push(Painted { text, rect, clip, elided, over: found.1.len() });
                }
            }
            _ => {}
        }
    }
    let mut found = (Vec::new(), Vec::new());
    desk.output().shapes.iter().for_each(|one| of(&one.shape, one.clip_rect, &mut found));
    found
}

/// What is cut: shortened, reaching out of its place to a side, or run over by another.
fn cut(desk: &Desk) -> Vec<String> {
    let (painted, grounds) = painted(desk);
    let language = window(desk).editor().words().language;
    let leads = |wording: &&str| wording.ends_with('…');
    let wordings: Vec<String> = wordings(language).into_iter().filter(leads).map(str::to_owned).collect();
    let mut cut = Vec::new();
    for one in &painted {
        // Paper is shortened by its own pen; what leads to a question ends in dots by itself.
        // Letters on paper keep a size that is read in a field, so it is set for the languages that are offered.
        let dotted = Language::ALL.contains(&language)
            && one.text.ends_with('…')
            && !wordings.iter().any(|wording| one.text.ends_with(wording.as_str()));
        // What the keeper named may be shortened where the window is small.
        if (one.elided || dotted) && one.text != window(desk).editor().plan().title {
            cut.push(format!("shortened: {:?}", one.text));
        }
        let (left, right) = (one.clip.left() - one.rect.left(), one.rect.right() - one.clip.right());
        if left > 0.5 || right > 0.5 {
            cut.push(format!("out of its place by {:.1}: {:?}", left.max(right), one.text));
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
    for (name, messages) in states() {
        for size in SIZES {
            let desk = open(language, size, messages.clone());
            found.extend(cut(&desk).into_iter().map(|cut| format!("{name} at {size:?}: {cut}")));
        }
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
        let desk = open(Language::German, [1280.0, 4200.0], messages);
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
fn on_screen(pixels: [f32; 2], scale: f32, page: Page) -> Desk {
    let size = [(pixels[0] / scale).max(900.0), (pixels[1] / scale).max(600.0)];
    let words = Words { language: Language::German, units: Units::Metric };
    let mut opening = Some(Opening { plan: rich(), words, ..Opening::default() });
    let mut desk = egui_kittest::Harness::builder()
        .with_size(size)
        .with_pixels_per_point(scale)
        .with_step_dt(1.0 / 60.0)
        .with_max_steps(30)
        .build_ui_state(
            move |ui, window: &mut Option<Window>| {
                window.get_or_insert_with(|| Window::open(ui.ctx(), opening.take().unwrap())).ui(ui);
            },
            None,
        );
    settle(&mut desk);
    desk.state_mut().as_mut().unwrap().say(Message::Open(page));
    settle(&mut desk);
    desk
}

#[test]
fn at_every_size_and_scale_pages_figures_and_what_is_found_are_in_sight() {
    let names = ["Gelände", "Auslauf", "Strom", "Umzüge", "Buch", "Blatt"];
    for (pixels, scale) in SCREENS {
        for page in Page::ALL {
            let desk = on_screen(pixels, scale, page);
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
