from .generated import (
    __doc__,
    absolute_pressure,
    gauge_pressure,
    geopotential_altitude,
    standard_density,
    standard_pressure,
)

__all__ = [
    "absolute_pressure",
    "gauge_pressure",
    "geopotential_altitude",
    "standard_density",
    "standard_pressure",
]
