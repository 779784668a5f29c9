//! Rules for what cannot be built, for soil, wind and braces, and for figures that cannot be: one sentence each.

use crate::quiet::{has, lacks, quiet, with};
use care::Severity;
use serde_json::{Value, json};
use workup::Depth;

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
