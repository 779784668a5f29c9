//! The page about readings, driven by what its parts are called.

use crate::hand;
use crate::hand::example;
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::{Plan, Reading, ReadingKind, Rest};
use words::Words;
use workup::{Depth, RunWorkup};

type Opened = hand::Desk;

fn open(plan: Plan, size: [f32; 2]) -> Opened {
    hand::on_page(plan, Page::Book, size, Words::default())
}

fn worked(plan: &Plan) -> RunWorkup {
    workup::workup(plan, Depth::Quick).runs.remove(0)
}

fn reading(kind: ReadingKind, along_m: Option<f64>, value: Option<f64>, when: &str) -> Reading {
    let mut rest = Rest::new();
    if !when.is_empty() {
        rest.insert("when".to_owned(), when.into());
    }
    Reading { run: "run-1".to_owned(), kind, along_m, value, rest }
}

/// The example with three posts read on two days, and the earth.
fn read() -> Plan {
    let mut plan = example();
    let posts = worked(&plan).lay.unwrap().posts;
    plan.readings = vec![
        reading(ReadingKind::FenceKv, Some(posts[20].along_m), Some(2.6), "2027-05-10"),
        reading(ReadingKind::FenceKv, Some(posts[20].along_m), Some(4.4), "2027-05-03"),
        reading(ReadingKind::FenceKv, Some(posts[7].along_m), Some(3.1), "2027-05-10"),
        reading(ReadingKind::EarthKv, None, Some(0.4), ""),
    ];
    plan
}

fn now(harness: &Opened) -> Plan {
    harness.state().as_ref().unwrap().editor().plan().clone()
}

fn picks(harness: &mut Opened, thing: Thing) {
    harness.state_mut().as_mut().unwrap().say(Message::Pick(Some(thing)));
    harness.run();
}

fn click(harness: &mut Opened, label: &str) {
    harness.get_by_label(label).click();
    harness.run();
}

/// Types into a field and commits.
fn types(harness: &mut Opened, field: &str, text: &str) {
    harness.get_by_role_and_label(egui::accesskit::Role::TextInput, field).focus();
    harness.run();
    // A refusal keeps the focus: what stands there gives way.
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.key_press(Key::Backspace);
    harness.event(egui::Event::Text(text.to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
}

#[test]
fn a_reading_at_a_picked_post_is_written_down_in_one_step() {
    let mut harness = open(example(), [1280.0, 1000.0]);
    let plan = example();
    harness.get_by_label_contains("Nothing was read on this run yet");
    let post = worked(&plan).lay.unwrap().posts[16];
    picks(&mut harness, Thing::Post { run: 0, post: 16 });
    assert_eq!(harness.state().as_ref().unwrap().editor().page(), Page::Book, "a post keeps the page open");
    harness.get_by_label("Place: Post 17");
    types(&mut harness, "Reading", "2700 V");
    types(&mut harness, "Day, such as 2027-05-01", "2027-05-10");
    click(&mut harness, "Write it down");
    let after = now(&harness);
    assert_eq!(after.readings, [reading(ReadingKind::FenceKv, Some(post.along_m), Some(2.7), "2027-05-10")]);
    harness.get_by_label("Post 17, fence: 2.7 kV on 2027-05-10");
    harness.get_by_label_contains("Post 17 is the weakest that was read: 2.7 kV on 2027-05-10");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(now(&harness), plan, "one step takes it back");
}

#[test]
fn a_place_may_be_typed_and_what_is_missing_is_said() {
    let mut harness = open(example(), [1280.0, 1000.0]);
    click(&mut harness, "Write it down");
    harness.get_by_label_contains("Say where first");
    types(&mut harness, "From corner 1", "400 m");
    harness.get_by_label_contains("The line is 150.0 m long");
    types(&mut harness, "From corner 1", "57.1");
    click(&mut harness, "Write it down");
    harness.get_by_label_contains("Type what the voltmeter showed first.");
    types(&mut harness, "Reading", "45");
    harness.get_by_label_contains("That is too much here");
    types(&mut harness, "Reading", "4.5");
    types(&mut harness, "Day, such as 2027-05-01", "3 May");
    harness.get_by_label_contains("“3 May” is no day");
    types(&mut harness, "Day, such as 2027-05-01", "");
    click(&mut harness, "Write it down");
    assert_eq!(now(&harness).readings, [reading(ReadingKind::FenceKv, Some(57.1), Some(4.5), "")]);
}

#[test]
fn each_kind_asks_for_what_it_needs() {
    let mut harness = open(example(), [1280.0, 1000.0]);
    click(&mut harness, "battery");
    assert!(harness.query_by_label("From corner 1").is_none());
    types(&mut harness, "Reading", "12.4 V");
    click(&mut harness, "Write it down");
    click(&mut harness, "ticking heard");
    assert!(harness.query_by_label("Reading").is_none());
    picks(&mut harness, Thing::RunCorner { run: 0, vertex: 2 });
    harness.get_by_label("Place: Corner 3");
    click(&mut harness, "Write it down");
    let corner_m = worked(&example()).lay.unwrap().vertices[2].1;
    assert_eq!(
        now(&harness).readings,
        [reading(ReadingKind::BatteryV, None, Some(12.4), ""), reading(ReadingKind::Ticking, Some(corner_m), None, "")]
    );
    harness.get_by_label("Battery, battery: 12.4 V");
    harness.get_by_label("Corner 3, ticking heard: ticking");
}

#[test]
fn the_weakest_is_said_as_read_beside_what_was_expected() {
    let harness = open(read(), [1280.0, 1000.0]);
    let worked = worked(&read());
    let words = Words::default();
    let expected = words.kilovolts(worked.volts.as_ref().unwrap().samples[20].peak_kv);
    // The newest reading of post 21 counts, not the better one of a week before.
    harness.get_by_label(&format!(
        "Post 21 is the weakest that was read: 2.6 kV on 2027-05-10, where {expected} was expected."
    ));
    harness.get_by_label("That is under the 4.0 kV that you ask for.");
    harness.get_by_label_contains("Readings are not fitted yet");
    let weakest = worked.volts.unwrap().weakest.unwrap();
    assert!(weakest.measured);
    let said = words.likely_kilovolts(weakest.peak_kv, weakest.low_kv, weakest.high_kv);
    harness.get_by_label(&format!("Weakest {said}"));
}

#[test]
fn rows_stand_newest_last_and_one_is_taken_out_in_one_step() {
    let mut harness = open(read(), [1280.0, 1000.0]);
    let rows = [
        "Earth stake, earth stake: 0.4 kV",
        "Post 21, fence: 4.4 kV on 2027-05-03",
        "Post 21, fence: 2.6 kV on 2027-05-10",
    ];
    let tops: Vec<f32> = rows.iter().map(|row| harness.get_by_label(row).rect().top()).collect();
    assert!(tops.windows(2).all(|pair| pair[0] < pair[1]), "{tops:?}");
    click(&mut harness, "Remove the reading at Earth stake");
    assert_eq!(now(&harness).readings, read().readings[..3]);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(now(&harness), read());
}

#[test]
fn a_row_picks_its_reading() {
    let mut harness = open(read(), [900.0, 600.0]);
    click(&mut harness, "Post 21, fence: 4.4 kV on 2027-05-03");
    assert_eq!(harness.state().as_ref().unwrap().editor().picked(), Some(Thing::Reading { run: 0, reading: 1 }));
    assert!(harness.query_by_label("Write it down").is_none(), "a reading that is looked at asks for nothing");
}

#[test]
fn without_a_run_the_page_says_what_to_do() {
    let mut harness = open(Plan::default(), [900.0, 600.0]);
    harness.get_by_label_contains("lay one out first");
    click(&mut harness, "Lay out a run");
    assert_eq!(harness.state().as_ref().unwrap().editor().page(), Page::Run);
}

#[test]
fn the_fields_are_open_where_nothing_was_read_and_fold_away() {
    let mut harness = open(example(), [900.0, 600.0]);
    harness.get_by_label("Write it down");
    click(&mut harness, "Add a reading");
    assert!(harness.query_by_label("Write it down").is_none());
    let mut harness = open(read(), [900.0, 600.0]);
    assert!(harness.query_by_label("Write it down").is_none());
    click(&mut harness, "Add a reading");
    harness.get_by_label("Write it down");
    // The weakest post as worked out is one click away.
    let weakest = worked(&read()).volts.unwrap().weakest.unwrap();
    click(&mut harness, &format!("Take post {}, the weakest as worked out", weakest.post + 1));
    assert_eq!(harness.state().as_ref().unwrap().editor().picked(), Some(Thing::Post { run: 0, post: weakest.post }));
    harness.get_by_label(&format!("Place: Post {}", weakest.post + 1));
}

#[test]
fn delete_takes_out_the_reading_that_is_picked() {
    let mut harness = open(read(), [1280.0, 800.0]);
    picks(&mut harness, Thing::Reading { run: 0, reading: 3 });
    harness.key_press(Key::Delete);
    harness.run();
    assert_eq!(now(&harness).readings, read().readings[..3]);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(now(&harness), read());
}

/// Every text that is painted, with where it stands.
fn painted(harness: &Opened) -> Vec<(String, egui::Rect)> {
    fn of(shape: &egui::Shape, found: &mut Vec<(String, egui::Rect)>) {
        match shape {
            egui::Shape::Vec(shapes) => shapes.iter().for_each(|shape| of(shape, found)),
            egui::Shape::Text(text) => {
                found.push((text.galley.text().to_owned(), text.visual_bounding_rect()));
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    harness.output().shapes.iter().for_each(|one| of(&one.shape, &mut found));
    found
}

#[test]
fn a_figure_read_at_corner_1_stands_clear_of_the_axis_and_of_the_target() {
    for kv in [4.4, 4.1, 0.3] {
        let mut plan = example();
        let corner_m = worked(&plan).lay.unwrap().corners[0].along_m;
        plan.readings = vec![reading(ReadingKind::FenceKv, Some(corner_m), Some(kv), "2027-05-10")];
        let harness = open(plan, [1280.0, 800.0]);
        let all = painted(&harness);
        let head = all.iter().find(|(text, _)| text == "Volts along the line").unwrap().1;
        let in_plot = |rect: &egui::Rect| (head.bottom()..head.bottom() + 150.0).contains(&rect.center().y);
        let whole = |text: &str| text.parse::<u8>().is_ok();
        let axis = all.iter().filter(|(text, rect)| whole(text) && in_plot(rect) && rect.center().x < 40.0);
        let right = axis.map(|(_, rect)| rect.right()).reduce(f32::max).unwrap();
        let figure =
            all.iter().find(|(text, rect)| *text == format!("{kv:.1}") && in_plot(rect) && rect.left() < 100.0);
        let figure = figure.unwrap_or_else(|| panic!("{kv}: {all:?}")).1;
        assert!(figure.left() > right, "{kv} at {figure:?} over the axis, which ends at {right}");
        let target = all.iter().find(|(text, rect)| text == "target" && in_plot(rect));
        let target_y = target.unwrap_or_else(|| panic!("no target beside {kv}: {all:?}")).1.center().y;
        let on_target = (figure.top() + 2.0..figure.bottom() - 2.0).contains(&target_y);
        assert!(!on_target, "{kv} at {figure:?} on the target at {target_y}");
    }
}
