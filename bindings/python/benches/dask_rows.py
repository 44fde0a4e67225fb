"""A billion rows with Dask on two workers, beside two threads of this process over the same chunks: `dask_rows.py [ROWS [CHUNK [ROUNDS]]]`.

Both ways make the same rates, call the same ufunc and add up its results; neither holds more than a few chunks. The workers are there before the
first round, and one round warms up. The rounds go in turn. Each way has the median of its seconds, and that of the processor seconds of this process
and of the workers, which say more on a machine with other work.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from statistics import median

import dask.array as da
import numpy as np
from distributed import Client, LocalCluster
from measure import row, seconds

from axlewright import si

LOW, HIGH, TYRE = 1e4, 5e4, 2e5


def chunk(first: int, count: int, step: float) -> float:
    """The sum over one chunk, as Dask computes it."""
    rates = np.linspace(LOW + first * step, LOW + (first + count - 1) * step, count)
    return float(si.spring.ride_rate(rates, TYRE).sum())


def main(rows: int = 10**9, size: int = 5_000_000, rounds: int = 5) -> None:
    step = (HIGH - LOW) / (rows - 1)
    places = [(first, min(size, rows - first), step) for first in range(0, rows, size)]
    sums: list[list[float]] = [[], []]
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster) as client, ThreadPoolExecutor(2) as pool:

        def by_dask() -> None:
            rates = da.linspace(LOW, HIGH, rows, chunks=size)
            sums[0].append(float(si.spring.ride_rate(rates, TYRE).sum().compute()))

        def by_threads() -> None:
            sums[1].append(sum(pool.map(lambda place: chunk(*place), places)))

        def processor() -> float:
            return time.process_time() + sum(client.run(time.process_time).values())

        def both(call: Callable[[], object]) -> tuple[float, float]:
            before = processor()
            taken = seconds(call)
            return taken, processor() - before

        times = [(*both(by_dask), *both(by_threads)) for _ in range(rounds + 1)][1:]
    near = all(abs(one / other - 1) < 1e-9 for one, other in zip(*sums, strict=True))
    print(f"rounds: {[tuple(round(x, 2) for x in one) for one in times]}; sums agree: {near}", file=sys.stderr)
    dask, dask_cpu, threads, threads_cpu = (median(column) for column in zip(*times, strict=True))
    row(f"Dask on two workers over {rows:.0e} rows, two threads", dask, threads, "s", "faster 0.87")
    row(f"Dask on two workers over {rows:.0e} rows, processor seconds", dask_cpu, threads_cpu, "s", "faster 0.87")


if __name__ == "__main__":
    main(*(int(float(word)) for word in sys.argv[1:]))
