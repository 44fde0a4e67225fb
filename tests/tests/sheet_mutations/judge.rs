//! Whether a mutation had the outcome that its oracle says.

use super::case::{Mutated, Oracle};
use axlewright::Error;
use axlewright::sheet::{Assessment, Sheet};
use std::panic::{AssertUnwindSafe, catch_unwind};

fn levenshtein(one: &str, two: &str) -> usize {
    let two: Vec<char> = two.chars().collect();
    let mut row: Vec<usize> = (0..=two.len()).collect();
    for (i, a) in one.chars().enumerate() {
        let mut before = row[0];
        row[0] = i + 1;
        for (j, b) in two.iter().enumerate() {
            let cost = before + usize::from(a != *b);
            before = row[j + 1];
            row[j + 1] = cost.min(row[j] + 1).min(row[j + 1] + 1);
        }
    }
    row[two.len()]
}

/// Every number and verdict of an assessment, to the bit.
pub fn bits(of: &Assessment) -> Vec<([u64; 6], &'static str)> {
    let answers = of.answers().iter();
    answers
        .map(|answer| {
            let numbers =
                [answer.value, answer.low, answer.high, answer.margin, answer.wanted, answer.uncertainty];
            (numbers.map(f64::to_bits), answer.verdict.word())
        })
        .collect()
}

/// Fault of the outcome, if there is one.
pub fn judged(mutated: &Mutated, expected: &[([u64; 6], &str)]) -> Result<(), String> {
    let read = catch_unwind(AssertUnwindSafe(|| Sheet::from_text(&mutated.text)));
    let read = read.map_err(|_| "it panics".to_owned())?;
    let refusal = |error: Error| match error {
        Error::Document(faults) => Ok((faults[0].line, faults[0].key.clone(), faults[0].message.clone())),
        other => Err(format!("another refusal: {other:?}")),
    };
    match (&mutated.oracle, read) {
        (Oracle::Harmless, Err(error)) => Err(format!("refused: {error}")),
        (Oracle::Harmless, Ok(sheet)) => {
            let assessment =
                catch_unwind(AssertUnwindSafe(|| sheet.assess())).map_err(|_| "assess panics")?;
            if bits(&assessment) == expected { Ok(()) } else { Err("another assessment".to_owned()) }
        }
        (_, Ok(_)) => Err("not refused".to_owned()),
        (Oracle::Broken { last }, Err(error)) => {
            let (line, _, message) = refusal(error)?;
            let good = (1..=*last).contains(&line) && !message.is_empty();
            if good { Ok(()) } else { Err(format!("line {line}, not one up to {last}: {message}")) }
        }
        (Oracle::Refused { line, key, words }, Err(error)) => {
            let said = error.to_string();
            let (at, named, message) = refusal(error)?;
            if at != *line {
                return Err(format!("line {at}, not {line}: {said}"));
            }
            if !key.is_empty() && named != *key {
                return Err(format!("key `{named}`, not `{key}`: {said}"));
            }
            for word in words {
                if let Some(pair) = word.strip_prefix("nearest ") {
                    let (slip, meant) = pair.split_once(' ').unwrap();
                    // The glossary knows some slips as words of the trade: it then names the line with its whole path.
                    let known = message.split(" here: see `").nth(1).and_then(|rest| rest.split('`').next());
                    let known = known.and_then(|path| path.rsplit('.').next());
                    let near = message.split("did you mean `").nth(1).and_then(|rest| rest.split('`').next());
                    let near = near.or(known);
                    let near = near.ok_or_else(|| format!("no nearest key: {said}"))?;
                    // Another key may be as near as the one that was meant; none that is farther will do.
                    if near != meant && levenshtein(near, slip) > levenshtein(meant, slip) {
                        return Err(format!("`{near}` for `{slip}`, not `{meant}`: {said}"));
                    }
                } else if !said.contains(word.as_str()) {
                    return Err(format!("does not say `{word}`: {said}"));
                }
            }
            Ok(())
        }
    }
}
