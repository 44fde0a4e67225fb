"""Fills the modules of the systems at first import, from the tables of the native module."""

from __future__ import annotations

import collections
from typing import Any

from axlewright._model import Model
from axlewright._native import _adopt, _system, _ufuncs

# The names come from a table, which type checkers do not follow: they read the stubs.
_named: Any = collections.namedtuple  # noqa: PYI024


def fill(module: dict[str, Any]) -> None:
    """Named tuples of results, functions and models."""
    package = module["__name__"]
    results, functions, models = _system(package.rpartition(".")[2])
    made: dict[str, Any] = {name: _named_tuple(package, name, of, fields) for name, of, fields in results}
    made |= functions
    made |= {path.rpartition(".")[2]: _model(package, path, doc, fields) for path, doc, fields in models}
    module.update(made, __all__=sorted(made))


def fill_si(module: dict[str, Any]) -> None:
    """The functions as ufuncs."""
    ufuncs = _ufuncs(module["__name__"].rpartition(".")[2])
    module.update(ufuncs, __all__=sorted(ufuncs))


def _named_tuple(package: str, name: str, of: str, fields: list[tuple[str, str]]) -> type:
    made: type = _named(name, [field for field, _ in fields], module=package)
    made.__doc__ = f"Results of `{of}`."
    for field, meaning in fields:
        getattr(made, field).__doc__ = meaning
    return made


def _model(package: str, path: str, doc: str, fields: list[tuple[str, str | None, str]]) -> type[Model]:
    name = path.rpartition(".")[2]
    own = {"__module__": package, "__doc__": doc, "__slots__": (), "_name": path}
    made = type(name, (Model,), own | {field: _field(field, kind, meaning) for field, kind, meaning in fields})
    _adopt(made, path)
    return made


def _field(name: str, kind: str | None, meaning: str) -> property:
    def read(self: Model) -> Any:
        return self._read(name, kind)

    return property(read, doc=meaning)
