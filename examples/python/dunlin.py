"""The Dunlin's questions, asked in Python.

The Dunlin is an old forward-control van that Tern Lane Fabrication turns into a tow-capable work van. All figures are
invented. `python dunlin.py` prints the answers; with `--bits` it prints the bits of each, so that a test can hold them
against the other two surfaces.
"""

import struct
import sys
from pathlib import Path

from axlewright import Quantity, cooling, driveline, engine, mass, spring, tyre, verdict_of_difference, verdict_of_ratio
from axlewright.units import deg, kg, kgf, lbf_in, mm, mph

# The van as quoted.
SPRING_RATE = 300 * lbf_in
MOTION_RATIO = 0.62
SPRING_ANGLE = 18 * deg
SPRUNG_MASS = 545 * kg  # of one front corner
FRONT_LOAD = kgf(SPRUNG_MASS.to(kg))  # the weight of that mass
TYRE = "225/70R15C 112/110R"
CRUISE = 65 * mph
SIXTH_GEAR = 0.72
AXLE_RATIO = 4.10
SCALES = {
    "left_front": 612 * kg,
    "right_front": 598 * kg,
    "left_rear": 455 * kg,
    "right_rear": 467 * kg,
    "wheelbase": 2650 * mm,
    "front_track": 1540 * mm,
    "rear_track": 1520 * mm,
}


def sheet(name):
    """Text of one of the Dunlin's documents."""
    return (Path(__file__).parents[1] / "sheets" / f"dunlin_{name}.toml").read_text("utf-8")


COOLANT = cooling.Coolant.from_text(sheet("coolant"))
TORQUE_PATH = driveline.TorquePath.from_text(sheet("torque_path"))
TORQUE_CURVE = engine.TorqueCurve.from_text(sheet("torque_curve"))


def front_corner(spring_rate, motion_ratio):
    """Wheel rate, ride frequency and sag of a front corner on this spring at this mount."""
    rate = spring.wheel_rate(
        spring_rate=spring_rate, motion_ratio=motion_ratio, angle_from_measured_travel=SPRING_ANGLE
    )
    frequency = spring.natural_frequency(tangent_rate=rate, sprung_mass=SPRUNG_MASS)
    sag = spring.static_deflection(load=FRONT_LOAD, rate=rate)
    return rate, frequency, sag


def rolling_radius(marking):
    """Rolling radius of a new tyre with this marking."""
    return tyre.Tyre(marking=marking).rolling(tread_worn=0 * mm).rolling_radius


def cruise_speed(marking, axle_ratio):
    """Engine speed at the cruise in sixth, on these tyres with this axle."""
    return driveline.engine_speed(
        road_speed=CRUISE,
        gear_ratio=SIXTH_GEAR,
        final_drive=axle_ratio,
        rolling_radius=rolling_radius(marking),
    )


def boiling_verdict(margin, wanted, cap_open):
    """Verdict of a boiling margin: no better than tight while something is missing of the cap."""
    verdict = verdict_of_difference(margin, wanted)
    return "tight" if verdict == "meets" and cap_open else verdict


def answers():
    """Yield question, answer in words, function and value of each answer."""
    rate, frequency, sag = front_corner(SPRING_RATE, MOTION_RATIO)
    yield "Front wheel rate", f"{rate:us}", "spring.wheel_rate", rate
    yield "Front ride frequency", f"{frequency:us}; wanted 1.1 to 1.5 Hz", "spring.natural_frequency", frequency
    yield "Front sag at the wheel", f"{sag:us}", "spring.static_deflection", sag

    radius, cruise = rolling_radius(TYRE), cruise_speed(TYRE, AXLE_RATIO)
    yield f"Rolling radius of a {TYRE.split()[0]}", f"{radius:us}", "tyre.rolling_radius", radius
    words = f"{cruise:us}; wanted at most 2400 rpm"
    yield f"Engine speed at {CRUISE} in sixth", words, "driveline.engine_speed", cruise

    coolant = COOLANT.margin()
    boils = coolant.boiling_temperature
    yield "The coolant boils at", f"{boils:us}", "cooling.boiling_temperature", boils
    verdict = boiling_verdict(coolant.margin, "20 delta_degF", COOLANT.margin_open().cap_open)
    words = f"{coolant.margin:us} ({verdict})"
    yield "Margin over the hottest coolant", words, "cooling.margin", coolant.margin

    weights = mass.weight_distribution(**SCALES)
    share, behind = weights.front_share, weights.behind_front_axle
    yield "Share of the front axle", f"{100 * share:.1f} %", "mass.front_share", share
    yield "Centre of gravity behind the front axle", f"{behind:us}", "mass.behind_front_axle", behind

    weakest = TORQUE_PATH.weakest()
    words = f"{weakest.part}, margin {weakest.margin:.2f} ({verdict_of_ratio(weakest.margin, 1.25)}); {weakest.not_known} parts not known"
    yield "Weakest part of the driveline", words, "driveline.weakest_margin", weakest.margin

    peaks = TORQUE_CURVE.peaks()
    words = f"{peaks.peak_power:us} at {peaks.peak_power_speed:us}"
    yield "Peak power", words, "engine.peak_power", peaks.peak_power


def main():
    bits = "--bits" in sys.argv
    for question, words, function, value in answers():
        if bits:
            si = value.si if isinstance(value, Quantity) else value
            print(function, struct.pack(">d", si).hex())
        else:
            print(f"{question:<42} {words}")
    if not bits:
        print(
            "\nHot pressurised coolant scalds and a broken shaft can lock a wheel: "
            "local codes and licensed practice decide."
        )


if __name__ == "__main__":
    main()
