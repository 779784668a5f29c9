//! Earth stakes at stated places, from the file to what is told of them: the resistance against published values, one
//! figure everywhere, and the file as it was.

use crate::told;
use serde_json::{Value, json};
use words::Words;
use workup::Depth;

const FOOT_M: f64 = 0.3048;

/// A square run over stakes of that length and diameter in soil of that resistivity.
fn plan(resistivity_ohm_m: f64, length_m: f64, diameter_m: f64, earth_stakes: &Value) -> Value {
    json!({ "format": "netfold-plan", "version": 1, "origin": { "latitude_deg": 50.0, "longitude_deg": 9.0 },
        "ground": { "soil": { "resistivity_ohm_m": resistivity_ohm_m },
                    "hazards": [ { "kind": "foreign_earth", "name": "meter", "path": [[-30, -4]] } ] },
        "store": { "nets": [ { "id": "long", "count": 2, "length_m": 50, "panels": 14 } ],
                   "energizers": [ { "id": "one" } ],
                   "earth_stake": { "length_m": length_m, "diameter_m": diameter_m } },
        "runs": [ { "id": "run", "outline": [[0, 0], [25, 0], [25, 25], [0, 25]], "nets": ["long", "long"],
                    "energizer": "one", "feed_at": [0, 0], "earth_stakes": earth_stakes } ] })
}

fn report(plan: &Value) -> Value {
    let plan = plan::read(plan.to_string().as_bytes()).unwrap().plan;
    let worked = workup::workup(&plan, Depth::Full);
    let findings = care::findings(&plan, &worked, Words::default());
    serde_json::from_slice(&exchange::report::json(&plan, &worked, &findings)).unwrap()
}

fn ohm(plan: &Value) -> f64 {
    report(plan)["runs"][0]["voltage"]["earth_ohm"].as_f64().unwrap()
}

#[test]
fn layouts_have_the_resistances_that_are_published() {
    let foot = |x: f64, y: f64| json!([x * FOOT_M - 200.0, y * FOOT_M - 200.0]);
    let rods = |places: Vec<Value>| ohm(&plan(100.0, 10.0 * FOOT_M, 0.01905, &json!({ "places": places })));
    // MIL-HDBK-419A volume II, 1.2.2.2 (read): one rod 32 ohms; 26 of them 20 feet apart round a site of 100 by 160 feet
    // 1.76 ohms, a factor of 5.5 % read off a chart; the matrix lies 10 % above it.
    let one = rods(vec![foot(0.0, 0.0)]);
    assert!((one - 32.0).abs() < 0.5, "{one}");
    let mut site: Vec<Value> = Vec::new();
    for number in 0..5 {
        site.extend([foot(20.0 * f64::from(number), 0.0), foot(100.0 - 20.0 * f64::from(number), 160.0)]);
    }
    for number in 0..8 {
        site.extend([foot(100.0, 20.0 * f64::from(number)), foot(0.0, 160.0 - 20.0 * f64::from(number))]);
    }
    assert_eq!(site.len(), 26);
    let all = rods(site);
    assert!((all / 1.76 - 1.0).abs() < 0.11, "{all}");
    // IEEE 142 table 14, quoted in two places that agree: shares of one rod's resistance for rods one length apart in line.
    for (count, want) in [(2, 0.58), (3, 0.43), (4, 0.34)] {
        let share = rods((0..count).map(|number| foot(0.0, 10.0 * f64::from(number))).collect()) / one;
        assert!((share / want - 1.0).abs() < 0.05, "{count}: {share}");
    }
    // Three in a triangle a side of s: a third of rho / (2 pi L) (ln(8 L / d) - 1 + 2 L / s), BS 7430 (from memory). The
    // second part overrates what stakes do to each other nearby, so it holds from two lengths on.
    for lengths in [2.0, 3.0, 6.0] {
        let (length_m, side_m) = (10.0 * FOOT_M, 10.0 * FOOT_M * lengths);
        let high = side_m * 0.75_f64.sqrt();
        let triangle =
            [[-90.0, -90.0], [-90.0 + side_m, -90.0], [-90.0 + side_m / 2.0, -90.0 + high]].map(|at| json!(at));
        let want = 100.0 / (2.0 * std::f64::consts::PI * length_m) / 3.0
            * ((8.0 * length_m / 0.01905).ln() - 1.0 + 2.0 * length_m / side_m);
        let got = rods(triangle.to_vec());
        assert!((got / want - 1.0).abs() < 0.01, "{lengths}: {got} and {want}");
    }
    // Stakes of a metre by 12 mm in 100 ohm metres: 87.6 alone, 46.4 two, 32.0 three in line, 32.6 three in a triangle
    // (ours, computed beside the published ones).
    let metre = |places: Value| ohm(&plan(100.0, 1.0, 0.012, &json!({ "places": places })));
    for (places, want) in [
        (json!([[-5, -5]]), 87.6),
        (json!([[-5, -5], [-8, -5]]), 46.4),
        (json!([[-5, -5], [-8, -5], [-11, -5]]), 32.0),
        (json!([[-5, -5], [-8, -5], [-6.5, -5.0 - 3.0 * 0.75_f64.sqrt()]]), 32.6),
    ] {
        let got = metre(places.clone());
        assert!((got - want).abs() < 0.05, "{places}: {got}");
    }
}

#[test]
fn report_map_and_figures_say_the_same() {
    let places = json!([[-3, -4], [-6, -4], [-3, -8]]);
    let stated = plan(100.0, 1.0, 0.012, &json!({ "places": places }));
    let told = report(&stated);
    let stakes = told["runs"][0]["earth_stakes"].as_array().unwrap();
    assert_eq!(
        stakes.iter().map(|stake| stake["at"].clone()).collect::<Vec<_>>(),
        [json!([-3.0, -4.0]), json!([-6.0, -4.0]), json!([-3.0, -8.0])]
    );
    let far = |stake: usize, key: &str| stakes[stake][key].as_f64().unwrap();
    for (stake, net_m, next_m, foreign_m) in
        [(0, 5.0, 3.0, 27.0), (1, 52.0_f64.sqrt(), 3.0, 24.0), (2, 73.0_f64.sqrt(), 4.0, 27.0_f64.hypot(4.0))]
    {
        for (key, want) in [("net_m", net_m), ("next_m", next_m), ("foreign_earth_m", foreign_m)] {
            assert!((far(stake, key) - want).abs() < 1e-9, "{stake} {key}: {} for {want}", far(stake, key));
        }
    }
    told::keeps_to_its_schema(&told);
    // On the map of others each is a point of its own, with the same figures.
    let read = plan::read(stated.to_string().as_bytes()).unwrap().plan;
    let worked = workup::workup(&read, Depth::Full);
    let map: Value = serde_json::from_slice(&exchange::geojson::write(&read, &worked).unwrap()).unwrap();
    let features = map["features"].as_array().unwrap();
    let of = |role: &str| features.iter().filter(|one| one["properties"]["role"] == role).collect::<Vec<_>>();
    assert!(of("earth_stakes").is_empty());
    let points = of("earth_stake");
    assert_eq!(points.len(), 3);
    for (point, stake) in points.iter().zip(stakes) {
        assert_eq!(point["properties"]["net_m"], stake["net_m"]);
        assert_eq!(point["properties"]["earth_ohm"], told["runs"][0]["voltage"]["earth_ohm"]);
    }
    // Without the key nothing is told of it.
    let row = report(&plan(100.0, 1.0, 0.012, &json!({ "count": 3, "at": [-3, -4] })));
    assert!(row["runs"][0].get("earth_stakes").is_none());
}

#[test]
fn the_file_is_written_as_it_was_read() {
    let row = json!({ "count": 3, "at": [-3.0, -4.0], "driven_by": "a neighbour" });
    let placed = json!({ "places": [[-3.0, -4.0], [-6.25, -4.0]], "driven_by": "a neighbour" });
    for stakes in [row, placed, json!({}), json!({ "spacing_m": 2.0, "places": [[1.0, -2.0]] })] {
        let stated = plan(100.0, 1.0, 0.012, &stakes);
        let bytes = plan::write(&plan::read(stated.to_string().as_bytes()).unwrap().plan);
        let written: Value = serde_json::from_slice(&bytes).unwrap();
        assert_eq!(written["runs"][0]["earth_stakes"], stakes, "key for key");
        assert_eq!(plan::write(&plan::read(&bytes).unwrap().plan), bytes, "byte for byte");
    }
    // No places are the same as none stated.
    let none = plan(100.0, 1.0, 0.012, &json!({ "places": [] }));
    let bytes = plan::write(&plan::read(none.to_string().as_bytes()).unwrap().plan);
    assert!(!String::from_utf8(bytes).unwrap().contains("places"));
    for wrong in [json!([[1]]), json!("here"), json!([[1, "2"]])] {
        let wrong = plan(100.0, 1.0, 0.012, &json!({ "places": wrong }));
        assert!(plan::read(wrong.to_string().as_bytes()).is_err(), "a place is two figures");
    }
}
