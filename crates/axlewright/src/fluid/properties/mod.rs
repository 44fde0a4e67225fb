//! Density, expansion, heat and viscosity of glycol and water.

mod density;
mod dynamic_viscosity;
mod expansion;
mod expansion_coefficient;
mod melinder;
mod specific_heat;
mod thermal_conductivity;

pub use density::{ethylene_glycol_density, propylene_glycol_density};
pub use dynamic_viscosity::{ethylene_glycol_dynamic_viscosity, propylene_glycol_dynamic_viscosity};
pub use expansion::{ethylene_glycol_expansion, propylene_glycol_expansion};
pub use expansion_coefficient::{
    ethylene_glycol_expansion_coefficient, propylene_glycol_expansion_coefficient,
};
pub use specific_heat::{ethylene_glycol_specific_heat, propylene_glycol_specific_heat};
pub use thermal_conductivity::{ethylene_glycol_thermal_conductivity, propylene_glycol_thermal_conductivity};
