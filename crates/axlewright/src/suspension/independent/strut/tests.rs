//! Struts against constructions by hand, and against what cannot be.

use super::super::linkage::{Above, Drawn, Linkage};
use super::super::wheel_position::table_equals_single_calls;
use super::*;
use crate::base::document::Value;
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::kinematics::vector::vector;
use crate::suspension::parts::{BrakePlace, CoilSpring, Damper, Point, SpringSeats};
use crate::units::{Angle, Force, LinearStiffness, Ratio, RotationalStiffness, Torque, deg, mm};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn length(value: f64) -> Value<Length> {
    Value::new(metres(value))
}
fn metres(value: f64) -> Length {
    Length::from_si(value)
}
fn point([x, y, z]: [f64; 3]) -> Point {
    Point::new(metres(x), metres(y), metres(z))
}

/// Arm, top mount and lower end, tie rod, wheel; invented.
type Points = [[f64; 3]; 8];
const FRONT: Points = [
    [0.2, 0.33, 0.21],
    [-0.2, 0.32, 0.2],
    [0.012, 0.7, 0.185],
    [-0.03, 0.56, 0.76],
    [0.004, 0.655, 0.33],
    [-0.13, 0.34, 0.25],
    [-0.135, 0.685, 0.24],
    [0.0, 0.76, 0.31],
];

fn strut(p: Points) -> Strut {
    Strut {
        axle: Axle::Front,
        lower_arm: Arm { front_pivot: point(p[0]), rear_pivot: point(p[1]), ball_joint: point(p[2]) },
        leg: StrutLeg {
            top_mount: point(p[3]),
            lower_end: point(p[4]),
            spring: Some(CoilSpring {
                rate: Value::new(LinearStiffness::from_si(30_000.0)),
                free_length: length(0.36),
                solid_length: length(0.12),
                seat_offset: length(0.21),
            }),
            spring_seats: None,
            damper: Some(Damper {
                open_length: length(0.52),
                closed_length: length(0.34),
                gas_force: Some(Value::new(Force::from_si(150.0))),
            }),
        },
        tie_rod: TieRod { inner: point(p[5]), outer: point(p[6]) },
        wheel: Wheel {
            centre: point(p[7]),
            camber: Value::new(Angle::of::<deg>(-0.75)),
            toe: Value::new(Angle::of::<deg>(0.1)),
            loaded_radius: length(0.3),
        },
        torsion_bar: Stated::Given(TorsionBar {
            turned_by: Carrier::LowerArm,
            rate: Value::new(RotationalStiffness::from_si(1800.0)),
            torque: Value::new(Torque::from_si(200.0)),
        }),
        anti_roll_bar: Stated::Given(AntiRollBar {
            link_eye: point([0.03, 0.64, 0.36]),
            carried_by: Carrier::Upright,
            lever_end: point([0.04, 0.63, 0.2]),
            lever_pivot: point([0.28, 0.4, 0.2]),
        }),
        braking: Some(Braking {
            axle_share: Value::new(Ratio::from_si(0.65)),
            centre_of_gravity_height: length(0.52),
            wheelbase: length(2.55),
            place: None,
        }),
        driving: Some(Driving { axle_share: Value::new(Ratio::from_si(1.0)) }),
        joint_limits: None,
    }
}

fn moved(shifts: &[f64]) -> Points {
    let mut points = FRONT;
    for (place, shift) in shifts.iter().enumerate() {
        points[place / 3][place % 3] += shift;
    }
    points
}

fn linkage(p: &Strut) -> core::result::Result<Linkage, (&'static str, &'static str)> {
    let drawn = Drawn {
        lower_ball: p.lower_arm.ball_joint.vector(),
        upper_ball: p.leg.top_mount.vector(),
        inner: p.tie_rod.inner.vector(),
        outer: p.tie_rod.outer.vector(),
        wheel: p.wheel.centre.vector(),
    };
    Linkage::new(&p.lower_arm, &Above::Strut(p.leg.lower_end.vector()), &drawn)
}

#[test]
fn at_ride_height_the_wheel_stands_as_drawn() {
    let on = strut(FRONT).at(metres(0.0), metres(0.0)).unwrap();
    assert_relative_eq!(on.camber.in_::<deg>(), -0.75, max_relative = 1e-13);
    assert_relative_eq!(on.toe.in_::<deg>(), 0.1, max_relative = 1e-12);
    for (found, drawn) in
        [(on.wheel_x, 0.0), (on.wheel_y, 0.76), (on.wheel_z, 0.31), (on.half_track_change, 0.0)]
    {
        assert!((found.si() - drawn).abs() < 1e-15, "{found:?}");
    }
    assert!(on.upper_joint_angle.si() < 1e-7 && on.lower_ball_angle.si() < 1e-7);
    assert_relative_eq!(on.torsion_bar_torque.si(), 200.0, max_relative = 1e-12);
    // The steering axis goes from the ball joint to the top mount.
    assert_relative_eq!(on.caster.si().tan(), 0.042 / 0.575, max_relative = 1e-12);
    assert_relative_eq!(on.kingpin_inclination.si().tan(), 0.14 / 0.575, max_relative = 1e-12);
}

/// An arm about an axis along x, and the axis of the strut in the same transverse plane as the ball joint: the instant centre lies where the
/// line of the arm meets the line through the top mount square to the strut, the axis of which may miss the ball joint
/// (W. F. Milliken, D. L. Milliken, *Race Car Vehicle Dynamics* (1995), chapter 17; from memory).
#[test]
fn front_view_centres_are_those_of_the_drawing_board() {
    let points = [
        [0.18, 0.33, 0.21],
        [-0.18, 0.33, 0.21],
        [0.0, 0.7, 0.185],
        [0.0, 0.56, 0.76],
        [0.0, 0.655, 0.33],
        [-0.13, 0.34, 0.25],
        [-0.13, 0.685, 0.24],
        [0.0, 0.76, 0.31],
    ];
    let mut model = strut(points);
    (model.wheel.toe, model.wheel.camber) =
        (Value::new(Angle::from_si(0.0)), Value::new(Angle::from_si(0.0)));
    let on = model.at(metres(0.0), metres(0.0)).unwrap();
    // z = 0.21 - (y - 0.33) 0.025 / 0.37, and z = 0.76 + (y - 0.56) 0.095 / 0.43.
    let (lower, upper) = (-0.025 / 0.37, 0.095 / 0.43);
    let y = (0.21 - 0.76 - lower * 0.33 + upper * 0.56) / (upper - lower);
    let (z, ground) = (0.76 + (y - 0.56) * upper, 0.31 - 0.3);
    assert_relative_eq!(on.front_view_centre_y.si(), y, max_relative = 1e-12);
    assert_relative_eq!(on.front_view_centre_height.si(), z - ground, max_relative = 1e-12);
    let roll_centre = (z - ground) * 0.76 / (0.76 - y);
    assert_relative_eq!(on.roll_centre_height.si(), roll_centre, max_relative = 1e-12);
    assert_relative_eq!(on.camber_change.si(), -BUMP / (0.76 - y), max_relative = 1e-12);
}

/// A vertical strut on a level arm that only swings fore and aft, seen from the side: the centre lies on the line square to the strut at the
/// top mount. Anti-dive by the angle of the line from contact point or wheel centre to it (Milliken, chapter 17; from memory).
#[test]
fn side_view_centres_are_those_of_the_drawing_board() {
    // The arm's axis is along y in side view: it trails. The top mount leans rearward.
    let points = [
        [-0.45, 0.9, 0.25],
        [-0.45, 0.5, 0.25],
        [0.02, 0.7, 0.2],
        [-0.06, 0.7, 0.76],
        [0.01, 0.7, 0.27],
        [-0.1, 0.35, 0.3],
        [-0.1, 0.6, 0.3],
        [0.0, 0.7, 0.31],
    ];
    let mut model = strut(points);
    (model.torsion_bar, model.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
    (model.wheel.toe, model.wheel.camber) =
        (Value::new(Angle::from_si(0.0)), Value::new(Angle::from_si(0.0)));
    let outboard = model.at(metres(0.0), metres(0.0)).unwrap();
    // z = 0.25 - (x + 0.45) 0.05 / 0.47, and square to the strut's (-0.07, 0.49): z = 0.76 + (x + 0.06) 0.07 / 0.49.
    let (lower, upper) = (-0.05 / 0.47, 0.07 / 0.49);
    let x = (0.25 - 0.76 + lower * 0.45 - upper * 0.06) / (upper - lower);
    let z = 0.76 + (x + 0.06) * upper;
    assert_relative_eq!(outboard.side_view_centre_x.si(), x, max_relative = 1e-10);
    assert_relative_eq!(outboard.side_view_centre_height.si(), z - 0.01, max_relative = 1e-10);
    // Behind a front wheel and above the ground it holds the nose up; in drive the height over the wheel centre counts.
    let (share, levers) = (0.65, 2.55 / 0.52);
    assert_relative_eq!(
        outboard.brake_anti_pitch.si(),
        share * levers * (z - 0.01) / -x,
        max_relative = 1e-10
    );
    assert_relative_eq!(outboard.drive_anti_pitch.si(), levers * (z - 0.31) / -x, max_relative = 1e-10);
    if let Some(braking) = &mut model.braking {
        braking.place = Some(BrakePlace::Inboard);
    }
    let inboard = model.at(metres(0.0), metres(0.0)).unwrap();
    assert_relative_eq!(
        inboard.brake_anti_pitch.si(),
        share * levers * (z - 0.31) / -x,
        max_relative = 1e-10
    );
    // This linkage at the other end of the vehicle lifts instead of holding.
    model.axle = Axle::Rear;
    let rear = model.at(metres(0.0), metres(0.0)).unwrap();
    assert_eq!(rear.brake_anti_pitch.si(), -inboard.brake_anti_pitch.si());
    assert_eq!(rear.drive_anti_pitch.si(), -inboard.drive_anti_pitch.si());
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    let far = |place: usize, to: [f64; 3]| {
        let mut points = FRONT;
        points[place] = to;
        strut(points)
    };
    let mut on_arm = strut(FRONT);
    if let Stated::Given(bar) = &mut on_arm.anti_roll_bar {
        bar.carried_by = Carrier::UpperArm;
    }
    let mut undriven = strut(FRONT);
    undriven.braking = None;
    let mut twisted = strut(FRONT);
    if let Stated::Given(bar) = &mut twisted.torsion_bar {
        bar.turned_by = Carrier::Upright;
    }
    for (wrong, key) in [
        (far(7, [f64::NAN, 0.78, 0.32]), "wheel.centre: x = NaN"),
        (far(3, [0.0, 0.5, 0.2]), "leg.top_mount: it must stand above"),
        (far(4, FRONT[3]), "leg: its ends are nearer"),
        (far(4, [0.0, 0.14, 0.66]), "leg: its axis leans"),
        (far(6, FRONT[2]), "tie_rod.outer"),
        (on_arm, "anti_roll_bar.carried_by: a strut has no upper arm"),
        (twisted, "torsion_bar.turned_by"),
        (undriven, "driving: it needs `braking`"),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), metres(0.0)).is_err() && wrong.travel_range(metres(0.0)).is_err());
    }
}

#[test]
fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
    let mut model = strut(FRONT);
    model.anti_roll_bar = Stated::Unknown;
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
fn changes_keep_the_load_on_coil_or_torsion_bar() {
    let on = |model: &Strut| {
        let travel = [0.0, 0.02].map(metres);
        [
            model.arch_move(metres(0.01), metres(0.015), metres(0.01), &travel).unwrap(),
            model.ride_height_change(Length::of::<mm>(-25.0), &travel).unwrap(),
            model.spacer(Length::of::<mm>(15.0), &travel).unwrap(),
        ]
    };
    let both = strut(FRONT);
    let mut twisted = strut(FRONT);
    twisted.leg.spring = None;
    for model in [&both, &twisted] {
        for table in on(model) {
            let force = table.numbers("wheel_force").unwrap();
            assert_relative_eq!(force[1], force[0], max_relative = 1e-12);
            assert!(force[3] > force[1]);
        }
    }
    // Moved as a whole but for rack and bar, its axes stand as they stood.
    let [arch, lowered, _] = on(&both);
    for name in ["caster", "kingpin_inclination", "eye_length", "camber"] {
        let of = arch.numbers(name).unwrap();
        assert_relative_eq!(of[1], of[0], max_relative = 1e-10);
    }
    let bump = both.at(metres(0.025), metres(0.0)).unwrap();
    assert_relative_eq!(lowered.numbers("camber").unwrap()[1], bump.camber.si(), max_relative = 1e-12);
}

#[test]
fn the_first_joint_at_its_limit_is_named() {
    let mut model = strut(FRONT);
    let limit = |degrees: f64| Some(Value::new(Angle::of::<deg>(degrees)));
    model.joint_limits = Some(JointLimits {
        upper_ball: None,
        top_mount: limit(3.0),
        lower_ball: limit(20.0),
        tie_rod_outer: None,
        tie_rod_inner: None,
    });
    let on = model.at(metres(0.06), metres(0.0)).unwrap();
    assert_eq!((on.first_joint.as_str(), on.joints_without_limit), ("top mount", 2));
    assert_relative_eq!(
        on.joint_remaining.si(),
        (Angle::of::<deg>(3.0) - on.upper_joint_angle).si(),
        max_relative = 1e-12
    );
    if let Some(limits) = &mut model.joint_limits {
        limits.upper_ball = limit(20.0);
    }
    assert!(model.check().unwrap_err().to_string().starts_with("joint_limits.upper_ball"));
}

#[test]
fn in_roll_it_mirrors_itself_and_its_points_keep_their_distances() {
    let model = strut(FRONT);
    let none = metres(0.0);
    let (rest, level) =
        (model.at(none, none).unwrap(), model.in_roll(none, Angle::from_si(0.0), none).unwrap());
    assert_relative_eq!(level.roll_centre_height.si(), rest.roll_centre_height.si(), max_relative = 1e-10);
    let [one, other] = [0.03, -0.03].map(|roll| model.in_roll(none, Angle::from_si(roll), none).unwrap());
    assert_relative_eq!(one.left_camber.si(), other.right_camber.si(), max_relative = 1e-10);
    assert_relative_eq!(one.roll_centre_y.si(), -other.roll_centre_y.si(), max_relative = 1e-9);

    let table = model.points(&[metres(0.0), metres(0.04)], &[none]).unwrap();
    let points = table.rows() / 2;
    let at = |row: usize| {
        let [x, y, z] = ["x", "y", "z"].map(|name| table.numbers(name).unwrap()[row]);
        vector(x, y, z)
    };
    for row in points + 1..2 * points {
        let part = table.word("part", row).unwrap();
        if table.word("part", row - 1) == Some(part) && !["leg", "coil"].contains(&part) {
            let [moved, kept] = [row, row - points].map(|row| (at(row) - at(row - 1)).norm());
            assert!((moved - kept).abs() < 1e-10, "{part}: {moved}, {kept}");
        }
    }
}

#[test]
fn a_table_equals_single_calls() {
    let model = strut(FRONT);
    let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(metres)).unwrap();
    assert_eq!(table.rows(), 6);
    assert!(table.reason(4).is_some() && table.numbers("toe").unwrap()[4].is_nan());
    let one = model.at(metres(0.05), metres(-0.02)).unwrap();
    for (name, value) in [("toe", one.toe.si()), ("wheel_rate", one.wheel_rate.si())] {
        assert_eq!(table.numbers(name).unwrap()[2].to_bits(), value.to_bits());
    }
}

proptest! {
    #[test]
    fn a_table_has_the_bits_of_single_calls(
        shifts in prop::collection::vec(-0.02..0.02, 24), travel in prop::collection::vec(-0.2..0.2, 1..7),
        rack in prop::collection::vec(-0.06..0.06, 1..3),
    ) {
        let model = strut(moved(&shifts));
        prop_assume!(model.check().is_ok());
        let of = |values: &[f64]| values.iter().copied().map(metres).collect::<Vec<_>>();
        table_equals_single_calls(&model, &of(&[&travel[..], &[0.0, 11.0]].concat()), &of(&rack));
    }

    #[test]
    fn links_keep_their_length_and_the_axis_its_mount(
        shifts in prop::collection::vec(-0.02..0.02, 24), travel in -0.09..0.09, rack in -0.04..0.04, through in any::<bool>(),
    ) {
        let mut points = moved(&shifts);
        if through { // the strut's axis goes through the ball joint
            points[4] = [0, 1, 2].map(|i| points[2][i] + 0.25 * (points[3][i] - points[2][i]));
        }
        let Ok(linkage) = linkage(&strut(points)) else { return Ok(()) };
        let Some(pose) = linkage.at(travel, rack) else { return Ok(()) };
        let at = |place: usize| vector(points[place][0], points[place][1], points[place][2]);
        let upright = |place: usize| pose.upright.point(linkage.here(Carrier::Upright, at(place))).at;
        let inner = at(5) + vector(0.0, rack, 0.0);
        for (now, was) in [
            (upright(2) - at(0), at(2) - at(0)), (upright(2) - at(1), at(2) - at(1)), (upright(6) - inner, at(6) - at(5)),
            (upright(6) - upright(2), at(6) - at(2)), (upright(4) - upright(6), at(4) - at(6)), (upright(7) - upright(4), at(7) - at(4)),
        ] {
            prop_assert!((now.norm() - was.norm()).abs() < 1e-12);
        }
        // The top mount lies on the line through the lower end along what was the strut's axis.
        let along = pose.upright.direction(linkage.direction_here(Carrier::Upright, (at(3) - at(4)).unit()));
        prop_assert!((at(3) - upright(4)).cross(along).norm() < 1e-12);
        prop_assert!((upright(7).z - points[7][2] - travel).abs() < 1e-12);
        let ball = pose.lower_arm.point(linkage.here(Carrier::LowerArm, at(2))).at;
        prop_assert!((ball - upright(2)).norm() < 1e-12);
    }

    /// Analytic derivatives against differences of positions; energy against forces and rates at the wheel.
    #[test]
    fn rates_are_derivatives(
        shifts in prop::collection::vec(-0.015..0.015, 24), travel in -0.05..0.05, rack in -0.02..0.02,
        carrier in prop::sample::select(vec![None, Some(Carrier::LowerArm), Some(Carrier::Upright)]),
    ) {
        let mut model = strut(moved(&shifts));
        model.leg.spring_seats = carrier.map(|carried_by| SpringSeats {
            body: point([-0.02, 0.56, 0.7]), lower: point([0.02, 0.63, 0.42]), carried_by,
        });
        let at = |z: f64| model.at(metres(z), metres(rack));
        let h = 2e-4;
        let (Ok(low), Ok(on), Ok(high)) = (at(travel - h), at(travel), at(travel + h)) else { return Ok(()) };
        let slope = |of: fn(&WheelPosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
        let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
        prop_assert!(near(slope(|on| on.eye_length.si()), -on.damper_motion_ratio.si(), 1e-6));
        prop_assert!(near(slope(|on| on.spring_length.si()), -on.motion_ratio.si(), 1e-6));
        prop_assert!(near(slope(|on| on.camber.si()) * BUMP, on.camber_change.si(), 1e-7));
        prop_assert!(near(slope(|on| on.toe.si()) * BUMP, on.bump_steer.si(), 1e-7));
        prop_assert!(near(slope(|on| on.bar_angle.si()) * 0.24, on.bar_motion_ratio.si(), 1e-5));
        prop_assert!(near(slope(|on| on.wheel_x.si()), on.wheel_path_angle.si().tan(), 1e-6));
        // Energy of coil, gas and torsion bar: its first derivative is the wheel's force, its second the wheel rate.
        let energy = |on: &WheelPosition| {
            let (used, torque) = (on.spring_used.si().max(0.0), on.torsion_bar_torque.si());
            0.5 * 30_000.0 * used * used - 150.0 * on.eye_length.si() + 0.5 * torque * torque / 1800.0
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
        let mut mirrored = strut(FRONT.map(|[x, y, z]| [-x, y, z]));
        mirrored.wheel.toe = Value::new(Angle::of::<deg>(-0.1));
        let mut plain = strut(FRONT);
        (plain.anti_roll_bar, mirrored.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
        let one = plain.at(metres(travel), metres(rack)).unwrap();
        let other = mirrored.at(metres(travel), metres(rack)).unwrap();
        for (a, b) in [
            (one.camber.si(), other.camber.si()), (one.toe.si(), -other.toe.si()), (one.caster.si(), -other.caster.si()),
            (one.half_track.si(), other.half_track.si()), (one.mechanical_trail.si(), -other.mechanical_trail.si()),
            (one.roll_centre_height.si(), other.roll_centre_height.si()), (one.brake_anti_pitch.si(), -other.brake_anti_pitch.si()),
            (one.drive_anti_pitch.si(), -other.drive_anti_pitch.si()),
        ] {
            prop_assert!((a - b).abs() < 1e-12, "{a} {b}");
        }
        // The wheel's forces, to the last places of their kilonewtons.
        prop_assert!((one.wheel_force.si() - other.wheel_force.si()).abs() < 1e-8);
        // The right wheel: every y changes its sign, the rack's travel too.
        let linkage = linkage(&strut(FRONT.map(|[x, y, z]| [x, -y, z]))).unwrap();
        let pose = linkage.at(travel, -rack).unwrap();
        prop_assert!((pose.wheel.at.y + one.wheel_y.si()).abs() < 1e-12);
        prop_assert!((pose.steering_axis.x / pose.steering_axis.z + one.caster.si().tan()).abs() < 1e-12);
    }
}
