//! Roll stiffness, roll gradient, and how the axles share the load transfer.

mod axle_load_transfer;
mod bar_rate_for_roll_stiffness;
mod bar_roll_stiffness;
mod front_transfer_share;
mod independent_roll_stiffness;
mod live_axle_roll_stiffness;
mod pair;
mod roll_arm;
mod roll_balance;
mod roll_gradient;
mod roll_stiffness_for_gradient;
mod roll_stiffness_over_tyres;
#[cfg(feature = "sheet")]
pub(super) mod rules;
#[cfg(feature = "sheet")]
pub(super) mod steer_rules;
mod tyre_roll_stiffness;

pub use axle_load_transfer::{AxleLoadTransfer, axle_load_transfer};
pub use bar_rate_for_roll_stiffness::bar_rate_for_roll_stiffness;
pub use bar_roll_stiffness::bar_roll_stiffness;
pub use front_transfer_share::front_transfer_share;
pub use independent_roll_stiffness::independent_roll_stiffness;
pub use live_axle_roll_stiffness::live_axle_roll_stiffness;
pub use roll_arm::roll_arm;
pub use roll_balance::{Balance, Bars, InTurn, RollAxle, RollBalance};
pub use roll_gradient::roll_gradient;
pub use roll_stiffness_for_gradient::roll_stiffness_for_gradient;
pub use roll_stiffness_over_tyres::roll_stiffness_over_tyres;
pub use tyre_roll_stiffness::tyre_roll_stiffness;
