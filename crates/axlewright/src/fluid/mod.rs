//! Fluids: water, and its mixtures with glycol.
//!
//! Symbols: `p` absolute pressure (Pa), `T` temperature (K), `w` mass fraction of glycol (no unit), `x_w` and `x_g` mole fractions of
//! water and glycol (no unit).
//!
//! Boiling means the bubble point of water and pure glycol, without inhibitors. Left out here: the cap and the cooling system
//! (see `cooling`).

mod freezing;
mod glycol_boiling;
mod water;

pub use freezing::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
pub use glycol_boiling::{ethylene_glycol_boiling_temperature, propylene_glycol_boiling_temperature};
pub use water::{water_boiling_temperature, water_saturation_pressure};
