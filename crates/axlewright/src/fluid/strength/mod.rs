//! Strength and freezing point of a mix of glycol and water.

mod concentrate_share;
mod freezing;
mod mass_fraction;
mod mass_fraction_for_freezing;

pub use concentrate_share::{ethylene_glycol_concentrate_share, propylene_glycol_concentrate_share};
pub use freezing::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
pub use mass_fraction::{ethylene_glycol_mass_fraction, propylene_glycol_mass_fraction};
pub use mass_fraction_for_freezing::{
    ethylene_glycol_mass_fraction_for_freezing, propylene_glycol_mass_fraction_for_freezing,
};
