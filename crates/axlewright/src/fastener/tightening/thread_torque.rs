use super::tightening_torque::thread_lever;
use crate::units::{Area, Force, Length, Ratio, Stress, Torque, torque};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Torque in the shank while a bolt is tightened: the share of the thread.
///
/// # Formula
/// `T_t = F (P / (2 pi) + m_t d_2 / (2 cos 30°))` with the pitch diameter `d_2 = d - 3/4 sqrt(3) / 2 P`
///
/// # Parameters
/// - `preload` — `F`, tension in the bolt
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread
/// - `thread_friction` — `m_t`, coefficient of friction of the thread
///
/// # Returns
/// The torque that twists the shank.
///
/// # Valid for
/// - `0 <= preload <= 100000000`
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= thread_friction <= 1`
/// - `diameter > pitch`
///
/// A 60 degree thread of one start. After tightening, part of the twist springs back; about half of it stays (from memory).
///
/// # Source
/// VDI 2230 part 1 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let torque = fastener::thread_torque(Force::of::<kN>(30.0), Length::of::<mm>(10.0), Length::of::<mm>(1.5), Ratio::of::<one>(0.12))?;
/// assert_eq!(format!("{:.1} N·m", torque.in_::<Nm>()), "25.9 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn thread_torque(
    preload: Force,
    diameter: Length,
    pitch: Length,
    thread_friction: Ratio,
) -> Result<Torque> {
    valid! {
        preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        thread_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        diameter > pitch ; "definition: the thread has a core";
    }
    Ok(torque(preload, thread_lever(diameter, pitch, thread_friction)))
}

/// Equivalent stress in the thread of a bolt that is stretched and twisted.
///
/// # Formula
/// `s = sqrt((F / A_s)^2 + 3 (16 T_t / (pi d_s^3))^2)` with the stress diameter `d_s = sqrt(4 A_s / pi)`
///
/// # Parameters
/// - `bolt_force` — `F`, tension in the bolt
/// - `stress_area` — `A_s`, stress area of the thread
/// - `thread_torque` — `T_t`, torque that twists the shank
///
/// # Returns
/// The stress of von Mises at the outside of the stress circle.
///
/// # Valid for
/// - `0 <= bolt_force <= 100000000`
/// - `0.0000001 <= stress_area <= 0.1`
/// - `0 <= thread_torque <= 1000000`
///
/// An elastic bolt. Compare it with the least yield strength.
///
/// # Source
/// Hypothesis of the distortion energy (von Mises); stress diameter by VDI 2230 part 1 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let stress = fastener::tightening_stress(Force::of::<kN>(30.0), Area::of::<mm2>(58.0), Torque::of::<Nm>(25.9))?;
/// assert_eq!(format!("{:.0} MPa", stress.in_::<MPa>()), "630 MPa");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn tightening_stress(bolt_force: Force, stress_area: Area, thread_torque: Torque) -> Result<Stress> {
    valid! {
        bolt_force: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
        stress_area: 1e-7 <= .. <= 0.1 ; "plausibility limit: bolts are between 0.1 mm² and 1000 cm² thick";
        thread_torque: 0 <= .. <= 1e6 ; "definition: it tightens; plausibility limit: at most 1 MN·m";
    }
    let (tension, twist) = stresses(bolt_force, stress_area, thread_torque);
    Ok(equivalent(tension, twist))
}

/// Tensile stress, and shear stress at the outside of the stress circle.
pub(in crate::fastener) fn stresses(force: Force, area: Area, torque: Torque) -> (Stress, Stress) {
    let diameter = (area * (4.0 / PI)).sqrt();
    let modulus = diameter.si() * diameter.si() * diameter.si() * (PI / 16.0);
    (force / area, Stress::from_si(torque.si() / modulus))
}

/// Equivalent stress of von Mises.
pub(in crate::fastener) fn equivalent(tension: Stress, shear: Stress) -> Stress {
    let (tension, shear) = (tension.si(), shear.si());
    Stress::from_si((tension * tension + 3.0 * shear * shear).sqrt())
}
