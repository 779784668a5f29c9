//! What stands in for a statement that was not made: one constant a key, its source beside it.
//!
//! The schema, the accessors of the model and the list of what is assumed all read these constants, so
//! that a default is stated once. Sources: `common practice, no source` unless another is named; the
//! ranges stand in `docs/model.md`.

pub mod bracing;
pub mod rates;

/// The source named for a default that rests on habit alone.
pub const COMMON_PRACTICE: &str = "common practice, no source";
/// The source named for a default that was derived by arithmetic from another value.
pub const DERIVED: &str = "derived; common practice for the inputs";

/// The gap under the bottom line that is allowed with grown birds, metres: common practice (75 to 100 mm).
pub const GAP_UNDER_NET_M: f64 = 0.075;
/// The same with chicks or pullets in the run, metres: common practice.
pub const GAP_UNDER_NET_YOUNG_M: f64 = 0.05;
/// Soil resistivity, ohm metres: damp loam; IEC 60364-5-54 type tables give 20 to 300 for arable soil.
pub const RESISTIVITY_OHM_M: f64 = 100.0;
/// Undrained shear strength, kilopascals: the upper end of medium clay, US Army TM 5-818-1, table 2-2.
pub const UNDRAINED_STRENGTH_KPA: f64 = 50.0;
/// Unit weight of sand, kilonewtons per cubic metre, where only its friction angle is stated.
pub const UNIT_WEIGHT_KN_PER_M3: f64 = 17.0;
/// Whether the ground is wet, which halves what a spike holds.
pub const WET: bool = false;
/// Clearance kept from a keep-out, metres.
pub const CLEARANCE_M: f64 = 0.0;
/// Whether a keep-out may stand inside a run.
pub const MAY_ENCLOSE: bool = false;
/// Metres a pixel of a picture of which no place is stated: common practice for aerial pictures (0.1 to 0.2).
pub const UNDERLAY_M_PER_PX: f64 = 0.1;
/// Width and height of a picture whose size is not stated, pixels.
pub const UNDERLAY_PX: [u32; 2] = [1000, 1000];
/// How much of a picture is seen over the paper: as much as leaves 3:1 to every ink on black and on white.
pub const UNDERLAY_OPACITY: f64 = 0.35;
/// How many nets of a kind the keeper owns.
pub const NET_COUNT: u32 = 1;
/// Height of a net, metres.
pub const NET_HEIGHT_M: f64 = 1.1;
/// Heights of the live lines, metres: the bottom line of a net is dead, the next, at 50 mm, is live;
/// about 50 mm apart low down and wider above.
pub const LIVE_LINE_HEIGHTS_M: [f64; 11] = [0.05, 0.10, 0.15, 0.20, 0.26, 0.33, 0.42, 0.54, 0.69, 0.87, 1.08];
/// Resistance of one live line, ohms per metre: three stainless filaments of 0.16 mm.
pub const LINE_RESISTANCE_OHM_PER_M: f64 = 11.9;
/// Tension of a whole net pulled taut by hand, newtons.
pub const TENSION_N: f64 = 100.0;
/// Spikes under one post.
pub const SPIKES_PER_POST: u32 = 1;
/// Length of a spike in the ground, metres.
pub const SPIKE_LENGTH_M: f64 = 0.18;
/// Diameter of a spike, metres.
pub const SPIKE_DIAMETER_M: f64 = 0.01;
/// Mass of a net with its posts per metre of its length, kilograms: 7 kg for 50 m.
pub const MASS_KG_PER_M: f64 = 0.14;
/// Stored energy of the energizer that is assumed where none is stated, joules.
pub const STORED_J: f64 = 1.0;
/// No-load voltage of that energizer, kilovolts.
pub const NO_LOAD_KV: f64 = 7.0;
/// Its voltage at 500 ohms, kilovolts.
pub const KV_AT_500_OHM: f64 = 5.0;
/// Its output at 500 ohms, joules.
pub const OUTPUT_J_AT_500_OHM: f64 = 0.7;
/// How many energizers of a kind the keeper owns.
pub const ENERGIZER_COUNT: u32 = 1;
/// Length of a brace stake, metres.
pub const BRACE_STAKE_LENGTH_M: f64 = 0.3;
/// Diameter of a brace stake, metres.
pub const BRACE_STAKE_DIAMETER_M: f64 = 0.012;
/// Height of the guy's loop on its stake, metres above ground.
pub const BRACE_LOOP_HEIGHT_M: f64 = 0.05;
/// Distance from the net to a brace's stake, metres.
pub const STAND_OFF_M: f64 = 1.0;
/// Safety factor below which a brace is advised.
pub const SAFETY_FACTOR: f64 = 2.0;
/// Cut of the mower, metres.
pub const MOWER_WIDTH_M: f64 = 0.53;
/// Share of a cut that overlaps the one before.
pub const MOWER_OVERLAP: f64 = 0.1;
/// Walking speed behind the mower, metres a second: 4 km/h.
pub const MOWER_SPEED_M_PER_S: f64 = 1.11;
/// Height of the cut, metres.
pub const CUT_HEIGHT_M: f64 = 0.025;
/// Share of the time in which the mower mows; ASABE tables give 0.75 to 0.90 for rotary mowers.
pub const MOWER_EFFICIENCY: f64 = 0.75;
/// Length of an earth stake in the ground, metres.
pub const EARTH_STAKE_LENGTH_M: f64 = 1.0;
/// Diameter of an earth stake, metres.
pub const EARTH_STAKE_DIAMETER_M: f64 = 0.012;
/// Volts asked for at the weakest post, kilovolts: the floor of a published trial with badgers on
/// polymer wire (Poole, Western and McKillop, Crop Protection 23, 2004; read in its abstract).
pub const TARGET_KV: f64 = 4.0;
/// Id of the rule by which birds are counted against ground: the keeper's own.
pub const BIRDS_RULE: &str = "own";
/// The least ground a bird by the keeper's own rule, square metres: as of a rotated paddock by Regulation (EC)
/// 589/2008, Annex II 1(c).
pub const MIN_M2_PER_BIRD: f64 = 2.5;
/// The source of [`MIN_M2_PER_BIRD`].
pub const MIN_M2_PER_BIRD_SOURCE: &str = "a rotated paddock by Regulation (EC) 589/2008, Annex II 1(c)";
/// The source of [`TARGET_KV`].
pub const TARGET_SOURCE: &str = "floor of a field trial with badgers, Crop Protection 23 (2004), read in its abstract";
/// Length of a coop, metres.
pub const COOP_LENGTH_M: f64 = 6.0;
/// Width of a coop, metres.
pub const COOP_WIDTH_M: f64 = 2.4;
/// Birds of a coop.
pub const BIRDS: u32 = 100;
/// Heading of a coop, degrees clockwise from north.
pub const HEADING_DEG: f64 = 0.0;
/// Clear width of a gate on foot, metres: a keeper with a bucket in each hand.
pub const FOOT_GATE_M: f64 = 1.0;
/// Clear width of a gate for a quad and trailer, metres: 1.5 m of trailer and room on both sides.
pub const WHEELS_GATE_M: f64 = 2.5;
/// Room beyond its own width that a coop wants in its gate, metres.
pub const COOP_GATE_ROOM_M: f64 = 1.0;
/// Leakage of the fence, siemens per metre of net: grass touching lightly.
pub const LEAKAGE_S_PER_M: f64 = 1e-5;
/// Leakage of a clean, dry net, siemens per metre: the lower end of the range shown until a reading.
pub const LEAKAGE_CLEAN_S_PER_M: f64 = 2e-7;
/// Leakage of a net in long wet grass, siemens per metre: the upper end of that range.
pub const LEAKAGE_LONG_WET_S_PER_M: f64 = 1e-4;
/// Width of the mown strip, metres.
pub const STRIP_WIDTH_M: f64 = 1.2;
/// Earth stakes of a run.
pub const EARTH_STAKE_COUNT: u32 = 1;
/// Distance between earth stakes, metres.
pub const EARTH_STAKE_SPACING_M: f64 = 3.0;
/// How far the earth lead reaches from the energizer, metres.
pub const EARTH_LEAD_M: f64 = 5.0;
/// Resistance of the lead from the energizer to the fence, ohms.
pub const LEAD_OHM: f64 = 0.0;
/// Whether a run's outline is closed.
pub const CLOSED: bool = true;
/// Whether the live lines of a closed run are clipped together where its chain closes.
pub const LIVE_LOOP: bool = true;
/// Voltage of an overhead line of which none is stated: taken as above 1 kV, the stricter class.
pub const OVERHEAD_LINE_VOLTAGE_KV: f64 = 11.0;
