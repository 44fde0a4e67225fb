"""Air: the standard atmosphere, moist air, and pressures against the air around. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike

__all__ = ["absolute_pressure", "altimeter_setting_from_station_pressure", "density_altitude", "gauge_pressure", "geometric_altitude", "geopotential_altitude", "moist_density", "pressure_altitude", "standard_density", "standard_pressure", "station_pressure_from_altimeter_setting"]

_altimeter_setting_from_station_pressure = _functions["air.altimeter_setting_from_station_pressure"]
_density_altitude = _functions["air.density_altitude"]
_geopotential_altitude = _functions["air.geopotential_altitude"]
_geometric_altitude = _functions["air.geometric_altitude"]
_moist_density = _functions["air.moist_density"]
_pressure_altitude = _functions["air.pressure_altitude"]
_standard_pressure = _functions["air.standard_pressure"]
_standard_density = _functions["air.standard_density"]
_absolute_pressure = _functions["air.absolute_pressure"]
_gauge_pressure = _functions["air.gauge_pressure"]
_station_pressure_from_altimeter_setting = _functions["air.station_pressure_from_altimeter_setting"]


def altimeter_setting_from_station_pressure(
    *,
    station_pressure: QuantityLike,
    geopotential_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Pressure reduced to sea level, as a weather report would give it, from the pressure of the air
    at a place.

    Formula
        `q = p_ISA(H_ISA(p) - H)`: the standard atmosphere followed down from the place to sea
        level; `p_ISA` is `air::standard_pressure` and `H_ISA` its inverse `air::pressure_altitude`

    Parameters
        station_pressure (absolute pressure): `p`, absolute pressure of the air as measured there
        geopotential_altitude (length): `H`, of the place, above mean sea level

    Returns
        (absolute pressure [Pa]) The altimeter setting (QNH): for comparing a workshop's barometer
        with an airfield's report. No cap, gauge or boiling sees it.

    Valid for (SI)
        - `25000 <= station_pressure <= 120000`
        - `-500 <= geopotential_altitude <= 8000`

        The inverse of `station_pressure_from_altimeter_setting`, with its limits: a result outside
        80 kPa to 110 kPa is refused, for then one of the two arguments belongs to another place.
        The US definition takes 0.3 hPa off the station pressure first (from memory).

    Source
        Definition of the altimeter setting QNH (ICAO Doc 8896; from memory) on the US Standard
        Atmosphere 1976 (NASA-TM-X-74335), eq. 33a

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _altimeter_setting_from_station_pressure(station_pressure, geopotential_altitude, invalid)  # type: ignore[no-any-return]


def density_altitude(
    *,
    density: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Altitude at which the standard atmosphere has the density of the air around.

    Formula
        `H = 288.15 / 0.0065 (1 - (d / d_0)^(1 / (g / (R 0.0065) - 1)))` up to 11 km, then `H =
        11000 + R 216.65 / g ln(d_11 / d)`

    Parameters
        density (density): `d`, of the air as it is: from its pressure, temperature and moisture by
            `moist_density`

    Returns
        (length [m]) The geopotential altitude of that density on an average day: how high a
        naturally aspirated engine believes it is.

    Valid for (SI)
        - `0.0881 <= density <= 1.93`

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a, 33b and 42, solved for the altitude

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _density_altitude(density, invalid)  # type: ignore[no-any-return]


def geopotential_altitude(
    *,
    geometric_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Geopotential altitude of a height that was surveyed.

    Formula
        `H = R z / (R + z)` with `R` = 6356.766 km

    Parameters
        geometric_altitude (length): `z`, height above mean sea level, as on a map

    Returns
        (length [m]) The altitude at which the standard atmosphere is tabulated.

    Valid for (SI)
        - `-5000 <= geometric_altitude <= 20000`

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 18

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _geopotential_altitude(geometric_altitude, invalid)  # type: ignore[no-any-return]


def geometric_altitude(
    *,
    geopotential_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height, as a survey or a map gives it, of a geopotential altitude.

    Formula
        `z = R H / (R - H)` with `R` = 6356.766 km

    Parameters
        geopotential_altitude (length): `H`, at which the standard atmosphere is tabulated

    Returns
        (length [m]) The height above mean sea level, as on a map.

    Valid for (SI)
        - `-5000 <= geopotential_altitude <= 20000`

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 19

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _geometric_altitude(geopotential_altitude, invalid)  # type: ignore[no-any-return]


def moist_density(
    *,
    station_pressure: QuantityLike,
    temperature: QuantityLike,
    vapour_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Density of moist air.

    Formula
        `d = (p - e) / (R T) + e / (R_v T)` with `R` = 287.053 J/(kg·K) and `R_v` = 461.523 J/(kg·K)

    Parameters
        station_pressure (absolute pressure): `p`, absolute pressure of the air as measured there,
            vapour included, not reduced to sea level
        temperature (temperature): `T`
        vapour_pressure (absolute pressure): `e`, partial pressure of the water vapour:
            `fluid::water_saturation_pressure` at the dew point; 0 for dry air

    Returns
        (density [kg/m³]) The mass of air and vapour over their volume; moist air is lighter than
        dry.

    Valid for (SI)
        - `10000 <= station_pressure <= 200000`
        - `200 <= temperature <= 400`
        - `0 <= vapour_pressure <= 9000`

        An ideal mixture: real air is denser by 0.03 % to 0.07 % near sea level. No more vapour than
        the air can hold at its temperature: that is not checked, and mist counts for nothing.

    Source
        Dalton's law and the ideal gas law; gas constants: US Standard Atmosphere 1976, CODATA 2018

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _moist_density(station_pressure, temperature, vapour_pressure, invalid)  # type: ignore[no-any-return]


def pressure_altitude(
    *,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Altitude at which the standard atmosphere has the pressure of the air around.

    Formula
        `H = 288.15 / 0.0065 (1 - (p / 101325)^(R 0.0065 / g))` up to 11 km, then `H = 11000 + R
        216.65 / g ln(p_11 / p)`

    Parameters
        station_pressure (absolute pressure): `p`, absolute pressure of the air as measured there,
            not reduced to sea level

    Returns
        (length [m]) The geopotential altitude of that pressure on an average day, not the height of
        the place.

    Valid for (SI)
        - `5475 <= station_pressure <= 177600`

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a and 33b, solved for the altitude

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _pressure_altitude(station_pressure, invalid)  # type: ignore[no-any-return]


def standard_pressure(
    *,
    geopotential_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Pressure of the standard atmosphere: the station pressure of an average day.

    Formula
        `p = 101325 (1 - 0.0065 H / 288.15)^(g / (R 0.0065))` up to 11 km, then `p = p_11 exp(-g (H
        - 11000) / (R 216.65))`

    Parameters
        geopotential_altitude (length): `H`, above mean sea level

    Returns
        (absolute pressure [Pa]) The absolute pressure at that altitude, not the one that a weather
        report reduces to sea level.

    Valid for (SI)
        - `-5000 <= geopotential_altitude <= 20000`

        Weather moves the real station pressure by some 3 % around it.

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a and 33b; ISO 2533:1975 gives the same
        within 3e-6 (it rounds the gas constant)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _standard_pressure(geopotential_altitude, invalid)  # type: ignore[no-any-return]


def standard_density(
    *,
    geopotential_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Density of the standard atmosphere.

    Formula
        `d = p / (R T)` with `T = 288.15 - 0.0065 H` up to 11 km and 216.65 K above

    Parameters
        geopotential_altitude (length): `H`, above mean sea level

    Returns
        (density [kg/m³]) The density of dry air at that altitude.

    Valid for (SI)
        - `-5000 <= geopotential_altitude <= 20000`

    Source
        US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 42; ISO 2533:1975 gives the same within
        3e-6 (it rounds the gas constant)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _standard_density(geopotential_altitude, invalid)  # type: ignore[no-any-return]


def absolute_pressure(
    *,
    gauge_pressure: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Absolute pressure of a gauge reading.

    Formula
        `p = p_g + p_a`

    Parameters
        gauge_pressure (gauge pressure): `p_g`, what a gauge or a cap's rating says; negative for a
            partial vacuum
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (absolute pressure [Pa]) The pressure above vacuum.

    Valid for (SI)
        - `gauge_pressure finite`
        - `0 < station_pressure`

        The sum is not below vacuum.

    Source
        Definition of a gauge pressure

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _absolute_pressure(gauge_pressure, station_pressure, invalid)  # type: ignore[no-any-return]


def gauge_pressure(
    *,
    absolute_pressure: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Gauge reading of an absolute pressure.

    Formula
        `p_g = p - p_a`

    Parameters
        absolute_pressure (absolute pressure): `p`, above vacuum
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (gauge pressure [Pa]) What a gauge shows; negative for a partial vacuum.

    Valid for (SI)
        - `0 <= absolute_pressure`
        - `0 < station_pressure`

    Source
        Definition of a gauge pressure

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _gauge_pressure(absolute_pressure, station_pressure, invalid)  # type: ignore[no-any-return]


def station_pressure_from_altimeter_setting(
    *,
    altimeter_setting: QuantityLike,
    geopotential_altitude: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Pressure of the air at a place, from the pressure that a weather report reduced to sea level.

    Formula
        `p = p_ISA(H + H_ISA(q))`: an altimeter set to `q` shows `H` where the pressure is `p`.
        `p_ISA` is the pressure of the standard atmosphere below 11 km (`air::standard_pressure`),
        `H_ISA(q) = 288.15 / 0.0065 (1 - (q / 101325)^(R 0.0065 / g))` its inverse

    Parameters
        altimeter_setting (absolute pressure): `q`, pressure reduced to sea level by the standard
            atmosphere (QNH), as airfields report it
        geopotential_altitude (length): `H`, of the place, above mean sea level

    Returns
        (absolute pressure [Pa]) The station pressure: what a cap, a gauge and boiling see.

    Valid for (SI)
        - `80000 <= altimeter_setting <= 110000`
        - `-500 <= geopotential_altitude <= 8000`

        Not for a sea-level pressure that was reduced with the measured temperature: that one
        differs by what the day differs from the standard atmosphere, at 1500 m by about 0.06 % for
        each kelvin. The US definition takes 0.3 hPa off the station pressure
        first (from memory): there the result is low by that much.

    Source
        Definition of the altimeter setting QNH (ICAO Doc 8896; from memory) on the US Standard
        Atmosphere 1976 (NASA-TM-X-74335), eq. 33a

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _station_pressure_from_altimeter_setting(altimeter_setting, geopotential_altitude, invalid)  # type: ignore[no-any-return]
