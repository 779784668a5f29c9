//! The pulse on every run, through `electrical`.
//!
//! Every run's volts are worked out as if it stood alone, but standing runs that name one energizer of
//! which there is one are one circuit, joined at its terminals.

mod read;

use electrical::{Accuracy, Animal, Circuit, DataSheet, Fit, LineReadings, Peak, Pulse, PulseSolver, SheetFault};
use plan::{Energizer, Plan, ReadingKind, Run, RunStatus, defaults};

use crate::Depth;
use crate::chain::{self, Netting};
use crate::earth;
use crate::lay::Line;
use crate::model::{Part, RunWorkup, SheetTrouble, Sound, SoundWeakest, SourceFit, Trouble, Volts, Weakest};
use crate::values::Bad;
use read::Read;

/// An animal that touches with its body, by four feet of 2 cm (docs/model.md).
const BODY_OHM: f64 = 500.0;
const FOOT_RADIUS_M: f64 = 0.02;
const FEET: usize = 4;

/// Works out the volts of all runs.
pub(crate) fn all(plan: &Plan, lines: &[Option<Line>], bad: &Bad, depth: Depth, runs: &mut [RunWorkup]) {
    for group in groups(plan, lines) {
        let members = members(plan, lines, &group);
        let bad_runs: Vec<Bad> = group.iter().map(|&index| Bad::of(&runs[index].troubles)).collect();
        if hindered(plan, &members, bad, &bad_runs.iter().collect::<Vec<_>>()) {
            continue;
        }
        match circuit(plan, &members, depth) {
            Ok(volts) => {
                for (place, (&index, volts)) in group.iter().zip(volts).enumerate() {
                    let sound = sound(plan, &members, place);
                    runs[index].volts = Some(Volts { sound, ..volts });
                }
            }
            Err(trouble) => {
                for &index in &group {
                    runs[index].troubles.push(trouble.clone());
                }
            }
        }
    }
}

/// One run of a circuit.
#[derive(Clone, Copy)]
struct Member<'a> {
    run: &'a Run,
    line: &'a Line,
    placement: &'a geometry::Placement,
}

fn members<'a>(plan: &'a Plan, lines: &'a [Option<Line>], group: &[usize]) -> Vec<Member<'a>> {
    let member = |&index: &usize| {
        let line = lines[index].as_ref()?;
        Some(Member { run: &plan.runs[index], line, placement: line.placement.as_ref()? })
    };
    group.iter().filter_map(member).collect()
}

/// Whether a figure that these runs' volts need is bad; a finding has said so.
fn hindered(plan: &Plan, members: &[Member<'_>], bad: &Bad, bad_runs: &[&Bad]) -> bool {
    const OF_RUN: [&str; 6] = ["leakage", "join_ohm", "lead", "earth_ohm", "earth_stakes", "faults"];
    const OF_NET: [&str; 3] = ["line_resistance", "live_line_heights", "earthed_line_heights"];
    let stakes = members.iter().any(|member| member.run.earth_ohm.is_none());
    bad.any("resistivity")
        || (stakes && bad.any("store.earth_stake."))
        || bad_runs.iter().any(|bad_run| OF_RUN.iter().any(|part| bad_run.any(part)))
        || members.iter().any(|member| {
            let unit = energizer(plan, member.run)
                .and_then(|unit| plan.store.energizers.iter().position(|other| std::ptr::eq(other, unit)));
            let bad_net = |net: &geometry::PlacedNet| {
                OF_NET.iter().any(|name| bad.any(&format!("store.nets[{}].{name}", net.kind)))
            };
            unit.is_some_and(|unit| bad.any(&format!("store.energizers[{unit}].")))
                || member.placement.nets.iter().any(bad_net)
                || member.line.branches.iter().any(|branch| branch.placement.nets.iter().any(bad_net))
        })
}

/// Which runs are one circuit; the places of runs that have a line.
fn groups(plan: &Plan, lines: &[Option<Line>]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (index, run) in plan.runs.iter().enumerate() {
        if lines[index].as_ref().is_none_or(|line| line.placement.is_none()) {
            continue;
        }
        let shares = |other: usize| {
            let other = &plan.runs[other];
            run.status == RunStatus::Standing
                && other.status == RunStatus::Standing
                && run.energizer.is_some()
                && run.energizer == other.energizer
                && energizer(plan, run).is_some_and(|unit| unit.count() == 1)
        };
        match groups.iter_mut().find(|group| shares(group[0])) {
            Some(group) => group.push(index),
            None => groups.push(vec![index]),
        }
    }
    groups
}

/// The energizer that a run names, else the store's first.
pub(crate) fn energizer<'a>(plan: &'a Plan, run: &Run) -> Option<&'a Energizer> {
    match &run.energizer {
        Some(id) => plan.store.energizers.iter().find(|unit| unit.id == *id),
        None => plan.store.energizers.first(),
    }
}

pub(crate) fn fit(unit: Option<&Energizer>) -> Result<Fit, SheetTrouble> {
    let assumed = Energizer::assumed();
    let unit = unit.unwrap_or(&assumed);
    let nothing_stated =
        unit.no_load_kv.is_none() && unit.kv_at_500_ohm.is_none() && unit.output_j_at_500_ohm.is_none();
    let sheet = DataSheet {
        // Stored energy checks the other three; where they are stated and it is not, nothing is checked.
        stored_j: unit.stored_j.or(nothing_stated.then_some(defaults::STORED_J)),
        no_load_v: unit.no_load_kv() * 1e3,
        v_at_500_ohm: unit.kv_at_500_ohm() * 1e3,
        output_j_at_500_ohm: unit.output_j_at_500_ohm(),
    };
    electrical::fit(&sheet).map_err(|fault| match fault {
        SheetFault::NoDrop { .. } => SheetTrouble::LoadedAboveNoLoad,
        SheetFault::MoreThanStored { .. } => SheetTrouble::OutputAboveStored,
        SheetFault::NotPositive { .. } | SheetFault::PeakOutOfReach { .. } => SheetTrouble::NoCircuit,
    })
}

/// Resistance of a run's earth: measured, or its stakes' by the matrix.
pub(crate) fn earth_ohm(plan: &Plan, run: &Run) -> Option<f64> {
    if run.earth_ohm.is_some() {
        return run.earth_ohm;
    }
    earth::ohm(plan, run, run.earth_stakes.count() as usize)
}

/// Resistance of the earth of runs on one energizer: their stakes are joined at the one terminal. Where each stake's place
/// is stated they are one layout, in which a stake that several runs name stands once; else their earths are far apart.
fn earth_of(plan: &Plan, runs: &[&Run]) -> Option<f64> {
    let earths: Vec<f64> = runs.iter().map(|run| earth_ohm(plan, run)).collect::<Option<_>>()?;
    if let Some(ohm) = earth::joint_ohm(plan, runs) {
        return Some(ohm);
    }
    if earths.iter().any(|&ohm| ohm <= 0.0) {
        return Some(0.0);
    }
    Some(earths.iter().map(|ohm| ohm.recip()).sum::<f64>().recip())
}

/// The most of a pulse's energy that may be lost or won in working it out, as a share.
const UNBALANCED: f64 = 1e-3;

// Each figure was looked at; what the circuit still refuses are figures that do not go together.
const BEYOND: Trouble = Trouble::Beyond { part: Part::Volts };

/// The runs of one circuit as `electrical` sees them.
pub(crate) struct Built {
    pub(crate) fitted: Fit,
    pub(crate) circuit: Circuit,
    /// One a run, in the circuit's order.
    pub(crate) nettings: Vec<Netting>,
}

fn built(plan: &Plan, members: &[Member<'_>]) -> Result<Built, Trouble> {
    let unit = energizer(plan, members[0].run);
    let fitted = fit(unit).map_err(|fault| Trouble::DataSheet {
        energizer: unit.map_or_else(String::new, |unit| unit.id.clone()),
        fault,
    })?;
    let runs: Vec<&Run> = members.iter().map(|member| member.run).collect();
    let earth_ohm = earth_of(plan, &runs).ok_or(BEYOND)?;
    let nettings = nettings(plan, members, None)?;
    let lines = nettings.iter().map(|netting| netting.line.clone()).collect();
    Ok(Built { circuit: Circuit { source: fitted.source, earth_ohm, lines }, fitted, nettings })
}

/// The netting of each run, with the leakage that it states or with one leakage everywhere.
fn nettings(plan: &Plan, members: &[Member<'_>], leakage: Option<f64>) -> Result<Vec<Netting>, Trouble> {
    members.iter().map(|member| chain::netting(plan, member.run, member.line, member.placement, leakage)).collect()
}

/// A run's circuit with every run on its terminals, and the run's place among them; `None` where its volts cannot be
/// worked out.
pub(crate) fn of_run(
    plan: &Plan,
    lines: &[Option<Line>],
    bad: &Bad,
    run: usize,
    bad_runs: &[Bad],
) -> Option<(Built, usize)> {
    let group = groups(plan, lines).into_iter().find(|group| group.contains(&run))?;
    let members = members(plan, lines, &group);
    let bad_runs: Vec<&Bad> = group.iter().map(|&index| &bad_runs[index]).collect();
    if hindered(plan, &members, bad, &bad_runs) {
        return None;
    }
    let place = group.iter().position(|&index| index == run)?;
    built(plan, &members).ok().map(|built| (built, place))
}

/// The volts of the runs of one circuit, in their order.
fn circuit(plan: &Plan, members: &[Member<'_>], depth: Depth) -> Result<Vec<Volts>, Trouble> {
    let Built { fitted, circuit: likely, nettings: built } = built(plan, members)?;
    let earth_ohm = likely.earth_ohm;
    let accuracy = Accuracy::default();
    let mut solver = PulseSolver::new();
    let mut solve = |circuit: &Circuit, accuracy: &Accuracy| -> Result<Pulse, Trouble> {
        let mut pulse = Pulse::default();
        solver.pulse_into(circuit, accuracy, &mut pulse).map_err(|_| BEYOND)?;
        Ok(pulse)
    };
    let pulse = solve(&likely, &accuracy)?;
    if pulse.energy.residual().abs() > UNBALANCED || pulse.energy.residual().is_nan() {
        return Err(BEYOND);
    }
    let earth = electrical::earth_rise(&likely).map_err(|_| BEYOND)?;
    let peaks_only = Accuracy { energy: false, ..accuracy };
    let mut range = |leakage_s_per_m: f64| -> Result<Vec<LineReadings<Peak>>, Trouble> {
        let lines = nettings(plan, members, Some(leakage_s_per_m))?.into_iter().map(|netting| netting.line).collect();
        let circuit = Circuit { lines, ..likely.clone() };
        Ok(solve(&circuit, &peaks_only)?.lines)
    };
    // Where the word for today makes the grass leak more or less than either end, the end goes with it.
    let (mut most, mut least) = (defaults::LEAKAGE_LONG_WET_S_PER_M, defaults::LEAKAGE_CLEAN_S_PER_M);
    if plan.ground.today.is_some() {
        for member in members {
            let today = plan.leakage_today_s_per_m(member.run);
            (most, least) = (most.max(today), least.min(today));
        }
    }
    let low = range(most)?;
    let high = range(least)?;
    let animals = match depth {
        Depth::Quick => None,
        Depth::Full => {
            let feet_ohm = electrical::foot_ohm(plan.ground.resistivity_today_ohm_m(), FOOT_RADIUS_M, FEET);
            electrical::animals(&likely, &Animal { body_ohm: BODY_OHM, feet_ohm }, &accuracy.mesh).ok()
        }
    };
    let no_load_v = pulse.no_load_v;
    let kv = |volts: f64| volts.min(no_load_v) / 1e3;
    let volts = members.iter().enumerate().map(|(place, member)| {
        let read = Read {
            line: member.line,
            netting: &built[place],
            posts: member.placement.posts.len(),
            peaks: &pulse.lines[place],
            range: [&low[place], &high[place]],
            touches: animals.as_ref().map(|animals| &animals[place]),
            no_load_v,
        };
        let weakest = read.weakest(&pulse.lines[place]).map(|found| Weakest {
            post: found.post,
            branch: found.branch,
            at: found.at,
            along_m: found.along_m,
            peak_kv: kv(found.volts),
            low_kv: kv(read.least_v(&low[place])),
            high_kv: kv(read.least_v(&high[place])),
            measured: plan
                .readings
                .iter()
                .any(|reading| reading.run == member.run.id && reading.kind == ReadingKind::FenceKv),
        });
        Volts {
            feed_kv: kv(pulse.lines[place].feed.volts),
            earth_kv: earth.peak_v / 1e3,
            earth_rush_kv: earth.rush_v / 1e3,
            earth_ohm,
            energy_j: pulse.energy.delivered_j(),
            source: SourceFit {
                v0_kv: fitted.source.v0 / 1e3,
                r_ohm: fitted.source.r_ohm,
                c_nf: fitted.source.c_farad * 1e9,
                l_mh: fitted.source.l_henry * 1e3,
            },
            samples: read.samples(),
            branches: read.branches(),
            weakest,
            sound: None,
        }
    });
    Ok(volts.collect())
}

/// One run of a circuit without that run's faults; `None` where it has none. This is the only pulse of a sound fence:
/// whoever tells of one reads it here.
fn sound(plan: &Plan, members: &[Member<'_>], place: usize) -> Option<Sound> {
    let run = members[place].run;
    if !run.has_faults() {
        return None;
    }
    let sound = run.sound();
    let mut members = members.to_vec();
    members[place].run = &sound;
    let built = built(plan, &members).ok()?;
    let mut pulse = Pulse::default();
    let peaks_only = Accuracy { energy: false, ..Accuracy::default() };
    PulseSolver::new().pulse_into(&built.circuit, &peaks_only, &mut pulse).ok()?;
    let peaks = &pulse.lines[place];
    let read = Read {
        line: members[place].line,
        netting: &built.nettings[place],
        posts: members[place].placement.posts.len(),
        peaks,
        range: [peaks; 2],
        touches: None,
        no_load_v: pulse.no_load_v,
    };
    let kv = |volts: f64| volts.min(pulse.no_load_v) / 1e3;
    let found = read.weakest(peaks)?;
    let mut sound = Sound {
        posts_kv: Vec::with_capacity(read.posts),
        branches_kv: vec![Vec::new(); read.line.branches.len()],
        weakest: SoundWeakest {
            post: found.post,
            branch: found.branch,
            along_m: found.along_m,
            peak_kv: kv(found.volts),
        },
    };
    for (branch, _, peak) in read.posts(peaks) {
        branch.map_or(&mut sound.posts_kv, |branch| &mut sound.branches_kv[branch]).push(kv(peak.volts));
    }
    Some(sound)
}
