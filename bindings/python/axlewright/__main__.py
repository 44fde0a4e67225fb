"""`python -m axlewright assess SHEET`: the findings of a build sheet. `python -m axlewright schema`: its JSON Schema.

Exit codes of `assess`: 0 no finding is tight or short, and every safety finding that applies meets, 1 the worst is tight (or a safety finding is not known), 2 one is short; 64 the command
is wrong, 65 the document is, 66 there is no such file; 130 interrupted.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from axlewright._native import DocumentError, __version__, _sheet_schema

USAGE, BAD_DOCUMENT, NO_FILE, INTERRUPTED, NO_READER = 64, 65, 66, 130, 141


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        self.print_usage(sys.stderr)
        self.exit(USAGE, f"{self.prog}: {message}\n")


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command and gives its exit code."""
    parser = _Parser(prog="python -m axlewright", description="Unit-safe engineering of one-off vehicles.")
    parser.add_argument("--version", action="version", version=f"axlewright {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    assess = commands.add_parser(
        "assess",
        help="print the findings of a build sheet",
        epilog="Exit codes: 0 no finding is tight or short, and every safety finding that applies meets; 1 the worst is tight, or a safety finding is not known; 2 one is short; "
        "64 wrong command; 65 wrong document; 66 no such file.",
    )
    assess.add_argument("sheet", metavar="SHEET", help="a build sheet, TOML or JSON")
    assess.add_argument("--json", action="store_true", help="as JSON, in coherent SI; with --compare a list of the two")
    assess.add_argument("--units", choices=("us", "metric"), help="the shop's units (else those of the sheet)")
    assess.add_argument("--work", action="store_true", help="with the work behind each finding")
    assess.add_argument("--compare", metavar="OTHER", help="what differs from another sheet")
    commands.add_parser("schema", help="print the JSON Schema of a build sheet, for editors")
    given = parser.parse_args(arguments)
    if given.command == "schema":
        print(_sheet_schema(), end="")
        sys.stdout.flush()
        return 0
    if given.json and (given.work or given.units):
        parser.error("--json holds everything in coherent SI: it goes without --work and --units")
    if given.compare and given.work:
        parser.error("--compare shows what differs: it goes without --work")

    from axlewright.sheet import Sheet

    try:
        assessment = Sheet.load(given.sheet).assess()
        other = Sheet.load(given.compare).assess() if given.compare else None
    except DocumentError as error:
        print(error, file=sys.stderr)
        return BAD_DOCUMENT
    except OSError as error:
        print(f"{error.filename}: {error.strerror}", file=sys.stderr)
        return NO_FILE
    if given.json:
        text = assessment.to_json() if other is None else f"[{assessment.to_json()},{other.to_json()}]"
    elif other is not None:
        text = assessment.compare(other, given.units)
    else:
        text = assessment.text(given.units, work=given.work)
    print(text.rstrip("\n"))
    sys.stdout.flush()
    return assessment.severity


def _run() -> int:
    """The command, with care for a closed pipe and an interrupt."""
    try:
        return main()
    except BrokenPipeError:
        # Python would complain of it once more at its end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NO_READER
    except KeyboardInterrupt:
        return INTERRUPTED


if __name__ == "__main__":
    sys.exit(_run())
