//! Validity as data: [`valid!`](crate::valid) is the first statement of a function, enforced here and read by the generator.

use super::error::{Error, Limit, Relation, Result};
use super::text::print_si;
use super::units::{Quantity, Ratio};
use crate::base::error::NoSolution;

/// Rule for the arguments, with the message if it is broken. The error carries only references and numbers.
pub trait Rule {
    /// True if it holds; never true of NaN.
    fn holds(&self) -> bool;
    /// Reason for the refusal of the arguments.
    fn refusal(&self) -> Error;
}

/// A quantity lies inside a limit.
#[derive(Debug)]
pub struct Within<Q>(pub Q, pub &'static Limit);

impl<Q: Quantity> Rule for Within<Q> {
    #[inline(always)]
    fn holds(&self) -> bool {
        self.1.allows(self.0.si())
    }
    #[inline(always)]
    fn refusal(&self) -> Error {
        Error::OutOfRange { limit: self.1, value: self.0.si(), kind: Q::KIND }
    }
}

/// A quantity exceeds another one.
#[derive(Debug)]
pub struct Exceeds<Q>(pub Q, pub Q, pub &'static Relation);

impl<Q: Quantity> Rule for Exceeds<Q> {
    #[inline(always)]
    fn holds(&self) -> bool {
        self.0.si() > self.1.si()
    }
    #[inline(always)]
    fn refusal(&self) -> Error {
        Error::Contradiction { relation: self.2, value: self.0.si(), other: self.1.si(), kind: Q::KIND }
    }
}

/// Refuses a count that is not a whole number.
#[inline]
pub fn whole(argument: &str, count: Ratio) -> Result<()> {
    if count.si().fract() == 0.0 {
        return Ok(());
    }
    let (whole, part) = (count.si().floor(), count.si().rem_euclid(1.0));
    let by = match part.is_finite() {
        true => format!(": it is {} more than {whole}", print_si(part, Ratio::KIND)),
        false => String::new(),
    };
    let refusal = NoSolution::new(format!("is not a whole number{by}"));
    Err(Error::no_solution(refusal.of(argument.to_owned(), count)))
}

/// States the range of each argument in coherent SI, with the source of the limit, and refuses arguments outside.
///
/// ```
/// use axlewright::{Result, valid, units::*};
/// fn wheel_travel(spring_travel: Length, motion_ratio: Ratio) -> Result<Length> {
///     valid! {
///         spring_travel: .. ; "any finite travel";
///         motion_ratio: 0 < .. <= 3 ; "plausibility limit: a ratio above 3 is a percentage or turned upside down";
///     }
///     Ok(spring_travel / motion_ratio)
/// }
/// assert!(wheel_travel(Length::of::<mm>(40.0), Ratio::of::<one>(0.0)).is_err());
/// ```
/// The forms are `..`, `0 < ..`, `0 <= .. < 1` and so on, and `mean_diameter > wire_diameter`.
/// All rules are one condition, and the first broken rule is looked for only then, so that a loop over many elements vectorises.
#[macro_export]
macro_rules! valid {
    (@rules [$($rule:expr),+]) => {
        if !($($crate::base::valid::Rule::holds(&$rule))&&+) {
            return Err($crate::valid!(@first $($rule),+));
        }
    };
    (@first $rule:expr) => { $crate::base::valid::Rule::refusal(&$rule) };
    (@first $rule:expr, $($rest:expr),+) => {
        if $crate::base::valid::Rule::holds(&$rule) {
            $crate::valid!(@first $($rest),+)
        } else {
            $crate::base::valid::Rule::refusal(&$rule)
        }
    };
    (@rules [$($rule:expr),*] $arg:ident > $other:ident ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@rules [$($rule,)* $crate::base::valid::Exceeds($arg, $other, const {
            &$crate::base::error::Relation {
                argument: stringify!($arg), other: stringify!($other), source: $source,
            }
        })] $($rest)*)
    };
    (@rules $rules:tt $arg:ident : .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, f64::NEG_INFINITY, true, f64::INFINITY, true, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt < .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, true, f64::INFINITY, true, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt <= .. ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, false, f64::INFINITY, true, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt < .. < $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, true, $hi as f64, true, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt < .. <= $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, true, $hi as f64, false, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt <= .. < $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, false, $hi as f64, true, $source; $($rest)*)
    };
    (@rules $rules:tt $arg:ident : $lo:tt <= .. <= $hi:tt ; $source:literal ; $($rest:tt)*) => {
        $crate::valid!(@limit $rules $arg, $lo as f64, false, $hi as f64, false, $source; $($rest)*)
    };
    (@limit [$($rule:expr),*] $arg:ident, $lo:expr, $lo_open:literal, $hi:expr, $hi_open:literal, $source:literal; $($rest:tt)*) => {
        $crate::valid!(@rules [$($rule,)* $crate::base::valid::Within($arg, const {
            &$crate::base::error::Limit {
                argument: stringify!($arg), lower: $lo, upper: $hi,
                lower_open: $lo_open, upper_open: $hi_open, source: $source,
            }
        })] $($rest)*)
    };
    ($($rules:tt)+) => { $crate::valid!(@rules [] $($rules)+) };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_count_is_whole_and_a_refusal_names_it() {
        for count in [1.0, 4.0, 1e15] {
            assert_eq!(whole("studs", Ratio::from_si(count)), Ok(()));
        }
        for (count, says) in [
            (4.5, "studs = 4.5 is not a whole number: it is 0.5 more than 4"),
            (4.0 + 1e-12, "studs = 4 is not a whole number: it is 1.00009e-12 more than 4"),
            (f64::NAN, "studs = NaN is not a whole number"),
            (f64::INFINITY, "studs = inf is not a whole number"),
        ] {
            assert_eq!(whole("studs", Ratio::from_si(count)).unwrap_err().to_string(), says);
        }
    }
}
