//! How the corners are set out by tape.

use schemars::JsonSchema;
use serde::Serialize;
use workup::tape::{TapedCorner, TapedFrom, TapedRun};

/// How the corners are set out by tape, level and straight.
#[derive(Serialize, JsonSchema)]
pub(super) struct SetOut {
    /// The known places that count, at most two: their places in the plan's `tape_points`.
    known: Vec<usize>,
    /// The corners in the order in which they are set.
    corners: Vec<Taped>,
    /// The branches, in the order in which they are set once the run's corners stand; absent where there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    branches: Vec<OfBranch>,
    /// A distance between two corners that nothing was set by; `null` where there is none.
    check: Option<Check>,
    /// The longest distance that is taped, metres.
    longest_m: f64,
}

/// How the corners of a branch are set, the place where it hangs first.
#[derive(Serialize, JsonSchema)]
struct OfBranch {
    /// Which of the run's branches, from 0.
    branch: usize,
    /// Its corners in the order in which they are set.
    corners: Vec<Taped>,
}

/// How one corner is set.
#[derive(Serialize, JsonSchema)]
struct Taped {
    /// Its place in the outline of the run, or of the branch, from 0.
    corner: usize,
    /// Its distances from what stands: two, fewer while fewer places stand.
    tapes: Vec<Tape>,
    /// On which side of the way from the first of them to the second; `null` where that is no question.
    #[schemars(extend("enum" = ["left", "right", null]))]
    side: Option<&'static str>,
    /// To the next corner along the outline, metres; `null` behind the last of an open line.
    next_m: Option<f64>,
    /// Of a branch's corner: from each of the plan's tape points that count, metres; absent where there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tape_m: Vec<f64>,
}

/// One distance.
#[derive(Serialize, JsonSchema)]
struct Tape {
    /// The run's corner that it begins at, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    from_corner: Option<usize>,
    /// The corner of the same branch that it begins at, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    from_branch_corner: Option<usize>,
    /// The known place that it begins at: its place in the plan's `tape_points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    from_known: Option<usize>,
    /// Metres.
    length_m: f64,
}

/// A distance that shows whether all came out right.
#[derive(Serialize, JsonSchema)]
struct Check {
    /// Two corners, from 0.
    corners: [usize; 2],
    /// Metres.
    length_m: f64,
}

pub(super) fn set_out(taped: &TapedRun) -> SetOut {
    let of_branch = |branch: &workup::tape::TapedBranch| OfBranch {
        branch: branch.branch,
        corners: branch.corners.iter().map(|one| Taped { tape_m: one.known_m.clone(), ..corner(taped, one) }).collect(),
    };
    SetOut {
        corners: taped.corners.iter().map(|one| corner(taped, one)).collect(),
        branches: taped.branches.iter().map(of_branch).collect(),
        check: taped.check.map(|(one, other, length_m)| Check { corners: [one, other], length_m }),
        longest_m: taped.longest_m,
        known: taped.known.iter().map(|known| known.point).collect(),
    }
}

fn corner(taped: &TapedRun, one: &TapedCorner) -> Taped {
    let tape = |&(from, length_m): &(TapedFrom, f64)| {
        let from_known = |index: usize| taped.known.get(index).map(|known| known.point);
        let nowhere = Tape { from_corner: None, from_branch_corner: None, from_known: None, length_m };
        match from {
            TapedFrom::Corner(corner) => Tape { from_corner: Some(corner), ..nowhere },
            TapedFrom::OfBranch(corner) => Tape { from_branch_corner: Some(corner), ..nowhere },
            TapedFrom::Known(index) => Tape { from_known: from_known(index), ..nowhere },
        }
    };
    Taped {
        corner: one.corner,
        tapes: one.tapes.iter().map(tape).collect(),
        side: one.left.map(|left| if left { "left" } else { "right" }),
        next_m: one.next_m,
        tape_m: Vec::new(),
    }
}
