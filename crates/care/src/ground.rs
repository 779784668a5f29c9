//! The run against its ground: paddock, keep-outs, coop.

use geometry::{Outline, Point, region};
use plan::{Run, RunStatus};
use words::texts::Findings as Text;
use workup::RunWorkup;

use crate::limits::OWN_FORMAT;
use crate::names::Named;
use crate::{Finding, Look, Severity, Subject, line, place, point, run_name};

/// Distances are kept to within this, metres: a micrometre of rounding is no trespass.
const GRAIN_M: f64 = 1e-6;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(line) = line(worked) else { return Vec::new() };
    let mut found = Vec::new();
    found.extend(leaves_paddock(look, run, &line));
    found.extend(keep_outs(look, run, &line));
    found.extend(coop(look, run, &line));
    found.extend(coops_cut(look, run, &line));
    found
}

fn leaves_paddock(look: Look<'_>, run: &Run, line: &Outline) -> Option<Finding> {
    let boundary = closed(&look.plan.ground.boundary)?;
    if region::inside(line, &boundary) {
        return None;
    }
    let mut places: Vec<_> = line.points().filter(|&at| !region::contains(&boundary, at)).map(place).collect();
    if places.is_empty() {
        places = region::crossings(line, &boundary).into_iter().map(|(at, _)| place(at)).collect();
    }
    let outside = |corner: &plan::Point| !region::contains(&boundary, point(*corner));
    let corner = run.outline.iter().position(outside);
    Some(
        Finding::new("leaves-paddock", Severity::Warning, OWN_FORMAT)
            .about(Subject::Outline(plan::Shape::Run(run.id.clone()), corner))
            .says(look.say(Text::LeavesPaddock, &[("run", run_name(run))]))
            .mends(look.words.text(Text::LeavesPaddockMend))
            .at(places),
    )
}

fn keep_outs(look: Look<'_>, run: &Run, line: &Outline) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, keep_out) in look.plan.ground.keep_outs.iter().enumerate() {
        let Some(outline) = closed(&keep_out.outline) else { continue };
        let name = look.amid(Named::KeepOut(index));
        let distance_m = match region::distance_within_m(line, &outline, keep_out.clearance_m()) {
            far if far.is_infinite() => far,
            _ if line.points().any(|at| region::contains(&outline, at)) => 0.0,
            near => near,
        };
        let subject = || Subject::Outline(plan::Shape::KeepOut(index), None);
        let new = |id| Finding::new(id, Severity::Warning, OWN_FORMAT).about(subject());
        // Also without a clearance the line may not go through it.
        let crosses = distance_m <= 0.0 && (keep_out.clearance_m() > 0.0 || cuts(line, &outline));
        if crosses || distance_m < keep_out.clearance_m() - GRAIN_M {
            let clearance = look.words.length(keep_out.clearance_m());
            let text = if keep_out.clearance_m() > 0.0 { Text::KeepOutTouched } else { Text::KeepOutCrossed };
            found.push(
                new("keep-out-touched")
                    .says(look.say(text, &[("run", run_name(run)), ("keep_out", &name), ("clearance", &clearance)]))
                    .at([nearest(line, &outline)]),
            );
        } else if line.is_closed()
            && !keep_out.may_enclose()
            && outline.points().next().is_some_and(|at| region::contains(line, at))
        {
            found.push(
                new("keep-out-enclosed")
                    .says(look.say(Text::KeepOutEnclosed, &[("run", run_name(run)), ("keep_out", &name)]))
                    .at([keep_out.outline[0]]),
            );
        }
    }
    found
}

/// Whether a line goes through an outline and does not only touch its edge: between two places where they meet it
/// is inside.
fn cuts(line: &Outline, outline: &Outline) -> bool {
    let mut meets_m: Vec<f64> =
        region::crossings(line, outline).into_iter().map(|(at, _)| line.nearest_along(at).0).collect();
    meets_m.extend(line.vertices().iter().map(|vertex| vertex.along_m));
    meets_m.push(line.length_m());
    meets_m.sort_by(f64::total_cmp);
    let inside =
        |pair: &[f64]| pair[1] - pair[0] > GRAIN_M && region::contains(outline, line.at(0.5 * (pair[0] + pair[1])));
    meets_m.windows(2).any(inside)
}

/// The place on the line's corners or the outline's that is nearest to the other.
fn nearest(line: &Outline, outline: &Outline) -> plan::Point {
    let on_line = |at: Point| line.at(line.nearest_along(at).0);
    outline
        .points()
        .map(on_line)
        .chain(line.points())
        .min_by(|&a, &b| region::distance_to_m(outline, a).total_cmp(&region::distance_to_m(outline, b)))
        .map_or(plan::Point::default(), place)
}

fn coop(look: Look<'_>, run: &Run, line: &Outline) -> Option<Finding> {
    let coop = look.plan.coop(run.coop.as_deref()?)?;
    if !is_outside(line, coop) {
        return None;
    }
    Some(
        Finding::new("coop-outside", Severity::Warning, OWN_FORMAT)
            .about(of_coop(look, coop))
            .says(look.say(Text::CoopOutside, &[("coop", &look.coop(coop)), ("run", run_name(run))]))
            .at([coop.at]),
    )
}

/// Whether a coop's middle stands outside of a line that shuts.
fn is_outside(line: &Outline, coop: &plan::Coop) -> bool {
    line.is_closed() && !region::contains(line, point(coop.at))
}

/// Coops that the net runs through. One whose middle stands outside of its own run is told of as that.
fn coops_cut(look: Look<'_>, run: &Run, line: &Outline) -> Vec<Finding> {
    // Where nets stood once a coop may stand.
    if run.status == RunStatus::Past {
        return Vec::new();
    }
    let outside = |coop: &plan::Coop| run.coop.as_deref() == Some(coop.id.as_str()) && is_outside(line, coop);
    // Most stand far off; to look whether walls are cut costs much more than to see that.
    let far = |coop: &plan::Coop| region::boxes_apart_m(coop.corners().into_iter().map(point), line.points()) > 0.0;
    let cut = |coop: &&plan::Coop| !far(coop) && closed(&coop.corners()).is_some_and(|walls| cuts(line, &walls));
    let found = |coop: &plan::Coop| {
        Finding::new("coop-cut", Severity::Warning, OWN_FORMAT)
            .about(of_coop(look, coop))
            .says(look.say(Text::CoopCut, &[("coop", &look.coop(coop)), ("run", run_name(run))]))
            .at([coop.at])
    };
    let coops = look.plan.coop.iter().chain(&look.plan.other_coops);
    coops.filter(|coop| !outside(coop)).filter(cut).map(found).collect()
}

/// A coop as the subject of a finding.
fn of_coop(look: Look<'_>, coop: &plan::Coop) -> Subject {
    let all = || look.plan.coop.iter().chain(&look.plan.other_coops);
    all().position(|other| other.id == coop.id).map_or(Subject::Whole, Subject::Coop)
}

/// Coops whose flock no run holds.
pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    let found = |coop: &plan::Coop| {
        let count = look.words.number(f64::from(coop.birds()), 0);
        Finding::new("coop-in-no-run", Severity::Warning, OWN_FORMAT)
            .about(of_coop(look, coop))
            .says(look.say(
                if coop.birds() == 1 { Text::CoopInNoRunOne } else { Text::CoopInNoRun },
                &[("coop", &look.coop(coop)), ("count", &count)],
            ))
            .at([coop.at])
    };
    look.plan.coops_without_run().into_iter().map(found).collect()
}

/// A closed outline, where it can be built.
pub(crate) fn closed(points: &[plan::Point]) -> Option<Outline> {
    let points: Vec<_> = points.iter().copied().map(point).collect();
    let faults = geometry::check_outline(&points, true);
    (!faults.iter().any(geometry::OutlineFault::is_fatal)).then(|| Outline::closed(&points))
}
