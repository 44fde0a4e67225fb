use super::coil_bind_clearance::coil_bind_clearance;
use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, valid};

/// Remaining clearance above the minimum gap between the coils, with the wheel at full bump.
///
/// # Formula
/// `s = L_0 - F / k - x - L_n`
///
/// # Parameters
/// - `free_length` — `L_0`, length of the spring unloaded
/// - `shortest_length` — `L_n`, length at which it may work: `spring::shortest_length`
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `spring_load` — `F`, load in the spring at ride height, laden as it will be
/// - `spring_bump_travel` — `x`, shortening of the spring from ride height to full bump: wheel travel times motion ratio
///
/// # Returns
/// The clearance above the minimum gap; negative where the coils come that much too close.
///
/// # Valid for
/// - `0.0001 <= free_length <= 100`
/// - `0.00001 <= shortest_length <= 100`
/// - `free_length > shortest_length`
/// - `1 <= spring_rate <= 1000000000`
/// - `0 <= spring_load <= 1000000000`
/// - `0 <= spring_bump_travel <= 100`
///
/// Linear spring, not preloaded between its seats beyond `spring_load`.
///
/// # Source
/// Definition of the lengths of a compression spring (EN 13906-1:2013, from memory) and of a rate
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let remaining = spring::minimum_gap_clearance(
///     Length::of::<mm>(300.0), Length::of::<mm>(132.7), LinearStiffness::of::<N_mm>(57.9),
///     Force::of::<kN>(3.5), Length::of::<mm>(90.0),
/// )?;
/// assert_eq!(format!("{:.1} mm", remaining.in_::<mm>()), "16.9 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A bound spring overloads its seats and breaks: the damper or the bump stop must stop the wheel before this is used up.
#[inline]
pub fn minimum_gap_clearance(
    free_length: Length,
    shortest_length: Length,
    spring_rate: LinearStiffness,
    spring_load: Force,
    spring_bump_travel: Length,
) -> Result<Length> {
    valid! {
        free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
        shortest_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
        free_length > shortest_length ; "definition: a compression spring can be compressed";
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        spring_load: 0 <= .. <= 1e9 ; "definition: a coil spring between seats only pushes; no spring carries 1 GN";
        spring_bump_travel: 0 <= .. <= 100 ; "definition: bump shortens the spring";
    }
    coil_bind_clearance(free_length, shortest_length, spring_rate, spring_load, spring_bump_travel)
}
