use crate::units::{AbsolutePressure, Temperature};
use crate::{Result, valid};

/// Critical pressure of water (Pa); IAPWS R2-83.
const CRITICAL_PRESSURE: f64 = 22.064e6;

/// Coefficients n1 to n10 of region 4; IAPWS R7-97(2012), Table 34.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// Backward equation of region 4, pressure (Pa) to temperature (K).
#[inline(always)]
pub(super) fn boiling(pressure: f64) -> f64 {
    let beta2 = (pressure * 1e-6).sqrt();
    let beta = beta2.sqrt();
    let e = beta2 + N[2] * beta + N[5];
    let f = N[0] * beta2 + N[3] * beta + N[6];
    let g = N[1] * beta2 + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = N[9] + d;
    (sum - (sum * sum - 4.0 * (N[8] + N[9] * d)).sqrt()) / 2.0
}

/// Basic equation of region 4, temperature (K) to pressure (Pa) and its derivative (Pa/K).
#[inline(always)]
pub(super) fn saturation(temperature: f64) -> (f64, f64) {
    let shifted = temperature - N[9];
    let theta = temperature + N[8] / shifted;
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let beta = 2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt());
    let beta2 = beta * beta;
    let by_theta =
        (2.0 * theta + N[0]) * beta2 + (2.0 * N[2] * theta + N[3]) * beta + 2.0 * N[5] * theta + N[6];
    let by_beta = 2.0 * a * beta + b;
    let slope = -by_theta / by_beta * (1.0 - N[8] / (shifted * shifted));
    (1e6 * beta2 * beta2, 4e6 * beta2 * beta * slope)
}

/// Temperature at which water boils under an absolute pressure.
///
/// # Formula
/// IAPWS-IF97 region 4, backward equation (eq. 31): the saturation temperature in closed form from `(p / 1 MPa)^(1/4)`
///
/// # Parameters
/// - `absolute_pressure` — `p`: cap pressure plus the station pressure, not a gauge reading
///
/// # Returns
/// The boiling temperature of pure water under that pressure.
///
/// # Valid for
/// - `611.213 <= absolute_pressure <= 22064000`
///
/// # Source
/// IAPWS R7-97(2012), eq. 31 and Table 34; checked against its Table 36
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let cap = absolute(GaugePressure::of::<psi_gauge>(15.0), AbsolutePressure::of::<atm_absolute>(1.0));
/// let boils = fluid::water_boiling_temperature(cap)?;
/// assert_eq!(format!("{:.0} °F", boils.in_::<degF>()), "250 °F");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Coolant near its boiling point scalds and flashes to steam when the pressure is let go: never open a hot system. The result
/// is an upper bound until the system has built its pressure, and hot metal boils coolant earlier.
#[inline]
pub fn water_boiling_temperature(absolute_pressure: AbsolutePressure) -> Result<Temperature> {
    valid! {
        absolute_pressure: 611.213 <= .. <= CRITICAL_PRESSURE ; "IAPWS R7-97(2012): from 273.15 K to the critical point";
    }
    Ok(Temperature::from_si(boiling(absolute_pressure.si())))
}

/// Absolute pressure under which water boils at a temperature.
///
/// # Formula
/// IAPWS-IF97 region 4, basic equation (eq. 30): the saturation pressure in closed form from `T`
///
/// # Parameters
/// - `temperature` — `T`
///
/// # Returns
/// The saturation pressure, never above the critical pressure of 22.064 MPa.
///
/// # Valid for
/// - `273.15 <= temperature <= 647.096`
///
/// # Source
/// IAPWS R7-97(2012), eq. 30 and Table 34; checked against its Table 35
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let pressure = fluid::water_saturation_pressure(Temperature::of::<degC>(120.0))?;
/// assert_eq!(format!("{:.1} kPa absolute", pressure.in_::<kPa_absolute>()), "198.7 kPa absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, and never pump one above its weakest component.
#[inline]
pub fn water_saturation_pressure(temperature: Temperature) -> Result<AbsolutePressure> {
    valid! {
        temperature: 273.15 <= .. <= 647.096 ; "IAPWS R7-97(2012): from 273.15 K to the critical point";
    }
    Ok(AbsolutePressure::from_si(saturation(temperature.si()).0.min(CRITICAL_PRESSURE)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    #[test]
    fn the_slope_is_the_derivative() {
        for t in [280.0, 373.15, 450.0, 600.0] {
            let central = (saturation(t + 1e-3).0 - saturation(t - 1e-3).0) / 2e-3;
            assert_relative_eq!(saturation(t).1, central, max_relative = 1e-7);
        }
    }

    #[test]
    fn two_and_a_half_degrees_fahrenheit_a_psi() {
        // Common practice, no source: each psi of cap pressure lifts the boiling point of water by about 2.5 °F.
        use crate::units::{GaugePressure, absolute, atm_absolute, degF, gauge, psi_gauge};
        let air = AbsolutePressure::of::<atm_absolute>(1.0);
        let at = |psi| {
            water_boiling_temperature(absolute(GaugePressure::of::<psi_gauge>(psi), air))
                .unwrap()
                .in_::<degF>()
        };
        assert!(((at(15.0) - at(0.0)) / 15.0 - 2.5).abs() < 0.1);
        assert!((at(15.0)..at(16.0)).contains(&250.0) || (at(15.0) - 250.0).abs() < 1.0);
        assert_eq!(gauge(air, air).si(), 0.0);
        // The local slope falls as the pressure rises.
        assert!((3.1..3.4).contains(&(at(1.0) - at(0.0))) && (1.8..2.0).contains(&(at(15.5) - at(14.5))));
    }

    proptest! {
        #[test]
        fn forth_and_back(p in 612.0f64..22.06e6) {
            prop_assert!((saturation(boiling(p)).0 / p - 1.0).abs() < 1e-11);
        }
        #[test]
        fn more_pressure_boils_later(p in 612.0f64..22.0e6) {
            prop_assert!(boiling(p * 1.0001) > boiling(p));
        }
    }
}
