//! Where the earth stakes would earth best is marked on the map while the page about volts suggests it.

use crate::hand::{Desk, click_on, example, on_page, settle, spot, window};
use desktop::editor::{Message, Page};
use egui_kittest::kittest::Queryable;
use plan::{Damp, EarthStakes, Plan, Point};
use words::Words;

/// The example farm with two stakes in dry ground beside a hollow.
fn hollow() -> Plan {
    let mut plan = example();
    plan.ground.soil.resistivity_ohm_m = Some(100.0);
    plan.runs[0].energizer_at = Some(Point::new(12.0, 12.0));
    let places = vec![Point::new(13.0, 13.0), Point::new(14.0, 10.0)];
    plan.runs[0].earth_stakes = EarthStakes { places, lead_m: Some(5.0), ..EarthStakes::default() };
    let outline = [(2.0, 2.0), (11.0, 2.0), (11.0, 9.0), (2.0, 9.0)].map(Point::from).to_vec();
    plan.ground.damp =
        vec![Damp { name: "Hollow".to_owned(), outline, resistivity_ohm_m: Some(40.0), ..Damp::default() }];
    plan
}

fn marks(desk: &Desk) -> usize {
    desk.query_all_by_label_contains("Suggested for earth stake").count()
}

#[test]
fn the_marks_stand_where_the_stakes_would_and_go_with_the_suggestion() {
    let mut desk = on_page(hollow(), Page::Power, [1280.0, 3600.0], Words::default());
    let best = window(&desk).editor().run().unwrap().1.dampest.clone().unwrap();
    assert_eq!((best.places.len(), marks(&desk)), (2, 2));
    for (stake, &at) in best.places.iter().enumerate() {
        let label = format!("Suggested for earth stake {} of Round Quince House: Hollow", stake + 1);
        let place = desk.get_by_label(&label).rect().center();
        assert!(place.distance(spot(&desk, at)) < 1.0, "{label}");
    }
    assert!(window(&desk).editor().view().earth);
    desk.state_mut().as_mut().unwrap().say(Message::Open(Page::Ground));
    settle(&mut desk);
    assert_eq!(marks(&desk), 0, "another page suggests nothing");
    assert!(!window(&desk).editor().view().earth);
    desk.state_mut().as_mut().unwrap().say(Message::Open(Page::Power));
    settle(&mut desk);
    assert_eq!(marks(&desk), 2);
    click_on(&mut desk, "Put them there");
    settle(&mut desk);
    assert_eq!(marks(&desk), 0, "they stand there");
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    settle(&mut desk);
    assert_eq!(marks(&desk), 2);
}
