//! What strands see is what the ladder sees, at rest or not.

use super::*;
use crate::circuit::{Branch, Chain, Circuit, Closing, Join, Line, Mesh, Place, Short};
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL};
use crate::source::Source;
use crate::stepper::Stepper;

/// A lead and a ring with two branches, one of them short, and an open line at the same
/// terminal: every kind of path, cut and too short to be cut.
fn network(wire_ohm_per_m: f64, leakage_s_per_m: f64, closing: Closing) -> Network {
    let chain = |metres: usize| {
        let mut chain = Chain::even(metres as f64, wire_ohm_per_m, leakage_s_per_m, 37e-12);
        chain.marks.extend((0..=metres).map(|metre| Place::after(metre as f64)));
        chain
    };
    let mut main = chain(83);
    main.joins.push(Join { at_m: 61.0, ohm: 40.0 });
    main.shorts.push(Short { at: Place::after(47.0), ohm: 900.0 });
    let branch = |at_m: f64, metres| Branch { at: Place::after(at_m), chain: chain(metres) };
    let branches = vec![branch(20.0, 31), branch(47.0, 5)];
    let ring = Line { feed: Place::after(11.0), lead_ohm: 3.0, closing, branches, ..Line::open(main) };
    let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
    let circuit = Circuit { source, earth_ohm: 88.0, lines: vec![ring, Line::open(chain(40))] };
    let mut net = Network::default();
    net.lay_out(&circuit, &Mesh::as_named()).expect("a plain circuit");
    net
}

#[test]
fn strands_see_what_the_ladder_sees() {
    for closing in [Closing::Ring { ohm: 25.0 }, Closing::Open] {
        for (wire, leakage) in [(1.0, 1e-5), (1e-6, 1e-9), (1e3, 1e-1)] {
            let net = network(wire, leakage, closing);
            let mut strands = Strands::default();
            strands.lay_out(&net);
            assert!(strands.pieces.len() >= 4, "{}", strands.pieces.len());
            for s in [Complex::new(1e6, 7e5), Complex::new(20.0, -14.0), Complex::real(1e40), Complex::ZERO] {
                let mut ladder = Ladder::default();
                let want = ladder.factor(&net, s);
                let got = strands.factor(s, 1.0);
                assert!((got - want).size() < 1e-13 * want.size(), "{wire}, {leakage}, {s:?}: {got:?}, {want:?}");
                let mut volts = vec![Complex::ZERO; net.nodes()];
                volts[TERMINAL] = Complex::real(1.0);
                ladder.back(&net, &mut volts);
                strands.volts.fill(0.0);
                strands.forward();
                strands.back(Complex::real(1.0), Complex::real(1.0));
                for (node, want) in volts.iter().enumerate() {
                    let got = strands.volts[strands.place(node)];
                    assert!(
                        (got - want.re).abs() < 1e-12,
                        "{wire}, {leakage}, {s:?}, {node}: {got} against {}",
                        want.re
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_at_rest_is_not_missed() {
    // Wet grass: the pulse does not come to the far end of this line, and takes its time on the way.
    let mut chain = Chain::even(1500.0, 1.0, 3e-3, 37e-12);
    chain.marks.extend((0..=500).map(|mark| Place::after(3.0 * f64::from(mark))));
    let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
    for line in [Line::open(chain.clone()), Line { feed: Place::after(300.0), ..Line::ring(chain) }] {
        let circuit = Circuit { source, earth_ohm: 88.0, lines: vec![line] };
        let mut net = Network::default();
        net.lay_out(&circuit, &Mesh::as_named()).expect("a plain circuit");
        let (mut resting, mut whole) = (Stepper::default(), Stepper::default());
        resting.start(&net);
        whole.start(&net);
        whole.strands.wake_all();
        let at_rest = |stepper: &Stepper| stepper.strands.pieces.iter().map(|piece| piece.at_rest.len()).sum::<usize>();
        assert!(at_rest(&resting) > 80, "{}", at_rest(&resting));
        for octave in 0..12 {
            for stepper in [&mut resting, &mut whole] {
                stepper.set_step(1e-9 * 2.0_f64.powi(octave));
                (0..8).for_each(|_| stepper.advance());
            }
            for (got, want) in resting.strands.volts.iter().zip(&whole.strands.volts) {
                assert!((got - want).abs() < 1e-9 * source.v0, "octave {octave}: {got} against {want}");
            }
            assert!(octave > 0 || at_rest(&resting) > 0, "octave {octave}");
        }
    }
}

#[test]
fn what_a_place_injects_comes_out_at_the_terminal_as_the_terminal_comes_in_there() {
    // Reciprocity: the share of a current at a node that the terminal, held at 0, sees is the node's share of volts.
    let net = network(1.0, 1e-5, Closing::Ring { ohm: 25.0 });
    let mut strands = Strands::default();
    strands.lay_out(&net);
    strands.factor(Complex::real(3e6), 1.0);
    strands.volts.fill(0.0);
    strands.forward();
    strands.back(Complex::real(1.0), Complex::real(1.0));
    let shares = strands.volts.clone();
    for (place, share) in shares.iter().enumerate() {
        strands.volts.fill(0.0);
        strands.volts[place] = 1.0;
        let got = strands.forward().re;
        let want = share * strands.farad[place];
        assert!((got - want).abs() <= 1e-12 * strands.farad[place], "{place}: {got} against {want}");
    }
}
