from .generated import (
    __doc__,
    WeightDistribution,
    weight_distribution,
)

__all__ = [
    "WeightDistribution",
    "weight_distribution",
]
