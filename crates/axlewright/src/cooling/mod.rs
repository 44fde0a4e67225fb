//! Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read.
//!
//! Symbols: `p` absolute pressure (Pa), `p_cap` gauge pressure of the cap (Pa), `p_a` absolute pressure of the air around (Pa),
//! `p_w` and `p_g` vapour pressure of water and glycol (Pa), `x_w` and `x_g` their mole fractions (no unit), `T` temperature
//! (K), `w` mass fraction of glycol (no unit).
//!
//! A cap's rating is a gauge pressure; the ambient is the *station* pressure, not the one that a weather report reduces to sea
//! level. Left out here: flow, heat and radiator.

mod ambient;
mod cap_pressure;
mod cap_test;
mod coolant;
mod leak_down_pressure;
#[cfg(feature = "sheet")]
mod sheet;

pub use cap_pressure::{ethylene_glycol_cap_pressure, propylene_glycol_cap_pressure, water_cap_pressure};
pub use cap_test::{CapFindings, CapTest};
pub use coolant::{BoilingMargin, Coolant, Liquid, StrengthBy};
pub use leak_down_pressure::leak_down_pressure;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
