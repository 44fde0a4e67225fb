//! Springs, wheel rate and dampers.
//!
//! Symbols: `k` rate (N/m), `r` motion ratio (spring travel over wheel travel) (no unit), `a` angle between the spring and the
//! travel that was measured (rad), `F` compressive force in the spring (N), `L` its length between the eyes (m), `z`
//! wheel travel, positive in bump (m), `m` sprung mass on the wheel (kg), `c` damping (N·s/m), `zeta` damping ratio (no unit),
//! `d` wire and `D` mean coil diameter (m). Of bars: `K` torque over twist (N·m/rad), `R` length of an arm (m). Of leaves: `w` width and `t` thickness (m),
//! `L` span (m).
//!
//! Left out here: a rate along the travel of a linkage, which belongs to the suspension.

mod active_coils_for_rate;
mod adjustable_damper;
mod air_spring_rate;
mod anti_roll_bar_diameter_for_rate;
mod anti_roll_bar_rate;
mod buckling_deflection;
mod bump_stop;
mod coil_bind_clearance;
mod coil_rate;
mod coil_shear_stress;
mod corner;
mod critical_damping;
mod damped_frequency;
mod damper_curve;
mod damper_rate_for_ratio;
mod damping_ratio;
mod free_length_for_ride_height;
mod inclined_tangent_rate;
mod leaf_pack_rate;
mod leaf_pack_stress;
#[cfg(feature = "sheet")]
mod measured;
mod minimum_gap;
mod minimum_gap_clearance;
mod natural_frequency;
mod parallel_rate;
mod progressive_coil;
mod ride_rate;
mod series_crossover;
mod series_rate;
#[cfg(feature = "sheet")]
mod sheet;
mod shortest_length;
mod solid_length;
mod spring_rate_for_frequency;
mod stack;
mod static_deflection;
mod stored_energy;
mod surge_frequency;
mod tangent_rate_for_frequency;
mod torsion_bar_arm_rate;
mod torsion_bar_rate;
mod torsion_bar_stress;
mod travel;
mod wahl_factor;
mod wheel_damping;
mod wheel_rate;
mod wheel_tangent_rate;
mod wire_diameter_for_rate;

pub use active_coils_for_rate::active_coils_for_rate;
pub use adjustable_damper::{AdjustableDamper, DamperSetting, SettingChoice};
pub use air_spring_rate::air_spring_rate;
pub use anti_roll_bar_diameter_for_rate::anti_roll_bar_diameter_for_rate;
pub use anti_roll_bar_rate::anti_roll_bar_rate;
pub use buckling_deflection::buckling_deflection;
pub use bump_stop::{BumpStop, StopPoint, Stopped};
pub use coil_bind_clearance::coil_bind_clearance;
pub use coil_rate::coil_rate;
pub use coil_shear_stress::coil_shear_stress;
pub use corner::{AtRideHeight, Corner};
pub use critical_damping::critical_damping;
pub use damped_frequency::damped_frequency;
pub use damper_curve::{DamperCurve, DamperPoint, DampingAt};
pub use damper_rate_for_ratio::damper_rate_for_ratio;
pub use damping_ratio::damping_ratio;
pub use free_length_for_ride_height::free_length_for_ride_height;
pub use inclined_tangent_rate::inclined_tangent_rate;
pub use leaf_pack_rate::leaf_pack_rate;
pub use leaf_pack_stress::{LeafPackStress, leaf_pack_stress};
pub use minimum_gap::{
    minimum_gap_cold_dynamic, minimum_gap_cold_static, minimum_gap_hot_dynamic, minimum_gap_hot_static,
};
pub use minimum_gap_clearance::minimum_gap_clearance;
pub use natural_frequency::natural_frequency;
pub use parallel_rate::parallel_rate;
pub use progressive_coil::{CoilPoint, CompressedCoil, ProgressiveCoil};
pub use ride_rate::ride_rate;
pub use series_crossover::{SeriesCrossover, series_crossover};
pub use series_rate::series_rate;
#[cfg(feature = "sheet")]
pub(crate) use sheet::COIL;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use shortest_length::shortest_length;
pub use solid_length::{solid_length_closed, solid_length_closed_ground};
pub use spring_rate_for_frequency::spring_rate_for_frequency;
pub use stack::{FirstClosed, HeldStack, LoadedStack, Stack, StackedSpring};
pub use static_deflection::static_deflection;
pub use stored_energy::stored_energy;
pub use surge_frequency::surge_frequency;
pub use tangent_rate_for_frequency::tangent_rate_for_frequency;
pub use torsion_bar_arm_rate::torsion_bar_arm_rate;
pub use torsion_bar_rate::torsion_bar_rate;
pub use torsion_bar_stress::torsion_bar_stress;
pub use travel::Mounting;
pub use wahl_factor::wahl_factor;
pub use wheel_damping::wheel_damping;
pub use wheel_rate::wheel_rate;
pub use wheel_tangent_rate::wheel_tangent_rate;
pub use wire_diameter_for_rate::wire_diameter_for_rate;
