"""The functions of every system as NumPy ufuncs: positional, plain numbers in coherent SI.

A value outside what a function is valid for gives NaN and raises NumPy's "invalid" flag, so that `numpy.errstate`
decides what happens. `out=`, `where=`, broadcasting and the rest are NumPy's.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from axlewright.si.generated import SYSTEMS

if TYPE_CHECKING:
    # Written by `cargo xtask generate`, from the folders of the systems and what they import.
    from axlewright.si import air as air
    from axlewright.si import bracket as bracket
    from axlewright.si import cooling as cooling
    from axlewright.si import driveline as driveline
    from axlewright.si import engine as engine
    from axlewright.si import fastener as fastener
    from axlewright.si import fluid as fluid
    from axlewright.si import mass as mass
    from axlewright.si import material as material
    from axlewright.si import ride as ride
    from axlewright.si import section as section
    from axlewright.si import spring as spring
    from axlewright.si import suspension as suspension
    from axlewright.si import tyre as tyre
    from axlewright.si import weld as weld
    # Written by hand again.


def __getattr__(name: str) -> Any:
    """Systems are loaded at first use."""
    if name in SYSTEMS:
        return import_module(f"axlewright.si.{name}")
    raise AttributeError(f"module 'axlewright.si' has no attribute {name!r}")


def __dir__() -> list[str]:
    return list(SYSTEMS)
