//! C ABI of Axlewright: the base of every generated entry.
//!
//! Every entry returns one of the `AXW_` status numbers and writes its outputs only on success. The sentence on a failure,
//! with argument, value and limit, is kept for the calling thread until its next failure. No panic leaves this library.
#![allow(non_camel_case_types, clippy::missing_safety_doc)]

mod entries;
mod sheet;
mod table;
mod text;
mod verdict;
mod work;

pub use entries::*;
pub use sheet::*;
pub use table::*;
pub use text::*;
pub use verdict::*;
pub use work::*;

use axlewright::Error;
use axlewright::base::document::{Document, Field};
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::ffi::{CStr, CString, c_char};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, Mutex, PoisonError};

#[cfg(not(panic = "unwind"))]
compile_error!("the C surface turns panics into AXW_FAULT, which needs panic = \"unwind\"");

/// Success.
pub const AXW_OK: i32 = 0;
/// An argument is outside its limits, or not a number.
pub const AXW_OUT_OF_RANGE: i32 = 1;
/// Two arguments contradict each other.
pub const AXW_CONTRADICTION: i32 = 2;
/// The inputs are allowed, but have no answer.
pub const AXW_NO_SOLUTION: i32 = 3;
/// Text that is not a quantity, or is of another kind than expected.
pub const AXW_TEXT: i32 = 4;
/// A document that cannot be read, or a value in it that is not allowed.
pub const AXW_DOCUMENT: i32 = 5;
/// A list whose length does not fit.
pub const AXW_LENGTH: i32 = 6;
/// A pointer that must not be NULL is NULL.
pub const AXW_NULL: i32 = 100;
/// The caller's buffer or struct is too short; nothing was written.
pub const AXW_BUFFER: i32 = 101;
/// Text that is not UTF-8.
pub const AXW_UTF8: i32 = 102;
/// No such column, row, unit or quantity.
pub const AXW_NOT_THERE: i32 = 103;
/// At least one row of a batch was refused; `reason` names it.
pub const AXW_ROWS: i32 = 104;
/// The caller's own progress function stopped it.
pub const AXW_STOPPED: i32 = 105;
/// A fault of the library itself; its outputs mean nothing.
pub const AXW_FAULT: i32 = 199;

/// Reason for the failure of an entry.
pub(crate) enum Failure {
    Core(Error),
    Null(&'static str),
    NullAt(&'static str, usize),
    Buffer { name: &'static str, needed: usize },
    Size { name: &'static str, size: usize, whole: usize },
    Utf8(&'static str),
    Utf8At(&'static str, usize),
    NotThere(String),
    OutOfRange(String),
    Rows { refused: usize, first: usize, error: Error },
    Stopped,
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
            Failure::Null(_) | Failure::NullAt(..) => AXW_NULL,
            Failure::Buffer { .. } | Failure::Size { .. } => AXW_BUFFER,
            Failure::Utf8(_) | Failure::Utf8At(..) => AXW_UTF8,
            Failure::NotThere(_) => AXW_NOT_THERE,
            Failure::OutOfRange(_) => AXW_OUT_OF_RANGE,
            Failure::Rows { .. } => AXW_ROWS,
            Failure::Stopped => AXW_STOPPED,
        }
    }
    fn sentence(&self) -> String {
        match self {
            Failure::Core(error) => error.to_string(),
            Failure::Null(name) => format!("{name} is NULL"),
            Failure::NullAt(name, place) => format!("{name}[{place}] is NULL"),
            Failure::Buffer { name, needed } => {
                format!("{name} is too short: {needed} bytes are needed, the closing NUL included")
            }
            Failure::Size { name, size, whole } => {
                format!(
                    "{name}->size = {size} is not a size of this struct; set it to sizeof *{name}, {whole} here"
                )
            }
            Failure::Utf8(name) => format!("{name} is not UTF-8 text"),
            Failure::Utf8At(name, place) => format!("{name}[{place}] is not UTF-8 text"),
            Failure::Stopped => "stopped: progress returned another number than 0".to_owned(),
            Failure::NotThere(what) | Failure::OutOfRange(what) => what.clone(),
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

/// Keeps a sentence for this thread; a thread that is ending keeps none.
fn keep(sentence: String) {
    let _ = LAST.try_with(|last| last.replace(sentence));
}

#[cold]
#[inline(never)]
fn record(failure: &Failure) -> i32 {
    keep(failure.sentence());
    failure.status()
}

#[cold]
#[inline(never)]
fn record_panic() -> i32 {
    keep("a fault of the library itself; please report it with the arguments".into());
    AXW_FAULT
}

// The whole body of every entry is one call of one of these four guards: the generator refuses any other.

/// Runs the body of an entry: a failure becomes its status and sentence, and a panic stops here.
#[inline(always)]
pub(crate) fn guard(body: impl FnOnce() -> Outcome<()>) -> i32 {
    let answer = || body().map_or_else(|failure| record(&failure), |()| AXW_OK);
    catch_unwind(AssertUnwindSafe(answer)).unwrap_or_else(|_| record_panic())
}

/// Runs a call of the core and writes its answer. A refused call runs again, separately, for its sentence, so that a call that
/// succeeds carries no error along.
#[inline(always)]
pub(crate) fn guard_call<T>(call: impl Fn() -> axlewright::Result<T>, write: impl FnOnce(T)) -> i32 {
    #[cold]
    #[inline(never)]
    fn refused<T>(call: impl Fn() -> axlewright::Result<T>) -> i32 {
        guard(|| Ok(call().map(drop)?))
    }
    let answer = || match call() {
        Ok(on) => {
            write(on);
            true
        }
        Err(error) => {
            match error {
                // Errors without owned memory: most entries then have nothing to drop.
                Error::OutOfRange { .. } | Error::Contradiction { .. } | Error::Length { .. } => {
                    std::mem::forget(error);
                }
                owning => discard(owning),
            }
            false
        }
    };
    match catch_unwind(AssertUnwindSafe(answer)) {
        Ok(true) => AXW_OK,
        _ => refused(call),
    }
}

#[cold]
#[inline(never)]
fn discard(error: Error) {
    drop(error);
}

/// Runs the body of an entry that returns a number: NaN on any failure.
#[inline(always)]
pub(crate) fn guard_value(body: impl FnOnce() -> axlewright::Result<f64>) -> f64 {
    guard_or(f64::NAN, || {
        body().unwrap_or_else(|error| {
            record(&Failure::Core(error));
            f64::NAN
        })
    })
}

/// Runs the body of an entry that cannot fail except by a panic, which becomes `fallback`.
#[inline(always)]
pub(crate) fn guard_or<T>(fallback: T, body: impl FnOnce() -> T) -> T {
    catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|_| {
        record_panic();
        fallback
    })
}

/// Writes a result to the caller's pointer.
#[inline(always)]
pub(crate) unsafe fn put<T>(out: *mut T, value: T) {
    if !out.is_null() {
        unsafe { out.write(value) }
    }
}

/// Bytes to fill of the caller's struct of results, which begins with its size: it may come from an older or a newer header. Fields
/// are 8 bytes at most and aligned, so a multiple of the struct's alignment cuts none of them.
pub(crate) unsafe fn room<T>(name: &'static str, result: *const T) -> Outcome<usize> {
    if result.is_null() {
        return Err(Failure::Null(name));
    }
    let size = unsafe { result.cast::<usize>().read() };
    if size < size_of::<usize>() + size_of::<f64>() || !size.is_multiple_of(align_of::<T>()) {
        return Err(Failure::Size { name, size, whole: size_of::<T>() });
    }
    Ok(size.min(size_of::<T>()))
}

/// Fills this many bytes of the caller's struct of results, without its own size.
pub(crate) unsafe fn fill<T: Copy>(result: *mut T, filled: &T, room: usize) {
    const SIZE: usize = size_of::<usize>();
    let from = std::ptr::from_ref(filled).cast::<u8>();
    unsafe { std::ptr::copy_nonoverlapping(from.add(SIZE), result.cast::<u8>().add(SIZE), room - SIZE) }
}

/// Texts that a model handed out, each once: they live as long as its handle.
#[derive(Default)]
pub(crate) struct Texts(Mutex<BTreeSet<Arc<CStr>>>);

impl Texts {
    pub(crate) fn keep(&self, text: &str) -> *const c_char {
        let text = c_text(text);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        match kept.get(&*text) {
            Some(same) => same.as_ptr(),
            None => {
                let new: Arc<CStr> = text.into();
                let place = new.as_ptr();
                kept.insert(new);
                place
            }
        }
    }
}

/// Text for C; a NUL inside would end it.
pub(crate) fn c_text(text: &str) -> CString {
    CString::new(text.replace('\0', " ")).unwrap_or_default()
}

/// A list of the caller; NULL is allowed if it is empty.
#[inline(always)]
pub(crate) unsafe fn list<'a, T>(name: &'static str, pointer: *const T, length: usize) -> Outcome<&'a [T]> {
    if length == 0 {
        Ok(&[])
    } else if pointer.is_null() {
        Err(Failure::Null(name))
    } else if length > isize::MAX as usize / size_of::<T>() {
        Err(Error::Length { argument: name, length, wanted: "no memory is large enough" }.into())
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

/// A list of texts of the caller.
pub(crate) unsafe fn texts<'a>(
    name: &'static str,
    pointer: *const *const c_char,
    length: usize,
) -> Outcome<Vec<&'a str>> {
    let all = unsafe { list(name, pointer, length) }?;
    let text = |(place, text): (usize, &*const c_char)| {
        unsafe { words(name, *text) }.map_err(|failure| match failure {
            Failure::Null(name) => Failure::NullAt(name, place),
            _ => Failure::Utf8At(name, place),
        })
    };
    all.iter().enumerate().map(text).collect()
}

/// A document from the caller's paths: the text of each, or its number if it has no text.
pub(crate) unsafe fn document(
    paths: *const *const c_char,
    values: *const f64,
    texts: *const *const c_char,
    count: usize,
) -> Outcome<Document> {
    let paths = unsafe { self::texts("paths", paths, count) }?;
    let texts = if texts.is_null() { &[] } else { unsafe { list("texts", texts, count) }? };
    let field = |place: usize| match texts.get(place) {
        Some(text) if !text.is_null() => {
            unsafe { words("texts", *text) }.map(Field::Text).map_err(|_| Failure::Utf8At("texts", place))
        }
        _ if values.is_null() => Err(Failure::Null("values")),
        _ => Ok(Field::Si(unsafe { values.add(place).read() })),
    };
    let fields = (0..count).map(field).collect::<Outcome<Vec<_>>>()?;
    Ok(Document::from_si(paths.into_iter().zip(fields))?)
}

/// A handle of the caller.
pub(crate) unsafe fn handle<'a, T>(name: &'static str, pointer: *const T) -> Outcome<&'a T> {
    unsafe { pointer.as_ref() }.ok_or(Failure::Null(name))
}

/// A handle of the caller, for a change.
pub(crate) unsafe fn handle_mut<'a, T>(name: &'static str, pointer: *mut T) -> Outcome<&'a mut T> {
    unsafe { pointer.as_mut() }.ok_or(Failure::Null(name))
}

/// Gives a handle to the caller, who frees it.
pub(crate) unsafe fn give<T>(
    name: &'static str,
    out: *mut *mut T,
    make: impl FnOnce() -> Outcome<Box<T>>,
) -> Outcome<()> {
    if out.is_null() {
        return Err(Failure::Null(name));
    }
    let made = make()?;
    unsafe { out.write(Box::into_raw(made)) };
    Ok(())
}

/// Word of a code, or NULL for an unknown code: an error never passes for a word.
pub(crate) fn word_of(choice: &str, code: i32, words: &[&'static CStr]) -> *const c_char {
    let word = usize::try_from(code).ok().and_then(|place| words.get(place));
    word.map_or_else(
        || {
            record(&Failure::NotThere(format!(
                "{choice} = {code} is not a code; the codes are 0 to {}",
                words.len() - 1
            )));
            std::ptr::null()
        },
        |word| word.as_ptr(),
    )
}

/// Frees what the library gave to the caller.
pub(crate) unsafe fn free<T>(pointer: *mut T) {
    if !pointer.is_null() {
        drop(unsafe { Box::from_raw(pointer) });
    }
}

/// Checks that text and its closing NUL fit; a NULL buffer asks for nothing.
pub(crate) fn fits(name: &'static str, text: &str, buffer: *mut c_char, size: usize) -> Outcome<()> {
    let needed = text.len() + 1;
    if buffer.is_null() || needed <= size { Ok(()) } else { Err(Failure::Buffer { name, needed }) }
}

/// Copies text and its closing NUL into a buffer that holds them.
pub(crate) unsafe fn copy(text: &str, buffer: *mut c_char, size: usize) {
    if !buffer.is_null() && text.len() < size {
        unsafe {
            std::ptr::copy_nonoverlapping(text.as_ptr().cast(), buffer, text.len());
            buffer.add(text.len()).write(0);
        }
    }
}

/// Writes text and its size to the caller's pointers.
pub(crate) unsafe fn write(text: &str, buffer: *mut c_char, size: usize, needed: *mut usize) -> Outcome<()> {
    fits("buffer", text, buffer, size)?;
    unsafe {
        copy(text, buffer, size);
        put(needed, text.len() + 1);
    }
    Ok(())
}

/// Copies the sentence of this thread's last failure into `buffer`, cut to fit, and returns the bytes that the whole needs, its
/// closing NUL included. `buffer` may be NULL if `size` is 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_last_message(buffer: *mut c_char, size: usize) -> usize {
    guard_or(0, || {
        let whole = LAST.try_with(|last| last.borrow().clone()).unwrap_or_default();
        if !buffer.is_null() && size > 0 {
            let cut = whole.floor_char_boundary(size - 1);
            unsafe { copy(&whole[..cut], buffer, size) };
        }
        whole.len() + 1
    })
}

/// Version of the loaded library, as text that lives as long as the program: "1.2.3". The macro `AXW_VERSION` is the version
/// of the header.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version() -> *const c_char {
    guard_or(std::ptr::null(), || concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast())
}

/// Version of the loaded library, as a number: major * 1000000 + minor * 1000 + patch.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_number() -> u32 {
    guard_or(0, || AXW_VERSION_NUMBER)
}

/// True if the loaded library keeps the ABI of the header that the program was compiled with: pass
/// `AXW_VERSION_NUMBER`.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_fits(header: u32) -> bool {
    guard_or(false, || fits_abi(header, AXW_VERSION_NUMBER))
}

/// True if a library of one version serves a program compiled with the header of another. The major versions are equal, and while
/// they are 0 the minor ones too; the header is not newer than the library.
const fn fits_abi(header: u32, library: u32) -> bool {
    const MAJOR: u32 = 1_000_000;
    const MINOR: u32 = 1000;
    let step = if library < MAJOR { MINOR } else { MAJOR };
    header / step == library / step && header <= library
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Last message of the calling thread.
    fn message() -> String {
        let mut buffer = [0u8; 256];
        unsafe { axw_last_message(buffer.as_mut_ptr().cast(), buffer.len()) };
        CStr::from_bytes_until_nul(&buffer).unwrap().to_str().unwrap().to_owned()
    }

    // An `extern "C"` function that unwinds ends the process: these tests pass only if the guards hold the panic.

    extern "C" fn faulty_status(out: *mut f64) -> i32 {
        guard(|| {
            let none: [f64; 0] = [];
            unsafe { put(out, none[std::hint::black_box(3)]) };
            Ok(())
        })
    }
    extern "C" fn faulty_value() -> f64 {
        guard_value(|| panic!("on purpose"))
    }
    extern "C" fn faulty_size() -> usize {
        guard_or(7, || panic!("on purpose"))
    }

    #[test]
    fn a_panic_becomes_a_status_a_message_and_nothing_else() {
        let mut out = 1.5;
        record(&Failure::Null("before"));
        assert_eq!(faulty_status(&mut out), AXW_FAULT);
        assert_eq!(out, 1.5);
        assert!(message().starts_with("a fault of the library itself"), "{}", message());
        assert!(faulty_value().is_nan());
        assert_eq!(faulty_size(), 7);
    }

    #[test]
    fn a_handle_that_panics_when_it_is_dropped_goes_no_further() {
        struct Faulty;
        impl Drop for Faulty {
            fn drop(&mut self) {
                panic!("on purpose");
            }
        }
        extern "C" fn faulty_free(handle: *mut Faulty) {
            guard_or((), || unsafe { free(handle) });
        }
        record(&Failure::Null("before"));
        faulty_free(Box::into_raw(Box::new(Faulty)));
        assert!(message().starts_with("a fault of the library itself"), "{}", message());
    }

    #[test]
    fn the_thread_goes_on_after_a_fault() {
        assert_eq!(faulty_status(std::ptr::null_mut()), AXW_FAULT);
        assert_eq!(guard(|| Err(Failure::Null("wheel"))), AXW_NULL);
        assert_eq!(message(), "wheel is NULL");
        assert_eq!(guard(|| Ok(())), AXW_OK);
        assert_eq!(guard_value(|| Ok(2.0)), 2.0);
    }

    #[test]
    fn a_text_is_kept_once_and_where_it_is() {
        let texts = Texts::default();
        let first = texts.keep("lower ball joint");
        let others: Vec<_> = (0..100).map(|n| texts.keep(&format!("joint {n}"))).collect();
        assert_eq!(texts.keep("lower ball joint"), first);
        assert_eq!(texts.keep("joint 7"), others[7]);
        assert_eq!(unsafe { CStr::from_ptr(first) }, c"lower ball joint");
        assert_eq!(unsafe { CStr::from_ptr(texts.keep("top\0mount")) }, c"top mount");
    }

    #[test]
    fn the_words_of_a_verdict_are_those_of_the_core() {
        for (code, verdict) in (0..).zip(axlewright::Verdict::ALL) {
            assert_eq!(unsafe { CStr::from_ptr(axw_verdict_word(code)) }.to_str(), Ok(verdict.word()));
        }
        assert!(axw_verdict_word(axlewright::Verdict::ALL.len() as i32).is_null());
    }

    #[test]
    fn a_list_longer_than_memory_is_refused() {
        let one = 1.0_f64;
        let refused = unsafe { list("cap", &one, usize::MAX) };
        assert!(matches!(refused, Err(Failure::Core(Error::Length { argument: "cap", .. }))));
    }

    #[test]
    fn the_abi_is_kept_within_a_minor_version_of_0_and_within_a_major_one_after_it() {
        for (header, library, fits) in [
            (1_000, 1_000, true),
            (1_000, 1_003, true),
            (1_003, 1_000, false),
            (1_000, 2_000, false),
            (1_000, 1_000_000, false), // 0.1 is not 1.0
            (1_000_000, 1_000, false),
            (1_000_000, 1_004_002, true),
            (1_004_002, 1_004_001, false),
            (1_004_002, 2_000_000, false),
        ] {
            assert_eq!(fits_abi(header, library), fits, "{header} {library}");
        }
    }
}
