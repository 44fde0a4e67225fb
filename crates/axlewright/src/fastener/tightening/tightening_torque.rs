use crate::fastener::thread::{COS_30, pitch_diameter};
use crate::units::{Force, Length, Ratio, Torque, torque};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Lever of the preload on the tightening torque: pitch, thread friction and head friction.
#[inline]
pub(in crate::fastener) fn lever(
    diameter: Length,
    pitch: Length,
    thread_friction: Ratio,
    head_friction: Ratio,
    head_friction_diameter: Length,
) -> Length {
    thread_lever(diameter, pitch, thread_friction) + head_friction * (head_friction_diameter * 0.5)
}

/// The same without the head: what twists the shank.
#[inline]
pub(in crate::fastener) fn thread_lever(diameter: Length, pitch: Length, thread_friction: Ratio) -> Length {
    pitch * (0.5 / PI) + thread_friction * (pitch_diameter(diameter, pitch) * (0.5 / COS_30))
}

/// Torque that tightens a bolt to a preload, by the friction of thread and head.
///
/// # Formula
/// `T = F (P / (2 pi) + m_t d_2 / (2 cos 30°) + m_h D_m / 2)` with the pitch diameter `d_2 = d - 3/4 sqrt(3) / 2 P`
///
/// # Parameters
/// - `preload` — `F`, tension in the bolt
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread
/// - `thread_friction` — `m_t`, coefficient of friction of the thread
/// - `head_friction` — `m_h`, coefficient of friction under the head or nut that is turned
/// - `head_friction_diameter` — `D_m`, mean diameter of the face that rubs there: half of the washer face plus half of the hole
///
/// # Returns
/// The torque at the wrench.
///
/// # Valid for
/// - `0 <= preload <= 100000000`
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= thread_friction <= 1`
/// - `0 <= head_friction <= 1`
/// - `0.001 <= head_friction_diameter <= 0.5`
/// - `diameter > pitch`
/// - `head_friction_diameter > diameter`
///
/// A 60 degree thread of one start, tightened without prevailing torque: add that of a lock nut. The product of pitch and friction is left out, which at a friction of 0.12 makes the torque 0.4 % low.
///
/// # Source
/// VDI 2230 part 1 and N. Motosh, J. Engineering for Industry 98 (1976), both from memory
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let torque = fastener::tightening_torque(Force::of::<kN>(30.0), Length::of::<mm>(10.0), Length::of::<mm>(1.5), Ratio::of::<one>(0.12), Ratio::of::<one>(0.12), Length::of::<mm>(13.0))?;
/// assert_eq!(format!("{:.1} N·m", torque.in_::<Nm>()), "49.3 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Friction scatters more than any wrench: judge the joint at the least and at the peak preload. A greased bolt takes far more preload at the same torque, and may break. The maker's torque comes first.
#[inline]
pub fn tightening_torque(
    preload: Force,
    diameter: Length,
    pitch: Length,
    thread_friction: Ratio,
    head_friction: Ratio,
    head_friction_diameter: Length,
) -> Result<Torque> {
    valid! {
        preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        thread_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction_diameter: 0.001 <= .. <= 0.5 ; "plausibility limit: heads are between 1 mm and 500 mm wide";
        diameter > pitch ; "definition: the thread has a core";
        head_friction_diameter > diameter ; "definition: the head rests beside the hole";
    }
    Ok(torque(preload, lever(diameter, pitch, thread_friction, head_friction, head_friction_diameter)))
}

/// Preload that a torque gives a bolt, by the friction of thread and head.
///
/// # Formula
/// `F = T / (P / (2 pi) + m_t d_2 / (2 cos 30°) + m_h D_m / 2)` with the pitch diameter `d_2 = d - 3/4 sqrt(3) / 2 P`
///
/// # Parameters
/// - `torque` — `T`, torque at the wrench, less the prevailing torque of a lock nut
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread
/// - `thread_friction` — `m_t`, coefficient of friction of the thread
/// - `head_friction` — `m_h`, coefficient of friction under the head or nut that is turned
/// - `head_friction_diameter` — `D_m`, mean diameter of the face that rubs there: half of the washer face plus half of the hole
///
/// # Returns
/// The tension in the bolt. The lowest friction gives the peak preload, the highest one the least preload.
///
/// # Valid for
/// - `0 <= torque <= 1000000`
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= thread_friction <= 1`
/// - `0 <= head_friction <= 1`
/// - `0.001 <= head_friction_diameter <= 0.5`
/// - `diameter > pitch`
/// - `head_friction_diameter > diameter`
///
/// A 60 degree thread of one start. The product of pitch and friction is left out, which at a friction of 0.12 makes the preload 0.4 % high.
///
/// # Source
/// VDI 2230 part 1 and N. Motosh, J. Engineering for Industry 98 (1976), both from memory
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let preload = fastener::preload_from_torque(Torque::of::<Nm>(50.0), Length::of::<mm>(10.0), Length::of::<mm>(1.5), Ratio::of::<one>(0.08), Ratio::of::<one>(0.08), Length::of::<mm>(13.0))?;
/// assert_eq!(format!("{:.1} kN", preload.in_::<kN>()), "42.5 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Friction scatters more than any wrench: judge the joint at the least and at the peak preload. A greased bolt takes far more preload at the same torque, and may break. The maker's torque comes first.
#[inline]
pub fn preload_from_torque(
    torque: Torque,
    diameter: Length,
    pitch: Length,
    thread_friction: Ratio,
    head_friction: Ratio,
    head_friction_diameter: Length,
) -> Result<Force> {
    valid! {
        torque: 0 <= .. <= 1e6 ; "definition: it tightens; plausibility limit: at most 1 MN·m";
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        thread_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction_diameter: 0.001 <= .. <= 0.5 ; "plausibility limit: heads are between 1 mm and 500 mm wide";
        diameter > pitch ; "definition: the thread has a core";
        head_friction_diameter > diameter ; "definition: the head rests beside the hole";
    }
    let lever = lever(diameter, pitch, thread_friction, head_friction, head_friction_diameter);
    Ok(force(torque, lever))
}

/// Force that has this torque on a lever.
#[inline]
pub(in crate::fastener) fn force(torque: Torque, lever: Length) -> Force {
    Force::from_si(torque.si() / lever.si())
}
