use crate::units::{AbsolutePressure, GaugePressure, Stress};
use crate::{Result, valid};

/// Lowest reading at the end of a pressure decay test that still proves the system tight.
///
/// # Formula
/// `p_l = p_t - l + e (1 + (p_t + p_a) / (p_1 + p_a))`
///
/// # Parameters
/// - `gauge_pressure` — `p_1`, reading at the start of the test
/// - `tight_pressure` — `p_t`, reading of a tight system at the end: `pressure_decay_tight_pressure`, or `pressure_decay_tight_pressure_over_coolant`
/// - `allowed_loss` — `l`, loss of pressure that is allowed beyond the change with temperature
/// - `gauge_error` — `e`, half width of the gauge's error
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The limit for the later reading. It counts the gauge's whole error against the system in both readings: the later one may read high, and the first one low.
/// An error of the first reading changes the tight reading in proportion to the absolute pressures.
///
/// # Valid for
/// - `0 <= gauge_pressure <= 1000000`
/// - `-110000 <= tight_pressure`
/// - `0 <= allowed_loss <= 1000000`
/// - `0 <= gauge_error <= 1000000`
/// - `40000 <= station_pressure <= 110000`
///
/// Trapped gas, alone or over coolant: the tight pressure is proportional to the first one, both absolute. The errors of thermometer and barometer are not in it.
///
/// # Source
/// Ideal gas law; worst case of two readings with the same gauge (definition)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let (start, air) = (GaugePressure::of::<psi_gauge>(15.0), AbsolutePressure::of::<psi_absolute>(14.7));
/// let tight = cooling::pressure_decay_tight_pressure(start, Temperature::of::<degF>(77.0), Temperature::of::<degF>(59.0), air)?;
/// let least = cooling::pressure_decay_least_pressure(start, tight, Stress::of::<psi>(1.0), Stress::of::<psi>(0.5), air)?;
/// assert_eq!(format!("{:.2} psi gauge", least.in_::<psi_gauge>()), "13.99 psi gauge"); // 13.5 is too low
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Compressed gas stores far more energy than liquid at the same pressure. Test a cold system, below the rating of its weakest component, and
/// stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn pressure_decay_least_pressure(
    gauge_pressure: GaugePressure,
    tight_pressure: GaugePressure,
    allowed_loss: Stress,
    gauge_error: Stress,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        tight_pressure: (-110000) <= .. ; "definition: less than no air at all is not there";
        allowed_loss: 0 <= .. <= 1000000 ; "definition: a loss that is allowed is not negative, and less than the highest reading";
        gauge_error: 0 <= .. <= 1000000 ; "definition: half a width is not negative, and less than the highest reading";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let air = station_pressure.si();
    let gain = (tight_pressure.si() + air) / (gauge_pressure.si() + air);
    let tight_at_most = tight_pressure.si() + gauge_error.si() * (1.0 + gain);
    Ok(GaugePressure::from_si(tight_at_most - allowed_loss.si()))
}
