//! Texts of quantities and units: made of numbers, spellings and tolerances of the list of kinds, then damaged.

use super::documents::damaged;
use super::numbers::same;
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::sheets::with_unit;
use axlewright::base::text::{self, System};
use axlewright::units::KINDS;

/// Beginnings of numbers, as people and programs write them.
const NUMBERS: [&str; 16] = [
    "5",
    "-0",
    "1/3",
    "5 1/2",
    "6' 2\"",
    "6 ft 2 in",
    "1,234.5",
    "1.234,5",
    "1e999",
    "1e-999",
    "0x1p3",
    "٣",
    "１２",
    "1:1",
    "nan",
    "12 +/- 3",
];

pub fn attack(of: &Attack, texts: u64) -> Tally {
    of.run("texts", texts, |_, random| {
        let text = composed(random);
        read(&text, random).map_err(|why| format!("{text:?}: {why}"))
    })
}

fn composed(random: &mut Random) -> String {
    let kind = random.of_these(KINDS);
    let unit = random.of_these(kind.units);
    let mut text = match random.below(3) {
        0 => format!("{} {}", random.of_these(&NUMBERS), unit.symbol),
        1 => with_unit(random.any_number(), unit, random),
        _ => with_unit(random.of_magnitude(6.0), unit, random),
    };
    if random.once_in(4) {
        let sd = if random.once_in(2) { " sd" } else { "" };
        let unit = *random.of_these(&[unit.symbol, "%", ""]);
        text = format!("{text} +/- {} {unit}{sd}", random.of_magnitude(4.0));
    }
    (0..*random.of_these(&[0, 0, 1, 3])).for_each(|_| text = damaged(&text, random));
    text
}

/// What is read is finite, and prints as a text that reads as the same.
fn read(text: &str, random: &mut Random) -> Case {
    let mut calls = Calls::default();
    let kind = random.of_these(KINDS);
    calls.count(text::unit(text, random.once_in(2).then_some(*kind)))?;
    calls.count(text::read_as(text, kind))?;
    let Some(reading) = calls.count(text::read(text))? else { return Ok(calls) };
    let spread = reading.tolerance.map_or(0.0, |tolerance| tolerance.si);
    if !reading.si.is_finite() || !spread.is_finite() || spread < 0.0 {
        return Err(format!("reads as {reading:?}"));
    }
    let alone = calls.count(text::value_as(text, reading.kind))?;
    if alone.is_some_and(|si| !same(si, reading.si)) {
        return Err(format!(
            "reads as {} alone, {} with its tolerance",
            alone.unwrap_or_default(),
            reading.si
        ));
    }
    text::print_fixed(reading.si, reading.kind, System::Us, random.below(20));
    let printed = text::print_in(reading.si, reading.kind, reading.unit);
    let back =
        text::value_as(&printed, reading.kind).map_err(|error| format!("printed {printed:?}: {error}"))?;
    if !same(back, reading.si) {
        return Err(format!("{} prints as {printed:?} and reads as {back}", reading.si));
    }
    Ok(calls)
}
