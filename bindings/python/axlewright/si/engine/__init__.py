from .generated import (
    __doc__,
    boost_pressure_ratio,
    charge_temperature,
    displacement,
    mean_effective_pressure_four_stroke,
    mean_effective_pressure_two_stroke,
    mean_piston_speed,
    power,
    torque,
    wheel_power,
    crank_power,
)

__all__ = [
    "boost_pressure_ratio",
    "charge_temperature",
    "displacement",
    "mean_effective_pressure_four_stroke",
    "mean_effective_pressure_two_stroke",
    "mean_piston_speed",
    "power",
    "torque",
    "wheel_power",
    "crank_power",
]
