//! The largest run against a dense grid: `tests/reference/largest.json`, made by `tests/reference/largest.py` with NumPy and
//! GEOS, which holds what a grid over place, angle and proportion finds in 100 random paddocks with keep-outs, and rows whose
//! answer is a formula with its source. The grid's shapes fit, so the search must reach them; it may lose 0.5 %. A free
//! outline is any of so many sides, so it must reach every shape of no more.

use std::collections::BTreeMap;

use geometry::{Outline, Point, region};
use serde_json::Value;
use workup::candidates::{Ask, Candidate, Family, candidates};

const MAY_LOSE: f64 = 0.005;
const EQUAL: f64 = 1e-6;
/// The isoperimetric order of the regular shapes.
const RISING: [Family; 4] = [Family::Square, Family::Hexagon, Family::Octagon, Family::Round];

fn table() -> Value {
    serde_json::from_str(&std::fs::read_to_string("reference/largest.json").unwrap()).unwrap()
}

fn family(name: &str) -> Family {
    match name {
        "square" => Family::Square,
        "rectangle" => Family::Rectangle,
        "hexagon" => Family::Hexagon,
        "octagon" => Family::Octagon,
        "round" => Family::Round,
        other => panic!("no family {other}"),
    }
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn ring(list: &Value) -> Outline {
    let at = |value: &Value| Point::from((number(&value[0]), number(&value[1])));
    Outline::closed(&list.as_array().unwrap().iter().map(at).collect::<Vec<_>>())
}

fn found(row: &Value) -> BTreeMap<Family, Candidate> {
    let plan = plan::read(row["plan"].to_string().as_bytes()).unwrap().plan;
    let nets = u32::try_from(row["nets"].as_u64().unwrap()).unwrap();
    let all = candidates(&plan, &Ask::new(nets)).unwrap_or_else(|fault| panic!("{}: {fault}", row["name"]));
    let areas_m2: Vec<f64> = all.iter().map(|candidate| candidate.area_m2).collect();
    let sorted = areas_m2.is_sorted_by(|one, other| *one >= other * (1.0 - 1e-9));
    assert!(sorted, "{}: largest first, not {areas_m2:?}", row["name"]);
    all.into_iter().map(|candidate| (candidate.family, candidate)).collect()
}

/// Sides and angles that the family promises, the nets' length, and the ground.
fn faults(row: &Value, candidate: &Candidate) -> Vec<String> {
    let mut faults = Vec::new();
    let points: Vec<Point> = candidate.outline.iter().map(|at| Point::new(at.east_m, at.north_m)).collect();
    let outline = Outline::closed(&points);
    let net = &row["plan"]["store"]["nets"][0];
    let most_m = number(&row["nets"]) * number(&net["length_m"]);
    let line_m = outline.length_m();
    if line_m > most_m * (1.0 + EQUAL) {
        faults.push(format!("{line_m} m of line, {most_m} m of net"));
    }
    if (candidate.compared.spare_m.unwrap_or(f64::NAN) - (most_m - line_m)).abs() > 1e-6 * most_m {
        faults.push(format!("spare {:?} of {most_m} - {line_m}", candidate.compared.spare_m));
    }
    if (outline.area_m2() - candidate.area_m2).abs() > EQUAL * candidate.area_m2 {
        faults.push(format!("says {} m2, encloses {}", candidate.area_m2, outline.area_m2()));
    }
    if candidate.area_bound_m2 < candidate.area_m2 * (1.0 - 1e-9) {
        faults.push(format!("bound {} below {}", candidate.area_bound_m2, candidate.area_m2));
    }
    let corners = outline.vertices();
    let sides_m: Vec<f64> = outline.sides().map(|(a, b)| a.distance_m(b)).collect();
    let alike = |one: f64, other: f64| (one - other).abs() <= 1e-6 * line_m;
    let turn = |rad: f64| corners.iter().all(|corner| (corner.turn_rad() - rad).abs() < 1e-6);
    let regular = |count: usize| {
        let equal = sides_m.iter().all(|&side_m| alike(side_m, sides_m[0]));
        corners.len() == count && equal && turn(std::f64::consts::TAU / count as f64)
    };
    let panels = number(&row["nets"]) * number(&net["panels"]);
    let holds = match candidate.family {
        Family::Square => regular(4),
        Family::Rectangle => corners.len() == 4 && turn(std::f64::consts::FRAC_PI_2) && alike(sides_m[0], sides_m[2]),
        Family::Hexagon => regular(6),
        Family::Octagon => regular(8),
        Family::Round => regular(corners.len()) && corners.len() as f64 <= panels && alike(sides_m[0], most_m / panels),
        Family::Free => geometry::check_outline(&points, true).is_empty(),
    };
    if !holds {
        faults.push(format!("is no {:?}: sides {sides_m:?}", candidate.family));
    }
    // A hair inside, so that what touches counts as touching.
    let boundary = ring(&row["plan"]["ground"]["boundary"]);
    let middle = points.iter().fold(Point::new(0.0, 0.0), |sum, at| {
        Point::new(sum.east_m + at.east_m / points.len() as f64, sum.north_m + at.north_m / points.len() as f64)
    });
    let shrunk: Vec<Point> = points
        .iter()
        .map(|at| {
            let share = 1.0 - 1e-6;
            Point::new(
                middle.east_m + share * (at.east_m - middle.east_m),
                middle.north_m + share * (at.north_m - middle.north_m),
            )
        })
        .collect();
    if !region::inside(&Outline::closed(&shrunk), &boundary) {
        faults.push("leaves the paddock".to_string());
    }
    for keep_out in row["plan"]["ground"]["keep_outs"].as_array().into_iter().flatten() {
        let hole = ring(&keep_out["outline"]);
        let far_m = region::distance_between_m(&outline, &hole);
        if far_m < number(&keep_out["clearance_m"]) - 1e-5 || region::overlap_area_m2(&outline, &hole) > 1e-4 {
            faults.push(format!("is {far_m} m from {}", keep_out["name"]));
        }
    }
    faults
}

/// Whether the nets alone bind the regular shapes, so that those of more sides must enclose more.
fn all_fit(all: &BTreeMap<Family, Candidate>) -> bool {
    RISING.iter().all(|family| {
        all.get(family).is_some_and(|candidate| candidate.compared.spare_m.unwrap_or(1.0) < 1e-6 * candidate.line_m)
    })
}

fn order_faults(all: &BTreeMap<Family, Candidate>) -> Vec<String> {
    let area = |family: Family| all.get(&family).map_or(0.0, |candidate| candidate.area_m2);
    let mut faults = Vec::new();
    if all_fit(all) && !RISING.windows(2).all(|pair| area(pair[0]) < area(pair[1])) {
        faults.push("square < hexagon < octagon < round does not hold though all fit".to_string());
    }
    if area(Family::Rectangle) < area(Family::Square) * (1.0 - EQUAL) {
        faults.push(format!("rectangle {} below square {}", area(Family::Rectangle), area(Family::Square)));
    }
    faults
}

fn median(values: &mut [f64]) -> f64 {
    values.sort_unstable_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}

#[test]
fn no_run_is_smaller_than_a_dense_grid_finds() {
    let table = table();
    let rows = table["paddocks"].as_array().unwrap();
    assert!(rows.len() >= 100, "only {} paddocks", rows.len());
    let mut off = Vec::new();
    let mut gaps: BTreeMap<Family, Vec<f64>> = BTreeMap::new();
    let mut in_order = 0;
    let (mut tried, mut larger, mut worst, mut free_worst) = (0, 0, 0.0_f64, f64::NEG_INFINITY);
    for row in rows {
        let name = row["name"].as_str().unwrap();
        let all = found(row);
        for expected in row["expected"].as_array().unwrap() {
            let (of, want_m2) = (expected["family"].as_str().unwrap(), number(&expected["area_m2"]));
            tried += 1;
            let Some(candidate) = all.get(&family(of)) else {
                off.push(format!("{name}: no {of}, the grid has {want_m2} m2"));
                continue;
            };
            larger += usize::from(candidate.area_m2 >= want_m2 * (1.0 - EQUAL));
            let lost = 1.0 - candidate.area_m2 / want_m2;
            worst = worst.max(lost);
            if lost > EQUAL {
                println!("{name}: {of} {:.4} % smaller than the grid's", 100.0 * lost);
            }
            if candidate.outline.len() <= Ask::new(1).free_sides as usize
                && let Some(free) = all.get(&Family::Free)
            {
                free_worst = free_worst.max(1.0 - free.area_m2 / want_m2);
                if free.area_m2 < want_m2 * (1.0 - MAY_LOSE) {
                    off.push(format!("{name}: free {} m2, the grid has a {of} of {want_m2} m2", free.area_m2));
                }
            }
            if candidate.area_m2 < want_m2 * (1.0 - MAY_LOSE) {
                off.push(format!("{name}: {of} {} m2, the grid has {want_m2} m2", candidate.area_m2));
            }
            if candidate.area_bound_m2 < want_m2 * (1.0 - EQUAL) {
                off.push(format!("{name}: {of} bound {} m2, the grid has {want_m2} m2", candidate.area_bound_m2));
            }
        }
        for candidate in all.values() {
            gaps.entry(candidate.family).or_default().push(candidate.area_bound_m2 / candidate.area_m2 - 1.0);
            off.extend(
                faults(row, candidate).into_iter().map(|fault| format!("{name}: {:?} {fault}", candidate.family)),
            );
        }
        if !all.contains_key(&Family::Free) {
            off.push(format!("{name}: no free outline"));
        }
        in_order += usize::from(all_fit(&all));
        off.extend(order_faults(&all).into_iter().map(|fault| format!("{name}: {fault}")));
    }
    println!("{tried} shapes, {larger} no smaller than the grid's, the worst {:.3} % smaller", 100.0 * worst);
    println!("{in_order} paddocks in which all regular shapes fit");
    assert!(in_order >= 10, "only {in_order} paddocks show the isoperimetric order");
    println!("free outlines: at least {:.3} % larger than every shape of no more sides", -100.0 * free_worst);
    for (family, gaps) in &mut gaps {
        let median = median(gaps);
        println!(
            "{family:?}: median gap to the bound {:.2} %, worst {:.2} %",
            100.0 * median,
            100.0 * gaps[gaps.len() - 1]
        );
    }
    assert!(off.is_empty(), "{} off: {off:#?}", off.len());
}

#[test]
fn closed_forms_are_reached_and_never_passed() {
    let mut off = Vec::new();
    for row in table()["closed_forms"].as_array().unwrap() {
        let (name, source) = (row["name"].as_str().unwrap(), row["source"].as_str().unwrap());
        let (of, want_m2) = (family(row["family"].as_str().unwrap()), number(&row["area_m2"]));
        let all = found(row);
        let Some(candidate) = all.get(&of) else {
            off.push(format!("{name}: nothing, {source} has {want_m2} m2"));
            continue;
        };
        // Five digits are printed of some rows.
        let share = candidate.area_m2 / want_m2;
        println!("{name}: {share:.6} of the closed form, bound {:.6}", candidate.area_bound_m2 / want_m2);
        if !(1.0 - MAY_LOSE..=1.0 + 1e-5).contains(&share) {
            off.push(format!("{name}: {} m2, {source} has {want_m2} m2", candidate.area_m2));
        }
        if candidate.area_bound_m2 < want_m2 * (1.0 - 1e-5) {
            off.push(format!("{name}: bound {} m2, {source} has {want_m2} m2", candidate.area_bound_m2));
        }
        off.extend(faults(row, candidate).into_iter().map(|fault| format!("{name}: {fault}")));
    }
    assert!(off.is_empty(), "{} off: {off:#?}", off.len());
}

/// The free outline of three sides on a row's ground.
fn triangle(row: &Value) -> Candidate {
    let plan = plan::read(row["plan"].to_string().as_bytes()).unwrap().plan;
    let ask = Ask { free_sides: 3, ..Ask::new(u32::try_from(row["nets"].as_u64().unwrap()).unwrap()) };
    let all = candidates(&plan, &ask).unwrap_or_else(|fault| panic!("{}: {fault}", row["name"]));
    all.into_iter().find(|candidate| candidate.family == Family::Free).unwrap()
}

/// Whether a grid over place and angle finds room for the equilateral triangle of all nets.
fn equilateral_fits(row: &Value, line_m: f64) -> bool {
    let boundary = ring(&row["plan"]["ground"]["boundary"]);
    let holes: Vec<(Outline, f64)> = row["plan"]["ground"]["keep_outs"]
        .as_array()
        .into_iter()
        .flatten()
        .map(|keep_out| (ring(&keep_out["outline"]), number(&keep_out["clearance_m"])))
        .collect();
    let (mut low, mut high) = ((f64::INFINITY, f64::INFINITY), (f64::NEG_INFINITY, f64::NEG_INFINITY));
    for at in boundary.points() {
        low = (low.0.min(at.east_m), low.1.min(at.north_m));
        high = (high.0.max(at.east_m), high.1.max(at.north_m));
    }
    let out_m = line_m / 3.0 / 3.0_f64.sqrt();
    let at = |share: f64, (low, high): (f64, f64)| low + share * (high - low);
    let places = (0..6 * 16 * 16).map(|number| (number % 6, number / 6 % 16, number / 96));
    places.into_iter().any(|(turn, column, row)| {
        let middle =
            (at((f64::from(column) + 0.5) / 16.0, (low.0, high.0)), at((f64::from(row) + 0.5) / 16.0, (low.1, high.1)));
        let corner = |index: u32| {
            let angle = (f64::from(index) + f64::from(turn) / 6.0) * std::f64::consts::TAU / 3.0;
            Point::new(middle.0 + out_m * angle.cos(), middle.1 + out_m * angle.sin())
        };
        let shape = Outline::closed(&[corner(0), corner(1), corner(2)]);
        region::inside(&shape, &boundary)
            && holes.iter().all(|(hole, clearance_m)| {
                region::distance_between_m(&shape, hole) >= *clearance_m && region::overlap_area_m2(&shape, hole) <= 0.0
            })
    })
}

#[test]
fn the_free_outline_of_three_sides_is_the_triangle_of_the_isoperimetric_order() {
    // Of all triangles of one line the equilateral encloses most, sqrt(3) / 36 of its square (by Heron's formula and the
    // means of its three factors; from memory), below the square's sixteenth.
    let share = 3.0_f64.sqrt() / 36.0;
    let (mut off, mut fit, mut in_order, mut worst) = (Vec::new(), 0, 0, 0.0_f64);
    for row in table()["paddocks"].as_array().unwrap() {
        let all = found(row);
        if !all_fit(&all) {
            continue;
        }
        let name = row["name"].as_str().unwrap();
        let three = triangle(row);
        let line_m = number(&row["nets"]) * number(&row["plan"]["store"]["nets"][0]["length_m"]);
        let most_m2 = share * line_m * line_m;
        if three.outline.len() != 3 || three.area_m2 > most_m2 * (1.0 + EQUAL) || three.area_bound_m2 < three.area_m2 {
            off.push(format!("{name}: {} corners, {} m2 of {most_m2}", three.outline.len(), three.area_m2));
        }
        if three.area_m2 >= all[&Family::Square].area_m2 {
            off.push(format!("{name}: the triangle is no smaller than the square"));
        }
        in_order += 1;
        if equilateral_fits(row, line_m) {
            fit += 1;
            worst = worst.max(1.0 - three.area_m2 / most_m2);
            if three.area_m2 < most_m2 * (1.0 - MAY_LOSE) {
                off.push(format!("{name}: {} m2, the equilateral of {most_m2} m2 has room", three.area_m2));
            }
        }
    }
    println!(
        "triangle < square < hexagon < octagon < round in {in_order} paddocks; in {fit} the equilateral has room by a \
         grid, and the free outline of three sides is at most {:.4} % smaller",
        100.0 * worst
    );
    assert!(off.is_empty(), "{} off: {off:#?}", off.len());
    assert!(in_order >= 10 && fit >= 5, "{in_order} in order, room in {fit}");
}

#[test]
fn a_round_run_lies_between_the_circles_of_its_corners_and_sides() {
    // The largest circle in a triangle has the radius 2 A / P (Euclid IV.4): a round run whose corners lie on such a circle
    // fits, and one whose sides touch a larger circle cannot.
    for (boundary, panel_m) in
        [([(0.0, 0.0), (40.0, 0.0), (0.0, 30.0)], 2.0), ([(3.0, 1.0), (95.0, 18.0), (37.0, 75.0)], 3.5)]
    {
        let triangle = Outline::closed(&boundary.map(Point::from));
        let radius_m = 2.0 * triangle.area_m2() / triangle.length_m();
        let corners = boundary.map(|(east_m, north_m)| serde_json::json!([east_m, north_m]));
        let row = serde_json::json!({ "name": "round in a triangle", "nets": 3, "plan": {
            "format": "netfold-plan", "version": 1, "ground": { "boundary": corners },
            "store": { "nets": [ { "id": "a", "count": 3, "length_m": 20.0 * panel_m, "panels": 20 } ] } } });
        let all = found(&row);
        let round = &all[&Family::Round];
        let turn = |count: usize| std::f64::consts::PI / count as f64;
        let surely = (3..=60).filter(|&count| panel_m / 2.0 / turn(count).sin() <= radius_m).max().unwrap();
        let at_most = (3..=60).filter(|&count| panel_m / 2.0 / turn(count).tan() <= radius_m).max().unwrap();
        let count = round.outline.len();
        assert!((surely..=at_most).contains(&count), "{count} corners, between {surely} and {at_most}");
        assert!(faults(&row, round).is_empty(), "{:?}", faults(&row, round));
    }
}
