//! Elimination of a general graph at one place `s` of the Laplace plane, without a subtraction.
//!
//! Taking a node out is the star-mesh step: with links `y_i` to its neighbours and their sum `S` (remote earth counts),
//! it leaves a link `y_i y_j / S` between each two of them. The order, least neighbours first, and the place of every
//! link that comes to be are found once; the figures are worked out for each `s`. Two ladders side by side keep at most
//! a handful of neighbours, so that both are linear in the nodes.

use std::collections::{BTreeMap, BTreeSet};

use crate::complex::Complex;
use crate::woven::graph::{EARTH, Graph};

/// In which order nodes are taken out, and where the figures of each link lie.
#[derive(Debug, Clone)]
pub(crate) struct Order {
    /// Steps, the energizer's poles last.
    steps: Vec<Step>,
    /// Later neighbours of all steps: node and link.
    neighbours: Vec<(usize, usize)>,
    /// Links between each two neighbours of all steps: `(0, 1), (0, 2), .., (1, 2), ..`.
    pairs: Vec<usize>,
    links: usize,
    /// The link of each conductance and capacitance of the graph; remote earth is no link: `None`.
    of: BTreeMap<(usize, usize), usize>,
    /// How many of the last steps are the energizer's poles.
    poles: usize,
}

#[derive(Debug, Clone, Copy)]
struct Step {
    node: usize,
    first: usize,
    count: usize,
    first_pair: usize,
}

fn key(a: usize, b: usize) -> (usize, usize) {
    (a.min(b), a.max(b))
}

impl Order {
    pub(crate) fn new(graph: &Graph) -> Self {
        let mut beside: Vec<BTreeSet<usize>> = vec![BTreeSet::new(); graph.nodes];
        let touched = graph.probes.iter().filter_map(|probe| Some((probe.live, probe.earthed?, 0.0)));
        let feeder = (graph.terminal, graph.pole, 0.0);
        let all = graph.conductances().chain(graph.capacitances()).chain(touched).chain(std::iter::once(feeder));
        for (a, b, _) in all {
            if a != b && a != EARTH && b != EARTH {
                beside[a].insert(b);
                beside[b].insert(a);
            }
        }
        let mut order = Self {
            steps: Vec::with_capacity(graph.nodes),
            neighbours: Vec::new(),
            pairs: Vec::new(),
            links: 0,
            of: BTreeMap::new(),
            poles: 0,
        };
        let is_pole = |node: usize| node == graph.terminal || node == graph.pole;
        let mut queue: BTreeSet<(usize, usize)> =
            (1..graph.nodes).filter(|node| !is_pole(*node)).map(|node| (beside[node].len(), node)).collect();
        while let Some((_, node)) = queue.pop_first() {
            order.take_out(node, &mut beside, |node, before, after| {
                if queue.remove(&(before, node)) {
                    queue.insert((after, node));
                }
            });
        }
        for node in [graph.terminal, graph.pole] {
            if node != EARTH {
                order.take_out(node, &mut beside, |_, _, _| {});
                order.poles += 1;
            }
        }
        order
    }

    fn take_out(&mut self, node: usize, beside: &mut [BTreeSet<usize>], mut recount: impl FnMut(usize, usize, usize)) {
        let around: Vec<usize> = std::mem::take(&mut beside[node]).into_iter().collect();
        let counts: Vec<usize> = around.iter().map(|other| beside[*other].len()).collect();
        let (first, first_pair) = (self.neighbours.len(), self.pairs.len());
        for &other in &around {
            beside[other].remove(&node);
            let link = self.link(node, other);
            self.neighbours.push((other, link));
        }
        for (index, &one) in around.iter().enumerate() {
            for &other in &around[index + 1..] {
                beside[one].insert(other);
                beside[other].insert(one);
                let link = self.link(one, other);
                self.pairs.push(link);
            }
        }
        for (&other, before) in around.iter().zip(counts) {
            recount(other, before, beside[other].len());
        }
        self.steps.push(Step { node, first, count: around.len(), first_pair });
    }

    fn link(&mut self, a: usize, b: usize) -> usize {
        let next = self.links;
        let link = *self.of.entry(key(a, b)).or_insert(next);
        self.links = self.links.max(link + 1);
        link
    }

    /// The link between two nodes; `None` to remote earth.
    pub(crate) fn link_of(&self, a: usize, b: usize) -> Option<usize> {
        self.of.get(&key(a, b)).copied()
    }
}

/// Conductances and capacitances in the order's places.
#[derive(Debug, Clone)]
pub(crate) struct Figures {
    links: Vec<(f64, f64)>,
    earth: Vec<(f64, f64)>,
}

impl Figures {
    pub(crate) fn new(graph: &Graph, order: &Order) -> Self {
        let mut figures = Self { links: vec![(0.0, 0.0); order.links], earth: vec![(0.0, 0.0); graph.nodes] };
        for (a, b, siemens) in graph.conductances() {
            figures.add(order, (a, b), (siemens, 0.0));
        }
        for (a, b, farad) in graph.capacitances() {
            figures.add(order, (a, b), (0.0, farad));
        }
        figures
    }

    fn add(&mut self, order: &Order, (a, b): (usize, usize), (siemens, farad): (f64, f64)) {
        if a == b {
            return;
        }
        let place = match order.link_of(a, b) {
            Some(link) => &mut self.links[link],
            None => &mut self.earth[a.max(b)],
        };
        place.0 += siemens;
        place.1 += farad;
    }
}

/// The factors at one `s`, and memory for the next.
#[derive(Debug, Clone, Default)]
pub(crate) struct Factors {
    /// Links as they were when one of their nodes was taken out; then the impedances between their nodes.
    link: Vec<Complex>,
    earth: Vec<Complex>,
    /// `1 / S` of each step, and `y_i / S` of its neighbours.
    inverse: Vec<Complex>,
    share: Vec<Complex>,
    /// Driving-point impedance of each node.
    point: Vec<Complex>,
}

/// A node that nothing holds at all stays at nothing.
fn inverse(sum: Complex) -> Complex {
    if sum.size() > 0.0 { sum.inverse() } else { Complex::ZERO }
}

impl Factors {
    fn fill(&mut self, figures: &Figures, s: Complex) {
        let at = |(siemens, farad): &(f64, f64)| s * *farad + Complex::real(*siemens);
        self.link.clear();
        self.link.extend(figures.links.iter().map(at));
        self.earth.clear();
        self.earth.extend(figures.earth.iter().map(at));
        self.inverse.clear();
        self.share.clear();
    }

    fn take_out(&mut self, order: &Order, steps: usize) {
        for step in &order.steps[self.inverse.len()..steps] {
            let around = &order.neighbours[step.first..step.first + step.count];
            let to_earth = self.earth[step.node];
            let sum = around.iter().fold(to_earth, |sum, (_, link)| sum + self.link[*link]);
            let over = inverse(sum);
            self.inverse.push(over);
            let mut pair = step.first_pair;
            for (index, &(node, link)) in around.iter().enumerate() {
                let share = self.link[link] * over;
                self.share.push(share);
                self.earth[node] += share * to_earth;
                for &(_, other) in &around[index + 1..] {
                    let made = share * self.link[other];
                    self.link[order.pairs[pair]] += made;
                    pair += 1;
                }
            }
        }
    }

    /// Everything taken out, the energizer's branch between its poles included.
    pub(crate) fn factor(&mut self, graph: &Graph, order: &Order, figures: &Figures, s: Complex) -> Complex {
        self.fill(figures, s);
        let feeder_y = graph.feeder.admittance(s);
        match order.link_of(graph.terminal, graph.pole) {
            Some(link) => self.link[link] += feeder_y,
            None => self.earth[graph.terminal] += feeder_y,
        }
        self.take_out(order, order.steps.len());
        feeder_y
    }

    /// The fence between the energizer's poles, without the energizer; `None` where it takes no current at all.
    pub(crate) fn fence_z(&mut self, graph: &Graph, order: &Order, figures: &Figures, s: Complex) -> Option<Complex> {
        self.fill(figures, s);
        self.take_out(order, order.steps.len() - order.poles);
        let from = self.earth[graph.terminal];
        let y = match order.link_of(graph.terminal, graph.pole) {
            Some(link) => {
                let to = self.earth[graph.pole];
                self.link[link] + from * to * inverse(from + to)
            }
            None => from,
        };
        (y.size() > f64::MIN_POSITIVE).then(|| y.inverse())
    }

    /// Turns currents into voltages, in place.
    pub(crate) fn solve(&self, order: &Order, x: &mut [Complex]) {
        for step in &order.steps {
            let from = x[step.node];
            for at in step.first..step.first + step.count {
                x[order.neighbours[at].0] += self.share[at] * from;
            }
        }
        x[EARTH] = Complex::ZERO;
        for (step, over) in order.steps.iter().zip(&self.inverse).rev() {
            let mut volts = *over * x[step.node];
            for at in step.first..step.first + step.count {
                volts += self.share[at] * x[order.neighbours[at].0];
            }
            x[step.node] = volts;
        }
    }

    /// Impedances of all nodes and of all linked pairs: `Z_ki = Σ_j (y_j / S) Z_ij` over the later neighbours of `k`.
    pub(crate) fn spread(&mut self, graph: &Graph, order: &Order) {
        self.point.clear();
        self.point.resize(graph.nodes, Complex::ZERO);
        let mut to = Vec::new();
        for (step, over) in order.steps.iter().zip(&self.inverse).rev() {
            let around = &order.neighbours[step.first..step.first + step.count];
            let share = &self.share[step.first..step.first + step.count];
            to.clear();
            to.resize(around.len(), Complex::ZERO);
            let mut pair = step.first_pair;
            for i in 0..around.len() {
                to[i] += share[i] * self.point[around[i].0];
                for j in i + 1..around.len() {
                    let between = self.link[order.pairs[pair]];
                    to[i] += share[j] * between;
                    to[j] += share[i] * between;
                    pair += 1;
                }
            }
            let mut own = *over;
            for ((share, to), (_, link)) in share.iter().zip(&to).zip(around) {
                own += *share * *to;
                self.link[*link] = *to;
            }
            self.point[step.node] = own;
        }
    }

    /// The impedance between two nodes, after [`Factors::spread`].
    pub(crate) fn between(&self, order: &Order, from: usize, to: usize) -> Complex {
        match order.link_of(from, to) {
            Some(link) => self.point[from] + self.point[to] - self.link[link] * 2.0,
            None => self.point[from.max(to)],
        }
    }
}
