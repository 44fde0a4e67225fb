use crate::units::{Force, Length, Ratio, Torque, torque};
use crate::{Result, valid};

/// Torque at the wheels of an axle beyond which its tyres slip.
///
/// # Formula
/// `T_g = m F r_l`
///
/// # Parameters
/// - `axle_load` — `F`, on the ground under the driven wheels that the torque goes to, with the load transfer that the same launch causes
/// - `grip_coefficient` — `m`, greatest force along over load: for strength a high bound, for performance a mean; say which one it was
/// - `loaded_radius` — `r_l`, wheel centre to ground under load, not the rolling radius
///
/// # Returns
/// The sum over the wheels of that axle. At a part before them divide by the ratio *and* by the efficiency between: the losses stand between the engine and the grip, so
/// the engine must give more.
///
/// # Valid for
/// - `0 <= axle_load <= 10000000`
/// - `0 < grip_coefficient <= 10`
/// - `0.001 <= loaded_radius <= 100`
///
/// Steady pull. As a bound of what a part can be made to carry it needs the high bound of grip (a dry, warm, soft tyre; more where a wheel can
/// lock into a rut or against a kerb) and, for a dropped clutch, the inertia between part and ground on top. A locked differential lets one shaft carry what its own wheel's grip allows.
///
/// # Source
/// Coulomb friction at the contact patch; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 2, traction-limited acceleration (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let slips = driveline::grip_torque(Force::of::<kN>(14.0), Ratio::of::<one>(1.2), Length::of::<mm>(330.0))?;
/// assert_eq!(format!("{:.0} N·m", slips.in_::<Nm>()), "5544 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A grip taken too low makes a weak part look strong; a part that breaks can lock a wheel or drop a shaft on the road. Ratings, local codes and licensed practice come first.
#[inline]
pub fn grip_torque(axle_load: Force, grip_coefficient: Ratio, loaded_radius: Length) -> Result<Torque> {
    valid! {
        axle_load: 0 <= .. <= 10e6 ; "definition: the ground only pushes; common practice, no source: at most 10 MN";
        grip_coefficient: 0 < .. <= 10 ; "common practice, no source: above 10 it is a percentage";
        loaded_radius: 0.001 <= .. <= 100 ; "common practice, no source: wheels lie between 1 mm and 100 m";
    }
    Ok(torque(grip_coefficient * axle_load, loaded_radius))
}
