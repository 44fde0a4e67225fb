"""Linkages of single cases: the solvers of `double_wishbone.py` and `live_axle.py` on the points that a row gives."""

import numpy as np
from double_wishbone import Wishbone
from live_axle import Axle, norm, turn

from . import route


def point(d):
    return np.array([float(d[axis]) for axis in "xyz"])


@route("suspension.DoubleWishbone.at")
def double_wishbone(d, travel, rack_travel):
    upper, lower, rod, wheel = d["upper_arm"], d["lower_arm"], d["tie_rod"], d["wheel"]
    points = {"uf": upper["front_pivot"], "ur": upper["rear_pivot"], "ub": upper["ball_joint"], "lf": lower["front_pivot"], "lr": lower["rear_pivot"], "lb": lower["ball_joint"], "ti": rod["inner"], "to": rod["outer"], "wc": wheel["centre"]}
    eyes = [point(d["coil_over"][eye]) for eye in ("body_eye", "lower_eye")]
    linkage = Wishbone({name: point(at) for name, at in points.items()}, float(wheel["camber"]), float(wheel["toe"]), float(wheel["loaded_radius"]), eyes, d["coil_over"]["carried_by"])
    rest, _ = linkage.outputs(0.0)
    out, slope = linkage.rates(travel, rack_travel)
    contact, braking, sign = slope["_contact"], d["braking"], 1.0 if d["axle"] == "front" else -1.0
    return out | {
        "eye_length": out["spring_length"], "motion_ratio": -slope["spring_length"], "wheelbase_change": sign * (out["wheel_x"] - rest["wheel_x"]),
        "half_track_change": out["half_track"] - rest["half_track"], "roll_centre_height": out["half_track"] * contact[1] / contact[2],
        "side_view_angle": np.arctan(contact[0] / contact[2]),
        "brake_anti_pitch": sign * float(braking["axle_share"]) * contact[0] / contact[2] * float(braking["wheelbase"]) / float(braking["centre_of_gravity_height"]),
    }  # fmt: skip


@route("suspension.LiveAxle.at")
def live_axle(d, heave, roll):
    mirror, links = np.array([1, -1, 1]), []
    for link in d["links"]:
        body, on_axle = point(link["body"]), point(link["axle"])
        links += [(link["name"] + str(side), body * m, on_axle * m, None) for side, m in enumerate([1, mirror] if link["fitted"] == "pair" else [1])]
    rod = d["lateral_rod"]
    axle = Axle(point(d["wheel"]["centre"]), [*links, ("rod", point(rod["body"]), point(rod["axle"]), None)])
    q = axle.solve(heave, roll, steps=12)
    middle, turned = q[:3], turn(q[3:6])
    across, nose = turned @ [0, 1, 0], turned @ [1, 0, 0]
    eye = point(d["coil_over"]["axle_eye"]) - axle.middle
    # Freedoms left: six coordinates less the independent lengths.
    step = np.eye(6) * 1e-6
    slopes = np.array([(axle.lengths(axle.start + e) - axle.lengths(axle.start - e)) / 2e-6 for e in step])
    return {
        "axle_x": middle[0], "lateral_shift": middle[1], "axle_steer": np.arctan2(-across[0], across[1]), "pinion_angle": np.arcsin(nose[2]),
        "left_eye_length": norm(middle + turned @ eye - point(d["coil_over"]["body_eye"])), "bind_misfit": np.abs(axle.lengths(q)).max(),
        "freedoms": 6 - np.linalg.matrix_rank(slopes, tol=1e-6),
    }  # fmt: skip
