from .generated import (
    __doc__,
    altimeter_setting_from_station_pressure,
    density_altitude,
    geopotential_altitude,
    geometric_altitude,
    moist_density,
    pressure_altitude,
    standard_pressure,
    standard_density,
    absolute_pressure,
    gauge_pressure,
    station_pressure_from_altimeter_setting,
)

__all__ = [
    "altimeter_setting_from_station_pressure",
    "density_altitude",
    "geopotential_altitude",
    "geometric_altitude",
    "moist_density",
    "pressure_altitude",
    "standard_pressure",
    "standard_density",
    "absolute_pressure",
    "gauge_pressure",
    "station_pressure_from_altimeter_setting",
]
