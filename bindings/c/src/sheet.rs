//! The build sheet on the C surface: sheet, assessment, what-if and choice. Lists come as tables.

use crate::text::shop;
use crate::{
    Failure, Outcome, axw_table, document, free, give, guard, guard_or, handle, handle_mut, list, put, texts,
    verdict_number, words, write,
};
use axlewright::Verdict;
use axlewright::base::error::Error;
use axlewright::sheet::{
    Answer, Assessment, Axis, Choice, Chosen, PriceList, Requirement, Sheet, SheetModel, WhatIf, choose,
};
use std::ffi::{CString, c_char, c_void};
use std::sync::OnceLock;

/// Receives the progress of a call: `done` rows, and the `context` of that call. 0 goes on; any other number stops the call,
/// which then returns `AXW_STOPPED` and writes nothing. It is called on the thread that made the call, and must neither throw nor jump
/// out of it.
pub type axw_progress = Option<unsafe extern "C" fn(done: usize, context: *mut c_void) -> i32>;

/// The caller's progress function in the core's form; NULL always goes on.
fn goes_on(progress: axw_progress, context: *mut c_void) -> impl FnMut(usize) -> bool {
    move |done| progress.is_none_or(|progress| unsafe { progress(done, context) } == 0)
}

/// A build sheet.
pub struct axw_sheet(Sheet);

/// Reads a build sheet from JSON or TOML text. `sheet` receives a handle that `axw_sheet_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_sheet_new(text: *const c_char, sheet: *mut *mut axw_sheet) -> i32 {
    guard(|| unsafe {
        give("sheet", sheet, || Ok(Box::new(axw_sheet(Sheet::from_text(words("text", text)?)?))))
    })
}

/// Makes a build sheet from named values, without text. `paths[i]` is a line such as "front.spring.rate" or "parts[0].ratio", and
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

/// The findings of one sheet.
pub struct axw_assessment(Assessment);

impl axw_assessment {
    fn answer(&self, finding: usize) -> Outcome<&Answer> {
        let answers = self.0.answers();
        let missing =
            || Failure::NotThere(format!("finding = {finding} is not there: there are {}", answers.len()));
        answers.get(finding).ok_or_else(missing)
    }
}

/// Texts of a finding, equal on every sheet.
struct Said {
    path: CString,
    system: CString,
    question: CString,
    caution: CString,
    quantity: CString,
    unit: CString,
    form: CString,
    margin_quantity: CString,
    margin_unit: CString,
}

/// Texts of the findings, in their order, equal for every sheet; they live as long as the program.
fn said(assessment: &Assessment) -> &'static [Said] {
    static SAID: OnceLock<Vec<Said>> = OnceLock::new();
    let c = |text: &str| CString::new(text).unwrap_or_default();
    let of = |answer: &Answer| Said {
        path: c(answer.path),
        system: c(answer.system),
        question: c(answer.question),
        caution: c(answer.caution),
        quantity: c(answer.kind.name),
        unit: c(answer.kind.si),
        form: c(answer.form),
        margin_quantity: c(answer.margin_kind.name),
        margin_unit: c(answer.margin_kind.si),
    };
    SAID.get_or_init(|| assessment.answers().iter().map(of).collect())
}

/// Assesses a sheet. `assessment` receives a handle that `axw_assessment_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_new(
    sheet: *const axw_sheet,
    assessment: *mut *mut axw_assessment,
) -> i32 {
    guard(|| unsafe {
        give("assessment", assessment, || Ok(Box::new(axw_assessment(handle("sheet", sheet)?.0.assess()))))
    })
}

/// Number of findings, equal for every sheet; 0 if `assessment` is NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_findings(assessment: *const axw_assessment) -> usize {
    guard_or(0, || unsafe { assessment.as_ref() }.map_or(0, |assessment| assessment.0.answers().len()))
}

/// Place of the finding of this name, for every other entry: "front.coil_bind".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_find(
    assessment: *const axw_assessment,
    path: *const c_char,
    finding: *mut usize,
) -> i32 {
    guard(|| {
        let answers = unsafe { handle("assessment", assessment) }?.0.answers();
        let path = unsafe { words("path", path) }?;
        let place = answers.iter().position(|answer| answer.path == path).ok_or_else(|| {
            let paths: Vec<&str> = answers.iter().map(|answer| answer.path).collect();
            Failure::NotThere(format!("there is no finding {path:?}; there are {}", paths.join(", ")))
        })?;
        unsafe { put(finding, place) };
        Ok(())
    })
}

/// Name of a finding, the system that asks, its question, and its caution (empty if it cannot hurt someone). The texts live as long
/// as the program.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_finding(
    assessment: *const axw_assessment,
    finding: usize,
    path: *mut *const c_char,
    system: *mut *const c_char,
    question: *mut *const c_char,
    caution: *mut *const c_char,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        assessment.answer(finding)?;
        let said = &said(&assessment.0)[finding];
        unsafe {
            put(path, said.path.as_ptr());
            put(system, said.system.as_ptr());
            put(question, said.question.as_ptr());
            put(caution, said.caution.as_ptr());
        }
        Ok(())
    })
}

/// Quantity and SI unit of value and limits, the form of the margin ("ratio", "difference", "place in a band"), and its quantity and SI
/// unit. The texts live as long as the program.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_units(
    assessment: *const axw_assessment,
    finding: usize,
    quantity: *mut *const c_char,
    unit: *mut *const c_char,
    form: *mut *const c_char,
    margin_quantity: *mut *const c_char,
    margin_unit: *mut *const c_char,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        assessment.answer(finding)?;
        let said = &said(&assessment.0)[finding];
        unsafe {
            put(quantity, said.quantity.as_ptr());
            put(unit, said.unit.as_ptr());
            put(form, said.form.as_ptr());
            put(margin_quantity, said.margin_quantity.as_ptr());
            put(margin_unit, said.margin_unit.as_ptr());
        }
        Ok(())
    })
}

/// Answer to a finding: its verdict `AXW_VERDICT_...`; value, lower and upper limit, margin, wanted margin, and
/// standard uncertainty of the margin from the tolerances, in coherent SI; NaN if not known, or if there is no such limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_answer(
    assessment: *const axw_assessment,
    finding: usize,
    verdict: *mut i32,
    value: *mut f64,
    low: *mut f64,
    high: *mut f64,
    margin: *mut f64,
    wanted: *mut f64,
    uncertainty: *mut f64,
) -> i32 {
    guard(|| {
        let answer = unsafe { handle("assessment", assessment) }?.answer(finding)?;
        unsafe {
            put(verdict, verdict_number(answer.verdict));
            put(value, answer.value);
            put(low, answer.low);
            put(high, answer.high);
            put(margin, answer.margin);
            put(wanted, answer.wanted);
            put(uncertainty, answer.uncertainty);
        }
        Ok(())
    })
}

/// Missing inputs of a finding that is not known, in one sentence; empty if it is known.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_missing(
    assessment: *const axw_assessment,
    finding: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        let answer = assessment.answer(finding)?;
        let unknown = answer.verdict == Verdict::NotKnown;
        let text = if unknown { assessment.0.missing_text(answer) } else { String::new() };
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Written or assumed lines on which a finding rests, a path a line. If it does not apply: the parts that are
/// `none`, or the deciding choice.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_rests_on(
    assessment: *const axw_assessment,
    finding: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        let paths = assessment.0.rests_on(assessment.answer(finding)?);
        let text: String = paths.iter().map(|path| format!("{path}\n")).collect();
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// The work behind a finding: each formula, the numbers put in with their units, the result and the source. `system` is `AXW_METRIC` or
/// `AXW_US`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_work(
    assessment: *const axw_assessment,
    finding: usize,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        let text = assessment.0.work(assessment.answer(finding)?, shop(system)?);
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Worst of the findings, for a program that must stop at it: 0 meets, 1 tight, 2 short. A finding that is not known counts as tight if it
/// can hurt someone; otherwise it is not counted. Findings that do not apply are not counted. It is no verdict of the vehicle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_severity(
    assessment: *const axw_assessment,
    severity: *mut i32,
) -> i32 {
    guard(|| {
        let worst = unsafe { handle("assessment", assessment) }?.0.severity();
        unsafe { put(severity, i32::from(worst)) };
        Ok(())
    })
}

/// Value of any line in coherent SI, written or not: "front.natural_frequency"; NaN if it is not known.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_value(
    assessment: *const axw_assessment,
    path: *const c_char,
    si: *mut f64,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        let value = assessment.0.value(unsafe { words("path", path) }?)?;
        unsafe { put(si, value.unwrap_or(f64::NAN)) };
        Ok(())
    })
}

/// The whole assessment as plain text in the units of a shop (`AXW_METRIC`, `AXW_US`), the worst first, with or without the work of each
/// finding.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_text(
    assessment: *const axw_assessment,
    system: i32,
    with_work: bool,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let text = unsafe { handle("assessment", assessment) }?.0.to_text(shop(system)?, with_work);
        unsafe { write(&printable(text), buffer, size, needed) }
    })
}

/// The whole assessment as JSON text; numbers in coherent SI, null if not known.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_json(
    assessment: *const axw_assessment,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| unsafe { write(&handle("assessment", assessment)?.0.to_json(), buffer, size, needed) })
}

/// Two sheets side by side: every finding whose value, margin or verdict differs, in the units of a shop (`AXW_METRIC`, `AXW_US`).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_compare(
    assessment: *const axw_assessment,
    other: *const axw_assessment,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let one = unsafe { handle("assessment", assessment) }?;
        let two = unsafe { handle("other", other) }?;
        let text = one.0.compare(&two.0, shop(system)?);
        unsafe { write(&printable(text), buffer, size, needed) }
    })
}

/// Influence of each tolerance on a finding, the largest first. Columns: `line`, its `tolerance` in the SI `unit` of the row,
/// the `change` of the margin for one tolerance up, and the `share` of the variance of the margin.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_sensitivity(
    assessment: *const axw_assessment,
    finding: usize,
    table: *mut *mut axw_table,
) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let assessment = handle("assessment", assessment)?;
            Ok(axw_table::new(assessment.0.sensitivity_table(assessment.answer(finding)?)))
        })
    })
}

/// Chance that each verdict turns within the tolerances, a finding a row, from this many samples; equal `seed`s give equal
/// samples on every machine. Columns: `finding`, `verdict`, `turns`, then the share of samples that `meets`, is `tight`, `short`,
/// `not_known`, `does_not_apply`, then `mean` and `deviation` of the margin in the SI `unit` of the row.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_chances(
    assessment: *const axw_assessment,
    samples: usize,
    seed: u64,
    table: *mut *mut axw_table,
) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let assessment = handle("assessment", assessment)?;
            Ok(axw_table::new(assessment.0.chances_table(samples, seed)?))
        })
    })
}

/// Frees an assessment; NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_free(assessment: *mut axw_assessment) {
    guard_or((), || unsafe { free(assessment) });
}

/// Text without NUL bytes, so that no name on a sheet ends it early.
fn printable(text: String) -> String {
    if text.contains('\0') { text.replace('\0', " ") } else { text }
}

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
        let text: String =
            ready.not_known().iter().map(|(output, why)| format!("{output}: {why}\n")).collect();
        unsafe { write(&text, buffer, size, needed) }
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
        let text: String = ready.dropped().iter().map(|path| format!("{path}\n")).collect();
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// `count` rows from the row `first` on as a table: a column for each line that changes, one for each output. If a call in a row was
/// refused, the outputs that follow from it are NaN, and `axw_table_reason` gives the reason.
///
/// A table takes at most 4 GiB. A larger request is refused with `AXW_NO_SOLUTION` before anything is allocated: ask piece by piece, by `first` and `count`.
/// It runs on this many threads, 0 meaning one for each processor; the numbers do not depend on it. `progress` may be NULL.
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

/// Parts for sale.
pub struct axw_price_list(PriceList);

/// Reads a price list from JSON or TOML text: a list `parts` of tables with `part`, `kind`, `cost`, `mass` and lines of the sheet. `list`
/// receives a handle that `axw_price_list_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_price_list_new(text: *const c_char, list: *mut *mut axw_price_list) -> i32 {
    guard(|| unsafe {
        give("list", list, || Ok(Box::new(axw_price_list(PriceList::from_text(words("text", text)?)?))))
    })
}

/// Reads a price list from a table with commas: a first row with `part`, `kind`, `cost`, `mass` and paths of the sheet, then a part a row.
/// `list` receives a handle that `axw_price_list_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_price_list_csv(text: *const c_char, list: *mut *mut axw_price_list) -> i32 {
    guard(|| unsafe {
        give("list", list, || Ok(Box::new(axw_price_list(PriceList::from_csv(words("text", text)?)?))))
    })
}

/// Number of parts; 0 if `list` is NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_price_list_parts(list: *const axw_price_list) -> usize {
    guard_or(0, || unsafe { list.as_ref() }.map_or(0, |list| list.0.parts.len()))
}

/// Frees a price list; NULL is allowed. Choices made from it live on.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_price_list_free(list: *mut axw_price_list) {
    guard_or((), || unsafe { free(list) });
}

/// Parts of a price list that meet the requirements on a sheet.
pub struct axw_chosen {
    chosen: Chosen,
    list: PriceList,
}

impl axw_chosen {
    fn table(&self, choices: &[Choice]) -> Box<axw_table> {
        axw_table::new(self.chosen.table(choices, &self.list))
    }
}

/// Chooses one part of each kind of a price list so that every requirement is met on the sheet. Requirements are text:
/// "1.2 Hz <= front.natural_frequency <= 1.4 Hz", "cost <= 7000", "mass <= 60 kg", "margins >= 1.3", "front.coil_bind.verdict = meets".
/// At most `limit` combinations are listed; the cheapest and the lightest are right however many there are.
///
/// `progress` may be NULL. `chosen` receives a handle that `axw_chosen_free` frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_choose(
    sheet: *const axw_sheet,
    list: *const axw_price_list,
    requirements: *const *const c_char,
    count: usize,
    limit: usize,
    progress: axw_progress,
    context: *mut c_void,
    chosen: *mut *mut axw_chosen,
) -> i32 {
    guard(|| unsafe {
        give("chosen", chosen, || {
            let sheet = &handle("sheet", sheet)?.0;
            let list = &handle("list", list)?.0;
            let requirements = texts("requirements", requirements, count)?
                .into_iter()
                .map(Requirement::parse)
                .collect::<Result<Vec<Requirement>, Error>>()?;
            let mut goes_on = goes_on(progress, context);
            let mut stopped = false;
            let found = choose(sheet, list, &requirements, limit, &mut |done| {
                stopped |= !goes_on(done);
                !stopped
            });
            if stopped {
                return Err(Failure::Stopped);
            }
            Ok(Box::new(axw_chosen { chosen: found?, list: list.clone() }))
        })
    })
}

/// Combinations to which no other is both cheaper and lighter, as a table. The first row is the cheapest, the last the lightest; there
/// is no row if nothing meets the requirements. Columns: `cost`, `mass`, then the part of each kind, by the name of the kind.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_front(chosen: *const axw_chosen, table: *mut *mut axw_table) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let chosen = handle("chosen", chosen)?;
            Ok(chosen.table(&chosen.chosen.front))
        })
    })
}

/// Combinations that meet every requirement, up to the limit of the choice, as a table like that of `axw_chosen_front`; `more` receives
/// whether there are others.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_feasible(
    chosen: *const axw_chosen,
    table: *mut *mut axw_table,
    more: *mut bool,
) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let chosen = handle("chosen", chosen)?;
            put(more, chosen.chosen.more);
            Ok(chosen.table(&chosen.chosen.feasible))
        })
    })
}

/// Parts in no combination, as a table: `part`, `kind`, `why`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_rejected(chosen: *const axw_chosen, table: *mut *mut axw_table) -> i32 {
    guard(|| unsafe {
        give("table", table, || {
            let chosen = handle("chosen", chosen)?;
            Ok(axw_table::new(chosen.chosen.rejected_table(&chosen.list)))
        })
    })
}

/// Writes the parts of a choice on a sheet, and leaves out what was measured on the parts that they replace: `row` is its row in the table
/// of `axw_chosen_front`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_fit(chosen: *const axw_chosen, row: usize, sheet: *mut axw_sheet) -> i32 {
    guard(|| {
        let axw_chosen { chosen, list } = unsafe { handle("chosen", chosen) }?;
        let sheet = unsafe { handle_mut("sheet", sheet) }?;
        let front = chosen.front.len();
        let choice = chosen.front.get(row);
        let choice = choice
            .ok_or_else(|| Failure::NotThere(format!("row = {row} is not there: the front has {front}")))?;
        Ok(chosen.fit(choice, list, &mut sheet.0)?)
    })
}

/// Requirements that bind nothing because their subject is not known, one a line with the missing inputs; empty without any.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_not_known(
    chosen: *const axw_chosen,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let lines = &unsafe { handle("chosen", chosen) }?.chosen.not_known;
        let text: String = lines.iter().map(|line| format!("{line}\n")).collect();
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Written readings that count for no combination, one a line: each was taken on a part that is chosen anew.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_dropped(
    chosen: *const axw_chosen,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let lines = &unsafe { handle("chosen", chosen) }?.chosen.dropped;
        let text: String = lines.iter().map(|path| format!("{path}\n")).collect();
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// The whole choice as JSON text; masses in kilograms.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_json(
    chosen: *const axw_chosen,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let chosen = unsafe { handle("chosen", chosen) }?;
        unsafe { write(&chosen.chosen.to_json(&chosen.list), buffer, size, needed) }
    })
}

/// Frees a choice; NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_free(chosen: *mut axw_chosen) {
    guard_or((), || unsafe { free(chosen) });
}
