"""Cost of releasing the interpreter in a short call of a model: `release.py [ROUNDS]`.

A model of a document of more than 10,000 bytes releases it, as its answers may take long; the same document with blanks after its end is therefore
the same model that releases. Each line has the call that releases it, and the call that keeps it; medians of interleaved rounds.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from statistics import median
from typing import Any

from measure import row, seconds

from axlewright import units

ROOT = Path(__file__).parents[3]
CATALOGUE = json.loads((ROOT / "target/generated/catalogue.json").read_text(encoding="utf-8"))
CALLS = 300
#: Methods that answer one question, from the fastest to one that solves a linkage.
METHODS = ("spring.Stack.at_length", "spring.BumpStop.at", "engine.TorqueCurve.torque", "cooling.Coolant.margin", "ride.QuarterCar.modes", "suspension.DoubleWishbone.at")


def cases() -> list[tuple[str, Callable[[], object], Callable[[], object]]]:
    """The calls of the first row of each method that has an answer; of any other methods, if the rows lack one of these."""
    first = {unit["name"]: unit["units"][0]["name"] for unit in CATALOGUE["kinds"]}
    kinds = {f"{of['system']}.{of['name']}.{method['name']}": {one["name"]: one["kind"] for one in method["parameters"]} for of in CATALOGUE["models"] for method in of["methods"]}
    made: list[tuple[str, Callable[[], object], Callable[[], object]]] = []
    for file in sorted((ROOT / "tests/rows").glob("*.json")):
        for one in json.loads(file.read_text(encoding="utf-8")):
            path = f"{one.get('model')}.{one.get('method')}"
            if path not in METHODS or "error" in one["expected"] or any(path == known for known, *_ in made):
                continue
            system, name = one["model"].split(".")
            text = json.dumps(one["inputs"])
            given = {key: value if kinds[path][key] == "Ratio" else getattr(units, first[kinds[path][key]])(value) for key, value in one["arguments"].items()}

            def call(text: str, system: str = system, name: str = name, method: str = one["method"], given: dict[str, Any] = given) -> Callable[[], object]:
                bound = getattr(getattr(import_module(f"axlewright.{system}"), name).from_text(text), method)

                def many() -> None:
                    for _ in range(CALLS):
                        bound(**given)

                return many

            made.append((path, call(text + " " * 10_001), call(text)))
    return made


def main(rounds: int = 61) -> None:
    for path, releases, keeps in cases():
        times = [(seconds(releases), seconds(keeps)) for _ in range(rounds + 1)][1:]
        ours, peer = (median(column) * 1e6 / CALLS for column in zip(*times, strict=True))
        row(f"Python {path} that releases the interpreter, one that keeps it", ours, peer, "µs", "faster 0.95")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
