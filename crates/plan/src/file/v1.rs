//! Version 1 of the plan file: plain structs, the unit in the key.
//!
//! The keys of this page are a promise to other people's scripts: add, never rename.

mod bracing;
mod coop;
mod features;
mod gate;
mod ground;
mod heights;
mod reading;
mod run;
mod season;
mod store;

use super::mirror::{Mirror, mirrored};
use crate::defaults;
use crate::model::Rest;
pub(crate) use coop::Coop;
pub(crate) use features::{Damp, Label, Shade, TapePoint, Underlay, Wall};
pub(crate) use gate::{Gate, Gateway, Pin};
pub(crate) use ground::{Ground, Hazard, KeepOut, Soil};
pub(crate) use heights::{HeightGrid, SideSlope, SpotHeight};
pub(crate) use reading::Reading;
pub(crate) use run::Run;
pub(crate) use season::Season;
pub(crate) use store::Store;

/// A plan for portable electric netting: what the keeper states, in SI units, the unit in the key.
#[derive(Clone, Debug, serde::Serialize, serde::Deserialize, schemars::JsonSchema)]
#[schemars(title = "Netfold plan")]
pub(crate) struct Plan {
    /// Always `netfold-plan`.
    #[schemars(extend("const" = "netfold-plan"))]
    format: String,
    /// The version of the file.
    #[schemars(extend("const" = 1))]
    version: u64,
    /// The plan's name.
    #[serde(default)]
    title: String,
    /// Where the coordinates start on WGS 84.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    origin: Option<Origin>,
    /// The ground.
    #[serde(default = "empty::<Ground>")]
    ground: Ground,
    /// What the keeper owns.
    #[serde(default = "empty::<Store>")]
    store: Store,
    /// Volts asked for at the weakest post, kilovolts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(extend("default" = defaults::TARGET_KV))]
    target_kv: Option<f64>,
    /// The coop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    coop: Option<Coop>,
    /// Further coops.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    other_coops: Vec<Coop>,
    /// The runs.
    #[serde(default)]
    runs: Vec<Run>,
    /// Heights at single spots, over any level.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    heights: Vec<SpotHeight>,
    /// Walls, hedges and permanent fences that may serve as a side.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    walls: Vec<Wall>,
    /// Words on the map.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    labels: Vec<Label>,
    /// Places that are found again on the ground, from which corners are taped out: from the two with a letter.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    tape_points: Vec<TapePoint>,
    /// A picture beneath the map.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    underlay: Option<Underlay>,
    /// What is asked of a season.
    #[serde(default = "empty::<Season>", skip_serializing_if = "no_season")]
    season: Season,
    /// What the keeper measured.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    readings: Vec<Reading>,
    /// Keys that this version does not know; they are kept.
    #[serde(flatten)]
    rest: Rest,
}

impl Mirror for Plan {
    type Of = crate::model::Plan;
    fn mirror(self) -> Self::Of {
        crate::model::Plan {
            title: self.title,
            origin: self.origin.mirror(),
            ground: self.ground.mirror(),
            store: self.store.mirror(),
            target_kv: self.target_kv,
            coop: self.coop.mirror(),
            other_coops: self.other_coops.mirror(),
            runs: self.runs.mirror(),
            heights: self.heights.mirror(),
            walls: self.walls.mirror(),
            labels: self.labels.mirror(),
            tape_points: self.tape_points.mirror(),
            underlay: self.underlay.mirror(),
            season: self.season.mirror(),
            readings: self.readings.mirror(),
            rest: self.rest,
        }
    }
}

impl Mirror for crate::model::Plan {
    type Of = Plan;
    fn mirror(self) -> Self::Of {
        Plan {
            format: super::FORMAT.to_owned(),
            version: super::VERSION,
            title: self.title,
            origin: self.origin.mirror(),
            ground: self.ground.mirror(),
            store: self.store.mirror(),
            target_kv: self.target_kv,
            coop: self.coop.mirror(),
            other_coops: self.other_coops.mirror(),
            runs: self.runs.mirror(),
            heights: self.heights.mirror(),
            walls: self.walls.mirror(),
            labels: self.labels.mirror(),
            tape_points: self.tape_points.mirror(),
            underlay: self.underlay.mirror(),
            season: self.season.mirror(),
            readings: self.readings.mirror(),
            rest: self.rest,
        }
    }
}

/// Whether nothing is asked of a season, so that the file need not hold it.
fn no_season(season: &Season) -> bool {
    season.clone().mirror() == crate::model::Season::default()
}

/// A part of which nothing was stated: what an empty object reads as.
fn empty<T: serde::de::DeserializeOwned>() -> T {
    serde_json::from_value(serde_json::Value::Object(Rest::new())).expect("every key of such a part has a default")
}

mirrored! {
    /// The place on WGS 84 from which metres are counted.
    Origin {
        /// Latitude, degrees, north positive.
        latitude_deg: f64,
        /// Longitude, degrees, east positive.
        longitude_deg: f64,
    }
}
