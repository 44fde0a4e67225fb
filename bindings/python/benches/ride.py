"""Motions of a quarter car beside the same work in NumPy and SciPy, for `cargo xtask bench`.

A line a measurement, as in `bench.py`. Linear: 401 rows of a step beside exact discrete stepping in NumPy, its matrices found by SciPy before the clock runs. Nonlinear:
beside `solve_ivp` with the tolerance at which it is as near to the truth as ours.
"""

from __future__ import annotations

from collections.abc import Callable
from statistics import median
from typing import Any

import measure
import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.linalg import expm

from axlewright import ride
from axlewright.units import N, N_mm, Ns_m, kg, m, m_s, mm, s

SPRUNG, UNSPRUNG, RATE, DAMPING, TYRE = 300.0, 40.0, 22e3, 1500.0, 190e3
STEP, TIMES = 0.05, np.linspace(0.0, 2.0, 401)
ROUNDS = 15


def row(item: str, ours: float, peer: float, wanted: str) -> None:
    measure.row(item, ours * 1e3, peer * 1e3, "ms", wanted)


def rounds(*calls: Callable[[], object]) -> list[float]:
    """The median time of each, one after the other in every round; the first round warms up."""
    times = [[measure.seconds(call) for call in calls] for _ in range(ROUNDS + 1)]
    return [median(column) for column in zip(*times[1:], strict=True)]


def linear() -> None:
    car = ride.QuarterCar(
        sprung_mass=SPRUNG * kg, unsprung_mass=UNSPRUNG * kg, wheel_rate=22 * N_mm, wheel_damping=DAMPING * Ns_m, tyre_rate=190 * N_mm
    )
    a = np.array(
        [
            [0, 1, 0, 0],
            [-RATE / SPRUNG, -DAMPING / SPRUNG, RATE / SPRUNG, DAMPING / SPRUNG],
            [0, 0, 0, 1],
            [RATE / UNSPRUNG, DAMPING / UNSPRUNG, -(RATE + TYRE) / UNSPRUNG, -DAMPING / UNSPRUNG],
        ]
    )
    whole = np.zeros((5, 5))
    whole[:4, :4], whole[3, 4] = a, TYRE / UNSPRUNG
    discrete = expm(whole * TIMES[1])
    forward, push = discrete[:4, :4].copy(), discrete[:4, 4] * STEP

    def numpy_way() -> np.ndarray:
        x = np.zeros((len(TIMES), 4))
        for i in range(1, len(x)):
            x[i] = forward @ x[i - 1] + push
        return x

    def ours() -> Any:
        return car.step(height=STEP * m, duration=2 * s, time_step=0.005 * s)

    np.testing.assert_allclose(ours()["body_displacement"].si, numpy_way()[:, 0], rtol=1e-9, atol=1e-14)
    row("ride.QuarterCar.step, 401 rows, NumPy step by step", *rounds(ours, numpy_way), "faster 50")


def nonlinear() -> None:
    damper = [(-4.0, -5200.0), (-0.5, -1500.0), (-0.1, -700.0), (0.1, 250.0), (0.5, 600.0), (4.0, 2500.0)]
    stop = [(0.02, 1500.0), (0.04, 7000.0), (0.12, 90e3)]
    car = ride.NonlinearQuarterCar(
        sprung_mass=SPRUNG * kg,
        unsprung_mass=UNSPRUNG * kg,
        wheel_rate=22 * N_mm,
        tyre_rate=190 * N_mm,
        damper={"gas_force": 0 * N, "points": [{"velocity": v * m_s, "force": f * N} for v, f in damper]},
        damper_motion_ratio=1,
        bump_stop={"bump_remaining": 30 * mm, "motion_ratio": 1, "stop": {"points": [{"compression": x * m, "force": f * N} for x, f in stop]}},
    )
    of_damper = PchipInterpolator(*zip(*sorted([*damper, (0.0, 0.0)]), strict=True))
    of_stop = PchipInterpolator(*zip((0.0, 0.0), *stop, strict=True))
    weight = -(SPRUNG + UNSPRUNG) * 9.80665

    def slope(_: float, x: np.ndarray) -> tuple[float, ...]:
        travel = x[2] - x[0]
        force = RATE * travel + of_damper(x[3] - x[1])
        if travel > 0.03:
            force += of_stop(travel - 0.03)
        tyre = max(TYRE * (STEP - x[2]), weight)
        return x[1], force / SPRUNG, x[3], (tyre - force) / UNSPRUNG

    def solved(tolerance: float, method: str = "RK45") -> np.ndarray:
        return solve_ivp(slope, (0.0, 2.0), np.zeros(4), method, TIMES, rtol=tolerance, atol=tolerance * 0.01).y[0]

    def ours() -> Any:
        return car.step(height=STEP * m, duration=2 * s, time_step=0.005 * s)

    truth = solved(1e-12, "DOP853")
    off = float(np.abs(ours()["body_displacement"].si - truth).max())
    tolerance = next(t for t in 10.0 ** np.arange(-4, -12, -0.5) if np.abs(solved(t) - truth).max() <= off)
    peer = lambda: solved(tolerance)  # noqa: E731
    item = f"ride.NonlinearQuarterCar.step, 401 rows, solve_ivp as near ({off * 1e9:.1f} nm)"
    row(item, *rounds(ours, peer), "faster 100")


if __name__ == "__main__":
    linear()
    nonlinear()
