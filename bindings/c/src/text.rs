//! Quantities as text on the C surface.

use crate::caller::{put, words, write};
use crate::guard::guard;
use crate::status::{Failure, Outcome};
use axlewright::base::text;
use axlewright::units::{KINDS, Kind, Unit};
use std::ffi::c_char;

/// Units of a metric shop.
pub const AXW_METRIC: i32 = 0;
/// Units of a US shop.
pub const AXW_US: i32 = 1;
/// Units in which the sheet writes such lines; for a report.
pub const AXW_AS_WRITTEN: i32 = 2;

/// The quantity of this name or of these words, in any case.
unsafe fn kind(quantity: *const c_char) -> Outcome<&'static Kind> {
    let name = unsafe { words("quantity", quantity) }?.trim();
    let is_named =
        |kind: &&Kind| [kind.name, kind.words].iter().any(|known| known.eq_ignore_ascii_case(name));
    KINDS.iter().copied().find(is_named).ok_or_else(|| Failure::NotThere(unknown(name)))
}

/// The names that contain the text, or all names if none does.
fn unknown(name: &str) -> String {
    let name = text::shortened(name);
    let asked = name.to_lowercase();
    let near = |kind: &&&Kind| kind.name.to_lowercase().contains(&asked) || kind.words.contains(&asked);
    let mut names: Vec<&str> = KINDS.iter().filter(near).map(|kind| kind.name).collect();
    if names.is_empty() {
        names = KINDS.iter().map(|kind| kind.name).collect();
    }
    format!("there is no quantity {name:?}; there are {}", names.join(", "))
}

/// The units of a shop by their number.
pub(crate) fn shop(system: i32) -> Outcome<text::System> {
    match system {
        AXW_METRIC => Ok(text::System::Metric),
        AXW_US => Ok(text::System::Us),
        other => Err(Failure::NotThere(format!("system = {other} is neither AXW_METRIC nor AXW_US"))),
    }
}

/// The units of a report by their number; none if they are those of the sheet.
pub(crate) fn report_units(system: i32) -> Outcome<Option<text::System>> {
    match system {
        AXW_AS_WRITTEN => Ok(None),
        AXW_METRIC | AXW_US => shop(system).map(Some),
        other => {
            Err(Failure::NotThere(format!("system = {other} is not AXW_METRIC, AXW_US or AXW_AS_WRITTEN")))
        }
    }
}

/// A conversion that stays a finite number.
fn finite(name: &str, from: f64, unit: &Unit, to: f64) -> Outcome<f64> {
    if to.is_finite() {
        return Ok(to);
    }
    Err(Failure::OutOfRange(format!(
        "{name} = {from:?} is outside its range: it is no finite number of {}",
        unit.symbol
    )))
}

/// Reads text such as "225 lbf/in" as the named quantity, into coherent SI.
///
/// A quantity has its name or its words, in any case: "LinearStiffness" or "linear stiffness". These are
/// all of them, each with its units; the first is coherent SI.
/// @QUANTITIES@
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_text_read(text: *const c_char, quantity: *const c_char, si: *mut f64) -> i32 {
    guard(|| {
        let value = text::value_as(unsafe { words("text", text) }?, unsafe { kind(quantity) }?)?;
        unsafe { put(si, value) };
        Ok(())
    })
}

/// Prints a value in coherent SI in the unit that a shop prints (`AXW_METRIC`, `AXW_US`), with four figures. `INFINITY` is printed as "no limit":
/// it is a wanted margin that no margin reaches yet. Any other value that is no finite number of that unit is refused. `needed` receives the bytes that the text needs, its closing NUL included; `buffer` may be NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_text_print(
    si: f64,
    quantity: *const c_char,
    system: i32,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let kind = unsafe { kind(quantity) }?;
        let system = shop(system)?;
        let unit = match system {
            text::System::Metric => kind.metric,
            text::System::Us => kind.us,
        };
        let unit = kind.unit(unit).unwrap_or(&kind.units[0]);
        if si != f64::INFINITY {
            finite("si", si, unit, unit.from_si(si))?;
        }
        let text = text::print(si, kind, system);
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Converts a value in the unit that the text names ("lbf/in") of the named quantity into coherent SI.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_unit_to_si(
    value: f64,
    unit: *const c_char,
    quantity: *const c_char,
    si: *mut f64,
) -> i32 {
    guard(|| {
        let (_, unit) = text::unit(unsafe { words("unit", unit) }?, Some(unsafe { kind(quantity) }?))?;
        unsafe { put(si, finite("value", value, unit, unit.to_si(value))?) };
        Ok(())
    })
}

/// Converts a value in coherent SI into the unit that the text names ("lbf/in") of the named quantity.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_unit_from_si(
    si: f64,
    unit: *const c_char,
    quantity: *const c_char,
    value: *mut f64,
) -> i32 {
    guard(|| {
        let (_, unit) = text::unit(unsafe { words("unit", unit) }?, Some(unsafe { kind(quantity) }?))?;
        unsafe { put(value, finite("si", si, unit, unit.from_si(si))?) };
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashMap;
    use std::ffi::CString;

    #[test]
    fn a_name_and_words_belong_to_one_quantity() {
        let mut owner = HashMap::new();
        for kind in KINDS {
            for name in [kind.name, kind.words].map(str::to_lowercase) {
                assert_eq!(*owner.entry(name).or_insert(kind.name), kind.name);
            }
            for name in [kind.name.to_owned(), kind.words.to_uppercase(), format!(" {} ", kind.words)] {
                let name = CString::new(name).unwrap();
                assert!(unsafe { super::kind(name.as_ptr()) }.is_ok_and(|found| found == *kind), "{name:?}");
            }
        }
        assert!(owner.len() > KINDS.len());
    }

    #[test]
    fn the_refusal_of_a_name_tells_those_that_hold_it_or_all() {
        let near = "there is no quantity \"stiffness\"; there are LinearStiffness, RotationalStiffness";
        assert_eq!(unknown("stiffness"), near);
        for kind in KINDS {
            assert!(unknown("Rate").contains(kind.name), "{}", kind.name);
        }
    }
}
