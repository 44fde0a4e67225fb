//! Threads and strength of a bolt by its markings.

mod bolt;
mod geometry;
mod grade;
mod marking;
mod stress_area;
mod threads;

pub use bolt::{Bolt, BoltLoads, BoltStrength};
pub use stress_area::{metric_stress_area, unified_stress_area};
pub use threads::{Thread, ThreadDimensions};

pub(super) use geometry::{COS_30, Geometry, Series, TAN_30, circle, pitch_diameter};
