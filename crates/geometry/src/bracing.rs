//! What a brace takes and what it holds: a guy to one peg or two, or a second post beside the first.
//!
//! Newtons, metres, radians; ultimate holds, without a safety factor: the ratio of hold to load is given beside them.
//! The post is taken as pinned at the ground: the net's resultant acts at one height and the guy at another, so the guy
//! takes the pull in the ratio of the heights and the post's own spikes take the rest at the ground. The peg's hold
//! sideways and its hold against being drawn out are looked at each for itself. A guy that sags, a stake that bends and
//! turf are left out. Sources: statics; docs/sources.md, husbandry 2.4 to 2.6.

use crate::statics::{guy_lift_n, guy_reach_m, guy_tension_n};
use crate::{Soil, Spike};

/// What each further peg in line adds, as a share of the first: three wooden pickets in line take 1,800 lb where one takes
/// 700 (a naval manual for builders, docs/sources.md, husbandry S8), so (1800 / 700 - 1) / 2.
pub const PEG_IN_LINE_SHARE: f64 = (1_800.0 / 700.0 - 1.0) / 2.0;

/// A guy from a post to its peg or pegs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guy {
    /// The ground.
    pub soil: Soil,
    /// Pull of the net, newtons, level.
    pub pull_n: f64,
    /// Height at which it acts, metres.
    pub pull_height_m: f64,
    /// Height at which the guy is tied, metres.
    pub tied_m: f64,
    /// Angle of the guy to the ground, radians, above 0 and below a right angle.
    pub angle_rad: f64,
    /// One peg.
    pub peg: Spike,
    /// Pegs in line; at least one counts.
    pub pegs: u32,
    /// Height of the loop on the peg, metres.
    pub loop_m: f64,
    /// One spike of the post.
    pub spike: Spike,
    /// Spikes of the post.
    pub spikes: u32,
}

/// What a guy takes and what holds against it, newtons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuyForces {
    /// Level part of the guy's force.
    pub level_n: f64,
    /// Along the guy.
    pub tension_n: f64,
    /// Down the post, and up at the peg.
    pub lift_n: f64,
    /// Left to the post's spikes, at the ground.
    pub foot_n: f64,
    /// From the post to the peg, metres.
    pub reach_m: f64,
    /// What the pegs hold sideways.
    pub side_hold_n: f64,
    /// What they hold against being drawn out.
    pub lift_hold_n: f64,
    /// What the spikes hold at the ground.
    pub foot_hold_n: f64,
}

impl GuyForces {
    /// The least ratio of hold to load; infinite where nothing pulls.
    pub fn safety(&self) -> f64 {
        self.side_safety().min(self.lift_safety()).min(self.foot_safety())
    }

    /// Ratio of hold to load sideways at the peg.
    pub fn side_safety(&self) -> f64 {
        ratio(self.side_hold_n, self.level_n)
    }

    /// Ratio of hold to load upwards at the peg.
    pub fn lift_safety(&self) -> f64 {
        ratio(self.lift_hold_n, self.lift_n)
    }

    /// Ratio of hold to load at the post's foot.
    pub fn foot_safety(&self) -> f64 {
        ratio(self.foot_hold_n, self.foot_n)
    }
}

/// Below this a load is none, newtons.
const NO_LOAD_N: f64 = 1e-9;

fn ratio(hold_n: f64, load_n: f64) -> f64 {
    if load_n.abs() < NO_LOAD_N { f64::INFINITY } else { hold_n / load_n.abs() }
}

/// Works a guy out.
///
/// ```
/// use geometry::{Guy, Soil, Spike, guy};
///
/// // docs/sources.md, husbandry 2.5, corner example: 141.42 N at half of 1.05 m, tied at 1.0 m under 45 degrees.
/// let found = guy(&Guy {
///     soil: Soil::Clay { undrained_strength_pa: 50e3 },
///     pull_n: 141.4214,
///     pull_height_m: 0.525,
///     tied_m: 1.0,
///     angle_rad: 45_f64.to_radians(),
///     peg: Spike { length_m: 0.3, diameter_m: 0.012 },
///     pegs: 1,
///     loop_m: 0.05,
///     spike: Spike { length_m: 0.2, diameter_m: 0.01 },
///     spikes: 1,
/// });
/// assert!((found.tension_n - 105.0).abs() < 0.1 && (found.side_safety() - 6.3).abs() < 0.05);
/// ```
pub fn guy(guy: &Guy) -> GuyForces {
    let level_n = if guy.tied_m > 0.0 { guy.pull_n * guy.pull_height_m / guy.tied_m } else { guy.pull_n };
    let pegs = 1.0 + PEG_IN_LINE_SHARE * f64::from(guy.pegs.max(1) - 1);
    GuyForces {
        level_n,
        tension_n: guy_tension_n(level_n, guy.angle_rad),
        lift_n: guy_lift_n(level_n, guy.angle_rad),
        foot_n: (guy.pull_n - level_n).abs(),
        reach_m: guy_reach_m(guy.tied_m, guy.angle_rad),
        side_hold_n: pegs * guy.soil.hold_n(guy.peg, guy.loop_m, false),
        lift_hold_n: pegs * guy.soil.uplift_n(guy.peg),
        foot_hold_n: f64::from(guy.spikes) * guy.soil.hold_n(guy.spike, 0.0, false),
    }
}

/// A second post driven beside a corner's and tied to it at the height of the pull.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BracePost {
    /// The ground.
    pub soil: Soil,
    /// Height at which the net pulls, metres.
    pub pull_height_m: f64,
    /// The part of the brace post that is in the ground.
    pub post: Spike,
    /// What the corner's own spikes hold at that height, newtons.
    pub own_hold_n: f64,
}

/// What both posts hold together, newtons: both give way at once, so that their ultimate holds add up.
pub fn brace_post(brace: &BracePost) -> f64 {
    brace.own_hold_n + brace.soil.hold_n(brace.post, brace.pull_height_m, false)
}
