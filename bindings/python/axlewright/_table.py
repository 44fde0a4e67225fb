"""Tables: what a model returns over a grid."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any, TypeAlias

import numpy as np

from axlewright._native import Quantity, Unit, _arrow_array, _arrow_schema, _arrow_stream

if TYPE_CHECKING:
    import numpy.typing as npt
    import pandas as pd
    import xarray as xr

#: A quantity column, numbers (ratios and counts), or words (`None` in a refused row).
Column: TypeAlias = Quantity | np.ndarray[Any, Any]


class Table(Mapping[str, "Column"]):
    """A read-only mapping from names to columns of one length.

    `reasons` says of each refused row why it has no result: there, numbers are NaN and words are `None`.
    """

    __slots__ = ("_columns", "_reasons", "_rows")

    def __init__(self, columns: Mapping[str, Column], reasons: Mapping[int, str] | None = None) -> None:
        kept: dict[str, Column] = {}
        lengths: dict[str, int] = {}
        for name, column in columns.items():
            kept[name] = column if isinstance(column, Quantity) else _frozen(name, column)
            shape = kept[name].shape
            if len(shape) != 1:
                raise ValueError(f"{name} has the shape {shape}; a column has one axis")
            lengths[name] = shape[0]
        if len(set(lengths.values())) > 1:
            raise ValueError(f"columns of different lengths: {lengths}")
        self._columns = kept
        self._rows = next(iter(lengths.values()), 0)
        self._reasons = dict(reasons or {})
        for row in self._reasons:
            if not 0 <= row < self._rows:
                raise ValueError(f"a reason for row {row}; the table has {self._rows} rows")

    def __getitem__(self, name: str) -> Column:
        try:
            return self._columns[name]
        except KeyError:
            raise KeyError(f"no column {name!r}; there are {', '.join(self._columns)}") from None

    def __iter__(self) -> Iterator[str]:
        return iter(self._columns)

    def __len__(self) -> int:
        return len(self._columns)

    @property
    def rows(self) -> int:
        """Number of rows."""
        return self._rows

    @property
    def reasons(self) -> dict[int, str]:
        """Why a row was refused, by row."""
        return dict(self._reasons)

    @property
    def units(self) -> dict[str, Unit | None]:
        """The unit in which each column is shown; `None` for pure numbers and words."""
        return {name: column.unit if isinstance(column, Quantity) else None for name, column in self.items()}

    def to_pandas(self, units: Mapping[str, Unit | str] | None = None) -> pd.DataFrame:
        """A `pandas.DataFrame` in coherent SI, or a column in the unit given for it; `attrs["units"]` says which.

        Refused rows bring a last column `reason`.
        """
        import pandas as pd

        values, symbols = self._plain(units)
        frame = pd.DataFrame(values)
        if self._reasons:
            frame["reason"] = pd.Series([self._reasons.get(row) for row in range(self._rows)], dtype=object)
        frame.attrs["units"] = symbols
        return frame

    def to_xarray(self, units: Mapping[str, Unit | str] | None = None) -> xr.Dataset:
        """An `xarray.Dataset` over `row`, in coherent SI or the units given; `attrs["units"]` of each variable."""
        import xarray as xr

        values, symbols = self._plain(units)
        if self._reasons:
            values["reason"] = np.array([self._reasons.get(row) for row in range(self._rows)], dtype=object)
        variables = {
            name: ("row", column, {"units": symbols[name]} if name in symbols else {})
            for name, column in values.items()
        }
        return xr.Dataset(variables)

    def plot(self, x: str, *y: str, ax: Any = None) -> Any:
        """Draws columns over another one, in the units in which they are shown. Needs matplotlib."""
        import matplotlib.pyplot as plt

        axes = ax if ax is not None else plt.subplots()[1]
        names = y or tuple(name for name, column in self.items() if name != x and _numeric(column))
        across = _shown(self[x])
        for name in names:
            axes.plot(across, _shown(self[name]), label=self._label(name))
        axes.set_xlabel(self._label(x))
        if len(names) == 1:
            axes.set_ylabel(self._label(names[0]))
        else:
            axes.legend()
        return axes

    def _plain(self, units: Mapping[str, Unit | str] | None) -> tuple[dict[str, npt.NDArray[Any]], dict[str, str]]:
        wanted = dict(units or {})
        for name in wanted:
            if not isinstance(self[name], Quantity):
                raise TypeError(f"{name} has no unit to convert")
        values: dict[str, npt.NDArray[Any]] = {}
        symbols: dict[str, str] = {}
        for name, column in self.items():
            if not isinstance(column, Quantity):
                values[name] = column
                continue
            unit = wanted.get(name)
            shown = column if unit is None else Quantity(column, unit)
            values[name] = column.si if unit is None else column.to(unit)
            symbols[name] = column.si_symbol if unit is None else shown.unit.symbol
        return values, symbols

    def _label(self, name: str) -> str:
        column = self[name]
        return f"{name} [{column.unit.symbol}]" if isinstance(column, Quantity) else name

    def __reduce__(self) -> tuple[Any, ...]:
        return Table, (self._columns, self._reasons)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Table):
            return NotImplemented
        same = list(self) == list(other) and self._reasons == other._reasons
        return same and all(_same(self[name], other[name]) for name in self)

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        refused = f", {len(self._reasons)} refused" if self._reasons else ""
        return f"<Table of {self._rows} rows{refused}: {', '.join(map(self._label, self))}>"

    def _repr_html_(self) -> str:
        import html

        head = "".join(f"<th>{html.escape(self._label(name))}</th>" for name in self)
        shown = [_shown(column) for column in self.values()]
        lines = []
        for row in range(min(self._rows, 20)):
            if row in self._reasons:
                why = html.escape(self._reasons[row], quote=True)
                lines.append(f'<tr title="{why}">')
            else:
                lines.append("<tr>")
            lines.extend(f"<td>{html.escape(_cell(column[row]))}</td>" for column in shown)
            lines.append("</tr>")
        more = f"<p>{self._rows} rows</p>" if self._rows > 20 else ""
        return f"<table><thead><tr>{head}</tr></thead><tbody>{''.join(lines)}</tbody></table>{more}"

    def _arrow(self) -> list[tuple[str, npt.NDArray[Any], str, str]]:
        columns = []
        for name, column in self.items():
            if isinstance(column, Quantity):
                columns.append((name, np.ascontiguousarray(column.si), column.si_symbol, column.kind))
            else:
                columns.append((name, np.ascontiguousarray(column), "1", "Ratio"))
        if self._reasons:
            why = np.array([self._reasons.get(row) for row in range(self._rows)], dtype=object)
            columns.append(("reason", why, "1", "Ratio"))
        return columns

    def __arrow_c_schema__(self) -> object:
        """Schema for the Arrow PyCapsule interface: coherent SI, `unit` and `quantity` in each field's metadata."""
        return _arrow_schema(self._rows, self._arrow())

    def __arrow_c_array__(self, requested_schema: object = None) -> tuple[object, object]:
        """Schema and data for the Arrow PyCapsule interface; a request for another schema is not met."""
        return _arrow_array(self._rows, self._arrow())

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """The same as a stream of one batch."""
        return _arrow_stream(self._rows, self._arrow())


def _frozen(name: str, column: npt.ArrayLike) -> npt.NDArray[Any]:
    array = np.array(column)
    if array.dtype.kind in "iu":
        array = array.astype(np.int64)
    elif array.dtype.kind == "f":
        array = array.astype(np.float64)
    elif array.dtype.kind in "UO" and all(word is None or isinstance(word, str) for word in array.flat):
        array = array.astype(object)
    else:
        raise TypeError(f"{name} holds neither numbers nor words")
    array.setflags(write=False)
    return array


def _numeric(column: Column) -> bool:
    return isinstance(column, Quantity) or column.dtype.kind in "if"


def _shown(column: Column) -> npt.NDArray[Any]:
    return column.to(column.unit) if isinstance(column, Quantity) else column


def _cell(value: Any) -> str:
    if value is None:
        return ""
    return f"{value:.6g}" if isinstance(value, float) else str(value)


def _same(one: Column, other: Column) -> bool:
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.kind == other.kind and np.array_equal(one.si, other.si, equal_nan=True)
    if isinstance(one, Quantity) or isinstance(other, Quantity):
        return False
    return one.dtype == other.dtype and np.array_equal(one, other, equal_nan=one.dtype.kind == "f")
