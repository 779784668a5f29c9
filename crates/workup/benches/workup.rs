//! The whole work-up of a run: 10 nets with and without the animal figures, 100 nets without,
//!
//! and a run over heights, triangulated anew and once.
//!
//! Targets: 10 nets 2 ms without, 8 ms with; 100 nets 20 ms without.

use std::hint::black_box;
use std::sync::Arc;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::guides::{Asked, Edge, Guides};
use plan::{HeightGrid, NetKind, Plan, Point, Rest, Run, SpotHeight};
use workup::panels::Ruler;
use workup::{Depth, Known, knowing, workup};

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

/// The same run over that many spot heights, and over a grid of as many.
fn over_heights(spots: u32) -> Plan {
    let mut plan = plan(10);
    let random = |seed: u32| f64::from(seed.wrapping_mul(2_654_435_761) >> 8) / f64::from(1_u32 << 24);
    plan.heights = (0..spots)
        .map(|spot| SpotHeight {
            at: Point::new(240.0 * random(3 * spot) - 120.0, 240.0 * random(3 * spot + 1) - 120.0),
            up_m: 4.0 * random(3 * spot + 2),
            rest: Rest::new(),
        })
        .collect();
    plan
}

/// Heights that did not change are triangulated once.
fn heights(criterion: &mut Criterion) {
    let plan = over_heights(2_000);
    criterion.bench_function("workup of 10 nets over 2,000 spot heights, triangulated anew", |bencher| {
        bencher.iter(|| workup(black_box(&plan), Depth::Quick));
    });
    let mut known = Known::default();
    criterion.bench_function("workup of 10 nets over 2,000 spot heights, triangulated once", |bencher| {
        bencher.iter(|| knowing(black_box(&plan), Depth::Quick, &mut known));
    });
    let mut gridded = plan.clone();
    gridded.heights.clear();
    let up_m = (0..500 * 500).map(|cell| Some(f64::from(cell % 7) * 0.1)).collect();
    let south_west = Point::new(-125.0, -125.0);
    gridded.ground.height_grid =
        Some(Arc::new(HeightGrid { south_west, cell_m: 0.5, columns: 500, up_m, rest: Rest::new() }));
    criterion.bench_function("copy of a plan with a grid of 250,000 heights", |bencher| {
        bencher.iter(|| black_box(&gridded).clone());
    });
    for (name, plan) in [
        ("a corner caught by whole panels over 2,000 spot heights, at most 0.5 ms", &plan),
        ("a corner caught by whole panels over a grid of 0.5 m, at most 0.5 ms", &gridded),
    ] {
        catches(criterion, name, plan);
    }
}

/// A corner in hand whose panels are counted along the ground.
fn catches(criterion: &mut Criterion, name: &str, plan: &Plan) {
    let mut known = Known::default();
    let worked = knowing(plan, Depth::Quick, &mut known);
    let (run, lay) = (&plan.runs[0], worked.runs[0].lay.as_ref().expect("a lay"));
    let ruler = Ruler::of(plan, run, lay, [Some(0), Some(1)], &mut known);
    let at = |corner: usize| geometry::Point::new(run.outline[corner].east_m, run.outline[corner].north_m);
    let own: Vec<Edge> = (2..9).map(|corner| Edge { from: at(corner), to: at(corner + 1) }).collect();
    let asked = Asked {
        at: at(1) + geometry::Vector::new(0.4, 0.3),
        beside: [Some(at(0)), Some(at(2))],
        own,
        joined: [None, Some(0)],
        reach_m: 1.5,
        look_m: 20.0,
        netting: Some(&ruler),
        ..Asked::default()
    };
    let guides = Guides::default();
    criterion.bench_function(name, |bencher| bencher.iter(|| guides.best(black_box(&asked))));
}

criterion_group!(benches, workups, heights);
criterion_main!(benches);
