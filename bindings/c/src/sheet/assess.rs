//! Findings of a sheet.

use super::document::axw_sheet;
use crate::caller::{free, give, handle, put, words, write, write_lines};
use crate::entries::verdict_number;
use crate::guard::{guard, guard_or};
use crate::status::{Failure, Outcome};
use crate::table::axw_table;
use crate::text::{report_units, shop};
use axlewright::Verdict;
use axlewright::base::text::shortened;
use axlewright::sheet::{Answer, Assessment, Report};
use std::ffi::{CString, c_char};
use std::sync::OnceLock;

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

/// Texts of a finding.
unsafe fn said(assessment: *const axw_assessment, finding: usize) -> Outcome<&'static Said> {
    let assessment = unsafe { handle("assessment", assessment) }?;
    assessment.answer(finding)?;
    Ok(&texts(&assessment.0)[finding])
}

/// Texts of the findings, in their order, equal for every sheet; they live as long as the program.
fn texts(assessment: &Assessment) -> &'static [Said] {
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
            let path = shortened(path);
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
        let said = unsafe { said(assessment, finding) }?;
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
        let said = unsafe { said(assessment, finding) }?;
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

/// Margin of a finding with every tolerance counted against it, in coherent SI: each as far as its bound reaches, or two standard
/// deviations. The verdict stands on it. NaN if the margin is not known, or if something cannot be computed within a tolerance.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_worst(
    assessment: *const axw_assessment,
    finding: usize,
    worst: *mut f64,
) -> i32 {
    guard(|| {
        let answer = unsafe { handle("assessment", assessment) }?.answer(finding)?;
        unsafe { put(worst, answer.worst) };
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
        unsafe { write_lines(paths, buffer, size, needed) }
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

/// The report at 80 columns, in the units of a shop (`AXW_METRIC`, `AXW_US`), with or without the work of each finding.
/// `axw_assessment_report` has more forms.
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

/// The report of the assessment as plain text: a summary, then the findings, those of safety first. `about` names one finding, or the
/// beginning or end of names between their points ("front.bump", "front", "coil_bind"), and gives those alone, with all that is known of them; NULL gives the whole. `system` is `AXW_METRIC`, `AXW_US`
/// or `AXW_AS_WRITTEN`. No line is wider than `width` columns; below 20 it counts as 20. With `all`, every computed value is listed; with `with_work`,
/// the work of each finding.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_report(
    assessment: *const axw_assessment,
    about: *const c_char,
    system: i32,
    width: usize,
    all: bool,
    with_work: bool,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let assessment = unsafe { handle("assessment", assessment) }?;
        let form = Report { system: report_units(system)?, width, all, work: with_work, colour: false };
        let text = if about.is_null() {
            assessment.0.report(&form)
        } else {
            let about = unsafe { words("about", about) }?;
            assessment.0.report_on(about, &form).map_err(|error| Failure::NotThere(error.to_string()))?
        };
        unsafe { write(&printable(text), buffer, size, needed) }
    })
}

/// The findings as a table in Markdown, numbers as a person reads them. `system` is `AXW_METRIC`, `AXW_US` or `AXW_AS_WRITTEN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_markdown(
    assessment: *const axw_assessment,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let form = Report { system: report_units(system)?, ..Report::default() };
        let text = unsafe { handle("assessment", assessment) }?.0.to_markdown(&form);
        unsafe { write(&printable(text), buffer, size, needed) }
    })
}

/// The findings as a table with commas, numbers as a person reads them. `system` is `AXW_METRIC`, `AXW_US` or `AXW_AS_WRITTEN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_assessment_csv(
    assessment: *const axw_assessment,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let form = Report { system: report_units(system)?, ..Report::default() };
        let text = unsafe { handle("assessment", assessment) }?.0.to_csv(&form);
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

/// Influence of each tolerance on the margin of a finding, the largest first. Columns: the `finding`, the `line`, its `tolerance` in the SI
/// `unit` of the row, the `margin_change` of the finding for one tolerance up, and the `share` of the variance of that margin.
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
/// samples on every machine. More than 10,000,000 are refused with `AXW_LENGTH`: take the mean of calls with other seeds. Columns: `finding`, `verdict`, `turns`, then the share of samples that `meets`, is `tight`, `short`,
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
