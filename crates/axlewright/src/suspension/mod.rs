//! Suspension: roll, and how the axles share what a turn moves.
//!
//! Axes, signs and terms as ISO 8855 and SAE J670: x forward, y left, z up; heights are above the ground. The body's roll angle is given
//! out of the turn, which is positive about x in a left turn. Camber is positive where the top of the wheel leans outwards, toe is positive
//! where the front of the wheel points inwards (toe-in), caster is positive where the top of the steering axis leans rearwards. Roll centre: the kinematic
//! one, at ride height, in the transverse plane through the wheel centres. Roll gradient: body to ground, tyres included.
//!
//! Symbols: `k` rate of a wheel, spring, bar end or tyre (N/m), `K` roll stiffness (N·m/rad), `r` motion ratio, `t` track (m), `m_s` sprung and
//! `m_u` unsprung mass (kg), `z` height of a roll centre and `h_1` height of the sprung mass over the roll axis (m), `phi` roll angle (rad),
//! `a_y` lateral acceleration (m/s²), `G` roll gradient (rad·s²/m).
//!
//! Left out here: a frame that twists, and the change of tracks and roll centres with roll.

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
