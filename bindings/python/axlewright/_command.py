"""The commands of a terminal. What they say is made by the core; here are the arguments, the files and the terminal."""

from __future__ import annotations

import argparse
import csv
import io
import os
import shutil
import sys
from collections.abc import Callable, Iterable, Sequence
from functools import partial
from os import fsdecode
from typing import TYPE_CHECKING, Any, NoReturn

from axlewright._native import (
    _MOST_BYTES,
    DocumentError,
    Quantity,
    __version__,
    _printable,
    _sheet_compare,
    _sheet_demo,
    _sheet_keys,
    _sheet_questions,
    _sheet_schema,
    _sheet_starter,
    _wrapped,
)

if TYPE_CHECKING:
    from axlewright.sheet import Sheet

USAGE, BAD_DOCUMENT, NO_FILE, FAILED, NO_OUTPUT, INTERRUPTED, NO_READER = 64, 65, 66, 70, 74, 130, 141
#: Width of a page that is not a terminal.
PAGE = 80
#: Most rows that are assessed one by one.
MOST_ROWS = 200

CODES = (
    "Exit codes: 0 no finding is tight or short, and every safety finding that applies meets; 1 the worst is tight, or a safety finding is not known; "
    "2 one is short; 64 wrong command; 65 wrong document; 66 no such file, or one that cannot be read; 70 a failure of this program; 74 the output cannot be written."
)


class NoOutput(Exception):
    """There is no standard output."""


class Wrong(Exception):
    """The command ends with this code and this complaint."""

    def __init__(self, code: int, text: str) -> None:
        super().__init__(text)
        self.code, self.text = code, text


def say(text: str) -> None:
    """Writes to the standard output."""
    if sys.stdout is None:  # closed before Python began
        raise NoOutput
    sys.stdout.write(text)
    sys.stdout.flush()


def complain(text: str) -> None:
    """Writes to the standard error, if there is one."""
    if sys.stderr is not None:
        try:
            sys.stderr.write(text + "\n")
            sys.stderr.flush()
        except OSError:
            pass


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        complain(f"{self.format_usage()}{self.prog}: {_printable(message)}")
        self.exit(USAGE)


def program() -> str:
    """The name by which it was called."""
    name = os.path.basename(sys.argv[0] or "")
    return "axlewright" if name.startswith("axlewright") else "python -m axlewright"


def _is_terminal() -> bool:
    return sys.stdout is not None and sys.stdout.isatty()


def _width(given: argparse.Namespace) -> int:
    """Columns of the page: as told, of the terminal, otherwise 80."""
    if given.width is not None:
        return int(given.width)
    return shutil.get_terminal_size((PAGE, 24)).columns if _is_terminal() else PAGE


def _colour() -> bool:
    return _is_terminal() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def _columns(text: str) -> int:
    try:
        columns = int(text)
    except ValueError:
        columns = 0
    if columns < 20:
        raise argparse.ArgumentTypeError(f"a width is a number of columns from 20, not {text!r}")
    return columns


def _page(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--width", type=_columns, metavar="N", help="columns of the page (else those of the terminal, or 80)")


def _units(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--units", choices=("us", "metric"), help="units of the report (else those in which the sheet is written)")


def _load(name: str) -> Sheet:
    """The sheet of a file, or of the standard input; a fault ends the command."""
    from axlewright.sheet import Sheet

    try:
        if name != "-":
            return Sheet.load(name)
        content = sys.stdin.buffer.read(_MOST_BYTES + 4).removeprefix(b"\xef\xbb\xbf")
        if len(content) > _MOST_BYTES:
            raise Wrong(BAD_DOCUMENT, f"standard input: the document has more than {_MOST_BYTES} bytes, the most that are read")
        return Sheet.from_text(content.decode("utf-8"))
    except UnicodeDecodeError as error:
        raise Wrong(BAD_DOCUMENT, f"standard input: not text in UTF-8: byte {error.start}") from None
    except (DocumentError, ValueError) as error:
        head = "standard input: " if name == "-" else ""
        raise Wrong(BAD_DOCUMENT, head + "\n".join(map(_printable, str(error).split("\n")))) from None
    except OSError as error:
        raise Wrong(NO_FILE, _printable(f"{fsdecode(error.filename or name)}: {error.strerror}")) from None


def _argument(make: Callable[[], Any]) -> Any:
    """Lines or values that an argument asks of a sheet; a refusal is a wrong command."""
    try:
        return make()
    except (ValueError, TypeError, KeyError) as error:
        text = error.args[0] if isinstance(error, KeyError) and error.args else error
        raise Wrong(USAGE, "\n".join(map(_printable, str(text).split("\n")))) from None


# The commands.


def _assess(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    forms = [form for form in ("json", "markdown", "csv") if getattr(given, form)]
    if given.json and (given.work or given.units or given.all or given.finding):
        parser.error("--json holds everything, as written and in coherent SI: it goes without --work, --units, --all and a finding")
    if len(forms) > 1 or (forms and (given.work or given.all or given.finding) and not given.json):
        parser.error(f"{' and '.join(f'--{form}' for form in forms)}: one form of the whole report, without --work, --all and a finding")
    if given.compare and (given.work or given.finding or given.markdown or given.csv):
        parser.error("--compare shows what differs: it goes without --work, --markdown, --csv and a finding")
    assessment = _load(given.sheet).assess()
    width, colour = _width(given), _colour()
    if given.compare:
        other = _load(given.compare).assess()
        if given.json:
            say(f"[{assessment.to_json()},{other.to_json()}]\n")
        else:
            say(_sheet_compare([("A", assessment._handle), ("B", other._handle)], given.units, width, colour))
    elif given.json:
        say(assessment.to_json().rstrip("\n") + "\n")
    elif given.markdown or given.csv:
        say(assessment.to_markdown(given.units) if given.markdown else assessment.to_csv(given.units))
    elif given.finding:
        say(_argument(lambda: assessment.text_on(given.finding, given.units, width=width, colour=colour)))
    else:
        say(assessment.text(given.units, work=given.work, all=given.all, width=width, colour=colour).rstrip("\n") + "\n")
    return assessment.severity


def _compare(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    assessments = [(label, _load(name).assess()) for label, name in (("A", given.sheet), ("B", given.other))]
    say(_sheet_compare([(label, one._handle) for label, one in assessments], given.units, _width(given), _colour()))
    return 0


def _what_if(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    from axlewright._table import Table
    from axlewright.sheet import span

    sheet = _load(given.sheet)
    lines: dict[str | tuple[str, ...], Any] = {}
    for change in given.change:
        path, equals, values = change.partition("=")
        if not equals or not path.strip() or not values.strip():
            parser.error(f"{change!r} is no change: write line=value, line=value,value or line=from:to:count")
        parts = values.rsplit(":", 2)
        ends = len(parts) == 3 and parts[2].strip().isdigit()
        if path.strip() in lines:
            parser.error(f"{path.strip()} is there twice: write its values together, {path.strip()}=value,value")
        lines[path.strip()] = span(parts[0], parts[1], int(parts[2])) if ends else [one.strip() for one in values.split(",")]
    sweep = _argument(lambda: sheet.what_if(lines, given.output or (), grid=not given.side_by_side))
    if given.csv or given.output:
        table = _argument(sweep.table)
        if given.units:
            units = dict(sweep._handle.units_in(given.units))
            shown = {name: Quantity(column, units[name]) if isinstance(column, Quantity) and name in units else column for name, column in table.items()}
            table = Table(shown, table.reasons)
        say(_csv(table) if given.csv else f"{table._text(table.rows)}\n")
        for name, why in sweep.not_known.items():
            complain(_printable(f"not known: {name}: {why}"))
        return 0
    if sweep.rows > MOST_ROWS:
        raise Wrong(USAGE, f"{sweep.rows} rows are too many to list; take fewer values, --output LINE, or --csv")
    rows = _argument(lambda: _rows(sheet, lines, not given.side_by_side))
    assessments = [("as it is", sheet.assess()._handle)]
    # A reading that follows from a line that changes counts in no row, as in the library.
    left_out: dict[str, str | None] = dict.fromkeys(sweep.dropped)
    for label, changes in rows:
        assessments.append((label, _argument(partial(sheet.with_, {**left_out, **changes}))._handle.assess()))
    for path in sweep.dropped:
        complain(f"left out, as it follows from a line that changes: {path}")
    say(_sheet_compare(assessments, given.units, _width(given), _colour()))
    put = _Put(_width(given))
    for path, values in lines.items():
        told = sheet.text(path) if isinstance(path, str) and path in sheet else ""
        others = [] if not isinstance(values, list) else [value for value in values if _has_tolerance(value)]
        if _has_tolerance(told) and not others:
            put("", f"{path} = {told} counts with its tolerance as it is, and without one in the other rows. Write the tolerance beside a value to count it there, too.", 2)
    say(put.text)
    return 0


def _has_tolerance(text: str) -> bool:
    return "+/-" in text or "±" in text


def _rows(sheet: Sheet, lines: dict[Any, Any], grid: bool) -> list[tuple[str, dict[str, str]]]:
    """Each row with its changes; the numbers of a span are those of the library."""
    from itertools import product

    from axlewright.sheet import Span

    columns: list[list[str]] = []
    for path, values in lines.items():
        if isinstance(values, Span):
            column = sheet.what_if({path: values}, [path]).table()[path]
            columns.append([str(one) if isinstance(one, float) else repr(one) for one in column])
        else:
            columns.append(values)
    paths = list(lines)
    all_rows: Iterable[tuple[str, ...]] = product(*columns) if grid else zip(*columns, strict=True)
    rows = []
    for row in all_rows:
        changes = dict(zip(paths, row, strict=True))
        label = ", ".join(changes.values()) if len(paths) == 1 else ", ".join(f"{path} = {text}" for path, text in changes.items())
        rows.append((label, changes))
    return rows


def _csv(table: Any) -> str:
    """A table with commas; the head of a column of quantities names its unit."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    columns = table._in(None)
    writer.writerow([*(f"{name} [{symbol}]" if symbol else name for name, (_, symbol, _) in columns.items()), "refused"])
    for row in range(table.rows):
        writer.writerow([*("" if column[row] is None else column[row] for column, _, _ in columns.values()), table.reasons.get(row, "")])
    return out.getvalue()


def _choose(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    from axlewright.sheet import PriceList

    sheet = _load(given.sheet)
    try:
        prices = PriceList.load(given.prices)
    except DocumentError as error:
        raise Wrong(BAD_DOCUMENT, "\n".join(map(_printable, str(error).split("\n")))) from None
    except OSError as error:
        raise Wrong(NO_FILE, _printable(f"{fsdecode(error.filename or given.prices)}: {error.strerror}")) from None
    except ValueError as error:
        raise Wrong(USAGE, _printable(str(error))) from None
    names = {finding.path for finding in sheet.assess()}
    wanted = [f"{one}.verdict = meets" if one in names else one for one in given.require or ["no finding short"]]
    chosen = _argument(lambda: sheet.choose(prices, wanted))
    width = _width(given)
    put = _Put(width)
    put("", f"{len(chosen.feasible)}{' and more' if chosen.more else ''} of the combinations meet: {'; '.join(wanted)}")
    for head, choice in (("cheapest", chosen.cheapest), ("lightest", chosen.lightest)):
        if choice is None:
            put("", f"{head}: none")
            continue
        put("", f"{head}: cost {choice.cost:g}, mass {choice.mass}")
        for part in choice.parts:
            put("  ", f"{part.kind}: {part.part} ({part.cost:g}, {part.mass})", 4)
        for worse in choice.worse:
            put("  ", f"worse than now: {worse}", 4)
        fitted = sheet.fit(choice).assess()
        for word in ("short", "tight"):
            paths = [finding.path for finding in fitted if finding.safety and finding.verdict == word]
            if paths:
                put("  ", f"{word} with these parts, and a matter of safety: {', '.join(paths)}", 4)
        unknown = sum(finding.safety and finding.verdict == "not known" for finding in fitted)
        if unknown:
            put("  ", f"not known with these parts: {unknown} findings of safety", 4)
    if len(chosen.front) > 2:
        put("", f"{len(chosen.front)} combinations have no other that is both cheaper and lighter:")
        for choice in chosen.front:
            put("  ", f"{choice}", 4)
    for one in chosen.not_known:
        put("not known: ", one, 4)
    for path in chosen.dropped:
        put("left out, of a part that is replaced: ", path, 4)
    if chosen.rejected:
        put("", "In no combination:")
        for rejected in chosen.rejected:
            put("  ", str(rejected), 4)
    best = chosen.cheapest
    if best is not None:
        fitted = sheet.fit(best).assess()
        cautions: dict[str, list[str]] = {}
        for finding in fitted:
            if finding.safety and finding.verdict != "does not apply":
                cautions.setdefault(finding.caution, []).append(finding.path)
        if cautions:
            put("", "CAUTION")
        for caution, paths in cautions.items():
            put("  ", f"{', '.join(paths)}: {caution}", 4)
    say(put.text)
    return 0 if best is not None else 2


class _Put:
    """Text of a fixed width."""

    def __init__(self, width: int) -> None:
        self.text, self.width = "", width

    def __call__(self, head: str, text: str, indent: int = 2) -> None:
        self.text += _wrapped(head, indent, _printable(text), self.width)


def _sensitivity(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    assessment = _load(given.sheet).assess()
    finding = _argument(lambda: assessment[given.finding])
    put = _Put(_width(given))
    put("", f"Tolerances that move the margin of {finding.path} ({finding.verdict}): the change of the margin as the line rises by one tolerance, and its share of the variance of the margin.")
    rows = assessment._handle.sensitivity(finding.path, given.units or assessment._sheet.system)
    for *_, text in rows:
        put("  ", text, 4)
    if not rows:
        put("  ", finding.missing or "no written tolerance moves this margin", 4)
    say(put.text)
    return 0


def _chances(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    assessment = _load(given.sheet).assess()
    chances = _argument(lambda: assessment.chances(given.samples, given.seed))
    put = _Put(_width(given))
    turning = sorted((one for one in chances if one.turns > 0), key=lambda one: -one.turns)
    put("", f"{len(turning)} of {len(chances)} verdicts turn within the tolerances; {given.samples} samples of seed {given.seed}, each judged by its own numbers.")
    for one in turning:
        shares = (("meets", one.meets), ("tight", one.tight), ("short", one.short), ("not known", one.not_known))
        told = ", ".join(f"{word} {100 * share:.3g} %" for word, share in shares if share > 0)
        judged = assessment[one.path].verdict
        beside = "" if judged == one.verdict else f"; the report says {judged}, with every tolerance counted against it"
        put("  ", f"{one.path}: {one.verdict} by the written values{beside}; {told}", 4)
    say(put.text)
    return 0


def _keys(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    word = " ".join(given.word) or None
    say(_sheet_keys(word, given.units or "metric", _width(given)))
    return 0


def _schema(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    say(_sheet_schema())
    return 0


def _new(given: argparse.Namespace, parser: argparse.ArgumentParser) -> int:
    if given.like and given.answer:
        parser.error("--like copies a demo sheet as it is: it goes without --answer")
    untold = ""
    if given.like:
        text = _sheet_demo(given.like) or ""
    else:
        answers = _answers(given, parser)
        text = _argument(lambda: _sheet_starter(answers, given.name or ""))
        answered = dict(answers)
        first = [f"{key}={choices[0][0]}" for key, _, choices in _sheet_questions() if key not in answered]
        untold = f" Not answered, so that the first choice stands: {', '.join(first)}; `--answer` takes another." if first else ""
    if given.file in (None, "-"):
        say(text)
        return 0
    try:
        with open(given.file, "w" if given.force else "x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise Wrong(USAGE, _printable(f"{given.file} is there already; --force replaces it")) from None
    except OSError as error:
        raise Wrong(NO_OUTPUT, _printable(f"{given.file}: {error.strerror}")) from None
    put = _Put(_width(given))
    put("", f"{given.file} is written.{untold} Fill in what you know: take the # from a line, and put your number in the place of the blank. Then: {program()} assess {given.file}")
    say(put.text)
    return 0


def _answers(given: argparse.Namespace, parser: argparse.ArgumentParser) -> list[tuple[str, str]]:
    """The answers of flags, then of the standard input; a question that gets no answer keeps its first choice."""
    answers: dict[str, str] = {}
    for one in given.answer or []:
        key, equals, word = one.partition("=")
        if not equals:
            parser.error(f"{one!r} is no answer: write question=word, such as front=strut")
        answers[key.strip()] = word.strip()
    asked = sys.stdin is not None and not given.no_questions
    interactive = asked and sys.stdin.isatty()
    ended = not asked
    for key, question, choices in _sheet_questions():
        if key in answers:
            continue
        while not ended:
            if interactive:
                complain(f"{question}")
                for place, (_, words) in enumerate(choices, 1):
                    complain(f"  {place}  {words}{'  (Enter)' if place == 1 else ''}")
                sys.stderr.write("> ")
                sys.stderr.flush()
            line = sys.stdin.readline()
            if not line:
                ended = True
                break
            word = line.strip()
            if word.isdigit() and 1 <= int(word) <= len(choices):
                word = choices[int(word) - 1][0]
            if not word:
                break
            if word in [choice for choice, _ in choices]:
                answers[key] = word
                break
            told = f"{word!r} is no answer; write a number from 1 to {len(choices)}, or one of: {', '.join(choice for choice, _ in choices)}"
            if not interactive:
                raise Wrong(USAGE, _printable(f"{key}: {told}"))
            complain(_printable(told))
    return list(answers.items())


def parser() -> _Parser:
    """The parser of the command."""
    made = _Parser(
        prog=program(),
        description="Engineering checks of a one-off vehicle, from a sheet of its measurements.",
        epilog="Begin with `new my.toml`: it asks what the vehicle is, and writes a sheet to fill in. Then `assess my.toml`. `keys WORD` finds the line for a word of the trade.",
    )
    made.add_argument("--version", action="version", version=f"axlewright {__version__}")
    commands = made.add_subparsers(dest="command", required=True, metavar="COMMAND", parser_class=_Parser)

    new = commands.add_parser("new", help="make a sheet to fill in, from a few questions", epilog="The questions are read from the standard input, too: an answer a line, an empty line for the first choice.")
    new.add_argument("file", nargs="?", metavar="FILE", help="file to write (else the standard output)")
    new.add_argument("--like", choices=("dunlin", "wagtail", "dray"), help="copy a demo sheet, whole and with invented figures: a van, a roadster, a farm truck")
    new.add_argument("--name", help="name of the vehicle")
    new.add_argument("--answer", action="append", metavar="QUESTION=WORD", help=f"answer without being asked: {', '.join(key for key, _, _ in _sheet_questions())}")
    new.add_argument("--no-questions", action="store_true", help="ask nothing: the first choice where --answer says nothing")
    new.add_argument("--force", action="store_true", help="replace a file that is there")
    _page(new)

    assess = commands.add_parser("assess", help="print the findings of a sheet", epilog=CODES)
    assess.add_argument("sheet", metavar="SHEET", help="a build sheet, TOML or JSON; - is the standard input")
    assess.add_argument("finding", nargs="?", metavar="FINDING", help="only the finding of this path, or those whose path begins so, with work and tolerance")
    assess.add_argument("--all", action="store_true", help="with every computed value, and every finding that is not known")
    assess.add_argument("--work", action="store_true", help="with the work behind each finding")
    assess.add_argument("--json", action="store_true", help="as JSON, as written and in coherent SI; with --compare a list of the two")
    assess.add_argument("--markdown", action="store_true", help="as a table in Markdown")
    assess.add_argument("--csv", action="store_true", help="as a table with commas")
    assess.add_argument("--compare", metavar="OTHER", help="what differs from another sheet")
    _units(assess)
    _page(assess)

    keys = commands.add_parser("keys", help="the tables of a sheet, or the lines for a word of the trade")
    keys.add_argument("word", nargs="*", metavar="WORD", help="a table, a part or a measure: shock, track bar, ride frequency")
    _units(keys)
    _page(keys)

    compare = commands.add_parser("compare", help="two sheets side by side: the findings that differ")
    compare.add_argument("sheet", metavar="A")
    compare.add_argument("other", metavar="B")
    _units(compare)
    _page(compare)

    what_if = commands.add_parser("what-if", help="what changes with other values of some lines")
    what_if.add_argument("sheet", metavar="SHEET")
    what_if.add_argument("change", nargs="+", metavar="LINE=VALUE", help='a value, several ("a,b"), each with a tolerance if it has one ("507 lbf/in +/- 3 %%"), or a range ("from:to:count"); every value of a line meets every value of the others')
    what_if.add_argument("--output", action="append", metavar="PATH", help="a line, or a finding with .value, .margin or .verdict, as a column of a table; a finding alone gives its verdict")
    what_if.add_argument("--side-by-side", action="store_true", help="the values of several lines go together, the first with the first")
    what_if.add_argument("--csv", action="store_true", help="all rows as a table with commas")
    _units(what_if)
    _page(what_if)

    choose = commands.add_parser("choose", help="parts of a price list that meet requirements", epilog="Exit code 2: no combination meets them all.")
    choose.add_argument("sheet", metavar="SHEET")
    choose.add_argument("prices", metavar="PRICES", help="a price list: .csv, .toml, .json or .parquet")
    choose.add_argument(
        "--require", action="append", metavar="FINDING",
        help='a finding that must meet, or a requirement: "cost <= 7000", "margins >= 1.3", "no finding worse", "no finding short"; without --require it is "no finding short"',
    )
    _page(choose)

    sensitivity = commands.add_parser("sensitivity", help="which tolerances move the margin of a finding")
    sensitivity.add_argument("sheet", metavar="SHEET")
    sensitivity.add_argument("finding", metavar="FINDING")
    _units(sensitivity)
    _page(sensitivity)

    chances = commands.add_parser("chances", help="how sure the verdicts are within the tolerances")
    chances.add_argument("sheet", metavar="SHEET")
    chances.add_argument("--samples", type=int, default=10_000, metavar="N")
    chances.add_argument("--seed", type=int, default=0, metavar="N")
    _page(chances)

    commands.add_parser("schema", help="print the JSON Schema of a sheet, for editors")
    return made


COMMANDS: dict[str, Callable[[argparse.Namespace, argparse.ArgumentParser], int]] = {
    "new": _new,
    "assess": _assess,
    "keys": _keys,
    "compare": _compare,
    "what-if": _what_if,
    "choose": _choose,
    "sensitivity": _sensitivity,
    "chances": _chances,
    "schema": _schema,
}


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command and gives its exit code."""
    made = parser()
    given = made.parse_args(arguments)
    try:
        return COMMANDS[given.command](given, made)
    except Wrong as wrong:
        complain(wrong.text)
        return wrong.code
