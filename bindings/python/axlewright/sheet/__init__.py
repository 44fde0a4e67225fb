"""The build sheet: one document with every measurement, rating and part of a vehicle, and what follows from it.

>>> from axlewright.sheet import Sheet
>>> sheet = Sheet.from_text('''
... [front.spring]
... rate = "225 lbf/in +/- 3 %"
... motion_ratio = 0.6
... ''')
>>> print(sheet["front.spring.rate"])
225 lbf/in
>>> print(f"{sheet.assess().value('front.wheel_rate'):.2f}")
14.19 N/mm

`assess` gives the findings, `what_if` lines over values as a table, `choose` parts of a price list that meet
requirements.
"""

from axlewright._native import Batch
from axlewright.sheet._assessment import Assessment, Assumption, Chance, Finding, Function, Sensitivity
from axlewright.sheet._choice import Choice, Chosen, Part, PriceList, Rejected
from axlewright.sheet._sheet import Sheet, SheetValue
from axlewright.sheet._sweep import Span, Sweep, span, to_dask

__all__ = [
    "Assessment",
    "Assumption",
    "Batch",
    "Chance",
    "Choice",
    "Chosen",
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
]
