//! Earth stakes on the map: put there, dragged each by itself, taken out, one more, one in a brace's stake; each one step.

use crate::hand;
use crate::hand::{Desk, button, click, click_on, deeds, drag, example, fill, spot, undo, window};
use desktop::editor::{Message, Page};
use drawing::{Form, Role, Thing};
use egui::Key;
use egui_kittest::kittest::Queryable;
use plan::{EarthStakes, Plan, Point, Run};
use words::Words;

/// A window on the page about volts that shows all of it.
fn open(plan: Plan) -> Desk {
    hand::on_page(plan, Page::Power, [1280.0, 3600.0], Words::default())
}

/// The example farm with a row of so many stakes from a place on.
fn row(count: u32, at: Option<(f64, f64)>) -> Plan {
    let mut plan = example();
    plan.runs[0].earth_stakes = EarthStakes { count: Some(count), at: at.map(Point::from), ..EarthStakes::default() };
    plan
}

fn run(desk: &Desk) -> &Run {
    &window(desk).editor().plan().runs[0]
}

fn places(desk: &Desk) -> &[Point] {
    &run(desk).earth_stakes.places
}

fn ohm(desk: &Desk) -> f64 {
    window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().earth_ohm
}

/// Where the map draws the stakes.
fn drawn(desk: &Desk) -> Vec<Point> {
    let shapes = window(desk).editor().drawing().shapes();
    let of = |stake: usize| Some(Thing::EarthStake { run: 0, stake });
    let mark = |stake: usize| {
        let own = shapes.clone().find(|shape| shape.role == Role::EarthStake && shape.thing == of(stake))?;
        if let Form::Mark { at, .. } = own.form { Some(at) } else { None }
    };
    (0..).map_while(mark).collect()
}

/// Well off the run, south-west of its feed.
const OFF: (f64, f64) = (12.0, 12.0);

#[test]
fn dragging_one_of_a_row_states_where_all_stand_as_one_step() {
    let mut desk = open(row(3, Some(OFF)));
    let (was, before, row_ohm) = (drawn(&desk), deeds(&desk), ohm(&desk));
    assert_eq!(was.len(), 3);
    let from = spot(&desk, was[1]);
    let to = from + egui::vec2(0.0, 60.0);
    drag(&mut desk, from, to);
    assert_eq!(deeds(&desk), before + 1, "a drag is one step");
    let now = places(&desk).to_vec();
    assert_eq!((now[0], now[2]), (was[0], was[2]), "the others stay");
    assert!(now[1].north_m < was[1].north_m - 1.0 && (now[1].east_m - was[1].east_m).abs() < 1e-6);
    let stakes = &run(&desk).earth_stakes;
    assert_eq!((stakes.count, stakes.at), (None, None), "stated once");
    assert_eq!(drawn(&desk), now);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::EarthStake { run: 0, stake: 1 }));
    assert!(ohm(&desk) < row_ohm, "the middle one stands freer");
    // An arrow key moves it by a step, and undo goes back over both.
    desk.key_press(Key::ArrowDown);
    desk.run();
    assert!((places(&desk)[1].north_m - now[1].north_m + 0.1).abs() < 1e-9);
    undo(&mut desk);
    assert_eq!(places(&desk), now);
    undo(&mut desk);
    assert!(places(&desk).is_empty());
    assert_eq!(run(&desk).earth_stakes.at, Some(Point::from(OFF)));
    assert!((ohm(&desk) - row_ohm).abs() < 1e-9);
}

#[test]
fn a_stake_is_deleted_and_the_last_one_stands_nowhere() {
    let mut desk = open(row(2, Some(OFF)));
    let (was, before) = (drawn(&desk), deeds(&desk));
    let at = spot(&desk, was[0]);
    click(&mut desk, at);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::EarthStake { run: 0, stake: 0 }));
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!((places(&desk), deeds(&desk)), (&was[1..], before + 1));
    let at = spot(&desk, was[1]);
    click(&mut desk, at);
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(run(&desk).earth_stakes, EarthStakes::default());
    // The one that is assumed stays.
    let at = spot(&desk, drawn(&desk)[0]);
    click(&mut desk, at);
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(deeds(&desk), before + 2);
    assert_eq!(window(&desk).editor().notice(), Some(words::texts::Window::LastStake));
    assert_eq!(drawn(&desk).len(), 1);
    undo(&mut desk);
    undo(&mut desk);
    assert_eq!(run(&desk).earth_stakes.count, Some(2));
}

#[test]
fn the_pages_tool_puts_a_stake_where_it_is_clicked() {
    let mut desk = open(row(1, None));
    click_on(&mut desk, "Place on the map");
    let before = deeds(&desk);
    let at = spot(&desk, Point::from(OFF));
    click(&mut desk, at);
    assert_eq!((places(&desk).len(), deeds(&desk)), (1, before + 1));
    assert!((places(&desk)[0].east_m - OFF.0).abs() < 1e-6);
    click_on(&mut desk, "One more on the map");
    let alone = ohm(&desk);
    let next = spot(&desk, Point::new(OFF.0 + 4.0, OFF.1 - 3.0));
    click(&mut desk, next);
    assert_eq!(places(&desk).len(), 2);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::EarthStake { run: 0, stake: 1 }));
    assert!(ohm(&desk) < 0.6 * alone);
    // The button beside the picture puts one more in line beyond the last.
    click_on(&mut desk, "One stake more");
    let [one, two, three] = places(&desk) else { panic!("{:?}", places(&desk)) };
    let way = |a: &Point, b: &Point| (b.east_m - a.east_m, b.north_m - a.north_m);
    let (first, then) = (way(one, two), way(two, three));
    assert!((then.0.hypot(then.1) - 3.0).abs() < 1e-9, "at the assumed spacing");
    assert!((first.0 * then.1 - first.1 * then.0).abs() < 1e-9 && first.0 * then.0 + first.1 * then.1 > 0.0);
    click_on(&mut desk, "One stake fewer");
    assert_eq!(places(&desk).len(), 2);
    click_on(&mut desk, "All in a row again");
    let stakes = &run(&desk).earth_stakes;
    assert_eq!((stakes.count, stakes.places.len()), (Some(2), 0));
    fill(&mut desk, "Stakes, earth stakes", "3");
    assert_eq!(drawn(&desk).len(), 3);
}

#[test]
fn what_is_dragged_before_anything_was_said_stays_where_it_is_let_go() {
    let mut desk = open(row(2, None));
    let was = drawn(&desk);
    let from = spot(&desk, was[1]);
    drag(&mut desk, from, from + egui::vec2(20.0, -30.0));
    assert_eq!(places(&desk).len(), 2);
    assert!((places(&desk)[0].east_m - was[0].east_m).abs() < 1e-9);
    // By its wire all of it moves.
    let (one, two) = (places(&desk)[0], places(&desk)[1]);
    let middle = Point::new(f64::midpoint(one.east_m, two.east_m), f64::midpoint(one.north_m, two.north_m));
    let from = spot(&desk, middle);
    drag(&mut desk, from, from + egui::vec2(-30.0, 10.0));
    let now = places(&desk).to_vec();
    assert!((now[0].east_m - one.east_m - (now[1].east_m - two.east_m)).abs() < 1e-9);
    assert!(now[0].east_m < one.east_m - 0.5);
}

#[test]
fn the_pointer_reads_how_far_off_what_a_stake_stands_and_the_row_says_the_same() {
    let mut plan = row(2, Some(OFF));
    let stand = vec![Point::from(OFF), Point::new(OFF.0, OFF.1 - 4.0)];
    plan.runs[0].earth_stakes = EarthStakes { places: stand, ..EarthStakes::default() };
    let mut desk = open(plan);
    let editor = window(&desk).editor();
    let all = workup::earth::stakes(editor.plan(), editor.workup(), 0);
    let words = Words::default();
    let said = care::earths::said(editor.plan(), editor.workup(), 0, &all[1], words);
    assert!(
        said.contains(" off the net, ") && said.contains(" from the feed point, 4.0 m from the next stake"),
        "{said}"
    );
    desk.get_by_label(&format!("Stake 2: {said}"));
    // While it is in the hand the plate beside it says it too.
    let at = spot(&desk, Point::new(OFF.0, OFF.1 - 4.0));
    desk.event(egui::Event::PointerMoved(at));
    desk.run();
    assert_eq!(window(&desk).editor().hovered(), Some(Thing::EarthStake { run: 0, stake: 1 }));
    button(&desk, at, true);
    desk.run();
    desk.event(egui::Event::PointerMoved(at + egui::vec2(8.0, 12.0)));
    desk.run();
    let shown = window(&desk).editor().snapped().unwrap().reason.clone();
    assert!(shown.contains(" off the net") && shown != said, "{shown}");
    button(&desk, at + egui::vec2(8.0, 12.0), false);
    desk.run();
    assert!(window(&desk).editor().snapped().is_none());
}

#[test]
fn a_braces_stake_takes_an_earth_stake_in() {
    let mut desk = open(row(1, None));
    let editor = window(&desk).editor();
    let lay = editor.run().unwrap().1.lay.as_ref().unwrap();
    let corners: Vec<Point> =
        lay.corners.iter().filter(|corner| corner.needs_brace()).map(|corner| corner.stake.at).collect();
    assert!(!corners.is_empty(), "the example has a corner that wants a brace");
    let pegs = |desk: &Desk| {
        let lay = window(desk).editor().run().unwrap().1.lay.clone().unwrap();
        lay.kits().iter().map(|(kit, count)| kit.own_pegs() as usize * count).sum::<usize>()
    };
    let (before, count) = (pegs(&desk), deeds(&desk));
    let label = desk.query_all_by_label_contains("Earth at corner").next().unwrap().rect().center();
    click(&mut desk, label);
    assert_eq!((places(&desk).len(), deeds(&desk), pegs(&desk)), (1, count + 1, before - 1));
    assert!(corners.contains(&places(&desk)[0]));
    assert!(desk.query_all_by_label_contains("holds corner").next().is_some());
    // The next corner's brace takes another stake: the one that holds a corner stays there.
    let first = places(&desk)[0];
    let label = desk.query_all_by_label_contains("Earth at corner").next().unwrap().rect().center();
    click(&mut desk, label);
    assert_eq!((places(&desk).len(), places(&desk)[0], pegs(&desk)), (2, first, before - 2));
    undo(&mut desk);
    // Dragged off it holds nothing; dragged near it, it is caught. From nearby, so that the corner is out of reach.
    let stake = places(&desk)[0];
    let about = spot(&desk, stake) - desk.get_by_label("Map").rect().min;
    desk.state_mut().as_mut().unwrap().say(Message::Zoom(6.0, [about.x, about.y]));
    desk.run();
    let from = spot(&desk, stake);
    drag(&mut desk, from, from + egui::vec2(40.0, 40.0));
    assert_eq!(pegs(&desk), before);
    let off = spot(&desk, places(&desk)[0]);
    drag(&mut desk, off, from + egui::vec2(3.0, 2.0));
    assert_eq!((places(&desk), pegs(&desk)), (&[stake][..], before - 1));
}

/// Takes the earth into the brace's stake that the page offers.
fn into_brace(desk: &mut Desk) {
    let label = desk.query_all_by_label_contains("Earth at corner").next().unwrap().rect().center();
    click(desk, label);
}

#[test]
fn a_row_that_stands_nowhere_keeps_its_stakes_when_a_brace_takes_the_first_in() {
    let mut desk = open(row(3, None));
    let (before, row_ohm) = (deeds(&desk), ohm(&desk));
    into_brace(&mut desk);
    assert_eq!((places(&desk).len(), deeds(&desk)), (3, before + 1));
    let lay = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    assert!(lay.corners.iter().any(|corner| corner.kit.earth && corner.stake.at == places(&desk)[0]));
    assert!((ohm(&desk) - row_ohm).abs() < 1e-6 * row_ohm, "three in a row earth as before");
}

/// The first guyed corner's stake, from so near that it alone is in reach.
fn guy(desk: &mut Desk) -> Point {
    let lay = window(desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    let at = lay.corners.iter().find(|corner| corner.needs_brace()).unwrap().stake.at;
    let about = spot(desk, at) - desk.get_by_label("Map").rect().min;
    desk.state_mut().as_mut().unwrap().say(Message::Zoom(6.0, [about.x, about.y]));
    desk.run();
    at
}

fn shared(desk: &Desk) -> usize {
    let lay = window(desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    lay.corners.iter().filter(|corner| corner.kit.earth).count()
}

#[test]
fn a_row_that_the_tool_puts_into_a_braces_stake_is_carried_once() {
    let mut desk = open(row(3, None));
    click_on(&mut desk, "Place on the map");
    let at = guy(&mut desk);
    let near = spot(&desk, at) + egui::vec2(3.0, 2.0);
    click(&mut desk, near);
    assert_eq!(run(&desk).earth_stakes.at, Some(at), "the plate says that the brace takes it in");
    assert_eq!((run(&desk).earth_stakes.count(), shared(&desk)), (3, 1));
}

#[test]
fn alt_lifts_the_catch_and_a_braces_stake_takes_in_one_earth_stake() {
    let mut desk = open(row(1, None));
    into_brace(&mut desk);
    let at = places(&desk)[0];
    let about = spot(&desk, at) - desk.get_by_label("Map").rect().min;
    desk.state_mut().as_mut().unwrap().say(Message::Zoom(6.0, [about.x, about.y]));
    desk.run();
    // A second one beside it stands where it was clicked.
    click_on(&mut desk, "One more on the map");
    let near = spot(&desk, at) + egui::vec2(4.0, 2.0);
    click(&mut desk, near);
    assert_eq!((places(&desk).len(), places(&desk)[0]), (2, at));
    assert_ne!(places(&desk)[1], at, "one stake holds the guy");
    undo(&mut desk);
    // While Alt is held the first is let go where the hand lets it go, nothing else.
    let from = spot(&desk, at);
    desk.event(egui::Event::ModifiersChanged(egui::Modifiers::ALT));
    drag(&mut desk, from, from + egui::vec2(6.0, 6.0));
    assert_ne!(places(&desk)[0], at);
    assert_eq!(shared(&desk), 0);
}
