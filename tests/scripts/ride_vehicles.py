"""Half and full car by other routes: matrices from energies, eigenvalues, quadrature, Lyapunov equations with the delay of the rear, initial-value problems of SciPy.

`rows()` gives the rows that `ride.py` writes; `compared()` what the test `ride.rs` compares of tables, into `ride_vehicles.json`.
"""

from __future__ import annotations

import numpy as np
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.linalg import eig, expm, solve_continuous_lyapunov
from scipy.special import k1

SCIPY = f"scipy {scipy.__version__}"
G0 = 9.80665
# Mass, pitch and roll inertia, distances, tracks, front wheel, rear wheel (unsprung mass, rate, damping, tyre rate, tyre damping), bars, seat.
VEHICLES = {
    "van": (2100.0, 3900.0, 900.0, 1.2, 1.7, 1.72, 1.70, (62.0, 38e3, 2900.0, 260e3, 0.0), (75.0, 40e3, 3100.0, 260e3, 0.0), 18e3, 0.0, 0.8, 0.45),
    "roadster": (620.0, 680.0, 210.0, 1.15, 1.15, 1.40, 1.36, (28.0, 19e3, 1300.0, 180e3, 60.0), (31.0, 22e3, 1450.0, 180e3, 60.0), 9e3, 4e3, -0.35, -0.33),
}


def coherence(n: float, track: float) -> float:
    x = 2 * np.pi * n * track
    return float(x * k1(x)) if x > 0 else 1.0


def coherence_over_directions(n: float, track: float) -> float:
    """Waves of all directions: a density over both wave numbers of the third power, whose integral over the lateral one is that of a road of waviness 2."""
    part = lambda m: (n * n + m * m) ** -1.5
    return quad(part, 0, np.inf, weight="cos", wvar=2 * np.pi * track, limlst=500)[0] / quad(part, 0, np.inf)[0]


for n, track in ((0.05, 1.5), (0.3, 1.5), (1.0, 1.2)):
    np.testing.assert_allclose(coherence(n, track), coherence_over_directions(n, track), rtol=1e-6)


class Car:
    """`M q'' + C q' + K q = B (k_t z + c_t z')` from the energies of its parts, by second differences, which are exact for squares."""

    def __init__(self, vehicle: tuple, full: bool) -> None:
        mass, pitch, roll, a, b, tf, tr, front, rear, bar_f, bar_r, sx, sy = vehicle
        if full:
            self.wheels = [(a, tf / 2, front), (a, -tf / 2, front), (-b, tr / 2, rear), (-b, -tr / 2, rear)]
            self.bars = [(0, 1, bar_f), (2, 3, bar_r)]
            self.inertia = [mass, pitch, roll]
        else:
            double = lambda wheel: tuple(2 * x for x in wheel)
            self.wheels = [(a, 0.0, double(front)), (-b, 0.0, double(rear))]
            self.bars, self.inertia = [], [mass, pitch]
        self.body, self.full, self.late = len(self.inertia), full, a + b
        self.seat = self.arm(sx, sy)
        count = self.body + len(self.wheels)
        self.m = np.diag(self.inertia + [wheel[2][0] for wheel in self.wheels])
        self.k = self.hessian(lambda q: self.energy(q, 1, 3, True), count)
        self.c = self.hessian(lambda q: self.energy(q, 2, 4, False), count)
        self.load = [(mass * G0 * share / (2 if full else 1) + wheel[2][0] * G0) for share, wheel in zip([b / (a + b)] * (2 if full else 1) + [a / (a + b)] * (2 if full else 1), self.wheels, strict=True)]

    def arm(self, x: float, y: float) -> np.ndarray:
        out = np.zeros(self.body + len(self.wheels))
        out[: self.body] = [1.0, -x, y][: self.body]
        return out

    def height(self, q: np.ndarray, x: float, y: float) -> float:
        return q[0] - x * q[1] + (y * q[2] if self.full else 0.0)

    def energy(self, q: np.ndarray, suspension: int, tyre: int, bars: bool) -> float:
        travel = [q[self.body + i] - self.height(q, x, y) for i, (x, y, _) in enumerate(self.wheels)]
        total = sum(0.5 * wheel[suspension] * t**2 + 0.5 * wheel[tyre] * q[self.body + i] ** 2 for i, ((_, _, wheel), t) in enumerate(zip(self.wheels, travel, strict=True)))
        if bars:
            # A bar twisted by travels that are opposite and equal gives its rate times either.
            total += sum(2 * 0.5 * rate * ((travel[left] - travel[right]) / 2) ** 2 for left, right, rate in self.bars)
        return total

    @staticmethod
    def hessian(energy, count: int) -> np.ndarray:
        e = np.eye(count)
        at = [energy(e[i]) for i in range(count)]
        return np.array([[energy(e[i] + e[j]) - at[i] - at[j] if i != j else 2 * at[i] for j in range(count)] for i in range(count)])

    def travels(self) -> list[np.ndarray]:
        e = np.eye(self.body + len(self.wheels))
        return [e[self.body + i] - self.arm(x, y) for i, (x, y, _) in enumerate(self.wheels)]

    def modes(self) -> list[dict]:
        n = len(self.m)
        inverse = np.linalg.inv(self.m)
        state = np.block([[np.zeros((n, n)), np.eye(n)], [-inverse @ self.k, -inverse @ self.c]])
        roots, vectors = eig(state)
        out = []
        for root, vector in sorted(zip(roots, vectors.T, strict=True), key=lambda on: abs(on[0])):
            if root.imag > 0:
                share = np.diag(self.m) * abs(vector[:n]) ** 2
                share = share / share.sum()
                half = len(self.wheels) // 2
                front, rear = share[self.body : self.body + half].sum(), share[self.body + half :].sum()
                out.append({"frequency": abs(root) / (2 * np.pi), "damping_ratio": -root.real / abs(root), "shares": [*map(float, share[: self.body]), float(front), float(rear)]})
        return out

    def amplitudes(self, f: float, speed: float, signs: list[float]) -> dict:
        s = 2j * np.pi * f
        half = len(self.wheels) // 2
        road = np.array([sign * (1 if i < half else np.exp(-s * self.late / speed)) for i, sign in enumerate(signs)])
        rate = np.array([wheel[3] + s * wheel[4] for _, _, wheel in self.wheels])
        q = np.linalg.solve(self.m * s * s + self.c * s + self.k, np.concatenate([np.zeros(self.body), rate * road]))
        return {"centre": s * s * q[0], "seat": s * s * (self.seat @ q), "body": q[: self.body], "travel": np.array([t @ q for t in self.travels()]), "load": rate * (road - q[self.body :])}

    def on_road(self, roughness: float, speed: float, shortest: float, longest: float, wk) -> dict:
        count = len(self.wheels)
        track = np.mean([abs(y) for _, y, _ in self.wheels]) * 2
        rear = count - 1

        def squares(f: float) -> np.ndarray:
            alike = coherence(f / speed, track)
            total = np.zeros(7)
            waves = [([1.0] * count, (1 + alike) / 2)] + ([([1.0, -1.0] * (count // 2), (1 - alike) / 2)] if self.full else [])
            for signs, share in waves:
                on = self.amplitudes(f, speed, signs)
                gains = [on["centre"], on["seat"], wk(f) * on["seat"], on["travel"][0], on["travel"][rear], on["load"][0], on["load"][rear]]
                total += np.abs(gains) ** 2 * share
            return total * roughness * 0.01 * speed / f**2

        ends = np.geomspace(speed / longest, speed / shortest, 41)
        # Gauss-Legendre in the logarithm, many points a piece; twice as many must agree.
        found = []
        for points in (40, 60):
            x, w = np.polynomial.legendre.leggauss(points)
            sums = np.zeros(7)
            for low, high in zip(np.log(ends), np.log(ends[1:]), strict=False):
                for xi, wi in zip(x, w, strict=True):
                    f = np.exp((low + high) / 2 + xi * (high - low) / 2)
                    sums += squares(f) * f * wi * (high - low) / 2
            found.append(np.sqrt(sums))
        np.testing.assert_allclose(found[0], found[1], rtol=1e-9)
        names = ["body_acceleration", "seat_acceleration", "weighted_acceleration", "front_suspension_travel", "rear_suspension_travel", "front_tyre_load_variation", "rear_tyre_load_variation"]
        out = dict(zip(names, map(float, found[1]), strict=True))
        out["front_tyre_load_share"] = out["front_tyre_load_variation"] / self.load[0]
        out["rear_tyre_load_share"] = out["rear_tyre_load_variation"] / self.load[rear]
        return out

    def lyapunov(self, roughness: float, speed: float) -> dict:
        """All wavelengths, a road whose velocity is white noise: `w(t)` in front and `w(t - T)` behind. States: travels, tyre deflections, velocities."""
        n, w = len(self.m), len(self.wheels)
        travels, inverse = np.array(self.travels()), np.linalg.inv(self.m)
        wheel = lambda at: np.array([on[2][at] for on in self.wheels])
        a = np.zeros((2 * w + n, 2 * w + n))
        a[:w, 2 * w :] = travels
        a[w : 2 * w, 2 * w + self.body :] = -np.eye(w)
        a[2 * w :, :w] = -inverse @ travels.T @ np.diag(wheel(1))
        a[2 * w + self.body :, w : 2 * w] = np.diag(wheel(3) / wheel(0))
        a[2 * w :, 2 * w :] = -inverse @ self.c
        front, rear = np.zeros(len(a)), np.zeros(len(a))
        front[w], rear[w + 1] = 1.0, 1.0
        density = (2 * np.pi) ** 2 * roughness * 0.01 * speed / 2
        met = expm(a * self.late / speed) @ front
        noise = np.outer(front, front) + np.outer(rear, rear) + np.outer(met, rear) + np.outer(rear, met)
        p = solve_continuous_lyapunov(a, -density * noise)
        mean = lambda c: float(np.sqrt(c @ p @ c))
        e = np.eye(len(a))
        return {"body_acceleration": mean(a[2 * w]), "seat_acceleration": mean(self.seat[: self.body] @ a[2 * w : 2 * w + self.body]), "front_suspension_travel": mean(e[0]), "rear_suspension_travel": mean(e[1])}

    def motion(self, roads: list, breaks: list[float], times: np.ndarray) -> dict:
        """Roads as pairs of functions, height and rate; what a step does to a damped tyre is an impulse."""
        inverse = np.linalg.inv(self.m)
        n = len(self.m)

        def slope(t: float, x: np.ndarray) -> np.ndarray:
            t = min(max(t, begin + 1e-12), end - 1e-12)
            push = np.concatenate([np.zeros(self.body), [wheel[3] * road[0](t) + wheel[4] * road[1](t) for (_, _, wheel), road in zip(self.wheels, roads, strict=True)]])
            return np.concatenate([x[n:], inverse @ (push - self.k @ x[:n] - self.c @ x[n:])])

        state, out = np.zeros(2 * n), []
        before = [0.0] * len(roads)
        ends = sorted({0.0, *(b for b in breaks if b < times[-1]), times[-1]})
        for begin, end in zip(ends, ends[1:], strict=False):
            for i, road in enumerate(roads):
                jump = road[0](begin + 1e-12) - before[i]
                if abs(jump) > 1e-9:
                    wheel = self.wheels[i][2]
                    state[n + self.body + i] += wheel[4] / wheel[0] * jump
                before[i] = road[0](end - 1e-12)
            if not out:
                out.append(state.copy())
            at = times[(times > begin + 1e-12) & (times <= end + 1e-12)]
            solved = solve_ivp(slope, (begin, end), state, method="DOP853", rtol=1e-11, atol=1e-13, t_eval=np.union1d(np.minimum(at, end), [end]))
            state = solved.y[:, -1].copy()
            out.extend(solved.y.T[: len(at)])
        x = np.array(out)
        q = x[:, :n]
        seat = [self.seat[: self.body] @ (inverse @ (-self.k @ y[:n] - self.c @ y[n:]))[: self.body] for y in x]
        found = {"body_displacement": q[:, 0], "pitch": q[:, 1], "seat_acceleration": np.array(seat)}
        if self.full:
            found["roll"] = q[:, 2]
        for name, travel in zip(self.names(), self.travels(), strict=True):
            found[f"{name}_suspension_travel"] = q @ travel
        return found

    def names(self) -> list[str]:
        return ["front_left", "front_right", "rear_left", "rear_right"] if self.full else ["front", "rear"]


def document(vehicle: tuple, full: bool) -> dict:
    mass, pitch, roll, a, b, tf, tr, front, rear, bar_f, bar_r, sx, sy = vehicle
    number = lambda x, unit: f"{x:.17g} {unit}"
    wheel = lambda on: {"unsprung_mass": number(on[0], "kg"), "wheel_rate": number(on[1], "N/m"), "wheel_damping": number(on[2], "N·s/m"), "tyre_rate": number(on[3], "N/m")} | ({"tyre_damping": number(on[4], "N·s/m")} if on[4] else {})
    made = {"sprung_mass": number(mass, "kg"), "pitch_inertia": number(pitch, "kg·m²")}
    if full:
        made["roll_inertia"] = number(roll, "kg·m²")
    made |= {"front_distance": number(a, "m"), "rear_distance": number(b, "m")}
    if full:
        made |= {"front_track": number(tf, "m"), "rear_track": number(tr, "m")}
    made |= {"front": wheel(front), "rear": wheel(rear)}
    if full:
        made |= {f"{name}_bar_rate": number(rate, "N/m") for name, rate in (("front", bar_f), ("rear", bar_r)) if rate}
    made["seat_forward"] = number(sx, "m")
    if full:
        made["seat_left"] = number(sy, "m")
    return made


def rows(row, refused, wk) -> None:
    for name, vehicle in VEHICLES.items():
        for full in (False, True):
            car, model = Car(vehicle, full), "ride.FullCar" if full else "ride.HalfCar"
            for roughness, speed in ((16e-6, 30.0), (256e-6, 15.0)):
                band = {"roughness": roughness, "speed": speed, "shortest_wave": 0.35, "longest_wave": 91.0}
                found = car.on_road(roughness, speed, 0.35, 91.0, wk)
                row(f"{'full' if full else 'half'}-road-{name}-{roughness * 1e6:g}", {"model": model, "method": "on_road", "arguments": band}, document(vehicle, full), found, {"rel": 1e-7}, f"quadrature over frequency of the response solved from matrices that follow from energies, delay exact, Wk by the real magnitudes of ISO 8041-1{', coherence by scipy.special.k1' if full else ''}, {SCIPY}", "own equations")
    vehicle = VEHICLES["van"]
    for roughness, speed in ((16e-6, 30.0), (256e-6, 15.0)):
        band = {"roughness": roughness, "speed": speed, "shortest_wave": 0.01, "longest_wave": 1e5}
        row(f"half-lyapunov-{roughness * 1e6:g}", {"model": "ride.HalfCar", "method": "on_road", "arguments": band}, document(vehicle, False), Car(vehicle, False).lyapunov(roughness, speed), {"rel": 1e-5}, f"Lyapunov equation of a road whose velocity is white noise, later at the rear, all wavelengths, {SCIPY}", "own equations")
    band = {"roughness": 16e-6, "speed": 30.0, "shortest_wave": 0.35, "longest_wave": 91.0}
    for full in (False, True):
        name, what = ("full", "ride.FullCar") if full else ("half", "ride.HalfCar")
        refused(f"{name}-upside-down", {"model": what, "method": "on_road", "arguments": band | {"shortest_wave": 91.0, "longest_wave": 0.35}}, document(vehicle, full), "longest_wave")
        made = document(vehicle, full)
        refused(f"{name}-no-damping-below-nothing", {"model": what}, made | {"front": made["front"] | {"wheel_damping": "-1 N·s/m"}}, "front")
    refused("full-no-track", {"model": "ride.FullCar"}, document(vehicle, True) | {"rear_track": "0 m"}, "rear_track")


TIMES = np.linspace(0, 1.5, 301)
PROFILE = ([0.0, 0.3, 1.1, 1.25, 4.0, 15.0], [0.0, 0.02, -0.01, 0.03, 0.0, 0.0], [0.0, 0.0, 0.015, 0.0, -0.01, 0.0])


def compared() -> list[dict]:
    out, speed = [], 10.0
    for name, vehicle in VEHICLES.items():
        for full in (False, True):
            car = Car(vehicle, full)
            late = car.late / speed
            sides = 2 if full else 1

            def later(road, delay):
                return (lambda t: road[0](t - delay) if t >= delay else 0.0, lambda t: road[1](t - delay) if t >= delay else 0.0)

            def straight(heights):
                x = PROFILE[0]

                def rate(t, heights=heights, x=x):
                    i = min(max(np.searchsorted(x, speed * t, side="right") - 1, 0), len(x) - 2)
                    return speed * (heights[i + 1] - heights[i]) / (x[i + 1] - x[i]) if speed * t < x[-1] else 0.0

                return (lambda t, heights=heights: float(np.interp(speed * t, x, heights)), rate)

            sine = lambda height: (lambda t: height * np.sin(np.pi * t / 0.05) if t < 0.05 else 0.0, lambda t: height * np.pi / 0.05 * np.cos(np.pi * t / 0.05) if t < 0.05 else 0.0)
            ramp = lambda height: (lambda t: height * min(t / 0.03, 1.0), lambda t: height / 0.03 if t < 0.03 else 0.0)
            step = lambda height: (lambda t: height, lambda t: 0.0)
            made = {
                "step": ([step(0.04), step(0.0)][:sides], []),
                "ramp": ([ramp(0.08), ramp(0.03)][:sides], [0.03]),
                "half_sine": ([sine(0.05), sine(0.05)][:sides], [0.05]),
                "profile": ([straight(PROFILE[1]), straight(PROFILE[2])][:sides], [x / speed for x in PROFILE[0][1:]]),
            }
            motions = {}
            for road, (front, breaks) in made.items():
                roads = front + [later(on, late) for on in front]
                found = car.motion(roads, [*breaks, late, *(late + b for b in breaks)], TIMES)
                motions[road] = {n: [float(f"{x:.12g}") for x in v[::10]] for n, v in found.items()}
            responses = []
            for signs in [[1.0] * (2 * sides)] + ([[1.0, -1.0, 1.0, -1.0]] if full else []):
                for f in (0.3, 1.2, 5.0, 11.0, 25.0):
                    on = car.amplitudes(f, speed, signs)
                    flat = {"body_displacement": on["body"][0], "pitch": on["body"][1], "seat_acceleration": on["seat"]} | ({"roll": on["body"][2]} if full else {})
                    for wheel, travel, load in zip(car.names(), on["travel"], on["load"], strict=True):
                        flat |= {f"{wheel}_suspension_travel": travel, f"{wheel}_tyre_load_variation": load}
                    responses.append({"against": signs[-1] < 0, "frequency": f, **{n: float(abs(x)) for n, x in flat.items()}})
            out.append({"name": name, "full": full, "document": document(vehicle, full), "modes": car.modes(), "responses": responses, "motions": motions})
    return out
