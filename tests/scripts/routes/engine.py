"""Engine: work of a turn, motion of the piston, an isentropic change step by step."""

import math

import numpy as np
from scipy.integrate import quad, solve_ivp

from . import exact, route


@route("engine.torque", "work of one turn")
def torque(power, engine_speed):
    return power * (2 * math.pi / engine_speed) / (2 * math.pi)


@route("engine.torque", "P = T omega")
def torque_of_power(power, engine_speed):
    return power / engine_speed


@route("engine.power")
def power(torque, engine_speed):
    return torque * engine_speed


def work(torque, angle):
    return quad(lambda _: torque, 0, angle)[0]


@route("engine.mean_effective_pressure_four_stroke")
def four_stroke(displacement, torque=None, power=None, engine_speed=None):
    torque = power / engine_speed if torque is None else torque
    return work(torque, 4 * math.pi) / displacement


@route("engine.mean_effective_pressure_two_stroke")
def two_stroke(displacement, torque=None, power=None, engine_speed=None):
    torque = power / engine_speed if torque is None else torque
    return work(torque, 2 * math.pi) / displacement


@route("engine.mean_piston_speed")
def mean_piston_speed(stroke, engine_speed):
    crank, rod = stroke / 2, 0.15  # the rod's length does not count over half a turn

    def speed(angle):
        return engine_speed * crank * np.sin(angle) * (1 + crank * np.cos(angle) / np.sqrt(rod**2 - (crank * np.sin(angle)) ** 2))

    return quad(speed, 0, math.pi, epsrel=1e-13)[0] / math.pi


@route("engine.boost_pressure_ratio")
def boost_pressure_ratio(boost_pressure, station_pressure, inlet_loss):
    boost, station, loss = map(exact, (boost_pressure, station_pressure, inlet_loss))
    return (station + boost) / (station - loss)


@route("engine.compressor_outlet_temperature")
def compressor_outlet_temperature(inlet_temperature, pressure_ratio, isentropic_efficiency):
    path = solve_ivp(lambda p, t: [0.4 / 1.4 * t[0] / p], (1.0, pressure_ratio), [inlet_temperature], method="DOP853", rtol=1e-13, atol=1e-10)
    return inlet_temperature + (path.y[0, -1] - inlet_temperature) / isentropic_efficiency


@route("engine.displacement")
def displacement(bore, stroke, cylinders):
    radius = bore / 2
    area = 4 * radius**2 * quad(lambda angle: math.cos(angle) ** 2, 0, math.pi / 2, epsrel=1e-13)[0]
    return area * stroke * cylinders


@route("engine.wheel_power")
def wheel_power(crank_power, driveline_efficiency):
    return exact(crank_power) * exact(driveline_efficiency)


@route("engine.crank_power")
def crank_power(wheel_power, driveline_efficiency):
    return exact(wheel_power) / exact(driveline_efficiency)
