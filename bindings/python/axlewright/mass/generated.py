"""Mass and balance. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, Ratio

__all__ = ["WeightDistribution", "weight_distribution"]

_weight_distribution = _functions["mass.weight_distribution"]


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
