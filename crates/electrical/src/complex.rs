//! Complex numbers, as much of them as a ladder in the Laplace plane needs.

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
