//! The one oscillation that an energizer's inductance can have with a graph, as `ringing` has it for paths.
//!
//! Without a branch its pole is a zero of the loop impedance `f(s) = s L + R + 1 / (s Cs) + Z_fence(s)`; with a branch of
//! `R` between two nodes one of `f(s) (1 + Z(s) / R)`, `Z` the impedance between them with the energizer in place: regular
//! where `f` vanishes. Found by the secant rule; slope and residue by central differences.

use crate::complex::Complex;
use crate::touch::Ring;
use crate::woven::graph::Graph;
use crate::woven::order::{Factors, Figures, Order};
use crate::woven::touch::Spot;

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
    pub(crate) fn ring(&mut self, spot: &Spot, near: Option<Complex>) -> Option<Ring> {
        const NUDGE: f64 = 1e-5;
        let pole = self.find(Some(spot), near)?;
        let nudge = pole * NUDGE;
        let slope =
            (self.value(Some(spot), pole + nudge)? - self.value(Some(spot), pole - nudge)?) * (nudge * 2.0).inverse();
        // V f is regular at the pole, V = x V0 / (s f) with x the transfer impedance.
        let above = self.numerator(spot, pole + nudge)?;
        let below = self.numerator(spot, pole - nudge)?;
        let residue = (above + below) * 0.5 * slope.inverse();
        let at_mirror = self.touched(spot, pole * -1.0);
        Some(Ring::new(pole, residue, at_mirror))
    }

    /// The voltage over where the branch is, without it, times the loop impedance.
    fn numerator(&mut self, spot: &Spot, s: Complex) -> Option<Complex> {
        let loop_z = self.value(None, s)?;
        let mut volts = vec![Complex::ZERO; self.graph.nodes];
        self.untouched(s, s.inverse() * self.graph.feeder.v0, &mut volts);
        Some((volts[spot.from] - volts[spot.to]) * loop_z)
    }

    /// Voltages of all nodes without a branch.
    pub(crate) fn untouched(&mut self, s: Complex, driving_v: Complex, volts: &mut [Complex]) {
        let Self { graph, order, figures, factors } = self;
        let driven = factors.factor(graph, order, figures, s) * driving_v;
        volts.fill(Complex::ZERO);
        volts[graph.terminal] += driven;
        volts[graph.pole] = volts[graph.pole] - driven;
        factors.solve(order, volts);
    }

    /// Impedances of all nodes and linked pairs, after [`Poles::untouched`].
    pub(crate) fn spread(&mut self) {
        self.factors.spread(self.graph, self.order);
    }

    fn touched(&mut self, spot: &Spot, s: Complex) -> Complex {
        let mut volts = vec![Complex::ZERO; self.graph.nodes];
        self.untouched(s, s.inverse() * self.graph.feeder.v0, &mut volts);
        self.spread();
        self.with_branch(spot, &volts)
    }

    /// The voltage over a branch, from the voltages without it.
    pub(crate) fn with_branch(&self, spot: &Spot, volts: &[Complex]) -> Complex {
        let z = self.factors.between(self.order, spot.from, spot.to);
        let share = z * spot.ohm.recip() + Complex::real(1.0);
        (volts[spot.from] - volts[spot.to]) * share.inverse()
    }
}
