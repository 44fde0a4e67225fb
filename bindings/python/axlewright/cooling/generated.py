"""Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["BoilingMargin", "Coolant", "ethylene_glycol_cap_pressure", "leak_down_pressure", "propylene_glycol_cap_pressure", "water_cap_pressure"]

_water_cap_pressure = _functions["cooling.water_cap_pressure"]
_ethylene_glycol_cap_pressure = _functions["cooling.ethylene_glycol_cap_pressure"]
_propylene_glycol_cap_pressure = _functions["cooling.propylene_glycol_cap_pressure"]
_leak_down_pressure = _functions["cooling.leak_down_pressure"]
_coolant_margin = _functions["cooling.Coolant.margin"]
_coolant_freezing_temperature = _functions["cooling.Coolant.freezing_temperature"]
_coolant_margin_table = _functions["cooling.Coolant.margin_table"]


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
        `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult)

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
        `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult)

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
