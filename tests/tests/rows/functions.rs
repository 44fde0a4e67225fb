//! The catalogue and its formulas.

use axlewright::catalogue::{self, ENTRIES};
use axlewright_tests::FUNCTIONS;
use axlewright_tests::rows::{arguments, rows, words};
use std::collections::BTreeMap;

/// The arguments of every row of a function, refused ones included.
fn arguments_of(name: &str) -> Vec<Vec<f64>> {
    rows().iter().filter(|row| words(row, "function") == Some(name)).map(arguments).collect()
}

fn bits(values: &[f64]) -> Vec<u64> {
    values.iter().map(|value| value.to_bits()).collect()
}

/// The catalogue answers every row as the typed function does, to the last bit: one by one, all at once, and one repeated.
#[test]
fn the_catalogue_answers_every_row_as_the_function() {
    assert_eq!(ENTRIES.len(), FUNCTIONS.len());
    let mut compared = 0;
    for function in FUNCTIONS {
        let entry = catalogue::entry(function.name).unwrap();
        let names =
            |slots: &[axlewright::base::work::Slot]| slots.iter().map(|on| on.name).collect::<Vec<_>>();
        assert_eq!(names(entry.inputs), function.parameters, "{}", entry.path);
        let arguments = arguments_of(function.name);
        let (n, outs) = (arguments.len(), entry.outputs.len());
        let columns: Vec<Vec<f64>> =
            (0..entry.inputs.len()).map(|i| arguments.iter().map(|row| row[i]).collect()).collect();
        let columns: Vec<&[f64]> = columns.iter().map(Vec::as_slice).collect();
        let mut found = vec![vec![7.0; n]; outs];
        let mut refused = BTreeMap::new();
        let mut outputs: Vec<&mut [f64]> = found.iter_mut().map(Vec::as_mut_slice).collect();
        (entry.batch)(&columns, &mut outputs, &mut |row, error| {
            refused.insert(row, error.to_string());
        })
        .unwrap();
        for (row, arguments) in arguments.iter().enumerate() {
            let of_batch: Vec<f64> = found.iter().map(|column| column[row]).collect();
            let mut one = vec![7.0; outs];
            let answer = (entry.call)(arguments, &mut one);
            let constants: Vec<&[f64]> = arguments.iter().map(std::slice::from_ref).collect();
            let mut repeated = vec![vec![7.0; 3]; outs];
            let mut outputs: Vec<&mut [f64]> = repeated.iter_mut().map(Vec::as_mut_slice).collect();
            let mut again = 0;
            (entry.batch)(&constants, &mut outputs, &mut |_, _| again += 1).unwrap();
            match (function.call)(arguments) {
                Ok(wanted) => {
                    assert_eq!(answer, Ok(()), "{}", entry.path);
                    assert_eq!(bits(&one), bits(&wanted), "{}", entry.path);
                    assert_eq!(bits(&of_batch), bits(&wanted), "{}", entry.path);
                    for (column, wanted) in repeated.iter().zip(&wanted) {
                        assert_eq!(bits(column), bits(&[*wanted; 3]), "{}", entry.path);
                    }
                    assert!(!refused.contains_key(&row) && again == 0, "{}", entry.path);
                    let names = entry.inputs.iter().map(|input| input.name);
                    let named: Vec<(&str, f64)> = names.zip(arguments.iter().copied()).collect();
                    let work = catalogue::work(entry.path, &named).unwrap();
                    assert_eq!(bits(work.results()), bits(&wanted), "{}", entry.path);
                }
                Err(error) => {
                    assert_eq!(answer.unwrap_err().to_string(), error.to_string(), "{}", entry.path);
                    assert_eq!(one, vec![7.0; outs], "{}", entry.path);
                    assert!(of_batch.iter().all(|value| value.is_nan()), "{}", entry.path);
                    assert_eq!((refused.get(&row), again), (Some(&error.to_string()), 3), "{}", entry.path);
                }
            }
            compared += 1;
        }
    }
    println!("{compared} rows of {} functions", ENTRIES.len());
    assert!(compared > ENTRIES.len());
}

/// Every argument's symbol stands in its formula, so that the numbers can be put in; and a single result has one, too, but
/// where a standard is cited in place of a formula.
#[test]
fn every_formula_takes_its_numbers() {
    let texts = |entry: &axlewright::base::work::Entry| vec!["7 u".to_owned(); entry.inputs.len()];
    let without: Vec<&str> =
        ENTRIES.iter().filter(|on| on.put_in(&texts(on)).is_none()).map(|on| on.path).collect();
    assert_eq!(without, [""; 0]);
    let nameless: Vec<&str> = ENTRIES
        .iter()
        .filter(|on| on.outputs.len() == 1 && on.outputs[0].symbol.is_empty())
        .map(|on| on.path)
        .collect();
    assert_eq!(nameless, ["fluid.water_boiling_temperature", "fluid.water_saturation_pressure"]);
}
