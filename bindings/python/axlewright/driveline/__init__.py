from .generated import (
    __doc__,
    TorquePath,
    Weakest,
    engine_speed,
    road_speed,
    wheel_torque,
)

__all__ = [
    "TorquePath",
    "Weakest",
    "engine_speed",
    "road_speed",
    "wheel_torque",
]
