//! Lines on the sheet, in `f64` pixels, right and down: lines beside lines, clipping, walking along.

use std::f64::consts::{FRAC_PI_2, PI};

/// A place on the sheet before it becomes an `f32` spot.
pub(crate) type Px = [f64; 2];

/// A place on a line with a figure that runs along it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Knot {
    pub(crate) at: Px,
    pub(crate) kv: f64,
}

/// A mitre longer than this many times its distance is cut short.
const MITRE_LIMIT: f64 = 4.0;
/// Places nearer than this are one place, pixels.
const SAME_PX: f64 = 1e-6;

pub(crate) fn add(a: Px, b: Px) -> Px {
    [a[0] + b[0], a[1] + b[1]]
}

pub(crate) fn sub(a: Px, b: Px) -> Px {
    [a[0] - b[0], a[1] - b[1]]
}

pub(crate) fn scaled(a: Px, by: f64) -> Px {
    [a[0] * by, a[1] * by]
}

/// The place so far from another in a direction.
pub(crate) fn toward(from: Px, direction: Px, far: f64) -> Px {
    [from[0] + direction[0] * far, from[1] + direction[1] * far]
}

pub(crate) fn length(a: Px) -> f64 {
    a[0].hypot(a[1])
}

pub(crate) fn apart(a: Px, b: Px) -> f64 {
    length(sub(a, b))
}

pub(crate) fn lerp(a: Px, b: Px, part: f64) -> Px {
    [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
}

/// A direction, or none for places that coincide.
pub(crate) fn direction(from: Px, to: Px) -> Option<Px> {
    let way = sub(to, from);
    let far = length(way);
    (far > SAME_PX && far.is_finite()).then(|| scaled(way, 1.0 / far))
}

/// A quarter turn to the right of a direction.
pub(crate) fn right(direction: Px) -> Px {
    [-direction[1], direction[0]]
}

/// A direction on the sheet from one on the ground, radians counter-clockwise from east.
pub(crate) fn heading(toward_rad: f64) -> Px {
    [toward_rad.cos(), -toward_rad.sin()]
}

/// The line without places that repeat the one before.
pub(crate) fn distinct(points: &[Px], closed: bool) -> Vec<Px> {
    let mut kept: Vec<Px> = Vec::with_capacity(points.len());
    for &point in points {
        if kept.last().is_none_or(|&last| apart(last, point) > SAME_PX) {
            kept.push(point);
        }
    }
    while closed && kept.len() > 1 && apart(kept[0], kept[kept.len() - 1]) <= SAME_PX {
        kept.pop();
    }
    kept
}

/// A line beside a line, so far to its right, mitred at its corners.
pub(crate) fn aside(points: &[Px], closed: bool, right_by: f64) -> Vec<Px> {
    let points = distinct(points, closed);
    let count = points.len();
    if count < 2 {
        return points;
    }
    let normal = |from: usize, to: usize| direction(points[from], points[to]).map_or([0.0, 0.0], right);
    (0..count)
        .map(|index| {
            let before = (closed || index > 0).then(|| normal((index + count - 1) % count, index));
            let after = (closed || index + 1 < count).then(|| normal(index, (index + 1) % count));
            let shift = match (before, after) {
                (Some(a), Some(b)) => {
                    let sum = add(a, b);
                    let half = f64::midpoint(sum[0] * sum[0], sum[1] * sum[1]);
                    // `sum / half` reaches both lines; where they double back it would never end.
                    if half < 2.0 / (MITRE_LIMIT * MITRE_LIMIT) {
                        scaled(sum, MITRE_LIMIT / length(sum).max(SAME_PX))
                    } else {
                        scaled(sum, 1.0 / half)
                    }
                }
                (Some(only), None) | (None, Some(only)) => only,
                (None, None) => [0.0, 0.0],
            };
            toward(points[index], shift, right_by)
        })
        .collect()
}

/// Distance of a spot from a segment.
pub(crate) fn from_segment(from: Px, to: Px, spot: Px) -> f64 {
    let (way, off) = (sub(to, from), sub(spot, from));
    let squared = way[0] * way[0] + way[1] * way[1];
    let part = if squared > 0.0 { ((off[0] * way[0] + off[1] * way[1]) / squared).clamp(0.0, 1.0) } else { 0.0 };
    apart(lerp(from, to, part), spot)
}

/// The turn of words along a direction, so that they are read from below or from the right, radians.
pub(crate) fn upright(along: Px) -> f64 {
    let turn = along[1].atan2(along[0]);
    if turn >= FRAC_PI_2 - 1e-9 {
        turn - PI
    } else if turn < -FRAC_PI_2 - 1e-9 {
        turn + PI
    } else {
        turn
    }
}

/// A rectangle of the sheet.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Window {
    pub(crate) low: Px,
    pub(crate) high: Px,
}

impl Window {
    pub(crate) fn holds(&self, at: Px) -> bool {
        (0..2).all(|axis| at[axis] >= self.low[axis] && at[axis] <= self.high[axis])
    }

    /// The parts of a segment, 0 to 1, that it enters and leaves at (Liang and Barsky, 1984).
    fn cut(&self, from: Px, to: Px) -> Option<(f64, f64)> {
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let way = to[axis] - from[axis];
            for (edge, sign) in [(self.low[axis], -1.0), (self.high[axis], 1.0)] {
                let (rate, room) = (sign * way, sign * (edge - from[axis]));
                if rate == 0.0 {
                    if room < 0.0 {
                        return None;
                    }
                } else if rate < 0.0 {
                    enter = enter.max(room / rate);
                } else {
                    leave = leave.min(room / rate);
                }
            }
        }
        (enter < leave).then_some((enter, leave))
    }
}

/// What a window leaves of a line.
#[derive(Clone, Debug)]
pub(crate) struct Piece {
    pub(crate) knots: Vec<Knot>,
    /// Length of the line before the piece starts, pixels: so that dashes stay where they are when the map moves.
    pub(crate) before: f64,
    /// Whether it is the whole of a closed line.
    pub(crate) closed: bool,
}

impl Piece {
    pub(crate) fn points(&self) -> Vec<Px> {
        self.knots.iter().map(|knot| knot.at).collect()
    }
}

/// The pieces of a line that a window shows. A line that is not finite has none.
pub(crate) fn clip(knots: &[Knot], closed: bool, window: &Window) -> Vec<Piece> {
    if knots.len() < 2 || !knots.iter().all(|knot| knot.at.iter().all(|px| px.is_finite())) {
        return Vec::new();
    }
    if knots.iter().all(|knot| window.holds(knot.at)) {
        return vec![Piece { knots: knots.to_vec(), before: 0.0, closed }];
    }
    let mut pieces: Vec<Piece> = Vec::new();
    let mut walked = 0.0;
    let mut goes_on = false;
    let last = knots.len() - usize::from(!closed);
    for index in 0..last {
        let (from, to) = (knots[index], knots[(index + 1) % knots.len()]);
        let far = apart(from.at, to.at);
        let step = |part: f64| Knot { at: lerp(from.at, to.at, part), kv: from.kv + (to.kv - from.kv) * part };
        if far <= SAME_PX {
            // A step in the figure at one place.
            if goes_on && let Some(piece) = pieces.last_mut() {
                piece.knots.push(to);
            }
            continue;
        }
        match window.cut(from.at, to.at) {
            Some((enter, leave)) => {
                let end = if leave < 1.0 { step(leave) } else { to };
                match pieces.last_mut() {
                    Some(piece) if goes_on && enter <= 0.0 => piece.knots.push(end),
                    _ => {
                        let start = if enter > 0.0 { step(enter) } else { from };
                        let before = walked + enter * far;
                        pieces.push(Piece { knots: vec![start, end], before, closed: false });
                    }
                }
                goes_on = leave >= 1.0;
            }
            None => goes_on = false,
        }
        walked += far;
    }
    pieces
}

/// The part of an area's ring that a window shows (Sutherland and Hodgman, 1974); edges along the window join
/// what it parts, so that only fills may use it.
pub(crate) fn clip_ring(ring: &[Px], window: &Window) -> Vec<Px> {
    if !ring.iter().flatten().all(|px| px.is_finite()) {
        return Vec::new();
    }
    let mut ring = ring.to_vec();
    for axis in 0..2 {
        for (edge, sign) in [(window.low[axis], 1.0), (window.high[axis], -1.0)] {
            let depth = |at: Px| sign * (at[axis] - edge);
            let mut kept = Vec::with_capacity(ring.len() + 2);
            for (index, &to) in ring.iter().enumerate() {
                let from = ring[(index + ring.len() - 1) % ring.len()];
                let (before, after) = (depth(from), depth(to));
                if (before < 0.0) != (after < 0.0) {
                    kept.push(lerp(from, to, before / (before - after)));
                }
                if after >= 0.0 {
                    kept.push(to);
                }
            }
            ring = kept;
        }
    }
    ring
}

/// Places along a line each so many pixels, the first at `first`, with the direction there.
pub(crate) fn walk(points: &[Px], closed: bool, first: f64, every: f64) -> Vec<(Px, Px)> {
    let mut places = Vec::new();
    let (mut next, mut walked) = (first, 0.0);
    let last = points.len().saturating_sub(usize::from(!closed));
    for index in 0..last {
        let (from, to) = (points[index], points[(index + 1) % points.len()]);
        let Some(way) = direction(from, to) else { continue };
        let far = apart(from, to);
        while next <= walked + far {
            places.push((toward(from, way, next - walked), way));
            next += every;
        }
        walked += far;
    }
    places
}

/// Length of an open line.
pub(crate) fn line_length(points: &[Px]) -> f64 {
    points.windows(2).map(|pair| apart(pair[0], pair[1])).sum()
}

/// The stretch of an open line between two lengths along it, with the figure at its ends.
pub(crate) fn stretch(knots: &[Knot], from: f64, to: f64) -> Vec<Knot> {
    let mut kept: Vec<Knot> = Vec::new();
    let mut walked = 0.0;
    for pair in knots.windows(2) {
        let far = apart(pair[0].at, pair[1].at);
        let end = walked + far;
        if end >= from && walked <= to && far > SAME_PX {
            let at = |along: f64| {
                let part = ((along - walked) / far).clamp(0.0, 1.0);
                Knot { at: lerp(pair[0].at, pair[1].at, part), kv: pair[0].kv + (pair[1].kv - pair[0].kv) * part }
            };
            if kept.is_empty() {
                kept.push(at(from.max(walked)));
            }
            kept.push(at(to.min(end)));
        }
        walked = end;
    }
    kept
}

/// Shares of a side on which words may stand, from its middle outward.
pub(crate) fn from_the_middle() -> impl Iterator<Item = f64> {
    (0..=7).flat_map(|step| {
        let off = 0.05 * f64::from(step);
        let other = (step > 0).then_some(0.5 - off);
        [0.5 + off].into_iter().chain(other)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn knots(points: &[Px]) -> Vec<Knot> {
        points.iter().map(|&at| Knot { at, kv: at[0] }).collect()
    }

    const WINDOW: Window = Window { low: [0.0, 0.0], high: [10.0, 10.0] };

    #[test]
    fn a_line_beside_a_square_is_a_larger_square() {
        let square = [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]];
        // Clockwise on the sheet: the right hand is inside.
        for (grown, want) in
            aside(&square, true, -2.0).iter().zip([[-2.0, -2.0], [12.0, -2.0], [12.0, 12.0], [-2.0, 12.0]])
        {
            assert!(apart(*grown, want) < 1e-9, "{grown:?}");
        }
    }

    #[test]
    fn a_line_that_doubles_back_does_not_run_away() {
        let spike = aside(&[[0.0, 0.0], [10.0, 0.0], [0.0, 0.0]], false, 3.0);
        assert!(spike.iter().all(|&point| apart(point, [5.0, 0.0]) < 20.0), "{spike:?}");
    }

    #[test]
    fn clipping_keeps_the_figure_and_what_lies_before() {
        let pieces = clip(&knots(&[[-5.0, 5.0], [5.0, 5.0], [15.0, 5.0]]), false, &WINDOW);
        assert_eq!(pieces.len(), 1);
        assert!((pieces[0].before - 5.0).abs() < 1e-9);
        let ends = (pieces[0].knots[0], pieces[0].knots[2]);
        assert!((ends.0.kv - 0.0).abs() < 1e-9 && (ends.1.kv - 10.0).abs() < 1e-9, "{ends:?}");
        assert!(clip(&knots(&[[-5.0, 5.0], [-5.0, 50.0]]), false, &WINDOW).is_empty());
        assert!(clip(&knots(&[[f64::NAN, 5.0], [5.0, 5.0]]), false, &WINDOW).is_empty());
    }

    #[test]
    fn a_clipped_area_keeps_what_is_inside() {
        let ring = clip_ring(&[[-10.0, -10.0], [5.0, -10.0], [5.0, 5.0], [-10.0, 5.0]], &WINDOW);
        let twice: f64 = (0..ring.len())
            .map(|index| {
                let (a, b) = (ring[index], ring[(index + 1) % ring.len()]);
                a[0] * b[1] - b[0] * a[1]
            })
            .sum();
        assert!((twice.abs() / 2.0 - 25.0).abs() < 1e-9);
    }

    #[test]
    fn walking_steps_evenly_round_corners() {
        let steps = walk(&[[0.0, 0.0], [10.0, 0.0], [10.0, 10.0]], false, 4.0, 8.0);
        assert_eq!(steps.len(), 3);
        assert!(apart(steps[1].0, [10.0, 2.0]) < 1e-9 && apart(steps[1].1, [0.0, 1.0]) < 1e-9);
    }
}
