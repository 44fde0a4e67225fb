//! The native half of the `axlewright` Python package: quantities, genuine NumPy ufuncs, and the functions that
//! take quantities. The facade that people import is Python, in `axlewright/`.
use pyo3::prelude::*;
use pyo3::types::PyDict;

mod array;
mod call;
mod error;
mod kernels;
mod model;
mod pint;
mod product;
mod quantity;
mod sheet;
mod table;
mod ufunc;
mod work;

#[pymodule]
fn _native(m: &Bound<'_, PyModule>) -> PyResult<()> {
    let py = m.py();
    m.add("__version__", env!("CARGO_PKG_VERSION"))?;
    error::register(m)?;
    quantity::register(m)?;
    table::register(m)?;
    model::register(m)?;
    work::register(m)?;
    sheet::register(m)?;
    let kernels = call::Kernels { functions: PyDict::new(py), ufuncs: PyDict::new(py) };
    ufunc::register(&kernels)?;
    kernels::register(&kernels)?;
    m.add("functions", kernels.functions)?;
    m.add("ufuncs", kernels.ufuncs)
}
