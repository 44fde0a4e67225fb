"""The systems of the vehicle. Generated; do not edit."""

from typing import TYPE_CHECKING

SYSTEMS = ("cooling", "mass", "spring")

if TYPE_CHECKING:
    from axlewright import cooling as cooling
    from axlewright import mass as mass
    from axlewright import spring as spring
