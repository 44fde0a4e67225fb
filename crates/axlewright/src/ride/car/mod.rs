//! Two axles, and the whole car.

mod axle_wheel;
mod dynamic_index;
mod flat_ride_cycles;
mod flat_ride_rear_frequency;
mod full_car;
mod half_car;
mod vehicle;

pub use axle_wheel::AxleWheel;
pub use dynamic_index::dynamic_index;
pub use flat_ride_cycles::flat_ride_cycles;
pub use flat_ride_rear_frequency::flat_ride_rear_frequency;
pub use full_car::FullCar;
pub use half_car::{BodyModes, FlatRide, HalfCar};
