use super::tightening_torque::{force, lever};
use crate::units::{Force, Length, Ratio, Torque, torque};
use crate::{Result, valid};

/// Nut factor of a bolt: torque over preload and diameter.
///
/// # Formula
/// `K = (P / (2 pi) + m_t d_2 / (2 cos 30°) + m_h D_m / 2) / d` with the pitch diameter `d_2 = d - 3/4 sqrt(3) / 2 P`
///
/// # Parameters
/// - `diameter` — `d`, nominal diameter of the thread
/// - `pitch` — `P`, distance from thread to thread
/// - `thread_friction` — `m_t`, coefficient of friction of the thread
/// - `head_friction` — `m_h`, coefficient of friction under the head or nut that is turned
/// - `head_friction_diameter` — `D_m`, mean diameter of the face that rubs there: half of the washer face plus half of the hole
///
/// # Returns
/// The nut factor, about 0.2 for a dry bolt.
///
/// # Valid for
/// - `0.001 <= diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= thread_friction <= 1`
/// - `0 <= head_friction <= 1`
/// - `0.001 <= head_friction_diameter <= 0.5`
/// - `diameter > pitch`
/// - `head_friction_diameter > diameter`
///
/// A 60 degree thread of one start, without prevailing torque.
///
/// # Source
/// Shigley's Mechanical Engineering Design, torque coefficient; VDI 2230 part 1 (both from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let factor = fastener::nut_factor(Length::of::<mm>(10.0), Length::of::<mm>(1.5), Ratio::of::<one>(0.15), Ratio::of::<one>(0.15), Length::of::<mm>(13.0))?;
/// assert_eq!(format!("{:.3}", factor.in_::<one>()), "0.200");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn nut_factor(
    diameter: Length,
    pitch: Length,
    thread_friction: Ratio,
    head_friction: Ratio,
    head_friction_diameter: Length,
) -> Result<Ratio> {
    valid! {
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        thread_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction: 0 <= .. <= 1 ; "plausibility limit: steel on steel rubs with less than 1";
        head_friction_diameter: 0.001 <= .. <= 0.5 ; "plausibility limit: heads are between 1 mm and 500 mm wide";
        diameter > pitch ; "definition: the thread has a core";
        head_friction_diameter > diameter ; "definition: the head rests beside the hole";
    }
    Ok(lever(diameter, pitch, thread_friction, head_friction, head_friction_diameter) / diameter)
}

/// Torque that tightens a bolt to a preload, by its nut factor.
///
/// # Formula
/// `T = K F d`
///
/// # Parameters
/// - `nut_factor` — `K`, torque over preload and diameter; common practice, no source: 0.2 as delivered, 0.15 oiled, 0.12 with anti-seize
/// - `preload` — `F`, tension in the bolt
/// - `diameter` — `d`, nominal diameter of the thread
///
/// # Returns
/// The torque at the wrench.
///
/// # Valid for
/// - `0.02 <= nut_factor <= 1`
/// - `0 <= preload <= 100000000`
/// - `0.001 <= diameter <= 0.2`
///
/// One factor holds for one finish and one lubricant. It scatters by 30 % (from memory).
///
/// # Source
/// Shigley's Mechanical Engineering Design, bolt torque requirements (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let torque = fastener::torque_by_nut_factor(Ratio::of::<one>(0.2), Force::of::<N>(25230.0), Length::of::<mm>(10.0))?;
/// assert_eq!(format!("{:.1} N·m", torque.in_::<Nm>()), "50.5 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A greased bolt takes far more preload at the same torque, and may break. The maker's torque comes first.
#[inline]
pub fn torque_by_nut_factor(nut_factor: Ratio, preload: Force, diameter: Length) -> Result<Torque> {
    valid! {
        nut_factor: 0.02 <= .. <= 1 ; "plausibility limit: nut factors lie between 0.02 and 1";
        preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
    }
    Ok(torque(preload, nut_factor * diameter))
}

/// Preload that a torque gives a bolt, by its nut factor.
///
/// # Formula
/// `F = T / (K d)`
///
/// # Parameters
/// - `nut_factor` — `K`, torque over preload and diameter; common practice, no source: 0.2 as delivered, 0.15 oiled, 0.12 with anti-seize
/// - `torque` — `T`, torque at the wrench, less the prevailing torque of a lock nut
/// - `diameter` — `d`, nominal diameter of the thread
///
/// # Returns
/// The tension in the bolt. The lowest factor gives the peak preload, the highest one the least preload.
///
/// # Valid for
/// - `0.02 <= nut_factor <= 1`
/// - `0 <= torque <= 1000000`
/// - `0.001 <= diameter <= 0.2`
///
/// One factor holds for one finish and one lubricant. It scatters by 30 % (from memory).
///
/// # Source
/// Shigley's Mechanical Engineering Design, bolt torque requirements (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let preload = fastener::preload_by_nut_factor(Ratio::of::<one>(0.15), Torque::of::<Nm>(94.5), Length::of::<mm>(12.0))?;
/// assert_eq!(format!("{:.1} kN", preload.in_::<kN>()), "52.5 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A greased bolt takes far more preload at the same torque, and may break. The maker's torque comes first.
#[inline]
pub fn preload_by_nut_factor(nut_factor: Ratio, torque: Torque, diameter: Length) -> Result<Force> {
    valid! {
        nut_factor: 0.02 <= .. <= 1 ; "plausibility limit: nut factors lie between 0.02 and 1";
        torque: 0 <= .. <= 1e6 ; "definition: it tightens; plausibility limit: at most 1 MN·m";
        diameter: 0.001 <= .. <= 0.2 ; "plausibility limit: bolts are between 1 mm and 200 mm thick";
    }
    Ok(force(torque, nut_factor * diameter))
}
