from .generated import (
    __doc__,
    absolute_pressure,
    gauge_pressure,
    geopotential_altitude,
    moist_density,
    standard_density,
    standard_pressure,
    station_pressure_from_altimeter_setting,
)

__all__ = [
    "absolute_pressure",
    "gauge_pressure",
    "geopotential_altitude",
    "moist_density",
    "standard_density",
    "standard_pressure",
    "station_pressure_from_altimeter_setting",
]
