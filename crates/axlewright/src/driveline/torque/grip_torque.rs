use crate::units::{Force, Length, Ratio, Torque, torque};
use crate::{Result, valid};

/// Torque at the wheels of an axle beyond which its tyres slip.
///
/// # Formula
/// `T_g = m F r_l`
///
/// # Parameters
/// - `axle_load` — `F`, on the ground under the driven wheels that the torque goes to, with the load transfer that the same launch causes
/// - `grip_coefficient` — `m`, peak force along over load: for strength a high bound, for performance a mean; say which one it was
/// - `loaded_radius` — `r_l`, wheel centre to ground under load, not the rolling radius
///
/// # Returns
/// The sum over the wheels of that axle. At a part before them `grip_torque_upstream` divides by the ratio *and* by the efficiency between.
///
/// # Valid for
/// - `0 <= axle_load <= 10000000`
/// - `0 < grip_coefficient <= 10`
/// - `0.001 <= loaded_radius <= 100`
///
/// Steady pull. As a bound of what a part can be made to carry it needs the high bound of grip (a dry, warm, soft tyre; more where a wheel can
/// lock into a rut or against a kerb) and, for a dropped clutch, the inertia between part and ground on top. A locked differential lets one shaft carry all of it: see `axle_shaft_torque_locked`.
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
        axle_load: 0 <= .. <= 10e6 ; "definition: the ground only pushes; plausibility limit: at most 10 MN";
        grip_coefficient: 0 < .. <= 10 ; "plausibility limit: above 10 it is a percentage";
        loaded_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(torque(grip_coefficient * axle_load, loaded_radius))
}

/// Torque at a part further up the driveline beyond which the tyres slip.
///
/// # Formula
/// `T = T_g / (i e)`
///
/// # Parameters
/// - `grip_torque` — `T_g`, at the wheels that the part drives, together: `grip_torque` of them
/// - `ratio_between` — `i`, speed of the part over speed of the wheels: gears, transfer case, axle and hub reductions that stand between
/// - `efficiency_between` — `e`, power at the wheels over power at the part
///
/// # Returns
/// Torque that the part must carry in a steady pull before the tyres slip. The losses are between it and the grip, so it carries *more* than the ratio alone gives.
///
/// # Valid for
/// - `0 <= grip_torque <= 1000000000`
/// - `0.001 <= ratio_between <= 1000000`
/// - `0.3 <= efficiency_between <= 1`
///
/// Steady pull: a dropped clutch adds the inertia between part and ground. An engine that gives less at this part bounds it from below the grip.
///
/// # Source
/// Balance of power through a geared train
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let at_shaft = driveline::grip_torque_upstream(Torque::of::<Nm>(5544.0), Ratio::of::<one>(4.1), Ratio::of::<percent>(96.0))?;
/// assert_eq!(format!("{:.0} N·m", at_shaft.in_::<Nm>()), "1409 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A grip taken too low makes a weak part look strong; a part that breaks can lock a wheel or drop a shaft on the road. Ratings, local codes and licensed practice come first.
#[inline]
pub fn grip_torque_upstream(
    grip_torque: Torque,
    ratio_between: Ratio,
    efficiency_between: Ratio,
) -> Result<Torque> {
    valid! {
        grip_torque: 0 <= .. <= 1e9 ; "definition: counted without direction; plausibility limit: at most 1 GN·m";
        ratio_between: 0.001 <= .. <= 1e6 ; "plausibility limit: no driveline of a vehicle lies outside 0.001 to 1000000";
        efficiency_between: 0.3 <= .. <= 1 ; "definition: no driveline gives more power than it takes; plausibility limit: three parts of 70 % together";
    }
    Ok(grip_torque / (ratio_between.si() * efficiency_between.si()))
}
