//! What pulls at a post and what the ground holds: corner pull, and Broms' short rigid stake.
//!
//! Units: newtons, metres, pascals, radians. Source: B. B. Broms, Lateral resistance of piles in cohesive soils and in
//! cohesionless soils, J. Soil Mech. Found. Div. ASCE 90(SM2) and 90(SM3), 1964; docs/sources.md, husbandry 2.1, 2.5, 2.6.
//! Ultimate values, without a safety factor; short and rigid means that the stake turns in the ground and does not bend.
//! Turf roots and suction are left out, so sand under turf holds more.

/// The ground about a spike, and whether it is wet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Soil {
    /// Clay, loam: holds by its undrained strength.
    Clay {
        /// Undrained shear strength, pascals.
        undrained_strength_pa: f64,
    },
    /// Sand, gravel: holds by friction.
    Sand {
        /// Angle of friction, radians.
        friction_angle_rad: f64,
        /// Weight of the ground, newtons per cubic metre.
        unit_weight_n_per_m3: f64,
    },
}

/// A spike or stake in the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spike {
    /// Length in the ground, metres.
    pub length_m: f64,
    /// Diameter, metres.
    pub diameter_m: f64,
}

/// Wet ground holds half as much (tent trade, docs/sources.md, husbandry S9).
pub const WET_SHARE: f64 = 0.5;

impl Soil {
    /// Sideways force that one spike holds when loaded `load_height_m` above the ground, newtons, ultimate.
    ///
    /// `wet` halves it.
    pub fn hold_n(&self, spike: Spike, load_height_m: f64, wet: bool) -> f64 {
        let dry_n = match *self {
            Soil::Clay { undrained_strength_pa } => {
                broms_clay_n(undrained_strength_pa, spike.length_m, spike.diameter_m, load_height_m)
            }
            Soil::Sand { friction_angle_rad, unit_weight_n_per_m3 } => {
                broms_sand_n(friction_angle_rad, unit_weight_n_per_m3, spike.length_m, spike.diameter_m, load_height_m)
            }
        };
        if wet { dry_n * WET_SHARE } else { dry_n }
    }

    /// The ground of which every hold is that share of this one's, sideways and upwards.
    ///
    /// Both of Broms' formulas are linear in the clay's strength and in the sand's weight, so this is exact.
    pub fn weakened(self, share: f64) -> Soil {
        match self {
            Soil::Clay { undrained_strength_pa } => Soil::Clay { undrained_strength_pa: undrained_strength_pa * share },
            Soil::Sand { friction_angle_rad, unit_weight_n_per_m3 } => {
                Soil::Sand { friction_angle_rad, unit_weight_n_per_m3: unit_weight_n_per_m3 * share }
            }
        }
    }

    /// Force that draws one smooth peg straight out, newtons, ultimate.
    pub fn uplift_n(&self, peg: Spike) -> f64 {
        match *self {
            Soil::Clay { undrained_strength_pa } => uplift_clay_n(CLAY_ADHESION, undrained_strength_pa, peg),
            Soil::Sand { unit_weight_n_per_m3, .. } => uplift_sand_n(unit_weight_n_per_m3, peg),
        }
    }
}

/// Share of a clay's strength that clings to a smooth peg: 0.3 to 0.5 (Tomlinson, from memory; husbandry 2.6).
pub const CLAY_ADHESION: f64 = 0.5;

/// Friction of sand on a smooth peg, radians: 20 degrees, and pressed to it as at rest, K = 1 (husbandry 2.6, D).
const SAND_ON_PEG_RAD: f64 = 20.0 * std::f64::consts::PI / 180.0;

/// Pull on the post at a turn, newtons, inward along the bisector: `2 T sin(turn / 2)`.
///
/// Both sides at tension `T`; friction at the post is ignored, so this is the upper bound.
/// `turn_rad` is the exterior angle, 0 (straight on) to π (doubling back). Exact to rounding.
/// Source: statics, docs/sources.md, husbandry 2.1.
///
/// ```
/// let pull_n = geometry::corner_pull_n(100.0, 90_f64.to_radians());
/// assert!((pull_n - 141.4214).abs() < 1e-4);
/// ```
pub fn corner_pull_n(tension_n: f64, turn_rad: f64) -> f64 {
    2.0 * tension_n * (turn_rad / 2.0).sin()
}

/// Ultimate sideways load of a short rigid stake in clay, newtons (Broms 1964, SM2, free head, closed form).
///
/// `9 su d f` with `f = -B/2 + sqrt(B^2/4 + (L - 1.5 d)^2)` and `B = 4 e + 2 L + 3 d`; the first 1.5 diameters carry
/// nothing. `load_height_m` is e, above the ground. 0 where the stake is no longer than its dead depth.
pub fn broms_clay_n(undrained_strength_pa: f64, length_m: f64, diameter_m: f64, load_height_m: f64) -> f64 {
    9.0 * undrained_strength_pa * diameter_m * clay_depth_m(length_m, diameter_m, load_height_m)
}

/// The clay's undrained strength from a pull test on a stake, pascals: [`broms_clay_n`] the other way round.
///
/// `None` where the stake is no longer than its dead depth and says nothing.
pub fn broms_clay_strength_pa(pull_n: f64, length_m: f64, diameter_m: f64, load_height_m: f64) -> Option<f64> {
    let depth_m = clay_depth_m(length_m, diameter_m, load_height_m);
    (depth_m > 0.0).then(|| pull_n / (9.0 * diameter_m * depth_m))
}

/// Broms' f: how far below the dead depth the shear force vanishes, metres.
fn clay_depth_m(length_m: f64, diameter_m: f64, load_height_m: f64) -> f64 {
    let live_m = length_m - 1.5 * diameter_m;
    if live_m <= 0.0 {
        return 0.0;
    }
    let half_b = 2.0 * load_height_m + length_m + 1.5 * diameter_m;
    // The textbook form subtracts two nearly equal numbers; this one does not.
    live_m * live_m / (half_b + half_b.hypot(live_m))
}

/// Ultimate sideways load of a short rigid stake in sand, newtons: `0.5 g d L^3 Kp / (e + L)` (Broms 1964, SM3).
pub fn broms_sand_n(
    friction_angle_rad: f64,
    unit_weight_n_per_m3: f64,
    length_m: f64,
    diameter_m: f64,
    load_height_m: f64,
) -> f64 {
    if length_m <= 0.0 {
        return 0.0;
    }
    0.5 * unit_weight_n_per_m3 * diameter_m * length_m.powi(3) * passive_pressure_ratio(friction_angle_rad)
        / (load_height_m + length_m)
}

/// Rankine's passive pressure ratio `Kp = tan^2(45 deg + phi/2)`.
pub fn passive_pressure_ratio(friction_angle_rad: f64) -> f64 {
    (std::f64::consts::FRAC_PI_4 + friction_angle_rad / 2.0).tan().powi(2)
}

/// Force that draws a smooth peg out of clay, newtons: `alpha su pi d L` (docs/sources.md, husbandry 2.6; alpha 0.3 to 0.5).
pub fn uplift_clay_n(adhesion: f64, undrained_strength_pa: f64, spike: Spike) -> f64 {
    adhesion * undrained_strength_pa * std::f64::consts::PI * spike.diameter_m * spike.length_m
}

/// Force that draws a smooth peg out of sand, newtons: `0.5 g L^2 K tan(delta) pi d` (husbandry 2.6, K 1, delta 20 degrees).
pub fn uplift_sand_n(unit_weight_n_per_m3: f64, spike: Spike) -> f64 {
    0.5 * unit_weight_n_per_m3
        * spike.length_m.powi(2)
        * SAND_ON_PEG_RAD.tan()
        * std::f64::consts::PI
        * spike.diameter_m
}
