use crate::spring::wheel::ride_rate::ride_rate;
use crate::units::LinearStiffness;
use crate::{Result, valid};

/// Rate of two springs stacked on each other, each carrying the whole load.
///
/// # Formula
/// `k = k_1 k_2 / (k_1 + k_2)`
///
/// # Parameters
/// - `first_rate` — `k_1`, rate of one spring
/// - `second_rate` — `k_2`, rate of the other spring
///
/// # Returns
/// The rate of the stack, always less than either.
///
/// # Valid for
/// - `1 <= first_rate <= 1000000000`
/// - `1 <= second_rate <= 1000000000`
///
/// Only while neither is solid: from then on the other one works alone (see `series_crossover`).
///
/// # Source
/// Springs in series: equal force, deflections add (Hooke's law)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::series_rate(LinearStiffness::of::<lbf_in>(150.0), LinearStiffness::of::<lbf_in>(300.0))?;
/// assert_eq!(format!("{:.0} lbf/in", rate.in_::<lbf_in>()), "100 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn series_rate(first_rate: LinearStiffness, second_rate: LinearStiffness) -> Result<LinearStiffness> {
    valid! {
        first_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        second_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
    }
    // A suspension on its tyre is such a stack.
    ride_rate(first_rate, second_rate)
}
