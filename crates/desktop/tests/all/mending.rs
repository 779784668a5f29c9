//! What was found leads to where it is mended: every rule by a plan that breaks it, clicked in the list over the foot.

mod breaking;
mod feeding;
mod laying;

use std::collections::BTreeSet;

use crate::hand::{self, Desk, on_page, settle, window};
use desktop::editor::Page;
use drawing::Thing;
use egui::{Key, Rect};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Plan;
use serde_json::{Value, json};
use words::Words;

use breaking::{beside, quiet};

/// The smallest window, where the least of a page is in sight, and what of it a page takes.
const SIZE: [f32; 2] = [900.0, 600.0];
const PAGE: f32 = 296.0;
/// Heights of the head, and of the figures with the names at a page's foot.
const HEAD: f32 = 44.0;
const FOOT: f32 = 48.0 + 32.0;

/// A rule, a plan that breaks it, the page where that is mended, what is picked there, and what is in sight.
type Row = (&'static str, Value, Page, Option<Thing>, String);

/// Words of the window, as they stand on a page.
macro_rules! head {
    ($text:expr) => {
        words::Words::default().text($text).to_owned()
    };
}
use head;

/// Every rule that something in the window mends.
fn rows() -> Vec<Row> {
    let mut rows = laying::rows();
    rows.extend(feeding::rows());
    rows
}

/// What nothing in the window mends: it is said of every plan, mended in the file, or by a hand that switches off.
const NOWHERE: [&str; 4] = ["buried-services", "local-codes-first", "gate-power-off", "unknown-key"];
/// Found only where the way through a plan of thousands of outlines takes too many steps: it leads as its like do.
const TOO_LONG_TO_BREAK: [&str; 1] = ["gate-way-unknown"];

/// The ids of all rules, as the room of findings names them.
fn rules() -> BTreeSet<String> {
    let room = concat!(env!("CARGO_MANIFEST_DIR"), "/../care/src");
    let mut found = BTreeSet::new();
    for file in std::fs::read_dir(room).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        let quoted = text.split('"');
        let is_id = |part: &&str| {
            part.contains('-')
                && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-')
                && !part.starts_with('-')
        };
        found.extend(quoted.filter(is_id).map(str::to_owned));
    }
    found
}

#[test]
fn every_rule_has_its_row() {
    let told: BTreeSet<String> = rows().into_iter().map(|row| row.0.to_owned()).collect();
    let rest = NOWHERE.into_iter().chain(TOO_LONG_TO_BREAK).map(str::to_owned);
    assert_eq!(rules(), told.into_iter().chain(rest).collect());
}

/// Opens the list over the foot.
fn open_list(desk: &mut Desk) {
    let at = figure(desk).rect().center();
    hand::click(desk, at);
}

/// The findings in the foot.
fn figure(desk: &Desk) -> egui_kittest::Node<'_> {
    let is_it = |label: &str| label.starts_with("Findings ") && label != "Findings on this page";
    let mut all = desk.query_all_by_label_contains("Findings ");
    all.find(|node| node.accesskit_node().label().is_some_and(|label| is_it(&label))).unwrap()
}

/// Where what is called so stands on the page; a heading, a field or a row, in part or whole.
fn on_page_in_sight(desk: &Desk, sees: &str) -> Option<Rect> {
    let all: Vec<_> = desk.query_all_by_label_contains(sees).map(|node| node.rect()).collect();
    let on_page = |place: &Rect| {
        place.left() >= SIZE[0] - PAGE && place.top() >= HEAD - 0.5 && place.bottom() <= SIZE[1] - FOOT + 0.5
    };
    all.into_iter().find(on_page)
}

#[test]
fn every_finding_leads_to_where_it_is_mended() {
    let mut wrong = Vec::new();
    for (id, value, page, picked, sees) in rows() {
        let mut plan: Plan =
            plan::read(value.to_string().as_bytes()).unwrap_or_else(|error| panic!("{id}: {error}")).plan;
        if id == "hidden-on-map" {
            plan.ground.hazards[0].hidden = true;
        }
        let mut desk = on_page(plan, Page::Sheet, SIZE, Words::default());
        let found = window(&desk).editor().findings().all().find(|one| one.id == id).cloned();
        let Some(found) = found else {
            let all: Vec<_> = window(&desk).editor().findings().all().map(|one| one.id).collect();
            wrong.push(format!("{id} is not found among {all:?}"));
            continue;
        };
        open_list(&mut desk);
        let row = desk
            .query_all_by_label_contains(&found.message)
            .find(|node| node.accesskit_node().role() == egui::accesskit::Role::MenuItem);
        let Some(row) = row else {
            wrong.push(format!("{id} is not in the list"));
            continue;
        };
        // What lies below in a long list is reached by the keyboard.
        row.focus();
        desk.run();
        desk.key_press(Key::Enter);
        desk.run();
        settle(&mut desk);
        let editor = window(&desk).editor();
        if editor.page() != page || (picked.is_some() && editor.picked() != picked) {
            wrong.push(format!(
                "{id}: {:?} with {:?} in place of {page:?} with {picked:?}",
                editor.page(),
                editor.picked()
            ));
        }
        if on_page_in_sight(&desk, &sees).is_none() {
            let all: Vec<_> = desk.query_all_by_label_contains(&sees).map(|node| node.rect()).collect();
            wrong.push(format!("{id}: {sees:?} is not in sight but at {all:?}"));
        }
        if !hand::says(&desk, &found.message) {
            wrong.push(format!("{id}: its sentence is nowhere"));
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn the_list_over_the_foot_holds_as_many_as_the_foot_says_the_gravest_first() {
    let mut value = beside(67.0, "small");
    value["runs"].as_array_mut().unwrap().push(json!({ "id": "gone", "status": "past", "nets": ["long"],
        "outline": [[5, 5], [20, 5], [20, 20], [5, 20]] }));
    let plan = plan::read(value.to_string().as_bytes()).unwrap().plan;
    let mut desk = on_page(plan, Page::Run, [1280.0, 800.0], Words::default());
    let figure = figure(&desk);
    let label = figure.accesskit_node().label().unwrap();
    let told: usize =
        label.split(|letter: char| !letter.is_ascii_digit()).filter_map(|part| part.parse::<usize>().ok()).sum();
    // By the keyboard: opened, walked, and gone to.
    figure.focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let listed = |desk: &Desk| -> Vec<String> {
        let rows = desk.query_all(egui_kittest::kittest::by().role(egui::accesskit::Role::MenuItem));
        rows.map(|node| node.accesskit_node().label().unwrap_or_default()).collect()
    };
    let all = listed(&desk);
    assert!(all.len() == told && told > 6, "{told} in the foot, {} in the list: {label}", all.len());
    let weight = |row: &String| ["Danger: ", "Warning: ", "Note: "].iter().position(|weight| row.starts_with(weight));
    assert!(all.iter().map(weight).is_sorted() && all.iter().all(|row| weight(row).is_some()), "{all:?}");
    assert!(all.iter().all(|row| row.contains(" Page ")) && !all.iter().any(|row| row.contains("gone")), "{all:?}");
    assert!(
        all[0].starts_with("Danger: other and run stand 2.0 m apart") && all[0].ends_with("Page Run."),
        "{}",
        all[0]
    );
    desk.key_press(Key::ArrowDown);
    desk.run();
    desk.key_press(Key::ArrowUp);
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let editor = window(&desk).editor();
    assert_eq!((editor.page(), editor.run_index(), editor.picked()), (Page::Run, 1, Some(Thing::Run { run: 1 })));
    assert!(listed(&desk).is_empty(), "the list is gone");
    // By the mouse, and away with Esc.
    open_list(&mut desk);
    assert_eq!(listed(&desk).len(), told);
    desk.key_press(Key::Escape);
    desk.run();
    assert!(listed(&desk).is_empty());
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Run { run: 1 }), "Esc closes the list alone");
}

#[test]
fn a_tag_on_the_map_and_a_sentence_on_a_page_lead_there_too() {
    let mut value = quiet();
    value["coop"]["at"] = json!([80, 80]);
    let plan = plan::read(value.to_string().as_bytes()).unwrap().plan;
    let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
    let said = "stands outside run: move the coop or the run.";
    let is_sentence = |node: &egui_kittest::Node<'_>| {
        node.accesskit_node().label().is_some_and(|label| label.starts_with("Warning: "))
    };
    desk.query_all_by_label_contains(said).find(is_sentence).unwrap().focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));
    let hint = desk.query_all_by_label_contains(said).any(|node| node.rect().left() < 900.0);
    assert!(hint, "what it is about is said on the map");
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(window(&desk).editor().led(), None);

    // The tag has the keyboard.
    let mut desk = on_page(plan.clone(), Page::Ground, [1280.0, 800.0], Words::default());
    let on_map = |node: &egui_kittest::Node<'_>| {
        node.accesskit_node().label().is_some_and(|label| label.ends_with("on the map"))
    };
    desk.query_all_by_label_contains(said).find(on_map).unwrap().focus();
    desk.run();
    assert!(matches!(window(&desk).editor().picked(), Some(Thing::Finding { .. })));
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));

    let mut desk = on_page(plan, Page::Book, [1280.0, 800.0], Words::default());
    let tag = window(&desk).editor().drawing().shapes().find(|shape| {
        matches!(shape.thing, Some(Thing::Finding { .. })) && matches!(shape.role, drawing::Role::Tag { .. })
    });
    let drawing::Form::Mark { at, .. } = tag.unwrap().form else { panic!("a tag is a mark") };
    let on_tag = hand::spot(&desk, at) - egui::vec2(0.0, 11.0);
    hand::click(&mut desk, on_tag);
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 0 }));
}
