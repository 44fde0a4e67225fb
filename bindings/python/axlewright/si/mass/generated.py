"""Mass and balance, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["axle_loads_under_acceleration", "lateral_load_transfer", "longitudinal_load_transfer", "raised_axle_height", "raised_axle_height_over_tyres", "sprung_centre", "sprung_mass", "static_axle_loads", "weight_distribution"]

axle_loads_under_acceleration: Final[np.ufunc] = _ufuncs["mass.axle_loads_under_acceleration"]
lateral_load_transfer: Final[np.ufunc] = _ufuncs["mass.lateral_load_transfer"]
longitudinal_load_transfer: Final[np.ufunc] = _ufuncs["mass.longitudinal_load_transfer"]
raised_axle_height: Final[np.ufunc] = _ufuncs["mass.raised_axle_height"]
raised_axle_height_over_tyres: Final[np.ufunc] = _ufuncs["mass.raised_axle_height_over_tyres"]
sprung_centre: Final[np.ufunc] = _ufuncs["mass.sprung_centre"]
sprung_mass: Final[np.ufunc] = _ufuncs["mass.sprung_mass"]
static_axle_loads: Final[np.ufunc] = _ufuncs["mass.static_axle_loads"]
weight_distribution: Final[np.ufunc] = _ufuncs["mass.weight_distribution"]
