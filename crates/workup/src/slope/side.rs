//! One side of a run, as long along the ground as is asked for.

use geometry::Outline;
use geometry::slope::{Profile, SideHeights, Surface};
use plan::{Plan, Point, Run, SideSlope};

use super::{Evidence, Heights, Measure, is_side_of, rises_m};
use crate::point;

/// Nearer than this no side's length is sought, metres.
const SOUGHT_M: f64 = 1e-9;
/// A side is not drawn in further than this, metres.
const LEAST_SIDE_M: f64 = 1e-3;

/// Why a side cannot be so long along the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSide {
    /// What the ground rises along it is longer.
    TooShort,
    /// There is no such side, or none that can be built.
    NotBuilt,
}

/// How long a side of a run is on the map where it is that long along the ground: its first corner and its direction
/// stay. Whether the line then crosses itself is said elsewhere, as on level ground.
///
/// A side along the ground is never shorter than on the map and grows with it, so halving finds it.
pub fn side_on_map_m(plan: &Plan, run: &Run, side: usize, ground_m: f64) -> Result<f64, NoSide> {
    let Some(measure) = Measure::of(run, &Heights::of(plan, &mut Vec::new())) else { return Ok(ground_m) };
    let near = |at: &Point| at.east_m.abs() <= geometry::FARTHEST_M && at.north_m.abs() <= geometry::FARTHEST_M;
    let corner = (side + 1) % run.outline.len().max(1);
    let (Some(&from), Some(&to)) = (run.outline.get(side), run.outline.get(corner)) else {
        return Err(NoSide::NotBuilt);
    };
    let sound = run.outline.len() <= geometry::MAX_VERTICES && run.outline.iter().all(near);
    if !(sound && point(from).distance_m(point(to)) > 0.0 && ground_m > 0.0 && ground_m.is_finite()) {
        return Err(NoSide::NotBuilt);
    }
    let along_m = |level_m: f64| {
        let moved = run.with_side_on_map(side, level_m);
        let stated: Vec<_> = moved.outline.iter().copied().map(point).collect();
        let outline = if moved.closed() { Outline::closed(&stated) } else { Outline::open(&stated) };
        let measure = Measure { run: moved, heights: measure.heights.clone() };
        let at = (0..outline.side_count()).find(|&index| outline.vertices()[index].stated == side);
        let found = at.and_then(|at| measure.sides_m(&outline).get(at).copied());
        found.filter(|metres| metres.is_finite()).ok_or(NoSide::NotBuilt)
    };
    let (mut short_m, mut long_m) = (LEAST_SIDE_M.min(ground_m), ground_m);
    if along_m(short_m)? > ground_m {
        return Err(NoSide::TooShort);
    }
    while long_m - short_m > SOUGHT_M {
        let middle_m = f64::midpoint(short_m, long_m);
        // Far out the next number is farther off than what is sought.
        if middle_m <= short_m || middle_m >= long_m {
            break;
        }
        if along_m(middle_m)? < ground_m {
            short_m = middle_m;
        } else {
            long_m = middle_m;
        }
    }
    Ok(f64::midpoint(short_m, long_m))
}

/// The ground of a side of which a corner moves, known as it is where the side lies.
#[derive(Clone, Debug)]
pub(crate) struct SideOnGround {
    heights: Heights,
    evidence: Evidence,
    stated: Option<SideSlope>,
}

impl SideOnGround {
    /// A side of a run by its first corner.
    pub(crate) fn of(run: &Run, side: usize, heights: &Heights) -> Self {
        let level = crate::outlines::of_run(run);
        let found = level.as_ref().and_then(|level| {
            let at = (0..level.side_count()).find(|&at| level.vertices()[at].stated == side)?;
            Some((level, at))
        });
        let stated = found.and_then(|(level, at)| {
            let mut stated = run.side_slopes.iter().rev().filter(|slope| rises_m(slope, 1.0).is_some());
            stated.find(|slope| is_side_of(slope, level, at)).cloned()
        });
        let evidence = level.as_ref().map_or(Evidence::Level, |level| heights.along(level).0);
        Self { heights: heights.clone(), evidence, stated }
    }

    fn profile(&self, from: geometry::Point, to: geometry::Point) -> Option<Profile> {
        let surface: Option<&dyn Surface> = match self.evidence {
            Evidence::Grid => self.heights.grid.as_deref().map(|grid| grid as &dyn Surface),
            Evidence::Spots => self.heights.spots.as_deref().map(|spots| spots as &dyn Surface),
            Evidence::ByHand | Evidence::Level => None,
        };
        let surface = surface?;
        Profile::new(&Outline::open(&[from, to]), |_| SideHeights::Over(surface))
    }

    /// Its length along the ground from one place to another, metres.
    pub(crate) fn along_m(&self, from: geometry::Point, to: geometry::Point) -> f64 {
        let level_m = from.distance_m(to);
        if let Some(rises_m) = self.stated.as_ref().and_then(|stated| rises_m(stated, level_m)) {
            return level_m.hypot(rises_m);
        }
        self.profile(from, to).map_or(level_m, |profile| profile.surface_m())
    }

    /// How far it reaches on the map towards a place where it is that long along the ground, metres; `None` where what it
    /// rises is more.
    pub(crate) fn on_map_m(&self, from: geometry::Point, towards: geometry::Point, along_m: f64) -> Option<f64> {
        if let Some(stated) = &self.stated {
            return match (stated.rises_m, stated.one_in) {
                (Some(rises_m), _) => {
                    let square = (along_m - rises_m) * (along_m + rises_m);
                    (square > 0.0).then(|| square.sqrt())
                }
                (None, Some(one_in)) => Some(along_m / 1.0_f64.hypot(1.0 / one_in)),
                (None, None) => Some(along_m),
            };
        }
        // On the map it is never longer than along the ground.
        let far = from + (towards - from).unit() * along_m;
        Some(self.profile(from, far).map_or(along_m, |profile| profile.level_of(along_m)))
    }
}
