"""The systems that have functions. Generated; do not edit."""

from typing import TYPE_CHECKING

SYSTEMS = ("air", "cooling", "driveline", "engine", "fluid", "mass", "ride", "spring", "suspension", "tyre",)

if TYPE_CHECKING:
    from axlewright.si import air as air
    from axlewright.si import cooling as cooling
    from axlewright.si import driveline as driveline
    from axlewright.si import engine as engine
    from axlewright.si import fluid as fluid
    from axlewright.si import mass as mass
    from axlewright.si import ride as ride
    from axlewright.si import spring as spring
    from axlewright.si import suspension as suspension
    from axlewright.si import tyre as tyre
