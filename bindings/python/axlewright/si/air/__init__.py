from .generated import (
    __doc__,
    geopotential_altitude,
    moist_density,
    standard_pressure,
    standard_density,
    absolute_pressure,
    gauge_pressure,
    station_pressure_from_altimeter_setting,
)

__all__ = [
    "geopotential_altitude",
    "moist_density",
    "standard_pressure",
    "standard_density",
    "absolute_pressure",
    "gauge_pressure",
    "station_pressure_from_altimeter_setting",
]
