//! Corners and ends with their braces, and the corner to draw in.

use plan::Point;
use schemars::JsonSchema;
use serde::Serialize;
use workup::Verdict;
use workup::tape::TapedRun;

/// A corner or an end.
#[derive(Serialize, JsonSchema)]
pub(super) struct Corner {
    /// Where.
    at: Point,
    /// Along the outline, metres.
    along_m: f64,
    /// From each of the plan's tape points that count, straight and level, metres; absent where there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tape_m: Vec<f64>,
    /// Exterior turn, degrees, positive.
    turn_deg: f64,
    /// Distance along the line to the nearest post, metres.
    to_post_m: f64,
    /// Pull, newtons.
    pull_n: f64,
    /// What its post's spikes hold, newtons.
    hold_n: f64,
    /// Whether the netting ends here.
    end: bool,
    /// Whether it wants a brace: `none`, `advised` or `required`.
    #[schemars(extend("enum" = ["none", "advised", "required"]))]
    brace: &'static str,
    /// Whether the brace that the plan states here holds as much as is wanted; `null` where it states none.
    brace_holds: Option<bool>,
    /// The brace's stake.
    stake: Stake,
}

/// A brace's stake.
#[derive(Serialize, JsonSchema)]
pub(super) struct Stake {
    /// Where it stands.
    at: Point,
    /// From the vertex, metres.
    stand_off_m: f64,
    /// What it holds, newtons.
    hold_n: f64,
}

/// A corner drawn in.
#[derive(Serialize, JsonSchema)]
pub(super) struct DrawIn {
    /// Where it stands.
    at: Point,
    /// Where it stands once drawn in.
    to: Point,
    /// How far that is, metres.
    by_m: f64,
    /// Netting that comes free, metres.
    gives_m: f64,
}

pub(super) fn corner(corner: &workup::Corner, taped: Option<&TapedRun>) -> Corner {
    let set = taped.and_then(|run| run.corners.iter().find(|one| Some(one.corner) == corner.vertex));
    Corner {
        at: corner.at,
        along_m: corner.along_m,
        tape_m: set.map(|set| set.known_m.clone()).unwrap_or_default(),
        turn_deg: corner.turn_deg,
        to_post_m: corner.to_post_m,
        pull_n: corner.pull_n,
        hold_n: corner.hold_n,
        end: corner.end,
        brace: match corner.verdict {
            Verdict::None => "none",
            Verdict::Advised => "advised",
            Verdict::Required => "required",
        },
        brace_holds: corner.braced.then_some(corner.holds),
        stake: Stake { at: corner.stake.at, stand_off_m: corner.stake.stand_off_m, hold_n: corner.stake.hold_n },
    }
}

pub(super) fn drawn_in(drawn: workup::DrawIn) -> DrawIn {
    DrawIn { at: drawn.at, to: drawn.to, by_m: drawn.by_m, gives_m: drawn.gives_m }
}
