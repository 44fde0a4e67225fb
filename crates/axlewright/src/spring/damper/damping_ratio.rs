use super::critical_damping::critical_damping;
use crate::units::{Damping, LinearStiffness, Mass, Ratio};
use crate::{Result, valid};

/// Damping of one wheel as a share of critical damping.
///
/// # Formula
/// `zeta = c_w / (2 sqrt(k m))`
///
/// # Parameters
/// - `wheel_damping` — `c_w`, damping at the wheel: damper rate times the square of the damper's own motion ratio
/// - `tangent_rate` — `k`, tangent rate at ride height: wheel rate, or ride rate with the tyre in series (say which one it was)
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
///
/// # Returns
/// The damping ratio; at 1 the mass comes to rest without swinging past.
///
/// # Valid for
/// - `0 <= wheel_damping <= 1000000000`
/// - `1 <= tangent_rate <= 1000000000`
/// - `0.001 <= sprung_mass <= 1000000`
///
/// One mass on one linear spring and one viscous damper. A digressive damper has a ratio at a velocity, with the secant there. One damper for an axle: halve it.
///
/// # Source
/// Linear oscillator of one degree of freedom; ISO 2041 for the term damping ratio (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let ratio = spring::damping_ratio(Damping::of::<Ns_m>(2240.0), LinearStiffness::of::<N_mm>(25.0), Mass::of::<kg>(400.0))?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "0.35");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn damping_ratio(
    wheel_damping: Damping,
    tangent_rate: LinearStiffness,
    sprung_mass: Mass,
) -> Result<Ratio> {
    valid! {
        wheel_damping: 0 <= .. <= 1e9 ; "definition: a damper takes energy out; no damper reaches 1 GN·s/m";
        tangent_rate: 1 <= .. <= 1e9 ; "definition: only a positive rate brings the mass back; springs lie between 1 N/m and 1 GN/m";
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: a wheel carries between 1 g and 1000 t";
    }
    Ok(Ratio::from_si(wheel_damping.si() / critical_damping(tangent_rate, sprung_mass)?.si()))
}
