"""Tyre and wheel: exact fractions of inches and turns, regular polygons, the arc that lies on the ground."""

import math
import re
from fractions import Fraction

import mpmath
import numpy as np
from scipy.integrate import simpson
from scipy.optimize import brentq

from . import INCH, exact, route

mpmath.mp.dps = 40
METRIC = re.compile(r"(?:P|LT)?(\d+)/(\d+)(?:Z?R)(\d+)")
OLD = re.compile(r"([\d.]+)-(\d+)LT")
# Rolling circumference over the free diameter, and 1.03 for the aspect of an old marking without one: conventions, from memory.
ROLLING = {"radial": Fraction("3.05"), "diagonal": Fraction("2.99")}


def outline(marking):
    found = METRIC.match(marking)
    if found:
        width, aspect, rim = map(int, found.groups())
        section, kind = Fraction(width, 1000), "radial"
        height = section * aspect / 100
    else:
        width, rim = OLD.match(marking).groups()
        section, kind, rim = Fraction(width) * INCH, "diagonal", int(rim)
        height = section * Fraction("1.03")
    return section, height, rim * INCH, rim * INCH + 2 * height, kind


@route("tyre.Tyre.dimensions")
def dimensions(d):
    section, height, rim, diameter, _ = outline(d["marking"])
    around = mpmath.pi * diameter.numerator / diameter.denominator
    return {"section_width": section, "section_height": height, "rim_diameter": rim, "free_diameter": diameter, "free_radius": diameter / 2, "free_circumference": float(around), "free_turns": float(1 / around)}


@route("tyre.bolt_circle_diameter", "polygon")
def polygon(adjacent_stud_spacing, studs):
    over = {3: 2 / mpmath.sqrt(3), 4: mpmath.sqrt(2), 5: mpmath.sqrt(2 + 2 / mpmath.sqrt(5)), 6: 2, 8: mpmath.sqrt(4 + 2 * mpmath.sqrt(2)), 10: 1 + mpmath.sqrt(5)}
    return float(adjacent_stud_spacing * over[int(studs)])


@route("tyre.bolt_circle_diameter", "chords")
def chords(adjacent_stud_spacing, studs):
    return brentq(lambda diameter: studs * 2 * math.asin(adjacent_stud_spacing / diameter) - 2 * math.pi, adjacent_stud_spacing * 1.001, adjacent_stud_spacing * studs, xtol=1e-16)


@route("tyre.speedometer_error")
def speedometer_error(rolling_radius_before, rolling_radius_after):
    before, after = 1 / Fraction(rolling_radius_before), 1 / Fraction(rolling_radius_after)  # turns of a distance
    return after / before - 1


@route("tyre.speedometer_error_at_shaft")
def speedometer_error_at_shaft(rolling_radius_before, rolling_radius_after, final_drive_before, final_drive_after):
    before, after = Fraction(final_drive_before) / Fraction(rolling_radius_before), Fraction(final_drive_after) / Fraction(rolling_radius_after)
    return after / before - 1


@route("tyre.true_speed")
def true_speed(indicated_speed, speedometer_error):
    seconds = Fraction(1609344, 1000) / (exact(indicated_speed) / (1 + exact(speedometer_error)))
    return Fraction(1609344, 1000) / seconds


@route("tyre.wheel_backspacing")
def wheel_backspacing(rim_width, flange_thickness, wheel_offset):
    return (exact(rim_width) + 2 * exact(flange_thickness)) / 2 + exact(wheel_offset)


@route("tyre.wheel_offset")
def wheel_offset(rim_width, flange_thickness, wheel_backspacing):
    return exact(wheel_backspacing) - (exact(rim_width) + 2 * exact(flange_thickness)) / 2


@route("tyre.track_change")
def track_change(wheel_offset_before, wheel_offset_after):
    centres = [(-exact(offset), exact(offset)) for offset in (wheel_offset_before, wheel_offset_after)]  # left and right, outboard of the hubs is positive left
    return (centres[1][0] - centres[1][1]) - (centres[0][0] - centres[0][1])


@route("tyre.load_capacity")
def load_capacity(load_index):
    return float(45 * mpmath.mpf(10) ** (mpmath.mpf(load_index) / 80))


@route("tyre.loaded_radius")
def loaded_radius(free_diameter, tyre_load, tyre_rate):
    return exact(free_diameter) / 2 - exact(tyre_load) / exact(tyre_rate)


@route("tyre.rolling_radius", "Simpson")
def rolling_arc(free_diameter, loaded_radius):
    """Distance of a turn: the belt lies flat over the arc that the ground cuts off; there a degree of turn covers the cosine of its length."""
    radius = free_diameter / 2
    half = math.acos(loaded_radius / radius)
    angle = np.linspace(0.0, half, 2001)
    return simpson(radius * np.cos(angle), x=angle) / half


@route("tyre.rolling_radius", "exact fractions")
def rolling_radius(free_diameter, loaded_radius):
    return (exact(free_diameter) / 2 * 2 + exact(loaded_radius)) / 3


@route("tyre.rolling_turns")
def rolling_turns(rolling_radius):
    return float(1 / (2 * mpmath.pi * mpmath.mpf(rolling_radius)))


@route("tyre.rolling_radius_from_turns")
def rolling_radius_from_turns(rolling_turns):
    return float(1 / (2 * mpmath.pi * mpmath.mpf(rolling_turns)))


@route("tyre.WheelChange")
def wheel_change(d):
    """Edges on an axis from the hub's face outwards; clearances from where they were and are."""

    def placed(wheel):
        rim, flange = wheel["rim_width"], wheel["flange_thickness"]
        offset = wheel["offset"] if "offset" in wheel else wheel["backspacing"] - (rim + 2 * flange) / 2
        offset -= wheel.get("spacer", 0)
        if "marking" in wheel:
            section, height, _, diameter, kind = outline(wheel["marking"])
            rolls = ROLLING[kind] * diameter
            usual = next(share for aspect, share in ((75, 70), (60, 75), (50, 80), (45, 85), (0, 90)) if 100 * height >= aspect * section)
            unsaid = 0 if "measuring_rim_width" in wheel else Fraction("0.4") * (rim - section * usual / 100)
            more, taller = (Fraction("0.04"), Fraction("0.04")) if kind == "radial" else (Fraction("0.06"), Fraction("0.08"))
        else:
            section, diameter, rolls = wheel["section_width"], wheel["free_diameter"], wheel["free_diameter"]
            height = unsaid = more = taller = 0
        if "measuring_rim_width" in wheel:
            section += Fraction("0.4") * (rim - wheel["measuring_rim_width"])
        less = Fraction("0.04") if "marking" in wheel else 0
        centre = -offset
        half = lambda tyre: max(tyre, rim + 2 * flange) / 2  # noqa: E731 - the rim may stand out beyond the tyre
        return {
            "wider": half(section * (1 + more) + unsaid) - half(section), "narrower": half(section) - half(section * (1 - less) + unsaid),
            "higher": height * taller, "lower": height * Fraction("0.03") + (Fraction("0.0064") if "marking" in wheel else 0),
            "inner": centre - half(section), "outer": centre + half(section), "flange": centre - rim / 2 - flange, "centre": centre, "radius": diameter / 2, "rolls": rolls,
        }  # fmt: skip

    before, after = placed(d["before"]), placed(d["after"])
    out = {
        "inner_change": after["inner"] - before["inner"], "outer_change": before["outer"] - after["outer"], "arch_change": before["radius"] - after["radius"],
        "flange_change": before["flange"] - after["flange"], "track_change": 2 * (after["centre"] - before["centre"]), "height_change": after["radius"] - before["radius"],
        "speedometer_error": before["rolls"] / after["rolls"] - 1,
    }  # fmt: skip
    if "kingpin_inclination" in d:
        out["scrub_change"] = float(after["centre"] - before["centre"]) - float(after["radius"] - before["radius"]) * math.tan(d["kingpin_inclination"])
    for side in ("inner", "outer", "arch"):
        if f"{side}_clearance" in d:
            # An obstacle lies anywhere between the side and the tread: the worst direction takes the most.
            to_the_side = float(after["wider"] + before["narrower"] - out[f"{side}_change"])
            outwards = float(out["height_change"] + after["higher"] + before["lower"])
            worst = min(max(math.atan2(outwards, to_the_side), 0.0), math.pi / 2)
            directions = (0.0, math.pi / 2, worst)
            taken = max(to_the_side * math.cos(a) + outwards * math.sin(a) for a in directions)
            out[f"{side}_remaining"] = d[f"{side}_clearance"] + (-outwards if side == "arch" else -taken)
    return out
