"""An independent solution of a strut, for the rows of `suspension.json`: `python strut.py > rows`.

Six unknowns (wheel centre and rotation vector of the upright); the wheel's height, three distances, and the two distances of the top
mount from the strut's axis in the upright's own frame. Everything else as in `double_wishbone.py`. Nothing here is shared with the crate.
"""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import numpy as np
from double_wishbone import BUMP, Wishbone, at, norm, source, torsion, written


class Strut(Wishbone):
    """Points as there, without an upper arm: top mount `tm`, lower end of the leg `le`."""

    arms = {"lower_arm": ("lf", "lr", "lb")}
    upright = ("lb", "to", "le", "up", "one", "two")

    def join(self):
        p = self.p
        along = (p["tm"] - p["le"]) / norm(p["tm"] - p["le"])
        one = np.cross(along, [1.0, 0.0, 0.0])
        one /= norm(one)
        # Points of the upright a metre from the lower end, which carry three directions along.
        p["up"], p["one"], p["two"] = p["le"] + along, p["le"] + one, p["le"] + np.cross(along, one)
        self.links = [(a, b, norm(p[a] - p[b])) for a, b in (("lf", "lb"), ("lr", "lb"), ("ti", "to"))]

    def misfits(self, inner, outer):
        mount = inner["tm"] - outer["le"]
        aside = [np.dot(mount, outer[name] - outer["le"]) for name in ("one", "two")]
        return [*super().misfits(inner, outer), *aside]

    def solve(self, travel, rack=0.0):
        centre, turn, outer = super().solve(travel, rack)
        return centre, turn, {**outer, "ub": self.p["tm"]}

    def outputs(self, travel, rack=0.0):
        out, pose = super().outputs(travel, rack)
        p, (_, turn, outer) = self.p, pose
        out["leg"] = norm(p["tm"] - outer["le"])
        was, now = p["up"] - p["le"], outer["up"] - outer["le"]
        out["lean"] = 2 * np.arcsin(norm(now - was) / 2)
        # The stud of the ball joint as the upright and as the arm carry it.
        stud = (p["tm"] - p["lb"]) / norm(p["tm"] - p["lb"])
        on_arm = self.carried("lower_arm", p["lb"] + stud, travel, rack, pose) - outer["lb"]
        out["ball"] = 2 * np.arcsin(norm(turn.apply(stud) - on_arm) / 2)
        return out, pose


BASE = {
    "tm": (-0.03, 0.56, 0.76), "le": (0.004, 0.655, 0.33),
    "lf": (0.2, 0.33, 0.21), "lr": (-0.2, 0.32, 0.2), "lb": (0.012, 0.7, 0.185),
    "ti": (-0.13, 0.34, 0.25), "to": (-0.135, 0.685, 0.24), "wc": (0.0, 0.76, 0.31),
}  # fmt: skip
SEATS = ((-0.025, 0.575, 0.73), (0.01, 0.648, 0.43))
BAR = ((0.03, 0.62, 0.215), (0.04, 0.61, 0.39), (0.27, 0.4, 0.39))


def drawn_rows():
    random = np.random.default_rng(11)
    for seed in range(6):
        points = {name: np.round(np.array(point) + random.uniform(-0.015, 0.015, 3), 4) for name, point in BASE.items()}
        if seed == 5:  # the strut's axis through the ball joint
            points["le"] = points["lb"] + 0.25 * (points["tm"] - points["lb"])
        camber, toe = np.round(random.uniform(-0.02, 0.01), 4), np.round(random.uniform(-0.004, 0.004), 5)
        radius, axle, place = float(np.round(random.uniform(0.28, 0.32), 4)), ("front", "rear")[seed % 2], ("outboard", "inboard")[seed // 2 % 2]
        seats, by = (SEATS, "upright") if seed % 3 == 1 else (((0.02, 0.47, 0.6), (0.01, 0.52, 0.22)), "lower_arm") if seed % 3 == 2 else (None, None)
        s = Strut(points, camber, toe, radius, bar=BAR, bar_by="lower_arm", seats=seats, seats_by=by)
        p = s.p
        spring, drawn = float(random.integers(20, 60) * 1000), norm(np.subtract(*seats)) if seats else norm(p["tm"] - p["le"])
        free, offset, gas = 0.36, float(np.round(drawn - 0.24, 4)), 180.0
        share, drive, height, base = 0.6, 0.8, 0.54, 2.55
        leg = {
            "top_mount": at(p["tm"]), "lower_end": at(p["le"]), "damper": {"open_length": "0.6 m", "closed_length": "0.3 m", "gas_force": f"{gas} N"},
            "spring": {"rate": f"{spring!r} N/m", "free_length": written(free), "solid_length": "0.1 m", "seat_offset": written(offset)},
        }  # fmt: skip
        if seats:
            leg["spring_seats"] = {"body": at(seats[0]), "lower": at(seats[1]), "carried_by": by}
        inputs = {
            "axle": axle, "lower_arm": {"front_pivot": at(p["lf"]), "rear_pivot": at(p["lr"]), "ball_joint": at(p["lb"])}, "leg": leg,
            "tie_rod": {"inner": at(p["ti"]), "outer": at(p["to"])},
            "wheel": {"centre": at(p["wc"]), "camber": f"{float(camber)!r} rad", "toe": f"{float(toe)!r} rad", "loaded_radius": written(radius)},
            "anti_roll_bar": {"link_eye": at(BAR[0]), "carried_by": "lower_arm", "lever_end": at(BAR[1]), "lever_pivot": at(BAR[2])},
            "braking": {"axle_share": share, "centre_of_gravity_height": written(height), "wheelbase": written(base), "place": place},
            "driving": {"axle_share": drive},
        }  # fmt: skip
        twisted = seed in (0, 4)
        if twisted:
            inputs["torsion_bar"] = {"turned_by": "lower_arm", "rate": "2500 N·m/rad", "torque": "240 N·m"}
        rest, _ = s.outputs(0.0)
        sign = 1.0 if axle == "front" else -1.0
        for travel, rack in ((-0.06, 0.0), (-0.025, 0.01), (0.0, 0.0), (0.0, -0.025), (0.03, 0.0), (0.055, 0.015)):
            out, slope = s.rates(travel, rack)
            contact, twist = slope["_contact"], slope["_twist"]
            length = "seat_length" if seats else "leg"
            ratio, damper, seconds = -slope[length], -slope["leg"], slope["_seconds"]
            held = max(free - (out[length] - offset), 0.0)
            stiff = spring if held > 0 else 0.0
            paths = {"outboard": contact[0] / contact[2], "inboard": slope["wheel_x"]}
            names = ("wheel_x", "wheel_y", "half_track", "camber", "toe", "caster", "kingpin_inclination", "scrub_radius", "mechanical_trail")
            expected = {n: out[n] for n in names} | {
                "half_track_change": out["half_track"] - rest["half_track"], "wheelbase_change": sign * (out["wheel_x"] - rest["wheel_x"]),
                "camber_change": slope["camber"] * BUMP, "bump_steer": slope["toe"] * BUMP,
                "roll_centre_height": out["half_track"] * contact[1] / contact[2],
                "front_view_centre_height": contact[1] / twist[0], "side_view_centre_height": -contact[0] / twist[1],
                "side_view_angle": np.arctan(paths["outboard"]), "wheel_path_angle": np.arctan(slope["wheel_x"]),
                "brake_anti_pitch": sign * share * paths[place] * base / height, "drive_anti_pitch": sign * drive * slope["wheel_x"] * base / height,
                "eye_length": out["leg"], "motion_ratio": ratio, "damper_motion_ratio": damper, "spring_length": out[length] - offset,
                "upper_joint_angle": out["lean"], "lower_ball_angle": out["ball"],
            }  # fmt: skip
            if rack == 0.0:
                expected["bar_angle"] = abs(out["bar_angle"]) * np.sign(travel) if travel else 0.0
                expected["bar_motion_ratio"] = abs(slope["bar_angle"]) * np.hypot(BAR[1][0] - BAR[2][0], BAR[1][2] - BAR[2][2])
            # Heights of far centres are not comparable to the same digits; nor is a lean of nothing, the root of rounding.
            for far in ("front_view_centre_height", "side_view_centre_height"):
                if abs(expected[far]) > 2:
                    del expected[far]
            for none in ("upper_joint_angle", "lower_ball_angle"):
                if travel == rack == 0.0:
                    del expected[none]
            forces = {
                "wheel_force": stiff * held * ratio + gas * damper,
                "wheel_rate": stiff * ratio**2 - stiff * held * seconds[length] - gas * seconds["leg"],
            }  # fmt: skip
            if twisted:
                torque, force, rate = torsion("lower_arm", out, slope, 2500.0, 240.0)
                forces = {"torsion_bar_torque": torque, "wheel_force": forces["wheel_force"] + force, "wheel_rate": forces["wheel_rate"] + rate}
            for ending, wanted, tolerance in (("", expected, 2e-9), ("-rate", forces, 0.05)):
                if ending and rack:
                    continue
                yield {
                    "id": f"strut-{seed + 1}-{travel * 1e3:+.0f}-{rack * 1e3:+.0f}{ending}", "model": "suspension.Strut", "method": "at",
                    "arguments": {"travel": travel, "rack_travel": rack}, "inputs": inputs, "expected": {n: float(v) for n, v in wanted.items()},
                    "tolerance": {"abs": tolerance}, "source": source("strut", "three distances and two of the top mount from the axis"),
                    "provenance": "independent script", "confidence": "high",
                }  # fmt: skip


def demo():
    """The sheet of the examples, in mm and deg, with the rack in its middle."""
    sheet = tomllib.loads((Path(__file__).parents[2] / "examples/sheets/wagtail_rear_strut.toml").read_text())
    number = lambda text: float(text.split()[0])  # noqa: E731
    point = lambda on: [number(on[axis]) / 1e3 for axis in "xyz"]  # noqa: E731
    arm, leg, rod, wheel = (sheet[part] for part in ("lower_arm", "leg", "tie_rod", "wheel"))
    points = {
        "lf": arm["front_pivot"], "lr": arm["rear_pivot"], "lb": arm["ball_joint"], "tm": leg["top_mount"], "le": leg["lower_end"],
        "ti": rod["inner"], "to": rod["outer"], "wc": wheel["centre"],
    }  # fmt: skip
    angles = (np.radians(number(wheel[name])) for name in ("camber", "toe"))
    s = Strut({name: point(on) for name, on in points.items()}, *angles, number(wheel["loaded_radius"]) / 1e3)
    for travel in (-0.06, 0.04, 0.06):
        out, slope = s.rates(travel)
        expected = {n: out[n] for n in ("camber", "toe", "half_track")} | {
            "roll_centre_height": out["half_track"] * slope["_contact"][1] / slope["_contact"][2], "damper_remaining": out["leg"] - 0.34,
            "brake_anti_pitch": -0.35 * slope["wheel_x"] * 2.3 / 0.46, "drive_anti_pitch": -slope["wheel_x"] * 2.3 / 0.46,
        }  # fmt: skip
        yield {
            "id": f"strut-roadster-{travel * 1e3:+.0f}", "model": "suspension.Strut", "method": "at", "arguments": {"travel": travel, "rack_travel": 0.0},
            "inputs": sheet, "expected": {n: float(v) for n, v in expected.items()}, "tolerance": {"abs": 2e-9},
            "source": source("strut", "three distances and two of the top mount from the axis"), "provenance": "independent script", "confidence": "high",
        }  # fmt: skip


def rows():
    yield from drawn_rows()
    yield from demo()


if __name__ == "__main__":
    print("[\n" + ",\n".join(json.dumps(row) for row in rows()) + "\n]")
