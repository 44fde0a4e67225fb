from .generated import (
    __doc__,
    engine_speed,
    road_speed,
    wheel_torque,
)

__all__ = [
    "engine_speed",
    "road_speed",
    "wheel_torque",
]
