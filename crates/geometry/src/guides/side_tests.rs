//! What catches a side that slides, by hand and as laws.

use super::{Beside, Edge, Guides, LevelPanels, Line, Moving, SideAsked, SideWhy};
use crate::point::Point;
use crate::slide_side;
use proptest::prelude::*;

fn at(east_m: f64, north_m: f64) -> Point {
    Point::new(east_m, north_m)
}

fn edge(from: (f64, f64), to: (f64, f64)) -> Edge {
    Edge { from: from.into(), to: to.into() }
}

/// The east side of 40 m by 30 m, slid eastwards.
fn east_side(east_m: f64) -> SideAsked<'static> {
    SideAsked {
        side: edge((40.0, 0.0), (40.0, 30.0)),
        beyond: [Some(at(0.0, 0.0)), Some(at(0.0, 30.0))],
        by_m: -east_m,
        hold: at(40.0, 12.0),
        own: vec![edge((0.0, 30.0), (0.0, 0.0))],
        reach_m: 0.6,
        look_m: 10.0,
        netting: None,
        grid_m: None,
        held: None,
    }
}

/// Why the side is caught there, and how far east it goes.
fn caught(guides: &Guides, asked: &SideAsked<'_>) -> Option<(SideWhy, f64)> {
    guides.best_slide(asked).map(|slid| (slid.why, -slid.by_m))
}

#[test]
fn a_side_comes_to_lie_on_a_place_along_a_side_in_line_with_one_or_with_a_corner_on_one() {
    let places = vec![at(45.3, 14.0), at(47.0, 29.0), at(50.0, 33.0)];
    let along = edge((55.0, -10.0), (55.0, 5.0));
    let beyond = edge((60.0, 34.0), (60.0, 39.0));
    let across = edge((63.0, -4.0), (67.0, 4.0));
    let guides = Guides::new(places, vec![along, beyond, across]);
    let near = |slid: Option<(SideWhy, f64)>, why: SideWhy, east_m: f64| {
        let (found, by_m) = slid.unwrap();
        assert_eq!(found, why);
        assert!((by_m - east_m).abs() < 1e-12, "{by_m}");
    };
    near(caught(&guides, &east_side(5.0)), SideWhy::Place(0), 5.3);
    assert_eq!(caught(&guides, &east_side(7.1)), None, "a place far along the side is not looked at");
    let at_end = SideAsked { hold: at(40.0, 27.0), ..east_side(7.1) };
    near(caught(&guides, &at_end), SideWhy::Place(1), 7.0);
    assert_eq!(caught(&guides, &east_side(10.1)), None, "nor one beyond its end");
    near(caught(&guides, &east_side(14.8)), SideWhy::Along(Line::Other(0)), 15.0);
    assert_eq!(caught(&guides, &east_side(19.8)), None, "a side far off is none to be in line with");
    let nearer = SideAsked { hold: at(40.0, 27.0), ..east_side(19.8) };
    near(caught(&guides, &nearer), SideWhy::InLine(Line::Other(1)), 20.0);
    near(caught(&guides, &east_side(24.7)), SideWhy::EndOn(Beside::Before, Line::Other(2)), 25.0);
}

#[test]
fn a_side_that_nothing_else_catches_is_caught_by_panels_lengths_and_the_grid() {
    let guides = Guides::default();
    let netting = LevelPanels(2.5);
    let asked = SideAsked { netting: Some(&netting), ..east_side(4.8) };
    let (why, east_m) = caught(&guides, &asked).unwrap();
    assert_eq!(why, SideWhy::Panels(18, Beside::Before));
    assert!((east_m - 5.0).abs() < 1e-12);
    let (why, east_m) = caught(&guides, &east_side(-10.2)).unwrap();
    assert_eq!(why, SideWhy::AsItself(Beside::Before), "a square");
    assert!((east_m + 10.0).abs() < 1e-12);
    let longer = SideAsked { own: vec![edge((0.0, 60.0), (52.0, 60.0))], ..east_side(11.9) };
    let (why, east_m) = caught(&guides, &longer).unwrap();
    assert_eq!(why, SideWhy::AsLong(Moving::Before, Line::Own(0)));
    assert!((east_m - 12.0).abs() < 1e-12);
    let grid = SideAsked { grid_m: Some(5.0), ..east_side(14.7) };
    assert_eq!(caught(&guides, &grid), Some((SideWhy::Grid, 15.0)));
    let past = SideAsked { grid_m: Some(5.0), ..east_side(-40.1) };
    assert_eq!(caught(&guides, &past), None, "beyond where its neighbours vanish nothing is");
}

#[test]
fn a_side_that_is_held_stays_while_the_hand_trembles() {
    let guides = Guides::new(vec![at(45.0, 12.0)], Vec::new());
    let mut held = None;
    let caught = [4.55, 4.65, 4.5, 4.42, 4.35, 4.5].map(|east_m| {
        held = guides.best_slide(&SideAsked { held, ..east_side(east_m) }).map(|slid| slid.why);
        held.is_some()
    });
    assert_eq!(caught, [false, true, true, true, false, false]);
}

fn near(by_m: f64) -> impl Strategy<Value = f64> {
    -by_m..by_m
}

/// A quadrangle, one of its sides, and how far that is slid.
fn sliding() -> impl Strategy<Value = (Vec<Point>, usize, f64)> {
    let corner = |east_m: f64, north_m: f64| (near(6.0), near(6.0)).prop_map(move |(e, n)| at(east_m + e, north_m + n));
    let corners = (corner(0.0, 0.0), corner(30.0, 0.0), corner(30.0, 20.0), corner(0.0, 20.0));
    (corners, 0..4_usize, near(5.0)).prop_map(|((a, b, c, d), side, by_m)| (vec![a, b, c, d], side, by_m))
}

/// Places and sides about, one side parallel to that side, or nearly so.
fn about(side: Edge, places: &[(f64, f64)], parallel: (f64, f64, f64, bool)) -> Guides {
    let (off_m, from_m, length_m, exact) = parallel;
    let along = (side.to - side.from).unit();
    let from = side.from + along * from_m + along.left() * off_m;
    let lean = if exact { 0.0 } else { 1e-4 };
    let to = from + along * length_m + along.left() * (length_m * lean);
    let places: Vec<Point> = places.iter().map(|&(e, n)| at(e, n)).collect();
    let mut edges: Vec<Edge> = places.windows(2).map(|pair| Edge { from: pair[0], to: pair[1] }).collect();
    edges.push(Edge { from, to });
    Guides::new(places, edges)
}

proptest! {
    #[test]
    fn a_caught_side_lies_so_as_it_says_and_slides_as_the_outline_does(
        (corners, side, by_m) in sliding(),
        places in prop::collection::vec((-15.0..45.0_f64, -15.0..35.0_f64), 0..5),
        parallel in (near(5.0), -50.0..50.0_f64, 3.0..40.0_f64, any::<bool>()),
        panel_m in prop::option::of(1.2..4.0_f64),
        grid in any::<bool>(),
    ) {
        let corner = |index: usize| corners[(side + index) % 4];
        let netting = panel_m.map(LevelPanels);
        let asked = SideAsked {
            side: Edge { from: corner(0), to: corner(1) },
            beyond: [Some(corner(3)), Some(corner(2))],
            by_m,
            hold: corner(0).towards(corner(1), 0.4),
            own: vec![Edge { from: corner(2), to: corner(3) }],
            reach_m: 1.2,
            look_m: 25.0,
            netting: netting.as_ref().map(|netting| netting as &dyn super::Netting),
            grid_m: grid.then_some(5.0),
            held: None,
        };
        let guides = about(asked.side, &places, parallel);
        let Some(slid) = guides.best_slide(&asked) else { return Ok(()) };
        prop_assert!((slid.by_m - by_m).abs() <= asked.reach_m + 1e-9);
        let outline = slide_side(&corners, true, side, slid.by_m).unwrap();
        let ends = [outline[side], outline[(side + 1) % 4]];
        prop_assert_eq!(asked.ends(slid.by_m), ends);
        let along = (ends[1] - ends[0]).unit();
        prop_assert!(along.cross((asked.side.to - asked.side.from).unit()).abs() < 1e-9, "it stays parallel");
        let off_m = |place: Point| (place - ends[0]).cross(along).abs();
        let end = |beside: Beside| ends[usize::from(beside == Beside::After)];
        let neighbour_m = |beside: Beside| {
            let beyond = if beside == Beside::Before { corner(3) } else { corner(2) };
            end(beside).distance_m(beyond)
        };
        let on_grid = |metres: f64| (metres / 5.0 - (metres / 5.0).round()).abs() * 5.0;
        let miss_m = match slid.why {
            SideWhy::Place(index) => {
                let place = guides.places()[index];
                let share = (place - ends[0]).dot(along) / ends[0].distance_m(ends[1]);
                prop_assert!((-1e-9..=1.0 + 1e-9).contains(&share), "{share}");
                off_m(place)
            }
            SideWhy::Along(line) | SideWhy::InLine(line) => {
                let edge = guides.edge(&asked.own, line).unwrap();
                // What is not quite parallel lies as far off at one end as at the other, and no farther than is paced.
                prop_assert!((off_m(edge.from) - off_m(edge.to)).abs() < 1e-9 && off_m(edge.from) <= 0.01 + 1e-9);
                off_m(edge.from.towards(edge.to, 0.5))
            }
            SideWhy::EndOn(beside, line) => {
                let edge = guides.edge(&asked.own, line).unwrap();
                edge.nearest(end(beside)).distance_m(end(beside))
            }
            SideWhy::Panels(panels, beside) => (neighbour_m(beside) - f64::from(panels) * panel_m.unwrap()).abs(),
            SideWhy::AsLong(moving, line) => {
                let length_m = match moving {
                    Moving::Before => neighbour_m(Beside::Before),
                    Moving::Itself => ends[0].distance_m(ends[1]),
                    Moving::After => neighbour_m(Beside::After),
                };
                (length_m - guides.edge(&asked.own, line).unwrap().length_m()).abs()
            }
            SideWhy::AsItself(beside) => (neighbour_m(beside) - ends[0].distance_m(ends[1])).abs(),
            SideWhy::Grid => on_grid(ends[0].north_m).min(on_grid(ends[0].east_m)),
            SideWhy::EndOnGrid(beside) => on_grid(end(beside).north_m).min(on_grid(end(beside).east_m)),
        };
        prop_assert!(miss_m < 1e-9, "{:?} missed by {miss_m}", slid.why);
        let again = SideAsked { by_m: slid.by_m + 0.3, held: Some(slid.why), ..asked.clone() };
        prop_assert!(guides.best_slide(&again).is_some(), "it let go within reach");
    }
}
