"""Suspension: linkages drawn point by point, roll, and how the axles share what a turn moves, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["axle_load_transfer", "bar_rate_for_roll_stiffness", "bar_roll_stiffness", "front_transfer_share", "independent_roll_stiffness", "live_axle_roll_stiffness", "roll_arm", "roll_gradient", "roll_stiffness_for_gradient", "roll_stiffness_over_tyres", "tyre_roll_stiffness"]

axle_load_transfer: Final[np.ufunc] = _ufuncs["suspension.axle_load_transfer"]
bar_rate_for_roll_stiffness: Final[np.ufunc] = _ufuncs["suspension.bar_rate_for_roll_stiffness"]
bar_roll_stiffness: Final[np.ufunc] = _ufuncs["suspension.bar_roll_stiffness"]
front_transfer_share: Final[np.ufunc] = _ufuncs["suspension.front_transfer_share"]
independent_roll_stiffness: Final[np.ufunc] = _ufuncs["suspension.independent_roll_stiffness"]
live_axle_roll_stiffness: Final[np.ufunc] = _ufuncs["suspension.live_axle_roll_stiffness"]
roll_arm: Final[np.ufunc] = _ufuncs["suspension.roll_arm"]
roll_gradient: Final[np.ufunc] = _ufuncs["suspension.roll_gradient"]
roll_stiffness_for_gradient: Final[np.ufunc] = _ufuncs["suspension.roll_stiffness_for_gradient"]
roll_stiffness_over_tyres: Final[np.ufunc] = _ufuncs["suspension.roll_stiffness_over_tyres"]
tyre_roll_stiffness: Final[np.ufunc] = _ufuncs["suspension.tyre_roll_stiffness"]
