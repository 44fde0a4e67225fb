"""Fluids: water, and its mixtures with glycol, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["ethylene_glycol_concentrate_share", "propylene_glycol_concentrate_share", "ethylene_glycol_density", "propylene_glycol_density", "ethylene_glycol_dynamic_viscosity", "propylene_glycol_dynamic_viscosity", "ethylene_glycol_expansion", "propylene_glycol_expansion", "ethylene_glycol_expansion_coefficient", "propylene_glycol_expansion_coefficient", "ethylene_glycol_freezing_temperature", "propylene_glycol_freezing_temperature", "ethylene_glycol_boiling_temperature", "propylene_glycol_boiling_temperature", "ethylene_glycol_boiling_pressure", "propylene_glycol_boiling_pressure", "ethylene_glycol_mass_fraction", "propylene_glycol_mass_fraction", "ethylene_glycol_mass_fraction_for_freezing", "propylene_glycol_mass_fraction_for_freezing", "ethylene_glycol_specific_heat", "propylene_glycol_specific_heat", "ethylene_glycol_thermal_conductivity", "propylene_glycol_thermal_conductivity", "water_boiling_temperature", "water_saturation_pressure"]

ethylene_glycol_concentrate_share: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_concentrate_share"]
propylene_glycol_concentrate_share: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_concentrate_share"]
ethylene_glycol_density: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_density"]
propylene_glycol_density: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_density"]
ethylene_glycol_dynamic_viscosity: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_dynamic_viscosity"]
propylene_glycol_dynamic_viscosity: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_dynamic_viscosity"]
ethylene_glycol_expansion: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_expansion"]
propylene_glycol_expansion: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_expansion"]
ethylene_glycol_expansion_coefficient: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_expansion_coefficient"]
propylene_glycol_expansion_coefficient: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_expansion_coefficient"]
ethylene_glycol_freezing_temperature: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_freezing_temperature"]
propylene_glycol_freezing_temperature: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_freezing_temperature"]
ethylene_glycol_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_boiling_temperature"]
propylene_glycol_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_boiling_temperature"]
ethylene_glycol_boiling_pressure: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_boiling_pressure"]
propylene_glycol_boiling_pressure: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_boiling_pressure"]
ethylene_glycol_mass_fraction: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_mass_fraction"]
propylene_glycol_mass_fraction: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_mass_fraction"]
ethylene_glycol_mass_fraction_for_freezing: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_mass_fraction_for_freezing"]
propylene_glycol_mass_fraction_for_freezing: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_mass_fraction_for_freezing"]
ethylene_glycol_specific_heat: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_specific_heat"]
propylene_glycol_specific_heat: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_specific_heat"]
ethylene_glycol_thermal_conductivity: Final[np.ufunc] = _ufuncs["fluid.ethylene_glycol_thermal_conductivity"]
propylene_glycol_thermal_conductivity: Final[np.ufunc] = _ufuncs["fluid.propylene_glycol_thermal_conductivity"]
water_boiling_temperature: Final[np.ufunc] = _ufuncs["fluid.water_boiling_temperature"]
water_saturation_pressure: Final[np.ufunc] = _ufuncs["fluid.water_saturation_pressure"]
