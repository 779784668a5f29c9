//! Pins against a plain search that knows no lattice: every order, direction and start, with the pins as a filter; and
//! the laws that pins obey.

use geometry::{MEET_M, Net, Outline, Pin, PinKind, PlacementRequest, Point, place};
use proptest::prelude::*;

const HELD_M: f64 = 1e-6;

/// A line, kinds of net as lists of panels, nets, pins.
#[derive(Debug, Clone)]
struct Case {
    points: Vec<Point>,
    closed: bool,
    panels_m: Vec<Vec<f64>>,
    nets: Vec<usize>,
    pins: Vec<Pin>,
}

impl Case {
    fn outline(&self) -> Outline {
        if self.closed { Outline::closed(&self.points) } else { Outline::open(&self.points) }
    }

    fn kinds(&self) -> Vec<Net> {
        self.panels_m.iter().map(|panels_m| Net::unequal(panels_m).unwrap()).collect()
    }
}

/// One chain on the line: its nets from and to, their kinds, its posts; all in the chain.
struct Chain {
    nets: Vec<(f64, f64, usize)>,
    posts_m: Vec<f64>,
    total_m: f64,
}

fn chain(case: &Case, order: &[usize], line_m: f64) -> Chain {
    let (mut at_m, mut nets, mut posts_m) = (0.0, Vec::new(), Vec::new());
    for (index, &kind) in order.iter().enumerate() {
        let on_line = index == 0 || at_m < line_m - MEET_M;
        let mut post_m: f64 = at_m;
        for panel_m in std::iter::once(&0.0).chain(&case.panels_m[kind]) {
            post_m += panel_m;
            if on_line && post_m <= line_m + MEET_M {
                posts_m.push(post_m.min(line_m));
            }
        }
        if on_line {
            nets.push((at_m, post_m, kind));
        }
        at_m = post_m;
    }
    Chain { nets, posts_m, total_m: at_m }
}

fn permutations(nets: &[usize]) -> Vec<Vec<usize>> {
    if nets.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for first in 0..nets.len() {
        if nets[..first].contains(&nets[first]) {
            continue;
        }
        let mut rest = nets.to_vec();
        let kind = rest.remove(first);
        for mut order in permutations(&rest) {
            order.insert(0, kind);
            all.push(order);
        }
    }
    all
}

/// The least sum of misses over everything that keeps the pins; infinite where nothing does.
fn plain(case: &Case, pins: &[Pin]) -> f64 {
    let outline = case.outline();
    let line_m = outline.length_m();
    let corners_m: Vec<f64> = outline.corners().map(|(_, corner)| corner.along_m).collect();
    let mut least_m = f64::INFINITY;
    for order in permutations(&case.nets) {
        let chain = chain(case, &order, line_m);
        for reversed in [false, true] {
            let mut starts_m = vec![];
            if case.closed {
                // All starts at which anything meets anything, and some between.
                let marks_m = corners_m.iter().copied().chain(pins.iter().map(|pin| pin.along_m));
                for mark_m in marks_m {
                    for &post_m in &chain.posts_m {
                        starts_m.push(if reversed { mark_m + post_m } else { mark_m - post_m });
                    }
                }
                starts_m.extend((0..40).map(|step| line_m * f64::from(step) / 40.0));
            } else {
                starts_m.push(if reversed { line_m } else { 0.0 });
            }
            for start_m in starts_m {
                let of = |along_m: f64| {
                    let place_m = if reversed { start_m - along_m } else { along_m - start_m };
                    if case.closed { place_m.rem_euclid(line_m) } else { place_m }
                };
                if pins.iter().all(|&pin| keeps(case, &chain, line_m, of(pin.along_m), pin)) {
                    let miss = |&corner_m: &f64| {
                        let near = chain.posts_m.iter().map(|post_m| apart(case, line_m, *post_m, of(corner_m)));
                        near.fold(f64::INFINITY, f64::min)
                    };
                    least_m = least_m.min(corners_m.iter().map(miss).sum());
                }
            }
        }
    }
    least_m
}

fn apart(case: &Case, line_m: f64, one_m: f64, other_m: f64) -> f64 {
    let apart_m = (one_m - other_m).abs();
    if case.closed { apart_m.min((line_m - apart_m).abs()) } else { apart_m }
}

fn keeps(case: &Case, chain: &Chain, line_m: f64, at_m: f64, pin: Pin) -> bool {
    let near = |place_m: f64| apart(case, line_m, place_m, at_m) <= HELD_M / 2.0;
    let ring = case.closed && chain.total_m > line_m - MEET_M;
    match pin.what {
        PinKind::Start if case.closed => near(0.0),
        PinKind::Start => at_m <= line_m / 2.0,
        PinKind::Join => chain.nets.windows(2).any(|pair| near(pair[0].1)) || (ring && near(0.0)),
        PinKind::Post => chain.posts_m.iter().any(|&post_m| near(post_m)),
        PinKind::Net { kind } => chain.nets.iter().any(|&(from_m, to_m, of)| {
            let around = [0.0, line_m].into_iter().any(|turn_m| {
                let at_m = at_m + if case.closed { turn_m } else { 0.0 };
                from_m - HELD_M / 2.0 <= at_m && at_m <= to_m.min(line_m) + HELD_M / 2.0
            });
            let around = around && (ring || at_m <= to_m + HELD_M);
            of == kind && around
        }),
    }
}

fn pin(outline: &Outline, kinds: usize, seed: (usize, usize, f64)) -> Pin {
    let (what, place, share) = seed;
    let corners_m: Vec<f64> = outline.vertices().iter().map(|vertex| vertex.along_m).collect();
    // A pinned corner is a vertex; anything else may be anywhere, or at one.
    let at_vertex = corners_m[place % corners_m.len()];
    let anywhere = outline.wrap_m(share * outline.length_m());
    let (what, along_m) = match what % 5 {
        0 => (PinKind::Start, if share < 0.5 { at_vertex } else { anywhere }),
        1 => (PinKind::Join, if share < 0.5 { at_vertex } else { anywhere }),
        2 => (PinKind::Post, at_vertex),
        _ => (PinKind::Net { kind: place % kinds }, anywhere),
    };
    Pin { along_m, what }
}

fn cases() -> impl Strategy<Value = Case> {
    let panels = prop::collection::vec(prop_oneof![Just(1.0), Just(2.0), Just(3.0), 1.0..4.0_f64], 1..4);
    let kinds = prop::collection::vec(panels, 1..4);
    let points = prop::collection::vec((0.0..0.8_f64, 2.0..8.0_f64), 3..6);
    let pins = prop::collection::vec((0..5_usize, 0..20_usize, 0.0..1.0_f64), 1..4);
    (kinds, points, prop::collection::vec(0..3_usize, 1..5), prop::bool::weighted(0.75), prop::bool::ANY, pins)
        .prop_map(|(panels_m, points, nets, closed, round, pins)| {
            let count = points.len() as f64;
            let points = points.iter().enumerate().map(|(index, &(jitter, radius_m))| {
                let angle = (index as f64 + jitter) / count * std::f64::consts::TAU;
                let (east_m, north_m) = (radius_m * angle.cos(), radius_m * angle.sin());
                if round { Point::new(east_m.round(), north_m.round()) } else { Point::new(east_m, north_m) }
            });
            let nets = nets.into_iter().map(|kind| kind % panels_m.len()).collect();
            let mut case = Case { points: points.collect(), closed, panels_m, nets, pins: Vec::new() };
            let outline = case.outline();
            if outline.length_m() > 0.0 {
                case.pins = pins.into_iter().map(|seed| pin(&outline, case.panels_m.len(), seed)).collect();
            }
            case
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    #[test]
    fn no_plain_search_does_better_round_the_pins(case in cases()) {
        let (outline, kinds) = (case.outline(), case.kinds());
        prop_assume!(outline.length_m() > 1.0);
        let request = PlacementRequest { pins: &case.pins, ..PlacementRequest::new(&outline, &kinds, &case.nets) };
        let placed = place(&request).unwrap();
        prop_assert_eq!(placed.bound_m, None);
        let kept: Vec<Pin> =
            case.pins.iter().zip(&placed.pins).filter(|(_, outcome)| outcome.kept).map(|(&pin, _)| pin).collect();
        // What is said to be kept is, by the placement's own posts.
        for &pin in &kept {
            prop_assert!(placed.holds(pin), "{pin:?}");
        }
        let least_m = plain(&case, &kept);
        prop_assert!((placed.corner_miss_m - least_m).abs() < 1e-5, "{} against {least_m}", placed.corner_miss_m);
        // What is said to be broken cannot be kept beside those kept before it.
        for (index, outcome) in placed.pins.iter().enumerate().filter(|(_, outcome)| !outcome.kept) {
            let before = case.pins[..index].iter().zip(&placed.pins).filter(|(_, outcome)| outcome.kept);
            let pins: Vec<Pin> = before.map(|(&pin, _)| pin).chain([case.pins[index]]).collect();
            prop_assert!(plain(&case, &pins).is_infinite(), "{pins:?} can be kept");
            prop_assert_eq!(outcome.cost_m, None);
        }
        // What each costs is the difference that it makes.
        for (index, outcome) in placed.pins.iter().enumerate().filter(|(_, outcome)| outcome.kept) {
            let others = case.pins.iter().zip(&placed.pins).enumerate();
            let others: Vec<Pin> =
                others.filter(|(at, (_, outcome))| *at != index && outcome.kept).map(|(_, (&pin, _))| pin).collect();
            let cost_m = placed.corner_miss_m - plain(&case, &others);
            prop_assert!((outcome.cost_m.unwrap() - cost_m).abs() < 1e-5 && outcome.proven);
        }
    }

    #[test]
    fn a_pin_never_lowers_the_sum(case in cases()) {
        let (outline, kinds) = (case.outline(), case.kinds());
        prop_assume!(outline.length_m() > 1.0);
        let mut least_m = 0.0;
        for count in 0..=case.pins.len() {
            let pins = &case.pins[..count];
            let placed = place(&PlacementRequest { pins, ..PlacementRequest::new(&outline, &kinds, &case.nets) }).unwrap();
            prop_assert!(placed.corner_miss_m >= least_m - 2e-6, "pin {count} lowers {least_m}");
            least_m = placed.corner_miss_m;
            prop_assert!(placed.pins.iter().all(|outcome| outcome.cost_m.is_none_or(|cost_m| cost_m >= 0.0)));
        }
    }
}

fn square() -> Outline {
    Outline::closed(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from))
}

#[test]
fn a_join_pinned_a_metre_off_a_corner_costs_a_metre_at_every_corner() {
    // Two nets of 14 panels on a square of 100 m: 3.571 m a panel, so a metre is the shorter way to a post.
    let (outline, kinds) = (square(), [Net::equal(50.0, 14).unwrap()]);
    let pins = [Pin { along_m: 26.0, what: PinKind::Join }];
    let placed = place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&outline, &kinds, &[0, 0]) }).unwrap();
    assert!((placed.corner_miss_m - 4.0).abs() < 1e-9 && placed.holds(pins[0]));
    assert!((placed.pins[0].cost_m.unwrap() - 4.0).abs() < 1e-6 && placed.pins[0].kept && placed.pins[0].proven);
    assert!(placed.best.unwrap().corner_miss_m < 1e-9, "what would have been best is said");
}

#[test]
fn a_pin_that_holds_anyway_changes_nothing() {
    let (outline, kinds) = (square(), [Net::equal(50.0, 14).unwrap()]);
    let free = place(&PlacementRequest::new(&outline, &kinds, &[0, 0])).unwrap();
    let pins = [Pin { along_m: 50.0, what: PinKind::Join }, Pin { along_m: 75.0, what: PinKind::Post }];
    let placed = place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&outline, &kinds, &[0, 0]) }).unwrap();
    assert_eq!((placed.start_m, placed.reversed, &placed.posts), (free.start_m, free.reversed, &free.posts));
    assert!(placed.pins.iter().all(|outcome| outcome.kept && outcome.cost_m == Some(0.0)));
}

#[test]
fn a_pinned_kind_lies_where_it_is_pinned() {
    // A long net of 50 m and two short ones of 25 m: the short ones are wanted on the north side.
    let (outline, kinds) = (square(), [Net::equal(50.0, 14).unwrap(), Net::equal(25.0, 7).unwrap()]);
    let pins = [
        Pin { along_m: 55.0, what: PinKind::Net { kind: 1 } },
        Pin { along_m: 70.0, what: PinKind::Net { kind: 1 } },
        Pin { along_m: 12.0, what: PinKind::Net { kind: 0 } },
    ];
    let placed =
        place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&outline, &kinds, &[0, 1, 1]) }).unwrap();
    assert!(placed.pins.iter().all(|outcome| outcome.kept), "{:?}", placed.pins);
    assert!(pins.iter().all(|&pin| placed.holds(pin)));
    assert!(placed.corner_miss_m < 1e-9, "and the corners stand on posts all the same");
}

#[test]
fn two_starts_cannot_both_be_kept_and_the_first_is() {
    let (outline, kinds) = (square(), [Net::equal(50.0, 14).unwrap()]);
    let pins = [Pin { along_m: 25.0, what: PinKind::Start }, Pin { along_m: 30.0, what: PinKind::Start }];
    let placed = place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&outline, &kinds, &[0, 0]) }).unwrap();
    assert!((placed.start_m - 25.0).abs() < 1e-9);
    assert_eq!(placed.pins.iter().map(|outcome| outcome.kept).collect::<Vec<_>>(), [true, false]);
}

#[test]
fn a_net_that_is_not_there_and_a_join_of_one_net_in_the_open_are_broken() {
    let (outline, kinds) = (square(), [Net::equal(50.0, 14).unwrap(), Net::equal(25.0, 7).unwrap()]);
    let pins = [Pin { along_m: 10.0, what: PinKind::Net { kind: 1 } }];
    let placed = place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&outline, &kinds, &[0, 0]) }).unwrap();
    assert!(!placed.pins[0].kept && placed.corner_miss_m < 1e-9);
    let open = Outline::open(&[(0.0, 0.0), (25.0, 0.0)].map(Point::from));
    let pins = [Pin { along_m: 10.0, what: PinKind::Join }];
    let placed = place(&PlacementRequest { pins: &pins, ..PlacementRequest::new(&open, &kinds, &[0]) }).unwrap();
    assert!(!placed.pins[0].kept);
}

#[test]
fn with_too_many_orders_pins_are_kept_all_the_same() {
    let kinds: Vec<Net> =
        (0..6).map(|kind| Net::equal(10.0 + f64::from(kind) * 1.7, 4 + kind as usize).unwrap()).collect();
    let nets: Vec<usize> = (0..24).map(|index| index % 6).collect();
    let points: Vec<Point> = (0..12)
        .map(|step| f64::from(step) / 12.0 * std::f64::consts::TAU)
        .map(|angle| Point::new(50.0 * angle.cos() + 3.0 * (5.0 * angle).sin(), 48.0 * angle.sin()))
        .collect();
    let outline = Outline::closed(&points);
    let pins = [Pin { along_m: 40.0, what: PinKind::Join }, Pin { along_m: 200.0, what: PinKind::Net { kind: 3 } }];
    let request =
        PlacementRequest { pins: &pins, budget_steps: 10_000, ..PlacementRequest::new(&outline, &kinds, &nets) };
    let placed = place(&request).unwrap();
    assert!(placed.pins[0].kept && placed.holds(pins[0]));
    assert!(placed.bound_m.is_some(), "and it is said that no proof stands behind the sum");
}
