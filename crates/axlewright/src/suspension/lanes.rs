//! Numbers and vectors of several like things at once: the same arithmetic on each, which a processor does for two in one step.

use super::vector::{Vector, vector};
use core::array::from_fn;
use core::ops::{Add, Mul, Sub};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lanes<const N: usize>(pub(super) [f64; N]);

impl<const N: usize> Lanes<N> {
    pub(super) const ZERO: Lanes<N> = Lanes([0.0; N]);
    #[inline(always)]
    pub(super) fn all(value: f64) -> Self {
        Lanes([value; N])
    }
    #[inline(always)]
    pub(super) fn map(self, of: impl Fn(f64) -> f64) -> Self {
        Lanes(from_fn(|lane| of(self.0[lane])))
    }
    /// Sum of the products.
    #[inline(always)]
    pub(super) fn dot(self, other: Self) -> f64 {
        (self * other).0.iter().sum()
    }
}

impl<const N: usize> Add for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        Lanes(from_fn(|lane| self.0[lane] + other.0[lane]))
    }
}
impl<const N: usize> Sub for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        Lanes(from_fn(|lane| self.0[lane] - other.0[lane]))
    }
}
impl<const N: usize> Mul for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        Lanes(from_fn(|lane| self.0[lane] * other.0[lane]))
    }
}
impl<const N: usize> Mul<f64> for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, by: f64) -> Self {
        self.map(|value| value * by)
    }
}

/// A vector a lane.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Vectors<const N: usize> {
    pub(super) x: Lanes<N>,
    pub(super) y: Lanes<N>,
    pub(super) z: Lanes<N>,
}

impl<const N: usize> Vectors<N> {
    pub(super) const ZERO: Vectors<N> = Vectors { x: Lanes::ZERO, y: Lanes::ZERO, z: Lanes::ZERO };
    #[inline(always)]
    pub(super) fn of(each: impl Fn(usize) -> Vector) -> Self {
        let all: [Vector; N] = from_fn(each);
        Vectors { x: Lanes(all.map(|v| v.x)), y: Lanes(all.map(|v| v.y)), z: Lanes(all.map(|v| v.z)) }
    }
    /// The same vector in every lane.
    #[inline(always)]
    pub(super) fn all(on: Vector) -> Self {
        Vectors { x: Lanes::all(on.x), y: Lanes::all(on.y), z: Lanes::all(on.z) }
    }
    #[inline(always)]
    pub(super) fn lane(&self, lane: usize) -> Vector {
        vector(self.x.0[lane], self.y.0[lane], self.z.0[lane])
    }
    #[inline(always)]
    pub(super) fn dot(self, other: Self) -> Lanes<N> {
        self.x * other.x + self.y * other.y + self.z * other.z
    }
    #[inline(always)]
    pub(super) fn cross(self, other: Self) -> Self {
        Vectors {
            x: self.y * other.z - self.z * other.y,
            y: self.z * other.x - self.x * other.z,
            z: self.x * other.y - self.y * other.x,
        }
    }
    /// Sum of the vectors, each so many times.
    #[inline(always)]
    pub(super) fn sum(self, times: Lanes<N>) -> Vector {
        vector(self.x.dot(times), self.y.dot(times), self.z.dot(times))
    }
}

impl<const N: usize> Add for Vectors<N> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        Vectors { x: self.x + other.x, y: self.y + other.y, z: self.z + other.z }
    }
}
impl<const N: usize> Sub for Vectors<N> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        Vectors { x: self.x - other.x, y: self.y - other.y, z: self.z - other.z }
    }
}
impl<const N: usize> Mul<Lanes<N>> for Vectors<N> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, by: Lanes<N>) -> Self {
        Vectors { x: self.x * by, y: self.y * by, z: self.z * by }
    }
}
