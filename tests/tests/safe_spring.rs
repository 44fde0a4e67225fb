//! Verdicts on springs and dampers count what carries, what is inclined, what stands apart, and the worse wheel.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict::{Meets, NotKnown, Short, Tight};
use axlewright::sheet::{Assessment, Sheet};
use axlewright::spring::{Corner, Mounting, solid_length_closed, solid_length_closed_ground};
use axlewright::units::{Force, Length, Ratio};
use axlewright::{Model, Stated, Value};
use axlewright_tests::assessed::{assessed, lacks, sheet, text, value, verdict};

fn corner() -> Corner {
    Corner::from_text(&text("dunlin_front_spring")).unwrap()
}

fn mm(length: f64) -> Length {
    Length::from_si(length / 1e3)
}

/// A corner on a sheet of its own, every clearance told.
fn corner_sheet(lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = sheet(&[
        ("front.spring.rate", "60 N/mm"),
        ("front.spring.free_length", "400 mm"),
        ("front.spring.solid_length", "100 mm"),
        ("front.spring.minimum_gap", "10 mm"),
        ("front.spring.motion_ratio", "0.6"),
        ("front.spring.droop_length", "390 mm"),
        ("front.sprung_mass", "300 kg"),
        ("front.damper.stroke", "130 mm"),
        ("front.damper.mounting", "coil_over"),
        ("front.damper.gas_force", "none"),
        ("front.joint_bump_clearance", "none"),
        ("front.hose_bump_clearance", "none"),
        ("front.tyre_clearance", "none"),
        ("front.joint_droop_clearance", "none"),
        ("front.hose_droop_clearance", "none"),
        ("front.side_travel", "0 mm"),
        ("front.bump_stop_travel", "none"),
    ]);
    for (path, text) in lines {
        if text.is_empty() { sheet.remove(path).unwrap() } else { sheet.set(path, text).unwrap() }
    }
    sheet
}

fn on(lines: &[(&str, &str)]) -> Assessment {
    corner_sheet(lines).assess()
}

/// The ratio of a damper that stands apart is never that of the spring.
#[test]
fn a_damper_apart_needs_a_ratio_of_its_own() {
    let said = |corner: &Corner| corner.check().unwrap_err().to_string();
    let apart = Corner { damper_mounting: Some(Mounting::Apart), ..corner() };
    let unsaid = Corner { damper_mounting: None, ..corner() };
    for corner in [&apart, &unsaid] {
        assert!(said(corner).contains("damper_motion_ratio"), "{}", said(corner));
        assert!(corner.at_ride_height().is_err());
    }
    let own = Corner { damper_motion_ratio: Some(Value::new(Ratio::from_si(0.9))), ..apart };
    assert!(own.at_ride_height().unwrap().bump_remaining < corner().at_ride_height().unwrap().bump_remaining);
    // On the sheet.
    assert_eq!(verdict(&on(&[]), "front.bump"), Meets);
    assert_eq!(verdict(&on(&[("front.damper.mounting", "")]), "front.bump"), NotKnown);
    assert_eq!(verdict(&on(&[("front.damper.mounting", "apart")]), "front.bump"), NotKnown);
    let real = on(&[("front.damper.mounting", "apart"), ("front.damper.motion_ratio", "0.9")]);
    assert_eq!(verdict(&real, "front.bump"), Tight);
}

/// A corner that stands on its open damper has the whole of its stroke, and no more.
#[test]
fn a_corner_that_is_topped_out_adds_no_travel() {
    for (rate, ratio) in [(200.0, 1.0), (400.0, 1.0), (300.0, 0.8)] {
        let on = Corner {
            rate: Value::new(axlewright::units::LinearStiffness::from_si(rate * 1e3)),
            motion_ratio: Value::new(Ratio::from_si(ratio)),
            damper_stroke: Value::new(mm(100.0)),
            bump_stop_travel: Stated::None,
            solid_length: Value::new(mm(50.0)),
            ..corner()
        };
        let on = on.at_ride_height().unwrap();
        let most = 100.0 / ratio;
        assert!((on.bump_remaining.si() * 1e3 + on.sag.si().max(0.0) * 1e3 - most).abs() < 1e-9, "{on:?}");
    }
}

/// Gas carries a part of the weight: less sag. Until it is told, droop is no better than tight.
#[test]
fn gas_counts_in_the_sag() {
    let without = corner().at_ride_height().unwrap();
    for gas in [250.0, 400.0] {
        let with = Corner { gas_force: Stated::Given(Value::new(Force::from_si(gas))), ..corner() };
        let with = with.at_ride_height().unwrap();
        // Of a coil-over by hand: the spring carries so much less, F_g / (k r) of travel.
        let less = gas / (450.0 * 4.4482216152605 / 0.0254) / 0.6;
        assert!((without.sag.si() - with.sag.si() - less).abs() < 1e-12);
        assert!((with.spring_force.si() - (without.spring_force.si() - gas)).abs() < 1e-9);
    }
    // Apart, by the motion ratio of the damper.
    let apart = Corner {
        gas_force: Stated::Given(Value::new(Force::from_si(250.0))),
        damper_mounting: Some(Mounting::Apart),
        damper_motion_ratio: Some(Value::new(Ratio::from_si(0.9))),
        ..corner()
    };
    let apart = apart.at_ride_height().unwrap();
    assert!((apart.spring_force.si() - (without.spring_force.si() - 250.0 * 0.9 / 0.6)).abs() < 1e-9);
    // On the sheet.
    let (none, some) = (on(&[]), on(&[("front.damper.gas_force", "250 N")]));
    let less = value(&none, "front.droop_remaining") - value(&some, "front.droop_remaining");
    assert!((less - 250.0 / 60e3 / 0.6).abs() < 1e-12);
    assert_eq!(value(&none, "front.natural_frequency"), value(&some, "front.natural_frequency"));
    assert_eq!(verdict(&none, "front.droop"), Meets);
    assert_eq!(verdict(&on(&[("front.damper.gas_force", "")]), "front.droop"), Tight);
    assert_eq!(verdict(&on(&[("front.damper.gas_force", "4.5 kN")]), "front.droop"), Short);
}

/// A damper at 30 deg from what was measured at its mount damps by cos^2.
#[test]
fn a_damper_at_an_angle_counts_its_angle() {
    let lines = [
        ("front.damper.mounting", "apart"),
        ("front.damper.rate", "3 N·s/mm"),
        ("front.damper.mount_ratio", "0.9"),
    ];
    let at = |angle: &str| {
        value(&on(&[&lines[..], &[("front.damper.angle", angle)]].concat()), "front.damper.at_wheel")
    };
    let upright = at("0 deg");
    assert!((upright - 3000.0 * 0.81).abs() < 1e-9);
    for (angle, cosine) in [("30 deg", 0.75_f64.sqrt()), ("45 deg", 0.5_f64.sqrt())] {
        assert!((at(angle) / upright - cosine * cosine).abs() < 1e-12, "{angle}");
    }
    assert!(at("").is_nan());
}

/// The heavier wheel has less bump, the lighter one less droop.
#[test]
fn the_worse_wheel_of_an_axle_counts() {
    let scales = |left: &'static str, right: &'static str| {
        on(&[
            ("front.sprung_mass", ""),
            ("front.unsprung_mass", "0 kg"),
            ("front.side_travel", ""),
            ("scales.left_front", left),
            ("scales.right_front", right),
        ])
    };
    let (alike, apart) = (scales("300 kg", "300 kg"), scales("500 kg", "100 kg"));
    let rate = 60e3 * 0.36;
    let by_hand = 200.0 * 9.80665 / rate;
    for (line, finding) in [("front.bump_clear", "front.bump"), ("front.droop_clear", "front.droop")] {
        let less = value(&alike, line) - value(&apart, line);
        assert!((less - by_hand).abs() < 1e-12, "{line} {less} {by_hand}");
        assert_eq!(verdict(&alike, finding), Meets);
        assert_ne!(verdict(&apart, finding), Meets);
    }
    // Whichever side it is, and the sag of that wheel alone by its own spring.
    assert_eq!(value(&scales("100 kg", "500 kg"), "front.bump_clear"), value(&apart, "front.bump_clear"));
    let heavy = on(&[("front.sprung_mass", "500 kg")]);
    assert!((value(&heavy, "front.bump_remaining") - value(&apart, "front.bump_clear")).abs() < 1e-12);
    let light = on(&[("front.sprung_mass", "100 kg")]);
    assert!((value(&light, "front.droop_remaining") - value(&apart, "front.droop_clear")).abs() < 1e-12);
}

/// An axle that was weighed as a whole says nothing of its sides: travel is no better than tight until they are told.
#[test]
fn travel_needs_the_weight_of_both_sides() {
    let axle = |more: &[(&'static str, &'static str)]| {
        let whole = [
            ("front.sprung_mass", ""),
            ("front.unsprung_mass", "0 kg"),
            ("front.axle_mass", "600 kg"),
            ("front.side_travel", ""),
        ];
        on(&[&whole[..], more].concat())
    };
    let both = |on: &Assessment| ["front.bump", "front.droop"].map(|finding| verdict(on, finding));
    let unweighed = axle(&[]);
    assert_eq!(both(&unweighed), [Tight, Tight]);
    assert!(unweighed.assumed().iter().any(|one| one.ground.contains("heavier_wheel")));
    // The sprung mass of a wheel alone says nothing of the other one.
    assert_eq!(both(&on(&[("front.side_travel", "")])), [Tight, Tight]);
    assert_eq!(both(&axle(&[("front.heavier_wheel", "301 kg")])), [Meets, Meets]);
    let apart = axle(&[("front.heavier_wheel", "500 kg")]);
    assert!((value(&apart, "front.side_travel") - 200.0 * 9.80665 / (60e3 * 0.36)).abs() < 1e-12);
    assert!(both(&apart).iter().all(|verdict| *verdict != Meets));
    assert_eq!(both(&axle(&[("front.heavier_wheel", "290 kg")])), [NotKnown, NotKnown]);
    assert_eq!(both(&axle(&[("front.side_travel", "1 mm")])), [Meets, Meets]);
}

/// A bump stop of which nobody told is none that is not there.
#[test]
fn a_bump_stop_that_is_left_out_clears_nothing() {
    let untold = on(&[("front.bump_stop_travel", "")]);
    assert_eq!(verdict(&untold, "front.bump"), Tight);
    let write = untold.to_write(untold.answer("front.bump").unwrap());
    assert!(write.iter().any(|one| one.contains("bump_stop_travel")), "{write:?}");
    // Told: none, far away, near; or by its clearance. Droop is not concerned.
    assert_eq!(verdict(&untold, "front.droop"), Meets);
    assert_eq!(verdict(&on(&[]), "front.bump"), Meets);
    let remaining = value(&on(&[]), "front.bump_remaining");
    assert_eq!(remaining.to_bits(), value(&untold, "front.bump_remaining").to_bits());
    assert_eq!(verdict(&on(&[("front.bump_stop_travel", "400 mm")]), "front.bump"), Meets);
    assert_ne!(verdict(&on(&[("front.bump_stop_travel", "150 mm")]), "front.bump"), Meets);
    let clearance =
        |text: &'static str| on(&[("front.bump_stop_travel", ""), ("front.bump_clearance", text)]);
    assert_eq!(verdict(&clearance("100 mm"), "front.bump"), Meets);
    assert_eq!(verdict(&clearance("30 mm"), "front.bump"), Tight);
    // The rear of the demo, whose stop ends the travel that is wanted.
    let wanted = ("wanted.bump", "80 mm");
    assert_ne!(verdict(&assessed("dunlin_measured", &[wanted]), "rear.bump"), Meets);
    let left_out = assessed("dunlin_measured", &[wanted, ("rear.bump_stop_travel", "")]);
    assert_eq!(verdict(&left_out, "rear.bump"), Tight);
    let none = assessed("dunlin_measured", &[wanted, ("rear.bump_stop_travel", "none")]);
    assert_eq!(verdict(&none, "rear.bump"), Meets);
}

/// Joint, hose and tyre end the travel too; until each is told, travel is no better than tight, and the report says what to write.
#[test]
fn travel_is_clear_of_joint_hose_and_tyre() {
    let lines = [
        ("front.joint_bump_clearance", "front.bump"),
        ("front.hose_bump_clearance", "front.bump"),
        ("front.tyre_clearance", "front.bump"),
        ("front.joint_droop_clearance", "front.droop"),
        ("front.hose_droop_clearance", "front.droop"),
    ];
    assert_eq!([verdict(&on(&[]), "front.bump"), verdict(&on(&[]), "front.droop")], [Meets, Meets]);
    for (line, finding) in lines {
        let untold = on(&[(line, "")]);
        assert_eq!(verdict(&untold, finding), Tight, "{line}");
        let key = line.trim_start_matches("front.");
        assert!(untold.assumed().iter().any(|one| one.ground.contains(key)), "{line}");
        let near = on(&[(line, "20 mm")]);
        assert_eq!((verdict(&near, finding), near.answer(finding).unwrap().value), (Tight, 0.02), "{line}");
        assert_eq!(verdict(&on(&[(line, "300 mm")]), finding), Meets, "{line}");
    }
    // Nothing of that is taken for travel that spring and damper do not have.
    let stiff = on(&[("front.tyre_clearance", ""), ("front.spring.solid_length", "340 mm")]);
    assert_eq!(verdict(&stiff, "front.bump"), Short);
    assert_eq!(verdict(&assessed("dunlin_measured", &[]), "front.bump"), Meets);
}

/// The model has the sheet's clearance of the stop.
#[test]
fn a_corner_and_its_sheet_agree_on_the_bump_clearance() {
    for clearance in ["25 mm", "60 mm", "500 mm"] {
        let sheet = corner_sheet(&[("front.bump_clearance", clearance), ("front.bump_stop_travel", "none")]);
        let corner = sheet.model("front.corner").unwrap().read::<Corner>().unwrap();
        let remaining = corner.at_ride_height().unwrap().bump_remaining.si();
        assert_eq!(
            remaining.to_bits(),
            value(&sheet.assess(), "front.bump_remaining").to_bits(),
            "{clearance}"
        );
    }
    let levered = Corner {
        motion_ratio: Value::new(Ratio::from_si(1.2)),
        bump_clearance: Some(Value::new(mm(12.0))),
        ..corner()
    };
    assert!((levered.at_ride_height().unwrap().bump_remaining.si() - 0.01).abs() < 1e-15);
}

/// Ends that are not ground: the upper of both rules.
#[test]
fn closed_ends_that_are_not_ground_count_half_a_wire_more() {
    for (coils, wire, by_hand) in [(9.0, 14.0, 147.0), (10.0, 12.0, 138.0), (7.75, 16.0, 148.0)] {
        let (coils, wire) = (Ratio::from_si(coils), mm(wire));
        assert!((solid_length_closed(coils, wire).unwrap().si() * 1e3 - by_hand).abs() < 1e-9);
        let ground = solid_length_closed_ground(coils, wire).unwrap();
        assert!((ground - coils * wire).si().abs() < 1e-15);
    }
}

/// Wire, coils, solid length and rate of one spring belong together.
#[test]
fn a_spring_that_its_wire_does_not_give_is_refused() {
    let measured = |lines: &[(&str, &str)]| assessed("dunlin_measured", lines);
    let known = ["front.coil_bind", "front.bump", "front.spring_strength", "front.frequency"];
    let right = measured(&[]);
    assert_eq!(known.map(|finding| verdict(&right, finding)), [Meets; 4]);
    // 8.3 active coils of 16 mm are 132.8 mm long, however they are pressed.
    for (solid, met) in [("100 mm", false), ("130 mm", false), ("132 mm", true), ("150 mm", true)] {
        let on = measured(&[("front.spring.solid_length", solid)]);
        assert_eq!(verdict(&on, "front.coil_bind") == Meets, met, "{solid}");
        let why = lacks(&on, "front.coil_bind");
        assert_eq!(why.contains("is less than the active coils are long"), !met, "{why}");
    }
    let thick = measured(&[("front.spring.mean_diameter", "16 mm")]);
    assert_eq!(verdict(&thick, "front.coil_bind"), NotKnown);
    // The wire gives 96.3 N/mm, 550 lbf/in, with 78.5 GPa. The frequency stays that of the written rate.
    let low = ["front.spring.rate", "front.spring.shear_modulus", "front.damper.closed_length"];
    let rate = |rate: &str| measured(&[(low[0], rate), (low[1], "78.5 GPa"), (low[2], "430 mm")]);
    for (text, met) in
        [("420 lbf/in", false), ("700 lbf/in", false), ("500 lbf/in", true), ("600 lbf/in", true)]
    {
        let on = rate(text);
        assert_eq!(verdict(&on, "front.spring_strength") != NotKnown, met, "{text}");
        let why = lacks(&on, "front.spring_strength");
        assert_eq!(why.contains("differs by more than 15 % from the rate of its wire"), !met, "{why}");
    }
    // Without a written modulus the usual one tells it as well.
    assert_eq!(verdict(&measured(&[(low[0], "420 lbf/in")]), "front.spring_strength"), NotKnown);
    // A spring of which no coils are counted is not held against them.
    let uncounted =
        [(low[0], "420 lbf/in"), ("front.spring.active_coils", ""), ("front.spring.solid_length", "100 mm")];
    assert_ne!(verdict(&measured(&uncounted), "front.spring_strength"), NotKnown);
}

/// Travel of the wheel by which a spring of this ratio and change of it shortens by so much, by bisection: `r z + r' z^2 / 2`.
fn travel_for(shortening: f64, gradient: f64) -> f64 {
    let (mut low, mut high) = (-0.3, 0.3);
    for _ in 0..80 {
        let middle: f64 = 0.5 * (low + high);
        if 0.6 * middle + 0.5 * gradient * middle * middle < shortening {
            low = middle
        } else {
            high = middle
        }
    }
    0.5 * (low + high)
}

/// A ratio that falls in bump leaves less droop, and one that grows leaves less bump.
#[test]
fn a_motion_ratio_that_changes_counts_over_the_travel() {
    let with = |gradient: &'static str| {
        let wanted = [("wanted.bump", "95 mm"), ("wanted.droop", "115 mm")];
        on(&[&wanted[..], &[("front.spring.ratio_gradient", gradient)]].concat())
    };
    // 300 kg on 60 N/mm at 0.6 leave 71.7 mm to full droop along the spring, and 58.3 mm of the stroke of 130 mm.
    let droop = 0.39 - (0.4 - 300.0 * 9.80665 / 0.6 / 60e3);
    for (gradient, of, bump, drooped) in
        [("0 1/m", 0.0, Meets, Meets), ("1 1/m", 1.0, Tight, Meets), ("-1 1/m", -1.0, Meets, Tight)]
    {
        let on = with(gradient);
        let [up, down] = [travel_for(0.13 - droop, of), -travel_for(-droop, of)];
        assert!((value(&on, "front.bump_clear") - up).abs() < 1e-9, "{gradient}");
        assert!((value(&on, "front.droop_clear") - down).abs() < 1e-9, "{gradient}");
        assert_eq!([verdict(&on, "front.bump"), verdict(&on, "front.droop")], [bump, drooped], "{gradient}");
    }
    // Coil bind before a damper that stands apart, with the spring's own way over the travel.
    let apart = [
        ("front.damper.mounting", "apart"),
        ("front.damper.motion_ratio", "0.9"),
        ("front.damper.stroke", "300 mm"),
        ("front.spring.solid_length", "175 mm"),
    ];
    for (gradient, of, meets) in [("0 1/m", 0.0, true), ("-0.5 1/m", -0.5, true), ("0.5 1/m", 0.5, false)] {
        let on = on(&[&apart[..], &[("front.spring.ratio_gradient", gradient)]].concat());
        let sag = -travel_for(-droop, of);
        let closed = 0.3 / 0.9 - sag;
        let used = 0.6 * closed + 0.5 * of * closed * closed + droop;
        let left = 0.39 - used - 0.185;
        assert!((value(&on, "front.spring.bind_margin") - left).abs() < 1e-9, "{gradient}: {left}");
        assert_eq!(verdict(&on, "front.coil_bind") == Meets, meets, "{gradient}");
    }
}

/// The model says what it does not know, where the sheet is no better than tight.
#[test]
fn a_corner_marks_what_could_still_take_from_its_travel() {
    let open = |corner: Corner| {
        let on = corner.at_ride_height().unwrap();
        [on.droop_open, on.bump_open].map(|open| !open.is_empty())
    };
    let gas = Stated::Given(Value::new(Force::from_si(250.0)));
    assert_eq!(open(corner()), [true, true]);
    let told = Corner {
        gas_force: Stated::None,
        joint_bump_clearance: Stated::None,
        hose_bump_clearance: Stated::None,
        tyre_clearance: Stated::None,
        joint_droop_clearance: Stated::None,
        hose_droop_clearance: Stated::None,
        ..corner()
    };
    assert_eq!(open(told.clone()), [false, false]);
    assert_eq!(open(Corner { gas_force: gas, ..told.clone() }), [false, false]);
    assert_eq!(open(Corner { gas_force: Stated::Unknown, ..told.clone() }), [true, false]);
    assert_eq!(open(Corner { bump_stop_travel: Stated::Unknown, ..told.clone() }), [false, true]);
    assert_eq!(open(Corner { bump_stop_travel: Stated::None, ..told.clone() }), [false, false]);
    let clear =
        Corner { bump_stop_travel: Stated::Unknown, bump_clearance: Some(Value::new(mm(40.0))), ..told };
    assert_eq!(open(clear), [false, false]);
    // The same corner on a sheet.
    for (line, finding, place) in [
        ("front.damper.gas_force", "front.droop", 0),
        ("front.joint_droop_clearance", "front.droop", 0),
        ("front.hose_droop_clearance", "front.droop", 0),
        ("front.bump_stop_travel", "front.bump", 1),
        ("front.joint_bump_clearance", "front.bump", 1),
        ("front.hose_bump_clearance", "front.bump", 1),
        ("front.tyre_clearance", "front.bump", 1),
    ] {
        let sheet = corner_sheet(&[(line, "")]);
        let marked = open(sheet.model("front.corner").unwrap().read::<Corner>().unwrap());
        assert_eq!((marked[place], verdict(&sheet.assess(), finding)), (true, Tight), "{line}");
    }
}

/// The clear travel of the model is that of the sheet.
#[test]
fn a_corner_counts_joint_hose_and_tyre_as_the_sheet_does() {
    for lines in [
        vec![],
        vec![("front.tyre_clearance", "12 mm")],
        vec![("front.joint_bump_clearance", "30 mm"), ("front.hose_droop_clearance", "25 mm")],
        vec![("front.hose_bump_clearance", "8 mm"), ("front.joint_droop_clearance", "1.5 in")],
    ] {
        let sheet = corner_sheet(&lines);
        let on = sheet.model("front.corner").unwrap().read::<Corner>().unwrap().at_ride_height().unwrap();
        let sheet = sheet.assess();
        assert_eq!(on.bump_clear.si(), value(&sheet, "front.bump_clear"), "{lines:?}");
        assert_eq!(on.droop_clear.si(), value(&sheet, "front.droop_clear"), "{lines:?}");
    }
}

/// Spring and damper of a coil-over have one axis: another ratio of the damper is doubted on the sheet, and marked by the model.
#[test]
fn a_coil_over_has_one_ratio() {
    for (ratio, doubted) in [("0.5", true), ("0.57", true), ("0.6", false), ("0.603", false)] {
        let sheet = corner_sheet(&[("front.damper.motion_ratio", ratio)]);
        let corner = sheet.model("front.corner").unwrap().read::<Corner>().unwrap();
        let marked = !corner.at_ride_height().unwrap().bump_open.is_empty();
        assert_eq!((marked, verdict(&sheet.assess(), "front.bump") == Tight), (doubted, doubted), "{ratio}");
    }
}

/// A wheel that its preload holds on the open damper stands above ride height: what was told from there is nearer.
#[test]
fn what_was_told_from_ride_height_is_nearer_to_a_wheel_above_it() {
    for (rate, above) in [("600 N/mm", true), ("60 N/mm", false)] {
        let with = |line: &'static str| {
            let on = on(&[("front.spring.rate", rate), (line, "50 mm")]);
            (value(&on, "front.bump_clear"), value(&on, "front.droop_remaining").min(0.0))
        };
        for line in ["front.tyre_clearance", "front.joint_bump_clearance", "front.bump_clearance"] {
            let (clear, droop) = with(line);
            assert!(
                (clear - (0.05 + droop)).abs() < 1e-12 && (droop < 0.0) == above,
                "{line} {rate}: {clear}"
            );
        }
    }
}
