//! One chain as a row of groups: nodes that some resistance keeps apart.
//!
//! Every place that the chain names becomes a site; a site with a join or break has a node on each
//! side. Between sites the netting is cut into nominal π sections as the [`Mesh`] asks: `r d` in series, half of `g d` and
//! `c d` at each of its ends. Of the exact section of an even line, `Z sinh x / x` and `Y tanh(x/2) / (x/2)` with
//! `x² = r g d²`, that leaves out `x²/6` and `x²/12` (any textbook on lines, from memory): below 2e-4 at the mesh's 1e-3.
//! Nodes with less than [`IDEAL_OHM`] between them are one group.

use crate::circuit::{Chain, Mesh, PLACE_TOLERANCE_M, Place, Side, Stretch};

/// Less than this is no resistance, ohms.
pub(crate) const IDEAL_OHM: f64 = 1e-12;

/// One span is never cut into more sections.
const MOST_SECTIONS: f64 = 1e5;

/// Every place that a chain names, and `more`, sorted, each once.
pub(crate) fn find_places(chain: &Chain, more: impl Iterator<Item = f64>, places_m: &mut Vec<f64>) {
    let length_m = chain.length_m();
    places_m.clear();
    places_m.push(0.0);
    places_m.extend(chain.stretches.iter().map(|stretch| stretch.to_m));
    places_m.extend(chain.joins.iter().map(|join| join.at_m));
    places_m.extend(&chain.breaks);
    places_m.extend(chain.shorts.iter().map(|short| short.at.at_m));
    places_m.extend(chain.marks.iter().map(|mark| mark.at_m));
    places_m.extend(more);
    for place in places_m.iter_mut() {
        *place = place.clamp(0.0, length_m);
    }
    places_m.sort_by(f64::total_cmp);
    places_m.dedup_by(|later, kept| *later - *kept <= PLACE_TOLERANCE_M);
}

/// Into how many sections a span of netting is cut.
pub(crate) fn sections(netting: &Stretch, length_m: f64, mesh: &Mesh) -> usize {
    let coarse = netting.r_ohm_per_m * netting.g_s_per_m * length_m * length_m > mesh.rg_limit;
    if coarse { (length_m / mesh.fine_m).ceil().clamp(1.0, MOST_SECTIONS) as usize } else { 1 }
}

/// What the ends of a row do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Ends {
    /// Both are free.
    Open,
    /// They meet through a resistance.
    Ring { ohm: f64 },
    /// The start hangs on another row through the joins at 0; the end is free.
    Twig,
}

/// A named place and the cells on its two sides.
#[derive(Debug, Clone, Copy)]
struct Site {
    at_m: f64,
    before: usize,
    after: usize,
}

/// Half-pieces of netting gathered at one point.
#[derive(Debug, Clone, Copy, Default)]
struct Cell {
    leak_s: f64,
    capacitance_f: f64,
    /// To the next cell; infinite where none follows.
    ahead_ohm: f64,
}

/// See the module. The lists by group are parallel.
#[derive(Debug, Clone, Default)]
pub(crate) struct Row {
    /// Leakage of each group.
    pub(crate) leak_s: Vec<f64>,
    /// Capacitance of each group.
    pub(crate) capacitance_f: Vec<f64>,
    /// Resistance to the next group (from the last to the first on a ring); infinite at a break.
    pub(crate) ahead_ohm: Vec<f64>,
    /// The network's node of each group, once it has one.
    pub(crate) node: Vec<Option<usize>>,
    /// Resistance from a twig's first group to the row that it hangs on.
    pub(crate) root_ohm: f64,
    sites: Vec<Site>,
    cells: Vec<Cell>,
    group_of_cell: Vec<usize>,
    places_m: Vec<f64>,
    /// Series resistance at each site, parallel to `places_m`.
    series_ohm: Vec<f64>,
}

impl Row {
    pub(crate) fn groups(&self) -> usize {
        self.leak_s.len()
    }

    /// The group at a place; the nearest site counts.
    pub(crate) fn group_at(&self, place: Place) -> usize {
        let next = self.sites.partition_point(|site| site.at_m < place.at_m);
        let site = match (next.checked_sub(1).map(|i| self.sites[i]), self.sites.get(next)) {
            (Some(low), Some(high)) if place.at_m - low.at_m < high.at_m - place.at_m => low,
            (_, Some(high)) => *high,
            (Some(low), None) => low,
            (None, None) => return 0,
        };
        self.group_of_cell[match place.side {
            Side::Before => site.before,
            Side::After => site.after,
        }]
    }

    pub(crate) fn lay_out(&mut self, chain: &Chain, ends: Ends, named: impl Iterator<Item = Place>, mesh: &Mesh) {
        self.find_places(chain, named);
        let (start_ohm, end_ohm) = self.find_series(chain);
        self.cut(chain, mesh);
        let closing_ohm = match ends {
            Ends::Ring { ohm } => ohm + start_ohm + end_ohm,
            Ends::Open | Ends::Twig => f64::INFINITY,
        };
        self.root_ohm = if ends == Ends::Twig { start_ohm } else { f64::INFINITY };
        let last_cell = self.cells.len() - 1;
        self.cells[last_cell].ahead_ohm = closing_ohm;
        if let (Ends::Ring { .. }, [first, .., last]) = (ends, self.sites.as_mut_slice()) {
            first.before = last_cell;
            last.after = 0;
        }
        self.gather();
    }

    /// Every place that is a node, sorted, each once.
    fn find_places(&mut self, chain: &Chain, named: impl Iterator<Item = Place>) {
        find_places(chain, named.map(|place| place.at_m), &mut self.places_m);
    }

    /// Series resistance at every inner site; what lies at the start and at the end is returned.
    fn find_series(&mut self, chain: &Chain) -> (f64, f64) {
        self.series_ohm.clear();
        self.series_ohm.resize(self.places_m.len(), 0.0);
        let breaks = chain.breaks.iter().map(|at_m| (*at_m, f64::INFINITY));
        for (at_m, ohm) in chain.joins.iter().map(|join| (join.at_m, join.ohm)).chain(breaks) {
            let next = self.places_m.partition_point(|place| *place < at_m - PLACE_TOLERANCE_M);
            self.series_ohm[next.min(self.places_m.len() - 1)] += ohm;
        }
        let last = self.series_ohm.len() - 1;
        (
            std::mem::take(&mut self.series_ohm[0]),
            if last > 0 { std::mem::take(&mut self.series_ohm[last]) } else { 0.0 },
        )
    }

    /// Cuts the netting between sites into pieces.
    fn cut(&mut self, chain: &Chain, mesh: &Mesh) {
        self.sites.clear();
        self.cells.clear();
        self.cells.push(Cell::default());
        let mut stretch = 0;
        for (index, &at_m) in self.places_m.iter().enumerate() {
            let before = self.cells.len() - 1;
            if self.series_ohm[index] > 0.0 {
                self.cells[before].ahead_ohm = self.series_ohm[index];
                self.cells.push(Cell::default());
            }
            self.sites.push(Site { at_m, before, after: self.cells.len() - 1 });
            let Some(&next_m) = self.places_m.get(index + 1) else { break };
            let middle_m = 0.5 * (at_m + next_m);
            while stretch + 1 < chain.stretches.len() && chain.stretches[stretch].to_m < middle_m {
                stretch += 1;
            }
            let netting = &chain.stretches[stretch];
            let length_m = next_m - at_m;
            let pieces = sections(netting, length_m, mesh);
            let piece_m = length_m / pieces as f64;
            let half_leak_s = 0.5 * netting.g_s_per_m * piece_m;
            let half_capacitance_f = 0.5 * netting.c_f_per_m * piece_m;
            for _ in 0..pieces {
                if let Some(last) = self.cells.last_mut() {
                    last.leak_s += half_leak_s;
                    last.capacitance_f += half_capacitance_f;
                    last.ahead_ohm = netting.r_ohm_per_m * piece_m;
                }
                self.cells.push(Cell { leak_s: half_leak_s, capacitance_f: half_capacitance_f, ahead_ohm: 0.0 });
            }
        }
    }

    /// Makes one group of all cells that nothing keeps apart.
    fn gather(&mut self) {
        for list in [&mut self.leak_s, &mut self.capacitance_f, &mut self.ahead_ohm] {
            list.clear();
        }
        self.group_of_cell.clear();
        let mut apart = true;
        for cell in &self.cells {
            if apart {
                self.leak_s.push(0.0);
                self.capacitance_f.push(0.0);
                self.ahead_ohm.push(f64::INFINITY);
            }
            let group = self.leak_s.len() - 1;
            self.group_of_cell.push(group);
            self.leak_s[group] += cell.leak_s;
            self.capacitance_f[group] += cell.capacitance_f;
            self.ahead_ohm[group] = cell.ahead_ohm;
            apart = cell.ahead_ohm >= IDEAL_OHM;
        }
        if !apart && self.groups() > 1 {
            // An ideal closing: the ring's last group is its first.
            let last = self.groups() - 1;
            for group in &mut self.group_of_cell {
                if *group == last {
                    *group = 0;
                }
            }
            self.leak_s[0] += self.leak_s[last];
            self.capacitance_f[0] += self.capacitance_f[last];
            for list in [&mut self.leak_s, &mut self.capacitance_f, &mut self.ahead_ohm] {
                list.pop();
            }
        }
        self.node.clear();
        self.node.resize(self.groups(), None);
    }
}
