use crate::units::{AbsolutePressure, GaugePressure, Ratio, Stress, absolute, pressure_ratio};
use crate::{Result, valid};

/// Pressure ratio over a compressor from a boost gauge.
///
/// # Formula
/// `R = (p_a + p_b) / (p_a - dp)`
///
/// # Parameters
/// - `boost_pressure` — `p_b`, gauge reading at the outlet of the compressor; if the gauge is behind a charge cooler, add the pressure lost there
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
/// - `inlet_loss` — `dp`, pressure lost in air filter and duct before the compressor; 0 if neglected
///
/// # Returns
/// Absolute pressure behind the compressor over absolute pressure before it.
///
/// # Valid for
/// - `0 <= boost_pressure <= 10000000`
/// - `20000 <= station_pressure <= 200000`
/// - `0 <= inlet_loss <= 15000`
///
/// Static pressures are taken for total pressures: right within a few percent at the air speeds of ducts.
///
/// # Source
/// Definition of a pressure ratio
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let ratio = engine::boost_pressure_ratio(
///     GaugePressure::of::<psi_gauge>(18.0), AbsolutePressure::of::<atm_absolute>(1.0), Stress::of::<psi>(0.5),
/// )?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "2.30");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Equal boost at a higher altitude is a higher ratio: the compressor turns faster and the charge gets hotter. Keep to the speed limit on the maker's map.
#[inline]
pub fn boost_pressure_ratio(
    boost_pressure: GaugePressure,
    station_pressure: AbsolutePressure,
    inlet_loss: Stress,
) -> Result<Ratio> {
    valid! {
        boost_pressure: 0 <= .. <= 10e6 ; "definition: boost is above the pressure of the air around; plausibility limit: at most 10 MPa";
        station_pressure: 20e3 <= .. <= 200e3 ; "plausibility limit: below 20 kPa and above 200 kPa no vehicle runs";
        inlet_loss: 0 <= .. <= 15e3 ; "definition: a duct only loses; plausibility limit: above 15 kPa it is blocked";
    }
    let before = AbsolutePressure::from_si(station_pressure.si() - inlet_loss.si());
    Ok(pressure_ratio(absolute(boost_pressure, station_pressure), before))
}
