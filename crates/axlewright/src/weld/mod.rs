//! Fillet welds: throat, stress of a group under an eccentric load, and fatigue by detail class.
//!
//! Symbols: `a` throat and `z` leg of a fillet (m), `psi` angle between the faces that it joins (rad), `L` length of a run (m), `F` force (N), `R_m` ultimate
//! strength (Pa), `dsigma` stress range (Pa), `n` number of cycles. A group lies in a plane with axes `x` and `y`; `z` leads out of it, away from the part that it is welded to.
//!
//! Left out here: butt and plug welds, distortion, residual stress, and how sound a weld is. Near a weld, take the strength that the material has there.

mod fatigue;
mod fillet_group;
mod fillet_throat;

pub use fatigue::{Damage, Fatigue, StressBlock};
pub use fillet_group::{FilletGroup, GroupStress, Run, Sides, Spot};
pub use fillet_throat::fillet_throat;
