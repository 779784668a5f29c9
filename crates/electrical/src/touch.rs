//! One branch to earth at every place, one place at a time, without one pulse a place.
//!
//! In the Laplace plane one elimination and one sweep back give, for every place at once, the voltage `V` without the
//! branch and the impedance `Z` that the branch sees (Thévenin); with a branch of `R` the place has `V R / (R + Z)`. Twenty
//! points `s` on a parabola (see `contour`) serve a decade of time. How a network does that is its own affair
//! ([`Touched`]): paths of nodes in `plain`, any graph in `woven::touch`. What is done with it stands here once:
//!
//! - Peak: so many times a decade, and the voltage read once more at the top of the parabola through
//!   the best three; the first instant counts too.
//! - `∫ v² dt`: the trapezoidal rule on the logarithm of time. The integrand vanishes at both ends,
//!   so that the rule converges faster than any power of its step (Trefethen and Weideman, SIAM Review 56 (2014), §5,
//!   from memory; the tests hold both integrals against exact modes).
//!
//! An inductance may add one oscillation `r(t) = 2 Re(ρ e^(pt))`, which a parabola about the negative axis would miss:
//! see `ring`. It is taken off before the sum and put back in time. While it rings, twenty-four times a period are looked
//! at as well.
//!
//! Check in every run: two windows must agree where they meet; else the place is given up here.

mod plain;
mod ring;

use std::f64::consts::{LN_10, PI};

use crate::complex::{Complex, LANES};
use crate::contour::{Contour, POINTS};
use crate::pulse::{FIRST_DROP, NEGLIGIBLE, vertex};
use crate::stepper::FIRST_INSTANT;
pub(crate) use plain::{charges, touches};
pub(crate) use ring::Ring;

/// A network with a branch at each of its places, one place at a time, as the Laplace plane sees it.
pub(crate) trait Touched {
    /// Times to a decade: more where three of them must catch a narrower top.
    const TIMES: i32;

    /// How many places there are.
    fn places(&self) -> usize;

    /// The energizer's no-load voltage.
    fn v0(&self) -> f64;

    /// When even the slowest part has settled, the branch in place, seconds.
    fn longest_s(&self) -> f64;

    /// The oscillation with the branch at each place, where it rings.
    fn rings(&mut self) -> Vec<Option<Ring>>;

    /// The voltage over each place's branch at a real `s`, driven by `driving_v`.
    fn at_real(&mut self, s: f64, driving_v: f64) -> Vec<f64>;

    /// The same at four points `s` of the plane, driven by the step `V0 / s`; `put` takes place after place.
    fn at_four(&mut self, points: [Complex; LANES], put: impl FnMut(usize, [Complex; LANES]));
}

/// What a branch takes: greatest voltage over time, and `∫ v² dt`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Found {
    pub(crate) peak_v: f64,
    pub(crate) square_vs: f64,
}

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

/// What the branch takes at each place, in their order; `None` where the method cannot vouch for its figure.
pub(crate) fn sweep<T: Touched>(touched: &mut T) -> Vec<Option<Found>> {
    let least_v = 0.005 * touched.v0();
    let mut sum = Sum::new(touched);
    let mut first_time_s = FIRST_TIME_S;
    for _ in 0..=RETRIES {
        if !sum.all_windows(first_time_s) {
            break;
        }
        first_time_s *= EARLIER;
    }
    let places = sum.tracks.iter().zip(&sum.rings);
    places
        .map(|(track, ring)| {
            let square_vs = track.square_vs + ring.map_or(0.0, |ring| ring.square_vs);
            let agrees = track.gap_v <= AGREEMENT * track.best_v.max(least_v) && square_vs >= 0.0;
            agrees.then_some(Found { peak_v: track.best_v, square_vs })
        })
        .collect()
}

/// So small a place in the Laplace plane that a transform there is the integral over all time: a pulse is over in a
/// thousandth of its inverse.
const WHOLE_PULSE: f64 = 1e-3;

/// `∫ v dt` over each place's branch, volt-seconds: the transform of its voltage near `s = 0`.
pub(crate) fn whole_pulse_vs(touched: &mut impl Touched) -> Vec<f64> {
    let driving_v = touched.v0() / WHOLE_PULSE;
    touched.at_real(WHOLE_PULSE, driving_v)
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

struct Sum<'a, T> {
    touched: &'a mut T,
    rings: Vec<Option<Ring>>,
    tracks: Vec<Track>,
    /// Transforms at the places, point after point of the present window, without their ringing.
    real: Vec<f64>,
    imaginary: Vec<f64>,
    /// Voltages at the present time, without their ringing.
    now_v: Vec<f64>,
    /// The two times before.
    times_s: [f64; 2],
}

impl<'a, T: Touched> Sum<'a, T> {
    /// Distance of two times in the logarithm.
    const STEP: f64 = LN_10 / T::TIMES as f64;

    fn new(touched: &'a mut T) -> Self {
        let places = touched.places();
        Self {
            rings: touched.rings(),
            touched,
            tracks: Vec::new(),
            real: vec![0.0; POINTS * places],
            imaginary: vec![0.0; POINTS * places],
            now_v: vec![0.0; places],
            times_s: [0.0; 2],
        }
    }

    /// From `first_time_s` to the end; true where a peak that counts lies too early for it.
    fn all_windows(&mut self, first_time_s: f64) -> bool {
        self.first_instant();
        let longest_s = self.touched.longest_s();
        let fine = self.fine_times();
        let at_s = |index: i32| first_time_s * (Self::STEP * f64::from(index)).exp();
        let mut first = 0;
        loop {
            // A window holds the last time before it as well: there it must agree with the one
            // before, and a peak may turn out to lie.
            let contour = Contour::new(at_s(first - 1), (Self::STEP * f64::from(T::TIMES + 1)).exp());
            self.transforms(contour);
            if first > 0 {
                self.compare(contour, at_s(first - 1));
            }
            for index in first..first + T::TIMES {
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
            first += T::TIMES;
            let over = self.tracks.iter().all(|track| track.last_v.abs() <= SPENT * track.best_v);
            if over || at_s(first) > longest_s {
                break;
            }
        }
        let counts_v = NEGLIGIBLE * self.touched.v0();
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
        let at_once = self.touched.at_real(FIRST_INSTANT, self.touched.v0());
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
        let Self { touched, rings, real, imaginary, .. } = self;
        let places = rings.len();
        for first in (0..POINTS).step_by(LANES) {
            let points: [Complex; LANES] = std::array::from_fn(|lane| contour.s(first + lane));
            touched.at_four(points, |place, volts| {
                for (lane, (s, mut v)) in points.into_iter().zip(volts).enumerate() {
                    if let Some(ring) = &rings[place] {
                        v = v - ring.transform(s);
                    }
                    let index = (first + lane) * places + place;
                    (real[index], imaginary[index]) = (v.re, v.im);
                }
            });
        }
    }

    /// All voltages but their ringing at a time of the present window, into `now_v`.
    fn evaluate(&mut self, contour: Contour, time_s: f64) {
        let places = self.rings.len();
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
        let places = self.rings.len();
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
                track.square_vs = 0.5 * (square_vs + at_once_v * at_once_v * time_s) + 0.5 * Self::STEP * square_vs;
                track.first_v = track.last_v;
            } else {
                track.square_vs += Self::STEP * square_vs;
            }
            track.boundary_v = track.last_v;
        }
    }

    /// Looks for peaks up to a time, which becomes the last one.
    fn look(&mut self, contour: Contour, time_s: f64) {
        self.evaluate(contour, time_s);
        let times_s = [self.times_s[0], self.times_s[1], time_s];
        for place in 0..self.rings.len() {
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
