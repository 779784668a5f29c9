//! Every rule, on a plan that breaks it and on one that just keeps it.

use crate::quiet::{findings, findings_in, has, ids, lacks, quiet, with};
use care::Severity;
use serde_json::{Value, json};
use words::{Language, Units, Words};
use workup::Depth;

const GERMAN: Words = Words { language: Language::German, units: Units::Metric };

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
fn what_an_open_run_ends_on_is_looked_at() {
    // From the south side round to the west side of a wall that stands along the north.
    let open = |walls: Value| {
        with(|plan| {
            plan["runs"][0]["outline"] = json!([[40, 70], [40, 40], [70, 40], [70, 70]]);
            plan["runs"][0]["closed"] = json!(false);
            plan["walls"] = walls;
        })
    };
    let all = ["end-to-look-at", "end-holds-no-birds", "end-in-the-open", "ends-apart"];
    let wall = |holds: Value| json!({ "path": [[30, 70.4], [90, 70.4]], "holds_birds": holds, "kind": "hedge" });
    let holds = open(json!([wall(json!(true))]));
    for id in &all {
        lacks(&holds, id);
    }
    for id in &all {
        lacks(&quiet(), id);
    }
    let unknown = open(json!([{ "path": [[30, 70.4], [90, 70.4]], "name": "Old hedge" }]));
    let said = has(&unknown, "end-to-look-at", Severity::Note);
    assert_eq!((said.at.len(), ids(&unknown).iter().filter(|id| **id == "end-to-look-at").count()), (2, 1));
    assert!(said.message.starts_with("Old hedge at the end of ") && !said.mend.is_empty(), "{}", said.message);
    let not = has(&open(json!([wall(json!(false))])), "end-holds-no-birds", Severity::Warning);
    assert!(not.message.starts_with("The hedge at the end of "), "{}", not.message);
    // Farther off than half a metre nothing is ended on.
    let off = open(json!([{ "path": [[30, 70.6], [90, 70.6]], "holds_birds": true }]));
    assert_eq!(has(&off, "end-in-the-open", Severity::Warning).at.len(), 2);
    let one = open(json!([{ "path": [[30, 70], [50, 70]], "holds_birds": true }]));
    assert_eq!(has(&one, "end-in-the-open", Severity::Warning).at, [plan::Point::new(70.0, 70.0)]);
    // Of two at one place that one counts which holds birds.
    let beside = open(json!([wall(json!(false)), wall(json!(true))]));
    for id in &all {
        lacks(&beside, id);
    }
    // A line without a coop may do no more than part the ground; one of a past run says nothing.
    let mut parts = open(json!([]));
    parts["runs"][0]["coop"] = Value::Null;
    lacks(&parts, "end-in-the-open");
    let mut past = open(json!([]));
    past["runs"][0]["status"] = json!("past");
    lacks(&past, "end-in-the-open");
    // Ends that meet are no ends.
    let shut = with(|plan| {
        plan["runs"][0]["outline"] = json!([[40, 40], [65, 40], [65, 65], [40, 65], [40, 40.3]]);
        plan["runs"][0]["closed"] = json!(false);
    });
    lacks(&shut, "end-in-the-open");
    // Netting that stands holds birds as well.
    let mut against = open(json!([]));
    let mut other = against["runs"][0].clone();
    other["id"] = json!("other");
    other["coop"] = Value::Null;
    other["outline"] = json!([[35, 70], [85, 70]]);
    against["store"]["nets"][0]["count"] = json!(9);
    against["runs"].as_array_mut().unwrap().push(other);
    lacks(&against, "end-in-the-open");
    against["runs"][1]["status"] = json!("option");
    has(&against, "end-in-the-open", Severity::Warning);
    // Two walls that do not meet, and the same with one that joins them.
    let walls = |more: Value| {
        let mut walls = vec![
            json!({ "path": [[40, 69], [40, 90]], "holds_birds": true, "name": "West" }),
            json!({ "path": [[70, 69], [70, 90]], "holds_birds": true, "name": "East" }),
        ];
        walls.extend(more.as_array().unwrap().clone());
        open(json!(walls))
    };
    assert!(has(&walls(json!([])), "ends-apart", Severity::Note).message.contains("(West, East)"));
    let joined = walls(json!([{ "path": [[40, 90], [70, 90]], "holds_birds": true }]));
    for id in &all {
        lacks(&joined, id);
    }
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
    // Its middle inside, a wall of it over the net at 65 m east: 2 m wide it reaches a metre to either side.
    let coop = |east: f64| {
        with(|plan| {
            plan["coop"]["at"] = json!([east, 52]);
            plan["coop"]["heading_deg"] = json!(0);
            plan["coop"]["width_m"] = json!(2);
        })
    };
    lacks(&quiet(), "coop-cut");
    for (east, is_cut) in [(63.9, false), (64.5, true), (65.0, true)] {
        let found = findings_in(&coop(east), GERMAN).into_iter().any(|one| one.id == "coop-cut");
        assert_eq!(found, is_cut, "{east}");
    }
    let cut = has(&coop(64.5), "coop-cut", Severity::Warning);
    assert!(cut.message.contains(" stands in the net of "), "{}", cut.message);
    lacks(&coop(66.5), "coop-cut");
    let mut past = coop(64.5);
    past["runs"][0]["status"] = json!("past");
    lacks(&past, "coop-cut");
    // A run that names no coop has the one that stands in it, and a flock that stands in none is asked about.
    let unnamed = |at: [i32; 2]| {
        with(|plan| {
            plan["runs"][0]["coop"] = Value::Null;
            plan["coop"] = json!({ "id": "house", "at": at, "birds": 100 });
        })
    };
    has(&unnamed([20, 20]), "coop-in-no-run", Severity::Warning);
    let one =
        |plan: &Value| findings_in(plan, GERMAN).into_iter().find(|one| one.id == "coop-in-no-run").unwrap().message;
    let mut alone = unnamed([20, 20]);
    alone["coop"]["birds"] = json!(1);
    assert!(
        has(&alone, "coop-in-no-run", Severity::Warning)
            .message
            .starts_with("The coop stands in no run, and its one bird with it")
    );
    assert!(one(&alone).contains("auch nicht sein einziges Tier"), "{}", one(&alone));
    lacks(&unnamed([20, 20]), "coop-outside");
    lacks(&unnamed([50, 50]), "coop-in-no-run");
    lacks(&quiet(), "coop-in-no-run");
    // One beside the run's own is in it all the same; outside it is told by its number where it has no name.
    let second = |at: [i32; 2]| with(|plan| plan["other_coops"] = json!([{ "id": "coop-2", "at": at, "birds": 40 }]));
    lacks(&second([50, 50]), "coop-in-no-run");
    let outside = has(&second([20, 20]), "coop-in-no-run", Severity::Warning);
    assert!(outside.message.starts_with("Coop 2 stands in no run, and its flock of 40"), "{}", outside.message);
    assert!(one(&second([20, 20])).starts_with("Stall 2 steht in keinem Auslauf"), "{}", one(&second([20, 20])));
}

/// What is not named stands in a sentence as what it is; of several each has the number that lists give it.
#[test]
fn things_without_a_name_are_told_apart_in_sentences() {
    let square = |at: f64| json!([[at, 50], [at + 1.0, 50], [at + 1.0, 51], [at, 51]]);
    let message = |plan: &Value, words: Words, id: &str| -> Vec<String> {
        let found = findings_in(plan, words).into_iter().filter(|finding| finding.id == id);
        found.map(|finding| finding.message).collect()
    };
    // Keep-outs and water: one of each, then two of one beside a third that is named, then water before a keep-out.
    let ground = |keep_outs: Value| with(|plan| plan["ground"]["keep_outs"] = keep_outs);
    let [oak, pond] = [
        json!({ "outline": square(66.5), "clearance_m": 3 }),
        json!({ "outline": square(38.0), "clearance_m": 3, "water": true }),
    ];
    let said = |plan: &Value, words| message(plan, words, "keep-out-touched");
    let one_of_each = ground(json!([oak, pond]));
    assert!(said(&one_of_each, Words::default())[0].contains("too near to the keep-out: keep"));
    assert!(said(&one_of_each, Words::default())[1].contains("too near to the water: keep"));
    assert!(said(&one_of_each, GERMAN)[1].contains("zu nahe an das Wasser heran"));
    let two = ground(
        json!([oak, { "name": "Shed", "outline": square(90.0) }, { "outline": square(66.0), "clearance_m": 3 }]),
    );
    assert!(said(&two, Words::default())[0].contains("too near to keep-out 1: keep"), "{:?}", said(&two, GERMAN));
    assert!(said(&two, Words::default())[1].contains("too near to keep-out 3: keep"));
    assert!(said(&two, GERMAN)[1].contains("zu nahe an Sperrfläche 3 heran"));
    let pond_first = ground(json!([pond, oak, { "outline": square(66.0), "clearance_m": 3 }]));
    assert!(said(&pond_first, Words::default())[1].contains("too near to keep-out 1: keep"));
    // At the beginning of a sentence with a capital.
    let flat = |at: f64| json!({ "outline": [[at, 50], [at + 1.0, 50]] });
    let few = |plan: &Value, words| message(plan, words, "outline-few-corners");
    assert!(few(&ground(json!([flat(70.0)])), Words::default())[0].starts_with("The keep-out has 2 corners"));
    assert!(few(&ground(json!([flat(70.0), flat(80.0)])), Words::default())[1].starts_with("Keep-out 2 has 2 corners"));
    let point = json!({ "outline": [[70, 50]] });
    assert!(few(&ground(json!([point])), Words::default())[0].starts_with("The keep-out has 1 corner and needs 3"));
    assert!(few(&ground(json!([point])), GERMAN)[0].starts_with("Die Sperrfläche: 1 von 3 "));
    // Hazards: numbered among those of their kind.
    let line = json!({ "kind": "overhead_line", "path": [[50, 0], [50, 100]], "line_voltage_kv": 11 });
    let way = json!({ "kind": "public_way", "path": [] });
    let hazards = |hazards: Value| with(|plan| plan["ground"]["hazards"] = hazards);
    let crossed = |plan: &Value, words| message(plan, words, "overhead-line-crossed");
    assert!(crossed(&hazards(json!([line, way])), Words::default())[0].contains("beneath the overhead line: keep"));
    assert!(crossed(&hazards(json!([line, way, line])), Words::default())[1].contains("beneath overhead line 2: keep"));
    assert!(crossed(&hazards(json!([line, way, line])), GERMAN)[1].contains("unterquert Freileitung 2:"));
    let lost = message(&hazards(json!([way])), GERMAN, "hazard-without-path");
    assert!(lost[0].starts_with("Der öffentliche Weg ist auf der Karte nirgends"), "{lost:?}");
    // Damp ground.
    let damp = json!({ "outline": square(20.0), "resistivity_ohm_m": 900 });
    let drier = |places: Value, words| message(&with(|plan| plan["ground"]["damp"] = places), words, "damp-drier");
    assert!(drier(json!([damp]), Words::default())[0].starts_with("The damp place is stated to have 900"));
    assert!(drier(json!([damp, damp]), Words::default())[1].starts_with("Damp place 2 is stated to have 900"));
    assert!(drier(json!([damp, damp]), GERMAN)[1].starts_with("Feuchte Stelle 2: Angegeben sind 900"));
    // What an open run ends on: amid a sentence it has no capital.
    let open = |walls: Value| {
        with(|plan| {
            plan["runs"][0]["outline"] = json!([[40, 70], [40, 40], [70, 40], [70, 70]]);
            plan["runs"][0]["closed"] = json!(false);
            plan["walls"] = walls;
        })
    };
    let wall = |east: f64, kind: &str| json!({ "path": [[east, 70.2], [east + 1.0, 70.2]], "kind": kind, "holds_birds": true });
    let apart = |plan: &Value, words| message(plan, words, "ends-apart");
    let other = apart(&open(json!([wall(39.5, "hedge"), wall(69.5, "wall")])), Words::default());
    assert!(other[0].contains("(the hedge, the wall)"), "{other:?}");
    let alike = open(json!([wall(39.5, "hedge"), wall(69.5, "hedge")]));
    assert!(apart(&alike, Words::default())[0].contains("(hedge 1, hedge 2)"));
    assert!(apart(&alike, GERMAN)[0].contains("(Hecke 1, Hecke 2)"));
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
    let unchecked = has(&earth(json!({ "count": 1 })), "foreign-earth-unchecked", Severity::Warning);
    assert_eq!(unchecked.at, [plan::Point::new(10.0, 30.0)], "the earth that is not this fence's");
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
    for (from_m, to_m, key) in [(-2, 9, "from_m"), (2, -9, "to_m")] {
        let off = tried("leakage_zones", json!([{ "from_m": from_m, "to_m": to_m, "s_per_m": 1e-4 }]));
        let said = has(&off, "bad-value", Severity::Warning).message;
        assert!(said.contains(&format!("leakage_zones[0].{key}")), "{said}");
    }
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
fn standing_runs_that_lie_over_each_other_are_said_once() {
    let second = |outline: Value, status: &str| {
        with(|plan| {
            plan["store"]["nets"][0]["count"] = json!(4);
            let mut run = plan["runs"][0].clone();
            run["id"] = json!("other");
            run["status"] = json!(status);
            run["coop"] = Value::Null;
            run["outline"] = outline;
            plan["runs"].as_array_mut().unwrap().push(run);
        })
    };
    let square = |east: f64, north: f64| {
        json!([[east, north], [east + 25.0, north], [east + 25.0, north + 25.0], [east, north + 25.0]])
    };
    // The closed form: 5 m of 25 m, and a corner of 5 m by 5 m.
    let over = second(square(60.0, 40.0), "standing");
    let said = has(&over, "runs-overlap", Severity::Warning);
    assert!(said.message.contains("other and run ") && said.message.contains("125 m²"), "{}", said.message);
    assert_eq!((said.other.as_deref(), said.at.len()), (Some("run"), 1));
    assert!((60.0..65.0).contains(&said.at[0].east_m) && (40.0..65.0).contains(&said.at[0].north_m), "{:?}", said.at);
    assert_eq!(ids(&over).iter().filter(|id| **id == "runs-overlap").count(), 1);
    assert!(has(&second(square(60.0, 60.0), "standing"), "runs-overlap", Severity::Warning).message.contains("25 m²"));
    let within = json!([[45, 45], [55, 45], [55, 55], [45, 55]]);
    assert!(has(&second(within.clone(), "standing"), "runs-overlap", Severity::Warning).message.contains("100 m²"));
    let german = findings_in(&over, GERMAN).into_iter().find(|one| one.id == "runs-overlap").unwrap();
    assert!(german.message.contains("125 m² Boden gemeinsam") && !german.mend.is_empty(), "{}", german.message);
    // A side in common, drawn twice and not quite alike, a corner in common, and ground apart.
    for (east, north) in [(65.0, 40.0), (64.8, 40.0), (65.0, 65.0), (65.0, 50.0), (70.0, 40.0)] {
        lacks(&second(square(east, north), "standing"), "runs-overlap");
    }
    for status in ["option", "past"] {
        lacks(&second(square(60.0, 40.0), status), "runs-overlap");
    }
    // An open line may part the ground of a run.
    let mut parts = second(json!([[40, 50], [65, 50]]), "standing");
    parts["runs"][1]["closed"] = json!(false);
    lacks(&parts, "runs-overlap");
}
