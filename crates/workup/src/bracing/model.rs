//! What follows for a run's corners and ends in detail, and for its straights in the wind.

use geometry::GuyForces;
use plan::{BraceKind, Point, StatedBrace};

/// Braces and wind of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bracing {
    /// One for each corner and end of the lay, in its order.
    pub details: Vec<Detail>,
    /// The wind.
    pub wind: Wind,
    /// Wanted ratio of hold to pull.
    pub wanted: f64,
}

/// A corner or end in detail.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Detail {
    /// Ratio of what its spikes hold to the pull; infinite where nothing pulls.
    pub safety: f64,
    /// The braces that are stated for it: their places in the run's, the farthest first; the last counts.
    pub braces: Vec<usize>,
    /// That one, judged.
    pub stated: Option<Judged>,
    /// What would mend it, as listed; empty where it stands or its brace holds.
    pub mends: Vec<Mend>,
    /// The cheapest of those that hold.
    pub cheapest: Option<usize>,
}

impl Detail {
    /// The cheapest mend that holds.
    pub fn cheapest(&self) -> Option<&Mend> {
        self.mends.get(self.cheapest?)
    }

    /// The cut that holds, where one does.
    pub fn cut(&self) -> Option<&Mend> {
        self.mends.iter().find(|mend| mend.cut.is_some())
    }
}

/// A brace judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// What it is made of.
    pub kind: BraceKind,
    /// Forces of a guy.
    pub guy: Option<GuyForces>,
    /// The height at which that guy is tied, metres.
    pub tied_m: Option<f64>,
    /// What the corner's post and its brace hold together, newtons, of a brace post.
    pub hold_n: Option<f64>,
    /// The least ratio of hold to load.
    pub safety: f64,
    /// Whether that is as much as is wanted.
    pub holds: bool,
}

/// What a mend is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MendKind {
    /// A guy as the store has it.
    Guy,
    /// A guy with a longer peg.
    LongerPeg,
    /// A guy with two pegs in line.
    SecondPeg,
    /// A guy with two longer pegs.
    LongerPegs,
    /// A post of its own beside the corner's.
    BracePost,
    /// The corner cut over several posts.
    CutCorner,
}

impl MendKind {
    /// Every kind, in the order in which they are listed.
    pub const ALL: [Self; 6] =
        [Self::Guy, Self::LongerPeg, Self::SecondPeg, Self::LongerPegs, Self::BracePost, Self::CutCorner];

    /// Their names in the report.
    pub const IDS: [&'static str; 6] = ["guy", "longer_peg", "second_peg", "longer_pegs", "brace_post", "cut_corner"];

    /// Its name in the report.
    pub fn id(self) -> &'static str {
        Self::IDS[self as usize]
    }
}

/// Something that may mend a corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Mend {
    /// What it is.
    pub kind: MendKind,
    /// The brace to state, where it is one.
    pub brace: Option<StatedBrace>,
    /// It judged, where it is a brace.
    pub judged: Option<Judged>,
    /// The cut, where it is one.
    pub cut: Option<CutMend>,
    /// Length of the peg or post in the ground, metres; 0 for a cut.
    pub length_m: f64,
    /// Pegs; 0 for a post or a cut.
    pub pegs: u32,
    /// Ratio of hold to load at its weakest.
    pub safety: f64,
    /// Whether it holds: a brace as much as is wanted, a cut so that every post of it stands.
    pub holds: bool,
    /// Minutes of work.
    pub minutes: f64,
    /// Things to carry there and back.
    pub carried: u32,
    /// Minutes with what is carried and what ground is lost, all in one figure.
    pub cost_minutes: f64,
}

/// A corner cut over several posts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CutMend {
    /// The stated vertex that gives way, from 0.
    pub vertex: usize,
    /// The braces that are stated for it and go with it: their places in the run's.
    pub braces: Vec<usize>,
    /// The places that stand in for it.
    pub places: Vec<Point>,
    /// Turn at each of them, degrees.
    pub turn_deg: f64,
    /// Pull at each of them, newtons.
    pub pull_n: f64,
    /// So much shorter is the line, metres.
    pub shorter_m: f64,
    /// Ground lost, square metres; negative where it is won.
    pub lost_m2: f64,
    /// From the first of the places to the corner and from there to the last, metres along the line.
    pub along_m: [f64; 2],
    /// How far the places then lie from the posts as the nets fall, at most, metres; worked out at full depth.
    pub off_post_m: Option<f64>,
}

/// The wind on a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wind {
    /// The wind that it must stand, where one is stated, metres a second.
    pub wanted_m_per_s: Option<f64>,
    /// Share of a clean net's face that is strand; of several kinds the greatest.
    pub clean_share: f64,
    /// The same fouled.
    pub fouled_share: f64,
    /// What it does with a clean net; `None` where no post stands free.
    pub clean: Option<GoesOver>,
    /// What it does with a fouled net.
    pub fouled: Option<GoesOver>,
}

/// When the posts of a run go over.
#[derive(Clone, Debug, PartialEq)]
pub struct GoesOver {
    /// The wind at which the first do, metres a second.
    pub limit_m_per_s: f64,
    /// The posts of the stretch that goes first, or of several that are alike, as places in the lay's posts.
    pub posts: Vec<usize>,
    /// How many stretches are alike in that.
    pub alike: usize,
    /// The post in the middle of the first of them.
    pub first_post: usize,
    /// Where it stands.
    pub at: Point,
    /// Length of that stretch, metres.
    pub stretch_m: f64,
    /// Posts that have gone over in the wind that it must stand; `None` where none is stated.
    pub over: Option<usize>,
    /// Posts that stand free of any brace.
    pub free: usize,
}
