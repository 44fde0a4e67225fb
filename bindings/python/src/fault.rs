//! A deliberate fault: the tests use it to show that a fault in the core does not end the Python process.
use crate::call::function_of;
use crate::kernel::Kernel;
use crate::keywords::Keyword;
use crate::ufunc::ufunc_of;
use axlewright::Result;
use axlewright::units::{Kind, Quantity, Ratio};
use pyo3::prelude::*;

struct Fault;

impl Kernel<1, 1> for Fault {
    const NAME: &'static str = "_test.fault";
    const DOC: &'static str = "Panics at 13; otherwise returns its argument.";
    const FRONT: &'static str =
        "fault(*, number, invalid='raise')\n--\n\nPanics at 13; otherwise returns its argument.";
    const KEYWORDS: &'static [Keyword] = &[
        Keyword { name: "number", optional: false, former: None },
        Keyword { name: "invalid", optional: true, former: None },
    ];
    const PARAMETERS: [(&'static str, &'static Kind); 1] = [("number", <Ratio as Quantity>::KIND)];
    const RESULTS: [(&'static str, &'static Kind); 1] = [("number", <Ratio as Quantity>::KIND)];
    fn call([number]: [f64; 1]) -> Result<[f64; 1]> {
        assert!(number != 13.0, "thirteen");
        Ok([number])
    }
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add("_fault", function_of::<Fault, 1, 1>(m.py())?)?;
    m.add("_fault_ufunc", ufunc_of::<Fault, 1, 1>(m.py())?)
}
