"""The build sheet under load: `python bindings/python/benches/sheet.py`.

Ten million rows streamed to Parquet (time, file, greatest memory, each in a process of its own), how soon an interrupt is
answered, a million rows on one and two threads, an assessment from Python.
"""

from __future__ import annotations

import os
import resource
import signal
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path
from statistics import median

from axlewright.sheet import Sheet, Sweep, span

DUNLIN = Path(__file__).parents[3] / "examples/sheets/dunlin.toml"
OUTPUTS = [
    "front.wheel_rate", "front.ride_rate", "front.natural_frequency", "front.bump.margin", "front.bump.verdict",
    "front.droop.margin", "front.frequency.margin", "front.frequency.verdict", "vehicle.frequency_pair.margin", "front.damping.value",
]


def sweep(rows: int, threads: int | None = None) -> Sweep:
    """So many rows over four lines, ten outputs."""
    lines = {
        "front.spring.rate": span("300 lbf/in", "900 lbf/in", rows // 10_000),
        "front.spring.motion_ratio": span("0.5", "0.7", 20),
        "front.unsprung_mass": span("80 kg", "140 kg", 10),
        "front.damper.stroke": span("90 mm", "140 mm", 50),
    }
    return Sheet.load(DUNLIN).what_if(lines, OUTPUTS, threads=threads)


def memory() -> float:
    """Greatest resident memory of this process, in MB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000


def parquet(rows: int) -> None:
    import pyarrow as pa
    import pyarrow.parquet as pq

    before = memory()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "sweep.parquet"
        start = time.perf_counter()
        sweep(rows).to_parquet(path)
        took = time.perf_counter() - start
        after = memory()
        size = path.stat().st_size / 1e6
        assert pq.ParquetFile(path).metadata.num_rows == rows and pa.total_allocated_bytes() < 1e8
    print(f"{rows} rows to Parquet: {took:.2f} s, {size:.0f} MB, memory {before:.0f} MB before, {after:.0f} MB at most")


def interrupted(how: str) -> float:
    """Seconds from the signal until control is back."""
    big, sent = sweep(100_000_000), []
    with tempfile.TemporaryDirectory() as folder:

        def interrupt() -> None:
            sent.append(time.perf_counter())
            os.kill(os.getpid(), signal.SIGINT)

        threading.Timer(0.4, interrupt).start()
        try:
            if how == "parquet":
                big.to_parquet(Path(folder) / "sweep.parquet")
            else:
                big.partitions(10)[0].table()
        except KeyboardInterrupt:
            assert os.listdir(folder) == []
            return time.perf_counter() - sent[0]
    raise AssertionError("it was not interrupted")


def main() -> None:
    subprocess.run([sys.executable, __file__, "parquet", "10000000"], check=True)
    for how in ("table", "parquet"):
        waits = [interrupted(how) for _ in range(9)]
        print(f"interrupt in {how}: {median(waits) * 1e3:.1f} ms, at most {max(waits) * 1e3:.1f} ms of {len(waits)}")
    for threads in (1, 2):
        million = sweep(1_000_000, threads)
        times = []
        for _ in range(7):
            start = time.perf_counter()
            assert sum(batch.rows for batch in million.batches(1_000_000)) == 1_000_000
            times.append(time.perf_counter() - start)
        print(f"1000000 rows, four lines, ten outputs, {threads} thread(s): {median(times):.3f} s")
    sheet, times = Sheet.load(DUNLIN), []
    for _ in range(200):
        start = time.perf_counter()
        sheet.assess()
        times.append(time.perf_counter() - start)
    print(f"assess: {median(times) * 1e6:.0f} us")


if __name__ == "__main__":
    if sys.argv[1:2] == ["parquet"]:
        parquet(int(sys.argv[2]))
    else:
        main()
