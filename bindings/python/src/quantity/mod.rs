//! Quantities: a number or an array with its kind and the unit in which it is shown.
mod held;
mod methods;
mod ops;
pub mod pint;
mod product;
mod reduce;
mod take;
mod text;
mod unit;
mod words;

use crate::array::Value;
use axlewright::base::text::shortened;
use axlewright::units::{KINDS, Kind};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::PyDict;

pub use held::{Quantity, Unit};
pub use take::take;
use words::rounded;

fn kind_named(name: &str) -> PyResult<&'static Kind> {
    Kind::named(name)
        .ok_or_else(|| PyValueError::new_err(format!("there is no kind of quantity `{}`", shortened(name))))
}

/// The unit of a kind, by their names (for pickle).
#[pyfunction(name = "_unit")]
fn unit_named(kind: &str, unit: &str) -> PyResult<Unit> {
    let kind = kind_named(kind)?;
    let missing = || PyValueError::new_err(format!("{} has no unit `{}`", kind.name, shortened(unit)));
    Ok(Unit { unit: kind.unit(unit).ok_or_else(missing)?, kind })
}

/// A quantity from coherent SI and the names of its kind and unit (for pickle).
#[pyfunction(name = "_quantity")]
fn quantity_named(kind: &str, unit: &str, si: &Bound<'_, PyAny>) -> PyResult<Quantity> {
    let Unit { unit, kind } = unit_named(kind, unit)?;
    Ok(Quantity { value: Value::plain(si)?, kind, unit })
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    let py = m.py();
    m.add_class::<Unit>()?;
    m.add_class::<Quantity>()?;
    m.add_function(wrap_pyfunction!(unit_named, m)?)?;
    m.add_function(wrap_pyfunction!(quantity_named, m)?)?;
    m.add_function(wrap_pyfunction!(rounded, m)?)?;
    let table = PyDict::new(py);
    for kind in KINDS.iter().copied() {
        for unit in kind.units {
            if table.contains(unit.name)? {
                return Err(PyValueError::new_err(format!("two units are called {}", unit.name)));
            }
            table.set_item(unit.name, Unit { unit, kind })?;
        }
    }
    m.add("UNITS", table)
}
