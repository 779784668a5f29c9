//! Taking down: power off and tested dead, the gate join, then every net folded to the end that starts next time.
//!
//! A net is folded panel by panel towards the end from which this run was rolled out, so that the last post in the hand
//! is the first to leave it. The bundle is carried to where the next run begins; of two in one trip the first is
//! carried along while the second is folded. Braces are drawn as their net is folded.

use geometry::Point;

use super::joins::Join;
use super::model::{Doing, RollWork, Work};
use super::trips::{Stop, Task, Way, best};
use super::{Making, Site};
use crate::{place, point};

/// The whole work, after setting up in this order.
pub(super) fn work(site: &Site<'_>, set_up: &Work) -> Work {
    let hands = &site.hands;
    let next_at = site.run.next_drop_at.map_or(site.drop_at, point);
    // Switched off at the energizer, where that is known, then unclipped from the net.
    let power_at: Vec<Point> = site.power_at().into_iter().rev().collect();
    let mut making = Making { hands, here: power_at[0], steps: Vec::new() };
    let walk_m = making.walk(&power_at);
    making.step(Doing::PowerOff, None, &power_at, (walk_m, 0.0), hands.power);
    let mut tied = vec![true; site.joins.len()];
    if let Some(gate) = gate(site, next_at) {
        tied[gate] = false;
        let at = site.joins[gate].at;
        let walk_m = making.walk(&[at]);
        making.step(Doing::OpenGate, None, &[at], (walk_m, 0.0), hands.untie);
    }

    // Each net has one way: from where it was rolled out to, back to where that began.
    let mut fold = vec![(Point::default(), Point::default(), true); site.rolls.len()];
    let mut numbers = vec![0; site.rolls.len()];
    for roll in &set_up.order {
        fold[roll.net] = (point(roll.to), point(roll.from), !roll.forward);
        numbers[roll.net] = roll.number;
    }
    // Seen backwards it is the same search: the trip that has another end is the first one here.
    let task = Task {
        base: next_at,
        last_home: making.here,
        rolls: fold.iter().map(|&(from, to, _)| vec![Way { enter: to, leave: from }]).collect(),
        rolls_a_trip: hands.rolls_a_trip,
        out: hands.carry,
        between: hands.carry,
        home: hands.walk,
    };
    let walk = best(&task);
    let backwards = |stops: &Vec<Stop>| stops.iter().rev().map(|stop| stop.0).collect::<Vec<usize>>();
    let mut order = Vec::with_capacity(site.rolls.len());
    for (trip, nets) in walk.trips.iter().rev().map(backwards).enumerate() {
        for (index, &net) in nets.iter().enumerate() {
            let (roll, (from, to, forward)) = (&site.rolls[net], fold[net]);
            order.push(RollWork {
                net,
                number: numbers[net],
                kind: roll.kind.clone(),
                trip,
                from: place(from),
                to: place(to),
                forward,
            });
            let way_m = making.walk(&[from]);
            let on_foot = if index == 0 { (way_m, 0.0) } else { (0.0, way_m) };
            let still = |(join, tied): &(&Join, &mut bool)| **tied && (join.nets.0 == net || join.nets.1 == net);
            let mut places = Vec::new();
            for (join, tied) in site.joins.iter().zip(&mut tied).filter(still) {
                *tied = false;
                places.push(join.at);
            }
            let untie = hands.untie * places.len() as f64;
            let what = if places.is_empty() { Doing::GoTo } else { Doing::Untie };
            if places.is_empty() {
                places.push(from);
            }
            making.step(what, Some(net), &places, on_foot, untie);
            let minutes =
                hands.fold + hands.pull_post * (roll.posts + roll.further) as f64 + hands.draw_brace * roll.braces;
            making.step(Doing::Fold, Some(net), &[from, to], (0.0, roll.length_m), minutes);
            making.here = to;
        }
        let start = making.here;
        let carry_m = making.walk(&[next_at]);
        making.step(Doing::CarryAway(nets.len()), nets.last().copied(), &[start, next_at], (0.0, carry_m), 0.0);
    }
    let assumed = site.run.next_drop_at.is_none();
    making.done(order, site, (next_at, assumed), walk.minutes - walk.bound)
}

/// The join that is opened first: where the ring closes, else the one nearest to where the rolls go.
fn gate(site: &Site<'_>, next_at: Point) -> Option<usize> {
    let off_m = |join: &Join| join.at.distance_m(next_at);
    let joins = site.joins.iter().enumerate();
    let closing = joins.clone().find(|(_, join)| join.closing);
    closing.or_else(|| joins.min_by(|a, b| off_m(a.1).total_cmp(&off_m(b.1)))).map(|(index, _)| index)
}
