//! What a report tells, held against its published schema.

use serde_json::Value;

pub(crate) fn keeps_to_its_schema(report: &Value) {
    let validator = jsonschema::validator_for(&exchange::report::schema()).unwrap();
    let errors: Vec<String> = validator.iter_errors(report).map(|error| error.to_string()).collect();
    assert!(errors.is_empty(), "{errors:?}");
}
