//! Progress of long work, told to the caller.

use std::ffi::c_void;

/// Receives the progress of a call: `done` rows, and the `context` of that call. 0 goes on; any other number stops the call,
/// which then returns `AXW_STOPPED` and writes nothing. It is called on the thread that made the call, and must neither throw nor jump
/// out of it.
pub type axw_progress = Option<unsafe extern "C" fn(done: usize, context: *mut c_void) -> i32>;

/// The caller's progress function in the core's form; NULL always goes on.
pub(super) fn goes_on(progress: axw_progress, context: *mut c_void) -> impl FnMut(usize) -> bool {
    move |done| progress.is_none_or(|progress| unsafe { progress(done, context) } == 0)
}
