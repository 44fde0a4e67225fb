"""Common methods of every model."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, Self

from axlewright._brief import brief, heading, html_table, line, text_of
from axlewright._native import Handle, _field, _json, _model


class Model:
    """Built from keywords, checked when it is built, never changed. It is also a document: JSON or TOML text.

    A keyword that is left out, or `None`, says nothing of a field; the text `"none"` says that there is no such part.
    """

    __slots__ = ("_handle",)
    _name: ClassVar[str]
    _handle: Handle

    @classmethod
    def from_text(cls, text: str) -> Self:
        """Reads a document: JSON, or TOML. Unknown keys are refused, with their line."""
        made = cls.__new__(cls)
        object.__setattr__(made, "_handle", _model(cls._name, text_of("text", text)))
        return made

    def to_json(self) -> str:
        """The document as JSON, each value as it was written."""
        return _json(self._handle)

    # The stub of each model has its own fields here.
    if TYPE_CHECKING:
        replace: Callable[..., Self]
    else:

        def replace(self, **fields):
            """This model with some fields changed: `coolant.replace(cap="7 psi gauge")`. `None` removes a field."""
            return type(self)(**(json.loads(self.to_json()) | fields))

    def __replace__(self, /, **fields: Any) -> Self:
        """For `copy.replace`."""
        return type(self)(**(json.loads(self.to_json()) | fields))

    def _read(self, name: str, kind: str | None = None) -> Any:
        """A field as the document has it; with the name of its kind, as a quantity or the text "none"."""
        value = json.loads(self.to_json()).get(name)
        return value if kind is None or value in (None, "none") else _field(value, kind)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a {type(self).__name__} never changes; build another one")

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and isinstance(other, Model) and self.to_json() == other.to_json()

    def __hash__(self) -> int:
        return hash((self._name, self.to_json()))

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self).from_text, (self.to_json(),)

    def __repr__(self) -> str:
        return line(type(self).__name__, json.loads(self.to_json()).items(), "to_json()")

    def _repr_html_(self) -> str:
        rows = []
        for name, value in json.loads(self.to_json()).items():
            rows.append((name, value if isinstance(value, str) else brief(value, f".{name}"), getattr(type(self), name).__doc__))
        return heading(type(self).__name__) + html_table(("field", "value", "meaning"), rows)
