"""Fluids: water, and its mixtures with glycol, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["ethylene_glycol_freezing_temperature", "propylene_glycol_freezing_temperature", "ethylene_glycol_boiling_temperature", "propylene_glycol_boiling_temperature", "water_boiling_temperature", "water_saturation_pressure"]

ethylene_glycol_freezing_temperature: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_freezing_temperature"]
propylene_glycol_freezing_temperature: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_freezing_temperature"]
ethylene_glycol_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_boiling_temperature"]
propylene_glycol_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_boiling_temperature"]
water_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.water_boiling_temperature"]
water_saturation_pressure: Final[np.ufunc] = _ufuncs["fluid.water_saturation_pressure"]
