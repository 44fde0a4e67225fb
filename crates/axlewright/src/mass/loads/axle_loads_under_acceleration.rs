use crate::mass::{AxleLoads, longitudinal_load_transfer, static_axle_loads};
use crate::units::{Acceleration, Length, Mass};
use crate::{Result, cannot, valid};

/// Loads of the axles while the vehicle gains or loses speed on a level road.
///
/// # Formula
/// `F_r = m (g a + a_x h) / l`, `F_f = m g - F_r`
///
/// # Parameters
/// - `total_mass` — `m`, mass of the whole vehicle as it stands: all scale readings together
/// - `behind_front_axle` — `a`, distance of the centre of gravity behind the front axle
/// - `centre_height` — `h`, height of the centre of gravity above the ground
/// - `wheelbase` — `l`, front to rear axle
/// - `acceleration` — `a_x`, forward, positive for gaining speed, negative for braking
///
/// # Returns
/// See the fields of [`AxleLoads`].
///
/// # Valid for
/// - `0.001 <= total_mass <= 4000000`
/// - `0 <= behind_front_axle <= 100`
/// - `0 <= centre_height <= 100`
/// - `0.01 <= wheelbase <= 100`
/// - `wheelbase > behind_front_axle`
/// - `-1000 <= acceleration <= 1000`
///
/// Level road and steady acceleration. Pitch is neglected: deflected springs move the centre of gravity by little. Air drag and its height are neglected too.
///
/// # Source
/// Equilibrium of the accelerated body, moments about the front axle; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 1, low-speed acceleration (from memory); standard gravity: 3rd CGPM
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction), [`Error::NoSolution`](crate::Error::NoSolution) for an acceleration that lifts an axle
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let on = mass::axle_loads_under_acceleration(
///     Mass::of::<kg>(2400.0), Length::of::<mm>(1300.0), Length::of::<mm>(720.0), Length::of::<mm>(2650.0), Acceleration::of::<gn>(-0.8),
/// )?;
/// assert_eq!(format!("{:.0} N and {:.0} N", on.front_load.in_::<N>(), on.rear_load.in_::<N>()), "17106 N and 6430 N");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn axle_loads_under_acceleration(
    total_mass: Mass,
    behind_front_axle: Length,
    centre_height: Length,
    wheelbase: Length,
    acceleration: Acceleration,
) -> Result<AxleLoads> {
    valid! {
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        behind_front_axle: 0 <= .. <= 100 ; "definition: between the axles, so that both carry";
        centre_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        wheelbase > behind_front_axle ; "definition: the rear axle carries, and the front axle is not lifted";
        acceleration: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle accelerates with 100 g0";
    }
    let still = static_axle_loads(total_mass, behind_front_axle, wheelbase)?;
    let transfer = longitudinal_load_transfer(total_mass, centre_height, wheelbase, acceleration)?;
    let (front_load, rear_load) = (still.front_load - transfer, still.rear_load + transfer);
    if front_load.si() < 0.0 {
        let most = acceleration * (still.front_load / transfer);
        return Err(cannot!(acceleration <= most; "lifts the front axle"));
    }
    if rear_load.si() < 0.0 {
        let least = acceleration * (still.rear_load / -transfer);
        return Err(cannot!(acceleration >= least; "lifts the rear axle"));
    }
    Ok(AxleLoads { front_load, rear_load })
}
