"""Springs, wheel rate and dampers. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, RatioLike

__all__ = ["ride_rate", "wheel_rate"]

_ride_rate = _functions["spring.ride_rate"]
_wheel_rate = _functions["spring.wheel_rate"]


def ride_rate(*, wheel_rate: QuantityLike, tyre_rate: QuantityLike, invalid: Invalid = "raise") -> Quantity:
    """Rate of a wheel and its tyre in series."""
    return _ride_rate(wheel_rate, tyre_rate, invalid)  # type: ignore[no-any-return]


def wheel_rate(
    *,
    spring_rate: QuantityLike,
    motion_ratio: RatioLike,
    angle_from_measured_travel: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Wheel rate of a spring on a lever, from its motion ratio and its angle: the part that does not depend on load.

    Parameters
    ----------
    spring_rate : linear stiffness
        `k`, the rate of the spring along its own axis
    motion_ratio : ratio
        `r`, travel of the spring's mount over travel of the wheel
    angle_from_measured_travel : angle
        `a`, between the spring's axis and the direction in which the mount's travel was measured
    """
    return _wheel_rate(spring_rate, motion_ratio, angle_from_measured_travel, invalid)  # type: ignore[no-any-return]
