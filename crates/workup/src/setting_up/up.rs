//! Setting up: look, mow, lay the rolls, brace, power, read, and only then the birds.

use geometry::Point;
use plan::MowWay;

use super::model::{Doing, RollWork, Work};
use super::trips::{Task, Way, best};
use super::{Making, Site};
use crate::{place, point};

/// The whole work; `mow_minutes` are the strip's.
pub(super) fn work(site: &Site<'_>, mow_minutes: f64) -> Work {
    let hands = &site.hands;
    let mut making = Making { hands, here: site.drop_at, steps: Vec::new() };
    let mow_way = site.run.mow_way();
    look(site, &mut making);
    if mow_way == MowWay::BetweenCanes {
        // The mower's walk is in its own minutes; it comes back to where the rolls lie.
        making.step(Doing::Mow(mow_way), None, &corners(site), (0.0, 0.0), mow_minutes);
    }

    let task = Task {
        base: site.drop_at,
        last_home: site.feed_at,
        // Trodden in on the way back, the work of a net ends where it began.
        rolls: site.rolls.iter().map(|roll| roll.ends.map(|end| Way { enter: end, leave: end }).to_vec()).collect(),
        rolls_a_trip: hands.rolls_a_trip,
        out: hands.carry,
        between: hands.carry,
        home: hands.walk,
    };
    let walk = best(&task);
    let mut order = Vec::with_capacity(site.rolls.len());
    let mut standing = vec![false; site.rolls.len()];
    for (trip, stops) in walk.trips.iter().enumerate() {
        for (index, &(net, way)) in stops.iter().enumerate() {
            let roll = &site.rolls[net];
            let (from, to) = (roll.ends[way], roll.ends[1 - way]);
            order.push(RollWork {
                net,
                number: order.len() + 1,
                kind: roll.kind.clone(),
                trip,
                from: place(from),
                to: place(to),
                forward: way == 0,
            });
            let walk_m = if index == 0 { making.walk(&[site.drop_at]) } else { 0.0 };
            let start = making.here;
            let carry_m = making.walk(&[from]);
            making.step(Doing::Carry(stops.len() - index), Some(net), &[start, from], (walk_m, carry_m), 0.0);
            making.step(Doing::RollOut, Some(net), &[from, to], (0.0, roll.length_m), hands.unroll);
            let posts = hands.tread_post * roll.posts as f64;
            making.step(Doing::TreadIn, Some(net), &[to, from], (roll.length_m, 0.0), posts);
            standing[net] = true;
            let ties = |join: &&super::joins::Join| {
                let (before, after) = join.nets;
                (before == net || after == net) && standing[before] && standing[after]
            };
            let places: Vec<Point> = site.joins.iter().filter(ties).map(|join| join.at).collect();
            if !places.is_empty() {
                making.step(Doing::Tie, Some(net), &places, (0.0, 0.0), hands.join * places.len() as f64);
            }
        }
    }

    if mow_way == MowWay::AlongNet {
        making.step(Doing::Mow(mow_way), None, &corners(site), (0.0, 0.0), mow_minutes);
        // Pulled, laid aside, and trodden in again: two more walks along every net.
        let posts: usize = site.rolls.iter().map(|roll| roll.posts).sum();
        let length_m: f64 = site.rolls.iter().map(|roll| roll.length_m).sum();
        let again = (hands.pull_post + hands.tread_post) * posts as f64;
        making.step(Doing::Restand, None, &corners(site), (2.0 * length_m, 0.0), again);
    }
    finish(site, &mut making);
    let (assumed, slack) = (site.run.drop_at.is_none(), walk.minutes - walk.bound);
    making.done(order, site, (site.drop_at, assumed), slack)
}

fn corners(site: &Site<'_>) -> Vec<Point> {
    let ends = [0.0, site.outline.length_m()].map(|along_m| site.outline.at(along_m));
    let corners = site.outline.corners().map(|(_, corner)| corner.at);
    if site.outline.is_closed() {
        corners.collect()
    } else {
        std::iter::once(ends[0]).chain(corners).chain(std::iter::once(ends[1])).collect()
    }
}

/// Once along the line and back to the rolls, canes in hand; overhead lines that cross it are the places to look up at.
fn look(site: &Site<'_>, making: &mut Making<'_>) {
    let outline = site.outline;
    let overhead: Vec<Point> = site
        .plan
        .ground
        .hazards
        .iter()
        .filter(|hazard| hazard.kind == plan::HazardKind::OverheadLine)
        .map(|hazard| geometry::Outline::open(&hazard.path.iter().copied().map(point).collect::<Vec<_>>()))
        .flat_map(|path| geometry::region::crossings(outline, &path))
        .map(|(at, _)| at)
        .collect();
    let (from, to) = if outline.is_closed() {
        let nearest = outline.at(outline.nearest_along(site.drop_at).0);
        (nearest, nearest)
    } else {
        (outline.at(0.0), outline.at(outline.length_m()))
    };
    let walk_m = making.here.distance_m(from) + outline.length_m() + to.distance_m(site.drop_at);
    making.here = site.drop_at;
    making.step(Doing::Look, None, &overhead, (walk_m, 0.0), 0.0);
    making.step(Doing::Canes, None, &corners(site), (0.0, 0.0), 0.0);
}

/// Braces on one walk along the line and back, further posts, power, the far reading, and then the birds.
fn finish(site: &Site<'_>, making: &mut Making<'_>) {
    let (hands, outline) = (site.hands, site.outline);
    if !site.braced.is_empty() {
        let round_m = outline.length_m() * if outline.is_closed() { 1.0 } else { 2.0 };
        let walk_m = making.walk(&[site.feed_at]) + round_m;
        let minutes: f64 = site.braced.iter().map(|braced| braced.kit.minutes(&site.plan.store)).sum();
        let places: Vec<Point> = site.braced.iter().map(|braced| braced.at).collect();
        making.step(Doing::Brace, None, &places, (walk_m, 0.0), minutes * hands.ground);
    }
    if !site.further.is_empty() {
        let walk_m = making.walk(&site.further);
        let minutes = hands.further_post * site.further.len() as f64;
        making.step(Doing::FurtherPosts, None, &site.further, (walk_m, 0.0), minutes);
    }
    let power_at = site.power_at();
    let walk_m = making.walk(&power_at);
    making.step(Doing::Power, None, &power_at, (walk_m, 0.0), hands.power);
    let far = far_post(site);
    let walk_m = making.walk(&[far]);
    making.step(Doing::FarReading, None, &[far], (walk_m, 0.0), 0.0);
    let places: Vec<Point> = site.plan.coops_in(site.run).map(|coop| point(coop.at)).collect();
    let walk_m = making.walk(&places);
    making.step(Doing::Birds, None, &places, (walk_m, 0.0), 0.0);
}

/// The post that is farthest from the feed point along the netting: round a ring half way.
fn far_post(site: &Site<'_>) -> Point {
    let placement = site.placement;
    let feed_m = placement.chain_at_m(site.outline.nearest_along(site.feed_at).0);
    let off_m = |chain_m: f64| {
        let straight_m = (chain_m - feed_m).abs();
        let ring = placement.is_ring() && site.run.live_loop();
        if ring { straight_m.min(placement.covered_m() - straight_m) } else { straight_m }
    };
    let mut far = (f64::NEG_INFINITY, site.feed_at);
    for post in &placement.posts {
        if off_m(post.chain_m) > far.0 + geometry::MEET_M {
            far = (off_m(post.chain_m), post.at);
        }
    }
    far.1
}
