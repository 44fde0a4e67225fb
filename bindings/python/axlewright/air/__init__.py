from .generated import (
    __doc__,
    absolute_pressure,
    altimeter_setting_from_station_pressure,
    density_altitude,
    gauge_pressure,
    geometric_altitude,
    geopotential_altitude,
    moist_density,
    pressure_altitude,
    standard_density,
    standard_pressure,
    station_pressure_from_altimeter_setting,
)

__all__ = [
    "absolute_pressure",
    "altimeter_setting_from_station_pressure",
    "density_altitude",
    "gauge_pressure",
    "geometric_altitude",
    "geopotential_altitude",
    "moist_density",
    "pressure_altitude",
    "standard_density",
    "standard_pressure",
    "station_pressure_from_altimeter_setting",
]
