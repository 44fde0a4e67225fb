//! Driveline: ratios, speeds and torque from the crankshaft to the ground.
//!
//! Symbols: `w` engine speed (rad/s), `v` road speed (m/s), `i_g` gear ratio and `i_f` final drive, input over output
//! speed (no unit), `r` effective rolling radius and `r_l` loaded radius (m), `T` torque (N·m), `e` efficiency (no unit), `F` clamp load or axle load (N),
//! `f` friction coefficient of a facing and `m` of the tyre on the ground (no unit), `i_t` range of the transfer case and `i_c` crawl ratio (no unit).
//!
//! Speed uses the effective rolling radius, force the loaded radius. Left out here: slip of the tyre, of a clutch and of a converter.

mod gearing;
#[cfg(feature = "sheet")]
mod rules;
#[cfg(feature = "sheet")]
mod sheet;
mod torque;

pub use gearing::*;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use torque::*;
