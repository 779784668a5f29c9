//! The one oscillation that an inductance may add, apart from the sum over a contour.
//!
//! Its pole `p` is found with the branch in place (`ringing`, `woven::poles`) and its residue `ρ`: `ρ / (s - p)` and its
//! mirror are taken off a transform `V` before the sum, which leaves `W`, and `r(t) = 2 Re(ρ e^(pt))` is put back in time.
//! Then `v = w + r`, and `∫ v² = ∫ w² + 4 Re(ρ W(-p)) + ∫ r²`, the last two in closed form: `∫ w e^(pt) dt` is `W` at `-p`.

use crate::complex::Complex;

/// The oscillation of the voltage over the branch at one place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ring {
    /// In the upper half plane, rad/s.
    pub(crate) pole: Complex,
    residue: Complex,
    /// `∫ (2 w r + r²) dt`.
    pub(crate) square_vs: f64,
}

impl Ring {
    /// From its pole and residue, and the whole transform `V(-pole)`.
    pub(crate) fn new(pole: Complex, residue: Complex, at_mirror: Complex) -> Self {
        let mut ring = Self { pole, residue, square_vs: 0.0 };
        let mirror_s = pole * -1.0;
        let rest = at_mirror - ring.transform(mirror_s);
        let own = (residue.square() * mirror_s.inverse()).re + residue.size() * residue.size() / mirror_s.re;
        ring.square_vs = 4.0 * (residue * rest).re + own;
        ring
    }

    /// `r` at a time.
    pub(crate) fn volts(&self, time_s: f64) -> f64 {
        2.0 * (self.residue * (self.pole * time_s).exp()).re
    }

    /// What its two poles add to a transform at `s`.
    pub(crate) fn transform(&self, s: Complex) -> Complex {
        let mirror = Complex::new(self.pole.re, -self.pole.im);
        let mirror_residue = Complex::new(self.residue.re, -self.residue.im);
        self.residue * (s - self.pole).inverse() + mirror_residue * (s - mirror).inverse()
    }
}
