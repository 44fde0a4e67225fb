//! Tools of all linkages: vectors, derivatives, the range of travel, and the table of points.

pub(super) mod clearance;
pub(super) mod jet;
#[cfg(feature = "sheet")]
pub(super) mod kept;
pub(super) mod lanes;
pub(super) mod outline;
#[cfg(feature = "sheet")]
pub(super) mod over_travel;
pub(super) mod slope;
pub(super) mod solved;
mod travel_range;
pub(super) mod vector;

pub use travel_range::TravelRange;
