//! How long one move of a corner or a side takes among 10,000 places and sides; the target stands in the name.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::Point;
use geometry::guides::{Asked, Edge, Guides, LevelPanels, SideAsked};

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
        netting: Some(&LevelPanels(3.57)),
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
    let side = SideAsked {
        side: Edge { from: Point::new(330.0, 160.0), to: Point::new(390.0, 150.0) },
        beyond: [Some(Point::new(320.0, 120.0)), Some(Point::new(400.0, 110.0))],
        by_m: 0.4,
        hold: asked.at,
        own: asked.own.clone(),
        reach_m: asked.reach_m,
        look_m: asked.look_m,
        netting: asked.netting,
        grid_m: asked.grid_m,
        held: None,
    };
    c.bench_function("a side among 10,000 places and sides, at most 0.5 ms", |b| {
        b.iter(|| black_box(&all).best_slide(black_box(&side)));
    });
}

criterion_group!(benches, guides);
criterion_main!(benches);
