//! A number with its first and second derivatives by three variables: differentiation without differences.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use core::ops::{Add, Mul, Neg, Sub};

/// Value, gradient, and the upper triangle of the second derivatives, row by row.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Jet {
    pub(in crate::suspension) value: f64,
    pub(in crate::suspension) first: [f64; 3],
    pub(in crate::suspension) second: [f64; 6],
}

/// Products of two gradients in the order of `second`.
#[inline]
fn products([a, b, c]: [f64; 3], [d, e, f]: [f64; 3]) -> [f64; 6] {
    [a * d, a * e, a * f, b * e, b * f, c * f]
}

#[inline]
fn with<const N: usize>(a: [f64; N], b: [f64; N], each: impl Fn(f64, f64) -> f64) -> [f64; N] {
    let mut of = a;
    for (a, b) in of.iter_mut().zip(b) {
        *a = each(*a, b);
    }
    of
}

impl Jet {
    #[inline]
    pub(in crate::suspension) const fn constant(value: f64) -> Jet {
        Jet { value, first: [0.0; 3], second: [0.0; 6] }
    }
    /// The three variables at these values.
    #[inline]
    pub(in crate::suspension) fn variables([a, b, c]: [f64; 3]) -> [Jet; 3] {
        let variable = |value: f64, first: [f64; 3]| Jet { value, first, second: [0.0; 6] };
        [variable(a, [1.0, 0.0, 0.0]), variable(b, [0.0, 1.0, 0.0]), variable(c, [0.0, 0.0, 1.0])]
    }
    /// A function of this number, from its value and its own first and second derivative there.
    #[inline]
    pub(in crate::suspension) fn chain(self, [value, slope, bend]: [f64; 3]) -> Jet {
        let squares = products(self.first, self.first);
        Jet {
            value,
            first: self.first.map(|of| of * slope),
            second: with(self.second, squares, |of, square| of * slope + square * bend),
        }
    }
    /// A function of two numbers, from its value, its slopes and its second derivatives there: by the first one, by both, by the second one.
    #[inline]
    pub(in crate::suspension) fn of_two(
        [a, b]: [Jet; 2],
        value: f64,
        [da, db]: [f64; 2],
        [aa, ab, bb]: [f64; 3],
    ) -> Jet {
        let first = with(a.first, b.first, |a, b| a * da + b * db);
        // Change of both slopes with each variable.
        let [of_a, of_b] =
            [[aa, ab], [ab, bb]].map(|[on, beside]| with(a.first, b.first, |a, b| a * on + b * beside));
        let bent = with(products(a.first, of_a), products(b.first, of_b), |a, b| a + b);
        let second = with(with(a.second, b.second, |a, b| a * da + b * db), bent, |on, bent| on + bent);
        Jet { value, first, second }
    }
    /// The second derivative by two of its variables.
    #[inline]
    pub(in crate::suspension) fn by_two(&self, one: usize, other: usize) -> f64 {
        const PLACES: [[usize; 3]; 3] = [[0, 1, 2], [1, 3, 4], [2, 4, 5]];
        self.second[PLACES[one][other]]
    }
    /// The number where its variables have grown by so little; its second derivatives count while they change less than the first ones.
    #[inline]
    pub(in crate::suspension) fn ahead(&self, [a, b, c]: [f64; 3]) -> f64 {
        let [x, y, z] = self.first;
        let [xx, xy, xz, yy, yz, zz] = self.second;
        let first = x * a + y * b + z * c;
        let second = 0.5 * (xx * a * a + yy * b * b + zz * c * c) + xy * a * b + xz * a * c + yz * b * c;
        self.value + first + if second.abs() < first.abs() { second } else { 0.0 }
    }
    #[inline]
    pub(in crate::suspension) fn sine(self) -> Jet {
        let (sine, cosine) = self.value.sin_cos();
        self.chain([sine, cosine, -sine])
    }
    #[inline]
    pub(in crate::suspension) fn cosine(self) -> Jet {
        let (sine, cosine) = self.value.sin_cos();
        self.chain([cosine, -sine, -cosine])
    }
    #[inline]
    pub(in crate::suspension) fn arcsine(self) -> Jet {
        let left = (1.0 - self.value) * (1.0 + self.value);
        let slope = 1.0 / left.sqrt();
        self.chain([self.value.asin(), slope, self.value * slope / left])
    }
    #[inline]
    pub(in crate::suspension) fn inverse(self) -> Jet {
        let over = 1.0 / self.value;
        self.chain([over, -over * over, 2.0 * over * over * over])
    }
    #[inline]
    pub(in crate::suspension) fn root(self) -> Jet {
        let root = self.value.sqrt();
        self.chain([root, 0.5 / root, -0.25 / (root * self.value)])
    }
    /// This value with the second variable reversed.
    #[inline]
    pub(in crate::suspension) fn mirrored(self) -> Jet {
        let ([a, b, c], [aa, ab, ac, bb, bc, cc]) = (self.first, self.second);
        Jet { first: [a, -b, c], second: [aa, -ab, ac, bb, -bc, cc], ..self }
    }
    #[inline]
    fn product(self, other: Jet) -> Jet {
        let crossed =
            with(products(self.first, other.first), products(other.first, self.first), |a, b| a + b);
        let bent = with(self.second, other.second, |a, b| a * other.value + b * self.value);
        Jet {
            value: self.value * other.value,
            first: with(self.first, other.first, |a, b| a * other.value + b * self.value),
            second: with(bent, crossed, |a, b| a + b),
        }
    }
    #[inline]
    pub(in crate::suspension) fn square(self) -> Jet {
        self.chain([self.value * self.value, 2.0 * self.value, 2.0])
    }
}

impl Add for Jet {
    type Output = Jet;
    #[inline]
    fn add(self, other: Jet) -> Jet {
        Jet {
            value: self.value + other.value,
            first: with(self.first, other.first, |a, b| a + b),
            second: with(self.second, other.second, |a, b| a + b),
        }
    }
}
impl Add<f64> for Jet {
    type Output = Jet;
    #[inline]
    fn add(self, other: f64) -> Jet {
        Jet { value: self.value + other, ..self }
    }
}
impl Sub for Jet {
    type Output = Jet;
    #[inline]
    fn sub(self, other: Jet) -> Jet {
        self + -other
    }
}
impl Neg for Jet {
    type Output = Jet;
    #[inline]
    fn neg(self) -> Jet {
        self * -1.0
    }
}
impl Mul<f64> for Jet {
    type Output = Jet;
    #[inline]
    fn mul(self, by: f64) -> Jet {
        Jet {
            value: self.value * by,
            first: self.first.map(|of| of * by),
            second: self.second.map(|of| of * by),
        }
    }
}
impl Mul for Jet {
    type Output = Jet;
    #[inline]
    fn mul(self, other: Jet) -> Jet {
        self.product(other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn expression([a, b, c]: [Jet; 3]) -> Jet {
        (a * b.sine() - c.cosine() * 0.7 + 1.3).square() * (b + 2.0).inverse()
            + (a * c * 0.1).arcsine().root()
    }

    /// Derivatives against central differences, the second ones against differences of the first.
    #[test]
    fn derivatives_are_limits_of_differences() {
        let at = [0.8, -0.4, 1.1];
        let on = expression(Jet::variables(at));
        let places = [[0, 1, 2], [1, 3, 4], [2, 4, 5]];
        let h = 1e-5;
        for (place, row) in places.iter().enumerate() {
            let moved = |by: f64| {
                let mut to = at;
                to[place] += by;
                expression(Jet::variables(to))
            };
            let (low, high) = (moved(-h), moved(h));
            assert!(((high.value - low.value) / (2.0 * h) - on.first[place]).abs() < 1e-8);
            for (other, second) in row.iter().enumerate() {
                let slope = (high.first[other] - low.first[other]) / (2.0 * h);
                assert!((slope - on.second[*second]).abs() < 1e-7, "{place} {other}");
            }
        }
    }
}
