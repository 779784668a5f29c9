//! How long one move of a corner takes among 10,000 places and sides; the target stands in the name.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::Point;
use geometry::guides::{Asked, Edge, Guides};

fn guides(c: &mut Criterion) {
    let at = |index: usize| Point::new((index % 100) as f64 * 7.3, (index / 100) as f64 * 7.1);
    let places: Vec<Point> = (0..5_000).map(at).collect();
    let edges = (0..5_000).map(|index| Edge { from: at(index), to: at(index + 1) }).collect();
    let all = Guides::new(places, edges);
    let own: Vec<Edge> = (0..20).map(|index| Edge { from: at(31 * index), to: at(31 * index + 3) }).collect();
    let asked = Asked {
        at: Point::new(355.1, 177.4),
        beside: [Some(Point::new(330.0, 160.0)), Some(Point::new(390.0, 150.0))],
        own,
        joined: [Some(0), Some(1)],
        reach_m: 1.0,
        look_m: 30.0,
        panel_m: Some(3.57),
        grid_m: Some(1.0),
        held: None,
    };
    c.bench_function("a corner among 10,000 places and sides, at most 1 ms", |b| {
        b.iter(|| black_box(&all).best(black_box(&asked)));
    });
    let whole: Vec<Point> =
        (0..40).map(|index| Point::new(355.3 + f64::from(index), 177.4 + f64::from(index % 7))).collect();
    c.bench_function("a whole of 40 corners among 10,000 places and sides, at most 1 ms", |b| {
        b.iter(|| black_box(&all).best_of(black_box(&asked), black_box(&whole), None));
    });
}

criterion_group!(benches, guides);
criterion_main!(benches);
