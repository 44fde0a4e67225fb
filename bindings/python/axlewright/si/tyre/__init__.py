from .generated import (
    __doc__,
    bolt_circle_diameter,
    speedometer_error,
    speedometer_error_at_shaft,
    true_speed,
    track_change,
    wheel_backspacing,
    wheel_offset,
)

__all__ = [
    "bolt_circle_diameter",
    "speedometer_error",
    "speedometer_error_at_shaft",
    "true_speed",
    "track_change",
    "wheel_backspacing",
    "wheel_offset",
]
