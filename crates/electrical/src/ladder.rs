//! Elimination of a network of paths at one place `s` of the Laplace plane, without a subtraction.
//!
//! Every node of a path has one neighbour ahead, and on a ring one link back to the head besides.
//! Taking it out of the network is the star-mesh step: with its own shunt `y`, the link ahead `a`
//! and the link back `b`, and `S = y + a + b`, it leaves shunts `y a / S` and `y b / S` on its two
//! neighbours and a link `a b / S` between them; for a plain ladder that is the textbook
//! `Y = y + 1 / (r + 1 / Y_next)`. Only sums of like-signed figures occur, so links of a microohm
//! beside shunts of a gigaohm lose nothing, and a piece that hangs on capacitance alone is regular.
//!
//! The same factors serve a point of a Laplace contour, or four of them side by side, the first instant (`s` very
//! large) and the steady state (`s` = 0). Steps in time (`s` = a pole of the scheme over the step) cut the paths to
//! have four recurrences side by side as well: see `strands`.

use crate::complex::{Complex, Number};
use crate::network::{Network, TERMINAL};

/// The factors at one `s`, and memory for the next.
#[derive(Debug, Clone, Default)]
pub(crate) struct Ladder<N = Complex> {
    /// Shunt of each node; after the elimination, what the node saw when it was taken out.
    shunt: Vec<N>,
    /// `1 / S`.
    inverse: Vec<N>,
    /// `a / S`.
    ahead: Vec<N>,
    /// `b / S`, zero off a ring.
    back: Vec<N>,
}

impl<N: Number> Ladder<N> {
    /// Eliminates everything but the terminal; returns the admittance seen there.
    pub(crate) fn factor(&mut self, net: &Network, s: N) -> N {
        self.factor_with(net, s, &[])
    }

    /// As [`Ladder::factor`], with shunts at nodes besides the network's own.
    pub(crate) fn factor_with(&mut self, net: &Network, s: N, shunts: &[(usize, N)]) -> N {
        let nodes = net.nodes();
        for list in [&mut self.inverse, &mut self.ahead, &mut self.back] {
            list.clear();
            list.resize(nodes, N::default());
        }
        self.shunt.clear();
        self.shunt.extend(net.shunt_s.iter().zip(&net.capacitance_f).map(|(g, c)| s * *c + N::of_real(*g)));
        for (node, shunt) in shunts {
            self.shunt[*node] += *shunt;
        }
        for path in &net.paths {
            let mut back = N::of_real(path.ring_s);
            let mut from_behind = N::default();
            let mut to_head = N::default();
            for node in path.first..path.end {
                let ahead_s = net.ahead_s[node];
                let shunt = self.shunt[node] + from_behind;
                let inverse = (shunt + back + N::of_real(ahead_s)).inverse();
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

    /// Voltages for a terminal voltage of `x[TERMINAL]` and no other injection, into `x`.
    pub(crate) fn back(&self, net: &Network, x: &mut [N]) {
        for path in net.paths.iter().rev() {
            let head = x[path.head];
            let mut next = head;
            for node in (path.first..path.end).rev() {
                next = self.ahead[node] * next + self.back[node] * head;
                x[node] = next;
            }
        }
    }

    /// As [`Ladder::back`]; and the driving-point impedance of every node (Thévenin's), from the terminal's in
    /// `z[TERMINAL]`, into `z`.
    ///
    /// With the shares `α = a / S` and `β = b / S` of its neighbour ahead and of the head, a node `k` has
    /// `Z_kk = 1 / S + α² Z_nn + β² Z_hh + 2 α β Z_nh` and `Z_kh = α Z_nh + β Z_hh`: what 1 A into `k` finds is `1 / S`, and
    /// `α` of it goes on to the neighbour, `β` to the head, whose voltages come back by the same shares.
    pub(crate) fn spread(&self, net: &Network, x: &mut [N], z: &mut [N]) {
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
