//! A branch between any two nodes of a graph, one place at a time, without one pulse a place: the way of `crate::touch`.
//!
//! The oscillation that an inductance makes is found as a zero of `f(s) (1 + Z(s) / R)`, `f` the loop impedance of the
//! energizer and `Z` the impedance between the branch's nodes with the energizer in place: regular where `f` vanishes.

use std::f64::consts::PI;

use crate::complex::Complex;
use crate::contour::{Contour, POINTS};
use crate::pulse::{Accuracy, FIRST_DROP, NEGLIGIBLE, Pulse, vertex};
use crate::stepper::FIRST_INSTANT;
use crate::touch::WHOLE_PULSE;
use crate::woven::graph::Graph;
use crate::woven::order::{Factors, Figures, Order};
use crate::woven::step::{Stepping, longest_s};

/// A branch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spot {
    pub(crate) from: usize,
    pub(crate) to: usize,
    pub(crate) ohm: f64,
}

/// What a branch takes: greatest voltage over time, and `∫ v² dt`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Found {
    pub(crate) peak_v: f64,
    pub(crate) square_vs: f64,
}

/// Times to a decade, and their distance in the logarithm.
const TIMES: i32 = 24;
const STEP: f64 = std::f64::consts::LN_10 / TIMES as f64;
const FIRST_TIME_S: f64 = 1e-9;
const EARLIER: f64 = 1e-3;
const RETRIES: usize = 4;
const SPENT: f64 = 1e-5;
const TIMES_PER_PERIOD: f64 = 24.0;
const PERIODS: f64 = 12.0;
const RINGING_DECAYS: f64 = 8.0;
const UNSURE: f64 = 1e-4;
const AGREEMENT: f64 = 2e-4;

/// What every branch takes, in their order; where two windows of the contour do not agree, the pulse is stepped.
pub(crate) fn touches(graph: &Graph, order: &Order, spots: &[Spot]) -> Vec<Found> {
    let mut sum = Sum::new(graph, order, spots);
    let mut first_time_s = FIRST_TIME_S;
    for _ in 0..=RETRIES {
        if !sum.all_windows(first_time_s) {
            break;
        }
        first_time_s *= EARLIER;
    }
    let least_v = 0.005 * graph.feeder.v0;
    let places = spots.iter().zip(&sum.tracks).zip(&sum.rings);
    places
        .map(|((spot, track), ring)| {
            let square_vs = track.square_vs + ring.map_or(0.0, |ring| ring.square_vs);
            let agrees = track.gap_v <= AGREEMENT * track.best_v.max(least_v);
            if agrees && square_vs >= 0.0 {
                Found { peak_v: track.best_v, square_vs }
            } else {
                stepped(graph, order, spot)
            }
        })
        .collect()
}

/// The charge through every branch, coulombs: the transform of its current near `s = 0`.
pub(crate) fn charges(graph: &Graph, order: &Order, spots: &[Spot]) -> Vec<f64> {
    let mut poles = Poles::new(graph, order);
    let mut volts = vec![Complex::ZERO; graph.nodes];
    let s = Complex::real(WHOLE_PULSE);
    poles.untouched(s, s.inverse() * graph.feeder.v0, &mut volts);
    poles.factors.spread(graph, order);
    spots.iter().map(|spot| poles.with_branch(spot, &volts).re / spot.ohm).collect()
}

/// One branch by steps in time.
fn stepped(graph: &Graph, order: &Order, spot: &Spot) -> Found {
    let mut touched = graph.clone();
    // Shorts become wires, so that the touch is the one short that is left.
    touched.wires.append(&mut touched.shorts);
    touched.shorts.push((spot.from, spot.to, 1.0 / spot.ohm));
    let mut out = Pulse::default();
    let peaks = Stepping::new(&touched, order).read(&[(spot.from, spot.to)], &Accuracy::default(), &mut out);
    Found { peak_v: peaks.first().map_or(0.0, |peak| peak.volts), square_vs: out.energy.shorts_j * spot.ohm }
}

/// Looks for the one pair of complex poles.
pub(crate) struct Poles<'a> {
    graph: &'a Graph,
    order: &'a Order,
    figures: Figures,
    factors: Factors,
}

const STARTS: i32 = 8;
const ITERATIONS: usize = 40;
/// The secant's last step is so small.
const CLOSE: f64 = 1e-10;
/// A pole nearer the real axis than so much of its size does not ring.
const LEAST_ANGLE: f64 = 1e-6;

impl<'a> Poles<'a> {
    pub(crate) fn new(graph: &'a Graph, order: &'a Order) -> Self {
        Self { graph, order, figures: Figures::new(graph, order), factors: Factors::default() }
    }

    /// The circuit's own pole in the upper half plane.
    pub(crate) fn of_circuit(&mut self) -> Option<Complex> {
        self.find(None, None)
    }

    fn find(&mut self, spot: Option<&Spot>, near: Option<Complex>) -> Option<Complex> {
        let feeder = &self.graph.feeder;
        if feeder.henry <= 0.0 {
            return None;
        }
        let fence_f: f64 = self.graph.capacitances().map(|link| link.2).sum();
        let series_f = if fence_f > 0.0 { 1.0 / (1.0 / fence_f + 1.0 / feeder.farad) } else { feeder.farad };
        let slowest = (feeder.henry * series_f).sqrt().recip();
        let starts = (0..STARTS).map(|start| {
            let omega = slowest * 3.0_f64.powi(start - 1);
            Complex::new(-0.1 * omega, omega)
        });
        near.into_iter().chain(starts).find_map(|start| self.secant(spot, start))
    }

    fn secant(&mut self, spot: Option<&Spot>, start: Complex) -> Option<Complex> {
        let (mut before, mut s) = (start * 1.001, start);
        let mut value_before = self.value(spot, before)?;
        for _ in 0..ITERATIONS {
            let value = self.value(spot, s)?;
            let slope = value - value_before;
            if slope.size() <= 0.0 {
                return None;
            }
            let change = value * (s - before) * slope.inverse();
            (before, value_before) = (s, value);
            s = s - change;
            // The function is real on the real axis: its two half planes mirror each other.
            s.im = s.im.abs();
            if !(s.size() > 0.0 && s.size().is_finite()) {
                return None;
            }
            if change.size() < CLOSE * s.size() {
                return (s.im > LEAST_ANGLE * s.size() && s.re < 0.0).then_some(s);
            }
        }
        None
    }

    /// What vanishes at a pole; without a branch, the loop impedance.
    fn value(&mut self, spot: Option<&Spot>, s: Complex) -> Option<Complex> {
        let Self { graph, order, figures, factors } = self;
        let fence_z = factors.fence_z(graph, order, figures, s)?;
        let feeder = &graph.feeder;
        let own_z = s * feeder.henry + Complex::real(feeder.ohm()) + (s * feeder.farad).inverse();
        let loop_z = own_z + fence_z;
        let Some(spot) = spot else { return Some(loop_z) };
        factors.factor(graph, order, figures, s);
        factors.spread(graph, order);
        let share = factors.between(order, spot.from, spot.to) * spot.ohm.recip() + Complex::real(1.0);
        Some(loop_z * share)
    }

    /// The oscillation with a branch in place.
    fn ring(&mut self, spot: &Spot, near: Option<Complex>) -> Option<Ring> {
        const NUDGE: f64 = 1e-5;
        let pole = self.find(Some(spot), near)?;
        let nudge = pole * NUDGE;
        let slope =
            (self.value(Some(spot), pole + nudge)? - self.value(Some(spot), pole - nudge)?) * (nudge * 2.0).inverse();
        // V f is regular at the pole, V = x V0 / (s f) with x the transfer impedance.
        let above = self.numerator(spot, pole + nudge)?;
        let below = self.numerator(spot, pole - nudge)?;
        let residue = (above + below) * 0.5 * slope.inverse();
        let mut ring = Ring { pole, residue, square_vs: 0.0 };
        let mirror_s = pole * -1.0;
        let rest = self.touched(spot, mirror_s) - ring.transform(mirror_s);
        let own = (residue.square() * mirror_s.inverse()).re + residue.size() * residue.size() / mirror_s.re;
        ring.square_vs = 4.0 * (residue * rest).re + own;
        Some(ring)
    }

    fn numerator(&mut self, spot: &Spot, s: Complex) -> Option<Complex> {
        let loop_z = self.value(None, s)?;
        let mut volts = vec![Complex::ZERO; self.graph.nodes];
        self.untouched(s, s.inverse() * self.graph.feeder.v0, &mut volts);
        Some((volts[spot.from] - volts[spot.to]) * loop_z)
    }

    /// Voltages of all nodes without a branch.
    fn untouched(&mut self, s: Complex, driving_v: Complex, volts: &mut [Complex]) {
        let Self { graph, order, figures, factors } = self;
        let driven = factors.factor(graph, order, figures, s) * driving_v;
        volts.fill(Complex::ZERO);
        volts[graph.terminal] += driven;
        volts[graph.pole] = volts[graph.pole] - driven;
        factors.solve(order, volts);
    }

    fn touched(&mut self, spot: &Spot, s: Complex) -> Complex {
        let mut volts = vec![Complex::ZERO; self.graph.nodes];
        self.untouched(s, s.inverse() * self.graph.feeder.v0, &mut volts);
        self.factors.spread(self.graph, self.order);
        self.with_branch(spot, &volts)
    }

    /// The voltage over a branch, from the voltages without it.
    fn with_branch(&self, spot: &Spot, volts: &[Complex]) -> Complex {
        let z = self.factors.between(self.order, spot.from, spot.to);
        let share = z * spot.ohm.recip() + Complex::real(1.0);
        (volts[spot.from] - volts[spot.to]) * share.inverse()
    }
}

/// The oscillation with a branch at one place.
#[derive(Debug, Clone, Copy)]
struct Ring {
    pole: Complex,
    residue: Complex,
    /// `∫ (2 w r + r²) dt`.
    square_vs: f64,
}

impl Ring {
    fn volts(&self, time_s: f64) -> f64 {
        2.0 * (self.residue * (self.pole * time_s).exp()).re
    }

    fn transform(&self, s: Complex) -> Complex {
        let mirror = Complex::new(self.pole.re, -self.pole.im);
        let mirror_residue = Complex::new(self.residue.re, -self.residue.im);
        self.residue * (s - self.pole).inverse() + mirror_residue * (s - mirror).inverse()
    }
}

#[derive(Debug, Clone, Copy, Default)]
struct Track {
    at_once_v: f64,
    first_v: f64,
    earlier_v: f64,
    last_v: f64,
    best_v: f64,
    best_s: f64,
    square_vs: f64,
    boundary_v: f64,
    gap_v: f64,
}

struct Sum<'a> {
    graph: &'a Graph,
    spots: &'a [Spot],
    poles: Poles<'a>,
    rings: Vec<Option<Ring>>,
    tracks: Vec<Track>,
    volts: Vec<Complex>,
    /// Transforms over the branches, point after point of the present window.
    transforms: Vec<Complex>,
    now_v: Vec<f64>,
    times_s: [f64; 2],
}

impl<'a> Sum<'a> {
    fn new(graph: &'a Graph, order: &'a Order, spots: &'a [Spot]) -> Self {
        let mut poles = Poles::new(graph, order);
        let mut near = poles.of_circuit();
        let mut rings = vec![None; spots.len()];
        if graph.feeder.henry > 0.0 {
            for (ring, spot) in rings.iter_mut().zip(spots) {
                *ring = poles.ring(spot, near);
                near = ring.map(|ring| ring.pole).or(near);
            }
        }
        Self {
            graph,
            spots,
            poles,
            rings,
            tracks: Vec::new(),
            volts: vec![Complex::ZERO; graph.nodes],
            transforms: Vec::new(),
            now_v: vec![0.0; spots.len()],
            times_s: [0.0; 2],
        }
    }

    /// Transforms over all branches at `s`, appended.
    fn transform(&mut self, s: Complex, driving_v: Complex) {
        self.poles.untouched(s, driving_v, &mut self.volts);
        self.poles.factors.spread(self.graph, self.poles.order);
        let (poles, volts) = (&self.poles, &self.volts);
        self.transforms.extend(self.spots.iter().map(|spot| poles.with_branch(spot, volts)));
    }

    /// From `first_time_s` to the end; true where a peak that counts lies too early for it.
    fn all_windows(&mut self, first_time_s: f64) -> bool {
        self.first_instant();
        let touch_ohm = self.spots.iter().map(|spot| spot.ohm).reduce(f64::max);
        let longest_s = longest_s(self.graph, touch_ohm);
        let fine = self.fine_times();
        let at_s = |index: i32| first_time_s * (STEP * f64::from(index)).exp();
        let mut first = 0;
        loop {
            let contour = Contour::new(at_s(first - 1), (STEP * f64::from(TIMES + 1)).exp());
            self.window(contour);
            if first > 0 {
                self.evaluate(contour, at_s(first - 1));
                for place in 0..self.spots.len() {
                    let gap_v = (self.volts_at(place, at_s(first - 1)) - self.tracks[place].boundary_v).abs();
                    self.tracks[place].gap_v = self.tracks[place].gap_v.max(gap_v);
                }
            }
            for index in first..first + TIMES {
                let time_s = at_s(index);
                if let Some((between_s, until_s)) = fine.filter(|_| index > 0) {
                    let before_s = at_s(index - 1);
                    let mut count = (before_s / between_s).floor() + 1.0;
                    while count * between_s < (time_s * 0.999).min(until_s) {
                        if count * between_s > before_s * 1.001 {
                            self.look(contour, count * between_s);
                        }
                        count += 1.0;
                    }
                }
                self.sample(contour, time_s, index == 0);
            }
            first += TIMES;
            let over = self.tracks.iter().all(|track| track.last_v.abs() <= SPENT * track.best_v);
            if over || at_s(first) > longest_s {
                break;
            }
        }
        let counts_v = NEGLIGIBLE * self.graph.feeder.v0;
        self.tracks.iter().any(|track| {
            let Track { at_once_v, first_v, best_v, best_s, square_vs, .. } = *track;
            let peak_missed = if best_s > 0.0 {
                best_s <= at_s(1) && best_v - at_once_v > counts_v
            } else {
                at_once_v - first_v > FIRST_DROP * best_v + counts_v
            };
            let unsure_vs = 0.5 * first_time_s * (first_v * first_v - at_once_v * at_once_v).abs();
            peak_missed || unsure_vs > UNSURE * square_vs
        })
    }

    fn fine_times(&self) -> Option<(f64, f64)> {
        let rings = || self.rings.iter().flatten();
        let period_s = |ring: &Ring| 2.0 * PI / ring.pole.im;
        let shortest_s = rings().map(period_s).reduce(f64::min)?;
        let until_s =
            rings().map(|ring| (PERIODS * period_s(ring)).min(RINGING_DECAYS / -ring.pole.re)).fold(0.0, f64::max);
        Some((shortest_s / TIMES_PER_PERIOD, until_s))
    }

    fn first_instant(&mut self) {
        self.transforms.clear();
        self.transform(Complex::real(FIRST_INSTANT), Complex::real(self.graph.feeder.v0));
        self.tracks.clear();
        self.tracks.extend(self.transforms.iter().map(|at_once| Track {
            at_once_v: at_once.re,
            earlier_v: f64::INFINITY,
            last_v: at_once.re,
            best_v: at_once.re,
            ..Track::default()
        }));
        self.times_s = [0.0; 2];
    }

    fn window(&mut self, contour: Contour) {
        self.transforms.clear();
        for point in 0..POINTS {
            let s = contour.s(point);
            self.transform(s, s.inverse() * self.graph.feeder.v0);
            let places = self.spots.len();
            let row = &mut self.transforms[point * places..];
            for (value, ring) in row.iter_mut().zip(&self.rings) {
                if let Some(ring) = ring {
                    *value = *value - ring.transform(s);
                }
            }
        }
    }

    /// All voltages but their ringing, into `now_v`.
    fn evaluate(&mut self, contour: Contour, time_s: f64) {
        let places = self.spots.len();
        self.now_v.fill(0.0);
        for point in 0..POINTS {
            let weight = contour.weight(point, time_s);
            let row = &self.transforms[point * places..(point + 1) * places];
            for (now_v, value) in self.now_v.iter_mut().zip(row) {
                *now_v += weight.re * value.re - weight.im * value.im;
            }
        }
    }

    /// One place's voltage, ringing included, of the time last evaluated.
    fn volts_at(&self, place: usize, time_s: f64) -> f64 {
        self.now_v[place] + self.rings[place].map_or(0.0, |ring| ring.volts(time_s))
    }

    fn read(&self, contour: Contour, place: usize, time_s: f64) -> f64 {
        let places = self.spots.len();
        let smooth_v: f64 =
            (0..POINTS).map(|point| (contour.weight(point, time_s) * self.transforms[point * places + place]).re).sum();
        smooth_v + self.rings[place].map_or(0.0, |ring| ring.volts(time_s))
    }

    fn sample(&mut self, contour: Contour, time_s: f64, is_first: bool) {
        self.look(contour, time_s);
        for ((track, ring), smooth_v) in self.tracks.iter_mut().zip(&self.rings).zip(&self.now_v) {
            let square_vs = smooth_v * smooth_v * time_s;
            if is_first {
                let at_once_v = track.at_once_v - ring.map_or(0.0, |ring| ring.volts(0.0));
                track.square_vs = 0.5 * (square_vs + at_once_v * at_once_v * time_s) + 0.5 * STEP * square_vs;
                track.first_v = track.last_v;
            } else {
                track.square_vs += STEP * square_vs;
            }
            track.boundary_v = track.last_v;
        }
    }

    fn look(&mut self, contour: Contour, time_s: f64) {
        self.evaluate(contour, time_s);
        let times_s = [self.times_s[0], self.times_s[1], time_s];
        for place in 0..self.spots.len() {
            let volts = self.volts_at(place, time_s);
            let Track { earlier_v, last_v, mut best_v, mut best_s, .. } = self.tracks[place];
            if last_v >= volts && last_v > earlier_v {
                let top_s =
                    vertex([earlier_v, last_v, volts], times_s, f64::NEG_INFINITY).map_or(time_s, |top| top.at_s);
                let top_v = self.read(contour, place, top_s);
                if top_v.max(last_v) > best_v {
                    (best_v, best_s) = (top_v.max(last_v), top_s);
                }
            } else if volts > best_v {
                (best_v, best_s) = (volts, time_s);
            }
            let track = &mut self.tracks[place];
            (track.best_v, track.best_s) = (best_v, best_s);
            (track.earlier_v, track.last_v) = (last_v, volts);
        }
        self.times_s = [times_s[1], time_s];
    }
}
