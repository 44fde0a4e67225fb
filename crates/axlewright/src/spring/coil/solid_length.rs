use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Solid (block) length of a compression spring with closed and ground ends.
///
/// # Formula
/// `L_c = n_t d`
///
/// # Parameters
/// - `total_coils` — `n_t`, all coils counted, the dead ones at the ends included
/// - `wire_diameter` — `d`, the largest that the wire's tolerance allows, coating included
///
/// # Returns
/// The length at which every coil touches the next.
///
/// # Valid for
/// - `2 < total_coils <= 1000`
/// - `0.00001 <= wire_diameter <= 1`
///
/// Cylindrical spring, ends closed and ground flat. Here Shigley and EN 13906-1 agree; a spring must not be worked to this length (EN 13906-1 asks
/// for a minimum gap between coils above it).
///
/// # Source
/// Shigley's Mechanical Engineering Design, Table 10-1, squared and ground; EN 13906-1:2013, solid length of ground ends (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let solid = spring::solid_length_closed_ground(Ratio::of::<one>(10.0), Length::of::<mm>(12.0))?;
/// assert_eq!(format!("{:.0} mm", solid.in_::<mm>()), "120 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A suspension that drives its spring solid hits as if it had none, and the spring can break: the bump stop or the damper must stop it before.
#[inline]
pub fn solid_length_closed_ground(total_coils: Ratio, wire_diameter: Length) -> Result<Length> {
    valid! {
        total_coils: 2 < .. <= 1000 ; "definition: of closed ends one coil at each is dead, and no coil spring has more than 1000";
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
    }
    Ok(total_coils * wire_diameter)
}

/// Largest solid (block) length of a compression spring with closed ends that are not ground.
///
/// # Formula
/// `L_c = (n_t + 1.5) d`
///
/// # Parameters
/// - `total_coils` — `n_t`, all coils counted, the dead ones at the ends included
/// - `wire_diameter` — `d`, the largest that the wire's tolerance allows, coating included
///
/// # Returns
/// The length at which every coil touches the next.
///
/// # Valid for
/// - `2 < total_coils <= 1000`
/// - `0.00001 <= wire_diameter <= 1`
///
/// Cylindrical spring, ends closed and left round. This is the upper of two rules: Shigley gives `(n_t + 1) d`, half a wire less, and a spring
/// may lie between both. Measure it to have the half wire back.
///
/// # Source
/// EN 13906-1:2013, solid length of ends not ground, at most (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let solid = spring::solid_length_closed(Ratio::of::<one>(10.0), Length::of::<mm>(12.0))?;
/// assert_eq!(format!("{:.0} mm", solid.in_::<mm>()), "138 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A suspension that drives its spring solid hits as if it had none, and the spring can break: the bump stop or the damper must stop it before.
///
/// # Revision
/// 2
#[inline]
pub fn solid_length_closed(total_coils: Ratio, wire_diameter: Length) -> Result<Length> {
    valid! {
        total_coils: 2 < .. <= 1000 ; "definition: of closed ends one coil at each is dead, and no coil spring has more than 1000";
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
    }
    Ok(total_coils * wire_diameter + 1.5 * wire_diameter)
}
