"""The systems that have functions. Generated; do not edit."""

from typing import TYPE_CHECKING

SYSTEMS = ("mass", "spring")

if TYPE_CHECKING:
    from axlewright.si import mass as mass
    from axlewright.si import spring as spring
