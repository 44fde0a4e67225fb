//! Mass and balance.
//!
//! Axes as ISO 8855: x forward, y left, z up. Symbols: `m` mass (kg), `m_1` ... `m_4` readings of the four scales (kg), `l` wheelbase (m), `b_f`
//! and `b_r` or `t` track (m), `a` distance of the centre of gravity behind the front axle and `h` its height above the ground (m), `a_x` and
//! `a_y` acceleration forward and to the left (m/s²).
//!
//! Left out here: how the axles share the load that moves in a turn. That belongs to the suspension.

mod centre;
mod loads;
mod parts_list;
#[cfg(feature = "sheet")]
mod sheet;

pub use crate::renamed::mass::*;
pub use centre::*;
pub use loads::*;
pub use parts_list::{MassPart, MassTotal, PartsList};
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
