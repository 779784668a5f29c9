//! Everything on the map has its figures typed in the list of everything, wherever the page is.

use crate::hand::{self, Desk, fill, plan_of, say};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::Key;
use plan::{Branch, Fault, FaultKind, Gate, GateKind, Gateway, LeakageZone, Plan, Point, Rest, SpotHeight};
use words::Words;

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

/// The example with one of everything.
fn farm() -> Plan {
    let mut plan = hand::plans::drawn_on(hand::example());
    plan.ground.gateway = Some(Gateway { at: at(0.0, 0.0), rest: Rest::new() });
    plan.heights = vec![SpotHeight { at: at(5.0, 5.0), up_m: 1.0, rest: Rest::new() }];
    let run = &mut plan.runs[0];
    let line = run.outline.clone();
    let middle = Point::new(line[0].east_m.midpoint(line[1].east_m), line[0].north_m.midpoint(line[1].north_m));
    run.feed_at = Some(line[0]);
    run.gates = vec![Gate::new(GateKind::Foot)];
    run.faults = vec![Fault {
        at: middle,
        kind: FaultKind::Short,
        ohm: Some(50.0),
        lines: None,
        cause: None,
        rest: Rest::new(),
    }];
    run.leakage_zones = vec![LeakageZone { from_m: 40.0, to_m: 60.0, s_per_m: 1e-4, rest: Rest::new() }];
    run.branches = vec![Branch {
        from_m: 20.0,
        outline: vec![middle, at(middle.east_m, middle.north_m - 10.0)],
        ..Branch::default()
    }];
    plan
}

/// The list with a thing picked in it, on a page that is about none of it.
fn listed(thing: Thing) -> Desk {
    let mut desk = hand::on_page(farm(), Page::Book, [1280.0, 1600.0], Words::default());
    say(&mut desk, Message::Many(ManyMessage::List(true)));
    say(&mut desk, Message::Pick(Some(thing)));
    desk.run();
    desk
}

fn typed(thing: Thing, field: &str, text: &str) -> Plan {
    let mut desk = listed(thing);
    let before = hand::deeds(&desk);
    fill(&mut desk, field, text);
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(hand::deeds(&desk), before + 1, "{thing:?}: {field} is one step");
    plan_of(&desk)
}

#[test]
fn what_is_one_place_is_typed_east_and_north() {
    let place = |thing: Thing, name: &str| {
        let east = typed(thing, &format!("East of {name}"), "12.25");
        (east.clone(), typed(thing, &format!("North of {name}"), "7.5"))
    };
    let (east, north) = place(Thing::Gateway, "Gateway of the paddock");
    assert_eq!(east.ground.gateway.unwrap().at, at(12.25, 0.0));
    assert_eq!(north.ground.gateway.unwrap().at, at(0.0, 7.5));
    let (east, north) = place(Thing::Height { height: 0 }, "Spot height 1");
    assert_eq!((east.heights[0].at, north.heights[0].at), (at(12.25, 5.0), at(5.0, 7.5)));
    let (east, _) = place(Thing::Drop { run: 0 }, "Drop point of Round Quince House");
    assert_eq!(east.runs[0].drop_at, Some(at(12.25, 20.0)));
    let (_, north) = place(Thing::Feed { run: 0 }, "Feed point of Round Quince House");
    assert_eq!(north.runs[0].feed_at.unwrap().north_m, 7.5);
    let (east, _) = place(Thing::Label { label: 0 }, "Trough");
    assert_eq!(east.labels[0].at, at(12.25, 40.0));
    let (east, _) = place(Thing::EarthStake { run: 0, stake: 1 }, "Earth stake 2 of Round Quince House");
    assert_eq!(east.runs[0].earth_stakes.places[1].east_m, 12.25);
}

#[test]
fn figures_of_what_is_on_a_run_are_typed_too() {
    let plan = typed(Thing::Height { height: 0 }, "Height 1, up", "2.5");
    assert_eq!(plan.heights[0].up_m, 2.5);
    let plan = typed(Thing::Fault { run: 0, branch: None, fault: 0 }, "Resistance of fault 1", "900");
    assert_eq!(plan.runs[0].faults[0].ohm, Some(900.0));
    let plan = typed(Thing::Zone { run: 0, branch: None, zone: 0 }, "Start of grass 1", "35");
    assert_eq!(plan.runs[0].leakage_zones[0].from_m, 35.0);
    let plan = typed(Thing::Gate { run: 0, gate: 0 }, "Clear width of gate 1", "1.5");
    assert_eq!(plan.runs[0].gates[0].width_m, Some(1.5));
    let plan = typed(Thing::Branch { run: 0, branch: 0 }, "Where branch 1 hangs", "25");
    assert_eq!(plan.runs[0].branches[0].from_m, 25.0);
}

#[test]
fn walls_shade_and_words_are_named() {
    let before = farm();
    let wall = typed(Thing::Wall { wall: 0 }, "Name of Hedge 1", "By the ash");
    assert_eq!(wall.walls[0].name, "By the ash");
    assert_eq!((&wall.ground.shade, &wall.labels), (&before.ground.shade, &before.labels));
    let shade = typed(Thing::Shade { shade: 0 }, "Name of Shade 1", "By the ash");
    assert_eq!(shade.ground.shade[0].name, "By the ash");
    assert_eq!((&shade.walls, &shade.labels), (&before.walls, &before.labels));
    let label = typed(Thing::Label { label: 0 }, "Name of Trough", "By the ash");
    assert_eq!(label.labels[0].text, "By the ash");
    assert_eq!((&label.walls, &label.ground.shade), (&before.walls, &before.ground.shade));
}
