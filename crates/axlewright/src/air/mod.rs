//! Air: the standard atmosphere, moist air, and pressures against the air around.
//!
//! Symbols: `H` geopotential altitude (m), `z` geometric altitude (m), `T` temperature (K), `p` pressure (Pa), `d` density
//! (kg/m³). The two altitudes differ by 0.02 % at 1500 m; mixing them costs 0.3 % of the pressure at 11 km.

mod altimeter_setting_from_station_pressure;
mod density_altitude;
mod geopotential_altitude;
mod moist_density;
mod pressure_altitude;
#[cfg(feature = "sheet")]
mod sheet;
mod standard_atmosphere;
mod station_pressure;
mod station_pressure_from_altimeter_setting;

pub use altimeter_setting_from_station_pressure::altimeter_setting_from_station_pressure;
pub use density_altitude::density_altitude;
pub use geopotential_altitude::{geometric_altitude, geopotential_altitude};
pub use moist_density::moist_density;
pub use pressure_altitude::pressure_altitude;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use standard_atmosphere::{standard_density, standard_pressure};
pub use station_pressure::{absolute_pressure, gauge_pressure};
pub use station_pressure_from_altimeter_setting::station_pressure_from_altimeter_setting;
