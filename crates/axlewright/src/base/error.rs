//! All refusals, each worded once.
//!
//! Every refusal names the argument, its value, the limits, the unit and the source of the limit. The sentence
//! is built here, and C and Python reuse it unchanged.
#![expect(clippy::indexing_slicing, reason = "every kind lists a unit")]

use super::document::{Fault, Faults};
use super::text::{self, System};
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

/// The limits in the usual notation: `0 < motion_ratio <= 3`.
impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.lower == f64::NEG_INFINITY && self.upper == f64::INFINITY {
            return write!(f, "{} finite", self.argument);
        }
        if self.lower > f64::NEG_INFINITY {
            write!(f, "{} {} ", self.lower, if self.lower_open { "<" } else { "<=" })?;
        }
        f.write_str(self.argument)?;
        if self.upper < f64::INFINITY {
            write!(f, " {} {}", if self.upper_open { "<" } else { "<=" }, self.upper)?;
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

/// Reason for a refusal.
#[non_exhaustive]
#[derive(Debug, Clone, PartialEq)]
pub enum Error {
    /// An argument outside its limits, or not a number.
    OutOfRange {
        /// The limits.
        limit: &'static Limit,
        /// The value in coherent SI.
        value: f64,
        /// The argument's kind.
        kind: &'static Kind,
    },
    /// Two arguments that contradict each other.
    Contradiction {
        /// Relation that must hold between them.
        relation: &'static Relation,
        /// The value that is too small, in coherent SI.
        value: f64,
        /// The value that it must exceed, in coherent SI.
        other: f64,
        /// Their kind.
        kind: &'static Kind,
    },
    /// Inputs that are each allowed, but have no answer within the data.
    NoSolution {
        /// The missing answer, and the reason.
        message: String,
    },
    /// Text that is not a quantity, or is of another kind than expected.
    Text {
        /// The text as it was given.
        text: String,
        /// Fault of the text, and how to write it.
        message: String,
    },
    /// A document that cannot be read, or a value in it that is not allowed.
    Document(Faults),
    /// A list whose length does not fit.
    Length {
        /// The list.
        argument: &'static str,
        /// Its length.
        length: usize,
        /// Lengths that are allowed.
        wanted: &'static str,
    },
    /// An unknown input that the answer needs.
    Missing {
        /// Name of the field.
        argument: &'static str,
        /// Reason why the answer needs it.
        why: &'static str,
    },
}

impl Error {
    /// The frozen number of this kind of refusal, the same on every surface. A document with one fault, a value that its model
    /// refuses, has the number of that refusal.
    pub fn number(&self) -> i32 {
        match self {
            Error::OutOfRange { .. } => 1,
            Error::Contradiction { .. } => 2,
            Error::NoSolution { .. } => 3,
            Error::Text { .. } => 4,
            Error::Document(faults) => match &faults[..] {
                [Fault { cause: Some(cause), .. }] => cause.number(),
                _ => 5,
            },
            Error::Length { .. } => 6,
            Error::Missing { .. } => 7,
        }
    }
}

/// A value in coherent SI and, in brackets, in the units of a shop: ` = -52538.05 N/m (-52.54 N/mm, -300 lbf/in)`.
fn shown(value: f64, kind: &'static Kind) -> String {
    let plain = if kind.si == "1" { value.to_string() } else { format!("{value} {}", kind.units[0].symbol) };
    let shop = if value.is_finite() { in_shop_units(&[value], kind) } else { String::new() };
    format!(" = {plain}{shop}")
}

/// Values in the units of a shop, in brackets; empty if these are the SI unit itself.
fn in_shop_units(values: &[f64], kind: &'static Kind) -> String {
    let mut systems = vec![(kind.metric, System::Metric), (kind.us, System::Us)];
    systems.dedup_by_key(|(unit, _)| *unit);
    systems.retain(|(unit, _)| *unit != kind.units[0].name);
    let said = |(_, system): (&str, System)| {
        let each: Vec<String> = values.iter().map(|value| text::print(*value, kind, system)).collect();
        each.join(" to ")
    };
    let said: Vec<String> = systems.into_iter().map(said).collect();
    if said.is_empty() { String::new() } else { format!(" ({})", said.join(", ")) }
}

impl Limit {
    /// The limits with their unit, and in the units of a shop.
    fn shown(&self, kind: &'static Kind) -> String {
        let bounds: Vec<f64> =
            [self.lower, self.upper].into_iter().filter(|bound| bound.is_finite()).collect();
        if kind.si == "1" || bounds.iter().all(|bound| *bound == 0.0) {
            return self.to_string();
        }
        format!("{self} {}{}", kind.units[0].symbol, in_shop_units(&bounds, kind))
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Error::OutOfRange { limit, value, kind } => {
                let (argument, words) = (limit.argument, kind.words);
                let fault = if value.is_finite() {
                    "outside its range".to_owned()
                } else {
                    format!("not a finite {words}")
                };
                let (value, valid) = (shown(*value, kind), limit.shown(kind));
                write!(f, "{argument}{value} is {fault}; valid: {valid} ({})", limit.source)
            }
            Error::Contradiction { relation, value, other, kind } => {
                let (argument, value) = (relation.argument, shown(*value, kind));
                let (greater_than, other) = (relation.other, shown(*other, kind));
                write!(
                    f,
                    "{argument}{value} must be greater than {greater_than}{other} ({})",
                    relation.source
                )
            }
            Error::NoSolution { message } => f.write_str(message),
            Error::Text { text, message } => write!(f, "`{text}`: {message}"),
            Error::Document(faults) => faults.fmt(f),
            Error::Length { argument, length, wanted } => {
                write!(f, "{argument} has {length} entries; {wanted}")
            }
            Error::Missing { argument, why } => write!(f, "{argument} is not known: {why}"),
        }
    }
}

impl core::error::Error for Error {}

/// The answer; not a number if one of its inputs is unknown.
pub fn known<Q: super::units::Quantity>(answer: Result<Q>) -> Result<Q> {
    match answer {
        Err(Error::Missing { .. }) => Ok(Q::from_si(f64::NAN)),
        other => other,
    }
}

/// Result of every fallible function.
pub type Result<T> = core::result::Result<T, Error>;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{AbsolutePressure, Angle, LinearStiffness, Quantity, Ratio};

    static LIMIT: Limit =
        Limit { argument: "it", lower: 0.0, upper: 2.0, lower_open: true, upper_open: false, source: "why" };
    static POSITIVE: Limit = Limit { upper: f64::INFINITY, upper_open: true, ..LIMIT };

    #[test]
    fn a_sentence_speaks_the_units_of_a_shop_too() {
        let said = |value, limit, kind| Error::OutOfRange { limit, value, kind }.to_string();
        assert_eq!(said(4.0, &LIMIT, Ratio::KIND), "it = 4 is outside its range; valid: 0 < it <= 2 (why)");
        assert_eq!(
            said(-52538.05, &POSITIVE, LinearStiffness::KIND),
            "it = -52538.05 N/m (-52.54 N/mm, -300 lbf/in) is outside its range; valid: 0 < it (why)"
        );
        assert_eq!(
            said(2.5, &LIMIT, Angle::KIND),
            "it = 2.5 rad (143.2 deg) is outside its range; valid: 0 < it <= 2 rad (0 deg to 114.6 deg) (why)"
        );
        assert_eq!(
            said(f64::NAN, &POSITIVE, AbsolutePressure::KIND),
            "it = NaN Pa absolute is not a finite absolute pressure; valid: 0 < it (why)"
        );
    }
}
