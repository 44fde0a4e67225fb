//! Rules of the build sheet: typed functions and stages of models, their inputs taken from lines by name.
//!
//! A rule is written once, beside the part that it belongs to, as a function of one struct: a model, or a few named quantities. The macro
//! `rule!` names the line of every field and the results that lines take. Which inputs may be missing follows from their types.
#![expect(
    clippy::indexing_slicing,
    reason = "places of names are found while compiling, and a choice is cut to its list"
)]

use crate::base::document::{Stated, Value};
use crate::units::{Kind, Quantity};
use crate::{Error, Result};

/// A typed function with its lines.
#[derive(Debug)]
pub struct Rule {
    /// Formula, for the report.
    pub formula: &'static str,
    /// Source of the formula.
    pub source: &'static str,
    /// Inputs, in the order of the call.
    pub inputs: &'static [Taken],
    /// Names of the results, in order.
    pub results: &'static [&'static str],
    /// Adds the shapes of inputs and results.
    pub shape: fn(&mut Shape),
    /// Fills the results from the values of the inputs, in coherent SI.
    pub call: fn(Given<'_>, &mut [f64]) -> Result<()>,
    /// Message if a result is not a number although the inputs are known.
    pub lacking: &'static str,
}

/// One input of a rule.
#[derive(Debug, Clone, Copy)]
pub struct Taken {
    /// Name of the field.
    pub name: &'static str,
    /// Path of its line, or of the table whose lines fill it.
    pub path: &'static str,
    /// Need of the rule for it.
    pub need: Need,
}

/// Need of a rule for an input.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// As its type says.
    Typed,
    /// Needed, although the model may lack it.
    Needed,
    /// Used if it is known.
    Used,
}

/// Shape of a rule's inputs and results.
#[derive(Debug, Default)]
pub struct Shape {
    /// Leaves of each input.
    pub inputs: Vec<Vec<Leaf>>,
    /// Whether each input is drawn as a whole or not at all.
    pub wholes: Vec<bool>,
    /// Content of each result.
    pub results: Vec<Fits>,
}

/// One value of an input.
#[derive(Debug, Clone)]
pub struct Leaf {
    /// Path below the input: empty, or `front_pivot.x`.
    pub key: String,
    /// Content that fits there.
    pub fits: Fits,
    /// Number of optional parts around it.
    pub optional: u8,
}

/// Content that fits the line of a leaf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fits {
    /// A quantity.
    Quantity(&'static Kind),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A marking.
    Marking,
}

/// Values for a call, or the place where its shape is written.
#[derive(Debug)]
pub struct Given<'a> {
    values: &'a [f64],
    /// Number of values of each input.
    counts: &'a [u16],
    input: usize,
    shape: Option<&'a mut Shape>,
}

impl<'a> Given<'a> {
    /// The values of the inputs, one after the other, and how many each input takes.
    pub fn new(values: &'a [f64], counts: &'a [u16]) -> Given<'a> {
        Given { values, counts, input: 0, shape: None }
    }

    /// The next field.
    #[inline]
    pub fn take<T: Input>(&mut self) -> T {
        if self.shape.is_some() {
            return self.record();
        }
        let count = usize::from(self.counts.get(self.input).copied().unwrap_or(0));
        self.input += 1;
        let (mine, rest) = self.values.split_at(count.min(self.values.len()));
        self.values = rest;
        let mut values = mine.iter();
        T::take(&mut values)
    }

    /// The next field of a call that only records its inputs.
    #[cold]
    fn record<T: Input>(&mut self) -> T {
        if let Some(shape) = &mut self.shape {
            shape.add::<T>();
        }
        T::unknown()
    }
}

impl Shape {
    /// A call that only records its inputs.
    pub fn given(&mut self) -> Given<'_> {
        Given { values: &[], counts: &[], input: 0, shape: Some(self) }
    }

    /// An input of this type.
    pub fn add<T: Input>(&mut self) {
        let mut leaves = Vec::new();
        T::leaves("", 0, &mut leaves);
        self.inputs.push(leaves);
        self.wholes.push(T::WHOLE);
    }

    /// An input of the type of this field.
    pub fn input<P, T: Input>(&mut self, _: fn(&P) -> &T) {
        self.add::<T>();
    }

    /// The only result of a function.
    pub fn result<I, T: Output>(&mut self, _: fn(&I) -> Result<T>) {
        self.results.push(T::FITS);
    }

    /// One result of a function with several.
    pub fn field<R, T: Output>(&mut self, _: fn(&R) -> T) {
        self.results.push(T::FITS);
    }
}

/// Type of a rule's result.
pub trait Output {
    /// Content of the line that takes it.
    const FITS: Fits;
    /// Value of that line: coherent SI, or the place of a word.
    fn value(self) -> f64;
}

impl<Q: Quantity> Output for Q {
    const FITS: Fits = Fits::Quantity(Q::KIND);
    fn value(self) -> f64 {
        self.si()
    }
}

/// Values in the order of the leaves.
pub type Values<'a> = core::slice::Iter<'a, f64>;

/// Type of a rule's input.
pub trait Input: Sized {
    /// Number of its leaves; a list counts one entry.
    const LEAVES: usize;
    /// Whether it is refused where it is only begun.
    const WHOLE: bool = false;
    /// Adds its leaves below `key`, inside this many optional parts.
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>);
    /// Reads it. A required quantity that is missing is not a number.
    fn take(values: &mut Values<'_>) -> Self;
    /// True if everything that it requires is known.
    fn is_known(values: &mut Values<'_>) -> bool;
    /// The input with nothing known.
    fn unknown() -> Self;
}

impl<Q: Quantity> Input for Q {
    const LEAVES: usize = 1;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        leaves.push(Leaf { key: key.to_owned(), fits: Fits::Quantity(Q::KIND), optional });
    }
    #[inline]
    fn take(values: &mut Values<'_>) -> Q {
        Q::from_si(values.next().copied().unwrap_or(f64::NAN))
    }
    #[inline]
    fn is_known(values: &mut Values<'_>) -> bool {
        values.next().is_some_and(|value| !value.is_nan())
    }
    fn unknown() -> Q {
        Q::from_si(f64::NAN)
    }
}

impl<Q: Quantity> Input for Value<Q> {
    const LEAVES: usize = 1;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        Q::leaves(key, optional, leaves);
    }
    #[inline]
    fn take(values: &mut Values<'_>) -> Value<Q> {
        Value::new(Q::take(values))
    }
    #[inline]
    fn is_known(values: &mut Values<'_>) -> bool {
        Q::is_known(values)
    }
    fn unknown() -> Value<Q> {
        Value::new(Q::unknown())
    }
}

impl<T: Input> Input for Option<T> {
    const LEAVES: usize = T::LEAVES;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        T::leaves(key, optional + 1, leaves);
    }
    #[inline]
    fn take(values: &mut Values<'_>) -> Option<T> {
        let mut ahead = values.clone();
        let known = T::is_known(&mut ahead);
        let part = T::take(values);
        known.then_some(part)
    }
    #[inline]
    fn is_known(values: &mut Values<'_>) -> bool {
        T::is_known(values);
        true
    }
    fn unknown() -> Option<T> {
        None
    }
}

impl<T: Input> Input for Stated<T> {
    const LEAVES: usize = T::LEAVES;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        Option::<T>::leaves(key, optional, leaves);
    }
    #[inline]
    fn take(values: &mut Values<'_>) -> Stated<T> {
        let none = values.clone().take(T::LEAVES).any(|value| is_none(*value));
        match <Option<T> as Input>::take(values) {
            Some(part) => Stated::Given(part),
            None if none => Stated::None,
            None => Stated::Unknown,
        }
    }
    #[inline]
    fn is_known(values: &mut Values<'_>) -> bool {
        Option::<T>::is_known(values)
    }
    fn unknown() -> Stated<T> {
        Stated::Unknown
    }
}

/// Value of a line that the sheet declares `none`: not a number, with bits of its own.
pub const NONE: f64 = f64::from_bits(0x7ff8_0000_6e6f_6e65);

/// True if the sheet declares it `none`.
pub fn is_none(value: f64) -> bool {
    value.to_bits() == NONE.to_bits()
}

/// A marking that is there; its numbers are lines of their own.
#[derive(Debug, Clone, Copy)]
pub struct Marked;

impl Input for Marked {
    const LEAVES: usize = 1;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        leaves.push(Leaf { key: key.to_owned(), fits: Fits::Marking, optional });
    }
    fn take(values: &mut Values<'_>) -> Marked {
        values.next();
        Marked
    }
    fn is_known(values: &mut Values<'_>) -> bool {
        values.next().is_some_and(|value| !value.is_nan())
    }
    fn unknown() -> Marked {
        Marked
    }
}

/// A list: as many entries as the sheet has places for, each of them known or not.
impl<T: Input> Input for Vec<T> {
    const LEAVES: usize = T::LEAVES;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        T::leaves(key, optional, leaves);
    }
    fn take(values: &mut Values<'_>) -> Vec<T> {
        let count = values.len() / T::LEAVES.max(1);
        (0..count).map(|_| T::take(values)).collect()
    }
    fn is_known(values: &mut Values<'_>) -> bool {
        let count = values.len() / T::LEAVES.max(1);
        (0..count).fold(true, |known, _| T::is_known(values) && known)
    }
    fn unknown() -> Vec<T> {
        Vec::new()
    }
}

/// A part that a sheet draws as a whole or not at all.
#[derive(Debug, Clone)]
pub enum Whole<T> {
    /// The part is not drawn.
    Nothing,
    /// The part is drawn with all that it requires.
    Drawn(T),
    /// The part is begun: names of the first missing leaf, and of the first one that is there.
    Begun(String, String),
}

impl<T> Whole<T> {
    /// The part, if it is drawn; refused if it is only begun.
    pub fn drawn(&self, name: &str) -> Result<Option<&T>> {
        match self {
            Whole::Nothing => Ok(None),
            Whole::Drawn(part) => Ok(Some(part)),
            Whole::Begun(missing, there) => {
                let message = format!("it is not written although {name}.{there} is");
                Err(Error::document(format!("{name}.{missing}"), message))
            }
        }
    }
}

impl<T: Input> Input for Whole<T> {
    const LEAVES: usize = T::LEAVES;
    const WHOLE: bool = true;
    fn leaves(key: &str, optional: u8, leaves: &mut Vec<Leaf>) {
        T::leaves(key, optional + 1, leaves);
    }
    #[inline]
    fn take(values: &mut Values<'_>) -> Whole<T> {
        let before = values.clone();
        match <Option<T> as Input>::take(values) {
            Some(part) => Whole::Drawn(part),
            None => {
                begun::<T>(before).map_or(Whole::Nothing, |[missing, there]| Whole::Begun(missing, there))
            }
        }
    }
    #[inline]
    fn is_known(values: &mut Values<'_>) -> bool {
        Option::<T>::is_known(values)
    }
    fn unknown() -> Whole<T> {
        Whole::Nothing
    }
}

/// First missing required leaf of an unknown part, and the first leaf that is there, if there is one.
fn begun<T: Input>(values: Values<'_>) -> Option<[String; 2]> {
    let values = values.take(T::LEAVES);
    if values.clone().all(|value| value.is_nan()) {
        return None;
    }
    let mut leaves = Vec::new();
    T::leaves("", 0, &mut leaves);
    let first = |known: bool| {
        let mut required = leaves.iter().zip(values.clone()).filter(|(leaf, _)| leaf.optional == 0);
        required.find(|(_, value)| value.is_nan() != known).map(|(leaf, _)| leaf.key.clone())
    };
    Some([first(false)?, first(true)?])
}

/// Path of a field below a part; either may be empty.
pub fn below(part: &str, field: &str) -> String {
    let dot = if part.is_empty() || field.is_empty() { "" } else { "." };
    format!("{part}{dot}{field}")
}

/// Place of a name among names; the build stops if it is not there.
pub const fn place_of(names: &[&str], name: &str) -> usize {
    let mut place = 0;
    while place < names.len() && !same(names[place], name) {
        place += 1;
    }
    assert!(place < names.len(), "there is a result of this name");
    place
}

/// True if two texts are equal, at compile time.
pub(super) const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    if one.len() != other.len() {
        return false;
    }
    let mut at = 0;
    while at < one.len() {
        if one[at] != other[at] {
            return false;
        }
        at += 1;
    }
    true
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::section::{fields, rule};
    use crate::units::{Length, Ratio};

    struct Point {
        x: Length,
        z: Length,
    }
    fields!(Point { x, z });

    struct Rod {
        body: Point,
        axle: Point,
        bush: Option<Ratio>,
        stretch: Length,
    }
    fields!(Rod { body, axle = "eye", bush; stretch });

    struct Rods {
        left: Rod,
        right: Whole<Rod>,
    }
    fields!(Rods { left, right });

    impl Rods {
        fn reach(&self) -> Result<Length> {
            let right = self.right.drawn("right")?.map_or(Length::from_si(0.0), |rod| rod.axle.x);
            Ok(self.left.axle.x + self.left.stretch + right)
        }
    }

    const REACH: Rule = rule! {
        "axle" Rods::reach, Rods
        takes { left, right = "other", left.stretch = "axle.wear" }
        says "", ""
    };

    const DRAWN: [f64; 5] = [0.0, 0.0, 2.0, 0.0, f64::NAN];

    fn reach(right: [f64; 5]) -> Result<f64> {
        let mut results = [f64::NAN];
        let values = [&DRAWN[..], &right, &[0.25]].concat();
        (REACH.call)(Given::new(&values, &[5, 5, 1]), &mut results)?;
        Ok(results[0])
    }

    #[test]
    fn fields_stand_under_their_names_or_the_key_that_is_named() {
        let mut leaves = Vec::new();
        Rods::leaves("", 0, &mut leaves);
        let keys: Vec<(&str, u8)> = leaves.iter().map(|leaf| (leaf.key.as_str(), leaf.optional)).collect();
        let left =
            [("left.body.x", 0), ("left.body.z", 0), ("left.eye.x", 0), ("left.eye.z", 0), ("left.bush", 1)];
        let right = [
            ("right.body.x", 1),
            ("right.body.z", 1),
            ("right.eye.x", 1),
            ("right.eye.z", 1),
            ("right.bush", 2),
        ];
        assert_eq!(keys, [left, right].concat());
        assert_eq!(Rods::LEAVES, keys.len());
    }

    #[test]
    fn a_field_of_a_field_is_filled_from_its_own_line() {
        let inputs: Vec<(&str, &str)> = REACH.inputs.iter().map(|taken| (taken.name, taken.path)).collect();
        assert_eq!(inputs, [("left", "axle.left"), ("right", "other"), ("left.stretch", "axle.wear")]);
        assert_eq!(reach([f64::NAN; 5]), Ok(2.25));
    }

    #[test]
    fn a_part_is_drawn_as_a_whole_or_not_at_all() {
        assert_eq!(reach(DRAWN), Ok(4.25));
        let bush_alone = [f64::NAN, f64::NAN, f64::NAN, f64::NAN, 1.0];
        assert_eq!(reach(bush_alone), Ok(2.25));
        let begun = reach([f64::NAN, 0.0, 2.0, f64::NAN, f64::NAN]).map_err(|error| error.to_string());
        assert_eq!(begun, Err("right.body.x: it is not written although right.body.z is".to_owned()));
    }
}
