//! Picking: corners before sides before areas, and what lies on top first.

use crate::hand;
use drawing::{Spot, Theme, Thing, View, map};
use plan::Point;

fn near() -> (drawing::Drawing, View) {
    let drawing = map(&hand::field().scene());
    let mut view = View::fit(drawing.bounds(), [1600.0, 1000.0], 20.0, Theme::Light);
    view.px_per_m = 11.0;
    (drawing, view)
}

fn beside(spot: Spot, right: f32, down: f32) -> Spot {
    [spot[0] + right, spot[1] + down]
}

#[test]
fn corners_come_before_sides_and_sides_before_areas() {
    let (drawing, view) = near();
    let at = |place: (f64, f64)| view.spot(Point::from(place));
    let pick = |spot: Spot| drawing.thing_at(&view, spot, 8.0);
    let corner = at((59.62, 15.5));
    assert_eq!(pick(corner), Some(Thing::RunCorner { run: 0, vertex: 1 }));
    assert_eq!(pick(beside(corner, -5.0, 3.0)), Some(Thing::RunCorner { run: 0, vertex: 1 }));
    // Amid a panel of the first side, off its posts.
    assert_eq!(pick(at((43.57, 16.36))), Some(Thing::RunSide { run: 0, side: 0 }));
    assert_eq!(pick(at((55.0, 40.0))), Some(Thing::Run { run: 0 }));
    assert_eq!(pick(at((90.0, 44.0))), Some(Thing::KeepOut { keep_out: 0 }));
    assert_eq!(pick(at((20.0, 60.0))), Some(Thing::Boundary));
    assert_eq!(pick(at((160.0, 120.0))), None);
}

#[test]
fn signs_are_picked_where_they_are_seen() {
    let (drawing, view) = near();
    let at = |place: (f64, f64)| view.spot(Point::from(place));
    let pick = |spot: Spot| drawing.thing_at(&view, spot, 8.0);
    assert_eq!(pick(at((44.0, 35.0))), Some(Thing::Coop { coop: 0 }));
    assert_eq!(pick(at((16.0, 22.0))), Some(Thing::EarthStake { run: 0, stake: 0 }));
    // The danger's tag stands with its point on the place and its body above.
    assert_eq!(pick(beside(at((66.0, 31.4)), 0.0, -12.0)), Some(Thing::Finding { run: Some(0), finding: 2 }));
    // Corner 2 leans away from its plate, which is picked too.
    let plate = beside(at((59.62, 15.5)), 20.0, 33.0);
    assert_eq!(pick(plate), Some(Thing::RunCorner { run: 0, vertex: 1 }));
    // The old well's corners are in reach while handles are shown.
    let well = at((121.0, 34.0));
    assert_eq!(pick(beside(well, 2.0, -2.0)), Some(Thing::KeepOut { keep_out: 1 }));
    let in_hand = View { handles: true, ..view };
    let corner = Some(Thing::KeepOutCorner { keep_out: 1, vertex: 0 });
    assert_eq!(drawing.thing_at(&in_hand, beside(well, 2.0, -2.0), 8.0), corner);
}

#[test]
fn from_afar_posts_do_not_hide_sides() {
    let (drawing, mut view) = near();
    view.px_per_m = 2.0;
    let post = view.spot(Point::new(23.96 + 35.66 * 0.5, 17.42 - 1.92 * 0.5));
    assert_eq!(drawing.thing_at(&view, post, 6.0), Some(Thing::RunSide { run: 0, side: 0 }));
}

#[test]
fn the_number_of_a_corner_stays_that_of_the_stated_outline() {
    let mut hand = hand::field();
    // The keeper stated the second corner twice; the line passes over the repeat.
    let again = hand.plan.runs[0].outline[1];
    hand.plan.runs[0].outline.insert(2, again);
    let drawing = map(&hand.scene());
    let mut view = View::fit(drawing.bounds(), [1600.0, 1000.0], 20.0, Theme::Light);
    view.px_per_m = 11.0;
    let spot = view.spot(Point::new(68.91, 38.71));
    assert_eq!(drawing.thing_at(&view, spot, 8.0), Some(Thing::RunCorner { run: 0, vertex: 3 }));
}

#[test]
fn of_options_on_one_ground_the_picked_one_is_shown() {
    let mut hand = hand::field();
    let outline = [(30.0, 20.0), (65.0, 20.0), (65.0, 45.0), (30.0, 45.0)];
    hand::lay(&mut hand, "Other way", None, &hand::further(&outline));
    let mut drawing = map(&hand.scene());
    let mut view = View::fit(drawing.bounds(), [1600.0, 1000.0], 20.0, Theme::Light);
    view.px_per_m = 11.0;
    // A post of the second run, amid its lower side.
    let post = view.spot(Point::new(40.0, 20.0));
    let shows_post = |drawing: &drawing::Drawing, view: &View| {
        matches!(drawing.thing_at(view, post, 5.0), Some(Thing::Post { run: 1, .. }))
    };
    assert!(!shows_post(&drawing, &view), "the first option is shown at rest");
    assert!(shows_post(&drawing, &View { picked: Some(Thing::Run { run: 1 }), ..view }));
    // A ghost can still be picked by its sides.
    assert_eq!(drawing.thing_at(&view, post, 5.0), Some(Thing::RunSide { run: 1, side: 0 }));
    drawing.foremost = Some(1);
    assert!(shows_post(&drawing, &view));
    hand.plan.runs[0].status = plan::RunStatus::Standing;
    hand.plan.runs[1].status = plan::RunStatus::Standing;
    assert!(shows_post(&map(&hand.scene()), &view), "what stands is always shown");
}

/// The points of the tags for warnings that are painted.
fn tags(ink: &[drawing::Ink]) -> Vec<[f32; 2]> {
    let fill_of_tags = Theme::Light.palette().warning_fill;
    ink.iter()
        .filter_map(|item| match item {
            drawing::Ink::Area { rings, fill } if *fill == fill_of_tags && rings[0].len() == 5 => Some(rings[0][3]),
            _ => None,
        })
        .collect()
}

/// Of tags only what is near them is looked at when a spot is picked: each is found where it is painted, moved aside or
/// not, however far its place lies from it.
#[test]
fn a_tag_is_picked_where_it_is_painted() {
    let mut hand = hand::field();
    let run = &hand.plan.runs[0];
    // On the energizer, on the stake, at every corner; the plates of corners stand beyond their braces.
    let (stake, feed) = (Point::new(16.0, 22.0), Point::new(25.24, 24.45));
    let mut places = vec![stake, feed, Point::new(stake.east_m + 1.0, stake.north_m)];
    places.extend(run.outline.iter().copied());
    hand.findings.runs = vec![vec![hand::finding(care::Severity::Warning, places.clone())]];
    let drawing = map(&hand.scene());
    let (mut moved, mut far) = (0, 0);
    for px_per_m in [4.0, 9.0, 14.0, 60.0, 260.0] {
        for &middle in &places {
            let mut view = View::fit(drawing.bounds(), [1280.0, 800.0], 20.0, Theme::Light);
            (view.px_per_m, view.middle) = (px_per_m, middle);
            let spots: Vec<[f32; 2]> = places.iter().map(|&at| view.spot(at)).collect();
            for [right, down] in tags(&drawing.ink(&view)) {
                let seen = (0.0..1280.0).contains(&right) && (0.0..800.0).contains(&down);
                if !seen {
                    continue;
                }
                let off = |at: &[f32; 2]| (at[0] - right).hypot(at[1] - down);
                let nearest = spots.iter().map(off).fold(f32::INFINITY, f32::min);
                moved += usize::from(nearest > 1.0);
                far += usize::from(nearest > 250.0);
                let thing = drawing.thing_at(&view, [right, down - 9.0], 8.0);
                assert_eq!(thing, Some(Thing::Finding { run: Some(0), finding: 0 }), "{px_per_m} {right} {down}");
            }
        }
    }
    assert!(moved > 20, "{moved} stand aside");
    assert!(far > 0, "{far} stand beyond what is looked at about their place");
}

#[test]
fn of_two_runs_it_is_told_which_stands_behind_which_and_why() {
    use drawing::Behind;
    let mut hand = hand::field();
    // Over the first run; and beside its side 1 to 2.
    hand::lay(&mut hand, "Over", None, &hand::further(&[(30.0, 20.0), (55.0, 20.0), (55.0, 45.0), (30.0, 45.0)]));
    hand::lay(
        &mut hand,
        "Beside",
        None,
        &hand::further(&[(59.62, 15.5), (23.96, 17.42), (23.0, -10.0), (59.0, -10.0)]),
    );
    hand.plan.runs.iter_mut().for_each(|run| run.status = plan::RunStatus::Option);
    let drawing = map(&hand.scene());
    let picked = |run: usize| Some(Thing::Run { run });
    assert_eq!(drawing.behind(1, picked(0)), Some(Behind::Over(0)));
    assert_eq!(drawing.behind(2, picked(0)), Some(Behind::Beside(0)));
    assert_eq!(drawing.behind(0, picked(0)), None);
    assert_eq!(
        (drawing.behind(0, picked(2)), drawing.behind(1, picked(2))),
        (Some(Behind::Over(1)), None),
        "the second is shown"
    );
    assert_eq!(drawing.stands_on(0), None, "options do not stand");
    hand.plan.runs.iter_mut().for_each(|run| run.status = plan::RunStatus::Standing);
    let standing = map(&hand.scene());
    assert_eq!([0, 1, 2].map(|run| standing.stands_on(run)), [Some(1), Some(0), None]);
    assert_eq!([0, 1, 2].map(|run| standing.behind(run, picked(0))), [None; 3]);
}
