"""Springs, wheel rate and dampers. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from axlewright import Quantity
    from axlewright._types import Invalid, QuantityLike, RatioLike

__all__ = ["coil_rate", "critical_damping", "inclined_tangent_rate", "natural_frequency", "ride_rate", "static_deflection", "wheel_rate", "wheel_tangent_rate"]

_coil_rate = _functions["spring.coil_rate"]
_critical_damping = _functions["spring.critical_damping"]
_inclined_tangent_rate = _functions["spring.inclined_tangent_rate"]
_natural_frequency = _functions["spring.natural_frequency"]
_ride_rate = _functions["spring.ride_rate"]
_static_deflection = _functions["spring.static_deflection"]
_wheel_rate = _functions["spring.wheel_rate"]
_wheel_tangent_rate = _functions["spring.wheel_tangent_rate"]


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
