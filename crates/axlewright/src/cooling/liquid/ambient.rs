use crate::units::{AbsolutePressure, Length};
use crate::{Result, air, valid};

/// Pressure of the standard atmosphere at a height above sea level, for the models of this system.
pub(in crate::cooling) fn at_altitude(altitude: Length) -> Result<AbsolutePressure> {
    valid! { altitude: (-500) <= .. <= 6000 ; "plausibility limit: roads lie between -400 m and 6000 m"; }
    air::standard_pressure(air::geopotential_altitude(altitude)?)
}

/// The pressure that a barometer shows there, within what roads allow.
pub(in crate::cooling) fn as_measured(station_pressure: AbsolutePressure) -> Result<AbsolutePressure> {
    valid! { station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m"; }
    Ok(station_pressure)
}
