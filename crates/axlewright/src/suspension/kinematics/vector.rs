//! Three numbers with the products of space. A number may be several side by side, so that a formula is written once for one position
//! and for the many of a table.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use core::ops::{Add, Div, Mul, Neg, Sub};
use wide::f64x2;

/// Type with sums and products: a number, or several side by side, each with the same bits as alone.
pub(in crate::suspension) trait Number:
    Copy + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self>
{
}
impl<S: Copy + Add<Output = S> + Sub<Output = S> + Mul<Output = S>> Number for S {}

/// Such a type with roots and angles.
pub(in crate::suspension) trait Scalar:
    Number + Default + Div<Output = Self> + Neg<Output = Self>
{
    /// One number in every lane.
    fn of(value: f64) -> Self;
    fn sqrt(self) -> Self;
    fn sine_cosine(self) -> (Self, Self);
    fn arcsine(self) -> Self;
    /// Angle of the point `(over, self)`.
    fn arctangent(self, over: Self) -> Self;
    /// One after the other, what is no plain arithmetic.
    fn each<const N: usize>(from: [Self; N], of: impl Fn([f64; N]) -> f64) -> Self;
    fn all(self, of: impl Fn(f64) -> bool) -> bool;
}

/// Two positions at once.
pub(in crate::suspension) type Two = f64x2;

impl Scalar for Two {
    #[inline(always)]
    fn of(value: f64) -> Two {
        Two::splat(value)
    }
    #[inline(always)]
    fn sqrt(self) -> Two {
        Two::sqrt(self)
    }
    #[inline(always)]
    fn sine_cosine(self) -> (Two, Two) {
        self.sin_cos()
    }
    #[inline(always)]
    fn arcsine(self) -> Two {
        self.asin()
    }
    #[inline(always)]
    fn arctangent(self, over: Two) -> Two {
        self.atan2(over)
    }
    #[inline(always)]
    fn each<const N: usize>(from: [Two; N], of: impl Fn([f64; N]) -> f64) -> Two {
        let one = |place: usize| of(core::array::from_fn(|i| from[i].to_array()[place]));
        Two::from([one(0), one(1)])
    }
    #[inline(always)]
    fn all(self, of: impl Fn(f64) -> bool) -> bool {
        self.to_array().into_iter().all(of)
    }
}

/// Angles as two at once have them.
impl Scalar for f64 {
    #[inline(always)]
    fn of(value: f64) -> f64 {
        value
    }
    #[inline(always)]
    fn sqrt(self) -> f64 {
        f64::sqrt(self)
    }
    #[inline(always)]
    fn sine_cosine(self) -> (f64, f64) {
        let (sine, cosine) = Two::splat(self).sin_cos();
        (sine.to_array()[0], cosine.to_array()[0])
    }
    #[inline(always)]
    fn arcsine(self) -> f64 {
        Two::splat(self).asin().to_array()[0]
    }
    #[inline(always)]
    fn arctangent(self, over: f64) -> f64 {
        Two::splat(self).atan2(Two::splat(over)).to_array()[0]
    }
    #[inline(always)]
    fn each<const N: usize>(from: [f64; N], of: impl Fn([f64; N]) -> f64) -> f64 {
        of(from)
    }
    #[inline(always)]
    fn all(self, of: impl Fn(f64) -> bool) -> bool {
        of(self)
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(in crate::suspension) struct Vector<S = f64> {
    pub(in crate::suspension) x: S,
    pub(in crate::suspension) y: S,
    pub(in crate::suspension) z: S,
}

pub(in crate::suspension) const fn vector<S>(x: S, y: S, z: S) -> Vector<S> {
    Vector { x, y, z }
}

impl Vector {
    /// One vector in every lane.
    #[inline(always)]
    pub(in crate::suspension) fn spread<S: Scalar>(self) -> Vector<S> {
        vector(S::of(self.x), S::of(self.y), S::of(self.z))
    }
    /// None where it is not a number.
    pub(in crate::suspension) fn known(self) -> Option<Vector> {
        (!self.x.is_nan()).then_some(self)
    }
}

impl<S: Number> Vector<S> {
    #[inline(always)]
    pub(in crate::suspension) fn dot(self, other: Vector<S>) -> S {
        self.x * other.x + self.y * other.y + self.z * other.z
    }
    #[inline(always)]
    pub(in crate::suspension) fn cross(self, other: Vector<S>) -> Vector<S> {
        vector(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }
    #[inline(always)]
    pub(in crate::suspension) fn square(self) -> S {
        self.dot(self)
    }
}

impl<S: Scalar> Vector<S> {
    #[inline(always)]
    pub(in crate::suspension) fn norm(self) -> S {
        self.square().sqrt()
    }
    #[inline(always)]
    pub(in crate::suspension) fn unit(self) -> Vector<S> {
        self * (S::of(1.0) / self.norm())
    }
    /// Angle to another one, well-defined to the last digit near zero.
    #[inline(always)]
    pub(in crate::suspension) fn angle(self, other: Vector<S>) -> S {
        self.cross(other).norm().arctangent(self.dot(other))
    }
}

impl<S: Number> Add for Vector<S> {
    type Output = Vector<S>;
    #[inline(always)]
    fn add(self, other: Vector<S>) -> Vector<S> {
        vector(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}
impl<S: Number> Sub for Vector<S> {
    type Output = Vector<S>;
    #[inline(always)]
    fn sub(self, other: Vector<S>) -> Vector<S> {
        vector(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}
impl<S: Scalar> Neg for Vector<S> {
    type Output = Vector<S>;
    #[inline(always)]
    fn neg(self) -> Vector<S> {
        self * S::of(-1.0)
    }
}
impl<S: Number> Mul<S> for Vector<S> {
    type Output = Vector<S>;
    #[inline(always)]
    fn mul(self, by: S) -> Vector<S> {
        vector(self.x * by, self.y * by, self.z * by)
    }
}
