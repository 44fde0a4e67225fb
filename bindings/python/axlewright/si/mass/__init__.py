from .generated import (
    __doc__,
    weight_distribution,
)

__all__ = [
    "weight_distribution",
]
