//! A picture beneath the map: an aerial one, or one made by hand.

use serde::{Deserialize, Serialize};

use super::{Point, Rest};
use crate::defaults;
use crate::motion::Motion;

/// From the picture to the ground, as a world file has it: east and north of a step to the right, of a step down,
/// and of the middle of the upper left pixel, metres.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(transparent)]
pub struct World(pub [f64; 6]);

impl World {
    /// A picture north up, its middle at a place, so that it is that wide in metres.
    pub fn about(middle: Point, [wide, tall]: [u32; 2], wide_m: f64) -> Self {
        let px_m = wide_m / f64::from(wide.max(1));
        let half = |side: u32| (f64::from(side) - 1.0) / 2.0 * px_m;
        Self([px_m, 0.0, 0.0, -px_m, middle.east_m - half(wide), middle.north_m + half(tall)])
    }

    /// A world that stretches a picture to no line: its steps make an area of more than nothing, and all is finite.
    pub fn is_sound(self) -> bool {
        let [right_east, right_north, down_east, down_north, ..] = self.0;
        let area = right_east * down_north - right_north * down_east;
        self.0.iter().all(|one| one.is_finite()) && area.abs() > 1e-18
    }

    /// The place of a spot of the picture: pixels from its upper left corner, right and down.
    pub fn place(self, [right, down]: [f64; 2]) -> Point {
        let [right_east, right_north, down_east, down_north, east, north] = self.0;
        let (right, down) = (right - 0.5, down - 0.5);
        Point::new(right_east * right + down_east * down + east, right_north * right + down_north * down + north)
    }

    /// Metres of a pixel: the root of its area.
    pub fn metres_a_pixel(self) -> f64 {
        let [right_east, right_north, down_east, down_north, ..] = self.0;
        (right_east * down_north - right_north * down_east).abs().sqrt()
    }

    /// The same after a motion of the ground beneath it.
    #[must_use]
    pub fn moved(self, motion: Motion) -> Self {
        let none = motion.of(Point::new(0.0, 0.0));
        let step = |east_m: f64, north_m: f64| {
            let to = motion.of(Point::new(east_m, north_m));
            [to.east_m - none.east_m, to.north_m - none.north_m]
        };
        let [a, d, b, e, c, f] = self.0;
        let ([a, d], [b, e], corner) = (step(a, d), step(b, e), motion.of(Point::new(c, f)));
        Self([a, d, b, e, corner.east_m, corner.north_m])
    }

    /// The same, stretched about a place.
    #[must_use]
    pub fn stretched(self, about: Point, by: f64) -> Self {
        let [a, d, b, e, c, f] = self.0;
        let east = about.east_m + by * (c - about.east_m);
        let north = about.north_m + by * (f - about.north_m);
        Self([by * a, by * d, by * b, by * e, east, north])
    }

    /// The same, so that two places of it come to lie so far apart; and, where it is given, the second in that bearing
    /// from the first, degrees clockwise from north. The first stays where it is.
    ///
    /// # Errors
    /// [`KnownError`] where the two are one place, or the distance is none.
    pub fn known(self, [from, to]: [Point; 2], apart_m: f64, bearing_deg: Option<f64>) -> Result<Self, KnownError> {
        let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
        let was_m = east.hypot(north);
        if !(was_m > SAME_PLACE_M && was_m.is_finite()) {
            return Err(KnownError::OnePlace);
        }
        if !(apart_m > 0.0 && apart_m.is_finite() && bearing_deg.is_none_or(f64::is_finite)) {
            return Err(KnownError::NoDistance);
        }
        let turn_rad = bearing_deg.map_or(0.0, |bearing_deg| bearing_deg.to_radians() - east.atan2(north));
        let turned = self.moved(Motion::Turn { about: from, clockwise_rad: turn_rad });
        let world = turned.stretched(from, apart_m / was_m);
        if world.is_sound() { Ok(world) } else { Err(KnownError::NoDistance) }
    }
}

/// Two known points nearer than this are one place, metres.
const SAME_PLACE_M: f64 = 1e-6;

/// Why two known points place no picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum KnownError {
    /// `underlay/one-place`: the two are one place.
    #[error("underlay/one-place")]
    OnePlace,
    /// `underlay/no-distance`: a distance of nothing, or none at all.
    #[error("underlay/no-distance")]
    NoDistance,
}

/// A picture beneath the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Underlay {
    /// Where its file lies, from the folder of the plan's.
    pub path: String,
    /// SHA-256 of its bytes when it was brought in, hexadecimal; empty where that is not stated.
    pub sha256: String,
    /// Its width and height, pixels.
    pub size_px: Option<[u32; 2]>,
    /// Where it lies.
    pub world_m: Option<World>,
    /// How much of it is seen over the paper, 0 to 1.
    pub opacity: Option<f64>,
    /// Whether the map leaves it out.
    pub hidden: bool,
    /// Whether it lies by eye: where it lies was taken from the view, and nobody said how large it is.
    pub by_eye: bool,
    /// Whether it is kept from being moved.
    pub locked: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl Underlay {
    /// A picture of a file, of which nothing else is stated.
    pub fn new(path: String) -> Self {
        Self {
            path,
            sha256: String::new(),
            size_px: None,
            world_m: None,
            opacity: None,
            hidden: false,
            by_eye: false,
            locked: false,
            rest: Rest::new(),
        }
    }

    /// Where it lies, stated or assumed: north up, a tenth of a metre a pixel, its lower left corner at the origin.
    pub fn world_m(&self) -> World {
        let [_, tall] = self.size_px.unwrap_or(defaults::UNDERLAY_PX);
        let px_m = defaults::UNDERLAY_M_PER_PX;
        self.world_m.unwrap_or(World([px_m, 0.0, 0.0, -px_m, px_m / 2.0, px_m * (f64::from(tall) - 0.5)]))
    }

    /// How much of it is seen, stated or assumed, 0 to 1.
    pub fn opacity(&self) -> f64 {
        self.opacity.unwrap_or(defaults::UNDERLAY_OPACITY).clamp(0.0, 1.0)
    }

    /// Whether its size was stated: by a world file, or by two known points.
    pub fn is_to_scale(&self) -> bool {
        self.world_m.is_some() && !self.by_eye
    }

    /// Its corners on the ground: upper left, upper right, lower right, lower left.
    pub fn corners(&self) -> [Point; 4] {
        let [wide, tall] = self.size_px.unwrap_or(defaults::UNDERLAY_PX).map(f64::from);
        let world = self.world_m();
        [[0.0, 0.0], [wide, 0.0], [wide, tall], [0.0, tall]].map(|spot| world.place(spot))
    }
}

#[cfg(test)]
mod tests {
    use super::{KnownError, World};
    use crate::model::Point;

    /// Half a metre a pixel, north up, the middle of the upper left pixel at (100, 200).
    const HALF: World = World([0.5, 0.0, 0.0, -0.5, 100.0, 200.0]);

    #[test]
    fn two_known_points_come_to_lie_as_far_apart_as_is_said_and_in_that_bearing() {
        let spots = [[10.5, 20.5], [10.5, 120.5]];
        let [from, to] = spots.map(|spot| HALF.place(spot));
        assert_eq!((from, to), (Point::new(105.0, 190.0), Point::new(105.0, 140.0)));
        let world = HALF.known([from, to], 80.0, Some(90.0)).unwrap();
        let [now, then] = spots.map(|spot| world.place(spot));
        assert!((now.east_m - from.east_m).abs() < 1e-9 && (now.north_m - from.north_m).abs() < 1e-9);
        assert!((then.east_m - (from.east_m + 80.0)).abs() < 1e-9 && (then.north_m - from.north_m).abs() < 1e-9);
        assert!((world.metres_a_pixel() - 0.8).abs() < 1e-12);
        // Without a bearing it keeps its turn.
        let plain = HALF.known([from, to], 25.0, None).unwrap();
        assert!((plain.place(spots[1]).north_m - 165.0).abs() < 1e-9);
    }

    #[test]
    fn one_place_and_no_distance_are_refused() {
        let at = Point::new(3.0, 4.0);
        assert_eq!(HALF.known([at, at], 10.0, None), Err(KnownError::OnePlace));
        let to = Point::new(3.0, 5.0);
        for bad_m in [0.0, -2.0, f64::NAN, f64::INFINITY] {
            assert_eq!(HALF.known([at, to], bad_m, None), Err(KnownError::NoDistance));
        }
        assert_eq!(HALF.known([at, to], 1.0, Some(f64::NAN)), Err(KnownError::NoDistance));
        assert!(
            !World([0.0, 0.0, 0.0, -0.5, 1.0, 1.0]).is_sound() && !World([1.0, 1.0, 1.0, 1.0, 0.0, 0.0]).is_sound()
        );
    }
}
