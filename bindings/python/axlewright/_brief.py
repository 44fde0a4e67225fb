"""How objects show themselves: on a line, and in a notebook."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import isinf
from typing import Any

from axlewright._native import Quantity, _near, _printable, _rounded

#: Letters of the longest text, entries of the longest list, and letters of the longest line.
TEXT, ENTRIES, LINE = 240, 3, 1200


def brief(value: Any, place: str = "") -> str:
    """A value of a result or a document, short: four significant digits, the beginning of a long text or list, and what is left out.

    `place` is what gives the whole list: `.springs`.
    """
    if isinstance(value, Quantity):
        return str(value)
    if isinstance(value, float):
        return _rounded(value)
    if isinstance(value, str):
        left = len(value) - TEXT
        return repr(value) if left <= 0 else f"{value[:TEXT]!r} and {left} letters more"
    if isinstance(value, Mapping):
        inside = [f"{name!r}: {brief(one, f'{place}[{name!r}]')}" for name, one in value.items()]
        return f"{{{', '.join(inside)}}}"
    if isinstance(value, list | tuple):
        shown = [brief(one, f"{place}[{at}]") for at, one in enumerate(value[:ENTRIES])]
        left = len(value) - ENTRIES
        more = [f"... {left} more, see {place}" if place else f"... {left} more"] if left > 0 else []
        return f"[{', '.join([*shown, *more])}]"
    return repr(value)


def line(name: str, fields: Iterable[tuple[str, Any]], whole: str) -> str:
    """`Stopped(force=5 kN, rate=250 N/mm)`, at most a screen long; `whole` says where all of it is."""
    said = [f"{field}={brief(value, f'.{field}')}" for field, value in fields]
    text = _printable(f"{name}({', '.join(said)})")
    return text if len(text) <= LINE else f"{text[:LINE]}... {len(text) - LINE} letters more, see {whole})"


def text_of(name: str, value: Any, like: str = "") -> str:
    """An argument that is text, by its name; anything else is refused."""
    if isinstance(value, str):
        return value
    example = f' like "{like}"' if like else ""
    raise TypeError(f"{name}: text{example} is wanted, not {type(value).__name__}")


def no_attribute(module: str, name: str, known: Iterable[str]) -> AttributeError:
    """The refusal of a name that a module does not have, with the nearest one."""
    return AttributeError(f"module {module!r} has no attribute {name!r}{_near(name, list(known))}")


def number(value: Any) -> str:
    """A number of a finding as text; `not known` without one, `no limit` for a bound that is absent."""
    if value is None:
        return "not known"
    if isinf(value.si if isinstance(value, Quantity) else value):
        return "no limit"
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
