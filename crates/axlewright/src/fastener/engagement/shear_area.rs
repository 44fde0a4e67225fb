use crate::fastener::thread::TAN_30;
use crate::units::{Area, Length};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Area of the threads on a cylinder that cuts them, from the play between the pitch diameter and that cylinder.
pub(in crate::fastener) fn cut(cylinder: Length, play: Length, pitch: Length, engagement: Length) -> Area {
    let thick = (pitch * 0.5 + play * TAN_30).min(pitch);
    cylinder * engagement * (PI * (thick / pitch).si())
}

/// Area on which the thread of a bolt shears off, at the minor diameter of the tapped thread.
///
/// # Formula
/// `A = pi D_1 l / P min(P, P / 2 + (d_2 - D_1) tan 30°)`
///
/// # Parameters
/// - `internal_minor_diameter` — `D_1`, minor diameter of the tapped thread: the drilled hole; its largest size is on the safe side
/// - `external_pitch_diameter` — `d_2`, pitch diameter of the bolt; its least size is on the safe side
/// - `pitch` — `P`, distance from thread to thread
/// - `engagement` — `l`, length on which full threads meet, chamfers not counted
///
/// # Returns
/// The area of all engaged threads.
///
/// # Valid for
/// - `0.0005 <= internal_minor_diameter <= 0.2`
/// - `0.0005 <= external_pitch_diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= engagement <= 1`
/// - `external_pitch_diameter > internal_minor_diameter`
///
/// A 60 degree thread. All engaged threads carry alike, as they do when the softer ones yield.
///
/// # Source
/// FED-STD-H28/2 and ISO 965 basics: thickness of the thread on the shear cylinder (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let area = fastener::external_thread_shear_area(Length::of::<mm>(8.676), Length::of::<mm>(8.862), Length::of::<mm>(1.5), Length::of::<mm>(10.0))?;
/// assert_eq!(format!("{:.0} mm²", area.in_::<mm2>()), "156 mm²");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn external_thread_shear_area(
    internal_minor_diameter: Length,
    external_pitch_diameter: Length,
    pitch: Length,
    engagement: Length,
) -> Result<Area> {
    valid! {
        internal_minor_diameter: 0.0005 <= .. <= 0.2 ; "plausibility limit: threads are between 0.5 mm and 200 mm thick";
        external_pitch_diameter: 0.0005 <= .. <= 0.2 ; "plausibility limit: threads are between 0.5 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        engagement: 0 <= .. <= 1 ; "definition: a length; plausibility limit: at most 1 m";
        external_pitch_diameter > internal_minor_diameter ; "definition: the threads meet";
    }
    let play = external_pitch_diameter - internal_minor_diameter;
    Ok(cut(internal_minor_diameter, play, pitch, engagement))
}

/// Area on which a tapped thread shears off, at the outside of the bolt.
///
/// # Formula
/// `A = pi d l / P min(P, P / 2 + (d - D_2) tan 30°)`
///
/// # Parameters
/// - `external_diameter` — `d`, outside diameter of the bolt's thread; its least size is on the safe side
/// - `internal_pitch_diameter` — `D_2`, pitch diameter of the tapped thread; its largest size is on the safe side
/// - `pitch` — `P`, distance from thread to thread
/// - `engagement` — `l`, length on which full threads meet, chamfers not counted
///
/// # Returns
/// The area of all engaged threads.
///
/// # Valid for
/// - `0.0005 <= external_diameter <= 0.2`
/// - `0.0005 <= internal_pitch_diameter <= 0.2`
/// - `0.0001 <= pitch <= 0.02`
/// - `0 <= engagement <= 1`
/// - `external_diameter > internal_pitch_diameter`
///
/// A 60 degree thread. All engaged threads carry alike, as they do when the softer ones yield.
///
/// # Source
/// FED-STD-H28/2 and ISO 965 basics: thickness of the thread on the shear cylinder (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fastener, units::*};
/// let area = fastener::internal_thread_shear_area(Length::of::<mm>(9.732), Length::of::<mm>(9.206), Length::of::<mm>(1.5), Length::of::<mm>(10.0))?;
/// assert_eq!(format!("{:.0} mm²", area.in_::<mm2>()), "215 mm²");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn internal_thread_shear_area(
    external_diameter: Length,
    internal_pitch_diameter: Length,
    pitch: Length,
    engagement: Length,
) -> Result<Area> {
    valid! {
        external_diameter: 0.0005 <= .. <= 0.2 ; "plausibility limit: threads are between 0.5 mm and 200 mm thick";
        internal_pitch_diameter: 0.0005 <= .. <= 0.2 ; "plausibility limit: threads are between 0.5 mm and 200 mm thick";
        pitch: 0.0001 <= .. <= 0.02 ; "plausibility limit: pitches lie between 0.1 mm and 20 mm";
        engagement: 0 <= .. <= 1 ; "definition: a length; plausibility limit: at most 1 m";
        external_diameter > internal_pitch_diameter ; "definition: the threads meet";
    }
    let play = external_diameter - internal_pitch_diameter;
    Ok(cut(external_diameter, play, pitch, engagement))
}
