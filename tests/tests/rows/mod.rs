//! Every outside reference row through the core; what each call answered is written down, bit for bit, for the other surfaces.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod book;
mod functions;
mod judge;
mod run;
mod sheets;
mod written;

use self::book::measured;
use self::judge::judge;
use self::run::{gates, run, subject};
use axlewright_tests::Found;
use axlewright_tests::rows::{rows, words};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::path::Path;

#[derive(Default)]
struct Tally<'a> {
    rows: usize,
    worst: f64,
    provenances: BTreeMap<&'a str, usize>,
}

#[test]
fn the_core_meets_every_row() {
    let rows = rows();
    let (mut tallies, mut written, mut missed) = (BTreeMap::<&str, Tally<'_>>::new(), Map::new(), Vec::new());
    let mut book = Vec::new();
    for row in &rows {
        let id = words(row, "id").unwrap();
        let answer = run(row);
        book.push(measured(row, &answer));
        written.insert(
            id.into(),
            match &answer {
                Err(error) => json!({ "error": error.to_string() }),
                Ok(results) => results
                    .iter()
                    .map(|(name, found)| {
                        let said = match found {
                            // What is not known has no sign, which a compiler may choose.
                            Found::Number(value) if value.is_nan() => f64::NAN.to_bits().to_string(),
                            Found::Number(value) => value.to_bits().to_string(),
                            Found::Word(word) => word.clone(),
                        };
                        ((*name).to_owned(), Value::String(said))
                    })
                    .collect(),
            },
        );
        let tally =
            tallies.entry(if row.get("unit").is_some() { "units" } else { subject(row) }).or_default();
        tally.rows += 1;
        *tally.provenances.entry(words(row, "provenance").unwrap()).or_default() += 1;
        match judge(row, &answer) {
            Ok(share) if gates(row) => tally.worst = tally.worst.max(share),
            Ok(share) => println!("low confidence, met with {share:.2} of its tolerance: {id}"),
            Err(why) if gates(row) => missed.push(format!("{id} ({}): {why}", subject(row))),
            Err(why) => println!("low confidence, not met: {id}: {why}"),
        }
    }
    println!("{:<46} {:>4}  error/tolerance  provenance", "", "rows");
    for (name, tally) in &tallies {
        let counts: Vec<String> =
            tally.provenances.iter().map(|(name, count)| format!("{count} {name}")).collect();
        println!("{name:<46} {:>4}  {:>15.3}  {}", tally.rows, tally.worst, counts.join(", "));
    }
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("rows-rust.json");
    std::fs::write(&file, serde_json::to_string_pretty(&Value::Object(written)).unwrap()).unwrap();
    let measured = Path::new(env!("CARGO_TARGET_TMPDIR")).join("rows-measured.json");
    std::fs::write(&measured, serde_json::to_string_pretty(&book).unwrap()).unwrap();
    println!("{} rows; what the core answered stands in {}", rows.len(), file.display());
    assert!(missed.is_empty(), "{} of {} rows not met:\n{}", missed.len(), rows.len(), missed.join("\n"));
}
