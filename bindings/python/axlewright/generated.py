"""The systems of the vehicle. Generated; do not edit."""

from typing import TYPE_CHECKING

SYSTEMS = ("air", "cooling", "driveline", "engine", "fluid", "mass", "ride", "spring", "suspension", "tyre",)

if TYPE_CHECKING:
    from axlewright import air as air
    from axlewright import cooling as cooling
    from axlewright import driveline as driveline
    from axlewright import engine as engine
    from axlewright import fluid as fluid
    from axlewright import mass as mass
    from axlewright import ride as ride
    from axlewright import spring as spring
    from axlewright import suspension as suspension
    from axlewright import tyre as tyre
