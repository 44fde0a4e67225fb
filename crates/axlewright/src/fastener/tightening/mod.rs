//! Tightening: torque, preload, and the bounds of the preload.

mod bounds;
mod embedding_loss;
mod nut_factor;
mod thread_torque;
mod tightening_torque;

pub use bounds::{Lubricant, PreloadBounds, Tightening, TighteningMethod, TorqueChoice};
pub use embedding_loss::embedding_loss;
pub use nut_factor::{nut_factor, preload_by_nut_factor, torque_by_nut_factor};
pub use thread_torque::{thread_torque, tightening_stress};
pub use tightening_torque::{preload_from_torque, tightening_torque};

pub(super) use thread_torque::{equivalent, stresses};
pub(super) use tightening_torque::thread_lever;
