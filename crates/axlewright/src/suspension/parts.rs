//! Parts of the linkages: points, arms, rods, wheel, coil-over, anti-roll bar.

use super::kinematics::vector::{Vector, vector};
use crate::base::document::Value;
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RotationalStiffness, Torque};
use crate::{Error, Result, valid};

/// A point in the body's axes.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `x`, `y` and `z`"))]
pub struct Point {
    /// Coordinate forward.
    pub x: Value<Length>,
    /// Coordinate to the left.
    pub y: Value<Length>,
    /// Coordinate up.
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
                    x: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is longer than 100 m";
                    y: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is wider than 100 m";
                    z: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is higher than 100 m";
                }
                Ok(())
            },
        )
    }
}

/// A refusal under the key of the part in which it arose.
pub(super) fn within(key: impl FnOnce() -> String, check: impl FnOnce() -> Result<()>) -> Result<()> {
    check().map_err(|error| error.within(&key()))
}

/// An arm on two pivots that carries a ball joint.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `front_pivot`, `rear_pivot` and `ball_joint`"))]
pub struct Arm {
    /// Front pivot, on the body.
    pub front_pivot: Point,
    /// Rear pivot, on the body.
    pub rear_pivot: Point,
    /// Ball joint, on the upright.
    pub ball_joint: Point,
}

/// A rod from the rack to the steering arm; on an unsteered wheel, the rod that holds its toe.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `inner` and `outer`"))]
pub struct TieRod {
    /// Inner joint, on the rack in its middle; it moves along y.
    pub inner: Point,
    /// Outer joint, on the steering arm.
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
    /// Centre of the wheel: intersection of its axis and its middle plane.
    pub centre: Point,
    /// Camber, positive with the top of the wheel outboard.
    pub camber: Value<Angle>,
    /// Toe of this wheel, positive with its front inboard.
    pub toe: Value<Angle>,
    /// Distance from the wheel centre to the ground under load, in the wheel's plane.
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

/// Carrier of the lower end of a coil-over or of a drop link.
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
        expecting = "a table with `body_eye`, `lower_eye`, `carried_by` and, where they are known, `spring`, `spring_seats` and `damper`"
    )
)]
pub struct CoilOver {
    /// Eye on the body.
    pub body_eye: Point,
    /// Eye on the part that carries it.
    pub lower_eye: Point,
    /// Carrier of the lower eye.
    pub carried_by: Carrier,
    /// The coil.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<CoilSpring>,
    /// Seats of a coil that is not on the damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring_seats: Option<SpringSeats>,
    /// The damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<Damper>,
}

/// The leg of a strut: a damper whose lower part is one piece with the upright.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `top_mount`, `lower_end` and, where they are known, `spring`, `spring_seats` and `damper`"
    )
)]
pub struct StrutLeg {
    /// Top mount on the body: the point about which the rod leans and turns.
    pub top_mount: Point,
    /// Any lower point, on the upright, of the axis along which the rod slides.
    pub lower_end: Point,
    /// The coil.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<CoilSpring>,
    /// Seats of a coil that is not on the damper's axis.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring_seats: Option<SpringSeats>,
    /// The damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<Damper>,
}

/// Seats of a coil with a place or a lean of its own.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `body`, `lower` and `carried_by`"))]
pub struct SpringSeats {
    /// Middle of the seat on the body.
    pub body: Point,
    /// Middle of the seat on the part that carries it.
    pub lower: Point,
    /// Carrier of the lower seat.
    pub carried_by: Carrier,
}

/// A torsion bar along the axis of an arm, held in the body at its other end.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `turned_by`, `rate` and `torque`"))]
pub struct TorsionBar {
    /// Arm that turns the bar, along whose axis it lies.
    pub turned_by: Carrier,
    /// Rate of the bar, torque over twist.
    pub rate: Value<RotationalStiffness>,
    /// Torque at ride height, positive if it carries the vehicle.
    pub torque: Value<Torque>,
}

/// The coil of a coil-over.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `rate`, `free_length`, `solid_length` and `seat_offset`")
)]
pub struct CoilSpring {
    /// Rate of the spring along its own axis.
    pub rate: Value<LinearStiffness>,
    /// Length of the unloaded spring.
    pub free_length: Value<Length>,
    /// Block length and the gaps that must stay open.
    pub solid_length: Value<Length>,
    /// Length between the eyes minus length between the seats, as the adjuster sets it. For a coil with its own seats: distance between their middles minus its length.
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
    /// Length between the eyes, fully open.
    pub open_length: Value<Length>,
    /// Length between the eyes, fully closed.
    pub closed_length: Value<Length>,
    /// Force of the gas, which pushes the eyes apart; taken as constant.
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
    /// Eye of the drop link, on its carrier.
    pub link_eye: Point,
    /// Carrier of the drop link.
    pub carried_by: Carrier,
    /// End of the bar's lever, at the drop link.
    pub lever_end: Point,
    /// Any point of the axis about which the bar turns.
    pub lever_pivot: Point,
}

/// Place of a brake.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum BrakePlace {
    /// Brake in the wheel: the upright takes its torque.
    Outboard,
    /// Brake on the body, at the inner end of a half shaft: the body takes its torque.
    Inboard,
}

/// Braking loads of the vehicle.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `axle_share`, `centre_of_gravity_height`, `wheelbase` and, where it is not outboard, `place`"
    )
)]
pub struct Braking {
    /// Share of the whole braking force at this axle.
    pub axle_share: Value<Ratio>,
    /// Height of the vehicle's centre of gravity above the ground, at ride height.
    pub centre_of_gravity_height: Value<Length>,
    /// Wheelbase of the vehicle.
    pub wheelbase: Value<Length>,
    /// Place of the brakes; outboard if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub place: Option<BrakePlace>,
}

/// Drive through half shafts from a final drive on the body; height and wheelbase are those of `braking`.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `axle_share`"))]
pub struct Driving {
    /// Share of the whole tractive force at this axle.
    pub axle_share: Value<Ratio>,
}

/// Largest lean of each joint from its place at ride height.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with, where they are known, `upper_ball` or `top_mount`, `lower_ball`, `tie_rod_outer` and `tie_rod_inner`"
    )
)]
pub struct JointLimits {
    /// Limit of the ball joint of the upper arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub upper_ball: Option<Value<Angle>>,
    /// Limit of the top mount of a strut.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub top_mount: Option<Value<Angle>>,
    /// Limit of the ball joint of the lower arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_ball: Option<Value<Angle>>,
    /// Limit of the outer joint of the tie rod.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tie_rod_outer: Option<Value<Angle>>,
    /// Limit of the inner joint of the tie rod.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tie_rod_inner: Option<Value<Angle>>,
}

impl Wheel {
    pub(super) fn check(&self) -> Result<()> {
        self.check_hanging()?;
        within(
            || "wheel".to_owned(),
            || {
                let loaded_radius = self.loaded_radius.quantity;
                valid! { loaded_radius: 0.01 <= .. <= 10 ; "plausibility limit: wheels are between 20 mm and 20 m high"; }
                Ok(())
            },
        )
    }
    /// All of it but its radius.
    pub(super) fn check_hanging(&self) -> Result<()> {
        self.centre.check("wheel", "centre")?;
        within(
            || "wheel".to_owned(),
            || {
                let (camber, toe) = (self.camber.quantity, self.toe.quantity);
                valid! {
                    camber: (-0.8) <= .. <= 0.8 ; "plausibility limit: wheels stand within 45 deg";
                    toe: (-0.8) <= .. <= 0.8 ; "plausibility limit: wheels point forward within 45 deg at ride height";
                }
                if self.centre.y.quantity.si() > 0.0 {
                    Ok(())
                } else {
                    Err(Error::document("centre", "draw the left wheel: y is greater than 0"))
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

impl CoilSpring {
    pub(super) fn check(&self, part: &str) -> Result<()> {
        within(
            || format!("{part}.spring"),
            || {
                let (rate, free_length) = (self.rate.quantity, self.free_length.quantity);
                let (solid_length, seat_offset) = (self.solid_length.quantity, self.seat_offset.quantity);
                valid! {
                    rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
                    free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
                    solid_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
                    free_length > solid_length ; "definition: a compression spring can be compressed";
                    seat_offset: (-100) <= .. <= 100 ; "plausibility limit: no coil-over is longer than 100 m";
                }
                Ok(())
            },
        )
    }
}

impl Damper {
    pub(super) fn gas(&self) -> Force {
        self.gas_force.as_ref().map_or(Force::from_si(0.0), |on| on.quantity)
    }
    pub(super) fn check(&self, part: &str) -> Result<()> {
        within(
            || format!("{part}.damper"),
            || {
                let (open_length, closed_length) = (self.open_length.quantity, self.closed_length.quantity);
                let gas_force = self.gas();
                valid! {
                    open_length: 0.0001 <= .. <= 100 ; "plausibility limit: dampers are between 0.1 mm and 100 m long";
                    closed_length: 0.0001 <= .. <= 100 ; "plausibility limit: dampers are between 0.1 mm and 100 m long";
                    open_length > closed_length ; "definition: a damper has a stroke";
                    gas_force: 0 <= .. <= 1e6 ; "definition: gas pushes; plausibility limit: at most 1 MN";
                }
                Ok(())
            },
        )
    }
}

impl TorsionBar {
    pub(super) fn check(&self) -> Result<()> {
        within(
            || "torsion_bar".to_owned(),
            || {
                let (rate, torque) = (self.rate.quantity, self.torque.quantity);
                valid! {
                    rate: 0.01 <= .. <= 1e9 ; "plausibility limit: torsion bars lie between 0.01 N·m/rad and 1 GN·m/rad";
                    torque: (-1e8) <= .. <= 1e8 ; "plausibility limit: less than 100 MN·m";
                }
                if self.turned_by == Carrier::Upright {
                    return Err(Error::document("turned_by", "a torsion bar lies along the axis of an arm"));
                }
                Ok(())
            },
        )
    }
}

impl Driving {
    pub(super) fn check(&self) -> Result<()> {
        within(
            || "driving".to_owned(),
            || {
                let axle_share = self.axle_share.quantity;
                valid! { axle_share: 0 <= .. <= 1 ; "definition: a share of the whole tractive force"; }
                Ok(())
            },
        )
    }
}

impl Braking {
    /// Refuses inboard brakes on a live axle: its brakes are in its wheels.
    pub(super) fn check_on_axle(&self) -> Result<()> {
        match self.place {
            Some(BrakePlace::Inboard) => {
                Err(Error::document("braking.place", "a live axle carries its brakes: `outboard`"))
            }
            _ => Ok(()),
        }
    }
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
                    centre_of_gravity_height: 0.01 <= .. <= 100 ; "plausibility limit: between 10 mm and 100 m above the ground";
                    wheelbase: 0.01 <= .. <= 100 ; "plausibility limit: between 10 mm and 100 m";
                }
                Ok(())
            },
        )
    }
}

impl JointLimits {
    pub(super) fn each(&self) -> [Option<f64>; 4] {
        let upper = if self.top_mount.is_some() { &self.top_mount } else { &self.upper_ball };
        [upper, &self.lower_ball, &self.tie_rod_outer, &self.tie_rod_inner]
            .map(|limit| limit.as_ref().map(|limit| limit.quantity.si()))
    }
    pub(super) fn check(&self) -> Result<()> {
        let of = |limit: &Option<Value<Angle>>| limit.as_ref().map_or(Angle::from_si(0.0), |on| on.quantity);
        within(
            || "joint_limits".to_owned(),
            || {
                let (upper_ball, top_mount) = (of(&self.upper_ball), of(&self.top_mount));
                let lower_ball = of(&self.lower_ball);
                let (tie_rod_outer, tie_rod_inner) = (of(&self.tie_rod_outer), of(&self.tie_rod_inner));
                valid! {
                    upper_ball: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle";
                    top_mount: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle";
                    lower_ball: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle";
                    tie_rod_outer: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle";
                    tie_rod_inner: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle";
                }
                Ok(())
            },
        )
    }
}
