//! Published and derived check values of the trade: docs/sources.md, husbandry section 11, rows N01 to N23, N33, N34 and N39, each
//! with its source beside it, and a fact that every keeper knows.
//!
//! "D" in a source means derived from the formula beside it; such a row holds the code to its own model by other means
//! (a closed form against the polygon overlay, a hand-worked number). The other rows come from where they say.

#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may stop and may read files")]

use geometry::ground::{sagitta_m, slope_factor};
use geometry::mowing::{field_capacity_m2_per_s, passes};
use geometry::shapes::{circle_area_m2, regular_area_m2};
use geometry::statics::{guy_tension_n, sag_tension_n, solidity, wind_n_per_m, wind_pressure_pa};
use geometry::{
    Mower, Net, Outline, PlacementRequest, Point, StripRequest, broms_clay_n, broms_clay_strength_pa, broms_sand_n,
    corner_pull_n, place, strip, strip_pieces,
};

const FOOT_M: f64 = 0.3048;
const ACRE_M2: f64 = 43_560.0 * FOOT_M * FOOT_M;
const MILE_M: f64 = 1_609.344;
const POUND_FORCE_N: f64 = 4.448_221_615_260_5;

/// One row: what was got, what was wanted, the relative tolerance and where the number stands.
fn row(id: &str, got: f64, want: f64, tolerance: f64, source: &str) {
    assert!((got - want).abs() <= tolerance * want.abs(), "{id}: got {got}, {source} has {want}");
}

fn regular(sides: u32, perimeter_m: f64) -> Outline {
    let side_m = perimeter_m / f64::from(sides);
    let radius_m = side_m / 2.0 / (std::f64::consts::PI / f64::from(sides)).sin();
    let points: Vec<Point> = (0..sides)
        .map(|corner| f64::from(corner) / f64::from(sides) * std::f64::consts::TAU)
        .map(|angle| Point::new(radius_m * angle.cos(), radius_m * angle.sin()))
        .collect();
    Outline::closed(&points)
}

fn rectangle(wide_m: f64, deep_m: f64) -> Outline {
    Outline::closed(&[(0.0, 0.0), (wide_m, 0.0), (wide_m, deep_m), (0.0, deep_m)].map(Point::from))
}

fn dented() -> Outline {
    Outline::closed(&[(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0), (0.0, 20.0)].map(Point::from))
}

fn mown(outline: &Outline, width_m: f64) -> geometry::Strip {
    let mower = Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 4.0 / 3.6 };
    strip(&StripRequest { outline, width_m, keep_outs: &[], mower })
}

/// Area of what `strip` draws, by the shoelace over its rings.
fn drawn_m2(strip: &geometry::Strip) -> f64 {
    let ring_m2 = |ring: &Vec<Point>| Outline::closed(ring).area_m2();
    strip.polygons.iter().map(|p| ring_m2(&p.outer) - p.holes.iter().map(ring_m2).sum::<f64>()).sum()
}

#[test]
fn n01_to_n04_areas() {
    row("N01", regular_area_m2(100.0, 4), 625.0, 1e-9, "a^2, D");
    row("N01", rectangle(25.0, 25.0).area_m2(), 625.0, 1e-9, "a^2, D");
    for (sides, want) in [(6, 721.688), (8, 754.442)] {
        row("N02", regular_area_m2(100.0, sides), want, 1e-5, "docs/sources.md, husbandry 8.1, D");
        row("N02", regular(sides, 100.0).area_m2(), want, 1e-5, "the same by the shoelace");
    }
    row("N02", circle_area_m2(100.0), 795.775, 1e-5, "P^2 / 4 pi, D");
    let panel_m = 50.0 / 13.0;
    row("N03", rectangle(6.0 * panel_m, 7.0 * panel_m).area_m2(), 621.302, 1e-5, "D");
    let side_m = 164.0 / 4.0 * FOOT_M;
    row("N04", side_m / FOOT_M, 41.0, 1e-4, "164 ft / 4, D");
    row("N04", rectangle(side_m, side_m).area_m2() / (FOOT_M * FOOT_M), 1_681.0, 1e-4, "D");
    row("N04", rectangle(side_m, side_m).area_m2(), 156.17, 1e-4, "D");
    // The published anchor is words, not digits: "about 40 ft a side, over 1,600 ft2".
    assert!((side_m / FOOT_M - 40.0).abs() <= 1.0, "N04: S12, Ussery, Managing Poultry on Pasture");
    assert!(regular_area_m2(164.0, 4) > 1_600.0, "N04: S12, Ussery, Managing Poultry on Pasture");
}

#[test]
fn n05_to_n08_strips() {
    let square = rectangle(25.0, 25.0);
    let strip = mown(&square, 1.2);
    row("N05", strip.area_m2, 120.0, 1e-9, "P w, docs/sources.md, husbandry 8.2, D");
    row("N05", drawn_m2(&strip), 120.0, 1e-6, "the drawn shape by the shoelace");
    // Round joins are not mown; the row holds the pieces: mitres less what a round leaves of them.
    let half_m = 0.6;
    let mitres_m2: f64 = strip_pieces(&square, 1.2)[4..].iter().map(|kite| Outline::closed(kite).area_m2()).sum();
    let rounds_m2 = std::f64::consts::PI * half_m * half_m;
    row("N06", strip.area_m2 - mitres_m2 + rounds_m2, 119.691, 1e-5, "P w - (4 - pi) r^2, D");
    row("N07", mown(&dented(), 1.2).area_m2, 96.0, 1e-9, "P w, docs/sources.md, husbandry 8.2, D");
    row("N07", drawn_m2(&mown(&dented(), 1.2)), 96.0, 1e-6, "the drawn shape by the shoelace");
    let outer_m2 = square.area_m2() + square.length_m() * half_m + rounds_m2;
    row("N08", outer_m2, 686.131, 1e-5, "Steiner: A + P r + pi r^2, D");
}

#[test]
fn n09_to_n11_pulls() {
    row("N09", corner_pull_n(100.0, 90_f64.to_radians()), 141.42, 1e-4, "2 T sin 45, D");
    for (turn_deg, want) in [(60.0_f64, 100.00), (45.0, 76.54), (120.0, 173.21)] {
        row("N10", corner_pull_n(100.0, turn_deg.to_radians()), want, 1e-4, "docs/sources.md, husbandry 2.1, D");
    }
    row("N11", guy_tension_n(74.246, 45_f64.to_radians()), 105.0, 1e-3, "H / cos a, D");
}

#[test]
fn n12_to_n17_stakes() {
    // In feet and kips the formula is the same: b 1, e 2, L 8, cu 1 kip/ft2.
    let kips = broms_clay_n(1.0, 8.0, 1.0, 2.0);
    row("N12", kips, 13.35, 1e-3, "Broms 1964, as in Reese & Van Impe, Appendix A (inputs partly from memory)");
    row("N12", kips / 9.0, 1.4833, 1e-3, "its f, ft");
    row("N12", kips * 1_000.0 * POUND_FORCE_N, 59.38e3, 1e-3, "the same in newtons");
    let square_foot_m2 = FOOT_M * FOOT_M;
    let strength_pa = 1_000.0 * POUND_FORCE_N / square_foot_m2;
    row(
        "N12",
        broms_clay_n(strength_pa, 8.0 * FOOT_M, FOOT_M, 2.0 * FOOT_M),
        59.38e3,
        1e-3,
        "computed in SI from the start",
    );
    row("N13", broms_clay_n(50e3, 2.34575, 0.75, 7.5), 13.60e3, 1e-3, "S6, anonymous Broms free-head worksheet");
    row("N14", broms_clay_n(50e3, 0.2, 0.01, 0.5), 63.02, 1e-3, "closed form of Broms 1964, D");
    row("N15", broms_clay_n(50e3, 0.3, 0.012, 0.0), 577.9, 1e-3, "closed form of Broms 1964, D");
    let sand_n = broms_sand_n(30_f64.to_radians(), 17e3, 0.2, 0.01, 0.5);
    row("N16", sand_n, 2.914, 1e-3, "0.5 g d L^3 Kp / (e + L), Broms 1964 (from memory)");
    let strength_pa = broms_clay_strength_pa(40.0, 0.2, 0.01, 0.5).unwrap();
    // The row is printed to three digits, so half a digit is its tolerance.
    row("N17", strength_pa / 1e3, 31.7, 0.05 / 31.7, "su = H / (9 d f), D");
    row("N17", 40.0 / (9.0 * 0.01 * strength_pa), 0.014_003_7, 1e-3, "its f, m");
}

#[test]
fn n18_and_n19_wind_and_sag() {
    row("N18", wind_pressure_pa(15.0), 140.625, 1e-3, "EN 1991-1-4 4.5 (from memory)");
    // Twelve lines of 2.5 mm on 1.05 m, stays of 3 mm every 75 mm.
    let share = solidity(12.0 * 0.0025 / 1.05, 0.003 / 0.075);
    row("N18", share, 0.067_428_6, 1e-4, "docs/sources.md, husbandry 2.3, D");
    row("N18", wind_n_per_m(15.0, share, 1.05), 11.95, 1e-3, "EN 1991-1-4 7.9 and 7.11 (from memory)");
    // 0.06 kg/m weigh 0.5884 N/m, which the row rounds to 0.588.
    row("N19", sag_tension_n(0.588, 3.5, 0.03), 30.03, 1e-3, "w s^2 / 8 d, D");
    row("N19", sag_tension_n(0.06 * 9.806_65, 3.5, 0.03), 30.03, 1e-4, "the same unrounded");
}

#[test]
fn n20_to_n23_mowing() {
    let hour_s = 3_600.0;
    let acres_per_hour = |feet: f64, miles_per_hour: f64, efficiency: f64| {
        field_capacity_m2_per_s(miles_per_hour * MILE_M / hour_s, feet * FOOT_M, efficiency) * hour_s / ACRE_M2
    };
    row("N20", acres_per_hour(40.0, 6.0, 0.70), 20.36, 1e-3, "S W E / 8.25, D");
    row("N20", acres_per_hour(40.0, 6.0, 0.70), 20.4, 0.005, "S56, Iowa State University, PM 696, 2001");
    row("N21", acres_per_hour(10.0, 5.0, 0.63), 3.818, 1e-3, "S W E / 8.25, D");
    row("N21", acres_per_hour(10.0, 5.0, 0.63), 3.8, 0.005, "S56, Iowa State University, PM 696, 2001");
    let per_second_m2 = field_capacity_m2_per_s(4.0 / 3.6, 0.53, 0.75);
    row("N22", per_second_m2 * hour_s / 1e4, 0.159, 1e-3, "S W E / 10, D");
    row("N22", 120.0 / per_second_m2 / 60.0, 4.53, 1e-3, "D");
    assert_eq!(passes(1.2, 0.53, 0.1), Some(3), "N23: ceil, D");
    let strip = mown(&rectangle(25.0, 25.0), 1.2);
    assert_eq!(strip.passes, Some(3), "N23: the same on the square");
    row("N23", strip.minutes.unwrap(), 4.5, 1e-9, "3 x 100 m at 4 km/h, docs/sources.md, husbandry 5.1, D");
}

#[test]
fn n33_and_n34_ground() {
    row("N33", slope_factor(0.2), 1.019_80, 1e-4, "sqrt(1 + s^2), D");
    row("N33", 50.0 / slope_factor(0.2), 49.03, 1e-4, "D");
    row("N34", sagitta_m(3.5, 20.0) * 1e3, 76.56, 1e-3, "s^2 / 8 R, D");
}

#[test]
fn n39_rolls_for_a_hundred_and_a_half_metres() {
    let outline = rectangle(25.0, 25.25);
    assert!((outline.length_m() - 100.5).abs() < 1e-9);
    for (roll_m, panels, rolls, spare_m) in [(50.0, 14, 3, 49.5), (25.0, 7, 5, 24.5)] {
        let kinds = [Net::equal(roll_m, panels).unwrap()];
        let enough = place(&PlacementRequest::new(&outline, &kinds, &vec![0; rolls])).unwrap();
        assert!((enough.spare_m - spare_m).abs() < 1e-9, "N39: {rolls} rolls of {roll_m} m, D");
        assert!(!enough.falls_short() && enough.nets_on_line().count() == rolls);
        let one_less = place(&PlacementRequest::new(&outline, &kinds, &vec![0; rolls - 1])).unwrap();
        assert!(one_less.falls_short(), "N39: one roll less does not reach");
        assert!((one_less.short_m - 0.5).abs() < 1e-9);
    }
}

#[test]
fn two_nets_of_fifty_metres_enclose_a_square_of_twenty_five() {
    // Every keeper's first run; arithmetic, docs/sources.md, husbandry 8.1.
    let kinds = [Net::equal(50.0, 14).unwrap()];
    let outline = rectangle(25.0, 25.0);
    let placement = place(&PlacementRequest::new(&outline, &kinds, &[0, 0])).unwrap();
    assert!(placement.is_ring() && !placement.has_spare());
    assert_eq!((outline.area_m2(), placement.posts.len()), (625.0, 30));
    assert!(placement.corner_miss_m < 1e-9, "14 panels are an even number: every corner falls on a post");
    // Thirteen panels a roll make no square with its corners on posts (S14, a keeper's complaint): 6.5 a side.
    let odd = [Net::equal(50.0, 13).unwrap()];
    let missed = place(&PlacementRequest::new(&outline, &odd, &[0, 0])).unwrap();
    assert!((missed.corner_miss_m - 50.0 / 13.0).abs() < 1e-9, "two corners on posts, two half a panel off");
    let panel_m = 50.0 / 13.0;
    let oblong = rectangle(6.0 * panel_m, 7.0 * panel_m);
    let met = place(&PlacementRequest::new(&oblong, &odd, &[0, 0])).unwrap();
    assert!(met.corner_miss_m < 1e-9, "but 6 by 7 panels do");
}
