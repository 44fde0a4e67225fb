"""Driveline: ratios, speeds and torque from the crankshaft to the ground. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["CruiseChoice", "Gearbox", "LargestGap", "Pull", "TorquePath", "Weakest", "axle_ratio_by_turns", "axle_ratio_one_wheel_held", "axle_shaft_torque_locked", "axle_shaft_torque_open", "clamp_load_for_capacity", "clutch_capacity_uniform_pressure", "clutch_capacity_uniform_wear", "crawl_ratio", "crawl_ratio_for_speed", "crawl_speed", "engine_speed", "engine_speed_after_shift", "final_drive_for_cruise", "first_gear_for_crawl", "gear_step", "grip_torque", "grip_torque_upstream", "road_speed", "tyre_diameter_for_cruise", "wheel_torque"]

_axle_ratio_by_turns = _functions["driveline.axle_ratio_by_turns"]
_axle_ratio_one_wheel_held = _functions["driveline.axle_ratio_one_wheel_held"]
_axle_shaft_torque_open = _functions["driveline.axle_shaft_torque_open"]
_axle_shaft_torque_locked = _functions["driveline.axle_shaft_torque_locked"]
_clutch_capacity_uniform_wear = _functions["driveline.clutch_capacity_uniform_wear"]
_clutch_capacity_uniform_pressure = _functions["driveline.clutch_capacity_uniform_pressure"]
_clamp_load_for_capacity = _functions["driveline.clamp_load_for_capacity"]
_crawl_ratio = _functions["driveline.crawl_ratio"]
_crawl_ratio_for_speed = _functions["driveline.crawl_ratio_for_speed"]
_first_gear_for_crawl = _functions["driveline.first_gear_for_crawl"]
_crawl_speed = _functions["driveline.crawl_speed"]
_engine_speed = _functions["driveline.engine_speed"]
_engine_speed_after_shift = _functions["driveline.engine_speed_after_shift"]
_final_drive_for_cruise = _functions["driveline.final_drive_for_cruise"]
_gear_step = _functions["driveline.gear_step"]
_grip_torque = _functions["driveline.grip_torque"]
_grip_torque_upstream = _functions["driveline.grip_torque_upstream"]
_road_speed = _functions["driveline.road_speed"]
_tyre_diameter_for_cruise = _functions["driveline.tyre_diameter_for_cruise"]
_wheel_torque = _functions["driveline.wheel_torque"]
_gearbox_gears_table = _functions["driveline.Gearbox.gears_table"]
_gearbox_table = _functions["driveline.Gearbox.table"]
_gearbox_largest_gap = _functions["driveline.Gearbox.largest_gap"]
_gearbox_for_cruise = _functions["driveline.Gearbox.for_cruise"]
_torque_path_parts_table = _functions["driveline.TorquePath.parts_table"]
_torque_path_weakest = _functions["driveline.TorquePath.weakest"]
_torque_path_table = _functions["driveline.TorquePath.table"]
_torque_path_pull = _functions["driveline.TorquePath.pull"]


class LargestGap(NamedTuple):
    """Results of `largest_gap`."""

    gear_before: int
    """Number of the lower gear, from 1; the lower pair where two are alike."""
    gear_after: int
    """Number of the higher gear."""
    step: Ratio
    """Ratio of the lower over that of the higher."""
    engine_speed_after_shift: Quantity
    """Engine speed after a shift between them at the red line."""


class CruiseChoice(NamedTuple):
    """Results of `for_cruise`."""

    gear: int
    """Number of the gear, from 1, whose engine speed comes nearest with the axle that is there, as a
    ratio; the higher one of two that come as near.
    """
    engine_speed_in_gear: Quantity
    """With the axle that is there; it may be above the red line where every gear is too short."""
    final_drive: Ratio
    """Axle ratio with which that gear gives the engine speed that is wanted."""
    final_drive_in_top: Ratio
    """Axle ratio with which top gear gives it."""


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


class Pull(NamedTuple):
    """Results of `pull`."""

    wheel_torque: Quantity
    """Of the driven wheels together: the lesser of what the engine gives through all ratios and
    losses, and what the tyres hold.
    """
    tractive_force: Quantity
    """That torque over the loaded radius."""
    bound: str
    """What holds it down: `engine` or `grip`."""


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


def axle_shaft_torque_open(
    *,
    axle_torque: QuantityLike,
    axle_grip_torque: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Highest torque of one axle shaft behind an open differential.

    Formula
        `T_s = min(T_a, T_g) / 2`

    Parameters
        axle_torque (torque): `T_a`, of both shafts together: engine torque through all ratios and
            losses
        axle_grip_torque (torque): `T_g`, of the axle's whole load, with a high bound of grip:
            `grip_torque`

    Returns
        (torque [N·m]) Torque of each of the two shafts in a steady pull: half each.

    Valid for (SI)
        - `0 <= axle_torque <= 1000000000`
        - `0 <= axle_grip_torque <= 1000000000`

        A differential without lock or friction of note. The wheel with less grip bounds both
        shafts, so unequal wheel loads only lower the torque. A dropped clutch adds the inertia of
        what spins.

    Source
        Balance of moments on the side gears of a bevel differential

    Caution
        A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local
        codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _axle_shaft_torque_open(axle_torque, axle_grip_torque, invalid)  # type: ignore[no-any-return]


def axle_shaft_torque_locked(
    *,
    axle_torque: QuantityLike,
    axle_grip_torque: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Highest torque of one axle shaft behind a locked or slip-limiting differential.

    Formula
        `T_s = min(T_a, T_g)`

    Parameters
        axle_torque (torque): `T_a`, of both shafts together: engine torque through all ratios and
            losses
        axle_grip_torque (torque): `T_g`, of the axle's whole load, with a high bound of grip:
            `grip_torque`

    Returns
        (torque [N·m]) Torque of this shaft in a steady pull while the other wheel hangs in the air:
        all of the axle's torque, up to the grip of the axle's whole load, which this wheel then
        bears.

    Valid for (SI)
        - `0 <= axle_torque <= 1000000000`
        - `0 <= axle_grip_torque <= 1000000000`

        A slip-limiting differential passes on less than all. Without its maker's figure, and for a
        differential of unknown kind, take it for locked. A dropped clutch adds the inertia of what
        spins.

    Source
        Balance of moments on a solid axle, and of forces on an axle with one wheel in the air

    Caution
        A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local
        codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _axle_shaft_torque_locked(axle_torque, axle_grip_torque, invalid)  # type: ignore[no-any-return]


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


def clamp_load_for_capacity(
    *,
    clutch_capacity: QuantityLike,
    friction_coefficient: RatioLike,
    outer_diameter: QuantityLike,
    inner_diameter: QuantityLike,
    friction_faces: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Clamp load that a disc clutch wants for a capacity: uniform wear, the one of the two models that
    asks for more.

    Formula
        `F = 4 T / (n f (D + d))`

    Parameters
        clutch_capacity (torque): `T`, wanted at the crankshaft, the reserve over the engine's
            torque included
        friction_coefficient (ratio): `f`, of the facing, static and at its temperature; the maker's
            figure
        outer_diameter (length): `D`, of the facing
        inner_diameter (length): `d`, of the facing
        friction_faces (ratio): `n`, whole: 2 for a disc that is lined on both sides

    Returns
        (force [N]) The load of the pressure plate on every face. More of it raises the pedal's
        effort and what a dropped clutch passes on.

    Valid for (SI)
        - `0 < clutch_capacity <= 1000000`
        - `0.001 <= friction_coefficient <= 2`
        - `0.001 <= outer_diameter <= 10`
        - `0.001 <= inner_diameter <= 10`
        - `outer_diameter > inner_diameter`
        - `1 <= friction_faces <= 100`

        `friction_faces` is a whole number. A clutch that has worn in, with the clamp load that it
        still has when the facing is worn.

    Source
        Shigley's Mechanical Engineering Design, ch. 16, axial clutches, uniform wear (from memory)

    Caution
        A slipping clutch heats, and a hot or oily one holds less. A disc or a flywheel that bursts
        cuts through its housing; use parts rated for the speed. Makers' ratings, local codes and
        licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _clamp_load_for_capacity(clutch_capacity, friction_coefficient, outer_diameter, inner_diameter, friction_faces, invalid)  # type: ignore[no-any-return]


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


def crawl_ratio_for_speed(
    *,
    road_speed: QuantityLike,
    engine_speed: QuantityLike,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Crawl ratio that gives a wanted road speed at an engine speed.

    Formula
        `i_c = w r / v`

    Parameters
        road_speed (velocity): `v`, wanted: a walk is about 1.4 m/s
        engine_speed (angular velocity): `w`, there: most often the idle
        rolling_radius (length): `r`, effective rolling radius of the driven tyre (distance per turn
            over 2 pi), not the loaded radius

    Returns
        (ratio [-]) Engine speed over wheel speed: what gearbox, transfer case and axle must give
        together.

    Valid for (SI)
        - `0.001 <= road_speed <= 1000`
        - `0.001 <= engine_speed <= 100000`
        - `0.001 <= rolling_radius <= 100`

    Source
        Kinematics of rolling; common practice, no source, for the term

    Caution
        Low range multiplies the torque in every part behind it: a shaft or an axle that is strong
        enough in high range can break.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _crawl_ratio_for_speed(road_speed, engine_speed, rolling_radius, invalid)


def first_gear_for_crawl(
    *,
    crawl_ratio: RatioLike,
    transfer_case_ratio: RatioLike,
    final_drive: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """First gear that gives a wanted crawl ratio.

    Formula
        `i_1 = i_c / (i_t i_f)`

    Parameters
        crawl_ratio (ratio): `i_c`, wanted: engine speed over wheel speed
        transfer_case_ratio (ratio): `i_t`, input speed over output speed in low range; 1 where
            there is none
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed; hub reductions included

    Returns
        (ratio [-]) The ratio of the gearbox alone. Give the first gear as `transfer_case_ratio`,
        and it is the ratio of the transfer case.

    Valid for (SI)
        - `0.001 <= crawl_ratio <= 1000000`
        - `0.001 <= transfer_case_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`

        What is sold lies beside it: look at `crawl_ratio` with the one that you take.

    Source
        Kinematics of gears; common practice, no source, for the term

    Caution
        Low range multiplies the torque in every part behind it: a shaft or an axle that is strong
        enough in high range can break.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _first_gear_for_crawl(crawl_ratio, transfer_case_ratio, final_drive, invalid)


def crawl_speed(
    *,
    engine_speed: QuantityLike,
    first_gear_ratio: RatioLike,
    transfer_case_ratio: RatioLike,
    final_drive: RatioLike,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Crawl speed: the road speed in the lowest gear there is.

    Formula
        `v = w r / (i_1 i_t i_f)`

    Parameters
        engine_speed (angular velocity): `w`, most often the idle
        first_gear_ratio (ratio): `i_1`, of the gearbox alone, transfer case *not* included
        transfer_case_ratio (ratio): `i_t`, input speed over output speed in low range; 1 where
            there is none
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed; hub reductions included
        rolling_radius (length): `r`, effective rolling radius of the driven tyre (distance per turn
            over 2 pi), not the loaded radius

    Returns
        (velocity [m/s]) The road speed without slip.

    Valid for (SI)
        - `0 <= engine_speed <= 100000`
        - `0.001 <= first_gear_ratio <= 1000`
        - `0.001 <= transfer_case_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`
        - `0.001 <= rolling_radius <= 100`

    Source
        Kinematics of gears and of rolling; common practice, no source, for the term

    Caution
        Low range multiplies the torque in every part behind it: a shaft or an axle that is strong
        enough in high range can break.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _crawl_speed(engine_speed, first_gear_ratio, transfer_case_ratio, final_drive, rolling_radius, invalid)  # type: ignore[no-any-return]


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
        - `0 <= road_speed <= 1000`
        - `0.001 <= gear_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`
        - `0.001 <= rolling_radius <= 100`

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
        (torque [N·m]) The sum over the wheels of that axle. At a part before them
        `grip_torque_upstream` divides by the ratio *and* by the efficiency between.

    Valid for (SI)
        - `0 <= axle_load <= 10000000`
        - `0 < grip_coefficient <= 10`
        - `0.001 <= loaded_radius <= 100`

        Steady pull. As a bound of what a part can be made to carry it needs the high bound of grip
        (a dry, warm, soft tyre; more where a wheel can lock into a rut or against a kerb) and, for
        a dropped clutch, the inertia between part and ground on top. A locked differential lets one
        shaft carry all of it: see `axle_shaft_torque_locked`.

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


def grip_torque_upstream(
    *,
    grip_torque: QuantityLike,
    ratio_between: RatioLike,
    efficiency_between: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque at a part further up the driveline beyond which the tyres slip.

    Formula
        `T = T_g / (i e)`

    Parameters
        grip_torque (torque): `T_g`, at the wheels that the part drives, together: `grip_torque` of
            them
        ratio_between (ratio): `i`, speed of the part over speed of the wheels: gears, transfer
            case, axle and hub reductions that stand between
        efficiency_between (ratio): `e`, power at the wheels over power at the part

    Returns
        (torque [N·m]) What the part can be made to carry in a steady pull before the tyres give
        way: the losses stand between it and the grip, so it bears *more* than the ratio alone says.

    Valid for (SI)
        - `0 <= grip_torque <= 1000000000`
        - `0.001 <= ratio_between <= 1000000`
        - `0.01 <= efficiency_between <= 1`

        Steady pull: a dropped clutch adds the inertia between part and ground. An engine that gives
        less at this part bounds it from below the grip.

    Source
        Balance of power through a geared train

    Caution
        A grip taken too low makes a weak part look strong; a part that breaks can lock a wheel or
        drop a shaft on the road. Ratings, local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _grip_torque_upstream(grip_torque, ratio_between, efficiency_between, invalid)  # type: ignore[no-any-return]


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
        - `0 <= engine_speed <= 100000`
        - `0.001 <= gear_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`
        - `0.001 <= rolling_radius <= 100`

    Source
        Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _road_speed(engine_speed, gear_ratio, final_drive, rolling_radius, invalid)  # type: ignore[no-any-return]


def tyre_diameter_for_cruise(
    *,
    road_speed: QuantityLike,
    engine_speed: QuantityLike,
    gear_ratio: RatioLike,
    final_drive: RatioLike,
    rolling_factor: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Tyre diameter that gives a wanted engine speed at a road speed.

    Formula
        `D = 2 pi v i_g i_f / (w f_r)`

    Parameters
        road_speed (velocity): `v`, the cruise
        engine_speed (angular velocity): `w`, wanted there
        gear_ratio (ratio): `i_g`, engine speed over propeller-shaft speed in the gear of the
            cruise, most often the top one, transfer case included
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed
        rolling_factor (ratio): `f_r`, rolling circumference over free diameter: 3.05 for a radial,
            2.99 for a diagonal tyre (ETRTO and UN Regulation 30, from memory)

    Returns
        (length [m]) The free diameter, unloaded; what is sold lies beside it, so look at
        `engine_speed` with the tyre that you take.

    Valid for (SI)
        - `0.001 <= road_speed <= 1000`
        - `0.001 <= engine_speed <= 100000`
        - `0.001 <= gear_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`
        - `2 <= rolling_factor <= 3.2`

    Source
        Kinematics of rolling; ETRTO Standards Manual and UN Regulation 30 for the factor (from
        memory)

    Caution
        A larger tyre changes braking, steering, clearance and the speedometer; its load index must
        suit the axle, and local codes limit it.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _tyre_diameter_for_cruise(road_speed, engine_speed, gear_ratio, final_drive, rolling_factor, invalid)  # type: ignore[no-any-return]


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
        - `0 <= engine_torque <= 1000000`
        - `0.001 <= gear_ratio <= 1000`
        - `0.001 <= final_drive <= 1000`
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


class Gearbox(Model):
    """A gearbox in a vehicle: what each gear does with the engine's speed, and which gear and axle
    suit a cruise.

    Formula
        `v = w r / (i_t i_g i_f)`; step `i_1 / i_2`; after a shift `w_2 = w_r i_2 / i_1`; cruise `w
        = v i_t i_g i_f / r`, margin = `w_r / w`; axle for a cruise `i_f = w r / (v i_t i_g)`

    Fields
        gears (list): forward gears from first to top, each with its `ratio` `i_g`, input over
            output speed
        final_drive (ratio): `i_f`, propeller-shaft speed over wheel speed
        ranges (list, optional): ranges of the transfer case, each with `name` and `ratio` `i_t`,
            the road range among them; leave it out where there is no transfer case
        rolling_radius (length): `r`, effective rolling radius: distance per turn over 2 pi
        red_line (angular velocity): `w_r`, greatest speed of the engine

    Valid for
        Ratios that fall from each gear to the next, and no slip of tyre, clutch or converter. The
        range with the least ratio is the one for the road: steps are the same in all of them, a
        cruise is looked for in that one. Whether the engine pulls the gear is not seen, nor the
        greatest shaft speed that axle and shaft bear: reverse and a creeper belong in a list of
        their own.

    Source
        Kinematics of gears and of rolling; ISO 8855 for the term effective rolling radius (from
        memory)

    Caution
        A shift down above the speed that the next lower gear reaches at the red line turns the
        engine faster than it bears, and can lock the driven wheels; tyres, shafts and local codes
        set limits of their own to the road speed.
    """

    __slots__ = ()
    _name = "driveline.Gearbox"
    _kinds = {"final_drive": "Ratio", "rolling_radius": "Length", "red_line": "AngularVelocity"}

    def __init__(
        self,
        *,
        gears: Sequence[Mapping[str, Any]],
        final_drive: RatioLike,
        rolling_radius: QuantityLike,
        red_line: QuantityLike,
        ranges: Sequence[Mapping[str, Any]] | None = None,
    ) -> None:
        self._build(
            gears=gears,
            final_drive=final_drive,
            ranges=ranges,
            rolling_radius=rolling_radius,
            red_line=red_line,
        )

    @property
    def gears(self) -> list[dict[str, Any]]:
        """Forward gears from first to top, each with its `ratio` `i_g`, input over output speed."""
        return self._read("gears")  # type: ignore[no-any-return]

    @property
    def final_drive(self) -> Ratio:
        """`i_f`, propeller-shaft speed over wheel speed."""
        return self._read("final_drive", "Ratio")

    @property
    def ranges(self) -> list[dict[str, Any]] | None:
        """Ranges of the transfer case, each with `name` and `ratio` `i_t`, the road range among them;
        leave it out where there is no transfer case.
        """
        return self._read("ranges")  # type: ignore[no-any-return]

    @property
    def rolling_radius(self) -> Quantity:
        """`r`, effective rolling radius: distance per turn over 2 pi."""
        return self._read("rolling_radius", "Length")  # type: ignore[no-any-return]

    @property
    def red_line(self) -> Quantity:
        """`w_r`, greatest speed of the engine."""
        return self._read("red_line", "AngularVelocity")  # type: ignore[no-any-return]

    def gears_table(self) -> Table:
        """What every gear does, in every range.

        Returns
            (table) One row a range and gear: `range` (empty without a transfer case), `gear`, `ratio`,
            `overall_ratio` (through range and axle), `red_line_speed` (of the road),
            `speed_per_1000_rpm`, `step` to the next gear and `engine_speed_after_shift` into it at the
            red line; these two are not numbers in top gear.
        """
        return _gearbox_gears_table(self._handle)  # type: ignore[no-any-return]

    def table(self, *, road_speed: QuantityLike) -> Table:
        """Engine speed in every range and gear over road speeds.

        Parameters
            road_speed (velocity), several: speeds of the vehicle

        Returns
            (table) One row a range, gear and speed: `range` (empty without a transfer case), `gear`,
            `road_speed`, `engine_speed`, `margin` (red line over engine speed) and `verdict`: `short`
            where the gear does not reach that speed below the red line.
        """
        return _gearbox_table(self._handle, road_speed)  # type: ignore[no-any-return]

    def largest_gap(self) -> LargestGap:
        """The two gears next to each other that lie furthest apart.

        Returns
            gear_before (whole number): number of the lower gear, from 1; the lower pair where two are
                alike
            gear_after (whole number): number of the higher gear
            step (ratio [-]): ratio of the lower over that of the higher
            engine_speed_after_shift (angular velocity [rad/s]): engine speed after a shift between them
                at the red line
        """
        return LargestGap(*_gearbox_largest_gap(self._handle))

    def for_cruise(self, *, road_speed: QuantityLike, engine_speed: QuantityLike) -> CruiseChoice:
        """Gear and axle ratio for a wanted cruise, in the range for the road.

        Parameters
            road_speed (velocity): speed of the cruise
            engine_speed (angular velocity): engine speed that is wanted there, at most the red line

        Returns
            gear (whole number): number of the gear, from 1, whose engine speed comes nearest with the
                axle that is there, as a ratio; the higher one of two that come as near
            engine_speed_in_gear (angular velocity [rad/s]): with the axle that is there; it may be
                above the red line where every gear is too short
            final_drive (ratio [-]): axle ratio with which that gear gives the engine speed that is
                wanted
            final_drive_in_top (ratio [-]): axle ratio with which top gear gives it
        """
        return CruiseChoice(*_gearbox_for_cruise(self._handle, road_speed, engine_speed))


class TorquePath(Model):
    """The way of the torque from the clutch to the ground: parts in order, each with what it may
    carry.

    Formula
        input `T_k = s_k T_(k-1)`, output `T_k i_k e_k`; `T_0` is the engine's torque, or for a
        dropped clutch its capacity times the shock factor; both no more than the grip allows:
        output `G_k = m F r_l s_1 ... s_k / (i_(k+1) e_(k+1) ... i_n e_n)`, for a dropped clutch
        times the inertia factor; margin = rating / torque on the rated side

    Fields
        engine_torque (torque): greatest torque at the crankshaft; behind a converter that at its
            turbine at stall
        clutch_capacity (torque, optional): what the clutch holds before it slips: it bounds the
            torque of a dropped clutch, not the engine does
        shock_factor (ratio, optional): how much a dropped clutch multiplies the torque at its
            output (2 where it is applied suddenly and undamped); where nothing bounds a dropped
            clutch, a peak, yield or ultimate rating is `not known`, never guessed
        tight_below (ratio): margin that is wanted; a part below it is `tight`, below 1 `short`
        grip (table, optional): where the tyres' grip is to bound the torque: `driven_load` (on the
            ground under all driven wheels, with the transfer that the same launch causes),
            `loaded_radius`, `strength_coefficient` (a high bound of grip, for what a part must
            bear), `pull_coefficient` (a mean, for what the vehicle gets to the ground), and
            `inertia_factor` (by how much the inertia between part and ground lets a dropped clutch
            exceed the grip; without it grip bounds the steady torque only)
        parts (list): from behind the clutch on, the transfer case in the range that is looked at
            among them, each with `name` and, where it has them, `ratio` (input over output speed),
            `efficiency`, `differential` (for one of the two shafts behind a differential: `open`,
            half of the torque and of the grip each; `limited_slip` or `locked`, all of both through
            one shaft, as the other wheel may hang; left out where it is not known, which counts as
            locked), `share` (for a part behind any other split: the share of torque and grip before
            it that goes its way at most) and `rating` with `torque`, `side` (input, output) and
            `kind` (continuous, peak, yield, ultimate)

    Valid for
        A steady pull, and the clutch dropped from rest. The strength coefficient is not less than
        the pull coefficient. A continuous rating is held against the steady torque, the other kinds
        against that of a dropped clutch; one that the steady torque exceeds is `short` without a
        factor. A rating without kind, or without side where the sides differ, is `not known`. One
        path is one gear and one range: look at reverse, at low range and at a converter's stall,
        too. A wheel in a rut or against a kerb has more grip than any tyre.

    Source
        Balance of power through a geared train; Coulomb friction at the contact patch; suddenly
        applied load: factor 2 for an undamped elastic system (Shigley's Mechanical Engineering
        Design, from memory)

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
        grip: Mapping[str, Any] | None = None,
    ) -> None:
        self._build(
            engine_torque=engine_torque,
            clutch_capacity=clutch_capacity,
            shock_factor=shock_factor,
            tight_below=tight_below,
            grip=grip,
            parts=parts,
        )

    @property
    def engine_torque(self) -> Quantity:
        """Greatest torque at the crankshaft; behind a converter that at its turbine at stall."""
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
        and undamped); where nothing bounds a dropped clutch, a peak, yield or ultimate rating is `not
        known`, never guessed.
        """
        return self._read("shock_factor", "Ratio")

    @property
    def tight_below(self) -> Ratio:
        """Margin that is wanted; a part below it is `tight`, below 1 `short`."""
        return self._read("tight_below", "Ratio")

    @property
    def grip(self) -> dict[str, Any] | None:
        """Where the tyres' grip is to bound the torque: `driven_load` (on the ground under all driven
        wheels, with the transfer that the same launch causes), `loaded_radius`, `strength_coefficient`
        (a high bound of grip, for what a part must bear), `pull_coefficient` (a mean, for what the
        vehicle gets to the ground), and `inertia_factor` (by how much the inertia between part and
        ground lets a dropped clutch exceed the grip; without it grip bounds the steady torque only).
        """
        return self._read("grip")  # type: ignore[no-any-return]

    @property
    def parts(self) -> list[dict[str, Any]]:
        """From behind the clutch on, the transfer case in the range that is looked at among them, each
        with `name` and, where it has them, `ratio` (input over output speed), `efficiency`,
        `differential` (for one of the two shafts behind a differential: `open`, half of the torque and
        of the grip each; `limited_slip` or `locked`, all of both through one shaft, as the other wheel
        may hang; left out where it is not known, which counts as locked), `share` (for a part behind
        any other split: the share of torque and grip before it that goes its way at most) and `rating`
        with `torque`, `side` (input, output) and `kind` (continuous, peak, yield, ultimate).
        """
        return self._read("parts")  # type: ignore[no-any-return]

    def parts_table(self) -> Table:
        """Torque, rating, margin and verdict of every part.

        Returns
            (table) One row a part, in order: `part`, `input_torque`, `output_torque`, `demand` (on the
            rated side, shock included where the rating is not continuous), `rating`, `margin`,
            `verdict`, `why` a margin is not known, `demand_bound` (what holds the demand down: engine,
            clutch or grip) and `bound` (what holds the steady torques down: engine or grip).
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
            `demand`, `rating`, `margin`, `verdict`, `why`, `demand_bound`.
        """
        return _torque_path_table(self._handle, engine_torque, shock_factor)  # type: ignore[no-any-return]

    def pull(self) -> Pull:
        """What reaches the ground in a steady pull, with the mean of grip.

        Returns
            wheel_torque (torque [N·m]): of the driven wheels together: the lesser of what the engine
                gives through all ratios and losses, and what the tyres hold
            tractive_force (force [N]): that torque over the loaded radius
            bound (text): what holds it down: `engine` or `grip`
        """
        return Pull(*_torque_path_pull(self._handle))
