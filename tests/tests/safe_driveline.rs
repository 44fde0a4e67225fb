//! The driveline is judged on the safe side: what is missing is never taken in favour of a part.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic, its helpers too"
)]

use axlewright::driveline::{self, Part, RatingKind, Side, TorquePath};
use axlewright::sheet::{Assessment, Sheet};
use axlewright::units::{Ratio, Torque};
use axlewright::{Model, Stated, Value, Verdict};
use axlewright_tests::assessed::{demo, lacks, sheet, value, verdict_word};

type Lines<'a> = [(&'a str, &'a str)];

/// A driveline of which everything is known: 300 N·m on a clutch of 330 to 400 N·m, shock 2, 3 and 4 to 1 without losses.
const WHOLE: [(&str, &str); 17] = [
    ("engine.peak_torque", "300 N·m"),
    ("clutch.capacity", "330 N·m"),
    ("clutch.high_capacity", "400 N·m"),
    ("clutch.shock_factor", "2"),
    ("gearbox.ratios[0]", "3"),
    ("gearbox.reverse_ratio", "2.8"),
    ("gearbox.efficiency", "1"),
    ("gearbox.torque_rating", "1000 N·m"),
    ("gearbox.rating_side", "input"),
    ("gearbox.rating_kind", "peak"),
    ("transfer_case", "none"),
    ("final_drive.ratio", "4"),
    ("final_drive.efficiency", "1"),
    ("final_drive.differential", "open"),
    ("propeller_shaft.torque_rating", "3000 N·m"),
    ("propeller_shaft.rating_kind", "peak"),
    ("half_shaft.torque_rating", "8000 N·m"),
];

fn assessed(lines: &Lines<'_>) -> Assessment {
    let mut all: Vec<(&str, &str)> = WHOLE.to_vec();
    for (path, text) in lines {
        all.retain(|(known, _)| {
            known != path && !known.strip_prefix(path).is_some_and(|rest| rest.starts_with('.'))
        });
        if !text.is_empty() {
            all.push((path, text));
        }
    }
    // A table that is none comes before the lines beside it.
    sheet(&all).assess()
}

/// Word and margin of a finding; not a number where it is not known.
fn on(lines: &Lines<'_>, finding: &str) -> (&'static str, f64) {
    let on = assessed(lines);
    let margin = on.answer(finding).unwrap().margin;
    (verdict_word(&on, finding), margin)
}

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-9 * wanted.abs(), "{found} is not {wanted}");
}

fn path(rating: f64, side: Side, kind: Option<RatingKind>) -> TorquePath {
    TorquePath {
        engine_torque: Value::new(Torque::from_si(300.0)),
        clutch_capacity: Some(Value::new(Torque::from_si(330.0))),
        clutch_high_capacity: Some(Value::new(Torque::from_si(400.0))),
        stall_ratio: Stated::Unknown,
        shock_factor: Some(Value::new(Ratio::from_si(2.0))),
        grip: None,
        parts: vec![Part {
            name: "gearbox".to_owned(),
            ratio: Some(Value::new(Ratio::from_si(3.0))),
            least_ratio: None,
            peak_ratio: Some(Value::new(Ratio::from_si(3.0))),
            efficiency: None,
            differential: None,
            share: None,
            torque_rating: Some(Value::new(Torque::from_si(rating))),
            rating_side: Some(side),
            rating_kind: kind,
        }],
    }
}

/// Margin and verdict against the usual margin of the only part of a path.
fn of_path(path: &TorquePath) -> (f64, Verdict) {
    let table = path.parts_table().unwrap();
    let [margin, wanted] = ["margin", "wanted"].map(|of| Ratio::from_si(table.numbers(of).unwrap()[0]));
    (margin.si(), Verdict::of_ratio(margin, wanted))
}

#[test]
fn a_driveline_of_which_all_is_known_meets() {
    let on = assessed(&[("half_shaft.rating_kind", "yield")]);
    for finding in ["gearbox.strength", "propeller_shaft.strength", "half_shaft.strength"] {
        assert_eq!(verdict_word(&on, finding), "meets", "{finding}: {}", lacks(&on, finding));
    }
    // 400 * 2 on the input; 800 * 3 behind it; 2400 * 4 / 2 in a shaft.
    for (line, torque) in
        [("gearbox.demand", 800.0), ("propeller_shaft.demand", 2400.0), ("half_shaft.demand", 4800.0)]
    {
        near(value(&on, line), torque);
    }
    assert_eq!(of_path(&path(1000.0, Side::Input, Some(RatingKind::Peak))), (1.25, Verdict::Meets));
}

/// 360 N·m in first gear are held down by the tyres, but in top gear they all reach the gearbox's input.
#[test]
fn the_grip_of_a_low_gear_relieves_no_input_rating() {
    let grip = [
        ("grip.driven_load", "4 kN"),
        ("grip.strength_coefficient", "0.9"),
        ("grip.inertia_factor", "1.1"),
        ("driveline.driven", "rear"),
        ("rear.tyre.loaded_radius", "350 mm"),
        ("gearbox.rating_kind", "continuous"),
    ];
    for (engine, rating, margin) in
        [("360 N·m", "300 N·m", 300.0 / 360.0), ("300 N·m", "330 N·m", 1.1), ("200 N·m", "150 N·m", 0.75)]
    {
        let mut lines = grip.to_vec();
        lines.extend([("engine.peak_torque", engine), ("gearbox.torque_rating", rating)]);
        let (word, found) = on(&lines, "gearbox.strength");
        near(found, margin);
        assert_eq!(word, if margin < 1.0 { "short" } else { "tight" });
    }
    let mut first = path(300.0, Side::Input, Some(RatingKind::Continuous));
    first.engine_torque = Value::new(Torque::from_si(360.0));
    assert_eq!(of_path(&first), (300.0 / 360.0, Verdict::Short));
}

#[test]
fn a_gear_or_range_that_is_not_written_may_be_the_lowest() {
    let shaft = "propeller_shaft.strength";
    assert_eq!(on(&[], shaft).0, "meets");
    let without = assessed(&[("gearbox.reverse_ratio", "")]);
    assert_eq!(verdict_word(&without, shaft), "tight");
    let assumed = |on: &Assessment, line: &str| {
        on.assumed().iter().any(|one| one.path == line && one.ground.contains("write"))
    };
    assert!(assumed(&without, "gearbox.reverse_reserve"));
    assert!(
        without
            .to_text(axlewright::base::text::System::Metric, false)
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
            .contains("write gearbox.reverse_ratio, or \"none\"")
    );
    assert_eq!(on(&[("gearbox.reverse_ratio", "none")], shaft).0, "meets");
    // An input rating counts in every gear alike.
    assert_eq!(on(&[("gearbox.reverse_ratio", "")], "gearbox.strength").0, "meets");
    // A lower reverse raises the torque: 800 * 4 = 3200 N·m.
    let (word, margin) = on(&[("gearbox.reverse_ratio", "4")], shaft);
    near(margin, 3000.0 / 3200.0);
    assert_eq!(word, "short");
    // The losses of a transfer case say that there is one.
    assert_eq!(on(&[("transfer_case", ""), ("transfer_case.efficiency", "96 %")], shaft).0, "tight");
    let told =
        [("transfer_case", ""), ("transfer_case.efficiency", "96 %"), ("transfer_case.low_ratio", "none")];
    assert_eq!(on(&told, shaft).0, "meets");
    assert_eq!(on(&[("transfer_case", "")], shaft).0, "meets");
}

#[test]
fn a_dropped_clutch_passes_on_the_most_that_it_holds() {
    let shaft = "propeller_shaft.strength";
    // 400 * 2 * 3; the low capacity alone is a bound from below.
    near(on(&[], shaft).1, 3000.0 / 2400.0);
    let low = assessed(&[("clutch.high_capacity", "")]);
    near(low.answer(shaft).unwrap().margin, 3000.0 / 1980.0);
    assert_eq!(verdict_word(&low, shaft), "tight");
    assert!(low.assumed().iter().any(|one| one.path == "clutch.capacity_reserve"));
    // What breaks at the low capacity breaks.
    assert_eq!(
        on(&[("clutch.high_capacity", ""), ("propeller_shaft.torque_rating", "1900 N·m")], shaft).0,
        "short"
    );
    // By the facings: uniform pressure with the cold friction, 2 * 0.4 * 9 kN * (240^3 - 160^3) / (3 (240^2 - 160^2)).
    let facings = [
        ("clutch.high_capacity", ""),
        ("clutch.clamp_load", "9 kN"),
        ("clutch.high_friction", "0.4"),
        ("clutch.outer_diameter", "240 mm"),
        ("clutch.inner_diameter", "160 mm"),
        ("clutch.faces", "2"),
    ];
    let on_facings = assessed(&facings);
    near(value(&on_facings, "clutch.high_capacity"), 2.0 * 0.4 * 9e3 * 0.304 / 3.0);
    // A clutch that slips relieves nothing, and that it slips is a finding of its own.
    let slipping = [("clutch.capacity", "90 N·m"), ("clutch.high_capacity", "100 N·m")];
    near(value(&assessed(&slipping), "propeller_shaft.demand"), 900.0);
    assert_eq!(on(&slipping, "clutch.holds").0, "short");
    assert_eq!(on(&[], "clutch.holds").0, "tight");
    assert_eq!(on(&[("clutch.capacity", "360 N·m")], "clutch.holds").0, "meets");
}

#[test]
fn each_kind_of_rating_has_a_margin_of_its_own() {
    let gearbox = |kind: &str, rating: &str| {
        on(&[("gearbox.rating_kind", kind), ("gearbox.torque_rating", rating)], "gearbox.strength").0
    };
    // Against 300 N·m steady and 800 N·m of shock.
    for (kind, tight, meets) in [
        ("continuous", "370 N·m", "375 N·m"),
        ("peak", "990 N·m", "1000 N·m"),
        ("yield", "1190 N·m", "1200 N·m"),
        ("ultimate", "2390 N·m", "2400 N·m"),
        ("", "2390 N·m", "2400 N·m"),
    ] {
        assert_eq!((gearbox(kind, tight), gearbox(kind, meets)), ("tight", "meets"), "{kind}");
    }
    assert_eq!((gearbox("", "790 N·m"), gearbox("ultimate", "790 N·m")), ("short", "short"));
    // A margin that is written counts for all, and those of its kind are never less.
    let wish =
        [("wanted.strength", "2"), ("gearbox.rating_kind", "yield"), ("gearbox.torque_rating", "1500 N·m")];
    assert_eq!(on(&wish, "gearbox.strength").0, "tight");
}

#[test]
fn a_rating_says_nothing_of_a_shock_that_is_not_known() {
    let without = |kind: &str, rating: &str| {
        let lines =
            [("clutch.shock_factor", ""), ("gearbox.rating_kind", kind), ("gearbox.torque_rating", rating)];
        on(&lines, "gearbox.strength")
    };
    assert_eq!(without("continuous", "9000 N·m"), ("tight", 30.0));
    assert_eq!(without("", "9000 N·m"), ("tight", 30.0));
    assert_eq!(without("", "290 N·m").0, "short");
    assert_eq!(without("peak", "9000 N·m").0, "not known");
    assert_eq!(without("peak", "290 N·m").0, "short");
    let mut path = path(9000.0, Side::Input, None);
    assert_eq!(of_path(&path), (9000.0 / 800.0, Verdict::Meets));
    path.shock_factor = None;
    assert_eq!(of_path(&path), (30.0, Verdict::Tight));
    assert_eq!(
        path.parts_table().unwrap().word("open", 0),
        Some("the shock of a dropped clutch is not known")
    );
}

#[test]
fn the_weakest_part_says_that_another_may_be_weaker() {
    let mut whole = path(9000.0, Side::Input, Some(RatingKind::Continuous));
    assert_eq!(whole.weakest().unwrap().not_known, 0);
    let unrated = Part { name: "shaft".to_owned(), torque_rating: None, ..whole.parts[0].clone() };
    let with = TorquePath { parts: vec![whole.parts[0].clone(), unrated], ..whole.clone() };
    assert_eq!(with.weakest().unwrap().not_known, 1);
    whole.shock_factor = None;
    assert_eq!(whole.weakest().unwrap().not_known, 1);
    whole.parts[0].rating_kind = Some(RatingKind::Peak);
    assert!(whole.weakest().is_err());
}

#[test]
fn a_converter_multiplies_the_torque_and_nothing_is_taken_for_a_clutch() {
    let clutchless = [
        ("clutch.capacity", ""),
        ("clutch.high_capacity", ""),
        ("clutch.shock_factor", ""),
        ("gearbox.torque_rating", "420 N·m"),
        ("gearbox.rating_kind", "continuous"),
    ];
    let with = |more: &Lines<'static>| [&clutchless[..], more].concat();
    let neither = assessed(&with(&[]));
    assert_eq!(verdict_word(&neither, "gearbox.strength"), "not known");
    assert!(
        lacks(&neither, "gearbox.strength").contains("converter.stall_ratio"),
        "{}",
        lacks(&neither, "gearbox.strength")
    );
    // What the engine alone breaks is short.
    assert_eq!(on(&with(&[("gearbox.torque_rating", "290 N·m")]), "gearbox.strength").0, "short");
    let (word, margin) = on(&with(&[("converter.stall_ratio", "2")]), "gearbox.strength");
    assert_eq!((word, margin), ("short", 0.7));
    let (word, margin) = on(&with(&[("converter.stall_ratio", "1.3")]), "gearbox.strength");
    assert_eq!(word, "tight");
    near(margin, 420.0 / 390.0);
    // Without the shock of a gear that is engaged nothing is better than tight.
    let strong = [("converter.stall_ratio", "2"), ("gearbox.torque_rating", "800 N·m")];
    assert_eq!(on(&with(&strong), "gearbox.strength").0, "tight");
    let all = [&strong[..], &[("converter.shock_factor", "1.2")]].concat();
    assert_eq!(on(&with(&all), "gearbox.strength").0, "meets");
    // Neither: the engine drives the gearbox.
    let direct = [clutchless[3], clutchless[4], ("clutch", "none"), ("converter", "none")];
    assert_eq!(on(&direct, "gearbox.strength"), ("tight", 1.4));
    // A line of the clutch says that there is one.
    assert_eq!(on(&with(&[("clutch.capacity", "400 N·m")]), "gearbox.strength"), ("tight", 1.4));
    let mut path = path(420.0, Side::Input, Some(RatingKind::Continuous));
    (path.clutch_capacity, path.clutch_high_capacity, path.shock_factor) = (None, None, None);
    assert_eq!(of_path(&path).1, Verdict::NotKnown);
    path.stall_ratio = Stated::Given(Value::new(Ratio::from_si(2.0)));
    assert_eq!(of_path(&path), (0.7, Verdict::Short));
}

#[test]
fn one_shaft_carries_the_whole_axle_unless_it_is_open() {
    let lines = |differential: &'static str, rating: &'static str| {
        vec![
            ("engine.peak_torque", "600 N·m"),
            ("clutch.capacity", "700 N·m"),
            ("clutch.high_capacity", "800 N·m"),
            ("final_drive.differential", differential),
            ("half_shaft.torque_rating", rating),
            ("half_shaft.rating_kind", "continuous"),
            ("grip.driven_load", "24 kN"),
            ("grip.strength_coefficient", "0.9"),
            ("driveline.driven", "rear"),
            ("rear.tyre.loaded_radius", "370 mm"),
            ("final_drive.ratio", "6"),
        ]
    };
    for (differential, rating, word, margin) in [
        ("locked", "6000 N·m", "short", 6000.0 / 7992.0),
        ("limited_slip", "6000 N·m", "short", 6000.0 / 7992.0),
        ("locked", "9000 N·m", "tight", 9000.0 / 7992.0),
        ("open", "6000 N·m", "meets", 6000.0 / 3996.0),
        ("locked", "9990 N·m", "meets", 1.25),
    ] {
        let (found, of) = on(&lines(differential, rating), "half_shaft.strength");
        near(of, margin);
        assert_eq!(found, word, "{differential} {rating}");
    }
}

fn refusal(path: &str, text: &str) -> Option<String> {
    Sheet::new("").set(path, text).err().map(|error| error.to_string())
}

fn is_told(on: &Assessment, line: &str) -> bool {
    on.contradictions().iter().any(|found| found.path == line)
}

#[test]
fn a_low_range_is_no_faster_than_the_high_one() {
    for ratio in ["0.4", "0.99"] {
        let refused = refusal("transfer_case.low_ratio", ratio).unwrap();
        assert!(refused.contains("no faster than the high one"), "{refused}");
    }
    for ratio in ["1", "2.03"] {
        assert_eq!(refusal("transfer_case.low_ratio", ratio), None, "{ratio}");
    }
    let low = [
        ("transfer_case", ""),
        ("transfer_case.low_ratio", "2"),
        ("transfer_case.efficiency", "1"),
        ("propeller_shaft.torque_rating", "6000 N·m"),
    ];
    // 400 * 2 * 3 * 2 = 4800.
    assert_eq!(on(&low, "propeller_shaft.strength"), ("meets", 1.25));
}

#[test]
fn an_efficiency_that_no_geared_part_has_is_refused() {
    for (path, text) in [
        ("gearbox.efficiency", "9.7 %"),
        ("transfer_case.efficiency", "50 %"),
        ("final_drive.efficiency", "0.69"),
        ("driveline.efficiency", "29 %"),
    ] {
        assert!(refusal(path, text).unwrap().contains("plausibility limit"), "{path}");
    }
    for path in ["gearbox.efficiency", "transfer_case.efficiency", "final_drive.efficiency"] {
        assert_eq!(refusal(path, "0.7"), None, "{path}");
    }
    let with = |efficiency: f64| {
        let mut path = path(1000.0, Side::Output, Some(RatingKind::Peak));
        path.parts[0].efficiency = Some(Value::new(Ratio::from_si(efficiency)));
        path.parts_table().map(|table| table.numbers("demand").unwrap()[0])
    };
    assert!(with(0.097).unwrap_err().to_string().contains("efficiency"));
    assert!(with(0.69).is_err());
    // 400 * 2 * 3 * 0.7.
    near(with(0.7).unwrap(), 1680.0);
    let at_wheels = |efficiency: f64| {
        let [gear, axle, efficiency] = [3.0, 4.0, efficiency].map(Ratio::from_si);
        driveline::wheel_torque(Torque::from_si(300.0), gear, axle, efficiency)
    };
    assert!(at_wheels(0.29).is_err());
    near(at_wheels(0.3).unwrap().si(), 1080.0);
    let upstream = |efficiency: f64| {
        driveline::grip_torque_upstream(
            Torque::from_si(900.0),
            Ratio::from_si(3.0),
            Ratio::from_si(efficiency),
        )
    };
    assert!(upstream(0.29).is_err() && upstream(0.3).is_ok());
}

#[test]
fn a_driven_load_below_the_load_at_rest_clears_nothing() {
    let shaft = |lines: &Lines<'_>, load: &str, rating: &str| {
        let grip = [
            ("grip.driven_load", load),
            ("grip.strength_coefficient", "1"),
            ("grip.inertia_factor", "1.2"),
            ("grip.loaded_radius", "350 mm"),
            ("half_shaft.torque_rating", rating),
            ("half_shaft.rating_kind", "peak"),
        ];
        let on = assessed(&[&grip[..], lines].concat());
        (verdict_word(&on, "half_shaft.strength"), is_told(&on, "grip.driven_load"))
    };
    // 1300 kg at the rear are 12.7 kN, 700 kg in front 6.9 kN.
    let rear = [("driveline.driven", "rear"), ("rear.axle_mass", "1300 kg"), ("front.axle_mass", "700 kg")];
    let front = [("driveline.driven", "front"), ("rear.axle_mass", "1300 kg"), ("front.axle_mass", "700 kg")];
    let either = [("rear.axle_mass", "1300 kg"), ("front.axle_mass", "700 kg")];
    for (lines, load, rating, verdict) in [
        (&rear[..], "1 kN", "400 N·m", "tight"),
        (&rear[..2], "1 kN", "400 N·m", "tight"),
        (&rear, "12 kN", "5000 N·m", "tight"),
        (&front, "5 kN", "5000 N·m", "tight"),
        (&either, "5 kN", "5000 N·m", "tight"),
        (&rear, "13 kN", "5000 N·m", "meets"),
        (&front, "7 kN", "5000 N·m", "meets"),
        // Too weak is too weak.
        (&rear, "1 kN", "200 N·m", "short"),
    ] {
        assert_eq!(
            shaft(lines, load, rating),
            (verdict, verdict == "tight" || rating == "200 N·m"),
            "{lines:?} {load}"
        );
    }
}

/// 10 N·m through 7.8, 2.03 and 4.78 to 1 are 649 N·m at the axle.
#[test]
fn a_drive_torque_below_that_of_the_driveline_clears_no_wind_up() {
    for (engine, torque, verdict) in [
        ("280 N·m", "900 N·m", Verdict::Tight),
        ("280 N·m", "3000 N·m", Verdict::Tight),
        ("10 N·m", "500 N·m", Verdict::Tight),
        ("10 N·m", "900 N·m", Verdict::Meets),
        ("280 N·m", "9000 N·m", Verdict::Short),
    ] {
        let on = demo("dray", &[("engine.peak_torque", engine), ("rear.drive_torque", torque)]).assess();
        assert_eq!(on.answer("rear.wind_up").unwrap().verdict, verdict, "{engine} {torque}");
        assert_eq!(is_told(&on, "rear.drive_torque"), verdict == Verdict::Tight, "{engine} {torque}");
    }
}

/// Two faces of 240 and 150 mm with a friction of 0.25: 48.75 N·m a kN.
#[test]
fn a_clutch_holds_no_more_than_its_sizes_give() {
    let with = |clamp: &str, more: &Lines<'_>| {
        let sizes = [
            ("clutch.capacity", "400 N·m"),
            ("clutch.high_capacity", "450 N·m"),
            ("clutch.clamp_load", clamp),
            ("clutch.friction", "0.25"),
            ("clutch.outer_diameter", "240 mm"),
            ("clutch.inner_diameter", "150 mm"),
            ("clutch.faces", "2"),
            ("half_shaft.rating_kind", "peak"),
        ];
        assessed(&[&sizes[..], more].concat())
    };
    for (clamp, verdict) in [("5 kN", "tight"), ("7.18 kN", "tight"), ("7.6 kN", "meets"), ("9 kN", "meets")]
    {
        let on = with(clamp, &[]);
        assert_eq!(verdict_word(&on, "clutch.holds"), verdict, "{clamp}");
        assert_eq!(is_told(&on, "clutch.capacity"), verdict == "tight", "{clamp}");
    }
    // At its highest, under uniform pressure, 0.4 gives 603 N·m: what is behind it bears no less.
    for (friction, verdict) in [("0.4", "tight"), ("0.3", "meets")] {
        let on = with("7.6 kN", &[("clutch.high_friction", friction)]);
        assert_eq!(verdict_word(&on, "half_shaft.strength"), verdict, "{friction}");
        assert_eq!(is_told(&on, "clutch.high_capacity"), verdict == "tight", "{friction}");
    }
}

/// The model counts the load at rest, where the sheet doubts a driven load below it.
#[test]
fn a_torque_path_counts_the_load_at_rest() {
    let bounded = |load: f64, rest: Option<f64>| {
        let mut path = path(9000.0, Side::Input, Some(RatingKind::Peak));
        let force = |newtons: f64| Value::new(axlewright::units::Force::from_si(newtons));
        path.grip = Some(driveline::Grip {
            driven_load: force(load),
            load_at_rest: rest.map(force),
            loaded_radius: Value::parse("350 mm").unwrap(),
            strength_coefficient: Some(Value::new(Ratio::from_si(1.0))),
            pull_coefficient: Some(Value::new(Ratio::from_si(0.8))),
            inertia_factor: Some(Value::new(Ratio::from_si(1.0))),
        });
        path.parts[0] = Part {
            ratio: None,
            peak_ratio: None,
            torque_rating: Some(Value::new(Torque::from_si(500.0))),
            ..path.parts[0].clone()
        };
        (of_path(&path), path.pull().unwrap().wheel_torque.si())
    };
    // On 350 mm 1 kN holds 350 N·m, and 2 kN 700 N·m; 800 N·m come.
    for (load, rest, held, word) in [
        (1e3, None, 350.0, Verdict::Meets),
        (1e3, Some(2e3), 700.0, Verdict::Short),
        (1e3, Some(1.2e3), 420.0, Verdict::Tight),
        (1e3, Some(0.9e3), 350.0, Verdict::Meets),
    ] {
        let ((margin, verdict), pull) = bounded(load, rest);
        near(margin, 500.0 / held);
        assert_eq!(verdict, word, "{load} {rest:?}");
        near(pull, 280.0);
    }
    // The sheet gives it to its model.
    let lines = [
        ("driveline.driven", "rear"),
        ("rear.axle_mass", "1300 kg"),
        ("grip.driven_load", "5 kN"),
        ("grip.strength_coefficient", "1"),
        ("grip.loaded_radius", "350 mm"),
    ];
    for (driven, at_rest) in [("rear", Some(1300.0 * 9.80665)), ("front", None)] {
        let all = [&lines[1..], &[("driveline.driven", driven)]].concat();
        let found = value(&assessed(&all), "grip.load_at_rest");
        at_rest.map_or_else(|| assert!(found.is_nan()), |load| near(found, load));
    }
}

/// The shock of a gear that is engaged behind a converter is not that of a clutch.
#[test]
fn a_model_of_the_sheet_takes_no_shock_of_a_clutch_for_that_of_a_converter() {
    let shock = |lines: &Lines<'static>| value(&assessed(lines), "driveline.shock_factor");
    let converter = [("clutch.capacity", ""), ("clutch.high_capacity", ""), ("converter.stall_ratio", "2")];
    assert!(shock(&converter).is_nan());
    let alone = [&converter[..], &[("converter.shock_factor", "1.5"), ("clutch.shock_factor", "")]].concat();
    near(shock(&alone), 1.5);
    // The factor of a clutch says that there is one, and what it holds is not known.
    assert!(shock(&alone[..4]).is_nan());
    near(shock(&[]), 2.0);
    // Both: both factors are wanted, and the greater one counts.
    assert!(shock(&converter[2..]).is_nan());
    near(shock(&[converter[2], ("converter.shock_factor", "1.5")]), 2.0);
}

/// Losses stand between the engine and the grip: gears whose losses nobody told may lose as much as any, 30 %.
#[test]
fn gears_without_an_efficiency_relieve_nothing_by_it() {
    let shaft = |efficiency: Option<f64>, ratio: Option<f64>| {
        let ratios = |of: f64| Value::new(Ratio::from_si(of));
        let mut path = path(1000.0, Side::Input, Some(RatingKind::Continuous));
        path.grip = Some(driveline::Grip {
            driven_load: Value::parse("8 kN").unwrap(),
            load_at_rest: None,
            loaded_radius: Value::parse("350 mm").unwrap(),
            strength_coefficient: Some(ratios(1.0)),
            pull_coefficient: None,
            inertia_factor: None,
        });
        // 900 N·m of the engine in first gear, and the shaft before the axle.
        path.parts[0].torque_rating = None;
        let shaft = Part {
            ratio: None,
            peak_ratio: None,
            torque_rating: Some(Value::new(Torque::from_si(900.0))),
            ..path.parts[0].clone()
        };
        let axle = Part {
            ratio: ratio.map(ratios),
            least_ratio: ratio.map(ratios),
            peak_ratio: ratio.map(ratios),
            efficiency: efficiency.map(ratios),
            torque_rating: None,
            ..path.parts[0].clone()
        };
        path.parts.extend([shaft, axle]);
        let table = path.parts_table().unwrap();
        table.numbers("demand").unwrap()[1]
    };
    // 2800 N·m at the wheels are 700 N·m before an axle of 4 to 1 without losses.
    near(shaft(Some(1.0), Some(4.0)), 700.0);
    near(shaft(Some(0.9), Some(4.0)), 2800.0 / 3.6);
    near(shaft(None, Some(4.0)), 900.0);
    near(shaft(None, Some(5.0)), 2800.0 / 3.5);
    // A shaft has no gears to lose anything.
    near(shaft(None, None), 900.0);
}

/// Before: a path without reverse or low range had a finite wanted margin, and met where the sheet is at most `tight`.
#[test]
fn a_model_of_the_path_says_no_more_than_the_sheet() {
    let ratio = |of: f64| Some(Value::new(Ratio::from_si(of)));
    let shaft = |peak: Option<f64>, efficiency: Option<f64>| {
        let mut whole = path(1000.0, Side::Input, Some(RatingKind::Peak));
        whole.parts[0].torque_rating = None;
        whole.parts[0].efficiency = ratio(1.0);
        whole.parts[0].peak_ratio = peak.and_then(ratio);
        let case = Part {
            name: "transfer case".to_owned(),
            ratio: None,
            peak_ratio: None,
            efficiency: efficiency.and_then(ratio),
            torque_rating: Some(Value::new(Torque::from_si(3000.0))),
            ..whole.parts[0].clone()
        };
        let behind = Part { name: "shaft".to_owned(), efficiency: None, ..case.clone() };
        whole.parts.extend([case, behind]);
        whole
    };
    let last = |path: &TorquePath| {
        let table = path.parts_table().unwrap();
        let of = |name: &str| Ratio::from_si(table.numbers(name).unwrap()[2]);
        (
            of("demand").si(),
            Verdict::of_ratio(of("margin"), of("wanted")),
            table.word("open", 2).unwrap().to_owned(),
        )
    };
    // 400 * 2 * 3 = 2400 N·m in first gear.
    assert_eq!(last(&shaft(Some(3.0), None)), (2400.0, Verdict::Meets, String::new()));
    let (demand, word, open) = last(&shaft(None, None));
    assert_eq!((demand, word), (2400.0, Verdict::Tight));
    assert_eq!(open, "a gear or a range is not known");
    assert_eq!(shaft(None, None).weakest().unwrap().not_known, 3);
    // A reverse of 4 is told: 3200 N·m. A transfer case that loses power may have a low range.
    assert_eq!(last(&shaft(Some(4.0), None)), (3200.0, Verdict::Short, String::new()));
    assert_eq!(last(&shaft(Some(3.0), Some(0.97))).1, Verdict::Tight);
    assert!(shaft(Some(2.0), None).check().is_err());

    // The model of a sheet has the marks of the sheet.
    let driveline = |lines: &Lines<'_>| {
        let mut all: Vec<(&str, &str)> = WHOLE.to_vec();
        all.push(("half_shaft.rating_kind", "peak"));
        all.retain(|(known, _)| !lines.iter().any(|(path, _)| known == path));
        all.extend(lines.iter().filter(|(_, text)| !text.is_empty()));
        all.sort_by_key(|(path, text)| (*text != "none", *path));
        sheet(&all)
    };
    let case = ("transfer_case.efficiency", "97 %");
    for (lines, wanted) in [
        (&[][..], "meets"),
        (&[("gearbox.reverse_ratio", "")], "tight"),
        (&[("transfer_case", ""), case], "tight"),
        (&[("transfer_case", ""), case, ("transfer_case.low_ratio", "1")], "meets"),
    ] {
        let sheet = driveline(lines);
        let on = sheet.assess();
        assert_eq!(verdict_word(&on, "propeller_shaft.strength"), wanted, "{lines:?}");
        let model = sheet.model("torque_path").unwrap().read::<TorquePath>().unwrap();
        let table = model.parts_table().unwrap();
        for (place, finding) in [(0, "gearbox"), (2, "propeller_shaft"), (4, "half_shaft")] {
            let of = |name: &str| Ratio::from_si(table.numbers(name).unwrap()[place]);
            let word = Verdict::of_ratio(of("margin"), of("wanted")).word();
            assert_eq!(word, verdict_word(&on, &format!("{finding}.strength")), "{finding}: {lines:?}");
        }
    }
    // The shock factor of a clutch beside a converter: there is a clutch, and what it holds is not known.
    let both = driveline(&[
        ("clutch.capacity", ""),
        ("clutch.high_capacity", ""),
        ("converter.stall_ratio", "2"),
        ("converter.shock_factor", "1.2"),
    ]);
    assert_eq!(verdict_word(&both.assess(), "propeller_shaft.strength"), "not known");
    let table = both.model("torque_path").unwrap().read::<TorquePath>().unwrap().parts_table().unwrap();
    assert!(table.numbers("margin").unwrap()[2].is_nan());
}
