"""Types of a sheet, and how its files are read."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from os import PathLike, fsdecode, fspath
from typing import Any, TypeAlias, TypeVar

from axlewright._native import _MOST_BYTES, DocumentError, Quantity
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
