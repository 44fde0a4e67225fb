"""Types of a sheet, how its files are read, and how it shows itself in a notebook."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from os import PathLike, fspath
from typing import TypeAlias, TypeVar

from axlewright._native import DocumentError, Quantity

T = TypeVar("T")
#: Content of a line: a quantity, a pure number, or the text of a choice or a marking.
SheetValue: TypeAlias = Quantity | float | str
#: Receives the number of finished rows and of all rows; `True` draws a bar.
Progress: TypeAlias = Callable[[int, int], object] | bool | None


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
