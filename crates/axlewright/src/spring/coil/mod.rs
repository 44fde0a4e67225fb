//! Coil springs: rate, stress, length, bind, buckling and surge.

mod active_coils_for_rate;
pub(super) mod buckling_deflection;
mod coil_bind_clearance;
mod coil_rate;
mod coil_shear_stress;
mod minimum_gap;
mod minimum_gap_clearance;
mod progressive_coil;
mod shortest_length;
mod solid_length;
mod surge_frequency;
mod wahl_factor;
mod wire_diameter_for_rate;

pub use active_coils_for_rate::active_coils_for_rate;
pub use buckling_deflection::buckling_deflection;
pub use coil_bind_clearance::coil_bind_clearance;
pub use coil_rate::coil_rate;
pub use coil_shear_stress::coil_shear_stress;
pub use minimum_gap::{
    minimum_gap_cold_dynamic, minimum_gap_cold_static, minimum_gap_hot_dynamic, minimum_gap_hot_static,
};
pub use minimum_gap_clearance::minimum_gap_clearance;
pub use progressive_coil::{CoilPoint, CompressedCoil, ProgressiveCoil};
pub use shortest_length::shortest_length;
pub use solid_length::{solid_length_closed, solid_length_closed_ground};
pub use surge_frequency::surge_frequency;
pub use wahl_factor::wahl_factor;
pub use wire_diameter_for_rate::wire_diameter_for_rate;
