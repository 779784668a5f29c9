//! One pulse, and a touch at every post, at the sizes that the window and the searches ask for.

#![allow(missing_docs, reason = "criterion's macros make public items without")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use electrical::{
    Accuracy, Animal, Chain, Circuit, Earthed, EarthedStretch, Line, Mesh, Place, Pulse, PulseSolver, Source, animals,
    earth_rise,
};

const PLAIN: Source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
const INDUCTIVE: Source = Source { v0: 8000.0, r_ohm: 214.3, c_farad: 31.25e-9, l_henry: 0.768e-3 };
const ANIMAL: Animal = Animal { body_ohm: 500.0, feet_ohm: 312.5 };

/// A ring of 50 m nets of 14 panels, every post marked, fed at a post.
fn ring(source: Source, nets: usize, leakage_s_per_m: f64) -> Circuit {
    let mut chain = Chain::even(50.0 * nets as f64, 0.99, leakage_s_per_m, 36.9e-12);
    for net in 0..nets {
        let from_m = 50.0 * net as f64;
        chain.marks.extend((0..=14).map(|panel| Place::after(from_m + 50.0 / 14.0 * f64::from(panel))));
    }
    let line = Line { feed: Place::after(75.0), ..Line::ring(chain) };
    Circuit { source, earth_ohm: 88.0, lines: vec![line] }
}

/// The same ring with every second line earthed: the way of two ladders side by side.
fn woven(source: Source, nets: usize) -> Circuit {
    let mut circuit = ring(source, nets, 1e-5);
    let chain = &mut circuit.lines[0].chain;
    // Half the lines carry, so that they have twice the resistance.
    (chain.stretches[0].r_ohm_per_m, chain.stretches[0].c_f_per_m) = (1.98, 9e-12);
    let to_m = chain.length_m();
    let beside = EarthedStretch { from_m: 0.0, to_m, r_ohm_per_m: 1.98, c_f_per_m: 10e-12, to_live_f_per_m: 40e-12 };
    chain.earthed = Earthed { stretches: vec![beside], ..Earthed::default() };
    circuit
}

fn measure(criterion: &mut Criterion) {
    let mut solver = PulseSolver::new();
    let mut out = Pulse::default();
    let accuracy = Accuracy::default();
    let peaks_only = Accuracy { energy: false, ..accuracy };
    for (name, circuit, accuracy) in [
        ("pulse, ring of 10 nets", ring(PLAIN, 10, 1e-5), accuracy),
        ("pulse, ring of 10 nets, peaks only", ring(PLAIN, 10, 1e-5), peaks_only),
        ("pulse, ring of 10 nets, overgrown", ring(PLAIN, 10, 1e-4), accuracy),
        ("pulse, ring of 10 nets, inductive", ring(INDUCTIVE, 10, 1e-5), accuracy),
        ("pulse, ring of 100 nets", ring(PLAIN, 100, 1e-5), accuracy),
        ("pulse, woven ring of 10 nets", woven(PLAIN, 10), accuracy),
        ("pulse, woven ring of 10 nets, peaks only", woven(PLAIN, 10), peaks_only),
        ("pulse, woven ring of 10 nets, inductive", woven(INDUCTIVE, 10), accuracy),
        ("pulse, woven ring of 100 nets", woven(PLAIN, 100), accuracy),
    ] {
        criterion.bench_function(name, |bench| {
            bench.iter(|| {
                let result = solver.pulse_into(black_box(&circuit), &accuracy, &mut out);
                black_box(result.is_ok())
            });
        });
    }
    for (name, circuit) in [
        ("touch at every post, ring of 10 nets", ring(PLAIN, 10, 1e-5)),
        ("touch at every post, ring of 10 nets, inductive", ring(INDUCTIVE, 10, 1e-5)),
        ("touch at every post, woven ring of 10 nets", woven(PLAIN, 10)),
        ("touch at every post, woven ring of 10 nets, inductive", woven(INDUCTIVE, 10)),
    ] {
        criterion.bench_function(name, |bench| {
            bench.iter(|| animals(black_box(&circuit), &ANIMAL, &Mesh::default()).map(|touches| touches.len()));
        });
    }
    let circuit = ring(PLAIN, 10, 1e-5);
    criterion.bench_function("earth rise, ring of 10 nets", |bench| {
        bench.iter(|| earth_rise(black_box(&circuit)).map(|rise| rise.peak_v));
    });
}

criterion_group!(benches, measure);
criterion_main!(benches);
