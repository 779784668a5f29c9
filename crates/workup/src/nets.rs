//! Which nets a run uses: those that it names, or else the fewest from the store that cover its line.

use geometry::{Net, NetFault};
use plan::{NetKind, Plan, Run, RunStatus};

/// Nets of each kind that were chosen for standing runs so far; they are no longer in the store.
pub(crate) type Chosen = Vec<u32>;

/// Kinds of the run's nets, as places in the store.
pub(crate) fn of(plan: &Plan, run: &Run, line_m: f64, chosen: &mut Chosen) -> Vec<usize> {
    let kind = |id: &String| plan.store.nets.iter().position(|net| net.id == *id);
    if let Some(ids) = &run.nets {
        return ids.iter().filter_map(kind).collect();
    }
    let nets = choose(plan, run, line_m, chosen);
    if run.status == RunStatus::Standing {
        chosen.resize(plan.store.nets.len(), 0);
        for &kind in &nets {
            chosen[kind] += 1;
        }
    }
    nets
}

/// A kind of net in the terms of geometry.
pub(crate) fn built(kind: &NetKind) -> Result<Net, NetFault> {
    match &kind.panel_lengths_m {
        Some(lengths_m) => Net::unequal(lengths_m),
        None => Net::equal(kind.length_m, kind.panel_count()),
    }
}

/// More ways than this to make up a number of nets are not all tried; the longest nets first are then taken.
const MOST_WAYS: usize = 200_000;

/// How many nets of each kind are left in the store for a run, beside those that stand elsewhere or hang on it.
pub(crate) fn left(plan: &Plan, run: &Run, chosen: &Chosen) -> Vec<u32> {
    let kinds = &plan.store.nets;
    let mut left: Vec<u32> = kinds.iter().map(plan::NetKind::count).collect();
    for other in plan.runs.iter().filter(|other| other.status == RunStatus::Standing && other.id != run.id) {
        let hanging = other.branches.iter().flat_map(|branch| &branch.nets);
        for id in other.nets.iter().flatten().chain(hanging) {
            if let Some(kind) = kinds.iter().position(|net| net.id == *id) {
                left[kind] = left[kind].saturating_sub(1);
            }
        }
    }
    for id in run.branches.iter().flat_map(|branch| &branch.nets) {
        if let Some(kind) = kinds.iter().position(|net| net.id == *id) {
            left[kind] = left[kind].saturating_sub(1);
        }
    }
    for (left, taken) in left.iter_mut().zip(chosen) {
        *left = left.saturating_sub(*taken);
    }
    left
}

/// The kinds of which some are left, the longest first: the fewest nets are the longest ones.
pub(crate) fn by_length(plan: &Plan, left: &[u32]) -> Vec<usize> {
    let kinds = &plan.store.nets;
    let mut by_length: Vec<usize> =
        (0..kinds.len()).filter(|&kind| left[kind] > 0 && kinds[kind].length_m > 0.0).collect();
    by_length.sort_by(|&a, &b| kinds[b].length_m.total_cmp(&kinds[a].length_m));
    by_length
}

/// The fewest nets that cover the line, then the least spare, then the lighter; a store too small is used whole.
fn choose(plan: &Plan, run: &Run, line_m: f64, chosen: &Chosen) -> Vec<usize> {
    let kinds = &plan.store.nets;
    let left = left(plan, run, chosen);
    let needed_m = line_m - geometry::MEET_M;
    let by_length = by_length(plan, &left);
    let mut counts = vec![0_u32; kinds.len()];
    let mut covered_m = 0.0;
    let mut fewest = 0;
    'longest_first: for &kind in &by_length {
        for _ in 0..left[kind] {
            if covered_m >= needed_m {
                break 'longest_first;
            }
            // Beyond any run that can be worked out; the store's count may be a slip of the pen.
            if fewest > geometry::MAX_CHAIN_POSTS {
                break 'longest_first;
            }
            counts[kind] += 1;
            covered_m += kinds[kind].length_m;
            fewest += 1;
        }
    }
    if covered_m >= needed_m {
        let mut search = Search {
            plan,
            left: &left,
            by_length: &by_length,
            needed_m,
            ways: 0,
            best: (covered_m, mass_kg(plan, &counts), counts.clone()),
            counts: vec![0; kinds.len()],
        };
        search.fill(0, fewest, 0.0);
        counts = search.best.2;
    }
    let each = |(kind, &count): (usize, &u32)| std::iter::repeat_n(kind, count as usize);
    counts.iter().enumerate().flat_map(each).collect()
}

fn mass_kg(plan: &Plan, counts: &[u32]) -> f64 {
    plan.store.nets.iter().zip(counts).map(|(net, &count)| net.mass_kg() * f64::from(count)).sum()
}

struct Search<'a> {
    plan: &'a Plan,
    left: &'a [u32],
    by_length: &'a [usize],
    needed_m: f64,
    ways: usize,
    best: (f64, f64, Vec<u32>),
    counts: Vec<u32>,
}

impl Search<'_> {
    /// Tries every way to take `more` nets from the kinds from `place` on.
    fn fill(&mut self, place: usize, more: usize, covered_m: f64) {
        self.ways += 1;
        if self.ways > MOST_WAYS {
            return;
        }
        if more == 0 {
            if covered_m < self.needed_m {
                return;
            }
            let mass_kg = mass_kg(self.plan, &self.counts);
            let (best_m, best_kg, _) = self.best;
            if covered_m < best_m - 1e-9 || ((covered_m - best_m).abs() <= 1e-9 && mass_kg < best_kg - 1e-9) {
                self.best = (covered_m, mass_kg, self.counts.clone());
            }
            return;
        }
        let Some(&kind) = self.by_length.get(place) else { return };
        let length_m = self.plan.store.nets[kind].length_m;
        // All that follow are shorter: too few metres cannot be made up for.
        if covered_m + length_m * (more as f64) < self.needed_m {
            return;
        }
        for count in (0..=self.left[kind].min(more as u32)).rev() {
            self.counts[kind] = count;
            self.fill(place + 1, more - count as usize, covered_m + length_m * f64::from(count));
        }
        self.counts[kind] = 0;
    }
}
