"""Engine: torque, power and the curve between them; size, load and charge. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["CurveBand", "CurvePeaks", "TorqueCurve", "boost_pressure_ratio", "charge_temperature", "crank_power", "displacement", "mean_effective_pressure_four_stroke", "mean_effective_pressure_two_stroke", "mean_piston_speed", "power", "torque", "wheel_power"]

_boost_pressure_ratio = _functions["engine.boost_pressure_ratio"]
_charge_temperature = _functions["engine.charge_temperature"]
_displacement = _functions["engine.displacement"]
_mean_effective_pressure_four_stroke = _functions["engine.mean_effective_pressure_four_stroke"]
_mean_effective_pressure_two_stroke = _functions["engine.mean_effective_pressure_two_stroke"]
_mean_piston_speed = _functions["engine.mean_piston_speed"]
_power = _functions["engine.power"]
_torque = _functions["engine.torque"]
_wheel_power = _functions["engine.wheel_power"]
_crank_power = _functions["engine.crank_power"]
_torque_curve_torque = _functions["engine.TorqueCurve.torque"]
_torque_curve_power = _functions["engine.TorqueCurve.power"]
_torque_curve_peaks = _functions["engine.TorqueCurve.peaks"]
_torque_curve_torque_band = _functions["engine.TorqueCurve.torque_band"]
_torque_curve_power_band = _functions["engine.TorqueCurve.power_band"]
_torque_curve_table = _functions["engine.TorqueCurve.table"]


class CurvePeaks(NamedTuple):
    """Results of `peaks`."""

    peak_torque: Quantity
    """Greatest torque."""
    peak_torque_speed: Quantity
    """Speed of the greatest torque, the lowest one where it is flat."""
    peak_power: Quantity
    """Greatest power."""
    peak_power_speed: Quantity
    """Speed of the greatest power."""


class CurveBand(NamedTuple):
    """Results of `torque_band`."""

    lowest_speed: Quantity
    """Lowest speed of the band; the first point where the torque is enough from there on."""
    highest_speed: Quantity
    """Highest speed of the band; the last point where the torque is enough up to there."""


def boost_pressure_ratio(
    *,
    boost_pressure: QuantityLike,
    station_pressure: QuantityLike,
    inlet_loss: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Pressure ratio over a compressor from a boost gauge.

    Formula
        `R = (p_a + p_b) / (p_a - dp)`

    Parameters
        boost_pressure (gauge pressure): `p_b`, gauge reading at the outlet of the compressor; where
            the gauge sits behind a charge cooler, add what is lost there
        station_pressure (absolute pressure): `p_a`, absolute pressure of the air around, as
            measured there, not reduced to sea level
        inlet_loss (stress or pressure difference): `dp`, pressure lost in air filter and duct
            before the compressor; 0 where it is neglected

    Returns
        (ratio [-]) Absolute pressure behind the compressor over absolute pressure before it.

    Valid for (SI)
        - `0 <= boost_pressure <= 10000000`
        - `20000 <= station_pressure <= 200000`
        - `0 <= inlet_loss <= 15000`

        Static pressures taken for total ones: within a few percent at the air speeds of ducts.

    Source
        Definition of a pressure ratio

    Caution
        The same boost at altitude is a higher ratio: the compressor turns faster and the charge
        gets hotter. Keep to the speed limit on the maker's map.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _boost_pressure_ratio(boost_pressure, station_pressure, inlet_loss, invalid)


def charge_temperature(
    *,
    inlet_temperature: QuantityLike,
    pressure_ratio: RatioLike,
    isentropic_efficiency: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Temperature of the charge behind a compressor.

    Formula
        `T_2 = T_1 (1 + (R^((g - 1) / g) - 1) / e)`, `g = 1.4`

    Parameters
        inlet_temperature (temperature): `T_1`, of the air before the compressor
        pressure_ratio (ratio): `R`, absolute pressure behind the compressor over absolute pressure
            before it
        isentropic_efficiency (ratio): `e`, ideal rise of temperature over real rise, read from the
            compressor's map

    Returns
        (temperature [K]) The temperature before a charge cooler.

    Valid for (SI)
        - `150 <= inlet_temperature <= 500`
        - `1 <= pressure_ratio <= 10`
        - `0.1 <= isentropic_efficiency <= 1`

        Dry air as a perfect gas with a constant ratio of specific heats of 1.4, no heat lost
        through the housing. Real specific heats rise with temperature: at a ratio of 8 from 300 K
        the ideal rise is 3 K to 4 K less.

    Source
        Isentropic compression and isentropic efficiency: Çengel and Boles, Thermodynamics, ch. 7
        (from memory); g = 1.4: NACA Report 1135 (from memory)

    Caution
        Charge pipes and hoses reach this temperature: they burn skin, and a hose must be rated for
        temperature and pressure together.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _charge_temperature(inlet_temperature, pressure_ratio, isentropic_efficiency, invalid)  # type: ignore[no-any-return]


def displacement(
    *,
    bore: QuantityLike,
    stroke: QuantityLike,
    cylinders: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Displacement of a piston engine.

    Formula
        `V = pi d^2 s z / 4`

    Parameters
        bore (length): `d`
        stroke (length): `s`, travel of the piston: twice the crank's throw where the bore's axis
            meets the crankshaft's
        cylinders (ratio): `z`, whole

    Returns
        (volume [m³]) The swept volume of all cylinders together, without the clearance volume.

    Valid for (SI)
        - `0.001 <= bore <= 10`
        - `0.001 <= stroke <= 10`
        - `1 <= cylinders <= 100`

        `cylinders` is a whole number.

    Source
        Volume of a cylinder; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 2 (from
        memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _displacement(bore, stroke, cylinders, invalid)  # type: ignore[no-any-return]


def mean_effective_pressure_four_stroke(
    *,
    torque: QuantityLike,
    displacement: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Mean effective pressure of a four-stroke engine at a torque.

    Formula
        `p_m = 4 pi T / V`

    Parameters
        torque (torque): `T`, at the crankshaft; negative when the engine is driven
        displacement (volume): `V`, swept volume of all cylinders together

    Returns
        (stress or pressure difference [Pa]) The constant pressure difference on the pistons that
        would do the same work; *brake* mean effective pressure where the torque is that of a brake,
        negative for the friction and pumping of an engine that is driven.

    Valid for (SI)
        - `-1000000000 <= torque <= 1000000000`
        - `0.00000001 <= displacement <= 1000`

        One working stroke in two turns of the crankshaft.

    Source
        Work of a cycle over the swept volume; Heywood, Internal Combustion Engine Fundamentals
        (1988), ch. 2 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _mean_effective_pressure_four_stroke(torque, displacement, invalid)  # type: ignore[no-any-return]


def mean_effective_pressure_two_stroke(
    *,
    torque: QuantityLike,
    displacement: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Mean effective pressure of a two-stroke engine at a torque.

    Formula
        `p_m = 2 pi T / V`

    Parameters
        torque (torque): `T`, at the crankshaft; negative when the engine is driven
        displacement (volume): `V`, swept volume of all cylinders together

    Returns
        (stress or pressure difference [Pa]) The constant pressure difference on the pistons that
        would do the same work; *brake* mean effective pressure where the torque is that of a brake,
        negative for the friction and pumping of an engine that is driven.

    Valid for (SI)
        - `-1000000000 <= torque <= 1000000000`
        - `0.00000001 <= displacement <= 1000`

        One working stroke a turn of the crankshaft.

    Source
        Work of a cycle over the swept volume; Heywood, Internal Combustion Engine Fundamentals
        (1988), ch. 2 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _mean_effective_pressure_two_stroke(torque, displacement, invalid)  # type: ignore[no-any-return]


def mean_piston_speed(
    *,
    stroke: QuantityLike,
    engine_speed: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Mean speed of the piston.

    Formula
        `v_m = s w / pi`

    Parameters
        stroke (length): `s`, travel of the piston
        engine_speed (angular velocity): `w`

    Returns
        (velocity [m/s]) The way of the piston over time: two strokes a turn. Its greatest speed is
        more than half as much again.

    Valid for (SI)
        - `0.001 <= stroke <= 10`
        - `0 <= engine_speed <= 100000`

    Source
        Definition, twice the stroke a turn; Heywood, Internal Combustion Engine Fundamentals
        (1988), ch. 2 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _mean_piston_speed(stroke, engine_speed, invalid)  # type: ignore[no-any-return]


def power(
    *,
    torque: QuantityLike,
    engine_speed: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Power at a torque and a speed.

    Formula
        `P = T w`

    Parameters
        torque (torque): `T`; negative when the engine is driven
        engine_speed (angular velocity): `w`

    Returns
        (power [W]) The power, with the sign of the torque.

    Valid for (SI)
        - `torque finite`
        - `0 <= engine_speed`

    Source
        Definition of mechanical power; horsepower from torque in lbf·ft over 5252 rpm follows from
        33000 ft·lbf/min (NIST SP 811, App. B)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _power(torque, engine_speed, invalid)  # type: ignore[no-any-return]


def torque(
    *,
    power: QuantityLike,
    engine_speed: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque that a power is at a speed.

    Formula
        `T = P / w`

    Parameters
        power (power): `P`; negative when the engine is driven
        engine_speed (angular velocity): `w`

    Returns
        (torque [N·m]) The torque, with the sign of the power.

    Valid for (SI)
        - `power finite`
        - `0 < engine_speed`

    Source
        Definition of mechanical power

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _torque(power, engine_speed, invalid)  # type: ignore[no-any-return]


def wheel_power(
    *,
    crank_power: QuantityLike,
    driveline_efficiency: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Power at the wheels from power at the crankshaft.

    Formula
        `P_w = P e`

    Parameters
        crank_power (power): `P`, at the crankshaft, driving
        driveline_efficiency (ratio): `e`, power at the wheels over power at the crankshaft

    Returns
        (power [W]) What the driven wheels get.

    Valid for (SI)
        - `0 <= crank_power <= 1000000000000`
        - `0.01 <= driveline_efficiency <= 1`

        One efficiency for one gear and one load: part of the loss does not grow with power. A
        roller dynamometer's loss holds the tyres' on the roller, too.

    Source
        Definition of an efficiency

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_power(crank_power, driveline_efficiency, invalid)  # type: ignore[no-any-return]


def crank_power(
    *,
    wheel_power: QuantityLike,
    driveline_efficiency: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Power at the crankshaft from power at the wheels.

    Formula
        `P = P_w / e`

    Parameters
        wheel_power (power): `P_w`, at the wheels, as measured: not yet corrected to standard air
        driveline_efficiency (ratio): `e`, power at the wheels over power at the crankshaft

    Returns
        (power [W]) What the crankshaft gave. A correction to standard air comes after this, not
        before.

    Valid for (SI)
        - `0 <= wheel_power <= 1000000000000`
        - `0.01 <= driveline_efficiency <= 1`

        As good as the efficiency, which is seldom measured: five points of it are 6 % of the power.
        A coast-down on the same roller says more than a figure from a table.

    Source
        Definition of an efficiency

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _crank_power(wheel_power, driveline_efficiency, invalid)  # type: ignore[no-any-return]


class TorqueCurve(Model):
    """A torque curve through points, as a dynamometer or a brochure gives them.

    Formula
        Piecewise cubic through the points with monotone slopes (Fritsch and Butland): it never
        exceeds the points beside it; `P = T w`

    Fields
        points (list): at least two, in order of speed, each with `engine_speed` and `torque`

    Valid for
        Speeds from the first to the last point; beyond them nothing is known and nothing is
        guessed. Torques of zero or more.

    Source
        Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's
        PchipInterpolator
    """

    __slots__ = ()
    _name = "engine.TorqueCurve"
    _kinds = {}

    def __init__(
        self,
        *,
        points: Sequence[Mapping[str, Any]],
    ) -> None:
        self._build(
            points=points,
        )

    @property
    def points(self) -> list[dict[str, Any]]:
        """At least two, in order of speed, each with `engine_speed` and `torque`."""
        return self._read("points")  # type: ignore[no-any-return]

    def torque(self, *, engine_speed: QuantityLike) -> Quantity:
        """Torque at an engine speed.

        Parameters
            engine_speed (angular velocity): between the first and the last point

        Returns
            (torque [N·m]) The full-load torque.
        """
        return _torque_curve_torque(self._handle, engine_speed)  # type: ignore[no-any-return]

    def power(self, *, engine_speed: QuantityLike) -> Quantity:
        """Power at an engine speed.

        Parameters
            engine_speed (angular velocity): between the first and the last point

        Returns
            (power [W]) The full-load power.
        """
        return _torque_curve_power(self._handle, engine_speed)  # type: ignore[no-any-return]

    def peaks(self) -> CurvePeaks:
        """Greatest torque and power of the curve, and where they are.

        Returns
            peak_torque (torque [N·m]): greatest torque
            peak_torque_speed (angular velocity [rad/s]): speed of the greatest torque, the lowest one
                where it is flat
            peak_power (power [W]): greatest power
            peak_power_speed (angular velocity [rad/s]): speed of the greatest power
        """
        return CurvePeaks(*_torque_curve_peaks(self._handle))

    def torque_band(self, *, share_of_peak: RatioLike) -> CurveBand:
        """Speeds around the peak between which the torque stays at least at a share of it.

        Formula
            The roots of `T(w) = q T_max` next to the peak on either side, where the curve first falls
            below

        Parameters
            share_of_peak (ratio): `q`, torque that is wanted over the greatest torque

        Returns
            lowest_speed (angular velocity [rad/s]): lowest speed of the band; the first point where the
                torque is enough from there on
            highest_speed (angular velocity [rad/s]): highest speed of the band; the last point where
                the torque is enough up to there

        Valid for (SI)
            - `0 < share_of_peak <= 1`

            One band, that of the peak (of the one at the lowest speed where there are equal ones): a
            second hump beyond a dip does not count. Beyond the points nothing is known, so a band that
            ends at the first or last point may be wider. A step between two gears that is no greater
            than the highest speed over the lowest keeps the engine inside.
        """
        return CurveBand(*_torque_curve_torque_band(self._handle, share_of_peak))

    def power_band(self, *, share_of_peak: RatioLike) -> CurveBand:
        """Speeds around the peak between which the power stays at least at a share of it.

        Formula
            The roots of `w T(w) = q P_max` next to the peak on either side, where the curve first falls
            below

        Parameters
            share_of_peak (ratio): `q`, power that is wanted over the greatest power

        Returns
            lowest_speed (angular velocity [rad/s]): lowest speed of the band; the first point where the
                power is enough from there on
            highest_speed (angular velocity [rad/s]): highest speed of the band; the last point where
                the power is enough up to there

        Valid for (SI)
            - `0 < share_of_peak <= 1`

            One band, that of the peak: a second hump beyond a dip does not count. Beyond the points
            nothing is known, so a band that ends at the first or last point may be wider.
        """
        return CurveBand(*_torque_curve_power_band(self._handle, share_of_peak))

    def table(self, *, engine_speed: QuantityLike) -> Table:
        """Torque and power over engine speeds.

        Parameters
            engine_speed (angular velocity), several: speeds, in any order

        Returns
            (table) One row a speed: `engine_speed`, `torque`, `power`; a speed beyond the points is a
            refused row with its reason.
        """
        return _torque_curve_table(self._handle, engine_speed)  # type: ignore[no-any-return]
