//! A network's paths, each cut into four strands that are stepped side by side.
//!
//! A path's elimination is a recurrence: each node waits for the one before. Three nodes, a quarter of the way apart, cut
//! it into four *strands* of equal length. Between such *knots* each strand is eliminated for itself, by the star-mesh
//! step of `ladder`: a node has a link ahead and one back to the knot behind its strand, just as every node of a ring has
//! one back to the head. What is left are shunts on the knots and a link from knot to knot: a short path of knots, taken
//! out one after the other. Only sums of like-signed figures occur, here as there.
//!
//! Knots are also the terminal, the heads of branches, the few nodes that four strands do not divide into, and paths too
//! short to be cut. A node stands at a *place*: first come *rows* of four, one node of each strand, then the knots.
//!
//! What the pulse has not reached is at rest, and a step leaves it out: on a long fence the early steps, and in wet grass
//! all of them, cost less than its length. Four strands have one stretch of rows at rest, which only ever shrinks. At its
//! edges a step looks whether it stays at rest: what it then leaves out is below [`AT_REST`] of the no-load voltage, a
//! millionth of the least voltage that counts.

mod cut;
mod sweeps;

use std::ops::Range;

use crate::complex::{Complex, LANES, Lanes, Quad};
use sweeps::Factors;

/// Below this share of `V0` a node is at rest.
const AT_REST: f64 = 1e-12;

/// Four strands; strand `k` lies between the knots `behind[k]` and `ahead[k]`.
#[derive(Debug, Clone)]
struct Piece {
    rows: Range<usize>,
    /// Those of them that the pulse has not reached.
    at_rest: Range<usize>,
    behind: [usize; LANES],
    ahead: [usize; LANES],
    /// Conductance from each strand's first node back to the knot behind; 0 at the open end of a path.
    behind_s: Lanes,
}

/// The knots of one path.
#[derive(Debug, Clone)]
struct Chain {
    knots: Range<usize>,
    /// The knot that the last one is linked to.
    head: usize,
    /// Link from the first knot back to the head; 0 off a ring. Strands that begin the path bring their own.
    ring: Complex,
    begun_by: Option<usize>,
}

/// A network in strands, its factors at one `s`, and its state.
#[derive(Debug, Clone, Default)]
pub(crate) struct Strands {
    /// Voltages by place.
    pub(crate) volts: Vec<f64>,
    /// The place of every node.
    place: Vec<usize>,
    // Figures by place.
    leak_s: Vec<f64>,
    shunt_s: Vec<f64>,
    farad: Vec<f64>,
    ahead_s: Vec<f64>,
    /// Links from place to place that do not lie within a strand, siemens.
    links: Vec<(usize, usize, f64)>,
    shorts: Vec<(usize, f64)>,
    rows: usize,
    pieces: Vec<Piece>,
    chains: Vec<Chain>,
    /// What a volt of the old state injects, by place.
    inject: Vec<f64>,
    row_factors: Vec<Factors<Quad, Lanes>>,
    knot_factors: Vec<Factors<Complex, Complex>>,
    /// Shunts of the knots while they are eliminated.
    shunts: Vec<Complex>,
    /// Between the sweeps the injected currents over `S`.
    row_x: Vec<Quad>,
    /// Currents into the knots, likewise; after the sweep back their voltages.
    knot_x: Vec<Complex>,
    least_v: f64,
    driving_v: f64,
}

impl Strands {
    /// Where a node stands in [`Strands::volts`].
    pub(crate) fn place(&self, node: usize) -> usize {
        self.place[node]
    }

    /// Leaves nothing at rest, as the first instant needs it.
    fn wake_all(&mut self) {
        (self.least_v, self.driving_v) = (0.0, 0.0);
        for piece in &mut self.pieces {
            piece.at_rest = piece.rows.end..piece.rows.end;
        }
    }

    /// Finds what the first instant of a pulse of `v0` left at rest, and sets it to nothing.
    pub(crate) fn find_at_rest(&mut self, v0: f64) {
        (self.least_v, self.driving_v) = (AT_REST * v0.abs(), v0.abs());
        let rows = self.volts.as_chunks_mut::<LANES>().0;
        for piece in &mut self.pieces {
            let moves = |row: &usize| rows[*row].iter().any(|volts| volts.abs() > self.least_v);
            let from = piece.rows.clone().find(|row| !moves(row)).unwrap_or(piece.rows.end);
            piece.at_rest = from..(from..piece.rows.end).find(moves).unwrap_or(piece.rows.end);
            rows[piece.at_rest.clone()].fill([0.0; LANES]);
            self.row_x[piece.at_rest.clone()].fill(Quad::ZERO);
        }
    }

    /// Energy on the capacitances, joules.
    pub(crate) fn left_j(&self) -> f64 {
        0.5 * sum_of_squares(&self.farad, &self.volts)
    }

    /// Greatest voltage of a node.
    pub(crate) fn greatest_v(&self) -> f64 {
        self.volts.iter().fold(0.0, |most, volts| most.max(volts.abs()))
    }

    /// Watts lost through leakage.
    pub(crate) fn leakage_w(&self) -> f64 {
        sum_of_squares(&self.leak_s, &self.volts)
    }

    /// Watts lost through shorts.
    pub(crate) fn shorts_w(&self) -> f64 {
        self.shorts.iter().map(|(place, short_s)| short_s * self.volts[*place] * self.volts[*place]).sum()
    }

    /// Watts lost along the lines.
    pub(crate) fn wire_w(&self) -> f64 {
        let volts = self.volts.as_chunks::<LANES>().0;
        let ahead_s = self.ahead_s.as_chunks::<LANES>().0;
        let mut within = Lanes::ZERO;
        for piece in &self.pieces {
            let links = ahead_s[piece.rows.clone()].iter();
            for (pair, link_s) in volts[piece.rows.clone()].windows(2).zip(links) {
                let fall = Lanes(pair[0]) - Lanes(pair[1]);
                within += Lanes(*link_s) * fall * fall;
            }
        }
        let fall = |(from, to, link_s): &(usize, usize, f64)| link_s * (self.volts[*from] - self.volts[*to]).powi(2);
        within.sum() + self.links.iter().map(fall).sum::<f64>()
    }
}

/// `Σ w v²`, in lanes: one sum would wait for itself at every node.
fn sum_of_squares(weights: &[f64], volts: &[f64]) -> f64 {
    let ((weights, last_weights), (volts, last_volts)) = (weights.as_chunks::<LANES>(), volts.as_chunks::<LANES>());
    let mut sum = Lanes::ZERO;
    for (weight, volts) in weights.iter().zip(volts) {
        sum += Lanes(*weight) * Lanes(*volts) * Lanes(*volts);
    }
    sum.sum() + last_weights.iter().zip(last_volts).map(|(weight, volts)| weight * volts * volts).sum::<f64>()
}

#[cfg(test)]
mod tests;
