"""Driveline: ratios, speeds and torque from the crankshaft to the ground, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["axle_ratio_by_turns", "axle_ratio_one_wheel_held", "axle_shaft_torque_open", "axle_shaft_torque_locked", "clutch_capacity_uniform_wear", "clutch_capacity_uniform_pressure", "clamp_load_for_capacity", "crawl_ratio", "crawl_ratio_for_speed", "first_gear_for_crawl", "crawl_speed", "engine_speed", "engine_speed_after_shift", "final_drive_for_cruise", "gear_step", "grip_torque", "grip_torque_upstream", "road_speed", "tyre_diameter_for_cruise", "wheel_torque"]

axle_ratio_by_turns: Final[np.ufunc] = _ufuncs["driveline.axle_ratio_by_turns"]
axle_ratio_one_wheel_held: Final[np.ufunc] = _ufuncs["driveline.axle_ratio_one_wheel_held"]
axle_shaft_torque_open: Final[np.ufunc] = _ufuncs["driveline.axle_shaft_torque_open"]
axle_shaft_torque_locked: Final[np.ufunc] = _ufuncs["driveline.axle_shaft_torque_locked"]
clutch_capacity_uniform_wear: Final[np.ufunc] = _ufuncs["driveline.clutch_capacity_uniform_wear"]
clutch_capacity_uniform_pressure: Final[np.ufunc] = _ufuncs["driveline.clutch_capacity_uniform_pressure"]
clamp_load_for_capacity: Final[np.ufunc] = _ufuncs["driveline.clamp_load_for_capacity"]
crawl_ratio: Final[np.ufunc] = _ufuncs["driveline.crawl_ratio"]
crawl_ratio_for_speed: Final[np.ufunc] = _ufuncs["driveline.crawl_ratio_for_speed"]
first_gear_for_crawl: Final[np.ufunc] = _ufuncs["driveline.first_gear_for_crawl"]
crawl_speed: Final[np.ufunc] = _ufuncs["driveline.crawl_speed"]
engine_speed: Final[np.ufunc] = _ufuncs["driveline.engine_speed"]
engine_speed_after_shift: Final[np.ufunc] = _ufuncs["driveline.engine_speed_after_shift"]
final_drive_for_cruise: Final[np.ufunc] = _ufuncs["driveline.final_drive_for_cruise"]
gear_step: Final[np.ufunc] = _ufuncs["driveline.gear_step"]
grip_torque: Final[np.ufunc] = _ufuncs["driveline.grip_torque"]
grip_torque_upstream: Final[np.ufunc] = _ufuncs["driveline.grip_torque_upstream"]
road_speed: Final[np.ufunc] = _ufuncs["driveline.road_speed"]
tyre_diameter_for_cruise: Final[np.ufunc] = _ufuncs["driveline.tyre_diameter_for_cruise"]
wheel_torque: Final[np.ufunc] = _ufuncs["driveline.wheel_torque"]
