use crate::units::Length;
use crate::{Result, valid};

/// Shortest length at which a compression spring may work.
///
/// # Formula
/// `L_n = L_c + S_a`
///
/// # Parameters
/// - `solid_length` — `L_c`, length with every coil touching: measured, or from `solid_length_closed_ground` or `solid_length_closed`
/// - `minimum_gap` — `S_a`, sum of the gaps that must stay open, as the maker says, or from `minimum_gap_cold_dynamic` or `minimum_gap_hot_dynamic`
///
/// # Returns
/// The length that no travel, laden and in bump, may go below.
///
/// # Valid for
/// - `0.00001 <= solid_length <= 100`
/// - `0 <= minimum_gap <= 100`
///
/// # Source
/// Definition of the smallest permissible length (EN 13906-1:2013, from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let gap = spring::minimum_gap_cold_dynamic(Length::of::<mm>(12.0), Length::of::<mm>(96.0), Ratio::of::<one>(7.0))?;
/// let shortest = spring::shortest_length(Length::of::<mm>(108.0), gap)?;
/// assert_eq!(format!("{:.1} mm", shortest.in_::<mm>()), "132.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring worked closer to its solid length strikes coil on coil and can break: a stop must end the travel before.
#[inline]
pub fn shortest_length(solid_length: Length, minimum_gap: Length) -> Result<Length> {
    valid! {
        solid_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
        minimum_gap: 0 <= .. <= 100 ; "definition: a gap is not negative; no spring is longer than 100 m";
    }
    Ok(solid_length + minimum_gap)
}
