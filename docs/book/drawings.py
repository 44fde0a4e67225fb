"""Draws one picture a system, `<system>.svg`, when the book is built. Everything is black and named where it stands.

A drawing is a function with the name of its system; lengths are in centimetres of the picture.
"""

import sys
from pathlib import Path

import matplotlib

matplotlib.use("svg")
matplotlib.rcParams.update({"font.size": 10, "svg.hashsalt": "axlewright", "mathtext.fontset": "dejavuserif"})

import numpy as np  # noqa: E402
from matplotlib.figure import Figure  # noqa: E402
from matplotlib.patches import Arc, Circle, FancyArrowPatch, FancyBboxPatch, Polygon, Rectangle  # noqa: E402


class Sheet:
    """An empty sheet, and what is drawn on it."""

    def __init__(self, width: float, height: float) -> None:
        self.figure = Figure(figsize=(width / 2.0, height / 2.0))
        self.axes = self.figure.add_axes((0, 0, 1, 1))
        self.axes.set(xlim=(0, width), ylim=(0, height), aspect="equal")
        self.axes.axis("off")

    def line(self, *points, width=1.4, style="-", **more):
        self.axes.plot(*zip(*points, strict=True), style, color="black", linewidth=width, **more)

    def add(self, patch):
        self.axes.add_patch(patch)

    def circle(self, centre, radius, *, width=1.4, style="-", fill="none"):
        self.add(Circle(centre, radius, facecolor=fill, edgecolor="black", linewidth=width, linestyle=style))

    def box(self, corner, width, height, words="", *, hatch=None, fill="white", style="-"):
        self.add(Rectangle(corner, width, height, facecolor=fill, edgecolor="black", hatch=hatch, linewidth=1.4, linestyle=style))
        if words:
            self.say((corner[0] + width / 2, corner[1] + height / 2), words)

    def ground(self, left, right, y):
        self.line((left, y), (right, y))
        self.add(Rectangle((left, y - 0.25), right - left, 0.25, facecolor="none", edgecolor="black", hatch="////", linewidth=0))

    def arrow(self, start, end, *, both=False, width=1.2, style="-"):
        kind = "<|-|>" if both else "-|>"
        self.add(FancyArrowPatch(start, end, arrowstyle=kind, mutation_scale=11, linewidth=width, linestyle=style, color="black", shrinkA=0, shrinkB=0))

    def say(self, place, words, across="center", up="center", **more):
        box = {"facecolor": "white", "edgecolor": "none", "pad": 1.2}
        self.axes.text(*place, words, ha=across, va=up, bbox=box, **more)

    def measure(self, start, end, words, at=0.5):
        """A length with its name on it."""
        self.arrow(start, end, both=True, width=0.9)
        middle = np.add(np.multiply(start, 1 - at), np.multiply(end, at))
        self.say(middle, words)

    def spring(self, start, end, *, coils=7, width=0.32):
        start, end = np.array(start, float), np.array(end, float)
        along = end - start
        across = np.array([-along[1], along[0]]) / np.hypot(*along)
        steps = np.linspace(0.12, 0.88, 2 * coils + 1)
        sides = [0, *([1, -1] * coils)][: 2 * coils] + [0]
        points = [start, *(start + t * along + s * width * across for t, s in zip(steps, sides, strict=True)), end]
        self.line(*map(tuple, points))


def spring() -> Sheet:
    sheet = Sheet(15, 8.4)
    sheet.ground(9.6, 14.4, 0.6)
    sheet.circle((12, 2.4), 1.8, width=2)
    sheet.say((12, 2.4), "wheel")
    pivot, mount, hub = (1.6, 2.4), (6.2, 2.4), (10.2, 2.4)
    sheet.line(pivot, hub, width=2.4)
    for joint in (pivot, hub):
        sheet.circle(joint, 0.16, fill="white")
    sheet.line((1.6, 2.4), (1.6, 7.4), (5.2, 7.4), width=2.4)
    sheet.say((1.2, 5.0), "frame", rotation=90)
    sheet.spring((4.2, 7.4), mount)
    sheet.line(mount, (6.2, 7.2), width=0.9, style="--")
    sheet.axes.add_patch(Arc(mount, 6.2, 6.2, theta1=90, theta2=112, color="black"))
    sheet.say((5.72, 5.95), "$a$")
    sheet.arrow((5.05, 5.7), (5.36, 4.9), width=1.6)
    sheet.measure((3.5, 7.2), (5.5, 2.2), "$L$", 0.6)
    sheet.say((6.5, 6.7), "$a$: angle to the travel that was measured\n$F$: force in the spring, $L$: between its eyes", "left")
    sheet.say((4.55, 5.2), "$F$")
    sheet.arrow((7.0, 2.7), (7.0, 4.0), width=1.6)
    sheet.say((7.2, 3.5), "travel of\nthe mount", "left")
    sheet.arrow((14.2, 1.8), (14.2, 3.8), width=1.6)
    sheet.say((14.6, 4.45), "$z$, travel of the wheel,\npositive in bump", "right", "bottom")
    sheet.say((6.5, 5.65), "motion ratio $r$: travel of the mount, or of the spring,\nover travel of the wheel", "left")
    sheet.measure((1.6, 1.2), (6.2, 1.2), "mount")
    sheet.measure((1.6, 0.5), (10.2, 0.5), "wheel", 0.4)
    return sheet


def ride() -> Sheet:
    sheet = Sheet(17, 8.6)
    road = np.linspace(0.4, 7.4, 120)
    height = 0.9 + 0.22 * np.sin(1.7 * road) + 0.09 * np.sin(5.1 * road + 1)
    sheet.line(*zip(road, height, strict=True), width=1.8)
    sheet.box((2.2, 6.2), 3.6, 1.2, "$m_s$")
    sheet.box((2.6, 3.2), 2.8, 0.9, "$m_u$")
    sheet.spring((3.2, 4.1), (3.2, 6.2))
    sheet.say((2.5, 5.1), "$k$")
    foot = float(np.interp(4.0, road, height))
    sheet.spring((3.3, foot), (3.3, 3.2))
    sheet.say((2.6, 2.1), "$k_t$")
    sheet.line((4.0, foot), (3.3, foot)), sheet.line((4.0, foot), (4.7, foot))
    for x, low, high, name in ((4.8, 4.1, 6.2, "$c$"), (4.7, foot, 3.2, "$c_t$")):
        middle = (low + high) / 2
        sheet.line((x, low), (x, middle - 0.3))
        sheet.line((x - 0.25, middle + 0.4), (x - 0.25, middle - 0.3), (x + 0.25, middle - 0.3), (x + 0.25, middle + 0.4))
        sheet.line((x - 0.2, middle + 0.1), (x + 0.2, middle + 0.1))
        sheet.line((x, middle + 0.1), (x, high))
        sheet.say((x + 0.75, middle), name)
    for y, name in ((6.8, "$z_s$"), (3.65, "$z_u$"), (0.9, "$z_r$")):
        sheet.arrow((6.6, y), (6.6, y + 0.9), width=1.6)
        sheet.say((7.1, y + 0.6), name)
    sheet.line((9.0, 5.6), (15.6, 5.6), width=2.4)
    sheet.circle((11.8, 5.6), 0.18, fill="black")
    sheet.say((11.8, 6.3), "$m_s$, $I$")
    for x, name in ((9.6, "$k_f$"), (15.0, "$k_r$")):
        sheet.spring((x, 3.6), (x, 5.6))
        sheet.ground(x - 0.6, x + 0.6, 3.6)
        sheet.say((x + 0.8, 4.6), name)
    sheet.measure((9.6, 7.3), (11.8, 7.3), "$a$")
    sheet.measure((11.8, 7.3), (15.0, 7.3), "$b$")
    sheet.circle((12.9, 5.6), 0.16, fill="white")
    sheet.say((12.9, 5.05), "pitch")
    sheet.circle((8.5, 5.6), 0.16, fill="white")
    sheet.say((8.5, 5.05), "bounce")
    sheet.line((8.5, 5.6), (15.6, 6.6), style="--", width=0.9)
    sheet.say((12.3, 3.0), "front to the left; white: the points about which the body swings")
    for x, half in ((9.6, 0.75), (15.0, 0.7)):
        sheet.line((x, 1.2 - half), (x, 1.2 + half), width=1.2)
        for y in (1.2 - half, 1.2 + half):
            sheet.box((x - 0.35, y - 0.12), 0.7, 0.24, "")
    sheet.line((9.6, 1.2), (15.0, 1.2), width=1.8)
    sheet.circle((11.8, 1.2), 0.14, fill="black")
    sheet.arrow((11.8, 1.2), (10.7, 1.2), width=1.6)
    sheet.say((10.9, 1.55), "$x$")
    sheet.arrow((11.8, 1.2), (11.8, 0.3), width=1.6)
    sheet.say((12.15, 0.45), "$y$")
    return sheet


def tyre() -> Sheet:
    sheet = Sheet(16, 8.2)
    centre = (4, 4.2)
    sheet.circle(centre, 3.4, width=2)
    sheet.circle(centre, 2.0)
    sheet.circle(centre, 0.12, fill="black")
    sheet.ground(0.6, 7.4, 0.8)
    sheet.measure((4, 4.2), (4, 0.8), "$r_l$ loaded")
    sheet.measure((0.4, 0.8), (0.4, 7.6), "$D$")
    sheet.line((0.2, 7.6), (4, 7.6), width=0.6)
    sheet.measure((2.0, 4.2), (6.0, 4.2), "$d$ rim", 0.25)
    sheet.measure((4, 6.2), (4, 7.6), "$H$")
    sheet.say((4, 0.25), "rolling: $C$ is travelled in one turn, $C = 2\\pi r$")
    left, right = 9.6, 14.0
    sheet.add(Polygon([(left, 6.0), (left - 0.4, 7.0), (left + 0.3, 7.7), (right - 0.3, 7.7), (right + 0.4, 7.0), (right, 6.0)], closed=False, fill=False, linewidth=2))
    sheet.line((left, 6.6), (left, 5.6), (left + 0.6, 5.2), (right - 0.6, 5.2), (right, 5.6), (right, 6.6))
    sheet.measure((left - 0.4, 7.95), (right + 0.4, 7.95), "$S$ section")
    sheet.measure((left, 6.2), (right, 6.2), "$w$ rim, between the beads")
    middle, face = (left + right) / 2, 12.9
    sheet.line((middle, 5.0), (middle, 1.0), style="-.", width=0.9)
    sheet.say((middle, 0.6), "middle of the rim")
    sheet.line((face, 5.2), (face, 1.6), width=2.4)
    sheet.say((face + 0.2, 2.0), "mounting\nface", "left")
    sheet.measure((middle, 2.9), (face, 2.9), "$o$")
    sheet.measure((left - 0.35, 4.2), (face, 4.2), "$b$ backspacing")
    sheet.line((left - 0.35, 5.8), (left - 0.35, 3.9), width=0.6)
    sheet.say((left - 0.5, 2.0), "inside of\nthe vehicle", "center")
    sheet.say((15.1, 3.4), "outside", "center")
    return sheet


def engine() -> Sheet:
    sheet = Sheet(14, 8.6)
    sheet.line((2, 8), (2, 3.6), width=2.4)
    sheet.line((5, 8), (5, 3.6), width=2.4)
    sheet.line((2, 8), (5, 8), width=2.4)
    sheet.box((2.05, 5.6), 2.9, 1.0, "piston")
    sheet.box((2.05, 3.8), 2.9, 1.0, style="--", fill="none")
    sheet.measure((2, 7.5), (5, 7.5), "$d$ bore")
    sheet.measure((5.5, 6.6), (5.5, 4.8), "$s$ stroke")
    sheet.line((5, 6.6), (5.7, 6.6), width=0.6)
    sheet.line((5, 4.8), (5.7, 4.8), width=0.6)
    sheet.circle((3.5, 1.7), 0.9, style="--", width=0.9)
    sheet.line((3.5, 5.6), (4.1, 2.37), (3.5, 1.7), width=2)
    sheet.circle((3.5, 1.7), 0.14, fill="black")
    sheet.axes.add_patch(Arc((3.5, 1.7), 3.0, 3.0, theta1=-60, theta2=60, color="black", linewidth=1.6))
    sheet.arrow((4.5, 2.85), (4.15, 3.08), width=1.6)
    sheet.say((5.2, 1.7), "$T$ torque, $w$ speed", "left")
    sheet.line((8.6, 7.6), (8.6, 3.4), (13.6, 3.4))
    x = np.linspace(0, 1, 60)
    torque = 1.1 + 2.2 * np.sin(np.pi * (0.12 + 0.72 * x))
    sheet.line(*zip(8.9 + 4.3 * x, 3.4 + torque, strict=True))
    power = torque * (0.16 + 0.84 * x) * 1.25
    sheet.line(*zip(8.9 + 4.3 * x, 3.4 + power, strict=True), style="--")
    for place in x[::12]:
        sheet.circle((8.9 + 4.3 * place, 3.4 + np.interp(place, x, torque)), 0.1, fill="black")
    sheet.say((9.5, 6.9), "$T$, through points", "left")
    sheet.say((10.6, 4.1), "$P = T\\,w$", "left")
    sheet.say((11.2, 2.95), "engine speed $w$")
    return sheet


def driveline() -> Sheet:
    sheet = Sheet(16, 7)
    parts = [("engine", 0.4, 1.9), ("clutch", 2.8, 1.3), ("gearbox\n$i_g$, $e$", 4.6, 2.0), ("final drive\n$i_f$, $e$", 9.2, 2.2)]
    for words, left, width in parts:
        sheet.box((left, 3.6), width, 1.6, words)
    for start, end in ((2.3, 2.8), (4.1, 4.6), (6.6, 9.2), (11.4, 13.1)):
        sheet.line((start, 4.4), (end, 4.4), width=3)
    sheet.say((7.9, 4.85), "shaft")
    sheet.circle((14, 4.4), 1.9, width=2)
    sheet.circle((14, 4.4), 0.12, fill="black")
    sheet.line((13.1, 4.4), (14, 4.4), width=3)
    sheet.ground(12, 15.9, 2.55)
    sheet.measure((14, 4.4), (14, 2.55), "$r_l$")
    sheet.arrow((14.1, 6.55), (15.6, 6.55), width=1.6)
    sheet.say((13.9, 6.55), "$v$", "right")
    sheet.arrow((0.6, 1.7), (11.4, 1.7), width=1.6)
    sheet.say((6, 1.7), "torque: times $i$, times $e$ at every part, then over $r_l$ to a force")
    sheet.arrow((11.4, 0.8), (0.6, 0.8), width=1.6)
    sheet.say((6, 0.8), "speed: $w = v\\,i_g\\,i_f / r$, with the rolling radius $r$")
    sheet.say((1.35, 5.6), "$T$, $w$")
    return sheet


def fastener() -> Sheet:
    sheet = Sheet(16, 9)
    # A bolt through two plates.
    sheet.box((0.8, 4.4), 4.4, 0.9, hatch="///")
    sheet.box((0.8, 3.5), 4.4, 0.9, hatch="\\\\\\")
    sheet.add(Rectangle((2.6, 2.0), 0.8, 3.3, facecolor="white", edgecolor="black", linewidth=1.4))
    sheet.box((2.1, 5.3), 1.8, 0.8)
    sheet.box((2.1, 2.7), 1.8, 0.8, "nut")
    for step in range(3):
        sheet.line((2.6, 2.1 + 0.2 * step), (3.4, 2.2 + 0.2 * step), width=0.8)
    sheet.arrow((3.0, 6.1), (3.0, 7.5))
    sheet.say((3.2, 7.4), "preload $F$, pull $F_x$", "left")
    sheet.arrow((0.1, 4.85), (0.8, 4.85), width=1.8)
    sheet.arrow((5.9, 3.95), (5.2, 3.95), width=1.8)
    sheet.say((0.1, 5.7), "shear $V$", "left")
    sheet.measure((2.6, 1.6), (3.4, 1.6), "")
    sheet.say((3.0, 1.15), "$d$, pitch $P$")
    sheet.say((5.4, 4.9), "clamp $C$\nbetween the faces", "left")
    # Bolt force and clamp over the pull.
    left, low = 8.6, 1.2
    sheet.arrow((left, low), (left, 5.0))
    sheet.arrow((left, low), (left + 6.4, low))
    sheet.say((left - 0.2, 3.2), "$F$", "right")
    sheet.line((left, 3.2), (left + 3.6, 4.0), (left + 4.8, 4.93), width=2)
    sheet.line((left, 3.2), (left + 3.6, low), width=2)
    sheet.line((left + 3.6, low), (left + 3.6, 4.0), style=":", width=0.9)
    sheet.say((left + 1.9, 4.15), "bolt $F_b$")
    sheet.say((left + 1.2, 1.9), "clamp $C$")
    sheet.say((left + 3.6, 0.75), "parts at $F_s$")
    sheet.say((left + 6.3, 0.75), "pull $F_x$")
    # Studs of a wheel.
    centre = np.array((11.0, 7.0))
    sheet.circle(tuple(centre), 1.5)
    sheet.circle(tuple(centre), 1.0, style="-.", width=0.9)
    for turn in np.radians([90, 162, 234, 306, 18]):
        sheet.circle(tuple(centre + (np.cos(turn), np.sin(turn))), 0.16, fill="white")
    sheet.say((13.0, 7.6), "studs on\nthe bolt circle", "left")
    sheet.say((13.0, 6.3), "face", "left")
    sheet.line((12.4, 6.45), (12.9, 6.3), width=0.6)
    return sheet


def mass() -> Sheet:
    sheet = Sheet(15, 8.4)
    front, rear = 11.0, 3.2
    wheels = {"$m_1$\nleft front": (front, 6.4), "$m_2$\nright front": (front, 2.0), "$m_3$\nleft rear": (rear, 6.2), "$m_4$\nright rear": (rear, 2.2)}
    for words, (x, y) in wheels.items():
        sheet.box((x - 0.9, y - 0.4), 1.8, 0.8, fill="0.85")
        sheet.say((x, y + (0.95 if y > 4 else -0.95)), words)
    sheet.line((front, 6.0), (front, 2.4), width=2)
    sheet.line((rear, 5.8), (rear, 2.6), width=2)
    sheet.line((1.4, 4.2), (13.6, 4.2), style="-.", width=0.8)
    centre = (7.8, 4.7)
    sheet.circle(centre, 0.22, fill="white")
    sheet.line((centre[0] - 0.22, centre[1]), (centre[0] + 0.22, centre[1]), width=1)
    sheet.line((centre[0], centre[1] - 0.22), (centre[0], centre[1] + 0.22), width=1)
    sheet.say((7.8, 5.35), "centre of gravity")
    sheet.measure((front, 3.4), (7.8, 3.4), "$a$ behind the front axle")
    sheet.line((7.8, 4.4), (7.8, 3.2), width=0.6)
    sheet.measure((6.9, 4.2), (6.9, 4.7), "")
    sheet.say((6.7, 4.48), "$y$", "right")
    sheet.measure((front, 0.3), (rear, 0.3), "$l$ wheelbase")
    sheet.measure((12.3, 6.4), (12.3, 2.0), "$b_f$")
    sheet.measure((1.9, 6.2), (1.9, 2.2), "$b_r$")
    sheet.arrow((13.2, 4.2), (14.8, 4.2), width=1.8)
    sheet.say((14.0, 4.65), "$x$ forward")
    sheet.arrow((13.2, 4.2), (13.2, 5.8), width=1.8)
    sheet.say((13.3, 6.1), "$y$ left")
    return sheet


def suspension() -> Sheet:
    sheet = Sheet(15, 8.6)
    sheet.ground(0.8, 14.2, 0.8)
    for x in (2.6, 9.4):
        sheet.box((x - 0.5, 0.8), 1.0, 2.6, fill="0.85")
    sheet.line((3.1, 2.1), (8.9, 2.1), width=2.4)
    sheet.spring((4.2, 2.1), (3.9, 4.6))
    sheet.spring((7.8, 2.1), (8.1, 3.9))
    sheet.line((2.6, 4.9), (9.4, 3.6), (10.3, 6.6), (3.4, 8.0), (2.6, 4.9), width=2)
    sheet.line((6.0, 0.8), (6.0, 8.4), style="-.", width=0.8)
    sheet.circle((6.0, 2.9), 0.16, fill="white")
    sheet.say((6.25, 3.05), "roll centre", "left", "bottom")
    sheet.measure((5.4, 0.8), (5.4, 2.9), "$z$")
    sheet.line((6.0, 2.9), (6.7, 6.2), style="--", width=0.9)
    sheet.circle((6.7, 6.2), 0.22, fill="white")
    sheet.arrow((6.95, 6.2), (9.2, 6.2), width=1.8)
    sheet.say((8.4, 6.6), "$m_s\\,a_y$")
    sheet.measure((5.6, 2.9), (5.6, 6.2), "$h_1$")
    sheet.say((6.28, 7.7), "$\\varphi$", "left")
    sheet.measure((2.6, 0.3), (9.4, 0.3), "$t$ track")
    sheet.measure((4.2, 1.4), (7.8, 1.4), "spring base", 0.28)
    sheet.arrow((9.4, -0.0), (9.4, 0.75), width=2)
    sheet.say((10.1, 1.4), "outer wheel:\ngains $F$", "left")
    sheet.say((1.9, 2.9), "inner\nwheel", "right")
    sheet.say((11.0, 5.0), "seen from behind,\nleft turn:\nthe body leans\nout of the turn", "left")
    return sheet


def fluid() -> Sheet:
    sheet = Sheet(14, 7)
    sheet.line((1, 6.4), (1, 0.6), (6, 0.6), (6, 6.4), width=2.4)
    sheet.box((1.05, 4.9), 4.9, 0.5, hatch="///", fill="white")
    sheet.arrow((3.5, 6.6), (3.5, 5.45), width=2)
    sheet.say((3.8, 6.2), "$p$ absolute", "left")
    sheet.line((1, 3.2), (6, 3.2), width=1)
    rng = np.random.default_rng(3)
    for n in range(26):
        spot = (1.4 + 4.2 * rng.random(), 0.95 + 1.9 * rng.random())
        sheet.circle(spot, 0.13, fill="black" if n % 4 == 0 else "white", width=1)
    for n in range(7):
        sheet.circle((1.6 + 3.9 * rng.random(), 3.5 + 1.1 * rng.random()), 0.13, fill="black" if n == 6 else "white", width=1)
    sheet.say((6.4, 4.1), "vapour: each part presses with\n$x_w\\,p_w(T)$ and $x_g\\,p_g(T)$", "left")
    sheet.say((6.4, 1.9), "liquid at $T$: mole fractions $x_w$ of water\nand $x_g$ of glycol", "left")
    sheet.circle((6.6, 0.85), 0.13, fill="white", width=1)
    sheet.say((6.85, 0.85), "water", "left")
    sheet.circle((8.6, 0.85), 0.13, fill="black", width=1)
    sheet.say((8.85, 0.85), "glycol", "left")
    sheet.say((6.4, 5.3), "it boils where the two together reach $p$", "left")
    return sheet


def air() -> Sheet:
    sheet = Sheet(14, 8)
    sheet.ground(0.6, 4.0, 1.0)
    sheet.line((2.6, 0.75), (7.0, 4.3), (9.8, 4.3), (10.4, 0.75))
    sheet.line((0.6, 1.0), (13.4, 1.0), style="--", width=0.9)
    sheet.say((12.6, 0.6), "mean sea level")
    sheet.box((7.6, 4.3), 1.2, 0.7, "van")
    sheet.measure((8.2, 1.0), (8.2, 4.3), "$z$ geometric, as on a map;\n$H$ geopotential, in the tables", 0.5)
    sheet.say((5.2, 5.1), "station pressure $p$:\nwhat a barometer shows here", "right")
    sheet.arrow((5.3, 5.0), (7.5, 4.6))
    sheet.say((3.9, 2.0), "weather report: reduced\nto sea level", "right")
    sheet.arrow((2.4, 1.5), (2.0, 1.05))
    x = np.linspace(0, 1, 40)
    sheet.line((10.6, 7.6), (10.6, 5.3), (13.6, 5.3))
    sheet.line(*zip(10.8 + 2.6 * np.exp(-2.2 * x), 5.4 + 2.1 * x, strict=True))
    sheet.say((12.1, 7.2), "thinner\nhigher up", "left")
    sheet.say((12.1, 4.95), "pressure")
    sheet.say((10.35, 6.5), "altitude", rotation=90)
    return sheet


def cooling() -> Sheet:
    sheet = Sheet(15, 8.2)
    sheet.add(FancyBboxPatch((0.9, 0.8), 4.4, 3.6, boxstyle="round,pad=0.1", fill=False, linewidth=2))
    sheet.box((2.3, 4.5), 1.6, 0.7)
    sheet.box((1.9, 5.2), 2.4, 0.5, "cap", hatch=None)
    sheet.spring((3.1, 5.2), (3.1, 4.55), coils=3, width=0.25)
    sheet.say((3.1, 2.6), "coolant, glycol share $w$,\nunder $p = p_{cap} + p_a$")
    sheet.arrow((3.1, 7.3), (3.1, 5.8), width=2)
    sheet.say((3.1, 7.6), "$p_a$: station pressure around")
    sheet.arrow((3.1, 3.4), (3.1, 4.4), width=2)
    sheet.line((8.2, 7.6), (8.2, 0.6))
    marks = [(6.7, "boiling at $p$, an upper bound"), (5.0, "hottest coolant"), (1.2, "freezing")]
    for y, words in marks:
        sheet.line((8.0, y), (8.4, y), width=2)
        sheet.say((8.7, y), words, "left")
    sheet.measure((11.6, 5.2), (11.6, 6.5), "")
    sheet.say((11.9, 5.85), "margin: what is left", "left")
    sheet.say((7.8, 4.2), "temperature $T$", rotation=90)
    return sheet


def material() -> Sheet:
    sheet = Sheet(15, 8)
    sheet.arrow((1.4, 1.2), (1.4, 7.4))
    sheet.arrow((1.4, 1.2), (14.4, 1.2))
    sheet.say((1.2, 7.6), "yield strength", "left")
    sheet.say((14.2, 0.7), "distance from the weld", "right")
    sheet.add(Polygon([(1.4, 1.2), (2.2, 1.2), (1.4, 2.4)], closed=True, facecolor="black"))
    sheet.say((2.9, 1.65), "weld")
    sheet.line((6.4, 1.2), (6.4, 7.0), style="--", width=0.9)
    sheet.measure((1.4, 0.75), (6.4, 0.75), "25 mm")
    for away, near, words in ((6.4, 4.2, "cold-drawn tube"), (4.6, 4.6, "hot-rolled steel"), (3.4, 2.0, "aluminium -T6")):
        sheet.line((1.6, near), (6.4, near), (6.4, away), (13.2, away), width=2)
        sheet.say((10.2, away), words)
    return sheet


def section() -> Sheet:
    sheet = Sheet(16, 8.4)

    def channel(left: float, low: float, width: float, height: float, wall: float) -> None:
        right, high = left + width, low + height
        outline = [(right, high), (left, high), (left, low), (right, low), (right, low + wall), (left + wall, low + wall), (left + wall, high - wall), (right, high - wall)]
        sheet.add(Polygon(outline, closed=True, facecolor="none", edgecolor="black", hatch="////", linewidth=1.4))

    middle = 4.2
    channel(4.0, 1.4, 2.8, 5.6, 0.3)
    channel(10.6, 1.4, 2.8, 5.6, 0.3)
    sheet.box((13.4, 1.4), 0.3, 5.6, hatch="////", fill="none")
    sheet.line((2.2, middle), (8.2, middle), style="-.", width=0.8)
    sheet.line((9.8, middle), (14.6, middle), style="-.", width=0.8)
    for place in (4.76, 12.06):
        sheet.circle((place, middle), 0.13, fill="black")
    for place in (3.0, 12.1):
        sheet.line((place - 0.18, middle - 0.18), (place + 0.18, middle + 0.18))
        sheet.line((place - 0.18, middle + 0.18), (place + 0.18, middle - 0.18))
    sheet.say((5.5, 4.75), "centroid", "left")
    sheet.line((5.5, 4.7), (4.9, 4.3), width=0.8)
    sheet.say((2.1, 3.2), "shear centre:\nloads belong here", "center")
    sheet.say((12.2, 5.2), "both near\nthe middle", "center")
    sheet.arrow((6.0, 2.4), (7.2, 2.4))
    sheet.say((7.5, 2.4), "$y$")
    sheet.arrow((6.0, 2.4), (6.0, 3.6))
    sheet.say((6.0, 3.85), "$z$")
    sheet.measure((4.0, 7.6), (6.8, 7.6), "$B$")
    sheet.measure((8.6, 1.4), (8.6, 7.0), "$H$")
    sheet.say((5.4, 0.7), "open: twists easily")
    sheet.say((12.2, 0.7), "closed: a plate over the toes")
    return sheet


def linkage() -> Sheet:
    sheet = Sheet(16, 8.6)
    sheet.ground(0.6, 15.4, 0.8)
    # A left wheel seen from the rear: it stands on the left of the picture.
    contact, centre, plane = (2.6, 0.8), (2.6, 2.8), 9.4
    sheet.box((1.95, 0.8), 1.3, 4.0)
    sheet.say((1.5, 4.3), "wheel", "right")
    upper, lower = ((6.2, 4.1), (3.7, 4.75)), ((5.6, 2.1), (3.4, 1.85))
    for inner, outer in (upper, lower):
        sheet.line(inner, outer, width=2.4)
    sheet.line(upper[1], lower[1], width=2.4)
    for joint in (*upper, *lower):
        sheet.circle(joint, 0.13, fill="white")
    sheet.circle(centre, 0.1, fill="black")
    sheet.say((3.9, 5.2), "upper arm")
    sheet.say((4.7, 1.45), "lower arm")
    slopes = [(outer[1] - inner[1]) / (outer[0] - inner[0]) for inner, outer in (upper, lower)]
    x = (lower[0][1] - upper[0][1] + slopes[0] * upper[0][0] - slopes[1] * lower[0][0]) / (slopes[0] - slopes[1])
    instant = (x, upper[0][1] + slopes[0] * (x - upper[0][0]))
    for inner in (upper[0], lower[0]):
        sheet.line(inner, instant, width=0.8, style="--")
    sheet.line(contact, instant, width=0.8, style="-.")
    sheet.circle(instant, 0.1, fill="black")
    sheet.say((instant[0], instant[1] + 0.5), "instant centre")
    sheet.line((plane, 0.8), (plane, 7.4), width=0.9, style="-.")
    sheet.say((plane, 7.7), "centre plane, $y = 0$")
    roll = contact[1] + (instant[1] - contact[1]) * (plane - contact[0]) / (instant[0] - contact[0])
    sheet.circle((plane, roll), 0.13, fill="white")
    sheet.measure((plane, 0.8), (plane, roll), "$h_r$")
    sheet.say((plane + 0.3, roll + 0.35), "roll centre", "left")
    sheet.measure((2.6, 0.3), (plane, 0.3), "$y_c$")
    sheet.spring((5.6, 7.0), (4.6, 2.0))
    sheet.line((4.9, 7.0), (7.0, 7.0), (7.0, 2.1), (5.6, 2.1), width=1.0)
    sheet.line((6.2, 4.1), (7.0, 4.1), width=1.0)
    sheet.say((7.3, 5.9), "body", rotation=90)
    sheet.say((4.4, 6.2), "$L$")
    sheet.arrow((0.9, 1.8), (0.9, 3.8), width=1.6)
    sheet.say((0.2, 4.9), "$z$, bump\npositive", "left")
    sheet.say((0.4, 8.2), "from the rear: $y$ to the left, $z$ up, $x$ away from you", "left")
    return sheet


def strut() -> Sheet:
    sheet = Sheet(16, 10.4)
    sheet.ground(0.6, 15.4, 0.8)
    # A left wheel seen from the rear: it stands on the left of the picture.
    contact, plane = (2.6, 0.8), 9.4
    sheet.box((1.95, 0.8), 1.3, 4.0)
    sheet.say((1.5, 4.3), "wheel", "right")
    mount, low, ball, pivot = (4.9, 8.2), (4.25, 3.6), (3.4, 1.8), (6.2, 2.1)
    sheet.line(ball, pivot, width=2.4)
    sheet.line(ball, (3.6, 2.9), low, width=2.4)
    along = np.subtract(mount, low)
    sheet.line(low, np.add(low, 0.55 * along), width=5.0, solid_capstyle="butt")
    sheet.line(np.add(low, 0.55 * along), mount, width=1.6)
    sheet.spring(mount, np.add(low, 0.3 * along))
    # The strut's axis goes past the ball joint; the steering axis goes through it.
    sheet.line(np.subtract(low, 0.45 * along), mount, width=0.8, style="-.")
    sheet.line(ball, mount, width=0.8, style="--")
    for joint in (ball, pivot, mount):
        sheet.circle(joint, 0.14, fill="white")
    sheet.line((4.2, 8.6), (7.0, 8.6), (7.0, 2.1), pivot, width=1.0)
    sheet.line(mount, (4.9, 8.6), width=1.0)
    sheet.say((7.3, 5.4), "body", rotation=90)
    sheet.say((4.6, 8.95), "top mount")
    sheet.say((5.3, 1.5), "lower arm")
    sheet.say((4.3, 5.0), "strut's axis", "left")
    sheet.say((3.75, 5.7), "steering\naxis", "right")
    # Instant centre: along the arm, and square to the strut at its top mount.
    square = (along[1], -along[0])
    arm = np.subtract(pivot, ball)
    t = np.linalg.solve(np.array([arm, np.negative(square)]).T, np.subtract(mount, ball))
    instant = tuple(np.add(ball, t[0] * arm))
    for point in (pivot, mount):
        sheet.line(point, np.add(point, 0.62 * np.subtract(instant, point)), width=0.8, style="--")
    roll = contact[1] + (instant[1] - contact[1]) * (plane - contact[0]) / (instant[0] - contact[0])
    sheet.line(contact, np.add(contact, 0.62 * np.subtract(instant, contact)), width=0.8, style="-.")
    sheet.say((14.9, 5.2), "to the instant\ncentre", "right")
    sheet.line((plane, 0.8), (plane, 9.2), width=0.9, style="-.")
    sheet.say((plane, 9.5), "centre plane, $y = 0$")
    sheet.circle((plane, roll), 0.13, fill="white")
    sheet.measure((plane, 0.8), (plane, roll), "$h_r$")
    sheet.say((0.4, 10.0), "from the rear: $y$ to the left, $z$ up, $x$ away from you", "left")
    return sheet


def live_axle() -> Sheet:
    sheet = Sheet(16, 8.2)
    sheet.ground(0.6, 15.4, 0.8)
    plane, height = 8.0, 2.8
    for x in (2.2, 12.6):
        sheet.box((x, 0.8), 1.2, 4.0)
    sheet.line((2.8, height), (13.2, height), width=3.2)
    sheet.circle((plane, height), 0.55, fill="white")
    body, axle = (3.9, 4.4), (11.4, 3.2)
    sheet.line((3.9, 6.0), body, width=1.0)
    sheet.line(axle, (11.4, height), width=2.0)
    sheet.line(body, axle, width=2.4)
    for joint in (body, axle):
        sheet.circle(joint, 0.14, fill="white")
    sheet.line((plane, 0.8), (plane, 7.0), width=0.9, style="-.")
    sheet.say((plane, 7.3), "centre plane, $y = 0$")
    roll = body[1] + (axle[1] - body[1]) * (plane - body[0]) / (axle[0] - body[0])
    sheet.circle((plane, roll), 0.13, fill="black")
    sheet.say((plane + 0.2, roll + 1.1), "roll\ncentre", "left")
    sheet.say((4.0, 3.5), "lateral rod", "left")
    sheet.measure((plane, 0.8), (plane, roll), "")
    sheet.say((plane + 0.2, 1.6), "$h_r$", "left")
    for x in (6.3, 9.9):
        sheet.spring((x, 6.0), (x - 0.3 if x < plane else x + 0.3, height))
    sheet.line((3.4, 6.0), (12.6, 6.0), width=1.0)
    sheet.say((12.8, 6.0), "body", "left")
    sheet.arrow((1.4, 1.8), (1.4, 3.8), width=1.6)
    sheet.say((0.3, 4.9), "heave,\nbump\npositive", "left")
    sheet.say((0.4, 7.8), "from the rear: $y$ to the left, $z$ up; roll positive with the left wheel up", "left")
    return sheet


def leaf_axle() -> Sheet:
    sheet = Sheet(16, 8.4)
    sheet.ground(0.6, 15.4, 0.6)
    # From the left: forward is to the left.
    seat = (7.6, 3.3)

    def half(end, clamp, turn):
        """An arc from the clamp, level there, whose end is turned by this."""
        share = np.linspace(0, 1, 40)
        shape = np.column_stack((np.sin(turn * share), 1 - np.cos(turn * share))) * end / turn
        return [(clamp + np.sign(clamp - seat[0]) * x, seat[1] + y) for x, y in shape]

    fixed, shackle = half(5.0, seat[0] - 0.7, 0.52), half(5.12, seat[0] + 0.7, 0.56)
    eyes = fixed[-1], shackle[-1]
    sheet.line(*eyes, width=0.9, style="--")
    for leaf in (fixed, shackle):
        sheet.line(seat, *leaf, width=2.6)
    # Steps of the pack, shorter and shorter.
    for place, share in enumerate((28, 18, 9), 1):
        down = 0.2 * place
        low = [(x, y - down) for x, y in [*reversed(fixed[:share]), *shackle[:share]]]
        sheet.line(*low, width=1.6)
    sheet.box((seat[0] - 0.7, seat[1] - 0.75), 1.4, 0.9, fill="none")
    axle = (seat[0], seat[1] - 1.05)
    sheet.circle(axle, 0.34, fill="white", width=2)
    sheet.circle((axle[0], 2.35), 1.75, width=1.2, style=":")
    sheet.line((1.2, 6.5), (14.6, 6.5), width=1.0)
    sheet.say((14.7, 6.5), "body", "left")
    sheet.line((eyes[0][0], 6.5), eyes[0], width=1.0)
    pivot = (eyes[1][0] - 0.45, 6.5)
    sheet.line(pivot, eyes[1], width=2.4)
    sheet.line(pivot, (pivot[0], 4.7), width=0.9, style="-.")
    for joint in (*eyes, pivot):
        sheet.circle(joint, 0.15, fill="white")
    roll = (seat[0], float(np.interp(seat[0], [eyes[0][0], eyes[1][0]], [eyes[0][1], eyes[1][1]])))
    sheet.circle(roll, 0.13, fill="black")
    sheet.say((roll[0] + 0.1, roll[1] + 0.75), "line of the eyes:\nroll centre over the axle", "center")
    sheet.say((eyes[0][0] - 0.2, eyes[0][1] - 0.5), "fixed eye", "right")
    sheet.say((pivot[0] + 0.7, 5.6), "shackle,\nleaning by\nits angle", "left")
    sheet.say((3.3, 2.5), "half of the length $L$,\nits end turned by $\\beta$", "center")
    sheet.say((9.55, 2.2), "seat, clamped,\non the axle", "left")
    sheet.add(Arc(axle, 2.3, 2.3, theta1=190, theta2=262, color="black"))
    sheet.arrow((axle[0] - 1.12, axle[1] - 0.3), (axle[0] - 1.15, axle[1] - 0.05), width=1.2)
    sheet.say((5.7, 1.4), "pitch $\\theta$,\nnose up positive", "right")
    sheet.arrow((14.9, 1.5), (14.9, 3.5), width=1.6)
    sheet.say((14.6, 2.5), "heave $z$,\nbump positive", "right")
    sheet.say((0.4, 7.9), "from the left: $x$ to the left, forward, $z$ up", "left")
    return sheet


def weld() -> Sheet:
    sheet = Sheet(15, 7.4)
    sheet.line((0.6, 1.2), (6.6, 1.2), width=2)
    sheet.line((1.2, 1.2), (1.2, 6.4), width=2)
    sheet.line((1.2, 4.4), (4.4, 1.2), width=1.6)
    sheet.line((1.2, 1.2), (2.8, 2.8), style="--", width=1)
    sheet.say((2.35, 1.8), "throat $a$", "left")
    sheet.measure((1.2, 0.6), (4.4, 0.6), "leg $z$")
    sheet.measure((0.7, 1.2), (0.7, 4.4), "$z$")
    sheet.say((3.3, 3.1), "face", "left")
    sheet.say((1.75, 1.5), "$\\psi$")
    sheet.box((8.4, 1.2), 5.6, 0.9, fill="0.9")
    sheet.box((10.6, 2.1), 1.0, 3.4, fill="white")
    sheet.circle((11.1, 4.9), 0.22, fill="0.85")
    for side in (-1, 1):
        edge = 11.1 + 0.5 * side
        sheet.line((edge, 2.6), (edge + 0.5 * side, 2.1), width=1.6)
    sheet.arrow((11.1, 4.9), (13.4, 6.1), width=2)
    sheet.say((13.5, 6.3), "$F$", "left")
    sheet.measure((9.6, 2.1), (9.6, 4.9), "height")
    sheet.say((11.1, 0.75), "two runs on one part")
    return sheet


def bracket() -> Sheet:
    sheet = Sheet(15, 7.4)
    sheet.box((0.8, 0.9), 6.6, 1.1, fill="0.9")
    sheet.line((2.4, 2.0), (2.9, 5.4), (5.1, 5.4), (5.6, 2.0), width=2)
    sheet.circle((4.0, 4.5), 0.35, fill="white")
    sheet.arrow((4.0, 4.5), (6.5, 6.3), width=2)
    sheet.say((6.6, 6.5), "$F$", "left")
    sheet.line((4.0, 4.5), (4.0, 6.6), style="-.", width=0.8)
    sheet.say((4.3, 5.8), "$a$")
    sheet.measure((1.9, 2.0), (1.9, 4.5), "$h$")
    sheet.measure((2.4, 1.45), (5.6, 1.45), "$w_b$")
    sheet.say((2.55, 4.5), "$d_h$", "right")
    sheet.box((9.0, 1.2), 5.4, 4.4, fill="0.96")
    sheet.box((10.5, 3.15), 2.4, 0.5, fill="0.8")
    sheet.line((9.5, 1.2), (9.5, 5.6), style="--", width=1.2)
    sheet.line((13.9, 1.2), (13.9, 5.6), style="--", width=1.2)
    for x, edge in ((10.5, 9.5), (12.9, 13.9)):
        for y, corner in ((3.65, 5.6), (3.15, 1.2)):
            sheet.line((x, y), (edge, corner), style="--", width=1.2)
    sheet.say((11.7, 0.7), "yield lines of the face")
    sheet.say((11.7, 4.1), "tab $l$ by $t$")
    sheet.measure((14.7, 1.2), (14.7, 5.6), "$B$")
    return sheet


def loads() -> Sheet:
    sheet = Sheet(15, 7.4)
    sheet.ground(0.6, 14.4, 1.0)
    front, rear, centre = 11.6, 3.4, (7.9, 3.6)
    for x in (front, rear):
        sheet.circle((x, 1.9), 0.9, fill="0.9")
    sheet.line((1.6, 2.4), (1.6, 4.2), (5.0, 5.4), (9.6, 5.2), (13.4, 3.8), (13.4, 2.4), width=1.6)
    sheet.circle(centre, 0.2, fill="white")
    sheet.arrow(centre, (centre[0], 1.6), width=2)
    sheet.say((centre[0] + 0.2, 2.3), "$m\\,g$", "left")
    sheet.arrow(centre, (10.6, 3.6), width=2)
    sheet.say((10.7, 3.85), "$m\\,a$", "left")
    for x, name, long in ((front, "N_f", 2.3), (rear, "N_r", 1.3)):
        sheet.arrow((x, -0.1 if x == front else 0.2), (x, 1.0), width=2)
        sheet.say((x + 0.2, 0.35), f"${name}$", "left")
        sheet.arrow((x, 1.0), (x - long, 1.0), width=2)
    sheet.measure((6.6, 1.0), (6.6, 3.6), "$h$")
    sheet.measure((front, 6.6), (rear, 6.6), "$l$")
    sheet.arrow((12.6, 5.6), (14.3, 5.6), width=1.6)
    sheet.say((13.4, 6.0), "$x$ forward")
    return sheet


def main(folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, draw in list(globals().items()):
        if getattr(draw, "__annotations__", {}).get("return") is Sheet:
            draw().figure.savefig(folder / f"{name}.svg", metadata={"Date": None})


if __name__ == "__main__":
    main(Path(sys.argv[1]))
