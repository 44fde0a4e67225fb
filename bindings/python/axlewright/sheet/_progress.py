"""Progress of long work."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Self

from axlewright._extra import needed
from axlewright.sheet._shared import Progress


class Told:
    """Reports the number of finished rows: to a callable of two counts, to a bar, or to nobody."""

    def __init__(self, progress: Progress, total: int) -> None:
        self.base, self.total = 0, total
        self._bar: Any = None
        self._tell: Callable[[int, int], object] | None = None
        if progress is True:
            self._bar = needed("tqdm.auto", "progress").tqdm(total=total, unit="row", unit_scale=True)
        elif callable(progress):
            self._tell = progress
        self._last = -1

    @property
    def callback(self) -> Callable[[int], object] | None:
        return self.at if self._bar is not None or self._tell is not None else None

    def at(self, done: int) -> None:
        """This many rows of this piece are done."""
        now = self.base + done
        if now == self._last:
            return
        self._last = now
        if self._bar is not None:
            self._bar.update(now - self._bar.n)
        elif self._tell is not None:
            self._tell(now, self.total)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, *rest: object) -> None:
        if kind is None:
            self.base = 0
            self.at(self.total)
        if self._bar is not None:
            self._bar.close()
