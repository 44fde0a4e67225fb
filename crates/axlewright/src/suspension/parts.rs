//! What the linkages are made of: points, arms, rods, wheel, coil-over, anti-roll bar.

use super::vector::{Vector, vector};
use crate::base::document::Value;
use crate::units::{Angle, Force, Length, LinearStiffness, Quantity, Ratio};
use crate::{Error, Result, valid};

/// A point in the body's axes.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `x`, `y` and `z`"))]
pub struct Point {
    /// Forward.
    pub x: Value<Length>,
    /// To the left.
    pub y: Value<Length>,
    /// Up.
    pub z: Value<Length>,
}

impl Point {
    /// A point that was not read from text.
    pub const fn new(x: Length, y: Length, z: Length) -> Point {
        Point { x: Value::new(x), y: Value::new(y), z: Value::new(z) }
    }
    pub(super) fn vector(&self) -> Vector {
        vector(self.x.quantity.si(), self.y.quantity.si(), self.z.quantity.si())
    }
    /// The point moved by a vector.
    pub(super) fn moved(&self, by: Vector) -> Point {
        let [x, y, z] = [(&self.x, by.x), (&self.y, by.y), (&self.z, by.z)]
            .map(|(from, by)| Length::from_si(from.quantity.si() + by));
        Point::new(x, y, z)
    }
    pub(super) fn check(&self, part: &str, name: &str) -> Result<()> {
        within(
            || format!("{part}.{name}"),
            || {
                let (x, y, z) = (self.x.quantity, self.y.quantity, self.z.quantity);
                valid! {
                    x: (-100) <= .. <= 100 ; "common practice, no source: no vehicle is longer than 100 m";
                    y: (-100) <= .. <= 100 ; "common practice, no source: no vehicle is wider than 100 m";
                    z: (-100) <= .. <= 100 ; "common practice, no source: no vehicle is higher than 100 m";
                }
                Ok(())
            },
        )
    }
}

/// A refusal under the key of the part in which it arose.
pub(super) fn within(key: impl FnOnce() -> String, check: impl FnOnce() -> Result<()>) -> Result<()> {
    check().map_err(|error| refused(&key(), error.to_string()))
}

pub(super) fn refused(key: &str, message: String) -> Error {
    Error::Document { line: 0, key: key.to_owned(), message }
}

/// An arm on two pivots that carries a ball joint.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `front_pivot`, `rear_pivot` and `ball_joint`"))]
pub struct Arm {
    /// On the body, the front one.
    pub front_pivot: Point,
    /// On the body, the rear one.
    pub rear_pivot: Point,
    /// On the upright.
    pub ball_joint: Point,
}

/// A rod from the rack to the steering arm; of an unsteered wheel the rod that holds its toe.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `inner` and `outer`"))]
pub struct TieRod {
    /// On the rack in its middle; it moves along y.
    pub inner: Point,
    /// On the steering arm.
    pub outer: Point,
}

/// A wheel at ride height.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `centre`, `camber`, `toe` and `loaded_radius`")
)]
pub struct Wheel {
    /// Where its axis meets its middle plane.
    pub centre: Point,
    /// Positive with the top outboard.
    pub camber: Value<Angle>,
    /// Of this wheel, positive with its front inboard.
    pub toe: Value<Angle>,
    /// Centre to ground under load, in the wheel's plane.
    pub loaded_radius: Value<Length>,
}

/// End of the vehicle at which an axle stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Axle {
    /// The front one.
    Front,
    /// The rear one.
    Rear,
}

/// What carries the lower end of a coil-over or of a drop link.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Carrier {
    /// The lower arm.
    LowerArm,
    /// The upper arm.
    UpperArm,
    /// The upright.
    Upright,
}

/// A spring on a damper, between the body and the linkage.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `body_eye`, `lower_eye`, `carried_by` and, where they are known, `spring` and `damper`"
    )
)]
pub struct CoilOver {
    /// On the body.
    pub body_eye: Point,
    /// On what carries it.
    pub lower_eye: Point,
    /// What carries the lower eye.
    pub carried_by: Carrier,
    /// The coil.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<CoilSpring>,
    /// The damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<Damper>,
}

/// The coil of a coil-over.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `rate`, `free_length`, `solid_length` and `seat_offset`")
)]
pub struct CoilSpring {
    /// Along its own axis.
    pub rate: Value<LinearStiffness>,
    /// Unloaded.
    pub free_length: Value<Length>,
    /// Block length and the gaps that must stay open.
    pub solid_length: Value<Length>,
    /// Between the eyes less between the seats: what the adjuster sets.
    pub seat_offset: Value<Length>,
}

/// The damper of a coil-over.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `open_length`, `closed_length` and, where it is known, `gas_force`")
)]
pub struct Damper {
    /// Between the eyes, fully open.
    pub open_length: Value<Length>,
    /// Between the eyes, fully closed.
    pub closed_length: Value<Length>,
    /// With which its gas pushes the eyes apart, taken as constant.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gas_force: Option<Value<Force>>,
}

/// One end of an anti-roll bar that turns about an axis along y, on its drop link.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `link_eye`, `carried_by`, `lever_end` and `lever_pivot`")
)]
pub struct AntiRollBar {
    /// Of the drop link, on what carries it.
    pub link_eye: Point,
    /// What carries that.
    pub carried_by: Carrier,
    /// Of the bar's lever, where the drop link meets it.
    pub lever_end: Point,
    /// Any point of the axis about which the bar turns.
    pub lever_pivot: Point,
}

/// What braking asks of the vehicle; the brakes are outboard.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `axle_share`, `centre_of_gravity_height` and `wheelbase`")
)]
pub struct Braking {
    /// Of the whole braking force, that this axle has.
    pub axle_share: Value<Ratio>,
    /// Above the ground, of the vehicle at ride height.
    pub centre_of_gravity_height: Value<Length>,
    /// Of the vehicle.
    pub wheelbase: Value<Length>,
}

/// How far each joint may lean from where it stands at ride height.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with, where they are known, `upper_ball`, `lower_ball`, `tie_rod_outer` and `tie_rod_inner`"
    )
)]
pub struct JointLimits {
    /// Of the ball joint of the upper arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub upper_ball: Option<Value<Angle>>,
    /// Of the ball joint of the lower arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_ball: Option<Value<Angle>>,
    /// Of the outer joint of the tie rod.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tie_rod_outer: Option<Value<Angle>>,
    /// Of the inner joint of the tie rod.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tie_rod_inner: Option<Value<Angle>>,
}

impl Wheel {
    pub(super) fn check(&self) -> Result<()> {
        self.centre.check("wheel", "centre")?;
        within(
            || "wheel".to_owned(),
            || {
                let (camber, toe, loaded_radius) =
                    (self.camber.quantity, self.toe.quantity, self.loaded_radius.quantity);
                valid! {
                    camber: (-0.8) <= .. <= 0.8 ; "common practice, no source: wheels stand within 45 deg";
                    toe: (-0.8) <= .. <= 0.8 ; "common practice, no source: wheels point forward within 45 deg at ride height";
                    loaded_radius: 0.01 <= .. <= 10 ; "common practice, no source: wheels are between 20 mm and 20 m high";
                }
                if self.centre.y.quantity.si() > 0.0 {
                    Ok(())
                } else {
                    Err(refused("centre", "a left wheel is wanted: y is greater than 0".to_owned()))
                }
            },
        )
    }
    /// Direction of its axis at ride height, outboard.
    pub(super) fn axis(&self) -> Vector {
        let ((camber_sine, camber_cosine), (toe_sine, toe_cosine)) =
            (self.camber.quantity.si().sin_cos(), self.toe.quantity.si().sin_cos());
        vector(toe_sine * camber_cosine, toe_cosine * camber_cosine, -camber_sine)
    }
}

impl CoilOver {
    pub(super) fn check(&self) -> Result<()> {
        self.body_eye.check("coil_over", "body_eye")?;
        self.lower_eye.check("coil_over", "lower_eye")?;
        if let Some(spring) = &self.spring {
            within(
                || "coil_over.spring".to_owned(),
                || {
                    let (rate, free_length) = (spring.rate.quantity, spring.free_length.quantity);
                    let (solid_length, seat_offset) =
                        (spring.solid_length.quantity, spring.seat_offset.quantity);
                    valid! {
                        rate: 1 <= .. <= 1e9 ; "common practice, no source: springs lie between 1 N/m and 1 GN/m";
                        free_length: 0.0001 <= .. <= 100 ; "common practice, no source: springs are between 0.1 mm and 100 m long";
                        solid_length: 0.00001 <= .. <= 100 ; "common practice, no source: springs are between 10 µm and 100 m long when solid";
                        free_length > solid_length ; "definition: a compression spring can be compressed";
                        seat_offset: (-100) <= .. <= 100 ; "common practice, no source: no coil-over is longer than 100 m";
                    }
                    Ok(())
                },
            )?;
        }
        if let Some(damper) = &self.damper {
            within(
                || "coil_over.damper".to_owned(),
                || {
                    let (open_length, closed_length) =
                        (damper.open_length.quantity, damper.closed_length.quantity);
                    let gas_force = damper.gas_force.as_ref().map_or(Force::from_si(0.0), |on| on.quantity);
                    valid! {
                        open_length: 0.0001 <= .. <= 100 ; "common practice, no source: dampers are between 0.1 mm and 100 m long";
                        closed_length: 0.0001 <= .. <= 100 ; "common practice, no source: dampers are between 0.1 mm and 100 m long";
                        open_length > closed_length ; "definition: a damper has a stroke";
                        gas_force: 0 <= .. <= 1e6 ; "definition: gas pushes; common practice, no source: at most 1 MN";
                    }
                    Ok(())
                },
            )?;
        }
        Ok(())
    }
}

impl Braking {
    pub(super) fn check(&self) -> Result<()> {
        within(
            || "braking".to_owned(),
            || {
                let (axle_share, centre_of_gravity_height, wheelbase) = (
                    self.axle_share.quantity,
                    self.centre_of_gravity_height.quantity,
                    self.wheelbase.quantity,
                );
                valid! {
                    axle_share: 0 <= .. <= 1 ; "definition: a share of the whole braking force";
                    centre_of_gravity_height: 0.01 <= .. <= 100 ; "common practice, no source: between 10 mm and 100 m above the ground";
                    wheelbase: 0.01 <= .. <= 100 ; "common practice, no source: between 10 mm and 100 m";
                }
                Ok(())
            },
        )
    }
}

impl JointLimits {
    pub(super) fn each(&self) -> [Option<f64>; 4] {
        [&self.upper_ball, &self.lower_ball, &self.tie_rod_outer, &self.tie_rod_inner]
            .map(|limit| limit.as_ref().map(|limit| limit.quantity.si()))
    }
    pub(super) fn check(&self) -> Result<()> {
        let of = |limit: &Option<Value<Angle>>| limit.as_ref().map_or(Angle::from_si(0.0), |on| on.quantity);
        within(
            || "joint_limits".to_owned(),
            || {
                let (upper_ball, lower_ball) = (of(&self.upper_ball), of(&self.lower_ball));
                let (tie_rod_outer, tie_rod_inner) = (of(&self.tie_rod_outer), of(&self.tie_rod_inner));
                valid! {
                    upper_ball: 0 <= .. <= 1.6 ; "common practice, no source: no joint leans more than a right angle";
                    lower_ball: 0 <= .. <= 1.6 ; "common practice, no source: no joint leans more than a right angle";
                    tie_rod_outer: 0 <= .. <= 1.6 ; "common practice, no source: no joint leans more than a right angle";
                    tie_rod_inner: 0 <= .. <= 1.6 ; "common practice, no source: no joint leans more than a right angle";
                }
                Ok(())
            },
        )
    }
}
