"""Cooling system: how far the coolant is from boiling, which cap it wants, and what a pressure test should read, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["water_cap_pressure", "ethylene_glycol_cap_pressure", "propylene_glycol_cap_pressure", "leak_down_pressure"]

water_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.water_cap_pressure"]
ethylene_glycol_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.ethylene_glycol_cap_pressure"]
propylene_glycol_cap_pressure: Final[np.ufunc] = _ufuncs["cooling.propylene_glycol_cap_pressure"]
leak_down_pressure: Final[np.ufunc] = _ufuncs["cooling.leak_down_pressure"]
