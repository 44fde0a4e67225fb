from .generated import (
    __doc__,
    Dimensions,
    Rolling,
    Tyre,
    bolt_circle_diameter,
    speedometer_error,
    speedometer_error_at_shaft,
    track_change,
    true_speed,
    wheel_backspacing,
    wheel_offset,
)

__all__ = [
    "Dimensions",
    "Rolling",
    "Tyre",
    "bolt_circle_diameter",
    "speedometer_error",
    "speedometer_error_at_shaft",
    "track_change",
    "true_speed",
    "wheel_backspacing",
    "wheel_offset",
]
