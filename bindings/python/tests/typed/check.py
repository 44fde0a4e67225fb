"""Holds two type checkers against the scripts beside this file: `right.py` without a fault, `wrong.py` flagged line by line.

It runs in an empty folder, so that no settings of a project count.
"""

import json
import re
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
RIGHT, WRONG = HERE / "right.py", HERE / "wrong.py"


def marked(path: Path) -> set[int]:
    """Lines that must be flagged."""
    return {number for number, line in enumerate(path.read_text().splitlines(), 1) if "  # wrong" in line}


def by_mypy(path: Path) -> dict[int, str]:
    call = [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", "--hide-error-context", str(path)]
    done = subprocess.run(call, capture_output=True, text=True)
    found = re.findall(rf"^{re.escape(str(path))}:(\d+): error: (.*)$", done.stdout, re.M)
    if done.returncode not in (0, 1) or done.stderr or (done.returncode == 1) != bool(found):
        raise SystemExit(f"mypy failed:\n{done.stdout}{done.stderr}")
    return {int(line): text for line, text in found}


def by_pyright(path: Path) -> dict[int, str]:
    call = [sys.executable, "-m", "pyright", "--outputjson", "--pythonpath", sys.executable, str(path)]
    done = subprocess.run(call, capture_output=True, text=True)
    try:
        faults = json.loads(done.stdout)["generalDiagnostics"]
    except (ValueError, KeyError):
        raise SystemExit(f"pyright failed:\n{done.stdout}{done.stderr}") from None
    return {one["range"]["start"]["line"] + 1: one["message"] for one in faults if one["severity"] == "error"}


def main() -> None:
    wanted = marked(WRONG)
    assert len(wanted) >= 25, f"{WRONG.name} marks only {len(wanted)} lines"
    failures = []
    for name, check in (("mypy", by_mypy), ("pyright", by_pyright)):
        for path, lines in ((RIGHT, set()), (WRONG, wanted)):
            flagged = check(path)
            failures += [f"{path.name}:{line}: {name} flags it: {flagged[line]}" for line in sorted(flagged.keys() - lines)]
            failures += [f"{path.name}:{line}: {name} does not flag it" for line in sorted(lines - flagged.keys())]
    if failures:
        raise SystemExit("\n".join(failures))
    print(f"mypy and pyright flag {len(wanted)} wrong calls, and no right one")


if __name__ == "__main__":
    main()
