use crate::units::{Force, Ratio};
use crate::{Result, valid};

/// Share of the front axle in the load that a turn moves to the outer wheels.
///
/// # Formula
/// `q = F_f / (F_f + F_r)`
///
/// # Parameters
/// - `front_load_transfer` — `F_f`, that the outer front wheel gains
/// - `rear_load_transfer` — `F_r`, that the outer rear wheel gains
///
/// # Returns
/// Front over both. The axle that moves more of its load than the other loses more of its grip: a share above that of the front axle in the weight tends to understeer, one below it to oversteer.
///
/// # Valid for
/// - `0 < front_load_transfer <= 100000000`
/// - `0 < rear_load_transfer <= 100000000`
///
/// The tendency holds for tyres alike on both axles whose grip falls with load, at the limit; drive, camber and toe change it.
///
/// # Source
/// SAE J670, tire lateral load transfer distribution; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let share = suspension::front_transfer_share(Force::of::<N>(3005.0), Force::of::<N>(2600.0))?;
/// assert_eq!(format!("{:.1} %", share.in_::<percent>()), "53.6 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn front_transfer_share(front_load_transfer: Force, rear_load_transfer: Force) -> Result<Ratio> {
    valid! {
        front_load_transfer: 0 < .. <= 1e8 ; "definition: load moves to the outer wheel";
        rear_load_transfer: 0 < .. <= 1e8 ; "definition: load moves to the outer wheel";
    }
    Ok(front_load_transfer / (front_load_transfer + rear_load_transfer))
}
