//! Inputs in any unit and any spelling give the same result.
//!
//! Each point at which a row is answered, and a few drawn inside the ranges, is written as text, read back by the core's parser and put through the function. The
//! result agrees to 1e-12, relative. Where a function takes a difference of nearly equal things the rounding of an argument is
//! larger than that beside the result; `ill_conditioned` in `claims.json` says so, and the bound is then 1e-12 of what the function's
//! own slopes make of its arguments (`Function::reach`). A mark that no point needs is refused.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::base::text;
use axlewright::units::{KINDS, Kind, LinearStiffness, Quantity, Unit};
use axlewright_tests::Entry;
use axlewright_tests::catalogue::{Function, Random, functions};
use axlewright_tests::rows::words;
use serde_json::Value;
use std::collections::BTreeSet;

const BOUND: f64 = 1e-12;
/// Points inside the ranges, beside those of the rows.
const DRAWN: usize = 10;

/// Every way to write a unit of a kind. A ratio without a unit has but one.
fn spellings(kind: &'static Kind) -> Vec<(&'static Unit, &'static str)> {
    let of = |unit: &'static Unit| {
        let words = unit.spellings.iter().copied().chain([unit.name]);
        std::iter::once(unit.symbol)
            .chain(words.filter(|_| !unit.symbol.is_empty()))
            .map(move |word| (unit, word))
    };
    kind.units.iter().flat_map(of).collect()
}

/// The value written so, and read again: as text, and through the factor, which must give the same bits.
fn through(si: f64, kind: &'static Kind, (unit, word): (&'static Unit, &str)) -> Result<f64, String> {
    let number = unit.from_si(si);
    let written = format!("{number} {word}");
    let read = text::value_as(&written, kind).map_err(|error| error.to_string())?;
    if read.to_bits() == unit.to_si(number).to_bits() {
        Ok(read)
    } else {
        Err(format!("{written:?} is read as {read:e}, and its factor gives {:e}", unit.to_si(number)))
    }
}

/// A value at the end of its range may be rounded out of it: so it starts a little inside.
fn inside(function: &Function, point: &[f64]) -> Vec<f64> {
    let parameters = function.parameters.iter().zip(point);
    parameters
        .map(|(parameter, x)| {
            let step = 1e-9 * x.abs();
            match () {
                () if parameter.whole => *x,
                () if x - step < parameter.lower => x + step,
                () if x + step > parameter.upper => x - step,
                () => *x,
            }
        })
        .collect()
}

/// The largest error over the plain bound, and over the bound by condition.
fn errors(function: &Function) -> (f64, f64) {
    let forms: Vec<_> = function.parameters.iter().map(|parameter| spellings(parameter.kind)).collect();
    let rounds = forms.iter().map(Vec::len).max().unwrap();
    let (mut plain, mut conditioned) = (0.0_f64, 0.0_f64);
    let mut random = Random::of(function.entry.name);
    let drawn: Vec<Vec<f64>> =
        std::iter::repeat_with(|| function.random_point(&mut random)).take(DRAWN).collect();
    for point in function.points.iter().chain(&drawn) {
        let x = inside(function, point);
        let Some(expected) = function.call(&x) else { continue };
        let reach: Vec<f64> =
            (0..expected.len()).map(|result| function.reach(&x, result).iter().sum()).collect();
        for round in 0..rounds {
            let written = function.parameters.iter().zip(&x).zip(&forms);
            let again: Result<Vec<f64>, String> =
                written.map(|((of, x), forms)| through(*x, of.kind, forms[round % forms.len()])).collect();
            let again = again.unwrap_or_else(|why| panic!("{}: {why}", function.entry.name));
            let found =
                function.call(&again).unwrap_or_else(|| panic!("{} refuses {again:?}", function.entry.name));
            for ((found, expected), reach) in found.iter().zip(&expected).zip(&reach) {
                let error = (found - expected).abs();
                if error > 0.0 {
                    plain = plain.max(error / (BOUND * expected.abs()));
                    conditioned = conditioned.max(error / (BOUND * expected.abs().max(*reach)));
                }
            }
        }
    }
    (plain, conditioned)
}

#[test]
fn every_unit_and_spelling_gives_the_same_result() {
    let claims: Value = serde_json::from_str(include_str!("../claims.json")).unwrap();
    let marked: BTreeSet<&str> = (claims.as_array().unwrap().iter())
        .filter(|claim| claim.get("ill_conditioned").is_some())
        .map(|claim| words(claim, "function").unwrap())
        .collect();
    let functions = functions();
    let halves: Vec<&[Function]> = functions.chunks(functions.len().div_ceil(4)).collect();
    let found: Vec<_> = std::thread::scope(|scope| {
        let run = |half| scope.spawn(move || (half as &[Function]).iter().map(errors).collect::<Vec<_>>());
        let running: Vec<_> = halves.into_iter().map(run).collect();
        running.into_iter().flat_map(|half| half.join().unwrap()).collect()
    });
    let mut wrong = Vec::new();
    for (function, (plain, conditioned)) in functions.iter().zip(found) {
        let name = function.entry.name;
        match (marked.contains(name), plain <= 1.0, conditioned <= 1.0) {
            (false, true, _) => {}
            (true, false, true) => println!("{name}: {:.1e} of the result, bounded by its condition", plain * BOUND),
            (true, true, _) => wrong.push(format!("{name} is marked `ill_conditioned` and is not: {plain:.2}")),
            (false, false, true) => wrong.push(format!(
                "{name} is off by {:.1e}, no more than its condition number allows: if it takes a difference, say so with \
                 `ill_conditioned` in tests/claims.json",
                plain * BOUND
            )),
            (_, _, false) => {
                wrong.push(format!("{name}: another unit, another result, by {:.1e}", plain * BOUND))
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_wrong_factor_and_a_wrong_result_are_found() {
    let lbf_in = LinearStiffness::KIND.unit("lbf_in").unwrap();
    let rounded: &Unit = Box::leak(Box::new(Unit { numerator: 175.127, denominator: 1.0, ..*lbf_in }));
    assert!(through(39_400.0, LinearStiffness::KIND, (lbf_in, "lbf/in")).is_ok());
    assert!(through(39_400.0, LinearStiffness::KIND, (rounded, "lbf/in")).is_err());
    let mut function = functions().into_iter().find(|of| of.entry.name == "spring.ride_rate").unwrap();
    let (plain, conditioned) = errors(&function);
    assert!(plain < 1.0 && conditioned < 1.0);
    let by_last_bit =
        |x: &[f64]| Ok(vec![x[0] * if x[0].to_bits().is_multiple_of(2) { 1.0 } else { 1.0 + 1e-11 }]);
    function.entry = Box::leak(Box::new(Entry { call: by_last_bit, ..*function.entry }));
    let (plain, conditioned) = errors(&function);
    assert!(plain > 1.0 && conditioned > 1.0);
}

#[test]
fn every_unit_is_written() {
    for kind in KINDS {
        let units: BTreeSet<&str> = spellings(kind).into_iter().map(|(unit, _)| unit.name).collect();
        assert_eq!(units.len(), kind.units.len(), "{}", kind.name);
    }
}
