//! Changes of parts, and what they keep.

use super::*;

/// The spring above its axle: a block raises the body, and the spring does not know.
#[test]
fn a_block_moves_the_axle_and_not_the_spring() {
    let model = axle(ARCHED);
    let table = model.seat_block(Length::of::<mm>(50.0), &[0.0, 0.03].map(metres)).unwrap();
    let of = |name: &str| table.numbers(name).unwrap().to_vec();
    assert!((of("left_wheel_z")[1] - of("left_wheel_z")[0] + 0.05).abs() < 1e-12);
    assert!((of("roll_centre_height")[1] - of("roll_centre_height")[0] - 0.05).abs() < 1e-12);
    for name in ["left_spring_load", "left_shackle_angle", "left_bump_remaining"] {
        assert!((of(name)[1] - of(name)[0]).abs() < 1e-9, "{name}");
    }
    assert!((of("left_damper_used")[0] - of("left_damper_used")[1]).abs() > 0.04);
    let mut below = model.clone();
    below.leaf.seat.z = length(0.305);
    below.leaf.fixed_eye.z = length(0.375);
    below.leaf.shackle_eye.z = length(0.385);
    below.leaf.shackle_pivot.z = length(0.5);
    let table = below.seat_block(Length::of::<mm>(50.0), &[metres(0.0)]).unwrap();
    let heights = table.numbers("left_wheel_z").unwrap();
    assert!((heights[1] - heights[0] - 0.05).abs() < 1e-12);
}

/// For a flat spring without a clamp, the rate is that of a beam on two supports, `k = 3 E I l / (a^2 b^2)`.
#[test]
fn an_axle_moved_along_its_springs_stands_on_a_beam_with_other_arms() {
    let mut model = flat(LeafForm::UniformStrength);
    model.leaf.clamped_length = length(0.0);
    let (a, b) = (0.65, 0.65);
    let table = model.axle_move(metres(0.15), metres(0.0), &[0.0, 0.01].map(metres)).unwrap();
    let of = |name: &str| table.numbers(name).unwrap().to_vec();
    let (c, d): (f64, f64) = (a - 0.15, b + 0.15);
    assert_relative_eq!(of("wheel_rate")[0], 110_000.0, max_relative = 1e-4);
    let wanted = 110_000.0 * (a * b / (c * d)) * (a * b / (c * d));
    assert_relative_eq!(of("wheel_rate")[1], wanted, max_relative = 1e-4);
    assert!((of("left_wheel_x")[1] - 0.15).abs() < 1e-12 && (of("left_wheel_z")[1] - 0.39).abs() < 1e-12);
    // Its leaves give the same.
    model.spring = None;
    let table = model.axle_move(metres(0.15), metres(0.0), &[metres(0.0)]).unwrap();
    let rates = table.numbers("wheel_rate").unwrap();
    assert_relative_eq!(rates[1] / rates[0], wanted / 110_000.0, max_relative = 1e-4);
}

/// Eyes, shackle, load and what the coil carries are kept; a part of it that the axle carries goes along.
#[test]
fn a_moved_axle_keeps_what_it_says() {
    for mount in [Mount::Body, Mount::Axle] {
        let model = helped(mount);
        let table = model.axle_move(metres(-0.03), metres(0.02), &[0.0, 0.03].map(metres)).unwrap();
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        for name in ["left_spring_load", "left_shackle_angle", "left_bump_remaining", "left_wheel_force"] {
            assert_relative_eq!(of(name)[0], of(name)[1], max_relative = 1e-9);
        }
        for name in ["bar_angle", "pinion_angle_change", "wheelbase_change"] {
            assert!(of(name)[1].abs() < 1e-12, "{name}");
        }
        assert!((of("left_wheel_x")[1] + 0.03).abs() < 1e-12 && (of("left_wheel_z")[1] - 0.41).abs() < 1e-12);
        let eyes = vector(0.12, -0.08, 0.38).norm();
        assert_relative_eq!(of("left_eye_length")[1], eyes, max_relative = 1e-12);
        assert!(of("side_view_angle")[0] != of("side_view_angle")[1]);
    }
    // Up and down it stands on blocks.
    let model = helped(Mount::Body);
    let heave = [-0.02, 0.0, 0.03].map(metres);
    let block = model.seat_block(metres(0.04), &heave).unwrap();
    let moved = model.axle_move(metres(0.0), metres(-0.04), &heave).unwrap();
    for name in ["left_wheel_z", "left_spring_load", "left_wheel_force", "bar_angle", "drive_anti_pitch"] {
        for (a, b) in block.numbers(name).unwrap().iter().zip(moved.numbers(name).unwrap()) {
            assert!((a - b).abs() < 1e-9 * (1.0 + a.abs()), "{name}: {a} {b}");
        }
    }
    let gone = model.axle_move(metres(0.7), metres(0.0), &[]).unwrap_err().to_string();
    assert!(gone.starts_with("leaf.seat: it must lie between"), "{gone}");
}

#[test]
fn a_spacer_moves_the_wheels_and_not_the_axle() {
    let model = helped(Mount::Body);
    let table = model.spacer(metres(0.025), &[0.0, 0.04].map(metres)).unwrap();
    let of = |name: &str| table.numbers(name).unwrap().to_vec();
    assert!((of("left_wheel_y")[1] - 0.835).abs() < 1e-12 && (of("right_wheel_y")[3] + 0.835).abs() < 1e-12);
    assert_relative_eq!(
        of("left_roll_motion_ratio")[1] / of("left_roll_motion_ratio")[0],
        0.81 / 0.835,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        of("bar_motion_ratio")[3] / of("bar_motion_ratio")[2],
        0.81 / 0.835,
        max_relative = 1e-12
    );
    for name in ["wheel_rate", "roll_stiffness", "left_wheel_force", "roll_centre_height"] {
        assert_relative_eq!(of(name)[0], of(name)[1], max_relative = 1e-12);
    }
}

/// With a coil beside the leaf, too, all that is changed stands where it carries what it carried.
#[test]
fn changes_keep_what_leaf_and_coil_carry() {
    let (model, heave) = (helped(Mount::Body), [metres(0.0)]);
    let mut seen = Vec::new();
    for table in [
        model.seat_block(metres(0.05), &heave).unwrap(),
        model.ride_height_change(metres(-0.03), &heave).unwrap(),
        model.shackle_change(metres(0.04), &heave).unwrap(),
    ] {
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        assert_relative_eq!(of("left_wheel_force")[0], of("left_wheel_force")[1], max_relative = 1e-9);
        seen.push((of("left_spring_load")[1] / 9800.0 - 1.0).abs());
    }
    // On other shackles the body is raised and the coil carries less, so the leaf more.
    assert!(seen[0] < 1e-9 && seen[1] < 1e-9 && seen[2] > 1e-3, "{seen:?}");
    // A loose coil keeps its gap.
    let mut loose = model;
    loose.coil_over.as_mut().unwrap().spring.as_mut().unwrap().seat_offset = length(0.05);
    let table = loose.ride_height_change(metres(-0.03), &heave).unwrap();
    let used = table.numbers("left_coil_used").unwrap();
    assert!(used[0] < -0.01 && (used[0] - used[1]).abs() < 1e-12, "{used:?}");
}

#[test]
fn longer_shackles_raise_the_body_by_about_half_and_keep_the_load() {
    let table = axle(ARCHED).shackle_change(Length::of::<mm>(40.0), &[0.0, 0.02].map(metres)).unwrap();
    let of = |name: &str| table.numbers(name).unwrap().to_vec();
    assert_relative_eq!(of("left_spring_load")[1], of("left_spring_load")[0], max_relative = 1e-9);
    let rise = of("left_wheel_z")[0] - of("left_wheel_z")[1];
    // The seat is near the middle between the eyes, of which one is lowered.
    assert!(rise > 0.014 && rise < 0.024, "{rise}");
    // The axle is turned about the fixed eye with its nose up.
    assert!(of("pinion_angle_change")[1] > 0.005);
    let gone = axle(ARCHED).shackle_change(Length::of::<mm>(-200.0), &[]).unwrap_err().to_string();
    assert!(gone.starts_with("longer = -200 mm (-7.874 in) leaves no shackle"), "{gone}");
}

#[test]
fn a_lowered_body_stands_in_bump() {
    let model = axle(ARCHED);
    let table = model.ride_height_change(Length::of::<mm>(-30.0), &[0.0, 0.01].map(metres)).unwrap();
    let bump = model.at(metres(0.03), radians(0.0)).unwrap();
    for (name, value) in [
        ("pinion_angle", bump.pinion_angle.si()),
        ("wheelbase_change", bump.wheelbase_change.si()),
        ("roll_centre_height", bump.roll_centre_height.si()),
        ("left_shackle_angle", bump.left_shackle_angle.si()),
        ("left_bump_remaining", bump.left_bump_remaining.si()),
    ] {
        assert_relative_eq!(table.numbers(name).unwrap()[1], value, max_relative = 1e-9);
    }
    // The seat's height changes a little with the axle's pitch.
    assert_relative_eq!(bump.left_bump_remaining.si(), 0.06, max_relative = 1e-4);
    let load = table.numbers("left_spring_load").unwrap();
    assert_relative_eq!(load[1], load[0], max_relative = 1e-9);
    assert!(load[2] > load[0] && load[3] > load[1]);
}
