//! Whole sheets: the examples with other lines, random parts of the list of lines, documents gone wrong.

use super::documents::{damaged, numbers};
use super::numbers::{is_allowed, is_extreme, same};
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::sheets::{kind, text, writable};
use axlewright::Verdict;
use axlewright::base::section::Line;
use axlewright::base::text::System;
use axlewright::sheet::{Answer, Assessment, Axis, Sheet};
use std::path::Path;

/// The texts of the examples that end in this.
pub fn examples(ending: &str) -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/sheets");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    let files = files.iter().filter(|file| file.extension().is_some_and(|of| of == ending));
    files.map(|file| std::fs::read_to_string(file).unwrap()).collect()
}

pub fn attack(of: &Attack, sheets: u64) -> Tally {
    let texts: Vec<String> =
        examples("toml").into_iter().filter(|text| Sheet::from_text(text).is_ok()).collect();
    let lines = writable();
    of.run("sheets", sheets, |_, random| {
        let mut calls = Calls::default();
        let sheet = if random.once_in(4) {
            let text = damaged(random.of_these::<String>(&texts), random);
            let text = if random.once_in(3) { damaged(&text, random) } else { text };
            calls.count(Sheet::from_text(&text))?
        } else {
            let start = random.of_these(&texts).clone();
            Some(changed(&start, &lines, &mut calls, random)?)
        };
        let Some(sheet) = sheet else { return Ok(calls) };
        judged(&sheet, calls, random).map_err(|why| format!("{why}; sheet {}", sheet.to_json()))
    })
}

/// A sheet of some of the lines of an example, and of other lines with random values, in their ranges or not.
fn changed(
    start: &str,
    lines: &[(String, &'static Line)],
    calls: &mut Calls,
    random: &mut Random,
) -> Result<Sheet, String> {
    let mut sheet = Sheet::from_text(start).map_err(|error| error.to_string())?;
    let keep = *random.of_these(&[0.0, 0.5, 0.9, 1.0, 1.0]);
    for path in sheet.paths().collect::<Vec<_>>().into_iter().rev() {
        if random.share() > keep {
            calls.count(sheet.remove(path))?;
        }
    }
    let own: Vec<(String, &Line)> =
        lines.iter().filter(|(path, _)| sheet.get(path).is_ok_and(|on| on.is_some())).cloned().collect();
    for _ in 0..*random.of_these(&[0, 1, 3, 10, 60]) {
        let from = if own.is_empty() || random.once_in(3) { lines } else { &own };
        let (path, line) = random.of_these(from);
        let written = match random.below(8) {
            0 => sheet.set(path, "none"),
            1 => sheet.set_si(path, random.any_number()),
            2 => sheet.set_si(path, random.at_edge(line.range.lower, line.range.upper)),
            3 => {
                let near =
                    sheet.get(path).ok().flatten().and_then(|text| axlewright::base::text::read(&text).ok());
                sheet.set_si(path, random.near(near.map_or(1.0, |reading| reading.si)))
            }
            4 => sheet.remove(path),
            _ => sheet.set(path, &text(line, random)),
        };
        calls.count(written)?;
    }
    Ok(sheet)
}

/// Holds what must be true of every sheet.
fn judged(sheet: &Sheet, mut calls: Calls, random: &mut Random) -> Case {
    let on = sheet.assess();
    calls.answered += 1;
    let (toml, json) = (sheet.to_toml(), sheet.to_json());
    let extreme = numbers(&json).any(is_extreme);
    for answer in on.answers() {
        agrees(answer, extreme).map_err(|why| format!("{}: {why} in {answer:?}", answer.path))?;
    }
    for (text, as_toml) in [(&toml, true), (&json, false)] {
        let read = Sheet::from_text(text).map_err(|error| format!("its own text is refused: {error}"))?;
        let again = if as_toml { read.to_toml() } else { read.to_json() };
        if &read != sheet || &again != text || read.hash() != sheet.hash() {
            return Err(format!("another sheet after its text: {again}"));
        }
    }
    match random.below(4) {
        0 => same_answers(&on, &sheet.assess()).map_err(|why| format!("assessed twice: {why}"))?,
        1 => told(&on, random)?,
        _ => unchanged(sheet, &mut calls, random)?,
    }
    Ok(calls)
}

/// The verdict agrees with the margin, and every number is finite or not known.
fn agrees(of: &Answer, extreme: bool) -> Result<(), String> {
    let limit = if of.form == "ratio" { 1.0 } else { 0.0 };
    let finite = [of.value, of.margin, of.uncertainty, of.worst].iter().all(|x| is_allowed(*x, extreme));
    let (known, short, worst_short) = (!of.margin.is_nan(), of.margin < limit, of.worst < limit);
    let fair = match of.verdict {
        // A wanted margin is infinite until a line says more.
        Verdict::Meets => known && of.margin >= of.wanted && of.worst >= of.wanted && !worst_short,
        Verdict::Tight => known && !short && !worst_short,
        Verdict::Short => short || worst_short,
        // Not known either, whatever the margin, while it is open whether there is such a part.
        Verdict::NotKnown => !short,
        Verdict::DoesNotApply => !known && of.value.is_nan(),
    };
    match (finite, fair) {
        (true, true) => Ok(()),
        (false, _) => Err("an infinite number".to_owned()),
        (_, false) => Err("a verdict against its margin".to_owned()),
    }
}

fn same_answers(one: &Assessment, other: &Assessment) -> Result<(), String> {
    for (a, b) in one.answers().iter().zip(other.answers()) {
        let numbers =
            |of: &Answer| [of.value, of.low, of.high, of.margin, of.wanted, of.uncertainty, of.worst];
        if a.verdict != b.verdict || !numbers(a).iter().zip(numbers(b)).all(|(a, b)| same(*a, b)) {
            return Err(format!("{a:?}, then {b:?}"));
        }
    }
    Ok(())
}

/// Everything that a report says can be said.
fn told(on: &Assessment, random: &mut Random) -> Result<(), String> {
    let system = *random.of_these(&[System::Metric, System::Us]);
    let report = on.to_text(system, random.once_in(2));
    serde_json::from_str::<serde_json::Value>(&on.to_json()).map_err(|error| error.to_string())?;
    let answer = random.of_these(on.answers());
    let sensitivity = on.sensitivity(answer);
    sensitivity.iter().for_each(|of| drop(of.text(answer, system)));
    if random.once_in(4) {
        drop(on.chances(16, random.bits()));
    }
    drop((
        on.missing_text(answer),
        on.assumed(),
        on.to_write(answer),
        on.rests_on(answer),
        on.compare(on, system),
    ));
    let odd = ["NaN", " inf "].into_iter().find(|word| report.contains(word));
    odd.map_or(Ok(()), |word| Err(format!("the report says {word}: {report}")))
}

/// A row of a sweep in which nothing changes is the sheet itself, without the readings that another value makes void.
fn unchanged(sheet: &Sheet, calls: &mut Calls, random: &mut Random) -> Result<(), String> {
    let lines = writable();
    let is_none = |path: &str| sheet.get(path).is_ok_and(|text| text.as_deref() == Some("none"));
    let of = |path: &&str| {
        !is_none(path) && lines.iter().any(|(known, line)| known == path && kind(line).is_some())
    };
    let written: Vec<&str> = sheet.paths().filter(of).collect();
    if written.is_empty() {
        return Ok(());
    }
    let path = *random.of_these(&written);
    let text = sheet.get(path).ok().flatten().unwrap_or_default();
    let axis = Axis::texts(path, &[&text]).map_err(|error| format!("{path} = {text}: {error}"))?;
    let Some(sweep) = calls.count(sheet.what_if(vec![axis], false, &[]))? else { return Ok(()) };
    let mut alone = sheet.clone();
    for gone in sweep.dropped() {
        alone.remove(gone).map_err(|error| format!("dropped: {error}"))?;
    }
    let (on, table) = (alone.assess(), sweep.whole().map_err(|error| error.to_string())?);
    for answer in on.answers() {
        let verdict = table.word(&format!("{}.verdict", answer.path), 0);
        let margin = table.numbers(&format!("{}.margin", answer.path)).map_or(f64::NAN, |column| column[0]);
        if verdict != Some(answer.verdict.word()) || !same(margin, answer.margin) {
            return Err(format!(
                "a row of {path} = {text} gives {verdict:?} by {margin}, the sheet {answer:?}"
            ));
        }
    }
    Ok(())
}
