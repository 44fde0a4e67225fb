"""Lines of a sheet from mappings: paths with dots, and tables in each other."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from math import isfinite
from typing import Any

from axlewright._native import _sheet_text, _short

#: A key, or the place of a list: `curve` and `[2]` of `curve[2]`.
_STEP = re.compile(r"([^.\[\]]+)|\[(\d+)\]")
#: Keys of a document that are no lines.
_HEAD = ("version", "name", "notes")
#: Levels of tables: far more than a sheet has.
_DEEPEST = 32


def flat_lines(lines: Any, prefix: str = "", depth: int = 0) -> Iterator[tuple[str, Any]]:
    """Each path and its value, of tables in each other too."""
    if not hasattr(lines, "items"):
        raise TypeError(f"lines: a mapping of paths to values is wanted, not {type(lines).__name__}")
    if depth > _DEEPEST:
        raise ValueError(f"{_short(prefix)} lies deeper than {_DEEPEST} levels of tables")
    for key, value in lines.items():
        if not isinstance(key, str):
            raise TypeError(f"{_short(prefix)}: the key {_short(repr(key))} is not text")
        path = f"{prefix}.{key}" if prefix else key
        if isinstance(value, Mapping) and set(value) != {"value", "unit"}:
            yield from flat_lines(value, path, depth + 1)
        elif isinstance(value, list | tuple):
            for place, one in enumerate(value):
                if isinstance(one, Mapping) and set(one) != {"value", "unit"}:
                    yield from flat_lines(one, f"{path}[{place}]", depth + 1)
                else:
                    yield f"{path}[{place}]", one
        else:
            yield path, value


def document_of(lines: Any, name: str) -> dict[str, Any] | None:
    """The document of lines of which some stand in tables in each other; nothing if all are paths, whose order counts."""
    if hasattr(lines, "items") and not any(isinstance(value, Mapping | list | tuple) for value in dict(lines.items()).values()):
        return None
    document: dict[Any, Any] = {"version": 1}
    for path, value in flat_lines(lines):
        if value is None:
            continue
        # Text, plain numbers, and tables of value and unit stand as they are; others are written for the kind of their line.
        steps = [key or int(place) for key, place in _STEP.findall(path)]
        if steps[0] not in _HEAD and not (isinstance(value, str | Mapping) or type(value) in (int, float) and isfinite(value)):
            value = _sheet_text(path, value)[0]
        inside = document
        for step in steps[:-1]:
            inside = inside.setdefault(step, {})
            if not isinstance(inside, dict):
                raise ValueError(f"{_short(path)} lies below a line that has a value")
        inside[steps[-1]] = value
    if name:
        document["name"] = name
    made: dict[str, Any] = _with_lists(document)
    return made


def _with_lists(table: Any) -> Any:
    """Tables whose keys are places become lists."""
    if not isinstance(table, dict):
        return table
    below = {key: _with_lists(value) for key, value in table.items()}
    if below and all(isinstance(key, int) for key in below):
        return [below[place] for place in sorted(below)]
    return below
