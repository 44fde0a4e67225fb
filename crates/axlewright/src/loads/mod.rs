//! Load cases: the forces of the ground on each tyre, and where they act, for the strength of what carries them.
//!
//! Axes as ISO 8855: x forward, y left, z up. Symbols: `m` mass (kg), `l` wheelbase, `t` track and `h` height of the centre of gravity (m), `mu` friction of tyre on road
//! (no unit), `N` vertical force on a wheel (N), `f` factor of a case (no unit).
//!
//! A factor stands for what a steady case leaves out: shock, wear, and the driver. It is no margin: the wanted margin of a part comes on top.
//!
//! Left out here: forces in the parts, which the linkages of `suspension` give; the travel at which a case stands; loads of towing, and of a frame that twists.

mod cases;
mod load_cases;

pub use cases::{CaseFactor, LoadCase};
pub use load_cases::{DrivenWheels, LoadCases, WheelMount};
