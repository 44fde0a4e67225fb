# %% [markdown]
# # The Dunlin and the Dray: how their wheels move
#
# Tern Lane Fabrication has drawn the van's suspension point by point: double wishbones in front, a live axle on four links and a lateral rod
# behind. It has also drawn the truck's rear axle on leaf springs. Three questions come before a bracket is cut. Where do the wheels go in bump, droop
# and roll? How do camber, toe and springs change on the way? What changes if a mount ends up 10 mm from where it was drawn? All figures are invented.
#
# In every picture **solid is ride height**, **dotted is droop**, **dashed is bump**. x points forward, y to the left, z up.
#
# **Caution.** A failed steering or suspension part can kill, and so can a compressed spring. Check clearance, joints and hoses on the vehicle over the
# whole travel and lock before it moves; local codes and licensed practice come first.

# %%
from pathlib import Path

import numpy as np
from axlewright import Q, suspension
from axlewright.units import MPa, N, N_mm, Nm, Nm_deg, deg, kN, mm

import pictures

sheets = Path("../sheets")
front = suspension.DoubleWishbone.from_text((sheets / "dunlin_front_wishbone.toml").read_text("utf-8"))

droop, bump = -70 * mm, 60 * mm
travel = np.linspace(droop.to(mm), bump.to(mm), 66) * mm
straight = 0 * mm

# %% [markdown]
# ## The Dunlin's front axle: double wishbones
#
# How far can the wheel travel, and which part ends the travel?

# %%
end = front.travel_range(rack_travel=straight)
pictures.say(
    f"The links alone go from {end.droop:.0f} ({end.droop_end}) to {end.bump:.0f} ({end.bump_end}); "
    f"damper and bump stop must end the travel between {droop:.0f} and {bump:.0f}."
)

# %% tags=["drawing"]
radius = Q(front.wheel["loaded_radius"]).si
places, rims = [], []
for here in (droop, straight, bump):
    at = front.at(travel=here, rack_travel=straight)
    places.append(front.points(travel=here, rack_travel=straight))
    centre = [at.wheel_x.si, at.wheel_y.si, at.wheel_z.si]
    rims.append([pictures.rim(centre, at.camber.si, at.toe.si, radius)])
figure = pictures.three_views(places, rims)
pictures.show(figure, "front_views", "The left front linkage in front, side and plan view at droop, ride height and bump.")

# %% [markdown]
# The pictures show alignment over the travel, with the rack in its middle. Hatched is the wanted range: at most 0.1 deg of toe over 25 mm.

# %%
on = front.table(travel=travel, rack_travel=straight)
rest = front.at(travel=straight, rack_travel=straight)
steer_wanted = 0.1 * deg

# %% tags=["drawing"]
figure, panels = pictures.curves("travel [mm], bump to the right", 3, 2)
x = travel.to(mm)
for axes, name, unit, words in zip(
    panels.flat,
    ["camber", "toe", "motion_ratio", "wheel_rate", "roll_centre_height", "damper_remaining"],
    [deg, deg, None, N_mm, mm, mm],
    ["camber [deg]", "toe [deg]", "motion ratio [-]", "wheel rate [N/mm]", "roll centre [mm]", "damper remaining [mm]"],
    strict=True,
):
    pictures.curve(axes, x, on[name].to(unit) if unit else on[name], words)
allowed = np.abs(x) * steer_wanted.to(deg) / 25
panels.flat[1].fill_between(x, rest.toe.to(deg) - allowed, rest.toe.to(deg) + allowed, **pictures.WANTED_AREA)
pictures.limit(panels.flat[5], 0, "the damper is closed")
pictures.show(figure, "front_curves", "Camber, toe, motion ratio, wheel rate, roll centre and damper of the left front over travel.")
pictures.say(
    f"Over 25 mm of bump from ride height: camber {rest.camber_change.to(deg):+.2f} deg, toe {rest.bump_steer.to(deg):+.2f} deg, "
    f"where {steer_wanted} is wanted: **{'meets' if abs(rest.bump_steer) <= steer_wanted else 'short'}**. The motion ratio goes from "
    f"{on['motion_ratio'][0]:.3f} in droop to {on['motion_ratio'][-1]:.3f} in bump; the linkage cancels "
    f"{100 * rest.brake_anti_pitch:.0f} % of the dive that braking causes at this axle."
)

# %% [markdown]
# ## Which mount matters for what?
#
# Each mount on the frame moves by 10 mm along each axis. The rods are set again, so that the wheel at ride height stands as before.
# The picture shows what changes at ride height.


# %%
def moved(part, mount, axis, by):
    """The linkage with one coordinate of one mount moved."""
    points = getattr(front, part)
    place = points[mount] | {axis: f"{(Q(points[mount][axis]) + by).to(mm)} mm"}
    return front.replace(**{part: points | {mount: place}}).at(travel=straight, rack_travel=straight)


mounts = [("upper_arm", "front_pivot"), ("upper_arm", "rear_pivot"), ("lower_arm", "front_pivot"), ("lower_arm", "rear_pivot")]
mounts.append(("tie_rod", "inner"))
effect = {
    (part, mount, axis): moved(part, mount, axis, 10 * mm) for part, mount in mounts for axis in ("x", "y", "z")
}

# %% tags=["drawing"]
columns = {
    "bump steer [deg]": ("+.2f", lambda at: (at.bump_steer - rest.bump_steer).to(deg)),
    "camber [deg]": ("+.2f", lambda at: (at.camber_change - rest.camber_change).to(deg)),
    "roll centre [mm]": ("+.0f", lambda at: (at.roll_centre_height - rest.roll_centre_height).to(mm)),
    "anti-dive [%]": ("+.0f", lambda at: 100 * (at.brake_anti_pitch - rest.brake_anti_pitch)),
}
figure = pictures.effects(
    [f"{part.replace('_', ' ')}, {mount.replace('_', ' ')}, {axis}" for part, mount, axis in effect],
    {words: (digits, [change(at) for at in effect.values()]) for words, (digits, change) in columns.items()},
)
pictures.show(figure, "mounts", "What each mount moved by 10 mm changes: bump steer, camber over 25 mm, roll centre, anti-dive.")

# %% [markdown]
# The height of the rack has the largest effect on bump steer. How high should it sit?

# %%
heights = np.linspace(-25, 25, 51) * mm
steers = np.array([moved("tie_rod", "inner", "z", by).bump_steer.to(deg) for by in heights])
fits = np.abs(steers) <= steer_wanted.to(deg)

# %% tags=["drawing"]
figure, panels = pictures.curves("rack moved up from where it was drawn [mm]", 1, 1, 3.6)
axes = panels.flat[0]
pictures.curve(axes, heights.to(mm), steers, "toe over 25 mm of bump [deg]")
axes.axhspan(-steer_wanted.to(deg), steer_wanted.to(deg), **pictures.WANTED_AREA)
pictures.mark(axes, 0, rest.bump_steer.to(deg), f"drawn\n{rest.bump_steer.to(deg):+.2f}", pictures.QUOTED, (12, 8))
best = np.argmin(np.abs(steers))
pictures.mark(axes, heights[best].to(mm), steers[best], f"chosen\n{heights[best].to(mm):+.0f} mm", pictures.CHOSEN, (12, 8))
pictures.show(figure, "rack_height", "Toe over 25 mm of bump over the height of the rack.")
pictures.say(
    f"With the rack {heights[best].to(mm):+.0f} mm from where it was drawn, the toe changes by {steers[best]:+.3f} deg over 25 mm. The toe stays within "
    f"its limit from {heights.to(mm)[fits].min():+.0f} to {heights.to(mm)[fits].max():+.0f} mm: weld the bracket within that range."
)

# %% [markdown]
# ## In a turn
#
# The body leans to the right in a left turn. Where do the wheels stand on the road, and where does the roll centre go?

# %%
roll = np.linspace(-4, 4, 65) * deg
turn = front.roll_table(heave=0 * mm, roll=roll, rack_travel=straight)

# %% tags=["drawing"]
figure, panels = pictures.curves("roll [deg], left side up to the right", 2, 2)
for axes, words, unit, *names in (
    (panels[0, 0], "camber to the road [deg]", deg, "left_camber", "right_camber"),
    (panels[0, 1], "toe [deg]", deg, "left_toe", "right_toe"),
    (panels[1, 0], "roll centre over ground [mm]", mm, "roll_centre_height"),
    (panels[1, 1], "roll centre to the left [mm]", mm, "roll_centre_y"),
):
    for name, style in zip(names, ("-", "--"), strict=False):
        pictures.curve(axes, roll.to(deg), turn[name].to(unit), words, linestyle=style, label=name.split("_")[0])
    if len(names) > 1:
        axes.legend(frameon=False)
pictures.show(figure, "front_roll", "Camber and toe of both front wheels, and the roll centre, over the roll of the body.")
leaning = front.in_roll(heave=0 * mm, roll=3 * deg, rack_travel=straight)
pictures.say(
    f"At 3 deg of roll the outer wheel stands at {leaning.right_camber.to(deg):+.1f} deg to the road, the inner one at "
    f"{leaning.left_camber.to(deg):+.1f} deg; the roll centre has gone {abs(leaning.roll_centre_y.to(mm)):.0f} mm to the "
    f"{'left' if leaning.roll_centre_y > 0 * mm else 'right'}. That point is for display only. The load that a lateral force moves follows from "
    f"the slopes of the contact paths, {leaning.right_slope:.3f} outside and {leaning.left_slope:.3f} inside."
)

# %% [markdown]
# ## The Dunlin's rear axle: four links and a lateral rod
#
# The lateral rod swings on an arc, so the axle shifts to one side in bump. The four links locate the axle along the vehicle. They also change its
# pinion angle over the travel. How far can the axle travel?

# %%
rear = suspension.LiveAxle.from_text((sheets / "dunlin_rear_axle.toml").read_text("utf-8"))
level = 0 * deg
low, high = -80 * mm, 70 * mm
heave = np.linspace(low.to(mm), high.to(mm), 76) * mm
stands = rear.at(heave=0 * mm, roll=level)
end = rear.travel_range(roll=level)
pictures.say(
    f"The links alone go from {end.droop:.0f} ({end.droop_end}) to {end.bump:.0f} ({end.bump_end}); dampers and bump stops must end the travel "
    f"between {low:.0f} and {high:.0f}. At ride height, a damper can open by {stands.left_damper_used.to(mm):.0f} mm "
    f"and close by {stands.left_damper_remaining.to(mm):.0f} mm."
)


# %%
def rims(on, radius):
    """Points on both rims of a live axle."""
    left = [on.left_wheel_x.si, on.left_wheel_y.si, on.left_wheel_z.si], on.left_camber.si, on.left_toe.si
    right = [on.right_wheel_x.si, on.right_wheel_y.si, on.right_wheel_z.si], on.right_camber.si, on.right_toe.si
    return [pictures.rim(*left, radius), pictures.rim(*right, radius, side=-1)]


def rear_views(states, words):
    """Draw the axle in three views at these heaves and rolls."""
    radius = Q(rear.wheel["loaded_radius"]).si
    places = [rear.points(heave=up, roll=turn) for up, turn in states]
    wheels = [rims(rear.at(heave=up, roll=turn), radius) for up, turn in states]
    return pictures.three_views(places, wheels, words, widths=(1.75, 1), height=7.4)


# %% tags=["drawing"]
figure = rear_views([(low, level), (0 * mm, level), (high, level)], ("droop", "ride height", "bump"))
pictures.show(figure, "rear_views", "The rear axle in front, side and plan view at droop, ride height and bump.")

# %% [markdown]
# The next picture shows the axle rolled by 4 deg to either side, relative to the body. In a left turn the body leans to the right: its right wheel
# is in bump and its left wheel in droop.

# %% tags=["drawing"]
lean = 4 * deg
words = ("left wheel in droop", "level", "left wheel in bump")
figure = rear_views([(0 * mm, -lean), (0 * mm, level), (0 * mm, lean)], words)
pictures.show(figure, "rear_rolled", "The rear axle in front, side and plan view, level and rolled by 4 deg to either side.")

# %% [markdown]
# The results, over heave without roll and over roll at ride height:

# %%
up = rear.table(heave=heave, roll=level)
turn = np.linspace(-5, 5, 81) * deg
rolled = rear.table(heave=0 * mm, roll=turn)

wanted_shift = 8 * mm  # of the tyre to the wheel arch, invented
panel_names = {
    "lateral_shift": ("lateral shift [mm]", mm),
    "axle_steer": ("axle steer [deg]", deg),
    "pinion_angle_change": ("pinion, nose up [deg]", deg),
    "roll_centre_height": ("roll centre [mm]", mm),
    "bind_force": ("peak force of bind [N]", N),
    "joint_remaining": ("joint lean to spare [deg]", deg),
}


def six(across, x, on):
    """Draw the six results over heave or roll."""
    figure, panels = pictures.curves(across, 3, 2)
    for axes, (name, (words, unit)) in zip(panels.flat, panel_names.items(), strict=True):
        pictures.curve(axes, x, on[name].to(unit), words)
    panels.flat[0].axhspan(-wanted_shift.to(mm), wanted_shift.to(mm), **pictures.WANTED_AREA)
    pictures.limit(panels.flat[5], 0, "a joint is at its limit")
    return figure


# %% tags=["drawing"]
figure = six("heave [mm], bump to the right", heave.to(mm), up)
words = "Lateral shift, axle steer, pinion, roll centre, force of bind and joints of the rear axle over heave."
pictures.show(figure, "rear_heave", words)

# %% tags=["drawing"]
figure = six("roll [deg], left wheel in bump to the right", turn.to(deg), rolled)
words = "Lateral shift, axle steer, pinion, roll centre, force of bind and joints of the rear axle over roll."
pictures.show(figure, "rear_roll", words)

# %%
shift = np.abs(up["lateral_shift"].to(mm)).max()
leaning = rear.at(heave=0 * mm, roll=3 * deg)
bump = rear.at(heave=high, roll=level)
pictures.say(
    f"The rod moves the axle by {shift:.1f} mm at most, where {wanted_shift} is wanted (hatched): "
    f"**{'meets' if shift <= wanted_shift.to(mm) else 'short'}**. "
    f"The roll steer is {100 * stands.roll_steer:+.1f} % (negative: understeer), so at 3 deg of roll the axle steers "
    f"by {leaning.axle_steer.to(deg):+.2f} deg. "
    f"Two pairs of links and a rod are one link too many for an axle that heaves and rolls, so the bushes must deflect. At 3 deg the {leaning.bind_link} "
    f"carries {leaning.bind_force.to(N):.0f} N from bind, and all links together add {leaning.bind_roll_stiffness.to(Nm_deg):.0f} "
    f"N·m/deg to the {leaning.roll_stiffness.to(Nm_deg):.0f} N·m/deg of the springs. "
    f"At full bump, the {bump.first_joint} end can lean by another {bump.joint_remaining.to(deg):.1f} deg."
)

# %% [markdown]
# ### Which mount matters for what?
#
# Each mount moves by 10 mm along each axis, on both sides if the links are a pair. The links are cut to fit at ride height. Positive roll steer
# is oversteer.


# %%
def rear_moved(part, mount, axis, by):
    """The rear axle with one coordinate of one mount moved."""
    place = dict(part[mount])
    moved = part | {mount: place | {axis: f"{(Q(place[axis]) + by).to(mm)} mm"}}
    if "name" not in part:
        return rear.replace(lateral_rod=moved)
    return rear.replace(links=[moved if link["name"] == part["name"] else link for link in rear.links])


def rear_effects(axle):
    """The compared results: at ride height, and for bind at 3 deg of roll."""
    here, there = axle.at(heave=0 * mm, roll=level), axle.at(heave=0 * mm, roll=3 * deg)
    return 100 * here.roll_steer, 100 * here.drive_anti_pitch, here.roll_centre_height.to(mm), there.bind_force.to(N)


before = rear_effects(rear)
changes = {}
for part in [*rear.links, rear.lateral_rod]:
    for mount in ("body", "axle"):
        for axis in ("x", "y", "z"):
            after = rear_effects(rear_moved(part, mount, axis, 10 * mm))
            changes[f"{part.get('name', 'lateral rod')}, {mount}, {axis}"] = np.subtract(after, before)

# %% tags=["drawing"]
heads = ["roll steer [%]", "anti-squat [%]", "roll centre [mm]", "bind at 3 deg [N]"]
digits = ["+.1f", "+.0f", "+.0f", "+.0f"]
columns = {head: (digit, [on[place] for on in changes.values()]) for place, (head, digit) in enumerate(zip(heads, digits, strict=True))}
figure = pictures.effects(list(changes), columns)
pictures.show(figure, "rear_mounts", "What each mount of the rear axle moved by 10 mm changes: roll steer, anti-squat, roll centre, bind.")
pictures.say(
    f"As drawn: roll steer {before[0]:+.1f} %, anti-squat {before[1]:.0f} %, roll centre {before[2]:.0f} mm over the ground, {before[3]:.0f} N "
    f"of bind at 3 deg."
)

# %% [markdown]
# A bracket on the frame, with a row of holes, would set the height of the lower links' front ends. Which hole gives a little roll understeer, and
# how does it change the anti-squat?

# %%
heights = np.linspace(-60, 60, 49) * mm
lower = rear.links[0]
holes = np.array([rear_effects(rear_moved(lower, "body", "z", by)) for by in heights])
wanted_steer = (-6, -1)  # percent, invented
fits = (holes[:, 0] >= wanted_steer[0]) & (holes[:, 0] <= wanted_steer[1])
rows = heights.to(mm)[fits]
chosen = round(rows.mean() / 5) * 5 if fits.any() else 0
there = np.argmin(np.abs(heights.to(mm) - chosen))

# %% tags=["drawing"]
figure, panels = pictures.curves("front mounts of the lower links, up [mm]", 1, 2, 3.4)
for place, axes in zip((0, 1), panels.flat, strict=True):
    pictures.curve(axes, heights.to(mm), holes[:, place], heads[place])
    axes.margins(0.1, 0.3)
    if place == 0:
        axes.axhspan(*wanted_steer, **pictures.WANTED_AREA)
    pictures.mark(axes, 0, before[place], f"drawn\n{before[place]:+.1f}", pictures.QUOTED, (14, -12))
    pictures.mark(axes, chosen, holes[there, place], f"chosen\n{chosen:+.0f} mm", pictures.CHOSEN, (14, -12))
pictures.show(figure, "rear_holes", "Roll steer and anti-squat over the height of the lower links' front mounts.")
pictures.say(
    f"Roll steer between {wanted_steer[0]} and {wanted_steer[1]} % (hatched) holds from {rows.min():+.0f} to {rows.max():+.0f} mm. With "
    f"{chosen:+.0f} mm it is "
    f"{holes[there, 0]:+.1f} %, the anti-squat {holes[there, 1]:.0f} % where it was {before[1]:.0f} %, and the bind at 3 deg {holes[there, 3]:.0f} N."
)

# %% [markdown]
# ## The Dray's rear axle: leaf springs
#
# The springs carry the truck and also locate its axle, so the path of the axle follows from their bending. How far can the axle travel, and which part
# ends the travel?

# %%
dray = suspension.LeafAxle.from_text((sheets / "dray_rear_axle.toml").read_text("utf-8"))
here = dray.at(heave=0 * mm, roll=level)
end = dray.travel_range(roll=level)
droop, bump = -90 * mm, Q(dray.bump_clearance)
travel = np.linspace(droop.to(mm), bump.to(mm), 71) * mm
pictures.say(
    f"The springs go from {end.droop:.0f} ({end.droop_end}) to {end.bump:.0f} ({end.bump_end}); the bump stops end the travel at {bump:.0f}. "
    f"At ride height, a damper can open by {here.left_damper_used.to(mm):.0f} mm and close by {here.left_damper_remaining.to(mm):.0f} mm."
)

# %% tags=["drawing"]
radius = Q(dray.wheel["loaded_radius"]).si
places, wheels = [], []
for heave in (droop, 0 * mm, bump):
    at = dray.at(heave=heave, roll=level)
    places.append(dray.points(heave=heave, roll=level))
    wheels.append([pictures.rim([at.left_wheel_x.si, at.left_wheel_y.si, at.left_wheel_z.si], 0, 0, radius)])
figure = pictures.one_view("side", places, wheels, height=6.2)
words = "The Dray's left rear spring from the side, bent in droop, at ride height and in bump, with shackle, damper and tyre."
pictures.show(figure, "dray_side", words)

# %%
on = dray.table(heave=travel, roll=level)
allowed = 900 * MPa  # invented: ask the spring's maker

# %% tags=["drawing"]
figure, panels = pictures.curves("heave [mm], bump to the right", 3, 2)
for axes, (name, words, unit) in zip(
    panels.flat,
    [
        ("wheel_rate", "wheel rate [N/mm]", N_mm),
        ("left_leaf_stress", "peak leaf stress [MPa]", MPa),
        ("left_shackle_angle", "shackle from upright [deg]", deg),
        ("left_shackle_opening", "shackle to line of eyes [deg]", deg),
        ("roll_steer", "roll steer [%]", None),
        ("pinion_angle", "pinion, nose up [deg]", deg),
    ],
    strict=True,
):
    pictures.curve(axes, travel.to(mm), on[name].to(unit) if unit else 100 * on[name], words)
pictures.limit(panels.flat[1], allowed.to(MPa), "allowed")
pictures.show(figure, "dray_curves", "Wheel rate, leaf stress, shackle, roll steer and pinion of the Dray's rear axle over heave.")
stress = on["left_leaf_stress"].to(MPa)
last = travel.to(mm)[stress <= allowed.to(MPa)].max()
pictures.say(
    f"The wheel rate goes from {on['wheel_rate'].to(N_mm)[0]:.0f} to {on['wheel_rate'].to(N_mm)[-1]:.0f} N/mm; the spring alone has "
    f"{Q(dray.spring['rate']).to(N_mm):.0f} N/mm. "
    f"The shackle and the arch make the difference. The leaves reach {allowed} (invented: ask the spring's maker) at {last:+.0f} mm: "
    f"**{'meets' if stress.max() <= allowed.to(MPa) else 'short'}**. "
    f"The roll steer at ride height is {100 * here.roll_steer:+.1f} % (negative: understeer)."
)

# %% [markdown]
# A launch winds up the springs: the axle housing turns with the nose of the pinion up. Braking turns it the other way. The pictures show the angle
# of the pinion, the stress and load of the leaves, and the shift of the axle, at ride height. A drive torque is positive, a brake torque negative.

# %%
torques = np.linspace(-5, 7.5, 101) * 1000 * Nm
wound = [dray.wind_up(heave=0 * mm, torque=torque) for torque in torques]
launch = 4500 * Nm  # both wheels in first gear, invented
at_launch = dray.wind_up(heave=0 * mm, torque=launch)

# %% tags=["drawing"]
figure, panels = pictures.curves("torque of both wheels [kN·m]", 2, 2)
x = torques.to(Nm) / 1000
for axes, (name, words, unit) in zip(
    panels.flat,
    [
        ("pinion_angle", "pinion, nose up [deg]", deg),
        ("leaf_stress", "peak leaf stress [MPa]", MPa),
        ("wheelbase_change", "axle to the rear [mm]", mm),
        ("spring_load", "load of each spring [kN]", kN),
    ],
    strict=True,
):
    values = [getattr(each, name).to(unit) for each in wound]
    pictures.curve(axes, x, values, words)
    axes.margins(0.05, 0.35)
    value = getattr(at_launch, name).to(unit)
    pictures.mark(axes, launch.to(Nm) / 1000, value, f"launch\n{value:.3g}", pictures.CHOSEN, (-14 if values[-1] > values[0] else 14, 12))
pictures.limit(panels.flat[1], allowed.to(MPa), "allowed", "right")
pictures.show(figure, "dray_wind_up", "Pinion, leaf stress, axle and spring load of the Dray over the torque of drive and brakes.")
pictures.say(
    f"At {launch:.0f} the housing turns by {at_launch.wind_up_angle.to(deg):.1f} deg and the stress of the leaves is {at_launch.leaf_stress.to(MPa):.0f} MPa; "
    f"the load alone gives {here.left_leaf_stress.to(MPa):.0f} MPa."
)
