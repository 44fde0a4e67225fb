"""How leaf springs hold an axle sideways, by beam elements: `python leaf_sideways.py`, or `python leaf_sideways.py rows` for the rows of `suspension.json`.

Both springs of an axle as frames of straight beam elements in space (Euler and Bernoulli, with torsion; the matrix of twelve coordinates from memory of any
textbook of the finite element method), the seats and the axle one rigid body. Eyes turn about the vehicle's y axis; about the other two axes they are free
(soft bushes) or held (a bolt without give). The shackle holds its eye sideways and along its own line. Leaves slide on each other. A force across the axle that
does not roll it against the body passes at the height of the roll centre. That height is compared with the line between the eyes where it passes the axle,
which is what the library takes. Nothing here is shared with the crate.
"""

from __future__ import annotations

import json
import sys

import numpy as np
from scipy.linalg import solve

E, G = 206e9, 79.3e9
SPRINGS = {
    # fixed eye, shackle eye, shackle pivot, seat, (x and z), half of the base, wheel centre's height, clamp, rate, width and thickness of a leaf
    "even": ((0.65, 0.55), (-0.65, 0.55), (-0.63, 0.67), (0.0, 0.475), 0.52, 0.39, 0.14, 110e3, 0.07, 0.008),
    "uneven": ((0.64, 0.545), (-0.71, 0.555), (-0.685, 0.67), (0.0, 0.475), 0.52, 0.39, 0.14, 110e3, 0.07, 0.008),
    "sloping": ((0.64, 0.46), (-0.71, 0.55), (-0.685, 0.67), (0.0, 0.475), 0.52, 0.345, 0.14, 60e3, 0.06, 0.007),
    "thick": ((0.64, 0.545), (-0.71, 0.555), (-0.685, 0.67), (0.0, 0.475), 0.52, 0.39, 0.14, 110e3, 0.07, 0.014),
    "flat": ((0.65, 0.5), (-0.65, 0.5), (-0.65, 0.6), (0.0, 0.5), 0.5, 0.39, 0.12, 80e3, 0.06, 0.01),
}  # fmt: skip


def beam(length, stretch, upright, sideways, torsion):
    """Stiffness in local axes: x along, z in the plane of the spring, y across it. Six coordinates an end."""
    k = np.zeros((12, 12))
    for a, b, value in ((0, 6, stretch / length), (3, 9, torsion / length)):
        k[a, a] += value
        k[b, b] += value
        k[a, b] -= value
        k[b, a] -= value
    for rigidity, (v1, t1, v2, t2), s in ((upright, (2, 4, 8, 10), -1), (sideways, (1, 5, 7, 11), 1)):
        c = rigidity / length**3
        l = length * s
        local = c * np.array([[12, 6 * l, -12, 6 * l], [6 * l, 4 * l * l, -6 * l, 2 * l * l], [-12, -6 * l, 12, -6 * l], [6 * l, 2 * l * l, -6 * l, 4 * l * l]])
        k[np.ix_((v1, t1, v2, t2), (v1, t1, v2, t2))] += local
    return k


def arc(start, end, slope, n):
    """Points of an arc in side view from `start` with this slope there to `end`."""
    start, end = np.array(start), np.array(end)
    chord = end - start
    along = np.array([np.sign(chord[0]), slope * np.sign(chord[0])])
    turn = np.arctan2(along[0] * chord[1] - along[1] * chord[0], along @ chord)
    u = np.linspace(0, 1, n + 1)
    if abs(turn) < 1e-9:
        return start + np.outer(u, chord)
    radius = np.hypot(*chord) / (2 * np.sin(turn))
    along /= np.hypot(*along)
    across = np.array([-along[1], along[0]])
    return start + radius * (np.outer(np.sin(2 * turn * u), along) + np.outer(1 - np.cos(2 * turn * u), across))


def compliance(fixed, shackle, pivot, seat, half_base, centre, clamp, rate, width, thickness, held, across=None, n=20):
    """Give of the axle's six coordinates at its centre, body fixed."""
    halves = [arc((seat[0] + np.sign(eye[0] - seat[0]) * clamp / 2, seat[1]), eye, 0.0, n) for eye in (fixed, shackle)]
    lengths = [np.hypot(*np.diff(h, axis=0).T).sum() for h in halves]
    levers = [length + clamp / 2 for length in lengths]
    shares = levers[1] / sum(levers), levers[0] / sum(levers)
    # Bending of the pack as the rate of the spring asks for, its seat free to turn.
    upright = rate / 3 * sum(s**2 * length**3 for s, length in zip(shares, lengths))
    leaves = upright / (E * width * thickness**3 / 12)
    sideways, torsion = leaves * E * thickness * width**3 / 12, leaves * G * width * thickness**3 / 3
    nodes, size = [], 6
    matrix = np.zeros((6 + 2 * 2 * n * 6,) * 2)
    free = np.ones(len(matrix), bool)
    tied = []
    for side in (1, -1):
        for which, points in enumerate(halves):
            numbers = [None]  # the first point belongs to the axle
            for _ in range(n):
                numbers.append(size)
                size += 6
            place = np.column_stack([points[:, 0], np.full(n + 1, side * half_base), points[:, 1]])
            nodes.append((place, numbers))
            for i in range(n):
                d = place[i + 1] - place[i]
                length = np.linalg.norm(d)
                x = d / length
                y = np.array([0.0, 1.0, 0.0])
                turn = np.array([x, y, np.cross(x, y)])
                local = np.kron(np.eye(4), turn)
                k = local.T @ beam(length, leaves * E * width * thickness, upright, sideways, torsion) @ local
                # Coordinates of the beam's ends from those of the whole: the axle's for the clamped end.
                map_ = np.zeros((12, len(matrix)))
                if numbers[i] is None:
                    r = place[i] - np.array([0.0, 0.0, centre])
                    map_[:3, :3] = map_[3:6, 3:6] = np.eye(3)
                    map_[:3, 3:6] = np.array([[0, r[2], -r[1]], [-r[2], 0, r[0]], [r[1], -r[0], 0]])
                else:
                    map_[:6, numbers[i] : numbers[i] + 6] = np.eye(6)
                map_[6:, numbers[i + 1] : numbers[i + 1] + 6] = np.eye(6)
                matrix += map_.T @ k @ map_
            end = numbers[-1]
            if across is None:
                free[end + 1] = False
            else:
                matrix[end + 1, end + 1] += across
            if which == 0:
                free[[end, end + 2]] = False
            else:
                line = np.subtract(pivot, shackle)
                tied.append((end, line / np.hypot(*line)))
            if held:
                free[[end + 3, end + 5]] = False
    for end, line in tied:
        held_along = np.zeros(len(matrix))
        held_along[[end, end + 2]] = line
        matrix += 10 * np.abs(matrix).max() * np.outer(held_along, held_along)
    index = np.flatnonzero(free)
    loads = np.zeros((len(matrix), 6))
    loads[:6] = np.eye(6)
    found = np.zeros((len(matrix), 6))
    found[index] = solve(matrix[np.ix_(index, index)], loads[index], assume_a="sym")
    return found[:6]


def line_between_eyes(spring):
    (fx, fz), (sx, sz), _, (x, _) = spring[:4]
    return fz + (x - fx) * (sz - fz) / (sx - fx)


def roll_centre(spring, held, across=None):
    """Height of the force across that does not roll the axle."""
    give = compliance(*spring, held=held, across=across)
    return spring[5] + give[3, 1] / give[3, 3]


def place(x, y, z):
    return {"x": f"{x} m", "y": f"{y} m", "z": f"{z} m"}


def rows():
    radius = 0.3
    for name, spring in SPRINGS.items():
        fixed, shackle, pivot, seat, y, centre, clamp, rate, _, _ = spring
        leaf = {eye: place(x, y, z) for eye, (x, z) in (("fixed_eye", fixed), ("shackle_eye", shackle), ("shackle_pivot", pivot), ("seat", seat))}
        leaf |= {"seat_angle": "0 rad", "clamped_length": f"{clamp} m", "eye_offset": "0 m", "form": "uniform_section", "load": "6000 N", "rate": f"{rate} N/m"}
        wheel = {"centre": place(0.0, 0.81, centre), "camber": "0 rad", "toe": "0 rad", "loaded_radius": f"{radius} m"}
        for eyes, held, confidence, tolerance in (("free", False, "high", 0.015), ("held", True, "low", 0.015)):
            yield {
                "id": f"leaf-sideways-{name}-{eyes}", "model": "suspension.LeafAxle", "method": "at", "arguments": {"heave": 0.0, "roll": 0.0},
                "inputs": {"axle": "rear", "wheel": wheel, "spring": leaf},
                "expected": {"roll_centre_height": round(float(roll_centre(spring, held) - centre + radius), 5)}, "tolerance": {"abs": tolerance},
                "source": f"tests/scripts/leaf_sideways.py: both springs as beam elements in space, a force across that does not roll the axle; eyes {eyes} about the vehicle's x and z axes, held sideways",
                "provenance": "independent script", "confidence": confidence,
            }  # fmt: skip


if __name__ == "__main__":
    if sys.argv[1:] == ["rows"]:
        print(",\n".join(json.dumps(row, ensure_ascii=False) for row in rows()))
    else:
        print(f"{'spring':<10} {'line between eyes':>18} {'eyes free':>10} {'held':>10}   0.5 and 2 kN/mm sideways at each eye")
        for name, spring in SPRINGS.items():
            found = [roll_centre(spring, False), roll_centre(spring, True), roll_centre(spring, False, 0.5e6), roll_centre(spring, False, 2e6)]
            print(f"{name:<10} {line_between_eyes(spring) * 1e3:>15.1f} mm" + "".join(f" {z * 1e3:>7.1f} mm" for z in found))
