//! The check cases T1 to T25 and T32 of the electrical facts and its published earths, each with its source beside it.
//!
//! T1 to T8 are steady cases (the netting's capacitance and the pulse's decay left out), T9 to T15
//! are pulses, the rest are formulas. "Computed" means worked out by us a second way; where a
//! circuit simulator ran the case as well, that is said.

use electrical::{
    Accuracy, Chain, Circuit, DataSheet, Line, LineReadings, Mesh, Place, Pulse, Short, Source, SourceModel, Steady,
    capacitance_per_m, fit, impulse, layout_ohm, mutual_ohm, one_stake_ohm, partial_capacitance_per_m, pulse,
    stakes_ohm, steady, wire,
};

const IDEAL: Source = Source { v0: 1000.0, r_ohm: 0.0, c_farad: 1e-6, l_henry: 0.0 };
const FIELD: Source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };

fn close(got: f64, want: f64, tolerance: f64, what: &str) {
    assert!((got - want).abs() <= tolerance, "{what}: {got} against {want} (within {tolerance})");
}

/// An even chain of `pieces` equal pieces, its ends and inner nodes marked.
fn pieces(length_m: f64, pieces: usize, r: f64, g: f64, c: f64) -> Chain {
    let mut chain = Chain::even(length_m, r, g, c);
    chain.marks = (0..=pieces).map(|k| Place::after(length_m * k as f64 / pieces as f64)).collect();
    chain
}

fn with_short(mut chain: Chain, at_m: f64, ohm: f64) -> Chain {
    chain.shorts.push(Short { at: Place::after(at_m), ohm });
    chain
}

fn circuit(source: Source, line: Line) -> Circuit {
    Circuit { source, earth_ohm: 0.0, lines: vec![line] }
}

/// Steady state with nodes at the marks alone.
fn steady_of(source: Source, line: Line) -> Steady {
    steady(&circuit(source, line), &Mesh::as_named()).unwrap()
}

fn pulse_of(source: Source, line: Line) -> Pulse {
    pulse(&circuit(source, line), &Accuracy::default()).unwrap()
}

fn only<T>(lines: &[LineReadings<T>]) -> &LineReadings<T> {
    assert_eq!(lines.len(), 1);
    &lines[0]
}

/// `V(x) = V(0) cosh γ(l - x) / cosh γ l`. Source: computed, the textbook's leaky line.
#[test]
fn t1_a_leaky_line_follows_the_hyperbolic_cosine() {
    let line = steady_of(IDEAL, Line::open(pieces(200.0, 1000, 1.0, 2e-6, 0.0)));
    let marks = &only(&line.lines).chain.marks;
    close(marks[500], 970.9203, 1e-3, "middle");
    close(marks[1000], 961.2913, 1e-3, "end");
    close(line.input_ohm / 2566.314, 1.0, 1e-6, "input resistance");
    close(line.amperes / 0.389664, 1.0, 2e-6, "feed current, printed to six digits");
}

/// N π-sections: `V_k = V_0 cosh((N - k) θ) / cosh(N θ)`, `cosh θ = 1 + rΔ gΔ / 2`. Source:
/// computed, and run in a circuit simulator.
#[test]
fn t2_twenty_sections_follow_the_discrete_cosine_exactly() {
    let line = steady_of(IDEAL, Line::open(pieces(200.0, 20, 1.0, 2e-6, 0.0)));
    let marks = &only(&line.lines).chain.marks;
    close(marks[10] / 970.92073, 1.0, 5e-9, "middle, as printed");
    close(marks[20] / 961.29194, 1.0, 5e-9, "end, as printed");
    let theta = (1.0_f64 + 0.5 * 10.0 * 2e-5).acosh();
    for (k, volts) in marks.iter().enumerate() {
        let want = 1000.0 * ((20 - k) as f64 * theta).cosh() / (20.0 * theta).cosh();
        close(volts / want, 1.0, 1e-12, "discrete cosine");
    }
}

/// The error of the sections falls with their number squared. Source: computed.
#[test]
fn t3_the_sections_converge_with_their_square() {
    let exact = 1000.0 / (200.0 * 2e-6_f64.sqrt()).cosh();
    for (n, want) in [(1, 0.24714), (2, 0.06227), (4, 0.01560), (10, 0.00250)] {
        let line = steady_of(IDEAL, Line::open(pieces(200.0, n, 1.0, 2e-6, 0.0)));
        let error = only(&line.lines).chain.marks[n] - exact;
        close(error / want, 1.0, 0.01, "excess at the end");
    }
}

/// Source: computed, and run in a circuit simulator.
#[test]
fn t4_a_source_with_resistance_on_an_open_line() {
    let line = steady_of(FIELD, Line::open(pieces(200.0, 1000, 1.0, 2e-5, 0.0)));
    let line = only(&line.lines);
    close(line.feed / 4272.879, 1.0, 1e-4, "feed");
    close(line.chain.marks[1000] / 2993.495, 1.0, 1e-4, "end");
}

/// Source: computed, and run in a circuit simulator.
#[test]
fn t5_the_same_netting_as_a_ring() {
    let line = steady_of(FIELD, Line::ring(pieces(200.0, 1000, 1.0, 2e-5, 0.0)));
    let line = only(&line.lines);
    close(line.feed / 3998.597, 1.0, 1e-4, "feed");
    close(line.chain.marks[500] / 3629.552, 1.0, 1e-4, "the far side");
}

/// Source: computed (three resistances in series), and run in a circuit simulator.
#[test]
fn t6_one_short_on_an_open_line() {
    let state = steady_of(FIELD, Line::open(with_short(pieces(200.0, 4, 1.0, 0.0, 0.0), 150.0, 500.0)));
    let line = only(&state.lines);
    close(line.feed / (7000.0 * 650.0 / 850.0), 1.0, 1e-9, "feed");
    close(line.feed, 5352.941, 5e-4, "feed, as printed");
    close(line.chain.shorts[0], 4117.647, 5e-4, "fault");
    close(line.chain.marks[4] / line.chain.shorts[0], 1.0, 1e-12, "flat beyond the fault");
    close(state.amperes, 8.235294, 5e-7, "current");
}

/// Source: computed (`r x (l - x) / l`), and run in a circuit simulator.
#[test]
fn t7_the_same_short_on_a_ring() {
    let state = steady_of(FIELD, Line::ring(with_short(pieces(200.0, 4, 1.0, 0.0, 0.0), 150.0, 500.0)));
    let line = only(&state.lines);
    close(line.feed, 5101.695, 5e-4, "feed");
    close(line.chain.shorts[0], 4745.763, 5e-4, "fault");
    // The two ways round: 50 m from the ring's end, 150 m from its start.
    close((line.feed - line.chain.shorts[0]) / 50.0, 7.118644, 5e-7, "short way");
    close((line.feed - line.chain.marks[1]) / 50.0, 2.372881, 5e-7, "long way");
}

/// The capacitor's energy is shared in proportion to resistance. Source: computed.
#[test]
fn t8_energy_is_shared_as_resistance_is() {
    let chain = with_short(Chain::even(200.0, 1.0, 0.0, 0.0), 150.0, 500.0);
    for (line, shares) in [
        (Line::open(chain.clone()), [0.230588, 0.172941, 0.576471]),
        (Line::ring(chain), [0.265763, 0.049831, 0.664407]),
    ] {
        let energy = pulse_of(FIELD, line).energy;
        for (got, want) in [energy.source_j, energy.wire_j, energy.shorts_j].into_iter().zip(shares) {
            close(got, want, 1e-5, "share, J");
        }
        close(energy.residual(), 0.0, 1e-5, "balance");
    }
}

/// Source: computed (a capacitor through a resistance), and run in a circuit simulator.
#[test]
fn t9_the_plain_source_into_500_ohm() {
    let pulse = pulse_of(FIELD, Line::open(with_short(Chain::even(1.0, 0.0, 0.0, 0.0), 0.0, 500.0)));
    close(only(&pulse.lines).feed.volts, 5000.0, 5.0, "peak");
    close(pulse.energy.shorts_j, 0.7, 7e-4, "energy");
    close(pulse.charge_c, 0.28e-3, 0.28e-6, "charge");
    close(impulse::energy_j(&FIELD, 500.0), 0.7, 1e-12, "energy, closed form");
    close(impulse::duration_s(&FIELD, 500.0), 41.94e-6, 0.04e-6, "duration");
    close(impulse::rms_ampere(&FIELD, 500.0), 5.631, 5.6e-3, "root mean square");
}

/// Source: computed.
#[test]
fn t10_a_data_sheet_that_agrees_with_itself() {
    let sheet = DataSheet { stored_j: Some(1.0), no_load_v: 7000.0, v_at_500_ohm: 5000.0, output_j_at_500_ohm: 0.7 };
    let fit = fit(&sheet).unwrap();
    assert_eq!(fit.model, SourceModel::Rc);
    close(fit.source.r_ohm / 200.0, 1.0, 1e-9, "Rs");
    close(fit.source.c_farad / 40e-9, 1.0, 1e-9, "Cs");
    close(fit.eta0.unwrap(), 0.98, 1e-9, "η0");
}

/// Source: computed, and run in a circuit simulator (5000.0 V, 0.7000 J; 1874.4 V at 100 Ω).
#[test]
fn t11_a_data_sheet_that_asks_for_an_inductance() {
    let sheet = DataSheet { stored_j: Some(1.0), no_load_v: 8000.0, v_at_500_ohm: 5000.0, output_j_at_500_ohm: 0.7 };
    let fit = fit(&sheet).unwrap();
    assert_eq!(fit.model, SourceModel::Rlc);
    close(fit.eta0.unwrap(), 1.12, 1e-9, "η0");
    close(fit.source.r_ohm / 214.286, 1.0, 1e-5, "Rs");
    close(fit.source.c_farad / 31.25e-9, 1.0, 1e-9, "Cs");
    close(fit.source.l_henry / 0.76795e-3, 1.0, 1e-3, "Ls");
    for (load_ohm, want_v) in [(500.0, 5000.0), (300.0, 3927.0), (100.0, 1874.4)] {
        let line = Line::open(with_short(Chain::even(1.0, 0.0, 0.0, 0.0), 0.0, load_ohm));
        let pulse = pulse_of(fit.source, line);
        close(only(&pulse.lines).feed.volts / want_v, 1.0, 1e-3, "peak under load");
        let want_j = load_ohm / (load_ohm + fit.source.r_ohm);
        close(pulse.energy.shorts_j / want_j, 1.0, 1e-4, "energy whatever the inductance");
    }
}

/// Charge shared by two capacitors. Source: computed.
#[test]
fn t12_one_capacitor_onto_another() {
    let pulse = pulse_of(FIELD, Line::open(Chain::even(1.0, 0.0, 0.0, 5e-9)));
    close(only(&pulse.lines).feed.volts / 6222.2222, 1.0, 1e-6, "final voltage");
    close(pulse.energy.source_j, 0.10889, 1e-5, "lost");
}

/// Two exponentials in closed form. Source: computed, and run in a circuit simulator.
#[test]
fn t13_fence_capacitance_beside_500_ohm() {
    for (fence_f, want_v, want_us) in [(1.84e-9, 4680.50, 1.222), (5e-9, 4301.12, 2.603)] {
        let chain = with_short(Chain::even(1.0, 0.0, 0.0, fence_f), 0.0, 500.0);
        let pulse = pulse_of(FIELD, Line::open(chain));
        let peak = only(&pulse.lines).feed;
        close(peak.volts / want_v, 1.0, 1e-3, "peak");
        close(peak.volts / want_v, 1.0, 5e-5, "peak, as near as the method is said to be");
        close(peak.at_s * 1e6 / want_us, 1.0, 0.02, "time of the peak");
    }
}

/// Source: computed.
#[test]
fn t14_two_ways_side_by_side() {
    close(wire::parallel_ohm(&[30.0, 70.0]), 21.0, 1e-12, "30 and 70 Ω");
    let shares = [30.0, 70.0].map(|ohm| 21.0 / ohm);
    close(shares[0], 0.7, 1e-12, "current through 30 Ω");
    close(shares[1], 0.3, 1e-12, "current through 70 Ω");
}

/// Source: computed (the linear differential equation of 40 sections).
#[test]
fn t15_a_whole_line_with_its_capacitance() {
    let pulse = pulse_of(FIELD, Line::open(pieces(200.0, 40, 1.0, 2e-5, 37e-12)));
    let line = only(&pulse.lines);
    close(line.feed.volts / 3574.0, 1.0, 5e-3, "feed");
    close(line.chain.marks[20].volts / 2737.5, 1.0, 5e-3, "middle");
    close(line.chain.marks[40].volts / 2483.5, 1.0, 5e-3, "end");
    close(pulse.energy.residual(), 0.0, 1e-4, "balance");
}

/// Source: published, 6.7 pF/m on a page of pulsed-power formulas.
#[test]
fn t16_one_wire_over_ground() {
    close(capacitance_per_m(&[1.0], 0.5e-3).unwrap() * 1e12, 6.7, 0.02, "pF/m");
}

/// Source: computed (the closed form for two wires).
#[test]
fn t17_two_wires_over_ground() {
    close(capacitance_per_m(&[0.5, 0.3], 1e-3).unwrap() * 1e12 / 13.863, 1.0, 1e-4, "pF/m");
}

/// Source: computed.
#[test]
fn t18_twelve_live_lines() {
    let heights_m = [0.10, 0.15, 0.20, 0.25, 0.30, 0.36, 0.43, 0.52, 0.62, 0.74, 0.88, 1.05];
    close(capacitance_per_m(&heights_m, 1e-3).unwrap() * 1e12 / 36.88, 1.0, 1e-3, "pF/m");
    let even_m: Vec<f64> = (0..11).map(|k| 0.07 + 0.1 * f64::from(k)).collect();
    close(capacitance_per_m(&even_m, 1e-3).unwrap() * 1e12 / 37.89, 1.0, 1e-3, "pF/m, 11 lines");
}

/// Source: published, 32 Ω in MIL-HDBK-419A vol. II 1.2.2.2.
#[test]
fn t19_one_stake_of_ten_feet() {
    let ohm = one_stake_ohm(100.0, 3.048, 0.01905);
    close(ohm, 32.0, 0.5, "published to two digits");
    close(ohm, 32.14, 0.01, "Dwight's formula");
}

/// Source: an engineering worksheet that cites BS 7430.
#[test]
fn t20_one_stake_of_three_metres() {
    close(one_stake_ohm(55.0, 3.0, 0.025), 17.12, 0.01, "published");
}

/// Source: computed; Dwight's series for two stakes is the second way.
#[test]
fn t21_two_stakes() {
    let (rho, l, s) = (100.0, 3.048, 6.096);
    let ohm = stakes_ohm(rho, l, 0.01905, 2, s).unwrap();
    close(ohm, 17.288, 1e-3, "matrix");
    let ratio = l / s;
    let mutual = rho / (2.0 * std::f64::consts::PI * s) * (1.0 - ratio.powi(2) / 3.0 + 2.0 * ratio.powi(4) / 5.0);
    let series = 0.5 * (one_stake_ohm(rho, l, 0.01905) + mutual);
    close(series, 17.298, 1e-3, "Dwight's series");
    close(ohm / series, 1.0, 1e-3, "the two");
    close(mutual_ohm(rho, l, s) / mutual, 1.0, 0.01, "mutual resistance");
}

/// Source: IEEE 142 table 14, quoted in two places that agree (0.58, 0.43, 0.34 of one stake).
#[test]
fn t22_stakes_one_length_apart() {
    let one = one_stake_ohm(100.0, 3.048, 0.01905);
    for (count, want) in [(2, 0.58), (3, 0.43), (4, 0.34)] {
        let ohm = stakes_ohm(100.0, 3.048, 0.01905, count, 3.048).unwrap();
        close(ohm / one / want, 1.0, 0.05, "share of one stake");
        let places_m: Vec<[f64; 2]> = (0..count).map(|k| [0.0, 3.048 * k as f64]).collect();
        close(layout_ohm(100.0, 3.048, 0.01905, &places_m).unwrap() / ohm, 1.0, 1e-12, "as a layout");
    }
}

/// Source: computed (resistivity from memory of data books).
#[test]
fn t23_a_twine_of_three_filaments() {
    close(wire::wire_ohm_per_m(wire::STAINLESS_304_OHM_M, 0.2e-3, 3) / 7.639, 1.0, 1e-3, "Ω/m");
}

/// Source: computed; the trade prints 34.8 Ω/km for 2.51 mm steel.
#[test]
fn t24_solid_wire() {
    close(wire::wire_ohm_per_m(0.17e-6, 2.5e-3, 1) * 1e3 / 34.6, 1.0, 1e-2, "steel, Ω/km");
    close(wire::wire_ohm_per_m(wire::ALUMINIUM_OHM_M, 2.5e-3, 1) * 1e3 / 5.74, 1.0, 1e-2, "aluminium");
}

/// Source: from memory of IEC 60335-2-76; its two corner values agree with the formula.
#[test]
fn t25_the_limit_line_meets_its_corners() {
    close(impulse::limit_line_s(15.7).unwrap() * 1e3 / 0.0999, 1.0, 1e-3, "ms at 15.7 A");
    close(impulse::limit_line_s(1.0).unwrap() * 1e3 / 4.00, 1.0, 1e-3, "ms at 1 A");
    assert_eq!(impulse::limit_line_s(15.8), None);
}

/// From a reading at the feed back to the leakage: `Zin = Rs V / (V0 - V)`, `Zc coth γ l = Zin`, on 100 m of 1 Ω/m.
/// Source: computed, the textbook's leaky line; here by halving on the network itself, and by the formula.
#[test]
fn t32_a_reading_tells_the_leakage() {
    let reading_v = 5864.66;
    let feed_v = |g: f64| only(&steady_of(FIELD, Line::open(pieces(100.0, 1000, 1.0, g, 0.0))).lines).feed;
    let (mut low, mut high) = (1e-8_f64, 1e-3_f64);
    for _ in 0..60 {
        let middle = (low * high).sqrt();
        if feed_v(middle) > reading_v { low = middle } else { high = middle }
    }
    close(low / 1e-5, 1.0, 1e-3, "leakage by halving");
    let seen_ohm = 200.0 * reading_v / (7000.0 - reading_v);
    let gamma = 1e-5_f64.sqrt();
    close(1.0 / gamma / (gamma * 100.0).tanh() / seen_ohm, 1.0, 1e-3, "the formula at 1e-5 S/m");
}

/// Eleven strands alternately live and earthed: 49.6 pF/m from live to return. Source: computed (facts 4.2).
#[test]
fn strands_live_and_earthed_by_turns() {
    let at = |k: usize| 0.07 + 0.1 * k as f64;
    let live: Vec<f64> = (0..11).step_by(2).map(at).collect();
    let earthed: Vec<f64> = (1..11).step_by(2).map(at).collect();
    let c = partial_capacitance_per_m(&live, &earthed, 1e-3).unwrap();
    close((c.live + c.between) * 1e12, 49.6, 0.05, "live to return, pF/m");
    // All at one voltage they are one bundle.
    let all: Vec<f64> = (0..11).map(at).collect();
    close((c.live + c.earthed) / capacitance_per_m(&all, 1e-3).unwrap(), 1.0, 1e-12, "both groups to earth");
    // Two lines by hand: Q = P⁻¹ of two by two.
    let two = partial_capacitance_per_m(&[0.5], &[0.3], 1e-3).unwrap();
    let scale = 1.0 / (2.0 * std::f64::consts::PI * electrical::capacitance::EPSILON_0_F_PER_M);
    let (own, other, both) = (scale * 1000_f64.ln(), scale * 600_f64.ln(), scale * 4_f64.ln());
    let det = own * other - both * both;
    close(two.between / (both / det), 1.0, 1e-12, "mutual");
    close(two.live / ((other - both) / det), 1.0, 1e-12, "live to earth");
    close(two.earthed / ((own - both) / det), 1.0, 1e-12, "earthed to earth");
}

/// Earths as published (facts 6.2): what was printed, how near the matrix comes, and where it stands.
#[test]
fn published_earths() {
    // Ten feet by three quarters of an inch in 100 Ω m, 26 of them 20 ft apart round a site of 100 by 160 ft: 1.76 Ω,
    // MIL-HDBK-419A vol. II 1.2.2.2 (read), which reads one chart for many stakes; the matrix, which has no chart, gives
    // a tenth more. It is on the safe side.
    let foot_m = 0.3048;
    let mut site: Vec<[f64; 2]> = Vec::new();
    for k in 0..5 {
        site.push([20.0 * f64::from(k), 0.0]);
        site.push([100.0 - 20.0 * f64::from(k), 160.0]);
    }
    for k in 0..8 {
        site.push([100.0, 20.0 * f64::from(k)]);
        site.push([0.0, 160.0 - 20.0 * f64::from(k)]);
    }
    assert_eq!(site.len(), 26);
    let places_m: Vec<[f64; 2]> = site.iter().map(|[x, y]| [x * foot_m, y * foot_m]).collect();
    let ohm = layout_ohm(100.0, 3.048, 0.01905, &places_m).unwrap();
    close(ohm / 1.76, 1.0, 0.11, "26 stakes round a site");
    assert!(ohm > 1.76, "{ohm}");
    // 2.5 Ω alone; two, three and four of them one length apart 1.45, 1.075 and 0.85 Ω: a grounding engineer's answer
    // that uses IEEE 142 (read). Eight of them 0.21 of one: IEEE 142 table 14, quoted in two places (reprints).
    let one_ohm = one_stake_ohm(100.0, 3.048, 0.01905);
    for (count, want_ohm, tolerance) in [(2, 1.45, 0.05), (3, 1.075, 0.05), (4, 0.85, 0.05), (8, 2.5 * 0.21, 0.12)] {
        let share = stakes_ohm(100.0, 3.048, 0.01905, count, 3.048).unwrap() / one_ohm;
        close(2.5 * share / want_ohm, 1.0, tolerance, "stakes of 2.5 Ω one length apart");
        // By our own working of the same matrix (facts 6.2, computed).
        let own = [(2, 0.567), (3, 0.410), (4, 0.325), (8, 0.187)].iter().find(|row| row.0 == count).unwrap().1;
        close(share, own, 6e-4, "share of one stake");
    }
    // Rods of a metre by 12 mm in 100 Ω m (facts 6.3, computed): alone, two, three in line, three in a triangle.
    let metre = |places_m: &[[f64; 2]]| layout_ohm(100.0, 1.0, 0.012, places_m).unwrap();
    close(metre(&[[0.0, 0.0]]), 87.6, 0.05, "one");
    close(metre(&[[0.0, 0.0], [3.0, 0.0]]), 46.4, 0.05, "two");
    close(metre(&[[0.0, 0.0], [3.0, 0.0], [6.0, 0.0]]), 32.0, 0.05, "three in line");
    close(metre(&[[0.0, 0.0], [3.0, 0.0], [1.5, 3.0 * 0.75_f64.sqrt()]]), 32.6, 0.05, "three in a triangle");
}

/// The soils' resistivities as their tables print them (facts 6.3), and the default among them.
#[test]
fn soils_are_as_published() {
    use plan::resistivity::{DIN, DIN_SOURCE, IEC, IEC_SOURCE, published_ohm_m};
    let row = |table: &[plan::resistivity::SoilResistivity], soil: &str| {
        let found = table.iter().find(|row| row.soil == soil).unwrap();
        (found.low_ohm_m, found.high_ohm_m)
    };
    for (soil, want) in [
        ("bog", (1.0, 30.0)),
        ("humus", (10.0, 150.0)),
        ("clayey sand", (50.0, 500.0)),
        ("bare stony soil", (1500.0, 3000.0)),
        ("limestone", (1000.0, 5000.0)),
    ] {
        assert_eq!(row(&IEC, soil), want, "{soil}; {IEC_SOURCE}");
    }
    for (soil, want) in [
        ("marsh", (8.0, 60.0)),
        ("arable soil, loam, clay, moist gravel", (20.0, 300.0)),
        ("dry sand or gravel", (200.0, 2000.0)),
        ("rocky soil", (300.0, 8000.0)),
    ] {
        assert_eq!(row(&DIN, soil), want, "{soil}; {DIN_SOURCE}");
    }
    assert!(IEC.iter().chain(&DIN).all(|soil| 0.0 < soil.low_ohm_m && soil.low_ohm_m <= soil.high_ohm_m));
    assert_eq!(published_ohm_m(), (1.0, 8000.0));
    let arable = row(&DIN, "arable soil, loam, clay, moist gravel");
    assert!((arable.0..=arable.1).contains(&plan::defaults::RESISTIVITY_OHM_M));
}
