"""The work behind an answer: what it shows, and what it refuses."""

import copy
import json
import pickle
import re

import numpy as np
import pint
import pytest

import axlewright
from axlewright import DomainError, Quantity, TextError, Work, mass, si, spring, tyre, work
from axlewright.units import N_mm, deg, kg, lbf_in, mm

TAGS = ("p", "b", "br", "code", "small", "span", "table", "td", "th", "tr")
CAR = dict(left_front=612 * kg, right_front=598 * kg, left_rear=455 * kg, right_rear=467 * kg)
TRACKS = dict(wheelbase=2650 * mm, front_track=1540 * mm, rear_track=1520 * mm)


@pytest.fixture
def made() -> Work[Quantity]:
    return work(spring.wheel_rate, spring_rate="300 lbf/in", motion_ratio=0.75, angle_from_measured_travel=20 * deg)


def test_it_shows_the_formula_the_numbers_and_the_source(made: Work[Quantity]) -> None:
    assert str(made) == made.text
    lines = [line.strip() for line in made.text.splitlines()]
    for line in (
        "spring.wheel_rate",
        "k_w = k r^2 cos^2 a",
        "k = spring_rate = 300 lbf/in (52538.1 N/m)",
        "r = motion_ratio = 0.75",
        "a = angle_from_measured_travel = 20 deg (0.349066 rad)",
        "k_w = (52538.1 N/m) (0.75)^2 cos^2 (0.349066 rad)",
        "k_w = wheel_rate = 149 lbf/in (26095.6 N/m)",
        "- 0 < motion_ratio <= 1.5",
        f"axlewright {axlewright.__version__}, revision 1 of this function",
    ):
        assert line in lines, line


def test_the_result_and_the_inputs_are_those_of_the_function(made: Work[Quantity]) -> None:
    by_itself = spring.wheel_rate(spring_rate="300 lbf/in", motion_ratio=0.75, angle_from_measured_travel=20 * deg)
    assert made.result == by_itself and made.result.unit == by_itself.unit
    assert made.function == "spring.wheel_rate"
    assert list(made.inputs) == ["spring_rate", "motion_ratio", "angle_from_measured_travel"]
    assert made.inputs["spring_rate"] == 300 * lbf_in and made.inputs["motion_ratio"] == 0.75
    with pytest.raises(TypeError):
        made.inputs["motion_ratio"] = 1.0  # type: ignore[index]


def test_what_was_written_is_kept_beside_the_unit_of_the_shop() -> None:
    shown = work(tyre.track_change, wheel_offset_before="1 3/4 in", wheel_offset_after=35.0 * mm)
    assert "written 1 3/4 in" in shown.text
    assert json.loads(shown.to_json())["inputs"][0]["written"] == "1 3/4 in"


def test_the_units_of_the_shop_follow_the_arguments_or_the_wish(made: Work[Quantity]) -> None:
    metric = work(spring.static_deflection, load="4 kN", rate=40 * N_mm)
    assert "x = static_deflection = 100 mm (0.1 m)" in metric.text
    assert "wheel_rate = 26.1 N/mm (26095.6 N/m)" in made.shown_in("metric").text
    assert "spring_rate = 52.54 N/mm (written 300 lbf/in; 52538.1 N/m)" in made.shown_in("metric").text
    assert made.shown_in("metric").shown_in("us") == made
    with pytest.raises(ValueError, match='it is "metric" or "us"'):
        made.shown_in("imperial")  # type: ignore[arg-type]


def test_several_results() -> None:
    made = work(mass.weight_distribution, **CAR, **TRACKS)
    assert made.result == mass.weight_distribution(**CAR, **TRACKS)
    assert isinstance(made.result, mass.WeightDistribution)
    assert [one["name"] for one in json.loads(made.to_json())["results"]] == list(made.result._fields)
    assert "behind_front_axle = 1146 mm (1.14601 m)" in made.text


def test_it_is_pickled_and_copied(made: Work[Quantity]) -> None:
    for shown in (made, made.shown_in("metric")):
        again = pickle.loads(pickle.dumps(shown))
        assert again == shown == copy.deepcopy(shown)
        assert hash(again) == hash(shown) and again.text == shown.text and again.result == shown.result
    assert made != made.shown_in("metric")


def test_pint_quantities() -> None:
    registry = pint.UnitRegistry()
    load = registry.Quantity(4, "kN")
    made = work(spring.static_deflection, load=load, rate="225 lbf/in")
    assert made.result == spring.static_deflection(load=load, rate="225 lbf/in")
    assert made.inputs["load"].si == 4000.0
    assert pickle.loads(pickle.dumps(made)) == made


def test_html_is_escaped() -> None:
    made = work(spring.wheel_rate, spring_rate="300 lb/\"", motion_ratio=0.75, angle_from_measured_travel="20 deg")
    page = made._repr_html_()
    assert "0 &lt; motion_ratio &lt;= 1.5" in page and "300 lb/&quot;" in page
    assert page.count("<tr>") == page.count("</tr>") == 5
    assert set(re.findall(r"</?\w+", page)) <= {f"{start}{tag}" for start in ("<", "</") for tag in TAGS}


def test_it_refuses_as_the_function_does(made: Work[Quantity]) -> None:
    with pytest.raises(DomainError, match="motion_ratio = 62 is outside its range"):
        work(spring.wheel_rate, spring_rate=300 * lbf_in, motion_ratio=62, angle_from_measured_travel=18 * deg)
    with pytest.raises(TextError, match="load: "):
        work(spring.static_deflection, load="900", rate="225 lbf/in")
    with pytest.raises(TypeError, match="'rate'"):
        work(spring.static_deflection, load="900 lbf")  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="unexpected"):
        work(spring.static_deflection, load="900 lbf", rate="225 lbf/in", x=1)  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="load is one value here, not an array"):
        work(spring.static_deflection, load=["900 lbf", "800 lbf"], rate="225 lbf/in")
    with pytest.raises(TypeError, match="by keyword"):
        work(spring.static_deflection, load="900 lbf", rate="225 lbf/in", invalid="nan")
    for other in (si.spring.wheel_rate, np.sqrt, spring.Corner, len, "spring.wheel_rate", None, work, mass.WeightDistribution):
        with pytest.raises(TypeError, match="no function of a system"):
            work(other)  # type: ignore[arg-type]
