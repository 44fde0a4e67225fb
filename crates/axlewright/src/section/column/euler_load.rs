use crate::units::{Force, Length, SecondMoment, Stress};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Load at which a straight, slender column buckles, pinned at both ends.
///
/// # Formula
/// `P_e = pi^2 E I / L^2`
///
/// # Parameters
/// - `elastic_modulus` — `E`, elastic modulus
/// - `second_moment` — `I`, least second moment of the section
/// - `length` — `L`, length between the centres of the joints
///
/// # Returns
/// The load in compression, positive. No real column bears it: see `bowed_column_load`.
///
/// # Valid for
/// - `1000000000 <= elastic_modulus <= 1000000000000`
/// - `0 < second_moment <= 100`
/// - `0 < length <= 100`
///
/// One section all along, joints free to turn in the plane of the least second moment, no load between them.
///
/// # Source
/// Euler; Shigley's Mechanical Engineering Design, ch. 4 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{section, units::*};
/// let buckles = section::euler_load(Stress::of::<GPa>(205.0), SecondMoment::of::<mm4>(28_620.0), Length::of::<mm>(900.0))?;
/// assert_eq!(format!("{:.1} kN", buckles.in_::<kN>()), "71.5 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A link that buckles lets go of its axle or wheel. Keep a margin of 2 and more, and have safety parts checked by a licensed engineer.
#[inline]
pub fn euler_load(elastic_modulus: Stress, second_moment: SecondMoment, length: Length) -> Result<Force> {
    valid! {
        elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa";
        second_moment: 0 < .. <= 100 ; "definition: a section resists bending";
        length: 0 < .. <= 100 ; "definition: joints lie apart";
    }
    Ok(Force::from_raw(PI * PI * elastic_modulus.raw() * second_moment.raw() / (length.raw() * length.raw())))
}
