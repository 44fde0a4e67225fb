"""How objects show themselves: on a line, and in a notebook."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from axlewright._native import Quantity, _printable, _rounded

#: Letters of the longest text, entries of the longest list, and letters of the longest line.
TEXT, ENTRIES, LINE = 60, 3, 1200


def brief(value: Any) -> str:
    """A value of a result or a document, short: four significant digits, the beginning of a text or a list."""
    if isinstance(value, Quantity):
        return str(value)
    if isinstance(value, float):
        return _rounded(value)
    if isinstance(value, str):
        return repr(value if len(value) <= TEXT else f"{value[:TEXT]}...")
    if isinstance(value, Mapping):
        return f"{{{', '.join(f'{name!r}: {brief(one)}' for name, one in value.items())}}}"
    if isinstance(value, list | tuple):
        shown = [brief(one) for one in value[:ENTRIES]]
        more = [f"... {len(value)} entries"] if len(value) > ENTRIES else []
        return f"[{', '.join([*shown, *more])}]"
    return repr(value)


def line(name: str, fields: Iterable[tuple[str, Any]]) -> str:
    """`Stopped(force=5 kN, rate=250 N/mm)`, at most a screen long."""
    text = _printable(f"{name}({', '.join(f'{field}={brief(value)}' for field, value in fields)})")
    return text if len(text) <= LINE else f"{text[:LINE]}...)"


def number(value: Any) -> str:
    """A number of a finding as text; `not known` without one."""
    if value is None:
        return "not known"
    return str(value) if isinstance(value, Quantity) else _rounded(value)


def heading(name: str, hash: str = "") -> str:
    """A title for a notebook; everything in it is escaped."""
    from html import escape

    code = f" <code>{escape(hash)}</code>" if hash else ""
    return f"<p><b>{escape(name)}</b>{code}</p>"


def html_table(head: Iterable[str], rows: Iterable[Iterable[object]]) -> str:
    """A table for a notebook; everything in it is escaped."""
    from html import escape

    def cells(cell: str, values: Iterable[object]) -> str:
        texts = (escape("-" if value is None else str(value)) for value in values)
        made = (f'<{cell} style="text-align: left">{text}</{cell}>' for text in texts)
        return f"<tr>{''.join(made)}</tr>"

    body = "".join(cells("td", row) for row in rows)
    return f"<table><thead>{cells('th', head)}</thead><tbody>{body}</tbody></table>"
