"""Ride: a wheel and its share of the body on a road, the body on both axles, and on four wheels, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["damping_for_least_body_acceleration", "damping_for_least_tyre_load", "dynamic_index", "flat_ride_cycles", "flat_ride_rear_frequency", "road_displacement_density", "transmissibility", "wk_weighting"]

damping_for_least_body_acceleration: Final[np.ufunc] = _ufuncs["ride.damping_for_least_body_acceleration"]
damping_for_least_tyre_load: Final[np.ufunc] = _ufuncs["ride.damping_for_least_tyre_load"]
dynamic_index: Final[np.ufunc] = _ufuncs["ride.dynamic_index"]
flat_ride_cycles: Final[np.ufunc] = _ufuncs["ride.flat_ride_cycles"]
flat_ride_rear_frequency: Final[np.ufunc] = _ufuncs["ride.flat_ride_rear_frequency"]
road_displacement_density: Final[np.ufunc] = _ufuncs["ride.road_displacement_density"]
transmissibility: Final[np.ufunc] = _ufuncs["ride.transmissibility"]
wk_weighting: Final[np.ufunc] = _ufuncs["ride.wk_weighting"]
