"""The sheet itself, and its answers."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, Self

from axlewright._native import _sheet_text
from axlewright.sheet._assessment import AssessmentOf
from axlewright.sheet._choice import Choice, ChosenOf, Part, PriceList
from axlewright.sheet._lines import flat_lines
from axlewright.sheet._shared import Lines, Progress, texts_of, whole_number
from axlewright.sheet._sweep import SweepOf, axes_of
from axlewright.sheet._written import Written


class Sheet(Written):
    """A build sheet. It maps the path of each written line to its value, and never changes.

    A value is text with its unit, `"225 lbf/in +/- 3 %"`, a quantity of ours or of the units library pint. A line that is
    not written follows from others or is missing; nothing is guessed.
    """

    __slots__ = ()

    def fit(self, choice: Choice | Part | Lines | None) -> Self:
        """This sheet with other parts: `sheet.fit(chosen.cheapest)`, a part of a price list, or lines as for `Sheet`.

        Writes their lines, and leaves out every reading that was taken on a part that they replace. `remarks` tells which;
        measure them again. Without a choice, because no combination meets every requirement, it refuses. `None` as a value
        writes nothing; `with_` takes a line out.
        """
        if choice is None:
            raise ValueError("there is no choice to fit: no combination of parts meets every requirement")
        if isinstance(choice, Choice):
            return self._of(self._handle.fit(list(choice.lines.items())))
        if isinstance(choice, Part):
            return self._of(self._handle.fit(choice.lines))
        if not isinstance(choice, Mapping):
            some = "; a Chosen has them as cheapest, lightest and feasible" if isinstance(choice, ChosenOf) else ""
            raise TypeError(f"choice: a Choice, a Part or a mapping of paths to values is wanted, not {type(choice).__name__}{some}")
        written = ((path, value) for path, value in flat_lines(choice) if value is not None)
        return self._of(self._handle.fit([(path, _sheet_text(path, value)[0]) for path, value in written]))

    def assess(self) -> Assessment:
        """Walks the sheet through everything that the systems compute and ask."""
        return Assessment(self)

    def what_if(
        self,
        lines: Mapping[str, Any] | Mapping[tuple[str, ...], Any] | Mapping[str | tuple[str, ...], Any],
        outputs: str | Sequence[str] = (),
        *,
        grid: bool = True,
        threads: int | None = None,
        progress: Progress = None,
    ) -> Sweep:
        """Lines over values and the outputs that follow, computed on demand.

        `lines` maps a path to a list of texts or quantities, an array of quantities, or a `span`; a tuple of paths to a list
        of tuples, whose lines change together. Every value meets every other, the last line fastest; with `grid=False`
        they go side by side. `outputs` are paths of lines, or of findings followed by `.value`, `.margin` or `.verdict`;
        without any, the margin and verdict of every finding. On all processors, or on so many `threads`.

        >>> sheet = Sheet({"engine.red_line": "4500 rpm", "engine.piston_speed_limit": "15 m/s"})
        >>> sweep = sheet.what_if({"engine.stroke": ["90 mm", "95 mm"]}, ["engine.pistons.margin"])
        >>> sweep.table()["engine.pistons.margin"].to("m/s").round(3).tolist()
        [1.5, 0.75]
        """
        return Sweep(self, axes_of(lines), texts_of("outputs", outputs, "front.frequency.margin"), grid=grid, threads=threads, progress=progress)

    def choose(
        self,
        prices: PriceList,
        requirements: str | Iterable[str],
        *,
        limit: int = 1000,
        progress: Callable[[int], object] | None = None,
    ) -> Chosen:
        """Parts of a price list, one of each kind, that meet every requirement on this sheet.

        A requirement is text: `"1.2 Hz <= front.natural_frequency <= 1.4 Hz"`, `"cost <= 7000"`, `"mass <= 60 kg"`,
        `"margins >= 1.3"`, `"front.coil_bind.verdict = meets"`, `"no finding worse"`. At most `limit` combinations are listed; the
        cheapest, the lightest and the front are found among all. `worse` of a choice names the findings that are worse with it.
        """
        wanted = texts_of("requirements", requirements, "cost <= 7000")
        return Chosen._of(self, prices, wanted, whole_number("limit", limit), progress)


class Assessment(AssessmentOf[Sheet]):
    """The findings of one sheet, in the order of the systems; by place, or by path: `assessment["front.spring_bind"]`.

    Never one verdict for the whole vehicle. Numbers are shown in the units in which the sheet writes such lines, as in its report.
    """

    __slots__ = ()


class Sweep(SweepOf[Sheet]):
    """Lines of a sheet over values, computed on demand: whole, or piece by piece in bounded memory.

    It pickles, and so do its `partitions`; an interrupt stops it at once. Row by row the numbers are those of the single
    calls, whatever the threads, pieces and machines.
    """

    __slots__ = ()


class Chosen(ChosenOf[Sheet]):
    """The possible choices."""

    __slots__ = ()
