"""Springs, wheel rate and dampers, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["coil_rate", "critical_damping", "inclined_tangent_rate", "natural_frequency", "ride_rate", "static_deflection", "wheel_rate", "wheel_tangent_rate"]

coil_rate: Final[np.ufunc] = _ufuncs["spring.coil_rate"]
critical_damping: Final[np.ufunc] = _ufuncs["spring.critical_damping"]
inclined_tangent_rate: Final[np.ufunc] = _ufuncs["spring.inclined_tangent_rate"]
natural_frequency: Final[np.ufunc] = _ufuncs["spring.natural_frequency"]
ride_rate: Final[np.ufunc] = _ufuncs["spring.ride_rate"]
static_deflection: Final[np.ufunc] = _ufuncs["spring.static_deflection"]
wheel_rate: Final[np.ufunc] = _ufuncs["spring.wheel_rate"]
wheel_tangent_rate: Final[np.ufunc] = _ufuncs["spring.wheel_tangent_rate"]
