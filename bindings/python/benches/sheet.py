"""The build sheet from Python, for `cargo xtask bench`: a line a measurement, as in `bench.py`.

Assessments with tolerances beside the same without, a million rows beside the same formulas in NumPy, ten million rows streamed to Parquet (peak memory, in a process of its own),
how soon an interrupt is answered, two workers beside two threads.
"""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path
from queue import SimpleQueue
from statistics import median

from measure import row, seconds
import numpy as np

from axlewright.sheet import Sheet, Sweep, span, to_dask
from axlewright.units import N_per_m, kg

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))
from interrupted import WAYS, work  # noqa: E402

DEMOS = Path(__file__).parents[3] / "examples/sheets"
DUNLIN = DEMOS / "dunlin.toml"
N = 1_000_000
OUTPUTS = [
    "front.wheel_rate", "front.ride_rate", "front.natural_frequency", "front.ride_frequency", "front.damping_ratio",
    "front.droop_remaining", "front.bump_remaining", "front.spring.bind_margin", "driveline.cruise_engine_speed", "final_drive.output_torque",
]


def number(of: object) -> float:
    """In coherent SI; a word is no number."""
    of = getattr(of, "si", of)
    return float(of) if isinstance(of, float | int) else float("nan")


def by_hand(sheet: Sheet, k, r, unsprung, final_drive):  # type: ignore[no-untyped-def]
    """The ten outputs in NumPy, and nothing else; what does not change is a number."""
    value = {path: number(sheet[path]) for path in sheet}
    assessment = sheet.assess()

    def of(path: str) -> float:
        return number(assessment.value(path))

    axle, gear, torque = of("front.axle_mass"), of("gearbox.top_ratio"), of("transfer_case.output_torque")
    front = {path.removeprefix("front."): number for path, number in value.items() if path.startswith("front.")}
    mass = (axle - unsprung) / 2.0
    force = mass * 9.80665 / r
    length = front["spring.free_length"] - force / k
    wheel = k * r * r
    ride = wheel * front["tyre.rate"] / (wheel + front["tyre.rate"])
    natural = np.sqrt(wheel / mass) / (2.0 * np.pi)
    riding = np.sqrt(ride / mass) / (2.0 * np.pi)
    damping = front["damper.rate"] * r * r / (2.0 * np.sqrt(wheel * mass))
    sag = (front["spring.droop_length"] - length) / r
    shortest = front["spring.solid_length"] + front["spring.minimum_gap"]
    damper = front["damper.stroke"] / r
    coils = (length - shortest) / r
    bump = np.minimum(np.minimum(coils, damper - sag), front["bump_stop_travel"] - sag)
    bind = front["spring.droop_length"] - damper * r - shortest
    engine = value["use.cruise_speed"] * gear * final_drive / of("driveline.effective_radius")
    wheels = torque * final_drive * value["final_drive.efficiency"]
    return wheel, ride, natural, riding, damping, sag, bump, bind, engine, wheels


def tolerances() -> None:
    for name in ("dunlin", "dunlin_measured", "wagtail", "dray"):
        text = (DEMOS / f"{name}.toml").read_text()
        counted, exact = Sheet.from_text(text), Sheet.from_text(re.sub(r" \+/- [^\"]*", "", text))
        times = [(seconds(counted.assess), seconds(exact.assess)) for _ in range(31)]
        ours, peer = (median(column) for column in zip(*times, strict=True))
        row(f"assessment of {name}, without its tolerances", ours * 1e3, peer * 1e3, "ms", "faster 0")


def million() -> None:
    sheet, random = Sheet.load(DUNLIN), np.random.default_rng(20)
    k, r = random.uniform(7e4, 1.2e5, N), random.uniform(0.5, 0.7, N)
    unsprung, final_drive = random.uniform(80.0, 140.0, N), random.uniform(3.0, 5.0, N)
    lines = {
        "front.spring.rate": k * N_per_m, "front.spring.motion_ratio": r,
        "front.unsprung_mass": unsprung * kg, "final_drive.ratio": final_drive,
    }
    sweep = sheet.what_if(lines, OUTPUTS, grid=False)
    table = sweep.table()
    for name, wanted in zip(OUTPUTS, by_hand(sheet, k, r, unsprung, final_drive), strict=True):
        np.testing.assert_allclose(np.asarray(getattr(table[name], "si", table[name])), wanted, rtol=1e-9, atol=1e-12, err_msg=name)
    times = [(seconds(sweep.table), seconds(lambda: by_hand(sheet, k, r, unsprung, final_drive))) for _ in range(9)]
    ours, peer = (median(column) for column in zip(*times[1:], strict=True))
    row("what-if, 1e6 rows, four lines, ten outputs, NumPy by hand", ours * 1e3, peer * 1e3, "ms", "faster 0.333333")


def grid(rows: int) -> Sweep:
    """So many rows over four lines, ten outputs."""
    lines = {
        "front.spring.rate": span("400 lbf/in", "700 lbf/in", rows // 10_000),
        "front.spring.motion_ratio": span("0.5", "0.7", 20),
        "front.unsprung_mass": span("80 kg", "140 kg", 10),
        "front.damper.stroke": span("90 mm", "140 mm", 50),
    }
    return Sheet.load(DUNLIN).what_if(lines, OUTPUTS)


def parquet(rows: int) -> None:
    """Peak resident memory of this process while it writes, in MB; `getrusage` would tell that of its parent where that is more."""
    import pyarrow.parquet as pq

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "sweep.parquet"
        grid(rows).to_parquet(path)
        assert pq.ParquetFile(path).metadata.num_rows == rows
    status = dict(line.split(":", 1) for line in Path("/proc/self/status").read_text().splitlines())
    print(int(status["VmHWM"].removesuffix("kB")) * 1024 / 1e6)


def interrupted(how: str) -> float:
    """Seconds from the signal, which is sent when the work says that it runs, until control is back."""
    inside: SimpleQueue[int] = SimpleQueue()
    sent: list[float] = []

    def interrupt() -> None:
        inside.get()
        sent.append(time.perf_counter())
        os.kill(os.getpid(), signal.SIGINT)

    threading.Thread(target=interrupt, daemon=True).start()
    with tempfile.TemporaryDirectory() as folder:
        try:
            work(how, folder, inside)
        except KeyboardInterrupt:
            return time.perf_counter() - sent[0]
    raise AssertionError("it was not interrupted")


def workers() -> None:
    from distributed import Client, LocalCluster

    sweep = grid(N)
    with LocalCluster(n_workers=2, threads_per_worker=1, processes=True) as cluster, Client(cluster):
        frame = to_dask(sweep, 8)
        frame.compute()
        theirs = median(seconds(frame.compute) for _ in range(5))
    ours = median(seconds(sweep.to_pandas) for _ in range(5))
    row("what-if, 1e6 rows to pandas on two threads, two Dask workers", ours, theirs, "s", "faster 0")


def main() -> None:
    tolerances()
    million()
    peak = subprocess.run([sys.executable, __file__, "parquet", "10000000"], check=True, capture_output=True, text=True)
    row("what-if, 1e7 rows to Parquet, peak memory", float(peak.stdout), None, "MB", "below 500")
    for how in WAYS:
        row(f"interrupt, {how}, the slowest of 9", max(interrupted(how) for _ in range(9)), None, "s", "below 0.2")
    workers()


if __name__ == "__main__":
    if sys.argv[1:2] == ["parquet"]:
        parquet(int(sys.argv[2]))
    else:
        main()
