//! `Unit` and `Quantity`: a number or an array with its kind, held in coherent SI, and the unit to show it in.
use crate::array::{Operation, Value, brief};
use crate::error::{raise, raise_in};
use crate::pint;
use crate::product::{Factor, Number, instead, refuse_composed};
use axlewright::base::text;
use axlewright::units::{
    self, AbsolutePressure, GaugePressure, KINDS, Kind, Quantity as _, Ratio, Stress, Temperature,
    TemperatureDifference,
};
use numpy::PyUntypedArray;
use pyo3::basic::CompareOp;
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyFloat, PyIterator, PyList, PyString, PyTuple};
use std::hash::{DefaultHasher, Hash, Hasher};

const RATIO: &Kind = Ratio::KIND;
const TEMPERATURE: &Kind = Temperature::KIND;
const DIFFERENCE: &Kind = TemperatureDifference::KIND;
const ABSOLUTE: &Kind = AbsolutePressure::KIND;
const GAUGE: &Kind = GaugePressure::KIND;
const STRESS: &Kind = Stress::KIND;

/// A point on a scale: two of them do not add, and it does not scale.
fn is_point(kind: &Kind) -> bool {
    kind == TEMPERATURE || kind == ABSOLUTE
}

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
fn rounded(number: f64) -> String {
    let short = format!("{number:.3e}").parse().unwrap_or(number) + 0.0; // no negative zero
    text::print_in(short, RATIO, &RATIO.units[0])
}

/// A number with all its digits, and no more.
pub fn written(number: f64) -> String {
    let number = format!("{number:?}");
    number.strip_suffix(".0").map_or(number.clone(), str::to_owned)
}

/// A unit: `300 * lbf_in`, `[250, 300] * lbf_in`, `lbf_in(anything)`.
#[pyclass(frozen, module = "axlewright", name = "Unit")]
pub struct Unit {
    pub unit: &'static units::Unit,
    pub kind: &'static Kind,
}

impl Unit {
    fn apply(&self, py: Python<'_>, value: Value) -> PyResult<Quantity> {
        Ok(Quantity { value: value.in_si(py, self.unit)?, kind: self.kind, unit: self.unit })
    }
    fn no_algebra<T>(&self) -> PyResult<T> {
        Err(PyTypeError::new_err(format!(
            "{} is a unit by itself: a number or an array times a unit is a quantity, and wider algebra belongs to a \
             units library (see to_pint)",
            self.unit.name
        )))
    }
}

#[pymethods]
impl Unit {
    /// Short name: `lbf_in`.
    #[getter]
    fn name(&self) -> &'static str {
        self.unit.name
    }
    /// Printed symbol: `lbf/in`.
    #[getter]
    fn symbol(&self) -> &'static str {
        self.unit.symbol
    }
    /// Kind of quantity: `LinearStiffness`.
    #[getter]
    fn kind(&self) -> &'static str {
        self.kind.name
    }
    fn __call__(&self, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if value.is_instance_of::<Quantity>() {
            return Err(PyTypeError::new_err(format!(
                "{} has its unit already; see Quantity.to",
                brief(value)
            )));
        }
        self.apply(value.py(), Value::plain(value)?)
    }
    fn __mul__(slf: &Bound<'_, Self>, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if value.is_instance_of::<Unit>() || value.is_instance_of::<Quantity>() {
            return refuse_composed(slf, Operation::Multiply, value)
                .map_or_else(|| slf.get().no_algebra(), Err);
        }
        slf.get().__rmul__(value)
    }
    fn __rmul__(&self, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if self.unit.offset != 0.0 {
            let name = self.unit.name;
            return Err(PyTypeError::new_err(format!(
                "{name} counts from a zero of its own, so nothing is a multiple of it: write {name}({value}) for a \
                 temperature, or {value} * delta_{name} for a difference",
                value = brief(value),
            )));
        }
        self.apply(value.py(), Value::plain(value)?)
    }
    fn __truediv__(slf: &Bound<'_, Self>, other: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        refuse_composed(slf, Operation::Divide, other).map_or_else(|| slf.get().no_algebra(), Err)
    }
    fn __rtruediv__(&self, _other: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        self.no_algebra()
    }
    fn __pow__(&self, _other: &Bound<'_, PyAny>, _modulus: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        self.no_algebra()
    }
    fn __eq__(&self, other: &Bound<'_, PyAny>) -> bool {
        other.cast::<Unit>().is_ok_and(|other| {
            let other = other.get();
            self.kind == other.kind && self.unit.name == other.unit.name
        })
    }
    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        (self.kind.name, self.unit.name).hash(&mut hasher);
        hasher.finish()
    }
    fn __repr__(&self) -> String {
        format!("<unit {} of {}: {:?}>", self.unit.name, self.kind.words, self.unit.symbol)
    }
    fn __reduce__<'py>(
        &self,
        py: Python<'py>,
    ) -> PyResult<(Bound<'py, PyAny>, (&'static str, &'static str))> {
        let find = py.import("axlewright._native")?.getattr("_unit")?;
        Ok((find, (self.kind.name, self.unit.name)))
    }
    /// NumPy leaves arithmetic with a unit to the unit.
    #[classattr]
    fn __array_ufunc__(py: Python<'_>) -> Py<PyAny> {
        py.None()
    }
}

/// A quantity: `Q("300 lbf/in")`, `Q(300, "lbf/in")`, `300 * lbf_in`. It never changes.
#[pyclass(frozen, module = "axlewright", name = "Quantity")]
pub struct Quantity {
    /// Value in coherent SI.
    pub value: Value,
    pub kind: &'static Kind,
    /// Unit in which it was given, and in which it is shown.
    pub unit: &'static units::Unit,
}

/// The unit of a text or a `Unit`, and its kind; restricted to this kind if one is given.
fn find_unit(
    unit: &Bound<'_, PyAny>,
    wanted: Option<&'static Kind>,
) -> PyResult<(&'static units::Unit, &'static Kind)> {
    let py = unit.py();
    let (found, kind) = if let Ok(unit) = unit.cast::<Unit>() {
        (unit.get().unit, unit.get().kind)
    } else if let Ok(words) = unit.cast::<PyString>() {
        let (kind, unit) = text::unit(words.to_str()?, wanted).map_err(|error| raise(py, error))?;
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

impl Quantity {
    /// A function's result: a plain number or array for a ratio, a quantity for everything else.
    #[inline]
    pub fn result(
        py: Python<'_>,
        value: Value,
        kind: &'static Kind,
        unit: &'static units::Unit,
    ) -> PyResult<Py<PyAny>> {
        if kind == RATIO {
            return Ok(value.to_python(py).unbind());
        }
        Ok(Py::new(py, Quantity { value, kind, unit })?.into_any())
    }
    fn like(&self, value: Value) -> Self {
        Quantity { value, kind: self.kind, unit: self.unit }
    }
    fn is_ratio(&self) -> bool {
        self.kind == RATIO
    }
    /// The shortest number that, read in the unit, gives this value again.
    fn shown_number(&self, si: f64) -> f64 {
        let exact = self.unit.from_si(si);
        // The rounding noise of a scale with its own zero does not shrink with the number.
        let decimals = (0..=12).filter(|_| self.unit.offset != 0.0).map(|digits| format!("{exact:.digits$}"));
        let digits = (0..=16).map(|digits| format!("{exact:.digits$e}"));
        decimals
            .chain(digits)
            .filter_map(|short| Some(short.parse::<f64>().ok()? + 0.0))
            .find(|short| self.unit.to_si(*short) == si)
            .unwrap_or(exact)
    }
    /// Its unit and the number in it.
    pub fn factor(&self) -> Factor {
        let number = match self.value {
            Value::Number(si) => Number::One(self.shown_number(si)),
            Value::Array(_) => Number::Array,
        };
        Factor { kind: self.kind, unit: self.unit, number }
    }
    fn with_symbol(&self, number: &str) -> String {
        if self.unit.symbol.is_empty() { number.to_owned() } else { format!("{number} {}", self.unit.symbol) }
    }
    fn array<'py>(&self, py: Python<'py>) -> PyResult<&Bound<'py, PyAny>> {
        match &self.value {
            Value::Array(array) => Ok(array.bind(py)),
            Value::Number(_) => {
                Err(PyTypeError::new_err(format!("{} is one quantity, not an array", self.words(py))))
            }
        }
    }
    /// An array with its elements written by `format`; a lazy or labelled one unchanged.
    fn array_words(&self, py: Python<'_>, format: &Bound<'_, PyAny>) -> PyResult<String> {
        let numbers = self.value.in_unit(py, self.unit)?;
        if !numbers.is_instance_of::<PyUntypedArray>() {
            return self.__repr__(py);
        }
        let formatter = PyDict::new(py);
        formatter.set_item("float_kind", format)?;
        let options = PyDict::new(py);
        options.set_item("formatter", formatter)?;
        let words = py.import("numpy")?.call_method("array2string", (numbers,), Some(&options))?;
        Ok(self.with_symbol(&words.str()?.to_string()))
    }
    /// With Python's own format of a number.
    fn with_spec(&self, py: Python<'_>, spec: &str) -> PyResult<String> {
        let made = match &self.value {
            Value::Number(si) => {
                let number = PyFloat::new(py, self.shown_number(*si));
                number.call_method1("__format__", (spec,)).map(|number| self.with_symbol(&number.to_string()))
            }
            Value::Array(_) => {
                let one = PyString::new(py, &format!("{{:{spec}}}"));
                PyFloat::new(py, 0.0)
                    .call_method1("__format__", (spec,))
                    .and_then(|_| self.array_words(py, &one.getattr("format")?))
            }
        };
        made.map_err(|error| {
            let advice = format!("{spec:?} is no format of a quantity; use .2f, metric or us");
            let refused = PyValueError::new_err(advice);
            refused.set_cause(py, Some(error));
            refused
        })
    }
    /// Text as shown, with every digit.
    pub fn words(&self, py: Python<'_>) -> String {
        self.__repr__(py).unwrap_or_else(|_| a(self.kind))
    }
    /// Adds or subtracts; the rules of kinds are here and nowhere else.
    fn sum(&self, py: Python<'_>, operation: Operation, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let adding = matches!(operation, Operation::Add);
        let other = Self::operand(self.kind, other)?;
        let (kind, unit) = match (self.kind, other.kind, adding) {
            (left, right, false) if left == right && left == TEMPERATURE => (DIFFERENCE, delta(self.unit)),
            (left, right, false) if left == right && left == ABSOLUTE => (
                STRESS,
                STRESS.units.iter().find(|unit| same_factor(unit, self.unit)).unwrap_or(&STRESS.units[0]),
            ),
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
    /// Left operand that is not a quantity: a bare number, which only a ratio takes.
    fn reflected(&self, operation: Operation, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = other.py();
        Ok(self.like(Self::operand(self.kind, other)?.value.with(py, operation, &self.value)?))
    }
    /// The other side of a sum or a comparison; a bare number only beside a ratio.
    fn operand(kind: &'static Kind, other: &Bound<'_, PyAny>) -> PyResult<Self> {
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
    fn scale(&self, other: &Bound<'_, PyAny>) -> PyResult<Value> {
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
    fn scaled(&self, py: Python<'_>, operation: Operation, factor: &Value) -> PyResult<Self> {
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

#[pymethods]
impl Quantity {
    #[new]
    #[pyo3(signature = (value, unit=None))]
    fn new(value: &Bound<'_, PyAny>, unit: Option<&Bound<'_, PyAny>>) -> PyResult<Self> {
        let py = value.py();
        let Some(unit) = unit else {
            if let Ok(words) = value.cast::<PyString>() {
                return read(words.to_str()?, None).map_err(|error| raise(py, error));
            }
            if let Ok(quantity) = value.cast::<Quantity>() {
                let quantity = quantity.get();
                return Ok(quantity.like(quantity.value.copy(py)));
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
        Unit { unit, kind }.apply(py, Value::plain(value)?)
    }
    /// The plain number or array in coherent SI; an array is read-only.
    #[getter]
    fn si<'py>(&self, py: Python<'py>) -> Bound<'py, PyAny> {
        self.value.to_python(py)
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
        self.value.in_unit(unit.py(), find_unit(unit, Some(self.kind))?.0)
    }
    /// This quantity as one of the units library `pint`, in coherent SI.
    #[pyo3(signature = (registry=None))]
    fn to_pint<'py>(
        &self,
        py: Python<'py>,
        registry: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        pint::give(self.value.to_python(py), self.kind, registry)
    }

    fn __add__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.sum(other.py(), Operation::Add, other)
    }
    fn __radd__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.reflected(Operation::Add, other)
    }
    fn __sub__(&self, other: &Bound<'_, PyAny>) -> PyResult<Self> {
        self.sum(other.py(), Operation::Subtract, other)
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
        Err(PyTypeError::new_err(format!("{} would lose its unit here; take .to(unit) or .si", a(self.kind))))
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
        let number = match &self.value {
            Value::Number(si) => written(self.shown_number(*si)),
            Value::Array(_) => self.value.in_unit(py, self.unit)?.str()?.to_string(),
        };
        Ok(self.with_symbol(&number))
    }
    /// In its own unit, rounded as a shop does; `repr` keeps every digit.
    fn __str__(&self, py: Python<'_>) -> PyResult<String> {
        match &self.value {
            Value::Number(si) => Ok(self.with_symbol(&rounded(self.unit.from_si(*si)))),
            Value::Array(_) => self.array_words(py, wrap_pyfunction!(rounded, py)?.as_any()),
        }
    }
    /// `f"{q}"` is `str(q)`; `f"{q:.1f}"` in its own unit; `f"{q:metric}"` and `f"{q:us}"` in the shop's unit.
    fn __format__(&self, py: Python<'_>, spec: &str) -> PyResult<String> {
        let (system, name) = match spec {
            "" => return self.__str__(py),
            "metric" => (text::System::Metric, self.kind.metric),
            "us" => (text::System::Us, self.kind.us),
            _ => return self.with_spec(py, spec),
        };
        if let Value::Number(si) = self.value {
            return Ok(text::print(si, self.kind, system));
        }
        let unit = self.kind.unit(name).unwrap_or(self.unit);
        Quantity { value: self.value.copy(py), kind: self.kind, unit }.__str__(py)
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
    /// NumPy leaves arithmetic with a quantity to the quantity.
    #[classattr]
    fn __array_ufunc__(py: Python<'_>) -> Py<PyAny> {
        py.None()
    }
}

/// Reads one quantity; a tolerance is refused.
fn read(words: &str, wanted: Option<&'static Kind>) -> axlewright::Result<Quantity> {
    let reading = match wanted {
        Some(kind) => text::read_as(words, kind),
        None => text::read(words),
    }?;
    match reading.tolerance {
        None => Ok(Quantity { value: Value::Number(reading.si), kind: reading.kind, unit: reading.unit }),
        Some(_) => Err(axlewright::Error::Text {
            text: words.to_owned(),
            message: "a tolerance has no place here; write the value alone".to_owned(),
        }),
    }
}

/// The first element of a list or tuple, if it carries a unit.
fn first_with_unit<'py>(x: &Bound<'py, PyAny>) -> PyResult<Option<Bound<'py, PyAny>>> {
    if !(x.is_instance_of::<PyList>() || x.is_instance_of::<PyTuple>()) || x.len()? == 0 {
        return Ok(None);
    }
    let first = x.get_item(0)?;
    Ok((first.is_instance_of::<Quantity>() || first.is_instance_of::<PyString>()).then_some(first))
}

/// Takes an argument of a function: a quantity of its kind, text, a list of these, a quantity of the units library;
/// a bare number only for a ratio. Returns coherent SI and the unit in which it was given.
#[inline]
pub fn take(
    x: &Bound<'_, PyAny>,
    argument: &str,
    kind: &'static Kind,
) -> PyResult<(Value, Option<&'static units::Unit>)> {
    if let Ok(quantity) = x.cast_exact::<Quantity>() {
        let quantity = quantity.get();
        if quantity.kind == kind {
            return Ok((quantity.value.copy(x.py()), Some(quantity.unit)));
        }
    } else if kind == RATIO
        && let Ok(number) = x.cast_exact::<PyFloat>()
    {
        return Ok((Value::Number(number.value()), None));
    }
    take_slow(x, argument, kind)
}

fn take_slow(
    x: &Bound<'_, PyAny>,
    argument: &str,
    kind: &'static Kind,
) -> PyResult<(Value, Option<&'static units::Unit>)> {
    let py = x.py();
    if let Ok(words) = x.cast::<PyString>() {
        let quantity = read(words.to_str()?, Some(kind)).map_err(|error| raise_in(py, argument, error))?;
        return Ok((quantity.value, Some(quantity.unit)));
    }
    if let Ok(quantity) = x.cast::<Quantity>() {
        let other = quantity.get();
        return Err(PyTypeError::new_err(format!(
            "{argument} = {} is {}; {} is wanted{}",
            other.words(py),
            a(other.kind),
            a(kind),
            match instead(other.unit, kind) {
                Some(unit) => {
                    let number = match other.value {
                        Value::Number(si) => written(other.shown_number(si)),
                        Value::Array(_) => "array".to_owned(),
                    };
                    format!(": write {}({number})", unit.name)
                }
                None => format!(", for example {}", how_to_write(kind, "300")),
            }
        )));
    }
    if first_with_unit(x)?.is_some() {
        let mut unit = None;
        let mut numbers = Vec::new();
        for element in x.try_iter()? {
            let (value, given) = take(&element?, argument, kind)?;
            let Value::Number(number) = value else {
                return Err(PyTypeError::new_err(format!(
                    "{argument}: a list of quantities holds one in each place"
                )));
            };
            unit = unit.or(given);
            numbers.push(number);
        }
        return Ok((Value::kept(numpy::PyArray1::from_vec(py, numbers).into_any())?, unit));
    }
    if pint::is_pint(x)? {
        return Ok((Value::plain(&pint::take(x, argument, kind)?)?, None));
    }
    if x.is_instance_of::<Unit>() {
        return Err(PyTypeError::new_err(format!(
            "{argument} is a unit without a number; write {}",
            how_to_write(kind, "300")
        )));
    }
    let value = Value::plain(x).map_err(|error| {
        let sentence = error.value(py).to_string();
        PyTypeError::new_err(format!("{argument}: {sentence}; {} is wanted", a(kind)))
    })?;
    if kind == RATIO {
        return Ok((value, None));
    }
    let number = match value {
        Value::Number(number) => format!("{number}"),
        Value::Array(_) => "array".to_owned(),
    };
    Err(PyTypeError::new_err(format!(
        "{argument} = {} has no unit and {} is wanted; write for example {}",
        brief(x),
        a(kind),
        match number.as_str() {
            "array" => {
                let unit = kind.unit(kind.metric).unwrap_or(&kind.units[0]);
                format!("{}(array)", unit.name)
            }
            number => how_to_write(kind, number),
        }
    )))
}

fn kind_named(name: &str) -> PyResult<&'static Kind> {
    Kind::named(name).ok_or_else(|| PyValueError::new_err(format!("there is no kind of quantity {name:?}")))
}

/// The unit of a kind, by their names (for pickle).
#[pyfunction(name = "_unit")]
fn unit_named(kind: &str, unit: &str) -> PyResult<Unit> {
    let kind = kind_named(kind)?;
    let missing = || PyValueError::new_err(format!("{} has no unit {unit:?}", kind.name));
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
