"""Units: `300 * lbf_in`, `lbf_in([250, 300])`, `degF(70)`."""

from typing import Any

from axlewright._brief import no_attribute
from axlewright._native import UNITS

__all__ = list(UNITS)  # noqa: PLE0605
globals().update(UNITS)


def __getattr__(name: str) -> Any:
    raise no_attribute(__name__, name, UNITS)


def __dir__() -> list[str]:
    return sorted(UNITS)
