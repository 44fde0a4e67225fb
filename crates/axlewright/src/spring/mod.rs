//! Springs, wheel rate and dampers.
//!
//! Symbols: `k` rate (N/m), `r` motion ratio (spring travel over wheel travel) (no unit), `a` angle between the spring and the
//! travel that was measured (rad), `F` compressive force in the spring (N), `L` its length between the eyes (m), `z`
//! wheel travel, positive in bump (m), `m` sprung mass on the wheel (kg), `c` damping (N·s/m), `zeta` damping ratio (no unit),
//! `d` wire and `D` mean coil diameter (m). Of bars: `K` torque over twist (N·m/rad), `R` length of an arm (m). Of leaves: `w` width and `t` thickness (m),
//! `L` span (m).
//!
//! Left out here: a rate along the travel of a linkage, which belongs to the suspension.

mod bar;
mod coil;
mod combined;
mod damper;
mod leaf;
#[cfg(feature = "sheet")]
mod rules;
#[cfg(feature = "sheet")]
mod sheet;
mod wheel;

pub use bar::*;
pub use coil::*;
pub use combined::*;
pub use damper::*;
pub use leaf::*;
#[cfg(feature = "sheet")]
pub(crate) use sheet::COIL;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use wheel::*;
