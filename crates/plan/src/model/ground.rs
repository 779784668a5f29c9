//! The ground that the flock may use, and what stands on it.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::bracing::{ByFoot, CornerSeen, PullTest, SoilClass};
use super::{Damp, Gateway, HeightGrid, Point, Rest, Shade};
use crate::defaults;
use crate::today::Today;

/// A closed line of places.
pub type Boundary = Vec<Point>;

/// The ground that the flock may use, and what stands on it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ground {
    /// Outline of the paddock; empty where none is stated.
    pub boundary: Boundary,
    /// Whether the map leaves the paddock out; it counts all the same.
    pub boundary_hidden: bool,
    /// Whether the hand on the map leaves the paddock where it is.
    pub boundary_locked: bool,
    /// Places that a run keeps off.
    pub keep_outs: Vec<KeepOut>,
    /// Things that can hurt.
    pub hazards: Vec<Hazard>,
    /// Trees and roofs.
    pub shade: Vec<Shade>,
    /// Places that are damper than the rest.
    pub damp: Vec<Damp>,
    /// The soil.
    pub soil: Soil,
    /// The way into the paddock.
    pub gateway: Option<Gateway>,
    /// The wind that the run must stand, metres a second.
    pub wind_m_per_s: Option<f64>,
    /// Share of a fouled net's face that is strand, grass and leaves.
    pub fouled_share: Option<f64>,
    /// How the ground is today; `None` multiplies nothing.
    pub today: Option<Today>,
    /// Heights on a grid.
    pub height_grid: Option<Arc<HeightGrid>>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Ground {
    /// Share of a fouled net's face that is strand, grass and leaves, stated or assumed.
    pub fn fouled_share(&self) -> f64 {
        self.fouled_share.unwrap_or(defaults::bracing::FOULED_SHARE)
    }
}

/// A place that a run keeps off.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepOut {
    /// Its name.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Straight distance kept from it, metres.
    pub clearance_m: Option<f64>,
    /// Whether it may stand inside a run.
    pub may_enclose: Option<bool>,
    /// Whether it is water: a pond, a ditch, a stream.
    pub water: bool,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl KeepOut {
    /// A place of that outline, of which nothing else is stated.
    pub fn new(outline: Vec<Point>) -> Self {
        Self {
            name: String::new(),
            outline,
            clearance_m: None,
            may_enclose: None,
            water: false,
            hidden: false,
            locked: false,
            rest: Rest::new(),
        }
    }

    /// The clearance, stated or assumed, metres.
    pub fn clearance_m(&self) -> f64 {
        self.clearance_m.unwrap_or(defaults::CLEARANCE_M)
    }

    /// Whether a run may go round it.
    pub fn may_enclose(&self) -> bool {
        self.may_enclose.unwrap_or(defaults::MAY_ENCLOSE)
    }
}

/// What kind of hazard a path is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HazardKind {
    /// A power or telephone line overhead.
    OverheadLine,
    /// A road, footpath or other public way.
    PublicWay,
    /// A fence fed by another energizer.
    OtherEnergisedFence,
    /// An earth that is not this fence's: supply, telephone, lightning, rails, metal pipes.
    ForeignEarth,
}

/// A thing that can hurt, drawn as a path (or one point).
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// Its kind.
    pub kind: HazardKind,
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its path.
    pub path: Vec<Point>,
    /// Voltage of an overhead line, kilovolts.
    pub line_voltage_kv: Option<f64>,
    /// Whether warning signs face a public way.
    pub signed: bool,
    /// Whether an unpowered gate or stile lets a public way through.
    pub unpowered_gate: bool,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl Hazard {
    /// A thing of a kind along a path, of which nothing else is stated.
    pub fn new(kind: HazardKind, path: Vec<Point>) -> Self {
        Self {
            kind,
            name: String::new(),
            path,
            line_voltage_kv: None,
            signed: false,
            unpowered_gate: false,
            hidden: false,
            locked: false,
            rest: Rest::new(),
        }
    }
}

/// The soil, as far as it is stated.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Soil {
    /// Resistivity, ohm metres.
    pub resistivity_ohm_m: Option<f64>,
    /// Undrained shear strength of a clay, kilopascals.
    pub undrained_strength_kpa: Option<f64>,
    /// Friction angle of a sand, degrees.
    pub friction_angle_deg: Option<f64>,
    /// Unit weight of a sand, kilonewtons per cubic metre.
    pub unit_weight_kn_per_m3: Option<f64>,
    /// Whether it is wet, which halves what a spike holds.
    pub wet: Option<bool>,
    /// What wet ground holds of what it holds dry, a share.
    pub wet_factor: Option<f64>,
    /// How a spike goes in under the foot.
    pub by_foot: Option<ByFoot>,
    /// A class of a named table.
    pub class: Option<SoilClass>,
    /// The keeper's own pull.
    pub pull_test: Option<Box<PullTest>>,
    /// Corners without a brace that stood or leaned.
    pub corners_seen: Vec<CornerSeen>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Soil {
    /// Resistivity, stated or assumed, ohm metres.
    pub fn resistivity_ohm_m(&self) -> f64 {
        self.resistivity_ohm_m.unwrap_or(defaults::RESISTIVITY_OHM_M)
    }

    /// Whether the ground is wet.
    pub fn wet(&self) -> bool {
        self.wet.unwrap_or(defaults::WET)
    }

    /// What wet ground holds of what it holds dry, stated or assumed, a share.
    pub fn wet_factor(&self) -> f64 {
        self.wet_factor.unwrap_or(defaults::bracing::WET_FACTOR)
    }

    /// Unit weight of the sand, stated or assumed, kilonewtons per cubic metre.
    pub fn unit_weight_kn_per_m3(&self) -> f64 {
        self.unit_weight_kn_per_m3.unwrap_or(defaults::UNIT_WEIGHT_KN_PER_M3)
    }
}
