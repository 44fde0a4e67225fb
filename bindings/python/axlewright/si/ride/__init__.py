from .generated import (
    __doc__,
    damping_for_least_body_acceleration,
    damping_for_least_tyre_load,
    dynamic_index,
    flat_ride_cycles,
    flat_ride_rear_frequency,
    road_displacement_density,
    transmissibility,
    wk_weighting,
)

__all__ = [
    "damping_for_least_body_acceleration",
    "damping_for_least_tyre_load",
    "dynamic_index",
    "flat_ride_cycles",
    "flat_ride_rear_frequency",
    "road_displacement_density",
    "transmissibility",
    "wk_weighting",
]
