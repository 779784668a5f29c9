//! The circuit with the energizer's capacitor held at `V0` for ever: resistances only.
//!
//! An upper bound of the pulse's peaks where the source has no inductance, and exact where the
//! netting has no capacitance (docs/sources.md, electrical §0.3).

use crate::circuit::{Circuit, CircuitFault, LineReadings, Mesh};
use crate::complex::Complex;
use crate::ladder::Ladder;
use crate::network::{Network, TERMINAL, deal};

/// The steady state.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Steady {
    /// Volts to remote earth at every place that is read.
    pub lines: Vec<LineReadings<f64>>,
    /// Current from the energizer, amperes.
    pub amperes: f64,
    /// From the energizer's live terminal through every line to remote earth, ohms; infinite where
    /// nothing leaks.
    pub input_ohm: f64,
}

/// Solves the circuit with `V0` held behind the source's resistance and the earth's.
///
/// Exact to rounding for the nodes that `mesh` lays. Earthed lines beside the live ones carry nothing in it, since only
/// capacitance leads to them: they are passed over.
///
/// ```
/// use electrical::{Chain, Circuit, Line, Mesh, Source, steady};
/// let source = Source { v0: 1000.0, r_ohm: 0.0, c_farad: 1e-6, l_henry: 0.0 };
/// let line = Line::open(Chain::even(200.0, 1.0, 2e-6, 0.0));
/// let circuit = Circuit { source, earth_ohm: 0.0, lines: vec![line] };
/// let state = steady(&circuit, &Mesh::default()).expect("a plain line");
/// // 1 / (g l) + r l / 3 to first order (docs/sources.md, electrical §5.1)
/// assert!((state.input_ohm - 2566.3).abs() < 0.2);
/// ```
pub fn steady(circuit: &Circuit, mesh: &Mesh) -> Result<Steady, CircuitFault> {
    let mut net = Network::default();
    net.lay_out(circuit, mesh)?;
    let mut ladder = Ladder::default();
    let input_s = ladder.factor(&net, Complex::ZERO).re;
    let source_s = net.feeder.steady_s();
    let terminal_v = net.feeder.v0 * source_s / (source_s + input_s);
    let mut volts = vec![Complex::ZERO; net.nodes()];
    volts[TERMINAL] = Complex::real(terminal_v);
    ladder.back(&net, &mut volts);
    let mut lines = Vec::new();
    deal(circuit, net.probes.iter().map(|probe| probe.map_or(0.0, |node| volts[node].re)), &mut lines);
    Ok(Steady { lines, amperes: terminal_v * input_s, input_ohm: input_s.recip() })
}
