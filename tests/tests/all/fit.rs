//! Fits to whole panels against SciPy: `tests/reference/fit.json`, made by `tests/reference/fit.py`, which tries every
//! count of panels and moves the corners by SLSQP. Source: SciPy, recomputed live by `.ci/run`.
//!
//! A fit must never lie farther from the sketch than what SciPy found; where that is proved the best, no nearer either.
//! What a fit says of itself is measured here afresh: posts, sides, closure, ground.

use std::collections::BTreeMap;

use serde_json::Value;
use workup::fit::{Fitted, fit};

/// Of a distance between outline and sketch: relative, and metres.
const NEAR: f64 = 1e-6;
const WHOLE_M: f64 = 1e-6;
const CLOSURE_M: f64 = 1e-9;

type At = [f64; 2];

fn ring(list: &Value) -> Vec<At> {
    let at = |value: &Value| [value[0].as_f64().unwrap(), value[1].as_f64().unwrap()];
    list.as_array().unwrap().iter().map(at).collect()
}

fn table() -> Value {
    serde_json::from_str(&std::fs::read_to_string("reference/fit.json").unwrap()).unwrap()
}

fn opened(row: &Value) -> plan::Plan {
    plan::read(row["plan"].to_string().as_bytes()).unwrap().plan
}

fn double_back(row: &Value) -> u32 {
    u32::try_from(row["double_back"].as_u64().unwrap()).unwrap()
}

// --- plane geometry that shares nothing with the crates ---------------------------------------------------------------

fn length(a: At, b: At) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn sides(ring: &[At]) -> impl Iterator<Item = (At, At)> + '_ {
    (0..ring.len()).map(|index| (ring[index], ring[(index + 1) % ring.len()]))
}

fn to_side(p: At, (a, b): (At, At)) -> f64 {
    let (e, d) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
    let share = ((d[0] * e[0] + d[1] * e[1]) / (e[0] * e[0] + e[1] * e[1]).max(1e-300)).clamp(0.0, 1.0);
    length(p, [a[0] + share * e[0], a[1] + share * e[1]])
}

fn left_of(p: At, (a, b): (At, At)) -> f64 {
    (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
}

fn apart(one: (At, At), other: (At, At)) -> f64 {
    let crosses =
        left_of(one.0, other) * left_of(one.1, other) < 0.0 && left_of(other.0, one) * left_of(other.1, one) < 0.0;
    if crosses {
        return 0.0;
    }
    [to_side(one.0, other), to_side(one.1, other), to_side(other.0, one), to_side(other.1, one)]
        .into_iter()
        .fold(f64::INFINITY, f64::min)
}

fn rings_apart(one: &[At], other: &[At]) -> f64 {
    let every = sides(one).flat_map(|side| sides(other).map(move |against| apart(side, against)));
    every.fold(f64::INFINITY, f64::min)
}

fn to_ring(p: At, ring: &[At]) -> f64 {
    sides(ring).map(|side| to_side(p, side)).fold(f64::INFINITY, f64::min)
}

/// Even-odd rule.
fn contains(ring: &[At], p: At) -> bool {
    let crossed = sides(ring)
        .filter(|(a, b)| (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
    crossed.count() % 2 == 1
}

fn is_simple(ring: &[At]) -> bool {
    let count = ring.len();
    let all: Vec<_> = sides(ring).collect();
    (0..count).all(|i| {
        let neighbours = |j: usize| j == i || j == (i + 1) % count || i == (j + 1) % count;
        // Neighbours meet at their corner; they must not lie on one another.
        to_side(all[(i + 1) % count].1, all[i]) > 0.0
            && to_side(all[i].0, all[(i + 1) % count]) > 0.0
            && (0..count).filter(|&j| !neighbours(j)).all(|j| apart(all[i], all[j]) > 0.0)
    })
}

// --- what a fit must be -----------------------------------------------------------------------------------------------

fn panels_m(net: &Value) -> Vec<f64> {
    if let Some(lengths) = net["panel_lengths_m"].as_array() {
        return lengths.iter().map(|length| length.as_f64().unwrap()).collect();
    }
    let panels = net["panels"].as_u64().unwrap();
    vec![net["length_m"].as_f64().unwrap() / panels as f64; usize::try_from(panels).unwrap()]
}

/// Faults of the outline's panels: sides, posts at corners, all panels used, closure.
fn panel_faults(row: &Value, outline: &[At], fitted: &Fitted) -> Vec<String> {
    let mut faults = Vec::new();
    let kinds: BTreeMap<&str, Vec<f64>> = row["plan"]["store"]["nets"]
        .as_array()
        .unwrap()
        .iter()
        .map(|net| (net["id"].as_str().unwrap(), panels_m(net)))
        .collect();
    let mut stated: Vec<&str> =
        row["plan"]["runs"][0]["nets"].as_array().unwrap().iter().map(|kind| kind.as_str().unwrap()).collect();
    let mut used: Vec<&str> = fitted.nets.iter().map(String::as_str).collect();
    let chain: Vec<f64> = used.iter().flat_map(|kind| kinds[kind].clone()).collect();
    stated.sort_unstable();
    used.sort_unstable();
    if stated != used {
        faults.push(format!("uses {used:?} of {stated:?}"));
    }
    let (on_line, folded) = chain.split_at(chain.len() - double_back(row) as usize);
    if (fitted.spare_m - folded.iter().sum::<f64>()).abs() > WHOLE_M {
        faults.push(format!("{} m doubled back", fitted.spare_m));
    }
    let line_m: f64 = on_line.iter().sum();
    let side_m: Vec<f64> = sides(outline).map(|(a, b)| length(a, b)).collect();
    // The chain starts and ends at one place: what the sides measure less what the panels do is the gap there.
    let round_m: f64 = side_m.iter().sum();
    if (round_m - line_m).abs() > CLOSURE_M {
        faults.push(format!("closes to {:e} m", round_m - line_m));
    }
    // Panels in the outline's own direction from the chain's start.
    let forward: Vec<f64> = if fitted.reversed { on_line.iter().rev().copied().collect() } else { on_line.to_vec() };
    let mut post_m = fitted.start_m;
    let mut posts_m = Vec::new();
    for panel_m in &forward {
        posts_m.push(post_m.rem_euclid(line_m));
        post_m += panel_m;
    }
    let round = |from: f64, to: f64| (from - to).rem_euclid(line_m).min((to - from).rem_euclid(line_m));
    let nearest = |along: f64| {
        let by = |index: &usize| round(posts_m[*index], along);
        (0..posts_m.len()).min_by(|one, other| by(one).total_cmp(&by(other))).unwrap()
    };
    let mut corner_m = 0.0;
    let total: u32 = fitted.side_panels.iter().sum();
    if total as usize != on_line.len() || fitted.side_panels.len() != outline.len() {
        faults.push(format!("{:?} are not {} panels", fitted.side_panels, on_line.len()));
        return faults;
    }
    for (index, (&panels, &long_m)) in fitted.side_panels.iter().zip(&side_m).enumerate() {
        let first = nearest(corner_m);
        if round(posts_m[first], corner_m) > WHOLE_M {
            faults.push(format!("corner {index} is {:e} m off its post", round(posts_m[first], corner_m)));
        }
        let panels_m: f64 = forward.iter().cycle().skip(first).take(panels as usize).sum();
        if panels == 0 || (panels_m - long_m).abs() > WHOLE_M || (fitted.side_m[index] - long_m).abs() > WHOLE_M {
            faults.push(format!("side {index} of {panels} panels is {long_m} m, its panels {panels_m} m"));
        }
        corner_m += panels_m;
    }
    faults
}

/// Faults of the outline's place, with the tolerance of the drawing.
fn ground_faults(row: &Value, outline: &[At]) -> Vec<String> {
    let mut faults = Vec::new();
    if !is_simple(outline) {
        faults.push("crosses itself".to_string());
    }
    let ground = &row["plan"]["ground"];
    if ground.is_null() {
        return faults;
    }
    let paddock = ring(&ground["boundary"]);
    let within = |p: At| contains(&paddock, p) || to_ring(p, &paddock) <= NEAR;
    for (a, b) in sides(outline) {
        let at = |step: u32| {
            let share = f64::from(step) / 200.0;
            [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
        };
        if !(0..=200).all(|step| within(at(step))) {
            faults.push("leaves the paddock".to_string());
        }
    }
    if paddock.iter().any(|&corner| contains(outline, corner) && to_ring(corner, outline) > NEAR) {
        faults.push("swallows a corner of the paddock".to_string());
    }
    for keep_out in ground["keep_outs"].as_array().unwrap() {
        let off = ring(&keep_out["outline"]);
        let far_m = rings_apart(outline, &off);
        if far_m < keep_out["clearance_m"].as_f64().unwrap() - NEAR {
            faults.push(format!("is {far_m} m from {}", keep_out["name"]));
        }
        if contains(&off, outline[0]) || !keep_out["may_enclose"].as_bool().unwrap() && contains(outline, off[0]) {
            faults.push(format!("encloses {}", keep_out["name"]));
        }
    }
    faults
}

fn median(values: &mut [f64]) -> f64 {
    values.sort_unstable_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}

#[test]
fn no_fit_lies_farther_from_its_sketch_than_every_count_tried() {
    let table = table();
    let rows = table["fits"].as_array().unwrap();
    assert!(rows.len() >= 200, "only {} fits", rows.len());
    let (mut off, mut gaps, mut nearer, mut tried, mut proved) = (Vec::new(), Vec::new(), 0, 0, 0);
    for row in rows {
        let (name, expected) = (row["name"].as_str().unwrap(), &row["expected"]);
        let want_m = expected["moved_rms_m"].as_f64().unwrap();
        tried += 1;
        let fitted = match fit(&opened(row), "run", double_back(row)) {
            Ok(fitted) => fitted,
            Err(refusal) => {
                off.push(format!("{name}: refused ({}), an outline lies {want_m} m away", refusal.reason.id()));
                continue;
            }
        };
        let outline: Vec<At> = fitted.outline.iter().map(|at| [at.east_m, at.north_m]).collect();
        let sketch = ring(&row["plan"]["runs"][0]["outline"]);
        if outline.len() != sketch.len() {
            off.push(format!("{name}: {} corners of {}", outline.len(), sketch.len()));
            continue;
        }
        let moved2: f64 = outline.iter().zip(&sketch).map(|(&to, &from)| length(to, from).powi(2)).sum();
        let moved_m = (moved2 / sketch.len() as f64).sqrt();
        let slack_m = NEAR * want_m + NEAR;
        if (moved_m - fitted.moved_rms_m).abs() > CLOSURE_M {
            off.push(format!("{name}: says {} m, moved {moved_m} m", fitted.moved_rms_m));
        }
        if moved_m > want_m + slack_m {
            off.push(format!(
                "{name}: {moved_m} m by {:?}, SciPy has {want_m} m by {}",
                fitted.side_panels, expected["side_panels"]
            ));
        }
        if moved_m < want_m - slack_m {
            nearer += 1;
            if expected["proved"].as_bool().unwrap() {
                off.push(format!(
                    "{name}: {moved_m} m by {:?} is nearer than the best, {want_m} m",
                    fitted.side_panels
                ));
            }
        }
        if fitted.bound_rms_m > moved_m.min(want_m) + slack_m {
            off.push(format!("{name}: bound {} m above {moved_m} m or {want_m} m", fitted.bound_rms_m));
        }
        proved += usize::from(fitted.bound_rms_m >= moved_m - slack_m);
        gaps.push(1.0 - fitted.bound_rms_m / moved_m.max(1e-12));
        off.extend(panel_faults(row, &outline, &fitted).into_iter().map(|fault| format!("{name}: {fault}")));
        off.extend(ground_faults(row, &outline).into_iter().map(|fault| format!("{name}: {fault}")));
    }
    println!(
        "{tried} fits, {nearer} nearer than SciPy's, {proved} proved by their bound, median gap {:.2e}, worst {:.2e}",
        median(&mut gaps),
        gaps.iter().copied().fold(0.0, f64::max),
    );
    assert!(off.is_empty(), "{} off: {off:#?}", off.len());
}

#[test]
fn where_no_outline_exists_the_fit_says_so() {
    for row in table()["impossible"].as_array().unwrap() {
        let refusal = fit(&opened(row), "run", double_back(row)).expect_err(row["name"].as_str().unwrap());
        assert!(refusal.is_impossible(), "{}: {}", row["name"], refusal.reason);
        assert_eq!(refusal.nearest.is_some(), refusal.given_up.is_some(), "{}", row["name"]);
    }
}
