"""Welds: a group as thousands of springs under a rigid part, fatigue along straight lines in a chart of logarithms."""

import numpy as np

from . import Refused, route


@route("weld.fillet_throat")
def fillet_throat(leg, face_angle):
    if not 0.0005 <= leg <= 0.1 or not np.radians(30) - 1e-12 <= face_angle <= np.radians(120) + 1e-12:
        raise Refused
    # The corner, and the toes on both faces: the throat is the distance of the corner from the line of the toes.
    toes = leg * np.array([1.0, 0.0]), leg * np.array([np.cos(face_angle), np.sin(face_angle)])
    along = (toes[1] - toes[0]) / np.hypot(*(toes[1] - toes[0]))
    distance = abs(toes[0][0] * along[1] - toes[0][1] * along[0])
    lost = 0.006 if face_angle < np.radians(45) - 1e-12 else 0.003 if face_angle < np.radians(60) - 1e-12 else 0.0
    return max(distance - lost, 0.0)


@route("weld.FilletGroup.stress")
def fillet_group(d):
    """Each run as 4000 springs of its throat; the part turns and moves as a rigid body: six equations. The peak over all springs and both ends."""
    force = np.array([float(d[f"force_{axis}"]) for axis in "xyz"])
    at = np.array([float(d[f"at_{axis}"]) for axis in "xyz"])
    points, width, leg, run = [], [], [], []
    for place, on in enumerate(d["runs"]):
        ends = [np.array([float(on[end]["x"]), float(on[end]["y"]), 0.0]) for end in ("start", "end")]
        throat = fillet_throat(float(on["leg"]), float(on.get("face_angle", np.pi / 2)))
        length, parts = np.linalg.norm(ends[1] - ends[0]), 4000
        shares = (np.arange(parts) + 0.5) / parts
        points += [ends[0] + share * (ends[1] - ends[0]) for share in shares]
        width += [throat * float(on.get("welded_share", 1.0)) * length / parts] * parts
        leg += [throat / float(on["leg"])] * parts
        run += [place] * parts
    points, width = np.array(points), np.array(width)
    stiff = np.zeros((6, 6))
    for at_point, area in zip(points, width):
        x, y, _ = at_point
        # Displacement of the point for a shift and a turn of the part.
        moved = np.array([[1, 0, 0, 0, 0, -y], [0, 1, 0, 0, 0, x], [0, 0, 1, y, -x, 0]], float)
        stiff += area * moved.T @ moved
    load = np.concatenate([force, np.cross(at, force)])
    motion = np.linalg.lstsq(stiff, load, rcond=1e-13)[0]
    if np.abs(stiff @ motion - load).max() > 1e-6 * np.abs(load).max():
        raise Refused

    def stress(x, y):
        shift, turn = motion[:3], motion[3:]
        return np.linalg.norm(shift + np.cross(turn, [x, y, 0.0]))

    peak = (-1.0, None, None, None, None)
    leg_stress = line_load = 0.0
    for place, on in enumerate(d["runs"]):
        throat = fillet_throat(float(on["leg"]), float(on.get("face_angle", np.pi / 2)))
        for end in ("start", "end"):
            x, y = float(on[end]["x"]), float(on[end]["y"])
            here = stress(x, y)
            leg_stress, line_load = max(leg_stress, here * throat / float(on["leg"])), max(line_load, here * throat)
            if here > peak[0]:
                peak = (here, x, y, place + 1, throat)
    out = {"throat_area": width.sum(), "throat_stress": peak[0], "peak_x": peak[1], "peak_y": peak[2], "peak_run": peak[3], "leg_stress": leg_stress}
    if "filler_ultimate" in d:
        out["throat_margin"] = 0.6 * float(d["filler_ultimate"]) / peak[0]
    if "plate_thickness" in d:
        out["toe_stress"] = line_load * (1 if d.get("welded_from") == "one_side" else 2) / float(d["plate_thickness"])
        if "parent_ultimate" in d:
            out["parent_margin"] = 0.6 * float(d["parent_ultimate"]) / max(leg_stress, out["toe_stress"])
    return out


@route("weld.Fatigue.damage")
def fatigue(d):
    """Points of the line by its three marks, straight in logarithms: 2e6 cycles at the class, slope 1 in 3; from 5e6 cycles 1 in 5, to 1e8."""
    log = np.log10
    of_class = float(d["detail_class"])
    knee = 10 ** (log(of_class) - (log(5e6) - log(2e6)) / 3)
    cut_off = 10 ** (log(knee) - (log(1e8) - log(5e6)) / 5)
    blocks = [(float(on["stress_range"]) * float(d["partial_factor"]), float(on["cycles"])) for on in d["spectrum"]]
    shares = []
    opens = any(range_ > knee and count > 0 for range_, count in blocks)
    for range_, count in blocks:
        lives = 10 ** (log(5e6) + (3 if range_ > knee else 5) * (log(knee) - log(range_))) if range_ > 0 else np.inf
        shares.append(count / lives if opens and range_ > cut_off else 0.0)
    worst = int(np.argmax(shares))
    return {"damage": sum(shares), "worst_block": worst + 1 if shares[worst] > 0 else 0, "worst_damage": shares[worst], "knee": knee, "cut_off": cut_off} | ({"lives": 1 / sum(shares)} if sum(shares) > 0 else {})
