//! Rules for earth stakes whose places are stated, beside nets, other earths and braces.

use crate::quiet::{has, ids, lacks, quiet, with};
use care::Severity;
use serde_json::{Value, json};

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
    assert_eq!(many.at, [plan::Point::new(11.0, 4.0)], "the first that is too many");
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
    assert!(differ.message.contains("is stated as 3, and on the map it is 2"), "{}", differ.message);
    lacks(&twice(json!({ "count": 2, "places": [[30, 30], [33, 30]] })), "earth-stakes-differ");
    has(&twice(json!({ "at": [20, 30], "places": [[30, 30], [33, 30]] })), "earth-stakes-differ", Severity::Note);
    lacks(&twice(json!({ "at": [30, 30], "places": [[30, 30], [33, 30]] })), "earth-stakes-differ");
}

/// Two fences that stand at once on energizers of their own.
#[test]
fn earths_of_two_fences_keep_apart() {
    let rows = |first: Value, second_stakes: Value, status: &str| {
        with(|plan| {
            plan["store"]["nets"][0]["count"] = json!(4);
            let mut second = plan["runs"][0].clone();
            second["id"] = json!("second");
            second["outline"] = json!([[70, 40], [95, 40], [95, 65], [70, 65]]);
            second["feed_at"] = json!([70, 40]);
            second["status"] = json!(status);
            second["coop"] = Value::Null;
            second["energizer"] = json!("small");
            second["earth_stakes"] = second_stakes;
            plan["runs"][0]["earth_stakes"] = first;
            let mut small = plan["store"]["energizers"][0].clone();
            small["id"] = json!("small");
            plan["store"]["energizers"].as_array_mut().unwrap().push(small);
            plan["runs"].as_array_mut().unwrap().push(second);
        })
    };
    let own = json!({ "places": [[30, 30]] });
    let two = |places: Value, status: &str| rows(own.clone(), json!({ "places": places }), status);
    // Swiss and French farm press: 10 m and more from other earths.
    let near = has(&two(json!([[60, 20], [39, 30]]), "standing"), "earths-near", Severity::Warning);
    assert!(near.message.contains("9.0") && near.at.len() == 2, "{}", near.message);
    lacks(&two(json!([[60, 20], [41, 30]]), "standing"), "earths-near");
    lacks(&two(json!([[60, 20], [39, 30]]), "option"), "earths-near");
    // Two rows may run toward each other: 30 m between their first stakes, 12 m and 9 m of row leave 9 m.
    let row = |count: u32, east: f64| json!({ "count": count, "spacing_m": 3, "at": [east, 30] });
    let toward = has(&rows(row(5, 30.0), row(4, 60.0), "standing"), "earths-near", Severity::Warning);
    assert!(toward.message.contains("may come within 9.0") && toward.at.len() == 2, "{}", toward.message);
    lacks(&rows(row(4, 30.0), row(4, 60.0), "standing"), "earths-near");
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
