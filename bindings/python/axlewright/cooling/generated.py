"""Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["BoilingMargin", "CapFindings", "CapTest", "Coolant", "Exchange", "FreshFill", "LeakDown", "LeakDownFindings", "Mix", "air_test_energy", "ethylene_glycol_boiling_altitude", "ethylene_glycol_cap_pressure", "ethylene_glycol_expansion_volume", "ethylene_glycol_pump_inlet_margin", "header_air_volume", "leak_down_least_pressure", "leak_down_pressure", "leak_down_pressure_over_coolant", "leaked_air_volume", "leaked_coolant_volume", "propylene_glycol_boiling_altitude", "propylene_glycol_cap_pressure", "propylene_glycol_expansion_volume", "propylene_glycol_pump_inlet_margin", "water_boiling_altitude", "water_cap_pressure", "water_pump_inlet_margin", "water_test_energy"]

_water_boiling_altitude = _functions["cooling.water_boiling_altitude"]
_ethylene_glycol_boiling_altitude = _functions["cooling.ethylene_glycol_boiling_altitude"]
_propylene_glycol_boiling_altitude = _functions["cooling.propylene_glycol_boiling_altitude"]
_water_cap_pressure = _functions["cooling.water_cap_pressure"]
_ethylene_glycol_cap_pressure = _functions["cooling.ethylene_glycol_cap_pressure"]
_propylene_glycol_cap_pressure = _functions["cooling.propylene_glycol_cap_pressure"]
_ethylene_glycol_expansion_volume = _functions["cooling.ethylene_glycol_expansion_volume"]
_propylene_glycol_expansion_volume = _functions["cooling.propylene_glycol_expansion_volume"]
_header_air_volume = _functions["cooling.header_air_volume"]
_leak_down_least_pressure = _functions["cooling.leak_down_least_pressure"]
_leak_down_pressure = _functions["cooling.leak_down_pressure"]
_leak_down_pressure_over_coolant = _functions["cooling.leak_down_pressure_over_coolant"]
_leaked_air_volume = _functions["cooling.leaked_air_volume"]
_leaked_coolant_volume = _functions["cooling.leaked_coolant_volume"]
_air_test_energy = _functions["cooling.air_test_energy"]
_water_test_energy = _functions["cooling.water_test_energy"]
_water_pump_inlet_margin = _functions["cooling.water_pump_inlet_margin"]
_ethylene_glycol_pump_inlet_margin = _functions["cooling.ethylene_glycol_pump_inlet_margin"]
_propylene_glycol_pump_inlet_margin = _functions["cooling.propylene_glycol_pump_inlet_margin"]
_cap_test_findings = _functions["cooling.CapTest.findings"]
_cap_test_boiling_temperature = _functions["cooling.CapTest.boiling_temperature"]
_cap_test_boiling_loss = _functions["cooling.CapTest.boiling_loss"]
_cap_test_boiling_table = _functions["cooling.CapTest.boiling_table"]
_coolant_margin = _functions["cooling.Coolant.margin"]
_coolant_freezing_temperature = _functions["cooling.Coolant.freezing_temperature"]
_coolant_margin_table = _functions["cooling.Coolant.margin_table"]
_leak_down_findings = _functions["cooling.LeakDown.findings"]
_leak_down_table = _functions["cooling.LeakDown.table"]
_mix_fresh_fill = _functions["cooling.Mix.fresh_fill"]
_mix_exchange = _functions["cooling.Mix.exchange"]
_mix_table = _functions["cooling.Mix.table"]


class CapFindings(NamedTuple):
    """Results of `findings`."""

    holding_margin: Quantity
    """How much it surely holds above its rating less the tolerance; where only the opening is known
    and that is too low, at most this.
    """
    holding_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    opening_margin: Quantity
    """How far it surely opens below its rating and the tolerance; where only the holding is known and
    that is too high, at most this.
    """
    opening_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    component_margin: Quantity
    """How far the cap keeps the system below what the weakest component may bear, at its rating or
    where it opens, the higher of the two.
    """
    component_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    vacuum_margin: Quantity
    """How far the vacuum valve surely opens above the deepest vacuum."""
    vacuum_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""


class BoilingMargin(NamedTuple):
    """Results of `margin`."""

    absolute_pressure: Quantity
    """Under the cap at its rating."""
    mass_fraction: Ratio
    """Glycol by mass of the mix."""
    boiling_temperature: Quantity
    """Temperature at which the mix begins to boil."""
    margin: Quantity
    """How much that exceeds the hottest coolant."""
    verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""


class LeakDownFindings(NamedTuple):
    """Results of `findings`."""

    tight_pressure: Quantity
    """Reading that a tight system would show at the end; not a number where it is not known."""
    loss: Quantity
    """How far below that the reading is; negative where it is above."""
    greatest_loss: Quantity
    """The same, with the gauge's error against the system in both readings."""
    margin: Quantity
    """How much less that is than what is allowed."""
    verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that; `not known` where the tight reading is."""
    leaked_air: Quantity
    """Air that left, as it takes up room outside, if all of it was air; not a number without
    `gas_volume`.
    """
    leaked_coolant: Quantity
    """Coolant that left, if all of it was coolant; not a number without `gas_volume`, nor where gas
    alone is trapped.
    """


class FreshFill(NamedTuple):
    """Results of `fresh_fill`."""

    mass_fraction: Ratio
    """Glycol by mass of the mix."""
    concentrate_share: Ratio
    """Concentrate over all that is poured, by volume."""
    concentrate_volume: Quantity
    """Concentrate to pour."""
    water_volume: Quantity
    """Water to pour."""
    freezing_temperature: Quantity
    """Temperature at which the mix begins to freeze: the first ice."""
    boiling_temperature: Quantity
    """Temperature at which the mix begins to boil under the cap at its rating."""
    margin: Quantity
    """How much that exceeds the hottest coolant."""
    verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    growth: Quantity
    """Volume by which the fill grows from the fill to the mean temperature: what header tank or bottle
    must take up.
    """


class Exchange(NamedTuple):
    """Results of `exchange`."""

    present_mass_fraction: Ratio
    """Glycol by mass of the fill that is there."""
    mass_fraction: Ratio
    """Glycol by mass of the mix that is wanted."""
    drained_volume: Quantity
    """What to drain, of the fill mixed through."""
    concentrate_volume: Quantity
    """Concentrate to pour in its place; nothing where the fill is too strong."""
    water_volume: Quantity
    """Water to pour in its place; nothing where the fill is too weak."""


def water_boiling_altitude(
    *,
    temperature: QuantityLike,
    cap_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height above sea level from which on water begins to boil at a temperature, under a cap.

    Formula
        `p_ISA(z) = p_w(T) - p_cap`, solved for `z`

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        cap_pressure (gauge pressure): `p_cap`, gauge pressure that the cap holds; 0 without one

    Returns
        (length [m]) The height on an average day, as on a map: above it the coolant boils, below it
        not. Negative where it boils at sea level already.

    Valid for (SI)
        - `273.15 <= temperature <= 423.15`
        - `0 <= cap_pressure <= 350000`

        The standard atmosphere from -5 km to 20 km: where the coolant boils only higher up or not
        at all, or everywhere, the call is refused and says which. A day of low pressure brings the
        height down by some 300 m.

    Source
        Definition of a gauge pressure; boiling: `fluid::water_saturation_pressure`; air: US
        Standard Atmosphere 1976

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_boiling_altitude(temperature, cap_pressure, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_boiling_altitude(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    cap_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height above sea level from which on a mix of water and ethylene glycol begins to boil at a
    temperature, under a cap.

    Formula
        `p_ISA(z) = x_w p_w(T) + x_g p_g(T) - p_cap` (Raoult), solved for `z`; `x_w = 1 - x_g`, `x_g
        = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol;
        `p_w` and `p_g` as in `fluid::ethylene_glycol_boiling_pressure`

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        cap_pressure (gauge pressure): `p_cap`, gauge pressure that the cap holds; 0 without one

    Returns
        (length [m]) The height on an average day, as on a map: above it the coolant boils, below it
        not. Negative where it boils at sea level already.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`
        - `0 <= cap_pressure <= 350000`

        As `fluid::ethylene_glycol_boiling_pressure`. The standard atmosphere from -5 km to 20 km:
        where the coolant boils only higher up or not at all, or everywhere, the call is refused and
        says which. A day of low pressure brings the height down by some 300 m.

    Source
        Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_pressure`; air: US
        Standard Atmosphere 1976

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_boiling_altitude(temperature, mass_fraction, cap_pressure, invalid)  # type: ignore[no-any-return]


def propylene_glycol_boiling_altitude(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    cap_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height above sea level from which on a mix of water and propylene glycol begins to boil at a
    temperature, under a cap.

    Formula
        `p_ISA(z) = x_w p_w(T) + x_g p_g(T) - p_cap` (Raoult), solved for `z`; `x_w = 1 - x_g`, `x_g
        = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol;
        `p_w` and `p_g` as in `fluid::propylene_glycol_boiling_pressure`

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        cap_pressure (gauge pressure): `p_cap`, gauge pressure that the cap holds; 0 without one

    Returns
        (length [m]) The height on an average day, as on a map: above it the coolant boils, below it
        not. Negative where it boils at sea level already.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`
        - `0 <= cap_pressure <= 350000`

        As `fluid::propylene_glycol_boiling_pressure`. The standard atmosphere from -5 km to 20 km:
        where the coolant boils only higher up or not at all, or everywhere, the call is refused and
        says which. A day of low pressure brings the height down by some 300 m. Propylene glycol is
        less sure: activity models ask for 10 % to 18 % more pressure at 50 %, which brings it down
        by 1 km to 3 km.

    Source
        Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_pressure`; air: US
        Standard Atmosphere 1976

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_boiling_altitude(temperature, mass_fraction, cap_pressure, invalid)  # type: ignore[no-any-return]


def water_cap_pressure(
    *,
    temperature: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Least cap pressure under which water does not boil at a temperature.

    Formula
        `p_cap = p_w(T) - p_a` with `p_w` of IAPWS-IF97 region 4

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air as measured there,
            not reduced to sea level

    Returns
        (gauge pressure [Pa]) The gauge pressure that the cap must hold. Negative where there is no
        boiling even without a cap.

    Valid for (SI)
        - `273.15 <= temperature <= 423.15`
        - `40000 <= station_pressure <= 110000`

        Pure water.

    Source
        Definition of a gauge pressure; boiling: `fluid::water_saturation_pressure`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_cap_pressure(temperature, station_pressure, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_cap_pressure(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Least cap pressure under which a mix of water and ethylene glycol does not boil at a
    temperature.

    Formula
        `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult), `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g
        + (1 - w) / M_w)`, `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in
        `fluid::ethylene_glycol_boiling_pressure`

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air as measured there,
            not reduced to sea level

    Returns
        (gauge pressure [Pa]) The gauge pressure that the cap must hold. Negative where there is no
        boiling even without a cap.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`
        - `40000 <= station_pressure <= 110000`

        As `fluid::ethylene_glycol_boiling_pressure`, which refuses less than 10 kPa and more than
        500 kPa absolute.

    Source
        Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_pressure`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_cap_pressure(temperature, mass_fraction, station_pressure, invalid)  # type: ignore[no-any-return]


def propylene_glycol_cap_pressure(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Least cap pressure under which a mix of water and propylene glycol does not boil at a
    temperature.

    Formula
        `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult), `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g
        + (1 - w) / M_w)`, `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in
        `fluid::propylene_glycol_boiling_pressure`

    Parameters
        temperature (temperature): `T`, of the hottest coolant, with the margin that is wanted
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air as measured there,
            not reduced to sea level

    Returns
        (gauge pressure [Pa]) The gauge pressure that the cap must hold. Negative where there is no
        boiling even without a cap.

    Valid for (SI)
        - `273.15 <= temperature <= 533.15`
        - `0 <= mass_fraction <= 1`
        - `40000 <= station_pressure <= 110000`

        As `fluid::propylene_glycol_boiling_pressure`, which refuses less than 10 kPa and more than
        500 kPa absolute. Propylene glycol is less sure: activity models ask for 10 % to 18 % more
        absolute pressure at 50 %, and a cap chosen without that margin may be too weak.

    Source
        Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_pressure`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. The pressure comes only once
        the system has built it, a cap counts with what it holds, and hot metal boils coolant
        earlier than its mean temperature says: add a margin to the temperature.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_cap_pressure(temperature, mass_fraction, station_pressure, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_expansion_volume(
    *,
    coolant_volume: QuantityLike,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Volume by which a fill of water and ethylene glycol grows as it warms.

    Formula
        `V_e = V (d(w, T_1) / d(w, T_2) - 1)`

    Parameters
        coolant_volume (volume): `V`, of the whole fill at the first temperature
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T_1`, at which it was filled
        later_temperature (temperature): `T_2`, of the coolant when it is hot, the mean over the
            system

    Returns
        (volume [m³]) What the header tank or the overflow bottle must take up; negative where the
        fill shrinks.

    Valid for (SI)
        - `0 <= coolant_volume <= 1000`
        - `0 <= mass_fraction <= 0.6`
        - `221.95 <= temperature <= 373.15`
        - `221.95 <= later_temperature <= 373.15`

        As `fluid::ethylene_glycol_expansion`: liquid, to 100 °C at most. The growth of metal and
        hoses takes up a little of it and is left out, which errs to a larger tank; steam pockets
        are not seen.

    Source
        Conservation of mass; density as in `fluid::ethylene_glycol_density`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. Liquid with no air to grow
        into bursts what holds it.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_expansion_volume(coolant_volume, mass_fraction, temperature, later_temperature, invalid)  # type: ignore[no-any-return]


def propylene_glycol_expansion_volume(
    *,
    coolant_volume: QuantityLike,
    mass_fraction: RatioLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Volume by which a fill of water and propylene glycol grows as it warms.

    Formula
        `V_e = V (d(w, T_1) / d(w, T_2) - 1)`

    Parameters
        coolant_volume (volume): `V`, of the whole fill at the first temperature
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        temperature (temperature): `T_1`, at which it was filled
        later_temperature (temperature): `T_2`, of the coolant when it is hot, the mean over the
            system

    Returns
        (volume [m³]) What the header tank or the overflow bottle must take up; negative where the
        fill shrinks.

    Valid for (SI)
        - `0 <= coolant_volume <= 1000`
        - `0 <= mass_fraction <= 0.6`
        - `223.15 <= temperature <= 373.15`
        - `223.15 <= later_temperature <= 373.15`

        As `fluid::propylene_glycol_expansion`: liquid, to 100 °C at most. The growth of metal and
        hoses takes up a little of it and is left out, which errs to a larger tank; steam pockets
        are not seen.

    Source
        Conservation of mass; density as in `fluid::propylene_glycol_density`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. Liquid with no air to grow
        into bursts what holds it.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_expansion_volume(coolant_volume, mass_fraction, temperature, later_temperature, invalid)  # type: ignore[no-any-return]


def header_air_volume(
    *,
    expansion_volume: QuantityLike,
    fill_pressure: QuantityLike,
    cap_pressure: QuantityLike,
    vapour_pressure: QuantityLike,
    fill_temperature: QuantityLike,
    air_temperature: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Air that a closed header tank needs above the cold coolant, so that the cap stays shut when the
    coolant has grown.

    Formula
        `V_a = V_e p_d / (p_d - p_1 T_2 / T_1)` with `p_d = p_cap + p_a - p_v` and `p_1 = p_fill +
        p_a`

    Parameters
        expansion_volume (volume): `V_e`, growth of the coolant: `ethylene_glycol_expansion_volume`
            or `propylene_glycol_expansion_volume`
        fill_pressure (gauge pressure): `p_fill`, gauge pressure in the tank when it was closed
            cold; 0 where it was open
        cap_pressure (gauge pressure): `p_cap`, gauge pressure at which the cap opens, its lower
            limit
        vapour_pressure (absolute pressure): `p_v`, of the hot coolant in the tank:
            `fluid::ethylene_glycol_boiling_pressure` and its like
        fill_temperature (temperature): `T_1`, of the air when the tank was closed
        air_temperature (temperature): `T_2`, of the air above the hot coolant
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (volume [m³]) The air space, cold; the tank holds it and the coolant that is wanted in it
        besides.

    Valid for (SI)
        - `0 <= expansion_volume <= 1000`
        - `0 <= fill_pressure <= 350000`
        - `0 <= cap_pressure <= 350000`
        - `0 <= vapour_pressure <= 500000`
        - `223.15 <= fill_temperature <= 373.15`
        - `223.15 <= air_temperature <= 423.15`
        - `40000 <= station_pressure <= 110000`

        A closed tank of constant size, air that neither leaks nor dissolves; the vapour that the
        cold air holds is counted as air, which errs to more. Where warm air and vapour alone open
        the cap no volume is enough, and the call is refused. A system with an overflow bottle works
        otherwise: there the bottle takes up the growth.

    Source
        Ideal gas law and Dalton's law

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. A tank without enough air
        throws coolant out hot, and is short of it when cold.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _header_air_volume(expansion_volume, fill_pressure, cap_pressure, vapour_pressure, fill_temperature, air_temperature, station_pressure, invalid)  # type: ignore[no-any-return]


def leak_down_least_pressure(
    *,
    gauge_pressure: QuantityLike,
    tight_pressure: QuantityLike,
    allowed_loss: QuantityLike,
    gauge_error: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Lowest reading at the end of a leak-down test that still proves the system tight.

    Formula
        `p_l = p_t - l + e (1 + (p_t + p_a) / (p_1 + p_a))`

    Parameters
        gauge_pressure (gauge pressure): `p_1`, reading at the start of the test
        tight_pressure (gauge pressure): `p_t`, reading of a tight system at the end:
            `leak_down_pressure`, or `leak_down_pressure_over_coolant`
        allowed_loss (stress or pressure difference): `l`, loss of pressure that is allowed beyond
            the change with temperature
        gauge_error (stress or pressure difference): `e`, half width of the gauge's error
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (gauge pressure [Pa]) The limit for the later reading. It counts the gauge's whole error
        against the system in both readings: the later one may read high, and the first one low. An
        error of the first reading changes the tight reading in proportion to the absolute
        pressures.

    Valid for (SI)
        - `0 <= gauge_pressure <= 1000000`
        - `-110000 <= tight_pressure`
        - `0 <= allowed_loss <= 1000000`
        - `0 <= gauge_error <= 1000000`
        - `40000 <= station_pressure <= 110000`

        Trapped gas, alone or over coolant: the tight pressure is proportional to the first one,
        both absolute. The errors of thermometer and barometer are not in it.

    Source
        Ideal gas law; worst case of two readings with the same gauge (definition)

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test below the
        rating of the weakest component, cold, and stand clear. The maker's instructions and local
        codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leak_down_least_pressure(gauge_pressure, tight_pressure, allowed_loss, gauge_error, station_pressure, invalid)  # type: ignore[no-any-return]


def leak_down_pressure(
    *,
    gauge_pressure: QuantityLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """What a tight system full of gas should read after its temperature has changed.

    Formula
        `p_2 = (p_1 + p_a) T_2 / T_1 - p_a`

    Parameters
        gauge_pressure (gauge pressure): `p_1`, reading at the start of the test
        temperature (temperature): `T_1`, of the gas at the start
        later_temperature (temperature): `T_2`, of the gas when it is read again
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (gauge pressure [Pa]) The gauge reading that temperature alone accounts for; what is below
        it has leaked.

    Valid for (SI)
        - `0 <= gauge_pressure <= 1000000`
        - `233.15 <= temperature <= 333.15`
        - `233.15 <= later_temperature <= 333.15`
        - `40000 <= station_pressure <= 110000`

        Gas trapped in a constant volume, dry, and the air around as before: the reading falls by as
        much as the barometer rises. Real air differs by about 0.05 % of the absolute pressure.
        **Not for a system that is full of liquid**, whose pressure follows the expansion of liquid,
        hoses and metal, nor for gas above coolant whose level moves: there the expected reading is
        not known.

    Source
        Ideal gas law at constant volume and mass

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test below the
        rating of the weakest component, cold, and stand clear. The maker's instructions and local
        codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leak_down_pressure(gauge_pressure, temperature, later_temperature, station_pressure, invalid)  # type: ignore[no-any-return]


def leak_down_pressure_over_coolant(
    *,
    gauge_pressure: QuantityLike,
    gas_volume: QuantityLike,
    coolant_volume: QuantityLike,
    coolant_expansion: RatioLike,
    temperature: QuantityLike,
    later_temperature: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """What a tight system of coolant with air trapped above it should read after its temperature has
    changed.

    Formula
        `p_2 = (p_1 + p_a) T_2 / T_1 V_g / (V_g - b V) - p_a`

    Parameters
        gauge_pressure (gauge pressure): `p_1`, reading at the start of the test
        gas_volume (volume): `V_g`, of all the air trapped in the system and in the tester at the
            start
        coolant_volume (volume): `V`, of the coolant at the start
        coolant_expansion (ratio): `b`, growth of the coolant over its volume:
            `fluid::ethylene_glycol_expansion` and its like; negative where it cooled
        temperature (temperature): `T_1`, of the gas at the start
        later_temperature (temperature): `T_2`, of the gas when it is read again
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (gauge pressure [Pa]) The gauge reading that temperature alone accounts for; what is below
        it has leaked.

    Valid for (SI)
        - `0 <= gauge_pressure <= 1000000`
        - `0.000001 <= gas_volume <= 1000`
        - `0 <= coolant_volume <= 1000`
        - `-0.2 <= coolant_expansion <= 0.2`
        - `233.15 <= temperature <= 313.15`
        - `233.15 <= later_temperature <= 313.15`
        - `40000 <= station_pressure <= 110000`

        Ideal gas, rigid metal and hoses: real hoses give way and damp what the coolant does, so
        that a small fall is not yet a leak. The vapour is counted as gas: between 20 °C and 40 °C
        that is wrong by up to 5 kPa, below by less. Where the coolant grows as much as there was
        gas the system is full of liquid, its reading is not known, and the call is refused.

    Source
        Ideal gas law and conservation of the coolant's mass

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test below the
        rating of the weakest component, cold, and stand clear. The maker's instructions and local
        codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leak_down_pressure_over_coolant(gauge_pressure, gas_volume, coolant_volume, coolant_expansion, temperature, later_temperature, station_pressure, invalid)  # type: ignore[no-any-return]


def leaked_air_volume(
    *,
    gas_volume: QuantityLike,
    tight_pressure: QuantityLike,
    gauge_pressure: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Air that left a system under test, from the pressure it lost.

    Formula
        `V = V_g (p_1 - p_2) / p_a`

    Parameters
        gas_volume (volume): `V_g`, of all the air trapped in the system and in the tester
        tight_pressure (gauge pressure): `p_1`, gauge reading that a tight system would show now:
            the first reading, or `leak_down_pressure` and its like where it warmed or cooled
        gauge_pressure (gauge pressure): `p_2`, gauge reading now
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (volume [m³]) The air, as it takes up room outside; negative where the reading rose.

    Valid for (SI)
        - `0.000001 <= gas_volume <= 1000`
        - `0 <= tight_pressure <= 1000000`
        - `0 <= gauge_pressure <= 1000000`
        - `40000 <= station_pressure <= 110000`

        All that leaked was gas, the space it left stayed as large, and the temperature is that of
        the reading that a tight system would show. Divided by the time it is the mean leak; it
        slows as the pressure falls.

    Source
        Boyle's law

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test below the
        rating of the weakest component, cold, and stand clear. The maker's instructions and local
        codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leaked_air_volume(gas_volume, tight_pressure, gauge_pressure, station_pressure, invalid)  # type: ignore[no-any-return]


def leaked_coolant_volume(
    *,
    gas_volume: QuantityLike,
    tight_pressure: QuantityLike,
    gauge_pressure: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Coolant that left a system under test, from the pressure that the air trapped above it lost.

    Formula
        `V = V_g ((p_1 + p_a) / (p_2 + p_a) - 1)`

    Parameters
        gas_volume (volume): `V_g`, of all the air trapped in the system and in the tester
        tight_pressure (gauge pressure): `p_1`, gauge reading that a tight system would show now:
            the first reading, or `leak_down_pressure` and its like where it warmed or cooled
        gauge_pressure (gauge pressure): `p_2`, gauge reading now
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (volume [m³]) The coolant; negative where the reading rose.

    Valid for (SI)
        - `0.000001 <= gas_volume <= 1000`
        - `0 <= tight_pressure <= 1000000`
        - `0 <= gauge_pressure <= 1000000`
        - `40000 <= station_pressure <= 110000`

        All that leaked was coolant and the trapped air took its place, at the temperature of the
        reading that a tight system would show. Hoses that give way look like a leak: wait until
        they have settled.

    Source
        Boyle's law

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test below the
        rating of the weakest component, cold, and stand clear. The maker's instructions and local
        codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leaked_coolant_volume(gas_volume, tight_pressure, gauge_pressure, station_pressure, invalid)  # type: ignore[no-any-return]


def air_test_energy(
    *,
    gas_volume: QuantityLike,
    gauge_pressure: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Energy that air under test pressure sets free when what holds it bursts.

    Formula
        `U = p V / (k - 1) (1 - (p_a / p)^((k - 1) / k))` with `p = p_g + p_a` and `k` = 1.4

    Parameters
        gas_volume (volume): `V`, filled with air
        gauge_pressure (gauge pressure): `p_g`, of the test
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (energy [J]) The work of the air as it expands to the pressure around, without exchange of
        heat: the upper bound of what throws parts and caps.

    Valid for (SI)
        - `0 <= gas_volume <= 1000`
        - `0 <= gauge_pressure <= 1000000`
        - `40000 <= station_pressure <= 110000`

        Dry air as an ideal gas; what the stretched walls hold is left out. The same volume of water
        holds some thousand times less: see `water_test_energy`.

    Source
        Isentropic expansion of an ideal gas; ASME PCC-2, Article 501, mandatory appendix on stored
        energy, has the same (from memory)

    Caution
        A burst radiator, hose or tank throws its parts: fill with liquid before the pressure comes
        on, leave as little air as can be, stay below the rating of the weakest component, cold, and
        stand clear. The maker's instructions and local codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _air_test_energy(gas_volume, gauge_pressure, station_pressure, invalid)  # type: ignore[no-any-return]


def water_test_energy(
    *,
    liquid_volume: QuantityLike,
    gauge_pressure: QuantityLike,
    bulk_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Energy that water, or another liquid, under test pressure sets free when what holds it bursts.

    Formula
        `U = p_g^2 V / (2 K)`

    Parameters
        liquid_volume (volume): `V`, filled with liquid, no air left in it
        gauge_pressure (gauge pressure): `p_g`, of the test
        bulk_modulus (stress or pressure difference): `K` of the liquid: 2.18 GPa for water at 20 °C
            (IAPWS-95)

    Returns
        (energy [J]) The work of the liquid as it expands.

    Valid for (SI)
        - `0 <= liquid_volume <= 1000`
        - `0 <= gauge_pressure <= 1000000`
        - `100000000 <= bulk_modulus <= 100000000000`

        Elastic liquid, cold: hot liquid above its boiling point flashes to steam and sets free far
        more. A bubble of air left in it counts by `air_test_energy` and soon outweighs it, and so
        do hoses that have stretched.

    Source
        Work of a linear elastic liquid (definition of the bulk modulus)

    Caution
        Stay below the rating of the weakest component, cold, with the air bled out, and stand clear
        all the same. The maker's instructions and local codes come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_test_energy(liquid_volume, gauge_pressure, bulk_modulus, invalid)  # type: ignore[no-any-return]


def water_pump_inlet_margin(
    *,
    temperature: QuantityLike,
    header_pressure: QuantityLike,
    suction_loss: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """How far water is from boiling at the inlet of the pump, where the pressure is lowest.

    Formula
        `m = T_boiling(p_h + p_a - dp) - T`

    Parameters
        temperature (temperature): `T`, of the coolant at the inlet of the pump
        header_pressure (gauge pressure): `p_h`, gauge pressure where the cap sits
        suction_loss (stress or pressure difference): `dp`, fall of pressure from there to the inlet
            at the full speed of the pump, as measured; a head of coolant above the inlet counts
            against it
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (temperature difference [K]) The margin; negative where the coolant boils there, the pump
        cavitates and the flow breaks down.

    Valid for (SI)
        - `233.15 <= temperature <= 523.15`
        - `0 <= header_pressure <= 350000`
        - `-50000 <= suction_loss <= 350000`
        - `40000 <= station_pressure <= 110000`

        Mean pressure and temperature: the vanes lower the pressure further, by what the pump's
        maker calls the net positive suction head, so that cavitation begins before the margin is
        gone. The pressure left is at least that of the triple point, or the call is refused.

    Source
        Definition of a gauge pressure; boiling: `fluid::water_boiling_temperature`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. A pump that cavitates stops
        the flow, and the engine overheats within minutes.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _water_pump_inlet_margin(temperature, header_pressure, suction_loss, station_pressure, invalid)  # type: ignore[no-any-return]


def ethylene_glycol_pump_inlet_margin(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    header_pressure: QuantityLike,
    suction_loss: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """How far a mix of water and ethylene glycol is from boiling at the inlet of the pump, where the
    pressure is lowest.

    Formula
        `m = T_boiling(w, p_h + p_a - dp) - T`

    Parameters
        temperature (temperature): `T`, of the coolant at the inlet of the pump
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        header_pressure (gauge pressure): `p_h`, gauge pressure where the cap sits
        suction_loss (stress or pressure difference): `dp`, fall of pressure from there to the inlet
            at the full speed of the pump, as measured; a head of coolant above the inlet counts
            against it
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (temperature difference [K]) The margin; negative where the coolant boils there, the pump
        cavitates and the flow breaks down.

    Valid for (SI)
        - `233.15 <= temperature <= 523.15`
        - `0 <= mass_fraction <= 1`
        - `0 <= header_pressure <= 350000`
        - `-50000 <= suction_loss <= 350000`
        - `40000 <= station_pressure <= 110000`

        Mean pressure and temperature: the vanes lower the pressure further, by what the pump's
        maker calls the net positive suction head, so that cavitation begins before the margin is
        gone. The pressure left is between 10 kPa and 500 kPa, or the call is refused.

    Source
        Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_temperature`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. A pump that cavitates stops
        the flow, and the engine overheats within minutes.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ethylene_glycol_pump_inlet_margin(temperature, mass_fraction, header_pressure, suction_loss, station_pressure, invalid)  # type: ignore[no-any-return]


def propylene_glycol_pump_inlet_margin(
    *,
    temperature: QuantityLike,
    mass_fraction: RatioLike,
    header_pressure: QuantityLike,
    suction_loss: QuantityLike,
    station_pressure: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """How far a mix of water and propylene glycol is from boiling at the inlet of the pump, where the
    pressure is lowest.

    Formula
        `m = T_boiling(w, p_h + p_a - dp) - T`

    Parameters
        temperature (temperature): `T`, of the coolant at the inlet of the pump
        mass_fraction (ratio): `w`, mass of glycol over mass of the mix; shops mix by volume, which
            is less
        header_pressure (gauge pressure): `p_h`, gauge pressure where the cap sits
        suction_loss (stress or pressure difference): `dp`, fall of pressure from there to the inlet
            at the full speed of the pump, as measured; a head of coolant above the inlet counts
            against it
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level

    Returns
        (temperature difference [K]) The margin; negative where the coolant boils there, the pump
        cavitates and the flow breaks down.

    Valid for (SI)
        - `233.15 <= temperature <= 523.15`
        - `0 <= mass_fraction <= 1`
        - `0 <= header_pressure <= 350000`
        - `-50000 <= suction_loss <= 350000`
        - `40000 <= station_pressure <= 110000`

        Mean pressure and temperature: the vanes lower the pressure further, by what the pump's
        maker calls the net positive suction head, so that cavitation begins before the margin is
        gone. The pressure left is between 10 kPa and 500 kPa, or the call is refused.

    Source
        Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_temperature`

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; the maker's instructions and local codes come first. A pump that cavitates stops
        the flow, and the engine overheats within minutes.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _propylene_glycol_pump_inlet_margin(temperature, mass_fraction, header_pressure, suction_loss, station_pressure, invalid)  # type: ignore[no-any-return]


class CapTest(Model):
    """What a pressure tester says of a cap: where it opens, what it holds, when it lets air back in.

    Formula
        holding `p_h - e - (p_r - t)`; opening `p_r + t - (p_o + e)`; weakest component `p_w -
        max(p_o + e, p_r)`; vacuum `p_v - e - p_l`

    Fields
        rating (gauge pressure): `p_r`, opening pressure that stands on the cap, a gauge pressure
        opening_pressure (gauge pressure, optional): `p_o`, reading at which it opens; none where
            the test stopped below it
        holding_pressure (gauge pressure, optional): `p_h`, reading that it keeps after the time
            that the tester's instructions state; a cap holds no more than it opens at
        gauge_error (stress or pressure difference): `e`, half width of the gauge's error; the whole
            of it counts against the cap, in every reading
        tolerance (stress or pressure difference): `t`, how far below its rating a cap may hold and
            above it may open (common practice, no source: 1 psi)
        weakest_component (gauge pressure, optional): `p_w`, what the weakest component of the
            system may bear: radiator, heater core, hose or tank
        vacuum_opening (gauge pressure, optional): `p_v`, reading at which the vacuum valve opens, a
            negative gauge pressure
        vacuum_limit (gauge pressure, optional): `p_l`, deepest vacuum that the hoses and tanks may
            see, a negative gauge pressure
        tight_below (stress or pressure difference): margin that is wanted; below it a verdict is
            `tight`, below nothing `short`

    Valid for
        A cap on the bench, cold and wet at its seal, on a gauge whose error is a bound. What is
        missing makes a margin that is not a number and `not known`, never guessed; but a reading
        that condemns the cap by itself does so: one that opens too low holds too little, and is
        short there. A filler neck that does not seal is not seen here.

    Source
        Differences of gauge pressures by definition; boiling: see `fluid`; air: US Standard
        Atmosphere 1976

    Caution
        Hot pressurised coolant scalds: never open a hot system, test the cap cold and on the bench,
        never pump a system above its weakest component; local codes and the maker's instructions
        come first.
    """

    __slots__ = ()
    _name = "cooling.CapTest"
    _kinds = {"rating": "GaugePressure", "opening_pressure": "GaugePressure", "holding_pressure": "GaugePressure", "gauge_error": "Stress", "tolerance": "Stress", "weakest_component": "GaugePressure", "vacuum_opening": "GaugePressure", "vacuum_limit": "GaugePressure", "tight_below": "Stress"}

    def __init__(
        self,
        *,
        rating: QuantityLike,
        gauge_error: QuantityLike,
        tolerance: QuantityLike,
        tight_below: QuantityLike,
        opening_pressure: QuantityLike | None = None,
        holding_pressure: QuantityLike | None = None,
        weakest_component: QuantityLike | None = None,
        vacuum_opening: QuantityLike | None = None,
        vacuum_limit: QuantityLike | None = None,
    ) -> None:
        self._build(
            rating=rating,
            opening_pressure=opening_pressure,
            holding_pressure=holding_pressure,
            gauge_error=gauge_error,
            tolerance=tolerance,
            weakest_component=weakest_component,
            vacuum_opening=vacuum_opening,
            vacuum_limit=vacuum_limit,
            tight_below=tight_below,
        )

    @property
    def rating(self) -> Quantity:
        """`p_r`, opening pressure that stands on the cap, a gauge pressure."""
        return self._read("rating", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def opening_pressure(self) -> Quantity | None:
        """`p_o`, reading at which it opens; none where the test stopped below it."""
        return self._read("opening_pressure", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def holding_pressure(self) -> Quantity | None:
        """`p_h`, reading that it keeps after the time that the tester's instructions state; a cap holds no
        more than it opens at.
        """
        return self._read("holding_pressure", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def gauge_error(self) -> Quantity:
        """`e`, half width of the gauge's error; the whole of it counts against the cap, in every reading."""
        return self._read("gauge_error", "Stress")  # type: ignore[no-any-return]

    @property
    def tolerance(self) -> Quantity:
        """`t`, how far below its rating a cap may hold and above it may open (common practice, no source:
        1 psi).
        """
        return self._read("tolerance", "Stress")  # type: ignore[no-any-return]

    @property
    def weakest_component(self) -> Quantity | None:
        """`p_w`, what the weakest component of the system may bear: radiator, heater core, hose or tank."""
        return self._read("weakest_component", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def vacuum_opening(self) -> Quantity | None:
        """`p_v`, reading at which the vacuum valve opens, a negative gauge pressure."""
        return self._read("vacuum_opening", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def vacuum_limit(self) -> Quantity | None:
        """`p_l`, deepest vacuum that the hoses and tanks may see, a negative gauge pressure."""
        return self._read("vacuum_limit", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def tight_below(self) -> Quantity:
        """Margin that is wanted; below it a verdict is `tight`, below nothing `short`."""
        return self._read("tight_below", "Stress")  # type: ignore[no-any-return]

    def findings(self) -> CapFindings:
        """Margins and verdicts of the cap: holding, opening, weakest component and vacuum valve, each
        apart.

        Returns
            holding_margin (stress or pressure difference [Pa]): how much it surely holds above its
                rating less the tolerance; where only the opening is known and that is too low, at most
                this
            holding_verdict (verdict): what to call that
            opening_margin (stress or pressure difference [Pa]): how far it surely opens below its
                rating and the tolerance; where only the holding is known and that is too high, at most
                this
            opening_verdict (verdict): what to call that
            component_margin (stress or pressure difference [Pa]): how far the cap keeps the system
                below what the weakest component may bear, at its rating or where it opens, the higher
                of the two
            component_verdict (verdict): what to call that
            vacuum_margin (stress or pressure difference [Pa]): how far the vacuum valve surely opens
                above the deepest vacuum
            vacuum_verdict (verdict): what to call that
        """
        return CapFindings(*_cap_test_findings(self._handle))

    def boiling_temperature(self, *, station_pressure: QuantityLike) -> Quantity:
        """Temperature at which water boils under what the cap surely holds, once the system has built that
        pressure.

        Parameters
            station_pressure (absolute pressure): absolute pressure of the air as measured there, not
                reduced to sea level

        Returns
            (temperature [K]) Boiling temperature of water at the holding pressure less the gauge's
            error, at most the rating and at least nothing: an upper bound, hot metal boils earlier and
            the pump inlet governs.
        """
        return _cap_test_boiling_temperature(self._handle, station_pressure)  # type: ignore[no-any-return]

    def boiling_loss(self, *, station_pressure: QuantityLike) -> Quantity:
        """How much lower water boils under what the cap surely holds than under its rating.

        Parameters
            station_pressure (absolute pressure): absolute pressure of the air as measured there, not
                reduced to sea level

        Returns
            (temperature difference [K]) Boiling temperature lost, an upper bound: the gauge's whole
            error counts against the cap. A cap that holds more than its rating gains nothing.
        """
        return _cap_test_boiling_loss(self._handle, station_pressure)  # type: ignore[no-any-return]

    def boiling_table(self, *, holding_pressure: QuantityLike, altitude: QuantityLike) -> Table:
        """Boiling of water over what the cap holds and altitudes.

        Parameters
            holding_pressure (gauge pressure), several: readings that the cap keeps
            altitude (length), several: heights above sea level, for the pressure of the standard
                atmosphere

        Returns
            (table) One row a reading and altitude: `holding_pressure`, `altitude`, `station_pressure`,
            `boiling_temperature`, `boiling_loss` against the rating, `holding_margin`,
            `holding_verdict`.
        """
        return _cap_test_boiling_table(self._handle, holding_pressure, altitude)  # type: ignore[no-any-return]


class Coolant(Model):
    """A coolant under a cap at an altitude, and the hottest that it gets.

    Formula
        `p = p_cap + p_air`; `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s)
        / d_w` for a mix by volume; margin = boiling temperature of the mix at `p`, less the hottest
        coolant

    Fields
        liquid (choice): `water`, `ethylene_glycol` or `propylene_glycol`
        strength (ratio, optional): share of concentrate in the mix; none for water
        strength_by (choice, optional): whether that share is by `mass` or by `volume`, of the parts
            before they are mixed
        concentrate (ratio, optional): glycol in the concentrate by mass, as its data sheet says; 1
            for pure glycol; needed with a strength by volume
        cap (gauge pressure): opening pressure of the cap, a gauge pressure
        altitude (length, optional): height above sea level, for the pressure of the standard
            atmosphere; or else `station_pressure`
        station_pressure (absolute pressure, optional): absolute pressure of the air as measured
            there, not reduced to sea level
        hottest_coolant (temperature): temperature that the coolant reaches
        tight_below (temperature difference): margin that is wanted; below it the verdict is
            `tight`, below nothing `short`

    Valid for
        An upper bound: pressure comes only once the system has built it, a cap that holds less than
        its rating counts with what it holds, hot metal boils coolant earlier than its mean
        temperature says, and the pump inlet governs. Limits of the mixture models as in `fluid`.

    Source
        Boiling and the mass fraction of a mix by volume: see `fluid`; air: US Standard Atmosphere
        1976

    Caution
        Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest
        component; local codes and the maker's instructions come first.
    """

    __slots__ = ()
    _name = "cooling.Coolant"
    _kinds = {"strength": "Ratio", "concentrate": "Ratio", "cap": "GaugePressure", "altitude": "Length", "station_pressure": "AbsolutePressure", "hottest_coolant": "Temperature", "tight_below": "TemperatureDifference"}

    def __init__(
        self,
        *,
        liquid: Literal["water", "ethylene_glycol", "propylene_glycol"],
        cap: QuantityLike,
        hottest_coolant: QuantityLike,
        tight_below: QuantityLike,
        strength: RatioLike | None = None,
        strength_by: Literal["mass", "volume"] | None = None,
        concentrate: RatioLike | None = None,
        altitude: QuantityLike | None = None,
        station_pressure: QuantityLike | None = None,
    ) -> None:
        self._build(
            liquid=liquid,
            strength=strength,
            strength_by=strength_by,
            concentrate=concentrate,
            cap=cap,
            altitude=altitude,
            station_pressure=station_pressure,
            hottest_coolant=hottest_coolant,
            tight_below=tight_below,
        )

    @property
    def liquid(self) -> Literal["water", "ethylene_glycol", "propylene_glycol"]:
        """`water`, `ethylene_glycol` or `propylene_glycol`."""
        return self._read("liquid")  # type: ignore[no-any-return]

    @property
    def strength(self) -> Ratio | None:
        """Share of concentrate in the mix; none for water."""
        return self._read("strength", "Ratio")

    @property
    def strength_by(self) -> Literal["mass", "volume"] | None:
        """Whether that share is by `mass` or by `volume`, of the parts before they are mixed."""
        return self._read("strength_by")  # type: ignore[no-any-return]

    @property
    def concentrate(self) -> Ratio | None:
        """Glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol; needed with a
        strength by volume.
        """
        return self._read("concentrate", "Ratio")

    @property
    def cap(self) -> Quantity:
        """Opening pressure of the cap, a gauge pressure."""
        return self._read("cap", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def altitude(self) -> Quantity | None:
        """Height above sea level, for the pressure of the standard atmosphere; or else `station_pressure`."""
        return self._read("altitude", "Length")  # type: ignore[no-any-return]

    @property
    def station_pressure(self) -> Quantity | None:
        """Absolute pressure of the air as measured there, not reduced to sea level."""
        return self._read("station_pressure", "AbsolutePressure")  # type: ignore[no-any-return]

    @property
    def hottest_coolant(self) -> Quantity:
        """Temperature that the coolant reaches."""
        return self._read("hottest_coolant", "Temperature")  # type: ignore[no-any-return]

    @property
    def tight_below(self) -> Quantity:
        """Margin that is wanted; below it the verdict is `tight`, below nothing `short`."""
        return self._read("tight_below", "TemperatureDifference")  # type: ignore[no-any-return]

    def margin(self) -> BoilingMargin:
        """How far the coolant is from boiling.

        Returns
            absolute_pressure (absolute pressure [Pa]): under the cap at its rating
            mass_fraction (ratio [-]): glycol by mass of the mix
            boiling_temperature (temperature [K]): temperature at which the mix begins to boil
            margin (temperature difference [K]): how much that exceeds the hottest coolant
            verdict (verdict): what to call that
        """
        return BoilingMargin(*_coolant_margin(self._handle))

    def freezing_temperature(self) -> Quantity:
        """Temperature at which the coolant begins to freeze.

        Returns
            (temperature [K]) The start of freezing: the first ice.
        """
        return _coolant_freezing_temperature(self._handle)  # type: ignore[no-any-return]

    def margin_table(self, *, cap: QuantityLike, altitude: QuantityLike, strength: RatioLike) -> Table:
        """Boiling margin over caps, altitudes and strengths.

        Parameters
            cap (gauge pressure), several: opening pressures
            altitude (length), several: heights above sea level
            strength (ratio), several: shares of concentrate, counted as `strength_by` says; zero alone
                for water

        Returns
            (table) One row a cap, altitude and strength: `cap`, `altitude`, `strength`,
            `absolute_pressure`, `mass_fraction`, `boiling_temperature`, `margin`, `verdict`.
        """
        return _coolant_margin_table(self._handle, cap, altitude, strength)  # type: ignore[no-any-return]


class LeakDown(Model):
    """A system that was pumped up and left alone: how much of the pressure that it lost is a leak.

    Formula
        a tight system reads `p_t = (p_1 + p_a) T_2 / T_1 - p_a`, over coolant as
        `leak_down_pressure_over_coolant`; loss `p_t - p_2`; with the gauge's error `p_t(p_1 + e) -
        (p_2 - e)`; margin `l` less that, or `p_2` less `leak_down_least_pressure`

    Fields
        trapped (choice): what holds the pressure: `gas` alone, `gas_over_coolant`, or `liquid`
            where no air is left
        gauge_pressure (gauge pressure): `p_1`, reading at the start of the test
        later_gauge_pressure (gauge pressure): `p_2`, reading at its end
        temperature (temperature): `T_1`, at the start: of the gas, and of the coolant below it
        later_temperature (temperature): `T_2`, at the end
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level
        gauge_error (stress or pressure difference): `e`, half width of the gauge's error; the whole
            of it counts against the system in both readings
        allowed_loss (stress or pressure difference): `l`, pressure that it may lose, the
            temperature counted out
        tight_below (stress or pressure difference): margin that is wanted; below it the verdict is
            `tight`, below nothing `short`
        gas_volume (volume, optional): of all the air trapped in the system and in the tester at the
            start
        coolant_volume (volume, optional): of the coolant at the start
        liquid (choice, optional): what the coolant is: `water`, `ethylene_glycol` or
            `propylene_glycol`
        mass_fraction (ratio, optional): glycol by mass of the coolant; none for water

    Valid for
        Gas of a constant volume, or over coolant whose volume and growth are known; rigid metal and
        hoses, the air around as before. Over coolant without `gas_volume`, `coolant_volume`,
        `liquid` and, but for water, `mass_fraction` the loss is known only where the two
        temperatures are the same. A system full of liquid follows the growth of liquid, hoses and
        metal: its loss is not a number and its verdict `not known`, whatever the gauge says. Water
        grows as a mix without glycol does in `propylene_glycol_expansion`. Limits as in
        `leak_down_pressure` and `leak_down_pressure_over_coolant`.

    Source
        Ideal gas law; growth of the coolant: see `fluid`; leaked volumes: Boyle's law

    Caution
        Compressed gas stores far more energy than liquid at the same pressure: test cold, below the
        rating of the weakest component, and stand clear; never open a hot system. The maker's
        instructions and local codes come first.
    """

    __slots__ = ()
    _name = "cooling.LeakDown"
    _kinds = {"gauge_pressure": "GaugePressure", "later_gauge_pressure": "GaugePressure", "temperature": "Temperature", "later_temperature": "Temperature", "station_pressure": "AbsolutePressure", "gauge_error": "Stress", "allowed_loss": "Stress", "tight_below": "Stress", "gas_volume": "Volume", "coolant_volume": "Volume", "mass_fraction": "Ratio"}

    def __init__(
        self,
        *,
        trapped: Literal["gas", "gas_over_coolant", "liquid"],
        gauge_pressure: QuantityLike,
        later_gauge_pressure: QuantityLike,
        temperature: QuantityLike,
        later_temperature: QuantityLike,
        station_pressure: QuantityLike,
        gauge_error: QuantityLike,
        allowed_loss: QuantityLike,
        tight_below: QuantityLike,
        gas_volume: QuantityLike | None = None,
        coolant_volume: QuantityLike | None = None,
        liquid: Literal["water", "ethylene_glycol", "propylene_glycol"] | None = None,
        mass_fraction: RatioLike | None = None,
    ) -> None:
        self._build(
            trapped=trapped,
            gauge_pressure=gauge_pressure,
            later_gauge_pressure=later_gauge_pressure,
            temperature=temperature,
            later_temperature=later_temperature,
            station_pressure=station_pressure,
            gauge_error=gauge_error,
            allowed_loss=allowed_loss,
            tight_below=tight_below,
            gas_volume=gas_volume,
            coolant_volume=coolant_volume,
            liquid=liquid,
            mass_fraction=mass_fraction,
        )

    @property
    def trapped(self) -> Literal["gas", "gas_over_coolant", "liquid"]:
        """What holds the pressure: `gas` alone, `gas_over_coolant`, or `liquid` where no air is left."""
        return self._read("trapped")  # type: ignore[no-any-return]

    @property
    def gauge_pressure(self) -> Quantity:
        """`p_1`, reading at the start of the test."""
        return self._read("gauge_pressure", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def later_gauge_pressure(self) -> Quantity:
        """`p_2`, reading at its end."""
        return self._read("later_gauge_pressure", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def temperature(self) -> Quantity:
        """`T_1`, at the start: of the gas, and of the coolant below it."""
        return self._read("temperature", "Temperature")  # type: ignore[no-any-return]

    @property
    def later_temperature(self) -> Quantity:
        """`T_2`, at the end."""
        return self._read("later_temperature", "Temperature")  # type: ignore[no-any-return]

    @property
    def station_pressure(self) -> Quantity:
        """`p_a`, absolute pressure of the air around, as measured there, not reduced to sea level."""
        return self._read("station_pressure", "AbsolutePressure")  # type: ignore[no-any-return]

    @property
    def gauge_error(self) -> Quantity:
        """`e`, half width of the gauge's error; the whole of it counts against the system in both
        readings.
        """
        return self._read("gauge_error", "Stress")  # type: ignore[no-any-return]

    @property
    def allowed_loss(self) -> Quantity:
        """`l`, pressure that it may lose, the temperature counted out."""
        return self._read("allowed_loss", "Stress")  # type: ignore[no-any-return]

    @property
    def tight_below(self) -> Quantity:
        """Margin that is wanted; below it the verdict is `tight`, below nothing `short`."""
        return self._read("tight_below", "Stress")  # type: ignore[no-any-return]

    @property
    def gas_volume(self) -> Quantity | None:
        """Of all the air trapped in the system and in the tester at the start."""
        return self._read("gas_volume", "Volume")  # type: ignore[no-any-return]

    @property
    def coolant_volume(self) -> Quantity | None:
        """Of the coolant at the start."""
        return self._read("coolant_volume", "Volume")  # type: ignore[no-any-return]

    @property
    def liquid(self) -> Literal["water", "ethylene_glycol", "propylene_glycol"] | None:
        """What the coolant is: `water`, `ethylene_glycol` or `propylene_glycol`."""
        return self._read("liquid")  # type: ignore[no-any-return]

    @property
    def mass_fraction(self) -> Ratio | None:
        """Glycol by mass of the coolant; none for water."""
        return self._read("mass_fraction", "Ratio")

    def findings(self) -> LeakDownFindings:
        """What the two readings say, the temperature counted out.

        Returns
            tight_pressure (gauge pressure [Pa]): reading that a tight system would show at the end; not
                a number where it is not known
            loss (stress or pressure difference [Pa]): how far below that the reading is; negative where
                it is above
            greatest_loss (stress or pressure difference [Pa]): the same, with the gauge's error against
                the system in both readings
            margin (stress or pressure difference [Pa]): how much less that is than what is allowed
            verdict (verdict): what to call that; `not known` where the tight reading is
            leaked_air (volume [m³]): air that left, as it takes up room outside, if all of it was air;
                not a number without `gas_volume`
            leaked_coolant (volume [m³]): coolant that left, if all of it was coolant; not a number
                without `gas_volume`, nor where gas alone is trapped
        """
        return LeakDownFindings(*_leak_down_findings(self._handle))

    def table(self, *, later_temperature: QuantityLike) -> Table:
        """What the same two readings would say over temperatures at the end, everything else as it is.

        Parameters
            later_temperature (temperature), several: temperatures at the end of the test

        Returns
            (table) One row a temperature: `later_temperature`, `tight_pressure`, `loss`,
            `greatest_loss`, `margin`, `verdict`, `leaked_air`, `leaked_coolant`.
        """
        return _leak_down_table(self._handle, later_temperature)  # type: ignore[no-any-return]


class Mix(Model):
    """A fill of glycol and water to mix: what to pour, what to drain from a fill that is there, and
    what the mix bears.

    Formula
        fresh: concentrate `V f`, water `V (1 - f)`, `f` of the wanted mass fraction `w` as in
        `fluid`; a fill of `f_0` that is there: drain and replace `V (f - f_0) / (1 - f_0)` by
        concentrate, or `V (f_0 - f) / f_0` by water where it is too strong

    Fields
        liquid (choice): `ethylene_glycol` or `propylene_glycol`
        system_volume (volume): `V`, of the whole system: radiator, block, heater, hoses, header
            tank up to its mark
        concentrate (ratio): glycol in the concentrate by mass, as its data sheet says; 1 for pure
            glycol
        freezing_temperature (temperature, optional): at which the first ice may form; or else
            `strength`
        strength (ratio, optional): wanted share, counted as `strength_by` says
        strength_by (choice, optional): whether `strength` and `present_strength` are glycol by
            `mass` of the mix, or concentrate by `volume` of the parts before they are mixed
        present_strength (ratio, optional): `f_0` or its mass fraction, of the fill that is there;
            leave it out where the system is empty, 0 for water
        cap (gauge pressure): opening pressure of the cap, a gauge pressure
        altitude (length, optional): height above sea level, for the pressure of the standard
            atmosphere; or else `station_pressure`
        station_pressure (absolute pressure, optional): absolute pressure of the air as measured
            there, not reduced to sea level
        fill_temperature (temperature): of the coolant when it is filled to the mark
        mean_temperature (temperature): of the hot coolant, the mean over the system, 100 °C at
            most: to it the fill grows
        hottest_coolant (temperature): temperature that the coolant reaches
        tight_below (temperature difference): margin to boiling that is wanted; below it the verdict
            is `tight`, below nothing `short`

    Valid for
        Mixes up to 60 % by mass. Volumes of the parts at 20 °C: the mix itself is smaller, by about
        1 % with ethylene glycol and 2 % with propylene glycol at half and half, so top up in the
        same share. A fill that is there counts by its parts too, is of the same glycol, and mixed
        through before it is drained. What the concentrate holds beside glycol counts as water;
        inhibitors have limits of their own, which its maker states. Limits of the mixture models as
        in `fluid`, of boiling as in `cooling::Coolant`: an upper bound.

    Source
        Mass balance; freezing, density and boiling: see `fluid`; air: US Standard Atmosphere 1976;
        draining and replacing: balance of the parts

    Caution
        Hot pressurised coolant scalds: never open a hot system. Glycol is poisonous, and ethylene
        glycol tastes sweet to children and animals: catch what is drained and hand it in as local
        codes say. Never mix coolants whose makers do not allow it.
    """

    __slots__ = ()
    _name = "cooling.Mix"
    _kinds = {"system_volume": "Volume", "concentrate": "Ratio", "freezing_temperature": "Temperature", "strength": "Ratio", "present_strength": "Ratio", "cap": "GaugePressure", "altitude": "Length", "station_pressure": "AbsolutePressure", "fill_temperature": "Temperature", "mean_temperature": "Temperature", "hottest_coolant": "Temperature", "tight_below": "TemperatureDifference"}

    def __init__(
        self,
        *,
        liquid: Literal["water", "ethylene_glycol", "propylene_glycol"],
        system_volume: QuantityLike,
        concentrate: RatioLike,
        cap: QuantityLike,
        fill_temperature: QuantityLike,
        mean_temperature: QuantityLike,
        hottest_coolant: QuantityLike,
        tight_below: QuantityLike,
        freezing_temperature: QuantityLike | None = None,
        strength: RatioLike | None = None,
        strength_by: Literal["mass", "volume"] | None = None,
        present_strength: RatioLike | None = None,
        altitude: QuantityLike | None = None,
        station_pressure: QuantityLike | None = None,
    ) -> None:
        self._build(
            liquid=liquid,
            system_volume=system_volume,
            concentrate=concentrate,
            freezing_temperature=freezing_temperature,
            strength=strength,
            strength_by=strength_by,
            present_strength=present_strength,
            cap=cap,
            altitude=altitude,
            station_pressure=station_pressure,
            fill_temperature=fill_temperature,
            mean_temperature=mean_temperature,
            hottest_coolant=hottest_coolant,
            tight_below=tight_below,
        )

    @property
    def liquid(self) -> Literal["water", "ethylene_glycol", "propylene_glycol"]:
        """`ethylene_glycol` or `propylene_glycol`."""
        return self._read("liquid")  # type: ignore[no-any-return]

    @property
    def system_volume(self) -> Quantity:
        """`V`, of the whole system: radiator, block, heater, hoses, header tank up to its mark."""
        return self._read("system_volume", "Volume")  # type: ignore[no-any-return]

    @property
    def concentrate(self) -> Ratio:
        """Glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol."""
        return self._read("concentrate", "Ratio")

    @property
    def freezing_temperature(self) -> Quantity | None:
        """At which the first ice may form; or else `strength`."""
        return self._read("freezing_temperature", "Temperature")  # type: ignore[no-any-return]

    @property
    def strength(self) -> Ratio | None:
        """Wanted share, counted as `strength_by` says."""
        return self._read("strength", "Ratio")

    @property
    def strength_by(self) -> Literal["mass", "volume"] | None:
        """Whether `strength` and `present_strength` are glycol by `mass` of the mix, or concentrate by
        `volume` of the parts before they are mixed.
        """
        return self._read("strength_by")  # type: ignore[no-any-return]

    @property
    def present_strength(self) -> Ratio | None:
        """`f_0` or its mass fraction, of the fill that is there; leave it out where the system is empty, 0
        for water.
        """
        return self._read("present_strength", "Ratio")

    @property
    def cap(self) -> Quantity:
        """Opening pressure of the cap, a gauge pressure."""
        return self._read("cap", "GaugePressure")  # type: ignore[no-any-return]

    @property
    def altitude(self) -> Quantity | None:
        """Height above sea level, for the pressure of the standard atmosphere; or else `station_pressure`."""
        return self._read("altitude", "Length")  # type: ignore[no-any-return]

    @property
    def station_pressure(self) -> Quantity | None:
        """Absolute pressure of the air as measured there, not reduced to sea level."""
        return self._read("station_pressure", "AbsolutePressure")  # type: ignore[no-any-return]

    @property
    def fill_temperature(self) -> Quantity:
        """Of the coolant when it is filled to the mark."""
        return self._read("fill_temperature", "Temperature")  # type: ignore[no-any-return]

    @property
    def mean_temperature(self) -> Quantity:
        """Of the hot coolant, the mean over the system, 100 °C at most: to it the fill grows."""
        return self._read("mean_temperature", "Temperature")  # type: ignore[no-any-return]

    @property
    def hottest_coolant(self) -> Quantity:
        """Temperature that the coolant reaches."""
        return self._read("hottest_coolant", "Temperature")  # type: ignore[no-any-return]

    @property
    def tight_below(self) -> Quantity:
        """Margin to boiling that is wanted; below it the verdict is `tight`, below nothing `short`."""
        return self._read("tight_below", "TemperatureDifference")  # type: ignore[no-any-return]

    def fresh_fill(self) -> FreshFill:
        """What to pour into the empty system, and what that mix bears.

        Returns
            mass_fraction (ratio [-]): glycol by mass of the mix
            concentrate_share (ratio [-]): concentrate over all that is poured, by volume
            concentrate_volume (volume [m³]): concentrate to pour
            water_volume (volume [m³]): water to pour
            freezing_temperature (temperature [K]): temperature at which the mix begins to freeze: the
                first ice
            boiling_temperature (temperature [K]): temperature at which the mix begins to boil under the
                cap at its rating
            margin (temperature difference [K]): how much that exceeds the hottest coolant
            verdict (verdict): what to call that
            growth (volume [m³]): volume by which the fill grows from the fill to the mean temperature:
                what header tank or bottle must take up
        """
        return FreshFill(*_mix_fresh_fill(self._handle))

    def exchange(self) -> Exchange:
        """What to drain from the fill that is there, and what to pour in its place.

        Returns
            present_mass_fraction (ratio [-]): glycol by mass of the fill that is there
            mass_fraction (ratio [-]): glycol by mass of the mix that is wanted
            drained_volume (volume [m³]): what to drain, of the fill mixed through
            concentrate_volume (volume [m³]): concentrate to pour in its place; nothing where the fill
                is too strong
            water_volume (volume [m³]): water to pour in its place; nothing where the fill is too weak
        """
        return Exchange(*_mix_exchange(self._handle))

    def table(self, *, strength: RatioLike) -> Table:
        """Fresh fills over strengths, everything else as it is.

        Parameters
            strength (ratio), several: wanted shares, counted as `strength_by` says

        Returns
            (table) One row a strength: `strength`, `mass_fraction`, `concentrate_volume`,
            `water_volume`, `freezing_temperature`, `boiling_temperature`, `margin`, `verdict`,
            `growth`, and `drained_volume` from the fill that is there, not a number where none is.
        """
        return _mix_table(self._handle, strength)  # type: ignore[no-any-return]
