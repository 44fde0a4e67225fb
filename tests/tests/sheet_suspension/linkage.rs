//! Independent suspension.

use axlewright::Model;
use axlewright::sheet::{Assessment, Axis, Sheet};
use axlewright::suspension::{DoubleWishbone, WheelPosition};
use axlewright::units::{Angle, Length};
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
    assert!(at(-of("rear.droop_remaining")).damper_used.si().abs() < 1e-11);
    assert!(at(of("rear.damper.bump_end")).damper_remaining.si().abs() < 1e-11);
    let least = at(of("rear.bump_compressed"))
        .joint_remaining
        .si()
        .min(at(-of("rear.droop_remaining")).joint_remaining.si());
    assert_eq!(of("rear.joint_remaining"), least);
    // The drop link of the bar may lock it, too.
    let range = model.travel_range(Length::from_si(0.0)).unwrap();
    let remaining =
        (range.bump.si() - of("rear.bump_compressed")).min(-range.droop.si() - of("rear.droop_remaining"));
    assert_eq!(of("rear.linkage_remaining"), remaining);
}

#[test]
fn travel_ends_where_the_model_says_that_nothing_is_left() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let model = front(&assessment);
    let open = at(&model, -value(&assessment, "front.droop_remaining"), 0.0);
    assert!(open.damper_used.si().abs() < 1e-11, "{:?}", open.damper_used);
    let closed = at(&model, value(&assessment, "front.damper.bump_end"), 0.0);
    assert!(closed.damper_remaining.si().abs() < 1e-11, "{:?}", closed.damper_remaining);
    let bound = at(&model, value(&assessment, "front.coil_travel"), 0.0);
    assert!(bound.spring_remaining.si().abs() < 1e-11, "{:?}", bound.spring_remaining);
    let least = closed.spring_remaining.si();
    assert!((value(&assessment, "front.spring.bind_margin") - least).abs() < 1e-11);

    let (bump, droop) =
        (value(&assessment, "front.bump_compressed"), value(&assessment, "front.droop_remaining"));
    let ends = [bump, -droop]
        .map(|travel| [0.0, 0.07, -0.07].map(|rack| at(&model, travel, rack).joint_remaining.si()));
    let least = ends.into_iter().flatten().fold(f64::INFINITY, f64::min);
    assert_eq!(value(&assessment, "front.joint_remaining"), least);
    let remaining = [0.0, 0.035, -0.035, 0.07, -0.07].map(|rack| {
        let range = model.travel_range(Length::from_si(rack)).unwrap();
        (range.bump.si() - bump).min(-range.droop.si() - droop)
    });
    let least = remaining.into_iter().fold(f64::INFINITY, f64::min);
    assert_eq!(value(&assessment, "front.linkage_remaining"), least);
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
    assert!(lacks(&began, "rear.joints").starts_with("needs rear.joint_remaining to answer"));
    assert!(lacks(&began, "rear.bind").starts_with("needs rear.bind_force to answer"));
    // A linkage that cannot stand is refused in its own words.
    let fallen = demo("dunlin_measured", &[("front.upper_arm.ball_joint.z", "200 mm")]).assess();
    let said = lacks(&fallen, "front.bump_steer_band");
    assert!(
        said.contains("front.bump_steer has no value: ") && said.contains("above the ball joint"),
        "{said}"
    );
}

/// A coil that is past solid at ride height has no travel in bump, whether or not the linkage could droop far enough to free it.
#[test]
fn a_coil_that_is_solid_at_ride_height_has_no_bump() {
    for (axle, rates) in [("front", ["180 lbf/in", "40 lbf/in"]), ("rear", ["130 lbf/in", "30 lbf/in"])] {
        let rate = format!("{axle}.spring.rate");
        for soft in rates {
            let on = demo("dunlin_measured", &[(&rate, soft)]).assess();
            let remaining = value(&on, &format!("{axle}.bump_remaining"));
            assert!(remaining < 0.0, "{rate} {soft}: {remaining}");
            assert_eq!(verdict(&on, &format!("{axle}.bump")), Verdict::Short, "{rate} {soft}");
        }
        // A coil that the linkage never brings to its least gaps is ended by the stop.
        let of = |key: &str| format!("{axle}.spring.{key}");
        let lines = [
            (of("solid_length"), "10 mm"),
            (of("active_coils"), "0.5"),
            (of("minimum_gap"), "0 mm"),
            (of("free_length"), "500 mm"),
        ];
        let lines = lines.each_ref().map(|(path, text)| (path.as_str(), *text));
        let long = demo("dunlin_measured", &lines).assess();
        assert_eq!(verdict(&long, &format!("{axle}.bump")), Verdict::Meets, "{axle}");
        // The rack in its middle, at lock the linkage goes less far; at the rear a drop link of the bar ends it before the links do.
        let ends = ["spring.bump_end", "linkage_bump"].map(|end| value(&long, &format!("{axle}.{end}")));
        assert!(ends[0] >= ends[1] && ends[1] > 0.1, "{axle}: {ends:?}");
    }
}

/// Whatever stops the wheel first ends its travel, under whichever of both lines the stop is written.
#[test]
fn each_bump_stop_that_is_written_ends_bump() {
    // (sheet, axle, line, text of a near stop, text of a far one, travel to the near one)
    let cases = [
        ("dunlin", "front", "bump_clearance", "10 mm", "500 mm", Some(0.01)),
        ("dunlin", "rear", "bump_clearance", "10 mm", "500 mm", Some(0.01)),
        ("dunlin_measured", "front", "bump_clearance", "10 mm", "500 mm", Some(0.01)),
        ("dunlin_measured", "rear", "bump_clearance", "10 mm", "500 mm", Some(0.01)),
        ("dray", "rear", "bump_stop_travel", "10 mm", "900 mm", None),
    ];
    for (name, axle, line, near, far, travel) in cases {
        let (line, remaining) = (format!("{axle}.{line}"), format!("{axle}.bump_remaining"));
        let bump = format!("{axle}.bump");
        let [without, near, far] = [None, Some(near), Some(far)].map(|text| {
            demo(name, &text.map(|text| (&*line, text)).into_iter().collect::<Vec<_>>()).assess()
        });
        let travel = travel.unwrap_or_else(|| 0.01 - value(&near, &format!("{axle}.droop_remaining")));
        // The seats of the measured rear rise by 1.02 of the wheel.
        assert!((value(&near, &remaining) - travel).abs() < 2e-4, "{name} {line}");
        let wanted = if travel < 0.0 { Verdict::Short } else { Verdict::Tight };
        assert_eq!(verdict(&near, &bump), wanted, "{name} {line}");
        assert_eq!(value(&far, &remaining), value(&without, &remaining), "{name} {line}");
        assert_eq!(verdict(&far, &bump), verdict(&without, &bump), "{name} {line}");
    }
    // A seat that rises by more than its wheel comes to its stop so much earlier.
    let levered =
        demo("dunlin", &[("rear.bump_clearance", "12 mm"), ("rear.spring.motion_ratio", "1.2")]).assess();
    assert!((value(&levered, "rear.bump_remaining") - 0.01).abs() < 1e-15);
}

/// The drop link of a bar may lock the linkage: a bar that is begun is drawn to its end, or not at all.
#[test]
fn a_bar_that_is_half_drawn_is_asked_for() {
    let place = |line: &str| format!("front.anti_roll_bar.{line}");
    let locks = (place("lever_end.z"), "320 mm");
    let with = |lines: &[(String, &str)]| {
        let lines: Vec<_> = lines.iter().map(|(path, text)| (path.as_str(), *text)).collect();
        demo("dunlin_measured", &lines).assess()
    };
    assert_eq!(verdict(&with(&[]), "front.linkage_range"), Verdict::Meets);
    assert_eq!(verdict(&with(&[]), "front.toggle"), Verdict::Meets);
    assert_eq!(verdict(&with(std::slice::from_ref(&locks)), "front.linkage_range"), Verdict::Short);
    for (missing, there) in
        [("carried_by", "link_eye.x"), ("link_eye.x", "link_eye.y"), ("lever_end.y", "link_eye.x")]
    {
        let on = with(&[locks.clone(), (place(missing), "")]);
        assert_eq!(verdict(&on, "front.linkage_range"), Verdict::NotKnown, "{missing}");
        let said = lacks(&on, "front.linkage_range");
        let wanted = format!("anti_roll_bar.{missing}: it is not written although anti_roll_bar.{there} is");
        assert!(said.contains(&wanted), "{said}");
    }
    // A bar that nobody drew locks nothing.
    let points = ["link_eye", "lever_end", "lever_pivot"]
        .map(|point| ["x", "y", "z"].map(|of| format!("{point}.{of}")));
    let mut undrawn: Vec<_> = points.iter().flatten().map(|line| (place(line), "")).collect();
    undrawn.push((place("carried_by"), ""));
    assert_eq!(verdict(&with(&undrawn), "front.linkage_range"), Verdict::Meets);
}
