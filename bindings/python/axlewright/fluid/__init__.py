from .generated import (
    __doc__,
    ethylene_glycol_boiling_temperature,
    ethylene_glycol_freezing_temperature,
    propylene_glycol_boiling_temperature,
    propylene_glycol_freezing_temperature,
    water_boiling_temperature,
    water_saturation_pressure,
)

__all__ = [
    "ethylene_glycol_boiling_temperature",
    "ethylene_glycol_freezing_temperature",
    "propylene_glycol_boiling_temperature",
    "propylene_glycol_freezing_temperature",
    "water_boiling_temperature",
    "water_saturation_pressure",
]
