"""Springs, wheel rate and dampers. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["AdjustableDamper", "AtRideHeight", "BumpStop", "CompressedCoil", "Corner", "DamperCurve", "DampingAt", "FirstClosed", "HeldStack", "LeafPackStress", "LoadedStack", "ProgressiveCoil", "SeriesCrossover", "SettingChoice", "Stack", "Stopped", "active_coils_for_rate", "air_spring_rate", "anti_roll_bar_diameter_for_rate", "anti_roll_bar_rate", "buckling_deflection", "coil_bind_clearance", "coil_rate", "coil_shear_stress", "critical_damping", "damped_frequency", "damper_rate_for_ratio", "damping_ratio", "free_length_for_ride_height", "inclined_tangent_rate", "leaf_pack_rate", "leaf_pack_stress", "minimum_gap_clearance", "minimum_gap_cold_dynamic", "minimum_gap_cold_static", "minimum_gap_hot_dynamic", "minimum_gap_hot_static", "natural_frequency", "parallel_rate", "ride_rate", "series_crossover", "series_rate", "shortest_length", "solid_length_closed", "solid_length_closed_ground", "spring_rate_for_frequency", "static_deflection", "stored_energy", "surge_frequency", "tangent_rate_for_frequency", "torsion_bar_arm_rate", "torsion_bar_rate", "torsion_bar_stress", "wahl_factor", "wheel_damping", "wheel_rate", "wheel_tangent_rate", "wire_diameter_for_rate"]

_active_coils_for_rate = _functions["spring.active_coils_for_rate"]
_air_spring_rate = _functions["spring.air_spring_rate"]
_anti_roll_bar_diameter_for_rate = _functions["spring.anti_roll_bar_diameter_for_rate"]
_anti_roll_bar_rate = _functions["spring.anti_roll_bar_rate"]
_buckling_deflection = _functions["spring.buckling_deflection"]
_coil_bind_clearance = _functions["spring.coil_bind_clearance"]
_coil_rate = _functions["spring.coil_rate"]
_coil_shear_stress = _functions["spring.coil_shear_stress"]
_critical_damping = _functions["spring.critical_damping"]
_damped_frequency = _functions["spring.damped_frequency"]
_damper_rate_for_ratio = _functions["spring.damper_rate_for_ratio"]
_damping_ratio = _functions["spring.damping_ratio"]
_free_length_for_ride_height = _functions["spring.free_length_for_ride_height"]
_inclined_tangent_rate = _functions["spring.inclined_tangent_rate"]
_leaf_pack_rate = _functions["spring.leaf_pack_rate"]
_leaf_pack_stress = _functions["spring.leaf_pack_stress"]
_minimum_gap_cold_static = _functions["spring.minimum_gap_cold_static"]
_minimum_gap_cold_dynamic = _functions["spring.minimum_gap_cold_dynamic"]
_minimum_gap_hot_static = _functions["spring.minimum_gap_hot_static"]
_minimum_gap_hot_dynamic = _functions["spring.minimum_gap_hot_dynamic"]
_minimum_gap_clearance = _functions["spring.minimum_gap_clearance"]
_natural_frequency = _functions["spring.natural_frequency"]
_parallel_rate = _functions["spring.parallel_rate"]
_ride_rate = _functions["spring.ride_rate"]
_series_crossover = _functions["spring.series_crossover"]
_series_rate = _functions["spring.series_rate"]
_shortest_length = _functions["spring.shortest_length"]
_solid_length_closed_ground = _functions["spring.solid_length_closed_ground"]
_solid_length_closed = _functions["spring.solid_length_closed"]
_spring_rate_for_frequency = _functions["spring.spring_rate_for_frequency"]
_static_deflection = _functions["spring.static_deflection"]
_stored_energy = _functions["spring.stored_energy"]
_surge_frequency = _functions["spring.surge_frequency"]
_tangent_rate_for_frequency = _functions["spring.tangent_rate_for_frequency"]
_torsion_bar_arm_rate = _functions["spring.torsion_bar_arm_rate"]
_torsion_bar_rate = _functions["spring.torsion_bar_rate"]
_torsion_bar_stress = _functions["spring.torsion_bar_stress"]
_wahl_factor = _functions["spring.wahl_factor"]
_wheel_damping = _functions["spring.wheel_damping"]
_wheel_rate = _functions["spring.wheel_rate"]
_wheel_tangent_rate = _functions["spring.wheel_tangent_rate"]
_wire_diameter_for_rate = _functions["spring.wire_diameter_for_rate"]
_adjustable_damper_choice = _functions["spring.AdjustableDamper.choice"]
_adjustable_damper_table = _functions["spring.AdjustableDamper.table"]
_bump_stop_at = _functions["spring.BumpStop.at"]
_bump_stop_compression_for_energy = _functions["spring.BumpStop.compression_for_energy"]
_bump_stop_table = _functions["spring.BumpStop.table"]
_corner_at_ride_height = _functions["spring.Corner.at_ride_height"]
_corner_table = _functions["spring.Corner.table"]
_damper_curve_force = _functions["spring.DamperCurve.force"]
_damper_curve_damping = _functions["spring.DamperCurve.damping"]
_damper_curve_ratio = _functions["spring.DamperCurve.ratio"]
_damper_curve_table = _functions["spring.DamperCurve.table"]
_progressive_coil_at = _functions["spring.ProgressiveCoil.at"]
_progressive_coil_deflection_for_force = _functions["spring.ProgressiveCoil.deflection_for_force"]
_progressive_coil_table = _functions["spring.ProgressiveCoil.table"]
_stack_under_load = _functions["spring.Stack.under_load"]
_stack_at_length = _functions["spring.Stack.at_length"]
_stack_closes_first = _functions["spring.Stack.closes_first"]
_stack_table = _functions["spring.Stack.table"]


class LeafPackStress(NamedTuple):
    """Results of `leaf_pack_stress`."""

    full_length_stress: Quantity
    """In the full-length leaves, at the clamp: the greatest."""
    graduated_stress: Quantity
    """In the graduated leaves, two thirds of it; without meaning where there are none."""


class SeriesCrossover(NamedTuple):
    """Results of `series_crossover`."""

    crossover_load: Quantity
    """Load at which the first of the two springs is solid."""
    crossover_deflection: Quantity
    """Shortening of the stack, from its free length, at that load."""
    rate_below: Quantity
    """Rate of the stack up to there."""
    rate_above: Quantity
    """Rate from there on: of the spring that still works."""
    solid_load: Quantity
    """Load at which both springs are solid."""
    solid_deflection: Quantity
    """Shortening of the stack, from its free length, at that load."""


class SettingChoice(NamedTuple):
    """Results of `choice`."""

    bump_setting: str
    """Setting of the bump adjuster."""
    rebound_setting: str
    """Setting of the rebound adjuster."""
    bump_damping: Quantity
    """Secant in bump there, gas force taken off."""
    rebound_damping: Quantity
    """Secant in rebound there."""
    achieved_ratio: Ratio
    """Damping ratio that they give."""
    achieved_rebound_share: Ratio
    """Rebound over both that they give."""
    ratio_error: Ratio
    """Damping ratio that they give less the wanted one: what is left when the adjusters end or their
    steps are coarse.
    """


class Stopped(NamedTuple):
    """Results of `at`."""

    force: Quantity
    """Of the stop."""
    rate: Quantity
    """Tangent rate there."""
    energy: Quantity
    """Taken since contact."""


class AtRideHeight(NamedTuple):
    """Results of `at_ride_height`."""

    spring_force: Quantity
    """Compressive force in the spring: the sprung weight over the motion ratio."""
    spring_length: Quantity
    """Between its seats."""
    sag: Quantity
    """Travel of the wheel from full droop to ride height, all of the droop that is left; negative
    where the preload holds the wheel on the open damper.
    """
    droop_verdict: Literal["meets", "tight", "short", "not known"]
    """Whether that is the droop that is wanted."""
    bump_left: Quantity
    """Travel of the wheel in bump until something ends it; negative where it has ended below ride
    height.
    """
    ends_first: str
    """What ends it: `coil bind` (the minimum gap included), `damper closed` or `bump stop`."""
    bump_verdict: Literal["meets", "tight", "short", "not known"]
    """Whether that is the bump that is wanted."""
    bind_margin: Quantity
    """What the spring could still shorten with the damper closed, the minimum gap kept; negative where
    the coils end before the damper.
    """
    bind_verdict: Literal["meets", "tight", "short", "not known"]
    """Whether the damper stops before coil bind."""
    captive_margin: Quantity
    """How much the spring is compressed at full droop; negative where it is loose."""
    captive_verdict: Literal["meets", "tight", "short", "not known"]
    """Whether it stays captive there."""
    wheel_rate: Quantity
    """Rate of the spring at the wheel, without the tyre."""
    frequency: Quantity
    """Undamped natural frequency of the sprung mass on that rate."""


class DampingAt(NamedTuple):
    """Results of `damping`."""

    bump_damping: Quantity
    """Secant in bump, gas force taken off."""
    rebound_damping: Quantity
    """Secant in rebound, gas force taken off."""
    mean_damping: Quantity
    """Mean of the two: half of each cycle takes its energy by one of them, so that this is their mean
    by energy.
    """
    rebound_share: Ratio
    """Rebound over both."""
    cycle_damping: Quantity
    """Of the linear damper that takes the same energy over a cycle of that peak velocity; above the
    mean where the curve flattens.
    """


class CompressedCoil(NamedTuple):
    """Results of `at`."""

    force: Quantity
    """Compressive."""
    rate: Quantity
    """Tangent rate there."""
    energy: Quantity
    """Stored from the free length."""


class LoadedStack(NamedTuple):
    """Results of `under_load`."""

    length: Quantity
    """Of the whole stack, spacers included."""
    deflection: Quantity
    """Shortening from the free length: what it sags under that load."""
    rate: Quantity
    """Of the springs that are open; of those that close last at the greatest load."""
    closed: int
    """How many springs are closed."""


class HeldStack(NamedTuple):
    """Results of `at_length`."""

    load: Quantity
    """Compressive force that holds it there, the same in every spring."""
    deflection: Quantity
    """Shortening from the free length."""
    rate: Quantity
    """Of the springs that are open; of those that close last at the least length."""
    closed: int
    """How many springs are closed."""


class FirstClosed(NamedTuple):
    """Results of `closes_first`."""

    spring: str
    """Its name; the first in the list of those that close together."""
    load: Quantity
    """Load at which it closes."""
    deflection: Quantity
    """Shortening of the stack from its free length at that load."""
    length: Quantity
    """Length of the stack at that load."""
    rate_below: Quantity
    """Rate of the stack up to there."""
    rate_above: Quantity
    """Rate from there on: of the springs that still work; refused where all close together."""


def active_coils_for_rate(
    *,
    spring_rate: QuantityLike,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    shear_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Active coils with which a helical compression spring has the wanted rate.

    Formula
        `n = G d^4 / (8 D^3 k)`

    Parameters
        spring_rate (linear stiffness): `k`, the rate that is wanted, or that was measured, along
            the spring's own axis
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        shear_modulus (stress or pressure difference): `G` of the wire; 78.5 GPa for hot-coiled and
            81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)

    Returns
        (ratio [-]) The coils that deflect, parts of a coil included; closed ends add about two
        more.

    Valid for (SI)
        - `1 <= spring_rate <= 1000000000`
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `10000000000 <= shear_modulus <= 200000000000`

        The inverse of `coil_rate`, with its limits. Fewer coils are stiffer and have less travel
        before they bind.

    Source
        EN 13906-1:2013, rate of cold-coiled cylindrical springs, solved for the coils; Shigley's
        Mechanical Engineering Design, ch. 10, spring rate

    Caution
        A stiffer or thinner spring is more highly stressed, and stores enough energy to kill: check
        `coil_shear_stress` at solid length, `minimum_gap_clearance` and `buckling_deflection`
        before it is made. A coil is cut off by the maker only: heat takes the temper, and a cut end
        has no seat.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _active_coils_for_rate(spring_rate, wire_diameter, mean_diameter, shear_modulus, invalid)


def air_spring_rate(
    *,
    pressure: QuantityLike,
    station_pressure: QuantityLike,
    effective_area: QuantityLike,
    volume: QuantityLike,
    polytropic_exponent: RatioLike,
    area_growth: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Tangent rate of an air spring, from its gauge pressure, its volume and how its area changes.

    Formula
        `k = n (p + p_a) A^2 / V + p B`

    Parameters
        pressure (gauge pressure): `p`, in the spring at that height, as a gauge reads it
        station_pressure (absolute pressure): `p_a`, of the air around, as measured there, not
            reduced to sea level
        effective_area (area): `A`, load over gauge pressure at that height, as the maker's table
            says
        volume (volume): `V`, of the air at that height, with the tank that is openly joined to it
        polytropic_exponent (ratio): `n`, 1 for slow changes (isothermal), 1.4 for fast ones
            (adiabatic); in between on the road
        area_growth (length): `B`, growth of the effective area over travel in bump: mm²/mm, a
            length; nothing for a straight piston, negative for a waisted one

    Returns
        (linear stiffness [N/m]) Force over travel at that height. It may be negative where a
        waisted piston takes more than the air gives.

    Valid for (SI)
        - `0 <= pressure <= 100000000`
        - `1000 <= station_pressure <= 200000`
        - `0.000001 <= effective_area <= 10`
        - `0.000000001 <= volume <= 100`
        - `1 <= polytropic_exponent <= 2`
        - `-100 <= area_growth <= 100`

        An ideal gas that is shut in, no flow to or from a valve. The compression works on the
        absolute pressure, the change of area on the gauge pressure: that is why the two differ in
        type.

    Source
        Derivative of the force `p A` over the travel, polytropic change; Gillespie, Fundamentals of
        Vehicle Dynamics (1992), ch. 5, and Dixon, The Shock Absorber Handbook, air springs (from
        memory)

    Caution
        An air spring bursts or throws the vehicle: let the air out before anything is undone, keep
        out from under a vehicle that only air holds. Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _air_spring_rate(pressure, station_pressure, effective_area, volume, polytropic_exponent, area_growth, invalid)  # type: ignore[no-any-return]


def anti_roll_bar_diameter_for_rate(
    *,
    bar_rate: QuantityLike,
    arm_length: QuantityLike,
    active_length: QuantityLike,
    shear_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Diameter of the solid anti-roll bar that has the wanted rate at the ends of its arms.

    Formula
        `D = (16 k R^2 L / (pi G))^(1/4)`

    Parameters
        bar_rate (linear stiffness): `k`, wanted force at either end over travel of that end, the
            other end travelling as far the other way
        arm_length (length): `R`, of each arm, square to the axis of the bar, from that axis to its
            link
        active_length (length): `L`, of the bar that twists, between the arms
        shear_modulus (stress or pressure difference): `G`, of the steel, 79 GPa or nearly

    Returns
        (length [m]) Diameter of a solid round bar; the rate rises with its fourth power, so that a
        millimetre on 20 mm is a fifth.

    Valid for (SI)
        - `0.1 <= bar_rate <= 1000000000`
        - `0.001 <= arm_length <= 100`
        - `0.001 <= active_length <= 100`
        - `1000000 <= shear_modulus <= 10000000000000`

        Stiff arms and links: with arms that bend or soft bushes the bar has to be thicker.

    Source
        Inverse of `spring::torsion_bar_rate` and `spring::anti_roll_bar_rate`

    Caution
        A twisted bar stores enough energy to kill; unload it before a lever or a link comes off.
        Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _anti_roll_bar_diameter_for_rate(bar_rate, arm_length, active_length, shear_modulus, invalid)  # type: ignore[no-any-return]


def anti_roll_bar_rate(
    *,
    torsional_rate: QuantityLike,
    arm_length: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of an anti-roll bar at the ends of its arms while they move in opposite directions.

    Formula
        `k = 2 K / R^2`

    Parameters
        torsional_rate (rotational stiffness): `K`, torque over twist of the whole bar, end to end
        arm_length (length): `R`, of each arm, square to the axis of the bar, from that axis to its
            link

    Returns
        (linear stiffness [N/m]) Force at either end over travel of that end, the other end
        travelling as far the other way. While both move alike the bar gives nothing.

    Valid for (SI)
        - `0.001 <= torsional_rate <= 1000000000`
        - `0.001 <= arm_length <= 100`

        Stiff arms and links, bar free to turn in its bearings. Arms that bend and bushes that give
        are springs in series with it: `spring::series_rate`.

    Source
        Twist of `2 z / R` for travels of `z` and `-z`, moment of the end force about the axis;
        Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)

    Caution
        A twisted bar stores enough energy to kill; unload it before a lever or a link comes off.
        Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _anti_roll_bar_rate(torsional_rate, arm_length, invalid)  # type: ignore[no-any-return]


def buckling_deflection(
    *,
    free_length: QuantityLike,
    mean_diameter: QuantityLike,
    end_fixity: RatioLike,
    elastic_modulus: QuantityLike,
    shear_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Deflection from its free length at which a compression spring buckles.

    Formula
        `y = L_0 C_1 (1 - sqrt(1 - C_2 / lambda^2))` with `lambda = nu L_0 / D`, `C_1 = E / (2 (E -
        G))`, `C_2 = 2 pi^2 (E - G) / (2 G + E)`

    Parameters
        free_length (length): `L_0`, of the spring unloaded
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less wire)
        end_fixity (ratio): `nu`, how the ends are held: 0.5 both on flat parallel seats, 0.707 one
            on a flat seat and one pivoted, 1 both pivoted, 2 one on a flat seat and the other free
            to move sideways and to tilt
        elastic_modulus (stress or pressure difference): `E` of the wire; 206 GPa for spring steel
            (EN 13906-1, from memory)
        shear_modulus (stress or pressure difference): `G` of the wire; 78.5 GPa for hot-coiled and
            81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)

    Returns
        (length [m]) The critical deflection. A spring that reaches its solid length before it is
        safe from buckling, guided or not.

    Valid for (SI)
        - `0.0001 <= free_length <= 100`
        - `0.00001 <= mean_diameter <= 10`
        - `0.5 <= end_fixity <= 2`
        - `10000000000 <= elastic_modulus <= 500000000000`
        - `10000000000 <= shear_modulus <= 200000000000`
        - `elastic_modulus > shear_modulus`

        Cylindrical spring of round wire, load on its axis, no rod or sleeve. A spring shorter than
        `pi D / nu sqrt(2 (E - G) / (2 G + E))`, for steel 2.6 `D / nu`, never buckles: then there
        is no such deflection and the call is refused with that length. The wire is an isotropic
        metal, whose Poisson's ratio is not negative: `elastic_modulus` is at least twice
        `shear_modulus`; below that the formula gives more than the length of the spring.

    Source
        Shigley's Mechanical Engineering Design, eq. 10-10 to 10-12 and Table 10-2; EN 13906-1:2013
        has the same formula (from memory); E = 2 G (1 + Poisson's ratio) of an isotropic solid:
        Timoshenko and Goodier, Theory of Elasticity (from memory)

    Caution
        A spring that buckles can leave its seats with all its energy. Guide a long one on a rod or
        in a sleeve, and keep it captive at full droop.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _buckling_deflection(free_length, mean_diameter, end_fixity, elastic_modulus, shear_modulus, invalid)  # type: ignore[no-any-return]


def coil_bind_clearance(
    *,
    free_length: QuantityLike,
    solid_length: QuantityLike,
    spring_rate: QuantityLike,
    spring_load: QuantityLike,
    spring_bump_travel: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """What is left between the coils, summed over the spring, when the wheel is at full bump.

    Formula
        `s = L_0 - F / k - x - L_c`

    Parameters
        free_length (length): `L_0`, of the spring unloaded
        solid_length (length): `L_c`, with every coil touching: measured, or from
            `solid_length_closed_ground` or `solid_length_closed`
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        spring_load (force): `F`, in the spring at ride height, laden as it will be
        spring_bump_travel (length): `x`, shortening of the spring from ride height to full bump:
            wheel travel times motion ratio

    Returns
        (length [m]) The clearance; negative where the coils bind that much before full bump.

    Valid for (SI)
        - `0.0001 <= free_length <= 100`
        - `0.00001 <= solid_length <= 100`
        - `free_length > solid_length`
        - `1 <= spring_rate <= 1000000000`
        - `0 <= spring_load <= 1000000000`
        - `0 <= spring_bump_travel <= 100`

        Linear spring, not preloaded between its seats beyond `spring_load`. EN 13906-1 asks for a
        sum of minimum gaps that this must not go below.

    Source
        Definition of the lengths of a compression spring (EN 13906-1:2013, from memory) and of a
        rate

    Caution
        A bound spring overloads its seats and breaks: the damper or the bump stop must stop the
        wheel before the coils touch.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _coil_bind_clearance(free_length, solid_length, spring_rate, spring_load, spring_bump_travel, invalid)  # type: ignore[no-any-return]


def coil_rate(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    shear_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of a helical compression spring of round wire.

    Formula
        `k = G d^4 / (8 D^3 n)`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends
        shear_modulus (stress or pressure difference): `G` of the wire; 78.5 GPa for hot-coiled and
            81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)

    Returns
        (linear stiffness [N/m]) The rate, which in lb/in is the load that shortens the spring by
        one inch.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0 < active_coils`
        - `10000000000 <= shear_modulus <= 200000000000`

        Linear, small pitch angle, no coil touching another. The standard covers an index `D / d` of
        4 to 20; the direct shear that it neglects adds about 1 / (2 (D/d)^2) to the deflection, 3 %
        at an index of 4 (Shigley, from memory).

    Source
        EN 13906-1:2013, rate of cold-coiled cylindrical springs; Shigley's Mechanical Engineering
        Design, ch. 10, spring rate

    Caution
        A compressed spring stores enough energy to kill. Fit, compress and release it with the
        maker's tools and restraint.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _coil_rate(wire_diameter, mean_diameter, active_coils, shear_modulus, invalid)  # type: ignore[no-any-return]


def coil_shear_stress(
    *,
    load: QuantityLike,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Greatest shear stress in the wire of a helical spring under a load, corrected for curvature
    after Wahl.

    Formula
        `tau = K 8 F D / (pi d^3)` with `K` from `wahl_factor`

    Parameters
        load (force): `F`, along the axis of the spring
        wire_diameter (length): `d`, the diameter of the wire, at its thinnest where it is worn or
            rusted
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)

    Returns
        (stress or pressure difference [Pa]) The shear stress at the inside of the coil.

    Valid for (SI)
        - `0 <= load <= 1000000000`
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`

        Round wire, small pitch angle, load on the axis, elastic, residual stress of setting left
        out. Compare it with the maker's permissible shear stress at solid length, and its range
        with the fatigue strength of the wire; EN 13906-1 has a factor of its own (see
        `wahl_factor`), and leaves the correction away where the load is static.

    Source
        A. M. Wahl, Mechanical Springs, 2nd ed. (1963); Shigley's Mechanical Engineering Design, ch.
        10; EN 13906-1:2013 for its own rule (from memory)

    Caution
        A spring that breaks drops the vehicle and throws its pieces. The permissible stress is the
        maker's to state, for the wire and its treatment.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _coil_shear_stress(load, wire_diameter, mean_diameter, invalid)  # type: ignore[no-any-return]


def critical_damping(
    *,
    tangent_rate: QuantityLike,
    sprung_mass: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Damping at the wheel that just keeps the sprung mass from swinging past its rest position.

    Formula
        `c_c = 2 sqrt(k m)`

    Parameters
        tangent_rate (linear stiffness): `k`, tangent rate at ride height, at the wheel
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass

    Returns
        (damping [N·s/m]) The critical damping at the wheel; at the damper it is this over the
        square of the damper's own motion ratio.

    Valid for (SI)
        - `0 < tangent_rate`
        - `0 < sprung_mass`

        One mass on one linear spring and one viscous damper.

    Source
        Linear oscillator of one degree of freedom; ISO 2041 for the term critical damping (from
        memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _critical_damping(tangent_rate, sprung_mass, invalid)  # type: ignore[no-any-return]


def damped_frequency(
    *,
    undamped_frequency: QuantityLike,
    damping_ratio: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Frequency at which a damped mass on its spring swings.

    Formula
        `f_d = f sqrt(1 - zeta^2)`

    Parameters
        undamped_frequency (frequency): `f`, from `natural_frequency`
        damping_ratio (ratio): `zeta`, share of critical damping, with the same rate and mass as `f`

    Returns
        (frequency [Hz]) The frequency in cycles per time, a little less than the undamped one.

    Valid for (SI)
        - `0 < undamped_frequency <= 1000000`
        - `0 <= damping_ratio < 1`

        One mass on one linear spring and one viscous damper, left to itself. From a ratio of 1 on
        it creeps back without swinging, and there is no frequency.

    Source
        Linear oscillator of one degree of freedom; ISO 2041 for the terms (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _damped_frequency(undamped_frequency, damping_ratio, invalid)  # type: ignore[no-any-return]


def damper_rate_for_ratio(
    *,
    damping_ratio: RatioLike,
    tangent_rate: QuantityLike,
    sprung_mass: QuantityLike,
    damper_motion_ratio: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of the damper itself that gives a wheel the wanted damping ratio.

    Formula
        `c_d = zeta 2 sqrt(k m) / r^2`

    Parameters
        damping_ratio (ratio): `zeta`, wanted share of critical damping
        tangent_rate (linear stiffness): `k`, tangent rate at ride height: wheel rate, or ride rate
            with the tyre in series (say which one it was)
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass
        damper_motion_ratio (ratio): `r`, shortening of the damper, eye to eye, over travel of the
            wheel: the damper's own, not the spring's

    Returns
        (damping [N·s/m]) Force over velocity at the damper, mean of bump and rebound, gas force
        left out.

    Valid for (SI)
        - `0 <= damping_ratio <= 10`
        - `1 <= tangent_rate <= 1000000000`
        - `0.001 <= sprung_mass <= 1000000`
        - `0.05 <= damper_motion_ratio <= 3`

        One mass on one linear spring, one viscous damper for a wheel; one damper for a whole axle
        needs twice this. The damper moves at `r` times the wheel's velocity.

    Source
        Linear oscillator of one degree of freedom, with the virtual power of a lever; ISO 2041 for
        the term damping ratio (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _damper_rate_for_ratio(damping_ratio, tangent_rate, sprung_mass, damper_motion_ratio, invalid)  # type: ignore[no-any-return]


def damping_ratio(
    *,
    wheel_damping: QuantityLike,
    tangent_rate: QuantityLike,
    sprung_mass: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Damping of one wheel as a share of critical damping.

    Formula
        `zeta = c_w / (2 sqrt(k m))`

    Parameters
        wheel_damping (damping): `c_w`, at the wheel: damper rate times the square of the damper's
            own motion ratio
        tangent_rate (linear stiffness): `k`, tangent rate at ride height: wheel rate, or ride rate
            with the tyre in series (say which one it was)
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass

    Returns
        (ratio [-]) The damping ratio; at 1 the mass comes to rest without swinging past.

    Valid for (SI)
        - `0 <= wheel_damping <= 1000000000`
        - `1 <= tangent_rate <= 1000000000`
        - `0.001 <= sprung_mass <= 1000000`

        One mass on one linear spring and one viscous damper. A digressive damper has a ratio at a
        velocity, with the secant there. One damper for an axle: halve it.

    Source
        Linear oscillator of one degree of freedom; ISO 2041 for the term damping ratio (from
        memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _damping_ratio(wheel_damping, tangent_rate, sprung_mass, invalid)


def free_length_for_ride_height(
    *,
    spring_length: QuantityLike,
    spring_load: QuantityLike,
    spring_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Free length of the spring that holds the wanted ride height.

    Formula
        `L_0 = L + F / k`

    Parameters
        spring_length (length): `L`, between the spring's seats at the ride height that is wanted
        spring_load (force): `F`, in the spring there: sprung mass times gravity over motion ratio,
            laden as it will be
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis

    Returns
        (length [m]) The length of the spring unloaded.

    Valid for (SI)
        - `0.00001 <= spring_length <= 100`
        - `0 <= spring_load <= 1000000000`
        - `1 <= spring_rate <= 1000000000`

        Linear spring. New springs settle a little: common practice, no source, is to measure again
        after the first drive. Whether the spring stays captive at full droop is the question of
        `Corner`.

    Source
        Definition of a rate

    Caution
        A compressed spring stores enough energy to kill, and one that is loose at full droop can
        leave its seat on the road.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _free_length_for_ride_height(spring_length, spring_load, spring_rate, invalid)  # type: ignore[no-any-return]


def inclined_tangent_rate(
    *,
    spring_rate: QuantityLike,
    motion_ratio: RatioLike,
    angle_from_measured_travel: QuantityLike,
    spring_force: QuantityLike,
    spring_length: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Wheel rate of a loaded, inclined spring: fixed upper eye, lower eye moving straight up with the
    wheel's travel.

    Formula
        `k_w = r^2 (k cos^2 a - F sin^2 a / L)`

    Parameters
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        motion_ratio (ratio): `r`, travel of the lower eye over travel of the wheel, taken as
            constant
        angle_from_measured_travel (angle): `a`, between the spring's axis and the travel of the
            lower eye
        spring_force (force): `F`, in the spring at this position, compression positive
        spring_length (length): `L`, eye to eye at this position

    Returns
        (linear stiffness [N/m]) The tangent rate at the wheel; it can be negative where the spring
        lies flat under load.

    Valid for (SI)
        - `0 < spring_rate <= 1000000000000`
        - `0 < motion_ratio <= 3`
        - `-1.5707963267948966 <= angle_from_measured_travel <= 1.5707963267948966`
        - `0 <= spring_force <= 1000000000`
        - `0.001 <= spring_length <= 100`

    Source
        Derivative of the vertical force of a pin-ended spring (own derivation from virtual work)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _inclined_tangent_rate(spring_rate, motion_ratio, angle_from_measured_travel, spring_force, spring_length, invalid)  # type: ignore[no-any-return]


def leaf_pack_rate(
    *,
    elastic_modulus: QuantityLike,
    leaf_width: QuantityLike,
    leaf_thickness: QuantityLike,
    span: QuantityLike,
    full_length_leaves: RatioLike,
    graduated_leaves: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of a semi-elliptic leaf spring at the axle in its middle.

    Formula
        `k = 4 E w t^3 (3 n_f + 2 n_g) / (3 L^3)`

    Parameters
        elastic_modulus (stress or pressure difference): `E`, of the steel, 206 GPa or nearly
        leaf_width (length): `w`, of every leaf
        leaf_thickness (length): `t`, of every leaf
        span (length): `L`, from eye to eye, less what the clamp of the axle holds stiff
        full_length_leaves (ratio): `n_f`, whole: leaves that reach from eye to eye, the main leaf
            among them
        graduated_leaves (ratio): `n_g`, whole: leaves that get shorter step by step

    Returns
        (linear stiffness [N/m]) Force at the middle over deflection of the middle.

    Valid for (SI)
        - `1000000 <= elastic_modulus <= 10000000000000`
        - `0.001 <= leaf_width <= 1`
        - `0.0001 <= leaf_thickness <= 0.1`
        - `0.01 <= span <= 10`
        - `1 <= full_length_leaves <= 100`
        - `0 <= graduated_leaves <= 100`

        `full_length_leaves` and `graduated_leaves` are whole numbers. A symmetric semi-elliptic
        spring with the axle in its middle, leaves of one section, steps that follow a triangle. The
        full-length leaves are one beam and the graduated ones another, which deflect alike at the
        eyes; leaves that touch all along are stiffer by up to a twentieth. No friction: it makes
        small movements much stiffer. Deflections small against the span; shackle and camber left
        aside.

    Source
        Beam theory: the graduated leaves make a triangle, the full-length leaves a rectangle,
        deflected alike; SAE HS-788, Manual on Design and Application of Leaf Springs, and the
        handbook form with 2 n_g + 3 n_f (from memory)

    Caution
        A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle
        go. Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _leaf_pack_rate(elastic_modulus, leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves, invalid)  # type: ignore[no-any-return]


def leaf_pack_stress(
    *,
    load: QuantityLike,
    leaf_width: QuantityLike,
    leaf_thickness: QuantityLike,
    span: QuantityLike,
    full_length_leaves: RatioLike,
    graduated_leaves: RatioLike,
    invalid: Invalid = "raise",
) -> LeafPackStress:
    """Bending stress in the leaves of a semi-elliptic leaf spring under a load at its middle.

    Formula
        `sigma_f = 9 F L / (2 w t^2 (3 n_f + 2 n_g))`, `sigma_g = 2 sigma_f / 3`

    Parameters
        load (force): `F`, at the middle, what the spring carries
        leaf_width (length): `w`, of every leaf
        leaf_thickness (length): `t`, of every leaf
        span (length): `L`, from eye to eye, less what the clamp of the axle holds stiff
        full_length_leaves (ratio): `n_f`, whole: leaves that reach from eye to eye, the main leaf
            among them
        graduated_leaves (ratio): `n_g`, whole: leaves that get shorter step by step

    Returns
        full_length_stress (stress or pressure difference [Pa]): in the full-length leaves, at the
            clamp: the greatest
        graduated_stress (stress or pressure difference [Pa]): in the graduated leaves, two thirds
            of it; without meaning where there are none

    Valid for (SI)
        - `-100000000 <= load <= 100000000`
        - `0.001 <= leaf_width <= 1`
        - `0.0001 <= leaf_thickness <= 0.1`
        - `0.01 <= span <= 10`
        - `1 <= full_length_leaves <= 100`
        - `0 <= graduated_leaves <= 100`

        `full_length_leaves` and `graduated_leaves` are whole numbers. A symmetric semi-elliptic
        spring with the axle in its middle, leaves of one section, steps that follow a triangle. The
        full-length leaves are one beam and the graduated ones another, which deflect alike at the
        eyes; leaves that touch all along are stiffer by up to a twentieth. No friction: it makes
        small movements much stiffer. Deflections small against the span; shackle and camber left
        aside. Leaves that were given different curvature (nip) share differently: the main leaf is
        relieved. What braking and drive wind into the spring comes on top.

    Source
        Beam theory: the graduated leaves make a triangle, the full-length leaves a rectangle,
        deflected alike; SAE HS-788, Manual on Design and Application of Leaf Springs, and the
        handbook form with 2 n_g + 3 n_f (from memory)

    Caution
        A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle
        go. Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return LeafPackStress(*_leaf_pack_stress(load, leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves, invalid))


def minimum_gap_cold_static(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Sum of the gaps that must stay open between the coils of a cold-coiled spring under a load that
    stays.

    Formula
        `S_a = n (0.0015 D^2 / d + 0.1 d)`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends

    Returns
        (length [m]) What must be left above the solid length at the shortest length in service, all
        gaps together.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0.1 <= active_coils <= 1000`

        Cylindrical spring of round wire, linear rate. A suspension spring works: use
        `minimum_gap_cold_dynamic`. Car springs of thick wire are often hot coiled: ask the maker.

    Source
        EN 13906-1:2013, sum of minimum gaps between coils (from memory)

    Caution
        A spring worked closer to its solid length strikes coil on coil and can break. The maker's
        drawing comes first, and a stop must end the travel before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _minimum_gap_cold_static(wire_diameter, mean_diameter, active_coils, invalid)  # type: ignore[no-any-return]


def minimum_gap_cold_dynamic(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Sum of the gaps that must stay open between the coils of a cold-coiled spring under a load that
    changes.

    Formula
        `S_a = 1.5 n (0.0015 D^2 / d + 0.1 d)`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends

    Returns
        (length [m]) What must be left above the solid length at the shortest length in service, all
        gaps together.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0.1 <= active_coils <= 1000`

        Cylindrical spring of round wire, linear rate. The half above the static gap is the
        standard's round figure for dynamic loading.

    Source
        EN 13906-1:2013, sum of minimum gaps between coils (from memory)

    Caution
        A spring worked closer to its solid length strikes coil on coil and can break. The maker's
        drawing comes first, and a stop must end the travel before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _minimum_gap_cold_dynamic(wire_diameter, mean_diameter, active_coils, invalid)  # type: ignore[no-any-return]


def minimum_gap_hot_static(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Sum of the gaps that must stay open between the coils of a hot-coiled spring under a load that
    stays.

    Formula
        `S_a = 0.02 n (D + d)`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends

    Returns
        (length [m]) What must be left above the solid length at the shortest length in service, all
        gaps together.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0.1 <= active_coils <= 1000`

        Cylindrical spring of round wire, linear rate. A suspension spring works: use
        `minimum_gap_hot_dynamic`.

    Source
        EN 13906-1:2013, sum of minimum gaps between coils (from memory)

    Caution
        A spring worked closer to its solid length strikes coil on coil and can break. The maker's
        drawing comes first, and a stop must end the travel before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _minimum_gap_hot_static(wire_diameter, mean_diameter, active_coils, invalid)  # type: ignore[no-any-return]


def minimum_gap_hot_dynamic(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Sum of the gaps that must stay open between the coils of a hot-coiled spring under a load that
    changes.

    Formula
        `S_a = 0.04 n (D + d)`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends

    Returns
        (length [m]) What must be left above the solid length at the shortest length in service, all
        gaps together.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0.1 <= active_coils <= 1000`

        Cylindrical spring of round wire, linear rate. Twice the static gap is the standard's round
        figure for dynamic loading.

    Source
        EN 13906-1:2013, sum of minimum gaps between coils (from memory)

    Caution
        A spring worked closer to its solid length strikes coil on coil and can break. The maker's
        drawing comes first, and a stop must end the travel before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _minimum_gap_hot_dynamic(wire_diameter, mean_diameter, active_coils, invalid)  # type: ignore[no-any-return]


def minimum_gap_clearance(
    *,
    free_length: QuantityLike,
    shortest_length: QuantityLike,
    spring_rate: QuantityLike,
    spring_load: QuantityLike,
    spring_bump_travel: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """What is left above the minimum gap between the coils when the wheel is at full bump.

    Formula
        `s = L_0 - F / k - x - L_n`

    Parameters
        free_length (length): `L_0`, of the spring unloaded
        shortest_length (length): `L_n`, at which it may work: `spring::shortest_length`
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        spring_load (force): `F`, in the spring at ride height, laden as it will be
        spring_bump_travel (length): `x`, shortening of the spring from ride height to full bump:
            wheel travel times motion ratio

    Returns
        (length [m]) The clearance above the minimum gap; negative where the coils come that much
        too close.

    Valid for (SI)
        - `0.0001 <= free_length <= 100`
        - `0.00001 <= shortest_length <= 100`
        - `free_length > shortest_length`
        - `1 <= spring_rate <= 1000000000`
        - `0 <= spring_load <= 1000000000`
        - `0 <= spring_bump_travel <= 100`

        Linear spring, not preloaded between its seats beyond `spring_load`.

    Source
        Definition of the lengths of a compression spring (EN 13906-1:2013, from memory) and of a
        rate

    Caution
        A bound spring overloads its seats and breaks: the damper or the bump stop must stop the
        wheel before this is used up.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _minimum_gap_clearance(free_length, shortest_length, spring_rate, spring_load, spring_bump_travel, invalid)  # type: ignore[no-any-return]


def natural_frequency(
    *,
    tangent_rate: QuantityLike,
    sprung_mass: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Undamped natural frequency of the sprung mass on its spring.

    Formula
        `f = sqrt(k / m) / (2 pi)`

    Parameters
        tangent_rate (linear stiffness): `k`, tangent rate at ride height: at the wheel, or with the
            tyre in series (say which one it was)
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass

    Returns
        (frequency [Hz]) The frequency in cycles per time.

    Valid for (SI)
        - `0 < tangent_rate`
        - `0 < sprung_mass`

        One mass on one linear spring, without damping.

    Source
        Simple harmonic motion; Shigley's Mechanical Engineering Design, ch. 10 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _natural_frequency(tangent_rate, sprung_mass, invalid)  # type: ignore[no-any-return]


def parallel_rate(
    *,
    first_rate: QuantityLike,
    second_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of two springs side by side or nested in each other, both shortened by the same travel.

    Formula
        `k = k_1 + k_2`

    Parameters
        first_rate (linear stiffness): `k_1`, of one spring
        second_rate (linear stiffness): `k_2`, of the other

    Returns
        (linear stiffness [N/m]) The rate of the pair.

    Valid for (SI)
        - `1 <= first_rate <= 1000000000`
        - `1 <= second_rate <= 1000000000`

        Only while both touch their seats: where one is shorter, its rate adds from the travel at
        which it is met. Nested springs are wound in opposite directions, so that their coils cannot
        lock.

    Source
        Springs in parallel: equal deflection, forces add (Hooke's law)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _parallel_rate(first_rate, second_rate, invalid)  # type: ignore[no-any-return]


def ride_rate(
    *,
    wheel_rate: QuantityLike,
    tyre_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate between body and ground: the wheel rate and the tyre's rate in series.

    Formula
        `k_r = k_w k_t / (k_w + k_t)`

    Parameters
        wheel_rate (linear stiffness): `k_w`, of the suspension at the wheel
        tyre_rate (linear stiffness): `k_t`, vertical rate of the tyre at its pressure and load

    Returns
        (linear stiffness [N/m]) The ride rate, always less than either.

    Valid for (SI)
        - `0 < wheel_rate`
        - `0 < tyre_rate`

    Source
        Springs in series; SAE J670 for the term ride rate (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _ride_rate(wheel_rate, tyre_rate, invalid)  # type: ignore[no-any-return]


def series_crossover(
    *,
    first_rate: QuantityLike,
    first_travel_to_solid: QuantityLike,
    second_rate: QuantityLike,
    second_travel_to_solid: QuantityLike,
    invalid: Invalid = "raise",
) -> SeriesCrossover:
    """Load and deflection at which one of two stacked springs goes solid and the stack takes the rate
    of the other.

    Formula
        `F_i = k_i s_i`; crossover at the smaller, `F = min(F_1, F_2)`, with `x = F / k_1 + F /
        k_2`; solid at the greater, with `x = s_1 + s_2`

    Parameters
        first_rate (linear stiffness): `k_1`, of one spring
        first_travel_to_solid (length): `s_1`, its free length less its solid length, or less the
            length at which a stop takes over
        second_rate (linear stiffness): `k_2`, of the other
        second_travel_to_solid (length): `s_2`, its free length less its solid length, or less the
            length at which a stop takes over

    Returns
        crossover_load (force [N]): load at which the first of the two springs is solid
        crossover_deflection (length [m]): shortening of the stack, from its free length, at that
            load
        rate_below (linear stiffness [N/m]): rate of the stack up to there
        rate_above (linear stiffness [N/m]): rate from there on: of the spring that still works
        solid_load (force [N]): load at which both springs are solid
        solid_deflection (length [m]): shortening of the stack, from its free length, at that load

    Valid for (SI)
        - `1 <= first_rate <= 1000000000`
        - `0.000001 <= first_travel_to_solid <= 100`
        - `1 <= second_rate <= 1000000000`
        - `0.000001 <= second_travel_to_solid <= 100`

        Linear springs that go solid at once, no preload, no friction of the slider between them.
        Which one is solid first is decided by rate times travel, not by the rate alone; the order
        of the two does not matter. Where both are solid at the same load there is no crossover and
        the call is refused.

    Source
        Springs in series: equal force, deflections add (Hooke's law)

    Caution
        A stack of springs stores energy like one; keep it captive on its slider at full droop,
        where the softer one may go slack.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return SeriesCrossover(*_series_crossover(first_rate, first_travel_to_solid, second_rate, second_travel_to_solid, invalid))


def series_rate(
    *,
    first_rate: QuantityLike,
    second_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of two springs stacked on each other, each carrying the whole load.

    Formula
        `k = k_1 k_2 / (k_1 + k_2)`

    Parameters
        first_rate (linear stiffness): `k_1`, of one spring
        second_rate (linear stiffness): `k_2`, of the other

    Returns
        (linear stiffness [N/m]) The rate of the stack, always less than either.

    Valid for (SI)
        - `1 <= first_rate <= 1000000000`
        - `1 <= second_rate <= 1000000000`

        Only while neither is solid: from then on the other one works alone (see
        `series_crossover`).

    Source
        Springs in series: equal force, deflections add (Hooke's law)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _series_rate(first_rate, second_rate, invalid)  # type: ignore[no-any-return]


def shortest_length(
    *,
    solid_length: QuantityLike,
    minimum_gap: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Shortest length at which a compression spring may work.

    Formula
        `L_n = L_c + S_a`

    Parameters
        solid_length (length): `L_c`, with every coil touching: measured, or from
            `solid_length_closed_ground` or `solid_length_closed`
        minimum_gap (length): `S_a`, sum of the gaps that must stay open, as the maker says, or from
            `minimum_gap_cold_dynamic` or `minimum_gap_hot_dynamic`

    Returns
        (length [m]) The length that no travel, laden and in bump, may go below.

    Valid for (SI)
        - `0.00001 <= solid_length <= 100`
        - `0 <= minimum_gap <= 100`

    Source
        Definition of the smallest permissible length (EN 13906-1:2013, from memory)

    Caution
        A spring worked closer to its solid length strikes coil on coil and can break: a stop must
        end the travel before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _shortest_length(solid_length, minimum_gap, invalid)  # type: ignore[no-any-return]


def solid_length_closed_ground(
    *,
    total_coils: RatioLike,
    wire_diameter: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Solid (block) length of a compression spring with closed and ground ends.

    Formula
        `L_c = n_t d`

    Parameters
        total_coils (ratio): `n_t`, all coils counted, the dead ones at the ends included
        wire_diameter (length): `d`, the greatest that the wire's tolerance allows, coating included

    Returns
        (length [m]) The length at which every coil touches the next.

    Valid for (SI)
        - `2 < total_coils <= 1000`
        - `0.00001 <= wire_diameter <= 1`

        Cylindrical spring, ends closed and ground flat. Here Shigley and EN 13906-1 agree; a spring
        must not be worked to this length (EN 13906-1 asks for a minimum gap between coils above
        it).

    Source
        Shigley's Mechanical Engineering Design, Table 10-1, squared and ground; EN 13906-1:2013,
        solid length of ground ends (from memory)

    Caution
        A suspension that drives its spring solid hits as if it had none, and the spring can break:
        the bump stop or the damper must stop it before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _solid_length_closed_ground(total_coils, wire_diameter, invalid)  # type: ignore[no-any-return]


def solid_length_closed(
    *,
    total_coils: RatioLike,
    wire_diameter: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Solid (block) length of a compression spring with closed ends that are not ground, by Shigley's
    rule.

    Formula
        `L_c = (n_t + 1) d`

    Parameters
        total_coils (ratio): `n_t`, all coils counted, the dead ones at the ends included
        wire_diameter (length): `d`, the greatest that the wire's tolerance allows, coating included

    Returns
        (length [m]) The length at which every coil touches the next.

    Valid for (SI)
        - `2 < total_coils <= 1000`
        - `0.00001 <= wire_diameter <= 1`

        Cylindrical spring, ends closed and left round. EN 13906-1 allows up to `(n_t + 1.5) d`,
        half a wire longer: take that half off a clearance where the spring is not measured.

    Source
        Shigley's Mechanical Engineering Design, Table 10-1, squared or closed; EN 13906-1:2013,
        solid length of ends not ground (from memory)

    Caution
        A suspension that drives its spring solid hits as if it had none, and the spring can break:
        the bump stop or the damper must stop it before.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _solid_length_closed(total_coils, wire_diameter, invalid)  # type: ignore[no-any-return]


def spring_rate_for_frequency(
    *,
    frequency: QuantityLike,
    sprung_mass: QuantityLike,
    motion_ratio: RatioLike,
    angle_from_measured_travel: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of the spring to order, so that the sprung mass on it swings at the wanted frequency.

    Formula
        `k = (2 pi f)^2 m / (r^2 cos^2 a)`

    Parameters
        frequency (frequency): `f`, undamped natural frequency that is wanted, on the wheel rate:
            the tyre left out
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass
        motion_ratio (ratio): `r`, travel of the spring's mount over travel of the wheel
        angle_from_measured_travel (angle): `a`, between the spring's axis and the direction in
            which the mount's travel was measured; zero where `r` was measured eye to eye along the
            spring

    Returns
        (linear stiffness [N/m]) The rate of the spring along its own axis.

    Valid for (SI)
        - `0.01 <= frequency <= 100`
        - `0.001 <= sprung_mass <= 1000000`
        - `0.05 <= motion_ratio <= 3`
        - `-1.4 <= angle_from_measured_travel <= 1.4`

        The inverse of `wheel_rate` and `natural_frequency`, with their limits: the geometric term
        of a loaded spring that turns or changes its ratio is left out, so a spring at 30 degrees
        swings slower than asked; check the choice with `inclined_tangent_rate`. The nearer to
        square the spring stands, the more its rate runs away: beyond 1.4 rad (80 degrees) the call
        is refused, and at 90 degrees no rate is enough.

    Source
        Virtual work on a lever and simple harmonic motion, solved for the rate of the spring; the
        sources of `wheel_rate` and `natural_frequency`

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _spring_rate_for_frequency(frequency, sprung_mass, motion_ratio, angle_from_measured_travel, invalid)  # type: ignore[no-any-return]


def static_deflection(
    *,
    load: QuantityLike,
    tangent_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Deflection of a linear spring under a load, from its free length.

    Formula
        `x = F / k`

    Parameters
        load (force): `F`, on the spring
        tangent_rate (linear stiffness): `k`, constant over the whole deflection

    Returns
        (length [m]) The deflection.

    Valid for (SI)
        - `0 <= load`
        - `0 < tangent_rate`

        Only where the spring is linear from its free length and not preloaded; sag on a linkage is
        an integral of the force instead.

    Source
        Definition of a rate (Hooke's law)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _static_deflection(load, tangent_rate, invalid)  # type: ignore[no-any-return]


def stored_energy(
    *,
    spring_rate: QuantityLike,
    deflection: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Energy that a linear spring holds at a deflection.

    Formula
        `U = k x^2 / 2`

    Parameters
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        deflection (length): `x`, from its free length: preload included, not only the travel of the
            wheel

    Returns
        (energy [J]) The energy that is set free when the spring is let go.

    Valid for (SI)
        - `1 <= spring_rate <= 1000000000`
        - `0 <= deflection <= 100`

        Linear from its free length on; a progressive spring holds more than its first rate says and
        less than its last one.

    Source
        Work of a linear force along the travel (Hooke's law)

    Caution
        This energy is enough to kill. Compress, hold and release a spring only with a compressor
        made for it, in sound order, and stand out of its line.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _stored_energy(spring_rate, deflection, invalid)  # type: ignore[no-any-return]


def surge_frequency(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    shear_modulus: QuantityLike,
    density: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Lowest frequency at which the coils of a spring between two flat seats surge to and fro by
    themselves.

    Formula
        `f = sqrt(k / m) / 2` with `k = G d^4 / (8 D^3 n)` and the mass of the active wire `m = pi^2
        d^2 D n rho / 4`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends
        shear_modulus (stress or pressure difference): `G` of the wire; 78.5 GPa for hot-coiled and
            81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
        density (density): `rho` of the wire; 7850 kg/m³ for steel

    Returns
        (frequency [Hz]) The first natural frequency of the spring itself; the next ones are twice,
        three times ... this.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`
        - `0.5 <= active_coils <= 1000`
        - `10000000000 <= shear_modulus <= 200000000000`
        - `500 <= density <= 25000`

        Both ends in contact with plates, one of them driven; with one end free it is half of this.
        Shigley advises 15 to 20 times the frequency of the motion, so that no harmonic of it meets
        the spring.

    Source
        Shigley's Mechanical Engineering Design, eq. 10-25 (after Wolford and Smith); wave equation
        of a slender spring (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _surge_frequency(wire_diameter, mean_diameter, active_coils, shear_modulus, density, invalid)  # type: ignore[no-any-return]


def tangent_rate_for_frequency(
    *,
    frequency: QuantityLike,
    sprung_mass: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Tangent rate at the wheel that gives a sprung mass the wanted natural frequency.

    Formula
        `k = (2 pi f)^2 m`

    Parameters
        frequency (frequency): `f`, undamped natural frequency that is wanted
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass

    Returns
        (linear stiffness [N/m]) The rate at ride height: the ride rate where the tyre is to be part
        of the frequency, else the wheel rate (say which one it was).

    Valid for (SI)
        - `0.01 <= frequency <= 100`
        - `0.001 <= sprung_mass <= 1000000`

        One mass on one linear spring, without damping.

    Source
        Simple harmonic motion, solved for the rate; Shigley's Mechanical Engineering Design, ch. 10
        (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _tangent_rate_for_frequency(frequency, sprung_mass, invalid)  # type: ignore[no-any-return]


def torsion_bar_arm_rate(
    *,
    torsional_rate: QuantityLike,
    arm_length: QuantityLike,
    arm_angle: QuantityLike,
    torque: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Vertical rate at the end of a torsion bar's arm, with what the leaning arm adds.

    Formula
        `k = (K + T tan(b)) / (R cos(b))^2`

    Parameters
        torsional_rate (rotational stiffness): `K`, torque over twist of the whole bar, end to end
        arm_length (length): `R`, of the arm, from the axis of the bar to its end
        arm_angle (angle): `b`, of the arm above the horizontal, positive where its end is higher
            than the bar
        torque (torque): `T`, in the bar there, positive where it presses the end of the arm down

    Returns
        (linear stiffness [N/m]) Tangent rate: vertical force over vertical travel at the end of the
        arm. Negative where the arm folds: nothing brings it back there.

    Valid for (SI)
        - `0.001 <= torsional_rate <= 1000000000`
        - `0.001 <= arm_length <= 100`
        - `-1.4 <= arm_angle <= 1.4`
        - `-1000000000 <= torque <= 1000000000`

        A stiff arm square to the bar, moved by a vertical force. From there to the wheel the motion
        ratio of what lies between counts with its square.

    Source
        Derivative of the vertical force `T / (R cos(b))` over the travel `R sin(b)`; Milliken and
        Milliken, Race Car Vehicle Dynamics (1995), ch. 21 (from memory)

    Caution
        A twisted bar stores enough energy to kill; unload it before a lever or a link comes off.
        Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _torsion_bar_arm_rate(torsional_rate, arm_length, arm_angle, torque, invalid)  # type: ignore[no-any-return]


def torsion_bar_rate(
    *,
    shear_modulus: QuantityLike,
    inner_diameter: QuantityLike,
    outer_diameter: QuantityLike,
    active_length: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Torque over twist of a round torsion bar, solid or bored.

    Formula
        `K = pi G (D^4 - d^4) / (32 L)`

    Parameters
        shear_modulus (stress or pressure difference): `G`, of the steel, 79 GPa or nearly
        inner_diameter (length): `d`, bore of the bar; nothing for a solid one
        outer_diameter (length): `D`, of the bar where it twists
        active_length (length): `L`, that twists: between the splines or bearings that hold it, with
            what the ends add

    Returns
        (rotational stiffness [N·m/rad]) Torque over the angle between the ends.

    Valid for (SI)
        - `1000000 <= shear_modulus <= 10000000000000`
        - `0 <= inner_diameter <= 1`
        - `0.001 <= outer_diameter <= 1`
        - `outer_diameter > inner_diameter`
        - `0.001 <= active_length <= 100`

        A straight round bar of one diameter, elastic. Splines and tapers at the ends twist a
        little, too: the active length is longer than the plain one.

    Source
        Saint-Venant torsion of a circular section; Shigley's Mechanical Engineering Design, ch. 3,
        torsion (from memory)

    Caution
        A twisted bar stores enough energy to kill; unload it before a lever or a link comes off.
        Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _torsion_bar_rate(shear_modulus, inner_diameter, outer_diameter, active_length, invalid)  # type: ignore[no-any-return]


def torsion_bar_stress(
    *,
    torque: QuantityLike,
    inner_diameter: QuantityLike,
    outer_diameter: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Greatest shear stress in a round torsion bar, at its surface.

    Formula
        `tau = 16 T D / (pi (D^4 - d^4))`

    Parameters
        torque (torque): `T`, that twists the bar
        inner_diameter (length): `d`, bore of the bar; nothing for a solid one
        outer_diameter (length): `D`, of the bar where it twists

    Returns
        (stress or pressure difference [Pa]) Shear stress at the surface, with the sign of the
        torque.

    Valid for (SI)
        - `-1000000000 <= torque <= 1000000000`
        - `0 <= inner_diameter <= 1`
        - `0.001 <= outer_diameter <= 1`
        - `outer_diameter > inner_diameter`

        A straight round bar, elastic, without presetting: a bar that is preset in one direction
        bears more in it and less in the other. Bending and the notch of a spline come on top.

    Source
        Saint-Venant torsion of a circular section; Shigley's Mechanical Engineering Design, ch. 3,
        torsion (from memory)

    Caution
        A twisted bar stores enough energy to kill; unload it before a lever or a link comes off.
        Local codes and licensed practice come first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _torsion_bar_stress(torque, inner_diameter, outer_diameter, invalid)  # type: ignore[no-any-return]


def wahl_factor(
    *,
    wire_diameter: QuantityLike,
    mean_diameter: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Wahl's factor: by how much curvature and direct shear raise the stress at the inside of a coil.

    Formula
        `K = (4 C - 1) / (4 C - 4) + 0.615 / C` with the spring index `C = D / d`

    Parameters
        wire_diameter (length): `d`, the diameter of the wire
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)

    Returns
        (ratio [-]) The factor on the plain torsional stress `8 F D / (pi d^3)`, always above 1.

    Valid for (SI)
        - `0.00001 <= wire_diameter <= 1`
        - `0.00001 <= mean_diameter <= 10`
        - `mean_diameter > wire_diameter`

        Round wire. EN 13906-1 covers an index of 4 to 20 and uses Bergsträsser's factor `(C + 0.5)
        / (C - 0.75)` instead, lower by 1.4 % at an index of 4, 1.2 % at 6 and 0.9 % at 10. Below an
        index of 3 the factor runs away and so does the making of such a spring.

    Source
        A. M. Wahl, Mechanical Springs, 2nd ed. (1963); Shigley's Mechanical Engineering Design, ch.
        10; EN 13906-1:2013 for the other factor (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wahl_factor(wire_diameter, mean_diameter, invalid)


def wheel_damping(
    *,
    damper_rate: QuantityLike,
    damper_motion_ratio: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Damping at the wheel of a damper on a lever.

    Formula
        `c_w = c_d r^2`

    Parameters
        damper_rate (damping): `c_d`, force over velocity of the damper itself; of a digressive one
            the secant at the velocity in question, gas force removed, mean of bump and rebound
        damper_motion_ratio (ratio): `r`, shortening of the damper, eye to eye, over travel of the
            wheel: the damper's own, not the spring's

    Returns
        (damping [N·s/m]) The damping at the wheel.

    Valid for (SI)
        - `0 <= damper_rate <= 1000000000`
        - `0 < damper_motion_ratio <= 3`

        One damper for a wheel; of one that serves a whole axle each wheel gets half. The damper
        moves at `r` times the wheel's velocity: read its curve there.

    Source
        Virtual power on a lever: `c_d (r v)^2 = c_w v^2`

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_damping(damper_rate, damper_motion_ratio, invalid)  # type: ignore[no-any-return]


def wheel_rate(
    *,
    spring_rate: QuantityLike,
    motion_ratio: RatioLike,
    angle_from_measured_travel: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Wheel rate of a spring on a lever, from its motion ratio and its angle: the part that does not
    depend on load.

    Formula
        `k_w = k r^2 cos^2 a`

    Parameters
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        motion_ratio (ratio): `r`, travel of the spring's mount over travel of the wheel
        angle_from_measured_travel (angle): `a`, between the spring's axis and the direction in
            which the mount's travel was measured; zero where `r` was measured eye to eye along the
            spring

    Returns
        (linear stiffness [N/m]) The rate at the wheel centre, for small travel around the position
        where `r` and `a` were measured.

    Valid for (SI)
        - `0 < spring_rate`
        - `0 < motion_ratio <= 3`
        - `-1.5707963267948966 <= angle_from_measured_travel <= 1.5707963267948966`

        Not the whole wheel rate: a loaded spring that changes its angle or its ratio along the
        travel adds a geometric term, given by `wheel_tangent_rate` and `inclined_tangent_rate`. For
        40 N/mm, 4 kN and 350 mm it is -9.5 % at 30 degrees and -29 % at 45 degrees of this result.
        A motion ratio between 1 and 3 is accepted and is rare: it is often one turned upside down.
        Use a ratio along the spring *or* an angle, never both for the same thing.

    Source
        Virtual work on a lever; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16,
        installation ratio (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_rate(spring_rate, motion_ratio, angle_from_measured_travel, invalid)  # type: ignore[no-any-return]


def wheel_tangent_rate(
    *,
    spring_rate: QuantityLike,
    motion_ratio: RatioLike,
    spring_force: QuantityLike,
    motion_ratio_gradient: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Wheel rate of a loaded spring whose motion ratio changes along the travel.

    Formula
        `k_w = k r^2 + F dr/dz`

    Parameters
        spring_rate (linear stiffness): `k`, the rate of the spring along its own axis
        motion_ratio (ratio): `r`, shortening of the spring, eye to eye, over travel of the wheel
        spring_force (force): `F`, in the spring at this position, compression positive, gas force
            of its damper included
        motion_ratio_gradient (ratio per length): `dr/dz`, change of `r` with wheel travel, positive
            where `r` grows in bump

    Returns
        (linear stiffness [N/m]) The tangent rate at the wheel; it can be negative where the
        geometry outweighs the spring.

    Valid for (SI)
        - `0 < spring_rate`
        - `0 < motion_ratio <= 3`
        - `0 <= spring_force`
        - `motion_ratio_gradient finite`

    Source
        Derivative of the wheel force `F r` with respect to travel (virtual work); SAE J670 for
        wheel rate as a tangent (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wheel_tangent_rate(spring_rate, motion_ratio, spring_force, motion_ratio_gradient, invalid)  # type: ignore[no-any-return]


def wire_diameter_for_rate(
    *,
    spring_rate: QuantityLike,
    mean_diameter: QuantityLike,
    active_coils: RatioLike,
    shear_modulus: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Wire from which a helical compression spring gets the wanted rate.

    Formula
        `d = (8 D^3 n k / G)^(1/4)`

    Parameters
        spring_rate (linear stiffness): `k`, the rate that is wanted, along the spring's own axis
        mean_diameter (length): `D`, the diameter of the coil between wire centres (outside diameter
            less `d`)
        active_coils (ratio): `n`, the coils that deflect: total coils less the dead ones at the
            ends
        shear_modulus (stress or pressure difference): `G` of the wire; 78.5 GPa for hot-coiled and
            81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)

    Returns
        (length [m]) The diameter of the round wire; 1 % of wire is 4 % of rate.

    Valid for (SI)
        - `1 <= spring_rate <= 1000000000`
        - `0.00001 <= mean_diameter <= 10`
        - `0.1 <= active_coils <= 1000`
        - `10000000000 <= shear_modulus <= 200000000000`

        The inverse of `coil_rate`, with its limits; refused where the wire would be as thick as the
        coil. The mean diameter is held: with the inside or outside diameter held instead, set `D`
        again from the result and repeat.

    Source
        EN 13906-1:2013, rate of cold-coiled cylindrical springs, solved for the wire; Shigley's
        Mechanical Engineering Design, ch. 10, spring rate

    Caution
        A stiffer or thinner spring is more highly stressed, and stores enough energy to kill: check
        `coil_shear_stress` at solid length, `minimum_gap_clearance` and `buckling_deflection`
        before it is made.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wire_diameter_for_rate(spring_rate, mean_diameter, active_coils, shear_modulus, invalid)  # type: ignore[no-any-return]


class AdjustableDamper(Model):
    """A damper with an adjuster for bump and another for rebound, each measured at its settings.

    Formula
        Wanted secants `c_b = 2 c (1 - s)` and `c_r = 2 c s` with `c = zeta 2 sqrt(k m) / r^2`; of
        each adjuster the setting whose secant `F(v) / v` is nearest, the first one where two are as
        near

    Fields
        gas_force (force): that pushes the rod out at rest and is in every force of the points
        bump (list): settings of the bump adjuster, each with its name (`setting`) and its points,
            velocities above nothing
        rebound (list): settings of the rebound adjuster, each with its name and its points,
            velocities below nothing

    Valid for
        Adjusters that leave each other alone: measure bump at the middle setting of rebound and the
        other way round; some dampers change both. Velocities up to the last point of a setting:
        beyond it that setting is left out. Otherwise as `spring::DamperCurve`.

    Source
        Secant at a velocity, gas force removed; Milliken and Milliken, Race Car Vehicle Dynamics
        (1995), ch. 22 (from memory)

    Caution
        Settings that suit a figure may not suit the road: change little at a time, both sides of an
        axle alike. Local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "spring.AdjustableDamper"
    _kinds = {"gas_force": "Force"}

    def __init__(
        self,
        *,
        gas_force: QuantityLike,
        bump: Sequence[Mapping[str, Any]],
        rebound: Sequence[Mapping[str, Any]],
    ) -> None:
        self._build(
            gas_force=gas_force,
            bump=bump,
            rebound=rebound,
        )

    @property
    def gas_force(self) -> Quantity:
        """That pushes the rod out at rest and is in every force of the points."""
        return self._read("gas_force", "Force")  # type: ignore[no-any-return]

    @property
    def bump(self) -> list[dict[str, Any]]:
        """Settings of the bump adjuster, each with its name (`setting`) and its points, velocities above
        nothing.
        """
        return self._read("bump")  # type: ignore[no-any-return]

    @property
    def rebound(self) -> list[dict[str, Any]]:
        """Settings of the rebound adjuster, each with its name and its points, velocities below nothing."""
        return self._read("rebound")  # type: ignore[no-any-return]

    def choice(self, *, velocity: QuantityLike, wanted_ratio: RatioLike, rebound_share: RatioLike, damper_motion_ratio: RatioLike, tangent_rate: QuantityLike, sprung_mass: QuantityLike) -> SettingChoice:
        """The setting of each adjuster that comes nearest to a wanted damping ratio and split.

        Parameters
            velocity (velocity): of the damper, without sign: that of the wheel times the motion ratio
            wanted_ratio (ratio): damping ratio, mean of bump and rebound
            rebound_share (ratio): wanted rebound over both; two thirds are common practice on the road,
                no source
            damper_motion_ratio (ratio): shortening of the damper over travel of the wheel
            tangent_rate (linear stiffness): wheel rate, or ride rate with the tyre in series (say which
                one it was)
            sprung_mass (mass): the scale reading of the wheel less its unsprung mass

        Returns
            bump_setting (text): setting of the bump adjuster
            rebound_setting (text): setting of the rebound adjuster
            bump_damping (damping [N·s/m]): secant in bump there, gas force taken off
            rebound_damping (damping [N·s/m]): secant in rebound there
            achieved_ratio (ratio [-]): damping ratio that they give
            achieved_rebound_share (ratio [-]): rebound over both that they give
            ratio_error (ratio [-]): damping ratio that they give less the wanted one: what is left when
                the adjusters end or their steps are coarse

        Valid for (SI)
            - `0 < velocity <= 100`
            - `0 < wanted_ratio <= 10`
            - `0 < rebound_share < 1`
            - `0.05 <= damper_motion_ratio <= 3`
            - `1 <= tangent_rate <= 1000000000`
            - `0.001 <= sprung_mass <= 1000000`

            Each adjuster is set by itself: the sum of squares of both misses is the least there is.
        """
        return SettingChoice(*_adjustable_damper_choice(self._handle, velocity, wanted_ratio, rebound_share, damper_motion_ratio, tangent_rate, sprung_mass))

    def table(self, *, velocity: QuantityLike) -> Table:
        """Every pair of settings over velocities.

        Parameters
            velocity (velocity), several: of the damper, without sign

        Returns
            (table) One row a velocity and pair: `velocity`, `bump_setting`, `rebound_setting`,
            `bump_damping`, `rebound_damping`, `mean_damping`, `rebound_share`; a velocity beyond the
            points of a setting is a refused row.
        """
        return _adjustable_damper_table(self._handle, velocity)  # type: ignore[no-any-return]


class BumpStop(Model):
    """A bump stop's force over compression through points, as its maker prints or a press measures
    them.

    Formula
        Piecewise cubic `F(x)` through the points with monotone slopes (Fritsch and Butland),
        nothing before contact; rate `F'(x)`, energy the integral of `F`

    Fields
        points (list): in order of compression, each with `compression` and `force`; contact at no
            compression and no force is added where it is missing

    Valid for
        Compressions up to the last point, and none before contact; beyond the points nothing is
        known and nothing is guessed. Forces that never fall. A slow press: rubber and foam are
        stiffer in a fast blow, and give back less than they took.

    Source
        Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's
        PchipInterpolator
    """

    __slots__ = ()
    _name = "spring.BumpStop"
    _kinds = {}

    def __init__(
        self,
        *,
        points: Sequence[Mapping[str, Any]],
    ) -> None:
        self._build(
            points=points,
        )

    @property
    def points(self) -> list[dict[str, Any]]:
        """In order of compression, each with `compression` and `force`; contact at no compression and no
        force is added where it is missing.
        """
        return self._read("points")  # type: ignore[no-any-return]

    def at(self, *, compression: QuantityLike) -> Stopped:
        """Force, rate and energy at a compression.

        Parameters
            compression (length): from contact; below nothing the stop is not touched

        Returns
            force (force [N]): of the stop
            rate (linear stiffness [N/m]): tangent rate there
            energy (energy [J]): taken since contact

        Valid for (SI)
            - `-100 <= compression <= 100`

            Up to the last point.
        """
        return Stopped(*_bump_stop_at(self._handle, compression))

    def compression_for_energy(self, *, energy: QuantityLike) -> Quantity:
        """Compression at which the stop has taken an energy.

        Parameters
            energy (energy): to be taken: half the mass at the stop times the square of the velocity of
                contact, what the spring takes meanwhile taken off

        Returns
            (length [m]) Compression from contact.

        Valid for (SI)
            - `0 <= energy <= 1000000000`

            An energy that is more than the stop takes up to its last point is refused.
        """
        return _bump_stop_compression_for_energy(self._handle, energy)  # type: ignore[no-any-return]

    def table(self, *, compression: QuantityLike) -> Table:
        """Force, rate and energy over compressions.

        Parameters
            compression (length), several: from contact, in any order

        Returns
            (table) One row a compression: `compression`, `force`, `rate`, `energy`; one beyond the
            points is a refused row.
        """
        return _bump_stop_table(self._handle, compression)  # type: ignore[no-any-return]


class Corner(Model):
    """A catalogue spring on a corner of the vehicle, with the damper and the bump stop that end the
    wheel's travel.

    Formula
        `L = L_0 - m g / (r k)` at ride height; sag `z = (L_d - L) / r`; bump left = the least of
        `(L - L_c - s) / r`, `h / r_d - z` and `b - z`; coil-bind margin `L_d - h r / r_d - L_c -
        s`; captive margin `L_0 - L_d`; wheel rate `k r^2`

    Fields
        rate (linear stiffness): `k`, of the spring along its own axis, as its maker says
        free_length (length): `L_0`, of the spring unloaded
        solid_length (length): `L_c`, block length: every coil touching
        minimum_gap (length): `s`, sum of the gaps that must stay open between the coils, as the
            spring's maker says (EN 13906-1)
        motion_ratio (ratio): `r`, shortening of the spring over travel of the wheel, measured along
            the spring and constant over the travel
        sprung_mass (mass): `m`, the scale reading of the wheel less its unsprung mass, loaded as it
            will be
        droop_length (length): `L_d`, between the spring's seats with the wheel hanging at full
        droop on its fully open damper, the adjuster where it will be
        damper_stroke (length): `h`, of the damper, fully open less fully closed, bump rubbers on
            its rod left aside
        damper_motion_ratio (ratio, optional): `r_d`, shortening of the damper over travel of the
            wheel; that of the spring where it is missing, as on a coil-over
        bump_stop_travel (length, optional): `b`, travel of the wheel from full droop until the bump
            stop is touched, measured with the spring out; leave it out where there is no bump stop
        bump_tight_below (length): wheel travel that is wanted in bump; with less the verdict is
            `tight`, with less than nothing `short`
        droop_tight_below (length): wheel travel that is wanted in droop
        spring_tight_below (length): margin that is wanted along the spring: before coil bind, and
            of preload at full droop

    Valid for
        A linear spring that acts along its seats, and a motion ratio that does not change with
        travel: measure it over the whole travel first. Full droop is where the damper is fully
        open; a strap or a joint that stops the wheel earlier is not seen, nor is what a hose, a
        joint or a tyre leaves. Friction, bar, bush rates and gas force of the damper are left
        aside. Where a margin is negative, the lengths and forces are those of a spring that nothing
        else stops. Bump stops give way: coil bind is held against the closed damper.

    Source
        Balance of virtual work at the wheel; lengths and gaps of a compression spring: EN
        13906-1:2013 (from memory); standard gravity: 3rd CGPM

    Caution
        A compressed spring stores enough energy to kill: use a compressor made for it. A damper is
        not always made to be a stop, and a spring that is loose at full droop can leave its seat on
        the road; local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "spring.Corner"
    _kinds = {"rate": "LinearStiffness", "free_length": "Length", "solid_length": "Length", "minimum_gap": "Length", "motion_ratio": "Ratio", "sprung_mass": "Mass", "droop_length": "Length", "damper_stroke": "Length", "damper_motion_ratio": "Ratio", "bump_stop_travel": "Length", "bump_tight_below": "Length", "droop_tight_below": "Length", "spring_tight_below": "Length"}

    def __init__(
        self,
        *,
        rate: QuantityLike,
        free_length: QuantityLike,
        solid_length: QuantityLike,
        minimum_gap: QuantityLike,
        motion_ratio: RatioLike,
        sprung_mass: QuantityLike,
        droop_length: QuantityLike,
        damper_stroke: QuantityLike,
        bump_tight_below: QuantityLike,
        droop_tight_below: QuantityLike,
        spring_tight_below: QuantityLike,
        damper_motion_ratio: RatioLike | None = None,
        bump_stop_travel: QuantityLike | None = None,
    ) -> None:
        self._build(
            rate=rate,
            free_length=free_length,
            solid_length=solid_length,
            minimum_gap=minimum_gap,
            motion_ratio=motion_ratio,
            sprung_mass=sprung_mass,
            droop_length=droop_length,
            damper_stroke=damper_stroke,
            damper_motion_ratio=damper_motion_ratio,
            bump_stop_travel=bump_stop_travel,
            bump_tight_below=bump_tight_below,
            droop_tight_below=droop_tight_below,
            spring_tight_below=spring_tight_below,
        )

    @property
    def rate(self) -> Quantity:
        """`k`, of the spring along its own axis, as its maker says."""
        return self._read("rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def free_length(self) -> Quantity:
        """`L_0`, of the spring unloaded."""
        return self._read("free_length", "Length")  # type: ignore[no-any-return]

    @property
    def solid_length(self) -> Quantity:
        """`L_c`, block length: every coil touching."""
        return self._read("solid_length", "Length")  # type: ignore[no-any-return]

    @property
    def minimum_gap(self) -> Quantity:
        """`s`, sum of the gaps that must stay open between the coils, as the spring's maker says (EN
        13906-1).
        """
        return self._read("minimum_gap", "Length")  # type: ignore[no-any-return]

    @property
    def motion_ratio(self) -> Ratio:
        """`r`, shortening of the spring over travel of the wheel, measured along the spring and constant
        over the travel.
        """
        return self._read("motion_ratio", "Ratio")

    @property
    def sprung_mass(self) -> Quantity:
        """`m`, the scale reading of the wheel less its unsprung mass, loaded as it will be."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def droop_length(self) -> Quantity:
        """`L_d`, between the spring's seats with the wheel hanging at full droop on its fully open damper,
        the adjuster where it will be.
        """
        return self._read("droop_length", "Length")  # type: ignore[no-any-return]

    @property
    def damper_stroke(self) -> Quantity:
        """`h`, of the damper, fully open less fully closed, bump rubbers on its rod left aside."""
        return self._read("damper_stroke", "Length")  # type: ignore[no-any-return]

    @property
    def damper_motion_ratio(self) -> Ratio | None:
        """`r_d`, shortening of the damper over travel of the wheel; that of the spring where it is
        missing, as on a coil-over.
        """
        return self._read("damper_motion_ratio", "Ratio")

    @property
    def bump_stop_travel(self) -> Quantity | None:
        """`b`, travel of the wheel from full droop until the bump stop is touched, measured with the
        spring out; leave it out where there is no bump stop.
        """
        return self._read("bump_stop_travel", "Length")  # type: ignore[no-any-return]

    @property
    def bump_tight_below(self) -> Quantity:
        """Wheel travel that is wanted in bump; with less the verdict is `tight`, with less than nothing
        `short`.
        """
        return self._read("bump_tight_below", "Length")  # type: ignore[no-any-return]

    @property
    def droop_tight_below(self) -> Quantity:
        """Wheel travel that is wanted in droop."""
        return self._read("droop_tight_below", "Length")  # type: ignore[no-any-return]

    @property
    def spring_tight_below(self) -> Quantity:
        """Margin that is wanted along the spring: before coil bind, and of preload at full droop."""
        return self._read("spring_tight_below", "Length")  # type: ignore[no-any-return]

    def at_ride_height(self) -> AtRideHeight:
        """The corner at ride height: what the spring does there, and what is left of the travel.

        Returns
            spring_force (force [N]): compressive force in the spring: the sprung weight over the motion
                ratio
            spring_length (length [m]): between its seats
            sag (length [m]): travel of the wheel from full droop to ride height, all of the droop that
                is left; negative where the preload holds the wheel on the open damper
            droop_verdict (verdict): whether that is the droop that is wanted
            bump_left (length [m]): travel of the wheel in bump until something ends it; negative where
                it has ended below ride height
            ends_first (text): what ends it: `coil bind` (the minimum gap included), `damper closed` or
                `bump stop`
            bump_verdict (verdict): whether that is the bump that is wanted
            bind_margin (length [m]): what the spring could still shorten with the damper closed, the
                minimum gap kept; negative where the coils end before the damper
            bind_verdict (verdict): whether the damper stops before coil bind
            captive_margin (length [m]): how much the spring is compressed at full droop; negative where
                it is loose
            captive_verdict (verdict): whether it stays captive there
            wheel_rate (linear stiffness [N/m]): rate of the spring at the wheel, without the tyre
            frequency (frequency [Hz]): undamped natural frequency of the sprung mass on that rate
        """
        return AtRideHeight(*_corner_at_ride_height(self._handle))

    def table(self, *, rate: QuantityLike, motion_ratio: RatioLike) -> Table:
        """The corner at ride height over spring rates and motion ratios, everything else as it is.

        Parameters
            rate (linear stiffness), several: rates of the spring
            motion_ratio (ratio), several: motion ratios of the spring, and of the damper where it has
                none of its own

        Returns
            (table) One row a rate and motion ratio: `rate`, `motion_ratio`, `spring_force`,
            `spring_length`, `sag`, `droop_verdict`, `bump_left`, `ends_first`, `bump_verdict`,
            `bind_margin`, `bind_verdict`, `captive_margin`, `captive_verdict`, `wheel_rate`,
            `frequency`.
        """
        return _corner_table(self._handle, rate, motion_ratio)  # type: ignore[no-any-return]


class DamperCurve(Model):
    """A damper's force over velocity through points, as a damper dynamometer gives them.

    Formula
        Monotone cubic `F(v)` through the points less the gas force `F_0`, and through nothing at
        rest; secants `c_b = F(v) / v` and `c_r = F(-v) / (-v)`, mean `c = (c_b + c_r) / 2`, split
        `c_r / (c_b + c_r)`; over a cycle of peak velocity `v` the linear damper that takes the same
        energy `c_e = 1 / (pi v) * integral of F(v cos(u)) cos(u) over a turn`

    Fields
        gas_force (force): `F_0`, that pushes the rod out at rest and is in every force of the
            points; 0 N for a damper without gas, or where the dynamometer took it off
        points (list): in order of velocity, at least one in rebound and one in bump, each with
            `velocity` (positive in bump) and `force` (positive where it pushes the eyes apart);
            none at rest

    Valid for
        Velocities of the damper from the first to the last point: beyond them nothing is known and
        nothing is guessed. One force a velocity: position, temperature, cavitation and hysteresis
        are left aside, and so is friction, which is not damping. In bump the force resists and in
        rebound too, the gas force taken off.

    Source
        Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; equivalent viscous damping
        by energy: Den Hartog, Mechanical Vibrations, and Dixon, The Shock Absorber Handbook (both
        from memory)

    Caution
        A gas damper is under pressure even at rest and must not be opened or heated. Local codes
        and licensed practice come first.
    """

    __slots__ = ()
    _name = "spring.DamperCurve"
    _kinds = {"gas_force": "Force"}

    def __init__(
        self,
        *,
        gas_force: QuantityLike,
        points: Sequence[Mapping[str, Any]],
    ) -> None:
        self._build(
            gas_force=gas_force,
            points=points,
        )

    @property
    def gas_force(self) -> Quantity:
        """`F_0`, that pushes the rod out at rest and is in every force of the points; 0 N for a damper
        without gas, or where the dynamometer took it off.
        """
        return self._read("gas_force", "Force")  # type: ignore[no-any-return]

    @property
    def points(self) -> list[dict[str, Any]]:
        """In order of velocity, at least one in rebound and one in bump, each with `velocity` (positive in
        bump) and `force` (positive where it pushes the eyes apart); none at rest.
        """
        return self._read("points")  # type: ignore[no-any-return]

    def force(self, *, velocity: QuantityLike) -> Quantity:
        """Force at a velocity, as the dynamometer reads it.

        Parameters
            velocity (velocity): of the damper, positive in bump; between the first and the last point

        Returns
            (force [N]) Force that pushes the eyes apart, gas force included.
        """
        return _damper_curve_force(self._handle, velocity)  # type: ignore[no-any-return]

    def damping(self, *, velocity: QuantityLike) -> DampingAt:
        """Damping at a velocity in bump and the same in rebound: secants, their mean by energy, the split.

        Parameters
            velocity (velocity): of the damper, without sign; both ways between the points

        Returns
            bump_damping (damping [N·s/m]): secant in bump, gas force taken off
            rebound_damping (damping [N·s/m]): secant in rebound, gas force taken off
            mean_damping (damping [N·s/m]): mean of the two: half of each cycle takes its energy by one
                of them, so that this is their mean by energy
            rebound_share (ratio [-]): rebound over both
            cycle_damping (damping [N·s/m]): of the linear damper that takes the same energy over a
            cycle of that peak velocity; above the mean where the curve flattens

        Valid for (SI)
            - `0 < velocity <= 100`

            Between the points in both directions.
        """
        return DampingAt(*_damper_curve_damping(self._handle, velocity))

    def ratio(self, *, velocity: QuantityLike, damper_motion_ratio: RatioLike, tangent_rate: QuantityLike, sprung_mass: QuantityLike) -> Ratio:
        """Damping ratio of a wheel at a velocity of its damper: mean of bump and rebound by energy,
        secants, gas force taken off.

        Parameters
            velocity (velocity): of the damper, without sign: that of the wheel times the motion ratio
            damper_motion_ratio (ratio): shortening of the damper over travel of the wheel
            tangent_rate (linear stiffness): wheel rate, or ride rate with the tyre in series (say which
                one it was)
            sprung_mass (mass): the scale reading of the wheel less its unsprung mass

        Returns
            (ratio [-]) The damping ratio. One damper for an axle: halve it.
        """
        return _damper_curve_ratio(self._handle, velocity, damper_motion_ratio, tangent_rate, sprung_mass)

    def table(self, *, velocity: QuantityLike) -> Table:
        """Forces and damping over velocities.

        Parameters
            velocity (velocity), several: of the damper, without sign

        Returns
            (table) One row a velocity: `velocity`, `bump_force` and `rebound_force` as the dynamometer
            reads them, `bump_damping`, `rebound_damping`, `mean_damping`, `rebound_share`,
            `cycle_damping`.
        """
        return _damper_curve_table(self._handle, velocity)  # type: ignore[no-any-return]


class ProgressiveCoil(Model):
    """A coil whose rate changes along its deflection, through points as its maker prints or a press
    measures them.

    Formula
        Piecewise cubic `F(x)` through the points with monotone slopes (Fritsch and Butland), from
        nothing when unloaded; rate `F'(x)`, energy the integral of `F`

    Fields
        points (list): in order of deflection, each with `deflection` and `force`; no deflection and
            no force is added where it is missing

    Valid for
        Deflections from the free length up to the last point; beyond the points nothing is known
        and nothing is guessed. Forces that rise from point to point. The rate between them is only
        as good as the points stand close: two points give one rate. A coil of two rates with a
        corner between them is a `spring::Stack`.

    Source
        Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's
        PchipInterpolator

    Caution
        A compressed spring stores enough energy to kill: compress it with a tool made for it, and
        keep it captive at full droop; local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "spring.ProgressiveCoil"
    _kinds = {}

    def __init__(
        self,
        *,
        points: Sequence[Mapping[str, Any]],
    ) -> None:
        self._build(
            points=points,
        )

    @property
    def points(self) -> list[dict[str, Any]]:
        """In order of deflection, each with `deflection` and `force`; no deflection and no force is added
        where it is missing.
        """
        return self._read("points")  # type: ignore[no-any-return]

    def at(self, *, deflection: QuantityLike) -> CompressedCoil:
        """Force, rate and energy at a deflection.

        Parameters
            deflection (length): from the free length

        Returns
            force (force [N]): compressive
            rate (linear stiffness [N/m]): tangent rate there
            energy (energy [J]): stored from the free length

        Valid for (SI)
            - `0 <= deflection <= 100`

            Up to the last point.
        """
        return CompressedCoil(*_progressive_coil_at(self._handle, deflection))

    def deflection_for_force(self, *, force: QuantityLike) -> Quantity:
        """Deflection under a force: what the coil sags under a load.

        Parameters
            force (force): compressive, from nothing to that of the last point

        Returns
            (length [m]) Deflection from the free length.

        Valid for (SI)
            - `0 <= force <= 100000000`

            A force that is more than that of the last point is refused.
        """
        return _progressive_coil_deflection_for_force(self._handle, force)  # type: ignore[no-any-return]

    def table(self, *, deflection: QuantityLike) -> Table:
        """Force, rate and energy over deflections.

        Parameters
            deflection (length), several: from the free length, in any order

        Returns
            (table) One row a deflection: `deflection`, `force`, `rate`, `energy`; one beyond the points
            is a refused row.
        """
        return _progressive_coil_table(self._handle, deflection)  # type: ignore[no-any-return]


class Stack(Model):
    """Springs end to end on one axis, each until its coils close.

    Formula
        under a load `F` each is shortened by `x_i = min(F / k_i, L_0i - L_ci)`; length `L = sum of
        (L_0i - x_i)`; rate `1 / k = sum of 1 / k_i` over those that are open; one closes at `F_i =
        k_i (L_0i - L_ci)`

    Fields
        springs (list): in any order, each with `name`, `rate` `k_i` along its own axis,
            `free_length` `L_0i` and `solid_length` `L_ci`: every coil touching, or the length at
            which a stop takes over
        spacers (length, optional): length that does not change: sliders between the springs, and
            spacers; nothing where it is missing

    Valid for
        Linear springs that close at once, two of them at least, no friction of the slider between
        them, seats that stay parallel. Coils touch one by one before the last, so that a real stack
        has a soft corner. At the load itself at which a spring closes the rate is that below it.
        Beyond the load at which all are closed it is refused.

    Source
        Springs in series: equal force, deflections add (Hooke's law)

    Caution
        A stack of springs stores energy like one and can kill: compress it with a tool made for it,
        and keep it captive on its slider at full droop, where the softer one may go slack. Coils
        that close at every bump break; local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "spring.Stack"
    _kinds = {"spacers": "Length"}

    def __init__(
        self,
        *,
        springs: Sequence[Mapping[str, Any]],
        spacers: QuantityLike | None = None,
    ) -> None:
        self._build(
            springs=springs,
            spacers=spacers,
        )

    @property
    def springs(self) -> list[dict[str, Any]]:
        """In any order, each with `name`, `rate` `k_i` along its own axis, `free_length` `L_0i` and
        `solid_length` `L_ci`: every coil touching, or the length at which a stop takes over.
        """
        return self._read("springs")  # type: ignore[no-any-return]

    @property
    def spacers(self) -> Quantity | None:
        """Length that does not change: sliders between the springs, and spacers; nothing where it is
        missing.
        """
        return self._read("spacers", "Length")  # type: ignore[no-any-return]

    def under_load(self, *, load: QuantityLike) -> LoadedStack:
        """The stack under a load.

        Parameters
            load (force): compressive force, from nothing to the load at which all are closed

        Returns
            length (length [m]): of the whole stack, spacers included
            deflection (length [m]): shortening from the free length: what it sags under that load
            rate (linear stiffness [N/m]): of the springs that are open; of those that close last at the
                greatest load
            closed (whole number): how many springs are closed
        """
        return LoadedStack(*_stack_under_load(self._handle, load))

    def at_length(self, *, length: QuantityLike) -> HeldStack:
        """The stack held at a length.

        Parameters
            length (length): of the whole stack, spacers included, from every spring closed to every one
                free

        Returns
            load (force [N]): compressive force that holds it there, the same in every spring
            deflection (length [m]): shortening from the free length
            rate (linear stiffness [N/m]): of the springs that are open; of those that close last at the
                least length
            closed (whole number): how many springs are closed
        """
        return HeldStack(*_stack_at_length(self._handle, length))

    def closes_first(self) -> FirstClosed:
        """The first spring to close, and what the rate does there.

        Returns
            spring (text): its name; the first in the list of those that close together
            load (force [N]): load at which it closes
            deflection (length [m]): shortening of the stack from its free length at that load
            length (length [m]): length of the stack at that load
            rate_below (linear stiffness [N/m]): rate of the stack up to there
            rate_above (linear stiffness [N/m]): rate from there on: of the springs that still work;
                refused where all close together
        """
        return FirstClosed(*_stack_closes_first(self._handle))

    def table(self, *, load: QuantityLike) -> Table:
        """Lengths and rates over loads.

        Parameters
            load (force), several: compressive forces

        Returns
            (table) One row a load: `load`, `length`, `deflection`, `rate`, `closed` (how many),
            `closed_springs` (their names).
        """
        return _stack_table(self._handle, load)  # type: ignore[no-any-return]
