"""Tyres and wheels: what the marking on the wall says, what the tyre carries, how it stands and rolls, where the wheel stands, and what the speedometer makes, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["bolt_circle_diameter", "load_capacity", "loaded_radius", "rolling_radius", "rolling_radius_from_turns", "rolling_turns", "speedometer_error", "speedometer_error_at_shaft", "true_speed", "track_change", "wheel_backspacing", "wheel_offset"]

bolt_circle_diameter: Final[np.ufunc] = _ufuncs["tyre.bolt_circle_diameter"]
load_capacity: Final[np.ufunc] = _ufuncs["tyre.load_capacity"]
loaded_radius: Final[np.ufunc] = _ufuncs["tyre.loaded_radius"]
rolling_radius: Final[np.ufunc] = _ufuncs["tyre.rolling_radius"]
rolling_radius_from_turns: Final[np.ufunc] = _ufuncs["tyre.rolling_radius_from_turns"]
rolling_turns: Final[np.ufunc] = _ufuncs["tyre.rolling_turns"]
speedometer_error: Final[np.ufunc] = _ufuncs["tyre.speedometer_error"]
speedometer_error_at_shaft: Final[np.ufunc] = _ufuncs["tyre.speedometer_error_at_shaft"]
true_speed: Final[np.ufunc] = _ufuncs["tyre.true_speed"]
track_change: Final[np.ufunc] = _ufuncs["tyre.track_change"]
wheel_backspacing: Final[np.ufunc] = _ufuncs["tyre.wheel_backspacing"]
wheel_offset: Final[np.ufunc] = _ufuncs["tyre.wheel_offset"]
