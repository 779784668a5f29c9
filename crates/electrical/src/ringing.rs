//! The one oscillation that an energizer's inductance can have with the fence.
//!
//! The loop impedance `f(s) = s L + R + 1 / (s Cs) + Z(s)`, `Z` the fence's at the terminal, is that
//! of a passive network of resistances and capacitances but for the one `L`. Between two poles of
//! the rest on the negative real axis `f` has a real zero, which leaves at most one complex pair.
//! Newton's method finds it: `Z' = -Σ C_k v_k²` for 1 A into the terminal (the network is symmetric).

use crate::complex::Complex;
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL};

/// The oscillation of a network.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Oscillation {
    /// The complex pole in the upper half plane, rad/s.
    pub(crate) pole: Complex,
    /// Its residue in the voltage of the node that was asked for.
    pub(crate) residue: Complex,
}

const STARTS: i32 = 8;
const ITERATIONS: usize = 30;
/// Newton's steps double the good digits: after one so small, the last one reaches rounding.
const CLOSE: f64 = 1e-6;
/// A pole nearer the real axis than so much of its size does not ring.
const LEAST_ANGLE: f64 = 1e-6;

/// Finds oscillations; keeps its memory.
#[derive(Debug, Clone, Default)]
pub(crate) struct Finder {
    ladder: Ladder,
    /// Voltages for 1 A into the terminal.
    volts: Vec<Complex>,
}

impl Finder {
    /// The oscillation as `node` sees it; `near` is where a like network had its pole. `None` where
    /// the circuit does not ring.
    pub(crate) fn find(&mut self, net: &Network, node: usize, near: Option<Complex>) -> Option<Oscillation> {
        let feeder = &net.feeder;
        if feeder.henry <= 0.0 {
            return None;
        }
        let fence_f: f64 = net.capacitance_f.iter().sum();
        // From the slowest frequency that can be (all the fence's capacitance in series with the
        // energizer's) upward: the first start that leads to a pole is enough, there is only one.
        let series_f = if fence_f > 0.0 { 1.0 / (1.0 / fence_f + 1.0 / feeder.farad) } else { feeder.farad };
        let slowest = (feeder.henry * series_f).sqrt().recip();
        let starts = (0..STARTS).map(|start| {
            let omega = slowest * 3.0_f64.powi(start - 1);
            Complex::new(-0.1 * omega, omega)
        });
        let pole = near.into_iter().chain(starts).find_map(|start| self.newton(net, start))?;
        let (f, slope) = self.loop_impedance(net, pole)?;
        let pole = pole - f * slope.inverse();
        // V = x(s) (V0 / s) / f(s), so the residue is that with f' in the place of f.
        let residue = self.volts[node] * (pole * slope).inverse() * feeder.v0;
        Some(Oscillation { pole, residue })
    }

    fn newton(&mut self, net: &Network, start: Complex) -> Option<Complex> {
        let mut s = start;
        for _ in 0..ITERATIONS {
            let (f, slope) = self.loop_impedance(net, s)?;
            let change = f * slope.inverse();
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

    /// `f` and its slope; `None` where the fence takes no current at all.
    fn loop_impedance(&mut self, net: &Network, s: Complex) -> Option<(Complex, Complex)> {
        let feeder = &net.feeder;
        let input_y = self.ladder.factor(net, s);
        if input_y.size() < f64::MIN_POSITIVE {
            return None;
        }
        let input_z = input_y.inverse();
        self.volts.clear();
        self.volts.resize(net.nodes(), Complex::ZERO);
        self.volts[TERMINAL] = input_z;
        self.ladder.back(net, &mut self.volts);
        let mut slope = Complex::real(feeder.henry) - (s.square() * feeder.farad).inverse();
        for (c, v) in net.capacitance_f.iter().zip(&self.volts) {
            slope = slope - v.square() * *c;
        }
        let f = s * feeder.henry + Complex::real(feeder.ohm()) + (s * feeder.farad).inverse() + input_z;
        Some((f, slope))
    }
}
