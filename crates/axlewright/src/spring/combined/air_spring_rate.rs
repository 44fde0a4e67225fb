use crate::units::{AbsolutePressure, Area, GaugePressure, Length, LinearStiffness, Ratio, Volume, absolute};
use crate::{Result, valid};

/// Tangent rate of an air spring, from its gauge pressure, its volume and how its area changes.
///
/// # Formula
/// `k = n (p + p_a) A^2 / V + p B`
///
/// # Parameters
/// - `pressure` — `p`, pressure in the spring at that height, as a gauge reads it
/// - `station_pressure` — `p_a`, absolute pressure of the surrounding air, as measured there, not reduced to sea level
/// - `effective_area` — `A`, load over gauge pressure at that height, as the maker's table says
/// - `volume` — `V`, volume of the air at that height, with the tank that is openly joined to it
/// - `polytropic_exponent` — `n`, 1 for slow changes (isothermal), 1.4 for fast ones (adiabatic); in between on the road
/// - `area_growth` — `B`, growth of the effective area over travel in bump: mm²/mm, a length; nothing for a straight piston, negative for a waisted one
///
/// # Returns
/// Force over travel at that height. It may be negative where a waisted piston takes more than the air gives.
///
/// # Valid for
/// - `0 <= pressure <= 100000000`
/// - `1000 <= station_pressure <= 200000`
/// - `0.000001 <= effective_area <= 10`
/// - `0.000000001 <= volume <= 100`
/// - `1 <= polytropic_exponent <= 2`
/// - `-100 <= area_growth <= 100`
///
/// An ideal gas that is shut in, no flow to or from a valve. The compression works on the absolute pressure, the change of area on the gauge pressure: that is why the two differ in type.
///
/// # Source
/// Derivative of the force `p A` over the travel, polytropic change; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 5, and Dixon, The Shock Absorber Handbook, air springs (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::air_spring_rate(
///     GaugePressure::of::<bar_gauge>(5.0), AbsolutePressure::of::<bar_absolute>(1.013), Area::of::<cm2>(140.0), Volume::of::<L>(2.8),
///     Ratio::of::<one>(1.38), Length::of::<mm>(0.0),
/// )?;
/// assert_eq!(format!("{:.1} N/mm", rate.in_::<N_mm>()), "58.1 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// An air spring bursts or throws the vehicle: let the air out before anything is undone, keep out from under a vehicle that only air holds. Local codes and licensed practice come first.
#[inline]
pub fn air_spring_rate(
    pressure: GaugePressure,
    station_pressure: AbsolutePressure,
    effective_area: Area,
    volume: Volume,
    polytropic_exponent: Ratio,
    area_growth: Length,
) -> Result<LinearStiffness> {
    valid! {
        pressure: 0 <= .. <= 1e8 ; "definition: a bellows carries nothing by suction";
        station_pressure: 1000 <= .. <= 200000 ; "plausibility limit: the air that people breathe";
        effective_area: 0.000001 <= .. <= 10 ; "plausibility limit: springs are between 1 mm² and 10 m²";
        volume: 0.000000001 <= .. <= 100 ; "plausibility limit: springs hold between 1 mm³ and 100 m³";
        polytropic_exponent: 1 <= .. <= 2 ; "definition: between isothermal and adiabatic, 5/3 at most for a gas";
        area_growth: (-100) <= .. <= 100 ; "plausibility limit: an area grows by less than 100 m² a metre";
    }
    let (p, area) = (pressure.si(), effective_area.si());
    let compression =
        polytropic_exponent.si() * absolute(pressure, station_pressure).si() * area * area / volume.si();
    Ok(LinearStiffness::from_si(compression + p * area_growth.si()))
}
