"""Sections: polygons whose edges are integrated, walls that are cut into small pieces, and columns as differential equations.

The core adds rectangles and closed forms. Here a section is a list of polygons (arcs in many chords, removed ones with a negative sign), integrated by
Green's theorem and cut by straight lines; torsion, shear flow and warping are sums over pieces of the centre line.
"""

from __future__ import annotations

import math

import numpy as np
from scipy.optimize import brentq

from . import Refused, exact, route
from .material import stock_gauge

CHORDS = 400


def number(document, key, default=0.0):
    value = document.get(key)
    return default if value is None else float(value)


def arc(centre, radius, start, end):
    turn = np.linspace(start, end, CHORDS + 1)
    return np.column_stack((centre[0] + radius * np.cos(turn), centre[1] + radius * np.sin(turn)))


def rounded(left, right, low, high, radii):
    """A rectangle whose corners have these radii: right top, left top, left bottom, right bottom."""
    corners = [(right, high, -1, -1, 0), (left, high, 1, -1, 1), (left, low, 1, 1, 2), (right, low, -1, 1, 3)]
    points = []
    for (y, z, inward_y, inward_z, quarter), radius in zip(corners, radii, strict=True):
        if radius <= 0:
            points.append(np.array([[y, z]]))
        else:
            centre = (y + inward_y * radius, z + inward_z * radius)
            points.append(arc(centre, radius, quarter * math.pi / 2, (quarter + 1) * math.pi / 2))
    return np.vstack(points)


def cut(polygon, axis, at, above):
    """The part of a polygon on one side of a line (Sutherland and Hodgman), in one pass."""
    side = (polygon[:, axis] - at) * (1 if above else -1)
    after, there = np.roll(side, -1), np.roll(polygon, -1, axis=0)
    crossed = side * after < 0
    share = np.divide(side, side - after, out=np.zeros_like(side), where=crossed)[:, None]
    pairs = np.stack((polygon, polygon + (there - polygon) * share), axis=1).reshape(-1, 2)
    out = pairs[np.column_stack((side >= 0, crossed)).ravel()]
    return out if len(out) >= 3 else np.zeros((0, 2))


def integrals(polygon):
    """Area, first moments and second moments about the origin, by Green's theorem."""
    if len(polygon) < 3:
        return np.zeros(6)
    (y, z), (yn, zn) = polygon.T, np.roll(polygon, -1, axis=0).T
    cross = y * zn - yn * z
    return np.array([
        cross.sum() / 2, (cross * (y + yn)).sum() / 6, (cross * (z + zn)).sum() / 6,
        (cross * (z * z + z * zn + zn * zn)).sum() / 12, (cross * (y * y + y * yn + yn * yn)).sum() / 12,
        (cross * (y * zn + 2 * y * z + 2 * yn * zn + yn * z)).sum() / 24,
    ])  # fmt: skip


class Solid:
    """Polygons with signs."""

    def __init__(self, *polygons):
        self.polygons = polygons

    def all(self, axis=None, at=0.0, above=True):
        pieces = ((sign, polygon if axis is None else cut(polygon, axis, at, above)) for sign, polygon in self.polygons)
        return sum(sign * integrals(polygon) for sign, polygon in pieces)

    def bending(self):
        area, sy, sz, iy, iz, iyz = self.all()
        cy, cz = sy / area, sz / area
        iy, iz, iyz = iy - area * cz * cz, iz - area * cy * cy, iyz - area * cy * cz
        if abs(iyz) < 1e-9 * (iy + iz):
            iyz = 0.0
        values, axes = np.linalg.eigh(np.array([[iy, -iyz], [-iyz, iz]]))
        angle = math.atan2(axes[1, 1], axes[0, 1])
        angle = (angle + math.pi / 2) % math.pi - math.pi / 2
        if angle <= -math.pi / 2 + 1e-9:
            angle += math.pi
        metal = np.vstack([polygon for sign, polygon in self.polygons if sign > 0])
        y, z = metal[:, 0] - cy, metal[:, 1] - cz
        both = np.array([[iy, iyz], [iyz, iz]])
        worst = [np.abs(np.linalg.solve(both, moment) @ np.array([z, y])).max() for moment in ([1.0, 0.0], [0.0, 1.0])]
        return {
            "area": area, "centroid_y": cy, "centroid_z": cz, "second_moment_y": iy, "second_moment_z": iz, "product_of_inertia": iyz,
            "major_second_moment": values[1], "minor_second_moment": values[0], "principal_angle": 0.0 if values[1] - values[0] < 1e-9 * values[1] else angle,
            "section_modulus_y": 1 / worst[0], "section_modulus_z": 1 / worst[1],
            "plastic_modulus_y": self.plastic(1), "plastic_modulus_z": self.plastic(0), "least_radius_of_gyration": math.sqrt(values[0] / area),
        }  # fmt: skip

    def ends(self, axis):
        metal = np.vstack([polygon for sign, polygon in self.polygons if sign > 0])
        return metal[:, axis].min(), metal[:, axis].max()

    def plastic(self, axis):
        area, (low, high) = self.all()[0], self.ends(axis)
        line = brentq(lambda at: self.all(axis, at)[0] - area / 2, low, high, xtol=1e-15)
        above, below = self.all(axis, line), self.all(axis, line, above=False)
        first = 2 if axis == 1 else 1
        return (above[first] - line * above[0]) - (below[first] - line * below[0])

    def width(self, axis, at, reach):
        """Length of a cut, from a band of this height."""
        return (self.all(axis, at - reach)[0] - self.all(axis, at + reach)[0]) / (2 * reach)

    def shear_area(self, axis, steps=60):
        """Force over the peak of `V Q / (I b)`, over many cuts."""
        area, *first = self.all()
        second = first[2] if axis == 1 else first[3]
        centre = (first[1] if axis == 1 else first[0]) / area
        second -= area * centre * centre
        low, high = self.ends(axis)
        worst = 0.0
        for at in [centre, *np.linspace(low, high, steps)[1:-1]]:
            above = self.all(axis, at)
            moment = above[2 if axis == 1 else 1] - centre * above[0]
            width = self.width(axis, at, (high - low) * 1e-7)
            if width > 1e-9:
                worst = max(worst, abs(moment) / width)
        return second / worst


def solve_open(points, wall, pieces=4000):
    """Shear centre and warping constant of an open thin wall along these points, its wall cut into pieces (Vlasov)."""
    line = np.vstack([np.linspace(a, b, pieces, endpoint=False) for a, b in zip(points, points[1:], strict=False)] + [np.array([points[-1]])])
    step, middle = np.diff(line, axis=0), (line[1:] + line[:-1]) / 2
    weight = np.hypot(*step.T) * wall
    centre = weight @ middle / weight.sum()
    y, z = (middle - centre).T
    iy, iz, iyz = weight @ (z * z), weight @ (y * y), weight @ (y * z)
    # Sectorial coordinate about the centroid, then moved to the pole for which both products vanish.
    relative = line - centre
    sectorial = np.concatenate(([0.0], np.cumsum(relative[:-1, 0] * step[:, 1] - relative[:-1, 1] * step[:, 0])))
    omega = (sectorial[1:] + sectorial[:-1]) / 2
    both = np.array([[iy, iyz], [iyz, iz]])
    py, pz = np.linalg.solve(both, [weight @ (omega * z), weight @ (omega * y)]) * (1, -1)
    pole = centre + np.array([py, pz])
    about = relative - np.array([py, pz])
    sectorial = np.concatenate(([0.0], np.cumsum(about[:-1, 0] * step[:, 1] - about[:-1, 1] * step[:, 0])))
    omega = (sectorial[1:] + sectorial[:-1]) / 2
    omega = omega - weight @ omega / weight.sum()
    return pole, weight @ omega**2


def solve_closed(walls, force=(0.0, 1.0), pieces=2000):
    """Torsion constant, enclosed area, peak shear stress of a force that does not twist, and shear centre, of one cell of walls `(start, end, thickness)`."""
    starts, ends = np.array([a for a, _, _ in walls]), np.array([b for _, b, _ in walls])
    thick = np.repeat([t for _, _, t in walls], pieces)
    line = np.vstack([np.linspace(a, b, pieces, endpoint=False) for a, b in zip(starts, ends, strict=True)] + [starts[:1]])
    step, middle = np.diff(line, axis=0), (line[1:] + line[:-1]) / 2
    length = np.hypot(*step.T)
    enclosed = abs((line[:-1, 0] * line[1:, 1] - line[1:, 0] * line[:-1, 1]).sum()) / 2
    constant = 4 * enclosed**2 / (length / thick).sum()
    weight = length * thick
    centre = weight @ middle / weight.sum()
    y, z = (middle - centre).T
    iy, iz, iyz = weight @ (z * z), weight @ (y * y), weight @ (y * z)
    gradient = np.linalg.solve(np.array([[iz, iyz], [iyz, iy]]), force)
    flow = -np.cumsum(weight * (gradient[0] * y + gradient[1] * z)) + weight * (gradient[0] * y + gradient[1] * z) / 2
    flow -= (flow * length / thick).sum() / (length / thick).sum()
    moment = (flow * (middle[:, 0] * step[:, 1] - middle[:, 1] * step[:, 0])).sum()
    return constant, enclosed, np.abs(flow / thick).max(), moment


def less(document):
    gauge = document.get("gauge")
    wall = float(stock_gauge(gauge)) if gauge else number(document, "wall")
    outside, inside = number(document, "lost_outside"), number(document, "lost_inside")
    remains = wall - outside - inside
    if remains <= 0:
        raise Refused
    return wall, outside, inside, remains


def strip(half_across, low, high):
    return rounded(-half_across, half_across, low, high, (0, 0, 0, 0))


@route("section.RoundTube.properties")
@route("section.RoundBar.properties")
def round_tube(document):
    radius = number(document, "diameter") / 2
    if document.get("wall") is None:
        outside, remains = number(document, "lost_outside"), 0.0
        outer, inner = radius - outside, 0.0
    else:
        wall, outside, inside, remains = less(document)
        outer = radius - outside
        inner = outer - remains if outer - remains > 1e-9 else 0.0
    hole = number(document, "cross_hole")
    turn = np.linspace(0, 2 * math.pi, 40 * CHORDS, endpoint=False)
    circle = np.column_stack((np.cos(turn), np.sin(turn)))
    disc = [(1, outer * circle)] + ([(-1, inner * circle)] if inner else [])
    whole = Solid(*disc)
    if hole:
        # Two sides of the hole, each cut from both circles.
        sides = []
        for above in (True, False):
            at = hole / 2 if above else -hole / 2
            sides += [(sign, cut(polygon, 0, at, above)) for sign, polygon in disc]
        solid = Solid(*sides)
    else:
        solid = whole
    radii = np.linspace(inner, outer, 200_001)
    middle = (radii[1:] + radii[:-1]) / 2
    constant = (2 * math.pi * middle**3 * np.diff(radii)).sum()
    plain = whole.shear_area(1)
    upper = solid.bending()["second_moment_y"] / (solid.all(1, 0.0)[2] / solid.width(1, 0.0, outer * 1e-7)) if hole else plain
    return {
        **solid.bending(), "torsion_constant": constant, "torsion_modulus": constant / outer,
        "shear_area_y": plain * (1 - hole / (2 * outer)), "shear_area_z": upper, "shear_centre_y": 0.0, "shear_centre_z": 0.0,
        "form": "closed" if inner else "solid",
    }  # fmt: skip


@route("section.RectangularTube.properties")
def rectangular_tube(document):
    wall, outside, inside, remains = less(document)
    b, h = number(document, "width") - 2 * outside, number(document, "height") - 2 * outside
    bought = number(document, "corner_radius")
    radius, inner = max(bought - outside, 0.0), max(bought - wall, 0.0) + inside
    outline = rounded(-b / 2, b / 2, -h / 2, h / 2, [radius] * 4)
    void = rounded(-b / 2 + remains, b / 2 - remains, -h / 2 + remains, h / 2 - remains, [inner] * 4)
    walls = [(1, outline), (-1, void)]
    side, top = number(document, "side_hole"), number(document, "top_hole")
    drilled_sides = [(-1, rounded(a, c, -side / 2, side / 2, [0] * 4)) for a, c in ((-b / 2, -b / 2 + remains), (b / 2 - remains, b / 2))] if side else []
    drilled_top = [(-1, rounded(-top / 2, top / 2, a, c, [0] * 4)) for a, c in ((-h / 2, -h / 2 + remains), (h / 2 - remains, h / 2))] if top else []
    solid = Solid(*walls, *drilled_sides, *drilled_top)
    along_z = Solid(*walls, *drilled_top).shear_area(1) * (1 - side / h)
    along_y = Solid(*walls, *drilled_sides).shear_area(0) * (1 - top / b)
    # The flow around the cell, on the centre line with its rounded corners, and the twist of the wall by itself.
    mean = rounded(-b / 2 + remains / 2, b / 2 - remains / 2, -h / 2 + remains / 2, h / 2 - remains / 2, [(radius + inner) / 2] * 4)
    step = np.hypot(*(np.roll(mean, -1, axis=0) - mean).T).sum()
    enclosed = integrals(mean)[0]
    constant = 4 * enclosed**2 * remains / step + step * remains**3 / 3
    # Stress at the face of the wall for a twist of 1 a length: that of the flow, and that of the wall by itself.
    peak = 2 * enclosed / step + remains
    return {
        **solid.bending(), "torsion_constant": constant, "torsion_modulus": constant / peak, "shear_area_y": along_y, "shear_area_z": along_z,
        "shear_centre_y": 0.0, "shear_centre_z": 0.0, "form": "closed",
    }  # fmt: skip


def saint_venant(b, h, cells=160):
    """Torsion of a solid rectangle: Prandtl's function on two grids, extrapolated (finite differences). Constant and peak stress for a twist of 1."""
    import scipy.sparse as sparse
    from scipy.sparse.linalg import spsolve

    def once(n):
        dy, dz = b / n, h / n
        second = lambda d: sparse.diags([1.0, -2.0, 1.0], [-1, 0, 1], shape=(n - 1, n - 1)) / d**2  # noqa: E731
        one = sparse.identity(n - 1)
        phi = spsolve((sparse.kron(second(dy), one) + sparse.kron(one, second(dz))).tocsc(), np.full((n - 1) ** 2, -2.0)).reshape(n - 1, n - 1)
        full = np.pad(phi, 1)
        steep_y = (4 * full[1, n // 2] - full[2, n // 2]) / (2 * dy)
        steep_z = (4 * full[n // 2, 1] - full[n // 2, 2]) / (2 * dz)
        return np.array([2 * full.sum() * dy * dz, max(steep_y, steep_z)])

    coarse, fine = once(cells // 2), once(cells)
    return fine + (fine - coarse) / 3


@route("section.RectangularBar.properties")
def rectangular_bar(document):
    loss, hole = number(document, "lost_outside"), number(document, "hole")
    b, h = number(document, "width") - 2 * loss, number(document, "height") - 2 * loss
    if min(b, h) <= 0 or hole >= h:
        raise Refused
    pieces = [(1, strip(b / 2, hole / 2, h / 2)), (1, strip(b / 2, -h / 2, -hole / 2))] if hole else [(1, strip(b / 2, -h / 2, h / 2))]
    whole = Solid((1, strip(b / 2, -h / 2, h / 2)))
    constant, steep = saint_venant(b, h)
    share = 1 - hole / h
    return {
        **Solid(*pieces).bending(), "torsion_constant": constant, "torsion_modulus": constant / steep,
        "shear_area_y": whole.shear_area(0) * share, "shear_area_z": whole.shear_area(1) * share, "shear_centre_y": 0.0, "shear_centre_z": 0.0, "form": "solid",
    }  # fmt: skip


def channel_metal(document, toe):
    wall, outside, inside, remains = less(document)
    back, half = outside, number(document, "height") / 2 - outside
    radius = max(number(document, "corner_radius") - outside, 0.0)
    inner = max(radius - remains, 0.0)
    outline = rounded(back, toe, -half, half, [0, radius, radius, 0])
    void = rounded(back + remains, toe, -half + remains, half - remains, [0, inner, inner, 0])
    return [(1, outline), (-1, void)], back, half, radius, remains


@route("section.Channel.properties")
def channel(document):
    toe = number(document, "width") - number(document, "lost_outside")
    walls, back, half, radius, t = channel_metal(document, toe)
    hole = number(document, "web_hole")
    drilled = [(-1, rounded(back, back + t, -hole / 2, hole / 2, [0] * 4))] if hole else []
    whole = Solid(*walls)
    line = [(toe, half - t / 2), (back + t / 2, half - t / 2), (back + t / 2, -half + t / 2), (toe, -half + t / 2)]
    (centre_y, centre_z), warping = solve_open(line, t)
    mean = max(radius - t / 2, 0.0)
    length = sum(math.dist(a, b) for a, b in zip(line, line[1:], strict=False)) - 2 * (2 - math.pi / 2) * mean
    return {
        **Solid(*walls, *drilled).bending(), "torsion_constant": length * t**3 / 3, "torsion_modulus": length * t**2 / 3,
        "shear_area_y": whole.shear_area(0, 2000), "shear_area_z": whole.shear_area(1) * (1 - hole / (2 * half)),
        "shear_centre_y": centre_y, "shear_centre_z": centre_z, "warping_constant": warping, "form": "open",
    }  # fmt: skip


@route("section.BoxedChannel.properties")
def boxed_channel(document):
    toe = number(document, "width")
    walls, back, half, radius, t = channel_metal(document, toe)
    near = toe + number(document, "lost_inside")
    far = toe + number(document, "plate") - number(document, "lost_outside")
    extra = [(1, rounded(near, far, -half, half, [0] * 4))]
    if near > toe:
        extra += [(1, rounded(toe, near, *ends, [0] * 4)) for ends in ((half - t, half), (-half, -half + t))]
    solid = Solid(*walls, *extra)
    web, plate, flange = back + t / 2, (near + far) / 2, half - t / 2
    cell = [((web, -flange), (plate, -flange), t), ((plate, -flange), (plate, flange), far - near), ((plate, flange), (web, flange), t), ((web, flange), (web, -flange), t)]
    bredt, enclosed, peak, place = solve_closed(cell)
    mean = max(radius - t / 2, 0.0)
    ring = enclosed - 2 * (1 - math.pi / 4) * mean**2
    # The force of 1 that the peak belongs to is carried by the second moment of the whole section, not of its centre line.
    thin = sum(abs(b[1] - a[1]) ** 3 * w / 12 + math.dist(a, b) * w * ((a[1] + b[1]) / 2) ** 2 for a, b, w in cell)
    second = solid.bending()["second_moment_y"]
    share = thin / second
    return {
        **solid.bending(), "torsion_constant": bredt * (ring / enclosed) ** 2, "torsion_modulus": 2 * ring * min(t, far - near),
        "shear_area_y": solid.shear_area(0, 2000), "shear_area_z": 1 / (peak * share), "shear_centre_y": place, "shear_centre_z": 0.0, "form": "closed",
    }  # fmt: skip


@route("section.AngleSection.properties")
def angle(document):
    wall, outside, inside, t = less(document)
    right, top = number(document, "width") - outside, number(document, "height") - outside
    radius = max(number(document, "corner_radius") - outside, 0.0)
    inner = max(radius - t, 0.0)
    bend = [(outside, outside)] if not radius else arc((outside + radius, outside + radius), radius, math.pi, 1.5 * math.pi)
    inside_bend = [(outside + t, outside + t)] if not inner else arc((outside + radius, outside + radius), inner, 1.5 * math.pi, math.pi)
    solid = Solid((1, np.vstack([bend, [(right, outside), (right, outside + t)], inside_bend, [(outside + t, top), (outside, top)]])))
    at = outside + t / 2
    line = [(right, at), (at, at), (at, top)]
    (centre_y, centre_z), _ = solve_open(line, t)
    found = solid.bending()
    cy, cz, iy, iz, iyz = (found[key] for key in ("centroid_y", "centroid_z", "second_moment_y", "second_moment_z", "product_of_inertia"))
    areas = []
    for force in ((1.0, 0.0), (0.0, 1.0)):
        slope = np.linalg.solve(np.array([[iz, iyz], [iyz, iy]]), force)
        worst = 0.0
        for start in (line[0], line[-1]):
            points = np.linspace(start, line[1], 20_001)
            middle = (points[1:] + points[:-1]) / 2 - (cy, cz)
            worst = max(worst, np.abs(np.cumsum(middle @ slope) * math.dist(start, line[1]) / 20_000).max())
        areas.append(1 / worst)
    legs = [right - at, top - at]
    mean = max(radius - t / 2, 0.0)
    length = sum(legs) - (2 - math.pi / 2) * mean
    # Warping across the wall of each leg: the integral of (distance from the shear centre times distance from the centre line)^2.
    warping = sum(leg**3 / 3 * t**3 / 12 for leg in legs)
    return {
        **found, "torsion_constant": length * t**3 / 3, "torsion_modulus": length * t**2 / 3, "shear_area_y": areas[0], "shear_area_z": areas[1],
        "shear_centre_y": centre_y, "shear_centre_z": centre_z, "warping_constant": warping, "form": "open",
    }  # fmt: skip


@route("section.BuiltUp.properties")
def built_up(document):
    def box(part):
        y, z, b, h = (number(part, key) for key in ("y", "z", "width", "height"))
        return rounded(y - b / 2, y + b / 2, z - h / 2, z + h / 2, [0] * 4)

    gone = document.get("removed") or []
    solid = Solid(*((1, box(part)) for part in document["parts"]), *((-1, box(part)) for part in gone))
    found = {**solid.bending(), "form": "parts"}
    if not gone:
        each = np.array([saint_venant(number(part, "width"), number(part, "height")) for part in document["parts"]])
        found["torsion_constant"] = each[:, 0].sum()
        found["torsion_modulus"] = found["torsion_constant"] / each[:, 1].max()
        if found["product_of_inertia"] == 0.0:
            found |= {"shear_area_y": solid.shear_area(0, 4000), "shear_area_z": solid.shear_area(1, 4000)}
    return found


@route("section.member_mass")
def member_mass(area, length, density):
    return exact(area) * exact(length) * exact(density)


def euler_by_differences(stiffness, length, points=400):
    """Least eigenvalue of the pinned column, on two grids, extrapolated."""
    from scipy.linalg import eigh_tridiagonal

    def once(n):
        step = length / n
        values = eigh_tridiagonal(np.full(n - 1, 2.0), np.full(n - 2, -1.0), select="i", select_range=(0, 0))[0]
        return stiffness * values[0] / step**2

    coarse, fine = once(points // 2), once(points)
    return fine + (fine - coarse) / 3


def beam_column(compression, stiffness, length, bow=0.0, eccentricity=0.0, lateral=0.0, place=None, points=4000):
    """Peak moment of a pinned column: `E I y'' = -M`, `M = P (y + y_0 + e) + M_F`, by finite differences, the load on a node."""
    from scipy.linalg import solve_banded

    def once(n):
        # The load stands on a node: two grids meet there.
        at = length / 2 if not lateral else place
        left = max(2, round(n * at / length))
        x = np.concatenate((np.linspace(0, at, left + 1), np.linspace(at, length, n - left + 1)[1:]))
        first = np.where(x <= at, lateral * x * (length - at) / length, lateral * (length - x) * at / length)
        shape = bow * np.sin(np.pi * x / length) + eccentricity
        h = np.diff(x)
        a, b = h[:-1], h[1:]
        lower, upper = 2 / (a * (a + b)), 2 / (b * (a + b))
        diagonal = -(lower + upper) + compression / stiffness
        band = np.zeros((3, len(x) - 2))
        band[0, 1:], band[1], band[2, :-1] = upper[:-1], diagonal, lower[1:]
        y = np.zeros(len(x))
        y[1:-1] = solve_banded((1, 1), band, -(first + compression * shape)[1:-1] / stiffness)
        moment = first + compression * (y + shape)
        best = int(np.argmax(moment))
        if 0 < best < len(x) - 1 and abs(x[best] - at) > 1e-12 * length:
            near = np.polynomial.Polynomial.fit(x[best - 1 : best + 2], moment[best - 1 : best + 2], 2)
            return near(near.deriv().roots()[0])
        return moment[best]

    coarse, fine = once(points // 2), once(points)
    return fine + (fine - coarse) / 3


@route("section.euler_load")
def euler_load(elastic_modulus, second_moment, length):
    return euler_by_differences(elastic_modulus * second_moment, length)


@route("section.straight_column_load")
def straight_column_load(elastic_modulus, yield_strength, area, second_moment, length):
    # By slenderness, as the handbook writes it.
    euler = euler_by_differences(elastic_modulus * second_moment, length)
    slender = length / math.sqrt(second_moment / area)
    if slender > math.sqrt(2 * math.pi**2 * elastic_modulus / yield_strength):
        return euler
    return area * (yield_strength - (yield_strength * slender / (2 * math.pi)) ** 2 / elastic_modulus)


def first_yield(yields, area, modulus, stiffness, length, **bent):
    euler = euler_by_differences(stiffness, length)
    stress = lambda load: load / area + beam_column(load, stiffness, length, points=1000, **bent) / modulus  # noqa: E731
    if stress(0.0) >= yields:
        return 0.0
    # The grids buckle a little earlier than the column.
    top = min(euler * 0.999, yields * area)
    return min(euler, yields * area) if stress(top) < yields else brentq(lambda load: stress(load) - yields, 0.0, top, xtol=1e-9, rtol=1e-13)


@route("section.bowed_column_load")
def bowed_column_load(elastic_modulus, yield_strength, area, second_moment, section_modulus, length, bow):
    return first_yield(yield_strength, area, section_modulus, elastic_modulus * second_moment, length, bow=bow)


@route("section.secant_stress")
def secant_stress(compression, elastic_modulus, area, second_moment, section_modulus, length, eccentricity):
    return compression / area + beam_column(compression, elastic_modulus * second_moment, length, eccentricity=eccentricity) / section_modulus


def link_parts(document):
    length = float(document["length"])
    bow = length / 500 if document.get("bow") is None else float(document["bow"])
    bent = {"bow": bow, "eccentricity": float(document["eccentricity"]), "lateral": abs(number(document, "lateral_load")), "place": number(document, "lateral_place", length / 2)}
    plain = (float(document["area"]), float(document["section_modulus"]), float(document["elastic_modulus"]) * float(document["second_moment"]), length)
    return plain, bent


def governs(critical, euler, straight, stiffness, length, bent):
    if math.isclose(critical, straight, rel_tol=1e-7):
        return "euler" if math.isclose(straight, euler, rel_tol=1e-7) else "johnson"
    none = {"bow": 0.0, "eccentricity": 0.0, "lateral": 0.0}
    names = {"bow": "bow", "eccentricity": "eccentricity", "lateral": "lateral_load"}
    by = {name: beam_column(critical, stiffness, length, place=bent["place"], **{**none, key: bent[key]}) for key, name in names.items()}
    return max(by, key=by.get)


@route("section.Link.capacity")
def link_capacity(document):
    (area, modulus, stiffness, length), bent = link_parts(document)
    yields = float(document["yield_strength"])
    euler = euler_by_differences(stiffness, length)
    straight = straight_column_load(float(document["elastic_modulus"]), yields, area, float(document["second_moment"]), length)
    bowed = first_yield(yields, area, modulus, stiffness, length, bow=bent["bow"])
    every = first_yield(yields, area, modulus, stiffness, length, **bent)
    return {
        "tension_load": float(document["net_area"]) * yields, "euler_load": euler, "straight_load": straight, "bowed_load": bowed,
        "critical_load": min(straight, bowed, every), "bow": bent["bow"], "governs": governs(min(straight, bowed, every), euler, straight, stiffness, length, bent),
    }  # fmt: skip


@route("section.Link.peak_stress")
def link_peak_stress(document, force):
    (area, modulus, stiffness, length), bent = link_parts(document)
    if force < 0:
        if -force >= euler_by_differences(stiffness, length):
            raise Refused
        return -force / area + beam_column(-force, stiffness, length, **bent) / modulus
    moment = force * (bent["bow"] + bent["eccentricity"]) + bent["lateral"] * bent["place"] * (length - bent["place"]) / length
    return force / float(document["net_area"]) + moment / modulus
