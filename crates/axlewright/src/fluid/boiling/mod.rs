//! Boiling temperatures and vapour pressures.

mod glycol_boiling;
mod glycol_boiling_pressure;
mod water;

pub use glycol_boiling::{ethylene_glycol_boiling_temperature, propylene_glycol_boiling_temperature};
pub use glycol_boiling_pressure::{ethylene_glycol_boiling_pressure, propylene_glycol_boiling_pressure};
pub use water::{water_boiling_temperature, water_saturation_pressure};
