"""Work that an interrupt must end, in a process of its own: `interrupted.py HOW FOLDER`. It prints `inside` from within the work.

The work itself reports: its native code calls `SimpleQueue.put`, which is native too, and another thread prints. The main thread
runs no Python in the long call, so that an interrupt which the native code does not answer stays without an answer. A method of a model reports nothing:
there the main thread says that it enters the native call, and keeps the interpreter from then on until that call releases it. Another thread that runs
is therefore proof that it did.
"""

import os
import signal
import sys
import threading
from pathlib import Path
from queue import SimpleQueue
from threading import Thread
from unittest.mock import patch

import numpy as np

from axlewright import ride
from axlewright.sheet import Sheet, Sweep, _progress, span
from axlewright.units import m

SHEETS = Path(__file__).parents[3] / "examples/sheets"
MEASURED = SHEETS / "dunlin_measured.toml"
WAYS = ("table", "one thread", "parquet", "stream", "chances", "linkage", "motion")


def long_table(threads: int) -> Sweep:
    """Positions of a linkage, an hour of work; the table takes memory only as far as it is filled."""
    lines = {"front.tie_rod.inner.y": span("350 mm", "360 mm", 6_000), "front.tie_rod.inner.z": span("295 mm", "305 mm", 5_000)}
    return Sheet.load(MEASURED).what_if(lines, ["front.bump_steer_band.verdict"], threads=threads)


def long_stream() -> Sweep:
    """10¹² rows, weeks of work, in the memory of a batch."""
    lines = {"front.spring.rate": span("400 lbf/in", "700 lbf/in", 10**6), "front.unsprung_mass": span("80 kg", "140 kg", 10**6)}
    return Sheet.load(SHEETS / "dunlin.toml").what_if(lines)


def long_linkage() -> None:
    """Positions of a linkage, minutes of work."""
    linkage = Sheet.load(MEASURED).model("front.suspension")
    travel, rack = np.linspace(-0.04, 0.04, 3_000) * m, np.linspace(-0.02, 0.02, 2_000) * m
    linkage.table(travel=travel, rack_travel=rack)


def long_motion() -> None:
    """A motion of a million rows, again and again."""
    points = [{"velocity": f"{v} m/s", "force": f"{v * 3000} N"} for v in (-20, -1, 1, 20)]
    car = ride.NonlinearQuarterCar(
        sprung_mass="300 kg", unsprung_mass="40 kg", wheel_rate="25 N/mm", tyre_rate="220 N/mm", damper={"gas_force": "0 N", "points": points}, damper_motion_ratio=0.7
    )
    while True:
        car.step(height="30 mm", duration="9.9 s", time_step="0.00001 s")


def hand_over(method: str, inside: "SimpleQueue[int]") -> None:
    """Lets another thread report as soon as a native method of this name has released the interpreter."""
    entered = threading.Event()

    def enters(_: object, event: str, called: object) -> None:
        if event == "c_call" and getattr(called, "__name__", "") == method:
            sys.setprofile(None)
            entered.set()

    def report() -> None:
        entered.wait()
        inside.put(0)

    Thread(target=report, daemon=True).start()
    sys.setswitchinterval(1e6)  # seconds: nobody takes the interpreter from the main thread, which gives it up itself
    sys.setprofile(enters)


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
            Sheet.load(MEASURED).assess().chances(10**7, progress=inside.put)
        elif how in ("linkage", "motion"):
            hand_over("table" if how == "linkage" else "step", inside)
            (long_linkage if how == "linkage" else long_motion)()
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
