"""An independent solution of a live axle, for the rows of `suspension.json`: `python live_axle.py > rows`.

Six unknowns (middle and rotation vector of the axle), a seventh for the crank of a Watt linkage. Where nothing is redundant: scipy's
least squares on the lengths of the links, the height of the middle and the elevation of the line through the wheels. Where a link is redundant: the strain
energy of the bushes is least under these two conditions and the lengths of rigid links, with Lagrange's multipliers; the gradient by complex
steps. Every derivative is a central difference of whole solutions, two steps extrapolated (Richardson); the bind moment and its
slope are derivatives of the least energy. Nothing here is shared with the crate. Axes and signs: x forward, y left, z up; heave + in bump, roll + left wheel up.
"""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import fsolve, least_squares, root

norm = np.linalg.norm
X, Y, Z = np.eye(3)
BUMP = 0.025


def cross(a):
    return np.array([[0, -a[2], a[1]], [a[2], 0, -a[0]], [-a[1], a[0], 0]])


def turn(v):
    """Rodrigues' formula; also of complex vectors."""
    square = v @ v
    k = cross(v)
    if abs(square) < 1e-6:
        a, b = 1 - square / 6 + square**2 / 120, 0.5 - square / 24 + square**2 / 720
    else:
        angle = np.sqrt(square)
        a, b = np.sin(angle) / angle, (1 - np.cos(angle)) / square
    return np.eye(3) + a * k + b * (k @ k)


def size(v):
    return np.sqrt(v @ v)


class Axle:
    """`links`: name, point on the body, point on the axle, stiffness or None. `watt`: what carries the crank, its pivot, two of (crank, outer, stiffness)."""

    def __init__(self, wheel, links, watt=None):
        self.wheel = np.array(wheel, float)
        self.middle = self.wheel * [1, 0, 1]
        self.links = [(name, np.array(b, float), np.array(a, float) - self.middle, k) for name, b, a, k in links]
        self.watt = watt
        self.size = 6 if watt is None else 7
        start = np.zeros(self.size)
        start[:3] = self.middle
        self.start, self.drawn = start, np.zeros(len(links) + (2 if watt else 0))
        self.drawn = self.lengths(start)
        self.stiff = [link[3] for link in links] + ([rod[2] for rod in watt[2]] if watt else [])
        self.redundant = len(self.drawn) > self.size - 2

    def lengths(self, q):
        p, r = q[:3], turn(q[3:6])
        out = [size(p + r @ a - b) for _, b, a, _ in self.links]
        if self.watt:
            carrier, pivot, rods = self.watt
            swing = turn(X * q[6])
            for crank, outer, _ in rods:
                pivot, arm, outer = np.array(pivot, float), np.array(crank, float) - pivot, np.array(outer, float)
                if carrier == "axle":
                    out.append(size(p + r @ (pivot - self.middle + swing @ arm) - outer))
                else:
                    out.append(size(p + r @ (outer - self.middle) - pivot - swing @ arm))
        return np.array(out) - self.drawn

    def solve(self, heave, roll, steps=None):
        q, multipliers = self.start, None
        for share in np.linspace(0, 1, (steps or max(1, int(np.ceil(max(abs(heave), abs(roll)) / 0.02)))) + 1)[1:]:
            q, multipliers = self.newton(q, multipliers, heave * share, roll * share)
        return q

    def newton(self, q, multipliers, heave, roll):
        given = lambda q: np.array([q[2] - self.middle[2] - heave, turn(q[3:6])[2, 1] - np.sin(roll)])  # noqa: E731
        if not self.redundant:
            found = least_squares(lambda q: [*self.lengths(q), *given(q)], q, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
            assert np.abs(found.fun).max() < 1e-12, found.fun
            return found.x, None
        gives = self.gives()
        hard = [i for i, k in enumerate(gives) if k is None]
        soft = [(i, k) for i, k in enumerate(gives) if k is not None]

        def condition(q):
            return np.array([*given(q), *(self.lengths(q)[i] for i in hard)])

        def wrong(u):
            q, m = u[: self.size], u[self.size :]
            out = np.empty(self.size)
            for j in range(self.size):
                step = q.astype(complex)
                step[j] += 1e-30j
                g = self.lengths(step)
                out[j] = (sum(0.5 * k * g[i] ** 2 for i, k in soft) + m @ condition(step)).imag / 1e-30
            return np.array([*out, *condition(q).real])

        u = np.array([*q, *(np.zeros(2 + len(hard)) if multipliers is None else multipliers)])
        for _ in range(3):
            u = root(wrong, u, tol=1e-15).x
        # Two steps of Newton with a central difference of the exact gradient: to the last digits.
        for _ in range(3):
            j = np.array([(wrong(u + e) - wrong(u - e)) / 2e-6 for e in np.eye(len(u)) * 1e-6]).T
            u = u - np.linalg.solve(j, wrong(u))
        assert np.abs(wrong(u)).max() < 1e-12, wrong(u)
        return u[: self.size], u[self.size :]

    def gives(self):
        """Stiffness in MN/m; 1 for all where every joint is rigid."""
        return [1.0] * len(self.stiff) if all(k is None for k in self.stiff) else [None if k is None else k / 1e6 for k in self.stiff]

    def energy(self, q):
        return sum(0.5 * k * 1e6 * g**2 for k, g in zip(self.gives(), self.lengths(q)) if k is not None)


def second(at, h=4e-3):
    """Second derivative by differences, extrapolated."""
    one, two = ((at(d) + at(-d) - 2 * at(0.0)) / d**2 for d in (h, h / 2))
    return (4 * two - one) / 3


def first(at, h=2e-3):
    one, two = ((at(d) - at(-d)) / (2 * d) for d in (h, h / 2))
    return (4 * two - one) / 3


def written(value, unit="m"):
    return f"{float(value)!r} {unit}"


def point(p):
    return dict(zip("xyz", map(written, p)))


MIRROR = np.array([1, -1, 1])


def rows():
    random = np.random.default_rng(11)
    shake = lambda p: np.round(np.array(p) + random.uniform(-0.012, 0.012, 3), 4)  # noqa: E731
    for case in range(8):
        kind = ("rod", "angled", "bushes", "watt_axle", "watt_body", "rigid", "mixed", "rod")[case]
        wheel = np.round([random.uniform(-0.05, 0.05), random.uniform(0.72, 0.78), random.uniform(0.3, 0.34)], 4)
        lower = (shake((0.56, 0.42, 0.3)), shake((0.02, 0.46, 0.235)))
        upper = (shake((0.42, 0.36, 0.425)), shake((-0.02, 0.38, 0.455)))
        if kind == "angled":
            upper = (shake((0.42, 0.42, 0.43)), shake((0.03, 0.09, 0.47)))
        stiff = {"bushes": (4e6, 9e6, 6e6), "mixed": (None, 5e6, 3e6)}.get(kind, (None, None, None))
        four = kind in ("angled", "bushes", "rigid", "mixed")
        ends, watt = [], None
        for name, (b, a), k, pair in (("lower", lower, stiff[0], True), ("upper", upper, stiff[1], four)):
            if not pair:
                b, a = b * [1, 0.3, 1], a * [1, 0.2, 1]
            sides = ((" left", 1), (" right", MIRROR)) if pair else (("", 1),)
            ends += [(name + side, b * m, a * m, k) for side, m in sides]
        inputs = {
            "axle": ("rear", "front")[case % 2],
            "wheel": {"centre": point(wheel), "camber": "-0.004 rad", "toe": "0.002 rad", "loaded_radius": "0.33 m"},
            "links": [],
        }
        for name, (b, a), k, pair in (("lower", lower, stiff[0], True), ("upper", upper, stiff[1], four)):
            if not pair:
                b, a = b * [1, 0.3, 1], a * [1, 0.2, 1]
            # Of a stiffness, two bushes in series.
            bushes = {} if k is None else {"body_bush": written(3 * k, "N/m"), "axle_bush": written(1.5 * k, "N/m")}
            inputs["links"].append({"name": name, "fitted": "pair" if pair else "single", "body": point(b), "axle": point(a), **bushes})
        rod = None
        if kind in ("rod", "bushes", "rigid", "mixed"):
            rod = (shake((-0.1, 0.46, 0.36)), shake((-0.1, -0.5, 0.335)))
            k = stiff[2]
            ends.append(("lateral rod", *rod, k))
            inputs["lateral_rod"] = {"body": point(rod[0]), "axle": point(rod[1]), **({} if k is None else {"body_bush": written(k, "N/m")})}
        if kind.startswith("watt"):
            carrier = kind[5:]
            pivot, cranks = shake((-0.12, 0, 0.31)), (shake((-0.12, 0.01, 0.39)), shake((-0.12, -0.01, 0.24)))
            outers = (shake((-0.11, -0.47, 0.38)), shake((-0.13, 0.46, 0.25)))
            watt = (carrier, pivot, [(c, o, None) for c, o in zip(cranks, outers)])
            crank = lambda c, o: {"crank": point(c), "outer": point(o)}  # noqa: E731
            inputs["watt"] = {
                "carried_by": carrier, "pivot": point(pivot),
                "upper_rod": crank(cranks[0], outers[0]), "lower_rod": crank(cranks[1], outers[1]),
            }  # fmt: skip
        eyes = (shake((0.05, 0.4, 0.72)), shake((-0.05, 0.5, 0.27)))
        rate, free, gas = float(random.integers(30, 60) * 1000), 0.4, 140.0
        offset = float(np.round(norm(eyes[0] - eyes[1]) - 0.28, 4))
        inputs["coil_over"] = {
            "body_eye": point(eyes[0]), "axle_eye": point(eyes[1]),
            "spring": {"rate": written(rate, "N/m"), "free_length": written(free), "solid_length": "0.15 m", "seat_offset": written(offset)},
            "damper": {"open_length": "0.62 m", "closed_length": "0.35 m", "gas_force": written(gas, "N")},
        }  # fmt: skip
        by = ("body", "axle")[case // 2 % 2]
        bar = ((0.06, 0.5, 0.3), (0.05, 0.5, 0.44), (0.27, 0.4, 0.45)) if by == "body" else ((0.26, 0.48, 0.47), (0.25, 0.5, 0.31), (0.05, 0.5, 0.3))
        inputs["anti_roll_bar"] = {"bearings": by, **dict(zip(("link_eye", "lever_end", "lever_pivot"), map(point, bar)))}
        nose, pinion = shake((0.3, 0.03, 0.33)), 0.03
        inputs["pinion"] = {"angle": written(pinion, "rad"), "nose": point(nose)}
        inputs["pitching"] = {"drive_share": 0.9, "brake_share": 0.4, "centre_of_gravity_height": "0.6 m", "wheelbase": "2.7 m"}
        axle = Axle(wheel, ends, watt)
        to_rear = 1.0 if inputs["axle"] == "front" else -1.0

        def lever(q, m):
            eye, end, pivot = (np.array(p) * m for p in bar)
            p, r = q[:3], turn(q[3:6])
            if by == "body":
                here = p + r @ (eye - axle.middle)
                foot = pivot
            else:  # in the axle's axes
                here = r.T @ (eye - p)
                end, foot = end - axle.middle, pivot - axle.middle
            held = norm(eye - np.array(bar[1]) * m)
            at = lambda angle: foot + turn(Y * angle) @ (end - foot)  # noqa: E731
            found = least_squares(lambda a: [norm(at(a[0]) - here) - held], [0.0], method="lm", xtol=1e-15, ftol=1e-15)
            assert abs(found.fun[0]) < 1e-12
            return found.x[0]

        spin = np.array([np.sin(0.002) * np.cos(-0.004), np.cos(0.002) * np.cos(-0.004), -np.sin(-0.004)])

        def state(heave, roll):
            q = axle.solve(heave, roll)
            p, r = q[:3], turn(q[3:6])
            out = {"q": q, "p": p, "r": r, "steer": np.arctan2(-r[0, 1], r[1, 1]), "energy": axle.energy(q)}
            for side, m in (("left", 1), ("right", MIRROR)):
                out[side] = norm(p + r @ (eyes[1] * m - axle.middle) - eyes[0] * m)
                s = r @ (spin * m)
                down = s * s[2] - Z
                out[side + "_wheel"] = p + r @ (wheel * m - axle.middle)
                out[side + "_contact"] = out[side + "_wheel"] + 0.33 * down / norm(down)
                out[side + "_camber"] = np.arctan2(-s[2], np.hypot(s[0], s[1]))
                out[side + "_toe"] = np.arctan2(s[0], abs(s[1]))
                out[side + "_bar"] = lever(q, m)
            return out

        sign = np.sign(state(0.01, 0.0)["left_bar"] - state(-0.01, 0.0)["left_bar"])
        rest = state(0.0, 0.0)
        for heave, roll in ((-0.06, 0.0), (-0.03, 0.05), (0.0, 0.0), (0.0, -0.08), (0.04, 0.03), (0.06, -0.02)):
            on = state(heave, roll)
            p, r = on["p"], on["r"]
            memory = {}

            def at(d, way):
                if (d, way) not in memory:
                    memory[d, way] = state(heave + (0 if way else d), roll + (d if way else 0))
                return memory[d, way]

            slope = lambda of, way: first(lambda d: of(at(d, way)))  # noqa: E731
            bend = lambda of, way: second(lambda d: of(at(d, way)))  # noqa: E731
            velocity, spins = [], []
            for way in (0, 1):
                velocity.append(slope(lambda s: s["p"], way))
                w = slope(lambda s: s["r"], way) @ r.T
                spins.append(np.array([w[2, 1], w[0, 2], w[1, 0]]))
            of_point = lambda t, way: velocity[way] + np.cross(spins[way], t - p)  # noqa: E731
            contact = 0.5 * (on["left_contact"] + on["right_contact"])
            ground = contact[2]
            # The twist in roll whose point on the centre plane, in the transverse plane through the middle, does not rise.
            on_plane = p * [1, 0, 1]
            heaving = -of_point(on_plane, 1)[2] / of_point(on_plane, 0)[2]
            both = lambda t: of_point(t, 1) + heaving * of_point(t, 0)  # noqa: E731
            low, high = both(on_plane)[1], both(on_plane + Z)[1]
            whole = spins[1] + heaving * spins[0]
            path = of_point(contact, 0)
            anti = to_rear * path[0] / path[2] * 2.7 / 0.6
            nose_now = p + r @ (nose - axle.middle)
            # The nose of a front axle points to the rear.
            axis = r @ np.array([-to_rear * np.cos(pinion), 0, np.sin(pinion)])
            angle = np.arctan2(axis[2], np.hypot(axis[0], axis[1]))
            along = r.T @ Z  # the vertical in the axle's axes; its own turn about its length
            expected = {
                "axle_x": p[0], "lateral_shift": p[1], "axle_z": p[2], "wheelbase_change": to_rear * (p[0] - axle.middle[0]),
                "axle_steer": on["steer"], "heave_steer": BUMP * slope(lambda s: s["steer"], 0), "roll_steer": slope(lambda s: s["steer"], 1),
                "axle_pitch": np.arctan2(-along[0], along[2]),
                "pinion_angle": angle, "pinion_angle_change": angle - pinion,
                "pinion_x": nose_now[0], "pinion_y": nose_now[1], "pinion_z": nose_now[2],
                "roll_centre_height": p[2] - low / (high - low) - ground, "roll_axis_angle": np.arctan(whole[2] / whole[0]),
                "side_view_centre_x": contact[0] + path[2] / spins[0][1], "side_view_centre_height": -path[0] / spins[0][1],
                "side_view_angle": np.arctan(path[0] / path[2]), "drive_anti_pitch": 0.9 * anti, "brake_anti_pitch": 0.4 * anti,
                "bar_angle": sign * 0.5 * (on["left_bar"] + on["right_bar"]), "bar_twist": sign * (on["left_bar"] - on["right_bar"]),
            }  # fmt: skip
            travel = [slope(lambda s, n=n: s[n + "_wheel"][2], 1) for n in ("left", "right")]
            lever_length = np.hypot(bar[1][0] - bar[2][0], bar[1][2] - bar[2][2])
            expected["bar_motion_ratio"] = sign * lever_length * slope(lambda s: s["left_bar"] - s["right_bar"], 1) / (travel[0] - travel[1])
            rates, stiffness = {}, 0.0
            for side, rise in zip(("left", "right"), travel):
                length = lambda s, n=side: s[n]  # noqa: E731
                x, y, z = on[side + "_wheel"]
                used = free - (on[side] - offset)
                force = rate * used + gas
                assert used > 0
                expected |= {
                    f"{side}_wheel_x": x, f"{side}_wheel_y": y, f"{side}_wheel_z": z, f"{side}_camber": on[side + "_camber"], f"{side}_toe": on[side + "_toe"],
                    f"{side}_eye_length": on[side], f"{side}_motion_ratio": -slope(length, 0), f"{side}_roll_motion_ratio": -slope(length, 1) / rise,
                    f"{side}_spring_length": on[side] - offset, f"{side}_spring_used": used, f"{side}_spring_remaining": on[side] - offset - 0.15,
                    f"{side}_damper_used": 0.62 - on[side], f"{side}_damper_remaining": on[side] - 0.35,
                }  # fmt: skip
                rates |= {
                    f"{side}_spring_force": rate * used, f"{side}_wheel_force": -force * slope(length, 0),
                    f"{side}_wheel_rate": rate * slope(length, 0) ** 2 - force * bend(length, 0),
                }  # fmt: skip
                stiffness += rate * slope(length, 1) ** 2 - force * bend(length, 1)
            rates["roll_stiffness"] = stiffness
            if rod is not None:
                end = p + r @ (rod[1] - axle.middle)
                expected["lateral_rod_height"] = end[2] - end[1] * (rod[0][2] - end[2]) / (rod[0][1] - end[1]) - ground
                expected["lateral_rod_stretch"] = norm(end - rod[0]) - norm(rod[1] - rod[0])
            expected["redundant"] = int(axle.redundant)
            missed = axle.lengths(on["q"])
            if not axle.redundant:
                expected |= {"freedoms": 2, "bind_misfit": 0.0, "bind_force": 0.0, "bind_moment": 0.0, "bind_roll_stiffness": 0.0, "bind_link": "none"}
            elif any(k is not None for k in axle.stiff):
                expected["freedoms"] = 1
                if kind == "bushes":
                    rates["bind_force"] = max(abs(k * g) for k, g in zip(axle.stiff, missed))
                rates |= {"bind_moment": slope(lambda s: s["energy"], 1), "bind_roll_stiffness": bend(lambda s: s["energy"], 1)}
            else:
                expected |= {"freedoms": 1, "bind_misfit": norm(missed)}
            for far in ("side_view_centre_x", "side_view_centre_height"):
                if abs(expected[far]) > 3:
                    del expected[far]
            name = f"live-axle-{case + 1}-{heave * 1e3:+.0f}-{roll * 1e3:+.0f}"
            row = lambda ending, expected, tolerance: {  # noqa: E731
                "id": name + ending, "model": "suspension.LiveAxle", "method": "at", "arguments": {"heave": heave, "roll": roll}, "inputs": inputs,
                "expected": {n: v if isinstance(v, (str, int)) else float(v) for n, v in expected.items()}, "tolerance": {"abs": tolerance},
                "source": f"tests/scripts/live_axle.py: scipy {scipy.__version__}, six coordinates by rotation vector, lengths kept below 1e-12 m or least energy; rates are central differences of solutions",
                "provenance": "independent script", "confidence": "high",
            }  # fmt: skip
            yield row("", expected, 5e-9)
            if heave == 0.0 or roll == 0.0 or case % 2:
                yield row("-rate", rates, 0.05)
    yield from closed()
    yield from dunlin()


def dunlin():
    """The sheet of the examples, every number of which is in mm, N/mm or degrees."""
    inputs = tomllib.loads((Path(__file__).parents[2] / "examples/sheets/dunlin_rear_axle.toml").read_text(encoding="utf-8"))

    def si(text):
        value, unit = text.split()
        return float(value) * {"mm": 1e-3, "N/mm": 1e3}[unit]

    place = lambda p: np.array([si(p[axis]) for axis in "xyz"])  # noqa: E731
    ends = []
    for link in inputs["links"]:
        k = 1 / (1 / si(link["body_bush"]) + 1 / si(link["axle_bush"]))
        ends += [(link["name"] + side, place(link["body"]) * m, place(link["axle"]) * m, k) for side, m in ((" left", 1), (" right", MIRROR))]
    rod = inputs["lateral_rod"]
    ends.append(("lateral rod", place(rod["body"]), place(rod["axle"]), 1 / (1 / si(rod["body_bush"]) + 1 / si(rod["axle_bush"]))))
    axle = Axle(place(inputs["wheel"]["centre"]), ends)
    for heave, roll in ((0.0, 0.05), (-0.05, 0.0), (0.05, 0.04)):
        q = axle.solve(heave, roll)
        p, r = q[:3], turn(q[3:6])
        forces = np.array([link[3] for link in axle.links]) * axle.lengths(q)
        most = int(np.abs(forces).argmax())
        lean = []
        for name, body, arm, _ in axle.links:
            was, now = arm + axle.middle - body, p + r @ arm - body
            for end, turned in (("body", now), ("axle", r.T @ now)):
                lean.append((np.arctan2(norm(np.cross(was, turned)), was @ turned), f"{name} {end}"))
        lean.sort()
        # What remains of each joint with a limit: 12 degrees for the lower links, 14 for the upper ones.
        remaining = min((np.radians(12 if name.startswith("lower") else 14) - angle, name) for angle, name in lean if "rod" not in name)
        energy = lambda d, heave=heave, roll=roll: axle.energy(axle.solve(heave, roll + d))  # noqa: E731
        expected = {
            "axle_x": p[0], "lateral_shift": p[1], "axle_steer": np.arctan2(-r[0, 1], r[1, 1]), "peak_lean": lean[-1][0],
            "peak_lean_joint": lean[-1][1], "joint_remaining": remaining[0], "first_joint": remaining[1],
            "joints_without_limit": sum("rod" in name for _, name in lean), "bind_link": axle.links[most][0], "freedoms": 1, "redundant": 1,
        }  # fmt: skip
        name = f"live-axle-dunlin-{heave * 1e3:+.0f}-{roll * 1e3:+.0f}"
        common = {"model": "suspension.LiveAxle", "method": "at", "arguments": {"heave": heave, "roll": roll}, "inputs": inputs}
        source = {"source": f"tests/scripts/live_axle.py: scipy {scipy.__version__}, least strain energy; the moment and its slope are derivatives of the least energy", "provenance": "independent script", "confidence": "high"}  # fmt: skip
        clean = lambda on: {n: v if isinstance(v, str | int) else float(v) for n, v in on.items()}  # noqa: E731
        yield {"id": name, **common, "expected": clean(expected), "tolerance": {"abs": 5e-9}, **source}
        rates = {"bind_force": abs(forces[most]), "bind_moment": first(energy), "bind_roll_stiffness": second(energy)}
        yield {"id": name + "-rate", **common, "expected": clean(rates), "tolerance": {"abs": 0.05}, **source}


def closed():
    """Three parallel links of 0.55 m and a rod of 0.96 m: the end of the travel, where both pull in one vertical plane."""
    links, rod = 0.55, 0.96

    def wrong(u):
        x, y, z = u
        return [(x - links) ** 2 + y**2 + z**2 - links**2, x**2 + (y - rod) ** 2 + z**2 - rod**2, x / links + y / rod - 1]

    x, y, z = fsolve(wrong, [0.4, 0.2, 0.5], xtol=1e-14)
    assert max(map(abs, wrong((x, y, z)))) < 1e-12 and z > 0
    at = lambda x, y, z: point((x, y, z))  # noqa: E731
    inputs = {
        "axle": "rear", "wheel": {"centre": at(0, 0.75, 0.32), "camber": "0 deg", "toe": "0 deg", "loaded_radius": "0.33 m"},
        "links": [
            {"name": "lower", "fitted": "pair", "body": at(0.55, 0.42, 0.22), "axle": at(0, 0.42, 0.22)},
            {"name": "upper", "fitted": "single", "body": at(0.55, 0, 0.42), "axle": at(0, 0, 0.42)},
        ],
        "lateral_rod": {"body": at(0, 0.48, 0.32), "axle": at(0, -0.48, 0.32)},
    }  # fmt: skip
    common = {"model": "suspension.LiveAxle", "inputs": inputs, "provenance": "independent script", "confidence": "high"}
    yield {"id": "live-axle-travel-range", "method": "travel_range", "arguments": {"roll": 0.0}, **common, "expected": {"droop": -float(z), "bump": float(z)}, "tolerance": {"abs": 2e-6}, "source": "tests/scripts/live_axle.py: the two spheres of links and rod touch a vertical line in one plane (scipy fsolve)"}  # fmt: skip
    error = {"provenance": "definition", "confidence": "high", "model": "suspension.LiveAxle"}
    beyond = {"id": "live-axle-beyond", "method": "at", "arguments": {"heave": 0.6, "roll": 0.0}, "inputs": inputs, "expected": {"error": True, "argument": "cannot be reached"}, "source": "a link of 0.55 m does not reach 0.6 m up", **error}
    yield beyond
    parallel = {**inputs, "links": [inputs["links"][0], {"name": "upper", "fitted": "pair", "body": at(0.55, 0.42, 0.42), "axle": at(0, 0.42, 0.42)}]}
    del parallel["lateral_rod"]
    yield {"id": "live-axle-free-sideways", "inputs": parallel, "expected": {"error": True, "argument": "links"}, "source": "four parallel links hold nothing sideways", **error}
    yield {"id": "live-axle-nan", "inputs": {**inputs, "wheel": {**inputs["wheel"], "loaded_radius": "0 m"}}, "expected": {"error": True, "argument": "wheel"}, "source": "a wheel has a radius", **error}


if __name__ == "__main__":
    print("[\n" + ",\n".join(json.dumps(row) for row in rows()) + "\n]")
