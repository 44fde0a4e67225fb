//! The build sheet for `cargo xtask bench`: one assessment, a million rows of every finding, choosing among a thousand million
//! combinations, and what a second thread gives beside what it gives to a plain loop. A line a measurement: item, ours, peer, unit, what is wanted, with tabs between.

use axlewright::Result;
use axlewright::sheet::{Axis, Sheet, WhatIf, choose};
use axlewright_tests::offers::{exact_dunlin, ten_kinds_of_eight_parts};
use std::hint::black_box;
use std::time::Instant;

const SHEET: &str = include_str!("../../examples/sheets/dunlin.toml");
const ROWS: usize = 1_000_000;
const OUTPUTS: [&str; 10] = [
    "front.wheel_rate",
    "front.ride_rate",
    "front.natural_frequency",
    "front.damping_ratio",
    "front.droop_remaining",
    "front.bump_remaining",
    "front.spring.bind_margin",
    "driveline.cruise_engine_speed",
    "gearbox.output_torque",
    "coolant.boiling_temperature",
];

fn main() -> Result<()> {
    let sheet = Sheet::from_text(SHEET)?;
    let assessment = median(41, || {
        let start = Instant::now();
        (0..50).for_each(|_| drop(black_box(sheet.assess())));
        start.elapsed().as_secs_f64() / 50.0
    });
    println!("assessment of the Dunlin, one core\t{:.3}\t\tµs\tbelow 50", assessment * 1e6);

    let mut drawn = Sheet::from_text(include_str!("../../examples/sheets/dunlin_measured.toml"))?;
    drawn.remove("use.road")?;
    let both = drawn.clone();
    // Without one of its points the rear is not drawn; what follows from them is written.
    drawn.remove("rear.lower_links.body.x")?;
    for (path, text) in [
        ("rear.roll_centre_height", "380 mm"),
        ("rear.spring_base", "970 mm"),
        ("rear.anti_roll_bar.motion_ratio", "0.69"),
        ("rear.spring.motion_ratio", "1.02"),
        ("rear.spring.droop_length", "375 mm"),
        ("rear.damper.mounting", "apart"),
        ("rear.damper.motion_ratio", "1.02"),
    ] {
        drawn.set(path, text)?;
    }
    let dray = Sheet::from_text(include_str!("../../examples/sheets/dray.toml"))?;
    for (name, sheet, wanted) in [
        ("assessment with the front axle drawn", &drawn, "below 2000"),
        ("assessment with both axles, one of them live, drawn", &both, "below 1000"),
        ("assessment of the Dray on its leaf springs", &dray, "below 2000"),
    ] {
        let assessment = median(11, || {
            let start = Instant::now();
            (0..10).for_each(|_| drop(black_box(sheet.assess())));
            start.elapsed().as_secs_f64() / 10.0
        });
        println!("{name}, one core\t{:.3}\t\tµs\t{wanted}", assessment * 1e6);
    }

    let all = sheet.what_if(axes()?, true, &[])?;
    let every = median(3, || seconds(&all, None));
    println!("what-if, 1e6 rows, every finding, all cores\t{every:.3}\t\ts\tbelow 60");

    let van = exact_dunlin()?;
    let (list, requirements) = ten_kinds_of_eight_parts()?;
    choose(&van, &list, &requirements, 1000, &mut |_| true)?;
    let chosen = median(3, || {
        let start = Instant::now();
        drop(black_box(choose(&van, &list, &requirements, 1000, &mut |_| true)));
        start.elapsed().as_secs_f64()
    });
    println!("choosing among ten kinds of eight parts, all cores\t{chosen:.3}\t\ts\tbelow 20");

    let ten = sheet.what_if(axes()?, true, &OUTPUTS)?;
    let mut lost = Vec::new();
    for _ in 0..9 {
        let [one, two] = [1, 2].map(|threads| seconds(&ten, Some(threads)));
        let [plain, both] = [1, 2].map(arithmetic);
        lost.push(1.0 - (one / two) / (plain / both));
    }
    let lost = middle(lost);
    println!(
        "what a second thread gives less to what-if than to a plain loop\t{:.3}\t\t\tbelow 0.1",
        lost.max(0.0)
    );
    Ok(())
}

/// Four lines that change in every row, in no order.
fn axes() -> Result<Vec<Axis>> {
    let spread = |low: f64, high: f64, step: usize| -> Vec<f64> {
        (0..ROWS).map(|row| low + (high - low) * ((row * step % ROWS) as f64 / ROWS as f64)).collect()
    };
    Ok(vec![
        Axis::numbers("front.spring.rate", &spread(7e4, 1.2e5, 7919))?,
        Axis::numbers("front.spring.motion_ratio", &spread(0.5, 0.7, 104_729))?,
        Axis::numbers("final_drive.ratio", &spread(3.0, 5.0, 1_299_709))?,
        Axis::numbers("coolant.header_pressure", &spread(5e4, 1e5, 15_485_863))?,
    ])
}

fn seconds(what_if: &WhatIf, threads: Option<usize>) -> f64 {
    let start = Instant::now();
    let table = what_if.table(0..ROWS, threads, &mut |_| true);
    let spent = start.elapsed().as_secs_f64();
    drop(black_box(table));
    spent
}

/// So many threads share a loop that touches no memory.
fn arithmetic(threads: u64) -> f64 {
    let start = Instant::now();
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                let mut x = black_box(1.000_000_1_f64);
                (0..240_000_000 / threads).for_each(|_| x = x.mul_add(0.999_999, 1e-7));
                black_box(x);
            });
        }
    });
    start.elapsed().as_secs_f64()
}

fn median(rounds: usize, mut measure: impl FnMut() -> f64) -> f64 {
    measure();
    middle((0..rounds).map(|_| measure()).collect())
}

fn middle(mut of: Vec<f64>) -> f64 {
    of.sort_by(f64::total_cmp);
    of[of.len() / 2]
}
