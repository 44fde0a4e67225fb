"""Computes the rows that no library and no publication gives, and reports every difference: `python check.py [system ...]`.

Each row with the provenance `independent script` or `own equations` names in its source the script that gives its numbers. `routes/<system>.py` are run
here, in some seconds. The scripts that write whole files of rows (`double_wishbone`, `strut`, `live_axle`, `leaf_axle`, `leaf_sideways`) take minutes: `python check.py --slow`.
Numbers have the tolerance of their row. Words (verdicts, names of parts) are compared if the route gives them.

Needs numpy, scipy and mpmath; fluid and cooling also what `requirements.txt` beside this file lists. Rows whose packages are missing are counted as not run, and `--all` makes that a failure.
"""

from __future__ import annotations

import argparse
import importlib
import json
import math
import sys
from pathlib import Path

from routes import ROUTES, Refused, in_si

HERE = Path(__file__).resolve().parent
SCRIPTED = ("independent script", "own equations")
ROUTED = tuple(sorted(path.stem for path in (HERE / "routes").glob("[a-z]*.py")))
SLOW = ("double_wishbone", "strut", "live_axle", "leaf_axle", "leaf_sideways")
# The source of a row begins with the script that gives its numbers.
PLACE = "tests/scripts/"


def script_of(row: dict) -> str | None:
    source = row["source"]
    return source[len(PLACE) :].split(".py", 1)[0] if source.startswith(PLACE) else None


def subject_of(row: dict) -> str:
    return row.get("function") or row.get("model") or row["unit"]


def wanted_route(row: dict):
    subject = subject_of(row)
    names = {subject, f"{subject}.{row.get('method')}"}
    found = [f for name, says, f in ROUTES if name in names and says in row["source"]]
    if len(found) != 1:
        raise LookupError(f"{len(found)} routes for {sorted(names)}")
    return found[0]


def argument(value):
    """A number, or the result of another function by its first route."""
    if not isinstance(value, dict):
        return float(value)
    first = next(f for name, _, f in ROUTES if name == value["function"])
    return float(first(**{name: argument(of) for name, of in value["inputs"].items()}))


def computed(row: dict) -> dict:
    run = wanted_route(row)
    if "function" in row:
        found = run(**{name: argument(value) for name, value in row["inputs"].items()})
    else:
        found = run(in_si(row["inputs"]), **row.get("arguments", {}))
    return found if isinstance(found, dict) else {"value": found}


def differences(row: dict, found: dict | None) -> list[str]:
    """What the row says otherwise. `None` is a refusal."""
    expected = row["expected"]
    if "error" in expected or found is None:
        return [] if ("error" in expected) == (found is None) else ["refused by one of the two"]
    wrong = []
    for name, wanted in expected.items():
        if isinstance(wanted, str):
            if found.get(name, wanted) != wanted:
                wrong.append(f"{name}: {found[name]} here, {wanted} in the row")
            continue
        if wanted is None:  # not known: the route gives nothing either
            if name in found:
                wrong.append(f"{name}: {found[name]} here, not known in the row")
            continue
        if name not in found:
            wrong.append(f"{name}: the route gives {sorted(found)}")
            continue
        tolerance = row["tolerance"]
        bound = tolerance["abs"] if "abs" in tolerance else tolerance["rel"] * abs(wanted)
        # One unit in the last place of either number is no difference.
        bound = max(bound, 2 * math.ulp(wanted))
        error = abs(float(found[name]) - wanted)
        if not error <= bound:
            wrong.append(f"{name}: {float(found[name])!r} here, {wanted!r} in the row, {error / bound:.3g} of the tolerance")
    return wrong


def main() -> int:
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("names", nargs="*", help="systems, or scripts to run; all quick ones without")
    arguments.add_argument("--slow", action="store_true", help="also the scripts that write whole files of rows")
    arguments.add_argument("--all", action="store_true", help="fail if a package is missing")
    options = arguments.parse_args()
    sys.path.insert(0, str(HERE))

    systems = {file.stem: json.loads(file.read_text("utf-8")) for file in sorted((HERE.parent / "rows").glob("*.json"))}
    rows = [row for of_system in systems.values() for row in of_system]
    by_script: dict[str, list[dict]] = {}
    faults = []
    for row in rows:
        script = script_of(row)
        if (script is not None) != (row["provenance"] in SCRIPTED):
            faults.append(f"{row['id']}: {row['provenance']}, but its source begins with {row['source'][:40]!r}")
        elif script is not None:
            if not (HERE / f"{script}.py").is_file():
                faults.append(f"{row['id']}: there is no {PLACE}{script}.py")
            by_script.setdefault(script, []).append(row)

    quick = [f"routes/{name}" for name in ROUTED]
    fast = [*quick, "ride", *(SLOW if options.slow else ())]
    wanted = []
    for name in options.names or fast:
        if name in systems:  # every script that the rows of this system name
            named = {script_of(row) for row in systems[name]} & {*fast}
        elif {name, f"routes/{name}"} & {*quick, "ride", *SLOW}:
            named = {f"routes/{name}" if f"routes/{name}" in quick else name}
        else:
            print(f"there is no system and no script {name}; there are {', '.join(sorted({*systems, *ROUTED, 'ride', *SLOW}))}")
            return 2
        wanted.extend(sorted(named - {*wanted}))
    print(f"{'script':<20} rows  differ")
    for name in wanted:
        lacking: dict[str, list[str]] = {}
        try:
            module = importlib.import_module(name.replace("/", "."))
        except ModuleNotFoundError as missing:
            ids = [row["id"] for row in by_script.get(name, ())]
            print(f"{name:<20} {0:>4} {0:>7}  not run without {missing.name}: {len(ids)}")
            if options.all:
                faults.extend(f"{id} was not run" for id in ids)
            continue
        written = None if name in quick else {row["id"]: row for row in module.rows()}
        before = len(faults)
        for row in by_script.get(name, ()):
            try:
                if written is None:
                    found = computed(row)
                else:
                    other = written[row["id"]]
                    changed = [key for key in ("model", "function", "method", "arguments", "inputs") if other.get(key) != row.get(key)]
                    if changed:
                        faults.append(f"{row['id']}: the script asks other {', '.join(changed)}")
                    found = None if "error" in other["expected"] else other["expected"]
            except Refused:
                found = None
            except ModuleNotFoundError as missing:
                lacking.setdefault(missing.name, []).append(row["id"])
                continue
            except Exception as error:  # noqa: BLE001  # every row is told, whatever its route does
                faults.append(f"{row['id']} ({subject_of(row)}): {type(error).__name__}: {error}")
                continue
            faults.extend(f"{row['id']} ({subject_of(row)}): {fault}" for fault in differences(row, found))
        left_out = "".join(f"  not run without {package}: {len(ids)}" for package, ids in lacking.items())
        count = len(by_script.get(name, ())) - sum(map(len, lacking.values()))
        print(f"{name:<20} {count:>4} {len(faults) - before:>7}{left_out}")
        if options.all:
            faults.extend(f"{id} was not run" for ids in lacking.values() for id in ids)
    for name in sorted(set(by_script) - set(wanted)):
        print(f"{name:<20} {0:>4} {0:>7}  not asked for: {len(by_script[name])}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
