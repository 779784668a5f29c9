//! What is on a run's line goes along where the line goes, and keeps its share of its side: so what is on the other
//! sides stays where it is.
//!
//! A branch goes with the place where it hangs, what a side is stated to rise with the side. Where the line has
//! more or fewer corners than it had, the nearest place of the new line is taken. What was stated off the line
//! (more than [`ON_LINE_M`]) stays, and so do readings: they were taken of the fence as it stood.
//!
//! Whoever changes the line and what is on it at once has said where it goes: only what is as it was goes along.

use geometry::{Outline, Point};
use plan::{Branch, LeakageZone, PinKind, Plan, Run, StatedBrace};

use crate::slope::{Heights, Measure};
use crate::{pins, place, point};

/// What is stated so far from the line at most is on it, metres.
pub const ON_LINE_M: f64 = 1.0;

/// Nearer than this a place stays as it is stated, metres: rounding shall not move it.
const GRAIN_M: f64 = 1e-9;

/// Nearer than this to a vertex a place is at it, metres.
const AT_VERTEX_M: f64 = 1e-6;

/// A run with what was on its line as it was (`was`) taken along to where its line is now.
#[must_use]
pub fn taken_along(plan: &Plan, was: &Run, now: &Run) -> Run {
    taken(plan, [was, now], was.outline.len() == now.outline.len())
}

/// The same to the nearest place of a line whose sides answer to none of the old one's: another shape.
#[must_use]
pub fn taken_to_nearest(plan: &Plan, was: &Run, now: &Run) -> Run {
    taken(plan, [was, now], false)
}

fn taken(plan: &Plan, [was, now]: [&Run; 2], by_side: bool) -> Run {
    let mut run = now.clone();
    if by_side && now.side_slopes == was.side_slopes {
        run.side_slopes = was.reshaped(now.outline.clone()).side_slopes;
    }
    let now = &run.clone();
    let same_line = was.outline == now.outline && was.closed() == now.closed() && was.side_slopes == now.side_slopes;
    if same_line && was.branches == now.branches {
        return run;
    }
    let heights = Heights::of(plan, &mut Vec::new());
    if !same_line && let Some(lines) = Lines::of([was, now], by_side, &heights) {
        lines.take_own(was, &mut run);
        let pairs = was.branches.iter().zip(&mut run.branches);
        if was.branches.len() == now.branches.len() {
            pairs.for_each(|(was, branch)| lines.take_branch(was, branch));
        }
    }
    if was.branches.len() == now.branches.len() {
        for (number, stated) in was.branches.iter().enumerate() {
            run.branches[number] = on_branch([was, now], [stated, &run.branches[number]], &heights);
        }
    }
    run
}

/// A branch with what was on its line as it was taken along to where its line is now.
#[must_use]
pub fn taken_along_branch(plan: &Plan, run: &Run, was: &Branch, now: &Branch) -> Branch {
    on_branch([run, run], [was, now], &Heights::of(plan, &mut Vec::new()))
}

fn on_branch(runs: [&Run; 2], [was, now]: [&Branch; 2], heights: &Heights) -> Branch {
    let mut branch = now.clone();
    if was.outline == now.outline {
        return branch;
    }
    let alone = [was.alone(runs[0]), now.alone(runs[1])];
    if let Some(lines) = Lines::of([&alone[0], &alone[1]], was.outline.len() == now.outline.len(), heights) {
        let mut run = alone[1].clone();
        lines.take_own(&alone[0], &mut run);
        (branch.faults, branch.leakage_zones) = (run.faults, run.leakage_zones);
    }
    branch
}

/// A line as it was and as it is, both on the ground.
struct Lines {
    was: Outline,
    now: Outline,
    /// Whether side answers to side.
    by_side: bool,
    /// The corners as stated.
    corners: [Vec<plan::Point>; 2],
}

impl Lines {
    /// `None` where either has no side.
    fn of([was, now]: [&Run; 2], by_side: bool, heights: &Heights) -> Option<Self> {
        let corners = [was.outline.clone(), now.outline.clone()];
        Some(Self { was: laid(was, heights)?, now: laid(now, heights)?, by_side, corners })
    }

    /// The faults, gates, braces, pins, the feed, grass and start of a run, where nobody else moved them.
    fn take_own(&self, was: &Run, run: &mut Run) {
        if run.start_m == was.start_m {
            run.start_m = run.start_m.map(|along_m| self.metres(along_m));
        }
        if run.leakage_zones == was.leakage_zones {
            run.leakage_zones.iter_mut().for_each(|zone| self.take_zone(zone));
        }
        if run.feed_at == was.feed_at {
            run.feed_at = run.feed_at.map(|at| self.place(at));
        }
        if run.faults == was.faults {
            run.faults.iter_mut().for_each(|fault| fault.at = self.place(fault.at));
        }
        if run.gates == was.gates {
            run.gates.iter_mut().filter_map(|gate| gate.at.as_mut()).for_each(|at| *at = self.place(*at));
        }
        if run.braces == was.braces {
            run.braces.iter_mut().for_each(|brace| brace.at = self.of_brace(brace));
        }
        if run.pins == was.pins {
            for pin in &mut run.pins {
                pin.at = match (pin.kind, self.corner(pin.at)) {
                    // A corner is pinned where it is.
                    (PinKind::Corner, Some([from, to])) if from != to => to,
                    (PinKind::Corner, _) => pin.at,
                    _ => self.place(pin.at),
                };
            }
        }
    }

    /// A branch hangs at its share of the side, and all of it goes as far as the place where it hangs.
    fn take_branch(&self, was: &Branch, branch: &mut Branch) {
        if branch.from_m == was.from_m {
            branch.from_m = self.metres(branch.from_m);
        }
        if branch.outline == was.outline {
            let way = self.now.at(branch.from_m) - self.was.at(was.from_m);
            if way.length() > GRAIN_M {
                branch.outline.iter_mut().for_each(|at| *at = place(point(*at) + way));
            }
        }
    }

    /// A stretch between two places; on a line that now runs the other way they change places.
    fn take_zone(&self, zone: &mut LeakageZone) {
        // The whole line stays the whole line.
        if zone.from_m <= 0.0 && zone.to_m >= self.was.length_m() {
            zone.to_m = self.metres(zone.to_m);
            return;
        }
        let ends_m = [zone.from_m, zone.to_m].map(|along_m| self.metres(along_m));
        let amid_m = if zone.from_m <= zone.to_m {
            f64::midpoint(zone.from_m, zone.to_m)
        } else {
            self.was.wrap_m(f64::midpoint(zone.from_m, zone.to_m + self.was.length_m()))
        };
        let amid_m = self.metres(amid_m);
        let [from_m, to_m] = ends_m;
        let holds = if from_m <= to_m { (from_m..=to_m).contains(&amid_m) } else { amid_m >= from_m || amid_m <= to_m };
        (zone.from_m, zone.to_m) = if holds { (from_m, to_m) } else { (to_m, from_m) };
    }

    /// Where a place along the old line lies along the new one, metres. What lies beyond an end stays as far beyond.
    fn metres(&self, along_m: f64) -> f64 {
        // The line's beginning stays its beginning; where the corner there went, it is the nearest place.
        if along_m < 0.0 || (along_m <= 0.0 && self.by_side) || !along_m.is_finite() {
            return along_m;
        }
        let beyond_m = along_m - self.was.length_m();
        let to_m = if beyond_m >= 0.0 {
            self.now.length_m() + beyond_m
        } else {
            led_m([&self.was, &self.now], self.by_side, along_m)
        };
        if (to_m - along_m).abs() < GRAIN_M { along_m } else { to_m }
    }

    /// Where a place of the ground goes that is on the old line.
    fn place(&self, at: plan::Point) -> plan::Point {
        let (along_m, off_m) = self.was.nearest_along(point(at));
        if off_m > ON_LINE_M || !off_m.is_finite() {
            return at;
        }
        let foot = self.was.at(along_m);
        let off = point(at) - foot;
        let to = match self.same_side(along_m) {
            Some((was, now, share)) => {
                let ([from, to], [new_from, new_to]) = (ends(&self.was, was), ends(&self.now, now));
                let foot_now = new_from.towards(new_to, share);
                let to_vertex_m = from.distance_m(to) * share.min(1.0 - share);
                if to_vertex_m < AT_VERTEX_M {
                    foot_now + off
                } else {
                    // As far off the side as it was, to the same hand.
                    let off_m = (to - from).unit().cross(off);
                    foot_now + (new_to - new_from).unit().left() * off_m
                }
            }
            None => self.now.at(self.now.nearest_along(foot).0) + off,
        };
        if to.distance_m(point(at)) < GRAIN_M { at } else { place(to) }
    }

    /// A brace goes with its corner; one at an end of the netting amid a side with its place.
    fn of_brace(&self, brace: &StatedBrace) -> plan::Point {
        match self.corner(brace.at) {
            Some([from, to]) => plan::Point::new(
                brace.at.east_m + (to.east_m - from.east_m),
                brace.at.north_m + (to.north_m - from.north_m),
            ),
            None => self.place(brace.at),
        }
    }

    /// The corner that is meant by a place, as it was and as it is.
    fn corner(&self, at: plan::Point) -> Option<[plan::Point; 2]> {
        let [was, now] = &self.corners;
        let corner = pins::corner_of(was, at).filter(|_| self.by_side)?;
        Some([was[corner], now[corner]])
    }

    /// The side of the old line that a place is on, the one of the new line that answers to it, and the place's share.
    fn same_side(&self, along_m: f64) -> Option<(usize, usize, f64)> {
        same_side([&self.was, &self.now], self.by_side, along_m)
    }
}

/// Where a place along a line lies along the line that came of it, metres: at its share of the side that answers to its
/// own, or the nearest.
pub(crate) fn led_m([was, now]: [&Outline; 2], by_side: bool, along_m: f64) -> f64 {
    match same_side([was, now], by_side, along_m) {
        Some((_, side, share)) => now.along_of(side, share),
        None => now.nearest_along(was.at(along_m)).0,
    }
}

fn same_side([was, now]: [&Outline; 2], by_side: bool, along_m: f64) -> Option<(usize, usize, f64)> {
    let (side, share) = was.spot(along_m).filter(|_| by_side)?;
    let stated = was.vertices()[side].stated;
    let answers = now.vertices().iter().position(|vertex| vertex.stated == stated)?;
    (answers < now.side_count()).then_some((side, answers, share))
}

fn ends(line: &Outline, side: usize) -> [Point; 2] {
    let (from, to) = line.side(side);
    [from, to]
}

/// A run's line on its ground, also one that cannot be built yet while it is dragged.
pub(crate) fn laid(run: &Run, heights: &Heights) -> Option<Outline> {
    let points: Vec<Point> = run.outline.iter().copied().map(point).collect();
    let near = |at: &Point| at.east_m.abs() <= geometry::FARTHEST_M && at.north_m.abs() <= geometry::FARTHEST_M;
    if points.len() > geometry::MAX_VERTICES || !points.iter().all(near) {
        return None;
    }
    let level = if run.closed() { Outline::closed(&points) } else { Outline::open(&points) };
    if level.side_count() == 0 {
        return None;
    }
    Some(Measure::of(run, heights).and_then(|measure| measure.laid(&level)).unwrap_or(level))
}
