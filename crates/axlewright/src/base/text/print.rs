//! Quantities as people read them: in the units of a shop, rounded to what a shop measures.

use crate::units::{Kind, Quantity, Unit};
use core::ops::RangeInclusive;
use std::borrow::Cow;

/// Unit systems of a shop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum System {
    /// Millimetres, newtons, kilopascals.
    Metric,
    /// Inches, pounds-force, pounds per square inch.
    Us,
}

/// Words for a value without limit, such as a wanted margin that no margin reaches yet.
const NO_LIMIT: &str = "no limit";

/// The quantity in the shop's unit, to four significant digits: `225 lbf/in`. Digits are not grouped.
pub fn print(si: f64, kind: &'static Kind, system: System) -> String {
    if si == f64::INFINITY {
        return NO_LIMIT.to_owned();
    }
    let (value, symbol) = in_shop(si, kind, system);
    join(rounded(value, 4) + 0.0, symbol) // adding zero drops the sign of a negative zero
}

/// The quantity in the shop's unit, with this many digits after the point: `225.0 lbf/in`.
pub fn print_fixed(si: f64, kind: &'static Kind, system: System, digits: usize) -> String {
    let (value, symbol) = in_shop(si, kind, system);
    let number = format!("{value:.digits$}");
    let zero = number.starts_with('-') && !number.contains(|c: char| c.is_ascii_digit() && c != '0');
    let number = if zero { number.trim_start_matches('-') } else { &number };
    if symbol.is_empty() { number.to_owned() } else { format!("{number} {symbol}") }
}

/// The value in the shop's unit, and the unit's symbol.
fn in_shop(si: f64, kind: &'static Kind, system: System) -> (f64, &'static str) {
    let name = match system {
        System::Metric => kind.metric,
        System::Us => kind.us,
    };
    match kind.unit(name) {
        Some(unit) => (unit.from_si(si), unit.symbol),
        None => (si, kind.si),
    }
}

/// The quantity in a unit, to four significant digits.
#[cfg(feature = "serde")]
pub(crate) fn print_as(si: f64, unit: &Unit) -> String {
    join(rounded(unit.from_si(si), 4) + 0.0, unit.symbol)
}

/// The quantity in the coherent SI unit, to six significant digits.
pub fn print_si(si: f64, kind: &'static Kind) -> String {
    print_si_to(si, kind, 6)
}

/// The quantity in the coherent SI unit, to this many significant digits.
pub(crate) fn print_si_to(si: f64, kind: &'static Kind, digits: usize) -> String {
    join(rounded(si, digits) + 0.0, kind.units.first().map_or(kind.si, |coherent| coherent.symbol))
}

/// The quantity in a unit, by the shortest number that reads back to the same bits. If no number in that unit does, it is in the coherent SI
/// unit (measured: one random value in twelve, but none that was written in that unit). A value that is
/// not finite is printed as `NaN` or `inf`, which nobody reads back.
pub fn print_in(si: f64, kind: &'static Kind, unit: &'static Unit) -> String {
    let near = unit.from_si(si);
    let neighbours = [near.next_up(), near.next_down()]; // the way here was rounded too
    let same = |number: &f64| unit.to_si(*number).to_bits() == si.to_bits();
    match (1..=17).map(|digits| rounded(near, digits)).chain(neighbours).find(same) {
        Some(number) => join(number, unit.symbol),
        None => join(si, kind.units.first().map_or(kind.si, |coherent| coherent.symbol)),
    }
}

/// Prints a quantity in the first unit of its kind, as [`print_in`] does.
pub fn print_in_first(si: f64, kind: &'static Kind) -> String {
    kind.units.first().map_or_else(|| join(si, kind.si), |unit| print_in(si, kind, unit))
}

/// A quantity for a message, in the units of a metric and of a US shop: `300 mm (11.81 in)`.
pub(crate) fn said<Q: Quantity>(quantity: Q) -> String {
    said_in([quantity.si()], &shop_units(Q::KIND), DIGITS)
}

/// Significant digits of a number in a message.
pub(crate) const DIGITS: usize = 4;

/// Units of a metric and of a US shop; one if they use the same.
pub(crate) fn shop_units(kind: &'static Kind) -> Vec<&'static Unit> {
    let mut units: Vec<&Unit> =
        [kind.metric, kind.us].into_iter().filter_map(|name| kind.unit(name)).collect();
    units.dedup_by_key(|unit| unit.name);
    units
}

/// One value, or the ends of a range, for a message: in the first unit and, in brackets, in the others.
pub(crate) fn said_in<Ends>(ends: Ends, units: &[&'static Unit], digits: usize) -> String
where
    Ends: IntoIterator<Item = f64> + Clone,
{
    let range = |unit: &&Unit| {
        let each: Vec<String> = ends.clone().into_iter().map(|si| without_noise(si, unit, digits)).collect();
        each.join(" to ")
    };
    let mut said = units.iter().map(range);
    let first = said.next().unwrap_or_default();
    said.fold(first, |first, other| format!("{first} ({other})"))
}

/// Significant digits, at least [`DIGITS`], that tell a value from the bounds that it misses, in each of these units.
pub(crate) fn digits_apart(value: f64, bounds: &[f64], units: &[&'static Unit]) -> usize {
    let differ = |bound: f64, unit: &Unit, digits| {
        bound == value || without_noise(bound, unit, digits) != without_noise(value, unit, digits)
    };
    let apart =
        |digits: &usize| units.iter().all(|unit| bounds.iter().all(|bound| differ(*bound, unit, *digits)));
    (DIGITS..=15).find(apart).unwrap_or(DIGITS)
}

/// The quantity in a unit, to this many significant digits; zero if only the rounding of a computer is left.
fn without_noise(si: f64, unit: &Unit, digits: usize) -> String {
    let number = rounded(unit.from_si(si), digits) + 0.0;
    join(if number.abs() < NOISE { 0.0 } else { number }, unit.symbol)
}

/// A number below this is the rounding of a computer: no quantity of a shop is so small in its shop unit.
const NOISE: f64 = 1e-9;

/// One value, or the ends of a range, in the units of a shop and in brackets; empty if these are the SI unit itself.
pub(crate) fn in_shop_units<Ends>(ends: Ends, kind: &'static Kind) -> String
where
    Ends: IntoIterator<Item = f64> + Clone,
{
    let mut systems = vec![(kind.metric, System::Metric), (kind.us, System::Us)];
    systems.dedup_by_key(|(unit, _)| *unit);
    systems.retain(|(unit, _)| kind.units.first().is_none_or(|coherent| *unit != coherent.name));
    let said = |(_, system): (&str, System)| {
        let each: Vec<String> = ends.clone().into_iter().map(|si| print(si, kind, system)).collect();
        each.join(" to ")
    };
    let said: Vec<String> = systems.into_iter().map(said).collect();
    if said.is_empty() { String::new() } else { format!(" ({})", said.join(", ")) }
}

/// The number with this many significant digits.
fn rounded(value: f64, digits: usize) -> f64 {
    format!("{value:.*e}", digits.saturating_sub(1)).parse().unwrap_or(value)
}

/// Number and symbol; an exponent outside 0.0001 to 10 000 000 only.
fn join(number: f64, symbol: &str) -> String {
    let ordinary = number == 0.0 || (1e-4..1e7).contains(&number.abs());
    let digits = if ordinary { format!("{number}") } else { format!("{number:e}") };
    if symbol.is_empty() { digits } else { format!("{digits} {symbol}") }
}

/// Characters in the longest text that is quoted.
pub const QUOTED: usize = 60;

/// Text that somebody else wrote, for a message: printable, and at most [`QUOTED`] characters. The work does not grow with the text.
pub fn shortened(text: &str) -> String {
    let mut out = String::new();
    let (mut length, mut fits) = (0, 0);
    for c in text.chars() {
        length += push_printable(&mut out, c);
        if length < QUOTED {
            fits = out.len();
        } else if length > QUOTED {
            out.truncate(fits);
            out.push('…');
            break;
        }
    }
    out
}

/// Text that somebody else wrote, for a terminal: what would move its cursor, clear it or turn its text around is shown as an escape, `\x1b` or
/// `\u{202e}`, also the end of a line.
pub fn printable(text: &str) -> Cow<'_, str> {
    if !text.contains(is_hidden) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len() + 8);
    text.chars().for_each(|c| {
        push_printable(&mut out, c);
    });
    Cow::Owned(out)
}

/// Adds a character, or its escape; returns the number of characters.
fn push_printable(out: &mut String, c: char) -> usize {
    let escape = match c {
        c if !is_hidden(c) => {
            out.push(c);
            return 1;
        }
        '\n' => "\\n".to_owned(),
        '\r' => "\\r".to_owned(),
        '\t' => "\\t".to_owned(),
        c if u32::from(c) < 0x100 => format!("\\x{:02x}", u32::from(c)),
        c => format!("\\u{{{:x}}}", u32::from(c)),
    };
    out.push_str(&escape);
    escape.len()
}

/// True for a character that is no mark on paper: a control, a separator of lines, a direction of writing, a tag.
pub(crate) fn is_hidden(c: char) -> bool {
    const FORMATS: [RangeInclusive<char>; 7] = [
        '\u{200e}'..='\u{200f}',
        '\u{2028}'..='\u{202e}',
        '\u{2060}'..='\u{206f}',
        '\u{fdd0}'..='\u{fdef}',
        '\u{fff0}'..='\u{fffb}',
        '\u{feff}'..='\u{feff}',
        '\u{e0000}'..='\u{e0fff}',
    ];
    c.is_control() || FORMATS.iter().any(|range| range.contains(&c))
}
