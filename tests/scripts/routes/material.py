"""Material: gauges by the weights, fractions and ratios that define them."""

from fractions import Fraction

import mpmath

from . import INCH, Refused, route

# Ounces a square foot (from memory): the same weights define both gauges of sheet, over 41.82 lb/ft2 an inch or over 40.
OUNCES = {3: 160, 7: 120, 10: 90, 11: 80, 14: 50, 16: 40, 18: 32, 20: 24, 26: 12, 30: 8}
# Fractions of an inch (from memory).
STAINLESS = {3: "1/4", 7: "3/16", 10: "9/64", 11: "1/8", 13: "3/32", 16: "1/16", 20: "3/80", 30: "1/80"}


@route("material.sheet_steel_gauge_thickness")
def sheet_steel(number):
    return Fraction(OUNCES[int(number)], 16) / Fraction("41.82") * INCH


@route("material.stainless_gauge_thickness")
def stainless(number):
    return Fraction(STAINLESS[int(number)]) * INCH


@route("material.aluminium_gauge_thickness")
def aluminium(number):
    step = mpmath.root(mpmath.mpf("0.005") / mpmath.mpf("0.46"), 39)
    return mpmath.mpf("0.46") * step ** (int(number) + 3) * mpmath.mpf("0.0254")


@route("material.StockGauge.thickness")
def stock_gauge(document):
    routes = {"sheet_steel": sheet_steel, "aluminium": aluminium, "stainless_sheet": stainless}
    if document.get("stock") not in routes:
        raise Refused
    return routes[document["stock"]](document["number"])


@route("material.Stock.strength")
def stock(document):
    # Pure shear of stress s is tension along one diagonal and compression along the other: both ways have the same energy.
    elastic, poisson = Fraction(document["elastic_modulus"]), Fraction(document["poisson_ratio"])
    energy = (1 + 1 + 2 * poisson) / (2 * elastic)
    return {"shear_modulus": 1 / (2 * energy)}
