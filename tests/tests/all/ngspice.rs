//! The pulse against ngspice, a general circuit simulator: plan in, volts out, through the whole house.
//!
//! `tests/reference/fences.json` holds fences as plan files with the volts that ngspice finds on a netlist
//! written from the model's description alone (`tests/reference/fences.py`). Source: ngspice, recomputed live
//! by `.ci/run`.
//!
//! `tests/reference/fences_exact.json` holds fifty of them, and eight of two runs on one energizer, by the matrix
//! exponential of SciPy, on sections as coarse as the model's page allows: what is left is the integration in time alone.

use serde_json::Value;
use workup::{Depth, Post, RunWorkup, Sample, SampleOf, Workup};

/// Of the value, or of 0.5 % of the no-load figure where that is more.
const TOLERANCE: f64 = 0.002;
/// The same against the solution without steps.
const EXACT_TOLERANCE: f64 = 0.001;

struct Tally {
    name: String,
    no_load: f64,
    stored_j: f64,
    worst: (f64, String),
    compared: usize,
}

impl Tally {
    fn near(&mut self, what: &str, got: f64, want: f64, floor: f64) {
        let off = (got - want).abs() / want.abs().max(floor);
        self.compared += 1;
        if off > self.worst.0 || off.is_nan() {
            self.worst = (off, format!("{}: {what}: {got:.6} here, {want:.6} outside", self.name));
        }
    }

    fn new(name: String, fence: &Value) -> Self {
        let sheet = &fence["plan"]["store"]["energizers"][0];
        let (no_load, stored_j) = (number(&sheet["no_load_kv"]), number(&sheet["stored_j"]));
        Self { name, no_load, stored_j, worst: (0.0, String::new()), compared: 0 }
    }

    /// Every post of a line stands where it should, with its volts.
    fn posts(&mut self, of: &str, posts: &[Post], ring_m: Option<f64>, samples: &[Sample], want: &Value) {
        let want = want.as_array().unwrap();
        assert_eq!(posts.len(), want.len(), "{}: posts of {of}", self.name);
        for (index, (post, expected)) in posts.iter().zip(want).enumerate() {
            let label = format!("{of}, net {} post {}", post.net, post.post);
            let named = (number(&expected["net"]) as usize, number(&expected["post"]) as usize);
            assert_eq!((post.net, post.post), named, "{}: {label}", self.name);
            let apart_m = (post.along_m - number(&expected["along_m"])).abs();
            let round_m = ring_m.map_or(f64::INFINITY, |line_m| (apart_m - line_m).abs());
            assert!(apart_m.min(round_m) < 1e-3, "{}: {label} stands elsewhere", self.name);
            self.kv(&label, samples[index].peak_kv, number(&expected["peak_kv"]));
        }
    }

    fn animals(&mut self, run: &RunWorkup, want: &Value) {
        for expected in want.as_array().unwrap() {
            let (label, sample) = sample_at(run, expected);
            self.kv(&format!("animal at {label}"), sample.animal_kv.unwrap(), number(&expected["animal_kv"]));
            // Joules of a pulse that 0.5 % of the no-load volts would bring are no figure to compare.
            let floor_j = 1e-4 * self.stored_j;
            let what = format!("animal at {label}, joules");
            self.near(&what, sample.animal_j.unwrap(), number(&expected["animal_j"]), floor_j);
        }
    }

    fn kv(&mut self, what: &str, got: f64, want: f64) {
        // What rings above the no-load figure is not credited.
        self.near(what, got, want.min(self.no_load), 0.005 * self.no_load);
    }
}

#[test]
fn peaks_earth_and_animals_agree_with_ngspice() {
    let fences = table("reference/fences.json");
    assert!(fences.len() >= 324, "only {} fences", fences.len());
    let mut worst: Vec<(f64, String)> = Vec::new();
    let mut compared = 0;
    for fence in &fences {
        let name = fence["name"].as_str().unwrap().to_owned();
        let worked = worked(fence);
        let run = &worked.runs[0];
        assert!(worked.runs.iter().all(|run| run.troubles.is_empty()), "{name}: {:?}", run.troubles);
        let (lay, volts) = (run.lay.as_ref().unwrap(), run.volts.as_ref().unwrap());
        let want = &fence["expected"];
        let mut tally = Tally::new(name, fence);
        tally.near("line_m", lay.line_m, number(&want["line_m"]), 1.0);
        assert!((lay.spare_m - number(&want["spare_m"])).abs() < 1e-5, "{}: spare", tally.name);
        assert!((lay.short_m - number(&want["short_m"])).abs() < 1e-5, "{}: short", tally.name);
        tally.near("earth_ohm", volts.earth_ohm, number(&want["earth_ohm"]), 1e-9);
        tally.kv("feed_kv", volts.feed_kv, number(&want["feed_kv"]));
        tally.kv("earth_kv", volts.earth_kv, number(&want["earth_kv"]));
        tally.posts("line", &lay.posts, Some(lay.line_m), &volts.samples, &want["posts"]);
        for (branch, expected) in want["branches"].as_array().into_iter().flatten().enumerate() {
            let laid = &lay.branches[branch];
            tally.posts(&format!("branch {branch}"), &laid.posts, None, &volts.branches[branch], expected);
        }
        if want["second"].is_array() {
            let other = &worked.runs[1];
            let (lay, volts) = (other.lay.as_ref().unwrap(), other.volts.as_ref().unwrap());
            tally.posts("second run", &lay.posts, Some(lay.line_m), &volts.samples, &want["second"]);
        }
        let faults: Vec<&Sample> =
            volts.samples.iter().filter(|sample| matches!(sample.of, SampleOf::Fault(_))).collect();
        for (fault, expected) in faults.iter().zip(want["faults"].as_array().into_iter().flatten()) {
            if let Some(peak_kv) = expected["peak_kv"].as_f64() {
                tally.kv("fault", fault.peak_kv, peak_kv);
            }
        }
        tally.animals(run, &want["animals"]);
        compared += tally.compared;
        worst.push(tally.worst);
    }
    tell(worst, compared, TOLERANCE);
}

#[test]
fn peaks_and_animals_agree_with_the_matrix_exponential() {
    let plans = table("reference/fences.json");
    let rows = table("reference/fences_exact.json");
    assert!(rows.len() >= 58, "only {} fences", rows.len());
    let mut of_second = 0;
    let mut worst: Vec<(f64, String)> = Vec::new();
    let mut compared = 0;
    for row in &rows {
        let fence = plans.iter().find(|fence| fence["name"] == row["name"]).unwrap();
        let worked = worked(fence);
        let run = &worked.runs[0];
        let mut tally = Tally::new(row["name"].as_str().unwrap().to_owned(), fence);
        for expected in row["expected"]["posts"].as_array().unwrap() {
            let number_of_run = expected["run"].as_u64().unwrap_or(0) as usize;
            of_second += number_of_run;
            let (label, sample) = sample_at(&worked.runs[number_of_run], expected);
            tally.kv(&format!("run {number_of_run} {label}"), sample.peak_kv, number(&expected["peak_kv"]));
        }
        tally.animals(run, &row["expected"]["animals"]);
        compared += tally.compared;
        worst.push(tally.worst);
    }
    assert!(of_second > 100, "only {of_second} posts of a second run on the same energizer");
    tell(worst, compared, EXACT_TOLERANCE);
}

fn table(path: &str) -> Vec<Value> {
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn worked(fence: &Value) -> Workup {
    let plan = plan::read(fence["plan"].to_string().as_bytes()).unwrap().plan;
    workup::workup(&plan, Depth::Full)
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

/// The sample of a post on the line, or on a branch, of a row that names it.
fn sample_at<'a>(run: &'a RunWorkup, row: &Value) -> (String, &'a Sample) {
    let (lay, volts) = (run.lay.as_ref().unwrap(), run.volts.as_ref().unwrap());
    let place = (number(&row["net"]) as usize, number(&row["post"]) as usize);
    let (posts, samples) = match row["branch"].as_u64() {
        None => (&lay.posts, &volts.samples),
        Some(branch) => (&lay.branches[branch as usize].posts, &volts.branches[branch as usize]),
    };
    let index = posts.iter().position(|post| (post.net, post.post) == place).unwrap();
    (format!("branch {} net {} post {}", row["branch"], place.0, place.1), &samples[index])
}

/// Prints the worst and fails where any is off.
fn tell(mut worst: Vec<(f64, String)>, compared: usize, tolerance: f64) {
    worst.sort_by(|a, b| b.0.total_cmp(&a.0));
    for (off, what) in worst.iter().take(8) {
        println!("{:.4} %  {what}", off * 100.0);
    }
    println!("{} fences, {compared} figures", worst.len());
    let off: Vec<_> = worst.iter().filter(|(off, _)| off.is_nan() || *off > tolerance).collect();
    assert!(off.is_empty(), "{} fences off: {off:#?}", off.len());
}
