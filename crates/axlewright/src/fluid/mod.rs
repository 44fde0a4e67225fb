//! Fluids: water, and its mixtures with glycol.
//!
//! Symbols: `p` absolute pressure (Pa), `T` temperature (K), `w` mass fraction of glycol (no unit), `x_w` and `x_g` mole fractions of
//! water and glycol (no unit), `d` density (kg/m³), `c` specific heat (J/(kg·K)), `mu` dynamic viscosity (Pa·s), `k` thermal
//! conductivity (W/(m·K)), `a` thermal expansion coefficient (1/K), `f` share by volume and `s` share by mass (no unit).
//!
//! Boiling means the bubble point of water and pure glycol, without inhibitors. The cap and the cooling system are left out here
//! (see `cooling`).

mod concentrate_share;
mod density;
mod dynamic_viscosity;
mod expansion;
mod expansion_coefficient;
mod freezing;
mod glycol_boiling;
mod glycol_boiling_pressure;
mod mass_fraction;
mod mass_fraction_for_freezing;
mod melinder;
mod specific_heat;
mod thermal_conductivity;
mod water;

pub use concentrate_share::{ethylene_glycol_concentrate_share, propylene_glycol_concentrate_share};
pub use density::{ethylene_glycol_density, propylene_glycol_density};
pub use dynamic_viscosity::{ethylene_glycol_dynamic_viscosity, propylene_glycol_dynamic_viscosity};
pub use expansion::{ethylene_glycol_expansion, propylene_glycol_expansion};
pub use expansion_coefficient::{
    ethylene_glycol_expansion_coefficient, propylene_glycol_expansion_coefficient,
};
pub use freezing::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
pub use glycol_boiling::{ethylene_glycol_boiling_temperature, propylene_glycol_boiling_temperature};
pub use glycol_boiling_pressure::{ethylene_glycol_boiling_pressure, propylene_glycol_boiling_pressure};
pub use mass_fraction::{ethylene_glycol_mass_fraction, propylene_glycol_mass_fraction};
pub use mass_fraction_for_freezing::{
    ethylene_glycol_mass_fraction_for_freezing, propylene_glycol_mass_fraction_for_freezing,
};
pub use specific_heat::{ethylene_glycol_specific_heat, propylene_glycol_specific_heat};
pub use thermal_conductivity::{ethylene_glycol_thermal_conductivity, propylene_glycol_thermal_conductivity};
pub use water::{water_boiling_temperature, water_saturation_pressure};
