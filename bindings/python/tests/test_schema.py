"""The JSON Schema of the build sheet against the core: what the core accepts the schema accepts, and a key, a choice or a
type that the core does not know both refuse. The documents are random, from a seed.
"""

import json
import random
import tomllib
from copy import deepcopy
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from axlewright import DocumentError
from axlewright.__main__ import main
from axlewright._native import UNITS, _sheet_schema
from axlewright.sheet import Sheet

ROOT = Path(__file__).resolve().parents[3]
SCHEMA = json.loads(_sheet_schema())
VALIDATOR = Draft202012Validator(SCHEMA)
SYMBOLS = [unit.symbol for unit in UNITS.values()]
MARKINGS = ["235/70R16", "205/55R16 91V", "31x10.50R15LT"]

Document = dict[str, Any]


def core_refuses(document: Document) -> bool:
    try:
        Sheet.from_text(json.dumps(document))
    except DocumentError:
        return True
    return False


def schema_refuses(document: Document) -> bool:
    return not VALIDATOR.is_valid(document)


def leaves(schema: Document, steps: tuple[str | int, ...] = ()) -> list[tuple[tuple[str | int, ...], Document]]:
    """Every line that may be written, the first places of a list only."""
    if "properties" in schema:
        return [leaf for key, inner in schema["properties"].items() for leaf in leaves(inner, (*steps, key))]
    if schema.get("type") == "array":
        return [leaf for at in range(3) for leaf in leaves(schema["items"], (*steps, at))]
    return [(steps, schema)]


def test_the_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA


LINES = [leaf for leaf in leaves(SCHEMA) if leaf[0] not in [("version",), ("name",), ("notes",)]]


def put(document: Document, steps: tuple[str | int, ...], value: object) -> None:
    at: Any = document
    for step, following in zip(steps, steps[1:], strict=False):
        fresh: Any = [] if isinstance(following, int) else {}
        if isinstance(step, int):
            if len(at) <= step:
                at.append(fresh)
            at = at[step]
        else:
            at = at.setdefault(step, fresh)
    if isinstance(steps[-1], int):
        at.append(value)
    else:
        at[steps[-1]] = value


def value(schema: Document, dice: random.Random) -> object:
    """Something that may stand on a line; whether it is allowed the core says."""
    if "enum" in schema:
        return dice.choice(schema["enum"])
    if schema.get("type") == "string":
        return dice.choice(MARKINGS)
    number = round(10 ** dice.uniform(-2, 5), dice.randrange(4))
    if schema["$ref"].endswith("ratio") and dice.random() < 0.7:
        return dice.choice([round(number % 3, 2), int(number % 5) + 1, "62 %", "1/2"])
    symbol = dice.choice(SYMBOLS)
    if dice.random() < 0.3:
        parts: Document = {"value": number, "unit": symbol}
        return parts | ({"tolerance": "3 %"} if dice.random() < 0.5 else {})
    return f"{number} {symbol}" + dice.choice(["", "", " +/- 3 %", f" ± {number / 50} {symbol} sd"])


def accepted(dice: random.Random, lines: int) -> Document:
    """A document that the core accepts, line by line."""
    document: Document = {"version": 1, "name": dice.choice(["", "Wagtail", "\u00b5 \"x\"\n"])}
    for steps, schema in sorted(dice.sample(LINES, lines)):
        if any(isinstance(step, int) for step in steps):
            continue
        for _ in range(40):
            before = deepcopy(document)
            put(document, steps, value(schema, dice))
            if not core_refuses(document):
                break
            document = before
    return document


def tables(document: Any) -> list[Document]:
    inner = document.values() if isinstance(document, dict) else document if isinstance(document, list) else []
    own = [document] if isinstance(document, dict) else []
    return own + [table for one in inner for table in tables(one)]


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert len(LINES) > 150


@pytest.mark.parametrize("path", sorted((ROOT / "examples" / "sheets").glob("*.toml")), ids=lambda path: path.stem)
def test_what_stands_in_the_examples(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    document = tomllib.loads(text)
    # Beside the sheets of vehicles there are documents of single models.
    assert schema_refuses(document) == core_refuses(document)
    if not core_refuses(document):
        sheet = Sheet.from_text(text)
        VALIDATOR.validate(json.loads(sheet.to_json()))
        VALIDATOR.validate(tomllib.loads(sheet.to_toml()))


@pytest.mark.parametrize("seed", range(40))
def test_what_the_core_accepts_the_schema_accepts(seed: int) -> None:
    dice = random.Random(seed)
    document = accepted(dice, 30)
    assert not core_refuses(document)
    VALIDATOR.validate(document)
    sheet = Sheet.from_text(json.dumps(document))
    assert len(sheet) >= 5
    VALIDATOR.validate(json.loads(sheet.to_json()))
    VALIDATOR.validate(tomllib.loads(sheet.to_toml()))


@pytest.mark.parametrize("seed", range(40))
def test_what_the_schema_refuses_the_core_refuses(seed: int) -> None:
    dice = random.Random(seed)
    document = accepted(dice, 30)
    put(document, ("gearbox", "ratios"), [4.7, "2.51", 1.55])
    put(document, ("engine", "curve"), [{"engine_speed": "1000 rpm", "torque": "210 N·m"}])
    put(document, ("driveline", "driven"), "rear")
    put(document, ("front", "spring", "rate"), "300 lbf/in")
    VALIDATOR.validate(document)
    assert not core_refuses(document)
    breaks = cycle(range(8))
    for _ in range(16):
        broken = deepcopy(document)
        match next(breaks):
            case 0:
                dice.choice(tables(broken))["sunroof"] = dice.choice(["5 mm", {}, 5])
            case 1:
                broken["front"]["spring"] |= {"rat": "300 lbf/in"}
            case 2:
                broken["gearbox"]["ratios"] = [1.5] * 13
            case 3:
                broken["engine"]["curve"] = [{"engine_speed": "1 rpm"}] * 25
            case 4:
                broken["driveline"]["driven"] = dice.choice(["both", "", 0, True])
            case 5:
                broken["front"]["spring"]["rate"] = dice.choice([300, True, None, ["300 lbf/in"], "soft", {"value": 1}])
            case 6:
                broken[dice.choice(["version", "name"])] = dice.choice([2, 1.5, [], None])
            case _:
                broken["front"] = dice.choice([1, "front", [broken["front"]]])
        assert schema_refuses(broken) and core_refuses(broken), broken
