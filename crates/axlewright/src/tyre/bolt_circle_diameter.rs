use crate::base::numeric::sine_cosine;
use crate::base::valid::whole;
use crate::units::{Length, Ratio};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Diameter of the bolt circle from the distance between two adjacent studs.
///
/// # Formula
/// `d_b = s / sin(pi / n)`
///
/// # Parameters
/// - `adjacent_stud_spacing` — `s`, centre to centre of two adjacent studs: outside to outside less one stud
/// - `studs` — `n`, whole
///
/// # Returns
/// The diameter of the circle through the stud centres.
///
/// # Valid for
/// - `0.001 <= adjacent_stud_spacing <= 1`
/// - `3 <= studs <= 10`
///
/// `studs` is a whole number, and the studs are at equal angles. An error of the reading is multiplied by `1 / sin(pi / n)`: 1.7 for five studs, 2.6 for eight.
///
/// # Source
/// Chord of a regular polygon
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for studs that are not whole
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let circle = tyre::bolt_circle_diameter(Length::of::<inch>(2.645), Ratio::of::<one>(5.0))?;
/// assert_eq!(format!("{:.2} in", circle.in_::<inch>()), "4.50 in");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Two bolt circles a few tenths of a millimetre apart look alike. A wheel forced on the wrong one works loose and comes off. Hub bore, seat and thread must fit, too.
#[inline]
pub fn bolt_circle_diameter(adjacent_stud_spacing: Length, studs: Ratio) -> Result<Length> {
    valid! {
        adjacent_stud_spacing: 0.001 <= .. <= 1 ; "plausibility limit: studs stand between 1 mm and 1 m apart";
        studs: 3 <= .. <= 10 ; "plausibility limit: wheels are held by 3 to 10 studs";
    }
    whole("studs", studs)?;
    let (half_chord, _) = sine_cosine(PI / studs.si());
    Ok(adjacent_stud_spacing / half_chord)
}
