"""Fluids: water, and its mixtures with glycol. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["ethylene_glycol_boiling_pressure", "ethylene_glycol_boiling_temperature", "ethylene_glycol_concentrate_share", "ethylene_glycol_density", "ethylene_glycol_dynamic_viscosity", "ethylene_glycol_expansion", "ethylene_glycol_expansion_coefficient", "ethylene_glycol_freezing_temperature", "ethylene_glycol_mass_fraction", "ethylene_glycol_mass_fraction_for_freezing", "ethylene_glycol_specific_heat", "ethylene_glycol_thermal_conductivity", "propylene_glycol_boiling_pressure", "propylene_glycol_boiling_temperature", "propylene_glycol_concentrate_share", "propylene_glycol_density", "propylene_glycol_dynamic_viscosity", "propylene_glycol_expansion", "propylene_glycol_expansion_coefficient", "propylene_glycol_freezing_temperature", "propylene_glycol_mass_fraction", "propylene_glycol_mass_fraction_for_freezing", "propylene_glycol_specific_heat", "propylene_glycol_thermal_conductivity", "water_boiling_temperature", "water_saturation_pressure"]

_ethylene_glycol_concentrate_share = _functions["fluid.ethylene_glycol_concentrate_share"]
_propylene_glycol_concentrate_share = _functions["fluid.propylene_glycol_concentrate_share"]
_ethylene_glycol_density = _functions["fluid.ethylene_glycol_density"]
_propylene_glycol_density = _functions["fluid.propylene_glycol_density"]
_ethylene_glycol_dynamic_viscosity = _functions["fluid.ethylene_glycol_dynamic_viscosity"]
_propylene_glycol_dynamic_viscosity = _functions["fluid.propylene_glycol_dynamic_viscosity"]
_ethylene_glycol_expansion = _functions["fluid.ethylene_glycol_expansion"]
_propylene_glycol_expansion = _functions["fluid.propylene_glycol_expansion"]
_ethylene_glycol_expansion_coefficient = _functions["fluid.ethylene_glycol_expansion_coefficient"]
_propylene_glycol_expansion_coefficient = _functions["fluid.propylene_glycol_expansion_coefficient"]
_ethylene_glycol_freezing_temperature = _functions["fluid.ethylene_glycol_freezing_temperature"]
_propylene_glycol_freezing_temperature = _functions["fluid.propylene_glycol_freezing_temperature"]
_ethylene_glycol_boiling_temperature = _functions["fluid.ethylene_glycol_boiling_temperature"]
_propylene_glycol_boiling_temperature = _functions["fluid.propylene_glycol_boiling_temperature"]
_ethylene_glycol_boiling_pressure = _functions["fluid.ethylene_glycol_boiling_pressure"]
_propylene_glycol_boiling_pressure = _functions["fluid.propylene_glycol_boiling_pressure"]
_ethylene_glycol_mass_fraction = _functions["fluid.ethylene_glycol_mass_fraction"]
_propylene_glycol_mass_fraction = _functions["fluid.propylene_glycol_mass_fraction"]
_ethylene_glycol_mass_fraction_for_freezing = _functions["fluid.ethylene_glycol_mass_fraction_for_freezing"]
_propylene_glycol_mass_fraction_for_freezing = _functions["fluid.propylene_glycol_mass_fraction_for_freezing"]
_ethylene_glycol_specific_heat = _functions["fluid.ethylene_glycol_specific_heat"]
_propylene_glycol_specific_heat = _functions["fluid.propylene_glycol_specific_heat"]
_ethylene_glycol_thermal_conductivity = _functions["fluid.ethylene_glycol_thermal_conductivity"]
_propylene_glycol_thermal_conductivity = _functions["fluid.propylene_glycol_thermal_conductivity"]
_water_boiling_temperature = _functions["fluid.water_boiling_temperature"]
_water_saturation_pressure = _functions["fluid.water_saturation_pressure"]


def ethylene_glycol_concentrate_share(
    *,
    mass_fraction: RatioLike,
    glycol_mass_share: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Concentrate to pour for a wanted strength by mass: its share by volume in a mix of water and
    ethylene glycol.

    Formula
        `f = w d_w / (d_c (s - w) + w d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1113.5
        kg/m³, `d_w` = 998.207 kg/m³

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix that is wanted, as from
            `ethylene_glycol_mass_fraction_for_freezing`
        glycol_mass_share (ratio): `s`, glycol in the concentrate by mass, as its data sheet says; 1
            for pure glycol

    Returns
        (ratio [-]) The concentrate over all that is poured, before it is mixed.

    Valid for (SI)
        - `0 <= mass_fraction < 1`
        - `0 < glycol_mass_share <= 1`
        - `glycol_mass_share > mass_fraction`

        The inverse of `ethylene_glycol_mass_fraction`, with its limits: volumes at 20 °C, of the
        parts. What is in the system already has to be drained first.

    Source
        Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library
        1.5.2, water IAPWS-95

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_concentrate_share(mass_fraction, glycol_mass_share, invalid)


def propylene_glycol_concentrate_share(
    *,
    mass_fraction: RatioLike,
    glycol_mass_share: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Concentrate to pour for a wanted strength by mass: its share by volume in a mix of water and
    propylene glycol.

    Formula
        `f = w d_w / (d_c (s - w) + w d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1036.1
        kg/m³, `d_w` = 998.207 kg/m³

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix that is wanted, as from
            `propylene_glycol_mass_fraction_for_freezing`
        glycol_mass_share (ratio): `s`, glycol in the concentrate by mass, as its data sheet says; 1
            for pure glycol

    Returns
        (ratio [-]) The concentrate over all that is poured, before it is mixed.

    Valid for (SI)
        - `0 <= mass_fraction < 1`
        - `0 < glycol_mass_share <= 1`
        - `glycol_mass_share > mass_fraction`

        The inverse of `propylene_glycol_mass_fraction`, with its limits: volumes at 20 °C, of the
        parts. What is in the system already has to be drained first.

    Source
        Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library
        1.5.2, water IAPWS-95

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_concentrate_share(mass_fraction, glycol_mass_share, invalid)


def ethylene_glycol_density(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Density of a mix of water and ethylene glycol.

    Formula
        `d = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (density [kg/m³]) The density: mass over volume.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 0.2 % to 1.1 % more above 0 °C and within 0.5 % below; a second fit of its own
        book lies within 0.2 %. Without glycol it is up to 0.1 % below IAPWS-95.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_density(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_density(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Density of a mix of water and propylene glycol.

    Formula
        `d = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (density [kg/m³]) The density: mass over volume.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 0.1 % to 0.8 % more above 0 °C and within 0.6 % below; a second fit of its own
        book lies within 0.1 %. Without glycol it is within 0.1 % of IAPWS-95.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_density(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_dynamic_viscosity(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Dynamic viscosity of a mix of water and ethylene glycol.

    Formula
        `mu = exp(sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j)` in Pa·s, i from 0 to
        3, j from 0 to 5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (dynamic viscosity [Pa·s]) The dynamic viscosity: shear stress per velocity gradient.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 13 % less to 4 % more above 0 °C and up to 19 % less near -33 °C; a second fit of
        its own book lies within 5 %. Without glycol it is within 1.8 % of the IAPWS formulation.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_dynamic_viscosity(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_dynamic_viscosity(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Dynamic viscosity of a mix of water and propylene glycol.

    Formula
        `mu = exp(sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j)` in Pa·s, i from 0 to
        3, j from 0 to 5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (dynamic viscosity [Pa·s]) The dynamic viscosity: shear stress per velocity gradient.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 8 % less to 6 % more above 0 °C and up to 28 % less near -33 °C; a second fit of
        its own book reads up to 14 % more near -38 °C. Without glycol it is within 1.2 % of the
        IAPWS formulation.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_dynamic_viscosity(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_expansion(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Growth in volume of a mix of water and ethylene glycol between two temperatures.

    Formula
        `b = d(w, T_1) / d(w, T_2) - 1` with `d` of `ethylene_glycol_density`

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T_1`, at which the volume is known
        later_temperature (temperature): `T_2`, at which it is asked for

    Returns
        (ratio [-]) The growth over the first volume; negative where the mix shrinks.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`
        - `221.95 <= later_temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run; the last step of the growth is
        the steepest. Pressure is left out: 1 bar is 0.005 %. Without glycol the growth from 20 °C
        is within 0.0008 of IAPWS-95 up to 95 °C, where it is 0.038; near 4 °C, where water turns,
        it is no guide to the sign. The ASHRAE (2001) tables of inhibited coolant from 20 % to 60 %
        by volume give up to 0.0046 less from 20 °C to 95 °C, where it is 0.041 to 0.05: it errs to
        more growth.

    Source
        Conservation of mass; density: Melinder, Properties of Secondary Working Fluids for Indirect
        Systems, IIR 2010, as carried by the open CoolProp library 8.0.0

    Caution
        Liquid that fills a closed system bursts it when it warms: leave it air to grow into, and
        never open a hot system.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_expansion(mass_fraction, temperature, later_temperature, invalid)


def propylene_glycol_expansion(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Growth in volume of a mix of water and propylene glycol between two temperatures.

    Formula
        `b = d(w, T_1) / d(w, T_2) - 1` with `d` of `propylene_glycol_density`

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T_1`, at which the volume is known
        later_temperature (temperature): `T_2`, at which it is asked for

    Returns
        (ratio [-]) The growth over the first volume; negative where the mix shrinks.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`
        - `223.15 <= later_temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run; the last step of the growth is
        the steepest. Pressure is left out: 1 bar is 0.005 %. Without glycol the growth from 20 °C
        is within 0.0004 of IAPWS-95 up to 95 °C, where it is 0.038; near 4 °C, where water turns,
        it is no guide to the sign. The ASHRAE (2001) tables of inhibited coolant from 20 % to 60 %
        by volume agree within 0.003 from 20 °C to 95 °C.

    Source
        Conservation of mass; density: Melinder, Properties of Secondary Working Fluids for Indirect
        Systems, IIR 2010, as carried by the open CoolProp library 8.0.0

    Caution
        Liquid that fills a closed system bursts it when it warms: leave it air to grow into, and
        never open a hot system.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_expansion(mass_fraction, temperature, later_temperature, invalid)


def ethylene_glycol_expansion_coefficient(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Thermal expansion coefficient, by volume, of a mix of water and ethylene glycol.

    Formula
        `a = -(1 / d(w, T)) (partial d(w, T) / partial T)` with `d` of `ethylene_glycol_density`,
        differentiated term by term

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (thermal expansion coefficient [1/K]) The growth in volume per volume and kelvin at that
        temperature; it rises with temperature, so over a range use `ethylene_glycol_expansion`.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`

        Liquid only, as `ethylene_glycol_density`. A derivative of a fit is less sure than the fit:
        without glycol, between 20 °C and 95 °C, it is within 30 ppm/K of IAPWS-95; near 4 °C, where
        water turns, not even its sign counts. The ASHRAE (2001) tables of inhibited coolant lie
        within 100 ppm/K from 40 °C to 95 °C.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_expansion_coefficient(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_expansion_coefficient(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Thermal expansion coefficient, by volume, of a mix of water and propylene glycol.

    Formula
        `a = -(1 / d(w, T)) (partial d(w, T) / partial T)` with `d` of `propylene_glycol_density`,
        differentiated term by term

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (thermal expansion coefficient [1/K]) The growth in volume per volume and kelvin at that
        temperature; it rises with temperature, so over a range use `propylene_glycol_expansion`.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`

        Liquid only, as `propylene_glycol_density`. A derivative of a fit is less sure than the fit:
        without glycol, between 20 °C and 95 °C, it is within 50 ppm/K of IAPWS-95; near 4 °C, where
        water turns, not even its sign counts. The ASHRAE (2001) tables of inhibited coolant lie
        within 80 ppm/K from 40 °C to 80 °C and up to 180 ppm/K higher at 95 °C.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_expansion_coefficient(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


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

        The curve has a minimum beyond this range. It agrees with the ASHRAE (2001) tables, by mass,
        within 0.2 K up to 35 % and reads 0.5 K to 1.5 K warmer above; a second fit of its own book
        lies within 1.6 K. Without glycol it gives 273.1249 K.

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
        exp(C1 + C2/T + C3 ln T + C4 T^6)`, `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) /
        M_w)`, `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol

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
        exp(C1 + C2/T + C3 ln T + C4 T^2)`, `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) /
        M_w)`, `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol

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


def ethylene_glycol_boiling_pressure(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Absolute pressure under which a mix of water and ethylene glycol begins to boil at a
    temperature.

    Formula
        `p = x_w p_w(T) + x_g p_g(T)` (Raoult); `p_w` of IAPWS-IF97 region 4, `p_g = exp(C1 + C2/T +
        C3 ln T + C4 T^6)`, `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` =
        62.06784 g/mol, `M_w` = 18.01528 g/mol

    Parameters
        temperature (temperature): `T`
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less

    Returns
        (absolute pressure [Pa]) The bubble pressure: under less than it the mix boils.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`

        The result lies between 10 kPa and 500 kPa, the range over which the mixture model was
        compared with others; outside it is refused. An ideal solution without inhibitors. From 100
        °C to 127 °C and up to 60 % activity models ask for up to 1.1 % more (UNIFAC) and 0.8 % less
        (Dortmund UNIFAC).

    Source
        Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical
        Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals
        library 1.5.2

    Caution
        Hot pressurised coolant scalds: never open a hot system, and never pump one above its
        weakest component. Hot metal boils coolant earlier than its mean temperature says.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_boiling_pressure(temperature, mass_fraction, invalid)  # type: ignore[no-any-return]


def propylene_glycol_boiling_pressure(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Absolute pressure under which a mix of water and propylene glycol begins to boil at a
    temperature.

    Formula
        `p = x_w p_w(T) + x_g p_g(T)` (Raoult); `p_w` of IAPWS-IF97 region 4, `p_g = exp(C1 + C2/T +
        C3 ln T + C4 T^2)`, `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` =
        76.09442 g/mol, `M_w` = 18.01528 g/mol

    Parameters
        temperature (temperature): `T`
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less

    Returns
        (absolute pressure [Pa]) The bubble pressure: under less than it the mix boils.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`

        The result lies between 10 kPa and 500 kPa, the range over which the mixture model was
        compared with others; outside it is refused. An ideal solution without inhibitors, and less
        sure than for ethylene glycol. From 100 °C to 127 °C activity models ask for more pressure:
        at 50 % by 10 % (UNIFAC) and 18 % (Dortmund UNIFAC), at 60 % by 14 % and 26 %, and by more
        with more glycol. Keep the gap as margin.

    Source
        Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical
        Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals
        library 1.5.2

    Caution
        Hot pressurised coolant scalds: never open a hot system, and never pump one above its
        weakest component. Hot metal boils coolant earlier than its mean temperature says.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_boiling_pressure(temperature, mass_fraction, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_mass_fraction(
    *,
    concentrate_volume_share: RatioLike,
    glycol_mass_share: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Glycol by mass in a mix that was measured out by volume: water and a concentrate of ethylene
    glycol.

    Formula
        `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` =
        1113.5 kg/m³, `d_w` = 998.207 kg/m³

    Parameters
        concentrate_volume_share (ratio): `f`, concentrate over all that is poured, before it is
            mixed
        glycol_mass_share (ratio): `s`, glycol in the concentrate by mass, as its data sheet says; 1
            for pure glycol

    Returns
        (ratio [-]) The mass of glycol over the mass of the mix, as the other functions of this
        system want it.

    Valid for (SI)
        - `0 <= concentrate_volume_share <= 1`
        - `0 < glycol_mass_share <= 1`

        Volumes at 20 °C, of the parts: the mix itself is smaller, by about 1 % with ethylene glycol
        and 2 % with propylene glycol at half and half. What the concentrate holds beside glycol
        counts as water.

    Source
        Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library
        1.5.2, water IAPWS-95

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_mass_fraction(concentrate_volume_share, glycol_mass_share, invalid)


def propylene_glycol_mass_fraction(
    *,
    concentrate_volume_share: RatioLike,
    glycol_mass_share: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Glycol by mass in a mix that was measured out by volume: water and a concentrate of propylene
    glycol.

    Formula
        `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` =
        1036.1 kg/m³, `d_w` = 998.207 kg/m³

    Parameters
        concentrate_volume_share (ratio): `f`, concentrate over all that is poured, before it is
            mixed
        glycol_mass_share (ratio): `s`, glycol in the concentrate by mass, as its data sheet says; 1
            for pure glycol

    Returns
        (ratio [-]) The mass of glycol over the mass of the mix, as the other functions of this
        system want it.

    Valid for (SI)
        - `0 <= concentrate_volume_share <= 1`
        - `0 < glycol_mass_share <= 1`

        Volumes at 20 °C, of the parts: the mix itself is smaller, by about 1 % with ethylene glycol
        and 2 % with propylene glycol at half and half. What the concentrate holds beside glycol
        counts as water.

    Source
        Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library
        1.5.2, water IAPWS-95

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_mass_fraction(concentrate_volume_share, glycol_mass_share, invalid)


def ethylene_glycol_mass_fraction_for_freezing(
    *,
    freezing_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Least share of ethylene glycol with which a mix begins to freeze no sooner than at a
    temperature.

    Formula
        `T = sum over i of c_i (w - 0.308462)^i`, i from 0 to 5, solved for `w`

    Parameters
        freezing_temperature (temperature): `T`, at which the first ice may form

    Returns
        (ratio [-]) The mass of glycol over the mass of the mix; shops mix by volume, which is less.

    Valid for (SI)
        - `221.95 <= freezing_temperature <= 273.15`

        The curve falls all along this range, so that there is one answer; beyond 60 % it has a
        minimum and a second branch, which is refused. It reads less glycol than the ASHRAE (2001)
        tables, by 1.4 % of the mix at -20 °C and 1.9 % at -30 °C: keep that as margin.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0; solved by Brent's method

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_mass_fraction_for_freezing(freezing_temperature, invalid)


def propylene_glycol_mass_fraction_for_freezing(
    *,
    freezing_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Least share of propylene glycol with which a mix begins to freeze no sooner than at a
    temperature.

    Formula
        `T = sum over i of c_i (w - 0.307031)^i`, i from 0 to 5, solved for `w`

    Parameters
        freezing_temperature (temperature): `T`, at which the first ice may form

    Returns
        (ratio [-]) The mass of glycol over the mass of the mix; shops mix by volume, which is less.

    Valid for (SI)
        - `223.15 <= freezing_temperature <= 273.12`

        The curve falls all along this range, so that there is one answer; beyond 60 % it has a
        minimum and a second branch, which is refused. By mass the ASHRAE (2001) tables agree within
        1 % of the mix and ask for less.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0; solved by Brent's method

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_mass_fraction_for_freezing(freezing_temperature, invalid)


def ethylene_glycol_specific_heat(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Specific heat of a mix of water and ethylene glycol.

    Formula
        `c = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (specific heat [J/(kg·K)]) The specific heat: heat per mass and temperature, at constant
        pressure.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 1.6 % less to 2.6 % more above 0 °C and up to 6.6 % more near -33 °C; a second fit
        of its own book lies within 0.9 %. Without glycol it is within 0.2 % of IAPWS-95.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_specific_heat(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_specific_heat(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Specific heat of a mix of water and propylene glycol.

    Formula
        `c = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (specific heat [J/(kg·K)]) The specific heat: heat per mass and temperature, at constant
        pressure.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read up to 0.8 % more; a second fit of its own book reads up to 4.1 % more near -38 °C.
        Without glycol it is within 0.1 % of IAPWS-95.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_specific_heat(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_thermal_conductivity(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Thermal conductivity of a mix of water and ethylene glycol.

    Formula
        `k = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 52.7 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (thermal conductivity [W/(m·K)]) The thermal conductivity: heat flow per area and
        temperature gradient.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 3.2 % less to 0.8 % more above 0 °C and up to 6.0 % less near -33 °C; a second fit
        of its own book lies within 0.3 %. Without glycol it is within 0.9 % of the IAPWS
        formulation.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_thermal_conductivity(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_thermal_conductivity(
    *,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Thermal conductivity of a mix of water and propylene glycol.

    Formula
        `k = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to
        5 - i

    Parameters
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less (50 % by volume is 50.9 % by mass)
        temperature (temperature): `T`, above the freezing temperature of the mix

    Returns
        (thermal conductivity [W/(m·K)]) The thermal conductivity: heat flow per area and
        temperature gradient.

    Valid for (SI)
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`

        Liquid only: at or below the freezing temperature of the mix it is refused, and nothing is
        extrapolated beyond 100 °C, hot as a capped system may run. Pure glycol, no inhibitors. From
        20 % to 60 %: the ASHRAE (2001) tables of inhibited coolant, taken by volume and converted,
        read from 4.0 % less to 2.1 % more; a second fit of its own book lies within 0.5 %. Without
        glycol it is within 0.9 % of the IAPWS formulation.

    Source
        Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
        coefficients as carried by the open CoolProp library 8.0.0

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_thermal_conductivity(mass_fraction, temperature, invalid)  # type: ignore[no-any-return]


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
