//! C ABI of Axlewright: what every generated entry stands on.
//!
//! Every entry returns one of the `AXW_` status numbers and writes its outputs only on success. The sentence that says what was
//! wrong, with argument, value and limit, is kept for the calling thread until its next failure. No panic leaves this library.
#![allow(non_camel_case_types, clippy::missing_safety_doc)]

mod generated;
mod table;
mod text;

pub use generated::*;
pub use table::*;
pub use text::*;

use axlewright::Error;
use std::cell::RefCell;
use std::ffi::{CStr, c_char};
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Success.
pub const AXW_OK: i32 = 0;
/// An argument is outside its limits, or not a number.
pub const AXW_OUT_OF_RANGE: i32 = 1;
/// Two arguments cannot stand together.
pub const AXW_CONTRADICTION: i32 = 2;
/// The inputs are allowed, but no answer belongs to them.
pub const AXW_NO_SOLUTION: i32 = 3;
/// Text that is not a quantity, or not of the kind that is wanted.
pub const AXW_TEXT: i32 = 4;
/// A document that cannot be read, or a value in it that is not allowed.
pub const AXW_DOCUMENT: i32 = 5;
/// A list whose length does not fit.
pub const AXW_LENGTH: i32 = 6;
/// A pointer that must not be NULL is NULL.
pub const AXW_NULL: i32 = 100;
/// The caller's buffer is too short; nothing was written.
pub const AXW_BUFFER: i32 = 101;
/// Text that is not UTF-8.
pub const AXW_UTF8: i32 = 102;
/// No such column, row, unit or quantity.
pub const AXW_NOT_THERE: i32 = 103;
/// At least one row of a batch was refused; `reason` says which.
pub const AXW_ROWS: i32 = 104;
/// A fault of the library itself; nothing was written.
pub const AXW_FAULT: i32 = 199;

/// Why an entry did not succeed.
pub(crate) enum Failure {
    Core(Error),
    Null(&'static str),
    Buffer { name: &'static str, needed: usize },
    Utf8(&'static str),
    NotThere(String),
    Rows { refused: usize, first: usize, error: Error },
}

impl From<Error> for Failure {
    #[inline(always)]
    fn from(error: Error) -> Self {
        Failure::Core(error)
    }
}

impl Failure {
    fn status(&self) -> i32 {
        match self {
            Failure::Core(error) => error.number(),
            Failure::Null(_) => AXW_NULL,
            Failure::Buffer { .. } => AXW_BUFFER,
            Failure::Utf8(_) => AXW_UTF8,
            Failure::NotThere(_) => AXW_NOT_THERE,
            Failure::Rows { .. } => AXW_ROWS,
        }
    }
    fn sentence(&self) -> String {
        match self {
            Failure::Core(error) => error.to_string(),
            Failure::Null(name) => format!("{name} is NULL"),
            Failure::Buffer { name, needed } => {
                format!("{name} is too short: {needed} bytes are needed, the closing NUL included")
            }
            Failure::Utf8(name) => format!("{name} is not UTF-8 text"),
            Failure::NotThere(what) => what.clone(),
            Failure::Rows { refused, first, error } => {
                format!("{refused} rows refused, the first at index {first}: {error}")
            }
        }
    }
}

pub(crate) type Outcome<T> = Result<T, Failure>;

thread_local! {
    static LAST: RefCell<String> = const { RefCell::new(String::new()) };
}

#[cold]
#[inline(never)]
fn record(failure: &Failure) -> i32 {
    let sentence = failure.sentence();
    LAST.with(|last| *last.borrow_mut() = sentence);
    failure.status()
}

#[cold]
#[inline(never)]
fn record_panic() -> i32 {
    LAST.with(|last| {
        "a fault of the library itself; please report it with the arguments"
            .clone_into(&mut last.borrow_mut())
    });
    AXW_FAULT
}

/// Runs the body of an entry: a failure becomes its status and sentence, and a panic goes no further.
#[inline(always)]
pub(crate) fn guard(body: impl FnOnce() -> Outcome<()>) -> i32 {
    match catch_unwind(AssertUnwindSafe(body)) {
        Ok(Ok(())) => AXW_OK,
        Ok(Err(failure)) => record(&failure),
        Err(_) => record_panic(),
    }
}

/// Runs the body of an entry that returns a number: NaN on any failure.
#[inline(always)]
pub(crate) fn guard_value(body: impl FnOnce() -> axlewright::Result<f64>) -> f64 {
    match catch_unwind(AssertUnwindSafe(body)) {
        Ok(Ok(value)) => value,
        Ok(Err(error)) => {
            record(&Failure::Core(error));
            f64::NAN
        }
        Err(_) => {
            record_panic();
            f64::NAN
        }
    }
}

/// Writes a result where the caller wants it.
#[inline(always)]
pub(crate) unsafe fn put<T>(out: *mut T, value: T) {
    if !out.is_null() {
        unsafe { out.write(value) }
    }
}

/// A list of the caller; NULL is allowed where it is empty.
#[inline(always)]
pub(crate) unsafe fn list<'a, T>(name: &'static str, pointer: *const T, length: usize) -> Outcome<&'a [T]> {
    if length == 0 {
        Ok(&[])
    } else if pointer.is_null() {
        Err(Failure::Null(name))
    } else {
        Ok(unsafe { std::slice::from_raw_parts(pointer, length) })
    }
}

/// Text of the caller.
pub(crate) unsafe fn words<'a>(name: &'static str, pointer: *const c_char) -> Outcome<&'a str> {
    if pointer.is_null() {
        return Err(Failure::Null(name));
    }
    unsafe { CStr::from_ptr(pointer) }.to_str().map_err(|_| Failure::Utf8(name))
}

/// A handle of the caller.
pub(crate) unsafe fn handle<'a, T>(name: &'static str, pointer: *const T) -> Outcome<&'a T> {
    unsafe { pointer.as_ref() }.ok_or(Failure::Null(name))
}

/// Whether text and its closing NUL fit; nothing is wanted where the buffer is NULL.
pub(crate) fn fits(name: &'static str, text: &str, buffer: *mut c_char, size: usize) -> Outcome<()> {
    let needed = text.len() + 1;
    if buffer.is_null() || needed <= size { Ok(()) } else { Err(Failure::Buffer { name, needed }) }
}

/// Copies text and its closing NUL into a buffer in which they fit.
pub(crate) unsafe fn copy(text: &str, buffer: *mut c_char, size: usize) {
    if !buffer.is_null() && text.len() < size {
        unsafe {
            std::ptr::copy_nonoverlapping(text.as_ptr().cast(), buffer, text.len());
            buffer.add(text.len()).write(0);
        }
    }
}

/// Copies the sentence of this thread's last failure into `buffer`, cut to fit, and returns the bytes that the whole needs, its
/// closing NUL included. `buffer` may be NULL where `size` is 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_last_message(buffer: *mut c_char, size: usize) -> usize {
    let whole = catch_unwind(|| LAST.with(|last| last.borrow().clone())).unwrap_or_default();
    if !buffer.is_null() && size > 0 {
        let mut end = whole.len().min(size - 1);
        while !whole.is_char_boundary(end) {
            end -= 1;
        }
        unsafe { copy(&whole[..end], buffer, size) };
    }
    whole.len() + 1
}

/// Version of the library that is loaded, as text that lives as long as the program: "0.1.0". The macro `AXW_VERSION` is the version
/// of the header.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version() -> *const c_char {
    concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast()
}

/// Version of the library that is loaded, as a number: major * 1000000 + minor * 1000 + patch.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_number() -> u32 {
    AXW_VERSION_NUMBER
}

/// Whether the library that is loaded keeps the ABI of the header that the program was compiled with: pass
/// `AXW_VERSION_NUMBER`.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_fits(header: u32) -> bool {
    let abi = |version: u32| if version >= 1_000_000 { version / 1_000_000 } else { version / 1000 };
    abi(header) == abi(AXW_VERSION_NUMBER) && header <= AXW_VERSION_NUMBER
}
