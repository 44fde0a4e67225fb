//! Limits of an argument, as data.

use super::text::in_shop_units;
use super::units::Kind;
use core::fmt;

/// The limits of one argument, in coherent SI.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// The argument.
    pub argument: &'static str,
    /// Lower bound; minus infinity if there is none.
    pub lower: f64,
    /// Upper bound; plus infinity if there is none.
    pub upper: f64,
    /// True if the lower bound itself is outside.
    pub lower_open: bool,
    /// True if the upper bound itself is outside.
    pub upper_open: bool,
    /// Source of the limit.
    pub source: &'static str,
}

/// Largest magnitude of any argument, in coherent SI: no quantity of a vehicle comes near it. With it and [`LEAST_MAGNITUDE`], no result of a function of the
/// catalogue is greater than a double can hold; a test tries all of them at these ends.
pub const MOST_MAGNITUDE: f64 = 1e30;

/// Least value of an argument that must be above zero, in coherent SI.
pub const LEAST_MAGNITUDE: f64 = 1e-30;

/// Source of [`MOST_MAGNITUDE`] and [`LEAST_MAGNITUDE`].
const PLAUSIBLE: &str =
    "plausibility limit of every argument in coherent SI: beyond it a result may overflow";

impl Limit {
    /// True if a value lies inside; never true of NaN or an infinity. Without a bound of its own it has those of every argument, [`MOST_MAGNITUDE`] and
    /// [`LEAST_MAGNITUDE`].
    #[inline(always)]
    pub const fn allows(&self, value: f64) -> bool {
        (if self.lower == f64::NEG_INFINITY {
            value >= -MOST_MAGNITUDE
        } else if self.lower_open && self.lower == 0.0 {
            value >= LEAST_MAGNITUDE
        } else if self.lower_open {
            value > self.lower
        } else {
            value >= self.lower
        }) && (if self.upper == f64::INFINITY {
            value <= MOST_MAGNITUDE
        } else if self.upper_open {
            value < self.upper
        } else {
            value <= self.upper
        })
    }
}

/// A bound, to six significant digits; one of fewer digits is itself.
fn number(bound: f64) -> String {
    let rounded: f64 = format!("{bound:.5e}").parse().unwrap_or(bound);
    if [MOST_MAGNITUDE, LEAST_MAGNITUDE].contains(&rounded.abs()) {
        format!("{rounded:e}")
    } else {
        rounded.to_string()
    }
}

/// The limits in the usual notation: `0 < motion_ratio <= 3`.
impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.lower == f64::NEG_INFINITY && self.upper == f64::INFINITY {
            return write!(f, "{} finite", self.argument);
        }
        if self.lower > f64::NEG_INFINITY {
            write!(f, "{} {} ", number(self.lower), if self.lower_open { "<" } else { "<=" })?;
        }
        f.write_str(self.argument)?;
        if self.upper < f64::INFINITY {
            write!(f, " {} {}", if self.upper_open { "<" } else { "<=" }, number(self.upper))?;
        }
        Ok(())
    }
}

/// One argument that must exceed another.
#[derive(Debug, PartialEq)]
pub struct Relation {
    /// The argument that must be the greater one.
    pub argument: &'static str,
    /// The argument that it must exceed.
    pub other: &'static str,
    /// Reason for the relation.
    pub source: &'static str,
}

impl Limit {
    /// These limits if the value misses one of their own bounds, otherwise those of every argument.
    pub fn missed_by(&self, value: f64) -> Limit {
        let above = value > self.lower || !self.lower_open && value == self.lower;
        let below = value < self.upper || !self.upper_open && value == self.upper;
        if !(value.is_finite() && above && below) {
            return Limit { ..*self };
        }
        let lower = match self.lower {
            f64::NEG_INFINITY => -MOST_MAGNITUDE,
            0.0 if self.lower_open => LEAST_MAGNITUDE,
            lower => lower,
        };
        let upper = if self.upper == f64::INFINITY { MOST_MAGNITUDE } else { self.upper };
        let (lower_open, upper_open) =
            (self.lower_open && lower == self.lower, self.upper_open && upper == self.upper);
        Limit { lower, upper, lower_open, upper_open, source: PLAUSIBLE, ..*self }
    }

    /// The limits with their unit, and in the units of a shop.
    pub(super) fn shown(&self, kind: &'static Kind) -> String {
        let bounds: Vec<f64> =
            [self.lower, self.upper].into_iter().filter(|bound| bound.is_finite()).collect();
        if kind.si == "1" || bounds.iter().all(|bound| *bound == 0.0) {
            return self.to_string();
        }
        format!(
            "{self} {}{}",
            kind.units.first().map_or("", |coherent| coherent.symbol),
            in_shop_units(bounds, kind)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ANY: Limit = Limit {
        argument: "it",
        lower: f64::NEG_INFINITY,
        upper: f64::INFINITY,
        lower_open: true,
        upper_open: true,
        source: "any finite number",
    };

    #[test]
    fn every_argument_has_ends() {
        let positive = Limit { lower: 0.0, ..ANY };
        let from_zero = Limit { lower_open: false, ..positive };
        let above_one = Limit { lower: 1.0, ..ANY };
        for (limit, lower, upper) in [
            (&ANY, -MOST_MAGNITUDE, MOST_MAGNITUDE),
            (&positive, LEAST_MAGNITUDE, MOST_MAGNITUDE),
            (&from_zero, 0.0, MOST_MAGNITUDE),
            (&above_one, 1.0_f64.next_up(), MOST_MAGNITUDE),
        ] {
            assert!(limit.allows(lower) && limit.allows(upper), "{limit}");
            for beyond in [lower.next_down(), upper.next_up(), f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                assert!(!limit.allows(beyond), "{limit}: {beyond}");
            }
        }
    }

    #[test]
    fn a_refusal_names_the_limits_that_are_missed() {
        let positive = Limit { lower: 0.0, ..ANY };
        for (limit, value, says) in [
            (&ANY, 1e31, "-1e30 <= it <= 1e30"),
            (&ANY, f64::INFINITY, "it finite"),
            (&positive, 1e31, "1e-30 <= it <= 1e30"),
            (&positive, 1e-31, "1e-30 <= it <= 1e30"),
            (&positive, -1.0, "0 < it"),
            (&positive, 0.0, "0 < it"),
            (&Limit { lower: 1.0, ..ANY }, 1e31, "1 < it <= 1e30"),
            (&Limit { upper: 2.0, ..ANY }, -1e31, "-1e30 <= it < 2"),
            (&Limit { upper: 2.0, ..ANY }, 2.0, "it < 2"),
        ] {
            assert_eq!(limit.missed_by(value).to_string(), says);
        }
    }
}
