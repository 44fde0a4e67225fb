//! Speeds and ratios.

mod axle_ratio_by_turns;
mod crawl_ratio;
mod crawl_speed;
mod engine_speed;
mod engine_speed_after_shift;
mod final_drive_for_cruise;
mod gear_step;
mod gearbox;
mod road_speed;
mod tyre_diameter_for_cruise;

pub use axle_ratio_by_turns::{axle_ratio_by_turns, axle_ratio_one_wheel_held};
pub use crawl_ratio::{crawl_ratio, crawl_ratio_for_speed, first_gear_for_crawl};
pub use crawl_speed::crawl_speed;
pub use engine_speed::engine_speed;
pub use engine_speed_after_shift::engine_speed_after_shift;
pub use final_drive_for_cruise::final_drive_for_cruise;
pub use gear_step::gear_step;
pub use gearbox::{CruiseChoice, Gear, Gearbox, LargestGap, TransferRange};
pub use road_speed::road_speed;
pub use tyre_diameter_for_cruise::tyre_diameter_for_cruise;
