use crate::units::RotationalStiffness;
use crate::{Result, valid};

/// Roll stiffness of an axle to the ground: springs and bar in series with the tyres.
///
/// # Formula
/// `K = K_s K_t / (K_s + K_t)`
///
/// # Parameters
/// - `suspension_stiffness` — `K_s`, roll stiffness of springs and bar together
/// - `tyre_stiffness` — `K_t`, roll stiffness of the tyres, see `tyre_roll_stiffness`
///
/// # Returns
/// Moment over roll angle of the body to the ground.
///
/// # Valid for
/// - `0.001 <= suspension_stiffness <= 1000000000000`
/// - `0.001 <= tyre_stiffness <= 1000000000000`
///
/// Both carry the same moment: what the roll centre and the unsprung mass add to the tyres' part is left out here; the model `RollBalance` has it.
///
/// # Source
/// Springs in series; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::roll_stiffness_over_tyres(
///     RotationalStiffness::of::<Nm_deg>(1203.0), RotationalStiffness::of::<Nm_deg>(5795.0),
/// )?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "996 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn roll_stiffness_over_tyres(
    suspension_stiffness: RotationalStiffness,
    tyre_stiffness: RotationalStiffness,
) -> Result<RotationalStiffness> {
    valid! {
        suspension_stiffness: 0.001 <= .. <= 1e12 ; "definition: an axle that does not resist roll at all is none";
        tyre_stiffness: 0.001 <= .. <= 1e12 ; "definition: tyres carry";
    }
    let (suspension, tyres) = (suspension_stiffness.si(), tyre_stiffness.si());
    Ok(RotationalStiffness::from_si(suspension * (tyres / (suspension + tyres))))
}
