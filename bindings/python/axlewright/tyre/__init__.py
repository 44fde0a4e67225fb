from .generated import (
    __doc__,
    Dimensions,
    Rolling,
    Tyre,
)

__all__ = [
    "Dimensions",
    "Rolling",
    "Tyre",
]
