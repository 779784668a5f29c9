//! Elimination of a network of paths at one place `s` of the Laplace plane, without a subtraction.
//!
//! Every node of a path has one neighbour ahead, and on a ring one link back to the head besides.
//! Taking it out of the network is the star-mesh step: with its own shunt `y`, the link ahead `a`
//! and the link back `b`, and `S = y + a + b`, it leaves shunts `y a / S` and `y b / S` on its two
//! neighbours and a link `a b / S` between them; for a plain ladder that is the textbook
//! `Y = y + 1 / (r + 1 / Y_next)`. Only sums of like-signed figures occur, so links of a microohm
//! beside shunts of a gigaohm lose nothing, and a piece that hangs on capacitance alone is regular.
//!
//! The same factors serve one step in time (`s` = a pole of the scheme over the step), one point of
//! a Laplace contour, the first instant (`s` very large) and the steady state (`s` = 0).

use std::ops::Range;

use crate::complex::Complex;
use crate::network::{Network, Path, TERMINAL};

/// The factors at one `s`, and memory for the next.
#[derive(Debug, Clone, Default)]
pub(crate) struct Ladder {
    /// Shunt of each node; after the elimination, what the node saw when it was taken out.
    shunt: Vec<Complex>,
    /// `1 / S`.
    inverse: Vec<Complex>,
    /// `a / S`.
    ahead: Vec<Complex>,
    /// `b / S`, zero off a ring.
    back: Vec<Complex>,
}

/// Currents on their way along a path.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Carried {
    /// To the next node ahead.
    pub(crate) ahead: Complex,
    /// Across a ring's closing, to the head.
    pub(crate) to_head: Complex,
}

impl Ladder {
    /// Eliminates everything but the terminal; returns the admittance seen there.
    pub(crate) fn factor(&mut self, net: &Network, s: Complex) -> Complex {
        let nodes = net.nodes();
        for list in [&mut self.inverse, &mut self.ahead, &mut self.back] {
            list.clear();
            list.resize(nodes, Complex::ZERO);
        }
        self.shunt.clear();
        self.shunt.extend(net.shunt_s.iter().zip(&net.capacitance_f).map(|(g, c)| s * *c + Complex::real(*g)));
        for path in &net.paths {
            let mut back = Complex::real(path.ring_s);
            let mut from_behind = Complex::ZERO;
            let mut to_head = Complex::ZERO;
            for node in path.first..path.end {
                let ahead_s = net.ahead_s[node];
                let shunt = self.shunt[node] + from_behind;
                let inverse = (shunt + back + Complex::real(ahead_s)).inverse();
                let ahead = inverse * ahead_s;
                let behind = back * inverse;
                from_behind = shunt * ahead;
                to_head += shunt * behind;
                back = behind * ahead_s;
                self.inverse[node] = inverse;
                self.ahead[node] = ahead;
                self.back[node] = behind;
            }
            self.shunt[path.head] += from_behind + to_head;
        }
        self.shunt[TERMINAL]
    }

    /// Carries injected currents `x` along a span of a path, toward its head.
    #[inline]
    pub(crate) fn carry(&self, path: &Path, span: Range<usize>, x: &mut [Complex], carried: &mut Carried) {
        let rows = x[span.clone()].iter_mut().zip(&self.ahead[span.clone()]);
        if path.ring_s > 0.0 {
            for ((x, ahead), back) in rows.zip(&self.back[span]) {
                *x += carried.ahead;
                carried.ahead = *ahead * *x;
                carried.to_head += *back * *x;
            }
        } else {
            for (x, ahead) in rows {
                *x += carried.ahead;
                carried.ahead = *ahead * *x;
            }
        }
    }

    /// What a node gets at most, volts, from a current carried to it and, across a ring's closing, from its head.
    pub(crate) fn reach_v(&self, node: usize, carried: Complex, head_v: f64) -> f64 {
        (self.inverse[node] * carried).size() + self.back[node].size() * head_v
    }

    /// Turns what [`Ladder::carry`] left along a whole path into voltages, span by span away from the head; `next` is
    /// the voltage before the span, and that of its last node is returned.
    #[inline]
    pub(crate) fn settle(&self, path: &Path, span: Range<usize>, x: &mut [Complex], mut next: Complex) -> Complex {
        let head = x[path.head];
        let rows = x[span.clone()].iter_mut().zip(&self.inverse[span.clone()]).zip(&self.ahead[span.clone()]);
        if path.ring_s > 0.0 {
            for (((x, inverse), ahead), back) in rows.zip(&self.back[span]).rev() {
                next = *inverse * *x + *back * head + *ahead * next;
                *x = next;
            }
        } else {
            for ((x, inverse), ahead) in rows.rev() {
                next = *inverse * *x + *ahead * next;
                *x = next;
            }
        }
        next
    }

    /// Turns currents that were carried to the terminal, or none, into voltages, from the terminal's voltage
    /// `x[TERMINAL]`.
    pub(crate) fn back(&self, net: &Network, x: &mut [Complex]) {
        for path in net.paths.iter().rev() {
            let head = x[path.head];
            self.settle(path, path.first..path.end, x, head);
        }
    }

    /// Voltages for a terminal voltage of `x[TERMINAL]` and no other injection, into `x`; and the
    /// driving-point impedance of every node, from the terminal's in `z[TERMINAL]`, into `z`.
    pub(crate) fn spread(&self, net: &Network, x: &mut [Complex], z: &mut [Complex]) {
        for path in net.paths.iter().rev() {
            let (head_x, head_z) = (x[path.head], z[path.head]);
            let (mut next_x, mut next_z, mut next_to_head) = (head_x, head_z, head_z);
            for node in (path.first..path.end).rev() {
                let (ahead, back) = (self.ahead[node], self.back[node]);
                next_x = ahead * next_x + back * head_x;
                next_z = self.inverse[node]
                    + ahead.square() * next_z
                    + back.square() * head_z
                    + ahead * back * next_to_head * 2.0;
                next_to_head = ahead * next_to_head + back * head_z;
                x[node] = next_x;
                z[node] = next_z;
            }
        }
    }
}
