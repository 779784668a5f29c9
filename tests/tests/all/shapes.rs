//! Areas and strips against GEOS through Shapely: `tests/reference/shapes.json`, made by
//! `tests/reference/shapes.py` from the pieces that the model names. Source: GEOS, recomputed live by `.ci/run`.

use geometry::{Mower, Outline, Point, StripRequest, StripWidth};
use serde_json::Value;

/// Relative, of the area.
const TOLERANCE: f64 = 1e-6;

fn points(list: &Value) -> Vec<Point> {
    let number = |value: &Value| value.as_f64().unwrap();
    list.as_array().unwrap().iter().map(|at| Point::from((number(&at[0]), number(&at[1])))).collect()
}

#[test]
fn areas_and_strips_agree_with_geos() {
    let shapes: Vec<Value> = serde_json::from_str(&std::fs::read_to_string("reference/shapes.json").unwrap()).unwrap();
    assert!(shapes.len() >= 200, "only {} shapes", shapes.len());
    let mut off = Vec::new();
    let mut worst = 0.0_f64;
    for shape in &shapes {
        let stated = points(&shape["outline"]);
        let outline =
            if shape["closed"].as_bool().unwrap() { Outline::closed(&stated) } else { Outline::open(&stated) };
        let keep_outs: Vec<Outline> =
            shape["keep_outs"].as_array().unwrap().iter().map(|ring| Outline::closed(&points(ring))).collect();
        let strip = geometry::strip(&StripRequest {
            outline: &outline,
            width: StripWidth::even(shape["width_m"].as_f64().unwrap()),
            keep_outs: &keep_outs,
            mower: Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.11 },
        });
        for (what, got, want) in [
            ("area", outline.area_m2(), shape["area_m2"].as_f64().unwrap()),
            ("strip", strip.area_m2, shape["strip_area_m2"].as_f64().unwrap()),
        ] {
            let apart = (got - want).abs() / want.abs().max(1e-9);
            let apart = if want == 0.0 { got.abs() } else { apart };
            worst = worst.max(apart);
            if apart > TOLERANCE || apart.is_nan() {
                off.push(format!("{} {what}: {got} here, {want} in GEOS ({apart:.2e})", shape["name"]));
            }
        }
    }
    println!("{} shapes, worst {worst:.1e}", shapes.len());
    assert!(off.is_empty(), "{} off: {off:#?}", off.len());
}
