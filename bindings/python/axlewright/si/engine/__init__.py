from .generated import (
    __doc__,
    power,
    torque,
)

__all__ = [
    "power",
    "torque",
]
