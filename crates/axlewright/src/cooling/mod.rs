//! Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read.
//!
//! Symbols: `p` absolute pressure (Pa), `p_cap` gauge pressure of the cap (Pa), `p_a` absolute pressure of the air around (Pa),
//! `p_w` and `p_g` vapour pressure of water and glycol (Pa), `x_w` and `x_g` their mole fractions (no unit), `T` temperature
//! (K), `w` mass fraction of glycol (no unit).
//!
//! A cap's rating is a gauge pressure; the ambient is the *station* pressure, not the one that a weather report reduces to sea
//! level. Left out here: flow, heat and radiator.

mod ambient;
mod boiling_altitude;
mod cap_pressure;
mod cap_test;
mod coolant;
mod expansion_volume;
mod header_air_volume;
mod leak_down;
mod leak_down_least_pressure;
mod leak_down_pressure;
mod leak_down_pressure_over_coolant;
mod leaked_volume;
mod mix;
mod pressure_test_energy;
mod pump_inlet_margin;
#[cfg(feature = "sheet")]
mod sheet;

pub use boiling_altitude::{
    ethylene_glycol_boiling_altitude, propylene_glycol_boiling_altitude, water_boiling_altitude,
};
pub use cap_pressure::{ethylene_glycol_cap_pressure, propylene_glycol_cap_pressure, water_cap_pressure};
pub use cap_test::{CapFindings, CapTest};
pub use coolant::{BoilingMargin, Coolant, Liquid};
pub use expansion_volume::{ethylene_glycol_expansion_volume, propylene_glycol_expansion_volume};
pub use header_air_volume::header_air_volume;
pub use leak_down::{LeakDown, LeakDownFindings, Trapped};
pub use leak_down_least_pressure::leak_down_least_pressure;
pub use leak_down_pressure::leak_down_pressure;
pub use leak_down_pressure_over_coolant::leak_down_pressure_over_coolant;
pub use leaked_volume::{leaked_air_volume, leaked_coolant_volume};
pub use mix::{Exchange, FreshFill, Mix, StrengthBy};
pub use pressure_test_energy::{air_test_energy, water_test_energy};
pub use pump_inlet_margin::{
    ethylene_glycol_pump_inlet_margin, propylene_glycol_pump_inlet_margin, water_pump_inlet_margin,
};
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
