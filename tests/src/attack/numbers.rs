//! Numbers that nobody would choose.

use crate::catalogue::Random;
use axlewright::base::error::{LEAST_MAGNITUDE, MOST_MAGNITUDE};

const SPECIAL: [f64; 18] = [
    0.0,
    -0.0,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MIN_POSITIVE,
    -f64::MIN_POSITIVE,
    5e-324,
    -5e-324,
    f64::MAX,
    f64::MIN,
    f64::EPSILON,
    1.0,
    -1.0,
    1.0 + f64::EPSILON,
    1.0 - f64::EPSILON / 2.0,
    1e150,
    1e-150,
];

/// True of a number beyond the ends of every argument: its powers may overflow or vanish.
pub fn is_extreme(x: f64) -> bool {
    x.abs() > MOST_MAGNITUDE || x != 0.0 && x.abs() < LEAST_MAGNITUDE
}

/// A finite number, or one that is not known, or the infinity that an extreme input may give.
pub fn is_allowed(found: f64, extreme: bool) -> bool {
    !found.is_infinite() || extreme
}

/// The same bits; one that is not known has no sign.
pub fn same(a: f64, b: f64) -> bool {
    a.to_bits() == b.to_bits() || a.is_nan() && b.is_nan()
}

impl Random {
    /// Any number: a pattern of bits, a special number, any magnitude, one of the size of things.
    pub(super) fn any_number(&mut self) -> f64 {
        match self.below(4) {
            0 => f64::from_bits(self.bits()),
            1 => *self.of_these(&SPECIAL),
            2 => self.of_magnitude(300.0),
            _ => self.of_magnitude(6.0),
        }
    }

    /// A number of either sign, within so many powers of ten.
    pub(super) fn of_magnitude(&mut self, powers: f64) -> f64 {
        let sign = if self.once_in(2) { -1.0 } else { 1.0 };
        sign * 10_f64.powf(powers * (2.0 * self.share() - 1.0))
    }

    /// At the edge of a range, or next to it on either side.
    pub(super) fn at_edge(&mut self, lower: f64, upper: f64) -> f64 {
        let edge = if self.once_in(2) { lower } else { upper };
        *self.of_these(&[edge, edge.next_up(), edge.next_down()])
    }

    /// A number near another: the same, a little off, turned around, a slip of the decimal point.
    pub(super) fn near(&mut self, x: f64) -> f64 {
        match self.below(6) {
            0 => x,
            1 => -x,
            2 => x * *self.of_these(&[10.0, 0.1, 1000.0, 1e-3]),
            _ => x * (0.5 + self.share()),
        }
    }
}
