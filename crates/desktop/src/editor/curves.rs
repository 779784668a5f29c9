//! Set-ups that are kept to compare with: their volts along the line and, at every post, over time.
//!
//! They are kept until the keeper lets them go or opens another plan, and are not saved; those of a run that is taken out
//! come back with it. Each is numbered in the order in which it was kept and named by what was different then: grass,
//! soil, stakes, whatever moves the volts.

use plan::{EarthStakes, Energizer, Plan, Run, Today};
use words::Words;
use words::texts::{Faults as Text, Power, Window};
use workup::power::PulseShape;
use workup::{Lay, Sample, SampleOf, Volts};

use super::Editor;

/// So many set-ups of one run are kept at a time: more lines in one plot are no picture.
pub(crate) const MOST_CURVES: usize = 3;
/// Figures nearer than this share are one.
const SAME_SHARE: f64 = 1e-6;

/// A set-up of a run that was kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The run's id.
    run: String,
    /// Whether the run was taken out since.
    lost: bool,
    /// The plan as it was.
    plan: Plan,
    /// Along the outline, metres, and kilovolts; in order, round a ring from its start to its end.
    pub along: Vec<(f64, f64)>,
    /// The weakest post then, kilovolts.
    pub weakest_kv: Option<f64>,
    /// The pulse over time then.
    pub pulse: Option<PulseShape>,
}

/// Figures of the posts and the feed by distance from corner 1; round a ring from its start to its end.
pub(crate) fn along(lay: &Lay, volts: &Volts, of: impl Fn(&Sample) -> f64) -> Vec<(f64, f64)> {
    let samples = volts.samples.iter().filter(|sample| !matches!(sample.of, SampleOf::Fault(_)));
    round(lay, samples.map(|sample| (sample.along_m, of(sample))).collect())
}

/// Figures by distance from corner 1 in order; where netting reaches all the way round, the last goes on to the first. They
/// come in the order of the chain: of two posts at one place, as at a join, the one that is met first stands first.
pub(crate) fn round(lay: &Lay, mut points: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    if lay.reversed {
        points.reverse();
    }
    // To the micrometre: posts at one place differ by rounding.
    points.sort_by(|one, other| (one.0 * 1e6).round().total_cmp(&(other.0 * 1e6).round()));
    if let (true, Some(&first), Some(&last)) = (lay.closed && lay.short_m <= 0.0, points.first(), points.last()) {
        let gap_m = first.0 + lay.line_m - last.0;
        if gap_m > 0.0 {
            let seam = last.1 + (first.1 - last.1) * (lay.line_m - last.0) / gap_m;
            points.insert(0, (0.0, seam));
            points.push((lay.line_m, seam));
        }
    }
    points
}

impl Editor {
    /// The set-ups that are kept of the run in hand, in the order in which they were.
    pub fn curves(&self) -> impl Iterator<Item = &Curve> {
        let id = self.plan.runs.get(self.run).map(|run| &run.id);
        self.curves.iter().filter(move |curve| Some(&curve.run) == id)
    }

    /// What the set-up with a number, from 0, is called: `kept 1: long, wet grass`.
    pub fn curve_name(&self, number: usize, curve: &Curve) -> String {
        let words = self.words;
        let was = curve.plan.runs.iter().find(|run| run.id == curve.run);
        let changes = match (was, self.plan.runs.get(self.run)) {
            (Some(was), Some(now)) => changes((&curve.plan, was), (&self.plan, now), words),
            _ => Vec::new(),
        };
        let change = match changes.as_slice() {
            [] if self.is_as_now(curve) => words.text(Text::CurveAsNow).to_owned(),
            [] => words.text(Text::CurveElse).to_owned(),
            [one] => one.clone(),
            [one, two] => words.say(Text::CurveTwo, &[("one", one), ("two", two)]),
            [one, two, ..] => words.say(Text::CurveMore, &[("one", one), ("two", two)]),
        };
        words.say(Text::CurveNamed, &[("number", &(number + 1).to_string()), ("change", &change)])
    }

    /// Whether the volts of the run in hand are those that were kept: much that is stated moves them, and not all of it is
    /// named.
    fn is_as_now(&self, curve: &Curve) -> bool {
        if self.plan == curve.plan {
            return true;
        }
        let Some((run, worked)) = self.run() else { return false };
        let (Some(lay), Some(volts)) = (&worked.lay, &worked.volts) else { return false };
        let was = curve.plan.run(&curve.run);
        let now = along(lay, volts, |sample| sample.peak_kv);
        was.is_some_and(|was| unit(&curve.plan, was) == unit(&self.plan, run))
            && now.len() == curve.along.len()
            && now.iter().zip(&curve.along).all(|(now, was)| !differ(now.0, was.0) && !differ(now.1, was.1))
    }

    /// What was kept of runs that are gone waits for them to come back. Another run that was given the id of one is not
    /// the one that came back, and lets it go.
    pub(super) fn lose_curves(&mut self) {
        let plan = &self.plan;
        self.curves.retain(|curve| !curve.lost || plan.run(&curve.run).is_none());
        self.curves.iter_mut().for_each(|curve| curve.lost = plan.run(&curve.run).is_none());
    }

    /// A step was taken back or done again: the run that is there once more is the one that was gone.
    pub(super) fn find_curves(&mut self) {
        let plan = &self.plan;
        self.curves.iter_mut().for_each(|curve| curve.lost &= plan.run(&curve.run).is_none());
    }

    /// Keeps the run in hand as it is.
    pub(super) fn keep_curve(&mut self) {
        if self.curves().count() >= MOST_CURVES {
            return;
        }
        let Some((run, worked)) = self.run() else { return };
        let (Some(lay), Some(volts)) = (&worked.lay, &worked.volts) else { return };
        let curve = Curve {
            run: run.id.clone(),
            lost: false,
            along: along(lay, volts, |sample| sample.peak_kv),
            weakest_kv: volts.weakest.map(|weakest| weakest.peak_kv),
            pulse: workup::power::pulse_shape(&self.plan, &run.id),
            plan: self.plan.clone(),
        };
        self.curves.push(curve);
    }

    /// Lets the set-up of the run in hand with a number, from 0, go.
    pub(super) fn let_curve_go(&mut self, number: usize) {
        let Some(id) = self.plan.runs.get(self.run).map(|run| run.id.clone()) else { return };
        let own = self.curves.iter().enumerate().filter(|(_, curve)| curve.run == id).nth(number);
        if let Some((index, _)) = own {
            self.curves.remove(index);
        }
    }
}

/// How a set-up was where it was not as now: what moves the volts most first.
fn changes((plan, run): (&Plan, &Run), (plan_now, now): (&Plan, &Run), words: Words) -> Vec<String> {
    let mut changes = Vec::new();
    let faults = |run: &Run| run.lines().map(|line| run.faults_on(line).to_vec()).collect::<Vec<_>>();
    if faults(run) != faults(now) {
        changes.push(match run.lines().flat_map(|line| run.faults_on(line)).next() {
            Some(fault) => words.say(Text::WithFaults, &[("name", care::fault_said::called(fault, words))]),
            None => words.text(Text::WithoutFaults).to_owned(),
        });
    }
    let (today, today_now) = (plan.ground.today, plan_now.ground.today);
    if today.unwrap_or(Today::Damp) != today_now.unwrap_or(Today::Damp) {
        let word = words.text(care::bracing::today_word(today.unwrap_or(Today::Damp)));
        changes.push(words.say(Text::GroundWas, &[("word", word)]));
    }
    changes.extend(grass(run, now, words));
    let (soil, soil_now) = (plan.ground.soil.resistivity_ohm_m(), plan_now.ground.soil.resistivity_ohm_m());
    if differ(soil, soil_now) {
        changes.push(words.say(Power::SoilOf, &[("ohm_m", &words.number(soil, 0))]));
    }
    changes.extend(earth(run, now, words));
    let (unit, unit_now) = (unit(plan, run), self::unit(plan_now, now));
    // One that was changed under its name is not told by it.
    if unit.map(|unit| &unit.id) != unit_now.map(|unit| &unit.id) {
        let assumed = || words.text(Window::AnEnergizer).to_owned();
        changes.push(unit.map_or_else(assumed, |unit| unit.id.clone()));
    }
    if run.join_ohm != now.join_ohm {
        changes.push(words.say(Text::JoinsWere, &[("ohm", &words.ohms(run.join_ohm.unwrap_or(0.0)))]));
    }
    let lead = |plan: &Plan, run: &Run| workup::lead::lead(plan, run).ohm;
    if differ(lead(plan, run), lead(plan_now, now)) {
        changes.push(words.say(Text::LeadWas, &[("ohm", &words.ohms(lead(plan, run)))]));
    }
    if run.live_loop() != now.live_loop() {
        let word = words.text(if run.live_loop() { Text::Clipped } else { Text::OnlyTied });
        changes.push(words.say(Text::GateWas, &[("word", word)]));
    }
    let netting = |plan: &Plan, run: &Run| {
        (run.outline.clone(), run.nets.clone(), run.untried().branches, run.feed_at, plan.store.nets.clone())
    };
    if netting(plan, run) != netting(plan_now, now) {
        changes.push(words.text(Text::OtherNetting).to_owned());
    }
    changes
}

/// The energizer that a run names, else the store's first.
fn unit<'a>(plan: &'a Plan, run: &Run) -> Option<&'a Energizer> {
    let units = &plan.store.energizers;
    run.energizer.as_ref().map_or(units.first(), |id| units.iter().find(|unit| unit.id == *id))
}

/// The grass: by its word, or where that is the same by whether it was less.
fn grass(run: &Run, now: &Run, words: Words) -> Option<String> {
    let (was, is) = (run.leakage_s_per_m(), now.leakage_s_per_m());
    if differ(was, is) {
        let (word, word_now) = (care::fault_said::grass(was), care::fault_said::grass(is));
        return Some(match word {
            _ if word == word_now => words.text(if was < is { Text::LessGrass } else { Text::MoreGrass }).to_owned(),
            Window::GrassNone => words.text(Text::ZoneBare).to_owned(),
            word => words.say(Text::Zone, &[("grass", words.text(word))]),
        });
    }
    let zones = |run: &Run| {
        let of = |line| {
            let zones = run.zones_on(line).iter();
            zones.map(move |zone| (line, zone.from_m, zone.to_m, zone.s_per_m)).collect::<Vec<_>>()
        };
        run.lines().flat_map(of).collect::<Vec<_>>()
    };
    let (was, is) = (zones(run), zones(now));
    (was != is).then(|| words.text(if was.is_empty() { Text::EvenGrass } else { Text::OtherGrass }).to_owned())
}

/// The earth: a measured one by its ohms, stakes by their number.
fn earth(run: &Run, now: &Run, words: Words) -> Option<String> {
    if let Some(ohm) = run.earth_ohm {
        return (run.earth_ohm != now.earth_ohm).then(|| words.say(Text::EarthWas, &[("ohm", &words.ohms(ohm))]));
    }
    let count = |stakes: &EarthStakes| stakes.count();
    if now.earth_ohm.is_some() || count(&run.earth_stakes) != count(&now.earth_stakes) {
        return Some(match count(&run.earth_stakes) {
            1 => words.text(Text::OneStakeWas).to_owned(),
            count => words.say(Text::StakesWere, &[("count", &count.to_string())]),
        });
    }
    (run.earth_stakes != now.earth_stakes).then(|| words.text(Text::StakesElsewhere).to_owned())
}

fn differ(one: f64, other: f64) -> bool {
    (one - other).abs() > SAME_SHARE * one.abs().max(other.abs())
}

#[cfg(test)]
mod tests {
    use super::{Lay, round};

    #[test]
    fn a_step_at_a_join_is_upright_whichever_way_the_nets_are_laid() {
        // The chain's order: 1.5 kV before the join at 10 m, 0.7 kV behind it.
        let onward = [(0.0, 1.5), (10.0, 1.5), (10.0 + 1e-12, 0.7), (20.0, 0.7)];
        let lay = |reversed| Lay { reversed, line_m: 20.0, ..Lay::default() };
        let kv = |points: Vec<(f64, f64)>| points.iter().map(|at| at.1).collect::<Vec<f64>>();
        assert_eq!(kv(round(&lay(false), onward.to_vec())), [1.5, 1.5, 0.7, 0.7]);
        let back = onward.map(|(along_m, kv)| (20.0 - along_m, kv));
        assert_eq!(kv(round(&lay(true), back.to_vec())), [0.7, 0.7, 1.5, 1.5]);
    }
}
