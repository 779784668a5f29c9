//! Tools: what the pointer is for. A tool is a state and one step; it knows no egui.
//!
//! [`Tool::step`] takes what the hand did and returns the next state and, where something came of it, the
//! [`Edit`]. Esc leaves from every state.

mod drawn;
mod stated;
mod tape;
mod trial;
mod typed;

use plan::{Edit, Plan, Point};

pub use drawn::Drawn;
pub use tape::Tape;
pub use trial::Trial;
pub use typed::Typed;

use stated::edit;

/// What the pointer is for.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Tool {
    /// Pick and drag what is drawn.
    #[default]
    Pick,
    /// Draw an outline by its corners.
    Outline {
        /// What the outline will be.
        of: Drawn,
        /// The corners so far.
        corners: Vec<Point>,
        /// Where the pointer is.
        pointer: Option<Point>,
        /// What of the next corner was typed.
        typed: Typed,
        /// Corners that were taken up again, the one that stood first last.
        lifted: Vec<Point>,
    },
    /// Measure from place to place.
    Tape(Tape),
    /// Put a fault, or long grass, onto the netting of the run in hand.
    Try(Trial),
}

/// What the hand did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hand {
    /// The pointer went somewhere.
    Move(Point),
    /// A click; `reach_m` is how near counts as on it.
    Click {
        /// Where.
        at: Point,
        /// How near the first corner closes the outline, metres.
        reach_m: f64,
    },
    /// What is typed of the next corner.
    Type(Typed),
    /// A corner where it would stand now.
    Set,
    /// A double click: done with the corners that are set.
    Close,
    /// Enter: done, with the corner at the pointer as it is shown.
    CloseHere,
    /// The pointer left the map.
    Off,
    /// Backspace: the last corner is taken up.
    Back,
    /// The corner that was taken up last is set again.
    Again,
    /// Esc: out of the tool.
    Leave,
}

/// Two corners nearer than this are one, metres.
const SAME_PLACE_M: f64 = 0.01;
/// Fewest corners of an outline.
pub const FEWEST_CORNERS: usize = 3;

impl Tool {
    /// The tool that draws an outline of that kind.
    pub fn outline(of: Drawn) -> Self {
        Self::Outline { of, corners: Vec::new(), pointer: None, typed: Typed::default(), lifted: Vec::new() }
    }

    /// Where it was last: the corner set last, or else the pointer.
    pub fn last_place(&self) -> Option<Point> {
        match self {
            Self::Outline { corners, pointer, .. } => corners.last().copied().or(*pointer),
            Self::Tape(tape) => tape.places.last().copied().or(tape.pointer),
            Self::Pick | Self::Try(_) => None,
        }
    }

    /// Where its pointer is.
    pub fn pointer(&self) -> Option<Point> {
        match self {
            Self::Outline { pointer, .. } => *pointer,
            Self::Tape(tape) => tape.pointer,
            Self::Pick | Self::Try(_) => None,
        }
    }

    /// How many corners or places are set.
    pub fn set_count(&self) -> usize {
        match self {
            Self::Outline { corners, .. } => corners.len(),
            Self::Tape(tape) => tape.places.len(),
            Self::Pick | Self::Try(_) => 0,
        }
    }

    /// How many corners or places were taken up and can be set again.
    pub fn lifted_count(&self) -> usize {
        match self {
            Self::Outline { lifted, .. } => lifted.len(),
            Self::Tape(tape) => tape.lifted.len(),
            Self::Pick | Self::Try(_) => 0,
        }
    }

    /// Whether it holds part of an outline that is no part of the plan yet.
    pub fn is_half_drawn(&self) -> bool {
        matches!(self, Self::Outline { of, corners, .. } if *of != Drawn::Known && !corners.is_empty())
    }

    /// The corners of an outline with the one at the pointer, where that is no double of the last and not the first.
    pub fn corners_here(&self) -> Vec<Point> {
        let Self::Outline { of, corners, pointer, typed, .. } = self else { return Vec::new() };
        let next = pointer.map(|pointer| typed.place(corners, pointer)).filter(|&next| {
            let off = |corner: Option<&Point>| corner.is_none_or(|&corner| apart_m(corner, next) > SAME_PLACE_M);
            off(corners.last()) && off(corners.first().filter(|_| of.closes()))
        });
        corners.iter().copied().chain(next).collect()
    }

    /// The tool that measures.
    pub fn tape() -> Self {
        Self::Tape(Tape::default())
    }

    /// Whether this tool draws that.
    pub fn draws(&self, what: Drawn) -> bool {
        matches!(self, Self::Outline { of, .. } if *of == what)
    }

    /// Whether something of its next corner is typed.
    pub fn is_typed(&self) -> bool {
        matches!(self, Self::Outline { typed, .. } if *typed != Typed::default())
    }

    /// The run whose earth stakes it sets.
    pub fn stakes(&self) -> Option<usize> {
        match self {
            Self::Outline { of: Drawn::EarthStake(run), .. } => Some(*run),
            _ => None,
        }
    }

    /// The run whose energizer it sets down.
    pub fn energizer(&self) -> Option<usize> {
        match self {
            Self::Outline { of: Drawn::Energizer(run), .. } => Some(*run),
            _ => None,
        }
    }

    /// The next state, and what came of it.
    pub fn step(self, hand: Hand, plan: &Plan) -> (Self, Option<Edit>) {
        match (self, hand) {
            (Self::Pick, _) | (_, Hand::Leave) => (Self::Pick, None),
            (Self::Tape(tape), hand) => (Self::Tape(tape.step(hand)), None),
            // Where the netting lies, which a trial goes onto, is the editor's to know.
            (tool @ Self::Try(_), _)
            // What two known points say is typed.
            | (tool @ Self::Outline { of: Drawn::Known, .. }, Hand::Close | Hand::CloseHere)
            | (tool @ Self::Outline { pointer: None, .. }, Hand::Set) => (tool, None),
            (Self::Outline { of, corners, typed, lifted, .. }, Hand::Move(at)) => {
                (Self::Outline { of, corners, pointer: Some(at), typed, lifted }, None)
            }
            (Self::Outline { of, corners, pointer, lifted, .. }, Hand::Type(typed)) => {
                (Self::Outline { of, corners, pointer, typed, lifted }, None)
            }
            (Self::Outline { of, corners, pointer: Some(at), typed, .. }, Hand::Set) => {
                let at = typed.place(&corners, at);
                Self::with_corner(of, corners, at, plan)
            }
            (Self::Outline { of, corners, typed, .. }, Hand::Click { at, reach_m }) => {
                let closes = of.closes() && corners.len() >= of.fewest() && apart_m(corners[0], at) <= reach_m;
                if closes {
                    return (Self::Pick, edit(of, corners, plan));
                }
                let at = typed.place(&corners, at);
                Self::with_corner(of, corners, at, plan)
            }
            (Self::Outline { of, corners, .. }, Hand::Close) if corners.len() >= of.fewest() => {
                (Self::Pick, edit(of, corners, plan))
            }
            (tool @ Self::Outline { .. }, Hand::Close) => (tool, None),
            (tool @ Self::Outline { of, .. }, Hand::CloseHere) => {
                let outline = tool.corners_here();
                if outline.len() < of.fewest() { (tool, None) } else { (Self::Pick, edit(of, outline, plan)) }
            }
            // What is typed still leads from the last corner.
            (Self::Outline { of, corners, pointer, typed, lifted }, Hand::Off) => {
                let pointer = if typed == Typed::default() { corners.last().copied() } else { pointer };
                (Self::Outline { of, corners, pointer, typed, lifted }, None)
            }
            (Self::Outline { of, mut corners, pointer, mut lifted, .. }, Hand::Back) => {
                lifted.extend(corners.pop());
                (Self::Outline { of, corners, pointer, typed: Typed::default(), lifted }, None)
            }
            (Self::Outline { of, mut corners, pointer, mut lifted, .. }, Hand::Again) => {
                corners.extend(lifted.pop());
                (Self::Outline { of, corners, pointer, typed: Typed::default(), lifted }, None)
            }
        }
    }

    /// The tool with a further corner, or what came of the last one.
    fn with_corner(of: Drawn, mut corners: Vec<Point>, at: Point, plan: &Plan) -> (Self, Option<Edit>) {
        // A third known point is a first one anew.
        if of == Drawn::Known && corners.len() >= of.fewest() {
            corners.clear();
        }
        let at = if of == Drawn::Branch && corners.is_empty() { stated::hangs_at(plan, at) } else { at };
        // Typed home it closes, as a click there does.
        if of.closes() && corners.len() >= of.fewest() && apart_m(corners[0], at) <= SAME_PLACE_M {
            return (Self::Pick, edit(of, corners, plan));
        }
        if corners.last().is_none_or(|&last| apart_m(last, at) > SAME_PLACE_M) {
            corners.push(at);
        }
        if of.is_place() {
            return (Self::Pick, edit(of, corners, plan));
        }
        (Self::Outline { of, corners, pointer: Some(at), typed: Typed::default(), lifted: Vec::new() }, None)
    }
}

/// The first of `run-1`, `run-2`, ... that no run has.
pub(crate) fn free_run_id(plan: &Plan) -> String {
    // Of one name more than there are runs, one is free.
    (plan.runs.len() + 1..=2 * plan.runs.len() + 1)
        .map(|number| format!("run-{number}"))
        .find(|id| plan.run(id).is_none())
        .expect("one name more than there are runs")
}

/// Distance between two places, metres.
pub fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

#[cfg(test)]
mod tests;
