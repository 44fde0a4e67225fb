//! Air: the standard atmosphere, moist air, and pressures against the air around.
//!
//! Symbols: `H` geopotential altitude (m), `z` geometric altitude (m), `T` temperature (K), `p` pressure (Pa), `d` density
//! (kg/m³). The two altitudes differ by 0.02 % at 1500 m; mixing them costs 0.3 % of the pressure at 11 km.

mod geopotential_altitude;
mod moist_density;
#[cfg(feature = "sheet")]
mod sheet;
mod standard_atmosphere;
mod station_pressure;
mod station_pressure_from_altimeter_setting;

pub use geopotential_altitude::geopotential_altitude;
pub use moist_density::moist_density;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use standard_atmosphere::{standard_density, standard_pressure};
pub use station_pressure::{absolute_pressure, gauge_pressure};
pub use station_pressure_from_altimeter_setting::station_pressure_from_altimeter_setting;
