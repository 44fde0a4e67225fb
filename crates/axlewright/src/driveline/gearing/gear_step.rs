use crate::units::Ratio;
use crate::{Result, valid};

/// Step between two gears: how far apart their ratios are.
///
/// # Formula
/// `s = i_1 / i_2`
///
/// # Parameters
/// - `gear_ratio_before` — `i_1`, input speed over output speed of the gear that is left
/// - `gear_ratio_after` — `i_2`, ratio of the gear after the shift
///
/// # Returns
/// The step: above 1 for a shift up, where the engine falls to `1 / s` of its speed; below 1 for a shift down.
///
/// # Valid for
/// - `0.1 <= gear_ratio_before <= 30`
/// - `0.1 <= gear_ratio_after <= 30`
///
/// # Source
/// Definition; Naunheimer et al., Automotive Transmissions (2011), gear step (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let step = driveline::gear_step(Ratio::of::<one>(4.2), Ratio::of::<one>(2.5))?;
/// assert_eq!(format!("{:.2}", step.in_::<one>()), "1.68");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn gear_step(gear_ratio_before: Ratio, gear_ratio_after: Ratio) -> Result<Ratio> {
    valid! {
        gear_ratio_before: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        gear_ratio_after: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
    }
    Ok(gear_ratio_before / gear_ratio_after)
}
