//! The lines of a build sheet by their paths, at run time.

use crate::caller::{words, write};
use crate::catalogue::{Names, name_at};
use crate::guard::{guard, guard_or};
use crate::kept::c_text;
use crate::status::Failure;
use std::ffi::{CString, c_char};
use std::sync::OnceLock;

fn lines() -> &'static [CString] {
    static NAMES: Names = OnceLock::new();
    NAMES.get_or_init(|| axlewright::sheet::lines().map(|(_, path, _)| c_text(&path)).collect())
}

/// Number of lines that a build sheet has, written or computed.
#[unsafe(no_mangle)]
pub extern "C" fn axw_sheet_line_count() -> usize {
    guard_or(0, || lines().len())
}

/// Path of a line by its place from 0: "front.spring.rate", with `[]` for the places of a list. It lives as long as the program; NULL for
/// a place that is not there.
#[unsafe(no_mangle)]
pub extern "C" fn axw_sheet_line_name(place: usize) -> *const c_char {
    guard_or(std::ptr::null(), || name_at(lines(), "place", place))
}

/// Description of a line as JSON: its meaning, content, units, range in coherent SI, whether it may be written, and what is assumed for it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_line_describe(
    path: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let told = axlewright::sheet::describe(unsafe { words("path", path) }?);
        let told = told.map_err(|error| Failure::NotThere(error.to_string()))?;
        unsafe { write(&told, buffer, size, needed) }
    })
}
