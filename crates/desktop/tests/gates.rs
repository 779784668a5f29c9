//! Pins and gates on the page about the run, by label.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod hand;

use desktop::editor::{Message, Page};
use drawing::Thing;
use egui_kittest::kittest::Queryable;
use hand::{Desk, click, fill, on_page, spot, window};
use plan::{GateKind, PinKind, Plan, Point};
use words::Words;

/// A square of 30 m of four nets of 10 panels in a paddock, its corners on posts wherever the chain starts at one.
fn farm() -> Plan {
    let text = r#"{ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]] },
        "store": { "nets": [ { "id": "roll", "count": 4, "length_m": 30, "panels": 10 },
            { "id": "short", "count": 2, "length_m": 15, "panels": 5 } ] },
        "coop": { "id": "house", "at": [50, 50], "length_m": 4, "width_m": 2 },
        "runs": [ { "id": "run", "outline": [[35, 35], [65, 35], [65, 65], [35, 65]], "coop": "house",
            "nets": ["roll", "roll", "roll", "short", "short"] } ] }"#;
    plan::read(text.as_bytes()).unwrap().plan
}

fn desk(plan: Plan) -> Desk {
    on_page(plan, Page::Run, [1280.0, 3200.0], Words::default())
}

fn say(desk: &mut Desk, message: Message) {
    desk.state_mut().as_mut().unwrap().say(message);
    desk.run();
    desk.run();
}

fn press(desk: &mut Desk, label: &str) {
    desk.get_by_label(label).click();
    desk.run();
    desk.run();
}

fn plan(desk: &Desk) -> Plan {
    window(desk).editor().plan().clone()
}

#[test]
fn a_corner_that_is_picked_can_be_pinned_and_the_pin_says_its_cost_and_goes() {
    let mut desk = desk(farm());
    desk.get_by_label_contains("Nothing is fixed");
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    press(&mut desk, "Pin a join at corner 3");
    let pin = plan(&desk).runs[0].pins[0].clone();
    assert_eq!((pin.kind, pin.at), (PinKind::Join, Point::new(65.0, 65.0)));
    desk.get_by_label("Join 60.0 m from corner 1: costs nothing");
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    press(&mut desk, "Pin net short at corner 2");
    press(&mut desk, "Start the chain at corner 2");
    // A chain has one start: the second takes the first one's place.
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 3 })));
    press(&mut desk, "Start the chain at corner 4");
    let pins = plan(&desk).runs[0].pins.clone();
    assert_eq!(pins.iter().map(|pin| pin.kind).collect::<Vec<_>>(), [PinKind::Join, PinKind::Net, PinKind::Start]);
    let lay = window(&desk).editor().workup().runs[0].lay.clone().unwrap();
    assert!(lay.pins.iter().all(|pin| pin.kept), "{:?}", lay.pins);
    assert!((lay.start_m - 90.0).abs() < 1e-6);
    press(&mut desk, "Join 60.0 m from corner 1: costs nothing");
    press(&mut desk, "Take out the pin: Join 60.0 m from corner 1");
    assert_eq!(plan(&desk).runs[0].pins.len(), 2);
    say(&mut desk, Message::Undo);
    assert_eq!(plan(&desk).runs[0].pins, pins);
}

#[test]
fn gates_are_added_set_at_a_join_widened_and_taken_out() {
    let mut desk = desk(farm());
    press(&mut desk, "A gate for a quad");
    assert_eq!(plan(&desk).runs[0].gates[0].kind, GateKind::Wheels);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Gate { run: 0, gate: 0 }));
    desk.get_by_label_contains("3.00 m clear, at the join");
    desk.get_by_label("1 post pulled, 1 panel laid back");
    desk.get_by_label_contains("from the gateway");
    fill(&mut desk, "Clear width of gate 1", "5");
    assert_eq!(plan(&desk).runs[0].gates[0].width_m, Some(5.0));
    desk.get_by_label("2 posts pulled, 2 panels laid back");
    let joins = window(&desk).editor().workup().runs[0].lay.as_ref().unwrap().join_places();
    let label = format!("Put gate 1 at {}", care::place_on_line(Words::default(), joins[1].0));
    press(&mut desk, &label);
    assert_eq!(plan(&desk).runs[0].gates[0].at, Some(joins[1].1));
    press(&mut desk, "Let the tool choose the join of gate 1");
    assert_eq!(plan(&desk).runs[0].gates[0].at, None);
    press(&mut desk, "A gate for the coop");
    desk.get_by_label_contains("from the coop");
    press(&mut desk, "Take out gate 2");
    assert_eq!(plan(&desk).runs[0].gates.len(), 1);
}

#[test]
fn a_gate_wanted_off_a_join_is_offered_a_join_there() {
    let mut plan_off = farm();
    plan_off.runs[0].gates = vec![plan::Gate { at: Some(Point::new(50.0, 35.0)), ..plan::Gate::new(GateKind::Foot) }];
    let mut desk = desk(plan_off);
    say(&mut desk, Message::Pick(Some(Thing::Gate { run: 0, gate: 0 })));
    let far_m = window(&desk).editor().workup().runs[0].gates[0].from_stated_m.unwrap();
    if far_m > 1.0 {
        press(&mut desk, "Pin a join where gate 1 is wanted");
    }
    let far_m = window(&desk).editor().workup().runs[0].gates[0].from_stated_m.unwrap();
    assert!(far_m < 1e-6, "{far_m}");
}

#[test]
fn one_click_moves_a_corner_to_a_post() {
    let mut plan_off = farm();
    plan_off.runs[0].outline[2] = Point::new(65.0, 64.0);
    let mut desk = desk(plan_off);
    let off = |desk: &Desk| {
        let lay = window(desk).editor().workup().runs[0].lay.clone().unwrap();
        lay.corners
            .iter()
            .filter(|corner| corner.is_between_posts())
            .filter_map(|corner| corner.vertex)
            .collect::<Vec<_>>()
    };
    let before = off(&desk);
    assert!(!before.is_empty());
    let corner = before[0];
    let label = format!("Move corner {} to a post", corner + 1);
    desk.get_by_label_contains(&label).click();
    desk.run();
    desk.run();
    assert!(!off(&desk).contains(&corner), "{:?}", off(&desk));
    assert!(desk.query_by_label_contains(&label).is_none());
    // One step back and it stands where it stood.
    say(&mut desk, Message::Undo);
    assert_eq!(off(&desk), before);
}

#[test]
fn a_pin_goes_with_the_corner_that_it_holds() {
    let mut pinned = farm();
    pinned.runs[0].pins = vec![plan::Pin::new(PinKind::Corner, Point::new(65.0, 65.0))];
    let mut desk = desk(pinned);
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    say(&mut desk, Message::Nudge(1.0, 2.0));
    let run = plan(&desk).runs[0].clone();
    assert_eq!((run.outline[2], run.pins[0].at), (Point::new(66.0, 67.0), Point::new(66.0, 67.0)));
    say(&mut desk, Message::Undo);
    assert_eq!(plan(&desk).runs[0].pins[0].at, Point::new(65.0, 65.0));
}

#[test]
fn the_gateway_is_set_by_a_click_and_the_way_begins_there() {
    let mut with_gate = farm();
    with_gate.runs[0].gates = vec![plan::Gate::new(GateKind::Wheels)];
    let mut desk = on_page(with_gate, Page::Ground, [1280.0, 900.0], Words::default());
    press(&mut desk, "Set gateway");
    let at = spot(&desk, Point::new(20.0, 0.0));
    click(&mut desk, at);
    let gateway = plan(&desk).ground.gateway.unwrap().at;
    assert!((gateway.east_m - 20.0).hypot(gateway.north_m) < 1.0, "{gateway:?}");
    let road = window(&desk).editor().workup().runs[0].gates[0].road.clone().unwrap();
    assert_eq!(road.points[0], gateway);
    say(&mut desk, Message::Remove);
    assert!(plan(&desk).ground.gateway.is_none());
}
