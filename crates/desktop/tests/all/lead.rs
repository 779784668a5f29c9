//! A page under the hand: what is picked leads it, and what is edited stays where it is.

use crate::hand::{example, on_page, settle, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui_kittest::kittest::Queryable;
use words::Words;

#[test]
fn a_field_stays_under_the_hand_while_lines_above_it_come() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    settle(&mut desk);
    desk.get_by_label("Length of side 2 to 3").focus();
    desk.run();
    desk.get_by_label("Length of side 2 to 3").scroll_to_me();
    desk.run();
    let before = desk.get_by_label("Length of side 2 to 3").rect().top();
    assert!((100.0..700.0).contains(&before), "in sight: {before}");
    let run = window(&desk).editor().plan().runs[0].clone();
    let (last, first) = (run.outline[run.outline.len() - 1], run.outline[0]);
    let at = plan::Point::new(last.east_m.midpoint(first.east_m) - 2.0, last.north_m.midpoint(first.north_m) - 2.0);
    let (shape, corner) = (plan::Shape::Run(run.id.clone()), run.outline.len());
    desk.state_mut().as_mut().unwrap().say(Message::Make(plan::Edit::InsertCorner { shape, corner, at }));
    settle(&mut desk);
    let rows = window(&desk).editor().plan().runs[0].outline.len();
    assert_eq!(rows, run.outline.len() + 1, "one row more above it");
    let now = desk.get_by_label("Length of side 2 to 3").rect().top();
    assert!((now - before).abs() < 1.0, "{before} and {now}");
}

#[test]
fn what_is_picked_leads_the_ground_page_with_its_fields_in_sight() {
    let mut plan = example();
    plan.ground.keep_outs[0].name = String::new();
    plan.ground.keep_outs[0].water = true;
    let mut desk = on_page(plan, Page::Ground, [900.0, 600.0], Words::default());
    for (thing, title, field) in [
        (Thing::KeepOut { keep_out: 1 }, "Old well", "Keep off by of Old well"),
        (Thing::Hazard { hazard: 0 }, "", "Name"),
        (Thing::Coop { coop: 0 }, "", "Name of the coop"),
    ] {
        desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(thing)));
        desk.run();
        if !title.is_empty() {
            let heads = desk.query_all_by_role_and_label(egui::accesskit::Role::Heading, title);
            let first = heads.map(|head| head.rect().top()).fold(f32::INFINITY, f32::min);
            assert!(first < 100.0, "{title} at {first}");
        }
        let fields = desk.query_all_by_label_contains(field);
        let first = fields.map(|field| field.rect().bottom()).fold(f32::INFINITY, f32::min);
        // The names of what lies below stand at the foot, from 520 down.
        assert!(first < 510.0, "{field} at {first}");
    }
    // Two that have no name are told apart.
    desk.get_by_label_contains("Water 1:");
}
