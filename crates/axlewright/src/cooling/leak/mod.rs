//! The pressure test of the cooling system: volumes, energy, and what leaked.

mod expansion_volume;
mod header_air_volume;
mod leaked_volume;
pub(super) mod pressure_decay;
mod pressure_decay_least_pressure;
mod pressure_decay_tight_pressure;
mod pressure_decay_tight_pressure_over_coolant;
mod pressure_test_energy;

pub use expansion_volume::{ethylene_glycol_expansion_volume, propylene_glycol_expansion_volume};
pub use header_air_volume::header_air_volume;
pub use leaked_volume::{leaked_air_volume, leaked_coolant_volume};
pub use pressure_decay::{PressureDecay, PressureDecayFindings, Trapped};
pub use pressure_decay_least_pressure::pressure_decay_least_pressure;
pub use pressure_decay_tight_pressure::pressure_decay_tight_pressure;
pub use pressure_decay_tight_pressure_over_coolant::pressure_decay_tight_pressure_over_coolant;
pub use pressure_test_energy::{air_test_energy, water_test_energy};
