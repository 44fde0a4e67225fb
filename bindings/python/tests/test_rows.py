"""Outside reference rows through the Python doors and the C library: the expected values, the core's sentences where
a row must be refused, and the same bits everywhere.

`AXW_LIBRARY` names the shared C library; `AXW_ROWS_RUST` names the file in which the Rust test `rows` of the workspace
member `tests` wrote what the core answered.
"""

import ctypes
import json
import math
import os
import re
import struct
from collections.abc import Callable, Mapping, Sequence
from ctypes import (
    POINTER,
    Array,
    byref,
    c_char_p,
    c_double,
    c_int32,
    c_int64,
    c_size_t,
    c_void_p,
    create_string_buffer,
)
from importlib import import_module
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from axlewright import DocumentError, DomainError, Quantity, TextError, units, work

ROOT = Path(__file__).resolve().parents[3]
#: Built by `cargo xtask generate`.
CATALOGUE = json.loads(Path(os.environ.get("AXW_CATALOGUE", ROOT / "target/generated/catalogue.json")).read_text(encoding="utf-8"))
FUNCTIONS = {f"{one['system']}.{one['name']}": one for one in CATALOGUE["functions"]}
MODELS = {f"{one['system']}.{one['name']}": one for one in CATALOGUE["models"]}
KINDS = {one["name"]: one for one in CATALOGUE["kinds"]}
KIND_OF_UNIT = {unit["name"]: kind["name"] for kind in CATALOGUE["kinds"] for unit in kind["units"]}
WORDS = {one["name"]: [word.replace("_", " ") for _, word in one["words"]] for one in CATALOGUE["choices"]}

Row = dict[str, Any]
ROWS: list[Row] = [
    row
    for file in sorted((ROOT / "tests" / "rows").glob("*.json"))
    for row in json.loads(file.read_text(encoding="utf-8"))
]
NAN = float("nan")
AXW_OK, AXW_OUT_OF_RANGE, AXW_TEXT, AXW_ROWS = 0, 1, 4, 104
UNTOUCHED = -12345.678

#: What a surface answers: results by name, or the sentence of a refusal.
Answer = dict[str, float | str] | str


def rows(key: str) -> pytest.MarkDecorator:
    return pytest.mark.parametrize("row", [pytest.param(row, id=row["id"]) for row in ROWS if key in row])


def setting(name: str, what: str) -> Path:
    if not os.environ.get(name):
        pytest.fail(f"set {name} to {what}", pytrace=False)
    path = Path(os.environ[name])
    if not path.is_file():
        pytest.fail(f"{name} = {path} is no file; it is {what}", pytrace=False)
    return path


@pytest.fixture(scope="session")
def rust() -> dict[str, dict[str, str]]:
    what = "the rows-rust.json that `cargo test -p axlewright-tests --test rows` wrote"
    answers: dict[str, dict[str, str]] = json.loads(setting("AXW_ROWS_RUST", what).read_text(encoding="utf-8"))
    return answers


@pytest.fixture(scope="session")
def library() -> ctypes.CDLL:
    made = ctypes.CDLL(str(setting("AXW_LIBRARY", "the shared library of `cargo build --release -p axlewright-c`")))
    made.axw_last_message.argtypes = [c_char_p, c_size_t]
    made.axw_last_message.restype = c_size_t
    return made


def bits(value: float) -> str:
    if value != value:  # What is not known has no sign, which a compiler may choose.
        value = float("nan")
    return str(struct.unpack("<Q", struct.pack("<d", value))[0])


def said(answer: Answer) -> dict[str, str]:
    """An answer as the Rust test writes it."""
    if isinstance(answer, str):
        return {"error": answer}
    return {name: value if isinstance(value, str) else bits(value) for name, value in answer.items()}


def judge(row: Row, answer: Answer) -> None:
    """Holds an answer against what the row expects; a row of low confidence is for comparison only."""
    if row["confidence"] == "low":
        return
    expected = row["expected"]
    if "error" in expected:
        assert isinstance(answer, str), f"{answer} must be refused"
        assert answer and expected.get("argument", "") in answer
        return
    assert not isinstance(answer, str), answer
    for name, wanted in expected.items():
        found = answer[name]
        if isinstance(wanted, str):
            assert found == wanted
        elif wanted is None:
            assert isinstance(found, float) and math.isnan(found)
        else:
            tolerance = row["tolerance"]
            bound = tolerance["abs"] if "abs" in tolerance else tolerance["rel"] * abs(wanted)
            assert isinstance(found, int | float), f"{name} = {found} is no number"
            assert abs(found - wanted) <= bound, f"{name} = {found}, expected {wanted}"


def numbers(row: Row, call: Callable[[str, list[float]], Answer]) -> list[float]:
    """The inputs of a function in order; one that is a call itself goes through the same door."""
    made = []
    for parameter in FUNCTIONS[row["function"]]["parameters"]:
        value = row["inputs"][parameter["name"]]
        if isinstance(value, dict):
            answer = call(value["function"], numbers(value, call))
            assert isinstance(answer, dict), answer
            (value,) = answer.values()
        made.append(float(value))
    return made


def results(function: str) -> list[str]:
    made = [one["name"] for one in FUNCTIONS[function]["results"]]
    return made if len(made) > 1 else ["value"]


def good(function: str, call: Callable[[str, list[float]], Answer]) -> list[float]:
    """Inputs of this function that are known to have an answer."""
    row = next(one for one in ROWS if one.get("function") == function and "error" not in one["expected"])
    return numbers(row, call)


def batch(function: str, inputs: list[float], call: Callable[[str, list[float]], Answer]) -> list[list[float]]:
    """Three elements: one with an answer, the row, one without: a column an argument."""
    return [list(column) for column in zip(good(function, call), inputs, [NAN] * len(inputs), strict=True)]


def expect_batch(columns: Sequence[Sequence[float]], function: str, answer: Answer, known: Answer) -> None:
    assert isinstance(known, dict)
    for name, column in zip(results(function), columns, strict=True):
        assert len(column) == 3
        assert bits(column[0]) == bits(float(known[name]))
        if isinstance(answer, str):
            assert math.isnan(column[1])
        else:
            assert bits(column[1]) == bits(float(answer[name]))
        assert math.isnan(column[2])


# ---- Plain numbers: the ufuncs


def ufunc(function: str) -> np.ufunc:
    system, name = function.split(".")
    found = getattr(import_module(f"axlewright.si.{system}"), name)
    assert isinstance(found, np.ufunc)
    return found


def by_ufunc(function: str, inputs: list[float]) -> dict[str, float | str]:
    with np.errstate(invalid="ignore"):
        found = ufunc(function)(*inputs)
    found = found if isinstance(found, tuple) else (found,)
    return {name: float(value) for name, value in zip(results(function), found, strict=True)}


@rows("function")
def test_ufunc(row: Row, rust: dict[str, dict[str, str]]) -> None:
    function = row["function"]
    inputs = numbers(row, by_ufunc)
    answer = by_ufunc(function, inputs)
    refused = "error" in rust[row["id"]]
    if refused:
        assert "error" in row["expected"]
        assert all(math.isnan(float(value)) for value in answer.values())
        with np.errstate(invalid="raise"), pytest.raises(FloatingPointError):
            ufunc(function)(*inputs)
    else:
        judge(row, answer)
        assert said(answer) == rust[row["id"]]
        with np.errstate(all="raise", under="ignore"):
            ufunc(function)(*inputs)

    columns = [np.array(column) for column in batch(function, inputs, by_ufunc)]
    with np.errstate(invalid="ignore"):
        found = ufunc(function)(*columns)
    found = found if isinstance(found, tuple) else (found,)
    known = by_ufunc(function, good(function, by_ufunc))
    expect_batch([list(one) for one in found], function, "" if refused else answer, known)
    with np.errstate(invalid="raise"), pytest.raises(FloatingPointError):
        ufunc(function)(*columns)


# ---- Quantities


def quantity(value: Any, kind: str) -> Any:
    return value if kind == "Ratio" else getattr(units, KINDS[kind]["units"][0]["name"])(value)


def plain(result: Any) -> Any:
    return result.si if isinstance(result, Quantity) else result


def door(function: str, inputs: Sequence[Any], **more: Any) -> dict[str, Any]:
    system, name = function.split(".")
    parameters = FUNCTIONS[function]["parameters"]
    given = {one["name"]: quantity(value, one["kind"]) for one, value in zip(parameters, inputs, strict=True)}
    found = getattr(import_module(f"axlewright.{system}"), name)(**given, **more)
    names = results(function)
    for one, value in zip(FUNCTIONS[function]["results"], found if len(names) > 1 else [found], strict=True):
        assert getattr(value, "kind", "Ratio") == one["of"]
    return {one: plain(getattr(found, one) if len(names) > 1 else found) for one in names}


def by_quantity(function: str, inputs: list[float]) -> Answer:
    try:
        return {name: float(value) for name, value in door(function, inputs).items()}
    except DomainError as error:
        return str(error)


@rows("function")
def test_quantities(row: Row, rust: dict[str, dict[str, str]]) -> None:
    function = row["function"]
    inputs = numbers(row, by_quantity)
    answer = by_quantity(function, inputs)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]

    columns = [np.array(column) for column in batch(function, inputs, by_quantity)]
    found = door(function, columns, invalid="nan")
    known = by_quantity(function, good(function, by_quantity))
    expect_batch([list(one) for one in found.values()], function, answer, known)
    with pytest.raises(DomainError) as caught:
        door(function, columns)
    assert caught.value.index == ((1,) if isinstance(answer, str) else (2,))
    if isinstance(answer, str):
        assert str(caught.value) == answer


# ---- The work behind an answer


def of_json(text: str) -> dict[str, float | str]:
    page = json.loads(text)
    return {name: one["si"] for name, one in zip(results(page["function"]), page["results"], strict=True)}


@rows("function")
def test_work(row: Row, rust: dict[str, dict[str, str]]) -> None:
    function = row["function"]
    system, name = function.split(".")
    inputs = numbers(row, by_quantity)
    parameters = FUNCTIONS[function]["parameters"]
    given = {one["name"]: quantity(value, one["kind"]) for one, value in zip(parameters, inputs, strict=True)}
    call = getattr(import_module(f"axlewright.{system}"), name)
    if "error" in rust[row["id"]]:
        with pytest.raises(DomainError) as caught:
            work(call, **given)
        assert said(str(caught.value)) == rust[row["id"]]
        return
    made = work(call, **given)
    names = results(function)
    found = {one: plain(getattr(made.result, one) if len(names) > 1 else made.result) for one in names}
    assert said(found) == said(of_json(made.to_json())) == rust[row["id"]]
    assert [bits(plain(made.inputs[one["name"]])) for one in parameters] == [bits(value) for value in inputs]
    assert json.loads(made.to_json())["with_numbers"] in made.text.replace("\n    ", "\n")
    assert FUNCTIONS[function]["source"] in made.text and FUNCTIONS[function]["caution"] in made.text


# ---- C


def message(library: ctypes.CDLL) -> str:
    needed = library.axw_last_message(None, 0)
    buffer = create_string_buffer(needed)
    assert library.axw_last_message(buffer, needed) == needed
    return buffer.value.decode()


def c_name(name: str) -> str:
    return "axw_" + re.sub(r"(?<=[a-z])(?=[A-Z])", "_", name).lower().replace(".", "_")


class Reals:
    """So many doubles that C may write."""

    def __init__(self, count: int) -> None:
        self.cells = [c_double(UNTOUCHED) for _ in range(count)]

    def pointers(self) -> list[Any]:
        return [byref(cell) for cell in self.cells]

    def untouched(self) -> bool:
        return all(cell.value == UNTOUCHED for cell in self.cells)


def by_c(library: ctypes.CDLL) -> Callable[[str, list[float]], Answer]:
    def call(function: str, inputs: list[float]) -> Answer:
        entry = getattr(library, c_name(function))
        names = results(function)
        entry.argtypes = [c_double] * len(inputs) + [POINTER(c_double)] * len(names)
        entry.restype = c_int32
        found = Reals(len(names))
        status = entry(*inputs, *found.pointers())
        if status == AXW_OK:
            return {name: cell.value for name, cell in zip(names, found.cells, strict=True)}
        assert AXW_OUT_OF_RANGE <= status < 100
        assert found.untouched()
        return message(library)

    return call


@rows("function")
def test_c(row: Row, rust: dict[str, dict[str, str]], library: ctypes.CDLL) -> None:
    function, call = row["function"], by_c(library)
    inputs = numbers(row, call)
    answer = call(function, inputs)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]

    names = results(function)
    for name in names:
        entry = getattr(library, c_name(function) + ("_value" if len(names) == 1 else f"_{name}_value"))
        entry.argtypes, entry.restype = [c_double] * len(inputs), c_double
        value = entry(*inputs)
        if isinstance(answer, str):
            assert math.isnan(value) and message(library) == answer
        else:
            assert bits(value) == bits(float(answer[name]))

    buffer = create_string_buffer(16384)
    status = library.axw_work_json(
        function.encode(), (c_double * len(inputs))(*inputs), c_size_t(len(inputs)), 0, buffer, c_size_t(16384), None
    )
    if isinstance(answer, str):
        assert AXW_OUT_OF_RANGE <= status < 100
        assert message(library) == answer
    else:
        assert status == AXW_OK, message(library)
        assert said(of_json(buffer.value.decode())) == rust[row["id"]]

    entry = getattr(library, c_name(function) + "_n")
    entry.argtypes = [c_size_t] + [POINTER(c_double)] * (len(inputs) + len(names)) + [POINTER(c_int32)]
    entry.restype = c_int32
    columns = [(c_double * 3)(*column) for column in batch(function, inputs, call)]
    found = [(c_double * 3)(UNTOUCHED, UNTOUCHED, UNTOUCHED) for _ in names]
    reason = (c_int32 * 3)(-1, -1, -1)
    assert entry(3, *columns, *found, reason) == AXW_ROWS
    refused, first = (2, 1) if isinstance(answer, str) else (1, 2)
    assert [status == AXW_OK for status in reason] == [True, refused == 1, False]
    told = message(library)
    assert told.startswith(f"{refused} rows refused, the first at index {first}: ")
    if isinstance(answer, str):
        assert told.endswith(answer)
    expect_batch([list(one) for one in found], function, answer, call(function, good(function, call)))


# ---- Models


def method(row: Row) -> Mapping[str, Any]:
    one: Mapping[str, Any] = next(one for one in MODELS[row["model"]]["methods"] if one["name"] == row["method"])
    return one


def document(row: Row) -> str:
    """As the Rust test writes it, so that a refusal has the same column."""
    return json.dumps(row["inputs"], ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def without_places(refusal: str) -> str:
    """The faults of a refusal without their lines, columns, order and carets."""
    refusal = refusal.replace(" faults, in the order of the text:", " faults:", 1)
    faults = [line for line in refusal.splitlines() if not line.startswith("    ")]
    return "\n".join(re.sub(r"^line \d+, column \d+: ", "", fault) for fault in faults)


@rows("model")
def test_model(row: Row, rust: dict[str, dict[str, str]]) -> None:
    system, name = row["model"].split(".")
    made = getattr(import_module(f"axlewright.{system}"), name)
    answer: Answer = {}
    try:
        model = made.from_text(document(row))
        if "method" in row:
            of = method(row)
            kinds = {one["name"]: one["kind"] for one in of["parameters"]}
            given = {one: quantity(value, kinds[one]) for one, value in row["arguments"].items()}
            found = getattr(model, row["method"])(**given)
            if of["result_type"]:
                answer = {one["name"]: plain(getattr(found, one["name"])) for one in of["results"]}
            else:
                answer = {"value": plain(found)}
    except (DocumentError, DomainError, TextError) as error:
        answer = str(error)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]


@rows("model")
def test_model_by_keywords(row: Row, rust: dict[str, dict[str, str]]) -> None:
    """Built from keywords it is the same model as from a document."""
    system, name = row["model"].split(".")
    made = getattr(import_module(f"axlewright.{system}"), name)
    if "error" in rust[row["id"]] and "method" not in row:
        with pytest.raises((DocumentError, DomainError, TextError)) as caught:
            made(**row["inputs"])
        # Nobody wrote these lines.
        assert str(caught.value) == without_places(rust[row["id"]]["error"])
        assert getattr(caught.value, "line", None) is None
    else:
        assert made(**row["inputs"]) == made.from_text(document(row))


#: More results than this come in a struct.
MOST_POINTERS = 8


def results_by_pointer(entry: Any, handle: c_void_p, arguments: list[Any], results: list[Any]) -> list[Any] | None:
    """What a method answers through a pointer a result, or nothing where it refused and wrote nothing."""
    cells = {"quantity": lambda: c_double(UNTOUCHED), "choice": lambda: c_int32(-1)}
    cells |= {"text": lambda: create_string_buffer(512), "whole": lambda: c_int64(-1)}
    found = [cells[one["type"]]() for one in results]
    places: list[Any] = []
    for cell in found:
        places += [cell, c_size_t(len(cell)), None] if isinstance(cell, Array) else [byref(cell)]
    if entry(handle, *arguments, *places) != AXW_OK:
        assert all(cell.value in (UNTOUCHED, -1, b"") for cell in found)
        return None
    return [plain_c(one, cell.value) for one, cell in zip(results, found, strict=True)]


def results_by_struct(entry: Any, handle: c_void_p, arguments: list[Any], results: list[Any]) -> list[Any] | None:
    """The same from a method that fills a struct."""
    types = {"quantity": c_double, "choice": c_int32, "text": c_char_p, "whole": c_int64}
    fields: list[Any] = [("size", c_size_t), *((one["name"], types[one["type"]]) for one in results)]
    found = type(entry.__name__, (ctypes.Structure,), {"_fields_": fields})()
    ctypes.memset(byref(found), 0x23, ctypes.sizeof(found))
    found.size = ctypes.sizeof(found)
    before = bytes(found)
    if entry(handle, *arguments, byref(found)) != AXW_OK:
        assert bytes(found) == before
        return None
    return [plain_c(one, getattr(found, one["name"])) for one in results]


def plain_c(result: Mapping[str, Any], value: Any) -> Any:
    if result["type"] == "choice":
        return WORDS[result["of"]][value]
    return value.decode() if result["type"] == "text" else value


@rows("model")
def test_model_c(row: Row, rust: dict[str, dict[str, str]], library: ctypes.CDLL) -> None:
    new = getattr(library, c_name(row["model"]) + "_new")
    new.argtypes, new.restype = [c_char_p, POINTER(c_void_p)], c_int32
    handle = c_void_p()
    answer: Answer = {}
    if new(document(row).encode(), byref(handle)) != AXW_OK:
        assert not handle
        answer = message(library)
    else:
        answer = answer_of_method(row, handle, library)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]


def answer_of_method(row: Row, handle: c_void_p, library: ctypes.CDLL) -> Answer:
    """What the method of a row answers, if it has one; the handle is freed."""
    prefix = c_name(row["model"])
    free = getattr(library, prefix + "_free")
    free.argtypes, free.restype = [c_void_p], None
    answer: Answer = {}
    if "method" in row:
        of = method(row)
        entry = getattr(library, f"{prefix}_{row['method']}")
        arguments = [row["arguments"][one["name"]] for one in of["parameters"]]
        names = [one["name"] for one in of["results"]] if of["result_type"] else ["value"]
        call = results_by_struct if len(of["results"]) > MOST_POINTERS else results_by_pointer
        found = call(entry, handle, [c_double(value) for value in arguments], of["results"])
        answer = message(library) if found is None else dict(zip(names, found, strict=True))
    free(handle)
    return answer


def named(library: ctypes.CDLL, inputs: Mapping[str, Any], fields: list[Any], prefix: str = "") -> list[Any]:
    """The inputs of a model as paths, each with its number in coherent SI or its text."""
    found: list[Any] = []
    for name, value in inputs.items():
        field, path = next(one for one in fields if one["name"] == name), prefix + name
        if field["type"] == "list":
            for place, entry in enumerate(value):
                found += named(library, entry, field["of"], f"{path}[{place}].")
        elif field["type"] == "fields" and isinstance(value, dict):
            found += named(library, value, field["of"], f"{path}.")
        elif field["type"] == "quantity" and value != "none":
            if isinstance(value, dict):
                value = f"{value['value']} {value['unit']}"
            si = c_double(UNTOUCHED)
            read = library.axw_text_read(str(value).encode(), field["of"].encode(), byref(si))
            assert read == AXW_OK, message(library)
            found.append((path, si.value, None))
        else:
            found.append((path, NAN, value.encode()))
    return found


@rows("model")
def test_model_c_by_named_values(row: Row, rust: dict[str, dict[str, str]], library: ctypes.CDLL) -> None:
    """Filled without text it is the same model as from a document."""
    if "error" in rust[row["id"]]:
        return
    library.axw_text_read.argtypes = [c_char_p, c_char_p, POINTER(c_double)]
    entries = named(library, row["inputs"], MODELS[row["model"]]["fields"])
    count = len(entries)
    paths = (c_char_p * count)(*(path.encode() for path, _, _ in entries))
    values = (c_double * count)(*(si for _, si, _ in entries))
    texts = (c_char_p * count)(*(text for _, _, text in entries))
    new = getattr(library, c_name(row["model"]) + "_new_si")
    handle = c_void_p()
    assert new(paths, values, texts, c_size_t(count), byref(handle)) == AXW_OK, message(library)
    assert said(answer_of_method(row, handle, library)) == rust[row["id"]]


# ---- Units


@rows("unit")
def test_unit(row: Row, rust: dict[str, dict[str, str]]) -> None:
    answer: Answer
    try:
        read = Quantity(row["inputs"]["text"])
        assert read.unit.name == row["unit"]
        answer = {"value": read.si}
    except TextError as error:
        answer = str(error)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]


@rows("unit")
def test_unit_c(row: Row, rust: dict[str, dict[str, str]], library: ctypes.CDLL) -> None:
    library.axw_text_read.argtypes = [c_char_p, c_char_p, POINTER(c_double)]
    library.axw_text_read.restype = c_int32
    kind = KIND_OF_UNIT.get(row["unit"]) or {"hp": "Power", "gal": "Volume", "ton": "Mass"}[row["unit"]]
    si = c_double(UNTOUCHED)
    status = library.axw_text_read(row["inputs"]["text"].encode(), kind.encode(), byref(si))
    answer: Answer = {"value": si.value}
    if status != AXW_OK:
        assert status == AXW_TEXT and si.value == UNTOUCHED
        answer = message(library)
    judge(row, answer)
    assert said(answer) == rust[row["id"]]


# ---- The rows themselves


def test_rust_ran_these_rows(rust: dict[str, dict[str, str]]) -> None:
    assert set(rust) == {row["id"] for row in ROWS}


def test_every_function_has_rows() -> None:
    assert {row["function"] for row in ROWS if "function" in row} == set(FUNCTIONS)
