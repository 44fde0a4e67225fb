//! Release of the interpreter around long work, and the way back to it.
//!
//! A thread that attaches to an interpreter which is ending takes the process down: CPython frees what such a thread needs, or ends the thread in the
//! middle of native code. So there is one gate for every way back. `atexit` closes it while the interpreter is still whole, and waits for those who are
//! on their way; whoever comes later rests until the process ends.
use pyo3::prelude::*;
use std::cell::Cell;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering::SeqCst};
use std::sync::{Condvar, Mutex, OnceLock, PoisonError};
use std::thread::{self, ThreadId};
use std::time::Duration;

/// True once the interpreter ends: nobody returns to it any more, except the thread that ends it.
static ENDING: AtomicBool = AtomicBool::new(false);
/// The thread that ends the interpreter.
static LAST: OnceLock<ThreadId> = OnceLock::new();
/// Threads on their way back to the interpreter, or in a callback that native code called.
static COMING: AtomicUsize = AtomicUsize::new(0);
/// Tells the thread that ends the interpreter that nobody is on the way any more. `COMING` counts them, so the lock holds nothing.
static GONE: (Mutex<()>, Condvar) = (Mutex::new(()), Condvar::new());

thread_local! {
    /// Times that this thread has passed the gate from outside and not left yet.
    static INSIDE: Cell<usize> = const { Cell::new(0) };
}

/// Longest wait, at the end of the interpreter, for a callback that does not return.
const PATIENCE: Duration = Duration::from_secs(1);

/// True if the interpreter ends, and not by this thread: it must not return there.
pub fn is_shut() -> bool {
    ENDING.load(SeqCst) && LAST.get() != Some(&thread::current().id())
}

/// Enters the gate; false if the interpreter ends. Whoever entered must leave.
fn enter() -> bool {
    COMING.fetch_add(1, SeqCst);
    let open = !is_shut();
    if !open {
        leave();
    }
    open
}

fn leave() {
    fewer(1);
}

/// So many threads fewer are on their way. Whoever does not see the end yet took itself off before the last thread counts.
fn fewer(by: usize) {
    if COMING.fetch_sub(by, SeqCst) == by && ENDING.load(SeqCst) {
        drop(GONE.0.lock().unwrap_or_else(PoisonError::into_inner));
        GONE.1.notify_all();
    }
}

/// Rests until the process ends.
fn rest() -> ! {
    loop {
        thread::park();
    }
}

/// Does work with the interpreter released.
pub fn released<T: Send>(py: Python<'_>, work: impl FnOnce() -> T + Send) -> T {
    if ENDING.load(SeqCst) {
        if is_shut() {
            py.detach(|| rest());
        }
        return work();
    }
    let answer = py.detach(|| {
        let inside = INSIDE.take();
        fewer(inside);
        let answer = catch_unwind(AssertUnwindSafe(work));
        if !enter() {
            rest();
        }
        COMING.fetch_add(inside, SeqCst);
        INSIDE.set(inside);
        answer
    });
    leave();
    answer.unwrap_or_else(|payload| resume_unwind(payload))
}

/// Attaches to the interpreter out of released work, or from a thread that Python does not know; nothing if the interpreter ends.
pub fn attached<T>(call: impl FnOnce(Python<'_>) -> T) -> Option<T> {
    if !enter() {
        return None;
    }
    INSIDE.set(INSIDE.get() + 1);
    let answer = catch_unwind(AssertUnwindSafe(|| Python::try_attach(call)));
    INSIDE.set(INSIDE.get() - 1);
    leave();
    answer.unwrap_or_else(|payload| resume_unwind(payload))
}

/// Shuts the gate: `atexit` calls it.
#[pyfunction]
fn ending(py: Python<'_>) {
    let _ = LAST.set(thread::current().id());
    ENDING.store(true, SeqCst);
    py.detach(|| {
        let lock = GONE.0.lock().unwrap_or_else(PoisonError::into_inner);
        drop(GONE.1.wait_timeout_while(lock, PATIENCE, |()| COMING.load(SeqCst) > 0));
    });
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    let py = m.py();
    py.import("atexit")?.call_method1("register", (wrap_pyfunction!(ending, py)?,)).map(drop)
}
