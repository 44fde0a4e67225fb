use crate::units::{AbsolutePressure, GaugePressure, absolute, gauge};
use crate::{Result, cannot, valid};

/// Absolute pressure of a gauge reading.
///
/// # Formula
/// `p = p_g + p_a`
///
/// # Parameters
/// - `gauge_pressure` — `p_g`, reading of a gauge or rating of a cap; negative for a partial vacuum
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The pressure above vacuum.
///
/// # Valid for
/// - `gauge_pressure finite`
/// - `0 < station_pressure`
///
/// The sum is not below vacuum.
///
/// # Source
/// Definition of a gauge pressure
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let pressure = air::absolute_pressure(GaugePressure::of::<psi_gauge>(15.0), AbsolutePressure::of::<psi_absolute>(12.2))?;
/// assert_eq!(format!("{:.1} psi absolute", pressure.in_::<psi_absolute>()), "27.2 psi absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn absolute_pressure(
    gauge_pressure: GaugePressure,
    station_pressure: AbsolutePressure,
) -> Result<AbsolutePressure> {
    valid! {
        gauge_pressure: .. ; "definition";
        station_pressure: 0 < .. ; "definition: above vacuum";
    }
    let absolute_pressure = absolute(gauge_pressure, station_pressure);
    if absolute_pressure.si() < 0.0 {
        let vacuum = GaugePressure::from_si(-station_pressure.si());
        return Err(cannot!(gauge_pressure >= vacuum, station_pressure; "lies below vacuum"));
    }
    Ok(absolute_pressure)
}

/// Gauge reading of an absolute pressure.
///
/// # Formula
/// `p_g = p - p_a`
///
/// # Parameters
/// - `absolute_pressure` — `p`, above vacuum
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The gauge reading; negative for a partial vacuum.
///
/// # Valid for
/// - `0 <= absolute_pressure`
/// - `0 < station_pressure`
///
/// # Source
/// Definition of a gauge pressure
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let reading = air::gauge_pressure(AbsolutePressure::of::<bar_absolute>(2.0), AbsolutePressure::of::<bar_absolute>(0.9))?;
/// assert_eq!(format!("{:.1} bar gauge", reading.in_::<bar_gauge>()), "1.1 bar gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn gauge_pressure(
    absolute_pressure: AbsolutePressure,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        absolute_pressure: 0 <= .. ; "definition: above vacuum";
        station_pressure: 0 < .. ; "definition: above vacuum";
    }
    Ok(gauge(absolute_pressure, station_pressure))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back_and_never_below_vacuum(reading in -9e4f64..5e5, station in 5e4f64..1.1e5) {
            let air = AbsolutePressure::from_si(station);
            match absolute_pressure(GaugePressure::from_si(reading), air) {
                Ok(there) => prop_assert!((gauge_pressure(there, air).unwrap().si() - reading).abs() < 1e-9),
                Err(_) => prop_assert!(reading < -station),
            }
        }
    }
}
