//! The largest runs that a plan's nets enclose on its ground, each with every figure of a run.
//!
//! The outlines come from `geometry::largest`. Each is put into a copy of the plan as its only run and worked out by
//! [`crate::workup`], so that a candidate's nets, corners, strip, minutes and volts are those of the run that it becomes
//! when it is kept. Metres, square metres, minutes, kilovolts. Model: docs/model.md, "Ground, fit, shapes".
//!
//! Where heights are known what was found on the map is laid on the ground, a little smaller, so that its nets close.
//!
//! What is left out of a candidate: gates, what grows where. A hedge that is to hold birds is taken at the
//! keeper's word.

mod ask;
mod fault;
mod figures;
mod proportion;
mod slope;

use geometry::largest::{Largest, LargestSearch};
use plan::{Plan, Point, Run};

use crate::slope::Measure;
use crate::{Compared, Known, RunWorkup};

pub use fault::{CandidateFault, CandidateNote};
pub use geometry::largest::{FREE_SIDES, Family, MOST_FREE_SIDES};
pub use slope::OnSlope;

pub use proportion::{Proportions, proportions};

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// How many nets; the longest of the store.
    pub nets: u32,
    /// Whether the coop with its clearance lies inside.
    pub coop: bool,
    /// Whether a side may be borrowed from a wall that holds birds; adds entries, takes none away.
    pub walls: bool,
    /// Sides of the free outline.
    pub free_sides: u32,
    /// A run of the plan whose energizer, earth, grass and strip the candidates take over; else the defaults count.
    pub like: Option<String>,
}

impl Ask {
    /// The plain question for so many nets.
    pub fn new(nets: u32) -> Self {
        Self { nets, coop: false, walls: false, free_sides: FREE_SIDES, like: None }
    }
}

/// The largest run of a family, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// Its family.
    pub family: Family,
    /// The plan's wall that stands in for the side from its last corner to its first, by number.
    pub wall: Option<usize>,
    /// Its corners, counter-clockwise.
    pub outline: Vec<Point>,
    /// Area enclosed, square metres.
    pub area_m2: f64,
    /// No run of the family encloses more on this ground with these nets, square metres: proved.
    pub area_bound_m2: f64,
    /// Length of the netted line, metres.
    pub line_m: f64,
    /// Kinds of its nets in the chain's order.
    pub nets: Vec<String>,
    /// The figures by which it is weighed against others.
    pub compared: Compared,
    /// The nearest outline that closes on whole panels; on a slope along the ground, once the search is over.
    pub whole_panels: Option<Whole>,
    /// How it lies on ground that is not level.
    pub slope: Option<OnSlope>,
    /// The run as it would be stated: an option with an id that no run of the plan has.
    pub run: Run,
    /// What follows for that run alone on the plan's ground, without what an animal feels.
    pub worked: RunWorkup,
}

/// An outline whose netted sides are whole panels.
#[derive(Clone, Debug, PartialEq)]
pub struct Whole {
    /// Its corners, counter-clockwise.
    pub outline: Vec<Point>,
    /// Panels from each corner to the next.
    pub side_panels: Vec<u32>,
    /// Area enclosed, square metres.
    pub area_m2: f64,
}

/// The search as a value that grows: step it until it is done, look at its best whenever wanted, drop it to stop.
#[derive(Clone, Debug)]
pub struct CandidateSearch {
    /// The plan without its runs.
    plan: Plan,
    template: Run,
    ids: Vec<String>,
    walls: Vec<usize>,
    search: LargestSearch,
    notes: Vec<CandidateNote>,
    /// The ground, where it is not level.
    sloped: Option<slope::Sloped>,
    done: bool,
    known: Known,
}

impl CandidateSearch {
    /// The search for an answer; nothing is searched yet.
    pub fn new(plan: &Plan, ask: &Ask) -> Result<Self, CandidateFault> {
        let (request, walls) = ask::request(plan, ask)?;
        let search = LargestSearch::new(&request.question).map_err(|fault| fault::of(plan, fault))?;
        let mut notes = fault::notes(plan, search.notes());
        if ask.walls && request.question.walls.is_empty() {
            notes.push(CandidateNote::NoWall);
        }
        let template = figures::template(plan, ask, request.nets);
        let ids = plan.runs.iter().map(|run| run.id.clone()).collect();
        let mut known = Known::default();
        let heights = known.surfaces.heights(plan, &mut Vec::new());
        let sloped = Measure::of(&template, &heights).map(|measure| slope::Sloped::new(measure, &request.question));
        if sloped.is_some() {
            notes.push(CandidateNote::Slope);
        }
        let plan = Plan { runs: Vec::new(), readings: Vec::new(), ..plan.clone() };
        Ok(Self { plan, template, ids, walls, search, notes, sloped, done: false, known })
    }

    /// Goes on a little; `false` once there is no more to do.
    pub fn step(&mut self) -> bool {
        self.done = !self.search.step();
        !self.done
    }

    /// What should be known about the ground.
    pub fn notes(&self) -> &[CandidateNote] {
        &self.notes
    }

    /// The outlines found so far, the largest first, without the figures of a run: cheap enough for every frame.
    pub fn outlines(&self) -> Vec<Largest> {
        self.search.best()
    }

    /// The largest ground of each family found so far, square metres, as it closes on the ground.
    pub fn grounds(&self) -> Vec<(Family, f64)> {
        let outlines = self.outlines();
        let area_m2 =
            |one: &Largest| self.sloped.as_ref().map_or(one.area_m2, |sloped| sloped.laid(one, false).0.area_m2);
        let mut grounds: Vec<(Family, f64)> = outlines.iter().map(|one| (one.family, area_m2(one))).collect();
        grounds.sort_by(|one, other| other.1.total_cmp(&one.1));
        grounds
    }

    /// The candidates found so far, the largest first, worked out.
    pub fn best(&self) -> Vec<Candidate> {
        let worked = |largest: &Largest| {
            let (laid, slope) = match &self.sloped {
                Some(sloped) => {
                    let (laid, slope) = sloped.laid(largest, self.done);
                    (laid, Some(slope))
                }
                None => (largest.clone(), None),
            };
            figures::candidate((&self.plan, &self.known), &self.template, (&self.ids, &self.walls), &laid, slope)
        };
        let mut best: Vec<Candidate> = self.outlines().iter().map(worked).collect();
        // The workup's figure may differ by rounding from the one that the outlines were sorted by.
        best.sort_by(|one, other| other.area_m2.total_cmp(&one.area_m2).then(one.family.cmp(&other.family)));
        best
    }
}

/// The search to its end; at least one candidate.
pub fn candidates(plan: &Plan, ask: &Ask) -> Result<Vec<Candidate>, CandidateFault> {
    let mut search = CandidateSearch::new(plan, ask)?;
    while search.step() {}
    let best = search.best();
    if best.is_empty() { Err(CandidateFault::NothingFits { coop: ask.coop }) } else { Ok(best) }
}
