"""Tables: a mapping of columns that pandas, xarray and Arrow understand."""

import gc
import pickle
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import matplotlib
import numpy as np
import pandas as pd
import pyarrow as pa
import pytest

from axlewright import Quantity, Table, cooling, driveline, suspension
from axlewright.units import Nm, deg, degF, delta_degF, ft, mm, psi_gauge

REASON = "travel = 0.09 m is outside its range"


@pytest.fixture
def table():
    return Table(
        {
            "travel": [10.0, 90.0, 30.0] * mm,
            "share": [0.5, np.nan, 0.25],
            "turn": [1, 0, 3],
            "verdict": ["meets", None, "né <short>"],
        },
        {1: REASON},
    )


def test_from_a_model():
    coolant = cooling.Coolant(
        liquid="ethylene_glycol", volume_share=0.5, concentrate="95 %", cap=15 * psi_gauge,
        altitude=5000 * ft, hottest=degF(230),
    )
    table = coolant.margin_table(cap=[7, 15] * psi_gauge, altitude=[0, 5000, 90000] * ft, strength=0.5)
    assert table.rows == 6 and len(table) == 8
    np.testing.assert_array_equal(table["altitude"].to(ft), [0, 5000, 90000] * 2)
    assert table["altitude"].unit == ft and table["cap"].unit == psi_gauge
    assert set(table.reasons) == {2, 5} and all("altitude" in reason for reason in table.reasons.values())
    assert np.flatnonzero(np.isnan(table["margin"].si)).tolist() == [2, 5]
    assert table["margin"][4].to(delta_degF) == pytest.approx(coolant.margin().margin.to(delta_degF), rel=1e-12)
    assert table["strength"].dtype == np.float64 and not isinstance(table["strength"], Quantity)
    with pytest.raises(TypeError, match="cap = .* has no unit"):
        coolant.margin_table(cap=[7, 15], altitude=0 * ft, strength=0.5)
    with pytest.raises(TypeError, match="cap is a list"):
        coolant.margin_table(cap=[[7, 15]] * psi_gauge, altitude=0 * ft, strength=0.5)
    assert coolant.margin_table(cap=[] * psi_gauge, altitude=0 * ft, strength=0.5).rows == 0


PATH = driveline.TorquePath(
    engine_torque="360 N·m", clutch_capacity="480 N·m",
    parts=[{"name": "shaft", "torque_rating": "2000 N·m", "rating_kind": "peak"}],
)


def test_a_refused_row_has_no_words():
    table = PATH.table(engine_torque=[360, -1] * Nm, shock_factor=2)
    assert set(table.reasons) == {1} and table["why"].tolist() == ["", None] and table["demand_bound"][0] == "clutch"


def test_a_table_that_is_too_large_is_refused_before_it_is_made():
    """20 000 by 20 000 positions of a linkage are 100 GB and more."""
    sheets = Path(__file__).parents[3] / "examples" / "sheets"
    wishbone = suspension.DoubleWishbone.from_text((sheets / "dunlin_front_wishbone.toml").read_text("utf-8"))
    axle = suspension.LiveAxle.from_text((sheets / "dunlin_rear_axle.toml").read_text("utf-8"))
    many = np.zeros(20_000)
    words = r"a table of 400000000 rows \(20000 x 20000\) of \d+ bytes each takes .* GiB, and one table at most 4 GiB: ask for fewer values"
    with pytest.raises(ValueError, match=words):
        wishbone.table(travel=many * mm, rack_travel=many * mm)
    with pytest.raises(ValueError, match=words):
        axle.table(heave=many * mm, roll=many * deg)


def test_a_column_of_the_core_is_made_once():
    coolant = cooling.Coolant(
        liquid="ethylene_glycol", volume_share=0.5, concentrate="95 %", cap=15 * psi_gauge,
        altitude=5000 * ft, hottest=degF(230),
    )
    table = coolant.margin_table(cap=[7, 15] * psi_gauge, altitude=[0, 5000] * ft, strength=0.5)
    with ThreadPoolExecutor(4) as threads:
        made = list(threads.map(lambda name: table[name], ["margin", "strength"] * 8))
    assert all(column is made[at % 2] for at, column in enumerate(made))
    assert table["margin"].unit == delta_degF and table["margin"].si.base is not None
    words = PATH.parts_table()
    assert words["why"] is words["why"]
    for column in (table["margin"].si, table["strength"], PATH.table(engine_torque=[1, 2] * Nm, shock_factor=2)["why"]):
        with pytest.raises(ValueError, match="read-only"):
            column[0] = column[1]
    assert 3 not in table and "nothing" not in table and len(list(table)) == len(table) == 8
    with pytest.raises(KeyError, match="no column 'speed'; there are cap, altitude"):
        table["speed"]
    again = pickle.loads(pickle.dumps(table))
    assert again == table and again.units == table.units and list(again) == list(table)


def test_mapping(table):
    assert list(table) == ["travel", "share", "turn", "verdict"] and table.rows == 3
    assert dict(table).keys() == table.keys() and "turn" in table and table.get("nothing") is None
    assert table.get("nothing", 3) == 3 and table.get("turn") is table["turn"] and "nothing" not in table
    assert [name for name, _ in table.items()] == list(table.keys()) and len(list(table.values())) == 4
    # A column of plain numbers has no unit, so no array and no frame is made of the table itself.
    for lossy in (np.asarray, pd.DataFrame):
        with pytest.raises(TypeError, match="take its columns, or to_pandas"):
            lossy(table)
    assert {name: unit and unit.symbol for name, unit in table.units.items()} == {
        "travel": "mm", "share": None, "turn": None, "verdict": None,
    }
    with pytest.raises(KeyError, match="no column 'speed'; there are travel, share"):
        table["speed"]
    for place in (0, slice(2), None):
        with pytest.raises(KeyError, match=f"no column {type(place).__name__}; there are travel, share"):
            table[place]
    with pytest.raises(TypeError):
        table["travel"] = 3
    for name in ("share", "turn", "verdict"):
        with pytest.raises(ValueError, match="read-only"):
            table[name][0] = table[name][1]
    table.reasons.clear()
    assert table.reasons == {1: REASON}


@pytest.mark.parametrize(
    ("columns", "reasons", "error"),
    [
        ({"a": [1.0], "b": [1.0, 2.0]}, {}, "different lengths"),
        ({"a": [[1.0]]}, {}, "a has the shape"),
        ({"a": 3 * mm}, {}, "a has the shape"),
        ({"a": [1.0]}, {1: "why"}, "row 1; the table has 1 rows"),
    ],
)
def test_what_is_no_table(columns, reasons, error):
    with pytest.raises(ValueError, match=error):
        Table(columns, reasons)


@pytest.mark.parametrize("column", [[1j], [object()], [b"a"], [True], np.array([1], dtype="M8[s]")])
def test_what_is_no_column(column):
    with pytest.raises(TypeError, match="a holds neither numbers nor words"):
        Table({"a": column})


def test_pickle(table):
    again = pickle.loads(pickle.dumps(table))
    assert again == table and again != Table({"a": [1]}) and table != 3
    assert again["travel"].unit == mm
    with pytest.raises(TypeError):
        hash(table)


def test_pandas(table):
    frame = table.to_pandas()
    assert list(frame) == ["travel [mm]", "share", "turn", "verdict", "reason"]
    assert frame["travel [mm]"].tolist() == [10, 90, 30] and frame["reason"].tolist() == [None, REASON, None]
    assert frame.attrs == {"units": {"travel [mm]": "mm"}, "quantities": {"travel [mm]": "Length"}}
    for same in (table.to_pandas(units={}), table.to_pandas(units=table.units), table.to_pandas(units={"share": None})):
        pd.testing.assert_frame_equal(same, frame)
        assert same.attrs == frame.attrs
    frame = table.to_pandas(units="si")
    assert list(frame) == ["travel", "share", "turn", "verdict", "reason"]
    assert frame["travel"].tolist() == [0.01, 0.09, 0.03]
    assert frame.attrs == {"units": {"travel": "m"}, "quantities": {"travel": "Length"}}
    frame = table.to_pandas(units={"travel": "in"})
    assert frame["travel [in]"][1] == pytest.approx(90 / 25.4) and frame.attrs["units"] == {"travel [in]": "in"}
    with pytest.raises(TypeError, match="share has no unit"):
        table.to_pandas(units={"share": mm})
    with pytest.raises(KeyError, match="speed"):
        table.to_pandas(units={"speed": None})
    for wrong in ("us", mm, ["mm"]):
        with pytest.raises(TypeError, match='it is "si" or a mapping from columns to units'):
            table.to_pandas(units=wrong)


def test_xarray(table):
    for dataset in (table.to_xarray(), table.to_xarray(units=table.units), table.to_xarray(units={"travel": mm})):
        assert dataset["travel"].attrs == {"units": "mm", "quantity": "Length"}
        assert dataset["travel"].values.tolist() == [10, 90, 30]
    assert dataset.sizes == {"row": 3} and dataset["verdict"].values[0] == "meets"
    assert dataset["reason"].values[1] == REASON and dataset["share"].attrs == {}
    dataset = table.to_xarray(units="si")
    assert dataset["travel"].attrs["units"] == "m" and dataset["travel"].values.tolist() == [0.01, 0.09, 0.03]


#: Names of the columns as Arrow: the unit of the numbers is in them.
ARROW = ["travel [m]", "share", "turn", "verdict", "reason"]


class TestArrow:
    @pytest.mark.parametrize("read", [pa.table, pa.record_batch])
    def test_values(self, table, read):
        arrow = read(table)
        assert arrow.num_rows == 3 and arrow.schema.names == ARROW
        assert arrow.column(0).to_pylist() == [0.01, 0.09, 0.03]
        assert arrow.column(2).to_pylist() == [1, 0, 3] and arrow.schema.field("turn").type == pa.int64()
        assert arrow.column(3).to_pylist() == ["meets", None, "né <short>"]
        assert arrow.schema.field("verdict").type == pa.dictionary(pa.int32(), pa.string())
        assert arrow.schema.field("travel [m]").metadata == {b"unit": b"m", b"quantity": b"Length"}
        assert arrow.schema.field("share").metadata == {b"unit": b"1", b"quantity": b"Ratio"}
        assert np.isnan(arrow.column(1).to_pylist()[1])
        arrow.validate(full=True)

    def test_schema(self, table):
        assert pa.schema(table).names == ARROW

    def test_no_copy_of_numbers(self, table):
        batch = pa.record_batch(table)
        assert batch.column(0).buffers()[1].address == table["travel"].si.__array_interface__["data"][0]

    def test_the_data_outlive_the_table(self):
        arrow = pa.record_batch(Table({"a": np.arange(100_000.0) * mm, "w": ["x"] * 100_000}))
        gc.collect()
        np.ones(100_000)
        assert arrow.column(0)[99_999].as_py() == pytest.approx(99.999) and arrow.column(1)[99_999].as_py() == "x"

    @pytest.mark.parametrize("rows", [0, 1, 7, 8, 9, 64, 65])
    def test_nulls(self, rows):
        words = [None if row % 3 == 0 else f"w{row % 5}" for row in range(rows)]
        column = pa.record_batch(Table({"w": np.array(words, dtype=object)})).column(0)
        column.validate(full=True)
        assert column.to_pylist() == words and column.null_count == words.count(None)

    def test_nothing_is_leaked_or_freed_twice(self, table):
        capsules = [table.__arrow_c_array__(), table.__arrow_c_schema__(), table.__arrow_c_stream__()]
        del capsules
        column = np.arange(10_000.0)
        column.setflags(write=False)
        made = Table({"a": column})
        inside = made["a"]
        before = sys.getrefcount(inside)
        for _ in range(50):
            pa.record_batch(made)
            made.__arrow_c_array__()
            pa.table(made)
        gc.collect()
        made.__arrow_c_schema__()  # what was let go without the interpreter is dropped at the next call
        assert sys.getrefcount(inside) == before

    def test_pandas_through_arrow(self, table):
        frame = pa.table(table).to_pandas()
        assert isinstance(frame["verdict"].dtype, pd.CategoricalDtype) and frame["turn"].tolist() == [1, 0, 3]

    def test_a_stream_is_read_once(self, table):
        reader = pa.RecordBatchReader.from_stream(table)
        assert reader.read_all().num_rows == 3
        assert pa.table(table).num_rows == 3


def test_shown(table):
    assert repr(table) == "<Table of 3 rows, 1 refused: travel [mm], share, turn, verdict>"
    assert str(table).splitlines() == [
        "     travel  share  turn  verdict",
        "       [mm]",
        "0        10    0.5     1  meets",
        "1 !      90      -     0  -",
        "2        30   0.25     3  né <short>",
        f"! row 1: {REASON}",
    ]
    html = table._repr_html_()
    assert "<th>travel [mm]</th>" in html and "<td>90</td>" in html and f'title="{REASON}"' in html
    assert f"<p>! row 1: {REASON}</p>" in html and "<th>1 !</th>" in html
    assert "né &lt;short&gt;" in html and html.count("<tr") == 4


def test_shown_with_four_digits():
    shown = str(Table({"a": [1234.5678, 12345.678] * mm, "b": [1 / 3, 1e-9]})).splitlines()
    assert shown[2:] == ["0   1235  0.3333", "1  12350    1e-9"]


def test_a_long_table_is_cut():
    reasons = {3: "too <fast>", 4: "too <fast>", 5: "too slow", 20: "hidden", 99: "hidden"}
    long = Table({"a": np.arange(100)}, reasons)
    lines = str(long).splitlines()
    assert lines[2] == " 0     0" and lines[5] == " 3 !   3" and lines[21] == "19    19"
    assert lines[22:] == [
        "...", "100 rows", "! rows 3, 4: too <fast>", "! row 5: too slow", "! 2 more refused below; see `reasons`",
    ]
    html = long._repr_html_()
    assert html.count("<tr") == 21 and "100 rows" in html and "<p>! rows 3, 4: too &lt;fast&gt;</p>" in html
    assert "2 more refused below" in html and "hidden" not in html


@pytest.mark.parametrize("table", [Table({}), Table({"a": [] * mm})])
def test_an_empty_table_is_shown(table):
    assert "a" not in table or str(table).split() == ["a", "[mm]"]
    assert table._repr_html_().startswith("<table>") and table.to_pandas().empty


@pytest.fixture
def pyplot():
    matplotlib.use("agg")
    import matplotlib.pyplot as plt

    yield plt
    plt.close("all")


class TestPlot:
    def test_one_unit_is_one_panel(self, table, pyplot):
        axes = table.plot("travel", "share")
        assert axes.get_xlabel() == "travel [mm]" and axes.get_ylabel() == "share"
        np.testing.assert_array_equal(axes.lines[0].get_xdata(), [10, 90, 30])
        assert len(table.plot("travel").lines) == 2 and table.plot("travel", ax=axes) is axes
        with pytest.raises(KeyError, match="speed"):
            table.plot("speed")
        with pytest.raises(KeyError, match="speed"):
            table.plot("travel", "speed")

    def test_each_unit_has_a_panel(self, pyplot):
        table = Table(
            {"x": [0.0, 1.0] * ft, "a": [1.0, 2.0] * mm, "n": [1, 2], "b": [3.0, 4.0] * mm, "t": degF([70.0, 90.0])}
        )
        panels = table.plot("x")
        assert [panel.get_ylabel() for panel in panels] == ["[mm]", "n", "t [°F]"]
        assert [len(panel.lines) for panel in panels] == [2, 1, 1]
        assert [text.get_text() for text in panels[0].get_legend().get_texts()] == ["a", "b"]
        assert [panel.get_xlabel() for panel in panels] == ["", "", "x [ft]"]
        np.testing.assert_allclose(panels[2].lines[0].get_ydata(), [70, 90], rtol=1e-14)
        with pytest.raises(ValueError, match=r"cannot share one axis: a \[mm\]; n \[-\]; plot one unit at a time"):
            table.plot("x", "a", "n", ax=panels[0])
