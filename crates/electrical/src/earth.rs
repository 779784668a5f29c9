//! How far the energizer's earth pole rises above remote earth during the pulse.
//!
//! With the netting's capacitance left out the whole fence is one resistance `Rf`, and the pulse is
//! that of a series circuit: without inductance the greatest current is the first,
//! `V0 / (Rs + Rf + Re)`, with it [`series_peak_ampere`]. Times `Re` that is the rise. Left in, the
//! capacitance makes the first rush the same whatever is wrong with the fence; that figure stands
//! beside it. Source: docs/sources.md, electrical §6.4. Volts to remote earth, in magnitude.

use crate::circuit::{Circuit, CircuitFault, Mesh};
use crate::source::{Source, series_peak_ampere};
use crate::steady::steady;

/// Voltage between the energizer's earth pole and remote earth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarthRise {
    /// Greatest magnitude over time, the netting's capacitance left out, volts.
    pub peak_v: f64,
    /// The first rush into the netting's capacitance, `V0 Re / (Rs + lead + Re)`, volts: the same
    /// whatever is wrong with the fence. Leads of several lines count side by side.
    pub rush_v: f64,
}

/// The earth pole's rise; exact to rounding for the default mesh.
pub fn earth_rise(circuit: &Circuit) -> Result<EarthRise, CircuitFault> {
    let fence_ohm = steady(circuit, &Mesh::default())?.input_ohm;
    let Circuit { source, earth_ohm, lines } = circuit;
    let total_ohm = source.r_ohm + earth_ohm + fence_ohm;
    let peak_v = if fence_ohm.is_finite() && *earth_ohm > 0.0 {
        earth_ohm * series_peak_ampere(&Source { r_ohm: total_ohm, ..*source })
    } else {
        0.0
    };
    let lead_ohm = crate::wire::parallel_ohm(&lines.iter().map(|line| line.lead_ohm).collect::<Vec<_>>());
    let rush_ohm = source.r_ohm + lead_ohm + earth_ohm;
    let rush_v = if *earth_ohm > 0.0 { source.v0 * earth_ohm / rush_ohm } else { 0.0 };
    Ok(EarthRise { peak_v, rush_v })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop")]
mod tests {
    use super::*;
    use crate::circuit::{Chain, Line, Place, Short};

    #[test]
    fn a_short_beside_the_feed_is_a_plain_divider() {
        let source = Source { v0: 7000.0, r_ohm: 200.0, c_farad: 40e-9, l_henry: 0.0 };
        let mut chain = Chain::even(50.0, 1.0, 0.0, 37e-12);
        chain.shorts.push(Short { at: Place::after(0.0), ohm: 100.0 });
        let mut circuit = Circuit { source, earth_ohm: 80.0, lines: vec![Line::open(chain)] };
        circuit.lines[0].lead_ohm = 20.0;
        let rise = earth_rise(&circuit).unwrap();
        assert!((rise.peak_v - 7000.0 * 80.0 / 400.0).abs() < 1e-9);
        assert!((rise.rush_v - 7000.0 * 80.0 / 300.0).abs() < 1e-9);
        // Nothing leaks: nothing rises, but for the rush.
        circuit.lines[0].chain.shorts.clear();
        assert!(earth_rise(&circuit).unwrap().peak_v.abs() < 1e-12);
        // An inductance lowers the peak, not the rush.
        circuit.lines[0].chain.shorts.push(Short { at: Place::after(0.0), ohm: 100.0 });
        circuit.source.l_henry = 1e-3;
        let slower = earth_rise(&circuit).unwrap();
        assert!(slower.peak_v < rise.peak_v && slower.peak_v > 0.5 * rise.peak_v);
        // Dry ground without an earth resistance at all.
        circuit.earth_ohm = 0.0;
        assert!(earth_rise(&circuit).unwrap().rush_v.abs() < 1e-12);
    }
}
