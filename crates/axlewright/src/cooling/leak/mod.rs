//! The pressure test of the cooling system: volumes, energy, and what leaked.

mod expansion_volume;
mod header_air_volume;
pub(super) mod leak_down;
mod leak_down_least_pressure;
mod leak_down_pressure;
mod leak_down_pressure_over_coolant;
mod leaked_volume;
mod pressure_test_energy;

pub use expansion_volume::{ethylene_glycol_expansion_volume, propylene_glycol_expansion_volume};
pub use header_air_volume::header_air_volume;
pub use leak_down::{LeakDown, LeakDownFindings, Trapped};
pub use leak_down_least_pressure::leak_down_least_pressure;
pub use leak_down_pressure::leak_down_pressure;
pub use leak_down_pressure_over_coolant::leak_down_pressure_over_coolant;
pub use leaked_volume::{leaked_air_volume, leaked_coolant_volume};
pub use pressure_test_energy::{air_test_energy, water_test_energy};
