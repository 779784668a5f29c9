//! What is caught, by hand and as laws.

use super::{Asked, Beside, Edge, Guide, Guides, LevelPanels, Line, Netting, Why};
use crate::point::Point;
use proptest::prelude::*;

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

fn edge(from: (f64, f64), to: (f64, f64)) -> Edge {
    Edge { from: from.into(), to: to.into() }
}

/// The third corner of an outline that began eastwards for 20 m.
fn third(hand: Point) -> Asked<'static> {
    Asked {
        at: hand,
        beside: [Some(at(20.0, 0.0)), None],
        own: vec![edge((0.0, 0.0), (20.0, 0.0))],
        joined: [Some(0), None],
        reach_m: 0.5,
        look_m: 30.0,
        ..Asked::default()
    }
}

#[test]
fn a_new_side_stands_square_on_the_last_and_runs_on_in_line_with_it() {
    let guides = Guides::default();
    let square = guides.best(&third(at(20.3, 13.0))).unwrap();
    assert_eq!((square.at, square.why), (at(20.0, 13.0), Why::One(Guide::Square(Line::Own(0), Beside::Before))));
    let on = guides.best(&third(at(31.0, -0.3))).unwrap();
    assert_eq!((on.at, on.why), (at(31.0, 0.0), Why::One(Guide::InLine(Line::Own(0)))));
    assert_eq!(guides.best(&third(at(33.0, 9.0))), None);
}

#[test]
fn where_two_guides_cross_goes_before_either() {
    let found = Guides::default().best(&third(at(20.2, 19.8))).unwrap();
    assert!((found.at - at(20.0, 20.0)).length() < 1e-12);
    let (square, long) = (Guide::Square(Line::Own(0), Beside::Before), Guide::AsLong(Line::Own(0), Beside::Before));
    assert_eq!(found.why, Why::Both(square, long));
}

#[test]
fn a_place_goes_before_a_side_and_a_side_before_the_grid() {
    let guides = Guides::new(vec![at(5.0, 5.0)], vec![edge((0.0, 4.8), (10.0, 4.8))]);
    let asked = |hand: Point| Asked { at: hand, reach_m: 0.5, grid_m: Some(1.0), ..Asked::default() };
    assert_eq!(guides.best(&asked(at(5.3, 4.9))).unwrap().why, Why::Place(0));
    let on = guides.best(&asked(at(7.1, 5.0))).unwrap();
    assert_eq!((on.at, on.why), (at(7.1, 4.8), Why::One(Guide::On(Line::Other(0)))));
    let grid = guides.best(&asked(at(7.1, 8.2))).unwrap();
    assert_eq!((grid.at, grid.why), (at(7.0, 8.0), Why::Grid));
}

#[test]
fn a_hand_that_trembles_at_the_edge_of_reach_changes_nothing() {
    let guides = Guides::new(vec![at(0.0, 0.0)], Vec::new());
    let mut held = None;
    let mut held_at = |east_m: f64| {
        let asked = Asked { at: at(east_m, 0.0), reach_m: 0.5, held, ..Asked::default() };
        held = guides.best(&asked).map(|found| found.why);
        held.is_some()
    };
    let caught = [0.52, 0.49, 0.52, 0.6, 0.76, 0.8, 0.76, 0.6, 0.52].map(&mut held_at);
    assert_eq!(caught, [false, true, true, true, true, false, false, false, false]);
}

#[test]
fn whole_panels_catch_a_side_of_netting() {
    let netting = LevelPanels(2.5);
    let asked = Asked { netting: Some(&netting), ..third(at(26.0, 19.0)) };
    let found = Guides::default().best(&asked).unwrap();
    assert_eq!(found.why, Why::One(Guide::Panels(8, Beside::Before)));
    assert!((found.at.distance_m(at(20.0, 0.0)) - 20.0).abs() < 1e-12);
}

#[test]
fn a_side_far_off_is_a_guide_only_as_far_as_one_looks() {
    let guides = Guides::new(Vec::new(), vec![edge((100.0, 100.0), (130.0, 110.0))]);
    let along = Asked { at: at(29.0, 3.0), ..third(at(0.0, 0.0)) };
    assert_eq!(guides.best(&along), None);
    let far = guides.best(&Asked { look_m: 200.0, ..along }).unwrap();
    assert_eq!(far.why, Why::One(Guide::Parallel(Line::Other(0), Beside::Before)));
}

#[test]
fn of_a_whole_the_corner_that_meets_something_is_named_as_the_whole_list_names_it() {
    let places = (0..9).map(|step| at(100.0 * f64::from(step), 50.0)).collect();
    let edges = (0..9).map(|step| edge((100.0 * f64::from(step), 0.0), (100.0 * f64::from(step), 20.0))).collect();
    let guides = Guides::new(places, edges);
    let asked = Asked { reach_m: 0.5, look_m: 30.0, ..Asked::default() };
    let hands = [at(610.0, 10.0), at(600.3, 11.0), at(620.0, 30.0)];
    let (corner, found) = guides.best_of(&asked, &hands, None).unwrap();
    assert_eq!((corner, found.why, found.at), (1, Why::One(Guide::On(Line::Other(6))), at(600.0, 11.0)));
    let away = hands.map(|hand| at(hand.east_m + 0.15, hand.north_m));
    assert_eq!(guides.best_of(&asked, &away, None), None);
    assert!(guides.best_of(&asked, &away, Some((1, found.why))).is_some(), "what holds goes on to hold");
}

fn place() -> impl Strategy<Value = Point> {
    (-60.0..60.0, -60.0..60.0).prop_map(|(east_m, north_m)| at(east_m, north_m))
}

fn any_edge() -> impl Strategy<Value = Edge> {
    (place(), place())
        .prop_filter("a side", |(from, to)| from.distance_m(*to) > 4.0)
        .prop_map(|(from, to)| Edge { from, to })
}

/// Panels of one length on a plane that rises by so much eastwards and northwards.
#[derive(Debug)]
struct OnPlane {
    panel_m: f64,
    rises: (f64, f64),
}

impl OnPlane {
    /// The ground's length of a metre of the map on the way from one place to another.
    fn stretch(&self, from: Point, to: Point) -> f64 {
        let way = (to - from).unit();
        1.0_f64.hypot(way.east * self.rises.0 + way.north * self.rises.1)
    }
}

impl Netting for OnPlane {
    fn panels(&self, _: Beside, from: Point, to: Point) -> Option<u32> {
        let ground_m = from.distance_m(to) * self.stretch(from, to);
        Some((ground_m / self.panel_m).round().max(1.0) as u32)
    }

    fn reach_m(&self, _: Beside, from: Point, towards: Point, panels: u32) -> Option<f64> {
        Some(f64::from(panels) * self.panel_m / self.stretch(from, towards))
    }
}

/// None, on level ground, and on slopes.
fn netting() -> impl Strategy<Value = Option<&'static dyn Netting>> {
    const ALL: [Option<&dyn Netting>; 5] = [
        None,
        Some(&LevelPanels(1.7)),
        Some(&LevelPanels(3.6)),
        Some(&OnPlane { panel_m: 2.5, rises: (0.4, -0.2) }),
        Some(&OnPlane { panel_m: 1.3, rises: (0.0, 0.7) }),
    ];
    (0..ALL.len()).prop_map(|index| ALL[index])
}

fn any_asked() -> impl Strategy<Value = Asked<'static>> {
    let own = prop::collection::vec(any_edge(), 0..4);
    (place(), prop::option::of(place()), prop::option::of(place()), own, netting(), any::<bool>()).prop_map(
        |(hand, before, after, own, netting, grid)| Asked {
            at: hand,
            beside: [before, after],
            own,
            joined: [None, None],
            reach_m: 1.2,
            look_m: 40.0,
            netting,
            grid_m: grid.then_some(5.0),
            held: None,
        },
    )
}

fn any_guides() -> impl Strategy<Value = Guides> {
    let places = prop::collection::vec(place(), 0..6);
    (places, prop::collection::vec(any_edge(), 0..12)).prop_map(|(places, edges)| Guides::new(places, edges))
}

/// How far an answer is from what its guide says, metres.
fn misses_m(guides: &Guides, asked: &Asked<'_>, guide: Guide, found: Point) -> f64 {
    let corner = |beside| asked.beside[usize::from(beside == Beside::After)].unwrap();
    let line = |line| guides.edge(&asked.own, line).unwrap();
    let unit = |edge: Edge| (edge.to - edge.from).unit();
    match guide {
        Guide::On(of) => line(of).nearest(found).distance_m(found),
        Guide::Square(to, beside) => (found - corner(beside)).dot(unit(line(to))).abs(),
        Guide::Parallel(to, beside) => (found - corner(beside)).cross(unit(line(to))).abs(),
        Guide::InLine(with) => (found - line(with).from).cross(unit(line(with))).abs(),
        Guide::AsLong(other, beside) => (found.distance_m(corner(beside)) - line(other).length_m()).abs(),
        Guide::Panels(count, beside) => {
            let from = corner(beside);
            let reach_m = asked.netting.unwrap().reach_m(beside, from, found, count).unwrap();
            (found.distance_m(from) - reach_m).abs()
        }
        Guide::SquareCorner => {
            let (before, after) = (asked.beside[0].unwrap() - found, asked.beside[1].unwrap() - found);
            before.dot(after).abs() / (before.length() + after.length()).max(1.0)
        }
    }
}

proptest! {
    #[test]
    fn every_answer_lies_on_what_it_names_within_reach(guides in any_guides(), asked in any_asked()) {
        if let Some(found) = guides.best(&asked) {
            prop_assert!(found.at.distance_m(asked.at) <= asked.reach_m + 1e-9);
            for guide in found.why.guides() {
                let miss_m = misses_m(&guides, &asked, guide, found.at);
                prop_assert!(miss_m < 1e-9, "{guide:?} missed by {miss_m}");
            }
            if let Why::Place(index) = found.why {
                prop_assert_eq!(found.at, guides.places()[index]);
            }
        }
    }

    #[test]
    fn what_holds_is_left_only_for_something_better(
        guides in any_guides(), asked in any_asked(), east in -0.1..0.1_f64, north in -0.1..0.1_f64,
    ) {
        let Some(found) = guides.best(&asked) else { return Ok(()) };
        let there = Asked { at: found.at, held: Some(found.why), ..asked.clone() };
        let moved = Asked { at: at(found.at.east_m + east, found.at.north_m + north), ..there };
        let next = guides.best(&moved);
        prop_assert!(next.is_some(), "it let go within reach");
        let next = next.unwrap();
        prop_assert!(next.why.rank() <= found.why.rank(), "{next:?} after {found:?}");
    }

    #[test]
    fn without_anything_the_answer_is_the_grid_or_nothing(hand in place(), step_m in 0.5..9.0_f64) {
        let asked = Asked { at: hand, reach_m: step_m, grid_m: Some(step_m), ..Asked::default() };
        let found = Guides::default().best(&asked).unwrap();
        prop_assert_eq!(found.why, Why::Grid);
        for metres in [found.at.east_m, found.at.north_m] {
            prop_assert!((metres / step_m - (metres / step_m).round()).abs() < 1e-9);
        }
        prop_assert!(found.at.distance_m(hand) <= step_m * 0.5_f64.sqrt() + 1e-9);
    }
}
