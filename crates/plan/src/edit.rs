//! Everything that a keeper can do to a plan: one value a deed, with its inverse.
//!
//! Mouse, keyboard, file and command all make [`Edit`]s, and [`Plan::apply`] is the one place where they
//! take effect. Undo, the dirty mark and the log of changes hang on that.

use std::mem;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::file::{
    CoopFile, DampFile, GatewayFile, HazardFile, HeightGridFile, KeepOutFile, LabelFile, Mirror, OriginFile,
    ReadingFile, RunFile, SeasonFile, ShadeFile, SoilFile, SpotHeightFile, StoreFile, TapePointFile, UnderlayFile,
    WallFile,
};
use crate::model::{
    Coop, Damp as DampGround, Gateway, Hazard, HeightGrid, KeepOut, Label, Origin, Plan, Point, Reading, Run, Season,
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

/// A part of the plan that an edit is about.
#[derive(PartialEq)]
enum Part<'a> {
    Boundary,
    KeepOuts,
    Run(&'a str),
    Walls,
    Shade,
    Damp,
    /// The list of runs.
    Runs,
    Other(mem::Discriminant<Edit>),
}

impl Edit {
    /// Whether both are about the same part of the plan, so that their order matters.
    pub(crate) fn touches_same(&self, other: &Edit) -> bool {
        match (self.part(), other.part()) {
            (Part::Runs, Part::Run(_) | Part::Runs) | (Part::Run(_), Part::Runs) => true,
            (part, other) => part == other,
        }
    }

    fn part(&self) -> Part<'_> {
        match self {
            Edit::SetOutline { shape, .. }
            | Edit::MoveCorner { shape, .. }
            | Edit::InsertCorner { shape, .. }
            | Edit::RemoveCorner { shape, .. } => match shape {
                Shape::Boundary => Part::Boundary,
                Shape::Run(id) | Shape::Branch(id, _) => Part::Run(id),
                Shape::KeepOut(_) => Part::KeepOuts,
                Shape::Wall(_) => Part::Walls,
                Shape::Shade(_) => Part::Shade,
                Shape::Damp(_) => Part::Damp,
            },
            Edit::SetRun { run } => Part::Run(&run.id),
            Edit::AddRun { .. } | Edit::RemoveRun { .. } => Part::Runs,
            Edit::SetKeepOuts { .. } => Part::KeepOuts,
            Edit::SetWalls { .. } => Part::Walls,
            Edit::SetShade { .. } => Part::Shade,
            Edit::SetDamp { .. } => Part::Damp,
            Edit::SetTitle { .. }
            | Edit::SetOrigin { .. }
            | Edit::SetTarget { .. }
            | Edit::SetPaddock { .. }
            | Edit::SetSoil { .. }
            | Edit::SetWind { .. }
            | Edit::SetToday { .. }
            | Edit::SetStore { .. }
            | Edit::SetHazards { .. }
            | Edit::SetGateway { .. }
            | Edit::SetHeights { .. }
            | Edit::SetHeightGrid { .. }
            | Edit::SetCoop { .. }
            | Edit::SetOtherCoops { .. }
            | Edit::SetSeason { .. }
            | Edit::SetLabels { .. }
            | Edit::SetTapePoints { .. }
            | Edit::SetUnderlay { .. }
            | Edit::SetReadings { .. } => Part::Other(mem::discriminant(self)),
        }
    }

    /// Whether both state the same thing anew, so that the later makes the earlier needless.
    pub fn same_place(&self, other: &Edit) -> bool {
        match (self, other) {
            (Edit::MoveCorner { shape, corner, .. }, Edit::MoveCorner { shape: its, corner: number, .. }) => {
                shape == its && corner == number
            }
            (Edit::SetOutline { shape, .. }, Edit::SetOutline { shape: its, .. }) => shape == its,
            (Edit::SetRun { run }, Edit::SetRun { run: other }) => run.id == other.id,
            (
                Edit::MoveCorner { .. }
                | Edit::SetOutline { .. }
                | Edit::SetRun { .. }
                | Edit::InsertCorner { .. }
                | Edit::RemoveCorner { .. }
                | Edit::AddRun { .. }
                | Edit::RemoveRun { .. },
                _,
            ) => false,
            _ => mem::discriminant(self) == mem::discriminant(other),
        }
    }
}

fn finite(points: &[Point]) -> Result<(), EditError> {
    if points.iter().all(|point| point.east_m.is_finite() && point.north_m.is_finite()) {
        Ok(())
    } else {
        Err(EditError::NotFinite)
    }
}

/// A run of which every place on the ground and every place along a line is a number.
fn finite_run(run: &Run) -> Result<(), EditError> {
    finite(&run.places())?;
    finite(run.drop_at.as_slice())?;
    let of_branches = run.branches.iter().flat_map(|branch| &branch.leakage_zones);
    run.leakage_zones.iter().chain(of_branches).try_for_each(|zone| finite(&[Point::new(zone.from_m, zone.to_m)]))?;
    run.branches.iter().try_for_each(|branch| finite(&[Point::new(branch.from_m, 0.0)]))
}

impl Plan {
    /// Makes one edit and returns its inverse.
    ///
    /// # Errors
    /// [`EditError`] where the plan has no such thing; nothing has changed then.
    pub fn apply(&mut self, edit: Edit) -> Result<Edit, EditError> {
        Ok(match edit {
            Edit::SetTitle { title } => Edit::SetTitle { title: mem::replace(&mut self.title, title) },
            Edit::SetOrigin { origin } => {
                if let Some(origin) = &origin {
                    finite(&[Point::new(origin.longitude_deg, origin.latitude_deg)])?;
                }
                Edit::SetOrigin { origin: mem::replace(&mut self.origin, origin) }
            }
            Edit::SetTarget { target_kv } => {
                finite(&[Point::new(target_kv.unwrap_or(0.0), 0.0)])?;
                Edit::SetTarget { target_kv: mem::replace(&mut self.target_kv, target_kv) }
            }
            Edit::SetOutline { shape, outline } => {
                finite(&outline)?;
                let was = mem::replace(self.outline_mut(&shape)?, outline);
                Edit::SetOutline { shape, outline: was }
            }
            Edit::SetPaddock { hidden, locked } => {
                let ground = &mut self.ground;
                Edit::SetPaddock {
                    hidden: mem::replace(&mut ground.boundary_hidden, hidden),
                    locked: mem::replace(&mut ground.boundary_locked, locked),
                }
            }
            Edit::MoveCorner { shape, corner, to } => {
                finite(&[to])?;
                let at = self.outline_mut(&shape)?.get_mut(corner).ok_or(EditError::NoSuchCorner { corner })?;
                let was = mem::replace(at, to);
                Edit::MoveCorner { shape, corner, to: was }
            }
            Edit::InsertCorner { shape, corner, at } => {
                finite(&[at])?;
                let outline = self.outline_mut(&shape)?;
                if corner > outline.len() {
                    return Err(EditError::NoSuchCorner { corner });
                }
                outline.insert(corner, at);
                Edit::RemoveCorner { shape, corner }
            }
            Edit::RemoveCorner { shape, corner } => {
                let outline = self.outline_mut(&shape)?;
                if corner >= outline.len() {
                    return Err(EditError::NoSuchCorner { corner });
                }
                let at = outline.remove(corner);
                Edit::InsertCorner { shape, corner, at }
            }
            Edit::AddRun { index, run } => {
                finite_run(&run)?;
                if self.run(&run.id).is_some() {
                    return Err(EditError::RunExists { id: run.id });
                }
                if index > self.runs.len() {
                    return Err(EditError::NoSuchPlace { index });
                }
                let id = run.id.clone();
                self.runs.insert(index, *run);
                Edit::RemoveRun { id }
            }
            Edit::RemoveRun { id } => {
                let index = self.run_index(&id)?;
                Edit::AddRun { index, run: Box::new(self.runs.remove(index)) }
            }
            Edit::SetRun { run } => {
                finite_run(&run)?;
                let index = self.run_index(&run.id)?;
                Edit::SetRun { run: Box::new(mem::replace(&mut self.runs[index], *run)) }
            }
            Edit::SetSeason { season } => Edit::SetSeason { season: mem::replace(&mut self.season, season) },
            Edit::SetSoil { soil } => {
                soil.corners_seen.iter().try_for_each(|seen| finite(&[seen.at]))?;
                Edit::SetSoil { soil: mem::replace(&mut self.ground.soil, soil) }
            }
            Edit::SetWind { wind_m_per_s, fouled_share } => {
                finite(&[Point::new(wind_m_per_s.unwrap_or(0.0), fouled_share.unwrap_or(0.0))])?;
                let ground = &mut self.ground;
                Edit::SetWind {
                    wind_m_per_s: mem::replace(&mut ground.wind_m_per_s, wind_m_per_s),
                    fouled_share: mem::replace(&mut ground.fouled_share, fouled_share),
                }
            }
            Edit::SetToday { today } => Edit::SetToday { today: mem::replace(&mut self.ground.today, today) },
            Edit::SetStore { store } => Edit::SetStore { store: Box::new(mem::replace(&mut self.store, *store)) },
            Edit::SetKeepOuts { keep_outs } => {
                keep_outs.iter().try_for_each(|keep_out| finite(&keep_out.outline))?;
                Edit::SetKeepOuts { keep_outs: mem::replace(&mut self.ground.keep_outs, keep_outs) }
            }
            Edit::SetHazards { hazards } => {
                hazards.iter().try_for_each(|hazard| finite(&hazard.path))?;
                Edit::SetHazards { hazards: mem::replace(&mut self.ground.hazards, hazards) }
            }
            Edit::SetWalls { walls } => {
                walls.iter().try_for_each(|wall| finite(&wall.path))?;
                Edit::SetWalls { walls: mem::replace(&mut self.walls, walls) }
            }
            Edit::SetShade { shade } => {
                shade.iter().try_for_each(|shade| finite(&shade.outline))?;
                Edit::SetShade { shade: mem::replace(&mut self.ground.shade, shade) }
            }
            Edit::SetDamp { damp } => {
                damp.iter().try_for_each(|damp| finite(&damp.outline))?;
                Edit::SetDamp { damp: mem::replace(&mut self.ground.damp, damp) }
            }
            Edit::SetLabels { labels } => {
                labels.iter().try_for_each(|label| finite(&[label.at]))?;
                Edit::SetLabels { labels: mem::replace(&mut self.labels, labels) }
            }
            Edit::SetTapePoints { points } => {
                points.iter().try_for_each(|point| finite(&[point.at]))?;
                Edit::SetTapePoints { points: mem::replace(&mut self.tape_points, points) }
            }
            Edit::SetUnderlay { underlay } => {
                if let Some(underlay) = &underlay {
                    let world = underlay.world_m.map_or([0.0; 6], |world| world.0);
                    let numbers = world.into_iter().chain(underlay.opacity);
                    numbers.into_iter().try_for_each(|number| finite(&[Point::new(number, 0.0)]))?;
                }
                Edit::SetUnderlay { underlay: mem::replace(&mut self.underlay, underlay) }
            }
            Edit::SetGateway { gateway } => {
                if let Some(gateway) = &gateway {
                    finite(&[gateway.at])?;
                }
                Edit::SetGateway { gateway: mem::replace(&mut self.ground.gateway, gateway) }
            }
            Edit::SetHeights { heights } => {
                heights.iter().try_for_each(|height| finite(&[height.at, Point::new(height.up_m, 0.0)]))?;
                Edit::SetHeights { heights: mem::replace(&mut self.heights, heights) }
            }
            Edit::SetHeightGrid { grid } => {
                if let Some(grid) = &grid {
                    finite(&[grid.south_west, Point::new(grid.cell_m, 0.0)])?;
                    grid.up_m.iter().flatten().try_for_each(|&up_m| finite(&[Point::new(up_m, 0.0)]))?;
                }
                Edit::SetHeightGrid { grid: mem::replace(&mut self.ground.height_grid, grid) }
            }
            Edit::SetCoop { coop } => {
                if let Some(coop) = &coop {
                    finite(&[coop.at])?;
                }
                Edit::SetCoop { coop: mem::replace(&mut self.coop, coop) }
            }
            Edit::SetOtherCoops { other_coops } => {
                other_coops.iter().try_for_each(|coop| finite(&[coop.at]))?;
                Edit::SetOtherCoops { other_coops: mem::replace(&mut self.other_coops, other_coops) }
            }
            Edit::SetReadings { readings } => {
                Edit::SetReadings { readings: mem::replace(&mut self.readings, readings) }
            }
        })
    }

    fn run_index(&self, id: &str) -> Result<usize, EditError> {
        self.runs.iter().position(|run| run.id == id).ok_or_else(|| EditError::NoSuchRun { id: id.to_owned() })
    }

    /// The corners of a shape, if the plan has it.
    pub fn outline(&self, shape: &Shape) -> Option<&[Point]> {
        match shape {
            Shape::Boundary => Some(&self.ground.boundary),
            Shape::Run(id) => self.run(id).map(|run| run.outline.as_slice()),
            Shape::KeepOut(index) => self.ground.keep_outs.get(*index).map(|keep_out| keep_out.outline.as_slice()),
            Shape::Wall(index) => self.walls.get(*index).map(|wall| wall.path.as_slice()),
            Shape::Shade(index) => self.ground.shade.get(*index).map(|shade| shade.outline.as_slice()),
            Shape::Damp(index) => self.ground.damp.get(*index).map(|damp| damp.outline.as_slice()),
            Shape::Branch(id, index) => {
                let branch = self.run(id)?.branches.get(*index);
                branch.map(|branch| branch.outline.as_slice())
            }
        }
    }

    /// The corners of a shape, to be changed.
    ///
    /// # Errors
    /// [`EditError`] where the plan has no such shape.
    pub fn outline_mut(&mut self, shape: &Shape) -> Result<&mut Vec<Point>, EditError> {
        match shape {
            Shape::Boundary => Ok(&mut self.ground.boundary),
            Shape::Run(id) => {
                let index = self.run_index(id)?;
                Ok(&mut self.runs[index].outline)
            }
            Shape::KeepOut(index) => self
                .ground
                .keep_outs
                .get_mut(*index)
                .map(|keep_out| &mut keep_out.outline)
                .ok_or(EditError::NoSuchKeepOut { index: *index }),
            Shape::Wall(index) => {
                let wall = self.walls.get_mut(*index).map(|wall| &mut wall.path);
                wall.ok_or(EditError::NoSuchWall { index: *index })
            }
            Shape::Shade(index) => {
                let shade = self.ground.shade.get_mut(*index).map(|shade| &mut shade.outline);
                shade.ok_or(EditError::NoSuchShade { index: *index })
            }
            Shape::Damp(index) => {
                let damp = self.ground.damp.get_mut(*index).map(|damp| &mut damp.outline);
                damp.ok_or(EditError::NoSuchDamp { index: *index })
            }
            Shape::Branch(id, index) => {
                let run = self.run_index(id)?;
                let branch = self.runs[run].branches.get_mut(*index);
                branch.map(|branch| &mut branch.outline).ok_or(EditError::NoSuchBranch { index: *index })
            }
        }
    }
}
