//! Lines that contradict each other.

use axlewright::Verdict;
use axlewright::base::text::System;
use axlewright::sheet::{Axis, Sheet};
use axlewright_tests::assessed::{demo, value, verdict};

#[test]
fn the_demo_sheets_contradict_nothing() {
    for name in ["dunlin", "dunlin_measured", "wagtail", "dray"] {
        let assessment = demo(name, &[]).assess();
        let found: Vec<String> =
            assessment.contradictions().iter().map(|found| found.text(System::Metric)).collect();
        assert_eq!(found, Vec::<String>::new(), "{name}");
    }
}

/// A demo sheet, what is written over it, and the line that this contradicts.
type Case<'a> = (&'a str, &'a [(&'a str, &'a str)], Option<&'a str>);

#[test]
fn a_line_that_contradicts_what_follows_from_others_is_said() {
    let cases: &[Case<'_>] = &[
        // The linkage has 0.6514: within 1 % nothing is said, within a tolerance neither.
        ("dunlin_measured", &[("front.spring.motion_ratio", "0.65")], None),
        ("dunlin_measured", &[("front.spring.motion_ratio", "0.63 +/- 0.03")], None),
        ("dunlin_measured", &[("front.spring.motion_ratio", "0.60")], Some("front.spring.motion_ratio")),
        (
            "dunlin_measured",
            &[("front.spring.motion_ratio", "0.60 +/- 0.01")],
            Some("front.spring.motion_ratio"),
        ),
        // A standard deviation counts twice: 0.0514 lies within 2 x 0.03, not within 2 x 0.02.
        ("dunlin_measured", &[("front.spring.motion_ratio", "0.60 +/- 0.03 sd")], None),
        (
            "dunlin_measured",
            &[("front.spring.motion_ratio", "0.60 +/- 0.02 sd")],
            Some("front.spring.motion_ratio"),
        ),
        // Scales read 612 kg +/- 2 kg and 598 kg +/- 2 kg: 1210 kg +/- 4 kg.
        ("dunlin_measured", &[("front.axle_mass", "1213.5 kg +/- 0 kg")], None),
        ("dunlin_measured", &[("front.axle_mass", "1215 kg +/- 0.5 kg")], Some("front.axle_mass")),
        ("dunlin_measured", &[("front.axle_mass", "1250 kg")], Some("front.axle_mass")),
        // The curve has 360 N·m.
        ("dunlin_measured", &[("engine.peak_torque", "362 N·m")], None),
        ("dunlin_measured", &[("engine.peak_torque", "380 N·m")], Some("engine.peak_torque")),
        // Sea-level pressure at 5000 ft, where 84.3 kPa stand; weather alone moves it by less than 6 kPa.
        ("dunlin_measured", &[("use.station_pressure", "83 kPa absolute")], None),
        ("dunlin_measured", &[("use.station_pressure", "101.3 kPa absolute")], Some("use.station_pressure")),
        // The drawing has the axles 2650 mm apart and the front wheels 1540 mm; camber moves a track by some millimetres.
        ("dunlin_measured", &[("vehicle.wheelbase", "2660 mm")], None),
        ("dunlin_measured", &[("vehicle.wheelbase", "2750 mm +/- 3 mm")], Some("vehicle.wheelbase")),
        ("dunlin_measured", &[("front.track", "1555 mm")], None),
        ("dunlin_measured", &[("front.track", "1600 mm")], Some("front.track")),
        ("dunlin_measured", &[("rear.brake_share", "35 %")], Some("rear.brake_share")),
        // What the trade would merely take contradicts nothing.
        ("dunlin_measured", &[("front.tyre.free_diameter", "720 mm")], None),
        // Nobody wrote the gradient of the motion ratio: that explains a quarter of the 18.2 N/mm, and no more.
        ("wagtail", &[("front.wheel_rate", "22 N/mm")], None),
        ("wagtail", &[("front.wheel_rate", "25 N/mm")], Some("front.wheel_rate")),
        (
            "wagtail",
            &[("front.wheel_rate", "25 N/mm"), ("front.spring.ratio_gradient", "0 1/m")],
            Some("front.wheel_rate"),
        ),
    ];
    for (name, lines, wanted) in cases {
        let assessment = demo(name, lines).assess();
        let found: Vec<&str> = assessment.contradictions().iter().map(|found| found.path).collect();
        assert_eq!(found, wanted.iter().copied().collect::<Vec<_>>(), "{name} with {lines:?}");
        let said = assessment.to_text(System::Metric, false);
        assert_eq!(said.contains("CONTRADICTED"), wanted.is_some(), "{name} with {lines:?}");
        let json: serde_json::Value = serde_json::from_str(&assessment.to_json()).unwrap();
        assert_eq!(json["contradictions"].as_array().unwrap().len(), found.len());
    }
}

/// Nobody said that these contradict themselves: the drawing was not held against the tape, nor one share against the other.
#[test]
fn a_drawing_is_held_against_the_tape() {
    let clash = |lines: &[(&str, &str)]| {
        let mut sheet = Sheet::new("");
        lines.iter().for_each(|(path, text)| sheet.set(path, text).unwrap());
        let on = sheet.assess();
        let said: Vec<String> = on.contradictions().iter().map(|found| found.text(System::Us)).collect();
        said.join("; ")
    };
    let apart = [("front.wheel.centre.x", "2 in"), ("rear.wheel.centre.x", "-114 in")];
    let said = clash(&[apart[0], apart[1], ("vehicle.wheelbase", "130 in")]);
    let wanted = "vehicle.wheelbase is written as 130 in, but 116 in follows from front.wheel.centre.x, rear.wheel.centre.x (a - b); they may lie 1.3 in apart";
    assert_eq!(said, wanted);
    assert_eq!(clash(&[apart[0], apart[1], ("vehicle.wheelbase", "117 in")]), "");
    // One axle alone says nothing of the wheelbase.
    assert_eq!(clash(&[apart[1], ("vehicle.wheelbase", "130 in")]), "");
    let said = clash(&[("rear.wheel.centre.y", "30 in"), ("rear.track", "70 in")]);
    assert!(
        said.starts_with("rear.track is written as 70 in, but 60 in follows from rear.wheel.centre.y ("),
        "{said}"
    );
    assert_eq!(clash(&[("rear.wheel.centre.y", "30 in"), ("rear.track", "60.5 in")]), "");
    let said = clash(&[("front.brake_share", "80 %"), ("rear.brake_share", "35 %")]);
    assert!(
        said.starts_with(
            "rear.brake_share is written as 0.35, but 0.2 follows from front.brake_share (1 - s_f)"
        ),
        "{said}"
    );
    assert_eq!(clash(&[("front.brake_share", "0.62 +/- 0.02"), ("rear.brake_share", "0.37 +/- 0.01")]), "");
}

/// Drawn axles give wheelbase and track where nobody wrote them.
#[test]
fn wheelbase_and_track_follow_from_the_drawing() {
    let lines = [("vehicle.wheelbase", ""), ("front.track", ""), ("rear.brake_share", "")];
    let on = demo("dunlin_measured", &lines).assess();
    assert!((value(&on, "vehicle.wheelbase") - 2.65).abs() < 1e-12);
    assert!((value(&on, "front.track") - 1.54).abs() < 1e-12);
    assert!((value(&on, "rear.brake_share") - 0.36).abs() < 1e-12);
}

#[test]
fn what_rests_on_a_contradiction_is_no_better_than_tight() {
    let before = demo("dunlin_measured", &[]).assess();
    let after = demo("dunlin_measured", &[("front.axle_mass", "1250 kg")]).assess();
    let found = &after.contradictions()[0];
    assert_eq!((found.written, found.follows), (1250.0, 1210.0));
    assert!((found.allowed - (12.5 + 4.0)).abs() < 1e-6, "{}", found.allowed);
    assert_eq!(
        found.from,
        [
            "scales.left_front",
            "scales.right_front",
            "scales.left_rear",
            "scales.right_rear",
            "vehicle.wheelbase",
            "front.track",
            "rear.track"
        ]
    );
    for (was, is) in before.answers().iter().zip(after.answers()) {
        let doubted = !after.doubts(is).is_empty();
        match (was.verdict, is.verdict) {
            (Verdict::Meets, Verdict::Tight) => assert!(doubted, "{}", is.path),
            _ => assert!(!(doubted && is.verdict == Verdict::Meets), "{}", is.path),
        }
    }
    // Its margin is what it was: 1350 kg over 1250 kg, and 1.05 is wanted.
    let load = after.answer("front.load").unwrap();
    assert_eq!((load.verdict, load.margin), (Verdict::Tight, 1350.0 / 1250.0));
    // What does not rest on it stays; what rests on it follows, also where nobody is hurt.
    assert_eq!(verdict(&after, "coolant.boiling"), Verdict::Meets);
    assert_eq!(verdict(&after, "front.frequency"), Verdict::Tight);
}

#[test]
fn a_sweep_looks_at_each_row_for_contradictions() {
    let axis = Axis::texts("front.axle_mass", &["1210 kg", "1250 kg"]).unwrap();
    let what_if = demo("dunlin", &[]).what_if(vec![axis], false, &["front.load.verdict"]).unwrap();
    let table = what_if.table(0..2, Some(1), &mut |_| true).unwrap().unwrap();
    let words = [0, 1].map(|row| table.word("front.load.verdict", row).unwrap());
    assert_eq!(words, ["meets", "tight"]);
    // Without the scales nothing contradicts: the same margin meets.
    let mut alone = Sheet::new("");
    for (path, text) in [("front.axle_mass", "1250 kg"), ("front.mass_rating", "1350 kg")] {
        alone.set(path, text).unwrap();
    }
    assert_eq!(verdict(&alone.assess(), "front.load"), Verdict::Meets);
}
