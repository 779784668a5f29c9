//! Every rule, on a plan that breaks it and on one that just keeps it.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may stop and may read files")]

use care::{Finding, Severity};
use serde_json::{Value, json};
use words::Words;
use workup::Depth;

/// A square of 25 m from two nets in the middle of a paddock, fed from its south-west corner; nothing wrong but
/// that its corners lean.
fn quiet() -> Value {
    json!({ "format": "netfold-plan", "version": 1,
        "ground": { "boundary": [[0, 0], [100, 0], [100, 100], [0, 100]], "keep_outs": [], "hazards": [], "soil": {} },
        "store": { "nets": [ { "id": "long", "count": 2, "length_m": 50, "panels": 14 } ],
            "energizers": [ { "id": "big", "stored_j": 3, "no_load_kv": 9, "kv_at_500_ohm": 7.5, "output_j_at_500_ohm": 2.2 } ] },
        "coop": { "id": "house", "at": [50, 50] },
        "runs": [ { "id": "run", "outline": [[40, 40], [65, 40], [65, 65], [40, 65]], "nets": ["long", "long"],
            "coop": "house", "energizer": "big", "feed_at": [40, 40], "status": "standing",
            "earth_stakes": { "count": 3, "at": [30, 30] } } ],
        "readings": [ { "run": "run", "along_m": 50, "kind": "fence_kv", "value": 6.0 } ] })
}

fn findings(plan: &Value) -> Vec<Finding> {
    let opened = plan::read(plan.to_string().as_bytes()).unwrap_or_else(|error| panic!("{error}"));
    let worked = workup::workup(&opened.plan, Depth::Full);
    let mut findings = care::findings(&opened.plan, &worked, Words::default());
    findings.plan.extend(care::unknown_keys(&opened.unknown, Words::default()));
    findings.all().cloned().collect()
}

fn ids(plan: &Value) -> Vec<&'static str> {
    let mut ids: Vec<_> = findings(plan).iter().map(|finding| finding.id).collect();
    ids.sort_unstable();
    ids
}

fn with(change: impl FnOnce(&mut Value)) -> Value {
    let mut plan = quiet();
    change(&mut plan);
    plan
}

fn has(plan: &Value, id: &str, severity: Severity) -> Finding {
    let found = findings(plan);
    let hit = found.iter().find(|finding| finding.id == id);
    let hit = hit.unwrap_or_else(|| panic!("no {id} among {:?}", found.iter().map(|f| f.id).collect::<Vec<_>>()));
    assert_eq!(hit.severity, severity, "{id}");
    assert!(!hit.message.contains('{') && hit.message.ends_with(['.', '?']), "{id}: {}", hit.message);
    assert!(!hit.source.is_empty(), "{id}");
    hit.clone()
}

fn lacks(plan: &Value, id: &str) {
    assert!(!ids(plan).contains(&id), "{id} among {:?}", ids(plan));
}

#[test]
fn a_quiet_plan_has_only_what_is_always_said() {
    assert_eq!(ids(&quiet()), ["buried-services", "corner-leans", "local-codes-first"]);
}

#[test]
fn a_rule_for_birds_that_counts_none_is_said() {
    for rule in ["own", "eu_free_range", "us_organic_layer"] {
        lacks(&with(|plan| plan["season"] = json!({ "birds_rule": rule })), "birds-rule");
    }
    let unknown = has(&with(|plan| plan["season"] = json!({ "birds_rule": "mine" })), "birds-rule", Severity::Note);
    assert!(unknown.message.contains("“mine”"), "{}", unknown.message);
    has(&with(|plan| plan["season"] = json!({ "min_m2_per_bird": 0 })), "birds-rule", Severity::Note);
}

#[test]
fn braces_that_hold_settle_their_corners() {
    let corners = [[40, 40], [65, 40], [65, 65], [40, 65]];
    let braces: Vec<Value> = corners.iter().map(|at| json!({ "at": at })).collect();
    assert_eq!(ids(&with(|plan| plan["runs"][0]["braces"] = json!(braces))), ["buried-services", "local-codes-first"]);
    let weak = with(|plan| {
        plan["runs"][0]["braces"] = json!(braces);
        plan["ground"]["soil"] = json!({ "friction_angle_deg": 30 });
    });
    has(&weak, "brace-too-weak", Severity::Warning);
}

#[test]
fn nets_too_short_and_too_long_are_said() {
    has(&with(|plan| plan["runs"][0]["nets"] = json!(["long"])), "net-too-short", Severity::Warning);
    let long = with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [64, 40], [64, 65], [40, 65]]));
    has(&long, "spare-netting", Severity::Note);
    lacks(&quiet(), "spare-netting");
    has(&with(|plan| plan["store"]["nets"][0]["count"] = json!(1)), "store-too-small", Severity::Warning);
}

#[test]
fn corners_between_posts_ends_and_dents_are_said() {
    let skew = with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [66, 40], [66, 64], [40, 64]]));
    has(&skew, "corner-between-posts", Severity::Warning);
    let open = with(|plan| plan["runs"][0]["closed"] = json!(false));
    has(&open, "end-needs-brace", Severity::Warning);
    let dent = with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [65, 40], [52, 52], [65, 65], [40, 65]]));
    has(&dent, "brace-inside", Severity::Note);
}

#[test]
fn a_gentle_bend_that_leans_is_said_and_gets_no_brace() {
    let round: Vec<[f64; 2]> = (0..28)
        .map(|post| f64::from(post) * std::f64::consts::TAU / 28.0)
        .map(|angle| [50.0 + 15.95 * angle.cos(), 50.0 + 15.95 * angle.sin()])
        .collect();
    let firm = with(|plan| plan["runs"][0]["outline"] = json!(round));
    lacks(&firm, "bend-leans");
    lacks(&firm, "corner-leans");
    let soft = with(|plan| {
        plan["runs"][0]["outline"] = json!(round);
        plan["ground"]["soil"]["undrained_strength_kpa"] = json!(12);
    });
    has(&soft, "bend-leans", Severity::Warning);
    lacks(&soft, "corner-leans");
}

#[test]
fn the_run_keeps_inside_the_paddock_and_off_the_keep_outs() {
    has(&with(|plan| plan["runs"][0]["outline"][1] = json!([165, 40])), "leaves-paddock", Severity::Warning);
    let keep_out = |at: f64, clearance: f64, may_enclose: bool| {
        with(|plan| {
            plan["ground"]["keep_outs"] = json!([ { "name": "Oak", "clearance_m": clearance, "may_enclose": may_enclose,
                "outline": [[at, 50], [at + 1.0, 50], [at + 1.0, 51], [at, 51]] } ]);
        })
    };
    has(&keep_out(66.9, 2.0, false), "keep-out-touched", Severity::Warning);
    lacks(&keep_out(67.1, 2.0, false), "keep-out-touched");
    has(&keep_out(50.0, 2.0, false), "keep-out-enclosed", Severity::Warning);
    lacks(&keep_out(50.0, 2.0, true), "keep-out-enclosed");
    has(&keep_out(64.5, 0.0, true), "keep-out-touched", Severity::Warning);
    has(&with(|plan| plan["coop"]["at"] = json!([20, 20])), "coop-outside", Severity::Warning);
}

#[test]
fn weak_posts_and_missing_readings_are_said() {
    let weak = with(|plan| plan["runs"][0]["leakage_s_per_m"] = json!(1e-3));
    let found = has(&weak, "weak-post", Severity::Warning);
    assert!(found.message.contains("fault"), "{}", found.message);
    let unread = with(|plan| plan["readings"] = json!([]));
    let found = has(&unread, "not-measured", Severity::Note);
    assert!(found.message.contains("not measured yet"));
    lacks(&quiet(), "not-measured");
}

#[test]
fn a_fault_that_cannot_be_meant_is_said() {
    let fault = |fault: Value| with(|plan| plan["runs"][0]["faults"] = json!([fault]));
    let fine = fault(json!({ "at": [50, 40], "kind": "short", "ohm": 1000 }));
    for id in ["fault-off-net", "fault-no-ohm", "fault-lines", "fault-no-join"] {
        lacks(&fine, id);
    }
    let off = has(&fault(json!({ "at": [50, 30], "kind": "short", "ohm": 1000 })), "fault-off-net", Severity::Note);
    assert!(off.message.contains("10.0 m off the net"), "{}", off.message);
    has(&fault(json!({ "at": [50, 40], "kind": "short", "ohm": 0 })), "fault-no-ohm", Severity::Note);
    has(&fault(json!({ "at": [50, 40], "kind": "join" })), "fault-no-ohm", Severity::Note);
    // A bad join goes to the nearest join, however far.
    lacks(&fault(json!({ "at": [50, 30], "kind": "join", "ohm": 50 })), "fault-off-net");
    let many = has(&fault(json!({ "at": [50, 40], "kind": "line_break", "lines": 40 })), "fault-lines", Severity::Note);
    assert!(many.message.contains("breaks 40 live lines; its net has "), "{}", many.message);
    lacks(&fault(json!({ "at": [50, 40], "kind": "line_break", "lines": 1 })), "fault-lines");
    let one = |kind: &str, at: [f64; 2]| {
        with(|plan| {
            plan["runs"][0]["nets"] = json!(["long"]);
            plan["runs"][0]["start_m"] = json!(0);
            plan["runs"][0]["faults"] = json!([{ "at": at, "kind": kind, "ohm": 50 }]);
        })
    };
    let gap = has(&one("short", [40.0, 60.0]), "fault-off-net", Severity::Note);
    assert!(gap.message.contains("where no net lies"), "{}", gap.message);
    has(&one("join", [50.0, 40.0]), "fault-no-join", Severity::Note);
}

#[test]
fn a_metal_stake_too_near_the_net_is_said() {
    let near = |off: f64| with(|plan| plan["runs"][0]["earth_stakes"]["at"] = json!([50.0, 40.0 - off]));
    has(&near(0.2), "stake-near-net", Severity::Warning);
    lacks(&near(0.4), "stake-near-net");
}

#[test]
fn what_can_hurt_is_a_danger() {
    let hazard = |hazard: Value| with(|plan| plan["ground"]["hazards"] = json!([hazard]));
    let overhead = |east: f64, kv: f64| {
        hazard(json!({ "kind": "overhead_line", "path": [[east, 0], [east, 100]], "line_voltage_kv": kv }))
    };
    // IEC 60335-2-76 Annex BB, read in reprints: 2 m up to 1 kV, 15 m above, on the ground.
    has(&overhead(50.0, 0.4), "overhead-line-crossed", Severity::Danger);
    has(&overhead(79.0, 11.0), "overhead-line-near", Severity::Danger);
    lacks(&overhead(81.0, 11.0), "overhead-line-near");
    lacks(&overhead(68.0, 0.4), "overhead-line-near");
    has(&overhead(66.5, 0.4), "overhead-line-near", Severity::Danger);
    // The same annex: 2.5 m between fences of two energizers, 10 m between earths; three stakes reach 6 m.
    let fence = |east: f64| hazard(json!({ "kind": "other_energised_fence", "path": [[east, 0], [east, 100]] }));
    has(&fence(67.4), "two-fences-near", Severity::Danger);
    lacks(&fence(67.6), "two-fences-near");
    let earth = |east: f64| hazard(json!({ "kind": "foreign_earth", "path": [[east, 30]] }));
    has(&earth(14.1), "foreign-earth-near", Severity::Danger);
    lacks(&earth(13.9), "foreign-earth-near");
    let way = |north: f64, more: Value| {
        let mut way = json!({ "kind": "public_way", "path": [[0, north], [100, north]] });
        way.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        hazard(way)
    };
    has(&way(50.0, json!({})), "public-way-crossed", Severity::Danger);
    has(&way(50.0, json!({ "signed": true })), "public-way-crossed", Severity::Danger);
    lacks(&way(50.0, json!({ "signed": true, "unpowered_gate": true })), "public-way-crossed");
    let beside = has(&way(35.0, json!({})), "public-way-unsigned", Severity::Danger);
    assert!(beside.message.contains("2 signs"), "{}", beside.message);
    lacks(&way(35.0, json!({ "signed": true })), "public-way-unsigned");
    has(&hazard(json!({ "kind": "public_way", "path": [] })), "hazard-without-path", Severity::Warning);
}

#[test]
fn what_a_reader_of_the_file_may_miss_is_said() {
    // An open line straight through a keep-out that has no clearance.
    let through = with(|plan| {
        plan["runs"][0]["outline"] = json!([[40, 40], [65, 40]]);
        plan["runs"][0]["closed"] = json!(false);
        plan["ground"]["keep_outs"] =
            json!([ { "name": "Pond", "outline": [[50, 35], [55, 35], [55, 45], [50, 45]] } ]);
    });
    has(&through, "keep-out-touched", Severity::Warning);
    // A foreign earth, and a stake whose place is not stated, or one of a row that may reach it.
    let earth = |stakes: Value| {
        with(|plan| {
            plan["ground"]["hazards"] = json!([ { "kind": "foreign_earth", "path": [[10, 30]] } ]);
            plan["runs"][0]["earth_stakes"] = stakes;
        })
    };
    has(&earth(json!({ "count": 1 })), "foreign-earth-unchecked", Severity::Warning);
    lacks(&earth(json!({ "count": 3, "at": [30, 30] })), "foreign-earth-near");
    has(&earth(json!({ "count": 5, "at": [30, 30] })), "foreign-earth-near", Severity::Danger);
    // A brace far from every corner settles none, and one at the place of an end settles it.
    let far = with(|plan| plan["runs"][0]["braces"] = json!([ { "at": [500, 500] } ]));
    assert!(has(&far, "corner-leans", Severity::Warning).message.contains("1, 2, 3 and 4"));
    // A branch needs nets, a line, and to start where it hangs.
    let branch = |branch: Value| with(|plan| plan["runs"][0]["branches"] = json!([branch]));
    let bare = branch(json!({ "from_m": 10, "outline": [[65, 50], [80, 50]] }));
    has(&bare, "branch-no-nets", Severity::Warning);
    lacks(&bare, "unknown-key");
    let no_line = branch(json!({ "from_m": 10, "outline": [[65, 50]], "nets": ["long"] }));
    has(&no_line, "branch-no-line", Severity::Warning);
    let off = branch(json!({ "from_m": 10, "outline": [[650, 50], [700, 50]], "nets": ["long"] }));
    assert!(has(&off, "branch-off-line", Severity::Warning).at.len() == 1);
    // What is stated on a branch is looked at as on a run's line, and told by the branch.
    let tried = |key: &str, what: Value| {
        let mut hanging = json!({ "from_m": 10, "outline": [[65, 50], [80, 50]], "nets": ["long"] });
        hanging[key] = what;
        branch(hanging)
    };
    let beside = tried("faults", json!([{ "at": [70, 55], "kind": "short", "ohm": 50, "cause": "peg" }]));
    let beside = has(&beside, "fault-off-net", Severity::Note);
    assert!(beside.message.starts_with("Fault 1 of branch 1 of ") && beside.message.contains(", a peg, is 5.0 m off"));
    lacks(&tried("faults", json!([{ "at": [70, 50.5], "kind": "short", "ohm": 50 }])), "fault-off-net");
    has(&tried("faults", json!([{ "at": [70, 50], "kind": "join", "ohm": 50 }])), "fault-no-join", Severity::Note);
    let lines = plan::defaults::LIVE_LINE_HEIGHTS_M.len();
    let all = tried("faults", json!([{ "at": [70, 50], "kind": "line_break", "lines": lines }]));
    let all = has(&all, "all-lines-broken", Severity::Warning);
    assert!(all.message.starts_with("Branch 1 of ") && all.at.len() == 1, "{}", all.message);
    let few = tried("faults", json!([{ "at": [70, 50], "kind": "line_break", "lines": lines - 1 }]));
    lacks(&few, "all-lines-broken");
    let grass = tried("leakage_zones", json!([{ "from_m": 2, "to_m": 9, "s_per_m": 1.0 }]));
    has(&grass, "leakage-enormous", Severity::Warning);
    let negative = tried("leakage_zones", json!([{ "from_m": 2, "to_m": 9, "s_per_m": -1.0 }]));
    has(&negative, "bad-value", Severity::Warning);
    // A bad net that nobody uses hinders nothing.
    let unused = with(|plan| {
        let nets = plan["store"]["nets"].as_array_mut().unwrap();
        nets.push(json!({ "id": "torn", "length_m": 25, "panels": 7, "height_m": 0, "line_resistance_ohm_per_m": -1 }));
    });
    has(&unused, "bad-value", Severity::Warning);
    has(&unused, "corner-leans", Severity::Warning);
    let worked = workup::workup(&plan::read(unused.to_string().as_bytes()).unwrap().plan, Depth::Quick);
    assert!(worked.runs[0].volts.is_some());
    // Figures that go beyond working out together are said, and so are too many nets.
    has(
        &with(|plan| plan["store"]["earth_stake"] = json!({ "length_m": 0.01, "diameter_m": 5 })),
        "no-volts",
        Severity::Warning,
    );
    let endless = with(|plan| {
        plan["store"]["nets"][0] = json!({ "id": "long", "length_m": 1e5, "panels": 1, "count": 4_000_000_000_u32 });
    });
    has(&endless, "chain-too-long", Severity::Warning);
    // A hundred thousand corners far away are one finding with a hundred places at the most.
    let many: Vec<[f64; 2]> = (0..100_000).map(|corner| [1e9 + f64::from(corner), f64::from(corner % 7)]).collect();
    let far_away = findings(&with(|plan| plan["runs"][0]["outline"] = json!(many)));
    assert!(far_away.len() < 10 && far_away.iter().all(|finding| finding.at.len() <= 100));
    // Standing runs that leave their nets out use up the store in their order.
    let standing = with(|plan| {
        plan["store"]["nets"][0]["count"] = json!(3);
        plan["runs"][0].as_object_mut().unwrap().remove("nets");
        let mut second = plan["runs"][0].clone();
        second["id"] = json!("second");
        second["coop"] = Value::Null;
        plan["runs"].as_array_mut().unwrap().push(second);
    });
    has(&standing, "net-too-short", Severity::Warning);
    lacks(&standing, "standing-too-many");
}

#[test]
fn two_standing_runs_on_different_energizers_keep_apart() {
    let second = |east: f64, energizer: &str| {
        with(|plan| {
            plan["store"]["nets"][0]["count"] = json!(4);
            let mut unit = plan["store"]["energizers"][0].clone();
            unit["id"] = json!("small");
            plan["store"]["energizers"].as_array_mut().unwrap().push(unit);
            let mut run = plan["runs"][0].clone();
            run["id"] = json!("other");
            run["energizer"] = json!(energizer);
            run["coop"] = Value::Null;
            run["outline"] = json!([[east, 40], [east + 25.0, 40], [east + 25.0, 65], [east, 65]]);
            plan["runs"].as_array_mut().unwrap().push(run);
        })
    };
    has(&second(67.0, "small"), "two-fences-near", Severity::Danger);
    lacks(&second(68.0, "small"), "two-fences-near");
    lacks(&second(67.0, "big"), "two-fences-near");
}

#[test]
fn what_cannot_be_built_is_said_with_its_key() {
    let message = |plan: &Value, id: &str| has(plan, id, Severity::Warning).message;
    assert!(
        message(&with(|plan| plan["store"]["nets"][0]["length_m"] = json!(0)), "bad-value")
            .contains("store.nets[0].length_m")
    );
    assert!(
        message(&with(|plan| plan["store"]["nets"][0]["panels"] = json!(0)), "bad-value")
            .contains("store.nets[0].panels")
    );
    assert!(
        message(&with(|plan| plan["store"]["mower"] = json!({ "overlap": 1.0 })), "bad-value")
            .contains("store.mower.overlap")
    );
    message(&with(|plan| plan["store"]["energizers"][0]["kv_at_500_ohm"] = json!(9.5)), "data-sheet");
    message(&with(|plan| plan["store"]["energizers"][0]["output_j_at_500_ohm"] = json!(4)), "data-sheet");
    message(&with(|plan| plan["store"]["nets"][0]["live_line_heights_m"] = json!([0.2, 0.2])), "live-lines");
    message(&with(|plan| plan["store"]["nets"][0]["panel_lengths_m"] = json!([20, 20])), "panel-sum");
    message(&with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [65, 40]])), "outline-few-corners");
    message(
        &with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [65, 65], [65, 40], [40, 65]])),
        "outline-crosses",
    );
    message(&with(|plan| plan["runs"][0]["outline"][2] = json!([1e9, 65])), "outline-too-far");
    message(
        &with(|plan| plan["ground"]["boundary"] = json!([[0, 0], [100, 100], [100, 0], [0, 100]])),
        "outline-crosses",
    );
    let repeated = with(|plan| plan["runs"][0]["outline"] = json!([[40, 40], [65, 40], [65, 40], [65, 65], [40, 65]]));
    has(&repeated, "outline-repeats", Severity::Note);
    has(
        &with(|plan| plan["ground"]["soil"] = json!({ "undrained_strength_kpa": 50, "friction_angle_deg": 30 })),
        "two-soils",
        Severity::Note,
    );
    has(&with(|plan| plan["targt_kv"] = json!(5)), "unknown-key", Severity::Note);
    let many: Vec<[f64; 2]> = (0..100_000)
        .map(|corner| f64::from(corner) * std::f64::consts::TAU / 100_000.0)
        .map(|angle| [50.0 + 16.0 * angle.cos(), 50.0 + 16.0 * angle.sin()])
        .collect();
    message(&with(|plan| plan["runs"][0]["outline"] = json!(many)), "outline-many-corners");
    let no_nets = with(|plan| {
        plan["store"]["nets"] = json!([]);
        plan["runs"][0].as_object_mut().unwrap().remove("nets");
    });
    message(&no_nets, "no-nets");
}

#[test]
fn ground_that_refuses_classes_that_are_none_and_corners_that_contradict_are_said() {
    let soil = |soil: Value| with(|plan| plan["ground"]["soil"] = soil);
    let refuses = has(&soil(json!({ "by_foot": "refuses" })), "soil-refuses", Severity::Warning);
    assert!(refuses.message.contains("weights"));
    lacks(&soil(json!({ "by_foot": "needs_bar" })), "soil-refuses");
    // A pull outweighs the foot.
    lacks(&soil(json!({ "by_foot": "refuses", "pull_test": { "pull_kg": 9 } })), "soil-refuses");
    let none = soil(json!({ "class": { "table": "tm_5_818_1", "name": "firm" } }));
    let said = has(&none, "no-such-class", Severity::Warning).message;
    assert!(said.contains("“firm”") && said.contains("medium") && said.contains("TM 5-818-1"), "{said}");
    lacks(&soil(json!({ "class": { "table": "bs_8004", "name": "firm" } })), "no-such-class");
    let seen = |stood: bool, turn: Value| json!({ "at": [0, 0], "stood": stood, "turn_deg": turn });
    let both = soil(json!({ "corners_seen": [seen(true, json!(90)), seen(false, json!(60))] }));
    has(&both, "corners-contradict", Severity::Note);
    lacks(&soil(json!({ "corners_seen": [seen(true, json!(60)), seen(false, json!(90))] })), "corners-contradict");
    has(&soil(json!({ "corners_seen": [seen(true, Value::Null)] })), "seen-nowhere", Severity::Note);
    lacks(&soil(json!({ "corners_seen": [seen(true, json!(60))] })), "seen-nowhere");
}

#[test]
fn posts_that_go_over_are_a_warning_clean_and_a_note_fouled() {
    let wind = |metres_a_second: f64| with(|plan| plan["ground"]["wind_m_per_s"] = json!(metres_a_second));
    lacks(&wind(1.0), "posts-go-over");
    // Spikes of 180 by 8 mm in medium clay: the clean net stands a little longer than the fouled one.
    has(&wind(12.0), "posts-go-over", Severity::Note);
    let over = has(&wind(40.0), "posts-go-over", Severity::Warning);
    assert!(over.message.contains("144 km/h") && over.why.contains("clean net"), "{over:?}");
    assert_eq!(over.at.len(), 1);
    lacks(&quiet(), "posts-go-over");
}

#[test]
fn a_brace_is_judged_by_one_rule_whatever_the_plan_says() {
    let corners = [[40, 40], [65, 40], [65, 65], [40, 65]];
    let braced = |change: &dyn Fn(&mut Value)| {
        with(|plan| {
            let braces: Vec<Value> = corners.iter().map(|at| json!({ "at": at })).collect();
            plan["runs"][0]["braces"] = json!(braces);
            change(plan);
        })
    };
    lacks(&braced(&|plan| plan["store"]["brace"] = json!({ "pegs": 1 })), "brace-too-weak");
    // What holds is one rule: a plan that says nothing of details is told what one is told that does.
    let soft = |details: bool| {
        let plan = braced(&|plan| {
            plan["ground"]["soil"] = json!({ "undrained_strength_kpa": 25 });
            if details {
                plan["store"]["brace"] = json!({ "pegs": 1 });
            }
        });
        has(&plan, "brace-too-weak", Severity::Warning)
    };
    assert_eq!(soft(false), soft(true));
    assert!(soft(false).why.contains("2.0 times the pull is asked for"));
    // A guy that is nearly upright draws its peg.
    let steep = braced(&|plan| plan["store"]["brace"] = json!({ "guy_angle_deg": 80 }));
    has(&steep, "brace-too-weak", Severity::Warning);
    // A second peg mends what one does not hold.
    let soft = |pegs: u32| {
        braced(&|plan| {
            plan["ground"]["soil"] = json!({ "undrained_strength_kpa": 25 });
            plan["store"]["brace"] = json!({ "pegs": pegs });
        })
    };
    has(&soft(1), "brace-too-weak", Severity::Warning);
    lacks(&soft(2), "brace-too-weak");
}

#[test]
fn bad_figures_of_braces_soil_and_wind_are_one_sentence_each() {
    for (path, value, says) in [
        ("/ground/wind_m_per_s", json!(-3), "a wind that blows on earth"),
        ("/ground/wind_m_per_s", json!(900), "a wind that blows on earth"),
        ("/ground/fouled_share", json!(1.5), "above zero and at most one"),
        ("/ground/soil/wet_factor", json!(0), "above zero and at most one"),
        ("/ground/soil/pull_test", json!({ "height_m": 0.5 }), "ground.soil.pull_test.pull_n is 0"),
        ("/ground/soil/pull_test", json!({ "pull_kg": -2 }), "ground.soil.pull_test.pull_kg is -2"),
        ("/ground/soil/pull_test", json!({ "pull_kg": 4, "spikes": 0 }), "be at least one"),
        ("/ground/soil/corners_seen", json!([{ "at": [0, 0], "stood": true, "turn_deg": 400 }]), "up to 180 degrees"),
        ("/store/brace/guy_angle_deg", json!(95), "between 0 and 90 degrees"),
        ("/store/brace/pegs", json!(0), "be at least one"),
        ("/store/brace/pegs", json!(50), "be smaller than that"),
        ("/store/brace/safety_factor", json!(0), "be above zero"),
        ("/store/brace/carry_minutes", json!(-1), "be zero or above"),
        ("/runs/0/braces", json!([{ "at": [40, 40], "peg_length_m": 0 }]), "runs[0].braces[0].peg_length_m is 0"),
        ("/runs/0/braces", json!([{ "at": [40, 40], "guy_angle_deg": 0 }]), "between 0 and 90 degrees"),
    ] {
        let plan = with(|plan| {
            let (parent, key) = path.rsplit_once('/').unwrap();
            if plan.pointer(parent).is_none_or(Value::is_null) {
                plan["store"]["brace"] = json!({});
            }
            plan.pointer_mut(parent).unwrap()[key] = value.clone();
        });
        let said = has(&plan, "bad-value", Severity::Warning).message;
        assert!(said.contains(says), "{path} {value}: {said}");
        let why = has(&plan, "bad-value", Severity::Warning).why;
        assert_eq!(why.contains("0.2 is reckoned with"), path == "/ground/fouled_share", "{path}: {why}");
    }
}

#[test]
fn bad_figures_of_the_circuit_are_one_sentence_each_and_never_no_number() {
    let sound = |plan: &Value| {
        let worked = workup::workup(&plan::read(plan.to_string().as_bytes()).unwrap().plan, Depth::Full);
        for sample in worked.runs.iter().flat_map(|run| &run.volts).flat_map(|volts| &volts.samples) {
            let figures = [Some(sample.peak_kv), sample.animal_kv, sample.animal_j];
            assert!(figures.into_iter().flatten().all(f64::is_finite), "{sample:?}");
        }
        worked
    };
    let unit = |key: &str, value: Value| with(|plan| plan["store"]["energizers"][0][key] = value);
    // A figure that is missing is assumed in proportion; one that is none is said with its key.
    for key in ["stored_j", "no_load_kv", "kv_at_500_ohm", "output_j_at_500_ohm"] {
        let without = with(|plan| {
            plan["store"]["energizers"][0].as_object_mut().unwrap().remove(key);
        });
        sound(&without);
        for value in [0.0, -1.0] {
            let bad = unit(key, json!(value));
            let said = has(&bad, "bad-value", Severity::Warning).message;
            assert!(said.contains(&format!("store.energizers[0].{key}")), "{said}");
            assert!(sound(&bad).runs[0].volts.is_none());
        }
    }
    assert!(sound(&unit("kv_at_500_ohm", json!(9))).runs[0].volts.is_none());
    has(&unit("kv_at_500_ohm", json!(9)), "data-sheet", Severity::Warning);
    // Above the standard's limits: 9 J of 9 kV in a tenth of a millisecond is above both lines; said with its clause.
    let strong = with(|plan| {
        let (stored_j, output_j) = (14, 9);
        plan["store"]["energizers"][0] = json!({ "id": "big", "stored_j": stored_j, "no_load_kv": 9, "kv_at_500_ohm": 7.5, "output_j_at_500_ohm": output_j });
    });
    let said = has(&strong, "energizer-above-limit", Severity::Warning);
    assert!(said.message.contains("9.0 J") && said.source.contains("22.108") && said.source.contains("memory"));
    assert!(said.why.contains("22.108"), "{}", said.why);
    lacks(&quiet(), "energizer-above-limit");
    let long = with(|plan| {
        plan["store"]["energizers"][0] =
            json!({ "id": "big", "stored_j": 4, "no_load_kv": 0.5, "kv_at_500_ohm": 0.3, "output_j_at_500_ohm": 2.2 });
    });
    assert!(has(&long, "energizer-long-impulse", Severity::Warning).message.contains("10 ms"));
    lacks(&quiet(), "energizer-long-impulse");
    // No energizer: one is assumed, and said.
    let none = with(|plan| {
        plan["store"]["energizers"] = json!([]);
        plan["runs"][0].as_object_mut().unwrap().remove("energizer");
    });
    has(&none, "no-energizer", Severity::Note);
    assert!(sound(&none).runs[0].volts.is_some());
    lacks(&quiet(), "no-energizer");
    // A feed off the line.
    let off = with(|plan| plan["runs"][0]["feed_at"] = json!([20, 50]));
    assert_eq!(has(&off, "feed-off-line", Severity::Warning).at.len(), 2);
    sound(&off);
    lacks(&with(|plan| plan["runs"][0]["feed_at"] = json!([38, 50])), "feed-off-line");
    // No leakage, and far too much.
    let leaks = |leakage: f64| with(|plan| plan["runs"][0]["leakage_s_per_m"] = json!(leakage));
    has(&leaks(0.0), "leakage-zero", Severity::Note);
    has(&leaks(1.0), "leakage-enormous", Severity::Warning);
    has(&leaks(1e12), "bad-value", Severity::Warning);
    has(&leaks(-1.0), "bad-value", Severity::Warning);
    for leakage in [0.0, 1.0, 1e9, 1e12] {
        sound(&leaks(leakage));
    }
    lacks(&leaks(1e-4), "leakage-enormous");
    lacks(&leaks(2e-7), "leakage-zero");
    // Ground that is none.
    let ground = |ohm_m: f64| with(|plan| plan["ground"]["soil"] = json!({ "resistivity_ohm_m": ohm_m }));
    has(&ground(1e6), "resistivity-odd", Severity::Note);
    has(&ground(0.1), "resistivity-odd", Severity::Note);
    lacks(&ground(3000.0), "resistivity-odd");
    // All lines broken, by one fault or by several in one net.
    let broken = |faults: Value| with(|plan| plan["runs"][0]["faults"] = faults);
    let lines = plan::defaults::LIVE_LINE_HEIGHTS_M.len();
    let all = broken(json!([{ "at": [50, 40], "kind": "line_break", "lines": lines }]));
    assert_eq!(has(&all, "all-lines-broken", Severity::Warning).at.len(), 1);
    sound(&all);
    let few = |count: usize| json!({ "at": [50, 40], "kind": "line_break", "lines": count });
    has(&broken(json!([few(4), few(lines - 4)])), "all-lines-broken", Severity::Warning);
    lacks(&broken(json!([few(4), few(lines - 5)])), "all-lines-broken");
    // A stake on the net.
    let stake = with(|plan| plan["runs"][0]["earth_stakes"] = json!({ "count": 3, "at": [40, 50] }));
    has(&stake, "stake-near-net", Severity::Warning);
    // Earthed lines among the live ones at one height.
    let touching = with(|plan| plan["store"]["nets"][0]["earthed_line_heights_m"] = json!([0.1]));
    has(&touching, "live-lines", Severity::Warning);
    let in_ground = with(|plan| plan["store"]["nets"][0]["earthed_line_heights_m"] = json!([-0.1]));
    has(&in_ground, "bad-value", Severity::Warning);
}

/// Earth stakes whose places are stated: every one of them counts.
#[test]
fn earth_stakes_on_the_map_keep_off_what_they_should() {
    let placed = |places: Value| with(|plan| plan["runs"][0]["earth_stakes"] = json!({ "places": places }));
    assert_eq!(ids(&placed(json!([[30, 30], [33, 30], [30, 27]]))), ids(&quiet()), "as quiet as a row");
    // The third stands on the net.
    let net = has(&placed(json!([[30, 30], [33, 30], [40.2, 50]])), "stake-near-net", Severity::Warning);
    assert_eq!(net.at, [plan::Point::new(40.2, 50.0)]);
    // Two at one place, and more than anybody drives.
    let together = has(&placed(json!([[30, 30], [33, 30], [33, 30]])), "earth-stakes-together", Severity::Warning);
    assert!(together.message.contains("stakes 2 and 3"), "{}", together.message);
    lacks(&placed(json!([[30, 30], [33, 30], [33.1, 30]])), "earth-stakes-together");
    let many: Vec<Value> = (0..101).map(|number| json!([1 + number % 30, 1 + number / 30])).collect();
    let many = has(&placed(json!(many)), "earth-stakes-many", Severity::Warning);
    assert!(many.message.contains("101") && many.message.contains("100"), "{}", many.message);
    // Figures without end are no figures.
    lacks(&placed(json!([[30, 30], [1e300, 30]])), "earth-stakes-together");
    let far = has(&placed(json!([[30, 30], [1e300, 30]])), "bad-value", Severity::Warning);
    assert!(far.message.contains("runs[0].earth_stakes.places[1]"), "{}", far.message);
    // IEC 60335-2-76 Annex BB, read in reprints: 10 m between earths. A row may run either way; places do not.
    let earth = |east: f64, stakes: Value| {
        with(|plan| {
            plan["ground"]["hazards"] = json!([ { "kind": "foreign_earth", "path": [[east, 30]] } ]);
            plan["runs"][0]["earth_stakes"] = stakes;
        })
    };
    let three = json!({ "places": [[30, 30], [33, 30], [36, 30]] });
    lacks(&earth(19.9, three.clone()), "foreign-earth-near");
    let near = has(&earth(24.1, three), "foreign-earth-near", Severity::Danger);
    assert!(near.message.contains("5.9") && near.at.len() == 2, "{near:?}");
    lacks(&earth(45.0, json!({ "places": [[30, 30]] })), "foreign-earth-near");
    has(&earth(45.0, json!({ "places": [[30, 30], [30, 33], [36, 30]] })), "foreign-earth-near", Severity::Danger);
    // What is stated twice: what is on the map counts.
    let twice = |stakes: Value| with(|plan| plan["runs"][0]["earth_stakes"] = stakes);
    let differ =
        has(&twice(json!({ "count": 3, "places": [[30, 30], [33, 30]] })), "earth-stakes-differ", Severity::Note);
    assert!(differ.message.contains("3 earth stakes are stated and 2"), "{}", differ.message);
    lacks(&twice(json!({ "count": 2, "places": [[30, 30], [33, 30]] })), "earth-stakes-differ");
    has(&twice(json!({ "at": [20, 30], "places": [[30, 30], [33, 30]] })), "earth-stakes-differ", Severity::Note);
    lacks(&twice(json!({ "at": [30, 30], "places": [[30, 30], [33, 30]] })), "earth-stakes-differ");
}

/// Two fences that stand at once on energizers of their own.
#[test]
fn earths_of_two_fences_keep_apart() {
    let two = |places: Value, status: &str| {
        with(|plan| {
            plan["store"]["nets"][0]["count"] = json!(4);
            let mut second = plan["runs"][0].clone();
            second["id"] = json!("second");
            second["outline"] = json!([[70, 40], [95, 40], [95, 65], [70, 65]]);
            second["feed_at"] = json!([70, 40]);
            second["status"] = json!(status);
            second["coop"] = Value::Null;
            second["energizer"] = json!("small");
            second["earth_stakes"] = json!({ "places": places });
            let mut small = plan["store"]["energizers"][0].clone();
            small["id"] = json!("small");
            plan["store"]["energizers"].as_array_mut().unwrap().push(small);
            plan["runs"].as_array_mut().unwrap().push(second);
        })
    };
    // Swiss and French farm press: 10 m and more from other earths.
    let near = has(&two(json!([[60, 20], [39, 30]]), "standing"), "earths-near", Severity::Warning);
    assert!(near.message.contains("9.0") && near.at.len() == 2, "{}", near.message);
    lacks(&two(json!([[60, 20], [41, 30]]), "standing"), "earths-near");
    lacks(&two(json!([[60, 20], [39, 30]]), "option"), "earths-near");
}

/// One stake for brace and earth.
#[test]
fn a_brace_on_an_earth_stake_that_is_too_weak_is_said() {
    let of = |length_m: f64| {
        let mut plan = quiet();
        plan["store"]["earth_stake"] = json!({ "length_m": length_m, "diameter_m": 0.012 });
        plan["store"]["brace"] = json!({ "stake_length_m": 0.5 });
        plan["runs"][0]["braces"] = json!([ { "at": [40, 40] } ]);
        let off = plan::defaults::STAND_OFF_M / 2.0_f64.sqrt();
        plan["runs"][0]["earth_stakes"] = json!({ "places": [[40.0 - off, 40.0 - off], [30, 30]] });
        plan
    };
    let weak = has(&of(0.4), "earth-stake-weak", Severity::Warning);
    assert_eq!(weak.at.len(), 1);
    lacks(&of(1.0), "earth-stake-weak");
    lacks(&of(1.0), "stake-near-net");
}
