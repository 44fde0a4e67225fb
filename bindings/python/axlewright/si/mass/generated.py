"""Mass and balance, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["weight_distribution"]

weight_distribution: Final[np.ufunc] = _ufuncs["mass.weight_distribution"]
