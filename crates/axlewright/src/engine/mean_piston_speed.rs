use crate::units::{AngularVelocity, Length, Velocity};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Mean speed of the piston.
///
/// # Formula
/// `v_m = s w / pi`
///
/// # Parameters
/// - `stroke` — `s`, travel of the piston
/// - `engine_speed` — `w`
///
/// # Returns
/// The distance that the piston moves over the time: two strokes a turn. Its peak speed is more than 1.5 times this mean.
///
/// # Valid for
/// - `0.001 <= stroke <= 10`
/// - `0 <= engine_speed <= 100000`
///
/// # Source
/// Definition, twice the stroke a turn; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 2 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let speed = engine::mean_piston_speed(Length::of::<mm>(96.0), AngularVelocity::of::<rpm>(4000.0))?;
/// assert_eq!(format!("{:.1} m/s", speed.in_::<m_s>()), "12.8 m/s");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn mean_piston_speed(stroke: Length, engine_speed: AngularVelocity) -> Result<Velocity> {
    valid! {
        stroke: 0.001 <= .. <= 10 ; "plausibility limit: pistons travel between 1 mm and 10 m";
        engine_speed: 0 <= .. <= 100e3 ; "definition: a speed without direction; plausibility limit: no engine turns faster than 950,000 rpm";
    }
    Ok(Velocity::from_si(stroke.si() * engine_speed.si() / PI))
}
