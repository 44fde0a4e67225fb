"""Mass: centroids, balances of forces and moments, and a vehicle of known height put on the scales."""

import mpmath
import numpy as np
from scipy.optimize import brentq

from . import GRAVITY, exact, route

G0 = float(GRAVITY)


@route("mass.weight_distribution")
def weight_distribution(left_front, right_front, left_rear, right_rear, wheelbase, front_track, rear_track):
    lf, rf, lr, rr = map(exact, (left_front, right_front, left_rear, right_rear))
    base, front, rear = map(exact, (wheelbase, front_track, rear_track))
    total = lf + rf + lr + rr
    at = [(lf, 0, front / 2), (rf, 0, -front / 2), (lr, base, rear / 2), (rr, base, -rear / 2)]
    return {
        "total_mass": total, "front_axle_mass": lf + rf, "rear_axle_mass": lr + rr,
        "front_share": (lf + rf) / total, "left_share": (lf + lr) / total, "diagonal_share": (rf + lr) / total,
        "behind_front_axle": sum(m * x for m, x, _ in at) / total, "left_of_centreline": sum(m * y for m, _, y in at) / total,
    }  # fmt: skip


def axle_loads(mass, behind, base, height=0.0, acceleration=0.0):
    """Loads from the sum of the forces and the moments about the centre of gravity, the tyres pushing at the ground."""
    front, rear = np.linalg.solve([[1.0, 1.0], [behind, -(base - behind)]], [mass * G0, -mass * acceleration * height])
    return {"front_load": front, "rear_load": rear}


@route("mass.static_axle_loads")
def static_axle_loads(total_mass, behind_front_axle, wheelbase):
    return axle_loads(total_mass, behind_front_axle, wheelbase)


@route("mass.axle_loads_under_acceleration")
def axle_loads_under_acceleration(total_mass, behind_front_axle, centre_height, wheelbase, acceleration):
    return axle_loads(total_mass, behind_front_axle, wheelbase, centre_height, acceleration)


@route("mass.longitudinal_load_transfer")
def longitudinal_load_transfer(total_mass, centre_height, wheelbase, acceleration):
    at = [axle_loads(total_mass, wheelbase / 2, wheelbase, centre_height, a)["rear_load"] for a in (acceleration, 0.0)]
    return at[0] - at[1]


@route("mass.lateral_load_transfer")
def lateral_load_transfer(total_mass, centre_height, track, lateral_acceleration):
    # The side of the turn takes the front's part in the balance above.
    at = [axle_loads(total_mass, track / 2, track, centre_height, a)["rear_load"] for a in (lateral_acceleration, 0.0)]
    return at[0] - at[1]


@route("mass.sprung_mass")
def sprung_mass(scale_mass, unsprung_mass):
    return exact(scale_mass) - exact(unsprung_mass)


@route("mass.sprung_centre")
def sprung_centre(total_mass, behind_front_axle, centre_height, wheelbase, front_unsprung_mass, rear_unsprung_mass, front_unsprung_height, rear_unsprung_height):
    total, behind, height, base, front, rear, zf, zr = map(exact, (total_mass, behind_front_axle, centre_height, wheelbase, front_unsprung_mass, rear_unsprung_mass, front_unsprung_height, rear_unsprung_height))
    sprung = total - front - rear
    return {"sprung_mass": sprung, "sprung_behind_front_axle": (total * behind - rear * base) / sprung, "height": (total * height - front * zf - rear * zr) / sprung}


def reading(height, level, total, base, lift, radius, tyres=(mpmath.inf, mpmath.inf)):
    """Mass on the lower axle of a rigid vehicle whose other axle is raised by `lift` at the ground."""
    from_lower = base * (1 - level / total)

    def on_scale(sine):
        cosine = mpmath.sqrt(1 - sine**2)
        return total * (1 - (from_lower * cosine - (height - radius) * sine) / (base * cosine))

    def gap(sine):
        more = (on_scale(sine) - level) * G0
        return base * sine - lift - more / tyres[0] - more / tyres[1]

    return on_scale(mpmath.findroot(gap, lift / base))


@route("mass.centre_of_gravity_height_by_tilt")
@route("mass.centre_of_gravity_height_by_tilt_over_tyres")
def centre_of_gravity_height_by_tilt(level_mass, tilted_mass, total_mass, wheelbase, lift, loaded_radius, lower_axle_tyre_rate=None, raised_axle_tyre_rate=None):
    mpmath.mp.dps = 40
    tyres = (mpmath.inf, mpmath.inf) if lower_axle_tyre_rate is None else (mpmath.mpf(lower_axle_tyre_rate), mpmath.mpf(raised_axle_tyre_rate))
    given = [mpmath.mpf(x) for x in (level_mass, total_mass, wheelbase, lift, loaded_radius)]
    return float(mpmath.findroot(lambda height: reading(height, *given, tyres) - tilted_mass, 2 * loaded_radius))


@route("mass.RaisedAxle.centre")
def raised_axle_centre(d):
    """A vehicle of known height is tilted until its springs and tyres carry it; the height whose reading is that of the row is looked for."""
    d = {key: float(value) if not isinstance(value, str) else value for key, value in d.items()}
    base, radius, other = d["wheelbase"], d["lower_loaded_radius"], d["raised_loaded_radius"]
    loads = d["lower_axle_mass"], d["raised_axle_mass"]
    total = sum(loads)
    free = d["suspension"] == "free"
    unsprung = (d["lower_unsprung_mass"], d["raised_unsprung_mass"]) if free else (0.0, 0.0)
    rates = [2 * d[name] for name in ("lower_wheel_rate", "raised_wheel_rate")] if free else [np.inf, np.inf]
    tyres = [2 * d[name] for name in ("lower_tyre_rate", "raised_tyre_rate")] if d["lift_at"] == "ground" else [np.inf, np.inf]
    sprung = total - sum(unsprung)
    along = (loads[1] - unsprung[1]) * base / sprung

    def tilted(height):
        high = (total * height - unsprung[0] * radius - unsprung[1] * other) / sprung

        def posture(angle):
            """Places in the ground's axes from the lower wheel centre, the body turned by `angle`; forces of the springs square to the body."""
            cosine, sine = np.cos(angle), np.sin(angle)
            gave = [0.0, 0.0]
            for _ in range(200):
                far = base * cosine - (other - radius + gave[1] - gave[0]) * sine, base * sine + (other - radius + gave[1] - gave[0]) * cosine
                over = high - radius - gave[0]
                at = along * cosine - over * sine
                # The moment about the lower wheel centre of all that hangs on it.
                raised = (sprung * at + unsprung[1] * far[0]) / far[0]
                lower = total - raised
                carried = [(lower - unsprung[0]) * cosine, (raised - unsprung[1]) * cosine]
                level = [loads[0] - unsprung[0], loads[1] - unsprung[1]]
                # A spring that gives lets the body down on its wheel.
                new = [G0 * (c - l) / k for c, l, k in zip(carried, level, rates)]
                if max(abs(a - b) for a, b in zip(new, gave)) < 1e-16:
                    break
                gave = [new[0], new[1]]
            return lower, far[1], gave

        def gap(angle):
            lower, risen, _ = posture(angle)
            more = (lower - loads[0]) * G0
            return risen - (other - radius) - d["lift"] - more / tyres[0] - more / tyres[1]

        angle = brentq(gap, 0.0, 0.6, xtol=1e-15)
        return posture(angle)[0], angle

    height = brentq(lambda h: tilted(h)[0] - d["lower_axle_reading"], 0.05, 2.0, xtol=1e-15)
    return {"height": height, "angle": tilted(height)[1]}


def total_of(parts):
    mass = sum(p["mass"] for p in parts)
    centre = {axis: sum(p["mass"] * p[axis] for p in parts) / mass for axis in "xyz"}
    out = {"mass": mass, **centre}
    for name, (a, b) in {"roll": "yz", "pitch": "xz", "yaw": "xy"}.items():
        origin = sum(p.get(f"{name}_inertia", 0) + p["mass"] * (p[a] ** 2 + p[b] ** 2) for p in parts)
        out[f"{name}_inertia"] = origin - mass * (centre[a] ** 2 + centre[b] ** 2)
    return out


def after(d):
    instead = {p["name"]: p for p in d["instead"]}
    return [instead.pop(p["name"], p) for p in d["parts"]] + list(instead.values())


@route("mass.PartsList.total")
def parts_total(d):
    return total_of(d["parts"])


@route("mass.PartsList.swapped")
def parts_swapped(d):
    return total_of(after(d))


@route("mass.PartsList.change")
def parts_change(d):
    before, now = total_of(d["parts"]), total_of(after(d))
    return {name: now[name] - before[name] for name in before}
