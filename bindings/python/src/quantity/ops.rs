//! Operands and results of sums, products and comparisons.
use super::held::{Quantity, RATIO, Unit};
use super::words::{a, how_to_write};
use crate::array::{Operation, Value, brief};
use axlewright::units::{
    self, AbsolutePressure, Kind, Quantity as _, Stress, Temperature, TemperatureDifference,
};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::PyInt;

const TEMPERATURE: &Kind = Temperature::KIND;
const DIFFERENCE: &Kind = TemperatureDifference::KIND;
const ABSOLUTE: &Kind = AbsolutePressure::KIND;
const STRESS: &Kind = Stress::KIND;

/// A point on a scale: two of them do not add, and it does not scale.
pub(super) fn is_point(kind: &Kind) -> bool {
    kind == TEMPERATURE || kind == ABSOLUTE
}

impl Quantity {
    /// Adds or subtracts; the rules of kinds are here and nowhere else.
    pub(super) fn added(
        &self,
        py: Python<'_>,
        operation: Operation,
        other: &Bound<'_, PyAny>,
    ) -> PyResult<Self> {
        let adding = matches!(operation, Operation::Add);
        let other = Self::operand(self.kind, other)?;
        let (kind, unit) = match (self.kind, other.kind, adding) {
            (left, right, false) if left == right && is_point(left) => self.difference(),
            (left, right, _) if left == TEMPERATURE && right == DIFFERENCE => (left, self.unit),
            (left, right, true) if left == DIFFERENCE && right == TEMPERATURE => (right, other.unit),
            (left, right, _) if left == right && !is_point(left) => (left, self.unit),
            (left, right, _) if left == right => {
                return Err(PyTypeError::new_err(format!("two values of {} do not add", left.words)));
            }
            (left, right, _) => {
                let (sign, words) = if adding { ("+", "add") } else { ("-", "subtract") };
                return Err(PyTypeError::new_err(format!(
                    "{} {sign} {}: {} and {} do not {words}",
                    self.words(py),
                    other.words(py),
                    a(left),
                    a(right)
                )));
            }
        };
        Ok(Quantity { value: self.value.with(py, operation, &other.value)?, kind, unit })
    }
    /// Kind and unit of a difference of two values of this kind.
    pub(super) fn difference(&self) -> (&'static Kind, &'static units::Unit) {
        if self.kind == TEMPERATURE {
            return (DIFFERENCE, delta(self.unit));
        }
        if self.kind == ABSOLUTE {
            let same = STRESS.units.iter().find(|unit| same_factor(unit, self.unit));
            return (STRESS, same.unwrap_or(&STRESS.units[0]));
        }
        (self.kind, self.unit)
    }
    /// Left operand that is not a quantity: a bare number, which only a ratio takes.
    pub(super) fn reflected(&self, operation: Operation, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = other.py();
        if matches!(operation, Operation::Add)
            && !self.is_ratio()
            && other.is_exact_instance_of::<PyInt>()
            && other.extract::<i64>().is_ok_and(|x| x == 0)
        {
            return Err(PyTypeError::new_err(format!(
                "Python's sum() begins with a bare 0, which is not {}; write concatenate(quantities).sum()",
                a(self.kind)
            )));
        }
        Ok(self.like(Self::operand(self.kind, other)?.value.with(py, operation, &self.value)?))
    }
    /// The other side of a sum or a comparison; a bare number only beside a ratio.
    pub(super) fn operand(kind: &'static Kind, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = other.py();
        if let Ok(other) = other.cast::<Quantity>() {
            let other = other.get();
            return Ok(other.like(other.value.copy(py)));
        }
        if kind == RATIO {
            return Ok(Quantity { value: Value::plain(other)?, kind, unit: &kind.units[0] });
        }
        Err(PyTypeError::new_err(format!(
            "{} has no unit and stands beside {}; write {}",
            brief(other),
            a(kind),
            how_to_write(kind, "300")
        )))
    }
    /// A plain number or array, or a ratio: a factor for a quantity.
    pub(super) fn scale(&self, other: &Bound<'_, PyAny>) -> PyResult<Value> {
        let py = other.py();
        if let Ok(other) = other.cast::<Quantity>() {
            let other = other.get();
            if other.is_ratio() {
                return Ok(other.value.copy(py));
            }
            return Err(PyTypeError::new_err(format!(
                "{} and {}: a product or quotient of unlike quantities belongs to a units library (see to_pint) or \
                 to a named function",
                self.words(py),
                other.words(py)
            )));
        }
        if other.is_instance_of::<Unit>() {
            return Err(PyTypeError::new_err(format!(
                "{} has its unit already; see Quantity.to",
                self.words(py)
            )));
        }
        Value::plain(other)
    }
    pub(super) fn scaled(&self, py: Python<'_>, operation: Operation, factor: &Value) -> PyResult<Self> {
        if is_point(self.kind) {
            return Err(PyTypeError::new_err(format!(
                "{}: {} is a point on a scale and does not scale",
                self.words(py),
                a(self.kind)
            )));
        }
        Ok(self.like(self.value.with(py, operation, factor)?))
    }
}

fn same_factor(one: &units::Unit, other: &units::Unit) -> bool {
    one.numerator == other.numerator && one.denominator == other.denominator
}

/// The unit of a difference of temperatures: `delta_degF` of `degF`.
fn delta(unit: &units::Unit) -> &'static units::Unit {
    let named = DIFFERENCE.units.iter().find(|delta| delta.name.strip_prefix("delta_") == Some(unit.name));
    named
        .or_else(|| DIFFERENCE.units.iter().find(|delta| same_factor(delta, unit)))
        .unwrap_or(&DIFFERENCE.units[0])
}
