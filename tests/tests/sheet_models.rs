//! Models that a sheet holds give the numbers of its findings, to the last bit.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::cooling::{CapTest, LeakDown};
use axlewright::engine::TorqueCurve;
use axlewright::ride::QuarterCar;
use axlewright::sheet::{Assessment, Sheet};
use axlewright::spring::Corner;
use axlewright::suspension::{DoubleWishbone, Strut};
use axlewright::units::Length;
use axlewright::{Model, Verdict};
use axlewright_tests::assessed::{demo, value};
use axlewright_tests::catalogue::Random;

/// The same number, or both not known.
#[track_caller]
fn same(of: &str, sheet: f64, model: f64) {
    let same = sheet.to_bits() == model.to_bits() || sheet.is_nan() && model.is_nan();
    assert!(same, "{of}: {sheet} on the sheet, {model} of the model");
}

#[track_caller]
fn answers(on: &Assessment, finding: &str, margin: f64, verdict: Verdict) {
    let answer = on.answer(finding).unwrap();
    same(finding, answer.margin, margin);
    // Lines that contradict each other hold a verdict of the sheet down.
    if on.doubts(answer).is_empty() {
        assert_eq!(answer.verdict, verdict, "{finding}");
    }
}

/// Holds every model that the sheet has against the findings of the sheet; how many there are.
fn hold(sheet: &Sheet) -> usize {
    // A tolerance widens what the sheet says; the model has the value alone.
    let on = sheet.assess();
    let assessed = &on;
    let mut held = 0;
    if let Ok(model) = sheet.model("cap") {
        let read = model.read::<CapTest>().unwrap();
        let other = CapTest::from_text(&model.to_json()).unwrap();
        assert_eq!(format!("{:?}", read.findings()), format!("{:?}", other.findings()));
        let cap = read.findings().unwrap();
        answers(&on, "cap.holds", cap.holding_margin.si(), cap.holding_verdict);
        answers(&on, "cap.opens", cap.opening_margin.si(), cap.opening_verdict);
        answers(&on, "cap.weakest", cap.component_margin.si(), cap.component_verdict);
        answers(&on, "cap.vacuum", cap.vacuum_margin.si(), cap.vacuum_verdict);
        held += 1;
    }
    if let Ok(model) = sheet.model("leak_test") {
        let test = model.read::<LeakDown>().unwrap().findings().unwrap();
        same("leak_test.tight_pressure", value(&on, "leak_test.tight_pressure"), test.tight_pressure.si());
        answers(&on, "leak_test.tight", test.margin.si(), test.verdict);
        held += 1;
    }
    // A curve of one point is refused by both.
    if let Ok(curve) = sheet.model("engine.curve").and_then(|model| model.read::<TorqueCurve>()) {
        let peaks = curve.peaks().unwrap();
        for (line, of) in
            [("engine.peak_torque", peaks.peak_torque.si()), ("engine.peak_power", peaks.peak_power.si())]
        {
            // A peak that is written stands beside the curve.
            if sheet.get(line).unwrap().is_none() {
                same(line, value(&on, line), of);
            }
        }
        held += 1;
    }
    for axle in ["front", "rear"] {
        let at_ride = (Length::from_si(0.0), Length::from_si(0.0));
        if let Ok(model) = sheet.model(&format!("{axle}.suspension")) {
            let on = match model.model {
                "suspension.Strut" => model.read::<Strut>().unwrap().at(at_ride.0, at_ride.1),
                _ => model.read::<DoubleWishbone>().unwrap().at(at_ride.0, at_ride.1),
            };
            same(axle, value(assessed, &format!("{axle}.bump_steer")), on.unwrap().bump_steer.si());
            held += 1;
        }
        let line = |name: &str| format!("{axle}.{name}");
        if let Ok(model) = sheet.model(&line("quarter_car")) {
            let car = model.read::<QuarterCar>().unwrap();
            same(&line("sprung_mass"), value(&on, &line("sprung_mass")), car.sprung_mass.quantity.si());
            held += 1;
        }
        // The corner has one motion ratio over all of the travel: a drawn linkage says more.
        let drawn = !value(&on, &line("linkage_motion_ratio")).is_nan()
            || !value(&on, &line("leaf.rate")).is_nan()
            || value(&on, &line("spring.ratio_gradient")) != 0.0;
        if let Ok(model) = sheet.model(&line("corner"))
            && !drawn
        {
            let corner = model.read::<Corner>().unwrap().at_ride_height().unwrap();
            same(&line("spring.force"), value(&on, &line("spring.force")), corner.spring_force.si());
            same(&line("droop_left"), value(&on, &line("droop_left")), corner.sag.si());
            same(&line("bump_left"), value(&on, &line("bump_left")), corner.bump_left.si());
            same(&line("wheel_rate"), value(&on, &line("wheel_rate")), corner.wheel_rate.si());
            answers(&on, &line("bump"), corner.bump_left.si(), corner.bump_verdict);
            answers(&on, &line("droop"), corner.sag.si(), corner.droop_verdict);
            answers(&on, &line("coil_bind"), corner.bind_margin.si(), corner.bind_verdict);
            answers(&on, &line("captive"), corner.captive_margin.si(), corner.captive_verdict);
            held += 1;
        }
    }
    held
}

/// Each written line in turn is changed by up to a fifth, left out, or said to be none.
#[test]
fn both_doors_give_the_same_numbers_and_verdicts() {
    let mut random = Random::of("models");
    let mut held = 0;
    for name in ["dunlin", "dunlin_measured", "wagtail", "dray"] {
        let sheet = demo(name, &[]);
        held += hold(&sheet);
        // The drawn axles of the others are held by the tests of their own.
        if !["dunlin", "wagtail"].contains(&name) {
            continue;
        }
        let paths: Vec<&str> = sheet.paths().collect();
        for path in paths {
            let mut other = sheet.clone();
            if random.once_in(3) {
                // The places of a list come in order.
                if other.remove(path).is_err() || random.once_in(2) && other.set(path, "none").is_err() {
                    continue;
                }
            } else {
                let Some(si) =
                    sheet.assess().value(path).unwrap().filter(|_| Sheet::kind(path).unwrap().is_some())
                else {
                    continue;
                };
                if other.set_si(path, si * (0.8 + 0.4 * random.share())).is_err() {
                    continue;
                }
            }
            held += hold(&other);
        }
        assert!(held > 0, "{name} holds no model");
    }
    assert!(held > 500, "{held} models held");
}
