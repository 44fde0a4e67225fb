"""Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["water_boiling_altitude", "ethylene_glycol_boiling_altitude", "propylene_glycol_boiling_altitude", "water_cap_pressure", "ethylene_glycol_cap_pressure", "propylene_glycol_cap_pressure", "ethylene_glycol_expansion_volume", "propylene_glycol_expansion_volume", "header_air_volume", "leak_down_least_pressure", "leak_down_pressure", "leak_down_pressure_over_coolant", "leaked_air_volume", "leaked_coolant_volume", "air_test_energy", "water_test_energy", "water_pump_inlet_margin", "ethylene_glycol_pump_inlet_margin", "propylene_glycol_pump_inlet_margin"]

water_boiling_altitude: Final[np.ufunc] = _ufuncs["cooling.water_boiling_altitude"]
ethylene_glycol_boiling_altitude: Final[np.ufunc] = _ufuncs["cooling.ethylene_glycol_boiling_altitude"]
propylene_glycol_boiling_altitude: Final[np.ufunc] = _ufuncs["cooling.propylene_glycol_boiling_altitude"]
water_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.water_cap_pressure"]
ethylene_glycol_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.ethylene_glycol_cap_pressure"]
propylene_glycol_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.propylene_glycol_cap_pressure"]
ethylene_glycol_expansion_volume: Final[np.ufunc] = _ufuncs["cooling.ethylene_glycol_expansion_volume"]
propylene_glycol_expansion_volume: Final[np.ufunc] = _ufuncs["cooling.propylene_glycol_expansion_volume"]
header_air_volume: Final[np.ufunc] = _ufuncs["cooling.header_air_volume"]
leak_down_least_pressure: Final[np.ufunc] = _ufuncs["cooling.leak_down_least_pressure"]
leak_down_pressure: Final[np.ufunc] = _ufuncs["cooling.leak_down_pressure"]
leak_down_pressure_over_coolant: Final[np.ufunc] = _ufuncs["cooling.leak_down_pressure_over_coolant"]
leaked_air_volume: Final[np.ufunc] = _ufuncs["cooling.leaked_air_volume"]
leaked_coolant_volume: Final[np.ufunc] = _ufuncs["cooling.leaked_coolant_volume"]
air_test_energy: Final[np.ufunc] = _ufuncs["cooling.air_test_energy"]
water_test_energy: Final[np.ufunc] = _ufuncs["cooling.water_test_energy"]
water_pump_inlet_margin: Final[np.ufunc] = _ufuncs["cooling.water_pump_inlet_margin"]
ethylene_glycol_pump_inlet_margin: Final[np.ufunc] = _ufuncs["cooling.ethylene_glycol_pump_inlet_margin"]
propylene_glycol_pump_inlet_margin: Final[np.ufunc] = _ufuncs["cooling.propylene_glycol_pump_inlet_margin"]
