"""The build sheet: one document with every measurement, rating and part of a vehicle, and what follows from it.

>>> from axlewright.sheet import Sheet
>>> sheet = Sheet.from_text('''
... [engine]
... stroke = "95 mm +/- 0.5 mm"
... red_line = "4500 rpm"
... piston_speed_limit = "15 m/s"
... ''')
>>> print(sheet["engine.stroke"])
95 mm
>>> print(sheet.assess()["engine.pistons"])
engine.pistons: meets; 14.25 m/s, margin 0.75 m/s, at worst 0.675 m/s

`assess` gives the findings, `what_if` lines over values as a table, `choose` parts of a price list that meet
requirements.
"""

from axlewright._native import Batch
from axlewright.sheet._assessment import Assumption, Chance, Contradiction, Finding, Function, Sensitivity
from axlewright.sheet._choice import Choice, Part, PriceList, Rejected, Worse
from axlewright.sheet._shared import SheetValue
from axlewright.sheet._sheet import Assessment, Chosen, Sheet, Sweep
from axlewright.sheet._sweep import Span, span, to_dask

__all__ = [
    "Assessment",
    "Assumption",
    "Batch",
    "Chance",
    "Choice",
    "Chosen",
    "Contradiction",
    "Finding",
    "Function",
    "Part",
    "PriceList",
    "Rejected",
    "Sensitivity",
    "Sheet",
    "SheetValue",
    "Span",
    "Sweep",
    "span",
    "to_dask",
    "Worse",
]
