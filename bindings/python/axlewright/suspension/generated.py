"""Suspension: linkages drawn point by point, roll, and how the axles share what a turn moves. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["AxleLoadTransfer", "AxlePosition", "Balance", "Bars", "DoubleWishbone", "HeaveRange", "InTurn", "LeafAxle", "LeafAxlePosition", "LiveAxle", "RollBalance", "Strut", "TravelRange", "WheelPosition", "WheelsInRoll", "WindUp", "axle_load_transfer", "bar_rate_for_roll_stiffness", "bar_roll_stiffness", "front_transfer_share", "independent_roll_stiffness", "live_axle_roll_stiffness", "roll_arm", "roll_gradient", "roll_stiffness_for_gradient", "roll_stiffness_over_tyres", "tyre_roll_stiffness"]

_axle_load_transfer = _functions["suspension.axle_load_transfer"]
_bar_rate_for_roll_stiffness = _functions["suspension.bar_rate_for_roll_stiffness"]
_bar_roll_stiffness = _functions["suspension.bar_roll_stiffness"]
_front_transfer_share = _functions["suspension.front_transfer_share"]
_independent_roll_stiffness = _functions["suspension.independent_roll_stiffness"]
_live_axle_roll_stiffness = _functions["suspension.live_axle_roll_stiffness"]
_roll_arm = _functions["suspension.roll_arm"]
_roll_gradient = _functions["suspension.roll_gradient"]
_roll_stiffness_for_gradient = _functions["suspension.roll_stiffness_for_gradient"]
_roll_stiffness_over_tyres = _functions["suspension.roll_stiffness_over_tyres"]
_tyre_roll_stiffness = _functions["suspension.tyre_roll_stiffness"]
_double_wishbone_at = _functions["suspension.DoubleWishbone.at"]
_double_wishbone_table = _functions["suspension.DoubleWishbone.table"]
_double_wishbone_in_roll = _functions["suspension.DoubleWishbone.in_roll"]
_double_wishbone_roll_table = _functions["suspension.DoubleWishbone.roll_table"]
_double_wishbone_points = _functions["suspension.DoubleWishbone.points"]
_double_wishbone_travel_range = _functions["suspension.DoubleWishbone.travel_range"]
_double_wishbone_arch_move = _functions["suspension.DoubleWishbone.arch_move"]
_double_wishbone_ride_height_change = _functions["suspension.DoubleWishbone.ride_height_change"]
_double_wishbone_spacer = _functions["suspension.DoubleWishbone.spacer"]
_leaf_axle_at = _functions["suspension.LeafAxle.at"]
_leaf_axle_table = _functions["suspension.LeafAxle.table"]
_leaf_axle_points = _functions["suspension.LeafAxle.points"]
_leaf_axle_travel_range = _functions["suspension.LeafAxle.travel_range"]
_leaf_axle_wind_up = _functions["suspension.LeafAxle.wind_up"]
_leaf_axle_seat_block = _functions["suspension.LeafAxle.seat_block"]
_leaf_axle_shackle_change = _functions["suspension.LeafAxle.shackle_change"]
_leaf_axle_ride_height_change = _functions["suspension.LeafAxle.ride_height_change"]
_leaf_axle_axle_move = _functions["suspension.LeafAxle.axle_move"]
_leaf_axle_spacer = _functions["suspension.LeafAxle.spacer"]
_live_axle_at = _functions["suspension.LiveAxle.at"]
_live_axle_table = _functions["suspension.LiveAxle.table"]
_live_axle_points = _functions["suspension.LiveAxle.points"]
_live_axle_travel_range = _functions["suspension.LiveAxle.travel_range"]
_live_axle_axle_move = _functions["suspension.LiveAxle.axle_move"]
_live_axle_ride_height_change = _functions["suspension.LiveAxle.ride_height_change"]
_live_axle_spacer = _functions["suspension.LiveAxle.spacer"]
_roll_balance_balance = _functions["suspension.RollBalance.balance"]
_roll_balance_in_turn = _functions["suspension.RollBalance.in_turn"]
_roll_balance_bars_for = _functions["suspension.RollBalance.bars_for"]
_roll_balance_front_bar_for_gradient = _functions["suspension.RollBalance.front_bar_for_gradient"]
_roll_balance_rear_bar_for_gradient = _functions["suspension.RollBalance.rear_bar_for_gradient"]
_roll_balance_front_bar_for_share = _functions["suspension.RollBalance.front_bar_for_share"]
_roll_balance_rear_bar_for_share = _functions["suspension.RollBalance.rear_bar_for_share"]
_roll_balance_table = _functions["suspension.RollBalance.table"]
_strut_at = _functions["suspension.Strut.at"]
_strut_table = _functions["suspension.Strut.table"]
_strut_in_roll = _functions["suspension.Strut.in_roll"]
_strut_roll_table = _functions["suspension.Strut.roll_table"]
_strut_points = _functions["suspension.Strut.points"]
_strut_travel_range = _functions["suspension.Strut.travel_range"]
_strut_arch_move = _functions["suspension.Strut.arch_move"]
_strut_ride_height_change = _functions["suspension.Strut.ride_height_change"]
_strut_spacer = _functions["suspension.Strut.spacer"]


class AxleLoadTransfer(NamedTuple):
    """Results of `axle_load_transfer`."""

    unsprung_transfer: Quantity
    """By the unsprung mass itself: at once, whatever the springs are."""
    geometric_transfer: Quantity
    """By the links, through the roll centre: at once; negative where it lies below the ground."""
    elastic_transfer: Quantity
    """By springs, bar and tyres: as the body rolls."""
    load_transfer: Quantity
    """All of it: what the outer wheel gains and the inner wheel loses."""


class WheelPosition(NamedTuple):
    """Results of `at`."""

    wheel_x: Quantity
    """Of the wheel's centre, forward in the body's axes."""
    wheel_y: Quantity
    """Of the wheel's centre, to the left."""
    wheel_z: Quantity
    """Of the wheel's centre, up."""
    half_track: Quantity
    """From the vehicle's centre plane to the contact point, which lies a loaded radius from the
    wheel's centre in the wheel's plane.
    """
    half_track_change: Quantity
    """Of that against ride height."""
    wheelbase_change: Quantity
    """Of the wheel's centre against ride height, positive where the wheelbase grows."""
    camber: Quantity
    """Positive with the top of the wheel outboard."""
    camber_change: Quantity
    """Of camber over 25 mm of bump, at the slope that it has here."""
    toe: Quantity
    """Of this wheel, positive with its front inboard."""
    bump_steer: Quantity
    """Change of toe over 25 mm of bump, at the slope that it has here."""
    caster: Quantity
    """Positive with the upper end of the steering axis to the rear."""
    kingpin_inclination: Quantity
    """Positive with the upper end of the steering axis inboard."""
    scrub_radius: Quantity
    """From the steering axis outboard to the contact point, at the ground."""
    mechanical_trail: Quantity
    """From the contact point forward to the steering axis, at the ground."""
    front_view_centre_y: Quantity
    """Of the upright's instant centre in front view, in the transverse plane through the contact
    point, to the left; infinite where there is none.
    """
    front_view_centre_height: Quantity
    """Of the same, above the ground under this wheel."""
    roll_centre_height: Quantity
    """Above the ground, where the line from the contact point to that centre meets the vehicle's
    centre plane; of the axle while the other wheel is this one's mirror image.
    """
    side_view_centre_x: Quantity
    """Of the upright's instant centre in side view with the brake held, forward; infinite where there
    is none.
    """
    side_view_centre_height: Quantity
    """Of the same, above the ground."""
    side_view_angle: Quantity
    """Forward lean of the contact point's path in bump, with the brake held."""
    wheel_path_angle: Quantity
    """Forward lean of the path of the wheel's centre in bump."""
    brake_anti_pitch: Ratio
    """In braking the anti-dive of a front axle, the anti-lift of a rear one, as a share of what would
    cancel the pitch of that axle.
    """
    drive_anti_pitch: Ratio
    """In drive the anti-squat of a rear axle, the anti-lift of a front one, as such a share."""
    eye_length: Quantity
    """Between the eyes of the coil-over."""
    motion_ratio: Ratio
    """Shortening of the spring over wheel travel."""
    damper_motion_ratio: Ratio
    """That of the damper, which is another one where the coil has seats of its own."""
    spring_length: Quantity
    """Between the seats of the spring."""
    spring_force: Quantity
    """Compressive, in the coil; nothing where it is loose."""
    wheel_force: Quantity
    """Of coil, gas and torsion bar at the wheel, `F r`."""
    wheel_rate: Quantity
    """Tangent rate at the wheel, with the term of the changing motion ratio; of coil, gas and torsion
    bar, without anti-roll bar and tyre.
    """
    spring_used: Quantity
    """By how much the spring is shorter than unloaded."""
    spring_left: Quantity
    """Until it is solid, along itself."""
    damper_used: Quantity
    """Of the damper's stroke, from fully open."""
    damper_left: Quantity
    """Of the damper's stroke, to fully closed; negative where it has ended."""
    torsion_bar_torque: Quantity
    """In the torsion bar, positive where it carries the vehicle."""
    bar_angle: Quantity
    """Turn of the bar's lever from ride height, positive as in bump."""
    bar_motion_ratio: Ratio
    """Travel of the end of the bar's lever along its arc over wheel travel."""
    upper_joint_angle: Quantity
    """Lean of the upper ball joint from ride height, its stud along the steering axis."""
    lower_ball_angle: Quantity
    """The same of the lower ball joint."""
    tie_rod_outer_angle: Quantity
    """The same of the outer joint of the tie rod, its stud beside the steering axis."""
    tie_rod_inner_angle: Quantity
    """Turn of the tie rod against the rack from ride height."""
    joint_left: Quantity
    """Until the first of the joints whose limits are given is at its limit."""
    first_joint: str
    """Which joint that is: `upper ball joint`, `lower ball joint`, `tie rod outer joint` or `tie rod
    inner joint`; otherwise `not known`.
    """


class WheelsInRoll(NamedTuple):
    """Results of `in_roll`."""

    left_travel: Quantity
    """Of the left wheel's centre against the body, positive in bump."""
    right_travel: Quantity
    """Of the right wheel's centre."""
    left_camber: Quantity
    """Of the left wheel against the ground, positive with the top outboard."""
    right_camber: Quantity
    """Of the right wheel against the ground."""
    left_toe: Quantity
    """Of the left wheel against the ground, positive with its front inboard."""
    right_toe: Quantity
    """Of the right wheel against the ground."""
    track: Quantity
    """Between the contact points, along the ground."""
    left_slope: Ratio
    """Outboard path of the left contact point over its rise against the body, both against the ground:
    what lifts the body there is so much of the lateral force.
    """
    right_slope: Ratio
    """The same of the right contact point."""
    roll_centre_y: Quantity
    """Along the ground from the body's centre plane to the left, to where the normals of both paths
    meet; for display: loads follow from the slopes. Infinite where the normals are parallel, not a
    number where both lie in the ground.
    """
    roll_centre_height: Quantity
    """Of the same above the ground."""


class TravelRange(NamedTuple):
    """Results of `travel_range`."""

    droop: Quantity
    """Least travel, negative."""
    droop_end: str
    """What ends it: `upper arm`, `lower arm`, `tie rod` or `drop link`."""
    bump: Quantity
    """Greatest travel."""
    bump_end: str
    """What ends it."""


class LeafAxlePosition(NamedTuple):
    """Results of `at`."""

    left_wheel_x: Quantity
    """Of the left wheel's centre, forward in the body's axes."""
    left_wheel_y: Quantity
    """Of the left wheel's centre, to the left."""
    left_wheel_z: Quantity
    """Of the left wheel's centre, up."""
    right_wheel_x: Quantity
    """Of the right wheel's centre, forward."""
    right_wheel_y: Quantity
    """Of the right wheel's centre, to the left."""
    right_wheel_z: Quantity
    """Of the right wheel's centre, up."""
    wheelbase_change: Quantity
    """Of the axle's middle against ride height, positive where the wheelbase grows."""
    axle_steer: Quantity
    """Turn of the axle against the body, positive to the left."""
    roll_steer: Ratio
    """Change of that over roll: of a rear axle negative is roll understeer, of a front one positive."""
    lateral_shift: Quantity
    """Of the axle's middle against the body, to the left: the axle leans about the roll centre."""
    pinion_angle: Quantity
    """Against the body's axis, positive with its nose up."""
    pinion_angle_change: Quantity
    """Of that against ride height; known without it."""
    roll_centre_height: Quantity
    """Above the ground, where the line between the spring's eyes passes the axle, which holds the body
    sideways.
    """
    side_view_centre_x: Quantity
    """Of the axle's instant centre in side view, with the wheels held by drive or brake, forward;
    infinite where there is none.
    """
    side_view_centre_height: Quantity
    """Of the same, above the ground."""
    side_view_angle: Quantity
    """Forward lean of the contact point's path in bump."""
    brake_anti_pitch: Ratio
    """The anti-dive of a front axle, the anti-lift of a rear one, as a share of what would cancel the
    pitch of that axle.
    """
    drive_anti_pitch: Ratio
    """The anti-lift of a front axle, the anti-squat of a rear one; the housing takes the torque of the
    wheels.
    """
    wheel_rate: Quantity
    """Tangent rate of one wheel in heave, half the axle's, leaf and coil together, with what shackles
    and eyes make of it.
    """
    roll_stiffness: Quantity
    """Tangent stiffness of both springs and coils in roll with the axle's middle kept, without twist,
    bar and tyres.
    """
    wind_up_rate: Quantity
    """Tangent stiffness of both springs and coils against the axle's pitch with its heave kept."""
    left_spring_load: Quantity
    """Vertical, of the left leaf spring at its seat, its own; what a coil pulls along the vehicle the
    leaf beside it takes.
    """
    right_spring_load: Quantity
    """The same of the right spring."""
    left_leaf_stress: Quantity
    """Greatest of the left spring, in the full-length leaves at the seat."""
    right_leaf_stress: Quantity
    """The same of the right spring."""
    left_shackle_angle: Quantity
    """Of the left shackle from upright, positive with the spring's eye away from the fixed eye."""
    right_shackle_angle: Quantity
    """The same of the right shackle."""
    left_shackle_opening: Quantity
    """Between the left shackle and the line of the eyes: at nothing or half a turn it is in line and
    turns over.
    """
    right_shackle_opening: Quantity
    """The same of the right shackle."""
    left_eye_length: Quantity
    """Between the eyes of the left coil-over."""
    left_motion_ratio: Ratio
    """Shortening of the left coil-over over heave."""
    left_roll_motion_ratio: Ratio
    """Shortening of the left coil-over over the travel of the left wheel in roll: of upright coils
    their base over the track.
    """
    left_coil_length: Quantity
    """Between the seats of the left coil."""
    left_coil_force: Quantity
    """Compressive, in the left coil; nothing where it is loose."""
    left_coil_used: Quantity
    """By how much the left coil is shorter than unloaded."""
    left_coil_remaining: Quantity
    """Until the left coil is solid, along itself."""
    left_wheel_force: Quantity
    """Of leaf, coil and gas on the left, the change of their energy over heave: what the wheel carries
    but for the axle's own weight; without roll the load of the leaf and the vertical force of the
    coil-over.
    """
    right_eye_length: Quantity
    """Between the eyes of the right coil-over."""
    right_motion_ratio: Ratio
    """Shortening of the right coil-over over heave."""
    right_roll_motion_ratio: Ratio
    """Shortening of the right coil-over over the travel of the right wheel in roll."""
    right_coil_length: Quantity
    """Between the seats of the right coil."""
    right_coil_force: Quantity
    """Compressive, in the right coil; nothing where it is loose."""
    right_coil_used: Quantity
    """By how much the right coil is shorter than unloaded."""
    right_coil_remaining: Quantity
    """Until the right coil is solid, along itself."""
    right_wheel_force: Quantity
    """Of leaf, coil and gas on the right, the change of their energy over heave."""
    bar_angle: Quantity
    """Mean turn of the bar's two levers from ride height, positive as in bump."""
    bar_twist: Quantity
    """Turn of the left lever less that of the right one."""
    bar_motion_ratio: Ratio
    """Travel of the levers' ends along their arcs over wheel travel, in roll."""
    damper_motion_ratio: Ratio
    """Shortening of the left damper over heave, be it that beside the coil or that of the coil-over."""
    left_damper_used: Quantity
    """Of the left damper's stroke, from fully open."""
    left_damper_remaining: Quantity
    """Of the left damper's stroke, to fully closed; negative where it has ended."""
    right_damper_used: Quantity
    """The same of the right damper, from fully open."""
    right_damper_remaining: Quantity
    """The same of the right damper, to fully closed."""
    left_bump_remaining: Quantity
    """Above the left seat to its bump stop, vertical; negative where the stop is pressed."""
    right_bump_remaining: Quantity
    """The same of the right seat."""


class HeaveRange(NamedTuple):
    """Results of `travel_range`."""

    droop: Quantity
    """Least heave, negative."""
    droop_end: str
    """What ends it: `shackle`, `half to the fixed eye`, `half to the shackle` or `axle's pitch`."""
    bump: Quantity
    """Greatest heave."""
    bump_end: str
    """What ends it."""


class WindUp(NamedTuple):
    """Results of `wind_up`."""

    wind_up_angle: Quantity
    """Turn of the housing by the torque, positive with the pinion's nose up."""
    pinion_angle: Quantity
    """With that and the heave, positive with its nose up."""
    wind_up_rate: Quantity
    """Tangent stiffness of both springs and coils against the axle's pitch, there."""
    wheelbase_change: Quantity
    """Of the axle's middle by the torque alone."""
    spring_load: Quantity
    """Vertical, of each leaf spring, which the torque changes with the heave kept."""
    leaf_stress: Quantity
    """Greatest, in the full-length leaves at the seat, load and torque together."""


class AxlePosition(NamedTuple):
    """Results of `at`."""

    axle_x: Quantity
    """Of the axle's middle, halfway between the wheels' centres, forward in the body's axes."""
    lateral_shift: Quantity
    """Of the axle's middle, to the left of the body's centre plane."""
    axle_z: Quantity
    """Of the axle's middle, up."""
    wheelbase_change: Quantity
    """Of the axle's middle against ride height, positive where the wheelbase grows."""
    axle_steer: Quantity
    """Turn of the axle about z, positive to the left."""
    heave_steer: Quantity
    """Change of that over 25 mm of bump, at the slope that it has here."""
    roll_steer: Ratio
    """Change of `axle_steer` over roll, at the slope that it has here; positive steers the axle out of
    a turn as the body leans, a rear one to oversteer, a front one to understeer.
    """
    axle_pitch: Quantity
    """Turn of the axle about its own length, positive with its front down."""
    pinion_angle: Quantity
    """Of the pinion's axis against the body's x, positive with its nose up."""
    pinion_angle_change: Quantity
    """Of that against ride height."""
    pinion_x: Quantity
    """Of the joint on the pinion's nose, forward."""
    pinion_y: Quantity
    """Of the same, to the left."""
    pinion_z: Quantity
    """Of the same, up."""
    roll_centre_height: Quantity
    """Above the ground, where the axis about which the axle rolls crosses the body's centre plane, in
    the transverse plane through the axle's middle; sideways it wanders with `lateral_shift`.
    """
    roll_axis_angle: Quantity
    """Of that axis against the body's x, positive where it rises forward."""
    lateral_rod_height: Quantity
    """Above the ground, of the lateral rod on the body's centre plane; without steer in roll the
    height of the roll centre.
    """
    side_view_centre_x: Quantity
    """Of the axle's instant centre in side view, in heave, forward; infinite where there is none."""
    side_view_centre_height: Quantity
    """Of the same, above the ground."""
    side_view_angle: Quantity
    """Forward lean of the path in bump of the point midway between the contact points, held in the
    axle.
    """
    drive_anti_pitch: Ratio
    """Anti-squat of a rear axle, anti-lift of a front one, under drive whose torque the housing takes,
    as a share of what would cancel the pitch of that axle.
    """
    brake_anti_pitch: Ratio
    """Anti-lift of a rear axle, anti-dive of a front one, under brakes whose torque the housing takes,
    as a share.
    """
    left_wheel_x: Quantity
    """Of the left wheel's centre, forward."""
    left_wheel_y: Quantity
    """Of the left wheel's centre, to the left."""
    left_wheel_z: Quantity
    """Of the left wheel's centre, up."""
    left_camber: Quantity
    """Of the left wheel against the body, positive with its top outboard."""
    left_toe: Quantity
    """Of the left wheel, positive with its front inboard."""
    left_eye_length: Quantity
    """Between the eyes of the left coil-over."""
    left_motion_ratio: Ratio
    """Shortening of the left coil-over over heave."""
    left_roll_motion_ratio: Ratio
    """Shortening of the left coil-over over the travel of the left wheel in roll: of upright springs
    their base over the track.
    """
    left_spring_length: Quantity
    """Between the seats of the left spring."""
    left_spring_force: Quantity
    """Compressive, in the coil; nothing where it is loose."""
    left_spring_used: Quantity
    """By how much the spring is shorter than unloaded."""
    left_spring_remaining: Quantity
    """Until it is solid, along itself."""
    left_damper_used: Quantity
    """Of the damper's stroke, from fully open."""
    left_damper_remaining: Quantity
    """Of the damper's stroke, to fully closed; negative where it has ended."""
    left_wheel_force: Quantity
    """Of coil and gas in heave, their force times `left_motion_ratio`."""
    left_wheel_rate: Quantity
    """Tangent rate of coil and gas in heave, with the term of the changing motion ratio; without bar,
    tyre and links that bind.
    """
    right_wheel_x: Quantity
    """Of the right wheel's centre, forward."""
    right_wheel_y: Quantity
    """Of the right wheel's centre, to the left."""
    right_wheel_z: Quantity
    """Of the right wheel's centre, up."""
    right_camber: Quantity
    """Of the right wheel against the body, positive with its top outboard."""
    right_toe: Quantity
    """Of the right wheel, positive with its front inboard."""
    right_eye_length: Quantity
    """Between the eyes of the right coil-over."""
    right_motion_ratio: Ratio
    """Shortening of the right coil-over over heave."""
    right_roll_motion_ratio: Ratio
    """Shortening of the right coil-over over the travel of the right wheel in roll: of upright springs
    their base over the track.
    """
    right_spring_length: Quantity
    """Between the seats of the right spring."""
    right_spring_force: Quantity
    """Compressive, in the coil; nothing where it is loose."""
    right_spring_used: Quantity
    """By how much the spring is shorter than unloaded."""
    right_spring_remaining: Quantity
    """Until it is solid, along itself."""
    right_damper_used: Quantity
    """Of the damper's stroke, from fully open."""
    right_damper_remaining: Quantity
    """Of the damper's stroke, to fully closed; negative where it has ended."""
    right_wheel_force: Quantity
    """Of coil and gas in heave, their force times `right_motion_ratio`."""
    right_wheel_rate: Quantity
    """Tangent rate of coil and gas in heave, with the term of the changing motion ratio; without bar,
    tyre and links that bind.
    """
    roll_stiffness: Quantity
    """Of both springs with their gas at this heave, tangent, the term of the changing lengths
    included; without bar, tyre and links that bind.
    """
    bar_angle: Quantity
    """Mean turn of the bar's two levers from ride height, positive as in bump."""
    bar_twist: Quantity
    """Turn of the left lever less that of the right one."""
    bar_motion_ratio: Ratio
    """Travel of the levers' ends along their arcs over wheel travel, in roll."""
    greatest_lean: Quantity
    """Of all joints of the links, the greatest lean from ride height."""
    greatest_lean_joint: str
    """Which joint that is, its link and its end: `body`, `axle`, `crank` or `outer`."""
    joint_left: Quantity
    """Until the first of the joints whose limits are given is at its limit."""
    first_joint: str
    """Which joint that is; `not known` where no limit is given."""
    lateral_rod_stretch: Quantity
    """By how much the lateral rod with its bushes is longer than at ride height: nothing unless it
    binds.
    """
    freedoms: int
    """Coordinates of the axle less the rank of the links here: two where it heaves and rolls freely,
    one where it does so only together.
    """
    redundant: int
    """Links more than an axle that heaves and rolls leaves room for."""
    bind_misfit: Quantity
    """By how much the links miss each other at this heave and roll, were their joints rigid: root of
    the sum of the squares of their misses.
    """
    bind_force: Quantity
    """Greatest tension or compression of a link by that; not a number where no bush gives."""
    bind_link: str
    """Which link that is, or, where no bush gives, which one misses most; `none` where nothing binds."""
    bind_moment: Quantity
    """Of the links that bind, on the axle about its roll axis, against roll."""
    bind_roll_stiffness: Quantity
    """Change of that over roll, at the slope that it has here."""


class Balance(NamedTuple):
    """Results of `balance`."""

    roll_gradient: Quantity
    """Roll angle of the body over lateral acceleration, body to ground."""
    front_suspension_stiffness: Quantity
    """Springs and bar of the front axle, without its tyres."""
    rear_suspension_stiffness: Quantity
    """Springs and bar of the rear axle, without its tyres."""
    front_share: Ratio
    """Share of the front axle in the load that moves to the outer wheels."""
    front_weight_share: Ratio
    """Share of the front axle in the weight, unsprung masses included."""
    share_over_weight: Ratio
    """The first less the second: above nothing it tends to understeer at the limit, below nothing to
    oversteer, tyres alike all round.
    """


class InTurn(NamedTuple):
    """Results of `in_turn`."""

    roll_angle: Quantity
    """Of the body to the ground, out of the turn."""
    front_unsprung_transfer: Quantity
    """What the outer front wheel gains by the unsprung mass."""
    front_geometric_transfer: Quantity
    """What it gains through the roll centre."""
    front_elastic_transfer: Quantity
    """What it gains by springs and bar."""
    front_load_transfer: Quantity
    """All that it gains."""
    rear_unsprung_transfer: Quantity
    """What the outer rear wheel gains by the unsprung mass."""
    rear_geometric_transfer: Quantity
    """What it gains through the roll centre."""
    rear_elastic_transfer: Quantity
    """What it gains by springs and bar."""
    rear_load_transfer: Quantity
    """All that it gains."""
    front_share: Ratio
    """Share of the front axle in the load transfer."""
    front_inner_load: Quantity
    """Load left on the inner front wheel."""
    rear_inner_load: Quantity
    """Load left on the inner rear wheel."""


class Bars(NamedTuple):
    """Results of `bars_for`."""

    front_bar_rate: Quantity
    """Rate of the front bar at its ends, which move in opposite directions."""
    rear_bar_rate: Quantity
    """Rate of the rear bar at its ends."""
    front_bar_stiffness: Quantity
    """Roll stiffness that the front bar gives its axle."""
    rear_bar_stiffness: Quantity
    """Roll stiffness that the rear bar gives its axle."""


def axle_load_transfer(
    *,
    unsprung_mass: QuantityLike,
    unsprung_height: QuantityLike,
    axle_sprung_mass: QuantityLike,
    roll_centre_height: QuantityLike,
    roll_stiffness: QuantityLike,
    roll_angle: QuantityLike,
    track: QuantityLike,
    lateral_acceleration: QuantityLike,
    invalid: Invalid = "raise",
) -> AxleLoadTransfer:
    """Load that the outer wheel of an axle gains in a turn, by the way it takes.

    Formula
        `F_u = m_u a_y z_u / t`, `F_g = m_a a_y z / t`, `F_e = K phi / t`, `F = F_u + F_g + F_e`

    Parameters
        unsprung_mass (mass): `m_u`, of the axle, both wheels together
        unsprung_height (length): `z_u`, of its centre of gravity above the ground: the loaded
            radius, nearly
        axle_sprung_mass (mass): `m_a`, sprung mass that the axle carries: scale reading of the axle
            less its unsprung mass
        roll_centre_height (length): `z`, of the axle above the ground; negative below it
        roll_stiffness (rotational stiffness): `K`, of the axle to the ground: springs, bar and
            tyres
        roll_angle (angle): `phi`, of the body to the ground, positive out of the turn:
            `roll_gradient` times the acceleration
        track (length): `t`, between the tyre centres
        lateral_acceleration (acceleration): `a_y`, towards the inside of the turn

    Returns
        unsprung_transfer (force [N]): by the unsprung mass itself: at once, whatever the springs
            are
        geometric_transfer (force [N]): by the links, through the roll centre: at once; negative
            where it lies below the ground
        elastic_transfer (force [N]): by springs, bar and tyres: as the body rolls
        load_transfer (force [N]): all of it: what the outer wheel gains and the inner wheel loses

    Valid for (SI)
        - `0 <= unsprung_mass <= 1000000`
        - `0 <= unsprung_height <= 100`
        - `0 <= axle_sprung_mass <= 1000000`
        - `-10 <= roll_centre_height <= 10`
        - `0 <= roll_stiffness <= 1000000000000`
        - `-1.6 <= roll_angle <= 1.6`
        - `0.01 <= track <= 100`
        - `0 <= lateral_acceleration <= 1000`

        A steady turn on a level road, small angles, both wheels on the ground: the inner wheel
        lifts where the transfer is more than half of the axle's load. A stiff frame.

    Source
        Moments about the roll centre and the ground; Milliken and Milliken, Race Car Vehicle
        Dynamics (1995), ch. 18, and Dixon, Tires, Suspension and Handling (1996), ch. 5 (from
        memory)

    Caution
        A wheel that lifts is the step before a rollover. Local codes and licensed practice come
        first.

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return AxleLoadTransfer(*_axle_load_transfer(unsprung_mass, unsprung_height, axle_sprung_mass, roll_centre_height, roll_stiffness, roll_angle, track, lateral_acceleration, invalid))


def bar_rate_for_roll_stiffness(
    *,
    bar_stiffness: QuantityLike,
    bar_motion_ratio: RatioLike,
    track: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rate of the anti-roll bar that gives an axle the wanted roll stiffness.

    Formula
        `k = 2 K / (r^2 t^2)`

    Parameters
        bar_stiffness (rotational stiffness): `K`, moment over roll angle that is wanted of the bar
            alone
        bar_motion_ratio (ratio): `r`, travel of the end of the bar's arm over travel of the wheel,
            in roll: on a live axle the distance between the links over the track
        track (length): `t`, between the tyre centres

    Returns
        (linear stiffness [N/m]) Force at either end of the bar over travel of that end, the other
        end travelling as far the other way: what `spring.anti_roll_bar_diameter_for_rate` takes.

    Valid for (SI)
        - `0 <= bar_stiffness <= 1000000000000`
        - `0.01 <= bar_motion_ratio <= 3`
        - `0.01 <= track <= 100`

        Inverse of `suspension::bar_roll_stiffness`.

    Source
        Virtual work; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _bar_rate_for_roll_stiffness(bar_stiffness, bar_motion_ratio, track, invalid)  # type: ignore[no-any-return]


def bar_roll_stiffness(
    *,
    bar_rate: QuantityLike,
    bar_motion_ratio: RatioLike,
    track: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness that an anti-roll bar gives an axle.

    Formula
        `K = k r^2 t^2 / 2`

    Parameters
        bar_rate (linear stiffness): `k`, force at either end of the bar over travel of that end,
            the other end travelling as far the other way; see spring.anti_roll_bar_rate
        bar_motion_ratio (ratio): `r`, travel of the end of the bar's arm over travel of the wheel,
            in roll: on a live axle the distance between the links over the track
        track (length): `t`, between the tyre centres

    Returns
        (rotational stiffness [N·m/rad]) Moment over roll angle; add it to that of the springs.

    Valid for (SI)
        - `0 <= bar_rate <= 1000000000`
        - `0.01 <= bar_motion_ratio <= 3`
        - `0.01 <= track <= 100`

        Links that stand square to the arms. Bushes that give are springs in series with the bar.

    Source
        Opposite wheel travels of `t / 2` times the roll angle, virtual work; Milliken and Milliken,
        Race Car Vehicle Dynamics (1995), ch. 16 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _bar_roll_stiffness(bar_rate, bar_motion_ratio, track, invalid)  # type: ignore[no-any-return]


def front_transfer_share(
    *,
    front_load_transfer: QuantityLike,
    rear_load_transfer: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Share of the front axle in the load that a turn moves to the outer wheels.

    Formula
        `q = F_f / (F_f + F_r)`

    Parameters
        front_load_transfer (force): `F_f`, that the outer front wheel gains
        rear_load_transfer (force): `F_r`, that the outer rear wheel gains

    Returns
        (ratio [-]) Front over both. The axle that moves more of its load than the other loses more
        of its grip: a share above that of the front axle in the weight tends to understeer, one
        below it to oversteer.

    Valid for (SI)
        - `0 < front_load_transfer <= 100000000`
        - `0 < rear_load_transfer <= 100000000`

        The tendency holds for tyres alike on both axles whose grip falls with load, at the limit;
        drive, camber and toe change it.

    Source
        SAE J670, tire lateral load transfer distribution; Milliken and Milliken, Race Car Vehicle
        Dynamics (1995), ch. 18 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _front_transfer_share(front_load_transfer, rear_load_transfer, invalid)


def independent_roll_stiffness(
    *,
    wheel_rate: QuantityLike,
    track: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness that the springs of independently sprung wheels give an axle.

    Formula
        `K = k t^2 / 2`

    Parameters
        wheel_rate (linear stiffness): `k`, of one wheel, tangent rate at ride height, without the
            tyre and without the bar
        track (length): `t`, between the tyre centres

    Returns
        (rotational stiffness [N·m/rad]) Moment over roll angle.

    Valid for (SI)
        - `1 <= wheel_rate <= 1000000000`
        - `0.01 <= track <= 100`

        Two wheels alike, no bar. Springs that are joined from side to side, such as one transverse
        leaf, give something else.

    Source
        Opposite wheel travels of `t / 2` times the roll angle; Gillespie, Fundamentals of Vehicle
        Dynamics (1992), ch. 6, and Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16
        (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _independent_roll_stiffness(wheel_rate, track, invalid)  # type: ignore[no-any-return]


def live_axle_roll_stiffness(
    *,
    spring_rate: QuantityLike,
    spring_base: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness that the springs give a live axle: their base counts, not the track.

    Formula
        `K = k t^2 / 2`

    Parameters
        spring_rate (linear stiffness): `k`, of one spring in vertical travel of its seat on the
            axle
        spring_base (length): `t`, between the two spring seats on the axle, less than the track

    Returns
        (rotational stiffness [N·m/rad]) Moment over roll angle.

    Valid for (SI)
        - `1 <= spring_rate <= 1000000000`
        - `0.01 <= spring_base <= 100`

        Two springs alike that stand upright or have their lean in the rate. Leaf springs twist in
        roll and add to it; links that bind do, too.

    Source
        Opposite travels of the seats of half the base times the roll angle; Gillespie, Fundamentals
        of Vehicle Dynamics (1992), ch. 6, solid axle (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _live_axle_roll_stiffness(spring_rate, spring_base, invalid)  # type: ignore[no-any-return]


def roll_arm(
    *,
    sprung_height: QuantityLike,
    behind_front_axle: QuantityLike,
    wheelbase: QuantityLike,
    front_roll_centre_height: QuantityLike,
    rear_roll_centre_height: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Height of the sprung mass over the roll axis: the lever on which a turn leans the body.

    Formula
        `h_1 = h_s - z_f - (z_r - z_f) a / l`

    Parameters
        sprung_height (length): `h_s`, of the centre of gravity of the sprung mass above the ground
        behind_front_axle (length): `a`, distance of that centre of gravity behind the front axle
        wheelbase (length): `l`, front to rear axle
        front_roll_centre_height (length): `z_f`, of the front axle above the ground; negative below
            it
        rear_roll_centre_height (length): `z_r`, of the rear axle above the ground; on the
            centreline where a lateral rod leads the axle

    Returns
        (length [m]) Vertical distance from the roll axis to the centre of gravity; negative where
        the axis passes above it and the body leans into the turn.

    Valid for (SI)
        - `0 <= sprung_height <= 100`
        - `-100 <= behind_front_axle <= 100`
        - `0.01 <= wheelbase <= 100`
        - `-10 <= front_roll_centre_height <= 10`
        - `-10 <= rear_roll_centre_height <= 10`

        Kinematic roll centres at ride height in the planes of the axles, small angles. The distance
        is taken upright; the axis is nearly level.

    Source
        SAE J670 and ISO 8855, roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6
        (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _roll_arm(sprung_height, behind_front_axle, wheelbase, front_roll_centre_height, rear_roll_centre_height, invalid)  # type: ignore[no-any-return]


def roll_gradient(
    *,
    sprung_mass: QuantityLike,
    roll_arm: QuantityLike,
    front_roll_stiffness: QuantityLike,
    rear_roll_stiffness: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll angle of the body over lateral acceleration, body to ground.

    Formula
        `G = m_s h_1 / (K_f + K_r - m_s g h_1)`

    Parameters
        sprung_mass (mass): `m_s`, of the whole vehicle
        roll_arm (length): `h_1`, height of the centre of gravity of the sprung mass over the roll
            axis
        front_roll_stiffness (rotational stiffness): `K_f`, of the front axle to the ground:
            springs, bar and tyres, see `roll_stiffness_over_tyres`
        rear_roll_stiffness (rotational stiffness): `K_r`, of the rear axle to the ground

    Returns
        (roll gradient [rad·s²/m]) Roll angle over lateral acceleration; the body leans out of the
        turn.

    Valid for (SI)
        - `0.001 <= sprung_mass <= 1000000`
        - `0 <= roll_arm <= 100`
        - `0 <= front_roll_stiffness <= 1000000000000`
        - `0 <= rear_roll_stiffness <= 1000000000000`

        Small angles, a steady turn, a stiff frame. The roll of the axles on their tyres under what
        the roll centres carry is left out; the model `RollBalance` has it.

    Source
        Moments about the roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, roll
        rate (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _roll_gradient(sprung_mass, roll_arm, front_roll_stiffness, rear_roll_stiffness, invalid)  # type: ignore[no-any-return]


def roll_stiffness_for_gradient(
    *,
    sprung_mass: QuantityLike,
    roll_arm: QuantityLike,
    roll_gradient: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness of both axles together that gives the wanted roll gradient.

    Formula
        `K = m_s h_1 (g + 1 / G)`

    Parameters
        sprung_mass (mass): `m_s`, of the whole vehicle
        roll_arm (length): `h_1`, height of the centre of gravity of the sprung mass over the roll
            axis
        roll_gradient (roll gradient): `G`, wanted roll angle over lateral acceleration, body to
            ground

    Returns
        (rotational stiffness [N·m/rad]) Front and rear axle to the ground together: springs, bars
        and tyres.

    Valid for (SI)
        - `0.001 <= sprung_mass <= 1000000`
        - `0 <= roll_arm <= 100`
        - `0.000001 <= roll_gradient <= 1`

        Inverse of `suspension::roll_gradient`.

    Source
        Moments about the roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, roll
        rate (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _roll_stiffness_for_gradient(sprung_mass, roll_arm, roll_gradient, invalid)  # type: ignore[no-any-return]


def roll_stiffness_over_tyres(
    *,
    suspension_stiffness: QuantityLike,
    tyre_stiffness: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness of an axle to the ground: springs and bar in series with the tyres.

    Formula
        `K = K_s K_t / (K_s + K_t)`

    Parameters
        suspension_stiffness (rotational stiffness): `K_s`, of springs and bar together
        tyre_stiffness (rotational stiffness): `K_t`, of the tyres, see `tyre_roll_stiffness`

    Returns
        (rotational stiffness [N·m/rad]) Moment over roll angle of the body to the ground.

    Valid for (SI)
        - `0.001 <= suspension_stiffness <= 1000000000000`
        - `0.001 <= tyre_stiffness <= 1000000000000`

        Both carry the same moment: what the roll centre and the unsprung mass add to the tyres'
        part is left out here; the model `RollBalance` has it.

    Source
        Springs in series; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from
        memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _roll_stiffness_over_tyres(suspension_stiffness, tyre_stiffness, invalid)  # type: ignore[no-any-return]


def tyre_roll_stiffness(
    *,
    tyre_rate: QuantityLike,
    track: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Roll stiffness of the tyres of an axle between the ground and the wheels.

    Formula
        `K = k t^2 / 2`

    Parameters
        tyre_rate (linear stiffness): `k`, vertical rate of the tyre or the twin tyres of one side
        track (length): `t`, between the tyre centres

    Returns
        (rotational stiffness [N·m/rad]) Moment over roll angle.

    Valid for (SI)
        - `1 <= tyre_rate <= 1000000000`
        - `0.01 <= track <= 100`

        Both sides alike, on the ground. Twin tyres: the middle of the pair counts.

    Source
        Opposite deflections of `t / 2` times the roll angle; Milliken and Milliken, Race Car
        Vehicle Dynamics (1995), ch. 16 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _tyre_roll_stiffness(tyre_rate, track, invalid)  # type: ignore[no-any-return]


class DoubleWishbone(Model):
    """A double wishbone with rack steering, drawn point by point: where the wheel stands over travel
    and rack travel, and what the spring does there.

    Formula
        distances between joined points are kept; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`; roll
        centre `y_c (dy/dz)` and anti-dive `s (dx/dz) l / h` of the contact point held in the
        upright; with inboard brakes, and in drive, the latter of the wheel's centre

    Fields
        axle (choice): `front` or `rear`: which way the wheelbase grows, and whether braking dives
            or lifts
        upper_arm (table): `front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright
        lower_arm (table): the same
        tie_rod (table): `inner` on the rack in its middle, `outer` on the steering arm; of an
            unsteered wheel the rod that holds its toe
        wheel (table): at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its
            centre to the ground
        coil_over (table, optional): `body_eye`, `lower_eye`, what it is `carried_by` (`lower_arm`,
            `upper_arm` or `upright`); its `spring` (`rate`, `free_length`, `solid_length` with the
            gaps that stay open, `seat_offset` between the eyes less between the seats) and its
            `damper` (`open_length`, `closed_length` between the eyes, `gas_force`); of a coil apart
            from the damper its `spring_seats` (`body`, `lower`, `carried_by`)
        torsion_bar (table, optional): `turned_by` the arm along whose axis it lies (`lower_arm` or
            `upper_arm`), its `rate`, and its `torque` at ride height, positive where it carries the
            vehicle
        anti_roll_bar (table, optional): `link_eye` of the drop link and what it is `carried_by`,
            `lever_end` of the bar, `lever_pivot`, any point of its axis along y
        braking (table, optional): `axle_share` `s` of the braking force, `centre_of_gravity_height`
            `h`, `wheelbase` `l`; `place` of the brakes, `outboard` (where it is missing) or
            `inboard`
        driving (table, optional): `axle_share` of the tractive force, by half shafts from a final
            drive on the body; height and wheelbase are those of `braking`
        joint_limits (table, optional): lean from ride height that `upper_ball`, `lower_ball`,
            `tie_rod_outer`, `tie_rod_inner` allow

    Valid for
        The left wheel, all points at ride height in the body's axes (x forward, y left, z up), arms
        that turn about the line of their pivots, rigid links, a rack along y. Camber and toe at
        ride height are those of the `wheel`, whatever the points are. The joints stand straight at
        ride height; set them so. What is missing gives results that are not a number. Bushes, the
        tyre's give and friction are left aside.

    Source
        Vector kinematics of rigid bodies; virtual work; W. F. Milliken, D. L. Milliken, *Race Car
        Vehicle Dynamics* (1995), chapter 17, anti features of outboard and inboard torque (from
        memory); terms: ISO 8855 and SAE J670 (from memory)

    Caution
        Steering and suspension carry lives, and a compressed spring stores enough energy to kill:
        check clearance and joints on the vehicle over the whole travel and lock before it moves;
        local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "suspension.DoubleWishbone"
    _kinds = {}

    def __init__(
        self,
        *,
        axle: Literal["front", "rear"],
        upper_arm: Mapping[str, Any],
        lower_arm: Mapping[str, Any],
        tie_rod: Mapping[str, Any],
        wheel: Mapping[str, Any],
        coil_over: Mapping[str, Any] | None = None,
        torsion_bar: Mapping[str, Any] | None = None,
        anti_roll_bar: Mapping[str, Any] | None = None,
        braking: Mapping[str, Any] | None = None,
        driving: Mapping[str, Any] | None = None,
        joint_limits: Mapping[str, Any] | None = None,
    ) -> None:
        self._build(
            axle=axle,
            upper_arm=upper_arm,
            lower_arm=lower_arm,
            tie_rod=tie_rod,
            wheel=wheel,
            coil_over=coil_over,
            torsion_bar=torsion_bar,
            anti_roll_bar=anti_roll_bar,
            braking=braking,
            driving=driving,
            joint_limits=joint_limits,
        )

    @property
    def axle(self) -> Literal["front", "rear"]:
        """`front` or `rear`: which way the wheelbase grows, and whether braking dives or lifts."""
        return self._read("axle")  # type: ignore[no-any-return]

    @property
    def upper_arm(self) -> dict[str, Any]:
        """`front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright."""
        return self._read("upper_arm")  # type: ignore[no-any-return]

    @property
    def lower_arm(self) -> dict[str, Any]:
        """The same."""
        return self._read("lower_arm")  # type: ignore[no-any-return]

    @property
    def tie_rod(self) -> dict[str, Any]:
        """`inner` on the rack in its middle, `outer` on the steering arm; of an unsteered wheel the rod
        that holds its toe.
        """
        return self._read("tie_rod")  # type: ignore[no-any-return]

    @property
    def wheel(self) -> dict[str, Any]:
        """At ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the
        ground.
        """
        return self._read("wheel")  # type: ignore[no-any-return]

    @property
    def coil_over(self) -> dict[str, Any] | None:
        """`body_eye`, `lower_eye`, what it is `carried_by` (`lower_arm`, `upper_arm` or `upright`); its
        `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset`
        between the eyes less between the seats) and its `damper` (`open_length`, `closed_length`
        between the eyes, `gas_force`); of a coil apart from the damper its `spring_seats` (`body`,
        `lower`, `carried_by`).
        """
        return self._read("coil_over")  # type: ignore[no-any-return]

    @property
    def torsion_bar(self) -> dict[str, Any] | None:
        """`turned_by` the arm along whose axis it lies (`lower_arm` or `upper_arm`), its `rate`, and its
        `torque` at ride height, positive where it carries the vehicle.
        """
        return self._read("torsion_bar")  # type: ignore[no-any-return]

    @property
    def anti_roll_bar(self) -> dict[str, Any] | None:
        """`link_eye` of the drop link and what it is `carried_by`, `lever_end` of the bar, `lever_pivot`,
        any point of its axis along y.
        """
        return self._read("anti_roll_bar")  # type: ignore[no-any-return]

    @property
    def braking(self) -> dict[str, Any] | None:
        """`axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`; `place`
        of the brakes, `outboard` (where it is missing) or `inboard`.
        """
        return self._read("braking")  # type: ignore[no-any-return]

    @property
    def driving(self) -> dict[str, Any] | None:
        """`axle_share` of the tractive force, by half shafts from a final drive on the body; height and
        wheelbase are those of `braking`.
        """
        return self._read("driving")  # type: ignore[no-any-return]

    @property
    def joint_limits(self) -> dict[str, Any] | None:
        """Lean from ride height that `upper_ball`, `lower_ball`, `tie_rod_outer`, `tie_rod_inner` allow."""
        return self._read("joint_limits")  # type: ignore[no-any-return]

    def at(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> WheelPosition:
        """The wheel at a travel and rack travel: alignment, instant centres, spring, stroke and joints.

        Parameters
            travel (length): `z`, of the wheel's centre against the body from ride height, positive in
                bump
            rack_travel (length): `y_r`, from the rack's middle, positive to the left

        Returns
            wheel_x (length [m]): of the wheel's centre, forward in the body's axes
            wheel_y (length [m]): of the wheel's centre, to the left
            wheel_z (length [m]): of the wheel's centre, up
            half_track (length [m]): from the vehicle's centre plane to the contact point, which lies a
                loaded radius from the wheel's centre in the wheel's plane
            half_track_change (length [m]): of that against ride height
            wheelbase_change (length [m]): of the wheel's centre against ride height, positive where the
            wheelbase grows
            camber (angle [rad]): positive with the top of the wheel outboard
            camber_change (angle [rad]): of camber over 25 mm of bump, at the slope that it has here
            toe (angle [rad]): of this wheel, positive with its front inboard
            bump_steer (angle [rad]): change of toe over 25 mm of bump, at the slope that it has here
            caster (angle [rad]): positive with the upper end of the steering axis to the rear
            kingpin_inclination (angle [rad]): positive with the upper end of the steering axis inboard
            scrub_radius (length [m]): from the steering axis outboard to the contact point, at the
                ground
            mechanical_trail (length [m]): from the contact point forward to the steering axis, at the
                ground
            front_view_centre_y (length [m]): of the upright's instant centre in front view, in the
                transverse plane through the contact point, to the left; infinite where there is none
            front_view_centre_height (length [m]): of the same, above the ground under this wheel
            roll_centre_height (length [m]): above the ground, where the line from the contact point to
                that centre meets the vehicle's centre plane; of the axle while the other wheel is this
                one's mirror image
            side_view_centre_x (length [m]): of the upright's instant centre in side view with the brake
                held, forward; infinite where there is none
            side_view_centre_height (length [m]): of the same, above the ground
            side_view_angle (angle [rad]): forward lean of the contact point's path in bump, with the
                brake held
            wheel_path_angle (angle [rad]): forward lean of the path of the wheel's centre in bump
            brake_anti_pitch (ratio [-]): in braking the anti-dive of a front axle, the anti-lift of a
                rear one, as a share of what would cancel the pitch of that axle
            drive_anti_pitch (ratio [-]): in drive the anti-squat of a rear axle, the anti-lift of a
                front one, as such a share
            eye_length (length [m]): between the eyes of the coil-over
            motion_ratio (ratio [-]): shortening of the spring over wheel travel
            damper_motion_ratio (ratio [-]): that of the damper, which is another one where the coil has
                seats of its own
            spring_length (length [m]): between the seats of the spring
            spring_force (force [N]): compressive, in the coil; nothing where it is loose
            wheel_force (force [N]): of coil, gas and torsion bar at the wheel, `F r`
            wheel_rate (linear stiffness [N/m]): tangent rate at the wheel, with the term of the
                changing motion ratio; of coil, gas and torsion bar, without anti-roll bar and tyre
            spring_used (length [m]): by how much the spring is shorter than unloaded
            spring_left (length [m]): until it is solid, along itself
            damper_used (length [m]): of the damper's stroke, from fully open
            damper_left (length [m]): of the damper's stroke, to fully closed; negative where it has
                ended
            torsion_bar_torque (torque [N·m]): in the torsion bar, positive where it carries the vehicle
            bar_angle (angle [rad]): turn of the bar's lever from ride height, positive as in bump
            bar_motion_ratio (ratio [-]): travel of the end of the bar's lever along its arc over wheel
                travel
            upper_joint_angle (angle [rad]): lean of the upper ball joint from ride height, its stud
                along the steering axis
            lower_ball_angle (angle [rad]): the same of the lower ball joint
            tie_rod_outer_angle (angle [rad]): the same of the outer joint of the tie rod, its stud
                beside the steering axis
            tie_rod_inner_angle (angle [rad]): turn of the tie rod against the rack from ride height
            joint_left (angle [rad]): until the first of the joints whose limits are given is at its
                limit
            first_joint (text): which joint that is: `upper ball joint`, `lower ball joint`, `tie rod
                outer joint` or `tie rod inner joint`; otherwise `not known`
        """
        return WheelPosition(*_double_wishbone_at(self._handle, travel, rack_travel))

    def table(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> Table:
        """The wheel over travel and rack travel.

        Parameters
            travel (length), several: of the wheel's centre against the body from ride height, positive
                in bump
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a travel and rack travel: `travel`, `rack_travel`, and the results of `at`:
            `wheel_x`, `wheel_y`, `wheel_z`, `half_track`, `half_track_change`, `wheelbase_change`,
            `camber`, `camber_change`, `toe`, `bump_steer`, `caster`, `kingpin_inclination`,
            `scrub_radius`, `mechanical_trail`, `front_view_centre_y`, `front_view_centre_height`,
            `roll_centre_height`, `side_view_centre_x`, `side_view_centre_height`, `side_view_angle`,
            `wheel_path_angle`, `brake_anti_pitch`, `drive_anti_pitch`, `eye_length`, `motion_ratio`,
            `damper_motion_ratio`, `spring_length`, `spring_force`, `wheel_force`, `wheel_rate`,
            `spring_used`, `spring_left`, `damper_used`, `damper_left`, `torsion_bar_torque`,
            `bar_angle`, `bar_motion_ratio`, `upper_joint_angle`, `lower_ball_angle`,
            `tie_rod_outer_angle`, `tie_rod_inner_angle`, `joint_left`, `first_joint`.
        """
        return _double_wishbone_table(self._handle, travel, rack_travel)  # type: ignore[no-any-return]

    def in_roll(self, *, heave: QuantityLike, roll: QuantityLike, rack_travel: QuantityLike) -> WheelsInRoll:
        """Both wheels on level ground while the body rolls and heaves over them; the right wheel is the
        mirror image of this one.

        Parameters
            heave (length): of the ground under the body's centre plane against the body from ride
                height, positive in bump
            roll (angle): of the body against the ground, about x, positive with its left side up, as in
                a left turn
            rack_travel (length): from the rack's middle, positive to the left

        Returns
            left_travel (length [m]): of the left wheel's centre against the body, positive in bump
            right_travel (length [m]): of the right wheel's centre
            left_camber (angle [rad]): of the left wheel against the ground, positive with the top
                outboard
            right_camber (angle [rad]): of the right wheel against the ground
            left_toe (angle [rad]): of the left wheel against the ground, positive with its front
                inboard
            right_toe (angle [rad]): of the right wheel against the ground
            track (length [m]): between the contact points, along the ground
            left_slope (ratio [-]): outboard path of the left contact point over its rise against the
                body, both against the ground: what lifts the body there is so much of the lateral force
            right_slope (ratio [-]): the same of the right contact point
            roll_centre_y (length [m]): along the ground from the body's centre plane to the left, to
                where the normals of both paths meet; for display: loads follow from the slopes.
                Infinite where the normals are parallel, not a number where both lie in the ground
            roll_centre_height (length [m]): of the same above the ground
        """
        return WheelsInRoll(*_double_wishbone_in_roll(self._handle, heave, roll, rack_travel))

    def roll_table(self, *, heave: QuantityLike, roll: QuantityLike, rack_travel: QuantityLike) -> Table:
        """Both wheels over heave, roll and rack travel.

        Parameters
            heave (length), several: of the ground under the body's centre plane against the body from
                ride height, positive in bump
            roll (angle), several: of the body against the ground, about x, positive with its left side
                up
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a heave, roll and rack travel: `heave`, `roll`, `rack_travel`, and the
            results of `in_roll`: `left_travel`, `right_travel`, `left_camber`, `right_camber`,
            `left_toe`, `right_toe`, `track`, `left_slope`, `right_slope`, `roll_centre_y`,
            `roll_centre_height`.
        """
        return _double_wishbone_roll_table(self._handle, heave, roll, rack_travel)  # type: ignore[no-any-return]

    def points(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> Table:
        """The joints in space, part by part: to draw the linkage, or to measure clearance from.

        Parameters
            travel (length), several: of the wheel's centre against the body from ride height, positive
                in bump
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a travel, rack travel and point, the points of a part in the order in which
            a line joins them: `travel`, `rack_travel`, `part` (`upper arm`, `lower arm`, `upright`,
            `tie rod`, `coil-over`, `coil` where it has seats of its own, `anti-roll bar`, `wheel`),
            `point`, and its place `x`, `y`, `z` in the body's axes.
        """
        return _double_wishbone_points(self._handle, travel, rack_travel)  # type: ignore[no-any-return]

    def travel_range(self, *, rack_travel: QuantityLike) -> TravelRange:
        """How far the linkage goes in droop and bump before a link is in line with what it turns; damper,
        spring and joints may end it earlier.

        Parameters
            rack_travel (length): from the rack's middle, positive to the left

        Returns
            droop (length [m]): least travel, negative
            droop_end (text): what ends it: `upper arm`, `lower arm`, `tie rod` or `drop link`
            bump (length [m]): greatest travel
            bump_end (text): what ends it
        """
        return TravelRange(*_double_wishbone_travel_range(self._handle, rack_travel))

    def arch_move(self, *, forward: QuantityLike, outboard: QuantityLike, up: QuantityLike, travel: QuantityLike) -> Table:
        """The wheel moved in its arch: both arms with their pivots, upright, wheel and what the arms carry
        are moved; rack, upper eye of the coil-over and bar stay.

        Parameters
            forward (length): by how much
            outboard (length): by how much
            up (length): by how much, against the body, which then stands so much lower
            travel (length), several: from the ride height of each

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`. The tie rod and the drop link are set to their new length
            at ride height, camber and toe are there what they were, and the spring's seat (without a
            coil the torsion bar) is set so that it carries the wheel load that it carried.
        """
        return _double_wishbone_arch_move(self._handle, forward, outboard, up, travel)  # type: ignore[no-any-return]

    def ride_height_change(self, *, rise: QuantityLike, travel: QuantityLike) -> Table:
        """The body raised or lowered on its springs, the linkage as it is.

        Parameters
            rise (length): of the body above the ground, negative where it is lowered
            travel (length), several: from the ride height of each

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`; changes are against the ride height before. Toe is as the
            rods leave it, and the spring's seat (without a coil the torsion bar) is set so that it
            carries the wheel load that it carried.
        """
        return _double_wishbone_ride_height_change(self._handle, rise, travel)  # type: ignore[no-any-return]

    def spacer(self, *, outward: QuantityLike, travel: QuantityLike) -> Table:
        """A spacer behind the wheel, or a wheel of another offset.

        Parameters
            outward (length): thickness of the spacer, or by how much the new offset is less
            travel (length), several: from ride height

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`. The spring's seat (without a coil the torsion bar) is set
            so that it carries the wheel load that it carried.
        """
        return _double_wishbone_spacer(self._handle, outward, travel)  # type: ignore[no-any-return]


class LeafAxle(Model):
    """A live axle on two leaf springs, drawn point by point: where it stands over heave and roll, how
    it steers, tilts and winds up, and what the springs do there.

    Formula
        each half keeps its length and bends in the shape of a cantilever; the pitch `theta` is that
        of least energy `U`; load `dU/dz`, axle rate `U_zz - U_zt^2 / U_tt`, roll stiffness `U_rr -
        U_rt^2 / U_tt`, wind-up rate `U_tt`; anti-squat `s (dx/dz) l / h` of the contact point held
        in the axle

    Fields
        axle (choice): `front` or `rear`: which way the wheelbase grows, and which way the pinion
            points
        wheel (table): the left one at ride height: `centre`, `camber`, `toe`, and the
            `loaded_radius` from its centre to the ground; the right one is its mirror image
        spring (table): the left one at ride height, without its axle's torque: `fixed_eye` on the
            body, `shackle_eye` on the spring, `shackle_pivot` on the body, `seat`, where the centre
            bolt crosses the main leaf; `seat_angle`, positive with its front up; `clamped_length`,
            held stiff by the seat over both halves; `eye_offset` of the eyes' centres above the
            main leaf; `form`, `uniform_strength` (a stepped pack or a tapered leaf) or
            `uniform_section` (a single leaf, or all leaves full length); `load` that it carries
            itself, while the wheel carries it and what the coil takes; its `rate`, or the `leaves`
            of which it follows (`elastic_modulus`, `leaf_width`, `leaf_thickness`,
            `full_length_leaves`, `graduated_leaves`)
        damper (table, optional): the left one: `body_eye`, `axle_eye`, `open_length` and
            `closed_length` between the eyes
        coil_over (table, optional): a helper coil beside the leaf, the left one, mirrored:
            `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`, `solid_length` with the
            gaps that stay open, `seat_offset` between the eyes less between the seats) and, where
            there is no `damper` beside it, its own (`open_length`, `closed_length` between the
            eyes, `gas_force`)
        anti_roll_bar (table, optional): its left end, mirrored: what carries its bearings
            (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other of the two,
            `lever_end` of the bar, `lever_pivot`, any point of its axis along y
        bump_clearance (length, optional): above each spring seat to its bump stop, at ride height
        pinion_angle (angle, optional): at ride height, against the body's axis, positive with its
            nose up
        braking (table, optional): `axle_share` `s` of the braking force, `centre_of_gravity_height`
            `h`, `wheelbase` `l`
        drive_share (ratio, optional): share of the driving force that this axle has; it wants
            `braking` for the height and the wheelbase

    Valid for
        Two springs alike, mirror images of each other, that stand parallel to the vehicle's centre
        plane: of their points only the seat's `y` counts. The rate is that of the spring alone, its
        eyes free to move apart and its seat free to turn, as a spring tester finds it; what shackle
        and eyes make of it on the vehicle is a result. At ride height each half is an arc. What is
        drawn is the ride height with everything fitted: a coil that turns the axle there is held by
        the leaves. Heave is that of the axle's middle. Left out: the twist of the leaves in roll,
        which adds to the roll stiffness; bushes and their give, friction between leaves, which
        makes small movements stiffer; leaves that part beyond their free shape; the give of the
        springs sideways. What is missing gives results that are not a number.

    Source
        Beam theory of a cantilever with its curvature in one shape, exact for large slopes; virtual
        work. The eye's way is that of SAE HS-788's equivalent link of 3/4 of the half (uniform
        strength; from memory). Roll centre where the line between the spring's eyes passes the
        axle: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 7 (from memory)

    Caution
        A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle
        go. Wound up by drive or brake it can hop and break; check shackles, shafts and brake hoses
        over the whole travel before the vehicle moves. Local codes and licensed practice come
        first.
    """

    __slots__ = ()
    _name = "suspension.LeafAxle"
    _kinds = {"bump_clearance": "Length", "pinion_angle": "Angle", "drive_share": "Ratio"}

    def __init__(
        self,
        *,
        axle: Literal["front", "rear"],
        wheel: Mapping[str, Any],
        spring: Mapping[str, Any],
        damper: Mapping[str, Any] | None = None,
        coil_over: Mapping[str, Any] | None = None,
        anti_roll_bar: Mapping[str, Any] | None = None,
        bump_clearance: QuantityLike | None = None,
        pinion_angle: QuantityLike | None = None,
        braking: Mapping[str, Any] | None = None,
        drive_share: RatioLike | None = None,
    ) -> None:
        self._build(
            axle=axle,
            wheel=wheel,
            spring=spring,
            damper=damper,
            coil_over=coil_over,
            anti_roll_bar=anti_roll_bar,
            bump_clearance=bump_clearance,
            pinion_angle=pinion_angle,
            braking=braking,
            drive_share=drive_share,
        )

    @property
    def axle(self) -> Literal["front", "rear"]:
        """`front` or `rear`: which way the wheelbase grows, and which way the pinion points."""
        return self._read("axle")  # type: ignore[no-any-return]

    @property
    def wheel(self) -> dict[str, Any]:
        """The left one at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre
        to the ground; the right one is its mirror image.
        """
        return self._read("wheel")  # type: ignore[no-any-return]

    @property
    def spring(self) -> dict[str, Any]:
        """The left one at ride height, without its axle's torque: `fixed_eye` on the body, `shackle_eye`
        on the spring, `shackle_pivot` on the body, `seat`, where the centre bolt crosses the main leaf;
        `seat_angle`, positive with its front up; `clamped_length`, held stiff by the seat over both
        halves; `eye_offset` of the eyes' centres above the main leaf; `form`, `uniform_strength` (a
        stepped pack or a tapered leaf) or `uniform_section` (a single leaf, or all leaves full length);
        `load` that it carries itself, while the wheel carries it and what the coil takes; its `rate`,
        or the `leaves` of which it follows (`elastic_modulus`, `leaf_width`, `leaf_thickness`,
        `full_length_leaves`, `graduated_leaves`).
        """
        return self._read("spring")  # type: ignore[no-any-return]

    @property
    def damper(self) -> dict[str, Any] | None:
        """The left one: `body_eye`, `axle_eye`, `open_length` and `closed_length` between the eyes."""
        return self._read("damper")  # type: ignore[no-any-return]

    @property
    def coil_over(self) -> dict[str, Any] | None:
        """A helper coil beside the leaf, the left one, mirrored: `body_eye`, `axle_eye`; its `spring`
        (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset` between the
        eyes less between the seats) and, where there is no `damper` beside it, its own (`open_length`,
        `closed_length` between the eyes, `gas_force`).
        """
        return self._read("coil_over")  # type: ignore[no-any-return]

    @property
    def anti_roll_bar(self) -> dict[str, Any] | None:
        """Its left end, mirrored: what carries its bearings (`carried_by`, `body` or `axle`), `link_eye`
        of the drop link on the other of the two, `lever_end` of the bar, `lever_pivot`, any point of
        its axis along y.
        """
        return self._read("anti_roll_bar")  # type: ignore[no-any-return]

    @property
    def bump_clearance(self) -> Quantity | None:
        """Above each spring seat to its bump stop, at ride height."""
        return self._read("bump_clearance", "Length")  # type: ignore[no-any-return]

    @property
    def pinion_angle(self) -> Quantity | None:
        """At ride height, against the body's axis, positive with its nose up."""
        return self._read("pinion_angle", "Angle")  # type: ignore[no-any-return]

    @property
    def braking(self) -> dict[str, Any] | None:
        """`axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`."""
        return self._read("braking")  # type: ignore[no-any-return]

    @property
    def drive_share(self) -> Ratio | None:
        """Share of the driving force that this axle has; it wants `braking` for the height and the
        wheelbase.
        """
        return self._read("drive_share", "Ratio")

    def at(self, *, heave: QuantityLike, roll: QuantityLike) -> LeafAxlePosition:
        """The axle at a heave and roll: position, steer, pinion, springs, shackles, roll centre,
        anti-squat and what is left of the strokes.

        Parameters
            heave (length): `z`, of the axle's middle against the body from ride height, positive in
                bump
            roll (angle): `r`, of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            left_wheel_x (length [m]): of the left wheel's centre, forward in the body's axes
            left_wheel_y (length [m]): of the left wheel's centre, to the left
            left_wheel_z (length [m]): of the left wheel's centre, up
            right_wheel_x (length [m]): of the right wheel's centre, forward
            right_wheel_y (length [m]): of the right wheel's centre, to the left
            right_wheel_z (length [m]): of the right wheel's centre, up
            wheelbase_change (length [m]): of the axle's middle against ride height, positive where the
            wheelbase grows
            axle_steer (angle [rad]): turn of the axle against the body, positive to the left
            roll_steer (ratio [-]): change of that over roll: of a rear axle negative is roll
                understeer, of a front one positive
            lateral_shift (length [m]): of the axle's middle against the body, to the left: the axle
                leans about the roll centre
            pinion_angle (angle [rad]): against the body's axis, positive with its nose up
            pinion_angle_change (angle [rad]): of that against ride height; known without it
            roll_centre_height (length [m]): above the ground, where the line between the spring's eyes
                passes the axle, which holds the body sideways
            side_view_centre_x (length [m]): of the axle's instant centre in side view, with the wheels
                held by drive or brake, forward; infinite where there is none
            side_view_centre_height (length [m]): of the same, above the ground
            side_view_angle (angle [rad]): forward lean of the contact point's path in bump
            brake_anti_pitch (ratio [-]): the anti-dive of a front axle, the anti-lift of a rear one, as
                a share of what would cancel the pitch of that axle
            drive_anti_pitch (ratio [-]): the anti-lift of a front axle, the anti-squat of a rear one;
                the housing takes the torque of the wheels
            wheel_rate (linear stiffness [N/m]): tangent rate of one wheel in heave, half the axle's,
                leaf and coil together, with what shackles and eyes make of it
            roll_stiffness (rotational stiffness [N·m/rad]): tangent stiffness of both springs and coils
                in roll with the axle's middle kept, without twist, bar and tyres
            wind_up_rate (rotational stiffness [N·m/rad]): tangent stiffness of both springs and coils
                against the axle's pitch with its heave kept
            left_spring_load (force [N]): vertical, of the left leaf spring at its seat, its own; what a
                coil pulls along the vehicle the leaf beside it takes
            right_spring_load (force [N]): the same of the right spring
            left_leaf_stress (stress or pressure difference [Pa]): greatest of the left spring, in the
                full-length leaves at the seat
            right_leaf_stress (stress or pressure difference [Pa]): the same of the right spring
            left_shackle_angle (angle [rad]): of the left shackle from upright, positive with the
                spring's eye away from the fixed eye
            right_shackle_angle (angle [rad]): the same of the right shackle
            left_shackle_opening (angle [rad]): between the left shackle and the line of the eyes: at
                nothing or half a turn it is in line and turns over
            right_shackle_opening (angle [rad]): the same of the right shackle
            left_eye_length (length [m]): between the eyes of the left coil-over
            left_motion_ratio (ratio [-]): shortening of the left coil-over over heave
            left_roll_motion_ratio (ratio [-]): shortening of the left coil-over over the travel of the
            left wheel in roll: of upright coils their base over the track
            left_coil_length (length [m]): between the seats of the left coil
            left_coil_force (force [N]): compressive, in the left coil; nothing where it is loose
            left_coil_used (length [m]): by how much the left coil is shorter than unloaded
            left_coil_remaining (length [m]): until the left coil is solid, along itself
            left_wheel_force (force [N]): of leaf, coil and gas on the left, the change of their energy
                over heave: what the wheel carries but for the axle's own weight; without roll the load
                of the leaf and the vertical force of the coil-over
            right_eye_length (length [m]): between the eyes of the right coil-over
            right_motion_ratio (ratio [-]): shortening of the right coil-over over heave
            right_roll_motion_ratio (ratio [-]): shortening of the right coil-over over the travel of
                the right wheel in roll
            right_coil_length (length [m]): between the seats of the right coil
            right_coil_force (force [N]): compressive, in the right coil; nothing where it is loose
            right_coil_used (length [m]): by how much the right coil is shorter than unloaded
            right_coil_remaining (length [m]): until the right coil is solid, along itself
            right_wheel_force (force [N]): of leaf, coil and gas on the right, the change of their
                energy over heave
            bar_angle (angle [rad]): mean turn of the bar's two levers from ride height, positive as in
                bump
            bar_twist (angle [rad]): turn of the left lever less that of the right one
            bar_motion_ratio (ratio [-]): travel of the levers' ends along their arcs over wheel travel,
                in roll
            damper_motion_ratio (ratio [-]): shortening of the left damper over heave, be it that beside
                the coil or that of the coil-over
            left_damper_used (length [m]): of the left damper's stroke, from fully open
            left_damper_remaining (length [m]): of the left damper's stroke, to fully closed; negative
                where it has ended
            right_damper_used (length [m]): the same of the right damper, from fully open
            right_damper_remaining (length [m]): the same of the right damper, to fully closed
            left_bump_remaining (length [m]): above the left seat to its bump stop, vertical; negative
                where the stop is pressed
            right_bump_remaining (length [m]): the same of the right seat
        """
        return LeafAxlePosition(*_leaf_axle_at(self._handle, heave, roll))

    def table(self, *, heave: QuantityLike, roll: QuantityLike) -> Table:
        """The axle over heave and roll.

        Parameters
            heave (length), several: of the axle's middle against the body from ride height, positive in
                bump
            roll (angle), several: of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            (table) One row a heave and roll: `heave`, `roll`, and the results of `at`: `left_wheel_x`,
            `left_wheel_y`, `left_wheel_z`, `right_wheel_x`, `right_wheel_y`, `right_wheel_z`,
            `wheelbase_change`, `axle_steer`, `roll_steer`, `lateral_shift`, `pinion_angle`,
            `pinion_angle_change`, `roll_centre_height`, `side_view_centre_x`,
            `side_view_centre_height`, `side_view_angle`, `brake_anti_pitch`, `drive_anti_pitch`,
            `wheel_rate`, `roll_stiffness`, `wind_up_rate`, `left_spring_load`, `right_spring_load`,
            `left_leaf_stress`, `right_leaf_stress`, `left_shackle_angle`, `right_shackle_angle`,
            `left_shackle_opening`, `right_shackle_opening`, `left_eye_length`, `left_motion_ratio`,
            `left_roll_motion_ratio`, `left_coil_length`, `left_coil_force`, `left_coil_used`,
            `left_coil_remaining`, `left_wheel_force`, `right_eye_length`, `right_motion_ratio`,
            `right_roll_motion_ratio`, `right_coil_length`, `right_coil_force`, `right_coil_used`,
            `right_coil_remaining`, `right_wheel_force`, `bar_angle`, `bar_twist`, `bar_motion_ratio`,
            `damper_motion_ratio`, `left_damper_used`, `left_damper_remaining`, `right_damper_used`,
            `right_damper_remaining`, `left_bump_remaining`, `right_bump_remaining`.
        """
        return _leaf_axle_table(self._handle, heave, roll)  # type: ignore[no-any-return]

    def points(self, *, heave: QuantityLike, roll: QuantityLike) -> Table:
        """The joints in space, part by part, and the springs as they are bent: to draw the axle, or to
        measure clearance from.

        Parameters
            heave (length), several: of the axle's middle against the body from ride height, positive in
                bump
            roll (angle), several: of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            (table) One row a heave, roll and point, the points of a part in the order in which a line
            joins them: `heave`, `roll`, `part` (`axle`, `spring left`, `shackle left`, `seat left`,
            `damper left`, `coil-over left`, `wheel left`, the same of the right side, and `anti-roll
            bar`), `point`, and its place `x`, `y`, `z` in the body's axes. The main leaf goes from the
            `fixed eye` through `leaf`, `clamp` and `seat` to the `shackle eye`; sideways it is drawn
            from the eyes, which stay in their plane, evenly to its seat. A seat stands on the axle's
            own line, above or below it.
        """
        return _leaf_axle_points(self._handle, heave, roll)  # type: ignore[no-any-return]

    def travel_range(self, *, roll: QuantityLike) -> HeaveRange:
        """How far the springs go in droop and bump before a shackle is in line; damper, bump stop, coil,
        bar and the leaves' strength may end it earlier.

        Parameters
            roll (angle): of the axle against the body about x, positive with the left wheel in bump

        Returns
            droop (length [m]): least heave, negative
            droop_end (text): what ends it: `shackle`, `half to the fixed eye`, `half to the shackle` or
                `axle's pitch`
            bump (length [m]): greatest heave
            bump_end (text): what ends it
        """
        return HeaveRange(*_leaf_axle_travel_range(self._handle, roll))

    def wind_up(self, *, heave: QuantityLike, torque: QuantityLike) -> WindUp:
        """The axle wound up in its springs by drive or brake, its heave kept.

        Parameters
            heave (length): of the axle's middle against the body from ride height, positive in bump
            torque (torque): of both wheels together, positive driving forward, negative braking; their
                force at the ground is it over the loaded radius

        Returns
            wind_up_angle (angle [rad]): turn of the housing by the torque, positive with the pinion's
                nose up
            pinion_angle (angle [rad]): with that and the heave, positive with its nose up
            wind_up_rate (rotational stiffness [N·m/rad]): tangent stiffness of both springs and coils
                against the axle's pitch, there
            wheelbase_change (length [m]): of the axle's middle by the torque alone
            spring_load (force [N]): vertical, of each leaf spring, which the torque changes with the
                heave kept
            leaf_stress (stress or pressure difference [Pa]): greatest, in the full-length leaves at the
                seat, load and torque together
        """
        return WindUp(*_leaf_axle_wind_up(self._handle, heave, torque))

    def seat_block(self, *, thickness: QuantityLike, heave: QuantityLike) -> Table:
        """A block between spring and seat, or one taken out: the body is raised or lowered, the springs as
        they are.

        Parameters
            thickness (length): of the block put in, negative of one taken out: it raises the body where
                the spring lies above the axle, and lowers it where it lies below
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`. The body's axes stay with the body: the axle moves in them. The seats of a
            coil are set so that it carries what it carried.
        """
        return _leaf_axle_seat_block(self._handle, thickness, heave)  # type: ignore[no-any-return]

    def shackle_change(self, *, longer: QuantityLike, heave: QuantityLike) -> Table:
        """Shackles of another length; springs and coils together carry what they carried.

        Parameters
            longer (length): by how much, negative where they are shorter
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`; changes are against the ride height before.
        """
        return _leaf_axle_shackle_change(self._handle, longer, heave)  # type: ignore[no-any-return]

    def ride_height_change(self, *, rise: QuantityLike, heave: QuantityLike) -> Table:
        """The body raised or lowered by springs of another arch: they carry their load at the new height.

        Parameters
            rise (length): of the body above the ground, negative where it is lowered
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`; changes are against the ride height before. The seats of a coil are set so
            that it carries what it carried.
        """
        return _leaf_axle_ride_height_change(self._handle, rise, heave)  # type: ignore[no-any-return]

    def axle_move(self, *, forward: QuantityLike, up: QuantityLike, heave: QuantityLike) -> Table:
        """The axle moved under its body: along its springs, whose seats come to another place of them, or
        up and down on blocks; wheels, seats and what the axle carries are moved, what is on the body
        stays.

        Parameters
            forward (length): by how much; one half of each spring gets shorter by it, the other one
                longer
            up (length): by how much, against the body, which then stands so much lower: the seats stay
                at their height, blocks between them and the axle make it up
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`. Kept are the eyes, the shackles and the height of the seats at ride height,
            the length that is clamped, the load of each spring and its bending strength `B`, with which
            a half of the length `L` has the rate `B / L^3` at its end. The seat is free to turn in a
            spring tester, so that a half carries the share `c` of the other's lever in both; hence the
            spring's rate is `B / (c_f^2 L_f^3 + c_s^2 L_s^3)`, of halves to the fixed eye and to the
            shackle, and a given one changes as that; `leaves` stay as they are. The main leaf keeps its
            length but for what the arcs want. The pinion points as it did, and the seats of a coil are
            set so that it carries what it carried.
        """
        return _leaf_axle_axle_move(self._handle, forward, up, heave)  # type: ignore[no-any-return]

    def spacer(self, *, outward: QuantityLike, heave: QuantityLike) -> Table:
        """Spacers behind both wheels, or wheels of another offset.

        Parameters
            outward (length): thickness of a spacer, or by how much the new offset is less
            heave (length), several: from ride height

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`.
        """
        return _leaf_axle_spacer(self._handle, outward, heave)  # type: ignore[no-any-return]


class LiveAxle(Model):
    """A rigid axle on links, drawn point by point: where it stands over heave and roll, how it steers,
    and what springs and bushes do there.

    Formula
        distances between joined points are kept, or the strain energy `sum f^2 g / 2` of the bushes
        is least; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`; roll centre where `dy/dphi = 0`;
        anti-pitch `s (dx/dz) l / h` of the contact points held in the axle

    Fields
        axle (choice): `front` or `rear`: which way the wheelbase grows, and what driving and
            braking do to the body
        wheel (table): the left wheel at ride height: `centre`, `camber`, `toe`, and the
            `loaded_radius` from its centre to the ground; the right one is its mirror image
        links (list): those along the vehicle, three or four: `name`, `fitted` as a `pair` (drawn on
            the left, the mirror image added) or as a `single` one, `body` and `axle` for its ends,
            the stiffness of the bushes in them, `body_bush` and `axle_bush`, along the link, and
            the lean that they allow, `body_limit` and `axle_limit`
        lateral_rod (table, optional): across the vehicle: `body`, `axle`, and the same of its ends
        watt (table, optional): instead of that: the `pivot` of a bell crank whose axis lies along
            x, what it is `carried_by` (`axle` or `body`), and `upper_rod` and `lower_rod`, each
            from `crank` to `outer`
        coil_over (table, optional): the left one, mirrored: `body_eye`, `axle_eye`; its `spring`
            (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset`
            between the eyes less between the seats) and its `damper` (`open_length`,
            `closed_length` between the eyes, `gas_force`)
        anti_roll_bar (table, optional): its left end, mirrored: what carries its bearings
            (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other of the two,
            `lever_end` of the bar, `lever_pivot`, any point of its axis along y
        pinion (table, optional): its `angle` against the body's x at ride height, positive with its
            nose up, and the joint on its `nose`
        pitching (table, optional): what driving and braking ask: `drive_share` and `brake_share`
            `s` of this axle, `centre_of_gravity_height` `h`, `wheelbase` `l`

    Valid for
        All points at ride height in the body's axes (x forward, y left, z up, y = 0 on the centre
        plane), links of fixed length, bushes that give along their link only and twist and lean
        freely, nothing strained at ride height. Heave is that of the axle's middle against the
        body, positive in bump; roll that of the axle against the body about x as ISO 8855 counts
        turns, positive with the left wheel in bump: a body that leans by that much over a level
        axle rolls the other way. A link that would have to give more than a twentieth of its length
        is over-extended. What is missing gives results that are not a number. The axle is rigid;
        friction and the tyre's give are left aside.

    Source
        Vector kinematics of rigid bodies; virtual work; strain energy of bushes in series; terms:
        ISO 8855 and SAE J670 (from memory)

    Caution
        Suspension carries lives, a compressed spring stores enough energy to kill, and brackets of
        links that bind crack: check clearance, joints and bind on the vehicle over the whole
        travel, in roll too, before it moves; local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "suspension.LiveAxle"
    _kinds = {}

    def __init__(
        self,
        *,
        axle: Literal["front", "rear"],
        wheel: Mapping[str, Any],
        links: Sequence[Mapping[str, Any]],
        lateral_rod: Mapping[str, Any] | None = None,
        watt: Mapping[str, Any] | None = None,
        coil_over: Mapping[str, Any] | None = None,
        anti_roll_bar: Mapping[str, Any] | None = None,
        pinion: Mapping[str, Any] | None = None,
        pitching: Mapping[str, Any] | None = None,
    ) -> None:
        self._build(
            axle=axle,
            wheel=wheel,
            links=links,
            lateral_rod=lateral_rod,
            watt=watt,
            coil_over=coil_over,
            anti_roll_bar=anti_roll_bar,
            pinion=pinion,
            pitching=pitching,
        )

    @property
    def axle(self) -> Literal["front", "rear"]:
        """`front` or `rear`: which way the wheelbase grows, and what driving and braking do to the body."""
        return self._read("axle")  # type: ignore[no-any-return]

    @property
    def wheel(self) -> dict[str, Any]:
        """The left wheel at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its
        centre to the ground; the right one is its mirror image.
        """
        return self._read("wheel")  # type: ignore[no-any-return]

    @property
    def links(self) -> list[dict[str, Any]]:
        """Those along the vehicle, three or four: `name`, `fitted` as a `pair` (drawn on the left, the
        mirror image added) or as a `single` one, `body` and `axle` for its ends, the stiffness of the
        bushes in them, `body_bush` and `axle_bush`, along the link, and the lean that they allow,
        `body_limit` and `axle_limit`.
        """
        return self._read("links")  # type: ignore[no-any-return]

    @property
    def lateral_rod(self) -> dict[str, Any] | None:
        """Across the vehicle: `body`, `axle`, and the same of its ends."""
        return self._read("lateral_rod")  # type: ignore[no-any-return]

    @property
    def watt(self) -> dict[str, Any] | None:
        """Instead of that: the `pivot` of a bell crank whose axis lies along x, what it is `carried_by`
        (`axle` or `body`), and `upper_rod` and `lower_rod`, each from `crank` to `outer`.
        """
        return self._read("watt")  # type: ignore[no-any-return]

    @property
    def coil_over(self) -> dict[str, Any] | None:
        """The left one, mirrored: `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`,
        `solid_length` with the gaps that stay open, `seat_offset` between the eyes less between the
        seats) and its `damper` (`open_length`, `closed_length` between the eyes, `gas_force`).
        """
        return self._read("coil_over")  # type: ignore[no-any-return]

    @property
    def anti_roll_bar(self) -> dict[str, Any] | None:
        """Its left end, mirrored: what carries its bearings (`carried_by`, `body` or `axle`), `link_eye`
        of the drop link on the other of the two, `lever_end` of the bar, `lever_pivot`, any point of
        its axis along y.
        """
        return self._read("anti_roll_bar")  # type: ignore[no-any-return]

    @property
    def pinion(self) -> dict[str, Any] | None:
        """Its `angle` against the body's x at ride height, positive with its nose up, and the joint on its
        `nose`.
        """
        return self._read("pinion")  # type: ignore[no-any-return]

    @property
    def pitching(self) -> dict[str, Any] | None:
        """What driving and braking ask: `drive_share` and `brake_share` `s` of this axle,
        `centre_of_gravity_height` `h`, `wheelbase` `l`.
        """
        return self._read("pitching")  # type: ignore[no-any-return]

    def at(self, *, heave: QuantityLike, roll: QuantityLike) -> AxlePosition:
        """The axle at a heave and roll: position and steer, instant axes, both wheels, springs, stroke,
        joints and bind.

        Parameters
            heave (length): `z`, of the axle's middle against the body from ride height, positive in
                bump
            roll (angle): `phi`, of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            axle_x (length [m]): of the axle's middle, halfway between the wheels' centres, forward in
                the body's axes
            lateral_shift (length [m]): of the axle's middle, to the left of the body's centre plane
            axle_z (length [m]): of the axle's middle, up
            wheelbase_change (length [m]): of the axle's middle against ride height, positive where the
            wheelbase grows
            axle_steer (angle [rad]): turn of the axle about z, positive to the left
            heave_steer (angle [rad]): change of that over 25 mm of bump, at the slope that it has here
            roll_steer (ratio [-]): change of `axle_steer` over roll, at the slope that it has here;
                positive steers the axle out of a turn as the body leans, a rear one to oversteer, a
                front one to understeer
            axle_pitch (angle [rad]): turn of the axle about its own length, positive with its front
                down
            pinion_angle (angle [rad]): of the pinion's axis against the body's x, positive with its
                nose up
            pinion_angle_change (angle [rad]): of that against ride height
            pinion_x (length [m]): of the joint on the pinion's nose, forward
            pinion_y (length [m]): of the same, to the left
            pinion_z (length [m]): of the same, up
            roll_centre_height (length [m]): above the ground, where the axis about which the axle rolls
                crosses the body's centre plane, in the transverse plane through the axle's middle;
                sideways it wanders with `lateral_shift`
            roll_axis_angle (angle [rad]): of that axis against the body's x, positive where it rises
                forward
            lateral_rod_height (length [m]): above the ground, of the lateral rod on the body's centre
                plane; without steer in roll the height of the roll centre
            side_view_centre_x (length [m]): of the axle's instant centre in side view, in heave,
                forward; infinite where there is none
            side_view_centre_height (length [m]): of the same, above the ground
            side_view_angle (angle [rad]): forward lean of the path in bump of the point midway between
                the contact points, held in the axle
            drive_anti_pitch (ratio [-]): anti-squat of a rear axle, anti-lift of a front one, under
            drive whose torque the housing takes, as a share of what would cancel the pitch of that axle
            brake_anti_pitch (ratio [-]): anti-lift of a rear axle, anti-dive of a front one, under
                brakes whose torque the housing takes, as a share
            left_wheel_x (length [m]): of the left wheel's centre, forward
            left_wheel_y (length [m]): of the left wheel's centre, to the left
            left_wheel_z (length [m]): of the left wheel's centre, up
            left_camber (angle [rad]): of the left wheel against the body, positive with its top
                outboard
            left_toe (angle [rad]): of the left wheel, positive with its front inboard
            left_eye_length (length [m]): between the eyes of the left coil-over
            left_motion_ratio (ratio [-]): shortening of the left coil-over over heave
            left_roll_motion_ratio (ratio [-]): shortening of the left coil-over over the travel of the
            left wheel in roll: of upright springs their base over the track
            left_spring_length (length [m]): between the seats of the left spring
            left_spring_force (force [N]): compressive, in the coil; nothing where it is loose
            left_spring_used (length [m]): by how much the spring is shorter than unloaded
            left_spring_remaining (length [m]): until it is solid, along itself
            left_damper_used (length [m]): of the damper's stroke, from fully open
            left_damper_remaining (length [m]): of the damper's stroke, to fully closed; negative where
                it has ended
            left_wheel_force (force [N]): of coil and gas in heave, their force times
                `left_motion_ratio`
            left_wheel_rate (linear stiffness [N/m]): tangent rate of coil and gas in heave, with the
                term of the changing motion ratio; without bar, tyre and links that bind
            right_wheel_x (length [m]): of the right wheel's centre, forward
            right_wheel_y (length [m]): of the right wheel's centre, to the left
            right_wheel_z (length [m]): of the right wheel's centre, up
            right_camber (angle [rad]): of the right wheel against the body, positive with its top
                outboard
            right_toe (angle [rad]): of the right wheel, positive with its front inboard
            right_eye_length (length [m]): between the eyes of the right coil-over
            right_motion_ratio (ratio [-]): shortening of the right coil-over over heave
            right_roll_motion_ratio (ratio [-]): shortening of the right coil-over over the travel of
                the right wheel in roll: of upright springs their base over the track
            right_spring_length (length [m]): between the seats of the right spring
            right_spring_force (force [N]): compressive, in the coil; nothing where it is loose
            right_spring_used (length [m]): by how much the spring is shorter than unloaded
            right_spring_remaining (length [m]): until it is solid, along itself
            right_damper_used (length [m]): of the damper's stroke, from fully open
            right_damper_remaining (length [m]): of the damper's stroke, to fully closed; negative where
                it has ended
            right_wheel_force (force [N]): of coil and gas in heave, their force times
                `right_motion_ratio`
            right_wheel_rate (linear stiffness [N/m]): tangent rate of coil and gas in heave, with the
                term of the changing motion ratio; without bar, tyre and links that bind
            roll_stiffness (rotational stiffness [N·m/rad]): of both springs with their gas at this
                heave, tangent, the term of the changing lengths included; without bar, tyre and links
                that bind
            bar_angle (angle [rad]): mean turn of the bar's two levers from ride height, positive as in
                bump
            bar_twist (angle [rad]): turn of the left lever less that of the right one
            bar_motion_ratio (ratio [-]): travel of the levers' ends along their arcs over wheel travel,
                in roll
            greatest_lean (angle [rad]): of all joints of the links, the greatest lean from ride height
            greatest_lean_joint (text): which joint that is, its link and its end: `body`, `axle`,
                `crank` or `outer`
            joint_left (angle [rad]): until the first of the joints whose limits are given is at its
                limit
            first_joint (text): which joint that is; `not known` where no limit is given
            lateral_rod_stretch (length [m]): by how much the lateral rod with its bushes is longer than
                at ride height: nothing unless it binds
            freedoms (whole number): coordinates of the axle less the rank of the links here: two where
                it heaves and rolls freely, one where it does so only together
            redundant (whole number): links more than an axle that heaves and rolls leaves room for
            bind_misfit (length [m]): by how much the links miss each other at this heave and roll, were
                their joints rigid: root of the sum of the squares of their misses
            bind_force (force [N]): greatest tension or compression of a link by that; not a number
                where no bush gives
            bind_link (text): which link that is, or, where no bush gives, which one misses most; `none`
                where nothing binds
            bind_moment (torque [N·m]): of the links that bind, on the axle about its roll axis, against
                roll
            bind_roll_stiffness (rotational stiffness [N·m/rad]): change of that over roll, at the slope
                that it has here
        """
        return AxlePosition(*_live_axle_at(self._handle, heave, roll))

    def table(self, *, heave: QuantityLike, roll: QuantityLike) -> Table:
        """The axle over heave and roll.

        Parameters
            heave (length), several: of the axle's middle against the body from ride height, positive in
                bump
            roll (angle), several: of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            (table) One row a heave and roll: `heave`, `roll`, and the results of `at`: `axle_x`,
            `lateral_shift`, `axle_z`, `wheelbase_change`, `axle_steer`, `heave_steer`, `roll_steer`,
            `axle_pitch`, `pinion_angle`, `pinion_angle_change`, `pinion_x`, `pinion_y`, `pinion_z`,
            `roll_centre_height`, `roll_axis_angle`, `lateral_rod_height`, `side_view_centre_x`,
            `side_view_centre_height`, `side_view_angle`, `drive_anti_pitch`, `brake_anti_pitch`,
            `left_wheel_x`, `left_wheel_y`, `left_wheel_z`, `left_camber`, `left_toe`,
            `left_eye_length`, `left_motion_ratio`, `left_roll_motion_ratio`, `left_spring_length`,
            `left_spring_force`, `left_spring_used`, `left_spring_remaining`, `left_damper_used`,
            `left_damper_remaining`, `left_wheel_force`, `left_wheel_rate`, `right_wheel_x`,
            `right_wheel_y`, `right_wheel_z`, `right_camber`, `right_toe`, `right_eye_length`,
            `right_motion_ratio`, `right_roll_motion_ratio`, `right_spring_length`,
            `right_spring_force`, `right_spring_used`, `right_spring_remaining`, `right_damper_used`,
            `right_damper_remaining`, `right_wheel_force`, `right_wheel_rate`, `roll_stiffness`,
            `bar_angle`, `bar_twist`, `bar_motion_ratio`, `greatest_lean`, `greatest_lean_joint`,
            `joint_left`, `first_joint`, `lateral_rod_stretch`, `freedoms`, `redundant`, `bind_misfit`,
            `bind_force`, `bind_link`, `bind_moment`, `bind_roll_stiffness`.
        """
        return _live_axle_table(self._handle, heave, roll)  # type: ignore[no-any-return]

    def points(self, *, heave: QuantityLike, roll: QuantityLike) -> Table:
        """The joints in space, part by part: to draw the axle, or to measure clearance from.

        Parameters
            heave (length), several: of the axle's middle against the body from ride height, positive in
                bump
            roll (angle), several: of the axle against the body about x, positive with the left wheel in
                bump

        Returns
            (table) One row a heave, roll and point, the points of a part in the order in which a line
            joins them: `heave`, `roll`, `part` (`axle`, each link by its name, of a pair with `left` or
            `right` after it, `lateral rod`, `upper rod`, `lower rod` and `bell crank` of a Watt
            linkage, `coil-over left`, `coil-over right`, `anti-roll bar`, `pinion` where its nose is
            given, `wheel left`, `wheel right`), `point`, and its place `x`, `y`, `z` in the body's
            axes.
        """
        return _live_axle_points(self._handle, heave, roll)  # type: ignore[no-any-return]

    def travel_range(self, *, roll: QuantityLike) -> TravelRange:
        """How far the linkage goes in droop and bump before a link is over-extended; bar, damper, spring
        and joints may end it earlier.

        Parameters
            roll (angle): of the axle against the body about x, positive with the left wheel in bump

        Returns
            droop (length [m]): least heave, negative
            droop_end (text): the link that ends it
            bump (length [m]): greatest heave
            bump_end (text): the link that ends it
        """
        return TravelRange(*_live_axle_travel_range(self._handle, roll))

    def axle_move(self, *, forward: QuantityLike, up: QuantityLike, heave: QuantityLike) -> Table:
        """The axle moved under its body: wheels, axle ends of links, rods, coil-overs and drop links, and
        what the axle carries are moved; what is on the body stays.

        Parameters
            forward (length): by how much
            up (length): by how much, against the body, which then stands so much lower
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`. The links are set to their new length at ride height, where the pinion
            points as it did, and the springs' seats are set so that they carry the load that they
            carried.
        """
        return _live_axle_axle_move(self._handle, forward, up, heave)  # type: ignore[no-any-return]

    def ride_height_change(self, *, rise: QuantityLike, heave: QuantityLike) -> Table:
        """The body raised or lowered on its springs, the linkage as it is.

        Parameters
            rise (length): of the body above the ground, negative where it is lowered
            heave (length), several: from the ride height of each

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`; changes are against the ride height before. The springs' seats are set so
            that they carry the load that they carried.
        """
        return _live_axle_ride_height_change(self._handle, rise, heave)  # type: ignore[no-any-return]

    def spacer(self, *, outward: QuantityLike, heave: QuantityLike) -> Table:
        """Spacers behind both wheels, or wheels of another offset.

        Parameters
            outward (length): thickness of a spacer, or by how much the new offset is less
            heave (length), several: from ride height

        Returns
            (table) Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the
            results of `at`.
        """
        return _live_axle_spacer(self._handle, outward, heave)  # type: ignore[no-any-return]


class RollBalance(Model):
    """Both axles in a steady turn: how far the body leans, and how the axles share the load that moves
    to the outer wheels.

    Formula
        With `m_1` and `m_2` the sprung mass over each axle, `c = m_i z + m_u z_u` and `k_t = K_t -
        g c` of each: the axle leans on its tyres by `phi_u = (K phi + a_y c) / (K + k_t)`, the body
        by the `phi` for which `K_1 (phi - phi_u1) + K_2 (phi - phi_u2) = m_s h_1 (a_y + g phi)`; of
        an axle `F_u = m_u z_u (a_y + g phi_u) / t`, `F_g = m_i z (a_y + g phi_u) / t`, `F_e = K
        (phi - phi_u) / t`

    Fields
        sprung_mass (mass): `m_s`, of the whole vehicle
        sprung_height (length): `h_s`, of its centre of gravity above the ground
        behind_front_axle (length): `a`, distance of its centre of gravity behind the front axle
        wheelbase (length): `l`, front to rear axle
        front (table): the front axle
        rear (table): the rear axle

    Valid for
        A steady turn on a level road, small angles, a stiff frame, linear springs and tyres, all
        wheels on the ground; tracks and roll centres as they are at ride height. It holds each
        axle's roll on its tyres under everything the axle carries; with stiff tyres it is the
        textbook form of `suspension::roll_gradient` and `suspension::axle_load_transfer`. The
        sprung mass lies between the axles.

    Source
        Equilibrium of body and axles; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch.
        16 and 18, and Dixon, Tires, Suspension and Handling (1996), ch. 5 (from memory), extended
        by the roll of the axles on their tyres

    Caution
        A wheel that lifts is the step before a rollover, and a bar that moves the balance can make
        a safe vehicle spin: try it where there is room. Local codes and licensed practice come
        first.
    """

    __slots__ = ()
    _name = "suspension.RollBalance"
    _kinds = {"sprung_mass": "Mass", "sprung_height": "Length", "behind_front_axle": "Length", "wheelbase": "Length"}

    def __init__(
        self,
        *,
        sprung_mass: QuantityLike,
        sprung_height: QuantityLike,
        behind_front_axle: QuantityLike,
        wheelbase: QuantityLike,
        front: Mapping[str, Any],
        rear: Mapping[str, Any],
    ) -> None:
        self._build(
            sprung_mass=sprung_mass,
            sprung_height=sprung_height,
            behind_front_axle=behind_front_axle,
            wheelbase=wheelbase,
            front=front,
            rear=rear,
        )

    @property
    def sprung_mass(self) -> Quantity:
        """`m_s`, of the whole vehicle."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def sprung_height(self) -> Quantity:
        """`h_s`, of its centre of gravity above the ground."""
        return self._read("sprung_height", "Length")  # type: ignore[no-any-return]

    @property
    def behind_front_axle(self) -> Quantity:
        """`a`, distance of its centre of gravity behind the front axle."""
        return self._read("behind_front_axle", "Length")  # type: ignore[no-any-return]

    @property
    def wheelbase(self) -> Quantity:
        """`l`, front to rear axle."""
        return self._read("wheelbase", "Length")  # type: ignore[no-any-return]

    @property
    def front(self) -> dict[str, Any]:
        """The front axle."""
        return self._read("front")  # type: ignore[no-any-return]

    @property
    def rear(self) -> dict[str, Any]:
        """The rear axle."""
        return self._read("rear")  # type: ignore[no-any-return]

    def balance(self) -> Balance:
        """Roll gradient and balance, which do not depend on how hard the turn is.

        Returns
            roll_gradient (roll gradient [rad·s²/m]): roll angle of the body over lateral acceleration,
                body to ground
            front_suspension_stiffness (rotational stiffness [N·m/rad]): springs and bar of the front
                axle, without its tyres
            rear_suspension_stiffness (rotational stiffness [N·m/rad]): springs and bar of the rear
                axle, without its tyres
            front_share (ratio [-]): share of the front axle in the load that moves to the outer wheels
            front_weight_share (ratio [-]): share of the front axle in the weight, unsprung masses
                included
            share_over_weight (ratio [-]): the first less the second: above nothing it tends to
                understeer at the limit, below nothing to oversteer, tyres alike all round
        """
        return Balance(*_roll_balance_balance(self._handle))

    def in_turn(self, *, lateral_acceleration: QuantityLike) -> InTurn:
        """Roll angle and load transfer of both axles in one turn.

        Parameters
            lateral_acceleration (acceleration): towards the inside of the turn

        Returns
            roll_angle (angle [rad]): of the body to the ground, out of the turn
            front_unsprung_transfer (force [N]): what the outer front wheel gains by the unsprung mass
            front_geometric_transfer (force [N]): what it gains through the roll centre
            front_elastic_transfer (force [N]): what it gains by springs and bar
            front_load_transfer (force [N]): all that it gains
            rear_unsprung_transfer (force [N]): what the outer rear wheel gains by the unsprung mass
            rear_geometric_transfer (force [N]): what it gains through the roll centre
            rear_elastic_transfer (force [N]): what it gains by springs and bar
            rear_load_transfer (force [N]): all that it gains
            front_share (ratio [-]): share of the front axle in the load transfer
            front_inner_load (force [N]): load left on the inner front wheel
            rear_inner_load (force [N]): load left on the inner rear wheel

        Valid for (SI)
            - `0 < lateral_acceleration <= 100`

            Up to where an inner wheel lifts: beyond it the answer is refused.
        """
        return InTurn(*_roll_balance_in_turn(self._handle, lateral_acceleration))

    def bars_for(self, *, roll_gradient: QuantityLike, front_share: RatioLike) -> Bars:
        """Both bars that give the wanted roll gradient and the wanted balance, in place of those that are
        fitted.

        Parameters
            roll_gradient (roll gradient): wanted roll angle over lateral acceleration, body to ground
            front_share (ratio): wanted share of the front axle in the load transfer

        Returns
            front_bar_rate (linear stiffness [N/m]): rate of the front bar at its ends, which move in
                opposite directions
            rear_bar_rate (linear stiffness [N/m]): rate of the rear bar at its ends
            front_bar_stiffness (rotational stiffness [N·m/rad]): roll stiffness that the front bar
                gives its axle
            rear_bar_stiffness (rotational stiffness [N·m/rad]): roll stiffness that the rear bar gives
                its axle

        Valid for (SI)
            - `0.000001 <= roll_gradient <= 1`
            - `0.001 <= front_share <= 0.999`

            Where an axle would need a bar that gives less than nothing, the answer is refused.
        """
        return Bars(*_roll_balance_bars_for(self._handle, roll_gradient, front_share))

    def front_bar_for_gradient(self, *, roll_gradient: QuantityLike) -> Quantity:
        """The front bar that gives the wanted roll gradient, the rear axle left as it is.

        Parameters
            roll_gradient (roll gradient): wanted roll angle over lateral acceleration, body to ground

        Returns
            (linear stiffness [N/m]) Rate of the front bar at its ends, in place of the one that is
            fitted.

        Valid for (SI)
            - `0.000001 <= roll_gradient <= 1`

            Where the axle would need a bar that gives less than nothing, the answer is refused.
        """
        return _roll_balance_front_bar_for_gradient(self._handle, roll_gradient)  # type: ignore[no-any-return]

    def rear_bar_for_gradient(self, *, roll_gradient: QuantityLike) -> Quantity:
        """The rear bar that gives the wanted roll gradient, the front axle left as it is.

        Parameters
            roll_gradient (roll gradient): wanted roll angle over lateral acceleration, body to ground

        Returns
            (linear stiffness [N/m]) Rate of the rear bar at its ends, in place of the one that is
            fitted.

        Valid for (SI)
            - `0.000001 <= roll_gradient <= 1`

            Where the axle would need a bar that gives less than nothing, the answer is refused.
        """
        return _roll_balance_rear_bar_for_gradient(self._handle, roll_gradient)  # type: ignore[no-any-return]

    def front_bar_for_share(self, *, front_share: RatioLike) -> Quantity:
        """The front bar that gives the wanted balance, the rear axle left as it is.

        Parameters
            front_share (ratio): wanted share of the front axle in the load transfer

        Returns
            (linear stiffness [N/m]) Rate of the front bar at its ends, in place of the one that is
            fitted.

        Valid for (SI)
            - `0.001 <= front_share <= 0.999`

            Where the axle would need a bar that gives less than nothing, the answer is refused.
        """
        return _roll_balance_front_bar_for_share(self._handle, front_share)  # type: ignore[no-any-return]

    def rear_bar_for_share(self, *, front_share: RatioLike) -> Quantity:
        """The rear bar that gives the wanted balance, the front axle left as it is.

        Parameters
            front_share (ratio): wanted share of the front axle in the load transfer

        Returns
            (linear stiffness [N/m]) Rate of the rear bar at its ends, in place of the one that is
            fitted.

        Valid for (SI)
            - `0.001 <= front_share <= 0.999`

            Where the axle would need a bar that gives less than nothing, the answer is refused.
        """
        return _roll_balance_rear_bar_for_share(self._handle, front_share)  # type: ignore[no-any-return]

    def table(self, *, front_bar_rate: QuantityLike, rear_bar_rate: QuantityLike, lateral_acceleration: QuantityLike) -> Table:
        """Roll and balance over bars and turns, everything else as it is.

        Parameters
            front_bar_rate (linear stiffness), several: rates of the front bar at its ends; nothing for
                no bar
            rear_bar_rate (linear stiffness), several: rates of the rear bar at its ends
            lateral_acceleration (acceleration), several: towards the inside of the turn

        Returns
            (table) One row a pair of bars and a turn: `front_bar_rate`, `rear_bar_rate`,
            `lateral_acceleration`, `roll_gradient`, `roll_angle`, `front_load_transfer`,
            `rear_load_transfer`, `front_share`, `share_over_weight`, `front_inner_load`,
            `rear_inner_load`.
        """
        return _roll_balance_table(self._handle, front_bar_rate, rear_bar_rate, lateral_acceleration)  # type: ignore[no-any-return]


class Strut(Model):
    """A strut on a lower arm with rack steering, drawn point by point: where the wheel stands over
    travel and rack travel, and what the spring does there.

    Formula
        distances between joined points are kept, and the strut's axis, fixed in the upright, goes
        through the top mount; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`; roll centre `y_c (dy/dz)`
        and anti-dive `s (dx/dz) l / h` of the contact point held in the upright; with inboard
        brakes, and in drive, the latter of the wheel's centre

    Fields
        axle (choice): `front` or `rear`: which way the wheelbase grows, and whether braking dives
            or lifts
        lower_arm (table): `front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright; a
            link and a rod that meet at the ball joint are such an arm
        leg (table): `top_mount` on the body, `lower_end`, any lower point of the strut's axis on
            the upright: the axis need not go through the ball joint; its `spring` (`rate`,
            `free_length`, `solid_length` with the gaps that stay open, `seat_offset` between top
            mount and lower end less between the seats) and its `damper` (`open_length`,
            `closed_length` between top mount and lower end, `gas_force`); of a coil that leans
            against the axis or stands apart its `spring_seats` (`body`, `lower`, `carried_by`
            `upright` or `lower_arm`)
        tie_rod (table): `inner` on the rack in its middle, `outer` on the steering arm; of an
            unsteered wheel the rod that holds its toe
        wheel (table): at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its
            centre to the ground
        torsion_bar (table, optional): along the axis of the arm, `turned_by` `lower_arm`, its
            `rate`, and its `torque` at ride height, positive where it carries the vehicle
        anti_roll_bar (table, optional): `link_eye` of the drop link and what it is `carried_by`
            (`lower_arm` or `upright`), `lever_end` of the bar, `lever_pivot`, any point of its axis
            along y
        braking (table, optional): `axle_share` `s` of the braking force, `centre_of_gravity_height`
            `h`, `wheelbase` `l`; `place` of the brakes, `outboard` (where it is missing) or
            `inboard`
        driving (table, optional): `axle_share` of the tractive force, by half shafts from a final
            drive on the body; height and wheelbase are those of `braking`
        joint_limits (table, optional): lean from ride height that `top_mount`, `lower_ball`,
            `tie_rod_outer`, `tie_rod_inner` allow

    Valid for
        The left wheel, all points at ride height in the body's axes (x forward, y left, z up), an
        arm that turns about the line of its pivots, rigid links, a rack along y. The steering axis
        goes from the top mount to the ball joint. Camber and toe at ride height are those of the
        `wheel`, whatever the points are. The joints stand straight at ride height; set them so. The
        seat of a coil on the body does not turn with the wheel. What is missing gives results that
        are not a number. Bushes and the give of the top mount, the rod's bending and the friction
        of its side load, the tyre's give are left aside.

    Source
        Vector kinematics of rigid bodies; virtual work; W. F. Milliken, D. L. Milliken, *Race Car
        Vehicle Dynamics* (1995), chapter 17, anti features of outboard and inboard torque (from
        memory); terms: ISO 8855 and SAE J670 (from memory)

    Caution
        Steering and suspension carry lives, and a compressed spring stores enough energy to kill:
        check clearance and joints on the vehicle over the whole travel and lock before it moves;
        local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "suspension.Strut"
    _kinds = {}

    def __init__(
        self,
        *,
        axle: Literal["front", "rear"],
        lower_arm: Mapping[str, Any],
        leg: Mapping[str, Any],
        tie_rod: Mapping[str, Any],
        wheel: Mapping[str, Any],
        torsion_bar: Mapping[str, Any] | None = None,
        anti_roll_bar: Mapping[str, Any] | None = None,
        braking: Mapping[str, Any] | None = None,
        driving: Mapping[str, Any] | None = None,
        joint_limits: Mapping[str, Any] | None = None,
    ) -> None:
        self._build(
            axle=axle,
            lower_arm=lower_arm,
            leg=leg,
            tie_rod=tie_rod,
            wheel=wheel,
            torsion_bar=torsion_bar,
            anti_roll_bar=anti_roll_bar,
            braking=braking,
            driving=driving,
            joint_limits=joint_limits,
        )

    @property
    def axle(self) -> Literal["front", "rear"]:
        """`front` or `rear`: which way the wheelbase grows, and whether braking dives or lifts."""
        return self._read("axle")  # type: ignore[no-any-return]

    @property
    def lower_arm(self) -> dict[str, Any]:
        """`front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright; a link and a rod that meet
        at the ball joint are such an arm.
        """
        return self._read("lower_arm")  # type: ignore[no-any-return]

    @property
    def leg(self) -> dict[str, Any]:
        """`top_mount` on the body, `lower_end`, any lower point of the strut's axis on the upright: the
        axis need not go through the ball joint; its `spring` (`rate`, `free_length`, `solid_length`
        with the gaps that stay open, `seat_offset` between top mount and lower end less between the
        seats) and its `damper` (`open_length`, `closed_length` between top mount and lower end,
        `gas_force`); of a coil that leans against the axis or stands apart its `spring_seats` (`body`,
        `lower`, `carried_by` `upright` or `lower_arm`).
        """
        return self._read("leg")  # type: ignore[no-any-return]

    @property
    def tie_rod(self) -> dict[str, Any]:
        """`inner` on the rack in its middle, `outer` on the steering arm; of an unsteered wheel the rod
        that holds its toe.
        """
        return self._read("tie_rod")  # type: ignore[no-any-return]

    @property
    def wheel(self) -> dict[str, Any]:
        """At ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the
        ground.
        """
        return self._read("wheel")  # type: ignore[no-any-return]

    @property
    def torsion_bar(self) -> dict[str, Any] | None:
        """Along the axis of the arm, `turned_by` `lower_arm`, its `rate`, and its `torque` at ride height,
        positive where it carries the vehicle.
        """
        return self._read("torsion_bar")  # type: ignore[no-any-return]

    @property
    def anti_roll_bar(self) -> dict[str, Any] | None:
        """`link_eye` of the drop link and what it is `carried_by` (`lower_arm` or `upright`), `lever_end`
        of the bar, `lever_pivot`, any point of its axis along y.
        """
        return self._read("anti_roll_bar")  # type: ignore[no-any-return]

    @property
    def braking(self) -> dict[str, Any] | None:
        """`axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`; `place`
        of the brakes, `outboard` (where it is missing) or `inboard`.
        """
        return self._read("braking")  # type: ignore[no-any-return]

    @property
    def driving(self) -> dict[str, Any] | None:
        """`axle_share` of the tractive force, by half shafts from a final drive on the body; height and
        wheelbase are those of `braking`.
        """
        return self._read("driving")  # type: ignore[no-any-return]

    @property
    def joint_limits(self) -> dict[str, Any] | None:
        """Lean from ride height that `top_mount`, `lower_ball`, `tie_rod_outer`, `tie_rod_inner` allow."""
        return self._read("joint_limits")  # type: ignore[no-any-return]

    def at(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> WheelPosition:
        """The wheel at a travel and rack travel: alignment, instant centres, spring, stroke and joints.

        Parameters
            travel (length): `z`, of the wheel's centre against the body from ride height, positive in
                bump
            rack_travel (length): `y_r`, from the rack's middle, positive to the left

        Returns
            wheel_x (length [m]): of the wheel's centre, forward in the body's axes
            wheel_y (length [m]): of the wheel's centre, to the left
            wheel_z (length [m]): of the wheel's centre, up
            half_track (length [m]): from the vehicle's centre plane to the contact point, which lies a
                loaded radius from the wheel's centre in the wheel's plane
            half_track_change (length [m]): of that against ride height
            wheelbase_change (length [m]): of the wheel's centre against ride height, positive where the
            wheelbase grows
            camber (angle [rad]): positive with the top of the wheel outboard
            camber_change (angle [rad]): of camber over 25 mm of bump, at the slope that it has here
            toe (angle [rad]): of this wheel, positive with its front inboard
            bump_steer (angle [rad]): change of toe over 25 mm of bump, at the slope that it has here
            caster (angle [rad]): positive with the upper end of the steering axis to the rear
            kingpin_inclination (angle [rad]): positive with the upper end of the steering axis inboard
            scrub_radius (length [m]): from the steering axis outboard to the contact point, at the
                ground
            mechanical_trail (length [m]): from the contact point forward to the steering axis, at the
                ground
            front_view_centre_y (length [m]): of the upright's instant centre in front view, in the
                transverse plane through the contact point, to the left; infinite where there is none
            front_view_centre_height (length [m]): of the same, above the ground under this wheel
            roll_centre_height (length [m]): above the ground, where the line from the contact point to
                that centre meets the vehicle's centre plane; of the axle while the other wheel is this
                one's mirror image
            side_view_centre_x (length [m]): of the upright's instant centre in side view with the brake
                held, forward; infinite where there is none
            side_view_centre_height (length [m]): of the same, above the ground
            side_view_angle (angle [rad]): forward lean of the contact point's path in bump, with the
                brake held
            wheel_path_angle (angle [rad]): forward lean of the path of the wheel's centre in bump
            brake_anti_pitch (ratio [-]): in braking the anti-dive of a front axle, the anti-lift of a
                rear one, as a share of what would cancel the pitch of that axle
            drive_anti_pitch (ratio [-]): in drive the anti-squat of a rear axle, the anti-lift of a
                front one, as such a share
            eye_length (length [m]): from the top mount to the lower end of the leg
            motion_ratio (ratio [-]): shortening of the spring over wheel travel
            damper_motion_ratio (ratio [-]): that of the damper, which is another one where the coil has
                seats of its own
            spring_length (length [m]): between the seats of the spring
            spring_force (force [N]): compressive, in the coil; nothing where it is loose
            wheel_force (force [N]): of coil, gas and torsion bar at the wheel, `F r`
            wheel_rate (linear stiffness [N/m]): tangent rate at the wheel, with the term of the
                changing motion ratio; of coil, gas and torsion bar, without anti-roll bar and tyre
            spring_used (length [m]): by how much the spring is shorter than unloaded
            spring_left (length [m]): until it is solid, along itself
            damper_used (length [m]): of the damper's stroke, from fully open
            damper_left (length [m]): of the damper's stroke, to fully closed; negative where it has
                ended
            torsion_bar_torque (torque [N·m]): in the torsion bar, positive where it carries the vehicle
            bar_angle (angle [rad]): turn of the bar's lever from ride height, positive as in bump
            bar_motion_ratio (ratio [-]): travel of the end of the bar's lever along its arc over wheel
                travel
            upper_joint_angle (angle [rad]): lean of the strut's axis from ride height, at the top mount
            lower_ball_angle (angle [rad]): lean of the lower ball joint from ride height, its stud
                along the steering axis there
            tie_rod_outer_angle (angle [rad]): the same of the outer joint of the tie rod, its stud
                beside the steering axis
            tie_rod_inner_angle (angle [rad]): turn of the tie rod against the rack from ride height
            joint_left (angle [rad]): until the first of the joints whose limits are given is at its
                limit
            first_joint (text): which joint that is: `top mount`, `lower ball joint`, `tie rod outer
                joint` or `tie rod inner joint`; otherwise `not known`
        """
        return WheelPosition(*_strut_at(self._handle, travel, rack_travel))

    def table(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> Table:
        """The wheel over travel and rack travel.

        Parameters
            travel (length), several: of the wheel's centre against the body from ride height, positive
                in bump
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a travel and rack travel: `travel`, `rack_travel`, and the results of `at`:
            `wheel_x`, `wheel_y`, `wheel_z`, `half_track`, `half_track_change`, `wheelbase_change`,
            `camber`, `camber_change`, `toe`, `bump_steer`, `caster`, `kingpin_inclination`,
            `scrub_radius`, `mechanical_trail`, `front_view_centre_y`, `front_view_centre_height`,
            `roll_centre_height`, `side_view_centre_x`, `side_view_centre_height`, `side_view_angle`,
            `wheel_path_angle`, `brake_anti_pitch`, `drive_anti_pitch`, `eye_length`, `motion_ratio`,
            `damper_motion_ratio`, `spring_length`, `spring_force`, `wheel_force`, `wheel_rate`,
            `spring_used`, `spring_left`, `damper_used`, `damper_left`, `torsion_bar_torque`,
            `bar_angle`, `bar_motion_ratio`, `upper_joint_angle`, `lower_ball_angle`,
            `tie_rod_outer_angle`, `tie_rod_inner_angle`, `joint_left`, `first_joint`.
        """
        return _strut_table(self._handle, travel, rack_travel)  # type: ignore[no-any-return]

    def in_roll(self, *, heave: QuantityLike, roll: QuantityLike, rack_travel: QuantityLike) -> WheelsInRoll:
        """Both wheels on level ground while the body rolls and heaves over them; the right wheel is the
        mirror image of this one.

        Parameters
            heave (length): of the ground under the body's centre plane against the body from ride
                height, positive in bump
            roll (angle): of the body against the ground, about x, positive with its left side up, as in
                a left turn
            rack_travel (length): from the rack's middle, positive to the left

        Returns
            left_travel (length [m]): of the left wheel's centre against the body, positive in bump
            right_travel (length [m]): of the right wheel's centre
            left_camber (angle [rad]): of the left wheel against the ground, positive with the top
                outboard
            right_camber (angle [rad]): of the right wheel against the ground
            left_toe (angle [rad]): of the left wheel against the ground, positive with its front
                inboard
            right_toe (angle [rad]): of the right wheel against the ground
            track (length [m]): between the contact points, along the ground
            left_slope (ratio [-]): outboard path of the left contact point over its rise against the
                body, both against the ground: what lifts the body there is so much of the lateral force
            right_slope (ratio [-]): the same of the right contact point
            roll_centre_y (length [m]): along the ground from the body's centre plane to the left, to
                where the normals of both paths meet; for display: loads follow from the slopes.
                Infinite where the normals are parallel, not a number where both lie in the ground
            roll_centre_height (length [m]): of the same above the ground
        """
        return WheelsInRoll(*_strut_in_roll(self._handle, heave, roll, rack_travel))

    def roll_table(self, *, heave: QuantityLike, roll: QuantityLike, rack_travel: QuantityLike) -> Table:
        """Both wheels over heave, roll and rack travel.

        Parameters
            heave (length), several: of the ground under the body's centre plane against the body from
                ride height, positive in bump
            roll (angle), several: of the body against the ground, about x, positive with its left side
                up
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a heave, roll and rack travel: `heave`, `roll`, `rack_travel`, and the
            results of `in_roll`: `left_travel`, `right_travel`, `left_camber`, `right_camber`,
            `left_toe`, `right_toe`, `track`, `left_slope`, `right_slope`, `roll_centre_y`,
            `roll_centre_height`.
        """
        return _strut_roll_table(self._handle, heave, roll, rack_travel)  # type: ignore[no-any-return]

    def points(self, *, travel: QuantityLike, rack_travel: QuantityLike) -> Table:
        """The joints in space, part by part: to draw the linkage, or to measure clearance from.

        Parameters
            travel (length), several: of the wheel's centre against the body from ride height, positive
                in bump
            rack_travel (length), several: from the rack's middle, positive to the left

        Returns
            (table) One row a travel, rack travel and point, the points of a part in the order in which
            a line joins them: `travel`, `rack_travel`, `part` (`lower arm`, `upright`, `tie rod`,
            `leg`, `coil` where it has seats of its own, `anti-roll bar`, `wheel`), `point`, and its
            place `x`, `y`, `z` in the body's axes.
        """
        return _strut_points(self._handle, travel, rack_travel)  # type: ignore[no-any-return]

    def travel_range(self, *, rack_travel: QuantityLike) -> TravelRange:
        """How far the linkage goes in droop and bump before a link is in line with what it turns; damper,
        spring and joints may end it earlier.

        Parameters
            rack_travel (length): from the rack's middle, positive to the left

        Returns
            droop (length [m]): least travel, negative
            droop_end (text): what ends it: `strut`, `lower arm`, `tie rod` or `drop link`
            bump (length [m]): greatest travel
            bump_end (text): what ends it
        """
        return TravelRange(*_strut_travel_range(self._handle, rack_travel))

    def arch_move(self, *, forward: QuantityLike, outboard: QuantityLike, up: QuantityLike, travel: QuantityLike) -> Table:
        """The wheel moved in its arch: the arm with its pivots, the leg with its top mount and the seats
        of its coil, upright, wheel and what they carry are moved; rack and anti-roll bar stay.

        Parameters
            forward (length): by how much
            outboard (length): by how much
            up (length): by how much, against the body, which then stands so much lower
            travel (length), several: from the ride height of each

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`. The tie rod and the drop link are set to their new length
            at ride height, camber and toe are there what they were, and the spring's seat (without a
            coil the torsion bar) is set so that it carries the wheel load that it carried.
        """
        return _strut_arch_move(self._handle, forward, outboard, up, travel)  # type: ignore[no-any-return]

    def ride_height_change(self, *, rise: QuantityLike, travel: QuantityLike) -> Table:
        """The body raised or lowered on its springs, the linkage as it is.

        Parameters
            rise (length): of the body above the ground, negative where it is lowered
            travel (length), several: from the ride height of each

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`; changes are against the ride height before. Toe is as the
            rods leave it, and the spring's seat (without a coil the torsion bar) is set so that it
            carries the wheel load that it carried.
        """
        return _strut_ride_height_change(self._handle, rise, travel)  # type: ignore[no-any-return]

    def spacer(self, *, outward: QuantityLike, travel: QuantityLike) -> Table:
        """A spacer behind the wheel, or a wheel of another offset.

        Parameters
            outward (length): thickness of the spacer, or by how much the new offset is less
            travel (length), several: from ride height

        Returns
            (table) Two rows a travel, with the rack in its middle: `state` (`before` or `after`),
            `travel`, and the results of `at`. The spring's seat (without a coil the torsion bar) is set
            so that it carries the wheel load that it carried.
        """
        return _strut_spacer(self._handle, outward, travel)  # type: ignore[no-any-return]
