//! A run made of whole panels in the window: one click, one step, the answer in a sentence.

use crate::hand::{Desk, on_page, settle, window};
use desktop::editor::Page;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::{Deed, NetKind, Plan, Point, Run};
use words::Words;

/// A crooked run of two nets of 14 panels on open ground.
fn sketch() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(2), ..NetKind::new("long", 50.0, 14) });
    let outline = [(0.0, 0.0), (26.1, 1.2), (24.4, 25.0), (-1.0, 23.6)];
    let outline = outline.map(|(east, north)| Point::new(east, north)).to_vec();
    plan.runs.push(Run { id: "run-1".to_owned(), outline, ..Run::default() });
    plan
}

fn open(plan: Plan) -> Desk {
    let mut desk = on_page(plan, Page::Run, [1280.0, 1100.0], Words::default());
    settle(&mut desk);
    desk
}

fn fit(desk: &mut Desk) {
    desk.get_by_label("Fit to whole nets").click();
    settle(desk);
}

#[test]
fn one_click_makes_every_side_whole_panels_as_one_step() {
    let mut desk = open(sketch());
    fit(&mut desk);
    let editor = window(&desk).editor();
    let outline = &editor.plan().runs[0].outline;
    let panel_m = 50.0 / 14.0;
    let panels = (0..4).map(|side| {
        let (from, to) = (outline[side], outline[(side + 1) % 4]);
        (from.east_m - to.east_m).hypot(from.north_m - to.north_m) / panel_m
    });
    let panels: Vec<f64> = panels.collect();
    assert!(panels.iter().all(|panels| (panels - panels.round()).abs() < 1e-6), "{panels:?}");
    assert!((panels.iter().sum::<f64>() - 28.0).abs() < 1e-6);
    let lay = editor.workup().runs[0].lay.as_ref().unwrap();
    assert!(lay.corners.iter().all(|corner| corner.to_post_m < 1e-6));
    assert_eq!(editor.deeds().0, [Deed::FitNets]);
    desk.get_by_label_contains("Every side is whole panels now: 7, 7, 7, 7.");
    // No spare on ground that is never level: the corner to draw in is said.
    desk.get_by_label_contains("Ground is never level");

    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), sketch(), "one step takes it back");
    assert!(desk.query_by_label_contains("Every side is whole panels now").is_none());
}

#[test]
fn panels_doubled_back_are_asked_for_with_one_more_click() {
    let mut desk = open(sketch());
    assert!(desk.query_by_label("Panels doubled back").is_none(), "nothing is asked before it matters");
    fit(&mut desk);
    desk.get_by_label("Panels doubled back");
    desk.get_by_role_and_label(egui::accesskit::Role::RadioButton, "2").click();
    settle(&mut desk);
    let lay = window(&desk).editor().workup().runs[0].lay.as_ref().unwrap();
    assert!((lay.spare_m - 100.0 / 14.0).abs() < 1e-6, "two panels of 50 m / 14: {}", lay.spare_m);
    assert!(desk.query_by_label_contains("Ground is never level").is_none());
}

#[test]
fn what_cannot_be_is_said_with_the_nearest_that_can() {
    let mut plan = sketch();
    // From corner to corner of this paddock are fewer than five panels, so that four sides use no 28.
    let corner = |east: f64, north: f64| Point::new(east, north);
    plan.ground.boundary = vec![corner(-2.0, -2.0), corner(10.0, -2.0), corner(10.0, 10.0), corner(-2.0, 10.0)];
    let mut desk = open(plan.clone());
    fit(&mut desk);
    desk.get_by_label_contains("No outline of whole panels");
    assert_eq!(*window(&desk).editor().plan(), plan, "nothing is changed unasked");
    desk.get_by_label_contains("doubled back in place of 0");
    desk.get_by_label("Take the nearest").click();
    desk.run();
    desk.run();
    desk.get_by_label_contains("Every side is whole panels now");
    let outline = window(&desk).editor().plan().runs[0].outline.clone();
    let inside = |at: f64| (-2.0 - 1e-6..=10.0 + 1e-6).contains(&at);
    assert!(outline.iter().all(|at| inside(at.east_m) && inside(at.north_m)), "{outline:?}");
}
