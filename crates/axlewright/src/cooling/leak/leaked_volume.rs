use crate::units::{AbsolutePressure, GaugePressure, Volume, absolute, pressure_ratio};
use crate::{Result, valid};

/// Air that left a system under test, from the pressure it lost.
///
/// # Formula
/// `V = V_g (p_1 - p_2) / p_a`
///
/// # Parameters
/// - `gas_volume` — `V_g`, of all the air trapped in the system and in the tester
/// - `tight_pressure` — `p_1`, gauge reading that a tight system would show now: the first reading, or `pressure_decay_tight_pressure` and its like where it warmed or cooled
/// - `gauge_pressure` — `p_2`, gauge reading now
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The air, as it takes up room outside; negative where the reading rose.
///
/// # Valid for
/// - `0.000001 <= gas_volume <= 1000`
/// - `0 <= tight_pressure <= 1000000`
/// - `0 <= gauge_pressure <= 1000000`
/// - `40000 <= station_pressure <= 110000`
///
/// All that leaked was gas, the space it left stayed as large, and the temperature is that of the reading that a tight system would show. Divided by the time it
/// is the mean leak; it slows as the pressure falls.
///
/// # Source
/// Boyle's law
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let lost = cooling::leaked_air_volume(
///     Volume::of::<L>(1.5), GaugePressure::of::<kPa_gauge>(100.0), GaugePressure::of::<kPa_gauge>(90.0), AbsolutePressure::of::<kPa_absolute>(100.0),
/// )?;
/// assert_eq!(format!("{:.0} mL", lost.in_::<mL>()), "150 mL");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Compressed gas stores far more energy than liquid at the same pressure. Test a cold system, below the rating of its weakest component, and
/// stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn leaked_air_volume(
    gas_volume: Volume,
    tight_pressure: GaugePressure,
    gauge_pressure: GaugePressure,
    station_pressure: AbsolutePressure,
) -> Result<Volume> {
    valid! {
        gas_volume: 0.000001 <= .. <= 1000 ; "full of liquid a fall of pressure says nothing of a volume; no vehicle holds 1000 m³ of gas";
        tight_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    Ok(gas_volume * (tight_pressure.si() - gauge_pressure.si()) / station_pressure.si())
}

/// Coolant that left a system under test, from the pressure that the air trapped above it lost.
///
/// # Formula
/// `V = V_g ((p_1 + p_a) / (p_2 + p_a) - 1)`
///
/// # Parameters
/// - `gas_volume` — `V_g`, of all the air trapped in the system and in the tester
/// - `tight_pressure` — `p_1`, gauge reading that a tight system would show now: the first reading, or `pressure_decay_tight_pressure` and its like where it warmed or cooled
/// - `gauge_pressure` — `p_2`, gauge reading now
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The coolant; negative where the reading rose.
///
/// # Valid for
/// - `0.000001 <= gas_volume <= 1000`
/// - `0 <= tight_pressure <= 1000000`
/// - `0 <= gauge_pressure <= 1000000`
/// - `40000 <= station_pressure <= 110000`
///
/// All that leaked was coolant and the trapped air took its place, at the temperature of the reading that a tight system would show. Hoses that give way look like a
/// leak: wait until they have settled.
///
/// # Source
/// Boyle's law
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let lost = cooling::leaked_coolant_volume(
///     Volume::of::<L>(1.5), GaugePressure::of::<kPa_gauge>(100.0), GaugePressure::of::<kPa_gauge>(90.0), AbsolutePressure::of::<kPa_absolute>(100.0),
/// )?;
/// assert_eq!(format!("{:.0} mL", lost.in_::<mL>()), "79 mL");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Compressed gas stores far more energy than liquid at the same pressure. Test a cold system, below the rating of its weakest component, and
/// stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn leaked_coolant_volume(
    gas_volume: Volume,
    tight_pressure: GaugePressure,
    gauge_pressure: GaugePressure,
    station_pressure: AbsolutePressure,
) -> Result<Volume> {
    valid! {
        gas_volume: 0.000001 <= .. <= 1000 ; "full of liquid a fall of pressure says nothing of a volume; no vehicle holds 1000 m³ of gas";
        tight_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let (tight, now) =
        (absolute(tight_pressure, station_pressure), absolute(gauge_pressure, station_pressure));
    Ok(gas_volume * (pressure_ratio(tight, now).si() - 1.0))
}
