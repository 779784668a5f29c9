//! `.netfold.json`: bytes to a plan and back.
//!
//! Refused is what is not a plan, cut short, newer, of a wrong type, not finite, or names an id twice or
//! one that is not there. What reads but cannot be built (a net of no length, an outline that crosses
//! itself) is no matter of this page: it becomes a finding. No file is touched here.

mod mirror;
mod v1;

use std::collections::BTreeSet;

pub(crate) use mirror::Mirror;
pub(crate) use v1::{
    Coop as CoopFile, Damp as DampFile, Gateway as GatewayFile, Hazard as HazardFile, HeightGrid as HeightGridFile,
    KeepOut as KeepOutFile, Label as LabelFile, Origin as OriginFile, Plan as PlanFile, Reading as ReadingFile,
    Run as RunFile, Season as SeasonFile, Shade as ShadeFile, Soil as SoilFile, SpotHeight as SpotHeightFile,
    Store as StoreFile, TapePoint as TapePointFile, Underlay as UnderlayFile, Wall as WallFile,
};

use crate::keys::{self, UnknownKey};
use crate::model::{PinKind, Plan, Point};

/// What the first key of a plan says.
pub const FORMAT: &str = "netfold-plan";
/// The version that this program writes.
pub const VERSION: u64 = 1;
/// The largest file that is read, bytes: a plan is a page of text, and more is a mistake.
pub const MAX_BYTES: usize = 64 * 1024 * 1024;

/// A plan that was read, and what the reader noticed.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The plan.
    pub plan: Plan,
    /// Unknown keys that look like a known one; they are kept all the same.
    pub unknown: Vec<UnknownKey>,
}

/// Why a file is refused. Its words are in `words`; the display here is for developers.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// `plan/too-large`: more bytes than any plan has.
    #[error("plan/too-large: {bytes} bytes")]
    TooLarge {
        /// Bytes in the file.
        bytes: usize,
    },
    /// `plan/not-json`: no JSON at that place.
    #[error("plan/not-json: line {line}, column {column}")]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// `plan/cut-short`: the file ends too early.
    #[error("plan/cut-short: line {line}")]
    CutShort {
        /// Line at which it ends, from 1.
        line: usize,
    },
    /// `plan/not-a-plan`: JSON, but of another format.
    #[error("plan/not-a-plan: {found}")]
    NotAPlan {
        /// What stands in place of the format: a GeoJSON type, another format, or nothing.
        found: String,
    },
    /// `plan/newer`: written by a later program.
    #[error("plan/newer: version {version}")]
    Newer {
        /// The version that the file states.
        version: String,
    },
    /// `plan/wrong-type`: a value of another type than its key has.
    #[error("plan/wrong-type: {path}: {problem}")]
    WrongType {
        /// The key.
        path: String,
        /// What was found and expected.
        problem: String,
    },
    /// `plan/missing`: a key that every such entry has.
    #[error("plan/missing: {path}")]
    Missing {
        /// The key.
        path: String,
    },
    /// `plan/not-finite`: a number too large to be one.
    #[error("plan/not-finite: line {line}, column {column}")]
    NotFinite {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// `plan/doubled-id`: two entries of one id.
    #[error("plan/doubled-id: {path}: {id}")]
    DoubledId {
        /// The key of the second.
        path: String,
        /// The id.
        id: String,
    },
    /// `plan/unknown-id`: an id that no entry has.
    #[error("plan/unknown-id: {path}: {id}")]
    UnknownId {
        /// The key.
        path: String,
        /// The id.
        id: String,
    },
}

/// Reads a plan.
///
/// # Errors
/// See [`ReadError`]: the first trouble met, with its place.
pub fn read(bytes: &[u8]) -> Result<Opened, ReadError> {
    if bytes.len() > MAX_BYTES {
        return Err(ReadError::TooLarge { bytes: bytes.len() });
    }
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let value: serde_json::Value = serde_json::from_slice(bytes).map_err(|error| {
        let (line, column) = (error.line().max(1), error.column().max(1));
        if error.is_eof() {
            ReadError::CutShort { line }
        } else if error.to_string().contains("out of range") {
            ReadError::NotFinite { line, column }
        } else {
            ReadError::NotJson { line, column }
        }
    })?;
    let mut value = value;
    check_header(&value)?;
    // JSON knows one kind of number: 1.0 is version 1.
    value["version"] = VERSION.into();
    let unknown = keys::unknown(&value);
    let file: PlanFile = serde_path_to_error::deserialize(value).map_err(|error| {
        let path = error.path().to_string();
        let problem = error.inner().to_string();
        match problem.strip_prefix("missing field `").and_then(|rest| rest.split('`').next()) {
            Some(field) if path == "." => ReadError::Missing { path: field.to_owned() },
            Some(field) if path.ends_with(field) => ReadError::Missing { path },
            Some(field) => ReadError::Missing { path: format!("{path}.{field}") },
            None => ReadError::WrongType { path, problem },
        }
    })?;
    let mut plan = file.mirror();
    for outline in std::iter::once(&mut plan.ground.boundary)
        .chain(plan.ground.keep_outs.iter_mut().map(|keep_out| &mut keep_out.outline))
        .chain(plan.ground.shade.iter_mut().map(|shade| &mut shade.outline))
        .chain(plan.ground.damp.iter_mut().map(|damp| &mut damp.outline))
        .chain(plan.runs.iter_mut().filter(|run| run.closed()).map(|run| &mut run.outline))
    {
        drop_closing_vertex(outline);
    }
    check_panels(&plan)?;
    check_pins(&plan)?;
    check_ids(&plan)?;
    Ok(Opened { plan, unknown })
}

/// Writes a plan, with a line end.
pub fn write(plan: &Plan) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(&plan.clone().mirror())
        .expect("a plan has string keys and finite or null numbers only");
    bytes.push(b'\n');
    bytes
}

fn check_header(value: &serde_json::Value) -> Result<(), ReadError> {
    let found = |key: &str| value.get(key).and_then(serde_json::Value::as_str).unwrap_or("").to_owned();
    if found("format") != FORMAT {
        let other = [found("format"), found("type")].into_iter().find(|text| !text.is_empty());
        // A stranger's text may be of any length; a sentence may not.
        let found = other.unwrap_or_default().chars().take(40).collect();
        return Err(ReadError::NotAPlan { found });
    }
    match value.get("version") {
        Some(version) if version.as_f64().is_some_and(|number| (number - VERSION as f64).abs() < f64::EPSILON) => {
            Ok(())
        }
        Some(version) if version.as_f64().is_some_and(|number| number > VERSION as f64) => {
            Err(ReadError::Newer { version: version.to_string() })
        }
        Some(version) => Err(ReadError::WrongType {
            path: "version".to_owned(),
            problem: format!("found {}, expected {VERSION}", version.to_string().chars().take(40).collect::<String>()),
        }),
        None => Err(ReadError::Missing { path: "version".to_owned() }),
    }
}

fn drop_closing_vertex(outline: &mut Vec<Point>) {
    if outline.len() > 1 && outline.first() == outline.last() {
        outline.pop();
    }
}

fn check_panels(plan: &Plan) -> Result<(), ReadError> {
    for (index, net) in plan.store.nets.iter().enumerate() {
        if net.panels.is_none() && net.panel_lengths_m.is_none() {
            return Err(ReadError::Missing { path: format!("store.nets[{index}].panels") });
        }
    }
    Ok(())
}

/// A pinned net says which.
fn check_pins(plan: &Plan) -> Result<(), ReadError> {
    for (index, run) in plan.runs.iter().enumerate() {
        for (number, pin) in run.pins.iter().enumerate() {
            if pin.kind == PinKind::Net && pin.net.is_none() {
                return Err(ReadError::Missing { path: format!("runs[{index}].pins[{number}].net") });
            }
        }
    }
    Ok(())
}

fn unique<'a>(path: &str, ids: impl Iterator<Item = &'a str>) -> Result<BTreeSet<&'a str>, ReadError> {
    let mut seen = BTreeSet::new();
    for (index, id) in ids.enumerate() {
        if !seen.insert(id) {
            return Err(ReadError::DoubledId { path: format!("{path}[{index}].id"), id: id.to_owned() });
        }
    }
    Ok(seen)
}

fn check_ids(plan: &Plan) -> Result<(), ReadError> {
    let nets = unique("store.nets", plan.store.nets.iter().map(|net| net.id.as_str()))?;
    let energizers = unique("store.energizers", plan.store.energizers.iter().map(|unit| unit.id.as_str()))?;
    let runs = unique("runs", plan.runs.iter().map(|run| run.id.as_str()))?;
    let first = usize::from(plan.coop.is_some());
    let mut coops = BTreeSet::new();
    for (index, coop) in plan.coop.iter().chain(&plan.other_coops).enumerate() {
        if !coops.insert(coop.id.as_str()) {
            let path = format!("other_coops[{}].id", index - first);
            return Err(ReadError::DoubledId { path, id: coop.id.clone() });
        }
    }
    let known = |set: &BTreeSet<&str>, id: &str, path: String| {
        if set.contains(id) { Ok(()) } else { Err(ReadError::UnknownId { path, id: id.to_owned() }) }
    };
    for (index, run) in plan.runs.iter().enumerate() {
        for (place, net) in run.nets.iter().flatten().enumerate() {
            known(&nets, net, format!("runs[{index}].nets[{place}]"))?;
        }
        for (number, branch) in run.branches.iter().enumerate() {
            for (place, net) in branch.nets.iter().enumerate() {
                known(&nets, net, format!("runs[{index}].branches[{number}].nets[{place}]"))?;
            }
        }
        for (number, pin) in run.pins.iter().enumerate() {
            if let Some(net) = &pin.net {
                known(&nets, net, format!("runs[{index}].pins[{number}].net"))?;
            }
        }
        if let Some(coop) = &run.coop {
            known(&coops, coop, format!("runs[{index}].coop"))?;
        }
        if let Some(energizer) = &run.energizer {
            known(&energizers, energizer, format!("runs[{index}].energizer"))?;
        }
    }
    for (index, reading) in plan.readings.iter().enumerate() {
        known(&runs, &reading.run, format!("readings[{index}].run"))?;
    }
    Ok(())
}
