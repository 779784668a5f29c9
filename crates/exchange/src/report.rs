//! The report: everything that follows from a plan, as JSON for other people's scripts.
//!
//! The keys are a promise: add, never rename. SI units, the unit in the key, figures not rounded; what cannot
//! be computed is `null`. The types here are the file's own, apart from the workup's.

mod corners;
mod netting;
mod run;
mod said;
mod tape;
mod voltage;

use care::Findings;
use plan::Plan;
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;
use workup::Workup;

use run::{Run, run};
use said::{Assumed, FindingOut, assumed, finding};

/// What the first key of a report says.
pub const FORMAT: &str = "netfold-report";
/// The version that this program writes.
pub const VERSION: u32 = 1;

/// What follows from a plan.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Netfold report")]
struct Report {
    /// Always `netfold-report`.
    #[schemars(extend("const" = FORMAT))]
    format: &'static str,
    /// The version of the report.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// The plan's name.
    title: String,
    /// Each run, in the plan's order.
    runs: Vec<Run>,
    /// The soil that the braces reckon with; `null` where the plan says nothing new of soil, braces or wind.
    soil: Option<crate::bracing::keys::Soil>,
    /// Findings of the plan as a whole.
    findings: Vec<FindingOut>,
    /// What rests on a default.
    assumed: Vec<Assumed>,
}

/// JSON Schema (2020-12) of the report.
pub fn schema() -> Value {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    serde_json::to_value(settings.into_generator().into_root_schema_for::<Report>()).expect("a schema is JSON")
}

/// The report as JSON, with a line end; byte-identical for one plan.
pub fn json(plan: &Plan, workup: &Workup, findings: &Findings) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(&report(plan, workup, findings))
        .expect("a report has string keys and finite or null numbers only");
    bytes.push(b'\n');
    bytes
}

fn report(plan: &Plan, workup: &Workup, findings: &Findings) -> Report {
    let no_findings = Vec::new();
    Report {
        format: FORMAT,
        version: VERSION,
        title: plan.title.clone(),
        runs: plan
            .runs
            .iter()
            .zip(&workup.runs)
            .enumerate()
            .map(|(index, (stated, worked))| {
                let earths = crate::earths::of_run(plan, workup, index);
                run(plan, stated, worked, earths, findings.runs.get(index).unwrap_or(&no_findings))
            })
            .collect(),
        soil: crate::bracing::keys::soil(plan, workup),
        findings: findings.plan.iter().map(finding).collect(),
        assumed: assumed(plan),
    }
}
