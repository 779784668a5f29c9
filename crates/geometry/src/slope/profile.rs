//! The ground along an outline.

use super::Surface;
use crate::{Outline, Point, SAME_PLACE_M, span_m};

/// A place of the profile; the ground is straight from one to the next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Knot {
    /// Distance along the outline in plan, metres.
    pub level_m: f64,
    /// Height, metres.
    pub up_m: f64,
    /// Distance along the ground, metres.
    pub along_m: f64,
}

/// How the ground of one side is known.
#[derive(Clone, Copy)]
pub enum SideHeights<'a> {
    /// Level: nothing is known.
    Level,
    /// It rises so many metres evenly from its first end to its second.
    Rises(f64),
    /// By measured heights.
    Over(&'a dyn Surface),
}

/// A steep stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steep {
    /// Rise over run along the outline; below zero where it falls.
    pub slope: f64,
    /// Middle of the stretch, metres in plan.
    pub level_m: f64,
}

/// The ground along an outline, from its first vertex.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    knots: Vec<Knot>,
    /// Knots of the vertices, then the line's end.
    vertices: Vec<usize>,
    closed: bool,
    /// Metres in plan of which no height is known, bridged straight.
    pub unknown_m: f64,
    /// Metres in plan that lie beyond what was measured, with the heights of its edge.
    pub beyond_m: f64,
}

/// A piece of a side whose height may be unknown, in metres of plan.
struct Span {
    from_m: f64,
    to_m: f64,
    up_m: Option<(f64, f64)>,
    /// Whether its heights are measured, so that those of two such pieces can be compared.
    measured: bool,
    /// Whether it begins at a vertex.
    first: bool,
}

impl Span {
    /// A whole side that rises evenly.
    fn even(from_m: f64, side_m: f64, rises_m: f64) -> Self {
        Self { from_m, to_m: from_m + side_m, up_m: Some((0.0, rises_m)), measured: false, first: true }
    }
}

impl Profile {
    /// The ground along `outline`; `side` says how that of each side is known. `None` for a line without a side.
    ///
    /// Sides of stated rise hang on the end of the side before, so that nothing jumps; where no height is known at all
    /// the side is level.
    pub fn new<'a>(outline: &Outline, side: impl Fn(usize) -> SideHeights<'a>) -> Option<Self> {
        let sides = outline.side_count();
        if sides == 0 {
            return None;
        }
        let mut profile = Self {
            knots: Vec::new(),
            vertices: Vec::new(),
            closed: outline.is_closed(),
            unknown_m: 0.0,
            beyond_m: 0.0,
        };
        let mut spans = Vec::new();
        let mut level_m = 0.0;
        for index in 0..sides {
            let (from, to) = outline.side(index);
            let side_m = from.distance_m(to);
            match side(index) {
                SideHeights::Level => spans.push(Span::even(level_m, side_m, 0.0)),
                SideHeights::Rises(rises_m) => spans.push(Span::even(level_m, side_m, rises_m)),
                SideHeights::Over(surface) => profile.over(surface, (from, to), (level_m, side_m), &mut spans),
            }
            level_m += side_m;
        }
        profile.join(&spans, level_m);
        Some(profile)
    }

    /// One side over measured heights.
    fn over(
        &mut self,
        surface: &dyn Surface,
        (from, to): (Point, Point),
        (start_m, side_m): (f64, f64),
        spans: &mut Vec<Span>,
    ) {
        let mut shares = surface.cuts(from, to);
        shares.push(1.0);
        let mut share = 0.0;
        for next in shares {
            let (a, b) = (from.towards(to, share), from.towards(to, next));
            let piece = surface.piece(from.towards(to, f64::midpoint(share, next)), a, b);
            let length_m = (next - share) * side_m;
            match piece {
                None => self.unknown_m += length_m,
                Some(piece) if piece.beyond => self.beyond_m += length_m,
                Some(_) => {}
            }
            spans.push(Span {
                from_m: start_m + share * side_m,
                to_m: start_m + next * side_m,
                up_m: piece.map(|piece| (piece.from_up_m, piece.to_up_m)),
                measured: true,
                first: share == 0.0,
            });
            share = next;
        }
    }

    /// Strings the spans together: each begins where the one before ended, and what is unknown is bridged straight.
    fn join(&mut self, spans: &[Span], level_m: f64) {
        let known: Vec<usize> = (0..spans.len()).filter(|&span| spans[span].up_m.is_some()).collect();
        // What is unknown at the line's seam is bridged round it; that needs the rise over the gap, by the heights.
        let raw = |span: usize, end: bool| spans[span].up_m.map_or(0.0, |(from, to)| if end { to } else { from });
        let mut up_m = known.first().map_or(0.0, |&first| raw(first, false));
        let start_up_m = up_m;
        let mut knots: Vec<(f64, f64)> = Vec::with_capacity(spans.len() + 1);
        let mut last: Option<usize> = None;
        for &span in &known {
            let Span { from_m, to_m, up_m: heights, .. } = &spans[span];
            let (from, to) = heights.expect("only known spans are strung");
            // Over a gap the heights themselves say what it rises, where both are measured.
            let gap = |last: &usize| last + 1 < span && spans[*last].measured && spans[span].measured;
            if let Some(last) = last.filter(gap) {
                up_m += from - raw(last, true);
            }
            if knots.last().is_none_or(|knot| from_m - knot.0 > SAME_PLACE_M) {
                knots.push((*from_m, up_m));
            }
            up_m += to - from;
            knots.push((*to_m, up_m));
            last = Some(span);
        }
        if knots.is_empty() {
            knots = vec![(0.0, 0.0), (level_m, 0.0)];
        }
        let (first, end) = (knots[0], knots[knots.len() - 1]);
        let gap_m = first.0 + (level_m - end.0);
        if self.closed && gap_m > SAME_PLACE_M {
            // Unknown round the seam: straight from the last known height to the first, once round.
            let rise_m = start_up_m - end.1;
            let at_seam_m = end.1 + rise_m * (level_m - end.0) / gap_m;
            knots.insert(0, (0.0, at_seam_m));
            knots.push((level_m, at_seam_m));
            knots.dedup_by(|next, kept| next.0 - kept.0 <= SAME_PLACE_M);
        } else {
            if first.0 > SAME_PLACE_M {
                knots.insert(0, (0.0, first.1));
            }
            if level_m - end.0 > SAME_PLACE_M {
                knots.push((level_m, end.1));
            }
        }
        // Vertices in an unknown stretch have a knot too: the line turns there.
        for span in spans.iter().filter(|span| span.first) {
            let place = knots.partition_point(|knot| knot.0 < span.from_m - SAME_PLACE_M);
            let there = knots.get(place).is_some_and(|knot| (knot.0 - span.from_m).abs() <= SAME_PLACE_M);
            if !there && place > 0 && place < knots.len() {
                let (before, after) = (knots[place - 1], knots[place]);
                let share = (span.from_m - before.0) / (after.0 - before.0);
                knots.insert(place, (span.from_m, before.1 + share * (after.1 - before.1)));
            }
        }
        let mut along_m = 0.0;
        for (index, &(level_m, up_m)) in knots.iter().enumerate() {
            if index > 0 {
                let before = knots[index - 1];
                along_m += (level_m - before.0).hypot(up_m - before.1);
            }
            self.knots.push(Knot { level_m, up_m, along_m });
        }
        let knot_at = |at_m: f64| {
            let place = self.knots.partition_point(|knot| knot.level_m < at_m - SAME_PLACE_M);
            place.min(self.knots.len() - 1)
        };
        self.vertices = spans.iter().filter(|span| span.first).map(|span| knot_at(span.from_m)).collect();
        self.vertices.push(self.knots.len() - 1);
    }

    /// The places between which the ground is straight, in order.
    pub fn knots(&self) -> &[Knot] {
        &self.knots
    }

    /// Length of the line in plan, metres.
    pub fn level_m(&self) -> f64 {
        self.knots.last().map_or(0.0, |knot| knot.level_m)
    }

    /// Length of the line along the ground, metres.
    pub fn surface_m(&self) -> f64 {
        self.knots.last().map_or(0.0, |knot| knot.along_m)
    }

    /// The knots at a side's ends.
    pub fn side(&self, side: usize) -> (Knot, Knot) {
        (self.knots[self.vertices[side]], self.knots[self.vertices[side + 1]])
    }

    /// From the lowest to the highest place, metres.
    pub fn range_m(&self) -> f64 {
        let (low_m, high_m) = span_m(self.knots.iter().map(|knot| knot.up_m));
        high_m - low_m
    }

    /// How much higher a closed line ends than it began, metres: 0 unless stated rises contradict one another.
    pub fn closing_m(&self) -> f64 {
        let (first, last) = (self.knots[0], self.knots[self.knots.len() - 1]);
        if self.closed { last.up_m - first.up_m } else { 0.0 }
    }

    /// Height at a place in plan; a ring goes on beyond its seam, climbing by what it does not close.
    pub fn up_m(&self, level_m: f64) -> f64 {
        let whole_m = self.level_m();
        if !self.closed || whole_m <= 0.0 {
            return self.between(level_m.clamp(0.0, whole_m), |knot| (knot.level_m, knot.up_m));
        }
        let rounds = (level_m / whole_m).floor();
        self.between(level_m - rounds * whole_m, |knot| (knot.level_m, knot.up_m)) + rounds * self.closing_m()
    }

    /// Distance in plan of a distance along the ground, metres, both within the line.
    pub fn level_of(&self, along_m: f64) -> f64 {
        self.between(along_m, |knot| (knot.along_m, knot.level_m))
    }

    /// Distance along the ground of a distance in plan, metres, both within the line.
    pub fn along_of(&self, level_m: f64) -> f64 {
        self.between(level_m, |knot| (knot.level_m, knot.along_m))
    }

    fn between(&self, at: f64, of: impl Fn(&Knot) -> (f64, f64)) -> f64 {
        let after = self.knots.partition_point(|knot| of(knot).0 <= at).clamp(1, self.knots.len() - 1);
        let ((from, low), (to, high)) = (of(&self.knots[after - 1]), of(&self.knots[after]));
        if to > from { low + (at - from) / (to - from) * (high - low) } else { low }
    }

    /// Places in plan at which the slope may change, between two of them; a ring goes on beyond its seam.
    pub fn breaks(&self, from_m: f64, to_m: f64) -> Vec<f64> {
        let whole_m = self.level_m();
        let rounds = if self.closed && whole_m > 0.0 {
            (from_m / whole_m).floor() as i64..=(to_m / whole_m).floor() as i64
        } else {
            0..=0
        };
        let mut breaks: Vec<f64> = Vec::new();
        for round in rounds {
            let shift_m = round as f64 * whole_m;
            // Knots lie in order: only those between are looked at.
            let first = self.knots.partition_point(|knot| knot.level_m + shift_m <= from_m + SAME_PLACE_M);
            let last = self.knots.partition_point(|knot| knot.level_m + shift_m < to_m - SAME_PLACE_M);
            breaks.extend(self.knots[first..last.max(first)].iter().map(|knot| knot.level_m + shift_m));
        }
        breaks.dedup_by(|next, kept| *next - *kept <= SAME_PLACE_M);
        breaks
    }

    /// The steepest stretch of `over_m` in plan, or the whole line where it is shorter.
    pub fn steepest(&self, over_m: f64) -> Steep {
        let whole_m = self.level_m();
        let over_m = over_m.min(whole_m);
        let mut steepest = Steep { slope: 0.0, level_m: 0.0 };
        if over_m <= 0.0 {
            return steepest;
        }
        // The mean slope over a moving stretch is extreme where one of its ends meets a knot.
        for start_m in self.knots.iter().flat_map(|knot| [knot.level_m, knot.level_m - over_m]) {
            let start_m = if self.closed { start_m } else { start_m.clamp(0.0, whole_m - over_m) };
            let slope = (self.up_m(start_m + over_m) - self.up_m(start_m)) / over_m;
            if slope.abs() > steepest.slope.abs() {
                let middle_m = start_m + over_m / 2.0;
                let level_m = if self.closed { middle_m.rem_euclid(whole_m) } else { middle_m };
                steepest = Steep { slope, level_m };
            }
        }
        steepest
    }
}
