//! The pulse against ngspice, a general circuit simulator: plan in, volts out, through the whole house.
//!
//! `tests/reference/fences.json` holds fences as plan files with the volts that ngspice finds on a netlist
//! written from the model's description alone (`tests/reference/fences.py`). Source: ngspice, recomputed live
//! by `.ci/run`.
#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    clippy::print_stdout,
    reason = "a test may stop, read files and tell"
)]

use serde_json::Value;
use workup::{Depth, Sample, SampleOf};

/// Of the value, or of 0.5 % of the no-load figure where that is more.
const TOLERANCE: f64 = 0.002;

struct Tally {
    name: String,
    no_load: f64,
    worst: (f64, String),
    compared: usize,
}

impl Tally {
    fn near(&mut self, what: &str, got: f64, want: f64, floor: f64) {
        let off = (got - want).abs() / want.abs().max(floor);
        self.compared += 1;
        if off > self.worst.0 || off.is_nan() {
            self.worst = (off, format!("{}: {what}: {got:.6} here, {want:.6} in ngspice", self.name));
        }
    }

    fn kv(&mut self, what: &str, got: f64, want: f64) {
        // What rings above the no-load figure is not credited.
        self.near(what, got, want.min(self.no_load), 0.005 * self.no_load);
    }
}

#[test]
fn peaks_earth_and_animals_agree_with_ngspice() {
    let fences: Vec<Value> = serde_json::from_str(&std::fs::read_to_string("reference/fences.json").unwrap()).unwrap();
    assert!(fences.len() >= 60, "only {} fences", fences.len());
    let mut worst: Vec<(f64, String)> = Vec::new();
    let mut compared = 0;
    for fence in &fences {
        let plan = plan::read(fence["plan"].to_string().as_bytes()).unwrap().plan;
        let worked = workup::workup(&plan, Depth::Full);
        let name = fence["name"].as_str().unwrap().to_owned();
        let run = &worked.runs[0];
        assert!(run.troubles.is_empty(), "{name}: {:?}", run.troubles);
        let (lay, volts) = (run.lay.as_ref().unwrap(), run.volts.as_ref().unwrap());
        let want = &fence["expected"];
        let no_load = fence["plan"]["store"]["energizers"][0]["no_load_kv"].as_f64().unwrap();
        let mut tally = Tally { name, no_load, worst: (0.0, String::new()), compared: 0 };
        let number = |value: &Value| value.as_f64().unwrap();
        tally.near("line_m", lay.line_m, number(&want["line_m"]), 1.0);
        assert!((lay.spare_m - number(&want["spare_m"])).abs() < 1e-5, "{}: spare", tally.name);
        assert!((lay.short_m - number(&want["short_m"])).abs() < 1e-5, "{}: short", tally.name);
        tally.near("earth_ohm", volts.earth_ohm, number(&want["earth_ohm"]), 1e-9);
        tally.kv("feed_kv", volts.feed_kv, number(&want["feed_kv"]));
        tally.kv("earth_kv", volts.earth_kv, number(&want["earth_kv"]));
        let posts = want["posts"].as_array().unwrap();
        assert_eq!(posts.len(), lay.posts.len(), "{}: posts", tally.name);
        for (index, (post, expected)) in lay.posts.iter().zip(posts).enumerate() {
            let label = format!("net {} post {}", post.net, post.post);
            assert_eq!(
                (post.net as u64, post.post as u64),
                (expected["net"].as_u64().unwrap(), expected["post"].as_u64().unwrap())
            );
            let apart = (post.along_m - number(&expected["along_m"])).abs();
            assert!(apart.min((apart - lay.line_m).abs()) < 1e-3, "{}: {label} stands elsewhere", tally.name);
            tally.kv(&label, volts.samples[index].peak_kv, number(&expected["peak_kv"]));
        }
        let faults: Vec<&Sample> =
            volts.samples.iter().filter(|sample| matches!(sample.of, SampleOf::Fault(_))).collect();
        for (fault, expected) in faults.iter().zip(want["faults"].as_array().into_iter().flatten()) {
            if let Some(peak_kv) = expected["peak_kv"].as_f64() {
                tally.kv("fault", fault.peak_kv, peak_kv);
            }
        }
        for expected in want["animals"].as_array().unwrap() {
            let place = (expected["net"].as_u64().unwrap() as usize, expected["post"].as_u64().unwrap() as usize);
            let index = lay.posts.iter().position(|post| (post.net, post.post) == place).unwrap();
            let sample = &volts.samples[index];
            let label = format!("animal at net {} post {}", place.0, place.1);
            tally.kv(&label, sample.animal_kv.unwrap(), number(&expected["animal_kv"]));
            // Joules of a pulse that 0.5 % of the no-load volts would bring are no figure to compare.
            let floor_j = 1e-4 * number(&fence["plan"]["store"]["energizers"][0]["stored_j"]);
            tally.near(&format!("{label}, joules"), sample.animal_j.unwrap(), number(&expected["animal_j"]), floor_j);
        }
        compared += tally.compared;
        worst.push(tally.worst);
    }
    worst.sort_by(|a, b| b.0.total_cmp(&a.0));
    for (off, what) in worst.iter().take(8) {
        println!("{:.4} %  {what}", off * 100.0);
    }
    println!("{} fences, {compared} figures", fences.len());
    let off: Vec<_> = worst.iter().filter(|(off, _)| off.is_nan() || *off > TOLERANCE).collect();
    assert!(off.is_empty(), "{} fences off: {off:#?}", off.len());
}
