//! One frame of a large farm: fifty runs of three nets, drawn and inked.
#![allow(missing_docs, reason = "criterion's macros make public items of their own")]
#![allow(clippy::unwrap_used, reason = "a bench may stop")]

#[allow(dead_code, reason = "the tests use the rest")]
#[path = "../tests/all/hand/mod.rs"]
mod hand;

use criterion::{Criterion, criterion_group, criterion_main};
use drawing::{LineView, Theme, Thing, View, line, map};

fn frame(criterion: &mut Criterion) {
    let farm = hand::farm(50);
    let drawing = map(&farm.scene());
    let whole = View::fit(drawing.bounds(), [1440.0, 900.0], 20.0, Theme::Light);
    criterion.bench_function("50 runs drawn", |bench| bench.iter(|| map(&farm.scene())));
    for (name, px_per_m) in [("far", whole.px_per_m), ("middle", 7.0), ("near", 12.0)] {
        let view = View { px_per_m, picked: Some(Thing::Run { run: 12 }), ..whole };
        criterion.bench_function(&format!("50 runs inked, {name}"), |bench| bench.iter(|| drawing.ink(&view)));
        let under = [700.0, 450.0];
        criterion.bench_function(&format!("50 runs picked from, {name}"), |bench| {
            bench.iter(|| drawing.thing_at(&view, under, 8.0));
        });
    }
    let view =
        LineView { width: 1080.0, height: 128.0, theme: Theme::Light, picked: None, hovered: None, stale: false };
    criterion.bench_function("one run unfolded", |bench| bench.iter(|| line(&farm.scene(), 7, &view)));
}

criterion_group!(benches, frame);
criterion_main!(benches);
