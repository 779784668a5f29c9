//! Everything that a keeper can do to a plan: one value a deed, with its inverse.
//!
//! Mouse, keyboard, file and command all make [`Edit`]s, and [`Plan::apply`](crate::Plan::apply) is the one place where they
//! take effect. Undo, the dirty mark and the log of changes hang on that.

mod apply;
mod outline;
mod part;

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::file::{
    CoopFile, DampFile, GatewayFile, HazardFile, HeightGridFile, KeepOutFile, LabelFile, Mirror, OriginFile,
    ReadingFile, RunFile, SeasonFile, ShadeFile, SoilFile, SpotHeightFile, StoreFile, TapePointFile, UnderlayFile,
    WallFile,
};
use crate::model::{
    Coop, Damp as DampGround, Gateway, Hazard, HeightGrid, KeepOut, Label, Origin, Point, Reading, Run, Season,
    Shade as Shaded, Soil, SpotHeight, Store, TapePoint, Underlay, Wall,
};
use crate::today::Today;

/// An outline that has corners to be moved.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// The paddock's.
    Boundary,
    /// A run's, by id.
    Run(String),
    /// A keep-out's, by its place in the list.
    KeepOut(usize),
    /// A branch's, by its run's id and its place in the run's list.
    Branch(String, usize),
    /// A wall's path, by its place in the list.
    Wall(usize),
    /// An outline of shade, by its place in the list.
    Shade(usize),
    /// An outline of damp ground, by its place in the list.
    Damp(usize),
    /// A hazard's path, by its place in the list.
    Hazard(usize),
}

/// One thing that the keeper can do to a plan: one undo step, one line of the log.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "edit", rename_all = "snake_case")]
pub enum Edit {
    /// Name the plan.
    SetTitle {
        /// The name.
        title: String,
    },
    /// Say where the plan lies on the globe.
    SetOrigin {
        /// The place, or none.
        origin: Option<Origin>,
    },
    /// Ask for other volts at the weakest post.
    SetTarget {
        /// Kilovolts, or none for the default.
        target_kv: Option<f64>,
    },
    /// Draw an outline anew.
    SetOutline {
        /// Whose.
        shape: Shape,
        /// The corners.
        outline: Vec<Point>,
    },
    /// Hide the paddock on the map or show it, lock it or unlock it.
    SetPaddock {
        /// Whether the map leaves it out.
        hidden: bool,
        /// Whether the hand leaves it where it is.
        locked: bool,
    },
    /// Move one corner.
    MoveCorner {
        /// Whose.
        shape: Shape,
        /// Which, from 0.
        corner: usize,
        /// Where to.
        to: Point,
    },
    /// Put in a corner.
    InsertCorner {
        /// Whose.
        shape: Shape,
        /// Before which, from 0.
        corner: usize,
        /// Where.
        at: Point,
    },
    /// Take out a corner.
    RemoveCorner {
        /// Whose.
        shape: Shape,
        /// Which, from 0.
        corner: usize,
    },
    /// Add a run.
    AddRun {
        /// Its place in the list.
        index: usize,
        /// The run.
        run: Box<Run>,
    },
    /// Take a run out.
    RemoveRun {
        /// Its id.
        id: String,
    },
    /// State a run's particulars anew; the run of the same id gives way.
    SetRun {
        /// The run.
        run: Box<Run>,
    },
    /// State the soil anew.
    SetSoil {
        /// The soil.
        soil: Soil,
    },
    /// Say which wind the runs must stand, and how much of a fouled net's face is closed.
    SetWind {
        /// Metres a second, or none.
        wind_m_per_s: Option<f64>,
        /// A share, or none for the default.
        fouled_share: Option<f64>,
    },
    /// Say how the ground is today.
    SetToday {
        /// The word, or none.
        today: Option<Today>,
    },
    /// State the store anew.
    SetStore {
        /// The store.
        store: Box<Store>,
    },
    /// State the keep-outs anew.
    SetKeepOuts {
        /// All of them.
        keep_outs: Vec<KeepOut>,
    },
    /// State the heights of spots anew.
    SetHeights {
        /// All of them.
        heights: Vec<SpotHeight>,
    },
    /// State the grid of heights anew.
    SetHeightGrid {
        /// The grid, or none.
        grid: Option<Arc<HeightGrid>>,
    },
    /// State the hazards anew.
    SetHazards {
        /// All of them.
        hazards: Vec<Hazard>,
    },
    /// State the walls anew.
    SetWalls {
        /// All of them.
        walls: Vec<Wall>,
    },
    /// State the shade anew.
    SetShade {
        /// All of it.
        shade: Vec<Shaded>,
    },
    /// State the damp ground anew.
    SetDamp {
        /// All of it.
        damp: Vec<DampGround>,
    },
    /// Write the words on the map anew.
    SetLabels {
        /// All of them.
        labels: Vec<Label>,
    },
    /// State the places that corners are taped out from anew.
    SetTapePoints {
        /// All of them.
        points: Vec<TapePoint>,
    },
    /// Lay a picture beneath the map.
    SetUnderlay {
        /// The picture, or none.
        underlay: Option<Underlay>,
    },
    /// Say where the way into the paddock is.
    SetGateway {
        /// The gateway, or none.
        gateway: Option<Gateway>,
    },
    /// State the coop anew.
    SetCoop {
        /// The coop, or none.
        coop: Option<Coop>,
    },
    /// State the further coops anew.
    SetOtherCoops {
        /// All of them.
        other_coops: Vec<Coop>,
    },
    /// State anew what is asked of a season.
    SetSeason {
        /// What is asked.
        season: Season,
    },
    /// State the readings anew.
    SetReadings {
        /// All of them.
        readings: Vec<Reading>,
    },
}

/// Why an edit cannot be made; the plan is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    /// `edit/no-such-run`
    #[error("edit/no-such-run: {id}")]
    NoSuchRun {
        /// The id asked for.
        id: String,
    },
    /// `edit/run-exists`
    #[error("edit/run-exists: {id}")]
    RunExists {
        /// The id asked for.
        id: String,
    },
    /// `edit/no-such-keep-out`
    #[error("edit/no-such-keep-out: {index}")]
    NoSuchKeepOut {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-wall`
    #[error("edit/no-such-wall: {index}")]
    NoSuchWall {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-shade`
    #[error("edit/no-such-shade: {index}")]
    NoSuchShade {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-damp`
    #[error("edit/no-such-damp: {index}")]
    NoSuchDamp {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-hazard`
    #[error("edit/no-such-hazard: {index}")]
    NoSuchHazard {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-branch`
    #[error("edit/no-such-branch: {index}")]
    NoSuchBranch {
        /// The place asked for.
        index: usize,
    },
    /// `edit/no-such-corner`
    #[error("edit/no-such-corner: {corner}")]
    NoSuchCorner {
        /// The corner asked for, from 0.
        corner: usize,
    },
    /// `edit/no-such-place`
    #[error("edit/no-such-place: {index}")]
    NoSuchPlace {
        /// The place in the list asked for.
        index: usize,
    },
    /// `edit/not-finite`: a place or a value that is no number.
    #[error("edit/not-finite")]
    NotFinite,
}

macro_rules! written_as {
    ($($model:ty => $file:ty),*) => {$(
        impl Serialize for $model {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                self.clone().mirror().serialize(serializer)
            }
        }
        impl<'de> Deserialize<'de> for $model {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                <$file>::deserialize(deserializer).map(Mirror::mirror)
            }
        }
    )*};
}

// In the log an edit reads as the plan file does.
written_as!(
    Run => RunFile, Origin => OriginFile, Soil => SoilFile, Store => StoreFile, KeepOut => KeepOutFile,
    Hazard => HazardFile, HeightGrid => HeightGridFile, SpotHeight => SpotHeightFile, Gateway => GatewayFile,
    Coop => CoopFile, Reading => ReadingFile, Season => SeasonFile, Wall => WallFile, Shaded => ShadeFile,
    DampGround => DampFile, Label => LabelFile, TapePoint => TapePointFile,
    Underlay => UnderlayFile
);
