//! Laws of the ground's shape under a line.

use geometry::slope::{Grid, Profile, SideHeights, Spots, Surface, UnevenRequest, uneven};
use geometry::{Net, Outline, PlacementRequest, Point, place};
use proptest::prelude::*;

/// A star-shaped outline of a few corners round the origin.
fn outlines() -> impl Strategy<Value = Outline> {
    (3..8_usize, proptest::collection::vec(5.0..40.0_f64, 8)).prop_map(|(corners, far_m)| {
        let at = |corner: usize| {
            let turn = std::f64::consts::TAU * corner as f64 / corners as f64;
            Point::new(far_m[corner] * turn.cos(), far_m[corner] * turn.sin())
        };
        Outline::closed(&(0..corners).map(at).collect::<Vec<_>>())
    })
}

/// A grid over all of them, now and then with a hole.
fn grids() -> impl Strategy<Value = Vec<Option<f64>>> {
    let height = prop_oneof![60 => (-3.0..3.0_f64).prop_map(Some), 1 => Just(None)];
    proptest::collection::vec(height, 23 * 23)
}

fn grid(up_m: Vec<Option<f64>>) -> Grid {
    Grid::new(Point::new(-44.0, -44.0), 4.0, 23, up_m).unwrap()
}

fn spots() -> impl Strategy<Value = Vec<(Point, f64)>> {
    proptest::collection::vec((-30.0..30.0_f64, -30.0..30.0_f64, -3.0..3.0_f64), 2..30).prop_map(|spots| {
        spots.into_iter().map(|(east_m, north_m, up_m)| (Point::new(east_m, north_m), up_m)).collect()
    })
}

fn over(outline: &Outline, surface: &dyn Surface) -> Profile {
    Profile::new(outline, |_| SideHeights::Over(surface)).unwrap()
}

fn check_profile(outline: &Outline, profile: &Profile) -> Result<(), TestCaseError> {
    let level_m = outline.length_m();
    prop_assert!((profile.level_m() - level_m).abs() < 1e-9 * level_m);
    prop_assert!(profile.surface_m() >= level_m * (1.0 - 1e-12), "{} < {level_m}", profile.surface_m());
    let sides: f64 = (0..outline.side_count())
        .map(|side| {
            let (from, to) = profile.side(side);
            to.along_m - from.along_m
        })
        .sum();
    prop_assert!((sides - profile.surface_m()).abs() < 1e-9 * level_m);
    for pair in profile.knots().windows(2) {
        prop_assert!(pair[1].level_m > pair[0].level_m && pair[1].along_m > pair[0].along_m);
    }
    Ok(())
}

proptest! {
    #[test]
    fn the_ground_is_never_shorter_than_the_plan(outline in outlines(), up_m in grids(), spots in spots()) {
        check_profile(&outline, &over(&outline, &grid(up_m)))?;
        if let Some(spots) = Spots::new(&spots) {
            let profile = over(&outline, &spots);
            check_profile(&outline, &profile)?;
            prop_assert_eq!(profile.unknown_m, 0.0);
            prop_assert!(profile.closing_m().abs() < 1e-9);
        }
    }

    #[test]
    fn flat_ground_changes_nothing(outline in outlines(), up_m in -900.0..900.0_f64, spots in spots()) {
        let level: Vec<_> = spots.into_iter().map(|(at, _)| (at, up_m)).collect();
        let surfaces: Vec<Box<dyn Surface>> = std::iter::once(Box::new(grid(vec![Some(up_m); 23 * 23])) as Box<dyn Surface>)
            .chain(Spots::new(&level).map(|spots| Box::new(spots) as Box<dyn Surface>))
            .collect();
        for surface in surfaces {
            let profile = over(&outline, &*surface);
            let laid = outline.over(&profile);
            prop_assert!((laid.length_m() - outline.length_m()).abs() < 1e-9);
            for share in [0.0, 0.13, 0.5, 0.77] {
                let along_m = share * outline.length_m();
                prop_assert!(laid.at(along_m).distance_m(outline.at(along_m)) < 1e-9);
            }
            prop_assert!(profile.under(0.0, outline.length_m() / 3.0).gap_m < 1e-9);
        }
    }

    #[test]
    fn a_higher_level_changes_nothing(outline in outlines(), up_m in grids(), spots in spots(), by_m in -500.0..500.0_f64) {
        let raised: Vec<_> = up_m.iter().map(|up_m| up_m.map(|up_m| up_m + by_m)).collect();
        let (low, high) = (over(&outline, &grid(up_m)), over(&outline, &grid(raised)));
        prop_assert!((low.surface_m() - high.surface_m()).abs() < 1e-8);
        prop_assert!((low.range_m() - high.range_m()).abs() < 1e-8);
        let lifted: Vec<_> = spots.iter().map(|&(at, up_m)| (at, up_m + by_m)).collect();
        if let (Some(low), Some(high)) = (Spots::new(&spots), Spots::new(&lifted)) {
            let (low, high) = (over(&outline, &low), over(&outline, &high));
            prop_assert!((low.surface_m() - high.surface_m()).abs() < 1e-8 * low.surface_m());
        }
    }

    #[test]
    fn a_tilted_plane_is_the_closed_form(outline in outlines(), east in -0.5..0.5_f64, north in -0.5..0.5_f64) {
        let plane = |at: Point| 7.0 + east * at.east_m + north * at.north_m;
        let nodes = (0..23 * 23).map(|node| {
            Some(plane(Point::new(-44.0 + 4.0 * f64::from(node % 23), -44.0 + 4.0 * f64::from(node / 23))))
        });
        let corners = [(-60.0, -60.0), (60.0, -60.0), (60.0, 60.0), (-60.0, 60.0), (3.0, 7.0)].map(Point::from);
        let spots = Spots::new(&corners.map(|at| (at, plane(at)))).unwrap();
        let formula: f64 = outline.sides().map(|(from, to)| from.distance_m(to).hypot(plane(to) - plane(from))).sum();
        for surface in [&grid(nodes.collect()) as &dyn Surface, &spots] {
            let profile = over(&outline, surface);
            prop_assert!((profile.surface_m() / formula - 1.0).abs() < 1e-12, "{} {formula}", profile.surface_m());
            prop_assert!((profile.unknown_m, profile.beyond_m) == (0.0, 0.0));
            // On a plane nothing dips between two places of one side.
            let (from, to) = profile.side(0);
            let ground = profile.under(from.level_m, to.level_m);
            prop_assert!(ground.gap_m < 1e-9 && ground.over_m < 1e-9);
        }
        let rises: Vec<f64> = outline.sides().map(|(from, to)| plane(to) - plane(from)).collect();
        let by_hand = Profile::new(&outline, |side| SideHeights::Rises(rises[side])).unwrap();
        prop_assert!((by_hand.surface_m() / formula - 1.0).abs() < 1e-12);
        prop_assert!(by_hand.closing_m().abs() < 1e-9);
    }

    #[test]
    fn places_along_the_ground_lead_there_and_back(outline in outlines(), up_m in grids(), share in 0.0..1.0_f64) {
        let laid = outline.over(&over(&outline, &grid(up_m)));
        let along_m = share * laid.length_m();
        let at = laid.at(along_m);
        let (back_m, off_m) = laid.nearest_along(at);
        prop_assert!(off_m < 1e-9);
        prop_assert!(laid.at(back_m).distance_m(at) < 1e-9);
        for vertex in laid.vertices() {
            prop_assert!(laid.at(vertex.along_m).distance_m(vertex.at) < 1e-9);
        }
    }

    #[test]
    fn nets_follow_the_ground_and_further_posts_mend_what_they_are_set_for(outline in outlines(), spots in spots()) {
        let Some(spots) = Spots::new(&spots) else { return Ok(()) };
        let profile = over(&outline, &spots);
        let laid = outline.over(&profile);
        let net = Net::equal(25.0, 7).unwrap();
        let nets = vec![0; (laid.length_m() / 25.0).ceil() as usize];
        let placement = place(&PlacementRequest::new(&laid, &[net], &nets)).unwrap();
        prop_assert!((placement.spare_m - (25.0 * nets.len() as f64 - profile.surface_m()).max(0.0)).abs() < 1e-9);
        let request = UnevenRequest {
            outline: &laid, profile: &profile, placement: &placement, gap_m: 0.075, live_m: &[0.05],
            across: &|_, _, _| None,
        };
        for panel in uneven(&request) {
            prop_assert!(panel.dip.is_some() || panel.ridge.is_some());
            let dip_m = panel.dip.map_or(0.0, |dip| dip.by_m);
            prop_assert!(dip_m == 0.0 || dip_m > 0.075);
            // From post over further posts to post every chord may stand.
            let from = &placement.posts[panel.post];
            let end_m = placement.posts.get(panel.post + 1).map_or(placement.line_m, |next| next.chain_m.min(placement.line_m));
            let mut stops: Vec<f64> = panel.posts.iter().map(|post| placement.chain_at_m(post.0)).collect();
            if stops.is_empty() {
                continue;
            }
            stops.push(from.chain_m);
            stops.push(end_m);
            stops.sort_by(f64::total_cmp);
            for pair in stops.windows(2) {
                let level = |chain_m: f64| profile.level_of(placement.along_m(chain_m));
                let (mut low, mut high) = (level(pair[0]), level(pair[1]));
                if placement.reversed {
                    std::mem::swap(&mut low, &mut high);
                }
                if high <= low {
                    high += profile.level_m();
                }
                let ground = profile.under(low, high);
                prop_assert!(ground.gap_m < 0.075 + 1e-6 && ground.over_m < 0.05 + 1e-6, "{ground:?}");
            }
        }
    }
}

#[test]
fn a_hole_is_bridged_straight_and_measured() {
    let mut up_m: Vec<Option<f64>> = (0..23 * 23).map(|node| Some(0.1 * f64::from(node % 23))).collect();
    // A hole at one node takes the four squares round it: 8 m of a line through it.
    up_m[11 * 23 + 11] = None;
    let line = Outline::open(&[(-20.0, 1.0), (20.0, 1.0)].map(Point::from));
    let profile = over(&line, &grid(up_m));
    assert!((profile.unknown_m - 8.0).abs() < 1e-9, "{}", profile.unknown_m);
    // The ground is a plane, so the bridge is the ground.
    assert!((profile.surface_m() - 40.0_f64.hypot(1.0)).abs() < 1e-9);
}

#[test]
fn a_ring_that_begins_over_a_hole_is_bridged_round_its_seam() {
    let up_m = (0..23 * 23).map(|node| (node % 23 > 11).then(|| 0.2 * f64::from(node / 23))).collect();
    let ring = Outline::closed(&[(-8.0, -8.0), (16.0, -8.0), (16.0, 12.0), (-8.0, 12.0)].map(Point::from));
    let profile = over(&ring, &grid(up_m));
    assert!(profile.unknown_m > 20.0 && profile.closing_m().abs() < 1e-9);
    assert!(profile.surface_m() > ring.length_m() && profile.range_m() <= 1.0 + 1e-9);
    assert_eq!(profile.side(3).1.level_m, profile.level_m());
}

#[test]
fn the_steepest_stretch_is_found_at_its_place() {
    let rises = [0.0, 3.0, 0.0, -3.0];
    let ring = Outline::closed(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)].map(Point::from));
    let profile = Profile::new(&ring, |side| SideHeights::Rises(rises[side])).unwrap();
    let steep = profile.steepest(2.0);
    assert!((steep.slope.abs() - 0.3).abs() < 1e-12);
    assert!((10.0..=20.0).contains(&steep.level_m) || (30.0..=40.0).contains(&steep.level_m), "{steep:?}");
}
