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

impl Limit {
    /// True if a value lies inside; never true of NaN or an infinity.
    #[inline(always)]
    pub const fn allows(&self, value: f64) -> bool {
        // Without a limit, the largest number serves as one: the compiler turns a comparison with infinity into a test of
        // the bits, which does not vectorise.
        (if self.lower == f64::NEG_INFINITY {
            value >= f64::MIN
        } else if self.lower_open {
            value > self.lower
        } else {
            value >= self.lower
        }) && (if self.upper == f64::INFINITY {
            value <= f64::MAX
        } else if self.upper_open {
            value < self.upper
        } else {
            value <= self.upper
        })
    }
}

/// A bound, to six significant digits; one of fewer digits is itself.
fn number(bound: f64) -> f64 {
    format!("{bound:.5e}").parse().unwrap_or(bound)
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
            in_shop_units(&bounds, kind)
        )
    }
}
