from .generated import (
    __doc__,
    BoilingMargin,
    Coolant,
)

__all__ = [
    "BoilingMargin",
    "Coolant",
]
