//! How long the search for the largest run takes; the target stands in the name.

use std::f64::consts::TAU;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::largest::{FREE_SIDES, Hold, KeepOff, LargestRequest, LargestSearch, Panels};
use geometry::{Outline, Point};

/// A paddock of 60 corners with ten keep-outs; half of them may be enclosed.
fn field(net_m: f64) -> LargestRequest {
    let boundary: Vec<Point> = (0..60)
        .map(|corner| {
            let way = f64::from(corner) / 60.0 * TAU;
            let radius_m = 48.0 * (1.0 + 0.15 * (f64::from(corner) * 2.3).sin() + 0.1 * (3.0 * way).cos());
            Point::new(1.3 * radius_m * way.cos(), radius_m * way.sin())
        })
        .collect();
    let keep_outs = (0..10).map(|index| {
        let way = f64::from(index) * 2.4;
        let middle = Point::new(12.0 + 3.2 * f64::from(index), 0.0);
        let middle = Point::new(middle.east_m * way.cos(), middle.east_m * way.sin());
        let corners: Vec<Point> = (0..5)
            .map(|corner| f64::from(corner) / 5.0 * TAU)
            .map(|way| Point::new(middle.east_m + 2.0 * way.cos(), middle.north_m + 1.5 * way.sin()))
            .collect();
        KeepOff { outline: Outline::closed(&corners), clearance_m: 1.0, may_enclose: index % 2 == 0 }
    });
    LargestRequest {
        boundary: Outline::closed(&boundary),
        keep_outs: keep_outs.collect(),
        hold: Some(Hold { places: vec![Point::new(0.0, 0.0), Point::new(3.0, 2.0)], clearance_m: 0.5 }),
        towards: Some(Point::new(1.5, 1.0)),
        net_m,
        panels: Panels { count: (net_m / 50.0 * 14.0) as u32, equal: true },
        walls: Vec::new(),
        free_sides: FREE_SIDES,
    }
}

fn largest(c: &mut Criterion) {
    for (nets, held) in [(4, true), (4, false), (2, true), (8, false)] {
        let mut request = field(50.0 * f64::from(nets));
        if !held {
            request.hold = None;
        }
        let coop = if held { " with the coop" } else { "" };
        let name = format!("largest run, all families, {nets} nets, 60 corners, 10 keep-outs{coop} (target 500 ms)");
        c.bench_function(&name, |b| {
            b.iter(|| {
                let mut search = LargestSearch::new(black_box(&request)).expect("a sound paddock");
                while search.step() {}
                search.best()
            });
        });
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).measurement_time(std::time::Duration::from_secs(5));
    targets = largest
}
criterion_main!(benches);
