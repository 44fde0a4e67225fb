"""Air: the standard atmosphere, and pressures against the air around. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike

__all__ = ["absolute_pressure", "gauge_pressure", "geopotential_altitude", "standard_density", "standard_pressure"]

_geopotential_altitude = _functions["air.geopotential_altitude"]
_standard_pressure = _functions["air.standard_pressure"]
_standard_density = _functions["air.standard_density"]
_absolute_pressure = _functions["air.absolute_pressure"]
_gauge_pressure = _functions["air.gauge_pressure"]


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
