//! Mass and balance.
//!
//! Axes as ISO 8855: x forward, y left, z up. Symbols: `m` mass (kg), `m_1` ... `m_4` readings of the four scales (kg), `l` wheelbase (m), `b_f`
//! and `b_r` or `t` track (m), `a` distance of the centre of gravity behind the front axle and `h` its height above the ground (m), `a_x` and
//! `a_y` acceleration forward and to the left (m/s²).
//!
//! Left out here: how the axles share the load that moves in a turn. That belongs to the suspension.

mod axle_loads_under_acceleration;
mod lateral_load_transfer;
mod longitudinal_load_transfer;
mod parts_list;
mod raised_axle;
mod raised_axle_height;
mod raised_axle_height_over_tyres;
#[cfg(feature = "sheet")]
mod sheet;
mod sprung_centre;
mod sprung_mass;
mod static_axle_loads;
mod weight_distribution;

pub use axle_loads_under_acceleration::axle_loads_under_acceleration;
pub use lateral_load_transfer::lateral_load_transfer;
pub use longitudinal_load_transfer::longitudinal_load_transfer;
pub use parts_list::{MassPart, MassTotal, PartsList};
pub use raised_axle::{CentreHeight, LiftAt, RaisedAxle, Suspension};
pub use raised_axle_height::raised_axle_height;
pub use raised_axle_height_over_tyres::raised_axle_height_over_tyres;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use sprung_centre::{SprungCentre, sprung_centre};
pub use sprung_mass::sprung_mass;
pub use static_axle_loads::{AxleLoads, static_axle_loads};
pub use weight_distribution::{WeightDistribution, weight_distribution};
