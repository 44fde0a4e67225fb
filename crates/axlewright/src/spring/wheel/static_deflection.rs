use crate::units::{Force, Length, LinearStiffness};
use crate::{Result, valid};

/// Deflection of a linear spring under a load, from its free length.
///
/// # Formula
/// `x = F / k`
///
/// # Parameters
/// - `load` — `F`, load on the spring
/// - `rate` — `k`, of a linear spring, constant over the whole deflection; for a progressive spring it is only the equivalent one, the load over its deflection there
///
/// # Returns
/// The deflection.
///
/// # Valid for
/// - `0 <= load`
/// - `0 < rate`
///
/// Only where the spring is linear from its free length and not preloaded; sag on a linkage is an integral of the force instead.
///
/// # Source
/// Definition of a rate (Hooke's law)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let sag = spring::static_deflection(Force::of::<lbf>(900.0), LinearStiffness::of::<lbf_in>(300.0))?;
/// assert_eq!(format!("{:.2} in", sag.in_::<inch>()), "3.00 in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn static_deflection(load: Force, rate: LinearStiffness) -> Result<Length> {
    valid! {
        load: 0 <= .. ; "definition: a coil spring between seats only pushes";
        rate: 0 < .. ; "definition: a spring's rate is positive";
    }
    Ok(load / rate)
}
