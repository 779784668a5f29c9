//! Cuts of corners as they are offered and taken, on level ground and on slopes.

use crate::square::{square, with, worked};
use plan::{Plan, Point, StatedBrace};
use workup::bracing::cut_run;
use workup::{Depth, Verdict, workup as work_out};

/// The run of the plan with the first corner's cut taken.
fn taken(plan: &Plan, corner: usize) -> Plan {
    let run = worked(plan);
    let cut = run.bracing.as_ref().unwrap().details[corner].cut().unwrap().cut.clone().unwrap();
    let mut plan = plan.clone();
    plan.runs[0] = cut_run(&plan, &plan.runs[0], &cut).unwrap();
    plan
}

#[test]
fn a_cut_that_is_taken_gives_what_it_said_and_every_post_of_it_stands() {
    let plan =
        with(|plan| plan.runs[0].braces = vec![StatedBrace { at: Point::new(25.0, 0.0), ..StatedBrace::default() }]);
    let before = worked(&plan);
    let cut = before.bracing.as_ref().unwrap().details[0].cut().unwrap().cut.clone().unwrap();
    let after_plan = taken(&plan, 0);
    let after = worked(&after_plan);
    let (was, is) = (before.lay.unwrap(), after.lay.unwrap());
    assert!(
        (was.line_m - is.line_m - cut.shorter_m).abs() < 1e-9 && (was.area_m2 - is.area_m2 - cut.lost_m2).abs() < 1e-9
    );
    let gentle: Vec<_> = is.corners.iter().filter(|corner| corner.turn_deg < 30.0).collect();
    assert_eq!(gentle.len(), 5);
    assert!(gentle.iter().all(|corner| corner.verdict == Verdict::None && corner.pull_n <= corner.hold_n));
    assert!(is.bends.is_empty(), "no post of the bend leans");
    assert_eq!(after_plan.runs[0].braces.len(), 1, "the other corner's brace stays");
    // Its own corner's brace goes with the corner.
    let own = taken(&with(|plan| plan.runs[0].braces = vec![StatedBrace::default()]), 1);
    assert_eq!(own.runs[0].braces.len(), 1);
}

#[test]
fn what_lies_along_the_line_keeps_its_place_when_a_corner_is_cut() {
    let zone = |from_m, to_m| plan::LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: plan::Rest::new() };
    for corner in 0..4 {
        let plan = with(|plan| {
            plan.runs[0].start_m = Some(62.5);
            plan.runs[0].leakage_zones = vec![zone(12.5, 37.5), zone(87.5, 12.5)];
        });
        let cut = taken(&plan, corner);
        let line = |plan: &Plan| {
            geometry::Outline::closed(
                &plan.runs[0].outline.iter().map(|at| geometry::Point::new(at.east_m, at.north_m)).collect::<Vec<_>>(),
            )
        };
        let (was, is) = (line(&plan), line(&cut));
        // The middles of the sides are on both lines; each keeps its place on the ground.
        let pairs = [
            (plan.runs[0].start_m, cut.runs[0].start_m),
            (Some(12.5), Some(cut.runs[0].leakage_zones[0].from_m)),
            (Some(37.5), Some(cut.runs[0].leakage_zones[0].to_m)),
            (Some(87.5), Some(cut.runs[0].leakage_zones[1].from_m)),
        ];
        for (before_m, after_m) in pairs {
            let (before, after) = (was.at(before_m.unwrap()), is.at(after_m.unwrap()));
            assert!(before.distance_m(after) < 1e-6, "corner {corner}: {before:?} and {after:?}");
        }
    }
}

/// The square on a plane that rises `tilt` to the east, with the cut of a corner that is taken there.
fn cut_on_plane(tilt: f64, corner: usize, change: impl FnOnce(&mut Plan)) -> (Plan, Plan, workup::bracing::CutMend) {
    let plan = with(|plan| {
        let at = |east_m: f64, north_m: f64| plan::SpotHeight {
            at: Point::new(east_m, north_m),
            up_m: tilt * east_m,
            rest: plan::Rest::new(),
        };
        plan.heights = vec![at(-50.0, -50.0), at(90.0, -50.0), at(0.0, 90.0)];
        plan.store.nets[0].count = Some(3);
        change(plan);
    });
    let cut = worked(&plan).bracing.unwrap().details[corner].cut().unwrap().cut.clone().unwrap();
    (plan.clone(), taken(&plan, corner), cut)
}

fn on_plane_m(tilt: f64, from: Point, to: Point) -> f64 {
    ((to.east_m - from.east_m) * f64::hypot(1.0, tilt)).hypot(to.north_m - from.north_m)
}

#[test]
fn on_a_slope_the_places_of_a_cut_are_a_panel_of_ground_apart() {
    for corner in 0..4 {
        let tilt = 0.4;
        let (before, after, cut) = cut_on_plane(tilt, corner, |_| {});
        for pair in cut.places.windows(2) {
            let ground_m = on_plane_m(tilt, pair[0], pair[1]);
            assert!((ground_m - 50.0 / 14.0).abs() < 1e-8, "corner {corner}: {ground_m} m of ground");
        }
        let (was, is) = (worked(&before).lay.unwrap(), worked(&after).lay.unwrap());
        assert!((was.line_m - is.line_m - cut.shorter_m).abs() < 1e-8, "corner {corner}: the line is along the ground");
        assert!((was.area_m2 - is.area_m2 - cut.lost_m2).abs() < 1e-8, "corner {corner}: the area is on the map");
        let own = |at: Point| is.corners.iter().find(|one| one.at.east_m == at.east_m && one.at.north_m == at.north_m);
        for &at in &cut.places {
            assert!((own(at).unwrap().turn_deg - cut.turn_deg).abs() < 1e-6);
        }
    }
}

#[test]
fn on_a_slope_what_lies_along_the_line_keeps_its_place_when_a_corner_is_cut() {
    let zone = |from_m, to_m| plan::LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: plan::Rest::new() };
    let (tilt, steep_m) = (0.4, 25.0 * f64::hypot(1.0, 0.4));
    for corner in 0..4 {
        // Middles of the sides, in metres of ground: 26.9 m to the east and back, 25 m to the north and back.
        let (east_m, north_m) = (steep_m / 2.0, 12.5);
        let middles = [east_m, steep_m + north_m, steep_m + 25.0 + east_m, 2.0 * steep_m + 25.0 + north_m];
        let (_, after, _) = cut_on_plane(tilt, corner, |plan| {
            plan.runs[0].start_m = Some(middles[2]);
            plan.runs[0].leakage_zones = vec![zone(middles[0], middles[1]), zone(middles[3], middles[0])];
        });
        let run = &after.runs[0];
        let want = [(12.5, 0.0), (25.0, 12.5), (12.5, 25.0), (0.0, 12.5)].map(Point::from);
        let zones = &run.leakage_zones;
        let carried = [
            (run.start_m.unwrap(), 2),
            (zones[0].from_m, 0),
            (zones[0].to_m, 1),
            (zones[1].from_m, 3),
            (zones[1].to_m, 0),
        ];
        for (along_m, middle) in carried {
            // Measured anew along the ground from the first corner.
            let mut left_m = along_m;
            let count = run.outline.len();
            let found = (0..count).find_map(|side| {
                let (from, to) = (run.outline[side], run.outline[(side + 1) % count]);
                let side_m = on_plane_m(tilt, from, to);
                let share = left_m / side_m;
                left_m -= side_m;
                let on = |a: f64, b: f64| a + share * (b - a);
                (share <= 1.0).then(|| Point::new(on(from.east_m, to.east_m), on(from.north_m, to.north_m)))
            });
            let (found, want) = (found.unwrap(), want[middle]);
            let off_m = (found.east_m - want.east_m).hypot(found.north_m - want.north_m);
            assert!(off_m < 1e-6, "corner {corner}: {found:?} and not {want:?}");
        }
    }
}

#[test]
fn what_a_side_is_stated_to_rise_it_rises_on_what_a_cut_leaves_of_it() {
    let plan = with(|plan| {
        plan.store.nets[0].count = Some(3);
        plan.runs[0].side_slopes =
            vec![plan::SideSlope { rises_m: Some(2.0), ..plan::SideSlope::at(Point::new(12.5, 0.0)) }];
    });
    let after = taken(&plan, 1);
    let left_m = after.runs[0].outline[1].east_m;
    assert!(left_m < 24.0 && (after.runs[0].side_slopes[0].rises_m.unwrap() - 2.0 * left_m / 25.0).abs() < 1e-9);
    // The other sides' corners leave it as it is.
    assert_eq!(taken(&plan, 3).runs[0].side_slopes, plan.runs[0].side_slopes);
}

#[test]
fn a_cut_says_how_far_its_places_fall_from_the_posts() {
    let said = |plan: &Plan| {
        let full = work_out(plan, Depth::Full).runs.remove(0);
        full.bracing.unwrap().details[0].cut().unwrap().cut.clone().unwrap().off_post_m.unwrap()
    };
    let true_m = |plan: &Plan| {
        let cut = worked(plan).bracing.unwrap().details[0].cut().unwrap().cut.clone().unwrap();
        assert_eq!(cut.off_post_m, None, "not in every frame of a drag");
        let lay = worked(&taken(plan, 0)).lay.unwrap();
        let apart_m =
            |at: &Point, post: &workup::Post| (post.at.east_m - at.east_m).hypot(post.at.north_m - at.north_m);
        let nearest_m = |at: &Point| lay.posts.iter().map(|post| apart_m(at, post)).fold(f64::INFINITY, f64::min);
        cut.places.iter().map(nearest_m).fold(0.0, f64::max)
    };
    let free = square();
    let pinned = with(|plan| plan.runs[0].start_m = Some(1.0));
    let sloped = cut_on_plane(0.4, 0, |_| {}).0;
    for plan in [&free, &pinned, &sloped] {
        assert!((said(plan) - true_m(plan)).abs() < 1e-9);
    }
    assert!(said(&pinned) > 0.1, "a chain that may not give way meets the places by chance");
}

#[test]
fn no_cut_is_offered_that_would_leave_the_coop_or_an_oak_outside_or_run_into_it() {
    let offers = |plan: &Plan| worked(plan).bracing.unwrap().details[0].cut().is_some();
    assert!(offers(&square()));
    let oak = |at: f64| {
        with(|plan| {
            plan.ground.keep_outs = vec![plan::KeepOut {
                name: "oak".into(),
                may_enclose: Some(true),
                ..plan::KeepOut::new([(at, at), (at + 0.5, at), (at + 0.5, at + 0.5)].map(Point::from).to_vec())
            }];
        })
    };
    assert!(!offers(&oak(1.0)) && offers(&oak(12.0)));
    // A dent's cut reaches out over ground that may not be the paddock's.
    let dented = |boundary: &[(f64, f64)]| {
        let mut plan = square();
        let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 20.0), (20.0, 20.0), (20.0, 40.0), (0.0, 40.0)];
        plan.store.nets[0].count = Some(4);
        plan.runs[0].outline = outline.map(Point::from).to_vec();
        plan.ground.boundary = boundary.iter().copied().map(Point::from).collect();
        let run = worked(&plan);
        let index = run.lay.as_ref().unwrap().corners.iter().position(|corner| corner.dents).unwrap();
        run.bracing.unwrap().details[index].cut().is_some()
    };
    assert!(dented(&[(0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0)]));
    assert!(!dented(&[(0.0, 0.0), (40.0, 0.0), (40.0, 20.0), (20.0, 20.0), (20.0, 40.0), (0.0, 40.0)]));
}
