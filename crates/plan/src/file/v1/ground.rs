//! The ground, in version 1.

use std::sync::Arc;

use super::bracing::{CornerSeen, PullTest, SoilClass};
use super::{Damp, Gateway, HeightGrid, Shade, empty};
use crate::defaults;
use crate::file::mirror::mirrored;
use crate::model::{ByFoot, HazardKind, Point};
use crate::today::Today;

mirrored! {
    /// The ground that the flock may use, and what stands on it.
    Ground {
        /// Outline of the paddock, `[east_m, north_m]` pairs.
        #[serde(default)]
        boundary: Vec<Point>,
        /// Whether the map leaves the paddock out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        boundary_hidden: bool,
        /// Whether the hand on the map leaves the paddock where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        boundary_locked: bool,
        /// Places that a run keeps off.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        keep_outs: Vec<KeepOut>,
        /// Things that can hurt.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        hazards: Vec<Hazard>,
        /// Trees and roofs that give shade.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        shade: Vec<Shade>,
        /// Places that are damper than the rest, where an earth stake earths best.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        damp: Vec<Damp>,
        /// The soil.
        #[serde(default = "empty::<Soil>")]
        soil: Soil,
        /// The way into the paddock; left out, the corner of the boundary that is nearest to a gate.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gateway: Option<Gateway>,
        /// The wind that the run must stand, metres a second.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        wind_m_per_s: Option<f64>,
        /// Share of a fouled net's face that is strand, grass and leaves.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::FOULED_SHARE))]
        fouled_share: Option<f64>,
        /// How the ground is today: it multiplies resistivity, leakage, hold, mass of the nets and minutes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        today: Option<Today>,
        /// Heights on a grid.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        height_grid: Option<Arc<HeightGrid>>,
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
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
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
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// The soil: a clay by its strength or a sand by its friction angle; with both, the clay counts. What was measured counts before either.
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
        /// What wet ground holds of what it holds dry, a share.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::bracing::WET_FACTOR))]
        wet_factor: Option<f64>,
        /// How a spike goes in under the foot; counts where nothing below is stated, nor a strength or angle.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by_foot: Option<ByFoot>,
        /// A class of a named table; counts where no pull and no strength or angle is stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        class: Option<SoilClass>,
        /// The keeper's own pull; counts before every strength that is only stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pull_test: Option<Box<PullTest>>,
        /// Corners without a brace that stood or leaned; they outweigh everything else.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        corners_seen: Vec<CornerSeen>,
    }
}
