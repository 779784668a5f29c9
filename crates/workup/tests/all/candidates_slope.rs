//! The largest runs on ground that is not level: they close along it, and are said where they do not.

use plan::{Plan, Point};
use serde_json::{Value, json};
use workup::candidates::{Ask, Candidate, CandidateNote, CandidateSearch, candidates};

fn plan(value: &Value) -> Plan {
    plan::read(value.to_string().as_bytes()).unwrap().plan
}

const TILT: f64 = 0.3;

fn paddock(heights: bool) -> Value {
    let mut value = json!({
        "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [70, 4], [64, 60], [-3, 52]],
            "keep_outs": [{ "name": "pond", "outline": [[8, 8], [14, 8], [14, 13], [8, 13]], "clearance_m": 1.0 }] },
        "store": { "nets": [{ "id": "long", "count": 4, "length_m": 50.0, "panels": 14 }] },
    });
    if heights {
        // A plane that rises to the east.
        let spots = [[-100.0, -100.0], [200.0, -100.0], [0.0, 200.0]];
        value["heights"] = spots.iter().map(|at| json!({ "at": at, "up_m": TILT * at[0] })).collect();
    }
    value
}

/// Metres of a line on the plane.
fn on_plane_m(points: &[Point], closed: bool) -> f64 {
    let last = if closed { points.len() } else { points.len() - 1 };
    let side_m = |side: usize| {
        let (from, to) = (points[side], points[(side + 1) % points.len()]);
        ((to.east_m - from.east_m) * f64::hypot(1.0, TILT)).hypot(to.north_m - from.north_m)
    };
    (0..last).map(side_m).sum()
}

fn of_family<'a>(found: &'a [Candidate], like: &Candidate) -> &'a Candidate {
    found.iter().find(|one| one.family == like.family && one.wall == like.wall).unwrap()
}

#[test]
fn every_shape_closes_along_the_ground_a_little_smaller() {
    let level = candidates(&plan(&paddock(false)), &Ask::new(3)).unwrap();
    let sloped = candidates(&plan(&paddock(true)), &Ask::new(3)).unwrap();
    assert_eq!(level.len(), sloped.len());
    for found in &level {
        assert_eq!(found.slope, None);
        let laid = of_family(&sloped, found);
        let slope = laid.slope.unwrap();
        let name = found.family.id();
        assert!(slope.short_m == 0.0 && slope.share > 0.9 && slope.share < 1.0, "{name}: {slope:?}");
        let ground_m = on_plane_m(&laid.outline, true);
        // All nets, but where the paddock held the shape smaller already.
        assert!(ground_m <= 150.0 + 1e-6, "{name}: {ground_m} m of ground");
        assert!((ground_m - 150.0).abs() < 1e-6 || (slope.share - 1.0).abs() < 1e-12, "{name}: {ground_m} m of ground");
        assert!((laid.area_m2 - found.area_m2 * slope.share.powi(2)).abs() < 1e-6, "{name}: the same shape");
        assert!((laid.area_bound_m2 - found.area_bound_m2).abs() < 1e-9);
        let spare_m = laid.compared.spare_m.unwrap();
        assert!(spare_m >= 0.0 && laid.worked.lay.as_ref().unwrap().short_m < 1e-6, "{name}: {spare_m}");
        // Whole panels are whole along the ground.
        let (Some(whole), Some(_)) = (&laid.whole_panels, &found.whole_panels) else { continue };
        let count = whole.outline.len();
        for (side, &panels) in whole.side_panels.iter().enumerate() {
            let ends = [whole.outline[side], whole.outline[(side + 1) % count]];
            let ground_m = on_plane_m(&ends, false);
            assert!((ground_m - f64::from(panels) * 50.0 / 14.0).abs() < 1e-6, "{name}: side {side}");
        }
    }
    assert!(sloped.iter().filter(|one| one.whole_panels.is_some()).count() >= 3);
    assert!(sloped.windows(2).all(|pair| pair[0].area_m2 >= pair[1].area_m2), "the largest first");
    let search = CandidateSearch::new(&plan(&paddock(true)), &Ask::new(3)).unwrap();
    assert!(search.notes().contains(&CandidateNote::Slope));
}

#[test]
fn against_a_wall_the_ends_stay_on_it() {
    let mut value = paddock(true);
    value["walls"] = json!([{ "path": [[0, 0], [70, 4]], "holds_birds": true }]);
    let ask = Ask { walls: true, ..Ask::new(2) };
    let found = candidates(&plan(&value), &ask).unwrap();
    let walled: Vec<_> = found.iter().filter(|one| one.wall.is_some()).collect();
    assert!(!walled.is_empty());
    for one in walled {
        assert!(on_plane_m(&one.outline, false) <= 100.0 + 1e-6 && one.slope.unwrap().short_m == 0.0);
        for end in [one.outline[0], one.outline[one.outline.len() - 1]] {
            assert!((end.north_m - end.east_m * 4.0 / 70.0).abs() < 1e-6, "{end:?} is off the wall");
        }
    }
}

#[test]
fn a_shape_that_has_to_hold_what_it_cannot_is_said_to_be_short() {
    // The coop with its clearance takes the whole square of two nets; on the slope there is none so large.
    let mut value = paddock(true);
    value["ground"]["keep_outs"] = json!([]);
    value["coop"] = json!({ "id": "house", "at": [30, 28], "length_m": 24.9, "width_m": 24.9, "heading_deg": 0.0 });
    let ask = Ask { coop: true, ..Ask::new(2) };
    let plan = plan(&value);
    let found = candidates(&plan, &ask).unwrap();
    let square = found.iter().find(|one| one.family.id() == "square").unwrap();
    let slope = square.slope.unwrap();
    assert!((slope.short_m - (on_plane_m(&square.outline, true) - 100.0)).abs() < 1e-9 && slope.short_m > 1.0);
    assert!(square.compared.spare_m.unwrap() < -1.0);
}
