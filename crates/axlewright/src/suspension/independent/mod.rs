//! One wheel on its own linkage: double wishbone and strut.

mod double_wishbone;
#[cfg(feature = "sheet")]
pub(super) mod double_wishbone_lines;
mod in_roll;
pub(super) mod linkage;
mod outline;
mod range;
#[cfg(feature = "sheet")]
pub(super) mod stages;
pub(super) mod strut;
#[cfg(feature = "sheet")]
pub(super) mod strut_lines;
pub(super) mod wheel_position;

pub use double_wishbone::DoubleWishbone;
pub use in_roll::WheelsInRoll;
pub use strut::Strut;
pub use wheel_position::{PreparedLinkage, TravelRange, WheelPosition};
