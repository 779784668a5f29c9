//! One line of netting and what the keeper says of it.

use serde::{Deserialize, Serialize};

use super::{Gate, Pin, Point, Rest, SideSlope};
use crate::defaults;
use crate::lead::Conductor;

/// Whether a run is a thought, a fence or a memory.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RunStatus {
    /// One of several ways that the run could go.
    #[default]
    Option,
    /// It stands in the field and uses up the store.
    Standing,
    /// It stood once.
    Past,
}

/// How the strip is mown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MowWay {
    /// Between canes at the corners, before the nets are rolled out.
    #[default]
    BetweenCanes,
    /// Along the standing net, which is then laid aside and set up again in the middle of the swath.
    AlongNet,
    /// Not at all: the grass is short.
    NotAtAll,
}

/// One line of netting and the ground that it encloses.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Run {
    /// Its id, unique among runs.
    pub id: String,
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Whether the outline closes.
    pub closed: Option<bool>,
    /// Kinds of its nets in order; `None` lets the tool choose from the store.
    pub nets: Option<Vec<String>>,
    /// The coop inside.
    pub coop: Option<String>,
    /// Whether it stands.
    pub status: RunStatus,
    /// Kind of its energizer; `None` is the store's first.
    pub energizer: Option<String>,
    /// Where the live lead meets the net.
    pub feed_at: Option<Point>,
    /// Where the energizer stands.
    pub energizer_at: Option<Point>,
    /// Its earth stakes.
    pub earth_stakes: EarthStakes,
    /// Measured resistance of its earth, ohms, in place of the stakes'.
    pub earth_ohm: Option<f64>,
    /// Leakage, siemens per metre of net.
    pub leakage_s_per_m: Option<f64>,
    /// Stretches of other leakage.
    pub leakage_zones: Vec<LeakageZone>,
    /// Resistance of every join, ohms; `None` is an ideal join.
    pub join_ohm: Option<f64>,
    /// Resistance of the lead to the fence, ohms.
    pub lead_ohm: Option<f64>,
    /// What the lead to the fence is made of, where its ohms are not stated.
    pub lead_of: Option<Conductor>,
    /// How long it is, metres; `None` is as far as the energizer stands from the feed point.
    pub lead_m: Option<f64>,
    /// Where the chain starts, fixed, metres along the outline.
    pub start_m: Option<f64>,
    /// Whether a chain with a fixed start runs against the outline.
    pub reversed: Option<bool>,
    /// Width of the mown strip, metres.
    pub strip_width_m: Option<f64>,
    /// How far it reaches to the left of the outline as stated, metres; `None` is half its width.
    pub strip_left_m: Option<f64>,
    /// How far it reaches to the right, metres; `None` is half its width.
    pub strip_right_m: Option<f64>,
    /// How the strip is mown.
    pub mow_way: Option<MowWay>,
    /// Where the rolls lie before setting up: a gateway, a trailer. It stays there when the run is moved.
    pub drop_at: Option<Point>,
    /// Where the rolls are laid after taking down: where the next run begins.
    pub next_drop_at: Option<Point>,
    /// Whether the live lines are clipped together where the chain closes.
    pub live_loop: Option<bool>,
    /// Braces that stand or are decided.
    pub braces: Vec<StatedBrace>,
    /// Faults that are there or tried.
    pub faults: Vec<Fault>,
    /// What is fixed of how its nets fall; of pins that contradict each other the earlier counts.
    pub pins: Vec<Pin>,
    /// Where it opens.
    pub gates: Vec<Gate>,
    /// Lines of netting that hang on it.
    pub branches: Vec<Branch>,
    /// What sides rise, by hand.
    pub side_slopes: Vec<SideSlope>,
    /// The gap under the bottom line that is allowed, metres; `None` goes by the birds.
    pub gap_under_net_m: Option<f64>,
    /// Whether the map leaves it out; it counts all the same.
    pub hidden: bool,
    /// Whether the hand on the map leaves it where it is.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl Run {
    /// Whether the outline closes, stated or assumed.
    pub fn closed(&self) -> bool {
        self.closed.unwrap_or(defaults::CLOSED)
    }

    /// Whether its closed outline goes round a place, by how often it lies across the way east of there.
    pub fn surrounds(&self, at: Point) -> bool {
        let across = |from: &Point, to: &Point| {
            (from.north_m > at.north_m) != (to.north_m > at.north_m)
                && at.east_m
                    < from.east_m
                        + (at.north_m - from.north_m) / (to.north_m - from.north_m) * (to.east_m - from.east_m)
        };
        let ends = self.outline.iter().cycle().skip(1);
        self.closed() && self.outline.iter().zip(ends).filter(|(from, to)| across(from, to)).count() % 2 == 1
    }

    /// Leakage, stated or assumed, siemens per metre.
    pub fn leakage_s_per_m(&self) -> f64 {
        self.leakage_s_per_m.unwrap_or(defaults::LEAKAGE_S_PER_M)
    }

    /// Width of the strip, stated or assumed, metres.
    pub fn strip_width_m(&self) -> f64 {
        self.strip_width_m.unwrap_or(defaults::STRIP_WIDTH_M)
    }

    /// How far the strip reaches to the left and to the right of the outline, stated or assumed, metres.
    pub fn strip_sides_m(&self) -> [f64; 2] {
        [self.strip_left_m, self.strip_right_m].map(|side_m| side_m.unwrap_or(self.strip_width_m() / 2.0))
    }

    /// Whether nothing is said of the strip's width.
    pub fn strip_is_assumed(&self) -> bool {
        self.strip_width_m.is_none() && (self.strip_left_m.is_none() || self.strip_right_m.is_none())
    }

    /// How the strip is mown, stated or assumed.
    pub fn mow_way(&self) -> MowWay {
        self.mow_way.unwrap_or_default()
    }

    /// Whether the live loop is closed, stated or assumed.
    pub fn live_loop(&self) -> bool {
        self.live_loop.unwrap_or(defaults::LIVE_LOOP)
    }
}

/// A line of netting that hangs on a run's, its live lines joined to it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Branch {
    /// Where it hangs, metres along the run's outline.
    pub from_m: f64,
    /// Its own line, from that place on.
    pub outline: Vec<Point>,
    /// Kinds of its nets in order.
    pub nets: Vec<String>,
    /// Stretches of other leakage, along its own line.
    pub leakage_zones: Vec<LeakageZone>,
    /// Faults that are there or tried, at the nearest place of its own line.
    pub faults: Vec<Fault>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Branch {
    /// The branch as an open run by itself, with what its run says of joins and leakage: what acts on a run's line acts
    /// on a branch's likewise.
    pub fn alone(&self, run: &Run) -> Run {
        Run {
            id: run.id.clone(),
            outline: self.outline.clone(),
            closed: Some(false),
            nets: Some(self.nets.clone()),
            status: run.status,
            leakage_s_per_m: run.leakage_s_per_m,
            leakage_zones: self.leakage_zones.clone(),
            join_ohm: run.join_ohm,
            faults: self.faults.clone(),
            ..Run::default()
        }
    }
}

impl Run {
    /// Faults of its line, or of one of its branches.
    pub fn faults_on(&self, branch: Option<usize>) -> &[Fault] {
        match branch {
            None => &self.faults,
            Some(branch) => self.branches.get(branch).map_or(&[], |branch| &branch.faults),
        }
    }

    /// Stretches of other leakage of its line, or of one of its branches.
    pub fn zones_on(&self, branch: Option<usize>) -> &[LeakageZone] {
        match branch {
            None => &self.leakage_zones,
            Some(branch) => self.branches.get(branch).map_or(&[], |branch| &branch.leakage_zones),
        }
    }

    /// The same to be changed; `None` where it has no such branch.
    pub fn faults_on_mut(&mut self, branch: Option<usize>) -> Option<&mut Vec<Fault>> {
        match branch {
            None => Some(&mut self.faults),
            Some(branch) => self.branches.get_mut(branch).map(|branch| &mut branch.faults),
        }
    }

    /// The same to be changed; `None` where it has no such branch.
    pub fn zones_on_mut(&mut self, branch: Option<usize>) -> Option<&mut Vec<LeakageZone>> {
        match branch {
            None => Some(&mut self.leakage_zones),
            Some(branch) => self.branches.get_mut(branch).map(|branch| &mut branch.leakage_zones),
        }
    }

    /// Its lines of netting: its own, then each branch's by its place.
    pub fn lines(&self) -> impl Iterator<Item = Option<usize>> + use<> {
        std::iter::once(None).chain((0..self.branches.len()).map(Some))
    }

    /// Whether a fault is stated of any of its lines.
    pub fn has_faults(&self) -> bool {
        self.faults_count() > 0
    }

    /// How many faults are stated of all its lines.
    pub fn faults_count(&self) -> usize {
        self.lines().map(|line| self.faults_on(line).len()).sum()
    }

    /// Whether a fault or a stretch of other leakage is stated of any of its lines.
    pub fn is_tried(&self) -> bool {
        self.has_faults() || self.lines().any(|line| !self.zones_on(line).is_empty())
    }

    /// The run without faults; stretches of other grass are how the fence stands, and stay.
    #[must_use]
    pub fn sound(&self) -> Self {
        let mut sound = self.clone();
        sound.faults.clear();
        sound.branches.iter_mut().for_each(|branch| branch.faults.clear());
        sound
    }

    /// The run without faults and without stretches of other leakage.
    #[must_use]
    pub fn untried(&self) -> Self {
        let mut bare = self.sound();
        bare.leakage_zones.clear();
        bare.branches.iter_mut().for_each(|branch| branch.leakage_zones.clear());
        bare
    }
}

/// A run's earth stakes: in line, or each at its place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EarthStakes {
    /// How many stand in line.
    pub count: Option<u32>,
    /// Distance between neighbours in line, metres.
    pub spacing_m: Option<f64>,
    /// Where the first of the line stands.
    pub at: Option<Point>,
    /// Where each stands; where any is stated they are all there are: count and first are passed over, and the spacing
    /// counts for one more stake alone.
    pub places: Vec<Point>,
    /// How long the lead from the energizer to the nearest of them is, metres.
    pub lead_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl EarthStakes {
    /// How many: as they are placed, else as stated or assumed.
    pub fn count(&self) -> u32 {
        if self.places.is_empty() {
            self.count.unwrap_or(defaults::EARTH_STAKE_COUNT)
        } else {
            u32::try_from(self.places.len()).unwrap_or(u32::MAX)
        }
    }

    /// Where the first stands, where that is stated.
    pub fn first(&self) -> Option<Point> {
        self.places.first().copied().or(self.at)
    }

    /// How far the lead from the energizer reaches, stated or assumed, metres.
    pub fn lead_m(&self) -> f64 {
        self.lead_m.unwrap_or(defaults::EARTH_LEAD_M)
    }

    /// Distance between neighbours, stated or assumed, metres.
    pub fn spacing_m(&self) -> f64 {
        self.spacing_m.unwrap_or(defaults::EARTH_STAKE_SPACING_M)
    }
}

/// A stretch of the line with a leakage of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct LeakageZone {
    /// Start along the outline, metres.
    pub from_m: f64,
    /// End along the outline, metres; before the start where the stretch runs over the first vertex.
    pub to_m: f64,
    /// Leakage, siemens per metre.
    pub s_per_m: f64,
    /// Unknown keys.
    pub rest: Rest,
}

/// What a brace is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BraceKind {
    /// A guy line to a stake.
    #[default]
    Guy,
    /// A post of its own.
    Post,
}

/// A brace that the keeper has decided on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StatedBrace {
    /// The corner that it holds, by place.
    pub at: Point,
    /// What it is made of.
    pub kind: BraceKind,
    /// Distance from the vertex to its stake, metres.
    pub stand_off_m: Option<f64>,
    /// Angle of the guy to the ground, degrees.
    pub guy_angle_deg: Option<f64>,
    /// Height at which the guy is tied to its post, metres.
    pub guy_height_m: Option<f64>,
    /// Pegs in line.
    pub pegs: Option<u32>,
    /// Length of a peg, metres.
    pub peg_length_m: Option<f64>,
    /// Diameter of a peg, metres.
    pub peg_diameter_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl StatedBrace {
    /// A brace belongs to a corner or end within this distance, metres.
    pub const REACH_M: f64 = 1.0;
}

/// What is wrong at a place of the fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FaultKind {
    /// A resistance from the live lines to the ground.
    Short,
    /// Every live line is open.
    Break,
    /// Some live lines of one net are broken.
    LineBreak,
    /// A resistance in series at the nearest join.
    Join,
}

/// What a short is made of, where the keeper says so: a word for it, which changes no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FaultCause {
    /// A fallen branch.
    FallenBranch,
    /// A peg on a live line.
    Peg,
}

/// A fault at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Where.
    pub at: Point,
    /// What.
    pub kind: FaultKind,
    /// Its resistance, ohms, for a short or a join.
    pub ohm: Option<f64>,
    /// How many live lines are broken, for broken lines.
    pub lines: Option<u32>,
    /// What a short is made of.
    pub cause: Option<FaultCause>,
    /// Unknown keys.
    pub rest: Rest,
}
