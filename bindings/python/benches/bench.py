"""Speed of the Python package beside NumPy and plain Python, for `cargo xtask bench`.

A line a measurement: item, ours, peer, unit, what is wanted; medians of interleaved rounds. The argument is the
program of the Rust part, whose loop runs between the rounds.
"""

from __future__ import annotations

import math
import subprocess
import sys
import time
from collections.abc import Callable
from statistics import median

from measure import row, seconds
import numpy as np
from numpy import add, cos, divide, exp, maximum, minimum, multiply, power, sin, sqrt, subtract

from axlewright import si, spring
from axlewright.units import deg, lbf_in

N = 1_000_000
ROUNDS = 15
Array = np.ndarray
random = np.random.default_rng(20)


def between(lower: float, upper: float) -> Array:
    return random.uniform(lower, upper, N)


def rounds(*calls: Callable[[], float]) -> list[float]:
    """The median of each, one after the other in every round; the first round warms up."""
    times = [[call() for call in calls] for _ in range(ROUNDS + 1)]
    return [median(column) for column in zip(*times[1:], strict=True)]


# --- The formulas in NumPy: every operation writes into memory that is there already. `o` is the result, `t` and `u`
# are temporaries; more of them only where the formula wants them.


def coil_rate(d, dm, n, g, o, t, u):  # type: ignore[no-untyped-def]
    multiply(d, d, out=o), multiply(o, o, out=o), multiply(g, o, out=o)
    multiply(dm, dm, out=t), multiply(t, dm, out=t), multiply(t, n, out=t), multiply(t, 8.0, out=t)
    divide(o, t, out=o)


def critical_damping(k, m, o, t, u):  # type: ignore[no-untyped-def]
    multiply(k, m, out=o), sqrt(o, out=o), multiply(o, 2.0, out=o)


def inclined_tangent_rate(k, r, a, f, length, o, t, u):  # type: ignore[no-untyped-def]
    sin(a, out=t), multiply(t, t, out=t), multiply(t, f, out=t), divide(t, length, out=t)
    cos(a, out=o), multiply(o, o, out=o), multiply(o, k, out=o)
    subtract(o, t, out=o), multiply(r, r, out=u), multiply(o, u, out=o)


def natural_frequency(k, m, o, t, u):  # type: ignore[no-untyped-def]
    divide(k, m, out=o), sqrt(o, out=o), divide(o, math.tau, out=o)


def ride_rate(k, kt, o, t, u):  # type: ignore[no-untyped-def]
    add(k, kt, out=t), multiply(k, kt, out=o), divide(o, t, out=o)


def wheel_rate(k, r, a, o, t, u):  # type: ignore[no-untyped-def]
    cos(a, out=o), multiply(o, r, out=o), multiply(o, o, out=o), multiply(o, k, out=o)


def wheel_tangent_rate(k, r, f, gradient, o, t, u):  # type: ignore[no-untyped-def]
    multiply(r, r, out=o), multiply(o, k, out=o), multiply(f, gradient, out=t), add(o, t, out=o)


def road_speed(w, gear, final, r, o, t, u):  # type: ignore[no-untyped-def]
    multiply(w, r, out=o), multiply(gear, final, out=t), divide(o, t, out=o)


def engine_speed(v, gear, final, r, o, t, u):  # type: ignore[no-untyped-def]
    multiply(v, gear, out=o), multiply(o, final, out=o), divide(o, r, out=o)


def wheel_torque(torque, gear, final, efficiency, o, t, u):  # type: ignore[no-untyped-def]
    multiply(torque, gear, out=o), multiply(o, final, out=o), multiply(o, efficiency, out=o)


GAS = 8314.32 / 28.9644


def standard_pressure(h, o, t, u):  # type: ignore[no-untyped-def]
    minimum(h, 11000.0, out=t), multiply(t, -0.0065 / 288.15, out=t), add(t, 1.0, out=t)
    power(t, 9.80665 / (GAS * 0.0065), out=o), multiply(o, 101325.0, out=o)
    subtract(h, 11000.0, out=t), maximum(t, 0.0, out=t), multiply(t, -9.80665 / (GAS * 216.65), out=t)
    exp(t, out=t), multiply(o, t, out=o)


def standard_density(h, o, t, u):  # type: ignore[no-untyped-def]
    standard_pressure(h, o, t, u)
    minimum(h, 11000.0, out=t), multiply(t, -0.0065, out=t), add(t, 288.15, out=t), multiply(t, GAS, out=t)
    divide(o, t, out=o)


def geopotential_altitude(z, o, t, u):  # type: ignore[no-untyped-def]
    add(z, 6356766.0, out=t), multiply(z, 6356766.0, out=o), divide(o, t, out=o)


# IAPWS R7-97(2012), Table 34.
N4 = (
    *(0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7),
    *(0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3),
)
B2, B, E, F, G = np.empty((5, N))


def water_boiling_temperature(p, o, t, u):  # type: ignore[no-untyped-def]
    multiply(p, 1e-6, out=B2), sqrt(B2, out=B2), sqrt(B2, out=B)
    multiply(B, N4[2], out=E), add(E, B2, out=E), add(E, N4[5], out=E)
    multiply(B2, N4[0], out=F), multiply(B, N4[3], out=t), add(F, t, out=F), add(F, N4[6], out=F)
    multiply(B2, N4[1], out=G), multiply(B, N4[4], out=t), add(G, t, out=G), add(G, N4[7], out=G)
    multiply(E, G, out=E), multiply(E, 4.0, out=E), multiply(F, F, out=t), subtract(t, E, out=t)
    sqrt(t, out=t), add(t, F, out=t), multiply(G, -2.0, out=G), divide(G, t, out=t)
    add(t, N4[9], out=o), multiply(t, 4.0 * N4[9], out=t), add(t, 4.0 * N4[8], out=t)
    multiply(o, o, out=u), subtract(u, t, out=u), sqrt(u, out=u), subtract(o, u, out=o), multiply(o, 0.5, out=o)


def water_as_written(p):  # type: ignore[no-untyped-def]
    """The release's equations 29a, 29b, 31 as anyone would write them in NumPy."""
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = N4
    beta = (p / 1e6) ** 0.25
    e, f, g = beta**2 + n3 * beta + n6, n1 * beta**2 + n4 * beta + n7, n2 * beta**2 + n5 * beta + n8
    d = 2 * g / (-f - np.sqrt(f**2 - 4 * e * g))
    return (n10 + d - np.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2


def water_saturation_pressure(temperature, o, t, u):  # type: ignore[no-untyped-def]
    subtract(temperature, N4[9], out=t), divide(N4[8], t, out=t), add(temperature, t, out=t)
    add(t, N4[0], out=E), multiply(E, t, out=E), add(E, N4[1], out=E)
    multiply(t, N4[2], out=F), add(F, N4[3], out=F), multiply(F, t, out=F), add(F, N4[4], out=F)
    multiply(t, N4[5], out=G), add(G, N4[6], out=G), multiply(G, t, out=G), add(G, N4[7], out=G)
    multiply(E, G, out=E), multiply(E, 4.0, out=E), multiply(F, F, out=t), subtract(t, E, out=t)
    sqrt(t, out=t), subtract(t, F, out=t), multiply(G, 2.0, out=G), divide(G, t, out=o)
    multiply(o, o, out=o), multiply(o, o, out=o), multiply(o, 1e6, out=o), minimum(o, 22.064e6, out=o)


def freezing(base: float, c: list[float]):  # type: ignore[no-untyped-def]
    def curve(w, o, t, u):  # type: ignore[no-untyped-def]
        subtract(w, base, out=t), multiply(t, c[5], out=o)
        for k in reversed(c[1:5]):
            add(o, k, out=o), multiply(o, t, out=o)
        add(o, c[0], out=o)

    return curve


stiffness, mass, ratio = (1e4, 1e5), (100.0, 500.0), (0.5, 1.5)
angle, force, length, gear = (-0.7, 0.7), (500.0, 9000.0), (0.2, 0.5), (0.6, 5.0)
FUNCTIONS = [
    ("spring.coil_rate", coil_rate, [(0.01, 0.02), (0.08, 0.12), (4.0, 9.0), (78e9, 82e9)]),
    ("spring.critical_damping", critical_damping, [stiffness, mass]),
    ("spring.inclined_tangent_rate", inclined_tangent_rate, [stiffness, ratio, angle, force, length]),
    ("spring.natural_frequency", natural_frequency, [stiffness, mass]),
    ("spring.ride_rate", ride_rate, [stiffness, stiffness]),
    ("spring.static_deflection", lambda f, k, o, t, u: divide(f, k, out=o), [force, stiffness]),
    ("spring.wheel_rate", wheel_rate, [stiffness, ratio, angle]),
    ("spring.wheel_tangent_rate", wheel_tangent_rate, [stiffness, ratio, force, (-0.5, 0.5)]),
    ("driveline.road_speed", road_speed, [(100.0, 600.0), gear, gear, length]),
    ("driveline.engine_speed", engine_speed, [(1.0, 40.0), gear, gear, length]),
    ("driveline.wheel_torque", wheel_torque, [(50.0, 400.0), gear, gear, (0.8, 1.0)]),
    ("engine.power", lambda torque, w, o, t, u: multiply(torque, w, out=o), [(50.0, 400.0), (100.0, 600.0)]),
    ("engine.torque", lambda p, w, o, t, u: divide(p, w, out=o), [(1e4, 1e5), (100.0, 600.0)]),
    ("air.geopotential_altitude", geopotential_altitude, [(0.0, 4000.0)]),
    ("air.standard_pressure", standard_pressure, [(0.0, 4000.0)]),
    ("air.standard_density", standard_density, [(0.0, 4000.0)]),
    (
        "fluid.ethylene_glycol_freezing_temperature",
        freezing(0.308462, [257.9, -80.8, -133.4, -72.93, 100.6, 11.4]),
        [(0.0, 0.6)],
    ),
    (
        "fluid.propylene_glycol_freezing_temperature",
        freezing(0.307031, [259.9, -66.31, -109.4, -228.3, -340.9, 146.5]),
        [(0.0, 0.6)],
    ),
    ("fluid.water_saturation_pressure", water_saturation_pressure, [(280.0, 600.0)]),
]


def arrays() -> None:
    """Each function beside its own formula; the peer checks no range, so the wanted ratio asks for more than it says."""
    result, o, t, u = np.empty((4, N))
    for name, numpy_way, ranges in FUNCTIONS:
        system, function = name.split(".")
        ufunc = getattr(getattr(si, system), function)
        given = [between(*limits) for limits in ranges]
        ours, peer = rounds(
            lambda: seconds(lambda: ufunc(*given, out=result)), lambda: seconds(lambda: numpy_way(*given, o, t, u))
        )
        np.testing.assert_allclose(o, result, rtol=1e-9, err_msg=name)
        row(f"si.{name}, 1e6, NumPy", ours * 1e3, peer * 1e3, "ms", "faster 1.5")


def checked() -> None:
    """The whole job of one function in NumPy: the formula, its ranges checked, NaN outside them."""
    k, kt = between(*stiffness), between(*stiffness)
    result, o, t, u = np.empty((4, N))
    bad, one = np.empty((2, N), dtype=bool)

    def numpy_way() -> None:
        ride_rate(k, kt, o, t, u)
        np.less_equal(k, 0.0, out=bad)
        for x in (k, kt):
            np.greater(x, 0.0, out=one), np.logical_not(one, out=one), np.logical_or(bad, one, out=bad)
            np.isfinite(x, out=one), np.logical_not(one, out=one), np.logical_or(bad, one, out=bad)
        np.copyto(o, np.nan, where=bad)

    ours, peer = rounds(
        lambda: seconds(lambda: si.spring.ride_rate(k, kt, out=result)), lambda: seconds(numpy_way)
    )
    np.testing.assert_allclose(o, result, rtol=1e-9)
    row("si.spring.ride_rate, 1e6, NumPy with the same checks", ours * 1e3, peer * 1e3, "ms", "faster 1.5")


def water(rust: str) -> None:
    p = np.arange(1e4, 1e4 + N)
    result, o, t, u = np.empty((4, N))

    def loop() -> float:
        output = subprocess.run([rust, "loop", "3"], check=True, capture_output=True, text=True).stdout
        return median(float(line) for line in output.split()[1:]) * 1e-9 * N

    ours, peer, written, plain = rounds(
        lambda: seconds(lambda: si.fluid.water_boiling_temperature(p, out=result)),
        lambda: seconds(lambda: water_boiling_temperature(p, o, t, u)),
        lambda: seconds(lambda: water_as_written(p)),
        loop,
    )
    np.testing.assert_allclose(o, result, rtol=1e-9)
    np.testing.assert_allclose(water_as_written(p), result, rtol=1e-9)
    row("si.fluid.water_boiling_temperature, 1e6, NumPy tuned by hand", ours * 1e3, peer * 1e3, "ms", "faster 4")
    row("the same, NumPy as the release writes it", ours * 1e3, written * 1e3, "ms", "faster 4")
    row("si.fluid.water_boiling_temperature, plain Rust loop", ours / N * 1e9, plain / N * 1e9, "ns", "faster 1")


def calls() -> None:
    def plain(*, spring_rate: float, motion_ratio: float, angle_from_measured_travel: float) -> float:
        if not 0.0 < spring_rate < math.inf:
            raise ValueError(f"spring_rate = {spring_rate} is outside its range")
        if not 0.0 < motion_ratio <= 3.0:
            raise ValueError(f"motion_ratio = {motion_ratio} is outside its range")
        if not -math.pi / 2 <= angle_from_measured_travel <= math.pi / 2:
            raise ValueError(f"angle_from_measured_travel = {angle_from_measured_travel} is outside its range")
        along = motion_ratio * math.cos(angle_from_measured_travel)
        return spring_rate * along * along

    k, r, a = 300 * lbf_in, 0.75, 20 * deg
    ks, as_ = k.si, a.si
    ufunc = si.spring.wheel_rate
    batch = range(20_000)

    def with_units() -> None:
        for _ in batch:
            spring.wheel_rate(spring_rate=k, motion_ratio=r, angle_from_measured_travel=a)

    def from_numbers() -> None:
        for _ in batch:
            spring.wheel_rate(spring_rate=300 * lbf_in, motion_ratio=0.75, angle_from_measured_travel=20 * deg)

    def scalar() -> None:
        for _ in batch:
            ufunc(ks, r, as_)

    def python() -> None:
        for _ in batch:
            plain(spring_rate=ks, motion_ratio=r, angle_from_measured_travel=as_)

    units, numbers, numpy_call, peer = (
        time / len(batch) * 1e6
        for time in rounds(*(lambda call=call: seconds(call) for call in (with_units, from_numbers, scalar, python)))
    )
    limit = "below 1.5 or 10"
    row("spring.wheel_rate of quantities, plain Python", units, peer, "µs", limit)
    row("the same, the quantities made for the call", numbers, peer, "µs", limit)
    row("si.spring.wheel_rate of three floats, plain Python", numpy_call, peer, "µs", limit)


def importing() -> None:
    program = (
        "import time, numpy; start = time.perf_counter(); import axlewright; "
        "middle = time.perf_counter(); from axlewright import spring, si; si.spring.wheel_rate; "
        "print(middle - start, time.perf_counter() - start)"
    )
    times = []
    for _ in range(ROUNDS + 1):
        output = subprocess.run([sys.executable, "-c", program], check=True, capture_output=True, text=True).stdout
        times.append([float(word) for word in output.split()])
    alone, used = (median(column) * 1e3 for column in zip(*times[1:], strict=True))
    row("import axlewright, after NumPy", alone, None, "ms", "below 10")
    row("the same, and spring and si.spring", used, None, "ms", "below 10")


if __name__ == "__main__":
    arrays()
    checked()
    water(sys.argv[1])
    calls()
    importing()
