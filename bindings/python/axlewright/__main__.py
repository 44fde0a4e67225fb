"""`python -m axlewright assess SHEET`: the findings of a build sheet. `python -m axlewright schema`: its JSON Schema.

Exit codes of `assess`: 0 no finding is tight or short, and every safety finding that applies meets, 1 the worst is tight (or a safety finding is not known), 2 one is short; 64 the command
is wrong, 65 the document is, 66 there is no such file, or it cannot be read; 70 this program failed, 74 its output cannot be written; 130 interrupted, 141 nobody
reads the output. A failure is one line on the standard error.
"""

from __future__ import annotations

import argparse
import contextlib
import os
import sys
from collections.abc import Sequence
from os import fsdecode
from typing import NoReturn

from axlewright._native import DocumentError, __version__, _printable, _sheet_schema, _short

USAGE, BAD_DOCUMENT, NO_FILE, FAILED, NO_OUTPUT, INTERRUPTED, NO_READER = 64, 65, 66, 70, 74, 130, 141


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        _complain(f"{self.format_usage()}{self.prog}: {_printable(message)}")
        self.exit(USAGE)


class _NoOutput(Exception):
    """There is no standard output."""


def _say(text: str) -> None:
    """Writes to the standard output."""
    if sys.stdout is None:  # closed before Python began
        raise _NoOutput
    sys.stdout.write(text)
    sys.stdout.flush()


def _complain(text: str) -> None:
    """Writes to the standard error, if there is one."""
    if sys.stderr is not None:
        with contextlib.suppress(OSError):
            sys.stderr.write(text + "\n")
            sys.stderr.flush()


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command and gives its exit code."""
    parser = _Parser(prog="python -m axlewright", description="Unit-safe engineering of one-off vehicles.")
    parser.add_argument("--version", action="version", version=f"axlewright {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    assess = commands.add_parser(
        "assess",
        help="print the findings of a build sheet",
        epilog="Exit codes: 0 no finding is tight or short, and every safety finding that applies meets; 1 the worst is tight, or a safety finding is not known; 2 one is short; "
        "64 wrong command; 65 wrong document; 66 no such file, or one that cannot be read; 70 a failure of this program; 74 the output cannot be written.",
    )
    assess.add_argument("sheet", metavar="SHEET", help="a build sheet, TOML or JSON")
    assess.add_argument("--json", action="store_true", help="as JSON, in coherent SI; with --compare a list of the two")
    assess.add_argument("--units", choices=("us", "metric"), help="the shop's units (else those of the sheet)")
    assess.add_argument("--work", action="store_true", help="with the work behind each finding")
    assess.add_argument("--compare", metavar="OTHER", help="what differs from another sheet")
    commands.add_parser("schema", help="print the JSON Schema of a build sheet, for editors")
    given = parser.parse_args(arguments)
    if given.command == "schema":
        _say(_sheet_schema())
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
        _complain("\n".join(map(_printable, str(error).split("\n"))))
        return BAD_DOCUMENT
    except OSError as error:
        _complain(_printable(f"{fsdecode(error.filename or given.sheet)}: {error.strerror}"))
        return NO_FILE
    if given.json:
        text = assessment.to_json() if other is None else f"[{assessment.to_json()},{other.to_json()}]"
    elif other is not None:
        text = assessment.compare(other, given.units)
    else:
        text = assessment.text(given.units, work=given.work)
    _say(text.rstrip("\n") + "\n")
    return assessment.severity


def _run() -> int:
    """The command, with care for what may go wrong around it: no failure of its own looks like a finding."""
    try:
        try:
            code = main()
        except SystemExit as ended:  # of the parser, which has written its help or its complaint
            code = ended.code if isinstance(ended.code, int) else 0
            if code == 0:
                _say("")
        return code
    except BrokenPipeError:
        code, said = NO_READER, ""
    except KeyboardInterrupt:
        code, said = INTERRUPTED, ""
    except _NoOutput:
        code, said = NO_OUTPUT, "the standard output is closed"
    except UnicodeEncodeError as error:
        character = f"U+{ord(error.object[error.start]):04X}"
        code, said = NO_OUTPUT, f"the standard output takes no {character} in the encoding {error.encoding}; set PYTHONIOENCODING=utf-8"
    except OSError as error:
        code, said = NO_OUTPUT, f"the standard output: {error.strerror or error}"
    except MemoryError:
        code, said = FAILED, "there is not enough memory"
    except Exception as error:
        code, said = FAILED, f"a failure of this program, please report it: {type(error).__name__}: {_short(str(error))}"
    if said:
        _complain(f"python -m axlewright: {said}")
    _give_up_output()
    return code


def _give_up_output() -> None:
    """Python would write what is left once more at its end, and complain."""
    if sys.stdout is not None:
        with contextlib.suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    sys.exit(_run())
