//! The road: its roughness, a course of waves, kerbs, and how people feel vibration.

pub(super) mod course;
pub(super) mod on_road;
mod road_displacement_density;
mod road_surface;
pub(super) mod track_coherence;
mod wk_weighting;

pub use on_road::{OnRoad, VehicleOnRoad};
pub use road_displacement_density::road_displacement_density;
pub use road_surface::{RoadClass, RoadSurface};
pub use wk_weighting::wk_weighting;
