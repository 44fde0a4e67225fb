"""Seconds of a call, and the line of a measurement, for the benches beside it."""

from __future__ import annotations

import time
from collections.abc import Callable


def row(item: str, ours: float, peer: float | None, unit: str, wanted: str) -> None:
    """A measurement as `cargo xtask bench` reads it."""
    print(item, f"{ours:.9g}", "" if peer is None else f"{peer:.9g}", unit, wanted, sep="\t", flush=True)


def seconds(call: Callable[[], object]) -> float:
    """Seconds that a call takes."""
    start = time.perf_counter()
    call()
    return time.perf_counter() - start
