//! Properties of any such axle.

use super::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// A row of a table is what the model says alone, to the bit, whatever the rows before it found or refused.
    #[test]
    fn a_row_is_the_position_alone_to_the_bit(
        shifts in prop::collection::vec(-0.02..0.02, 18), which in 0..6_usize, fitted in prop::collection::vec(any::<bool>(), 8),
        rows in prop::collection::vec((-0.1..0.1_f64, -0.15..0.15_f64, 0..12_usize), 4),
    ) {
        let mut model = several(&shifts, which);
        if !fitted[0] {
            model.coil_over = Stated::Unknown;
        } else if let Stated::Given(on) = &mut model.coil_over {
            if !fitted[1] {
                on.spring = None;
            }
            if !fitted[2] {
                on.damper = None;
            }
        }
        if fitted[3] {
            model.anti_roll_bar = Stated::Given(bar(if fitted[4] { Mount::Axle } else { Mount::Body }));
        }
        if !fitted[5] {
            model.pinion = None;
        }
        if !fitted[6] {
            model.pitching = None;
        }
        if fitted[7] {
            model.links[1].axle_limit = Some(Value::new(rad(0.1)));
        }
        let wild = |on: f64, kind: usize| match kind {
            0 => f64::NAN,
            1 => 11.0,
            2 => 0.9,
            _ => on,
        };
        let heaves: Vec<Length> = rows.iter().map(|(heave, _, kind)| metres(wild(*heave, *kind))).collect();
        let rolls: Vec<Angle> = rows.iter().map(|(_, roll, kind)| rad(wild(*roll, *kind * 5 % 12))).collect();
        let Ok(table) = model.table(&heaves, &rolls) else { return Ok(()) };
        let (ready, mut row) = (model.prepare().unwrap(), 0);
        for heave in &heaves {
            for roll in &rolls {
                let alone = alone(["heave", "roll"], (*heave, *roll), ready.at(*heave, *roll));
                prop_assert_eq!(difference((&table, row), (&alone, 0)), None);
                row += 1;
            }
        }
    }
}

proptest! {
    /// Links keep their length to 1e-12 m where nothing is redundant; otherwise the forces of the bushes are in balance.
    #[test]
    fn links_keep_their_length_or_are_in_balance(
        shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.09..0.09, roll in -0.1..0.1, which in 0..6_usize,
    ) {
        let model = several(&shifts, which);
        let Ok(ready) = model.prepare() else { return Ok(()) };
        let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
        let links = &ready.linkage.links;
        let middle = pose.frame.middle;
        prop_assert!((middle.z - 0.32 - heave).abs() < 1e-15);
        let across = pose.frame.direction(vector(0.0, 1.0, 0.0));
        prop_assert!((across.z.asin() - roll).abs() < 1e-12, "{} {roll}", across.z.asin());
        let mut balance = [0.0; 4];
        let stretches = &pose.held.stretch.0[..links.len()];
        for (lane, (link, stretch)) in links.iter().zip(stretches).enumerate() {
            if link.axle_crank == Vector::default() && link.body_crank == Vector::default() {
                let again = (middle + pose.frame.direction(link.axle) - link.body).norm();
                prop_assert!((again - pose.held.length.0[lane]).abs() < 1e-14);
            }
            let force = stretch / if link.give > 0.0 { link.give } else { 1.0 };
            for (sum, row) in balance.iter_mut().zip(pose.held.row) {
                *sum += force * row.0[lane];
            }
            if ready.linkage.redundant() == 0 {
                prop_assert!(stretch.abs() < 1e-12, "{}", stretch);
            }
        }
        if which == 3 {
            for (link, stretch) in links.iter().zip(stretches).filter(|(link, _)| link.give == 0.0) {
                prop_assert!(stretch.abs() < 1e-12, "{} {}", stretch, link.give);
            }
        } else if ready.linkage.redundant() == 1 {
            let most = stretches.iter().map(|stretch| stretch.abs()).fold(0.0, f64::max);
            let scale = most * links.iter().map(|link| if link.give > 0.0 { 1.0 / link.give } else { 1.0 }).fold(0.0, f64::max);
            prop_assert!(balance.iter().all(|sum| sum.abs() < 1e-7 * scale + 1e-6), "{balance:?} {scale}");
        }
    }

    /// Analytic derivatives against differences of positions; energy against forces and rates in heave and in roll.
    #[test]
    fn rates_are_derivatives(
        shifts in prop::collection::vec(-0.015..0.015, 18), heave in -0.06..0.06, roll in -0.07..0.07, which in 0..6_usize, mount in any::<bool>(),
    ) {
        let mut model = several(&shifts, which);
        model.anti_roll_bar = Stated::Given(bar(if mount { Mount::Axle } else { Mount::Body }));
        let at = |z: f64, phi: f64| model.at(metres(z), rad(phi));
        let h = 1e-4;
        let (Ok(on), Ok(low), Ok(high), Ok(right), Ok(left)) =
            (at(heave, roll), at(heave - h, roll), at(heave + h, roll), at(heave, roll - h), at(heave, roll + h)) else { return Ok(()) };
        let up = |of: fn(&AxlePosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
        let turn = |of: fn(&AxlePosition) -> f64| (of(&left) - of(&right)) / (2.0 * h);
        let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
        prop_assert!(near(up(|on| on.axle_steer.si()) * BUMP, on.heave_steer.si(), 1e-7));
        prop_assert!(near(turn(|on| on.axle_steer.si()), on.roll_steer.si(), 1e-6));
        prop_assert!(near(up(|on| on.left_eye_length.si()), -on.left_motion_ratio.si(), 1e-6));
        prop_assert!(near(up(|on| on.right_eye_length.si()), -on.right_motion_ratio.si(), 1e-6));
        let travel = turn(|on| on.left_wheel_z.si());
        prop_assert!(near(turn(|on| on.left_eye_length.si()), -on.left_roll_motion_ratio.si() * travel, 1e-6));
        let travel = travel - turn(|on| on.right_wheel_z.si());
        let lever = if mount { 0.2_f64.hypot(0.01) } else { 0.22_f64.hypot(0.01) };
        prop_assert!(near(turn(|on| on.bar_twist.si()) * lever, on.bar_motion_ratio.si() * travel, 1e-5));
        // Virtual work: the energy of coils and gas, and the wheel's forces and rates.
        let energy = |on: &AxlePosition| {
            [(on.left_spring_used.si(), on.left_eye_length.si()), (on.right_spring_used.si(), on.right_eye_length.si())]
                .iter().map(|(used, eyes)| 20_000.0 * used * used - 150.0 * eyes).sum::<f64>()
        };
        let force = on.left_wheel_force.si() + on.right_wheel_force.si();
        prop_assert!(near((energy(&high) - energy(&low)) / (2.0 * h), force, 0.01), "{force}");
        prop_assert!(near(up(|on| on.left_wheel_force.si()), on.left_wheel_rate.si(), 2.0));
        prop_assert!(near(up(|on| on.right_wheel_force.si()), on.right_wheel_rate.si(), 2.0));
        // The moment of the springs about the roll axis: base over track is in the ratio.
        let moment = |on: &AxlePosition, track: [f64; 2]| {
            let forces = [(on.left_wheel_force.si() / on.left_motion_ratio.si(), on.left_roll_motion_ratio.si(), track[0]),
                (on.right_wheel_force.si() / on.right_motion_ratio.si(), on.right_roll_motion_ratio.si(), track[1])];
            forces.iter().map(|(force, ratio, travel)| force * ratio * travel).sum::<f64>()
        };
        let tracks = |on: &AxlePosition| {
            // Height of the wheels' centres over roll: their level distance from the axle's middle.
            let (y, x) = (on.left_wheel_y.si() - on.right_wheel_y.si(), on.left_wheel_x.si() - on.right_wheel_x.si());
            [0.5 * y.hypot(x), -0.5 * y.hypot(x)]
        };
        let stiffness = (moment(&left, tracks(&left)) - moment(&right, tracks(&right))) / (2.0 * h);
        prop_assert!(near(stiffness, on.roll_stiffness.si(), 2.0), "{stiffness} {}", on.roll_stiffness.si());
        // The moment of links that bind, and its slope.
        if on.bind_force.si().is_finite() {
            let slope = turn(|on| on.bind_moment.si());
            let size = 1e-4 * (1.0 + slope.abs()) + 1e-3 * on.bind_moment.si().abs();
            prop_assert!(near(slope, on.bind_roll_stiffness.si(), size), "{slope} {}", on.bind_roll_stiffness.si());
        }
        // The contact points, held in the axle, move as their path says.
        let path = |on: &AxlePosition| (on.axle_x.si(), on.pinion_x.si(), on.pinion_z.si());
        let ((a, nose, height), (b, other, lower)) = (path(&high), path(&low));
        prop_assert!((a - b).is_finite() && (nose - other).is_finite() && (height - lower).is_finite());
    }

    /// Rigid links that are compatible keep their length to the ends of travel and roll.
    #[test]
    fn links_keep_their_length_to_the_ends_of_travel(
        shifts in prop::collection::vec(-0.05..0.05, 18), nearness in 0.0..10.0_f64, up in any::<bool>(), roll in -0.7..0.7_f64, which in 0..6_usize,
    ) {
        let model = several(&shifts, which);
        let Ok(ready) = model.prepare() else { return Ok(()) };
        let Some([low, high]) = ready.linkage.range(roll) else { return Ok(()) };
        let heave = if up { high } else { low }.place * (1.0 - 10.0_f64.powf(-nearness));
        let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
        let rigid = ready.linkage.redundant() == 0;
        for (link, stretch) in ready.linkage.links.iter().zip(pose.held.stretch.0) {
            prop_assert!(stretch.abs() < 1e-10 || !rigid && (which != 3 || link.give > 0.0), "{}", stretch);
        }
    }

    /// Left and right exchanged: shift, steer and roll change their sign.
    #[test]
    fn a_mirror_image_moves_as_one(shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.07..0.07, roll in -0.08..0.08, which in 0..6_usize) {
        let model = several(&shifts, which);
        let other = mirror_image(&model);
        let (Ok(one), Ok(two)) = (model.at(metres(heave), rad(roll)), other.at(metres(heave), rad(-roll))) else { return Ok(()) };
        for (a, b) in [
            (one.axle_x, two.axle_x), (one.lateral_shift, -two.lateral_shift), (one.left_eye_length, two.right_eye_length),
            (one.roll_centre_height, two.roll_centre_height), (one.left_wheel_y, -two.right_wheel_y), (one.bind_misfit, two.bind_misfit),
        ] {
            prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
        }
        for (a, b) in [(one.axle_steer, -two.axle_steer), (one.axle_pitch, two.axle_pitch), (one.left_camber, two.right_camber), (one.left_toe, two.right_toe)] {
            prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
        }
        prop_assert!((one.roll_steer.si() - two.roll_steer.si()).abs() < 1e-7);
        prop_assert!((one.roll_stiffness.si() - two.roll_stiffness.si()).abs() < 1e-2);
    }
}
