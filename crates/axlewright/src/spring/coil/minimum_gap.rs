use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Sum of the gaps that must stay open between the coils of a cold-coiled spring under a load that stays.
///
/// # Formula
/// `S_a = n (0.0015 D^2 / d + 0.1 d)`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
///
/// # Returns
/// The least length above the solid length at the shortest length in service, all gaps together.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0.1 <= active_coils <= 1000`
///
/// Cylindrical spring of round wire, linear rate. A suspension spring works: use `minimum_gap_cold_dynamic`. Car springs of thick wire are often hot coiled: ask the maker.
///
/// # Source
/// EN 13906-1:2013, sum of minimum gaps between coils (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let gap = spring::minimum_gap_cold_static(Length::of::<mm>(12.0), Length::of::<mm>(96.0), Ratio::of::<one>(7.0))?;
/// assert_eq!(format!("{:.1} mm", gap.in_::<mm>()), "16.5 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring worked closer to its solid length strikes coil on coil and can break. The maker's drawing comes first, and a stop must end the travel before.
#[inline]
pub fn minimum_gap_cold_static(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
) -> Result<Length> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0.1 <= .. <= 1000 ; "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones";
    }
    Ok(active_coils * (0.0015 * mean_diameter * (mean_diameter / wire_diameter) + 0.1 * wire_diameter))
}

/// Sum of the gaps that must stay open between the coils of a cold-coiled spring under a load that changes.
///
/// # Formula
/// `S_a = 1.5 n (0.0015 D^2 / d + 0.1 d)`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
///
/// # Returns
/// The least length above the solid length at the shortest length in service, all gaps together.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0.1 <= active_coils <= 1000`
///
/// Cylindrical spring of round wire, linear rate. The half above the static gap is the standard's round figure for dynamic loading.
///
/// # Source
/// EN 13906-1:2013, sum of minimum gaps between coils (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let gap = spring::minimum_gap_cold_dynamic(Length::of::<mm>(12.0), Length::of::<mm>(96.0), Ratio::of::<one>(7.0))?;
/// assert_eq!(format!("{:.1} mm", gap.in_::<mm>()), "24.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring worked closer to its solid length strikes coil on coil and can break. The maker's drawing comes first, and a stop must end the travel before.
#[inline]
pub fn minimum_gap_cold_dynamic(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
) -> Result<Length> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0.1 <= .. <= 1000 ; "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones";
    }
    Ok(1.5 * minimum_gap_cold_static(wire_diameter, mean_diameter, active_coils)?)
}

/// Sum of the gaps that must stay open between the coils of a hot-coiled spring under a load that stays.
///
/// # Formula
/// `S_a = 0.02 n (D + d)`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
///
/// # Returns
/// The least length above the solid length at the shortest length in service, all gaps together.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0.1 <= active_coils <= 1000`
///
/// Cylindrical spring of round wire, linear rate. A suspension spring works: use `minimum_gap_hot_dynamic`.
///
/// # Source
/// EN 13906-1:2013, sum of minimum gaps between coils (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let gap = spring::minimum_gap_hot_static(Length::of::<mm>(12.0), Length::of::<mm>(96.0), Ratio::of::<one>(7.0))?;
/// assert_eq!(format!("{:.1} mm", gap.in_::<mm>()), "15.1 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring worked closer to its solid length strikes coil on coil and can break. The maker's drawing comes first, and a stop must end the travel before.
#[inline]
pub fn minimum_gap_hot_static(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
) -> Result<Length> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0.1 <= .. <= 1000 ; "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones";
    }
    Ok(0.02 * active_coils * (mean_diameter + wire_diameter))
}

/// Sum of the gaps that must stay open between the coils of a hot-coiled spring under a load that changes.
///
/// # Formula
/// `S_a = 0.04 n (D + d)`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
///
/// # Returns
/// The least length above the solid length at the shortest length in service, all gaps together.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0.1 <= active_coils <= 1000`
///
/// Cylindrical spring of round wire, linear rate. Twice the static gap is the standard's round figure for dynamic loading.
///
/// # Source
/// EN 13906-1:2013, sum of minimum gaps between coils (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let gap = spring::minimum_gap_hot_dynamic(Length::of::<mm>(12.0), Length::of::<mm>(96.0), Ratio::of::<one>(7.0))?;
/// assert_eq!(format!("{:.1} mm", gap.in_::<mm>()), "30.2 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring worked closer to its solid length strikes coil on coil and can break. The maker's drawing comes first, and a stop must end the travel before.
#[inline]
pub fn minimum_gap_hot_dynamic(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
) -> Result<Length> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0.1 <= .. <= 1000 ; "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones";
    }
    Ok(2.0 * minimum_gap_hot_static(wire_diameter, mean_diameter, active_coils)?)
}
