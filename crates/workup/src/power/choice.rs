//! Which energizer holds the keeper's target at the weakest post, for one net and more.
//!
//! The fence of so many nets is a ring of that many, of the run's kinds in their order and over again, fed at the
//! chain's start, with the run's lead, joins, earth and leakage; zones, faults and branches of the run are left out,
//! for they lie where they lie on that run alone. Each data sheet of the store is fitted as for a run.
//!
//! The least stored energy is looked for along one row of energizers: the assumed one made larger and smaller, its
//! no-load figure kept, its resistance by the inverse of the energy and its capacitance with it, as so many of them
//! side by side would be. The greater of that row never holds less, so halving the span finds it.
//! Source of the row: common practice, no source. Kilovolts, joules.

use electrical::{Accuracy, Circuit, Closing, Place, Pulse, PulseSolver, Source, SourceModel};
use geometry::{FixedStart, Net, Outline, PlacementRequest, Point};
use plan::{Energizer, Plan, Run, defaults};

use super::fence::Fence;
use crate::lay::Line;
use crate::model::SheetTrouble;
use crate::values::{self, Bad};
use crate::{chain, nets, volts};

/// The most nets that are looked at.
pub const MOST_NETS: usize = 20;
/// The most stored energy that is looked at, joules.
pub const MOST_STORED_J: f64 = 50.0;
/// The least, joules.
const LEAST_STORED_J: f64 = 0.05;
/// How near the least stored energy is found, as a share.
const FOUND: f64 = 0.01;

/// One figure for a net that is clean and dry, one for the leakage that is likely, one for long wet grass.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ByGrass<T> {
    /// Clean and dry.
    pub clean: T,
    /// The run's own leakage.
    pub likely: T,
    /// Long wet grass all along.
    pub overgrown: T,
}

impl<T> ByGrass<T> {
    fn of(mut figure: impl FnMut(Grass) -> Option<T>) -> Option<Self> {
        let (clean, likely) = (figure(Grass::Clean)?, figure(Grass::Likely)?);
        Some(Self { clean, likely, overgrown: figure(Grass::Overgrown)? })
    }
}

/// How the grass stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Grass {
    Clean,
    Likely,
    Overgrown,
}

/// What each energizer does on 1 net, 2 nets and so on.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// The run's id.
    pub run: String,
    /// The keeper's target, kilovolts.
    pub target_kv: f64,
    /// Nets of the run itself, as they are laid.
    pub own_nets: usize,
    /// Resistance of the earth, ohms.
    pub earth_ohm: f64,
    /// The store's energizers in their order, or the assumed one alone.
    pub units: Vec<UnitChoice>,
    /// The least stored energy that holds the target, joules; `None` where the most that was looked at does not.
    pub least_stored_j: ByGrass<Vec<Option<f64>>>,
}

/// What one energizer does.
#[derive(Clone, Debug, PartialEq)]
pub struct UnitChoice {
    /// Its id; empty for the assumed one.
    pub id: String,
    /// Which model fits its data sheet, or what is wrong with it.
    pub model: Result<SourceModel, SheetTrouble>,
    /// Kilovolts at the weakest post on 1 net, 2 nets and so on; nothing where no model fits.
    pub weakest_kv: Vec<ByGrass<f64>>,
}

impl UnitChoice {
    /// The most nets on which the target holds, from 1 on without a gap; 0 where not even on one.
    pub fn holds(&self, target_kv: f64, of: impl Fn(&ByGrass<f64>) -> f64) -> usize {
        self.weakest_kv.iter().take_while(|weakest| of(weakest) >= target_kv).count()
    }
}

/// Works the choice out for a run; `None` where the plan has no such run, no nets, or figures that no fence has.
pub fn choice(plan: &Plan, run: &str) -> Option<Choice> {
    let (place, run) = plan.runs.iter().enumerate().find(|(_, other)| other.id == run)?;
    let mut troubles = values::of_plan(plan);
    troubles.extend(values::of_run(plan, run, place));
    let bad = Bad::of(&troubles);
    if ["store.nets[", "store.earth_stake.", "resistivity", "leakage", "earth", "_ohm"].iter().any(|part| bad.any(part))
    {
        return None;
    }
    let earth_ohm = volts::earth_ohm(plan, run)?;
    let laid = Fence::of(plan, &run.id).map_or_else(Vec::new, |fence| fence.kinds);
    let fences = Fences::of(plan, run, &laid, earth_ohm)?;
    let mut solver = PulseSolver::new();
    let stated = plan.store.energizers.iter();
    let assumed = Energizer::assumed();
    let energizers: Vec<&Energizer> = if plan.store.energizers.is_empty() { vec![&assumed] } else { stated.collect() };
    let units = energizers
        .into_iter()
        .map(|unit| {
            let id = unit.id.clone();
            let fit = match volts::fit(Some(unit)) {
                Ok(fit) => fit,
                Err(fault) => return Some(UnitChoice { id, model: Err(fault), weakest_kv: Vec::new() }),
            };
            let mut of = |nets| ByGrass::of(|grass| fences.weakest_kv(&mut solver, fit.source, nets, grass));
            let weakest_kv = (1..=MOST_NETS).map(&mut of).collect::<Option<_>>()?;
            Some(UnitChoice { id, model: Ok(fit.model), weakest_kv })
        })
        .collect::<Option<_>>()?;
    let target_kv = plan.target_kv();
    let least_stored_j = ByGrass::of(|grass| Some(fences.least_stored_j(&mut solver, target_kv, grass)))?;
    let own_nets = laid.len();
    Some(Choice { run: run.id.clone(), target_kv, own_nets, earth_ohm, units, least_stored_j })
}

/// Rings of 1 net and more, each with its three leakages; `lines[nets - 1]`.
struct Fences {
    lines: Vec<ByGrass<electrical::Line>>,
    earth_ohm: f64,
}

impl Fences {
    fn of(plan: &Plan, run: &Run, laid: &[usize], earth_ohm: f64) -> Option<Self> {
        let kinds = if laid.is_empty() { &[0] } else { laid };
        if plan.store.nets.is_empty() {
            return None;
        }
        let built: Vec<Net> = plan.store.nets.iter().map(|net| nets::built(net).ok()).collect::<Option<_>>()?;
        let lines = (1..=MOST_NETS)
            .map(|count| {
                let used: Vec<usize> = kinds.iter().copied().cycle().take(count).collect();
                ring(plan, run, &built, &used)
            })
            .collect::<Option<_>>()?;
        Some(Self { lines, earth_ohm })
    }

    fn line(&self, nets: usize, grass: Grass) -> &electrical::Line {
        let lines = &self.lines[nets - 1];
        match grass {
            Grass::Clean => &lines.clean,
            Grass::Likely => &lines.likely,
            Grass::Overgrown => &lines.overgrown,
        }
    }

    /// Kilovolts at the weakest post, never credited above the no-load figure; `None` where nothing can be worked out.
    fn weakest_kv(&self, solver: &mut PulseSolver, source: Source, nets: usize, grass: Grass) -> Option<f64> {
        let circuit = Circuit { source, earth_ohm: self.earth_ohm, lines: vec![self.line(nets, grass).clone()] };
        let mut pulse = Pulse::default();
        let accuracy = Accuracy { energy: false, ..Accuracy::default() };
        solver.pulse_into(&circuit, &accuracy, &mut pulse).ok()?;
        let lowest_v = pulse.lines[0].chain.marks.iter().map(|peak| peak.volts).fold(f64::INFINITY, f64::min);
        Some(lowest_v.min(source.v0) / 1e3)
    }

    /// The least stored energy for each count of nets.
    fn least_stored_j(&self, solver: &mut PulseSolver, target_kv: f64, grass: Grass) -> Vec<Option<f64>> {
        let Ok(assumed) = volts::fit(None) else { return vec![None; MOST_NETS] };
        // A longer fence never needs less.
        let mut least_j = LEAST_STORED_J;
        (1..=MOST_NETS)
            .map(|nets| {
                let mut holds = |stored_j: f64| {
                    self.weakest_kv(solver, in_proportion(assumed.source, stored_j), nets, grass)
                        .is_some_and(|kv| kv >= target_kv)
                };
                let found = least(&mut holds, least_j);
                least_j = found.unwrap_or(MOST_STORED_J);
                found
            })
            .collect()
    }
}

/// The assumed energizer made as large as so much stored energy.
fn in_proportion(assumed: Source, stored_j: f64) -> Source {
    let times = stored_j / defaults::STORED_J;
    Source {
        v0: assumed.v0,
        r_ohm: assumed.r_ohm / times,
        c_farad: assumed.c_farad * times,
        l_henry: assumed.l_henry / times,
    }
}

/// The least from some energy on that holds, where all above one that holds hold too.
fn least(holds: &mut impl FnMut(f64) -> bool, low: f64) -> Option<f64> {
    if holds(low) {
        return Some(low);
    }
    // Twice and twice again first: what is wanted mostly lies near.
    let (mut low, mut next) = (low, 2.0 * low);
    while next < MOST_STORED_J && !holds(next) {
        (low, next) = (next, 2.0 * next);
    }
    let mut high = next.min(MOST_STORED_J);
    if high >= MOST_STORED_J && !holds(high) {
        return None;
    }
    while high / low > 1.0 + FOUND {
        let middle = (low * high).sqrt();
        if holds(middle) { high = middle } else { low = middle }
    }
    Some(high)
}

/// A ring of those nets, laid on a square that they close exactly.
fn ring(plan: &Plan, run: &Run, built: &[Net], used: &[usize]) -> Option<ByGrass<electrical::Line>> {
    let side_m = used.iter().map(|&kind| plan.store.nets[kind].length_m).sum::<f64>() / 4.0;
    let corners = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let corners = corners.map(|[east, north]| Point { east_m: side_m * east, north_m: side_m * north });
    let outline = Outline::closed(&corners);
    let mut request = PlacementRequest::new(&outline, built, used);
    request.fixed = Some(FixedStart { start_m: 0.0, reversed: false });
    let placement = geometry::place(&request).ok()?;
    let laid = Line {
        level: outline.clone(),
        outline: outline.clone(),
        placement: Some(placement.clone()),
        branches: Vec::new(),
        judging: None,
    };
    let bare = Run {
        id: run.id.clone(),
        outline: corners.iter().map(|&at| crate::place(at)).collect(),
        leakage_s_per_m: run.leakage_s_per_m,
        join_ohm: run.join_ohm,
        lead_ohm: Some(crate::lead::lead(plan, run).ohm),
        live_loop: run.live_loop,
        ..Run::default()
    };
    let line = |leakage: Option<f64>| -> Option<electrical::Line> {
        let mut line = chain::netting(plan, &bare, &laid, &placement, leakage).ok()?.line;
        // The last post of a ring stands beside its first: the feed is at the chain's start, whatever rounding says.
        line.feed = Place::after(0.0);
        debug_assert!(matches!(line.closing, Closing::Ring { .. }) || !bare.live_loop());
        Some(line)
    };
    Some(ByGrass {
        clean: line(Some(defaults::LEAKAGE_CLEAN_S_PER_M))?,
        likely: line(None)?,
        overgrown: line(Some(defaults::LEAKAGE_LONG_WET_S_PER_M))?,
    })
}
