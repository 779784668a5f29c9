//! Laws that every circuit obeys, on circuits made to be nasty: resistances over nine decades or
//! none, netting without leakage or capacitance, breaks anywhere.

use crate::nasty::{nasty, spread, wide};
use crate::oracle::{Piece, Spec};
use electrical::{
    Accuracy, Animal, Circuit, Closing, Line, Mesh, Place, Pulse, PulseSolver, Short, Source, Steady, animals,
    earth_rise, fit, pulse, steady,
};
use proptest::prelude::*;

fn state(circuit: &Circuit) -> Steady {
    steady(circuit, &Mesh::as_named()).unwrap()
}

fn volts(state: &Steady) -> Vec<f64> {
    let line = &state.lines[0];
    line.chain.marks.iter().chain(line.branches.iter().flat_map(|branch| &branch.marks)).copied().collect()
}

fn run(circuit: &Circuit) -> Pulse {
    pulse(circuit, &Accuracy { mesh: Mesh::as_named(), ..Accuracy::default() }).unwrap()
}

fn peaks(pulse: &Pulse) -> Vec<f64> {
    let line = &pulse.lines[0];
    line.chain
        .marks
        .iter()
        .chain(line.branches.iter().flat_map(|branch| &branch.marks))
        .map(|peak| peak.volts)
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 192, failure_persistence: None, ..ProptestConfig::default() })]

    /// Every pulse is finite, balances its energies, and without inductance no place exceeds `V0`
    /// nor the steady state.
    #[test]
    fn a_pulse_balances_and_stays_within_its_bounds(spec in nasty(true)) {
        let circuit = spec.circuit();
        let pulse = run(&circuit);
        prop_assert!(pulse.energy.residual().abs() < 1e-4, "{:?}", pulse.energy);
        let bound = volts(&state(&circuit));
        for (peak, bound) in peaks(&pulse).into_iter().zip(bound) {
            prop_assert!(peak.is_finite() && peak >= -1e-6);
            if spec.source.l_henry <= 0.0 {
                prop_assert!(peak <= bound + 1e-4 * 7000.0, "{peak} above the steady {bound}");
            }
        }
    }

    /// The steady state against dense elimination by another hand is in `exact.rs`; here: voltages
    /// never rise away from the feed, and lie between earth and the source.
    #[test]
    fn voltage_never_rises_away_from_the_feed(mut spec in nasty(false)) {
        spec.ring = None;
        spec.spare.clear();
        spec.twigs.clear();
        let all = volts(&state(&spec.circuit()));
        // Marks come in pairs, before and after each place; the feed is after its place.
        let feed = 2 * spec.feed + 1;
        let slack = 1e-9 * 7000.0;
        prop_assert!(all.iter().all(|v| *v >= 0.0 && *v <= 7000.0 + slack));
        prop_assert!(all[feed..].windows(2).all(|pair| pair[1] <= pair[0] + slack), "{all:?}");
        prop_assert!(all[..=feed].windows(2).all(|pair| pair[0] <= pair[1] + slack), "{all:?}");
        let peaks = peaks(&run(&spec.circuit()));
        prop_assert!(peaks[feed..].windows(2).all(|pair| pair[1] <= pair[0] + 1e-4 * 7000.0), "{peaks:?}");
    }

    /// A shunt more never raises a voltage, and never raises the resistance at the terminals.
    #[test]
    fn a_shunt_more_never_raises_anything(
        spec in nasty(false),
        place in any::<prop::sample::Index>(),
        ohm in spread(1e4, 6.0),
    ) {
        let circuit = spec.circuit();
        let mut shunted = spec.clone();
        shunted.shorts.push((place.index(spec.pieces.len() + 1), ohm));
        let shunted = shunted.circuit();
        let (without, with) = (state(&circuit), state(&shunted));
        prop_assert!(with.input_ohm <= without.input_ohm * (1.0 + 1e-12));
        for (with, without) in volts(&with).into_iter().zip(volts(&without)) {
            prop_assert!(with <= without + 1e-9 * 7000.0);
        }
        for (with, without) in peaks(&run(&shunted)).into_iter().zip(peaks(&run(&circuit))) {
            prop_assert!(with <= without + 1e-4 * 7000.0, "{with} above {without}");
        }
    }

    /// Rayleigh: a link more, here a ring's closing, never raises the resistance at the terminals.
    #[test]
    fn closing_a_ring_never_raises_the_input_resistance(mut spec in nasty(false), ohm in wide(1e4, 9.0)) {
        spec.ring = Some(f64::INFINITY);
        let open = state(&spec.circuit()).input_ohm;
        spec.ring = Some(ohm);
        let closed = state(&spec.circuit()).input_ohm;
        prop_assert!(closed <= open * (1.0 + 1e-12), "{closed} above {open}");
    }

    /// With every resistance times `k` the steady voltages stay; with every capacitance over `k`
    /// the whole pulse stays, and so do its times.
    #[test]
    fn scaling_every_resistance_leaves_every_voltage(spec in nasty(false), k in spread(1e3, 6.0)) {
        let mut scaled = spec.clone();
        scaled.source.r_ohm *= k;
        scaled.source.c_farad /= k;
        scaled.earth_ohm *= k;
        scaled.lead_ohm *= k;
        scaled.joins.iter_mut().for_each(|join| join.1 *= k);
        scaled.ring = scaled.ring.map(|ohm| ohm * k);
        scaled.shorts.iter_mut().for_each(|short| short.1 *= k);
        for piece in scaled.all_pieces_mut() {
            piece.r *= k;
            piece.g /= k;
            piece.c /= k;
        }
        let (one, other) = (spec.circuit(), scaled.circuit());
        for (a, b) in volts(&state(&one)).into_iter().zip(volts(&state(&other))) {
            prop_assert!((a - b).abs() <= 1e-6 * 7000.0, "{a} and {b}");
        }
        for (a, b) in peaks(&run(&one)).into_iter().zip(peaks(&run(&other))) {
            prop_assert!((a - b).abs() <= 1e-5 * 7000.0, "{a} and {b}");
        }
    }

    /// Reciprocity: the source at one place, read at another, gives what the exchange gives.
    #[test]
    fn source_and_reader_may_change_places(
        spec in nasty(false),
        one in any::<prop::sample::Index>(),
        other in any::<prop::sample::Index>(),
    ) {
        let places = spec.pieces.len() + 1;
        let (one, other) = (one.index(places), other.index(places));
        // The source's own branch must not load the fence, so it is a current: 1 A, by volts over
        // the resistance seen.
        let transfer = |feed: usize, read: usize| -> f64 {
            let mut spec = spec.clone();
            spec.feed = feed;
            spec.lead_ohm = 0.0;
            let state = state(&spec.circuit());
            volts(&state)[2 * read + 1] / state.amperes
        };
        let (there, back) = (transfer(one, other), transfer(other, one));
        if there.is_finite() && back.is_finite() {
            prop_assert!((there - back).abs() <= 1e-9 * there.abs().max(1e-3), "{there} and {back}");
        }
    }

    /// Without capacitance in the netting all of `Cs V0² / 2` is spent in resistances, whatever the
    /// inductance, and in the same shares.
    #[test]
    fn an_inductance_moves_no_energy(mut spec in nasty(true)) {
        for piece in spec.all_pieces_mut() {
            piece.c = 0.0;
        }
        // Something must take it, or nothing happens at all.
        spec.shorts.push((spec.feed, 500.0));
        spec.source.r_ohm += 1.0;
        let with = run(&spec.circuit()).energy;
        spec.source.l_henry = 0.0;
        let without = run(&spec.circuit()).energy;
        let spent = without.source_j + without.delivered_j();
        prop_assert!((spent / without.stored_j - 1.0).abs() < 1e-4);
        prop_assert!((with.shorts_j - without.shorts_j).abs() <= 2e-4 * without.stored_j);
        prop_assert!((with.source_j - without.source_j).abs() <= 2e-4 * without.stored_j);
    }

    /// A branch more, whatever it is of, never raises a steady voltage, nor the resistance at the terminals.
    #[test]
    fn a_branch_more_never_raises_anything(mut spec in nasty(false)) {
        let with = state(&spec.circuit());
        if spec.twigs.pop().is_some() {
            let without = state(&spec.circuit());
            prop_assert!(with.input_ohm <= without.input_ohm * (1.0 + 1e-12));
            for (with, without) in volts(&with).into_iter().zip(volts(&without)) {
                prop_assert!(with <= without + 1e-9 * 7000.0, "{with} above {without}");
            }
        }
    }

    /// An animal at a place takes what a short of its resistance takes there in a pulse of its own:
    /// contours and steps are two methods.
    #[test]
    fn a_touch_is_a_short_of_its_own(
        spec in nasty(true),
        place in any::<prop::sample::Index>(),
        feet_ohm in wide(1e4, 6.0),
    ) {
        let animal = Animal { body_ohm: 500.0, feet_ohm };
        let place = place.index(spec.pieces.len() + 1);
        let touch = animals(&spec.circuit(), &animal, &Mesh::as_named()).unwrap()[0].chain.marks[2 * place + 1];
        let mut shorted = spec.clone();
        shorted.shorts = vec![(place, 500.0 + feet_ohm)];
        // The other shorts as leakage of a stub without length is not to be had; leave them out.
        let mut bare = spec.clone();
        bare.shorts.clear();
        let bare_touch =
            animals(&bare.circuit(), &animal, &Mesh::as_named()).unwrap()[0].chain.marks[2 * place + 1];
        if spec.source.l_henry <= 0.0 {
            prop_assert!(touch.peak_v <= bare_touch.peak_v + 1e-4 * 7000.0);
        }
        let pulse = run(&shorted.circuit());
        let share = 500.0 / (500.0 + feet_ohm);
        let want_v = peaks(&pulse)[2 * place + 1] * share;
        let want_j = pulse.energy.shorts_j * share;
        prop_assert!((bare_touch.peak_v - want_v).abs() <= 1e-3 * want_v.max(35.0), "{bare_touch:?}, {want_v} V");
        let stored_j = spec.source.stored_j();
        prop_assert!((bare_touch.energy_j - want_j).abs() <= 1e-3 * want_j.max(0.01 * stored_j), "{bare_touch:?}, {want_j} J");
    }

    /// The earth pole rises by the share of the earth in the loop; never above the source.
    #[test]
    fn the_earth_rises_by_its_share(spec in nasty(true)) {
        let rise = earth_rise(&spec.circuit()).unwrap();
        prop_assert!(rise.peak_v >= 0.0 && rise.peak_v <= 7000.0 * (1.0 + 1e-12));
        prop_assert!(rise.rush_v >= 0.0 && rise.rush_v <= 7000.0 * (1.0 + 1e-12));
    }

    /// A fit gives back what its data sheet states.
    #[test]
    fn a_fit_gives_back_its_sheet(
        no_load_v in 2000.0..12000.0_f64,
        drop in 0.02..0.98_f64,
        stored_j in spread(20.0, 3.0),
        share in 0.05..1.0_f64,
    ) {
        let sheet = electrical::DataSheet {
            stored_j: Some(stored_j),
            no_load_v,
            v_at_500_ohm: no_load_v * drop,
            output_j_at_500_ohm: stored_j * share,
        };
        if let Ok(fit) = fit(&sheet) {
            let mut spec = Spec::even(1, Piece { length_m: 1.0, r: 0.0, g: 0.0, c: 0.0 });
            spec.source = fit.source;
            spec.earth_ohm = 0.0;
            spec.shorts.push((0, 500.0));
            let pulse = run(&spec.circuit());
            prop_assert!((pulse.lines[0].feed.volts / sheet.v_at_500_ohm - 1.0).abs() < 1e-3);
            prop_assert!((pulse.energy.shorts_j / sheet.output_j_at_500_ohm - 1.0).abs() < 1e-3);
        }
    }
}

/// Reused memory leaves no trace: the same circuit gives the same bits after any other.
#[test]
fn a_solver_forgets_the_circuit_before() {
    let piece = Piece { length_m: 3.0, r: 1.0, g: 1e-5, c: 37e-12 };
    let small = Spec::even(3, piece).circuit();
    let mut ring = Spec::even(40, piece);
    ring.ring = Some(0.0);
    ring.spare = vec![piece; 5];
    ring.shorts.push((7, 300.0));
    let ring = ring.circuit();
    let mut solver = PulseSolver::new();
    let mut out = Pulse::default();
    for circuit in [&small, &ring, &small] {
        solver.pulse_into(circuit, &Accuracy::default(), &mut out).unwrap();
        assert_eq!(out, pulse(circuit, &Accuracy::default()).unwrap());
    }
}

/// Two runs on one energizer load each other; a run whose lead is open to all purposes does not.
#[test]
fn lines_share_their_terminals() {
    let piece = Piece { length_m: 5.0, r: 1.0, g: 2e-5, c: 37e-12 };
    let one = Spec::even(20, piece).circuit();
    let both = Circuit { lines: vec![one.lines[0].clone(), one.lines[0].clone()], ..one.clone() };
    let alone = run(&one);
    let shared = run(&both);
    assert!(shared.lines[0].feed.volts < 0.8 * alone.lines[0].feed.volts);
    assert!((shared.lines[0].feed.volts - shared.lines[1].feed.volts).abs() < 1e-9);
    // The same as one line of twice the netting side by side.
    let wide = Piece { r: 0.5, g: 4e-5, c: 74e-12, ..piece };
    let doubled = run(&Spec::even(20, wide).circuit());
    for (a, b) in peaks(&shared).into_iter().zip(peaks(&doubled)) {
        assert!((a - b).abs() < 1e-6 * 7000.0, "{a} and {b}");
    }
    let mut far = both;
    far.lines[1].lead_ohm = 1e12;
    assert!((run(&far).lines[0].feed.volts / alone.lines[0].feed.volts - 1.0).abs() < 1e-6);
}

/// Cutting a long piece leaves the voltages within what the finer network says.
#[test]
fn the_mesh_cuts_where_leakage_is_heavy() {
    let chain =
        electrical::Chain { marks: vec![Place::after(100.0)], ..electrical::Chain::even(100.0, 1.0, 1e-4, 37e-12) };
    let circuit = Circuit {
        source: Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 },
        earth_ohm: 88.0,
        lines: vec![Line { closing: Closing::Open, ..Line::open(chain) }],
    };
    let end = |mesh: Mesh| steady(&circuit, &mesh).unwrap().lines[0].chain.marks[0];
    let exact = end(Mesh { rg_limit: 0.0, fine_m: 0.05 });
    assert!((end(Mesh::default()) / exact - 1.0).abs() < 1e-4);
    assert!((end(Mesh::as_named()) / exact - 1.0).abs() > 1e-2, "one piece is too coarse");
}

/// The two sides of a join, and of a break, are read apart; beyond two breaks there is nothing.
#[test]
fn a_place_has_two_sides_where_something_lies() {
    let piece = Piece { length_m: 5.0, r: 1.0, g: 2e-5, c: 37e-12 };
    let mut spec = Spec::even(12, piece);
    spec.joins = vec![(4, 300.0), (8, f64::INFINITY), (10, f64::INFINITY)];
    let marks = run(&spec.circuit()).lines[0].chain.marks.clone();
    assert!(marks[8].volts > marks[9].volts + 100.0, "the join drops some");
    assert!(marks[16].volts > 1000.0 && marks[17].volts.abs() < 1e-12, "the break drops all");
    assert!(marks[17..].iter().all(|peak| peak.volts.abs() < 1e-12));
    // Round a ring the far piece is fed from its other end.
    spec.ring = Some(0.0);
    let marks = run(&spec.circuit()).lines[0].chain.marks.clone();
    assert!(marks[17].volts.abs() < 1e-12 && marks[20].volts.abs() < 1e-12 && marks[21].volts > 1000.0);
    assert!((marks[0].volts - marks[25].volts).abs() < 1e-9, "start and end are one place");
}

/// What cannot be computed is refused in one sentence, by name.
#[test]
fn bad_circuits_are_refused_by_name() {
    let piece = Piece { length_m: 5.0, r: 1.0, g: 2e-5, c: 37e-12 };
    let good = Spec::even(4, piece).circuit();
    type Spoil = fn(&mut Circuit);
    let spoils: [(&str, Spoil); 9] = [
        ("electrical/no-line", |c| c.lines.clear()),
        ("electrical/figure", |c| c.source.v0 = f64::NAN),
        ("electrical/figure", |c| c.earth_ohm = -1.0),
        ("electrical/figure", |c| c.source.c_farad = 0.0),
        ("electrical/empty-chain", |c| c.lines[0].chain.stretches.clear()),
        ("electrical/gap", |c| c.lines[0].chain.stretches[1].from_m += 0.1),
        ("electrical/line-figure", |c| c.lines[0].chain.stretches[1].g_s_per_m = f64::INFINITY),
        ("electrical/beyond-chain", |c| c.lines[0].feed.at_m = 21.0),
        ("electrical/beyond-chain", |c| {
            c.lines[0].chain.shorts.push(Short { at: Place::after(f64::NAN), ohm: 1.0 });
        }),
    ];
    for (id, spoil) in spoils {
        let mut bad = good.clone();
        spoil(&mut bad);
        let fault = pulse(&bad, &Accuracy::default()).unwrap_err();
        assert_eq!(fault.id(), id);
        assert!(!fault.to_string().contains('\n'));
        assert!(steady(&bad, &Mesh::default()).is_err() && earth_rise(&bad).is_err());
    }
}

/// Lengths at random, some of them none, cannot stop the layout.
#[test]
fn odd_lengths_are_laid_out() {
    for lengths_m in odd_lengths_m() {
        let pieces = lengths_m.iter().map(|length_m| Piece { length_m: *length_m, r: 1.0, g: 1e-5, c: 37e-12 });
        let mut spec = Spec::even(1, Piece { length_m: 1.0, r: 1.0, g: 1e-5, c: 37e-12 });
        spec.pieces = pieces.collect();
        for ring in [None, Some(0.0), Some(3.0)] {
            spec.ring = ring;
            assert!(run(&spec.circuit()).energy.residual().abs() < 1e-4, "{lengths_m:?}");
        }
    }
}

fn odd_lengths_m() -> Vec<Vec<f64>> {
    vec![vec![1e-5], vec![0.0, 5.0], vec![5.0, 0.0, 0.0, 5.0], vec![1e-7, 3.0, 1e-7], vec![1e5, 1e-6, 2.0]]
}
