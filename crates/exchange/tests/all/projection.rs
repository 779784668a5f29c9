//! The projection against published figures, and against itself.

use exchange::projection::{Degrees, Ellipsoid, Local, ProjectionError, TransverseMercator, WGS_84};
use plan::Point;
use proptest::prelude::*;

/// A. Airy's ellipsoid of 1830, from its two axes in metres.
const AIRY_1830: Ellipsoid =
    Ellipsoid { equatorial_radius_m: 6_377_563.396, flattening: (6_377_563.396 - 6_356_256.909) / 6_377_563.396 };
/// Clarke's ellipsoid of 1866, from its two axes in metres.
const CLARKE_1866: Ellipsoid =
    Ellipsoid { equatorial_radius_m: 6_378_206.4, flattening: (6_378_206.4 - 6_356_583.8) / 6_378_206.4 };

fn dms(degrees: f64, minutes: f64, seconds: f64) -> f64 {
    degrees + minutes / 60.0 + seconds / 3600.0
}

#[test]
fn the_grid_meets_published_figures() {
    // ellipsoid, scale, meridian, latitude of the false origin, its east and north, place, expected east and north,
    // tolerance, source
    let ordnance = (dms(52.0, 39.0, 27.2531), dms(1.0, 43.0, 4.5177));
    for (ellipsoid, scale, meridian, from, false_east, false_north, place, want, tolerance_m, source) in [
        (
            WGS_84,
            0.9996,
            -3.0,
            0.0,
            500_000.0,
            0.0,
            (52.0, -3.0),
            (500_000.000, 5_761_038.213),
            1e-3,
            "UTM zone 30 N, facts 8.5, two libraries agree",
        ),
        (
            WGS_84,
            0.9996,
            -3.0,
            0.0,
            500_000.0,
            0.0,
            (52.0, -1.5),
            (602_972.982, 5_762_100.490),
            1e-3,
            "UTM zone 30 N, facts 8.5, two libraries agree",
        ),
        (
            AIRY_1830,
            0.999_601_271_7,
            -2.0,
            49.0,
            400_000.0,
            -100_000.0,
            ordnance,
            (651_409.903, 313_177.270),
            1e-3,
            "Ordnance Survey, A guide to coordinate systems in Great Britain, worked example",
        ),
        (
            CLARKE_1866,
            0.9996,
            -75.0,
            0.0,
            0.0,
            0.0,
            (40.5, -73.5),
            (127_106.467, 4_484_124.434),
            1e-2,
            "Snyder, USGS Professional Paper 1395 (1987), p. 269: 127,106.5 and 4,484,124.4, recomputed to the mm",
        ),
    ] {
        let grid = TransverseMercator::new(ellipsoid, scale);
        let (latitude, longitude): (f64, f64) = place;
        let (_, north_of_origin) = grid.forward(f64::to_radians(from), 0.0);
        let (east, north) = grid.forward(latitude.to_radians(), (longitude - meridian).to_radians());
        let got = (east + false_east, north - north_of_origin + false_north);
        assert!(
            (got.0 - want.0).abs() < tolerance_m && (got.1 - want.1).abs() < tolerance_m,
            "{got:.4?}; {source}: {want:.3?}"
        );
        let (back_latitude, back_longitude) = grid.inverse(east, north);
        assert!((back_latitude.to_degrees() - latitude).abs() < 1e-12, "{source}");
        assert!((back_longitude.to_degrees() - (longitude - meridian)).abs() < 1e-12, "{source}");
    }
}

#[test]
fn a_degree_is_as_long_as_the_ellipsoid_has_it() {
    // Half a degree either side: the mean over the degree, which the facts give as the figure at its middle.
    let middle = Degrees { latitude_deg: 52.0, longitude_deg: 0.0 };
    let local = Local::about(middle).unwrap();
    let (step_deg, tolerance_m) = (0.01, 1e-3);
    let north = local.to_metres(Degrees { latitude_deg: 52.0 + step_deg, ..middle }).unwrap();
    let south = local.to_metres(Degrees { latitude_deg: 52.0 - step_deg, ..middle }).unwrap();
    let metres = (north.north_m - south.north_m) / (2.0 * step_deg);
    assert!((metres - 111_267.353).abs() < tolerance_m, "{metres:.4}; facts 8.5: 111,267.353 m");
    let east = local.to_metres(Degrees { longitude_deg: step_deg, ..middle }).unwrap();
    let metres = east.east_m / step_deg;
    assert!((metres - 68_678.016).abs() < tolerance_m, "{metres:.4}; facts 8.5: 68,678.016 m");
}

#[test]
fn the_plane_is_true_to_the_series_that_it_is_cut_from() {
    // Redfearn's own expansion of the easting and northing to the fourth order (J. C. B. Redfearn, Transverse
    // Mercator formulae, Empire Survey Review 9(69), 1948): another road to the same plane, good to 0.01 mm at 5 km.
    let origin = Degrees { latitude_deg: 46.5, longitude_deg: -24.5 };
    let local = Local::about(origin).unwrap();
    let (flattening, a) = (WGS_84.flattening, WGS_84.equatorial_radius_m);
    let e2 = flattening * (2.0 - flattening);
    for (north_deg, east_deg) in [(0.0, 0.06), (0.04, 0.0), (0.03, -0.05), (-0.045, 0.065), (1e-5, 1e-5)] {
        let place = Degrees { latitude_deg: 46.5 + north_deg, longitude_deg: -24.5 + east_deg };
        let (latitude, longitude) = (place.latitude_deg.to_radians(), f64::to_radians(east_deg));
        let (sin, cos) = latitude.sin_cos();
        let nu = a / (1.0 - e2 * sin * sin).sqrt();
        let rho = nu * (1.0 - e2) / (1.0 - e2 * sin * sin);
        let (t, psi, p) = (latitude.tan(), nu / rho, longitude * cos);
        let east = nu * p * (1.0 + p * p / 6.0 * (psi - t * t));
        let north = meridian_m(46.5_f64.to_radians(), latitude)
            + nu * sin / cos * p * p / 2.0 * (1.0 + p * p / 12.0 * (4.0 * psi * psi + psi - t * t));
        let got = local.to_metres(place).unwrap();
        assert!((got.east_m - east).abs() < 1e-4, "{} against {east}", got.east_m);
        assert!((got.north_m - north).abs() < 1e-4, "{} against {north}", got.north_m);
    }
}

/// Length of the meridian from one latitude to another, metres: Simpson's rule on the radius of curvature.
fn meridian_m(from: f64, to: f64) -> f64 {
    let e2 = WGS_84.flattening * (2.0 - WGS_84.flattening);
    let radius_m = |latitude: f64| {
        WGS_84.equatorial_radius_m * (1.0 - e2) / (1.0 - e2 * latitude.sin() * latitude.sin()).powf(1.5)
    };
    let steps = 64;
    let width = (to - from) / f64::from(steps);
    (0..steps)
        .map(|step| {
            let low = from + width * f64::from(step);
            width / 6.0 * (radius_m(low) + 4.0 * radius_m(low + width / 2.0) + radius_m(low + width))
        })
        .sum()
}

#[test]
fn the_antimeridian_is_no_edge() {
    let local = Local::about(Degrees { latitude_deg: -16.8, longitude_deg: 179.999 }).unwrap();
    let east = local.to_metres(Degrees { latitude_deg: -16.8, longitude_deg: -179.999 }).unwrap();
    // Two thousandths of a degree of longitude, as anywhere else on that parallel.
    let elsewhere = Local::about(Degrees { latitude_deg: -16.8, longitude_deg: 10.0 }).unwrap();
    let want = elsewhere.to_metres(Degrees { latitude_deg: -16.8, longitude_deg: 10.002 }).unwrap();
    assert!((east.east_m - want.east_m).abs() < 1e-6 && (east.north_m - want.north_m).abs() < 1e-6);
    let back = local.to_degrees(east).unwrap();
    assert!((back.longitude_deg + 179.999).abs() < 1e-10, "{}", back.longitude_deg);
}

#[test]
fn what_is_far_off_or_nowhere_is_refused() {
    let origin = Degrees { latitude_deg: 52.0, longitude_deg: -3.0 };
    let local = Local::about(origin).unwrap();
    for (latitude_deg, longitude_deg) in [(53.0, -3.0), (52.0, -1.5), (-52.0, 177.0), (52.0, 177.0), (90.0, 0.0)] {
        let refused = local.to_metres(Degrees { latitude_deg, longitude_deg });
        assert_eq!(refused, Err(ProjectionError::TooFar), "{latitude_deg} {longitude_deg}");
    }
    for (latitude_deg, longitude_deg) in [(90.1, 0.0), (0.0, 180.1), (f64::NAN, 0.0), (0.0, f64::INFINITY)] {
        let nowhere = Degrees { latitude_deg, longitude_deg };
        assert!(matches!(Local::about(nowhere), Err(ProjectionError::NotOnTheGlobe { .. })));
        assert!(matches!(local.to_metres(nowhere), Err(ProjectionError::NotOnTheGlobe { .. })));
    }
    for point in [Point::new(100_001.0, 0.0), Point::new(0.0, -100_001.0), Point::new(f64::NAN, 0.0)] {
        assert_eq!(local.to_degrees(point), Err(ProjectionError::TooFar));
    }
}

proptest! {
    /// There and back again, anywhere on the globe and up to the edge of what is allowed.
    #[test]
    fn there_and_back_closes_within_ten_nanometres(
        latitude_deg in -89.0_f64..89.0,
        longitude_deg in -180.0_f64..180.0,
        east_m in prop_oneof![-1.0_f64..1.0, -5e3..5e3, -1e5..1e5],
        north_m in prop_oneof![-1.0_f64..1.0, -5e3..5e3, -1e5..1e5],
    ) {
        let local = Local::about(Degrees { latitude_deg, longitude_deg }).unwrap();
        let place = local.to_degrees(Point::new(east_m, north_m)).unwrap();
        prop_assert!(place.latitude_deg.abs() <= 90.0 && place.longitude_deg.abs() <= 180.0);
        if let Ok(back) = local.to_metres(place) {
            prop_assert!((back.east_m - east_m).hypot(back.north_m - north_m) < 1e-8,
                "{:e}", (back.east_m - east_m).hypot(back.north_m - north_m));
        } else {
            prop_assert!(east_m.abs() > 1e5 - 1e-6 || north_m.abs() > 1e5 - 1e-6);
        }
    }
}
