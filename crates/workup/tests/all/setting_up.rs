//! The set-up order of whole plans: sums, places, rates, mowing ways, and what a moved plan does not change.

use plan::{Coop, MowWay, NetKind, Plan, Point, Run};
use workup::setting_up::{Doing, Work};
use workup::{Depth, RunWorkup, workup};

/// Two rolls of 50 m round a square of 25 m, fed at its first corner.
fn square() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(4), ..NetKind::new("long", 50.0, 14) });
    plan.coop = Some(Coop::new("house", Point::new(12.0, 12.0)));
    plan.runs.push(Run {
        id: "run".to_owned(),
        outline: [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec(),
        feed_at: Some(Point::new(0.0, 0.0)),
        coop: Some("house".to_owned()),
        ..Run::default()
    });
    plan
}

fn worked(plan: &Plan) -> RunWorkup {
    let mut worked = workup(plan, Depth::Quick);
    assert_eq!(worked.troubles, []);
    worked.runs.remove(0)
}

fn ids(work: &Work) -> Vec<&'static str> {
    work.steps.iter().map(|step| step.what.id()).collect()
}

#[test]
fn the_minutes_of_a_square_by_hand() {
    let run = worked(&square());
    let work = run.set_up.as_ref().unwrap();
    // Both rolls begin at the closing join, which is the feed and the drop: nothing is carried but along the net.
    assert!(work.drop_assumed && (work.carry_m - 100.0).abs() < 1e-9, "{}", work.carry_m);
    // Look 100, back along two nets 100, braces once round 100, far post 35.36, coop (12, 12) from (25, 25) 18.38.
    let walk_m = 300.0 + 25.0 * 2_f64.sqrt() + 13.0 * 2_f64.sqrt();
    assert!((work.walk_m - walk_m).abs() < 1e-9, "{} {walk_m}", work.walk_m);
    // Rolling out 2 x 2, 30 posts of 10 s, 2 joins, 4 braces of 2, power 3; 75 m and 45 m a minute.
    let minutes = 4.0 + 5.0 + 2.0 + 8.0 + 3.0 + walk_m / 75.0 + 100.0 / 45.0;
    assert!((work.minutes_low - minutes).abs() < 1e-9, "{} {minutes}", work.minutes_low);
    assert!((work.minutes_high - 4.0 * minutes).abs() < 1e-9 && work.minutes_bound <= work.minutes_low);
    assert_eq!(work.mow_minutes, run.strip.as_ref().unwrap().minutes);
    // The rule of thumb, 5 and 10 a net and 2 a brace, is 33: within a fifth.
    assert_eq!(run.lay.as_ref().unwrap().set_up_minutes, 33.0);
    assert!((work.minutes_low / 33.0 - 1.0).abs() < 0.2);

    // Down: power 3, gate 0.5, far join 0.5, fold 2 x 2, 30 posts of 6 s, 4 braces; out to the far corner twice.
    let down = run.taking_down.as_ref().unwrap();
    let far_m = 25.0 * 2_f64.sqrt();
    let minutes = 3.0 + 1.0 + 4.0 + 3.0 + 4.0 + 2.0 * far_m / 75.0 + 100.0 / 45.0;
    assert!((down.minutes_low - minutes).abs() < 1e-9, "{} {minutes}", down.minutes_low);
}

/// The energizer 30 m west and 40 m south of the feed point: 50 m from it.
#[test]
fn where_the_energizer_stands_is_walked_to_and_from() {
    let at_feed = worked(&square());
    let mut plan = square();
    let stands = Point::new(-30.0, -40.0);
    plan.runs[0].energizer_at = Some(stands);
    let apart = worked(&plan);
    let step = |work: &Work, what| work.steps.iter().find(|step| step.what == what).unwrap().clone();
    let (was, up) = (at_feed.set_up.unwrap(), apart.set_up.unwrap());
    let power = step(&up, Doing::Power);
    // After the braces one stands at the feed point: 50 m on to the energizer.
    assert_eq!(power.places, [Point::new(0.0, 0.0), stands]);
    assert!((power.walk_m - 50.0).abs() < 1e-9 && (power.minutes - 3.0 - 50.0 / 75.0).abs() < 1e-9);
    // From there to the far post at (25, 25), in place of from the feed point.
    let far_m = 55_f64.hypot(65.0);
    assert!((step(&up, Doing::FarReading).walk_m - far_m).abs() < 1e-9);
    let more_m = 50.0 + far_m - 25.0 * 2_f64.sqrt();
    assert!((up.walk_m - was.walk_m - more_m).abs() < 1e-9, "{} {more_m}", up.walk_m - was.walk_m);
    assert!((up.minutes_low - was.minutes_low - more_m / 75.0).abs() < 1e-9);
    // Down it begins at the energizer, and the clip comes after the switch.
    let (was, down) = (at_feed.taking_down.unwrap(), apart.taking_down.unwrap());
    let off = step(&down, Doing::PowerOff);
    assert_eq!(off.places, [stands, Point::new(0.0, 0.0)]);
    assert!((down.walk_m - was.walk_m - 50.0).abs() < 1e-9);
    assert!((down.minutes_low - was.minutes_low - 50.0 / 75.0).abs() < 1e-9);
    assert_eq!((up.energizer_apart_m, down.energizer_apart_m), (Some(50.0), Some(50.0)));
}

#[test]
fn an_energizer_at_its_feed_point_is_not_walked_to() {
    let unstated = worked(&square());
    let mut plan = square();
    plan.runs[0].energizer_at = Some(Point::new(0.0, 0.0));
    let stated = worked(&plan);
    assert_eq!((&stated.set_up, &stated.taking_down), (&unstated.set_up, &unstated.taking_down));
    let up = stated.set_up.unwrap();
    let power = up.steps.iter().find(|step| step.what == Doing::Power).unwrap();
    assert_eq!(power.places, [Point::new(0.0, 0.0)]);
    assert_eq!(up.energizer_apart_m, None);
}

#[test]
fn the_steps_come_in_the_order_of_the_work_and_add_up() {
    for mow_way in [MowWay::BetweenCanes, MowWay::AlongNet, MowWay::NotAtAll] {
        let mut plan = square();
        plan.runs[0].mow_way = Some(mow_way);
        let run = worked(&plan);
        for work in [run.set_up.as_ref().unwrap(), run.taking_down.as_ref().unwrap()] {
            let sum: f64 = work.steps.iter().map(|step| step.minutes).sum();
            assert!((sum - work.minutes_low - work.mow_minutes).abs() < 1e-9);
            assert_eq!(work.order.len(), 2);
            assert!(work.order.iter().all(|roll| roll.from != roll.to));
        }
        let up = run.set_up.as_ref().unwrap();
        let each = ["carry", "roll_out", "tread_in"];
        let rolls = [&each[..], &each, &["tie"]].concat();
        let want = match mow_way {
            MowWay::BetweenCanes => [&["look", "canes", "mow"][..], &rolls].concat(),
            MowWay::AlongNet => [&["look", "canes"][..], &rolls, &["mow", "restand"]].concat(),
            MowWay::NotAtAll => [&["look", "canes"][..], &rolls].concat(),
        };
        assert_eq!(ids(up), [&want[..], &["brace", "power", "far_reading", "birds"]].concat());
        assert_eq!(up.mow_minutes > 0.0, mow_way != MowWay::NotAtAll);
        let down = run.taking_down.as_ref().unwrap();
        let want = ["power_off", "open_gate", "untie", "fold", "carry_away", "go_to", "fold", "carry_away"];
        assert_eq!(ids(down), want);
        // Folded to the end that starts next time.
        for roll in &down.order {
            let was = up.order.iter().find(|other| other.net == roll.net).unwrap();
            assert_eq!((roll.from, roll.to, roll.forward), (was.to, was.from, !was.forward));
        }
    }
}

#[test]
fn stated_rates_and_hindrances_make_the_set_up_minutes() {
    let plain = worked(&square()).set_up.unwrap();
    let mut plan = square();
    plan.store.rates.people = Some(2);
    plan.store.rates.rain = Some(true);
    plan.store.rates.rain_factor = Some(1.5);
    let run = worked(&plan);
    let wet = run.set_up.unwrap();
    assert!((wet.minutes_low - plain.minutes_low * 0.6 * 1.5).abs() < 1e-9, "factors multiply");
    assert_eq!(run.lay.unwrap().set_up_minutes, wet.minutes_low);
    let mut stony = square();
    stony.store.rates.stony = Some(true);
    // 30 posts of 10 s and 4 braces of 2 minutes once more.
    let more = worked(&stony).set_up.unwrap().minutes_low - plain.minutes_low;
    assert!((more - 13.0).abs() < 1e-9, "{more}");
    let mut beyond = square();
    beyond.store.rates.walk_m_per_s = Some(0.0);
    let run = workup(&beyond, Depth::Quick).runs.remove(0);
    assert!(run.set_up.is_none() && run.taking_down.is_none() && run.lay.is_some(), "no speed, no minutes");
}

#[test]
fn a_gateway_far_away_is_walked_to_and_two_rolls_a_trip_save_the_way() {
    let mut plan = square();
    plan.runs[0].drop_at = Some(Point::new(-40.0, -30.0));
    let one = worked(&plan).set_up.unwrap();
    // 50 m to the closing join each time, and the last way ends at the feed.
    assert!(!one.drop_assumed && (one.carry_m - 200.0).abs() < 1e-9, "{}", one.carry_m);
    plan.store.rates.rolls_a_trip = Some(2);
    let two = worked(&plan).set_up.unwrap();
    assert!((two.carry_m - 150.0).abs() < 1e-9, "{}", two.carry_m);
    assert!((one.walk_m - two.walk_m - 50.0).abs() < 1e-9);
    assert_eq!(two.order.iter().map(|roll| roll.trip).collect::<Vec<_>>(), [0, 0]);
    assert!(two.steps.iter().any(|step| step.what == Doing::Carry(2)));
}

#[test]
fn a_plan_that_is_moved_turned_or_mirrored_takes_the_same_work() {
    let mut plan = square();
    let run = &mut plan.runs[0];
    run.outline = [(0.0, 0.0), (61.0, 0.0), (73.0, 41.0), (20.0, 55.0), (-6.0, 30.0)].map(Point::from).to_vec();
    run.feed_at = Some(Point::new(33.0, 0.0));
    run.drop_at = Some(Point::new(80.0, -14.0));
    (run.start_m, run.reversed) = (Some(17.0), Some(false));
    let before = worked(&plan);
    for (angle_rad, mirror, east_m, north_m) in
        [(0.0_f64, 1.0, 700.0, -900.0), (0.7, 1.0, 5.0, 1.0), (2.9, -1.0, -30.0, 4.0), (0.0, -1.0, 0.0, 0.0)]
    {
        let (sin, cos) = angle_rad.sin_cos();
        let to = |at: Point| {
            let (east, north) = (at.east_m * mirror, at.north_m);
            Point::new(cos * east - sin * north + east_m, sin * east + cos * north + north_m)
        };
        let mut moved = plan.clone();
        let run = &mut moved.runs[0];
        run.outline.iter_mut().for_each(|at| *at = to(*at));
        (run.feed_at, run.drop_at) = (run.feed_at.map(to), run.drop_at.map(to));
        if let Some(coop) = &mut moved.coop {
            coop.at = to(coop.at);
        }
        let after = worked(&moved);
        for (before, after) in [(&before.set_up, &after.set_up), (&before.taking_down, &after.taking_down)] {
            let (before, after) = (before.as_ref().unwrap(), after.as_ref().unwrap());
            assert!((before.minutes_low - after.minutes_low).abs() < 1e-6);
            assert!((before.walk_m - after.walk_m).abs() < 1e-6 && (before.carry_m - after.carry_m).abs() < 1e-6);
            assert_eq!(ids(before), ids(after));
            let nets = |work: &Work| work.order.iter().map(|roll| (roll.net, roll.forward)).collect::<Vec<_>>();
            assert_eq!(nets(before), nets(after));
        }
        let walk = |run: &RunWorkup| run.mow_walk.clone().unwrap();
        assert!((walk(&before).length_m - walk(&after).length_m).abs() < 1e-6);
        assert_eq!(walk(&before).turnings, walk(&after).turnings);
    }
}

#[test]
fn spare_short_and_open_runs_are_worked_out_too() {
    for (outline, closed, nets) in [
        (vec![(0.0, 0.0), (120.0, 0.0)], false, 2),
        (vec![(0.0, 0.0), (120.0, 0.0)], false, 4),
        (vec![(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], true, 1),
        (vec![(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)], true, 4),
    ] {
        let mut plan = square();
        plan.runs[0].outline = outline.into_iter().map(Point::from).collect();
        plan.runs[0].closed = Some(closed);
        plan.runs[0].nets = Some(vec!["long".to_owned(); nets]);
        let run = worked(&plan);
        let (up, down) = (run.set_up.unwrap(), run.taking_down.unwrap());
        assert_eq!((up.order.len(), down.order.len()), (nets, nets));
        // Every join is tied once and untied once.
        let places = |work: &Work, what: &[Doing]| -> usize {
            work.steps.iter().filter(|step| what.contains(&step.what)).map(|step| step.places.len()).sum()
        };
        let tied = places(&up, &[Doing::Tie]);
        assert_eq!(tied, places(&down, &[Doing::OpenGate, Doing::Untie]));
        assert_eq!(tied, nets - 1 + usize::from(closed && nets > 1), "{closed} {nets}");
    }
}

#[test]
fn further_posts_at_dips_are_in_the_minutes_and_drawn_with_their_net() {
    let mut plan = square();
    let spot =
        |(east_m, north_m, up_m)| plan::SpotHeight { at: Point::new(east_m, north_m), up_m, rest: plan::Rest::new() };
    // A ditch of 0.6 m across the first side.
    let ditch = [(-5.0, -5.0, 0.0), (11.0, -5.0, 0.0), (12.5, -5.0, -0.6), (14.0, -5.0, 0.0), (30.0, -5.0, 0.0)];
    let far = ditch.map(|(east_m, north_m, up_m): (f64, f64, f64)| (east_m, north_m + 10.0, up_m));
    plan.heights = ditch.into_iter().chain(far).chain([(-5.0, 30.0, 0.0), (30.0, 30.0, 0.0)]).map(spot).collect();
    let run = worked(&plan);
    let further: Vec<Point> = run.slope.as_ref().unwrap().posts().collect();
    assert!(!further.is_empty());
    let count = further.len() as f64;
    // The rule of thumb: 5, 10 a net, 2 a brace, and 1 for each of them.
    let lay = run.lay.as_ref().unwrap();
    let thumb = 5.0 + 10.0 * lay.nets.len() as f64 + 2.0 * lay.braces() as f64;
    assert_eq!(lay.set_up_minutes, thumb + count);
    let step = |work: &Work| work.steps.iter().find(|step| step.what == Doing::FurtherPosts).unwrap().clone();
    let set = step(run.set_up.as_ref().unwrap());
    assert_eq!(set.places, further);
    assert!((set.minutes - count - set.walk_m / 75.0).abs() < 1e-9);
    let order = ids(run.set_up.as_ref().unwrap());
    let at = |id: &str| order.iter().position(|one| *one == id).unwrap();
    assert!(at("brace") < at("further_posts") && at("further_posts") < at("power"));
    // A rate of the keeper's counts in place of the one that is assumed, and stones double it.
    plan.store.rates.further_post_minutes = Some(4.0);
    plan.store.rates.stony = Some(true);
    let slow = worked(&plan);
    assert!((step(slow.set_up.as_ref().unwrap()).minutes - 8.0 * count - set.walk_m / 75.0).abs() < 1e-9);
    // Down they are pulled like the net's own, 6 s each.
    let down_m = |run: &RunWorkup| run.taking_down.as_ref().unwrap().minutes_low;
    let mut level = plan.clone();
    level.store.rates = plan::Rates::default();
    let pulled = down_m(&worked(&level));
    let mut posts = level.clone();
    posts.store.rates.pull_post_s = Some(66.0);
    let posts_on_nets = lay.posts.len() + lay.spare_posts.len();
    assert!((down_m(&worked(&posts)) - pulled - posts_on_nets as f64 - count).abs() < 1e-9);
    // Without heights nobody speaks of them.
    assert!(!ids(worked(&square()).set_up.as_ref().unwrap()).contains(&"further_posts"));
    let listed = |plan: &Plan| plan::assumed(plan).iter().any(|one| one.key == "store.rates.further_post_minutes");
    assert!(listed(&level) && !listed(&plan) && !listed(&square()));
}
