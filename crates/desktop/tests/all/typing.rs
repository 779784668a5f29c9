//! Undoing while a field has the focus: the plan's until something is typed into it, then the field's own.

use crate::hand::{Desk, example, on_page, settle, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Coop, Edit, Label, Plan, Point, Shade, TapePoint, Wall};
use words::Words;

/// The example with one of everything that can have a name on the ground.
fn everything() -> Plan {
    let mut plan = example();
    let at = |east_m: f64, north_m: f64| Point::new(east_m, north_m);
    plan.walls.push(Wall { path: vec![at(0.0, 0.0), at(20.0, 0.0)], ..Wall::default() });
    plan.ground.shade.push(Shade { outline: vec![at(2.0, 2.0), at(8.0, 2.0), at(8.0, 8.0)], ..Shade::default() });
    plan.ground
        .damp
        .push(plan::Damp { outline: vec![at(2.0, 12.0), at(8.0, 12.0), at(8.0, 18.0)], ..plan::Damp::default() });
    plan.labels.push(Label { at: at(5.0, 30.0), text: "Trough".to_owned(), ..Label::default() });
    plan.tape_points.push(TapePoint { at: at(12.0, 60.0), ..TapePoint::default() });
    plan.other_coops.push(Coop::new("coop-2", at(30.0, 60.0)));
    plan
}

fn labels(desk: &Desk) -> Vec<String> {
    let fields = desk.query_all_by_role(Role::TextInput);
    fields.filter_map(|field| field.accesskit_node().label()).collect()
}

fn title(desk: &Desk) -> String {
    window(desk).editor().plan().title.clone()
}

fn key(desk: &mut Desk, key: Key) {
    desk.key_press_modifiers(Modifiers::COMMAND, key);
    desk.run();
}

/// Every field for a name in sight, and a few others: a step of the plan is undone and redone while it has the focus; what
/// is typed into it is its own.
fn undoes(desk: &mut Desk, tried: &mut Vec<String>) {
    let (names, others): (Vec<String>, Vec<String>) =
        labels(desk).into_iter().filter(|label| !tried.contains(label)).partition(|label| label.starts_with("Name"));
    for label in names.into_iter().chain(others.into_iter().take(2)) {
        tried.push(label.clone());
        let was = title(desk);
        desk.state_mut().as_mut().unwrap().say(Message::Make(Edit::SetTitle { title: format!("{was}, later") }));
        desk.run();
        let field =
            |desk: &Desk| desk.query_all_by_role_and_label(Role::TextInput, &label).next().map(|field| field.focus());
        field(desk).unwrap_or_else(|| panic!("{label} is gone"));
        desk.run();
        key(desk, Key::Z);
        assert_eq!(title(desk), was, "{label}: undone");
        key(desk, Key::Y);
        assert_eq!(title(desk), format!("{was}, later"), "{label}: redone");
        field(desk);
        desk.run();
        desk.event(egui::Event::Text("7".to_owned()));
        desk.run();
        key(desk, Key::Z);
        assert_eq!(title(desk), format!("{was}, later"), "{label}: typed into, its undoing is its own");
        // Left as it was.
        desk.key_press(Key::Escape);
        desk.run();
        key(desk, Key::Z);
        assert_eq!(title(desk), was, "{label}: left, it has no say");
    }
}

#[test]
fn a_field_that_nothing_was_typed_into_leaves_undoing_to_the_plan() {
    let plan = everything();
    let mut desk = on_page(plan, Page::Ground, [1280.0, 1600.0], Words::default());
    let mut tried = Vec::new();
    let things = [
        Thing::Boundary,
        Thing::KeepOut { keep_out: 0 },
        Thing::Hazard { hazard: 0 },
        Thing::Wall { wall: 0 },
        Thing::Shade { shade: 0 },
        Thing::Damp { damp: 0 },
        Thing::Label { label: 0 },
        Thing::TapePoint { point: 0 },
        Thing::Coop { coop: 0 },
        Thing::Coop { coop: 1 },
        Thing::Run { run: 0 },
    ];
    for thing in things {
        desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(thing)));
        settle(&mut desk);
        undoes(&mut desk, &mut tried);
    }
    for page in [Page::Power, Page::Sheet] {
        desk.state_mut().as_mut().unwrap().say(Message::Open(page));
        settle(&mut desk);
        undoes(&mut desk, &mut tried);
    }
    let names = tried.iter().filter(|label| label.starts_with("Name")).count();
    assert!(names >= 8 && tried.len() > 20, "{names} names among {tried:?}");
}
