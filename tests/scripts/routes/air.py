"""Air: the hydrostatic balance and the integral of gravity."""

import mpmath
from scipy.integrate import solve_ivp

from . import route

EARTH, G0, GAS, VAPOUR = 6356766.0, 9.80665, 8314.32 / 28.9644, 461.523


@route("air.geopotential_altitude")
def geopotential_altitude(geometric_altitude):
    mpmath.mp.dps = 40
    return float(mpmath.quad(lambda z: (EARTH / (EARTH + z)) ** 2, [0, geometric_altitude]))


@route("air.geometric_altitude")
def geometric_altitude(geopotential_altitude):
    from fractions import Fraction

    height = Fraction(geopotential_altitude)
    return height * Fraction(EARTH) / (Fraction(EARTH) - height)


def temperature(height):
    return 288.15 - 0.0065 * min(height, 11000.0)


@route("air.standard_pressure", "hydrostatic")
def standard_pressure(geopotential_altitude):
    ends = [0.0, *([11000.0] if geopotential_altitude > 11000 else []), geopotential_altitude]
    logarithm = [0.0]
    for begin, end in zip(ends, ends[1:]):
        slope = lambda height, _: [-G0 / (GAS * temperature(height))]  # noqa: E731
        logarithm = solve_ivp(slope, (begin, end), logarithm, method="DOP853", rtol=1e-12, atol=1e-14).y[:, -1]
    return 101325.0 * float(mpmath.exp(float(logarithm[0])))


@route("air.standard_density", "hydrostatic")
def standard_density(geopotential_altitude):
    return standard_pressure(geopotential_altitude) / (GAS * temperature(geopotential_altitude))


@route("air.standard_pressure", "closed form")
def pressure_of_the_closed_form(geopotential_altitude):
    return 101325.0 * (temperature(geopotential_altitude) / 288.15) ** (G0 / (0.0065 * GAS))


@route("air.standard_density", "closed form")
def density_of_the_closed_form(geopotential_altitude):
    return pressure_of_the_closed_form(geopotential_altitude) / (GAS * temperature(geopotential_altitude))


@route("air.absolute_pressure")
def absolute_pressure(gauge_pressure, station_pressure):
    return gauge_pressure + station_pressure


@route("air.moist_density")
def moist_density(station_pressure, temperature, vapour_pressure):
    return (station_pressure - vapour_pressure) / (287.055 * temperature) + vapour_pressure / (VAPOUR * temperature)
