//! Driveline: ratios, speeds and torque from the crankshaft to the ground.
//!
//! Symbols: `w` engine speed (rad/s), `v` road speed (m/s), `i_g` gear ratio and `i_f` final drive, input over output
//! speed (no unit), `r` effective rolling radius (m), `T` torque (N·m), `e` efficiency (no unit).
//!
//! Speed uses the effective rolling radius, force the loaded radius. Left out here: slip of the tyre, of a clutch and of a converter.

mod engine_speed;
mod road_speed;
mod torque_path;
mod wheel_torque;

pub use engine_speed::engine_speed;
pub use road_speed::road_speed;
pub use torque_path::{Part, Rating, RatingKind, Side, TorquePath, Weakest};
pub use wheel_torque::wheel_torque;
