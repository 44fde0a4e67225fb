"""Work that an interrupt must end, in a process of its own: `interrupted.py HOW FOLDER`. It prints `inside` from within the work.

The work itself reports: its native code calls `SimpleQueue.put`, which is native too, and another thread prints. The main thread
runs no Python in the long call, so that an interrupt which the native code does not answer stays without an answer.
"""

import os
import signal
import sys
from pathlib import Path
from queue import SimpleQueue
from threading import Thread
from unittest.mock import patch

from axlewright.sheet import Sheet, Sweep, _progress, span

SHEETS = Path(__file__).parents[3] / "examples/sheets"
MEASURED = SHEETS / "dunlin_measured.toml"
WAYS = ("table", "one thread", "parquet", "stream", "chances")


def long_table(threads: int) -> Sweep:
    """Positions of a linkage, an hour of work; the table takes memory only as far as it is filled."""
    lines = {"front.tie_rod.inner.y": span("350 mm", "360 mm", 6_000), "front.tie_rod.inner.z": span("295 mm", "305 mm", 5_000)}
    return Sheet.load(MEASURED).what_if(lines, ["front.bump_steer_band.verdict"], threads=threads)


def long_stream() -> Sweep:
    """10¹² rows, weeks of work, in the memory of a batch."""
    lines = {"front.spring.rate": span("400 lbf/in", "700 lbf/in", 10**6), "front.unsprung_mass": span("80 kg", "140 kg", 10**6)}
    return Sheet.load(SHEETS / "dunlin.toml").what_if(lines)


def work(how: str, folder: str | os.PathLike[str], inside: "SimpleQueue[int]") -> None:
    """Works until it is interrupted; `inside` is told from within."""
    # The native code calls it without a frame of Python between.
    with patch.object(_progress.Told, "callback", inside.put):
        if how == "table":
            long_table(2).table()
        elif how == "one thread":
            long_table(1).table()
        elif how == "parquet":
            long_table(2).to_parquet(Path(folder) / "sweep.parquet", rows=30_000_000)
        elif how == "stream":
            import pyarrow as pa

            for batch in pa.RecordBatchReader.from_stream(long_stream()):
                inside.put(batch.num_rows)
        elif how == "chances":
            Sheet.load(MEASURED).assess().chances(10**18, progress=inside.put)
    raise AssertionError(f"{how} came to its end")


def main(how: str, folder: str) -> None:
    inside: SimpleQueue[int] = SimpleQueue()

    def say() -> None:
        inside.get()
        print("inside", flush=True)

    signal.signal(signal.SIGINT, signal.default_int_handler)  # whoever runs in the background has it ignored, its children too
    Thread(target=say, daemon=True).start()
    work(how, folder, inside)


if __name__ == "__main__":
    main(*sys.argv[1:])
