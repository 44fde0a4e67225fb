"""A what-if grid over several processes, or machines: the Dunlin's front end, by Dask.

Two workers on this machine compute what two threads compute here, and the numbers are the same to the last bit. To use a
running cluster, give the address of its scheduler. Figures are invented; needs `dask` and `distributed`.
"""

import json
import sys
import time
from pathlib import Path

from axlewright.sheet import Sheet, span, to_dask

SHEETS = Path(__file__).resolve().parents[1] / "sheets"
LINES = {
    "front.spring.rate": span("300 lbf/in", "900 lbf/in", 100),
    "front.spring.motion_ratio": span("0.5", "0.7", 20),
    "front.unsprung_mass": span("80 kg", "140 kg", 10),
    "front.damper.stroke": span("90 mm", "140 mm", 50),
}
OUTPUTS = ["front.wheel_rate", "front.natural_frequency", "front.bump.margin", "front.bump.verdict"]


def main(arguments: list[str]) -> None:
    from distributed import Client, LocalCluster

    addresses = [word for word in arguments if not word.startswith("--")]
    # A worker is a process that runs one partition at a time, on one thread.
    sweep = Sheet.load(SHEETS / "dunlin.toml").what_if(LINES, OUTPUTS, threads=1)
    start = time.perf_counter()
    cluster = None
    if not addresses:
        cluster = LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None, memory_limit="1GiB")
    with Client(addresses[0] if addresses else cluster) as client:
        workers = len(client.scheduler_info()["workers"])
        frame = to_dask(sweep, 8)
        stiffest = frame["front.wheel_rate [N/mm]"].max().compute()  # the first call waits for the workers' imports
        started = time.perf_counter()
        there = frame.compute()
        done = time.perf_counter()
    if cluster is not None:
        cluster.close()

    threads = Sheet.load(SHEETS / "dunlin.toml").what_if(LINES, OUTPUTS, threads=2)
    begun = time.perf_counter()
    here = threads.to_pandas()
    ended = time.perf_counter()
    same = all(
        there[name].to_numpy().tobytes() == here[name].to_numpy().tobytes()
        if here[name].dtype == float
        else there[name].tolist() == here[name].tolist()
        for name in here
    )
    if "--json" in arguments:
        report = {"workers": workers, "rows": len(there), "same": same, "workers_s": done - started, "threads_s": ended - begun}
        print(json.dumps(report))
        return
    print(f"{len(there)} rows from {workers} workers in {done - started:.2f} s, after {started - start:.2f} s to start them")
    print(f"{len(here)} rows on two threads in {ended - begun:.2f} s")
    print("the same to the last bit" if same else "NOT the same")
    print(f"the stiffest wheel rate, found by the workers: {stiffest:.1f} N/mm")
    print("\n".join(f"{word}: {count}" for word, count in there["front.bump.verdict"].value_counts().items()))


# Each worker imports this file; the import must not start a run.
if __name__ == "__main__":
    main(sys.argv[1:])
