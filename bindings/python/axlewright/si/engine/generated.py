"""Engine: torque, power and the curve between them; size, load and charge, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["boost_pressure_ratio", "charge_temperature", "displacement", "mean_effective_pressure_four_stroke", "mean_effective_pressure_two_stroke", "mean_piston_speed", "power", "torque", "wheel_power", "crank_power"]

boost_pressure_ratio: Final[np.ufunc] = _ufuncs["engine.boost_pressure_ratio"]
charge_temperature: Final[np.ufunc] = _ufuncs["engine.charge_temperature"]
displacement: Final[np.ufunc] = _ufuncs["engine.displacement"]
mean_effective_pressure_four_stroke: Final[np.ufunc] = _ufuncs["engine.mean_effective_pressure_four_stroke"]
mean_effective_pressure_two_stroke: Final[np.ufunc] = _ufuncs["engine.mean_effective_pressure_two_stroke"]
mean_piston_speed: Final[np.ufunc] = _ufuncs["engine.mean_piston_speed"]
power: Final[np.ufunc] = _ufuncs["engine.power"]
torque: Final[np.ufunc] = _ufuncs["engine.torque"]
wheel_power: Final[np.ufunc] = _ufuncs["engine.wheel_power"]
crank_power: Final[np.ufunc] = _ufuncs["engine.crank_power"]
