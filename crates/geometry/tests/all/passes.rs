//! Laws of the lines walked behind the mower.

use std::f64::consts::TAU;

use geometry::{Outline, PassesRequest, Point, StripWidth, passes, region};
use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

/// A star-shaped ring with sides far longer than a strip is wide: radii in metres, one a corner.
fn ring(radii_m: &[f64]) -> Vec<Point> {
    let count = radii_m.len() as f64;
    let at = |(index, &radius_m): (usize, &f64)| {
        let angle_rad = TAU * index as f64 / count;
        Point::new(radius_m * angle_rad.cos(), radius_m * angle_rad.sin())
    };
    radii_m.iter().enumerate().map(at).collect()
}

fn request<'a>(outline: &'a Outline, keep_outs: &'a [Outline], overlap: f64) -> PassesRequest<'a> {
    PassesRequest { outline, width: StripWidth::even(1.2), mower_width_m: 0.53, overlap, keep_outs, mown: &[] }
}

proptest! {
    #[test]
    fn passes_on_open_ground_are_passes_times_length(
        radii_m in proptest::collection::vec(40.0..60.0_f64, 4..9), overlap in 0.0..0.6_f64,
    ) {
        let outline = Outline::closed(&ring(&radii_m));
        let walked = passes(&request(&outline, &[], overlap)).unwrap();
        let want_m = walked.lines.len() as f64 * outline.length_m();
        prop_assert!((walked.length_m - want_m).abs() < 1e-6 * want_m, "{} {want_m}", walked.length_m);
        prop_assert_eq!(walked.turnings as usize, walked.lines.len() - 1);
    }

    #[test]
    fn no_pass_lies_in_a_keep_out_and_what_is_cut_out_lies_in_one(
        radii_m in proptest::collection::vec(40.0..60.0_f64, 4..9),
        east_m in -60.0..60.0_f64, north_m in -60.0..60.0_f64, size_m in 0.3..30.0_f64,
    ) {
        let outline = Outline::closed(&ring(&radii_m));
        let corners = [(0.0, 0.0), (size_m, 0.0), (size_m, size_m), (0.0, size_m)];
        let pond: Vec<Point> = corners.map(|(east, north)| Point::new(east_m + east, north_m + north)).to_vec();
        let pond = [Outline::closed(&pond)];
        let walked = passes(&request(&outline, &pond, 0.1)).unwrap();
        for line in &walked.lines {
            let line = if line.closed { Outline::closed(&line.points) } else { Outline::open(&line.points) };
            for (from, to) in line.sides() {
                prop_assert!(!region::contains(&pond[0], from.towards(to, 0.5)));
            }
        }
        // Step by step along the uncut lines: what is outside is walked, what is inside is not.
        let whole = passes(&request(&outline, &[], 0.1)).unwrap();
        let step_m = 0.05;
        let outside: usize = whole.lines.iter().map(|line| {
            let line = Outline::closed(&line.points);
            let steps = (line.length_m() / step_m) as usize;
            (0..steps).filter(|&step| !region::contains(&pond[0], line.at((step as f64 + 0.5) * step_m))).count()
        }).sum();
        prop_assert!((walked.length_m - outside as f64 * step_m).abs() < 1.5, "{} {outside}", walked.length_m);
    }

    #[test]
    fn turning_and_mirroring_change_no_figure(
        radii_m in proptest::collection::vec(10.0..60.0_f64, 3..9), angle_rad in 0.0..6.3_f64, mirror: bool,
    ) {
        let points = ring(&radii_m);
        let (sin, cos) = angle_rad.sin_cos();
        let to = |at: &Point| {
            let (east, north) = (if mirror { -at.east_m } else { at.east_m }, at.north_m);
            Point::new(cos * east - sin * north, sin * east + cos * north)
        };
        let (one, other) = (Outline::closed(&points), Outline::closed(&points.iter().map(to).collect::<Vec<_>>()));
        let (one, other) = (passes(&request(&one, &[], 0.1)).unwrap(), passes(&request(&other, &[], 0.1)).unwrap());
        prop_assert!((one.length_m - other.length_m).abs() < 1e-6);
        prop_assert_eq!(one.turnings, other.turnings);
        prop_assert_eq!(one.sharp_corners, other.sharp_corners);
    }
}
