//! Springs, wheel rate and dampers.
//!
//! Symbols: `k` rate (N/m), `r` motion ratio (spring travel over wheel travel) (no unit), `a` angle between the spring and the
//! travel that was measured (rad), `F` compressive force in the spring (N), `L` its length between the eyes (m), `z`
//! wheel travel, positive in bump (m), `m` sprung mass on the wheel (kg), `c` damping (N·s/m).
//!
//! Left out here: a rate along the travel of a linkage, which belongs to the suspension.

mod coil_rate;
mod critical_damping;
mod inclined_tangent_rate;
mod natural_frequency;
mod ride_rate;
mod static_deflection;
mod wheel_rate;
mod wheel_tangent_rate;

pub use coil_rate::coil_rate;
pub use critical_damping::critical_damping;
pub use inclined_tangent_rate::inclined_tangent_rate;
pub use natural_frequency::natural_frequency;
pub use ride_rate::ride_rate;
pub use static_deflection::static_deflection;
pub use wheel_rate::wheel_rate;
pub use wheel_tangent_rate::wheel_tangent_rate;
