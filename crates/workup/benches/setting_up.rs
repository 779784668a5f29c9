//! The set-up order of a plan: what it adds to the work-up, one roll and two a trip.
//!
//! The target is the window's: a work-up of 10 nets in 2 ms, so that a drag stays smooth; the figures here are the
//! whole work-up, the order included.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use plan::{NetKind, Plan, Point, Run};
use workup::{Depth, workup};

/// Nets of 50 m and 14 panels round a regular polygon of ten corners, with the rolls at a gateway beside it.
fn plan(nets: usize, rolls_a_trip: u32) -> Plan {
    let corners = 10;
    let side_m = 50.0 * nets as f64 / corners as f64;
    let radius_m = side_m / (2.0 * (std::f64::consts::PI / corners as f64).sin());
    let outline = (0..corners)
        .map(|corner| {
            let angle_rad = std::f64::consts::TAU * corner as f64 / corners as f64;
            Point::new(radius_m * angle_rad.cos(), radius_m * angle_rad.sin())
        })
        .collect();
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(nets as u32), ..NetKind::new("long", 50.0, 14) });
    plan.store.rates.rolls_a_trip = Some(rolls_a_trip);
    let drop_at = Some(Point::new(radius_m + 30.0, 12.0));
    let nets = Some(vec!["long".to_owned(); nets]);
    plan.runs.push(Run { id: "run".to_owned(), outline, nets, drop_at, ..Run::default() });
    plan
}

fn orders(criterion: &mut Criterion) {
    for (nets, rolls_a_trip) in [(10, 1), (10, 2), (12, 2), (40, 2), (100, 1), (100, 2)] {
        let plan = plan(nets, rolls_a_trip);
        let name = format!("workup of {nets} nets, {rolls_a_trip} a trip");
        criterion.bench_function(&name, |bencher| bencher.iter(|| workup(black_box(&plan), Depth::Quick)));
    }
}

criterion_group!(benches, orders);
criterion_main!(benches);
