//! The one oscillation that an energizer's inductance can have with the fence.
//!
//! The loop impedance `f(s) = s L + R + 1 / (s Cs) + Z(s)`, `Z` the fence's at the terminal, is that
//! of a passive network of resistances and capacitances but for the one `L`. Between two poles of
//! the rest on the negative real axis `f` has a real zero, which leaves at most one complex pair.
//! Newton's method finds it: `Z' = -Σ C_k v_k²` for 1 A into the terminal (the network is symmetric).

use crate::complex::{Complex, LANES, Number, Quad};
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

/// Finds oscillations, one or four side by side; keeps its memory.
#[derive(Debug, Clone, Default)]
pub(crate) struct Finder {
    one: Loop<Complex>,
    four: Loop<Quad>,
}

impl Finder {
    /// The oscillation as `node` sees it, with shunts besides the network's own; `near` is where a like network had its
    /// pole. `None` where the circuit does not ring.
    pub(crate) fn find(
        &mut self,
        net: &Network,
        shunts: &[(usize, Complex)],
        node: usize,
        near: Option<Complex>,
    ) -> Option<Oscillation> {
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
        let pole = near.into_iter().chain(starts).find_map(|start| self.newton(net, shunts, start))?;
        let (f, slope) = self.one.impedance(net, shunts, pole);
        let pole = pole - f * slope.inverse();
        // V = x(s) (V0 / s) / f(s), so the residue is that with f' in the place of f.
        let residue = self.one.volts[node] * (pole * slope).inverse() * feeder.v0;
        Some(Oscillation { pole, residue })
    }

    /// The oscillation as each node sees it with a branch of `branch_s` there. Neighbours ring alike: each search starts
    /// as far beyond the last pole as that one is beyond the one before.
    pub(crate) fn find_each(&mut self, net: &Network, nodes: &[usize], branch_s: f64) -> Vec<Option<Oscillation>> {
        let mut found: Vec<Option<Oscillation>> = Vec::with_capacity(nodes.len());
        while found.len() < nodes.len() {
            let rest = &nodes[found.len()..];
            let pole = |back: usize| found.iter().rev().nth(back).copied().flatten().map(|found| found.pole);
            let (last, before) = (pole(0), pole(1));
            let beyond = last.zip(before).map(|(last, before)| move |places: f64| last + (last - before) * places);
            if let Some((beyond, four)) = beyond.zip(rest.first_chunk::<LANES>()) {
                let starts = std::array::from_fn(|lane| beyond(lane as f64 + 1.0));
                if let Some(four) = self.find_four(net, *four, branch_s, starts) {
                    found.extend(four.map(Some));
                    continue;
                }
            }
            let near = beyond.map_or(last, |beyond| Some(beyond(1.0)));
            found.push(self.find(net, &[(rest[0], Complex::real(branch_s))], rest[0], near));
        }
        found
    }

    /// Four of them at once, each with the branch at its own node; `None` where one of the searches fails.
    fn find_four(
        &mut self,
        net: &Network,
        nodes: [usize; LANES],
        branch_s: f64,
        starts: [Complex; LANES],
    ) -> Option<[Oscillation; LANES]> {
        let shunts: [(usize, Quad); LANES] = std::array::from_fn(|lane| {
            let mut own = Quad::ZERO;
            own.re.0[lane] = branch_s;
            (nodes[lane], own)
        });
        let mut s = Quad::new(starts);
        for _ in 0..ITERATIONS {
            let (f, slope) = self.four.impedance(net, &shunts, s);
            let change = f * slope.inverse();
            s = s - change;
            s.im.0 = s.im.0.map(f64::abs);
            let lanes: [(Complex, Complex); LANES] = std::array::from_fn(|lane| (s.lane(lane), change.lane(lane)));
            if !lanes.iter().all(|(s, _)| is_place(*s)) {
                return None;
            }
            if lanes.iter().all(|(s, change)| change.size() < CLOSE * s.size()) {
                if !lanes.iter().all(|(s, _)| rings(*s)) {
                    return None;
                }
                let (f, slope) = self.four.impedance(net, &shunts, s);
                let pole = s - f * slope.inverse();
                let share = (pole * slope).inverse() * net.feeder.v0;
                return Some(std::array::from_fn(|lane| Oscillation {
                    pole: pole.lane(lane),
                    residue: self.four.volts[nodes[lane]].lane(lane) * share.lane(lane),
                }));
            }
        }
        None
    }

    fn newton(&mut self, net: &Network, shunts: &[(usize, Complex)], start: Complex) -> Option<Complex> {
        let mut s = start;
        for _ in 0..ITERATIONS {
            let (f, slope) = self.one.impedance(net, shunts, s);
            let change = f * slope.inverse();
            s = s - change;
            // The function is real on the real axis: its two half planes mirror each other.
            s.im = s.im.abs();
            if !is_place(s) {
                return None;
            }
            if change.size() < CLOSE * s.size() {
                return rings(s).then_some(s);
            }
        }
        None
    }
}

/// Whether a search has not run away; a fence that takes no current at all leads nowhere.
fn is_place(s: Complex) -> bool {
    s.size() > 0.0 && s.size().is_finite()
}

fn rings(s: Complex) -> bool {
    s.im > LEAST_ANGLE * s.size() && s.re < 0.0
}

/// The loop through the energizer and the fence, at one place `s` or at four.
#[derive(Debug, Clone, Default)]
struct Loop<N> {
    ladder: Ladder<N>,
    /// Voltages for 1 A into the terminal.
    volts: Vec<N>,
}

impl<N: Number> Loop<N> {
    /// `f` and its slope.
    fn impedance(&mut self, net: &Network, shunts: &[(usize, N)], s: N) -> (N, N) {
        let feeder = &net.feeder;
        let input_z = self.ladder.factor_with(net, s, shunts).inverse();
        self.volts.clear();
        self.volts.resize(net.nodes(), N::default());
        self.volts[TERMINAL] = input_z;
        self.ladder.back(net, &mut self.volts);
        let mut slope = N::of_real(feeder.henry) - (s.square() * feeder.farad).inverse();
        for (c, v) in net.capacitance_f.iter().zip(&self.volts) {
            slope = slope - v.square() * *c;
        }
        let f = s * feeder.henry + N::of_real(feeder.ohm()) + (s * feeder.farad).inverse() + input_z;
        (f, slope)
    }
}
