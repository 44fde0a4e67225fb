use super::*;
use crate::Stated;
use crate::base::document::{Prepare, Value};
use crate::suspension::parts::Arm;
use crate::suspension::parts::{
    AntiRollBar, Axle, CoilOver, CoilSpring, Point, SpringSeats, StrutLeg, TieRod, TorsionBar, Wheel,
};
use crate::suspension::{DoubleWishbone, Strut};
use crate::units::{Angle, LinearStiffness, RotationalStiffness};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn at(x: f64, y: f64, z: f64) -> Point {
    Point::new(Length::from_si(x), Length::from_si(y), Length::from_si(z))
}

fn coil_over(carried_by: Carrier, lower_eye: Point) -> CoilOver {
    let body_eye = at(0.02, 0.48, 0.64);
    CoilOver { body_eye, lower_eye, carried_by, spring: None, spring_seats: None, damper: None }
}

/// Ball joints one above the other, arms level, the ground at zero: 240 mm, 575 mm and a radius of 335 mm.
fn level() -> DoubleWishbone {
    let arm = |z: f64| Arm {
        front_pivot: at(0.15, 0.4, z),
        rear_pivot: at(-0.15, 0.4, z),
        ball_joint: at(0.0, 0.7, z),
    };
    DoubleWishbone {
        axle: Axle::Front,
        upper_arm: arm(0.575),
        lower_arm: arm(0.240),
        tie_rod: TieRod { inner: at(-0.14, 0.4, 0.3), outer: at(-0.14, 0.7, 0.3) },
        wheel: Wheel {
            centre: at(0.0, 0.77, 0.335),
            camber: Value::new(Angle::from_si(0.0)),
            toe: Value::new(Angle::from_si(0.0)),
            loaded_radius: Value::new(Length::from_si(0.335)),
        },
        coil_over: Stated::Given(coil_over(Carrier::LowerArm, at(0.0, 0.6, 0.26))),
        torsion_bar: Stated::None,
        anti_roll_bar: Stated::None,
        braking: None,
        driving: None,
        joint_limits: None,
    }
}

fn load(x: f64, x_height: f64, y: f64, y_height: f64, z: f64, drop_link: f64) -> TyreLoad {
    TyreLoad {
        longitudinal_force: Force::from_si(x),
        longitudinal_height: Length::from_si(x_height),
        lateral_force: Force::from_si(y),
        lateral_height: Length::from_si(y_height),
        vertical_force: Force::from_si(z),
        drop_link_force: Force::from_si(drop_link),
    }
}

fn forces(model: &DoubleWishbone, on: TyreLoad) -> WheelForces {
    model.prepare().unwrap().forces(Length::from_si(0.0), Length::from_si(0.0), on).unwrap()
}

#[test]
fn a_brake_in_the_wheel_pulls_the_upper_arm_the_other_way_than_a_free_wheel() {
    let outboard = forces(&level(), load(-5000.0, 0.0, 0.0, 0.0, 0.0, 0.0));
    assert_relative_eq!(outboard.upper_joint_x.si(), 5000.0 * 0.240 / 0.335, max_relative = 1e-12);
    let inboard = forces(&level(), load(-5000.0, 0.335, 0.0, 0.0, 0.0, 0.0));
    assert_relative_eq!(inboard.upper_joint_x.si(), -5000.0 * 0.095 / 0.335, max_relative = 1e-12);
    // The rod holds the wheel's offset from the ball joints: 70 mm over 140 mm.
    assert_relative_eq!(outboard.tie_rod.si().abs(), 2500.0, max_relative = 1e-12);
}

#[test]
fn a_lateral_force_is_shared_by_both_arms_as_a_beam_on_two_supports() {
    let on = forces(&level(), load(0.0, 0.0, -4000.0, 0.0, 0.0, 0.0));
    assert_relative_eq!(on.upper_joint_y.si(), 4000.0 * 0.240 / 0.335, max_relative = 1e-12);
    assert_relative_eq!(on.lower_joint_y.si(), -4000.0 * 0.575 / 0.335, max_relative = 1e-12);
    // Legs at 26.57 deg from the outward direction.
    let leg = 0.5 * 4000.0 * 0.240 / 0.335 / 0.3 * 0.3_f64.hypot(0.15);
    assert_relative_eq!(on.upper_front_leg.si(), leg, max_relative = 1e-12);
    assert_relative_eq!(on.upper_rear_leg.si(), leg, max_relative = 1e-12);
    assert_eq!(on.upper_arm_bending.si(), 0.0);
}

#[test]
fn a_spring_between_the_ends_of_an_arm_bends_it() {
    let on = forces(&level(), load(0.0, 0.0, 0.0, 0.0, 6000.0, 0.0));
    // Cut at the eye: what the ball joint lifts, 100 mm further out, less what it pushes inward 20 mm lower.
    let ball = (on.lower_joint_z.si() * 0.1 + on.lower_joint_y.si() * 0.02).abs();
    assert_relative_eq!(on.lower_arm_bending.si(), ball, max_relative = 1e-12);
    assert!(on.lower_arm_bending.si() > 500.0);
}

fn of(x: Force, y: Force, z: Force) -> Vector {
    vector(x.si(), y.si(), z.si())
}

/// Forces on the body, and the points at which they act; bar and ground are left out.
fn on_body(ready: &PreparedLinkage<'_>, rack: f64, on: &WheelForces) -> Vec<(Vector, Vector)> {
    let arm = ready.parts.lower_arm;
    let front = of(on.lower_front_pivot_x, on.lower_front_pivot_y, on.lower_front_pivot_z);
    let rear = of(on.lower_rear_pivot_x, on.lower_rear_pivot_y, on.lower_rear_pivot_z);
    let mut loads = vec![
        (arm.front_pivot.vector(), front),
        (arm.rear_pivot.vector(), rear),
        (ready.linkage.rack_end(rack), of(on.rack_x, on.rack_y, on.rack_z)),
    ];
    match ready.parts.upper {
        Upper::Arm(arm) => {
            let front = of(on.upper_front_pivot_x, on.upper_front_pivot_y, on.upper_front_pivot_z);
            let rear = of(on.upper_rear_pivot_x, on.upper_rear_pivot_y, on.upper_rear_pivot_z);
            loads.extend([(arm.front_pivot.vector(), front), (arm.rear_pivot.vector(), rear)]);
            if let Some(coil_over) = &ready.parts.coil_over {
                loads.push((coil_over.ends[0].vector(), of(on.body_eye_x, on.body_eye_y, on.body_eye_z)));
            }
        }
        Upper::Strut(top, _) => {
            loads.push((top.vector(), of(on.upper_joint_x, on.upper_joint_y, on.upper_joint_z)));
        }
    }
    if let Some(seats) = ready.parts.coil_over.as_ref().and_then(|coil_over| coil_over.spring_seats) {
        loads.push((seats.body.vector(), of(on.body_seat_x, on.body_seat_y, on.body_seat_z)));
    }
    loads
}

/// The body bears what the ground gives, to the last bits; and the coil-over does as much work along its eyes as the ground along the paths
/// of the points at which it acts.
fn check(ready: &PreparedLinkage<'_>, travel: f64, rack: f64, on: TyreLoad) {
    let (travel, rack_travel) = (Length::from_si(travel), Length::from_si(rack));
    let pose = ready.pose(travel, rack_travel).unwrap();
    let found = ready.forces(travel, rack_travel, on).unwrap();
    let mut loads = on_body(ready, rack, &found);
    let ground = ready.on_tyre(&pose, on);
    loads.extend(ground.iter().map(|load| (load.at, -load.force)));
    let mut work: f64 = ground.iter().map(|load| load.force.dot(pose.upright.carried(load.at).rate)).sum();
    if let Some((eye, end)) = ready.linkage.drop_link(&pose) {
        let pull = (eye - end).unit() * on.drop_link_force.si();
        loads.push((end, pull));
        let carrier = ready.parts.anti_roll_bar.unwrap().carried_by;
        work -= pull.dot(pose.body(carrier).carried(eye).rate);
    }
    let mut torque = Vector::default();
    if let Some(bar) = ready.parts.torsion_bar {
        let rest = ready.linkage.rest.body(bar.turned_by);
        torque = rest.axis() * (rest.bump() * found.torsion_bar_torque.si());
        work -= found.torsion_bar_torque.si() * pose.body(bar.turned_by).turned(rest)[1];
    }
    if let Some(seats) = &ready.seats {
        work -= found.coil.si() * seats.stroke(&pose).ratio * pose.wheel.rate.z;
    }
    if let Some(eyes) = &ready.eyes {
        work -= found.coil_over.si() * eyes.stroke(&pose).ratio * pose.wheel.rate.z;
    }
    let greatest = loads.iter().map(|(_, force)| force.norm()).fold(1.0, f64::max);
    let force = loads.iter().fold(Vector::default(), |sum, (_, force)| sum + *force);
    let moment = loads.iter().fold(torque, |sum, (at, force)| sum + at.cross(*force));
    assert!(force.norm() <= 1e-9 * greatest, "{force:?} of {greatest}: {found:?}");
    assert!(moment.norm() <= 1e-9 * greatest, "{moment:?} of {greatest}: {found:?}");
    assert!(work.abs() <= 1e-9 * greatest, "{work} of {greatest}: {found:?}");
}

fn drawn(carried_by: Carrier) -> DoubleWishbone {
    let lower_eye = match carried_by {
        Carrier::UpperArm => at(0.01, 0.6, 0.58),
        Carrier::LowerArm | Carrier::Upright => at(0.015, 0.62, 0.27),
    };
    let mut over = coil_over(carried_by, lower_eye);
    over.body_eye = at(0.03, 0.5, 0.8);
    DoubleWishbone {
        upper_arm: Arm {
            front_pivot: at(0.15, 0.47, 0.56),
            rear_pivot: at(-0.15, 0.46, 0.55),
            ball_joint: at(-0.015, 0.69, 0.575),
        },
        lower_arm: Arm {
            front_pivot: at(0.19, 0.33, 0.265),
            rear_pivot: at(-0.21, 0.34, 0.255),
            ball_joint: at(0.01, 0.725, 0.24),
        },
        tie_rod: TieRod { inner: at(-0.14, 0.355, 0.3), outer: at(-0.14, 0.7, 0.28) },
        coil_over: Stated::Given(over),
        ..level()
    }
}

fn with_bar(model: DoubleWishbone) -> DoubleWishbone {
    let bar = AntiRollBar {
        link_eye: at(0.05, 0.6, 0.3),
        carried_by: Carrier::LowerArm,
        lever_end: at(0.05, 0.58, 0.42),
        lever_pivot: at(0.25, 0.3, 0.44),
    };
    DoubleWishbone { anti_roll_bar: Stated::Given(bar), ..model }
}

fn torsion_bar(turned_by: Carrier) -> Stated<TorsionBar> {
    let (rate, torque) = (RotationalStiffness::from_si(3e3), Torque::from_si(900.0));
    Stated::Given(TorsionBar { turned_by, rate: Value::new(rate), torque: Value::new(torque) })
}

fn coil() -> CoilSpring {
    CoilSpring {
        rate: Value::new(LinearStiffness::from_si(8e4)),
        free_length: Value::new(Length::from_si(0.38)),
        solid_length: Value::new(Length::from_si(0.15)),
        seat_offset: Value::new(Length::from_si(0.0)),
    }
}

fn seats(carried_by: Carrier) -> SpringSeats {
    SpringSeats { body: at(0.0, 0.44, 0.6), lower: at(0.0, 0.5, 0.27), carried_by }
}

/// A double wishbone of every kind: what carries the coil-over, torsion bar beside it or alone, coil on seats of its own.
fn wishbone(which: usize) -> DoubleWishbone {
    let mut model = drawn([Carrier::LowerArm, Carrier::UpperArm, Carrier::Upright][which % 3]);
    match which {
        3 => model.torsion_bar = torsion_bar(Carrier::UpperArm),
        4 => (model.coil_over, model.torsion_bar) = (Stated::None, torsion_bar(Carrier::LowerArm)),
        5 => (model.coil_over, model.torsion_bar) = (Stated::None, torsion_bar(Carrier::UpperArm)),
        6 => {
            if let Stated::Given(on) = &mut model.coil_over {
                (on.spring, on.spring_seats) = (Some(coil()), Some(seats(Carrier::LowerArm)));
            }
        }
        _ => {}
    }
    if which.is_multiple_of(2) { with_bar(model) } else { model }
}

fn strut(which: usize) -> Strut {
    let from = drawn(Carrier::Upright);
    Strut {
        axle: Axle::Front,
        lower_arm: from.lower_arm,
        leg: StrutLeg {
            top_mount: at(-0.03, 0.56, 0.76),
            lower_end: at(0.004, 0.655, 0.33),
            spring: Some(coil()),
            spring_seats: [None, Some(Carrier::Upright), Some(Carrier::LowerArm)][which % 3].map(seats),
            damper: None,
        },
        tie_rod: from.tie_rod,
        wheel: from.wheel,
        torsion_bar: if which >= 3 { torsion_bar(Carrier::LowerArm) } else { Stated::None },
        anti_roll_bar: with_bar(level()).anti_roll_bar,
        braking: None,
        driving: None,
        joint_limits: None,
    }
}

#[test]
fn what_cannot_be_balanced_is_refused_by_name() {
    let none = Length::from_si(0.0);
    let bare = DoubleWishbone { coil_over: Stated::Unknown, ..level() };
    let refused = |model: &DoubleWishbone, on: TyreLoad| {
        model.prepare().unwrap().forces(none, none, on).unwrap_err().to_string()
    };
    let standing = load(0.0, 0.0, 0.0, 0.0, 5e3, 0.0);
    assert!(refused(&bare, standing).contains("coil_over: nothing carries the wheel"));
    assert!(refused(&level(), load(0.0, 0.0, 0.0, 0.0, 5e3, 10.0)).contains("drop_link_force = 10 N"));
    assert!(refused(&level(), load(0.0, -0.1, 0.0, 0.0, 5e3, 0.0)).contains("longitudinal_height"));
    // The coil without its rate has no force of its own: nothing that it changes is known.
    let mut unknown = wishbone(6);
    if let Stated::Given(on) = &mut unknown.coil_over {
        on.spring = None;
    }
    let on = forces(&unknown, standing);
    assert!(on.coil_over.si().is_nan() && on.coil.si().is_nan() && on.lower_joint_z.si().is_nan());
}

#[test]
fn the_leg_of_a_strut_bends_under_its_side_force() {
    let model = strut(0);
    let on = model.forces(
        Length::from_si(0.0),
        Length::from_si(0.0),
        Force::from_si(0.0),
        Length::from_si(0.0),
        Force::from_si(3e3),
        Length::from_si(0.0),
        Force::from_si(5e3),
        Force::from_si(0.0),
    );
    let on = on.unwrap();
    let total = of(on.upper_joint_x, on.upper_joint_y, on.upper_joint_z);
    let (side, leg) = (on.leg_side_force.si(), on.coil_over.si());
    assert_relative_eq!(side.hypot(leg), total.norm(), max_relative = 1e-12);
    let reach = (model.leg.top_mount.vector() - model.leg.lower_end.vector()).norm();
    assert_relative_eq!(on.leg_bending.si(), side * reach, max_relative = 1e-12);
    assert!(side > 300.0 && leg > 3e3 && on.upper_front_leg.si().is_nan());
}

proptest! {
    #[test]
    fn every_load_reaches_the_body_whole(
        x in -1e4..1e4_f64, y in -1e4..1e4_f64, z in -1e4..2e4_f64, x_height in 0.0..0.4_f64, y_height in 0.0..0.3_f64,
        drop_link in -3e3..3e3_f64, travel in -0.05..0.05_f64, rack in -0.03..0.03_f64, which in 0..13_usize,
    ) {
        let on = |has_bar: bool| load(x, x_height, y, y_height, z, if has_bar { drop_link } else { 0.0 });
        if which < 7 {
            let model = wishbone(which);
            check(&model.prepare().unwrap(), travel, rack, on(which.is_multiple_of(2)));
        } else {
            check(&strut(which - 7).prepare().unwrap(), travel, rack, on(true));
        }
    }
}
