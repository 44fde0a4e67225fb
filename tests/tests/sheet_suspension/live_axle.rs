//! Live axle on links.

use axlewright::Model;
use axlewright::sheet::{Assessment, Axis, Sheet};
use axlewright::suspension::{AxlePosition, LiveAxle};
use axlewright::units::{Angle, Length};
use axlewright::{Value, Verdict};
use axlewright_tests::assessed::{demo, lacks, text, value, verdict};

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
    // The mean of both stiffnesses in roll.
    let [left, right] = [&on.left_roll_motion_ratio, &on.right_roll_motion_ratio].map(|ratio| ratio.si());
    let both_sides = (0.5 * (left * left + right * right)).sqrt();
    for (path, wanted) in [
        ("rear.anti_squat", on.drive_anti_pitch.si()),
        ("rear.anti_lift", on.brake_anti_pitch.si()),
        ("rear.spring_base", track * both_sides / on.left_motion_ratio.si()),
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
    for (path, eyes) in [("rear.damper.droop_end", 0.57), ("rear.damper.bump_end", 0.37)] {
        // The side that comes there first.
        let there = on_axle(&model, of(path), 0.0);
        let both = [there.left_eye_length.si(), there.right_eye_length.si()];
        let there = if path.ends_with("droop_end") { both[0].max(both[1]) } else { both[0].min(both[1]) };
        assert!((there - eyes).abs() < 1e-11, "{path}: {there} {eyes}");
    }
    // Each spring on its own seats.
    let there = on_axle(&model, of("rear.spring.bump_end"), 0.0);
    let right = least + of("rear.spring.right_seat_offset") - of("rear.spring.seat_offset");
    let spare = [there.left_eye_length.si() - least, there.right_eye_length.si() - right];
    assert!(spare[0].min(spare[1]).abs() < 1e-11, "{spare:?}");
    let range = model.travel_range(Angle::from_si(0.0)).unwrap();
    assert_eq!(of("rear.linkage_bump").to_bits(), range.bump.si().to_bits());
    assert_eq!(of("rear.linkage_droop").to_bits(), (-range.droop.si()).to_bits());
    // Over the travel, and crossed.
    let (bump, droop) = (of("rear.bump_compressed"), of("rear.droop_remaining"));
    let roll = ((bump + droop) / of("rear.spring_base")).asin();
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
        ("rear.joint_remaining", ends.iter().map(|on| on.joint_remaining.si()).fold(f64::INFINITY, f64::min)),
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
        // With its stop compressed by 15 mm.
        ("rear.pinion", &[], Verdict::Short),
        ("rear.pinion", &[("rear.bump_stop_compression", "0 mm")], Verdict::Meets),
        ("rear.pinion", &[("rear.upper_links.axle.z", "520 mm")], Verdict::Short),
        ("rear.roll_steer_band", &[], Verdict::Meets),
        ("rear.roll_steer_band", &[("rear.lower_links.body.z", "400 mm")], Verdict::Short),
        // 145 % with the wheels at full droop.
        ("rear.squat", &[], Verdict::Short),
        ("rear.squat", &[("wanted.anti_squat_high", "1.6")], Verdict::Meets),
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
        ("rear.bind", &rigid[..], "lower_links.body_bush: it is not written, and the links hold each other"),
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
    assert!(value(&open, "rear.bump_remaining") > 0.0 && value(&open, "rear.droop_remaining") > 0.0);
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
        let said = lacks(&short, finding);
        assert!(said.contains("ride height beyond the bump stop"), "{finding}: {said}");
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

/// Links that hold each other go where their bushes let them: each end of them is needed.
#[test]
fn a_bush_that_is_missing_is_not_taken_for_rigid() {
    let sheet = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    let low = ("rear.lower_links.body.z", "341 mm");
    assert_eq!(verdict(&sheet(&[low]), "rear.roll_steer_band"), Verdict::Short);
    for line in ["upper_links.axle_bush", "lateral_rod.body_bush"] {
        let path = format!("rear.{line}");
        let missing = sheet(&[low, (&path, "")]);
        for finding in
            ["rear.roll_steer_band", "rear.joints", "rear.linkage_range", "rear.bind", "vehicle.balance"]
        {
            assert_eq!(verdict(&missing, finding), Verdict::NotKnown, "{finding}");
        }
        let said = lacks(&missing, "rear.roll_steer_band");
        assert!(
            said.contains(&format!("{line}: it is not written, and the links hold each other")),
            "{said}"
        );
        // An end without a bush says that it is rigid.
        assert_ne!(verdict(&sheet(&[(&path, "1e9 N/m")]), "rear.roll_steer_band"), Verdict::NotKnown);
    }
    assert_eq!(verdict(&sheet(&[]), "rear.roll_steer_band"), Verdict::Meets);
}

/// A bar that is drawn is there, whatever its rate says.
#[test]
fn a_drawn_bar_without_a_rate_is_a_contradiction() {
    let stiff = [("front.anti_roll_bar.rate", "80 N/mm"), ("rear.anti_roll_bar.rate", "200 N/mm")];
    let tyres = [
        ("grip.pull_coefficient", "0.3"),
        ("front.tyre.load_sensitivity", "0.1"),
        ("front.tyre.sensitivity_load", "6 kN"),
        ("rear.tyre.load_sensitivity", "0.1"),
        ("rear.tyre.sensitivity_load", "6 kN"),
    ];
    let with =
        |lines: &[(&str, &str)]| demo("dunlin_measured", &[&stiff[..], &tyres[..], lines].concat()).assess();
    assert_eq!(verdict(&with(&[]), "vehicle.balance"), Verdict::Short);
    for rate in ["none", "0 N/mm"] {
        let on = with(&[("rear.anti_roll_bar.rate", rate)]);
        assert_eq!(verdict(&on, "vehicle.balance"), Verdict::NotKnown, "{rate}");
        let said = lacks(&on, "vehicle.balance");
        assert!(said.contains("it says that there is no bar, but a bar is drawn"), "{said}");
    }
    let points = ["link_eye", "lever_end", "lever_pivot"]
        .map(|point| ["x", "y", "z"].map(|of| format!("{point}.{of}")));
    let mut lines: Vec<String> =
        points.into_iter().flatten().map(|line| format!("rear.anti_roll_bar.{line}")).collect();
    lines.push("rear.anti_roll_bar.bearings".to_owned());
    let mut lines: Vec<_> = lines.iter().map(|line| (line.as_str(), "")).collect();
    lines.push(("rear.anti_roll_bar.rate", "none"));
    // Without the bar the front loses more than it did.
    let margin = |on: &Assessment| on.answer("vehicle.balance").unwrap().margin;
    assert!(margin(&with(&lines)) > margin(&with(&[])));
}
