"""What-if: the same numbers whole, in pieces, on threads, in other processes; memory, interruption, Parquet."""

import json
import multiprocessing
import os
import pickle
import signal
import subprocess
import sys
from pathlib import Path

import interrupted
import matplotlib
import numpy as np
import pandas as pd
import pint
import pyarrow as pa
import pyarrow.parquet as pq
import pytest
import xarray as xr

from axlewright import DocumentError, Quantity, Table
from axlewright.sheet import Sheet, span, to_dask
from axlewright.units import N_mm, kg, lbf_in

DUNLIN = Path(__file__).with_name("sheet.toml")
OUTPUTS = ["front.wheel_rate", "front.natural_frequency", "front.bump.margin", "front.bump.verdict", "front.frequency.value"]
GRID = {
    "front.spring.rate": span("300 lbf/in", "900 lbf/in", 100),
    "front.spring.motion_ratio": np.linspace(0.4, 0.8, 20),
    "front.unsprung_mass": np.linspace(80, 140, 10) * kg,
    "front.damper.stroke": span("90 mm", "140 mm", 50),
}


@pytest.fixture(scope="module")
def dunlin():
    return Sheet.load(DUNLIN)


@pytest.fixture(scope="module")
def million(dunlin):
    # Joints, hoses and tyres that end no travel: with them open, no bump is better than tight.
    clear = [f"front.{part}" for part in ("joint_bump_clearance", "hose_bump_clearance", "tyre_clearance")]
    sweep = dunlin.with_(dict.fromkeys(clear, "none")).what_if(GRID, OUTPUTS)
    assert sweep.rows == len(sweep) == 1_000_000 and sweep.shape == (100, 20, 10, 50)
    return sweep


@pytest.fixture(scope="module")
def whole(million):
    return pa.table(million).combine_chunks()


def test_a_million_rows_equal_single_sheets(million):
    """A seeded sample of rows, each beside a sheet of its own that is assessed: the same bits."""
    table = million.table()
    lines = list(GRID)
    for row in np.random.default_rng(20).integers(0, million.rows, 300):
        given = {line: table[line][row] if isinstance(table[line], Quantity) else float(table[line][row]) for line in lines}
        assessment = million.sheet.with_(given).assess()
        bump = assessment["front.bump"]
        assert table["front.wheel_rate"][row] == assessment.value("front.wheel_rate")
        assert table["front.natural_frequency"][row] == assessment.value("front.natural_frequency")
        assert table["front.frequency.value"][row] == assessment["front.frequency"].value
        assert table["front.bump.margin"][row] == bump.margin and table["front.bump.verdict"][row] == bump.verdict
    assert set(table["front.bump.verdict"]) == {"meets", "tight", "short"} and table.reasons == {}


def test_a_million_rows_are_the_same_on_threads_and_in_pieces(million, whole):
    assert whole.num_rows == 1_000_000
    for threads in (1, 2):
        assert pa.table(million.sheet.what_if(GRID, OUTPUTS, threads=threads)).combine_chunks().equals(whole)
    pieces = pa.Table.from_batches(pa.record_batch(batch) for batch in million.batches(rows=77_777))
    assert [len(chunk) for chunk in pieces["front.wheel_rate [N/m]"].chunks][:2] == [77_777, 77_777]
    assert pieces.combine_chunks().equals(whole)
    parts = [pickle.loads(pickle.dumps(part)) for part in million.partitions(7)]
    assert sum(part.rows for part in parts) == million.rows and len(parts) == 7
    assert pa.concat_tables(map(pa.table, parts)).combine_chunks().equals(whole)


def test_values_in_every_form(dunlin):
    registry = pint.UnitRegistry()
    wanted = ([200, 250] * lbf_in).si
    for values in (
        ["200 lbf/in", "250 lbf/in"],
        [200 * lbf_in, 250 * lbf_in],
        [200, 250] * lbf_in,
        ("200 lbf/in", 250 * lbf_in),
        iter(["200 lbf/in", "250 lbf/in"]),
        span("200 lbf/in", 250 * lbf_in, 2),
        wanted * registry("N/m"),
    ):
        table = dunlin.what_if({"front.spring.rate": values}, ["front.wheel_rate"]).table()
        np.testing.assert_array_equal(table["front.spring.rate"].si, wanted)
    table = dunlin.what_if({"front.spring.rate": [200, 250] * lbf_in}, ["front.wheel_rate"]).table()
    assert table["front.spring.rate"].unit == lbf_in and table["front.wheel_rate"].unit == N_mm
    grid = {
        "front.tyre.size": ["235/70R16", "225/70R16"],
        ("front.damper.mounting", "front.damper.rate"): [("coil_over", "7 N·s/mm"), ("apart", Quantity(8, "N·s/mm"))],
        "gearbox.ratios[0]": [4.7, 4.9, 5.1],
    }
    sweep = dunlin.what_if(grid, ["front.damping.margin", "driveline.cruise.value"])
    table = sweep.table()
    assert sweep.shape == (2, 2, 3) and table["front.tyre.size"].tolist() == ["235/70R16"] * 6 + ["225/70R16"] * 6
    assert table["front.damper.mounting"].tolist()[:6] == ["coil_over"] * 3 + ["apart"] * 3
    assert table["gearbox.ratios[0]"].tolist()[:3] == [4.7, 4.9, 5.1]
    # A damper that stands apart needs a motion ratio of its own: no number in those rows, and a number in the others.
    assert np.isnan(table["front.damping.margin"][3:6]).all() and np.isfinite(table["front.damping.margin"][:3]).all()
    assert sweep.not_known == {}
    side = dunlin.what_if({"front.spring.rate": [1, 2, 3] * N_mm, "gearbox.ratios[0]": [4, 5, 6]}, ["front.wheel_rate"], grid=False)
    assert side.rows == 3 and side.table()["gearbox.ratios[0]"].tolist() == [4.0, 5.0, 6.0]
    assert pa.concat_tables(map(pa.table, side.partitions(2))).combine_chunks().equals(pa.table(side).combine_chunks())
    every = dunlin.what_if({"front.spring.rate": ["500 lbf/in"]})
    assert len(every.table()) == 1 + 2 * len(dunlin.assess()) and "front.spring_strength.margin" in every.not_known
    assert "front.spring.wire_diameter" in every.not_known["front.spring_strength.margin"]


def test_a_value_that_a_line_does_not_allow_refuses_its_row(dunlin):
    sweep = dunlin.what_if({"front.spring.rate": [500, -1, 600] * lbf_in}, ["front.wheel_rate", "front.bump.verdict"])
    table = sweep.table()
    assert list(table.reasons) == [1] and "front.spring.rate" in table.reasons[1]
    assert np.isnan(table["front.wheel_rate"].si).tolist() == [False, True, False]
    assert table["front.bump.verdict"][1] == "not known"
    reasons = pa.table(sweep)["reason"].to_pylist()
    assert reasons == [None, table.reasons[1], None] and pa.table(table)["reason"].to_pylist() == reasons


@pytest.mark.parametrize(
    ("lines", "outputs", "options", "error", "message"),
    [
        ({"front.spring.rat": ["1 N/mm"]}, [], {}, DocumentError, "did you mean `front.spring.rate`"),
        ({"front.spring.rate": ["1 kg"]}, [], {}, ValueError, "front.spring.rate"),
        ({"front.spring.rate": [1, 2]}, [], {}, TypeError, "front.spring.rate = .* has no unit"),
        ({"front.spring.rate": [[1, 2]] * N_mm}, [], {}, TypeError, "front.spring.rate is a list of values, not a table"),
        ({"front.damper.mounting": ["upside_down"]}, [], {}, DocumentError, "`upside_down` is not a choice"),
        ({"front.damper.mounting": "apart"}, [], {}, TypeError, "front.damper.mounting = 'apart' is no list of texts"),
        ({("front.spring.rate", "gearbox.ratios[0]"): [("1 N/mm",)]}, [], {}, ValueError, "entry 0"),
        ({("front.spring.rate", "gearbox.ratios[0]"): span("1 N/mm", "2 N/mm", 2)}, [], {}, TypeError, "a span is of one line"),
        ({"front.spring.rate": span("1 N/mm", "2 N/mm", 1)}, [], {}, ValueError, "at least two values"),
        ({"front.spring.rate": ["1 N/mm"]}, ["front.wheel_rat"], {}, DocumentError, "did you mean `front.wheel_rate`"),
        ({"front.spring.rate": ["1 N/mm"]}, [], {"threads": 0}, ValueError, "threads = 0"),
        ({"front.spring.rate": ["1 N/mm"] * 2, "gearbox.ratios[0]": [1] * 3}, [], {"grid": False}, DocumentError, "beside 3"),
    ],
)
def test_what_is_refused(dunlin, lines, outputs, options, error, message):
    with pytest.raises(error, match=message):
        dunlin.what_if(lines, outputs, **options)


def test_it_pickles_and_compares(dunlin):
    sweep = dunlin.what_if(GRID, OUTPUTS, threads=1)
    again = pickle.loads(pickle.dumps(sweep))
    assert again == sweep and hash(again) == hash(sweep) and again != sweep.partitions(2)[0] and sweep != "text"
    assert dunlin.what_if({**GRID, "front.damper.stroke": span("91 mm", "140 mm", 50)}, OUTPUTS) != sweep
    assert span("1 N/mm", "2 N/mm", 3) == pickle.loads(pickle.dumps(span("1 N/mm", "2 N/mm", 3)))


def test_pandas_and_xarray(dunlin):
    lines = {"front.spring.rate": [500, 550] * lbf_in, ("front.tyre.size", "front.tyre.rate"): [
        ("235/70R16", "240 N/mm"), ("225/70R16", "230 N/mm"), ("235/70R16", "250 N/mm"),
    ]}
    sweep = dunlin.what_if(lines, ["front.ride_rate", "front.frequency.verdict"])
    frame = sweep.to_pandas()
    assert list(frame)[:1] == ["front.spring.rate [lbf/in]"] and frame.attrs["units"]["front.ride_rate [N/mm]"] == "N/mm"
    data = sweep.to_xarray()
    assert isinstance(data, xr.Dataset) and dict(data.sizes) == {"front.spring.rate": 2, "front.tyre.size": 3}
    assert data["front.spring.rate"].values.tolist() == [500, 550] and data["front.spring.rate"].attrs["units"] == "lbf/in"
    assert data["front.tyre.rate"].dims == ("front.tyre.size",) and data["front.tyre.rate"].values.tolist() == [240, 230, 250]
    assert data["front.ride_rate"].attrs == {"units": "N/mm", "quantity": "LinearStiffness"}
    np.testing.assert_array_equal(data["front.ride_rate"].values.ravel(), frame["front.ride_rate [N/mm]"])
    assert data["front.frequency.verdict"].shape == (2, 3)
    si = sweep.to_xarray("si")
    np.testing.assert_array_equal(si["front.ride_rate"].values.ravel(), sweep.table()["front.ride_rate"].si)
    assert dict(sweep.partitions(2)[0].to_xarray().sizes) == {"row": 3}
    assert sweep.table() == Table(dict(sweep.table())) and isinstance(frame, pd.DataFrame)


def test_progress(dunlin):
    told = []
    sweep = dunlin.what_if(GRID, OUTPUTS, threads=1, progress=lambda done, total: told.append((done, total)))
    table = sweep.table()
    assert told[-1] == (1_000_000, 1_000_000) and told == sorted(told) and table.rows == 1_000_000
    told.clear()
    assert sum(batch.rows for batch in sweep.batches(rows=100_000)) == 1_000_000
    assert told[-1] == (1_000_000, 1_000_000) and told == sorted(told)

    def fails(done, total):
        raise RuntimeError("enough")

    with pytest.raises(RuntimeError, match="enough"):
        dunlin.what_if({**GRID, "front.tyre.rate": span("200 N/mm", "250 N/mm", 20)}, OUTPUTS, progress=fails).table()
    bar = dunlin.what_if({"front.spring.rate": ["500 lbf/in"]}, OUTPUTS, progress=True)
    assert bar.table().rows == 1
    with pytest.raises(ValueError, match="rows = 0"):
        next(sweep.batches(rows=0))
    with pytest.raises(ValueError, match="count = 0"):
        sweep.partitions(0)


@pytest.mark.parametrize("count", [1_000_000_000, 1_000_000_000_000_000_000])
def test_a_long_span_takes_no_memory(dunlin, count):
    """Its rows come piece by piece; as one table they are refused before anything is allocated."""
    sweep = dunlin.what_if({"front.tyre.rate": span("200 N/mm", "250 N/mm", count)}, ["front.ride_rate"])
    assert sweep.rows == len(sweep) == count and sweep.shape == (count,)
    first = next(sweep.batches(rows=3)).table()["front.tyre.rate"].si
    assert first.tolist() == [2e5 + 5e4 * (row / (count - 1)) for row in range(3)]
    last = sweep.partitions(2)[-1]
    assert last.rows == count // 2
    assert pickle.loads(pickle.dumps(last)) == last
    for whole in (sweep.table, last.table, sweep.to_pandas, sweep.to_xarray, sweep.plot):
        with pytest.raises(ValueError, match=r"a table of \d+ rows of \d+ bytes each takes .* GiB, and one table at most 4 GiB: .* `batches`"):
            whole()


@pytest.mark.parametrize("count", [-1, 0, 10**30])
def test_a_span_of_no_length_is_refused(dunlin, count):
    with pytest.raises(ValueError, match=rf"front.tyre.rate: count = {count} is outside its range; a range has at least two"):
        dunlin.what_if({"front.tyre.rate": span("200 N/mm", "250 N/mm", count)}, [])


def test_parquet(million, whole, tmp_path):
    path = tmp_path / "sweep.parquet"
    million.to_parquet(path, compression="zstd")
    assert pq.read_table(path).equals(whole.cast(pq.read_schema(path)), check_metadata=False)
    assert pq.read_schema(path).field("front.wheel_rate [N/m]").metadata == {b"unit": b"N/m", b"quantity": b"LinearStiffness"}
    assert os.listdir(tmp_path) == ["sweep.parquet"]
    with pq.ParquetWriter(tmp_path / "by_hand.parquet", pa.schema(million)) as writer:
        for batch in pa.RecordBatchReader.from_stream(million):
            writer.write_batch(batch)
    assert pq.read_table(tmp_path / "by_hand.parquet").equals(pq.read_table(path))


def test_nothing_half_written_is_left(dunlin, tmp_path):
    path = tmp_path / "sweep.parquet"
    path.write_bytes(b"what was there before")

    def fails(done, total):
        if done > 200_000:
            raise RuntimeError("enough")

    with pytest.raises(RuntimeError, match="enough"):
        dunlin.what_if(GRID, OUTPUTS, progress=fails).to_parquet(path, rows=10_000)
    with pytest.raises(TypeError):
        dunlin.what_if(GRID, OUTPUTS).to_parquet(path, nothing="such")
    assert path.read_bytes() == b"what was there before" and os.listdir(tmp_path) == ["sweep.parquet"]
    with pytest.raises(FileNotFoundError):
        dunlin.what_if(GRID, OUTPUTS).to_parquet(tmp_path / "nowhere" / "sweep.parquet")


@pytest.mark.parametrize("how", interrupted.WAYS)
def test_an_interrupt_is_answered(how, tmp_path):
    """The work reports from within, and has no end; it leaves no file. How soon the answer comes, the bench says."""
    command = [sys.executable, interrupted.__file__, how, tmp_path]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        assert child.stdout.readline() == "inside\n", child.communicate()[1]
        child.send_signal(signal.SIGINT)
        _, said = child.communicate()
        assert said.rstrip().endswith("KeyboardInterrupt") and child.returncode == -signal.SIGINT, said
        assert os.listdir(tmp_path) == []
    finally:
        child.kill()
        child.communicate()


def _hashes(sweep):
    return [pa.table(part)["front.wheel_rate [N/m]"].to_numpy().tobytes() for part in sweep.partitions(2)]


@pytest.mark.filterwarnings("ignore:.*multi-threaded.*:DeprecationWarning")
@pytest.mark.parametrize("method", ["spawn", "fork"])
def test_other_processes(dunlin, method):
    """After a sweep on threads here: a fork has none of them, a spawned process has only what pickles."""
    lines = {"front.spring.rate": span("300 lbf/in", "900 lbf/in", 200), "front.unsprung_mass": span("80 kg", "140 kg", 100)}
    sweep = dunlin.what_if(lines, OUTPUTS, threads=2)
    here = _hashes(sweep)
    with multiprocessing.get_context(method).Pool(1) as pool:
        assert pool.apply(_hashes, (sweep,)) == here
        assert pool.apply(Sheet.to_json, (dunlin,)) == dunlin.to_json()
        assert pool.apply(len, (dunlin.assess(),)) == len(dunlin.assess())


def test_dask_gives_the_same_bits(dunlin):
    lines = {"front.spring.rate": span("300 lbf/in", "900 lbf/in", 100), "front.spring.motion_ratio": [0.5, 0.6, 9.0]}
    sweep = dunlin.what_if(lines, OUTPUTS)
    frame = to_dask(sweep, 4)
    assert frame.npartitions == 4
    there, here = frame.compute(scheduler="synchronous"), sweep.to_pandas()
    assert list(there) == list(here) and there["reason"].notna().sum() == 100
    for name in here:
        if name != "reason" and here[name].dtype == np.float64:
            assert there[name].to_numpy().tobytes() == here[name].to_numpy().tobytes()
        else:
            assert there[name].fillna("").tolist() == here[name].fillna("").tolist()


def test_two_workers_of_a_local_cluster():
    """The example, as a script: two workers are processes of their own, and none is given up because the machine is busy."""
    script = Path(__file__).parents[3] / "examples/python/many_machines.py"
    patient = {f"DASK_DISTRIBUTED__{name}": "1 day" for name in ("COMM__TIMEOUTS__CONNECT", "COMM__TIMEOUTS__TCP", "SCHEDULER__WORKER_TTL")}
    done = subprocess.run(
        [sys.executable, script, "--json"], capture_output=True, text=True, check=False, env={**os.environ, **patient}
    )
    assert done.returncode == 0, done.stderr
    said = json.loads(done.stdout.splitlines()[-1])
    assert said["workers"] == 2 and said["rows"] == 1_000_000 and said["same"] is True


def test_it_shows_itself(dunlin):
    lines = {"front.spring.rate": span("300 lbf/in", "900 lbf/in", 61), "front.spring.motion_ratio": span(0.5, 0.7, 31)}
    sweep = dunlin.what_if(lines, [*OUTPUTS, "front.spring_strength.margin"])
    page = sweep._repr_html_()
    assert "the first 20 of 1891 rows" in page and "front.spring.rate [lbf/in]" in page and ">short</td>" in page
    assert "not known: front.spring_strength.margin" in page
    assert repr(sweep) == "<Sweep of 1891 rows (61 x 31): front.spring.rate, front.spring.motion_ratio>"


def test_no_word_of_a_drawing_lies_on_another_text(dunlin):
    matplotlib.use("agg")
    import matplotlib.pyplot as plt

    grid = {"front.spring.rate": span("300 lbf/in", "800 lbf/in", 41), "front.spring.motion_ratio": span(0.5, 0.75, 31)}
    for finding in ("front.bump", "front.frequency", "front.damping"):
        for width in (5, 8):
            _, mine = plt.subplots(figsize=(width, 4.5))
            axes = dunlin.what_if(grid).plot(f"{finding}.margin", ax=mine)
            axes.figure.draw_without_rendering()
            words = [text for text in axes.texts if text.get_text() in ("meets", "tight", "short")]
            assert words and len(axes.texts) > len(words)
            for word in words:
                others = [text for text in axes.texts if text is not word]
                assert not any(word.get_window_extent().overlaps(other.get_window_extent()) for other in others)
    plt.close("all")


def test_it_draws_itself(dunlin):
    matplotlib.use("agg")
    import matplotlib.pyplot as plt

    rate, ratio = span("300 lbf/in", "900 lbf/in", 61), span(0.5, 0.7, 31)
    axes = dunlin.what_if({"front.spring.rate": rate}, ["front.frequency.value"]).plot()
    words = [text.get_text() for text in axes.texts]
    assert axes.get_xlabel() == "front.spring.rate [lbf/in]" and axes.get_ylabel() == "front.frequency.value [Hz]"
    assert words == ["short", "meets", "short"] and [patch.get_hatch() for patch in axes.patches] == ["xx", "", "xx"]
    axes = dunlin.what_if({"front.spring.rate": rate, "front.spring.motion_ratio": ratio}, ["front.frequency.margin"]).plot()
    assert {text.get_text() for text in axes.texts} >= {"short", "meets"} and axes.get_title() == "front.frequency.margin [Hz]"
    axes = dunlin.what_if({"front.tyre.size": ["235/70R16", "225/70R16"]}, ["driveline.cruise.value"]).plot()
    assert [tick.get_text() for tick in axes.get_xticklabels()] == ["235/70R16", "225/70R16"]
    _, mine = plt.subplots()
    sweep = dunlin.what_if({"front.spring.rate": rate}, ["front.wheel_rate", "front.ride_rate"])
    assert sweep.plot("front.ride_rate", ax=mine) is mine and mine.get_ylabel() == "front.ride_rate [N/mm]"
    with pytest.raises(ValueError, match="4 axes change"):
        dunlin.what_if(GRID, OUTPUTS).plot()
    plt.close("all")
