//! The typed functions beside the same functions on plain `f64`, for `cargo xtask bench`.
//!
//! `cases` lists them and says which pairs the compiler made one; `count <case> <typed|plain> <calls>` calls one, for an
//! instruction counter; `loop <rounds>` times a plain loop over the boiling temperature of water.

use axlewright::base::error::{LEAST_MAGNITUDE, Limit, MOST_MAGNITUDE};
use axlewright::base::numeric::sine_cosine;
use axlewright::units::*;
use axlewright::{Error, Result, driveline, fluid, spring};
use std::f64::consts::{FRAC_PI_2, TAU};
use std::hint::black_box;
use std::process::ExitCode;
use std::time::Instant;

macro_rules! double {
    ($argument:ident) => {
        f64
    };
}

/// A case: arguments with a value each, the typed function, the plain one.
macro_rules! case {
    ($case:ident($($argument:ident = $value:literal),+) -> $answer:ty, $typed:expr, $plain:block) => {
        mod $case {
            use super::*;
            type Function = fn($(double!($argument)),+) -> $answer;

            #[inline(never)]
            fn typed($($argument: f64),+) -> $answer {
                $typed
            }
            #[inline(never)]
            fn plain($($argument: f64),+) -> $answer $plain

            pub fn count(which: &str, calls: usize) {
                let function: Function = black_box(if which == "plain" { plain } else { typed });
                for _ in 0..calls {
                    let _ = black_box(function($(black_box($value)),+));
                }
            }
            pub fn is_one_function() -> bool {
                std::ptr::fn_addr_eq(typed as Function, plain as Function)
            }
        }
    };
}

/// Whether a number lies above zero and within the ends of every argument.
#[inline(always)]
fn positive(x: f64) -> bool {
    (LEAST_MAGNITUDE..=MOST_MAGNITUDE).contains(&x)
}

/// The number, or NaN. The error of a range owns nothing, so nothing is lost by forgetting it.
#[inline(always)]
fn number(answer: Result<impl Quantity>) -> f64 {
    match answer {
        Ok(quantity) => quantity.si(),
        Err(error) => {
            std::mem::forget(error);
            f64::NAN
        }
    }
}

case!(wheel_rate(k = 40e3, r = 0.8, a = 0.3) -> f64,
number(spring::wheel_rate(LinearStiffness::from_si(k), Ratio::from_si(r), Angle::from_si(a))),
{
    if !(positive(k) && (LEAST_MAGNITUDE..=1.5).contains(&r) && (-FRAC_PI_2..=FRAC_PI_2).contains(&a)) {
        return f64::NAN;
    }
    let along = r * sine_cosine(a).1;
    k * along * along
});

case!(ride_rate(k = 25e3, t = 220e3) -> f64,
    number(spring::ride_rate(LinearStiffness::from_si(k), LinearStiffness::from_si(t))),
    { if positive(k) && positive(t) { k * t / (k + t) } else { f64::NAN } });

case!(natural_frequency(k = 25e3, m = 380.0) -> f64,
    number(spring::natural_frequency(LinearStiffness::from_si(k), Mass::from_si(m))),
    { if positive(k) && positive(m) { (k / m).sqrt() / TAU } else { f64::NAN } });

case!(road_speed(w = 300.0, g = 1.4, f = 3.9, r = 0.33) -> f64,
number(driveline::road_speed(AngularVelocity::from_si(w), Ratio::from_si(g), Ratio::from_si(f), Length::from_si(r))),
{
    let valid = (0.0..=100e3).contains(&w)
        && (0.001..=1000.0).contains(&g)
        && (0.001..=1000.0).contains(&f)
        && (0.001..=100.0).contains(&r);
    if valid { w * r / (g * f) } else { f64::NAN }
});

case!(water_boiling_temperature(p = 200e3) -> f64, boiling_typed(p), { boiling_plain(p) });

// The whole `Result`, its errors included.
case!(ride_rate_with_its_error(k = 25e3, t = 220e3) -> Result<f64>,
spring::ride_rate(LinearStiffness::from_si(k), LinearStiffness::from_si(t)).map(|y| y.si()),
{
    static WHEEL: Limit = Limit {
        argument: "wheel_rate",
        lower: 0.0,
        upper: f64::INFINITY,
        lower_open: true,
        upper_open: true,
        source: "definition: both springs carry the load",
    };
    static TYRE: Limit = Limit { argument: "tyre_rate", source: WHEEL.source, ..WHEEL };
    let kind = LinearStiffness::KIND;
    if !(positive(k) && positive(t)) {
        let (limit, value) = if positive(k) { (&TYRE, t) } else { (&WHEEL, k) };
        return Err(Error::OutOfRange { limit, value, kind });
    }
    Ok(k * t / (k + t))
});

#[inline(always)]
fn boiling_typed(p: f64) -> f64 {
    number(fluid::water_boiling_temperature(AbsolutePressure::from_si(p)))
}

/// IAPWS R7-97(2012), eq. 31 and Table 34.
#[inline(always)]
fn boiling_plain(p: f64) -> f64 {
    if !(611.213..=22.064e6).contains(&p) {
        return f64::NAN;
    }
    let beta2 = (p * 1e-6).sqrt();
    let beta = beta2.sqrt();
    let e = beta2 + -0.170_738_469_400_92e2 * beta + 0.149_151_086_135_30e2;
    let f = 0.116_705_214_527_67e4 * beta2 + 0.120_208_247_024_70e5 * beta + -0.482_326_573_615_91e4;
    let g = -0.724_213_167_032_06e6 * beta2 + -0.323_255_503_223_33e7 * beta + 0.405_113_405_420_57e6;
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = 0.650_175_348_447_98e3 + d;
    (sum - (sum * sum - 4.0 * (-0.238_555_575_678_49 + 0.650_175_348_447_98e3 * d)).sqrt()) / 2.0
}

type Case = (&'static str, fn(&str, usize), fn() -> bool);
const CASES: [Case; 6] = [
    ("wheel_rate", wheel_rate::count, wheel_rate::is_one_function),
    ("ride_rate", ride_rate::count, ride_rate::is_one_function),
    ("ride_rate_with_its_error", ride_rate_with_its_error::count, ride_rate_with_its_error::is_one_function),
    ("natural_frequency", natural_frequency::count, natural_frequency::is_one_function),
    ("road_speed", road_speed::count, road_speed::is_one_function),
    (
        "water_boiling_temperature",
        water_boiling_temperature::count,
        water_boiling_temperature::is_one_function,
    ),
];

/// Nanoseconds per element of a plain loop over a million pressures, a line each round.
fn time_loop(rounds: usize) {
    let pressures: Vec<f64> = (0..1_000_000).map(|i| 1e4 + f64::from(i)).collect();
    let mut temperatures = vec![0.0; pressures.len()];
    for _ in 0..=rounds {
        let start = Instant::now();
        for (t, p) in temperatures.iter_mut().zip(&pressures) {
            *t = boiling_plain(*p);
        }
        let time = start.elapsed();
        black_box(&mut temperatures);
        println!("{}", time.as_nanos() as f64 / pressures.len() as f64);
    }
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words[..] {
        ["cases"] => {
            for (name, _, is_one_function) in CASES {
                println!("{name} {}", if is_one_function() { "one" } else { "two" });
            }
        }
        ["count", case, which, calls] => {
            let (Some((_, count, _)), Ok(calls)) =
                (CASES.iter().find(|(name, ..)| *name == case), calls.parse())
            else {
                return ExitCode::FAILURE;
            };
            count(which, calls);
        }
        ["loop", rounds] => time_loop(rounds.parse().unwrap_or(5)),
        _ => return ExitCode::FAILURE,
    }
    ExitCode::SUCCESS
}
