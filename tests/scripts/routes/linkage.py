"""Linkages of single cases: the solvers of `double_wishbone.py` and `live_axle.py` on the points that a row gives."""

import numpy as np
from double_wishbone import Wishbone
from live_axle import Axle, norm, turn
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation
from strut import Strut

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


def cut(linkage, eyes, carried_by, travel, rack, step=2e-4):
    """Movement of every point of the upright for a lengthening of each member by itself, all others kept: a cut member does work on it alone.

    The members are the five links (of a strut three, and the two distances of the top mount from its axis), and the coil-over between its eyes in
    place of the wheel's height.
    """
    p, start, carrier = linkage.p, linkage.p["wc"], carried_by
    centre, turned, _ = linkage.solve(travel, rack)
    inner = {**p, "ti": p["ti"] + np.array([0.0, rack, 0.0])}
    body, lower = eyes

    def lengths(q):
        pose = q[:3], Rotation.from_rotvec(q[3:]), None
        outer = {name: q[:3] + pose[1].apply(p[name] - start) for name in linkage.upright}
        eye = linkage.carried(carrier, lower, travel, rack, (*pose[:2], outer))
        return np.array([*linkage.misfits(inner, outer), norm(body - eye)])

    start_q = np.array([*centre, *turned.as_rotvec()])
    rest = lengths(start_q)

    def moved(member, by):
        wanted = rest + by * np.eye(6)[member]
        found = least_squares(lambda q: lengths(q) - wanted, start_q, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
        assert np.abs(found.fun).max() < 1e-12, found.fun
        return found.x[:3], Rotation.from_rotvec(found.x[3:])

    def path(member, at):
        """Displacement of a point of the upright per lengthening, two steps extrapolated."""
        fixed = turned.inv().apply(at - centre)
        def slope(step):
            ends = [where + turn.apply(fixed) for where, turn in (moved(member, step), moved(member, -step))]
            return (ends[0] - ends[1]) / (2 * step)
        return (4 * slope(step / 2) - slope(step)) / 3

    return path


def tensions(linkage, eyes, carried_by, travel, rack, loads):
    """Tension of every member under the loads of the ground, each along x, y or z at a height above the ground."""
    out, pose = linkage.outputs(travel, rack)
    contact = np.array([out["contact_x"], out["half_track"], out["contact_z"]])
    rise = pose[0] - contact
    path = cut(linkage, eyes, carried_by, travel, rack)
    at = [contact + rise * height / rise[2] for _, height in loads]
    return [sum(force * path(member, where)[axis] for axis, ((force, _), where) in enumerate(zip(loads, at))) for member in range(6)]


@route("suspension.DoubleWishbone.forces")
def double_wishbone_forces(d, travel, rack_travel, longitudinal_force, longitudinal_height, lateral_force, lateral_height, vertical_force, drop_link_force):
    """Legs are bars, so they hold only for an arm that carries nothing between its ends: a row with the coil-over on the upright tells all."""
    assert drop_link_force == 0.0
    upper, lower, rod, wheel = d["upper_arm"], d["lower_arm"], d["tie_rod"], d["wheel"]
    points = {"uf": upper["front_pivot"], "ur": upper["rear_pivot"], "ub": upper["ball_joint"], "lf": lower["front_pivot"], "lr": lower["rear_pivot"], "lb": lower["ball_joint"], "ti": rod["inner"], "to": rod["outer"], "wc": wheel["centre"]}
    eyes, by = [point(d["coil_over"][eye]) for eye in ("body_eye", "lower_eye")], d["coil_over"]["carried_by"]
    linkage = Wishbone({name: point(at) for name, at in points.items()}, float(wheel["camber"]), float(wheel["toe"]), float(wheel["loaded_radius"]), eyes, by)
    loads = (longitudinal_force, longitudinal_height), (lateral_force, lateral_height), (vertical_force, 0.0)
    tension = tensions(linkage, eyes, by, travel, rack_travel, loads)
    legs = dict(zip(("upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg"), tension))
    bars = {name: on for name, on in legs.items() if by == "upright" or not name.startswith(by[:5])}
    return bars | {"tie_rod": tension[4], "coil_over": -tension[5]}


@route("suspension.Strut.forces")
def strut_forces(d, travel, rack_travel, longitudinal_force, longitudinal_height, lateral_force, lateral_height, vertical_force, drop_link_force):
    assert drop_link_force == 0.0
    lower, rod, wheel, leg = d["lower_arm"], d["tie_rod"], d["wheel"], d["leg"]
    points = {"tm": leg["top_mount"], "le": leg["lower_end"], "lf": lower["front_pivot"], "lr": lower["rear_pivot"], "lb": lower["ball_joint"], "ti": rod["inner"], "to": rod["outer"], "wc": wheel["centre"]}
    linkage = Strut({name: point(at) for name, at in points.items()}, float(wheel["camber"]), float(wheel["toe"]), float(wheel["loaded_radius"]))
    loads = (longitudinal_force, longitudinal_height), (lateral_force, lateral_height), (vertical_force, 0.0)
    eyes = [point(leg["top_mount"]), point(leg["lower_end"])]
    front, rear, tie_rod, one, two, axial = tensions(linkage, eyes, "upright", travel, rack_travel, loads)
    return {"lower_front_leg": front, "lower_rear_leg": rear, "tie_rod": tie_rod, "coil_over": -axial, "leg_side_force": np.hypot(one, two)}
