"""Air: the standard atmosphere, moist air, and pressures against the air around, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["altimeter_setting_from_station_pressure", "density_altitude", "geopotential_altitude", "geometric_altitude", "moist_density", "pressure_altitude", "standard_pressure", "standard_density", "absolute_pressure", "gauge_pressure", "station_pressure_from_altimeter_setting"]

altimeter_setting_from_station_pressure: Final[np.ufunc] = _ufuncs["air.altimeter_setting_from_station_pressure"]
density_altitude: Final[np.ufunc] = _ufuncs["air.density_altitude"]
geopotential_altitude: Final[np.ufunc] = _ufuncs["air.geopotential_altitude"]
geometric_altitude: Final[np.ufunc] = _ufuncs["air.geometric_altitude"]
moist_density: Final[np.ufunc] = _ufuncs["air.moist_density"]
pressure_altitude: Final[np.ufunc] = _ufuncs["air.pressure_altitude"]
standard_pressure: Final[np.ufunc] = _ufuncs["air.standard_pressure"]
standard_density: Final[np.ufunc] = _ufuncs["air.standard_density"]
absolute_pressure: Final[np.ufunc] = _ufuncs["air.absolute_pressure"]
gauge_pressure: Final[np.ufunc] = _ufuncs["air.gauge_pressure"]
station_pressure_from_altimeter_setting: Final[np.ufunc] = _ufuncs["air.station_pressure_from_altimeter_setting"]
