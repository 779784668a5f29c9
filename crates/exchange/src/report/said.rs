//! What the keeper should know, and what rests on a default.

use care::Finding;
use plan::{Plan, Point};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;

/// What the keeper should know.
#[derive(Serialize, JsonSchema)]
pub(super) struct FindingOut {
    /// Its stable id.
    id: &'static str,
    /// `danger`, `warning` or `note`.
    #[schemars(extend("enum" = ["danger", "warning", "note"]))]
    severity: &'static str,
    /// One sentence.
    message: String,
    /// What mends it; absent where the sentence says it.
    #[serde(skip_serializing_if = "String::is_empty")]
    mend: String,
    /// The figures behind it; absent where there are none.
    #[serde(skip_serializing_if = "String::is_empty")]
    why: String,
    /// Where: a point, or a list of points; `null` where it has no place.
    at: Option<Places>,
    /// The publication, `common practice, no source`, or `from memory`.
    source: &'static str,
}

/// One place or several.
#[derive(Serialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Places {
    /// One.
    One(Point),
    /// Several.
    Many(Vec<Point>),
}

/// What rests on a default.
#[derive(Serialize, JsonSchema)]
pub(super) struct Assumed {
    /// The key.
    key: String,
    /// The value that stands in.
    value: Value,
    /// Where it comes from.
    source: &'static str,
}

pub(super) fn finding(finding: &Finding) -> FindingOut {
    FindingOut {
        id: finding.id,
        severity: finding.severity.name(),
        message: finding.message.clone(),
        mend: finding.mend.clone(),
        why: finding.why.clone(),
        at: match finding.at.as_slice() {
            [] => None,
            [one] => Some(Places::One(*one)),
            many => Some(Places::Many(many.to_vec())),
        },
        source: finding.source,
    }
}

/// Every default that the plan rests on.
pub(super) fn assumed(plan: &Plan) -> Vec<Assumed> {
    let all = plan::assumed(plan).into_iter();
    all.map(|assumed| Assumed { key: assumed.key, value: assumed.value, source: assumed.source }).collect()
}
