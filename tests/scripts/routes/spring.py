"""Springs: strain energies, quadrature over the wire, motions and eigenvalues, chains of masses."""

from fractions import Fraction

import mpmath
import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.linalg import eigh_tridiagonal
from scipy.optimize import brentq

from . import GRAVITY, Refused, exact, route, second_difference

mpmath.mp.dps = 40


def polar_moment(outer, inner=0.0):
    """Of a round section, by quadrature of r^2 over the area."""
    return 2 * mpmath.pi * mpmath.quad(lambda r: r**3, [mpmath.mpf(inner) / 2, mpmath.mpf(outer) / 2])


def wound(wire, mean, coils, modulus):
    """Rate of a coil spring by Castigliano: torsion of the wire over its length."""
    torsion = modulus * polar_moment(wire)
    length = mpmath.pi * mean * coils
    give = mpmath.quad(lambda _: (mpmath.mpf(mean) / 2) ** 2 / torsion, [0, length])
    return float(1 / give)


@route("spring.coil_rate")
def coil_rate(wire_diameter, mean_diameter, active_coils, shear_modulus):
    return wound(wire_diameter, mean_diameter, active_coils, shear_modulus)


@route("spring.wire_diameter_for_rate")
def wire_diameter_for_rate(spring_rate, mean_diameter, active_coils, shear_modulus):
    return brentq(lambda wire: wound(wire, mean_diameter, active_coils, shear_modulus) / spring_rate - 1, 1e-3, 0.05, xtol=1e-16)


@route("spring.active_coils_for_rate")
def active_coils_for_rate(spring_rate, wire_diameter, mean_diameter, shear_modulus):
    return brentq(lambda coils: wound(wire_diameter, mean_diameter, coils, shear_modulus) / spring_rate - 1, 1, 50, xtol=1e-14)


@route("spring.static_deflection")
def static_deflection(load, rate):
    return load / rate


@route("spring.wahl_factor")
def wahl_factor(wire_diameter, mean_diameter):
    c = exact(mean_diameter) / exact(wire_diameter)
    return (4 * c - 1) / (4 * c - 4) + Fraction("0.615") / c


@route("spring.coil_shear_stress")
def coil_shear_stress(load, wire_diameter, mean_diameter):
    torsion = mpmath.mpf(load) * mean_diameter / 2 * wire_diameter / 2 / polar_moment(wire_diameter)
    return float(torsion) * float(wahl_factor(wire_diameter, mean_diameter))


def spring_on_an_arm(rate, ratio, angle, force, length):
    """Second derivative of the strain energy: upper eye fixed, the lower one raised by `ratio` times the travel."""
    rate, ratio, angle, force, length = map(mpmath.mpf, (rate, ratio, angle, force, length))
    free = length + force / rate
    across, along = length * mpmath.sin(angle), length * mpmath.cos(angle)
    energy = lambda z: rate / 2 * (mpmath.sqrt(across**2 + (along - ratio * z) ** 2) - free) ** 2  # noqa: E731
    return float(mpmath.diff(energy, 0, 2))


@route("spring.wheel_rate")
def wheel_rate(spring_rate, motion_ratio, angle_from_measured_travel):
    return spring_on_an_arm(spring_rate, motion_ratio, angle_from_measured_travel, 0.0, 0.3)


@route("spring.inclined_tangent_rate")
def inclined_tangent_rate(spring_rate, motion_ratio, angle_from_measured_travel, spring_force, spring_length):
    return spring_on_an_arm(spring_rate, motion_ratio, angle_from_measured_travel, spring_force, spring_length)


@route("spring.wheel_tangent_rate")
def wheel_tangent_rate(spring_rate, motion_ratio, spring_force, motion_ratio_gradient):
    rate, ratio, force, growth = map(mpmath.mpf, (spring_rate, motion_ratio, spring_force, motion_ratio_gradient))
    # A spring whose length over travel has this slope and this curvature; only the two count at ride height.
    shorter = lambda z: ratio * z + growth * z**2 / 2  # noqa: E731
    energy = lambda z: rate / 2 * (force / rate + shorter(z)) ** 2  # noqa: E731
    return float(mpmath.diff(energy, 0, 2))


@route("spring.spring_rate_for_frequency")
def spring_rate_for_frequency(frequency, sprung_mass, motion_ratio, angle_from_measured_travel):
    wanted = sprung_mass * (2 * np.pi * frequency) ** 2
    return wanted / spring_on_an_arm(1.0, motion_ratio, angle_from_measured_travel, 0.0, 0.3)


def chain(first, second):
    """Rate of two springs one behind the other: their stiffness matrix under one newton at the end."""
    a, b = exact(first), exact(second)
    determinant = (a + b) * b - b * b
    return determinant / (a + b)


@route("spring.ride_rate")
def ride_rate(wheel_rate, tyre_rate):
    return chain(tyre_rate, wheel_rate)


@route("spring.series_rate")
def series_rate(first_rate, second_rate):
    return chain(first_rate, second_rate)


@route("spring.parallel_rate")
def parallel_rate(first_rate, second_rate):
    return second_difference(lambda x: (exact(first_rate) + exact(second_rate)) * x * x / 2)


def let_go(mass, damping, rate):
    """Motion from rest at one, and the times at which it stands still."""
    still = lambda t, x: x[1]  # noqa: E731
    span = 10 * 2 * np.pi * np.sqrt(mass / rate)
    motion = solve_ivp(lambda t, x: [x[1], -(rate * x[0] + damping * x[1]) / mass], (0, span), [1.0, 0.0], method="DOP853", rtol=1e-13, atol=1e-15, events=still)
    times, states = motion.t_events[0], motion.y_events[0]
    keep = times > 1e-9
    return times[keep], states[keep][:, 0]


@route("spring.natural_frequency", "solve_ivp")
def natural_frequency(tangent_rate, sprung_mass):
    times, _ = let_go(sprung_mass, 0.0, tangent_rate)
    return (len(times[1:]) / 2) / (times[-1] - times[0])


@route("spring.natural_frequency", "balance of energy")
def frequency_by_energy(tangent_rate, sprung_mass):
    rate, mass = mpmath.mpf(tangent_rate), mpmath.mpf(sprung_mass)
    quarter = mpmath.quad(lambda x: 1 / mpmath.sqrt(rate / mass * (1 - x) * (1 + x)), [0, 1])
    return float(1 / (4 * quarter))


@route("spring.tangent_rate_for_frequency")
def tangent_rate_for_frequency(frequency, sprung_mass):
    return brentq(lambda rate: natural_frequency(rate, sprung_mass) / frequency - 1, 1e3, 1e6, xtol=1e-6, rtol=1e-12)


def pair(mass, damping, rate):
    """Eigenvalue of the oscillator: minus real part over size, and imaginary part."""
    found = np.linalg.eigvals([[0.0, 1.0], [-rate / mass, -damping / mass]])[0]
    return -found.real / abs(found), abs(found.imag)


@route("spring.critical_damping", "eigvals")
def critical_damping(tangent_rate, sprung_mass):
    # Damping as c / sqrt(k m), halved between a pair that swings and one that does not.
    low, high = 1.0, 3.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if np.iscomplexobj(np.linalg.eigvals([[0.0, 1.0], [-1.0, -middle]])) else (low, middle)
    return low * float(mpmath.sqrt(mpmath.mpf(tangent_rate) * sprung_mass))


@route("spring.critical_damping", "discriminant")
def double_root(tangent_rate, sprung_mass):
    return float(mpmath.sqrt(4 * mpmath.mpf(tangent_rate) * mpmath.mpf(sprung_mass)))


@route("spring.damping_ratio", "solve_ivp")
def damping_ratio(wheel_damping, tangent_rate, sprung_mass):
    _, at = let_go(sprung_mass, wheel_damping, tangent_rate)
    decrement = -np.log(abs(at[0]))
    return decrement / np.hypot(decrement, np.pi)


@route("spring.damping_ratio", "eigvals")
def damping_ratio_of_the_pair(wheel_damping, tangent_rate, sprung_mass):
    return pair(sprung_mass, wheel_damping, tangent_rate)[0]


@route("spring.damped_frequency", "solve_ivp")
def damped_frequency(undamped_frequency, damping_ratio):
    rate = (2 * np.pi * undamped_frequency) ** 2
    times, _ = let_go(1.0, 2 * damping_ratio * np.sqrt(rate), rate)
    return 1 / (2 * times[0])


@route("spring.damped_frequency", "eigvals")
def damped_frequency_of_the_pair(undamped_frequency, damping_ratio):
    rate = (2 * np.pi * undamped_frequency) ** 2
    return pair(1.0, 2 * damping_ratio * np.sqrt(rate), rate)[1] / (2 * np.pi)


@route("spring.damper_rate_for_ratio")
def damper_rate_for_ratio(damping_ratio, tangent_rate, sprung_mass, damper_motion_ratio):
    at_wheel = lambda damper: damper * damper_motion_ratio**2  # noqa: E731
    return brentq(lambda damper: pair(sprung_mass, at_wheel(damper), tangent_rate)[0] - damping_ratio, 1.0, 0.999 * 2 * np.sqrt(tangent_rate * sprung_mass) / damper_motion_ratio**2, xtol=1e-10)


@route("spring.wheel_damping")
def wheel_damping(damper_rate, damper_motion_ratio):
    speed = Fraction("0.3")
    power = exact(damper_rate) * (exact(damper_motion_ratio) * speed) ** 2
    return power / speed**2


@route("spring.stored_energy")
def stored_energy(spring_rate, deflection):
    return float(mpmath.quad(lambda x: mpmath.mpf(spring_rate) * x, [0, deflection]))


@route("spring.solid_length_closed_ground")
def solid_length_closed_ground(total_coils, wire_diameter):
    return exact(total_coils) * exact(wire_diameter)


@route("spring.solid_length_closed")
def solid_length_closed(total_coils, wire_diameter):
    return (exact(total_coils) + Fraction(3, 2)) * exact(wire_diameter)


@route("spring.coil_bind_clearance")
def coil_bind_clearance(free_length, solid_length, spring_rate, spring_load, spring_bump_travel):
    free, solid, rate, load, bump = map(exact, (free_length, solid_length, spring_rate, spring_load, spring_bump_travel))
    return (rate * (free - solid) - (load + rate * bump)) / rate


@route("spring.minimum_gap_clearance")
def minimum_gap_clearance(free_length, shortest_length, spring_rate, spring_load, spring_bump_travel):
    return coil_bind_clearance(free_length, shortest_length, spring_rate, spring_load, spring_bump_travel)


@route("spring.buckling_deflection", "closed form")
def buckling_closed_form(free_length, mean_diameter, end_fixity, elastic_modulus, shear_modulus):
    e, g = elastic_modulus, shear_modulus
    slender = end_fixity * free_length / mean_diameter
    under_root = 1 - 2 * np.pi**2 * (e - g) / (2 * g + e) / slender**2
    if under_root < 0:
        raise Refused
    return free_length * e / (2 * (e - g)) * (1 - np.sqrt(under_root))


@route("spring.buckling_deflection", "Haringx's column")
def buckling_deflection(free_length, mean_diameter, end_fixity, elastic_modulus, shear_modulus):
    """A column that shears: P (1 + P / S) = pi^2 B / (nu l)^2, with what one coil gives in each way by the energy in its wire."""
    radius = mpmath.mpf(mean_diameter) / 2
    # A wire with the second moment of one; it cancels, and so does the number of coils.
    bending, torsion = mpmath.mpf(elastic_modulus), 2 * mpmath.mpf(shear_modulus)
    around = lambda f: mpmath.quad(lambda t: f(t) * radius, [0, mpmath.pi, 2 * mpmath.pi])  # noqa: E731
    axial = around(lambda t: radius**2 / torsion)
    bent = around(lambda t: mpmath.cos(t) ** 2 / torsion + mpmath.sin(t) ** 2 / bending)
    sheared = around(lambda t: (radius * mpmath.sin(t)) ** 2 / bending)

    def gap(y):
        # Coils of a pitch that is the length: rigidities over the length that is left.
        length = free_length - y
        load, shear, stiff = y / axial, length / sheared, length / bent
        return load * (1 + load / shear) - mpmath.pi**2 * stiff / (end_fixity * length) ** 2

    low = next(i for i in range(1, 1000) if gap(mpmath.mpf(i) / 1000 * free_length) > 0)
    return float(mpmath.findroot(gap, (mpmath.mpf(low - 1) / 1000 * free_length, mpmath.mpf(low) / 1000 * free_length), solver="anderson"))


@route("spring.surge_frequency", "f=1/2 sqrt(k/m)")
def surge_closed_form(wire_diameter, mean_diameter, active_coils, shear_modulus, density):
    rate = wound(wire_diameter, mean_diameter, active_coils, shear_modulus)
    mass = density * np.pi * wire_diameter**2 / 4 * np.pi * mean_diameter * active_coils
    return np.sqrt(rate / mass) / 2


@route("spring.surge_frequency", "eigh_tridiagonal")
def surge_frequency(wire_diameter, mean_diameter, active_coils, shear_modulus, density):
    rate = wound(wire_diameter, mean_diameter, active_coils, shear_modulus)
    mass = density * np.pi * wire_diameter**2 / 4 * np.pi * mean_diameter * active_coils

    def cut(n):
        k, m = rate * (n + 1), mass / (n + 1)
        lowest = eigh_tridiagonal(np.full(n, 2 * k / m), np.full(n - 1, -k / m), eigvals_only=True, select="i", select_range=(0, 0))[0]
        return np.sqrt(lowest) / (2 * np.pi)

    one, two = cut(1000), cut(2001)
    return (4 * two - one) / 3


@route("spring.series_crossover")
def series_crossover(first_rate, first_travel_to_solid, second_rate, second_travel_to_solid):
    springs = sorted((exact(k) * exact(x), exact(k), exact(x)) for k, x in ((first_rate, first_travel_to_solid), (second_rate, second_travel_to_solid)))
    (load, soft, travel), (last, stiff, end) = springs
    length = lambda f: min(f / soft, travel) + min(f / stiff, end)  # noqa: E731
    step = load / 1000
    slope = lambda f: step / (length(f + step) - length(f))  # noqa: E731
    return {"crossover_load": load, "crossover_deflection": length(load), "rate_below": slope(load - step), "rate_above": slope(load), "solid_load": last, "solid_deflection": length(last)}


@route("spring.minimum_gap_cold_static")
def minimum_gap_cold_static(wire_diameter, mean_diameter, active_coils):
    d, mean, coils = map(exact, (wire_diameter, mean_diameter, active_coils))
    return coils * (Fraction("0.0015") * mean**2 / d + Fraction("0.1") * d)


@route("spring.minimum_gap_cold_dynamic")
def minimum_gap_cold_dynamic(wire_diameter, mean_diameter, active_coils):
    return Fraction("1.5") * minimum_gap_cold_static(wire_diameter, mean_diameter, active_coils)


@route("spring.minimum_gap_hot_static")
def minimum_gap_hot_static(wire_diameter, mean_diameter, active_coils):
    d, mean, coils = map(exact, (wire_diameter, mean_diameter, active_coils))
    return coils * Fraction("0.02") * (mean + d)


@route("spring.minimum_gap_hot_dynamic")
def minimum_gap_hot_dynamic(wire_diameter, mean_diameter, active_coils):
    return 2 * minimum_gap_hot_static(wire_diameter, mean_diameter, active_coils)


@route("spring.shortest_length")
def shortest_length(solid_length, minimum_gap):
    return exact(solid_length) + exact(minimum_gap)


@route("spring.free_length_for_ride_height")
def free_length_for_ride_height(spring_length, spring_load, spring_rate):
    return exact(spring_length) + exact(spring_load) / exact(spring_rate)


@route("spring.Corner.at_ride_height")
def corner(d):
    """Lengths laid out from droop: where the spring carries the body, and where each limit ends the travel."""
    rate, free, ratio, mass, droop = d["rate"], d["free_length"], d["motion_ratio"], d["sprung_mass"], d["droop_length"]
    damper = d["damper_stroke"] / d.get("damper_motion_ratio", ratio)
    force = (mass * GRAVITY - d.get("gas_force", 0) * d.get("damper_motion_ratio", ratio)) / ratio
    length = free - force / rate
    sag = (droop - length) / ratio
    shortest = d["solid_length"] + d["minimum_gap"]
    ends = {"damper closed": damper, "coil bind": (droop - shortest) / ratio}
    if d.get("bump_stop_travel", "none") != "none":
        ends["bump stop"] = d["bump_stop_travel"]
    if "bump_clearance" in d:
        ends["bump stop"] = min(ends.get("bump stop", 1e9), d["bump_clearance"] / max(ratio, 1) + max(sag, 0))
    first = min(ends, key=ends.__getitem__)
    remaining = ends[first] - max(sag, 0)
    wheel = rate * ratio**2

    def until(travel, names, above):
        return min([travel] + [d[name] + above for name in names if d.get(name, "none") != "none"])

    return {
        "bump_clear": until(remaining, ["joint_bump_clearance", "hose_bump_clearance", "tyre_clearance"], min(sag, 0)),
        "droop_clear": until(sag, ["joint_droop_clearance", "hose_droop_clearance"], 0),
        "spring_force": force, "spring_length": length, "sag": sag, "bump_remaining": remaining, "ends_first": first,
        "bind_margin": droop - damper * ratio - shortest, "captive_margin": free - droop, "wheel_rate": wheel,
        "frequency": float(mpmath.sqrt(mpmath.mpf(float(wheel / mass))) / (2 * mpmath.pi)),
    }  # fmt: skip


def stack(d, load):
    """Length and the rate just below the load, every spring the longer of its loaded and its solid length."""
    def length(f):
        return d.get("spacers", 0) + sum(max(s["free_length"] - f / s["rate"], s["solid_length"]) for s in d["springs"])

    step = Fraction(1, 1000)
    low = max(load - step, Fraction(0))
    return length(load), step / (length(low) - length(low + step)) if length(low) != length(low + step) else None, length(Fraction(0))


@route("spring.Stack.under_load")
def under_load(d, load):
    load = exact(load)
    length, rate, free = stack(d, load)
    closed = sum(s["free_length"] - load / s["rate"] <= s["solid_length"] for s in d["springs"])
    return {"length": length, "deflection": free - length, "rate": rate, "closed": closed}


@route("spring.Stack.at_length")
def at_length(d, length):
    low, high = 0.0, 1e7
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if stack(d, Fraction(middle))[0] > exact(length) else (low, middle)
    return {"load": low, **{k: v for k, v in under_load(d, low).items()}, "length": length}


@route("spring.Stack.closes_first")
def closes_first(d):
    first = min(d["springs"], key=lambda s: s["rate"] * (s["free_length"] - s["solid_length"]))
    load = first["rate"] * (first["free_length"] - first["solid_length"])
    length, below, free = stack(d, load)
    return {"spring": first["name"], "load": load, "deflection": free - length, "length": length, "rate_below": below, "rate_above": stack(d, load + Fraction(1, 1000))[1]}


@route("spring.torsion_bar_rate")
def torsion_bar_rate(shear_modulus, inner_diameter, outer_diameter, active_length):
    return float(shear_modulus * polar_moment(outer_diameter, inner_diameter) / active_length)


@route("spring.torsion_bar_stress")
def torsion_bar_stress(torque, inner_diameter, outer_diameter):
    return float(torque * mpmath.mpf(outer_diameter) / 2 / polar_moment(outer_diameter, inner_diameter))


@route("spring.torsion_bar_arm_rate")
def torsion_bar_arm_rate(torsional_rate, arm_length, arm_angle, torque):
    rate, arm, angle, moment = map(mpmath.mpf, (torsional_rate, arm_length, arm_angle, torque))

    def force(height):
        turned = mpmath.asin(height / arm)
        return (moment + rate * (turned - angle)) / (arm * mpmath.cos(turned))

    return float(mpmath.diff(force, arm * mpmath.sin(angle)))


@route("spring.anti_roll_bar_rate")
def anti_roll_bar_rate(torsional_rate, arm_length):
    energy = lambda z: exact(torsional_rate) * (2 * z / exact(arm_length)) ** 2 / 2  # noqa: E731
    return (energy(Fraction(1)) + energy(Fraction(-1))) / 2


@route("spring.anti_roll_bar_diameter_for_rate")
def anti_roll_bar_diameter_for_rate(bar_rate, arm_length, active_length, shear_modulus):
    rate = lambda wire: 2 * shear_modulus * polar_moment(wire) / active_length / arm_length**2  # noqa: E731
    return brentq(lambda wire: float(rate(wire)) / bar_rate - 1, 1e-3, 0.2, xtol=1e-17)


def leaves(width, thickness, span, full, graduated, modulus=1.0):
    """Rate of each kind of leaf, one cantilever of half the span: a strip of even width, and a triangle of it."""
    half, moment = span / 2, width * thickness**3 / 12
    even = quad(lambda x: x**2 / (modulus * moment), 0, half, epsrel=1e-13)[0]
    tapered = quad(lambda x: x / (modulus * moment / half), 0, half, epsrel=1e-13)[0]
    return full / even, graduated / tapered, half, moment


@route("spring.leaf_pack_rate")
def leaf_pack_rate(elastic_modulus, leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves):
    full, graduated, _, _ = leaves(leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves, elastic_modulus)
    return 2 * (full + graduated)


@route("spring.leaf_pack_stress")
def leaf_pack_stress(load, leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves):
    full, graduated, half, moment = leaves(leaf_width, leaf_thickness, span, full_length_leaves, graduated_leaves)
    out = {}
    for name, rate, count in (("full_length_stress", full, full_length_leaves), ("graduated_stress", graduated, graduated_leaves)):
        if count:
            share = load / 2 * rate / (full + graduated) / count
            out[name] = share * half * leaf_thickness / 2 / moment
    return out


@route("spring.air_spring_rate")
def air_spring_rate(pressure, station_pressure, effective_area, volume, polytropic_exponent, area_growth):
    pressure, station, area, volume, exponent, growth = map(mpmath.mpf, (pressure, station_pressure, effective_area, volume, polytropic_exponent, area_growth))

    def force(x):
        left = volume - area * x - growth * x**2 / 2
        return ((pressure + station) * (volume / left) ** exponent - station) * (area + growth * x)

    return float(mpmath.diff(force, 0))
