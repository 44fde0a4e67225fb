"""Driveline: ratios, speeds and torque from the crankshaft to the ground. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["TorquePath", "Weakest", "engine_speed", "road_speed", "wheel_torque"]

_engine_speed = _functions["driveline.engine_speed"]
_road_speed = _functions["driveline.road_speed"]
_wheel_torque = _functions["driveline.wheel_torque"]
_torque_path_parts_table = _functions["driveline.TorquePath.parts_table"]
_torque_path_weakest = _functions["driveline.TorquePath.weakest"]
_torque_path_table = _functions["driveline.TorquePath.table"]


class Weakest(NamedTuple):
    """Results of `weakest`."""

    part: str
    """Its name."""
    torque: Quantity
    """Torque on its rated side, that of a dropped clutch where its rating is not continuous."""
    margin: Ratio
    """Its rating over that torque."""
    verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    not_known: int
    """How many parts have a margin that is not known: each of them may be weaker."""


def engine_speed(
    *,
    road_speed: QuantityLike,
    gear_ratio: RatioLike,
    final_drive: RatioLike,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Engine speed at a road speed in a gear: the cruise engine speed.

    Formula
        `w = v i_g i_f / r`

    Parameters
        road_speed (velocity): `v`
        gear_ratio (ratio): `i_g`, engine speed over propeller-shaft speed in this gear, transfer
            case included
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed
        rolling_radius (length): `r`, effective rolling radius of the driven tyre (distance per turn
            over 2 pi), not the loaded radius

    Returns
        (angular velocity [rad/s]) The engine speed without slip.

    Valid for (SI)
        - `0 <= road_speed`
        - `0.01 <= gear_ratio <= 1000`
        - `0.01 <= final_drive <= 100`
        - `0.01 <= rolling_radius <= 10`

    Source
        Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _engine_speed(road_speed, gear_ratio, final_drive, rolling_radius, invalid)  # type: ignore[no-any-return]


def road_speed(
    *,
    engine_speed: QuantityLike,
    gear_ratio: RatioLike,
    final_drive: RatioLike,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Road speed at an engine speed in a gear.

    Formula
        `v = w r / (i_g i_f)`

    Parameters
        engine_speed (angular velocity): `w`
        gear_ratio (ratio): `i_g`, engine speed over propeller-shaft speed in this gear, transfer
            case included
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed
        rolling_radius (length): `r`, effective rolling radius of the driven tyre (distance per turn
            over 2 pi), not the loaded radius

    Returns
        (velocity [m/s]) The road speed without slip.

    Valid for (SI)
        - `0 <= engine_speed`
        - `0.01 <= gear_ratio <= 1000`
        - `0.01 <= final_drive <= 100`
        - `0.01 <= rolling_radius <= 10`

    Source
        Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _road_speed(engine_speed, gear_ratio, final_drive, rolling_radius, invalid)  # type: ignore[no-any-return]


def wheel_torque(
    *,
    engine_torque: QuantityLike,
    gear_ratio: RatioLike,
    final_drive: RatioLike,
    driveline_efficiency: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque at the driven wheels together, from the torque of the engine.

    Formula
        `T_w = T i_g i_f e`

    Parameters
        engine_torque (torque): `T`, at the crankshaft, driving
        gear_ratio (ratio): `i_g`, engine speed over propeller-shaft speed in this gear, transfer
            case included
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed
        driveline_efficiency (ratio): `e`, power at the wheels over power at the crankshaft

    Returns
        (torque [N·m]) The sum over the driven wheels, before the grip of the tyres limits it.

    Valid for (SI)
        - `0 <= engine_torque`
        - `0.01 <= gear_ratio <= 1000`
        - `0.01 <= final_drive <= 100`
        - `0 < driveline_efficiency <= 1`

        Driving only: when the wheels drive the engine the losses act the other way.

    Source
        Balance of power through a geared train

    Caution
        A part that carries less than its share of this torque can break and lock a wheel or drop a
        shaft on the road; ratings, local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_torque(engine_torque, gear_ratio, final_drive, driveline_efficiency, invalid)  # type: ignore[no-any-return]


class TorquePath(Model):
    """The way of the torque from the clutch to the ground: parts in order, each with what it may
    carry.

    Formula
        input `T_k = s_k T_(k-1)`, output `T_k i_k e_k`; `T_0` is the engine's torque, or for a
        dropped clutch its capacity times the shock factor; margin = rating / torque on the rated
        side

    Fields
        engine_torque (torque): greatest torque at the crankshaft
        clutch_capacity (torque, optional): what the clutch holds before it slips: it bounds the
            torque of a dropped clutch, not the engine does
        shock_factor (ratio, optional): how much a dropped clutch multiplies the torque at its
            output (2 where it is applied suddenly and undamped); without both, a peak, yield or
            ultimate rating is `not known`, never guessed
        tight_below (ratio): margin that is wanted; a part below it is `tight`, below 1 `short`
        parts (list): from behind the clutch on, each with `name` and, where it has them, `ratio`
            (input over output speed), `efficiency`, `share` (of the torque before it that goes
            through it: 0.5 for one shaft behind an open differential, 1 behind a locked one) and
            `rating` with `torque`, `side` (input, output) and `kind` (continuous, peak, yield,
            ultimate)

    Valid for
        Engine and clutch as the limit: grip of the tyres and inertia are not considered here. A
        continuous rating is held against the steady torque, the other kinds against that of a
        dropped clutch; one that the steady torque exceeds is `short` without a factor. A rating
        without kind, or without side where the sides differ, is `not known`.

    Source
        Balance of power through a geared train; suddenly applied load: factor 2 for an undamped
        elastic system (Shigley's Mechanical Engineering Design, from memory)

    Caution
        A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers,
        local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "driveline.TorquePath"
    _kinds = {"engine_torque": "Torque", "clutch_capacity": "Torque", "shock_factor": "Ratio", "tight_below": "Ratio"}

    def __init__(
        self,
        *,
        engine_torque: QuantityLike,
        tight_below: RatioLike,
        parts: Sequence[Mapping[str, Any]],
        clutch_capacity: QuantityLike | None = None,
        shock_factor: RatioLike | None = None,
    ) -> None:
        self._build(
            engine_torque=engine_torque,
            clutch_capacity=clutch_capacity,
            shock_factor=shock_factor,
            tight_below=tight_below,
            parts=parts,
        )

    @property
    def engine_torque(self) -> Quantity:
        """Greatest torque at the crankshaft."""
        return self._read("engine_torque", "Torque")  # type: ignore[no-any-return]

    @property
    def clutch_capacity(self) -> Quantity | None:
        """What the clutch holds before it slips: it bounds the torque of a dropped clutch, not the engine
        does.
        """
        return self._read("clutch_capacity", "Torque")  # type: ignore[no-any-return]

    @property
    def shock_factor(self) -> Ratio | None:
        """How much a dropped clutch multiplies the torque at its output (2 where it is applied suddenly
        and undamped); without both, a peak, yield or ultimate rating is `not known`, never guessed.
        """
        return self._read("shock_factor", "Ratio")

    @property
    def tight_below(self) -> Ratio:
        """Margin that is wanted; a part below it is `tight`, below 1 `short`."""
        return self._read("tight_below", "Ratio")

    @property
    def parts(self) -> list[dict[str, Any]]:
        """From behind the clutch on, each with `name` and, where it has them, `ratio` (input over output
        speed), `efficiency`, `share` (of the torque before it that goes through it: 0.5 for one shaft
        behind an open differential, 1 behind a locked one) and `rating` with `torque`, `side` (input,
        output) and `kind` (continuous, peak, yield, ultimate).
        """
        return self._read("parts")  # type: ignore[no-any-return]

    def parts_table(self) -> Table:
        """Torque, rating, margin and verdict of every part.

        Returns
            (table) One row a part, in order: `part`, `input_torque`, `output_torque`, `demand` (on the
            rated side, shock included where the rating is not continuous), `rating`, `margin`,
            `verdict`, and `why` a margin is not known.
        """
        return _torque_path_parts_table(self._handle)  # type: ignore[no-any-return]

    def weakest(self) -> Weakest:
        """The part with the least known margin.

        Returns
            part (text): its name
            torque (torque [N·m]): torque on its rated side, that of a dropped clutch where its rating
                is not continuous
            margin (ratio [-]): its rating over that torque
            verdict (verdict): what to call that
            not_known (whole number): how many parts have a margin that is not known: each of them may
                be weaker
        """
        return Weakest(*_torque_path_weakest(self._handle))

    def table(self, *, engine_torque: QuantityLike, shock_factor: RatioLike) -> Table:
        """Margins of every part over engine torques and shock factors.

        Parameters
            engine_torque (torque), several: torques at the crankshaft
            shock_factor (ratio), several: shock factors

        Returns
            (table) One row a torque, factor and part: `engine_torque`, `shock_factor`, `part`,
            `demand`, `rating`, `margin`, `verdict`, `why`.
        """
        return _torque_path_table(self._handle, engine_torque, shock_factor)  # type: ignore[no-any-return]
