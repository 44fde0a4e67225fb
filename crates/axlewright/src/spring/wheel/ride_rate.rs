use crate::units::LinearStiffness;
use crate::{Result, valid};

/// Rate between body and ground: the wheel rate and the tyre's rate in series.
///
/// # Formula
/// `k_r = k_w k_t / (k_w + k_t)`
///
/// # Parameters
/// - `wheel_rate` — `k_w`, rate of the suspension at the wheel
/// - `tyre_rate` — `k_t`, vertical rate of the tyre at its pressure and load
///
/// # Returns
/// The ride rate, always less than either.
///
/// # Valid for
/// - `0 < wheel_rate`
/// - `0 < tyre_rate`
///
/// # Source
/// Springs in series; SAE J670 for the term ride rate (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::ride_rate(LinearStiffness::of::<lbf_in>(150.0), LinearStiffness::of::<lbf_in>(1350.0))?;
/// assert_eq!(format!("{:.1} lbf/in", rate.in_::<lbf_in>()), "135.0 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ride_rate(wheel_rate: LinearStiffness, tyre_rate: LinearStiffness) -> Result<LinearStiffness> {
    valid! {
        wheel_rate: 0 < .. ; "definition: both springs carry the load";
        tyre_rate: 0 < .. ; "definition: both springs carry the load";
    }
    Ok(LinearStiffness::from_raw(wheel_rate.raw() * tyre_rate / (wheel_rate + tyre_rate)))
}
