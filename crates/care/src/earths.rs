//! Earth stakes: what they keep off, what is stated twice, and the one that holds a corner as well.
//!
//! Distances are straight, on the ground, from every stake whose place is stated. Which way a row of stakes runs is not
//! stated, so it may run toward what it should keep off. A run that is past is looked at no more.

use plan::{BraceKind, Hazard, HazardKind, Plan, Run, RunStatus};
use words::Words;
use words::texts::{Damp, Earth, Findings as Text};
use workup::earth::EarthStake;
use workup::{RunWorkup, Workup, earth};

use crate::limits::{self, OWN_FORMAT};
use crate::names::{self, Named};
use crate::{Finding, Look, Severity, Subject, point, run_name};

/// Places nearer than this are one, metres.
const SAME_PLACE_M: f64 = 0.01;
/// Below this a distance from the net is told to the centimetre, metres.
const FINE_M: f64 = 2.0;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    if run.status == RunStatus::Past {
        return Vec::new();
    }
    let hazards = look.plan.ground.hazards.iter().enumerate();
    let foreign = hazards.filter_map(|(index, hazard)| foreign_earth(look, run, index, hazard));
    foreign.chain(twice_stated(look, run)).chain(short_stake(look, run, worked)).collect()
}

/// Standing runs on different energizers whose earths are near each other, each pair said once, with the later run.
pub(crate) fn between_runs(look: Look<'_>, index: usize, run: &Run) -> Vec<Finding> {
    let limit = limits::EARTHS_OF_FENCES;
    let own = earth::known(run);
    let in_row = |other: &Run| row_m(run) + row_m(other);
    if run.status != RunStatus::Standing || own.is_empty() {
        return Vec::new();
    }
    let near = |other: &Run| {
        let theirs = earth::known(other);
        let pairs = own.iter().flat_map(|&one| theirs.iter().map(move |&other| (one, other)));
        let off_m =
            |(one, two): (plan::Point, plan::Point)| (point(one).distance_m(point(two)) - in_row(other)).max(0.0);
        let nearest = pairs.map(|pair| (off_m(pair), pair)).min_by(|one, other| one.0.total_cmp(&other.0));
        nearest.filter(|(distance_m, _)| *distance_m < limit.metres)
    };
    let others = look.plan.runs.iter().take(index).filter(|other| other.status == RunStatus::Standing);
    let apart = others.filter(|other| earth::fed_apart(look.plan, run, other));
    apart
        .filter_map(|other| near(other).map(|near| (other, near)))
        .map(|(other, (distance_m, (one, two)))| {
            let text = if in_row(other) > 0.0 { Text::EarthRowsNear } else { Text::EarthsNear };
            Finding::new("earths-near", Severity::Warning, limit.source)
                .says(look.say(
                    text,
                    &[
                        ("run", run_name(run)),
                        ("other", run_name(other)),
                        ("distance", &look.words.length(distance_m)),
                        ("limit", &look.words.length(limit.metres)),
                    ],
                ))
                .at([one, two])
                .about(of_stake(&own, one))
                .with(&other.id)
        })
        .collect()
}

/// An earth stake as the subject of a finding.
fn of_stake(stakes: &[plan::Point], at: plan::Point) -> Subject {
    stakes.iter().position(|&stake| stake == at).map_or(Subject::Whole, Subject::EarthStake)
}

/// How far the stakes of a row go on from the first: which way is not stated.
fn row_m(run: &Run) -> f64 {
    let in_row = run.earth_stakes.places.is_empty();
    let further = if in_row { f64::from(run.earth_stakes.count().saturating_sub(1)) } else { 0.0 };
    further * run.earth_stakes.spacing_m()
}

fn foreign_earth(look: Look<'_>, run: &Run, index: usize, hazard: &Hazard) -> Option<Finding> {
    if hazard.kind != HazardKind::ForeignEarth || hazard.path.is_empty() {
        return None;
    }
    let limit = limits::BETWEEN_EARTHS;
    let name = look.amid(Named::Hazard(index));
    let limit_said = look.words.length(limit.metres);
    let stakes = earth::known(run);
    if stakes.is_empty() {
        let places = [("run", run_name(run)), ("hazard", &*name), ("limit", &*limit_said)];
        return Some(
            Finding::new("foreign-earth-unchecked", Severity::Warning, limit.source)
                .says(look.say(Text::ForeignEarthUnplaced, &places))
                .at(hazard.path.first().copied()),
        );
    }
    let off_m = |stake: plan::Point| Some((earth::foreign_m(hazard, stake)? - row_m(run)).max(0.0));
    let far = stakes.iter().copied().filter_map(|stake| Some((off_m(stake)?, stake)));
    let mut near: Vec<(f64, plan::Point)> = far.filter(|(distance_m, _)| *distance_m < limit.metres).collect();
    near.sort_by(|one, other| one.0.total_cmp(&other.0));
    let &(distance_m, nearest) = near.first()?;
    Some(
        Finding::new("foreign-earth-near", Severity::Danger, limit.source)
            .about(of_stake(&stakes, nearest))
            .says(look.say(
                Text::ForeignEarthNear,
                &[
                    ("run", run_name(run)),
                    ("distance", &look.words.length(distance_m)),
                    ("hazard", &name),
                    ("limit", &limit_said),
                ],
            ))
            .at(near.into_iter().map(|(_, stake)| stake)),
    )
}

/// Stakes that stand on the map while their row is stated otherwise.
fn twice_stated(look: Look<'_>, run: &Run) -> Option<Finding> {
    let stated = &run.earth_stakes;
    let first = *stated.places.first()?;
    let on_map = stated.count();
    let new = || Finding::new("earth-stakes-differ", Severity::Note, OWN_FORMAT).about(Subject::EarthStake(0));
    let note = |text: String| new().says(text);
    if let Some(count) = stated.count.filter(|&count| count != on_map) {
        let places = [("run", run_name(run)), ("stated", &*count.to_string()), ("placed", &*on_map.to_string())];
        return Some(note(look.say(Text::EarthStakesDiffer, &places)).at(stated.places.iter().copied()));
    }
    let at = stated.at.filter(|&at| point(at).distance_m(point(first)) > SAME_PLACE_M)?;
    Some(note(look.say(Text::EarthFirstDiffers, &[("run", run_name(run))])).at([at, first]))
}

/// An earth stake that is a brace's stake too, and shorter or thinner than the brace was worked out with.
fn short_stake(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let lay = worked.lay.as_ref()?;
    let (stake, rule) = (&look.plan.store.earth_stake, &look.plan.store.brace);
    let short = |corner: &&workup::Corner| {
        let guyed = corner.kit.earth && corner.kit.kind == BraceKind::Guy && corner.needs_brace();
        let thin = stake.diameter_m() < rule.stake_diameter_m() - 1e-9;
        guyed && (thin || stake.length_m() < corner.kit.length_m - 1e-9)
    };
    let corners: Vec<_> = lay.corners.iter().filter(short).collect();
    let wanted_m = corners.iter().map(|corner| corner.kit.length_m).reduce(f64::max)?;
    Some(
        Finding::new("earth-stake-weak", Severity::Warning, OWN_FORMAT)
            .says(look.say(
                Text::EarthStakeWeak,
                &[
                    ("run", run_name(run)),
                    ("length", &look.words.fine_length(wanted_m)),
                    ("thick", &look.words.fine_length(rule.stake_diameter_m())),
                ],
            ))
            .at(corners.into_iter().map(|corner| corner.stake.at)),
    )
}

/// How far off what an earth stake stands, in one line; of one whose place is not stated, that it is not.
pub fn said(plan: &Plan, workup: &Workup, run: usize, stake: &EarthStake, words: Words) -> String {
    if !stake.placed {
        return words.text(Earth::NotPlaced).to_owned();
    }
    in_line(parts(plan, workup, run, stake, words), words)
}

/// What matters while a stake is in the hand: net, other earths, and the corner that it holds.
pub fn said_in_hand(plan: &Plan, workup: &Workup, run: usize, stake: &EarthStake, words: Words) -> String {
    let [net, _, energizer, _, foreign, other, holds] = parts(plan, workup, run, stake, words);
    in_line([net, energizer, foreign, other, holds], words)
}

/// What there is of several things, one after the other.
fn in_line<const MOST: usize>(parts: [Option<String>; MOST], words: Words) -> String {
    let next = |said: String, next: String| words.say(Earth::AndNext, &[("said", &said), ("next", &next)]);
    parts.into_iter().flatten().reduce(next).unwrap_or_default()
}

fn parts(plan: &Plan, workup: &Workup, run: usize, stake: &EarthStake, words: Words) -> [Option<String>; 7] {
    let off = |text: Earth, metres: f64| words.say(text, &[("off", &words.length(metres))]);
    let net = off_net(stake, words);
    let foreign = stake.foreign.map(|(hazard, metres)| {
        let name = names::amid(plan, words, Named::Hazard(hazard));
        words.say(Earth::FromForeign, &[("off", &words.length(metres)), ("hazard", &name)])
    });
    let other = stake.other_run.and_then(|(other, metres)| {
        let name = run_name(plan.runs.get(other)?);
        Some(words.say(Earth::FromRun, &[("off", &words.length(metres)), ("run", name)]))
    });
    [
        net,
        stake.feed_m.map(|metres| off(Earth::FromTheFeed, metres)),
        stake.energizer_m.map(|metres| words.say(Damp::FromTheEnergizer, &[("off", &words.length(metres))])),
        stake.next_m.map(|metres| off(Earth::FromTheNext, metres)),
        foreign,
        other,
        holds(workup, run, stake, words),
    ]
}

/// How far off the net, to the centimetre where that matters.
pub fn off_net(stake: &EarthStake, words: Words) -> Option<String> {
    let fine = |metres: f64| if metres < FINE_M { words.fine_length(metres) } else { words.length(metres) };
    stake.net_m.map(|metres| words.say(Earth::OffTheNet, &[("off", &fine(metres))]))
}

/// Which corner an earth stake holds as a brace's stake, in words.
pub fn holds(workup: &Workup, run: usize, stake: &EarthStake, words: Words) -> Option<String> {
    let corner = workup.runs.get(run)?.lay.as_ref()?.corners.get(stake.corner?)?;
    Some(corner.vertex.map_or_else(
        || words.text(Earth::HoldsEnd).to_owned(),
        |vertex| words.say(Earth::HoldsCorner, &[("number", &(vertex + 1).to_string())]),
    ))
}
