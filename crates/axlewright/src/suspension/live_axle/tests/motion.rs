//! The axle moves as other solutions find it.

use super::*;

#[test]
fn at_ride_height_the_axle_stands_as_drawn() {
    for model in [
        four(FOUR),
        four(PARALLEL),
        angled(ANGLED),
        three(FOUR),
        watt(FOUR, Mount::Axle, 0.32),
        bushed(four(FOUR), [1e7; 3]),
    ] {
        let on = model.at(metres(0.0), rad(0.0)).unwrap();
        for (found, wanted) in [
            (on.axle_x.si(), 0.0),
            (on.lateral_shift.si(), 0.0),
            (on.axle_z.si(), 0.32),
            (on.axle_pitch.si(), 0.0),
            (on.axle_steer.si(), 0.0),
            (on.left_wheel_y.si(), 0.75),
            (on.right_wheel_y.si(), -0.75),
            (on.left_camber.si(), 0.0),
            (on.peak_lean.si(), 0.0),
            (on.bind_misfit.si(), 0.0),
        ] {
            assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
        }
    }
}

/// Positions of a parallel and of a converging four-link with a rod, by `least_squares` of scipy on the distances and a second, constructive
/// solution (independent scripts outside the project; residual below 1e-12 m): heave, roll; forward, to the left; pitch of the x axis, yaw in degrees.
#[test]
fn one_freedom_leads_where_another_solution_finds_the_axle() {
    let found = [
        (
            -0.075,
            0.11291582687359795,
            0.009233762868823827,
            0.005640358447929442,
            -3.3161032061066407,
            -0.025113940780995502,
            0.3935235104750594,
            0.544423763099742,
        ),
        (
            -0.05,
            0.05347559253561524,
            0.004848815432576958,
            0.0029574553390683263,
            -2.284453882133586,
            -0.0169019754829285,
            0.38180473636566425,
            0.5203321059605777,
        ),
        (
            0.075,
            0.01403493239038676,
            0.002273063532333303,
            0.0013545772073674022,
            4.079892141312968,
            -0.012801841372188552,
            0.3223296141744029,
            0.3978345200162429,
        ),
    ];
    // Whatever gives: at this roll nothing binds.
    for model in [four(FOUR), bushed(four(FOUR), [4e6, 6e6, 9e6]), bushed(four(FOUR), [0.0, 6e6, 0.0])] {
        for (heave, roll, forward, left, pitch, yaw, rod, eyes) in found {
            let on = model.at(metres(heave), rad(f64::to_radians(roll))).unwrap();
            for (found, wanted, within) in [
                (on.axle_x.si(), forward, 1e-9),
                (on.lateral_shift.si(), left, 1e-9),
                (-on.pinion_angle.si().to_degrees(), pitch, 1e-6),
                (on.axle_steer.si().to_degrees(), yaw, 1e-6),
                (on.lateral_rod_height.si(), rod, 1e-6),
                (on.left_eye_length.si(), eyes, 1e-8),
                (on.bind_misfit.si(), 0.0, 1e-9),
            ] {
                assert!((found - wanted).abs() < within, "{heave}: {found} {wanted}");
            }
            assert_eq!((on.freedoms, on.redundant), (1, 1));
        }
    }
    // The instant centre in side view and the anti-squat at ride height, by drawing lines; a level rod, which binds less in heave.
    let mut level = FOUR;
    level[5][2] = level[4][2];
    let on = four(level).at(metres(0.0), rad(0.0)).unwrap();
    assert_relative_eq!(on.side_view_centre_x.si(), 1.1723214285714285, max_relative = 1e-9);
    assert_relative_eq!(on.side_view_centre_height.si() - 0.01, 0.37370535714285713, max_relative = 1e-9);
    assert_relative_eq!(on.drive_anti_pitch.si(), 1.575907590759076, max_relative = 1e-9);
}

/// Results of the same scripts: five parallel and equal links leave two freedoms, and fit in roll, too.
#[test]
fn parallel_and_equal_links_leave_two_freedoms() {
    let model = four(PARALLEL);
    for (heave, roll, forward, left, pitch) in [
        (0.0, 0.0, 0.0, 0.0, 0.0),
        (-0.075, 0.0, 0.005145607275278767, 0.0029480041681285312, 0.0),
        (0.075, 0.0, 0.005145607275278798, 0.002948004168128458, 0.0),
        (0.0, 0.05, 0.0004237932034257648, -0.00029998466373076446, 0.0015630857221185363),
        (0.0, 0.1, 0.0016970610124784735, -0.001199755190816329, 0.012516146392402764),
    ] {
        let on = model.at(metres(heave), rad(roll)).unwrap();
        assert!(
            (on.axle_x.si() - forward).abs() < 1e-9 && (on.lateral_shift.si() - left).abs() < 1e-9,
            "{on:?}"
        );
        assert!(
            (on.pinion_angle.si().to_degrees() + pitch).abs() < 1e-6 && on.bind_misfit.si() < 1e-9,
            "{on:?}"
        );
        assert!(on.axle_steer.si().abs() < 1e-6 || roll != 0.0);
        // Once the rod has pitched a rolled axle a little, the next bit of heave binds.
        assert_eq!((on.freedoms, on.redundant), (if roll == 0.0 { 2 } else { 1 }, 1));
    }
}

/// A rod swings on its arc and leads the roll centre: the height where it crosses the centre plane (textbooks; W. F. Milliken, D. L. Milliken,
/// *Race Car Vehicle Dynamics* (1995), chapter 17, from memory).
#[test]
fn a_lateral_rod_swings_on_its_arc_and_leads_the_roll_centre() {
    let model = four(PARALLEL);
    for heave in [-0.08, -0.02, 0.03, 0.09] {
        let on = model.at(metres(heave), rad(0.0)).unwrap();
        let arc = 0.96 - f64::sqrt(0.96 * 0.96 - heave * heave - on.axle_x.si() * on.axle_x.si());
        assert_relative_eq!(on.lateral_shift.si(), arc, max_relative = 1e-10);
        // Parallel links neither steer nor turn the axle.
        assert!(on.axle_steer.si().abs() < 1e-13 && on.axle_pitch.si().abs() < 1e-13);
        let carried = (on.axle_x.si() - 0.55).hypot(heave).hypot(arc);
        assert_relative_eq!(carried, 0.55, max_relative = 1e-12);
    }
    // A rod in the plane of the axle, so that steer in roll does not touch it.
    let mut points = FOUR;
    (points[4], points[5]) = ([0.0, 0.46, 0.38], [0.0, -0.5, 0.3]);
    for model in [three(points), bushed(three(points), [1e6; 3])] {
        for heave in [-0.05, 0.0, 0.04] {
            let on = model.at(metres(heave), rad(0.0)).unwrap();
            // Beside ride height the rod leaves the transverse plane.
            let within = if heave == 0.0 { 1e-9 } else { 3e-3 };
            assert_relative_eq!(
                on.roll_centre_height.si(),
                on.lateral_rod_height.si(),
                max_relative = within
            );
        }
    }
}

/// A straight and level Watt linkage leads its pivot on a straight line: shift and roll centre are those of the pivot.
#[test]
fn a_watt_linkage_leads_its_pivot() {
    for carried_by in [Mount::Axle, Mount::Body] {
        let model = watt(FOUR, carried_by, 0.3);
        let rest = model.at(metres(0.0), rad(0.0)).unwrap();
        // The pivot stands 0.1 m behind the axle and swings a little as the axle steers in roll.
        let swing = 0.1 * rest.roll_steer.si();
        assert_relative_eq!(rest.roll_centre_height.si() - 0.01 * 0.0, 0.31 + swing, max_relative = 1e-9);
        let rod = four(FOUR).at(metres(0.06), rad(0.0)).unwrap();
        let on = model.at(metres(0.06), rad(0.0)).unwrap();
        assert!(
            on.lateral_shift.si().abs() < 0.2 * rod.lateral_shift.si().abs(),
            "{}",
            on.lateral_shift.si()
        );
        assert_eq!((on.freedoms, on.redundant), (2, 0));
    }
    let mut over = watt(FOUR, Mount::Axle, 0.3);
    over.links = four(FOUR).links;
    let on = bushed(over, [5e6; 3]).at(metres(0.03), rad(0.05)).unwrap();
    assert!(on.redundant == 1 && on.freedoms == 1 && on.bind_force.si() > 1.0);
}

/// Anti-squat as the share of the line from the contact point to the height of the centre of gravity over the other axle
/// (T. D. Gillespie, *Fundamentals of Vehicle Dynamics* (1992), chapter 7; from memory).
#[test]
fn anti_squat_is_read_off_the_line_to_the_centre_of_gravity() {
    for upper in [0.38, 0.41, 0.45] {
        let mut points = FOUR;
        (points[2][2], points[5][2]) = (upper, points[4][2]);
        let on = four(points).at(metres(0.0), rad(0.0)).unwrap();
        let slope = on.side_view_centre_height.si() / on.side_view_centre_x.si();
        assert_relative_eq!(on.drive_anti_pitch.si(), slope / (0.54 / 2.6), max_relative = 1e-10);
        assert_relative_eq!(on.brake_anti_pitch.si(), 0.4 * on.drive_anti_pitch.si(), max_relative = 1e-12);
        let line = |at: f64, from: [f64; 3], to: [f64; 3]| {
            from[2] + (at - from[0]) * (to[2] - from[2]) / (to[0] - from[0])
        };
        let x = on.side_view_centre_x.si();
        let crossing = line(x, points[0], points[1]);
        assert_relative_eq!(crossing, line(x, points[2], points[3]), max_relative = 1e-9);
        assert_relative_eq!(crossing + 0.01, on.side_view_centre_height.si(), max_relative = 1e-9);
    }
}

/// With one stiffness in every link the bushes give where rigid links miss, and by as much as the force over the stiffness.
#[test]
fn misfit_at_rigid_joints_is_bush_force_over_stiffness() {
    for (model, heave, roll) in
        [(four(FOUR), 0.05, 0.06), (four(FOUR), -0.03, -0.04), (four(ANGLED), 0.02, 0.03)]
    {
        let rigid = model.at(metres(heave), rad(roll)).unwrap();
        assert!(
            rigid.bind_force.si().is_nan()
                && rigid.bind_moment.si().is_nan()
                && rigid.bind_roll_stiffness.si().is_nan()
        );
        assert!(rigid.bind_misfit.si() > 1e-5, "{}", rigid.bind_misfit.si());
        for stiffness in [1e6, 8e6] {
            let model = bushed(model.clone(), [stiffness; 3]);
            let on = model.at(metres(heave), rad(roll)).unwrap();
            assert_relative_eq!(on.bind_misfit.si(), rigid.bind_misfit.si(), max_relative = 1e-9);
            assert_relative_eq!(
                on.lateral_shift.si(),
                rigid.lateral_shift.si(),
                max_relative = 1e-9,
                epsilon = 1e-12
            );
            assert_eq!(on.bind_link, rigid.bind_link);
            let ready = model.prepare().unwrap();
            let pose = ready.linkage.at(heave, roll).unwrap();
            let stretches = &pose.held.stretch.0[..ready.linkage.links.len()];
            let missed: f64 = stretches.iter().map(|stretch| stretch * stretch).sum();
            assert_relative_eq!(missed.sqrt(), rigid.bind_misfit.si(), max_relative = 1e-9);
            let most = stretches.iter().fold(0.0, |most: f64, stretch| most.max(stretch.abs()));
            assert_relative_eq!(on.bind_force.si() / stiffness, most, max_relative = 1e-9);
        }
    }
}

#[test]
fn rigid_links_beside_bushes_keep_their_length() {
    let model = bushed(four(FOUR), [0.0, 3e6, 0.0]);
    let ready = model.prepare().unwrap();
    let pose = ready.linkage.at(0.04, 0.05).unwrap();
    for (place, stretch) in pose.held.stretch.0.iter().enumerate().take(5) {
        assert_eq!(stretch.abs() < 1e-12, ready.linkage.links[place].give == 0.0, "{place} {}", stretch);
    }
    // As stiff bushes in their place do, nearly.
    let (on, near) = (
        model.at(metres(0.04), rad(0.05)).unwrap(),
        bushed(four(FOUR), [1e11, 3e6, 1e11]).at(metres(0.04), rad(0.05)).unwrap(),
    );
    assert_relative_eq!(on.bind_force.si(), near.bind_force.si(), max_relative = 1e-3);
    assert_relative_eq!(on.bind_roll_stiffness.si(), near.bind_roll_stiffness.si(), max_relative = 1e-3);
}

/// Rear axle turned about to stand in front: the nose points to the rear, and rises and falls as it did.
#[test]
fn the_pinion_of_a_front_axle_points_to_the_rear() {
    let rear = four(FOUR);
    let turned = |[x, y, z]: [f64; 3]| [-x, y, z];
    let mut front = four(FOUR.map(turned));
    front.axle = Axle::Front;
    front.pinion = Some(Pinion { angle: Value::new(rad(0.0)), nose: Some(point([-0.25, 0.0, 0.32])) });
    // Labelled as a front axle only, its nose is on the other end of the same housing.
    let mut labelled = four(FOUR);
    (labelled.axle, labelled.pinion) = (Axle::Front, front.pinion.clone());
    for heave in [0.08, 0.03, -0.06].map(metres) {
        let [rear, front, labelled] =
            [&rear, &front, &labelled].map(|model| model.at(heave, rad(0.0)).unwrap());
        let change = rear.pinion_angle_change.si();
        assert!(
            change.abs() > 1e-3 && (front.pinion_angle_change.si() - change).abs() < 1e-9,
            "{change} {front:?}"
        );
        assert!((labelled.pinion_angle.si() + change).abs() < 1e-9);
        // The angle is that of the line to the nose.
        let line = ((front.pinion_z - front.axle_z) / (front.axle_x - front.pinion_x)).si().atan();
        assert!((line - front.pinion_angle.si()).abs() < 1e-7, "{line}");
    }
}

/// A moved axle has its new wheelbase in anti-squat and anti-lift: longer to the rear of a rear axle, to the front of a front one.
#[test]
fn the_wheelbase_follows_a_moved_axle() {
    for (axle, forward, wheelbase) in
        [(Axle::Rear, -0.1, 2.7), (Axle::Rear, 0.05, 2.55), (Axle::Front, 0.1, 2.7)]
    {
        let mut model = four(FOUR);
        model.axle = axle;
        let table = model.axle_move(metres(forward), metres(0.0), &[metres(0.0), metres(0.03)]).unwrap();
        for name in ["drive_anti_pitch", "brake_anti_pitch"] {
            let found = table.numbers(name).unwrap();
            // The links as they are then, under the wheelbase of before: their anti-squat is less by the ratio of the two.
            let mut moved = model.clone();
            for link in &mut moved.links {
                link.axle = link.axle.moved(vector(forward, 0.0, 0.0));
            }
            moved.wheel.centre = moved.wheel.centre.moved(vector(forward, 0.0, 0.0));
            if let Stated::Given(rod) = &mut moved.lateral_rod {
                rod.axle = rod.axle.moved(vector(forward, 0.0, 0.0));
            }
            moved.coil_over = Stated::Unknown;
            moved.pinion = None;
            let on = moved.at(metres(0.0), rad(0.0)).unwrap();
            let old = if name == "drive_anti_pitch" { on.drive_anti_pitch } else { on.brake_anti_pitch }.si();
            assert!(
                (found[1] - old * wheelbase / 2.6).abs() < 1e-9 && old != 0.0,
                "{name}: {} {old}",
                found[1]
            );
        }
        // Unmoved, nothing changes.
        let same = model.axle_move(metres(0.0), metres(0.0), &[metres(0.03)]).unwrap();
        let of = same.numbers("drive_anti_pitch").unwrap();
        assert!((of[0] - of[1]).abs() < 1e-12);
    }
}

/// The travel ends where a drop link of the bar lines up with its lever, if no link ends it before.
#[test]
fn a_drop_link_that_lines_up_ends_the_travel() {
    for (bearings, eye) in [(Mount::Axle, None), (Mount::Body, None), (Mount::Axle, Some([0.26, 0.48, 0.43]))]
    {
        let mut model = three(FOUR);
        let free = model.travel_range(rad(0.0)).unwrap();
        let mut drawn = bar(bearings);
        if let Some(eye) = eye {
            drawn.link_eye = point(eye);
        }
        model.anti_roll_bar = Stated::Given(drawn);
        let held = model.travel_range(rad(0.0)).unwrap();
        let mut ended = 0;
        for (held, free, end, sign) in
            [(held.droop, free.droop, &held.droop_end, -1.0), (held.bump, free.bump, &held.bump_end, 1.0)]
        {
            if end != "anti-roll bar" {
                assert_eq!(held, free);
                continue;
            }
            ended += 1;
            assert!(held.si().abs() < free.si().abs());
            let at = |heave: f64| model.at(metres(heave), rad(0.0));
            assert!(at(held.si() - sign * 1e-6).is_ok());
            assert!(at(held.si() + sign * 1e-6).unwrap_err().to_string().contains("drop link"));
        }
        assert!(ended > 0, "{bearings:?} {held:?}");
    }
}
