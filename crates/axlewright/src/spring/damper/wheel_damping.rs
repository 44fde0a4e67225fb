use crate::units::{Damping, Ratio};
use crate::{Result, valid};

/// Damping at the wheel of a damper on a lever.
///
/// # Formula
/// `c_w = c_d r^2`
///
/// # Parameters
/// - `damper_rate` — `c_d`, force over velocity of the damper itself; of a digressive one the secant at the velocity in question, gas force removed, mean of bump and rebound
/// - `damper_motion_ratio` — `r`, shortening of the damper, eye to eye, over travel of the wheel: the damper's own, not the spring's
///
/// # Returns
/// The damping at the wheel.
///
/// # Valid for
/// - `0 <= damper_rate <= 1000000000`
/// - `0 < damper_motion_ratio <= 1.5`
///
/// One damper for a wheel; of one that serves a whole axle each wheel gets half. The damper moves at `r` times the wheel's velocity: read its curve there.
///
/// # Source
/// Virtual power on a lever: `c_d (r v)^2 = c_w v^2`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let damping = spring::wheel_damping(Damping::of::<Ns_m>(3500.0), Ratio::of::<one>(0.8))?;
/// assert_eq!(format!("{:.0} N·s/m", damping.in_::<Ns_m>()), "2240 N·s/m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn wheel_damping(damper_rate: Damping, damper_motion_ratio: Ratio) -> Result<Damping> {
    valid! {
        damper_rate: 0 <= .. <= 1e9 ; "definition: a damper takes energy out; no damper reaches 1 GN·s/m";
        damper_motion_ratio: 0 < .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
    }
    let ratio = damper_motion_ratio.si();
    Ok(Damping::from_si(damper_rate.si() * ratio * ratio))
}
