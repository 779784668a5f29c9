//! The largest run against closed forms, a dense search by other means, and the laws that it keeps.

use std::f64::consts::{PI, SQRT_2, TAU};

use geometry::largest::{
    FREE_SIDES, Family, GroundNote, Hold, KeepOff, Largest, LargestFault, LargestRequest, LargestSearch, Panels,
};
use geometry::shapes::regular_area_m2;
use geometry::{Outline, Point, region};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn ring(points: &[(f64, f64)]) -> Outline {
    Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>())
}

fn ask(boundary: Outline, nets: u32) -> LargestRequest {
    LargestRequest {
        boundary,
        keep_outs: Vec::new(),
        hold: None,
        towards: None,
        net_m: 50.0 * f64::from(nets),
        panels: Panels { count: 14 * nets, equal: true },
        walls: Vec::new(),
        free_sides: FREE_SIDES,
    }
}

fn off(points: &[(f64, f64)], clearance_m: f64, may_enclose: bool) -> KeepOff {
    KeepOff { outline: ring(points), clearance_m, may_enclose }
}

fn search(request: &LargestRequest) -> Vec<Largest> {
    let mut search = LargestSearch::new(request).unwrap();
    while search.step() {}
    search.best()
}

fn of(found: &[Largest], family: Family) -> &Largest {
    found.iter().find(|found| found.family == family && found.wall.is_none()).unwrap()
}

/// Every promise of an answer, by the rooms' other means.
fn holds_what_it_says(request: &LargestRequest, found: &Largest) {
    let outline = Outline::closed(&found.outline);
    let name = format!("{:?} {:?}", found.family, found.wall);
    assert!((outline.signed_area_m2() - found.area_m2).abs() < 1e-6 * found.area_m2.max(1.0), "{name}");
    assert!(found.area_m2 <= found.area_bound_m2, "{name}: {} {}", found.area_m2, found.area_bound_m2);
    assert!(found.line_m <= request.net_m * (1.0 + 1e-9), "{name}: {}", found.line_m);
    if found.wall.is_none() {
        assert!((outline.length_m() - found.line_m).abs() < 1e-6, "{name}");
    }
    assert!(region::inside(&outline, &request.boundary), "{name} leaves the paddock");
    for off in &request.keep_outs {
        let apart_m = region::distance_between_m(&outline, &off.outline);
        // What touches may count as within.
        let deep = |outer: &Outline, at: Point| region::contains(outer, at) && region::distance_to_m(outer, at) > 1e-6;
        let within = deep(&outline, off.outline.at(0.0));
        assert!(!deep(&off.outline, outline.at(0.0)), "{name} in a keep-out");
        assert!(apart_m >= off.clearance_m - 1e-6, "{name}: {apart_m} from a keep-out");
        assert!(!within || off.may_enclose, "{name} encloses");
        assert!(off.may_enclose || region::overlap_area_m2(&outline, &off.outline) < 1e-3, "{name} overlaps");
    }
    for &at in request.hold.iter().flat_map(|hold| &hold.places) {
        let clearance_m = request.hold.as_ref().unwrap().clearance_m;
        assert!(region::contains(&outline, at), "{name} does not hold");
        assert!(region::distance_to_m(&outline, at) >= clearance_m - 1e-6, "{name}: too near to what it holds");
    }
    if let Some(whole) = &found.whole_panels {
        let panel_m = request.net_m / f64::from(request.panels.count);
        let closed = Outline::closed(&whole.outline);
        for (index, &panels) in whole.side_panels.iter().enumerate() {
            let (from, to) = closed.side(index);
            assert!((from.distance_m(to) - f64::from(panels) * panel_m).abs() < 1e-6, "{name}: side {index}");
        }
        assert!(whole.side_panels.iter().sum::<u32>() <= request.panels.count, "{name}");
        assert!(region::inside(&closed, &request.boundary), "{name}: whole panels leave the paddock");
        assert!((closed.area_m2() - whole.area_m2).abs() < 1e-6);
    }
}

fn check(request: &LargestRequest) -> Vec<Largest> {
    let found = search(request);
    for largest in &found {
        holds_what_it_says(request, largest);
    }
    found
}

fn turned(points: &[(f64, f64)], by: f64) -> Outline {
    let (sin, cos) = by.sin_cos();
    ring(&points.iter().map(|(e, n)| (7.0 + e * cos - n * sin, -3.0 + e * sin + n * cos)).collect::<Vec<_>>())
}

fn close(got: f64, want: f64, share: f64, what: &str) {
    assert!((got - want).abs() <= share * want, "{what}: {got} where {want} is right");
}

// Source of the closed forms: geometry; docs/sources.md, husbandry 8.1.
#[test]
fn a_square_fills_a_square_however_it_is_turned() {
    let square = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
    for by in [0.0, 0.3, 0.9, 2.2] {
        let found = check(&ask(turned(&square, by), 4));
        close(of(&found, Family::Square).area_m2, 400.0, 1e-6, "square");
        close(of(&found, Family::Rectangle).area_m2, 400.0, 1e-6, "rectangle");
        close(of(&found, Family::Free).area_m2, 400.0, 1e-6, "free");
        // The largest regular octagon in a square has four sides on it; the largest hexagon, aslant, by the width
        // across its corners at 15 degrees to a side: side a / (2 cos 15).
        close(of(&found, Family::Octagon).area_m2, 400.0 * 2.0 * (SQRT_2 - 1.0), 1e-4, "octagon");
        let side_m = 20.0 / (2.0 * (PI / 12.0).cos());
        close(of(&found, Family::Hexagon).area_m2, 1.5 * 3_f64.sqrt() * side_m * side_m, 1e-4, "hexagon");
        assert!(of(&found, Family::Square).area_bound_m2 < 401.0);
    }
}

#[test]
fn a_rectangle_takes_half_of_a_triangle() {
    for corners in [[(0.0, 0.0), (60.0, 0.0), (20.0, 40.0)], [(0.0, 0.0), (50.0, 10.0), (15.0, 33.0)]] {
        let triangle = ring(&corners);
        let half = triangle.area_m2() / 2.0;
        let found = check(&ask(triangle, 8));
        close(of(&found, Family::Rectangle).area_m2, half, 1e-5, "rectangle");
        println!("rectangle in a triangle: bound {:.4} of it", of(&found, Family::Rectangle).area_bound_m2 / half);
    }
    // The square on side a of a triangle of height h: a h / (a + h), on the side where that is most.
    let found = check(&ask(ring(&[(0.0, 0.0), (60.0, 0.0), (20.0, 40.0)]), 8));
    let (sides, area) = ([60.0, 40.0 * SQRT_2, 20.0 * 5_f64.sqrt()], 1200.0);
    let most = sides.map(|a| 2.0 * area / (a + 2.0 * area / a)).into_iter().fold(0.0, f64::max);
    close(of(&found, Family::Square).area_m2, most * most, 1e-5, "square");
}

#[test]
fn what_fits_anywhere_has_the_whole_line() {
    let found = check(&ask(ring(&[(0.0, 0.0), (90.0, 0.0), (90.0, 80.0), (0.0, 80.0)]), 4));
    let family = |family| of(&found, family);
    close(family(Family::Square).area_m2, 2500.0, 1e-9, "square");
    close(family(Family::Rectangle).area_m2, 2500.0, 1e-9, "rectangle");
    close(family(Family::Hexagon).area_m2, regular_area_m2(200.0, 6), 1e-9, "hexagon");
    close(family(Family::Octagon).area_m2, regular_area_m2(200.0, 8), 1e-9, "octagon");
    close(family(Family::Round).area_m2, regular_area_m2(200.0, 56), 1e-9, "round");
    close(family(Family::Free).area_m2, regular_area_m2(200.0, 8), 1e-6, "free");
    for found in &found {
        close(found.area_bound_m2, found.area_m2, 1e-6, "bound");
    }
    let whole = family(Family::Square).whole_panels.as_ref().unwrap();
    assert_eq!(whole.side_panels, [14; 4]);
    // Largest first, in the isoperimetric order; a free outline of eight sides ties with the octagon.
    assert_eq!(found[0].family, Family::Round);
    assert!(family(Family::Hexagon).area_m2 > family(Family::Square).area_m2);
}

/// A stirred number from 0 to 1: the same at every run.
struct Stir(u64);

impl Stir {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        ((self.0 >> 33) as f64) / f64::from(1_u32 << 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }
}

/// A lumpy paddock about 70 m across with some keep-outs.
fn lumpy(seed: u64, corners: u32, keep_outs: u32) -> LargestRequest {
    let mut stir = Stir(seed.wrapping_mul(977).wrapping_add(5));
    let mut ring_about = |count: u32, radius_m: f64, lumps: f64, at: (f64, f64)| -> Vec<(f64, f64)> {
        (0..count)
            .map(|corner| {
                let way = (f64::from(corner) + 0.4 * stir.next()) / f64::from(count) * TAU;
                let radius_m = radius_m * stir.between(1.0 - lumps, 1.0 + lumps);
                (at.0 + radius_m * way.cos(), at.1 + radius_m * way.sin())
            })
            .collect()
    };
    let boundary = ring_about(corners, 35.0, 0.35, (0.0, 0.0));
    let offs = (0..keep_outs).map(|index| {
        let way = f64::from(index) * 2.4 + seed as f64;
        let from_middle_m = 6.0 + 5.0 * f64::from(index);
        let at = (from_middle_m * way.cos(), from_middle_m * way.sin());
        off(&ring_about(5, 2.5, 0.3, at), f64::from(index % 3), index % 2 == 1)
    });
    let keep_outs: Vec<KeepOff> = offs.collect();
    LargestRequest { keep_outs, ..ask(ring(&boundary), 4) }
}

/// Whether a convex ring is free, by the plainest means: every corner inside, no crossing, every clearance kept.
fn is_free(request: &LargestRequest, corners: &[Point]) -> bool {
    let outline = Outline::closed(corners);
    corners.iter().all(|&at| region::contains(&request.boundary, at))
        && region::inside(&outline, &request.boundary)
        && request.keep_outs.iter().all(|off| {
            let apart_m = region::distance_between_m(&outline, &off.outline);
            let within = region::contains(&outline, off.outline.at(0.0));
            apart_m >= off.clearance_m.max(1e-9)
                && (!within || off.may_enclose)
                && !region::contains(&off.outline, corners[0])
        })
}

/// Corners of a shape: regular of `sides`, or a rectangle of `proportion`, of that circumradius.
fn shape(sides: u32, proportion: f64, at: Point, angle: f64, radius_m: f64) -> Vec<Point> {
    let half = proportion.recip().atan();
    let ways: Vec<f64> = if sides == 4 {
        vec![-half, half, PI - half, PI + half]
    } else {
        (0..sides).map(|index| f64::from(index) / f64::from(sides) * TAU).collect()
    };
    ways.iter().map(|way| at + geometry::Vector::new((way + angle).cos(), (way + angle).sin()) * radius_m).collect()
}

/// The most area over a grid of places, angles and proportions, each grown as far as it goes.
fn dense(request: &LargestRequest, sides: u32, proportions: &[f64]) -> f64 {
    let (places, angles) = (16, 12);
    let mut most_m2 = 0.0;
    let period = if sides == 4 && proportions.len() == 1 {
        PI / 2.0
    } else if sides == 4 {
        PI
    } else {
        TAU / f64::from(sides)
    };
    for &proportion in proportions {
        for angle in (0..angles).map(|index| f64::from(index) / f64::from(angles) * period) {
            for place in 0..places * places {
                let at = Point::new(f64::from(place % places) * 5.0 - 37.5, f64::from(place / places) * 5.0 - 37.5);
                if !region::contains(&request.boundary, at) {
                    continue;
                }
                let ring = |radius_m: f64| shape(sides, proportion, at, angle, radius_m);
                let area_m2 = |radius_m: f64| Outline::closed(&ring(radius_m)).area_m2();
                let free = |radius_m: f64| {
                    Outline::closed(&ring(radius_m)).length_m() <= request.net_m && is_free(request, &ring(radius_m))
                };
                // Only what beats the best; keep-outs that may be enclosed leave gaps, so sizes are tried from above.
                let mut radius_m = 60.0;
                while area_m2(radius_m) > most_m2 && !free(radius_m) {
                    radius_m *= 0.97;
                }
                if area_m2(radius_m) <= most_m2 {
                    continue;
                }
                let (mut low, mut high) = (radius_m, radius_m / 0.97);
                for _ in 0..20 {
                    let middle = f64::midpoint(low, high);
                    if free(middle) { low = middle } else { high = middle }
                }
                most_m2 = area_m2(low);
            }
        }
    }
    most_m2
}

// Source: a search of another kind, of this test alone; common practice, no source.
#[test]
fn a_dense_search_finds_nothing_larger() {
    let mut gaps = Vec::new();
    for seed in 0..8 {
        let request = lumpy(seed, 7 + 3 * (seed as u32 % 5), seed as u32 % 5);
        let found = check(&request);
        let cases = [
            (Family::Square, 4, &[1.0][..]),
            (Family::Hexagon, 6, &[1.0]),
            (Family::Rectangle, 4, &[1.0, 1.3, 1.7, 2.5, 4.0]),
        ];
        for (family, sides, proportions) in cases {
            let dense_m2 = dense(&request, sides, proportions);
            let largest = of(&found, family);
            gaps.push(largest.area_bound_m2 / largest.area_m2 - 1.0);
            println!(
                "{seed} {family:?}: {:.1} m2, dense {dense_m2:.1}, bound {:.1}",
                largest.area_m2, largest.area_bound_m2
            );
            assert!(largest.area_m2 >= 0.995 * dense_m2, "{seed} {family:?}: {} < {dense_m2}", largest.area_m2);
            assert!(largest.area_bound_m2 >= dense_m2, "{seed} {family:?}: the bound is none");
        }
    }
    gaps.sort_by(f64::total_cmp);
    println!("median gap between bound and answer: {:.3} %", 100.0 * gaps[gaps.len() / 2]);
}

#[test]
fn a_tree_may_be_enclosed_where_that_is_said_and_else_is_not() {
    let paddock = [(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0)];
    let tree = [(24.0, 24.0), (26.0, 24.0), (26.0, 26.0), (24.0, 26.0)];
    let with = |may_enclose| LargestRequest { keep_outs: vec![off(&tree, 3.0, may_enclose)], ..ask(ring(&paddock), 4) };
    let found = check(&with(true));
    close(of(&found, Family::Square).area_m2, 2500.0, 1e-6, "round the tree");
    let found = check(&with(false));
    // Beside it 21 m are left: a strip of 50 m for the rectangle. A square aslant in a corner of the paddock is no larger.
    close(of(&found, Family::Rectangle).area_m2, 21.0 * 50.0, 1e-6, "beside the tree");
    assert!(of(&found, Family::Square).area_m2 < 625.0);
}

#[test]
fn a_coop_is_held_with_its_clearance() {
    let mut request = ask(ring(&[(0.0, 0.0), (100.0, 0.0), (100.0, 20.0), (20.0, 20.0), (20.0, 90.0), (0.0, 90.0)]), 3);
    let coop = [(60.0, 5.0), (66.0, 5.0), (66.0, 8.0), (60.0, 8.0)].map(Point::from);
    request.hold = Some(Hold { places: coop.to_vec(), clearance_m: 2.0 });
    request.towards = Some(Point::new(63.0, 6.5));
    let found = check(&request);
    assert!(found.iter().any(|found| found.family == Family::Square));
    close(of(&found, Family::Rectangle).area_m2, 20.0 * 55.0, 1e-6, "rectangle in the strip");
}

#[test]
fn where_any_place_will_do_it_is_by_the_coop() {
    let mut request = ask(ring(&[(0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0)]), 2);
    request.towards = Some(Point::new(150.0, 40.0));
    for found in check(&request) {
        if found.family == Family::Free {
            continue;
        }
        let count = found.outline.len() as f64;
        let sum = found.outline.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.east_m, sum.1 + at.north_m));
        let middle = Point::new(sum.0 / count, sum.1 / count);
        assert!(middle.distance_m(Point::new(150.0, 40.0)) < 0.5, "{:?} at {middle:?}", found.family);
    }
}

#[test]
fn a_side_borrowed_from_a_wall_saves_its_net() {
    let mut request = ask(ring(&[(0.0, 0.0), (120.0, 0.0), (120.0, 90.0), (0.0, 90.0)]), 2);
    request.walls = vec![(Point::new(0.0, 0.0), Point::new(120.0, 0.0))];
    let found = check(&request);
    let leaning = |family| found.iter().find(|found| found.family == family && found.wall == Some(0)).unwrap();
    close(leaning(Family::Square).area_m2, (100.0_f64 / 3.0).powi(2), 1e-6, "square");
    close(leaning(Family::Rectangle).area_m2, 1250.0, 1e-4, "rectangle, twice as long as deep");
    close(leaning(Family::Hexagon).area_m2, regular_area_m2(120.0, 6), 1e-6, "hexagon");
    // The half of a regular polygon of twice the panels, and of twice seven sides for eight with the wall's.
    close(leaning(Family::Round).area_m2, regular_area_m2(200.0, 56) / 2.0, 1e-6, "half round");
    close(leaning(Family::Free).area_m2, regular_area_m2(200.0, 14) / 2.0, 1e-4, "free");
    for found in &found {
        assert!(found.area_bound_m2 <= found.area_m2 * (1.0 + 1e-3), "{:?} {:?}", found.family, found.wall);
    }
}

#[test]
fn a_free_outline_goes_round_a_dent() {
    // An L: its six corners are the free outline once the nets reach round it.
    let ell = [(0.0, 0.0), (40.0, 0.0), (40.0, 15.0), (15.0, 15.0), (15.0, 40.0), (0.0, 40.0)];
    let found = check(&ask(ring(&ell), 4));
    close(of(&found, Family::Free).area_m2, ring(&ell).area_m2(), 1e-6, "the whole of the L");
}

#[test]
fn what_cannot_be_searched_is_said() {
    let square = [(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0)];
    let fault = |request: &LargestRequest| LargestSearch::new(request).map(|_| ()).unwrap_err();
    let crossed = ask(ring(&[(0.0, 0.0), (50.0, 50.0), (50.0, 0.0), (0.0, 50.0)]), 2);
    assert!(matches!(fault(&crossed), LargestFault::Boundary { fault: Some(_) }));
    assert!(matches!(fault(&ask(Outline::open(&[]), 2)), LargestFault::Boundary { fault: None }));
    assert_eq!(fault(&LargestRequest { net_m: f64::NAN, ..ask(ring(&square), 2) }).id(), "largest-number");
    let coop = Hold { places: vec![Point::new(25.0, 25.0)], clearance_m: 1.0 };
    let swallowed = LargestRequest {
        hold: Some(coop.clone()),
        keep_outs: vec![off(&[(20.0, 20.0), (30.0, 20.0), (30.0, 30.0), (20.0, 30.0)], 0.0, false)],
        ..ask(ring(&square), 2)
    };
    assert_eq!(fault(&swallowed), LargestFault::HoldInKeepOut { index: 0 });
    let outside = Hold { places: vec![Point::new(80.0, 25.0)], ..coop };
    assert_eq!(fault(&LargestRequest { hold: Some(outside), ..ask(ring(&square), 2) }), LargestFault::HoldOutside);
    // Keep-outs that overlap, lie outside or cut the paddock apart can be searched; the notes say so.
    let odd = LargestRequest {
        keep_outs: vec![
            off(&[(-5.0, 20.0), (55.0, 20.0), (55.0, 25.0), (-5.0, 25.0)], 1.0, false),
            off(&[(10.0, 22.0), (14.0, 22.0), (14.0, 30.0), (10.0, 30.0)], 1.0, false),
            off(&[(80.0, 22.0), (84.0, 22.0), (84.0, 30.0), (80.0, 30.0)], 1.0, false),
        ],
        ..ask(ring(&square), 4)
    };
    let notes = [
        GroundNote::KeepOutsOverlap { first: 0, second: 1 },
        GroundNote::KeepOutOutside { index: 2 },
        GroundNote::PaddockInParts { count: 2 },
    ];
    assert_eq!(LargestSearch::new(&odd).unwrap().notes(), notes);
    let found = check(&odd);
    close(of(&found, Family::Rectangle).area_m2, 50.0 * 19.0, 1e-6, "the southern part is the larger for a rectangle");
    // Ground that the keep-outs take whole has no answer.
    let taken = LargestRequest { keep_outs: vec![off(&square, 0.0, false)], ..ask(ring(&square), 4) };
    assert!(search(&taken).is_empty());
}

/// The request carried by a motion of the plane: scaled, mirrored where asked, turned, moved.
fn carried(request: &LargestRequest, scale: f64, mirror: bool, by: f64, to: (f64, f64)) -> LargestRequest {
    let (sin, cos) = by.sin_cos();
    let carry = |at: Point| {
        let north_m = if mirror { -at.north_m } else { at.north_m };
        let (east_m, north_m) = (at.east_m * scale, north_m * scale);
        Point::new(to.0 + east_m * cos - north_m * sin, to.1 + east_m * sin + north_m * cos)
    };
    let outline = |outline: &Outline| Outline::closed(&outline.points().map(carry).collect::<Vec<_>>());
    let keep_outs = request.keep_outs.iter().map(|off| KeepOff {
        outline: outline(&off.outline),
        clearance_m: off.clearance_m * scale,
        may_enclose: off.may_enclose,
    });
    LargestRequest {
        boundary: outline(&request.boundary),
        keep_outs: keep_outs.collect(),
        net_m: request.net_m * scale,
        ..request.clone()
    }
}

const FAMILIES: [Family; 6] =
    [Family::Square, Family::Rectangle, Family::Hexagon, Family::Octagon, Family::Round, Family::Free];

fn areas(found: &[Largest]) -> Vec<f64> {
    let area_m2 =
        |family: &Family| found.iter().find(|found| found.family == *family).map_or(0.0, |found| found.area_m2);
    FAMILIES.iter().map(area_m2).collect()
}

/// How much of an answer may be lost: the free outline ends where its climbs end.
fn may_lose(family: Family) -> f64 {
    if family == Family::Free { 0.06 } else { 1e-3 }
}

fn carries_its_answer(seed: u64, scale: f64, mirror: bool, by: f64, to: (f64, f64)) {
    let request = lumpy(seed, 9, 3);
    let before = areas(&search(&request));
    let after = areas(&check(&carried(&request, scale, mirror, by, to)));
    for ((&family, before), after) in FAMILIES.iter().zip(before).zip(after) {
        let after = after / (scale * scale);
        assert!((after - before).abs() <= may_lose(family) * before, "{seed} {family:?}: {before} then {after}");
    }
}

fn keeps_the_order(seed: u64, nets: u32) {
    let request = lumpy(seed, 9, 3);
    let with_nets = |nets: u32| LargestRequest {
        net_m: 50.0 * f64::from(nets),
        panels: Panels { count: 14 * nets, equal: true },
        ..request.clone()
    };
    let found = check(&with_nets(nets));
    let fewer_keep_outs = LargestRequest { keep_outs: request.keep_outs[..2].to_vec(), ..with_nets(nets) };
    for ((&family, with), without) in FAMILIES.iter().zip(areas(&found)).zip(areas(&search(&fewer_keep_outs))) {
        assert!(with <= without * (1.0 + may_lose(family)), "{seed} {family:?}: {with} with, {without} without");
    }
    for ((&family, less), more) in FAMILIES.iter().zip(areas(&found)).zip(areas(&search(&with_nets(nets + 1)))) {
        assert!(more >= less * (1.0 - may_lose(family)), "{seed} {family:?}: {less} then {more}");
    }
    for found in &found {
        let limit_m2 = regular_area_m2(50.0 * f64::from(nets), 14 * nets);
        assert!(found.area_m2 <= limit_m2 * (1.0 + 1e-9));
    }
}

// Paddocks on which an earlier search missed the largest.
#[test]
fn hard_paddocks_keep_the_laws() {
    keeps_the_order(9, 3);
    keeps_the_order(170, 3);
    carries_its_answer(149, 2.5, false, 5.2087, (3892.34, 1793.32));
    carries_its_answer(758, 1.3, true, 2.1, (-892.34, 7793.32));
}

/// A fixed slice of the laws; `NETFOLD_HEAVY=1` draws a hundred others each time. Free outlines are the best of many
/// starts and not proved: a drawn case may find one farther off than the laws allow them.
fn cases() -> ProptestConfig {
    let heavy = std::env::var_os("NETFOLD_HEAVY").is_some_and(|heavy| heavy == "1");
    let (cases, rng_seed) = if heavy { (100, RngSeed::Random) } else { (16, RngSeed::Fixed(5)) };
    ProptestConfig { cases, rng_seed, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn a_carried_plan_has_the_carried_answer(
        seed in 0_u64..1000, scale in 0.3..3.0, mirror: bool, by in 0.0..TAU, east_m in -1e4..1e4, north_m in -1e4..1e4,
    ) {
        carries_its_answer(seed, scale, mirror, by, (east_m, north_m));
    }

    #[test]
    fn a_keep_out_never_enlarges_and_a_net_never_shrinks(seed in 0_u64..1000, nets in 1_u32..4) {
        keeps_the_order(seed, nets);
    }
}

#[test]
fn the_answer_only_grows_and_can_be_stopped() {
    let mut search = LargestSearch::new(&lumpy(3, 12, 3)).unwrap();
    let mut known = vec![0.0; FAMILIES.len()];
    let mut steps = 0;
    while search.step() {
        steps += 1;
        let now = areas(&search.best());
        for (before, now) in known.iter().zip(&now) {
            assert!(now >= &(before * (1.0 - 1e-8)), "step {steps}: {before} then {now}");
        }
        known = now;
    }
    println!("{steps} steps");
    assert!(steps > 20);
}
