"""Unit-safe vehicle-engineering functions for one-off vehicle builders.

>>> from axlewright import spring
>>> from axlewright.units import deg, lbf_in
>>> rate = spring.wheel_rate(spring_rate=300 * lbf_in, motion_ratio=0.75, angle_from_measured_travel=20 * deg)
>>> f"{rate:.1f}"
'149.0 lbf/in'

Functions and models of a system of the vehicle stand in its module: `axlewright.spring`, `axlewright.mass` ...
They take quantities by keyword. `axlewright.si` holds the same functions as NumPy ufuncs on plain numbers in
coherent SI; `axlewright.units` holds the units. `work(spring.wheel_rate, ...)` shows how an answer came about.
`axlewright.sheet` holds the build sheet: a whole vehicle as one document, and what follows from it.
A model gives values, limits and margins; `verdict_of_ratio`, `verdict_of_difference` and `verdict_of_place` grade a margin.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from axlewright import kinds, units
from axlewright._arrays import arange, concatenate, linspace
from axlewright._brief import no_attribute
from axlewright._native import (
    DocumentError,
    DomainError,
    Error,
    Quantity,
    TextError,
    Unit,
    __version__,
    verdict_of_difference,
    verdict_of_place,
    verdict_of_ratio,
)
from axlewright._table import Table
from axlewright._work import Work, work
from axlewright.generated import SYSTEMS

if TYPE_CHECKING:
    from axlewright import sheet as sheet
    from axlewright import si as si
    from axlewright.sheet import PriceList as PriceList
    from axlewright.sheet import Sheet as Sheet
    from axlewright.sheet import span as span
    # Written by `cargo xtask generate`, from the folders of the systems and what they import.
    from axlewright import air as air
    from axlewright import bracket as bracket
    from axlewright import cooling as cooling
    from axlewright import driveline as driveline
    from axlewright import engine as engine
    from axlewright import fastener as fastener
    from axlewright import fluid as fluid
    from axlewright import loads as loads
    from axlewright import mass as mass
    from axlewright import material as material
    from axlewright import ride as ride
    from axlewright import section as section
    from axlewright import spring as spring
    from axlewright import suspension as suspension
    from axlewright import tyre as tyre
    from axlewright import weld as weld
    # Written by hand again.

Q = Quantity
_OF_THE_SHEET = ("PriceList", "Sheet", "span")

__all__ = [
    "DocumentError",
    "DomainError",
    "Error",
    "PriceList",
    "Q",
    "Quantity",
    "Sheet",
    "Table",
    "TextError",
    "Unit",
    "Work",
    "__version__",
    "arange",
    "concatenate",
    "kinds",
    "linspace",
    "span",
    "units",
    "verdict_of_difference",
    "verdict_of_place",
    "verdict_of_ratio",
    "work",
]


def __getattr__(name: str) -> Any:
    """Systems and the build sheet are loaded at first use."""
    if name in ("si", "sheet") or name in SYSTEMS:
        return import_module(f"axlewright.{name}")
    if name in _OF_THE_SHEET:
        return getattr(import_module("axlewright.sheet"), name)
    raise no_attribute(__name__, name, __dir__())


def __dir__() -> list[str]:
    return sorted([*__all__, "sheet", "si", *SYSTEMS])
