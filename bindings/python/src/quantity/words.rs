//! Words for kinds and numbers.
use axlewright::base::text;
use axlewright::units::{Kind, Quantity as _, Ratio};
use pyo3::prelude::*;
use pyo3::types::PyType;

/// `a linear stiffness`, `an angle`.
pub fn a(kind: &Kind) -> String {
    let article = if kind.words.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    format!("{article} {}", kind.words)
}

/// Text of a quantity of this kind: `300 * N_mm or "300 N/mm"`.
pub fn how_to_write(kind: &Kind, number: &str) -> String {
    let unit = kind.unit(kind.metric).unwrap_or(&kind.units[0]);
    let (name, symbol) = (unit.name, unit.symbol);
    if unit.offset != 0.0 {
        format!("{name}({number}) or \"{number} {symbol}\"")
    } else {
        format!("{number} * {name} or \"{number} {symbol}\"")
    }
}

/// A number as a shop writes it: four significant digits.
#[pyfunction(name = "_rounded")]
pub fn rounded(number: f64) -> String {
    const RATIO: &Kind = Ratio::KIND;
    let short = format!("{number:.3e}").parse().unwrap_or(number) + 0.0; // no negative zero
    text::print_in(short, RATIO, &RATIO.units[0])
}

/// A number with all its digits, and no more.
pub fn written(number: f64) -> String {
    let number = format!("{number:?}");
    number.strip_suffix(".0").map_or(number.clone(), str::to_owned)
}

/// Above that of the data of pandas, so that it leaves arithmetic to the quantity.
pub const PRIORITY: i32 = 10_000;

/// A class with the kind of its quantities, for annotations: `Quantity[Mass]`.
pub fn alias<'py>(class: &Bound<'py, PyType>, kind: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    class.py().import("types")?.getattr("GenericAlias")?.call1((class, kind))
}
