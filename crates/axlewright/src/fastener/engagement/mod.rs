//! Engaged length of a thread: shear areas, and whether the bolt breaks before the thread strips.

mod shear_area;
mod strength;
mod tolerance;

pub use shear_area::{external_thread_shear_area, internal_thread_shear_area};
pub use strength::{EngagementStrength, ThreadEngagement};
