use crate::units::{Ratio, Temperature, Volume};
use crate::{Result, fluid, valid};

/// Volume by which a fill of water and ethylene glycol grows as it warms.
///
/// # Formula
/// `V_e = V (d(w, T_1) / d(w, T_2) - 1)`
///
/// # Parameters
/// - `coolant_volume` — `V`, volume of the whole fill at the first temperature
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T_1`, temperature at which it was filled
/// - `later_temperature` — `T_2`, mean temperature of the hot coolant over the system
///
/// # Returns
/// The volume that the header tank or the overflow bottle must take up; negative if the fill shrinks.
///
/// # Valid for
/// - `0 <= coolant_volume <= 1000`
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
/// - `221.95 <= later_temperature <= 398.15`
///
/// As `fluid::ethylene_glycol_expansion`: liquid, above 100 °C extrapolated to 125 °C. The growth of metal and hoses takes up a little of it and is left out, which
/// errs to a larger tank; steam pockets are not seen.
///
/// # Source
/// Conservation of mass; density as in `fluid::ethylene_glycol_density`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let growth = cooling::ethylene_glycol_expansion_volume(
///     Volume::of::<L>(12.0), Ratio::of::<percent>(50.0), Temperature::of::<degC>(20.0), Temperature::of::<degC>(95.0),
/// )?;
/// assert_eq!(format!("{:.2} L", growth.in_::<L>()), "0.59 L");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. Liquid with no air to grow into bursts what holds it.
#[inline]
pub fn ethylene_glycol_expansion_volume(
    coolant_volume: Volume,
    mass_fraction: Ratio,
    temperature: Temperature,
    later_temperature: Temperature,
) -> Result<Volume> {
    valid! {
        coolant_volume: 0 <= .. <= 1000 ; "plausibility limit: no vehicle carries 1000 m³ of coolant";
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
        later_temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    Ok(coolant_volume * fluid::ethylene_glycol_expansion(mass_fraction, temperature, later_temperature)?)
}

/// Volume by which a fill of water and propylene glycol grows as it warms.
///
/// # Formula
/// `V_e = V (d(w, T_1) / d(w, T_2) - 1)`
///
/// # Parameters
/// - `coolant_volume` — `V`, volume of the whole fill at the first temperature
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T_1`, temperature at which it was filled
/// - `later_temperature` — `T_2`, mean temperature of the hot coolant over the system
///
/// # Returns
/// The volume that the header tank or the overflow bottle must take up; negative if the fill shrinks.
///
/// # Valid for
/// - `0 <= coolant_volume <= 1000`
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
/// - `223.15 <= later_temperature <= 398.15`
///
/// As `fluid::propylene_glycol_expansion`: liquid, above 100 °C extrapolated to 125 °C, where it may give too little. The growth of metal and hoses takes up a little of it and is left out, which
/// errs to a larger tank; steam pockets are not seen.
///
/// # Source
/// Conservation of mass; density as in `fluid::propylene_glycol_density`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let growth = cooling::propylene_glycol_expansion_volume(
///     Volume::of::<L>(12.0), Ratio::of::<percent>(50.0), Temperature::of::<degC>(20.0), Temperature::of::<degC>(95.0),
/// )?;
/// assert_eq!(format!("{:.2} L", growth.in_::<L>()), "0.68 L");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. Liquid with no air to grow into bursts what holds it.
#[inline]
pub fn propylene_glycol_expansion_volume(
    coolant_volume: Volume,
    mass_fraction: Ratio,
    temperature: Temperature,
    later_temperature: Temperature,
) -> Result<Volume> {
    valid! {
        coolant_volume: 0 <= .. <= 1000 ; "plausibility limit: no vehicle carries 1000 m³ of coolant";
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
        later_temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    Ok(coolant_volume * fluid::propylene_glycol_expansion(mass_fraction, temperature, later_temperature)?)
}
