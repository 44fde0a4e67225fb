"""Engine: torque, power and the curve between them, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["power", "torque"]

power: Final[np.ufunc] = _ufuncs["engine.power"]
torque: Final[np.ufunc] = _ufuncs["engine.torque"]
