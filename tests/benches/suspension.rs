//! A double wishbone for `bindings/python/benches/suspension.py`: seconds of a sweep through 201 positions, and of a hundred thousand
//! geometries on all cores.

use axlewright::suspension::{DoubleWishbone, Point};
use axlewright::units::{Length, mm};
use axlewright::{Model, Result, Value};
use std::hint::black_box;
use std::process::ExitCode;
use std::time::Instant;

const DUNLIN: &str = include_str!("../../examples/sheets/dunlin_front_wishbone.toml");
const GEOMETRIES: usize = 100_000;

/// So many positions from 60 mm of droop to 60 mm of bump.
fn travel(count: usize) -> Vec<Length> {
    (0..count).map(|place| Length::of::<mm>(-60.0 + 120.0 * place as f64 / (count - 1) as f64)).collect()
}

/// The median of some sweeps.
fn sweep(model: &DoubleWishbone) -> Result<f64> {
    let (travel, middle) = (travel(201), [Length::of::<mm>(0.0)]);
    let mut times = Vec::new();
    for _ in 0..101 {
        let start = Instant::now();
        let _ = black_box(model.table(&travel, &middle)?);
        times.push(start.elapsed().as_secs_f64());
    }
    times.sort_by(f64::total_cmp);
    Ok(times[times.len() / 2])
}

/// A linkage with its three joints moved by up to 15 mm along each axis, never twice to the same places.
fn moved(model: &DoubleWishbone, number: usize) -> DoubleWishbone {
    let mut other = model.clone();
    let mut share = (number as f64 + 0.5) / GEOMETRIES as f64;
    let Point { x, y, z } = &mut other.tie_rod.outer;
    let (upper, lower) = (&mut other.upper_arm.ball_joint, &mut other.lower_arm.ball_joint);
    for value in [x, y, z, &mut upper.x, &mut upper.y, &mut upper.z, &mut lower.x, &mut lower.y, &mut lower.z]
    {
        share = (share * 7919.0 + 0.618).fract();
        *value = Value::new(value.quantity + Length::of::<mm>(30.0 * share - 15.0));
    }
    other
}

/// All cores share the geometries; what a user would write.
fn geometries(model: &DoubleWishbone) -> f64 {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let (travel, middle) = (travel(21), [Length::of::<mm>(0.0)]);
    let start = Instant::now();
    let swept: usize = std::thread::scope(|scope| {
        let work = |first: usize| {
            let (travel, middle) = (&travel, &middle);
            scope.spawn(move || {
                let tables =
                    (first..GEOMETRIES).step_by(threads).map(|n| moved(model, n).table(travel, middle));
                tables.filter_map(Result::ok).map(|table| black_box(table).rows()).sum::<usize>()
            })
        };
        let workers: Vec<_> = (0..threads).map(work).collect();
        workers.into_iter().filter_map(|worker| worker.join().ok()).sum()
    });
    assert_eq!(swept, 21 * GEOMETRIES, "every geometry is one that moves");
    start.elapsed().as_secs_f64()
}

fn main() -> ExitCode {
    let Ok(model) = DoubleWishbone::from_text(DUNLIN) else { return ExitCode::FAILURE };
    match std::env::args().nth(1).as_deref() {
        Some("sweep") => match sweep(&model) {
            Ok(seconds) => println!("{seconds}"),
            Err(_) => return ExitCode::FAILURE,
        },
        Some("geometries") => println!("{}", geometries(&model)),
        _ => return ExitCode::FAILURE,
    }
    ExitCode::SUCCESS
}
