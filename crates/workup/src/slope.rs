//! The ground along a run: metres of net on slopes, gaps and ridges under its bottom line, through `geometry`.
//!
//! What is stated by hand of a side counts for that side before any height. For the other sides one source counts: the
//! grid where it knows the whole line, else the spot heights where there are two, else what the grid knows, with its
//! holes bridged straight. The two are never mixed along a line: they may be heights over different levels. Where
//! nothing is known the ground is level, and without any height a run has no [`Slope`] at all.

use std::sync::Arc;

use geometry::slope::{Grid, Profile, SideHeights, Spots, Surface, UnevenRequest};
use geometry::{Outline, Placement};
use plan::{Plan, Point, Run, SideSlope};

use crate::model::Trouble;
use crate::{place, point};

/// Ground steeper than this over two metres is taken for a slip of the pen: common practice, no source.
pub const STEEPEST: f64 = 0.6;

/// The stretch over which steepness is judged, metres: the least usual distance between posts.
pub const STEEP_OVER_M: f64 = 2.0;

/// Heights beyond this are a slip of the pen, metres.
pub(crate) const HIGHEST_M: f64 = 1e5;

/// More spot heights than this are a survey: a grid holds them.
pub(crate) const MOST_SPOTS: usize = 2_000;

/// What is known of the ground along a side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Evidence {
    /// Nothing: it is taken as level.
    #[default]
    Level,
    /// What the keeper stated of the side.
    ByHand,
    /// Heights of spots.
    Spots,
    /// A grid of heights.
    Grid,
}

/// The ground along a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Slope {
    /// Length of the line in plan, metres.
    pub level_m: f64,
    /// Length of the line along the ground, metres: the net that it takes.
    pub surface_m: f64,
    /// From the lowest to the highest place of the line, metres.
    pub range_m: f64,
    /// The steepest two metres.
    pub steepest: Steepest,
    /// The sides in order.
    pub sides: Vec<SideGround>,
    /// Metres of the line of which no height is known, taken as straight.
    pub unknown_m: f64,
    /// Metres of the line beyond the outermost spot heights, with the height of their edge.
    pub beyond_m: f64,
    /// How much higher a closed line would end than it began by what its sides are stated to rise, metres: sides of
    /// which nothing is stated count by the heights, or as level.
    pub closing_m: f64,
    /// The gap under the bottom line that is allowed, metres.
    pub allowed_gap_m: f64,
    /// Panels under which the ground dips or rises too far, in chain order.
    pub uneven: Vec<Uneven>,
}

impl Slope {
    /// Panels with a dip.
    pub fn dips(&self) -> impl Iterator<Item = (&Uneven, &Worst)> {
        self.uneven.iter().filter_map(|panel| Some((panel, panel.dip.as_ref()?)))
    }

    /// Panels with a ridge.
    pub fn ridges(&self) -> impl Iterator<Item = (&Uneven, &Worst)> {
        self.uneven.iter().filter_map(|panel| Some((panel, panel.ridge.as_ref()?)))
    }

    /// Places for further posts.
    pub fn posts(&self) -> impl Iterator<Item = Point> {
        self.uneven.iter().flat_map(|panel| panel.posts.iter().map(|post| post.at))
    }
}

/// A steep stretch of the line.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Steepest {
    /// Rise over run, without sign.
    pub slope: f64,
    /// Its middle.
    pub at: Point,
    /// Along the line, metres.
    pub along_m: f64,
}

/// The ground along a side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideGround {
    /// The side's first vertex as stated, from 0.
    pub vertex: usize,
    /// How its ground is known.
    pub evidence: Evidence,
    /// How much its end lies above its start, metres.
    pub rises_m: f64,
    /// Its length in plan, metres.
    pub level_m: f64,
    /// Its length along the ground, metres.
    pub surface_m: f64,
}

/// A panel over uneven ground.
#[derive(Clone, Debug, PartialEq)]
pub struct Uneven {
    /// The post where it begins: its place in [`crate::Lay::posts`].
    pub post: usize,
    /// The widest gap, where it is more than is allowed.
    pub dip: Option<Worst>,
    /// The highest ground, where it is above the lowest live line.
    pub ridge: Option<Worst>,
    /// Where further posts go; empty where no three of them mend it.
    pub posts: Vec<FurtherPost>,
}

/// Where the ground is farthest from the bottom line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worst {
    /// Where.
    pub at: Point,
    /// Along the line, metres.
    pub along_m: f64,
    /// How far, metres.
    pub by_m: f64,
}

/// A post beside the net's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FurtherPost {
    /// Where.
    pub at: Point,
    /// Along the line, metres.
    pub along_m: f64,
    /// From the post where the panel begins, along the net, metres.
    pub from_post_m: f64,
}

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

/// The length along the ground of lines drawn in place of a run's, as the run's own is measured.
#[derive(Clone, Debug)]
pub(crate) struct Measure {
    run: Run,
    heights: Heights,
}

/// A run's line laid on its ground, along which places are metres of netting; `None` where the ground is level or the line
/// cannot be built.
pub fn on_ground(plan: &Plan, run: &Run) -> Option<Outline> {
    let measure = Measure::of(run, &Heights::of(plan, &mut Vec::new()))?;
    measure.laid(&crate::outlines::of_run(run)?)
}

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
    pub(crate) fn between_m(&self, from: geometry::Point, to: geometry::Point) -> f64 {
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
            let heights = match (by_hand[side], surface) {
                (Some(rises_m), _) => SideHeights::Rises(rises_m),
                (None, Some(surface)) => SideHeights::Over(surface),
                (None, None) => SideHeights::Level,
            };
            let profile = Profile::new(&Outline::open(&[from, to]), |_| heights);
            profile.map_or(from.distance_m(to), |profile| profile.surface_m())
        };
        sides.into_iter().map(side_m).sum()
    }

    /// The same of the whole line.
    pub(crate) fn line_m(&self, level: &Outline) -> f64 {
        ground(&self.run, level, &self.heights).map_or(level.length_m(), |ground| ground.profile.surface_m())
    }
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
    let profile = Profile::new(level, |side| match (by_hand[side], surface) {
        (Some(rises_m), _) => SideHeights::Rises(rises_m),
        (None, Some(surface)) => SideHeights::Over(surface),
        (None, None) => SideHeights::Level,
    })?;
    let sides = by_hand.iter().map(|stated| if stated.is_some() { Evidence::ByHand } else { evidence }).collect();
    Some(Ground { profile, sides, surface })
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
}

impl Ground<'_> {
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
