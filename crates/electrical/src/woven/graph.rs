//! A circuit as a general graph: nodes, wires, capacitances to remote earth and between nodes.
//!
//! Node 0 is remote earth. The energizer's branch lies between its earth pole and its live terminal. Links without
//! resistance make their two nodes one.

use crate::circuit::{
    Chain, Circuit, CircuitFault, Closing, EarthedStretch, Line, Mesh, PLACE_TOLERANCE_M, Place, Side,
};
use crate::network::{Feeder, LEAST_SHORT_OHM};
use crate::row::{IDEAL_OHM, find_places, sections};
use crate::validate;

/// The node of remote earth.
pub(crate) const EARTH: usize = 0;
const TERMINAL: usize = 1;
const POLE: usize = 2;

/// A place that is read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Probe {
    pub(crate) live: usize,
    /// The earthed line beside it.
    pub(crate) earthed: Option<usize>,
}

/// The circuit as a graph.
#[derive(Debug, Clone, Default)]
pub(crate) struct Graph {
    /// Nodes, remote earth among them.
    pub(crate) nodes: usize,
    /// The energizer's two poles.
    pub(crate) terminal: usize,
    pub(crate) pole: usize,
    /// Leakage to remote earth at each node.
    pub(crate) leak_s: Vec<f64>,
    /// Capacitance to remote earth at each node.
    pub(crate) farad: Vec<f64>,
    /// Conductances between nodes; the earth stakes' is not among them.
    pub(crate) wires: Vec<(usize, usize, f64)>,
    /// Capacitances between nodes.
    pub(crate) coupling: Vec<(usize, usize, f64)>,
    /// Conductances of shorts, and of a touch, between two nodes.
    pub(crate) shorts: Vec<(usize, usize, f64)>,
    /// The earth stakes' conductance; 0 where they have no resistance and the pole is remote earth.
    pub(crate) stakes_s: f64,
    /// In the order of [`crate::network::Network`]'s.
    pub(crate) probes: Vec<Probe>,
    pub(crate) feeder: Feeder,
}

/// A named place of a chain and the nodes on its two sides.
#[derive(Debug, Clone, Copy)]
struct Site {
    at_m: f64,
    live: [usize; 2],
    earthed: [Option<usize>; 2],
}

/// A chain laid out, and what stands in series at its ends.
struct Laid {
    sites: Vec<Site>,
    start_ohm: f64,
    end_ohm: f64,
    earthed_start_ohm: f64,
    earthed_end_ohm: f64,
}

impl Laid {
    fn site(&self, at_m: f64) -> &Site {
        // A chain has a site at its start at least. Of the two around the place the nearer one, the first where equal.
        let after = self.sites.partition_point(|site| site.at_m < at_m).clamp(1, self.sites.len().max(2) - 1);
        let around = &self.sites[after - 1..self.sites.len().min(after + 1)];
        let apart = |site: &&Site| (site.at_m - at_m).abs();
        around.iter().min_by(|a, b| apart(a).total_cmp(&apart(b))).unwrap_or(&self.sites[0])
    }

    fn probe(&self, place: Place) -> Probe {
        let site = self.site(place.at_m);
        let side = match place.side {
            Side::Before => 0,
            Side::After => 1,
        };
        Probe { live: site.live[side], earthed: site.earthed[side] }
    }
}

/// The graph in the making: links without resistance are still links.
struct Builder {
    links: Vec<(usize, usize, f64)>,
    leaks: Vec<(usize, f64)>,
    farads: Vec<(usize, f64)>,
    coupling: Vec<(usize, usize, f64)>,
    shorts: Vec<(usize, f64)>,
    probes: Vec<Probe>,
    nodes: usize,
}

impl Graph {
    pub(crate) fn new(circuit: &Circuit, mesh: &Mesh) -> Result<Self, CircuitFault> {
        validate::circuit(circuit)?;
        let mut builder = Builder {
            links: Vec::new(),
            leaks: Vec::new(),
            farads: Vec::new(),
            coupling: Vec::new(),
            shorts: Vec::new(),
            probes: Vec::new(),
            nodes: POLE + 1,
        };
        for line in &circuit.lines {
            builder.line(line, mesh);
        }
        let feeder = Feeder {
            v0: circuit.source.v0,
            source_ohm: circuit.source.r_ohm,
            // The stakes are a wire of the graph here.
            earth_ohm: 0.0,
            henry: circuit.source.l_henry,
            farad: circuit.source.c_farad,
        };
        Ok(builder.gather(feeder, circuit.earth_ohm))
    }

    /// All wires, shorts and stakes: ends and siemens; remote earth is a node like any.
    pub(crate) fn conductances(&self) -> impl Iterator<Item = (usize, usize, f64)> + '_ {
        let leaks = self.leak_s.iter().enumerate().map(|(node, s)| (node, EARTH, *s));
        let stakes = (self.pole, EARTH, self.stakes_s);
        self.wires.iter().chain(&self.shorts).copied().chain(leaks).chain(std::iter::once(stakes))
    }

    /// All capacitances: ends and farads.
    pub(crate) fn capacitances(&self) -> impl Iterator<Item = (usize, usize, f64)> + '_ {
        let own = self.farad.iter().enumerate().map(|(node, farad)| (node, EARTH, *farad));
        self.coupling.iter().copied().chain(own)
    }
}

impl Builder {
    fn node(&mut self) -> usize {
        self.nodes += 1;
        self.nodes - 1
    }

    /// A link of so many ohms; an infinite one is none.
    fn link(&mut self, from: usize, to: usize, ohm: f64) {
        if ohm.is_finite() {
            self.links.push((from, to, ohm));
        }
    }

    /// A node beyond `ohm`; the same one where that is nothing.
    fn beyond(&mut self, from: usize, ohm: f64) -> usize {
        if ohm > 0.0 {
            let to = self.node();
            self.link(from, to, ohm);
            to
        } else {
            from
        }
    }

    fn line(&mut self, line: &Line, mesh: &Mesh) {
        let named: Vec<f64> =
            std::iter::once(line.feed.at_m).chain(line.branches.iter().map(|branch| branch.at.at_m)).collect();
        let mut main = self.chain(&line.chain, &named, mesh);
        if let Closing::Ring { ohm } = line.closing {
            let last = main.sites.len() - 1;
            let (first, end) = (main.sites[0], main.sites[last]);
            self.link(end.live[0], first.live[1], ohm + main.start_ohm + main.end_ohm);
            let closing_ohm = line.chain.earthed.closing_ohm + main.earthed_start_ohm + main.earthed_end_ohm;
            if let (Some(from), Some(to)) = (end.earthed[0], first.earthed[1]) {
                self.link(from, to, closing_ohm);
            }
            if last > 0 {
                (main.sites[0].live[0], main.sites[last].live[1]) = (end.live[0], first.live[1]);
                (main.sites[0].earthed[0], main.sites[last].earthed[1]) = (end.earthed[0], first.earthed[1]);
            }
        }
        let feed = main.probe(line.feed);
        self.link(TERMINAL, feed.live, line.lead_ohm);
        if let Some(earthed) = feed.earthed {
            self.link(POLE, earthed, 0.0);
        }
        self.probes.push(feed);
        self.read(&line.chain, &main);
        for branch in &line.branches {
            let twig = self.chain(&branch.chain, &[], mesh);
            let (root, first) = (main.probe(branch.at), twig.sites[0]);
            self.link(root.live, first.live[1], twig.start_ohm);
            if let (Some(from), Some(to)) = (root.earthed, first.earthed[1]) {
                self.link(from, to, twig.earthed_start_ohm);
            }
            self.read(&branch.chain, &twig);
        }
    }

    fn read(&mut self, chain: &Chain, laid: &Laid) {
        self.probes.extend(chain.marks.iter().map(|mark| laid.probe(*mark)));
        for short in &chain.shorts {
            let probe = laid.probe(short.at);
            self.probes.push(probe);
            self.shorts.push((probe.live, 1.0 / short.ohm.max(LEAST_SHORT_OHM)));
        }
    }

    /// Both ladders of one chain, node by node.
    fn chain(&mut self, chain: &Chain, named: &[f64], mesh: &Mesh) -> Laid {
        let mut places_m = Vec::new();
        let beside = chain.earthed.stretches.iter().flat_map(|stretch| [stretch.from_m, stretch.to_m]);
        let beside = beside.chain(chain.earthed.joins.iter().map(|join| join.at_m));
        find_places(chain, beside.chain(named.iter().copied()), &mut places_m);
        let last = places_m.len() - 1;
        let index_of = |at_m: f64| places_m.partition_point(|place| *place < at_m - PLACE_TOLERANCE_M).min(last);
        let mut series_ohm = vec![0.0; places_m.len()];
        let mut earthed_ohm = vec![0.0; places_m.len()];
        for join in &chain.joins {
            series_ohm[index_of(join.at_m)] += join.ohm;
        }
        for at_m in &chain.breaks {
            series_ohm[index_of(*at_m)] = f64::INFINITY;
        }
        for join in &chain.earthed.joins {
            earthed_ohm[index_of(join.at_m)] += join.ohm;
        }
        let end_of = |list: &mut [f64]| if last > 0 { std::mem::take(&mut list[last]) } else { 0.0 };
        let laid_ends = (
            std::mem::take(&mut series_ohm[0]),
            end_of(&mut series_ohm),
            std::mem::take(&mut earthed_ohm[0]),
            end_of(&mut earthed_ohm),
        );

        let mut sites = Vec::with_capacity(places_m.len());
        let mut live = self.node();
        let mut earthed: Option<usize> = None;
        for (index, &at_m) in places_m.iter().enumerate() {
            let next_m = places_m.get(index + 1).copied();
            let ahead = next_m.and_then(|next_m| earthed_at(chain, 0.5 * (at_m + next_m)));
            let before = (live, earthed);
            live = self.beyond(live, series_ohm[index]);
            earthed = match (earthed, ahead) {
                (Some(node), Some(_)) => Some(self.beyond(node, earthed_ohm[index])),
                (None, Some(_)) => Some(self.node()),
                (_, None) if next_m.is_some() => None,
                (node, None) => node,
            };
            // Before the chain's start there is nothing but the start.
            let earthed_before = if index == 0 { earthed } else { before.1 };
            sites.push(Site { at_m, live: [before.0, live], earthed: [earthed_before, earthed] });
            let Some(next_m) = next_m else { break };
            (live, earthed) = self.span(chain, (at_m, next_m), ahead, (live, earthed), mesh);
        }
        Laid {
            sites,
            start_ohm: laid_ends.0,
            end_ohm: laid_ends.1,
            earthed_start_ohm: laid_ends.2,
            earthed_end_ohm: laid_ends.3,
        }
    }

    /// The netting between two sites, half of each piece's shunts at either of its ends.
    fn span(
        &mut self,
        chain: &Chain,
        (from_m, to_m): (f64, f64),
        beside: Option<EarthedStretch>,
        from: (usize, Option<usize>),
        mesh: &Mesh,
    ) -> (usize, Option<usize>) {
        let middle_m = 0.5 * (from_m + to_m);
        let index = chain.stretches.partition_point(|stretch| stretch.to_m < middle_m);
        let netting = chain.stretches[index.min(chain.stretches.len() - 1)];
        let length_m = to_m - from_m;
        let pieces = sections(&netting, length_m, mesh);
        let piece_m = length_m / pieces as f64;
        let (mut live, mut earthed) = from;
        for _ in 0..pieces {
            let next = self.node();
            self.link(live, next, netting.r_ohm_per_m * piece_m);
            for end in [live, next] {
                self.leaks.push((end, 0.5 * netting.g_s_per_m * piece_m));
                self.farads.push((end, 0.5 * netting.c_f_per_m * piece_m));
            }
            if let (Some(node), Some(beside)) = (earthed, beside) {
                let next_earthed = self.node();
                self.link(node, next_earthed, beside.r_ohm_per_m * piece_m);
                for (end, other) in [(node, live), (next_earthed, next)] {
                    self.farads.push((end, 0.5 * beside.c_f_per_m * piece_m));
                    self.coupling.push((other, end, 0.5 * beside.to_live_f_per_m * piece_m));
                }
                earthed = Some(next_earthed);
            }
            live = next;
        }
        (live, earthed)
    }

    /// Makes one node of all that nothing keeps apart, and numbers them anew.
    fn gather(self, feeder: Feeder, earth_ohm: f64) -> Graph {
        let mut parent: Vec<usize> = (0..self.nodes).collect();
        fn root(parent: &mut [usize], mut node: usize) -> usize {
            while parent[node] != node {
                parent[node] = parent[parent[node]];
                node = parent[node];
            }
            node
        }
        let ideal_earth = earth_ohm < IDEAL_OHM;
        let ideal = self.links.iter().filter(|link| link.2 < IDEAL_OHM).map(|link| (link.0, link.1));
        for (a, b) in ideal.chain(ideal_earth.then_some((EARTH, POLE))) {
            let (a, b) = (root(&mut parent, a), root(&mut parent, b));
            // The smaller number stays: remote earth stays 0.
            parent[a.max(b)] = a.min(b);
        }
        let mut nodes = 0;
        let mut of: Vec<usize> = Vec::with_capacity(self.nodes);
        for node in 0..self.nodes {
            // A root has the smallest number of its own, so that it is numbered before the rest of them.
            let first = root(&mut parent, node);
            of.push(if first == node { nodes } else { of[first] });
            nodes += usize::from(first == node);
        }
        let mut graph = Graph {
            nodes,
            terminal: of[TERMINAL],
            pole: of[POLE],
            leak_s: vec![0.0; nodes],
            farad: vec![0.0; nodes],
            stakes_s: if ideal_earth { 0.0 } else { 1.0 / earth_ohm },
            feeder,
            ..Graph::default()
        };
        for (node, leak_s) in self.leaks {
            graph.leak_s[of[node]] += leak_s;
        }
        for (node, farad) in self.farads {
            graph.farad[of[node]] += farad;
        }
        let apart = |a: usize, b: usize| (of[a] != of[b]).then_some((of[a], of[b]));
        let wires = self.links.iter().filter(|link| link.2 >= IDEAL_OHM);
        graph.wires = wires.filter_map(|&(a, b, ohm)| apart(a, b).map(|(a, b)| (a, b, 1.0 / ohm))).collect();
        let coupling = self.coupling.iter().filter(|link| link.2 > 0.0);
        graph.coupling = coupling.filter_map(|&(a, b, farad)| apart(a, b).map(|(a, b)| (a, b, farad))).collect();
        graph.shorts = self.shorts.iter().map(|&(node, s)| (of[node], EARTH, s)).collect();
        let probe = |probe: &Probe| Probe { live: of[probe.live], earthed: probe.earthed.map(|node| of[node]) };
        graph.probes = self.probes.iter().map(probe).collect();
        graph
    }
}

fn earthed_at(chain: &Chain, at_m: f64) -> Option<EarthedStretch> {
    chain.earthed.stretches.iter().find(|stretch| stretch.from_m < at_m && at_m < stretch.to_m).copied()
}
