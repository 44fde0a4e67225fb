"""Tables: the result of a model over a grid."""

from __future__ import annotations

import warnings
from collections.abc import ItemsView, Iterator, KeysView, Mapping, ValuesView
from typing import TYPE_CHECKING, Any, Literal, NoReturn, Self, TypeAlias, cast

import numpy as np

from axlewright._extra import needed
from axlewright._native import (
    _FORMER_COLUMNS,
    Quantity,
    Unit,
    _arrow_array,
    _arrow_schema,
    _arrow_stream,
    _locked,
    _printable,
    _rounded,
    _short,
)

if TYPE_CHECKING:
    import numpy.typing as npt
    import polars as pl
    from pandas import DataFrame
    from xarray import Dataset

    from axlewright._native import Columns

#: A quantity column, numbers (ratios and counts), or words (`None` in a refused row). Type checkers take it for a quantity, or for anything.
Column: TypeAlias = Quantity | Any
#: Units of columns by name; a column that is missing, or has `None`, keeps the unit in which it is shown.
Units: TypeAlias = Mapping[str, Unit | str | None]
#: Rows that are printed, and the mark of a refused one.
PRINTED, REFUSED = 20, "!"


class Table:
    """A read-only mapping from names to columns of one length.

    `reasons` says of each refused row why it has no result: there, numbers are NaN and words are `None`.

    It is no `collections.abc.Mapping`: libraries would take the columns by their plain names, and lose their units. They
    take it as an Arrow stream instead, whose names say them: `travel [m]`.
    """

    __slots__ = ("_columns", "_reasons", "_rows")

    def __init__(self, columns: Mapping[str, Column] | Table, reasons: Mapping[int, str] | None = None) -> None:
        if not hasattr(columns, "items"):
            raise TypeError(f"columns: a mapping of names to columns is wanted, not {type(columns).__name__}")
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
        self._columns: Mapping[str, Column] | Columns = kept
        self._rows = next(iter(lengths.values()), 0)
        self._reasons = dict(reasons or {})
        for row in self._reasons:
            if not 0 <= row < self._rows:
                raise ValueError(f"a reason for row {row}; the table has {self._rows} rows")

    @classmethod
    def _of_core(cls, columns: Columns, reasons: dict[int, str]) -> Self:
        """A table of the core, whose columns nobody else has: read-only already, and of one length."""
        made = cls.__new__(cls)
        made._columns, made._rows, made._reasons = columns, columns.rows, reasons
        return made

    def __getitem__(self, name: str) -> Column:
        try:
            if not isinstance(name, str):
                raise KeyError
            return self._columns[name]
        except KeyError:
            new = _FORMER_COLUMNS.get(name) if isinstance(name, str) else None
            if new is not None and new in self._columns:
                warnings.warn(f"the column {name} is called {new} now", DeprecationWarning, stacklevel=2)
                return self._columns[new]
            asked = f"'{_short(name)}'" if isinstance(name, str) else type(name).__name__
            raise KeyError(f"no column {asked}; there are {', '.join(map(_short, self._columns))}") from None

    def get(self, name: str, default: Any = None, /) -> Any:
        """A column, or the default."""
        try:
            return self[name]
        except KeyError:
            return default

    def keys(self) -> KeysView[str]:
        """Names of the columns."""
        return KeysView(cast(Mapping[str, Column], self))

    def values(self) -> ValuesView[Column]:
        """The columns."""
        return ValuesView(cast(Mapping[str, Column], self))

    def items(self) -> ItemsView[str, Column]:
        """Names and columns."""
        return ItemsView(cast(Mapping[str, Column], self))

    def __contains__(self, name: object) -> bool:
        return name in list(self._columns)

    def _ipython_key_completions_(self) -> list[str]:
        return list(self._columns)

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
        """Reasons of the refused rows, by row."""
        return dict(self._reasons)

    @property
    def units(self) -> dict[str, Unit | None]:
        """The unit in which each column is shown; `None` for pure numbers and words."""
        return {name: column.unit if isinstance(column, Quantity) else None for name, column in self.items()}

    def to_pandas(self, units: Units | Literal["si"] | None = None) -> DataFrame:
        """A `pandas.DataFrame` in the units that are shown, or in those given; each quantity's column says its unit:
        `margin [delta °F]`. With `units="si"` it is coherent SI under the plain names.

        `attrs["units"]` and `attrs["quantities"]` say of each such column its unit and what it is. Refused rows bring a
        last column `reason`.
        """
        pd = needed("pandas", "tables")
        columns = self._in(units)
        labels = {name: name if units == "si" else _label(name, unit) for name, (_, unit, _) in columns.items()}
        frame = pd.DataFrame({labels[name]: values for name, (values, _, _) in columns.items()})
        if self._reasons:
            frame["reason"] = pd.Series(self._reason_column(), dtype=object)
        said = [(labels[name], unit, kind) for name, (_, unit, kind) in columns.items() if kind]
        frame.attrs["units"] = {label: unit for label, unit, _ in said}
        frame.attrs["quantities"] = {label: kind for label, _, kind in said}
        made: DataFrame = frame
        return made

    def to_polars(self, units: Units | Literal["si"] | None = None) -> pl.DataFrame:
        """A `polars.DataFrame` in the units that are shown, in those given, or in coherent SI; named as by `to_pandas`.

        `polars.DataFrame(table)` takes the table as it is: in coherent SI, with that unit in each name.
        """
        columns = self._in(units)
        labels = {name: name if units == "si" else _label(name, unit) for name, (_, unit, _) in columns.items()}
        series = {labels[name]: values.tolist() if values.dtype == object else values for name, (values, _, _) in columns.items()}
        if self._reasons:
            series["reason"] = self._reason_column().tolist()
        made: pl.DataFrame = needed("polars", "polars").DataFrame(series)
        return made

    def to_xarray(self, units: Units | Literal["si"] | None = None) -> Dataset:
        """An `xarray.Dataset` over `row` in the units that are shown, in those given, or with `units="si"` in coherent SI.

        The names are plain: `attrs["units"]` and `attrs["quantity"]` of each variable say its unit and what it is.
        """
        xr = needed("xarray", "tables")
        variables: dict[str, tuple[str, npt.NDArray[Any], dict[str, str]]] = {
            name: ("row", values, {"units": unit, "quantity": kind} if kind else {})
            for name, (values, unit, kind) in self._in(units).items()
        }
        if self._reasons:
            variables["reason"] = ("row", self._reason_column(), {})
        made: Dataset = xr.Dataset(variables)
        return made

    def plot(self, x: str, *y: str, ax: Any = None) -> Any:
        """Draws columns over another one, in the units in which they are shown. Needs matplotlib.

        Columns of one unit share the axes that it returns. Columns of several units get a panel for each unit, one
        above the other: it returns an array of them, and `ax` can be given only for one unit.
        """
        plt = needed("matplotlib.pyplot", "plot")

        names = y or tuple(name for name, column in self.items() if name != x and _numeric(column))
        units = self.units
        panels: dict[Unit | None, list[str]] = {}
        for name in names:
            self[name]
            panels.setdefault(units[name], []).append(name)
        if ax is not None and len(panels) > 1:
            shown = "; ".join(f"{', '.join(of)} [{_symbol(unit)}]" for unit, of in panels.items())
            raise ValueError(f"columns of different units cannot share one axis: {shown}; plot one unit at a time")
        across = _shown(self[x])
        if ax is None:
            height = max(4.8, 2.4 * len(panels))
            size = (6.4, height)
            made = plt.subplots(max(len(panels), 1), sharex=True, squeeze=False, figsize=size, layout="constrained")
            every = made[1][:, 0]
        else:
            every = np.array([ax], dtype=object)
        for axes, (unit, of) in zip(every, panels.items(), strict=False):
            for name in of:
                axes.plot(across, _shown(self[name]), label=name)
            axes.set_ylabel(self._label(of[0]) if len(of) == 1 else f"[{_symbol(unit)}]")
            if len(of) > 1:
                axes.legend()
        every[-1].set_xlabel(self._label(x))
        return every[0] if len(every) == 1 else every

    def _in(self, units: Units | Literal["si"] | None) -> dict[str, tuple[npt.NDArray[Any], str, str]]:
        """For each column the plain values, the symbol of their unit and the kind of quantity, which words and pure
        numbers do not have.
        """
        if units is not None and units != "si" and not isinstance(units, Mapping):
            raise TypeError(f'units = {units!r}; it is "si" or a mapping from columns to units')
        wanted = {} if units is None or units == "si" else {name: unit for name, unit in units.items() if unit}
        for name in units if isinstance(units, Mapping) else ():
            if not isinstance(self[name], Quantity) and name in wanted:
                raise TypeError(f"{name} has no unit to convert")
        columns = {}
        for name, column in self.items():
            if not isinstance(column, Quantity):
                columns[name] = (column, "", "")
            elif units == "si":
                columns[name] = (column.si, column.si_symbol, column.kind)
            else:
                shown = Quantity(column, wanted.get(name, column.unit))
                columns[name] = (_shown(shown), shown.unit.symbol, column.kind)
        return columns

    def _reason_column(self) -> npt.NDArray[Any]:
        return np.array([self._reasons.get(row) for row in range(self._rows)], dtype=object)

    def _label(self, name: str) -> str:
        column = self[name]
        return _label(name, column.unit.symbol if isinstance(column, Quantity) else "")

    def __reduce__(self) -> tuple[Any, ...]:
        return Table, (dict(self), self._reasons)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Table):
            return NotImplemented
        same = list(self) == list(other) and self._reasons == other._reasons
        return same and all(_same(self[name], other[name]) for name in self)

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        refused = f", {len(self._reasons)} refused" if self._reasons else ""
        names = [self._label(name) for name in list(self)[:PRINTED]]
        more = f", ... {len(self)} columns" if len(self) > PRINTED else ""
        return f"<Table of {self._rows} rows{refused}: {_printable(', '.join(names))}{more}>"

    def __str__(self) -> str:
        """Columns in their units with four significant digits; a refused row is marked, and its reason is below."""
        return self._text(PRINTED)

    def _text(self, most: int) -> str:
        """The text of at most so many rows."""
        rows = range(min(self._rows, most))
        last = len(str(max(rows, default=0)))
        columns = [["", "", *(f"{row:{last}} {self._mark(row)}".rstrip() for row in rows)]]
        numeric = [False]
        for name, column in self.items():
            symbol = column.unit.symbol if isinstance(column, Quantity) else ""
            shown = _shown(column)
            columns.append([_printable(name), f"[{symbol}]" if symbol else "", *(_cell(shown[row]) for row in rows)])
            numeric.append(_numeric(column))
        widths = [max(map(len, column)) for column in columns]
        lines = [
            "  ".join(
                cell.rjust(width) if right else cell.ljust(width)
                for cell, width, right in zip(line, widths, numeric, strict=True)
            ).rstrip()
            for line in zip(*columns, strict=True)
        ]
        if self._rows > most:
            lines += ["...", f"{self._rows} rows"]
        return "\n".join([*lines, *self._footnotes(most)])

    def _mark(self, row: int) -> str:
        return REFUSED if row in self._reasons else ""

    def _footnotes(self, most: int = PRINTED) -> list[str]:
        """Reasons of the refused rows that are printed, and the number of further ones."""
        rows: dict[str, list[str]] = {}
        for row, reason in sorted(self._reasons.items()):
            if row < most:
                rows.setdefault(reason, []).append(str(row))
        notes = [
            f"{REFUSED} row{'s' if len(where) > 1 else ''} {', '.join(where)}: {reason}"
            for reason, where in rows.items()
        ]
        if hidden := sum(row >= most for row in self._reasons):
            notes.append(f"{REFUSED} {hidden} more refused below; see `reasons`")
        return notes

    def _repr_html_(self) -> str:
        from html import escape

        head = "".join(f"<th>{escape(self._label(name))}</th>" for name in self)
        shown = [_shown(column) for column in self.values()]
        lines = []
        for row in range(min(self._rows, PRINTED)):
            why = f' title="{escape(self._reasons[row])}"' if row in self._reasons else ""
            cells = "".join(f"<td>{escape(_cell(column[row]))}</td>" for column in shown)
            lines.append(f"<tr{why}><th>{row} {self._mark(row)}</th>{cells}</tr>")
        more = f"<p>{self._rows} rows</p>" if self._rows > PRINTED else ""
        notes = "".join(f"<p>{escape(note)}</p>" for note in self._footnotes())
        table = f"<thead><tr><th></th>{head}</tr></thead><tbody>{''.join(lines)}</tbody>"
        return f"<table>{table}</table>{more}{notes}"

    def __array__(self, *_: Any, **_more: Any) -> NoReturn:
        raise TypeError("a table is not one array; take its columns, or to_pandas() for a DataFrame")

    def _arrow(self) -> list[tuple[str, npt.NDArray[Any], str, str]]:
        columns = []
        for name, column in self.items():
            if isinstance(column, Quantity):
                columns.append((name, np.ascontiguousarray(column.si), column.si_symbol, column.kind))
            else:
                columns.append((name, np.ascontiguousarray(column), "1", "Ratio"))
        if self._reasons:
            columns.append(("reason", self._reason_column(), "1", "Ratio"))
        return columns

    def __arrow_c_schema__(self) -> object:
        """Schema for the Arrow PyCapsule interface: coherent SI, its unit in each name, `unit` and `quantity` in the metadata."""
        return _arrow_schema(self._rows, self._arrow())

    def __arrow_c_array__(self, requested_schema: object = None) -> tuple[object, object]:
        """Schema and data for the Arrow PyCapsule interface; a request for another schema is ignored."""
        return _arrow_array(self._rows, self._arrow())

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """The table as a stream of one batch."""
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
    return _locked(array)


def _numeric(column: Column) -> bool:
    return isinstance(column, Quantity) or column.dtype.kind in "if"


def _shown(column: Column) -> npt.NDArray[Any]:
    shown: npt.NDArray[Any] = column.to(column.unit) if isinstance(column, Quantity) else column
    return shown


def _label(name: str, symbol: str) -> str:
    return f"{name} [{symbol}]" if symbol else name


def _symbol(unit: Unit | None) -> str:
    return unit.symbol if unit is not None and unit.symbol else "-"


def _cell(value: Any) -> str:
    """A value as a shop writes it; `-` without one."""
    if value is None or value != value:
        return "-"
    return _rounded(value) if isinstance(value, float) else _printable(str(value))


def _same(one: Column, other: Column) -> bool:
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.kind == other.kind and np.array_equal(one.si, other.si, equal_nan=True)
    if isinstance(one, Quantity) or isinstance(other, Quantity):
        return False
    return one.dtype == other.dtype and np.array_equal(one, other, equal_nan=one.dtype.kind == "f")
