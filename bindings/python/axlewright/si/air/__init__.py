from .generated import (
    __doc__,
    geopotential_altitude,
    standard_pressure,
    standard_density,
    absolute_pressure,
    gauge_pressure,
)

__all__ = [
    "geopotential_altitude",
    "standard_pressure",
    "standard_density",
    "absolute_pressure",
    "gauge_pressure",
]
