"""Springs, wheel rate and dampers, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["active_coils_for_rate", "buckling_deflection", "coil_bind_clearance", "coil_rate", "coil_shear_stress", "critical_damping", "damped_frequency", "damper_rate_for_ratio", "damping_ratio", "free_length_for_ride_height", "inclined_tangent_rate", "minimum_gap_cold_static", "minimum_gap_cold_dynamic", "minimum_gap_hot_static", "minimum_gap_hot_dynamic", "minimum_gap_clearance", "natural_frequency", "parallel_rate", "ride_rate", "series_crossover", "series_rate", "shortest_length", "solid_length_closed_ground", "solid_length_closed", "spring_rate_for_frequency", "static_deflection", "stored_energy", "surge_frequency", "tangent_rate_for_frequency", "wahl_factor", "wheel_damping", "wheel_rate", "wheel_tangent_rate", "wire_diameter_for_rate"]

active_coils_for_rate: Final[np.ufunc] = _ufuncs["spring.active_coils_for_rate"]
buckling_deflection: Final[np.ufunc] = _ufuncs["spring.buckling_deflection"]
coil_bind_clearance: Final[np.ufunc] = _ufuncs["spring.coil_bind_clearance"]
coil_rate: Final[np.ufunc] = _ufuncs["spring.coil_rate"]
coil_shear_stress: Final[np.ufunc] = _ufuncs["spring.coil_shear_stress"]
critical_damping: Final[np.ufunc] = _ufuncs["spring.critical_damping"]
damped_frequency: Final[np.ufunc] = _ufuncs["spring.damped_frequency"]
damper_rate_for_ratio: Final[np.ufunc] = _ufuncs["spring.damper_rate_for_ratio"]
damping_ratio: Final[np.ufunc] = _ufuncs["spring.damping_ratio"]
free_length_for_ride_height: Final[np.ufunc] = _ufuncs["spring.free_length_for_ride_height"]
inclined_tangent_rate: Final[np.ufunc] = _ufuncs["spring.inclined_tangent_rate"]
minimum_gap_cold_static: Final[np.ufunc] = _ufuncs["spring.minimum_gap_cold_static"]
minimum_gap_cold_dynamic: Final[np.ufunc] = _ufuncs["spring.minimum_gap_cold_dynamic"]
minimum_gap_hot_static: Final[np.ufunc] = _ufuncs["spring.minimum_gap_hot_static"]
minimum_gap_hot_dynamic: Final[np.ufunc] = _ufuncs["spring.minimum_gap_hot_dynamic"]
minimum_gap_clearance: Final[np.ufunc] = _ufuncs["spring.minimum_gap_clearance"]
natural_frequency: Final[np.ufunc] = _ufuncs["spring.natural_frequency"]
parallel_rate: Final[np.ufunc] = _ufuncs["spring.parallel_rate"]
ride_rate: Final[np.ufunc] = _ufuncs["spring.ride_rate"]
series_crossover: Final[np.ufunc] = _ufuncs["spring.series_crossover"]
series_rate: Final[np.ufunc] = _ufuncs["spring.series_rate"]
shortest_length: Final[np.ufunc] = _ufuncs["spring.shortest_length"]
solid_length_closed_ground: Final[np.ufunc] = _ufuncs["spring.solid_length_closed_ground"]
solid_length_closed: Final[np.ufunc] = _ufuncs["spring.solid_length_closed"]
spring_rate_for_frequency: Final[np.ufunc] = _ufuncs["spring.spring_rate_for_frequency"]
static_deflection: Final[np.ufunc] = _ufuncs["spring.static_deflection"]
stored_energy: Final[np.ufunc] = _ufuncs["spring.stored_energy"]
surge_frequency: Final[np.ufunc] = _ufuncs["spring.surge_frequency"]
tangent_rate_for_frequency: Final[np.ufunc] = _ufuncs["spring.tangent_rate_for_frequency"]
wahl_factor: Final[np.ufunc] = _ufuncs["spring.wahl_factor"]
wheel_damping: Final[np.ufunc] = _ufuncs["spring.wheel_damping"]
wheel_rate: Final[np.ufunc] = _ufuncs["spring.wheel_rate"]
wheel_tangent_rate: Final[np.ufunc] = _ufuncs["spring.wheel_tangent_rate"]
wire_diameter_for_rate: Final[np.ufunc] = _ufuncs["spring.wire_diameter_for_rate"]
