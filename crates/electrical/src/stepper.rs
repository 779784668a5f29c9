//! One step of the pulse in time, at any size.
//!
//! The network is `C dv/dt = -G v` with the energizer's capacitor and inductance among its states;
//! nodes without capacitance are algebraic. The scheme is Radau IIA with two stages: order 3,
//! L-stable (what is far faster than the step dies at once, no ringing), stiffly accurate. For a
//! linear network its two stages fold into one complex solve: the stability function
//!
//! `R(z) = (1 + z/3) / (1 - 2z/3 + z²/6) = 2 Re (A / (z - p))`, `p = 2 + i √2`, `A = 1 - i 5/√2`,
//!
//! so a step `h` is `v ← 2 Re(-A x)`, `(p/h C + G) x = C v / h`. Source: Hairer and Wanner,
//! Solving Ordinary Differential Equations II, IV.5 (from memory; the tests hold the expansion).
//! The first instant is the same solve at a very large `s`: capacitors hold, all else settles.

use crate::complex::Complex;
use crate::front::Fronts;
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL};

/// Pole of the stability function.
const POLE: Complex = Complex::new(2.0, std::f64::consts::SQRT_2);
/// `-2 A`.
const WEIGHT: Complex = Complex::new(-2.0, 5.0 * std::f64::consts::SQRT_2);
/// So large a place that every capacitor is a voltage source against every resistance.
pub(crate) const FIRST_INSTANT: f64 = 1e40;

/// The state of a network at one time.
#[derive(Debug, Clone, Default)]
pub(crate) struct Stepper {
    /// Voltage of every node.
    pub(crate) volts: Vec<f64>,
    /// Voltage on the energizer's capacitor.
    pub(crate) source_v: f64,
    /// Current from the energizer.
    pub(crate) amperes: f64,
    /// Seconds since the pulse started.
    pub(crate) time_s: f64,
    step_s: f64,
    ladder: Ladder,
    fronts: Fronts,
    x: Vec<Complex>,
    /// The Laplace place of the solve, its inverse, and the scale of the old state.
    s: Complex,
    inverse_s: Complex,
    scale: f64,
    weight: Complex,
    /// Admittance of the energizer's branch; the network's at the terminal; `1 / (sum)`.
    feeder_y: Complex,
    input_y: Complex,
    inverse_y: Complex,
}

impl Stepper {
    /// The state just after the pulse has started.
    pub(crate) fn start(&mut self, net: &Network) {
        self.volts.clear();
        self.volts.resize(net.nodes(), 0.0);
        self.x.clear();
        self.x.resize(net.nodes(), Complex::ZERO);
        self.source_v = net.feeder.v0;
        self.amperes = 0.0;
        self.time_s = 0.0;
        self.factor(net, Complex::real(FIRST_INSTANT), FIRST_INSTANT, Complex::real(1.0));
        self.step_s = 0.0;
        self.fronts.release(net);
        self.advance(net);
        self.fronts.start(net, &mut self.volts, &mut self.x);
    }

    /// Prepares steps of `step_s`.
    pub(crate) fn set_step(&mut self, net: &Network, step_s: f64) {
        self.step_s = step_s;
        self.factor(net, POLE * step_s.recip(), step_s.recip(), WEIGHT);
    }

    pub(crate) fn step_s(&self) -> f64 {
        self.step_s
    }

    fn factor(&mut self, net: &Network, s: Complex, scale: f64, weight: Complex) {
        (self.s, self.inverse_s, self.scale, self.weight) = (s, s.inverse(), scale, weight);
        self.input_y = self.ladder.factor(net, s);
        self.feeder_y = net.feeder.admittance(s);
        self.inverse_y = (self.input_y + self.feeder_y).inverse();
    }

    /// One step.
    pub(crate) fn advance(&mut self, net: &Network) {
        let scale = self.scale;
        for span in self.fronts.moving(net) {
            let states = net.capacitance_f[span.clone()].iter().zip(&self.volts[span.clone()]);
            for (x, (c, v)) in self.x[span].iter_mut().zip(states) {
                *x = Complex::real(scale * c * v);
            }
        }
        self.fronts.forward(&self.ladder, net, &mut self.x);
        // The energizer: s U = scale u - I / C and L (s I - scale i) = U - R I - V.
        let injected = self.x[TERMINAL];
        let driving_v = (self.inverse_s * self.source_v + Complex::real(net.feeder.henry * self.amperes)) * self.scale;
        let drawn = self.input_y * driving_v - injected;
        let amperes = self.feeder_y * drawn * self.inverse_y;
        self.x[TERMINAL] = (injected + self.feeder_y * driving_v) * self.inverse_y;
        let source_v =
            (Complex::real(self.scale * self.source_v) - amperes * net.feeder.farad.recip()) * self.inverse_s;
        self.fronts.back(&self.ladder, net, &mut self.x);
        let weight = self.weight;
        let real = |x: Complex| weight.re * x.re - weight.im * x.im;
        for span in self.fronts.moving(net) {
            for (v, x) in self.volts[span.clone()].iter_mut().zip(&self.x[span]) {
                *v = real(*x);
            }
        }
        self.source_v = real(source_v);
        self.amperes = real(amperes);
        self.time_s += self.step_s;
    }

    /// Energy on capacitors and in the inductance, joules.
    pub(crate) fn left_j(&self, net: &Network) -> f64 {
        let feeder = &net.feeder;
        let fence: f64 = net.capacitance_f.iter().zip(&self.volts).map(|(c, v)| c * v * v).sum();
        0.5 * (fence + feeder.farad * self.source_v * self.source_v + feeder.henry * self.amperes * self.amperes)
    }

    /// Greatest voltage anywhere, the energizer's capacitor included. Without inductance nothing
    /// ever exceeds it later.
    pub(crate) fn greatest_v(&self) -> f64 {
        self.volts.iter().fold(self.source_v.abs(), |most, v| most.max(v.abs()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_folded_scheme_is_radau_iia() {
        for z in [-1e6, -30.0, -1.0, -1e-3, 0.0] {
            let folded = WEIGHT * 0.5 * -1.0 * (Complex::real(z) - POLE).inverse() * 2.0;
            let want = (1.0 + z / 3.0) / (1.0 - 2.0 * z / 3.0 + z * z / 6.0);
            assert!((folded.re - want).abs() < 1e-14, "{z}: {} against {want}", folded.re);
        }
        // Order 3: the error is z⁴ / 72.
        let z: f64 = -1e-2;
        let error = (1.0 + z / 3.0) / (1.0 - 2.0 * z / 3.0 + z * z / 6.0) - z.exp();
        assert!((error.abs() / (z.powi(4) / 72.0) - 1.0).abs() < 0.02);
    }
}
