use crate::base::table::record;
use crate::units::{Acceleration, Force, Length, Mass, STANDARD_GRAVITY};
use crate::{Result, valid};

record! {
    /// Loads of the two axles.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct AxleLoads {
        /// Load of the front axle, both wheels together.
        pub front_load: Force,
        /// Load of the rear axle, both wheels together.
        pub rear_load: Force,
    }
}

/// Loads of the axles of a vehicle that stands level, from the place of its centre of gravity.
///
/// # Formula
/// `F_r = m g a / l`, `F_f = m g - F_r`
///
/// # Parameters
/// - `total_mass` — `m`, mass of the whole vehicle as it stands: all scale readings together
/// - `behind_front_axle` — `a`, distance of the centre of gravity behind the front axle
/// - `wheelbase` — `l`, front to rear axle
///
/// # Returns
/// See the fields of [`AxleLoads`].
///
/// # Valid for
/// - `0.001 <= total_mass <= 4000000`
/// - `0 <= behind_front_axle <= 100`
/// - `0.01 <= wheelbase <= 100`
/// - `wheelbase > behind_front_axle`
///
/// Level ground, at standstill, standard gravity. For the inverse, from scale readings, see `mass::weight_distribution`.
///
/// # Source
/// Static equilibrium, moments about the front axle; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 1, static loads (from memory); standard gravity: 3rd CGPM
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let on = mass::static_axle_loads(Mass::of::<kg>(2400.0), Length::of::<mm>(1300.0), Length::of::<mm>(2650.0))?;
/// assert_eq!(format!("{:.0} N and {:.0} N", on.front_load.in_::<N>(), on.rear_load.in_::<N>()), "11990 N and 11546 N");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn static_axle_loads(
    total_mass: Mass,
    behind_front_axle: Length,
    wheelbase: Length,
) -> Result<AxleLoads> {
    valid! {
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        behind_front_axle: 0 <= .. <= 100 ; "definition: between the axles, so that both carry";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        wheelbase > behind_front_axle ; "definition: the rear axle carries, and the front axle is not lifted";
    }
    let weight = total_mass * Acceleration::from_si(STANDARD_GRAVITY);
    let rear_load = weight * (behind_front_axle / wheelbase);
    Ok(AxleLoads { front_load: weight - rear_load, rear_load })
}
