//! Properties of any such axle.

use super::*;

fn shifted(shifts: &[f64]) -> LeafAxle {
    let mut points = ARCHED;
    for (place, shift) in shifts.iter().enumerate() {
        points[place / 2][place % 2] += shift;
    }
    axle(points)
}

proptest! {
    /// Energy against loads and rates, positions against slopes.
    #[test]
    fn rates_are_derivatives(
        shifts in prop::collection::vec(-0.02..0.02, 8), heave in -0.05..0.06, roll in -0.05..0.05,
        form in prop::sample::select(vec![LeafForm::UniformStrength, LeafForm::UniformSection]),
        offset in -0.02..0.04, angle in -0.05..0.05, help in prop::sample::select(vec![None, Some(Mount::Body), Some(Mount::Axle)]),
    ) {
        let mut model = shifted(&shifts);
        if let Some(mount) = help {
            let helped = helped(mount);
            (model.damper, model.coil_over, model.anti_roll_bar) = (None, helped.coil_over, helped.anti_roll_bar);
        }
        model.leaf.form = form;
        model.leaf.eye_offset = Some(length(offset));
        model.leaf.seat_angle = Some(Value::new(radians(angle)));
        let Ok(ready) = model.prepare() else { return Ok(()) };
        // Central differences: short, since their own error grows where a shackle nears the end of its way.
        let h = 2e-5;
        let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
        let on = ready.at(metres(heave), radians(roll)).unwrap();

        let at = |by: f64| (ready.pose(heave + by, roll).unwrap(), ready.at(metres(heave + by), radians(roll)).unwrap());
        let ((low, below), (high, above)) = (at(-h), at(h));
        let load = (high.energy.value - low.energy.value) / (2.0 * h);
        prop_assert!(near(load, (on.left_wheel_force + on.right_wheel_force).si(), 0.05 + 1e-4 * load.abs()), "{load}");
        let rate = (high.energy.first[0] - low.energy.first[0]) / (2.0 * h);
        prop_assert!(near(0.5 * rate, on.wheel_rate.si(), 2.0 + 1e-4 * rate.abs()), "{rate} {:?}", on.wheel_rate);
        let path = (high.x.value - low.x.value + 0.38 * (high.pitch - low.pitch)) / (2.0 * h);
        prop_assert!(near(path.atan(), on.side_view_angle.si(), 1e-6));
        let damper = (above.left_damper_used - below.left_damper_used).si() / (2.0 * h);
        prop_assert!(near(damper, on.damper_motion_ratio.si(), 1e-6), "{damper} {:?}", on.damper_motion_ratio);
        if help.is_some() {
            let slope = |of: fn(&LeafAxlePosition) -> f64| (of(&above) - of(&below)) / (2.0 * h);
            prop_assert!(near(slope(|on| -on.left_eye_length.si()), on.left_motion_ratio.si(), 1e-6));
            prop_assert!(near(slope(|on| -on.right_eye_length.si()), on.right_motion_ratio.si(), 1e-6));
            // Virtual work of each side, its coil's energy from what is said of it.
            let work = |on: &LeafAxlePosition, pose: &Pose| {
                [(pose.left, on.left_coil_used, on.left_eye_length), (pose.right, on.right_coil_used, on.right_eye_length)]
                    .map(|(leaf, used, eyes)| leaf.energy.value + 15_000.0 * used.si() * used.si() - 150.0 * eyes.si())
            };
            let (less, more) = (work(&below, &low), work(&above, &high));
            for (side, force) in [on.left_wheel_force.si(), on.right_wheel_force.si()].into_iter().enumerate() {
                let found = (more[side] - less[side]) / (2.0 * h);
                prop_assert!(near(found, force, 0.05 + 1e-4 * force.abs()), "{found} {force}");
            }
        }
        // The instant centre: the contact point moves about it.
        let (forward, up) = (on.left_wheel_x.si().midpoint(on.right_wheel_x.si()) - on.side_view_centre_x.si(), on.side_view_centre_height.si());
        prop_assert!(near(up, forward * path, 1e-4 * forward.abs()), "{up} {forward} {path}");

        let at = |by: f64| (ready.pose(heave, roll + by).unwrap(), ready.at(metres(heave), radians(roll + by)).unwrap());
        let ((low, below), (high, above)) = (at(-h), at(h));
        let stiffness = (high.energy.first[1] - low.energy.first[1]) / (2.0 * h);
        prop_assert!(near(stiffness, on.roll_stiffness.si(), 1.0 + 1e-4 * stiffness.abs()), "{stiffness} {:?}", on.roll_stiffness);
        let steer = (above.axle_steer - below.axle_steer).si() / (2.0 * h);
        prop_assert!(near(steer, on.roll_steer.si(), 1e-6));
        if let Some(mount) = help {
            let slope = |of: fn(&LeafAxlePosition) -> f64| (of(&above) - of(&below)) / (2.0 * h);
            for (eyes, travel, ratio) in [
                (slope(|on| on.left_eye_length.si()), slope(|on| on.left_wheel_z.si()), on.left_roll_motion_ratio.si()),
                (slope(|on| on.right_eye_length.si()), slope(|on| on.right_wheel_z.si()), on.right_roll_motion_ratio.si()),
            ] {
                prop_assert!(near(eyes, -ratio * travel, 1e-6), "{eyes} {travel} {ratio}");
            }
            let lever = if mount == Mount::Axle { 0.21_f64.hypot(0.01) } else { 0.22_f64.hypot(0.01) };
            let travel = slope(|on| on.left_wheel_z.si() - on.right_wheel_z.si());
            let turned = slope(|on| on.bar_twist.si()) * lever;
            prop_assert!(near(turned, on.bar_motion_ratio.si() * travel, 1e-5), "{turned}");
        }
        // No torque about the axle is left.
        prop_assert!(ready.pose(heave, roll).unwrap().energy.first[2].abs() < 1e-3);
    }

    /// Leaves keep their ends on the body, the shackle its length, both on both sides.
    #[test]
    fn the_springs_stay_where_they_are_bolted(shifts in prop::collection::vec(-0.02..0.02, 8), heave in -0.06..0.08, roll in -0.06..0.06) {
        let model = shifted(&shifts);
        let Ok(ready) = model.prepare() else { return Ok(()) };
        let Ok(on) = ready.pose(heave, roll) else { return Ok(()) };
        let spring = &ready.spring;
        for bent in [on.left, on.right] {
            let away = (bent.eye[0].value - spring.pivot[0]).hypot(bent.eye[1].value - spring.pivot[1]);
            prop_assert!((away - spring.shackle_length).abs() < 1e-12);
        }
        // The seats, which the axle carries, are where the springs have them.
        let (steer, lean, pitch) = (on.steer.value, roll, on.pitch);
        for (side, bent) in [(1.0, on.left), (-1.0, on.right)] {
            let [along, over] = ready.seat;
            let (forward, up) = (along * pitch.cos() - over * pitch.sin(), along * pitch.sin() + over * pitch.cos());
            let left = lean.cos() * side * 0.52 - lean.sin() * up;
            let x = on.x.value + steer.cos() * forward - steer.sin() * left;
            let z = on.z.value + lean.sin() * side * 0.52 + lean.cos() * up;
            prop_assert!((x - bent.seat.value).abs() < 1e-12 && (z - bent.height).abs() < 1e-12);
        }
    }

    /// Right for left with the other roll; front for rear with the other steer.
    #[test]
    fn a_mirror_image_moves_as_one(heave in -0.06..0.08, roll in -0.06..0.06, help in prop::sample::select(vec![None, Some(Mount::Body), Some(Mount::Axle)])) {
        let model = help.map_or_else(|| axle(ARCHED), helped);
        // Values unknown in one are unknown in the other.
        let apart = |a: f64, b: f64| if a.is_nan() && b.is_nan() { 0.0 } else { (a - b).abs() };
        let one = model.at(metres(heave), radians(roll)).unwrap();
        let other = model.at(metres(heave), radians(-roll)).unwrap();
        for (a, b) in [
            (one.left_wheel_x.si(), other.right_wheel_x.si()), (one.left_wheel_y.si(), -other.right_wheel_y.si()),
            (one.left_wheel_z.si(), other.right_wheel_z.si()), (one.axle_steer.si(), -other.axle_steer.si()),
            (one.pinion_angle.si(), other.pinion_angle.si()), (one.lateral_shift.si(), -other.lateral_shift.si()),
            (one.left_shackle_angle.si(), other.right_shackle_angle.si()), (one.left_damper_remaining.si(), other.right_damper_remaining.si()),
            (one.left_eye_length.si(), other.right_eye_length.si()), (one.left_motion_ratio.si(), other.right_motion_ratio.si()),
            (one.left_roll_motion_ratio.si(), other.right_roll_motion_ratio.si()), (one.left_coil_used.si(), other.right_coil_used.si()),
            (one.bar_angle.si(), other.bar_angle.si()), (one.bar_twist.si(), -other.bar_twist.si()), (one.bar_motion_ratio.si(), other.bar_motion_ratio.si()),
        ] {
            prop_assert!(apart(a, b) < 1e-11, "{a} {b}");
        }
        prop_assert!((one.left_spring_load - other.right_spring_load).si().abs() < 1e-5);
        prop_assert!((one.left_wheel_force - other.right_wheel_force).si().abs() < 1e-5);

        let mut turned = axle(ARCHED.map(|[x, z]| [-x, z]));
        turned.axle = Axle::Front;
        if let Some(mount) = help {
            let back = |point: &Point| place([-point.x.quantity.si(), point.y.quantity.si(), point.z.quantity.si()]);
            let helped = helped(mount);
            turned.damper = None;
            turned.coil_over = helped.coil_over.map(|on| AxleCoilOver { body_eye: back(&on.body_eye), axle_eye: back(&on.axle_eye), ..on });
            turned.anti_roll_bar = helped.anti_roll_bar.map(|on| AxleBar {
                link_eye: back(&on.link_eye), lever_end: back(&on.lever_end), lever_pivot: back(&on.lever_pivot), ..on
            });
        }
        if let Some(damper) = &mut turned.damper {
            (damper.body_eye.x, damper.axle_eye.x) = (length(-0.15), length(0.06));
        }
        let front = turned.at(metres(heave), radians(roll)).unwrap();
        for (a, b) in [
            (one.left_wheel_x.si(), -front.left_wheel_x.si()), (one.axle_steer.si(), -front.axle_steer.si()),
            (one.pinion_angle.si(), front.pinion_angle.si()), (one.wheelbase_change.si(), front.wheelbase_change.si()),
            (one.brake_anti_pitch.si(), front.brake_anti_pitch.si()), (one.left_damper_remaining.si(), front.left_damper_remaining.si()),
            (one.left_bump_remaining.si(), front.left_bump_remaining.si()), (one.right_shackle_angle.si(), front.right_shackle_angle.si()),
            (one.right_eye_length.si(), front.right_eye_length.si()), (one.bar_twist.si(), front.bar_twist.si()),
        ] {
            prop_assert!(apart(a, b) < 1e-11, "{a} {b}");
        }
    }
}
