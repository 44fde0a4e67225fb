from .generated import (
    __doc__,
    water_cap_pressure,
    ethylene_glycol_cap_pressure,
    propylene_glycol_cap_pressure,
    leak_down_pressure,
)

__all__ = [
    "water_cap_pressure",
    "ethylene_glycol_cap_pressure",
    "propylene_glycol_cap_pressure",
    "leak_down_pressure",
]
