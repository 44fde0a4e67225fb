# %% [markdown]
# # The Dunlin: how its wheels move
#
# Tern Lane Fabrication has drawn the van's suspension point by point. Before a bracket is cut: where do the wheels go in bump,
# droop and roll, what happens to camber, toe and springs on the way, and what does a mount do that ends up 10 mm from where it was drawn?
# All figures are invented.
#
# In every picture **solid is ride height**, **dotted is droop**, **dashed is bump**. x points forward, y to the left, z up.
#
# **Caution.** Steering and suspension carry lives, and a compressed spring can kill. Check clearance, joints and hoses on the vehicle over the
# whole travel and lock before it moves; local codes and licensed practice come first.

# %%
from pathlib import Path

import numpy as np
from axlewright import Q, suspension
from axlewright.units import N_mm, deg, mm

import pictures

sheets = Path("../sheets")
front = suspension.DoubleWishbone.from_text((sheets / "dunlin_front_wishbone.toml").read_text("utf-8"))

droop, bump = -70 * mm, 60 * mm
travel = np.linspace(droop.to(mm), bump.to(mm), 66) * mm
straight = 0 * mm

# %% [markdown]
# ## The front axle: double wishbones
#
# How far does it go, and what ends it?

# %%
end = front.travel_range(rack_travel=straight)
pictures.say(
    f"The links alone go from {end.droop:.0f} ({end.droop_end}) to {end.bump:.0f} ({end.bump_end}); "
    f"damper and bump stop are to end it between {droop:.0f} and {bump:.0f}."
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
# Over the travel, with the rack in its middle. Hatched is what is wanted: not more than 0.1 deg of toe over 25 mm.

# %%
on = front.table(travel=travel, rack_travel=straight)
rest = front.at(travel=straight, rack_travel=straight)
steer_wanted = 0.1 * deg

# %% tags=["drawing"]
figure, panels = pictures.curves("travel [mm], bump to the right", 3, 2)
x = travel.to(mm)
for axes, name, unit, words in zip(
    panels.flat,
    ["camber", "toe", "motion_ratio", "wheel_rate", "roll_centre_height", "damper_left"],
    [deg, deg, None, N_mm, mm, mm],
    ["camber [deg]", "toe [deg]", "motion ratio [-]", "wheel rate [N/mm]", "roll centre [mm]", "damper left [mm]"],
    strict=True,
):
    pictures.curve(axes, x, on[name].to(unit) if unit else on[name], words)
allowed = np.abs(x) * steer_wanted.to(deg) / 25
panels.flat[1].fill_between(x, rest.toe.to(deg) - allowed, rest.toe.to(deg) + allowed, **pictures.WANTED_AREA)
pictures.limit(panels.flat[5], 0, "the damper is shut")
pictures.show(figure, "front_curves", "Camber, toe, motion ratio, wheel rate, roll centre and damper of the left front over travel.")
pictures.say(
    f"Over 25 mm of bump from ride height: camber {rest.camber_change.to(deg):+.2f} deg, toe {rest.bump_steer.to(deg):+.2f} deg, "
    f"where {steer_wanted} is wanted: **{'meets' if abs(rest.bump_steer) <= steer_wanted else 'short'}**. The motion ratio goes from "
    f"{on['motion_ratio'][0]:.3f} in droop to {on['motion_ratio'][-1]:.3f} in bump; of the dive that braking causes at this axle, "
    f"{100 * rest.brake_anti_pitch:.0f} % is cancelled."
)

# %% [markdown]
# ## Which mount matters for what?
#
# Each mount on the frame moved by 10 mm along each axis, the rods set so that the wheel stands at ride height as it did. What changes, at ride height?


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
# The rack's height rules the bump steer. Where should it sit?

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
    f"With the rack {heights[best].to(mm):+.0f} mm from where it was drawn the toe changes by {steers[best]:+.3f} deg over 25 mm; what is wanted "
    f"holds from {heights.to(mm)[fits].min():+.0f} to {heights.to(mm)[fits].max():+.0f} mm: a bracket must be welded to within that."
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
    f"{'left' if leaning.roll_centre_y > 0 * mm else 'right'}. That is for display: how much load a lateral force moves follows from "
    f"the slopes of the contact paths, {leaning.right_slope:.3f} outside and {leaning.left_slope:.3f} inside."
)
