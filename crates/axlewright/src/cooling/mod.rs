//! Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read.
//!
//! Symbols: `p` absolute pressure (Pa), `p_cap` gauge pressure of the cap (Pa), `p_a` absolute pressure of the air around (Pa),
//! `p_w` and `p_g` vapour pressure of water and glycol (Pa), `x_w` and `x_g` their mole fractions (no unit), `T` temperature
//! (K), `w` mass fraction of glycol (no unit).
//!
//! A cap's rating is a gauge pressure; the ambient is the *station* pressure, not the one that a weather report reduces to sea
//! level. Left out here: flow, heat and radiator.

mod cap;
mod leak;
mod liquid;
#[cfg(feature = "sheet")]
mod rules;
#[cfg(feature = "sheet")]
mod sheet;

pub use crate::renamed::cooling::*;
pub use cap::*;
pub use leak::*;
pub use liquid::*;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
