//! The window in every language: nothing left in English, figures by locale, and no label cut or run over by another,
//! with English, German and text two fifths longer, at the sizes and scales that the window may have.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use std::collections::BTreeSet;

use desktop::editor::{Message, Page, Progress, ShapesMessage};
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
    states.push(("unroll", vec![Message::UseOn(Page::Run, Tool::outline(Drawn::Run))]));
    states
}

fn open(language: Language, size: [f32; 2], messages: Vec<Message>) -> Desk {
    let words = Words { language, units: Units::Metric };
    let mut desk = hand::open(Opening { plan: rich(), words, ..Opening::default() }, size);
    messages.into_iter().for_each(|message| desk.state_mut().as_mut().unwrap().say(message));
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
        let dotted = one.text.ends_with('…') && !wordings.iter().any(|wording| one.text.ends_with(wording.as_str()));
        if one.elided || dotted {
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
