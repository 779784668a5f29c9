//! A run's circuit as a netlist for circuit simulators in the SPICE language: to be run as it is, and read by an
//! engineer.
//!
//! Each section of netting is a pi of at most [`SECTION_M`]: its resistance in series, half of its leakage and
//! capacitance to earth at either end. Node 0 is remote earth, `pole` the energizer's earth pole, `live` its live
//! terminal. Every post has a `.meas` of its own. Volts, ohms, farads, henries, seconds.

use std::collections::BTreeMap;
use std::fmt::Write;

use electrical::{Chain, Circuit, Closing, Line, Place, Side};
use workup::power::Wiring;

/// The longest section of netting, metres.
const SECTION_M: f64 = 0.5;
/// What stands for no resistance, ohms.
const IDEAL_OHM: f64 = 1e-6;
/// Places nearer than this are one, metres.
const SAME_M: f64 = 1e-6;
/// The run lasts at least so long, at most so long, and so many times as long as the latest peak takes, seconds.
const LEAST_S: f64 = 3e-4;
const MOST_S: f64 = 0.05;
const PAST_PEAK: f64 = 1.5;
/// Steps in a run, at least.
const STEPS: f64 = 2_000.0;

/// Writes the netlist of a run.
pub fn write(wiring: &Wiring, title: &str) -> String {
    let circuit = &wiring.circuit;
    let mut deck = Deck::default();
    // A title of two lines would be a command.
    let title = title.split_whitespace().collect::<Vec<_>>().join(" ");
    let _ =
        writeln!(deck.text, "* {title}: one pulse of the fence, run {}", wiring.run.replace(char::is_whitespace, " "));
    deck.note("node 0 is remote earth, pole the energizer's earth pole, live its live terminal");
    deck.note("every post has a measure: its greatest voltage to remote earth; no reading is to be credited above");
    deck.note(&format!("the no-load figure of {} V, whatever rings", circuit.source.v0));
    deck.note("");
    deck.note("the energizer: a capacitor let go at t = 0, and its earth");
    deck.element("csource", "cap", "pole", &format!("{:e} ic={:e}", circuit.source.c_farad, circuit.source.v0));
    if circuit.source.l_henry > 0.0 {
        deck.resistor("rsource", "cap", "coil", circuit.source.r_ohm);
        deck.element("lsource", "coil", "live", &format!("{:e} ic=0", circuit.source.l_henry));
    } else {
        deck.resistor("rsource", "cap", "live", circuit.source.r_ohm);
    }
    deck.resistor("rearth", "pole", "0", circuit.earth_ohm);
    for (index, line) in circuit.lines.iter().enumerate() {
        deck.line(index, line);
    }
    deck.shunts();
    deck.note("");
    let stop_s = stop_s(circuit);
    let _ = writeln!(deck.text, ".options method=gear reltol=1e-5 trtol=1 abstol=1e-12 vntol=1e-6 itl4=50");
    let _ = writeln!(deck.text, ".tran 1n {stop_s:e} 0 {:e} uic", stop_s / STEPS);
    deck.note("");
    deck.measures(wiring);
    deck.text.push_str(".end\n");
    deck.text
}

/// How long the run lasts: past every peak.
fn stop_s(circuit: &Circuit) -> f64 {
    let accuracy = electrical::Accuracy { energy: false, ..electrical::Accuracy::default() };
    let latest_s = electrical::pulse(circuit, &accuracy).map_or(0.0, |pulse| {
        pulse.lines.iter().flat_map(|line| &line.chain.marks).map(|peak| peak.at_s).fold(0.0, f64::max)
    });
    (PAST_PEAK * latest_s).clamp(LEAST_S, MOST_S)
}

#[derive(Default)]
struct Deck {
    text: String,
    count: usize,
    /// Leakage and capacitance to remote earth at each node.
    shunts: BTreeMap<String, (f64, f64)>,
}

/// The places of a chain that are nodes, and the nodes' names.
struct Places {
    name: String,
    at_m: Vec<f64>,
    /// What stands between the two sides of a place: a resistance, or nothing at all.
    between: Vec<Option<f64>>,
    ring: bool,
}

impl Places {
    fn of(name: &str, chain: &Chain, also_m: impl Iterator<Item = f64>, ring: bool) -> Self {
        let mut at_m: Vec<f64> = chain.stretches.iter().flat_map(|stretch| [stretch.from_m, stretch.to_m]).collect();
        at_m.extend(chain.joins.iter().map(|join| join.at_m));
        at_m.extend(&chain.breaks);
        at_m.extend(chain.shorts.iter().map(|short| short.at.at_m));
        at_m.extend(chain.marks.iter().map(|mark| mark.at_m));
        at_m.extend(chain.earthed.stretches.iter().flat_map(|stretch| [stretch.from_m, stretch.to_m]));
        at_m.extend(chain.earthed.joins.iter().map(|join| join.at_m));
        at_m.extend(also_m);
        at_m.sort_by(f64::total_cmp);
        at_m.dedup_by(|next, kept| *next - *kept < SAME_M);
        let near = |one: f64, other: f64| (one - other).abs() < SAME_M;
        let between = at_m
            .iter()
            .map(|&place_m| {
                if chain.breaks.iter().any(|&at_m| near(at_m, place_m)) {
                    return Some(f64::INFINITY);
                }
                let ohm: f64 = chain.joins.iter().filter(|join| near(join.at_m, place_m)).map(|join| join.ohm).sum();
                (ohm > 0.0).then_some(ohm)
            })
            .collect();
        Self { name: name.to_owned(), at_m, between, ring }
    }

    fn index(&self, at_m: f64) -> usize {
        let near = |&index: &usize| (self.at_m[index] - at_m).abs();
        (0..self.at_m.len()).min_by(|a, b| near(a).total_cmp(&near(b))).unwrap_or(0)
    }

    fn side(&self, index: usize, side: Side) -> String {
        let last = self.at_m.len() - 1;
        // Round a ring the side beyond an end is the other end.
        let (index, side) = match (index, side) {
            (0, Side::Before) if self.ring => (last, Side::Before),
            (index, Side::After) if index == last && self.ring => (0, Side::After),
            other => other,
        };
        match (self.between[index], side) {
            (Some(_), Side::After) => format!("{}{index}b", self.name),
            _ => format!("{}{index}", self.name),
        }
    }

    fn node(&self, place: Place) -> String {
        self.side(self.index(place.at_m), place.side)
    }
}

/// The places of earthed lines, and between which of them there are any.
struct EarthedPlaces {
    places: Places,
    has: Vec<bool>,
}

impl EarthedPlaces {
    /// The node at a place; `None` where no earthed line comes there.
    fn node(&self, at: Place) -> Option<String> {
        let index = self.places.index(at.at_m);
        let after = self.has.get(index).copied().unwrap_or(false);
        let before = index > 0 && self.has[index - 1];
        let wants_before = at.side == Side::Before;
        if !(before || after) {
            return None;
        }
        let side = if before && (wants_before || !after) { Side::Before } else { Side::After };
        Some(self.places.side(index, side))
    }
}

/// The places of a branch.
fn branch_places(line: usize, index: usize, branch: &electrical::Branch) -> Places {
    Places::of(&format!("l{line}b{index}p"), &branch.chain, std::iter::empty(), false)
}

impl Deck {
    fn note(&mut self, note: &str) {
        let _ = writeln!(self.text, "*{}{note}", if note.is_empty() { "" } else { " " });
    }

    fn element(&mut self, name: &str, from: &str, to: &str, value: &str) {
        let _ = writeln!(self.text, "{name} {from} {to} {value}");
    }

    fn resistor(&mut self, name: &str, from: &str, to: &str, ohm: f64) {
        self.element(name, from, to, &format!("{:e}", ohm.max(IDEAL_OHM)));
    }

    /// A resistor with a number for its name.
    fn series(&mut self, from: &str, to: &str, ohm: f64) {
        self.count += 1;
        self.resistor(&format!("r{}", self.count), from, to, ohm);
    }

    fn shunt(&mut self, node: &str, siemens: f64, farad: f64) {
        let here = self.shunts.entry(node.to_owned()).or_default();
        *here = (here.0 + siemens, here.1 + farad);
    }

    fn line(&mut self, index: usize, line: &Line) {
        let ring_ohm = match line.closing {
            Closing::Ring { ohm } => Some(ohm),
            Closing::Open => None,
        };
        let also = line.branches.iter().map(|branch| branch.at.at_m).chain([line.feed.at_m]);
        let places = Places::of(&format!("l{index}p"), &line.chain, also, ring_ohm.is_some());
        self.note("");
        self.note(&format!("line {}: {:.2} m of netting", index + 1, line.chain.length_m()));
        let feed = places.node(line.feed);
        self.note("its lead, from the live terminal to the feed");
        self.series("live", &feed, line.lead_ohm);
        self.chain(&places, &line.chain);
        if let Some(ohm) = ring_ohm {
            let last = places.at_m.len() - 1;
            self.note("the closing join of the ring");
            let (end, start) = (places.side(last, Side::Before), places.side(0, Side::After));
            self.series(&end, &start, ohm);
        }
        let own = self.earthed(&format!("l{index}e"), &line.chain, &places, ring_ohm.is_some());
        if let Some(node) = own.as_ref().and_then(|own| own.node(line.feed)) {
            self.note("its earthed lines are tied to the pole at the feed");
            self.series("pole", &node, 0.0);
        }
        for (branch_index, branch) in line.branches.iter().enumerate() {
            let twig = branch_places(index, branch_index, branch);
            self.note(&format!("a branch of {:.2} m on line {}", branch.chain.length_m(), index + 1));
            let (from, to) = (places.node(branch.at), twig.side(0, Side::Before));
            self.series(&from, &to, 0.0);
            self.chain(&twig, &branch.chain);
            let theirs = self.earthed(&format!("l{index}b{branch_index}e"), &branch.chain, &twig, false);
            let root = own.as_ref().and_then(|own| own.node(branch.at));
            let first = theirs.as_ref().and_then(|theirs| theirs.node(Place::after(0.0)));
            if let (Some(root), Some(first)) = (root, first) {
                self.series(&root, &first, 0.0);
            }
        }
    }

    /// Sections, joins and shorts of a chain.
    fn chain(&mut self, places: &Places, chain: &Chain) {
        for index in 0..places.at_m.len() {
            if let Some(ohm) = places.between[index].filter(|ohm| ohm.is_finite()) {
                let (before, after) = (format!("{}{index}", places.name), format!("{}{index}b", places.name));
                self.series(&before, &after, ohm);
            }
        }
        for index in 0..places.at_m.len().saturating_sub(1) {
            let (from_m, to_m) = (places.at_m[index], places.at_m[index + 1]);
            let middle_m = 0.5 * (from_m + to_m);
            let here = chain.stretches.iter().find(|one| one.from_m <= middle_m && middle_m < one.to_m);
            let Some(stretch) = here else { continue };
            let nodes = between(places, index);
            let piece_m = (to_m - from_m) / (nodes.len() - 1) as f64;
            for pair in nodes.windows(2) {
                self.series(&pair[0], &pair[1], stretch.r_ohm_per_m * piece_m);
                for node in pair {
                    self.shunt(node, 0.5 * stretch.g_s_per_m * piece_m, 0.5 * stretch.c_f_per_m * piece_m);
                }
            }
        }
        for short in &chain.shorts {
            self.note(&format!("a short at {:.2} m", short.at.at_m));
            let node = places.node(short.at);
            self.series(&node, "0", short.ohm);
        }
    }

    /// The earthed lines of a chain that is wired alternately, beside its live ones; `None` where it has none.
    fn earthed(&mut self, name: &str, chain: &Chain, live: &Places, ring: bool) -> Option<EarthedPlaces> {
        let earthed = &chain.earthed;
        if earthed.stretches.is_empty() {
            return None;
        }
        self.note("earthed lines");
        let bare = Chain { stretches: chain.stretches.clone(), joins: earthed.joins.clone(), ..Chain::default() };
        let places = Places::of(name, &bare, live.at_m.iter().copied(), ring);
        let at = |middle_m: f64| earthed.stretches.iter().find(|one| one.from_m <= middle_m && middle_m < one.to_m);
        let middles_m = places.at_m.windows(2).map(|pair| 0.5 * (pair[0] + pair[1]));
        let has: Vec<bool> = middles_m.map(|middle_m| at(middle_m).is_some()).collect();
        let own = EarthedPlaces { places, has };
        for place in 0..own.has.len() {
            let joined = place > 0 && own.has[place - 1] && own.has[place];
            if let Some(ohm) = own.places.between[place].filter(|_| joined) {
                let (before, after) = (format!("{name}{place}"), format!("{name}{place}b"));
                self.series(&before, &after, ohm);
            }
            let Some(stretch) = at(0.5 * (own.places.at_m[place] + own.places.at_m[place + 1])) else { continue };
            let (nodes, beside) = (between(&own.places, place), between(live, place));
            let piece_m = (own.places.at_m[place + 1] - own.places.at_m[place]) / (nodes.len() - 1) as f64;
            for (pair, lives) in nodes.windows(2).zip(beside.windows(2)) {
                self.series(&pair[0], &pair[1], stretch.r_ohm_per_m * piece_m);
                for (node, live) in pair.iter().zip(lives) {
                    self.shunt(node, 0.0, 0.5 * stretch.c_f_per_m * piece_m);
                    self.count += 1;
                    let farad = 0.5 * stretch.to_live_f_per_m * piece_m;
                    let name = format!("c{}", self.count);
                    self.element(&name, node, live, &format!("{farad:e} ic=0"));
                }
            }
        }
        if ring && own.has.first() == Some(&true) && own.has.last() == Some(&true) {
            let last = own.places.at_m.len() - 1;
            let (end, start) = (own.places.side(last, Side::Before), own.places.side(0, Side::After));
            self.series(&end, &start, earthed.closing_ohm);
        }
        Some(own)
    }

    /// Leakage and capacitance to remote earth, gathered at the nodes.
    fn shunts(&mut self) {
        self.note("");
        self.note("leakage and capacitance to remote earth, gathered at the nodes");
        for (node, (siemens, farad)) in std::mem::take(&mut self.shunts) {
            if siemens > 0.0 {
                self.series(&node, "0", 1.0 / siemens);
            }
            if farad > 0.0 {
                self.count += 1;
                let name = format!("c{}", self.count);
                self.element(&name, &node, "0", &format!("{farad:e} ic=0"));
            }
        }
    }

    fn measures(&mut self, wiring: &Wiring) {
        let line = &wiring.circuit.lines[wiring.line];
        let also = line.branches.iter().map(|branch| branch.at.at_m).chain([line.feed.at_m]);
        let ring = matches!(line.closing, Closing::Ring { .. });
        let places = Places::of(&format!("l{}p", wiring.line), &line.chain, also, ring);
        self.note(
            "the feed, the earth pole (it falls below remote earth), and every post of the run, from its chain's start",
        );
        let _ = writeln!(self.text, ".meas tran feed max v({})", places.node(line.feed));
        let _ = writeln!(self.text, ".meas tran earth_pole min v(pole)");
        for (post, mark) in line.chain.marks[..wiring.posts].iter().enumerate() {
            let _ = writeln!(self.text, ".meas tran post_{} max v({})", post + 1, places.node(*mark));
        }
        for (number, &(index, posts)) in wiring.branches.iter().enumerate() {
            let branch = &line.branches[index];
            let twig = branch_places(wiring.line, index, branch);
            for (post, mark) in branch.chain.marks[..posts].iter().enumerate() {
                let node = twig.node(*mark);
                let _ = writeln!(self.text, ".meas tran branch_{}_post_{} max v({node})", number + 1, post + 1);
            }
        }
    }
}

/// The nodes from one place to the next, both included.
fn between(places: &Places, index: usize) -> Vec<String> {
    let pieces = ((places.at_m[index + 1] - places.at_m[index]) / SECTION_M).ceil().max(1.0) as usize;
    let inner = (1..pieces).map(|piece| format!("{}{index}_{piece}", places.name));
    let start =
        places.between[index].map_or_else(|| format!("{}{index}", places.name), |_| format!("{}{index}b", places.name));
    let end = format!("{}{}", places.name, index + 1);
    std::iter::once(start).chain(inner).chain([end]).collect()
}
