"""Types of a sheet, and how its files are read."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from operator import index
from os import PathLike, fsdecode, fspath
from typing import Any, TypeAlias, TypeVar

from axlewright._brief import text_of
from axlewright._native import _MOST_BYTES, DocumentError, Quantity, _short
from axlewright._types import Number, QuantityLike

T = TypeVar("T")
#: Mark of the order of bytes, which may stand before a text in UTF-8.
BOM = b"\xef\xbb\xbf"
#: Content of a line: a quantity, a pure number, or the text of a choice or a marking. Type checkers take it for a quantity, or for anything.
SheetValue: TypeAlias = Quantity | Any
#: Lines of a sheet: paths with dots, tables in each other, or both. `None` writes nothing.
Lines: TypeAlias = Mapping[str, QuantityLike[Any] | Number | Mapping[str, Any] | Sequence[Any] | None]
#: Receives the number of finished rows and of all rows; `True` draws a bar.
Progress: TypeAlias = Callable[[int, int], object] | bool | None


def read_file(path: str | PathLike[str], read: Callable[[str], T]) -> T:
    """The reading of a text file; a refusal names the file. Of a file that is longer than a document may be, no more is read than that."""
    name = fsdecode(fspath(path))
    try:
        with open(path, "rb") as file:
            content = file.read(_MOST_BYTES + len(BOM) + 1).removeprefix(BOM)
        if len(content) > _MOST_BYTES:
            refused = DocumentError(f"{name}: the document has more than {_MOST_BYTES} bytes, the most that are read")
            refused.file = name
            raise refused
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        refused = DocumentError(f"{name}: not text in UTF-8: byte {error.start} is 0x{error.object[error.start]:02x}")
        refused.file = name
        raise refused from None
    try:
        return read(text)
    except DocumentError as error:
        refused = DocumentError(f"{name}: {error}")
        refused.line, refused.key, refused.file, refused.faults = error.line, error.key, name, error.faults
        raise refused from None


def texts_of(name: str, texts: Any, like: str) -> tuple[str, ...]:
    """An argument that is a list of texts; one text is a list of one."""
    if isinstance(texts, str):
        return (texts,)
    if not isinstance(texts, Iterable):
        raise TypeError(f'{name}: a list of texts like "{like}" is wanted, not {type(texts).__name__}')
    return tuple(text_of(name, text, like) for text in texts)


def at_least_one(name: str, count: int) -> int:
    """A count of something, by its name."""
    whole = whole_number(name, count)
    if whole < 1:
        raise ValueError(f"{name} = {_short(str(whole))} is outside its range; valid: at least 1")
    return whole


def whole_number(name: str, count: float) -> int:
    """A count that is a whole number, also one that is written as a float."""
    if isinstance(count, float) and count.is_integer():
        return int(count)
    try:
        return index(count)  # type: ignore[arg-type]
    except TypeError:
        raise TypeError(f"{name} = {_short(repr(count))} is not a whole number") from None
