//! Edits take effect, each with its inverse.

use std::mem;

use super::{Edit, EditError};
use crate::model::{Plan, Point, Run};

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
}
