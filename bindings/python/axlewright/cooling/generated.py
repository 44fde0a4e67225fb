"""Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["BoilingMargin", "CapFindings", "CapTest", "Coolant", "ethylene_glycol_cap_pressure", "leak_down_pressure", "propylene_glycol_cap_pressure", "water_cap_pressure"]

_water_cap_pressure = _functions["cooling.water_cap_pressure"]
_ethylene_glycol_cap_pressure = _functions["cooling.ethylene_glycol_cap_pressure"]
_propylene_glycol_cap_pressure = _functions["cooling.propylene_glycol_cap_pressure"]
_leak_down_pressure = _functions["cooling.leak_down_pressure"]
_cap_test_findings = _functions["cooling.CapTest.findings"]
_cap_test_boiling_temperature = _functions["cooling.CapTest.boiling_temperature"]
_cap_test_boiling_loss = _functions["cooling.CapTest.boiling_loss"]
_cap_test_boiling_table = _functions["cooling.CapTest.boiling_table"]
_coolant_margin = _functions["cooling.Coolant.margin"]
_coolant_freezing_temperature = _functions["cooling.Coolant.freezing_temperature"]
_coolant_margin_table = _functions["cooling.Coolant.margin_table"]


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
