use crate::units::LinearStiffness;
use crate::{Result, valid};

/// Rate of two springs side by side or nested in each other, both shortened by the same travel.
///
/// # Formula
/// `k = k_1 + k_2`
///
/// # Parameters
/// - `first_rate` — `k_1`, rate of one spring
/// - `second_rate` — `k_2`, rate of the other spring
///
/// # Returns
/// The rate of the pair.
///
/// # Valid for
/// - `1 <= first_rate <= 1000000000`
/// - `1 <= second_rate <= 1000000000`
///
/// Only while both touch their seats: where one is shorter, its rate adds from the travel at which it is met. Nested springs are
/// wound in opposite directions, so that their coils cannot lock.
///
/// # Source
/// Springs in parallel: equal deflection, forces add (Hooke's law)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::parallel_rate(LinearStiffness::of::<lbf_in>(150.0), LinearStiffness::of::<lbf_in>(300.0))?;
/// assert_eq!(format!("{:.0} lbf/in", rate.in_::<lbf_in>()), "450 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn parallel_rate(first_rate: LinearStiffness, second_rate: LinearStiffness) -> Result<LinearStiffness> {
    valid! {
        first_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        second_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
    }
    Ok(first_rate + second_rate)
}
