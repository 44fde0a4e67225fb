"""Units: `300 * lbf_in`, `lbf_in([250, 300])`, `degF(70)`."""

from axlewright._native import UNITS

__all__ = list(UNITS)  # noqa: PLE0605
globals().update(UNITS)
