//! Pins as stated, to places on the line and back to what became of them.

use geometry::{Outline, PinOutcome};
use plan::{PinKind, Plan, Point, Run};

use crate::{place, point};

/// A pinned corner is the nearest one within this, metres; farther than that there is none.
pub const CORNER_REACH_M: f64 = 1.0;

/// What became of a pin.
#[derive(Clone, Debug, PartialEq)]
pub struct PinWork {
    /// Its place on the line; as stated where it has none there.
    pub at: Point,
    /// The same along the outline, metres; `None` for a corner that is not there.
    pub along_m: Option<f64>,
    /// The corner's number, from 0, for a pinned corner.
    pub vertex: Option<usize>,
    /// Whether it is kept.
    pub kept: bool,
    /// Metres of misses that it costs; `None` where it is not kept or nothing is left to choose.
    pub cost_m: Option<f64>,
    /// Whether that cost is proved.
    pub proven: bool,
    /// Whether its cost is yet to be worked out ([`crate::Depth::Quick`]).
    pub waits: bool,
}

/// The run's pins in the terms of geometry, and for each stated one its number among them.
pub(crate) struct Pins {
    pub(crate) pins: Vec<geometry::Pin>,
    of_stated: Vec<Option<(usize, Option<usize>)>>,
}

impl Pins {
    pub(crate) fn of(plan: &Plan, run: &Run, outline: &Outline) -> Self {
        let (mut pins, mut of_stated) = (Vec::new(), Vec::new());
        for stated in &run.pins {
            let at = point(stated.at);
            let along = || outline.nearest_along(at).0;
            let vertices: Vec<Point> = outline.vertices().iter().map(|vertex| place(vertex.at)).collect();
            let corner = corner_of(&vertices, stated.at).map(|index| (index, outline.vertices()[index].along_m));
            let kind = |id: &String| plan.store.nets.iter().position(|net| net.id == *id);
            let pinned = match stated.kind {
                PinKind::Start => Some((geometry::PinKind::Start, along(), None)),
                PinKind::Join => Some((geometry::PinKind::Join, along(), None)),
                PinKind::Corner => corner.map(|(vertex, along_m)| (geometry::PinKind::Post, along_m, Some(vertex))),
                PinKind::Net => {
                    let kind = stated.net.as_ref().and_then(kind);
                    kind.map(|kind| (geometry::PinKind::Net { kind }, along(), None))
                }
            };
            of_stated.push(pinned.map(|(what, along_m, vertex)| {
                pins.push(geometry::Pin { along_m, what });
                (pins.len() - 1, vertex)
            }));
        }
        Self { pins, of_stated }
    }

    /// What became of each stated pin.
    pub(crate) fn worked(&self, run: &Run, outline: &Outline, outcomes: &[PinOutcome]) -> Vec<PinWork> {
        let lost = PinOutcome { kept: false, cost_m: None, proven: true };
        run.pins
            .iter()
            .zip(&self.of_stated)
            .map(|(stated, pinned)| {
                let outcome = pinned.and_then(|(pin, _)| outcomes.get(pin).copied()).unwrap_or(lost);
                let along_m = pinned.map(|(pin, _)| self.pins[pin].along_m);
                PinWork {
                    at: along_m.map_or(stated.at, |along_m| place(outline.at(along_m))),
                    along_m,
                    vertex: pinned.and_then(|(_, vertex)| vertex),
                    kept: outcome.kept,
                    cost_m: outcome.cost_m,
                    proven: outcome.proven,
                    waits: false,
                }
            })
            .collect()
    }
}

/// The corner of an outline that is meant by a place: the nearest, if it is near enough.
pub fn corner_of(outline: &[Point], at: Point) -> Option<usize> {
    let apart_m = |corner: Point| (corner.east_m - at.east_m).hypot(corner.north_m - at.north_m);
    let near = outline.iter().enumerate().map(|(index, &corner)| (index, apart_m(corner)));
    let nearest = near.filter(|corner| corner.1 <= CORNER_REACH_M).min_by(|a, b| a.1.total_cmp(&b.1));
    nearest.map(|corner| corner.0)
}

/// A run's nets laid by themselves, as quickly as may be.
fn laid(plan: &Plan, run: &Run) -> Option<crate::model::Lay> {
    let bad = crate::values::Bad::of(&crate::values::of_plan(plan));
    let (soil, _) = crate::bracing::soil(plan);
    let heights = crate::slope::Heights::of(plan, &mut Vec::new());
    let mut worked = crate::model::RunWorkup::default();
    let (mut chosen, mut known) = (crate::nets::Chosen::new(), crate::Known::default());
    let mut search = crate::lay::Search { depth: crate::Depth::Quick, known: &mut known };
    crate::lay::line(plan, run, &heights, &bad, &soil, &mut chosen, &mut search, &mut worked)?;
    worked.lay
}

/// Of unlike nets no more than these are looked through for a pin that is only offered: a frame waits for the answer.
const MOST_LOOKED: usize = 6;

/// Whether a run's nets can keep one more pin beside those that it has; a start takes the place of the one before. Where
/// that would take long to say, that they can.
pub fn can_keep(plan: &Plan, run: &Run, lay: &crate::model::Lay, pin: &plan::Pin) -> bool {
    let alike = lay.nets.windows(2).all(|pair| pair[0].kind == pair[1].kind);
    if !alike && lay.nets.len() > MOST_LOOKED {
        return true;
    }
    let run = with_pin(run, pin.clone());
    laid(plan, &run).is_none_or(|lay| lay.pins.last().is_some_and(|pin| pin.kept))
}

/// The run with one more pin: a chain has one start.
#[must_use]
pub fn with_pin(run: &Run, pin: plan::Pin) -> Run {
    let mut run = run.clone();
    run.pins.retain(|known| pin.kind != PinKind::Start || known.kind != PinKind::Start);
    run.pins.push(pin);
    run
}

/// Where a corner between posts goes so that it is on one, and whether it has to be pinned there to stay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToPost {
    /// The place.
    pub to: Point,
    /// Whether, left free, the nets would fall otherwise.
    pub pin: bool,
}

/// Finds where a corner of a run's outline, by its place there, goes to be on a post: along one of its two sides by what
/// is missing to the post before it or to the one after, so that the posts up to it, or from it on, stay where they are.
/// Of these four places the one that opens no gap and misses least; nearest of those that are alike.
pub fn corner_to_post(plan: &Plan, run: &Run, corner: usize) -> Option<ToPost> {
    let laid = |run: &Run| laid(plan, run);
    let lay = laid(run)?;
    let here = *run.outline.get(corner)?;
    let miss_m = |lay: &crate::model::Lay, at: Point| {
        let near = |corner: &&crate::model::Corner| point(corner.at).distance_m(point(at)) < geometry::MEET_M;
        lay.corners.iter().filter(|corner| !corner.end).find(near).map(|corner| corner.to_post_m)
    };
    miss_m(&lay, here).filter(|&miss_m| miss_m >= geometry::MEET_M)?;
    let count = run.outline.len();
    let beside = |step: usize| run.outline.get((corner + step) % count).copied();
    let neighbours: Vec<Point> = if run.closed() {
        [beside(1), beside(count - 1)].into_iter().flatten().collect()
    } else {
        [corner.checked_sub(1).and_then(|before| run.outline.get(before)), run.outline.get(corner + 1)]
            .into_iter()
            .flatten()
            .copied()
            .collect()
    };
    // Distances to the posts on both sides, along the line.
    let along_m = lay.vertices.iter().find(|(at, _)| *at == here)?.1;
    let signed_m = lay.posts.iter().map(|post| {
        let off_m = post.along_m - along_m;
        if lay.closed && off_m.abs() > lay.line_m / 2.0 { off_m - off_m.signum() * lay.line_m } else { off_m }
    });
    let off_m: Vec<f64> = signed_m.collect();
    let least =
        |of: &dyn Fn(f64) -> bool| off_m.iter().copied().filter(|&m| of(m)).map(f64::abs).fold(f64::INFINITY, f64::min);
    let both_m = [least(&|off_m| off_m < 0.0), least(&|off_m| off_m > 0.0)];
    let tried = neighbours.iter().flat_map(|&other| {
        let way = (point(here) - point(other)).unit();
        both_m.iter().filter(|by_m| by_m.is_finite()).flat_map(move |&by_m| [way * by_m, way * -by_m])
    });
    let mut best: Option<((bool, bool, i64, i64), ToPost)> = None;
    for shift in tried {
        let to = place(point(here) + shift);
        let mut moved = run.clone();
        moved.outline[corner] = to;
        let pin = plan::Pin::new(PinKind::Corner, to);
        for pinned in [false, true] {
            if pinned {
                moved.pins.push(pin.clone());
            }
            let Some(now) = laid(&moved) else { continue };
            if miss_m(&now, to).is_none_or(|miss_m| miss_m >= geometry::MEET_M) {
                continue;
            }
            let opens = now.short_m >= geometry::MEET_M && lay.short_m < geometry::MEET_M;
            // To the millimetre, so that rounding does not choose.
            let millimetres = |m: f64| (m * 1e3).round() as i64;
            let rank = (opens, pinned, millimetres(now.corner_miss_m), millimetres(shift.length()));
            if best.as_ref().is_none_or(|(least, _)| rank < *least) {
                best = Some((rank, ToPost { to, pin: pinned }));
            }
            break;
        }
    }
    best.map(|(_, found)| found)
}
