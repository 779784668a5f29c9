//! Published and derived check values of the trade: docs/sources.md, husbandry section 11, rows N01 to N23, N33, N34, N38, N39
//! and N43, the worked examples and tables of its sections 2 and 7, each with its source beside it, and a fact that every
//! keeper knows.
//!
//! "D" in a source means derived from the formula beside it; such a row holds the code to its own model by other means
//! (a closed form against the polygon overlay, a hand-worked number). The other rows come from where they say.

use geometry::ground::{sagitta_m, slope_factor, spacing_for_gap_m};
use geometry::mowing::{field_capacity_m2_per_s, passes};
use geometry::shapes::{circle_area_m2, regular_area_m2};
use geometry::statics::{
    guy_lift_n, guy_reach_m, guy_tension_n, sag_tension_n, solidity, wind_n_per_m, wind_pressure_pa,
};
use geometry::{
    Mower, Net, Outline, PlacementRequest, Point, Soil, Spike, StripRequest, StripWidth, broms_clay_n,
    broms_clay_strength_pa, broms_sand_n, corner_pull_n, place, strip, strip_pieces, uplift_clay_n,
};

const FOOT_M: f64 = 0.3048;
const ACRE_M2: f64 = 43_560.0 * FOOT_M * FOOT_M;
const MILE_M: f64 = 1_609.344;
const POUND_FORCE_N: f64 = 4.448_221_615_260_5;

/// One row: what was got, what was wanted, the relative tolerance and where the number stands.
fn row(id: &str, got: f64, want: f64, tolerance: f64, source: &str) {
    assert!((got - want).abs() <= tolerance * want.abs(), "{id}: got {got}, {source} has {want}");
}

/// One cell of a printed table: half a unit of its last digit is what it says.
fn cell(what: &str, got: f64, want: f64, unit: f64) {
    assert!((got - want).abs() <= unit * 0.500_01, "{what}: got {got}, the table has {want}");
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
    strip(&StripRequest { outline, width: StripWidth::even(width_m), keep_outs: &[], mower })
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
    let mitres_m2: f64 =
        strip_pieces(&square, StripWidth::even(1.2))[4..].iter().map(|kite| Outline::closed(kite).area_m2()).sum();
    let rounds_m2 = std::f64::consts::PI * half_m * half_m;
    row("N06", strip.area_m2 - mitres_m2 + rounds_m2, 119.691, 1e-5, "P w - (4 - pi) r^2, D");
    row("N07", mown(&dented(), 1.2).area_m2, 96.0, 1e-9, "P w, docs/sources.md, husbandry 8.2, D");
    row("N07", drawn_m2(&mown(&dented(), 1.2)), 96.0, 1e-6, "the drawn shape by the shoelace");
    row("8.2", mown(&regular(6, 100.0), 1.2).area_m2, 120.0, 1e-9, "P w, a hexagon, D");
    let straight = Outline::open(&[(0.0, 0.0), (50.0, 0.0)].map(Point::from));
    row("8.2", mown(&straight, 1.2).area_m2, 60.0, 1e-9, "flat at its ends, D");
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

/// Where the shear vanishes below the dead depth, how much stake is left below, and the moment there by both halves.
fn free_head(
    hold_n: f64,
    strength_pa: f64,
    length_m: f64,
    diameter_m: f64,
    load_height_m: f64,
) -> (f64, f64, f64, f64) {
    let shear_m = hold_n / (9.0 * strength_pa * diameter_m);
    let left_m = length_m - 1.5 * diameter_m - shear_m;
    let above_nm = hold_n * (load_height_m + 1.5 * diameter_m + 0.5 * shear_m);
    let below_nm = 2.25 * strength_pa * diameter_m * left_m * left_m;
    (shear_m, left_m, above_nm, below_nm)
}

#[test]
fn w1_and_w2_the_moment_is_one_from_above_and_below() {
    // In feet and kips.
    let (shear, left, above, below) = free_head(broms_clay_n(1.0, 8.0, 1.0, 2.0), 1.0, 8.0, 1.0, 2.0);
    row("W1", shear, 1.4833, 1e-4, "Reese & Van Impe, Appendix A (inputs partly from memory)");
    row("W1", left, 5.0167, 1e-4, "Reese & Van Impe, Appendix A (inputs partly from memory)");
    row("W1", above, 56.6, 1e-3, "Reese & Van Impe, Appendix A (inputs partly from memory)");
    row("W1", below, above, 1e-9, "equilibrium, D");
    let (strength_pa, length_m, diameter_m, load_height_m) = (50e3, 2.3457, 0.75, 7.5);
    let hold_n = broms_clay_n(strength_pa, length_m, diameter_m, load_height_m);
    row("W2", hold_n * load_height_m, 102e3, 1e-3, "S6, anonymous Broms free-head worksheet");
    let (shear_m, left_m, above_nm, below_nm) = free_head(hold_n, strength_pa, length_m, diameter_m, load_height_m);
    row("W2", shear_m, 0.0403, 1e-3, "S6, anonymous Broms free-head worksheet, recomputed");
    row("W2", left_m, 1.18, 1e-3, "S6, anonymous Broms free-head worksheet");
    row("W2", above_nm, 117.57e3, 1e-3, "S6, anonymous Broms free-head worksheet");
    row("W2", below_nm, above_nm, 1e-9, "equilibrium, D");
}

#[test]
fn stakes_hold_as_the_printed_tables_say() {
    // docs/sources.md, husbandry 2.5, ultimate newtons, D: spike, rod and guy peg; loads at 0.5 m, at the ground, 50 mm up.
    let stakes = [
        ("spike", 0.2, 0.01, 0.5),
        ("rod", 0.45, 0.0127, 0.5),
        ("peg", 0.3, 0.012, 0.0),
        ("peg, loop", 0.3, 0.012, 0.05),
    ];
    let clay = [
        (12.5, [(15.8, 0.1), (88.0, 1.0), (144.0, 1.0), (116.0, 1.0)]),
        (25.0, [(31.5, 0.1), (177.0, 1.0), (289.0, 1.0), (233.0, 1.0)]),
        (50.0, [(63.0, 0.1), (354.0, 1.0), (578.0, 1.0), (466.0, 1.0)]),
        (75.0, [(94.5, 0.1), (531.0, 1.0), (867.0, 1.0), (698.0, 1.0)]),
        (100.0, [(126.0, 1.0), (708.0, 1.0), (1156.0, 1.0), (931.0, 1.0)]),
    ];
    for (strength_kpa, cells) in clay {
        for ((name, length_m, diameter_m, load_height_m), (want, unit)) in stakes.into_iter().zip(cells) {
            let soil = Soil::Clay { undrained_strength_pa: strength_kpa * 1e3 };
            let spike = Spike { length_m, diameter_m };
            let dry_n = soil.hold_n(spike, load_height_m, false);
            cell(&format!("{name} in clay of {strength_kpa} kPa"), dry_n, want, unit);
            row("wet", soil.hold_n(spike, load_height_m, true), dry_n / 2.0, 1e-12, "S9, InTents, June 2009");
        }
    }
    let sand = [
        (28.0, [(2.69, 0.01), (28.7, 0.1), (25.4, 0.1), (21.8, 0.1)]),
        (30.0, [(2.91, 0.01), (31.1, 0.1), (27.5, 0.1), (23.6, 0.1)]),
        (33.0, [(3.30, 0.01), (35.1, 0.1), (31.1, 0.1), (26.7, 0.1)]),
        (36.0, [(3.74, 0.01), (39.9, 0.1), (35.4, 0.1), (30.3, 0.1)]),
        (40.0, [(4.47, 0.01), (47.6, 0.1), (42.2, 0.1), (36.2, 0.1)]),
    ];
    for (angle_deg, cells) in sand {
        for ((name, length_m, diameter_m, load_height_m), (want, unit)) in stakes.into_iter().zip(cells) {
            let soil = Soil::Sand { friction_angle_rad: f64::to_radians(angle_deg), unit_weight_n_per_m3: 17e3 };
            let held_n = soil.hold_n(Spike { length_m, diameter_m }, load_height_m, false);
            cell(&format!("{name} in sand of {angle_deg} degrees"), held_n, want, unit);
        }
    }
    for (length_m, diameter_m, want) in [(0.45, 0.016, 84.0), (0.6, 0.016, 153.0), (0.6, 0.025, 240.0)] {
        let held_n = broms_sand_n(33_f64.to_radians(), 17e3, length_m, diameter_m, 0.05);
        cell(&format!("peg of {length_m} m in sand"), held_n, want, 1.0);
    }
}

#[test]
fn stakes_hold_as_those_who_drive_them_say() {
    // S9, InTents, June 2009: a stake of 1 by 36 inches in an average lawn holds about 1,000 lb; 50 and 75 kPa bracket it.
    let lawn_n = 1_000.0 * POUND_FORCE_N;
    let [low_n, high_n] = [50e3, 75e3].map(|strength_pa| broms_clay_n(strength_pa, 0.86, 0.0254, 0.05));
    row("tent stake", low_n, 3.37e3, 2e-3, "docs/sources.md, husbandry 2.5, D");
    row("tent stake", high_n, 5.06e3, 2e-3, "docs/sources.md, husbandry 2.5, D");
    assert!(low_n < lawn_n && lawn_n < high_n, "S9: {low_n} to {high_n} N about {lawn_n} N");
    // S8, a naval manual: a wooden picket of 3 inches, 3 to 4 ft deep in undisturbed loam, takes about 700 lb: the
    // clay that just holds that must be one of TM 5-818-1's soft to stiff, 12 to 96 kPa. Its slant is left out.
    for depth_ft in [3.0, 4.0] {
        let pull_n = 700.0 * POUND_FORCE_N;
        let strength_pa = broms_clay_strength_pa(pull_n, depth_ft * FOOT_M, 3.0 / 12.0 * FOOT_M, 0.1).unwrap();
        assert!((12e3..96e3).contains(&strength_pa), "S8 and TM 5-818-1: {strength_pa} Pa at {depth_ft} ft");
    }
}

#[test]
fn the_worked_corner_of_a_netting() {
    // docs/sources.md, husbandry 2.5, corner example, D: 100 N round 90 degrees, pulling at half of 1.05 m.
    let pull_n = corner_pull_n(100.0, 90_f64.to_radians());
    let spike_n = broms_clay_n(50e3, 0.2, 0.01, 0.525);
    cell("spike", spike_n, 60.6, 0.1);
    cell("its safety", spike_n / pull_n, 0.43, 0.01);
    let (horizontal_n, angle_rad) = (pull_n * 0.525 / 1.0, 45_f64.to_radians());
    cell("guy from 1.0 m", horizontal_n, 74.2, 0.1);
    cell("along the guy", guy_tension_n(horizontal_n, angle_rad), 105.0, 1.0);
    row("down the post", guy_lift_n(horizontal_n, angle_rad), horizontal_n, 1e-12, "H tan 45, D");
    row("peg away", guy_reach_m(1.0, angle_rad), 1.0, 1e-12, "h / tan 45, D");
    let peg = Spike { length_m: 0.3, diameter_m: 0.012 };
    let uplift_n = uplift_clay_n(0.5, 50e3, peg);
    cell("uplift", uplift_n, 283.0, 1.0);
    cell("peg sideways", broms_clay_n(50e3, 0.3, 0.012, 0.05) / horizontal_n, 6.3, 0.1);
    cell("peg upwards", uplift_n / horizontal_n, 3.8, 0.1);
    cell("soft, sideways", broms_clay_n(12.5e3, 0.3, 0.012, 0.05) / horizontal_n, 1.6, 0.1);
    cell("soft, upwards", uplift_clay_n(0.5, 12.5e3, peg) / horizontal_n, 0.95, 0.01);
}

#[test]
fn pulls_of_regular_layouts() {
    // docs/sources.md, husbandry 2.1: 2 sin(turn / 2), D.
    let table = [(30.0, 0.518), (45.0, 0.765), (60.0, 1.0), (72.0, 1.176), (90.0, 1.414), (120.0, 1.732)];
    for (turn_deg, want) in table {
        cell(&format!("{turn_deg} degrees"), corner_pull_n(1.0, f64::to_radians(turn_deg)), want, 0.001);
    }
    cell("a post of 26", corner_pull_n(1.0, std::f64::consts::TAU / 26.0), 0.241, 0.001);
    row("N43", regular_area_m2(100.0, 28), 792.43, 1e-4, "P^2 / 4 n tan(pi / n), D");
    row("N43", regular(28, 100.0).area_m2(), 792.43, 1e-4, "the same by the shoelace");
    let turns: Vec<f64> = regular(28, 100.0).vertices().iter().map(geometry::Vertex::turn_rad).collect();
    assert_eq!(turns.len(), 28);
    for turn_rad in turns {
        row("N43", turn_rad.to_degrees(), 12.857, 1e-4, "360 / 28, D");
        row("N43", corner_pull_n(1.0, turn_rad), 0.2239, 2.3e-4, "2 sin(pi / 28), printed to four digits, D");
    }
}

#[test]
fn wind_as_the_table_has_it() {
    // docs/sources.md, husbandry 2.3: EN 1991-1-4 (from memory), 1.05 m of clean netting, a post every 3.5 m, D.
    let clean = solidity(12.0 * 0.0025 / 1.05, 0.003 / 0.075);
    let table = [
        (10.0, (5.31, 0.01), (18.6, 0.1), (9.8, 0.1)),
        (15.0, (11.9, 0.1), (41.8, 0.1), (22.0, 0.1)),
        (20.0, (21.2, 0.1), (74.3, 0.1), (39.0, 0.1)),
        (25.0, (33.2, 0.1), (116.0, 1.0), (61.0, 0.1)),
    ];
    for (speed_m_per_s, metre, post, moment) in table {
        let metre_n = wind_n_per_m(speed_m_per_s, clean, 1.05);
        cell("a metre", metre_n, metre.0, metre.1);
        cell("a post", metre_n * 3.5, post.0, post.1);
        cell("its foot", metre_n * 3.5 * 0.525, moment.0, moment.1);
    }
    cell("grass and leaves", wind_n_per_m(15.0, 0.2, 1.05) * 3.5, 124.0, 1.0);
    cell("iced", wind_n_per_m(15.0, 0.5, 1.05) * 3.5, 310.0, 1.0);
    // "A single spike in firm clay (63 N at 0.5 m) is at its limit near 18 m/s with a clean net."
    row("its limit", wind_n_per_m(18.0, clean, 1.05) * 3.5, broms_clay_n(50e3, 0.2, 0.01, 0.5), 0.05, "D");
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
    for (slope_percent, factor, covers_m) in checks::SLOPE_TABLE {
        cell("slope", slope_factor(slope_percent / 100.0), factor, 1e-5);
        cell("roll", 50.0 / slope_factor(slope_percent / 100.0), covers_m, 0.01);
    }
    cell("half a roll", 25.0 / slope_factor(0.2), 24.51, 0.01);
    for (radius_m, spacing_m, gap_mm) in [(20.0, 3.5, 77.0), (20.0, 2.0, 25.0), (50.0, 3.5, 31.0), (50.0, 2.0, 10.0)] {
        cell("dip", sagitta_m(spacing_m, radius_m) * 1e3, gap_mm, 1.0);
    }
    for (radius_m, spacing_m) in [(10.0, 2.00), (20.0, 2.83), (50.0, 4.47), (100.0, 6.32)] {
        cell("spacing for 50 mm", spacing_for_gap_m(radius_m, 0.05), spacing_m, 0.01);
    }
}

#[test]
fn n38_days_until_the_grass_touches() {
    row("N38", workup::growth::days_until(0.05, 0.025, 0.0024), 10.4, 1e-2, "(h live - cut) / growth, D");
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
