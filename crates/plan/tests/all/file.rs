//! The plan file: what is read, what is refused, what is written back.

use plan::{ReadError, read, write};
use serde_json::{Value, json};

fn file(extra: &Value) -> Vec<u8> {
    let mut file = json!({ "format": "netfold-plan", "version": 1 });
    for (key, value) in extra.as_object().unwrap() {
        file[key] = value.clone();
    }
    file.to_string().into_bytes()
}

fn refusal(extra: &Value) -> ReadError {
    read(&file(extra)).unwrap_err()
}

#[test]
fn format_and_version_alone_are_a_plan() {
    let opened = read(br#"{"format":"netfold-plan","version":1}"#).unwrap();
    assert!(opened.plan.runs.is_empty() && opened.unknown.is_empty());
    assert_eq!(opened.plan.target_kv(), 4.0);
}

#[test]
fn unknown_keys_are_written_back_and_a_misspelt_one_is_noted() {
    let opened = read(&file(&json!({
        "season": { "days": 210, "deep": [1, { "two": null }] },
        "targte_kv": 5.0,
        "store": { "nets": [ { "id": "a", "length_m": 50, "panels": 14, "colour": "green", "hieght_m": 1.0 } ] },
    })))
    .unwrap();
    let noted: Vec<_> = opened.unknown.iter().map(|key| (key.path.as_str(), key.meant.as_str())).collect();
    assert_eq!(noted, [("store.nets[0].hieght_m", "height_m"), ("targte_kv", "target_kv")]);
    let written: Value = serde_json::from_slice(&write(&opened.plan)).unwrap();
    assert_eq!(written["season"]["deep"][1], json!({ "two": null }));
    assert_eq!(written["targte_kv"], 5.0);
    assert_eq!(written["store"]["nets"][0]["colour"], "green");
    let again = read(&write(&opened.plan)).unwrap();
    assert_eq!(again.plan, opened.plan);
    assert_eq!(write(&again.plan), write(&opened.plan));
}

#[test]
fn a_repeated_closing_vertex_is_dropped() {
    let ring = json!([[0, 0], [10, 0], [10, 10], [0, 0]]);
    let opened = read(&file(&json!({ "ground": { "boundary": ring, "keep_outs": [ { "outline": ring } ] },
        "runs": [ { "id": "a", "outline": ring }, { "id": "b", "outline": ring, "closed": false } ] })))
    .unwrap();
    let plan = opened.plan;
    let lengths =
        [&plan.ground.boundary, &plan.ground.keep_outs[0].outline, &plan.runs[0].outline, &plan.runs[1].outline]
            .map(Vec::len);
    assert_eq!(lengths, [3, 3, 3, 4]);
}

#[test]
fn what_is_no_plan_is_refused_with_its_place() {
    let at = |bytes: &[u8]| read(bytes).unwrap_err();
    assert_eq!(at(b""), ReadError::CutShort { line: 1 });
    assert_eq!(at(b"{\"format\": \"netfold-plan\",\n \"version\": 1"), ReadError::CutShort { line: 2 });
    assert!(matches!(at(b"{\"format\": netfold}"), ReadError::NotJson { line: 1, .. }));
    assert!(matches!(at(b"\x00\xff\xfe"), ReadError::NotJson { .. }));
    assert_eq!(at(b"[]"), ReadError::NotAPlan { found: String::new() });
    assert_eq!(at(br#"{"type":"FeatureCollection"}"#), ReadError::NotAPlan { found: "FeatureCollection".to_owned() });
    assert_eq!(at(br#"{"format":"netfold-plan"}"#), ReadError::Missing { path: "version".to_owned() });
    assert_eq!(at(br#"{"format":"netfold-plan","version":2}"#), ReadError::Newer { version: "2".to_owned() });
    assert!(matches!(at(br#"{"format":"netfold-plan","version":1,"target_kv":1e999}"#), ReadError::NotFinite { .. }));
}

#[test]
fn wrong_types_and_missing_keys_name_the_key() {
    let path = |extra: Value| match refusal(&extra) {
        ReadError::WrongType { path, .. } | ReadError::Missing { path } => path,
        other => panic!("{other}"),
    };
    assert_eq!(path(json!({ "target_kv": "four" })), "target_kv");
    assert_eq!(path(json!({ "runs": [ { "id": "a", "outline": [[0, 0], [1, "x"]] } ] })), "runs[0].outline[1][1]");
    assert_eq!(path(json!({ "runs": [ { "id": "a", "outline": [[0, 0, 0]] } ] })), "runs[0].outline[0]");
    assert_eq!(path(json!({ "runs": [ { "id": "a" } ] })), "runs[0].outline");
    assert_eq!(path(json!({ "store": { "nets": [ { "id": "a", "length_m": 50 } ] } })), "store.nets[0].panels");
    assert_eq!(path(json!({ "store": { "nets": [ { "id": "a", "panels": 3 } ] } })), "store.nets[0].length_m");
    assert_eq!(path(json!({ "runs": [ { "id": "a", "outline": [], "status": "maybe" } ] })), "runs[0].status");
    assert_eq!(
        path(json!({ "store": { "nets": [ { "id": "a", "length_m": 1, "panels": -1 } ] } })),
        "store.nets[0].panels"
    );
}

#[test]
fn doubled_and_unknown_ids_are_refused() {
    let net = json!({ "id": "a", "length_m": 50, "panels": 14 });
    assert_eq!(
        refusal(&json!({ "store": { "nets": [net, net] } })),
        ReadError::DoubledId { path: "store.nets[1].id".to_owned(), id: "a".to_owned() }
    );
    let run = json!({ "id": "r", "outline": [], "nets": ["b"] });
    assert_eq!(
        refusal(&json!({ "store": { "nets": [net] }, "runs": [run] })),
        ReadError::UnknownId { path: "runs[0].nets[0]".to_owned(), id: "b".to_owned() }
    );
    assert!(matches!(
        refusal(&json!({ "coop": { "id": "c", "at": [0, 0] }, "other_coops": [ { "id": "c", "at": [0, 0] } ] })),
        ReadError::DoubledId { path, .. } if path == "other_coops[0].id"
    ));
}

#[test]
fn the_schema_accepts_what_is_read_and_says_defaults() {
    let schema = plan::schema::plan();
    let validator = jsonschema::validator_for(&schema).unwrap();
    assert!(validator.is_valid(&json!({ "format": "netfold-plan", "version": 1 })));
    assert!(validator.is_valid(&json!({ "format": "netfold-plan", "version": 1, "season": {} })));
    assert!(!validator.is_valid(&json!({ "format": "other", "version": 1 })));
    assert!(!validator.is_valid(&json!({ "format": "netfold-plan", "version": 1,
        "runs": [ { "id": "a", "outline": [[0, 0]], "status": "maybe" } ] })));
    assert_eq!(schema.pointer("/properties/target_kv/default"), Some(&json!(4.0)));
    assert_eq!(schema.pointer("/$defs/NetKind/properties/tension_n/default"), Some(&json!(100.0)));
    for demo in ["kettle-field", "square-or-rectangle"] {
        let path = format!("{}/../../assets/demo/{demo}.netfold.json", env!("CARGO_MANIFEST_DIR"));
        let demo: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
        assert!(validator.is_valid(&demo));
    }
}

#[test]
fn defaults_are_listed_as_assumed_and_statements_are_not() {
    let opened = read(&file(&json!({ "target_kv": 5.0, "store": { "mower": { "width_m": 0.4 } } }))).unwrap();
    let keys: Vec<_> = plan::assumed(&opened.plan).into_iter().map(|assumed| assumed.key).collect();
    assert!(!keys.iter().any(|key| key == "target_kv" || key == "store.mower.width_m"));
    assert!(keys.iter().any(|key| key == "store.mower.overlap"));
}

#[test]
fn the_bottom_line_of_a_net_is_dead_and_the_next_is_live() {
    // Common practice, no source: the dead line lies on the ground, the first live one stands 5 cm up.
    assert!((plan::defaults::LIVE_LINE_HEIGHTS_M[0] - 0.05).abs() < 1e-12);
    assert!(plan::defaults::LIVE_LINE_HEIGHTS_M.windows(2).all(|pair| pair[0] < pair[1]));
}

#[test]
fn rates_and_the_drop_point_are_read_and_what_is_left_out_stays_out() {
    let run = json!({ "id": "r", "outline": [[0, 0], [10, 0], [10, 10]] });
    let plain = read(&file(&json!({ "runs": [run] }))).unwrap().plan;
    let written: Value = serde_json::from_slice(&plan::write(&plain)).unwrap();
    assert!(written.pointer("/store/rates").is_none() && written.pointer("/runs/0/drop_at").is_none());
    assert!(!plain.store.rates.stated());
    // Without a feed and a boundary the rolls lie at the first vertex; with a boundary at its nearest corner.
    assert_eq!(plain.drop_at(&plain.runs[0]), Some(plan::Point::new(0.0, 0.0)));
    let mut fenced = plain.clone();
    fenced.ground.boundary = [(30.0, 0.0), (1.0, -1.0), (0.0, 30.0)].map(plan::Point::from).to_vec();
    assert_eq!(fenced.drop_at(&fenced.runs[0]), Some(plan::Point::new(1.0, -1.0)));
    fenced.runs[0].feed_at = Some(plan::Point::new(10.0, 10.0));
    assert_eq!(fenced.drop_at(&fenced.runs[0]), Some(plan::Point::new(10.0, 10.0)));

    let mut stated = run;
    stated["drop_at"] = json!([4.0, -2.0]);
    stated["mow_way"] = json!("not_at_all");
    let rates = json!({ "tread_post_s": 20.0, "people": 2, "dark": true, "song": "la" });
    let opened = read(&file(&json!({ "store": { "rates": rates }, "runs": [stated] }))).unwrap().plan;
    assert!(opened.store.rates.stated() && opened.store.rates.tread_post_s() > 19.0);
    assert_eq!(opened.runs[0].mow_way(), plan::MowWay::NotAtAll);
    let written: Value = serde_json::from_slice(&plan::write(&opened)).unwrap();
    assert_eq!(written.pointer("/store/rates"), Some(&rates));
    assert_eq!(written.pointer("/runs/0/drop_at"), Some(&json!([4.0, -2.0])));
    let keys: Vec<_> = plan::assumed(&opened).into_iter().map(|assumed| assumed.key).collect();
    assert!(keys.iter().any(|key| key == "store.rates.dark_factor"));
    assert!(!keys.iter().any(|key| key == "store.rates.rain_factor" || key == "runs[0].drop_at"));
}

#[test]
fn pins_gates_and_the_gateway_are_read_written_and_their_defaults_assumed() {
    let text = r#"{ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [90, 0], [90, 90], [0, 90]], "gateway": { "at": [0, 40], "lock": "chain" } },
        "store": { "nets": [ { "id": "long", "length_m": 50, "panels": 14 } ] },
        "coop": { "id": "house", "at": [40, 40], "width_m": 2.0 },
        "runs": [ { "id": "run", "outline": [[10, 10], [40, 10], [40, 40], [10, 40]],
            "pins": [ { "kind": "join", "at": [40, 10] }, { "kind": "net", "at": [20, 40], "net": "long" } ],
            "gates": [ { }, { "kind": "wheels", "at": [40, 20], "width_m": 3.0 }, { "kind": "coop" } ] } ] }"#;
    let mut plan = read(text.as_bytes()).unwrap().plan;
    let run = plan.runs[0].clone();
    assert_eq!((run.pins[1].kind, run.pins[1].net.as_deref()), (plan::PinKind::Net, Some("long")));
    let widths: Vec<f64> = run.gates.iter().map(|gate| gate.width_m(plan.coop_of(&run))).collect();
    assert_eq!(widths, [plan::defaults::FOOT_GATE_M, 3.0, 2.0 + plan::defaults::COOP_GATE_ROOM_M]);
    assert_eq!(read(&write(&plan)).unwrap().plan, plan, "unknown keys come along");
    let assumed = |plan: &plan::Plan| {
        let keys = plan::assumed(plan).into_iter().map(|assumed| assumed.key);
        keys.filter(|key| key.contains("gate")).collect::<Vec<_>>()
    };
    assert_eq!(assumed(&plan), ["runs[0].gates[0].width_m", "runs[0].gates[2].width_m"]);
    plan.ground.gateway = None;
    assert_eq!(plan.gateway_for(plan::Point::new(80.0, 10.0)), Some(plan::Point::new(90.0, 0.0)));
    assert_eq!(assumed(&plan)[0], "ground.gateway.at");
    // A pinned net says which, and one that is in the store.
    for (from, to, id) in
        [(", \"net\": \"long\"", "", "plan/missing"), ("\"net\": \"long\"", "\"net\": \"new\"", "plan/unknown-id")]
    {
        let refused = read(text.replace(from, to).as_bytes()).unwrap_err().to_string();
        assert!(refused.starts_with(id) && refused.contains("runs[0].pins[1].net"), "{refused}");
    }
}

#[test]
fn what_is_pinned_and_opened_goes_with_its_run() {
    let at = plan::Point::new(3.0, 4.0);
    let run = plan::Run {
        pins: vec![plan::Pin::new(plan::PinKind::Join, at)],
        gates: vec![plan::Gate { at: Some(at), ..plan::Gate::new(plan::GateKind::Foot) }],
        ..plan::Run::default()
    };
    let moved = run.carried(|at| plan::Point::new(at.east_m + 1.0, at.north_m));
    assert_eq!((moved.pins[0].at, moved.gates[0].at), (plan::Point::new(4.0, 4.0), Some(plan::Point::new(4.0, 4.0))));
}

#[test]
fn walls_shade_words_and_the_picture_beneath_are_read_and_written_as_they_were() {
    let text = json!({
        "format": "netfold-plan", "version": 1,
        "ground": { "shade": [{ "outline": [[0.0, 0.0], [4.0, 0.0], [4.0, 3.0], [0.0, 0.0]] }] },
        "coop": { "id": "hut", "at": [1.0, 2.0], "door": "left" },
        "walls": [{ "path": [[0.0, 0.0], [80.0, 0.0]], "holds_birds": true, "stops_foxes": false, "metal": false,
                    "energised": false, "owner": "own", "height_m": 1.2 }],
        "labels": [{ "at": [3.0, 4.0], "text": "trough", "size": "large" }],
        "underlay": { "path": "pictures/air.png", "sha256": "00ff", "size_px": [40, 30],
                      "world_m": [0.5, 0.0, 0.0, -0.5, 0.25, 14.75], "opacity": 0.5, "locked": true }
    });
    let plan = read(text.to_string().as_bytes()).unwrap().plan;
    assert_eq!(plan.ground.shade[0].outline.len(), 3, "the repeated place is dropped");
    assert!(plan.walls[0].holds_birds() && plan.walls[0].kind() == plan::WallKind::Wall);
    assert_eq!(plan.underlay.as_ref().unwrap().corners()[3], plan::Point::new(0.0, 0.0));
    let written: Value = serde_json::from_slice(&write(&plan)).unwrap();
    for key in ["walls", "labels", "underlay"] {
        assert_eq!(written[key], text[key], "{key}");
    }
    assert_eq!(written["coop"]["door"], "left");
    // What says nothing of them is written without them.
    let plain = read(br#"{"format": "netfold-plan", "version": 1}"#).unwrap().plan;
    let written: Value = serde_json::from_slice(&write(&plain)).unwrap();
    assert!(["walls", "labels", "underlay"].iter().all(|key| written.get(key).is_none()));
    assert!(written["ground"].get("shade").is_none());
    let assumed = plan::assumed(&plan::Plan {
        underlay: plan.underlay.map(|underlay| plan::Underlay { world_m: None, ..underlay }),
        ..plain
    });
    assert!(
        assumed
            .iter()
            .any(|one| one.key == "underlay.world_m" && one.value == json!([0.1, 0.0, 0.0, -0.1, 0.05, 2.95]))
    );
    // A wall that is no list is refused with its place.
    let wrong = read(br#"{"format": "netfold-plan", "version": 1, "walls": 3}"#).unwrap_err();
    assert!(matches!(wrong, ReadError::WrongType { path, .. } if path == "walls"));
}

#[test]
fn a_known_place_keeps_its_letter_in_the_file() {
    let text = |letter: &str| {
        format!(r#"{{"format":"netfold-plan","version":1,"tape_points":[{{"name":"oak","at":[1,2]{letter}}}]}}"#)
    };
    let lettered = plan::read(text(r#","letter":"Q""#).as_bytes()).unwrap().plan;
    assert_eq!(lettered.tape_points[0].letter, Some(plan::TapeLetter::Q));
    assert_eq!(plan::read(&plan::write(&lettered)).unwrap().plan, lettered);
    // A file without letters stays one.
    let plain = plan::read(text("").as_bytes()).unwrap().plan;
    assert!(!String::from_utf8(plan::write(&plain)).unwrap().contains("letter"));
    assert!(plan::read(text(r#","letter":"R""#).as_bytes()).is_err());
}
