//! Names that were renamed still answer in this version: items of the core with a deprecation, lines of the sheet, keys of documents.
#![allow(clippy::unwrap_used, reason = "a test may panic, its helpers too")]

use axlewright::sheet::{Assessment, Sheet};
use axlewright::units::*;
use axlewright::{Model, cooling, engine, mass};

fn text(name: &str) -> String {
    std::fs::read_to_string(format!("{}/../examples/sheets/{name}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn assessed(name: &str) -> Assessment {
    Sheet::from_text(&text(name)).unwrap().assess()
}

/// `expect` fails to compile without a warning where the old name is not deprecated.
#[test]
fn a_renamed_function_answers_and_is_deprecated() {
    let (start, air) = (GaugePressure::of::<psi_gauge>(15.0), AbsolutePressure::from_si(101_325.0));
    let [warm, cold] = [77.0, 59.0].map(Temperature::of::<degF>);
    let tight = cooling::pressure_decay_tight_pressure(start, warm, cold, air).unwrap();
    #[expect(deprecated)]
    let old = cooling::leak_down_pressure(start, warm, cold, air).unwrap();
    assert_eq!(old.si().to_bits(), tight.si().to_bits());

    let [gas, coolant] = [1.0, 8.0].map(Volume::of::<L>);
    let growth = Ratio::of::<percent>(-0.4);
    let over =
        cooling::pressure_decay_tight_pressure_over_coolant(start, gas, coolant, growth, warm, cold, air);
    #[expect(deprecated)]
    let old = cooling::leak_down_pressure_over_coolant(start, gas, coolant, growth, warm, cold, air);
    assert!(over.is_ok() && old == over);

    let [allowed, error] = [1.0, 0.5].map(Stress::of::<psi>);
    let least = cooling::pressure_decay_least_pressure(start, tight, allowed, error, air);
    #[expect(deprecated)]
    let old = cooling::leak_down_least_pressure(start, tight, allowed, error, air);
    assert!(least.is_ok() && old == least);

    let (ratio, efficiency) = (Ratio::of::<one>(2.5), Ratio::of::<percent>(70.0));
    let outlet = engine::compressor_outlet_temperature(warm, ratio, efficiency);
    #[expect(deprecated)]
    let old = engine::charge_temperature(warm, ratio, efficiency);
    assert!(outlet.is_ok() && old == outlet);

    let [level, tilted, total] = [1223.0, 1289.0, 2400.0].map(Mass::of::<kg>);
    let [base, lift, radius] = [2650.0, 600.0, 342.0].map(Length::of::<mm>);
    let height = mass::centre_of_gravity_height_by_tilt(level, tilted, total, base, lift, radius);
    #[expect(deprecated)]
    let old = mass::raised_axle_height(level, tilted, total, base, lift, radius);
    assert!(height.is_ok() && old == height);

    let rate = LinearStiffness::of::<N_mm>(560.0);
    let height = mass::centre_of_gravity_height_by_tilt_over_tyres(
        level, tilted, total, base, lift, radius, rate, rate,
    );
    #[expect(deprecated)]
    let old = mass::raised_axle_height_over_tyres(level, tilted, total, base, lift, radius, rate, rate);
    assert!(height.is_ok() && old == height);
}

#[test]
fn a_renamed_model_answers_and_is_deprecated() {
    let document = text("wagtail_pressure_decay");
    #[expect(deprecated)]
    let old: cooling::LeakDown = cooling::LeakDown::from_text(&document).unwrap();
    let new = cooling::PressureDecay::from_text(&document).unwrap();
    #[expect(deprecated)]
    let on: cooling::LeakDownFindings = old.findings().unwrap();
    assert_eq!(on.margin.si().to_bits(), new.findings().unwrap().margin.si().to_bits());
}

#[test]
fn a_renamed_line_of_the_sheet_answers() {
    let lines = [
        ("dunlin", "front.bump_left", "front.bump_remaining"),
        ("dunlin", "front.droop_left", "front.droop_remaining"),
        ("dunlin", "front.spring.greatest_compression", "front.spring.largest_compression"),
        ("dunlin", "front.spring.greatest_force", "front.spring.largest_force"),
        ("dunlin", "use.greatest_speed", "use.peak_speed"),
        ("dunlin", "driveline.greatest_engine_speed", "driveline.peak_engine_speed"),
        ("dunlin", "engine.charge_temperature", "engine.compressor_outlet_temperature"),
        ("dunlin_measured", "rear.least_joint_left", "rear.least_joint_remaining"),
        ("dray", "cap.greatest_opening", "cap.largest_opening"),
        ("dray", "cap.greatest_pressure", "cap.peak_pressure"),
        ("dray", "rear.joint_left", "rear.joint_remaining"),
        ("dray", "rear.linkage_left", "rear.linkage_remaining"),
        ("dray", "rear.leaf.shackle_left", "rear.leaf.shackle_remaining"),
    ];
    for (sheet, old, new) in lines {
        let on = assessed(sheet);
        let (was, is) = (on.value(old).unwrap(), on.value(new).unwrap());
        assert!(
            is.is_some() && was.map(f64::to_bits) == is.map(f64::to_bits),
            "{sheet} {old}: {was:?} {is:?}"
        );
    }
}

#[test]
fn a_document_with_an_old_key_is_read() {
    let now = text("dunlin");
    let old = now.replace("peak_speed", "greatest_speed");
    assert_ne!(old, now);
    let [now, old] = [now, old].map(|text| Sheet::from_text(&text).unwrap());
    assert_eq!(old.remarks(), ["use.greatest_speed is now use.peak_speed"]);
    assert_eq!(old.to_toml(), now.to_toml());

    let car = serde_json::json!({
        "sprung_mass": "300 kg", "unsprung_mass": "40 kg", "wheel_rate": "20 N/mm", "tyre_rate": "200 N/mm",
        "damper": {
            "gas_force": "0 N",
            "points": [{"velocity": "-1 m/s", "force": "-900 N"}, {"velocity": "1 m/s", "force": "500 N"}]
        },
        "damper_motion_ratio": "1",
        "bump_stop": {
            "bump_remaining": "30 mm", "motion_ratio": "1",
            "stop": {"points": [{"compression": "0 mm", "force": "0 N"}, {"compression": "20 mm", "force": "2 kN"}]}
        }
    })
    .to_string();
    let read =
        |text: &str| axlewright::ride::NonlinearQuarterCar::from_text(text).unwrap().to_json().unwrap();
    assert_eq!(read(&car.replace("bump_remaining", "bump_left")), read(&car));
}
