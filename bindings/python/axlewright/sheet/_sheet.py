"""The sheet itself."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from importlib import import_module
from os import PathLike, fspath
from typing import TYPE_CHECKING, Any, Literal, Self, TypeAlias, TypeVar

from axlewright._native import DocumentError, Quantity, SheetHandle
from axlewright._model import Model
from axlewright._types import QuantityLike

if TYPE_CHECKING:
    from axlewright.sheet._assessment import Assessment
    from axlewright.sheet._choice import Choice, Chosen, PriceList
    from axlewright.sheet._sweep import Sweep

T = TypeVar("T")
#: Content of a line: a quantity, a pure number, or the text of a choice or a marking.
SheetValue: TypeAlias = Quantity | float | str
#: Receives the number of finished rows and of all rows; `True` draws a bar.
Progress: TypeAlias = Callable[[int, int], object] | bool | None


class Sheet(Mapping[str, SheetValue]):
    """A build sheet. It maps the path of each written line to its value, and never changes.

    A value is text with its unit, `"225 lbf/in +/- 3 %"`, a quantity of ours or of the units library pint. A line that is
    not written follows from others or is missing; nothing is guessed.
    """

    __slots__ = ("_handle",)
    _handle: SheetHandle

    def __new__(cls, lines: Mapping[str, QuantityLike] | None = None, *, name: str = "") -> Self:
        """An empty sheet, or one with these lines: `Sheet({"front.spring.rate": "225 lbf/in"})`."""
        import json

        empty = cls._of(SheetHandle.from_text(json.dumps({"version": 1, "name": name})))
        return empty.with_(lines) if lines else empty

    @classmethod
    def _of(cls, handle: SheetHandle) -> Self:
        made = object.__new__(cls)
        object.__setattr__(made, "_handle", handle)
        return made

    @classmethod
    def from_text(cls, text: str) -> Self:
        """Reads TOML, or JSON. Unknown keys are refused with their line, and the nearest key is named."""
        return cls._of(SheetHandle.from_text(text))

    @classmethod
    def load(cls, path: str | PathLike[str]) -> Self:
        """Reads a file of TOML or JSON; a refusal names the file, the line and the key."""
        return read_file(path, cls.from_text)

    @property
    def name(self) -> str:
        """Name of the sheet."""
        return self._handle.name()

    @property
    def hash(self) -> str:
        """Content name: the first 128 bits of the SHA-256 of `to_json()`, in hexadecimal digits."""
        return self._handle.hash()

    @property
    def system(self) -> Literal["metric", "us"]:
        """The shop's system used on more of its lines; its answers are shown in these units."""
        return self._handle.system()

    def text(self, path: str) -> str:
        """A line as it is written, with its tolerance: `"225 lbf/in +/- 3 %"`."""
        words = self._handle.text(path)
        if words is None:
            raise KeyError(f"{path} is not written")
        return words

    def with_(self, lines: Mapping[str, QuantityLike] | None = None, /, **more: QuantityLike) -> Self:
        """This sheet with some lines changed: `sheet.with_({"front.spring.rate": "250 lbf/in"})`.

        `None` takes a line out.
        """
        return self._of(self._handle.with_lines([*(lines or {}).items(), *more.items()]))

    def fit(self, choice: Choice) -> Self:
        """This sheet with the parts of a choice: `sheet.fit(chosen.cheapest)`.

        Writes their lines, and leaves out every reading that was taken on a part that they replace. `remarks` tells which;
        measure them again.
        """
        return self._of(self._handle.fit(list(choice.lines.items())))

    def to_toml(self) -> str:
        """The sheet as TOML, each value as it was written; equal sheets give equal bytes."""
        return self._handle.to_toml()

    def to_json(self) -> str:
        """The sheet as JSON, each value as it was written; equal sheets give equal bytes."""
        return self._handle.to_json()

    def model(self, path: str) -> Model:
        """A model that the sheet holds, ready to draw or to ask: `sheet.model("front.suspension").table(...)`.

        Lines that are written stand in it as they are written, their tolerances left aside; others as they follow or are
        assumed. `elsewhere` tells which.
        """
        kind, document, _ = self._handle.model(path)
        system, name = kind.split(".")
        made: Model = getattr(import_module(f"axlewright.{system}"), name).from_text(document)
        return made

    def elsewhere(self, path: str) -> dict[str, tuple[str, Literal["written", "computed", "assumed"]]]:
        """The fields of a model that are not in its own table or that nobody wrote: their line, and its origin."""
        _, _, elsewhere = self._handle.model(path)
        return {field: (line, origin) for field, line, origin in elsewhere}

    @property
    def remarks(self) -> list[str]:
        """Remarks on the document: keys that were read under an old name."""
        return self._handle.remarks()

    def assess(self) -> Assessment:
        """Walks the sheet through everything that the systems compute and ask."""
        from axlewright.sheet._assessment import Assessment

        return Assessment(self)

    def what_if(
        self,
        lines: Mapping[str | tuple[str, ...], Any],
        outputs: Sequence[str] = (),
        *,
        grid: bool = True,
        threads: int | None = None,
        progress: Progress = None,
    ) -> Sweep:
        """Lines over values and the outputs that follow, computed on demand.

        `lines` maps a path to a list of texts or quantities, an array of quantities, or a `span`; a tuple of paths to a list
        of tuples, whose lines change together. Every value meets every other, the last line fastest; with `grid=False`
        they go side by side. `outputs` are paths of lines, or of findings followed by `.value`, `.margin` or `.verdict`;
        without any, the margin and verdict of every finding. On all processors, or on so many `threads`.

        >>> sheet = Sheet({"engine.red_line": "4500 rpm", "engine.piston_speed_limit": "15 m/s"})
        >>> sweep = sheet.what_if({"engine.stroke": ["90 mm", "95 mm"]}, ["engine.pistons.margin"])
        >>> sweep.table()["engine.pistons.margin"].to("m/s").round(3).tolist()
        [1.5, 0.75]
        """
        from axlewright.sheet._sweep import Sweep, axes_of

        return Sweep(self, axes_of(lines), tuple(outputs), grid=grid, threads=threads, progress=progress)

    def choose(
        self,
        prices: PriceList,
        requirements: Iterable[str],
        *,
        limit: int = 1000,
        progress: Callable[[int], object] | None = None,
    ) -> Chosen:
        """Parts of a price list, one of each kind, that meet every requirement on this sheet.

        A requirement is text: `"1.2 Hz <= front.natural_frequency <= 1.4 Hz"`, `"cost <= 7000"`, `"mass <= 60 kg"`,
        `"margins >= 1.3"`, `"front.coil_bind.verdict = meets"`. At most `limit` combinations are listed; the cheapest, the
        lightest and the front are found among all.
        """
        from axlewright.sheet._choice import Chosen

        return Chosen._of(self, prices, tuple(requirements), limit, progress)

    def __getitem__(self, path: str) -> SheetValue:
        value = self._handle.value(path)
        if value is None:
            raise KeyError(f"{path} is not written; what follows from other lines is in assess().value({path!r})")
        return value

    def __contains__(self, path: object) -> bool:
        return path in self._handle.paths()

    def __iter__(self) -> Iterator[str]:
        return iter(self._handle.paths())

    def __len__(self) -> int:
        return len(self._handle.paths())

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError("a Sheet never changes; with_ gives another one")

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sheet) and self.to_json() == other.to_json()

    def __hash__(self) -> int:
        return hash(self.to_json())

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self).from_text, (self.to_json(),)

    def __repr__(self) -> str:
        return f"<Sheet {self.name!r}: {len(self)} lines, {self.hash}>"

    def __str__(self) -> str:
        return self.to_toml()

    def _repr_html_(self) -> str:
        lines = ((path, self._handle.text(path)) for path in self)
        return f"{heading(self.name, self.hash)}{html_table(('line', 'written'), lines)}"


def read_file(path: str | PathLike[str], read: Callable[[str], T]) -> T:
    """The reading of a text file; a refusal names the file."""
    name = fspath(path)
    try:
        with open(path, encoding="utf-8-sig", newline="") as file:
            return read(file.read())
    except UnicodeDecodeError as error:
        refused = DocumentError(f"{name}: not text in UTF-8: byte {error.start} is 0x{error.object[error.start]:02x}")
        refused.file = name
        raise refused from None
    except DocumentError as error:
        refused = DocumentError(f"{name}: {error}")
        refused.line, refused.key, refused.file, refused.faults = error.line, error.key, name, error.faults
        raise refused from None


def heading(name: str, hash: str) -> str:
    from html import escape

    return f"<p><b>{escape(name)}</b> <code>{escape(hash)}</code></p>"


def html_table(head: Iterable[str], rows: Iterable[Iterable[object]]) -> str:
    """A table for a notebook; everything in it is escaped."""
    from html import escape

    def line(cell: str, values: Iterable[object]) -> str:
        texts = (escape("-" if value is None else str(value)) for value in values)
        cells = (f'<{cell} style="text-align: left">{text}</{cell}>' for text in texts)
        return f"<tr>{''.join(cells)}</tr>"

    body = "".join(line("td", row) for row in rows)
    return f"<table><thead>{line('th', head)}</thead><tbody>{body}</tbody></table>"
