"""Springs, wheel rate and dampers, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["ride_rate", "wheel_rate"]

ride_rate: Final[np.ufunc] = _ufuncs["spring.ride_rate"]
wheel_rate: Final[np.ufunc] = _ufuncs["spring.wheel_rate"]
