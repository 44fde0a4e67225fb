use crate::units::Length;
use crate::{Result, valid};

/// Height of the sprung mass over the roll axis: the lever on which a turn leans the body.
///
/// # Formula
/// `h_1 = h_s - z_f - (z_r - z_f) a / l`
///
/// # Parameters
/// - `sprung_height` — `h_s`, height of the centre of gravity of the sprung mass above the ground
/// - `behind_front_axle` — `a`, distance of that centre of gravity behind the front axle
/// - `wheelbase` — `l`, front to rear axle
/// - `front_roll_centre_height` — `z_f`, height of the roll centre of the front axle above the ground; negative below it
/// - `rear_roll_centre_height` — `z_r`, height of the roll centre of the rear axle above the ground; on the centreline where a lateral rod leads the axle
///
/// # Returns
/// Vertical distance from the roll axis to the centre of gravity; negative where the axis passes above it and the body leans into the turn.
///
/// # Valid for
/// - `0 <= sprung_height <= 100`
/// - `-100 <= behind_front_axle <= 100`
/// - `0.01 <= wheelbase <= 100`
/// - `-10 <= front_roll_centre_height <= 10`
/// - `-10 <= rear_roll_centre_height <= 10`
///
/// Kinematic roll centres at ride height in the planes of the axles, small angles. The distance is taken upright; the axis is nearly level.
///
/// # Source
/// SAE J670 and ISO 8855, roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let arm = suspension::roll_arm(
///     Length::of::<mm>(780.0), Length::of::<mm>(1256.0), Length::of::<mm>(2650.0), Length::of::<mm>(60.0), Length::of::<mm>(380.0),
/// )?;
/// assert_eq!(format!("{:.0} mm", arm.in_::<mm>()), "568 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn roll_arm(
    sprung_height: Length,
    behind_front_axle: Length,
    wheelbase: Length,
    front_roll_centre_height: Length,
    rear_roll_centre_height: Length,
) -> Result<Length> {
    valid! {
        sprung_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        behind_front_axle: (-100) <= .. <= 100 ; "definition: a place along a road vehicle";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        front_roll_centre_height: (-10) <= .. <= 10 ; "plausibility limit: roll centres that matter lie within 10 m of the ground";
        rear_roll_centre_height: (-10) <= .. <= 10 ; "plausibility limit: roll centres that matter lie within 10 m of the ground";
    }
    let rise = (rear_roll_centre_height - front_roll_centre_height) * (behind_front_axle / wheelbase);
    Ok(sprung_height - front_roll_centre_height - rise)
}
