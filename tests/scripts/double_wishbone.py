"""An independent solution of a double wishbone, for the rows of `suspension.json`: `python double_wishbone.py > rows`.

Six unknowns (wheel centre and rotation vector of the upright), six distances; scipy's Levenberg-Marquardt, residual below
1e-12 m. Every derivative is a central difference of whole solutions, two steps extrapolated (Richardson). Nothing here is
shared with the crate. Axes and signs: x forward, y left, z up, left wheel; camber + top outboard, toe + toe-in, caster + top
rearward, kingpin inclination + top inboard.
"""

from __future__ import annotations

import json

import numpy as np
import scipy
from scipy.optimize import brentq, least_squares
from scipy.spatial.transform import Rotation

norm = np.linalg.norm


def spin(camber, toe):
    return np.array([np.sin(toe) * np.cos(camber), np.cos(toe) * np.cos(camber), -np.sin(camber)])


class Wishbone:
    def __init__(self, points, camber, toe, radius, eyes=None, carried_by="lower_arm", bar=None, bar_by="lower_arm", seats=None, seats_by="lower_arm"):
        self.p = {name: np.array(point, float) for name, point in points.items()}
        self.axis, self.radius = spin(camber, toe), radius
        self.eyes, self.carried_by, self.bar, self.bar_by = eyes, carried_by, bar, bar_by
        self.seats, self.seats_by = seats, seats_by
        self.join()

    def join(self):
        p = self.p
        self.links = [(a, b, norm(p[a] - p[b])) for a, b in (("uf", "ub"), ("ur", "ub"), ("lf", "lb"), ("lr", "lb"), ("ti", "to"))]

    upright = ("ub", "lb", "to")

    def misfits(self, inner, outer):
        return [norm(inner[a] - outer[b]) - length for a, b, length in self.links]

    def solve(self, travel, rack=0.0):
        p, centre = self.p, self.p["wc"]
        inner = {**p, "ti": p["ti"] + np.array([0.0, rack, 0.0])}

        def place(q):
            turn = Rotation.from_rotvec(q[3:])
            return q[:3], turn, {name: q[:3] + turn.apply(p[name] - centre) for name in self.upright}

        def residual(q):
            _, _, outer = place(q)
            return [q[2] - centre[2] - travel, *self.misfits(inner, outer)]

        # In small steps from the static position, so that no other branch is taken.
        q = np.array([*centre, 0.0, 0.0, 0.0])
        whole_travel, whole_rack = travel, rack
        steps = max(1, int(np.ceil(max(abs(travel), abs(rack)) / 0.01)))
        for share in np.linspace(0, 1, steps + 1)[1:]:
            travel = whole_travel * share
            inner["ti"] = p["ti"] + np.array([0.0, whole_rack * share, 0.0])
            found = least_squares(residual, q, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
            q = found.x
        assert np.abs(found.fun).max() < 1e-12, found.fun
        return place(q)

    def carried(self, name, point, travel, rack, pose):
        centre, turn, outer = pose
        if name == "upright":
            return centre + turn.apply(point - self.p["wc"])
        front, rear, ball = {"lower_arm": ("lf", "lr", "lb"), "upper_arm": ("uf", "ur", "ub")}[name]

        def frame(b):
            f, r = self.p[front], self.p[rear]
            e = (r - f) / norm(r - f)
            u = b - f - e * np.dot(b - f, e)
            u /= norm(u)
            return np.array([e, u, np.cross(e, u)])

        local = frame(self.p[ball]) @ (point - self.p[front])
        return self.p[front] + frame(outer[ball]).T @ local

    def outputs(self, travel, rack=0.0):
        pose = self.solve(travel, rack)
        centre, turn, outer = pose
        s = turn.apply(self.axis)
        down = -np.array([0, 0, 1.0]) + s[2] * s
        contact = centre + self.radius * down / norm(down)
        k = outer["ub"] - outer["lb"]
        ground = outer["lb"] + k * (contact[2] - outer["lb"][2]) / k[2]
        # Along the wheel's plane and across it, on the ground.
        outboard = s[:2] / norm(s[:2])
        off = (contact - ground)[:2]
        out = {
            "wheel_x": centre[0], "wheel_y": centre[1], "wheel_z": centre[2],
            "contact_x": contact[0], "half_track": contact[1], "contact_z": contact[2],
            "camber": -np.arcsin(s[2]), "toe": np.arctan2(s[0], s[1]),
            "caster": np.arctan2(-k[0], k[2]), "kingpin_inclination": np.arctan2(-k[1], k[2]),
            "scrub_radius": off @ outboard, "mechanical_trail": off[1] * outboard[0] - off[0] * outboard[1],
        }
        if self.eyes is not None:
            body, lower = map(np.array, self.eyes)
            out["spring_length"] = norm(body - self.carried(self.carried_by, lower, travel, rack, pose))
        if self.seats is not None:
            body, lower = map(np.array, self.seats)
            out["seat_length"] = norm(body - self.carried(self.seats_by, lower, travel, rack, pose))
        for arm in self.arms:
            out[arm] = self.arm_angle(arm, outer)
        if self.bar is not None:
            out["bar_angle"] = self.bar_angle(travel, rack, pose)
        # The contact point as a point of the upright, and its place there.
        out["_fixed"] = turn.inv().apply(contact - centre)
        return out, pose

    arms = {"lower_arm": ("lf", "lr", "lb"), "upper_arm": ("uf", "ur", "ub")}

    def arm_angle(self, arm, outer):
        """Turn of an arm about the line of its pivots, from the projection of its ball joint; its sign is set by the caller."""
        f, r, b = (self.p[name] for name in self.arms[arm])
        axis = (r - f) / norm(r - f)
        was, now = (q - f - axis * np.dot(q - f, axis) for q in (b, outer[self.arms[arm][2]]))
        return np.arctan2(np.dot(axis, np.cross(was, now)), np.dot(was, now))

    def bar_angle(self, travel, rack, pose):
        eye, end, axis = map(np.array, self.bar)
        length, arm = norm(eye - end), end - axis
        moved = self.carried(self.bar_by, eye, travel, rack, pose)

        def at(angle):  # a turn about the y axis
            return axis + Rotation.from_rotvec([0, angle, 0]).apply(arm)

        found = least_squares(lambda a: [norm(at(a[0]) - moved) - length], [0.0], method="lm", xtol=1e-15, ftol=1e-15)
        assert abs(found.fun[0]) < 1e-12
        return found.x[0]

    def rates(self, travel, rack=0.0, h=2e-3):
        """Velocities per wheel travel: of every output, of the contact point held in the upright, and of the twist."""
        out, pose = self.outputs(travel, rack)
        fixed = out.pop("_fixed")
        def both(h):
            ends = [self.outputs(travel + d, rack) for d in (h, -h)]
            rate = {n: (ends[0][0][n] - ends[1][0][n]) / (2 * h) for n in out}
            points = [on[1][0] + on[1][1].apply(fixed) for on in ends]
            rate["_contact"] = (points[0] - points[1]) / (2 * h)
            rate["_twist"] = (ends[0][1][1] * ends[1][1][1].inv()).as_rotvec() / (2 * h)
            rate["_seconds"] = {n: (ends[0][0][n] + ends[1][0][n] - 2 * out[n]) / h**2 for n in out}
            return rate
        one, two = both(h), both(h / 2)
        seconds = [on.pop("_seconds") for on in (one, two)]
        rate = {n: (4 * two[n] - one[n]) / 3 for n in one}
        rate["_seconds"] = {n: (4 * seconds[1][n] - seconds[0][n]) / 3 for n in out}
        return out, rate


def mirrored(points):
    return {name: np.array(at) * [1, -1, 1] for name, at in points.items()}


def on_rolled_ground(points, camber, toe, radius, heave, roll, rack):
    """Both wheels with the body turned about x: each solved for itself, the right one as a right one, until its rim touches the ground."""
    lean = Rotation.from_rotvec([roll, 0.0, 0.0])
    ground = Wishbone(points, camber, toe, radius).outputs(0.0)[0]["contact_z"] + heave
    sides = []
    for sign, drawn in ((1.0, points), (-1.0, mirrored(points))):
        w = Wishbone(drawn, camber, toe, radius)
        w.axis = w.axis * [1, sign, 1]  # outboard
        # The lowest point of the rim over the ground, both turned into the ground's axes.

        def stand(travel, w=w):
            centre, turn, _ = pose = w.solve(travel, rack)
            at, axis = lean.apply(centre - [0, 0, ground]), lean.apply(turn.apply(w.axis))
            return at[2] - w.radius * np.hypot(axis[0], axis[1]), at, axis, pose

        travel = brentq(lambda t: stand(t)[0], heave - 0.08, heave + 0.08, xtol=1e-15, rtol=1e-14)
        _, at, axis, (centre, turn, _) = stand(travel)
        contact = at + w.radius * np.array([axis[0] * axis[2], axis[1] * axis[2], axis[2] ** 2 - 1]) / np.hypot(axis[0], axis[1])
        held = turn.inv().apply(lean.inv().apply(contact) + [0, 0, ground] - centre)

        def place(t, w=w, held=held):
            centre, turn, _ = w.solve(t, rack)
            return lean.apply(centre + turn.apply(held))

        path = [(place(travel + h) - place(travel - h)) / (2 * h) for h in (2e-3, 1e-3)]
        path = (4 * path[1] - path[0]) / 3
        sides.append((travel, -np.arcsin(axis[2]), np.arctan2(axis[0], sign * axis[1]), contact[1], path[1] / path[2]))
    (lt, lc, lo, ly, ls), (rt, rc, ro, ry, rs) = sides
    # Normals to the paths through the contact points: s y + h = s y_contact.
    lateral, height = np.linalg.solve([[ls, 1.0], [rs, 1.0]], [ls * ly, rs * ry])
    return {
        "left_travel": lt, "right_travel": rt, "left_camber": lc, "right_camber": rc, "left_toe": lo, "right_toe": ro,
        "track": ly - ry, "left_slope": ls, "right_slope": -rs, "roll_centre_y": lateral, "roll_centre_height": height,
    }  # fmt: skip


BUMP = 0.025
BASE = {
    "uf": (0.16, 0.42, 0.585), "ur": (-0.15, 0.43, 0.57), "ub": (-0.014, 0.69, 0.605),
    "lf": (0.2, 0.33, 0.25), "lr": (-0.2, 0.32, 0.238), "lb": (0.01, 0.73, 0.222),
    "ti": (0.135, 0.35, 0.296), "to": (0.14, 0.705, 0.279), "wc": (0.0, 0.78, 0.325),
}  # fmt: skip
CARRIERS = ("lower_arm", "upper_arm", "upright")
EYES = {
    "lower_arm": ((-0.01, 0.47, 0.7), (-0.005, 0.61, 0.26)),
    "upper_arm": ((0.0, 0.5, 0.93), (0.0, 0.58, 0.61)),
    "upright": ((0.0, 0.52, 0.86), (0.0, 0.68, 0.48)),
}


def written(value):
    return f"{float(value)!r} m"


def at(point):
    return dict(zip("xyz", map(written, point)))


def document(w, axle, rate, free, offset, share, height, base, camber, toe):
    p, point = w.p, at
    arm = lambda a: {"front_pivot": point(p[a + "f"]), "rear_pivot": point(p[a + "r"]), "ball_joint": point(p[a + "b"])}  # noqa: E731
    return {
        "axle": axle, "upper_arm": arm("u"), "lower_arm": arm("l"),
        "tie_rod": {"inner": point(p["ti"]), "outer": point(p["to"])},
        "wheel": {"centre": point(p["wc"]), "camber": f"{float(camber)!r} rad", "toe": f"{float(toe)!r} rad", "loaded_radius": written(w.radius)},
        "coil_over": {
            "body_eye": point(w.eyes[0]), "lower_eye": point(w.eyes[1]), "carried_by": w.carried_by,
            "spring": {"rate": f"{rate!r} N/m", "free_length": written(free), "solid_length": "0.15 m", "seat_offset": written(offset)},
        },
        "anti_roll_bar": {"link_eye": point(w.bar[0]), "carried_by": w.bar_by, "lever_end": point(w.bar[1]), "lever_pivot": point(w.bar[2])},
        "braking": {"axle_share": share, "centre_of_gravity_height": written(height), "wheelbase": written(base)},
    }  # fmt: skip


def torsion(arm, out, slope, rate, torque):
    """Torque of a torsion bar, its force at the wheel and its share of the wheel rate."""
    sign = np.sign(slope[arm])
    now, ratio = torque + rate * out[arm] * sign, slope[arm] * sign
    return now, now * ratio, rate * ratio**2 + now * slope["_seconds"][arm] * sign


def source(script, how):
    return f"tests/scripts/{script}.py: scipy {scipy.__version__} least_squares on {how}, residual below 1e-12 m; rates are central differences of solutions"


def inboard_rows():
    """Inboard brakes, drive, a torsion bar on either arm beside a coil with seats of its own, gas in the damper."""
    for place, arm in (("inboard", "lower_arm"), ("outboard", "upper_arm")):
        seats = ((0.02, 0.48, 0.71), (0.0, 0.59, 0.262))
        w = Wishbone(BASE, -0.01, 0.002, 0.31, EYES["upright"], "upright", ((0.03, 0.66, 0.27), (0.04, 0.65, 0.43), (0.27, 0.4, 0.43)), "lower_arm", seats, "lower_arm")
        inputs = document(w, "rear", 30e3, 0.33, 0.17, 0.45, 0.5, 2.4, -0.01, 0.002)
        inputs["coil_over"]["spring_seats"] = {"body": at(seats[0]), "lower": at(seats[1]), "carried_by": "lower_arm"}
        inputs["coil_over"]["damper"] = {"open_length": "0.5 m", "closed_length": "0.3 m", "gas_force": "220 N"}
        inputs["torsion_bar"] = {"turned_by": arm, "rate": "3200 N·m/rad", "torque": "310 N·m"}
        inputs["braking"]["place"], inputs["driving"] = place, {"axle_share": 0.9}
        for travel, rack in ((-0.05, 0.0), (0.0, 0.0), (0.02, 0.012), (0.05, 0.0)):
            out, slope = w.rates(travel, rack)
            contact, centre = slope["_contact"][0] / slope["_contact"][2], slope["wheel_x"]
            torque, force, rate = torsion(arm, out, slope, 3200.0, 310.0)
            ratio, damper = -slope["seat_length"], -slope["spring_length"]
            held = max(0.33 - (out["seat_length"] - 0.17), 0.0)
            stiff = 30e3 if held > 0 else 0.0
            expected = {
                "wheel_path_angle": np.arctan(centre), "brake_anti_pitch": -0.45 * (centre if place == "inboard" else contact) * 2.4 / 0.5,
                "drive_anti_pitch": -0.9 * centre * 2.4 / 0.5, "motion_ratio": ratio, "damper_motion_ratio": damper,
                "eye_length": out["spring_length"], "spring_length": out["seat_length"] - 0.17, "damper_remaining": out["spring_length"] - 0.3,
            }  # fmt: skip
            forces = {
                "torsion_bar_torque": torque, "wheel_force": force + stiff * held * ratio + 220 * damper,
                "wheel_rate": rate + stiff * ratio**2 - stiff * held * slope["_seconds"]["seat_length"] - 220 * slope["_seconds"]["spring_length"],
            }  # fmt: skip
            for ending, expected, tolerance in (("", expected, 2e-9), ("-rate", forces, 0.05)):
                yield {
                    "id": f"wishbone-{place}-{travel * 1e3:+.0f}-{rack * 1e3:+.0f}{ending}", "model": "suspension.DoubleWishbone", "method": "at",
                    "arguments": {"travel": travel, "rack_travel": rack}, "inputs": inputs, "expected": {n: float(v) for n, v in expected.items()},
                    "tolerance": {"abs": tolerance}, "source": source("double_wishbone", "the six distances"), "provenance": "independent script", "confidence": "high",
                }  # fmt: skip


def outboard_rows():
    random = np.random.default_rng(5)
    for seed in range(6):
        points = {name: np.round(np.array(at) + random.uniform(-0.015, 0.015, 3), 4) for name, at in BASE.items()}
        camber, toe = np.round(random.uniform(-0.02, 0.01), 4), np.round(random.uniform(-0.004, 0.004), 5)
        radius, carrier = float(np.round(random.uniform(0.29, 0.33), 4)), CARRIERS[seed % 3]
        bar = ((0.03, 0.66, 0.27), (0.04, 0.65, 0.43), (0.27, 0.4, 0.43))
        w = Wishbone(points, camber, toe, radius, EYES[carrier], carrier, bar, "lower_arm")
        rate, free, offset = float(random.integers(40, 90) * 1000), 0.33, norm(np.subtract(*EYES[carrier])) - 0.28
        offset = float(np.round(offset, 4))
        axle, share, height, base = ("front", "rear")[seed % 2], 0.62, 0.55, 2.61
        inputs = document(w, axle, rate, free, offset, share, height, base, camber, toe)
        rest, _ = w.outputs(0.0)
        sign = 1.0 if axle == "front" else -1.0
        for travel, rack in ((-0.06, 0.0), (-0.025, 0.01), (0.0, 0.0), (0.0, -0.025), (0.03, 0.0), (0.055, 0.015)):
            out, slope = w.rates(travel, rack)
            contact, twist = slope["_contact"], slope["_twist"]
            ratio = -slope["spring_length"]
            held = max(free - (out["spring_length"] - offset), 0.0)  # a loose coil carries nothing
            force, stiff = rate * held, rate if held > 0 else 0.0
            expected = {n: out[n] for n in ("wheel_x", "wheel_y", "half_track", "camber", "toe", "caster", "kingpin_inclination", "scrub_radius", "mechanical_trail")}
            expected |= {
                "half_track_change": out["half_track"] - rest["half_track"],
                "wheelbase_change": sign * (out["wheel_x"] - rest["wheel_x"]),
                "camber_change": slope["camber"] * BUMP, "bump_steer": slope["toe"] * BUMP,
                "roll_centre_height": out["half_track"] * contact[1] / contact[2],
                "front_view_centre_height": contact[1] / twist[0],
                "side_view_centre_height": -contact[0] / twist[1],
                "side_view_angle": np.arctan(contact[0] / contact[2]),
                "brake_anti_pitch": sign * share * contact[0] / contact[2] * base / height,
                "eye_length": out["spring_length"], "motion_ratio": ratio,
                "bar_angle": abs(out["bar_angle"]) * np.sign(travel) if abs(travel) > 0 else 0.0,
                "bar_motion_ratio": abs(slope["bar_angle"]) * np.hypot(0.23, 0.0),
            }  # fmt: skip
            # Heights of far centres are not comparable to the same digits.
            for far in ("front_view_centre_height", "side_view_centre_height"):
                if abs(expected[far]) > 2:
                    del expected[far]
            if rack:
                del expected["bar_angle"], expected["bar_motion_ratio"]
            name = f"wishbone-{seed + 1}-{travel * 1e3:+.0f}-{rack * 1e3:+.0f}"
            arguments = {"travel": travel, "rack_travel": rack}
            row = lambda ending, expected, tolerance: {  # noqa: E731
                "id": name + ending, "model": "suspension.DoubleWishbone", "method": "at", "arguments": arguments, "inputs": inputs,
                "expected": {n: float(v) for n, v in expected.items()}, "tolerance": {"abs": tolerance},
                "source": source("double_wishbone", "the six distances"),
                "provenance": "independent script", "confidence": "high",
            }  # fmt: skip
            yield row("", expected, 2e-9)
            if rack == 0.0:
                yield row("-rate", {"wheel_force": force * ratio, "wheel_rate": stiff * ratio**2 - force * slope["_seconds"]["spring_length"]}, 0.05)

        for heave, roll, rack in ((0.0, 0.03, 0.0), (0.015, -0.045, 0.0), (-0.02, 0.02, 0.012)):
            expected = on_rolled_ground(points, camber, toe, radius, heave, roll, rack)
            yield {
                "id": f"wishbone-{seed + 1}-roll{heave * 1e3:+.0f}{roll * 1e3:+.0f}{rack * 1e3:+.0f}", "model": "suspension.DoubleWishbone", "method": "in_roll",
                "arguments": {"heave": heave, "roll": roll, "rack_travel": rack}, "inputs": inputs,
                "expected": {n: float(v) for n, v in expected.items()}, "tolerance": {"abs": 2e-9},
                "source": f"tests/scripts/double_wishbone.py: scipy {scipy.__version__}, each wheel solved for itself in the ground's axes, brentq on its lowest point; slopes are central differences of solutions",
                "provenance": "independent script", "confidence": "high",
            }  # fmt: skip


def rows():
    yield from outboard_rows()
    yield from inboard_rows()


if __name__ == "__main__":
    print("[\n" + ",\n".join(json.dumps(row) for row in rows()) + "\n]")
