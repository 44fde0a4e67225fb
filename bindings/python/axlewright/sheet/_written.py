"""The written lines of a sheet."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from importlib import import_module
from os import PathLike
from typing import TYPE_CHECKING, Any, Literal, Never, Self, TypeVar, overload

from axlewright._brief import heading, html_table, text_of
from axlewright._model import Model
from axlewright._native import DocumentError, SheetHandle, _short
from axlewright.sheet._lines import document_of, flat_lines
from axlewright.sheet._shared import Lines, SheetValue, read_file

#: The class of sheet that an answer belongs to.
S = TypeVar("S", bound="Written")
T = TypeVar("T")


class Written(Mapping[str, SheetValue]):
    """The written lines of a sheet; `Sheet` adds what follows from them."""

    __slots__ = ("_handle",)
    _handle: SheetHandle

    def __new__(cls, lines: Lines | None = None, *, name: str = "") -> Self:
        """An empty sheet, or one with these lines: `Sheet({"front.spring.rate": "225 lbf/in"})`.

        Tables may also stand in each other, `{"front": {"spring": {"rate": "225 lbf/in"}}}`, as `tomllib` reads them from a file.
        """
        text_of("name", name)
        document = document_of(lines, name) if lines else None
        if document is not None:
            return cls._of(SheetHandle.from_document(json.dumps(document)))
        empty = cls._of(SheetHandle.from_text(json.dumps({"version": 1, "name": name})))
        return empty if lines is None else empty.with_(lines)

    @classmethod
    def _of(cls, handle: SheetHandle) -> Self:
        made = object.__new__(cls)
        object.__setattr__(made, "_handle", handle)
        return made

    @classmethod
    def from_text(cls, text: str) -> Self:
        """Reads TOML, or JSON. Unknown keys are refused with their line, and the nearest key is named."""
        return cls._of(SheetHandle.from_text(text_of("text", text)))

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
        words = self._handle.text(path_of(path))
        if words is None:
            raise KeyError(f"{_short(path)} is not written")
        return words

    def with_(self, lines: Lines | None = None, /, **more: Any) -> Self:
        """This sheet with some lines changed: `sheet.with_({"front.spring.rate": "250 lbf/in"})`.

        `None` takes a line out. Tables may stand in each other, as for `Sheet`.
        """
        return self._of(self._handle.with_lines([*flat_lines(lines or {}), *flat_lines(more)]))

    def __replace__(self, /, **lines: Any) -> Self:
        """For `copy.replace`."""
        return self.with_(lines)

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
        kind, document, _ = self._handle.model(text_of("path", path, "front.suspension"))
        system, name = kind.split(".")
        made: Model = getattr(import_module(f"axlewright.{system}"), name).from_text(document)
        return made

    def elsewhere(self, path: str) -> dict[str, tuple[str, Literal["written", "computed", "assumed"]]]:
        """The fields of a model that are not in its own table or that nobody wrote: their line, and its origin."""
        _, _, elsewhere = self._handle.model(text_of("path", path, "front.suspension"))
        return {field: (line, origin) for field, line, origin in elsewhere}

    @property
    def remarks(self) -> list[str]:
        """Remarks on the document: keys that were read under an old name."""
        return self._handle.remarks()

    if TYPE_CHECKING:

        @overload
        def get(self, path: str, default: None = None, /) -> SheetValue | None: ...
        @overload
        def get(self, path: str, default: T, /) -> SheetValue | T: ...

    def get(self, path: str, default: Any = None, /) -> Any:
        """A written line, or the default: also for a key that no sheet knows, as `dict.get` does. `sheet[path]` refuses that one."""
        if not isinstance(path, str):
            return default
        try:
            value = self._handle.value(path)
        except DocumentError:
            return default
        return default if value is None else value

    def _ipython_key_completions_(self) -> list[str]:
        return self._handle.paths()

    def __getitem__(self, path: str) -> SheetValue:
        value = self._handle.value(path_of(path))
        if value is None:
            raise KeyError(f"{_short(path)} is not written; what follows from other lines is in assess().value(...)")
        return value

    def __contains__(self, path: object) -> bool:
        return path in self._handle.paths()

    def __iter__(self) -> Iterator[str]:
        return iter(self._handle.paths())

    def __len__(self) -> int:
        return len(self._handle.paths())

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError("a Sheet never changes; with_ gives another one")

    # No value may stand here: type checkers flag each use.
    def __setitem__(self, path: Never, value: Never) -> None:
        raise TypeError(f"a Sheet never changes: write sheet = sheet.with_({{{_short(repr(path))}: ...}})")

    def __delitem__(self, path: Never) -> None:
        raise TypeError(f"a Sheet never changes: write sheet = sheet.with_({{{_short(repr(path))}: None}})")

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Written) and self.to_json() == other.to_json()

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


def path_of(path: Any) -> str:
    """The path of a line; whatever else stands in its place is refused."""
    return text_of("path", path, "front.spring.rate")


def handle_of(sheet: Written) -> SheetHandle:
    """The native sheet; whatever else stands in its place is refused."""
    if not isinstance(sheet, Written):
        raise TypeError(f"sheet: a Sheet is wanted, not {type(sheet).__name__}")
    return sheet._handle
