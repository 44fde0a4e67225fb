//! The roll balance against sums by hand, and against what cannot be.

use super::*;
use crate::suspension::{axle_load_transfer, roll_gradient};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn axle(roll_centre: f64, unsprung: f64, rate: f64, base: Option<f64>, tyre: f64, bar: f64) -> RollAxle {
    RollAxle {
        track: Value::new(Length::from_si(1.5)),
        roll_centre_height: Value::new(Length::from_si(roll_centre)),
        unsprung_mass: Value::new(Mass::from_si(unsprung)),
        unsprung_height: Value::new(Length::from_si(0.34)),
        spring_rate: Value::new(LinearStiffness::from_si(rate)),
        spring_base: base.map(|base| Value::new(Length::from_si(base))),
        tyre_rate: Value::new(LinearStiffness::from_si(tyre)),
        bar_rate: Stated::Given(Value::new(LinearStiffness::from_si(bar))),
        bar_motion_ratio: Some(Value::new(Ratio::from_si(0.6))),
    }
}

fn van(tyre: f64, unsprung: f64, bars: [f64; 2]) -> RollBalance {
    RollBalance {
        sprung_mass: Value::new(Mass::from_si(2000.0)),
        sprung_height: Value::new(Length::from_si(0.78)),
        behind_front_axle: Value::new(Length::from_si(1.25)),
        wheelbase: Value::new(Length::from_si(2.6)),
        front: axle(0.06, 0.7 * unsprung, 28e3, None, tyre, bars[0]),
        rear: axle(0.38, unsprung, 38e3, Some(1.0), tyre, bars[1]),
    }
}

const TURN: f64 = 4.0;

fn turn() -> Acceleration {
    Acceleration::from_si(TURN)
}

#[test]
fn on_stiff_tyres_it_is_the_textbook() {
    let van = van(1e9, 0.0, [80e3, 20e3]);
    let on = van.balance().unwrap();
    let [front, rear] = [on.front_suspension_stiffness, on.rear_suspension_stiffness];
    let arm = Length::from_si(van.overturning().unwrap() / 2000.0);
    let textbook = roll_gradient(van.sprung_mass.quantity, arm, front, rear).unwrap();
    assert_relative_eq!(on.roll_gradient.si(), textbook.si(), max_relative = 1e-3);
    let roll = Angle::from_si(on.roll_gradient.si() * TURN);
    let (none, on_axle) = (Mass::from_si(0.0), Mass::from_si(2000.0 * (1.0 - 1.25 / 2.6)));
    let (height, track) = (Length::from_si(0.06), Length::from_si(1.5));
    let axle = axle_load_transfer(none, height, on_axle, height, front, roll, track, turn()).unwrap();
    let in_turn = van.in_turn(turn()).unwrap();
    assert_relative_eq!(in_turn.front_load_transfer.si(), axle.load_transfer.si(), max_relative = 1e-3);
    assert_relative_eq!(in_turn.front_elastic_transfer.si(), axle.elastic_transfer.si(), max_relative = 1e-3);
}

#[test]
fn the_whole_is_in_equilibrium_about_the_ground() {
    // Inertia forces at their heights, weights at where they have moved to, wheel loads: no law of the axles in it.
    let van = van(250e3, 190.0, [80e3, 20e3]);
    let (on, axles) = (van.in_turn(turn()).unwrap(), van.axles().unwrap());
    let held = 1.5 * (on.front_load_transfer.si() + on.rear_load_transfer.si());
    let leans = [on.front_load_transfer, on.rear_load_transfer]
        .iter()
        .zip(&axles)
        .map(|(transfer, axle)| transfer.si() * axle.track / axle.tyres)
        .collect::<Vec<_>>();
    let rear = 1.25 / 2.6;
    let (centre_front, centre_rear) = (0.06 * (1.0 - rear), 0.38 * rear);
    let moved = centre_front * leans[0]
        + centre_rear * leans[1]
        + (0.78 - centre_front - centre_rear) * on.roll_angle.si();
    let unsprung =
        0.34 * TURN * (0.7 + 1.0) * 190.0 + STANDARD_GRAVITY * 190.0 * 0.34 * (0.7 * leans[0] + leans[1]);
    let overturning = 2000.0 * (TURN * 0.78 + STANDARD_GRAVITY * moved) + unsprung;
    assert_relative_eq!(held, overturning, max_relative = 1e-12);
}

#[test]
fn what_cannot_be_is_named() {
    let refusal = |changed: RollBalance| changed.check().unwrap_err().to_string();
    let full = van(250e3, 190.0, [80e3, 20e3]);
    assert!(full.check().is_ok());
    let mut changed = full.clone();
    changed.rear.track = Value::new(Length::from_si(0.0));
    assert!(refusal(changed).starts_with("rear: track = 0"));
    let mut changed = full.clone();
    changed.front.bar_motion_ratio = None;
    assert!(refusal(changed).starts_with("front: bar_motion_ratio is missing"));
    let mut changed = full.clone();
    changed.sprung_height = Value::new(Length::from_si(20.0));
    assert!(refusal(changed).contains("too soft"));
    let mut changed = full.clone();
    changed.rear.tyre_rate = Value::new(LinearStiffness::from_si(1000.0));
    assert!(refusal(changed).starts_with("tyre_rate of the rear axle"));
    let lifted = full.in_turn(Acceleration::from_si(30.0)).unwrap_err().to_string();
    assert!(lifted.starts_with("lateral_acceleration = 30") && lifted.contains("lifts"), "{lifted}");
    let soft = full.bars_for(RollGradient::from_si(0.1), Ratio::from_si(0.55)).unwrap_err().to_string();
    assert!(soft.contains("springs are stiffer"), "{soft}");
    let stiff = full.bars_for(RollGradient::from_si(1e-4), Ratio::from_si(0.55)).unwrap_err().to_string();
    assert!(stiff.contains("tyres lean further"), "{stiff}");
    let mut bare = full;
    bare.front.bar_rate = Stated::Unknown;
    bare.front.bar_motion_ratio = None;
    let none = bare.front_bar_for_share(Ratio::from_si(0.6)).unwrap_err().to_string();
    assert!(none.starts_with("front.bar_motion_ratio"), "{none}");
}

#[test]
fn a_table_keeps_the_reason_of_a_refused_row() {
    let rates = [0.0, 80e3].map(LinearStiffness::from_si);
    let turns = [2.0, 30.0].map(Acceleration::from_si);
    let table = van(250e3, 190.0, [0.0, 0.0]).table(&rates, &rates, &turns).unwrap();
    assert_eq!(table.rows(), 8);
    let share = table.numbers("front_share").unwrap();
    assert!(share[4] > share[0] && share[0] > share[2] && share[1].is_nan());
    assert!(table.reason(1).is_some_and(|error| error.to_string().contains("lifts")));
}

proptest! {
    #[test]
    fn bars_that_are_looked_for_give_what_was_wanted(front in 1e3f64..200e3, rear in 1e3f64..200e3, tyre in 150e3f64..500e3) {
        let fitted = van(tyre, 190.0, [front, rear]);
        let on = fitted.balance().unwrap();
        let close = |found: LinearStiffness, wanted: f64| (found.si() - wanted).abs() <= 1e-8 * (wanted + 1e5);
        let other = van(tyre, 190.0, [5.0, 7.0]);
        let both = other.bars_for(on.roll_gradient, on.front_share).unwrap();
        prop_assert!(close(both.front_bar_rate, front) && close(both.rear_bar_rate, rear), "{both:?}");
        let front_wrong = van(tyre, 190.0, [5.0, rear]);
        prop_assert!(close(front_wrong.front_bar_for_gradient(on.roll_gradient).unwrap(), front));
        prop_assert!(close(front_wrong.front_bar_for_share(on.front_share).unwrap(), front));
        let rear_wrong = van(tyre, 190.0, [front, 7.0]);
        prop_assert!(close(rear_wrong.rear_bar_for_gradient(on.roll_gradient).unwrap(), rear));
        prop_assert!(close(rear_wrong.rear_bar_for_share(on.front_share).unwrap(), rear));
    }

    #[test]
    fn a_stiffer_front_bar_leans_less_and_takes_more(bar in 1e3f64..100e3, more in 1.1f64..3.0) {
        let (soft, stiff) = (van(250e3, 190.0, [bar, 2e4]).balance().unwrap(), van(250e3, 190.0, [bar * more, 2e4]).balance().unwrap());
        prop_assert!(stiff.roll_gradient.si() < soft.roll_gradient.si());
        prop_assert!(stiff.front_share.si() > soft.front_share.si());
    }
}
