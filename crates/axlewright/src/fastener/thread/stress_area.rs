use super::geometry::{Geometry, Series};
use crate::units::{Area, Length};
use crate::{Result, valid};

/// Stress area of a metric bolt: the area that its tensile strength counts on.
///
/// # Formula
/// `A_s = pi / 4 (d - 13/12 H)^2` with `H = sqrt(3) / 2 P`, the mean of pitch and root diameter; `0.9382 P` for `13/12 H`
///
/// # Parameters
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread
///
/// # Returns
/// The stress area.
///
/// # Valid for
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `diameter > pitch`
///
/// A metric thread of 60 degrees with a single start.
///
/// # Source
/// ISO 898-1, stress area from `d_2` and `d_3`; ISO 724, basic diameters (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let area = fastener::metric_stress_area(Length::of::<mm>(10.0), Length::of::<mm>(1.5))?;
/// assert_eq!(format!("{:.1} mm²", area.in_::<mm2>()), "58.0 mm²");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn metric_stress_area(diameter: Length, pitch: Length) -> Result<Area> {
    valid! {
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        diameter > pitch ; "definition: the thread has a core";
    }
    Ok(Geometry { series: Series::Metric, diameter, pitch }.stress_area())
}

/// Stress area of a unified inch bolt: the area that its tensile strength counts on.
///
/// # Formula
/// `A_s = pi / 4 (d - 9/8 H)^2` with `H = sqrt(3) / 2 P`; `0.9743 P` for `9/8 H`
///
/// # Parameters
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread: an inch over the threads per inch
///
/// # Returns
/// The stress area.
///
/// # Valid for
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `diameter > pitch`
///
/// A unified thread of 60 degrees with a single start.
///
/// # Source
/// ASME B1.1, tensile stress area (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let area = fastener::unified_stress_area(Length::of::<inch>(0.375), Length::of::<inch>(1.0 / 16.0))?;
/// assert_eq!(format!("{:.4} in²", area.in_::<in2>()), "0.0775 in²");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn unified_stress_area(diameter: Length, pitch: Length) -> Result<Area> {
    valid! {
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        diameter > pitch ; "definition: the thread has a core";
    }
    Ok(Geometry { series: Series::Unified, diameter, pitch }.stress_area())
}
