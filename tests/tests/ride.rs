//! Motions, responses and modes of the cars beside those of SciPy (`scripts/ride.py`, `scripts/ride_vehicles.py`), row by row, and what one car must have in common with another.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::ride::{FullCar, HalfCar, NonlinearQuarterCar, QuarterCar};
use axlewright::units::{Frequency, Length, RoadRoughness, Time, Velocity};
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

/// Two cars: one with a bump stop, and one, `held`, with a strap that ends droop and a damper that is measured to 0.5 m/s and goes straight on beyond.
fn nonlinear(road: &str, held: bool) -> Table {
    let point = |(velocity, force): (f64, f64)| json!({ "velocity": format!("{velocity} m/s"), "force": format!("{force} N") });
    let damper: Vec<Value> =
        [(-4.0, -5200.0), (-0.5, -1500.0), (-0.1, -700.0), (0.1, 250.0), (0.5, 600.0), (4.0, 2500.0)]
            .map(point)
            .into();
    let stop = |(compression, force): (f64, f64)| json!({ "compression": format!("{compression} m"), "force": format!("{force} N") });
    let points: Vec<Value> = [(0.02, 1500.0), (0.04, 7000.0), (0.12, 90e3)].map(stop).into();
    let strap: Vec<Value> = [(0.01, 800.0), (0.03, 6000.0), (0.08, 60e3)].map(stop).into();
    let mut document = json!({
        "sprung_mass": "300 kg", "unsprung_mass": "40 kg", "wheel_rate": "22 N/mm", "tyre_rate": "190 N/mm",
        "damper": { "gas_force": "0 N", "points": damper }, "damper_motion_ratio": "1",
        "bump_stop": { "bump_remaining": "30 mm", "motion_ratio": "1", "stop": { "points": points } },
    });
    if held {
        document["damper"]["points"] = damper[1..5].into();
        document["bump_stop"] = "none".into();
        document["droop_stop"] =
            json!({ "droop_remaining": "20 mm", "motion_ratio": "1", "stop": { "points": strap } });
        document["damper_beyond_points"] = "extend".into();
    }
    along!(NonlinearQuarterCar::from_text(&document.to_string()).unwrap(), road)
}

/// Every tenth row; the largest difference over the largest value.
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
    assert_eq!(motions.len(), 16);
    let mut compared = 0;
    for motion in &motions {
        let (road, model) = (motion["road"].as_str().unwrap(), motion["model"].as_str().unwrap());
        let (table, allowed) = match model {
            "linear" => (linear(motion["tyre_damping"].as_f64().unwrap(), road), 1e-9),
            _ => (nonlinear(road, model == "held"), 2e-6),
        };
        for column in ["body_displacement", "wheel_displacement", "body_acceleration"] {
            let off = off(&table, motion, column);
            println!("{model} {road} {} {column}: {off:.1e} of the largest", motion["tyre_damping"]);
            assert!(off < allowed, "{model} {road} {column}: off by {off:e} of the largest");
            assert!(off > 0.0, "{model} {road} {column}: compared with itself");
            compared += 1;
        }
    }
    assert_eq!(compared, 48);
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

const SPEED: f64 = 10.0;
const DISTANCES: [f64; 6] = [0.0, 0.3, 1.1, 1.25, 4.0, 15.0];
const LEFT: [f64; 6] = [0.0, 0.02, -0.01, 0.03, 0.0, 0.0];
const RIGHT: [f64; 6] = [0.0, 0.0, 0.015, 0.0, -0.01, 0.0];

/// Motion of a vehicle over the roads of the script.
fn vehicle_motion(vehicle: &Value, road: &str) -> Table {
    let document = vehicle["document"].to_string();
    let (length, speed) = (Length::from_si, Velocity::from_si(SPEED));
    let (end, step) = (Time::from_si(1.5), Time::from_si(0.005));
    let (distances, left, right) = (DISTANCES.map(length), LEFT.map(length), RIGHT.map(length));
    if vehicle["full"].as_bool().unwrap() {
        let car = FullCar::from_text(&document).unwrap();
        match road {
            "step" => car.step(length(0.04), length(0.0), speed, end, step),
            "ramp" => car.ramp(length(0.08), length(0.03), length(0.3), speed, end, step),
            "half_sine" => car.half_sine(length(0.05), length(0.05), length(0.5), speed, end, step),
            "profile" => car.profile(speed, step, &distances, &left, &right),
            other => panic!("no road {other}"),
        }
    } else {
        let car = HalfCar::from_text(&document).unwrap();
        match road {
            "step" => car.step(length(0.04), speed, end, step),
            "ramp" => car.ramp(length(0.08), length(0.3), speed, end, step),
            "half_sine" => car.half_sine(length(0.05), length(0.5), speed, end, step),
            "profile" => car.profile(speed, step, &distances, &left),
            other => panic!("no road {other}"),
        }
    }
    .unwrap()
}

fn vehicles() -> Vec<Value> {
    let vehicles: Vec<Value> = serde_json::from_str(include_str!("../ride_vehicles.json")).unwrap();
    assert_eq!(vehicles.len(), 4);
    vehicles
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn motions_of_vehicles_are_those_of_scipy() {
    let mut compared = 0;
    for vehicle in vehicles() {
        for (road, wanted) in vehicle["motions"].as_object().unwrap() {
            let table = vehicle_motion(&vehicle, road);
            for (column, wanted) in wanted.as_object().unwrap() {
                let wanted: Vec<f64> = wanted.as_array().unwrap().iter().map(number).collect();
                let found = table.numbers(column).unwrap();
                assert_eq!((found.len(), wanted.len()), (301, 31));
                let size = wanted.iter().fold(0.0_f64, |size, x| size.max(x.abs()));
                // Where both sides meet the same, the body does not roll.
                let size = if size < 1e-9 { 1.0 } else { size };
                // A step is seen from either side at the instant itself: under the front wheels at 0.
                let off = found.iter().step_by(10).zip(&wanted).skip(1).map(|(a, b)| (a - b).abs());
                let off = off.fold(0.0, f64::max) / size;
                assert!(off < 1e-8, "{} {road} {column}: off by {off:e} of the largest", vehicle["name"]);
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 2 * 4 * (5 + 8));
}

#[test]
fn modes_and_responses_of_vehicles_are_those_of_scipy() {
    let near = |found: f64, wanted: f64, what: &str| {
        assert!((found - wanted).abs() < 1e-8 * wanted.abs() + 1e-11, "{what}: {found} {wanted}");
    };
    for vehicle in vehicles() {
        let (document, speed) = (vehicle["document"].to_string(), Velocity::from_si(SPEED));
        let full = vehicle["full"].as_bool().unwrap();
        let amplitude = Length::from_si(1.0);
        let response = |frequency: f64, against: bool| {
            let frequency = [Frequency::from_si(frequency)];
            if full {
                let car = FullCar::from_text(&document).unwrap();
                if against {
                    car.roll_response(amplitude, speed, &frequency)
                } else {
                    car.frequency_response(amplitude, speed, &frequency)
                }
            } else {
                HalfCar::from_text(&document).unwrap().frequency_response(amplitude, speed, &frequency)
            }
            .unwrap()
        };
        for wanted in vehicle["responses"].as_array().unwrap() {
            let table = response(number(&wanted["frequency"]), wanted["against"].as_bool().unwrap());
            for (column, wanted) in wanted.as_object().unwrap().iter().filter(|(key, _)| *key != "against") {
                near(table.numbers(column).unwrap()[0], number(wanted), column);
            }
        }
        let modes = if full {
            FullCar::from_text(&document).unwrap().modes()
        } else {
            HalfCar::from_text(&document).unwrap().modes()
        };
        let (modes, wanted) = (modes.unwrap(), vehicle["modes"].as_array().unwrap());
        assert_eq!((modes.rows(), wanted.len()), if full { (7, 7) } else { (4, 4) });
        let roll: &[&str] = if full { &["roll_share"] } else { &[] };
        let shares = [&["bounce_share", "pitch_share"], roll, &["front_share", "rear_share"]].concat();
        for (row, mode) in wanted.iter().enumerate() {
            let at = |column: &str| modes.numbers(column).unwrap()[row];
            near(at("frequency"), number(&mode["frequency"]), "frequency");
            near(at("damping_ratio"), number(&mode["damping_ratio"]), "damping_ratio");
            for (share, wanted) in shares.iter().zip(mode["shares"].as_array().unwrap()) {
                near(at(share), number(wanted), share);
            }
        }
        let words: Vec<&str> = (0..modes.rows()).map(|row| modes.word("mode", row).unwrap()).collect();
        assert!(words.contains(&"bounce") && words.contains(&"pitch"), "{words:?}");
        assert!(words.contains(&"front wheels") && words.contains(&"rear wheels"), "{words:?}");
        assert_eq!(words.contains(&"roll"), full);
    }
}

/// The largest difference of a column of two tables over the largest value of the first.
fn apart(one: &[f64], other: &[f64], scale: f64) -> f64 {
    assert_eq!(one.len(), other.len());
    let size = one.iter().fold(0.0_f64, |size, x| size.max(x.abs()));
    assert!(size > 0.0);
    one.iter().zip(other).map(|(a, b)| (a - scale * b).abs()).fold(0.0, f64::max) / size
}

/// A full car is a half car if both tracks meet the same road; on a random road, in the limit of a narrow track.
#[test]
fn a_full_car_on_one_track_is_a_half_car() {
    for pair in vehicles().chunks_exact(2) {
        let (mut half, mut full) = (pair[0]["document"].clone(), pair[1]["document"].clone());
        half["seat_forward"] = full["seat_forward"].clone();
        full.as_object_mut().unwrap().remove("seat_left");
        let half = HalfCar::from_text(&half.to_string()).unwrap();
        let length = Length::from_si;
        let (speed, end, step) = (Velocity::from_si(SPEED), Time::from_si(1.5), Time::from_si(0.005));
        let one = half.half_sine(length(0.05), length(0.5), speed, end, step).unwrap();
        let wide = FullCar::from_text(&full.to_string()).unwrap();
        let two = wide.half_sine(length(0.05), length(0.05), length(0.5), speed, end, step).unwrap();
        for (column, other, scale) in [
            ("body_displacement", "body_displacement", 1.0),
            ("pitch", "pitch", 1.0),
            ("seat_acceleration", "seat_acceleration", 1.0),
            ("front_suspension_travel", "front_right_suspension_travel", 1.0),
            ("rear_tyre_load_variation", "rear_left_tyre_load_variation", 2.0),
        ] {
            let off = apart(one.numbers(column).unwrap(), two.numbers(other).unwrap(), scale);
            assert!(off < 1e-9, "{column}: {off:e}");
        }
        assert!(two.numbers("roll").unwrap().iter().all(|roll| roll.abs() < 1e-12));
        for track in ["front_track", "rear_track"] {
            full[track] = json!("10 mm");
        }
        let narrow = FullCar::from_text(&full.to_string()).unwrap();
        let (road, waves) = (RoadRoughness::from_si(64e-6), (length(0.5), length(90.0)));
        let of_half = half.on_road(road, speed, waves.0, waves.1).unwrap();
        let of_narrow = narrow.on_road(road, speed, waves.0, waves.1).unwrap();
        let of_wide = wide.on_road(road, speed, waves.0, waves.1).unwrap();
        let near = |a: f64, b: f64| (a / b - 1.0).abs() < 2e-3;
        assert!(near(of_narrow.weighted_acceleration.si(), of_half.weighted_acceleration.si()));
        assert!(near(of_narrow.rear_tyre_load_share.si(), of_half.rear_tyre_load_share.si()));
        // Two tracks that differ shake the middle less than one under both.
        assert!(of_wide.body_acceleration < of_half.body_acceleration);
    }
}

/// With a dynamic index of 1 each end of a half car is a quarter car of its own.
#[test]
fn a_half_car_of_dynamic_index_one_is_two_quarter_cars() {
    let (mass, a, b) = (1200.0, 1.1, 1.5);
    let wheel = |rate: f64| {
        json!({ "unsprung_mass": "40 kg", "wheel_rate": format!("{rate} N/m"), "wheel_damping": "1500 N·s/m",
            "tyre_rate": "190 N/mm", "tyre_damping": "60 N·s/m" })
    };
    let document = json!({
        "sprung_mass": format!("{mass} kg"), "pitch_inertia": format!("{} kg·m²", mass * a * b),
        "front_distance": format!("{a} m"), "rear_distance": format!("{b} m"), "front": wheel(22e3), "rear": wheel(27e3),
        "seat_forward": format!("{a} m"),
    });
    let half = HalfCar::from_text(&document.to_string()).unwrap();
    let corner = |share: f64, rate: f64| {
        let mut document = wheel(rate);
        document["sprung_mass"] = json!(format!("{} kg", mass * share / (a + b) / 2.0));
        QuarterCar::from_text(&document.to_string()).unwrap()
    };
    let length = Length::from_si;
    let (height, speed, step) = (length(0.05), Velocity::from_si(26.0), Time::from_si(0.005));
    // The rear meets the step after 20 rows.
    let whole = half.step(height, speed, Time::from_si(1.5), step).unwrap();
    let front = corner(b, 22e3).step(height, Time::from_si(1.5), step).unwrap();
    let rear = corner(a, 27e3).step(height, Time::from_si(1.4), step).unwrap();
    for (column, quarter, of, from, scale) in [
        ("front_suspension_travel", &front, "suspension_travel", 0, 1.0),
        ("front_tyre_load_variation", &front, "tyre_load_variation", 0, 2.0),
        ("seat_acceleration", &front, "body_acceleration", 0, 1.0),
        ("rear_suspension_travel", &rear, "suspension_travel", 20, 1.0),
        ("rear_tyre_load_variation", &rear, "tyre_load_variation", 20, 2.0),
    ] {
        let off = apart(&whole.numbers(column).unwrap()[from..], quarter.numbers(of).unwrap(), scale);
        assert!(off < 1e-9, "{column}: {off:e}");
    }
    let road = RoadRoughness::from_si(64e-6);
    let (on_half, on_quarter) = (
        half.on_road(road, speed, length(0.35), length(91.0)).unwrap(),
        corner(b, 22e3).on_road(road, speed, length(0.35), length(91.0)).unwrap(),
    );
    for (one, other) in [
        (on_half.seat_acceleration.si(), on_quarter.body_acceleration.si()),
        (on_half.weighted_acceleration.si(), on_quarter.weighted_acceleration.si()),
        (on_half.front_tyre_load_share.si(), on_quarter.tyre_load_share.si()),
    ] {
        assert!((one / other - 1.0).abs() < 1e-7, "{one} {other}");
    }
}
