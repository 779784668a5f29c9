//! Elimination of a general graph at one place `s` of the Laplace plane, without a subtraction.
//!
//! Taking a node out is the star-mesh step: with links `y_i` to its neighbours and their sum `S` (remote earth counts),
//! it leaves a link `y_i y_j / S` between each two of them. The order, fewest neighbours first (minimum degree), and
//! the place of every link that comes to be are found once; the figures are worked out for each `s`. Two ladders side
//! by side keep at most a handful of neighbours, so that both are linear in the nodes.

use std::collections::VecDeque;

use crate::complex::Complex;
use crate::woven::graph::{EARTH, Graph};

/// In so many stretches the nodes are taken out in turn: each waits for the one before it in its own stretch alone, so
/// that a processor has several on the way at once.
const STRETCHES: usize = 4;

/// A node of two ladders side by side seldom has more neighbours on the way.
const USUAL_NEIGHBOURS: usize = 6;

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
    /// The step that takes each node out; none takes out remote earth.
    step_of: Vec<Option<usize>>,
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

/// What is linked to each node that is not yet taken out: node and link. A handful each, so that looking through them is
/// quicker than any map.
struct Mesh {
    beside: Vec<Vec<(usize, usize)>>,
    links: usize,
    /// With how many neighbours each stands in the queue.
    queued: Vec<usize>,
}

impl Mesh {
    /// The link between two nodes, made where there is none; `None` to remote earth.
    fn link(&mut self, a: usize, b: usize) -> Option<usize> {
        if a == b || a == EARTH || b == EARTH {
            return None;
        }
        if let Some((_, link)) = self.beside[a].iter().find(|(node, _)| *node == b) {
            return Some(*link);
        }
        let link = self.links;
        self.links += 1;
        self.beside[a].push((b, link));
        self.beside[b].push((a, link));
        Some(link)
    }
}

/// The nodes by how many neighbours they have. A node stands in the queue of every count that it ever had; where it is
/// no longer right it is passed over.
#[derive(Default)]
struct Queue {
    of_count: Vec<VecDeque<usize>>,
    least: usize,
}

impl Queue {
    fn push(&mut self, node: usize, count: usize) {
        if self.of_count.len() <= count {
            self.of_count.resize_with(count + 1, VecDeque::new);
        }
        self.of_count[count].push_back(node);
        self.least = self.least.min(count);
    }

    /// The node that has waited longest of those with the fewest neighbours.
    fn pop(&mut self, is_right: impl Fn(usize, usize) -> bool) -> Option<usize> {
        while self.least < self.of_count.len() {
            match self.of_count[self.least].pop_front() {
                Some(node) if is_right(node, self.least) => return Some(node),
                Some(_) => {}
                None => self.least += 1,
            }
        }
        None
    }
}

impl Order {
    pub(crate) fn new(graph: &Graph) -> Self {
        let beside = (0..graph.nodes).map(|_| Vec::with_capacity(USUAL_NEIGHBOURS)).collect();
        let mut mesh = Mesh { beside, links: 0, queued: vec![0; graph.nodes] };
        let touched = graph.probes.iter().filter_map(|probe| Some((probe.live, probe.earthed?, 0.0)));
        let feeder = (graph.terminal, graph.pole, 0.0);
        let all = graph.conductances().chain(graph.capacitances()).chain(touched).chain(std::iter::once(feeder));
        for (a, b, _) in all {
            mesh.link(a, b);
        }
        let mut order = Self {
            steps: Vec::with_capacity(graph.nodes),
            neighbours: Vec::with_capacity(4 * graph.nodes),
            pairs: Vec::with_capacity(5 * graph.nodes),
            links: 0,
            step_of: vec![None; graph.nodes],
            poles: 0,
        };
        let is_pole = |node: usize| node == graph.terminal || node == graph.pole;
        let mut queue = Queue::default();
        let stretch = graph.nodes.div_ceil(STRETCHES);
        let in_turn = (0..stretch).flat_map(|at| (0..STRETCHES).map(move |number| number * stretch + at));
        for node in in_turn.filter(|node| (1..graph.nodes).contains(node) && !is_pole(*node)) {
            mesh.queued[node] = mesh.beside[node].len();
            queue.push(node, mesh.queued[node]);
        }
        while let Some(node) =
            queue.pop(|node, count| order.step_of[node].is_none() && mesh.beside[node].len() == count)
        {
            order.take_out(node, &mut mesh, |other, count| {
                if !is_pole(other) {
                    queue.push(other, count);
                }
            });
        }
        for node in [graph.terminal, graph.pole] {
            if node != EARTH {
                order.take_out(node, &mut mesh, |_, _| {});
                order.poles += 1;
            }
        }
        order.links = mesh.links;
        order
    }

    /// Takes a node out; tells the neighbours whose own counts have changed.
    fn take_out(&mut self, node: usize, mesh: &mut Mesh, mut recount: impl FnMut(usize, usize)) {
        let around = std::mem::take(&mut mesh.beside[node]);
        let (first, first_pair) = (self.neighbours.len(), self.pairs.len());
        for (other, _) in &around {
            let list = &mut mesh.beside[*other];
            if let Some(at) = list.iter().position(|(beside, _)| *beside == node) {
                list.swap_remove(at);
            }
        }
        for (index, (one, _)) in around.iter().enumerate() {
            self.pairs.extend(around[index + 1..].iter().filter_map(|(other, _)| mesh.link(*one, *other)));
        }
        for (other, _) in &around {
            let count = mesh.beside[*other].len();
            if count != mesh.queued[*other] {
                mesh.queued[*other] = count;
                recount(*other, count);
            }
        }
        self.step_of[node] = Some(self.steps.len());
        self.steps.push(Step { node, first, count: around.len(), first_pair });
        self.neighbours.extend(around);
    }

    /// The link between two nodes; `None` to remote earth, and where there is none.
    pub(crate) fn link_of(&self, a: usize, b: usize) -> Option<usize> {
        // It stands at the one that is taken out first.
        let (at, other) = if self.step_of[a]? < self.step_of[b]? { (a, b) } else { (b, a) };
        let Step { first, count, .. } = self.steps[self.step_of[at]?];
        self.neighbours[first..first + count].iter().find(|(node, _)| *node == other).map(|(_, link)| *link)
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
    if sum.size_at_most() > 0.0 { sum.inverse() } else { Complex::ZERO }
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop")]
mod tests {
    use super::*;
    use crate::circuit::{Chain, Circuit, Earthed, EarthedStretch, Line, Mesh as Laying, Place};
    use crate::source::Source;

    /// A woven ring of so many posts.
    fn ring(posts: usize) -> Graph {
        let length_m = 3.5 * posts as f64;
        let mut chain = Chain::even(length_m, 2.0, 1e-5, 9e-12);
        chain.marks = (0..=posts).map(|post| Place::after(3.5 * post as f64)).collect();
        let (r_ohm_per_m, c_f_per_m, to_live_f_per_m) = (2.0, 10e-12, 40e-12);
        let beside = EarthedStretch { from_m: 0.0, to_m: length_m, r_ohm_per_m, c_f_per_m, to_live_f_per_m };
        chain.earthed = Earthed { stretches: vec![beside], ..Earthed::default() };
        let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
        let line = Line { feed: Place::after(70.0), ..Line::ring(chain) };
        Graph::new(&Circuit { source, earth_ohm: 88.0, lines: vec![line] }, &Laying::default()).unwrap()
    }

    #[test]
    fn a_ring_of_two_ladders_keeps_a_handful_of_neighbours_however_long() {
        for posts in [40, 140, 1400] {
            let graph = ring(posts);
            let order = Order::new(&graph);
            assert_eq!(order.steps.len(), graph.nodes - 1, "every node but remote earth");
            let a_node = order.neighbours.len() as f64 / graph.nodes as f64;
            assert!(a_node < 3.6, "{posts} posts: {a_node} neighbours a node");
            let most = order.steps.iter().map(|step| step.count).max().unwrap();
            assert!(most <= 8, "{posts} posts: {most}");
        }
    }

    #[test]
    fn impedances_are_those_that_a_current_finds() {
        let graph = ring(40);
        let order = Order::new(&graph);
        let figures = Figures::new(&graph, &order);
        let mut factors = Factors::default();
        factors.factor(&graph, &order, &figures, Complex::new(2e5, 3e5));
        let probe = graph.probes[17];
        let (from, to) = (probe.live, probe.earthed.unwrap());
        let mut volts = vec![Complex::ZERO; graph.nodes];
        (volts[from], volts[to]) = (Complex::real(1.0), Complex::real(-1.0));
        factors.solve(&order, &mut volts);
        let want = volts[from] - volts[to];
        factors.spread(&graph, &order);
        let got = factors.between(&order, from, to);
        assert!((got - want).size() < 1e-12 * want.size(), "{got:?} against {want:?}");
    }
}
