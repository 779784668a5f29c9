//! The energizer on the map, the reach of its earth lead, damp ground, and the stakes put where it is dampest.

use crate::hand;
use crate::hand::{Desk, button, click, click_on, deeds, drag, example, fill, says, spot, undo, window};
use desktop::editor::{Message, Page};
use drawing::{Form, Role, Thing};
use egui::{Key, vec2};
use egui_kittest::kittest::Queryable;
use plan::lead::Conductor;
use plan::{Damp, EarthStakes, Plan, Point, Run};
use words::Words;

fn open(plan: Plan, page: Page) -> Desk {
    hand::on_page(plan, page, [1280.0, 3600.0], Words::default())
}

fn run(desk: &Desk) -> &Run {
    &window(desk).editor().plan().runs[0]
}

/// Empties a field, and Enter.
fn empty(desk: &mut Desk, label: &str) {
    desk.get_by_label(label).focus();
    desk.run();
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::A);
    desk.run();
    for key in [Key::Backspace, Key::Enter] {
        desk.key_press(key);
        desk.run();
    }
}

/// Where the map draws the energizer.
fn drawn(desk: &Desk) -> Point {
    let mut shapes = window(desk).editor().drawing().shapes();
    let thing = Some(Thing::Energizer { run: 0 });
    let mark = shapes.find(|shape| shape.role == Role::Energizer && shape.thing == thing).unwrap();
    let Form::Mark { at, .. } = mark.form else { panic!("{mark:?}") };
    at
}

fn near(one: Point, other: Point) -> bool {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m) < 1e-4
}

/// Well off the run, south-west of its feed.
const OFF: (f64, f64) = (12.0, 12.0);

#[test]
fn the_energizer_is_put_down_dragged_nudged_and_taken_out() {
    let mut desk = open(example(), Page::Power);
    assert!(says(&desk, "it counts as standing at the feed point"));
    let before = deeds(&desk);
    click_on(&mut desk, "Energizer on the map");
    assert_eq!(window(&desk).editor().tool().energizer(), Some(0));
    let at = spot(&desk, Point::from(OFF));
    click(&mut desk, at);
    assert!(near(run(&desk).energizer_at.unwrap(), Point::from(OFF)), "{:?}", run(&desk).energizer_at);
    assert_eq!(deeds(&desk), before + 1);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Energizer { run: 0 }));
    assert!(near(drawn(&desk), Point::from(OFF)));
    let apart = workup::lead::lead(window(&desk).editor().plan(), run(&desk)).apart_m.unwrap();
    assert!(says(&desk, &format!("The energizer stands {apart:.1} m from the feed point")));
    // Its leads go from there: to the feed, and to the nearest stake.
    let starts = |role: Role| {
        window(&desk).editor().drawing().shapes().any(|shape| {
            shape.role == role && matches!(&shape.form, Form::Path { points, .. } if near(points[0], Point::from(OFF)))
        })
    };
    assert!(starts(Role::Lead) && starts(Role::EarthLead));
    // A drag is one step, and an arrow key one more.
    let from = spot(&desk, Point::from(OFF));
    drag(&mut desk, from, from + vec2(24.0, 12.0));
    let dragged = run(&desk).energizer_at.unwrap();
    assert!(dragged.east_m > OFF.0 && dragged.north_m < OFF.1 && deeds(&desk) == before + 2);
    desk.key_press(Key::ArrowLeft);
    desk.run();
    assert!((run(&desk).energizer_at.unwrap().east_m - dragged.east_m + 0.1).abs() < 1e-9);
    undo(&mut desk);
    assert_eq!(run(&desk).energizer_at, Some(dragged));
    undo(&mut desk);
    assert!(near(run(&desk).energizer_at.unwrap(), Point::from(OFF)));
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(run(&desk).energizer_at, None);
    undo(&mut desk);
    undo(&mut desk);
    assert_eq!((run(&desk).energizer_at, deeds(&desk)), (None, before));
    // Where nothing is stated it is taken hold of where it is drawn.
    let was = drawn(&desk);
    let from = spot(&desk, was);
    drag(&mut desk, from, from + vec2(-20.0, 0.0));
    let stated = run(&desk).energizer_at.unwrap();
    assert!(stated.east_m < was.east_m && (stated.north_m - was.north_m).abs() < 1e-6);
}

#[test]
fn the_list_and_the_screen_reader_tell_the_energizer_with_its_figures() {
    let mut plan = example();
    plan.runs[0].energizer_at = Some(Point::from(OFF));
    let mut desk = open(plan, Page::Power);
    let name = format!("Energizer of {}", care::run_name(run(&desk)));
    assert!(desk.query_all_by_label_contains(&name).next().is_some(), "a node on the map");
    desk.state_mut().as_mut().unwrap().say(Message::Many(desktop::editor::ManyMessage::List(true)));
    desk.run();
    let apart = workup::lead::lead(window(&desk).editor().plan(), run(&desk)).apart_m.unwrap();
    let figures = format!("{apart:.1} m from the feed point");
    assert!(desk.query_all_by_label_contains(&figures).next().is_some(), "its figures in the list");
}

#[test]
fn the_lead_is_as_long_as_its_way_unless_it_is_typed() {
    let mut plan = example();
    plan.runs[0].energizer_at = Some(Point::from(OFF));
    let mut desk = open(plan, Page::Power);
    let lead = |desk: &Desk| workup::lead::lead(window(desk).editor().plan(), run(desk));
    let apart_m = lead(&desk).apart_m.unwrap();
    assert!(says(&desk, &format!("{apart_m:.1} m, as far as the energizer stands from the feed point.")));
    click_on(&mut desk, "copper");
    assert_eq!(run(&desk).lead_of, Some(Conductor::Copper));
    assert!((lead(&desk).ohm - apart_m * 3.504e-3).abs() < 1e-4, "{:?}", lead(&desk));
    fill(&mut desk, "Length of the lead", "2");
    assert_eq!((run(&desk).lead_m, run(&desk).lead_of), (Some(2.0), Some(Conductor::Copper)));
    assert!(says(&desk, "the lead is 2.0 m long and the energizer stands"), "a finding says that it does not reach");
    empty(&mut desk, "Length of the lead");
    assert_eq!(run(&desk).lead_m, None);
    // Typed ohms are of whatever it is made of.
    fill(&mut desk, "Lead to the fence", "7");
    assert_eq!((run(&desk).lead_ohm, run(&desk).lead_of), (Some(7.0), None));
}

#[test]
fn the_circle_of_reach_shows_while_a_stake_or_the_energizer_is_in_the_hand() {
    let mut plan = example();
    plan.runs[0].energizer_at = Some(Point::from(OFF));
    plan.runs[0].earth_stakes = EarthStakes { places: vec![Point::new(12.0, 8.0)], ..EarthStakes::default() };
    let mut desk = open(plan, Page::Power);
    let reach = |desk: &Desk| window(desk).editor().earth_reach();
    assert_eq!(reach(&desk), None);
    click_on(&mut desk, "One more on the map");
    let assumed = reach(&desk).unwrap();
    assert!(assumed.assumed && (assumed.lead_m - plan::defaults::EARTH_LEAD_M).abs() < 1e-12);
    assert!(near(assumed.from, Point::from(OFF)));
    desk.key_press(Key::Escape);
    desk.run();
    fill(&mut desk, "Earth lead, earth stakes", "3");
    assert_eq!(run(&desk).earth_stakes.lead_m, Some(3.0));
    assert!(says(&desk, "the earth lead is 3.0 m long and the nearest earth stake stands 4.0 m from the energizer"));
    for held in [Point::new(12.0, 8.0), Point::from(OFF)] {
        let at = spot(&desk, held);
        desk.event(egui::Event::PointerMoved(at));
        desk.run();
        button(&desk, at, true);
        desk.run();
        desk.event(egui::Event::PointerMoved(at + vec2(6.0, 8.0)));
        desk.run();
        let stated = reach(&desk).unwrap();
        assert!(!stated.assumed && (stated.lead_m - 3.0).abs() < 1e-12, "{stated:?}");
        let told = window(&desk).editor().snapped().unwrap().reason.clone();
        assert!(told.contains("from the energizer") || told.contains("from the nearest stake"), "{told}");
        button(&desk, at + vec2(6.0, 8.0), false);
        desk.run();
        assert_eq!(reach(&desk), None);
        undo(&mut desk);
    }
}

/// The example farm with a hollow beside its energizer and so many stakes in drier ground.
fn hollow(places: &[(f64, f64)]) -> Plan {
    let mut plan = example();
    plan.ground.soil.resistivity_ohm_m = Some(100.0);
    plan.runs[0].energizer_at = Some(Point::from(OFF));
    let stand = places.iter().map(|&at| at.into()).collect();
    plan.runs[0].earth_stakes = EarthStakes { places: stand, lead_m: Some(5.0), ..EarthStakes::default() };
    let outline = [(2.0, 2.0), (11.0, 2.0), (11.0, 9.0), (2.0, 9.0)].map(Point::from).to_vec();
    plan.ground.damp =
        vec![Damp { name: "Hollow".to_owned(), outline, resistivity_ohm_m: Some(40.0), ..Damp::default() }];
    plan
}

#[test]
fn one_click_puts_the_stakes_where_it_is_dampest() {
    let mut desk = open(hollow(&[(13.0, 13.0), (14.0, 10.0)]), Page::Power);
    let before = deeds(&desk);
    let ohm = |desk: &Desk| window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().earth_ohm;
    let best = window(&desk).editor().run().unwrap().1.dampest.clone().unwrap();
    assert!(best.is_better() && best.inside == 2, "{best:?}");
    // Half a metre inside the hollow's corner.
    assert!(near(best.places[0], Point::new(10.5, 8.5)), "{best:?}");
    let said = format!(
        "Within reach the best place for the earth is Hollow, {:.1} m from the energizer: {:.0} Ω there, {:.0} Ω as it is.",
        best.off_m, best.ohm, best.now_ohm
    );
    assert!(says(&desk, &said), "{said}");
    assert!(says(&desk, "The 2 stakes stand in a row in it.") && says(&desk, "Bars are driven with the energizer off"));
    assert!(says(&desk, "stand in drier ground than they could"), "a finding notes it");
    click_on(&mut desk, "Put them there");
    assert_eq!((run(&desk).earth_stakes.places.as_slice(), deeds(&desk)), (best.places.as_slice(), before + 1));
    assert!((ohm(&desk) / best.ohm - 1.0).abs() < 1e-9 && (best.now_ohm / best.ohm) > 2.0);
    assert!(says(&desk, "The stakes stand in the dampest ground within reach: Hollow."));
    assert!(desk.query_by_label("Put them there").is_none());
    assert_eq!(run(&desk).earth_stakes.lead_m, Some(5.0), "the lead stays as it was stated");
    undo(&mut desk);
    assert_eq!(run(&desk).earth_stakes.places.len(), 2);
    assert!((ohm(&desk) / best.now_ohm - 1.0).abs() < 1e-9);
}

#[test]
fn out_of_reach_is_said_and_what_is_assumed_is_listed() {
    let mut plan = hollow(&[(13.0, 13.0)]);
    plan.runs[0].earth_stakes.lead_m = Some(2.0);
    let desk = open(plan.clone(), Page::Power);
    assert!(says(&desk, "No damp ground where a stake may stand is within 2.0 m of the energizer."));
    assert!(desk.query_by_label("Put it there").is_none());
    plan.runs[0].earth_stakes.lead_m = None;
    let desk = open(plan, Page::Power);
    assert!(says(&desk, "An earth lead of 5.0 m is assumed.") && desk.query_by_label("Put it there").is_some());
    let assumed = plan::assumed(window(&desk).editor().plan());
    assert!(assumed.iter().any(|one| one.key == "runs[0].earth_stakes.lead_m"));
    // Without damp ground nothing of it is asked.
    let plain = open(example(), Page::Power);
    assert!(!says(&plain, "No damp ground") && !says(&plain, "An earth lead of"));
}

#[test]
fn damp_ground_is_drawn_named_stated_hidden_and_taken_out() {
    let mut desk = open(example(), Page::Ground);
    let damp = |desk: &Desk| window(desk).editor().plan().ground.damp.clone();
    let before = deeds(&desk);
    click_on(&mut desk, "Damp ground");
    for at in [Point::new(60.0, 30.0), Point::new(70.0, 30.0), Point::new(65.0, 40.0)] {
        let at = spot(&desk, at);
        click(&mut desk, at);
    }
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!((damp(&desk)[0].outline.len(), deeds(&desk)), (3, before + 1));
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Damp { damp: 0 }));
    fill(&mut desk, "Name of Damp place 1", "Ditch");
    fill(&mut desk, "Soil there, Ditch", "35");
    assert_eq!((damp(&desk)[0].name.as_str(), damp(&desk)[0].resistivity_ohm_m), ("Ditch", Some(35.0)));
    fill(&mut desk, "Soil there, Ditch", "-3");
    assert_eq!(damp(&desk)[0].resistivity_ohm_m, Some(35.0), "a soil of less than nothing is none");
    desk.key_press(Key::Escape);
    desk.run();
    empty(&mut desk, "Soil there, Ditch");
    assert_eq!(damp(&desk)[0].resistivity_ohm_m, None);
    // By a corner it is reshaped, by its middle moved, each one step.
    let count = deeds(&desk);
    let corner = spot(&desk, damp(&desk)[0].outline[2]);
    drag(&mut desk, corner, corner + vec2(0.0, -12.0));
    assert!(damp(&desk)[0].outline[2].north_m > 40.5 && deeds(&desk) == count + 1);
    let was = damp(&desk)[0].outline.clone();
    let middle = spot(&desk, Point::new(65.0, 34.0));
    click(&mut desk, middle);
    drag(&mut desk, middle, middle + vec2(30.0, 0.0));
    let moved = damp(&desk)[0].outline.clone();
    let shift = moved[0].east_m - was[0].east_m;
    assert!(shift > 1.0 && moved.iter().zip(&was).all(|(to, from)| (to.east_m - from.east_m - shift).abs() < 1e-6));
    desk.get_by_label("Corner 1 of Ditch");
    // Hidden it is drawn no more and counts all the same; locked the hand leaves it.
    let shown = |desk: &Desk| window(desk).editor().drawing().shapes().any(|shape| shape.role == Role::Damp);
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    say(&mut desk, Message::Many(desktop::editor::ManyMessage::HidePicked));
    assert!(damp(&desk)[0].hidden && !shown(&desk));
    undo(&mut desk);
    assert!(shown(&desk));
    say(&mut desk, Message::Pick(Some(Thing::Damp { damp: 0 })));
    desk.key_press(Key::Delete);
    desk.run();
    assert!(damp(&desk).is_empty());
    undo(&mut desk);
    assert_eq!(damp(&desk)[0].outline, moved);
}

#[test]
fn a_damp_place_without_a_name_is_called_in_its_case() {
    for (language, best) in [
        (words::Language::English, "Within reach the best place for the earth is the damp place, "),
        (words::Language::German, "In Reichweite ist der beste Ort für die Erdung die feuchte Stelle, "),
    ] {
        let mut plan = hollow(&[(13.0, 13.0), (14.0, 10.0)]);
        plan.ground.damp[0].name.clear();
        let desk = hand::on_page(plan, Page::Power, [1280.0, 3600.0], Words { language, ..Words::default() });
        assert!(says(&desk, best), "{best}");
    }
}
