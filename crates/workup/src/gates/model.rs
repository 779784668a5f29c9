//! What follows for a gate, as values: metres.

use plan::{GateKind, Point};

/// A gate, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct GateWork {
    /// Who goes through.
    pub kind: GateKind,
    /// The clear width asked for, metres.
    pub width_m: f64,
    /// From the stated place to the join that is opened, metres; `None` where the tool chose the join.
    pub from_stated_m: Option<f64>,
    /// What is opened; `None` where the run has no join.
    pub opening: Option<Opening>,
    /// The way from the gateway.
    pub road: Option<Road>,
    /// Why there is none.
    pub no_road: Option<NoRoad>,
    /// Whether every join is opened by another gate.
    pub none_left: bool,
    /// The gate that opens the join where this one is wanted, by its place in the run's list.
    pub taken_by: Option<usize>,
    /// The gate whose clear width this one's runs into, by its place in the run's list.
    pub runs_into: Option<usize>,
}

impl GateWork {
    pub(super) fn none(kind: GateKind) -> Self {
        Self {
            kind,
            width_m: 0.0,
            from_stated_m: None,
            opening: None,
            road: None,
            no_road: None,
            none_left: false,
            taken_by: None,
            runs_into: None,
        }
    }

    /// Whether the way is yet to be worked out.
    pub fn waits(&self) -> bool {
        self.no_road == Some(NoRoad::Waiting)
    }

    /// Leaves the way to be worked out anew, where there may be one.
    pub fn wait(&mut self) {
        let cheap = matches!(self.no_road, Some(NoRoad::NoGateway | NoRoad::Narrow));
        if self.opening.is_some() && !cheap {
            (self.road, self.no_road) = (None, Some(NoRoad::Waiting));
        }
    }

    /// Whether the opening is as wide as was asked for.
    pub fn is_wide_enough(&self) -> bool {
        self.opening.as_ref().is_some_and(|opening| opening.clear_m >= self.width_m - geometry::EQUAL_SUMS_M)
    }
}

/// What is opened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Opening {
    /// The join that is untied.
    pub join: Point,
    /// The same along the outline, metres.
    pub join_along_m: f64,
    /// The nets before and after it, in the chain's order.
    pub nets: (usize, usize),
    /// The middle of the opening.
    pub at: Point,
    /// Where the opening begins, along the outline, metres.
    pub from_m: f64,
    /// The opening's clear width, metres.
    pub clear_m: f64,
    /// The line between the two posts that stay, along the outline.
    pub gap: Vec<Point>,
    /// The posts that are pulled: places in the lay's posts.
    pub pulled: Vec<usize>,
    /// Panels that are laid back.
    pub panels: usize,
    /// For each net that is laid back: the post that it turns about and the place of its end when shut.
    pub leaves: Vec<(Point, Point)>,
    /// Where the laid-back panels lie: along the netting that stays, from the post that they turn about.
    pub laid_back: Vec<Vec<Point>>,
    /// From the opening to the nearest corner along the line, metres; `None` on a line without corners.
    pub to_corner_m: Option<f64>,
    /// The places that it should keep off and does not.
    pub near: Vec<Near>,
}

/// A place that a gate should keep off.
#[derive(Clone, Debug, PartialEq)]
pub struct Near {
    /// What it is.
    pub kind: OffKind,
    /// Straight distance from the opening, metres; 0 within.
    pub apart_m: f64,
}

/// What a gate keeps off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OffKind {
    /// Water, and the wet ground about it: a keep-out, by its place in the list.
    Water(usize),
    /// A dip under the net, where water stands.
    Dip,
}

/// The way from the gateway to the gate, and for a coop from the coop to the gate.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Road {
    /// Where it begins.
    pub gateway: Point,
    /// From the gateway to the middle of the opening.
    pub points: Vec<Point>,
    /// The length of that, metres.
    pub length_m: f64,
    /// From the coop to the middle of the opening; empty but for a coop's gate.
    pub inside: Vec<Point>,
    /// The length of that, metres.
    pub inside_m: f64,
}

/// Why there is no way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoRoad {
    /// Neither gateway nor boundary is stated.
    NoGateway,
    /// The opening is narrower than the way.
    Narrow,
    /// Every way from the gateway crosses a net or comes too near to something.
    Blocked,
    /// There is no way from the coop to its gate.
    CoopBlocked,
    /// So much stands about that none was found in the steps allowed.
    OutOfSteps,
    /// It is yet to be worked out ([`crate::Depth::Quick`]).
    Waiting,
}
