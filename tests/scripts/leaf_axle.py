"""Independent solutions of a live axle on leaf springs, for the rows of `suspension.json`: `python leaf_axle.py > rows`.

`Axle`: every unknown at once (place, steer and pitch of the axle, four bends, two shackles), the eyes as constraints with multipliers,
balance as the stationary point of energy; scipy's `fsolve` on gradients by complex steps, shapes by Gauss's rule with 40 nodes. Rates and
slopes are central differences of whole solutions, two steps extrapolated (Richardson). Nothing is eliminated and nothing is shared
with the crate. A helper coil adds its energy, at its own place in space; an anti-roll bar is led by its drop links, whose levers' turns are roots.

`elastica`: one spring in side view as a thin beam in large bending, without any assumed shape, of one section or tapering in width to nothing
at the eye: scipy's `solve_bvp` for both halves, with the force at each eye, the seat's angle and the shackle as unknowns.

Axes and signs: x forward, y left, z up; roll of the axle against the body, positive with the left wheel in bump; pitch with the front up.
"""

from __future__ import annotations

import json

import numpy as np
import scipy
from scipy.integrate import solve_bvp
from scipy.optimize import fsolve

NODE, WEIGHT = np.polynomial.legendre.leggauss(40)
NODE, WEIGHT = 0.5 * (NODE + 1), 0.5 * WEIGHT


def turned(angle, p, q):
    """A vector of the side view turned with its front up."""
    return p * np.cos(angle) - q * np.sin(angle), p * np.sin(angle) + q * np.cos(angle)


def newton(f, u):
    """Newton's method, its matrix from central differences, until nothing gets better."""
    off = f(u)
    for _ in range(30):
        step = 1e-5
        matrix = np.array([(f(u + step * e) - f(u - step * e)) / (2 * step) for e in np.eye(len(u))]).T
        to = u - np.linalg.solve(matrix, off)
        now = f(to)
        if np.abs(off).max() < 1e-12 and np.abs(now).max() >= np.abs(off).max():
            return u
        u, off = to, now
    assert np.abs(off).max() < 1e-11, np.abs(off).max()
    return u


class Half:
    """An arc from the clamp to the eye, found by a root, not by the formula of a circle."""

    def __init__(self, outward, eye, clamp, offset, fading):
        self.outward, self.clamp, self.offset, self.fading = outward, clamp, offset, fading
        self.length, self.slope = 1.0, 0.0

        def miss(q):
            self.length, self.slope = q
            h, v = self.eye(0.0)
            return h - eye[0], v - eye[1]

        q = fsolve(miss, [np.hypot(*eye) - clamp, eye[1] / eye[0]], xtol=1e-12)
        assert np.abs(miss(q)).max() < 1e-12
        self.length, self.slope = q

    def eye(self, bend):
        share = NODE * (1 + self.fading * (1 - NODE))
        angle = self.slope * NODE - bend * share
        end = self.slope - bend
        h = self.clamp + self.length * np.sum(WEIGHT * np.cos(angle)) - self.offset * np.sin(end)
        v = self.length * np.sum(WEIGHT * np.sin(angle)) + self.offset * np.cos(end)
        return h, v


class Axle:
    def __init__(self, d):
        """`d`: fixed, eye, pivot, seat, centre (x, z each), angle, clamp, offset, fading, load, rate, base, half_track, radius."""
        self.d = d
        self.seat = np.subtract(d["seat"], d["centre"])
        self.sign = np.sign(d["fixed"][0] - d["seat"][0])
        self.halves = []
        for name, outward in (("fixed", self.sign), ("eye", -self.sign)):
            p, q = turned(-d["angle"], *np.subtract(d[name], d["seat"]))
            self.halves.append(Half(outward, (outward * p, q), d["clamp"] / 2, d["offset"], d["fading"]))
        self.shackle = np.hypot(*np.subtract(d["eye"], d["pivot"]))
        # Cantilevers of one section: end force over deflection `e / L^3`; in the tester each eye carries what the levers give it.
        a, b = self.halves
        levers = np.array([a.length, b.length]) + d["clamp"] / 2
        loads = levers[::-1] / levers.sum()
        strength = d["rate"] * np.sum(loads**2 * np.array([a.length, b.length]) ** 3)
        centroid = 0.5 + d["fading"] / 6
        self.stiff = [strength / h.length**3 * (centroid * h.length) ** 2 for h in self.halves]
        self.loaded = [0.0, 0.0]
        self.solved = {}
        self.calibrate()

    # Unknowns: x, steer, pitch, then fixed bend, shackle bend, shackle's angle of the left and of the right spring.
    def parts(self, q, heave, roll):
        d, lean = self.d, roll
        x, steer, pitch = q[:3]
        z = d["centre"][1] + heave
        p, up = turned(pitch, *self.seat)
        out = []
        for side, (fixed, bend, shackle) in ((1, q[3:6]), (-1, q[6:9])):
            left = np.cos(lean) * side * d["base"] / 2 - np.sin(lean) * up
            sx = x + np.cos(steer) * p - np.sin(steer) * left
            sz = z + np.sin(lean) * side * d["base"] / 2 + np.cos(lean) * up
            eyes = []
            for half, turn in zip(self.halves, (fixed, bend)):
                h, v = half.eye(turn)
                ex, ez = turned(d["angle"] + pitch, half.outward * h, v)
                eyes.append((sx + ex, sz + ez))
            out.append((sx, sz, eyes, self.hanging(shackle)))
        return out

    def hanging(self, shackle):
        (x, z), length = self.d["pivot"], self.shackle
        return x + length * np.sin(shackle), z - length * np.cos(shackle)

    def constraints(self, q, heave, roll):
        out = []
        for _, _, eyes, hang in self.parts(q, heave, roll):
            out += [eyes[0][0] - self.d["fixed"][0], eyes[0][1] - self.d["fixed"][1], eyes[1][0] - hang[0], eyes[1][1] - hang[1]]
        return np.array(out)

    def middle(self, q, heave, roll):
        """Of the axle, left of the body's centre plane: it leans about the line between the eyes."""
        left, right = self.hanging(q[5]), self.hanging(q[8])
        d, (ex, ez) = self.d, (0.5 * (left[0] + right[0]), 0.5 * (left[1] + right[1]))
        line = d["fixed"][1] + (q[0] - d["fixed"][0]) / (ex - d["fixed"][0]) * (ez - d["fixed"][1])
        return np.tan(roll) * (line - d["centre"][1] - heave), line

    def carried(self, q, heave, roll, arm):
        """A point of the axle, so far from its middle at ride height: pitched, then rolled, then steered."""
        p, up = turned(q[2], arm[0], arm[2])
        left, up = turned(roll, arm[1], up)
        p, left = turned(q[1], p, left)
        return [q[0] + p, self.middle(q, heave, roll)[0] + left, self.d["centre"][1] + heave + up]

    def eyes(self, q, heave, roll, side):
        """Length of the coil-over, and how far its eyes stand apart upward."""
        (bx, by, bz), (ax, ay, az) = self.d["coil"]["body"], self.d["coil"]["axle"]
        x, y, z = self.carried(q, heave, roll, (ax - self.d["centre"][0], side * ay, az - self.d["centre"][1]))
        return np.sqrt((x - bx) ** 2 + (y - side * by) ** 2 + (z - bz) ** 2), bz - z

    def coil(self, q, heave, roll, side):
        """Its energy, that of the gas too."""
        if "coil" not in self.d:
            return 0.0
        on, length = self.d["coil"], self.eyes(q, heave, roll, side)[0]
        used = on["free"] - (length - on["offset"])
        return 0.5 * on["rate"] * used**2 - on["gas"] * length

    def leaf(self, q, at):
        return sum(0.5 * k * (b + b0) ** 2 for k, b, b0 in zip(self.stiff, q[at : at + 2], self.loaded))

    def energy(self, q, heave, roll):
        return sum(self.leaf(q, at) + self.coil(q, heave, roll, side) for at, side in ((3, 1), (6, -1)))

    def levers(self, q, heave, roll):
        """Turns of both levers of the bar about its axis along y, up positive."""
        bar, d = self.d["bar"], self.d
        out = []
        for side in (1, -1):
            middle = (d["centre"][0], 0.0, d["centre"][1])
            eye, end, pivot = (np.array((x, side * y, z)) for x, y, z in (bar["eye"], bar["end"], bar["pivot"]))
            lever, link = end - pivot, np.linalg.norm(eye - end)

            def miss(angle):
                p, up = turned(angle[0], lever[0], lever[2])
                tip = pivot + (p, lever[1], up)
                there = eye
                if bar["carried_by"] == "axle":
                    tip = np.array(self.carried(q, heave, roll, tip - middle))
                else:
                    there = np.array(self.carried(q, heave, roll, eye - middle))
                return [np.linalg.norm(tip - there) - link]

            found, _, ok, _ = fsolve(miss, [0.0], xtol=1e-14, full_output=True)
            assert np.abs(miss(found)).max() < 1e-12
            out.append(found[0])
        return out, np.hypot(bar["end"][0] - bar["pivot"][0], bar["end"][2] - bar["pivot"][2])

    def gradients(self, of, q, *more):
        rows = []
        for i in range(len(q)):
            step = np.array(q, complex)
            step[i] += 1e-30j
            rows.append(np.imag(of(step, *more)) / 1e-30)
        return np.array(rows)

    def start(self):
        d = self.d
        angle = np.arctan2(d["eye"][0] - d["pivot"][0], d["pivot"][1] - d["eye"][1])
        return np.array([d["centre"][0], 0, 0, 0, 0, angle, 0, 0, angle], float)

    def calibrate(self):
        """The loads of the halves at ride height: balance of every unknown is linear in them and in the reactions."""
        q = self.start()
        jacobian = self.gradients(self.constraints, q, 0.0, 0.0)
        lift = np.imag(self.constraints(np.array(q, complex), 1e-30j, 0.0)) / 1e-30
        # moments of two halves (the same left and right), eight reactions; nine balances and the load.
        system, right = np.zeros((10, 10)), np.zeros(10)
        for i, place in enumerate((3, 4)):
            system[place, i] = system[place + 3, i] = 1.0
        system[:9, 2:] = jacobian
        system[9, 2:] = lift
        right[9] = 2 * self.d["load"]
        right[:9] = -self.gradients(lambda q: sum(self.coil(q, 0.0, 0.0, side) for side in (1, -1)), q)
        found, *_ = np.linalg.lstsq(system, right, rcond=None)
        assert np.abs(system @ found - right).max() < 1e-6
        self.loaded = [m / k for m, k in zip(found[:2], self.stiff)]
        self.reactions = found[2:] / 1e4

    def solve(self, heave, roll, traction=0.0):
        state = heave, roll, traction
        if state not in self.solved:
            self.solved[state] = self.solution(*state)
        *found, self.coil_lift = self.solved[state]
        return found

    def solution(self, heave, roll, traction):
        steps = max(1, int(np.ceil(max(abs(heave) / 0.02, abs(roll) / 0.02, abs(traction) / 2000))))
        unknown = np.concatenate([self.start(), self.reactions])
        r = self.d["radius"]
        for share in np.linspace(0, 1, steps + 1):
            z, phi, force = share * heave, share * roll, share * traction

            def balance(u):
                q, reaction = u[:9], u[9:]
                work = lambda q: self.energy(q, z, phi) - force * (q[0] + q[2] * r)
                slopes = self.gradients(work, q) + self.gradients(self.constraints, q, z, phi) @ reaction * 1e4
                return np.concatenate([slopes / 1e4, self.constraints(q, z, phi)])

            unknown = newton(balance, unknown)
        q, reaction = unknown[:9], unknown[9:] * 1e4
        # Load along heave: the reactions' work.
        lift = np.imag(self.constraints(np.array(q, complex), z + 1e-30j, phi)) / 1e-30
        lean = np.imag(self.constraints(np.array(q, complex), z, phi + 1e-30j)) / 1e-30
        still = np.array(q, complex)
        coil_lift = np.array([np.imag(self.coil(still, z + 1e-30j, phi, side)) / 1e-30 for side in (1, -1)])
        turns = sum(np.imag(self.coil(still, z, phi + 1e-30j, side)) / 1e-30 for side in (1, -1))
        return q, lift * reaction, lean @ reaction + turns, coil_lift

    def results(self, heave, roll, slopes=True):
        d, lean = self.d, roll
        q, lift, moment = self.solve(heave, roll)
        x, steer, pitch = q[:3]
        z = d["centre"][1] + heave
        (_, lz, leyes, lhang), (_, rz, reyes, rhang) = self.parts(q, heave, roll)
        y, line = self.middle(q, heave, roll)
        out = {}
        for name, side in (("left", 1), ("right", -1)):
            across = np.cos(lean) * side * d["half_track"]
            out[f"{name}_wheel_x"] = x - np.sin(steer) * across
            out[f"{name}_wheel_y"] = y + np.cos(steer) * across
            out[f"{name}_wheel_z"] = z + np.sin(lean) * side * d["half_track"]
        out["wheelbase_change"] = -(x - d["centre"][0])
        out["axle_steer"] = steer
        out["lateral_shift"] = y
        out["pinion_angle_change"] = pitch
        out["roll_centre_height"] = line - z + d["radius"]
        out["left_spring_load"] = lift[:4].sum()
        out["right_spring_load"] = lift[4:].sum()
        for name, angle, hang in (("left", q[5], lhang), ("right", q[8], rhang)):
            away = -self.sign * angle
            standing = d["pivot"][1] < d["eye"][1]
            out[f"{name}_shackle_angle"] = np.sign(away) * np.pi - away if standing else away
            to_pivot, to_fixed = np.subtract(d["pivot"], hang), np.subtract(d["fixed"], hang)
            cosine = to_pivot @ to_fixed / np.linalg.norm(to_pivot) / np.linalg.norm(to_fixed)
            out[f"{name}_shackle_opening"] = np.arccos(cosine)
        if "stop" in d:
            out["left_bump_remaining"] = d["stop"] - (lz - d["seat"][1])
            out["right_bump_remaining"] = d["stop"] - (rz - d["seat"][1])
        for name, side in (("left", 1), ("right", -1)) if "coil" in d else ():
            out[f"{name}_eye_length"] = self.eyes(q, heave, roll, side)[0]
            out[f"{name}_coil_remaining"] = out[f"{name}_eye_length"] - d["coil"]["offset"] - d["coil"]["solid"]
            out[f"{name}_damper_remaining"] = out[f"{name}_eye_length"] - d["coil"]["closed"]
        if "bar" in d:
            (left, right), _ = self.levers(q, heave, roll)
            sign = np.sign(self.levers(self.solve(1e-3, 0.0)[0], 1e-3, 0.0)[0][0])
            out["bar_angle"], out["bar_twist"] = sign * 0.5 * (left + right), sign * (left - right)
        return {name: float(value) for name, value in out.items()}

    def helped(self, heave, roll):
        """Loads and ratios of coil and bar."""
        d = self.d

        def slope(of, h):
            one = (of(h) - of(-h)) / (2 * h)
            half = (of(h / 2) - of(-h / 2)) / h
            return half + (half - one) / 3

        def state(dz, phi):
            return self.solve(heave + dz, roll + phi)[0], heave + dz, roll + phi

        def side_energy(at, side):
            return lambda by: self.leaf(state(by, 0.0)[0], at) + self.coil(*state(by, 0.0), side)

        force, ratio = {}, {}
        for name, at, side in (("left", 3, 1), ("right", 6, -1)):
            force[f"{name}_wheel_force"] = slope(side_energy(at, side), 2e-3)
            length = self.eyes(*state(0.0, 0.0), side)[0]
            force[f"{name}_coil_force"] = d["coil"]["rate"] * (d["coil"]["free"] - length + d["coil"]["offset"])
            ratio[f"{name}_motion_ratio"] = -slope(lambda by: self.eyes(*state(by, 0.0), side)[0], 2e-3)
            rolled = slope(lambda by: self.eyes(*state(0.0, by), side)[0], 2e-3)
            ratio[f"{name}_roll_motion_ratio"] = -rolled / (np.cos(roll) * side * d["half_track"])

        def twist(by):
            (left, right), radius = self.levers(*state(0.0, by))
            return (left - right) * radius

        sign = np.sign(self.levers(self.solve(1e-3, 0.0)[0], 1e-3, 0.0)[0][0])
        ratio["bar_motion_ratio"] = sign * slope(twist, 2e-3) / (2 * np.cos(roll) * d["half_track"])
        return [{key: float(value) for key, value in of.items()} for of in (force, ratio)]

    def slopes(self, heave, roll):
        def slope(of, h):
            one = (of(h) - of(-h)) / (2 * h)
            half = (of(h / 2) - of(-h / 2)) / h
            return half + (half - one) / 3

        def load(by):
            lift = self.solve(heave + by, roll)[1]
            return lift.sum() + self.coil_lift.sum()

        def moment(by):
            return self.solve(heave, roll + by)[2]

        def contact(by):
            q = self.solve(heave + by, roll)[0]
            return q[0] + self.d["radius"] * q[2]

        d = self.d
        path = slope(contact, 4e-3)
        anti = -path * d["wheelbase"] / d["height"]
        return {
            "wheel_rate": float(0.5 * slope(load, 4e-3)),
            "roll_stiffness": float(slope(moment, 4e-3)),
            "roll_steer": float(slope(lambda by: self.solve(heave, roll + by)[0][1], 4e-3)),
            "side_view_angle": float(np.arctan(path)),
            "brake_anti_pitch": float(anti * d["brake"]),
            "drive_anti_pitch": float(anti * d["drive"]),
        }

    def wind_up(self, heave, torque):
        before = self.solve(heave, 0.0)[0]
        q, lift, _ = self.solve(heave, 0.0, torque / self.d["radius"])
        return {
            "wind_up_angle": float(q[2] - before[2]),
            "wheelbase_change": float(-(q[0] - before[0])),
            "spring_load": float(lift[:4].sum()),
        }

    def droop(self):
        """The least heave with a solution near the one before, by halving; the fold is where the shackle is in line."""
        good, step, last = 0.0, 0.02, None
        while step > 1e-6:
            try:
                q = self.solve(good - step, 0.0)[0]
                if last is not None and np.abs(q[3:] - last[3:]).max() > 0.3:
                    raise AssertionError("another branch")
                good, last = good - step, q
            except (AssertionError, np.linalg.LinAlgError):
                step /= 2
        return good


def elastica(d, heave):
    """One spring at ride height as drawn (arcs) under its load: seat raised by `heave`, free to turn about the axle's middle. Its halves have one
    section where they fade; otherwise their width tapers evenly to nothing at the eye, which then stands on the leaf. Returns forward shift of
    the axle's middle, its pitch and the vertical load."""
    model = Axle(d)
    tapered = d["fading"] == 0
    assert not (tapered and d["offset"])
    a, b = model.halves
    lengths = np.array([a.length, b.length])
    levers = lengths + d["clamp"] / 2
    loads = levers[::-1] / levers.sum()
    bending = d["rate"] * np.sum(loads**2 * lengths**3) / (2 if tapered else 3)  # E I at the clamp; a cantilever deflects by F L^3 / 2 E I or / 3 E I
    seat = np.subtract(d["seat"], d["centre"])
    offset = d["offset"]

    def curved(half, s, away, slope, force):
        """Change of curvature at `s` under a force at the eye so far away; where a taper ends moment and section vanish together."""
        moment = away[0] * force[1] - away[1] * force[0]
        if not tapered:
            return moment / bending
        left = 1 - s / half.length
        end = half.length * (force[1] * np.cos(slope) - force[0] * np.sin(slope))
        return np.where(left < 1e-3, end, moment / np.maximum(left, 1e-3)) / bending

    def shape(free, forces, pitch):
        """Both halves from the clamp outward under a force at each eye, forward and up; curvature over the free one is moment over E I.
        Local directions: outward and up along the turned seat."""
        ends = []
        for half, curvature, force in zip(model.halves, free, forces):
            # To local directions; the moment about the place s of a force at the eye.
            p, q = turned(-(d["angle"] + pitch), *force)
            p = half.outward * p

            # y: outward, up, slope; the eye's place is a parameter.
            def slopes(s, y, eye):
                bent = curved(half, s, (eye[0] - y[0], eye[1] - y[1]), y[2], (p, q))
                return np.vstack([np.cos(y[2]), np.sin(y[2]), curvature(s) + bent])

            def ends_at(y0, y1, eye):
                ex = y1[0] - offset * np.sin(y1[2])
                ez = y1[1] + offset * np.cos(y1[2])
                return np.array([y0[0] - half.clamp, y0[1], y0[2], ex - eye[0], ez - eye[1]])

            s = np.linspace(0, half.length, 41)
            guess = np.vstack([half.clamp + s, 0 * s, half.slope * s / half.length])
            found = solve_bvp(slopes, ends_at, s, guess, p=half.eye(0.0), tol=1e-9, max_nodes=20000)
            assert found.success, found.message
            ends.append((turned(d["angle"] + pitch, half.outward * found.p[0], found.p[1])))
        return ends

    # Force at the fixed eye (2), tension of the shackle, then place and pitch.
    pivot = np.array(d["pivot"])

    def equations(u, z, free):
        fx, fz, tension, x, pitch, extra = u
        fx, fz, tension = fx * 1e4, fz * 1e4, tension * 1e4
        p, up = turned(pitch, *seat)
        sx, sz = x + p, d["centre"][1] + z + up
        # Direction of the shackle at the solved place of its eye: iterate through `extra`, its angle.
        along = np.array([np.sin(extra), -np.cos(extra)])  # from the pivot to the eye
        shackle_force = -tension * along  # of the shackle on the spring, towards the pivot
        ends = shape(free, [(fx, fz), tuple(shackle_force)], pitch)
        eye_f = np.array([sx + ends[0][0], sz + ends[0][1]])
        eye_s = np.array([sx + ends[1][0], sz + ends[1][1]])
        middle = np.array([x, d["centre"][1] + z])
        moment = sum((e - middle)[0] * f[1] - (e - middle)[1] * f[0] for e, f in ((eye_f, (fx, fz)), (eye_s, shackle_force)))
        hang = pivot + model.shackle * along
        return [eye_f[0] - d["fixed"][0], eye_f[1] - d["fixed"][1], eye_s[0] - hang[0], eye_s[1] - hang[1], moment / 1e4, (fx + shackle_force[0]) / 1e4], -(fz + shackle_force[1])

    # At ride height forces follow from statics: three unknowns, load, moment, and no force forward (the axle is free along).
    start = model.start()
    along = np.array([np.sin(start[5]), -np.cos(start[5])])
    middle = np.array(d["centre"])
    ef, es = np.array(d["fixed"]) - middle, np.array(d["eye"]) - middle
    system = np.array([[1, 0, -along[0]], [0, 1, -along[1]], [-ef[1], ef[0], -(es[0] * along[1] - es[1] * along[0])]])
    fx, fz, tension = np.linalg.solve(system, [0, -d["load"], 0])
    free = []
    for half, force in zip(model.halves, ((fx, fz), tuple(-tension * along))):
        p, q = turned(-d["angle"], *force)
        p = half.outward * p
        h, v = half.eye(0.0)
        k = half.slope / half.length

        def curvature(s, half=half, p=p, q=q, h=h, v=v, k=k):
            if abs(k) < 1e-12:
                px, pz = half.clamp + s, 0 * s
            else:
                px, pz = half.clamp + np.sin(k * s) / k, (1 - np.cos(k * s)) / k
            return k - curved(half, s, (h - px, v - pz), k * s, (p, q))

        free.append(curvature)
    u = np.array([fx / 1e4, fz / 1e4, tension / 1e4, d["centre"][0], 0.0, start[5]])
    rest, load = equations(u, 0.0, free)
    assert np.abs(rest).max() < 1e-7 and abs(load - d["load"]) < 1e-3, (rest, load)
    steps = max(1, int(np.ceil(abs(heave) / 0.02)))
    for share in np.linspace(0, 1, steps + 1)[1:]:
        u, _, ok, message = fsolve(lambda u: equations(u, share * heave, free)[0], u, xtol=1e-9, epsfcn=1e-8, full_output=True)
        miss, load = equations(u, share * heave, free)
        assert np.abs(miss).max() < 1e-6, (miss, message)
    return u[3] - d["centre"][0], u[4], load


def document(d, **more):
    def point(x, y, z):
        return {"x": f"{x} m", "y": f"{y} m", "z": f"{z} m"}

    side = d["base"] / 2
    spring = {name: point(d[key][0], side, d[key][1]) for name, key in (("fixed_eye", "fixed"), ("shackle_eye", "eye"), ("shackle_pivot", "pivot"), ("seat", "seat"))}
    spring |= {"seat_angle": f"{d['angle']} rad", "clamped_length": f"{d['clamp']} m", "eye_offset": f"{d['offset']} m"}
    spring |= {"form": "uniform_section" if d["fading"] else "uniform_strength", "load": f"{d['load']} N"}
    if "coil" in d:
        on = d["coil"]
        coil = {"rate": f"{on['rate']} N/m", "free_length": f"{on['free']} m", "solid_length": f"{on['solid']} m", "seat_offset": f"{on['offset']} m"}
        damper = {"open_length": f"{on['open']} m", "closed_length": f"{on['closed']} m", "gas_force": f"{on['gas']} N"}
        more["coil_over"] = {"body_eye": point(*on["body"]), "axle_eye": point(*on["axle"]), "spring": coil, "damper": damper}
    if "bar" in d:
        bar = {name: point(*d["bar"][key]) for name, key in (("link_eye", "eye"), ("lever_end", "end"), ("lever_pivot", "pivot"))}
        more["anti_roll_bar"] = {"bearings": d["bar"]["carried_by"], **bar}
    return {
        "axle": "rear",
        "wheel": {"centre": point(d["centre"][0], d["half_track"], d["centre"][1]), "camber": "0 rad", "toe": "0 rad", "loaded_radius": f"{d['radius']} m"},
        "leaf": spring,
        "spring": {"rate": f"{d['rate']} N/m"},
        "bump_clearance": f"{d['stop']} m",
        "braking": {"axle_share": d["brake"], "centre_of_gravity_height": f"{d['height']} m", "wheelbase": f"{d['wheelbase']} m"},
        "drive_share": d["drive"],
        **more,
    }


COMMON = {"half_track": 0.81, "radius": 0.38, "wheelbase": 3.3, "height": 1.1, "brake": 0.4, "drive": 1.0, "stop": 0.09}
AXLES = {
    "strength": {
        "fixed": (0.64, 0.545), "eye": (-0.71, 0.555), "pivot": (-0.685, 0.67), "seat": (0.0, 0.475), "centre": (0.0, 0.39), "angle": 0.0,
        "clamp": 0.14, "offset": 0.0, "fading": 0.0, "load": 9800.0, "rate": 110000.0, "base": 1.04, **COMMON,
    },
    "section": {
        "fixed": (0.52, 0.36), "eye": (-0.66, 0.4), "pivot": (-0.69, 0.49), "seat": (0.01, 0.31), "centre": (0.0, 0.35), "angle": -0.03,
        "clamp": 0.1, "offset": 0.018, "fading": 1.0, "load": 3400.0, "rate": 26000.0, "base": 0.96, **COMMON,
    },
    "standing shackle": {
        "fixed": (0.6, 0.48), "eye": (-0.62, 0.45), "pivot": (-0.6, 0.35), "seat": (0.0, 0.43), "centre": (0.0, 0.37), "angle": 0.02,
        "clamp": 0.12, "offset": -0.01, "fading": 0.0, "load": 6000.0, "rate": 60000.0, "base": 1.0, **COMMON,
    },
}
# With a helper coil that leans both ways off the axle's middle, and a bar on either of the two.
COIL = {
    "body": (0.06, 0.42, 0.86), "axle": (-0.05, 0.5, 0.46), "rate": 32000.0, "free": 0.36, "solid": 0.14, "offset": 0.15,
    "gas": 160.0, "open": 0.56, "closed": 0.31,
}
BARS = {
    "body": {"carried_by": "body", "eye": (-0.06, 0.45, 0.36), "end": (-0.07, 0.46, 0.52), "pivot": (0.15, 0.35, 0.53)},
    "axle": {"carried_by": "axle", "eye": (0.2, 0.45, 0.62), "end": (0.19, 0.47, 0.42), "pivot": (-0.02, 0.47, 0.41)},
}
STATES = [(-0.05, 0.0), (0.0, -0.03), (0.03, 0.0), (0.06, 0.05), (-0.02, -0.06)]


def rows():
    whole = f"tests/scripts/leaf_axle.py: scipy {scipy.__version__}, all unknowns at once by Newton's method, residual below 1e-11"
    beam = f"tests/scripts/leaf_axle.py: scipy {scipy.__version__} solve_bvp, both halves as thin beams in large bending, no shape assumed"
    base = {"model": "suspension.LeafAxle", "provenance": "independent script", "confidence": "high"}
    out = []

    def add(name, method, arguments, d, expected, tolerance, source, **more):
        out.append({"id": f"leaf-axle-{name}", "model": base["model"], "method": method, "arguments": arguments, "inputs": document(d), "expected": expected, "tolerance": tolerance, "source": source, "provenance": base["provenance"], "confidence": "high"})

    for title, d in AXLES.items():
        name, model = title.replace(" ", "-"), Axle(d)
        for heave, roll in STATES:
            at, arguments = f"{name}-{heave * 1e3:+.0f}-{roll * 1e3:+.0f}", {"heave": heave, "roll": roll}
            place = model.results(heave, roll)
            loads = {key: place.pop(key) for key in ("left_spring_load", "right_spring_load")}
            add(at, "at", arguments, d, place, {"abs": 2e-9}, whole)
            add(f"{at}-load", "at", arguments, d, loads, {"rel": 1e-8}, whole)
        for heave, roll in STATES[1:4]:
            at, arguments = f"{name}-{heave * 1e3:+.0f}-{roll * 1e3:+.0f}", {"heave": heave, "roll": roll}
            slopes = model.slopes(heave, roll)
            stiff = {key: slopes.pop(key) for key in ("wheel_rate", "roll_stiffness")}
            add(f"{at}-slope", "at", arguments, d, slopes, {"abs": 1e-6}, f"{whole}; central differences of solutions")
            add(f"{at}-rate", "at", arguments, d, stiff, {"rel": 1e-6}, f"{whole}; central differences of solutions")
        for torque in (1500.0, -2500.0):
            wound = model.wind_up(0.02, torque)
            load = {"spring_load": wound.pop("spring_load")}
            arguments = {"heave": 0.02, "torque": torque}
            add(f"{name}-wound-{torque:+.0f}", "wind_up", arguments, d, wound, {"abs": 2e-9}, whole)
            add(f"{name}-wound-{torque:+.0f}-load", "wind_up", arguments, d, load, {"rel": 1e-8}, whole)
    helped = Axle({**AXLES["strength"], "coil": COIL})
    for mount, bar in BARS.items():
        # A bar carries nothing here: what is solved serves both.
        d, name = {**helped.d, "bar": bar}, f"helped-{mount}"
        model, helped.d = helped, d
        for heave, roll in ((0.0, 0.0), (0.05, 0.0), (-0.03, 0.04)):
            at, arguments = f"{name}-{heave * 1e3:+.0f}-{roll * 1e3:+.0f}", {"heave": heave, "roll": roll}
            place = model.results(heave, roll)
            loads = {key: place.pop(key) for key in ("left_spring_load", "right_spring_load")}
            add(at, "at", arguments, d, place, {"abs": 3e-9}, whole)
            (force, ratio), slopes = model.helped(heave, roll), model.slopes(heave, roll)
            force |= {key: slopes.pop(key) for key in ("wheel_rate", "roll_stiffness")}
            if roll == 0.0:
                force |= loads
            add(f"{at}-load", "at", arguments, d, force, {"rel": 1e-6}, f"{whole}; slopes of energies and loads by central differences")
            add(f"{at}-slope", "at", arguments, d, ratio | slopes, {"abs": 1e-6}, f"{whole}; central differences of solutions")
        wound = model.wind_up(0.02, 2000.0)
        load = {"spring_load": wound.pop("spring_load")}
        arguments = {"heave": 0.02, "torque": 2000.0}
        add(f"{name}-wound", "wind_up", arguments, d, wound, {"abs": 3e-9}, whole)
        add(f"{name}-wound-load", "wind_up", arguments, d, load, {"rel": 1e-8}, whole)
    for title in ("strength", "section"):
        least = {"droop": Axle(AXLES[title]).droop(), "droop_end": "shackle"}
        add(f"{title}-range", "travel_range", {"roll": 0.0}, AXLES[title], least, {"abs": 1e-5}, f"{whole}; no solution beyond")
    # What the assumed shape misses: most where the shackle leans and its force with it.
    for title, fading, place, force in (("strength", 1.0, 3e-5, 5e-4), ("section", 1.0, 1.5e-4, 2.5e-3), ("strength", 0.0, 3e-5, 2e-4)):
        d = {**AXLES[title], "fading": fading}
        for heave in (-0.05, 0.03, 0.07):
            shift, pitch, load = elastica(d, heave)
            arguments, at = {"heave": heave, "roll": 0.0}, f"{'beam' if fading else 'taper'}-{title}-{heave * 1e3:+.0f}"
            source = beam if fading else f"{beam}, their width tapering evenly to nothing at the eye"
            add(at, "at", arguments, d, {"wheelbase_change": -float(shift), "pinion_angle_change": float(pitch)}, {"abs": place}, source)
            add(f"{at}-load", "at", arguments, d, {"left_spring_load": float(load)}, {"rel": force}, source)
    return out


if __name__ == "__main__":
    print(",\n".join(json.dumps(row) for row in rows()))
