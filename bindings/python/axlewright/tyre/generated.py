"""Tyres and wheels: what the marking on the wall says. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import QuantityLike

__all__ = ["Dimensions", "Rolling", "Tyre"]

_tyre_dimensions = _functions["tyre.Tyre.dimensions"]
_tyre_rolling = _functions["tyre.Tyre.rolling"]
_tyre_wear_table = _functions["tyre.Tyre.wear_table"]


class Dimensions(NamedTuple):
    """Results of `dimensions`."""

    section_width: Quantity
    """Nominal section width."""
    section_height: Quantity
    """Height of the wall, rim to tread."""
    rim_diameter: Quantity
    """Nominal rim diameter."""
    free_diameter: Quantity
    """Outer diameter."""
    free_radius: Quantity
    """Half of the outer diameter."""
    free_circumference: Quantity
    """Outer circumference."""
    free_turns: Quantity
    """Turns along a distance on the free circumference."""


class Rolling(NamedTuple):
    """Results of `rolling`."""

    rolling_radius: Quantity
    """Effective rolling radius: distance per turn over 2 pi."""
    rolling_circumference: Quantity
    """Distance per turn."""
    rolling_turns: Quantity
    """Turns along a distance."""


class Tyre(Model):
    """A tyre by the marking on its wall: `225/70R15C 112/110R`, `P235/75R15`, `LT265/70R17`,
    `275/40ZR18 (99Y)`, `31x10.50R15LT`.

    Formula
        metric: `H = S A`, `D = d + 2 H`; inch flotation: `D` and `S` as marked; `C = 3.05 D`
        radial, `2.99 D` diagonal

    Fields
        marking (text): the size as it stands on the wall; load index and speed symbol may follow

    Valid for
        Sections of 50 mm to 500 mm, aspect ratios of 20 to 110, rims of code 8 to 30, flotation
        diameters of 15 in to 60 in. Anything else is taken for a slip of the pen. Old numeric
        markings are not read. Loaded and effective rolling radius depend on load and pressure; the
        factor on the free diameter is a convention.

    Source
        ISO 4000-1 (size designation and dimensions; 25.4 mm a rim code); rolling circumference:
        ETRTO Standards Manual and UN Regulation 30, from memory

    Caution
        A tyre of another size than the approved one changes braking, clearance, load capacity and
        the speedometer; load index and speed symbol must suit the vehicle, and local codes decide.
    """

    __slots__ = ()
    _name = "tyre.Tyre"
    _kinds = {}

    def __init__(
        self,
        *,
        marking: str,
    ) -> None:
        self._build(
            marking=marking,
        )

    @property
    def marking(self) -> str:
        """The size as it stands on the wall; load index and speed symbol may follow."""
        return self._read("marking")  # type: ignore[no-any-return]

    def dimensions(self) -> Dimensions:
        """Dimensions of the new, unloaded tyre.

        Returns
            section_width (length [m]): nominal section width
            section_height (length [m]): height of the wall, rim to tread
            rim_diameter (length [m]): nominal rim diameter
            free_diameter (length [m]): outer diameter
            free_radius (length [m]): half of the outer diameter
            free_circumference (length [m]): outer circumference
            free_turns (turns per distance [turn/m]): turns along a distance on the free circumference
        """
        return Dimensions(*_tyre_dimensions(self._handle))

    def rolling(self, *, tread_worn: QuantityLike) -> Rolling:
        """Effective rolling radius of the tyre, less the tread that is worn off.

        Parameters
            tread_worn (length): depth of tread worn off, nothing for a new tyre

        Returns
            rolling_radius (length [m]): effective rolling radius: distance per turn over 2 pi
            rolling_circumference (length [m]): distance per turn
            rolling_turns (turns per distance [turn/m]): turns along a distance
        """
        return Rolling(*_tyre_rolling(self._handle, tread_worn))

    def wear_table(self, *, tread_worn: QuantityLike) -> Table:
        """How the tyre rolls as its tread wears.

        Parameters
            tread_worn (length), several: depths of tread worn off

        Returns
            (table) One row a depth: `tread_worn`, `rolling_radius`, `rolling_circumference`,
            `rolling_turns`, and `overread`, the share by which a speedometer set for the new tyre reads
            too much.
        """
        return _tyre_wear_table(self._handle, tread_worn)  # type: ignore[no-any-return]
