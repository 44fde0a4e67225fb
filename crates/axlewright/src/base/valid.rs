//! Validity as data: [`valid!`](crate::valid) is the first statement of a function, enforced here and read by the generator.

use super::error::{Error, Limit, Relation, Result};
use super::units::Quantity;

/// Refuses what a limit does not allow. Branches that build an error carry only references and numbers, so that
/// a loop over many elements still vectorises.
#[inline(always)]
pub fn within<Q: Quantity>(quantity: Q, limit: &'static Limit) -> Result<()> {
    let value = quantity.si();
    if limit.allows(value) { Ok(()) } else { Err(Error::OutOfRange { limit, value, kind: Q::KIND }) }
}

/// Refuses two arguments of which the first does not exceed the second.
#[inline(always)]
pub fn exceeds<Q: Quantity>(quantity: Q, other: Q, relation: &'static Relation) -> Result<()> {
    let (value, other) = (quantity.si(), other.si());
    if value > other { Ok(()) } else { Err(Error::Contradiction { relation, value, other, kind: Q::KIND }) }
}

/// States the range of each argument in coherent SI, with the source of the limit, and refuses what is outside.
///
/// ```
/// use axlewright::{Result, valid, units::*};
/// fn wheel_travel(spring_travel: Length, motion_ratio: Ratio) -> Result<Length> {
///     valid! {
///         spring_travel: .. ; "any finite travel";
///         motion_ratio: 0 < .. <= 3 ; "common practice, no source";
///     }
///     Ok(spring_travel / motion_ratio)
/// }
/// assert!(wheel_travel(Length::of::<mm>(40.0), Ratio::of::<one>(0.0)).is_err());
/// ```
/// The forms are `..`, `0 < ..`, `0 <= .. < 1` and so on, and `mean_diameter > wire_diameter`.
#[macro_export]
macro_rules! valid {
    () => {};
    ($arg:ident > $other:ident ; $source:literal ; $($rest:tt)*) => {
        {
            const RELATION: &$crate::base::error::Relation = &$crate::base::error::Relation {
                argument: stringify!($arg), other: stringify!($other), source: $source,
            };
            $crate::base::valid::exceeds($arg, $other, RELATION)?;
        }
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, f64::NEG_INFINITY, true, f64::INFINITY, true, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt < .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, true, f64::INFINITY, true, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt <= .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, false, f64::INFINITY, true, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt < .. < $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, true, $hi as f64, true, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt < .. <= $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, true, $hi as f64, false, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt <= .. < $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, false, $hi as f64, true, $source);
        $crate::valid! { $($rest)* }
    };
    ($arg:ident : $lo:tt <= .. <= $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $arg, $lo as f64, false, $hi as f64, false, $source);
        $crate::valid! { $($rest)* }
    };
    (@limit $arg:ident, $lo:expr, $lo_open:literal, $hi:expr, $hi_open:literal, $source:literal) => {
        {
            const LIMIT: &$crate::base::error::Limit = &$crate::base::error::Limit {
                argument: stringify!($arg), lower: $lo, upper: $hi,
                lower_open: $lo_open, upper_open: $hi_open, source: $source,
            };
            $crate::base::valid::within($arg, LIMIT)?;
        }
    };
}
