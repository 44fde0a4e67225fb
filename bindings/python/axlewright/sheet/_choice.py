"""Price lists, and the parts that meet requirements."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from os import PathLike, fspath
from pathlib import Path
from typing import Any, Generic, Self, overload

from axlewright._brief import heading, html_table, text_of
from axlewright._extra import needed
from axlewright._native import PriceListHandle, Quantity, _printable, _short
from axlewright._table import Table
from axlewright.sheet._lines import flat_lines
from axlewright.sheet._shared import read_file
from axlewright.sheet._written import S, handle_of



@dataclass(frozen=True, slots=True, repr=False)
class Part:
    """A part for sale, and the lines of the sheet that it writes."""

    part: str
    kind: str
    #: In the money of the list.
    cost: float
    mass: Quantity
    lines: tuple[tuple[str, str], ...]

    def __str__(self) -> str:
        return _printable(f"{self.part} ({self.kind}): {self.cost:g}, {self.mass}")

    def __repr__(self) -> str:
        return f"<Part {self}>"


class PriceList(Sequence[Part]):
    """Parts for sale: `part`, `kind`, `cost`, `mass`, and a column for each path of the sheet that they write."""

    __slots__ = ("_handle", "_parts")

    def __init__(self, rows: Iterable[Mapping[str, Any]]) -> None:
        """From rows: dicts of text, numbers and quantities; `None` writes nothing. A refusal counts the first row as line 2.

        Tables may stand in each other, and what `tomllib` reads from a file, a mapping with the list `parts`, is taken, too.
        """
        if isinstance(rows, Mapping) and set(rows) == {"parts"}:
            rows = rows["parts"]
        if isinstance(rows, Mapping) or not isinstance(rows, Iterable):
            raise TypeError(f"rows: a list of mappings of columns to cells is wanted, not {type(rows).__name__}")
        lines = ",\n".join(json.dumps({key: _cell(value) for key, value in _cells(row) if value is not None}) for row in rows)
        self._set(PriceListHandle.from_text(f'{{"parts": [\n{lines}]}}'))

    def _set(self, handle: PriceListHandle) -> None:
        self._handle = handle
        self._parts = tuple(Part(part, kind, cost, mass, tuple(lines)) for part, kind, cost, mass, lines in handle.parts())

    @classmethod
    def _of(cls, handle: PriceListHandle) -> Self:
        made = object.__new__(cls)
        made._set(handle)
        return made

    @classmethod
    def from_csv(cls, text: str) -> Self:
        """Reads a table with commas: a first row with the names, then a part a row. An empty cell writes nothing."""
        return cls._of(PriceListHandle.from_csv(text_of("text", text)))

    @classmethod
    def from_toml(cls, text: str) -> Self:
        """Reads TOML, or JSON: a list `parts` of tables."""
        return cls._of(PriceListHandle.from_text(text_of("text", text)))

    @classmethod
    def from_arrow(cls, table: Any) -> Self:
        """Takes anything with the Arrow PyCapsule interface. A column of numbers says its unit in its name, `mass [kg]`, or as `unit` in the field's
        metadata, which counts first.

        Needs pyarrow.
        """
        pa = needed("pyarrow", "tables")

        made = pa.table(table)
        names = [_named(field.name) for field in made.schema]
        said = [(field.metadata or {}).get(b"unit", b"").decode() for field in made.schema]
        units = {name: unit or label for (name, label), unit in zip(names, said, strict=True)}
        rows = made.rename_columns([name for name, _ in names]).to_pylist()
        return cls(_with_units(row, units) for row in rows)

    @classmethod
    def from_parquet(cls, path: str | PathLike[str]) -> Self:
        """Reads a Parquet file; see `from_arrow`. Needs pyarrow."""
        pq = needed("pyarrow.parquet", "tables")

        return cls.from_arrow(pq.read_table(fspath(path)))

    @classmethod
    def from_pandas(cls, frame: Any) -> Self:
        """Takes a `pandas.DataFrame`. A column of numbers says its unit in its name, `front.spring.rate [lbf/in]`, or in
        `attrs["units"]`.
        """
        if not hasattr(frame, "to_dict"):
            raise TypeError(f"frame: a pandas.DataFrame is wanted, not {type(frame).__name__}")
        names: dict[Any, str] = {}
        units = dict(frame.attrs.get("units", {}))
        for label in frame.columns:
            names[label], unit = _named(label)
            units[names[label]] = unit or units.get(label, "")
        records = frame.rename(columns=names).to_dict("records")
        return cls(_with_units({key: _present(cell) for key, cell in row.items()}, units) for row in records)

    @classmethod
    def load(cls, path: str | PathLike[str]) -> Self:
        """Reads a file by its ending: `.csv`, `.toml`, `.json` or `.parquet`."""
        ending = Path(path).suffix.lower()
        if ending == ".parquet":
            return cls.from_parquet(path)
        if ending == ".csv":
            return read_file(path, cls.from_csv)
        if ending in (".toml", ".json"):
            return read_file(path, cls.from_toml)
        raise ValueError(f"{_short(fspath(path))} ends in '{_short(ending)}'; a price list ends in .csv, .toml, .json or .parquet")

    @overload
    def __getitem__(self, at: int | str) -> Part: ...
    @overload
    def __getitem__(self, at: slice) -> tuple[Part, ...]: ...
    def __getitem__(self, at: int | str | slice) -> Part | tuple[Part, ...]:
        """A part by its place, or the first of its name."""
        if isinstance(at, str):
            for part in self._parts:
                if part.part == at:
                    return part
            raise KeyError(f"no part is called '{_short(at)}'")
        if isinstance(at, slice) or hasattr(at, "__index__"):
            return self._parts[at]
        raise TypeError(f"a part has a name and a place, not {type(at).__name__}")

    def _ipython_key_completions_(self) -> list[str]:
        return [part.part for part in self._parts]

    def __iter__(self) -> Iterator[Part]:
        return iter(self._parts)

    def __len__(self) -> int:
        return len(self._parts)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, PriceList) and self._parts == other._parts

    def __hash__(self) -> int:
        return hash(self._parts)

    def __reduce__(self) -> tuple[Any, ...]:
        rows = [
            {"part": one.part, "kind": one.kind, "cost": one.cost, "mass": one.mass, **dict(one.lines)} for one in self
        ]
        return type(self), (rows,)

    def __repr__(self) -> str:
        return _printable(f"<PriceList of {len(self)} parts: {', '.join(dict.fromkeys(one.kind for one in self))}>")

    def _repr_html_(self) -> str:
        rows = (
            (one.part, one.kind, f"{one.cost:g}", one.mass, "; ".join(f"{path} = {text}" for path, text in one.lines))
            for one in self
        )
        return html_table(("part", "kind", "cost", "mass", "writes"), rows)


@dataclass(frozen=True, slots=True)
class Worse:
    """A finding with a worse verdict than on the sheet as it is."""

    finding: str
    #: The verdict as it is, and with the parts.
    now: str
    then: str

    def __str__(self) -> str:
        return f"{self.finding}: {self.then}, {self.now} now"


@dataclass(frozen=True, slots=True, repr=False)
class Choice:
    """One part of each kind."""

    parts: tuple[Part, ...]
    #: Their cost and mass together.
    cost: float
    mass: Quantity
    #: Findings that are worse with them than on the sheet as it is.
    worse: tuple[Worse, ...] = ()

    @property
    def lines(self) -> dict[str, str]:
        """The lines that the parts write on the sheet; `sheet.fit(choice)` also drops readings of the parts that they replace."""
        return {path: text for part in self.parts for path, text in part.lines}

    def __getitem__(self, kind: str) -> Part:
        for part in self.parts:
            if part.kind == kind:
                return part
        raise KeyError(f"no part of the kind '{_short(text_of('kind', kind))}'; there are {', '.join(_short(part.kind) for part in self.parts)}")

    def _ipython_key_completions_(self) -> list[str]:
        return [part.kind for part in self.parts]

    def __str__(self) -> str:
        return _printable(f"{', '.join(part.part for part in self.parts)}: {self.cost:g}, {self.mass}")

    def __repr__(self) -> str:
        return f"<Choice {self}>"


@dataclass(frozen=True, slots=True, repr=False)
class Rejected:
    """A part in no combination, with the reason."""

    part: Part
    why: str

    def __str__(self) -> str:
        return _printable(f"{self.part.part}: {self.why}")

    def __repr__(self) -> str:
        return f"<Rejected {self}>"


@dataclass(frozen=True, slots=True, repr=False)
class ChosenOf(Generic[S]):
    """The possible choices; `Chosen` says for which class of sheet."""

    sheet: S
    requirements: tuple[str, ...]
    #: The kinds of part, in the order of the list.
    kinds: tuple[str, ...]
    #: Combinations that meet every requirement, up to the limit, and whether there are more.
    feasible: tuple[Choice, ...]
    more: bool
    #: Combinations to which no other is both cheaper and lighter, the cheapest first.
    front: tuple[Choice, ...]
    rejected: tuple[Rejected, ...]
    #: Requirements that bind nothing because their subject is not known.
    not_known: tuple[str, ...]
    #: Written readings that count for no combination: each was taken on a part that is chosen anew.
    dropped: tuple[str, ...]
    #: Number of evaluations of requirements.
    evaluated: int

    @classmethod
    def _of(
        cls,
        sheet: S,
        prices: PriceList,
        requirements: tuple[str, ...],
        limit: int,
        progress: Callable[[int], object] | None,
    ) -> Self:
        if not isinstance(prices, PriceList):
            raise TypeError(f"prices: a PriceList is wanted, not {type(prices).__name__}")
        made = handle_of(sheet).choose(prices._handle, list(requirements), limit, progress)
        kinds, feasible, more, front, rejected, not_known, dropped, evaluated = made

        def choices(
            rows: list[tuple[list[int], float, Quantity, list[tuple[str, str, str]]]],
        ) -> tuple[Choice, ...]:
            return tuple(
                Choice(tuple(prices[at] for at in places), cost, mass, tuple(Worse(*one) for one in worse))
                for places, cost, mass, worse in rows
            )

        return cls(
            sheet=sheet,
            requirements=requirements,
            kinds=tuple(kinds),
            feasible=choices(feasible),
            more=more,
            front=choices(front),
            rejected=tuple(Rejected(prices[place], why) for place, why in rejected),
            not_known=tuple(not_known),
            dropped=tuple(dropped),
            evaluated=evaluated,
        )

    @property
    def cheapest(self) -> Choice | None:
        """The cheapest combination, the lighter one of equals; `None` if nothing meets every requirement."""
        return self.front[0] if self.front else None

    @property
    def lightest(self) -> Choice | None:
        """The lightest combination, the cheaper one of equals."""
        return self.front[-1] if self.front else None

    def table(self, of: Sequence[Choice] | None = None) -> Table:
        """Combinations as a table: those that are feasible, or others such as `front`."""
        choices = self.feasible if of is None else of
        if not all(isinstance(choice, Choice) for choice in choices):
            raise TypeError("of: a list of combinations is wanted, such as chosen.front")
        columns: dict[str, Any] = {}
        for place, kind in enumerate(self.kinds):
            columns[kind] = [choice.parts[place].part for choice in choices]
        columns["cost"] = [float(choice.cost) for choice in choices]
        masses = [choice.mass for choice in choices]
        columns["mass"] = Quantity(masses) if masses else Quantity([], "kg")
        return Table({name: column if isinstance(column, Quantity) else _column(column) for name, column in columns.items()})

    def rejected_table(self) -> Table:
        """The parts in no combination, with the reason, as a table."""
        rows = [(one.part.part, one.part.kind, one.why) for one in self.rejected]
        return Table({name: _column([row[at] for row in rows]) for at, name in enumerate(("part", "kind", "why"))})

    def __repr__(self) -> str:
        more = " and more" if self.more else ""
        return f"<Chosen of {self.sheet.name!r}: {len(self.feasible)}{more} feasible, {len(self.rejected)} rejected>"

    def __str__(self) -> str:
        count = f"{len(self.feasible)}{' and more' if self.more else ''} feasible"
        lines = [f"{count}; cheapest: {self.cheapest or 'none'}; lightest: {self.lightest or 'none'}"]
        lines += [_printable(f"not known: {one}") for one in self.not_known]
        lines += [f"left out, of a part that is replaced: {one}" for one in self.dropped]
        lines += [f"worse with the cheapest: {one}" for one in (self.cheapest.worse if self.cheapest else ())]
        return "\n".join([*lines, *(f"rejected: {one}" for one in self.rejected)])

    def _repr_html_(self) -> str:
        from html import escape

        page = [heading(self.sheet.name, "; ".join(self.requirements))]
        marks = {id(self.cheapest): "cheapest", id(self.lightest): "lightest"}
        if self.cheapest is self.lightest:
            marks = {id(self.cheapest): "cheapest and lightest"}
        rows = [
            (
                marks.get(id(choice), ""),
                *(part.part for part in choice.parts),
                f"{choice.cost:g}",
                choice.mass,
                "; ".join(map(str, choice.worse)) or None,
            )
            for choice in self.front
        ]
        more = "and more " if self.more else ""
        page.append(f"<p>{len(self.feasible)} {more}feasible; to these no other is both cheaper and lighter:</p>")
        page.append(html_table(("", *self.kinds, "cost", "mass", "worse than now"), rows))
        page += [f"<p>Not known: {escape(one)}</p>" for one in self.not_known]
        if self.dropped:
            page.append(f"<p>Left out, of a part that is replaced: {escape(', '.join(self.dropped))}</p>")
        if self.rejected:
            rejected = ((one.part.part, one.part.kind, one.why) for one in self.rejected)
            page.append(f"<p><b>Rejected</b></p>{html_table(('part', 'kind', 'why'), rejected)}")
        return "".join(page)


def _column(values: list[Any]) -> Any:
    import numpy as np

    return np.array(values, dtype=float if values and isinstance(values[0], float) else object)


def _cells(row: Any) -> Iterable[tuple[str, Any]]:
    if not hasattr(row, "items"):
        raise TypeError(f"rows: each is wanted as a mapping of columns to cells, not {type(row).__name__}")
    return flat_lines(row)


def _cell(value: Any) -> object:
    """A cell of a row in the form of JSON."""
    if isinstance(value, Quantity):
        return repr(value)
    if hasattr(value, "item"):
        value = value.item()
    if isinstance(value, str | float | int) and not isinstance(value, bool):
        return value
    raise TypeError(f"{_short(repr(value))} is neither text, a number nor a quantity")


def _named(label: Any) -> tuple[str, str]:
    """The name of a column and the unit behind it: `front.spring.rate [lbf/in]`."""
    name, _, unit = str(label).partition(" [")
    return name, unit.removesuffix("]")


def _present(cell: Any) -> Any:
    """A cell of a frame; nothing if it is missing."""
    return None if cell is None or cell != cell or type(cell).__name__ == "NAType" else cell


def _with_units(row: Mapping[str, Any], units: Mapping[str, str]) -> dict[str, Any]:
    """A row whose numbers carry the units of their columns."""

    def cell(name: str, value: Any) -> Any:
        unit = units.get(name, "")
        if value is None or isinstance(value, str) or unit in ("", "1"):
            return value
        return _cell(Quantity(float(value), unit))

    return {name: cell(name, value) for name, value in row.items()}
