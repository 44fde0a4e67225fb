//! The functions and models by their names, at run time.

use crate::caller::{list, put, words, write};
use crate::guard::{guard, guard_or, record};
use crate::kept::c_text;
use crate::status::Failure;
use axlewright::base::error::Error;
use axlewright::catalogue::{self, ENTRIES, MODELS};
use std::ffi::{CString, c_char};
use std::sync::OnceLock;

/// Names for C, kept as long as the program lives.
pub(crate) type Names = OnceLock<Vec<CString>>;

/// The name at a place, or NULL with a message.
pub(crate) fn name_at(names: &'static [CString], argument: &str, place: usize) -> *const c_char {
    names.get(place).map_or_else(
        || {
            let count = names.len();
            record(&Failure::NotThere(format!(
                "{argument} = {place} is not there; there are {count}, from 0"
            )));
            std::ptr::null()
        },
        |name| name.as_ptr(),
    )
}

fn functions() -> &'static [CString] {
    static NAMES: Names = OnceLock::new();
    NAMES.get_or_init(|| ENTRIES.iter().map(|entry| c_text(entry.path)).collect())
}

fn models() -> &'static [CString] {
    static NAMES: Names = OnceLock::new();
    NAMES.get_or_init(|| MODELS.iter().map(|model| c_text(model.path)).collect())
}

/// Number of functions.
#[unsafe(no_mangle)]
pub extern "C" fn axw_function_count() -> usize {
    guard_or(0, || functions().len())
}

/// Name of a function by its place from 0: "spring.wheel_rate" is `axw_spring_wheel_rate`. The names are sorted and live as long as the
/// program; NULL for a place that is not there.
#[unsafe(no_mangle)]
pub extern "C" fn axw_function_name(place: usize) -> *const c_char {
    guard_or(std::ptr::null(), || name_at(functions(), "place", place))
}

/// Description of a function as JSON: summary, formula, conditions, source and caution; `parameters` and `results` with name, kind of
/// quantity, units, range in coherent SI and meaning.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_function_describe(
    function: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let entry = catalogue::entry(unsafe { words("function", function) }?);
        let entry = entry.map_err(|error| Failure::NotThere(error.to_string()))?;
        unsafe { write(&entry.describe(), buffer, size, needed) }
    })
}

/// Calls a function by its name, such as "spring.wheel_rate": `inputs_si` holds its arguments in coherent SI, in their order, and `results_si`
/// receives its results.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_function_call(
    function: *const c_char,
    inputs_si: *const f64,
    count: usize,
    results_si: *mut f64,
    results_count: usize,
) -> i32 {
    guard(|| {
        let entry = catalogue::entry(unsafe { words("function", function) }?);
        let entry = entry.map_err(|error| Failure::NotThere(error.to_string()))?;
        let inputs = unsafe { list("inputs_si", inputs_si, count) }?;
        if results_count != entry.outputs.len() {
            let wanted = "one place is wanted for each result";
            return Err(Error::Length { argument: "results_si", length: results_count, wanted }.into());
        }
        let mut results = vec![0.0; results_count];
        (entry.call)(inputs, &mut results)?;
        if !results_si.is_null() {
            for (place, result) in results.into_iter().enumerate() {
                unsafe { put(results_si.add(place), result) };
            }
        }
        Ok(())
    })
}

/// Number of models.
#[unsafe(no_mangle)]
pub extern "C" fn axw_model_count() -> usize {
    guard_or(0, || models().len())
}

/// Name of a model by its place from 0: "spring.BumpStop" is `axw_spring_bump_stop`. The names are sorted and live as long as the program;
/// NULL for a place that is not there.
#[unsafe(no_mangle)]
pub extern "C" fn axw_model_name(place: usize) -> *const c_char {
    guard_or(std::ptr::null(), || name_at(models(), "place", place))
}

/// Description of a model as JSON: summary, formula, conditions, source and caution; `fields` with name, content, units and meaning;
/// `methods` with their parameters and results.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_model_describe(
    model: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let model = catalogue::model(unsafe { words("model", model) }?);
        let model = model.map_err(|error| Failure::NotThere(error.to_string()))?;
        unsafe { write(&model.describe(), buffer, size, needed) }
    })
}
