"""Verdicts of the caller's own margins: the core's rule, for numbers, quantities and arrays."""

import math

import numpy as np
import pytest

from axlewright import DomainError, cooling, verdict_of_difference, verdict_of_place, verdict_of_ratio
from axlewright.units import Hz, N, kPa, mm, psi

RATIOS = [(0.999, "short"), (1.0, "tight"), (1.249, "tight"), (1.25, "meets"), (math.inf, "not known"), (math.nan, "not known")]


def test_a_ratio_is_short_below_one_and_tight_below_what_is_wanted():
    for margin, word in RATIOS:
        assert verdict_of_ratio(margin, 1.25) == word
    assert verdict_of_ratio(margin="110 %", wanted=1.25) == "tight" and verdict_of_ratio(2.0, math.nan) == "not known"
    words = verdict_of_ratio([margin for margin, _ in RATIOS], 1.25)
    assert words.tolist() == [word for _, word in RATIOS]
    assert verdict_of_ratio(np.array([[0.5, 2.0]]), 1.25).tolist() == [["short", "meets"]]
    with pytest.raises(TypeError, match="margin = 3 N is a force"):
        verdict_of_ratio(3 * N, 1.25)


def test_a_difference_takes_quantities_of_one_kind():
    assert verdict_of_difference(-0.1 * mm, 10 * mm) == "short"
    assert verdict_of_difference(9.9 * mm, "1 cm") == "tight" and verdict_of_difference("1 cm", 10 * mm) == "meets"
    assert verdict_of_difference(0.0, 10.0) == "tight" and verdict_of_difference(math.nan * mm, 10 * mm) == "not known"
    assert verdict_of_difference([-1, 5, 20] * mm, [10, 5, 30] * mm).tolist() == ["short", "meets", "tight"]
    with pytest.raises(TypeError, match="wanted = 10 has no unit"):
        verdict_of_difference(5 * mm, 10)
    with pytest.raises(TypeError, match="wanted = 10 N is a force"):
        verdict_of_difference(5 * mm, 10 * N)


def test_a_place_is_short_on_either_side_of_its_band():
    places = {1.0: "short", 1.125: "tight", 1.1875: "meets", 1.5: "tight", 1.75: "short", math.nan: "not known"}
    for place, word in places.items():
        assert verdict_of_place(place * Hz, "1.125 Hz", 1.5 * Hz, "0.0625 Hz") == word
    assert verdict_of_place(list(places) * Hz, 1.125 * Hz, 1.5 * Hz, 0.0625 * Hz).tolist() == list(places.values())
    assert verdict_of_place(1.75, 1.125, math.inf, 0.0625) == "meets"
    for low, high in (2.0, 1.0), (1.0, 1.0), (math.nan, 2.0), (1.0, math.nan):
        with pytest.raises(DomainError, match="^high = "):
            verdict_of_place(1.0, low, high, 0.0)
    with pytest.raises(TypeError, match="low is one value"):
        verdict_of_place(1.0, [0.0, 1.0], 2.0, 0.0)


def test_what_a_model_gives_is_graded():
    cap = cooling.CapTest(rating="15 psi gauge", holding_pressure="13 psi gauge", gauge_error="0.5 psi", rating_tolerance="1 psi")
    on = cap.findings()
    assert verdict_of_difference(on.holding_margin, 0.25 * psi) == "short" and on.holding_margin.to(psi) == pytest.approx(-1.5)
    assert verdict_of_difference(on.vacuum_margin, 1 * kPa) == "not known"
    table = cap.boiling_table(holding_pressure=["13 psi gauge", "15 psi gauge"], altitude="0 m")
    assert verdict_of_difference(table["holding_margin"], "0.25 psi").tolist() == ["short", "meets"]
    with pytest.raises(ValueError, match="the margin that is wanted belongs on a build sheet .`wanted.cap`."):
        cooling.CapTest.from_text('rating = "15 psi gauge"\ntight_below = "1 psi"\n')
