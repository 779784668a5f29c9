//! Complex numbers, as much of them as a ladder in the Laplace plane needs: one, and four side by side.
//!
//! A ladder's recurrence waits for its last product before it can form the next, some twelve cycles a node in which the
//! processor could do a dozen others. [`Quad`] gives it four recurrences at a time; real and imaginary parts stand apart,
//! so that a compiler makes one operation of two or four lanes.

use std::ops::{Add, AddAssign, Mul, Sub};

/// `re + i im`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Complex {
    pub(crate) re: f64,
    pub(crate) im: f64,
}

impl Complex {
    pub(crate) const ZERO: Self = Self { re: 0.0, im: 0.0 };

    pub(crate) const fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }

    pub(crate) const fn real(re: f64) -> Self {
        Self { re, im: 0.0 }
    }

    pub(crate) fn size(self) -> f64 {
        self.re.hypot(self.im)
    }

    /// No less than [`Complex::size`], at most `√2` times that, and without a root.
    #[inline]
    pub(crate) fn size_at_most(self) -> f64 {
        self.re.abs() + self.im.abs()
    }

    /// `1 / self`. Magnitudes beyond 1e±150 would overflow; none occur here.
    #[inline]
    pub(crate) fn inverse(self) -> Self {
        let scale = 1.0 / (self.re * self.re + self.im * self.im);
        Self { re: self.re * scale, im: -self.im * scale }
    }

    pub(crate) fn exp(self) -> Self {
        let size = self.re.exp();
        Self { re: size * self.im.cos(), im: size * self.im.sin() }
    }

    #[inline]
    pub(crate) fn square(self) -> Self {
        self * self
    }
}

impl Add for Complex {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        Self { re: self.re + other.re, im: self.im + other.im }
    }
}

impl AddAssign for Complex {
    #[inline]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Complex {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        Self { re: self.re - other.re, im: self.im - other.im }
    }
}

impl Mul for Complex {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        Self { re: self.re * other.re - self.im * other.im, im: self.re * other.im + self.im * other.re }
    }
}

impl Mul<f64> for Complex {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        Self { re: self.re * factor, im: self.im * factor }
    }
}

/// How many recurrences run side by side.
pub(crate) const LANES: usize = 4;

/// A real number in each lane.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Lanes(pub(crate) [f64; LANES]);

impl Lanes {
    pub(crate) const ZERO: Self = Self([0.0; LANES]);

    #[inline]
    pub(crate) fn sum(self) -> f64 {
        let [a, b, c, d] = self.0;
        (a + b) + (c + d)
    }

    /// The greatest lane; no lane is a NaN.
    #[inline]
    pub(crate) fn greatest(self) -> f64 {
        let [a, b, c, d] = self.0;
        a.max(b).max(c.max(d))
    }
}

impl Add for Lanes {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a + e, b + f, c + g, d + h])
    }
}

impl AddAssign for Lanes {
    #[inline]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Lanes {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a - e, b - f, c - g, d - h])
    }
}

impl Mul for Lanes {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a * e, b * f, c * g, d * h])
    }
}

impl Mul<f64> for Lanes {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        self * Self([factor; LANES])
    }
}

/// A complex number in each lane.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Quad {
    pub(crate) re: Lanes,
    pub(crate) im: Lanes,
}

impl Quad {
    pub(crate) const ZERO: Self = Self { re: Lanes::ZERO, im: Lanes::ZERO };

    #[inline]
    pub(crate) fn new(lanes: [Complex; LANES]) -> Self {
        Self { re: Lanes(lanes.map(|z| z.re)), im: Lanes(lanes.map(|z| z.im)) }
    }

    #[inline]
    pub(crate) fn real(re: Lanes) -> Self {
        Self { re, im: Lanes::ZERO }
    }

    /// The same in every lane.
    #[inline]
    pub(crate) fn splat(z: Complex) -> Self {
        Self::new([z; LANES])
    }

    #[inline]
    pub(crate) fn lane(self, lane: usize) -> Complex {
        Complex::new(self.re.0[lane], self.im.0[lane])
    }

    /// As [`Complex::size_at_most`].
    #[inline]
    pub(crate) fn size_at_most(self) -> Lanes {
        let (re, im) = (self.re.0.map(f64::abs), self.im.0.map(f64::abs));
        Lanes(re) + Lanes(im)
    }
}

impl Add for Quad {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        Self { re: self.re + other.re, im: self.im + other.im }
    }
}

impl AddAssign for Quad {
    #[inline]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Quad {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        Self { re: self.re - other.re, im: self.im - other.im }
    }
}

impl Mul for Quad {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        Self { re: self.re * other.re - self.im * other.im, im: self.re * other.im + self.im * other.re }
    }
}

impl Mul<Lanes> for Quad {
    type Output = Self;
    #[inline]
    fn mul(self, factor: Lanes) -> Self {
        Self { re: self.re * factor, im: self.im * factor }
    }
}

impl Mul<f64> for Quad {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        Self { re: self.re * factor, im: self.im * factor }
    }
}

/// What a ladder is eliminated in: one complex number, or four.
pub(crate) trait Number:
    Copy + Default + Add<Output = Self> + AddAssign + Sub<Output = Self> + Mul<Output = Self> + Mul<f64, Output = Self>
{
    fn of_real(re: f64) -> Self;
    fn inverse(self) -> Self;

    #[inline]
    fn square(self) -> Self {
        self * self
    }
}

impl Number for Complex {
    #[inline]
    fn of_real(re: f64) -> Self {
        Self::real(re)
    }

    #[inline]
    fn inverse(self) -> Self {
        Self::inverse(self)
    }
}

impl Number for Quad {
    #[inline]
    fn of_real(re: f64) -> Self {
        Self::real(Lanes([re; LANES]))
    }

    #[inline]
    fn inverse(self) -> Self {
        let square = self.re * self.re + self.im * self.im;
        let scale = Lanes(square.0.map(|square| 1.0 / square));
        Self { re: self.re * scale, im: self.im * scale * -1.0 }
    }
}
