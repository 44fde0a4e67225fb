"""A double wishbone from Python, for `cargo xtask bench`: a line a measurement, as in `bench.py`.

A sweep through 201 positions beside `scipy.optimize.fsolve` on the linkage's own equations, and a hundred thousand geometries. The
argument is the program of the Rust part, which runs between the rounds.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tomllib
from pathlib import Path
from statistics import median
from typing import Any

from measure import row, seconds
import numpy as np
from scipy.optimize import fsolve  # type: ignore[import-untyped]

from axlewright.suspension import DoubleWishbone
from axlewright.units import mm

DUNLIN = Path(__file__).parents[3] / "examples/sheets/dunlin_front_wishbone.toml"
ROUNDS = 9
TRAVEL = np.linspace(-60.0, 60.0, 201)
PARTS = {
    "upper_arm": ("front_pivot", "rear_pivot", "ball_joint"),
    "lower_arm": ("front_pivot", "rear_pivot", "ball_joint"),
    "tie_rod": ("inner", "outer"),
    "wheel": ("centre",),
}
Array = np.ndarray[Any, Any]


def moved(document: dict[str, Any], random: np.random.Generator) -> dict[str, Any]:
    """The linkage with every point up to 15 mm elsewhere along each axis."""
    other: dict[str, Any] = json.loads(json.dumps(document))
    for part, points in PARTS.items():
        for point in points:
            for axis, text in other[part][point].items():
                other[part][point][axis] = f"{float(text.removesuffix(' mm')) + random.uniform(-15.0, 15.0):.6f} mm"
    return other


class Linkage:
    """Nine unknowns, the coordinates of both ball joints and the tie rod's end; eight squared distances and the wheel's height.

    The residuals are plain arithmetic on floats with an analytic Jacobian; each position starts from the last one.
    """

    def __init__(self, document: dict[str, Any]) -> None:
        def point(part: str, name: str) -> Array:
            return np.array([float(document[part][name][axis].removesuffix(" mm")) / 1e3 for axis in "xyz"])

        upper, lower = point("upper_arm", "ball_joint"), point("lower_arm", "ball_joint")
        end, wheel = point("tie_rod", "outer"), point("wheel", "centre")
        self.start, self.height = np.concatenate([upper, lower, end]), float(wheel[2])
        arms = [("upper_arm", "front_pivot", 0), ("upper_arm", "rear_pivot", 0), ("lower_arm", "front_pivot", 3)]
        arms += [("lower_arm", "rear_pivot", 3), ("tie_rod", "inner", 6)]
        self.fixed = [(*map(float, at), place, float(((at - self.start[place : place + 3]) ** 2).sum()))
                      for at, place in ((point(part, name), place) for part, name, place in arms)]  # fmt: skip
        pairs = [(0, 3, upper - lower), (6, 3, end - lower), (0, 6, upper - end)]
        self.pairs = [(one, other, float((apart**2).sum())) for one, other, apart in pairs]
        across = np.cross(upper - lower, end - lower)
        self.wheel = np.linalg.solve(np.array([upper - lower, end - lower, across]).T, wheel - lower).tolist()
        self.jacobian = np.zeros((9, 9))

    def residuals(self, q: Array, height: float) -> list[float]:
        q = q.tolist()
        r = [(q[o] - x) ** 2 + (q[o + 1] - y) ** 2 + (q[o + 2] - z) ** 2 - square for x, y, z, o, square in self.fixed]
        for i, j, square in self.pairs:
            r.append((q[i] - q[j]) ** 2 + (q[i + 1] - q[j + 1]) ** 2 + (q[i + 2] - q[j + 2]) ** 2 - square)
        a, b, c = self.wheel
        across = (q[0] - q[3]) * (q[7] - q[4]) - (q[1] - q[4]) * (q[6] - q[3])
        r.append(q[5] + a * (q[2] - q[5]) + b * (q[8] - q[5]) + c * across - height)
        return r

    def slopes(self, q: Array, height: float) -> Array:
        made, q = self.jacobian, q.tolist()
        for n, (x, y, z, o, _) in enumerate(self.fixed):
            made[n, o], made[n, o + 1], made[n, o + 2] = 2 * (q[o] - x), 2 * (q[o + 1] - y), 2 * (q[o + 2] - z)
        for n, (i, j, _) in enumerate(self.pairs, 5):
            for axis in (0, 1, 2):
                slope = 2 * (q[i + axis] - q[j + axis])
                made[n, i + axis], made[n, j + axis] = slope, -slope
        a, b, c = self.wheel
        ux, uy, ex, ey = q[0] - q[3], q[1] - q[4], q[6] - q[3], q[7] - q[4]
        made[8] = [c * ey, -c * ex, a, c * (uy - ey), c * (ex - ux), 1 - a - b, -c * uy, c * ux, b]
        return made

    def sweep(self) -> list[Array]:
        q, found = self.start, []
        for z in (self.height + TRAVEL / 1e3).tolist():
            q = fsolve(self.residuals, q, args=(z,), fprime=self.slopes, xtol=1e-12)
            found.append(q)
        return found

    def centres(self, found: list[Array]) -> Array:
        """Of the wheel."""
        q = np.array(found).reshape(-1, 3, 3)
        up, end = q[:, 0] - q[:, 1], q[:, 2] - q[:, 1]
        a, b, c = self.wheel
        return q[:, 1] + a * up + b * end + c * np.cross(up, end)


def sweep(rust: str) -> None:
    dunlin, random = tomllib.loads(DUNLIN.read_text()), np.random.default_rng(5)
    travel = TRAVEL * mm
    pairs = [(DoubleWishbone(**one), Linkage(one)) for one in [dunlin, *(moved(dunlin, random) for _ in range(8))]]
    for model, linkage in pairs:
        table = model.table(travel=travel, rack_travel=0 * mm)
        ours = np.stack([table[f"wheel_{axis}"].si for axis in "xyz"], axis=1)
        np.testing.assert_allclose(ours, linkage.centres(linkage.sweep()), rtol=0, atol=1e-9)

    def alone() -> float:
        return float(subprocess.run([rust, "sweep"], check=True, capture_output=True, text=True).stdout)

    times = []
    for turn in range(ROUNDS + 1):
        model, linkage = pairs[turn % len(pairs)]
        mine = seconds(lambda model=model: model.table(travel=travel, rack_travel=0 * mm))
        times.append((alone(), mine, seconds(linkage.sweep)))
    rust_time, ours, peer = (median(column) * 1e6 for column in zip(*times[1:], strict=True))
    positions = len(TRAVEL)
    row("DoubleWishbone.table in Rust, a position with all results", rust_time / positions, None, "µs", "below 1")
    row("the same, 201 positions, fsolve for positions alone", rust_time, peer, "µs", "faster 150")
    row("the same from Python", ours, peer, "µs", "faster 150")


def geometries(rust: str) -> None:
    """In Rust on all cores; in Python one model after another, of a hundredth."""
    alone = float(subprocess.run([rust, "geometries"], check=True, capture_output=True, text=True).stdout)
    dunlin, random = tomllib.loads(DUNLIN.read_text()), np.random.default_rng(6)
    documents, travel = [moved(dunlin, random) for _ in range(1000)], np.linspace(-60.0, 60.0, 21) * mm
    ours = seconds(lambda: [DoubleWishbone(**one).table(travel=travel, rack_travel=0 * mm) for one in documents])
    row("1e5 geometries, 21 positions each, Rust, all cores", alone, None, "s", "below 5")
    row("one of them from Python, built and swept", ours / len(documents) * 1e6, None, "µs", "below 100")


if __name__ == "__main__":
    sweep(sys.argv[1])
    geometries(sys.argv[1])
