//! Lines over values.

use super::document::axw_sheet;
use super::progress::{axw_progress, goes_on};
use crate::caller::{free, give, handle, handle_mut, list, put, texts, words, write_lines};
use crate::guard::{guard, guard_or};
use crate::status::{Failure, Outcome};
use crate::table::axw_table;
use axlewright::sheet::{Axis, Sheet, WhatIf};
use std::ffi::{c_char, c_void};
use std::sync::OnceLock;

/// A sheet with lines over values, and the wanted outputs.
pub struct axw_what_if {
    sheet: Sheet,
    axes: Vec<Axis>,
    side_by_side: bool,
    outputs: Vec<String>,
    /// Made when first needed, and again after a change.
    ready: OnceLock<WhatIf>,
}

impl axw_what_if {
    fn add(&mut self, axis: Axis) {
        self.axes.push(axis);
        self.ready = OnceLock::new();
    }

    fn ready(&self) -> Outcome<&WhatIf> {
        if let Some(ready) = self.ready.get() {
            return Ok(ready);
        }
        let outputs: Vec<&str> = self.outputs.iter().map(String::as_str).collect();
        let made = self.sheet.what_if(self.axes.clone(), self.side_by_side, &outputs)?;
        Ok(self.ready.get_or_init(|| made))
    }
}

/// Begins a what-if on a sheet in its present state: every value of an axis with every value of the others, the last axis fastest.
/// `what_if` receives a handle that `axw_what_if_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_new(sheet: *const axw_sheet, what_if: *mut *mut axw_what_if) -> i32 {
    guard(|| unsafe {
        give("what_if", what_if, || {
            let sheet = handle("sheet", sheet)?.0.clone();
            let (axes, outputs, ready) = (Vec::new(), Vec::new(), OnceLock::new());
            Ok(Box::new(axw_what_if { sheet, axes, side_by_side: false, outputs, ready }))
        })
    })
}

/// Adds an axis: one line over values as a document writes them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_texts(
    what_if: *mut axw_what_if,
    path: *const c_char,
    values: *const *const c_char,
    count: usize,
) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        let values = unsafe { texts("values", values, count) }?;
        what_if.add(Axis::texts(unsafe { words("path", path) }?, &values)?);
        Ok(())
    })
}

/// Adds an axis: one line over numbers in coherent SI. A number that the line does not allow refuses its rows, not the rest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_numbers(
    what_if: *mut axw_what_if,
    path: *const c_char,
    values: *const f64,
    count: usize,
) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        let values = unsafe { list("values", values, count) }?;
        what_if.add(Axis::numbers(unsafe { words("path", path) }?, values)?);
        Ok(())
    })
}

/// Adds an axis: one line from a value to another, both as a document writes them, `count` values at equal steps. A long range takes no memory: its
/// values are computed row by row.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_range(
    what_if: *mut axw_what_if,
    path: *const c_char,
    from: *const c_char,
    to: *const c_char,
    count: usize,
) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        let path = unsafe { words("path", path) }?;
        let (from, to) = unsafe { (words("from", from)?, words("to", to)?) };
        what_if.add(Axis::range(path, from, to, count)?);
        Ok(())
    })
}

/// Adds an axis: several lines that change together, as the entries of a catalogue do. `cells` holds `entries` times `path_count` values
/// as a document writes them, entry by entry, in the order of `paths`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_entries(
    what_if: *mut axw_what_if,
    paths: *const *const c_char,
    path_count: usize,
    cells: *const *const c_char,
    entries: usize,
) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        let paths = unsafe { texts("paths", paths, path_count) }?;
        let cells = unsafe { texts("cells", cells, entries.saturating_mul(path_count)) }?;
        let rows: Vec<Vec<&str>> = cells.chunks(path_count.max(1)).map(<[&str]>::to_vec).collect();
        what_if.add(Axis::entries(&paths, &rows)?);
        Ok(())
    })
}

/// Lets the axes go side by side, row by row, rather than every value with every other; all must have one length.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_side_by_side(what_if: *mut axw_what_if, side_by_side: bool) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        what_if.side_by_side = side_by_side;
        what_if.ready = OnceLock::new();
        Ok(())
    })
}

/// Adds an output: the path of a line, or of a finding followed by `.value`, `.margin` or `.verdict`. Without outputs, every finding gives
/// its margin and its verdict.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_output(what_if: *mut axw_what_if, path: *const c_char) -> i32 {
    guard(|| {
        let what_if = unsafe { handle_mut("what_if", what_if) }?;
        let path = unsafe { words("path", path) }?;
        // An unknown output is refused here, not when the rows run.
        what_if.sheet.what_if(Vec::new(), false, &[path])?;
        what_if.outputs.push(path.to_owned());
        what_if.ready = OnceLock::new();
        Ok(())
    })
}

/// Number of rows.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_rows(what_if: *const axw_what_if, rows: *mut usize) -> i32 {
    guard(|| {
        let count = unsafe { handle("what_if", what_if) }?.ready()?.rows();
        unsafe { put(rows, count) };
        Ok(())
    })
}

/// Outputs that are known in no row, each with its missing inputs or the reason of its refusal, one a line; empty without any.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_not_known(
    what_if: *const axw_what_if,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let ready = unsafe { handle("what_if", what_if) }?.ready()?;
        let lines = ready.not_known().iter().map(|(output, why)| format!("{output}: {why}"));
        unsafe { write_lines(lines, buffer, size, needed) }
    })
}

/// Written readings that count in no row, one a line: each was taken of a line that changes, and is computed from it instead.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_dropped(
    what_if: *const axw_what_if,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let ready = unsafe { handle("what_if", what_if) }?.ready()?;
        unsafe { write_lines(ready.dropped(), buffer, size, needed) }
    })
}

/// `count` rows from the row `first` on as a table: a column for each line that changes, one for each output. If a call in a row was
/// refused, the outputs that follow from it are NaN, and `axw_table_reason` gives the reason.
///
/// A table takes at most 4 GiB. A larger request is refused with `AXW_NO_SOLUTION` before anything is allocated, and so is a table with more than
/// 5,000,000 refused rows: ask piece by piece, by `first` and `count`.
/// It runs on this many threads, at most 256, 0 meaning one for each processor; the numbers do not depend on it. `progress` may be NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_table(
    what_if: *const axw_what_if,
    first: usize,
    count: usize,
    threads: usize,
    progress: axw_progress,
    context: *mut c_void,
    table: *mut *mut axw_table,
) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let ready = handle("what_if", what_if)?.ready()?;
            let rows = first..first.saturating_add(count);
            let threads = Some(threads).filter(|threads| *threads > 0);
            let made = ready.table(rows, threads, &mut goes_on(progress, context))?;
            Ok(axw_table::new(made.ok_or(Failure::Stopped)?))
        })
    })
}

/// Frees a what-if; NULL is allowed. Its tables live on.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_what_if_free(what_if: *mut axw_what_if) {
    guard_or((), || unsafe { free(what_if) });
}
