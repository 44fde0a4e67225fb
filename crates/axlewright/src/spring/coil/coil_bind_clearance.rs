use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, valid};

/// Remaining clearance between the coils, summed over the spring, with the wheel at full bump.
///
/// # Formula
/// `s = L_0 - F / k - x - L_c`
///
/// # Parameters
/// - `free_length` — `L_0`, length of the spring unloaded
/// - `solid_length` — `L_c`, length with every coil touching: measured, or from `solid_length_closed_ground` or `solid_length_closed`
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `spring_load` — `F`, load in the spring at ride height, laden as it will be
/// - `spring_bump_travel` — `x`, shortening of the spring from ride height to full bump: wheel travel times motion ratio
///
/// # Returns
/// The clearance; negative where the coils bind that much before full bump.
///
/// # Valid for
/// - `0.0001 <= free_length <= 100`
/// - `0.00001 <= solid_length <= 100`
/// - `free_length > solid_length`
/// - `1 <= spring_rate <= 1000000000`
/// - `0 <= spring_load <= 1000000000`
/// - `0 <= spring_bump_travel <= 100`
///
/// Linear spring, not preloaded between its seats beyond `spring_load`. EN 13906-1 asks for a sum of minimum gaps that this must not go below.
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
/// let remaining = spring::coil_bind_clearance(
///     Length::of::<mm>(300.0), Length::of::<mm>(120.0), LinearStiffness::of::<N_mm>(58.0), Force::of::<kN>(3.5), Length::of::<mm>(90.0),
/// )?;
/// assert_eq!(format!("{:.1} mm", remaining.in_::<mm>()), "29.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A bound spring overloads its seats and breaks: the damper or the bump stop must stop the wheel before the coils touch.
#[inline]
pub fn coil_bind_clearance(
    free_length: Length,
    solid_length: Length,
    spring_rate: LinearStiffness,
    spring_load: Force,
    spring_bump_travel: Length,
) -> Result<Length> {
    valid! {
        free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
        solid_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
        free_length > solid_length ; "definition: a compression spring can be compressed";
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        spring_load: 0 <= .. <= 1e9 ; "definition: a coil spring between seats only pushes; no spring carries 1 GN";
        spring_bump_travel: 0 <= .. <= 100 ; "definition: bump shortens the spring";
    }
    Ok(free_length - spring_load / spring_rate - spring_bump_travel - solid_length)
}
