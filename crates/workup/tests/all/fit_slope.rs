//! Fits on ground that is not level: sides of whole panels along the ground, measured here afresh.

use geometry::region;
use plan::{KeepOut, Plan, Point, Run};
use serde_json::{Value, json};
use workup::fit::{Fitted, fit};
use workup::{Depth, Lay, workup};

fn plan(value: &Value) -> Plan {
    plan::read(value.to_string().as_bytes()).unwrap().plan
}

/// A run of two nets of 14 panels.
fn of_two_nets(outline: &[[f64; 2]]) -> Value {
    json!({
        "format": "netfold-plan", "version": 1,
        "store": { "nets": [{ "id": "long", "count": 3, "length_m": 50.0, "panels": 14 }] },
        "runs": [{ "id": "r", "outline": outline, "nets": ["long", "long"] }]
    })
}

const PANEL_M: f64 = 50.0 / 14.0;
const SKETCH: [[f64; 2]; 4] = [[0.0, 0.0], [24.0, 0.0], [24.0, 25.5], [0.0, 25.5]];

fn sides(fitted: &Fitted) -> Vec<(Point, Point)> {
    let count = fitted.outline.len();
    (0..count).map(|side| (fitted.outline[side], fitted.outline[(side + 1) % count])).collect()
}

fn level_m((from, to): &(Point, Point)) -> f64 {
    (to.east_m - from.east_m).hypot(to.north_m - from.north_m)
}

/// The run once it has the fitted outline, its nets left free.
fn laid(plan: &Plan, fitted: &Fitted) -> Lay {
    let run = Run { outline: fitted.outline.clone(), ..plan.runs[0].clone() };
    let plan = Plan { runs: vec![run], ..plan.clone() };
    workup(&plan, Depth::Quick).runs[0].lay.clone().unwrap()
}

fn closes(plan: &Plan, fitted: &Fitted) {
    assert_eq!(fitted.slope.as_ref().unwrap().unlaid, None);
    let lay = laid(plan, fitted);
    assert!((lay.line_m - fitted.line_m).abs() < 1e-9, "{} and {}", lay.line_m, fitted.line_m);
    assert!(lay.short_m < 1e-9 && (lay.spare_m - fitted.spare_m).abs() < 1e-9, "{} {}", lay.spare_m, lay.short_m);
    assert!(lay.corner_miss_m < 1e-6, "{}", lay.corner_miss_m);
}

#[test]
fn on_a_tilted_plane_the_sides_are_those_of_the_closed_form() {
    for (rise, across) in [(0.1, 0.0), (0.3, 0.0), (0.0, 0.25), (0.2, -0.3), (0.6, 0.0)] {
        let mut value = of_two_nets(&SKETCH);
        let spots = [[-50.0, -50.0], [90.0, -50.0], [0.0, 90.0]];
        let height = |at: &[f64; 2]| json!({ "at": at, "up_m": 100.0 + rise * at[0] + across * at[1] });
        value["heights"] = spots.iter().map(height).collect();
        let plan = plan(&value);
        let fitted = fit(&plan, "r", 0).unwrap();
        // A rectangle along the slope and across it: sides of n panels are n p / sqrt(1 + rise^2) on the map.
        let (east, north) = (f64::hypot(1.0, rise), f64::hypot(1.0, across));
        for (index, side) in sides(&fitted).iter().enumerate() {
            let stretch = if index % 2 == 0 { east } else { north };
            let ground_m = f64::from(fitted.side_panels[index]) * PANEL_M;
            let slope = fitted.slope.as_ref().unwrap();
            assert!((level_m(side) - ground_m / stretch).abs() < 1e-8, "{rise} {across}: side {index}");
            assert!((fitted.side_m[index] - ground_m).abs() < 1e-9);
            assert!((slope.level_m[index] - level_m(side)).abs() < 1e-12);
        }
        // Its middle is the sketch's, and its corners are square: no rectangle of those sides lies nearer.
        let (wide_m, deep_m) = (level_m(&sides(&fitted)[0]), level_m(&sides(&fitted)[1]));
        let want = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]];
        let mut moved_m2 = 0.0;
        for ((at, want), from) in fitted.outline.iter().zip(want).zip(SKETCH) {
            let (east_m, north_m) = (12.0 + want[0] * wide_m / 2.0, 12.75 + want[1] * deep_m / 2.0);
            assert!((at.east_m - east_m).hypot(at.north_m - north_m) < 1e-8, "{rise} {across}: {at:?}");
            moved_m2 += (at.east_m - from[0]).powi(2) + (at.north_m - from[1]).powi(2);
        }
        assert!((fitted.moved_rms_m - (moved_m2 / 4.0).sqrt()).abs() < 1e-9 && fitted.bound_rms_m == 0.0);
        // Of all ways to share the panels out over two lengths and two widths none moves the corners less.
        for other in 1..14 {
            let off = [f64::from(other) * PANEL_M / east - 24.0, f64::from(14 - other) * PANEL_M / north - 25.5];
            let rms_m = (off[0] / 2.0).hypot(off[1] / 2.0);
            assert!(fitted.moved_rms_m <= rms_m + 1e-9, "{rise} {across}: {other} panels are {rms_m} m away");
        }
        closes(&plan, &fitted);
    }
}

#[test]
fn a_side_that_climbs_gets_the_panels_that_it_takes() {
    // On the map 24 m are nearest to 7 panels; at 60 % they are 8: 27.99 m of ground.
    let mut value = of_two_nets(&[[0.0, 0.0], [24.5, 0.0], [24.5, 21.4], [0.0, 21.4]]);
    value["heights"] = json!([{ "at": [0, 0], "up_m": 0.0 }, { "at": [50, 0], "up_m": 30.0 }]);
    let fitted = fit(&plan(&value), "r", 0).unwrap();
    assert_eq!(fitted.side_panels, [8, 6, 8, 6]);
    assert!(fitted.moved_rms_m < 0.1, "{}", fitted.moved_rms_m);
}

/// Height of a pyramid of four faces about (12, 12): Delaunay's triangles of its corners and its top are its faces.
fn pyramid_m(at: [f64; 2]) -> f64 {
    9.0 * (1.0 - (at[0] - 12.0).abs().max((at[1] - 12.0).abs()) / 40.0)
}

/// Length along the pyramid: straight between its two ridges, x = y and x = 24 - y.
fn on_pyramid_m((from, to): &(Point, Point)) -> f64 {
    let (east_m, north_m) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let over =
        [(from.north_m - from.east_m) / (east_m - north_m), (24.0 - from.east_m - from.north_m) / (east_m + north_m)];
    let mut shares: Vec<f64> = over.into_iter().filter(|share| (0.0..=1.0).contains(share)).collect();
    shares.extend([0.0, 1.0]);
    shares.sort_by(f64::total_cmp);
    let at = |share: f64| [from.east_m + share * east_m, from.north_m + share * north_m];
    let straight_m = |pair: &[f64]| {
        let (a, b) = (at(pair[0]), at(pair[1]));
        (b[0] - a[0]).hypot(b[1] - a[1]).hypot(pyramid_m(b) - pyramid_m(a))
    };
    shares.windows(2).map(straight_m).sum()
}

fn on_pyramid(outline: &[[f64; 2]]) -> Value {
    let mut value = of_two_nets(outline);
    let spots = [[-28.0, -28.0], [52.0, -28.0], [52.0, 52.0], [-28.0, 52.0], [12.0, 12.0]];
    value["heights"] = spots.iter().map(|at| json!({ "at": at, "up_m": pyramid_m(*at) })).collect();
    value
}

#[test]
fn over_spot_heights_every_side_is_whole_along_the_surface() {
    let sketches: [&[[f64; 2]]; 4] = [
        &SKETCH,
        &[[-6.0, 0.0], [25.0, 4.0], [14.0, 33.0]],
        &[[0.0, -9.0], [22.0, -4.0], [31.0, 10.0], [18.0, 25.0], [1.0, 14.0]],
        &[[0.0, 0.0], [19.0, -3.0], [27.0, 12.0], [20.0, 26.0], [9.0, 17.0], [-4.0, 19.0]],
    ];
    for sketch in sketches {
        let plan = plan(&on_pyramid(sketch));
        for double_back in 0..=2 {
            let fitted = fit(&plan, "r", double_back).unwrap();
            assert_eq!(fitted.side_panels.iter().sum::<u32>(), 28 - double_back);
            for (index, side) in sides(&fitted).iter().enumerate() {
                let whole_m = f64::from(fitted.side_panels[index]) * PANEL_M;
                let ground_m = on_pyramid_m(side);
                assert!(
                    (ground_m - whole_m).abs() < 1e-6,
                    "{sketch:?}: side {index} is {ground_m} m, {whole_m} m of net"
                );
            }
            let level_m: f64 = sides(&fitted).iter().map(level_m).sum();
            assert!(fitted.line_m - level_m > 0.05, "the pyramid is steep: {level_m} m on the map");
            assert!((fitted.line_m - f64::from(28 - double_back) * PANEL_M).abs() < 1e-9);
            assert!((fitted.spare_m - f64::from(double_back) * PANEL_M).abs() < 1e-9);
            closes(&plan, &fitted);
        }
    }
}

#[test]
fn unequal_panels_stay_whole_on_the_surface() {
    let mut value = on_pyramid(&[[0.0, -9.0], [22.0, -4.0], [31.0, 10.0], [18.0, 25.0], [1.0, 14.0]]);
    let lengths_m = [3.0, 3.0, 3.0, 3.0, 3.0, 3.0, 3.0, 3.0, 3.0, 1.0];
    value["store"]["nets"] = json!([
        { "id": "long", "count": 2, "length_m": 28.0, "panel_lengths_m": lengths_m },
        { "id": "wide", "count": 2, "length_m": 24.0, "panels": 6 },
    ]);
    value["runs"][0]["nets"] = json!(["long", "wide", "long", "wide"]);
    let plan = plan(&value);
    let fitted = fit(&plan, "r", 0).unwrap();
    let chain: Vec<f64> =
        fitted.nets.iter().flat_map(|id| if id == "long" { lengths_m.to_vec() } else { vec![4.0; 6] }).collect();
    // Posts of the chain along the ground from the first corner, and the corners there.
    let mut ring = chain.clone();
    if fitted.reversed {
        ring.reverse();
    }
    let mut post_m = fitted.start_m;
    let posts_m: Vec<f64> = ring
        .iter()
        .map(|panel_m| {
            let at_m = post_m.rem_euclid(104.0);
            post_m += panel_m;
            at_m
        })
        .collect();
    let mut corner_m = 0.0;
    for side in &sides(&fitted) {
        let apart_m = |post_m: &f64| (post_m - corner_m).abs().min(104.0 - (post_m - corner_m).abs());
        let nearest_m = posts_m.iter().map(apart_m).fold(f64::INFINITY, f64::min);
        assert!(nearest_m < 1e-6, "a corner {corner_m} m along the ground is {nearest_m} m off its post");
        corner_m += on_pyramid_m(side);
    }
    assert!((corner_m - 104.0).abs() < 1e-6 && (fitted.line_m - 104.0).abs() < 1e-9);
    closes(&plan, &fitted);
}

#[test]
fn a_side_that_is_stated_to_rise_is_that_much_shorter_on_the_map() {
    let mut value = of_two_nets(&SKETCH);
    value["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 2.0 }, { "at": [24, 12], "one_in": 5.0 }]);
    let plan = plan(&value);
    let fitted = fit(&plan, "r", 0).unwrap();
    let whole_m: Vec<f64> = fitted.side_panels.iter().map(|&panels| f64::from(panels) * PANEL_M).collect();
    let level: Vec<f64> = sides(&fitted).iter().map(level_m).collect();
    assert!((level[0] - (whole_m[0].powi(2) - 4.0).sqrt()).abs() < 1e-8, "rises 2 m");
    assert!((level[1] - whole_m[1] / f64::hypot(1.0, 0.2)).abs() < 1e-8, "one in five");
    assert!((level[2] - whole_m[2]).abs() < 1e-8 && (level[3] - whole_m[3]).abs() < 1e-8);
    closes(&plan, &fitted);
}

#[test]
fn on_a_slope_the_outline_keeps_to_its_ground() {
    let mut value = on_pyramid(&SKETCH);
    value["ground"] = json!({ "boundary": [[-2.0, 0.2], [60.0, 0.2], [60.0, 60.0], [-2.0, 60.0]] });
    let mut plan = plan(&value);
    let pond = [(20.0, 10.0), (23.5, 10.0), (23.5, 14.0), (20.0, 14.0)];
    plan.ground.keep_outs = vec![KeepOut {
        name: "pond".into(),
        clearance_m: Some(1.0),
        may_enclose: Some(false),
        ..KeepOut::new(pond.iter().map(|&(east_m, north_m)| Point::new(east_m, north_m)).collect())
    }];
    let fitted = fit(&plan, "r", 0).unwrap();
    let ring = |points: &[Point]| {
        geometry::Outline::closed(
            &points.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect::<Vec<_>>(),
        )
    };
    let (line, pond) = (ring(&fitted.outline), ring(&plan.ground.keep_outs[0].outline));
    assert!(region::distance_between_m(&line, &pond) >= 1.0 - 1e-6);
    assert!(!region::contains(&line, geometry::Point::new(21.0, 12.0)));
    assert!(fitted.outline.iter().all(|at| at.north_m > 0.2 - 1e-6 && at.east_m > -2.0 - 1e-6));
    for (side, &panels) in sides(&fitted).iter().zip(&fitted.side_panels) {
        assert!((on_pyramid_m(side) - f64::from(panels) * PANEL_M).abs() < 1e-6);
    }
    closes(&plan, &fitted);
}

#[test]
fn level_heights_change_nothing() {
    let level = fit(&plan(&of_two_nets(&SKETCH)), "r", 0).unwrap();
    for heights in [
        json!([{ "at": [0, 0], "up_m": 7.0 }, { "at": [30, 0], "up_m": 7.0 }, { "at": [0, 30], "up_m": 7.0 }]),
        json!([{ "at": [0, 0], "up_m": 7.0 }]),
    ] {
        let mut value = of_two_nets(&SKETCH);
        value["heights"] = heights;
        assert_eq!(fit(&plan(&value), "r", 0).unwrap(), level);
    }
    assert_eq!(level.slope, None);
}

#[test]
fn a_run_without_nets_of_its_own_is_fitted_to_those_that_its_ground_takes() {
    // 100 m on the map, 116.6 m of ground: three nets.
    let mut value = of_two_nets(&[[0.0, 0.0], [25.0, 0.0], [25.0, 25.0], [0.0, 25.0]]);
    value["runs"][0].as_object_mut().unwrap().remove("nets");
    value["heights"] = json!([{ "at": [0, 0], "up_m": 0.0 }, { "at": [50, 50], "up_m": 42.4 }]);
    let plan = plan(&value);
    assert_eq!(workup(&plan, Depth::Quick).runs[0].lay.as_ref().unwrap().nets.len(), 3);
    assert_eq!(fit(&plan, "r", 0).unwrap().nets.len(), 3);
}

#[test]
fn the_corner_to_draw_in_gives_its_netting_along_the_ground() {
    let plan = plan(&on_pyramid(&SKETCH));
    let fitted = fit(&plan, "r", 0).unwrap();
    let drawn = fitted.draw_in.unwrap();
    assert!((drawn.gives_m - 1.0).abs() < 1e-6, "one per cent of 100 m: {}", drawn.gives_m);
    let mut moved = fitted.clone();
    moved.outline[drawn.corner] = drawn.to;
    let line_m = |fitted: &Fitted| sides(fitted).iter().map(on_pyramid_m).sum::<f64>();
    assert!((line_m(&fitted) - line_m(&moved) - drawn.gives_m).abs() < 1e-6);
}

/// The next of a row of numbers from 0 to 1 that looks random (Numerical Recipes' congruence).
fn next(state: &mut u64) -> f64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    (*state >> 11) as f64 / (1_u64 << 53) as f64
}

#[test]
fn rough_ground_is_closed_on_or_said_not_to_be() {
    let (mut whole, mut said) = (0, 0);
    for seed in 0..80_u64 {
        let mut state = seed * 7919 + 17;
        let mut random = |low: f64, high: f64| low + (high - low) * next(&mut state);
        let corners = 3 + seed % 6;
        let sketch: Vec<[f64; 2]> = (0..corners)
            .map(|corner| {
                let angle = (corner as f64 + random(-0.25, 0.25)) * std::f64::consts::TAU / corners as f64;
                let out_m = random(12.0, 20.0);
                [out_m * angle.cos(), out_m * angle.sin()]
            })
            .collect();
        let mut value = of_two_nets(&sketch);
        // Up to four metres up and down within six to twelve: as rough as a field may be.
        value["heights"] = (0..24)
            .map(|_| json!({ "at": [random(-26.0, 26.0), random(-26.0, 26.0)], "up_m": random(0.0, 4.0) }))
            .collect();
        let plan = plan(&value);
        let fitted = fit(&plan, "r", u32::try_from(seed % 3).unwrap()).unwrap();
        if fitted.slope.as_ref().unwrap().unlaid.is_none() {
            closes(&plan, &fitted);
            whole += 1;
        } else {
            // What is said of it is what the workup measures.
            let lay = laid(&plan, &fitted);
            assert!((lay.line_m - fitted.line_m).abs() < 1e-9);
            said += 1;
        }
    }
    assert!(whole >= 76, "{whole} closed, {said} not");
}
