"""Fasteners: the thread's profile drawn point by point, areas by Simpson's rule, exact fractions of inches, equilibrium of a slid wedge."""

import math
import re
from fractions import Fraction

import mpmath

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
