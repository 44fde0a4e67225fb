from .generated import (
    __doc__,
    axle_loads_under_acceleration,
    lateral_load_transfer,
    longitudinal_load_transfer,
    raised_axle_height,
    raised_axle_height_over_tyres,
    sprung_centre,
    sprung_mass,
    static_axle_loads,
    weight_distribution,
)

__all__ = [
    "axle_loads_under_acceleration",
    "lateral_load_transfer",
    "longitudinal_load_transfer",
    "raised_axle_height",
    "raised_axle_height_over_tyres",
    "sprung_centre",
    "sprung_mass",
    "static_axle_loads",
    "weight_distribution",
]
