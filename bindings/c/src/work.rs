//! The work behind an answer on the C surface.

use crate::caller::{list, words, write};
use crate::guard::guard;
use crate::status::{Failure, Outcome};
use crate::text::shop;
use axlewright::{Work, catalogue};
use std::ffi::c_char;

/// The named function on the caller's numbers.
unsafe fn work(function: *const c_char, inputs_si: *const f64, count: usize) -> Outcome<Work> {
    let path = unsafe { words("function", function) }?;
    let entry = catalogue::entry(path).map_err(|error| Failure::NotThere(error.to_string()))?;
    Ok(entry.work(unsafe { list("inputs_si", inputs_si, count) }?)?)
}

/// Calls a function by its path, such as "spring.wheel_rate", and shows the work as plain text: the formula, each argument with its
/// unit, the formula with the numbers put in, the result, the limits, the source, the caution, the revision.
///
/// `inputs_si` holds `count` arguments in coherent SI, in their order; `system` is `AXW_METRIC` or `AXW_US`. Arguments that the function refuses are
/// refused here too. `needed` receives the bytes that the text needs, its closing NUL included; `buffer` may be NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_work(
    function: *const c_char,
    inputs_si: *const f64,
    count: usize,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let system = shop(system)?;
        let text = unsafe { work(function, inputs_si, count) }?.text(system);
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// `axw_work` as JSON text; `si` in it is coherent SI, with all digits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_work_json(
    function: *const c_char,
    inputs_si: *const f64,
    count: usize,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let system = shop(system)?;
        let text = unsafe { work(function, inputs_si, count) }?.to_json(system)?;
        unsafe { write(&text, buffer, size, needed) }
    })
}
