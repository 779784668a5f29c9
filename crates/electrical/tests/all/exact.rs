//! Pulses and touches against exact modes of the same network (see `oracle`).

use crate::nasty::nasty;
use crate::oracle::{Graph, Piece, Spec};
use electrical::{Accuracy, Animal, Mesh, Source, animals, pulse};
use proptest::prelude::*;

const NETTING: Piece = Piece { length_m: 50.0 / 14.0, r: 0.99, g: 1e-5, c: 36.9e-12 };

fn accuracy() -> Accuracy {
    Accuracy { mesh: Mesh::as_named(), ..Accuracy::default() }
}

/// Greatest error over all marks, as a share of the value or of 0.5 % of the no-load figure.
fn pulse_error(spec: &Spec) -> f64 {
    let pulse = pulse(&spec.circuit(), &accuracy()).unwrap();
    let line = &pulse.lines[0];
    let marks = line.chain.marks.iter().chain(line.branches.iter().flat_map(|branch| &branch.marks));
    let graph = Graph::new(spec);
    let exact = graph.modes().unwrap().peaks(0..graph.mark_count());
    assert_eq!(marks.clone().count(), exact.len());
    marks
        .zip(&exact)
        .map(|(got, want)| (got.volts - want).abs() / want.max(0.005 * spec.source.v0))
        .fold(pulse.energy.residual().abs(), f64::max)
}

/// Greatest errors of volts and of joules over all marks, likewise.
fn touch_error(spec: &Spec, animal: &Animal) -> (f64, f64) {
    let touches = animals(&spec.circuit(), animal, &Mesh::as_named()).unwrap();
    let line = &touches[0];
    let marks = line.chain.marks.iter().chain(line.branches.iter().flat_map(|branch| &branch.marks));
    let ohm = animal.body_ohm + animal.feet_ohm;
    let (mut worst_v, mut worst_j) = (0.0_f64, 0.0_f64);
    for (mark, touch) in marks.enumerate() {
        let mut graph = Graph::new(spec);
        graph.touch(mark, ohm);
        let modes = graph.modes().unwrap();
        let want_v = modes.peaks(mark..mark + 1)[0] * animal.body_ohm / ohm;
        let want_j = modes.square_vs(mark) / ohm / ohm * animal.body_ohm;
        worst_v = worst_v.max((touch.peak_v - want_v).abs() / want_v.max(0.005 * spec.source.v0));
        let stored_j = spec.source.stored_j();
        worst_j = worst_j.max((touch.energy_j - want_j).abs() / want_j.max(1e-3 * stored_j));
    }
    (worst_v, worst_j)
}

/// Named circuits that between them hold every part of the model.
fn cases() -> Vec<(&'static str, Spec)> {
    let plain = Spec::even(28, NETTING);
    let ring = Spec { ring: Some(0.0), feed: 5, ..plain.clone() };
    let inductive = Source { v0: 8000.0, r_ohm: 214.286, c_farad: 31.25e-9, l_henry: 0.768e-3 };
    let mut uneven = ring.clone();
    for (k, piece) in uneven.pieces.iter_mut().enumerate() {
        if k % 3 == 0 {
            piece.g = 3e-4;
        }
        if k > 20 {
            piece.r = 11.9;
        }
    }
    vec![
        ("open line", plain.clone()),
        ("ring", ring.clone()),
        ("ring, joins, lead", Spec { joins: vec![(14, 40.0)], ring: Some(25.0), lead_ohm: 3.0, ..ring.clone() }),
        ("ring with a short", Spec { shorts: vec![(20, 100.0)], ..ring.clone() }),
        ("ring with one break", Spec { joins: vec![(9, f64::INFINITY)], ..ring.clone() }),
        ("ring opened at its closing", Spec { ring: Some(f64::INFINITY), feed: 0, ..ring.clone() }),
        ("two breaks", Spec { joins: vec![(9, f64::INFINITY), (17, f64::INFINITY)], ..ring.clone() }),
        ("spare", Spec { spare: vec![NETTING; 6], ..ring.clone() }),
        ("uneven leakage and a broken net", uneven.clone()),
        ("copper", Spec { pieces: vec![Piece { r: 0.02, ..NETTING }; 28], ..ring.clone() }),
        ("nothing leaks", Spec { pieces: vec![Piece { g: 0.0, ..NETTING }; 28], ..plain.clone() }),
        ("no capacitance", Spec { pieces: vec![Piece { c: 0.0, ..NETTING }; 28], ..ring.clone() }),
        ("half without capacitance", {
            let mut spec = ring.clone();
            spec.pieces.iter_mut().take(14).for_each(|piece| piece.c = 0.0);
            spec
        }),
        ("ideal wire in part", {
            let mut spec = ring.clone();
            spec.pieces.iter_mut().skip(4).take(9).for_each(|piece| piece.r = 0.0);
            spec
        }),
        ("stiff source", Spec { source: Source { r_ohm: 0.05, ..plain.source }, earth_ohm: 0.0, ..plain.clone() }),
        (
            "small source",
            Spec { source: Source { v0: 8000.0, r_ohm: 1000.0, c_farad: 8e-9, l_henry: 0.0 }, ..ring.clone() },
        ),
        ("inductance", Spec { source: inductive, ..ring.clone() }),
        (
            "inductance, clean line",
            Spec { source: inductive, pieces: vec![Piece { g: 2e-7, ..NETTING }; 28], ..plain.clone() },
        ),
        ("inductance, no resistance", Spec { source: Source { r_ohm: 0.0, ..inductive }, earth_ohm: 0.0, ..uneven }),
        (
            "inductance, no capacitance",
            Spec { source: inductive, pieces: vec![Piece { c: 0.0, ..NETTING }; 28], ..ring },
        ),
    ]
}

#[test]
fn pulses_meet_the_exact_modes() {
    for (name, spec) in cases() {
        let error = pulse_error(&spec);
        eprintln!("{name:34} {error:.1e}");
        assert!(error < 1e-4, "{name}: {error:e}");
    }
}

#[test]
fn touches_meet_the_exact_modes() {
    let animal = Animal { body_ohm: 500.0, feet_ohm: 312.5 };
    for (name, spec) in cases() {
        let (volts, joules) = touch_error(&spec, &animal);
        eprintln!("{name:34} {volts:.1e} {joules:.1e}");
        assert!(volts < 1e-4 && joules < 1e-3, "{name}: {volts:e} V, {joules:e} J");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, max_global_rejects: 1_000_000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Nasty circuits as well, as far as the modes themselves can be trusted.
    #[test]
    fn nasty_pulses_and_touches_meet_the_exact_modes(spec in nasty(true)) {
        let resistance = spec.source.r_ohm + spec.earth_ohm > 0.0;
        prop_assume!(resistance && Graph::new(&spec).modes().is_some_and(|modes| modes.fastest() < 1e12));
        let error = pulse_error(&spec);
        prop_assert!(error < 3e-4, "pulse {error:e}");
        let (volts, joules) = touch_error(&spec, &Animal { body_ohm: 500.0, feet_ohm: 312.5 });
        prop_assert!(volts < 3e-4 && joules < 5e-4, "{volts:e} V, {joules:e} J");
    }
}
