"""Cooling. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import QuantityLike, Ratio, RatioLike

__all__ = ["BoilingMargin", "Coolant"]

_coolant_margin = _functions["cooling.Coolant.margin"]
_coolant_freezing_temperature = _functions["cooling.Coolant.freezing_temperature"]
_coolant_margin_table = _functions["cooling.Coolant.margin_table"]


class BoilingMargin(NamedTuple):
    """How far a coolant is from boiling."""

    absolute_pressure: Quantity
    """Absolute pressure under the cap at its rating."""
    mass_fraction: Ratio
    """Glycol by mass of the mix."""
    boiling_temperature: Quantity
    """Temperature at which the mix begins to boil."""
    margin: Quantity
    """How much the boiling temperature exceeds the hottest coolant."""
    verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""


class Coolant(Model):
    """A coolant under a cap at an altitude, and the hottest that it gets."""

    __slots__ = ()
    _name = "cooling.Coolant"

    def __init__(
        self,
        *,
        liquid: Literal["water", "ethylene_glycol", "propylene_glycol"],
        cap: QuantityLike,
        hottest_coolant: QuantityLike,
        tight_below: QuantityLike,
        strength: RatioLike | None = None,
        strength_by: Literal["mass", "volume"] | None = None,
        concentrate: RatioLike | None = None,
        altitude: QuantityLike | None = None,
        station_pressure: QuantityLike | None = None,
    ) -> None:
        self._build(
            liquid=liquid,
            strength=strength,
            strength_by=strength_by,
            concentrate=concentrate,
            cap=cap,
            altitude=altitude,
            station_pressure=station_pressure,
            hottest_coolant=hottest_coolant,
            tight_below=tight_below,
        )

    def margin(self) -> BoilingMargin:
        """How far the coolant is from boiling."""
        return BoilingMargin(*_coolant_margin(self._handle))

    def freezing_temperature(self) -> Quantity:
        """Temperature at which the coolant begins to freeze."""
        return _coolant_freezing_temperature(self._handle)  # type: ignore[no-any-return]

    def margin_table(self, *, cap: QuantityLike, altitude: QuantityLike, strength: RatioLike) -> Table:
        """Boiling margin over caps, altitudes and strengths."""
        return _coolant_margin_table(self._handle, cap, altitude, strength)  # type: ignore[no-any-return]
