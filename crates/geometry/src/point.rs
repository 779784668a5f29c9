//! A place on the ground and the difference of two places, in metres east and north.
//!
//! The plane is flat and has no origin of its own: whoever calls says where it lies. Exact to the rounding of `f64`.

use std::ops::{Add, Mul, Neg, Sub};

/// A place: metres east and north of the caller's origin.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// Metres east of the origin.
    pub east_m: f64,
    /// Metres north of the origin.
    pub north_m: f64,
}

/// The way from one place to another, metres east and north; also a direction when its length is one.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Vector {
    /// Metres towards the east.
    pub east: f64,
    /// Metres towards the north.
    pub north: f64,
}

impl Point {
    /// The place `east_m` east and `north_m` north of the origin.
    pub const fn new(east_m: f64, north_m: f64) -> Self {
        Self { east_m, north_m }
    }

    /// Straight distance to `other`, metres.
    pub fn distance_m(self, other: Point) -> f64 {
        (other - self).length()
    }

    /// The place at `share` of the way to `other`: 0 here, 1 there.
    pub fn towards(self, other: Point, share: f64) -> Point {
        self + (other - self) * share
    }

    /// Whether both coordinates are finite numbers.
    pub fn is_finite(self) -> bool {
        self.east_m.is_finite() && self.north_m.is_finite()
    }
}

impl From<(f64, f64)> for Point {
    fn from((east_m, north_m): (f64, f64)) -> Self {
        Self { east_m, north_m }
    }
}

impl From<[f64; 2]> for Point {
    fn from([east_m, north_m]: [f64; 2]) -> Self {
        Self { east_m, north_m }
    }
}

impl Vector {
    /// The way `east` metres east and `north` metres north.
    pub const fn new(east: f64, north: f64) -> Self {
        Self { east, north }
    }

    /// Length, metres; free of overflow.
    pub fn length(self) -> f64 {
        self.east.hypot(self.north)
    }

    /// Scalar product, square metres.
    pub fn dot(self, other: Vector) -> f64 {
        self.east * other.east + self.north * other.north
    }

    /// The vertical part of the vector product, square metres: positive where `other` lies to the left.
    pub fn cross(self, other: Vector) -> f64 {
        self.east * other.north - self.north * other.east
    }

    /// Turned a quarter to the left.
    pub fn left(self) -> Vector {
        Vector::new(-self.north, self.east)
    }

    /// The same direction at length one; zero stays zero.
    pub fn unit(self) -> Vector {
        let length = self.length();
        if length > 0.0 { self * (1.0 / length) } else { Vector::default() }
    }
}

impl Sub for Point {
    type Output = Vector;
    fn sub(self, other: Point) -> Vector {
        Vector::new(self.east_m - other.east_m, self.north_m - other.north_m)
    }
}

impl Add<Vector> for Point {
    type Output = Point;
    fn add(self, way: Vector) -> Point {
        Point::new(self.east_m + way.east, self.north_m + way.north)
    }
}

impl Sub<Vector> for Point {
    type Output = Point;
    fn sub(self, way: Vector) -> Point {
        self + -way
    }
}

impl Add for Vector {
    type Output = Vector;
    fn add(self, other: Vector) -> Vector {
        Vector::new(self.east + other.east, self.north + other.north)
    }
}

impl Sub for Vector {
    type Output = Vector;
    fn sub(self, other: Vector) -> Vector {
        self + -other
    }
}

impl Neg for Vector {
    type Output = Vector;
    fn neg(self) -> Vector {
        Vector::new(-self.east, -self.north)
    }
}

impl Mul<f64> for Vector {
    type Output = Vector;
    fn mul(self, factor: f64) -> Vector {
        Vector::new(self.east * factor, self.north * factor)
    }
}
