//! Double wishbones against constructions by hand, and against what cannot be.

use super::super::linkage::{Above, Drawn, Linkage};
use super::super::wheel_position::table_equals_single_calls;
use super::*;
use crate::base::document::Value;
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::kinematics::vector::vector;
use crate::suspension::parts::{BrakePlace, Carrier, CoilSpring, Damper, Point, SpringSeats};
use crate::units::{Angle, Force, LinearStiffness, Ratio, RotationalStiffness, Torque, deg, mm};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn length(value: f64) -> Value<Length> {
    Value::new(Length::from_si(value))
}
fn point([x, y, z]: [f64; 3]) -> Point {
    Point::new(Length::from_si(x), Length::from_si(y), Length::from_si(z))
}
fn metres(value: f64) -> Length {
    Length::from_si(value)
}

/// Upper arm, lower arm, tie rod, wheel centre.
type Points = [[f64; 3]; 9];
const FRONT: Points = [
    [0.18, 0.4, 0.6],
    [-0.14, 0.42, 0.575],
    [-0.012, 0.69, 0.625],
    [0.2, 0.32, 0.24],
    [-0.2, 0.31, 0.225],
    [0.01, 0.735, 0.215],
    [0.135, 0.345, 0.29],
    [0.14, 0.705, 0.272],
    [0.0, 0.78, 0.32],
];

fn wishbone(p: Points) -> DoubleWishbone {
    let arm = |at: usize| Arm {
        front_pivot: point(p[at]),
        rear_pivot: point(p[at + 1]),
        ball_joint: point(p[at + 2]),
    };
    DoubleWishbone {
        axle: Axle::Front,
        upper_arm: arm(0),
        lower_arm: arm(3),
        tie_rod: TieRod { inner: point(p[6]), outer: point(p[7]) },
        wheel: Wheel {
            centre: point(p[8]),
            camber: Value::new(Angle::of::<deg>(-0.75)),
            toe: Value::new(Angle::of::<deg>(0.1)),
            loaded_radius: length(0.32),
        },
        coil_over: Stated::Given(CoilOver {
            body_eye: point([-0.01, 0.46, 0.72]),
            lower_eye: point([-0.005, 0.6, 0.262]),
            carried_by: Carrier::LowerArm,
            spring: Some(CoilSpring {
                rate: Value::new(LinearStiffness::from_si(60_000.0)),
                free_length: length(0.36),
                solid_length: length(0.18),
                seat_offset: length(0.18),
            }),
            spring_seats: None,
            damper: Some(Damper {
                open_length: length(0.53),
                closed_length: length(0.41),
                gas_force: Some(Value::new(Force::from_si(150.0))),
            }),
        }),
        torsion_bar: Stated::Unknown,
        anti_roll_bar: Stated::Given(AntiRollBar {
            link_eye: point([0.03, 0.66, 0.26]),
            carried_by: Carrier::LowerArm,
            lever_end: point([0.04, 0.65, 0.42]),
            lever_pivot: point([0.28, 0.4, 0.42]),
        }),
        braking: Some(Braking {
            axle_share: Value::new(Ratio::from_si(0.65)),
            centre_of_gravity_height: length(0.52),
            wheelbase: length(2.55),
            place: None,
        }),
        driving: None,
        joint_limits: None,
    }
}

/// Without the checks of the points, so that a right wheel moves, too.
fn linkage(p: &DoubleWishbone) -> core::result::Result<Linkage, (&'static str, &'static str)> {
    let drawn = Drawn {
        lower_ball: p.lower_arm.ball_joint.vector(),
        upper_ball: p.upper_arm.ball_joint.vector(),
        inner: p.tie_rod.inner.vector(),
        outer: p.tie_rod.outer.vector(),
        wheel: p.wheel.centre.vector(),
    };
    let linkage = Linkage::new(&p.lower_arm, &Above::Arm(&p.upper_arm), &drawn)?;
    let Stated::Given(bar) = &p.anti_roll_bar else { return Ok(linkage) };
    linkage.with_bar(bar.link_eye.vector(), bar.carried_by, bar.lever_end.vector(), bar.lever_pivot.vector())
}

fn moved(shifts: &[f64]) -> Points {
    let mut points = FRONT;
    for (place, shift) in shifts.iter().enumerate() {
        points[place / 3][place % 3] += shift;
    }
    points
}

fn on_all(carrier: Carrier) -> DoubleWishbone {
    let mut model = wishbone(FRONT);
    if let Stated::Given(coil_over) = &mut model.coil_over {
        coil_over.carried_by = carrier;
    }
    model
}

#[test]
fn in_roll_both_wheels_stand_on_one_ground_and_mirror_each_other() {
    let model = wishbone(FRONT);
    let (none, roll) = (metres(0.0), Angle::of::<deg>(2.5));
    let level = model.in_roll(none, Angle::from_si(0.0), none).unwrap();
    let rest = model.at(none, none).unwrap();
    assert_relative_eq!(level.track.si(), 2.0 * rest.half_track.si(), max_relative = 1e-12);
    assert_relative_eq!(level.roll_centre_height.si(), rest.roll_centre_height.si(), max_relative = 1e-10);
    assert!(level.roll_centre_y.si().abs() < 1e-12);
    assert_relative_eq!(level.left_camber.si(), rest.camber.si(), max_relative = 1e-10);

    let (one, other) = (
        model.in_roll(metres(0.01), roll, metres(0.004)).unwrap(),
        model.in_roll(metres(0.01), -roll, metres(-0.004)).unwrap(),
    );
    assert!(one.left_travel.si() < 0.0 && one.right_travel.si() > 0.0);
    assert_relative_eq!(one.left_travel.si(), other.right_travel.si(), max_relative = 1e-10);
    assert_relative_eq!(one.right_toe.si(), other.left_toe.si(), max_relative = 1e-10);
    assert_relative_eq!(one.roll_centre_y.si(), -other.roll_centre_y.si(), max_relative = 1e-9);
    assert_relative_eq!(one.roll_centre_height.si(), other.roll_centre_height.si(), max_relative = 1e-9);

    // The track changes with heave as both slopes say.
    let step = 1e-5;
    let [low, high] = [0.01 - step, 0.01 + step]
        .map(|heave| model.in_roll(metres(heave), roll, metres(0.004)).unwrap().track.si());
    let across = (one.left_slope.si() + one.right_slope.si()) * roll.si().cos();
    assert_relative_eq!((high - low) / (2.0 * step), across, max_relative = 1e-4);
    let far = model.in_roll(none, Angle::of::<deg>(40.0), none).unwrap_err().to_string();
    assert!(far.contains("cannot be reached"), "{far}");
}

#[test]
fn links_keep_their_lengths_and_the_wheel_is_where_it_is_said_to_be() {
    let model = wishbone(FRONT);
    let table = model.points(&[-0.06, 0.0, 0.05].map(metres), &[0.0, 0.03].map(metres)).unwrap();
    let at = |row: usize| {
        let [x, y, z] = ["x", "y", "z"].map(|name| table.numbers(name).unwrap()[row]);
        vector(x, y, z)
    };
    let state = |row: usize| ["travel", "rack_travel"].map(|name| table.numbers(name).unwrap()[row]);
    let points = table.rows() / 6;
    for row in 0..table.rows() {
        let (part, point) = (table.word("part", row).unwrap(), table.word("point", row).unwrap());
        if point == "centre" {
            let [travel, rack] = state(row).map(metres);
            let on = model.at(travel, rack).unwrap();
            let wheel = vector(on.wheel_x.si(), on.wheel_y.si(), on.wheel_z.si());
            assert!((at(row) - wheel).norm() < 1e-12);
        }
        // Distance from the point before in the same part, against that at ride height with the rack in its middle.
        if part == "coil-over" || row == 0 || table.word("part", row - 1) != Some(part) {
            continue;
        }
        let rest = 2 * points + row % points;
        let [found, kept] = [row, rest].map(|row| (at(row) - at(row - 1)).norm());
        assert!((found - kept).abs() < 1e-10, "{part}, {point}: {found}, {kept}");
    }
    let beyond = model.points(&[metres(0.6)], &[metres(0.0)]).unwrap();
    assert_eq!((beyond.rows(), beyond.word("part", 0)), (1, None));
    assert!(beyond.reason(0).unwrap().to_string().contains("cannot be reached"));
}

#[test]
fn at_ride_height_the_wheel_stands_as_drawn() {
    let on = wishbone(FRONT).at(metres(0.0), metres(0.0)).unwrap();
    assert_relative_eq!(on.camber.in_::<deg>(), -0.75, max_relative = 1e-13);
    assert_relative_eq!(on.toe.in_::<deg>(), 0.1, max_relative = 1e-13);
    for (found, drawn) in
        [(on.wheel_x, 0.0), (on.wheel_y, 0.78), (on.wheel_z, 0.32), (on.half_track_change, 0.0)]
    {
        assert!((found.si() - drawn).abs() < 1e-15, "{found:?}");
    }
    assert!(on.upper_joint_angle.si() < 1e-7 && on.tie_rod_inner_angle.si() < 1e-7);
    assert!(on.bar_angle.si().abs() < 1e-15 && on.first_joint == "not known");
}

/// Horizontal, parallel and equal arms, the tie rod too, in parallel planes: a parallelogram, by elementary geometry.
#[test]
fn a_parallelogram_neither_leans_nor_steers() {
    let arm = |z: f64| [[0.2, 0.4, z], [-0.2, 0.4, z], [0.0, 0.7, z]];
    let ([a, b, c], [d, e, f]) = (arm(0.55), arm(0.2));
    let points = [a, b, c, d, e, f, [0.12, 0.4, 0.3], [0.12, 0.7, 0.3], [0.0, 0.75, 0.32]];
    let mut model = wishbone(points);
    (model.coil_over, model.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
    let rest = model.at(metres(0.0), metres(0.0)).unwrap();
    assert!(rest.front_view_centre_y.si().abs() > 1e12 && rest.side_view_centre_x.si().abs() > 1e12);
    assert!(rest.roll_centre_height.si().abs() < 1e-15);
    for travel in [-0.08, -0.01, 0.05, 0.1] {
        let on = model.at(metres(travel), metres(0.0)).unwrap();
        assert_relative_eq!(on.camber.si(), rest.camber.si(), max_relative = 1e-12);
        assert_relative_eq!(on.toe.si(), rest.toe.si(), max_relative = 1e-11);
        assert!(on.mechanical_trail.si() - rest.mechanical_trail.si() < 1e-14);
        let inward = (0.09_f64 - travel * travel).sqrt() - 0.3;
        assert_relative_eq!(on.half_track_change.si(), inward, max_relative = 1e-10);
    }
    // Each arm is 0.3 m long: that is as far as the wheel goes, up and down.
    let range = model.travel_range(metres(0.0)).unwrap();
    assert_relative_eq!(range.bump.si(), 0.3, max_relative = 1e-6);
    assert_relative_eq!(range.droop.si(), -0.3, max_relative = 1e-6);
}

/// Arms that turn about axes along x: instant centre and roll centre by drawing lines, as every textbook does
/// (W. F. Milliken, D. L. Milliken, *Race Car Vehicle Dynamics* (1995), chapter 17; from memory).
#[test]
fn front_view_centres_are_those_of_the_drawing_board() {
    let points = [
        [0.15, 0.4, 0.56],
        [-0.15, 0.4, 0.56],
        [0.0, 0.68, 0.585],
        [0.18, 0.33, 0.24],
        [-0.18, 0.33, 0.24],
        [0.0, 0.72, 0.215],
        [0.13, 0.35, 0.3],
        [0.13, 0.71, 0.29],
        [0.0, 0.77, 0.315],
    ];
    let mut model = wishbone(points);
    model.wheel.toe = Value::new(Angle::from_si(0.0));
    model.wheel.camber = Value::new(Angle::from_si(0.0));
    let on = model.at(metres(0.0), metres(0.0)).unwrap();
    // Lines through pivot and ball joint: z = 0.56 + (y - 0.4) 0.025 / 0.28 and z = 0.24 - (y - 0.33) 0.025 / 0.39.
    let (upper, lower) = (0.025 / 0.28, -0.025 / 0.39);
    let y = (0.24 - 0.56 - lower * 0.33 + upper * 0.4) / (upper - lower);
    let z = 0.56 + (y - 0.4) * upper;
    let ground = 0.315 - 0.32;
    assert_relative_eq!(on.front_view_centre_y.si(), y, max_relative = 1e-12);
    assert_relative_eq!(on.front_view_centre_height.si(), z - ground, max_relative = 1e-12);
    assert_relative_eq!(on.roll_centre_height.si(), (z - ground) * 0.77 / (0.77 - y), max_relative = 1e-12);
    // Camber over the front-view swing arm: 1 / 0.77 - y a metre.
    assert_relative_eq!(on.camber_change.si(), -BUMP / (0.77 - y), max_relative = 1e-12);
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    let far = |place: usize, to: [f64; 3]| {
        let mut points = FRONT;
        points[place] = to;
        wishbone(points)
    };
    let on_axis = {
        // on the line of the ball joints
        let (upper, lower) = (FRONT[2], FRONT[5]);
        [0, 1, 2].map(|i| 0.5 * (upper[i] + lower[i]))
    };
    for (wrong, key) in [
        (far(8, [f64::NAN, 0.78, 0.32]), "wheel.centre: x = NaN"),
        (far(8, [0.0, -0.78, 0.32]), "wheel.centre"),
        (far(7, on_axis), "tie_rod.outer"),
        (far(5, [0.0, 0.315, 0.2325]), "lower_arm: its ball joint"),
        (far(4, FRONT[3]), "lower_arm: its pivots"),
        (far(2, [0.01, 0.9, 0.216]), "upper_arm.ball_joint"),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), metres(0.0)).is_err() && wrong.travel_range(metres(0.0)).is_err());
    }
}

#[test]
fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
    let mut model = wishbone(FRONT);
    (model.coil_over, model.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
    for rack in [-0.03, 0.0, 0.03] {
        let range = model.travel_range(metres(rack)).unwrap();
        for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
            assert!(model.at(metres(limit * (1.0 - 1e-6)), metres(rack)).is_ok());
            let error = model.at(metres(limit * (1.0 + 1e-6)), metres(rack)).unwrap_err();
            let message = error.to_string();
            let crate::Error::NoSolution(why) = error else { panic!("{message}") };
            let nearest = (why.lower - limit).abs().min((why.upper - limit).abs());
            assert!(message.contains(&end) && nearest < 1e-6, "{message}");
        }
    }
    let message = model.at(metres(0.0), metres(0.6)).unwrap_err().to_string();
    assert!(message.contains("tie rod"), "{message}");
}

#[test]
fn a_table_keeps_the_reason_of_a_refused_row_and_equals_single_calls() {
    let model = wishbone(FRONT);
    let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(metres)).unwrap();
    assert_eq!(table.rows(), 6);
    assert!(table.reason(4).is_some() && table.numbers("toe").unwrap()[4].is_nan());
    let one = model.at(metres(0.05), metres(-0.02)).unwrap();
    assert_eq!(table.numbers("toe").unwrap()[2].to_bits(), one.toe.si().to_bits());
    assert_eq!(table.numbers("wheel_rate").unwrap()[2].to_bits(), one.wheel_rate.si().to_bits());
}

/// Milliken, chapter 17, from memory: torque that the body takes leaves the force at the wheel's centre.
#[test]
fn an_inboard_brake_works_along_the_path_of_the_wheel_centre() {
    let mut model = wishbone(FRONT);
    model.driving = Some(Driving { axle_share: Value::new(Ratio::from_si(0.65)) });
    let outboard = model.at(metres(0.02), metres(0.0)).unwrap();
    if let Some(braking) = &mut model.braking {
        braking.place = Some(BrakePlace::Inboard);
    }
    let inboard = model.at(metres(0.02), metres(0.0)).unwrap();
    let levers = 0.65 * 2.55 / 0.52;
    let of = |angle: Angle| levers * angle.si().tan();
    assert_relative_eq!(outboard.brake_anti_pitch.si(), of(outboard.side_view_angle), max_relative = 1e-12);
    assert_relative_eq!(inboard.brake_anti_pitch.si(), of(inboard.wheel_path_angle), max_relative = 1e-12);
    assert_relative_eq!(inboard.brake_anti_pitch.si(), inboard.drive_anti_pitch.si(), max_relative = 1e-12);
    assert!((outboard.brake_anti_pitch - inboard.brake_anti_pitch).si().abs() > 1e-3);
}

#[test]
fn the_first_joint_at_its_limit_is_named() {
    let mut model = wishbone(FRONT);
    let limit = |degrees: f64| Some(Value::new(Angle::of::<deg>(degrees)));
    model.joint_limits = Some(JointLimits {
        upper_ball: limit(20.0),
        top_mount: None,
        lower_ball: limit(25.0),
        tie_rod_outer: None,
        tie_rod_inner: limit(9.0),
    });
    let on = model.at(metres(0.06), metres(0.0)).unwrap();
    assert_eq!(on.first_joint, "tie rod inner joint");
    // The outer joint of the tie rod has none; a wheel without limits has four joints.
    assert_eq!(on.joints_without_limit, 1);
    let without = wishbone(FRONT).at(metres(0.06), metres(0.0)).unwrap();
    assert_eq!((without.joints_without_limit, without.joint_remaining.si().is_nan()), (4, true));
    let remaining = Angle::of::<deg>(9.0) - on.tie_rod_inner_angle;
    assert_relative_eq!(on.joint_remaining.si(), remaining.si(), max_relative = 1e-14);
    // About x along the lower arm's length the joint leans as the arm swings against the upright.
    assert!(on.lower_ball_angle.in_::<deg>() > 5.0 && on.lower_ball_angle.in_::<deg>() < 12.0);
}

#[test]
fn a_spacer_moves_scrub_and_track_by_its_thickness_and_keeps_the_load() {
    let model = wishbone(FRONT);
    let table = model.spacer(Length::of::<mm>(20.0), &[0.0, 0.03].map(metres)).unwrap();
    let of = |name: &str| table.numbers(name).unwrap().to_vec();
    let outward = 0.02 * (0.75_f64.to_radians().cos() * 0.1_f64.to_radians().cos());
    assert_relative_eq!(of("half_track")[1] - of("half_track")[0], outward, max_relative = 1e-10);
    assert_relative_eq!(of("wheel_force")[1], of("wheel_force")[0], max_relative = 1e-12);
    assert!(
        of("motion_ratio")[1] < of("motion_ratio")[0]
            && of("scrub_radius")[1] > of("scrub_radius")[0] + 0.019
    );
    assert_eq!((table.word("state", 2), table.word("state", 3)), (Some("before"), Some("after")));
}

#[test]
fn a_lowered_body_stands_in_bump() {
    let model = wishbone(FRONT);
    let table = model.ride_height_change(Length::of::<mm>(-30.0), &[0.0, 0.01].map(metres)).unwrap();
    let bump = model.at(metres(0.03), metres(0.0)).unwrap();
    for (name, value) in [
        ("camber", bump.camber.si()),
        ("toe", bump.toe.si()),
        ("half_track_change", bump.half_track_change.si()),
        ("roll_centre_height", bump.roll_centre_height.si()),
        ("brake_anti_pitch", bump.brake_anti_pitch.si() * 0.52 / 0.49),
    ] {
        assert_relative_eq!(table.numbers(name).unwrap()[1], value, max_relative = 1e-12);
    }
    let force = table.numbers("wheel_force").unwrap();
    assert_relative_eq!(force[1], force[0], max_relative = 1e-12);
}

#[test]
fn moved_in_its_arch_only_what_stays_behind_changes() {
    let mut bare = wishbone(FRONT);
    let along = bare.arch_move(metres(0.02), metres(0.0), metres(0.0), &[metres(0.04)]).unwrap();
    let of = |name: &str| along.numbers(name).unwrap().to_vec();
    // Forward by 20 mm: the steering axis hangs on the arms, which move along; toe on the tie rod, which does not, and which
    // lets the wheel's centre rise a little differently.
    assert!((of("caster")[1] - of("caster")[0]).abs() < 1e-6);
    assert!((of("toe")[1] - of("toe")[0]).abs() > 1e-5);
    assert_relative_eq!(of("wheel_x")[1] - of("wheel_x")[0], 0.02, max_relative = 1e-2);
    bare.coil_over = Stated::Unknown;
    assert!(bare.arch_move(metres(11.0), metres(0.0), metres(0.0), &[]).is_err());
}

proptest! {
    #[test]
    fn a_table_has_the_bits_of_single_calls(
        shifts in prop::collection::vec(-0.02..0.02, 27), travel in prop::collection::vec(-0.2..0.2, 1..7),
        rack in prop::collection::vec(-0.06..0.06, 1..3),
    ) {
        let model = wishbone(moved(&shifts));
        prop_assume!(model.check().is_ok());
        let of = |values: &[f64]| values.iter().copied().map(metres).collect::<Vec<_>>();
        table_equals_single_calls(&model, &of(&[&travel[..], &[0.0, 11.0]].concat()), &of(&rack));
    }

    #[test]
    fn links_keep_their_length(shifts in prop::collection::vec(-0.02..0.02, 27), travel in -0.09..0.09, rack in -0.04..0.04) {
        let points = moved(&shifts);
        let model = wishbone(points);
        let Ok(linkage) = linkage(&model) else { return Ok(()) };
        let Some(pose) = linkage.at(travel, rack) else { return Ok(()) };
        let at = |point: [f64; 3]| vector(point[0], point[1], point[2]);
        let rest = |carrier, point| pose.body(carrier).point(linkage.here(carrier, at(point))).at;
        let upright = |place: usize| rest(Carrier::Upright, points[place]);
        let inner = at(points[6]) + vector(0.0, rack, 0.0);
        let kept = [
            (upright(2), at(points[0]), points[2], points[0]), (upright(2), at(points[1]), points[2], points[1]),
            (upright(5), at(points[3]), points[5], points[3]), (upright(5), at(points[4]), points[5], points[4]),
            (upright(7), inner, points[7], points[6]), (upright(2), upright(5), points[2], points[5]),
            (upright(7), upright(8), points[7], points[8]), (upright(8), upright(2), points[8], points[2]),
        ];
        for (a, b, c, d) in kept {
            prop_assert!(((a - b).norm() - (at(c) - at(d)).norm()).abs() < 1e-12);
        }
        prop_assert!((upright(8).z - points[8][2] - travel).abs() < 1e-12);
        // The same joint on its arm and on the upright.
        prop_assert!((rest(Carrier::LowerArm, points[5]) - upright(5)).norm() < 1e-12);
        prop_assert!((rest(Carrier::UpperArm, points[2]) - upright(2)).norm() < 1e-12);
        if let Some((turn, _)) = pose.bar {
            let (sine, cosine) = turn.sin_cos();
            let end = vector(0.28 - 0.24 * cosine, 0.65, 0.42 + 0.24 * sine);
            let eye = rest(Carrier::LowerArm, [0.03, 0.66, 0.26]);
            prop_assert!(((eye - end).norm() - vector(-0.01, 0.01, -0.16).norm()).abs() < 1e-12);
        }
    }

    /// Analytic derivatives against differences of positions; energy against forces and rates at the wheel.
    #[test]
    fn rates_are_derivatives(
        shifts in prop::collection::vec(-0.015..0.015, 27), travel in -0.05..0.05, rack in -0.02..0.02,
        carrier in prop::sample::select(vec![Carrier::LowerArm, Carrier::UpperArm, Carrier::Upright]),
        apart in any::<bool>(),
    ) {
        let mut model = wishbone(moved(&shifts));
        model.coil_over = on_all(carrier).coil_over;
        if apart && let Stated::Given(coil_over) = &mut model.coil_over {
            coil_over.spring_seats = Some(SpringSeats {
                body: point([0.03, 0.47, 0.71]), lower: point([0.02, 0.58, 0.3]), carried_by: carrier,
            });
        }
        let bar = (carrier != Carrier::Upright).then(|| TorsionBar {
            turned_by: carrier,
            rate: Value::new(RotationalStiffness::from_si(2400.0)),
            torque: Value::new(Torque::from_si(300.0)),
        });
        model.torsion_bar = Stated::from(bar);
        let at = |z: f64| model.at(metres(z), metres(rack));
        let h = 2e-4;
        let (Ok(low), Ok(on), Ok(high)) = (at(travel - h), at(travel), at(travel + h)) else { return Ok(()) };
        let slope = |of: fn(&WheelPosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
        let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
        prop_assert!(near(slope(|on| on.eye_length.si()), -on.damper_motion_ratio.si(), 1e-6));
        prop_assert!(near(slope(|on| on.spring_length.si()), -on.motion_ratio.si(), 1e-6));
        prop_assert!(near(slope(|on| on.wheel_x.si()), on.wheel_path_angle.si().tan(), 1e-6));
        prop_assert!(near(slope(|on| on.camber.si()) * BUMP, on.camber_change.si(), 1e-7));
        prop_assert!(near(slope(|on| on.toe.si()) * BUMP, on.bump_steer.si(), 1e-7));
        prop_assert!(near(slope(|on| on.bar_angle.si()) * 0.24, on.bar_motion_ratio.si(), 1e-5));
        // Energy of coil, gas and torsion bar: its first derivative is the wheel's force, its second the wheel rate.
        let twisted = model.torsion_bar.is_given();
        let energy = |on: &WheelPosition| {
            let (used, torque) = (on.spring_used.si().max(0.0), on.torsion_bar_torque.si());
            let twist = if twisted { 0.5 * torque * torque / 2400.0 } else { 0.0 };
            0.5 * 60_000.0 * used * used - 150.0 * on.eye_length.si() + twist
        };
        let force = (energy(&high) - energy(&low)) / (2.0 * h);
        prop_assert!(near(force, on.wheel_force.si(), 0.01), "{force} {:?}", on.wheel_force);
        // Not across the corner at which the coil comes loose.
        prop_assume!(on.spring_used.si().abs() > 1e-3);
        let rate = slope(|on| on.wheel_force.si());
        prop_assert!(near(rate, on.wheel_rate.si(), 1.0), "{rate} {:?}", on.wheel_rate);
    }

    /// Front and rear exchanged: toe and caster change their sign, camber and track do not.
    #[test]
    fn a_mirror_image_moves_as_one(travel in -0.06..0.06, rack in -0.02..0.02) {
        let mut mirrored = wishbone(FRONT.map(|[x, y, z]| [-x, y, z]));
        mirrored.wheel.toe = Value::new(Angle::of::<deg>(-0.1));
        let one = wishbone(FRONT).at(metres(travel), metres(rack)).unwrap();
        let other = mirrored.at(metres(travel), metres(rack)).unwrap();
        for (a, b) in [
            (one.camber.si(), other.camber.si()), (one.toe.si(), -other.toe.si()), (one.caster.si(), -other.caster.si()),
            (one.half_track.si(), other.half_track.si()), (one.mechanical_trail.si(), -other.mechanical_trail.si()),
            (one.roll_centre_height.si(), other.roll_centre_height.si()), (one.brake_anti_pitch.si(), -other.brake_anti_pitch.si()),
        ] {
            prop_assert!((a - b).abs() < 1e-12, "{a} {b}");
        }
        // The right wheel: every y changes its sign, the rack's travel too.
        let right = wishbone(FRONT.map(|[x, y, z]| [x, -y, z]));
        let linkage = linkage(&DoubleWishbone { anti_roll_bar: Stated::Unknown, ..right }).unwrap();
        let pose = linkage.at(travel, -rack).unwrap();
        prop_assert!((pose.wheel.at.y + one.wheel_y.si()).abs() < 1e-12);
        prop_assert!((pose.steering_axis.x / pose.steering_axis.z + one.caster.si().tan()).abs() < 1e-12);
    }
}
