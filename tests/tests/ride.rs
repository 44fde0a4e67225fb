//! Motions of a quarter car beside those that SciPy integrated (`scripts/ride.py`), row by row.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::ride::{NonlinearQuarterCar, QuarterCar};
use axlewright::units::{Length, Quantity, Time, Velocity};
use axlewright::{Model, Table};
use serde_json::{Value, json};

macro_rules! along {
    ($car:expr, $road:expr) => {{
        let (car, length, time) = ($car, Length::from_si, Time::from_si);
        let (end, step) = (time(2.0), time(0.005));
        match $road {
            "step" => car.step(length(0.05), end, step),
            "ramp" => car.ramp(length(0.08), length(0.5), Velocity::from_si(10.0), end, step),
            "half_sine" => car.half_sine(length(0.06), length(0.83), Velocity::from_si(10.0), end, step),
            "profile" => car.profile(
                Velocity::from_si(4.5),
                step,
                &[0.0, 0.3, 1.1, 1.25, 4.0, 9.0].map(length),
                &[0.0, 0.02, -0.01, 0.03, 0.0, 0.0].map(length),
            ),
            other => panic!("no road {other}"),
        }
        .unwrap()
    }};
}

fn linear(tyre_damping: f64, road: &str) -> Table {
    let document = json!({
        "sprung_mass": "300 kg", "unsprung_mass": "40 kg", "wheel_rate": "22 N/mm", "wheel_damping": "1500 N·s/m",
        "tyre_rate": "190 N/mm", "tyre_damping": format!("{tyre_damping} N·s/m"),
    });
    along!(QuarterCar::from_text(&document.to_string()).unwrap(), road)
}

fn nonlinear(road: &str) -> Table {
    let point = |(velocity, force): (f64, f64)| json!({ "velocity": format!("{velocity} m/s"), "force": format!("{force} N") });
    let damper: Vec<Value> =
        [(-4.0, -5200.0), (-0.5, -1500.0), (-0.1, -700.0), (0.1, 250.0), (0.5, 600.0), (4.0, 2500.0)]
            .map(point)
            .into();
    let stop = |(compression, force): (f64, f64)| json!({ "compression": format!("{compression} m"), "force": format!("{force} N") });
    let points: Vec<Value> = [(0.02, 1500.0), (0.04, 7000.0), (0.12, 90e3)].map(stop).into();
    let document = json!({
        "sprung_mass": "300 kg", "unsprung_mass": "40 kg", "wheel_rate": "22 N/mm", "tyre_rate": "190 N/mm",
        "damper": damper, "bump_stop": { "bump_left": "30 mm", "points": points },
    });
    along!(NonlinearQuarterCar::from_text(&document.to_string()).unwrap(), road)
}

/// Every tenth row; the greatest difference over the greatest value.
fn off(table: &Table, wanted: &Value, column: &str) -> f64 {
    let wanted: Vec<f64> = wanted[column].as_array().unwrap().iter().map(|x| x.as_f64().unwrap()).collect();
    let found = table.numbers(column).unwrap();
    assert_eq!((found.len(), wanted.len()), (401, 41));
    let size = wanted.iter().fold(0.0_f64, |size, x| size.max(x.abs()));
    // What a step does to the acceleration at the instant itself is seen from either side.
    let pairs = found.iter().step_by(10).zip(&wanted).skip(1);
    pairs.map(|(found, wanted)| (found - wanted).abs()).fold(0.0, f64::max) / size
}

#[test]
fn motions_are_those_of_scipy() {
    let motions: Vec<Value> = serde_json::from_str(include_str!("../ride_motion.json")).unwrap();
    assert_eq!(motions.len(), 12);
    let mut compared = 0;
    for motion in &motions {
        let (road, model) = (motion["road"].as_str().unwrap(), motion["model"].as_str().unwrap());
        let (table, allowed) = match model {
            "linear" => (linear(motion["tyre_damping"].as_f64().unwrap(), road), 1e-9),
            _ => (nonlinear(road), 2e-6),
        };
        for column in ["body_displacement", "wheel_displacement", "body_acceleration"] {
            let off = off(&table, motion, column);
            println!("{model} {road} {} {column}: {off:.1e} of the greatest", motion["tyre_damping"]);
            assert!(off < allowed, "{model} {road} {column}: off by {off:e} of the greatest");
            assert!(off > 0.0, "{model} {road} {column}: compared with itself");
            compared += 1;
        }
    }
    assert_eq!(compared, 36);
}

/// Case c003: python-control 0.10.2 `step_response` against `solve_ivp`, a step of 50 mm.
#[test]
fn a_step_of_fifty_millimetres() {
    let table = linear(0.0, "step");
    let body = table.numbers("body_displacement").unwrap();
    for (row, wanted) in [
        (10, 0.010956423536885614),
        (20, 0.0283119905914655),
        (50, 0.07021631412622856),
        (100, 0.05879456772806068),
        (200, 0.052481949401535166),
        (400, 0.05078557377313261),
    ] {
        assert!((body[row] - wanted).abs() < 1e-7, "{row}: {} {wanted}", body[row]);
    }
}
