"""A live axle swept through its travel beside SciPy's fsolve, for `cargo xtask bench`: a line a measurement, as in `bench.py`.

The peer solves for the positions only, from lean scalar residuals with an analytic Jacobian, each from the position before it; ours gives every
result. Seeded geometries of three links and a rod, and the Dunlin's four links and rod on bushes, where the peer brings the gradient of the strain
energy to zero. Both must find the same positions.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, sin, sqrt
from statistics import median

from measure import row, seconds
import numpy as np
from scipy.optimize import fsolve

from axlewright.suspension import LiveAxle
from axlewright.units import m, rad

ROUNDS = 7
HEAVES = np.linspace(-0.08, 0.08, 201)
ROLL = 0.03
Link = tuple[tuple[float, ...], tuple[float, ...], float]


def beside(ours: Callable[[], object], peer: Callable[[], object]) -> list[float]:
    """Microseconds a position, medians of interleaved rounds; the first one warms up. Ours is so short that it is run many times a round."""
    many = lambda: [ours() for _ in range(20)]  # noqa: E731
    rounds = [(seconds(many) / 20, seconds(peer)) for _ in range(ROUNDS + 1)]
    return [median(column) / len(HEAVES) * 1e6 for column in zip(*rounds[1:], strict=True)]


def at(p) -> dict[str, str]:  # type: ignore[no-untyped-def]
    return {axis: f"{float(value)!r} m" for axis, value in zip("xyz", p, strict=True)}


def wheel(centre) -> dict[str, object]:  # type: ignore[no-untyped-def]
    return {"centre": at(centre), "camber": "0 deg", "toe": "0 deg", "loaded_radius": "0.33 m"}


def spring() -> dict[str, object]:
    return {
        "body_eye": at((0.05, 0.4, 0.72)), "axle_eye": at((-0.05, 0.5, 0.27)),
        "spring": {"rate": "40 N/mm", "free_length": "400 mm", "solid_length": "150 mm", "seat_offset": "180 mm"},
        "damper": {"open_length": "600 mm", "closed_length": "360 mm", "gas_force": "150 N"},
    }  # fmt: skip


REST = {"pinion": {"angle": "2 deg", "nose": at((0.3, 0.0, 0.34))}}
PITCHING = {"drive_share": 1, "brake_share": "40 %", "centre_of_gravity_height": "0.6 m", "wheelbase": "2.6 m"}
MIRROR = np.array([1.0, -1.0, 1.0])


def three(random: np.random.Generator) -> tuple[LiveAxle, list[Link]]:
    """Two lower links, an upper one, a rod."""
    near = lambda p: np.array(p) + random.uniform(-0.02, 0.02, 3)  # noqa: E731
    middle = np.array([0.0, 0.0, 0.32])
    lower, upper, rod = (
        (near((0.56, 0.42, 0.3)), near((0.02, 0.46, 0.235))),
        (near((0.42, 0.1, 0.425)), near((-0.02, 0.1, 0.455))),
        (near((-0.1, 0.46, 0.36)), near((-0.1, -0.5, 0.335))),
    )
    model = LiveAxle(
        axle="rear", wheel=wheel((0.0, 0.75, 0.32)),
        links=[
            {"name": "lower", "fitted": "pair", "body": at(lower[0]), "axle": at(lower[1])},
            {"name": "upper", "fitted": "single", "body": at(upper[0]), "axle": at(upper[1])},
        ],
        lateral_rod={"body": at(rod[0]), "axle": at(rod[1])}, coil_over=spring(), pitching=PITCHING, **REST,
    )  # fmt: skip
    ends = [lower, (lower[0] * MIRROR, lower[1] * MIRROR), upper, rod]
    return model, [(tuple(b), tuple(a - middle), float(np.linalg.norm(a - b))) for b, a in ends]


def four() -> tuple[LiveAxle, list[Link], list[float]]:
    """Four links and a rod on bushes; stiffness of each, of two bushes in series."""
    middle = np.array([0.0, 0.0, 0.345])
    lower, upper, rod = (
        (np.array([0.56, 0.43, 0.31]), np.array([0.02, 0.47, 0.265])),
        (np.array([0.45, 0.36, 0.445]), np.array([-0.01, 0.39, 0.48])),
        (np.array([-0.11, 0.47, 0.39]), np.array([-0.11, -0.5, 0.37])),
    )
    bushes = lambda k: {"body_bush": f"{k} N/mm", "axle_bush": f"{k} N/mm"}  # noqa: E731
    model = LiveAxle(
        axle="rear", wheel=wheel((0.0, 0.76, 0.345)),
        links=[
            {"name": "lower", "fitted": "pair", "body": at(lower[0]), "axle": at(lower[1]), **bushes(9000)},
            {"name": "upper", "fitted": "pair", "body": at(upper[0]), "axle": at(upper[1]), **bushes(6000)},
        ],
        lateral_rod={"body": at(rod[0]), "axle": at(rod[1]), **bushes(8000)}, coil_over=spring(), pitching=PITCHING, **REST,
    )  # fmt: skip
    ends = [lower, (lower[0] * MIRROR, lower[1] * MIRROR), upper, (upper[0] * MIRROR, upper[1] * MIRROR), rod]
    return model, [(tuple(b), tuple(a - middle), float(np.linalg.norm(a - b))) for b, a in ends], [4.5, 4.5, 3.0, 3.0, 4.0]


SR, CR = sin(ROLL), cos(ROLL)


def misses(q, links: list[Link], z: float) -> list[float]:  # type: ignore[no-untyped-def]
    """By how much each link is longer than drawn."""
    x, y, yaw, pitch = q
    sy, cy, sp, cp = sin(yaw), cos(yaw), sin(pitch), cos(pitch)
    xx, xy, xz = cy * cp - sy * sp * SR, -sy * CR, cy * sp + sy * cp * SR
    yx, yy, yz = sy * cp + cy * sp * SR, cy * CR, sy * sp - cy * cp * SR
    zx, zz = -sp * CR, cp * CR
    out = []
    for (bx, by, bz), (ax, ay, az), length in links:
        dx, dy = x + xx * ax + xy * ay + xz * az - bx, y + yx * ax + yy * ay + yz * az - by
        dz = z + zx * ax + SR * ay + zz * az - bz
        out.append(sqrt(dx * dx + dy * dy + dz * dz) - length)
    return out


def slopes(q, links: list[Link], z: float) -> list[tuple[float, ...]]:  # type: ignore[no-untyped-def]
    """Their derivatives by place, yaw and pitch."""
    x, y, yaw, pitch = q
    sy, cy, sp, cp = sin(yaw), cos(yaw), sin(pitch), cos(pitch)
    xx, xy, xz = cy * cp - sy * sp * SR, -sy * CR, cy * sp + sy * cp * SR
    yx, yy, yz = sy * cp + cy * sp * SR, cy * CR, sy * sp - cy * cp * SR
    zx, zz = -sp * CR, cp * CR
    out = []
    for (bx, by, bz), (ax, ay, az), _ in links:
        rx, ry, rz = xx * ax + xy * ay + xz * az, yx * ax + yy * ay + yz * az, zx * ax + SR * ay + zz * az
        dx, dy, dz = x + rx - bx, y + ry - by, z + rz - bz
        over = 1.0 / sqrt(dx * dx + dy * dy + dz * dz)
        ex, ey, ez = dx * over, dy * over, dz * over
        # About z, and about the axle's own length, which lies along (xy, yy, SR).
        own = ex * (yy * rz - SR * ry) + ey * (SR * rx - xy * rz) + ez * (xy * ry - yy * rx)
        out.append((ex, ey, ey * rx - ex * ry, own))
    return out


def lengths(q, links: list[Link], z: float):  # type: ignore[no-untyped-def]
    """Both, and what the second derivatives want; one pass."""
    x, y, yaw, pitch = q
    sy, cy, sp, cp = sin(yaw), cos(yaw), sin(pitch), cos(pitch)
    xx, xy, xz = cy * cp - sy * sp * SR, -sy * CR, cy * sp + sy * cp * SR
    yx, yy, yz = sy * cp + cy * sp * SR, cy * CR, sy * sp - cy * cp * SR
    zx, zz = -sp * CR, cp * CR
    wrong, rows, turned = [], [], []
    for (bx, by, bz), (ax, ay, az), length in links:
        rx, ry, rz = xx * ax + xy * ay + xz * az, yx * ax + yy * ay + yz * az, zx * ax + SR * ay + zz * az
        dx, dy, dz = x + rx - bx, y + ry - by, z + rz - bz
        now = sqrt(dx * dx + dy * dy + dz * dz)
        ex, ey, ez = dx / now, dy / now, dz / now
        px, py, pz = yy * rz - SR * ry, SR * rx - xy * rz, xy * ry - yy * rx
        wrong.append(now - length)
        rows.append((ex, ey, ey * rx - ex * ry, ex * px + ey * py + ez * pz))
        turned.append((rx, ry, px, py, pz, ex, ey, ez, now))
    return wrong, rows, turned, (xy, yy)


def exact(links: list[Link]) -> np.ndarray:
    q, out = np.zeros(4), []
    for heave in HEAVES:
        q = fsolve(misses, q, args=(links, 0.32 + heave), fprime=slopes, xtol=1e-10)
        out.append(q)
    return np.array(out)


def balance(q, links: list[Link], stiffness: list[float], z: float) -> list[float]:  # type: ignore[no-untyped-def]
    a = b = c = d = 0.0
    for k, f, (s, t, u, v) in zip(stiffness, misses(q, links, z), slopes(q, links, z), strict=True):
        f *= k
        a, b, c, d = a + f * s, b + f * t, c + f * u, d + f * v
    return [a, b, c, d]


def bends(q, links: list[Link], stiffness: list[float], z: float) -> list[list[float]]:  # type: ignore[no-untyped-def]
    wrong, rows, turned, (ox, oy) = lengths(q, links, z)
    aa = ab = ac = ad = bb = bc = bd = cc = cd = dd = 0.0
    for k, f, (s, t, u, v), (rx, ry, px, py, pz, ex, ey, ez, now) in zip(stiffness, wrong, rows, turned, strict=True):
        g, h = k * (1.0 - f / now), k * f / now  # of the product of slopes, and of the ends' own products
        turn = now * (ex * (oy * pz - SR * py) + ey * (SR * px - ox * pz) + ez * (ox * py - oy * px))
        aa, ab, ac, ad = aa + g * s * s + h, ab + g * s * t, ac + g * s * u - h * ry, ad + g * s * v + h * px
        bb, bc, bd = bb + g * t * t + h, bc + g * t * u + h * rx, bd + g * t * v + h * py
        cc += g * u * u + h * (rx * rx + ry * ry - now * (ex * rx + ey * ry))
        cd += g * u * v + h * (rx * py - ry * px + now * (ey * px - ex * py))
        dd += g * v * v + h * (px * px + py * py + pz * pz + turn)
    return [[aa, ab, ac, ad], [ab, bb, bc, bd], [ac, bc, cc, cd], [ad, bd, cd, dd]]


def least_energy(links: list[Link], stiffness: list[float]) -> np.ndarray:
    q, out = np.zeros(4), []
    for heave in HEAVES:
        z = 0.345 + heave
        q = fsolve(balance, q, args=(links, stiffness, z), fprime=bends, xtol=1e-10)
        out.append(q)
    return np.array(out)


def sweep(model: LiveAxle):  # type: ignore[no-untyped-def]
    return model.table(heave=HEAVES * m, roll=[ROLL] * rad)


def same(model: LiveAxle, found: np.ndarray) -> None:
    table = sweep(model)
    for name, wanted in zip(("axle_x", "lateral_shift", "axle_steer", "axle_pitch"), found.T, strict=True):
        off = np.abs(np.asarray(table[name].si) - wanted).max()
        assert off < 1e-9, f"{name} is off by {off}"


def live_axle() -> None:
    random = np.random.default_rng(30)
    axles = [three(random) for _ in range(5)]
    for model, links in axles:
        same(model, exact(links))
    times = [beside(lambda a=a: sweep(a), lambda on=on: exact(on)) for a, on in axles]
    ours, peer = (sum(column) / len(axles) for column in zip(*times, strict=True))
    row("live axle, three links and a rod: a position of 201", ours, peer, "µs", "faster 100")
    model, links, stiffness = four()
    same(model, least_energy(links, stiffness))
    ours, peer = beside(lambda: sweep(model), lambda: least_energy(links, stiffness))
    row("live axle, four links and a rod on bushes: a position of 201", ours, peer, "µs", "faster 100")


if __name__ == "__main__":
    live_axle()
