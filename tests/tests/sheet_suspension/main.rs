//! Suspension, roll and ride on the build sheet agree with the models, bit for bit, and lines that contradict each other are said.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Model;
use axlewright::base::text::System;
use axlewright::ride::{QuarterCar, RoadClass, RoadSurface};
use axlewright::sheet::{Assessment, Axis, Sheet};
use axlewright::suspension::{AxlePosition, DoubleWishbone, LiveAxle, RollBalance, WheelPosition};
use axlewright::units::{Angle, Damping, Length, LinearStiffness, Mass, Velocity};
use axlewright::{Value, Verdict};
use axlewright_tests::assessed::{demo, lacks, text, value, verdict};

/// The front of the Dunlin as the sheet draws it: the document of the model with the sheet's radius and coil-over.
fn front(assessment: &Assessment) -> DoubleWishbone {
    let mut model = DoubleWishbone::from_text(&text("dunlin_front_wishbone")).unwrap();
    model.wheel.loaded_radius = Value::new(Length::from_si(value(assessment, "front.tyre.loaded_radius")));
    let coil_over = model.coil_over.as_mut().unwrap();
    let damper = coil_over.damper.as_mut().unwrap();
    for (length, path) in [
        (&mut damper.open_length, "front.damper.open_length"),
        (&mut damper.closed_length, "front.damper.closed_length"),
    ] {
        *length = Value::new(Length::from_si(value(assessment, path)));
    }
    let spring = coil_over.spring.as_mut().unwrap();
    spring.seat_offset = Value::new(Length::from_si(value(assessment, "front.spring.seat_offset")));
    let limits = model.joint_limits.as_mut().unwrap();
    for (limit, joint) in [
        (&mut limits.upper_ball, "upper_ball"),
        (&mut limits.lower_ball, "lower_ball"),
        (&mut limits.tie_rod_outer, "tie_rod_outer"),
        (&mut limits.tie_rod_inner, "tie_rod_inner"),
    ] {
        let allowed = value(assessment, &format!("front.joint_limits.{joint}"));
        *limit = Some(Value::new(Angle::from_si(allowed)));
    }
    model
}

fn at(model: &DoubleWishbone, travel: f64, rack: f64) -> WheelPosition {
    model.at(Length::from_si(travel), Length::from_si(rack)).unwrap()
}

#[test]
fn a_linkage_on_the_sheet_is_the_model_bit_for_bit() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let on = at(&front(&assessment), 0.0, 0.0);
    for (path, wanted) in [
        ("front.bump_steer", on.bump_steer.si()),
        ("front.camber_change", on.camber_change.si()),
        ("front.caster", on.caster.si()),
        ("front.kingpin_inclination", on.kingpin_inclination.si()),
        ("front.scrub_radius", on.scrub_radius.si()),
        ("front.mechanical_trail", on.mechanical_trail.si()),
        ("front.roll_centre_height", on.roll_centre_height.si()),
        ("front.spring.motion_ratio", on.motion_ratio.si()),
        ("front.spring.eye_length", on.eye_length.si()),
        ("front.anti_roll_bar.motion_ratio", on.bar_motion_ratio.si()),
    ] {
        assert_eq!(value(&assessment, path).to_bits(), wanted.to_bits(), "{path}");
    }
    let near = |found: f64, wanted: f64| (found / wanted - 1.0).abs() < 1e-12;
    assert!(near(value(&assessment, "front.anti_dive"), on.brake_anti_pitch.si()));
    // The wheel rate of the static load on this coil is that of the linkage, without gas.
    let mut model = front(&assessment);
    model.coil_over.as_mut().unwrap().damper.as_mut().unwrap().gas_force = None;
    let rate = at(&model, 0.0, 0.0).wheel_rate.si();
    assert!((value(&assessment, "front.wheel_rate") / rate - 1.0).abs() < 1e-12);
}

/// The trial strut of the Wagtail on a sheet of nothing else, beside its model.
#[test]
fn a_strut_joins_in_the_same_way() {
    // Its tables are those of the sheet, but for what the sheet has elsewhere.
    let document = text("wagtail_rear_strut");
    let tables = document.split("\n[").skip(1).filter_map(|table| {
        let lines = table.lines().filter(|line| {
            !["spring =", "damper =", "loaded_radius"].iter().any(|elsewhere| line.starts_with(elsewhere))
        });
        let wanted = ["lower_arm", "leg", "tie_rod", "wheel", "joint_limits", "anti_roll_bar"];
        wanted
            .iter()
            .any(|name| table.starts_with(&format!("{name}]")))
            .then(|| format!("[rear.{}\n", lines.collect::<Vec<_>>().join("\n")))
    });
    let mut sheet = Sheet::from_text(&tables.collect::<String>()).unwrap();
    sheet.set("rear.tyre.loaded_radius", "283 mm").unwrap();
    for (path, text) in [
        ("rear.damper.open_length", "510 mm"),
        ("rear.damper.closed_length", "340 mm"),
        ("rear.bump_stop_travel", "120 mm"),
        ("rear.damper.mounting", "coil_over"),
        ("rear.spring.rate", "160 lbf/in"),
        ("rear.spring.free_length", "300 mm"),
        ("rear.spring.solid_length", "110 mm"),
        ("rear.spring.minimum_gap", "9 mm"),
        ("rear.sprung_mass", "150 kg"),
        ("rear.brake_share", "35 %"),
        ("rear.brake_place", "inboard"),
        ("rear.drive_share", "100 %"),
        ("rear.wheels", "independent"),
        ("vehicle.centre_of_gravity_height", "460 mm"),
        ("vehicle.wheelbase", "2300 mm"),
    ] {
        sheet.set(path, text).unwrap();
    }
    let assessment = sheet.assess();
    let of = |path: &str| value(&assessment, path);
    let model = axlewright::suspension::Strut::from_text(&text("wagtail_rear_strut")).unwrap();
    let at = |travel: f64| model.at(Length::from_si(travel), Length::from_si(0.0)).unwrap();
    let on = at(0.0);
    for (path, wanted) in [
        ("rear.bump_steer", on.bump_steer.si()),
        ("rear.roll_centre_height", on.roll_centre_height.si()),
        ("rear.spring.motion_ratio", on.motion_ratio.si()),
        ("rear.spring.eye_length", on.eye_length.si()),
        ("rear.anti_roll_bar.motion_ratio", on.bar_motion_ratio.si()),
    ] {
        assert_eq!(of(path).to_bits(), wanted.to_bits(), "{path}");
    }
    // Half shafts and inboard brakes leave their torque in the body.
    for (path, wanted) in [("rear.anti_lift", on.brake_anti_pitch), ("rear.anti_squat", on.drive_anti_pitch)]
    {
        assert!((of(path) / wanted.si() - 1.0).abs() < 1e-12, "{path}: {} {wanted:?}", of(path));
    }
    // Brakes at the wheels are assumed where nothing is written.
    sheet.remove("rear.brake_place").unwrap();
    let mut braked = model.clone();
    braked.braking.as_mut().unwrap().place = None;
    let lift = braked.at(Length::from_si(0.0), Length::from_si(0.0)).unwrap().brake_anti_pitch.si();
    let found = value(&sheet.assess(), "rear.anti_lift");
    assert!((found / lift - 1.0).abs() < 1e-12, "{found} {lift}");
    assert!((found - of("rear.anti_lift")).abs() > 0.01);
    assert!(at(-of("rear.droop_left")).damper_used.si().abs() < 1e-11);
    assert!(at(of("rear.damper.bump_end")).damper_left.si().abs() < 1e-11);
    let least = at(of("rear.bump_left")).joint_left.si().min(at(-of("rear.droop_left")).joint_left.si());
    assert_eq!(of("rear.joint_left"), least);
    // The drop link of the bar may lock it, too.
    let range = model.travel_range(Length::from_si(0.0)).unwrap();
    let left = (range.bump.si() - of("rear.bump_left")).min(-range.droop.si() - of("rear.droop_left"));
    assert_eq!(of("rear.linkage_left"), left);
}

/// The rear of the Dunlin as the sheet draws it: the document of the model with the sheet's radius, shares and limits.
fn rear(assessment: &Assessment) -> LiveAxle {
    let mut model = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
    model.wheel.loaded_radius = Value::new(Length::from_si(value(assessment, "rear.tyre.loaded_radius")));
    let pitching = model.pitching.as_mut().unwrap();
    let height = value(assessment, "vehicle.centre_of_gravity_height");
    pitching.centre_of_gravity_height = Value::new(Length::from_si(height));
    let rod = model.lateral_rod.as_mut().unwrap();
    for (limit, end) in [(&mut rod.body_limit, "body"), (&mut rod.axle_limit, "axle")] {
        let allowed = value(assessment, &format!("rear.lateral_rod.{end}_limit"));
        *limit = Some(Value::new(Angle::from_si(allowed)));
    }
    model
}

fn on_axle(model: &LiveAxle, heave: f64, roll: f64) -> AxlePosition {
    model.at(Length::from_si(heave), Angle::from_si(roll)).unwrap()
}

#[test]
fn a_live_axle_on_the_sheet_is_the_model() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    let model = rear(&assessment);
    let on = on_axle(&model, 0.0, 0.0);
    for (path, wanted) in [
        ("rear.bump_steer", -on.heave_steer.si()),
        ("rear.roll_steer", on.roll_steer.si()),
        ("rear.roll_understeer", -on.roll_steer.si()),
        ("rear.roll_centre_height", on.roll_centre_height.si()),
        ("rear.side_view_angle", on.side_view_angle.si()),
        ("rear.freedoms", on.freedoms as f64),
        ("rear.redundant_links", on.redundant as f64),
        ("rear.bind_roll_stiffness", on.bind_roll_stiffness.si()),
        ("rear.spring.motion_ratio", on.left_motion_ratio.si()),
        ("rear.spring.eye_length", on.left_eye_length.si()),
        ("rear.anti_roll_bar.motion_ratio", on.bar_motion_ratio.si()),
    ] {
        assert_eq!(of(path).to_bits(), wanted.to_bits(), "{path}: {} {wanted}", of(path));
    }
    let track = 2.0 * on.left_wheel_y.si();
    for (path, wanted) in [
        ("rear.anti_squat", on.drive_anti_pitch.si()),
        ("rear.anti_lift", on.brake_anti_pitch.si()),
        ("rear.roll_base", track * on.left_roll_motion_ratio.si() / on.left_motion_ratio.si()),
    ] {
        assert!((of(path) / wanted - 1.0).abs() < 1e-12, "{path}: {} {wanted}", of(path));
    }
    // The gradient of the motion ratio against a difference of it.
    let step = 1e-5;
    let [low, high] = [-step, step].map(|heave| on_axle(&model, heave, 0.0).left_motion_ratio.si());
    let slope = (high - low) / (2.0 * step);
    assert!((of("rear.spring.ratio_gradient") - slope).abs() < 1e-6, "{slope}");
    // Travel: the damper is open and closed, the spring has its gaps.
    let least = of("rear.spring.shortest_between_eyes");
    for (path, eyes) in
        [("rear.damper.droop_end", 0.57), ("rear.damper.bump_end", 0.37), ("rear.spring.bump_end", least)]
    {
        let there = on_axle(&model, of(path), 0.0).left_eye_length.si();
        assert!((there - eyes).abs() < 1e-11, "{path}: {there} {eyes}");
    }
    let range = model.travel_range(Angle::from_si(0.0)).unwrap();
    assert_eq!(of("rear.linkage_bump").to_bits(), range.bump.si().to_bits());
    assert_eq!(of("rear.linkage_droop").to_bits(), (-range.droop.si()).to_bits());
    // Over the travel, and crossed.
    let (bump, droop) = (of("rear.bump_left"), of("rear.droop_left"));
    let roll = ((bump + droop) / of("rear.roll_base")).asin();
    assert_eq!(of("rear.cross_roll").to_bits(), roll.to_bits());
    let ends = [(bump, 0.0), (-droop, 0.0), (0.5 * (bump - droop), roll), (0.5 * (bump - droop), -roll)]
        .map(|(heave, roll)| on_axle(&model, heave, roll));
    let most = |of: fn(&AxlePosition) -> f64, on: &[AxlePosition]| on.iter().map(of).fold(0.0, f64::max);
    let level = [bump, -droop, 0.5 * bump, -0.5 * droop].map(|heave| on_axle(&model, heave, 0.0));
    for (path, wanted) in [
        ("rear.lateral_shift", most(|on| on.lateral_shift.si().abs(), &level)),
        ("rear.pinion_angle_change", most(|on| on.pinion_angle_change.si().abs(), &level)),
        ("rear.bind_force", most(|on| on.bind_force.si(), &ends)),
        ("rear.bind_misfit", most(|on| on.bind_misfit.si(), &ends)),
        ("rear.joint_left", ends.iter().map(|on| on.joint_left.si()).fold(f64::INFINITY, f64::min)),
    ] {
        assert!((of(path) / wanted - 1.0).abs() < 1e-9, "{path}: {} {wanted}", of(path));
    }
}

/// Three links and a Watt linkage on a sheet of nothing else, beside the model in words.
#[test]
fn a_watt_linkage_and_three_links_join_in_the_same_way() {
    let watt = "carried_by = \"axle\"\npivot = { x = \"-2650 mm\", y = \"0 mm\", z = \"380 mm\" }\n\
                upper_rod = { crank = { x = \"-2650 mm\", y = \"0 mm\", z = \"440 mm\" }, outer = { x = \"-2650 mm\", y = \"450 mm\", z = \"440 mm\" } }\n\
                lower_rod = { crank = { x = \"-2650 mm\", y = \"0 mm\", z = \"320 mm\" }, outer = { x = \"-2650 mm\", y = \"-450 mm\", z = \"320 mm\" } }\n";
    let wheel = "centre = { x = \"-2650 mm\", y = \"760 mm\", z = \"345 mm\" }\ncamber = \"0 deg\"\ntoe = \"0 deg\"\n";
    let lower = "body = { x = \"-2090 mm\", y = \"430 mm\", z = \"310 mm\" }\naxle = { x = \"-2630 mm\", y = \"470 mm\", z = \"265 mm\" }\n";
    let upper = "fitted = \"single\"\nbody = { x = \"-2200 mm\", y = \"60 mm\", z = \"445 mm\" }\naxle = { x = \"-2660 mm\", y = \"90 mm\", z = \"480 mm\" }\n";
    let drawn = format!(
        "[rear.wheel]\n{wheel}[rear.lower_links]\n{lower}[rear.upper_links]\n{upper}[rear.watt]\n{watt}"
    );
    let document = format!(
        "axle = \"rear\"\n[wheel]\n{wheel}loaded_radius = \"335 mm\"\n[[links]]\nname = \"lower\"\nfitted = \"pair\"\n{lower}[[links]]\nname = \"upper\"\n{upper}[watt]\n{watt}"
    );
    let model = LiveAxle::from_text(&document).unwrap();
    let sheet = |lines: &[(&str, &str)]| {
        let mut sheet = Sheet::from_text(&drawn).unwrap();
        sheet.set("rear.tyre.loaded_radius", "335 mm").unwrap();
        lines.iter().for_each(|(path, text)| {
            if text.is_empty() { sheet.remove(path).unwrap() } else { sheet.set(path, text).unwrap() }
        });
        sheet.assess()
    };
    let assessment = sheet(&[]);
    let on = on_axle(&model, 0.0, 0.0);
    for (path, wanted) in [
        ("rear.roll_steer", on.roll_steer.si()),
        ("rear.roll_centre_height", on.roll_centre_height.si()),
        ("rear.redundant_links", 0.0),
        ("rear.freedoms", 2.0),
    ] {
        assert_eq!(value(&assessment, path).to_bits(), wanted.to_bits(), "{path}");
    }
    // A straight Watt linkage leads its pivot: 380 mm less the ground, which is 10 mm above the origin.
    assert!((on.roll_centre_height.si() - 0.37).abs() < 1e-9, "{:?}", on.roll_centre_height);
    // Half a Watt linkage is asked for by its line; a lateral rod beside it is one too many.
    let half = sheet(&[("rear.watt.lower_rod.outer.z", "")]);
    let said = lacks(&half, "rear.roll_steer_band");
    assert!(said.contains("watt.lower_rod.outer.z: it is not written although watt.carried_by is"), "{said}");
    let both = [("rear.lateral_rod.body", 0.47), ("rear.lateral_rod.axle", -0.5)].map(|(end, y)| {
        [("x", -2.7), ("y", y), ("z", 0.38)].map(|(axis, at)| (format!("{end}.{axis}"), format!("{at} m")))
    });
    let both: Vec<_> = both.iter().flatten().map(|(path, text)| (path.as_str(), text.as_str())).collect();
    let said = lacks(&sheet(&both), "rear.roll_steer_band");
    assert!(said.contains("a lateral rod holds the axle sideways already"), "{said}");
}

#[test]
fn findings_of_a_live_axle_turn_where_they_should() {
    let with = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    let safety = |assessment: &Assessment, path: &str| assessment.answer(path).unwrap().is_safety();
    let drawn = with(&[]);
    assert!(safety(&drawn, "rear.bind") && safety(&drawn, "rear.joints"));
    let force = value(&drawn, "rear.bind_force");
    assert!(force > 5000.0, "{force}");
    for (finding, lines, wanted) in [
        ("rear.bind", &[("rear.allowed_link_force", "30 kN")][..], Verdict::Meets),
        ("rear.bind", &[], Verdict::Tight),
        ("rear.bind", &[("rear.allowed_link_force", "15 kN")], Verdict::Short),
        // Softer bushes bear the same misfit with less force.
        (
            "rear.bind",
            &[("rear.upper_links.body_bush", "1000 N/mm"), ("rear.upper_links.axle_bush", "1000 N/mm")],
            Verdict::Meets,
        ),
        ("rear.joints", &[], Verdict::Tight),
        ("rear.joints", &[("rear.lower_links.body_limit", "6 deg")], Verdict::Short),
        ("rear.linkage_range", &[], Verdict::Meets),
        ("rear.sideways", &[], Verdict::Meets),
        ("rear.sideways", &[("rear.lateral_rod.body.z", "440 mm")], Verdict::Short),
        ("rear.pinion", &[], Verdict::Meets),
        ("rear.pinion", &[("rear.upper_links.axle.z", "520 mm")], Verdict::Short),
        ("rear.roll_steer_band", &[], Verdict::Meets),
        ("rear.roll_steer_band", &[("rear.lower_links.body.z", "400 mm")], Verdict::Short),
        ("rear.squat", &[], Verdict::Meets),
        ("rear.squat", &[("rear.drive_share", "0")], Verdict::Meets),
        ("rear.squat", &[("wanted.anti_squat_high", "0.8")], Verdict::Short),
        // Wheels that move by themselves have no axle that binds, shifts or turns.
        ("front.bind", &[], Verdict::DoesNotApply),
        ("front.sideways", &[], Verdict::DoesNotApply),
        ("front.pinion", &[("front.wheels", "live_axle")], Verdict::NotKnown),
    ] {
        let found = with(lines);
        let answer = found.answer(finding).unwrap();
        assert_eq!(answer.verdict, wanted, "{finding} {lines:?}: {} {}", answer.value, answer.margin);
    }
    // A written motion ratio that the drawing does not have.
    let doubted = with(&[("rear.spring.motion_ratio", "0.9")]);
    assert_eq!(
        doubted.contradictions().iter().map(|found| found.path).collect::<Vec<_>>(),
        ["rear.spring.motion_ratio"]
    );
}

#[test]
fn what_a_live_axle_lacks_is_named() {
    let with = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    let rigid: Vec<(String, &str)> = ["lower_links", "upper_links", "lateral_rod"]
        .iter()
        .flat_map(|link| ["body", "axle"].map(|end| (format!("rear.{link}.{end}_bush"), "")))
        .collect();
    let rigid: Vec<_> = rigid.iter().map(|(path, text)| (path.as_str(), *text)).collect();
    for (finding, lines, said) in [
        ("rear.bind", &rigid[..], "its links bind, and none of them gives"),
        ("vehicle.balance", &rigid[..], "write the stiffness of their bushes"),
        ("rear.bind", &[("rear.allowed_link_force", "")], "links that bind need allowed_link_force"),
        (
            "rear.joints",
            &[("rear.upper_links.axle_limit", "")],
            "needs rear.upper_links.axle_limit to answer",
        ),
        (
            "rear.joints",
            &[("rear.lateral_rod.axle_limit", "")],
            "lateral_rod or watt needs the limits of its ends",
        ),
        (
            "rear.roll_steer_band",
            &[("rear.lower_links.axle.y", "")],
            "needs rear.lower_links.axle.y to answer",
        ),
        (
            "rear.roll_steer_band",
            &[("rear.lateral_rod.body.z", "")],
            "lateral_rod.body.z: it is not written although lateral_rod.body.x is",
        ),
        (
            "front.bind",
            &[("front.wheels", "live_axle")],
            "a live axle needs bind_force, or the points of what holds it",
        ),
        ("rear.squat", &[("rear.wheels", "independent")], "needs rear.lower_arm.front_pivot.x"),
    ] {
        let found = with(lines);
        let answer = found.answer(finding).unwrap();
        assert_eq!(answer.verdict, Verdict::NotKnown, "{finding}");
        let text = lacks(&found, finding);
        assert!(text.contains(said), "{finding}: {text}");
    }
    // Without a rod the four links of this axle hold it sideways by their angle alone, and nothing is redundant.
    let rod: Vec<(String, &str)> = ["body", "axle"]
        .iter()
        .flat_map(|end| {
            [".x", ".y", ".z", "_bush", "_limit"].map(|line| (format!("rear.lateral_rod.{end}{line}"), ""))
        })
        .collect();
    let rod: Vec<_> = rod.iter().map(|(path, text)| (path.as_str(), *text)).collect();
    let none = [("rear.lateral_rod", "none"), ("rear.watt", "none")];
    let free = with(&[&rod[..], &none].concat());
    assert_eq!((value(&free, "rear.bind_force"), value(&free, "rear.freedoms")), (0.0, 2.0));
    assert_eq!(verdict(&free, "rear.bind"), Verdict::Meets);
}

#[test]
fn what_cannot_stand_together_is_not_known() {
    let with = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    // Links of a live axle between wheels that move by themselves: neither the axle nor its lack is taken for granted.
    let apart = with(&[("rear.wheels", "independent")]);
    for finding in
        ["rear.bind", "rear.joints", "rear.wind_up", "rear.sideways", "rear.roll_steer_band", "vehicle.roll"]
    {
        assert_eq!(verdict(&apart, finding), Verdict::NotKnown, "{finding}");
        assert!(lacks(&apart, finding).contains("written as independent, but"), "{}", lacks(&apart, finding));
    }
    // Leaf springs that lead the axle as its links do.
    let both = with(&[("rear.leaf.form", "uniform_strength")]);
    for finding in ["rear.bind", "rear.joints", "rear.sideways", "rear.pinion", "vehicle.balance"] {
        assert_eq!(verdict(&both, finding), Verdict::NotKnown, "{finding}");
        assert!(lacks(&both, finding).contains("both are drawn"), "{}", lacks(&both, finding));
    }
}

#[test]
fn an_axle_is_not_crossed_on_what_is_not_there() {
    let with = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    // Without the eyes of its coil-over nobody knows on what base the springs cross it.
    let mut lines = vec![
        ("rear.coil_over.body_eye.x", ""),
        ("rear.spring.motion_ratio", "1.02"),
        ("rear.spring.droop_length", "350 mm"),
        ("rear.damper.stroke", "200 mm"),
    ];
    let open = with(&lines);
    assert!(value(&open, "rear.bump_left") > 0.0 && value(&open, "rear.droop_left") > 0.0);
    for finding in ["rear.bind", "rear.joints"] {
        assert_eq!(verdict(&open, finding), Verdict::NotKnown, "{finding}");
    }
    lines.push(("rear.spring_base", "970 mm"));
    assert!(value(&with(&lines), "rear.bind_force") > 0.0);
    // A spring so short that ride height is beyond the stops has no travel over which links could bind little.
    let short = with(&[("rear.spring.free_length", "190 mm")]);
    assert_eq!(verdict(&short, "rear.bump"), Verdict::Short);
    for finding in ["rear.bind", "rear.joints", "rear.sideways"] {
        assert_eq!(verdict(&short, finding), Verdict::NotKnown, "{finding}");
        assert!(lacks(&short, finding).contains("ride height is beyond the stops"), "{finding}");
    }
    let front = with(&[("front.bump_stop_travel", "90 mm")]);
    assert_eq!(
        (verdict(&front, "front.bump"), verdict(&front, "front.joints")),
        (Verdict::Short, Verdict::NotKnown)
    );
}

#[test]
fn a_mount_of_a_link_is_moved_before_it_is_welded() {
    let sheet = demo("dunlin_measured", &[]);
    let heights = ["280 mm", "310 mm", "340 mm"];
    let axis = Axis::texts("rear.lower_links.body.z", &heights).unwrap();
    let outputs = ["rear.roll_steer", "rear.anti_squat", "rear.bind_force", "rear.joints.margin"];
    let what_if = sheet.what_if(vec![axis], false, &outputs).unwrap();
    let table = what_if.table(0..3, Some(1), &mut |_| true).unwrap().unwrap();
    let number = |path: &str, row: usize| table.numbers(path).unwrap()[row];
    for (row, height) in heights.iter().enumerate() {
        let alone = demo("dunlin_measured", &[("rear.lower_links.body.z", height)]).assess();
        for path in &outputs[..3] {
            assert_eq!(number(path, row).to_bits(), value(&alone, path).to_bits(), "{path}");
        }
        let margin = alone.answer("rear.joints").unwrap().margin;
        assert_eq!(number(outputs[3], row).to_bits(), margin.to_bits());
    }
    // A lower link that rises more to the body pushes its side of the axle rearward in bump: the axle steers out of the turn.
    assert!(number("rear.roll_steer", 0) < number("rear.roll_steer", 1));
    assert!(number("rear.roll_steer", 1) < number("rear.roll_steer", 2));
    // A tolerance of that mount is ranked among what turns the finding.
    let toleranced = demo("dunlin_measured", &[("rear.lower_links.body.z", "310 mm +/- 5 mm")]).assess();
    let answer = toleranced.answer("rear.roll_steer_band").unwrap();
    assert!(answer.uncertainty > 0.0);
    assert!(toleranced.rests_on(answer).contains(&"rear.lower_links.body.z"));
    let ranked = toleranced.sensitivity(answer);
    assert!(ranked.iter().any(|one| one.path == "rear.lower_links.body.z"));
}

#[test]
fn travel_ends_where_the_model_says_that_nothing_is_left() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let model = front(&assessment);
    let open = at(&model, -value(&assessment, "front.droop_left"), 0.0);
    assert!(open.damper_used.si().abs() < 1e-11, "{:?}", open.damper_used);
    let closed = at(&model, value(&assessment, "front.damper.bump_end"), 0.0);
    assert!(closed.damper_left.si().abs() < 1e-11, "{:?}", closed.damper_left);
    let bound = at(&model, value(&assessment, "front.coil_travel"), 0.0);
    assert!(bound.spring_left.si().abs() < 1e-11, "{:?}", bound.spring_left);
    let least = closed.spring_left.si();
    assert!((value(&assessment, "front.spring.bind_margin") - least).abs() < 1e-11);

    let (bump, droop) = (value(&assessment, "front.bump_left"), value(&assessment, "front.droop_left"));
    let ends =
        [bump, -droop].map(|travel| [0.0, 0.07, -0.07].map(|rack| at(&model, travel, rack).joint_left.si()));
    let least = ends.into_iter().flatten().fold(f64::INFINITY, f64::min);
    assert_eq!(value(&assessment, "front.joint_left"), least);
    let range = model.travel_range(Length::from_si(0.0)).unwrap();
    let left = (range.bump.si() - bump).min(-range.droop.si() - droop);
    assert_eq!(value(&assessment, "front.linkage_left"), left);
}

#[test]
fn a_mount_is_moved_before_it_is_welded() {
    let sheet = demo("dunlin_measured", &[]);
    let heights = ["255 mm", "265 mm", "275 mm"];
    let axis = Axis::texts("front.lower_arm.front_pivot.z", &heights).unwrap();
    let outputs = ["front.bump_steer", "front.roll_centre_height", "front.anti_dive", "front.joints.margin"];
    let what_if = sheet.what_if(vec![axis], false, &outputs).unwrap();
    let table = what_if.table(0..3, Some(1), &mut |_| true).unwrap().unwrap();
    let number = |path: &str, row: usize| table.numbers(path).unwrap()[row];
    for (row, height) in heights.iter().enumerate() {
        let alone = demo("dunlin_measured", &[("front.lower_arm.front_pivot.z", height)]).assess();
        for path in &outputs[..3] {
            assert_eq!(number(path, row).to_bits(), value(&alone, path).to_bits(), "{path}");
        }
        let margin = alone.answer("front.joints").unwrap().margin;
        assert_eq!(number(outputs[3], row).to_bits(), margin.to_bits());
    }
    // The lower arm then slopes down to the rear, as its ball joint is carried forward in bump less.
    assert!(number("front.anti_dive", 0) > number("front.anti_dive", 2));
}

#[test]
fn a_point_that_is_half_written_is_asked_for_and_one_that_nobody_began_is_not() {
    let assessment = demo("dunlin_measured", &[("front.tie_rod.inner.z", "")]).assess();
    assert!(lacks(&assessment, "front.bump_steer_band").starts_with("needs front.tie_rod.inner.z to answer"));
    let began = demo("dunlin", &[]).assess();
    assert!(lacks(&began, "rear.bump_steer_band").starts_with("needs rear.bump_steer to answer"));
    assert!(lacks(&began, "rear.joints").starts_with("needs rear.joint_left to answer"));
    assert!(lacks(&began, "rear.bind").starts_with("needs rear.bind_force to answer"));
    // A linkage that cannot stand is refused in its own words.
    let fallen = demo("dunlin_measured", &[("front.upper_arm.ball_joint.z", "200 mm")]).assess();
    let said = lacks(&fallen, "front.bump_steer_band");
    assert!(
        said.contains("front.bump_steer has no value: ") && said.contains("above the ball joint"),
        "{said}"
    );
}

#[test]
fn roll_is_that_of_the_model() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    // Links that bind are a bar as stiff as K = k r^2 t^2 / 2.
    let binding = |axle: &str| {
        let stiffness = assessment.value(&format!("{axle}bind_roll_stiffness")).unwrap().unwrap_or(0.0);
        let lever = of(&format!("{axle}track")) * of(&format!("{axle}anti_roll_bar.motion_ratio"));
        2.0 * stiffness / (lever * lever)
    };
    let axle = |axle: &str, live: bool| {
        let of = |path: &str| format!("{axle}.{path}");
        let base = if live {
            format!("spring_base = \"{} m\"\n", value(&assessment, &of("spring_base")))
        } else {
            String::new()
        };
        format!(
            "[{axle}]\ntrack = \"{} m\"\nroll_centre_height = \"{} m\"\nunsprung_mass = \"{} kg\"\nunsprung_height = \"{} m\"\n\
             spring_rate = \"{} N/m\"\n{base}tyre_rate = \"{} N/m\"\nbar_rate = \"{} N/m\"\nbar_motion_ratio = {}\n",
            value(&assessment, &of("track")),
            value(&assessment, &of("roll_centre_height")),
            value(&assessment, &of("unsprung_mass")),
            value(&assessment, &of("tyre.loaded_radius")),
            value(&assessment, &of("wheel_rate")),
            value(&assessment, &of("tyre.rate")),
            value(&assessment, &of("anti_roll_bar.rate")) + binding(&of("")),
            value(&assessment, &of("anti_roll_bar.motion_ratio")),
        )
    };
    let document = format!(
        "sprung_mass = \"{} kg\"\nsprung_height = \"{} m\"\nbehind_front_axle = \"{} m\"\nwheelbase = \"{} m\"\n{}{}",
        of("vehicle.sprung_mass"),
        of("vehicle.sprung_height"),
        of("vehicle.sprung_behind_front_axle"),
        of("vehicle.wheelbase"),
        axle("front", false),
        axle("rear", true),
    );
    let on = RollBalance::from_text(&document).unwrap().balance().unwrap();
    for (path, wanted) in [
        ("vehicle.roll_gradient", on.roll_gradient.si()),
        ("vehicle.front_transfer_share", on.front_share.si()),
        ("front.roll_stiffness", on.front_suspension_stiffness.si()),
        ("rear.roll_stiffness", on.rear_suspension_stiffness.si()),
    ] {
        assert!((of(path) / wanted - 1.0).abs() < 1e-12, "{path}: {} {wanted}", of(path));
    }
    assert!((of("vehicle.front_share_over_weight") - on.share_over_weight.si()).abs() < 1e-12);
    // A bar whose ratio nobody knows is asked for; where there is none, no ratio is.
    let bare = demo("wagtail", &[("front.anti_roll_bar.motion_ratio", "")]).assess();
    assert!(lacks(&bare, "vehicle.balance").contains("a bar needs anti_roll_bar.motion_ratio"));
    assert!(value(&demo("wagtail", &[]).assess(), "vehicle.roll_gradient") > 0.0);
}

#[test]
fn ride_is_that_of_the_model() {
    let assessment = demo("wagtail", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    let corner = QuarterCar {
        sprung_mass: Value::new(Mass::from_si(of("front.sprung_mass"))),
        unsprung_mass: Value::new(Mass::from_si(of("front.unsprung_mass") / 2.0)),
        wheel_rate: Value::new(LinearStiffness::from_si(of("front.wheel_rate"))),
        wheel_damping: Value::new(Damping::from_si(of("front.damper.at_wheel"))),
        tyre_rate: Value::new(LinearStiffness::from_si(of("front.tyre.rate"))),
        tyre_damping: None,
    };
    let road = RoadSurface { road_class: RoadClass::B }.roughness().unwrap();
    let speed = Velocity::from_si(of("use.cruise_speed"));
    let on = corner.on_road(road, speed, Length::from_si(0.35), Length::from_si(91.0)).unwrap();
    assert_eq!(of("front.ride_acceleration").to_bits(), on.weighted_acceleration.si().to_bits());
    assert_eq!(of("front.tyre_load_share").to_bits(), on.tyre_load_share.si().to_bits());
}

/// What is left to each limit, with what is wanted by the text of the sheet or assumed, by hand.
#[test]
fn findings_hold_these_lines_against_their_limits() {
    let assessment = demo("dunlin_measured", &[("wanted.ride_acceleration", "0.63 m/s^2")]).assess();
    let of = |path: &str| value(&assessment, path);
    let (degree, ends) =
        (std::f64::consts::PI / 180.0, |value: f64, low: f64, high: f64| (value - low).min(high - value));
    for (finding, margin) in [
        ("front.bump_steer_band", ends(of("front.bump_steer"), -0.1 * degree, 0.1 * degree)),
        ("front.joints", of("front.joint_left")),
        ("front.linkage_range", of("front.linkage_left")),
        ("vehicle.roll", 8.0 * degree / 9.80665 - of("vehicle.roll_gradient")),
        ("vehicle.balance", ends(of("vehicle.front_share_over_weight"), 0.0, 0.1)),
        ("front.comfort", 0.63 - of("front.ride_acceleration")),
        ("front.road_holding", 1.0 / 3.0 - of("front.tyre_load_share")),
        ("vehicle.flat_ride", ends(of("vehicle.flat_ride_cycles"), 0.75, 1.75)),
        ("front.damper_range", ends(of("front.damper.rate_wanted"), 4000.0, 11000.0)),
    ] {
        let answer = assessment.answer(finding).unwrap();
        let near = (answer.margin - margin).abs() <= 1e-12 * margin.abs().max(1.0);
        assert!(near, "{finding}: {} {margin}", answer.margin);
    }
    // Cycles by hand: f_f f_r (l / v) / (f_r - f_f) on the ride frequencies.
    let (front, rear) = (of("front.ride_frequency"), of("rear.ride_frequency"));
    let cycles = front * rear * (2.65 / of("use.cruise_speed")) / (rear - front);
    assert!((of("vehicle.flat_ride_cycles") / cycles - 1.0).abs() < 1e-12);
}

#[test]
fn a_damper_that_reaches_the_wanted_damping_is_said_to() {
    // c_d = 2 zeta sqrt(k m) / r^2: one damper for zeta = 0.325, the middle of the assumed band, by hand.
    let assessment = demo("dunlin_measured", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    let wanted = 2.0 * 0.325 * (of("front.wheel_rate") * of("front.sprung_mass")).sqrt()
        / of("front.spring.motion_ratio").powi(2);
    assert!((of("front.damper.rate_wanted") / wanted - 1.0).abs() < 1e-12);
    assert_eq!(verdict(&assessment, "front.damper_range"), Verdict::Meets);
    let soft = demo("dunlin_measured", &[("front.damper.rate_firmest", "5 N·s/mm")]).assess();
    assert_eq!(verdict(&soft, "front.damper_range"), Verdict::Short);
}

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
        // What rests on an assumption neither: nobody wrote the gradient of the motion ratio.
        ("wagtail", &[("front.wheel_rate", "25 N/mm")], None),
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

/// What is drawn of both axles is measured, too: wheelbase and track follow where nobody wrote them.
#[test]
fn wheelbase_and_track_follow_from_the_drawing() {
    let lines = [("vehicle.wheelbase", ""), ("front.track", ""), ("rear.brake_share", "")];
    let on = demo("dunlin_measured", &lines).assess();
    assert!((value(&on, "vehicle.wheelbase") - 2.65).abs() < 1e-12);
    assert!((value(&on, "front.track") - 1.54).abs() < 1e-12);
    assert!((value(&on, "rear.brake_share") - 0.36).abs() < 1e-12);
}

#[test]
fn what_rests_on_a_contradiction_is_no_better_than_tight_where_it_can_hurt_someone() {
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
            (Verdict::Meets, Verdict::Tight) => assert!(doubted && is.is_safety(), "{}", is.path),
            _ => assert!(!(doubted && is.is_safety() && is.verdict == Verdict::Meets), "{}", is.path),
        }
    }
    // Its margin is what it was: 1350 kg over 1250 kg, and 1.05 is wanted.
    let load = after.answer("front.load").unwrap();
    assert_eq!((load.verdict, load.margin), (Verdict::Tight, 1350.0 / 1250.0));
    // What does not rest on it stays, and so does what hurts nobody.
    assert_eq!(verdict(&after, "coolant.boiling"), Verdict::Meets);
    assert_eq!(verdict(&after, "front.frequency"), Verdict::Meets);
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
