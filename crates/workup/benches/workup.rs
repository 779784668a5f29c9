//! The whole work-up of a run: 10 nets with and without the animal figures, 100 nets without.
//!
//! Targets: 10 nets 2 ms without, 8 ms with; 100 nets 20 ms without.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use plan::{NetKind, Plan, Point, Run};
use workup::{Depth, workup};

/// A run of that many nets of 50 m and 14 panels round a regular polygon of ten corners, closing exactly.
fn plan(nets: usize) -> Plan {
    let corners = 10;
    let side_m = 50.0 * nets as f64 / corners as f64;
    let radius_m = side_m / (2.0 * (std::f64::consts::PI / corners as f64).sin());
    let outline = (0..corners)
        .map(|corner| {
            let angle_rad = std::f64::consts::TAU * corner as f64 / corners as f64;
            Point::new(radius_m * angle_rad.cos(), radius_m * angle_rad.sin())
        })
        .collect();
    let net = NetKind { count: Some(nets as u32), ..NetKind::new("long", 50.0, 14) };
    let mut plan = Plan::default();
    plan.store.nets.push(net);
    plan.runs.push(Run { id: "run".to_owned(), outline, nets: Some(vec!["long".to_owned(); nets]), ..Run::default() });
    plan
}

fn workups(criterion: &mut Criterion) {
    for (name, nets, depth) in [
        ("workup of 10 nets without animals (target 2 ms)", 10, Depth::Quick),
        ("workup of 10 nets with animals at every post (target 8 ms)", 10, Depth::Full),
        ("workup of 100 nets without animals (target 20 ms)", 100, Depth::Quick),
        ("workup of 200 nets without animals (linear from 100)", 200, Depth::Quick),
        ("workup of 400 nets without animals (linear from 100)", 400, Depth::Quick),
    ] {
        let plan = plan(nets);
        criterion.bench_function(name, |bencher| bencher.iter(|| workup(black_box(&plan), depth)));
    }
}

criterion_group!(benches, workups);
criterion_main!(benches);
