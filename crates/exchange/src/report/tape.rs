//! How the corners are set out by tape.

use schemars::JsonSchema;
use serde::Serialize;
use workup::tape::{TapedFrom, TapedRun};

/// How the corners are set out by tape, level and straight.
#[derive(Serialize, JsonSchema)]
pub(super) struct SetOut {
    /// The known places that count, at most two: their places in the plan's `tape_points`.
    known: Vec<usize>,
    /// The corners in the order in which they are set.
    corners: Vec<Taped>,
    /// A distance between two corners that nothing was set by; `null` where there is none.
    check: Option<Check>,
    /// The longest distance that is taped, metres.
    longest_m: f64,
}

/// How one corner is set.
#[derive(Serialize, JsonSchema)]
struct Taped {
    /// Its place in the run's outline, from 0.
    corner: usize,
    /// Its distances from what stands: two, fewer while fewer places stand.
    tapes: Vec<Tape>,
    /// On which side of the way from the first of them to the second; `null` where that is no question.
    #[schemars(extend("enum" = ["left", "right", null]))]
    side: Option<&'static str>,
    /// To the next corner along the outline, metres; `null` behind the last of an open line.
    next_m: Option<f64>,
}

/// One distance.
#[derive(Serialize, JsonSchema)]
struct Tape {
    /// The corner that it begins at, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    from_corner: Option<usize>,
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
    let tape = |&(from, length_m): &(TapedFrom, f64)| match from {
        TapedFrom::Corner(corner) => Tape { from_corner: Some(corner), from_known: None, length_m },
        TapedFrom::Known(index) => Tape { from_corner: None, from_known: taped.known.get(index).copied(), length_m },
    };
    SetOut {
        corners: taped
            .corners
            .iter()
            .map(|one| Taped {
                corner: one.corner,
                tapes: one.tapes.iter().map(tape).collect(),
                side: one.left.map(|left| if left { "left" } else { "right" }),
                next_m: one.next_m,
            })
            .collect(),
        check: taped.check.map(|(one, other, length_m)| Check { corners: [one, other], length_m }),
        longest_m: taped.longest_m,
        known: taped.known.clone(),
    }
}
