"""A user's script: it type-checks, and it runs."""

import copy
import json
import sys
from typing import TYPE_CHECKING

import numpy as np

import axlewright
from axlewright import Q, Quantity, Sheet, Table, Unit, mass, si, span, spring, tyre, work
from axlewright.kinds import Force, Length, LinearStiffness, Temperature, TemperatureDifference
from axlewright.units import (
    N,
    N_mm,
    Hz,
    deg,
    degC,
    delta_degC,
    inch,
    kg,
    kN,
    kPa_absolute,
    lbf_in,
    mm,
    one,
    rpm,
)

if TYPE_CHECKING:
    from typing import assert_type


def softer(rate: Quantity[LinearStiffness], share: float = 0.9) -> Quantity[LinearStiffness]:
    return share * rate


def with_unit(numbers: list[float], unit: Unit[Force]) -> Quantity[Force]:
    return numbers * unit


# Quantities keep their kind.
rate = 300 * lbf_in
revs = [1000, 2000]
speeds = revs * rpm
# mypy takes no list that stands before its unit as it is: a call or a tuple says the same to both checkers.
assert rpm([1000, 2000]).max() == ((1000, 2000) * rpm).max() == speeds.max()
loads = np.linspace(1, 4, 4) * kN
table_of_loads = np.array([[1.0, 2.0], [3.0, 4.0]]) * kN
half = rate / 2
both = rate + softer(rate)
ratio = float(rate / half)
read: Quantity[LinearStiffness] = Q("300 lbf/in")
given = Q(300, lbf_in)
several = Q([rate, half])
again = Q(rate, "N/mm")
if TYPE_CHECKING:
    assert_type(rate, Quantity[LinearStiffness])
    assert_type(both, Quantity[LinearStiffness])
    assert_type(given, Quantity[LinearStiffness])
    assert_type(several, Quantity[LinearStiffness])
    assert_type(again, Quantity[LinearStiffness])
    assert_type(loads[1:], Quantity[Force])
    assert_type(loads.max(), Quantity[Force])
print(rate, half, both, ratio, read, speeds, loads.mean(), table_of_loads.shape, with_unit([1, 2], N))

# Temperatures: points and differences.
hot = degC(90)
hotter = hot + 5 * delta_degC
rise = hotter - hot
mean = degC([80, 90, 100]).mean()
if TYPE_CHECKING:
    assert_type(hotter, Quantity[Temperature])
    assert_type(rise, Quantity[TemperatureDifference])
    assert_type(degC([80, 90]).std(), Quantity[TemperatureDifference])
print(hotter, rise, mean, 100 * kPa_absolute - 90 * kPa_absolute)

# Functions take quantities, texts, and lists of them; a ratio may be a plain number or an array.
wheel_rate = spring.wheel_rate(spring_rate=300 * lbf_in, motion_ratio=0.75, angle_from_measured_travel=20 * deg)
texts = spring.wheel_rate(spring_rate="300 lbf/in", motion_ratio="75 %", angle_from_measured_travel="20 deg")
rates = spring.wheel_rate(
    spring_rate=lbf_in([300, 400]),
    motion_ratio=np.array([0.7, 0.8]),
    angle_from_measured_travel=[0 * deg, 10 * deg],
)
frequency = spring.natural_frequency(tangent_rate=wheel_rate, sprung_mass=340 * kg)
not_known = spring.natural_frequency(tangent_rate=-1 * N_mm, sprung_mass=340 * kg, invalid="nan")
# A ratio as a result is a float, or an array where an argument is one.
share = spring.wahl_factor(wire_diameter=12 * mm, mean_diameter=100 * mm)
shares = spring.wahl_factor(wire_diameter=mm([12, 13]), mean_diameter=100 * mm)
one_share: float = float(share)
raised = rate * share
coils = spring.active_coils_for_rate(
    spring_rate=60 * N_mm, wire_diameter=12 * mm, mean_diameter=100 * mm, shear_modulus="78500 MPa"
)
same_rate = spring.coil_rate(
    wire_diameter=12 * mm, mean_diameter=100 * mm, active_coils=coils, shear_modulus="78500 MPa"
)
ends = mass.weight_distribution(
    left_front=612 * kg, right_front=598 * kg, left_rear=655 * kg, right_rear=667 * kg,
    wheelbase="3 m", front_track="1.5 m", rear_track="1.5 m",
)
assert isinstance(share, float) and isinstance(shares, np.ndarray) and shares.shape == (2,)
if share > 1 and isinstance(shares, np.ndarray):
    print(2 * share, f"{share:.3f}", one_share, shares.max(), raised, same_rate, np.max(ends.front_share))
crossover = spring.series_crossover(
    first_rate=30 * N_mm,
    first_travel_to_solid=60 * mm,
    second_rate=60 * N_mm,
    second_travel_to_solid=120 * mm,
)
if TYPE_CHECKING:
    assert_type(wheel_rate, Quantity[LinearStiffness])
    assert_type(crossover.crossover_load, Quantity[Force])
    assert_type(raised, Quantity[LinearStiffness])
print(f"{wheel_rate:.1f} {frequency.to(Hz):.2f} {texts:metric} {rates} {not_known} {crossover.crossover_load} {share}")
print(work(spring.natural_frequency, tangent_rate=150 * lbf_in, sprung_mass=340 * kg).result)
print(si.spring.wheel_rate(3e4, 0.75, 0.1))

# Models: keywords, entries of documents, other models of them.
stack = spring.Stack(
    springs=[
        {"name": "tender", "rate": 30 * N_mm, "free_length": "100 mm", "solid_length": 40 * mm},
        {"name": "main", "rate": "60 N/mm", "free_length": 250 * mm, "solid_length": 130 * mm},
    ]
)
points: list[spring.StopPoint] = [
    {"compression": 0 * mm, "force": 0 * N},
    {"compression": 20 * mm, "force": "1 kN"},
    spring.StopPoint(compression=40 * mm, force=5 * kN),
]
stop = spring.BumpStop(points=points)
harder = stop.replace(points=[*points, {"compression": 50 * mm, "force": 12 * kN}])
corner = spring.Corner(
    rate=450 * lbf_in,
    free_length=320 * mm,
    solid_length=165 * mm,
    minimum_gap=15 * mm,
    motion_ratio=0.6,
    sprung_mass=420 * kg,
    droop_length=300 * mm,
    damper_stroke=110 * mm,
    damper_mounting="coil_over",
    gas_force="none",
)
on = stack.under_load(load=3000 * N)
curve: Table = stack.table(load=kN([1, 2, 3]))
if TYPE_CHECKING:
    assert_type(on.deflection, Quantity[Length])
    assert_type(corner.motion_ratio, float)
print(on.deflection, corner.at_ride_height().sag, curve.rows, harder.at(compression=45 * mm).force)
print(corner.replace(rate="500 lbf/in").at_ride_height().bump_remaining, corner == copy.copy(corner))

# The sheet.
sheet = Sheet({"engine": {"red_line": "4500 rpm", "piston_speed_limit": "15 m/s"}, "engine.stroke": 95 * mm})
longer = sheet.with_({"engine.stroke": sheet["engine.stroke"] * 1.05})
changes = {"engine.stroke": span("85 mm", "95 mm", 3)}
finding = sheet.assess()["engine.pistons"]
sweep = sheet.what_if(changes, ["engine.pistons.margin"])
strokes = sweep.table()["engine.stroke"].to(mm)
same = stop.replace(points=[*stop.points, {"compression": 60 * mm, "force": 30 * kN}])
print(longer, strokes.max(), span(0.6, 0.8, 3), same.points[0]["force"])
print(finding.verdict, finding.value, sweep.table(), sheet.get("engine.bore", None))
try:
    Q("300 lbf/inn")
except axlewright.Error as refused:
    print(refused)
print(json.dumps({"python": sys.version_info >= (3, 11), "mass": mass.__name__, "tyre": tyre.__name__, "one": str(2 * one), "inch": str(3 * inch)}))
