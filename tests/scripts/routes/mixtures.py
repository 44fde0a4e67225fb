"""Mixtures and coolant: vapour pressures, activities, freezing curves and densities of libraries, in our own balances."""

from CoolProp.CoolProp import PropsSI
from fluids.atmosphere import ATMOSPHERE_1976
from iapws.iapws97 import _PSat_T
from numpy import interp
from scipy.optimize import brentq
from thermo import UNIFAC, VaporPressure
from thermo.unifac import DOUFIP2006, DOUFSG, UFIP, UFSG, UNIFAC_group_assignment_DDBST

from . import route
from .fluid import GLYCOLS, bubble_point, glycol_pressure, poured, weights

COOLPROP = {"ethylene": "MEG", "propylene": "MPG"}
MODELS = {"UNIFAC": ("UNIFAC", UFSG, UFIP, 0), "Dortmund": ("MODIFIED_UNIFAC", DOUFSG, DOUFIP2006, 1)}


def of_glycol(name):
    pure = VaporPressure(CASRN=GLYCOLS[name][0])
    return lambda temperature: float(pure(temperature))


def water(temperature):
    return PropsSI("P", "T", temperature, "Q", 0, "Water")


def activities(name, model, temperature, share):
    of_model, subgroups, interactions, version = MODELS[model]
    groups = [UNIFAC_group_assignment_DDBST(cas, of_model) for cas in (GLYCOLS[name][0], "7732-18-5")]
    of = UNIFAC.from_subgroups(T=temperature, xs=[share, 1 - share], chemgroups=groups, subgroups=subgroups, interaction_data=interactions, version=version)
    return of.gammas()


def total(name, mass_fraction, temperature, model=None):
    share = weights(name, mass_fraction)
    glycol, steam = (1.0, 1.0) if model is None else activities(name, model, temperature, share)
    return share * glycol * of_glycol(name)(temperature) + (1 - share) * steam * water(temperature)


def boils(name, mass_fraction, pressure, model=None):
    return brentq(lambda t: total(name, mass_fraction, t, model) - pressure, 280.0, 640.0, xtol=1e-9)


def height(pressure):
    """Geopotential height of the standard atmosphere with this pressure."""
    return brentq(lambda z: ATMOSPHERE_1976(z).P - pressure, -4000.0, 30000.0, xtol=1e-9)


def densities(d):
    liquid = d["liquid"].split("_")[0]
    if liquid == "water":
        return lambda t: PropsSI("D", "T", t, "P", 2e5, "Water")
    return lambda t: PropsSI("D", "T", t, "P", 2e5, f"INCOMP::{COOLPROP[liquid]}-{float(d['mass_fraction']) * 100}%")


@route("cooling.PressureDecay", "mixtures.py")
def pressure_decay_over_coolant(d):
    d = {key: value if isinstance(value, str) else float(value) for key, value in d.items()}
    density, station = densities(d), d["station_pressure"]
    coolant = d["coolant_volume"] * density(d["temperature"]) / density(d["later_temperature"])
    gas = d["gas_volume"] + d["coolant_volume"] - coolant
    tight = (d["gauge_pressure"] + station) * d["later_temperature"] / d["temperature"] * d["gas_volume"] / gas - station
    loss, later = tight - d["later_gauge_pressure"], d["later_gauge_pressure"] + station
    return {"tight_pressure": tight, "loss": loss, "leaked_air": d["gas_volume"] * loss / station, "leaked_coolant": d["gas_volume"] * loss / later}


def freezing(name, mass_fraction):
    return PropsSI("T_FREEZE", "T", 300.0, "P", 1e5, f"INCOMP::{COOLPROP[name]}-{mass_fraction * 100}%")


def growth(name, mass_fraction, cold, hot):
    at = lambda t: PropsSI("D", "T", t, "P", 1e5, f"INCOMP::{COOLPROP[name]}-{mass_fraction * 100}%")  # noqa: E731
    return at(cold) / at(hot) - 1


# By how much a mix may freeze warmer than its curve: the pages of the freezing curves.
BOUNDS = {
    "ethylene": ([0.0, 0.1, 0.3, 0.4, 0.5, 0.6], [0.0, 0.6, 0.6, 1.7, 2.6, 3.3]),
    "propylene": ([0.0, 0.1, 0.6], [0.0, 1.81, 1.81]),
}


@route("cooling.Mix.fresh_fill")
def fresh_fill(d):
    name, whole = d["liquid"].split("_")[0], float(d["system_volume"])
    if "freezing_temperature" in d:
        warmer = lambda w: interp(w, *BOUNDS[name])  # noqa: E731
        fraction = brentq(lambda w: freezing(name, w) + warmer(w) - float(d["freezing_temperature"]), 0.01, 0.59, xtol=1e-13)
    elif d["strength_by"] == "mass":
        fraction = float(d["strength"])
    else:
        fraction = float(poured(name, d["strength"], d["concentrate"]))
    share = brentq(lambda f: float(poured(name, f, d["concentrate"])) - fraction, 0.0, 1.0, xtol=1e-14)
    pressure = float(d["cap"] + d["station_pressure"])
    perry, x = glycol_pressure(name), weights(name, fraction)
    boiling = brentq(lambda t: x * perry(t) + (1 - x) * water(t) - pressure, 280.0, 640.0)
    return {
        "mass_fraction": fraction, "concentrate_share": share, "concentrate_volume": share * whole, "water_volume": (1 - share) * whole,
        "freezing_temperature": freezing(name, fraction), "boiling_temperature": boiling,
        "growth": whole * growth(name, fraction, float(d["fill_temperature"]), float(d["mean_temperature"])),
    }  # fmt: skip


@route("cooling.Mix.exchange", "mixtures.py")
def exchange_by_weight(d):
    """Masses of glycol before and after, the fill weighed by its real density."""
    name, whole, wanted = d["liquid"].split("_")[0], float(d["system_volume"]), float(d["strength"])
    now, part = float(d["present_strength"]), float(d["concentrate"])
    density = lambda w: PropsSI("D", "T", float(d["fill_temperature"]), "P", 1e5, f"INCOMP::{COOLPROP[name]}-{w * 100}%")  # noqa: E731
    strong = 1 / (part / float(GLYCOLS[name][2]) + (1 - part) / 998.207)

    def gap(drained):
        glycol = (whole - drained) * density(now) * now + drained * strong * part
        return glycol / ((whole - drained) * density(now) + drained * strong) - wanted

    drained = brentq(gap, 0.0, whole, xtol=1e-14)
    return {"drained_volume": drained, "concentrate_volume": drained}


@route("cooling.water_boiling_altitude")
def water_boiling_altitude(temperature, cap_pressure):
    return height(_PSat_T(temperature) * 1e6 - cap_pressure)


@route("cooling.water_pump_inlet_margin")
def water_pump_inlet_margin(temperature, header_pressure, suction_loss, station_pressure):
    return bubble_point("ethylene", header_pressure - suction_loss + station_pressure, 0.0) - temperature


for which in GLYCOLS:

    @route(f"cooling.{which}_glycol_boiling_altitude")
    def boiling_altitude(temperature, mass_fraction, cap_pressure, name=which):
        x = weights(name, mass_fraction)
        return height(x * glycol_pressure(name)(temperature) + (1 - x) * _PSat_T(temperature) * 1e6 - cap_pressure)

    @route(f"cooling.{which}_glycol_pump_inlet_margin")
    def pump_inlet_margin(temperature, mass_fraction, header_pressure, suction_loss, station_pressure, name=which):
        return bubble_point(name, header_pressure - suction_loss + station_pressure, mass_fraction) - temperature

    @route(f"cooling.{which}_glycol_cap_pressure")
    def cap_pressure(temperature, mass_fraction, station_pressure, name=which):
        return total(name, mass_fraction, temperature) - station_pressure

    @route(f"fluid.{which}_glycol_boiling_pressure", "Raoult")
    def boiling_pressure(temperature, mass_fraction, name=which):
        return total(name, mass_fraction, temperature)

    @route(f"fluid.{which}_glycol_boiling_pressure", "UNIFAC")
    def boiling_pressure_by_activities(temperature, mass_fraction, name=which):
        return total(name, mass_fraction, temperature, "UNIFAC")

    @route(f"fluid.{which}_glycol_boiling_temperature", "mixtures.py: thermo 0.6.1 UNIFAC")
    def boiling_by_unifac(absolute_pressure, mass_fraction, name=which):
        return boils(name, mass_fraction, absolute_pressure, "UNIFAC")

    @route(f"fluid.{which}_glycol_boiling_temperature", "mixtures.py: thermo 0.6.1 Dortmund")
    def boiling_by_dortmund(absolute_pressure, mass_fraction, name=which):
        return boils(name, mass_fraction, absolute_pressure, "Dortmund")

    @route(f"fluid.{which}_glycol_boiling_temperature", "mixtures.py: thermo 0.6.1 pure")
    def boiling_by_raoult(absolute_pressure, mass_fraction, name=which):
        return boils(name, mass_fraction, absolute_pressure)
