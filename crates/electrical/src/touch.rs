//! One branch to earth at every place, one place at a time, without one pulse a place.
//!
//! In the Laplace plane one elimination and one sweep back give, for every node at once, the voltage
//! `V` without the branch and the driving-point impedance `Z`; with a branch of `R` the node has
//! `V R / (R + Z)`. Twenty places `s` on a parabola (see `contour`) serve a decade of time.
//!
//! - Peak: sixteen times a decade, and the voltage read once more at the top of the parabola through
//!   the best three; the first instant counts too.
//! - `∫ v² dt`: the trapezoidal rule on the logarithm of time. The integrand vanishes at both ends,
//!   so that the rule converges faster than any power of its step.
//!
//! An inductance may add one oscillation `r(t) = 2 Re(ρ e^(pt))` (see `ringing`), which a parabola
//! about the negative axis would miss. Its pole is found with the branch in place, `ρ / (s - p)` and
//! its mirror are taken off before the sum, and `r` is put back in time: then `v = w + r`, and
//! `∫ v² = ∫ w² + 4 Re(ρ W(-p)) + ∫ r²`, the last two in closed form. While it rings, twenty-four
//! times a period are looked at as well.
//!
//! Check in every run: two windows must agree where they meet; else the place is given up here.

use std::f64::consts::PI;

use crate::complex::{Complex, LANES, Number, Quad};
use crate::contour::{Contour, POINTS};
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL};
use crate::pulse::{FIRST_DROP, NEGLIGIBLE, longest_s, vertex};
use crate::ringing::{Finder, Oscillation};
use crate::stepper::FIRST_INSTANT;

/// What a branch takes: greatest voltage over time, and `∫ v² dt`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Found {
    pub(crate) peak_v: f64,
    pub(crate) square_vs: f64,
}

/// Times to a decade.
const TIMES: i32 = 16;
/// Their distance in the logarithm.
const STEP: f64 = std::f64::consts::LN_10 / TIMES as f64;
/// The first time looked at, seconds, and how much earlier where that is too late.
const FIRST_TIME_S: f64 = 1e-9;
const EARLIER: f64 = 1e-3;
const RETRIES: usize = 4;
/// A voltage is over when it has fallen to so much of its peak.
const SPENT: f64 = 1e-5;
/// Times to a period of ringing, and for how many periods and decay times it is looked at.
const TIMES_PER_PERIOD: f64 = 24.0;
const PERIODS: f64 = 12.0;
const RINGING_DECAYS: f64 = 8.0;
/// How much of `∫ v² dt` may rest on the time before the first one.
const UNSURE: f64 = 1e-4;
/// Two windows must agree to so much of the greater of the value and 0.5 % of `V0`.
const AGREEMENT: f64 = 2e-4;

/// A branch of `touch_ohm` at every probe, in their order; `None` behind a break, and where the
/// method cannot vouch for its figure.
pub(crate) fn touches(net: &Network, touch_ohm: f64) -> Vec<Option<Found>> {
    let mut sum = Sum::new(net, touch_ohm);
    let mut first_time_s = FIRST_TIME_S;
    for _ in 0..=RETRIES {
        if !sum.all_windows(first_time_s) {
            break;
        }
        first_time_s *= EARLIER;
    }
    let least_v = 0.005 * net.feeder.v0;
    let mut places = sum.tracks.iter().zip(&sum.rings);
    net.probes
        .iter()
        .map(|probe| {
            let (track, ring) = probe.and_then(|_| places.next())?;
            let ringing_vs = ring.map_or(0.0, |ring| ring.square_vs);
            let found = Found { peak_v: track.best_v, square_vs: track.square_vs + ringing_vs };
            (track.gap_v <= AGREEMENT * track.best_v.max(least_v)).then_some(found)
        })
        .collect()
}

/// So small a place in the Laplace plane that a transform there is the integral over all time: a pulse is over in a
/// thousandth of its inverse.
pub(crate) const WHOLE_PULSE: f64 = 1e-3;

/// The charge through a branch of `touch_ohm` at every probe, coulombs; 0 behind a break. The transform of its current
/// near `s = 0`.
pub(crate) fn charges(net: &Network, touch_ohm: f64) -> Vec<f64> {
    let mut sum = Sum::bare(net, touch_ohm);
    let s = Complex::real(WHOLE_PULSE);
    sum.one.at(net, s, s.inverse() * net.feeder.v0);
    net.probes.iter().map(|probe| probe.map_or(0.0, |node| sum.one.touched(node, touch_ohm).re / touch_ohm)).collect()
}

/// What is known of one place so far.
#[derive(Debug, Clone, Copy, Default)]
struct Track {
    at_once_v: f64,
    first_v: f64,
    earlier_v: f64,
    last_v: f64,
    best_v: f64,
    best_s: f64,
    /// `∫ w² dt`.
    square_vs: f64,
    /// The voltage at the window's last time of the logarithmic row.
    boundary_v: f64,
    /// How far two windows were apart at most, where they met.
    gap_v: f64,
}

/// The oscillation with the branch at one place.
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

    /// What its two poles add to a transform at `s`.
    fn transform(&self, s: Complex) -> Complex {
        let mirror = Complex::new(self.pole.re, -self.pole.im);
        let mirror_residue = Complex::new(self.residue.re, -self.residue.im);
        self.residue * (s - self.pole).inverse() + mirror_residue * (s - mirror).inverse()
    }
}

/// Voltage and driving-point impedance of every node without the branch, at one place of the Laplace plane or at four
/// side by side: the points of a contour know nothing of each other.
#[derive(Debug, Clone, Default)]
struct Spread<N> {
    ladder: Ladder<N>,
    volts: Vec<N>,
    impedance: Vec<N>,
}

impl<N: Number> Spread<N> {
    fn at(&mut self, net: &Network, s: N, driving_v: N) {
        self.volts.resize(net.nodes(), N::default());
        self.impedance.resize(net.nodes(), N::default());
        let input_y = self.ladder.factor(net, s);
        let feeder_y = net.feeder.admittance(s);
        let terminal_z = (input_y + feeder_y).inverse();
        self.impedance[TERMINAL] = terminal_z;
        self.volts[TERMINAL] = feeder_y * driving_v * terminal_z;
        self.ladder.spread(net, &mut self.volts, &mut self.impedance);
    }

    /// The voltage of a node with the branch.
    fn touched(&self, node: usize, touch_ohm: f64) -> N {
        let share = self.impedance[node] * touch_ohm.recip() + N::of_real(1.0);
        self.volts[node] * share.inverse()
    }
}

struct Sum<'a> {
    net: &'a Network,
    touch_ohm: f64,
    /// The nodes that are read, in the order of the probes that the pulse reaches.
    nodes: Vec<usize>,
    rings: Vec<Option<Ring>>,
    tracks: Vec<Track>,
    one: Spread<Complex>,
    four: Spread<Quad>,
    /// Transforms at the nodes, point after point of the present window.
    real: Vec<f64>,
    imaginary: Vec<f64>,
    /// Voltages at the present time, without their ringing.
    now_v: Vec<f64>,
    /// The two times before.
    times_s: [f64; 2],
}

impl<'a> Sum<'a> {
    fn new(net: &'a Network, touch_ohm: f64) -> Self {
        let mut sum = Self::bare(net, touch_ohm);
        if net.feeder.henry > 0.0 {
            sum.find_rings();
        }
        sum
    }

    /// Without the oscillations.
    fn bare(net: &'a Network, touch_ohm: f64) -> Self {
        let nodes: Vec<usize> = net.probes.iter().flatten().copied().collect();
        Self {
            net,
            touch_ohm,
            rings: vec![None; nodes.len()],
            tracks: Vec::new(),
            one: Spread::default(),
            four: Spread::default(),
            real: vec![0.0; POINTS * nodes.len()],
            imaginary: vec![0.0; POINTS * nodes.len()],
            now_v: vec![0.0; nodes.len()],
            times_s: [0.0; 2],
            nodes,
        }
    }

    /// The oscillation with the branch at each place.
    fn find_rings(&mut self) {
        let found = Finder::default().find_each(self.net, &self.nodes, self.touch_ohm.recip());
        let ringing: Vec<(usize, Oscillation)> =
            found.into_iter().enumerate().filter_map(|(place, found)| Some((place, found?))).collect();
        for four in ringing.chunks(LANES) {
            // Four mirrored poles at a time; the last few are filled up with the last one.
            let lanes: [(usize, Oscillation); LANES] = std::array::from_fn(|lane| four[lane.min(four.len() - 1)]);
            let mirrors = lanes.map(|(_, Oscillation { pole, .. })| pole * -1.0);
            let s = Quad::new(mirrors);
            self.four.at(self.net, s, s.inverse() * self.net.feeder.v0);
            for (lane, (place, Oscillation { pole, residue })) in lanes.into_iter().enumerate() {
                let mut ring = Ring { pole, residue, square_vs: 0.0 };
                let mirror_s = mirrors[lane];
                let rest = self.four.touched(self.nodes[place], self.touch_ohm).lane(lane) - ring.transform(mirror_s);
                let own = (residue.square() * mirror_s.inverse()).re + residue.size() * residue.size() / mirror_s.re;
                ring.square_vs = 4.0 * (residue * rest).re + own;
                self.rings[place] = Some(ring);
            }
        }
    }

    /// From `first_time_s` to the end; true where a peak that counts lies too early for it.
    fn all_windows(&mut self, first_time_s: f64) -> bool {
        self.first_instant();
        let longest_s = longest_s(self.net, 1.0 / self.touch_ohm);
        let fine = self.fine_times();
        let at_s = |index: i32| first_time_s * (STEP * f64::from(index)).exp();
        let mut first = 0;
        loop {
            // A window holds the last time before it as well: there it must agree with the one
            // before, and a peak may turn out to lie.
            let contour = Contour::new(at_s(first - 1), (STEP * f64::from(TIMES + 1)).exp());
            self.transforms(contour);
            if first > 0 {
                self.compare(contour, at_s(first - 1));
            }
            for index in first..first + TIMES {
                let time_s = at_s(index);
                if let Some((between_s, until_s)) = fine.filter(|_| index > 0) {
                    let before_s = at_s(index - 1);
                    let mut count = (before_s / between_s).floor() + 1.0;
                    // Not within a thousandth of the row's own times: a parabola needs them apart.
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
        let counts_v = NEGLIGIBLE * self.net.feeder.v0;
        self.tracks.iter().any(|track| {
            let Track { at_once_v, first_v, best_v, best_s, square_vs, .. } = *track;
            let peak_missed = if best_s > 0.0 {
                best_s <= at_s(1) && best_v - at_once_v > counts_v
            } else {
                at_once_v - first_v > FIRST_DROP * best_v + counts_v
            };
            // Before the first time the voltage was taken as straight.
            let unsure_vs = 0.5 * first_time_s * (first_v * first_v - at_once_v * at_once_v).abs();
            peak_missed || unsure_vs > UNSURE * square_vs
        })
    }

    /// Distance of the times looked at while it rings, and until when.
    fn fine_times(&self) -> Option<(f64, f64)> {
        let rings = || self.rings.iter().flatten();
        let period_s = |ring: &Ring| 2.0 * PI / ring.pole.im;
        let shortest_s = rings().map(period_s).reduce(f64::min)?;
        let until_s =
            rings().map(|ring| (PERIODS * period_s(ring)).min(RINGING_DECAYS / -ring.pole.re)).fold(0.0, f64::max);
        Some((shortest_s / TIMES_PER_PERIOD, until_s))
    }

    /// Voltages at `t = 0+`, with the branch in place.
    fn first_instant(&mut self) {
        self.one.at(self.net, Complex::real(FIRST_INSTANT), Complex::real(self.net.feeder.v0));
        let at_once: Vec<f64> = self.nodes.iter().map(|node| self.one.touched(*node, self.touch_ohm).re).collect();
        self.tracks.clear();
        self.tracks.extend(at_once.into_iter().map(|at_once_v| Track {
            at_once_v,
            earlier_v: f64::INFINITY,
            last_v: at_once_v,
            best_v: at_once_v,
            ..Track::default()
        }));
        self.times_s = [0.0; 2];
    }

    /// The transforms on a contour, four points at a time.
    fn transforms(&mut self, contour: Contour) {
        const { assert!(POINTS.is_multiple_of(LANES), "points come in fours") };
        let places = self.nodes.len();
        for first in (0..POINTS).step_by(LANES) {
            let points: [Complex; LANES] = std::array::from_fn(|lane| contour.s(first + lane));
            let s = Quad::new(points);
            self.four.at(self.net, s, s.inverse() * self.net.feeder.v0);
            for (place, (node, ring)) in self.nodes.iter().zip(&self.rings).enumerate() {
                let touched = self.four.touched(*node, self.touch_ohm);
                for (lane, s) in points.into_iter().enumerate() {
                    let mut v = touched.lane(lane);
                    if let Some(ring) = ring {
                        v = v - ring.transform(s);
                    }
                    let index = (first + lane) * places + place;
                    (self.real[index], self.imaginary[index]) = (v.re, v.im);
                }
            }
        }
    }

    /// All voltages but their ringing at a time of the present window, into `now_v`.
    fn evaluate(&mut self, contour: Contour, time_s: f64) {
        let places = self.nodes.len();
        self.now_v.fill(0.0);
        for point in 0..POINTS {
            let weight = contour.weight(point, time_s);
            let row = point * places..(point + 1) * places;
            let transforms = self.real[row.clone()].iter().zip(&self.imaginary[row]);
            for (now_v, (re, im)) in self.now_v.iter_mut().zip(transforms) {
                *now_v += weight.re * re - weight.im * im;
            }
        }
    }

    /// One place's voltage at a time of the present window.
    fn read(&self, contour: Contour, place: usize, time_s: f64) -> f64 {
        let places = self.nodes.len();
        let smooth_v: f64 = (0..POINTS)
            .map(|point| {
                let weight = contour.weight(point, time_s);
                let index = point * places + place;
                weight.re * self.real[index] - weight.im * self.imaginary[index]
            })
            .sum();
        smooth_v + self.rings[place].map_or(0.0, |ring| ring.volts(time_s))
    }

    /// Notes how far the voltages are from what the window before said.
    fn compare(&mut self, contour: Contour, time_s: f64) {
        self.evaluate(contour, time_s);
        for ((track, ring), smooth_v) in self.tracks.iter_mut().zip(&self.rings).zip(&self.now_v) {
            let volts = smooth_v + ring.map_or(0.0, |ring| ring.volts(time_s));
            track.gap_v = track.gap_v.max((volts - track.boundary_v).abs());
        }
    }

    /// Takes a time into the energies, and looks for peaks there.
    fn sample(&mut self, contour: Contour, time_s: f64, is_first: bool) {
        self.look(contour, time_s);
        for ((track, ring), smooth_v) in self.tracks.iter_mut().zip(&self.rings).zip(&self.now_v) {
            let square_vs = smooth_v * smooth_v * time_s;
            if is_first {
                // Up to the first time the voltage is taken as straight.
                let at_once_v = track.at_once_v - ring.map_or(0.0, |ring| ring.volts(0.0));
                track.square_vs = 0.5 * (square_vs + at_once_v * at_once_v * time_s) + 0.5 * STEP * square_vs;
                track.first_v = track.last_v;
            } else {
                track.square_vs += STEP * square_vs;
            }
            track.boundary_v = track.last_v;
        }
    }

    /// Looks for peaks up to a time, which becomes the last one.
    fn look(&mut self, contour: Contour, time_s: f64) {
        self.evaluate(contour, time_s);
        let times_s = [self.times_s[0], self.times_s[1], time_s];
        for place in 0..self.nodes.len() {
            let volts = self.now_v[place] + self.rings[place].map_or(0.0, |ring| ring.volts(time_s));
            let Track { earlier_v, last_v, mut best_v, mut best_s, .. } = self.tracks[place];
            if last_v >= volts && last_v > earlier_v {
                // The parabola only says when: the voltage there is read again. A top in the window
                // before is near enough to this one's first time to be read here.
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
