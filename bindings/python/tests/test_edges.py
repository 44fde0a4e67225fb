"""Hostile and broken surroundings: threads at the end of the interpreter, pickles, long texts, terminals, outputs, files, arrays."""

import json
import os
import pickle
import signal
import stat
import subprocess
import sys
import threading
from pathlib import Path
from types import SimpleNamespace

import ended
import numpy as np
import pytest
from long_texts import WAYS_IN

import axlewright
from axlewright import DocumentError, DomainError, Quantity, TextError, Work, cooling, driveline, spring, tyre, work
from axlewright._native import _MOST_BYTES, _printable, _short
from axlewright.sheet import Assessment, PriceList, Sheet, Sweep, _file, span
from axlewright.units import N, N_mm, deg, lbf_in, mm

SHEETS = Path(__file__).parents[3] / "examples/sheets"
DUNLIN = SHEETS / "dunlin.toml"


# Threads and signals.


@pytest.mark.parametrize("how", ended.WAYS)
def test_a_process_ends_while_its_threads_work(how):
    for _ in range(3):
        done = subprocess.run([sys.executable, ended.__file__, how], capture_output=True, text=True, check=False, timeout=600)
        assert (done.returncode, done.stdout, done.stderr) == (0, "ends\n", ""), done


def test_a_finalizer_calls_while_the_interpreter_is_taken_down():
    script = (
        "import os, sys\n"
        "from axlewright import spring\n"
        "class Last:\n"
        "    function = staticmethod(spring.ride_rate); stop = spring.BumpStop(points=[{'compression': f'{x} mm', 'force': f'{x} N'} for x in (0, 9)])\n"
        "    table = staticmethod(stop.table); say = staticmethod(os.write); rows = stop.table(compression='3 mm').rows\n"
        "    def __del__(self): self.say(1, b'%g %d' % (self.function(wheel_rate='2 N/mm', tyre_rate='2 N/mm').si, self.table(compression='3 mm').rows))\n"
        "sys.last = Last()"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, "1000 1"), done


def test_another_thread_runs_while_a_model_works():
    """A method of a model gives the interpreter to others in its middle: by count, not by time."""
    linkage = Sheet.load(SHEETS / "dunlin_measured.toml").model("front.suspension")
    ready, turns = threading.Event(), []

    def once():
        ready.wait()
        turns.append(1)

    before = sys.getswitchinterval()
    sys.setswitchinterval(1000.0)  # nobody is made to give the interpreter away
    other = threading.Thread(target=once, daemon=True)
    try:
        other.start()
        ready.set()
        had = len(turns)
        for _ in range(50):
            linkage.table(travel=np.linspace(-0.04, 0.04, 2_000) * axlewright.units.m, rack_travel="0 mm")
        now = len(turns)
    finally:
        sys.setswitchinterval(before)
    other.join()
    assert (had, now) == (0, 1)


# Pickles and other texts that name something.


def test_a_text_calls_a_function_of_the_catalogue_and_nothing_else(monkeypatch):
    called = []
    trap = SimpleNamespace(trap=lambda **more: called.append(more), sub=SimpleNamespace(trap=lambda **more: called.append(more)))
    monkeypatch.setitem(sys.modules, "axlewright.zzz_trap", trap)
    monkeypatch.setattr(spring, "zzz_trap", trap.trap, raising=False)
    for text in ("zzz_trap.trap", "spring.zzz_trap", "spring.__loader__", "os.system", "_native._fault", "sheet.Sheet", "", ".", "spring", "spring.", "..os.system"):
        with pytest.raises(TextError, match="there is no function of this path"):
            Work(text, {})
        with pytest.raises(TextError, match="there is no function of this path"):
            pickle.loads(pickle.dumps(_Calls(Work, (text, {}, None))))
    assert called == []
    made = work(spring.static_deflection, load="900 lbf", rate="225 lbf/in")
    assert Work("spring.static_deflection", {"load": "900 lbf", "rate": "225 lbf/in"}).result == made.result == pickle.loads(pickle.dumps(made)).result


class _Calls:
    """Pickles as a call."""

    def __init__(self, function, arguments):
        self.call = function, arguments

    def __reduce__(self):
        return self.call


# Long texts.


LONG = "x" * 1_000_000
BRIEF = 3_000  # the names of all columns and the like stand beside the echo


@pytest.mark.parametrize("ask", WAYS_IN)
@pytest.mark.parametrize("letter", ["x", "/", "é", "\x1b", "1 "])
def test_a_long_text_is_refused_shortly(ask, letter):
    """Nothing in it is searched: a search that grows with more than the text would not end here."""
    with pytest.raises((ValueError, TypeError, KeyError, OSError)) as refused:
        ask(letter * (len(LONG) // len(letter)))
    said = str(refused.value)
    assert len(said) < BRIEF and "\x1b" not in said, said[:200]
    assert len(repr(getattr(refused.value, "faults", ()))) < 10 * BRIEF


def test_a_long_key_costs_no_more_for_what_stands_below_it():
    """2 MB of key over 20 000 values: the paths of all of them would take 40 GB."""
    key = "k" * 2_000_000
    with pytest.raises(DocumentError):
        driveline.Gearbox(gears=[{key: list(range(20_000))}], final_drive=4.1, rolling_radius="0.3 m", red_line="4000 rpm")
    below = ",".join(f'"a{place}":1' for place in range(20_000))
    for text in (f'{{"parts":[{{"part":"a","kind":"b","cost":3,"{key}":{{{below}}}}}]}}', f'{{"parts":[{{"{key}":[{",".join("1" * 20_000)}]}}]}}'):
        with pytest.raises(DocumentError):
            PriceList.from_toml(text)
    with pytest.raises(DocumentError):
        Sheet.from_text(f'{{"{key}":{{{below}}}}}')


def test_a_price_list_of_many_columns_and_cells_ends():
    with pytest.raises(DocumentError, match="stopped after 25 faults"):
        PriceList.from_csv(",".join(f"part,kind,cost,c{place}" for place in range(150_000)))
    rows = '"a""b","c""d",3\n' * 30_000
    assert len(PriceList.from_csv(f"part,kind,cost\n{rows}")) == 30_000


@pytest.mark.parametrize("text", ["a." * 200_000 + "a = 1", "[" + "a." * 200_000 + "a]", "a = " + "[" * 200_000, "a = " + "{a=" * 200_000, '{"a":' * 200_000, "[" * 200_000])
def test_nesting_ends(text):
    with pytest.raises(DocumentError):
        Sheet.from_text(text)


def test_a_document_is_bounded_before_it_is_read(tmp_path):
    path = tmp_path / "long.toml"
    with open(path, "wb") as file:
        file.truncate(1 << 40)  # a terabyte of nothing
    with pytest.raises(DocumentError, match=f"long.toml: the document has more than {_MOST_BYTES} bytes") as refused:
        Sheet.load(path)
    assert refused.value.file == str(path)
    assert _run("assess", path).returncode == 65
    fits = b"\xef\xbb\xbf" + b'name = "x"\n'
    path.write_bytes(fits + b"#" * (_MOST_BYTES - len(fits) + 3))
    assert Sheet.load(path).name == "x"


# Refused numbers.


@pytest.mark.parametrize(
    ("build", "argument"),
    [
        (lambda x: cooling.Coolant(liquid="water", cap=x * axlewright.units.psi_gauge, altitude="0 m", hottest="90 °C"), "cap"),
        (lambda x: cooling.Coolant(liquid="water", cap="15 psi gauge", altitude=x * mm, hottest="90 °C"), "altitude"),
        (lambda x: cooling.Coolant(liquid="ethylene_glycol", mass_fraction=x, cap="15 psi gauge", altitude="0 m", hottest="90 °C"), "mass_fraction"),
        (lambda x: driveline.Gearbox(gears=[{"ratio": 3.0}, {"ratio": 1.0}], final_drive=x, rolling_radius="0.3 m", red_line="4000 rpm"), "final_drive"),
    ],
)
@pytest.mark.parametrize("x", [np.nan, np.inf, -np.inf, np.float64("nan")])
def test_a_number_that_is_none_is_refused_by_name_value_and_limit(build, argument, x):
    with pytest.raises(DomainError, match=rf"{argument} = (NaN|-?inf) is not a finite .*valid: ") as refused:
        build(x)
    value = refused.value
    assert value.argument == argument and np.array_equal(value.value, x, equal_nan=True)
    assert value.lower is not None and value.upper is not None and value.source


def test_a_number_that_is_none_inside_a_list_is_refused():
    for points in ([{"compression": np.nan * mm, "force": 0 * N}, {"compression": 9 * mm, "force": 9 * N}], [{"compression": 0 * mm, "force": 0 * N}, {"compression": 9 * mm, "force": np.inf * N}]):
        with pytest.raises(DomainError, match=r"points|compression|force"):
            spring.BumpStop(points=points)
    with pytest.raises(DocumentError, match="NaN has no unit"):
        cooling.Coolant(liquid="water", cap=np.nan, altitude="0 m", hottest="90 °C")
    with pytest.raises(ValueError, match="final_drive = 1000000.* is too large"):
        driveline.Gearbox(gears=[], final_drive=10**400, rolling_radius="0.3 m", red_line="4000 rpm")


def test_a_count_that_is_not_whole_is_refused_by_name(tmp_path):
    sheet = Sheet.load(DUNLIN)
    sweep = sheet.what_if({"front.spring.rate": span("300 lbf/in", "900 lbf/in", 3.0)})
    assert sweep.rows == 3 and len(sweep.partitions(2.0)) == 2
    for ask, name in (
        (lambda count: sheet.what_if({"front.spring.rate": span("300 lbf/in", "900 lbf/in", count)}), "front.spring.rate: count"),
        (lambda count: sheet.what_if({"front.spring.rate": ["3 N/mm"]}, threads=count), "threads"),
        (lambda count: sweep.partitions(count), "count"),
        (lambda count: next(sweep.batches(count)), "rows"),
        (lambda count: sweep.to_parquet(tmp_path / "x", rows=count), "rows"),
    ):
        for count in (2.5, np.nan, np.inf, "3", object()):
            with pytest.raises(TypeError, match=f"^{name} = .* is not a whole number$"):
                ask(count)
    with pytest.raises(TypeError, match="samples"):
        sheet.assess().chances(2.5)
    assert os.listdir(tmp_path) == []


# Terminals.


def test_what_a_document_says_cannot_move_the_cursor(tmp_path):
    evil = "\x1b[2J\x9b1A\rMEETS\n\u202eall"
    assert _printable(evil) == r"\x1b[2J\x9b1A\rMEETS\n\u{202e}all" and _short("é" * 61) == "é" * 59 + "…"
    sheet = Sheet.load(DUNLIN)
    document = json.loads(sheet.to_json()) | {"name": evil, "notes": evil}
    other = Sheet.from_text(json.dumps(document))
    assert other.name == evil and json.loads(other.to_json())["name"] == evil
    answer = other.assess()
    texts = [answer.text(), answer.text(work=True), answer.compare(sheet.with_({"front.spring.rate": "600 lbf/in"}).assess()), repr(other), repr(answer), answer.to_json()]
    assert json.loads(answer.to_json())["sheet"] == evil
    path = tmp_path / "evil.json"
    path.write_text(json.dumps(document))
    for more in ([], ["--work"], ["--json"], ["--compare", DUNLIN]):
        texts.append(_run("assess", path, *more).stdout)
    for text in texts:
        assert text and not set(text) & set("\x1b\x9b\r\u202e"), text[:100]
    assert answer.text().splitlines()[0] == _printable(evil)

    parts = PriceList([{"part": evil, "kind": f"spring {evil}", "cost": 3, "mass": "2 kg", "front.spring.rate": "600 lbf/in"}])
    chosen = sheet.choose(parts, [])
    table = axlewright.Table({"part": [evil], "cost": [3.0]})
    for shown in (parts[0], parts, chosen, chosen.cheapest, chosen.table(), table):
        assert not set(str(shown)) & set("\x1b\x9b\r\u202e"), str(shown)
    with pytest.raises(DocumentError) as refused:
        PriceList([{"part": evil, "kind": "a", "cost": 3, evil: "2 kg"}])
    assert not set(str(refused.value)) & set("\x1b\x9b\r\u202e")


# The command.


def _run(*arguments, **options):
    command = [sys.executable, "-m", "axlewright", *map(str, arguments)]
    return subprocess.run(command, capture_output="stdout" not in options, text=True, check=False, **options)


@pytest.mark.parametrize("arguments", [["assess", DUNLIN], ["schema"], ["--help"], ["--version"], ["assess", "--help"]])
def test_an_output_that_cannot_be_written_is_no_verdict(arguments):
    with open("/dev/full", "w") as full:
        done = _run(*arguments, stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 74 and "No space left" in done.stderr and done.stderr.count("\n") == 1, done
    closed = subprocess.run(
        ["sh", "-c", 'exec "$@" >&-', "sh", sys.executable, "-m", "axlewright", *map(str, arguments)], stderr=subprocess.PIPE, text=True, check=False
    )
    assert closed.returncode == 74 and closed.stderr.endswith("python -m axlewright: the standard output is closed\n") and "Traceback" not in closed.stderr


def test_a_character_that_the_output_does_not_take_is_no_verdict(tmp_path):
    path = tmp_path / "sheet.toml"
    path.write_text('name = "Dünlin"\n', encoding="utf-8")
    done = _run("assess", path, env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"})
    assert done.returncode == 74 and "U+00FC" in done.stderr and "ascii" in done.stderr and done.stderr.count("\n") == 1


@pytest.mark.parametrize(("fault", "words"), [("MemoryError()", "not enough memory"), ("ZeroDivisionError('\\x1b[2J\\n')", "ZeroDivisionError"), ("RecursionError('deep')", "RecursionError")])
def test_a_failure_of_its_own_is_no_verdict(fault, words):
    script = (
        "import sys, axlewright.sheet as s, axlewright.__main__ as command\n"
        f"def fails(path): raise {fault}\n"
        "s.Sheet.load = fails; sys.argv[1:] = ['assess', 'x']; sys.exit(command.run())"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert done.returncode == 70 and words in done.stderr and done.stderr.count("\n") == 1 and "\x1b" not in done.stderr, done


def test_without_a_standard_error_the_code_says_it():
    command = ["sh", "-c", 'exec "$@" 2>&-', "sh", sys.executable, "-m", "axlewright"]
    for arguments, code in ((["assess", "/nowhere"], 66), (["walk"], 64)):
        done = subprocess.run([*command, *arguments], stdout=subprocess.PIPE, text=True, check=False)
        assert (done.returncode, done.stdout) == (code, "")


# Files.


@pytest.fixture
def sweep():
    return Sheet.load(DUNLIN).what_if({"front.spring.rate": span("300 lbf/in", "900 lbf/in", 100)}, ["front.wheel_rate"])


def test_parquet_follows_a_link_and_keeps_the_mode(sweep, tmp_path):
    import pyarrow.parquet as pq

    (tmp_path / "there").mkdir()
    target, link = tmp_path / "there" / "sweep.parquet", tmp_path / "link.parquet"
    target.write_bytes(b"before")
    target.chmod(0o640)
    link.symlink_to(Path("there") / "sweep.parquet")
    sweep.to_parquet(link)
    assert link.is_symlink() and stat.S_IMODE(target.stat().st_mode) == 0o640 and len(pq.read_table(target)) == 100
    dangling = tmp_path / "dangling.parquet"
    dangling.symlink_to("new.parquet")
    sweep.to_parquet(str(dangling))
    assert dangling.is_symlink() and len(pq.read_table(tmp_path / "new.parquet")) == 100
    assert sorted(os.listdir(tmp_path)) == ["dangling.parquet", "link.parquet", "new.parquet", "there"] and os.listdir(tmp_path / "there") == ["sweep.parquet"]
    long = tmp_path / ("x" * 250)
    sweep.to_parquet(os.fsencode(long))
    assert len(pq.read_table(long)) == 100


def test_parquet_refuses_what_is_no_file(sweep, tmp_path):
    os.mkfifo(tmp_path / "pipe")
    for path, error in ((tmp_path / "pipe", ValueError), (Path(os.devnull), ValueError), (tmp_path, IsADirectoryError)):
        with pytest.raises(error, match="is a (pipe or a device|folder)"):
            sweep.to_parquet(path)
    assert stat.S_ISFIFO((tmp_path / "pipe").stat().st_mode) and stat.S_ISCHR(os.stat(os.devnull).st_mode) and os.listdir(tmp_path) == ["pipe"]


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_a_signal_leaves_no_part_of_a_file(number, tmp_path):
    script = (
        "import signal, sys, interrupted; signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        f"signal.signal({number:d}, signal.default_int_handler if {number:d} == signal.SIGINT else signal.SIG_DFL)\n"
        "interrupted.main('parquet', sys.argv[1])"
    )
    child = subprocess.Popen(
        [sys.executable, "-c", script, tmp_path], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=Path(__file__).parent
    )
    try:
        assert child.stdout.readline() == "inside\n", child.communicate()[1]
        assert [name for name in os.listdir(tmp_path) if name.startswith(".sweep.parquet.axlewright-") and name.endswith(".part")]
        child.send_signal(number)
        child.communicate()
        assert child.returncode == -number and os.listdir(tmp_path) == []
    finally:
        child.kill()
        child.communicate()


def test_a_thread_that_writes_at_the_end_leaves_no_part_of_a_file(tmp_path):
    script = (
        "import sys, threading, interrupted\n"
        "from queue import SimpleQueue\n"
        "inside = SimpleQueue()\n"
        "threading.Thread(target=interrupted.work, args=('parquet', sys.argv[1], inside), daemon=True).start(); inside.get()"
    )
    done = subprocess.run([sys.executable, "-c", script, tmp_path], capture_output=True, text=True, check=False, cwd=Path(__file__).parent)
    assert (done.returncode, done.stderr) == (0, "") and os.listdir(tmp_path) == []


def test_a_fork_leaves_the_files_of_its_parent(tmp_path):
    with _file.whole_file(tmp_path / "x") as beside:
        Path(beside).write_bytes(b"1")
        child = os.fork()
        if child == 0:
            _file._remove_all()
            os._exit(0)
        os.waitpid(child, 0)
    assert (tmp_path / "x").read_bytes() == b"1" and os.listdir(tmp_path) == ["x"]


# Arrays.


def _arrays():
    quantity = np.linspace(1, 2, 12).reshape(3, 4) * mm
    stop = spring.BumpStop(points=[{"compression": x * mm, "force": y * N} for x, y in ((0, 0), (10, 400), (20, 1500))])
    table = stop.table(compression=[1, 2, 3] * mm)
    made = axlewright.Table({"number": [1.0, 2.0], "count": [1, 2], "word": ["a", None]})
    yield from (quantity.si, quantity[1].si, quantity[:, 1:3].si, (2 * quantity).si, (quantity - quantity[0]).si, next(iter(quantity)).si)
    yield from (pickle.loads(pickle.dumps(quantity)).si, Quantity(["1 mm", "2 mm"]).si, Quantity(quantity, "in").si)
    yield spring.wheel_rate(spring_rate=[1, 2] * N_mm, motion_ratio=0.5, angle_from_measured_travel=0 * deg).si
    yield (quantity / quantity[0])
    yield table["force"].si
    yield from (made["number"], made["count"], made["word"])
    yield pickle.loads(pickle.dumps(made))["number"]


def test_an_array_of_a_quantity_is_never_written_to():
    for array in _arrays():
        whole = array
        while isinstance(whole, np.ndarray):
            assert not whole.flags.writeable
            for array_again in (whole, whole[...], whole.view(), whole.T):
                with pytest.raises(ValueError, match="WRITEABLE"):
                    array_again.setflags(write=True)
                with pytest.raises(ValueError, match="WRITEABLE"):
                    array_again.flags.writeable = True
            whole = whole.base
        with pytest.raises((TypeError, BufferError)):
            memoryview(whole)
        copied = array.copy()
        copied[...] = copied  # a copy is the caller's own


def test_labelled_data_of_a_quantity_are_never_written_to():
    import pandas as pd
    import xarray as xr

    for made in (mm(xr.DataArray([1.0, 2.0], dims="x")), mm(pd.Series([1.0, 2.0], name="x")), mm(pd.Series([1.0, 2.0])) * 2.0):
        before = made.si.values.tolist()
        with pytest.raises(ValueError, match="read-only|WRITEABLE"):
            made.si.values[0] = 9.0
        with pytest.raises(ValueError, match="WRITEABLE"):
            made.si.values.setflags(write=True)
        other = made.si.copy()
        other[0] = 9.0
        assert made.si.values.tolist() == before


def test_an_array_of_a_quantity_is_given_without_a_copy():
    quantity = np.linspace(1, 2, 1000) * mm
    one, two = quantity.si, quantity.si
    assert one.ctypes.data == two.ctypes.data and np.shares_memory(quantity[10:20].si, one)
    held = quantity[500:].si
    del quantity, one, two
    assert held[0] == pytest.approx(1.5e-3, rel=1e-2)
    for _ in range(20_000):  # a part of a part of a part: no chain of owners
        held = (held * N)[0:].si
    assert not held.flags.writeable


def test_a_format_looks_nothing_up():
    quantity = [1, 2] * lbf_in
    assert f"{quantity:.1f}" == "[1.0 2.0] lbf/in"
    for spec in ("{0.__class__}", "}{0.__class__", "{<5", "!r", "{^9{0}"):
        try:
            said = format(quantity, spec)
        except ValueError as error:
            said = str(error)
        assert "class '" not in said and "<class" not in said


# Objects of somebody else.


class _Asked:
    """An object that does something when it is asked for its number."""

    def __init__(self, does):
        self.does = does

    def __float__(self):
        return self.does()

    def __array__(self, dtype=None, copy=None):
        return np.array(self.does())


def _raises(error):
    def raised():
        raise error

    return raised


@pytest.mark.parametrize("error", [KeyboardInterrupt, SystemExit, MemoryError])
@pytest.mark.parametrize(
    "ask",
    [
        lambda x: spring.wheel_rate(spring_rate="2 N/mm", motion_ratio=x, angle_from_measured_travel="0 deg"),
        lambda x: work(spring.wheel_rate, spring_rate="2 N/mm", motion_ratio=x, angle_from_measured_travel="0 deg"),
        lambda x: driveline.Gearbox(gears=[{"ratio": x}], final_drive=4.1, rolling_radius="0.3 m", red_line="4000 rpm"),
        lambda x: Sheet({"front.spring.motion_ratio": x}),
    ],
)
def test_an_interrupt_inside_an_object_is_no_refusal(ask, error):
    with pytest.raises(error):
        ask(_Asked(_raises(error())))


def test_what_an_object_raises_is_the_cause_of_a_refusal():
    with pytest.raises(TypeError, match="motion_ratio: ouch") as refused:
        spring.wheel_rate(spring_rate="2 N/mm", motion_ratio=_Asked(_raises(ZeroDivisionError("ouch"))), angle_from_measured_travel="0 deg")
    assert isinstance(refused.value.__cause__, ZeroDivisionError)
    with pytest.raises(TypeError) as refused:
        spring.wheel_rate(spring_rate="2 N/mm", motion_ratio=_Asked(_raises(ValueError(LONG))), angle_from_measured_travel="0 deg")
    assert len(str(refused.value)) < BRIEF


@pytest.mark.parametrize(
    ("ask", "name"),
    [
        (lambda text: spring.ride_rate(wheel_rate=text, tyre_rate="1 N/mm"), "wheel_rate"),
        (lambda text: spring.ride_rate(wheel_rate="1 N/mm", tyre_rate="1 N/mm", invalid=text), ""),
        (lambda text: spring.ride_rate(**{text: 1}), ""),
        (lambda text: Quantity(text), ""),
        (lambda text: Quantity(3, text), ""),
        (lambda text: cooling.Coolant(liquid=text, cap="15 psi gauge", hottest="90 °C"), ""),
        (lambda text: cooling.Coolant(**{text: 1}), ""),
        (lambda text: Sheet({"front.spring.rate": text}), ""),
        (lambda text: axlewright.verdict_of_ratio(text, 1.0), ""),
    ],
)
def test_half_of_a_character_is_refused(ask, name):
    with pytest.raises((TextError, TypeError)) as refused:
        ask("3 \ud800")
    assert name in str(refused.value) and r"\ud800" in str(refused.value)


def test_a_dict_that_changes_while_it_is_read():
    grows: dict[str, object] = {}

    def grow():
        grows.update({f"key{place}": 1 for place in range(100)})
        return 3.0

    grows["ratio"] = _Asked(grow)
    with pytest.raises((ValueError, TypeError)):
        driveline.Gearbox(gears=[grows, {"no": 1}], final_drive=4.1, rolling_radius="0.3 m", red_line="4000 rpm")
    assert len(grows) == 101


@pytest.mark.parametrize("other", [None, "sheet", 3, {}, DUNLIN])
def test_something_else_in_place_of_a_sheet_or_a_list(other):
    for call in (lambda: Assessment(other), lambda: Sweep(other, (), ()), lambda: Sheet().choose(other, []), lambda: Sheet().with_([other])):
        with pytest.raises(TypeError, match=" wanted, not "):
            call()


class _Endless:
    """A sequence that says it is longer than memory."""

    def __len__(self):
        return 2**62

    def __getitem__(self, place):
        raise ZeroDivisionError


def test_the_length_of_a_sequence_takes_no_memory():
    for path in ("front.tyre.size", "front.spring.rate"):
        with pytest.raises((TypeError, MemoryError)):
            Sheet().what_if({path: _Endless()})


def test_a_whole_number_beyond_every_float_is_refused():
    for ask in (lambda x: Quantity(x, "mm"), lambda x: spring.wheel_rate(spring_rate="2 N/mm", motion_ratio=x, angle_from_measured_travel="0 deg"), lambda x: Sheet({"front.spring.motion_ratio": x})):
        with pytest.raises((ValueError, TypeError), match="is too large to compute with"):
            ask(10**400)
