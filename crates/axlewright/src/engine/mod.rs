//! Engine: torque, power and the curve between them; size, load and charge.
//!
//! Symbols: `T` torque at the crankshaft (N·m), `P` power (W), `w` engine speed (rad/s), `d` bore and `s` stroke (m), `V` displacement
//! (m³), `p` pressure (Pa), `R` pressure ratio (no unit), `e` efficiency (no unit).

mod boost_pressure_ratio;
mod compressor_outlet_temperature;
mod displacement;
mod mean_effective_pressure;
mod mean_piston_speed;
mod power;
#[cfg(feature = "sheet")]
mod sheet;
mod torque;
mod torque_curve;
mod wheel_power;

pub use crate::renamed::engine::*;
pub use boost_pressure_ratio::boost_pressure_ratio;
pub use compressor_outlet_temperature::compressor_outlet_temperature;
pub use displacement::displacement;
pub use mean_effective_pressure::{mean_effective_pressure_four_stroke, mean_effective_pressure_two_stroke};
pub use mean_piston_speed::mean_piston_speed;
pub use power::power;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
#[cfg(feature = "sheet")]
pub(crate) use sheet::{CURVE, Written};
pub use torque::torque;
pub use torque_curve::{CurveBand, CurvePeaks, CurvePoint, TorqueCurve};
pub use wheel_power::{crank_power, wheel_power};
