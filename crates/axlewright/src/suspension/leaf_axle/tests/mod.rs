//! Leaf axles against handbooks, against each other, and against what cannot be.

mod change;
mod motion;
mod outline;
mod properties;
mod refusals;

use super::model::*;
use super::pose::*;
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
