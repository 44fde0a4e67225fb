//! The demo sheets answer as they did: every finding with its verdict. What changes here changes what a builder is told.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::sheet::Sheet;
use axlewright::suspension::LeafAxle;
use axlewright::units::{Angle, Length, Ratio};
use axlewright::{Model, Verdict};
use axlewright_tests::assessed::{read, text};

/// The findings of each verdict, in the order of the report.
fn verdicts(name: &str) -> Vec<(&'static str, String)> {
    let assessment = read(name).assess();
    let of = |verdict: Verdict| {
        let answers = assessment.answers().iter().filter(|answer| answer.verdict == verdict);
        (verdict.word(), answers.map(|answer| answer.path).collect::<Vec<_>>().join(" "))
    };
    [Verdict::Short, Verdict::Tight, Verdict::Meets, Verdict::NotKnown, Verdict::DoesNotApply]
        .map(of)
        .to_vec()
}

/// On the scales, before the new spring and the shafts are chosen.
const DUNLIN: [(&str, &str); 5] = [
    (
        "short",
        "speedometer.reading half_shaft.strength driveline.cruise cap.holds header.air \
         leak_test.tight vehicle.flat_ride",
    ),
    (
        "tight",
        "front.tyre_load rear.tyre_load front.bump rear.bump front.droop rear.droop \
         gearbox.strength final_drive.strength",
    ),
    (
        "meets",
        "front.tyre_speed rear.tyre_speed front.frequency rear.frequency vehicle.frequency_pair \
         front.damping rear.damping front.coil_bind rear.coil_bind front.captive rear.captive \
         front.buckling front.spring_strength engine.pistons front.load rear.load vehicle.load \
         vehicle.diagonal clutch.holds driveline.red_line coolant.boiling coolant.freezing \
         cap.opens cap.weakest cap.vacuum leak_test.pumped",
    ),
    (
        "not known",
        "front.damper_range rear.damper_range rear.buckling rear.spring_strength \
         front.bump_steer_band rear.bump_steer_band front.joints rear.joints front.linkage_range \
         rear.linkage_range front.toggle rear.toggle front.bind rear.bind front.roll_steer_band \
         rear.roll_steer_band front.sideways rear.sideways front.pinion rear.pinion rear.squat \
         front.wind_up rear.wind_up vehicle.roll vehicle.roll_stops vehicle.wheel_lift \
         vehicle.tip vehicle.balance propeller_shaft.strength driveline.cruise_band \
         driveline.crawl coolant.pump_inlet front.comfort rear.comfort front.road_holding \
         rear.road_holding",
    ),
    ("does not apply", ""),
];

/// With both axles measured point by point, and on a worn country road.
const MEASURED: [(&str, &str); 5] = [
    (
        "short",
        "speedometer.reading rear.captive front.bump_steer_band front.roll_steer_band rear.pinion \
         rear.squat half_shaft.strength driveline.cruise cap.holds header.air leak_test.tight \
         vehicle.flat_ride",
    ),
    ("tight", "rear.joints rear.bind gearbox.strength final_drive.strength"),
    (
        "meets",
        "front.tyre_load rear.tyre_load front.tyre_speed rear.tyre_speed front.frequency \
         rear.frequency vehicle.frequency_pair front.damping rear.damping front.damper_range \
         front.bump rear.bump front.droop rear.droop front.coil_bind rear.coil_bind front.captive \
         front.buckling front.spring_strength engine.pistons front.load rear.load vehicle.load \
         vehicle.diagonal rear.bump_steer_band front.joints front.linkage_range \
         rear.linkage_range front.toggle rear.roll_steer_band rear.sideways \
         vehicle.roll clutch.holds driveline.red_line coolant.boiling coolant.freezing cap.opens \
         cap.weakest cap.vacuum leak_test.pumped front.road_holding rear.road_holding",
    ),
    (
        "not known",
        "rear.damper_range rear.buckling rear.spring_strength vehicle.roll_stops \
         vehicle.wheel_lift vehicle.tip vehicle.balance propeller_shaft.strength \
         driveline.cruise_band driveline.crawl coolant.pump_inlet front.comfort rear.comfort",
    ),
    ("does not apply", "rear.toggle front.bind front.sideways front.pinion front.wind_up rear.wind_up"),
];

/// Before its first season.
const WAGTAIL: [(&str, &str); 5] = [
    (
        "short",
        "vehicle.frequency_pair front.spring_strength vehicle.roll_stops vehicle.wheel_lift \
         vehicle.tip half_shaft.strength front.road_holding vehicle.flat_ride",
    ),
    (
        "tight",
        "front.tyre_load rear.tyre_load front.bump rear.bump front.droop rear.droop front.captive \
         gearbox.strength final_drive.strength",
    ),
    (
        "meets",
        "front.tyre_speed rear.tyre_speed speedometer.reading front.frequency rear.frequency \
         front.damping rear.damping front.coil_bind rear.coil_bind rear.captive front.buckling \
         engine.pistons front.load rear.load vehicle.load vehicle.diagonal vehicle.roll \
         clutch.holds propeller_shaft.strength driveline.cruise driveline.red_line \
         coolant.boiling coolant.freezing cap.holds cap.opens cap.weakest coolant.pump_inlet \
         rear.road_holding",
    ),
    (
        "not known",
        "front.damper_range rear.damper_range rear.buckling rear.spring_strength \
         front.bump_steer_band rear.bump_steer_band front.joints rear.joints front.linkage_range \
         rear.linkage_range front.toggle rear.toggle front.roll_steer_band rear.roll_steer_band \
         rear.squat vehicle.balance driveline.cruise_band driveline.crawl cap.vacuum header.air \
         leak_test.pumped leak_test.tight front.comfort rear.comfort",
    ),
    (
        "does not apply",
        "front.bind rear.bind front.sideways rear.sideways front.pinion rear.pinion front.wind_up \
         rear.wind_up",
    ),
];

/// Leaf springs, those of the rear measured point by point: nothing is known of coils.
const DRAY: [(&str, &str); 5] = [
    (
        "short",
        "speedometer.reading rear.spring_strength front.load vehicle.diagonal rear.squat \
         rear.wind_up half_shaft.strength coolant.freezing leak_test.tight vehicle.flat_ride",
    ),
    (
        "tight",
        "front.tyre_load rear.tyre_load rear.bump rear.droop vehicle.load gearbox.strength \
         propeller_shaft.strength final_drive.strength coolant.boiling",
    ),
    (
        "meets",
        "front.tyre_speed rear.tyre_speed front.frequency rear.frequency vehicle.frequency_pair \
         front.damping rear.damping engine.pistons rear.load rear.bump_steer_band rear.joints \
         rear.linkage_range rear.roll_steer_band rear.sideways rear.pinion clutch.holds \
         driveline.cruise driveline.red_line driveline.crawl cap.holds cap.opens cap.weakest \
         leak_test.pumped front.road_holding rear.road_holding",
    ),
    (
        "not known",
        "front.damper_range rear.damper_range front.bump front.droop front.spring_strength \
         front.bump_steer_band front.joints front.linkage_range front.toggle front.roll_steer_band \
         front.sideways front.pinion front.wind_up vehicle.roll vehicle.roll_stops \
         vehicle.wheel_lift vehicle.tip vehicle.balance driveline.cruise_band cap.vacuum \
         coolant.pump_inlet header.air front.comfort rear.comfort",
    ),
    (
        "does not apply",
        "front.coil_bind rear.coil_bind front.captive rear.captive front.buckling rear.buckling \
         rear.toggle front.bind rear.bind",
    ),
];

#[test]
fn the_demo_sheets_answer_as_they_did() {
    for (name, expected) in
        [("dunlin", DUNLIN), ("dunlin_measured", MEASURED), ("wagtail", WAGTAIL), ("dray", DRAY)]
    {
        for ((word, found), (_, wanted)) in verdicts(name).iter().zip(expected) {
            let all = |paths: &str| paths.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
            let (found, wanted) = (all(found), all(wanted));
            let less = |these: &[String], those: &[String]| {
                these.iter().filter(|path| !those.contains(path)).cloned().collect::<Vec<_>>().join(", ")
            };
            assert!(
                found == wanted,
                "{name}: `{word}` has more: [{}], and less: [{}]. If that is right, change {} in tests/tests/demo_sheets.rs; if the \
                 vehicle lacks the part, write `none` in examples/sheets/{name}.toml. The report's order: {}",
                less(&found, &wanted),
                less(&wanted, &found),
                if name == "dunlin_measured" { "MEASURED".to_owned() } else { name.to_uppercase() },
                found.join(" "),
            );
        }
    }
}

#[test]
fn each_has_something_to_mend_and_something_to_measure() {
    for name in ["dunlin", "dunlin_measured", "wagtail", "dray"] {
        let all = verdicts(name);
        let count = |word: &str| {
            all.iter().filter(|(of, _)| *of == word).map(|(_, paths)| paths.split_whitespace().count()).sum()
        };
        let counts: [usize; 4] = ["short", "tight", "meets", "not known"].map(count);
        assert!(counts[0] + counts[1] >= 1 && counts[2] >= 1 && counts[3] >= 1, "{name}: {counts:?}");
    }
}

#[test]
fn they_say_that_their_figures_are_invented_and_keep_their_bytes() {
    for name in ["dunlin", "dunlin_measured", "wagtail", "dray"] {
        let text = text(name);
        assert!(
            text.lines().next().unwrap().ends_with("Tern Lane Fabrication. All figures are invented."),
            "{name}"
        );
        let sheet = read(name);
        let written = sheet.to_toml();
        assert_eq!(Sheet::from_text(&written).unwrap(), sheet, "{name}");
        assert_eq!(Sheet::from_text(&written).unwrap().to_toml(), written, "{name}");
    }
}

/// The rear axle of the Dray as its own document: its leaves give the rate that is written, and the stops end the travel before the shackles do.
#[test]
fn the_rear_axle_of_the_dray_stands() {
    let axle = LeafAxle::from_text(&text("dray_rear_axle")).unwrap();
    let (none, level) = (Length::from_si(0.0), Angle::from_si(0.0));
    let on = axle.at(none, level).unwrap();
    let mut of_leaves = axle.clone();
    of_leaves.spring = None;
    let rate = of_leaves.at(none, level).unwrap().wheel_rate;
    assert!((rate / on.wheel_rate - Ratio::from_si(1.0)).si().abs() < 0.01, "{rate:?} {:?}", on.wheel_rate);
    let range = axle.travel_range(level).unwrap();
    assert!(range.bump > on.left_bump_remaining && on.left_damper_remaining > on.left_bump_remaining);
    assert_eq!(range.droop_end, "shackle");
    assert!(on.roll_steer.si() < 0.0, "roll understeer");
}
