//! The net: an edge and a core coloured by volts, with posts, joins and ends; spare netting and gaps.
//!
//! Volts are told by the core's colour, again by its width (3.5 px below 3 kV, 5 up to 5 kV, 6.5 above) and by
//! dashes below 2 kV. The edge carries the contrast where the core cannot.

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::pen::Pen;
use super::trace::{self, Knot, Px, lerp, right, scaled, sub, toward};
use crate::palette::{self, Palette, blended};
use crate::shape::Role;
use crate::view::Distance;

/// Volts at which the core grows wider, kilovolts.
const WIDER_KV: [f64; 2] = [3.0, 5.0];
/// Widths of the core below, between and above, pixels.
const WIDTHS: [f64; 3] = [3.5, 5.0, 6.5];
/// The core is dashed below this, kilovolts.
const DASHED_KV: f64 = 2.0;
/// Dash and gap, pixels.
const DASH: [f64; 2] = [5.0, 4.0];
/// Steps of colour from 0 to twice the target: finer ones cannot be told apart.
const STEPS: f64 = 96.0;
/// Each piece of the core reaches so far under the next, that no seam shows between them.
const SEAM_PX: f64 = 0.5;

/// How a net is drawn.
#[derive(Clone, Copy, Debug)]
pub(crate) struct NetStyle {
    pub(crate) palette: &'static Palette,
    /// Taken off every width, pixels.
    pub(crate) thinner: f64,
    /// Width of the edge on each side, pixels.
    pub(crate) edge: f64,
    /// Middle of the volts' scale, kilovolts.
    pub(crate) target_kv: f64,
    pub(crate) stale: bool,
    /// Whether the net is a plain stroke, as on paper.
    pub(crate) plain: bool,
}

impl NetStyle {
    /// How a net is drawn at a distance.
    pub(crate) fn new(theme: palette::Theme, distance: Distance, target_kv: f64, stale: bool) -> Self {
        let edge = match theme {
            palette::Theme::Dark => 1.1,
            palette::Theme::Light | palette::Theme::Print => 1.4,
            palette::Theme::Contrast => 1.6,
        };
        let (thinner, edge) = match distance {
            Distance::Near => (0.0, edge),
            Distance::Middle => (0.5, edge),
            Distance::Far => (1.5, 0.8),
        };
        let plain = theme == palette::Theme::Print;
        Self { palette: theme.palette(), thinner, edge, target_kv, stale, plain }
    }

    /// Width of the core at a voltage.
    pub(crate) fn core(&self, kv: f64) -> f64 {
        WIDTHS[width_class(kv)] - self.thinner
    }

    /// Half the width of the net with its edges, where it is widest.
    pub(crate) fn half(&self) -> f64 {
        (WIDTHS[2] - self.thinner) / 2.0 + self.edge
    }

    /// Draws an open stretch of net; `volts` tells whether its figures count.
    pub(crate) fn draw(&self, pen: &mut Pen, knots: &[Knot], closed: bool, volts: bool) {
        let points: Vec<Px> = knots.iter().map(|knot| knot.at).collect();
        if self.plain || !volts {
            self.draw_plain(pen, &trace::distinct(&points, closed), closed);
            return;
        }
        let knots = if closed { opened(knots) } else { knots.to_vec() };
        let classes = cut(&knots, |kv| width_class(kv) as f64, &WIDER_KV);
        let even = classes.len() == 1;
        for class in &classes {
            let width = self.core(middle_kv(class)) + 2.0 * self.edge;
            if closed && even {
                pen.ring(&trace::distinct(&points, true), width, self.palette.edge);
            } else {
                let line: Vec<Px> = class.iter().map(|knot| knot.at).collect();
                pen.line(&trace::distinct(&line, false), width, self.palette.edge);
            }
        }
        for class in &classes {
            self.core_of(pen, class);
        }
    }

    /// Netting whose volts are not known: its core is blank.
    fn draw_plain(&self, pen: &mut Pen, points: &[Px], closed: bool) {
        let core = if self.plain { 0.0 } else { WIDTHS[1] - self.thinner };
        let outer = if self.plain { 2.0 } else { core + 2.0 * self.edge };
        for (width, colour) in [(outer, self.palette.edge), (core, self.palette.sheet)] {
            if width > 0.0 && closed {
                pen.ring(points, width, colour);
            } else if width > 0.0 {
                pen.line(points, width, colour);
            }
        }
    }

    /// The core of a stretch of one width: solid, and dashes where volts are low.
    fn core_of(&self, pen: &mut Pen, knots: &[Knot]) {
        let width = self.core(middle_kv(knots));
        for part in cut(knots, |kv| f64::from(kv < DASHED_KV), &[DASHED_KV]) {
            let dashed = middle_kv(&part) < DASHED_KV;
            if dashed {
                let line: Vec<Px> = part.iter().map(|knot| knot.at).collect();
                pen.line(&trace::distinct(&line, false), width, self.palette.dash_gap);
            }
            if dashed {
                let length = trace::line_length(&part.iter().map(|knot| knot.at).collect::<Vec<_>>());
                let mut from = 0.0;
                while from < length {
                    let dash = trace::stretch(&part, from, (from + DASH[0]).min(length));
                    self.stroke(pen, &dash, width, middle_kv(&dash));
                    from += DASH[0] + DASH[1];
                }
            } else {
                self.shades(pen, &part, width);
            }
        }
    }

    /// A solid core in steps of colour.
    fn shades(&self, pen: &mut Pen, knots: &[Knot], width: f64) {
        let step_kv = 2.0 * self.target_kv / STEPS;
        let usable = step_kv > 0.0 && step_kv.is_finite();
        if !usable {
            self.stroke(pen, knots, width, middle_kv(knots));
            return;
        }
        let shade = |kv: f64| (kv / step_kv).clamp(0.0, STEPS).floor();
        let mut line: Vec<Knot> = Vec::new();
        for pair in knots.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            let (first, last) = (shade(from.kv), shade(to.kv));
            let sign = if last < first { -1.0 } else { 1.0 };
            line.push(from);
            for index in 0..((last - first).abs() as u32) {
                // The border that is crossed next, seen from the side that the line comes from.
                let border = (first + sign * f64::from(index) + f64::from(sign > 0.0)) * step_kv;
                let part =
                    if to.kv == from.kv { 1.0 } else { ((border - from.kv) / (to.kv - from.kv)).clamp(0.0, 1.0) };
                let at = Knot { at: lerp(from.at, to.at, part), kv: border };
                line.push(at);
                self.stroke(pen, &line, width, middle_kv(&line));
                line.clear();
                line.push(at);
            }
        }
        line.extend(knots.last());
        self.stroke(pen, &line, width, middle_kv(&line));
    }

    fn stroke(&self, pen: &mut Pen, knots: &[Knot], width: f64, kv: f64) {
        let mut line = trace::distinct(&knots.iter().map(|knot| knot.at).collect::<Vec<_>>(), false);
        if let [.., before, last] = line[..]
            && let Some(way) = trace::direction(before, last)
        {
            line.push(toward(last, way, SEAM_PX));
            line.remove(line.len() - 2);
        }
        let colour = palette::volts(kv, self.target_kv);
        pen.line(&line, width, if self.stale { blended(colour, self.palette.sheet) } else { colour });
    }
}

/// Which of the widths a voltage has.
fn width_class(kv: f64) -> usize {
    WIDER_KV.iter().filter(|&&border| kv >= border).count()
}

/// The voltage that stands for a stretch: that of its middle knots, which lies on no border.
fn middle_kv(knots: &[Knot]) -> f64 {
    let (low, high) = knots.iter().fold(NO_SPAN, |span, knot| spanned(span, knot.kv));
    f64::midpoint(low, high)
}

/// The least and the greatest of no voltages.
const NO_SPAN: (f64, f64) = (f64::INFINITY, f64::NEG_INFINITY);

fn spanned((low, high): (f64, f64), kv: f64) -> (f64, f64) {
    (low.min(kv), high.max(kv))
}

/// A closed line as an open one that starts and ends in the middle of its longest side, where a seam cannot show.
fn opened(knots: &[Knot]) -> Vec<Knot> {
    let count = knots.len();
    let far = |index: usize| trace::apart(knots[index].at, knots[(index + 1) % count].at);
    let Some(longest) = (0..count).max_by(|&a, &b| far(a).total_cmp(&far(b))) else { return Vec::new() };
    let (from, to) = (knots[longest], knots[(longest + 1) % count]);
    let middle = Knot { at: lerp(from.at, to.at, 0.5), kv: f64::midpoint(from.kv, to.kv) };
    let mut line = vec![middle];
    line.extend((1..=count).map(|step| knots[(longest + step) % count]));
    line.push(middle);
    line
}

/// The line cut where its voltage crosses a border between two classes.
fn cut(knots: &[Knot], class: impl Fn(f64) -> f64, borders: &[f64]) -> Vec<Vec<Knot>> {
    let mut parts: Vec<Vec<Knot>> = vec![Vec::new()];
    // The least and the greatest voltage of the part that is still open.
    let mut span = NO_SPAN;
    for pair in knots.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let mut crossed: Vec<f64> = borders
            .iter()
            .map(|&border| (border - from.kv) / (to.kv - from.kv))
            .filter(|part| part.is_finite() && *part > 0.0 && *part < 1.0)
            .collect();
        crossed.sort_by(f64::total_cmp);
        let mut start = from;
        for part in crossed.into_iter().chain([1.0]) {
            let end = if part < 1.0 {
                Knot { at: lerp(from.at, to.at, part), kv: from.kv + (to.kv - from.kv) * part }
            } else {
                to
            };
            let here = class(f64::midpoint(start.kv, end.kv));
            match parts.last_mut() {
                Some(open) if open.is_empty() => {
                    open.extend([start, end]);
                    span = spanned(NO_SPAN, start.kv);
                }
                Some(open) if class(f64::midpoint(span.0, span.1)) == here => open.push(end),
                _ => {
                    parts.push(vec![start, end]);
                    span = spanned(NO_SPAN, start.kv);
                }
            }
            span = spanned(span, end.kv);
            start = end;
        }
    }
    parts.retain(|part| part.len() >= 2);
    parts
}

impl Inker<'_> {
    pub(super) fn net_style(&self) -> NetStyle {
        NetStyle::new(self.view.theme, self.distance, self.drawing.target_kv, self.view.stale)
    }

    pub(super) fn net(&mut self, places: &[Point], closed: bool, kv: &[f64]) {
        let volts = kv.len() == places.len();
        let knots: Vec<Knot> = places
            .iter()
            .enumerate()
            .map(|(index, &place)| Knot { at: self.px(place), kv: if volts { kv[index] } else { 0.0 } })
            .collect();
        let style = self.net_style();
        for piece in trace::clip(&knots, closed, &self.window) {
            style.draw(&mut self.pen, &piece.knots, piece.closed, volts);
            self.take_net(&piece.points(), piece.closed);
        }
    }

    /// Netting that is not there, or lies beside itself.
    pub(super) fn bare_line(&mut self, role: Role, places: &[Point], closed: bool) {
        let colours = self.palette;
        match role {
            Role::Outline => {
                self.seen_line(places, closed, 1.5, colours.ink, Some([7.0, 4.0]));
                self.take_net(&self.pxs(places), closed);
            }
            Role::Gap => {
                self.seen_line(places, false, 1.5, colours.danger, Some([7.0, 4.0]));
                self.take_net(&self.pxs(places), false);
            }
            Role::Spare => {
                // Inside is to the left.
                let beside = trace::aside(&self.pxs(places), false, -self.spare_px());
                for piece in self.seen(&beside, false) {
                    self.pen.line(&piece.points(), 1.5, colours.edge);
                }
                self.take_line(&beside, false);
                // The fold at the line's end.
                if let (Some(&end), Some(&fold)) = (self.pxs(places).last(), beside.last()) {
                    self.pen.line(&[end, fold], 1.5, colours.edge);
                }
            }
            _ => {}
        }
    }

    fn spare_px(&self) -> f64 {
        match self.distance {
            Distance::Near => 8.0,
            Distance::Middle => 6.0,
            Distance::Far => 4.0,
        }
    }

    pub(super) fn spare_post(&mut self, at: Px, inward: Px) {
        if self.distance != Distance::Far {
            let beside = toward(at, inward, self.spare_px());
            self.pen.line(&[beside, toward(beside, inward, 4.0)], 1.5, self.palette.ink);
        }
    }

    pub(super) fn post(&mut self, at: Px, outward: Px, number: usize) {
        let (reach, width) = match self.distance {
            Distance::Near => (10.0, 1.75),
            Distance::Middle if number.is_multiple_of(2) => (7.0, 1.5),
            _ => return,
        };
        let tooth = [toward(at, outward, 3.0), toward(at, outward, reach)];
        self.pen.line(&tooth, width, self.palette.ink);
        self.teeth.push(tooth);
    }

    pub(super) fn join(&mut self, at: Px, outward: Px) {
        let (along, across) = match self.distance {
            Distance::Near => (6.0, 19.0),
            Distance::Middle => (4.0, 14.0),
            Distance::Far => (3.0, 9.0),
        };
        let ring = staple(at, outward, along, across);
        let edge = if self.distance == Distance::Far { 1.0 } else { 1.5 };
        self.pen.edged(&ring, self.palette.sheet, edge, self.palette.ink);
        self.taken.push(Block::turned(at, across, along + 2.0, outward[1].atan2(outward[0])));
    }

    pub(super) fn end_post(&mut self, at: Px, outward: Px) {
        let (tall, bar) = match self.distance {
            Distance::Near => (12.0, 10.0),
            Distance::Middle => (9.0, 8.0),
            Distance::Far => (5.0, 5.0),
        };
        let colour = self.palette.ink;
        let (foot, top) = (toward(at, outward, -4.0), toward(at, outward, tall));
        let half = scaled(right(outward), bar / 2.0);
        self.pen.line(&[foot, top], 1.75, colour);
        self.pen.line(&[sub(top, half), trace::add(top, half)], 1.75, colour);
        let middle = toward(at, outward, tall / 2.0);
        self.taken.push(Block::turned(middle, tall + 2.0, bar + 2.0, outward[1].atan2(outward[0])));
    }
}

/// The box of a join, across the net.
pub(crate) fn staple(at: Px, outward: Px, along: f64, across: f64) -> [Px; 4] {
    let (l, w) = (scaled(right(outward), along / 2.0), scaled(outward, across / 2.0));
    [sub(sub(at, l), w), sub(trace::add(at, l), w), trace::add(trace::add(at, l), w), trace::add(sub(at, l), w)]
}
