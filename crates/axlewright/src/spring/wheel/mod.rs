//! The spring at its wheel: rates, frequencies, ride height and travel.

mod corner;
mod free_length_for_ride_height;
mod inclined_tangent_rate;
#[cfg(feature = "sheet")]
pub(super) mod measured;
mod natural_frequency;
#[cfg(feature = "sheet")]
pub(super) mod other_side;
pub(super) mod ride_rate;
mod spring_rate_for_frequency;
mod static_deflection;
mod tangent_rate_for_frequency;
pub(super) mod travel;
mod wheel_rate;
mod wheel_tangent_rate;

pub use corner::{AtRideHeight, Corner};
pub use free_length_for_ride_height::free_length_for_ride_height;
pub use inclined_tangent_rate::inclined_tangent_rate;
pub use natural_frequency::natural_frequency;
pub use ride_rate::ride_rate;
pub use spring_rate_for_frequency::spring_rate_for_frequency;
pub use static_deflection::static_deflection;
pub use tangent_rate_for_frequency::tangent_rate_for_frequency;
pub use travel::Mounting;
pub use wheel_rate::wheel_rate;
pub use wheel_tangent_rate::wheel_tangent_rate;
