//! A reading, in version 1.

use crate::file::mirror::mirrored;
use crate::model::ReadingKind;

mirrored! {
    /// A measurement.
    Reading {
        /// Id of the run.
        run: String,
        /// What was read.
        kind: ReadingKind,
        /// Where along the outline, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        along_m: Option<f64>,
        /// The value, in the unit of its kind.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        value: Option<f64>,
    }
}
