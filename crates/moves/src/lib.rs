//! Where the flock goes next: a run moved over one of its sides, and what stays standing.
//!
//! A keeper who moves birds to fresh grass pulls up as little netting as can be. [`over_side`] finds the next
//! run from the run that stands: [`Motion::Shift`] pushes its outline over a side, [`Motion::TurnOver`] mirrors it
//! in the line of a side, which then stays standing from end to end. [`Next`] holds the run as it would be stated
//! and [`Stays`] what nobody needs to touch.
//!
//! Metres throughout. What the next run holds, leans or leaves is not worked out here: put it into the plan and ask
//! `workup` and `care`, as for any run. Where heights
//! are known both lines are metres of ground, so that what stands on the shared side stays; the next one may then take
//! more netting than there is, which its own workup says.

mod motion;
mod stays;

use geometry::{Outline, region};
use plan::{EarthStakes, Plan, Point, Run, RunStatus, StatedBrace};
use workup::Lay;
use workup::slope::on_ground;

pub use motion::Motion;
use stays::Slopes;
pub use stays::Stays;

/// The run after a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Next {
    /// The run as it would be stated: an option without a name, with an id that no run of the plan has.
    pub run: Run,
    /// The stretch of the side that lies on both outlines; `None` where they meet in a corner at most.
    pub shared: Option<[Point; 2]>,
    /// Length of that stretch, metres.
    pub shared_m: f64,
    /// What stands on it and stays; `None` where the first run could not be laid.
    pub stays: Option<Stays>,
    /// Ground of the next run that is not fresh, square metres: it lies in the first run, in one that stands or in one that
    /// stood once; what lies in several is counted once.
    pub grazed_m2: f64,
}

/// The run that comes of moving `run` over the side that starts at its corner `side`, counted from 0 as stated.
///
/// `lay` is how the run's nets fall, as `workup` says; the next run's chain is then started so that every net on the
/// shared stretch stays where it stands.
///
/// Carried along by the motion: feed point, braces, earth stakes. Taken over: nets, coop, energizer, joins, lead,
/// strip, live loop, the grass stated for the whole line. Left behind with the old ground: faults, stretches of other
/// grass, the measured earth, and what this version does not know.
///
/// `None` where the outline encloses nothing, crosses itself or holds no finite place, and where there is no such side.
///
/// ```
/// use moves::{Motion, over_side};
/// use plan::{Plan, Point, Run};
///
/// let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)].map(Point::from).to_vec();
/// let plan = Plan { runs: vec![Run { id: "run-1".to_owned(), outline, ..Run::default() }], ..Plan::default() };
/// let next = over_side(&plan, &plan.runs[0], None, 1, Motion::Shift).expect("a rectangle has a second side");
/// assert_eq!(next.run.outline[0], Point::new(30.0, 0.0));
/// assert!((next.shared_m - 20.0).abs() < 1e-9);
/// ```
pub fn over_side(plan: &Plan, run: &Run, lay: Option<&Lay>, side: usize, motion: Motion) -> Option<Next> {
    let first = line(&run.outline, run.closed())?;
    let ends = ends(run, side)?;
    let carry = motion.carry(&first, ends)?;
    let outline: Vec<Point> = run.outline.iter().map(|&at| place(carry.of(point(at)))).collect();
    let second = line(&outline, run.closed())?;
    let shared = match motion {
        Motion::TurnOver => Some(ends),
        Motion::Shift => motion::shared(ends, &second),
    };
    let moved = |at: Point| place(carry.of(point(at)));
    // What is mirrored has on its left what was on its right.
    let (strip_left_m, strip_right_m) = match motion {
        Motion::TurnOver => (run.strip_right_m, run.strip_left_m),
        Motion::Shift => (run.strip_left_m, run.strip_right_m),
    };
    let mut next = Run {
        id: free_id(plan),
        name: String::new(),
        outline,
        closed: run.closed,
        nets: run.nets.clone(),
        // What stands in the run is towed along.
        coop: run.coop.clone().or_else(|| plan.coop_in(run).map(|coop| coop.id.clone())),
        status: RunStatus::Option,
        energizer: run.energizer.clone(),
        feed_at: run.feed_at.map(moved),
        energizer_at: run.energizer_at.map(moved),
        earth_stakes: EarthStakes {
            at: run.earth_stakes.at.map(moved),
            places: run.earth_stakes.places.iter().copied().map(moved).collect(),
            ..run.earth_stakes.clone()
        },
        leakage_s_per_m: run.leakage_s_per_m,
        join_ohm: run.join_ohm,
        lead_ohm: run.lead_ohm,
        lead_of: run.lead_of,
        lead_m: run.lead_m,
        strip_width_m: run.strip_width_m,
        strip_left_m,
        strip_right_m,
        live_loop: run.live_loop,
        // What the sides rise stays with the old ground; the birds, and the gap they go under, come along.
        gap_under_net_m: run.gap_under_net_m,
        braces: run.braces.iter().map(|brace| StatedBrace { at: moved(brace.at), ..brace.clone() }).collect(),
        ..Run::default()
    };
    let slopes = Slopes { first: on_ground(plan, run), next: on_ground(plan, &next) };
    let stays = lay.map(|lay| Stays::on(lay, shared, &slopes));
    if let (Some(lay), Some(stays)) = (lay, &stays)
        && let Some(start) = stays::start(lay, stays, &second, &slopes, motion)
    {
        next.nets = Some(lay.nets.iter().map(|net| net.kind.clone()).collect());
        next.start_m = Some(start.along_m);
        next.reversed = Some(start.reversed);
    }
    Some(Next {
        run: next,
        shared: shared.map(|ends| ends.map(place)),
        shared_m: shared.map_or(0.0, |[from, to]| from.distance_m(to)),
        stays,
        grazed_m2: region::overlap_with_any_m2(&second, std::iter::once(&first).chain(&used(plan, run, &second))),
    })
}

/// The ground of the other runs that stand, and of those that stood once, as far as they come near a line. Options are
/// alternatives: nothing grazed there.
///
/// When a run stood is not recorded, so how long its ground has rested is not known here.
fn used(plan: &Plan, run: &Run, second: &Outline) -> Vec<Outline> {
    let others = plan.runs.iter().filter(|other| other.id != run.id && other.status != RunStatus::Option);
    // Most lie far off; to look whether an outline is sound, and to cut two, costs much more than to see that.
    let apart_m = |other: &Run| region::boxes_apart_m(other.outline.iter().copied().map(point), second.points());
    others.filter(|other| apart_m(other) <= 0.0).filter_map(|other| line(&other.outline, other.closed())).collect()
}

/// The ends of the side that starts at a stated corner; `None` where there is none of any length.
fn ends(run: &Run, side: usize) -> Option<[geometry::Point; 2]> {
    let from = point(*run.outline.get(side)?);
    let to = match run.outline.get(side + 1) {
        Some(&to) => point(to),
        None if run.closed() => point(*run.outline.first()?),
        None => return None,
    };
    (from.distance_m(to) > geometry::MEET_M).then_some([from, to])
}

/// A line that nets can stand on and that has an inner side.
fn line(outline: &[Point], closed: bool) -> Option<Outline> {
    let places: Vec<geometry::Point> = outline.iter().copied().map(point).collect();
    if geometry::check_outline(&places, closed).iter().any(geometry::OutlineFault::is_fatal) {
        return None;
    }
    Some(if closed { Outline::closed(&places) } else { Outline::open(&places) })
}

/// The first of `run-2`, `run-3`, ... from the number of runs on that no run has.
fn free_id(plan: &Plan) -> String {
    let count = plan.runs.len();
    (count + 1..=2 * count + 1)
        .map(|number| format!("run-{number}"))
        .find(|id| plan.run(id).is_none())
        .expect("one name more than there are runs")
}

fn point(at: Point) -> geometry::Point {
    geometry::Point::new(at.east_m, at.north_m)
}

fn place(at: geometry::Point) -> Point {
    Point::new(at.east_m, at.north_m)
}
