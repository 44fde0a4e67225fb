"""Driveline: turns and teeth, work of a turn, and friction integrated over a face."""

from fractions import Fraction

import mpmath
import numpy as np
from scipy.integrate import quad

from . import exact, route

mpmath.mp.dps = 40
TURN = 2 * mpmath.pi


def turns(engine_speed):
    """Turns a second."""
    return mpmath.mpf(engine_speed) / TURN


def metres(rolling_radius):
    """Distance of one turn of the wheel."""
    return TURN * mpmath.mpf(rolling_radius)


@route("driveline.road_speed")
def road_speed(engine_speed, gear_ratio, final_drive, rolling_radius):
    return float(turns(engine_speed) / gear_ratio / final_drive * metres(rolling_radius))


@route("driveline.engine_speed")
def engine_speed(road_speed, gear_ratio, final_drive, rolling_radius):
    return float(TURN * (mpmath.mpf(road_speed) / metres(rolling_radius)) * final_drive * gear_ratio)


@route("driveline.final_drive_for_cruise")
def final_drive_for_cruise(road_speed, engine_speed, gear_ratio, rolling_radius):
    return float(turns(engine_speed) / gear_ratio / (mpmath.mpf(road_speed) / metres(rolling_radius)))


@route("driveline.wheel_torque")
def wheel_torque(engine_torque, gear_ratio, final_drive, driveline_efficiency):
    # One turn of the engine turns the wheels by one over both ratios.
    at_wheels = 1 / (exact(gear_ratio) * exact(final_drive))
    return exact(driveline_efficiency) * exact(engine_torque) / at_wheels


@route("driveline.gear_step")
def gear_step(gear_ratio_before, gear_ratio_after):
    return Fraction(gear_ratio_before) / Fraction(gear_ratio_after)


@route("driveline.engine_speed_after_shift")
def engine_speed_after_shift(engine_speed, gear_ratio_before, gear_ratio_after):
    shaft = Fraction(engine_speed) / exact(gear_ratio_before)
    return shaft * exact(gear_ratio_after)


@route("driveline.crawl_ratio")
def crawl_ratio(first_gear_ratio, transfer_case_ratio, final_drive):
    engine_turns = Fraction(1)
    for ratio in (final_drive, transfer_case_ratio, first_gear_ratio):
        engine_turns *= Fraction(ratio)
    return engine_turns


@route("driveline.axle_ratio_by_turns")
def axle_ratio_by_turns(propeller_shaft_turns, wheel_turns):
    return Fraction(propeller_shaft_turns) / Fraction(wheel_turns)


@route("driveline.axle_ratio_one_wheel_held")
def axle_ratio_one_wheel_held(propeller_shaft_turns, free_wheel_turns):
    # Unknown turns of the carrier and of a spider on it: it meshes with the side gear that turns and with the one that is held.
    carrier, _ = np.linalg.solve([[1.0, 1.0], [1.0, -1.0]], [free_wheel_turns, 0.0])
    return propeller_shaft_turns / carrier


def clutch(clamp_load, friction, outer, inner, faces, pressure):
    ring = lambda f: quad(f, inner / 2, outer / 2, epsrel=1e-13)[0]  # noqa: E731
    return faces * friction * clamp_load * ring(lambda r: pressure(r) * r * r) / ring(lambda r: pressure(r) * r)


@route("driveline.clutch_capacity_uniform_wear")
def clutch_capacity_uniform_wear(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces):
    return clutch(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces, lambda r: 1 / r)


@route("driveline.clutch_capacity_uniform_pressure", "integrated")
def clutch_capacity_uniform_pressure(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces):
    return clutch(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces, lambda r: 1.0)


@route("driveline.clutch_capacity_uniform_pressure", "quotient of differences")
def narrow_ring(clamp_load, friction_coefficient, outer_diameter, inner_diameter, friction_faces):
    outer, inner = exact(outer_diameter), exact(inner_diameter)
    return exact(friction_faces) * exact(friction_coefficient) * exact(clamp_load) * (outer**3 - inner**3) / (3 * (outer**2 - inner**2))


@route("driveline.clamp_load_for_capacity")
def clamp_load_for_capacity(clutch_capacity, friction_coefficient, outer_diameter, inner_diameter, friction_faces):
    return clutch_capacity / clutch(1.0, friction_coefficient, outer_diameter, inner_diameter, friction_faces, lambda r: 1 / r)


@route("driveline.grip_torque")
def grip_torque(axle_load, grip_coefficient, loaded_radius):
    work = exact(axle_load) * exact(grip_coefficient) * exact(loaded_radius)  # of a turn, less the factor 2 pi
    return work


@route("driveline.grip_torque_upstream")
def grip_torque_upstream(grip_torque, ratio_between, efficiency_between):
    return exact(grip_torque) / (exact(ratio_between) * exact(efficiency_between))


@route("driveline.axle_shaft_torque_open")
def axle_shaft_torque_open(axle_torque, axle_grip_torque):
    return min(exact(axle_torque), exact(axle_grip_torque)) / 2


@route("driveline.axle_shaft_torque_locked")
def axle_shaft_torque_locked(axle_torque, axle_grip_torque):
    return min(exact(axle_torque), exact(axle_grip_torque))


@route("driveline.crawl_speed")
def crawl_speed(engine_speed, first_gear_ratio, transfer_case_ratio, final_drive, rolling_radius):
    return float(turns(engine_speed) / (first_gear_ratio * transfer_case_ratio * final_drive) * metres(rolling_radius))


@route("driveline.crawl_ratio_for_speed")
def crawl_ratio_for_speed(road_speed, engine_speed, rolling_radius):
    return float(turns(engine_speed) / (mpmath.mpf(road_speed) / metres(rolling_radius)))


@route("driveline.first_gear_for_crawl")
def first_gear_for_crawl(crawl_ratio, transfer_case_ratio, final_drive):
    return Fraction(crawl_ratio) / Fraction(transfer_case_ratio) / Fraction(final_drive)


@route("driveline.tyre_diameter_for_cruise")
def tyre_diameter_for_cruise(road_speed, engine_speed, gear_ratio, final_drive, rolling_factor):
    wheel_turns = turns(engine_speed) / gear_ratio / final_drive
    return float(mpmath.mpf(road_speed) / wheel_turns / rolling_factor)


@route("driveline.TorquePath.pull")
def pull(d):
    grip, torque = d["grip"], d["engine_torque"]
    for part in d["parts"]:
        torque *= part.get("ratio", 1) * part.get("efficiency", 1)
    held = grip["driven_load"] * grip["pull_coefficient"] * grip["loaded_radius"]
    return {"wheel_torque": min(torque, held), "tractive_force": min(torque, held) / grip["loaded_radius"], "bound": "engine" if torque < held else "grip"}


@route("driveline.Gearbox.largest_gap")
def largest_gap(d):
    ratios = [gear["ratio"] for gear in d["gears"]]
    steps = [a / b for a, b in zip(ratios, ratios[1:])]
    widest = max(range(len(steps)), key=steps.__getitem__)
    return {"gear_before": widest + 1, "gear_after": widest + 2, "step": steps[widest], "engine_speed_after_shift": d["red_line"] / steps[widest]}


@route("driveline.Gearbox.for_cruise")
def for_cruise(d, road_speed, engine_speed):
    """The range that is least geared down is that of the road; the gear nearest by the greater of the quotient and its inverse."""
    road = min((of["ratio"] for of in d.get("ranges", [])), default=1)
    wheel = exact(road_speed) / d["rolling_radius"]
    speeds = [wheel * d["final_drive"] * gear["ratio"] * road for gear in d["gears"]]
    wanted = Fraction(engine_speed)
    nearest = min(range(len(speeds)), key=lambda i: max(speeds[i] / wanted, wanted / speeds[i]))
    axle = lambda i: wanted / (wheel * d["gears"][i]["ratio"] * road)  # noqa: E731
    return {"gear": nearest + 1, "engine_speed_in_gear": speeds[nearest], "final_drive": axle(nearest), "final_drive_in_top": axle(len(speeds) - 1)}
