"""Fills the modules of the systems at first import, from the tables of the native module."""

from __future__ import annotations

import collections
import warnings
from collections.abc import Callable
from typing import Any, NotRequired, TypedDict

from axlewright._brief import line, no_attribute
from axlewright._model import Model
from axlewright._native import _adopt, _former, _system, _ufuncs

# The names come from a table, which type checkers do not follow: they read the stubs.
_named: Any = collections.namedtuple  # noqa: PYI024
_dict: Any = TypedDict


def fill(module: dict[str, Any]) -> None:
    """Named tuples of results, functions, models, and the typed dicts that models take."""
    package = module["__name__"]
    results, functions, models, entries = _system(package.rpartition(".")[2])
    made: dict[str, Any] = {of[0]: _named_tuple(package, *of) for of in results}
    made |= functions
    made |= {path.rpartition(".")[2]: _model(package, path, doc, fields) for path, doc, fields in models}
    made |= {name: _entry(package, name, fields) for name, fields in entries}
    _finish(module, made)


def fill_si(module: dict[str, Any]) -> None:
    """The functions as ufuncs."""
    ufuncs = _ufuncs(module["__name__"].rpartition(".")[2])
    _finish(module, ufuncs)


def _finish(module: dict[str, Any], members: dict[str, Any]) -> None:
    """Puts the members into their module, which lists them and nothing else."""
    names = sorted(members)
    module.update(members, __all__=names, __getattr__=_former_names(module["__name__"], members), __dir__=lambda: list(names))


def warn_renamed(old: str, new: str) -> None:
    """Says that a name was renamed, to the code that used it: the caller of the caller."""
    warnings.warn(f"{old} is called {new} now", DeprecationWarning, stacklevel=3)


def _former_names(package: str, made: dict[str, Any]) -> Callable[[str], Any]:
    """The `__getattr__` of a module: names that its members had before."""
    renamed = dict(_former(package.rpartition(".")[2]))

    def find(name: str) -> Any:
        new = renamed.get(name)
        if new not in made:
            raise no_attribute(package, name, made)
        warn_renamed(f"{package}.{name}", new)
        return made[new]

    return find


def _named_tuple(package: str, name: str, of: str, fields: list[tuple[str, str]], former: list[tuple[str, str]]) -> type:
    made: type = _named(name, [field for field, _ in fields], module=package)
    made.__doc__ = f"Results of `{of}`."
    made.__repr__ = _repr  # type: ignore[assignment]
    for field, meaning in fields:
        getattr(made, field).__doc__ = meaning
    if former:
        made.__getattr__ = _former_fields(name, dict(former))  # type: ignore[attr-defined]
    return made


def _repr(self: Any) -> str:
    return line(type(self).__name__, zip(self._fields, self, strict=True), "its fields")


def _former_fields(owner: str, renamed: dict[str, str]) -> Callable[[Any, str], Any]:
    """The `__getattr__` of a named tuple: names that its fields had before."""

    def find(self: Any, name: str) -> Any:
        if name not in renamed:
            raise AttributeError(f"{owner!r} object has no attribute {name!r}")
        warn_renamed(f"{owner}.{name}", renamed[name])
        return getattr(self, renamed[name])

    return find


def _entry(package: str, name: str, fields: list[tuple[str, bool]]) -> Any:
    made = _dict(name, {field: NotRequired[Any] if optional else Any for field, optional in fields})
    made.__module__ = package
    made.__doc__ = "A table in the document of a model."
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
