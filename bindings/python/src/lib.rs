//! The native half of the `axlewright` Python package: quantities, genuine NumPy ufuncs, and the functions that
//! take quantities. The facade that people import is Python, in `axlewright/`.
use linking as _;
use pyo3::prelude::*;

mod array;
mod call;
mod error;
mod fault;
mod interpreter;
mod kernel;
mod kernels;
mod keywords;
mod model;
mod package;
mod quantity;
mod sheet;
mod system;
mod table;
mod ufunc;
mod verdict;
mod watch;
mod work;

#[pymodule]
fn _native(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add("__version__", env!("CARGO_PKG_VERSION"))?;
    interpreter::register(m)?;
    array::register(m)?;
    error::register(m)?;
    quantity::register(m)?;
    table::register(m)?;
    model::register(m)?;
    work::register(m)?;
    verdict::register(m)?;
    sheet::register(m)?;
    fault::register(m)?;
    package::register(m)
}
