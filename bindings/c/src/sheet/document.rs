//! The sheet itself: its lines, its text and its models.

use crate::caller::{document, free, give, handle, handle_mut, words, write};
use crate::guard::{guard, guard_or};
use crate::status::{Failure, Outcome};
use axlewright::sheet::{Sheet, SheetModel};
use std::ffi::c_char;

/// A build sheet.
pub struct axw_sheet(pub(super) Sheet);

/// Reads a build sheet from JSON or TOML text. `sheet` receives a handle that `axw_sheet_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_new(text: *const c_char, sheet: *mut *mut axw_sheet) -> i32 {
    guard(|| unsafe {
        give("sheet", sheet, || Ok(Box::new(axw_sheet(Sheet::from_text(words("text", text)?)?))))
    })
}

/// Makes a build sheet from named values, without text. `paths[i]` is a line such as "front.spring.rate" or "gearbox.ratios[0]", and
/// `values[i]` its number in coherent SI, or NaN if it is not known. If `texts[i]` is not NULL, the line is that text instead: a
/// word, a marking, a name, or "none"; `texts` may be NULL. `sheet` receives a handle that `axw_sheet_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_new_si(
    paths: *const *const c_char,
    values: *const f64,
    texts: *const *const c_char,
    count: usize,
    sheet: *mut *mut axw_sheet,
) -> i32 {
    guard(|| unsafe {
        give("sheet", sheet, || {
            Ok(Box::new(axw_sheet(Sheet::from_document(&document(paths, values, texts, count)?)?)))
        })
    })
}

/// Writes a quantity in coherent SI, without text: `axw_sheet_get` then shows it in its SI unit. NaN means not known and removes the
/// line.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_set_si(sheet: *mut axw_sheet, path: *const c_char, si: f64) -> i32 {
    guard(|| {
        let sheet = unsafe { handle_mut("sheet", sheet) }?;
        Ok(sheet.0.set_si(unsafe { words("path", path) }?, si)?)
    })
}

/// Writes a line as a document would: "front.spring.rate", "225 lbf/in +/- 3 %".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_set(
    sheet: *mut axw_sheet,
    path: *const c_char,
    text: *const c_char,
) -> i32 {
    guard(|| {
        let sheet = unsafe { handle_mut("sheet", sheet) }?;
        Ok(sheet.0.set(unsafe { words("path", path) }?, unsafe { words("text", text) }?)?)
    })
}

/// Removes a line; nothing happens if it is not written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_remove(sheet: *mut axw_sheet, path: *const c_char) -> i32 {
    guard(|| {
        let sheet = unsafe { handle_mut("sheet", sheet) }?;
        Ok(sheet.0.remove(unsafe { words("path", path) }?)?)
    })
}

/// Copies the text of a line as it was written; `AXW_NOT_THERE` if it is not written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_get(
    sheet: *const axw_sheet,
    path: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let sheet = unsafe { handle("sheet", sheet) }?;
        let path = unsafe { words("path", path) }?;
        let text = sheet.0.get(path)?;
        let text = text.ok_or_else(|| Failure::NotThere(format!("{path} is not written on the sheet")))?;
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Text about a model that the sheet holds.
unsafe fn say(
    sheet: *const axw_sheet,
    path: *const c_char,
    about: impl Fn(&SheetModel) -> String,
) -> Outcome<String> {
    let sheet = unsafe { handle("sheet", sheet) }?;
    Ok(about(&sheet.0.model(unsafe { words("path", path) }?)?))
}

/// Copies the document, as JSON, of a model that the sheet holds: "cap", "front.suspension". The constructor of its type, which
/// `axw_sheet_model_type` names, reads it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_model(
    sheet: *const axw_sheet,
    path: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe {
        say(sheet, path, |model| model.to_json()).and_then(|text| write(&text, buffer, size, needed))
    })
}

/// Copies the type of a model that the sheet holds: "suspension.DoubleWishbone".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_model_type(
    sheet: *const axw_sheet,
    path: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe {
        say(sheet, path, |model| model.model.to_owned()).and_then(|text| write(&text, buffer, size, needed))
    })
}

/// Copies, a line each, the fields of a model that are not in its own table or that nobody wrote: the field, the line of the sheet
/// from which it comes, and "written", "computed" or "assumed".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_model_elsewhere(
    sheet: *const axw_sheet,
    path: *const c_char,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let lines = |model: &SheetModel| -> String {
            model.elsewhere.iter().map(|on| format!("{} {} {}\n", on.field, on.line, on.origin)).collect()
        };
        unsafe { say(sheet, path, lines).and_then(|text| write(&text, buffer, size, needed)) }
    })
}

/// The sheet as TOML, each value as it was written; equal sheets give equal bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_toml(
    sheet: *const axw_sheet,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe { write(&handle("sheet", sheet)?.0.to_toml(), buffer, size, needed) })
}

/// The sheet as JSON, each value as it was written; equal sheets give equal bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_json(
    sheet: *const axw_sheet,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe { write(&handle("sheet", sheet)?.0.to_json(), buffer, size, needed) })
}

/// Content name of the sheet: 32 hexadecimal digits of the SHA-256 of its JSON.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_hash(
    sheet: *const axw_sheet,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe { write(&handle("sheet", sheet)?.0.hash(), buffer, size, needed) })
}

/// Frees a sheet; NULL is allowed. Objects made from it live on.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_free(sheet: *mut axw_sheet) {
    guard_or((), || unsafe { free(sheet) });
}
