"""The build sheet: reading, changing, findings, choosing, the command line."""

import doctest
import html
import json
import math
import os
import pickle
import random
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pandas as pd
import pint
import pyarrow as pa
import pyarrow.parquet as pq
import pytest
from uncertainties import ufloat, umath

import axlewright
from axlewright import DocumentError, Quantity, TextError, spring, suspension
from axlewright.sheet import Assessment, Finding, PriceList, Sheet
from axlewright.units import kg, lb, lbf_in, mm, rad

DUNLIN = Path(__file__).with_name("sheet.toml")
EXAMPLES = Path(__file__).parents[3] / "examples" / "sheets"


@pytest.fixture(scope="module")
def dunlin():
    return Sheet.load(DUNLIN)


@pytest.fixture(scope="module")
def assessment(dunlin):
    return dunlin.assess()


def test_a_sheet_is_a_mapping(dunlin):
    assert dunlin.name == "Dunlin, tow-capable work van" and len(dunlin) == len(list(dunlin)) > 50
    assert dunlin["front.spring.rate"] == 550 * lbf_in and dunlin["front.spring.rate"].unit == lbf_in
    assert dunlin.text("front.spring.rate") == "550 lbf/in +/- 3 %"
    assert dunlin["gearbox.ratios[1]"] == 2.51 and dunlin["front.damper.mounting"] == "coil_over"
    assert dunlin["front.tyre.size"] == "235/70R16" and "front.spring.wire_diameter" not in dunlin
    with pytest.raises(KeyError, match="front.spring.wire_diameter is not written"):
        dunlin["front.spring.wire_diameter"]
    with pytest.raises(DocumentError, match="did you mean `rate`"):
        dunlin["front.spring.rat"]
    with pytest.raises(AttributeError, match="never changes"):
        dunlin.name = "other"


@pytest.mark.parametrize(("name", "kind", "line", "method"), [
    ("dunlin_measured", suspension.LiveAxle, "rear.roll_steer", "roll_steer"),
    ("dray", suspension.LeafAxle, "rear.roll_centre_height", "roll_centre_height"),
])  # fmt: skip
def test_a_live_axle_of_a_sheet_is_its_model(name, kind, line, method):
    sheet = Sheet.load(EXAMPLES / f"{name}.toml")
    axle = sheet.model("rear.suspension")
    assert type(axle) is kind
    on = axle.at(heave=0 * mm, roll=0 * rad)
    assert getattr(on, method) == sheet.assess().value(line)
    assert sheet.elsewhere("rear.suspension")["wheel.loaded_radius"] == ("rear.tyre.loaded_radius", "computed")
    pasted = Sheet.from_text(json.dumps({"version": 1, "rear": json.loads(axle.to_json())}))
    assert pasted.assess().value(line) == sheet.assess().value(line)
    assert pasted.remarks == ["rear.wheel.loaded_radius is now rear.tyre.loaded_radius"]


def test_it_travels(dunlin):
    for text in (dunlin.to_toml(), dunlin.to_json()):
        again = Sheet.from_text(text)
        assert again == dunlin and hash(again) == hash(dunlin) and again.hash == dunlin.hash
        assert again.to_toml() == dunlin.to_toml() and again.to_json() == dunlin.to_json()
    assert pickle.loads(pickle.dumps(dunlin)) == dunlin and re.fullmatch("[0-9a-f]{32}", dunlin.hash)
    other = dunlin.with_({"front.spring.rate": "551 lbf/in"})
    assert other != dunlin and other.hash != dunlin.hash and dunlin != "text"


def test_lines_change(dunlin):
    registry = pint.UnitRegistry()
    for value, text, si in (
        ("225 lbf/in +/- 3 %", "225 lbf/in +/- 3 %", (225 * lbf_in).si),
        (225 * lbf_in, "225 lbf/in", (225 * lbf_in).si),
        (Quantity(225.1234567890123, "N/mm"), "225.1234567890123 N/mm", 225123.4567890123),
        (225 * registry("N/mm"), "225000 N/m", 225000.0),
    ):
        changed = dunlin.with_({"front.spring.rate": value})
        assert changed.text("front.spring.rate") == text and changed["front.spring.rate"].si == si
    assert dunlin.text("front.spring.rate") == "550 lbf/in +/- 3 %"
    assert dunlin.with_({"gearbox.ratios[0]": 4.9})["gearbox.ratios[0]"] == 4.9
    assert "front.spring.rate" not in dunlin.with_({"front.spring.rate": None})
    assert dunlin.with_(**{"front.damper.mounting": "apart"})["front.damper.mounting"] == "apart"
    assert Sheet({"front.spring.rate": 225 * lbf_in}, name="of lines").name == "of lines"
    numbers = random.Random(20)
    for _ in range(300):
        exact = numbers.uniform(1, 1000) * 10 ** numbers.uniform(0, 3)
        quantity = Quantity(exact, numbers.choice(["lbf/in", "N/mm", "N/m"]))
        assert Sheet({"front.spring.rate": quantity})["front.spring.rate"].si == quantity.si
    for value, error, message in (
        (225, TypeError, "front.spring.rate = 225 has no unit"),
        (225 * kg, TypeError, "front.spring.rate = 225 kg"),
        (math.nan * lbf_in, ValueError, "not a finite number"),
        ([225, 250] * lbf_in, TypeError, "one value here"),
        ("225 lbf", DocumentError, "front.spring.rate"),
        ("-1 lbf/in", DocumentError, "outside its range"),
    ):
        with pytest.raises(error, match=message):
            dunlin.with_({"front.spring.rate": value})
    with pytest.raises(DocumentError, match="did you mean"):
        dunlin.with_({"front.sprong.rate": "225 lbf/in"})
    with pytest.raises(TypeError, match="front.damper.mounting = 3 is not text"):
        dunlin.with_({"front.damper.mounting": 3})


def test_a_refusal_names_file_line_and_key(tmp_path):
    path = tmp_path / "wrong.toml"
    path.write_text('version = 1\n[front.spring]\nrat = "225 lbf/in"\n')
    with pytest.raises(DocumentError, match=r"wrong\.toml: line 3, column 1: .*front\.spring\.rat.*did you mean `rate`") as refused:
        Sheet.load(path)
    assert (refused.value.file, refused.value.line, refused.value.key) == (str(path), 3, "front.spring.rat")
    path.write_bytes(b'name = "\xff"\n')
    with pytest.raises(DocumentError, match=r"wrong\.toml: not text in UTF-8: byte 8 is 0xff"):
        Sheet.load(path)
    with pytest.raises(FileNotFoundError):
        Sheet.load(tmp_path / "none.toml")
    with pytest.raises(DocumentError) as refused:
        Sheet.from_text("front = 3")
    assert refused.value.file is None and refused.value.line == 1


def test_findings_equal_the_functions(dunlin, assessment):
    """The same bits as the single calls, axle by axle."""
    for axle in ("front", "rear"):
        wheel = spring.wheel_tangent_rate(
            spring_rate=dunlin[f"{axle}.spring.rate"],
            motion_ratio=dunlin[f"{axle}.spring.motion_ratio"],
            spring_force=assessment.value(f"{axle}.spring.force"),
            motion_ratio_gradient=assessment.value(f"{axle}.spring.ratio_gradient"),
        )
        ride = spring.ride_rate(wheel_rate=wheel, tyre_rate=dunlin[f"{axle}.tyre.rate"])
        frequency = spring.natural_frequency(tangent_rate=wheel, sprung_mass=assessment.value(f"{axle}.sprung_mass"))
        assert assessment.value(f"{axle}.wheel_rate") == wheel and assessment.value(f"{axle}.ride_rate") == ride
        finding = assessment[f"{axle}.frequency"]
        assert finding.value == frequency
        low, high = dunlin[f"{axle}.wanted.frequency_low"], dunlin[f"{axle}.wanted.frequency_high"]
        assert (finding.low, finding.high) == (low, high)
        assert finding.margin == min(frequency - low, high - frequency) and finding.verdict == "meets"
        called = {function.path for function in finding.functions}
        assert {"mass.weight_distribution", "spring.wheel_tangent_rate", "spring.natural_frequency"} == called
        assert {f"{axle}.spring.rate", f"{axle}.unsprung_mass", "scales.left_front"} <= set(finding.rests_on)


def test_findings(dunlin, assessment):
    assert isinstance(assessment, Assessment) and len(assessment) == len(assessment.findings) == len(list(assessment))
    verdicts = {finding.verdict for finding in assessment}
    assert verdicts == {"meets", "tight", "short", "not known"} and assessment.severity == 2
    page = json.loads(assessment.to_json())
    for finding, said in zip(assessment, page["findings"], strict=True):
        assert isinstance(finding, Finding) and assessment[finding.path] is finding
        for name in ("value", "low", "high", "margin", "wanted", "uncertainty"):
            number = getattr(finding, name)
            plain = number.si if isinstance(number, Quantity) else number
            # JSON has no infinity: no margin is enough yet.
            assert (None if plain == math.inf else plain) == said[name], (finding.path, name)
        assert (finding.path, finding.verdict, finding.safety) == (said["finding"], said["verdict"], said["safety"])
        assert finding.rests_on == tuple(said["rests_on"]) and finding.needs == tuple(said.get("needs", ()))
        assert finding.write == tuple(said.get("write", ()))
        assert finding.safety == bool(finding.caution)
        assert (finding.margin is None) == (finding.verdict == "not known") == bool(finding.missing)
        with pytest.raises(AttributeError):
            finding.verdict = "meets"
    strength = assessment["front.spring_strength"]
    assert "front.spring.wire_diameter" in strength.needs and "needs" in strength.missing and strength.safety
    assert page["hash"] == dunlin.hash and dunlin.hash in assessment.stamp and axlewright.__version__ in assessment.stamp
    assert {one.path for one in assessment.assumed} == {one["line"] for one in page["assumed"]}
    gap = next(one for one in assessment.assumed if one.path == "wanted.spring_margin")
    assert gap.value == 3 * mm and "common practice" in gap.ground
    open_ = [one for one in assessment.assumed if one.value == math.inf]
    assert open_ and all(" = no limit: " in repr(one) for one in open_)
    cruise = Sheet({"engine.stroke": "95 mm +/- 0.5 mm", "engine.red_line": "4500 rpm", "engine.piston_speed_limit": "15 m/s"}).assess()
    assert str(cruise["engine.pistons"]) == "engine.pistons: meets; 14.25 m/s, margin 0.75 m/s, at worst 0.675 m/s"
    assert assessment.value("front.tyre.size") == "235/70R16" and assessment.value("front.spring.wire_diameter") is None
    with pytest.raises(KeyError, match=r"no finding `front\.frequenzy`; did you mean `front\.frequency`"):
        assessment["front.frequenzy"]
    with pytest.raises(KeyError, match=r"no finding `bump`; did you mean `front\.bump` or `rear\.bump`\?"):
        assessment["bump"]
    assert pickle.loads(pickle.dumps(assessment)) == assessment
    assert pickle.loads(pickle.dumps(assessment.findings)) == assessment.findings


def test_models_of_the_sheet_give_its_numbers(dunlin, assessment):
    coolant = dunlin.model("coolant")
    on, boiling = coolant.margin(), assessment["coolant.boiling"]
    assert on.boiling_temperature == assessment.value("coolant.boiling_temperature") and on.margin == boiling.margin
    assert axlewright.verdict_of_difference(on.margin, boiling.wanted) == boiling.verdict
    assert dunlin.elsewhere("coolant")["cap"] == ("coolant.kept_pressure", "computed")

    path = dunlin.model("torque_path")
    table = path.parts_table()
    for part, margin in zip(table["part"], table["margin"], strict=True):
        if part != "transfer_case":
            finding = assessment[f"{part}.strength"]
            assert margin == finding.margin or math.isnan(margin) and finding.margin is None
            if finding.wanted is not None:
                assert axlewright.verdict_of_ratio(margin, finding.wanted) == finding.verdict
    assert dunlin.elsewhere("torque_path")["parts[3].least_ratio"] == ("final_drive.ratio", "written")


def test_what_the_vehicle_lacks_does_not_apply(dunlin):
    before = dunlin.assess()
    assert {before[name].verdict for name in ("front.wind_up", "front.bind", "rear.wind_up")} == {"not known"}
    sheet = dunlin.with_({"front.suspension": "double_wishbone", "rear.leaf": "none"})
    assessment = sheet.assess()
    apart = {finding.path: finding for finding in assessment if finding.verdict == "does not apply"}
    assert set(apart) == {"front.bind", "front.sideways", "front.pinion", "front.wind_up", "rear.wind_up"}
    assert apart["front.bind"].rests_on == ("front.suspension",) and apart["rear.wind_up"].rests_on == ("rear.leaf",)
    for finding in apart.values():
        assert finding.value is finding.margin is finding.uncertainty is None and finding.missing == "" == "".join(finding.needs)
        assert str(finding) == f"{finding.path}: does not apply; see {finding.rests_on[0]}"
    assert "5 does not apply" in repr(assessment) and "  rear.wind_up: rear.leaf = none" in assessment.text()
    page = assessment._repr_html_()
    assert "Does not apply, because the sheet says so" in page and page.count(">rear.wind_up</td>") == 1
    chance = {chance.path: chance for chance in assessment.chances(50)}["rear.wind_up"]
    assert (chance.verdict, chance.turns, chance.does_not_apply, chance.mean) == ("does not apply", 0.0, 1.0, None)
    sweep = sheet.what_if({"front.suspension": ["strut", "live_axle_on_links"]}, ["front.bind.verdict", "front.bind.margin"])
    assert sweep.table()["front.bind.verdict"].tolist() == ["does not apply", "not known"]
    # A word ends questions of safety that were not known, and counted as tight, before it was written.
    lines = {"wheels": "live_axle", "suspension": "live_axle_on_leaf_springs"}
    asked = Sheet.from_text("").assess()
    told = Sheet.from_text("[rear]\n" + "".join(f'{key} = "{word}"\n' for key, word in lines.items())).assess()
    names = ("rear.coil_bind", "rear.captive", "rear.buckling", "rear.bind")
    assert {asked[name].verdict for name in names} == {"not known"}
    assert {told[name].verdict for name in names} == {"does not apply"} and told["rear.coil_bind"].safety


def test_the_work_and_the_texts(dunlin, assessment):
    work = assessment.work("front.frequency")
    assert "550 lbf/in" in work and "spring.natural_frequency" in work and "source" in work.lower()
    assert "1.26 Hz" in assessment.text() and work.splitlines()[0].strip() in assessment.text(work=True)
    assert "°F" in assessment.text("us") and "°F" not in assessment.text("metric")
    with pytest.raises(ValueError, match='system = "yards" is not known'):
        assessment.text("yards")
    other = dunlin.with_({"front.spring.rate": "600 lbf/in"}).assess()
    compared = assessment.compare(other)
    assert "front.frequency" in compared and "rear.frequency" not in compared
    assert Sheet({"front.spring.rate": "225 lbf/in"}).system == "us" and dunlin.system == "metric"


def test_lines_that_contradict_each_other_are_said(dunlin, assessment):
    assert assessment.contradictions == ()
    sheet = dunlin.with_({"front.axle_mass": "1300 kg"})
    doubted = sheet.assess()
    (found,) = doubted.contradictions
    assert found.path == "front.axle_mass" and found.written == 1300 * kg and "scales.left_front" in found.lines
    axle = sheet["scales.left_front"] + sheet["scales.right_front"]
    assert math.isclose(found.follows / axle, 1.0)
    assert str(found) in " ".join(doubted.text().split()) and found.by in doubted._repr_html_()
    rests = [f for f in doubted if f.safety and "front.axle_mass" in f.rests_on]
    assert rests and all(finding.verdict != "meets" for finding in rests)


def test_html_says_verdicts_in_words_and_escapes(dunlin):
    sheet = Sheet.from_text(dunlin.to_toml().replace("Dunlin,", "<script>Dunlin</script>"))
    page = sheet.assess()._repr_html_() + sheet._repr_html_()
    assert "<script>" not in page and "&lt;script&gt;" in page
    for word in (">SHORT</td>", ">TIGHT</td>", ">MEETS</td>", "Not known", "safety: take it as no better"):
        assert word in page
    assert "color" not in page and "550 lbf/in +/- 3 %" in page


def test_html_says_what_the_report_says(dunlin):
    """In the units of the sheet, with its remarks and with what is to write."""
    inch = Sheet({
        "cap.rating": "15 psi gauge", "cap.holding_pressure": "13.5 psi gauge", "cap.rating_tolerance": "1 psi", "cap.gauge_error": "0.5 psi",
        "engine.red_line": "4500 rpm", "engine.stroke": "95 mm", "engine.bore": "92 mm", "front.track": "1500 mm", "rear.track": "1500 mm",
        "front.axle_mass": "1200 kg", "rear.axle_mass": "1300 kg",
        "front.tyre.size": "235/70R16 106T", "use.peak_speed": "85 mph",
    })
    assessment = inch.assess()
    assert inch.system == "metric" and assessment["cap.holds"].value.unit.symbol == "psi gauge"
    assert assessment["cap.holds"].margin.unit.symbol == "psi" and assessment["front.tyre_speed"].value.unit.symbol == "mph"
    assert assessment.value("use.peak_speed").unit.symbol == "mph"
    page, report = assessment._repr_html_(), assessment.text()
    assert ">85 mph</td>" in page and "85 mph" in report and "km/h" not in page + report and "kPa" not in page + report
    assert re.search(r">[\d.]+ psi gauge</td>", page)
    fitted = dunlin.fit({"front.spring.rate": "500 lbf/in"})
    assert fitted.remarks and all(remark in fitted.assess()._repr_html_() for remark in fitted.remarks)
    waiting = [finding for finding in dunlin.assess() if finding.write]
    page = dunlin.assess()._repr_html_()
    caution = dunlin.assess()["front.tyre_load"].caution
    assert page.count(html.escape(caution)) == 1 and ">front.tyre_load, rear.tyre_load</td>" in page
    assert waiting and "To write, before these can be better than tight" in page and ">inf<" not in page
    assert "no margin is enough yet" in waiting[0]._repr_html_() and waiting[0].write[0] in waiting[0]._repr_html_()


def test_uncertainty_is_that_of_the_uncertainties_package(dunlin, assessment):
    """First-order propagation by the package `uncertainties` through the same chain; a bound of half-width a has the standard
    deviation a / sqrt(3) (JCGM 100:2008, 4.3.7). Ours are central differences over a whole tolerance: they differ by the
    third order."""
    pound = 0.45359237 * 9.80665 / 0.0254

    def bound(value, half):
        return ufloat(value, half / math.sqrt(3))

    rate, ratio, damper = bound(550 * pound, 0.03 * 550 * pound), bound(0.60, 0.01), bound(7500, 750)
    sprung = (bound(612, 2) + bound(598, 2) - bound(110, 10)) / 2
    wheel = rate * ratio * ratio
    frequency = umath.sqrt(wheel / sprung) / (2 * math.pi)
    damping = damper * ratio * ratio / (2 * umath.sqrt(wheel * sprung))
    for finding, chain in (("front.frequency", frequency), ("front.damping", damping)):
        known = assessment[finding]
        si = getattr(known.uncertainty, "si", known.uncertainty)
        assert getattr(known.value, "si", known.value) == pytest.approx(chain.nominal_value, rel=1e-12)
        assert si == pytest.approx(chain.std_dev, rel=1e-3)
    load = (bound(612, 2) + bound(598, 2)).std_dev / (612 + 598) * (1350 / (612 + 598))
    assert assessment["front.load"].uncertainty == pytest.approx(load, rel=1e-4)


def test_uncertainty_and_chance_in_closed_form():
    """One mass with a tolerance against a rating: the margin is R / m, its derivative R / m^2."""
    sheet = Sheet.from_text(
        'vehicle.mass_rating = "2800 kg"\n[scales]\nleft_front = "600 kg +/- 12 kg"\nright_front = "600 kg"\n'
        'left_rear = "700 kg"\nright_rear = "700 kg"\n[wanted]\nload = 1.07\n'
    )
    assessment = sheet.assess()
    load = assessment["vehicle.load"]
    assert load.margin == 2800 / 2600 and load.verdict == "meets"
    assert load.uncertainty == pytest.approx(2800 / 2600**2 * 12 / math.sqrt(3), rel=1e-4)
    (one,) = assessment.sensitivity("vehicle.load")
    assert one.path == "scales.left_front" and one.tolerance == 12 * kg and one.share == 1.0
    assert one.margin_change == pytest.approx((2800 / 2612 - 2800 / 2588) / 2, rel=1e-12)
    assert one.finding == "vehicle.load"
    assert str(one) == "scales.left_front +12 kg: margin of vehicle.load -0.004971, 100 % of its variance"
    chance = {chance.path: chance for chance in assessment.chances(200_000, seed=7)}["vehicle.load"]
    # Tight where m > 2800 / 1.07: of a rectangle of half-width 12 kg about 2600 kg, none; then of 30 kg.
    assert chance.turns == 0.0 and chance.meets == 1.0
    wide = sheet.with_({"scales.left_front": "600 kg +/- 30 kg"}).assess()
    chance = {chance.path: chance for chance in wide.chances(200_000, seed=7)}["vehicle.load"]
    turns = (2630 - 2800 / 1.07) / 60
    assert chance.tight == pytest.approx(turns, abs=5 * math.sqrt(turns / 200_000))
    assert chance.turns == pytest.approx(chance.tight, rel=1e-12) and chance.short == chance.not_known == 0.0
    assert chance.mean == pytest.approx(2800 / 60 * math.log(2630 / 2570), rel=1e-4)
    assert wide.chances(1000, seed=3) == wide.chances(1000, seed=3) != wide.chances(1000, seed=4)
    with pytest.raises(ValueError, match="samples"):
        wide.chances(0)


def test_uncertainty_in_the_middle_of_a_band():
    """The share on the diagonal is a half, the band 0.49 to 0.51: its derivative by one scale is (m - m2 - m3) / m^2."""
    scales = {f"scales.{name}": "600 kg" for name in ("left_front", "right_front", "left_rear", "right_rear")}
    sizes = {"vehicle.wheelbase": "2.5 m", "front.track": "1.5 m", "rear.track": "1.5 m"}
    sheet = Sheet({**scales, **sizes, "scales.right_front": "600 kg +/- 12 kg"})
    diagonal = sheet.assess()["vehicle.diagonal"]
    assert diagonal.value == 0.5 and diagonal.margin == pytest.approx(0.01)
    assert diagonal.uncertainty == pytest.approx(0.5 / 2400 * 12 / math.sqrt(3), rel=1e-4)


ROWS = [
    {"part": "F500", "kind": "front spring", "cost": 110.0, "mass": 3.2 * kg, "front.spring.rate": 500 * lbf_in},
    {"part": "F600", "kind": "front spring", "cost": 120.0, "mass": 3.0 * kg, "front.spring.rate": 600 * lbf_in},
    {"part": "F999", "kind": "front spring", "cost": 10.0, "mass": 1.0 * kg, "front.spring.rate": 999 * lbf_in},
    {"part": "R330", "kind": "rear spring", "cost": 90.0, "mass": 4.0 * kg, "rear.spring.rate": 330 * lbf_in},
    {"part": "R400", "kind": "rear spring", "cost": 80.0, "mass": 4.5 * kg, "rear.spring.rate": 400 * lbf_in},
]
CSV = """part,kind,cost,mass,front.spring.rate,rear.spring.rate
F500,front spring,110,3.2 kg,500 lbf/in,
F600,front spring,120,3.0 kg,600 lbf/in,
F999,front spring,10,1.0 kg,999 lbf/in,
R330,rear spring,90,4.0 kg,,330 lbf/in
R400,rear spring,80,4.5 kg,,400 lbf/in
"""
WANTED = ["1.2 Hz <= front.natural_frequency <= 1.4 Hz", "rear.frequency.verdict = meets", "cost <= 7000"]


def test_price_lists_from_everywhere(tmp_path):
    list_ = PriceList(ROWS)
    assert PriceList.from_csv(CSV) == list_ and len(list_) == 5 and list_[0].mass == 3.2 * kg
    quoted = "".join(
        f'[[parts]]\npart = "{one.part}"\nkind = "{one.kind}"\ncost = {one.cost}\nmass = "{one.mass}"\n'
        + "".join(f'{path} = "{text}"\n' for path, text in one.lines)
        for one in list_
    )
    assert PriceList.from_toml(quoted) == list_
    columns = {name: [row.get(name) for row in ROWS] for name in CSV.splitlines()[0].split(",")}
    plain = {name: [v.to(v.unit) if isinstance(v, Quantity) else v for v in column] for name, column in columns.items()}
    units = {"mass": "kg", "front.spring.rate": "lbf/in", "rear.spring.rate": "lbf/in"}
    fields = [
        pa.field(name, pa.string() if name in ("part", "kind") else pa.float64(), metadata={"unit": units.get(name, "")})
        for name in plain
    ]
    table = pa.table(plain, schema=pa.schema(fields))
    assert PriceList.from_arrow(table) == list_
    pq.write_table(table, tmp_path / "prices.parquet")
    assert PriceList.from_parquet(tmp_path / "prices.parquet") == list_ == PriceList.load(tmp_path / "prices.parquet")
    frame = pd.DataFrame(plain).rename(columns={name: f"{name} [{unit}]" for name, unit in units.items()})
    assert PriceList.from_pandas(frame) == list_
    frame = pd.DataFrame(plain)
    frame.attrs["units"] = units
    assert PriceList.from_pandas(frame) == list_
    (tmp_path / "prices.csv").write_text(CSV)
    assert PriceList.load(tmp_path / "prices.csv") == list_ == pickle.loads(pickle.dumps(list_))
    (tmp_path / "wrong.csv").write_text(CSV.replace("330 lbf/in", "330 lbf"))
    with pytest.raises(DocumentError, match=r"wrong\.csv: line 5, column \d+: .*rear\.spring\.rate"):
        PriceList.load(tmp_path / "wrong.csv")
    with pytest.raises(DocumentError, match=r"line 3, column \d+: .*rear\.spring\.rate"):
        PriceList([ROWS[3], {**ROWS[4], "rear.spring.rate": 400 * lb}])
    with pytest.raises(ValueError, match=r"ends in '\.xls'"):
        PriceList.load("prices.xls")
    with pytest.raises(TypeError, match="neither text"):
        PriceList([{"part": object()}])
    assert PriceList(tomllib.loads(quoted)) == list_
    in_names = table.rename_columns([f"{name} [{units[name]}]" if name in units else name for name in plain]).replace_schema_metadata()
    bare = pa.table({field.name: in_names[field.name] for field in in_names.schema})
    bare = bare.cast(pa.schema([pa.field(field.name, field.type) for field in bare.schema]))
    assert PriceList.from_arrow(bare) == list_


def test_other_parts_are_given_as_a_sheet_takes_them(dunlin):
    fitted = dunlin.fit({"front.spring.rate": "500 lbf/in"})
    assert fitted == dunlin.fit({"front": {"spring": {"rate": 500 * lbf_in}}, "rear.track": None})
    assert "front.spring.free_length" not in fitted and fitted != dunlin.with_({"front.spring.rate": "500 lbf/in"})
    part = PriceList([{"part": "F-500", "kind": "front spring", "cost": 1.0, "mass": 2 * kg, "front.spring.rate": "500 lbf/in"}])[0]
    assert dunlin.fit(part) == fitted


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda sheet, prices: sheet.fit([]), "choice: a Choice, a Part or a mapping of paths to values is wanted, not list"),
        (lambda sheet, prices: sheet.fit(sheet.choose(prices, [])), "not Chosen; a Chosen has them as cheapest, lightest and feasible"),
        (lambda sheet, prices: sheet.fit({"front.spring.rate": 500}), "front.spring.rate = 500 has no unit"),
        (lambda sheet, prices: sheet.what_if(["front.spring.rate"]), "lines: a mapping of paths to lists of values is wanted, not list"),
        (lambda sheet, prices: sheet.what_if({"engine.stroke": ["9 mm"]}, None), "outputs: a list of texts like .* is wanted, not NoneType"),
        (lambda sheet, prices: sheet.what_if({3: ["9 mm"]}), "lines: a path: text like .* is wanted, not int"),
        (lambda sheet, prices: sheet.choose(prices, 7000), "requirements: a list of texts like .* is wanted, not int"),
        (lambda sheet, prices: sheet.choose(prices, [], limit="all"), "limit = 'all' is not a whole number"),
        (lambda sheet, prices: sheet.assess().compare(sheet), r"other: an Assessment is wanted, as sheet.assess\(\) gives, not Sheet"),
        (lambda sheet, prices: sheet.assess().chances(None), "samples = None is not a whole number"),
        (lambda sheet, prices: sheet.assess()[None], "a finding has a path like .* and a place, not NoneType"),
        (lambda sheet, prices: sheet.assess().work(slice(2)), "path: one finding is wanted, not a slice"),
        (lambda sheet, prices: sheet.assess().value(("front", "track")), "path: text like .* is wanted, not tuple"),
        (lambda sheet, prices: sheet[3], "path: text like .* is wanted, not int"),
        (lambda sheet, prices: Sheet.from_text(b"version = 1"), "text: text is wanted, not bytes"),
        (lambda sheet, prices: Sheet({}, name=3), "name: text is wanted, not int"),
        (lambda sheet, prices: prices[None], "a part has a name and a place, not NoneType"),
        (lambda sheet, prices: PriceList(None), "rows: a list of mappings of columns to cells is wanted, not NoneType"),
        (lambda sheet, prices: PriceList.from_pandas({}), "frame: a pandas.DataFrame is wanted, not dict"),
        (lambda sheet, prices: spring.Stack.from_text(None), "text: text is wanted, not NoneType"),
    ],
)
def test_another_kind_of_object_is_refused_by_its_name(dunlin, call, words):
    with pytest.raises(TypeError, match=words):
        call(dunlin, PriceList(ROWS))


def test_a_sheet_is_not_written_in_place(dunlin):
    with pytest.raises(TypeError, match=r"never changes: write sheet = sheet\.with_\(\{'front\.track': \.\.\.\}\)"):
        dunlin["front.track"] = "1500 mm"
    with pytest.raises(TypeError, match=r"never changes: write sheet = sheet\.with_\(\{'front\.track': None\}\)"):
        del dunlin["front.track"]


def test_one_text_is_a_list_of_one_and_tables_nest(dunlin):
    one = dunlin.what_if({"front": {"spring": {"rate": ["500 lbf/in"]}}}, "front.frequency.value")
    assert one == dunlin.what_if({"front.spring.rate": ["500 lbf/in"]}, ["front.frequency.value"])
    prices = PriceList(ROWS)
    assert dunlin.choose(prices, "cost <= 7000") == dunlin.choose(prices, ["cost <= 7000"])
    assert dunlin.get(3) is None and dunlin.get(3, "none") == "none"


def test_choosing_equals_trying_each(dunlin):
    prices = PriceList(ROWS)
    chosen = dunlin.choose(prices, WANTED)
    fronts = [one for one in prices if one.kind == "front spring"]
    rears = [one for one in prices if one.kind == "rear spring"]
    tried = []
    for front in fronts:
        for rear in rears:
            assessment = dunlin.with_(dict(front.lines + rear.lines)).assess()
            if (
                1.2 <= assessment.value("front.natural_frequency").si <= 1.4
                and assessment["rear.frequency"].verdict == "meets"
            ):
                tried.append((front, rear))
    assert 0 < len(tried) < 6 and [choice.parts for choice in chosen.feasible] == tried and not chosen.more
    costs = {parts: (sum(p.cost for p in parts), sum(p.mass.si for p in parts)) for parts in tried}
    front = [
        parts for parts, (cost, mass) in costs.items()
        if not any(other != (cost, mass) and other[0] <= cost and other[1] <= mass for other in costs.values())
    ]
    assert {choice.parts for choice in chosen.front} == set(front)
    assert chosen.cheapest.cost == min(cost for cost, _ in costs.values())
    assert chosen.lightest.mass.si == min(mass for _, mass in costs.values())
    standing = {part.part for parts in tried for part in parts}
    assert {one.part.part for one in chosen.rejected} == {one.part for one in prices} - standing
    assert all("required" in one.why for one in chosen.rejected)
    table = chosen.table()
    assert table.rows == len(tried) and table["front spring"].tolist() == [parts[0].part for parts in tried]
    assert chosen.table(chosen.front)["cost"].tolist() == [choice.cost for choice in chosen.front]
    assert chosen.rejected_table()["why"].tolist() == [one.why for one in chosen.rejected]
    best = dunlin.fit(chosen.cheapest)
    assert best["front.spring.rate"] == Quantity(chosen.cheapest["front spring"].lines[0][1])
    assert pickle.loads(pickle.dumps(chosen)) == chosen and "cheapest" in str(chosen)
    page = chosen._repr_html_()
    assert "1.2 Hz &lt;= front.natural_frequency" in page and "cheapest" in page and "Rejected" in page
    assert dunlin.choose(prices, WANTED, limit=1).more
    none = dunlin.choose(prices, ["cost <= 5"])
    assert none.cheapest is None and none.front == () and none.table().rows == 0
    with pytest.raises(TextError, match="x <= 1.4 Hz"):
        dunlin.choose(prices, ["front.natural_frequency"])


def test_another_part_loses_what_was_measured_on_the_old_one(dunlin):
    caps = PriceList.from_csv("part,kind,cost,cap.rating\nnew,cap,10,16 psi gauge\n")
    readings = {"cap.opening_pressure": "15.2 psi gauge", "cap.holding_pressure": "14.6 psi gauge"}
    sheet = dunlin.with_({**readings, "cap.rating_tolerance": "1 psi", "cap.gauge_error": "0.5 psi"})
    assert sheet.assess()["cap.holds"].verdict != "not known"
    chosen = sheet.choose(caps, [])
    assert set(readings) <= set(chosen.dropped) and "replaced: cap.holding_pressure" in str(chosen)
    assert "cap.holding_pressure" in chosen._repr_html_() and pickle.loads(pickle.dumps(chosen)) == chosen
    fitted = sheet.fit(chosen.cheapest)
    assert fitted["cap.rating"] == Quantity("16 psi gauge") and not set(readings) & set(fitted)
    assert fitted.assess()["cap.holds"].verdict == "not known"
    assert any(remark.startswith("cap.holding_pressure was measured") for remark in fitted.remarks)
    with pytest.raises(Exception, match="cannot be decided: it needs cap.holding_pressure"):
        sheet.choose(caps, ["cap.holds.verdict = tight"])


def test_a_choice_names_what_it_makes_worse():
    sheet = Sheet.from_text(
        '[cap]\nrating = "15 psi gauge"\nrating_tolerance = "1 psi"\ngauge_error = "0.5 psi"\nholding_pressure = "14.6 psi gauge"\n'
    )
    caps = PriceList.from_csv(
        "part,kind,cost,cap.rating,cap.rating_tolerance,cap.holding_pressure\n"
        "fine,cap,10,15 psi gauge,1 psi,14.6 psi gauge\n"
        "weak,cap,5,15 psi gauge,1 psi,9 psi gauge\n"
    )
    free = sheet.choose(caps, [])
    assert [str(one) for one in free.cheapest.worse] == ["cap.holds: short, meets now"]
    assert "worse with the cheapest: cap.holds: short, meets now" in str(free)
    assert ">worse than now</th>" in free._repr_html_() and ">cap.holds: short, meets now</td>" in free._repr_html_()
    kept = sheet.choose(caps, ["no finding worse"])
    assert kept.cheapest.parts[0].part == "fine" and kept.cheapest.worse == ()
    assert [one.part.part for one in kept.rejected] == ["weak"]
    assert kept.rejected[0].why.endswith("short, meets now; required: no finding worse")


def test_a_sweep_says_which_readings_it_left_out(dunlin):
    sheet = dunlin.with_({"use.altitude": "500 m", "use.station_pressure": "94 kPa abs"})
    sweep = sheet.what_if({"use.altitude": ["0 m", "2000 m"]}, ["use.station_pressure"])
    assert sweep.dropped == ("use.station_pressure",) and "use.station_pressure" in sweep._repr_html_()
    assert sweep.table()["use.station_pressure"][0].si == pytest.approx(101325.0, rel=1e-6)
    assert sheet.what_if({"cap.rating": ["14 psi gauge"]}, ["vehicle.mass"]).dropped == ()


def run(*arguments, **options):
    command = [sys.executable, "-m", "axlewright", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, check=False, **options)


def test_the_command_line(dunlin, assessment, tmp_path):
    done = run("assess", DUNLIN)
    assert (done.returncode, done.stderr) == (2, "") and done.stdout.rstrip("\n") == assessment.text().rstrip("\n")
    assert run("assess", DUNLIN, "--units", "us").stdout.rstrip("\n") == assessment.text("us").rstrip("\n")
    assert run("assess", DUNLIN, "--work").stdout.rstrip("\n") == assessment.text(work=True).rstrip("\n")
    assert json.loads(run("assess", DUNLIN, "--json").stdout) == json.loads(assessment.to_json())
    other = tmp_path / "other.toml"
    other.write_text(dunlin.with_({"front.spring.rate": "600 lbf/in"}).to_toml())
    done = run("assess", DUNLIN, "--compare", other)
    assert done.returncode == 2 and done.stdout.rstrip("\n") == assessment.compare(Sheet.load(other).assess()).rstrip("\n")
    assert len(json.loads(run("assess", DUNLIN, "--compare", other, "--json").stdout)) == 2

    meets = tmp_path / "safe.toml"
    meets.write_text('name = "of one answer"\n')
    blank = Sheet.load(meets).assess()
    assert {finding.verdict for finding in blank} == {"not known"} and any(finding.safety for finding in blank)
    assert run("assess", meets).returncode == 1  # a safety finding that is not known is no better than tight

    wrong = tmp_path / "wrong.toml"
    wrong.write_text('[front.spring]\nrat = "3 N/mm"\n')
    done = run("assess", wrong)
    assert done.returncode == 65 and done.stdout == ""
    assert "wrong.toml" in done.stderr and "line 2" in done.stderr and "front.spring.rat" in done.stderr
    done = run("assess", tmp_path / "none.toml")
    assert done.returncode == 66 and "none.toml" in done.stderr and "Traceback" not in done.stderr
    assert run("assess", tmp_path).returncode == 66
    for arguments in ((), ("assess",), ("walk",), ("assess", DUNLIN, "--units", "yards"), ("assess", DUNLIN, "--json", "--work")):
        done = run(*arguments)
        assert done.returncode == 64 and done.stdout == "" and "usage" in done.stderr
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "axlewright", "assess", DUNLIN], stdout=writer, stderr=subprocess.PIPE, text=True,
        check=False,
    )
    os.close(writer)
    assert done.returncode == 141 and done.stderr == ""


def test_nothing_else_is_imported():
    code = (
        "import sys, axlewright, axlewright.sheet as s; x = s.Sheet({'front.spring.rate': '225 lbf/in'}); x.assess().findings;"
        "x.what_if({'front.spring.rate': s.span('1 N/mm', '9 N/mm', 9)}).table();"
        "print([m for m in ('pandas', 'pyarrow', 'xarray', 'matplotlib', 'dask', 'pint', 'tqdm') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_the_examples_of_the_docs():
    for module in (axlewright.sheet, axlewright.sheet._sheet):
        done = doctest.testmod(module)
        assert done.attempted >= 3 and done.failed == 0


def test_the_package_offers_it():
    assert axlewright.Sheet is Sheet and axlewright.PriceList is PriceList and {"Sheet", "sheet", "span"} <= set(dir(axlewright))
