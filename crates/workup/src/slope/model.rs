//! What is told of the ground along a run.

use plan::Point;

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
