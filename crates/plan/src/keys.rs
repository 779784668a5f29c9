//! Keys that the file has and this version does not know.
//!
//! Every one of them is kept and written back. One that is close to a known key of the same place is
//! most likely misspelt, and its statement would be passed over in silence: that is a note.

use serde_json::Value;

use crate::schema;

/// An unknown key that is close to a known one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownKey {
    /// Where it stands, such as `store.nets[0].lenght_m`.
    pub path: String,
    /// The known key that it may have meant.
    pub meant: String,
}

/// Similarity (Jaro-Winkler, 0 to 1) from which two keys are close; chosen so that one slip of the
/// finger in a key of six letters counts and two different words do not.
const CLOSE: f64 = 0.9;

/// Keys of the published file that later versions will work with; they are kept and are no slip of the pen.
const LATER: [&str; 10] = ["fault_prior", "high", "low", "meter", "net", "opened_m", "post", "stays", "today", "when"];

/// The unknown keys of a plan file that are close to a known one, in the order of the file's paths.
pub fn unknown(file: &Value) -> Vec<UnknownKey> {
    let schema = schema::plan();
    let mut found = Vec::new();
    walk(file, &schema, &schema, String::new(), &mut found);
    found
}

fn resolve<'a>(mut schema: &'a Value, root: &'a Value) -> &'a Value {
    loop {
        let target = schema.get("$ref").or_else(|| {
            // An optional part is `anyOf: [part, null]`.
            schema.get("anyOf")?.as_array()?.iter().find_map(|option| option.get("$ref"))
        });
        match target.and_then(Value::as_str).and_then(|name| root.pointer(name.trim_start_matches('#'))) {
            Some(next) => schema = next,
            None => return schema,
        }
    }
}

fn walk(value: &Value, schema: &Value, root: &Value, path: String, found: &mut Vec<UnknownKey>) {
    let schema = resolve(schema, root);
    match value {
        Value::Object(entries) => {
            let Some(known) = schema.get("properties").and_then(Value::as_object) else {
                return;
            };
            for (key, inner) in entries {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                if let Some(part) = known.get(key) {
                    walk(inner, part, root, path, found);
                } else if let Some(meant) = closest(key, known.keys()) {
                    found.push(UnknownKey { path, meant });
                }
            }
        }
        Value::Array(items) => {
            if let Some(part) = schema.get("items") {
                for (index, item) in items.iter().enumerate() {
                    // A long list of points has no keys to misspell.
                    if item.is_object() {
                        walk(item, part, root, format!("{path}[{index}]"), found);
                    }
                }
            }
        }
        _ => {}
    }
}

fn closest<'a>(key: &str, known: impl Iterator<Item = &'a String>) -> Option<String> {
    if key.len() > 64 || LATER.contains(&key) {
        return None;
    }
    known
        .map(|candidate| (strsim::jaro_winkler(key, candidate), candidate))
        .filter(|(likeness, _)| *likeness >= CLOSE)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate.clone())
}
