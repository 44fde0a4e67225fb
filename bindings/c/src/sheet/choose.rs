//! Price lists, and the parts that meet requirements.

use super::document::axw_sheet;
use super::progress::{axw_progress, goes_on};
use crate::caller::{free, give, handle, handle_mut, put, texts, words, write, write_lines};
use crate::guard::{guard, guard_or};
use crate::status::Failure;
use crate::table::axw_table;
use axlewright::base::error::Error;
use axlewright::sheet::{Choice, Chosen, PriceList, Requirement, Worse, choose};
use std::ffi::{c_char, c_void};

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
/// "1.2 Hz <= front.natural_frequency <= 1.4 Hz", "cost <= 7000", "mass <= 60 kg", "margins >= 1.3", "front.coil_bind.verdict = meets", "no finding worse": no verdict is worse than on the sheet as it is, and "no finding short": none is short that is not short there.
/// At most `limit` combinations are listed; the cheapest and the lightest are right however many there are. If more than 1,000,000 would be
/// listed, the choice is refused with `AXW_NO_SOLUTION`.
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

/// A choice of the front.
fn on_front(chosen: &Chosen, row: usize) -> Result<&Choice, Failure> {
    let front = chosen.front.len();
    let missing = || Failure::NotThere(format!("row = {row} is not there: the front has {front}"));
    chosen.front.get(row).ok_or_else(missing)
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
        let choice = on_front(chosen, row)?;
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
        unsafe { write_lines(lines, buffer, size, needed) }
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
        unsafe { write_lines(lines, buffer, size, needed) }
    })
}

/// Findings that are worse with a choice than on the sheet as it is, one a line with both verdicts; empty without any. `row` is the row of the
/// choice in the table of `axw_chosen_front`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_chosen_worse(
    chosen: *const axw_chosen,
    row: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let chosen = &unsafe { handle("chosen", chosen) }?.chosen;
        let choice = on_front(chosen, row)?;
        let lines: Vec<String> = choice.worse.iter().map(Worse::text).collect();
        unsafe { write_lines(&lines, buffer, size, needed) }
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
