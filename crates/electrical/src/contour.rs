//! From the Laplace plane back to time, on a parabola.
//!
//! `v(t) = 1/(2πi) ∫ e^(st) V(s) ds` along `s(u) = μ (1 + i u)²`, by the midpoint rule at
//! `u = (k + 1/2) h`. All singularities of `V` lie on the negative real axis, which the parabola
//! embraces; then for every `t` in `[t0, Λ t0]` the error falls as `e^(-2πN / √(8Λ + 1))` with the
//! number `N` of points in the upper half plane, at `h = √(8Λ + 1) / N`, `μ = π / (4 h Λ t0)`.
//! Source: Weideman and Trefethen, Mathematics of Computation 76 (2007), from memory; rederived by
//! balancing the two discretisation errors and the truncation. A complex pole outside the parabola
//! would be missed.

use std::f64::consts::PI;

use crate::complex::Complex;

/// Points of one window.
pub(crate) const POINTS: usize = 20;

/// A contour good for the times from `from_s` to `ratio` times that.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Contour {
    mu: f64,
    h: f64,
}

impl Contour {
    pub(crate) fn new(from_s: f64, ratio: f64) -> Self {
        let h = (8.0 * ratio + 1.0).sqrt() / POINTS as f64;
        Self { mu: PI / (4.0 * h * ratio * from_s), h }
    }

    fn direction(self, point: usize) -> Complex {
        Complex::new(1.0, (point as f64 + 0.5) * self.h)
    }

    /// The place of one point.
    pub(crate) fn s(self, point: usize) -> Complex {
        self.direction(point).square() * self.mu
    }

    /// What one point's `V(s)` counts at a time: `v(t) = Σ Re (weight V)`.
    pub(crate) fn weight(self, point: usize, time_s: f64) -> Complex {
        let scale = 2.0 * self.mu * self.h / PI;
        self.direction(point) * (self.s(point) * time_s).exp() * scale
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decays_and_steps_come_back() {
        let contour = Contour::new(1.0, 13.0);
        let at = |time_s: f64, transform: &dyn Fn(Complex) -> Complex| -> f64 {
            (0..POINTS).map(|point| (contour.weight(point, time_s) * transform(contour.s(point))).re).sum()
        };
        for time_s in [1.0, 2.0, 5.0, 13.0] {
            for rate in [0.0, 1e-3, 0.1, 1.0, 30.0, 1e6] {
                let got = at(time_s, &|s| (s + Complex::real(rate)).inverse());
                let want = (-rate * time_s).exp();
                assert!((got - want).abs() < 2e-5, "rate {rate}, time {time_s}: {got} against {want}");
            }
        }
    }
}
