//! A circuit laid out as nodes and links, ready for elimination.
//!
//! Node 0 is the energizer's live terminal. Everything else lies on [`Path`]s: rows of nodes, each
//! linked to the next and the last to the path's head; on a ring the first is linked to the head as
//! well. Paths stand in the order in which they can be eliminated: branches, then the line on both
//! sides of its feed (or once round), then the lead.
//!
//! Links without resistance are no links: their two nodes are one. What lies behind a break is left
//! out, and its places read 0. Ohms, siemens, farads.

use crate::circuit::{Chain, ChainReadings, Circuit, CircuitFault, Closing, Line, LineReadings, Mesh, Place};
use crate::complex::Number;
use crate::row::{Ends, IDEAL_OHM, Row};
use crate::validate;

/// The node of the energizer's live terminal.
pub(crate) const TERMINAL: usize = 0;

/// Least resistance of a short or a touch, ohms: less is an accident of typing.
pub(crate) const LEAST_SHORT_OHM: f64 = 1e-6;

/// A row of nodes that ends on `head`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Path {
    /// First node, the farthest from the head (or, on a ring, its neighbour).
    pub(crate) first: usize,
    /// One past the last node.
    pub(crate) end: usize,
    /// The node that the last one is linked to.
    pub(crate) head: usize,
    /// Conductance from the first node back to the head; 0 off a ring.
    pub(crate) ring_s: f64,
}

/// The energizer's branch from remote earth to its live terminal, stakes included.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Feeder {
    pub(crate) v0: f64,
    pub(crate) source_ohm: f64,
    pub(crate) earth_ohm: f64,
    pub(crate) henry: f64,
    pub(crate) farad: f64,
}

impl Feeder {
    pub(crate) fn ohm(&self) -> f64 {
        self.source_ohm + self.earth_ohm
    }

    pub(crate) fn stored_j(&self) -> f64 {
        0.5 * self.farad * self.v0 * self.v0
    }

    /// Admittance at `s`, the capacitor included.
    pub(crate) fn admittance<N: Number>(&self, s: N) -> N {
        (s * self.henry + N::of_real(self.ohm()) + (s * self.farad).inverse()).inverse()
    }

    /// Conductance with the capacitor held at its voltage; an ideal source has a picoohm.
    pub(crate) fn steady_s(&self) -> f64 {
        1.0 / self.ohm().max(IDEAL_OHM)
    }
}

/// The circuit as nodes and links; reused from one circuit to the next.
#[derive(Debug, Clone, Default)]
pub(crate) struct Network {
    /// Leakage at each node.
    pub(crate) leak_s: Vec<f64>,
    /// Leakage and shorts at each node.
    pub(crate) shunt_s: Vec<f64>,
    /// Capacitance to earth at each node.
    pub(crate) capacitance_f: Vec<f64>,
    /// Conductance from each node to the next on its path; unused at the terminal.
    pub(crate) ahead_s: Vec<f64>,
    /// In the order of elimination.
    pub(crate) paths: Vec<Path>,
    /// Node and conductance of every short that the pulse reaches.
    pub(crate) shorts: Vec<(usize, f64)>,
    /// The node of every place that is read, `None` behind a break. Order: for each line the feed,
    /// the chain's marks and shorts, then each branch's marks and shorts.
    pub(crate) probes: Vec<Option<usize>>,
    /// The energizer.
    pub(crate) feeder: Feeder,
    main: Row,
    twigs: Vec<Row>,
}

impl Network {
    /// Checks the circuit and lays it out.
    pub(crate) fn lay_out(&mut self, circuit: &Circuit, mesh: &Mesh) -> Result<(), CircuitFault> {
        validate::circuit(circuit)?;
        self.feeder = Feeder {
            v0: circuit.source.v0,
            source_ohm: circuit.source.r_ohm,
            earth_ohm: circuit.earth_ohm,
            henry: circuit.source.l_henry,
            farad: circuit.source.c_farad,
        };
        self.leak_s.clear();
        self.shunt_s.clear();
        self.capacitance_f.clear();
        self.ahead_s.clear();
        self.paths.clear();
        self.shorts.clear();
        self.probes.clear();
        self.add_node(0.0, 0.0, 0.0);
        for line in &circuit.lines {
            self.add_line(line, mesh);
        }
        self.shunt_s.clear();
        self.shunt_s.extend_from_slice(&self.leak_s);
        for &(node, conductance_s) in &self.shorts {
            self.shunt_s[node] += conductance_s;
        }
        Ok(())
    }

    pub(crate) fn nodes(&self) -> usize {
        self.leak_s.len()
    }

    fn add_node(&mut self, leak_s: f64, capacitance_f: f64, ahead_s: f64) -> usize {
        self.leak_s.push(leak_s);
        self.capacitance_f.push(capacitance_f);
        self.ahead_s.push(ahead_s);
        self.leak_s.len() - 1
    }

    fn add_line(&mut self, line: &Line, mesh: &Mesh) {
        let mut main = std::mem::take(&mut self.main);
        let mut twigs = std::mem::take(&mut self.twigs);
        let ends = match line.closing {
            Closing::Open => Ends::Open,
            Closing::Ring { ohm } => Ends::Ring { ohm },
        };
        let named = std::iter::once(line.feed).chain(line.branches.iter().map(|branch| branch.at));
        main.lay_out(&line.chain, ends, named, mesh);
        twigs.resize_with(line.branches.len(), Row::default);
        for (twig, branch) in twigs.iter_mut().zip(&line.branches) {
            twig.lay_out(&branch.chain, Ends::Twig, std::iter::empty(), mesh);
        }

        let feed = main.group_at(line.feed);
        let feed_node = if line.lead_ohm < IDEAL_OHM {
            main.node[feed] = Some(TERMINAL);
            self.leak_s[TERMINAL] += main.leak_s[feed];
            self.capacitance_f[TERMINAL] += main.capacitance_f[feed];
            TERMINAL
        } else {
            let node = self.add_node(main.leak_s[feed], main.capacitance_f[feed], 1.0 / line.lead_ohm);
            main.node[feed] = Some(node);
            node
        };
        let first_path = self.paths.len();
        self.add_main(&mut main, feed, feed_node);
        let main_paths = self.paths.len() - first_path;
        for (twig, branch) in twigs.iter_mut().zip(&line.branches) {
            let head = main.node[main.group_at(branch.at)];
            self.add_twig(twig, head);
        }
        // Branches are eliminated before the line they hang on.
        self.paths[first_path..].rotate_left(main_paths);
        if feed_node != TERMINAL {
            self.paths.push(Path { first: feed_node, end: feed_node + 1, head: TERMINAL, ring_s: 0.0 });
        }

        self.probes.push(Some(feed_node));
        self.add_probes(&line.chain, &main);
        for (twig, branch) in twigs.iter().zip(&line.branches) {
            self.add_probes(&branch.chain, twig);
        }
        self.main = main;
        self.twigs = twigs;
    }

    /// The line on both sides of its feed, or once round a ring.
    fn add_main(&mut self, main: &mut Row, feed: usize, feed_node: usize) {
        let groups = main.groups();
        if groups == 1 {
            return;
        }
        let after = |group: usize| (group + 1) % groups;
        let before = |group: usize| (group + groups - 1) % groups;
        let mut right = feed;
        while main.ahead_ohm[right].is_finite() && after(right) != feed {
            right = after(right);
        }
        if after(right) == feed && main.ahead_ohm[right].is_finite() {
            let ring_s = 1.0 / main.ahead_ohm[feed];
            self.add_path(main, after(feed), right, after, |row, group| row.ahead_ohm[group], feed_node, ring_s);
            return;
        }
        let mut left = feed;
        while main.ahead_ohm[before(left)].is_finite() {
            left = before(left);
        }
        if left != feed {
            self.add_path(main, left, before(feed), after, |row, group| row.ahead_ohm[group], feed_node, 0.0);
        }
        if right != feed {
            self.add_path(
                main,
                right,
                after(feed),
                before,
                move |row, group| row.ahead_ohm[before(group)],
                feed_node,
                0.0,
            );
        }
    }

    /// A branch on `head`; nothing where the pulse does not come.
    fn add_twig(&mut self, twig: &mut Row, head: Option<usize>) {
        let Some(head) = head else { return };
        if twig.root_ohm.is_infinite() {
            return;
        }
        let mut farthest = 0;
        while farthest + 1 < twig.groups() && twig.ahead_ohm[farthest].is_finite() {
            farthest += 1;
        }
        let mut nearest = 0;
        if twig.root_ohm < IDEAL_OHM {
            twig.node[0] = Some(head);
            self.leak_s[head] += twig.leak_s[0];
            self.capacitance_f[head] += twig.capacitance_f[0];
            nearest = 1;
        }
        if farthest >= nearest {
            let toward_root = |group: usize| group.wrapping_sub(1);
            let link = |row: &Row, group: usize| {
                if group == 0 { row.root_ohm } else { row.ahead_ohm[group - 1] }
            };
            self.add_path(twig, farthest, nearest, toward_root, link, head, 0.0);
        }
    }

    /// The groups `from ..= to` of a row, in the direction of `step`, as a path on `head`.
    #[allow(clippy::too_many_arguments, reason = "one call each for the four kinds of path")]
    fn add_path(
        &mut self,
        row: &mut Row,
        from: usize,
        to: usize,
        step: impl Fn(usize) -> usize,
        link_ohm: impl Fn(&Row, usize) -> f64,
        head: usize,
        ring_s: f64,
    ) {
        let first = self.nodes();
        let mut group = from;
        loop {
            let node = self.add_node(row.leak_s[group], row.capacitance_f[group], 1.0 / link_ohm(row, group));
            row.node[group] = Some(node);
            if group == to {
                break;
            }
            group = step(group);
        }
        self.paths.push(Path { first, end: self.nodes(), head, ring_s });
    }

    fn add_probes(&mut self, chain: &Chain, row: &Row) {
        let node_at = |place: Place| row.node[row.group_at(place)];
        self.probes.extend(chain.marks.iter().map(|mark| node_at(*mark)));
        for short in &chain.shorts {
            let node = node_at(short.at);
            self.probes.push(node);
            if let Some(node) = node {
                self.shorts.push((node, 1.0 / short.ohm.max(LEAST_SHORT_OHM)));
            }
        }
    }
}

/// Deals figures in the order of [`Network::probes`] out to the circuit's places, reusing `out`.
pub(crate) fn deal<T: Default + Clone>(
    circuit: &Circuit,
    mut flat: impl Iterator<Item = T>,
    out: &mut Vec<LineReadings<T>>,
) {
    fn fill<T>(chain: &Chain, flat: &mut impl Iterator<Item = T>, out: &mut ChainReadings<T>) {
        out.marks.clear();
        out.marks.extend(flat.take(chain.marks.len()));
        out.shorts.clear();
        out.shorts.extend(flat.take(chain.shorts.len()));
    }
    out.resize_with(circuit.lines.len(), LineReadings::default);
    for (line, out) in circuit.lines.iter().zip(out) {
        out.feed = flat.next().unwrap_or_default();
        fill(&line.chain, &mut flat.by_ref(), &mut out.chain);
        out.branches.resize_with(line.branches.len(), ChainReadings::default);
        for (branch, out) in line.branches.iter().zip(&mut out.branches) {
            fill(&branch.chain, &mut flat.by_ref(), out);
        }
    }
}
