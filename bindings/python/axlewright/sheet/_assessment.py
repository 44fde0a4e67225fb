"""Answers of a sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Generic, Literal, TypeAlias, overload

from axlewright._brief import heading, html_table, line, text_of
from axlewright._brief import number as _shown
from axlewright._native import AssessmentHandle, Quantity, _printable, _sheet_compare
from axlewright.sheet._shared import SheetValue, whole_number
from axlewright.sheet._written import S, handle_of, path_of

Verdict: TypeAlias = Literal["meets"] | Literal["tight"] | Literal["short"] | Literal["not known"] | Literal["does not apply"]
System: TypeAlias = Literal["metric"] | Literal["us"]
#: A quantity; a plain number of a ratio. Type checkers take it for a quantity, or for anything.
Number: TypeAlias = Quantity | Any


@dataclass(frozen=True, slots=True)
class Function:
    """A function behind an answer: path, revision of its coefficients, source."""

    path: str
    revision: int
    source: str


@dataclass(frozen=True, slots=True, repr=False)
class Finding:
    """The answer to one question. A number is `None` if it is not known, or if there is no such limit."""

    #: Its name: `front.spring_bind`.
    path: str
    #: The system that asks.
    system: str
    question: str
    #: The value that is held against the limit.
    value: Number | None
    #: Lower and upper limit.
    low: Number | None
    high: Number | None
    #: `ratio`, `difference` or `place in a band`.
    form: str
    margin: Number | None
    #: The wanted margin.
    wanted: Number | None
    #: Standard uncertainty of the margin from the tolerances, to first order.
    uncertainty: Number | None
    #: The margin with every tolerance counted against it: each as far as its bound reaches, or two standard deviations. The verdict stands on it.
    worst: Number | None
    verdict: Verdict
    #: True if it can hurt someone, and the caution for that case.
    safety: bool
    caution: str
    #: The lines, written or assumed, on which it rests. If it does not apply: the parts that are `none`, or the deciding choice.
    rests_on: tuple[str, ...]
    functions: tuple[Function, ...]
    #: Lines to write before any margin is enough, as sentences: until then the wanted margin is without limit.
    write: tuple[str, ...]
    #: Lines that are missing; lines that stay empty, with the reason; both as a sentence.
    needs: tuple[str, ...]
    refused: tuple[tuple[str, str], ...]
    missing: str

    def __str__(self) -> str:
        if self.verdict == "not known":
            return f"{self.path}: not known; {self.missing}"
        if self.verdict == "does not apply":
            return f"{self.path}: does not apply; see {', '.join(self.rests_on)}"
        margin, worst = _shown(self.margin), _shown(self.worst)
        least = "" if worst == margin else f", at worst {worst}"
        return f"{self.path}: {self.verdict}; {_shown(self.value)}, margin {margin}{least}"

    def __repr__(self) -> str:
        return _printable(f"<Finding {self}>")

    def _repr_html_(self) -> str:
        rows = [
            ("question", self.question),
            ("verdict", self.verdict.upper()),
            ("value", _shown(self.value)),
            ("lower limit", None if self.low is None else _shown(self.low)),
            ("upper limit", None if self.high is None else _shown(self.high)),
            (f"margin ({self.form})", _shown(self.margin)),
            ("margin at worst", _shown(self.worst)),
            ("wanted margin", "no margin is enough yet" if self.write else _shown(self.wanted)),
            ("to write", "; ".join(self.write)),
            ("uncertainty of the margin", None if self.uncertainty is None else _shown(self.uncertainty)),
            ("rests on", ", ".join(self.rests_on)),
            ("missing", self.missing),
            ("caution", self.caution if self.safety else ""),
        ]
        return heading(self.path) + html_table(("", ""), [row for row in rows if row[1]])


@dataclass(frozen=True, slots=True, repr=False)
class Assumption:
    """A value that nobody wrote, with the ground for assuming it."""

    path: str
    value: Number | None
    ground: str

    def __repr__(self) -> str:
        return _printable(f"<Assumption {self.path} = {_shown(self.value)}: {self.ground}>")


@dataclass(frozen=True, slots=True, repr=False)
class Contradiction:
    """A written line that contradicts other written lines: one of them is wrong."""

    path: str
    written: Number | None
    #: The value that follows from the other lines.
    follows: Number | None
    #: Allowed difference of the two: all tolerances together, 1 % for a line without one.
    allowed: Number | None
    #: The function or step of that value, and the written lines behind it.
    by: str
    lines: tuple[str, ...]
    text: str

    def __str__(self) -> str:
        return self.text

    def __repr__(self) -> str:
        return _printable(f"<Contradiction {self.text}>")


@dataclass(frozen=True, slots=True, repr=False)
class Sensitivity:
    """Effect of one tolerance on the margin of a finding; as text, it says both."""

    #: The finding whose margin it is.
    finding: str
    #: The written line and its tolerance.
    path: str
    tolerance: Number | None
    #: Change of the margin of the finding per one tolerance, with its sign.
    margin_change: Number | None
    #: Its share of the variance of the margin, to first order.
    share: float
    #: All of it in words.
    text: str

    def __str__(self) -> str:
        return self.text

    def __repr__(self) -> str:
        return _printable(f"<Sensitivity {self}>")


@dataclass(frozen=True, slots=True, repr=False)
class Chance:
    """Certainty of a verdict within the tolerances."""

    path: str
    verdict: Verdict
    #: Share of the samples that have another verdict.
    turns: float
    #: Shares of each verdict.
    meets: float
    tight: float
    short: float
    not_known: float
    does_not_apply: float
    #: Mean and standard deviation of the margin over the samples in which it is known.
    mean: Number | None
    deviation: Number | None

    def __repr__(self) -> str:
        return line("Chance", ((name, getattr(self, name)) for name in self.__slots__), "its fields")


class AssessmentOf(Sequence[Finding], Generic[S]):
    """The findings of one sheet; `Assessment` says which class of sheet."""

    __slots__ = ("_findings", "_handle", "_sheet")

    def __init__(self, sheet: S) -> None:
        self._sheet = sheet
        self._handle: AssessmentHandle = handle_of(sheet).assess()
        self._findings: tuple[Finding, ...] | None = None

    @property
    def sheet(self) -> S:
        """The sheet that was assessed."""
        return self._sheet

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The answers, in the order of the systems."""
        if self._findings is None:
            self._findings = tuple(map(_finding, self._handle.findings()))
        return self._findings

    @property
    def severity(self) -> int:
        """The worst of the answers: 0 meets, 1 tight, 2 short; a safety finding that is not known counts as tight, and
        what does not apply as nothing.

        Not a verdict of the vehicle: it is for whoever has to stop at it.
        """
        return self._handle.severity()

    @property
    def stamp(self) -> str:
        """The library that made it, and the hash of the sheet."""
        return self._handle.stamp()

    @property
    def assumed(self) -> tuple[Assumption, ...]:
        """Assumed values on which some answer rests."""
        return tuple(Assumption(*one) for one in self._handle.assumed())

    @property
    def contradictions(self) -> tuple[Contradiction, ...]:
        """Written lines that contradict other written lines; a finding that rests on one is no better than tight."""
        rows = self._handle.contradictions(self._sheet.system)
        return tuple(
            Contradiction(path, written, follows, allowed, by, tuple(lines), text)
            for path, (written, follows, allowed), (by, lines, text) in rows
        )

    def value(self, path: str) -> SheetValue | None:
        """The value of any line, written or not; `None` if it is not known."""
        return self._handle.value(path_of(path))

    def text(
        self,
        system: System | None = None,
        *,
        work: bool = False,
        all: bool = False,
        width: int = 80,
        colour: bool = False,
    ) -> str:
        """The report: a summary of three lines, findings of safety first, a line a finding, no line wider than `width`.

        Without a system, numbers are in the units in which the sheet writes such lines. `all` lists every computed value,
        too; `work` shows how each finding was computed.
        """
        return self._handle.report(system, width, all, work, colour)

    def text_on(self, name: str, system: System | None = None, *, width: int = 80, colour: bool = False) -> str:
        """The findings of this name, or whose path begins with it: question, numbers, tolerance, what is missing, work."""
        return self._handle.report_on(text_of("name", name, "front.frequency"), system, width, colour)

    def to_markdown(self, system: System | None = None) -> str:
        """The findings as a table in Markdown, those of safety first; numbers as a person reads them."""
        return self._handle.table("markdown", system)

    def to_csv(self, system: System | None = None) -> str:
        """The findings as a table with commas, those of safety first; numbers as a person reads them."""
        return self._handle.table("csv", system)

    @property
    def measure_next(self) -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
        """Missing lines, each group with the findings that it answers; the group that answers most for its lines first."""
        return tuple((tuple(lines), tuple(answers)) for lines, answers in self._handle.measure_next())

    def work(self, path: str, system: System | None = None) -> str:
        """The work behind a finding: each formula, the numbers put in with their units, the result and the source."""
        return self._handle.work(self._one(path), system or self._sheet.system)

    def compare(self, other: AssessmentOf[Any], system: System | None = None) -> str:
        """Two sheets side by side, at 80 columns: every finding whose value, margin or verdict differs."""
        if not isinstance(other, AssessmentOf):
            raise TypeError(f"other: an Assessment is wanted, as sheet.assess() gives, not {type(other).__name__}")
        return _sheet_compare([("A", self._handle), ("B", other._handle)], system, 80, False)

    def sensitivity(self, path: str) -> tuple[Sensitivity, ...]:
        """Influence of each tolerance on the margin of a finding, the largest first."""
        rows = self._handle.sensitivity(self._one(path), self._sheet.system)
        return tuple(Sensitivity(*row) for row in rows)

    def chances(
        self, samples: int = 10_000, seed: int = 0, *, progress: Callable[[int], object] | None = None
    ) -> tuple[Chance, ...]:
        """The chance that each verdict turns within the tolerances, from this many samples of a seed.

        Inputs are independent; a bound is rectangular, a standard deviation normal. The same seed gives the same samples
        on every machine. `progress` is told how many samples are done; an interrupt stops the work.
        """
        samples, seed = whole_number("samples", samples), whole_number("seed", seed)
        rows = self._handle.chances(samples, seed, progress)
        return tuple(
            Chance(path, verdict, turns, *shares, mean, deviation) for path, verdict, turns, shares, mean, deviation in rows
        )

    def to_json(self) -> str:
        """The whole assessment as JSON; numbers in coherent SI."""
        return self._handle.to_json()

    @overload
    def __getitem__(self, at: int | str) -> Finding: ...
    @overload
    def __getitem__(self, at: slice) -> tuple[Finding, ...]: ...
    def __getitem__(self, at: int | str | slice) -> Finding | tuple[Finding, ...]:
        if isinstance(at, str):
            for finding in self.findings:
                if finding.path == at:
                    return finding
            raise KeyError(self._handle.no_finding(at))
        if isinstance(at, slice) or hasattr(at, "__index__"):
            return self.findings[at]
        raise TypeError(f'a finding has a path like "front.frequency" and a place, not {type(at).__name__}')

    def _one(self, path: str) -> str:
        """The path of one finding, which may be given by its place."""
        if isinstance(path, slice):
            raise TypeError("path: one finding is wanted, not a slice")
        return self[path].path

    def _ipython_key_completions_(self) -> list[str]:
        return [finding.path for finding in self.findings]

    def __iter__(self) -> Iterator[Finding]:
        return iter(self.findings)

    def __len__(self) -> int:
        return len(self.findings)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, AssessmentOf) and self._sheet == other._sheet

    def __hash__(self) -> int:
        return hash(self._sheet)

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self._sheet,)

    def __repr__(self) -> str:
        words: tuple[Verdict, ...] = ("short", "tight", "meets", "not known", "does not apply")
        counts = ((sum(finding.verdict == word for finding in self), word) for word in words)
        return f"<Assessment of {self._sheet.name!r}: {', '.join(f'{count} {word}' for count, word in counts)}>"

    def __str__(self) -> str:
        return self.text()

    def _repr_html_(self) -> str:
        from html import escape

        head, *cells = self._handle.rows(None)
        said = {row["finding"]: row for row in (dict(zip(head, one, strict=True)) for one in cells)}
        questions = {finding.path: finding.question for finding in self}
        numbers = ("value", "limit", "margin", "at worst", "wanted")
        head = ["verdict", "finding", "question", *numbers]
        rows = [
            (verdict.upper(), path, questions[path], *(row[name] or "not known" for name in numbers))
            for verdict in ("short", "tight", "meets")
            for path, row in said.items()
            if row["verdict"] == verdict
        ]
        page = [heading(self._sheet.name, self.stamp), html_table(head, rows)]
        graded = ("short", "tight", "meets")
        told: dict[str, list[str]] = {}
        for f in self:
            if f.safety and f.verdict in graded:
                told.setdefault(f.caution, []).append(f.path)
        cautions = [(", ".join(paths), caution) for caution, paths in told.items()]
        unknown = [
            (f.path, said[f.path]["value"], f.missing, "safety: take it as no better than tight" if f.safety else "")
            for f in self
            if f.verdict == "not known"
        ]
        apart = [(f.path, ", ".join(f.rests_on)) for f in self if f.verdict == "does not apply"]
        write = [(f.path, "; ".join(f.write)) for f in self if f.write]
        asked = {ground for f in self for ground in f.write}
        assumed = [(a.path, _shown(a.value), a.ground) for a in self.assumed if a.ground not in asked]
        remarks = [(remark,) for remark in self._sheet.remarks]
        wrong = [(c.path, c.text) for c in self.contradictions]
        for title, names, lines in (
            ("Cautions", ("findings", "caution"), cautions),
            ("Not known", ("finding", "value", "what is missing", ""), unknown),
            ("Does not apply, because the sheet says so", ("finding", "by what"), apart),
            ("Contradicted, so that one of the written lines is wrong", ("line", "by what"), wrong),
            ("Remarks", ("on the sheet",), remarks),
            ("To write, before these can be better than tight", ("finding", "what to write"), write),
            ("Assumed, because nobody wrote it", ("line", "value", "ground"), assumed),
        ):
            if lines:
                page.append(f"<p><b>{escape(title)}</b></p>{html_table(names, lines)}")
        return "".join(page)


def _finding(row: Any) -> Finding:
    (path, system, question, form), numbers, (verdict, safety, caution), (rests_on, functions, write), lacking = row
    value, low, high, margin, wanted, uncertainty, worst = numbers
    needs, refused, missing = lacking
    return Finding(
        path=path,
        system=system,
        question=question,
        value=value,
        low=low,
        high=high,
        form=form,
        margin=margin,
        wanted=wanted,
        uncertainty=uncertainty,
        worst=worst,
        verdict=verdict,
        safety=safety,
        caution=caution,
        rests_on=tuple(rests_on),
        functions=tuple(Function(*one) for one in functions),
        write=tuple(write),
        needs=tuple(needs),
        refused=tuple(refused),
        missing=missing,
    )
