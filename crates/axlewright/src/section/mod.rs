//! Sections of tube, bar, plate and channel: what they resist, and what a link of them carries.
//!
//! Axes: the member runs along x; y is the width of the section and z its height. `I_y` is the second moment about the y axis: it resists a load along z.
//!
//! Symbols: `A` area (m²), `I` second moment (m⁴), `I_yz` product of inertia (m⁴), `W` elastic and `Z` plastic modulus (m³), `J` torsion constant (m⁴),
//! `W_t` torque over peak shear stress (m³), `A_v` shear force over peak shear stress (m²), `C_w` warping constant (m⁶), `t` wall (m). Of columns: `P` force along (N), `P_e` Euler load (N), `E` elastic modulus (Pa), `s_y` yield strength (Pa), `e` eccentricity (m).
//!
//! Left out here: frames of several members, which belong to a system of their own; local buckling of thin walls; welds.

mod angle;
mod boxed_channel;
mod built_up;
mod channel;
mod column;
mod figures;
mod member_mass;
mod rectangular_bar;
mod rectangular_tube;
mod round_bar;
mod round_tube;
#[cfg(test)]
mod tests;

pub use angle::AngleSection;
pub use boxed_channel::BoxedChannel;
pub use built_up::{BuiltUp, SectionPart};
pub use channel::Channel;
pub use column::*;
pub use figures::SectionProperties;
pub use member_mass::member_mass;
pub use rectangular_bar::RectangularBar;
pub use rectangular_tube::RectangularTube;
pub use round_bar::RoundBar;
pub use round_tube::RoundTube;
