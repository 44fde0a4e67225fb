//! Every function at and beyond the ends of its arguments: its results are finite, and its refusals name the caller's own arguments.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Error;
use axlewright::base::error::{LEAST_MAGNITUDE, MOST_MAGNITUDE};
use axlewright_tests::Parameter;
use axlewright_tests::catalogue::{Function, Random, functions};
use std::collections::BTreeSet;

/// Least and largest number that the range of a parameter allows.
fn ends(parameter: &Parameter) -> (f64, f64) {
    let lower = match parameter.lower {
        f64::NEG_INFINITY => -MOST_MAGNITUDE,
        0.0 if parameter.lower_open => LEAST_MAGNITUDE,
        lower if parameter.lower_open => lower.next_up(),
        lower => lower,
    };
    let upper = match parameter.upper {
        f64::INFINITY => MOST_MAGNITUDE,
        upper if parameter.upper_open => upper.next_down(),
        upper => upper,
    };
    (lower, upper)
}

/// Fault of a refusal: it names nothing of the caller's, or another value than the caller's.
fn fault(of: &Function, x: &[f64], error: &Error) -> Option<String> {
    let place = |name: &str| of.entry.parameters.iter().position(|known| *known == name);
    let is_callers = |name: &str, value: f64| {
        place(name)
            .is_some_and(|place| x[place].to_bits() == value.to_bits() || x[place].is_nan() && value.is_nan())
    };
    let fine = match error {
        Error::OutOfRange { limit, value, .. } => is_callers(limit.argument, *value),
        Error::Contradiction { relation, value, other, .. } => {
            is_callers(relation.argument, *value)
                && (place(relation.other).is_none() || is_callers(relation.other, *other))
        }
        Error::NoSolution(refusal) => {
            let all = &refusal.arguments;
            let first = all.first().is_some_and(|first| is_callers(&first.name, first.value));
            first && all.iter().all(|one| place(&one.name).is_none() || is_callers(&one.name, one.value))
        }
        _ => false,
    };
    (!fine).then(|| format!("{}{x:?}: {error} ({error:?})", of.entry.name))
}

/// Kind of a refusal, so that each is reported once.
fn kind_of(error: &Error) -> String {
    match error {
        Error::OutOfRange { limit, .. } => limit.argument.to_owned(),
        Error::Contradiction { relation, .. } => format!("{} > {}", relation.argument, relation.other),
        other => format!("{:?}", std::mem::discriminant(other)),
    }
}

/// Numbers outside or near the ends of a parameter's range, and others that only a rule between arguments refuses.
fn trials(of: &Function, place: usize, good: f64) -> Vec<f64> {
    let (lower, upper) = ends(&of.parameters[place]);
    let around = [0.0, 0.01, 0.1, 0.5, 0.9, 1.1, 2.0, 10.0, 100.0, -1.0].map(|share| share * good);
    let ends = [lower.next_down(), lower, lower.next_up(), upper.next_down(), upper, upper.next_up()];
    let always =
        [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE, 1e200, -1.0, 0.5, 1.0, 4.5];
    around.into_iter().chain(ends).chain(always).chain([lower / 2.0 + upper / 2.0]).collect()
}

#[test]
fn a_refusal_names_arguments_of_the_caller_with_their_values() {
    let mut faults = Vec::new();
    let mut refused = 0;
    for of in functions() {
        let mut known = BTreeSet::new();
        let mut call = |x: &[f64]| {
            if let Err(error) = (of.entry.call)(x) {
                refused += 1;
                if let Some(fault) = fault(&of, x, &error)
                    && known.insert(kind_of(&error))
                {
                    faults.push(fault);
                }
            }
        };
        for point in of.points.iter().take(4) {
            for place in 0..point.len() {
                for value in trials(&of, place, point[place]) {
                    let mut x = point.clone();
                    x[place] = value;
                    call(&x);
                    for other in place + 1..point.len() {
                        for value in trials(&of, other, point[other]) {
                            x[other] = value;
                            call(&x);
                        }
                        x[other] = point[other];
                    }
                }
            }
        }
    }
    assert!(refused > 100_000, "{refused}");
    assert!(faults.is_empty(), "{}:\n{}", faults.len(), faults.join("\n"));
}

/// Results at every corner of the ranges, and at points between that are spread evenly by powers of ten.
#[test]
fn no_result_overflows() {
    const CORNERS: usize = 300_000;
    const DRAWS: usize = 20_000;
    let mut faults = Vec::new();
    for of in functions() {
        let count = of.parameters.len();
        let some = |place: usize| -> Vec<f64> {
            let (lower, upper) = ends(&of.parameters[place]);
            let seen = of.points.iter().map(|point| point[place]);
            let inner = [
                0.0,
                1.0,
                -1.0,
                lower + 1e-9,
                upper - 1e-9,
                lower / 2.0 + upper / 2.0,
                LEAST_MAGNITUDE,
                -LEAST_MAGNITUDE,
            ];
            let mut all: Vec<f64> = vec![lower, upper];
            all.extend(seen.take(1).chain(inner).filter(|x| (lower..=upper).contains(x)));
            let mut known = BTreeSet::new();
            all.retain(|x| known.insert(x.to_bits()));
            all
        };
        let mut lists: Vec<Vec<f64>> = (0..count).map(some).collect();
        while lists.iter().map(Vec::len).product::<usize>() > CORNERS {
            let longest = lists.iter_mut().max_by_key(|list| list.len()).unwrap();
            longest.pop();
        }
        let mut random = Random::of(of.entry.name);
        let mut x = vec![0.0; count];
        let mut answered = 0;
        let corners = lists.iter().map(Vec::len).product::<usize>();
        for trial in 0..corners + DRAWS {
            let mut rest = trial;
            for (place, list) in lists.iter().enumerate() {
                x[place] = if trial < corners {
                    list[rest % list.len()]
                } else {
                    let (lower, upper) = ends(&of.parameters[place]);
                    let size = 10_f64.powf(60.0 * random.share() - 30.0);
                    let sign = if random.share() < 0.5 { -1.0 } else { 1.0 };
                    let near = if lower.abs() < MOST_MAGNITUDE { lower } else { 0.0 };
                    let drawn = near + if near == 0.0 { sign * size } else { size };
                    if (lower..=upper).contains(&drawn) { drawn } else { list[(trial + place) % list.len()] }
                };
                rest /= list.len();
            }
            if let Ok(results) = (of.entry.call)(&x) {
                answered += 1;
                if !results.iter().all(|result| result.is_finite()) {
                    faults.push(format!("{}{x:?} gives {results:?}", of.entry.name));
                    break;
                }
            }
        }
        assert!(answered > 0, "{} refuses all", of.entry.name);
    }
    assert!(faults.is_empty(), "{}:\n{}", faults.len(), faults.join("\n"));
}
