//! The elimination of strands and knots at one place `s`, and its two sweeps: currents to the terminal, voltages back.
//!
//! With injected currents `i` the eliminated system is `x_k = (i_k + carried) / S_k` on the way to the terminal, of which
//! `link x_k` is carried on and `link_back x_k` to the knot behind; on the way back
//! `v_k = x_k + (link / S_k) v_next + (link_back / S_k) v_behind`.

use std::ops::Range;

use super::Strands;
use crate::complex::{Complex, LANES, Lanes, Number, Quad};

/// What the elimination of a node, or of a row of four, leaves behind.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Factors<N, S> {
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

impl Strands {
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
