//! Axle loads, and the loads that acceleration moves between axles and wheels.

mod axle_loads_under_acceleration;
mod lateral_load_transfer;
mod longitudinal_load_transfer;
mod static_axle_loads;
mod weight_distribution;

pub use axle_loads_under_acceleration::axle_loads_under_acceleration;
pub use lateral_load_transfer::lateral_load_transfer;
pub use longitudinal_load_transfer::longitudinal_load_transfer;
pub use static_axle_loads::{AxleLoads, static_axle_loads};
pub use weight_distribution::{WeightDistribution, weight_distribution};
