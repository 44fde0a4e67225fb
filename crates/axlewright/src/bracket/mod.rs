//! Brackets: tabs with a bolt or a rod end, and the wall of the tube that carries them.
//!
//! Symbols: `F` force at the bolt (N), `t` thickness and `w` width of a tab (m), `d` diameter of the bolt and `d_h` of its hole (m), `e` distance from the hole's centre to the
//! free end (m), `h` height of the hole above the weld (m), `R_e` yield and `R_m` ultimate strength of the metal beside the weld (Pa), `t_w` wall of a tube (m).
//!
//! Left out here: buckling of slender plates, gussets, castings, and the bolt itself. The weld is a group of the system `weld`.

mod rectangular_tube_wall_strength;
mod round_tube_wall_strength;
mod tab;

pub use rectangular_tube_wall_strength::rectangular_tube_wall_strength;
pub use round_tube_wall_strength::round_tube_wall_strength;
pub use tab::{Tab, TabStrength};
