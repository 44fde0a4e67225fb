//! Ride: a wheel and its share of the body on a road, and the body on both axles.
//!
//! Heights are positive upwards and counted from rest; suspension travel is positive in bump, tyre load positive where it grows. A road is a height
//! over distance; its roughness is the one-sided spectral density at 0.1 cycles a metre (ISO 8608).
//!
//! Symbols: `m_s` sprung and `m_u` unsprung mass of one wheel (kg), `k` wheel rate and `k_t` tyre rate (N/m), `c` damping at the wheel and `c_t` in the
//! tyre (N·s/m), `z_s`, `z_u`, `z_r` height of body, wheel and road (m), `f` frequency (Hz), `n` spatial frequency (cycles/m), `G` roughness (m³), `v` speed (m/s).
//!
//! Left out here: seats and engine mounts, roll, friction, tyres that bridge short waves, and the delay between axles but in the flat ride.

mod course;
mod damping_for_least_body_acceleration;
mod damping_for_least_tyre_load;
mod dynamic_index;
mod exponential;
mod flat_ride_cycles;
mod flat_ride_rear_frequency;
mod half_car;
mod integral;
mod nonlinear_quarter_car;
mod quarter_car;
mod response;
mod road_displacement_density;
mod road_surface;
mod runge_kutta;
mod transmissibility;
mod wk_weighting;

pub use damping_for_least_body_acceleration::damping_for_least_body_acceleration;
pub use damping_for_least_tyre_load::damping_for_least_tyre_load;
pub use dynamic_index::dynamic_index;
pub use flat_ride_cycles::flat_ride_cycles;
pub use flat_ride_rear_frequency::flat_ride_rear_frequency;
pub use half_car::{BodyModes, FlatRide, HalfCar};
pub use nonlinear_quarter_car::{NonlinearQuarterCar, WheelDamperPoint, WheelStop, WheelStopPoint};
pub use quarter_car::{OnRoad, QuarterCar, QuarterModes};
pub use road_displacement_density::road_displacement_density;
pub use road_surface::{RoadClass, RoadSurface};
pub use transmissibility::transmissibility;
pub use wk_weighting::wk_weighting;
