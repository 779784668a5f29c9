//! Corners and ends: which want a brace, and where its stake stands.

use plan::Point;

use crate::bracing::Kit;

/// Whether a corner wants a brace.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It stands.
    #[default]
    None,
    /// It may lean.
    Advised,
    /// It will lean in.
    Required,
}

/// A corner, or an end of the netting.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// Where.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Number of its vertex, from 0; `None` for an end.
    pub vertex: Option<usize>,
    /// Exterior turn, degrees, positive.
    pub turn_deg: f64,
    /// Distance along the line to the nearest post, metres.
    pub to_post_m: f64,
    /// Pull, newtons.
    pub pull_n: f64,
    /// What its post's spikes hold, newtons.
    pub hold_n: f64,
    /// Whether the netting ends here.
    pub end: bool,
    /// Whether the run dents here, so that the stake stands inside.
    pub dents: bool,
    /// Whether it wants a brace.
    pub verdict: Verdict,
    /// Whether the keeper stated a brace here.
    pub braced: bool,
    /// Whether that brace holds as much as is wanted, as [`crate::bracing`] judges it.
    pub holds: bool,
    /// What that brace is made of, or one of the store's where none is stated.
    pub kit: Kit,
    /// The brace's stake.
    pub stake: Stake,
}

/// A brace's stake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stake {
    /// Where it stands.
    pub at: Point,
    /// From the vertex, metres.
    pub stand_off_m: f64,
    /// What it holds, newtons.
    pub hold_n: f64,
}

/// A stretch of gentle turns whose posts pull more than they hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Bend {
    /// The first post's place.
    pub first: Point,
    /// Its place along the line, metres.
    pub first_along_m: f64,
    /// The last post's place.
    pub last: Point,
    /// Its place along the line, metres.
    pub last_along_m: f64,
    /// The worst pull, newtons.
    pub pull_n: f64,
    /// What the post holds there, newtons.
    pub hold_n: f64,
}

impl Corner {
    /// Whether the net cuts across it, for it stands on no post; an end does not.
    pub fn is_between_posts(&self) -> bool {
        !self.end && self.to_post_m >= geometry::MEET_M
    }

    /// Whether a brace is decided here or has to be.
    pub fn needs_brace(&self) -> bool {
        self.braced || self.verdict == Verdict::Required
    }

    /// Whether the brace that the keeper stated here is too weak.
    pub fn brace_too_weak(&self) -> bool {
        self.braced && !self.holds
    }

    /// Whether a brace is advised here and not decided.
    pub fn brace_advised(&self) -> bool {
        !self.braced && self.verdict == Verdict::Advised
    }
}
