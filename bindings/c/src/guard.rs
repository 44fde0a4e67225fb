//! Guards around every entry: a failure becomes its status and its sentence, and no panic leaves the library.
use crate::caller::copy;
use crate::status::{AXW_FAULT, AXW_OK, Failure, Outcome};
use axlewright::Error;
use std::cell::RefCell;
use std::ffi::c_char;
use std::panic::{AssertUnwindSafe, catch_unwind};

#[cfg(not(panic = "unwind"))]
compile_error!("the C surface turns panics into AXW_FAULT, which needs panic = \"unwind\"");

thread_local! {
    static LAST: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Keeps a sentence for this thread; a thread that is ending keeps none.
fn keep(sentence: String) {
    let _ = LAST.try_with(|last| last.replace(sentence));
}

#[cold]
#[inline(never)]
pub(crate) fn record(failure: &Failure) -> i32 {
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
pub(crate) fn guard_value<E: Into<Failure>>(body: impl FnOnce() -> Result<f64, E>) -> f64 {
    guard_or(f64::NAN, || {
        body().unwrap_or_else(|error| {
            record(&error.into());
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::caller::{free, put};
    use crate::status::AXW_NULL;
    use std::ffi::CStr;

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
        guard_value::<Failure>(|| panic!("on purpose"))
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
        assert_eq!(guard_value::<Failure>(|| Ok(2.0)), 2.0);
    }
}
