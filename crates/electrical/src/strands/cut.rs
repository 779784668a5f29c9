//! Cutting a network's paths into strands and knots, and every figure to its place.

use super::{Chain, Factors, Piece, Strands};
use crate::complex::{Complex, LANES, Lanes, Quad};
use crate::network::{Network, TERMINAL};

/// Fewer rows are not worth their knots.
const LEAST_ROWS: usize = 3;

impl Strands {
    /// Cuts a network's paths; all voltages 0, nothing at rest.
    pub(crate) fn lay_out(&mut self, net: &Network) {
        let mut is_head = vec![false; net.nodes()];
        for path in &net.paths {
            is_head[path.head] = true;
        }
        self.pieces.clear();
        self.chains.clear();
        self.rows = 0;
        // The knots' nodes in the order of their places; a piece names knots by node until all are known.
        let mut knots = vec![TERMINAL];
        self.place.clear();
        self.place.resize(net.nodes(), 0);
        for path in &net.paths {
            let first_knot = knots.len();
            let mut begun_by = None;
            let mut node = path.first;
            while node < path.end {
                let stop = (node..path.end).find(|node| is_head[*node]).unwrap_or(path.end);
                let rows = (stop - node).saturating_sub(LANES - 1) / LANES;
                if rows < LEAST_ROWS {
                    knots.push(node);
                    node += 1;
                    continue;
                }
                let mut piece = Piece {
                    rows: self.rows..self.rows + rows,
                    at_rest: 0..0,
                    behind: [path.head; LANES],
                    ahead: [path.head; LANES],
                    behind_s: Lanes::ZERO,
                };
                if node == path.first {
                    begun_by = Some(self.pieces.len());
                    piece.behind_s.0[0] = path.ring_s;
                }
                for strand in 0..LANES {
                    if node > path.first {
                        piece.behind[strand] = node - 1;
                        piece.behind_s.0[strand] = net.ahead_s[node - 1];
                    }
                    for row in 0..rows {
                        self.place[node + row] = LANES * (self.rows + row) + strand;
                    }
                    node += rows;
                    if node < path.end {
                        piece.ahead[strand] = node;
                    }
                    if strand + 1 < LANES {
                        knots.push(node);
                        node += 1;
                    }
                }
                self.rows += rows;
                self.pieces.push(piece);
            }
            let ring = Complex::real(path.ring_s);
            self.chains.push(Chain { knots: first_knot..knots.len(), head: path.head, ring, begun_by });
        }
        for (knot, node) in knots.iter().enumerate() {
            self.place[*node] = LANES * self.rows + knot;
        }
        // What is behind and ahead of a piece is always a knot: only a head keeps two pieces of one path apart.
        let knot_of = |node: usize| self.place[node] - LANES * self.rows;
        for piece in &mut self.pieces {
            piece.behind = piece.behind.map(knot_of);
            piece.ahead = piece.ahead.map(knot_of);
        }
        for chain in &mut self.chains {
            chain.head = knot_of(chain.head);
        }
        self.take_figures(net);
        self.wake_all();
    }

    /// Everything of the network by place.
    fn take_figures(&mut self, net: &Network) {
        let places = &self.place;
        let scatter = |from: &[f64], to: &mut Vec<f64>| {
            to.clear();
            to.resize(from.len(), 0.0);
            for (figure, place) in from.iter().zip(places) {
                to[*place] = *figure;
            }
        };
        scatter(&net.leak_s, &mut self.leak_s);
        scatter(&net.shunt_s, &mut self.shunt_s);
        scatter(&net.capacitance_f, &mut self.farad);
        scatter(&net.ahead_s, &mut self.ahead_s);
        self.shorts.clear();
        self.shorts.extend(net.shorts.iter().map(|(node, short_s)| (places[*node], *short_s)));
        self.links.clear();
        let rows_end = LANES * self.rows;
        for path in &net.paths {
            for node in path.first..path.end {
                let next = if node + 1 < path.end { node + 1 } else { path.head };
                if places[node].max(places[next]) >= rows_end {
                    self.links.push((places[node], places[next], net.ahead_s[node]));
                }
            }
            if path.ring_s > 0.0 {
                self.links.push((places[path.first], places[path.head], path.ring_s));
            }
        }
        let knots = net.nodes() - rows_end;
        self.volts.clear();
        self.volts.resize(net.nodes(), 0.0);
        self.row_factors.resize(self.rows, Factors::default());
        self.knot_factors.resize(knots, Factors::default());
        self.row_x.clear();
        self.row_x.resize(self.rows, Quad::ZERO);
        self.knot_x.clear();
        self.knot_x.resize(knots, Complex::ZERO);
    }
}
