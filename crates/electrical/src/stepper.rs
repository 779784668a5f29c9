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
use crate::network::{Feeder, Network};
use crate::strands::Strands;

/// Pole of the stability function.
pub(crate) const POLE: Complex = Complex::new(2.0, std::f64::consts::SQRT_2);
/// `-2 A`.
pub(crate) const WEIGHT: Complex = Complex::new(-2.0, 5.0 * std::f64::consts::SQRT_2);
/// So large a place that every capacitor is a voltage source against every resistance.
pub(crate) const FIRST_INSTANT: f64 = 1e40;

/// The state of a network at one time.
#[derive(Debug, Clone, Default)]
pub(crate) struct Stepper {
    /// The fence and its voltages.
    pub(crate) strands: Strands,
    /// Voltage on the energizer's capacitor.
    pub(crate) source_v: f64,
    /// Current from the energizer.
    pub(crate) amperes: f64,
    /// Seconds since the pulse started.
    pub(crate) time_s: f64,
    step_s: f64,
    /// The Laplace place of the solve, its inverse, and the scale of the old state.
    inverse_s: Complex,
    scale: f64,
    weight: Complex,
    feeder: Feeder,
    /// Admittance of the energizer's branch; the network's at the terminal; `1 / (sum)`.
    feeder_y: Complex,
    input_y: Complex,
    inverse_y: Complex,
}

impl Stepper {
    /// The state just after the pulse has started.
    pub(crate) fn start(&mut self, net: &Network) {
        self.feeder = net.feeder;
        self.strands.lay_out(net);
        self.source_v = net.feeder.v0;
        self.amperes = 0.0;
        self.time_s = 0.0;
        self.factor(Complex::real(FIRST_INSTANT), FIRST_INSTANT, Complex::real(1.0));
        self.step_s = 0.0;
        self.advance();
        self.strands.find_at_rest(net.feeder.v0);
    }

    /// Prepares steps of `step_s`.
    pub(crate) fn set_step(&mut self, step_s: f64) {
        self.step_s = step_s;
        self.factor(POLE * step_s.recip(), step_s.recip(), WEIGHT);
    }

    pub(crate) fn step_s(&self) -> f64 {
        self.step_s
    }

    fn factor(&mut self, s: Complex, scale: f64, weight: Complex) {
        (self.inverse_s, self.scale, self.weight) = (s.inverse(), scale, weight);
        self.input_y = self.strands.factor(s, scale);
        self.feeder_y = self.feeder.admittance(s);
        self.inverse_y = (self.input_y + self.feeder_y).inverse();
    }

    /// One step.
    pub(crate) fn advance(&mut self) {
        let injected = self.strands.forward();
        // The energizer: s U = scale u - I / C and L (s I - scale i) = U - R I - V.
        let Feeder { henry, farad, .. } = self.feeder;
        let driving_v = (self.inverse_s * self.source_v + Complex::real(henry * self.amperes)) * self.scale;
        let drawn = self.input_y * driving_v - injected;
        let amperes = self.feeder_y * drawn * self.inverse_y;
        let source_v = (Complex::real(self.scale * self.source_v) - amperes * farad.recip()) * self.inverse_s;
        self.strands.back((injected + self.feeder_y * driving_v) * self.inverse_y, self.weight);
        let real = |x: Complex| self.weight.re * x.re - self.weight.im * x.im;
        (self.source_v, self.amperes) = (real(source_v), real(amperes));
        self.time_s += self.step_s;
    }

    /// Energy on the energizer's capacitor and in its inductance, joules.
    pub(crate) fn source_j(&self) -> f64 {
        let Feeder { henry, farad, .. } = self.feeder;
        0.5 * (farad * self.source_v * self.source_v + henry * self.amperes * self.amperes)
    }

    /// Energy on capacitors and in the inductance, joules.
    pub(crate) fn left_j(&self) -> f64 {
        self.source_j() + self.strands.left_j()
    }

    /// Greatest voltage anywhere, the energizer's capacitor included. Without inductance nothing
    /// ever exceeds it later.
    pub(crate) fn greatest_v(&self) -> f64 {
        self.source_v.abs().max(self.strands.greatest_v())
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
