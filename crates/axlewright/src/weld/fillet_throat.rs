use crate::units::{Angle, Length};
use crate::{Result, valid};

/// Angles between the faces, in radians, below which the electrode does not reach the corner: 60 and 45 deg.
const SHARP: f64 = core::f64::consts::FRAC_PI_3;
const SHARPER: f64 = core::f64::consts::FRAC_PI_4;

/// Effective throat of a fillet weld with equal legs.
///
/// # Formula
/// `a = z cos(psi / 2)`; below 60 deg, less what the electrode does not reach: 3 mm, below 45 deg 6 mm, and never below zero
///
/// # Parameters
/// - `leg` — `z`, leg of the fillet: from the corner to the toe, along either face
/// - `face_angle` — `psi`, angle between the two faces that the weld joins: 90 deg for a tee, less on the sharp side of a coped tube
///
/// # Returns
/// Throat that counts, from the corner square to the face of the weld.
///
/// # Valid for
/// - `0.0005 <= leg <= 0.1`
/// - `0.5235987755982988 <= face_angle <= 2.0943951023931953`
///
/// A flat or convex face, full size along the run. Measure the smaller leg.
///
/// # Source
/// Geometry of a right-angled fillet, 0.707 of the leg; loss at a sharp corner after AWS D1.1, Z-loss of partial-penetration groove and skewed fillet welds (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange): below 30 deg no weld counts
///
/// # Example
/// ```
/// use axlewright::{units::*, weld};
/// let throat = weld::fillet_throat(Length::of::<mm>(5.0), Angle::of::<deg>(90.0))?;
/// assert_eq!(format!("{:.2} mm", throat.in_::<mm>()), "3.54 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A weld that lacks root penetration can look whole and break at a fraction of its strength. Local codes and licensed practice come first.
#[inline]
pub fn fillet_throat(leg: Length, face_angle: Angle) -> Result<Length> {
    valid! {
        leg: 0.0005 <= .. <= 0.1 ; "plausibility limit: legs are between 0.5 mm and 100 mm";
        face_angle: 0.5235987755982988 <= .. <= 2.0943951023931953 ; "AWS D1.1: no fillet counts below 30 deg; above 120 deg the throat is too shallow (from memory)";
    }
    let lost = match face_angle.si() {
        angle if angle < SHARPER => 0.006,
        angle if angle < SHARP => 0.003,
        _ => 0.0,
    };
    Ok(Length::from_si((leg.si() * (0.5 * face_angle.si()).cos() - lost).max(0.0)))
}
