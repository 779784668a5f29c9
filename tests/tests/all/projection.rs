//! The projection against PROJ's, from `reference/projection.json` (how it was made stands beside it).
//!
//! PROJ sums the same series; a road that shares nothing with it (Redfearn's) is walked in `exchange`'s own tests.

use exchange::projection::{Degrees, Ellipsoid, Local, TransverseMercator};
use plan::Point;
use serde_json::Value;

/// The reference is printed to a micrometre, its degrees to nine decimals and then taken as exact.
const PRINTED_M: f64 = 2e-6;

fn rows(part: &str) -> Vec<Value> {
    let file: Value = serde_json::from_str(include_str!("../../reference/projection.json")).unwrap();
    let rows = file[part].as_array().unwrap().clone();
    assert!(!rows.is_empty(), "a check that runs nothing is none");
    rows
}

fn number(row: &Value, key: &str) -> f64 {
    row[key].as_f64().unwrap_or_else(|| panic!("{key} is missing in {row}"))
}

fn ellipsoid(row: &Value) -> Ellipsoid {
    let equatorial_radius_m = number(row, "a_m");
    let flattening = match row["b_m"].as_f64() {
        Some(polar_radius_m) => (equatorial_radius_m - polar_radius_m) / equatorial_radius_m,
        None => 1.0 / number(row, "inverse_flattening"),
    };
    Ellipsoid { equatorial_radius_m, flattening }
}

fn degrees(row: &Value) -> Degrees {
    Degrees { latitude_deg: number(row, "latitude_deg"), longitude_deg: number(row, "longitude_deg") }
}

#[test]
fn points_about_an_origin_lie_where_proj_puts_them() {
    let rows = rows("local");
    for row in &rows {
        let local = Local::about(degrees(&row["origin"])).unwrap();
        let want = Point::new(number(row, "east_m"), number(row, "north_m"));
        let got = local.to_metres(degrees(row)).unwrap();
        let off_m = (got.east_m - want.east_m).hypot(got.north_m - want.north_m);
        assert!(off_m < PRINTED_M, "{}: {off_m:e} m", row["name"]);
        let back = local.to_metres(local.to_degrees(want).unwrap()).unwrap();
        let off_m = (back.east_m - want.east_m).hypot(back.north_m - want.north_m);
        assert!(off_m < 1e-8, "{}: there and back {off_m:e} m", row["name"]);
    }
    assert_eq!(rows.len(), 60);
}

#[test]
fn worked_examples_come_out_as_printed() {
    for row in rows("published") {
        let grid = TransverseMercator::new(ellipsoid(&row["ellipsoid"]), number(&row, "scale"));
        let origin = degrees(&row["origin"]);
        let place = degrees(&row);
        let (_, below_m) = grid.forward(origin.latitude_deg.to_radians(), 0.0);
        let beside_rad = (place.longitude_deg - origin.longitude_deg).to_radians();
        let (east_m, north_m) = grid.forward(place.latitude_deg.to_radians(), beside_rad);
        let got = (east_m + number(&row, "false_east_m"), north_m - below_m + number(&row, "false_north_m"));
        for (key, got) in [("east_m", got.0), ("north_m", got.1)] {
            let want = number(&row, key);
            assert!((got - want).abs() < PRINTED_M, "{}: {key} {got:.7}, PROJ {want}", row["name"]);
            let printed = number(&row, &format!("printed_{key}"));
            let to_m = number(&row, "printed_to_m");
            assert!((got - printed).abs() <= to_m, "{}: {got:.4}; {}: {printed}", row["name"], row["source"]);
        }
    }
}
