//! How far the pulse has come along each path.
//!
//! What it has not reached is at rest, and a step leaves it out: on a long fence the early steps, and in wet grass all
//! of them, cost no more than on a short one. A path has one stretch at rest, its far end or, on a ring, its middle,
//! which only ever shrinks. At its edges a step looks whether it stays at rest: what it then leaves out is below
//! [`AT_REST`] of the no-load voltage, a millionth of the least voltage that counts.

use std::ops::Range;

use crate::complex::Complex;
use crate::ladder::{Carried, Ladder};
use crate::network::{Network, TERMINAL};

/// Below this share of `V0` a node is at rest.
const AT_REST: f64 = 1e-12;

/// The stretch at rest of each path, in the network's order.
#[derive(Debug, Clone, Default)]
pub(crate) struct Fronts {
    at_rest: Vec<Range<usize>>,
    /// Greatest voltage of a node at rest.
    least_v: f64,
}

impl Fronts {
    /// Leaves nothing at rest, as the first instant needs it.
    pub(crate) fn release(&mut self, net: &Network) {
        self.at_rest.clear();
        self.at_rest.extend(net.paths.iter().map(|path| path.end..path.end));
    }

    /// Finds what the first instant left at rest, and sets it to nothing.
    pub(crate) fn start(&mut self, net: &Network, volts: &mut [f64], x: &mut [Complex]) {
        self.least_v = AT_REST * net.feeder.v0.abs();
        let least_v = self.least_v;
        self.at_rest.clear();
        self.at_rest.extend(net.paths.iter().map(|path| {
            let carries_another = net.paths.iter().any(|other| (path.first..path.end).contains(&other.head));
            let moves = |&node: &usize| volts[node].abs() > least_v;
            let from =
                if path.ring_s > 0.0 { (path.first..path.end).find(|node| !moves(node)) } else { Some(path.first) };
            let from = from.filter(|_| !carries_another).unwrap_or(path.end);
            from..(from..path.end).find(moves).unwrap_or(path.end)
        }));
        for span in &self.at_rest {
            volts[span.clone()].fill(0.0);
            x[span.clone()].fill(Complex::ZERO);
        }
    }

    /// The nodes that are not at rest.
    pub(crate) fn moving(&self, net: &Network) -> impl Iterator<Item = Range<usize>> {
        let spans =
            net.paths.iter().zip(&self.at_rest).flat_map(|(path, rest)| [path.first..rest.start, rest.end..path.end]);
        std::iter::once(TERMINAL..TERMINAL + 1).chain(spans)
    }

    /// Carries injected currents `x` to the terminal: afterwards `x[TERMINAL]` is all of them as
    /// seen there, and the rest is what [`Fronts::back`] needs.
    pub(crate) fn forward(&mut self, ladder: &Ladder, net: &Network, x: &mut [Complex]) {
        let driving_v = net.feeder.v0.abs();
        for (path, rest) in net.paths.iter().zip(&mut self.at_rest) {
            let mut carried = Carried::default();
            ladder.carry(path, path.first..rest.start, x, &mut carried);
            while rest.start < rest.end && ladder.reach_v(rest.start, carried.ahead, driving_v) > self.least_v {
                ladder.carry(path, rest.start..rest.start + 1, x, &mut carried);
                rest.start += 1;
            }
            if rest.start < rest.end {
                carried.ahead = Complex::ZERO;
            }
            ladder.carry(path, rest.end..path.end, x, &mut carried);
            x[path.head] += carried.ahead + carried.to_head;
        }
    }

    /// Turns what [`Fronts::forward`] left into voltages, from the terminal's voltage `x[TERMINAL]`.
    pub(crate) fn back(&mut self, ladder: &Ladder, net: &Network, x: &mut [Complex]) {
        for (path, rest) in net.paths.iter().zip(&mut self.at_rest).rev() {
            let head = x[path.head];
            let mut next = ladder.settle(path, rest.end..path.end, x, head);
            while rest.start < rest.end {
                let node = rest.end - 1;
                let risen = ladder.settle(path, node..rest.end, x, next);
                if risen.size() <= self.least_v {
                    x[node] = Complex::ZERO;
                    next = Complex::ZERO;
                    break;
                }
                next = risen;
                rest.end = node;
            }
            ladder.settle(path, path.first..rest.start, x, next);
        }
    }
}
