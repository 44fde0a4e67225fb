"""Mass and balance. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, Ratio

__all__ = ["AxleLoads", "SprungCentre", "WeightDistribution", "axle_loads_under_acceleration", "lateral_load_transfer", "longitudinal_load_transfer", "raised_axle_height", "raised_axle_height_over_tyres", "sprung_centre", "sprung_mass", "static_axle_loads", "weight_distribution"]

_axle_loads_under_acceleration = _functions["mass.axle_loads_under_acceleration"]
_lateral_load_transfer = _functions["mass.lateral_load_transfer"]
_longitudinal_load_transfer = _functions["mass.longitudinal_load_transfer"]
_raised_axle_height = _functions["mass.raised_axle_height"]
_raised_axle_height_over_tyres = _functions["mass.raised_axle_height_over_tyres"]
_sprung_centre = _functions["mass.sprung_centre"]
_sprung_mass = _functions["mass.sprung_mass"]
_static_axle_loads = _functions["mass.static_axle_loads"]
_weight_distribution = _functions["mass.weight_distribution"]


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
    behind_front_axle: Quantity
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
        - `wheelbase > lift`
        - `0.001 <= lift <= 100`
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
        - `wheelbase > lift`
        - `0.001 <= lift <= 100`
        - `0.001 <= loaded_radius <= 10`
        - `1 <= lower_tyre_rate <= 1000000000`
        - `1 <= raised_tyre_rate <= 1000000000`

        As [`raised_axle_height`](super::raised_axle_height()); the tyres that stay down take more
        load and sink, the raised ones rise, and the vehicle leans more than the lift says. Linear
        tyres.

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
        behind_front_axle (length [m]): distance of its centre of gravity behind the front axle;
            negative where it lies before it
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
        - `scale_mass > unsprung_mass`
        - `0 <= unsprung_mass <= 4000000`

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
        [`weight_distribution`](super::weight_distribution()).

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
