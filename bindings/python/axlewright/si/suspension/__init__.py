from .generated import (
    __doc__,
    axle_load_transfer,
    bar_rate_for_roll_stiffness,
    bar_roll_stiffness,
    front_transfer_share,
    independent_roll_stiffness,
    live_axle_roll_stiffness,
    roll_arm,
    roll_gradient,
    roll_stiffness_for_gradient,
    roll_stiffness_over_tyres,
    tyre_roll_stiffness,
)

__all__ = [
    "axle_load_transfer",
    "bar_rate_for_roll_stiffness",
    "bar_roll_stiffness",
    "front_transfer_share",
    "independent_roll_stiffness",
    "live_axle_roll_stiffness",
    "roll_arm",
    "roll_gradient",
    "roll_stiffness_for_gradient",
    "roll_stiffness_over_tyres",
    "tyre_roll_stiffness",
]
