"""Driveline: ratios, speeds and torque from the crankshaft to the ground. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["TorquePath", "Weakest", "axle_ratio_by_turns", "axle_ratio_one_wheel_held", "clutch_capacity_uniform_pressure", "clutch_capacity_uniform_wear", "crawl_ratio", "engine_speed", "engine_speed_after_shift", "final_drive_for_cruise", "gear_step", "grip_torque", "road_speed", "wheel_torque"]

_axle_ratio_by_turns = _functions["driveline.axle_ratio_by_turns"]
_axle_ratio_one_wheel_held = _functions["driveline.axle_ratio_one_wheel_held"]
_clutch_capacity_uniform_wear = _functions["driveline.clutch_capacity_uniform_wear"]
_clutch_capacity_uniform_pressure = _functions["driveline.clutch_capacity_uniform_pressure"]
_crawl_ratio = _functions["driveline.crawl_ratio"]
_engine_speed = _functions["driveline.engine_speed"]
_engine_speed_after_shift = _functions["driveline.engine_speed_after_shift"]
_final_drive_for_cruise = _functions["driveline.final_drive_for_cruise"]
_gear_step = _functions["driveline.gear_step"]
_grip_torque = _functions["driveline.grip_torque"]
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


def axle_ratio_by_turns(
    *,
    propeller_shaft_turns: QuantityLike,
    wheel_turns: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Axle ratio by counting, both wheels turned together.

    Formula
        `i_f = n_p / n_w`

    Parameters
        propeller_shaft_turns (angle): `n_p`, counted at the flange of the axle
        wheel_turns (angle): `n_w`, of both wheels alike

    Returns
        (ratio [-]) Propeller-shaft speed over wheel speed.

    Valid for (SI)
        - `0.001 <= propeller_shaft_turns <= 1000000`
        - `0.001 <= wheel_turns <= 1000000`

        Both wheels turn by the same angle, as they do with a locked differential; where one lags
        the other, take the mean of the two. The error of the ratio is that of the reading over the
        turns counted: ten turns of the wheels tell the neighbours that are sold apart, one often
        does not.

    Source
        Kinematics of a bevel differential: the carrier turns by the mean of the two wheels; common
        practice, no source, for the method

    Caution
        Never work under a vehicle that a jack alone holds: stands, chocks at the wheels that stay
        on the ground, and nobody inside. A vehicle in neutral rolls, and a parking brake that acts
        on the raised axle or on the propeller shaft holds nothing.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _axle_ratio_by_turns(propeller_shaft_turns, wheel_turns, invalid)


def axle_ratio_one_wheel_held(
    *,
    propeller_shaft_turns: QuantityLike,
    free_wheel_turns: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Axle ratio by counting, one wheel held: the free one turns twice as far as the carrier.

    Formula
        `i_f = 2 n_p / n_w`

    Parameters
        propeller_shaft_turns (angle): `n_p`, counted at the flange of the axle
        free_wheel_turns (angle): `n_w`, of the wheel that is not held

    Returns
        (ratio [-]) Propeller-shaft speed over wheel speed on a straight road.

    Valid for (SI)
        - `0.001 <= propeller_shaft_turns <= 1000000`
        - `0.001 <= free_wheel_turns <= 1000000`

        An open differential with side gears alike; a locked one does not turn with a wheel held,
        and one that limits slip may not.

    Source
        Kinematics of a bevel differential: the carrier turns by the mean of the two wheels; common
        practice, no source, for the method

    Caution
        Never work under a vehicle that a jack alone holds: stands, chocks at the wheels that stay
        on the ground, and nobody inside. A vehicle in neutral rolls, and a parking brake that acts
        on the raised axle or on the propeller shaft holds nothing.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _axle_ratio_one_wheel_held(propeller_shaft_turns, free_wheel_turns, invalid)


def clutch_capacity_uniform_wear(
    *,
    clamp_load: QuantityLike,
    friction_coefficient: RatioLike,
    outer_diameter: QuantityLike,
    inner_diameter: QuantityLike,
    friction_faces: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque that a worn-in disc clutch holds before it slips: uniform wear, the lower of the two
    models.

    Formula
        `T = n f F (D + d) / 4`

    Parameters
        clamp_load (force): `F`, with which the pressure plate presses, the same on every face
        friction_coefficient (ratio): `f`, of the facing, static and at its temperature; the maker's
            figure
        outer_diameter (length): `D`, of the facing
        inner_diameter (length): `d`, of the facing
        friction_faces (ratio): `n`, whole: 2 for a disc that is lined on both sides

    Returns
        (torque [N·m]) The static capacity at the crankshaft, to judge whether the clutch holds. For
        what a dropped clutch can pass on to the parts behind it take the uniform pressure, which is
        higher.

    Valid for (SI)
        - `0 < clamp_load <= 10000000`
        - `0 < friction_coefficient <= 2`
        - `0.001 <= outer_diameter <= 10`
        - `0.001 <= inner_diameter <= 10`
        - `outer_diameter > inner_diameter`
        - `1 <= friction_faces <= 100`

        `friction_faces` is a whole number. The pressure falls with the radius, so that every place
        wears alike: a clutch that has worn in. Loss of clamp load by a spring that sags, by speed
        or by a pedal that does not release is not in it.

    Source
        Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform wear (from memory)

    Caution
        A slipping clutch heats, and a hot or oily one holds less: the capacity wants a reserve over
        the engine's torque. A disc or a flywheel that bursts cuts through its housing; use parts
        rated for the speed. Makers' ratings, local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _clutch_capacity_uniform_wear(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces, invalid)  # type: ignore[no-any-return]


def clutch_capacity_uniform_pressure(
    *,
    clamp_load: QuantityLike,
    friction_coefficient: RatioLike,
    outer_diameter: QuantityLike,
    inner_diameter: QuantityLike,
    friction_faces: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque that a new disc clutch holds before it slips: uniform pressure, the higher of the two
    models.

    Formula
        `T = n f F (D^3 - d^3) / (3 (D^2 - d^2))`

    Parameters
        clamp_load (force): `F`, with which the pressure plate presses, the same on every face
        friction_coefficient (ratio): `f`, of the facing, static and at its temperature; the maker's
            figure
        outer_diameter (length): `D`, of the facing
        inner_diameter (length): `d`, of the facing
        friction_faces (ratio): `n`, whole: 2 for a disc that is lined on both sides

    Returns
        (torque [N·m]) The static capacity at the crankshaft. It bounds from above what a dropped
        clutch can pass on; to judge whether the clutch holds, take the uniform wear.

    Valid for (SI)
        - `0 < clamp_load <= 10000000`
        - `0 < friction_coefficient <= 2`
        - `0.001 <= outer_diameter <= 10`
        - `0.001 <= inner_diameter <= 10`
        - `outer_diameter > inner_diameter`
        - `1 <= friction_faces <= 100`

        `friction_faces` is a whole number. A flat, new facing on a stiff plate. It exceeds the
        uniform wear by 1.3 % where `d = 2 D / 3`, by 3.7 % where `d = D / 2`.

    Source
        Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform pressure (from
        memory)

    Caution
        A slipping clutch heats, and a hot or oily one holds less: the capacity wants a reserve over
        the engine's torque. A disc or a flywheel that bursts cuts through its housing; use parts
        rated for the speed. Makers' ratings, local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _clutch_capacity_uniform_pressure(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces, invalid)  # type: ignore[no-any-return]


def crawl_ratio(
    *,
    first_gear_ratio: RatioLike,
    transfer_case_ratio: RatioLike,
    final_drive: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Crawl ratio: turns of the engine for one turn of the wheels in the lowest gear there is.

    Formula
        `i_c = i_1 i_t i_f`

    Parameters
        first_gear_ratio (ratio): `i_1`, of the gearbox alone, transfer case *not* included
        transfer_case_ratio (ratio): `i_t`, input speed over output speed in low range; 1 where
            there is none
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed; hub reductions included

    Returns
        (ratio [-]) Engine speed over wheel speed.

    Valid for (SI)
        - `0.001 <= first_gear_ratio <= 1000`
        - `0.001 <= transfer_case_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`

    Source
        Kinematics of gears; common practice, no source, for the term

    Caution
        Low range multiplies the torque in every part behind it: a shaft or an axle that is strong
        enough in high range can break.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _crawl_ratio(first_gear_ratio, transfer_case_ratio, final_drive, invalid)


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


def engine_speed_after_shift(
    *,
    engine_speed: QuantityLike,
    gear_ratio_before: RatioLike,
    gear_ratio_after: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Engine speed after a shift, the road speed being what it was.

    Formula
        `w_2 = w_1 i_2 / i_1`

    Parameters
        engine_speed (angular velocity): `w_1`, before the shift
        gear_ratio_before (ratio): `i_1`, input speed over output speed of the gear that is left
        gear_ratio_after (ratio): `i_2`, of the gear that is taken

    Returns
        (angular velocity [rad/s]) The engine speed once the clutch has closed again: lower after a
        shift up, higher after a shift down.

    Valid for (SI)
        - `0 <= engine_speed <= 100000`
        - `0.001 <= gear_ratio_before <= 1000`
        - `0.001 <= gear_ratio_after <= 1000`

        What the vehicle loses of its speed while it shifts is not in it.

    Source
        Kinematics of gears

    Caution
        A shift down can turn the engine and the clutch disc faster than they hold together: compare
        with the red line.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _engine_speed_after_shift(engine_speed, gear_ratio_before, gear_ratio_after, invalid)  # type: ignore[no-any-return]


def final_drive_for_cruise(
    *,
    road_speed: QuantityLike,
    engine_speed: QuantityLike,
    gear_ratio: RatioLike,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Final drive that gives a wanted engine speed at a road speed.

    Formula
        `i_f = w r / (v i_g)`

    Parameters
        road_speed (velocity): `v`, the cruise
        engine_speed (angular velocity): `w`, wanted there
        gear_ratio (ratio): `i_g`, engine speed over propeller-shaft speed in the gear of the
            cruise, most often the top one, transfer case included
        rolling_radius (length): `r`, effective rolling radius of the driven tyre (distance per turn
            over 2 pi), not the loaded radius

    Returns
        (ratio [-]) Propeller-shaft speed over wheel speed; what is sold lies beside it, so look at
        `engine_speed` with the ratio that you take.

    Valid for (SI)
        - `0.001 <= road_speed <= 1000`
        - `0.001 <= engine_speed <= 100000`
        - `0.001 <= gear_ratio <= 1000`
        - `0.001 <= rolling_radius <= 100`

    Source
        Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _final_drive_for_cruise(road_speed, engine_speed, gear_ratio, rolling_radius, invalid)


def gear_step(
    *,
    gear_ratio_before: RatioLike,
    gear_ratio_after: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Step between two gears: how far apart their ratios are.

    Formula
        `s = i_1 / i_2`

    Parameters
        gear_ratio_before (ratio): `i_1`, input speed over output speed of the gear that is left
        gear_ratio_after (ratio): `i_2`, of the gear that is taken

    Returns
        (ratio [-]) The step: above 1 for a shift up, where the engine falls to `1 / s` of its
        speed; below 1 for a shift down.

    Valid for (SI)
        - `0.001 <= gear_ratio_before <= 1000`
        - `0.001 <= gear_ratio_after <= 1000`

    Source
        Definition; Naunheimer et al., Automotive Transmissions (2011), gear step (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _gear_step(gear_ratio_before, gear_ratio_after, invalid)


def grip_torque(
    *,
    axle_load: QuantityLike,
    grip_coefficient: RatioLike,
    loaded_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque at the wheels of an axle beyond which its tyres slip.

    Formula
        `T_g = m F r_l`

    Parameters
        axle_load (force): `F`, on the ground under the driven wheels that the torque goes to, with
            the load transfer that the same launch causes
        grip_coefficient (ratio): `m`, greatest force along over load: for strength a high bound,
            for performance a mean; say which one it was
        loaded_radius (length): `r_l`, wheel centre to ground under load, not the rolling radius

    Returns
        (torque [N·m]) The sum over the wheels of that axle. At a part before them divide by the
        ratio *and* by the efficiency between: the losses stand between the engine and the grip, so
        the engine must give more.

    Valid for (SI)
        - `0 <= axle_load <= 10000000`
        - `0 < grip_coefficient <= 10`
        - `0.001 <= loaded_radius <= 100`

        Steady pull. As a bound of what a part can be made to carry it needs the high bound of grip
        (a dry, warm, soft tyre; more where a wheel can lock into a rut or against a kerb) and, for
        a dropped clutch, the inertia between part and ground on top. A locked differential lets one
        shaft carry what its own wheel's grip allows.

    Source
        Coulomb friction at the contact patch; Gillespie, Fundamentals of Vehicle Dynamics (1992),
        ch. 2, traction-limited acceleration (from memory)

    Caution
        A grip taken too low makes a weak part look strong; a part that breaks can lock a wheel or
        drop a shaft on the road. Ratings, local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _grip_torque(axle_load, grip_coefficient, loaded_radius, invalid)  # type: ignore[no-any-return]


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
