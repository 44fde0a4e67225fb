"""Every way in for a text of the caller."""

from collections.abc import Callable
from typing import Any

import axlewright
from axlewright import Quantity, Work, cooling, driveline, spring, tyre, work
from axlewright.sheet import PriceList, Sheet, span
from axlewright.units import N_mm

#: Calls that a long text makes refuse.
WAYS_IN: list[Callable[[str], Any]] = [
    lambda text: Quantity(text),
    lambda text: Quantity(3, text),
    lambda text: 3 * N_mm == Quantity(3, text),
    lambda text: (3 * N_mm).to(text),
    lambda text: f"{3 * N_mm:{text}}",
    lambda text: spring.ride_rate(wheel_rate=text, tyre_rate="1 N/mm"),
    lambda text: spring.ride_rate(wheel_rate="1 N/mm", tyre_rate="1 N/mm", invalid=text),
    lambda text: spring.ride_rate(**{text: 1}),
    lambda text: Work(text, {}),
    lambda text: work(spring.ride_rate, wheel_rate="1 N/mm", tyre_rate="1 N/mm").shown_in(text),
    lambda text: tyre.Tyre(marking=text).rolling(tread_worn="0 mm"),
    lambda text: tyre.Tyre(**{text: 1}),
    lambda text: cooling.Coolant.from_text(text),
    lambda text: cooling.Coolant.from_text(f'{text} = 3'),
    lambda text: cooling.Coolant.from_text(f'{{"{text}": 3}}'),
    lambda text: cooling.Coolant.from_text(f'liquid = "{text}"'),
    lambda text: cooling.Coolant(liquid=text, cap="15 psi gauge", hottest="90 °C"),
    lambda text: cooling.Coolant(liquid={text: [3, {4: 5}]}, cap="15 psi gauge", hottest="90 °C"),
    lambda text: driveline.Gearbox(gears=[{text: object()}], final_drive=4.1, rolling_radius="0.3 m", red_line="4000 rpm"),
    lambda text: Sheet.from_text(text),
    lambda text: Sheet.from_text(f'{text} = 3'),
    lambda text: Sheet.from_text(f'[{text}]\na = 3'),
    lambda text: Sheet.from_text(f'[front.spring]\n{text} = "3 N/mm"'),
    lambda text: Sheet.from_text(f'[front.spring]\nrate = "{text}"'),
    lambda text: Sheet.from_text(f'measure_again = ["{text}"]'),
    lambda text: Sheet({text: "3 N/mm"}),
    lambda text: Sheet({"front.spring.rate": text}),
    lambda text: Sheet({"front.tyre.size": text}),
    lambda text: Sheet()[text],
    lambda text: Sheet().text(text),
    lambda text: Sheet().model(text),
    lambda text: Sheet().with_({text: None}),
    lambda text: Sheet().assess()[text],
    lambda text: Sheet().assess().value(text),
    lambda text: Sheet().assess().text(text),
    lambda text: Sheet().assess().work(text),
    lambda text: Sheet().assess().sensitivity(text),
    lambda text: Sheet().what_if({text: ["3 N/mm"]}),
    lambda text: Sheet().what_if({"front.spring.rate": [text]}),
    lambda text: Sheet().what_if({"front.tyre.size": [text, object()]}),
    lambda text: Sheet().what_if({"front.spring.rate": span(text, "3 N/mm", 3)}),
    lambda text: Sheet().what_if({"front.spring.rate": ["3 N/mm"]}, [text]),
    lambda text: Sheet().choose(PriceList([]), [text]),
    lambda text: Sheet().choose(PriceList([]), [f"1 Hz <= {text}"]),
    lambda text: Sheet().choose(PriceList([]), [f"cost {' ' * len(text)}<= 3 kg"]),
    lambda text: PriceList.from_csv(f"part,kind,cost,{text}\na,b,3,4"),
    lambda text: PriceList.from_csv(f"part,kind,cost\na,b,{text}"),
    lambda text: PriceList.from_csv(f"part,kind,cost\n{text},b,3"),
    lambda text: PriceList.from_toml(f'parts = [{{ part = "a", kind = "b", cost = "{text}" }}]'),
    lambda text: PriceList.from_toml(f'parts = [{{ part = "a", {text} = "b", cost = 3 }}]'),
    lambda text: PriceList.from_toml(f"{text} = []"),
    lambda text: PriceList([{"part": "a", "kind": "b", "cost": 3, "mass": text}]),
    lambda text: PriceList.load(f"list.{text}"),
    lambda text: axlewright.Table({"a": [1.0]})[text],
    lambda text: axlewright.Table({"a": [1.0]}).to_pandas({text: "mm"}),
    lambda text: axlewright.verdict_of_ratio(text, 1.0),
]
