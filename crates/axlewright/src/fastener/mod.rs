//! Fasteners: thread, strength and tightening of a bolt, its engaged length, the joint that it clamps, groups of bolts, and wheel studs.
//!
//! Symbols: `d` thread diameter, `P` pitch, `d_2` pitch diameter, `d_3` root diameter, `D_1` minor diameter of the tapped thread, `H = sqrt(3) / 2 P` height of
//! the sharp triangle (m), `A_s` stress area (m²), `T` tightening torque (N·m), `F` preload (N), `m_t` and `m_h` friction of thread and head (no unit).
//!
//! Left out here: loads of the parts. A bolt gets its force from the caller. Prying, tear-out beside a hole and fatigue are not counted.

mod engagement;
mod group;
mod joint;
mod thread;
mod tightening;

pub use engagement::*;
pub use group::*;
pub use joint::*;
pub use thread::*;
pub use tightening::*;
