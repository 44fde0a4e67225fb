"""Arrays of quantities: made in equal steps, and joined."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypeVar

import numpy as np

from axlewright._native import Quantity, _quantity
from axlewright.kinds import Additive

K = TypeVar("K")
A = TypeVar("A", bound=Additive)


def linspace(start: Quantity[K] | str, stop: Quantity[K] | str, num: int = 50, *, endpoint: bool = True) -> Quantity[K]:
    """So many quantities in equal steps, in the unit of the first: `linspace(0 * mm, 100 * mm, 11)`."""
    first, last = _one("start", start), _one("stop", stop)
    unit = first.unit
    return Quantity(np.linspace(first.to(unit), last.to(unit), num, endpoint=endpoint), unit)


def arange(start: Quantity[A] | str, stop: Quantity[A] | str, step: Quantity[A] | str) -> Quantity[A]:
    """Quantities from the first in steps, without the last, in the unit of the first: `arange(0 * mm, 50 * mm, 10 * mm)`.

    Steps that are not whole in that unit may give one element more, as in NumPy: `linspace` counts them. Temperatures and
    absolute pressures have no step of their kind.
    """
    first, last, each = _one("start", start), _one("stop", stop), _one("step", step)
    unit = first.unit
    first + each  # refuses a kind without steps
    return Quantity(np.arange(first.to(unit), last.to(unit), each.to(unit)), unit)


def concatenate(arrays: Sequence[Quantity[K]]) -> Quantity[K]:
    """Arrays of one kind as one, in the unit of the first; a single quantity counts as an array of one."""
    arrays = list(arrays)
    if not arrays:
        raise ValueError("nothing to concatenate")
    first = arrays[0]
    for place, one in enumerate(arrays):
        if not isinstance(one, Quantity):
            raise TypeError(f"array {place} is no quantity: {type(one).__name__}")
        if one.kind != first.kind:
            raise TypeError(f"array {place} is of the kind {one.kind}; the first is of {first.kind}")
    joined = np.concatenate([np.atleast_1d(one.si) for one in arrays])
    made: Quantity[K] = _quantity(first.kind, first.unit.name, joined)
    return made


def _one(name: str, given: Any) -> Quantity[Any]:
    quantity: Quantity[Any] = Quantity(given)
    if quantity.ndim:
        raise ValueError(f"{name} is one quantity here, not an array")
    return quantity
