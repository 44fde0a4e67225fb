//! Help for the first sheet: lines by a word of the trade, and a sheet to fill in.

use crate::caller::{texts, words, write};
use crate::guard::guard;
use crate::text::shop;
use std::ffi::c_char;

/// The tables of a sheet, a line each, if `word` is NULL; otherwise the terms, lines and findings that a word of the trade finds ("shock", "lateral
/// rod"), each line with its meaning, unit and range. `system` is `AXW_METRIC` or `AXW_US`. No line is wider than `width` columns.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_keys(
    word: *const c_char,
    system: i32,
    width: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let word = if word.is_null() { None } else { Some(unsafe { words("word", word) }?) };
        let text = axlewright::sheet::keys(word, shop(system)?, width);
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// The questions that `axw_sheet_starter` takes answers to, as JSON: a list of `key`, `asks` and `choices`, each choice a `word` and what it `says`.
/// The first choice stands if nobody answers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_questions(buffer: *mut c_char, size: usize, needed: *mut usize) -> i32 {
    guard(|| unsafe { write(&axlewright::sheet::questions(), buffer, size, needed) })
}

/// A new sheet in TOML with the lines that fit the vehicle, each behind a `#`, with its meaning, its unit and how it is measured. `questions` and `answers`
/// hold `count` keys and words of `axw_sheet_questions`: "front", "strut". A question that is left out takes its first choice.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_starter(
    name: *const c_char,
    questions: *const *const c_char,
    answers: *const *const c_char,
    count: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let name = unsafe { words("name", name) }?;
        let questions = unsafe { texts("questions", questions, count) }?;
        let answers = unsafe { texts("answers", answers, count) }?;
        let answered: Vec<(&str, &str)> = questions.into_iter().zip(answers).collect();
        unsafe { write(&axlewright::sheet::starter(name, &answered)?, buffer, size, needed) }
    })
}
