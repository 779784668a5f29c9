//! Nets, corners, braces and the store.

use std::collections::BTreeMap;

use geometry::region;
use plan::{Run, RunStatus, defaults::COMMON_PRACTICE};
use words::texts::Findings as Text;
use workup::bracing::Detail;
use workup::{Corner, Lay, RunWorkup, Verdict};

use crate::limits::{OWN_FORMAT, STAKE_TO_NET, STATICS};
use crate::{Finding, Look, Severity, Subject, point, run_name};

/// Lengths nearer than this meet, metres (the model's own rule).
const MEET_M: f64 = geometry::MEET_M;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let mut found = Vec::new();
    if let Some(lay) = &worked.lay {
        found.extend(length(look, run, lay));
        found.extend(between_posts(look, run, lay));
        found.extend(leaning(look, run, lay));
        found.extend(ends(look, run, lay));
        found.extend(stated_braces(look, run, worked, lay));
        found.extend(bends(look, run, lay));
        found.extend(store(look, run, lay));
    }
    found
}

/// Nets of the standing runs together against the store.
pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    let mut standing: BTreeMap<&str, u32> = BTreeMap::new();
    let mut runs = 0;
    for (run, worked) in look.plan.runs.iter().zip(&look.workup.runs) {
        if let (RunStatus::Standing, Some(lay)) = (run.status, &worked.lay) {
            runs += 1;
            for net in lay.nets.iter().chain(lay.branches.iter().flat_map(|branch| &branch.nets)) {
                *standing.entry(&net.kind).or_insert(0) += 1;
            }
        }
    }
    if runs < 2 {
        return Vec::new();
    }
    too_few(look, &standing)
        .map(|(net, wanted, owned)| {
            Finding::new("standing-too-many", Severity::Warning, OWN_FORMAT).about(Subject::Net(net.to_owned())).says(
                look.say(
                    Text::StandingTooMany,
                    &[("net", net), ("wanted", &wanted.to_string()), ("owned", &owned.to_string())],
                ),
            )
        })
        .collect()
}

fn too_few<'a>(look: Look<'a>, wanted: &BTreeMap<&'a str, u32>) -> impl Iterator<Item = (&'a str, u32, u32)> {
    let wanted = wanted.clone();
    wanted.into_iter().filter_map(move |(net, wanted)| {
        let owned = look.plan.net_kind(net).map_or(0, plan::NetKind::count);
        (wanted > owned).then_some((net, wanted, owned))
    })
}

fn store(look: Look<'_>, run: &Run, lay: &Lay) -> Vec<Finding> {
    let mut wanted: BTreeMap<&str, u32> = BTreeMap::new();
    for net in &lay.nets {
        *wanted.entry(&net.kind).or_insert(0) += 1;
    }
    too_few(look, &wanted)
        .map(|(net, wanted, owned)| {
            let owned = owned.to_string();
            let places = [("run", run_name(run)), ("net", net), ("wanted", &*wanted.to_string()), ("owned", &*owned)];
            Finding::new("store-too-small", Severity::Warning, OWN_FORMAT)
                .about(Subject::Net(net.to_owned()))
                .says(look.say(Text::StoreTooSmall, &places))
        })
        .collect()
}

fn length(look: Look<'_>, run: &Run, lay: &Lay) -> Option<Finding> {
    if lay.short_m >= MEET_M {
        let nets_m = lay.line_m - lay.short_m;
        return Some(
            Finding::new("net-too-short", Severity::Warning, OWN_FORMAT)
                .says(
                    look.say(
                        Text::NetTooShort,
                        &[("run", run_name(run)), ("short", &look.words.fine_length(lay.short_m))],
                    ),
                )
                .mends(look.words.text(Text::NetTooShortMend))
                .because(look.say(
                    Text::NetTooShortWhy,
                    &[("line", &look.words.length(lay.line_m)), ("nets", &look.words.length(nets_m))],
                ))
                .at(lay.corners.iter().filter(|corner| corner.end).map(|corner| corner.at)),
        );
    }
    (lay.spare_m >= MEET_M).then(|| {
        Finding::new("spare-netting", Severity::Note, COMMON_PRACTICE)
            .says(
                look.say(
                    Text::SpareNetting,
                    &[("run", run_name(run)), ("spare", &look.words.fine_length(lay.spare_m))],
                ),
            )
            .at(lay.spare_posts.last().map(|post| post.at))
    })
}

/// Corners' numbers as the map shows them, from 1.
fn numbers<'a>(corners: impl IntoIterator<Item = &'a Corner>) -> Vec<usize> {
    corners.into_iter().filter_map(|corner| corner.vertex).map(|vertex| vertex + 1).collect()
}

fn between_posts(look: Look<'_>, run: &Run, lay: &Lay) -> Option<Finding> {
    let off: Vec<&Corner> = lay.corners.iter().filter(|corner| !corner.end && corner.to_post_m >= MEET_M).collect();
    let miss_m = off.iter().map(|corner| corner.to_post_m).fold(0.0, f64::max);
    let text = match off.len() {
        0 => return None,
        1 => Text::CornerBetweenPosts,
        _ => Text::CornersBetweenPosts,
    };
    let farthest = off.iter().copied().rev().max_by(|a, b| a.to_post_m.total_cmp(&b.to_post_m));
    let corners = look.corners(&numbers(off.iter().copied()));
    let miss = look.words.fine_length(miss_m);
    Some(
        Finding::new("corner-between-posts", Severity::Warning, OWN_FORMAT)
            .about(farthest.map_or(Subject::Whole, |corner| of_corner(lay, corner)))
            .says(look.say(text, &[("run", run_name(run)), ("corners", &corners), ("miss", &miss)]))
            .mends(look.words.text(Text::CornerBetweenPostsMend))
            .at(off.iter().map(|corner| corner.at)),
    )
}

/// A corner as the subject of a finding.
fn of_corner(lay: &Lay, corner: &Corner) -> Subject {
    let here = lay.corners.iter().position(|other| std::ptr::eq(other, corner));
    here.map_or(Subject::Whole, Subject::Corner)
}

/// The corner that pulls hardest beyond what it holds; of like ones the first.
fn worst<'a>(corners: &[&'a Corner]) -> Option<&'a Corner> {
    corners.iter().copied().rev().max_by(|a, b| (a.pull_n - a.hold_n).total_cmp(&(b.pull_n - b.hold_n)))
}

fn leaning(look: Look<'_>, run: &Run, lay: &Lay) -> Vec<Finding> {
    let mut found = Vec::new();
    for (verdict, id, severity) in
        [(Verdict::Required, "corner-leans", Severity::Warning), (Verdict::Advised, "corner-may-lean", Severity::Note)]
    {
        let leaning: Vec<&Corner> =
            lay.corners.iter().filter(|corner| !corner.end && corner.verdict == verdict && !corner.braced).collect();
        let Some(worst) = worst(&leaning) else { continue };
        let text = match (verdict, leaning.len()) {
            (Verdict::Required, 1) => Text::CornerLeans,
            (Verdict::Required, _) => Text::CornersLean,
            _ => Text::CornerMayLean,
        };
        let corners = look.corners(&numbers(leaning.iter().copied()));
        found.push(
            Finding::new(id, severity, STATICS)
                .about(of_corner(lay, worst))
                .says(look.say(text, &[("run", run_name(run)), ("corners", &corners)]))
                .because(pull_and_hold(look, Text::CornerLeansWhy, worst.pull_n, worst.hold_n))
                .at(leaning.iter().map(|corner| corner.at)),
        );
    }
    let inside: Vec<&Corner> =
        lay.corners.iter().filter(|corner| corner.dents && corner.verdict != Verdict::None).collect();
    if let Some(first) = inside.first() {
        let corners = look.corners(&numbers(inside.iter().copied()));
        found.push(
            Finding::new("brace-inside", Severity::Note, STATICS)
                .about(of_corner(lay, first))
                .says(look.say(Text::BraceInside, &[("run", run_name(run)), ("corners", &corners)]))
                .at(inside.iter().map(|corner| corner.stake.at)),
        );
    }
    found
}

fn pull_and_hold(look: Look<'_>, text: Text, pull_n: f64, hold_n: f64) -> String {
    look.say(text, &[("pull", &look.words.force(pull_n)), ("hold", &look.words.force(hold_n))])
}

fn ends(look: Look<'_>, run: &Run, lay: &Lay) -> Option<Finding> {
    let open: Vec<&Corner> = lay.corners.iter().filter(|corner| corner.end && !corner.braced).collect();
    let worst = worst(&open)?;
    Some(
        Finding::new("end-needs-brace", Severity::Warning, STATICS)
            .about(of_corner(lay, worst))
            .says(look.say(Text::EndNeedsBrace, &[("run", run_name(run))]))
            .because(pull_and_hold(look, Text::EndNeedsBraceWhy, worst.pull_n, worst.hold_n))
            .at(open.iter().map(|corner| corner.at)),
    )
}

fn stated_braces(look: Look<'_>, run: &Run, worked: &RunWorkup, lay: &Lay) -> Option<Finding> {
    let bracing = worked.bracing.as_ref()?;
    let all = lay.corners.iter().zip(&bracing.details).filter(|(corner, _)| corner.brace_too_weak());
    let weak: Vec<&Corner> = all.clone().map(|(corner, _)| corner).collect();
    let safety = |detail: &Detail| detail.stated.as_ref().map_or(0.0, |judged| judged.safety);
    let (worst, detail) = all.min_by(|a, b| safety(a.1).total_cmp(&safety(b.1)))?;
    let hold_n = worst.pull_n * safety(detail);
    let numbers = numbers(weak.iter().copied());
    let corners = if numbers.is_empty() { look.words.text(Text::AnEnd).to_owned() } else { look.corners(&numbers) };
    Some(
        Finding::new("brace-too-weak", Severity::Warning, STATICS)
            .about(of_corner(lay, worst))
            .says(look.say(Text::BraceTooWeak, &[("run", run_name(run)), ("corners", &corners)]))
            .because(look.say(
                Text::BraceTooWeakWhy,
                &[
                    ("pull", &look.words.force(worst.pull_n)),
                    ("hold", &look.words.force(hold_n)),
                    ("wanted", &look.words.number(bracing.wanted, 1)),
                ],
            ))
            .at(weak.iter().map(|corner| corner.at)),
    )
}

fn bends(look: Look<'_>, run: &Run, lay: &Lay) -> Option<Finding> {
    let worst = lay.bends.iter().max_by(|a, b| (a.pull_n - a.hold_n).total_cmp(&(b.pull_n - b.hold_n)))?;
    Some(
        Finding::new("bend-leans", Severity::Warning, STATICS)
            .says(look.say(Text::BendLeans, &[("run", run_name(run))]))
            .because(pull_and_hold(look, Text::BendLeansWhy, worst.pull_n, worst.hold_n))
            .at(lay.bends.iter().flat_map(|bend| [bend.first, bend.last])),
    )
}

fn same(one: plan::Point, other: plan::Point) -> bool {
    point(one).distance_m(point(other)) <= workup::earth::SAME_STAKE_M
}

/// Metal stakes (of braces that are wanted, and the earth's) that stand too near to any netting.
pub(crate) fn stakes(look: Look<'_>, index: usize, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let lay = worked.lay.as_ref()?;
    let own = look.stands.get(index)?.netting.as_ref()?;
    let guyed = || lay.corners.iter().filter(|corner| corner.braced || corner.verdict != Verdict::None);
    let braces = guyed().map(|corner| (corner.stake.at, of_corner(lay, corner)));
    // An earth stake that is a brace's stake is said once.
    let both = |at: &plan::Point| guyed().any(|corner| corner.kit.earth && same(corner.stake.at, *at));
    let earths = workup::earth::known(run).into_iter().enumerate().filter(|(_, at)| !both(at));
    let earths = earths.map(|(stake, at)| (at, Subject::EarthStake(stake)));
    let all: Vec<(plan::Point, Subject)> = braces.chain(earths).collect();
    let others = look.plan.runs.iter().zip(look.stands).filter(|(other, stand)| {
        other.status == RunStatus::Standing
            && run.status == RunStatus::Standing
            && other.id != run.id
            && all.iter().any(|&(stake, _)| stand.may_near_place(stake, STAKE_TO_NET.metres))
    });
    let others = others.filter_map(|(other, stand)| Some((Some(other), stand.netting.as_ref()?)));
    let nettings: Vec<(Option<&Run>, &geometry::Outline)> = std::iter::once((None, own)).chain(others).collect();
    let near: Vec<(f64, plan::Point, Subject, Option<&Run>)> = all
        .into_iter()
        .filter_map(|(stake, subject)| {
            let off = nettings.iter().map(|&(of, netting)| (region::distance_to_m(netting, point(stake)), of));
            let (distance_m, of) = off.min_by(|one, other| one.0.total_cmp(&other.0))?;
            (distance_m < STAKE_TO_NET.metres - 1e-9).then_some((distance_m, stake, subject, of))
        })
        .collect();
    let nearest = near.iter().min_by(|one, other| one.0.total_cmp(&other.0)).cloned();
    nearest.map(|(nearest_m, _, subject, of)| {
        let found = Finding::new("stake-near-net", Severity::Warning, STAKE_TO_NET.source).about(subject);
        // Near to another's net it is a matter of that one as well.
        let found = if let Some(other) = of { found.with(&other.id) } else { found };
        found
            .says(look.say(
                Text::StakeNearNet,
                &[
                    ("run", run_name(run)),
                    ("distance", &look.words.fine_length(nearest_m)),
                    ("limit", &look.words.fine_length(STAKE_TO_NET.metres)),
                ],
            ))
            .at(near.into_iter().map(|(_, stake, ..)| stake))
    })
}
