//! Degrees to metres and back: the transverse Mercator about the plan's origin.
//!
//! A plan's places are metres east and north of its origin, in the transverse Mercator on WGS 84 whose
//! centre is that origin, with scale 1 there and no false origin. [`Local`] is that projection.
//!
//! **Method.** Krüger's series in the third flattening n, to n^6, over the conformal latitude
//! (L. Krüger, *Konforme Abbildung des Erdellipsoids in der Ebene*, 1912; extended and bounded by
//! C. F. F. Karney, *Transverse Mercator with an accuracy of a few nanometers*, Journal of Geodesy 85(8),
//! 2011, equations 7-14, 35 and 36).
//!
//! **Error.** Below 5 nm within 3,900 km of the origin's meridian (Karney, section 4), to which the
//! rounding of `f64` adds some nanometres; there and back closes within 10 nm.
//!
//! **Where it ends.** Distances on the plane are true at the origin's meridian and too long by
//! `east² / (2 R²)` beside it: 0.3 mm in 1 km at 5 km east, 12 cm in 1 km at 100 km. A paddock is far
//! smaller, so [`Local`] refuses whatever lies more than [`REACH_M`] off. The series itself turns to garbage
//! some 80 degrees from the meridian, and a point on the far side of the globe must never be asked for.
//! Heights are left out: a paddock at 1,000 m above the ellipsoid is larger than its plan by 0.016 %.

use plan::Point;

/// How far from the origin a place may lie, metres, east or north.
pub const REACH_M: f64 = 100_000.0;

/// An ellipsoid of revolution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ellipsoid {
    /// Half of the equator's diameter, metres.
    pub equatorial_radius_m: f64,
    /// Flattening, `(a - b) / a`.
    pub flattening: f64,
}

/// The world geodetic system of 1984, the datum of GeoJSON (RFC 7946, section 4).
pub const WGS_84: Ellipsoid = Ellipsoid { equatorial_radius_m: 6_378_137.0, flattening: 1.0 / 298.257_223_563 };

/// A place on the globe, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Degrees {
    /// North positive, -90 to 90.
    pub latitude_deg: f64,
    /// East positive, -180 to 180.
    pub longitude_deg: f64,
}

/// Why a place cannot be projected.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ProjectionError {
    /// `projection/not-on-the-globe`: no latitude or longitude, or not finite.
    #[error("projection/not-on-the-globe: latitude {latitude_deg}, longitude {longitude_deg}")]
    NotOnTheGlobe {
        /// What stands as latitude, degrees.
        latitude_deg: f64,
        /// What stands as longitude, degrees.
        longitude_deg: f64,
    },
    /// `projection/too-far`: more than [`REACH_M`] from the origin.
    #[error("projection/too-far: more than {REACH_M} m from the origin")]
    TooFar,
}

/// The transverse Mercator of any ellipsoid and scale about a central meridian, northing from the equator.
///
/// It checks nothing and knows no reach: [`Local`] does.
#[derive(Clone, Copy, Debug)]
pub struct TransverseMercator {
    eccentricity: f64,
    scaled_radius_m: f64,
    forward: [f64; 6],
    inverse: [f64; 6],
}

impl TransverseMercator {
    /// The projection of that ellipsoid with that scale on its central meridian.
    pub fn new(ellipsoid: Ellipsoid, scale: f64) -> Self {
        let n = ellipsoid.flattening / (2.0 - ellipsoid.flattening);
        let n2 = n * n;
        // Circumference of a meridian over 2 π: Krüger's series, exact to n^6.
        let rectifying_radius_m =
            ellipsoid.equatorial_radius_m / (1.0 + n) * (1.0 + n2 / 4.0 + n2 * n2 / 64.0 + n2 * n2 * n2 / 256.0);
        Self {
            eccentricity: (ellipsoid.flattening * (2.0 - ellipsoid.flattening)).sqrt(),
            scaled_radius_m: scale * rectifying_radius_m,
            forward: series(&FORWARD, n),
            inverse: series(&INVERSE, n),
        }
    }

    /// Metres east of the meridian and north of the equator, from a latitude and the longitude's distance
    /// from the meridian, radians.
    pub fn forward(&self, latitude_rad: f64, longitude_rad: f64) -> (f64, f64) {
        let (sin_lon, cos_lon) = longitude_rad.sin_cos();
        let tau = conformal_tan(latitude_rad.tan(), self.eccentricity);
        // The spherical transverse Mercator of the conformal latitude (equation 10).
        let xi = tau.atan2(cos_lon);
        let eta = (sin_lon / tau.hypot(cos_lon)).asinh();
        let (mut north, mut east) = (xi, eta);
        for (index, coefficient) in self.forward.iter().enumerate() {
            let multiple = 2.0 * (index + 1) as f64;
            let (sin_xi, cos_xi) = (multiple * xi).sin_cos();
            north += coefficient * sin_xi * (multiple * eta).cosh();
            east += coefficient * cos_xi * (multiple * eta).sinh();
        }
        (self.scaled_radius_m * east, self.scaled_radius_m * north)
    }

    /// The latitude and the longitude's distance from the meridian, radians, from metres east of the
    /// meridian and north of the equator.
    pub fn inverse(&self, east_m: f64, north_m: f64) -> (f64, f64) {
        let (xi, eta) = (north_m / self.scaled_radius_m, east_m / self.scaled_radius_m);
        let (mut north, mut east) = (xi, eta);
        for (index, coefficient) in self.inverse.iter().enumerate() {
            let multiple = 2.0 * (index + 1) as f64;
            let (sin_xi, cos_xi) = (multiple * xi).sin_cos();
            north -= coefficient * sin_xi * (multiple * eta).cosh();
            east -= coefficient * cos_xi * (multiple * eta).sinh();
        }
        let (sin_north, cos_north) = north.sin_cos();
        let sinh_east = east.sinh();
        let tau = sin_north / sinh_east.hypot(cos_north);
        (geographic_tan(tau, self.eccentricity).atan(), sinh_east.atan2(cos_north))
    }
}

/// Tangent of the conformal latitude from that of the latitude (Karney, equations 7-9).
fn conformal_tan(tan: f64, eccentricity: f64) -> f64 {
    let secant = tan.hypot(1.0);
    let sigma = (eccentricity * (eccentricity * tan / secant).atanh()).sinh();
    tan * sigma.hypot(1.0) - sigma * secant
}

/// Tangent of the latitude from that of the conformal latitude: Newton's method (equations 19-21), which
/// doubles its digits; from the spherical start three rounds reach rounding, and five are taken at most.
fn geographic_tan(conformal: f64, eccentricity: f64) -> f64 {
    let e2 = eccentricity * eccentricity;
    let mut tan = conformal / (1.0 - e2);
    for _ in 0..5 {
        let missed = conformal_tan(tan, eccentricity);
        let step =
            (conformal - missed) / missed.hypot(1.0) * (1.0 + (1.0 - e2) * tan * tan) / ((1.0 - e2) * tan.hypot(1.0));
        tan += step;
        if step.abs() <= 1e-16 * tan.abs().max(1.0) {
            break;
        }
    }
    tan
}

/// Coefficients of a series in n: row j holds those of n^(j + 1) to n^6.
type Rows = [&'static [f64]; 6];

/// Karney 2011, equation 35.
const FORWARD: Rows = [
    &[1.0 / 2.0, -2.0 / 3.0, 5.0 / 16.0, 41.0 / 180.0, -127.0 / 288.0, 7891.0 / 37800.0],
    &[13.0 / 48.0, -3.0 / 5.0, 557.0 / 1440.0, 281.0 / 630.0, -1983433.0 / 1935360.0],
    &[61.0 / 240.0, -103.0 / 140.0, 15061.0 / 26880.0, 167603.0 / 181440.0],
    &[49561.0 / 161280.0, -179.0 / 168.0, 6601661.0 / 7257600.0],
    &[34729.0 / 80640.0, -3418889.0 / 1995840.0],
    &[212378941.0 / 319334400.0],
];

/// Karney 2011, equation 36.
const INVERSE: Rows = [
    &[1.0 / 2.0, -2.0 / 3.0, 37.0 / 96.0, -1.0 / 360.0, -81.0 / 512.0, 96199.0 / 604800.0],
    &[1.0 / 48.0, 1.0 / 15.0, -437.0 / 1440.0, 46.0 / 105.0, -1118711.0 / 3870720.0],
    &[17.0 / 480.0, -37.0 / 840.0, -209.0 / 4480.0, 5569.0 / 90720.0],
    &[4397.0 / 161280.0, -11.0 / 504.0, -830251.0 / 7257600.0],
    &[4583.0 / 161280.0, -108847.0 / 3991680.0],
    &[20648693.0 / 638668800.0],
];

fn series(rows: &Rows, n: f64) -> [f64; 6] {
    let mut sums = [0.0; 6];
    let mut lowest = n;
    for (sum, row) in sums.iter_mut().zip(rows) {
        *sum = lowest * row.iter().rev().fold(0.0, |sum, coefficient| sum * n + coefficient);
        lowest *= n;
    }
    sums
}

/// The projection of a plan: WGS 84, scale 1, its origin at (0, 0).
#[derive(Clone, Copy, Debug)]
pub struct Local {
    mercator: TransverseMercator,
    longitude_deg: f64,
    north_m: f64,
}

impl Local {
    /// The projection about that origin.
    ///
    /// # Errors
    /// Where the origin is not on the globe.
    pub fn about(origin: Degrees) -> Result<Self, ProjectionError> {
        let origin = origin.checked()?;
        let mercator = TransverseMercator::new(WGS_84, 1.0);
        let (_, north_m) = mercator.forward(origin.latitude_deg.to_radians(), 0.0);
        Ok(Self { mercator, longitude_deg: origin.longitude_deg, north_m })
    }

    /// The metres of a place on the globe.
    ///
    /// # Errors
    /// Where it is not on the globe, or more than [`REACH_M`] east, west, north or south of the origin.
    pub fn to_metres(&self, place: Degrees) -> Result<Point, ProjectionError> {
        let place = place.checked()?;
        let longitude_deg = wrapped(place.longitude_deg - self.longitude_deg);
        let (east_m, north_m) = self.mercator.forward(place.latitude_deg.to_radians(), longitude_deg.to_radians());
        within_reach(Point::new(east_m, north_m - self.north_m))
    }

    /// The place on the globe of a plan's point.
    ///
    /// # Errors
    /// Where the point is more than [`REACH_M`] off, or not finite.
    pub fn to_degrees(&self, point: Point) -> Result<Degrees, ProjectionError> {
        let point = within_reach(point)?;
        let (latitude_rad, longitude_rad) = self.mercator.inverse(point.east_m, point.north_m + self.north_m);
        Ok(Degrees {
            latitude_deg: latitude_rad.to_degrees(),
            longitude_deg: wrapped(self.longitude_deg + longitude_rad.to_degrees()),
        })
    }
}

impl Degrees {
    /// Itself where it is on the globe.
    fn checked(self) -> Result<Self, ProjectionError> {
        // A comparison with NaN is false, so this refuses what is not finite too.
        if self.latitude_deg.abs() <= 90.0 && self.longitude_deg.abs() <= 180.0 {
            Ok(self)
        } else {
            Err(ProjectionError::NotOnTheGlobe { latitude_deg: self.latitude_deg, longitude_deg: self.longitude_deg })
        }
    }
}

/// A longitude, or a difference of two, brought to -180 to 180.
pub(crate) fn wrapped(longitude_deg: f64) -> f64 {
    if longitude_deg > 180.0 {
        longitude_deg - 360.0
    } else if longitude_deg < -180.0 {
        longitude_deg + 360.0
    } else {
        longitude_deg
    }
}

fn within_reach(point: Point) -> Result<Point, ProjectionError> {
    if point.east_m.abs() <= REACH_M && point.north_m.abs() <= REACH_M {
        Ok(point)
    } else {
        Err(ProjectionError::TooFar)
    }
}
/// From the metres of one plan to those of another.
pub struct Between {
    from: Local,
    to: Local,
}

/// The way from one origin's metres to another's; `None` where one of them lies nowhere.
pub fn between(from: &plan::Origin, to: &plan::Origin) -> Option<Between> {
    let local = |origin: &plan::Origin| {
        let degrees = Degrees { latitude_deg: origin.latitude_deg, longitude_deg: origin.longitude_deg };
        Local::about(degrees).ok()
    };
    Some(Between { from: local(from)?, to: local(to)? })
}

impl Between {
    /// Where a place of the one lies in the other; `None` beyond the projection's reach.
    pub fn of(&self, at: Point) -> Option<Point> {
        self.to.to_metres(self.from.to_degrees(at).ok()?).ok()
    }
}
