"""Driveline: ratios, speeds and torque from the crankshaft to the ground, as ufuncs in coherent SI. Generated; do not edit."""

from typing import Final

import numpy as np

from axlewright._native import ufuncs as _ufuncs

__all__ = ["axle_ratio_by_turns", "axle_ratio_one_wheel_held", "clutch_capacity_uniform_wear", "clutch_capacity_uniform_pressure", "crawl_ratio", "engine_speed", "engine_speed_after_shift", "final_drive_for_cruise", "gear_step", "grip_torque", "road_speed", "wheel_torque"]

axle_ratio_by_turns: Final[np.ufunc] = _ufuncs["driveline.axle_ratio_by_turns"]
axle_ratio_one_wheel_held: Final[np.ufunc] = _ufuncs["driveline.axle_ratio_one_wheel_held"]
clutch_capacity_uniform_wear: Final[np.ufunc] = _ufuncs["driveline.clutch_capacity_uniform_wear"]
clutch_capacity_uniform_pressure: Final[np.ufunc] = _ufuncs["driveline.clutch_capacity_uniform_pressure"]
crawl_ratio: Final[np.ufunc] = _ufuncs["driveline.crawl_ratio"]
engine_speed: Final[np.ufunc] = _ufuncs["driveline.engine_speed"]
engine_speed_after_shift: Final[np.ufunc] = _ufuncs["driveline.engine_speed_after_shift"]
final_drive_for_cruise: Final[np.ufunc] = _ufuncs["driveline.final_drive_for_cruise"]
gear_step: Final[np.ufunc] = _ufuncs["driveline.gear_step"]
grip_torque: Final[np.ufunc] = _ufuncs["driveline.grip_torque"]
road_speed: Final[np.ufunc] = _ufuncs["driveline.road_speed"]
wheel_torque: Final[np.ufunc] = _ufuncs["driveline.wheel_torque"]
