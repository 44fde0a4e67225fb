"""A person in a notebook: short reprs, tables in HTML, completion, helpers on arrays, packages that are missing."""

import copy
import importlib.abc
import pickle
import sys
import tomllib
from pathlib import Path

import numpy as np
import pandas as pd
import polars as pl
import pyarrow as pa
import pytest

import axlewright
from axlewright import (
    DocumentError,
    DomainError,
    Error,
    PriceList,
    Q,
    Quantity,
    Sheet,
    Table,
    TextError,
    Unit,
    arange,
    concatenate,
    kinds,
    linspace,
    spring,
)
from axlewright.units import (
    UNITS,
    N,
    N_mm,
    bar_gauge,
    degC,
    delta_degC,
    inch,
    kg,
    kN,
    kPa_absolute,
    lbf_in,
    mm,
    percent,
)

SHEETS = Path(__file__).resolve().parents[3] / "examples/sheets"
HOSTILE = "<script>alert('\u202e&\x1b[2J')</script>"


@pytest.fixture(scope="module")
def sheet():
    return Sheet.load(SHEETS / "dunlin.toml")


def stack(name="main", count=2):
    springs = [{"name": f"{name}{place}", "rate": 60 * N_mm, "free_length": 250 * mm, "solid_length": 130 * mm} for place in range(count)]
    return spring.Stack(springs=springs)


class TestReprs:
    def test_a_quantity_shows_four_figures_and_keeps_the_others(self):
        third = 100 / 3 * lbf_in
        assert repr(third) == str(third) == "33.33 lbf/in" and f"{third:full}" == "33.333333333333336 lbf/in"
        assert Q(f"{third:full}") == third
        assert repr(np.linspace(0, 1, 5000) * mm) == "[0 0.0002 0.0004001 ... 0.9996 0.9998 1] mm"

    def test_results_and_models_take_a_line(self):
        on = stack().under_load(load=1000 / 3 * N)
        assert repr(on) == "LoadedStack(length=488.9 mm, deflection=11.11 mm, rate=30 N/mm, closed=0)"
        assert repr(stack()) == "Stack(springs=[{'name': 'main0', 'rate': '60 N/mm', 'free_length': '250 mm', 'solid_length': '130 mm'}, {'name': 'main1', 'rate': '60 N/mm', 'free_length': '250 mm', 'solid_length': '130 mm'}])"
        long = stack("x" * 500, 20)
        assert len(repr(long)) < 1300 and "and 261 letters more" in repr(long) and "... 17 more, see .springs]" in repr(long)

        def settings(sign):
            points = [{"velocity": f"{speed} m/s", "force": f"{speed} kN"} for speed in sorted(sign * place for place in range(1, 6))]
            return [{"setting": f"{'x' * 230}{place}", "points": points} for place in range(4)]

        damper = repr(spring.AdjustableDamper(gas_force="100 N", bump=settings(1), rebound=settings(-1)))
        assert "... 2 more, see .bump[0]['points']]" in damper and damper.endswith("letters more, see to_json())")

    def test_a_result_that_lists_lines_shows_them_all(self):
        corner = spring.Corner(
            rate=450 * lbf_in, free_length=320 * mm, solid_length=165 * mm, minimum_gap=15 * mm, motion_ratio=0.6,
            sprung_mass=420 * kg, droop_length=300 * mm, damper_stroke=110 * mm, damper_mounting="coil_over", gas_force="none",
        )
        held = corner.at_ride_height()
        assert len(held.bump_open) > 60 and f"bump_open={held.bump_open!r}" in repr(held)

    def test_everything_of_a_sheet_fits_on_a_screen(self, sheet):
        assessment = sheet.assess()
        table = sheet.what_if({"front.spring.rate": linspace(500 * lbf_in, 600 * lbf_in, 5)}).table()
        for shown in (sheet, assessment, table, *assessment, *assessment.assumed, *assessment.sensitivity("front.frequency")):
            assert len(repr(shown)) < 1300 and "\n" not in repr(shown), shown
        assert repr(assessment["front.frequency"]).startswith("<Finding front.frequency: ")
        first = assessment.sensitivity("front.frequency")[0]
        assert repr(first) == f"<Sensitivity {first}>" and "margin of front.frequency" in str(first)

    def test_hostile_names_are_escaped_in_html_and_printable_elsewhere(self):
        named = Sheet({"engine.stroke": "95 mm"}, name=HOSTILE)
        model = stack(HOSTILE)
        table = Table({HOSTILE: [1.0, 2.0] * mm, "word": [HOSTILE, None]}, {1: HOSTILE})
        prices = PriceList([{"part": HOSTILE, "kind": "spring", "cost": 1.0, "mass": 2 * kg, "front.spring.rate": "60 N/mm"}])
        finding = named.assess()[0]
        for shown in (named, named.assess(), model, table, prices, finding):
            page = shown._repr_html_()
            assert "<script" not in page and "<table" in page, type(shown)
        for shown in (named, named.assess(), model, table, prices):
            assert "\x1b" not in repr(shown) and "\u202e" not in repr(shown), type(shown)
        assert "&lt;script&gt;" in model._repr_html_()

    def test_a_model_shows_its_fields_with_their_meaning(self):
        page = stack()._repr_html_()
        assert "<b>Stack</b>" in page and "60 N/mm" in page and "Springs in any order" in page


class TestCompletion:
    def test_keys_are_completed(self, sheet):
        assert "front.spring.rate" in sheet._ipython_key_completions_()
        assert "front.frequency" in sheet.assess()._ipython_key_completions_()
        assert stack().table(load=[1, 2] * kN)._ipython_key_completions_()[0] == "load"
        prices = PriceList.load(SHEETS / "tern_lane_prices.csv")
        name = prices._ipython_key_completions_()[1]
        assert prices[name] == prices[1]
        with pytest.raises(KeyError, match="no part is called 'nothing'"):
            prices["nothing"]

    def test_a_star_brings_the_sheet_too(self):
        names = {}
        exec("from axlewright import *", names)
        assert names["Sheet"] is Sheet and {"span", "PriceList", "Q", "linspace"} <= names.keys()

    def test_a_module_lists_its_members_and_nothing_else(self):
        assert dir(spring) == spring.__all__ and "wheel_rate" in dir(spring) and "fill" not in dir(spring)
        assert dir(axlewright.si.spring) == axlewright.si.spring.__all__


class TestSheets:
    @pytest.mark.parametrize("name", ["dunlin", "dray", "wagtail", "dunlin_measured"])
    def test_what_tomllib_reads_is_a_sheet(self, name):
        path = SHEETS / f"{name}.toml"
        assert Sheet(tomllib.loads(path.read_text())) == Sheet.load(path)

    def test_tables_and_paths_mix(self):
        nested = Sheet({"front": {"spring": {"rate": 60 * N_mm}, "track": None}, "engine.stroke": "95 mm", "scales": {"left_front": 612 * kg}})
        assert nested == Sheet({"front.spring.rate": "60 N/mm", "engine.stroke": "95 mm", "scales.left_front": "612 kg"})
        assert nested.with_({"front": {"spring": {"rate": "70 N/mm"}}})["front.spring.rate"] == 70 * N_mm

    @pytest.mark.parametrize(
        ("lines", "kind", "words"),
        [
            ({"front": {"sprin": {"rate": "60 N/mm"}}}, DocumentError, "front.sprin: .*did you mean `spring`"),
            ({"front": {"spring": {"rate": 60}}}, DocumentError, "front.spring.rate: 60 has no unit"),
            ({"front": {"spring": {"rate": float("nan")}}}, (ValueError, TypeError), "front.spring.rate"),
            ({"front": {1: "60 N/mm"}}, TypeError, "front: the key 1 is not text"),
            ({"front": {"spring": {"rate": object()}}}, TypeError, "front.spring.rate: .*a linear stiffness is wanted"),
            ([("front.track", "1 m")], TypeError, "lines: a mapping of paths to values is wanted, not list"),
        ],
    )
    def test_a_refusal_names_the_path(self, lines, kind, words):
        with pytest.raises(kind, match=words):
            Sheet(lines)

    def test_a_table_inside_itself_is_refused(self):
        lines = {}
        lines["front"] = lines
        with pytest.raises(ValueError, match="deeper than 32 levels"):
            Sheet(lines)

    def test_get_never_raises(self, sheet):
        assert sheet.get("no.such.line") is None and sheet.get("no.such.line", 3) == 3
        assert sheet.get("engine.stroke", None) == sheet["engine.stroke"] and Sheet().get("engine.stroke") is None
        with pytest.raises(DocumentError, match="no.such.line"):
            sheet["no.such.line"]

    def test_copies_with_changes(self, sheet):
        for changed in (sheet.__replace__(**{"front.track": "1500 mm"}), stack().__replace__(spacers="5 mm")):
            assert type(changed) in (Sheet, spring.Stack)
        assert sheet.__replace__(**{"front.track": "1500 mm"}) == sheet.with_({"front.track": "1500 mm"})
        assert stack().__replace__(spacers="5 mm") == stack().replace(spacers="5 mm")
        if sys.version_info >= (3, 13):
            assert copy.replace(stack(), spacers="5 mm") == stack().replace(spacers="5 mm")


class TestArrays:
    def test_reductions_keep_the_kind(self):
        loads = [[3.0, 1.0], [2.0, 4.0]] * kN
        assert (loads.max(), loads.min(), loads.sum(), loads.mean()) == (4 * kN, 1 * kN, 10 * kN, 2.5 * kN)
        assert np.all(loads.max(axis=0) == [3, 4] * kN) and loads.max().unit == kN
        assert loads.std().si == pytest.approx(np.std([3e3, 1e3, 2e3, 4e3])) and loads.std(ddof=1).si == pytest.approx(np.std([3e3, 1e3, 2e3, 4e3], ddof=1))
        assert (np.max(loads), np.mean(loads), np.sum(loads), np.std(loads)) == (loads.max(), loads.mean(), loads.sum(), loads.std())
        row = [3, 1, 2] * kN
        assert np.all(row.sort() == [1, 2, 3] * kN) and (row.argmax(), row.argmin()) == (0, 1) and max(row) == 3 * kN
        assert row[1:].shape == (2,) and list(row)[2] == 2 * kN and np.isnan(Q([1.0, np.nan], "mm").max().si)
        with pytest.raises(TypeError, match="only an axis"):
            loads.max(out=np.zeros(2))
        with pytest.raises(TypeError, match="is one quantity, not an array"):
            (3 * kN).max()

    def test_points_on_a_scale_have_a_mean_and_no_sum(self):
        hot = degC([80.0, 90.0, 100.0])
        assert repr(hot.mean()) == "90 °C" and hot.std().kind == "TemperatureDifference" and hot.std().unit == delta_degC
        absolute = [90.0, 110.0] * kPa_absolute
        assert absolute.mean() == 100 * kPa_absolute and absolute.std().kind == "Stress"
        assert ([1.0, 2.0] * bar_gauge).std().kind == "GaugePressure"
        for points in (hot, absolute):
            with pytest.raises(TypeError, match="do not add; take the mean"):
                points.sum()

    @pytest.mark.parametrize("unit", [next(unit for unit in UNITS.values() if unit.kind == kind) for kind in sorted({unit.kind for unit in UNITS.values()})])
    def test_a_kind_that_is_additive_adds(self, unit):
        two, kind = unit([1.0, 2.0]), getattr(kinds, unit.kind)
        if issubclass(kind, kinds.Additive):
            assert (two + two).kind == two.sum().kind == (2 * two).kind == unit.kind
            return
        for wrong in (lambda: two + two, two.sum, lambda: 2 * two):
            with pytest.raises(TypeError):
                wrong()

    def test_steps_and_joined_arrays(self):
        assert repr(linspace(0 * mm, 100 * mm, 5)) == "[0 25 50 75 100] mm" and linspace("0 °C", "100 °C", 3)[1] == degC(50)
        assert repr(arange(0 * mm, 50 * mm, 10 * mm)) == "[0 10 20 30 40] mm"
        assert repr(concatenate([1 * inch, [25.4, 50.8] * mm])) == "[1 1 2] in"
        for wrong in (
            lambda: linspace(0 * mm, 1 * kg, 3), lambda: arange(degC(0), degC(9), degC(1)), lambda: concatenate([1 * mm, 1 * kg]),
            lambda: concatenate([1.0]), lambda: arange(0 * mm, 1 * mm, 1 * kg),
        ):
            with pytest.raises(TypeError):
                wrong()
        with pytest.raises(ValueError, match="nothing to concatenate"):
            concatenate([])
        with pytest.raises(ValueError, match="start is one quantity here"):
            linspace([1, 2] * mm, 3 * mm)

    def test_a_sum_of_python_says_what_to_write(self):
        with pytest.raises(TypeError, match=r"begins with a bare 0, which is not a length; write concatenate\(quantities\).sum\(\)"):
            sum([1 * mm, 2 * mm])
        assert concatenate([1 * mm, 2 * mm]).sum() == 3 * mm and sum([1 * percent, 2 * percent]) == 3 * percent

    def test_a_series_takes_a_unit(self):
        rates = pd.Series([300.0, 350.0], index=["front", "rear"]) * lbf_in
        assert isinstance(rates, Quantity) and rates.kind == "LinearStiffness" and list(rates.si.index) == ["front", "rear"]
        assert (pd.Series([1.0, 2.0]) * (2 * lbf_in)).kind == "LinearStiffness"

    def test_annotations(self):
        assert Quantity[kinds.Mass].__args__ == Unit[kinds.Mass].__args__ == (kinds.Mass,)
        assert set(kinds.__all__) == {"Additive", "Kind"} | {unit.kind for unit in UNITS.values()}


class TestTables:
    def test_polars(self):
        table = stack(count=2).table(load=[1, 2, 9] * kN)
        frame = table.to_polars()
        assert frame.columns[:2] == ["load [kN]", "length [mm]"] and frame["load [kN]"].to_list() == [1.0, 2.0, 9.0]
        assert frame.columns[-1] == "reason" and frame["reason"][2]
        plain = pl.DataFrame(table)
        assert plain["load [N]"].to_list() == [1000.0, 2000.0, 9000.0] and plain["rate [N/m]"].to_list()[:2] == list(table["rate"].si[:2])
        assert pl.Series([1, 2] * inch).name == "[m]"
        assert table.to_polars(units="si")["load"].to_list() == [1000.0, 2000.0, 9000.0]
        assert table.to_polars(units={"load": "N"}).columns[0] == "load [N]"
        assert pl.from_arrow(pa.table(table))["load [N]"].to_list() == [1000.0, 2000.0, 9000.0]
        assert pl.Series([1, 2] * inch).to_list() == [0.0254, 0.0508]
        with pytest.raises(TypeError, match="one axis"):
            pl.Series([[1.0]] * mm)

    def test_a_sweep_is_in_the_units_that_its_columns_name(self, sheet):
        sweep = sheet.what_if({"front.spring.rate": ["500 lbf/in", "600 lbf/in"]}, ["front.frequency.value"])
        for frame in (sweep.to_pandas(), sweep.to_polars()):
            assert next(iter(frame.columns)) == "front.spring.rate [lbf/in]"
            assert list(frame["front.spring.rate [lbf/in]"]) == pytest.approx([500, 600])


class TestRefusals:
    def test_one_base_for_all(self):
        for kind in (DomainError, TextError, DocumentError):
            assert issubclass(kind, Error) and issubclass(kind, ValueError) and kind.__module__ == "axlewright"
        with pytest.raises(Error):
            Q("300 lbf/inn")
        with pytest.raises(Error):
            stack().under_load(load="-1 N")
        with pytest.raises(Error):
            Sheet.from_text("nonsense = 1")
        assert Error.__name__ == "Error" and pickle.loads(pickle.dumps(Error)) is Error

    @pytest.mark.parametrize(
        ("package", "extra", "call"),
        [
            ("pandas", "tables", lambda table: table.to_pandas()),
            ("polars", "polars", lambda table: table.to_polars()),
            ("xarray", "tables", lambda table: table.to_xarray()),
            ("matplotlib", "plot", lambda table: table.plot("load")),
            ("pint", "units", lambda table: (3 * percent).to_pint()),
            ("tqdm", "progress", lambda table: Sheet().what_if({"engine.stroke": ["9 mm"]}, ["engine.stroke"], progress=True).table()),
        ],
    )
    def test_a_missing_package_says_what_to_install(self, package, extra, call, monkeypatch):
        class Missing(importlib.abc.MetaPathFinder):
            def find_spec(self, name, path=None, target=None):
                if name.partition(".")[0] == package:
                    raise ModuleNotFoundError(f"No module named {name!r}", name=name)

        for name in [name for name in sys.modules if name.partition(".")[0] == package]:
            monkeypatch.delitem(sys.modules, name)
        monkeypatch.setattr(sys, "meta_path", [Missing(), *sys.meta_path])
        table = stack().table(load=[1, 2] * kN)
        with pytest.raises(ImportError, match=rf"{package} is not installed.*pip install 'axlewright\[{extra}\]'"):
            call(table)
