use crate::units::{AbsolutePressure, Energy, GaugePressure, Stress, Volume, absolute};
use crate::{Result, valid};

/// Energy that air under test pressure sets free when what holds it bursts.
///
/// # Formula
/// `U = p V / (k - 1) (1 - (p_a / p)^((k - 1) / k))` with `p = p_g + p_a` and `k` = 1.4
///
/// # Parameters
/// - `gas_volume` — `V`, filled with air
/// - `gauge_pressure` — `p_g`, gauge pressure of the test
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The work of the air as it expands to the pressure around, without exchange of heat: the upper bound of what throws parts and caps.
///
/// # Valid for
/// - `0 <= gas_volume <= 1000`
/// - `0 <= gauge_pressure <= 1000000`
/// - `40000 <= station_pressure <= 110000`
///
/// Dry air as an ideal gas; what the stretched walls hold is left out. The same volume of water holds some thousand times less: see `water_test_energy`.
///
/// # Source
/// Isentropic expansion of an ideal gas; ASME PCC-2, Article 501, mandatory appendix on stored energy, has the same (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let energy = cooling::air_test_energy(
///     Volume::of::<L>(12.0), GaugePressure::of::<bar_gauge>(1.0), AbsolutePressure::of::<atm_absolute>(1.0),
/// )?;
/// assert_eq!(format!("{:.0} J", energy.in_::<J>()), "1076 J");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A burst radiator, hose or tank throws its parts: fill with liquid before the pressure comes on, leave as little air as can be, stay below the
/// rating of the weakest component, cold, and stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn air_test_energy(
    gas_volume: Volume,
    gauge_pressure: GaugePressure,
    station_pressure: AbsolutePressure,
) -> Result<Energy> {
    valid! {
        gas_volume: 0 <= .. <= 1000 ; "no vehicle holds 1000 m³ of gas";
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let pressure = absolute(gauge_pressure, station_pressure).si();
    // 1 - (p_a / p)^(2/7), without the cancellation of a low pressure.
    let spent = -(2.0 / 7.0 * (-gauge_pressure.si() / pressure).ln_1p()).exp_m1();
    Ok(Energy::from_raw(gas_volume.raw() * Stress::from_si(2.5 * pressure * spent)))
}

/// Energy that water, or another liquid, under test pressure sets free when what holds it bursts.
///
/// # Formula
/// `U = p_g^2 V / (2 K)`
///
/// # Parameters
/// - `liquid_volume` — `V`, filled with liquid, no air left in it
/// - `gauge_pressure` — `p_g`, gauge pressure of the test
/// - `bulk_modulus` — `K` of the liquid: 2.18 GPa for water at 20 °C (IAPWS-95)
///
/// # Returns
/// The work of the liquid as it expands.
///
/// # Valid for
/// - `0 <= liquid_volume <= 1000`
/// - `0 <= gauge_pressure <= 1000000`
/// - `100000000 <= bulk_modulus <= 100000000000`
///
/// Elastic liquid, cold: hot liquid above its boiling point flashes to steam and sets free far more. A bubble of air left in it counts by `air_test_energy`
/// and soon outweighs it, and so do hoses that have stretched.
///
/// # Source
/// Work of a linear elastic liquid (definition of the bulk modulus)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let energy = cooling::water_test_energy(Volume::of::<L>(12.0), GaugePressure::of::<bar_gauge>(1.0), Stress::of::<GPa>(2.2))?;
/// assert_eq!(format!("{:.3} J", energy.in_::<J>()), "0.027 J");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Stay below the rating of the weakest component, cold, with the air bled out, and stand clear all the same. The maker's instructions and local codes
/// come first.
#[inline]
pub fn water_test_energy(
    liquid_volume: Volume,
    gauge_pressure: GaugePressure,
    bulk_modulus: Stress,
) -> Result<Energy> {
    valid! {
        liquid_volume: 0 <= .. <= 1000 ; "no vehicle holds 1000 m³ of liquid";
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        bulk_modulus: 100e6 <= .. <= 100e9 ; "plausibility limit: liquids lie between 0.1 GPa and 100 GPa";
    }
    let pressure = Stress::from_si(gauge_pressure.si());
    Ok(Energy::from_raw((0.5 * liquid_volume).raw() * pressure * (pressure / bulk_modulus)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_low_pressure_loses_no_digits_and_a_greater_one_holds_more(p in 1e-3f64..9e5) {
            let (volume, air) = (Volume::from_si(0.01), AbsolutePressure::from_si(1e5));
            let energy = |p: f64| air_test_energy(volume, GaugePressure::from_si(p), air).unwrap().si();
            prop_assert!(energy(1.001 * p) > energy(p));
            // Between the work of constant pressure at the end and at the start of a small step.
            prop_assert!(energy(p) > 0.01 * p / 1.4 * (1e5 / (1e5 + p)).powf(1.0 / 1.4) && energy(p) < 0.01 * p / 1.4 * ((1e5 + p) / 1e5).powf(1.0 / 1.4));
        }
    }
}
