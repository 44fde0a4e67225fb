//! The claims of `claims.json` hold for each function: at every point of its rows, and at points drawn inside its ranges.
//!
//! One line of the file is about one function, and one `result` where it has several. `where` narrows the ranges of its parameters
//! (coherent SI), `at` sets some of them, and then it claims one or more of these:
//!
//! | claim | holds where |
//! |---|---|
//! | `"rises_with": ["a", "b"]`, `"falls_with"` | a greater `a` alone never gives less, and gives more somewhere |
//! | `"even_in": ["a"]`, `"odd_in"` | `-a` gives the same, the negative |
//! | `"swapping": [["a", "b"]], "gives": "same"` | swapping them gives the same, or the `"negative"`, `"inverse"`, `"complement"` to one |
//! | `"scales": {"a": 1, "b": -2, "result": 1}` | `a` times `s` and `b` times `s^-2` give `s` times the result; one that is not named is kept |
//! | `"equals": TARGET`, `"above"`, `"below"` | the result is that, no less, no more |
//! | `"inverse": {"function": "f", "inputs": {"c": "result"}, "gives": "a"}` | `f`, given the result as its `c`, gives `a` back |
//!
//! A target is a number, the name of a parameter, `{"function": "f", "inputs": {"c": TARGET}}` (what is not named is taken from the
//! parameter of the same name), `{"sum": [TARGET, ...]}` or `{"product": [TARGET, ...]}`; of an inverse it may be `"result"`. Equality is to 1e-12 (`within` says
//! another bound) of the result or, where that is more, of what the function's slopes make of its arguments (`Function::reach`).
//! `ill_conditioned` says why a function needs the latter in `unit_invariance.rs`, `why` says what else a reader would ask.
//!
//! Every claim is also turned around, and the turned one must be refused: so each of them can fail.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright_tests::catalogue::{Function, Random, functions};
use axlewright_tests::rows::words;
use serde_json::{Map, Value, json};

/// Points drawn for a claim, and how many must answer.
const DRAWN: usize = 150;
const LEAST: usize = 12;
const FACTORS: [f64; 4] = [0.5, 1.25, 2.0, 3.0];
const KEYS: [&str; 8] = ["function", "result", "where", "at", "gives", "within", "ill_conditioned", "why"];

#[derive(Debug, Clone, PartialEq)]
enum Says {
    Rises(usize),
    Falls(usize),
    Even(usize),
    Odd(usize),
    Swapping(Vec<(usize, usize)>, &'static str),
    Scales(Vec<(usize, f64)>, f64),
    /// The target, and a share by which it is wrong: none but in a claim turned around.
    Equals(Value, f64),
    Above(Value),
    Below(Value),
    Inverse(Value, usize, f64),
}

impl Says {
    /// The claim as the file writes it.
    fn text(&self, parameters: &[&str]) -> String {
        let off = |wrong: f64| if wrong == 0.0 { String::new() } else { format!(" times {}", 1.0 + wrong) };
        match self {
            Says::Rises(place) => format!("rises_with {}", parameters[*place]),
            Says::Falls(place) => format!("falls_with {}", parameters[*place]),
            Says::Even(place) => format!("even_in {}", parameters[*place]),
            Says::Odd(place) => format!("odd_in {}", parameters[*place]),
            Says::Swapping(pairs, gives) => {
                let pairs: Vec<[&str; 2]> =
                    pairs.iter().map(|(a, b)| [parameters[*a], parameters[*b]]).collect();
                format!("swapping {pairs:?} gives {gives}")
            }
            Says::Scales(powers, result) => {
                let powers: Vec<String> =
                    powers.iter().map(|(place, power)| format!("{}: {power}", parameters[*place])).collect();
                format!("scales {}, result: {result}", powers.join(", "))
            }
            Says::Equals(target, wrong) => format!("equals {target}{}", off(*wrong)),
            Says::Above(target) => format!("above {target}"),
            Says::Below(target) => format!("below {target}"),
            Says::Inverse(call, place, wrong) => {
                format!("inverse {call} gives {}{}", parameters[*place], off(*wrong))
            }
        }
        .replace(" times 1", "")
    }
}

struct Claim<'a> {
    all: &'a [Function],
    function: &'a Function,
    result: usize,
    line: &'a Value,
    says: Says,
    within: f64,
}

fn claims_file() -> Vec<Value> {
    serde_json::from_str(include_str!("../claims.json")).unwrap()
}

fn named<'a>(all: &'a [Function], name: &str) -> &'a Function {
    all.iter().find(|function| function.entry.name == name).unwrap_or_else(|| panic!("no function {name}"))
}

fn place_of(names: &[&str], name: &Value) -> usize {
    names.iter().position(|known| name == known).unwrap_or_else(|| panic!("{name} is none of {names:?}"))
}

fn names(list: &Value) -> impl Iterator<Item = &str> {
    list.as_array().unwrap().iter().map(|name| name.as_str().unwrap())
}

/// The claims of one line.
fn claims_of<'a>(line: &'a Value, all: &'a [Function]) -> Vec<Claim<'a>> {
    let function = named(all, words(line, "function").unwrap());
    let result = line.get("result").map_or(0, |name| place_of(function.entry.results, name));
    let mut says = Vec::new();
    for (key, of) in line.as_object().unwrap() {
        let each = |says: fn(usize) -> Says| names(of).map(move |name| says(function.place(name)));
        match key.as_str() {
            "rises_with" => says.extend(each(Says::Rises)),
            "falls_with" => says.extend(each(Says::Falls)),
            "even_in" => says.extend(each(Says::Even)),
            "odd_in" => says.extend(each(Says::Odd)),
            "swapping" => {
                let pairs = of.as_array().unwrap().iter().map(|pair| {
                    let pair: Vec<usize> = names(pair).map(|name| function.place(name)).collect();
                    (pair[0], pair[1])
                });
                let known = ["same", "negative", "inverse", "complement"];
                says.push(Says::Swapping(pairs.collect(), known[place_of(&known, &line["gives"])]));
            }
            "scales" => {
                let powers = of.as_object().unwrap().iter().filter(|(name, _)| *name != "result");
                let powers = powers.map(|(name, power)| (function.place(name), power.as_f64().unwrap()));
                says.push(Says::Scales(powers.collect(), of["result"].as_f64().unwrap()));
            }
            "equals" => says.push(Says::Equals(of.clone(), 0.0)),
            "above" => says.push(Says::Above(of.clone())),
            "below" => says.push(Says::Below(of.clone())),
            "inverse" => {
                says.push(Says::Inverse(of.clone(), function.place(words(of, "gives").unwrap()), 0.0));
            }
            other => assert!(KEYS.contains(&other), "{line}: no claim is called {other}"),
        }
    }
    let within = line["within"].as_f64().unwrap_or(1e-12);
    says.into_iter().map(|says| Claim { all, function, result, line, says, within }).collect()
}

/// The other claim, which must be false where this one is true.
fn turned(says: &Says) -> Says {
    match says.clone() {
        Says::Rises(place) => Says::Falls(place),
        Says::Falls(place) => Says::Rises(place),
        Says::Even(place) => Says::Odd(place),
        Says::Odd(place) => Says::Even(place),
        Says::Swapping(pairs, "same") => Says::Swapping(pairs, "negative"),
        Says::Swapping(pairs, _) => Says::Swapping(pairs, "same"),
        Says::Scales(powers, result) => Says::Scales(powers, result + 0.01),
        Says::Equals(target, _) => Says::Equals(target, 0.01),
        Says::Above(target) => Says::Below(target),
        Says::Below(target) => Says::Above(target),
        Says::Inverse(call, place, _) => Says::Inverse(call, place, 0.01),
    }
}

impl Claim<'_> {
    /// Why it does not hold.
    fn check(&self) -> Result<(), String> {
        let limits = &self.line["where"];
        let limits: Vec<Option<(f64, f64)>> = (self.function.entry.parameters.iter())
            .map(|name| {
                limits.get(name).map(|limits| (limits[0].as_f64().unwrap(), limits[1].as_f64().unwrap()))
            })
            .collect();
        for name in
            self.line["where"].as_object().into_iter().chain(self.line["at"].as_object()).flat_map(Map::keys)
        {
            self.function.place(name);
        }
        let mut random = Random::of(self.function.entry.name);
        let inside = |point: &&Vec<f64>| {
            point
                .iter()
                .zip(&limits)
                .all(|(x, limits)| limits.is_none_or(|(low, high)| (low..=high).contains(x)))
        };
        let mut points: Vec<Vec<f64>> = self.function.points.iter().filter(inside).cloned().collect();
        for _ in 0..DRAWN {
            let drawn = limits
                .iter()
                .enumerate()
                .map(|(place, limits)| self.function.draw(place, *limits, &mut random));
            points.push(drawn.collect());
        }
        let (mut tried, mut strict) = (0, 0);
        for mut x in points {
            if self.set(&mut x).is_none() {
                continue;
            }
            for stretch in [false, true] {
                if let Some(strictly) = self.holds(&x, &limits, stretch, &mut random)? {
                    tried += 1;
                    strict += usize::from(strictly);
                }
            }
        }
        if tried < LEAST {
            return Err(format!("only {tried} points answer: widen `where` or `at`"));
        }
        if strict * 10 < tried {
            return Err(format!("the result differs at {strict} of {tried} points only"));
        }
        Ok(())
    }

    /// Puts in what `at` sets.
    fn set(&self, x: &mut [f64]) -> Option<()> {
        for (name, target) in self.line["at"].as_object().into_iter().flatten() {
            x[self.function.place(name)] = self.target(target, x, None)?;
        }
        Some(())
    }

    fn target(&self, target: &Value, x: &[f64], result: Option<f64>) -> Option<f64> {
        let all = |list: &Value| -> Option<Vec<f64>> {
            list.as_array().unwrap().iter().map(|target| self.target(target, x, result)).collect()
        };
        match target {
            Value::Number(number) => number.as_f64(),
            Value::String(name) if name == "result" => result,
            Value::String(name) => Some(x[self.function.place(name)]),
            _ if target.get("sum").is_some() => Some(all(&target["sum"])?.iter().sum()),
            _ if target.get("product").is_some() => Some(all(&target["product"])?.iter().product()),
            _ => {
                let of = named(self.all, words(target, "function").unwrap());
                for name in target["inputs"].as_object().into_iter().flat_map(Map::keys) {
                    of.place(name);
                }
                let given = |name: &&str| match target["inputs"].get(*name) {
                    Some(target) => self.target(target, x, result),
                    None => Some(x[self.function.place(name)]),
                };
                let arguments: Option<Vec<f64>> = of.entry.parameters.iter().map(given).collect();
                let place = target.get("result").map_or(0, |name| place_of(of.entry.results, name));
                of.call(&arguments?).map(|results| results[place])
            }
        }
    }

    /// Whether it holds at a point: none where the point is not answered, true where it also says something.
    fn holds(
        &self,
        x: &[f64],
        limits: &[Option<(f64, f64)>],
        stretch: bool,
        random: &mut Random,
    ) -> Result<Option<bool>, String> {
        let call = |x: &[f64]| self.function.call(x).map(|results| results[self.result]);
        let Some(here) = call(x) else { return Ok(None) };
        let reach = self.function.reach(x, self.result);
        let size = here.abs().max(reach.iter().sum());
        let allowed = |a: f64, b: f64| self.within * a.abs().max(b.abs()).max(size);
        let with = |changes: &mut dyn Iterator<Item = (usize, f64)>| {
            let mut x = x.to_vec();
            changes.for_each(|(place, value)| x[place] = value);
            x
        };
        let refuse = |other: &[f64], found: f64, wanted: &str| {
            let at = |x: &[f64]| {
                let named = self.function.entry.parameters.iter().zip(x);
                named.map(|(name, value)| format!("{name} = {value:e}")).collect::<Vec<_>>().join(", ")
            };
            Err(format!("{here:e} at {}; {found:e} at {}, {wanted}", at(x), at(other)))
        };
        let same = |other: &[f64], found: f64, wanted: f64| {
            if (found - wanted).abs() <= allowed(found, wanted) {
                Ok(Some(true))
            } else {
                refuse(other, found, &format!("wanted {wanted:e}"))
            }
        };
        match &self.says {
            Says::Rises(place) | Says::Falls(place) => {
                let aside = match stretch {
                    true => self.function.draw(*place, limits[*place], random),
                    false if self.function.parameters[*place].whole => x[*place] + 1.0,
                    false => x[*place] + 1e-3 * x[*place].abs().max(1e-6),
                };
                let within = limits[*place].is_none_or(|(low, high)| (low..=high).contains(&aside));
                let other = with(&mut [(*place, aside)].into_iter());
                let Some(there) = call(&other).filter(|_| within && aside != x[*place]) else {
                    return Ok(None);
                };
                let rise = (there - here) * (aside - x[*place]).signum();
                let rise = if matches!(self.says, Says::Rises(_)) { rise } else { -rise };
                if rise < -allowed(here, there) {
                    return refuse(
                        &other,
                        there,
                        if matches!(self.says, Says::Rises(_)) { "falls" } else { "rises" },
                    );
                }
                Ok(Some(rise > 0.0))
            }
            _ if stretch => Ok(None),
            Says::Even(place) | Says::Odd(place) => {
                let other = with(&mut [(*place, -x[*place])].into_iter());
                let Some(there) = call(&other) else { return Ok(None) };
                same(&other, there, if matches!(self.says, Says::Even(_)) { here } else { -here })
            }
            Says::Swapping(pairs, gives) => {
                let other = with(&mut pairs.iter().flat_map(|(a, b)| [(*a, x[*b]), (*b, x[*a])]));
                let Some(there) = call(&other) else { return Ok(None) };
                let wanted = match *gives {
                    "same" => here,
                    "negative" => -here,
                    "inverse" => 1.0 / here,
                    _ => 1.0 - here,
                };
                same(&other, there, wanted)
            }
            Says::Scales(powers, result) => {
                let mut any = None;
                for factor in FACTORS {
                    let other = with(
                        &mut powers
                            .iter()
                            .map(|(place, power)| (*place, x[*place] * f64::powf(factor, *power))),
                    );
                    if let Some(there) = call(&other) {
                        any = same(&other, there, here * f64::powf(factor, *result))?;
                    }
                }
                Ok(any)
            }
            Says::Equals(target, wrong) => {
                let Some(wanted) = self.target(target, x, None) else { return Ok(None) };
                let by = wrong * wanted.abs().max(size).max(1e-9);
                same(x, here, wanted + by)
            }
            Says::Above(target) | Says::Below(target) => {
                let Some(wanted) = self.target(target, x, None) else { return Ok(None) };
                let above = matches!(self.says, Says::Above(_));
                let over = if above { here - wanted } else { wanted - here };
                if over < -allowed(here, wanted) {
                    return refuse(x, here, &format!("{} {wanted:e}", if above { "below" } else { "above" }));
                }
                Ok(Some(over > 0.0))
            }
            Says::Inverse(call, place, wrong) => {
                let Some(found) = self.target(call, x, Some(here)).filter(|_| reach[*place] > 0.0) else {
                    return Ok(None);
                };
                // The result keeps as much of the argument as it moves with it.
                let wanted = x[*place] * (1.0 + wrong);
                let allowed = self.within * wanted.abs() * (size / reach[*place]);
                if (found - wanted).abs() <= allowed {
                    Ok(Some(true))
                } else {
                    refuse(x, found, &format!("wanted {wanted:e} back"))
                }
            }
        }
    }
}

fn each_claim(mut judge: impl FnMut(&Claim<'_>, String) -> Option<String>) -> usize {
    let (lines, all) = (claims_file(), functions());
    let claims: Vec<Claim<'_>> = lines.iter().flat_map(|line| claims_of(line, &all)).collect();
    let describe = |claim: &Claim<'_>| {
        let at = |key: &str| claim.line.get(key).map(|on| format!(", {key} {on}")).unwrap_or_default();
        let result = claim.function.entry.results[claim.result];
        let says = claim.says.text(claim.function.entry.parameters);
        format!("{} ({result}), {says}{}{}", claim.function.entry.name, at("where"), at("at"))
    };
    let wrong: Vec<String> = claims.iter().filter_map(|claim| judge(claim, describe(claim))).collect();
    assert!(wrong.is_empty(), "{} of {} claims:\n{}", wrong.len(), claims.len(), wrong.join("\n"));
    claims.len()
}

#[test]
fn every_claim_holds() {
    let claims = each_claim(|claim, name| claim.check().err().map(|why| format!("{name}: {why}")));
    println!("{claims} claims hold");
}

#[test]
fn every_claim_turned_around_is_refused() {
    each_claim(|claim, name| {
        let turned = Claim { says: turned(&claim.says), ..*claim };
        turned.check().is_ok().then(|| {
            let says = turned.says.text(claim.function.entry.parameters);
            format!("{name} cannot fail: {says} holds as well")
        })
    });
}

#[test]
fn every_result_has_a_claim() {
    let (lines, all) = (claims_file(), functions());
    let claims: Vec<Claim<'_>> = lines.iter().flat_map(|line| claims_of(line, &all)).collect();
    for function in &all {
        let name = function.entry.name;
        for (place, result) in function.entry.results.iter().enumerate() {
            let mut line = json!({ "function": name, "rises_with": [function.entry.parameters[0]] });
            if function.entry.results.len() > 1 {
                line["result"] = json!(result);
            }
            assert!(
                claims.iter().any(|claim| claim.function.entry.name == name && claim.result == place),
                "nothing is claimed of {name}: add a line to tests/claims.json, as {line} if that is so; the forms stand at the \
                 top of tests/tests/claims.rs"
            );
        }
    }
}
