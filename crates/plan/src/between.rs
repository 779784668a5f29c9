//! From one plan to another: the edits that lead there.
//!
//! What changes many things at once (several moved, taken out, put in) is done to a copy of the plan and becomes the
//! edits that differ: each part of the plan at most once, whatever the order in which things were touched.

use crate::edit::{Edit, Shape};
use crate::model::{Plan, Run};

/// The edits that make `from` state what `to` states; unknown keys of the plan and of its ground stay `from`'s.
pub fn between(from: &Plan, to: &Plan) -> Vec<Edit> {
    let mut edits = Vec::new();
    let mut differs = |differs: bool, edit: &dyn Fn() -> Edit| {
        if differs {
            edits.push(edit());
        }
    };
    let (was, is) = (&from.ground, &to.ground);
    differs(from.title != to.title, &|| Edit::SetTitle { title: to.title.clone() });
    differs(from.origin != to.origin, &|| Edit::SetOrigin { origin: to.origin.clone() });
    differs(from.target_kv != to.target_kv, &|| Edit::SetTarget { target_kv: to.target_kv });
    differs(was.boundary != is.boundary, &|| Edit::SetOutline { shape: Shape::Boundary, outline: is.boundary.clone() });
    differs((was.boundary_hidden, was.boundary_locked) != (is.boundary_hidden, is.boundary_locked), &|| {
        Edit::SetPaddock { hidden: is.boundary_hidden, locked: is.boundary_locked }
    });
    differs(was.keep_outs != is.keep_outs, &|| Edit::SetKeepOuts { keep_outs: is.keep_outs.clone() });
    differs(was.hazards != is.hazards, &|| Edit::SetHazards { hazards: is.hazards.clone() });
    differs(was.shade != is.shade, &|| Edit::SetShade { shade: is.shade.clone() });
    differs(was.damp != is.damp, &|| Edit::SetDamp { damp: is.damp.clone() });
    differs(was.soil != is.soil, &|| Edit::SetSoil { soil: is.soil.clone() });
    differs(was.gateway != is.gateway, &|| Edit::SetGateway { gateway: is.gateway.clone() });
    differs((was.wind_m_per_s, was.fouled_share) != (is.wind_m_per_s, is.fouled_share), &|| Edit::SetWind {
        wind_m_per_s: is.wind_m_per_s,
        fouled_share: is.fouled_share,
    });
    differs(was.today != is.today, &|| Edit::SetToday { today: is.today });
    differs(was.height_grid != is.height_grid, &|| Edit::SetHeightGrid { grid: is.height_grid.clone() });
    differs(from.store != to.store, &|| Edit::SetStore { store: Box::new(to.store.clone()) });
    differs(from.heights != to.heights, &|| Edit::SetHeights { heights: to.heights.clone() });
    differs(from.walls != to.walls, &|| Edit::SetWalls { walls: to.walls.clone() });
    let points = || Edit::SetTapePoints { points: to.tape_points.clone() };
    differs(from.tape_points != to.tape_points, &points);
    differs(from.labels != to.labels, &|| Edit::SetLabels { labels: to.labels.clone() });
    differs(from.underlay != to.underlay, &|| Edit::SetUnderlay { underlay: to.underlay.clone() });
    differs(from.coop != to.coop, &|| Edit::SetCoop { coop: to.coop.clone() });
    differs(from.other_coops != to.other_coops, &|| Edit::SetOtherCoops { other_coops: to.other_coops.clone() });
    differs(from.season != to.season, &|| Edit::SetSeason { season: to.season.clone() });
    // A reading goes before its run does, which the file asks for.
    differs(from.readings != to.readings, &|| Edit::SetReadings { readings: to.readings.clone() });
    edits.extend(runs(&from.runs, &to.runs));
    edits
}

/// Runs taken out, changed and put in.
fn runs(from: &[Run], to: &[Run]) -> Vec<Edit> {
    let removed = |id: &str| Edit::RemoveRun { id: id.to_owned() };
    let stays = |run: &&Run| to.iter().any(|other| other.id == run.id);
    let mut edits: Vec<Edit> = from.iter().filter(|run| !stays(run)).map(|run| removed(&run.id)).collect();
    let mut now: Vec<&Run> = from.iter().filter(stays).collect();
    for (index, run) in to.iter().enumerate() {
        if now.get(index).is_none_or(|here| here.id != run.id) {
            // One that stands elsewhere in the list goes there.
            if let Some(place) = now.iter().position(|other| other.id == run.id) {
                now.remove(place);
                edits.push(removed(&run.id));
            }
            now.insert(index, run);
            edits.push(Edit::AddRun { index, run: Box::new(run.clone()) });
        } else if now[index] != run {
            edits.push(Edit::SetRun { run: Box::new(run.clone()) });
        }
    }
    edits
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Coop, Label, Point, Shade, SpotHeight, TapePoint, Underlay, Wall};

    fn run(id: &str, east_m: f64) -> Run {
        let outline = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)].map(|(east, north)| Point::new(east + east_m, north));
        Run { id: id.to_owned(), outline: outline.to_vec(), ..Run::default() }
    }

    fn plan(runs: Vec<Run>) -> Plan {
        Plan { runs, ..Plan::default() }
    }

    fn check(from: &Plan, to: &Plan) -> usize {
        let edits = between(from, to);
        let mut got = from.clone();
        let mut back = Vec::new();
        for edit in edits.clone() {
            back.insert(0, got.apply(edit).unwrap());
        }
        assert_eq!(got, *to);
        for edit in back {
            got.apply(edit).unwrap();
        }
        assert_eq!(got, *from, "and back");
        edits.len()
    }

    #[test]
    fn runs_go_come_change_and_change_places() {
        let [a, b, c] = ["a", "b", "c"].map(|id| run(id, 0.0));
        let all = plan(vec![a.clone(), b.clone(), c.clone()]);
        assert_eq!(check(&all, &all), 0);
        assert_eq!(check(&all, &plan(vec![a.clone(), run("b", 3.0), c.clone()])), 1);
        assert_eq!(check(&all, &plan(vec![c.clone()])), 2);
        assert_eq!(check(&all, &plan(vec![a.clone(), run("d", 1.0), b.clone(), c.clone(), run("e", 2.0)])), 2);
        assert_eq!(check(&all, &plan(vec![c, a, b])), 2);
        assert_eq!(check(&plan(Vec::new()), &all), 3);
        assert_eq!(check(&all, &plan(Vec::new())), 3);
    }

    #[test]
    fn each_part_that_differs_is_one_edit() {
        let from = plan(vec![run("a", 0.0)]);
        let mut to = from.clone();
        to.title = "moved".to_owned();
        to.ground.boundary = vec![Point::new(1.0, 2.0)];
        to.coop = Some(Coop::new("coop", Point::new(1.0, 1.0)));
        to.other_coops = vec![Coop::new("second", Point::new(2.0, 1.0))];
        to.heights = vec![SpotHeight { at: Point::new(0.0, 0.0), up_m: 1.0, rest: crate::Rest::new() }];
        to.runs[0].hidden = true;
        assert_eq!(check(&from, &to), 6);
        to.walls = vec![Wall::default()];
        to.ground.shade = vec![Shade::default()];
        to.ground.damp = vec![crate::model::Damp::default()];
        to.labels = vec![Label::default()];
        to.tape_points = vec![TapePoint::default()];
        to.underlay = Some(Underlay::new("air.png".to_owned()));
        (to.ground.boundary_hidden, to.ground.boundary_locked) = (true, true);
        assert_eq!(check(&from, &to), 13);
        to.show_all();
        assert!(!to.runs[0].hidden && !to.ground.boundary_hidden && to.ground.boundary_locked);
        assert_eq!(check(&from, &to), 12);
    }
}
