//! Whether a circuit's figures can be computed with at all: finite, of the right sign, in place.

use crate::circuit::{Chain, Circuit, CircuitFault, Closing, Earthed, Line, PLACE_TOLERANCE_M};

/// Above this a figure is taken for an error, in its SI unit: products would overflow.
const LARGEST: f64 = 1e15;

/// Longest stretch, metres: nodes are laid every few metres.
const LONGEST_M: f64 = 1e6;

pub(crate) fn circuit(circuit: &Circuit) -> Result<(), CircuitFault> {
    let source = &circuit.source;
    for (what, value, positive) in [
        ("the energizer's voltage", source.v0, true),
        ("the energizer's resistance", source.r_ohm, false),
        ("the energizer's capacitance", source.c_farad, true),
        ("the energizer's inductance", source.l_henry, false),
        ("the earth resistance", circuit.earth_ohm, false),
    ] {
        if let Some(must) = out_of_range(value, positive) {
            return Err(CircuitFault::Figure { what, value, must });
        }
    }
    if circuit.lines.is_empty() {
        return Err(CircuitFault::NoLine);
    }
    for (index, line) in circuit.lines.iter().enumerate() {
        self::line(index, line)?;
    }
    Ok(())
}

fn out_of_range(value: f64, positive: bool) -> Option<&'static str> {
    if positive {
        (!(value > 0.0 && value <= LARGEST)).then_some("above zero")
    } else {
        (!(0.0..=LARGEST).contains(&value)).then_some("zero or above")
    }
}

/// Names the line and branch of a fault.
#[derive(Clone, Copy)]
struct Whose {
    line: usize,
    branch: Option<usize>,
}

impl Whose {
    fn figure(self, what: &'static str, value: f64) -> Result<(), CircuitFault> {
        let Self { line, branch } = self;
        out_of_range(value, false)
            .map_or(Ok(()), |must| Err(CircuitFault::LineFigure { line, branch, what, value, must }))
    }

    fn place(self, what: &'static str, at_m: f64, length_m: f64) -> Result<(), CircuitFault> {
        let Self { line, branch } = self;
        let reach = -PLACE_TOLERANCE_M..=length_m + PLACE_TOLERANCE_M;
        if reach.contains(&at_m) { Ok(()) } else { Err(CircuitFault::Beyond { line, branch, what, at_m, length_m }) }
    }
}

fn line(index: usize, line: &Line) -> Result<(), CircuitFault> {
    let whose = Whose { line: index, branch: None };
    chain(whose, &line.chain)?;
    whose.figure("the lead's resistance", line.lead_ohm)?;
    if let Closing::Ring { ohm } = line.closing {
        whose.figure("the closing join's resistance", ohm)?;
    }
    let length_m = line.chain.length_m();
    whose.place("the feed", line.feed.at_m, length_m)?;
    for (number, branch) in line.branches.iter().enumerate() {
        whose.place("a branch", branch.at.at_m, length_m)?;
        chain(Whose { line: index, branch: Some(number) }, &branch.chain)?;
    }
    Ok(())
}

fn chain(whose: Whose, chain: &Chain) -> Result<(), CircuitFault> {
    let Whose { line, branch } = whose;
    let mut wanted_m = 0.0;
    for stretch in &chain.stretches {
        let gap_m = (stretch.from_m - wanted_m).abs();
        if gap_m.is_nan() || gap_m > PLACE_TOLERANCE_M {
            return Err(CircuitFault::Gap { line, branch, from_m: stretch.from_m, wanted_m });
        }
        let length_m = stretch.to_m - stretch.from_m;
        if !(0.0..=LONGEST_M).contains(&length_m) {
            let (what, must) = ("a stretch's length", "zero or above, and below 1000 km");
            return Err(CircuitFault::LineFigure { line, branch, what, value: length_m, must });
        }
        whose.figure("a stretch's resistance", stretch.r_ohm_per_m)?;
        whose.figure("a stretch's leakage", stretch.g_s_per_m)?;
        whose.figure("a stretch's capacitance", stretch.c_f_per_m)?;
        wanted_m = stretch.to_m;
    }
    if wanted_m <= PLACE_TOLERANCE_M {
        return Err(CircuitFault::Empty { line, branch });
    }
    for join in &chain.joins {
        whose.place("a join", join.at_m, wanted_m)?;
        whose.figure("a join's resistance", join.ohm)?;
    }
    for at_m in &chain.breaks {
        whose.place("a break", *at_m, wanted_m)?;
    }
    for short in &chain.shorts {
        whose.place("a short", short.at.at_m, wanted_m)?;
        whose.figure("a short's resistance", short.ohm)?;
    }
    for mark in &chain.marks {
        whose.place("a mark", mark.at_m, wanted_m)?;
    }
    earthed(whose, &chain.earthed, wanted_m)
}

fn earthed(whose: Whose, earthed: &Earthed, length_m: f64) -> Result<(), CircuitFault> {
    for stretch in &earthed.stretches {
        whose.place("an earthed stretch", stretch.from_m, length_m)?;
        whose.place("an earthed stretch", stretch.to_m, length_m)?;
        whose.figure("the earthed lines' resistance", stretch.r_ohm_per_m)?;
        whose.figure("the earthed lines' capacitance", stretch.c_f_per_m)?;
        whose.figure("the capacitance between live and earthed lines", stretch.to_live_f_per_m)?;
    }
    for join in &earthed.joins {
        whose.place("an earthed join", join.at_m, length_m)?;
        whose.figure("an earthed join's resistance", join.ohm)?;
    }
    whose.figure("the earthed closing join's resistance", earthed.closing_ohm)?;
    Ok(())
}
