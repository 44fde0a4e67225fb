"""Tyres and wheels: what the marking on the wall says, what the tyre carries, how it stands and rolls, where the wheel stands, and what the speedometer makes. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["Dimensions", "Rolling", "Tyre", "WheelChange", "WheelChangeFindings", "bolt_circle_diameter", "load_capacity", "loaded_radius", "rolling_radius", "rolling_radius_from_turns", "rolling_turns", "speedometer_error", "speedometer_error_at_shaft", "track_change", "true_speed", "wheel_backspacing", "wheel_offset"]

_bolt_circle_diameter = _functions["tyre.bolt_circle_diameter"]
_load_capacity = _functions["tyre.load_capacity"]
_loaded_radius = _functions["tyre.loaded_radius"]
_rolling_radius = _functions["tyre.rolling_radius"]
_rolling_radius_from_turns = _functions["tyre.rolling_radius_from_turns"]
_rolling_turns = _functions["tyre.rolling_turns"]
_speedometer_error = _functions["tyre.speedometer_error"]
_speedometer_error_at_shaft = _functions["tyre.speedometer_error_at_shaft"]
_true_speed = _functions["tyre.true_speed"]
_track_change = _functions["tyre.track_change"]
_wheel_backspacing = _functions["tyre.wheel_backspacing"]
_wheel_offset = _functions["tyre.wheel_offset"]
_tyre_dimensions = _functions["tyre.Tyre.dimensions"]
_tyre_rolling = _functions["tyre.Tyre.rolling"]
_tyre_wear_table = _functions["tyre.Tyre.wear_table"]
_tyre_single_load = _functions["tyre.Tyre.single_load"]
_tyre_dual_load = _functions["tyre.Tyre.dual_load"]
_tyre_rated_speed = _functions["tyre.Tyre.rated_speed"]
_wheel_change_findings = _functions["tyre.WheelChange.findings"]
_wheel_change_table = _functions["tyre.WheelChange.table"]


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


class WheelChangeFindings(NamedTuple):
    """Results of `findings`."""

    inner_change: Quantity
    """Growth of the gap inside, to the widest of rim and tyre; negative where it shrinks."""
    inner_left: Quantity
    """The gap inside that is left."""
    inner_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    outer_change: Quantity
    """Growth of the gap outside; negative where it shrinks."""
    outer_left: Quantity
    """The gap outside that is left."""
    outer_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    arch_change: Quantity
    """Growth of the gap above the tyre; negative where it shrinks."""
    arch_left: Quantity
    """The gap above the tyre that is left."""
    arch_verdict: Literal["meets", "tight", "short", "not known"]
    """What to call that."""
    flange_change: Quantity
    """By how much the edge of the inner flange comes further in, towards steering arm and joint."""
    track_change: Quantity
    """By how much the tyre centres stand further apart."""
    scrub_change: Quantity
    """Growth of the scrub radius, positive where the tyre's centre moves outwards from where the
    steering axis meets the ground.
    """
    height_change: Quantity
    """By how much hub and body stand higher."""
    speedometer_error: Ratio
    """Reading over true speed, less 1: negative (the dangerous side) where it reads too little."""


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


def load_capacity(
    *,
    load_index: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Load capacity of one tyre from its load index.

    Formula
        `Q = 45 kg * 10^(n / 80)` in the preferred numbers of the load-index table; below 1000 kg
        three figures, rounded down

    Parameters
        load_index (ratio): `n`, whole: the number before the speed symbol, the first of two for a
            tyre that stands single

    Returns
        (mass [kg]) The mass that one tyre may carry at its reference pressure, up to its speed
        symbol.

    Valid for (SI)
        - `0 <= load_index <= 279`

        `load_index` is a whole number. At less pressure, with much camber, or above the speed at
        which the standard begins to take off (for a passenger tyre 210 km/h, from memory), a tyre
        carries less.

    Source
        ISO 4000-1 and ETRTO Standards Manual, table of load indices (from memory, held against the
        series R80 of ISO 3)

    Caution
        An overloaded or soft tyre heats and bursts. The figures on the wall and the maker's load
        and pressure table decide; a passenger tyre on a truck or trailer counts less (in the United
        States by 1.10, from memory); local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _load_capacity(load_index, invalid)  # type: ignore[no-any-return]


def loaded_radius(
    *,
    free_diameter: QuantityLike,
    tyre_load: QuantityLike,
    tyre_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Loaded radius of a tyre: wheel centre to ground, standing.

    Formula
        `r_l = D / 2 - F / k`

    Parameters
        free_diameter (length): `D`, of the unloaded tyre at its pressure
        tyre_load (force): `F`, on the ground under this one tyre
        tyre_rate (linear stiffness): `k`, vertical, at the pressure and about that load; the
            maker's figure or two readings

    Returns
        (length [m]) The static loaded radius: the lever of forces. Speed wants the effective
        rolling radius, `rolling_radius`.

    Valid for (SI)
        - `0.001 <= free_diameter <= 100`
        - `0 <= tyre_load <= 10000000`
        - `1 <= tyre_rate <= 1000000000`

        The load over the rate: a tyre is softer at first, so take the secant rate from no load up
        where it is known. Upright and standing; a rolling tyre grows with speed.

    Source
        Definition of the vertical rate; ISO 8855 and SAE J670 for the term loaded radius (from
        memory)

    Caution
        A tyre that sags more than its maker means it to is overloaded or soft, heats and bursts;
        load index, the maker's pressures and local codes decide.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _loaded_radius(free_diameter, tyre_load, tyre_rate, invalid)  # type: ignore[no-any-return]


def rolling_radius(
    *,
    free_diameter: QuantityLike,
    loaded_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Effective rolling radius of a tyre from its diameter and its loaded radius.

    Formula
        `r = D / 2 - (D / 2 - r_l) / 3`

    Parameters
        free_diameter (length): `D`, of the unloaded tyre at its pressure
        loaded_radius (length): `r_l`, wheel centre to ground under load

    Returns
        (length [m]) Distance per turn over 2 pi, without slip: it lies between the loaded and the
        free radius.

    Valid for (SI)
        - `0.001 <= free_diameter <= 100`
        - `0.0005 <= loaded_radius <= 50`

        The loaded radius lies between a quarter and a half of the free diameter. A tread that lies
        flat on the ground and keeps the length of its arc: a diagonal tyre, more or less. The belt
        of a radial tyre hardly stretches or shrinks, so that it rolls on about 3.05 times its free
        diameter at any proper load: `Tyre` says so. A turn counted on the road beats both.

    Source
        Jazar, Vehicle Dynamics: Theory and Application (2008), sec. 3.1, effective radius: `R_w =
        R_g - (R_g - R_h) / 3` (from memory); it is the first term of `r_0 sin(a) / a`, `cos(a) =
        r_l / r_0`

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _rolling_radius(free_diameter, loaded_radius, invalid)  # type: ignore[no-any-return]


def rolling_radius_from_turns(
    *,
    rolling_turns: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Effective rolling radius from turns counted along a distance.

    Formula
        `r = 1 / (2 pi n)`

    Parameters
        rolling_turns (turns per distance): `n`, turns along a distance: a maker's revolutions per
            mile, or chalk marks on the floor of the shop

    Returns
        (length [m]) Distance per turn over 2 pi.

    Valid for (SI)
        - `0.001 <= rolling_turns <= 1000`

        At the load, the pressure and about the speed at which the turns were counted.

    Source
        Definition of the effective rolling radius; ISO 8855 for the term (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _rolling_radius_from_turns(rolling_turns, invalid)  # type: ignore[no-any-return]


def rolling_turns(
    *,
    rolling_radius: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Turns of a tyre along a distance.

    Formula
        `n = 1 / (2 pi r)`

    Parameters
        rolling_radius (length): `r`, effective rolling radius (distance per turn over 2 pi), not
            the loaded radius

    Returns
        (turns per distance [turn/m]) Revolutions per kilometre or per mile.

    Valid for (SI)
        - `0.001 <= rolling_radius <= 100`

        Without slip.

    Source
        Definition of the effective rolling radius; ISO 8855 for the term (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _rolling_turns(rolling_radius, invalid)  # type: ignore[no-any-return]


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
    `275/40ZR18 (99Y)`, `31x10.50R15LT`, `6.00-16`.

    Formula
        metric: `H = S A`, `D = d + 2 H`; inch flotation: `D` and `S` as marked; old numeric: as
        metric, with the `A` of its series; `C = 3.05 D` radial, `2.99 D` diagonal

    Fields
        marking (text): the size as it stands on the wall; load index and speed symbol may follow

    Valid for
        Sections of 50 mm to 500 mm, aspect ratios of 20 to 110, rims of code 8 to 30, flotation
        diameters of 15 in to 60 in. Anything else is taken for a slip of the pen. Loaded and
        effective rolling radius depend on load and pressure; the factor on the free diameter is a
        convention.

        An old numeric marking, width in inches with two decimals, does not say its height: `A` is
        that of the series, and the diameter good to about 2 %, so measure. Rim 16 to 19 (`6.00-16`,
        `7.50-16LT`): 1.03. Rim 10 to 15, decimals in tens but not .00 or .50 (`5.60-15`,
        `6.40-13`): 0.95; decimals that end in 5 (`7.75-14`): 0.82; .00 or .50 on a rim up to 14
        (`7.00-13`): 0.88; .00 or .50 with `LT` or `C` on 15: 1.03. Metric without a ratio
        (`185R14C`): 0.80. Where two series meet (`6.00-15`, `7.00-14LT`) and beyond a width of 3.00
        to 9.00 it is refused.

    Source
        ISO 4000-1 (size designation and dimensions; 25.4 mm a rim code); rolling circumference:
        ETRTO Standards Manual and UN Regulation 30, from memory; ratios of the old numeric series:
        common practice, no source, chosen by the diameters in the tables of UN Regulations 30 and
        54 as remembered; speed symbols: ISO 4000-1, from memory

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

    def single_load(self) -> Quantity:
        """Load capacity of this tyre standing single, by the load index that stands after the size.

        Returns
            (mass [kg]) The mass that it may carry at its reference pressure, up to its speed symbol;
            refused where no load index is written.
        """
        return _tyre_single_load(self._handle)  # type: ignore[no-any-return]

    def dual_load(self) -> Quantity:
        """Load capacity of each of two such tyres on one end of an axle, by the second load index.

        Returns
            (mass [kg]) The mass that each of the two may carry; refused where no second load index is
            written.
        """
        return _tyre_dual_load(self._handle)  # type: ignore[no-any-return]

    def rated_speed(self) -> Quantity:
        """Speed up to which the tyre carries its load, by the speed symbol that stands after the size.

        Returns
            (velocity [m/s]) The speed of the symbol; `(Y)` in brackets promises more than these 300
            km/h, and its maker says how much. Refused where no symbol is written.
        """
        return _tyre_rated_speed(self._handle)  # type: ignore[no-any-return]


class WheelChange(Model):
    """Another wheel and tyre on the same hub: where they come to stand, and what becomes of clearance,
    track, height and speedometer.

    Formula
        half width `h` = the greater of `w / 2 + t` and `S / 2`; with `O = o - s_p`: inner gap `h_1
        + O_1 - h_2 - O_2` more, outer `h_1 - O_1 - h_2 + O_2`, arch `(D_1 - D_2) / 2`; height `(D_2
        - D_1) / 2`; track `2 (O_1 - O_2)`; scrub radius `O_1 - O_2 - tan(a) (D_2 - D_1) / 2`;
        speedometer `r_1 / r_2 - 1`

    Fields
        before (table): the wheel with which the clearances were measured
        after (table): the wheel that is to come; each of the two has `rim_width` `w`,
            `flange_thickness` `t`, `offset` `o` or else `backspacing` as in `tyre::wheel_offset`,
            `spacer` `s_p` where there is one, and its tyre: `marking`, or else `free_diameter` `D`
            and `section_width` `S`; with a marking `measuring_rim_width`, the rim on which its
            maker measures it, lets the section follow the rim
        kingpin_inclination (angle, optional): `a`, of the steering axis, positive where its upper
            end leans inwards; without it the change of the scrub radius is not a number
        inner_clearance (length, optional): least gap inside of the wheel before, to strut, spring
            or frame, measured over full lock, bump and droop
        outer_clearance (length, optional): least gap outside, to wing or bed, measured in the same
            way
        arch_clearance (length, optional): least gap above the tyre before, in full bump
        tight_below (length): clearance that is wanted; below it a verdict is `tight`, below nothing
            `short`; what was not measured is `not known`

    Valid for
        Both wheels of the axle alike, without camber, rims with both flanges alike. A tyre is as
        wide and as high as its marking says, new and unloaded: real ones differ by a few percent,
        so measure both. One given by its diameter rolls as a radial tyre does. The tyre sits as
        deep on the ground as before. Clearance shrinks straight to the side: a larger tyre turns on
        a longer radius at full lock and comes nearer elsewhere. Whether the tyre may stand on the
        rim, what the caliper leaves inside of the rim, load and speed are not seen.

    Source
        Geometry of the section; section over rim width and what is called backspacing: common
        practice, no source; rolling: see `tyre::Tyre`; ISO 8855 for scrub radius and steering-axis
        inclination (from memory)

    Caution
        An offset that moves the wheel outwards loads wheel bearings, studs and steering beyond what
        they were made for; a spacer needs studs that are long enough, and a hub that centres it.
        Turn the wheel by hand through full lock, bump and droop before the road. Local codes limit
        track, spacers and tyre size, and licensed practice decides.
    """

    __slots__ = ()
    _name = "tyre.WheelChange"
    _kinds = {"kingpin_inclination": "Angle", "inner_clearance": "Length", "outer_clearance": "Length", "arch_clearance": "Length", "tight_below": "Length"}

    def __init__(
        self,
        *,
        before: Mapping[str, Any],
        after: Mapping[str, Any],
        tight_below: QuantityLike,
        kingpin_inclination: QuantityLike | None = None,
        inner_clearance: QuantityLike | None = None,
        outer_clearance: QuantityLike | None = None,
        arch_clearance: QuantityLike | None = None,
    ) -> None:
        self._build(
            before=before,
            after=after,
            kingpin_inclination=kingpin_inclination,
            inner_clearance=inner_clearance,
            outer_clearance=outer_clearance,
            arch_clearance=arch_clearance,
            tight_below=tight_below,
        )

    @property
    def before(self) -> dict[str, Any]:
        """The wheel with which the clearances were measured."""
        return self._read("before")  # type: ignore[no-any-return]

    @property
    def after(self) -> dict[str, Any]:
        """The wheel that is to come; each of the two has `rim_width` `w`, `flange_thickness` `t`, `offset`
        `o` or else `backspacing` as in `tyre::wheel_offset`, `spacer` `s_p` where there is one, and its
        tyre: `marking`, or else `free_diameter` `D` and `section_width` `S`; with a marking
        `measuring_rim_width`, the rim on which its maker measures it, lets the section follow the rim.
        """
        return self._read("after")  # type: ignore[no-any-return]

    @property
    def kingpin_inclination(self) -> Quantity | None:
        """`a`, of the steering axis, positive where its upper end leans inwards; without it the change of
        the scrub radius is not a number.
        """
        return self._read("kingpin_inclination", "Angle")  # type: ignore[no-any-return]

    @property
    def inner_clearance(self) -> Quantity | None:
        """Least gap inside of the wheel before, to strut, spring or frame, measured over full lock, bump
        and droop.
        """
        return self._read("inner_clearance", "Length")  # type: ignore[no-any-return]

    @property
    def outer_clearance(self) -> Quantity | None:
        """Least gap outside, to wing or bed, measured in the same way."""
        return self._read("outer_clearance", "Length")  # type: ignore[no-any-return]

    @property
    def arch_clearance(self) -> Quantity | None:
        """Least gap above the tyre before, in full bump."""
        return self._read("arch_clearance", "Length")  # type: ignore[no-any-return]

    @property
    def tight_below(self) -> Quantity:
        """Clearance that is wanted; below it a verdict is `tight`, below nothing `short`; what was not
        measured is `not known`.
        """
        return self._read("tight_below", "Length")  # type: ignore[no-any-return]

    def findings(self) -> WheelChangeFindings:
        """What the change does to clearances, track, scrub radius, height and speedometer.

        Returns
            inner_change (length [m]): growth of the gap inside, to the widest of rim and tyre; negative
                where it shrinks
            inner_left (length [m]): the gap inside that is left
            inner_verdict (verdict): what to call that
            outer_change (length [m]): growth of the gap outside; negative where it shrinks
            outer_left (length [m]): the gap outside that is left
            outer_verdict (verdict): what to call that
            arch_change (length [m]): growth of the gap above the tyre; negative where it shrinks
            arch_left (length [m]): the gap above the tyre that is left
            arch_verdict (verdict): what to call that
            flange_change (length [m]): by how much the edge of the inner flange comes further in,
                towards steering arm and joint
            track_change (length [m]): by how much the tyre centres stand further apart
            scrub_change (length [m]): growth of the scrub radius, positive where the tyre's centre
                moves outwards from where the steering axis meets the ground
            height_change (length [m]): by how much hub and body stand higher
            speedometer_error (ratio [-]): reading over true speed, less 1: negative (the dangerous
                side) where it reads too little
        """
        return WheelChangeFindings(*_wheel_change_findings(self._handle))

    def table(self, *, offset: QuantityLike, rim_width: QuantityLike) -> Table:
        """What the change does over offsets and rim widths of the wheel that is to come, everything else
        as it is.

        Parameters
            offset (length), several: offsets, in place of the offset or backspacing that is written
            rim_width (length), several: rim widths; the tyre's section follows them where
                `measuring_rim_width` is known

        Returns
            (table) One row an offset and rim width: `offset`, `rim_width`, `inner_change`,
            `inner_left`, `inner_verdict`, `outer_change`, `outer_left`, `outer_verdict`,
            `flange_change`, `track_change`, `scrub_change`.
        """
        return _wheel_change_table(self._handle, offset, rim_width)  # type: ignore[no-any-return]
