//! A run's circuit by itself, for what is asked of it on demand.

use electrical::{Animal, Animals, Circuit, Curves};
use plan::Plan;

use crate::model::RunWorkup;
use crate::values::{self, Bad};
use crate::{Depth, Known, bracing, lay, nets, slope, volts};

/// A run's circuit, with every run on its terminals.
pub(crate) struct Fence {
    pub(crate) circuit: Circuit,
    /// The run's place in the circuit.
    pub(crate) line: usize,
    /// Posts on the line, and where they stand.
    pub(crate) posts: usize,
    pub(crate) stands: Vec<plan::Point>,
    /// Kinds of the nets as they are laid: places in the store.
    pub(crate) kinds: Vec<usize>,
    /// Branches that were stated: their place among the line's, and how many posts they have.
    pub(crate) branches: Vec<(usize, usize)>,
    /// Whether its netting closes a ring.
    pub(crate) is_ring: bool,
}

impl Fence {
    /// The circuit of a run; `None` where its volts cannot be worked out.
    pub(crate) fn of(plan: &Plan, run: &str) -> Option<Self> {
        let index = plan.runs.iter().position(|other| other.id == run)?;
        let mut troubles = values::of_plan(plan);
        let (soil, of_soil) = bracing::soil(plan);
        troubles.extend(of_soil);
        let heights = slope::Heights::of(plan, &mut troubles);
        let bad = Bad::of(&troubles);
        let (mut chosen, mut known) = (nets::Chosen::new(), Known::default());
        let (mut lines, mut bad_runs) = (Vec::new(), Vec::new());
        for (place, run) in plan.runs.iter().enumerate() {
            let mut worked = RunWorkup { troubles: values::of_run(plan, run, place), ..RunWorkup::default() };
            // What pins cost is of no matter here.
            let mut search = lay::Search { depth: Depth::Quick, known: &mut known };
            lines.push(lay::line(plan, run, &heights, &bad, &soil, &mut chosen, &mut search, &mut worked));
            bad_runs.push(Bad::of(&worked.troubles));
        }
        let (built, line) = volts::of_run(plan, &lines, &bad, index, &bad_runs)?;
        let laid = lines[index].as_ref()?;
        let placement = laid.placement.as_ref()?;
        let posts = &placement.posts;
        let kinds = placement.nets.iter().map(|net| net.kind).collect();
        let first_branch = built.nettings[line].first_branch;
        let branch = |(place, branch): (usize, &crate::branches::BranchLine)| {
            (first_branch + place, branch.placement.posts.len())
        };
        let branches = laid.branches.iter().enumerate().map(branch).collect();
        let stands = posts.iter().map(|post| crate::place(post.at)).collect();
        Some(Self {
            circuit: built.circuit,
            line,
            posts: posts.len(),
            stands,
            kinds,
            branches,
            is_ring: placement.is_ring(),
        })
    }

    /// Kilovolts at every post on the line.
    pub(crate) fn peaks_kv(&self) -> Vec<f64> {
        let no_load_v = self.circuit.source.v0;
        let posts = self.peaks_v(&self.circuit).map_or_else(Vec::new, |(_, posts)| posts);
        posts.into_iter().map(|volts| volts.min(no_load_v) / 1e3).collect()
    }

    /// What an animal takes at every post on the line.
    pub(crate) fn touched<T>(&self, animal: &Animal, of: impl Fn(&electrical::Touch) -> T) -> Option<Vec<T>> {
        let animals: Animals = electrical::animals(&self.circuit, animal, &electrical::Mesh::default()).ok()?;
        Some(animals[self.line].chain.marks[..self.posts].iter().map(of).collect())
    }

    /// The pulse over time at every place that is read.
    pub(crate) fn curves(&self) -> Option<Curves> {
        electrical::curves(&self.circuit, &electrical::Accuracy::default()).ok()
    }
}
