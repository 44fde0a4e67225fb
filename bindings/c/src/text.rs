//! Quantities as text on the C surface.

use crate::{Failure, Outcome, copy, fits, guard, put, words};
use axlewright::base::text;
use axlewright::units::Kind;
use std::ffi::c_char;

/// Units of a metric shop.
pub const AXW_METRIC: i32 = 0;
/// Units of a US shop.
pub const AXW_US: i32 = 1;

unsafe fn kind(quantity: *const c_char) -> Outcome<&'static Kind> {
    let name = unsafe { words("quantity", quantity) }?;
    Kind::named(name).ok_or_else(|| {
        Failure::NotThere(format!(
            "there is no quantity {name:?}; the names are those of the catalogue, such as \"LinearStiffness\""
        ))
    })
}

/// A conversion that stays a finite number.
fn finite(name: &str, from: f64, to: f64) -> Outcome<f64> {
    if to.is_finite() {
        Ok(to)
    } else {
        Err(Failure::NotThere(format!("{name} = {from} is no finite number in the other unit")))
    }
}

/// Reads text such as "225 lbf/in" as the named quantity ("LinearStiffness"), into coherent SI.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_text_read(text: *const c_char, quantity: *const c_char, si: *mut f64) -> i32 {
    guard(|| {
        let value = text::value_as(unsafe { words("text", text) }?, unsafe { kind(quantity) }?)?;
        unsafe { put(si, value) };
        Ok(())
    })
}

/// Prints a value in coherent SI in the unit that a shop prints (`AXW_METRIC`, `AXW_US`), with four figures. `needed` receives the bytes
/// that the text needs, its closing NUL included; `buffer` may be NULL.
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
        let system = match system {
            AXW_METRIC => text::System::Metric,
            AXW_US => text::System::Us,
            other => {
                return Err(Failure::NotThere(format!("system = {other} is neither AXW_METRIC nor AXW_US")));
            }
        };
        let text = text::print(si, kind, system);
        fits("buffer", &text, buffer, size)?;
        unsafe {
            copy(&text, buffer, size);
            put(needed, text.len() + 1);
        }
        Ok(())
    })
}

/// Converts a value in the unit that the text names ("lbf/in") of the named quantity ("LinearStiffness") into coherent SI.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_unit_to_si(
    value: f64,
    unit: *const c_char,
    quantity: *const c_char,
    si: *mut f64,
) -> i32 {
    guard(|| {
        let (_, unit) = text::unit(unsafe { words("unit", unit) }?, Some(unsafe { kind(quantity) }?))?;
        unsafe { put(si, finite("value", value, unit.to_si(value))?) };
        Ok(())
    })
}

/// Converts a value in coherent SI into the unit that the text names ("lbf/in") of the named quantity ("LinearStiffness").
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_unit_from_si(
    si: f64,
    unit: *const c_char,
    quantity: *const c_char,
    value: *mut f64,
) -> i32 {
    guard(|| {
        let (_, unit) = text::unit(unsafe { words("unit", unit) }?, Some(unsafe { kind(quantity) }?))?;
        unsafe { put(value, finite("si", si, unit.from_si(si))?) };
        Ok(())
    })
}
