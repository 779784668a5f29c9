//! What the keeper pins of a run's nets, where the run opens, and where the paddock does.

use serde::{Deserialize, Serialize};

use super::{Coop, Plan, Point, Rest, Run};
use crate::defaults;

/// What is pinned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PinKind {
    /// The chain starts here; on an open line, at the end that is nearer.
    Start,
    /// Two nets join here.
    Join,
    /// The corner here is on a post.
    Corner,
    /// A net of a kind lies here.
    Net,
}

/// Something fixed of how the nets fall; the rest is chosen round it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pin {
    /// What is pinned.
    pub kind: PinKind,
    /// Where; the line's nearest place counts.
    pub at: Point,
    /// The kind of net, for a pinned net.
    pub net: Option<String>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Pin {
    /// A pin of a kind at a place.
    pub fn new(kind: PinKind, at: Point) -> Self {
        Self { kind, at, net: None, rest: Rest::new() }
    }
}

/// Who goes through a gate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum GateKind {
    /// The keeper on foot.
    #[default]
    Foot,
    /// A quad and trailer.
    Wheels,
    /// The coop.
    Coop,
}

/// A place where the run opens.
#[derive(Clone, Debug, PartialEq)]
pub struct Gate {
    /// Who goes through.
    pub kind: GateKind,
    /// Where; the nearest join is opened. `None` lets the tool choose the join.
    pub at: Option<Point>,
    /// Clear width, metres.
    pub width_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Gate {
    /// A gate of a kind, of which no more is stated.
    pub fn new(kind: GateKind) -> Self {
        Self { kind, at: None, width_m: None, rest: Rest::new() }
    }

    /// Its clear width, stated or assumed, metres; a coop's is the coop's own width and room on both sides.
    pub fn width_m(&self, coop: Option<&Coop>) -> f64 {
        self.width_m.unwrap_or_else(|| match self.kind {
            GateKind::Foot => defaults::FOOT_GATE_M,
            GateKind::Wheels => defaults::WHEELS_GATE_M,
            GateKind::Coop => coop.map_or(defaults::COOP_WIDTH_M, Coop::width_m) + defaults::COOP_GATE_ROOM_M,
        })
    }
}

/// The way into the paddock.
#[derive(Clone, Debug, PartialEq)]
pub struct Gateway {
    /// Where.
    pub at: Point,
    /// Unknown keys.
    pub rest: Rest,
}

impl Plan {
    /// Where the ways to a place begin: the gateway, else the corner of the boundary that is nearest to that place.
    /// `None` without either.
    pub fn gateway_for(&self, place: Point) -> Option<Point> {
        let off_m = |at: &Point| (at.east_m - place.east_m).hypot(at.north_m - place.north_m);
        let corner = || self.ground.boundary.iter().min_by(|a, b| off_m(a).total_cmp(&off_m(b))).copied();
        self.ground.gateway.as_ref().map(|gateway| gateway.at).or_else(corner)
    }

    /// The coop that is meant by a run's gates: the widest of the run's own, else the plan's.
    pub fn coop_of<'a>(&'a self, run: &'a Run) -> Option<&'a Coop> {
        let wider = |one: &'a Coop, other: &'a Coop| if other.width_m() > one.width_m() { other } else { one };
        self.coops_in(run).reduce(wider).or(self.coop.as_ref())
    }
}
