//! One wheel on its own linkage: double wishbone and strut.

mod balance;
mod change;
mod double_wishbone;
#[cfg(feature = "sheet")]
pub(super) mod double_wishbone_lines;
mod forces;
mod in_roll;
pub(super) mod linkage;
mod outline;
pub(super) mod prepared;
mod range;
#[cfg(feature = "sheet")]
pub(in crate::suspension) mod stages;
pub(in crate::suspension) mod strut;
#[cfg(feature = "sheet")]
pub(in crate::suspension) mod strut_lines;
pub(super) mod wheel_position;

pub use double_wishbone::DoubleWishbone;
pub use forces::WheelForces;
pub use in_roll::WheelsInRoll;
pub use prepared::PreparedLinkage;
pub use strut::Strut;
pub use wheel_position::WheelPosition;
