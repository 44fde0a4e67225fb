use crate::units::Length;
use crate::{Result, valid};

/// Backspacing of a wheel from its offset.
///
/// # Formula
/// `b = w / 2 + t + o`
///
/// # Parameters
/// - `rim_width` — `w`, nominal, between the faces of the flanges that the beads sit against: the number on the wheel
/// - `flange_thickness` — `t`, thickness of one rim flange, from the face that the bead sits against to its outer edge; about half an inch (common practice, no source): measure yours
/// - `wheel_offset` — `o`, mounting face from the rim's middle plane, positive where the mounting face lies towards the outside of the vehicle from the rim's middle plane (ISO 3911 calls it inset, from memory)
///
/// # Returns
/// Backspacing as the trade measures it: lay a straight edge across the edge of the inner flange and measure from it to the mounting face. Negative if the mounting
/// face lies further in than that edge.
///
/// # Valid for
/// - `0.001 <= rim_width <= 1`
/// - `0 <= flange_thickness <= 1`
/// - `-10 <= wheel_offset <= 10`
///
/// Both flanges of the rim alike. The tyre bulges further in than the flange.
///
/// # Source
/// Geometry of the section; common practice, no source, for what is called backspacing
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let depth = tyre::wheel_backspacing(Length::of::<inch>(8.0), Length::of::<inch>(0.5), Length::of::<mm>(0.0))?;
/// assert_eq!(format!("{:.1} in", depth.in_::<inch>()), "4.5 in");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A wheel that touches a caliper, a steering arm or a hose fails without warning: turn it by hand through full lock, bump and droop before the road.
#[inline]
pub fn wheel_backspacing(
    rim_width: Length,
    flange_thickness: Length,
    wheel_offset: Length,
) -> Result<Length> {
    valid! {
        rim_width: 0.001 <= .. <= 1 ; "plausibility limit: rims lie between 1 mm and 1 m";
        flange_thickness: 0 <= .. <= 1 ; "definition: a thickness; plausibility limit: at most 1 m";
        wheel_offset: (-10) <= .. <= 10 ; "plausibility limit: at most 10 m to either side";
    }
    Ok(rim_width / 2.0 + flange_thickness + wheel_offset)
}

/// Offset of a wheel from its backspacing.
///
/// # Formula
/// `o = b - t - w / 2`
///
/// # Parameters
/// - `rim_width` — `w`, nominal, between the faces of the flanges that the beads sit against: the number on the wheel
/// - `flange_thickness` — `t`, thickness of one rim flange, from the face that the bead sits against to its outer edge; about half an inch (common practice, no source): measure yours
/// - `wheel_backspacing` — `b`, distance from a straight edge across the edge of the inner flange down to the mounting face
///
/// # Returns
/// Mounting face from the rim's middle plane, positive where the mounting face lies towards the outside of the vehicle from the rim's middle plane (ISO 3911 calls it inset, from memory).
///
/// # Valid for
/// - `0.001 <= rim_width <= 1`
/// - `0 <= flange_thickness <= 1`
/// - `-10 <= wheel_backspacing <= 10`
///
/// Both flanges of the rim alike.
///
/// # Source
/// Geometry of the section; common practice, no source, for what is called backspacing
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let offset = tyre::wheel_offset(Length::of::<inch>(7.0), Length::of::<inch>(0.5), Length::of::<inch>(4.5))?;
/// assert_eq!(format!("{:.1} mm", offset.in_::<mm>()), "12.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A wheel that touches a caliper, a steering arm or a hose fails without warning: turn it by hand through full lock, bump and droop before the road.
#[inline]
pub fn wheel_offset(
    rim_width: Length,
    flange_thickness: Length,
    wheel_backspacing: Length,
) -> Result<Length> {
    valid! {
        rim_width: 0.001 <= .. <= 1 ; "plausibility limit: rims lie between 1 mm and 1 m";
        flange_thickness: 0 <= .. <= 1 ; "definition: a thickness; plausibility limit: at most 1 m";
        wheel_backspacing: (-10) <= .. <= 10 ; "plausibility limit: at most 10 m to either side";
    }
    Ok(wheel_backspacing - flange_thickness - rim_width / 2.0)
}
