//! Energizers against the limits of their standard, and statements about the circuit that can be worked with and are
//! most likely slips: a feed off the line, no leakage or far too much, no live line left whole, no energizer.

use electrical::impulse;
use plan::{Energizer, Fault, FaultKind, Run, RunStatus, defaults};
use words::texts::Findings as Text;
use workup::faults::land;
use workup::{Lay, RunWorkup, SampleOf, Volts};

use crate::limits::{ENERGIZER_CLAUSE, ENERGIZER_J, FEED_REACH_M, IMPULSE_CLAUSE, IMPULSE_S, LEAKAGE_MOST, OWN_FORMAT};
use crate::{Finding, Look, Severity, Subject, line, point, run_name};

/// Energizers in the store above the standard's limits.
pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    let units = look.plan.store.energizers.iter().flat_map(|unit| above_the_limits(look, unit));
    units.chain(resistivity(look)).collect()
}

/// A stated resistivity that no published soil has. Frozen ground goes beyond, so it is a note.
fn resistivity(look: Look<'_>) -> Option<Finding> {
    let stated = look.plan.ground.soil.resistivity_ohm_m.filter(|ohm_m| *ohm_m > 0.0)?;
    let (low, high) = plan::resistivity::published_ohm_m();
    let number = |value: f64| look.words.number(value, usize::from(value < 10.0));
    (!(low..=high).contains(&stated)).then(|| {
        Finding::new("resistivity-odd", Severity::Note, plan::resistivity::DIN_SOURCE).says(
            look.say(
                Text::ResistivityOdd,
                &[("stated", &number(stated)), ("low", &number(low)), ("high", &number(high))],
            ),
        )
    })
}

/// An energizer keeps to the joules of one that is limited in energy, or to the current of one that is limited in current;
/// the length of its impulse is bounded either way. Zero and negative figures are said elsewhere.
fn above_the_limits(look: Look<'_>, unit: &Energizer) -> Vec<Finding> {
    let sheet = electrical::DataSheet {
        stored_j: unit.stored_j,
        no_load_v: unit.no_load_kv() * 1e3,
        v_at_500_ohm: unit.kv_at_500_ohm() * 1e3,
        output_j_at_500_ohm: unit.output_j_at_500_ohm(),
    };
    let Ok(fitted) = electrical::fit(&sheet) else { return Vec::new() };
    let load_ohm = electrical::source::SHEET_LOAD_OHM;
    let duration_s = impulse::duration_s(&fitted.source, load_ohm);
    let mut found = Vec::new();
    if unit.output_j_at_500_ohm() > ENERGIZER_J {
        let ampere = impulse::rms_ampere(&fitted.source, load_ohm);
        let allowed_s = impulse::limit_line_s(ampere);
        if allowed_s.is_none_or(|allowed_s| duration_s > allowed_s) {
            found.push(
                Finding::new("energizer-above-limit", Severity::Warning, ENERGIZER_CLAUSE)
                    .about(Subject::Unit(unit.id.clone()))
                    .says(look.say(
                        Text::EnergizerAbove,
                        &[
                            ("energizer", &unit.id),
                            ("joules", &look.words.number(unit.output_j_at_500_ohm(), 1)),
                            ("limit", &look.words.number(ENERGIZER_J, 0)),
                        ],
                    ))
                    .because(look.say(
                        Text::EnergizerAboveWhy,
                        &[
                            ("ampere", &look.words.number(ampere, 1)),
                            ("milliseconds", &look.words.number(duration_s * 1e3, 2)),
                            ("clause", ENERGIZER_CLAUSE),
                        ],
                    )),
            );
        }
    }
    if duration_s > IMPULSE_S {
        let said = look.say(
            Text::EnergizerLong,
            &[
                ("energizer", &unit.id),
                ("milliseconds", &look.words.number(duration_s * 1e3, 1)),
                ("limit", &look.words.number(IMPULSE_S * 1e3, 0)),
            ],
        );
        let long = Finding::new("energizer-long-impulse", Severity::Warning, IMPULSE_CLAUSE);
        found.push(long.about(Subject::Unit(unit.id.clone())).says(said));
    }
    found
}

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let mut found = Vec::new();
    if run.status == RunStatus::Past {
        return found;
    }
    let name = run_name(run);
    if look.plan.store.energizers.is_empty() && worked.volts.is_some() {
        let joules = look.words.number(Energizer::assumed().stored_j(), 0);
        let told = Finding::new("no-energizer", Severity::Note, defaults::COMMON_PRACTICE);
        found.push(told.says(look.say(Text::NoEnergizer, &[("run", name), ("joules", &joules)])));
    }
    found.extend(feed(look, run, worked));
    found.extend(leakage(look, run));
    if let (Some(volts), Some(lay)) = (&worked.volts, &worked.lay) {
        found.extend(all_lines(look, run, volts, lay));
    }
    found
}

/// A feed so far from the line that no lead is meant.
fn feed(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let at = run.feed_at?;
    let line = line(worked)?;
    let (along_m, off_m) = line.nearest_along(point(at));
    (off_m > FEED_REACH_M).then(|| {
        Finding::new("feed-off-line", Severity::Warning, defaults::COMMON_PRACTICE)
            .about(Subject::Feed)
            .says(look.say(Text::FeedOffLine, &[("run", run_name(run)), ("off", &look.words.length(off_m))]))
            .at([at, crate::place(line.at(along_m))])
    })
}

/// Netting that leaks nothing at all, or more than any grass.
fn leakage(look: Look<'_>, run: &Run) -> Option<Finding> {
    let of_run = run.leakage_s_per_m.map(|leakage| (leakage, Subject::Whole)).into_iter();
    let zones = run.lines().flat_map(|line| run.zones_on(line).iter().enumerate().map(move |zone| (line, zone)));
    let zones = zones.map(|(line, (index, zone))| (zone.s_per_m, Subject::Zone(line, index)));
    let enormous = of_run.chain(zones).find(|(leakage, _)| *leakage > LEAKAGE_MOST);
    let text = if enormous.is_some() {
        (Severity::Warning, "leakage-enormous", Text::LeakageEnormous)
    } else if run.leakage_s_per_m.is_some_and(|leakage| leakage.abs() <= 0.0) {
        (Severity::Note, "leakage-zero", Text::LeakageZero)
    } else {
        return None;
    };
    let subject = enormous.map_or(Subject::Whole, |(_, subject)| subject);
    let found = Finding::new(text.1, text.0, defaults::COMMON_PRACTICE).about(subject);
    Some(found.says(look.say(text.2, &[("run", run_name(run))])))
}

/// Every live line of a net broken by several faults, or by one; on the run's line and on its branches.
fn all_lines(look: Look<'_>, run: &Run, volts: &Volts, lay: &Lay) -> Vec<Finding> {
    let at_m = |index: usize| volts.samples.iter().find(|sample| sample.of == SampleOf::Fault(index));
    let net_at = |chain_m: f64| {
        let last = lay.nets.len().checked_sub(1)?;
        Some(lay.nets.partition_point(|net| net.end_m <= chain_m).min(last))
    };
    let broken = of_lines(&run.faults)
        .filter_map(|(index, fault)| Some((Subject::Fault(None, index), fault, net_at(at_m(index)?.chain_m)?)));
    let mut found = all_lines_on(look, run_name(run), &broken.collect::<Vec<_>>(), lay);
    for laid in &lay.branches {
        let Some(branch) = run.branches.get(laid.branch) else { continue };
        let name = words::capital(&look.branch(run_name(run), laid.branch));
        let (run, lay) = (branch.alone(run), laid.alone());
        let net = |fault: &Fault| land(&run, &lay, fault.kind, fault.at).ok().map(|landing| landing.net);
        let broken = of_lines(&run.faults)
            .filter_map(|(index, fault)| Some((Subject::Fault(Some(laid.branch), index), fault, net(fault)?)));
        found.extend(all_lines_on(look, &name, &broken.collect::<Vec<_>>(), &lay));
    }
    found
}

fn of_lines(faults: &[Fault]) -> impl Iterator<Item = (usize, &Fault)> {
    faults.iter().enumerate().filter(|(_, fault)| fault.kind == FaultKind::LineBreak)
}

/// On one line of netting, which is called so: its broken lines, each with the net that it is in.
fn all_lines_on(look: Look<'_>, name: &str, broken: &[(Subject, &Fault, usize)], lay: &Lay) -> Vec<Finding> {
    let nets = lay.nets.iter().enumerate();
    let found = nets.filter_map(|(number, net)| {
        let here = broken.iter().filter(|(_, _, net)| *net == number);
        let subject = here.clone().next().map(|(subject, ..)| subject.clone()).unwrap_or_default();
        let lines: usize = here.clone().map(|(_, fault, _)| fault.lines.unwrap_or(1) as usize).sum();
        let all = look.plan.net_kind(&net.kind)?.live_line_heights_m().len();
        (lines > 0 && lines >= all).then(|| {
            Finding::new("all-lines-broken", Severity::Warning, OWN_FORMAT)
                .about(subject)
                .says(look.say(
                    if all == 1 { Text::AllLinesBrokenOne } else { Text::AllLinesBroken },
                    &[("run", name), ("net", &(number + 1).to_string()), ("lines", &all.to_string())],
                ))
                .at(here.map(|(_, fault, _)| fault.at).collect::<Vec<_>>())
        })
    });
    found.collect()
}
