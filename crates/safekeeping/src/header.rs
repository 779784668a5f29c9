//! The first line of a journal: whose plan it goes on from.
//!
//! `{"format": "netfold-journal", "version": 1, "path": …, "saved": …, "base": …}`. The path is a text, or a list
//! of the system's own units where it is none, or null; the base is the whole plan as its file has it. A later
//! version keeps the form of this line, so that an earlier program can tell it from a damaged one.

use std::path::{Path, PathBuf};

use plan::Plan;
use serde_json::{Value, json};

use crate::base;

/// What the first line of a journal says.
pub const FORMAT: &str = "netfold-journal";
/// The version that this program writes.
pub const VERSION: u64 = 1;

/// Why nothing can be had from a journal; the file is kept.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    /// `safekeeping/journal-damaged`: the first line is torn, altered or something else.
    #[error("safekeeping/journal-damaged")]
    Header,
    /// `safekeeping/journal-newer`: written by a later program, which can read it.
    #[error("safekeeping/journal-newer: version {version}")]
    Newer {
        /// The version that it states.
        version: u64,
    },
    /// `safekeeping/journal-unreadable`: the system does not give it out.
    #[error("safekeeping/journal-unreadable: {reason}")]
    Unreadable {
        /// What the system said, for the log.
        reason: String,
    },
}

/// The first line.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Header {
    /// The plan's file.
    pub(crate) path: Option<PathBuf>,
    /// Whether that file holds the base.
    pub(crate) saved: bool,
    /// The plan that the edits go on from.
    pub(crate) base: Plan,
}

impl Header {
    /// The line's JSON.
    pub(crate) fn write(path: Option<&Path>, saved: bool, base: &Plan) -> Vec<u8> {
        let path = path.map_or(Value::Null, write_path);
        let value = json!({
            "format": FORMAT, "version": VERSION, "path": path, "saved": saved, "base": base::write(base)
        });
        value.to_string().into_bytes()
    }

    /// What a line's JSON says.
    pub(crate) fn read(json: &[u8]) -> Result<Self, Damage> {
        let mut value: Value = serde_json::from_slice(json).map_err(|_| Damage::Header)?;
        if value.get("format").and_then(Value::as_str) != Some(FORMAT) {
            return Err(Damage::Header);
        }
        match value.get("version").and_then(Value::as_u64) {
            Some(VERSION) => {}
            Some(version) if version > VERSION => return Err(Damage::Newer { version }),
            _ => return Err(Damage::Header),
        }
        let path = match value.get("path") {
            None | Some(Value::Null) => None,
            Some(path) => Some(read_path(path).ok_or(Damage::Header)?),
        };
        let saved = value.get("saved").and_then(Value::as_bool).ok_or(Damage::Header)?;
        let base = value.get_mut("base").map(Value::take).ok_or(Damage::Header)?;
        Ok(Self { path, saved, base: base::read(base).map_err(|_| Damage::Header)? })
    }
}

fn write_path(path: &Path) -> Value {
    path.to_str().map_or_else(|| units(path).into(), Into::into)
}

fn read_path(value: &Value) -> Option<PathBuf> {
    if let Some(text) = value.as_str() {
        return Some(text.into());
    }
    from_units(value.as_array()?)
}

#[cfg(unix)]
fn units(path: &Path) -> Vec<u16> {
    std::os::unix::ffi::OsStrExt::as_bytes(path.as_os_str()).iter().copied().map(u16::from).collect()
}

#[cfg(unix)]
fn from_units(units: &[Value]) -> Option<PathBuf> {
    let bytes = units.iter().map(|unit| u8::try_from(unit.as_u64()?).ok()).collect::<Option<Vec<u8>>>()?;
    Some(<std::ffi::OsString as std::os::unix::ffi::OsStringExt>::from_vec(bytes).into())
}

#[cfg(windows)]
fn units(path: &Path) -> Vec<u16> {
    std::os::windows::ffi::OsStrExt::encode_wide(path.as_os_str()).collect()
}

#[cfg(windows)]
fn from_units(units: &[Value]) -> Option<PathBuf> {
    let wide = units.iter().map(|unit| u16::try_from(unit.as_u64()?).ok()).collect::<Option<Vec<u16>>>()?;
    Some(<std::ffi::OsString as std::os::windows::ffi::OsStringExt>::from_wide(&wide).into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_comes_back_whatever_it_is() {
        let paths = [
            PathBuf::from("/farm/Höhe \"2\"\n.netfold.json"),
            PathBuf::new(),
            #[cfg(unix)]
            PathBuf::from(<std::ffi::OsString as std::os::unix::ffi::OsStringExt>::from_vec(vec![b'/', 0xff, 0xfe])),
        ];
        for path in paths {
            let header = Header::read(&Header::write(Some(&path), true, &Plan::default())).unwrap();
            assert_eq!(header, Header { path: Some(path), saved: true, base: Plan::default() });
        }
    }

    #[test]
    fn what_is_no_header_is_told_from_a_newer_one() {
        let good = String::from_utf8(Header::write(None, false, &Plan::default())).unwrap();
        assert!(Header::read(good.as_bytes()).is_ok());
        let newer = good.replace("\"version\":1}", "\"version\":2}");
        assert_eq!(Header::read(newer.as_bytes()), Err(Damage::Newer { version: 2 }));
        for (was, is) in [
            ("netfold-journal", "netfold-plan"),
            ("\"saved\":false", "\"saved\":0"),
            ("\"path\":null", "\"path\":[70000]"),
            ("\"path\":null", "\"path\":{}"),
            ("\"base\":{", "\"base\":[],\"was\":{"),
            ("\"runs\":[]", "\"runs\":[7]"),
            ("\"version\":1}", "\"version\":\"one\"}"),
        ] {
            let other = good.replace(was, is);
            assert_ne!(other, good, "{was}");
            assert_eq!(Header::read(other.as_bytes()), Err(Damage::Header), "{is}");
        }
    }
}
