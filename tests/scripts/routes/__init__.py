"""Routes to the numbers of the rows that do not use the crate: one file a system. `check.py` runs them."""

from __future__ import annotations

from fractions import Fraction

ROUTES: list[tuple[str, str, object]] = []


class Refused(ValueError):
    """The route has no answer: the row must be a refusal."""


def route(subject: str, says: str = ""):
    """A route to the results of a function, a model or a method. If a function has several, the words in `says` stand in the row's source."""

    def keep(function):
        ROUTES.append((subject, says, function))
        return function

    return keep


def exact(number: float) -> Fraction:
    """The decimal number that was written, without rounding."""
    return Fraction(repr(float(number)))


def second_difference(energy) -> Fraction:
    """Stiffness of a quadratic energy, without error."""
    return energy(Fraction(1)) + energy(Fraction(-1)) - 2 * energy(Fraction(0))


INCH, POUND, GRAVITY = Fraction("0.0254"), Fraction("0.45359237"), Fraction("9.80665")
FORCE = POUND * GRAVITY
PSI = FORCE / INCH**2
RPM = Fraction(3.141592653589793) / 30
DEGREE = Fraction(3.141592653589793) / 180
UNITS = {
    "": 1, "m": 1, "mm": Fraction(1, 1000), "in": INCH, "kg": 1, "lb": POUND, "N": 1, "N/m": 1, "N/mm": 1000, "lbf/in": FORCE / INCH,
    "kN": 1000, "mm²": Fraction(1, 10**6), "mm⁴": Fraction(1, 10**12), "mm³ modulus": Fraction(1, 10**9), "N·m": 1, "kg·m²": 1, "rpm": RPM, "deg": DEGREE, "rad": 1, "%": Fraction(1, 100), "L": Fraction(1, 1000),
    "Pa": 1, "Pa gauge": 1, "Pa absolute": 1, "kPa": 1000, "kPa gauge": 1000, "kPa absolute": 1000, "psi": PSI, "psi gauge": PSI,
    "MPa": 1000000, "GPa": 1000000000, "K": 1, "delta_K": 1, "delta_degC": 1, "delta_degF": Fraction(5, 9),
}  # fmt: skip


def quantity(text: str):
    """Number of a text in coherent SI, exact; a text that is no quantity stays as it is."""
    number, _, unit = text.partition(" ")
    try:
        number = Fraction(number)
    except ValueError:
        return text
    if unit == "°C":
        return number + Fraction("273.15")
    if unit == "°F":
        return (number - 32) * Fraction(5, 9) + Fraction("273.15")
    return number * UNITS[unit]


def in_si(document):
    """A document with its quantities as exact numbers in coherent SI."""
    if isinstance(document, dict):
        return {key: in_si(value) for key, value in document.items()}
    if isinstance(document, list):
        return [in_si(value) for value in document]
    if isinstance(document, str):
        return quantity(document)
    return exact(document) if isinstance(document, float) else document
