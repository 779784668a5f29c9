//! Tags where findings have a place.

use std::f64::consts::FRAC_PI_2;

use care::Finding;
use plan::Point;

use super::Sheet;
use super::run::RunLine;
use crate::shape::{Role, Thing};

/// Findings nearer than this share a tag, and a finding so near to a corner stands beside its plate, metres.
const SAME_M: f64 = 0.05;

/// One tag for every place of a finding that has no sign of its own; where several share a place, the one that weighs most.
pub(super) fn tags(sheet: &mut Sheet<'_>, runs: &[RunLine<'_>]) {
    let findings = sheet.scene.findings;
    let mut tags: Vec<(Point, &Finding, Thing)> = Vec::new();
    let of_runs = findings.runs.iter().enumerate().map(|(run, list)| (Some(run), list));
    let hidden =
        |run: Option<usize>| run.is_some_and(|run| sheet.scene.plan.runs.get(run).is_some_and(|run| run.hidden));
    for (run, list) in std::iter::once((None, &findings.plan)).chain(of_runs).filter(|(run, _)| !hidden(*run)) {
        for (index, finding) in list.iter().enumerate().filter(|(_, finding)| !has_sign(finding)) {
            let thing = Thing::Finding { run, finding: index };
            for &at in &finding.at {
                match tags.iter_mut().find(|tag| are_near(tag.0, at)) {
                    Some(tag) if tag.1.severity < finding.severity => *tag = (at, finding, thing),
                    Some(_) => {}
                    None => tags.push((at, finding, thing)),
                }
            }
        }
    }
    // The heaviest lie on top.
    tags.sort_by_key(|tag| tag.1.severity);
    let laid = runs.iter().filter_map(|run| run.laid.as_ref());
    let corners: Vec<Point> = laid
        .flat_map(|(lay, track)| {
            super::signs::corner_vertices(lay, track).into_iter().map(|vertex| track.vertices()[vertex].0)
        })
        .collect();
    for (at, finding, thing) in tags {
        let at_corner = corners.iter().any(|&corner| are_near(corner, at));
        sheet.run = thing.run();
        sheet.mark(Role::Tag { severity: finding.severity, at_corner }, at, FRAC_PI_2, Some(thing));
    }
    sheet.run = None;
}

/// Whether a sign of its own tells of a finding already: the kites of braces, the flag of the weakest post, the cups
/// and peaks of dips and ridges.
pub(crate) fn has_sign(finding: &Finding) -> bool {
    [
        "corner-leans",
        "corner-may-lean",
        "end-needs-brace",
        "not-measured",
        "gate-power-off",
        "dip-under-net",
        "ridge-under-net",
    ]
    .contains(&finding.id)
}

/// Whether two places are one; asked of every two, so without a root.
fn are_near(a: Point, b: Point) -> bool {
    let (east_m, north_m) = (a.east_m - b.east_m, a.north_m - b.north_m);
    east_m * east_m + north_m * north_m < SAME_M * SAME_M
}
