//! Published resistivities of soils, ohm metres: what a stated figure can be held against.

/// A soil and the range that its table gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoilResistivity {
    /// The table's word.
    pub soil: &'static str,
    /// Lower end, ohm metres.
    pub low_ohm_m: f64,
    /// Upper end, ohm metres.
    pub high_ohm_m: f64,
}

const fn soil(soil: &'static str, low_ohm_m: f64, high_ohm_m: f64) -> SoilResistivity {
    SoilResistivity { soil, low_ohm_m, high_ohm_m }
}

/// Where [`IEC`] stands.
pub const IEC_SOURCE: &str = "resistivities of IEC 60364-5-54 type, read in reprints";
/// A table of the kind in IEC 60364-5-54.
pub const IEC: [SoilResistivity; 12] = [
    soil("bog", 1.0, 30.0),
    soil("alluvium", 20.0, 100.0),
    soil("humus", 10.0, 150.0),
    soil("peat", 5.0, 100.0),
    soil("soft clay", 50.0, 50.0),
    soil("marl, compact clay", 100.0, 200.0),
    soil("clayey sand", 50.0, 500.0),
    soil("siliceous sand", 200.0, 300.0),
    soil("grass-covered stony subsoil", 300.0, 500.0),
    soil("chalky soil", 100.0, 300.0),
    soil("bare stony soil", 1500.0, 3000.0),
    soil("limestone", 1000.0, 5000.0),
];

/// Where [`DIN`] stands.
pub const DIN_SOURCE: &str = "resistivities of DIN type, read in reprints";
/// A table of the kind in German rules.
pub const DIN: [SoilResistivity; 5] = [
    soil("marsh", 8.0, 60.0),
    soil("arable soil, loam, clay, moist gravel", 20.0, 300.0),
    soil("moist sand", 200.0, 600.0),
    soil("dry sand or gravel", 200.0, 2000.0),
    soil("rocky soil", 300.0, 8000.0),
];

/// The least and the greatest of all soils in both tables, ohm metres.
pub fn published_ohm_m() -> (f64, f64) {
    let all = || IEC.iter().chain(&DIN);
    (
        all().map(|soil| soil.low_ohm_m).fold(f64::INFINITY, f64::min),
        all().map(|soil| soil.high_ohm_m).fold(0.0, f64::max),
    )
}
