use crate::units::Length;
use crate::{Result, valid};

/// Change of the track when both wheels of an axle change their offset.
///
/// # Formula
/// `db = 2 (o_1 - o_2)`
///
/// # Parameters
/// - `wheel_offset_before` — `o_1`, mounting face from the rim's middle plane, positive where the mounting face lies towards the outside of the vehicle from the rim's middle plane (ISO 3911 calls it inset, from memory)
/// - `wheel_offset_after` — `o_2`, offset of the wheels now fitted, less the thickness of a spacer
///
/// # Returns
/// Gain in distance between the tyre centres; negative if they come closer.
///
/// # Valid for
/// - `-10 <= wheel_offset_before <= 10`
/// - `-10 <= wheel_offset_after <= 10`
///
/// Both wheels alike, without camber. Each side moves by half the change.
///
/// # Source
/// Geometry of the section
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let wider = tyre::track_change(Length::of::<mm>(45.0), Length::of::<mm>(20.0))?;
/// assert_eq!(format!("{:.0} mm", wider.in_::<mm>()), "50 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A changed offset changes the scrub radius, the lever arm on wheel bearings and studs, and the clearance. Local codes limit it, and licensed practice decides.
#[inline]
pub fn track_change(wheel_offset_before: Length, wheel_offset_after: Length) -> Result<Length> {
    valid! {
        wheel_offset_before: (-10) <= .. <= 10 ; "plausibility limit: at most 10 m to either side";
        wheel_offset_after: (-10) <= .. <= 10 ; "plausibility limit: at most 10 m to either side";
    }
    Ok(2.0 * (wheel_offset_before - wheel_offset_after))
}
