//! One wheel with its share of the body.

mod damping_for_least_body_acceleration;
mod damping_for_least_tyre_load;
mod nonlinear_quarter_car;
mod quarter_car;
mod transmissibility;

pub use damping_for_least_body_acceleration::damping_for_least_body_acceleration;
pub use damping_for_least_tyre_load::damping_for_least_tyre_load;
pub use nonlinear_quarter_car::{BeyondPoints, MountedDroopStop, MountedStop, NonlinearQuarterCar};
pub use quarter_car::{QuarterCar, QuarterModes};
pub use transmissibility::transmissibility;
