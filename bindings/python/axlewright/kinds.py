"""Kinds of quantity, for annotations: `Quantity[Mass]`.

>>> from axlewright import Quantity
>>> from axlewright.kinds import LinearStiffness
>>> def softer(rate: Quantity[LinearStiffness]) -> Quantity[LinearStiffness]:
...     return 0.9 * rate
"""

from axlewright._native import UNITS


class Kind:
    """A kind of quantity; there are no objects of it."""


class Additive(Kind):
    """A kind whose quantities add and scale."""


#: Points on a scale: two of them do not add.
_POINTS = ("AbsolutePressure", "Temperature")
_kinds = {unit.kind for unit in UNITS.values()}
__all__ = ["Additive", "Kind", *sorted(_kinds)]  # noqa: PLE0604
globals().update({name: type(name, (Kind if name in _POINTS else Additive,), {"__module__": __name__}) for name in _kinds})
