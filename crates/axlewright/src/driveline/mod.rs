//! Driveline: ratios, speeds and torque from the crankshaft to the ground.
//!
//! Symbols: `w` engine speed (rad/s), `v` road speed (m/s), `i_g` gear ratio and `i_f` final drive, input over output
//! speed (no unit), `r` effective rolling radius and `r_l` loaded radius (m), `T` torque (N·m), `e` efficiency (no unit), `F` clamp load or axle load (N),
//! `f` friction coefficient of a facing and `m` of the tyre on the ground (no unit), `i_t` range of the transfer case and `i_c` crawl ratio (no unit).
//!
//! Speed uses the effective rolling radius, force the loaded radius. Left out here: slip of the tyre, of a clutch and of a converter.

mod axle_ratio_by_turns;
mod axle_shaft_torque;
mod clutch_capacity;
mod crawl_ratio;
mod crawl_speed;
mod demand;
mod engine_speed;
mod engine_speed_after_shift;
mod final_drive_for_cruise;
mod gear_step;
mod gearbox;
mod grip_torque;
mod road_speed;
#[cfg(feature = "sheet")]
mod sheet;
mod torque_path;
mod tyre_diameter_for_cruise;
mod wheel_torque;

pub use axle_ratio_by_turns::{axle_ratio_by_turns, axle_ratio_one_wheel_held};
pub use axle_shaft_torque::{Differential, axle_shaft_torque_locked, axle_shaft_torque_open};
pub use clutch_capacity::{
    clamp_load_for_capacity, clutch_capacity_uniform_pressure, clutch_capacity_uniform_wear,
};
pub use crawl_ratio::{crawl_ratio, crawl_ratio_for_speed, first_gear_for_crawl};
pub use crawl_speed::crawl_speed;
pub use engine_speed::engine_speed;
pub use engine_speed_after_shift::engine_speed_after_shift;
pub use final_drive_for_cruise::final_drive_for_cruise;
pub use gear_step::gear_step;
pub use gearbox::{CruiseChoice, Gear, Gearbox, LargestGap, TransferRange};
pub use grip_torque::{grip_torque, grip_torque_upstream};
pub use road_speed::road_speed;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use torque_path::{Grip, Part, Pull, RatingKind, Side, TorquePath, Weakest};
pub use tyre_diameter_for_cruise::tyre_diameter_for_cruise;
pub use wheel_torque::wheel_torque;
