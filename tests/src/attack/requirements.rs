//! Requirements on a choice: made of the outputs of the sheet, then damaged.

use super::documents::damaged;
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::sheets::{kind, with_unit};
use axlewright::sheet::{Requirement, findings, lines};
use axlewright::units::{Kind, Quantity, Ratio};

/// Paths of all outputs, each with its kind if a text of it can be made.
pub fn outputs() -> Vec<(String, &'static Kind)> {
    let lines = lines().filter_map(|(_, path, line)| Some((path.replace("[]", "[0]"), kind(line)?)));
    let findings = findings().flat_map(|(_, path, _)| {
        ["margin", "value", "verdict", "no_such"].map(|last| (format!("{path}.{last}"), Ratio::KIND))
    });
    lines.chain(findings).collect()
}

/// A requirement as somebody might write it.
pub fn composed(outputs: &[(String, &'static Kind)], random: &mut Random) -> String {
    let (path, kind) = random.of_these(outputs);
    let value = |random: &mut Random| {
        let si = if random.once_in(6) { random.any_number() } else { random.of_magnitude(4.0) };
        with_unit(si, random.of_these(kind.units), random)
    };
    let finding = path.rsplit_once('.').map_or(path.as_str(), |(folder, _)| folder);
    let mut text = match random.below(10) {
        0 => format!("cost <= {}", random.of_magnitude(5.0)),
        1 => format!("mass <= {} kg", random.of_magnitude(4.0)),
        2 => format!("margins >= {}", random.of_magnitude(1.0)),
        3 => "no finding worse".to_owned(),
        4 => {
            format!("{finding}.verdict = {}", random.of_these(&["meets", "tight", "short", "", "not known"]))
        }
        5 => format!("{} <= {path} <= {}", value(random), value(random)),
        6 => format!("{path} {} {}", random.of_these(&["<", "=", ">=", "<=", "=>", "≤"]), value(random)),
        _ => format!("{path} {} {}", random.of_these(&["<=", ">="]), value(random)),
    };
    (0..*random.of_these(&[0, 0, 0, 1, 2])).for_each(|_| text = damaged(&text, random));
    text
}

pub fn attack(of: &Attack, requirements: u64) -> Tally {
    let outputs = outputs();
    of.run("requirements", requirements, |_, random| parsed(&composed(&outputs, random)))
}

/// A requirement that is read keeps its text, and its text reads as the same.
fn parsed(text: &str) -> Case {
    let mut calls = Calls::default();
    let Some(read) = calls.count(Requirement::parse(text))? else { return Ok(calls) };
    let again = Requirement::parse(read.text());
    if again.as_ref() == Ok(&read) {
        Ok(calls)
    } else {
        Err(format!("{text:?} reads as {read:?}, then {again:?}"))
    }
}
