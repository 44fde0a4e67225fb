"""Engine: torque, power and the curve between them. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike

__all__ = ["CurvePeaks", "TorqueCurve", "power", "torque"]

_power = _functions["engine.power"]
_torque = _functions["engine.torque"]
_torque_curve_torque = _functions["engine.TorqueCurve.torque"]
_torque_curve_power = _functions["engine.TorqueCurve.power"]
_torque_curve_peaks = _functions["engine.TorqueCurve.peaks"]
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

    def table(self, *, engine_speed: QuantityLike) -> Table:
        """Torque and power over engine speeds.

        Parameters
            engine_speed (angular velocity), several: speeds, in any order

        Returns
            (table) One row a speed: `engine_speed`, `torque`, `power`; a speed beyond the points is a
            refused row with its reason.
        """
        return _torque_curve_table(self._handle, engine_speed)  # type: ignore[no-any-return]
