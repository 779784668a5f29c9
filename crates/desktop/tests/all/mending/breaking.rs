//! Plans that break one rule and no more than they must.

use serde_json::{Value, json};

/// A square of 25 m from two nets in the middle of a paddock; nothing wrong but that its corners lean.
pub(super) fn quiet() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "soil": {} },
        "store": { "nets": [ { "id": "long", "count": 4, "length_m": 50, "panels": 14 } ],
            "energizers": [ { "id": "big", "stored_j": 3, "no_load_kv": 9, "kv_at_500_ohm": 7.5, "output_j_at_500_ohm": 2.2 },
                { "id": "small" } ] },
        "coop": { "id": "house", "at": [50, 50], "width_m": 2, "birds": 30 },
        "runs": [ { "id": "run", "outline": [[40, 40], [65, 40], [65, 65], [40, 65]], "nets": ["long", "long"],
            "coop": "house", "energizer": "big", "feed_at": [40, 40], "status": "standing",
            "earth_stakes": { "count": 3, "at": [30, 30] } } ],
        "readings": [ { "run": "run", "along_m": 50, "kind": "fence_kv", "value": 6.0 } ] })
}

/// The same of four rolls, with a gate for wheels at a join amid the southern side and a way in.
pub(super) fn gated() -> Value {
    changed(quiet(), &|plan| {
        plan["ground"]["gateway"] = json!({ "at": [50, 0] });
        plan["store"]["nets"] = json!([ { "id": "roll", "count": 12, "length_m": 30, "panels": 10 } ]);
        let run = &mut plan["runs"][0];
        run["outline"] = json!([[35, 35], [65, 35], [65, 65], [35, 65]]);
        run["nets"] = json!(["roll", "roll", "roll", "roll"]);
        run["feed_at"] = json!([35, 35]);
        run["pins"] = json!([ { "kind": "join", "at": [50, 35] } ]);
        run["gates"] = json!([ { "kind": "wheels", "at": [50, 35] } ]);
    })
}

/// The same square with damp ground beside the feed, and one earth stake not in it.
pub(super) fn damp() -> Value {
    changed(quiet(), &|plan| {
        plan["ground"]["soil"]["resistivity_ohm_m"] = json!(100);
        let hollow = json!([[28, 45], [34, 45], [34, 55], [28, 55]]);
        plan["ground"]["damp"] = json!([ { "name": "Hollow", "outline": hollow, "resistivity_ohm_m": 40 } ]);
        let run = &mut plan["runs"][0];
        (run["feed_at"], run["energizer_at"]) = (json!([40, 50]), json!([36, 50]));
        run["earth_stakes"] = json!({ "places": [[36, 53]], "lead_m": 5 });
    })
}

/// Heights over the whole square and beyond.
pub(super) fn grid(cell_m: f64, up_m: impl Fn(f64, f64) -> Option<f64>) -> Value {
    let count = (44.0 / cell_m) as usize;
    let mut all = Vec::new();
    for row in 0..count {
        all.extend((0..count).map(|column| up_m(30.0 + cell_m * column as f64, 30.0 + cell_m * row as f64)));
    }
    json!({ "south_west": [30, 30], "cell_m": cell_m, "columns": count, "up_m": all })
}

pub(super) fn changed(mut plan: Value, change: &dyn Fn(&mut Value)) -> Value {
    change(&mut plan);
    plan
}

pub(super) fn run(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["runs"][0][key] = value.clone())
}

pub(super) fn ground(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["ground"][key] = value.clone())
}

pub(super) fn gate(key: &'static str, value: Value) -> Value {
    changed(gated(), &|plan| plan["runs"][0]["gates"][0][key] = value.clone())
}

pub(super) fn net(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["store"]["nets"][0][key] = value.clone())
}

pub(super) fn unit(key: &'static str, value: Value) -> Value {
    changed(quiet(), &|plan| plan["store"]["energizers"][0][key] = value.clone())
}

pub(super) fn stakes(places: Value) -> Value {
    run("earth_stakes", json!({ "places": places }))
}

pub(super) fn fault(fault: Value) -> Value {
    run("faults", json!([fault]))
}

pub(super) fn branch(branch: Value) -> Value {
    run("branches", json!([branch]))
}

pub(super) fn hazard(kind: &str, path: Value) -> Value {
    ground("hazards", json!([ { "kind": kind, "path": path, "name": "It" } ]))
}

/// An open run round three sides.
pub(super) fn open(walls: Value) -> Value {
    changed(quiet(), &|plan| {
        plan["runs"][0]["outline"] = json!([[40, 70], [40, 40], [70, 40], [70, 70]]);
        plan["runs"][0]["closed"] = json!(false);
        plan["walls"] = walls.clone();
    })
}

/// A second run that stands, from that far east on.
pub(super) fn beside(east: f64, energizer: &str) -> Value {
    changed(quiet(), &|plan| {
        let mut other = plan["runs"][0].clone();
        (other["id"], other["energizer"], other["coop"]) = (json!("other"), json!(energizer), Value::Null);
        other["outline"] = json!([[east, 40], [east + 25.0, 40], [east + 25.0, 65], [east, 65]]);
        other["feed_at"] = json!([east, 40]);
        other["earth_stakes"] = json!({ "at": [34, 30] });
        plan["runs"].as_array_mut().unwrap().push(other);
    })
}
