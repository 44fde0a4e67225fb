"""Fluid: Raoult's law on the vapour pressures of two libraries, and what is poured, by weight. The libraries are imported where they are needed: the rest runs without."""

from fractions import Fraction

from scipy.optimize import brentq

from . import air, exact, route  # noqa: F401  # the chains begin in the air

GLYCOLS = {"ethylene": ("107-21-1", "C2H6O2", Fraction("1113.5")), "propylene": ("57-55-6", "C3H8O2", Fraction("1036.1"))}
WATER = Fraction("998.207")


@route("fluid.water_boiling_temperature")
def water_boiling_temperature(absolute_pressure):
    from iapws.iapws97 import _TSat_P

    return _TSat_P(absolute_pressure / 1e6)


def glycol_pressure(name):
    from chemicals.dippr import EQ101
    from chemicals.vapor_pressure import Psat_data_Perrys2_8

    data = Psat_data_Perrys2_8.loc[GLYCOLS[name][0]]
    return lambda temperature: EQ101(temperature, *(float(data[f"C{i}"]) for i in range(1, 6)))


def weights(name, mass_fraction):
    """Share of glycol in the molecules."""
    from chemicals.elements import molecular_weight, nested_formula_parser

    weight = lambda formula: molecular_weight(nested_formula_parser(formula))  # noqa: E731
    glycol, water = mass_fraction / weight(GLYCOLS[name][1]), (1 - mass_fraction) / weight("H2O")
    return glycol / (glycol + water)


def bubble_point(name, pressure, mass_fraction):
    from iapws.iapws97 import _PSat_T

    share = weights(name, mass_fraction)
    of_glycol = glycol_pressure(name)
    total = lambda t: share * of_glycol(t) + ((1 - share) * _PSat_T(t) * 1e6 if share < 1 else 0.0)  # noqa: E731
    return brentq(lambda t: total(t) - pressure, 280.0, 640.0, xtol=1e-11)


def poured(name, volume_share, concentrate):
    """Mass fraction of glycol: one litre of concentrate and water, by weight."""
    glycol, part, share = GLYCOLS[name][2], exact(concentrate), exact(volume_share)
    density = 1 / (part / glycol + (1 - part) / WATER)
    weighed = share * density
    return weighed * part / (weighed + (1 - share) * WATER)


for which in GLYCOLS:

    @route(f"fluid.{which}_glycol_boiling_temperature", "own bubble point")
    def boiling(absolute_pressure, mass_fraction, name=which):
        return bubble_point(name, absolute_pressure, mass_fraction)

    @route(f"fluid.{which}_glycol_mass_fraction")
    def mass_fraction(concentrate_volume_share, glycol_mass_share, name=which):
        return poured(name, concentrate_volume_share, glycol_mass_share)

    @route(f"fluid.{which}_glycol_concentrate_share")
    def concentrate_share(mass_fraction, glycol_mass_share, name=which):
        return brentq(lambda share: float(poured(name, share, glycol_mass_share)) - mass_fraction, 0.0, 1.0, xtol=1e-16)
