//! Every function as the core describes it: kinds and ranges of its parameters, its call, the points of its rows.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use crate::rows::{arguments, rows, words};
use crate::{Entry, FUNCTIONS, Parameter};
use serde_json::Value;

/// A function of the core.
#[derive(Debug)]
pub struct Function {
    /// Its name, parameters, results and call.
    pub entry: &'static Entry,
    /// Its parameters, in order.
    pub parameters: &'static [Parameter],
    /// The arguments of every row that it answers.
    pub points: Vec<Vec<f64>>,
}

/// Every function of the core.
pub fn functions() -> Vec<Function> {
    let rows = rows();
    FUNCTIONS.iter().map(|entry| Function::new(entry, &rows)).collect()
}

impl Function {
    fn new(entry: &'static Entry, rows: &[Value]) -> Function {
        let answered = rows.iter().filter(|row| {
            words(row, "function") == Some(entry.name) && row["expected"].get("error").is_none()
        });
        Function { entry, parameters: entry.ranges, points: answered.map(arguments).collect() }
    }

    /// The place of a parameter.
    pub fn place(&self, name: &str) -> usize {
        let found = self.entry.parameters.iter().position(|known| *known == name);
        found.unwrap_or_else(|| panic!("{} has no parameter {name}", self.entry.name))
    }

    /// The results, or none where the function refuses.
    pub fn call(&self, x: &[f64]) -> Option<Vec<f64>> {
        let found = (self.entry.call)(x).ok()?;
        assert!(found.iter().all(|value| value.is_finite()), "{}{x:?} gives {found:?}", self.entry.name);
        Some(found)
    }

    /// How far a result moves where each argument `x` moves by its own size, `|x df/dx|`, by differences. The sum over the result is
    /// the condition number; times the rounding of a float the sum is what rounded arguments may do.
    pub fn reach(&self, x: &[f64], result: usize) -> Vec<f64> {
        let call = |x: &[f64]| self.call(x).map(|results| results[result]);
        let here = call(x).unwrap_or_else(|| panic!("{} refuses {x:?}", self.entry.name));
        let of = |(place, parameter): (usize, &Parameter)| {
            let aside = |factor: f64| {
                let mut aside = x.to_vec();
                aside[place] *= factor;
                call(&aside)
            };
            let there = if parameter.whole { None } else { aside(1.0 + 1e-6).or_else(|| aside(1.0 - 1e-6)) };
            there.map_or(0.0, |there| (there - here).abs() / 1e-6)
        };
        self.parameters.iter().enumerate().map(of).collect()
    }

    /// A value of a parameter inside both its range and a narrower one; half of a range over many powers of ten is drawn evenly by
    /// powers. Where the range has no end, a hundred times what the rows hold is one.
    pub fn draw(&self, place: usize, within: Option<(f64, f64)>, random: &mut Random) -> f64 {
        let parameter = &self.parameters[place];
        let seen = self.points.iter().map(|point| point[place].abs()).filter(|x| *x > 0.0);
        let most = seen.reduce(f64::max).unwrap_or(1.0) * 100.0;
        let (low, high) = within.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
        let end = |end: f64, other: f64| if end.is_finite() { end } else { other };
        let lower = end(parameter.lower.max(low), -most);
        let upper = end(parameter.upper.min(high), most);
        if parameter.whole {
            let counts = upper.min(lower + 20.0) - lower + 1.0;
            return lower + (random.share() * counts).floor();
        }
        let least = if lower > 0.0 { lower } else { 1e-6 * upper };
        if random.share() < 0.5 && lower >= 0.0 && upper > 100.0 * least {
            least * (upper / least).powf(random.share())
        } else {
            lower + random.share() * (upper - lower)
        }
    }

    /// A point that has every parameter inside its range.
    pub fn random_point(&self, random: &mut Random) -> Vec<f64> {
        (0..self.parameters.len()).map(|place| self.draw(place, None, random)).collect()
    }
}

/// Uniform numbers from a seed, the same everywhere and for ever: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
#[derive(Debug)]
pub struct Random(u64);

impl Random {
    /// Numbers of their own for every name.
    pub fn of(name: &str) -> Random {
        Random(name.bytes().fold(0, |sum: u64, byte| sum.wrapping_mul(257).wrapping_add(byte.into())))
    }
    /// Numbers of their own for every place in this sequence.
    pub fn at(&self, place: u64) -> Random {
        Random(Random(self.0 ^ place.wrapping_mul(0xd134_2543_de82_ef95)).bits())
    }
    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
    /// The next number from 0 to 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }
}
