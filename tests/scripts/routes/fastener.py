"""Fasteners: the thread drawn flank by flank, areas by quadrature, work of one turn, springs that can only be pressed, a stiff plate by its stiffness matrix."""

import math
import re
from fractions import Fraction

import mpmath
import numpy as np

from . import INCH, PSI, Refused, route

mpmath.mp.dps = 40
PI, ROOT_3 = mpmath.pi, mpmath.sqrt(3)


def real(number):
    """A number with 40 digits; a fraction stays exact until here."""
    return mpmath.mpf(number.numerator) / number.denominator if isinstance(number, Fraction) else mpmath.mpf(number)


def depth(flats_at_root, flat_at_crest, pitch):
    """Depth of a 60 degree thread between two flats, as shares of the pitch: the sharp triangle is `sqrt(3) / 2` as high as it is wide."""
    sharp = real(pitch) * ROOT_3 / 2
    return sharp * (1 - real(flat_at_crest) - real(flats_at_root))


def profile(diameter, pitch):
    """Pitch, root and minor diameter, by the flats of the profile: crest P/8, pitch line P/2, minor P/4, root of the bolt H/6 above the sharp one."""
    d, p = real(diameter), real(pitch)
    crest = Fraction(1, 8)
    return {
        "pitch_diameter": d - 2 * depth(Fraction(1, 2), crest, p),
        "minor_diameter": d - 2 * depth(Fraction(1, 4), crest, p),
        "root_diameter": d - 2 * depth(Fraction(1, 6), crest, p),
    }


def disc(diameter):
    """Area of a circle: mean of its inscribed and circumscribed areas is not needed, the chords are integrated."""
    r = real(diameter) / 2
    return 4 * mpmath.quad(lambda angle: (r * mpmath.cos(angle)) ** 2, [0, PI / 2])


def metric_area(diameter, pitch):
    of = profile(diameter, pitch)
    return disc((of["pitch_diameter"] + of["root_diameter"]) / 2)


def unified_area(diameter, pitch):
    # Mean of the pitch diameter and of the root that a sharp tool leaves under it: as deep below the pitch line as the crest's triangle is high, 3/4 H.
    of = profile(diameter, pitch)
    sharp_root = of["pitch_diameter"] - real(pitch) * ROOT_3 / 2 * Fraction(3, 4).numerator / 4
    return disc((of["pitch_diameter"] + sharp_root) / 2)


@route("fastener.metric_stress_area")
def metric_stress_area(diameter, pitch):
    return float(metric_area(diameter, pitch))


@route("fastener.unified_stress_area")
def unified_stress_area(diameter, pitch):
    return float(unified_area(diameter, pitch))


COARSE = {"6": "1", "8": "1.25", "10": "1.5", "12": "1.75", "16": "2", "20": "2.5", "24": "3"}
INCHES = re.compile(r"(?:(\d+)-)?(\d+)/(\d+)-(\d+)")


def thread(marking):
    """Diameter and pitch of a marking, exact."""
    if marking.startswith("M"):
        diameter, _, pitch = marking[1:].partition("x")
        return "metric", Fraction(diameter) / 1000, Fraction(pitch or COARSE[diameter]) / 1000
    found = INCHES.match(marking)
    whole, above, below, count = (int(group or 0) for group in found.groups())
    return "unified", (whole + Fraction(above, below)) * INCH, INCH / count


def area_of(marking):
    series, diameter, pitch = thread(marking)
    return (metric_area if series == "metric" else unified_area)(diameter, pitch)


@route("fastener.Thread.dimensions")
def dimensions(d):
    _, diameter, pitch = thread(d["marking"])
    of = profile(diameter, pitch)
    return {"diameter": diameter, "pitch": pitch, **{name: float(value) for name, value in of.items()}, "stress_area": float(area_of(d["marking"]))}


# Proof, yield and tensile strength by the largest diameter, from memory: ISO 898-1 in MPa, SAE J429 in ksi.
MPA, KSI = Fraction(10**6), 1000 * PSI
STRENGTHS = {
    "4.6": [(39, (225, 240, 400))], "4.8": [(39, (310, 340, 420))], "5.6": [(39, (280, 300, 500))], "5.8": [(39, (380, 420, 520))],
    "6.8": [(39, (440, 480, 600))], "8.8": [(16, (580, 640, 800)), (39, (600, 660, 830))], "9.8": [(16, (650, 720, 900))],
    "10.9": [(39, (830, 940, 1040))], "12.9": [(39, (970, 1100, 1220))],
    "1": [(Fraction(3, 2), (33, 36, 60))], "2": [(Fraction(3, 4), (55, 57, 74)), (Fraction(3, 2), (33, 36, 60))],
    "5": [(1, (85, 92, 120)), (Fraction(3, 2), (74, 81, 105))], "8": [(Fraction(3, 2), (120, 130, 150))],
}  # fmt: skip


def strength(marking, grade):
    series, diameter, _ = thread(marking)
    size, unit = (diameter * 1000, MPA) if series == "metric" else (diameter / INCH, KSI)
    for largest, values in STRENGTHS[grade]:
        if size <= largest:
            return [value * unit for value in values]
    raise Refused(grade)


@route("fastener.Bolt.loads")
def loads(d):
    area = area_of(d["thread"])
    of = [float(real(stress) * area) for stress in strength(d["thread"], grade_of(d))]
    return {"stress_area": float(area), **dict(zip(("proof_load", "yield_load", "tensile_load"), of, strict=True))}


def grade_of(d):
    """A grade that reads as a number has become one."""
    grade = d["grade"]
    return grade if isinstance(grade, str) else f"{float(grade):.1f}".removesuffix(".0")


@route("fastener.Bolt.proof_share")
def proof_share(d, preload):
    proof = real(strength(d["thread"], grade_of(d))[0]) * area_of(d["thread"])
    if preload > proof:
        raise Refused("preload above proof")
    return float(preload / proof)


# Tightening: the work of one turn. The bolt advances by the pitch against the preload; friction rubs along the pitch line of the thread, pressed by
# the preload over the cosine of half the flank angle, and along the mean circle under the head.
def work_of_a_turn(preload, diameter, pitch, thread_friction, head_friction=0.0, head_friction_diameter=0.0):
    force = real(preload)
    flank = force / mpmath.cos(PI / 6)
    rubbed = mpmath.quad(lambda angle: real(thread_friction) * flank * profile(diameter, pitch)["pitch_diameter"] / 2, [0, 2 * PI])
    head = mpmath.quad(lambda angle: real(head_friction) * force * real(head_friction_diameter) / 2, [0, 2 * PI])
    return force * real(pitch) + rubbed + head


def torque_of(*parts):
    return work_of_a_turn(*parts) / (2 * PI)


@route("fastener.tightening_torque")
def tightening_torque(preload, diameter, pitch, thread_friction, head_friction, head_friction_diameter):
    return float(torque_of(preload, diameter, pitch, thread_friction, head_friction, head_friction_diameter))


@route("fastener.preload_from_torque")
def preload_from_torque(torque, diameter, pitch, thread_friction, head_friction, head_friction_diameter):
    if not torque:
        return 0.0
    parts = (diameter, pitch, thread_friction, head_friction, head_friction_diameter)
    return float(mpmath.findroot(lambda preload: torque_of(preload, *parts) - torque, (torque / diameter, 10 * torque / diameter)))


@route("fastener.nut_factor")
def nut_factor(diameter, pitch, thread_friction, head_friction, head_friction_diameter):
    return float(torque_of(1, diameter, pitch, thread_friction, head_friction, head_friction_diameter) / real(diameter))


@route("fastener.torque_by_nut_factor")
def torque_by_nut_factor(nut_factor, preload, diameter):
    return Fraction(nut_factor) * Fraction(preload) * Fraction(diameter)


@route("fastener.preload_by_nut_factor")
def preload_by_nut_factor(nut_factor, torque, diameter):
    return Fraction(torque) / (Fraction(nut_factor) * Fraction(diameter))


@route("fastener.thread_torque")
def thread_torque(preload, diameter, pitch, thread_friction):
    return float(torque_of(preload, diameter, pitch, thread_friction))


@route("fastener.tightening_stress")
def tightening_stress(bolt_force, stress_area, thread_torque):
    """Largest principal stresses at the rim of the circle, whose torque is the integral of a shear that grows with the radius."""
    rim = mpmath.sqrt(real(stress_area) / PI)
    per_shear = mpmath.quad(lambda radius: radius / rim * radius * 2 * PI * radius, [0, rim])
    shear, tension = real(thread_torque) / per_shear, real(bolt_force) / real(stress_area)
    both = mpmath.eigsy(mpmath.matrix([[tension, shear, 0], [shear, 0, 0], [0, 0, 0]]), eigvals_only=True)
    a, b, c = both
    return float(mpmath.sqrt(((a - b) ** 2 + (b - c) ** 2 + (c - a) ** 2) / 2))


@route("fastener.embedding_loss")
def embedding_loss(embedding, bolt_stiffness, clamped_stiffness):
    """Least energy of the two springs: the bolt gives back what the parts do not take up."""
    bolt, parts, gap = Fraction(bolt_stiffness), Fraction(clamped_stiffness), Fraction(embedding)
    # Stretch x of the bolt is lost, the parts spring back by gap - x; the derivative of bolt x^2 + parts (gap - x)^2 is zero.
    slope = lambda x: 2 * bolt * x - 2 * parts * (gap - x)  # noqa: E731
    at_zero, at_one = slope(Fraction(0)), slope(Fraction(1))
    return bolt * (at_zero / (at_zero - at_one))


LUBRICANTS = {"dry": ("0.14", "0.35"), "oiled": ("0.08", "0.16"), "anti_seize": ("0.04", "0.16")}


def mean(a, b):
    return (real(a) + real(b)) / 2


def torque_per_force(d):
    """Torque of a newton of preload at the lowest, middle and highest friction; none if friction is not written."""
    _, diameter, pitch = thread(d["bolt"]["thread"])
    if "least_nut_factor" in d:
        low, high = d["least_nut_factor"], d["peak_nut_factor"]
        return [real(factor) * real(diameter) for factor in (low, mean(low, high), high)]
    if "lubricant" in d:
        both = [Fraction(value) for value in LUBRICANTS[d["lubricant"]]]
        thread_bounds = head_bounds = both
    elif "least_thread_friction" in d:
        thread_bounds, head_bounds = ([d[f"{end}_{place}_friction"] for end in ("least", "peak")] for place in ("thread", "head"))
    else:
        return None
    if "head_friction_diameter" not in d:
        return None
    middles = [(low, mean(low, high), high) for low, high in (thread_bounds, head_bounds)]
    return [torque_of(1, diameter, pitch, in_thread, at_head, d["head_friction_diameter"]) for in_thread, at_head in zip(*middles, strict=True)]


SCATTERS = {"torque_wrench": Fraction("0.3"), "angle": Fraction("0.17"), "yield_controlled": Fraction("0.17")}


def preloads(d, torque=None):
    """Least, mean and peak preload; none if they are not known."""
    method = d.get("method")
    if method not in SCATTERS:
        return None
    scatter = real(d.get("scatter", SCATTERS[method]))
    if "preload" in d:
        middle = real(d["preload"])
        return middle * (1 - scatter), middle, middle * (1 + scatter)
    per = torque_per_force(d)
    torque = d.get("torque") if torque is None else torque
    if method != "torque_wrench" or torque is None or per is None:
        return None
    low, middle, high = (real(torque) / of for of in per)
    wrench = real(Fraction("0.04"))
    return min(middle * (1 - scatter), high * (1 - wrench)), middle, max(middle * (1 + scatter), low * (1 + wrench))


@route("fastener.Tightening.preload_bounds")
def preload_bounds(d):
    found = preloads(d)
    if found is None:
        return {}
    proof = real(strength(d["bolt"]["thread"], grade_of(d["bolt"]))[0]) * area_of(d["bolt"]["thread"])
    return {**dict(zip(("least_preload", "mean_preload", "peak_preload"), map(float, found), strict=True)), "peak_over_proof": float(found[2] / proof)}


@route("fastener.Tightening.torque_for")
def torque_for(d, proof_share):
    proof = real(strength(d["bolt"]["thread"], grade_of(d["bolt"]))[0]) * area_of(d["bolt"]["thread"])
    peak = lambda torque: preloads(d, torque)[2] - real(proof_share) * proof  # noqa: E731
    torque = mpmath.findroot(peak, (1, 100))
    least, _, most = preloads(d, torque)
    return {"torque": float(torque), "least_preload": float(least), "peak_preload": float(most)}


# Engagement: the tooth's flanks climb at 60 degrees from the pitch line, where tooth and gap are equal. The cut is as wide as the flanks stand apart there.
def tooth(pitch_diameter, cylinder, pitch, outward):
    """Width of a tooth on a cylinder; a tooth of the bolt grows inward, one of the hole outward."""
    p, climb = real(pitch), mpmath.tan(PI / 3)
    flank = lambda z: (z - p / 4) * climb - outward * (real(cylinder) - real(pitch_diameter)) / 2  # noqa: E731
    return min(2 * mpmath.findroot(flank, (p / 4, p / 2)), p)


def cut(pitch_diameter, cylinder, pitch, engagement, outward):
    around = mpmath.quad(lambda angle: real(cylinder) / 2, [0, 2 * PI])
    return around * tooth(pitch_diameter, cylinder, pitch, outward) * (real(engagement) / real(pitch))


@route("fastener.external_thread_shear_area")
def external_thread_shear_area(internal_minor_diameter, external_pitch_diameter, pitch, engagement):
    if external_pitch_diameter <= internal_minor_diameter:
        raise Refused("the threads do not meet")
    return float(cut(external_pitch_diameter, internal_minor_diameter, pitch, engagement, -1))


@route("fastener.internal_thread_shear_area")
def internal_thread_shear_area(external_diameter, internal_pitch_diameter, pitch, engagement):
    if external_diameter <= internal_pitch_diameter:
        raise Refused("the threads do not meet")
    return float(cut(internal_pitch_diameter, external_diameter, pitch, engagement, 1))


def worst_sizes(marking):
    """Outside and pitch diameter of the bolt, pitch and minor diameter of the hole at the ends of 6g and 6H (ISO 965-1, from memory), in metres."""
    series, diameter, pitch = thread(marking)
    of, d, p = profile(diameter, pitch), real(diameter * 1000), real(pitch * 1000)
    power = lambda of, to: mpmath.exp(mpmath.log(of) * real(to))  # noqa: E731
    gap, outside = 15 + 11 * p, 180 * power(p, Fraction(2, 3)) - real(Fraction("3.15")) * power(p, Fraction(-1, 2))
    at_pitch = 90 * power(p, Fraction("0.4")) * power(d, Fraction("0.1"))
    if series == "unified":
        inches = pitch / INCH
        hole = real((inches / 4 - Fraction("0.4") * inches**2) * INCH * 10**6)
    elif p < 1:
        hole = 433 * p - 190 * power(p, Fraction("1.22"))
    else:
        hole = 230 * power(p, Fraction("0.7"))
    micron = mpmath.mpf(10) ** -6
    return (
        real(diameter) - (gap + outside) * micron,
        of["pitch_diameter"] - (gap + at_pitch) * micron,
        of["pitch_diameter"] + at_pitch * real(Fraction("1.32")) * micron,
        of["minor_diameter"] + hole * micron,
    )


@route("fastener.ThreadEngagement.strength")
def engagement_strength(d):
    marking, grade = d["bolt"]["thread"], grade_of(d["bolt"])
    _, diameter, pitch = thread(marking)
    external, external_pitch, internal_pitch, internal_minor = worst_sizes(marking)
    tensile = real(strength(marking, grade)[2])
    wall = d.get("wall_width")
    width = Fraction(19, 10) if wall in (None, "none") else min(wall / diameter, Fraction(19, 10))
    keeps = real(1 - (Fraction(19, 10) - width) ** 2) * real(Fraction("0.897"))  # the parabola has its top, 1, at 1.9
    breaks = tensile * area_of(marking) * real(Fraction(6, 5))

    def strips(length):
        bolt = keeps * real(Fraction(3, 5)) * tensile * cut(external_pitch, internal_minor, pitch, length, -1)
        if "shear_strength" not in d:
            return bolt, None
        return bolt, keeps * real(d["shear_strength"]) * cut(internal_pitch, external, pitch, length, 1)

    least = lambda length: min(of for of in strips(length) if of is not None) - breaks  # noqa: E731
    bolt, part = strips(d["engagement"])
    found = {"bolt_breaks": breaks, "bolt_strips": bolt, "margin": min(bolt, part or bolt) / breaks}
    if part is not None:
        found["part_strips"] = part
    found["least_engagement"] = mpmath.findroot(least, (real(diameter) / 10, real(diameter)))
    weaker = "tapped part" if part is not None and part < bolt else "bolt"
    return {**{name: float(value) for name, value in found.items()}, "strips_first": weaker}


# Joint: two springs, the parts can only be pressed. The stretch of the bolt is the root of the balance of forces, piece by piece exact.
def balance(preload, pull, bolt, parts):
    """Bolt force and clamp under a pull."""
    preload, pull, bolt, parts = (Fraction(of) for of in (preload, pull, bolt, parts))
    together = lambda stretch: (preload + bolt * stretch) - (preload - parts * stretch) - pull  # noqa: E731
    stretch = together(Fraction(0)) / (together(Fraction(0)) - together(Fraction(1)))
    if parts * stretch > preload:
        apart = lambda stretch: preload + bolt * stretch - pull  # noqa: E731
        stretch = apart(Fraction(0)) / (apart(Fraction(0)) - apart(Fraction(1)))
        return preload + bolt * stretch, Fraction(0)
    return preload + bolt * stretch, preload - parts * stretch


@route("fastener.joint_forces")
def joint_forces(preload, external_tension, bolt_stiffness, clamped_stiffness):
    springs = (bolt_stiffness, clamped_stiffness)
    bolt, clamp = balance(preload, external_tension, *springs)
    # A newton of pull on a joint that stays closed, and the pull at which a straight line from there ends.
    share = balance(10, 1, *springs)[0] - 10
    lost = 10 - balance(10, 1, *springs)[1]
    return {"load_factor": share, "bolt_force": bolt, "clamp_force": clamp, "separation_force": Fraction(preload) / lost}


def zero(value):
    return value if value is not None else Fraction(0)


def clamp_under(d, pull):
    """Clamp at the least preload; springs of the load factor and the rest of it. Without a factor, the parts give way and the bolt does not."""
    kept = max(d["least_preload"] - zero(d.get("embedding_loss")), Fraction(0))
    share = d.get("load_factor")
    return max(kept - pull, Fraction(0)) if share is None else balance(kept, pull, share, 1 - Fraction(share))[1]


def hollow(d):
    return d.get("grip") == "hollow" or "least_preload" not in d


@route("fastener.Joint.slip")
def slip(d):
    if hollow(d):
        return {"demand": d["external_shear"]}
    clamp = clamp_under(d, d["external_tension"])
    found = {"least_clamp": clamp, "demand": d["external_shear"]}
    if "face_friction" in d:
        # Every face holds friction times clamp: the faces one by one.
        found["capacity"] = sum(Fraction(d["face_friction"]) * clamp for _ in range(int(d.get("shear_planes", 1))))
        if d["external_shear"]:
            found["margin"] = found["capacity"] / d["external_shear"]
    return found


@route("fastener.Joint.separation")
def separation(d):
    if hollow(d):
        return {"demand": d["external_tension"]}
    # The clamp falls in a straight line with the pull: its zero from two pulls.
    whole, after = clamp_under(d, Fraction(0)), clamp_under(d, Fraction(1))
    found = {"capacity": whole / (whole - after) if whole else Fraction(0), "demand": d["external_tension"]}
    if d["external_tension"]:
        found["margin"] = found["capacity"] / d["external_tension"]
    return found


@route("fastener.Joint.overtension")
def overtension(d):
    if "peak_preload" not in d:
        return {}
    marking = d["bolt"]["thread"]
    _, diameter, pitch = thread(marking)
    proof, yields, _ = (real(of) for of in strength(marking, grade_of(d["bolt"])))
    share, peak, pull = d.get("load_factor"), d["peak_preload"], d["external_tension"]
    force = peak + pull if share is None else balance(peak, pull, share, 1 - Fraction(share))[0]
    friction, area = d.get("peak_thread_friction"), area_of(marking)
    twist = torque_of(peak, diameter, pitch, friction) if friction is not None else 0
    both = tightening_stress(force, area, twist)
    rim = mpmath.sqrt(area / PI)
    shear = twist / mpmath.quad(lambda radius: radius / rim * radius * 2 * PI * radius, [0, rim])
    tension = real(force) / area
    found = {"bolt_force": force, "tensile_stress": tension, "torsion_stress": shear, "equivalent_stress": both, "yield_margin": yields / both, "proof_margin": proof / tension}
    return {name: float(of) for name, of in {**found, "margin": min(yields / both, proof / tension)}.items()}


SHEAR_IN_THREAD = {"4.6": "0.6", "5.6": "0.6", "8.8": "0.6"}  # EN 1993-1-8 table 3.4, from memory; the others 0.5


@route("fastener.Joint.bolt_shear")
def bolt_shear(d):
    marking, grade = d["bolt"]["thread"], grade_of(d["bolt"])
    _, diameter, _ = thread(marking)
    tensile, in_thread = real(strength(marking, grade)[2]), d.get("shear_plane") != "shank"
    share = real(Fraction(SHEAR_IN_THREAD.get(grade, "0.5") if in_thread else "0.6"))
    area = area_of(marking) if in_thread else disc(diameter)
    across = sum(share * tensile * area for _ in range(int(d.get("shear_planes", 1))))
    along = real(Fraction("0.9")) * tensile * area_of(marking)
    shear, pull = real(d["external_shear"]), real(d["external_tension"])
    found = {"area": area, "shear_capacity": across, "tension_capacity": along}
    if shear or pull:
        # Both forces grow together until one of the two sums is used up.
        used = lambda times: max(times * shear / across + times * pull / along / real(Fraction("1.4")), times * pull / along) - 1  # noqa: E731
        found["margin"] = mpmath.findroot(used, (mpmath.mpf(0), mpmath.mpf(10) ** 9), solver="anderson", tol=1e-25)
    return {name: float(of) for name, of in found.items()}


@route("fastener.Joint.bearing")
def bearing(d):
    _, diameter, _ = thread(d["bolt"]["thread"])
    known = [part for part in d.get("parts", ()) if "thickness" in part and "bearing_strength" in part]
    if not known or not d["external_shear"]:
        return {}
    rows = [(part["bearing_strength"] * part["thickness"] * diameter, d["external_shear"] * part.get("shear_share", 1), part["name"]) for part in known]
    capacity, demand, name = min(rows, key=lambda row: row[0] / row[1])
    return {"part": name, "capacity": capacity, "demand": demand, "margin": capacity / demand}


# Groups: a stiff plate on springs of one newton a metre. Its motion is the solution of the stiffness matrix, built from the energy of the springs.
def plate(places, force, at, couple, edge=None):
    """Forces (x, y, z) on the bolts. With an edge, the plate may only turn about it; the moment across it turns it about the foot of the centroid."""
    places, force, at, couple = (np.array(of, float) for of in (places, force, at, couple))
    wrench = np.concatenate([force, couple + np.cross(at, force)])
    moves = np.zeros((len(places), 3, 6))
    for place, (x, y) in enumerate(places):
        moves[place] = [[1, 0, 0, 0, 0, -y], [0, 1, 0, 0, 0, x], [0, 0, 1, y, -x, 0]]
    flat = moves.reshape(-1, 6)
    motion = np.linalg.lstsq(flat.T @ flat, wrench, rcond=1e-12)[0]
    bolts = moves @ motion
    if edge is not None:
        (first, second), centre = np.array(edge, float), places.mean(axis=0)
        along = (second - first) / np.linalg.norm(second - first)
        away = centre - first - along * ((centre - first) @ along)
        away /= np.linalg.norm(away)
        foot = first + along * ((centre - first) @ along)
        from_foot = couple + np.cross(at - [*foot, 0], force)
        tip, lean = (np.array([*axis, 0.0]) for axis in (along, away))
        lifts = []
        for axis in (tip, lean):
            # Lift of every bolt for a turn about the axis, and the turn whose springs take the moment.
            lift = np.array([np.cross(axis, [*(place - foot), 0])[2] for place in places])
            lifts.append(lift * (from_foot @ axis) / (lift @ lift))
        opens = lifts[0] if lifts[0][np.argmax((places - foot) @ away)] > 0 else 0 * lifts[0]
        bolts[:, 2] = opens + lifts[1]
    return bolts


@route("fastener.BoltGroup.worst")
def worst(d):
    places = [(float(bolt["x"]), float(bolt["y"])) for bolt in d["bolts"]]
    three = lambda name: [float(d.get(f"{name}_{axis}", 0)) for axis in "xyz"]  # noqa: E731
    edge = d.get("edge")
    line = edge and [[float(edge["x_1"]), float(edge["y_1"])], [float(edge["x_2"]), float(edge["y_2"])]]
    bolts = plate(places, three("force"), three("at"), three("moment"), line)
    shears = np.hypot(bolts[:, 0], bolts[:, 1])
    return {"peak_shear": float(shears.max()), "peak_tension": float(bolts[:, 2].max())}


def ring(d, radius):
    """Studs on a circle, the first one along x."""
    turns = 2 * np.pi * np.arange(int(d["studs"])) / int(d["studs"])
    return [(radius * np.cos(turn), radius * np.sin(turn)) for turn in turns]


@route("fastener.WheelStuds.slip")
def stud_slip(d):
    load, grip, radius = float(d["wheel_load"]), float(d["grip"]), float(d["loaded_radius"])
    places = ring(d, float(d.get("face_diameter", d["bolt_circle"])) / 2)
    # The load across is turned so that it meets the tangent of the first stud.
    bolts = plate(places, [0, load * math.hypot(1, grip), -load * grip], [0, 0, 0], [0, 0, load * grip * radius])
    demand = np.hypot(bolts[:, 0], bolts[:, 1]).max()
    found = {"demand": float(demand)}
    if "least_preload" in d and "face_friction" in d:
        clamp = max(float(d["least_preload"] - d.get("embedding_loss", 0)) + bolts[0, 2], 0.0)
        found |= {"capacity": clamp * float(d["face_friction"]), "margin": clamp * float(d["face_friction"]) / demand}
    return {name: float(of) for name, of in found.items()}


@route("fastener.WheelStuds.clamp")
def stud_clamp(d):
    load, side = float(d["wheel_load"]), float(d["wheel_load"] * d["grip"])
    lever = float(d["loaded_radius"])
    # A pull along the studs at the contact patch, and the load beside the face.
    bolts = plate(ring(d, float(d["bolt_circle"]) / 2), [0, 0, side], [lever, 0, 0], [0, -load * float(d.get("face_offset", 0)), 0])
    demand = bolts[:, 2].max()
    found = {"demand": float(demand)}
    if "least_preload" in d:
        kept = max(float(d["least_preload"] - d.get("embedding_loss", 0)), 0.0)
        found |= {"capacity": kept, "margin": kept / float(demand)}
    return found
