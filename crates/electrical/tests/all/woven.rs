//! Netting wired alternately: against the plain ladder where the two must agree, against closed forms, and contours
//! against steps. The general simulator and the exact solution stand in `tests/tests`.

use electrical::{
    Accuracy, Animal, Branch, Chain, Circuit, Closing, Earthed, EarthedStretch, Join, Line, Mesh, Place, Pulse, Short,
    Source, Touch, animals, curves, earth_rise, partial_capacitance_per_m, pulse, steady,
};
use proptest::prelude::*;

const RC: Source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
const RLC: Source = Source { v0: 8000.0, r_ohm: 214.286, c_farad: 31.25e-9, l_henry: 0.768e-3 };

#[derive(Debug, Clone, Copy)]
struct Fence {
    source: Source,
    earth_ohm: f64,
    lead_ohm: f64,
    r: f64,
    g: f64,
    c: f64,
    panels: usize,
    ring: Option<f64>,
    feed: usize,
    spare: usize,
    short: Option<(usize, f64)>,
    split: Option<(usize, f64)>,
    join: Option<(usize, f64)>,
}

const PANEL_M: f64 = 3.5;

impl Fence {
    fn plain() -> Self {
        Self {
            source: RC,
            earth_ohm: 88.0,
            lead_ohm: 0.0,
            r: 1.0,
            g: 1e-5,
            c: 37e-12,
            panels: 28,
            ring: None,
            feed: 0,
            spare: 0,
            short: None,
            split: None,
            join: None,
        }
    }

    fn at(place: usize) -> f64 {
        PANEL_M * place as f64
    }

    fn circuit(&self) -> Circuit {
        let length_m = Self::at(self.panels);
        let even = |panels: usize| Chain {
            marks: (0..=panels).map(|k| Place::before(Self::at(k))).collect(),
            ..Chain::even(Self::at(panels), self.r, self.g, self.c)
        };
        let mut chain = even(self.panels);
        chain.shorts = self.short.iter().map(|&(k, ohm)| Short { at: Place::after(Self::at(k)), ohm }).collect();
        for (k, ohm) in self.join.into_iter().chain(self.split) {
            if ohm.is_finite() {
                chain.joins.push(Join { at_m: Self::at(k), ohm });
            } else {
                chain.breaks.push(Self::at(k));
            }
        }
        let branches = (self.spare > 0)
            .then(|| Branch { at: Place::before(length_m), chain: even(self.spare) })
            .into_iter()
            .collect();
        let closing = self.ring.map_or(Closing::Open, |ohm| Closing::Ring { ohm });
        let line = Line { chain, closing, branches, feed: Place::after(Self::at(self.feed)), lead_ohm: self.lead_ohm };
        Circuit { source: self.source, earth_ohm: self.earth_ohm, lines: vec![line] }
    }
}

/// Earthed lines all along, and along the branches.
fn weave(circuit: &mut Circuit, r: f64, c: f64, to_live: f64) {
    let lines = |chain: &mut Chain| {
        let to_m = chain.length_m();
        let stretch = EarthedStretch { from_m: 0.0, to_m, r_ohm_per_m: r, c_f_per_m: c, to_live_f_per_m: to_live };
        chain.earthed = Earthed { stretches: vec![stretch], ..Earthed::default() };
    };
    for line in &mut circuit.lines {
        lines(&mut line.chain);
        line.branches.iter_mut().for_each(|branch| lines(&mut branch.chain));
    }
}

fn run(circuit: &Circuit) -> Pulse {
    pulse(circuit, &Accuracy::default()).unwrap()
}

fn peaks(pulse: &Pulse) -> Vec<f64> {
    let line = &pulse.lines[0];
    let branches = line.branches.iter().flat_map(|branch| &branch.marks);
    std::iter::once(&line.feed).chain(&line.chain.marks).chain(branches).map(|peak| peak.volts).collect()
}

fn touches(circuit: &Circuit, animal: &Animal) -> Vec<Touch> {
    let found = animals(circuit, animal, &Mesh::default()).unwrap();
    let line = &found[0];
    let branches = line.branches.iter().flat_map(|branch| &branch.marks);
    std::iter::once(&line.feed).chain(&line.chain.marks).chain(branches).copied().collect()
}

fn fences() -> impl Strategy<Value = Fence> {
    let place = 0..=28_usize;
    (
        (prop_oneof![Just(RC), Just(RLC)], prop_oneof![Just(0.0), 1.0..500.0_f64], prop_oneof![Just(0.0), Just(30.0)]),
        (
            prop_oneof![Just(0.0), Just(0.03), Just(1.0), Just(2.3)],
            prop_oneof![Just(0.0), Just(2e-7), Just(1e-5), Just(1e-4)],
        ),
        prop_oneof![Just(None), Just(Some(0.0)), Just(Some(40.0))],
        (place.clone(), 0..5_usize),
        prop::option::of((place, prop_oneof![Just(30.0), Just(500.0), Just(5000.0)])),
        prop::option::of((1..28_usize, prop_oneof![Just(100.0), Just(f64::INFINITY)])),
    )
        .prop_map(|((source, earth_ohm, lead_ohm), (r, g), ring, (feed, spare), short, split)| Fence {
            source,
            earth_ohm,
            lead_ohm,
            r,
            g,
            ring,
            feed,
            spare,
            short,
            split,
            ..Fence::plain()
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    /// Earthed lines that no capacitance leads to change nothing: general graph and ladder are two methods. An animal then
    /// feels at least what it felt through its feet, and never less with drier ones than between the lines.
    #[test]
    fn lines_that_nothing_leads_to_change_nothing(fence in fences(), feet_ohm in 0.0..5e3_f64) {
        let plain = fence.circuit();
        let mut woven = plain.clone();
        weave(&mut woven, 0.5, 0.0, 0.0);
        let (one, other) = (run(&plain), run(&woven));
        prop_assert!(other.energy.residual().abs() < 1e-4, "{:?}", other.energy);
        let floor_v = 0.005 * fence.source.v0;
        for (a, b) in peaks(&one).into_iter().zip(peaks(&other)) {
            prop_assert!((a - b).abs() <= 5e-4 * a.max(floor_v), "{a} and {b}");
        }
        prop_assert!((one.energy.shorts_j - other.energy.shorts_j).abs() < 2e-4 * one.energy.stored_j);
        let animal = Animal { body_ohm: 500.0, feet_ohm };
        for (a, b) in touches(&plain, &animal).into_iter().zip(touches(&woven, &animal)) {
            prop_assert!(b.peak_v.is_finite() && b.energy_j.is_finite());
            prop_assert!(b.peak_v >= a.peak_v - 5e-4 * a.peak_v.max(floor_v), "{a:?} and {b:?}");
            prop_assert!(b.energy_j >= a.energy_j - 1e-3 * a.energy_j - 1e-4 * fence.source.stored_j());
        }
    }

    /// Every pulse of woven netting balances its energies, and without inductance no place exceeds `V0`.
    #[test]
    fn woven_netting_balances(fence in fences(), r in prop_oneof![Just(0.0), 0.01..5.0_f64]) {
        let mut circuit = fence.circuit();
        weave(&mut circuit, r, 13e-12, 31e-12);
        let pulse = run(&circuit);
        prop_assert!(pulse.energy.residual().abs() < 1e-4, "{:?}", pulse.energy);
        for peak in peaks(&pulse) {
            prop_assert!(peak.is_finite() && peak >= -1e-6);
            if fence.source.l_henry <= 0.0 {
                prop_assert!(peak <= fence.source.v0 * (1.0 + 1e-9), "{peak} V");
            }
        }
        // Capacitance and earthed lines are nothing to the steady state, and to the earth's rise.
        let mut bare = circuit.clone();
        bare.lines[0].chain.earthed = Earthed::default();
        bare.lines[0].branches.iter_mut().for_each(|branch| branch.chain.earthed = Earthed::default());
        prop_assert_eq!(
            steady(&circuit, &Mesh::default()).unwrap().amperes,
            steady(&bare, &Mesh::default()).unwrap().amperes
        );
        prop_assert_eq!(earth_rise(&circuit).unwrap(), earth_rise(&bare).unwrap());
    }

    /// A touch through the feet is a short of its own: contours against steps. The body between the lines would hide it,
    /// so that the earthed ladder is cut off far away from the reader.
    #[test]
    fn a_touch_through_the_feet_is_a_short(fence in fences(), place in 1..=10_usize, feet_ohm in 0.0..5e3_f64) {
        let mut fence = fence;
        fence.short = None;
        let mut circuit = fence.circuit();
        let (from_m, to_m) = (Fence::at(20), Fence::at(28));
        let stretch =
            EarthedStretch { from_m, to_m, r_ohm_per_m: 1.0, c_f_per_m: 13e-12, to_live_f_per_m: 31e-12 };
        circuit.lines[0].chain.earthed.stretches.push(stretch);
        let animal = Animal { body_ohm: 500.0, feet_ohm };
        let touch = touches(&circuit, &animal)[1 + place];
        let ohm = 500.0 + feet_ohm;
        circuit.lines[0].chain.shorts.push(Short { at: Place::before(Fence::at(place)), ohm });
        let pulse = run(&circuit);
        let want_v = pulse.lines[0].chain.shorts[0].volts * 500.0 / ohm;
        let want_j = pulse.energy.shorts_j * 500.0 / ohm;
        prop_assert!((touch.peak_v - want_v).abs() <= 1e-3 * want_v.max(35.0), "{touch:?}, {want_v} V");
        let stored_j = fence.source.stored_j();
        prop_assert!((touch.energy_j - want_j).abs() <= 1e-3 * want_j.max(0.01 * stored_j), "{touch:?}, {want_j} J");
    }
}

/// Two bundles of lines without resistance beside each other are three capacitors. Source and net share their charge:
/// with the earth resistance left out, live to earth and live to earthed lie side by side.
#[test]
fn lumped_woven_netting_shares_its_charge() {
    let c = partial_capacitance_per_m(&[0.1, 0.3, 0.5], &[0.2, 0.4], 1e-3).unwrap();
    let fence = Fence { r: 0.0, g: 0.0, c: c.live, earth_ohm: 0.0, ..Fence::plain() };
    let mut circuit = fence.circuit();
    weave(&mut circuit, 0.0, c.earthed, c.between);
    let length_m = Fence::at(fence.panels);
    let net_f = (c.live + c.between) * length_m;
    let want = 7000.0 * 40e-9 / (40e-9 + net_f);
    let pulse = run(&circuit);
    assert!((pulse.lines[0].feed.volts / want - 1.0).abs() < 1e-6, "{} against {want}", pulse.lines[0].feed.volts);
    // Behind much earth resistance the pole swings first, and comes back to remote earth in seconds: nothing leaks, so that
    // the same charge is shared in the end.
    let fence = Fence { earth_ohm: 1e9, ..fence };
    let mut circuit = fence.circuit();
    weave(&mut circuit, 0.0, c.earthed, c.between);
    let late = run(&circuit);
    assert!((late.lines[0].feed.volts / want - 1.0).abs() < 1e-4, "{} against {want}", late.lines[0].feed.volts);
    assert!(late.lines[0].feed.at_s > 1.0 && pulse.lines[0].feed.at_s < 1e-3);
}

/// In ground that hardly conducts an animal takes its shock between the lines: its feet no longer count.
#[test]
fn dry_ground_matters_less_to_woven_netting() {
    let dry = Animal { body_ohm: 500.0, feet_ohm: 1e5 };
    let fence = Fence { earth_ohm: 2000.0, g: 2e-7, ..Fence::plain() };
    let plain = fence.circuit();
    let mut woven = plain.clone();
    weave(&mut woven, 1.0, 13e-12, 31e-12);
    let (before, after) = (touches(&plain, &dry)[10], touches(&woven, &dry)[10]);
    assert!(before.peak_v < 100.0 && after.peak_v > 3000.0, "{before:?}, {after:?}");
    assert!(after.energy_j > 100.0 * before.energy_j);
}

/// A piece of earthed lines that plain netting cuts off floats: no stretch of it is singular, and a touch there finds
/// hardly anything to flow to.
#[test]
fn a_piece_that_does_not_reach_the_feed_floats() {
    let fence = Fence { g: 2e-7, ..Fence::plain() };
    let mut circuit = fence.circuit();
    let stretch = |from: usize, to: usize| EarthedStretch {
        from_m: Fence::at(from),
        to_m: Fence::at(to),
        r_ohm_per_m: 1.0,
        c_f_per_m: 13e-12,
        to_live_f_per_m: 31e-12,
    };
    circuit.lines[0].chain.earthed.stretches = vec![stretch(0, 14), stretch(20, 28)];
    let dry = Animal { body_ohm: 500.0, feet_ohm: 1e6 };
    let touch = touches(&circuit, &dry);
    assert!(touch[10].peak_v > 3000.0, "tied to the pole: {:?}", touch[10]);
    assert!(touch[25].energy_j < 0.05 * touch[10].energy_j, "floating: {:?}", touch[25]);
    assert!(touch.iter().all(|touch| touch.peak_v.is_finite() && touch.energy_j.is_finite()));
    assert!(run(&circuit).energy.residual().abs() < 1e-4);
    // The pole may float as well: the feed lies where no earthed line is.
    circuit.lines[0].chain.earthed.stretches = vec![stretch(20, 28)];
    assert!(run(&circuit).energy.residual().abs() < 1e-4);
}

/// The pulse over time comes near its peaks, and is that of the plain netting where nothing leads to the earthed lines.
#[test]
fn curves_reach_their_peaks() {
    for source in [RC, RLC] {
        let fence = Fence { source, ring: Some(0.0), spare: 3, ..Fence::plain() };
        let plain = fence.circuit();
        let mut woven = plain.clone();
        weave(&mut woven, 1.0, 13e-12, 31e-12);
        let greatest = |circuit: &Circuit| {
            let found = curves(circuit, &Accuracy::default()).unwrap();
            assert!(found.lines[0].chain.marks.iter().all(|row| row.len() == found.times_s.len()));
            found.lines[0].chain.marks.iter().map(|row| row.iter().copied().fold(0.0, f64::max)).collect::<Vec<f64>>()
        };
        for (curve, peak) in greatest(&woven).into_iter().zip(&run(&woven).lines[0].chain.marks) {
            assert!((curve / peak.volts - 1.0).abs() < 0.01, "{curve} and {peak:?}");
        }
        let mut inert = plain.clone();
        weave(&mut inert, 1.0, 0.0, 0.0);
        for (a, b) in greatest(&inert).into_iter().zip(greatest(&plain)) {
            assert!((a / b - 1.0).abs() < 2e-3, "{a} and {b}");
        }
    }
}

/// What cannot be computed is refused by name.
#[test]
fn bad_earthed_lines_are_refused_by_name() {
    let mut circuit = Fence::plain().circuit();
    weave(&mut circuit, 1.0, 13e-12, 31e-12);
    let mut beyond = circuit.clone();
    beyond.lines[0].chain.earthed.stretches[0].to_m += 1.0;
    assert_eq!(pulse(&beyond, &Accuracy::default()).unwrap_err().id(), "electrical/beyond-chain");
    circuit.lines[0].chain.earthed.stretches[0].to_live_f_per_m = f64::NAN;
    assert_eq!(pulse(&circuit, &Accuracy::default()).unwrap_err().id(), "electrical/line-figure");
    let animal = Animal { body_ohm: 500.0, feet_ohm: 0.0 };
    assert!(animals(&circuit, &animal, &Mesh::default()).is_err());
}
