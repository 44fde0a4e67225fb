"""Reference numbers of `ride`: our own equations of motion, written down again, by state space, Lyapunov equations, eigenvalues and initial-value problems of SciPy.

Writes `rows/ride.json`, and `ride_motion.json` and `ride_vehicles.json`, which the test `ride.rs` compares. Half and full car are in `ride_vehicles.py`.
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.linalg import eigvals, solve_continuous_lyapunov

import ride_vehicles

HERE = Path(__file__).resolve().parent.parent
SCIPY = f"scipy {scipy.__version__}"
G0 = 9.80665
CARS = {1: (300.0, 40.0, 22e3, 1500.0, 190e3), 2: (400.0, 55.0, 30e3, 2200.0, 240e3), 3: (220.0, 30.0, 45e3, 2500.0, 220e3), 4: (500.0, 90.0, 60e3, 4000.0, 450e3)}
ROWS = []


def document(car, ct=0.0):
    ms, mu, k, c, kt = car
    made = {"sprung_mass": f"{ms:g} kg", "unsprung_mass": f"{mu:g} kg", "wheel_rate": f"{k:.10g} N/m", "wheel_damping": f"{c:g} N·s/m", "tyre_rate": f"{kt:.10g} N/m"}
    return made | ({"tyre_damping": f"{ct:g} N·s/m"} if ct else {})


def row(name, what, inputs, expected, tolerance, source, provenance, confidence="high", **more):
    if provenance == "own equations":
        source = f"tests/scripts/ride.py: {source}"
    ROWS.append({"id": name, **what, "inputs": inputs, "expected": expected, **({} if tolerance is None else {"tolerance": tolerance}), "source": source, "provenance": provenance, "confidence": confidence, **more})


def refused(name, what, inputs, argument, **more):
    # What the model refuses when it is built asks for no method.
    what = {"model": what["model"]} if "model" in what and argument in inputs else what
    row(name, what, inputs, {"error": True, "argument": argument}, None, "definition", "definition", **more)


def relative(car):
    """States: suspension travel, body velocity, tyre deflection, wheel velocity; the input is the road's velocity."""
    ms, mu, k, c, kt = car
    return np.array([[0, -1, 0, 1], [k / ms, -c / ms, 0, c / ms], [0, 0, 0, -1], [-k / mu, c / mu, kt / mu, -c / mu]]), np.array([[0.0], [0], [1], [0]])


def rms(car, roughness, speed):
    a, b = relative(car)
    # One-sided density of the road's velocity over frequency: (2 pi)^2 G n0^2 v; two-sided half of it.
    density = (2 * np.pi) ** 2 * roughness * 0.01 * speed / 2
    p = solve_continuous_lyapunov(a, -density * b @ b.T)
    mean = lambda c: float(np.sqrt(c @ p @ c))
    return mean(a[1]), mean(np.array([1.0, 0, 0, 0])), car[4] * mean(np.array([0, 0, 1.0, 0]))


def wk(f):
    """ISO 8041-1 as magnitudes, real arithmetic: the factors as the standard prints them."""
    if f == 0:
        return 0.0
    high = f**2 / np.sqrt(f**4 + 0.4**4)
    low = 100.0**2 / np.sqrt(f**4 + 100.0**4)
    transition = np.sqrt((f**2 + 12.5**2) / 12.5**2) * np.sqrt(12.5**4 * 0.63**2 / (f**4 * 0.63**2 + f**2 * 12.5**2 * (1 - 2 * 0.63**2) + 12.5**4 * 0.63**2))
    q = 0.91
    part = lambda f0: f**4 * q**2 + f**2 * f0**2 * (1 - 2 * q**2) + f0**4 * q**2
    step = np.sqrt(part(2.37) / part(3.35))
    return float(high * low * transition * step)


def response(car, ct, f):
    """Complex amplitudes from the equations of motion, solved as a linear system."""
    ms, mu, k, c, kt = car
    s = 2j * np.pi * f
    m = np.array([[ms * s * s + c * s + k, -(c * s + k)], [-(c * s + k), mu * s * s + (c + ct) * s + k + kt]])
    zs, zu = np.linalg.solve(m, [0, kt + ct * s])
    return zs, s * s * zs, zu - zs, (kt + ct * s) * (1 - zu)


def modes(car, ct=0.0):
    """Undamped frequencies of body and wheel, then frequency and damping ratio of each."""
    ms, mu, k, c, kt = car
    a = np.array([[0, 1, 0, 0], [-k / ms, -c / ms, k / ms, c / ms], [0, 0, 0, 1], [k / mu, c / mu, -(k + kt) / mu, -(c + ct) / mu]])
    swing = sorted((x for x in eigvals(a) if x.imag > 0), key=abs)
    free = np.sqrt(np.sort(eigvals(np.array([[k / ms, -k / ms], [-k / mu, (k + kt) / mu]])).real)) / (2 * np.pi)
    return [*free, *(x for one in swing for x in (abs(one) / (2 * np.pi), -one.real / abs(one)))]


MODES = ("body_undamped_frequency", "hop_undamped_frequency", "body_frequency", "body_damping_ratio", "hop_frequency", "hop_damping_ratio")
QC = lambda method, **arguments: {"model": "ride.QuarterCar", "method": method, "arguments": arguments}
for number, car in CARS.items():
    ms, mu, k, c, kt = car
    for ct in (0.0, 120.0):
        expected = dict(zip(MODES, modes(car, ct), strict=True))
        row(f"quarter-modes-{number}-{ct:g}", QC("modes"), document(car, ct), {n: float(x) for n, x in expected.items()}, {"rel": 1e-9}, f"eigenvalues of the state matrix, {SCIPY}", "own equations")
    for roughness, speed in ((16e-6, 20.0), (256e-6, 20.0), (1024e-6, 12.5)):
        acceleration, travel, load = rms(car, roughness, speed)
        band = {"roughness": roughness, "speed": speed, "shortest_wave": 1e-9, "longest_wave": 1e9}
        row(f"quarter-road-{number}-{roughness * 1e6:g}", QC("on_road", **band), document(car), {"body_acceleration": acceleration, "suspension_travel": travel, "tyre_load_variation": load, "tyre_load_share": load / ((ms + mu) * G0)}, {"rel": 1e-6}, f"Lyapunov equation of the white-noise velocity of the road, all wavelengths, {SCIPY}", "own equations")
        for ct in (0.0, 120.0):
            density = lambda f: roughness * 0.01 * speed / f**2
            ends, points = (speed / 91, speed / 0.35), [1.0, 1.5, 2.5, 8.0, 11.0, 16.0]
            mean = lambda g: float(np.sqrt(quad(lambda f: abs(g(f)) ** 2 * density(f), *ends, points=[p for p in points if ends[0] < p < ends[1]], limit=2000, epsrel=1e-11)[0]))
            found = {"body_acceleration": mean(lambda f: response(car, ct, f)[1]), "weighted_acceleration": mean(lambda f: wk(f) * response(car, ct, f)[1]), "suspension_travel": mean(lambda f: response(car, ct, f)[2]), "tyre_load_variation": mean(lambda f: response(car, ct, f)[3])}
            band = {"roughness": roughness, "speed": speed, "shortest_wave": 0.35, "longest_wave": 91.0}
            row(f"quarter-band-{number}-{roughness * 1e6:g}-{ct:g}", QC("on_road", **band), document(car, ct), found, {"rel": 1e-8}, f"quadrature over frequency (QUADPACK) of the response solved from the equations of motion, Wk by the real magnitudes of ISO 8041-1, {SCIPY}", "own equations")
words = {16e-6: "not uncomfortable", 4096e-6: "extremely uncomfortable"}
for roughness, word in words.items():
    row(f"quarter-words-{roughness * 1e6:g}", QC("on_road", roughness=roughness, speed=20.0, shortest_wave=0.35, longest_wave=91.0), document(CARS[1]), {"comfort": word}, {"rel": 1e-12}, "ISO 2631-1:1997 C.2.3, from memory; the weighted acceleration by quadrature lies well inside the band", "memory", "medium")
for case, road, expected in (("c004", (1, 1.6e-5), (0.3721695505831266, 0.002675584620026704, 196.05049883425633)), ("c005", (1, 2.56e-4), (1.4886782023325065, 0.010702338480106816, 784.2019953370253)), ("c009", (2, 1.6e-5), (0.37545288379566044, 0.00255575500390664, 248.45373666033078)), ("c010", (2, 2.56e-4), (1.5018115351826418, 0.01022302001562656, 993.8149466413231)), ("c016", (4, 6.4e-5), (1.0853154612266338, 0.004316690064071623, 896.9420352207813))):
    assert np.allclose(rms(CARS[road[0]], road[1], 20.0), expected, rtol=1e-9, atol=0), case
    row(case, QC("on_road", roughness=road[1], speed=20.0, shortest_wave=1e-9, longest_wave=1e9), document(CARS[road[0]]), dict(zip(("body_acceleration", "suspension_travel", "tyre_load_variation"), expected, strict=True)), {"rel": 1e-6}, "own state space; scipy 1.17.1; python-control 0.10.2; Lyapunov exact; ISO 8608 with exponent 2, one-sided density", "own equations")
for case, number, expected in (("c011", 3, (2.0698299400075597, 14.988260343362477, 2.160789925640913, 0.3050447830133511, 14.357318885646814, 0.47896182931606757)), ("c015", 4, (1.6356160292355537, 11.995946782454885, 1.6812211942707067, 0.3069696430233105, 11.670542169051812, 0.31337982097959854))):
    assert np.allclose(modes(CARS[number]), expected, rtol=1e-9, atol=0), case
    row(case, QC("modes"), document(CARS[number]), dict(zip(MODES, expected, strict=True)), {"rel": 1e-8}, "own state space; scipy 1.17.1; python-control 0.10.2; closed-form quadratic agrees to 1e-10", "own equations")
row("c032", QC("modes"), document((300.0, 1e-6, 22e3, 0.0, 190e3)), {"body_undamped_frequency": 1.2902673709208259}, {"rel": 1e-6}, "limit of a wheel without mass: ride rate", "definition")
for case, mass in (("c033", -1.0), ("c035", 0.0)):
    refused(case, QC("modes"), document((mass, 40.0, 22e3, 1500.0, 190e3)), "sprung_mass", note="The case names the sprung mass only.")
refused("quarter-band-upside-down", QC("on_road", roughness=16e-6, speed=20.0, shortest_wave=91.0, longest_wave=0.35), document(CARS[1]), "longest_wave")
refused("quarter-both-overdamped", QC("modes"), document((300.0, 40.0, 22e3, 1e6, 190e3), 1e6), "neither swings")

HC = lambda method, **arguments: {"model": "ride.HalfCar", "method": method, "arguments": arguments}
bodies = {"c027": (1200.0, 1500.0, 1.2, 1.4, 36e3, 40e3), "c029": (1000.0, 1440.0, 1.2, 1.2, 30e3, 30e3), "c030": (1000.0, 1650.0, 1.1, 1.5, 30e3, 34e3), "heavy-nose": (1500.0, 2100.0, 1.0, 1.7, 50e3, 36e3), "stiff-in-bounce": (1000.0, 4000.0, 1.3, 1.3, 40e3, 30e3)}
for name, (m, inertia, a, b, kf, kr) in bodies.items():
    # Wheel rates that with their tyres are half of each axle's ride rate.
    tyre = 250e3
    wheel = lambda axle: {"unsprung_mass": "40 kg", "wheel_rate": f"{1 / (2 / axle - 1 / tyre):.17g} N/m", "wheel_damping": "1500 N·s/m", "tyre_rate": f"{tyre:.17g} N/m"}
    inputs = {"sprung_mass": f"{m:g} kg", "pitch_inertia": f"{inertia:g} kg·m²", "front_distance": f"{a:g} m", "rear_distance": f"{b:g} m", "front": wheel(kf), "rear": wheel(kr)}
    # Coordinates of the ends, not of the centre: heights over the axles.
    flexibility = np.array([[1 / m + a * a / inertia, 1 / m - a * b / inertia], [1 / m - a * b / inertia, 1 / m + b * b / inertia]])
    squares, shapes = np.linalg.eig(flexibility @ np.diag([kf, kr]))
    centre = lambda shape: float("inf") if abs(shape[0] - shape[1]) < 1e-9 else a - (a + b) * shape[0] / (shape[0] - shape[1])
    found = sorted(((float(np.sqrt(w)) / (2 * np.pi), float(centre(shape))) for w, shape in zip(squares, shapes.T, strict=True)), key=lambda mode: abs(mode[1]))
    index = inertia / (m * a * b)
    expected = {"dynamic_index": index}
    if name == "c029":
        expected |= {"bounce_frequency": 1.2328088881229997, "pitch_frequency": 1.2328088881229997}
    else:
        expected |= {"pitch_frequency": found[0][0], "pitch_centre": found[0][1], "bounce_frequency": found[1][0], "bounce_centre": found[1][1]}
    row(f"half-modes-{name}", HC("bounce_and_pitch"), inputs, expected, {"rel": 1e-9}, f"eigenvalues in the heights over the axles, {SCIPY}; cases c027, c029, c030 agree with python-control 0.10.2", "own equations")
    speed = 25.0
    front, rear = np.sqrt(kf / (m * b / (a + b))) / (2 * np.pi), np.sqrt(kr / (m * a / (a + b))) / (2 * np.pi)
    if rear > front:
        # When both ends have the same phase, the rear having begun later.
        late = (a + b) / speed
        time = scipy.optimize.brentq(lambda t: rear * (t - late) - front * t, 0, 1e4, xtol=1e-14, rtol=1e-15)
        row(f"half-flat-{name}", HC("flat_ride", speed=speed), inputs, {"front_frequency": float(front), "rear_frequency": float(rear), "frequency_ratio": float(rear / front), "cycles": float(front * time)}, {"rel": 1e-9}, f"root of the difference of both phases, {SCIPY}", "own equations")
    else:
        refused(f"half-flat-{name}", HC("flat_ride", speed=speed), inputs, "rear_frequency")
refused("half-no-inertia", HC("bounce_and_pitch"), inputs | {"pitch_inertia": "0 kg·m²"}, "pitch_inertia")

ride_vehicles.rows(row, refused, wk)

RS = {"model": "ride.RoadSurface", "method": "roughness", "arguments": {}}
for letter, value in zip("abcdefgh", (16, 64, 256, 1024, 4096, 16384, 65536, 262144), strict=True):
    row(f"class-{letter}", RS, {"road_class": letter}, {"value": value * 1e-6}, {"rel": 1e-12}, "ISO 8608:2016 table C.1, geometric mean at 0.1 cycles/m, from memory", "memory", "medium")
refused("class-i", RS, {"road_class": "i"}, "road_class")

F = lambda name: {"function": f"ride.{name}"}
nominal = [0.5, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80]
table = [0.418, 0.482, 0.484, 0.494, 0.531, 0.631, 0.804, 0.967, 1.039, 1.054, 1.036, 0.988, 0.902, 0.768, 0.636, 0.513, 0.405, 0.314, 0.246, 0.186, 0.132]
for f, value in zip(nominal, table, strict=True):
    row(f"wk-table-{f:g}", F("wk_weighting"), {"frequency": float(f)}, {"value": value}, {"abs": 0.001}, "ISO 2631-1:1997 table 3, from memory", "memory")
    row(f"wk-formula-{f:g}", F("wk_weighting"), {"frequency": float(f)}, {"value": wk(f)}, {"rel": 1e-12}, "ISO 8041-1 magnitudes in real arithmetic, factor by factor", "own equations")
row("c026", F("wk_weighting"), {"frequency": 0.0}, {"value": 0.0}, {"abs": 1e-12}, "ISO 8041 band limiting", "definition")
refused("wk-negative", F("wk_weighting"), {"frequency": -1.0}, "frequency")
for case, r, zeta, value in (("c036", 0.0, 0.3, 1.0), ("c038", 1.4142135623730951, 0.05, 0.9999999999999996), ("c040", 3.0, 0.3, 0.2511129302679756)):
    row(case, F("transmissibility"), {"frequency_ratio": r, "damping_ratio": zeta}, {"value": value}, {"rel": 1e-12}, "closed form of Den Hartog, from memory; 1 at the square root of 2 for any damping", "memory", "medium" if case == "c040" else "high")
for r, zeta in ((0.5, 0.2), (1.0, 0.35), (2.0, 0.6)):
    value = abs((1 + 2j * zeta * r) / (1 - r * r + 2j * zeta * r))
    row(f"transmissibility-{r:g}", F("transmissibility"), {"frequency_ratio": r, "damping_ratio": zeta}, {"value": float(value)}, {"rel": 1e-13}, "complex amplitude of the equation of motion", "own equations")
refused("transmissibility-undamped", F("transmissibility"), {"frequency_ratio": 1.0, "damping_ratio": 0.0}, "damping_ratio")
for roughness, wave, value in ((16e-6, 10.0, 16e-6), (256e-6, 2.0, 256e-6 * 0.04), (64e-6, 100.0, 64e-4)):
    row(f"density-{wave:g}", F("road_displacement_density"), {"roughness": roughness, "wavelength": wave}, {"value": value}, {"rel": 1e-12}, "ISO 8608 with exponent 2 from 0.1 cycles/m, exact fractions", "definition")
refused("density-no-wave", F("road_displacement_density"), {"roughness": 16e-6, "wavelength": 0.0}, "wavelength")
for number, car in CARS.items():
    for name, which in (("damping_for_least_body_acceleration", 0), ("damping_for_least_tyre_load", 2)):
        found = scipy.optimize.minimize_scalar(lambda c: np.log(rms((*car[:3], np.exp(c), car[4]), 16e-6, 20.0)[which]), bracket=(5, 9), options={"xtol": 1e-10})
        ms, mu, k, _, kt = car
        inputs = {"sprung_mass": ms, "unsprung_mass": mu, "wheel_rate": k, "tyre_rate": kt}
        row(f"{name.replace('_', '-')}-{number}", F(name), inputs, {"value": float(np.exp(found.x))}, {"rel": 1e-5}, f"least of the Lyapunov solution by search, {SCIPY}", "own equations")
for name in ("damping_for_least_body_acceleration", "damping_for_least_tyre_load"):
    refused(f"{name.replace('_', '-')}-no-tyre", F(name), inputs | {"tyre_rate": 0.0}, "tyre_rate")
row("index-c027", F("dynamic_index"), {"pitch_inertia": 1500.0, "sprung_mass": 1200.0, "front_distance": 1.2, "rear_distance": 1.4}, {"value": 1500 / (1200 * 1.2 * 1.4)}, {"rel": 1e-12}, "square of the radius of gyration over the product of both distances", "own equations")
row("index-c030", F("dynamic_index"), {"pitch_inertia": 1650.0, "sprung_mass": 1000.0, "front_distance": 1.1, "rear_distance": 1.5}, {"value": 1.0}, {"rel": 1e-12}, "exact fractions: 1650 / (1000 * 1.1 * 1.5)", "definition")
refused("index-no-mass", F("dynamic_index"), {"pitch_inertia": 1650.0, "sprung_mass": 0.0, "front_distance": 1.1, "rear_distance": 1.5}, "sprung_mass")
for front, rear, wheelbase, speed in ((1.2, 1.4, 2.9, 25.0), (1.0, 1.15, 2.5, 20.0)):
    late = wheelbase / speed
    time = scipy.optimize.brentq(lambda t: rear * (t - late) - front * t, 0, 1e4, xtol=1e-14, rtol=1e-15)
    row(f"flat-{front:g}", F("flat_ride_cycles"), {"front_frequency": front, "rear_frequency": rear, "wheelbase": wheelbase, "speed": speed}, {"value": float(front * time)}, {"rel": 1e-9}, f"root of the difference of both phases, {SCIPY}", "own equations")
    row(f"flat-rear-{front:g}", F("flat_ride_rear_frequency"), {"front_frequency": front, "wheelbase": wheelbase, "speed": speed, "cycles": float(front * time)}, {"value": rear}, {"rel": 1e-9}, f"the frequency whose phase was met by a root, {SCIPY}", "own equations")
refused("flat-slower-rear", F("flat_ride_cycles"), {"front_frequency": 1.2, "rear_frequency": 1.1, "wheelbase": 2.9, "speed": 25.0}, "rear_frequency")
refused("flat-too-soon", F("flat_ride_rear_frequency"), {"front_frequency": 1.2, "wheelbase": 2.9, "speed": 25.0, "cycles": 0.1}, "cycles")

# ---- Motions

TIMES = np.linspace(0, 2, 401)
PROFILE = ([0.0, 0.3, 1.1, 1.25, 4.0, 9.0], [0.0, 0.02, -0.01, 0.03, 0.0, 0.0])
ROADS = {
    "step": (lambda t: 0.05, lambda t: 0.0, []),
    "ramp": (lambda t: 0.08 * min(t / 0.05, 1.0), lambda t: 1.6 if t < 0.05 else 0.0, [0.05]),
    "half_sine": (lambda t: 0.06 * np.sin(np.pi * t / 0.083) if t < 0.083 else 0.0, lambda t: 0.06 * np.pi / 0.083 * np.cos(np.pi * t / 0.083) if t < 0.083 else 0.0, [0.083]),
    "profile": (lambda t: float(np.interp(4.5 * t, *PROFILE)), None, [x / 4.5 for x in PROFILE[0][1:]]),
}


def rate_of_profile(t):
    i = min(np.searchsorted(PROFILE[0], 4.5 * t, side="right") - 1, len(PROFILE[0]) - 2)
    return 4.5 * (PROFILE[1][i + 1] - PROFILE[1][i]) / (PROFILE[0][i + 1] - PROFILE[0][i])


def motion(force, car, ct, road, impulse):
    """The initial-value problem piece by piece, with the impulse of a step on a tyre that is damped."""
    ms, mu, kt = car
    height, rate, breaks = ROADS[road]
    rate = rate or rate_of_profile
    state = np.array([0.0, 0.0, 0.0, impulse])
    out = [state]
    ends = sorted({0.0, *(b for b in breaks if b < 2.0), 2.0})

    def slope(t, x):
        t = min(max(t, begin + 1e-13), end - 1e-13)
        suspension = force(x[2] - x[0], x[3] - x[1])
        tyre = max(kt * (height(t) - x[2]) + ct * (rate(t) - x[3]), weight)
        return [x[1], suspension / ms, x[3], (tyre - suspension) / mu]

    weight = -np.inf if linear else -(ms + mu) * G0
    for begin, end in zip(ends, ends[1:], strict=False):
        at = TIMES[(TIMES > begin + 1e-12) & (TIMES <= end + 1e-12)]
        solved = solve_ivp(slope, (begin, end), state, method="DOP853", rtol=1e-12, atol=1e-13, max_step=0.002, t_eval=np.union1d(np.minimum(at, end), [end]))
        state = solved.y[:, -1]
        out.extend(solved.y.T[: len(at)])
    x = np.array(out)
    return {"body_displacement": x[:, 0], "wheel_displacement": x[:, 2], "body_acceleration": np.array([force(*v) / ms for v in zip(x[:, 2] - x[:, 0], x[:, 3] - x[:, 1], strict=True)])}


DAMPER = [(-4.0, -5200.0), (-0.5, -1500.0), (-0.1, -700.0), (0.0, 0.0), (0.1, 250.0), (0.5, 600.0), (4.0, 2500.0)]
STOP = [(0.0, 0.0), (0.02, 1500.0), (0.04, 7000.0), (0.12, 90e3)]
GAP = 0.03
MOTIONS = []
ms, mu, k, c, kt = CARS[1]
damper, stop = PchipInterpolator(*zip(*DAMPER, strict=True)), PchipInterpolator(*zip(*STOP, strict=True))
bent = lambda x, v: k * x + float(damper(v)) + (float(stop(x - GAP)) if x > GAP else 0.0)
for road in ROADS:
    for ct in (0.0, 80.0):
        linear = True
        found = motion(lambda x, v: k * x + c * v, (ms, mu, kt), ct, road, ct / mu * 0.05 if road == "step" else 0.0)
        MOTIONS.append({"road": road, "model": "linear", "tyre_damping": ct, **{n: [float(f"{x:.13g}") for x in v[::10]] for n, v in found.items()}})
    linear = False
    found = motion(bent, (ms, mu, kt), 0.0, road, 0.0)
    MOTIONS.append({"road": road, "model": "nonlinear", "tyre_damping": 0.0, **{n: [float(f"{x:.13g}") for x in v[::10]] for n, v in found.items()}})

# A damper that is measured to 0.5 m/s and goes straight on beyond, and a strap that ends droop. At both ends the line from the point before is steeper than the curve.
SHORT, STRAP, DROOP = DAMPER[1:-1], [(0.0, 0.0), (0.01, 800.0), (0.03, 6000.0), (0.08, 60e3)], 0.02
short, strap = PchipInterpolator(*zip(*SHORT, strict=True)), PchipInterpolator(*zip(*STRAP, strict=True))


def straight_on(v):
    for (end, force), (near, before) in ((SHORT[0], SHORT[1]), (SHORT[-1], SHORT[-2])):
        if abs(v) > abs(end) and v * end > 0:
            return force + max((force - before) / (end - near), float(short(end, 1))) * (v - end)
    return float(short(v))


held = lambda x, v: k * x + straight_on(v) - (float(strap(-x - DROOP)) if -x > DROOP else 0.0)
for road in ROADS:
    found = motion(held, (ms, mu, kt), 0.0, road, 0.0)
    MOTIONS.append({"road": road, "model": "held", "tyre_damping": 0.0, **{n: [float(f"{x:.13g}") for x in v[::10]] for n, v in found.items()}})


def rows():
    return ROWS


if __name__ == "__main__":
    (HERE / "rows" / "ride.json").write_text("[\n" + ",\n".join(json.dumps(r, ensure_ascii=False) for r in ROWS) + "\n]\n", encoding="utf-8")
    (HERE / "ride_motion.json").write_text("[\n" + ",\n".join(json.dumps(m) for m in MOTIONS) + "\n]\n", encoding="utf-8")
    (HERE / "ride_vehicles.json").write_text("[\n" + ",\n".join(json.dumps(m, ensure_ascii=False) for m in ride_vehicles.compared()) + "\n]\n", encoding="utf-8")
    print(len(ROWS), "rows,", len(MOTIONS), "motions")
