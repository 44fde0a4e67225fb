//! Points of the drawing.

use super::*;

/// Both forms, with and without what a spring need not have.
fn drawable() -> [LeafAxle; 3] {
    let mut bent = axle(ARCHED);
    bent.leaf.form = LeafForm::UniformSection;
    bent.leaf.eye_offset = Some(length(0.02));
    bent.leaf.seat_angle = Some(Value::new(radians(0.03)));
    bent.wheel.camber = Value::new(radians(-0.02));
    [axle(ARCHED), axle(FLAT), bent]
}

#[test]
fn at_ride_height_the_points_are_those_that_were_given() {
    for model in drawable() {
        let points = read::points(&model.points(&[metres(0.0)], &[radians(0.0)]).unwrap());
        let (spring, damper) = (&model.leaf, model.damper.as_ref().unwrap());
        for (part, point, at) in [
            ("axle", "left end", &model.wheel.centre),
            ("wheel left", "centre", &model.wheel.centre),
            ("spring left", "fixed eye", &spring.fixed_eye),
            ("spring left", "shackle eye", &spring.shackle_eye),
            ("spring left", "seat", &spring.seat),
            ("seat left", "seat", &spring.seat),
            ("shackle left", "pivot", &spring.shackle_pivot),
            ("shackle left", "eye", &spring.shackle_eye),
            ("damper left", "body eye", &damper.body_eye),
            ("damper left", "axle eye", &damper.axle_eye),
        ] {
            let drawn = at.vector();
            let other = read::place(&points, &part.replace("left", "right"), &point.replace("left", "right"));
            assert!((read::place(&points, part, point) - drawn).norm() < 1e-9, "{part}, {point}");
            assert!((other - vector(drawn.x, -drawn.y, drawn.z)).norm() < 1e-9, "{part}, {point}");
        }
        let down =
            read::place(&points, "wheel left", "centre") - read::place(&points, "wheel left", "contact");
        let camber = model.wheel.camber.quantity.si();
        assert!((down - vector(0.0, camber.sin(), camber.cos()) * 0.38).norm() < 1e-12);
    }
}

/// Length of a drawn leaf in side view: of an arc exactly, from its chords and the angles between them.
fn arc(leaf: &[Vector]) -> f64 {
    let chords: Vec<Vector> =
        leaf.windows(2).map(|on| on[1] - on[0]).map(|on| vector(on.x, 0.0, on.z)).collect();
    let turn = chords.windows(2).map(|on| on[0].angle(on[1])).sum::<f64>() / (chords.len() - 1) as f64;
    let over = if turn < 1e-6 { 1.0 } else { 0.5 * turn / (0.5 * turn).sin() };
    chords.iter().map(|on| on.norm() * over).sum()
}

/// Shackles and what the axle carries keep their lengths, and so does each half of a leaf.
#[test]
fn what_is_rigid_keeps_its_length_and_a_leaf_is_only_bent() {
    for (which, model) in drawable().into_iter().enumerate() {
        let spring = model.prepare().unwrap().spring;
        let rest = read::points(&model.points(&[metres(0.0)], &[radians(0.0)]).unwrap());
        for (heave, roll) in [(-0.06, 0.0), (0.07, 0.0), (0.02, 0.05), (-0.03, -0.04)] {
            let points = read::points(&model.points(&[metres(heave)], &[radians(roll)]).unwrap());
            let on = model.at(metres(heave), radians(roll)).unwrap();
            let wheel = vector(on.right_wheel_x.si(), on.right_wheel_y.si(), on.right_wheel_z.si());
            assert!((read::place(&points, "wheel right", "centre") - wheel).norm() < 1e-12);
            let between = |points: &[(String, String, Vector)], [a, b]: [(&str, &str); 2]| {
                (read::place(points, a.0, a.1) - read::place(points, b.0, b.1)).norm()
            };
            for (side, used) in [("left", on.left_damper_used), ("right", on.right_damper_used)] {
                let of = |part: &str| format!("{part} {side}");
                let [spring_part, shackle, seat, damper, tyre] =
                    ["spring", "shackle", "seat", "damper", "wheel"].map(of);
                let rigid = [
                    [(&*shackle, "pivot"), (&*shackle, "eye")],
                    [(&*seat, "axle"), (&*seat, "seat")],
                    [(&*tyre, "centre"), (&*tyre, "contact")],
                    [("axle", "left end"), ("axle", "right end")],
                    [("axle", "left end"), (&*seat, "seat")],
                    [("axle", "right end"), (&*seat, "seat")],
                    [("axle", "left end"), (&*damper, "axle eye")],
                    [(&*seat, "seat"), (&*damper, "axle eye")],
                ];
                for pair in rigid {
                    let (found, kept) = (between(&points, pair), between(&rest, pair));
                    assert!((found - kept).abs() < 1e-9, "{pair:?}: {found} {kept}");
                }
                for [a, b] in [
                    [(&*spring_part, "seat"), (&*seat, "seat")],
                    [(&*spring_part, "shackle eye"), (&*shackle, "eye")],
                ] {
                    assert!(
                        (read::place(&points, a.0, a.1) - read::place(&points, b.0, b.1)).norm() < 1e-9,
                        "{a:?}"
                    );
                }
                let fixed = [(&*spring_part, "fixed eye"), (&*shackle, "pivot")];
                for (part, point) in fixed {
                    assert!(
                        (read::place(&points, part, point) - read::place(&rest, part, point)).norm() < 1e-9
                    );
                }
                assert!(
                    (0.68 - used.si() - between(&points, [(&damper, "body eye"), (&damper, "axle eye")]))
                        .abs()
                        < 1e-12
                );
                let leaf: Vec<_> = points.iter().filter(|on| on.0 == spring_part).collect();
                let clamps: Vec<_> = leaf
                    .iter()
                    .enumerate()
                    .filter(|(_, on)| on.1 == "clamp")
                    .map(|(place, _)| place)
                    .collect();
                let [a, b] = clamps[..] else { panic!("{clamps:?}") };
                let places: Vec<_> = leaf.iter().map(|on| on.2).collect();
                // Without the eyes, which stand off the leaf.
                for (half, leaf) in
                    [(spring.fixed, &places[1..=a]), (spring.shackle, &places[b..places.len() - 1])]
                {
                    // The arcs of a leaf with fading curvature are not alike.
                    let within = if which == 2 { 2e-5 } else { 1e-9 };
                    assert!((arc(leaf) - half.length).abs() < within, "{} {}", arc(leaf), half.length);
                }
            }
        }
    }
}

/// Eyes where they are drawn; levers and drop links of one length; the image of the other side in the other roll.
#[test]
fn coils_and_bar_are_drawn_where_they_stand() {
    for mount in [Mount::Body, Mount::Axle] {
        let model = helped(mount);
        let (coil_over, bar) = (model.coil_over.as_ref().unwrap(), bar(mount));
        let points =
            |heave: f64, roll: f64| read::points(&model.points(&[metres(heave)], &[radians(roll)]).unwrap());
        let rest = points(0.0, 0.0);
        for (part, point, drawn) in [
            ("coil-over left", "body eye", &coil_over.body_eye),
            ("coil-over left", "axle eye", &coil_over.axle_eye),
            ("anti-roll bar", "left link eye", &bar.link_eye),
            ("anti-roll bar", "left lever end", &bar.lever_end),
        ] {
            assert!((read::place(&rest, part, point) - drawn.vector()).norm() < 1e-9, "{point}");
        }
        for (heave, roll) in [(-0.05, 0.0), (0.05, 0.04), (0.02, -0.05)] {
            let (here, image) = (points(heave, roll), read::mirrored(&points(heave, -roll)));
            let on = model.at(metres(heave), radians(roll)).unwrap();
            let of = |points: &[(String, String, Vector)], part: &str, [a, b]: [&str; 2]| {
                (read::place(points, part, a) - read::place(points, part, b)).norm()
            };
            for (side, eyes) in [("left", on.left_eye_length), ("right", on.right_eye_length)] {
                let found = of(&here, &format!("coil-over {side}"), ["body eye", "axle eye"]);
                assert!((found - eyes.si()).abs() < 1e-12);
                let names = ["link eye", "lever end", "lever pivot"].map(|on| format!("{side} {on}"));
                for pair in [[&*names[0], &*names[1]], [&*names[1], &*names[2]]] {
                    let (found, kept) = (of(&here, "anti-roll bar", pair), of(&rest, "anti-roll bar", pair));
                    assert!((found - kept).abs() < 1e-9, "{pair:?}: {found} {kept}");
                }
                let eye = read::place(&here, "anti-roll bar", &names[0]);
                assert!((eye - read::place(&image, "anti-roll bar", &names[0])).norm() < 1e-9);
            }
            let pivots = ["left lever pivot", "right lever pivot"];
            let kept = of(&rest, "anti-roll bar", pivots);
            assert!((of(&here, "anti-roll bar", pivots) - kept).abs() < 1e-12);
        }
    }
}

#[test]
fn the_points_in_the_other_roll_are_those_of_the_other_side() {
    for model in drawable() {
        let points = |roll: f64| read::points(&model.points(&[metres(0.03)], &[radians(roll)]).unwrap());
        let (points, image) = (points(0.04), read::mirrored(&points(-0.04)));
        assert_eq!(points.len(), image.len());
        // Parts come left before right, those of a part in their order.
        for (part, ..) in &points {
            let of = |points: &[(String, String, Vector)]| {
                points.iter().filter(|on| on.0 == *part).map(|on| (on.1.clone(), on.2)).collect::<Vec<_>>()
            };
            let (here, mut there) = (of(&points), of(&image));
            if part == "axle" {
                there.reverse();
            }
            for ((name, at), (other, image)) in here.iter().zip(&there) {
                assert_eq!(name, other);
                assert!((*at - *image).norm() < 1e-9, "{part}, {name}");
            }
        }
    }
}

#[test]
fn where_the_springs_do_not_go_their_points_say_why() {
    let table = axle(ARCHED).points(&[0.0, 0.9].map(metres), &[radians(0.0)]).unwrap();
    let last = table.rows() - 1;
    assert!(table.word("part", last).is_none() && table.word("part", last - 1).is_some());
    assert!(table.reason(last).unwrap().to_string().contains("cannot be reached"));
}
