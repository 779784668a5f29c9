//! Laws that hold for every line: measuring, placement, corners and strip under shifts, turns, mirrors and scales, and
//! nothing that panics on the nastiest input.

use std::f64::consts::TAU;

use geometry::{
    CornerRequest, Mower, Net, NetForces, Outline, Placement, PlacementRequest, Point, Soil, Spike, StakeKind,
    StripRequest, StripWidth, check_outline, corner_pull_n, corners, leaning_bends, place, region, strip, strip_pieces,
};
use proptest::collection::vec;
use proptest::prelude::*;

/// Points of a simple closed line round a middle: a radius for each step of the circle.
fn star() -> impl Strategy<Value = Vec<Point>> {
    vec(8.0..30.0_f64, 3..9).prop_map(|radii_m| {
        let step = TAU / radii_m.len() as f64;
        let at = |(index, radius_m): (usize, &f64)| {
            let angle = index as f64 * step + 0.1;
            Point::new(radius_m * angle.cos(), radius_m * angle.sin())
        };
        radii_m.iter().enumerate().map(at).collect()
    })
}

/// Points on a circle, so that the line is convex and its sides are long against a strip.
fn convex() -> impl Strategy<Value = Vec<Point>> {
    vec(0.35..1.0_f64, 3..8).prop_map(|shares| {
        let whole: f64 = shares.iter().sum();
        let mut turned = 0.0;
        let mut at = |share: &f64| {
            turned += share / whole * TAU;
            Point::new(40.0 * turned.cos(), 40.0 * turned.sin())
        };
        shares.iter().map(&mut at).collect()
    })
}

/// A coordinate as nobody would type it: round, an ulp beside round, far away, tiny.
fn nasty_coordinate() -> impl Strategy<Value = f64> {
    prop_oneof![
        (-3..4_i32).prop_map(f64::from),
        (-3..4_i32).prop_map(|whole| f64::from(whole).next_up()),
        (-3..4_i32).prop_map(|whole| f64::from(whole).next_down()),
        (-3..4_i32).prop_map(|whole| f64::from(whole) + 1e-9),
        (-3..4_i32).prop_map(|whole| f64::from(whole) * 1e6),
        -1e-300..1e-300_f64,
        -100.0..100.0_f64,
    ]
}

fn nasty_points() -> impl Strategy<Value = Vec<Point>> {
    vec((nasty_coordinate(), nasty_coordinate()).prop_map(Point::from), 0..12)
}

fn nets() -> impl Strategy<Value = (Vec<Net>, Vec<usize>)> {
    let kind = vec(1.3..4.7_f64, 1..6).prop_map(|panels_m| Net::unequal(&panels_m).unwrap());
    vec(kind, 1..4).prop_flat_map(|kinds| {
        let count = kinds.len();
        (Just(kinds), vec(0..count, 1..6))
    })
}

fn scaled(net: &Net, factor: f64) -> Net {
    Net::unequal(&net.panel_lengths_m().map(|panel_m| panel_m * factor).collect::<Vec<_>>()).unwrap()
}

fn moved(points: &[Point], turn_rad: f64, factor: f64, east_m: f64, north_m: f64) -> Vec<Point> {
    let (sin, cos) = turn_rad.sin_cos();
    points
        .iter()
        .map(|p| {
            Point::new(
                factor * (p.east_m * cos - p.north_m * sin) + east_m,
                factor * (p.east_m * sin + p.north_m * cos) + north_m,
            )
        })
        .collect()
}

fn line(points: &[Point], closed: bool) -> Outline {
    if closed { Outline::closed(points) } else { Outline::open(points) }
}

fn placed(outline: &Outline, kinds: &[Net], nets: &[usize]) -> Placement {
    place(&PlacementRequest::new(outline, kinds, nets)).unwrap()
}

const FORCES: NetForces =
    NetForces { tension_n: 100.0, height_m: 1.1, spikes_per_post: 1, spike: Spike { length_m: 0.2, diameter_m: 0.01 } };

fn corner_request<'a>(outline: &'a Outline, placement: &'a Placement, kinds: &'a [NetForces]) -> CornerRequest<'a> {
    CornerRequest {
        outline,
        placement,
        kinds,
        soil: Soil::Clay { undrained_strength_pa: 30_000.0 },
        wet: false,
        safety_factor: 2.0,
        stake: StakeKind { spike: Spike { length_m: 0.3, diameter_m: 0.012 }, loop_height_m: 0.05, stand_off_m: 1e-3 },
        stand_offs: &[],
        stated_within_m: 1.0,
    }
}

fn mown_m2(outline: &Outline, width_m: f64, keep_outs: &[Outline]) -> f64 {
    let mower = Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.11 };
    strip(&StripRequest { outline, width: StripWidth::even(width_m), keep_outs, mower }).area_m2
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn length_and_area_stay_under_shift_turn_and_mirror(
        points in star(), turn_rad in 0.0..TAU, factor in 0.1..10.0_f64, east_m in -1e5..1e5_f64, closed: bool,
    ) {
        let here = line(&points, closed);
        let there = line(&moved(&points, turn_rad, factor, east_m, -east_m), closed);
        prop_assert!((there.length_m() - factor * here.length_m()).abs() < 1e-7 * factor.max(1.0));
        prop_assert!((there.area_m2() - factor * factor * here.area_m2()).abs() < 1e-5 * (factor * factor).max(1.0));
        let mut back = points;
        back.reverse();
        let back = line(&back, closed);
        prop_assert!((back.length_m() - here.length_m()).abs() < 1e-9);
        prop_assert!((back.signed_area_m2() + here.signed_area_m2()).abs() < 1e-9);
    }

    #[test]
    fn exterior_turns_of_a_simple_ring_sum_to_a_full_turn(points in star()) {
        let sum_rad: f64 = Outline::closed(&points).vertices().iter().map(|vertex| vertex.signed_turn_rad).sum();
        prop_assert!((sum_rad - TAU).abs() < 1e-9);
    }

    #[test]
    fn a_place_on_the_line_is_its_own_nearest(points in star(), along_m in -500.0..500.0_f64, closed: bool) {
        let outline = line(&points, closed);
        let place = outline.at(along_m);
        let (nearest_m, distance_m) = outline.nearest_along(place);
        prop_assert!(distance_m < 1e-9);
        prop_assert!(outline.between_m(nearest_m, along_m) < 1e-6);
    }

    #[test]
    fn placement_is_blind_to_shift_turn_and_first_vertex(
        points in star(), (kinds, nets) in nets(), turn_rad in 0.0..TAU, east_m in -1e4..1e4_f64, first in 0..9_usize,
    ) {
        let here = placed(&line(&points, true), &kinds, &nets);
        let mut other = moved(&points, turn_rad, 1.0, east_m, 77.0);
        other.rotate_left(first % points.len());
        let there = placed(&line(&other, true), &kinds, &nets);
        prop_assert!((here.corner_miss_m - there.corner_miss_m).abs() < 1e-6);
        other.reverse();
        let back = placed(&line(&other, true), &kinds, &nets);
        prop_assert!((here.corner_miss_m - back.corner_miss_m).abs() < 1e-6);
    }

    #[test]
    fn placement_grows_with_its_line_and_nets(points in star(), (kinds, nets) in nets(), factor in 1.0..8.0_f64, closed: bool) {
        let here = placed(&line(&points, closed), &kinds, &nets);
        // The centimetre within which lengths meet does not grow.
        prop_assume!((here.chain_m - here.line_m).abs() > 0.1);
        let large: Vec<Net> = kinds.iter().map(|kind| scaled(kind, factor)).collect();
        let outline = line(&moved(&points, 0.0, factor, 0.0, 0.0), closed);
        let there = placed(&outline, &large, &nets);
        let sum_m: f64 = here.nets.iter().map(|net| kinds[net.kind].length_m()).sum();
        prop_assert!((there.chain_m - factor * sum_m).abs() < 1e-9 * factor * sum_m);
        prop_assert!((there.corner_miss_m - factor * here.corner_miss_m).abs() < 1e-5);
    }

    #[test]
    fn the_chain_keeps_its_length_and_its_posts(points in star(), (kinds, nets) in nets(), closed: bool) {
        let outline = line(&points, closed);
        let placement = placed(&outline, &kinds, &nets);
        let mut order = placement.order.clone();
        let mut listed = nets.clone();
        order.sort_unstable();
        listed.sort_unstable();
        prop_assert_eq!(order, listed, "every listed net is in the chain");
        prop_assert!((placement.spare_m - placement.short_m - (placement.chain_m - placement.line_m)).abs() < 1e-9);
        let all = placement.posts.len() + placement.spare_posts.len();
        prop_assert_eq!(all, nets.iter().map(|&kind| kinds[kind].panels() + 1).sum::<usize>());
        for post in placement.posts.iter().chain(&placement.spare_posts) {
            let net = &placement.nets[post.net];
            let want_m = net.start_m + kinds[net.kind].posts_m()[post.post];
            prop_assert!((post.chain_m - want_m).abs() < 1e-9);
            prop_assert!(outline.at(post.along_m).distance_m(post.at) < 1e-9);
            prop_assert!((0.0..=placement.line_m).contains(&post.along_m));
        }
        for pair in placement.posts.windows(2) {
            let apart_m = outline.between_m(pair[0].along_m, pair[1].along_m);
            let panel_m = (pair[1].chain_m - pair[0].chain_m).min(placement.line_m - (pair[1].chain_m - pair[0].chain_m));
            prop_assert!((apart_m - panel_m).abs() < 1e-8 || pair[1].chain_m > placement.line_m);
        }
        for miss in &placement.misses {
            let nearest_m = placement.posts.iter()
                .map(|post| outline.between_m(post.along_m, miss.along_m)).fold(f64::INFINITY, f64::min);
            prop_assert!((nearest_m - miss.to_post_m).abs() < 1e-9);
            let own_m = outline.between_m(placement.posts[miss.posts[0]].along_m, miss.along_m);
            prop_assert!((own_m - miss.to_post_m).abs() < 2e-6);
        }
    }

    #[test]
    fn a_pull_is_twice_the_tension_times_the_sine_and_stakes_stand_against_it(points in convex(), mirrored: bool) {
        let mut points = points;
        if mirrored {
            points.reverse();
        }
        let outline = line(&points, true);
        let kinds = [Net::equal(50.0, 14).unwrap()];
        let placement = placed(&outline, &kinds, &[0, 0, 0, 0, 0, 0]);
        let forces = [FORCES];
        for corner in corners(&corner_request(&outline, &placement, &forces)) {
            prop_assert!((corner.pull_n - corner_pull_n(100.0, corner.turn_rad)).abs() < 1e-9);
            prop_assert!(!corner.dents && !corner.end);
            prop_assert!(!region::contains(&outline, corner.stake.at), "a corner that bulges has its stake outside");
        }
    }

    #[test]
    fn the_strip_of_open_ground_is_length_times_width(points in convex(), width_m in 0.3..1.5_f64, turn_rad in 0.0..TAU) {
        // A turn beyond 2 acos(1/5) has its mitre cut.
        let outline = line(&moved(&points, turn_rad, 1.0, 300.0, -50.0), true);
        prop_assume!(outline.vertices().iter().all(|vertex| vertex.turn_rad() < 2.7));
        let want_m2 = outline.length_m() * width_m;
        prop_assert!((mown_m2(&outline, width_m, &[]) - want_m2).abs() < 1e-9 * want_m2);
        // The drawn shape has the same area, to the overlay's grid; counted here by the shoelace.
        let mower = Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.11 };
        let shape = strip(&StripRequest { outline: &outline, width: StripWidth::even(width_m), keep_outs: &[], mower });
        let drawn_m2: f64 = shape.polygons.iter()
            .map(|p| line(&p.outer, true).area_m2() - p.holes.iter().map(|hole| line(hole, true).area_m2()).sum::<f64>())
            .sum();
        prop_assert!((drawn_m2 - want_m2).abs() < 1e-5 * want_m2);
        // And the open line has flat ends.
        let open = line(&points, false);
        prop_assert!((mown_m2(&open, width_m, &[]) - open.length_m() * width_m).abs() < 1e-9 * want_m2);
    }

    #[test]
    fn a_strip_is_never_more_than_its_pieces_and_keep_outs_only_take(points in star(), width_m in 0.3..6.0_f64) {
        let outline = line(&points, true);
        let pieces = strip_pieces(&outline, StripWidth::even(width_m));
        prop_assert!(pieces.iter().all(|piece| line(piece, true).signed_area_m2() > -1e-9), "counter-clockwise");
        let pieces_m2: f64 = pieces.iter().map(|piece| line(piece, true).area_m2()).sum();
        let whole_m2 = mown_m2(&outline, width_m, &[]);
        prop_assert!(whole_m2 <= pieces_m2 * (1.0 + 1e-6));
        let mut mirrored = points.clone();
        mirrored.reverse();
        prop_assert!((mown_m2(&line(&mirrored, true), width_m, &[]) - whole_m2).abs() < 1e-5 * whole_m2);
        // Cut in two by a half plane, both parts make the whole.
        let half = |low_m: f64, high_m: f64| line(
            &[(low_m, -99.0), (high_m, -99.0), (high_m, 99.0), (low_m, 99.0)].map(Point::from), true);
        let east_m2 = mown_m2(&outline, width_m, &[half(-99.0, 1.7)]);
        let west_m2 = mown_m2(&outline, width_m, &[half(1.7, 99.0)]);
        prop_assert!((east_m2 + west_m2 - whole_m2).abs() < 1e-5 * whole_m2);
    }

    #[test]
    fn a_ring_is_inside_itself_and_a_larger_one(points in star(), factor in 1.01..3.0_f64) {
        let inner = line(&points, true);
        let outer = line(&moved(&points, 0.0, factor, 0.0, 0.0), true);
        prop_assert!(region::inside(&inner, &inner));
        prop_assert!(region::inside(&inner, &outer));
        prop_assert!(!region::inside(&outer, &inner));
        prop_assert!((region::overlap_area_m2(&inner, &outer) - inner.area_m2()).abs() < 1e-5 * outer.area_m2());
        prop_assert!(region::distance_between_m(&inner, &outer) > 0.0);
        prop_assert!(region::crossings(&inner, &outer).is_empty());
    }

    #[test]
    fn nothing_panics_on_nasty_lines(points in nasty_points(), (kinds, nets) in nets(), closed: bool, width_m in 0.0..5.0_f64) {
        let faults = check_outline(&points, closed);
        let outline = line(&points, closed);
        prop_assert!(outline.length_m().is_finite() && outline.area_m2().is_finite());
        prop_assert!(faults.iter().any(geometry::OutlineFault::is_fatal) || outline.side_count() > 0);
        let (_, distance_m) = outline.nearest_along(Point::new(0.5, -0.5));
        prop_assert!(distance_m.is_finite());
        region::inside(&outline, &outline);
        region::crossings(&outline, &outline);
        prop_assert!(mown_m2(&outline, width_m, std::slice::from_ref(&outline)).is_finite());
        if let Ok(placement) = place(&PlacementRequest { budget_steps: 20_000, ..PlacementRequest::new(&outline, &kinds, &nets) }) {
            prop_assert!(placement.corner_miss_m.is_finite());
            prop_assert!(placement.posts.iter().all(|post| post.at.is_finite()));
            let forces = vec![FORCES; kinds.len()];
            let request = corner_request(&outline, &placement, &forces);
            for corner in corners(&request) {
                prop_assert!(corner.pull_n.is_finite() && corner.hold_n.is_finite() && corner.stake.at.is_finite());
            }
            leaning_bends(&request);
        }
    }

    #[test]
    fn a_stake_in_clay_balances_its_forces(
        strength_pa in 5e3..2e5_f64, length_m in 0.1..1.5_f64, slenderness in 8.0..60.0_f64, load_height_m in 0.0..1.5_f64,
    ) {
        // Broms' own equations, not the closed form: f, g and the greatest moment from above and from below.
        let diameter_m = length_m / slenderness;
        let hold_n = geometry::broms_clay_n(strength_pa, length_m, diameter_m, load_height_m);
        let f_m = hold_n / (9.0 * strength_pa * diameter_m);
        let g_m = length_m - 1.5 * diameter_m - f_m;
        let above_nm = hold_n * (load_height_m + 1.5 * diameter_m + 0.5 * f_m);
        let below_nm = 2.25 * strength_pa * diameter_m * g_m * g_m;
        prop_assert!(g_m > 0.0 && (above_nm - below_nm).abs() < 1e-9 * below_nm);
        let back_pa = geometry::broms_clay_strength_pa(hold_n, length_m, diameter_m, load_height_m).unwrap();
        prop_assert!((back_pa - strength_pa).abs() < 1e-9 * strength_pa);
    }
}
