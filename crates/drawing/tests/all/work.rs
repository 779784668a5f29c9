//! What the map shows of the work: in which order rolls are laid and which way, the lines to walk behind the mower, and
//! the corner to draw in.

use drawing::{Form, Role, Scene, Shape, Thing};
use plan::{NetKind, Plan, Point, Run, RunStatus};
use words::Words;
use workup::{Depth, Workup};

fn plan(corners: &[(f64, f64)], nets: u32) -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(nets), ..NetKind::new("long", 50.0, 14) });
    let outline = corners.iter().map(|&(east, north)| Point::new(east, north)).collect();
    plan.runs.push(Run { id: "run".to_owned(), outline, drop_at: Some(Point::new(60.0, 0.0)), ..Run::default() });
    plan
}

fn drawn(plan: &Plan) -> (Workup, Vec<Shape>) {
    let workup = workup::workup(plan, Depth::Quick);
    let findings = care::findings(plan, &workup, Words::default());
    let scene = Scene { plan, workup: &workup, findings: &findings, words: Words::default() };
    let shapes = drawing::map(&scene).shapes().cloned().collect();
    (workup, shapes)
}

fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

#[test]
fn each_roll_is_numbered_where_it_begins_and_points_the_way_it_is_rolled_out() {
    for reversed_outline in [false, true] {
        let mut plan = plan(&[(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0)], 4);
        if reversed_outline {
            plan.runs[0].outline.reverse();
        }
        let (workup, shapes) = drawn(&plan);
        let order = &workup.runs[0].set_up.as_ref().unwrap().order;
        assert_eq!(order.len(), 4);
        for roll in order {
            let marks: Vec<_> = shapes
                .iter()
                .filter_map(|shape| match (&shape.form, shape.role) {
                    (Form::Mark { at, toward_rad }, Role::Roll { number, .. }) if number == roll.number => {
                        Some((*at, *toward_rad))
                    }
                    _ => None,
                })
                .collect();
            let &[(at, toward_rad)] = &marks[..] else { panic!("roll {} has {} marks", roll.number, marks.len()) };
            // Each net is one side: its mark lies on it, nearer its beginning, and points to its end.
            let (begin_m, end_m) = (apart_m(at, roll.from), apart_m(at, roll.to));
            assert!((begin_m + end_m - 50.0).abs() < 1e-6 && begin_m < end_m, "{begin_m} {end_m}");
            let way = [(roll.to.east_m - roll.from.east_m) / 50.0, (roll.to.north_m - roll.from.north_m) / 50.0];
            assert!((toward_rad.cos() - way[0]).abs() < 1e-9 && (toward_rad.sin() - way[1]).abs() < 1e-9);
        }
    }
}

#[test]
fn one_roll_needs_no_number_and_the_past_none() {
    let rolls = |plan: &Plan| drawn(plan).1.iter().filter(|shape| matches!(shape.role, Role::Roll { .. })).count();
    assert_eq!(rolls(&plan(&[(0.0, 0.0), (12.0, 0.0), (12.0, 12.0), (0.0, 12.0)], 1)), 0);
    let mut past = plan(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], 2);
    assert_eq!(rolls(&past), 2);
    past.runs[0].status = RunStatus::Past;
    assert_eq!(rolls(&past), 0);
}

#[test]
fn the_lines_behind_the_mower_are_those_that_were_worked_out() {
    let (workup, shapes) = drawn(&plan(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], 2));
    let walk = workup.runs[0].mow_walk.as_ref().unwrap();
    let passes: Vec<&Vec<Point>> = shapes
        .iter()
        .filter_map(|shape| match (&shape.form, shape.role) {
            (Form::Path { points, closed: true, .. }, Role::StripPass) => Some(points),
            _ => None,
        })
        .collect();
    assert_eq!(passes.len(), walk.lines.len());
    for (drawn, line) in passes.iter().zip(&walk.lines) {
        let same =
            drawn.iter().zip(&line.points).all(|(at, point)| (at.east_m, at.north_m) == (point.east_m, point.north_m));
        assert!(same && drawn.len() == line.points.len());
    }
}

#[test]
fn the_corner_to_draw_in_is_marked_towards_the_inside() {
    let (workup, shapes) = drawn(&plan(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], 2));
    let drawn_in = workup.runs[0].draw_in.unwrap();
    let mark = shapes.iter().find_map(|shape| match (&shape.form, shape.role) {
        (Form::Mark { at, toward_rad }, Role::DrawIn) => Some((*at, *toward_rad)),
        _ => None,
    });
    let (at, toward_rad) = mark.unwrap();
    assert_eq!(at, drawn_in.at);
    let inward = [12.5 - at.east_m, 12.5 - at.north_m];
    assert!(toward_rad.cos() * inward[0] > 0.0 && toward_rad.sin() * inward[1] > 0.0);
    // With two panels to spare nothing has to be drawn in.
    let (workup, shapes) = drawn(&plan(&[(0.0, 0.0), (24.0, 0.0), (24.0, 24.0), (0.0, 24.0)], 2));
    assert!(workup.runs[0].draw_in.is_none() && !shapes.iter().any(|shape| shape.role == Role::DrawIn));
}

#[test]
fn a_roll_that_is_partly_left_over_is_marked_on_what_of_it_stands() {
    // Three rolls for 105 m: of the last only 5 m stand.
    for reversed in [false, true] {
        let mut plan = plan(&[(0.0, 0.0), (35.0, 0.0), (35.0, 17.5), (0.0, 17.5)], 3);
        plan.runs[0].nets = Some(vec!["long".to_owned(); 3]);
        plan.runs[0].reversed = Some(reversed);
        plan.runs[0].start_m = Some(0.0);
        let (workup, shapes) = drawn(&plan);
        let marked: std::collections::BTreeSet<usize> = shapes
            .iter()
            .filter_map(|shape| match shape.role {
                Role::Roll { number, .. } => Some(number),
                _ => None,
            })
            .collect();
        assert_eq!(workup.runs[0].set_up.as_ref().unwrap().order.len(), 3);
        assert_eq!(marked.into_iter().collect::<Vec<_>>(), [1, 2, 3]);
    }
}

#[test]
fn a_side_has_so_many_panels_only_where_they_are_as_long_as_it_is() {
    // 85.4 m of line for 100 m of netting: what is spare is doubled back, and its posts stand among the others.
    let panel_m = 50.0 / 14.0;
    for reversed in [false, true] {
        for start_m in [0.0, 25.0, 50.0] {
            let mut plan = plan(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0)], 2);
            plan.runs[0].nets = Some(vec!["long".to_owned(); 2]);
            plan.runs[0].reversed = Some(reversed);
            plan.runs[0].start_m = Some(start_m);
            let (_, shapes) = drawn(&plan);
            let sides = shapes.iter().filter_map(|shape| match (&shape.form, shape.thing) {
                (Form::Label { texts, .. }, Some(Thing::RunSide { side, .. })) => Some((side, texts.clone())),
                _ => None,
            });
            let said: Vec<(usize, bool)> =
                sides.map(|(side, texts)| (side, texts.iter().any(|text| text.contains("panels")))).collect();
            let whole = |side_m: f64| (side_m / panel_m - (side_m / panel_m).round()).abs() < 1e-3;
            let want: Vec<(usize, bool)> =
                [25.0, 25.0, 25.0 * 2_f64.sqrt()].into_iter().map(whole).enumerate().collect();
            assert_eq!(said, want, "from {start_m} m, reversed: {reversed}");
        }
    }
}
