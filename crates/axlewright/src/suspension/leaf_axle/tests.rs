//! Leaf axles against handbooks, against each other, and against what cannot be.

use super::balance::*;
use super::model::*;
use super::position::*;
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::spring::leaf_pack_rate;
use crate::suspension::kinematics::outline::read;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::live_axle::parts::{AxleBar, AxleCoilOver, Mount};
use crate::suspension::live_axle_roll_stiffness;
use crate::suspension::parts::{Axle, Braking, Point, Wheel};
use crate::suspension::parts::{BrakePlace, CoilSpring, Damper};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, Stress, Torque};
use crate::units::{deg, mm};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn metres(value: f64) -> Length {
    Length::from_si(value)
}
fn radians(value: f64) -> Angle {
    Angle::from_si(value)
}
fn length(value: f64) -> Value<Length> {
    Value::new(metres(value))
}
fn point([x, z]: [f64; 2], y: f64) -> Point {
    Point::new(metres(x), metres(y), metres(z))
}

/// Fixed eye, eye on the shackle, shackle's pivot, seat; forward and up.
type Points = [[f64; 2]; 4];
const ARCHED: Points = [[0.64, 0.545], [-0.71, 0.555], [-0.685, 0.67], [0.0, 0.475]];
/// Flat and symmetric, its shackle upright.
const FLAT: Points = [[0.65, 0.5], [-0.65, 0.5], [-0.65, 0.6], [0.0, 0.5]];

fn axle([fixed, eye, pivot, seat]: Points) -> LeafAxle {
    LeafAxle {
        axle: Axle::Rear,
        wheel: Wheel {
            centre: Point::new(metres(0.0), metres(0.81), metres(0.39)),
            camber: Value::new(radians(0.0)),
            toe: Value::new(radians(0.0)),
            loaded_radius: length(0.38),
        },
        leaf: LeafSpring {
            fixed_eye: point(fixed, 0.52),
            shackle_eye: point(eye, 0.52),
            shackle_pivot: point(pivot, 0.52),
            seat: point(seat, 0.52),
            seat_angle: None,
            clamped_length: length(0.14),
            eye_offset: None,
            form: LeafForm::UniformStrength,
            load: Value::new(Force::from_si(9800.0)),
            leaves: Some(leaves()),
        },
        spring: Some(LeafRate { rate: Value::new(LinearStiffness::from_si(110_000.0)) }),
        damper: Some(AxleDamper {
            body_eye: Point::new(metres(0.15), metres(0.4), metres(0.8)),
            axle_eye: Point::new(metres(-0.06), metres(0.45), metres(0.3)),
            open_length: Some(length(0.68)),
            closed_length: Some(length(0.42)),
        }),
        coil_over: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        bump_clearance: Some(length(0.09)),
        pinion_angle: Some(Value::new(Angle::of::<deg>(3.0))),
        braking: Some(Braking {
            axle_share: Value::new(Ratio::from_si(0.4)),
            centre_of_gravity_height: length(1.1),
            wheelbase: length(3.3),
            place: None,
        }),
        drive_share: Some(Value::new(Ratio::from_si(1.0))),
    }
}

fn leaves() -> Leaves {
    Leaves {
        elastic_modulus: Value::new(Stress::from_si(206e9)),
        leaf_width: length(0.07),
        leaf_thickness: length(0.009),
        full_length_leaves: Value::new(Ratio::from_si(2.0)),
        graduated_leaves: Value::new(Ratio::from_si(5.0)),
    }
}

fn place([x, y, z]: [f64; 3]) -> Point {
    Point::new(metres(x), metres(y), metres(z))
}
fn coil() -> CoilSpring {
    CoilSpring {
        rate: Value::new(LinearStiffness::from_si(30_000.0)),
        free_length: length(0.35),
        solid_length: length(0.15),
        seat_offset: length(0.15),
    }
}
fn bar(bearings: Mount) -> AxleBar {
    match bearings {
        Mount::Body => AxleBar {
            bearings,
            link_eye: place([-0.06, 0.45, 0.36]),
            lever_end: place([-0.07, 0.46, 0.52]),
            lever_pivot: place([0.15, 0.35, 0.53]),
        },
        Mount::Axle => AxleBar {
            bearings,
            link_eye: place([0.2, 0.45, 0.62]),
            lever_end: place([0.19, 0.47, 0.42]),
            lever_pivot: place([-0.02, 0.47, 0.41]),
        },
    }
}
/// With a helper coil that leans, off the axle's middle, and a bar.
fn helped(mount: Mount) -> LeafAxle {
    let mut model = axle(ARCHED);
    model.damper = None;
    model.coil_over = Stated::Given(AxleCoilOver {
        body_eye: place([0.05, 0.42, 0.85]),
        axle_eye: place([-0.04, 0.5, 0.45]),
        spring: Some(coil()),
        damper: Some(Damper {
            open_length: length(0.55),
            closed_length: length(0.3),
            gas_force: Some(Value::new(Force::from_si(150.0))),
        }),
    });
    model.anti_roll_bar = Stated::Given(bar(mount));
    model
}

/// Hardly loaded, so that only stiffness counts.
fn flat(form: LeafForm) -> LeafAxle {
    let mut model = axle(FLAT);
    model.leaf.form = form;
    model.leaf.load = Value::new(Force::from_si(1.0));
    model
}

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

#[test]
fn what_cannot_be_is_refused_by_name() {
    let far = |place: usize, to: [f64; 2]| {
        let mut points = ARCHED;
        points[place] = to;
        axle(points)
    };
    let mut bare = axle(ARCHED);
    (bare.spring, bare.leaf.leaves) = (None, None);
    let mut driven = axle(ARCHED);
    driven.braking = None;
    let mut inboard = axle(ARCHED);
    inboard.braking.as_mut().unwrap().place = Some(BrakePlace::Inboard);
    let mut right = axle(ARCHED);
    right.leaf.seat.y = length(-0.52);
    let mut twice = helped(Mount::Body);
    twice.damper = axle(ARCHED).damper;
    let mut short = helped(Mount::Body);
    short.coil_over.as_mut().unwrap().axle_eye = short.coil_over.as_ref().unwrap().body_eye.clone();
    let mut locked = helped(Mount::Axle);
    locked.anti_roll_bar.as_mut().unwrap().lever_pivot = place([0.184, 0.47, 0.3]);
    let mut bent = helped(Mount::Axle);
    bent.anti_roll_bar.as_mut().unwrap().lever_end = place([-0.02, 0.4, 0.4101]);
    let mut light = axle(ARCHED);
    light.leaf.load = Value::new(Force::from_si(0.0));
    for (wrong, key) in [
        (far(0, [f64::NAN, 0.5]), "leaf.fixed_eye: x = NaN"),
        (far(3, [0.7, 0.475]), "leaf.seat: it must lie between"),
        (far(0, [0.07, 0.48]), "leaf.fixed_eye: from the seat"),
        (far(2, ARCHED[1]), "leaf.shackle_pivot: it is nearer"),
        (far(2, [-0.81, 0.57]), "leaf.shackle_pivot: the shackle lines up"),
        (bare, "spring.rate: missing"),
        (driven, "drive_share: it needs `braking`"),
        (inboard, "braking.place: a live axle carries its brakes"),
        (right, "leaf.seat: a left spring"),
        (twice, "coil_over.damper: there is a `damper` beside it"),
        (short, "coil_over: its eyes are nearer"),
        (locked, "anti_roll_bar: its drop link lines up"),
        (bent, "anti_roll_bar.lever_end: it is nearer"),
        (light, "leaf: load = 0 N"),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), radians(0.0)).is_err() && wrong.travel_range(radians(0.0)).is_err());
    }
}

#[test]
fn where_a_drop_link_does_not_reach_it_says_so() {
    let mut model = helped(Mount::Body);
    model.anti_roll_bar.as_mut().unwrap().lever_pivot = place([-0.02, 0.4, 0.53]);
    let message = model.at(metres(0.1), radians(0.0)).unwrap_err().to_string();
    assert!(message.contains("drop link of the anti_roll_bar"), "{message}");
    let points = model.points(&[metres(0.1)], &[radians(0.0)]).unwrap();
    assert_eq!(points.reason(0).unwrap().to_string(), message);
}

#[test]
fn beyond_its_range_the_refusal_says_what_ends_it_and_where() {
    let mut seen = Vec::new();
    let mut short = ARCHED;
    short[2] = [-0.69, 0.61];
    for points in [ARCHED, FLAT, short] {
        let model = axle(points);
        for roll in [-0.05, 0.0, 0.05] {
            let range = model.travel_range(radians(roll)).unwrap();
            for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                assert!(model.at(metres(limit * (1.0 - 1e-6)), radians(roll)).is_ok());
                let error = model.at(metres(limit * (1.0 + 1e-6)), radians(roll)).unwrap_err();
                let message = error.to_string();
                let crate::Error::NoSolution(why) = error else { panic!("{message}") };
                let nearest = (why.lower - limit).abs().min((why.upper - limit).abs());
                assert!(message.contains(&end) && nearest < 1e-6, "{message}");
                seen.push(end);
            }
        }
    }
    assert!(seen.iter().any(|end| end == "shackle"), "{seen:?}");
}

#[test]
fn a_table_keeps_the_reason_of_a_refused_row_and_equals_single_calls() {
    let model = axle(ARCHED);
    let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(radians)).unwrap();
    assert_eq!(table.rows(), 6);
    assert!(table.reason(4).is_some() && table.numbers("axle_steer").unwrap()[4].is_nan());
    let one = model.at(metres(0.05), radians(-0.02)).unwrap();
    for (name, value) in [
        ("axle_steer", one.axle_steer.si()),
        ("wheel_rate", one.wheel_rate.si()),
        ("right_bump_remaining", one.right_bump_remaining.si()),
    ] {
        assert_eq!(table.numbers(name).unwrap()[2].to_bits(), value.to_bits(), "{name}");
    }
}

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
