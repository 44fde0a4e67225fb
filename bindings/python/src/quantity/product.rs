//! Products and quotients of quantities: they are refused, and the refusal says what to write instead.
use super::held::{Quantity, Unit};
use super::words::written;
use crate::array::{Operation, Value, brief};
use axlewright::base::text;
use axlewright::units::{self, Acceleration, Force, Kind, Mass, Quantity as _};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;

const MASS: &Kind = Mass::KIND;
const FORCE: &Kind = Force::KIND;
const ACCELERATION: &Kind = Acceleration::KIND;
/// Accelerations that mean gravity, as people round it, in m/s².
const GRAVITY: std::ops::RangeInclusive<f64> = 9.78..=9.83;

/// Unit of the expected kind to suggest instead of this one: `kgf` for `kg` if a force is expected.
pub fn instead(unit: &units::Unit, wanted: &'static Kind) -> Option<&'static units::Unit> {
    let Err(axlewright::Error::Text { message, .. }) = text::unit(unit.symbol, Some(wanted)) else {
        return None;
    };
    let (_, advice) = message.rsplit_once("; write `")?;
    text::unit(advice.strip_suffix('`')?, Some(wanted)).ok().map(|(_, unit)| unit)
}

/// One side of a product: a unit, and the number in it.
pub struct Factor {
    pub kind: &'static Kind,
    pub unit: &'static units::Unit,
    pub number: Number,
}

/// Number before a unit.
pub enum Number {
    /// A unit by itself.
    None,
    One(f64),
    Array,
}

impl Factor {
    fn of(x: &Bound<'_, PyAny>) -> Option<Self> {
        if let Ok(unit) = x.cast::<Unit>() {
            let unit = unit.get();
            return Some(Factor { kind: unit.kind, unit: unit.unit, number: Number::None });
        }
        let quantity = x.cast::<Quantity>().ok()?.get();
        let number = match quantity.value {
            Value::Number(si) => Number::One(quantity.shown_number(si)),
            Value::Array(_) => Number::Array,
        };
        Some(Factor { kind: quantity.kind, unit: quantity.unit, number })
    }
}

/// Text for the product or quotient of two quantities or units, if it has a unit of its own or is a weight:
/// `300 * lbf_in`, `kgf(100)`.
fn composed(one: &Factor, operation: Operation, other: &Factor) -> Option<String> {
    let multiplied = matches!(operation, Operation::Multiply);
    let mass = match (one.kind, other.kind) {
        (mass, acceleration) if mass == MASS && acceleration == ACCELERATION => Some((one, other)),
        (acceleration, mass) if mass == MASS && acceleration == ACCELERATION => Some((other, one)),
        _ => None,
    };
    if let Some((mass, acceleration)) = mass.filter(|_| multiplied) {
        let one = acceleration.unit.to_si(1.0);
        let gravity = match acceleration.number {
            Number::One(number) => GRAVITY.contains(&(number * one)),
            Number::None | Number::Array => GRAVITY.contains(&one),
        };
        if !gravity {
            let force = match (&mass.number, &acceleration.number) {
                (Number::One(mass_number), Number::One(number)) => {
                    written(mass.unit.to_si(*mass_number) * acceleration.unit.to_si(*number))
                }
                _ => "kilograms times m/s²".to_owned(),
            };
            return Some(format!("for the force that accelerates a mass write N({force})"));
        }
        let (unit, weight) = match instead(mass.unit, FORCE) {
            Some(weight) => (mass.unit, weight.name),
            None => (&MASS.units[0], "kgf"),
        };
        let number = match mass.number {
            Number::None => written(unit.from_si(mass.unit.to_si(1.0))),
            Number::One(number) => written(unit.from_si(mass.unit.to_si(number))),
            Number::Array => "array".to_owned(),
        };
        return Some(format!("for the weight of a mass write {weight}({number})"));
    }
    let sign = if multiplied { '·' } else { '/' };
    let (_, unit) = text::unit(&format!("{}{sign}{}", one.unit.symbol, other.unit.symbol), None).ok()?;
    let name = unit.name;
    let number = |x: &Number| match x {
        Number::One(x) => Some(*x),
        Number::None => Some(1.0),
        Number::Array => None,
    };
    Some(match (&one.number, &other.number, number(&one.number).zip(number(&other.number))) {
        (Number::None, Number::None, _) => format!("write {name}"),
        (_, _, Some((one, other))) if multiplied => format!("write {} * {name}", written(one * other)),
        (_, _, Some((one, other))) => format!("write {} * {name}", written(one / other)),
        _ => format!("write {name}(array)"),
    })
}

/// A unit by its name, a quantity as it is shown.
fn named(x: &Bound<'_, PyAny>) -> String {
    if let Ok(unit) = x.cast::<Unit>() {
        return unit.get().unit.name.to_owned();
    }
    x.cast::<Quantity>().map_or_else(|_| brief(x), |quantity| quantity.get().words(x.py()))
}

/// Refuses a product or quotient, and says how to write it.
pub fn refuse_composed(
    one: &Bound<'_, PyAny>,
    operation: Operation,
    other: &Bound<'_, PyAny>,
) -> Option<PyErr> {
    let sign = if matches!(operation, Operation::Multiply) { '*' } else { '/' };
    let advice = composed(&Factor::of(one)?, operation, &Factor::of(other)?)?;
    Some(PyTypeError::new_err(format!("{} {sign} {}: {advice}", named(one), named(other))))
}
