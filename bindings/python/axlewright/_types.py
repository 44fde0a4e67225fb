"""Types of arguments and results, for type checkers and readers."""

from collections.abc import Sequence
from typing import Any, Literal, Protocol, SupportsIndex, TypeAlias, TypeVar

import numpy as np
import numpy.typing as npt

from axlewright import kinds
from axlewright._native import Quantity

K = TypeVar("K")


class PintQuantity(Protocol):
    """A quantity of the units library pint."""

    @property
    def magnitude(self) -> Any: ...
    @property
    def units(self) -> Any: ...
    def to_base_units(self) -> Any: ...


class Array(Protocol):
    """An array: of NumPy, pandas, xarray or dask."""

    @property
    def dtype(self) -> Any: ...
    @property
    def shape(self) -> Any: ...


#: A plain number.
Number: TypeAlias = float | SupportsIndex | np.floating[Any]
#: Plain numbers: one, or an array of them.
Numbers: TypeAlias = Number | Sequence[float] | Sequence[Sequence[float]] | Array
#: One quantity of a kind, or its text.
QuantityWritten: TypeAlias = Quantity[K] | str
#: One quantity of a kind, its text, or a quantity of the units library pint.
QuantityLike: TypeAlias = Quantity[K] | str | PintQuantity
#: The same, or a list of them.
QuantitiesLike: TypeAlias = Quantity[K] | str | PintQuantity | Sequence[Quantity[K]] | Sequence[str]
#: A ratio may also be a plain number.
RatioWritten: TypeAlias = Number | Quantity[kinds.Ratio] | str
RatioLike: TypeAlias = Number | Quantity[kinds.Ratio] | str | PintQuantity
#: Ratios may also be plain numbers.
RatiosLike: TypeAlias = Numbers | Quantity[kinds.Ratio] | str | PintQuantity | Sequence[Quantity[kinds.Ratio]] | Sequence[str]
#: A ratio as a result: a float, or an array if an array was given. A kind does not tell one from the other: where one number is wanted, write
#: `float(...)`.
FloatOrArray: TypeAlias = float | npt.NDArray[np.float64]
#: Treatment of a value outside the valid range: raise, or give NaN.
Invalid: TypeAlias = Literal["raise"] | Literal["nan"]
