//! Methods of the class `Quantity`.
use super::held::{Quantity, Unit};
use super::pint;
use super::product::refuse_composed;
use super::take::{first_with_unit, read, take};
use super::words::{PRIORITY, a, alias};
use crate::array::{Operation, Value, brief};
use crate::error::{letters, raise};
use crate::table::column_capsules;
use axlewright::base::text;
use axlewright::units::{self, GaugePressure, Kind, Quantity as _};
use pyo3::basic::CompareOp;
use pyo3::exceptions::PyTypeError;
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyDict, PyFloat, PyIterator, PyList, PyString, PyTuple, PyType};
use std::hash::{DefaultHasher, Hash, Hasher};

const GAUGE: &Kind = GaugePressure::KIND;

/// The unit of a text or a `Unit`, and its kind; restricted to this kind if one is given.
fn find_unit(
    unit: &Bound<'_, PyAny>,
    wanted: Option<&'static Kind>,
) -> PyResult<(&'static units::Unit, &'static Kind)> {
    let py = unit.py();
    let (found, kind) = if let Ok(unit) = unit.cast::<Unit>() {
        (unit.get().unit, unit.get().kind)
    } else if let Ok(words) = unit.cast::<PyString>() {
        let (kind, unit) = text::unit(letters(words)?, wanted).map_err(|error| raise(py, error))?;
        (unit, kind)
    } else {
        return Err(PyTypeError::new_err(format!("{} is not a unit or the text of one", brief(unit))));
    };
    match wanted {
        Some(wanted) if wanted != kind => Err(PyTypeError::new_err(format!(
            "{} is a unit of {}, not of {}",
            found.name, kind.words, wanted.words
        ))),
        _ => Ok((found, kind)),
    }
}

#[pymethods]
impl Quantity {
    #[new]
    #[pyo3(signature = (value, unit=None))]
    fn new(value: &Bound<'_, PyAny>, unit: Option<&Bound<'_, PyAny>>) -> PyResult<Self> {
        let py = value.py();
        let Some(unit) = unit else {
            if let Ok(words) = value.cast::<PyString>() {
                return read(letters(words)?, None).map_err(|error| raise(py, error));
            }
            if let Ok(quantity) = value.cast::<Quantity>() {
                let quantity = quantity.get();
                return Ok(quantity.like(quantity.value.copy(py)));
            }
            if pint::is_pint(value)? {
                let (unit, kind) = pint::unit_of(value)?;
                let (taken, _) = take(value, "value", kind)?;
                // The number as it stands there, if the unit has the same size: our conversion then rounds once.
                let number = value.getattr("magnitude")?.extract::<f64>();
                let value = match (number, taken) {
                    (Ok(number), Value::Number(si)) => {
                        let own = unit.to_si(number);
                        Value::Number(if (own - si).abs() <= 1e-9 * si.abs() { own } else { si })
                    }
                    (_, taken) => taken,
                };
                return Ok(Quantity { value, kind, unit });
            }
            if let Some(first) = first_with_unit(value)? {
                let first = Self::new(&first, None)?;
                let (given, _) = take(value, "value", first.kind)?;
                return Ok(first.like(given));
            }
            return Err(PyTypeError::new_err(format!(
                "{} has no unit; write for example Q({0}, \"N/mm\") or Q(\"300 lbf/in\")",
                brief(value)
            )));
        };
        if let Ok(quantity) = value.cast::<Quantity>() {
            let quantity = quantity.get();
            let (unit, kind) = find_unit(unit, Some(quantity.kind))?;
            return Ok(Quantity { value: quantity.value.copy(py), kind, unit });
        }
        let (unit, kind) = find_unit(unit, None)?;
        Unit { unit, kind }.apply(py, Value::labelled(value, unit, kind)?)
    }
    /// The plain number or array in coherent SI; an array is read-only.
    #[getter]
    fn si<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        Value::with_label(self.value.to_python(py), self.kind.si)
    }
    /// Kind of quantity: `LinearStiffness`.
    #[getter]
    fn kind(&self) -> &'static str {
        self.kind.name
    }
    /// Symbol of the coherent SI unit, the unit of `si`: `N/m`.
    #[getter]
    fn si_symbol(&self) -> &'static str {
        self.kind.si
    }
    /// Unit in which it was given, and in which it is shown.
    #[getter]
    fn unit(&self) -> Unit {
        Unit { unit: self.unit, kind: self.kind }
    }
    /// The plain number or array in a unit or the text of one.
    fn to<'py>(&self, unit: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        let (found, _) = find_unit(unit, Some(self.kind))?;
        Value::with_label(self.value.in_unit(unit.py(), found)?, found.symbol)
    }
    /// This quantity as one of the units library `pint`, in its own unit. The registry learns units such as `psi_gauge` and `kPa_absolute`, of
    /// the dimension of a pressure, so that gauge and absolute stay apart when it comes back.
    #[pyo3(signature = (registry=None))]
    fn to_pint<'py>(
        &self,
        py: Python<'py>,
        registry: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let shown = match &self.value {
            Value::Number(si) => PyFloat::new(py, self.shown_number(*si)).into_any(),
            Value::Array(_) => self.value.in_unit(py, self.unit)?,
        };
        pint::give(&shown, &self.value.to_python(py), self.kind, self.unit, registry)
    }

    fn __add__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.added(other.py(), Operation::Add, other)
    }
    fn __radd__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.reflected(Operation::Add, other)
    }
    fn __sub__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.added(other.py(), Operation::Subtract, other)
    }
    fn __rsub__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.reflected(Operation::Subtract, other)
    }
    fn __mul__(slf: &Bound<'_, Self>, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = other.py();
        let this = slf.get();
        if this.is_ratio()
            && let Ok(other) = other.cast::<Quantity>()
            && !other.get().is_ratio()
        {
            return other.get().scaled(py, Operation::Multiply, &this.value);
        }
        let factor = this
            .scale(other)
            .map_err(|error| refuse_composed(slf, Operation::Multiply, other).unwrap_or(error))?;
        this.scaled(py, Operation::Multiply, &factor)
    }
    fn __rmul__(slf: &Bound<'_, Self>, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        Self::__mul__(slf, other)
    }
    fn __truediv__<'py>(slf: &Bound<'py, Self>, other: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        let py = other.py();
        let this = slf.get();
        if let Ok(divisor) = other.cast::<Quantity>()
            && divisor.get().kind == this.kind
        {
            if this.kind == GAUGE {
                return Err(PyTypeError::new_err(
                    "a ratio of gauge pressures depends on the ambient pressure; take absolute pressures",
                ));
            }
            let ratio = this.value.with(py, Operation::Divide, &divisor.get().value)?;
            return Ok(ratio.to_python(py));
        }
        let factor = this
            .scale(other)
            .map_err(|error| refuse_composed(slf, Operation::Divide, other).unwrap_or(error))?;
        Ok(Bound::new(py, this.scaled(py, Operation::Divide, &factor)?)?.into_any())
    }
    fn __rtruediv__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = other.py();
        if self.is_ratio() {
            return Ok(self.like(self.scale(other)?.with(py, Operation::Divide, &self.value)?));
        }
        Err(PyTypeError::new_err(format!(
            "a number over {} belongs to a units library (see to_pint)",
            a(self.kind)
        )))
    }
    fn __neg__(&self, py: Python<'_>) -> PyResult<Self> {
        self.scaled(py, Operation::Multiply, &Value::Number(-1.0))
    }
    fn __pos__(&self, py: Python<'_>) -> Self {
        self.like(self.value.copy(py))
    }
    fn __abs__(&self, py: Python<'_>) -> PyResult<Self> {
        Ok(self.like(match &self.value {
            Value::Number(x) => Value::Number(x.abs()),
            Value::Array(x) => Value::kept(x.bind(py).abs()?)?,
        }))
    }
    fn __float__(&self, py: Python<'_>) -> PyResult<f64> {
        match &self.value {
            Value::Number(x) if self.is_ratio() => Ok(*x),
            _ => Err(PyTypeError::new_err(format!(
                "{} is not a plain number; take .to(unit) or .si",
                self.words(py)
            ))),
        }
    }
    #[pyo3(signature = (*_args, **_kwargs))]
    fn __array__(
        &self,
        py: Python<'_>,
        _args: &Bound<'_, PyTuple>,
        _kwargs: Option<&Bound<'_, PyDict>>,
    ) -> PyResult<Py<PyAny>> {
        if self.is_ratio() {
            return py.import("numpy")?.call_method1("array", (self.value.to_python(py),)).map(Bound::unbind);
        }
        Err(PyTypeError::new_err(format!(
            "{} would lose its unit here; take .to(unit) or .si, and give data of other libraries a unit by calling it: mm(data)",
            a(self.kind)
        )))
    }
    fn __bool__(&self, py: Python<'_>) -> PyResult<bool> {
        Err(PyTypeError::new_err(format!("{} is neither true nor false; compare it", self.words(py))))
    }
    fn __richcmp__(&self, other: &Bound<'_, PyAny>, op: CompareOp) -> PyResult<Py<PyAny>> {
        let py = other.py();
        let sameness = matches!(op, CompareOp::Eq | CompareOp::Ne);
        let other = match Self::operand(self.kind, other) {
            Ok(other) if other.kind == self.kind => other,
            Err(_) | Ok(_) if sameness => return Ok(py.NotImplemented()),
            Err(error) => return Err(error),
            Ok(other) => {
                return Err(PyTypeError::new_err(format!(
                    "{} and {} do not compare: {} and {}",
                    self.words(py),
                    other.words(py),
                    a(self.kind),
                    a(other.kind)
                )));
            }
        };
        let (one, two) = (self.value.to_python(py), other.value.to_python(py));
        one.rich_compare(two, op).map(Bound::unbind)
    }
    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        let Value::Number(x) = self.value else {
            return Err(PyTypeError::new_err("an array of quantities has no hash"));
        };
        if self.is_ratio() {
            return PyFloat::new(py, x).hash();
        }
        let mut hasher = DefaultHasher::new();
        let same = if x == 0.0 { 0.0 } else { x };
        (self.kind.name, same.to_bits()).hash(&mut hasher);
        Ok(hasher.finish() as isize)
    }
    /// The largest element; NaN if one of them is NaN.
    #[pyo3(signature = (axis=None, out=None))]
    fn max(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Self> {
        self.reduced(py, "max", axis, out)
    }
    /// The smallest element; NaN if one of them is NaN.
    #[pyo3(signature = (axis=None, out=None))]
    fn min(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Self> {
        self.reduced(py, "min", axis, out)
    }
    /// The mean of the elements.
    #[pyo3(signature = (axis=None, dtype=None, out=None))]
    fn mean(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        dtype: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Self> {
        self.reduced(py, "mean", axis, dtype.or(out))
    }
    /// The sum of the elements; temperatures and absolute pressures have none.
    #[pyo3(signature = (axis=None, dtype=None, out=None))]
    fn sum(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        dtype: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Self> {
        self.adds()?;
        self.reduced(py, "sum", axis, dtype.or(out))
    }
    /// The standard deviation of the elements: a difference of temperatures for temperatures.
    #[pyo3(signature = (axis=None, dtype=None, out=None, ddof=0))]
    fn std(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        dtype: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
        ddof: i64,
    ) -> PyResult<Self> {
        self.deviation(py, axis, dtype.or(out), ddof)
    }
    /// Place of the largest element.
    fn argmax(&self, py: Python<'_>) -> PyResult<usize> {
        self.array(py)?.call_method0("argmax")?.extract()
    }
    /// Place of the smallest element.
    fn argmin(&self, py: Python<'_>) -> PyResult<usize> {
        self.array(py)?.call_method0("argmin")?.extract()
    }
    /// The elements in rising order, as another quantity.
    fn sort(&self, py: Python<'_>) -> PyResult<Self> {
        let sorted = py.import("numpy")?.call_method1("sort", (self.array(py)?,))?;
        Ok(self.like(Value::kept(sorted)?))
    }
    /// Numbers for the Arrow PyCapsule interface: coherent SI, `unit` and `quantity` in the field's metadata.
    #[pyo3(signature = (requested_schema=None))]
    fn __arrow_c_array__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
        let _ = requested_schema;
        let numbers = py.import("numpy")?.call_method1("ascontiguousarray", (self.array(py)?,))?;
        if numbers.getattr("ndim")?.extract::<usize>()? != 1 {
            return Err(PyTypeError::new_err("an Arrow array has one axis"));
        }
        column_capsules(&numbers, self.kind.si, self.kind.name)
    }
    fn __len__(&self, py: Python<'_>) -> PyResult<usize> {
        self.array(py)?.len()
    }
    fn __getitem__(&self, index: &Bound<'_, PyAny>) -> PyResult<Self> {
        Ok(self.like(Value::kept(self.array(index.py())?.get_item(index)?)?))
    }
    fn __iter__<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyIterator>> {
        let rows = self.array(py)?.try_iter()?;
        let rows =
            rows.map(|row| Bound::new(py, self.like(Value::kept(row?)?))).collect::<PyResult<Vec<_>>>()?;
        PyList::new(py, rows)?.try_iter()
    }
    #[getter]
    fn shape<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        match &self.value {
            Value::Number(_) => Ok(PyTuple::empty(py).into_any()),
            Value::Array(array) => array.bind(py).getattr(intern!(py, "shape")),
        }
    }
    #[getter]
    fn ndim(&self, py: Python<'_>) -> PyResult<usize> {
        match &self.value {
            Value::Number(_) => Ok(0),
            Value::Array(array) => array.bind(py).getattr(intern!(py, "ndim"))?.extract(),
        }
    }
    #[getter]
    fn size(&self, py: Python<'_>) -> PyResult<usize> {
        match &self.value {
            Value::Number(_) => Ok(1),
            Value::Array(array) => array.bind(py).getattr(intern!(py, "size"))?.extract(),
        }
    }
    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        self.short(py)
    }
    /// In its own unit, rounded as a shop does; `f"{q:full}"` keeps every digit.
    fn __str__(&self, py: Python<'_>) -> PyResult<String> {
        self.short(py)
    }
    /// `f"{q}"` is `str(q)`; `f"{q:.1f}"` and `f"{q:full}"`, with every digit, are in its own unit; `f"{q:metric}"` and `f"{q:us}"` in the
    /// shop's unit.
    fn __format__(&self, py: Python<'_>, spec: &str) -> PyResult<String> {
        self.formatted(py, spec)
    }
    fn __copy__(slf: Py<Self>) -> Py<Self> {
        slf
    }
    fn __deepcopy__(slf: Py<Self>, _memo: &Bound<'_, PyAny>) -> Py<Self> {
        slf
    }
    #[expect(clippy::type_complexity, reason = "the shape that pickle asks for")]
    fn __reduce__<'py>(
        &self,
        py: Python<'py>,
    ) -> PyResult<(Bound<'py, PyAny>, (&'static str, &'static str, Bound<'py, PyAny>))> {
        let restore = py.import("axlewright._native")?.getattr("_quantity")?;
        Ok((restore, (self.kind.name, self.unit.name, self.value.to_python(py))))
    }
    /// `Quantity[Mass]`, for annotations.
    #[classmethod]
    fn __class_getitem__<'py>(
        class: &Bound<'py, PyType>,
        kind: &Bound<'py, PyAny>,
    ) -> PyResult<Bound<'py, PyAny>> {
        alias(class, kind)
    }
    /// pandas, too.
    #[classattr]
    fn __pandas_priority__() -> i32 {
        PRIORITY
    }
    /// NumPy leaves arithmetic with a quantity to the quantity.
    #[classattr]
    fn __array_ufunc__(py: Python<'_>) -> Py<PyAny> {
        py.None()
    }
}
