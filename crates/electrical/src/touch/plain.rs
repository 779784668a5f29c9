//! Touches of a network of paths, through its ladder.

use crate::complex::{Complex, LANES, Number, Quad};
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL};
use crate::pulse::longest_s;
use crate::ringing::{Finder, Oscillation};
use crate::touch::{Found, Ring, Touched, sweep, whole_pulse_vs};

/// A branch of `touch_ohm` at every probe, in their order; `None` behind a break, and where the
/// method cannot vouch for its figure.
pub(crate) fn touches(net: &Network, touch_ohm: f64) -> Vec<Option<Found>> {
    let mut found = sweep(&mut Plain::new(net, touch_ohm)).into_iter();
    net.probes.iter().map(|probe| probe.and_then(|_| found.next().flatten())).collect()
}

/// The charge through a branch of `touch_ohm` at every probe, coulombs; 0 behind a break.
pub(crate) fn charges(net: &Network, touch_ohm: f64) -> Vec<f64> {
    let mut found = whole_pulse_vs(&mut Plain::new(net, touch_ohm)).into_iter();
    let mut next_c = || found.next().map_or(0.0, |volt_s| volt_s / touch_ohm);
    net.probes.iter().map(|probe| probe.map_or(0.0, |_| next_c())).collect()
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

/// The branch to earth at every probe that the pulse reaches.
struct Plain<'a> {
    net: &'a Network,
    touch_ohm: f64,
    /// The nodes that are read, in the order of those probes.
    nodes: Vec<usize>,
    one: Spread<Complex>,
    four: Spread<Quad>,
}

impl<'a> Plain<'a> {
    fn new(net: &'a Network, touch_ohm: f64) -> Self {
        let nodes = net.probes.iter().flatten().copied().collect();
        Self { net, touch_ohm, nodes, one: Spread::default(), four: Spread::default() }
    }
}

impl Touched for Plain<'_> {
    const TIMES: i32 = 16;

    fn places(&self) -> usize {
        self.nodes.len()
    }

    fn v0(&self) -> f64 {
        self.net.feeder.v0
    }

    fn longest_s(&self) -> f64 {
        longest_s(self.net, 1.0 / self.touch_ohm)
    }

    fn rings(&mut self) -> Vec<Option<Ring>> {
        let mut rings = vec![None; self.nodes.len()];
        if self.net.feeder.henry <= 0.0 {
            return rings;
        }
        let found = Finder::default().find_each(self.net, &self.nodes, self.touch_ohm.recip());
        let ringing: Vec<(usize, Oscillation)> =
            found.into_iter().enumerate().filter_map(|(place, found)| Some((place, found?))).collect();
        for four in ringing.chunks(LANES) {
            // Four mirrored poles at a time; the last few are filled up with the last one.
            let lanes: [(usize, Oscillation); LANES] = std::array::from_fn(|lane| four[lane.min(four.len() - 1)]);
            let s = Quad::new(lanes.map(|(_, Oscillation { pole, .. })| pole * -1.0));
            self.four.at(self.net, s, s.inverse() * self.net.feeder.v0);
            for (lane, (place, Oscillation { pole, residue })) in lanes.into_iter().enumerate() {
                let at_mirror = self.four.touched(self.nodes[place], self.touch_ohm).lane(lane);
                rings[place] = Some(Ring::new(pole, residue, at_mirror));
            }
        }
        rings
    }

    fn at_real(&mut self, s: f64, driving_v: f64) -> Vec<f64> {
        self.one.at(self.net, Complex::real(s), Complex::real(driving_v));
        self.nodes.iter().map(|node| self.one.touched(*node, self.touch_ohm).re).collect()
    }

    fn at_four(&mut self, points: [Complex; LANES], mut put: impl FnMut(usize, [Complex; LANES])) {
        let s = Quad::new(points);
        self.four.at(self.net, s, s.inverse() * self.net.feeder.v0);
        for (place, node) in self.nodes.iter().enumerate() {
            let touched = self.four.touched(*node, self.touch_ohm);
            put(place, std::array::from_fn(|lane| touched.lane(lane)));
        }
    }
}
