//! A second way to the same figures: the network as dense matrices, solved by eigenvectors.
//!
//! A [`Spec`] is laid out twice, once through the public interface and once here, by other means:
//! every place is two nodes, ideal links are contracted, `E x' = -K x` is written down in full, the
//! nodes without capacitance are eliminated densely, and what is left is decomposed into modes, so
//! that voltages are exact sums of exponentials.

use electrical::{Branch, Chain, Circuit, Closing, Join, Line, Place, Short, Source, Stretch};
use faer::linalg::solvers::Solve;
use faer::{Mat, Side, c64};

/// Length, ohms, siemens and farads per metre.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Piece {
    pub(crate) length_m: f64,
    pub(crate) r: f64,
    pub(crate) g: f64,
    pub(crate) c: f64,
}

/// One line on one energizer; places are counted in pieces.
#[derive(Debug, Clone)]
pub(crate) struct Spec {
    pub(crate) source: Source,
    pub(crate) earth_ohm: f64,
    pub(crate) lead_ohm: f64,
    pub(crate) pieces: Vec<Piece>,
    /// Series resistance at inner places; infinite is a break.
    pub(crate) joins: Vec<(usize, f64)>,
    /// Resistance of the closing join of a ring; infinite leaves it open there.
    pub(crate) ring: Option<f64>,
    pub(crate) feed: usize,
    pub(crate) shorts: Vec<(usize, f64)>,
    pub(crate) spare: Vec<Piece>,
    /// Branches at places of the line, after the spare.
    pub(crate) twigs: Vec<(usize, Vec<Piece>)>,
}

impl Spec {
    pub(crate) fn even(pieces: usize, piece: Piece) -> Self {
        Self {
            source: Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 },
            earth_ohm: 88.0,
            lead_ohm: 0.0,
            pieces: vec![piece; pieces],
            joins: Vec::new(),
            ring: None,
            feed: 0,
            shorts: Vec::new(),
            spare: Vec::new(),
            twigs: Vec::new(),
        }
    }

    /// Every piece of netting.
    pub(crate) fn all_pieces_mut(&mut self) -> impl Iterator<Item = &mut Piece> {
        let twigs = self.twigs.iter_mut().flat_map(|(_, pieces)| pieces);
        self.pieces.iter_mut().chain(&mut self.spare).chain(twigs)
    }

    /// Through the public interface. Marks: before and after every place, then along the spare.
    pub(crate) fn circuit(&self) -> Circuit {
        let (mut chain, places) = chain(&self.pieces);
        let end = places.len() - 1;
        for &(place, ohm) in &self.joins {
            if ohm.is_infinite() {
                chain.breaks.push(places[place]);
            } else {
                chain.joins.push(Join { at_m: places[place], ohm });
            }
        }
        chain.marks = places.iter().flat_map(|at| [Place::before(*at), Place::after(*at)]).collect();
        chain.shorts =
            self.shorts.iter().map(|(place, ohm)| Short { at: Place::after(places[*place]), ohm: *ohm }).collect();
        let closing = match self.ring {
            None => Closing::Open,
            Some(ohm) if ohm.is_infinite() => {
                chain.breaks.push(0.0);
                Closing::Ring { ohm: 0.0 }
            }
            Some(ohm) => Closing::Ring { ohm },
        };
        let hang = |at: Place, pieces: &[Piece]| {
            let (mut chain, marks) = self::chain(pieces);
            chain.marks = marks.iter().skip(1).map(|at| Place::after(*at)).collect();
            Branch { at, chain }
        };
        let spare = (!self.spare.is_empty()).then(|| hang(Place::before(places[end]), &self.spare));
        let twigs = self.twigs.iter().map(|(place, pieces)| hang(Place::after(places[*place]), pieces));
        let branches = spare.into_iter().chain(twigs).collect();
        let feed = Place::after(places[self.feed]);
        let line = Line { chain, closing, branches, feed, lead_ohm: self.lead_ohm };
        Circuit { source: self.source, earth_ohm: self.earth_ohm, lines: vec![line] }
    }
}

fn chain(pieces: &[Piece]) -> (Chain, Vec<f64>) {
    let mut places = vec![0.0];
    let mut stretches = Vec::new();
    for piece in pieces {
        let from_m = *places.last().unwrap();
        let to_m = from_m + piece.length_m;
        stretches.push(Stretch { from_m, to_m, r_ohm_per_m: piece.r, g_s_per_m: piece.g, c_f_per_m: piece.c });
        places.push(to_m);
    }
    (Chain { stretches, ..Chain::default() }, places)
}

/// The same, as a graph.
pub(crate) struct Graph {
    links: Vec<(usize, usize, f64)>,
    shunts: Vec<f64>,
    farads: Vec<f64>,
    /// The node of each mark, in the order of [`Spec::circuit`].
    marks: Vec<usize>,
    terminal: usize,
    source: Source,
    /// Rs + Re.
    ohm: f64,
}

impl Graph {
    pub(crate) fn new(spec: &Spec) -> Self {
        let places = spec.pieces.len() + 1;
        let hanging: usize = spec.twigs.iter().map(|twig| twig.1.len()).sum();
        let nodes = 1 + 2 * places + spec.spare.len() + hanging;
        let (before, after) = (|k: usize| 1 + 2 * k, |k: usize| 2 + 2 * k);
        let mut graph = Self {
            links: Vec::new(),
            shunts: vec![0.0; nodes],
            farads: vec![0.0; nodes],
            marks: (0..places).flat_map(|k| [before(k), after(k)]).collect(),
            terminal: 0,
            source: spec.source,
            ohm: spec.source.r_ohm + spec.earth_ohm,
        };
        for (k, piece) in spec.pieces.iter().enumerate() {
            graph.piece(after(k), before(k + 1), piece);
        }
        for place in 1..places - 1 {
            let ohm: f64 = spec.joins.iter().filter(|join| join.0 == place).map(|join| join.1).sum();
            graph.links.push((before(place), after(place), ohm));
        }
        // Joins at the two ends of a ring add to its closing; on an open line nothing lies beyond.
        let at_ends: f64 =
            spec.joins.iter().filter(|join| join.0 == 0 || join.0 == places - 1).map(|join| join.1).sum();
        if let Some(ohm) = spec.ring {
            graph.links.push((before(places - 1), after(0), ohm + at_ends));
            graph.links.push((before(0), before(places - 1), 0.0));
            graph.links.push((after(places - 1), after(0), 0.0));
        } else {
            graph.links.push((before(0), after(0), 0.0));
            graph.links.push((before(places - 1), after(places - 1), 0.0));
        }
        let mut next = 1 + 2 * places;
        let spare = std::iter::once((before(places - 1), &spec.spare));
        for (root, pieces) in spare.chain(spec.twigs.iter().map(|(place, pieces)| (after(*place), pieces))) {
            let mut at = root;
            for piece in pieces {
                graph.piece(at, next, piece);
                graph.marks.push(next);
                at = next;
                next += 1;
            }
        }
        for (place, ohm) in &spec.shorts {
            graph.shunts[after(*place)] += 1.0 / ohm;
        }
        graph.links.push((0, after(spec.feed), spec.lead_ohm));
        graph
    }

    fn piece(&mut self, a: usize, b: usize, piece: &Piece) {
        self.links.push((a, b, piece.r * piece.length_m));
        for node in [a, b] {
            self.shunts[node] += 0.5 * piece.g * piece.length_m;
            self.farads[node] += 0.5 * piece.c * piece.length_m;
        }
    }

    /// One shunt more, at a mark.
    pub(crate) fn touch(&mut self, mark: usize, ohm: f64) {
        self.shunts[self.marks[mark]] += 1.0 / ohm;
    }

    pub(crate) fn mark_count(&self) -> usize {
        self.marks.len()
    }

    /// Decomposes into modes; `None` where the matrix is singular (nothing takes any current).
    pub(crate) fn modes(&self) -> Option<Modes> {
        // Contract ideal links and drop what the pulse cannot reach.
        let nodes = self.shunts.len();
        let mut name: Vec<usize> = (0..nodes).collect();
        let mut reached = vec![false; nodes];
        reached[self.terminal] = true;
        for _ in 0..nodes {
            for &(a, b, ohm) in &self.links {
                if ohm <= 0.0 {
                    let least = name[a].min(name[b]);
                    (name[a], name[b]) = (least, least);
                }
                if ohm.is_finite() {
                    let any = reached[a] || reached[b];
                    (reached[a], reached[b]) = (any, any);
                }
            }
        }
        let mut index = vec![None; nodes];
        let mut count = 0;
        for node in 0..nodes {
            if reached[node] && name[node] == node {
                index[node] = Some(count);
                count += 1;
            }
        }
        let at = |node: usize| index[name[node]];
        let takes = |node: usize| reached[node] && self.shunts[node] + self.farads[node] > 0.0;
        if !(0..nodes).any(takes) {
            return None;
        }
        let with_l = self.source.l_henry > 0.0;
        // Unknowns: nodes, the capacitor's voltage, and with an inductance its current.
        let size = count + if with_l { 2 } else { 1 };
        let mut k = Mat::<f64>::zeros(size, size);
        let mut e = vec![0.0; size];
        for node in 0..nodes {
            if let Some(i) = at(node) {
                k[(i, i)] += self.shunts[node];
                e[i] += self.farads[node];
            }
        }
        for &(a, b, ohm) in &self.links {
            if let (Some(i), Some(j), true) = (at(a), at(b), ohm > 0.0 && ohm.is_finite()) {
                k[(i, i)] += 1.0 / ohm;
                k[(j, j)] += 1.0 / ohm;
                k[(i, j)] -= 1.0 / ohm;
                k[(j, i)] -= 1.0 / ohm;
            }
        }
        let t = at(self.terminal).unwrap();
        let u = count;
        e[u] = self.source.c_farad;
        if with_l {
            let i = count + 1;
            e[i] = self.source.l_henry;
            k[(t, i)] = -1.0;
            k[(i, t)] = 1.0;
            k[(u, i)] = 1.0;
            k[(i, u)] = -1.0;
            k[(i, i)] = self.ohm;
        } else {
            let s = 1.0 / self.ohm;
            k[(t, t)] += s;
            k[(u, u)] += s;
            k[(t, u)] -= s;
            k[(u, t)] -= s;
        }
        // Eliminate what has no capacitance: x_a = -K_aa⁻¹ K_ad x_d.
        let dynamic: Vec<usize> = (0..size).filter(|i| e[*i] > 0.0).collect();
        let algebraic: Vec<usize> = (0..size).filter(|i| e[*i] <= 0.0).collect();
        let part = |rows: &[usize], columns: &[usize]| {
            Mat::from_fn(rows.len(), columns.len(), |i, j| k[(rows[i], columns[j])])
        };
        let follow = if algebraic.is_empty() {
            Mat::zeros(0, dynamic.len())
        } else {
            part(&algebraic, &algebraic).partial_piv_lu().solve(part(&algebraic, &dynamic)) * -1.0
        };
        let reduced = part(&dynamic, &dynamic) + part(&dynamic, &algebraic) * &follow;
        let root: Vec<f64> = dynamic.iter().map(|i| e[*i].sqrt()).collect();
        let n = dynamic.len();
        let scaled = Mat::from_fn(n, n, |i, j| reduced[(i, j)] / root[i] / root[j]);
        let start = Mat::from_fn(n, 1, |i, _| if dynamic[i] == u { self.source.v0 * root[i] } else { 0.0 });
        // y = √E x; y(t) = Σ vector_m weight_m e^(rate_m t).
        let (rates, shapes): (Vec<c64>, Mat<c64>) = if with_l {
            let eigen = scaled.eigen().ok()?;
            let weights =
                eigen.U().to_owned().partial_piv_lu().solve(Mat::from_fn(n, 1, |i, _| c64::new(start[(i, 0)], 0.0)));
            // Rounding must not make anything grow.
            let rates = (0..n).map(|m| c64::new((-eigen.S()[m].re).min(0.0), -eigen.S()[m].im)).collect();
            (rates, Mat::from_fn(n, n, |i, m| eigen.U()[(i, m)] * weights[(m, 0)] / root[i]))
        } else {
            let eigen = scaled.self_adjoint_eigen(Side::Lower).ok()?;
            let weights = eigen.U().transpose() * &start;
            let rates = (0..n).map(|m| c64::new(-eigen.S()[m].max(0.0), 0.0)).collect();
            (rates, Mat::from_fn(n, n, |i, m| c64::new(eigen.U()[(i, m)] * weights[(m, 0)] / root[i], 0.0)))
        };
        let follow = Mat::from_fn(algebraic.len(), n, |i, j| c64::new(follow[(i, j)], 0.0)) * &shapes;
        let row = |node: usize| -> Vec<c64> {
            let Some(i) = at(node) else { return vec![c64::new(0.0, 0.0); n] };
            if let Ok(d) = dynamic.binary_search(&i) {
                (0..n).map(|m| shapes[(d, m)]).collect()
            } else {
                let a = algebraic.binary_search(&i).unwrap();
                (0..n).map(|m| follow[(a, m)]).collect()
            }
        };
        Some(Modes { rates, marks: self.marks.iter().map(|node| row(*node)).collect() })
    }
}

/// Voltages at the marks as sums of exponentials.
pub(crate) struct Modes {
    rates: Vec<c64>,
    marks: Vec<Vec<c64>>,
}

impl Modes {
    /// The fastest rate, 1/s. Rounding leaves every rate uncertain by 1e-16 of it or so.
    pub(crate) fn fastest(&self) -> f64 {
        self.rates.iter().map(|rate| rate.norm()).fold(0.0, f64::max)
    }

    pub(crate) fn volts(&self, mark: usize, time_s: f64) -> f64 {
        self.rates.iter().zip(&self.marks[mark]).map(|(rate, shape)| (*shape * (*rate * time_s).exp()).re).sum()
    }

    /// Greatest voltage over time at each of `marks`: a fine search, then golden sections.
    pub(crate) fn peaks(&self, marks: std::ops::Range<usize>) -> Vec<f64> {
        // 200 times a decade, and where it rings 100 times a period.
        let mut times_s: Vec<f64> = (0..=200 * 13).map(|k| 1e-12 * 10_f64.powf(f64::from(k) / 200.0)).collect();
        for rate in self.rates.iter().filter(|rate| rate.im > 1e-6 * rate.re.abs()) {
            let step_s = 2.0 * std::f64::consts::PI / rate.im / 100.0;
            times_s.extend((1..2000).map(|k| f64::from(k) * step_s));
        }
        times_s.push(0.0);
        times_s.sort_by(f64::total_cmp);
        let powers: Vec<Vec<c64>> =
            times_s.iter().map(|t| self.rates.iter().map(|rate| (*rate * *t).exp()).collect()).collect();
        marks
            .map(|mark| {
                let samples: Vec<f64> = powers
                    .iter()
                    .map(|power| power.iter().zip(&self.marks[mark]).map(|(p, shape)| (*p * *shape).re).sum())
                    .collect();
                let best = (0..samples.len()).max_by(|a, b| samples[*a].total_cmp(&samples[*b])).unwrap();
                let (mut low, mut high) = (times_s[best.saturating_sub(1)], times_s[(best + 1).min(times_s.len() - 1)]);
                for _ in 0..40 {
                    let (a, b) = (low + 0.382 * (high - low), low + 0.618 * (high - low));
                    if self.volts(mark, a) > self.volts(mark, b) {
                        high = b;
                    } else {
                        low = a;
                    }
                }
                samples[best].max(self.volts(mark, 0.5 * (low + high)))
            })
            .collect()
    }

    /// `∫ v² dt` at a mark.
    pub(crate) fn square_vs(&self, mark: usize) -> f64 {
        let mut sum = 0.0;
        for (a, x) in self.rates.iter().zip(&self.marks[mark]) {
            for (b, y) in self.rates.iter().zip(&self.marks[mark]) {
                // Re(x e^at) Re(y e^bt) = Re(x y e^(a+b)t + x y* e^(a+b*)t) / 2
                for (rate, weight) in [(*a + *b, *x * *y), (*a + b.conj(), *x * y.conj())] {
                    if rate.re < 0.0 {
                        sum += (weight / (rate * -1.0)).re * 0.5;
                    }
                }
            }
        }
        sum
    }
}
