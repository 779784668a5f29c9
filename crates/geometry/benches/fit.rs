//! How long the fit to whole panels takes. Target: 8 corners and 60 panels in 30 ms.

use std::f64::consts::TAU;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::fit::{FitRequest, FreeGround, KeepOff, fit};
use geometry::{Net, Outline, Point};

/// A lumpy sketch, about `length_m` round.
fn sketch(corners: usize, length_m: f64) -> Outline {
    let points: Vec<Point> = (0..corners)
        .map(|corner| {
            let angle = corner as f64 / corners as f64 * TAU;
            let radius_m = length_m / 6.3 * (1.0 + 0.2 * (corner as f64 * 2.3).sin());
            Point::new(radius_m * angle.cos(), radius_m * angle.sin())
        })
        .collect();
    Outline::closed(&points)
}

fn fits(c: &mut Criterion) {
    let roll = Net::equal(50.0, 15).expect("a net of the trade");
    let short = Net::equal(25.0, 8).expect("a net of the trade");
    let kinds = [roll, short];
    let eight = sketch(8, 205.0);
    c.bench_function("fit 8 corners, 60 panels (target 30 ms)", |b| {
        b.iter(|| fit(black_box(&FitRequest::new(&eight, &kinds, &[0; 4]))));
    });
    let twelve = sketch(12, 400.0);
    c.bench_function("fit 12 corners, 120 panels", |b| {
        b.iter(|| fit(black_box(&FitRequest::new(&twelve, &kinds, &[0; 8]))));
    });
    c.bench_function("fit 8 corners, 4 nets of 2 kinds in any order", |b| {
        b.iter(|| fit(black_box(&FitRequest::new(&eight, &kinds, &[0, 1, 0, 0, 1]))));
    });
    let paddock = sketch(8, 212.0);
    let tight = FreeGround { boundary: Some(paddock.clone()), keep_offs: Vec::new() };
    c.bench_function("fit 8 corners, 60 panels, tight paddock (target 30 ms)", |b| {
        b.iter(|| fit(black_box(&FitRequest { ground: Some(&tight), ..FitRequest::new(&eight, &kinds, &[0; 4]) })));
    });
    let barn = [(28.0, -3.0), (34.0, -3.0), (34.0, 3.0), (28.0, 3.0)].map(Point::from);
    let barn = KeepOff { outline: Outline::closed(&barn), clearance_m: 1.0, may_enclose: false };
    let ground = FreeGround { boundary: Some(paddock), keep_offs: vec![barn] };
    c.bench_function("fit 8 corners, 60 panels, round a barn on the line", |b| {
        b.iter(|| fit(black_box(&FitRequest { ground: Some(&ground), ..FitRequest::new(&eight, &kinds, &[0; 4]) })));
    });
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).measurement_time(std::time::Duration::from_secs(2));
    targets = fits
}
criterion_main!(benches);
