//! The ground, in version 1.

use super::{HeightGrid, empty};
use crate::defaults;
use crate::file::mirror::mirrored;
use crate::model::{HazardKind, Point};

mirrored! {
    /// The ground that the flock may use, and what stands on it.
    Ground {
        /// Outline of the paddock, `[east_m, north_m]` pairs.
        #[serde(default)]
        boundary: Vec<Point>,
        /// Places that a run keeps off.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        keep_outs: Vec<KeepOut>,
        /// Things that can hurt.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        hazards: Vec<Hazard>,
        /// The soil.
        #[serde(default = "empty::<Soil>")]
        soil: Soil,
        /// Heights on a grid.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        height_grid: Option<Box<HeightGrid>>,
    }

    /// A place that a run keeps off.
    KeepOut {
        /// Its name.
        #[serde(default)]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Straight distance kept from it, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::CLEARANCE_M))]
        clearance_m: Option<f64>,
        /// Whether it may stand inside a run.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::MAY_ENCLOSE))]
        may_enclose: Option<bool>,
        /// Whether it is water.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        water: bool,
    }

    /// A thing that can hurt.
    Hazard {
        /// Its kind.
        kind: HazardKind,
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its path, or one point.
        path: Vec<Point>,
        /// Voltage of an overhead line, kilovolts.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::OVERHEAD_LINE_VOLTAGE_KV))]
        line_voltage_kv: Option<f64>,
        /// Whether warning signs face a public way.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        signed: bool,
        /// Whether an unpowered gate or stile lets a public way through.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        unpowered_gate: bool,
    }

    /// The soil: a clay by its strength or a sand by its friction angle; with both, the clay counts.
    Soil {
        /// Resistivity, ohm metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::RESISTIVITY_OHM_M))]
        resistivity_ohm_m: Option<f64>,
        /// Undrained shear strength of a clay, kilopascals.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::UNDRAINED_STRENGTH_KPA))]
        undrained_strength_kpa: Option<f64>,
        /// Friction angle of a sand, degrees.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        friction_angle_deg: Option<f64>,
        /// Unit weight of a sand, kilonewtons per cubic metre.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::UNIT_WEIGHT_KN_PER_M3))]
        unit_weight_kn_per_m3: Option<f64>,
        /// Whether it is wet, which halves what a spike holds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::WET))]
        wet: Option<bool>,
    }
}
