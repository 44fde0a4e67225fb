"""The commands of a terminal: what they print, their width, and their exit codes."""

import csv
import io
import json
import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import axlewright
from axlewright._native import _sheet_demo, _sheet_keys, _sheet_questions
from axlewright.sheet import Sheet

ROOT = Path(__file__).resolve().parents[3]
SHEETS = ROOT / "examples/sheets"
DUNLIN, PRICES = SHEETS / "dunlin.toml", SHEETS / "tern_lane_prices.csv"
DEMOS = ("dunlin", "wagtail", "dray", "dunlin_measured")


def run(*arguments, text="", code=0, **environment):
    done = subprocess.run(
        [sys.executable, "-m", "axlewright", *map(str, arguments)],
        capture_output=True, text=True, input=text, check=False, encoding="utf-8", env={**os.environ, "PYTHONIOENCODING": "utf-8", **environment},
    )
    assert done.returncode == code, (done.returncode, done.stdout[-500:], done.stderr[-500:])
    assert "Traceback" not in done.stderr and (code >= 64 or not done.stderr.startswith("usage"))
    return done


def wide(text, width):
    return [line for line in text.splitlines() if len(line) > width]


@pytest.mark.parametrize("name", DEMOS)
def test_a_report_fits_its_page(name):
    assessment = Sheet.load(SHEETS / f"{name}.toml").assess()
    for width in (60, 80, 120):
        for text in (assessment.text(width=width), assessment.text("us", width=width, all=True)):
            assert not wide(text, width)
    assert assessment.text() == assessment.text(width=80) == str(assessment)


def test_assess_has_a_width_and_no_colour_in_a_pipe():
    page = run("assess", DUNLIN, code=2).stdout
    assert page.rstrip("\n") == Sheet.load(DUNLIN).assess().text().rstrip("\n") and not wide(page, 80) and "\x1b" not in page
    assert wide(run("assess", DUNLIN, "--width", 120, code=2).stdout, 80)
    assert "a width is a number of columns" in run("assess", DUNLIN, "--width", "wide", code=64).stderr
    assert "\x1b[" in Sheet.load(DUNLIN).assess().text(colour=True)


def test_assess_reads_the_standard_input():
    page = run("assess", "-", text=DUNLIN.read_text(encoding="utf-8"), code=2).stdout
    assert page == run("assess", DUNLIN, code=2).stdout
    done = run("assess", "-", text="[brakes]\nx = 1\n[front]\ntrack = 3\n", code=65)
    assert done.stderr.startswith("standard input: 2 faults, in the order of the text:") and "braking is not covered yet" in done.stderr


def test_assess_tells_one_finding():
    page = run("assess", DUNLIN, "front.coil_bind", code=2).stdout
    assert page.startswith("front.coil_bind: meets\n") and "work:" in page and "CAUTION" in page and "rear.coil_bind" not in page
    assert "rear.coil_bind: " in run("assess", DUNLIN, "coil_bind", code=2).stdout
    done = run("assess", DUNLIN, "front.coilbind", code=64)
    assert done.stdout == "" and "did you mean `front.coil_bind`?" in done.stderr


def test_assess_in_other_forms():
    assessment = Sheet.load(DUNLIN).assess()
    rows = list(csv.DictReader(io.StringIO(run("assess", DUNLIN, "--csv", code=2).stdout)))
    assert [row["verdict"] for row in rows if row["finding"] == "driveline.cruise"] == ["short"]
    assert sum(row["verdict"] != "" for row in rows) == len(assessment) == 77
    notes = [(row["finding"], row["note"]) for row in rows if not row["verdict"]]
    page = assessment.text()
    for head in ("TO WRITE", "ASSUMED", "CAUTION"):
        assert head in page and any(name.startswith(head) and note for name, note in notes), head
        assert f"\n## {head}" in assessment.to_markdown()
    assert run("assess", DUNLIN, "--markdown", code=2).stdout == assessment.to_markdown()
    data = json.loads(run("assess", DUNLIN, "--json", code=2).stdout)
    lines = {line["line"]: line for line in data["lines"]}
    assert lines["front.spring.rate"]["written"] == "550 lbf/in +/- 3 %" and lines["front.spring.rate"]["unit"] == "N/m"
    assert lines["driveline.driven"]["word"] == "rear"
    for wrong in (("--csv", "--json"), ("--markdown", "--work"), ("--json", "--all"), ("--csv", "--compare", DUNLIN), ("--json", "front.bump")):
        assert "usage" in run("assess", DUNLIN, *wrong, code=64).stderr


def test_what_to_measure_next():
    sheet = Sheet.load(DUNLIN)
    for lines, answers in sheet.assess().measure_next:
        assert lines and answers
    assert (("use.road",), ("front.road_holding", "rear.road_holding")) in sheet.assess().measure_next


def test_keys():
    assert run("keys").stdout == _sheet_keys(None, "metric", 80)
    page = run("keys", "track", "bar", "--units", "us", "--width", 60).stdout
    assert "front.lateral_rod.body\n" in page and not wide(page, 60)
    assert "not covered yet" in run("keys", "welding").stdout


def test_new_asks_and_never_overwrites(tmp_path):
    file = tmp_path / "lark.toml"
    told = run("new", file, "--name", "Lark", text="2\n\nyes\nrear\nmanual\n\n\nus\n").stdout
    # A question without an answer keeps its first choice, and says so.
    assert "rear=leaf" in told and "front=" not in told
    sheet = Sheet.load(file)
    assert sheet.name == "Lark" and sheet["front.suspension"] == "strut" and sheet["rear.suspension"] == "live_axle_on_leaf_springs"
    text = file.read_text(encoding="utf-8")
    assert '#rate = "___ lbf/in"' in text and "#top_mount = {" in text
    assert run("assess", file, code=1).stderr == ""
    assert "is there already; --force" in run("new", file, "--no-questions", code=64).stderr and file.read_text(encoding="utf-8") == text
    run("new", file, "--no-questions", "--force")
    assert file.read_text(encoding="utf-8") != text
    assert "no answer" in run("new", "--name", "x", text="9\n", code=64).stderr
    for wrong in ("front=twist", "fronnt=strut"):
        assert run("new", "--no-questions", "--answer", wrong, code=64).stdout == ""
    assert "usage" in run("new", "--answer", "front", code=64).stderr
    assert run("new", tmp_path / "none" / "x.toml", "--no-questions", code=74).stdout == ""
    # A blank that is not filled in is no value.
    half = text.replace('#rate = "___ lbf/in"', 'rate = "___ lbf/in"', 1)
    assert "___" in run("assess", "-", text=half, code=65).stderr


def test_new_like_a_demo_sheet(tmp_path):
    for name in DEMOS[:3]:
        demo = (SHEETS / f"{name}.toml").read_text(encoding="utf-8")
        assert run("new", "--like", name).stdout == demo == _sheet_demo(name)
    keys = [key for key, _, _ in _sheet_questions()]
    assert keys == ["front", "rear", "points", "drive", "gearbox", "cooling", "towing", "units"]


def test_compare(tmp_path):
    other = tmp_path / "other.toml"
    other.write_text(Sheet.load(DUNLIN).with_({"front.spring.rate": "600 lbf/in"}).to_toml(), encoding="utf-8")
    page = run("compare", DUNLIN, other).stdout
    assert page == Sheet.load(DUNLIN).assess().compare(Sheet.load(other).assess()) and not wide(page, 80)
    assert "\nfront.frequency: " in page and "\nrear.frequency: " not in page
    assert run("compare", DUNLIN, DUNLIN).stdout.endswith("0 of 77 findings differ.\n")


def test_what_if():
    page = run("what-if", DUNLIN, "front.spring.rate=500 lbf/in,600 lbf/in").stdout
    assert not wide(page, 80) and "  short      500 lbf/in  1.2" in page and "rear.frequency" not in page
    table = list(csv.reader(io.StringIO(run("what-if", DUNLIN, "front.spring.rate=500 lbf/in:600 lbf/in:3", "--output", "front.natural_frequency", "--csv").stdout)))
    assert [row[0] for row in table[1:]] == ["500.0", "550.0", "600.0"] and table[0][:2] == ["front.spring.rate [lbf/in]", "front.natural_frequency [Hz]"]
    assert "front.natural_frequency" in run("what-if", DUNLIN, "front.spring.rate=500 lbf/in", "--output", "front.natural_frequency").stdout
    for wrong in ("front.spring.rate", "front.spring.rat=3 N/mm", "front.spring.rate=3 lb", "front.spring.rate=1 N/mm:2 N/mm:1"):
        done = run("what-if", DUNLIN, wrong, code=64)
        assert done.stdout == "" and done.stderr
    # A tolerance beside a value counts in its row.
    page = run("what-if", DUNLIN, "front.spring.rate=507 lbf/in +/- 3 %").stdout
    assert "507 lbf/in +/- 3 %" in page and "(at worst" in page and "without one" not in page
    # A table follows the units, holds every row, and takes a finding by its name.
    page = run("what-if", DUNLIN, "front.spring.rate=500 lbf/in:600 lbf/in:25", "--output", "front.bump.margin", "--output", "front.bump", "--units", "us").stdout
    assert "[lbf/in]" in page and "[in]" in page and "front.bump.verdict" in page and "\n24  " in page and "rows" not in page
    page = run("what-if", DUNLIN, "front.spring.rate=500 lbf/in", "--output", "front.bump.margin", "--units", "metric").stdout
    assert "[N/mm]" in page and "[mm]" in page
    assert "a range has no tolerance" in run("what-if", DUNLIN, "front.spring.rate=500 lbf/in +/- 3 %:600 lbf/in:3", code=64).stderr
    assert "too many to list" in run("what-if", DUNLIN, "front.spring.rate=500 lbf/in:600 lbf/in:3000", code=64).stderr


def test_a_reading_that_follows_from_a_changed_line_is_left_out(tmp_path):
    file = tmp_path / "high.toml"
    file.write_text(Sheet.load(DUNLIN).with_({"use.station_pressure": "84 kPa absolute"}).to_toml(), encoding="utf-8")
    done = run("what-if", file, "use.altitude=9000 ft")
    assert "left out, as it follows from a line that changes: use.station_pressure" in done.stderr
    assert "\ncoolant.boiling: " in done.stdout


def test_choose():
    page = run("choose", DUNLIN, PRICES, "--require", "driveline.cruise.verdict = tight", "--require", "cost <= 1500").stdout
    assert "cheapest: cost " in page and "CAUTION" in page and not wide(page, 80)
    assert "cheapest: cost " in run("choose", DUNLIN, PRICES).stdout
    refused = run("choose", DUNLIN, PRICES, "--require", "no finding worse", code=64).stderr
    assert "needs front.spring." in refused and "require `no finding short`" in refused
    assert "cheapest: none" in run("choose", DUNLIN, PRICES, "--require", "cost <= 1", code=2).stdout
    assert run("choose", DUNLIN, PRICES, "--require", "cost < banana", code=64).stdout == ""
    assert run("choose", DUNLIN, SHEETS / "none.csv", code=66).stdout == ""


def test_sensitivity_and_chances():
    page = run("sensitivity", DUNLIN, "front.frequency").stdout
    assert page.startswith("Tolerances that move the margin of front.frequency (meets)") and "front.spring.rate +2.89 N/mm" in page and not wide(page, 80)
    assert "front.spring.rate +16.5 lbf/in" in run("sensitivity", DUNLIN, "front.frequency", "--units", "us").stdout
    assert "vehicle.diagonal +0.0399 %" in " ".join(run("sensitivity", DUNLIN, "vehicle.diagonal").stdout.split())
    assert "did you mean" in run("sensitivity", DUNLIN, "front.frequenc", code=64).stderr
    page = run("chances", DUNLIN, "--samples", 200, "--seed", 3).stdout
    assert "200 samples of seed 3" in page and not wide(page, 80)
    assert run("chances", DUNLIN, "--samples", 0, code=64).stdout == ""


def test_several_lines_tell_all_their_faults():
    with pytest.raises(axlewright.DocumentError, match="2 faults") as refused:
        Sheet({"front.trak": "3 m", "front.track": "2 m", "engine.bore": "3 lb"})
    assert [fault.key for fault in refused.value.faults] == ["front.trak", "engine.bore"]


def test_the_console_script():
    project = tomllib.loads((ROOT / "bindings/python/pyproject.toml").read_text(encoding="utf-8"))
    module, name = project["project"]["scripts"]["axlewright"].split(":")
    assert (module, name) == ("axlewright.__main__", "run")
    from axlewright.__main__ import run as command

    assert callable(command)
