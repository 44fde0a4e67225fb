//! Numbers of several like things at once: the same arithmetic on each, which a processor does for two in one step. Their vectors are those of `vector`.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::vector::{Vector, vector};
use core::array::from_fn;
use core::ops::{Add, Mul, Sub};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::suspension) struct Lanes<const N: usize>(pub(in crate::suspension) [f64; N]);

impl<const N: usize> Lanes<N> {
    pub(in crate::suspension) const ZERO: Lanes<N> = Lanes([0.0; N]);
    #[inline(always)]
    pub(in crate::suspension) fn all(value: f64) -> Self {
        Lanes([value; N])
    }
    #[inline(always)]
    pub(in crate::suspension) fn map(self, of: impl Fn(f64) -> f64) -> Self {
        Lanes(from_fn(|lane| of(self.0[lane])))
    }
    /// Sum of the products.
    #[inline(always)]
    pub(in crate::suspension) fn dot(self, other: Self) -> f64 {
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
pub(in crate::suspension) type Vectors<const N: usize> = Vector<Lanes<N>>;

impl<const N: usize> Vectors<N> {
    pub(in crate::suspension) const ZERO: Vectors<N> = vector(Lanes::ZERO, Lanes::ZERO, Lanes::ZERO);
    #[inline(always)]
    pub(in crate::suspension) fn of(each: impl Fn(usize) -> Vector) -> Self {
        let all: [Vector; N] = from_fn(each);
        vector(Lanes(all.map(|v| v.x)), Lanes(all.map(|v| v.y)), Lanes(all.map(|v| v.z)))
    }
    /// One vector in every lane.
    #[inline(always)]
    pub(in crate::suspension) fn all(on: Vector) -> Self {
        vector(Lanes::all(on.x), Lanes::all(on.y), Lanes::all(on.z))
    }
    #[inline(always)]
    pub(in crate::suspension) fn lane(&self, lane: usize) -> Vector {
        vector(self.x.0[lane], self.y.0[lane], self.z.0[lane])
    }
    /// Sum of the vectors, each so many times.
    #[inline(always)]
    pub(in crate::suspension) fn sum(self, times: Lanes<N>) -> Vector {
        vector(self.x.dot(times), self.y.dot(times), self.z.dot(times))
    }
}
