//! The report's keys for the work of a run: `set_up`, `taking_down` and `mow`. A promise like the rest of the report.

use plan::Point;
use schemars::JsonSchema;
use serde::Serialize;
use workup::RunWorkup;
use workup::setting_up::{Doing, Work};

/// The work of a run; each part `null` where it cannot be worked out.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// The order of setting up.
    set_up: Option<WorkOut>,
    /// The order of taking down.
    taking_down: Option<WorkOut>,
    /// The walk behind the mower, and when the grass is back.
    mow: Option<Mow>,
}

/// A piece of work.
#[derive(Serialize, JsonSchema)]
struct WorkOut {
    /// Where the rolls lie before setting up, or are laid after taking down.
    drop_at: Point,
    /// Whether that place is assumed.
    drop_assumed: bool,
    /// The rolls in the order in which they are worked on.
    order: Vec<Roll>,
    /// The steps in order.
    steps: Vec<Step>,
    /// Metres walked with empty hands.
    walk_m: f64,
    /// Metres walked with a roll in hand.
    carry_m: f64,
    /// Minutes of practised hands, mowing apart.
    minutes_low: f64,
    /// Minutes the first time, mowing apart.
    minutes_high: f64,
    /// No order of the rolls takes practised hands fewer minutes.
    minutes_bound: f64,
    /// Minutes behind the mower, in the steps but not in the sums.
    mow_minutes: f64,
}

/// One roll at work.
#[derive(Serialize, JsonSchema)]
struct Roll {
    /// Its net, from 0 in chain order.
    net: usize,
    /// How it is spoken of: its place in the order of setting up, from 1.
    number: usize,
    /// Its kind.
    kind: String,
    /// The trip that it goes with, from 0.
    trip: usize,
    /// Where rolling out or folding begins.
    from: Point,
    /// Where it ends.
    to: Point,
    /// Whether that is in the chain's direction.
    forward: bool,
}

/// One step.
#[derive(Serialize, JsonSchema)]
struct Step {
    /// Its number, from 1.
    number: usize,
    /// What is done.
    #[schemars(extend("enum" = Doing::IDS))]
    what: &'static str,
    /// The net that it is done to, from 0; absent where it is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    net: Option<usize>,
    /// Where, in the order in which the places are come to.
    at: Vec<Point>,
    /// Metres walked with empty hands, the way there included.
    walk_m: f64,
    /// Metres walked with a roll in hand.
    carry_m: f64,
    /// Minutes of practised hands, walking included.
    minutes: f64,
}

/// The walk behind the mower.
#[derive(Serialize, JsonSchema)]
struct Mow {
    /// The lines to walk, in order and direction; a closed one does not repeat its first place.
    lines: Vec<Line>,
    /// Metres mown on them.
    length_m: f64,
    /// Times that the mower is turned round or moved over to the next line.
    turnings: u32,
    /// Corners of 30 degrees or more on the way.
    sharp_corners: u32,
    /// What is left where nets that stand have been mown for; `null` where that is all of it.
    left: Option<Left>,
    /// Minutes by area: strip / (speed x width x efficiency), which counts turning.
    minutes_by_area: f64,
    /// Days until the grass reaches the lowest live line; `null` without a net.
    grass_days: Option<GrassDays>,
}

/// What of a strip is not mown yet.
#[derive(Serialize, JsonSchema)]
struct Left {
    /// Its area, square metres.
    area_m2: f64,
    /// Metres walked behind the mower.
    walk_m: f64,
    /// Minutes mowed.
    minutes: f64,
}

/// One line to walk.
#[derive(Serialize, JsonSchema)]
struct Line {
    /// Its pass, from 0 at the left edge of the strip.
    pass: u32,
    /// Whether it comes back to its first place.
    closed: bool,
    /// Its places.
    points: Vec<Point>,
}

/// Days until the grass reaches the lowest live line.
#[derive(Serialize, JsonSchema)]
struct GrassDays {
    /// Where it grows 0.6 mm a day.
    slow: f64,
    /// Where it grows 2.4 mm a day.
    mean: f64,
    /// Where it grows 10 mm a day.
    fast: f64,
}

/// The keys of one run.
pub(crate) fn of_run(worked: &RunWorkup) -> OfRun {
    OfRun {
        set_up: worked.set_up.as_ref().map(work),
        taking_down: worked.taking_down.as_ref().map(work),
        mow: worked.mow_walk.as_ref().map(|walk| Mow {
            lines: walk.lines.iter().map(line).collect(),
            length_m: walk.length_m,
            turnings: walk.turnings,
            sharp_corners: walk.sharp_corners,
            left: worked.still_to_mow.map(|left| Left {
                area_m2: left.area_m2,
                walk_m: left.walk_m,
                minutes: left.minutes,
            }),
            minutes_by_area: worked.strip.as_ref().map_or(0.0, |strip| strip.minutes_by_area),
            grass_days: worked.grass.map(|grass| GrassDays { slow: grass.slow, mean: grass.mean, fast: grass.fast }),
        }),
    }
}

fn line(line: &geometry::PassLine) -> Line {
    let points = line.points.iter().map(|at| Point::new(at.east_m, at.north_m)).collect();
    Line { pass: line.pass, closed: line.closed, points }
}

fn work(work: &Work) -> WorkOut {
    let step = |(index, step): (usize, &workup::setting_up::Step)| Step {
        number: index + 1,
        what: step.what.id(),
        net: step.net,
        at: step.places.clone(),
        walk_m: step.walk_m,
        carry_m: step.carry_m,
        minutes: step.minutes,
    };
    WorkOut {
        drop_at: work.drop_at,
        drop_assumed: work.drop_assumed,
        order: work
            .order
            .iter()
            .map(|roll| Roll {
                net: roll.net,
                number: roll.number,
                kind: roll.kind.clone(),
                trip: roll.trip,
                from: roll.from,
                to: roll.to,
                forward: roll.forward,
            })
            .collect(),
        steps: work.steps.iter().enumerate().map(step).collect(),
        walk_m: work.walk_m,
        carry_m: work.carry_m,
        minutes_low: work.minutes_low,
        minutes_high: work.minutes_high,
        minutes_bound: work.minutes_bound,
        mow_minutes: work.mow_minutes,
    }
}
