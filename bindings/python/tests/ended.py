"""A process that ends while its threads work, and are daemons: `ended.py HOW`. The threads work without end, and each has begun before the end."""

import sys
from pathlib import Path
from queue import SimpleQueue
from threading import Thread

from axlewright.sheet import Sheet, span

SHEETS = Path(__file__).parents[3] / "examples/sheets"
WAYS = ("chances", "sweep", "model", "calls")
THREADS = 3


def work(how: str, inside: "SimpleQueue[int]") -> None:
    sheet = Sheet.load(SHEETS / "dunlin_measured.toml")
    if how == "chances":
        sheet.assess().chances(10**7, progress=inside.put)
    elif how == "sweep":
        lines = {"front.tie_rod.inner.y": span("350 mm", "360 mm", 6_000), "front.tie_rod.inner.z": span("295 mm", "305 mm", 500)}
        # The callback has a frame of Python: it may lose the interpreter in its middle.
        progress = lambda done, total: inside.put(done)  # noqa: E731
        sheet.what_if(lines, ["front.bump_steer_band.verdict"], threads=1, progress=progress).table()
    elif how == "model":
        linkage = sheet.model("front.suspension")
        inside.put(0)
        while True:
            linkage.table(travel=[f"{x} mm" for x in range(-40, 40)], rack_travel=["0 mm"])
    else:
        inside.put(0)
        while True:
            Sheet.from_text(sheet.to_toml()).assess().to_json()


def main(how: str) -> None:
    begun: SimpleQueue[int] = SimpleQueue()
    for _ in range(THREADS):
        own: SimpleQueue[int] = SimpleQueue()
        Thread(target=work, args=(how, own), daemon=True).start()
        own.get()


if __name__ == "__main__":
    main(*sys.argv[1:])
    print("ends", flush=True)
