//! All refusals, each worded once.
//!
//! Every refusal names the argument, its value, the limits, the unit and the source of the limit. The sentence
//! is built here, and C and Python reuse it unchanged.

pub use super::limit::{LEAST_MAGNITUDE, Limit, MOST_MAGNITUDE, Relation};
pub use super::no_solution::{Argument, NoSolution};
use super::text::{in_shop_units, print_si_to, shortened};
use super::units::Kind;
use core::fmt;

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
    NoSolution(Box<NoSolution>),
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
            Error::NoSolution(_) => 3,
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

impl Error {
    /// Inputs that have no answer, for this reason.
    pub fn no_solution(refusal: NoSolution) -> Error {
        Error::NoSolution(Box::new(refusal))
    }

    /// A document with one fault, whose place is not known yet.
    pub fn document(key: impl ToString, message: impl ToString) -> Error {
        Error::Document(Faults::from(Fault::new(key, message)))
    }

    /// Several refusals as one, in their order; a single one stays as it is. There must be at least one.
    pub fn all(errors: Vec<Error>) -> Error {
        let mut errors = errors;
        if errors.len() == 1
            && let Some(only) = errors.pop()
        {
            return only;
        }
        let faults = errors.into_iter().flat_map(|error| match error {
            Error::Document(faults) => faults.list,
            other => {
                vec![Fault { message: other.to_string(), cause: Some(Box::new(other)), ..Fault::default() }]
            }
        });
        let mut list: Vec<Fault> = faults.collect();
        let stopped = list.len() > MOST_FAULTS;
        list.truncate(MOST_FAULTS);
        Error::Document(Faults { list, stopped })
    }

    /// This refusal inside a part of a document: `parts[0]`.
    pub fn within(self, path: &str) -> Error {
        match self {
            Error::Document(faults) => Error::Document(faults.within(path)),
            other => {
                let fault = Fault::new(path, other.to_string());
                Error::Document(Faults::from(Fault { cause: Some(Box::new(other)), ..fault }))
            }
        }
    }
}

/// A value in coherent SI and, in brackets, in the units of a shop: ` = -52538.1 N/m (-52.54 N/mm, -300 lbf/in)`. It is written with enough digits to
/// differ from the bounds that it misses.
fn shown(value: f64, bounds: &[f64], kind: &'static Kind) -> String {
    let said = |si: f64, digits| print_si_to(si, kind, digits);
    let apart = |digits: &usize| {
        bounds.iter().all(|bound| *bound == value || said(*bound, *digits) != said(value, *digits))
    };
    if !value.is_finite() {
        return format!(" = {value}");
    }
    let plain = said(value, (6..=17).find(apart).unwrap_or(6));
    let shop = in_shop_units([value], kind);
    format!(" = {plain}{shop}")
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Error::OutOfRange { limit, value, kind } => {
                let (argument, words, limit) = (limit.argument, kind.words, limit.missed_by(*value));
                let fault = if value.is_finite() {
                    "outside its range".to_owned()
                } else {
                    format!("not a finite {words}")
                };
                let (value, valid) = (shown(*value, &[limit.lower, limit.upper], kind), limit.shown(kind));
                write!(f, "{argument}{value} is {fault}; valid: {valid} ({})", limit.source)
            }
            Error::Contradiction { relation, value, other, kind } => {
                let (argument, value, other) =
                    (relation.argument, shown(*value, &[*other], kind), shown(*other, &[*value], kind));
                let greater_than = relation.other;
                write!(
                    f,
                    "{argument}{value} must be greater than {greater_than}{other} ({})",
                    relation.source
                )
            }
            Error::NoSolution(refusal) => refusal.fmt(f),
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

/// Most faults that are reported at once; the reader stops there.
pub const MOST_FAULTS: usize = 25;

/// Bytes of the longest path that a fault keeps whole.
const LONGEST_KEY: usize = 2000;

/// One fault of a document.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fault {
    /// Line, counted from 1; 0 if the document was not read from text.
    pub line: usize,
    /// Column in characters, counted from 1; 0 if the document was not read from text.
    pub column: usize,
    /// Path of the key; empty if the fault is one of the whole document.
    pub key: String,
    /// Message: the fault, the allowed values and the remedy.
    pub message: String,
    /// The line of the document, shortened, and below it a caret under the place; empty without text.
    pub excerpt: String,
    /// Refusal of the value itself, with its limits, if a model refused it.
    pub cause: Option<Box<Error>>,
}

impl Fault {
    /// A fault whose place is not known yet.
    pub fn new(key: impl ToString, message: impl ToString) -> Fault {
        let key = key.to_string();
        // No key of a document that is read is so long, and each fault would carry it.
        let key = if key.len() > LONGEST_KEY { shortened(&key) } else { key };
        Fault { key, message: message.to_string(), ..Fault::default() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.line > 0 {
            write!(f, "line {}, column {}: ", self.line, self.column)?;
        }
        // The refusal of a value begins with its name.
        let named = self.message.strip_prefix(&self.key).is_some_and(|rest| rest.starts_with(" = "));
        if !self.key.is_empty() && !named {
            write!(f, "{}: ", shortened(&self.key))?;
        }
        f.write_str(&self.message)?;
        if self.excerpt.is_empty() { Ok(()) } else { write!(f, "\n{}", self.excerpt) }
    }
}

/// Faults of a document, in the order of their places; at least one.
#[derive(Debug, Clone, PartialEq)]
pub struct Faults {
    pub(in crate::base) list: Vec<Fault>,
    /// True if the reader stopped before the end of the document.
    pub stopped: bool,
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Faults {
        Faults { list: vec![fault], stopped: false }
    }
}

impl core::ops::Deref for Faults {
    type Target = [Fault];
    fn deref(&self) -> &[Fault] {
        &self.list
    }
}

impl Faults {
    /// These faults without lines and columns, for a document that no person wrote.
    pub fn without_places(mut self) -> Faults {
        for fault in &mut self.list {
            (fault.line, fault.column) = (0, 0);
            fault.excerpt.clear();
        }
        self
    }

    /// These faults with this path before every key.
    fn within(mut self, path: &str) -> Faults {
        for fault in &mut self.list {
            fault.key = if fault.key.is_empty() { path.to_owned() } else { format!("{path}.{}", fault.key) };
        }
        self
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.list.len() > 1 {
            let first = if self.stopped { "the first " } else { "" };
            let placed = self.list.iter().any(|fault| fault.line > 0);
            let order = if placed { ", in the order of the text" } else { "" };
            writeln!(f, "{first}{} faults{order}:", self.list.len())?;
        }
        for (place, fault) in self.list.iter().enumerate() {
            write!(f, "{}{fault}", if place > 0 { "\n" } else { "" })?;
        }
        if self.stopped {
            write!(f, "\nthe reader stopped after {MOST_FAULTS} faults: there may be more")?;
        }
        Ok(())
    }
}

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
            "it = -52538.1 N/m (-52.54 N/mm, -300 lbf/in) is outside its range; valid: 0 < it (why)"
        );
        assert_eq!(
            said(1e200, &POSITIVE, LinearStiffness::KIND),
            "it = 1e200 N/m (1e197 N/mm, 5.71e197 lbf/in) is outside its range; valid: 1e-30 <= it <= 1e30 N/m \
             (1e-33 N/mm to 1e27 N/mm, 5.71e-33 lbf/in to 5.71e27 lbf/in) \
             (plausibility limit of every argument in coherent SI: beyond it a result may overflow)"
        );
        assert_eq!(
            said(1e-40, &LIMIT, Ratio::KIND),
            "it = 1e-40 is outside its range; valid: 1e-30 <= it <= 2 \
             (plausibility limit of every argument in coherent SI: beyond it a result may overflow)"
        );
        assert_eq!(
            said(2.5, &LIMIT, Angle::KIND),
            "it = 2.5 rad (143.2 deg) is outside its range; valid: 0 < it <= 2 rad (0 deg to 114.6 deg) (why)"
        );
        assert_eq!(
            said(f64::NAN, &POSITIVE, AbsolutePressure::KIND),
            "it = NaN is not a finite absolute pressure; valid: 0 < it (why)"
        );
    }
}
