//! Refusal of inputs that are each allowed, but have no answer together: the inputs, the bound that they break, and the reason.

use super::text::{DIGITS, digits_apart, said_in, shop_units};
use super::units::{Kind, Quantity, Unit};
use core::fmt;
use std::borrow::Cow;

/// Refusal of inputs that are each allowed, but have no answer. Built with [`cannot!`](crate::cannot).
#[derive(Debug, Clone, PartialEq)]
pub struct NoSolution {
    /// Arguments that it concerns, the one to change first. Empty if no value is at fault.
    pub arguments: Vec<Argument>,
    /// Least value of the first argument that has an answer, in coherent SI; minus infinity if there is none.
    pub lower: f64,
    /// Largest value of the first argument that has an answer, in coherent SI; plus infinity if there is none.
    pub upper: f64,
    /// True if the lower bound itself has no answer.
    pub lower_open: bool,
    /// True if the upper bound itself has no answer.
    pub upper_open: bool,
    /// Reason: what the first argument does wrong, or a whole sentence if there is no argument.
    pub reason: String,
}

/// An argument that a refusal concerns.
#[derive(Debug, Clone, PartialEq)]
pub struct Argument {
    /// Name of the argument.
    pub name: Cow<'static, str>,
    /// Its value in coherent SI.
    pub value: f64,
    /// Its kind.
    pub kind: &'static Kind,
    /// Units in which a message writes it.
    units: Vec<&'static Unit>,
}

impl NoSolution {
    /// A refusal for this reason; no argument is at fault yet.
    #[cold]
    pub fn new(reason: impl Into<String>) -> NoSolution {
        NoSolution {
            arguments: Vec::new(),
            lower: f64::NEG_INFINITY,
            upper: f64::INFINITY,
            lower_open: false,
            upper_open: false,
            reason: reason.into(),
        }
    }

    /// Adds an argument that it concerns.
    #[must_use]
    pub fn of<Q: Quantity>(mut self, name: impl Into<Cow<'static, str>>, value: Q) -> NoSolution {
        let units = shop_units(Q::KIND);
        self.arguments.push(Argument { name: name.into(), value: value.si(), kind: Q::KIND, units });
        self
    }

    /// Writes the last argument in these units, if the shop's units for such a part differ from those for a vehicle.
    #[must_use]
    pub fn in_units(mut self, units: &[&'static Unit]) -> NoSolution {
        if let Some(last) = self.arguments.last_mut() {
            last.units = units.to_vec();
        }
        self
    }

    /// The first argument has an answer from this value on.
    #[must_use]
    pub fn at_least<Q: Quantity>(self, lower: Q) -> NoSolution {
        NoSolution { lower: lower.si(), ..self }
    }

    /// The first argument has an answer up to this value.
    #[must_use]
    pub fn at_most<Q: Quantity>(self, upper: Q) -> NoSolution {
        NoSolution { upper: upper.si(), ..self }
    }

    /// The first argument has an answer above this value.
    #[must_use]
    pub fn more_than<Q: Quantity>(self, lower: Q) -> NoSolution {
        NoSolution { lower_open: true, ..self.at_least(lower) }
    }

    /// The first argument has an answer below this value.
    #[must_use]
    pub fn less_than<Q: Quantity>(self, upper: Q) -> NoSolution {
        NoSolution { upper_open: true, ..self.at_most(upper) }
    }

    /// The sentence, with the first argument and its bounds in the unit in which a person wrote it, if that is known.
    pub fn sentence(&self, written: Option<&'static Unit>) -> String {
        let Some((first, others)) = self.arguments.split_first() else { return self.reason.clone() };
        let units = written.map_or_else(|| first.units.clone(), |unit| vec![unit]);
        let bounds: Vec<f64> =
            [self.lower, self.upper].into_iter().filter(|bound| bound.is_finite()).collect();
        let digits = digits_apart(first.value, &bounds, &units);
        let gap = if self.reason.starts_with(':') { "" } else { " " };
        let mut sentence =
            format!("{} = {}{gap}{}", first.name, said_in([first.value], &units, digits), self.reason);
        let range = said_in(bounds, &units, digits);
        match (self.lower.is_finite(), self.upper.is_finite()) {
            (true, true) => sentence += &format!("; allowed: {range}"),
            (true, false) if self.lower_open => sentence += &format!("; allowed: more than {range}"),
            (true, false) => sentence += &format!("; allowed: at least {range}"),
            (false, true) if self.upper_open => sentence += &format!("; allowed: less than {range}"),
            (false, true) => sentence += &format!("; allowed: at most {range}"),
            (false, false) => {}
        }
        for (place, argument) in others.iter().enumerate() {
            let value = said_in([argument.value], &argument.units, DIGITS);
            let joint = if place == 0 { "; with" } else { "," };
            sentence += &format!("{joint} {} = {value}", argument.name);
        }
        sentence
    }
}

impl fmt::Display for NoSolution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.sentence(None))
    }
}

/// Error of inputs that are each allowed, but have no answer: the arguments, the bound of the first one, and the reason.
///
/// The reason is a format string that continues the sentence from the first argument: `engine_speed = 5000 rpm` *is above the red line*. The reason says what to do, and
/// the bound says what is allowed. Values are written in the units of a shop.
///
/// ```
/// use axlewright::{cannot, units::*};
/// let engine_speed = AngularVelocity::of::<rpm>(5000.0);
/// let (red_line, gear) = (AngularVelocity::of::<rpm>(4200.0), Ratio::of::<one>(3.5));
/// let says = |error: axlewright::Error| error.to_string();
/// assert_eq!(
///     says(cannot!(engine_speed <= red_line, gear; "is above the red line")),
///     "engine_speed = 5000 rpm is above the red line; allowed: at most 4200 rpm; with gear = 3.5"
/// );
/// assert_eq!(says(cannot!(engine_speed; "is too fast")), "engine_speed = 5000 rpm is too fast");
/// assert_eq!(says(cannot!("the gearbox has no gears: list at least one")), "the gearbox has no gears: list at least one");
/// ```
/// The forms are `x`, `x <= high`, `x < high`, `x >= low`, `x > low` and `low <= x <= high`, then other arguments, each a variable or `name = value`.
#[macro_export]
macro_rules! cannot {
    ($reason:literal $($values:tt)*) => { $crate::cannot!(@[] ; $reason $($values)*) };
    (@[$($said:tt)*] ; $($reason:tt)+) => {
        $crate::Error::no_solution($crate::base::error::NoSolution::new(format!($($reason)+)) $($said)*)
    };
    (@[$($said:tt)*] , $x:ident <= $high:tt $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $x).at_most($high)] $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident < $high:tt $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $x).less_than($high)] $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident >= $low:tt $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $x).at_least($low)] $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident > $low:tt $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $x).more_than($low)] $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident = $value:expr , $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $value)] , $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident = $value:expr ; $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $value)] ; $($rest)+)
    };
    (@[$($said:tt)*] , $x:ident $($rest:tt)+) => {
        $crate::cannot!(@[$($said)* .of(stringify!($x), $x)] $($rest)+)
    };
    ($low:ident <= $x:ident <= $high:ident $($rest:tt)+) => {
        $crate::cannot!(@[.of(stringify!($x), $x).at_least($low).at_most($high)] $($rest)+)
    };
    ($($all:tt)+) => { $crate::cannot!(@[] , $($all)+) };
}
