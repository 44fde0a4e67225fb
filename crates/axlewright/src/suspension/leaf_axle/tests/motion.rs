//! The axle stands and moves as handbooks and other models say.

use super::*;

#[test]
fn at_ride_height_the_axle_stands_as_drawn() {
    let model = axle(ARCHED);
    let on = model.at(metres(0.0), radians(0.0)).unwrap();
    for (found, drawn) in [
        (on.left_wheel_x.si(), 0.0),
        (on.left_wheel_y.si(), 0.81),
        (on.left_wheel_z.si(), 0.39),
        (on.right_wheel_y.si(), -0.81),
        (on.axle_steer.si(), 0.0),
        (on.lateral_shift.si(), 0.0),
        (on.pinion_angle_change.si(), 0.0),
        (on.pinion_angle.in_::<deg>(), 3.0),
        (on.left_bump_remaining.si(), 0.09),
    ] {
        assert!((found - drawn).abs() < 1e-12, "{found} {drawn}");
    }
    assert_relative_eq!(on.left_spring_load.si(), 9800.0, max_relative = 1e-10);
    // The line of the eyes at the axle, by similar triangles.
    let line = 0.545 + 0.01 * 0.64 / 1.35;
    assert_relative_eq!(on.roll_centre_height.si(), line - 0.01, max_relative = 1e-12);
    let leans = (0.025_f64 / 0.115).atan();
    assert_relative_eq!(on.left_shackle_angle.si(), leans, max_relative = 1e-12);
    assert_relative_eq!(on.right_shackle_opening.si(), on.left_shackle_opening.si());
}

/// Flat, symmetric, the shackle upright: rate, spring base and wind-up by hand, the path by the equivalent link of 3/4 or 5/6 of the half.
#[test]
fn a_flat_spring_is_that_of_the_handbooks() {
    for (form, link) in [(LeafForm::UniformStrength, 0.75), (LeafForm::UniformSection, 5.0 / 6.0)] {
        let model = flat(form);
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        assert_relative_eq!(on.wheel_rate.si(), 110_000.0, max_relative = 1e-4);
        let roll = live_axle_roll_stiffness(LinearStiffness::from_si(110_000.0), metres(1.04)).unwrap();
        assert_relative_eq!(on.roll_stiffness.si(), roll.si(), max_relative = 1e-4);
        // K = k_a a^2 + k_b b^2 of each spring, its halves as stiff as half the spring, on levers of 650 mm.
        let wind_up = 2.0 * 110_000.0 * 0.65 * 0.65;
        assert_relative_eq!(on.wind_up_rate.si(), wind_up, max_relative = 1e-4);
        // Half of 1300 mm less the clamp of 140 mm.
        let h = 1e-3;
        let bump = model.at(metres(h), radians(0.0)).unwrap();
        let droop = model.at(metres(-h), radians(0.0)).unwrap();
        let bend = -(bump.wheelbase_change + droop.wheelbase_change).si() / (h * h);
        assert_relative_eq!(bend, 1.0 / (link * 0.58), max_relative = 1e-3);
    }
}

/// Upright coils and drop links above the axle of a flat spring: rates add, bases and levers are read off the drawing.
#[test]
fn an_upright_helper_counts_with_its_base_and_a_bar_with_that_of_its_links() {
    let mut model = flat(LeafForm::UniformStrength);
    model.damper = None;
    model.coil_over = Stated::Given(AxleCoilOver {
        body_eye: place([0.0, 0.4, 0.85]),
        axle_eye: place([0.0, 0.4, 0.45]),
        spring: Some(CoilSpring { seat_offset: length(0.06), ..coil() }),
        damper: None,
    });
    model.anti_roll_bar = Stated::Given(AxleBar {
        bearings: Mount::Body,
        link_eye: place([0.0, 0.6, 0.39]),
        lever_end: place([0.0, 0.6, 0.55]),
        lever_pivot: place([0.2, 0.3, 0.55]),
    });
    let on = model.at(metres(0.0), radians(0.0)).unwrap();
    // 10 mm of the coil are used.
    assert_relative_eq!(on.left_coil_force.si(), 300.0, max_relative = 1e-9);
    assert_relative_eq!(on.left_wheel_force.si(), 301.0, max_relative = 1e-9);
    assert_relative_eq!(on.left_spring_load.si(), 1.0, max_relative = 1e-9);
    assert_relative_eq!(on.wheel_rate.si(), 140_000.0, max_relative = 1e-4);
    assert_relative_eq!(on.left_motion_ratio.si(), 1.0, max_relative = 1e-12);
    assert_relative_eq!(on.right_roll_motion_ratio.si(), 0.4 / 0.81, max_relative = 1e-9);
    let roll = |rate: f64, base: f64| {
        live_axle_roll_stiffness(LinearStiffness::from_si(rate), metres(base)).unwrap().si()
    };
    // A loaded coil gives way: its eye on the axle, 60 mm above the middle, comes down by that and goes sideways, 50 mm below the line of the eyes.
    let way = 0.06 + 0.05 * 0.05 / 0.4;
    let wanted = roll(110_000.0, 1.04) + roll(30_000.0, 0.8) - 2.0 * 300.0 * way;
    assert_relative_eq!(on.roll_stiffness.si(), wanted, max_relative = 1e-5);
    assert_relative_eq!(on.bar_motion_ratio.si(), 0.6 / 0.81, max_relative = 1e-9);
    assert!(on.bar_angle.si().abs() < 1e-15 && on.bar_twist.si().abs() < 1e-15);
    // Both levers of 200 mm turn alike in heave, and against each other in roll.
    let h = 1e-4;
    let up = model.at(metres(h), radians(0.0)).unwrap();
    assert_relative_eq!(up.bar_angle.si() * 0.2, h, max_relative = 1e-3);
    let left_up = model.at(metres(0.0), radians(h)).unwrap();
    assert_relative_eq!(left_up.bar_twist.si() * 0.2, 2.0 * 0.6 * h, max_relative = 1e-3);
    assert!(left_up.bar_angle.si().abs() < 1e-7);
}

/// The drawing is the ride height with the coil fitted: the leaf carries its own load, the wheel both.
#[test]
fn at_ride_height_the_leaves_hold_what_a_coil_turns() {
    for mount in [Mount::Body, Mount::Axle] {
        let model = helped(mount);
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        assert!(on.pinion_angle_change.si().abs() < 1e-12 && on.wheelbase_change.si().abs() < 1e-12);
        assert_relative_eq!(on.left_spring_load.si(), 9800.0, max_relative = 1e-10);
        let eyes = vector(0.09, -0.08, 0.4).norm();
        assert_relative_eq!(on.left_eye_length.si(), eyes, max_relative = 1e-12);
        let force = 30_000.0 * (0.35 - (eyes - 0.15));
        assert_relative_eq!(on.right_coil_force.si(), force, max_relative = 1e-12);
        assert_relative_eq!(on.left_damper_used.si(), 0.55 - eyes, max_relative = 1e-12);
        assert_relative_eq!(on.damper_motion_ratio.si(), on.left_motion_ratio.si());
        // By hand: 400 mm of it upright.
        let carried = 9800.0 + (force + 150.0) * 0.4 / eyes;
        assert_relative_eq!(on.left_wheel_force.si(), carried, max_relative = 1e-9);
        assert_relative_eq!(on.right_wheel_force.si(), carried, max_relative = 1e-9);
        // Wound up by nothing, the leaf carries the same.
        let wound = model.wind_up(metres(0.0), Torque::from_si(0.0)).unwrap();
        assert_relative_eq!(wound.spring_load.si(), 9800.0, max_relative = 1e-9);
        let bare = axle(ARCHED).at(metres(0.0), radians(0.0)).unwrap();
        assert!(on.wheel_rate > bare.wheel_rate && on.wind_up_rate != bare.wind_up_rate);
        assert!(bare.bar_twist.si().is_nan() && bare.left_coil_force.si().is_nan());
        assert_relative_eq!(bare.left_wheel_force.si(), bare.left_spring_load.si());
    }
}

/// A gas spring alone, and a coil that is still loose.
#[test]
fn what_does_not_press_does_not_carry() {
    let bare = axle(ARCHED).at(metres(0.02), radians(0.01)).unwrap();
    let mut loose = helped(Mount::Body);
    let coil_over = loose.coil_over.as_mut().unwrap();
    coil_over.damper = None;
    coil_over.spring.as_mut().unwrap().seat_offset = length(0.0);
    let on = loose.at(metres(0.02), radians(0.01)).unwrap();
    assert_relative_eq!(on.wheel_rate.si(), bare.wheel_rate.si(), max_relative = 1e-12);
    assert_relative_eq!(on.left_wheel_force.si(), bare.left_wheel_force.si(), max_relative = 1e-12);
    assert!(on.left_coil_force.si() == 0.0 && on.left_coil_used.si() < 0.0);
    let mut gas = helped(Mount::Body);
    gas.coil_over.as_mut().unwrap().spring = None;
    let on = gas.at(metres(0.0), radians(0.0)).unwrap();
    assert!(on.left_coil_force.si().is_nan());
    assert!(on.left_wheel_force.si() > 9900.0 && on.left_wheel_force.si() < 9950.0);
}

/// For a spring clamped off its middle, the rate is that of a beam on two supports, `k = 3 E I l / (a^2 b^2)`, shared as leaf_pack_rate gives it for a symmetric one.
#[test]
fn a_rate_follows_from_its_leaves() {
    let mut model = flat(LeafForm::UniformStrength);
    model.spring = None;
    let rate = |span: f64| {
        let on = leaves();
        let (full, steps) = (on.full_length_leaves.quantity, on.graduated_leaves.quantity);
        leaf_pack_rate(
            on.elastic_modulus.quantity,
            on.leaf_width.quantity,
            on.leaf_thickness.quantity,
            metres(span),
            full,
            steps,
        )
        .unwrap()
        .si()
    };
    let on = model.at(metres(0.0), radians(0.0)).unwrap();
    assert_relative_eq!(on.wheel_rate.si(), rate(1.16), max_relative = 1e-4);
    // Half of the load of 1 N, 580 mm from the clamp.
    let moment = 0.5 * 0.58;
    let stress = 18.0 * moment / (0.07 * 0.009 * 0.009 * 16.0);
    assert_relative_eq!(on.left_leaf_stress.si(), stress, max_relative = 1e-6);

    model.leaf.clamped_length = length(0.0);
    model.leaf.seat = point([0.15, 0.5], 0.52);
    model.wheel.centre = Point::new(metres(0.15), metres(0.81), metres(0.39));
    let on = model.at(metres(0.0), radians(0.0)).unwrap();
    let (a, b, l) = (0.5_f64, 0.8_f64, 1.3_f64);
    let wanted = rate(l) * l.powi(4) / (16.0 * a * a * b * b);
    assert_relative_eq!(on.wheel_rate.si(), wanted, max_relative = 1e-4);
}

/// A drive torque lifts a rear axle's nose, a brake torque lowers it, the rate is torque over angle.
#[test]
fn torque_winds_the_axle_up() {
    let model = axle(ARCHED);
    let wound = |torque: f64| model.wind_up(metres(0.0), Torque::from_si(torque)).unwrap();
    let (drive, brake, none) = (wound(2000.0), wound(-2000.0), wound(0.0));
    assert!(drive.wind_up_angle.in_::<deg>() > 0.5 && brake.wind_up_angle.in_::<deg>() < -0.5);
    assert_relative_eq!(drive.pinion_angle.si(), drive.wind_up_angle.si() + 3_f64.to_radians());
    let small = 0.5 * (wound(1.0).wind_up_angle - wound(-1.0).wind_up_angle).si();
    // The force at the ground works on the way of the axle as well, which turns about a place above its middle.
    let along = model.prepare().unwrap().rest.x.first[2];
    assert_relative_eq!(small * none.wind_up_rate.si(), 1.0 + along / 0.38, max_relative = 1e-6);
    assert_relative_eq!(none.spring_load.si(), 9800.0, max_relative = 1e-10);
    assert!(drive.leaf_stress > none.leaf_stress && brake.leaf_stress > none.leaf_stress);
    let mut front = model.clone();
    front.axle = Axle::Front;
    let turned = front.wind_up(metres(0.0), Torque::from_si(2000.0)).unwrap().wind_up_angle;
    assert_relative_eq!(turned.si(), -drive.wind_up_angle.si());
    assert!(model.wind_up(metres(0.0), Torque::from_si(9e5)).is_err());
}
