"""Fluids: water, and its mixtures with glycol. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, RatioLike

__all__ = ["ethylene_glycol_boiling_temperature", "ethylene_glycol_freezing_temperature", "propylene_glycol_boiling_temperature", "propylene_glycol_freezing_temperature", "water_boiling_temperature", "water_saturation_pressure"]

_ethylene_glycol_freezing_temperature = _functions["fluid.ethylene_glycol_freezing_temperature"]
_propylene_glycol_freezing_temperature = _functions["fluid.propylene_glycol_freezing_temperature"]
_ethylene_glycol_boiling_temperature = _functions["fluid.ethylene_glycol_boiling_temperature"]
_propylene_glycol_boiling_temperature = _functions["fluid.propylene_glycol_boiling_temperature"]
_water_boiling_temperature = _functions["fluid.water_boiling_temperature"]
_water_saturation_pressure = _functions["fluid.water_saturation_pressure"]


def ethylene_glycol_freezing_temperature(
    *,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature at which a mix of water and ethylene glycol begins to freeze.

    Formula
        `T = sum over i of c_i (w - 0.308462)^i`, i from 0 to 5

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)

    Returns
        (temperature [K]) The start of freezing: the first ice, not slush and not the point at which
        a block bursts.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`

        The curve has a minimum beyond this range. It reads colder than the ASHRAE (2001) tables, by
        0.6 K, 1.7 K, 2.6 K and 3.3 K at 30, 40, 50 and 60 %: keep that as margin. Without glycol it
        gives 273.1503 K.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_freezing_temperature(mass_fraction, invalid)  # type: ignore[no-any-return]


def propylene_glycol_freezing_temperature(
    *,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature at which a mix of water and propylene glycol begins to freeze.

    Formula
        `T = sum over i of c_i (w - 0.307031)^i`, i from 0 to 5

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)

    Returns
        (temperature [K]) The start of freezing: the first ice, not slush and not the point at which
        a block bursts.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`

        The curve has a minimum beyond this range. It agrees with the ASHRAE (2001) tables within
        0.8 K, and with a second fit of its own book within 1.6 K. Without glycol it gives 273.1249
        K.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_freezing_temperature(mass_fraction, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_boiling_temperature(
    *,
    absolute_pressure: QuantityLike,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature at which a mix of water and ethylene glycol begins to boil under an absolute
    pressure.

    Formula
        `x_w p_w(T) + x_g p_g(T) = p` (Raoult), solved for `T`; `p_w` of IAPWS-IF97 region 4, `p_g =
        exp(C1 + C2/T + C3 ln T + C4 T^6)`

    Parameters
        absolute_pressure (absolute pressure): `p`: cap pressure plus the station pressure, not a
            gauge reading
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)

    Returns
        (temperature [K]) The bubble point; without glycol it is that of water to the last bit.

    Valid for (SI)
        - `10000 <= absolute_pressure <= 500000`
        - `0 <= mass_fraction <= 1`

        An ideal solution without inhibitors. Two activity models (UNIFAC, Dortmund UNIFAC) lie
        within 0.8 K up to 60 % and within 1.6 K at 90 %; a handbook table known from memory reads
        up to 1.2 K higher up to 60 %, and 4.4 K higher at 90 %.

    Source
        Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical
        Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals
        library 1.5.2

    Caution
        Hot pressurised coolant scalds: never open a hot system. The result is an upper bound until
        the system has built its pressure, and hot metal boils coolant earlier.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_boiling_temperature(absolute_pressure, mass_fraction, invalid)  # type: ignore[no-any-return]


def propylene_glycol_boiling_temperature(
    *,
    absolute_pressure: QuantityLike,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature at which a mix of water and propylene glycol begins to boil under an absolute
    pressure.

    Formula
        `x_w p_w(T) + x_g p_g(T) = p` (Raoult), solved for `T`; `p_w` of IAPWS-IF97 region 4, `p_g =
        exp(C1 + C2/T + C3 ln T + C4 T^2)`

    Parameters
        absolute_pressure (absolute pressure): `p`: cap pressure plus the station pressure, not a
            gauge reading
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)

    Returns
        (temperature [K]) The bubble point; without glycol it is that of water to the last bit.

    Valid for (SI)
        - `10000 <= absolute_pressure <= 500000`
        - `0 <= mass_fraction <= 1`

        An ideal solution without inhibitors, and less sure than for ethylene glycol: activity
        models lie lower, at 50 % by 1.9 K to 3.6 K (UNIFAC) and 2.5 K to 6.1 K (Dortmund UNIFAC),
        at 90 % by up to 11 K and 20 K; a handbook table known from memory lies within 2.2 K. Keep
        the gap as margin.

    Source
        Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical
        Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals
        library 1.5.2

    Caution
        Hot pressurised coolant scalds: never open a hot system. The result is an upper bound until
        the system has built its pressure, and hot metal boils coolant earlier.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_boiling_temperature(absolute_pressure, mass_fraction, invalid)  # type: ignore[no-any-return]


def water_boiling_temperature(
    *,
    absolute_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature at which water boils under an absolute pressure.

    Formula
        IAPWS-IF97 region 4, backward equation (eq. 31): the saturation temperature in closed form
        from `(p / 1 MPa)^(1/4)`

    Parameters
        absolute_pressure (absolute pressure): `p`: cap pressure plus the station pressure, not a
            gauge reading

    Returns
        (temperature [K]) The boiling temperature of pure water under that pressure.

    Valid for (SI)
        - `611.213 <= absolute_pressure <= 22064000`

    Source
        IAPWS R7-97(2012), eq. 31 and Table 34; checked against its Table 36

    Caution
        Coolant near its boiling point scalds and flashes to steam when the pressure is let go:
        never open a hot system. The result is an upper bound until the system has built its
        pressure, and hot metal boils coolant earlier.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_boiling_temperature(absolute_pressure, invalid)  # type: ignore[no-any-return]


def water_saturation_pressure(
    *,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Absolute pressure under which water boils at a temperature.

    Formula
        IAPWS-IF97 region 4, basic equation (eq. 30): the saturation pressure in closed form from
        `T`

    Parameters
        temperature (temperature): `T`

    Returns
        (absolute pressure [Pa]) The saturation pressure, never above the critical pressure of
        22.064 MPa.

    Valid for (SI)
        - `273.15 <= temperature <= 647.096`

    Source
        IAPWS R7-97(2012), eq. 30 and Table 34; checked against its Table 35

    Caution
        Hot pressurised coolant scalds: never open a hot system, and never pump one above its
        weakest component.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_saturation_pressure(temperature, invalid)  # type: ignore[no-any-return]
