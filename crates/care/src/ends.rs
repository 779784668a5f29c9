//! What an open run ends on: a wall, a hedge or a fence holds birds where that is stated, and only there.
//!
//! The tool cannot see a wall. What is stated to hold birds is taken for it, what is stated not to is warned of, and where
//! nothing is stated the keeper is asked to look.

use geometry::{Outline, Point, region};
use plan::{Run, RunStatus, Wall};
use words::texts::Findings as Text;
use workup::RunWorkup;

use crate::limits::END_ON_WALL;
use crate::names::Named;
use crate::{Finding, Look, Severity, Subject, place, point, run_name};

pub(crate) fn of_run(look: Look<'_>, index: usize, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(lay) = worked.lay.as_ref().filter(|lay| !lay.closed && run.status != RunStatus::Past) else {
        return Vec::new();
    };
    let points: Vec<Point> = lay.vertices.iter().map(|vertex| point(vertex.0)).collect();
    let [first, .., last] = points[..] else { return Vec::new() };
    // An open line whose ends meet is shut.
    if first.distance_m(last) <= END_ON_WALL.metres {
        return Vec::new();
    }
    let ends = [first, last].map(|at| (at, on(look, index, at)));
    // Of the run's outline the corner that is its end.
    let corner_of = |end: usize| {
        let corner = if end == 0 { 0 } else { run.outline.len().saturating_sub(1) };
        Subject::Outline(plan::Shape::Run(run.id.clone()), Some(corner))
    };
    let mut found = Vec::new();
    let new = |id, severity| Finding::new(id, severity, END_ON_WALL.source);
    for (number, &(at, on)) in ends.iter().enumerate() {
        let On::Wall(wall) = on else { continue };
        // Both ends on one wall are said once.
        if number == 1 && ends[0].1 == on {
            continue;
        }
        let both = ends.iter().filter(|end| end.1 == on).map(|end| place(end.0)).collect::<Vec<_>>();
        let at = if both.len() > 1 { both } else { vec![place(at)] };
        let says = |text| look.say(text, &[("wall", &look.first(Named::Wall(wall))), ("run", run_name(run))]);
        match look.plan.walls[wall].holds_birds {
            Some(true) => {}
            Some(false) => found.push(
                new("end-holds-no-birds", Severity::Warning)
                    .about(corner_of(number))
                    .says(says(Text::EndHoldsNoBirds))
                    .mends(look.words.text(Text::EndHoldsNoBirdsMend))
                    .at(at),
            ),
            None => found.push(
                new("end-to-look-at", Severity::Note)
                    .about(Subject::Outline(plan::Shape::Wall(wall), None))
                    .says(says(Text::EndToLookAt))
                    .mends(look.words.text(Text::EndToLookAtMend))
                    .at(at),
            ),
        }
    }
    // Without a coop inside a line may do no more than part the ground.
    let open: Vec<_> = ends.iter().filter(|end| end.1 == On::Nothing).map(|end| place(end.0)).collect();
    if !open.is_empty() && run.coop.is_some() {
        let first = usize::from(ends[0].1 != On::Nothing);
        found.push(
            new("end-in-the-open", Severity::Warning)
                .about(corner_of(first))
                .says(look.say(Text::EndInTheOpen, &[("run", run_name(run))]))
                .mends(look.words.text(Text::EndInTheOpenMend))
                .at(open),
        );
    }
    if let (On::Wall(one), On::Wall(other)) = (ends[0].1, ends[1].1)
        && one != other
        && !meet(&look.plan.walls, one, other)
    {
        let [one, other] = [one, other].map(|wall| look.amid(Named::Wall(wall)));
        found.push(
            new("ends-apart", Severity::Note)
                .about(corner_of(1))
                .says(look.say(Text::EndsApart, &[("run", run_name(run)), ("one", &one), ("other", &other)]))
                .at(ends.map(|end| place(end.0))),
        );
    }
    found
}

/// What an end stands on.
#[derive(Clone, Copy, PartialEq)]
enum On {
    Wall(usize),
    /// The netting of a run that stands.
    Net,
    Nothing,
}

fn on(look: Look<'_>, index: usize, at: Point) -> On {
    let off_m = |wall: &Wall| region::distance_to_m(&path(wall), at);
    let near = look.plan.walls.iter().enumerate().map(|(number, wall)| (number, wall, off_m(wall)));
    let near = near.filter(|(_, _, off_m)| *off_m <= END_ON_WALL.metres);
    // Of several at one place one that holds birds counts.
    let held = |wall: &Wall| match wall.holds_birds {
        Some(true) => 0,
        None => 1,
        Some(false) => 2,
    };
    let wall = near.min_by(|one, other| held(one.1).cmp(&held(other.1)).then(one.2.total_cmp(&other.2)));
    if let Some((number, ..)) = wall {
        return On::Wall(number);
    }
    let others = look.plan.runs.iter().zip(look.stands).enumerate();
    let stands = others.filter(|(other, (run, _))| *other != index && run.status == RunStatus::Standing);
    let on_net = stands
        .filter(|(_, (_, stand))| stand.may_near_place(place(at), END_ON_WALL.metres))
        .filter_map(|(_, (_, stand))| stand.netting.as_ref())
        .any(|netting| region::distance_to_m(netting, at) <= END_ON_WALL.metres);
    if on_net { On::Net } else { On::Nothing }
}

/// Whether two walls meet, one by one over others.
fn meet(walls: &[Wall], from: usize, to: usize) -> bool {
    let paths: Vec<Outline> = walls.iter().map(path).collect();
    let (mut reached, mut open) = (vec![false; walls.len()], vec![from]);
    reached[from] = true;
    while let Some(wall) = open.pop() {
        for other in 0..walls.len() {
            let touches = || region::distance_within_m(&paths[wall], &paths[other], END_ON_WALL.metres);
            if !reached[other] && touches() <= END_ON_WALL.metres {
                reached[other] = true;
                open.push(other);
            }
        }
    }
    reached[to]
}

fn path(wall: &Wall) -> Outline {
    Outline::open(&wall.path.iter().copied().map(point).collect::<Vec<_>>())
}
