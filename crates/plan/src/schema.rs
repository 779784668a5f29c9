//! The published description of a plan file, generated from the file's own types.

use serde_json::Value;

use crate::file::PlanFile;

/// JSON Schema (2020-12) of `.netfold.json`: it fixes the enums, allows unknown keys, needs `format` and
/// `version` only, and states defaults.
pub fn plan() -> Value {
    serde_json::to_value(schemars::schema_for!(PlanFile)).expect("a schema is JSON")
}
