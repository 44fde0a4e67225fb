"""Cooling: gas laws, what is poured, readings put against the system."""

from fractions import Fraction

from scipy.integrate import quad
from scipy.optimize import brentq

from . import air, exact, fluid, route

GAS = 8.314462618


@route("cooling.Coolant.margin")
def coolant_margin(d):
    out = {}
    if d["liquid"] == "water":
        station = air.pressure_of_the_closed_form(air.geopotential_altitude(float(d["altitude"])))
        out["absolute_pressure"] = float(d["cap"]) + station
        out["boiling_temperature"] = fluid.water_boiling_temperature(out["absolute_pressure"])
    else:
        out["mass_fraction"] = fluid.poured(d["liquid"].split("_")[0], d["volume_share"], d["concentrate"])
    return out


@route("cooling.pressure_decay_tight_pressure")
def pressure_decay_tight_pressure(gauge_pressure, temperature, later_temperature, station_pressure):
    gauge, before, after, station = map(exact, (gauge_pressure, temperature, later_temperature, station_pressure))
    return (gauge + station) * after / before - station


@route("cooling.pressure_decay_tight_pressure_over_coolant")
def pressure_decay_tight_pressure_over_coolant(gauge_pressure, gas_volume, coolant_volume, coolant_expansion, temperature, later_temperature, station_pressure):
    moles = (gauge_pressure + station_pressure) * gas_volume / (GAS * temperature)
    volume = gas_volume - coolant_volume * coolant_expansion
    return brentq(lambda p: (p + station_pressure) * volume - moles * GAS * later_temperature, -station_pressure, 1e7, xtol=1e-9)


@route("cooling.pressure_decay_least_pressure")
def pressure_decay_least_pressure(gauge_pressure, tight_pressure, allowed_loss, gauge_error, station_pressure):
    gauge, tight, loss, error, station = map(exact, (gauge_pressure, tight_pressure, allowed_loss, gauge_error, station_pressure))
    # The first reading was low, so that the tight system has more, and the second one reads high.
    return tight + error * (tight + station) / (gauge + station) - loss + error


@route("cooling.leaked_air_volume")
def leaked_air_volume(gas_volume, tight_pressure, gauge_pressure, station_pressure):
    volume, tight, gauge, station = map(exact, (gas_volume, tight_pressure, gauge_pressure, station_pressure))
    return volume * (tight + station) / station - volume * (gauge + station) / station


@route("cooling.leaked_coolant_volume")
def leaked_coolant_volume(gas_volume, tight_pressure, gauge_pressure, station_pressure):
    volume, tight, gauge, station = map(exact, (gas_volume, tight_pressure, gauge_pressure, station_pressure))
    return volume * (tight + station) / (gauge + station) - volume


@route("cooling.header_air_volume")
def header_air_volume(expansion_volume, fill_pressure, cap_pressure, vapour_pressure, fill_temperature, air_temperature, station_pressure):
    def gap(volume):
        warm = (fill_pressure + station_pressure) * volume / (volume - expansion_volume) * air_temperature / fill_temperature
        return warm + vapour_pressure - station_pressure - cap_pressure

    return brentq(gap, expansion_volume * (1 + 1e-9), 1.0, xtol=1e-16)


@route("cooling.air_test_energy")
def air_test_energy(gas_volume, gauge_pressure, station_pressure):
    pressure = gauge_pressure + station_pressure
    end = gas_volume * (pressure / station_pressure) ** (1 / 1.4)
    return quad(lambda volume: pressure * (gas_volume / volume) ** 1.4, gas_volume, end, epsrel=1e-12)[0]


@route("cooling.CapTest")
def cap_test(d):
    """Every error against the part. What is missing gives no margin."""
    error, tolerance, out = d["gauge_error"], d["rating_tolerance"], {}
    if "holding_pressure" in d:
        out["holding_margin"] = d["holding_pressure"] - error - (d["rating"] - tolerance)
    if "opening_pressure" in d:
        out["opening_margin"] = d["rating"] + tolerance - (d["opening_pressure"] + error)
        if "weakest_component" in d:
            out["component_margin"] = d["weakest_component"] - (d["opening_pressure"] + error)
    if "vacuum_opening" in d:
        out["vacuum_margin"] = d["vacuum_opening"] - error - d["vacuum_limit"]
    return out


@route("cooling.PressureDecay", "cooling.py")
def pressure_decay(d):
    station, warmer = d["station_pressure"], d["later_temperature"] / d["temperature"]
    tight = (d["gauge_pressure"] + station) * warmer - station
    loss = tight - d["later_gauge_pressure"]
    damp = tight
    if warmer > 1:
        # Vapour over water: the pressure at which water boils at that temperature.
        before, after = (
            brentq(lambda p, at=at: fluid.water_boiling_temperature(p) - float(d[at]), 700.0, 1e5, xtol=1e-9)
            for at in ("temperature", "later_temperature")
        )
        damp = tight + max(0.0, after - before * float(warmer))
    most = damp - d["later_gauge_pressure"] + d["gauge_error"] * (1 + (damp + station) / (d["gauge_pressure"] + station))
    out = {"tight_pressure": tight, "loss": loss, "largest_loss": most, "margin": d["allowed_loss"] - most}
    if "gas_volume" in d:
        out["leaked_air"] = d["gas_volume"] * loss / station
    return out


@route("cooling.Mix.exchange", "cooling.py")
def exchange(d):
    glycol, whole = d["liquid"].split("_")[0], d["system_volume"]
    now, wanted = d["present_strength"], d["strength"]
    # Parts of concentrate before and after: what is drained takes its share along.
    stronger = wanted > now
    drained = whole * (wanted - now) / (1 - now) if stronger else whole * (now - wanted) / now
    return {
        "present_mass_fraction": fluid.poured(glycol, now, d["concentrate"]), "mass_fraction": fluid.poured(glycol, wanted, d["concentrate"]),
        "drained_volume": drained, "concentrate_volume": drained if stronger else Fraction(0), "water_volume": Fraction(0) if stronger else drained,
    }  # fmt: skip
