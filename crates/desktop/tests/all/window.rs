//! The whole window without a screen: what is shown, dragged, drawn, taken back.

use crate::hand;
use crate::hand::{Desk, EXAMPLE, settle, window};
use desktop::Opening;
use desktop::editor::{Message, Page};
use egui::{Key, Modifiers, Pos2, Rect, Vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Plan, Point};
use words::{Language, Words};
use workup::{Depth, Workup};

const TWO_RUNS: &[u8] = include_bytes!("../../../../assets/demo/square-or-rectangle.netfold.json");

fn open(bytes: &[u8], size: [f32; 2]) -> Desk {
    open_plan(plan::read(bytes).unwrap().plan, size)
}

fn open_plan(plan: Plan, size: [f32; 2]) -> Desk {
    hand::open(Opening { plan, ..Opening::default() }, size)
}

/// Where a place of the plan lies on the screen.
fn spot(harness: &Desk, at: Point) -> Pos2 {
    let map = harness.get_by_label("Map").rect();
    let [right, down] = window(harness).editor().view().spot(at);
    map.min + egui::vec2(right, down)
}

fn button(harness: &Desk, at: Pos2, pressed: bool) {
    harness.event(egui::Event::PointerMoved(at));
    harness.event(egui::Event::PointerButton {
        pos: at,
        button: egui::PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    });
}

fn click(harness: &mut Desk, at: Pos2) {
    harness.event(egui::Event::PointerMoved(at));
    harness.run();
    button(harness, at, true);
    harness.run();
    button(harness, at, false);
    harness.run();
}

fn drag(harness: &mut Desk, from: Pos2, to: Pos2) {
    harness.event(egui::Event::PointerMoved(from));
    harness.run();
    button(harness, from, true);
    harness.run();
    for step in 1..=4 {
        harness.event(egui::Event::PointerMoved(from + (to - from) * step as f32 / 4.0));
        harness.run();
    }
    button(harness, to, false);
    harness.run();
}

/// The figures that the line at the foot should show for a run.
fn line_figure(worked: &Workup, run: usize) -> String {
    let lay = worked.runs[run].lay.as_ref().unwrap();
    let (figure, unit) = Words::default().length_parts(lay.line_m);
    let unit = care::closing_said::unit_of_line(&worked.runs[run], unit, Words::default());
    format!("Line {figure} {unit}")
}

#[test]
fn the_example_shows_its_figures() {
    let harness = open(EXAMPLE, [1280.0, 800.0]);
    let plan = plan::read(EXAMPLE).unwrap().plan;
    let worked = workup::workup(&plan, Depth::Full);
    let lay = worked.runs[0].lay.as_ref().unwrap();
    harness.get_by_label("Kettle Field, first grass");
    harness.get_by_label(&line_figure(&worked, 0));
    harness.get_by_label(&format!("Posts {}", lay.posts.len()));
    harness.get_by_label("Nets 3 of 5");
    let weakest = worked.runs[0].volts.as_ref().unwrap().weakest.unwrap();
    let said = Words::default().likely_kilovolts(weakest.peak_kv, weakest.low_kv, weakest.high_kv);
    harness.get_by_label(&format!("Weakest {said}, not measured yet"));
    let area = Words::default().area(lay.area_m2);
    let each = Words::default().area_each(lay.area_m2 / 90.0);
    harness.get_by_label(&format!("{area} for 90 hens, {each} each"));
    let will_lean = lay.corners.iter().filter(|corner| corner.verdict == workup::Verdict::Required && !corner.end);
    let rows = harness.query_all_by_label_contains(": will lean in, needs a brace");
    assert_eq!(rows.count(), will_lean.count());
}

#[test]
fn a_drag_changes_every_figure_as_the_workup_says_and_is_one_step() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let before = window(&harness).editor().plan().clone();
    let corner = before.runs[0].outline[2];
    let from = spot(&harness, corner);
    let to = from + egui::vec2(24.0, -15.0);
    // Nothing catches it while Alt is held.
    harness.event(egui::Event::ModifiersChanged(egui::Modifiers::ALT));
    drag(&mut harness, from, to);
    harness.event(egui::Event::ModifiersChanged(egui::Modifiers::NONE));
    settle(&mut harness);
    let after = window(&harness).editor().plan().clone();
    let moved = after.runs[0].outline[2];
    let px_per_m = window(&harness).editor().view().px_per_m;
    assert!((moved.east_m - corner.east_m - 24.0 / px_per_m).abs() < 1e-3, "{moved:?}");
    assert!((moved.north_m - corner.north_m - 15.0 / px_per_m).abs() < 1e-3, "{moved:?}");
    let worked = workup::workup(&after, Depth::Full);
    assert_eq!(*window(&harness).editor().workup(), worked);
    harness.get_by_label(&line_figure(&worked, 0));
    assert_ne!(line_figure(&worked, 0), line_figure(&workup::workup(&before, Depth::Quick), 0));

    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    settle(&mut harness);
    assert_eq!(*window(&harness).editor().plan(), before, "one step takes the whole drag back");
    assert!(!window(&harness).editor().can_undo());
    harness.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    settle(&mut harness);
    assert_eq!(*window(&harness).editor().plan(), after);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    settle(&mut harness);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Y);
    settle(&mut harness);
    assert_eq!(*window(&harness).editor().plan(), after);
}

#[test]
fn figures_follow_within_the_frame_of_a_drag() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let from = spot(&harness, window(&harness).editor().plan().runs[0].outline[1]);
    button(&harness, from, true);
    harness.step();
    harness.event(egui::Event::PointerMoved(from + egui::vec2(30.0, 12.0)));
    harness.step();
    harness.event(egui::Event::PointerMoved(from + egui::vec2(60.0, 20.0)));
    harness.step();
    let worked = workup::workup(window(&harness).editor().plan(), Depth::Quick);
    harness.get_by_label(&line_figure(&worked, 0));
}

#[test]
fn esc_lets_go_of_a_drag() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let before = window(&harness).editor().plan().clone();
    let from = spot(&harness, before.runs[0].outline[0]);
    button(&harness, from, true);
    harness.run();
    harness.event(egui::Event::PointerMoved(from + egui::vec2(40.0, 40.0)));
    harness.run();
    assert_ne!(*window(&harness).editor().plan(), before);
    harness.key_press(Key::Escape);
    harness.run();
    button(&harness, from + egui::vec2(40.0, 40.0), false);
    harness.run();
    assert_eq!(*window(&harness).editor().plan(), before);
}

#[test]
fn a_picked_corner_is_nudged_and_taken_out() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let corner = window(&harness).editor().plan().runs[0].outline[3];
    let at = spot(&harness, corner);
    click(&mut harness, at);
    harness.key_press(Key::ArrowRight);
    harness.run();
    harness.key_press_modifiers(Modifiers::SHIFT, Key::ArrowDown);
    harness.run();
    let moved = window(&harness).editor().plan().runs[0].outline[3];
    assert!((moved.east_m - corner.east_m - 0.1).abs() < 1e-9, "{moved:?}");
    assert!((moved.north_m - corner.north_m + 1.0).abs() < 1e-9, "{moved:?}");
    harness.key_press(Key::Delete);
    harness.run();
    assert_eq!(window(&harness).editor().plan().runs[0].outline.len(), 4);
}

#[test]
fn corners_are_named_nodes_that_the_keyboard_reaches() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let node = harness.get_by_label("Corner 2 of Round Quince House");
    let at = spot(&harness, window(&harness).editor().plan().runs[0].outline[1]);
    assert!(node.rect().contains(at));
    node.focus();
    harness.run();
    harness.key_press(Key::ArrowUp);
    harness.run();
    let before = plan::read(EXAMPLE).unwrap().plan.runs[0].outline[1];
    let moved = window(&harness).editor().plan().runs[0].outline[1];
    assert!((moved.north_m - before.north_m - 0.1).abs() < 1e-9, "{moved:?}");
}

#[test]
fn every_page_opens_and_says_what_it_is() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    for (page, name, says) in [
        (Page::Ground, "Ground", "The paddock"),
        (Page::Power, "Power", "Grass on the net"),
        (Page::Sheet, "Sheet", "The field sheet"),
        (Page::Run, "Run", "Strip to mow"),
    ] {
        harness.get_by_role_and_label(egui::accesskit::Role::Tab, name).click();
        harness.run();
        assert_eq!(window(&harness).editor().page(), page);
        assert!(harness.query_all_by_label(says).count() > 0, "{says}");
    }
}

#[test]
fn rows_and_map_point_at_each_other() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    harness.get_by_label_contains("Corner 4: ").click();
    harness.run();
    assert_eq!(window(&harness).editor().picked(), Some(drawing::Thing::RunCorner { run: 0, vertex: 3 }));
    let at = spot(&harness, window(&harness).editor().plan().runs[0].outline[1]);
    click(&mut harness, at);
    let row = harness.get_by_label_contains("Corner 2: ");
    assert_eq!(row.accesskit_node().toggled(), Some(egui::accesskit::Toggled::True));
}

#[test]
fn two_runs_are_compared_and_picked() {
    let mut harness = open(TWO_RUNS, [1440.0, 900.0]);
    harness.get_by_label("2 runs side by side");
    let second = window(&harness).editor().plan().runs[1].clone();
    let figures = workup::workup(window(&harness).editor().plan(), Depth::Quick);
    let area = Words::default().area(figures.runs[1].lay.as_ref().unwrap().area_m2);
    harness.get_by_label_contains(&format!("{}: Ground {area}, Birds ", second.name)).click();
    harness.run();
    assert_eq!(window(&harness).editor().run_index(), 1);
    harness.get_by_label("Side by side").click();
    harness.run();
    assert!(harness.query_by_label("2 runs side by side").is_none());
}

#[test]
fn units_are_one_switch() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let line_m = window(&harness).editor().workup().runs[0].lay.as_ref().unwrap().line_m;
    harness.get_by_label("Units metres").click();
    harness.run();
    let feet = Words { units: words::Units::Feet, ..Words::default() };
    let (figure, unit) = feet.length_parts(line_m);
    harness.get_by_label(&format!("Line {figure} {unit}"));
}

#[test]
fn grass_and_stakes_are_edits_and_one_step_each() {
    let mut harness = open(EXAMPLE, [1280.0, 2000.0]);
    let before = window(&harness).editor().plan().clone();
    harness.get_by_role_and_label(egui::accesskit::Role::Tab, "Power").click();
    harness.run();
    let rail = harness.get_by_role_and_label(egui::accesskit::Role::Slider, "Grass on the net").rect();
    let y = rail.top() + 12.0;
    drag(&mut harness, Pos2::new(rail.left() + 100.0, y), Pos2::new(rail.right() - 4.0, y));
    let plan = window(&harness).editor().plan().clone();
    assert_eq!(plan.runs[0].leakage_s_per_m, Some(plan::defaults::LEAKAGE_LONG_WET_S_PER_M));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(*window(&harness).editor().plan(), before);
    harness.get_by_label("One stake more").click();
    harness.run();
    assert_eq!(window(&harness).editor().plan().runs[0].earth_stakes.count, Some(3));
}

#[test]
fn the_map_pans_and_zooms_about_the_pointer() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let held = Point::new(130.0, 70.0);
    let at = spot(&harness, held);
    harness.event(egui::Event::PointerMoved(at));
    harness.run();
    harness.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: Vec2::new(0.0, 200.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Wheel,
        modifiers: Modifiers::NONE,
    });
    let before = window(&harness).editor().view().px_per_m;
    // The wheel is smoothed over some frames.
    harness.run_steps(30);
    assert!(window(&harness).editor().view().px_per_m > before * 1.5);
    assert!(spot(&harness, held).distance(at) < 0.5, "the place under the pointer stays");
    let middle = window(&harness).editor().view().middle;
    drag(&mut harness, at, at + egui::vec2(-50.0, 30.0));
    let moved = window(&harness).editor().view().middle;
    let px_per_m = window(&harness).editor().view().px_per_m;
    assert!((moved.east_m - middle.east_m - 50.0 / px_per_m).abs() < 1e-6);
    harness.key_press(Key::F);
    harness.run();
    assert!((window(&harness).editor().view().px_per_m - before).abs() < 1e-9);
}

#[test]
fn an_empty_plan_and_the_smallest_window_show() {
    let harness = open_plan(Plan::default(), [900.0, 600.0]);
    harness.get_by_label("No run yet");
    let mut small = open(EXAMPLE, [900.0, 600.0]);
    for name in ["Ground", "Run", "Power", "Sheet"] {
        small.get_by_role_and_label(egui::accesskit::Role::Tab, name).click();
        small.run();
    }
    let all = Rect::from_min_size(Pos2::ZERO, Vec2::new(900.0, 600.0));
    assert!(all.contains_rect(small.get_by_label_contains("Weakest ").rect()), "the weakest post stays in sight");
    assert!(all.contains_rect(small.get_by_label_contains("Findings ").rect()), "so do the findings");
}

#[test]
fn an_idle_window_asks_for_no_frame() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    harness.run_steps(3);
    let output = harness.output();
    let delays: Vec<_> = output.viewport_output.values().map(|viewport| viewport.repaint_delay).collect();
    assert!(delays.iter().all(|delay| *delay > std::time::Duration::from_mins(1)), "{delays:?}");
}

#[test]
fn the_sheet_is_written_where_the_field_says_and_a_refusal_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    harness.get_by_role_and_label(egui::accesskit::Role::Tab, "Sheet").click();
    harness.run();
    for (file, says) in [("sheet.pdf", "Written to "), ("no/such/folder.pdf", "is not there: make it first")] {
        let path = folder.path().join(file);
        let field = harness.get_by_role_and_label(egui::accesskit::Role::TextInput, "File");
        field.focus();
        harness.run();
        harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
        harness.run();
        harness.get_by_role_and_label(egui::accesskit::Role::TextInput, "File").type_text(&path.display().to_string());
        harness.run();
        harness.get_by_label("Write the sheet").click();
        harness.run();
        harness.get_by_label_contains(says);
        // Said anew in another language, and back.
        let german = if file == "sheet.pdf" { "Geschrieben: " } else { "gibt es nicht" };
        for (language, says) in [(Language::German, german), (Language::English, says)] {
            harness.state_mut().as_mut().unwrap().say(Message::Language(language));
            harness.run();
            harness.get_by_label_contains(says);
        }
    }
    let written = std::fs::read(folder.path().join("sheet.pdf")).unwrap();
    assert!(written.starts_with(b"%PDF-"));
}

#[test]
fn findings_stay_where_they_are_while_figures_change_their_width() {
    let mut harness = open(EXAMPLE, [1280.0, 800.0]);
    let left = |harness: &Desk| {
        let mut all = harness.query_all_by_role(egui::accesskit::Role::Button);
        let figure = all.find(|node| node.accesskit_node().label().is_some_and(|label| label.starts_with("Findings ")));
        figure.unwrap().rect().left()
    };
    let was = left(&harness);
    let say = |harness: &mut Desk, message: Message| {
        harness.state_mut().as_mut().unwrap().say(message);
        harness.run();
    };
    say(&mut harness, Message::Units(words::Units::Feet));
    assert_eq!(left(&harness), was, "in feet");
    // A corner drawn far out: longer line, more braces, another weakest post.
    let mut run = harness.state().as_ref().unwrap().editor().plan().runs[0].clone();
    run.outline[2].east_m += 40.0;
    say(&mut harness, Message::Make(plan::Edit::SetRun { run: Box::new(run) }));
    assert_eq!(left(&harness), was, "with longer figures");
}

#[test]
fn the_nets_of_several_runs_say_what_is_the_stores() {
    let mut plan = plan::read(EXAMPLE).unwrap().plan;
    plan.runs[0].status = plan::RunStatus::Option;
    let mut second = plan.runs[0].clone();
    second.id = "second".into();
    plan.runs.push(second);
    let laid = 3;
    let harness = open_plan(plan.clone(), [1280.0, 1600.0]);
    harness.get_by_label_contains("counted by itself, against the whole store");
    let says = |harness: &Desk, what: &str| harness.query_all_by_label_contains(what).next().is_some();
    assert!(!says(&harness, "stand in other runs"));
    plan.runs[1].status = plan::RunStatus::Standing;
    let harness = open_plan(plan, [1280.0, 1600.0]);
    assert!(says(&harness, &format!("stand in other runs: {laid}")));
    assert!(!says(&harness, "counted by itself"));
}
