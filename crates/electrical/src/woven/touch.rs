//! A branch between any two nodes of a graph, one place at a time, without one pulse a place: the sweep of
//! [`crate::touch`]. Where two windows of its contour do not agree, the pulse is stepped in time instead.

use crate::complex::{Complex, LANES};
use crate::pulse::{Accuracy, Peaks, Pulse};
use crate::touch::{Found, Ring, Touched, sweep, whole_pulse_vs};
use crate::woven::graph::Graph;
use crate::woven::order::Order;
use crate::woven::poles::Poles;
use crate::woven::step::{Stepping, longest_s};

/// A branch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spot {
    pub(crate) from: usize,
    pub(crate) to: usize,
    pub(crate) ohm: f64,
}

/// What every branch takes, in their order.
pub(crate) fn touches(graph: &Graph, order: &Order, spots: &[Spot]) -> Vec<Found> {
    let found = sweep(&mut Woven::new(graph, order, spots));
    found.into_iter().zip(spots).map(|(found, spot)| found.unwrap_or_else(|| stepped(graph, order, spot))).collect()
}

/// The charge through every branch, coulombs.
pub(crate) fn charges(graph: &Graph, order: &Order, spots: &[Spot]) -> Vec<f64> {
    let volt_s = whole_pulse_vs(&mut Woven::new(graph, order, spots));
    volt_s.into_iter().zip(spots).map(|(volt_s, spot)| volt_s / spot.ohm).collect()
}

/// One branch by steps in time.
fn stepped(graph: &Graph, order: &Order, spot: &Spot) -> Found {
    let mut touched = graph.clone();
    // Shorts become wires, so that the touch is the one short that is left.
    touched.wires.append(&mut touched.shorts);
    touched.shorts.push((spot.from, spot.to, 1.0 / spot.ohm));
    let (mut peaks, mut out) = (Peaks::default(), Pulse::default());
    Stepping::new(&touched, order).read(&[(spot.from, spot.to)], &Accuracy::default(), &mut peaks, &mut out);
    Found { peak_v: peaks.found().next().map_or(0.0, |peak| peak.volts), square_vs: out.energy.shorts_j * spot.ohm }
}

/// A graph with its branches.
struct Woven<'a> {
    graph: &'a Graph,
    spots: &'a [Spot],
    poles: Poles<'a>,
    /// Voltages of all nodes without a branch.
    volts: Vec<Complex>,
    /// Those over the branches at four points, one place after the other.
    four: Vec<[Complex; LANES]>,
}

impl<'a> Woven<'a> {
    fn new(graph: &'a Graph, order: &'a Order, spots: &'a [Spot]) -> Self {
        Self {
            graph,
            spots,
            poles: Poles::new(graph, order),
            volts: vec![Complex::ZERO; graph.nodes],
            four: vec![[Complex::ZERO; LANES]; spots.len()],
        }
    }

    /// Works out the network at `s`, for [`Poles::with_branch`].
    fn at(&mut self, s: Complex, driving_v: Complex) {
        self.poles.untouched(s, driving_v, &mut self.volts);
        self.poles.spread();
    }
}

impl Touched for Woven<'_> {
    const TIMES: i32 = 24;

    fn places(&self) -> usize {
        self.spots.len()
    }

    fn v0(&self) -> f64 {
        self.graph.feeder.v0
    }

    fn longest_s(&self) -> f64 {
        longest_s(self.graph, self.spots.iter().map(|spot| spot.ohm).reduce(f64::max))
    }

    fn rings(&mut self) -> Vec<Option<Ring>> {
        let mut near = self.poles.of_circuit();
        let mut rings = vec![None; self.spots.len()];
        if self.graph.feeder.henry > 0.0 {
            // Neighbours ring alike.
            for (ring, spot) in rings.iter_mut().zip(self.spots) {
                *ring = self.poles.ring(spot, near);
                near = ring.map(|ring: Ring| ring.pole).or(near);
            }
        }
        rings
    }

    fn at_real(&mut self, s: f64, driving_v: f64) -> Vec<f64> {
        self.at(Complex::real(s), Complex::real(driving_v));
        self.spots.iter().map(|spot| self.poles.with_branch(spot, &self.volts).re).collect()
    }

    fn at_four(&mut self, points: [Complex; LANES], mut put: impl FnMut(usize, [Complex; LANES])) {
        for (lane, s) in points.into_iter().enumerate() {
            self.at(s, s.inverse() * self.graph.feeder.v0);
            for (four, spot) in self.four.iter_mut().zip(self.spots) {
                four[lane] = self.poles.with_branch(spot, &self.volts);
            }
        }
        self.four.iter().enumerate().for_each(|(place, volts)| put(place, *volts));
    }
}
