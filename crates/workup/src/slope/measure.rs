//! Lines drawn in place of a run's, as long as they would be along its ground.

use geometry::slope::{Profile, SideHeights};
use geometry::{Outline, Point};
use plan::{Plan, Run};

use super::{Ground, Heights, by_hand, ground, rises_m, side_heights};

/// The length along the ground of lines drawn in place of a run's, as the run's own is measured.
#[derive(Clone, Debug)]
pub(crate) struct Measure {
    pub(super) run: Run,
    pub(super) heights: Heights,
}

/// A run's line laid on its ground, along which places are metres of netting; `None` where the ground is level or the line
/// cannot be built.
pub fn on_ground(plan: &Plan, run: &Run) -> Option<Outline> {
    let measure = Measure::of(run, &Heights::of(plan, &mut Vec::new()))?;
    measure.laid(&crate::outlines::of_run(run)?)
}

impl Measure {
    /// For a run; `None` where what is known of its ground says that it is level.
    pub(crate) fn of(run: &Run, heights: &Heights) -> Option<Self> {
        let by_hand = run.side_slopes.iter().any(|slope| rises_m(slope, 1.0).is_some_and(|rises_m| rises_m != 0.0));
        (by_hand || heights.rise()).then(|| Self { run: run.clone(), heights: heights.clone() })
    }

    /// A line laid on the ground; `None` where nothing is known there, and it is as long as on the map.
    pub(crate) fn laid(&self, level: &Outline) -> Option<Outline> {
        ground(&self.run, level, &self.heights).map(|ground| level.over(&ground.profile))
    }

    /// The sides of a line along the ground, metres.
    pub(crate) fn sides_m(&self, level: &Outline) -> Vec<f64> {
        match ground(&self.run, level, &self.heights) {
            Some(Ground { profile, .. }) => (0..level.side_count())
                .map(|side| {
                    let (from, to) = profile.side(side);
                    to.along_m - from.along_m
                })
                .collect(),
            None => level.sides().map(|(from, to)| from.distance_m(to)).collect(),
        }
    }

    /// A straight stretch of net off the line's sides, along the ground, metres: what is stated of a side is none of its.
    pub(crate) fn between_m(&self, from: Point, to: Point) -> f64 {
        let level = Outline::open(&[from, to]);
        let heights = self.heights.along(&level).1.map_or(SideHeights::Level, SideHeights::Over);
        Profile::new(&level, |_| heights).map_or(level.length_m(), |profile| profile.surface_m())
    }

    /// The two sides that meet at a vertex of a closed line, along the ground, metres.
    pub(crate) fn beside_m(&self, level: &Outline, vertex: usize) -> f64 {
        let by_hand = by_hand(&self.run.side_slopes, level);
        let surface = self.heights.along(level).1;
        let sides = [(vertex + level.side_count() - 1) % level.side_count(), vertex];
        let side_m = |side: usize| {
            let (from, to) = level.side(side);
            let profile = Profile::new(&Outline::open(&[from, to]), |_| side_heights(by_hand[side], surface));
            profile.map_or(from.distance_m(to), |profile| profile.surface_m())
        };
        sides.into_iter().map(side_m).sum()
    }

    /// The same of the whole line.
    pub(crate) fn line_m(&self, level: &Outline) -> f64 {
        ground(&self.run, level, &self.heights).map_or(level.length_m(), |ground| ground.profile.surface_m())
    }
}
