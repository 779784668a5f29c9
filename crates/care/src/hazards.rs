//! Things that can hurt: overhead lines, other fences, public ways; other earths are looked at with the earth stakes.
//!
//! Distances are straight, on the ground, from the line of netting to the hazard's path.
//! A run that is past is looked at no more.

use geometry::{Outline, region};
use plan::{Hazard, HazardKind, Run, RunStatus, defaults};
use words::texts::Findings as Text;
use workup::RunWorkup;

use crate::limits::{self, Limit};
use crate::names::Named;
use crate::{Finding, Look, Severity, Subject, line, place, point, run_name};

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    if run.status == RunStatus::Past {
        return Vec::new();
    }
    let mut found = Vec::new();
    let netting = line(worked);
    for (index, hazard) in look.plan.ground.hazards.iter().enumerate() {
        let (Some(path), Some(netting)) = (path(hazard), &netting) else { continue };
        let beside = Beside { look, run, netting, hazard, name: &look.amid(Named::Hazard(index)), path: &path };
        let near = match hazard.kind {
            HazardKind::OverheadLine => beside.overhead_line(),
            HazardKind::PublicWay => beside.public_way(),
            HazardKind::OtherEnergisedFence => beside.near("two-fences-near", Text::FenceNear, limits::BETWEEN_FENCES),
            // How far an earth is from the earth stakes is told with them.
            HazardKind::ForeignEarth => None,
        };
        found.extend(near.map(|near| near.about(subject(index))));
    }
    found
}

/// A hazard as the subject of a finding.
fn subject(hazard: usize) -> Subject {
    Subject::Outline(plan::Shape::Hazard(hazard), None)
}

/// Hazards that have no place on the map.
pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    let hazards = look.plan.ground.hazards.iter().enumerate();
    let lost = hazards.filter(|(_, hazard)| path(hazard).is_none());
    lost.map(|(index, _)| {
        Finding::new("hazard-without-path", Severity::Warning, limits::OWN_FORMAT)
            .about(subject(index))
            .says(look.say(Text::HazardNoPath, &[("hazard", &look.first(Named::Hazard(index)))]))
    })
    .collect()
}

/// A hazard's path as an open line; a single point is a path of no length.
fn path(hazard: &Hazard) -> Option<Outline> {
    let points: Vec<_> = hazard.path.iter().copied().map(point).collect();
    (!points.is_empty()).then(|| Outline::open(&points))
}

fn danger(id: &'static str, limit: Limit) -> Finding {
    Finding::new(id, Severity::Danger, limit.source)
}

/// A hazard's path, and the netting of a run.
#[derive(Clone, Copy)]
struct Beside<'a> {
    look: Look<'a>,
    run: &'a Run,
    netting: &'a Outline,
    hazard: &'a Hazard,
    /// What the hazard is called amid a sentence.
    name: &'a str,
    path: &'a Outline,
}

impl Beside<'_> {
    fn overhead_line(self) -> Option<Finding> {
        let Self { look, run, netting, path, .. } = self;
        let line_kv = self.hazard.line_voltage_kv.unwrap_or(defaults::OVERHEAD_LINE_VOLTAGE_KV);
        let limit = if line_kv <= limits::LOW_LINE_KV { limits::LOW_LINE } else { limits::HIGH_LINE };
        let crossings = region::crossings(netting, path);
        let beneath =
            !crossings.is_empty() || (netting.is_closed() && path.points().any(|at| region::contains(netting, at)));
        if !beneath {
            return self.near("overhead-line-near", Text::OverheadLineNear, limit);
        }
        let angles: Vec<String> =
            crossings.iter().map(|(_, angle_rad)| look.words.degrees(angle_rad.to_degrees())).collect();
        let why = if angles.is_empty() {
            String::new()
        } else {
            look.say(Text::OverheadLineCrossedWhy, &[("angle", &angles.join(", "))])
        };
        Some(
            danger("overhead-line-crossed", limit)
                .says(look.say(Text::OverheadLineCrossed, &[("run", run_name(run)), ("hazard", self.name)]))
                .because(why)
                .at(if crossings.is_empty() {
                    vec![nearest(netting, path)]
                } else {
                    crossings.into_iter().map(|(at, _)| place(at)).collect()
                }),
        )
    }

    fn public_way(self) -> Option<Finding> {
        let Self { look, run, netting, hazard, path, .. } = self;
        let crossings = region::crossings(netting, path);
        if !crossings.is_empty() {
            return (!(hazard.unpowered_gate && hazard.signed)).then(|| {
                danger("public-way-crossed", limits::ACROSS_WAY)
                    .says(look.say(Text::PublicWayCrossed, &[("run", run_name(run)), ("hazard", self.name)]))
                    .at(crossings.into_iter().map(|(at, _)| place(at)))
            });
        }
        let distance_m = region::distance_within_m(netting, path, limits::BESIDE_WAY.metres);
        if distance_m >= limits::BESIDE_WAY.metres || hazard.signed {
            return None;
        }
        let spacing = limits::SIGN_SPACING;
        let signs = signs(beside_m(netting, path), spacing.metres);
        let signs = if signs == 1 {
            look.words.text(Text::ASign).to_owned()
        } else {
            look.say(Text::Signs, &[("count", &signs.to_string())])
        };
        Some(
            danger("public-way-unsigned", spacing)
                .says(look.say(
                    Text::PublicWayUnsigned,
                    &[
                        ("run", run_name(run)),
                        ("hazard", self.name),
                        ("signs", &signs),
                        ("spacing", &look.words.far(spacing.metres)),
                    ],
                ))
                .at([nearest(netting, path)]),
        )
    }

    /// Where the path lies nearer to the netting than that.
    fn near(self, id: &'static str, said: Text, limit: Limit) -> Option<Finding> {
        let Self { look, run, netting, path, .. } = self;
        let distance_m = region::distance_within_m(netting, path, limit.metres);
        (distance_m < limit.metres).then(|| {
            danger(id, limit)
                .says(look.say(
                    said,
                    &[
                        ("run", run_name(run)),
                        ("distance", &look.words.length(distance_m)),
                        ("hazard", self.name),
                        ("limit", &look.words.length(limit.metres)),
                    ],
                ))
                .at([nearest(netting, path)])
        })
    }
}

/// Signs along a stretch: one at each end and none farther apart than the spacing.
fn signs(length_m: f64, spacing_m: f64) -> u32 {
    (length_m / spacing_m).ceil() as u32 + 1
}

/// How much of the netting stands beside the way, metres, walked in steps of a metre.
fn beside_m(netting: &Outline, path: &Outline) -> f64 {
    // A line of many kilometres is walked in longer steps; signs are counted by the fifty metres.
    let steps = netting.length_m().ceil().clamp(1.0, 5000.0) as usize;
    let step_m = netting.length_m() / steps as f64;
    let beside = |step: &usize| {
        region::distance_to_m(path, netting.at((*step as f64 + 0.5) * step_m)) < limits::BESIDE_WAY.metres
    };
    (0..steps).filter(beside).count() as f64 * step_m
}

/// Two standing runs on different energizers, each pair said once, with the later run.
pub(crate) fn between_runs(look: Look<'_>, index: usize, run: &Run) -> Vec<Finding> {
    let limit = limits::BETWEEN_FENCES;
    let mut found = Vec::new();
    let Some((stand, before)) = look.stands.get(..=index).and_then(<[_]>::split_last) else { return found };
    let Some(netting) = stand.line.as_ref().filter(|_| run.status == RunStatus::Standing) else { return found };
    for (other, other_stand) in look.plan.runs.iter().zip(before) {
        if other.status != RunStatus::Standing
            || !stand.may_near(other_stand, limit.metres)
            || !workup::earth::fed_apart(look.plan, run, other)
        {
            continue;
        }
        let Some(other_netting) = &other_stand.line else { continue };
        let distance_m = region::distance_within_m(netting, other_netting, limit.metres);
        if distance_m < limit.metres {
            found.push(
                danger("two-fences-near", limit)
                    .says(look.say(
                        Text::RunsNear,
                        &[
                            ("run", run_name(run)),
                            ("other", run_name(other)),
                            ("distance", &look.words.length(distance_m)),
                            ("limit", &look.words.length(limit.metres)),
                        ],
                    ))
                    .at([nearest(netting, other_netting)])
                    .with(&other.id),
            );
        }
    }
    found
}

/// The place on the netting that is nearest to the path, among both lines' corners.
fn nearest(netting: &Outline, path: &Outline) -> plan::Point {
    let on_netting = |at| netting.at(netting.nearest_along(at).0);
    path.points()
        .map(on_netting)
        .chain(netting.points())
        .min_by(|&a, &b| region::distance_to_m(path, a).total_cmp(&region::distance_to_m(path, b)))
        .map_or(plan::Point::default(), place)
}

#[cfg(test)]
mod tests {
    use super::signs;

    #[test]
    fn signs_stand_at_both_ends_and_no_farther_apart_than_the_spacing() {
        // From the definition: ceil(L / spacing) + 1.
        assert_eq!(signs(0.0, 50.0), 1);
        assert_eq!(signs(50.0, 50.0), 2);
        assert_eq!(signs(51.0, 50.0), 3);
    }
}
