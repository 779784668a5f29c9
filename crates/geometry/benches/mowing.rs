//! How long the strip of a long line beside many keep-outs takes, and the lines to walk on it; the target stands in the
//! name.

use std::f64::consts::TAU;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::{Mower, Outline, PassesRequest, Point, StripRequest, StripWidth, passes, strip};

/// Metres round: 100 nets of 50 m.
const LINE_M: f64 = 5_000.0;

/// A lumpy ring of 120 corners, about 5,000 m round.
fn ring() -> Outline {
    let corners = 120;
    let at = |corner: i32| {
        let way = f64::from(corner) / f64::from(corners) * TAU;
        let radius_m = LINE_M / 7.0 * (1.0 + 0.15 * (f64::from(corner) * 2.3).sin());
        Point::new(radius_m * way.cos(), radius_m * way.sin())
    };
    Outline::closed(&(0..corners).map(at).collect::<Vec<_>>())
}

/// Fifty keep-outs of eight corners, every one across the strip.
fn keep_outs(line: &Outline) -> Vec<Outline> {
    let across = |index: i32| {
        let middle = line.at(line.length_m() * f64::from(index) / 50.0);
        let corner = |corner: i32| {
            let way = f64::from(corner) / 8.0 * TAU;
            Point::new(middle.east_m + 3.0 * way.cos(), middle.north_m + 2.0 * way.sin())
        };
        Outline::closed(&(0..8).map(corner).collect::<Vec<_>>())
    };
    (0..50).map(across).collect()
}

fn mowing(c: &mut Criterion) {
    let line = ring();
    let keep_outs = keep_outs(&line);
    let (width, mower) = (StripWidth::even(1.2), Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.11 });
    let request = StripRequest { outline: &line, width, keep_outs: &keep_outs, mower };
    c.bench_function("strip of 100 nets, 50 keep-outs (target 20 ms)", |b| b.iter(|| strip(black_box(&request))));
    let walk =
        PassesRequest { outline: &line, width, mower_width_m: 0.53, overlap: 0.1, keep_outs: &keep_outs, mown: &[] };
    c.bench_function("lines to walk on it", |b| b.iter(|| passes(black_box(&walk))));
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).measurement_time(std::time::Duration::from_secs(2));
    targets = mowing
}
criterion_main!(benches);
