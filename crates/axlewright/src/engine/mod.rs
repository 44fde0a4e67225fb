//! Engine: torque, power and the curve between them.
//!
//! Symbols: `T` torque at the crankshaft (N·m), `P` power (W), `w` engine speed (rad/s).

mod power;
mod torque;
mod torque_curve;

pub use power::power;
pub use torque::torque;
pub use torque_curve::{CurvePeaks, CurvePoint, TorqueCurve};
