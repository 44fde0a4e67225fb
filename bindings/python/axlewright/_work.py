"""The work behind an answer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from importlib import import_module
from types import MappingProxyType
from typing import Any, Generic, Literal, ParamSpec, TypeVar

from axlewright._native import SYSTEMS, TextError, _function, _work

P = ParamSpec("P")
T = TypeVar("T", covariant=True)


class Work(Generic[T]):
    """A call with its answer and the steps to it: formula, numbers put in, result, source, caution, revision.

    It never changes, prints as plain text and shows itself as a table in a notebook. `work` makes one.
    """

    __slots__ = ("_function", "_given", "_inputs", "_json", "_result", "_system", "_text")

    def __init__(self, function: str, arguments: Mapping[str, Any], system: Literal["metric", "us"] | None = None):
        # Only a function of the catalogue is called: a text, as a pickle holds it, imports and looks up nothing else.
        door = _door(*_function(function))
        self._function = function
        self._result: T = door(**arguments)
        self._inputs, self._given, self._system, self._text, self._json = _work(function, dict(arguments), system)

    @property
    def function(self) -> str:
        """Path of the function: `spring.wheel_rate`."""
        return self._function

    @property
    def inputs(self) -> Mapping[str, Any]:
        """The arguments by name: quantities, and floats for ratios."""
        return MappingProxyType(self._inputs)

    @property
    def result(self) -> T:
        """The results of the function."""
        return self._result

    @property
    def text(self) -> str:
        """The work as plain text."""
        return self._text

    def to_json(self) -> str:
        """The work as JSON text; `si` in it is coherent SI, with all digits."""
        return self._json

    def shown_in(self, system: Literal["metric", "us"]) -> Work[T]:
        """This work in the units of a metric or of a US shop."""
        return type(self)(self._function, self._given, system)

    def __str__(self) -> str:
        return self._text

    def __repr__(self) -> str:
        arguments = ", ".join(f"{name}={value!r}" for name, value in self._given.items())
        return f"work({self._function}, {arguments})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Work) and (self._function, self._json) == (other._function, other._json)

    def __hash__(self) -> int:
        return hash((self._function, self._json))

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self._function, self._given, self._system)

    def _repr_html_(self) -> str:
        import json
        from html import escape

        page = json.loads(self._json)
        names = ("symbol", "name", "shown", "written", "si", "unit", "meaning")
        head = _row("th", ("symbol", "name", "value", "written", "SI", "", "meaning"))
        body = "".join(
            _row("td", (one.get(name) for name in names)) for part in ("inputs", "results") for one in page[part]
        )
        sections = (
            ("Formula", page["formula"].replace("`", "")),
            ("With the numbers, in SI", page.get("with_numbers", "")),
            ("Valid for (SI)", page["valid_for"].replace("`", "")),
            ("Source", page["source"]),
            ("Caution", page["caution"]),
        )
        prose = "".join(
            f'<p><b>{escape(title)}</b><br><span style="white-space: pre-line">{escape(words)}</span></p>'
            for title, words in sections
            if words
        )
        stamp = f"axlewright {page['version']}, revision {page['revision']} of this function"
        return (
            f"<p><code>{escape(page['function'])}</code> {escape(page['summary'])}</p>"
            f"<table>{head}{body}</table>{prose}<p><small>{escape(stamp)}</small></p>"
        )


def work(function: Callable[P, T], /, *args: P.args, **arguments: P.kwargs) -> Work[T]:
    """Calls a function of a system and shows the work: formula, numbers put in with their units, result, source, caution.

    >>> from axlewright import spring, work
    >>> shown = work(spring.static_deflection, load="900 lbf", rate="225 lbf/in")
    >>> print(shown.result)
    4 in
    >>> "x = (4003.4 N) / (39403.5 N/m)" in shown.text
    True

    It refuses what the function refuses, in the same way, and takes one case, not arrays.
    """
    if args or "invalid" in arguments:
        raise TypeError("work takes the function's own arguments by keyword, and nothing else")
    return Work(_path(function), arguments)


def _path(function: object) -> str:
    """The path of a public function: `spring.wheel_rate`."""
    module, name = getattr(function, "__module__", None) or "", getattr(function, "__name__", "")
    system = module.removeprefix("axlewright.")
    path = f"{system}.{name}"
    if system not in SYSTEMS or isinstance(function, type) or not _is_listed(path) or _door(system, name) is not function:
        raise TypeError(f"{function!r} is no function of a system, like axlewright.spring.wheel_rate")
    return path


def _is_listed(path: str) -> bool:
    try:
        return ".".join(_function(path)) == path
    except TextError:
        return False


def _door(system: str, name: str) -> Any:
    """A function that the catalogue lists."""
    return getattr(import_module(f"axlewright.{system}"), name)


def _row(cell: str, values: Iterable[object]) -> str:
    from html import escape

    cells = "".join(f"<{cell}>{'' if value is None else escape(str(value).replace('`', ''))}</{cell}>" for value in values)
    return f"<tr>{cells}</tr>"
