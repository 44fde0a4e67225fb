//! Points of the drawing.

use super::*;

/// Every axle with a bar on the body and on itself.
fn drawable() -> impl Iterator<Item = LiveAxle> {
    (0..12).map(|which| {
        let mut model = several(&[0.0; 18], which / 2);
        model.coil_over = Stated::Given(coil_over());
        model.anti_roll_bar = Stated::Given(bar([Mount::Body, Mount::Axle][which % 2]));
        model.wheel.camber = Value::new(rad(-0.02));
        model
    })
}

#[test]
fn at_ride_height_the_points_are_those_that_were_given() {
    for model in drawable() {
        let points = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
        let mut given = vec![
            ("axle".to_owned(), "left end", &model.wheel.centre, true),
            ("wheel left".to_owned(), "centre", &model.wheel.centre, true),
        ];
        for link in &model.links {
            let pair = link.fitted == Fitted::Pair;
            let name = if pair { format!("{} left", link.name) } else { link.name.clone() };
            given.push((name.clone(), "body", &link.body, pair));
            given.push((name, "axle", &link.axle, pair));
        }
        let single = |part: &str, point, at| (part.to_owned(), point, at, false);
        if let Stated::Given(rod) = &model.lateral_rod {
            given
                .extend([single("lateral rod", "body", &rod.body), single("lateral rod", "axle", &rod.axle)]);
        }
        if let Stated::Given(watt) = &model.watt {
            for (name, end, rod) in
                [("upper rod", "upper end", &watt.upper_rod), ("lower rod", "lower end", &watt.lower_rod)]
            {
                given.extend([
                    single(name, "crank", &rod.crank),
                    single(name, "outer", &rod.outer),
                    single("bell crank", end, &rod.crank),
                ]);
            }
            given.push(single("bell crank", "pivot", &watt.pivot));
        }
        let (coil_over, bar) = (model.coil_over.as_ref().unwrap(), model.anti_roll_bar.as_ref().unwrap());
        given.push(("coil-over left".to_owned(), "body eye", &coil_over.body_eye, true));
        given.push(("coil-over left".to_owned(), "axle eye", &coil_over.axle_eye, true));
        given.push(("anti-roll bar".to_owned(), "left link eye", &bar.link_eye, true));
        given.push(("anti-roll bar".to_owned(), "left lever end", &bar.lever_end, true));
        given.push(single("pinion", "nose", model.pinion.as_ref().unwrap().nose.as_ref().unwrap()));
        let mut said = given.len();
        for (part, point, at, pair) in given {
            let (drawn, other) = (at.vector(), mirrored(at.vector()));
            assert!((read::place(&points, &part, point) - drawn).norm() < 1e-12, "{part}, {point}");
            if pair {
                let (part, point) = (part.replace("left", "right"), point.replace("left", "right"));
                assert!((read::place(&points, &part, &point) - other).norm() < 1e-12, "{part}, {point}");
                said += 1;
            }
        }
        // Points that were not given: contact points, the bar's levers on it, the pinion's foot.
        assert_eq!(points.len(), said + 2 + 2 + 1);
        let (foot, pivot) =
            (read::place(&points, "anti-roll bar", "left lever pivot"), bar.lever_pivot.vector());
        assert!((foot.x - pivot.x).hypot(foot.z - pivot.z) < 1e-12);
        let (nose, foot) = (read::place(&points, "pinion", "nose"), read::place(&points, "pinion", "foot"));
        assert!((nose - foot - vector(0.25, 0.0, 0.0)).norm() < 1e-12);
    }
}

/// The axle carries what is on it; what is rigid keeps its length, and a link on bushes has the length that its forces give it.
#[test]
fn what_is_rigid_keeps_its_length_and_links_have_that_of_the_model() {
    let on_axle = |part: &str, point: &str, model: &LiveAxle| match (part, point) {
        ("axle" | "pinion", _) | (_, "axle eye" | "axle" | "centre") => true,
        ("bell crank", "pivot") => model.watt.as_ref().unwrap().carried_by == Mount::Axle,
        ("anti-roll bar", "left lever pivot") => {
            model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Axle
        }
        ("anti-roll bar", "right link eye") => model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Body,
        _ => false,
    };
    for model in drawable() {
        let ready = model.prepare().unwrap();
        let rest = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
        for (heave, roll) in [(-0.06, 0.0), (0.05, 0.0), (0.02, 0.05), (-0.03, -0.04)] {
            let points = read::points(&model.points(&[metres(heave)], &[rad(roll)]).unwrap());
            let pose = ready.linkage.at(heave, roll).unwrap();
            let on = model.at(metres(heave), rad(roll)).unwrap();
            let centre = read::place(&points, "wheel right", "centre");
            let wheel = vector(on.right_wheel_x.si(), on.right_wheel_y.si(), on.right_wheel_z.si());
            assert!((centre - wheel).norm() < 1e-12);
            let eyes = read::place(&points, "coil-over left", "body eye")
                - read::place(&points, "coil-over left", "axle eye");
            assert!((eyes.norm() - on.left_eye_length.si()).abs() < 1e-12);
            for (place, (part, point, at)) in points.iter().enumerate() {
                let (left, right) =
                    (read::place(&points, "axle", "left end"), read::place(&points, "axle", "right end"));
                let drawn = rest[place].2;
                if on_axle(part, point, &model) {
                    let (a, b) =
                        (read::place(&rest, "axle", "left end"), read::place(&rest, "axle", "right end"));
                    let off =
                        ((*at - left).norm() - (drawn - a).norm(), (*at - right).norm() - (drawn - b).norm());
                    assert!(off.0.abs() < 1e-9 && off.1.abs() < 1e-9, "{part}, {point}: {off:?}");
                }
                let Some((before, ..)) =
                    place.checked_sub(1).map(|place| &points[place]).filter(|on| on.0 == *part)
                else {
                    continue;
                };
                let found = (*at - points[place - 1].2).norm();
                let kept = (drawn - rest[place - 1].2).norm();
                let name = match part.as_str() {
                    "upper rod" => "watt.upper_rod",
                    "lower rod" => "watt.lower_rod",
                    other => other,
                };
                if before.starts_with("coil-over") {
                    assert!((found - kept).abs() > 1e-3, "{part}");
                } else if let Some(link) = ready.names.iter().position(|link| link == name) {
                    let stretch = pose.held.stretch.0[link];
                    assert!((found - kept - stretch).abs() < 1e-9, "{part}: {found} {kept} {stretch}");
                    assert!(ready.linkage.redundant() > 0 || stretch.abs() < 1e-9);
                } else {
                    assert!((found - kept).abs() < 1e-9, "{part}, {point}: {found} {kept}");
                }
            }
        }
    }
}

#[test]
fn the_points_of_a_mirror_image_are_those_of_the_other_side() {
    for model in drawable() {
        let points =
            |model: &LiveAxle, roll: f64| read::points(&model.points(&[metres(0.03)], &[rad(roll)]).unwrap());
        let image = read::mirrored(&points(&mirror_image(&model), -0.04));
        let points = points(&model, 0.04);
        assert_eq!(points.len(), image.len());
        for (part, point, at) in &points {
            let away = (read::place(&image, part, point) - *at).norm();
            assert!(away < 1e-9, "{part}, {point}: {away}");
        }
    }
}

#[test]
fn where_the_axle_does_not_go_its_points_say_why() {
    let mut model = four(FOUR);
    let table = model.points(&[0.0, 0.9].map(metres), &[0.0, 0.02].map(rad)).unwrap();
    let last = table.rows() - 1;
    assert!(table.word("part", last).is_none() && table.word("part", last - 2).is_some());
    assert!(table.reason(last).unwrap().to_string().contains("is over-extended"));
    assert_eq!(["heave", "roll"].map(|name| table.numbers(name).unwrap()[last]), [0.9, 0.02]);
    model.anti_roll_bar =
        Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
    let short = model.points(&[metres(0.14)], &[rad(0.0)]).unwrap();
    assert!(short.reason(0).unwrap().to_string().contains("drop link of the anti_roll_bar"));
}
