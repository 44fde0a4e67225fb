use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, valid};

/// Free length of the spring that holds the wanted ride height.
///
/// # Formula
/// `L_0 = L + F / k`
///
/// # Parameters
/// - `spring_length` — `L`, length between the spring's seats at the wanted ride height
/// - `spring_load` — `F`, load in the spring there: sprung mass times gravity over motion ratio, laden as it will be
/// - `spring_rate` — `k`, the rate of the spring along its own axis
///
/// # Returns
/// The length of the spring unloaded.
///
/// # Valid for
/// - `0.00001 <= spring_length <= 100`
/// - `0 <= spring_load <= 1000000000`
/// - `1 <= spring_rate <= 1000000000`
///
/// Linear spring. New springs settle a little: common practice, no source, is to measure again after the first drive. Whether the spring
/// stays captive at full droop is the question of `Corner`.
///
/// # Source
/// Definition of a rate
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let free = spring::free_length_for_ride_height(Length::of::<mm>(240.0), Force::of::<kN>(3.5), LinearStiffness::of::<N_mm>(50.0))?;
/// assert_eq!(format!("{:.0} mm", free.in_::<mm>()), "310 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A compressed spring stores enough energy to kill, and one that is loose at full droop can leave its seat on the road.
#[inline]
pub fn free_length_for_ride_height(
    spring_length: Length,
    spring_load: Force,
    spring_rate: LinearStiffness,
) -> Result<Length> {
    valid! {
        spring_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long";
        spring_load: 0 <= .. <= 1e9 ; "definition: a coil spring between seats only pushes; no spring carries 1 GN";
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
    }
    Ok(spring_length + spring_load / spring_rate)
}
