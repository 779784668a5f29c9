//! Pins and gates on the page about the run, by label.

use crate::hand;
use crate::hand::{Desk, button, click, fill, on_page, settle, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui_kittest::kittest::Queryable;
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
    settle(desk);
}

fn press(desk: &mut Desk, label: &str) {
    desk.get_by_label(label).click();
    desk.run();
    // Ways and costs come from the worker.
    settle(desk);
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
    desk.get_by_label("Join at corner 3: costs nothing");
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
    press(&mut desk, "Join at corner 3: costs nothing");
    press(&mut desk, "Take out the pin: Join at corner 3");
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
    desk.get_by_label_contains(" pulled, 1 panel laid back");
    desk.get_by_label_contains("from the gateway");
    fill(&mut desk, "Clear width of gate 1", "5");
    settle(&mut desk);
    assert_eq!(plan(&desk).runs[0].gates[0].width_m, Some(5.0));
    desk.get_by_label_contains(" pulled, 2 panels laid back");
    let lay = window(&desk).editor().workup().runs[0].lay.clone().unwrap();
    let joins = lay.join_places();
    let label = format!("Put gate 1 at the join {}", care::place_on_line(Words::default(), &lay, joins[1].0));
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
    settle(&mut desk);
    let gateway = plan(&desk).ground.gateway.unwrap().at;
    assert!((gateway.east_m - 20.0).hypot(gateway.north_m) < 1.0, "{gateway:?}");
    let road = window(&desk).editor().workup().runs[0].gates[0].road.clone().unwrap();
    assert_eq!(road.points[0], gateway);
    say(&mut desk, Message::Remove);
    assert!(plan(&desk).ground.gateway.is_none());
}

/// A square of 30 m of four rolls with its joins pinned amid its sides, a gate at the southern one.
fn gated() -> Plan {
    let mut plan = farm();
    let run = &mut plan.runs[0];
    run.nets = Some(vec!["roll".to_owned(); 4]);
    run.pins = vec![plan::Pin::new(PinKind::Join, Point::new(50.0, 35.0))];
    run.gates = vec![plan::Gate { at: Some(Point::new(50.0, 35.0)), ..plan::Gate::new(GateKind::Wheels) }];
    plan
}

/// Where the ring of a gate's pulled post lies on the map: outward of the post.
fn mark(desk: &Desk) -> egui::Pos2 {
    let worked = &window(desk).editor().workup().runs[0];
    let post = worked.lay.as_ref().unwrap().posts[worked.gates[0].opening.as_ref().unwrap().pulled[0]].at;
    let (east, north) = (post.east_m - 50.0, post.north_m - 50.0);
    let outward = if east.abs() > north.abs() {
        egui::vec2(east.signum() as f32, 0.0)
    } else {
        egui::vec2(0.0, -north.signum() as f32)
    };
    spot(desk, post) + outward * 15.0
}

#[test]
fn a_gate_is_dragged_from_join_to_join_as_one_step_with_its_figures_at_hand() {
    let mut desk = on_page(gated(), Page::Run, [1280.0, 800.0], Words::default());
    settle(&mut desk);
    let from = mark(&desk);
    let to = spot(&desk, Point::new(65.0, 50.0));
    let past = spot(&desk, Point::new(62.0, 37.0));
    desk.event(egui::Event::PointerMoved(from));
    desk.run();
    assert_eq!(window(&desk).editor().hovered(), Some(Thing::Gate { run: 0, gate: 0 }));
    button(&desk, from, true);
    desk.run();
    for at in [from + (past - from) * 0.4, past, to + (past - to) * 0.3, to] {
        desk.event(egui::Event::PointerMoved(at));
        desk.run();
    }
    let editor = window(&desk).editor();
    assert_eq!(editor.plan().runs[0].gates[0].at, Some(Point::new(65.0, 50.0)));
    let said = editor.snapped().unwrap().reason.clone();
    let post = editor.workup().runs[0].gates[0].opening.as_ref().unwrap().pulled[0] + 1;
    assert_eq!(said, format!("3.00 m clear, at the join 15.0 m past corner 2; post {post} pulled, 1 panel laid back"));
    // While it is in the hand nothing is searched for, and the page says so.
    assert!(editor.workup().runs[0].gates[0].waits());
    desk.get_by_label("the way follows");
    button(&desk, to, false);
    desk.run();
    settle(&mut desk);
    desk.get_by_label_contains("from the gateway");
    assert!(window(&desk).editor().snapped().is_none());
    say(&mut desk, Message::Undo);
    assert_eq!(plan(&desk), gated(), "one drag, one step");
    assert!(!window(&desk).editor().can_undo());
}

/// The ground that its leaf sweeps is the gate's as much as its ring; once it is picked, so is the shut leaf.
#[test]
fn a_gate_is_dragged_by_its_whole_body() {
    let places = |desk: &Desk| {
        let mut shapes = window(desk).editor().drawing().shapes();
        let (hinge, arc) = shapes
            .find_map(|shape| match (shape.role, &shape.form) {
                (drawing::Role::Swing { hinge }, drawing::Form::Path { points, .. }) => Some((hinge, points.clone())),
                _ => None,
            })
            .unwrap();
        let between = |one: Point, other: Point, share: f64| {
            Point::new(
                one.east_m + share * (other.east_m - one.east_m),
                one.north_m + share * (other.north_m - one.north_m),
            )
        };
        // Swept ground, well off the net; then the shut leaf between its posts.
        [between(hinge, arc[arc.len() - 3], 0.8), between(hinge, arc[0], 0.5)]
    };
    for (body, picked) in [(0, false), (0, true), (1, true)] {
        let mut desk = on_page(gated(), Page::Run, [1280.0, 800.0], Words::default());
        settle(&mut desk);
        if picked {
            say(&mut desk, Message::Pick(Some(Thing::Gate { run: 0, gate: 0 })));
        }
        let from = spot(&desk, places(&desk)[body]);
        let way = spot(&desk, Point::new(65.0, 50.0)) - spot(&desk, Point::new(50.0, 35.0));
        hand::drag(&mut desk, from, from + way);
        assert_eq!(plan(&desk).runs[0].gates[0].at, Some(Point::new(65.0, 50.0)), "{body} {picked}");
    }
    // Not picked, the leaf is still the net's side.
    let mut desk = on_page(gated(), Page::Run, [1280.0, 800.0], Words::default());
    settle(&mut desk);
    let leaf = spot(&desk, places(&desk)[1]);
    desk.event(egui::Event::PointerMoved(leaf));
    desk.run();
    assert!(!matches!(window(&desk).editor().hovered(), Some(Thing::Gate { .. })));
}

#[test]
fn the_keys_take_a_picked_gate_to_the_next_join() {
    let mut desk = desk(gated());
    say(&mut desk, Message::Pick(Some(Thing::Gate { run: 0, gate: 0 })));
    say(&mut desk, Message::Nudge(0.1, 0.0));
    assert_eq!(plan(&desk).runs[0].gates[0].at, Some(Point::new(65.0, 50.0)));
    say(&mut desk, Message::Nudge(0.0, 0.1));
    assert_eq!(plan(&desk).runs[0].gates[0].at, Some(Point::new(50.0, 65.0)));
    // Farther north there is none.
    say(&mut desk, Message::Nudge(0.0, 0.1));
    say(&mut desk, Message::Undo);
    say(&mut desk, Message::Undo);
    assert_eq!(plan(&desk), gated());
}

#[test]
fn a_gate_that_is_only_pressed_stays_where_the_tool_put_it() {
    let mut free = gated();
    free.runs[0].gates[0].at = None;
    let mut desk = on_page(free.clone(), Page::Run, [1280.0, 800.0], Words::default());
    settle(&mut desk);
    let from = mark(&desk);
    hand::drag(&mut desk, from, from + egui::vec2(9.0, 2.0));
    assert_eq!(plan(&desk), free);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Gate { run: 0, gate: 0 }));
}

#[test]
fn two_gates_open_two_joins_and_what_is_not_left_is_said() {
    let mut desk = desk(gated());
    for _ in 0..3 {
        press(&mut desk, "A gate on foot");
    }
    let joins: Vec<_> =
        window(&desk).editor().workup().runs[0].gates.iter().map(|gate| gate.opening.as_ref().unwrap().nets).collect();
    assert!((0..4).all(|one| (0..one).all(|other| joins[one] != joins[other])), "{joins:?}");
    assert!(desk.query_by_label("no join left to open").is_none());
    press(&mut desk, "A gate on foot");
    desk.get_by_label("no join left to open");
}

#[test]
fn a_picked_gate_is_shown_open_on_the_map() {
    let mut desk = desk(gated());
    settle(&mut desk);
    let lay = window(&desk).editor().workup().runs[0].lay.clone().unwrap();
    let opening = window(&desk).editor().workup().runs[0].gates[0].opening.clone().unwrap();
    let ghost = drawing::Ghost::open_gate(&lay, &opening, "3.00 m clear".to_owned()).unwrap();
    assert_eq!((ghost.outline.len(), ghost.closed), (2, false));
    let view = *window(&desk).editor().view();
    let said = |ink: &[drawing::Ink]| {
        ink.iter().any(|ink| matches!(ink, drawing::Ink::Text { text, .. } if text == "3.00 m clear"))
    };
    let drawing = window(&desk).editor().drawing().clone();
    assert!(said(&drawing.ink_with(&view, Some(&ghost))) && !said(&drawing.ink(&view)));
    say(&mut desk, Message::Pick(Some(Thing::Gate { run: 0, gate: 0 })));
    desk.get_by_label("3.00 m clear, at the join 15.0 m past corner 1");
}

#[test]
fn only_pins_that_can_be_kept_are_offered() {
    // An open line: a join stands where a net ends, and nowhere else.
    let mut open = gated();
    open.runs[0].closed = Some(false);
    open.runs[0].gates.clear();
    open.runs[0].pins.clear();
    let mut desk = desk(open);
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    press(&mut desk, "Pin a join at corner 2");
    say(&mut desk, Message::Pick(Some(Thing::Post { run: 0, post: 3 })));
    desk.get_by_label("No join can stand at post 4 with these nets and pins.");
    assert!(desk.query_by_label("Pin a join at post 4").is_none());
}
