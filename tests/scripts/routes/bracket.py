"""Brackets: yield lines of a tube's face by a search over their pattern; tabs by fibres of their sections and planes of shear."""

import numpy as np
from scipy.optimize import minimize_scalar

from . import Refused, route


@route("bracket.rectangular_tube_wall_strength")
def rectangular_tube_wall_strength(yield_strength, wall, face_width, tab_length, tab_thickness):
    if not tab_thickness < face_width or min(yield_strength, wall, tab_length) <= 0:
        raise Refused
    moment = yield_strength * wall**2 / 4  # of a yield line, per length
    side = (face_width - tab_thickness) / 2

    def force(reach):
        # Work of every line per unit of sink: two along the tab, two along the edges, four at the ends, four diagonals.
        along = 2 * tab_length / side + 2 * (tab_length + 2 * reach) / side
        ends = 2 * face_width / reach + 2 * tab_thickness / reach
        # A diagonal turns by the sum of both neighbours' turns along it.
        length = np.hypot(side, reach)
        diagonals = 4 * length * (reach / side + side / reach) / length
        return moment * (along + ends + diagonals)

    return minimize_scalar(force, bounds=(side / 50, 50 * face_width), method="bounded", options={"xatol": 1e-13}).fun


@route("bracket.round_tube_wall_strength")
def round_tube_wall_strength(yield_strength, wall, diameter, tab_length):
    """The same as points of its straight line: a point load, and one diameter of tab, which adds a quarter."""
    if not 0 < 2 * wall < diameter:
        raise Refused
    at_point = 5.5 * yield_strength * wall**2
    return np.interp(tab_length / diameter, [0.0, 1.0, 4.0], [at_point, 1.25 * at_point, 2.0 * at_point])


@route("bracket.Tab.strength")
def tab(d):
    count, t = float(d["tabs"]), float(d["thickness"])
    on = float(d["force"]) / count
    base, height = float(d["base_width"]), float(d["height"])
    # Fibres of the section at the weld: the greatest of all, at a corner.
    cells = 401
    y, z = (np.linspace(-0.5, 0.5, cells) * size for size in (base, t))
    pull, across = on * abs(np.cos(float(d["force_angle"]))), on * abs(np.sin(float(d["force_angle"])))
    out = on * float(d.get("offset", 0.0)) * (count == 1) + abs(float(d["side_force"])) * height / count
    second = base**3 * t / 12, base * t**3 / 12
    stress = pull / (base * t) + across * height * y[:, None] / second[0] + out * z[None, :] / second[1]
    result = {"tab_force": on, "base_stress": stress.max()}
    if "yield_strength" in d:
        strength = float(d["yield_strength"])
        result |= {"base_margin": strength / stress.max(), "bearing_margin": 1.8 * strength * float(d["bolt_diameter"]) * t / on}
    if "ultimate_strength" in d:
        breaks, hole = float(d["ultimate_strength"]), float(d["hole_diameter"])
        planes = 2 * t * (float(d["edge_distance"]) - hole / 2)
        ligaments = [min((float(d["width"]) - hole) / 2, 2 * t + 0.016) * t for _ in range(2)]
        result |= {"tear_out_margin": 0.6 * breaks * planes / on, "net_section_margin": breaks * sum(ligaments) / on}
    return result
