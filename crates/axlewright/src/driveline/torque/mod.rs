//! Torques from the engine to the ground, and the parts that carry them.

mod axle_shaft_torque;
mod clutch_capacity;
pub(super) mod demand;
mod grip_torque;
pub(super) mod rating;
pub(super) mod torque_path;
mod wheel_torque;

pub use axle_shaft_torque::{Differential, axle_shaft_torque_locked, axle_shaft_torque_open};
pub use clutch_capacity::{
    clamp_load_for_capacity, clutch_capacity_uniform_pressure, clutch_capacity_uniform_wear,
};
pub use grip_torque::{grip_torque, grip_torque_upstream};
pub use rating::{RatingKind, Side};
pub use torque_path::{Grip, Part, Pull, TorquePath, Weakest};
pub use wheel_torque::wheel_torque;
