"""Lines of a sheet over values: one table, or piece by piece."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Generic, Literal, Self, TypeAlias

import numpy as np
import numpy.typing as npt

from axlewright._brief import text_of
from axlewright._extra import needed
from axlewright._native import Batch, Quantity, WhatIfHandle, _sheet_text, _sheet_values, _short
from axlewright._table import Table, Units
from axlewright._types import Number, QuantityLike
from axlewright.sheet._assessment import AssessmentOf
from axlewright.sheet._drawing import draw_line, draw_map
from axlewright.sheet._file import whole_file
from axlewright.sheet._progress import Told
from axlewright.sheet._shared import Progress, at_least_one, whole_number
from axlewright.sheet._written import S, Written, handle_of

if TYPE_CHECKING:
    import pandas as pd
    import polars as pl
    import xarray as xr

#: Rows in one block if the caller gives no number.
ROWS = 65_536
_Payload: TypeAlias = npt.NDArray[np.float64] | list[tuple[str, ...]] | tuple[str, str, int]
#: Paths that change together, their values, and the unit in which they are shown.
Axis: TypeAlias = tuple[tuple[str, ...], _Payload, str | None]


@dataclass(frozen=True, slots=True)
class Span:
    """From one value to another in equal steps, both ends included."""

    start: QuantityLike[Any] | Number
    stop: QuantityLike[Any] | Number
    count: int


def span(start: QuantityLike[Any] | Number, stop: QuantityLike[Any] | Number, count: int) -> Span:
    """Values from one to another, both included: `span("200 lbf/in", "300 lbf/in", 11)`. A long one takes no memory."""
    return Span(start, stop, count)


def axes_of(lines: Mapping[Any, Any]) -> tuple[Axis, ...]:
    """Values for `what_if` in portable form: coherent SI, or text."""
    if not isinstance(lines, Mapping):
        raise TypeError(f"lines: a mapping of paths to lists of values is wanted, not {type(lines).__name__}")
    return tuple(_axis(paths, values) for paths, values in _flat(lines))


def _flat(lines: Mapping[Any, Any], prefix: str = "") -> Iterator[tuple[str | tuple[str, ...], Any]]:
    """Each path and its values, of tables in each other too."""
    for paths, values in lines.items():
        if not isinstance(paths, tuple):
            paths = prefix + text_of("lines: a path", paths, "front.spring.rate")
        if isinstance(values, Mapping) and values and isinstance(paths, str):
            yield from _flat(values, f"{paths}.")
        else:
            yield paths, values


def _axis(paths: str | tuple[str, ...], values: Any) -> Axis:
    if isinstance(paths, tuple):
        if isinstance(values, Span):
            raise TypeError(f"{_short(', '.join(paths))} change together; a span is of one line")
        rows = []
        for place, row in enumerate(values):
            if isinstance(row, str) or len(row) != len(paths):
                raise ValueError(f"entry {place} = {_short(repr(row))} is not one value for each of {_short(', '.join(paths))}")
            rows.append(tuple(_sheet_text(path, value)[0] for path, value in zip(paths, row, strict=True)))
        return paths, rows, None
    if isinstance(values, Span):
        start, unit = _sheet_text(paths, values.start)
        stop, _ = _sheet_text(paths, values.stop)
        count = whole_number(f"{_short(paths)}: count", values.count)
        if not 2 <= count <= sys.maxsize:
            raise ValueError(f"{_short(paths)}: count = {_short(str(count))} is outside its range; a range has at least two values, and at most {sys.maxsize}")
        return (paths,), (start, stop, count), unit
    if not isinstance(values, Quantity | str | list | tuple) and not hasattr(values, "dtype") and isinstance(values, Iterable):
        values = list(values)
    payload, unit = _sheet_values(paths, values)
    return (paths,), payload, unit


class SweepOf(Generic[S]):
    """Lines of a sheet over values; `Sweep` says of which class of sheet."""

    __slots__ = ("_axes", "_grid", "_handle", "_outputs", "_progress", "_sheet", "_start", "_stop", "_threads")

    def __init__(
        self,
        sheet: S,
        axes: tuple[Axis, ...],
        outputs: tuple[str, ...],
        *,
        grid: bool = True,
        threads: int | None = None,
        progress: Progress = None,
    ) -> None:
        if threads is not None:
            threads = at_least_one("threads", threads)
        self._sheet, self._axes, self._outputs = sheet, axes, outputs
        self._grid, self._threads, self._progress = grid, threads, progress
        forms = [(list(paths), payload, unit) for paths, payload, unit in axes]
        self._handle: WhatIfHandle = handle_of(sheet).what_if(forms, grid, list(outputs))
        self._start, self._stop = 0, self._handle.rows()

    @property
    def sheet(self) -> S:
        """The sheet whose lines change."""
        return self._sheet

    @property
    def rows(self) -> int:
        """Number of rows."""
        return self._stop - self._start

    @property
    def shape(self) -> tuple[int, ...]:
        """Number of values on each axis of the whole grid."""
        return tuple(self._handle.lengths()) if self._grid else (self._handle.rows(),)

    @property
    def not_known(self) -> dict[str, str]:
        """Outputs that are known in no row, with the missing inputs of each."""
        return dict(self._handle.not_known())

    @property
    def dropped(self) -> tuple[str, ...]:
        """Written readings that count in no row: each was taken of a line that changes, and is computed from it instead."""
        return tuple(self._handle.dropped())

    def table(self) -> Table:
        """All rows as one table; a refused row has its reason. More than 4 GiB are refused: see `batches` and `to_parquet`."""
        with Told(self._progress, self.rows) as told:
            return self._handle.table(self._start, self._stop, self._threads, told.callback)

    def batches(self, rows: int = ROWS) -> Iterator[Batch]:
        """Record batches of this many rows, each computed on demand; see the Arrow PyCapsule interface.

        `pyarrow.record_batch(batch)` takes one as it is. A last column `reason` says why a row was refused.
        """
        rows = at_least_one("rows", rows)
        with Told(self._progress, self.rows) as told:
            for start in range(self._start, self._stop, rows):
                told.base = start - self._start
                yield self._batch(start, min(start + rows, self._stop), told)

    def partitions(self, count: int) -> list[Self]:
        """These rows as this many sweeps, in order, for other processes and machines."""
        count = max(1, min(at_least_one("count", count), self.rows))
        edges = [self._start + self.rows * place // count for place in range(count + 1)]
        return [self._part(start, stop) for start, stop in zip(edges, edges[1:], strict=False)]

    def to_pandas(self, units: Units | Literal["si"] | None = None) -> pd.DataFrame:
        """All rows as a `pandas.DataFrame`; see `Table.to_pandas`."""
        return self.table().to_pandas(units)

    def to_polars(self, units: Units | Literal["si"] | None = None) -> pl.DataFrame:
        """All rows as a `polars.DataFrame`; see `Table.to_polars`."""
        return self.table().to_polars(units)

    def to_xarray(self, units: Units | Literal["si"] | None = None) -> xr.Dataset:
        """An `xarray.Dataset` over the grid, `attrs["units"]` and `attrs["quantity"]` of each variable.

        Each axis is a dimension with the name of its line; of lines that change together it is that of the first, and the
        others are coordinates along it. Side by side, or of a part of the grid, it is over `row`.
        """
        table = self.table()
        if not self._grid or self.rows != self._handle.rows() or not self._axes:
            return table.to_xarray(units)
        flat = table.to_xarray(units)
        names = [paths[0] for paths, _, _ in self._axes]
        shape = self.shape
        coordinates, variables = {}, {}
        for at, (paths, _, _) in enumerate(self._axes):
            places: tuple[Any, ...] = tuple(slice(None) if at == other else 0 for other in range(len(shape)))
            for path in paths:
                values = flat[path].values.reshape(shape)[places]
                coordinates[path] = (names[at], values, flat[path].attrs)
        for name in flat.data_vars:
            if name not in coordinates:
                variables[name] = (names, flat[name].values.reshape(shape), flat[name].attrs)
        made: xr.Dataset = needed("xarray", "tables").Dataset(variables, coordinates)
        return made

    def to_parquet(self, path: str | os.PathLike[str], *, rows: int = ROWS, **options: Any) -> None:
        """Writes Parquet in bounded memory; needs pyarrow, which takes the `options`. Columns are in coherent SI, with that unit in their names.

        The file stands there whole or not at all: it is written beside its place, under another name. The target of a symbolic link is replaced, and
        the link stays; a file that was there keeps its mode; a pipe, a device or a folder is refused.
        """
        rows = at_least_one("rows", rows)
        pa, pq = needed("pyarrow", "tables"), needed("pyarrow.parquet", "tables")

        with whole_file(path) as beside, pq.ParquetWriter(beside, pa.schema(self), **options) as writer:
            for batch in self.batches(rows):
                writer.write_batch(pa.record_batch(batch))

    def plot(self, output: str | None = None, *, ax: Any = None) -> Any:
        """Draws an output over the one or two lines that change, and returns the axes. Needs matplotlib.

        Of a finding's `.margin` or `.value` the regions of its verdict are hatched and bear their words.
        """
        if len(self._axes) not in (1, 2) or not (self._grid or len(self._axes) == 1):
            raise ValueError(f"{len(self._axes)} axes change; a drawing is over one, or over a grid of two")
        across = [paths[0] for paths, _, _ in self._axes]
        name = output or self._first_number()
        stem, _, what = name.rpartition(".")
        verdict = f"{stem}.verdict" if what in ("margin", "value") and stem in _findings(self._sheet) else None
        drawn = type(self)(
            self._sheet, self._axes, (name, verdict) if verdict else (name,), grid=self._grid, threads=self._threads
        )._part(self._start, self._stop)
        plt = needed("matplotlib.pyplot", "plot")

        axes = plt.subplots(layout="constrained")[1] if ax is None else ax
        table = drawn.table()
        if len(across) == 1:
            draw_line(axes, table, across[0], name, verdict)
        else:
            if self.rows != self._handle.rows():
                raise ValueError("a part of a grid is not drawn over two lines")
            draw_map(axes, table, across, self.shape, name, verdict)
        return axes

    def __arrow_c_schema__(self) -> object:
        """Schema for the Arrow PyCapsule interface: coherent SI, its unit in each name, `unit` and `quantity` in the metadata."""
        return self._handle.batch(0, 0).__arrow_c_schema__()

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """A stream of record batches, each computed when it is asked for; a request for another schema is ignored."""
        return self._handle.stream(self._start, self._stop, ROWS, self._threads)

    def __len__(self) -> int:
        return self.rows

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, SweepOf):
            return NotImplemented
        mine, theirs = self._key(), other._key()
        return mine == theirs and all(map(_same_axis, self._axes, other._axes))

    def __hash__(self) -> int:
        return hash(self._key())

    def _key(self) -> tuple[object, ...]:
        paths = tuple(paths for paths, _, _ in self._axes)
        return self._sheet, paths, self._outputs, self._grid, self._start, self._stop

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self)._restored, (self._sheet, self._axes, self._outputs, self._grid, self._threads, self._start, self._stop)

    @classmethod
    def _restored(
        cls,
        sheet: S,
        axes: tuple[Axis, ...],
        outputs: tuple[str, ...],
        grid: bool,
        threads: int | None,
        start: int,
        stop: int,
    ) -> Self:
        """Object that pickle restores."""
        made = cls(sheet, axes, outputs, grid=grid, threads=threads)
        if not (isinstance(start, int) and isinstance(stop, int) and 0 <= start <= stop <= made._stop):
            raise ValueError(f"rows {_short(repr(start))} to {_short(repr(stop))} are no part of {made._stop} rows")
        made._start, made._stop = start, stop
        return made

    def __repr__(self) -> str:
        by = " x ".join(map(str, self.shape)) if self._grid else "side by side"
        changed = ", ".join(path for paths, _, _ in self._axes for path in paths)
        return f"<Sweep of {self.rows} rows ({by}): {changed}>"

    def _repr_html_(self) -> str:
        from html import escape

        from axlewright._table import PRINTED

        first = self._batch(self._start, min(self._start + PRINTED, self._stop), None).table()
        more = f"<p>the first {first.rows} of {self.rows} rows</p>" if self.rows > first.rows else ""
        lacking = "".join(f"<p>not known: {escape(name)}: {escape(why)}</p>" for name, why in self.not_known.items())
        dropped = f"<p>left out, measured of what changes: {escape(', '.join(self.dropped))}</p>" if self.dropped else ""
        return f"<p>{escape(repr(self))}</p>{first._repr_html_()}{more}{lacking}{dropped}"

    def _batch(self, start: int, stop: int, told: Told | None) -> Batch:
        return self._handle.batch(start, stop, self._threads, None if told is None else told.callback)

    def _part(self, start: int, stop: int) -> Self:
        """A part of its rows; side by side, only the values of these rows are sent."""
        made: Self = object.__new__(type(self))
        for slot in SweepOf.__slots__:
            setattr(made, slot, getattr(self, slot))
        made._start, made._stop = start, stop
        if not self._grid and not any(isinstance(payload, tuple) for _, payload, _ in self._axes):
            axes = tuple((paths, payload[start:stop], unit) for paths, payload, unit in self._axes)
            return type(self)(self._sheet, axes, self._outputs, grid=False, threads=self._threads)  # type: ignore[arg-type]
        return made

    def _first_number(self) -> str:
        first = self._batch(self._start, min(self._start + 1, self._stop), None).table()
        changed = {path for paths, _, _ in self._axes for path in paths}
        for name, column in first.items():
            if name not in changed and name not in self.not_known and (isinstance(column, Quantity) or column.dtype == float):
                return name
        raise ValueError("no output is a number that is known")


def to_dask(sweep: SweepOf[Any], count: int) -> Any:
    """The rows as a `dask.dataframe` of this many partitions, each computed where Dask runs it. Needs dask.

    The columns are those of `Sweep.to_pandas`, and always a last one `reason`; the numbers are the same to the last bit.
    """
    dd = needed("dask.dataframe", "machines")

    parts = sweep.partitions(count)
    one = parts[0]._part(parts[0]._start, min(parts[0]._start + 1, parts[0]._stop))
    return dd.from_map(_frame, parts, meta=_frame(one).iloc[:0])


def _frame(part: SweepOf[Any]) -> pd.DataFrame:
    pd = needed("pandas", "tables")
    frame = part.to_pandas()
    if "reason" not in frame:
        frame["reason"] = pd.Series([None] * len(frame), dtype=object)
    return frame


def _same_axis(one: Axis, other: Axis) -> bool:
    mine, theirs = one[1], other[1]
    if isinstance(mine, np.ndarray) and isinstance(theirs, np.ndarray):
        return np.array_equal(mine, theirs, equal_nan=True)
    return type(mine) is type(theirs) and mine == theirs


def _findings(sheet: Written) -> set[str]:
    return {finding.path for finding in AssessmentOf(sheet)}
