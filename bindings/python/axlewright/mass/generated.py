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
    """What four scale readings say of a vehicle on level ground."""

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
    """Axle loads, shares and centre of gravity from four scale readings."""
    return WeightDistribution(
        *_weight_distribution(
            left_front, right_front, left_rear, right_rear, wheelbase, front_track, rear_track, invalid
        )
    )
