//! A live axle on leaf springs on the build sheet agrees with its model, and each finding turns when it should.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::sheet::{Assessment, Axis, Sheet};
use axlewright::suspension::{AxleBar, LeafAxle, LeafAxlePosition, LeafRate, Mount, Point};
use axlewright::units::{Angle, Force, Length, LinearStiffness, Torque};
use axlewright::{Model, Stated, Value, Verdict};
use axlewright_tests::assessed::{demo, lacks, text, value, verdict};

/// Lines written over those of a sheet.
type Lines<'a> = &'a [(&'a str, &'a str)];

fn dray(lines: Lines<'_>) -> Sheet {
    demo("dray", lines)
}

/// The document of the rear axle with the sheet's load and radius.
fn rear(assessment: &Assessment) -> LeafAxle {
    let mut model = LeafAxle::from_text(&text("dray_rear_axle")).unwrap();
    model.leaf.load = Value::new(Force::from_si(value(assessment, "rear.leaf.load")));
    let rate = LinearStiffness::from_si(value(assessment, "rear.spring.rate"));
    model.spring = Some(LeafRate { rate: Value::new(rate) });
    model.wheel.loaded_radius = Value::new(Length::from_si(value(assessment, "rear.tyre.loaded_radius")));
    model
}

fn at(model: &LeafAxle, heave: f64) -> LeafAxlePosition {
    model.at(Length::from_si(heave), Angle::from_si(0.0)).unwrap()
}

#[test]
fn an_axle_on_the_sheet_is_the_model_bit_for_bit() {
    let assessment = dray(&[]).assess();
    let of = |path: &str| value(&assessment, path);
    let model = rear(&assessment);
    let on = at(&model, 0.0);
    for (path, wanted) in [
        ("rear.wheel_rate", on.wheel_rate.si()),
        ("rear.roll_steer", on.roll_steer.si()),
        ("rear.roll_understeer", -on.roll_steer.si()),
        ("rear.roll_centre_height", on.roll_centre_height.si()),
        ("rear.side_view_angle", on.side_view_angle.si()),
        ("rear.leaf.wind_up_rate", on.wind_up_rate.si()),
        ("rear.leaf.shackle_opening", on.left_shackle_opening.si()),
        ("rear.damper.motion_ratio", on.damper_motion_ratio.si()),
    ] {
        assert_eq!(of(path).to_bits(), wanted.to_bits(), "{path}");
    }
    // Nothing steers an axle on two springs alike in heave.
    assert_eq!(of("rear.bump_steer"), 0.0);
    // By hand: m g of half of what both scales read less the unsprung mass; K = k t^2 / 2.
    assert!((of("rear.leaf.load") / ((1180.0 + 1210.0 - 380.0) / 2.0 * 9.80665) - 1.0).abs() < 1e-14);
    let stiffness = of("rear.wheel_rate") * of("rear.spring_base").powi(2) / 2.0;
    assert!((stiffness / on.roll_stiffness.si() - 1.0).abs() < 1e-12);
    assert!((of("rear.roll_stiffness") / on.roll_stiffness.si() - 1.0).abs() < 1e-12);
    let frequency = (of("rear.wheel_rate") / of("rear.sprung_mass")).sqrt() / std::f64::consts::TAU;
    assert!((of("rear.natural_frequency") / frequency - 1.0).abs() < 1e-12);
    // The anti-squat of the model, drawn with the height and the wheelbase of the sheet.
    let mut braking = model.braking.clone().unwrap();
    braking.centre_of_gravity_height = Value::new(Length::from_si(of("vehicle.centre_of_gravity_height")));
    let squat = at(&LeafAxle { braking: Some(braking), ..model }, 0.0).drive_anti_pitch.si();
    assert!((of("rear.anti_squat") / squat - 1.0).abs() < 1e-12);
}

#[test]
fn travel_ends_where_the_model_says_that_nothing_is_left() {
    let assessment = dray(&[]).assess();
    let of = |path: &str| value(&assessment, path);
    let model = rear(&assessment);
    let (bump, droop) = (of("rear.bump_remaining"), of("rear.droop_remaining"));
    let (full, open) = (at(&model, bump), at(&model, -droop));
    assert!(full.left_bump_remaining.si().abs() < 1e-12, "{:?}", full.left_bump_remaining);
    assert!(open.left_damper_used.si().abs() < 1e-12, "{:?}", open.left_damper_used);
    let closed = at(&model, of("rear.damper.bump_end"));
    assert!(closed.left_damper_remaining.si().abs() < 1e-12, "{:?}", closed.left_damper_remaining);
    // The stop gives way by 15 mm.
    let bump = of("rear.bump_compressed");
    assert!((bump - of("rear.bump_remaining") - 0.015).abs() < 1e-12);
    let full = at(&model, bump);
    assert_eq!(of("rear.leaf.bump_stress"), full.left_leaf_stress.si());
    let turned = [&full, &open].map(|on| on.pinion_angle_change.si().abs());
    assert_eq!(of("rear.pinion_angle_change"), turned[0].max(turned[1]));
    let half_turn = std::f64::consts::PI;
    let out_of_line = [&full, &open].map(|on| {
        let opening = on.left_shackle_opening.si();
        opening.min(half_turn - opening)
    });
    assert_eq!(of("rear.joint_remaining"), out_of_line[0].min(out_of_line[1]));
    let range = model.travel_range(Angle::from_si(0.0)).unwrap();
    let remaining = (range.bump.si() - bump).min(-range.droop.si() - droop);
    assert!(
        (of("rear.linkage_remaining") - remaining).abs() < 2e-5,
        "{} {remaining}",
        of("rear.linkage_remaining")
    );
}

#[test]
fn torque_winds_the_axle_up_as_in_the_model() {
    let assessment = dray(&[]).assess();
    let of = |path: &str| value(&assessment, path);
    let model = rear(&assessment);
    // The tyres hold less than the engine gives in the lowest gear.
    assert_eq!(of("rear.drive_torque"), of("grip.torque"));
    assert!(of("grip.torque") < of("final_drive.output_torque"));
    let wound = |torque: f64| model.wind_up(Length::from_si(0.0), Torque::from_si(torque)).unwrap();
    let (forward, reverse) = (wound(of("grip.torque")), wound(-of("grip.torque")));
    assert_eq!(of("rear.wind_up_angle"), forward.wind_up_angle.si());
    assert_eq!(of("rear.leaf.wound_stress"), forward.leaf_stress.si().max(reverse.leaf_stress.si()));
    assert_eq!(of("rear.leaf.stress"), of("rear.leaf.wound_stress").max(of("rear.leaf.bump_stress")));
    // The front is not driven as far as the sheet says, and its springs are not drawn.
    let front = dray(&[("front.wheels", "live_axle")]).assess();
    assert!(lacks(&front, "front.wind_up").contains("the points of its leaf springs"));
}

/// A bar is drawn as on a live axle on links, and has the ratio of the model whatever the springs carry.
#[test]
fn a_bar_beside_the_leaves_has_the_ratio_of_the_model() {
    let points = [
        ("rear.anti_roll_bar.link_eye.x", "-3350 mm"),
        ("rear.anti_roll_bar.link_eye.y", "450 mm"),
        ("rear.anti_roll_bar.link_eye.z", "340 mm"),
        ("rear.anti_roll_bar.lever_end.x", "-3360 mm"),
        ("rear.anti_roll_bar.lever_end.y", "440 mm"),
        ("rear.anti_roll_bar.lever_end.z", "520 mm"),
        ("rear.anti_roll_bar.lever_pivot.x", "-3120 mm"),
        ("rear.anti_roll_bar.lever_pivot.y", "350 mm"),
        ("rear.anti_roll_bar.lever_pivot.z", "530 mm"),
        ("rear.anti_roll_bar.rate", "12 N/mm"),
    ];
    let place = |[x, y, z]: [f64; 3]| Point::new(Length::from_si(x), Length::from_si(y), Length::from_si(z));
    let plain = dray(&[]).assess();
    for (bearings, mount) in [("body", Mount::Body), ("axle", Mount::Axle)] {
        let lines: Vec<_> =
            points.iter().copied().chain([("rear.anti_roll_bar.bearings", bearings)]).collect();
        let assessment = dray(&lines).assess();
        let of = |path: &str| value(&assessment, path);
        let bar = AxleBar {
            bearings: mount,
            link_eye: place([-3.35, 0.45, 0.34]),
            lever_end: place([-3.36, 0.44, 0.52]),
            lever_pivot: place([-3.12, 0.35, 0.53]),
        };
        let wanted = at(&LeafAxle { anti_roll_bar: Stated::Given(bar), ..rear(&assessment) }, 0.0)
            .bar_motion_ratio
            .si();
        let found = of("rear.anti_roll_bar.motion_ratio");
        assert!((found / wanted - 1.0).abs() < 1e-12, "{found} {wanted}");
        assert!(wanted > 0.4 && wanted < 0.7, "{wanted}");
        // K = (r t)^2 k / 2 beside the springs.
        let bar = (found * of("rear.track")).powi(2) * 12_000.0 / 2.0;
        let springs = value(&plain, "rear.roll_stiffness");
        assert!((of("rear.roll_stiffness") / (springs + bar) - 1.0).abs() < 1e-12);
    }
    let short = dray(&points).assess();
    let said = lacks(&short, "vehicle.balance");
    assert!(
        said.contains("a bar needs anti_roll_bar.motion_ratio, or the points of its drop link"),
        "{said}"
    );
}

#[test]
fn each_finding_turns_when_its_line_does() {
    let cases: &[(&str, Lines<'_>, Verdict)] = &[
        // 1355 MPa at full bump.
        ("rear.spring_strength", &[], Verdict::Short),
        ("rear.spring_strength", &[("rear.spring.allowed_stress", "1600 MPa")], Verdict::Tight),
        ("rear.spring_strength", &[("rear.spring.allowed_stress", "1900 MPa")], Verdict::Meets),
        // 6.2 deg under what the tyres hold.
        ("rear.wind_up", &[], Verdict::Short),
        // The driveline gives more than is written, until the engine is weak enough.
        ("rear.wind_up", &[("rear.drive_torque", "3000 N·m")], Verdict::Tight),
        (
            "rear.wind_up",
            &[("rear.drive_torque", "3000 N·m"), ("engine.peak_torque", "40 N·m")],
            Verdict::Meets,
        ),
        ("rear.wind_up", &[("wanted.wind_up", "8 deg")], Verdict::Meets),
        ("rear.wind_up", &[("wanted.wind_up", "8 deg"), ("wanted.wind_up_margin", "3 deg")], Verdict::Tight),
        // 85 mm to the stop; 60 mm are wanted. Nobody says where joint, hose and tyre end it.
        ("rear.bump", &[], Verdict::Tight),
        (
            "rear.bump",
            &[
                ("rear.joint_bump_clearance", "none"),
                ("rear.hose_bump_clearance", "none"),
                ("rear.tyre_clearance", "none"),
            ],
            Verdict::Meets,
        ),
        ("rear.bump", &[("rear.bump_clearance", "50 mm")], Verdict::Tight),
        ("rear.droop", &[("rear.damper.open_length", "570 mm")], Verdict::Tight),
        // 139 mm of droop, and the shackles go 37 mm further.
        ("rear.linkage_range", &[], Verdict::Meets),
        ("rear.linkage_range", &[("wanted.linkage_margin", "40 mm")], Verdict::Tight),
        (
            "rear.linkage_range",
            &[("rear.bump_clearance", "320 mm"), ("rear.damper.closed_length", "200 mm")],
            Verdict::NotKnown,
        ),
        ("rear.joints", &[], Verdict::Meets),
        ("rear.joints", &[("wanted.joint_margin", "70 deg")], Verdict::Tight),
        ("rear.roll_steer_band", &[], Verdict::Meets),
        // A fixed eye that far up has no answer over the whole lean: its slope at ride height alone clears nothing, but it condemns.
        ("rear.roll_steer_band", &[("rear.leaf.fixed_eye.z", "600 mm")], Verdict::Short),
        ("rear.roll_steer_band", &[("rear.leaf.fixed_eye.z", "620 mm")], Verdict::Short),
        (
            "rear.roll_steer_band",
            &[
                ("rear.leaf.fixed_eye.z", "600 mm"),
                ("wanted.roll_understeer_low", "-0.6"),
                ("wanted.roll_understeer_high", "0.6"),
            ],
            Verdict::NotKnown,
        ),
        (
            "rear.roll_steer_band",
            &[("wanted.roll_understeer_low", "-0.6"), ("wanted.roll_understeer_high", "0.6")],
            Verdict::Meets,
        ),
        ("rear.pinion", &[], Verdict::Meets),
        ("rear.pinion", &[("wanted.pinion_angle_change", "1 deg")], Verdict::Short),
        ("rear.sideways", &[], Verdict::Meets),
        // The springs alone lead the axle; where nobody says so, what leads it besides is not known.
        ("rear.bind", &[], Verdict::DoesNotApply),
        ("rear.bind", &[("rear.suspension", "")], Verdict::NotKnown),
        (
            "rear.bind",
            &[("rear.suspension", ""), ("rear.bind_force", "3 kN"), ("rear.allowed_link_force", "20 kN")],
            Verdict::Meets,
        ),
        ("rear.bump_steer_band", &[], Verdict::Meets),
        ("rear.squat", &[], Verdict::Short),
        ("rear.squat", &[("wanted.anti_squat_low", "-2"), ("wanted.anti_squat_high", "3")], Verdict::Meets),
        ("rear.frequency", &[("rear.spring.rate", "200 N/mm")], Verdict::Short),
    ];
    for (finding, lines, wanted) in cases {
        let assessment = dray(lines).assess();
        let margin = assessment.answer(finding).unwrap().margin;
        assert_eq!(verdict(&assessment, finding), *wanted, "{finding} with {lines:?}: {margin}");
    }
}

#[test]
fn what_is_missing_is_named() {
    let assess = |lines: Lines<'_>| dray(lines).assess();
    let bare = assess(&[("rear.leaf.seat.z", "")]);
    for finding in ["rear.frequency", "rear.bump", "rear.droop", "rear.spring_strength"] {
        assert!(lacks(&bare, finding).contains("rear.leaf.seat.z"), "{finding}: {}", lacks(&bare, finding));
    }
    // Without its leaves a spring of a written rate still stands and moves, but nobody knows its stress.
    let rated = assess(&[("rear.leaf.leaves.leaf_thickness", "")]);
    assert!(lacks(&rated, "rear.spring_strength").contains("rear.leaf.leaves.leaf_thickness"));
    assert_eq!(verdict(&rated, "rear.frequency"), Verdict::Meets);
    // Without a rate the leaves have one.
    let made = assess(&[("rear.spring.rate", "")]);
    assert_eq!(value(&made, "rear.spring.rate"), value(&assess(&[]), "rear.leaf.rate"));
    assert!((value(&made, "rear.spring.rate") / 110e3 - 1.0).abs() < 0.01);
    assert!(lacks(&assess(&[("rear.bump_clearance", "")]), "rear.bump").contains("rear.bump_clearance"));
    let other = assess(&[("driveline.driven", "front")]);
    assert!(
        lacks(&other, "rear.wind_up").contains("write drive_torque, 0 N·m where this one is not driven too")
    );
    // What cannot stand is refused in the words of the model.
    let locked =
        assess(&[("rear.leaf.shackle_pivot.x", "-4250 mm"), ("rear.leaf.shackle_pivot.z", "590 mm")]);
    let said = lacks(&locked, "rear.frequency");
    assert!(
        said.contains("rear.leaf.wheel_rate has no value") && said.contains("lines up with the spring"),
        "{said}"
    );
    // A damper that is never open before the shackles are in line.
    let long = assess(&[("rear.damper.open_length", "800 mm")]);
    let said = lacks(&long, "rear.droop");
    assert!(
        said.contains("the springs do not bring the eyes of the damper 800 mm (31.5 in) apart"),
        "{said}"
    );
}

#[test]
fn what_leads_the_axle_beside_its_springs_is_not_looked_past() {
    for line in ["lateral_rod.body", "watt.pivot", "upper_links.body", "lower_links.body"] {
        let path = format!("rear.{line}.x");
        let both = dray(&[(&path, "-3400 mm")]).assess();
        for finding in ["rear.bind", "rear.joints", "rear.sideways", "rear.pinion", "vehicle.balance"] {
            assert_eq!(verdict(&both, finding), Verdict::NotKnown, "{line}, {finding}");
            let said = lacks(&both, finding);
            assert!(said.contains("both are drawn"), "{line}, {finding}: {said}");
        }
        // A rod across the vehicle leaves what the springs do in side view.
        let across = ["lateral_rod.body", "watt.pivot"].contains(&line);
        assert_eq!(value(&both, "rear.wheel_rate").is_nan(), !across, "{line}");
        let wound = if across { Verdict::Short } else { Verdict::NotKnown };
        assert_eq!(verdict(&both, "rear.wind_up"), wound, "{line}");
    }
    let apart = dray(&[("rear.wheels", "independent")]).assess();
    for finding in ["rear.bind", "rear.joints", "rear.wind_up", "rear.sideways"] {
        assert_eq!(verdict(&apart, finding), Verdict::NotKnown, "{finding}");
        assert!(lacks(&apart, finding).contains("written as independent, but"), "{}", lacks(&apart, finding));
    }
}

#[test]
fn what_is_below_nothing_gives_no_verdict() {
    let mut sheet = dray(&[]);
    let refused = sheet.set("rear.wind_up_angle", "-10 deg").unwrap_err().to_string();
    assert!(
        refused.contains("rear.wind_up_angle") && refused.contains("by how much its front rises"),
        "{refused}"
    );
    // A damper that is closed at ride height already.
    let closed = dray(&[("rear.damper.closed_length", "560 mm")]).assess();
    assert!(value(&closed, "rear.bump_remaining") < 0.0);
    for finding in ["rear.joints", "rear.spring_strength", "rear.pinion"] {
        assert_eq!(verdict(&closed, finding), Verdict::NotKnown, "{finding}");
        let said = lacks(&closed, finding);
        assert!(said.contains("ride height beyond the bump stop"), "{finding}: {said}");
    }
}

#[test]
fn a_line_that_contradicts_the_drawing_is_said() {
    let cases: &[(Lines<'_>, Option<&str>)] = &[
        (&[], None),
        (&[("rear.wheel_rate", "111 N/mm")], None),
        (&[("rear.wheel_rate", "95 N/mm")], Some("rear.wheel_rate")),
        // The leaves have 109.8 N/mm.
        (&[("rear.spring.rate", "120 N/mm +/- 5 %")], Some("rear.spring.rate")),
        (&[("rear.roll_centre_height", "560 mm +/- 20 mm")], Some("rear.roll_centre_height")),
        // Between the seats; the springs lean a little less than upright ones.
        (&[("rear.spring_base", "1040 mm")], None),
        (&[("rear.spring_base", "960 mm")], Some("rear.spring_base")),
        (&[("rear.damper.motion_ratio", "0.7")], Some("rear.damper.motion_ratio")),
    ];
    for (lines, wanted) in cases {
        let assessment = dray(lines).assess();
        let found: Vec<&str> = assessment.contradictions().iter().map(|found| found.path).collect();
        assert_eq!(found, wanted.iter().copied().collect::<Vec<_>>(), "{lines:?}");
    }
}

#[test]
fn an_eye_is_moved_before_it_is_welded() {
    let sheet = dray(&[]);
    let heights = ["430 mm", "460 mm", "490 mm"];
    let axis = Axis::texts("rear.leaf.fixed_eye.z", &heights).unwrap();
    let outputs = ["rear.roll_steer", "rear.wheel_rate", "rear.joint_remaining", "rear.linkage_range.margin"];
    let what_if = sheet.what_if(vec![axis], false, &outputs).unwrap();
    let table = what_if.table(0..3, Some(1), &mut |_| true).unwrap().unwrap();
    let number = |path: &str, row: usize| table.numbers(path).unwrap()[row];
    for (row, height) in heights.iter().enumerate() {
        let alone = dray(&[("rear.leaf.fixed_eye.z", height)]).assess();
        for path in &outputs[..3] {
            assert_eq!(number(path, row).to_bits(), value(&alone, path).to_bits(), "{path}");
        }
        let margin = alone.answer("rear.linkage_range").unwrap().margin;
        assert_eq!(number(outputs[3], row).to_bits(), margin.to_bits());
    }
    // A seat above its fixed eye runs forward in bump, and less so the higher the eye stands.
    assert!(number("rear.roll_steer", 0) < number("rear.roll_steer", 1));
    assert!(number("rear.roll_steer", 1) < number("rear.roll_steer", 2));
    let toleranced = dray(&[("rear.leaf.fixed_eye.z", "460 mm +/- 5 mm")]).assess();
    let answer = toleranced.answer("rear.roll_steer_band").unwrap();
    assert!(answer.uncertainty > 0.0);
    let ranked = toleranced.sensitivity(answer);
    assert!(ranked.iter().any(|one| one.path == "rear.leaf.fixed_eye.z"));
}

/// Sides turn opposite ways in roll, so that the shackles' pitch moves cancel: the eyes on the body alone steer the axle about ride height.
#[test]
fn a_pivot_of_the_shackle_changes_the_rate_and_the_range() {
    let on = |height: &str| dray(&[("rear.leaf.shackle_pivot.z", height)]).assess();
    let (low, high) = (on("650 mm"), on("690 mm"));
    let both = |path: &str| (value(&low, path), value(&high, path));
    let (low_steer, high_steer) = both("rear.roll_steer");
    assert!((low_steer - high_steer).abs() < 1e-9, "{low_steer} {high_steer}");
    let (low_rate, high_rate) = both("rear.wheel_rate");
    assert!((low_rate / high_rate - 1.0).abs() > 1e-4, "{low_rate} {high_rate}");
    // A longer shackle goes further before it is in line.
    let (low_remaining, high_remaining) = both("rear.linkage_remaining");
    assert!(low_remaining < high_remaining, "{low_remaining} {high_remaining}");
}
