"""Mass and balance. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio

__all__ = ["AxleLoads", "CentreHeight", "MassTotal", "PartsList", "RaisedAxle", "SprungCentre", "WeightDistribution", "axle_loads_under_acceleration", "lateral_load_transfer", "longitudinal_load_transfer", "raised_axle_height", "raised_axle_height_over_tyres", "sprung_centre", "sprung_mass", "static_axle_loads", "weight_distribution"]

_axle_loads_under_acceleration = _functions["mass.axle_loads_under_acceleration"]
_lateral_load_transfer = _functions["mass.lateral_load_transfer"]
_longitudinal_load_transfer = _functions["mass.longitudinal_load_transfer"]
_raised_axle_height = _functions["mass.raised_axle_height"]
_raised_axle_height_over_tyres = _functions["mass.raised_axle_height_over_tyres"]
_sprung_centre = _functions["mass.sprung_centre"]
_sprung_mass = _functions["mass.sprung_mass"]
_static_axle_loads = _functions["mass.static_axle_loads"]
_weight_distribution = _functions["mass.weight_distribution"]
_parts_list_total = _functions["mass.PartsList.total"]
_parts_list_swapped = _functions["mass.PartsList.swapped"]
_parts_list_change = _functions["mass.PartsList.change"]
_parts_list_part_table = _functions["mass.PartsList.part_table"]
_parts_list_swap_table = _functions["mass.PartsList.swap_table"]
_raised_axle_centre = _functions["mass.RaisedAxle.centre"]
_raised_axle_table = _functions["mass.RaisedAxle.table"]


class AxleLoads(NamedTuple):
    """Results of `axle_loads_under_acceleration`."""

    front_load: Quantity
    """Load of the front axle, both wheels together."""
    rear_load: Quantity
    """Load of the rear axle, both wheels together."""


class SprungCentre(NamedTuple):
    """Results of `sprung_centre`."""

    sprung_mass: Quantity
    """Mass that the springs carry."""
    sprung_behind_front_axle: Quantity
    """Distance of its centre of gravity behind the front axle; negative where it lies before it."""
    height: Quantity
    """Height of its centre of gravity above the ground."""


class WeightDistribution(NamedTuple):
    """Results of `weight_distribution`."""

    total_mass: Quantity
    """Sum of the four readings."""
    front_axle_mass: Quantity
    """Sum of the two front readings."""
    rear_axle_mass: Quantity
    """Sum of the two rear readings."""
    front_share: Ratio
    """Front readings over all."""
    left_share: Ratio
    """Left readings over all."""
    diagonal_share: Ratio
    """Right front plus left rear over all."""
    behind_front_axle: Quantity
    """Distance of the centre of gravity behind the front axle."""
    left_of_centreline: Quantity
    """Distance of the centre of gravity left of the centreline; negative to the right."""


class MassTotal(NamedTuple):
    """Results of `total`."""

    mass: Quantity
    """Of all parts."""
    x: Quantity
    """Of the centre of gravity, forward of the origin."""
    y: Quantity
    """Of the centre of gravity, left of the origin."""
    z: Quantity
    """Of the centre of gravity, above the origin."""
    roll_inertia: Quantity
    """About the axis along the vehicle through the centre of gravity."""
    pitch_inertia: Quantity
    """About the axis across it."""
    yaw_inertia: Quantity
    """About the upright axis."""


class CentreHeight(NamedTuple):
    """Results of `centre`."""

    height: Quantity
    """Of the centre of gravity above the ground, vehicle level."""
    standard_uncertainty: Quantity
    """Of the height, from the three readings and the lift; twice of it holds nineteen times of twenty."""
    greatest_error: Quantity
    """What every error at its bound at once would make."""
    angle: Quantity
    """By which the body leans."""
    angle_error: Quantity
    """How far the angle may be wrong by the error of the lift."""


def axle_loads_under_acceleration(
    *,
    total_mass: QuantityLike,
    behind_front_axle: QuantityLike,
    centre_height: QuantityLike,
    wheelbase: QuantityLike,
    acceleration: QuantityLike,
    invalid: Invalid = "raise",
) -> AxleLoads:
    """Loads of the axles while the vehicle gains or loses speed on a level road.

    Formula
        `F_r = m (g a + a_x h) / l`, `F_f = m g - F_r`

    Parameters
        total_mass (mass): `m`, of the whole vehicle as it stands: all scale readings together
        behind_front_axle (length): `a`, distance of the centre of gravity behind the front axle
        centre_height (length): `h`, of the centre of gravity above the ground
        wheelbase (length): `l`, front to rear axle
        acceleration (acceleration): `a_x`, forward, positive where speed is gained, negative in
            braking

    Returns
        front_load (force [N]): load of the front axle, both wheels together
        rear_load (force [N]): load of the rear axle, both wheels together

    Valid for (SI)
        - `0.001 <= total_mass <= 4000000`
        - `0 <= behind_front_axle <= 100`
        - `0 <= centre_height <= 100`
        - `0.01 <= wheelbase <= 100`
        - `wheelbase > behind_front_axle`
        - `-1000 <= acceleration <= 1000`

        Level road, a steady acceleration, pitch left aside: springs that give move the centre of
        gravity by little. Air drag and its height are left aside.

    Source
        Equilibrium of the accelerated body, moments about the front axle; Gillespie, Fundamentals
        of Vehicle Dynamics (1992), ch. 1, low-speed acceleration (from memory); standard gravity:
        3rd CGPM

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return AxleLoads(*_axle_loads_under_acceleration(total_mass, behind_front_axle, centre_height, wheelbase, acceleration, invalid))


def lateral_load_transfer(
    *,
    total_mass: QuantityLike,
    centre_height: QuantityLike,
    track: QuantityLike,
    lateral_acceleration: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Load that the outer wheels gain and the inner wheels lose in a turn, both axles together.

    Formula
        `F = m a_y h / t`

    Parameters
        total_mass (mass): `m`, of the whole vehicle as it stands: all scale readings together
        centre_height (length): `h`, of the centre of gravity above the ground
        track (length): `t`, between the tyre centres, mean of both axles
        lateral_acceleration (acceleration): `a_y`, towards the left, as in a left turn

    Returns
        (force [N]) Load gained by the right wheels, all of them together; negative in a right turn,
        where the left wheels gain it. How the axles share it is a matter of the suspension.

    Valid for (SI)
        - `0.001 <= total_mass <= 4000000`
        - `0 <= centre_height <= 100`
        - `0.01 <= track <= 100`
        - `-1000 <= lateral_acceleration <= 1000`

        A steady turn on a level road, all wheels on the ground, body roll left aside: leaning moves
        the centre of gravity outwards and adds some percent. Both axles of the same track, or the
        mean of both.

    Source
        Equilibrium of the accelerated body; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch.
        6 (from memory)

    Caution
        A vehicle whose inner wheels lift is about to roll over: a high one does so before its tyres
        slide. Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _lateral_load_transfer(total_mass, centre_height, track, lateral_acceleration, invalid)  # type: ignore[no-any-return]


def longitudinal_load_transfer(
    *,
    total_mass: QuantityLike,
    centre_height: QuantityLike,
    wheelbase: QuantityLike,
    acceleration: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Load that the rear axle gains and the front axle loses while the vehicle gains speed.

    Formula
        `F = m a_x h / l`

    Parameters
        total_mass (mass): `m`, of the whole vehicle as it stands: all scale readings together
        centre_height (length): `h`, of the centre of gravity above the ground
        wheelbase (length): `l`, front to rear axle
        acceleration (acceleration): `a_x`, forward, positive where speed is gained, negative in
            braking

    Returns
        (force [N]) Load gained by the rear axle, both wheels together; negative in braking, where
        the front axle gains it.

    Valid for (SI)
        - `0.001 <= total_mass <= 4000000`
        - `0 <= centre_height <= 100`
        - `0.01 <= wheelbase <= 100`
        - `-1000 <= acceleration <= 1000`

        Level road, a steady acceleration, both axles on the ground; pitch, air drag and rotating
        parts left aside. Springs decide how far the body pitches, not how much load moves.

    Source
        Equilibrium of the accelerated body; Milliken and Milliken, Race Car Vehicle Dynamics
        (1995), ch. 18 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _longitudinal_load_transfer(total_mass, centre_height, wheelbase, acceleration, invalid)  # type: ignore[no-any-return]


def raised_axle_height(
    *,
    level_mass: QuantityLike,
    raised_mass: QuantityLike,
    total_mass: QuantityLike,
    wheelbase: QuantityLike,
    lift: QuantityLike,
    loaded_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height of the centre of gravity from raising one axle, the lift measured at the wheel centres.

    Formula
        `h = r + l (m_2 - m_1) sqrt(l^2 - H^2) / (m H)`

    Parameters
        level_mass (mass): `m_1`, scale reading of the axle that stays down, vehicle level, both
            wheels together
        raised_mass (mass): `m_2`, scale reading of the same axle, the other one raised
        total_mass (mass): `m`, of the whole vehicle: all scale readings together, vehicle level
        wheelbase (length): `l`, front to rear axle, along the vehicle
        lift (length): `H`, of the wheel centres of one axle over those of the other, less what it
            was with the vehicle level
        loaded_radius (length): `r`, height of the wheel centres above the ground, vehicle level;
            the mean, weighted with the distance to the other axle, where the axles differ

    Returns
        (length [m]) Height above the ground, vehicle level.

    Valid for (SI)
        - `0.001 <= level_mass <= 4000000`
        - `0.001 <= raised_mass <= 4000000`
        - `0.001 <= total_mass <= 4000000`
        - `total_mass > level_mass`
        - `total_mass > raised_mass`
        - `0.01 <= wheelbase <= 100`
        - `0.001 <= lift <= 100`
        - `wheelbase > lift`
        - `0.001 <= loaded_radius <= 10`

        Suspension locked at ride height (blocks or solid links in place of springs), brakes off,
        wheels free to roll, tanks full or empty. A lift that is measured at the wheel centres has
        the tyre deflection in it. The difference of two readings is small: see the model
        `RaisedAxle` for how sure the answer is.

    Source
        Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken,
        Race Car Vehicle Dynamics (1995), ch. 18 (from memory)

    Caution
        A raised vehicle can roll off its stands and kill: chock the wheels of the axle that stays
        down, strap the vehicle, use stands rated for the load, keep out from under it. Local codes
        and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _raised_axle_height(level_mass, raised_mass, total_mass, wheelbase, lift, loaded_radius, invalid)  # type: ignore[no-any-return]


def raised_axle_height_over_tyres(
    *,
    level_mass: QuantityLike,
    raised_mass: QuantityLike,
    total_mass: QuantityLike,
    wheelbase: QuantityLike,
    lift: QuantityLike,
    loaded_radius: QuantityLike,
    lower_tyre_rate: QuantityLike,
    raised_tyre_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height of the centre of gravity from raising one axle, the lift measured under the tyres, whose
    deflection is taken off.

    Formula
        `H_c = H + (m_2 - m_1) g (1 / k_1 + 1 / k_2)`, `h = r + l (m_2 - m_1) sqrt(l^2 - H_c^2) / (m
        H_c)`

    Parameters
        level_mass (mass): `m_1`, scale reading of the axle that stays down, vehicle level, both
            wheels together
        raised_mass (mass): `m_2`, scale reading of the same axle, the other one raised
        total_mass (mass): `m`, of the whole vehicle: all scale readings together, vehicle level
        wheelbase (length): `l`, front to rear axle, along the vehicle
        lift (length): `H`, of what the raised tyres stand on over what the others stand on
        loaded_radius (length): `r`, height of the wheel centres above the ground, vehicle level;
            the mean, weighted with the distance to the other axle, where the axles differ
        lower_tyre_rate (linear stiffness): `k_1`, vertical rate of the two tyres that stay down,
            together
        raised_tyre_rate (linear stiffness): `k_2`, vertical rate of the two tyres that are raised,
            together

    Returns
        (length [m]) Height above the ground, vehicle level.

    Valid for (SI)
        - `0.001 <= level_mass <= 4000000`
        - `0.001 <= raised_mass <= 4000000`
        - `0.001 <= total_mass <= 4000000`
        - `total_mass > level_mass`
        - `total_mass > raised_mass`
        - `0.01 <= wheelbase <= 100`
        - `0.001 <= lift <= 100`
        - `wheelbase > lift`
        - `0.001 <= loaded_radius <= 10`
        - `1 <= lower_tyre_rate <= 1000000000`
        - `1 <= raised_tyre_rate <= 1000000000`

        As `mass::raised_axle_height`; the tyres that stay down take more load and sink, the raised
        ones rise, and the vehicle leans more than the lift says. Linear tyres.

    Source
        Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken,
        Race Car Vehicle Dynamics (1995), ch. 18 (from memory); standard gravity: 3rd CGPM

    Caution
        A raised vehicle can roll off its stands and kill: chock the wheels of the axle that stays
        down, strap the vehicle, use stands rated for the load, keep out from under it. Local codes
        and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _raised_axle_height_over_tyres(level_mass, raised_mass, total_mass, wheelbase, lift, loaded_radius, lower_tyre_rate, raised_tyre_rate, invalid)  # type: ignore[no-any-return]


def sprung_centre(
    *,
    total_mass: QuantityLike,
    behind_front_axle: QuantityLike,
    centre_height: QuantityLike,
    wheelbase: QuantityLike,
    front_unsprung_mass: QuantityLike,
    rear_unsprung_mass: QuantityLike,
    front_unsprung_height: QuantityLike,
    rear_unsprung_height: QuantityLike,
    invalid: Invalid = "raise",
) -> SprungCentre:
    """Sprung mass and its centre of gravity, from those of the whole vehicle and of what moves with
    the wheels.

    Formula
        `m_s = m - m_f - m_r`, `a_s = (m a - m_r l) / m_s`, `h_s = (m h - m_f r_f - m_r r_r) / m_s`

    Parameters
        total_mass (mass): `m`, of the whole vehicle as it stands: all scale readings together
        behind_front_axle (length): `a`, distance of the centre of gravity of the whole vehicle
        behind the front axle
        centre_height (length): `h`, of the centre of gravity of the whole vehicle above the ground
        wheelbase (length): `l`, front to rear axle
        front_unsprung_mass (mass): `m_f`, of the front axle, both wheels together
        rear_unsprung_mass (mass): `m_r`, of the rear axle, both wheels together
        front_unsprung_height (length): `r_f`, of the centre of gravity of the front unsprung mass
            above the ground: the loaded radius, nearly
        rear_unsprung_height (length): `r_r`, of the centre of gravity of the rear unsprung mass
            above the ground

    Returns
        sprung_mass (mass [kg]): mass that the springs carry
        sprung_behind_front_axle (length [m]): distance of its centre of gravity behind the front
            axle; negative where it lies before it
        height (length [m]): height of its centre of gravity above the ground

    Valid for (SI)
        - `0.001 <= total_mass <= 4000000`
        - `0 <= behind_front_axle <= 100`
        - `0 <= centre_height <= 100`
        - `0.01 <= wheelbase <= 100`
        - `wheelbase > behind_front_axle`
        - `0 <= front_unsprung_mass <= 1000000`
        - `0 <= rear_unsprung_mass <= 1000000`
        - `0 <= front_unsprung_height <= 100`
        - `0 <= rear_unsprung_height <= 100`

        The unsprung masses lie on the lines of their axles. Where they are more than the vehicle,
        or than an axle carries, there is no answer.

    Source
        Definition of the centre of gravity (first moments); Milliken and Milliken, Race Car Vehicle
        Dynamics (1995), ch. 18 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return SprungCentre(*_sprung_centre(total_mass, behind_front_axle, centre_height, wheelbase, front_unsprung_mass, rear_unsprung_mass, front_unsprung_height, rear_unsprung_height, invalid))


def sprung_mass(
    *,
    scale_mass: QuantityLike,
    unsprung_mass: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Mass that the springs carry: what the scales read less what moves with the wheels.

    Formula
        `m_s = m - m_u`

    Parameters
        scale_mass (mass): `m`, scale reading of the wheel, the axle or the vehicle
        unsprung_mass (mass): `m_u`, of the same wheel, axle or vehicle: wheels, tyres, hubs,
            brakes, a live axle, and half of each arm, link, spring, damper and shaft

    Returns
        (mass [kg]) The sprung mass.

    Valid for (SI)
        - `0.001 <= scale_mass <= 4000000`
        - `0 <= unsprung_mass <= 4000000`
        - `scale_mass > unsprung_mass`

        What is hinged at both ends counts half to either side: a convention that suits slender
        parts. A spring swings with a third of its mass at most.

    Source
        Definition: SAE J670 and ISO 8855, sprung and unsprung mass (from memory); half of a link:
        common practice, no source

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _sprung_mass(scale_mass, unsprung_mass, invalid)  # type: ignore[no-any-return]


def static_axle_loads(
    *,
    total_mass: QuantityLike,
    behind_front_axle: QuantityLike,
    wheelbase: QuantityLike,
    invalid: Invalid = "raise",
) -> AxleLoads:
    """Loads of the axles of a vehicle that stands level, from where its centre of gravity lies.

    Formula
        `F_r = m g a / l`, `F_f = m g - F_r`

    Parameters
        total_mass (mass): `m`, of the whole vehicle as it stands: all scale readings together
        behind_front_axle (length): `a`, distance of the centre of gravity behind the front axle
        wheelbase (length): `l`, front to rear axle

    Returns
        front_load (force [N]): load of the front axle, both wheels together
        rear_load (force [N]): load of the rear axle, both wheels together

    Valid for (SI)
        - `0.001 <= total_mass <= 4000000`
        - `0 <= behind_front_axle <= 100`
        - `0.01 <= wheelbase <= 100`
        - `wheelbase > behind_front_axle`

        Level ground, at standstill. Standard gravity. From scale readings backwards:
        `mass::weight_distribution`.

    Source
        Static equilibrium, moments about the front axle; Gillespie, Fundamentals of Vehicle
        Dynamics (1992), ch. 1, static loads (from memory); standard gravity: 3rd CGPM

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return AxleLoads(*_static_axle_loads(total_mass, behind_front_axle, wheelbase, invalid))


def weight_distribution(
    *,
    left_front: QuantityLike,
    right_front: QuantityLike,
    left_rear: QuantityLike,
    right_rear: QuantityLike,
    wheelbase: QuantityLike,
    front_track: QuantityLike,
    rear_track: QuantityLike,
    invalid: Invalid = "raise",
) -> WeightDistribution:
    """Axle loads, shares and centre of gravity from four scale readings.

    Formula
        `a = l (m_3 + m_4) / m_t`, `y = (b_f (m_1 - m_2) + b_r (m_3 - m_4)) / (2 m_t)`, diagonal
        share `(m_2 + m_3) / m_t` with `m_t = m_1 + m_2 + m_3 + m_4`

    Parameters
        left_front (mass): `m_1`, scale reading
        right_front (mass): `m_2`, scale reading
        left_rear (mass): `m_3`, scale reading
        right_rear (mass): `m_4`, scale reading
        wheelbase (length): `l`, front to rear axle
        front_track (length): `b_f`, between the tyre centres
        rear_track (length): `b_r`, between the tyre centres

    Returns
        total_mass (mass [kg]): sum of the four readings
        front_axle_mass (mass [kg]): sum of the two front readings
        rear_axle_mass (mass [kg]): sum of the two rear readings
        front_share (ratio [-]): front readings over all
        left_share (ratio [-]): left readings over all
        diagonal_share (ratio [-]): right front plus left rear over all
        behind_front_axle (length [m]): distance of the centre of gravity behind the front axle
        left_of_centreline (length [m]): distance of the centre of gravity left of the centreline;
            negative to the right

    Valid for (SI)
        - `0 < left_front <= 1000000`
        - `0 < right_front <= 1000000`
        - `0 < left_rear <= 1000000`
        - `0 < right_rear <= 1000000`
        - `0 < wheelbase <= 100`
        - `0 < front_track <= 100`
        - `0 < rear_track <= 100`

        Four scales in one level plane, dampers settled, nobody leaning on the vehicle.

    Source
        Static equilibrium (moments about the front axle and the centreline); Milliken and Milliken,
        Race Car Vehicle Dynamics (1995), ch. 18 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return WeightDistribution(*_weight_distribution(left_front, right_front, left_rear, right_rear, wheelbase, front_track, rear_track, invalid))


class PartsList(Model):
    """A vehicle as a list of parts: its mass, its centre of gravity, its moments of inertia, and what
    another part would move.

    Formula
        `m = sum m_i`, `x = sum m_i x_i / m` and so on; about the centre of gravity, roll `I_x = sum
        (J_xi + m_i ((y_i - y)^2 + (z_i - z)^2))`, pitch `I_y = sum (J_yi + m_i ((z_i - z)^2 + (x_i
        - x)^2))`, yaw `I_z = sum (J_zi + m_i ((x_i - x)^2 + (y_i - y)^2))`

    Fields
        parts (list): what the vehicle is made of, each with `name`, `mass`, the place `x`, `y`, `z`
            of its own centre of gravity and, where they are known, its own inertias about axes
            through that: `roll_inertia`, `pitch_inertia`, `yaw_inertia`
        instead (list, optional): parts that take the place of those of the same name; a part of no
            mass takes one away, a name that is not in the list adds one

    Valid for
        Axes as ISO 8855 for all parts, from one origin: x forward, y left, z up. A part without
        inertias of its own counts as a point: that is low by what it has in itself, which for a
        body shell is most of it. Products of inertia are left out, so that the axes are those of
        the vehicle and not its principal ones.

    Source
        Definition of centre of gravity and moment of inertia, parallel axis theorem; Milliken and
        Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
    """

    __slots__ = ()
    _name = "mass.PartsList"
    _kinds = {}

    def __init__(
        self,
        *,
        parts: Sequence[Mapping[str, Any]],
        instead: Sequence[Mapping[str, Any]] | None = None,
    ) -> None:
        self._build(
            parts=parts,
            instead=instead,
        )

    @property
    def parts(self) -> list[dict[str, Any]]:
        """What the vehicle is made of, each with `name`, `mass`, the place `x`, `y`, `z` of its own centre
        of gravity and, where they are known, its own inertias about axes through that: `roll_inertia`,
        `pitch_inertia`, `yaw_inertia`.
        """
        return self._read("parts")  # type: ignore[no-any-return]

    @property
    def instead(self) -> list[dict[str, Any]] | None:
        """Parts that take the place of those of the same name; a part of no mass takes one away, a name
        that is not in the list adds one.
        """
        return self._read("instead")  # type: ignore[no-any-return]

    def total(self) -> MassTotal:
        """All parts together, as the list stands.

        Returns
            mass (mass [kg]): of all parts
            x (length [m]): of the centre of gravity, forward of the origin
            y (length [m]): of the centre of gravity, left of the origin
            z (length [m]): of the centre of gravity, above the origin
            roll_inertia (moment of inertia [kg·m²]): about the axis along the vehicle through the
                centre of gravity
            pitch_inertia (moment of inertia [kg·m²]): about the axis across it
            yaw_inertia (moment of inertia [kg·m²]): about the upright axis
        """
        return MassTotal(*_parts_list_total(self._handle))

    def swapped(self) -> MassTotal:
        """All parts together after every swap.

        Returns
            mass (mass [kg]): of all parts
            x (length [m]): of the centre of gravity, forward of the origin
            y (length [m]): of the centre of gravity, left of the origin
            z (length [m]): of the centre of gravity, above the origin
            roll_inertia (moment of inertia [kg·m²]): about the axis along the vehicle through the new
                centre of gravity
            pitch_inertia (moment of inertia [kg·m²]): about the axis across it
            yaw_inertia (moment of inertia [kg·m²]): about the upright axis
        """
        return MassTotal(*_parts_list_swapped(self._handle))

    def change(self) -> MassTotal:
        """What all swaps together change.

        Returns
            mass (mass [kg]): gained
            x (length [m]): how far the centre of gravity moves forward
            y (length [m]): how far it moves left
            z (length [m]): how far it moves up
            roll_inertia (moment of inertia [kg·m²]): gained
            pitch_inertia (moment of inertia [kg·m²]): gained
            yaw_inertia (moment of inertia [kg·m²]): gained
        """
        return MassTotal(*_parts_list_change(self._handle))

    def part_table(self) -> Table:
        """The parts, and what of the whole each of them is.

        Returns
            (table) One row a part: `part`, `mass`, `share` of the mass, `x`, `y`, `z`, and what it adds
            to `roll_inertia`, `pitch_inertia`, `yaw_inertia` about the centre of gravity of the whole.
        """
        return _parts_list_part_table(self._handle)  # type: ignore[no-any-return]

    def swap_table(self) -> Table:
        """What each swap alone would change.

        Returns
            (table) One row a part of `instead`: `part`, then the gain of `mass`, how far the centre of
            gravity moves by `x`, `y`, `z`, and the gain of `roll_inertia`, `pitch_inertia`,
            `yaw_inertia`.
        """
        return _parts_list_swap_table(self._handle)  # type: ignore[no-any-return]


class RaisedAxle(Model):
    """Height of the centre of gravity from raising one axle, and how sure it is.

    Formula
        With `e = r_2 - r_1 - d_1 - d_2` the angle from `l sin(b) + e cos(b) = H + r_2' - r_1'`;
        moments about the lower wheel centre, `(l cos(b) - e sin(b)) (1 - m_2 / m)` on the far side;
        `d` what the springs give and `r'` the loaded radii while raised. With equal radii, locked
        springs and the lift at the wheel centres `h = r + l (m_2 - m_1) / (m tan(b))`.

    Fields
        lower_axle_mass (mass): `m_1`, scale reading of the axle that stays down, vehicle level,
            both wheels together
        raised_axle_mass (mass): scale reading of the axle that will be raised, vehicle level, both
            wheels together
        lower_axle_reading (mass): `m_2`, scale reading of the axle that stays down, the other one
            raised
        lift (length): `H`, how much the raised axle went up against the other from level, measured
            where `lift_at` says
        lift_at (choice): `wheel_centre`: tyre deflection is in it; `ground`: under the tyres, whose
            rates are wanted then
        wheelbase (length): `l`, along the vehicle
        lower_loaded_radius (length): `r_1`, height of the wheel centres that stay down above the
            ground, vehicle level
        raised_loaded_radius (length): `r_2`, height of the other wheel centres, vehicle level
        suspension (choice): `locked`: blocks or solid links in place of springs; `free`: what the
            springs give is taken off, and their rates are wanted
        lower_tyre_rate (linear stiffness, optional): of one wheel's tyre or tyres of the axle that
            stays down
        raised_tyre_rate (linear stiffness, optional): of one wheel's tyre or tyres of the raised
            axle
        lower_wheel_rate (linear stiffness, optional): of one wheel of the axle that stays down,
            springs alone
        raised_wheel_rate (linear stiffness, optional): of one wheel of the raised axle
        lower_unsprung_mass (mass, optional): of the axle that stays down, both wheels together
        raised_unsprung_mass (mass, optional): of the raised axle
        reading_error (mass): greatest error of an axle's reading
        lift_error (length): greatest error of the lift

    Valid for
        Wheels that roll freely and scales that are level. Free springs are linear and give square
        to the body; links that lift or hold the body (anti-dive) are left aside, and so are liquids
        that run forward: lock the suspension where it can be locked. Errors are bounds of even
        likelihood, independent of each other: a standard uncertainty is the bound over the root of
        three.

    Source
        Equilibrium of the tilted vehicle; ISO 10392 (axle lift method) and Milliken and Milliken,
        Race Car Vehicle Dynamics (1995), ch. 18 (from memory); uncertainty: JCGM 100:2008 (GUM),
        4.3.7 and 5.1 (from memory)

    Caution
        A raised vehicle can roll off its stands and kill: chock the wheels of the axle that stays
        down, strap the vehicle, use stands rated for the load, keep out from under it. Local codes
        and licensed practice come first.
    """

    __slots__ = ()
    _name = "mass.RaisedAxle"
    _kinds = {"lower_axle_mass": "Mass", "raised_axle_mass": "Mass", "lower_axle_reading": "Mass", "lift": "Length", "wheelbase": "Length", "lower_loaded_radius": "Length", "raised_loaded_radius": "Length", "lower_tyre_rate": "LinearStiffness", "raised_tyre_rate": "LinearStiffness", "lower_wheel_rate": "LinearStiffness", "raised_wheel_rate": "LinearStiffness", "lower_unsprung_mass": "Mass", "raised_unsprung_mass": "Mass", "reading_error": "Mass", "lift_error": "Length"}

    def __init__(
        self,
        *,
        lower_axle_mass: QuantityLike,
        raised_axle_mass: QuantityLike,
        lower_axle_reading: QuantityLike,
        lift: QuantityLike,
        lift_at: Literal["wheel_centre", "ground"],
        wheelbase: QuantityLike,
        lower_loaded_radius: QuantityLike,
        raised_loaded_radius: QuantityLike,
        suspension: Literal["locked", "free"],
        reading_error: QuantityLike,
        lift_error: QuantityLike,
        lower_tyre_rate: QuantityLike | None = None,
        raised_tyre_rate: QuantityLike | None = None,
        lower_wheel_rate: QuantityLike | None = None,
        raised_wheel_rate: QuantityLike | None = None,
        lower_unsprung_mass: QuantityLike | None = None,
        raised_unsprung_mass: QuantityLike | None = None,
    ) -> None:
        self._build(
            lower_axle_mass=lower_axle_mass,
            raised_axle_mass=raised_axle_mass,
            lower_axle_reading=lower_axle_reading,
            lift=lift,
            lift_at=lift_at,
            wheelbase=wheelbase,
            lower_loaded_radius=lower_loaded_radius,
            raised_loaded_radius=raised_loaded_radius,
            suspension=suspension,
            lower_tyre_rate=lower_tyre_rate,
            raised_tyre_rate=raised_tyre_rate,
            lower_wheel_rate=lower_wheel_rate,
            raised_wheel_rate=raised_wheel_rate,
            lower_unsprung_mass=lower_unsprung_mass,
            raised_unsprung_mass=raised_unsprung_mass,
            reading_error=reading_error,
            lift_error=lift_error,
        )

    @property
    def lower_axle_mass(self) -> Quantity:
        """`m_1`, scale reading of the axle that stays down, vehicle level, both wheels together."""
        return self._read("lower_axle_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def raised_axle_mass(self) -> Quantity:
        """Scale reading of the axle that will be raised, vehicle level, both wheels together."""
        return self._read("raised_axle_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def lower_axle_reading(self) -> Quantity:
        """`m_2`, scale reading of the axle that stays down, the other one raised."""
        return self._read("lower_axle_reading", "Mass")  # type: ignore[no-any-return]

    @property
    def lift(self) -> Quantity:
        """`H`, how much the raised axle went up against the other from level, measured where `lift_at`
        says.
        """
        return self._read("lift", "Length")  # type: ignore[no-any-return]

    @property
    def lift_at(self) -> Literal["wheel_centre", "ground"]:
        """`wheel_centre`: tyre deflection is in it; `ground`: under the tyres, whose rates are wanted
        then.
        """
        return self._read("lift_at")  # type: ignore[no-any-return]

    @property
    def wheelbase(self) -> Quantity:
        """`l`, along the vehicle."""
        return self._read("wheelbase", "Length")  # type: ignore[no-any-return]

    @property
    def lower_loaded_radius(self) -> Quantity:
        """`r_1`, height of the wheel centres that stay down above the ground, vehicle level."""
        return self._read("lower_loaded_radius", "Length")  # type: ignore[no-any-return]

    @property
    def raised_loaded_radius(self) -> Quantity:
        """`r_2`, height of the other wheel centres, vehicle level."""
        return self._read("raised_loaded_radius", "Length")  # type: ignore[no-any-return]

    @property
    def suspension(self) -> Literal["locked", "free"]:
        """`locked`: blocks or solid links in place of springs; `free`: what the springs give is taken off,
        and their rates are wanted.
        """
        return self._read("suspension")  # type: ignore[no-any-return]

    @property
    def lower_tyre_rate(self) -> Quantity | None:
        """Of one wheel's tyre or tyres of the axle that stays down."""
        return self._read("lower_tyre_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def raised_tyre_rate(self) -> Quantity | None:
        """Of one wheel's tyre or tyres of the raised axle."""
        return self._read("raised_tyre_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def lower_wheel_rate(self) -> Quantity | None:
        """Of one wheel of the axle that stays down, springs alone."""
        return self._read("lower_wheel_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def raised_wheel_rate(self) -> Quantity | None:
        """Of one wheel of the raised axle."""
        return self._read("raised_wheel_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def lower_unsprung_mass(self) -> Quantity | None:
        """Of the axle that stays down, both wheels together."""
        return self._read("lower_unsprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def raised_unsprung_mass(self) -> Quantity | None:
        """Of the raised axle."""
        return self._read("raised_unsprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def reading_error(self) -> Quantity:
        """Greatest error of an axle's reading."""
        return self._read("reading_error", "Mass")  # type: ignore[no-any-return]

    @property
    def lift_error(self) -> Quantity:
        """Greatest error of the lift."""
        return self._read("lift_error", "Length")  # type: ignore[no-any-return]

    def centre(self) -> CentreHeight:
        """Height of the centre of gravity, and how sure it is.

        Returns
            height (length [m]): of the centre of gravity above the ground, vehicle level
            standard_uncertainty (length [m]): of the height, from the three readings and the lift;
                twice of it holds nineteen times of twenty
            greatest_error (length [m]): what every error at its bound at once would make
            angle (angle [rad]): by which the body leans
            angle_error (angle [rad]): how far the angle may be wrong by the error of the lift
        """
        return CentreHeight(*_raised_axle_centre(self._handle))

    def table(self, *, lift: QuantityLike) -> Table:
        """What a lift would tell: reading and uncertainty over lifts, were the height the one that was
        found.

        Parameters
            lift (length), several: lifts, in any order

        Returns
            (table) One row a lift: `lift`, `angle`, `lower_axle_reading` that is to be expected,
            `standard_uncertainty`, `greatest_error` of the height; a lift that the vehicle cannot take
            is a refused row.
        """
        return _raised_axle_table(self._handle, lift)  # type: ignore[no-any-return]
