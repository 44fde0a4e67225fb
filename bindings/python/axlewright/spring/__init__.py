from .generated import (
    __doc__,
    coil_rate,
    critical_damping,
    inclined_tangent_rate,
    natural_frequency,
    ride_rate,
    static_deflection,
    wheel_rate,
    wheel_tangent_rate,
)

__all__ = [
    "coil_rate",
    "critical_damping",
    "inclined_tangent_rate",
    "natural_frequency",
    "ride_rate",
    "static_deflection",
    "wheel_rate",
    "wheel_tangent_rate",
]
