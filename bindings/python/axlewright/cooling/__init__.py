from .generated import (
    __doc__,
    BoilingMargin,
    CapFindings,
    CapTest,
    Coolant,
    ethylene_glycol_cap_pressure,
    leak_down_pressure,
    propylene_glycol_cap_pressure,
    water_cap_pressure,
)

__all__ = [
    "BoilingMargin",
    "CapFindings",
    "CapTest",
    "Coolant",
    "ethylene_glycol_cap_pressure",
    "leak_down_pressure",
    "propylene_glycol_cap_pressure",
    "water_cap_pressure",
]
