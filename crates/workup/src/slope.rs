//! The ground along a run: metres of net on slopes, gaps and ridges under its bottom line, through `geometry`.
//!
//! What is stated by hand of a side counts for that side before any height. For the other sides one source counts: the
//! grid where it knows the whole line, else the spot heights where there are two, else what the grid knows, with its
//! holes bridged straight. The two are never mixed along a line: they may be heights over different levels. Where
//! nothing is known the ground is level, and without any height a run has no [`Slope`] at all.

mod measure;
mod model;
mod side;

use std::sync::Arc;

use geometry::slope::{Grid, Profile, SideHeights, Spots, Surface, UnevenRequest};
use geometry::{Outline, Placement};
use plan::{Plan, Point, Run, SideSlope};

use crate::model::Trouble;
use crate::{place, point};

pub(crate) use measure::Measure;
pub use measure::on_ground;
pub use model::{Evidence, FurtherPost, SideGround, Slope, Steepest, Uneven, Worst};
pub(crate) use side::SideOnGround;
pub use side::{NoSide, side_on_map_m};

/// Ground steeper than this over two metres is taken for a slip of the pen: common practice, no source.
pub const STEEPEST: f64 = 0.6;

/// The stretch over which steepness is judged, metres: the least usual distance between posts.
pub const STEEP_OVER_M: f64 = 2.0;

/// Heights beyond this are a slip of the pen, metres.
pub(crate) const HIGHEST_M: f64 = 1e5;

/// More spot heights than this are a survey: a grid holds them.
pub(crate) const MOST_SPOTS: usize = 2_000;

/// What a plan knows of heights, ready to be looked up.
#[derive(Clone, Debug, Default)]
pub(crate) struct Heights {
    grid: Option<Arc<Grid>>,
    spots: Option<Arc<Spots>>,
}

impl Heights {
    /// The heights of a plan; a grid that is none adds a trouble.
    pub(crate) fn of(plan: &Plan, troubles: &mut Vec<Trouble>) -> Self {
        let mut heights = Self::default();
        let near = |at: Point| at.east_m.abs().max(at.north_m.abs()) <= geometry::FARTHEST_M;
        let sound = |up_m: f64| up_m.abs() <= HIGHEST_M;
        let grid = plan.ground.height_grid.as_ref();
        if let Some(grid) = grid.filter(|grid| grid.up_m.iter().flatten().all(|&up_m| sound(up_m))) {
            let up_m = grid.up_m.clone();
            heights.grid = Grid::new(point(grid.south_west), grid.cell_m, grid.columns as usize, up_m).map(Arc::new);
            if heights.grid.is_none() {
                troubles.push(Trouble::HeightGrid { heights: grid.up_m.len(), columns: grid.columns });
            }
        }
        if plan.heights.len() > 1 {
            let stated = plan.heights.iter().take(MOST_SPOTS).filter(|height| sound(height.up_m) && near(height.at));
            let stated: Vec<_> = stated.map(|height| (point(height.at), height.up_m)).collect();
            heights.spots = Spots::new(&stated).map(Arc::new);
        }
        heights
    }

    /// Whether any of it lies higher than the rest.
    fn rise(&self) -> bool {
        self.grid.as_deref().is_some_and(Grid::rises) || self.spots.as_deref().is_some_and(Spots::rise)
    }

    /// The source that counts for a line, and what it is.
    fn along(&self, level: &Outline) -> (Evidence, Option<&dyn Surface>) {
        let by_grid = self.grid.as_deref().map(|grid| (grid, unknown_m(level, grid)));
        match (by_grid, self.spots.as_deref()) {
            (Some((grid, 0.0)), _) => (Evidence::Grid, Some(grid)),
            (_, Some(spots)) => (Evidence::Spots, Some(spots)),
            // A grid that the line never meets says nothing of it.
            (Some((grid, unknown_m)), None) if unknown_m < level.length_m() - geometry::MEET_M => {
                (Evidence::Grid, Some(grid))
            }
            _ => (Evidence::Level, None),
        }
    }
}

fn unknown_m(level: &Outline, surface: &dyn Surface) -> f64 {
    Profile::new(level, |_| SideHeights::Over(surface)).map_or(0.0, |profile| profile.unknown_m)
}

/// The ground along a line, and what it is known by.
pub(crate) struct Ground<'a> {
    pub(crate) profile: Profile,
    sides: Vec<Evidence>,
    /// The heights that count for the sides of which nothing is stated by hand.
    surface: Option<&'a dyn Surface>,
}

/// The ground along a run's line; `None` where nothing is known of it.
pub(crate) fn ground<'a>(run: &Run, level: &Outline, heights: &'a Heights) -> Option<Ground<'a>> {
    let by_hand = by_hand(&run.side_slopes, level);
    let (evidence, surface) = heights.along(level);
    if surface.is_none() && by_hand.iter().all(Option::is_none) {
        return None;
    }
    let profile = Profile::new(level, |side| side_heights(by_hand[side], surface))?;
    let sides = by_hand.iter().map(|stated| if stated.is_some() { Evidence::ByHand } else { evidence }).collect();
    Some(Ground { profile, sides, surface })
}

/// What is known along a side by what is stated of it, else by the heights that count.
fn side_heights(rises_m: Option<f64>, surface: Option<&dyn Surface>) -> SideHeights<'_> {
    match (rises_m, surface) {
        (Some(rises_m), _) => SideHeights::Rises(rises_m),
        (None, Some(surface)) => SideHeights::Over(surface),
        (None, None) => SideHeights::Level,
    }
}

/// What each side is stated to rise, metres.
fn by_hand(stated: &[SideSlope], level: &Outline) -> Vec<Option<f64>> {
    let mut rises = vec![None; level.side_count()];
    for slope in stated {
        let Some(side) = side_of(slope, level) else { continue };
        let (from, to) = level.side(side);
        if let Some(rises_m) = rises_m(slope, from.distance_m(to)) {
            rises[side] = Some(rises_m);
        }
    }
    rises
}

/// The side that a statement is about: the nearest to its place.
fn side_of(slope: &SideSlope, level: &Outline) -> Option<usize> {
    let at = point(slope.at);
    let apart_m = |side: &usize| {
        let (from, to) = level.side(*side);
        geometry::region::distance_to_m(&Outline::open(&[from, to]), at)
    };
    (0..level.side_count()).min_by(|a, b| apart_m(a).total_cmp(&apart_m(b)))
}

/// Whether a statement is about that side.
pub(crate) fn is_side_of(slope: &SideSlope, level: &Outline, side: usize) -> bool {
    side_of(slope, level) == Some(side)
}

/// What a side of that length rises, metres; `None` where nothing is stated that can be worked with.
fn rises_m(slope: &SideSlope, side_m: f64) -> Option<f64> {
    match (slope.rises_m, slope.one_in) {
        (Some(rises_m), _) => (rises_m.abs() <= MOST_RISE_M).then_some(rises_m),
        (None, Some(one_in)) => (one_in.abs() >= LEAST_ONE_IN).then(|| side_m / one_in),
        (None, None) => None,
    }
}

/// One in less than this is next to nothing, and no slope.
pub(crate) const LEAST_ONE_IN: f64 = 0.01;

/// A side that rises more than this is a slip of the pen, metres.
pub(crate) const MOST_RISE_M: f64 = 10_000.0;

impl Ground<'_> {
    /// What follows for the run, once its nets are laid on `outline`.
    pub(crate) fn slope(&self, plan: &Plan, run: &Run, outline: &Outline, placement: Option<&Placement>) -> Slope {
        let profile = &self.profile;
        let steepest = profile.steepest(STEEP_OVER_M);
        let allowed_gap_m = plan.gap_under_net_m(run);
        let steep_along_m = outline.vertices().first().map_or(0.0, |_| profile.along_of(steepest.level_m));
        let sides = self.sides.iter().enumerate().map(|(side, &evidence)| {
            let (from, to) = profile.side(side);
            SideGround {
                vertex: outline.vertices()[side].stated,
                evidence,
                rises_m: to.up_m - from.up_m,
                level_m: to.level_m - from.level_m,
                surface_m: to.along_m - from.along_m,
            }
        });
        Slope {
            level_m: profile.level_m(),
            surface_m: profile.surface_m(),
            range_m: profile.range_m(),
            steepest: Steepest {
                slope: steepest.slope.abs(),
                at: place(outline.at(steep_along_m)),
                along_m: steep_along_m,
            },
            sides: sides.collect(),
            unknown_m: profile.unknown_m,
            beyond_m: profile.beyond_m,
            closing_m: profile.closing_m(),
            allowed_gap_m,
            uneven: placement.map_or_else(Vec::new, |placement| {
                let across = |vertices: &[usize], from, to| self.across(vertices, from, to);
                let request =
                    UnevenRequest { outline, profile, placement, gap_m: allowed_gap_m, live_m: &[], across: &across };
                uneven(plan, &request)
            }),
        }
    }

    /// The ground straight across corners: known where heights are those of both sides at each.
    fn across(&self, vertices: &[usize], from: geometry::Point, to: geometry::Point) -> Option<Profile> {
        let surface = self.surface?;
        let count = self.sides.len();
        let measured = |side: usize| !matches!(self.sides[side], Evidence::ByHand | Evidence::Level);
        if !vertices.iter().all(|&vertex| measured((vertex + count - 1) % count) && measured(vertex % count)) {
            return None;
        }
        Profile::new(&Outline::open(&[from, to]), |_| SideHeights::Over(surface))
            .filter(|straight| straight.unknown_m == 0.0)
    }
}

fn uneven(plan: &Plan, request: &UnevenRequest<'_>) -> Vec<Uneven> {
    let lowest_m = |net: &plan::NetKind| net.live_line_heights_m().iter().copied().fold(f64::INFINITY, f64::min);
    let placement = request.placement;
    let live_m: Vec<f64> = plan.store.nets.iter().map(lowest_m).map(|height_m| height_m.max(0.0)).collect();
    let worst =
        |worst: &geometry::slope::Worst| Worst { at: place(worst.at), along_m: worst.along_m, by_m: worst.by_m };
    geometry::slope::uneven(&UnevenRequest { live_m: &live_m, ..*request })
        .into_iter()
        .map(|panel| {
            let further = |&(along_m, at): &(f64, geometry::Point)| {
                let from_post_m = placement.chain_at_m(along_m) - placement.posts[panel.post].chain_m;
                FurtherPost { at: place(at), along_m, from_post_m }
            };
            let mut posts: Vec<FurtherPost> = panel.posts.iter().map(further).collect();
            // A chain that runs against the outline comes to them the other way round.
            posts.sort_by(|a, b| a.from_post_m.total_cmp(&b.from_post_m));
            Uneven {
                post: panel.post,
                dip: panel.dip.as_ref().map(worst),
                ridge: panel.ridge.as_ref().map(worst),
                posts,
            }
        })
        .collect()
}
