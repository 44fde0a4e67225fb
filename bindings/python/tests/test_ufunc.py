"""The ufuncs of `axlewright.si` are NumPy's in every respect."""

import os
import pickle
import subprocess
import sys
import threading
import warnings

import numpy as np
import pytest

import axlewright
from axlewright import si
from axlewright._native import _fault_ufunc
from axlewright.si import mass, spring

ANGLE = np.linspace(-1.5, 1.5, 601)


def by_hand(k, r, a):
    along = r * np.cos(a)
    return k * along * along


def test_they_are_ufuncs_by_their_names():
    ufuncs = {f"{system}.{name}": getattr(getattr(si, system), name) for system in dir(si) for name in getattr(si, system).__all__}
    assert len(ufuncs) > 150
    for name, ufunc in ufuncs.items():
        assert type(ufunc) is np.ufunc and ufunc.__name__ == name
        assert ufunc.types == ["d" * ufunc.nin + "->" + "d" * ufunc.nout]
        assert ufunc.nin + ufunc.nout <= 32 and ufunc.identity is None
        assert len(ufunc.__doc__) > 60


def test_values():
    np.testing.assert_allclose(spring.wheel_rate(5e4, 0.75, ANGLE), by_hand(5e4, 0.75, ANGLE), rtol=1e-15)
    assert isinstance(spring.wheel_rate(5e4, 0.75, 0.3), np.float64)


@pytest.mark.parametrize("length", [0, 1, 2, 3, 15, 16, 17, 255, 256, 257, 511, 1000])
@pytest.mark.parametrize("step", [1, 2, -1, -3])
def test_every_length_and_step_gives_the_same_bits(length, step):
    rng = np.random.default_rng(length)
    wheel, tyre = rng.uniform(-1e4, 5e4, (2, length * abs(step)))
    wheel, tyre = wheel[::step], tyre[::step]
    out = np.full(2 * len(wheel), 7.0)
    with np.errstate(invalid="ignore"):
        spring.ride_rate(wheel, tyre, out=out[::2])
        one_by_one = np.array([spring.ride_rate(w, t) for w, t in zip(wheel, tyre, strict=True)])
    np.testing.assert_array_equal(out[::2], one_by_one)
    assert (out[1::2] == 7).all()


@pytest.mark.parametrize("dtype", [np.float32, np.float16, np.int8, np.int64, np.uint16, bool, ">f8", ">f4", ">i2", "<f8"])
def test_other_types_are_cast(dtype):
    numbers = np.array([1, 0, 1, 1]).astype(dtype)
    with np.errstate(invalid="ignore"):
        result = spring.ride_rate(numbers, 1.0)
    assert result.dtype == np.float64
    np.testing.assert_array_equal(result, [0.5, np.nan, 0.5, 0.5])


@pytest.mark.parametrize("bad", ["text", None, object(), 1j, np.array([1j]), np.array(["a"]), np.array([object()]), {}])
def test_what_cannot_be_cast(bad):
    with pytest.raises((TypeError, ValueError)):
        spring.ride_rate(bad, 1.0)


def test_shapes():
    assert spring.ride_rate(np.ones((4, 1)), np.ones(3)).shape == (4, 3)
    assert spring.ride_rate(np.ones((0, 3)), np.ones(3)).shape == (0, 3)
    assert spring.ride_rate(np.asfortranarray(np.ones((4, 3))), 1).flags.f_contiguous
    with pytest.raises(ValueError, match="broadcast"):
        spring.ride_rate(np.ones(3), np.ones(2))
    with pytest.raises((TypeError, ValueError)):
        spring.ride_rate(1.0)
    masked = spring.ride_rate(np.ma.array([1.0, 2.0], mask=[False, True]), 1.0)
    assert isinstance(masked, np.ma.MaskedArray) and masked[0] == 0.5


def test_out_and_where():
    out = np.zeros(3)
    assert spring.ride_rate([1.0, 2.0, 3.0], 1.0, out=out, where=[True, False, True]) is out
    np.testing.assert_array_equal(out, [0.5, 0, 0.75])
    same = np.array([1.0, 3.0])
    spring.ride_rate(same, 1.0, out=same)
    np.testing.assert_array_equal(same, [0.5, 0.75])
    line = np.arange(1.0, 601.0)
    expected = spring.ride_rate(line[:-1], 1.0)
    spring.ride_rate(line[:-1], 1.0, out=line[1:])
    np.testing.assert_array_equal(line[1:], expected)
    whole = np.empty(3, dtype=np.float32)
    spring.ride_rate([1.0, 2.0, 3.0], 1.0, out=whole, casting="same_kind")
    assert whole[0] == 0.5
    with np.errstate(all="raise"):
        assert spring.ride_rate([1.0, -1.0], 1.0, where=[True, False], out=np.zeros(2))[0] == 0.5


def test_reductions_use_what_they_made():
    """Springs in series: a result is an argument of the next element."""
    for count in (2, 3, 64, 600):
        rates = np.full(count, 100.0)
        assert spring.ride_rate.reduce(rates) == pytest.approx(100.0 / count, rel=1e-12)
        np.testing.assert_allclose(spring.ride_rate.accumulate(rates), 100.0 / np.arange(1, count + 1), rtol=1e-12)
    assert si.engine.power.reduce([2.0, 3.0, 4.0]) == 24.0
    with np.errstate(invalid="ignore"):
        assert np.isnan(spring.ride_rate.reduce([1.0, -1.0, 2.0]))
    shifted = np.full(300, 100.0)
    spring.ride_rate(shifted[:-1], 100.0, out=shifted[1:])
    np.testing.assert_array_equal(shifted[1:], 50.0)


def test_a_write_meanwhile_gives_a_result_or_nan():
    """Another thread writes invalid values while the interpreter is released: never a number that no formula gives."""
    pressures = np.full(200_000, 1e5)
    good = si.fluid.water_boiling_temperature(1e5)
    done = threading.Event()

    def flip():
        while not done.is_set():
            pressures[::7] = 1.0
            pressures[::7] = 1e5

    writer = threading.Thread(target=flip)
    writer.start()
    try:
        with np.errstate(invalid="ignore"):
            for _ in range(200):
                results = si.fluid.water_boiling_temperature(pressures)
                assert np.all((results == good) | np.isnan(results))
    finally:
        done.set()
        writer.join()


def test_several_results():
    readings = np.array([612.0, 700.0]), 598.0, 455.0, 467.0, 2.65, 1.54, 1.52
    results = mass.weight_distribution(*readings)
    assert len(results) == mass.weight_distribution.nout == 8
    np.testing.assert_array_equal(results[0], [2132, 2220])
    outs = tuple(np.empty(2) for _ in range(8))
    assert mass.weight_distribution(*readings, out=outs)[3] is outs[3]
    with np.errstate(invalid="ignore"):
        assert np.isnan(mass.weight_distribution(-1.0, *readings[1:])).all()


class TestFlags:
    @pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf, 0.0, -1.0])
    @pytest.mark.parametrize("length", [1, 5, 300, 100_000])
    def test_a_refusal_is_invalid_and_nothing_else(self, bad, length):
        numbers = np.full(length, 2.0)
        numbers[length // 2] = bad
        for ufunc, rest in ((spring.ride_rate, (3.0,)), (spring.wheel_rate, (1.0, 0.1))):
            with np.errstate(invalid="ignore", divide="raise", over="raise", under="raise"):
                result = ufunc(numbers, *rest)
            assert list(np.flatnonzero(np.isnan(result))) == [length // 2]
            with np.errstate(all="ignore", invalid="raise"), pytest.raises(FloatingPointError, match="invalid value"):
                ufunc(numbers, *rest)
            with np.errstate(invalid="warn"), pytest.warns(RuntimeWarning, match=f"invalid value.*{ufunc.__name__}"):
                ufunc(numbers, *rest)

    def test_no_refusal_no_flag(self):
        with np.errstate(all="raise"):
            spring.ride_rate(np.linspace(1, 2, 1000), 3.0)
            spring.ride_rate([1e-30, 1e-29], 1e30)

    def test_an_argument_that_would_overflow_is_refused(self):
        with np.errstate(all="ignore", invalid="raise"), pytest.raises(FloatingPointError, match="invalid value"):
            spring.wheel_rate(1e308, 1.5, 0.0)

    def test_an_earlier_flag_is_not_taken_for_ours(self):
        with np.errstate(all="ignore"):
            np.divide(np.zeros(3), 0.0)
            np.log(np.array([-1.0]))
        with np.errstate(all="raise"):
            assert spring.ride_rate(1.0, 1.0) == 0.5

    def test_warnings_by_default(self):
        with warnings.catch_warnings(record=True) as caught:
            warnings.simplefilter("always")
            assert np.isnan(spring.ride_rate(-1.0, 1.0))
        assert [str(w.message) for w in caught] == ["invalid value encountered in spring.ride_rate"]


def test_pickle():
    for ufunc in (spring.wheel_rate, mass.weight_distribution):
        for protocol in (pickle.DEFAULT_PROTOCOL, pickle.HIGHEST_PROTOCOL):
            assert pickle.loads(pickle.dumps(ufunc, protocol)) is ufunc
    script = "import pickle, sys; print(pickle.loads(sys.stdin.buffer.read())(2.0, 2.0))"
    done = subprocess.run(
        [sys.executable, "-c", script], input=pickle.dumps(spring.ride_rate), capture_output=True
    )
    assert done.stdout.split() == [b"1.0"], done.stderr


def test_a_fault_inside_is_an_error(capfd):
    fault = _fault_ufunc
    for bad in (13.0, np.array([1.0, 13.0]), np.linspace(0, 13, 100_001)):
        with pytest.raises(RuntimeError, match="a fault inside axlewright, please report it: thirteen"):
            fault(bad)
    assert fault(12.0) == 12.0
    assert "panicked" in capfd.readouterr().err


def test_threads_share_the_work():
    numbers = np.linspace(1, 2, 200_000)
    expected = spring.ride_rate(numbers, 3.0)
    seen = []
    threads = [
        threading.Thread(target=lambda: seen.append(np.array_equal(spring.ride_rate(numbers, 3.0), expected)))
        for _ in range(8)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert seen == [True] * 8


def test_after_a_fork():
    numbers = np.linspace(1, 2, 200_000)
    spring.ride_rate(numbers, 3.0)
    child = os.fork()
    if child == 0:
        os._exit(0 if spring.ride_rate(numbers, 3.0).shape == numbers.shape else 1)
    _, status = os.waitpid(child, 0)  # a child that hangs hangs the test, too
    assert status == 0


class TestContainers:
    """What NumPy's protocols promise, dask, xarray and pandas get."""

    def test_dask(self):
        import dask.array as da

        lazy = spring.ride_rate(da.ones(10, chunks=5), 1.0)
        assert isinstance(lazy, da.Array)
        np.testing.assert_array_equal(lazy.compute(scheduler="synchronous"), np.full(10, 0.5))
        quantity = axlewright.units.N_per_m(da.from_array(np.array([1.0, -1.0]), chunks=1))
        result = axlewright.spring.ride_rate(wheel_rate=quantity, tyre_rate="1 N/m")
        assert isinstance(result.si, da.Array)
        with np.errstate(invalid="ignore"):
            np.testing.assert_array_equal(result.si.compute(scheduler="synchronous"), [0.5, np.nan])

    def test_xarray(self):
        import xarray as xr

        rates = xr.DataArray([1.0, 3.0], dims="rate", coords={"rate": ["soft", "hard"]})
        tyres = xr.DataArray([1.0, -1.0, 2.0], dims="tyre")
        assert spring.ride_rate(rates, 1.0).dims == ("rate",)
        unit = axlewright.units.N_per_m
        result = axlewright.spring.ride_rate(wheel_rate=unit(rates), tyre_rate=unit(tyres), invalid="nan")
        assert result.si.dims == ("rate", "tyre") and result.to("N/mm").sel(rate="hard").shape == (3,)
        assert result[0].shape == (3,)
        with pytest.raises(axlewright.DomainError, match="tyre_rate = -1") as caught:
            axlewright.spring.ride_rate(wheel_rate=unit(rates), tyre_rate=unit(tyres))
        assert caught.value.index == (0, 1)

    def test_pandas(self):
        import pandas as pd

        series = pd.Series([1.0, 3.0, -1.0], index=["a", "b", "c"])
        with np.errstate(invalid="ignore"):
            assert spring.ride_rate(series, 1.0)["b"] == 0.75
        unit = axlewright.units.N_per_m
        result = axlewright.spring.ride_rate(wheel_rate=unit(series[:2]), tyre_rate=1 * unit)
        assert result.si["b"] == 0.75
        with pytest.raises(axlewright.DomainError) as caught:
            axlewright.spring.ride_rate(wheel_rate=unit(series), tyre_rate=1 * unit)
        assert caught.value.index == (2,)


def test_import_is_light():
    script = (
        "import numpy, sys; before = set(sys.modules); import axlewright; "
        "print(*sorted(m.split('.')[0] for m in set(sys.modules) - before))"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert set(done.stdout.split()) <= {"axlewright", "__future__", "atexit"}
