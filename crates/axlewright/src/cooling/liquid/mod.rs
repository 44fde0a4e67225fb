//! The coolant: mixing it, its boiling temperature and margins.

pub(super) mod ambient;
pub(super) mod boiling_altitude;
pub(super) mod bounds;
pub(super) mod coolant;
pub(super) mod mix;
pub(super) mod pump_inlet_margin;

pub use boiling_altitude::{
    ethylene_glycol_boiling_altitude, propylene_glycol_boiling_altitude, water_boiling_altitude,
};
pub use coolant::{BoilingMargin, Coolant, Liquid, MarginOpen};
pub use mix::{Exchange, FreshFill, Mix, StrengthBy};
pub use pump_inlet_margin::{
    ethylene_glycol_pump_inlet_margin, propylene_glycol_pump_inlet_margin, water_pump_inlet_margin,
};
