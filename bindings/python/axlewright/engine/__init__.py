from .generated import (
    __doc__,
    CurvePeaks,
    TorqueCurve,
    power,
    torque,
)

__all__ = [
    "CurvePeaks",
    "TorqueCurve",
    "power",
    "torque",
]
