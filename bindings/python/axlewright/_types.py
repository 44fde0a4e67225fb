"""Types of arguments and results, for type checkers and readers."""

from collections.abc import Sequence
from typing import Any, Literal, TypeAlias

import numpy.typing as npt

from axlewright._native import Quantity

#: A quantity, its text, a list of these; a quantity of the units library pint.
QuantityLike: TypeAlias = Quantity | str | Sequence[Quantity] | Sequence[str] | Any
#: A ratio may also be a plain number or an array.
RatioLike: TypeAlias = float | npt.ArrayLike | QuantityLike
#: A ratio as a result: a float, or an array if an array was given.
Ratio: TypeAlias = Any
#: Treatment of a value outside the valid range: raise, or give NaN.
Invalid: TypeAlias = Literal["raise"] | Literal["nan"]
