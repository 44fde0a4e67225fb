//! Functions of the catalogue, on numbers inside their ranges, at the edges, and on any bits.

use super::numbers::same;
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::{Function, Random, functions};
use axlewright::Error;
use axlewright::base::work::Entry;
use axlewright::catalogue;

/// Rows of one case.
const BLOCK: usize = 64;
/// An output before the call.
const UNTOUCHED: f64 = -7.25e300;
/// Kinds that are never negative.
const FROM_ZERO: [&str; 3] = ["AbsolutePressure", "Temperature", "Density"];

pub fn attack(of: &Attack, calls: u64) -> Tally {
    let functions = functions();
    of.run("functions", calls.div_ceil(BLOCK as u64), |number, random| {
        let function = &functions[number as usize % functions.len()];
        let entry = catalogue::entry(function.entry.name).map_err(|error| error.to_string())?;
        block(function, entry, random).map_err(|why| format!("{}: {why}", entry.path))
    })
}

/// A point: every argument plausible, one of them not, some at the edges of their ranges, or any numbers.
fn point(of: &Function, random: &mut Random) -> Vec<f64> {
    let (mode, one) = (random.below(4), random.below(of.parameters.len()));
    let argument = |place: usize| match mode {
        1 if place == one => random.any_number(),
        2 if random.once_in(2) => random.at_edge(of.parameters[place].lower, of.parameters[place].upper),
        3 => random.any_number(),
        _ => of.draw(place, None, random),
    };
    (0..of.parameters.len()).map(argument).collect()
}

fn block(of: &Function, entry: &Entry, random: &mut Random) -> Case {
    let rows: Vec<Vec<f64>> = (0..BLOCK).map(|_| point(of, random)).collect();
    let columns: Vec<Vec<f64>> =
        (0..entry.inputs.len()).map(|at| rows.iter().map(|row| row[at]).collect()).collect();
    let columns: Vec<&[f64]> = columns.iter().map(Vec::as_slice).collect();
    let mut found = vec![vec![UNTOUCHED; BLOCK]; entry.outputs.len()];
    let mut outputs: Vec<&mut [f64]> = found.iter_mut().map(Vec::as_mut_slice).collect();
    let mut refused = [false; BLOCK];
    let told = (entry.batch)(&columns, &mut outputs, &mut |row, _| refused[row] = true);
    told.map_err(|error| format!("the batch is refused: {error}"))?;
    let mut calls = Calls::default();
    for (at, x) in rows.iter().enumerate() {
        let batch: Vec<f64> = found.iter().map(|column| column[at]).collect();
        let mut out = vec![UNTOUCHED; entry.outputs.len()];
        let answer = (entry.call)(x, &mut out);
        if at == 0 {
            let typed = (of.entry.call)(x);
            let agrees = match &typed {
                Ok(typed) => answer.is_ok() && typed.iter().zip(&out).all(|(a, b)| same(*a, *b)),
                Err(_) => answer.is_err(),
            };
            agrees.then_some(()).ok_or_else(|| format!("{x:?} gives {out:?}, typed {typed:?}"))?;
        }
        match answer {
            Ok(()) => answered(entry, x, &out, &batch, refused[at])?,
            Err(error) => {
                let same_in_batch = refused[at] && batch.iter().all(|value| value.is_nan());
                if !same_in_batch || out.iter().any(|value| *value != UNTOUCHED) {
                    return Err(format!("{x:?} is refused, but gives {out:?}, in a batch {batch:?}"));
                }
                names_an_argument(entry, &error).map_err(|why| format!("{x:?}: {why}"))?;
                calls.refused += 1;
                continue;
            }
        }
        calls.answered += 1;
    }
    Ok(calls)
}

fn answered(entry: &Entry, x: &[f64], out: &[f64], batch: &[f64], refused: bool) -> Result<(), String> {
    if refused || !out.iter().zip(batch).all(|(a, b)| same(*a, *b)) {
        return Err(format!("{x:?} gives {out:?}, in a batch {batch:?}"));
    }
    if !out.iter().all(|value| value.is_finite()) {
        return Err(format!("{x:?} gives {out:?}"));
    }
    let below = |(slot, value): (&axlewright::base::work::Slot, &f64)| {
        FROM_ZERO.contains(&slot.kind.name) && *value < 0.0
    };
    let negative = entry.outputs.iter().zip(out).any(below);
    if negative { Err(format!("{x:?} gives {out:?}, below zero")) } else { Ok(()) }
}

/// A refusal names an argument of the function, or a quantity that another function of the catalogue makes of them: `boiling_pressure`.
fn names_an_argument(entry: &Entry, error: &Error) -> Result<(), String> {
    let is_one = |name: &str| entry.inputs.iter().any(|slot| slot.name == name);
    let named = match error {
        Error::OutOfRange { limit, .. } => is_one(limit.argument) || is_made(limit.argument),
        Error::Contradiction { relation, .. } => is_one(relation.argument),
        Error::NoSolution(refusal) => refusal.arguments.iter().any(|on| is_one(&on.name)),
        _ => false,
    };
    let told = || {
        let sentence = error.to_string();
        let mut words = sentence.split(|c: char| !c.is_ascii_alphanumeric() && c != '_');
        words.any(is_one)
    };
    if named || told() { Ok(()) } else { Err(format!("this names no argument: {error}")) }
}

/// True of the end of a function's name.
fn is_made(name: &str) -> bool {
    catalogue::ENTRIES.iter().any(|entry| entry.path.ends_with(name))
}
