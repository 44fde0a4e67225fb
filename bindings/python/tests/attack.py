"""Attacks the Python surface: `attack.py COUNT SEED [LIBRARY [CASES]]`, with a command `CASES` that prints cases of the models.

Every function of the catalogue is called COUNT times as a ufunc and as a function of quantities; what NumPy, Python and the C library answer must be the
same bits. Hostile objects, models, sheets, price lists, pickles, threads and interrupts follow. Prints a line for the table of `cargo xtask attack`; ends with
1 where an invariant failed. A short attack is one of the tests.
"""

import ctypes
import json
import math
import os
import pickle
import random
import resource
import signal
import struct
import subprocess
import sys
import threading
from collections.abc import Callable
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import Any

import numpy as np
from long_texts import WAYS_IN

import axlewright
from axlewright import DocumentError, DomainError, Quantity, Table, TextError, units, work
from axlewright.sheet import PriceList, Sheet, span

ROOT = Path(__file__).resolve().parents[3]
#: Built by `cargo xtask generate`.
CATALOGUE = json.loads(Path(os.environ.get("AXW_CATALOGUE", ROOT / "target/generated/catalogue.json")).read_text(encoding="utf-8"))
FUNCTIONS = {f"{one['system']}.{one['name']}": one for one in CATALOGUE["functions"]}
MODELS = {f"{one['system']}.{one['name']}": one for one in CATALOGUE["models"]}
FIRST_UNIT = {one["name"]: one["units"][0]["name"] for one in CATALOGUE["kinds"]}
ROWS = [row for file in sorted((ROOT / "tests/rows").glob("*.json")) for row in json.loads(file.read_text(encoding="utf-8"))]
SHEETS = ROOT / "examples/sheets"

#: The bases of every refusal: a fault of the library, a RuntimeError, is none of them.
REFUSALS = (ValueError, TypeError, KeyError, IndexError)
#: Characters of the longest refusal: 25 faults with a line of text each.
LONGEST = 40_000
SPECIAL = (0.0, -0.0, math.nan, math.inf, -math.inf, 5e-324, -5e-324, 2.3e-308, 1.7e308, -1.7e308, 1.0, -1.0, 1 + 2**-52, 1e150, 1e-150)


class Broken(AssertionError):
    """An invariant failed."""


class Own(Exception):
    """Error that a hostile object raises."""


class Hostile:
    """An object that raises where it is asked for a number."""

    def __init__(self, *asked: str) -> None:
        self.asked = asked

    def __getattr__(self, name: str) -> Any:
        if name in self.asked:
            raise Own(name)
        raise AttributeError(name)


class Floats:
    """An object whose `__float__` raises, or gives what is no number."""

    def __init__(self, gives: Any) -> None:
        self.gives = gives

    def __float__(self) -> float:
        if isinstance(self.gives, BaseException):
            raise self.gives
        return self.gives  # type: ignore[no-any-return]


class Arrays:
    """An object whose `__array__` raises, or gives what is no array."""

    def __init__(self, gives: Any) -> None:
        self.gives = gives

    def __array__(self, dtype: Any = None, copy: Any = None) -> Any:
        if isinstance(self.gives, BaseException):
            raise self.gives
        return self.gives


class Sequences:
    """A sequence whose length is a lie."""

    def __init__(self, length: int) -> None:
        self.length = length

    def __len__(self) -> int:
        return self.length

    def __getitem__(self, place: int) -> float:
        raise Own(str(place))


def hostile_values() -> list[Any]:
    """Objects that are no quantity, or hardly one."""
    loop: list[Any] = []
    loop.append(loop)
    return [
        None, True, False, "", " ", "none", "NaN", "inf N", "1e999 m", "5 furlong", "5 mm +/- 1 mm", "\0", "\ud800", "‮5 mm", "±", "1 1/0 in", "9" * 5000, "x" * 100_000,
        b"5 mm", bytearray(b"5"), memoryview(b"5"), 10**400, -(10**5000), 1j, complex(math.nan, 1), object(), type, len, ..., NotImplemented, {}, {"a": 1}, set(), iter(()), range(3), [], (), [[]],
        [None], ["1 mm", None], ["1 mm", 3], [1, [2, 3]], loop, Hostile("dtype"), Hostile("__float__"), Hostile("__array__"), Hostile("__array_interface__"), Hostile("_REGISTRY", "units", "magnitude"),
        Hostile("attrs"), Hostile("__getitem__"), Floats(Own("float")), Floats("text"), Floats(math.nan), Floats(None), Arrays(Own("array")), Arrays(None), Arrays(np.array(["a"])), Arrays(3),
        Sequences(-1), Sequences(2**62), Sequences(3), np.array(None), np.array("a"), np.array([1j]), np.array([True]), np.array([], dtype="O"), np.array([object()]), np.array(["2026-01-01"], dtype="M8[D]"),
        np.array([(1.0, 2)], dtype=[("a", "f8"), ("b", "i4")]), np.ma.array([1.0, 2.0], mask=[True, False]), np.float16(1), np.longdouble(1) / 3, np.array(5.0), np.empty((0, 3)), np.zeros((2, 0, 2)),
        np.matrix([[1.0]]), Quantity("3 m"), Quantity("3 lbf"), [1.0, 2.0] * units.m, units.m, units.degF(70), Quantity, Sheet(), PriceList([]),
    ]  # fmt: skip


def bits(value: float) -> int:
    """The bits of a number; one that is not known has no sign."""
    return int(struct.unpack("<Q", struct.pack("<d", math.nan if value != value else value))[0])


def same(one: Any, other: Any) -> bool:
    one, other = np.asarray(one, dtype=float), np.asarray(other, dtype=float)
    return one.shape == other.shape and all(bits(a) == bits(b) for a, b in zip(one.ravel().tolist(), other.ravel().tolist(), strict=True))


def quantity(value: Any, kind: str) -> Any:
    return value if kind == "Ratio" else getattr(units, FIRST_UNIT[kind])(value)


def plain(result: Any) -> Any:
    return result.si if isinstance(result, Quantity) else result


def of_library(library: ctypes.CDLL, name: str, columns: list[list[float]], outs: int) -> list[list[float]]:
    """Answer of the batch entry of the C library."""
    entry, count = getattr(library, f"axw_{name.replace('.', '_')}_n"), len(columns[0])
    reals = ctypes.c_double * count
    found = [reals() for _ in range(outs)]
    entry(ctypes.c_size_t(count), *(reals(*column) for column in columns), *found, None)
    return [list(column) for column in found]


class Attack:
    """A seeded attack and its tally."""

    def __init__(self, seed: int, library: str | None = None, cases: str | None = None) -> None:
        self.random = random.Random(seed)
        self.seed = seed
        self.library = ctypes.CDLL(library) if library else None
        self.cases = cases
        self.answered = self.refused = 0
        self.findings: list[str] = []
        self.broken = 0
        self.hostile = hostile_values()
        self.good: dict[str, list[list[float]]] = {name: [] for name in FUNCTIONS}
        for row in ROWS:
            inputs = [row["inputs"].get(one["name"]) for one in FUNCTIONS[row["function"]]["parameters"]] if "function" in row else []
            if inputs and all(isinstance(value, int | float) for value in inputs) and "error" not in row["expected"]:
                self.good[row["function"]].append([float(value) for value in inputs])

    # Tally.

    def fails(self, what: str) -> None:
        self.broken += 1
        if len(self.findings) < 40 and not any(what[:40] == known[:40] for known in self.findings):
            self.findings.append(what)

    def case(self, name: str, run: Callable[[], None]) -> None:
        """Runs a case: whatever it lets out is a finding."""
        try:
            run()
        except Exception as error:
            where = error.__traceback__
            while where is not None and where.tb_next is not None:
                where = where.tb_next
            self.fails(f"{name}: {type(error).__name__}: {str(error)[:600]} (line {where.tb_lineno if where else 0})")

    def ask(self, call: Callable[[], Any], *names: str) -> Any:
        """The answer of a call, or None where it is refused as it must be: by a base of refusals, shortly, naming one of the names if there are any."""
        try:
            answer = call()
        except REFUSALS as error:
            said = str(error)
            if not said.strip() or len(said) > LONGEST:
                raise Broken(f"a refusal of {len(said)} characters") from error
            if names and not any(name in said for name in names) and getattr(error, "argument", None) not in names:
                raise Broken(f"{said[:300]}: names none of {', '.join(names)}") from error
            self.refused += 1
            return None
        except (Own, MemoryError):  # a sequence may say that it is longer than memory
            self.refused += 1
            return None
        self.answered += 1
        return answer

    # Numbers.

    def number(self, good: float) -> float:
        choice, raw = self.random.randrange(8), self.random.getrandbits(64)
        if choice == 0:
            return float(struct.unpack("<d", struct.pack("<Q", raw))[0])
        if choice == 1:
            return SPECIAL[raw % len(SPECIAL)]
        if choice == 2:
            return self.random.choice((-1, 1)) * 10 ** self.random.uniform(-300, 300)
        if choice == 3:
            return math.nextafter(good, self.random.choice((-math.inf, math.inf)))
        return good if choice == 4 else good * self.random.uniform(0, 2)

    def laid(self, values: list[float]) -> np.ndarray[Any, Any]:
        """The values as an array that lies in memory in some way."""
        array = np.array(values)
        way = self.random.randrange(8)
        if way == 0:
            array = np.repeat(array, 2)[::2]
        elif way == 1:
            array = array[::-1].copy()[::-1]
        elif way == 2:
            array = array.astype(">f8")
        elif way == 3:
            array = np.frombuffer(b"\0\0\0" + array.tobytes(), dtype="<f8", offset=3)
        elif way == 4:
            array.setflags(write=False)
        elif way == 5:
            array = np.rec.fromarrays([np.zeros(len(values), dtype="i1"), array], names="a,b")["b"]
        elif way == 6:
            array = np.array([values, values]).T[:, 1]
        return array

    # Functions.

    def functions(self, count: int) -> None:
        for name, of in FUNCTIONS.items():
            for at in range(count):
                self.case(f"{name} call {at}", partial(self.numbers, name, of))
                self.case(f"{name} objects {at}", partial(self.objects, name, of))

    def point(self, name: str, of: Any) -> list[float]:
        rows = self.good[name]
        good = self.random.choice(rows) if rows else [1.0] * len(of["parameters"])
        all_of_them = self.random.random() < 0.3
        one = self.random.randrange(len(good))
        return [self.number(x) if all_of_them or place == one else x * self.random.uniform(0.9, 1.1) for place, x in enumerate(good)]

    def numbers(self, name: str, of: Any) -> None:
        """Array, number, quantity and C give the same bits, finite or not known."""
        system, own = name.split(".")
        ufunc, function = getattr(import_module(f"axlewright.si.{system}"), own), getattr(import_module(f"axlewright.{system}"), own)
        rows = [self.point(name, of) for _ in range(self.random.choice((1, 2, 3, 7, 17)))]
        columns = [list(column) for column in zip(*rows, strict=True)]
        outs = len(of["results"])

        def answers(*x: Any, **more: Any) -> list[Any]:
            with np.errstate(invalid="ignore"):
                found = ufunc(*x, **more)
            return list(found) if isinstance(found, tuple) else [found]

        single = [[float(value) for value in answers(*row)] for row in rows]
        wanted = [list(column) for column in zip(*single, strict=True)]
        refused = [any(math.isnan(value) for value in row) for row in single]
        if any(math.isinf(value) for row in single for value in row) or any(not_all and not all(map(math.isnan, row)) for not_all, row in zip(refused, single, strict=True)):
            raise Broken(f"{rows} gives {single}")
        found = answers(*(self.laid(column) for column in columns))
        if not all(same(one, other) for one, other in zip(found, wanted, strict=True)):
            raise Broken(f"{rows} in arrays gives {found}, not {wanted}")
        if self.library is not None and not all(same(one, other) for one, other in zip(of_library(self.library, name, columns, outs), wanted, strict=True)):
            raise Broken(f"{rows} in C gives other bits than {wanted}")
        self.overlapping(answers, columns, wanted)
        self.outputs(ufunc, columns, outs)
        given = {one["name"]: quantity(value, one["kind"]) for one, value in zip(of["parameters"], rows[0], strict=True)}
        try:
            typed = function(**given)
        except DomainError as error:
            if not refused[0]:
                raise Broken(f"{rows[0]} is refused as quantities: {error}") from error
            if not self.names_argument(of, error):
                raise Broken(f"{rows[0]}: this names no argument: {error}") from error
            self.refused += 1
        else:
            values = [plain(value) for value in (typed if outs > 1 else [typed])]
            if refused[0] or not same(values, single[0]):
                raise Broken(f"{rows[0]} as quantities gives {values}, not {single[0]}")
            self.answered += 1
        given = {one["name"]: quantity(self.laid(column), one["kind"]) for one, column in zip(of["parameters"], columns, strict=True)}
        # A unit may round: only a kind whose first unit is coherent SI comes here.
        typed = function(**given, invalid="nan")
        if not all(same(plain(one), other) for one, other in zip(typed if outs > 1 else [typed], wanted, strict=True)):
            raise Broken(f"{rows} as arrays of quantities gives other bits")
        if any(refused):
            try:
                function(**given)
            except DomainError as error:
                if error.index != (refused.index(True),):  # type: ignore[attr-defined]
                    raise Broken(f"{rows} is refused at {error.index}") from error  # type: ignore[attr-defined]
            else:
                raise Broken(f"{rows} holds a refused row, and is answered")

    def names_argument(self, of: Any, error: DomainError) -> bool:
        names = [one["name"] for one in of["parameters"]]
        argument = getattr(error, "argument", None) or ""
        return argument in names or any(path.endswith(argument) for path in FUNCTIONS if argument) or any(name in str(error) for name in names)

    def overlapping(self, answers: Callable[..., list[Any]], columns: list[list[float]], wanted: list[list[float]]) -> None:
        """An output that overlaps an input, in either direction."""
        length, shift = len(columns[0]), self.random.choice((-1, 0, 1))
        place = self.random.randrange(len(columns))
        buffer = np.zeros(length + 2)
        buffer[1 : length + 1] = columns[place]
        x = [np.array(column) for column in columns]
        x[place] = buffer[1 : length + 1]
        outs = [np.zeros(length) for _ in wanted]
        outs[0] = buffer[1 + shift : length + 1 + shift]
        found = answers(*x, out=tuple(outs))
        if not all(same(one, other) for one, other in zip(found, wanted, strict=True)):
            raise Broken(f"{columns} with an output over argument {place} by {shift} gives {found}, not {wanted}")

    def outputs(self, ufunc: Any, columns: list[list[float]], outs: int) -> None:
        """An output that cannot be written stays as it was, and so do the others."""
        length = len(columns[0])
        own = [np.full(length, -7.25e300) for _ in range(outs)]
        bad: Any = self.random.choice((np.zeros(length, dtype="i8"), np.zeros(length + 1 if length > 1 else (1, 0)), np.zeros(length, dtype=bool), np.broadcast_to(0.0, length), [0.0] * length, None))
        if isinstance(bad, np.ndarray) and bad.dtype == float and length + 1 != len(bad):
            bad = np.array(bad)
            bad.setflags(write=False)
        if bad is None:
            bad = object()
        before = np.array(bad) if isinstance(bad, np.ndarray) else bad
        own[self.random.randrange(outs)] = bad
        try:
            ufunc(*(np.array(column) for column in columns), out=tuple(own))
        except (TypeError, ValueError):
            self.refused += 1
        else:
            raise Broken(f"an output of {type(bad).__name__} {getattr(bad, 'dtype', '')} is taken")
        if any(isinstance(one, np.ndarray) and one is not bad and not (one == -7.25e300).all() for one in own) or (isinstance(bad, np.ndarray) and not (bad == before).all()):
            raise Broken("a refused call touches an output")

    def objects(self, name: str, of: Any) -> None:
        """One argument is no quantity, or hardly one."""
        system, own = name.split(".")
        function, ufunc = getattr(import_module(f"axlewright.{system}"), own), getattr(import_module(f"axlewright.si.{system}"), own)
        point = self.random.choice(self.good[name] or [[1.0] * len(of["parameters"])])
        names = [one["name"] for one in of["parameters"]]
        given = {one["name"]: quantity(value, one["kind"]) for one, value in zip(of["parameters"], point, strict=True)}
        which = self.random.randrange(len(names))
        given[names[which]] = self.random.choice(self.hostile)
        answer = self.ask(lambda: function(**given), *names, *(path.rpartition(".")[2] for path in FUNCTIONS))
        for value in (answer if isinstance(answer, tuple) else [answer]) if answer is not None else []:
            value = np.asarray(plain(value))
            if value.dtype.kind == "f" and not np.isfinite(value).all():
                raise Broken(f"{names[which]} = {given[names[which]]!r:.80} gives {value}")
        self.ask(lambda: work(function, **given))
        x: list[Any] = list(point)
        x[which] = given[names[which]]
        out = tuple(np.full((), -7.25e300) for _ in of["results"])
        with np.errstate(all="ignore"):
            try:
                made = self.ask(lambda: ufunc(*x, out=out))
            except OverflowError:  # NumPy's own, of a whole number
                made = None
        if made is None and any(one != -7.25e300 for one in out):
            raise Broken(f"a refused call touches an output: {names[which]} = {x[which]!r:.80}")

    # Models.

    def models(self, count: int) -> None:
        rows = [row for row in ROWS if "model" in row]
        for name, of in MODELS.items():
            own = [row for row in rows if row["model"] == name]
            for at in range(count if own else 0):
                self.case(f"{name} call {at}", partial(self.model, name, of, own))
        if self.cases:
            self.same_as_core(count)

    def changed(self, document: Any) -> Any:
        """A document with one value of any depth in place of another, or without it."""
        places: list[tuple[Any, Any]] = []

        def copied(of: Any) -> Any:
            if not isinstance(of, dict | list) or any(of is one for one in self.hostile):
                return of
            made: Any = dict(of) if isinstance(of, dict) else list(of)
            for key in list(made) if isinstance(made, dict) else range(len(made)):
                places.append((made, key))
                made[key] = copied(made[key])
            return made

        document = copied(document)
        if places:
            of, key = self.random.choice(places)
            if self.random.random() < 0.2:
                del of[key]
            else:
                of[key] = self.random.choice((*self.hostile, *SPECIAL))
        return document

    def model(self, name: str, of: Any, rows: list[Any]) -> None:
        system, own = name.split(".")
        made, document = getattr(import_module(f"axlewright.{system}"), own), self.random.choice(rows)["inputs"]
        for _ in range(self.random.choice((0, 0, 1, 2))):
            document = self.changed(document)
        model = self.ask(lambda: made(**document))
        if model is None:
            return
        if type(model).from_text(model.to_json()) != model or pickle.loads(pickle.dumps(model)) != model or hash(model) != hash(pickle.loads(pickle.dumps(model))):
            raise Broken("another model after its JSON, or after its pickle")
        repr(model)
        method = self.random.choice(of["methods"])
        given = self.arguments(rows, method)
        self.ask(lambda: getattr(model, method["name"])(**given))
        field = self.random.choice(of["fields"])["name"]
        self.ask(lambda: getattr(model, field))
        self.ask(lambda: model.replace(**{field: self.random.choice(self.hostile)}))

    def arguments(self, rows: list[Any], method: Any) -> dict[str, Any]:
        given: dict[str, Any] = {}
        for one in method["parameters"]:
            seen = [row["arguments"][one["name"]] for row in rows if one["name"] in row.get("arguments", {})]
            good = self.random.choice(seen) if seen and isinstance(seen[0], int | float) else 1.0
            if self.random.random() < 0.15:
                given[one["name"]] = self.random.choice(self.hostile)
            elif one.get("list"):
                given[one["name"]] = quantity(self.laid([self.number(good) for _ in range(self.random.randrange(4))]), one["kind"])
            else:
                given[one["name"]] = quantity(self.number(good), one["kind"])
        return given

    def same_as_core(self, count: int) -> None:
        """The cases of the core's own attack: the same answers to the bit."""
        command = f"{self.cases} {count} --seed {self.seed}"
        with subprocess.Popen(command, shell=True, stdout=subprocess.PIPE) as running:
            assert running.stdout is not None
            while line := running.stdout.readline():
                words = line.split()
                text = running.stdout.read(int(words[-1]) + 1)[:-1].decode()
                self.case(f"{words[0].decode()}.{words[1].decode()} of the core", partial(self.one_of_core, [word.decode() for word in words[:-1]], text))
        if running.returncode != 0:
            self.fails(f"{command} ended with {running.returncode}")

    def one_of_core(self, words: list[str], text: str) -> None:
        words = words[::-1]
        name, method, status = words.pop(), words.pop(), int(words.pop())
        lists = [[struct.unpack("<d", struct.pack("<Q", int(words.pop(), 16)))[0] for _ in range(int(words.pop()))] for _ in range(int(words.pop()))]
        wanted = [words.pop() for _ in range(int(words.pop()))]
        system, own = name.split(".")
        made = getattr(import_module(f"axlewright.{system}"), own)
        number = 0
        found: Any = None
        try:
            model = made.from_text(text)
            if method != "-":
                of = next(one for one in MODELS[name]["methods"] if one["name"] == method)
                given = {one["name"]: quantity(np.array(x) if one.get("list") else x[0], one["kind"]) for one, x in zip(of["parameters"], lists, strict=True)}
                found = getattr(model, method)(**given)
        except (DomainError, TextError, DocumentError) as error:
            number = 1
            self.refused += 1
            if not str(error).strip() or len(str(error)) > LONGEST:
                raise Broken(f"a refusal of {len(str(error))} characters") from error
        else:
            self.answered += 1
        if (number == 0) != (status == 0):
            raise Broken(f"is {'refused' if number else 'answered'}, the core's number is {status}; {lists}; document {text[:2000]}")
        if isinstance(found, Table):
            if found.rows != int(wanted[0]):
                raise Broken(f"has {found.rows} rows, not {wanted[0]}; document {text[:2000]}")
        elif found is not None:
            values = [plain(value) for value in (found if isinstance(found, tuple) else (found,))]
            for value, number_wanted in zip(values, wanted, strict=True):
                if number_wanted != "-" and bits(float(value)) != int(number_wanted, 16):
                    raise Broken(f"gives {values}, not {wanted}; {lists}; document {text[:2000]}")

    # Sheets, lists, pickles.

    def sheets(self, count: int) -> None:
        texts = [file.read_text(encoding="utf-8") for file in sorted(SHEETS.glob("*.toml"))]
        good = [made for made in (self.ask(partial(Sheet.from_text, text)) for text in texts) if made is not None]
        paths = sorted({path for sheet in good for path in sheet})
        for at in range(count):
            self.case(f"sheet {at}", partial(self.sheet, self.random.choice(good), paths))
            self.case(f"text of sheet {at}", partial(self.text, self.random.choice(texts)))

    def text(self, text: str) -> None:
        place, other = self.random.randrange(len(text)), self.random.randrange(len(text))
        damage = self.random.choice((text[place:other], "\0", "\ud800", '"', "[", "{", "9" * 400, "none", "‮", text[other:place], "= nan"))
        sheet = self.ask(lambda: Sheet.from_text(text[:place] + damage + text[place + self.random.randrange(30) :]))
        if sheet is not None and Sheet.from_text(sheet.to_toml()) != sheet:
            raise Broken("another sheet after its text")

    def sheet(self, sheet: Any, paths: list[str]) -> None:
        before = sheet.to_json()
        lines = {self.random.choice((*paths, *paths, "front", "", "a.b[9]")): self.random.choice((*self.hostile, None, "1 mm", "300 lbf/in +/- 5 %", 3.0)) for _ in range(self.random.randrange(1, 4))}
        other = self.ask(lambda: sheet.with_(lines))
        if other is not None:
            if pickle.loads(pickle.dumps(other)) != other or Sheet.from_text(other.to_json()) != other:
                raise Broken(f"another sheet after its pickle or its text: {lines!r:.300}")
            if self.random.randrange(4) == 0:
                one, two = other.assess().to_json(), other.assess().to_json()
                if one != two:
                    raise Broken("a second assessment says something else")
        which, values = self.random.choice(paths), self.random.choice(self.hostile)
        self.ask(lambda: sheet.what_if({which: values}, [self.random.choice(("front.coil_bind.margin", "cost", "", which))]))
        self.ask(lambda: sheet.what_if({which: span(self.random.choice(self.hostile), "3 mm", self.random.choice((0, -1, 2, 10**30, None, 2.5)))}))  # type: ignore[arg-type]
        self.ask(lambda: sheet[self.random.choice((which, *self.hostile))])
        self.ask(lambda: sheet.model(which))
        if sheet.to_json() != before:
            raise Broken("a sheet has changed")

    def lists(self, count: int) -> None:
        rows = [dict(part=f"a{place}", kind="spring", cost=place + 1, mass="3 kg") | {"front.spring.rate": f"{200 + 50 * place} lbf/in"} for place in range(4)]
        sheet = Sheet.load(SHEETS / "dunlin.toml")
        for at in range(count):
            self.case(f"list {at}", partial(self.list, sheet, rows))

    def list(self, sheet: Any, rows: list[dict[str, Any]]) -> None:
        changed = [dict(row) for row in rows]
        for _ in range(self.random.randrange(3)):
            row = self.random.choice(changed)
            row[self.random.choice((*row, "", "front.spring", "x" * 300))] = self.random.choice(self.hostile)
        prices = self.ask(lambda: PriceList(changed))
        if prices is None:
            return
        if pickle.loads(pickle.dumps(prices)) != prices:
            raise Broken("another list after its pickle")
        requirements = [self.random.choice(("cost <= 7000", "no finding worse", "margins >= 0", "mass <= 60 kg", "cost <= nan", "", "front.coil_bind.verdict = meets", *(x for x in self.hostile if isinstance(x, str))))]
        if self.random.randrange(8) == 0:
            self.ask(lambda: sheet.choose(prices, requirements))
        self.ask(lambda: sheet.choose(self.random.choice(self.hostile), requirements))

    def pickles(self, count: int) -> None:
        """The calls that a pickle makes, on other arguments."""
        sheet = Sheet.load(SHEETS / "dunlin.toml")
        sweep = sheet.what_if({"front.spring.rate": ["400 lbf/in", "500 lbf/in"]}, ["front.coil_bind.margin"])
        held: list[Any] = [Quantity("3 m"), [1.0, 2.0] * units.N, units.m, sheet, sheet.assess(), sweep, sweep.table(), sheet.model("front.suspension" if "front.suspension" in sheet else "cap"), PriceList([])]
        for at in range(count):
            self.case(f"pickle {at}", partial(self.pickle, self.random.choice(held)))

    def pickle(self, of: Any) -> None:
        made, arguments, *_ = of.__reduce_ex__(4)
        changed = list(arguments)
        if changed:
            changed[self.random.randrange(len(changed))] = self.random.choice((*self.hostile, b"\0" * 9, "{}", '{"version": 1}'))
        if made.__module__.startswith("copyreg"):
            return
        answer = self.ask(lambda: made(*changed))
        if answer is not None:
            repr(answer)

    # Threads and interrupts.

    def threads(self, count: int) -> None:
        """Two threads on one object give what one gives."""
        sheet = Sheet.load(SHEETS / "dunlin_measured.toml")
        linkage, array = sheet.model("front.suspension"), np.linspace(1e4, 5e4, 1000)
        held = units.N_mm(array / 1e3)
        calls: list[Callable[[], Any]] = [
            lambda: sheet.assess().to_json(),
            lambda: sheet.with_({"front.spring.rate": "500 lbf/in"}).to_toml(),
            lambda: linkage.table(travel=[f"{x} mm" for x in range(-5, 6)], rack_travel="0 mm")["camber"].si.tolist(),
            lambda: linkage.to_json(),
            lambda: axlewright.spring.ride_rate(wheel_rate=held, tyre_rate="200 N/mm").si.tolist(),
            lambda: axlewright.si.spring.ride_rate(array, 2e5).tolist(),
            lambda: pickle.dumps(held),
            lambda: hash(sheet),
        ]
        wanted = [call() for call in calls]
        for at in range(count):
            place = self.random.randrange(len(calls))
            begin = threading.Barrier(2)
            found: list[Any] = []

            def run(call: Callable[[], Any] = calls[place], begin: threading.Barrier = begin, found: list[Any] = found) -> None:
                begin.wait()
                found.append(call())

            both = [threading.Thread(target=run) for _ in range(2)]
            for thread in both:
                thread.start()
            for thread in both:
                thread.join()
            self.answered += 2
            if found != [wanted[place]] * 2:
                self.fails(f"two threads {at}: call {place} gives something else")

    def interrupts(self, count: int) -> None:
        """A signal in a counted place: at the n-th event of Python in a call, or in a callback of native code. The next call is as before."""
        sheet = Sheet.load(SHEETS / "dunlin.toml")
        sweep = sheet.what_if({"front.spring.rate": ["400 lbf/in", "500 lbf/in"]}, ["front.coil_bind.margin"])
        prices = PriceList([{"part": "a", "kind": "s", "cost": 1, "front.spring.rate": "300 lbf/in"}])
        calls: list[Callable[[Any], Any]] = [
            lambda x: sheet.assess().to_json(),
            lambda x: sweep.table()["front.coil_bind.margin"].si.tolist(),
            lambda x: axlewright.spring.ride_rate(wheel_rate=x, tyre_rate="200 N/mm").si,
            lambda x: axlewright.spring.wheel_rate(spring_rate="20 N/mm", motion_ratio=x, angle_from_measured_travel="0 deg").si,
            lambda x: str(sheet.choose(prices, ["cost <= 7"])),
            lambda x: repr(Quantity(x, "m")),
            lambda x: axlewright.spring.BumpStop(points=[{"compression": f"{n} mm", "force": f"{n} N"} for n in (0, 9)]).table(compression=[Quantity("3 mm"), x]).rows,
            lambda x: axlewright.si.spring.ride_rate(np.array([x, 1.0], dtype=object).astype(float), 2e5).tolist(),
            lambda x: sheet.with_({"front.spring.motion_ratio": x}) == sheet,
        ]
        plain_x: list[Any] = [None, None, "20 N/mm", 0.9, None, 3.0, "4 mm", 3.0, 0.7]

        def attempt(call: Callable[[Any], Any], x: Any) -> Any:
            try:
                return call(x)
            except REFUSALS as error:
                return str(error)

        class Raises(float):
            def __float__(self) -> float:
                signal.raise_signal(signal.SIGINT)
                return 3.0

            def __array__(self, dtype: Any = None, copy: Any = None) -> Any:
                signal.raise_signal(signal.SIGINT)
                return np.array(3.0)

        class Interrupting:
            """An object that raises the signal wherever it is asked."""

            __float__ = Raises.__float__
            __array__ = Raises.__array__

            def __len__(self) -> int:
                signal.raise_signal(signal.SIGINT)
                return 1

        before = signal.signal(signal.SIGINT, signal.default_int_handler)
        try:
            wanted = [attempt(call, x) for call, x in zip(calls, plain_x, strict=True)]
            for at in range(count):
                place = self.random.randrange(len(calls))
                call, x = calls[place], plain_x[place]
                if x is not None and self.random.randrange(2):
                    try:
                        got = call(Interrupting())
                    except KeyboardInterrupt:
                        self.refused += 1
                    except Exception as error:
                        if not isinstance(error, TypeError) or "KeyboardInterrupt" in repr(error.__cause__):
                            self.fails(f"interrupt {at}: call {place} makes {error!r:.200} of an interrupt")
                    else:
                        self.fails(f"interrupt {at}: call {place} goes on after an interrupt: {got!r:.100}")
                else:
                    left = self.random.randrange(1, 40)

                    def count_down(*_: object) -> None:
                        nonlocal left
                        left -= 1
                        if left == 0:
                            sys.setprofile(None)
                            signal.raise_signal(signal.SIGINT)

                    try:
                        try:
                            sys.setprofile(count_down)
                            attempt(call, x)
                        finally:
                            sys.setprofile(None)  # it counts too
                    except KeyboardInterrupt:
                        self.refused += 1
                    else:
                        self.answered += 1
                again = attempt(call, x)
                if again != wanted[place]:
                    self.fails(f"interrupt {at}: call {place} gives {again!r:.100} afterwards, not {wanted[place]!r:.100}")
        finally:
            signal.signal(signal.SIGINT, before)

    # All of it.

    def texts(self, lengths: tuple[int, ...]) -> None:
        """Texts of any length, by every way in: each is refused, and said again only in part."""
        for length in lengths:
            for place, ask in enumerate(WAYS_IN):
                for letter in ("x", "1 ", "é"):
                    text = letter * (length // len(letter))
                    self.case(f"long text {place}", partial(self.long, ask, text))

    def long(self, ask: Callable[[str], Any], text: str) -> None:
        try:
            ask(text)
        except (*REFUSALS, OSError) as error:
            self.refused += 1
            if len(str(error)) > 3_000:
                raise Broken(f"a text of {len(text)} characters is said again in {len(str(error))}") from None
        else:
            raise Broken(f"a text of {len(text)} characters is taken")

    def run(self, count: int) -> None:
        """All targets, in numbers that follow from one."""
        self.functions(count)
        self.models(count)
        self.sheets(count)
        self.lists(count)
        self.pickles(4 * count)
        self.threads(2 * count)
        self.interrupts(10 * count)
        self.texts((1_000_000, 10_000_000, 100_000_000) if count >= 1000 else (1_000_000,) if count >= 100 else ())

    def line(self) -> str:
        first = self.findings[0] if self.findings else "none"
        first = "".join(" " if letter in "\t\n|" else letter for letter in first)[:160]
        total = self.answered + self.refused + self.broken
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        return f"python\t{total}\t{self.answered}\t{self.refused}\t0\t{self.broken}\t{first}\t{peak}"


def main(count: str, seed: str, library: str | None = None, cases: str | None = None) -> int:
    attack = Attack(int(seed), library, cases)
    attack.run(int(count))
    for finding in attack.findings:
        print(f"python, {finding}\n", file=sys.stderr)
    print(attack.line())
    return 1 if attack.broken else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
