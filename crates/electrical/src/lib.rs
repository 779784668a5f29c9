//! Energizer, netting, leakage and earth to the pulse at every post: pure maths in SI units.
//!
//! The tour, in the order in which a figure is made:
//!
//! - [`source`]: a data sheet becomes a charged capacitor behind a resistance (and an inductance).
//! - [`capacitance`], [`wire`], [`stakes`]: what netting, wire and earth stakes are, per metre and in ohms.
//! - [`circuit`]: what the keeper has built, as plain types: chains of netting, joins, breaks, shorts.
//! - [`mod@steady`]: the same circuit with the capacitor held at its voltage; resistances only.
//! - [`mod@pulse`]: the pulse in time: the greatest voltage at every mark, energy and charge.
//! - [`curve`]: the pulse over time at every place.
//! - [`earth`]: how far the energizer's earth pole rises.
//! - [`animal`]: what a touching animal takes, at every mark.
//! - [`impulse`]: duration, root mean square and the limit line of one impulse.
//!
//! Inside: a chain becomes a row of nodes (`row`), the circuit paths of nodes (`network`), which are
//! eliminated without a subtraction (`ladder`). A pulse is stepped in time (`stepper`), each path in
//! four strands side by side (`strands`); touches at
//! all places at once are summed in the Laplace plane (`touch`, `contour`), with the one oscillation
//! that an inductance can make (`ringing`). The two ways check each other in the tests, and both are
//! held against dense eigenvectors there.
//!
//! Netting wired alternately live and earthed is no row of nodes: it goes its own, slower way (`woven`).
//!
//! No geometry: a place is metres along a chain. No file, no screen. The model's assumptions: the
//! line has no inductance (netting of some hundred metres against pulses of tens of microseconds),
//! the source is linear, earth is one remote node.

pub mod animal;
pub mod capacitance;
pub mod circuit;
mod complex;
mod contour;
pub mod curve;
mod dense;
pub mod earth;
pub mod impulse;
mod ladder;
mod network;
pub mod pulse;
mod ringing;
mod row;
pub mod source;
pub mod stakes;
pub mod steady;
mod stepper;
mod strands;
mod touch;
mod validate;
pub mod wire;
mod woven;

pub use animal::{Animal, Animals, Touch, animals};
pub use capacitance::{CapacitanceFault, PartialCapacitance, capacitance_per_m, partial_capacitance_per_m};
pub use circuit::{
    Branch, Chain, ChainReadings, Circuit, CircuitFault, Closing, Earthed, EarthedStretch, Join, Line, LineReadings,
    Mesh, Place, Short, Side, Stretch,
};
pub use curve::{Curves, curves};
pub use earth::{EarthRise, earth_rise};
pub use pulse::{Accuracy, Energy, Peak, Pulse, PulseSolver, pulse};
pub use source::{DataSheet, Fit, SheetFault, Source, SourceModel, fit};
pub use stakes::{StakesFault, foot_ohm, layout_ohm, mutual_ohm, one_stake_ohm, stakes_ohm};
pub use steady::{Steady, steady};
