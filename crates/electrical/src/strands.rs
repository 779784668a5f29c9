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

use std::ops::Range;

use crate::complex::{Complex, LANES, Lanes, Number, Quad};
use crate::network::{Network, TERMINAL};

/// Below this share of `V0` a node is at rest.
const AT_REST: f64 = 1e-12;
/// Fewer rows are not worth their knots.
const LEAST_ROWS: usize = 3;

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

/// What the elimination of a node, or of a row of four, leaves behind.
#[derive(Debug, Clone, Copy, Default)]
struct Factors<N, S> {
    /// `1 / S`, where `S` is the sum of the node's own shunt and of both its links.
    inverse: N,
    /// The link ahead: a plain conductance between nodes, what is left of a strand between knots.
    link: S,
    /// The link back when the node was taken out.
    link_back: N,
    /// `link / S` and `link_back / S`: shares of the voltages there in this node's.
    ahead: N,
    back: N,
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
        self.rest_none();
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

    /// Where a node stands in [`Strands::volts`].
    pub(crate) fn place(&self, node: usize) -> usize {
        self.place[node]
    }

    /// Leaves nothing at rest, as the first instant needs it.
    fn rest_none(&mut self) {
        (self.least_v, self.driving_v) = (0.0, 0.0);
        for piece in &mut self.pieces {
            piece.at_rest = piece.rows.end..piece.rows.end;
        }
    }

    /// Finds what the first instant of a pulse of `v0` left at rest, and sets it to nothing.
    pub(crate) fn rest(&mut self, v0: f64) {
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

    /// Eliminates everything but the terminal at a place `s`, for steps that inject `scale C v`; returns the admittance
    /// seen at the terminal.
    pub(crate) fn factor(&mut self, s: Complex, scale: f64) -> Complex {
        self.inject.clear();
        self.inject.extend(self.farad.iter().map(|farad| scale * farad));
        let rows_end = LANES * self.rows;
        let farad = self.farad.as_chunks::<LANES>().0;
        let shunt_s = self.shunt_s.as_chunks::<LANES>().0;
        let ahead_s = self.ahead_s.as_chunks::<LANES>().0;
        self.shunts.clear();
        let knots = self.shunt_s[rows_end..].iter().zip(&self.farad[rows_end..]);
        self.shunts.extend(knots.map(|(shunt_s, farad)| s * *farad + Complex::real(*shunt_s)));
        for (factors, ahead_s) in self.knot_factors.iter_mut().zip(&self.ahead_s[rows_end..]) {
            factors.link = Complex::real(*ahead_s);
        }
        let s = Quad::splat(s);
        for (index, piece) in self.pieces.iter().enumerate() {
            let mut link_back = Quad::real(piece.behind_s);
            let mut from_behind = Quad::ZERO;
            let mut to_behind = Quad::ZERO;
            for row in piece.rows.clone() {
                let link = Lanes(ahead_s[row]);
                let shunt = s * Lanes(farad[row]) + Quad::real(Lanes(shunt_s[row])) + from_behind;
                let inverse = (shunt + link_back + Quad::real(link)).inverse();
                let (ahead, back) = (inverse * link, inverse * link_back);
                from_behind = shunt * ahead;
                to_behind += shunt * back;
                self.row_factors[row] = Factors { inverse, link, link_back, ahead, back };
                link_back = back * link;
            }
            for lane in 0..LANES {
                self.shunts[piece.ahead[lane]] += from_behind.lane(lane);
                self.shunts[piece.behind[lane]] += to_behind.lane(lane);
                match self.chains.iter_mut().find(|chain| lane == 0 && chain.begun_by == Some(index)) {
                    Some(chain) => chain.ring = link_back.lane(lane),
                    None => self.knot_factors[piece.behind[lane]].link = link_back.lane(lane),
                }
            }
        }
        for chain in &self.chains {
            let mut link_back = chain.ring;
            let mut from_behind = Complex::ZERO;
            let mut to_head = Complex::ZERO;
            for knot in chain.knots.clone() {
                let shunt = self.shunts[knot] + from_behind;
                let link = self.knot_factors[knot].link;
                let inverse = (shunt + link_back + link).inverse();
                let (ahead, back) = (inverse * link, inverse * link_back);
                from_behind = shunt * ahead;
                to_head += shunt * back;
                self.knot_factors[knot] = Factors { inverse, link, link_back, ahead, back };
                link_back = back * link;
            }
            self.shunts[chain.head] += from_behind + to_head;
        }
        self.shunts[0]
    }

    /// Carries what the old state injects to the terminal; returns the current there. The rest is what
    /// [`Strands::back`] needs.
    pub(crate) fn forward(&mut self) -> Complex {
        let (row_volts, knot_volts) = self.volts.split_at(LANES * self.rows);
        let (row_inject, knot_inject) = self.inject.split_at(LANES * self.rows);
        let (row_volts, row_inject) = (row_volts.as_chunks::<LANES>().0, row_inject.as_chunks::<LANES>().0);
        for ((x, inject), volts) in self.knot_x.iter_mut().zip(knot_inject).zip(knot_volts) {
            *x = Complex::real(inject * volts);
        }
        for piece in &mut self.pieces {
            let mut carried = Carried::default();
            let mut carry = |span: Range<usize>, carried: &mut Carried| {
                let factors = &self.row_factors[span.clone()];
                carried.along(factors, &row_inject[span.clone()], &row_volts[span.clone()], &mut self.row_x[span]);
            };
            let Range { start, end } = piece.rows.clone();
            carry(start..piece.at_rest.start, &mut carried);
            while !piece.at_rest.is_empty() {
                let row = piece.at_rest.start;
                if self.row_factors[row].reach_v(carried.ahead, self.driving_v) <= self.least_v {
                    carried.ahead = Quad::ZERO;
                    break;
                }
                carry(row..row + 1, &mut carried);
                piece.at_rest.start += 1;
            }
            carry(piece.at_rest.end..end, &mut carried);
            for lane in 0..LANES {
                self.knot_x[piece.ahead[lane]] += carried.ahead.lane(lane);
                self.knot_x[piece.behind[lane]] += carried.behind.lane(lane);
            }
        }
        for chain in &self.chains {
            let mut carried = Complex::ZERO;
            let mut to_head = Complex::ZERO;
            for knot in chain.knots.clone() {
                let factors = &self.knot_factors[knot];
                let x = (self.knot_x[knot] + carried) * factors.inverse;
                carried = factors.link * x;
                to_head += factors.link_back * x;
                self.knot_x[knot] = x;
            }
            self.knot_x[chain.head] += carried + to_head;
        }
        self.knot_x[0]
    }

    /// Turns what [`Strands::forward`] left into voltages, from the terminal's; the new state is `Re (weight x)`.
    pub(crate) fn back(&mut self, terminal: Complex, weight: Complex) {
        self.knot_x[0] = terminal;
        let real = |x: Complex| weight.re * x.re - weight.im * x.im;
        for chain in self.chains.iter().rev() {
            let head = self.knot_x[chain.head];
            let mut next = head;
            for knot in chain.knots.clone().rev() {
                let factors = &self.knot_factors[knot];
                next = self.knot_x[knot] + factors.ahead * next + factors.back * head;
                if next.size_at_most() <= self.least_v {
                    next = Complex::ZERO;
                }
                self.knot_x[knot] = next;
            }
        }
        let (row_volts, knot_volts) = self.volts.split_at_mut(LANES * self.rows);
        for (volts, x) in knot_volts.iter_mut().zip(&self.knot_x) {
            *volts = real(*x);
        }
        let row_volts = row_volts.as_chunks_mut::<LANES>().0;
        for piece in &mut self.pieces {
            let knots = |knots: [usize; LANES]| Quad::new(knots.map(|knot| self.knot_x[knot]));
            let mut settled = Settled { next: knots(piece.ahead), behind: knots(piece.behind), weight };
            let settle = |span: Range<usize>, settled: &mut Settled, volts: &mut [[f64; LANES]]| {
                settled.along(&self.row_factors[span.clone()], &self.row_x[span.clone()], &mut volts[span]);
            };
            settle(piece.at_rest.end..piece.rows.end, &mut settled, row_volts);
            while !piece.at_rest.is_empty() {
                let row = piece.at_rest.end - 1;
                settle(row..row + 1, &mut settled, row_volts);
                if settled.next.size_at_most().greatest() <= self.least_v {
                    row_volts[row] = [0.0; LANES];
                    settled.next = Quad::ZERO;
                    break;
                }
                piece.at_rest.end = row;
            }
            settle(piece.rows.start..piece.at_rest.start, &mut settled, row_volts);
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

impl Factors<Quad, Lanes> {
    /// What a row gets at most, volts, from currents carried to it and from the knots behind.
    fn reach_v(&self, carried: Quad, behind_v: f64) -> f64 {
        ((self.inverse * carried).size_at_most() + self.back.size_at_most() * behind_v).greatest()
    }
}

/// Currents on their way along four strands: to the next nodes, and back to the knots behind.
#[derive(Debug, Clone, Copy, Default)]
struct Carried {
    ahead: Quad,
    behind: Quad,
}

impl Carried {
    #[inline]
    fn along(
        &mut self,
        factors: &[Factors<Quad, Lanes>],
        inject: &[[f64; LANES]],
        volts: &[[f64; LANES]],
        x: &mut [Quad],
    ) {
        let Self { mut ahead, mut behind } = *self;
        for (((factors, inject), volts), x) in factors.iter().zip(inject).zip(volts).zip(x) {
            let current = Quad { re: Lanes(*inject) * Lanes(*volts) + ahead.re, im: ahead.im };
            let share = current * factors.inverse;
            ahead = share * factors.link;
            behind += share * factors.link_back;
            *x = share;
        }
        *self = Self { ahead, behind };
    }
}

/// Voltages on their way back along four strands.
#[derive(Debug, Clone, Copy)]
struct Settled {
    next: Quad,
    behind: Quad,
    weight: Complex,
}

impl Settled {
    #[inline]
    fn along(&mut self, factors: &[Factors<Quad, Lanes>], x: &[Quad], volts: &mut [[f64; LANES]]) {
        let Self { mut next, behind, weight } = *self;
        for ((factors, x), volts) in factors.iter().zip(x).zip(volts).rev() {
            next = factors.ahead * next + (*x + factors.back * behind);
            *volts = (next.re * weight.re - next.im * weight.im).0;
        }
        self.next = next;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::circuit::{Branch, Chain, Circuit, Closing, Join, Line, Mesh, Place, Short};
    use crate::ladder::Ladder;
    use crate::source::Source;
    use crate::stepper::Stepper;

    /// A lead and a ring with two branches, one of them short, and an open line at the same
    /// terminal: every kind of path, cut and too short to be cut.
    fn network(wire_ohm_per_m: f64, leakage_s_per_m: f64, closing: Closing) -> Network {
        let chain = |metres: usize| {
            let mut chain = Chain::even(metres as f64, wire_ohm_per_m, leakage_s_per_m, 37e-12);
            chain.marks.extend((0..=metres).map(|metre| Place::after(metre as f64)));
            chain
        };
        let mut main = chain(83);
        main.joins.push(Join { at_m: 61.0, ohm: 40.0 });
        main.shorts.push(Short { at: Place::after(47.0), ohm: 900.0 });
        let branch = |at_m: f64, metres| Branch { at: Place::after(at_m), chain: chain(metres) };
        let branches = vec![branch(20.0, 31), branch(47.0, 5)];
        let ring = Line { feed: Place::after(11.0), lead_ohm: 3.0, closing, branches, ..Line::open(main) };
        let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
        let circuit = Circuit { source, earth_ohm: 88.0, lines: vec![ring, Line::open(chain(40))] };
        let mut net = Network::default();
        net.lay_out(&circuit, &Mesh::as_named()).expect("a plain circuit");
        net
    }

    #[test]
    fn strands_see_what_the_ladder_sees() {
        for closing in [Closing::Ring { ohm: 25.0 }, Closing::Open] {
            for (wire, leakage) in [(1.0, 1e-5), (1e-6, 1e-9), (1e3, 1e-1)] {
                let net = network(wire, leakage, closing);
                let mut strands = Strands::default();
                strands.lay_out(&net);
                assert!(strands.pieces.len() >= 4, "{}", strands.pieces.len());
                for s in [Complex::new(1e6, 7e5), Complex::new(20.0, -14.0), Complex::real(1e40), Complex::ZERO] {
                    let mut ladder = Ladder::default();
                    let want = ladder.factor(&net, s);
                    let got = strands.factor(s, 1.0);
                    assert!((got - want).size() < 1e-13 * want.size(), "{wire}, {leakage}, {s:?}: {got:?}, {want:?}");
                    let mut volts = vec![Complex::ZERO; net.nodes()];
                    volts[TERMINAL] = Complex::real(1.0);
                    ladder.back(&net, &mut volts);
                    strands.volts.fill(0.0);
                    strands.forward();
                    strands.back(Complex::real(1.0), Complex::real(1.0));
                    for (node, want) in volts.iter().enumerate() {
                        let got = strands.volts[strands.place(node)];
                        assert!(
                            (got - want.re).abs() < 1e-12,
                            "{wire}, {leakage}, {s:?}, {node}: {got} against {}",
                            want.re
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn what_is_at_rest_is_not_missed() {
        // Wet grass: the pulse does not come to the far end of this line, and takes its time on the way.
        let mut chain = Chain::even(1500.0, 1.0, 3e-3, 37e-12);
        chain.marks.extend((0..=500).map(|mark| Place::after(3.0 * f64::from(mark))));
        let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
        for line in [Line::open(chain.clone()), Line { feed: Place::after(300.0), ..Line::ring(chain) }] {
            let circuit = Circuit { source, earth_ohm: 88.0, lines: vec![line] };
            let mut net = Network::default();
            net.lay_out(&circuit, &Mesh::as_named()).expect("a plain circuit");
            let (mut resting, mut whole) = (Stepper::default(), Stepper::default());
            resting.start(&net);
            whole.start(&net);
            whole.strands.rest_none();
            let at_rest =
                |stepper: &Stepper| stepper.strands.pieces.iter().map(|piece| piece.at_rest.len()).sum::<usize>();
            assert!(at_rest(&resting) > 80, "{}", at_rest(&resting));
            for octave in 0..12 {
                for stepper in [&mut resting, &mut whole] {
                    stepper.set_step(1e-9 * 2.0_f64.powi(octave));
                    (0..8).for_each(|_| stepper.advance());
                }
                for (got, want) in resting.strands.volts.iter().zip(&whole.strands.volts) {
                    assert!((got - want).abs() < 1e-9 * source.v0, "octave {octave}: {got} against {want}");
                }
                assert!(octave > 0 || at_rest(&resting) > 0, "octave {octave}");
            }
        }
    }

    #[test]
    fn what_a_place_injects_comes_out_at_the_terminal_as_the_terminal_comes_in_there() {
        // Reciprocity: the share of a current at a node that the terminal, held at 0, sees is the node's share of volts.
        let net = network(1.0, 1e-5, Closing::Ring { ohm: 25.0 });
        let mut strands = Strands::default();
        strands.lay_out(&net);
        strands.factor(Complex::real(3e6), 1.0);
        strands.volts.fill(0.0);
        strands.forward();
        strands.back(Complex::real(1.0), Complex::real(1.0));
        let shares = strands.volts.clone();
        for (place, share) in shares.iter().enumerate() {
            strands.volts.fill(0.0);
            strands.volts[place] = 1.0;
            let got = strands.forward().re;
            let want = share * strands.farad[place];
            assert!((got - want).abs() <= 1e-12 * strands.farad[place], "{place}: {got} against {want}");
        }
    }
}
