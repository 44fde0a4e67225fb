use crate::units::{Damping, LinearStiffness, Mass};
use crate::{Result, valid};

/// Damping at the wheel that just keeps the sprung mass from swinging past its rest position.
///
/// # Formula
/// `c_c = 2 sqrt(k m)`
///
/// # Parameters
/// - `tangent_rate` — `k`, tangent rate at ride height, at the wheel
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
///
/// # Returns
/// The critical damping at the wheel; at the damper it is this over the square of the damper's own motion ratio.
///
/// # Valid for
/// - `0 < tangent_rate`
/// - `0 < sprung_mass`
///
/// One mass on one linear spring and one viscous damper.
///
/// # Source
/// Linear oscillator of one degree of freedom; ISO 2041 for the term critical damping (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let damping = spring::critical_damping(LinearStiffness::of::<N_mm>(25.0), Mass::of::<kg>(400.0))?;
/// assert_eq!(format!("{:.0} N·s/m", damping.in_::<Ns_m>()), "6325 N·s/m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn critical_damping(tangent_rate: LinearStiffness, sprung_mass: Mass) -> Result<Damping> {
    valid! {
        tangent_rate: 0 < .. ; "definition: only a positive rate brings the mass back";
        sprung_mass: 0 < .. ; "definition: a mass is positive";
    }
    Ok(Damping::from_si(2.0 * (tangent_rate.raw() * sprung_mass).value.sqrt()))
}
