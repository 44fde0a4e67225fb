//! Tyres are judged on the safe side: load in use, and gaps at full lock.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::sheet::Assessment;
use axlewright::tyre::{FittedWheel, WheelChange};
use axlewright::units::{Length, mm};
use axlewright::{Model, Stated, Value, Verdict};
use axlewright_tests::assessed::{demo, sheet, value, verdict_word};

/// 1000 kg at index 108; the heavier wheel bears 700 kg.
const TYRE: [(&str, &str); 8] = [
    ("front.tyre.size", "225/70R15 108V"),
    ("front.tyre.pressure", "2.5 bar gauge"),
    ("front.tyre.rated_pressure", "2.5 bar gauge"),
    ("front.tyre.service", "as_made"),
    ("use.peak_speed", "180 km/h"),
    ("scales.left_front", "700 kg"),
    ("scales.right_front", "690 kg"),
    ("wanted.load", "1.1"),
];

fn assessed(lines: &[(&str, &str)]) -> Assessment {
    let mut all: Vec<(&str, &str)> = TYRE.to_vec();
    for (path, text) in lines {
        all.retain(|(known, _)| known != path);
        if !text.is_empty() {
            all.push((path, text));
        }
    }
    sheet(&all).assess()
}

fn word(lines: &[(&str, &str)]) -> &'static str {
    verdict_word(&assessed(lines), "front.tyre_load")
}

#[test]
fn pressure_speed_and_service_belong_in_the_load() {
    assert_eq!(word(&[]), "meets");
    for (lines, capacity, verdict) in [
        (&[("front.tyre.pressure", "1.25 bar gauge")][..], 500.0, "short"),
        (&[("front.tyre.pressure", "1.8 bar gauge")], 720.0, "tight"),
        (&[("front.tyre.pressure", "3 bar gauge")], 1000.0, "meets"),
        (&[("use.peak_speed", "240 km/h")], 910.0, "meets"),
        (&[("use.peak_speed", "225 km/h")], 955.0, "meets"),
        (&[("use.peak_speed", "240 km/h"), ("scales.left_front", "850 kg")], 910.0, "tight"),
        (&[("front.tyre.service", "passenger_tyre_on_truck_or_trailer")], 1000.0 / 1.1, "meets"),
        (
            &[("front.tyre.service", "passenger_tyre_on_truck_or_trailer"), ("scales.left_front", "920 kg")],
            1000.0 / 1.1,
            "short",
        ),
    ] {
        let on = assessed(lines);
        let found = value(&on, "front.tyre.usable_capacity");
        assert!((found - capacity).abs() < 1e-6, "{lines:?}: {found}");
        assert_eq!(verdict_word(&on, "front.tyre_load"), verdict, "{lines:?}");
    }
}

#[test]
fn what_is_not_written_of_a_tyre_clears_no_load_and_the_report_says_which_line() {
    for (missing, reserve, asks) in [
        ("front.tyre.pressure", "front.tyre.pressure_reserve", "tyre.pressure"),
        ("front.tyre.rated_pressure", "front.tyre.pressure_reserve", "tyre.rated_pressure"),
        ("use.peak_speed", "front.tyre.speed_reserve", "use.peak_speed"),
        ("front.tyre.service", "front.tyre.service_reserve", "tyre.service"),
    ] {
        let on = assessed(&[(missing, "")]);
        assert_eq!(verdict_word(&on, "front.tyre_load"), "tight", "{missing}");
        assert!(on.assumed().iter().any(|one| one.path == reserve && one.ground.contains(asks)), "{missing}");
        // Overloaded is overloaded.
        assert_eq!(word(&[(missing, ""), ("scales.left_front", "1010 kg")]), "short", "{missing}");
    }
    // Above 210 km/h the symbol decides.
    assert_eq!(
        word(&[
            ("front.tyre.size", "225/70R15"),
            ("front.tyre.load_index", "108"),
            ("use.peak_speed", "230 km/h")
        ]),
        "tight"
    );
    assert_eq!(word(&[("front.tyre.size", "225/70R15"), ("front.tyre.load_index", "108")]), "meets");
}

fn wheel(rim: &str, offset: &str, marking: &str) -> FittedWheel {
    FittedWheel {
        rim_width: Value::parse(rim).unwrap(),
        flange_thickness: Value::parse("12 mm").unwrap(),
        offset: Some(Value::parse(offset).unwrap()),
        backspacing: None,
        spacer: Stated::Unknown,
        marking: Some(marking.to_owned()),
        measuring_rim_width: None,
        free_diameter: None,
        section_width: None,
    }
}

fn measured(diameter: f64, section: f64) -> FittedWheel {
    FittedWheel {
        marking: None,
        free_diameter: Some(Value::new(Length::of::<mm>(diameter))),
        section_width: Some(Value::new(Length::of::<mm>(section))),
        ..wheel("6 in", "40 mm", "")
    }
}

fn change(before: FittedWheel, after: FittedWheel) -> WheelChange {
    let gap = || Some(Value::parse("20 mm").unwrap());
    WheelChange {
        before,
        after,
        kingpin_inclination: None,
        inner_clearance: gap(),
        outer_clearance: gap(),
        arch_clearance: gap(),
    }
}

#[test]
fn a_taller_tyre_takes_from_the_gap_at_full_lock() {
    let inner = |after: FittedWheel| {
        change(measured(700.0, 220.0), after).findings().unwrap().inner_remaining.in_::<mm>()
    };
    let verdict = |left: f64| Verdict::of_difference(Length::of::<mm>(left), Length::of::<mm>(10.0));
    for (diameter, section, left, word) in [
        // 15 mm of radius, straight ahead of the tread.
        (730.0, 220.0, 5.0, Verdict::Tight),
        (750.0, 220.0, -5.0, Verdict::Short),
        // 10 mm to the side and 10 mm of radius: at 45 degrees.
        (720.0, 240.0, 20.0 - 200.0_f64.sqrt(), Verdict::Tight),
        (700.0, 220.0, 20.0, Verdict::Meets),
        // A smaller tyre frees nothing that stands at its side.
        (680.0, 220.0, 20.0, Verdict::Meets),
    ] {
        let found = inner(measured(diameter, section));
        assert!((found - left).abs() < 1e-9, "{diameter} {section}: {found}");
        assert_eq!(verdict(found), word, "{diameter} {section}");
    }
}

#[test]
fn a_new_tyre_may_be_wider_than_its_marking() {
    let same = change(wheel("6.5 in", "40 mm", "225/70R15"), wheel("6.5 in", "40 mm", "225/70R15"))
        .findings()
        .unwrap();
    assert_eq!(same.inner_change.si(), 0.0);
    // 4 % of 225 mm for each of both tyres, half of it on a side; 4 % and 3 % of 157.5 mm of height, and 6.4 mm of worn tread.
    let lost = 9.0_f64.hypot(11.025 + 6.4);
    for (left, by_hand) in [
        (same.inner_remaining, 20.0 - lost),
        (same.outer_remaining, 20.0 - lost),
        (same.arch_remaining, 20.0 - 11.025 - 6.4),
    ] {
        assert!((left.in_::<mm>() - by_hand).abs() < 1e-9, "{left:?}");
    }
    // One that is measured is as wide as it is.
    let fitted = || FittedWheel { rim_width: Value::parse("6.5 in").unwrap(), ..measured(696.0, 225.0) };
    let known = change(fitted(), fitted()).findings().unwrap();
    for left in [known.inner_remaining, known.outer_remaining, known.arch_remaining] {
        assert!((left.in_::<mm>() - 20.0).abs() < 1e-9, "{left:?}");
    }
    // Only the new one by its marking: 165.1 mm of rim are 3.65 mm less than 0.75 of 225 mm.
    let new = change(fitted(), wheel("6.5 in", "40 mm", "225/70R15")).findings().unwrap();
    let lost = (4.5 - 0.2 * 3.65_f64).hypot(6.3);
    assert!((new.inner_remaining.in_::<mm>() - (20.0 - lost)).abs() < 1e-9, "{:?}", new.inner_remaining);
}

#[test]
fn a_wider_rim_and_a_diagonal_tyre_take_more_from_a_gap() {
    let left = |before, after| {
        let on = change(before, after).findings().unwrap();
        [on.inner_remaining, on.outer_remaining, on.arch_remaining].map(|left| left.in_::<mm>())
    };
    // 1.5 in more of rim make the same tyre 15.24 mm wider, though nobody wrote its measuring rim.
    let wider = left(wheel("6 in", "40 mm", "225/70R15"), wheel("7.5 in", "40 mm", "225/70R15"));
    let lost = (9.0 + 7.62_f64).hypot(11.025 + 6.4);
    // Diagonal: 6 % and 4 % of 152.4 mm, 8 % and 3 % of 156.972 mm.
    let diagonal = left(wheel("4.5 in", "40 mm", "6.00-16"), wheel("4.5 in", "40 mm", "6.00-16"));
    let growth = 0.11 * 156.972_f64 + 6.4;
    for (found, by_hand) in [
        (wider, [20.0 - lost, 20.0 - lost, 20.0 - 11.025 - 6.4]),
        (diagonal, [20.0 - growth.hypot(7.62), 20.0 - growth.hypot(7.62), 20.0 - growth]),
    ] {
        for (found, by_hand) in found.iter().zip(by_hand) {
            assert!((found - by_hand).abs() < 1e-9, "{found} is not {by_hand}");
        }
    }
}

#[test]
fn a_rim_must_suit_the_section_of_its_tyre() {
    let on = |rim: &str, marking: &str| {
        change(wheel("6.5 in", "40 mm", "225/70R15"), wheel(rim, "40 mm", marking)).checked()
    };
    for (rim, marking) in [
        ("3 in", "225/70R15"),
        ("14 in", "225/70R15"),
        ("5 in", "225/70R15"),
        ("8.5 in", "225/70R15"),
        ("7 in", "275/40ZR18"),
    ] {
        let refused = on(rim, marking).unwrap_err().to_string();
        assert!(
            refused.contains("after.rim_width") && refused.contains("is no rim for"),
            "{rim} {marking}: {refused}"
        );
    }
    for (rim, marking) in [("6 in", "225/70R15"), ("7.5 in", "225/70R15"), ("9.5 in", "275/40ZR18")] {
        assert!(on(rim, marking).is_ok(), "{rim} {marking}");
    }
}

fn is_told(on: &Assessment, line: &str) -> bool {
    on.contradictions().iter().any(|found| found.path == line)
}

#[test]
fn a_tyre_carries_and_turns_no_more_than_its_marking_says() {
    for (line, text, finding, verdict) in [
        // The load of a pair, and 1 % more than index 108.
        ("front.tyre.load_capacity", "1900 kg", "front.tyre_load", "tight"),
        ("front.tyre.load_capacity", "1010 kg", "front.tyre_load", "tight"),
        ("front.tyre.load_capacity", "1000 kg", "front.tyre_load", "meets"),
        ("front.tyre.load_capacity", "2204 lb", "front.tyre_load", "meets"),
        ("front.tyre.load_capacity", "900 kg", "front.tyre_load", "meets"),
        ("front.tyre.load_index", "109", "front.tyre_load", "tight"),
        ("front.tyre.load_index", "108", "front.tyre_load", "meets"),
        ("front.tyre.rated_speed", "160 mph", "front.tyre_speed", "tight"),
        ("front.tyre.rated_speed", "245 km/h", "front.tyre_speed", "tight"),
        ("front.tyre.rated_speed", "149 mph", "front.tyre_speed", "meets"),
        ("front.tyre.rated_speed", "200 km/h", "front.tyre_speed", "meets"),
    ] {
        let on = assessed(&[(line, text)]);
        assert_eq!(verdict_word(&on, finding), verdict, "{line} {text}");
        assert_eq!(is_told(&on, line), verdict == "tight", "{line} {text}");
    }
    // Weaker than its load is weaker, whatever else is written.
    assert_eq!(word(&[("front.tyre.load_capacity", "650 kg")]), "short");
}

#[test]
fn a_speed_between_two_symbols_counts_as_the_lesser_of_both() {
    let carries = |size: &str, rated: &str, peak: &str| {
        let on = assessed(&[
            ("front.tyre.size", size),
            ("front.tyre.load_index", "108"),
            ("front.tyre.rated_speed", rated),
            ("use.peak_speed", peak),
        ]);
        value(&on, "front.tyre.usable_capacity")
    };
    let mph = 1.609_344;
    for (size, rated, peak, kg) in [
        // V, within the rounding of miles an hour.
        ("225/70R15 108V", "148 mph", "148 mph", 1000.0 - 3.0 * (148.0 * mph - 210.0)),
        ("225/70R15", "225 km/h", "225 km/h", 955.0),
        // W gives 875 kg, V 910 kg.
        ("225/70R15", "265 km/h", "265 km/h", 875.0),
        // At 240 km/h W gives 1000 kg, V 910 kg.
        ("225/70R15", "150 mph", "240 km/h", 910.0),
        ("225/70R15", "240 km/h", "240 km/h", 910.0),
        ("225/70R15", "270 km/h", "240 km/h", 1000.0),
        ("225/70R15", "300 km/h", "285 km/h", 925.0),
        ("225/70R15", "210 km/h", "205 km/h", 1000.0),
    ] {
        let found = carries(size, rated, peak);
        assert!((found - kg).abs() < 1e-6, "{size} {rated} {peak}: {found}");
    }
}

#[test]
fn the_radii_of_a_tyre_stand_in_their_order() {
    // 7.50-16: 399.4 mm free, 368.6 mm loaded, by its rate and its axle.
    for (line, text, known) in [
        ("rear.tyre.loaded_radius", "140 mm", false),
        ("rear.tyre.loaded_radius", "330 mm", false),
        ("rear.tyre.loaded_radius", "410 mm", false),
        ("rear.tyre.loaded_radius", "345 mm", true),
        ("rear.tyre.loaded_radius", "370 mm", true),
        ("rear.tyre.effective_radius", "420 mm", false),
        ("rear.tyre.effective_radius", "340 mm", false),
        ("rear.tyre.effective_radius", "385 mm", true),
        // Turns a metre: on 300, 440 and 385 mm.
        ("rear.tyre.rolling_turns", "0.5305 turn/m", false),
        ("rear.tyre.rolling_turns", "0.3617 turn/m", false),
        ("rear.tyre.rolling_turns", "0.4134 turn/m", true),
        ("rear.tyre.free_diameter", "700 mm", false),
        ("rear.tyre.free_diameter", "780 mm", true),
        ("grip.loaded_radius", "140 mm", false),
        ("grip.loaded_radius", "368 mm", true),
    ] {
        let dray = [
            ("driveline.driven", "rear"),
            ("rear.tyre.size", "7.50-16 116/114L"),
            ("rear.tyre.rate", "380 N/mm"),
            ("rear.axle_mass", "2390 kg"),
        ];
        let on = sheet(&[&dray[..], &[(line, text)]].concat()).assess();
        assert_eq!(is_told(&on, line), !known, "{line} {text}");
    }
}

/// A lever of 140 mm would spare everything that the grip winds up.
#[test]
fn what_rests_on_a_radius_out_of_order_does_not_meet() {
    let rests = ["half_shaft.strength", "final_drive.strength", "propeller_shaft.strength", "rear.wind_up"];
    for radius in ["140 mm", "300 mm"] {
        let on = demo("dray", &[("rear.tyre.loaded_radius", radius)]).assess();
        for finding in rests {
            assert_ne!(verdict_word(&on, finding), "meets", "{finding} {radius}");
        }
    }
    // Strong enough for its own radius, it meets: 24 kN, 0.9 and 1.25 on 370 mm.
    let strong = |radius| {
        let lines = [
            ("rear.tyre.loaded_radius", radius),
            ("half_shaft.torque_rating", "20000 N·m"),
            ("half_shaft.rating_kind", "peak"),
            ("clutch.shock_factor", "2"),
            ("clutch.high_capacity", "450 N·m"),
        ];
        verdict_word(&demo("dray", &lines).assess(), "half_shaft.strength")
    };
    assert_eq!([strong("370 mm"), strong("300 mm")], ["meets", "tight"]);
}

#[test]
fn the_heavier_wheel_carries_half_of_its_axle() {
    for (lines, verdict) in [
        (&[("front.axle_mass", "1350 kg"), ("front.heavier_wheel", "470 kg")][..], "tight"),
        (&[("front.axle_mass", "1350 kg"), ("front.heavier_wheel", "650 kg")], "tight"),
        (&[("scales.left_front", "700 kg"), ("front.heavier_wheel", "600 kg")], "tight"),
        (&[("front.axle_mass", "600 kg"), ("front.heavier_wheel", "700 kg")], "tight"),
        (&[("front.axle_mass", "1350 kg"), ("front.heavier_wheel", "690 kg")], "meets"),
        (&[("scales.left_front", "700 kg"), ("front.heavier_wheel", "710 kg")], "meets"),
        (&[("front.axle_mass", "2400 kg"), ("front.heavier_wheel", "1100 kg")], "short"),
    ] {
        let none = [("scales.left_front", ""), ("scales.right_front", "")];
        let on = assessed(&[&none[..], lines].concat());
        assert_eq!(verdict_word(&on, "front.tyre_load"), verdict, "{lines:?}");
        assert_eq!(is_told(&on, "front.heavier_wheel"), verdict != "meets", "{lines:?}");
    }
}
