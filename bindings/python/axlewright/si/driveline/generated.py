"""Driveline: ratios, speeds and torque from the crankshaft to the ground, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["engine_speed", "road_speed", "wheel_torque"]

engine_speed: Final[np.ufunc] = _ufuncs["driveline.engine_speed"]
road_speed: Final[np.ufunc] = _ufuncs["driveline.road_speed"]
wheel_torque: Final[np.ufunc] = _ufuncs["driveline.wheel_torque"]
