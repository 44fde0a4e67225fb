"""Tyres and wheels: what the marking on the wall says, where the wheel stands, and what the speedometer makes of a change. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["Dimensions", "Rolling", "Tyre", "bolt_circle_diameter", "speedometer_error", "speedometer_error_at_shaft", "track_change", "true_speed", "wheel_backspacing", "wheel_offset"]

_bolt_circle_diameter = _functions["tyre.bolt_circle_diameter"]
_speedometer_error = _functions["tyre.speedometer_error"]
_speedometer_error_at_shaft = _functions["tyre.speedometer_error_at_shaft"]
_true_speed = _functions["tyre.true_speed"]
_track_change = _functions["tyre.track_change"]
_wheel_backspacing = _functions["tyre.wheel_backspacing"]
_wheel_offset = _functions["tyre.wheel_offset"]
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


def bolt_circle_diameter(
    *,
    adjacent_stud_spacing: QuantityLike,
    studs: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Diameter of the bolt circle from the distance between two studs side by side.

    Formula
        `d_b = s / sin(pi / n)`

    Parameters
        adjacent_stud_spacing (length): `s`, centre to centre of two studs side by side: outside to
            outside less one stud
        studs (ratio): `n`, whole

    Returns
        (length [m]) The diameter of the circle through the stud centres.

    Valid for (SI)
        - `0.001 <= adjacent_stud_spacing <= 10`
        - `3 <= studs <= 10`

        `studs` is a whole number, and the studs stand at equal angles. An error of the reading
        counts `1 / sin(pi / n)` times: 1.7 for five studs, 2.6 for eight.

    Source
        Chord of a regular polygon

    Caution
        Two bolt circles a few tenths of a millimetre apart look alike: a wheel forced on the wrong
        one works loose and comes off. Hub bore, seat and thread must fit, too.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _bolt_circle_diameter(adjacent_stud_spacing, studs, invalid)  # type: ignore[no-any-return]


def speedometer_error(
    *,
    rolling_radius_before: QuantityLike,
    rolling_radius_after: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Error of the speedometer after a change of tyre.

    Formula
        `e = r_1 / r_2 - 1`

    Parameters
        rolling_radius_before (length): `r_1`, effective rolling radius (distance per turn over 2
            pi) with which the speedometer was right
        rolling_radius_after (length): `r_2`, of the tyre now fitted, measured in the same way

    Returns
        (ratio [-]) The reading over the true speed, less 1: positive where it reads too much,
        negative (the dangerous side) where it reads too little.

    Valid for (SI)
        - `0.001 <= rolling_radius_before <= 100`
        - `0.001 <= rolling_radius_after <= 100`

        A speedometer that counts turns of the wheel or of the shaft and was right before; the error
        that it had from the works comes on top.

    Source
        Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)

    Caution
        A speedometer that reads too little is forbidden in many places (UN Regulation 39, from
        memory: never below the true speed); have it set and checked before the road.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _speedometer_error(rolling_radius_before, rolling_radius_after, invalid)


def speedometer_error_at_shaft(
    *,
    rolling_radius_before: QuantityLike,
    rolling_radius_after: QuantityLike,
    final_drive_before: RatioLike,
    final_drive_after: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Error of a speedometer that the propeller shaft or the gearbox drives, after a change of tyre
    and axle.

    Formula
        `e = r_1 i_2 / (r_2 i_1) - 1`

    Parameters
        rolling_radius_before (length): `r_1`, effective rolling radius (distance per turn over 2
            pi) with which the speedometer was right
        rolling_radius_after (length): `r_2`, of the tyre now fitted, measured in the same way
        final_drive_before (ratio): `i_1`, propeller-shaft speed over wheel speed with which the
            speedometer was right
        final_drive_after (ratio): `i_2`, of the axle now fitted

    Returns
        (ratio [-]) The reading over the true speed, less 1: positive where it reads too much,
        negative (the dangerous side) where it reads too little.

    Valid for (SI)
        - `0.001 <= rolling_radius_before <= 100`
        - `0.001 <= rolling_radius_after <= 100`
        - `0.001 <= final_drive_before <= 1000`
        - `0.001 <= final_drive_after <= 1000`

        A speedometer that was right before. One that counts turns of a wheel does not see the axle:
        `speedometer_error` is for that.

    Source
        Kinematics of rolling and of gears; ISO 8855 for the term effective rolling radius (from
        memory)

    Caution
        A speedometer that reads too little is forbidden in many places (UN Regulation 39, from
        memory: never below the true speed); have it set and checked before the road.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _speedometer_error_at_shaft(rolling_radius_before, rolling_radius_after, final_drive_before, final_drive_after, invalid)


def true_speed(
    *,
    indicated_speed: QuantityLike,
    speedometer_error: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """True speed behind a reading of the speedometer.

    Formula
        `v = v_i / (1 + e)`

    Parameters
        indicated_speed (velocity): `v_i`, what the speedometer reads
        speedometer_error (ratio): `e`, reading over true speed, less 1: positive where it reads too
            much

    Returns
        (velocity [m/s]) The speed over the ground.

    Valid for (SI)
        - `0 <= indicated_speed <= 1000`
        - `-0.99 <= speedometer_error <= 100`

        An error in proportion to the speed, as a change of tyre or axle makes it.

    Source
        Definition of the error

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _true_speed(indicated_speed, speedometer_error, invalid)  # type: ignore[no-any-return]


def track_change(
    *,
    wheel_offset_before: QuantityLike,
    wheel_offset_after: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Change of the track when both wheels of an axle change their offset.

    Formula
        `db = 2 (o_1 - o_2)`

    Parameters
        wheel_offset_before (length): `o_1`, mounting face from the rim's middle plane, positive
            where the mounting face lies towards the outside of the vehicle from the rim's middle
            plane (ISO 3911 calls it inset, from memory)
        wheel_offset_after (length): `o_2`, of the wheels now fitted, less the thickness of a spacer

    Returns
        (length [m]) By how much the tyre centres stand further apart; negative where they come
        closer.

    Valid for (SI)
        - `-10 <= wheel_offset_before <= 10`
        - `-10 <= wheel_offset_after <= 10`

        Both wheels alike, without camber. Each side moves by half of it.

    Source
        Geometry of the section

    Caution
        A changed offset changes the scrub radius, the lever on the wheel bearings and studs, and
        the clearance; local codes limit it, and licensed practice decides.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _track_change(wheel_offset_before, wheel_offset_after, invalid)  # type: ignore[no-any-return]


def wheel_backspacing(
    *,
    rim_width: QuantityLike,
    flange_thickness: QuantityLike,
    wheel_offset: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Backspacing of a wheel from its offset.

    Formula
        `b = w / 2 + t + o`

    Parameters
        rim_width (length): `w`, nominal, between the faces of the flanges that the beads sit
            against: the number on the wheel
        flange_thickness (length): `t`, of one rim flange, from the face that the bead sits against
            to its outer edge; about half an inch (common practice, no source): measure yours
        wheel_offset (length): `o`, mounting face from the rim's middle plane, positive where the
            mounting face lies towards the outside of the vehicle from the rim's middle plane (ISO
            3911 calls it inset, from memory)

    Returns
        (length [m]) What the trade measures: a straight edge across the edge of the inner flange,
        and down from it to the mounting face. Negative where the mounting face lies further in than
        that edge.

    Valid for (SI)
        - `0.001 <= rim_width <= 10`
        - `0 <= flange_thickness <= 1`
        - `-10 <= wheel_offset <= 10`

        A rim with both flanges alike. The tyre bulges further in than the flange does.

    Source
        Geometry of the section; common practice, no source, for what is called backspacing

    Caution
        A wheel that touches a caliper, a steering arm or a hose fails without warning: turn it by
        hand through full lock, bump and droop before the road.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_backspacing(rim_width, flange_thickness, wheel_offset, invalid)  # type: ignore[no-any-return]


def wheel_offset(
    *,
    rim_width: QuantityLike,
    flange_thickness: QuantityLike,
    wheel_backspacing: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Offset of a wheel from its backspacing.

    Formula
        `o = b - t - w / 2`

    Parameters
        rim_width (length): `w`, nominal, between the faces of the flanges that the beads sit
            against: the number on the wheel
        flange_thickness (length): `t`, of one rim flange, from the face that the bead sits against
            to its outer edge; about half an inch (common practice, no source): measure yours
        wheel_backspacing (length): `b`, from a straight edge across the edge of the inner flange
            down to the mounting face

    Returns
        (length [m]) Mounting face from the rim's middle plane, positive where the mounting face
        lies towards the outside of the vehicle from the rim's middle plane (ISO 3911 calls it
        inset, from memory).

    Valid for (SI)
        - `0.001 <= rim_width <= 10`
        - `0 <= flange_thickness <= 1`
        - `-10 <= wheel_backspacing <= 10`

        A rim with both flanges alike.

    Source
        Geometry of the section; common practice, no source, for what is called backspacing

    Caution
        A wheel that touches a caliper, a steering arm or a hose fails without warning: turn it by
        hand through full lock, bump and droop before the road.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_offset(rim_width, flange_thickness, wheel_backspacing, invalid)  # type: ignore[no-any-return]


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
