//! Braces, cut corners and wind: published figures, the same a second way, and laws.

use std::f64::consts::{FRAC_PI_2, PI};

use geometry::gusts::{GustRequest, first, stretches};
use geometry::statics::{solidity, wind_n_per_m};
use geometry::{
    BracePost, CornerRequest, Guy, Net, NetForces, Outline, PEG_IN_LINE_SHARE, Placement, PlacementRequest, Point,
    Soil, Spike, StakeKind, brace_post, corners, cut_corner, guy, place,
};
use proptest::prelude::*;

const FORCES: NetForces =
    NetForces { tension_n: 100.0, height_m: 1.0, spikes_per_post: 1, spike: Spike { length_m: 0.2, diameter_m: 0.01 } };
const PEG: Spike = Spike { length_m: 0.3, diameter_m: 0.012 };
const STAKE: StakeKind = StakeKind { spike: PEG, loop_height_m: 0.05, stand_off_m: 1.0 };

fn clay(kpa: f64) -> Soil {
    Soil::Clay { undrained_strength_pa: kpa * 1e3 }
}

fn worked(soil: Soil) -> Guy {
    Guy {
        soil,
        pull_n: 2.0 * 100.0 * (FRAC_PI_2 / 2.0).sin(),
        pull_height_m: 0.525,
        tied_m: 1.0,
        angle_rad: FRAC_PI_2 / 2.0,
        peg: PEG,
        pegs: 1,
        loop_m: 0.05,
        spike: FORCES.spike,
        spikes: 1,
    }
}

#[test]
fn the_worked_corner_and_its_guy() {
    // docs/sources.md, husbandry 2.5, corner example, D: each figure as printed, half of its last digit allowed.
    let firm = guy(&worked(clay(50.0)));
    for (name, got, want, unit) in [
        ("level", firm.level_n, 74.2, 0.1),
        ("along the guy", firm.tension_n, 105.0, 1.0),
        ("sideways", firm.side_safety(), 6.3, 0.1),
        ("drawn out, N", firm.lift_hold_n, 283.0, 1.0),
        ("drawn out", firm.lift_safety(), 3.8, 0.1),
    ] {
        assert!((got - want).abs() <= 0.5 * unit + 1e-9, "{name}: {got}, printed {want}");
    }
    let soft = guy(&worked(clay(12.5)));
    assert!((soft.side_safety() - 1.6).abs() < 0.05 && (soft.lift_safety() - 0.95).abs() < 0.006, "{soft:?}");
    assert!(soft.safety() < 1.0, "in very soft ground that guy is drawn out");
    // Moments about the foot, statics: the guy's level pull at its height balances the net's at half its height.
    assert!((firm.level_n * 1.0 - worked(clay(50.0)).pull_n * 0.525).abs() < 1e-9);
    assert!((firm.foot_n + firm.level_n - worked(clay(50.0)).pull_n).abs() < 1e-9, "levels balance too");
    assert!((firm.tension_n.powi(2) - firm.level_n.powi(2) - firm.lift_n.powi(2)).abs() < 1e-6);
}

#[test]
fn guys_at_other_angles_as_the_table_has_them() {
    // docs/sources.md, husbandry 2.4, statics: T/H, V/H, reach for a height of 1.05 m.
    for (angle_deg, along, lift, reach_m) in [
        (30.0, 1.155, 0.577, 1.82),
        (40.0, 1.305, 0.839, 1.25),
        (45.0, 1.414, 1.0, 1.05),
        (50.0, 1.556, 1.192, 0.88),
        (60.0, 2.0, 1.732, 0.61),
        (70.0, 2.924, 2.747, 0.38),
    ] {
        let found = guy(&Guy { tied_m: 1.05, angle_rad: f64::to_radians(angle_deg), ..worked(clay(50.0)) });
        assert!((found.tension_n / found.level_n - along).abs() < 6e-4, "{angle_deg}: {found:?}");
        assert!((found.lift_n / found.level_n - lift).abs() < 6e-4, "{angle_deg}: {found:?}");
        assert!((found.reach_m - reach_m).abs() < 6e-3, "{angle_deg}: {found:?}");
    }
}

#[test]
fn pegs_in_line_add_up_as_pickets_do() {
    // S8, a naval manual: one picket 700 lb, three in line 1,800 lb.
    let holds = |pegs| guy(&Guy { pegs, ..worked(clay(50.0)) }).side_hold_n;
    assert!((holds(3) / holds(1) - 1_800.0 / 700.0).abs() < 1e-12);
    assert!((holds(2) / holds(1) - 1.0 - PEG_IN_LINE_SHARE).abs() < 1e-12);
    // Below three times one: pickets shade each other.
    assert!(holds(3) < 3.0 * holds(1));
}

#[test]
fn a_rod_beside_the_post_holds_as_the_table_has_it() {
    // docs/sources.md, husbandry 2.5: rod of 450 x 12.7 mm loaded at 0.5 m, clay of 12.5 to 100 kPa, D.
    for (kpa, want) in [(12.5, 88.0), (25.0, 177.0), (50.0, 354.0), (75.0, 531.0), (100.0, 708.0)] {
        let rod = BracePost {
            soil: clay(kpa),
            pull_height_m: 0.5,
            post: Spike { length_m: 0.45, diameter_m: 0.0127 },
            own_hold_n: 7.0,
        };
        assert!((brace_post(&rod) - 7.0 - want).abs() <= 0.5 + 1e-9, "{kpa} kPa");
    }
}

fn square(side_m: f64) -> Outline {
    Outline::closed(&[(0.0, 0.0), (side_m, 0.0), (side_m, side_m), (0.0, side_m)].map(Point::from))
}

/// The outline with a vertex cut.
fn with_cut(outline: &Outline, vertex: usize, places: &[Point]) -> Outline {
    let mut points: Vec<Point> = outline.points().collect();
    points.splice(vertex..=vertex, places.iter().copied());
    if outline.is_closed() { Outline::closed(&points) } else { Outline::open(&points) }
}

#[test]
fn a_cut_corner_turns_equally_in_panels_and_loses_what_it_says() {
    let outline = square(25.0);
    let panel_m = 50.0 / 14.0;
    for vertex in 0..4 {
        for posts in 2..=5 {
            let cut = cut_corner(&outline, vertex, posts, panel_m).unwrap();
            let after = with_cut(&outline, vertex, &cut.places);
            assert_eq!(after.vertices().len(), 3 + posts);
            for offset in 0..posts {
                let turn_rad = after.vertices()[vertex + offset].turn_rad();
                assert!((turn_rad - FRAC_PI_2 / posts as f64).abs() < 1e-9, "{vertex}, {posts}: {turn_rad}");
            }
            for pair in cut.places.windows(2) {
                assert!((pair[0].distance_m(pair[1]) - panel_m).abs() < 1e-9, "one panel from post to post");
            }
            // Measured a second way, on the outline that comes of it.
            assert!((outline.length_m() - after.length_m() - cut.shorter_m).abs() < 1e-9);
            assert!((outline.area_m2() - after.area_m2() - cut.ground_m2).abs() < 1e-9);
        }
    }
    assert_eq!(cut_corner(&outline, 0, 1, panel_m), None);
    assert_eq!(cut_corner(&outline, 9, 2, panel_m), None);
    assert_eq!(cut_corner(&square(9.0), 0, 5, panel_m), None, "a side of 9 m is too short for a cut of five posts");
    let open = Outline::open(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0)].map(Point::from));
    assert!(cut_corner(&open, 1, 3, panel_m).is_some());
    assert_eq!((cut_corner(&open, 0, 3, panel_m), cut_corner(&open, 2, 3, panel_m)), (None, None), "ends do not turn");
}

#[test]
fn a_dent_is_cut_the_other_way() {
    let dented = Outline::closed(
        &[(0.0, 0.0), (40.0, 0.0), (40.0, 20.0), (20.0, 20.0), (20.0, 40.0), (0.0, 40.0)].map(Point::from),
    );
    let cut = cut_corner(&dented, 3, 4, 3.0).unwrap();
    let after = with_cut(&dented, 3, &cut.places);
    assert!((after.area_m2() - dented.area_m2() - cut.ground_m2).abs() < 1e-9, "ground is won there");
}

/// The wind on a run of one kind of net: what the tests ask of it.
fn windy(
    outline: &Outline,
    nets: usize,
    panels: usize,
    soil: Soil,
    share: f64,
) -> (Placement, Vec<geometry::gusts::Stretch>) {
    let kinds = [Net::equal(50.0, panels).unwrap()];
    let placement = place(&PlacementRequest::new(outline, &kinds, &vec![0; nets])).unwrap();
    let request = CornerRequest {
        outline,
        placement: &placement,
        kinds: &[FORCES],
        soil,
        wet: false,
        safety_factor: 2.0,
        stake: STAKE,
        stand_offs: &[],
        stated_within_m: 1.0,
    };
    let judged = corners(&request);
    let found = stretches(&GustRequest {
        outline,
        placement: &placement,
        kinds: &[FORCES],
        solidity: &[share],
        corners: &judged,
        soil,
    });
    (placement, found)
}

#[test]
fn a_clean_net_in_firm_clay_stands_to_18_metres_a_second() {
    // docs/sources.md, husbandry 2.3: "a single spike in firm clay (63 N at 0.5 m) is at its limit near 18 m/s with a clean
    // net", 3.5 m a post, D. Here 25 m in seven panels of 3.571 m.
    let clean = solidity(12.0 * 0.0025 / 1.05, 0.003 / 0.075);
    let (placement, found) = windy(&square(25.0), 2, 14, clay(50.0), clean);
    assert_eq!(found.len(), 4, "four straights between four braced corners");
    for straight in &found {
        assert_eq!(straight.standing.len(), 6, "seven panels have six posts between the corners");
        assert!((straight.length_m - 25.0).abs() < 1e-9);
        assert!((straight.limit_m_per_s / 18.0 - 1.0).abs() < 0.05, "{}", straight.limit_m_per_s);
        // The same by hand: hold over the wind on half of either panel.
        let at_limit_n = wind_n_per_m(straight.limit_m_per_s, clean, 1.0) * 50.0 / 14.0;
        assert!((at_limit_n - 63.02).abs() < 0.05, "N14: the spike's 63.02 N, {at_limit_n}");
    }
    let middle = found[0].first().unwrap();
    assert!(placement.posts[middle.posts[0]].at.distance_m(Point::new(12.5, 0.0)) < 14.0);
}

#[test]
fn the_longest_of_equal_straights_goes_first_and_joins_stand_longer() {
    let oblong = Outline::closed(
        &[(0.0, 0.0), (250.0 / 7.0, 0.0), (250.0 / 7.0, 100.0 / 7.0), (0.0, 100.0 / 7.0)].map(Point::from),
    );
    let (placement, found) = windy(&oblong, 2, 14, clay(50.0), 0.2);
    let alike = first(&found);
    assert_eq!(alike.len(), 2, "both long sides");
    let longest = alike[0];
    assert!((longest.length_m - 250.0 / 7.0).abs() < 1e-6, "{}", longest.length_m);
    // A join has two posts: their hold is twice, their wind the same, so they stand to sqrt 2 times the wind.
    let all: Vec<_> = found.iter().flat_map(|one| &one.standing).collect();
    let (_, line) = windy(&Outline::open(&[(0.0, 0.0), (100.0, 0.0)].map(Point::from)), 2, 14, clay(50.0), 0.2);
    let joins: Vec<_> = line[0].standing.iter().filter(|one| one.posts.len() == 2).collect();
    assert_eq!((line.len(), line[0].standing.len(), joins.len()), (1, 27, 1));
    assert!((joins[0].limit_m_per_s / line[0].limit_m_per_s - 2_f64.sqrt()).abs() < 1e-9);
    let free: usize = all.iter().map(|one| one.posts.len()).sum();
    assert!(free <= placement.posts.len());
    // The netting is shared out among free posts and the braced corners: four corners take a panel each at most.
    let taken_m: f64 = all.iter().map(|one| one.net_m).sum();
    assert!((taken_m - (100.0 - 4.0 * 50.0 / 14.0)).abs() < 1e-6, "{taken_m}");
}

#[test]
fn a_round_run_is_one_stretch_whose_posts_carry_the_bend_too() {
    let round: Vec<Point> = (0..28)
        .map(|post| f64::from(post) / 28.0 * 2.0 * PI)
        .map(|angle| {
            Point::new(
                100.0 / 28.0 / (2.0 * (PI / 28.0).sin()) * angle.cos(),
                100.0 / 28.0 / (2.0 * (PI / 28.0).sin()) * angle.sin(),
            )
        })
        .collect();
    let (_, found) = windy(&Outline::closed(&round), 2, 14, clay(50.0), 0.2);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].standing.len(), 28);
    assert!((found[0].length_m - 100.0).abs() < 1e-6);
    // N43: each post of 28 is pulled by 22.39 N, which the wind no longer has to itself.
    let single = found[0].standing.iter().find(|one| one.posts.len() == 1).unwrap();
    assert!((63.02 - single.left_n - 22.39).abs() < 0.02, "{}", single.left_n);
    let (_, gone) = windy(&Outline::closed(&round), 2, 14, clay(12.5), 0.2);
    assert!(gone[0].limit_m_per_s < 1e-12, "in soft ground the bend leans without any wind");
}

fn soils() -> impl Strategy<Value = Soil> {
    prop_oneof![
        (1.0..300.0_f64).prop_map(clay),
        (20.0..45.0_f64, 12.0..22.0_f64).prop_map(|(angle_deg, weight)| Soil::Sand {
            friction_angle_rad: angle_deg.to_radians(),
            unit_weight_n_per_m3: weight * 1e3,
        }),
    ]
}

proptest! {
    #[test]
    fn wet_ground_never_holds_more_nor_a_longer_peg_or_a_second_one_less(
        soil in soils(),
        share in 0.05..1.0_f64,
        length_m in 0.05..1.2_f64,
        longer_m in 0.0..0.8_f64,
        angle_deg in 20.0..70.0_f64,
        tied_m in 0.3..1.2_f64,
    ) {
        let one = Guy { peg: Spike { length_m, ..PEG }, angle_rad: angle_deg.to_radians(), tied_m, ..worked(soil) };
        let dry = guy(&one);
        let wet = guy(&Guy { soil: soil.weakened(share), ..one });
        prop_assert!(wet.safety() <= dry.safety() * (1.0 + 1e-12));
        prop_assert!((wet.side_hold_n - share * dry.side_hold_n).abs() <= 1e-9 * dry.side_hold_n.max(1.0), "linear");
        prop_assert!((wet.lift_hold_n - share * dry.lift_hold_n).abs() <= 1e-9 * dry.lift_hold_n.max(1.0));
        let longer = guy(&Guy { peg: Spike { length_m: length_m + longer_m, ..PEG }, ..one });
        prop_assert!(longer.side_hold_n >= dry.side_hold_n && longer.lift_hold_n >= dry.lift_hold_n);
        let second = guy(&Guy { pegs: 2, ..one });
        prop_assert!(second.side_hold_n >= dry.side_hold_n && second.safety() >= dry.safety());
        let post = |length_m: f64| brace_post(&BracePost { soil, pull_height_m: 0.5, post: Spike { length_m, ..PEG }, own_hold_n: 1.0 });
        prop_assert!(post(length_m + longer_m) >= post(length_m));
    }

    #[test]
    fn a_flatter_guy_lifts_its_peg_less(soil in soils(), angle_deg in 15.0..60.0_f64, flatter_deg in 1.0..14.0_f64) {
        let lift = |deg: f64| guy(&Guy { angle_rad: deg.to_radians(), ..worked(soil) }).lift_n;
        prop_assert!(lift(angle_deg - flatter_deg) < lift(angle_deg));
    }

    #[test]
    fn cuts_share_the_turn_out_wherever_the_corner_lies(
        angle in 0.0..6.2_f64,
        turn_deg in 21.0..140.0_f64,
        left in any::<bool>(),
        posts in 2_usize..9,
        panel_m in 0.5..4.0_f64,
    ) {
        let turn_rad = f64::to_radians(if left { turn_deg } else { -turn_deg });
        let way = |angle: f64| (500.0 * angle.cos(), 500.0 * angle.sin());
        let (one, other) = (way(angle), way(angle + turn_rad));
        let outline = Outline::open(&[(-one.0, -one.1), (0.0, 0.0), other].map(Point::from));
        let cut = cut_corner(&outline, 1, posts, panel_m).unwrap();
        let after = with_cut(&outline, 1, &cut.places);
        prop_assert_eq!(after.vertices().len(), posts + 2);
        for vertex in 1..=posts {
            prop_assert!((after.vertices()[vertex].signed_turn_rad - turn_rad / posts as f64).abs() < 1e-7);
        }
        prop_assert!((outline.length_m() - after.length_m() - cut.shorter_m).abs() < 1e-6);
        prop_assert!(cut.shorter_m >= -1e-9 && cut.ground_m2 >= 0.0);
    }

    #[test]
    fn stronger_wind_shares_and_wetter_ground_never_stand_longer(
        kpa in 5.0..150.0_f64,
        share in 0.05..0.5_f64,
        more in 0.0..0.4_f64,
        wet in 0.1..1.0_f64,
    ) {
        let limit = |soil: Soil, share: f64| {
            let (_, found) = windy(&square(25.0), 2, 14, soil, share);
            first(&found).first().map_or(f64::INFINITY, |one| one.limit_m_per_s)
        };
        let clean = limit(clay(kpa), share);
        prop_assert!(limit(clay(kpa), share + more) <= clean * (1.0 + 1e-9));
        prop_assert!(limit(clay(kpa).weakened(wet), share) <= clean * (1.0 + 1e-9) || clean.is_infinite());
    }
}

#[test]
fn ends_and_braced_corners_are_firm() {
    let open = Outline::open(&[(0.0, 0.0), (50.0, 0.0)].map(Point::from));
    let (_, found) = windy(&open, 1, 14, clay(50.0), 0.2);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].standing.len(), 13, "fourteen panels between two braced ends");
    assert!((found[0].length_m - 50.0).abs() < 1e-9);
}
