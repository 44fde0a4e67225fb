"""Units, quantities and the functions that take them."""

import copy
import decimal
import fractions
import inspect
import os
import pickle
import re
import threading

import numpy as np
import pint
import pytest

import axlewright
from axlewright import (
    DocumentError,
    DomainError,
    Q,
    Quantity,
    TextError,
    Unit,
    cooling,
    driveline,
    engine,
    fluid,
    mass,
    spring,
    tyre,
    units,
)
from axlewright._native import SYSTEMS, UNITS, _fault
from axlewright.units import (
    Hz,
    J,
    K,
    MPa,
    N,
    N_mm,
    N_per_m,
    Nm,
    bar_absolute,
    deg,
    degC,
    degF,
    delta_degC,
    delta_degF,
    delta_K,
    ft_lbf,
    gn,
    hp_mechanical,
    inch,
    kg,
    kPa_absolute,
    kPa_gauge,
    lb,
    lbf,
    lbf_in,
    m,
    m_s2,
    mm,
    percent,
    psi_absolute,
    psi_gauge,
    rpm,
    t,
)

# By definition: 0.45359237 kg times 9.80665 m/s² over 0.0254 m.
LBF_IN = 0.45359237 * 9.80665 / 0.0254


def rate(spring_rate=300 * lbf_in, motion_ratio=0.75, angle=20 * deg, **more):
    return spring.wheel_rate(
        spring_rate=spring_rate, motion_ratio=motion_ratio, angle_from_measured_travel=angle, **more
    )


class TestMaking:
    @pytest.mark.parametrize(
        "quantity",
        [
            300 * lbf_in,
            lbf_in * 300,
            lbf_in(300),
            Q("300 lbf/in"),
            Q(300, "lbf/in"),
            Q(300, lbf_in),
            Q(Q("300 lbf/in")),
            np.float64(300) * lbf_in,
            np.float32(300) * lbf_in,
            np.int16(300) * lbf_in,
            np.array(300.0) * lbf_in,
            lbf_in(decimal.Decimal(300)),
            lbf_in(fractions.Fraction(300)),
        ],
    )
    def test_one_number(self, quantity):
        assert quantity.si == pytest.approx(300 * LBF_IN, rel=1e-15)
        assert quantity == 300 * lbf_in
        assert (quantity.kind, quantity.unit, repr(quantity)) == ("LinearStiffness", lbf_in, "300 lbf/in")
        assert (quantity.shape, quantity.ndim, quantity.size) == ((), 0, 1)

    @pytest.mark.parametrize(
        "numbers",
        [
            [250, 300],
            (250.0, 300.0),
            np.array([250, 300], dtype=">i4"),
            np.array([250, 300], dtype=">f8"),
            np.array([250, 300], dtype=np.float16),
            np.array([250, 0, 300, 0], dtype=np.float64)[::2],
            np.array([300.0, 250.0])[::-1],
        ],
    )
    def test_arrays(self, numbers):
        for quantity in (numbers * lbf_in, lbf_in(numbers), Q(numbers, "lbf/in")):
            assert quantity.si.dtype == np.float64 and quantity.si.dtype.isnative
            np.testing.assert_array_equal(quantity.si, [(250 * lbf_in).si, (300 * lbf_in).si])
            assert list(quantity) == [250 * lbf_in, 300 * lbf_in]
            assert len(quantity) == 2 and quantity[1] == 300 * lbf_in and quantity[:1].shape == (1,)

    def test_an_array_keeps_its_numbers(self):
        source = np.array([1.0, 2.0])
        quantity = source * N
        source[0] = 99
        assert quantity[0] == 1 * N
        with pytest.raises(ValueError, match="read-only"):
            quantity.si[0] = 5
        quantity.to(N)[0] = 5
        assert quantity[0] == 1 * N
        with pytest.raises(AttributeError):
            quantity.si = 3

    @pytest.mark.parametrize("shape", [(0,), (2, 0), (2, 3), (1, 1, 1)])
    def test_shapes(self, shape):
        quantity = np.ones(shape) * mm
        assert (quantity.shape, quantity.ndim, quantity.size) == (shape, len(shape), int(np.prod(shape)))

    def test_lists_of_quantities(self):
        np.testing.assert_allclose(Q(["10 mm", 1 * inch]).si, [0.01, 0.0254])
        with pytest.raises(TypeError, match="300"):
            Q([300 * lbf_in, 1 * mm])

    @pytest.mark.parametrize(
        "bad",
        [True, np.True_, "300", b"300", None, 1j, object(), {}, {"a": 1}, ["1"], [True], np.array(["a"]), np.array([1j]),
         np.array([object()]), np.array([1], dtype="m8[s]"), [None], lbf_in, 3 * N],
    )
    def test_not_a_number(self, bad):
        with pytest.raises(TypeError):
            lbf_in(bad)

    def test_ragged_and_masked(self):
        with pytest.raises(ValueError):
            lbf_in([[1, 2], [3]])
        for make in (lbf_in, lambda x: x * lbf_in):
            with pytest.raises(TypeError, match="fill"):
                make(np.ma.array([1.0, 2.0], mask=[0, 1]))

    def test_a_bare_number_is_no_quantity(self):
        with pytest.raises(TypeError, match="300 has no unit; write for example"):
            Q(300)

    def test_nan_and_infinity_are_kept(self):
        assert np.isnan((np.nan * N).si) and (np.inf * N).si == np.inf

    def test_every_unit_has_its_name(self):
        assert units.__all__ == list(UNITS)
        for name in units.__all__:
            unit = getattr(units, name)
            assert isinstance(unit, Unit) and unit.name == name
            assert unit(1).to(unit) == pytest.approx(1)
            assert unit(1).to(unit.symbol) == unit(1).to(unit.name) == unit(1).to(unit)


class TestText:
    @pytest.mark.parametrize("text", ["", "mm", "3 furlong", "2,5 mm", "3 to 5 mm", "12 psi", "NaN mm", "612 kg ± 2 kg"])
    def test_unreadable(self, text):
        with pytest.raises(TextError) as caught:
            Q(text)
        assert caught.value.text == text
        assert text in str(caught.value)

    def test_in_an_argument(self):
        assert rate(spring_rate="300 lbf/in", angle="20 deg") == rate()
        with pytest.raises(TextError, match="12 psi gauge") as caught:
            rate(spring_rate="12 psi gauge")
        assert str(caught.value).startswith("spring_rate: `12 psi gauge`: ") and caught.value.text == "12 psi gauge"
        with pytest.raises(TextError, match="^spring_rate: `3 mm`: "):
            rate(spring_rate=["300 lbf/in", "3 mm"])
        with pytest.raises(TextError, match="^spring_rate: `300 lbf/in ± 3 %`: a tolerance has no place here"):
            rate(spring_rate="300 lbf/in ± 3 %")

    def test_in_a_list(self):
        np.testing.assert_array_equal(rate(spring_rate=["300 lbf/in", 300 * lbf_in]).si, [rate().si] * 2)

    @pytest.mark.parametrize("unit", ["furlong", "mm", "", 3, None])
    def test_unknown_unit(self, unit):
        with pytest.raises((TypeError, TextError)):
            (300 * lbf_in).to(unit)


class TestTemperature:
    def test_points_are_called(self):
        assert degF(70).si == pytest.approx(294.2611111111111)
        assert repr(degF(70)) == "70 °F" and repr(degC([0.0, 100.0])) == "[0 100] °C"
        for unit in (degF, degC):
            with pytest.raises(TypeError, match=rf"write {unit.name}\(70\).*70 \* delta_{unit.name}"):
                70 * unit

    def test_points_and_differences(self):
        assert (degF(230) - degF(200)).to(delta_degF) == pytest.approx(30)
        assert (degF(230) - degF(200)).unit == delta_degF and (300 * K - 290 * K).unit == delta_K
        assert (degC(20) + 5 * delta_degC).to(degC) == pytest.approx(25)
        assert (5 * delta_degC + degC(20)).unit == degC
        assert (degC(20) - 5 * delta_degC).to(degC) == pytest.approx(15)
        assert degC(0) == 273.15 * K and degC(1) > degF(32)

    @pytest.mark.parametrize(
        "wrong",
        [
            lambda: degC(20) + degC(20),
            lambda: 5 * delta_degC - degC(20),
            lambda: 2 * degC(20),
            lambda: -degC(20),
            lambda: degC(20) / 2,
            lambda: 1 * bar_absolute + 1 * bar_absolute,
            lambda: 2 * (1 * bar_absolute),
            lambda: 1 * bar_absolute + 1 * psi_gauge,
            lambda: 1 * psi_gauge + 1 * MPa,
            lambda: (1 * psi_gauge) / (1 * psi_gauge),
            lambda: 1 * N + 1 * mm,
            lambda: 1 * N + 1,
            lambda: 1 - 1 * N,
            lambda: 1 * N < 1 * mm,
            lambda: 1 * N < 1,
            lambda: np.ones(2) > 1 * N,
            lambda: (1 * N) * (1 * mm),
            lambda: 1 / (1 * N),
            lambda: (1 * Nm) / (1 * J),
            lambda: (1 * Hz) + (60 * rpm),
            lambda: N * mm,
            lambda: N / mm,
            lambda: 1 / N,
            lambda: N**2,
            lambda: (1 * N) * N,
            lambda: (1 * N) ** 2,
            lambda: float(1 * N),
            lambda: np.asarray([1, 2] * N),
            lambda: np.sin(1 * N),
            lambda: bool(1 * N),
            lambda: len(1 * N),
            lambda: iter(1 * N),
            lambda: (1 * N)[0],
            lambda: (1 * N).to(mm),
            lambda: sum([1 * N]),
        ],
    )
    def test_what_makes_no_sense(self, wrong):
        with pytest.raises(TypeError):
            wrong()


    @pytest.mark.parametrize(
        ("wrong", "write"),
        [
            (lambda: 300 * lbf / inch, "300 lbf / inch: write 300 * lbf_in"),
            (lambda: lbf / inch, "lbf / inch: write lbf_in"),
            (lambda: (300 * lbf) / (2 * inch), "300 lbf / 2 in: write 150 * lbf_in"),
            (lambda: [300, 350] * lbf / inch, "[300. 350.] lbf / inch: write lbf_in(array)"),
            (lambda: 80 * N * m, "80 N * m: write 80 * Nm"),
            (lambda: N * (2 * m), "N * 2 m: write 2 * Nm"),
            (lambda: N * m, "N * m: write Nm"),
            (lambda: (100 * kg) * gn, "100 kg * gn: for the weight of a mass write kgf(100)"),
            (lambda: gn * (100 * lb), "gn * 100 lb: for the weight of a mass write lbf(100)"),
            (lambda: (100 * kg) * (9.8 * m_s2), "100 kg * 9.8 m/s²: for the weight of a mass write kgf(100)"),
            (lambda: [1, 2] * kg * gn, "[1. 2.] kg * gn: for the weight of a mass write kgf(array)"),
            (lambda: 2 * t * gn, "2 t * gn: for the weight of a mass write kgf(2000)"),
            (lambda: (500 * kg) * (2 * m_s2), "500 kg * 2 m/s²: for the force that accelerates a mass write N(1000)"),
            (lambda: (0.5 * gn) * (2 * t), "0.5 g0 * 2 t: for the force that accelerates a mass write N(9806.65)"),
            (lambda: [1, 2] * kg * m_s2, "[1. 2.] kg * m_s2: for the force that accelerates a mass write N(kilograms times m/s²)"),
        ],
    )
    def test_what_is_written_otherwise(self, wrong, write):
        with pytest.raises(TypeError, match=f"^{re.escape(write)}$"):
            wrong()


class TestAlgebra:
    def test_like_kinds(self):
        assert (1 * inch + 1 * mm).to(mm) == pytest.approx(26.4)
        assert (1 * inch + 1 * mm).unit == inch
        assert (3 * psi_gauge - 1 * psi_gauge).to(psi_gauge) == pytest.approx(2)
        assert (2 * bar_absolute - 1 * bar_absolute).kind == "Stress"
        assert -(3 * N) == -3 * N and abs(-3 * N) == 3 * N and +(3 * N) == 3 * N
        assert 2 * (3 * N) == (3 * N) * 2 == 6 * N and (3 * N) / 2 == 1.5 * N
        assert (50 * percent) * (8 * N) == (8 * N) * (50 * percent) == 4 * N
        assert isinstance(1 * inch / (1 * mm), float) and 1 * inch / (1 * mm) == pytest.approx(25.4)
        with pytest.raises(ZeroDivisionError):
            (1 * N) / (0 * N)

    def test_arrays_broadcast(self):
        quantity = np.array([[1.0], [2.0]]) * N + [10, 20] * N
        np.testing.assert_array_equal(quantity.si, [[11, 21], [12, 22]])
        np.testing.assert_array_equal(([1, 2] * N) > 1.5 * N, [False, True])
        np.testing.assert_array_equal(np.array([2.0, 3.0]) * (1 * N) == [2, 3] * N, [True, True])
        with pytest.raises(ValueError, match="broadcast|shape"):
            [1, 2] * N + [1, 2, 3] * N

    def test_ratios_are_numbers(self):
        assert float(50 * percent) == 0.5 and 50 * percent == 0.5 and hash(50 * percent) == hash(0.5)
        assert 1 + 50 * percent == 1.5 and 1 - 20 * percent == pytest.approx(0.8) and 1 / (50 * percent) == 2
        np.testing.assert_array_equal(np.asarray([10, 20] * percent), [0.1, 0.2])

    def test_sameness(self):
        assert 1 * N != 1 * mm and 1 * N != 1 and not (1 * N == "1 N") and 1 * Nm != 1 * J
        assert len({1 * inch, 25.4 * mm, 1 * N, 0.0 * N, -0.0 * N}) == 3
        with pytest.raises(TypeError, match="hash"):
            hash([1, 2] * N)


class TestShowing:
    @pytest.mark.parametrize("number", [0.1, 300, 1e-7, 1e300, -12.5, 1 / 3, 123456.789, 0])
    @pytest.mark.parametrize("unit", [lbf_in, mm, degF, psi_absolute, rpm, percent, N])
    def test_a_number_comes_back_as_it_was_given(self, number, unit):
        text = f"{unit(number):full}".removesuffix(f" {unit.symbol}")
        assert unit(float(text)) == unit(number)
        assert len(text) <= len(repr(float(number)))
        assert repr(unit(number)) == str(unit(number))

    @pytest.mark.parametrize(
        ("quantity", "shop"),
        [
            (1234.5678 * lbf_in, "1235 lbf/in"),
            (12345.678 * lbf_in, "12350 lbf/in"),
            (1.25e9 * N, "1.25e9 N"),
            (1e-5 * mm, "1e-5 mm"),
            (-0.0 * N, "0 N"),
            (degC(20.123456), "20.12 °C"),
            (1 / 3 * percent, "0.3333 %"),
            (np.nan * mm, "NaN mm"),
            ([1234.5678, 12345.678, 0.1] * lbf_in, "[1235 12350 0.1] lbf/in"),
            ([] * mm, "[] mm"),
        ],
    )
    def test_str_is_the_shops(self, quantity, shop):
        assert str(quantity) == f"{quantity}" == shop

    def test_str_and_the_core_round_alike(self):
        for number in np.random.default_rng(5).normal(0, 1, 200) * 10.0 ** np.arange(-100, 100):
            assert str(number * N) == f"{number * N:metric}" and str(number * lbf_in) == f"{number * lbf_in:us}"

    def test_formats(self):
        assert f"{300 * lbf_in}" == str(300 * lbf_in) == "300 lbf/in"
        assert f"{rate():.1f}" == "149.0 lbf/in" and f"{rate():us}" == "149 lbf/in" and f"{rate():metric}" == "26.1 N/mm"
        assert f"{[300, 350] * lbf_in:.2f}" == "[300.00 350.00] lbf/in"
        assert f"{[1, 2] * inch:metric}" == "[25.4 50.8] mm"
        assert f"{[1.23456, 2] * inch:us}" == "[1.235 2] in"
        for quantity in (300 * lbf_in, [300, 350] * lbf_in, [] * lbf_in):
            with pytest.raises(ValueError, match='^"nonsense" is no format of a quantity; use .2f, full, metric or us$'):
                f"{quantity:nonsense}"


class TestKeeping:
    @pytest.mark.parametrize("quantity", [300 * lbf_in, degF(70), 50 * percent, [[1.0, 2.0]] * mm, lbf_in, degC])
    def test_pickle_and_copy(self, quantity):
        for protocol in range(pickle.HIGHEST_PROTOCOL + 1):
            again = pickle.loads(pickle.dumps(quantity, protocol))
            assert np.all(again == quantity) and repr(again) == repr(quantity)
        if isinstance(quantity, Quantity):
            assert copy.copy(quantity) is quantity and copy.deepcopy(quantity) is quantity
            if quantity.ndim:
                assert not pickle.loads(pickle.dumps(quantity)).si.flags.writeable


class TestFunctions:
    def test_handbook(self):
        # k r² cos² a, worked by hand: 300 * 0.5625 * 0.88302222155949
        assert rate().to(lbf_in) == pytest.approx(300 * 0.5625 * 0.8830222215594891, rel=1e-14)

    def test_the_result_has_the_unit_of_its_kind_or_of_the_system(self):
        assert rate().unit == lbf_in and rate(50 * N_mm).unit == N_mm

    def test_named_results(self):
        on = mass.weight_distribution(
            left_front=612 * kg, right_front=598 * kg, left_rear=455 * kg, right_rear=467 * kg,
            wheelbase=2650 * mm, front_track=1540 * mm, rear_track=1520 * mm,
        )
        assert on.total_mass == 2132 * kg and isinstance(on.front_share, float)
        assert on.front_share == pytest.approx(1210 / 2132)
        assert on.behind_front_axle.to(mm) == pytest.approx(2650 * 922 / 2132)
        assert pickle.loads(pickle.dumps(on)) == on

    @pytest.mark.parametrize("ratio", [0.75, np.float32(0.75), "0.75", "75 %", 75 * percent, decimal.Decimal("0.75")])
    def test_a_ratio_may_be_bare(self, ratio):
        assert rate(motion_ratio=ratio) == rate()

    @pytest.mark.parametrize(
        ("change", "words"),
        [
            ({"spring_rate": 300}, r"spring_rate = 300 has no unit and a linear stiffness is wanted.*300 \* N_mm"),
            ({"spring_rate": 300.5}, r"300\.5 \* N_mm or \"300\.5 N/mm\""),
            ({"spring_rate": [1, 2]}, r"N_mm\(array\)"),
            ({"spring_rate": np.ones(3)}, "has no unit"),
            ({"spring_rate": 300 * mm}, "spring_rate = 300 mm is a length; a linear stiffness is wanted"),
            ({"spring_rate": [1 * lbf_in, 2 * mm]}, "2 mm is a length"),
            ({"spring_rate": lbf_in}, "unit without a number"),
            ({"spring_rate": None}, "spring_rate: None is not a number"),
            ({"spring_rate": True}, "spring_rate: True is not a number"),
            ({"spring_rate": np.array([object()])}, "spring_rate: .* is not a number"),
            ({"spring_rate": 300 * N}, "a linear stiffness is wanted, for example 300"),
            ({"motion_ratio": 20 * deg}, "motion_ratio = 20 deg is an angle; a ratio is wanted"),
            ({"motion_ratio": np.ma.array([1.0], mask=[True])}, "motion_ratio: a masked array"),
        ],
    )
    def test_wrong_arguments(self, change, words):
        with pytest.raises(TypeError, match=words):
            rate(**{"spring_rate": 300 * lbf_in} | change)

    @pytest.mark.parametrize(
        ("load", "words"),
        [
            (545 * kg, r"^load = 545 kg is a mass; a force is wanted: write kgf\(545\)$"),
            (545 * lb, r"^load = 545 lb is a mass; a force is wanted: write lbf\(545\)$"),
            ([1, 2] * kg, r"kgf\(array\)$"),
            (545 * mm, r"^load = 545 mm is a length; a force is wanted, for example 300 \* N or \"300 N\"$"),
        ],
    )
    def test_a_mass_is_no_force(self, load, words):
        with pytest.raises(TypeError, match=words):
            spring.static_deflection(load=load, rate=300 * lbf_in)

    def test_keywords(self):
        with pytest.raises(TypeError, match="motion_ratio"):
            spring.wheel_rate(spring_rate=300 * lbf_in, angle_from_measured_travel=0 * deg)
        with pytest.raises(TypeError, match="leverage"):
            rate(leverage=1)
        with pytest.raises(TypeError, match="positional"):
            spring.wheel_rate(300 * lbf_in, 1, 0 * deg)
        with pytest.raises(ValueError, match="invalid = 'ignore' is not known"):
            rate(invalid="ignore")
        with pytest.raises(TypeError, match=r"^wheel_rate\(\) missing 3 required keyword-only arguments: 'spring_rate', 'motion_ratio', and 'angle_"):
            spring.wheel_rate()
        with pytest.raises(TypeError, match=r"^ride_rate\(\) missing 1 required keyword-only argument: 'tyre_rate'$"):
            spring.ride_rate(wheel_rate=300 * lbf_in)
        backwards = dict(reversed({"spring_rate": 1 * N_mm, "motion_ratio": 0.5, "angle_from_measured_travel": 0 * deg}.items()))
        assert spring.wheel_rate(**backwards) == 0.25 * N_mm

    @pytest.mark.parametrize("number", [np.nan, np.inf, -np.inf, 0.0, -1.0])
    def test_outside_the_range(self, number):
        with pytest.raises(DomainError) as caught:
            rate(spring_rate=number * lbf_in)
        error = caught.value
        assert isinstance(error, ValueError)
        assert (error.argument, error.lower, error.upper, error.unit) == ("spring_rate", 0.0, np.inf, "N/m")
        np.testing.assert_equal(error.value, (number * lbf_in).si)
        assert error.source and error.source in str(error) and error.index is None and error.number == 1
        again = pickle.loads(pickle.dumps(error))
        assert str(again) == str(error) and again.argument == "spring_rate"
        assert np.isnan(rate(spring_rate=number * lbf_in, invalid="nan").si)

    @pytest.mark.parametrize("number", [1e31, 1e-31])
    def test_outside_the_ends_of_every_argument(self, number):
        with pytest.raises(DomainError) as caught:
            rate(spring_rate=number * N_per_m)
        error = caught.value
        assert (error.argument, error.lower, error.upper, error.unit) == ("spring_rate", 1e-30, 1e30, "N/m")
        assert error.value == number and "1e-30 <= spring_rate <= 1e30" in str(error)

    def test_values_without_an_answer(self):
        with pytest.raises(DomainError, match="^loaded_radius = 400 mm .*; allowed: 150 mm to 300 mm ") as caught:
            tyre.rolling_radius(free_diameter=600 * mm, loaded_radius=400 * mm)
        error = caught.value
        assert (error.argument, error.value, error.unit, error.number) == ("loaded_radius", 0.4, "m", 3)
        assert (error.lower, error.upper) == (0.15, 0.3)
        with pytest.raises(DomainError, match="both springs are solid at the same load, 1000 N") as caught:
            spring.series_crossover(
                first_rate=10 * N_mm, first_travel_to_solid=100 * mm, second_rate=20 * N_mm, second_travel_to_solid=50 * mm
            )
        assert (caught.value.argument, caught.value.lower, caught.value.number) == ("first_travel_to_solid", None, 3)

    @pytest.mark.parametrize("layout", [lambda x: x, np.asfortranarray, lambda x: x[::-1][::-1], lambda x: x.T.copy().T])
    def test_the_first_bad_element(self, layout):
        numbers = np.full((2, 3), 300.0)
        numbers[1, 0] = -1
        numbers[1, 2] = np.nan
        with pytest.raises(DomainError, match="spring_rate = -175.1") as caught:
            rate(spring_rate=layout(numbers) * lbf_in, motion_ratio=np.array([0.5, 0.6, 0.7]))
        assert caught.value.index == (1, 0)
        assert caught.value.__notes__ == ["at index (1, 0) (flat 3) of the broadcast arguments"]
        result = rate(spring_rate=layout(numbers) * lbf_in, motion_ratio=np.array([0.5, 0.6, 0.7]), invalid="nan")
        np.testing.assert_array_equal(np.isnan(result.si), [[False, False, False], [True, False, True]])

    def test_arrays_agree_with_numbers_to_the_last_bit(self):
        numbers = np.random.default_rng(3).uniform(1, 1000, 700)
        ratios = np.random.default_rng(4).uniform(0.1, 1.5, 700)
        together = rate(spring_rate=numbers * lbf_in, motion_ratio=ratios).si
        np.testing.assert_array_equal(together, [rate(x * lbf_in, r).si for x, r in zip(numbers, ratios, strict=True)])

    def test_shapes(self):
        assert rate(spring_rate=np.ones((4, 1)) * lbf_in, motion_ratio=np.ones(3)).shape == (4, 3)
        assert rate(spring_rate=[] * lbf_in).shape == (0,)
        words = r"^spring_rate has the shape \(2,\), motion_ratio has the shape \(3,\); they do not broadcast to one shape$"
        for invalid in ("raise", "nan"):
            with pytest.raises(ValueError, match=words):
                rate(spring_rate=[1, 2] * lbf_in, motion_ratio=[1, 1, 1], invalid=invalid)
        with pytest.raises(ValueError, match=r"angle_from_measured_travel has the shape \(2, 2\)"):
            rate(motion_ratio=[1, 1, 1], angle=np.zeros((2, 2)) * deg)

    def test_no_warning_and_the_error_state_is_left_alone(self):
        with np.errstate(all="raise"):
            rate(spring_rate=[1, -1] * lbf_in, invalid="nan")
            assert np.geterr()["invalid"] == "raise"

    def test_a_fault_inside_is_an_error(self, capfd):
        with pytest.raises(RuntimeError, match="_test.fault: a fault inside axlewright, please report it: thirteen"):
            _fault(number=13.0)
        with pytest.raises(RuntimeError, match="thirteen"):
            _fault(number=[1.0, 13.0])
        assert _fault(number=12.0) == 12.0
        assert "panicked" in capfd.readouterr().err

    def test_threads(self):
        numbers = np.linspace(1, 1000, 100_000)
        expected = rate(spring_rate=numbers * lbf_in).si
        seen = []

        def work():
            for _ in range(5):
                seen.append(np.array_equal(rate(spring_rate=numbers * lbf_in).si, expected))
                with pytest.raises(DomainError):
                    rate(spring_rate=-numbers * lbf_in)

        threads = [threading.Thread(target=work) for _ in range(4)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        assert seen == [True] * 20

    def test_fork(self):
        numbers = np.linspace(1, 1000, 100_000) * lbf_in
        rate(spring_rate=numbers)
        child = os.fork()
        if child == 0:
            os._exit(0 if rate(spring_rate=numbers).size == 100_000 else 1)
        _, status = os.waitpid(child, 0)  # a child that hangs hangs the test, too
        assert status == 0


@pytest.fixture(scope="module")
def ureg():
    return pint.UnitRegistry()


class TestPint:
    def test_there_and_back(self, ureg):
        out = (300 * lbf_in).to_pint(ureg)
        assert out.magnitude == 300 and str(out.units) == "force_pound / inch" and out.check("[force]/[length]")
        assert out.to_base_units().magnitude == pytest.approx(300 * LBF_IN)
        assert (20 * deg).to_pint(ureg).to("degree").magnitude == pytest.approx(20)
        assert degC(20).to_pint(ureg).to("degC").magnitude == pytest.approx(20)
        result = rate(spring_rate=ureg.Quantity(300, "force_pound/inch"), angle=ureg.Quantity(20, "degree"))
        assert result.si == pytest.approx(rate().si, rel=1e-12)
        not_back = set()
        for unit in UNITS.values():
            given = unit(1)
            out = given.to_pint(ureg)
            if unit.kind == "SectionModulus":  # a volume, for pint
                assert out.to_base_units().magnitude == pytest.approx(given.si, rel=1e-12)
                continue
            try:
                back = Q(out)
            except TypeError:
                not_back.add(unit.name)
                continue
            assert (back.kind, back.si) == (unit.kind, pytest.approx(given.si, rel=1e-12)), unit
        # A stress of pint may as well be a pressure, and these have no unit in pint, or another name.
        assert {UNITS[name].kind for name in not_back} == {
            *("Stress", "RoadRoughness", "SpecificHeat", "ThermalConductivity", "ThermalExpansion"),
            *("DynamicViscosity", "Length"),
        }
        assert not_back >= {"psi", "kPa"} and not not_back & {"mm", "inch", "N_mm", "lbf_in", "Nm", "degC", "delta_K", "rpm", "kPa_gauge"}
        gauge, absolute = (15 * psi_gauge).to_pint(ureg), (2 * bar_absolute).to_pint(ureg)
        assert (str(gauge.units), str(absolute.units)) == ("psi_gauge", "bar_absolute")
        assert Q(gauge) == 15 * psi_gauge and Q(absolute).unit == bar_absolute
        with pytest.raises(TypeError, match="whether gauge or absolute"):
            Q(ureg.Quantity(3, "kPa"))
        with pytest.raises(TypeError, match="is a gauge pressure"):
            axlewright.air.pressure_altitude(station_pressure=gauge)

    def test_arrays(self, ureg):
        array = ureg.Quantity(np.array([1.0, -1.0]), "N/mm")
        with pytest.raises(DomainError) as caught:
            rate(spring_rate=array, motion_ratio=1, angle=0 * deg)
        assert caught.value.index == (1,)

    @pytest.mark.parametrize(
        ("function", "argument", "number", "unit", "words"),
        [
            (spring.wheel_rate, "spring_rate", 1, "m", "another dimension"),
            (spring.wheel_rate, "motion_ratio", 20, "degree", "counts an angle"),
            (spring.wheel_rate, "angle_from_measured_travel", 1, "", "does not count an angle"),
            (fluid.water_saturation_pressure, "temperature", 5, "delta_degF", "difference of temperatures"),
            (fluid.water_boiling_temperature, "absolute_pressure", 1, "bar", "gauge or absolute"),
            (engine.power, "engine_speed", 50, "Hz", "does not count an angle"),
        ],
    )
    def test_where_it_says_too_little(self, ureg, function, argument, number, unit, words):
        names = list(inspect.signature(function).parameters)[:-1]
        given = {"spring_rate": 1 * N_mm, "motion_ratio": 1, "angle_from_measured_travel": 0 * deg, "torque": 1 * Nm}
        arguments = {name: given.get(name) for name in names} | {argument: ureg.Quantity(number, unit)}
        with pytest.raises(TypeError, match=f"{argument} = .*{words}"):
            function(**arguments)

    def test_in_a_model(self, ureg):
        fields = {
            "liquid": "water",
            "cap": 15 * psi_gauge,
            "altitude": ureg.Quantity(5000, "foot"),
            "hottest": ureg.Quantity(230, "degF"),
        }
        ours = fields | {"altitude": "5000 ft", "hottest": degF(230)}
        assert cooling.Coolant(**fields).margin() == cooling.Coolant(**ours).margin()
        for wrong in ({"cap": ureg.Quantity(15, "psi")}, {"hottest": ureg.Quantity(5, "delta_degF")}):
            with pytest.raises(TypeError, match=f"^{next(iter(wrong))} = "):
                cooling.Coolant(**fields | wrong)
        # A list says nothing of the kind that its fields want.
        with pytest.raises(TypeError, match=r"points\[0\].torque = .*not known"):
            engine.TorqueCurve(points=[{"engine_speed": 1000 * rpm, "torque": ureg.Quantity(200, "N*m")}] * 2)


class TestModels:
    def coolant(self, **more):
        fields = {"liquid": "water", "cap": 15 * psi_gauge, "altitude": "5000 ft", "hottest": degF(190)}
        return cooling.Coolant(**fields | more)

    def test_document(self):
        made = self.coolant()
        again = cooling.Coolant.from_text(made.to_json())
        assert again == made and hash(again) == hash(made) and pickle.loads(pickle.dumps(made)) == made
        assert "cap='15 psi gauge'" in repr(made) and "hottest='190 °F'" in repr(made)
        assert made != self.coolant(cap=7 * psi_gauge)
        with pytest.raises(AttributeError, match="never changes"):
            made.cap = 3

    def test_fields_and_replace(self):
        made = self.coolant(liquid="ethylene_glycol", mass_fraction=0.5)
        assert made.cap == 15 * psi_gauge and made.hottest == degF(190) and made.mass_fraction == 0.5
        assert made.liquid == "ethylene_glycol" and made.station_pressure is None
        other = made.replace(cap="7 psi gauge")
        assert other.cap == 7 * psi_gauge and made.cap == 15 * psi_gauge
        assert other.margin().boiling_temperature < made.margin().boiling_temperature
        assert made.replace(altitude=None, station_pressure="95 kPa absolute").altitude is None
        with pytest.raises(TypeError, match="capp"):
            made.replace(capp=3)

    def test_nesting_has_an_end(self):
        for nest in (lambda x: [x], lambda x: {"a": x}, lambda x: (x,)):
            deep = "225/70R15"
            for _ in range(100_000):
                deep = nest(deep)
            with pytest.raises(ValueError, match="deeper than 32 levels"):
                tyre.Tyre(marking=deep)
        circle = []
        circle.append(circle)
        with pytest.raises(ValueError, match="deeper than 32 levels"):
            tyre.Tyre(marking=circle)

    @pytest.mark.parametrize(
        ("wrong", "error", "words"),
        [
            ({"cap": 15}, DocumentError, "cap"),
            ({"altitude": "5000 ft ± 200 lb"}, DocumentError, "altitude"),
            ({"tight_below": 20 * delta_degF}, TypeError, "tight_below"),
            ({"cap": 15 * psi_absolute}, DocumentError, "cap"),
            ({"liquid": "beer"}, DocumentError, "beer"),
            ({"altitude": 90000 * m}, DomainError, "altitude"),
            ({"cap": object()}, TypeError, "cap = <object"),
            ({"cap": {1: 2}}, TypeError, "cap: the key 1 is not text"),
            ({"cap": np.nan}, DocumentError, "cap: NaN has no unit"),
            ({"cap": np.inf * psi_gauge}, DomainError, "cap = inf is not a finite gauge pressure; valid: 0 <= cap"),
            ({"octane": 3}, TypeError, "octane"),
        ],
    )
    def test_refusals(self, wrong, error, words):
        with pytest.raises(error, match=words):
            self.coolant(**wrong)

    def test_lines(self):
        with pytest.raises(DocumentError, match="^2 faults, in the order of the text:\nline 2, column 7: cap: ") as caught:
            cooling.Coolant.from_text('liquid = "water"\ncap = "15 furlong"\n')
        assert caught.value.line == 2 and caught.value.key == "cap"
        places = [(fault.line, fault.column, fault.key) for fault in caught.value.faults]
        assert places == [(2, 7, "cap"), (None, None, "hottest")]
        assert caught.value.faults[0].message.startswith("`15 furlong`: ") and repr(caught.value.faults[0]).startswith("Fault(line=2")
        with pytest.raises(DomainError, match="^line 6, column 11: hottest = 9000 K is outside its range") as refused:
            cooling.Coolant.from_text(
                'liquid = "water"\ncap = "15 psi gauge"\naltitude = "0 m"\n\n\nhottest = "9000 K"'
            )
        assert (refused.value.argument, refused.value.faults[0].key) == ("hottest", "hottest")
        for build in (self.coolant, self.coolant().replace):
            with pytest.raises(DocumentError, match="^cap: `15 furlong`: ") as caught:
                build(cap="15 furlong")
            assert caught.value.line is None and caught.value.key == "cap"

    def test_none_is_not_nothing(self):
        main = {"name": "main", "rate": "30 N/mm", "free_length": "0.3 m", "solid_length": "0.1 m"}
        for given, json in (("none", '"none"'), ("5 mm", '"5 mm"')):
            stack = spring.Stack(springs=[main, main], spacers=given)
            assert f'"spacers":{json}' in stack.to_json() and spring.Stack.from_text(stack.to_json()) == stack
        assert spring.Stack(springs=[main, main], spacers="none").spacers == "none"
        assert "spacers" not in spring.Stack(springs=[main, main], spacers=None).to_json()
        with pytest.raises(DocumentError, match="^cap: there is always one, so `none` is not allowed here"):
            self.coolant(cap="none")

    def test_a_refusal_is_said_in_plain_words(self):
        gearbox = {"name": "gearbox", "rating": "400 N·m"}
        for build, words in (
            (lambda: self.coolant(liquid="beer"), "liquid: `beer` is not a choice; choices: `water`, "),
            (lambda: engine.TorqueCurve(points={}), "points: expected a list, not a table"),
            (
                lambda: driveline.TorquePath(engine_torque=3 * Nm, parts=[gearbox]),
                "parts[0].rating: this key is gone; write `torque_rating`, `rating_side` and `rating_kind`",
            ),
            (
                lambda: driveline.TorquePath(engine_torque=3 * Nm, grip="good", parts=[{"name": "gearbox"}]),
                "grip: expected a table with `driven_load`, `loaded_radius` and, where they are known, ",
            ),
            (lambda: tyre.Tyre.from_text("van.toml"), "this looks like a file name: pass its text"),
        ):
            with pytest.raises(DocumentError, match=f"^{re.escape(words)}"):
                build()

    def test_a_table_keeps_its_unit(self):
        made = self.coolant(cap={"value": 15, "unit": "psi gauge"})
        assert made.cap.unit == psi_gauge and "cap='15 psi gauge'" in repr(made)

    def test_results_are_shown_in_the_units_of_the_fields(self):
        made = self.coolant()
        for one in (made, cooling.Coolant.from_text(made.to_json()), made.replace(cap="7 psi gauge")):
            result = one.margin()
            assert result.margin.unit == delta_degF and result.boiling_temperature.unit == degF
            assert result.absolute_pressure.unit == psi_absolute and one.freezing_temperature().unit == degF
            assert one.margin_table(cap="1 bar gauge", altitude="2 km", strength=0).units["margin"] == delta_degF
        metric = self.coolant(cap="1 bar gauge", altitude=1500 * m, hottest=degC(90))
        result = metric.margin()
        assert result.boiling_temperature.unit == degC and result.absolute_pressure.unit == kPa_absolute
        points = [{"engine_speed": f"{speed} rad/s", "torque": speed * ft_lbf} for speed in (100, 200)]
        curve = engine.TorqueCurve(points=points)
        peaks = curve.peaks()
        assert peaks.peak_torque.unit == ft_lbf and peaks.peak_power.unit == hp_mechanical
        assert curve.torque(engine_speed=1000 * rpm).unit == ft_lbf
        assert curve.table(engine_speed=[1000, 1500] * rpm).units["engine_speed"] == rpm

    def test_one_value_where_one_is_wanted(self):
        curve = engine.TorqueCurve(
            points=[
                {"engine_speed": 1000 * rpm, "torque": 210 * Nm},
                {"engine_speed": 2000 * rpm, "torque": 360 * Nm},
                {"engine_speed": 4000 * rpm, "torque": 260 * Nm},
            ]
        )
        assert curve.torque(engine_speed=2000 * rpm).to(Nm) == pytest.approx(360)
        with pytest.raises(TypeError, match="engine_speed is one value here"):
            curve.torque(engine_speed=[1000, 2000] * rpm)
        with pytest.raises(TypeError, match="engine_speed = 1 has no unit"):
            curve.torque(engine_speed=1)
        with pytest.raises(DomainError):
            curve.torque(engine_speed=9000 * rpm)


def test_a_system_is_found_or_named():
    assert axlewright.spring is spring and "spring" in dir(axlewright)
    assert set(dir(axlewright)) - {"__version__"} == {
        *("DocumentError", "DomainError", "Q", "Quantity", "Table", "TextError", "Unit", "Work", "si", "units", "work"),
        *("Error", "arange", "concatenate", "kinds", "linspace"),
        *("verdict_of_difference", "verdict_of_place", "verdict_of_ratio"),
        *("PriceList", "Sheet", "sheet", "span"),
        *SYSTEMS,
    }
    assert dir(axlewright.si) == sorted(axlewright.si.generated.SYSTEMS)
    with pytest.raises(AttributeError, match="nonsense"):
        axlewright.nonsense
    assert axlewright.__version__.count(".") == 2


def test_lengths_of_the_units():
    # International yard and pound agreement of 1959, exact.
    assert (1 * inch).to(m) == 0.0254 and (1 * kPa_gauge).si == 1000


def test_labels_of_data_are_read_and_written():
    xr = pytest.importorskip("xarray")
    rates = xr.DataArray(np.array([20e3, 30e3]), dims="spring", attrs={"units": "N/m", "rig": "two posts"})
    with pytest.raises(TypeError, match=r'the data say `attrs\["units"\]` = "N/m", not lbf/in'):
        lbf_in(rates)
    with pytest.raises(TypeError, match="not N/mm"):
        N_mm(rates)
    taken = N_per_m(rates)
    assert taken.si.attrs == {"units": "N/m", "rig": "two posts"} and taken.to(N_mm).attrs["units"] == "N/mm"
    frequency = spring.natural_frequency(tangent_rate=taken, sprung_mass=300 * kg)
    assert frequency.si.attrs["units"] == "Hz" and frequency.to("Hz").values.tolist() == frequency.si.values.tolist()
    # The data themselves keep their label, and a label that is no unit of the kind is refused, too.
    assert rates.attrs["units"] == "N/m"
    with pytest.raises(TypeError, match="furlong"):
        N_per_m(rates.assign_attrs(units="furlong"))
    series = pytest.importorskip("pandas").Series([1.0, 2.0])
    series.attrs["units"] = "in"
    with pytest.raises(TypeError, match="not mm"):
        mm(series)
    assert inch(series).si.attrs["units"] == "m"
