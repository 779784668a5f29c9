//! Ground under a line against SciPy, and what a plan says of slopes.
//!
//! `tests/reference/slope.json`, made by `tests/reference/slope.py`: 70 random lines over random spot heights (Delaunay by
//! Qhull, linear between) and random grids (four triangles a square), with their lengths along the ground and the gaps under
//! chords over it. Facts: docs/sources.md, husbandry 7 and 11 (N33, N34).

use care::{Finding, Severity};
use geometry::slope::{Grid, Profile, SideHeights, Spots, Surface};
use geometry::{Outline, Point};
use plan::Plan;
use serde_json::{Value, json};
use workup::{Depth, Evidence, RunWorkup, workup};

fn table() -> Vec<Value> {
    serde_json::from_str(&std::fs::read_to_string("reference/slope.json").unwrap()).unwrap()
}

fn plan(value: &Value) -> Plan {
    plan::read(value.to_string().as_bytes()).unwrap().plan
}

fn point(at: plan::Point) -> Point {
    Point::new(at.east_m, at.north_m)
}

fn surface(plan: &Plan) -> Box<dyn Surface> {
    if let Some(grid) = &plan.ground.height_grid {
        let (columns, up_m) = (grid.columns as usize, grid.up_m.clone());
        return Box::new(Grid::new(point(grid.south_west), grid.cell_m, columns, up_m).unwrap());
    }
    let spots: Vec<_> = plan.heights.iter().map(|height| (point(height.at), height.up_m)).collect();
    Box::new(Spots::new(&spots).unwrap())
}

#[test]
fn lengths_and_gaps_are_those_of_scipy() {
    let rows = table();
    assert!(rows.len() >= 70, "{} rows", rows.len());
    let (mut lengths, mut gaps, mut beyond) = (0, 0, 0);
    for row in &rows {
        let name = row["name"].as_str().unwrap();
        let (plan, want) = (plan(&row["plan"]), &row["expected"]);
        let number = |value: &Value| value.as_f64().unwrap();
        let near = |got: f64, want: f64, what: &str| {
            assert!((got / want - 1.0).abs() < 1e-6, "{name}: {what} {got}, SciPy {want}");
        };
        let worked = &workup(&plan, Depth::Quick).runs[0];
        let slope = worked.slope.as_ref().unwrap();
        near(slope.surface_m, number(&want["surface_m"]), "along the ground");
        near(slope.level_m, number(&want["level_m"]), "in plan");
        near(worked.line_m.unwrap(), number(&want["level_m"]), "line");
        for (side, want) in slope.sides.iter().zip(want["sides_m"].as_array().unwrap()) {
            near(side.surface_m, number(want), "side");
            lengths += 1;
        }
        beyond += usize::from(slope.beyond_m > 0.0);
        let outline: Vec<_> = plan.runs[0].outline.iter().map(|&at| point(at)).collect();
        let surface = surface(&plan);
        let profile = Profile::new(&Outline::closed(&outline), |_| SideHeights::Over(&*surface)).unwrap();
        for (chord, want) in row["chords"].as_array().unwrap().iter().zip(want["gaps_m"].as_array().unwrap()) {
            let ground = profile.under(number(&chord[0]), number(&chord[1]));
            for (got_m, want_m) in [(ground.gap_m, number(&want[0])), (ground.over_m, number(&want[1]))] {
                assert!((got_m - want_m).abs() < 1e-6, "{name}: {got_m} m off the chord, SciPy {want_m}");
                gaps += usize::from(want_m > 1e-6);
            }
        }
    }
    println!("{} lines, {lengths} sides, {gaps} gaps, {beyond} lines that leave their spots", rows.len());
    assert!(lengths > 250 && gaps > 150 && beyond > 10, "{lengths} {gaps} {beyond}");
}

#[test]
fn a_branch_is_as_long_along_the_ground_as_scipy_says() {
    let (mut lines, mut longer) = (0, 0);
    for row in &table() {
        let (name, mut plan) = (row["name"].as_str().unwrap(), plan(&row["plan"]));
        // The run's own line but for its closing side, hung on its first corner.
        plan.store.nets = vec![plan::NetKind::new("long", 50.0, 14)];
        let run = &mut plan.runs[0];
        let nets = vec!["long".to_owned()];
        run.branches =
            vec![plan::Branch { outline: run.outline.clone(), nets: nets.clone(), ..plan::Branch::default() }];
        run.nets = Some(nets);
        let worked = &workup(&plan, Depth::Quick).runs[0];
        let Some(branch) = worked.lay.as_ref().and_then(|lay| lay.branches.first()) else { continue };
        let sides: Vec<f64> = row["expected"]["sides_m"].as_array().unwrap().iter().filter_map(Value::as_f64).collect();
        let want_m: f64 = sides[..sides.len() - 1].iter().sum();
        assert!((branch.line_m / want_m - 1.0).abs() < 1e-6, "{name}: {} m, SciPy {want_m}", branch.line_m);
        let level_m: f64 =
            Outline::open(&plan.runs[0].outline.iter().map(|&at| point(at)).collect::<Vec<_>>()).length_m();
        lines += 1;
        longer += usize::from(branch.line_m > 1.001 * level_m);
        // Its nets and posts follow: metres of netting along it.
        assert!((branch.short_m - (want_m - 50.0).max(0.0)).abs() < 1e-5 * want_m, "{name}");
        let panel_m = branch.posts[1].along_m - branch.posts[0].along_m;
        assert!((panel_m - 50.0 / 14.0).abs() < 1e-9 || want_m < panel_m, "{name}: {panel_m}");
    }
    println!("{lines} branches, {longer} of them longer than on the map by 0.1 % and more");
    assert!(lines > 60 && longer > 40, "{lines} {longer}");
}

/// A square of 25 m and two nets that close on it.
fn square() -> Value {
    json!({
        "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[-20, -20], [60, -20], [60, 60], [-20, 60]], "soil": { "undrained_strength_kpa": 500 } },
        "store": { "nets": [{ "id": "long", "count": 3, "length_m": 50.0, "panels": 14, "live_line_heights_m": [0.05, 0.2] }] },
        "runs": [{ "id": "run-1", "outline": [[0, 0], [25, 0], [25, 25], [0, 25]], "nets": ["long", "long"] }]
    })
}

fn with(change: impl FnOnce(&mut Value)) -> (Plan, RunWorkup, Vec<Finding>) {
    let mut value = square();
    change(&mut value);
    let plan = plan(&value);
    let worked = workup(&plan, Depth::Quick);
    let found = care::findings(&plan, &worked, words::Words::default());
    (plan, worked.runs[0].clone(), found.all().cloned().collect())
}

fn grid(
    south_west: [f64; 2],
    cell_m: f64,
    columns: usize,
    rows: usize,
    up_m: impl Fn(f64, f64) -> Option<f64>,
) -> Value {
    let at = |index: usize, first: f64| first + cell_m * index as f64;
    let heights: Vec<Option<f64>> = (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (column, row)))
        .map(|(column, row)| up_m(at(column, south_west[0]), at(row, south_west[1])))
        .collect();
    json!({ "south_west": south_west, "cell_m": cell_m, "columns": columns, "up_m": heights })
}

#[test]
fn the_factors_are_those_of_the_facts() {
    for (percent, factor, covers_m) in checks::SLOPE_TABLE {
        let (_, worked, _) = with(|plan| {
            plan["runs"][0]["outline"] = json!([[0, 0], [40, 0]]);
            plan["runs"][0]["closed"] = json!(false);
            plan["runs"][0]["nets"] = json!(["long"]);
            plan["runs"][0]["side_slopes"] = json!([{ "at": [20, 0], "one_in": 100.0 / percent }]);
        });
        let (slope, lay) = (worked.slope.unwrap(), worked.lay.unwrap());
        assert!((slope.surface_m / 40.0 - factor).abs() < 5e-6, "{percent} %: {}", slope.surface_m / 40.0);
        assert!((50.0 / (slope.surface_m / 40.0) - covers_m).abs() < 5e-3, "{percent} %");
        assert!((lay.spare_m - (50.0 - slope.surface_m)).abs() < 1e-9);
        // The fourteen panels are as long on the slope as on the level.
        let panel_m = 50.0 / 14.0;
        for pair in lay.posts.windows(2) {
            assert!((pair[1].along_m - pair[0].along_m - panel_m).abs() < 1e-9);
            let plan_m = pair[1].at.east_m - pair[0].at.east_m;
            assert!((plan_m - panel_m / (slope.surface_m / 40.0)).abs() < 1e-9, "{percent} %: {plan_m}");
        }
    }
}

#[test]
fn without_heights_and_on_level_heights_nothing_changes() {
    let (_, level, found) = with(|_| {});
    assert_eq!(level.slope, None);
    for change in [
        json!([{ "at": [0, 0], "up_m": 7.0 }, { "at": [30, 0], "up_m": 7.0 }, { "at": [0, 30], "up_m": 7.0 }]),
        json!([{ "at": [0, 0], "up_m": 7.0 }]),
    ] {
        let (_, worked, same) = with(|plan| plan["heights"] = change);
        let (one, other) = (level.lay.as_ref().unwrap(), worked.lay.as_ref().unwrap());
        assert!((one.spare_m - other.spare_m).abs() < 1e-9 && (one.line_m - other.line_m).abs() < 1e-9);
        for (a, b) in one.posts.iter().zip(&other.posts) {
            assert!((a.at.east_m - b.at.east_m).hypot(a.at.north_m - b.at.north_m) < 1e-9);
        }
        assert_eq!(worked.strip.as_ref().map(|strip| strip.area_m2), level.strip.as_ref().map(|strip| strip.area_m2));
        let ids = |found: &[Finding]| {
            found.iter().map(|one| one.id).filter(|id| !id.starts_with("heights-")).collect::<Vec<_>>()
        };
        assert_eq!(ids(&same), ids(&found));
    }
}

#[test]
fn a_side_by_hand_counts_before_spots_and_a_grid_before_spots() {
    let slope = |change: &dyn Fn(&mut Value)| with(change).1.slope.unwrap();
    let spots = json!([{ "at": [0, 0], "up_m": 0.0 }, { "at": [25, 0], "up_m": 2.0 }]);
    let by_spots = slope(&|plan| plan["heights"] = spots.clone());
    assert!(by_spots.sides.iter().all(|side| side.evidence == Evidence::Spots));
    assert!((by_spots.sides[0].rises_m - 2.0).abs() < 1e-12 && by_spots.sides[1].rises_m.abs() < 1e-12);
    let both = slope(&|plan| {
        plan["heights"] = spots.clone();
        plan["runs"][0]["side_slopes"] =
            json!([{ "at": [25, 12], "rises_m": -1.0 }, { "at": [25, 13], "rises_m": -3.0 }]);
    });
    let known: Vec<_> = both.sides.iter().map(|side| side.evidence).collect();
    assert_eq!(known, [Evidence::Spots, Evidence::ByHand, Evidence::Spots, Evidence::Spots]);
    assert!((both.sides[1].rises_m + 3.0).abs() < 1e-12, "of two on one side the later counts");
    let by_grid = slope(&|plan| {
        plan["heights"] = spots.clone();
        plan["ground"]["height_grid"] = grid([-2.0, -2.0], 1.0, 40, 40, |east_m, _| Some(0.1 * east_m));
    });
    assert!(by_grid.sides.iter().all(|side| side.evidence == Evidence::Grid));
    assert!((by_grid.sides[0].rises_m - 2.5).abs() < 1e-9);
    // A grid with a hole under the line gives way to spots.
    let holed = slope(&|plan| {
        plan["heights"] = spots.clone();
        plan["ground"]["height_grid"] = grid([-2.0, -2.0], 1.0, 40, 40, |east_m, north_m| {
            (east_m != 10.0 || north_m != 0.0).then_some(0.1 * east_m)
        });
    });
    assert!(holed.sides.iter().all(|side| side.evidence == Evidence::Spots) && holed.unknown_m == 0.0);
}

fn has<'a>(found: &'a [Finding], id: &str) -> &'a Finding {
    let ids: Vec<_> = found.iter().map(|one| one.id).collect();
    found.iter().find(|one| one.id == id).unwrap_or_else(|| panic!("no {id} among {ids:?}"))
}

#[test]
fn dips_and_ridges_are_found_with_their_places_and_posts() {
    // A ditch across the southern side at 10 m east, a bank across the northern one at 12 m.
    let (plan, worked, found) = with(|plan| {
        plan["ground"]["height_grid"] = grid([-2.0, -2.0], 0.5, 60, 60, |east_m, north_m| {
            let ditch = if north_m < 5.0 { 0.3 * (1.0 - (east_m - 10.0).abs()).max(0.0) } else { 0.0 };
            let bank = if north_m > 20.0 { 0.25 * (1.0 - (east_m - 12.0).abs()).max(0.0) } else { 0.0 };
            Some(bank - ditch)
        });
    });
    let slope = worked.slope.unwrap();
    let dip = has(&found, "dip-under-net");
    assert_eq!(dip.severity, Severity::Warning);
    assert!(dip.at.iter().any(|at| (at.east_m - 10.0).abs() < 1e-6 && at.north_m.abs() < 1e-6), "{:?}", dip.at);
    let ridge = has(&found, "ridge-under-net");
    assert!(ridge.at.iter().any(|at| (at.east_m - 12.0).abs() < 1e-6 && (at.north_m - 25.0).abs() < 1e-6));
    assert_eq!(slope.allowed_gap_m, 0.075);
    let deepest = slope.dips().map(|(_, dip)| dip.by_m).fold(0.0, f64::max);
    assert!((0.2..=0.3 + 1e-9).contains(&deepest), "{deepest}");
    for panel in &slope.uneven {
        assert!(!panel.posts.is_empty(), "{panel:?}");
        assert!(panel.posts.is_sorted_by(|a, b| a.from_post_m < b.from_post_m), "{panel:?}");
        let from = worked.lay.as_ref().unwrap().posts[panel.post].at;
        for post in &panel.posts {
            assert!(post.from_post_m > 0.0 && post.from_post_m < 50.0 / 14.0, "{post:?}");
            assert!((post.at.east_m - from.east_m).hypot(post.at.north_m - from.north_m) < 4.0);
        }
    }
    // Young birds go under less; what is stated counts before either.
    for (change, allowed_m) in [
        (json!({ "id": "brood", "at": [9, 9], "kind": "chick" }), 0.05),
        (json!({ "id": "house", "at": [9, 9], "kind": "layer" }), 0.075),
    ] {
        let (_, worked, _) = with(|plan| {
            plan["coop"] = change;
            plan["heights"] = json!([{ "at": [0, 0], "up_m": 0 }, { "at": [25, 0], "up_m": 1 }]);
        });
        assert_eq!(worked.slope.unwrap().allowed_gap_m, allowed_m);
    }
    assert_eq!(plan.gap_under_net_m(&plan::Run { gap_under_net_m: Some(0.2), ..plan::Run::default() }), 0.2);
}

#[test]
fn bad_heights_get_one_sentence_each() {
    let one = |id: &str, wanted: &str, change: &dyn Fn(&mut Value)| {
        let (_, _, found) = with(change);
        let finding = has(&found, id);
        let said = &finding.message;
        assert!(said.contains(wanted) && said.ends_with('.') && !said.contains('{'), "{id}: {said}");
        assert!(!finding.source.is_empty());
        assert_eq!(found.iter().filter(|one| one.id == id).count(), 1, "{id}");
    };
    one("slope-steep", "80 %", &|plan| {
        plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 20.0 }]);
    });
    one("slope-steep", "100 %", &|plan| {
        plan["heights"] = json!([{ "at": [0, 9], "up_m": 0 }, { "at": [25, 9], "up_m": 25 }]);
    });
    one("heights-missing", "4.0 m", &|plan| {
        plan["ground"]["height_grid"] =
            grid([-2.0, -2.0], 2.0, 20, 20, |east_m, north_m| (east_m != 12.0 || north_m != 0.0).then_some(1.0));
    });
    one("heights-elsewhere", "elsewhere", &|plan| {
        plan["ground"]["height_grid"] = grid([500.0, 500.0], 1.0, 20, 20, |_, _| Some(1.0));
    });
    // Beside spots a grid counts for nothing where it knows a part of the line; yet it lies there.
    let (_, _, found) = with(|plan| {
        plan["heights"] = json!([{ "at": [0, 0], "up_m": 0 }, { "at": [25, 0], "up_m": 1 }]);
        plan["ground"]["height_grid"] = grid([10.0, -2.0], 1.0, 5, 5, |_, _| Some(1.0));
    });
    assert!(!found.iter().any(|finding| finding.id == "heights-elsewhere"), "{found:?}");
    one("heights-beyond", "beyond", &|plan| {
        plan["heights"] =
            json!([{ "at": [5, 5], "up_m": 0 }, { "at": [9, 5], "up_m": 1 }, { "at": [5, 9], "up_m": 1 }]);
    });
    one("heights-coarse", "30.0 m", &|plan| {
        plan["ground"]["height_grid"] = grid([-30.0, -30.0], 30.0, 5, 5, |_, _| Some(1.0));
    });
    one("height-grid", "rows of 7", &|plan| {
        plan["ground"]["height_grid"] = json!({ "south_west": [0, 0], "cell_m": 1, "columns": 7, "up_m": [1, 2, 3] });
    });
    one("sides-do-not-close", "2.00 m", &|plan| {
        let side = |at: [f64; 2], rises_m: f64| json!({ "at": at, "rises_m": rises_m });
        plan["runs"][0]["side_slopes"] =
            json!([side([12.0, 0.0], 3.0), side([25.0, 12.0], 0.0), side([12.0, 25.0], -1.0), side([0.0, 12.0], 0.0)]);
    });
    // One side that rises and nothing that falls: the others are named.
    one("sides-do-not-close", "2.00 m above its start: say how much it falls along the 3 other sides", &|plan| {
        plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 2.0 }]);
    });
    one("sides-do-not-close", "0.50 m below its start: say how much it rises along side 4 to 1", &|plan| {
        plan["runs"][0]["side_slopes"] = json!([
            { "at": [12, 0], "rises_m": 2.0 }, { "at": [25, 12], "rises_m": 0.0 }, { "at": [12, 25], "rises_m": -2.5 }
        ]);
    });
    let (plan, _, found) = with(|plan| {
        plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 2.0 }]);
    });
    assert_eq!(has(&found, "sides-do-not-close").at, [plan.runs[0].outline[0]]);
    for closes in [-2.0, -1.95] {
        let (_, _, found) = with(|plan| {
            plan["runs"][0]["side_slopes"] =
                json!([{ "at": [12, 0], "rises_m": 2.0 }, { "at": [12, 25], "rises_m": closes }]);
        });
        assert!(!found.iter().any(|finding| finding.id == "sides-do-not-close"), "{closes}: {found:?}");
    }
    let (_, _, found) = with(|plan| {
        plan["runs"][0]["closed"] = json!(false);
        plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "rises_m": 2.0 }]);
    });
    assert!(!found.iter().any(|finding| finding.id == "sides-do-not-close"), "an open line may end higher: {found:?}");
    one("bad-value", "runs[0].side_slopes[0].one_in is 0", &|plan| {
        plan["runs"][0]["side_slopes"] = json!([{ "at": [12, 0], "one_in": 0 }]);
    });
    one("bad-value", "runs[0].gap_under_net_m is -1", &|plan| plan["runs"][0]["gap_under_net_m"] = json!(-1));
}

#[test]
fn wild_heights_are_survived() {
    for wild in [1e-300, 1e-9, 1.0, 1e9, 1e300, -1e300, -0.0] {
        let (_, worked, found) = with(|plan| {
            plan["heights"] =
                json!([{ "at": [0, 0], "up_m": wild }, { "at": [wild, 5], "up_m": 1 }, { "at": [9, wild], "up_m": 2 }]);
            plan["runs"][0]["side_slopes"] =
                json!([{ "at": [wild, wild], "one_in": wild }, { "at": [12, 25], "rises_m": wild }]);
            plan["runs"][0]["gap_under_net_m"] = json!(wild);
        });
        assert!(worked.lay.as_ref().is_some_and(|lay| lay.line_m.is_finite()), "{wild}: {found:?}");
        let (_, worked, _) = with(|plan| {
            plan["ground"]["height_grid"] =
                json!({ "south_west": [wild, -5], "cell_m": wild, "columns": 2, "up_m": [1, wild, null, 2, 3, 4] });
        });
        assert!(worked.lay.is_some_and(|lay| lay.line_m.is_finite()), "{wild}");
        let (_, worked, _) = with(|plan| {
            plan["ground"]["height_grid"] = grid([-2.0, -2.0], 10.0, 5, 5, |east_m, _| Some(wild * east_m));
        });
        assert!(worked.lay.is_some_and(|lay| lay.line_m.is_finite()), "{wild}");
    }
}
