# %% [markdown]
# # The Dunlin on its road: comfort, travel and road holding
#
# Tern Lane Fabrication has chosen the springs of the Dunlin and must now choose its dampers. How does a damper act on a rough road, and on a kerb?
# When does the bump stop act? Do front and rear move together? All figures are invented.
#
# **Caution.** A wheel off the ground neither steers nor brakes. A hard hit on a bump stop loads its mounts far beyond the static force. A
# compressed spring can kill.
# If a test on the vehicle differs from this page, believe the test; local codes and licensed practice come first.

# %%
from pathlib import Path

import numpy as np
from axlewright import ride
from axlewright.units import Hz, N, N_mm, Ns_m, deg, kN, kg, kg_m2, km_h, m, m_s2, mm, s

import pictures

corner = ride.QuarterCar.from_text(Path("../sheets/dunlin_quarter_car.toml").read_text("utf-8"))
speed = 60 * km_h
waves = {"shortest_wave": 0.35 * m, "longest_wave": 91 * m}
roads = {road: ride.RoadSurface(road_class=road).roughness() for road in "bcd"}
modes = corner.modes()
weight = (corner.sprung_mass.to(kg) + corner.unsprung_mass.to(kg)) * 9.80665
pictures.say(
    f"The left front corner, half laden: the body swings at {modes.body_frequency.to(Hz):.2f} Hz with a damping ratio of "
    f"{modes.body_damping_ratio:.2f}, "
    f"the wheel hops at {modes.hop_frequency.to(Hz):.1f} Hz with {modes.hop_damping_ratio:.2f}."
)

# %% [markdown]
# ## How much damping?
#
# With too little damping, the body keeps swinging and the wheel hops. With too much, the damper passes the roughness of the road on to the seat.
# The pictures show the values between, at 60 km/h on roads of the classes b, c and d of ISO 8608.

# %%
dampings = np.geomspace(600, 7000, 40)
sweep = [corner.replace(wheel_damping=f"{damping} N·s/m") for damping in dampings]
on = {road: [each.on_road(roughness=roughness, speed=speed, **waves) for each in sweep] for road, roughness in roads.items()}
masses = {name: getattr(corner, name) for name in ("sprung_mass", "unsprung_mass", "wheel_rate", "tyre_rate")}
soft = ride.damping_for_least_body_acceleration(**masses)
firm = ride.damping_for_least_tyre_load(**masses)
drawn = corner.on_road(roughness=roads["c"], speed=speed, **waves)

# %% tags=["drawing"]
figure, panels = pictures.curves("damping at the wheel [N·s/m]", 1, 3, 3.6)
looked_at = {
    "weighted acceleration [m/s²]": lambda at: at.weighted_acceleration.to(m_s2),
    "variation of tyre load [%]": lambda at: 100 * at.tyre_load_share,
    "suspension travel, rms [mm]": lambda at: at.suspension_travel.to(mm),
}
for axes, (words, value) in zip(panels.flat, looked_at.items(), strict=True):
    for road, style in zip(roads, pictures.STYLES, strict=False):
        axes.plot(dampings, [value(at) for at in on[road]], **pictures.PLAIN | {"linestyle": style})
    axes.plot([corner.wheel_damping.to(Ns_m)], [value(drawn)], **pictures.CHOSEN)
    axes.set_ylabel(words)
    axes.set_ylim(bottom=0)
entries = [pictures.drawn(f"class {road}", {"linestyle": style, "color": "black"}) for road, style in zip(roads, pictures.STYLES, strict=False)]
pictures.key(figure, 4, *entries, pictures.drawn("as drawn", pictures.CHOSEN))
pictures.show(figure, "ride_damping", "Weighted acceleration, variation of tyre load and travel over the damping, on three classes of road.")

# %% [markdown]
# The next picture sets comfort against road holding, on class c. The body is shaken least at the left, and the tyre load varies least at the bottom.
# Choose the damping along the bold line; outside it, both get worse.

# %% tags=["drawing"]
figure, axes = pictures.frame("weighted acceleration [m/s²]", "variation of tyre load [% of the static one]", height=4.6)
x = np.array([at.weighted_acceleration.to(m_s2) for at in on["c"]])
y = np.array([100 * at.tyre_load_share for at in on["c"]])
axes.plot(x, y, **pictures.PLAIN)
between = slice(min(x.argmin(), y.argmin()), max(x.argmin(), y.argmin()) + 1)
axes.plot(x[between], y[between], color="black", linewidth=2 * pictures.BOLD)
for damping in (700, 1000, 1500, 2000, 4000, 6000):
    here = np.interp(damping, dampings, x), np.interp(damping, dampings, y)
    axes.plot(*here, "o", **pictures.MISSES)
    beside = {"xytext": (8, 8)} if damping < 3000 else {"xytext": (0, 12), "ha": "center"}
    axes.annotate(f"{damping} N·s/m", here, textcoords="offset points", path_effects=pictures.HALO, **beside)
words = f"as drawn\n{corner.wheel_damping.to(Ns_m):.0f} N·s/m"
pictures.mark(axes, drawn.weighted_acceleration.to(m_s2), 100 * drawn.tyre_load_share, words, pictures.CHOSEN, (20, 34))
pictures.show(figure, "ride_choice", "Variation of tyre load over weighted acceleration along the damping, with the drawn damper marked.")
pictures.say(
    f"Without tyre damping and over all waves, {soft.to(Ns_m):.0f} N·s/m at the wheel is best for comfort. For road holding, "
    f"{firm.to(Ns_m):.0f} N·s/m is best. "
    f"The damper as drawn has {corner.wheel_damping.to(Ns_m):.0f} N·s/m. On class c it gives {drawn.weighted_acceleration.to(m_s2):.2f} m/s², "
    f"*{drawn.comfort}*, and the tyre load varies "
    f"by {100 * drawn.tyre_load_share:.0f} % (root mean square)."
)

# %% [markdown]
# ## A kerb
#
# A real damper has different forces in bump and rebound, and its force rises less steeply at high speed. The bump stop must end the travel before
# the damper is fully closed. The corner climbs a bevelled kerb of 80 mm with half, once and twice the damper's force.
# A travel above the upper line would have bent the damper. This corner has no stop in rebound.

# %%
points = [(-3.0, -8000), (-1.05, -3500), (-0.52, -2350), (-0.26, -1600), (-0.13, -1000), (-0.05, -460)]
points += [(0.05, 260), (0.13, 520), (0.26, 800), (0.52, 1150), (1.05, 1750), (3.0, 4000)]
stop = [(6, 500), (12, 1700), (18, 4500), (22, 11000), (26, 30000), (32, 120000)]
touched, shut = 25 * mm, 60 * mm
shares = (0.5, 1, 2)


def with_damper(share):
    """The corner, with the forces of its damper multiplied by `share`."""
    curve = [{"velocity": f"{velocity} m/s", "force": f"{share * force} N"} for velocity, force in points]
    pads = [{"compression": f"{compression} mm", "force": f"{force} N"} for compression, force in stop]
    return ride.NonlinearQuarterCar(
        **masses,
        damper={"gas_force": "0 N", "points": curve},
        damper_motion_ratio=0.7,
        bump_stop={"bump_remaining": str(touched), "motion_ratio": 0.7, "stop": {"points": pads}},
    )


kerb = {"height": 80 * mm, "length": 0.25 * m}
dampers = {share: with_damper(share) for share in shares}
motions = {
    share: each.ramp(**kerb, speed=15 * km_h, duration=1.6 * s, time_step=0.004 * s) for share, each in dampers.items()
}

# %% tags=["drawing"]
styles = dict(zip(shares, (":", "-", "--"), strict=True))


def histories(across, motions, part=slice(None)):
    """Draw body, travel and tyre over time, one line for each damper; `part` selects the rows to show."""
    figure, panels = pictures.curves(across, 3, 1, 7.4)
    for share, motion in motions.items():
        look = pictures.PLAIN | {"linestyle": styles[share], "linewidth": 1.3}
        load = (motion["tyre_load_variation"].to(N) + weight) / 1000
        shown = motion["body_acceleration"].to(m_s2), motion["suspension_travel"].to(mm), load
        time = motion["time"].to(s)[part]
        for axes, values in zip(panels.flat, shown, strict=True):
            axes.plot(time, values[part], **look)
    panels[0, 0].set_xlim(time[0], time[-1] + 0.3 * np.ptp(time))  # room for the words at the limits
    panels[0, 0].set_ylabel("body [m/s²]")
    panels[1, 0].set_ylabel("travel, bump up [mm]")
    panels[2, 0].set_ylabel("load of the tyre [kN]")
    pictures.limit(panels[1, 0], touched.to(mm), "stop touched", "right")
    pictures.limit(panels[1, 0], shut.to(mm), "damper closed", "right")
    pictures.limit(panels[2, 0], 0, "off the ground", "right")
    pictures.key(figure, 3, *(pictures.drawn(f"damper × {share:g}", {"linestyle": styles[share], "color": "black"}) for share in motions))
    return figure


figure = histories("time from the foot of the kerb [s]", motions)
pictures.show(figure, "ride_kerb", "Acceleration of the body, travel and tyre load over time on a kerb, for three dampers.")

# %% [markdown]
# How fast may the van take the kerb?

# %%
speeds = np.linspace(4, 20, 33)
most = {
    share: [each.ramp(**kerb, speed=speed * km_h, duration=0.6 * s, time_step=0.0005 * s) for speed in speeds]
    for share, each in dampers.items()
}

# %% tags=["drawing"]
figure, panels = pictures.curves("speed [km/h]", 1, 3, 3.6)
for share, rows in most.items():
    look = pictures.PLAIN | {"linestyle": styles[share], "linewidth": 1.3}
    panels[0, 0].plot(speeds, [np.max(row["body_acceleration"].to(m_s2)) for row in rows], **look)
    panels[0, 1].plot(speeds, [np.max(row["suspension_travel"].to(mm)) for row in rows], **look)
    panels[0, 2].plot(speeds, [np.max(row["bump_stop_force"].to(kN)) for row in rows], **look)
for axes, words in zip(panels.flat, ("peak of the body [m/s²]", "peak bump travel [mm]", "peak force of the stop [kN]"), strict=True):
    axes.set_ylabel(words)
pictures.limit(panels[0, 1], shut.to(mm), "damper closed")
panels[0, 1].set_ylim(top=70)
pictures.key(figure, 3, *(pictures.drawn(f"damper × {share:g}", {"linestyle": styles[share], "color": "black"}) for share in shares))
pictures.show(figure, "ride_kerb_speed", "Peak acceleration, travel and force of the bump stop over the speed at which the kerb is taken.")
reached = [speed for speed, row in zip(speeds, most[1], strict=True) if np.max(row["suspension_travel"].to(mm)) < shut.to(mm)]
pictures.say(f"With the damper as drawn, the stroke is long enough up to {max(reached):.0f} km/h." if reached else "The stroke is too short at every speed.")

# %% [markdown]
# ## A rough road, metre by metre
#
# The van drives at 60 km/h on one road of class d, the same for every damper. The road consists of waves of 0.35 m to 91 m with random phases.
# The motion over time shows peaks, stops and lift-off, which a root mean square hides.

# %%
length, step = 250.0, 0.05
waviness = np.arange(1 / length, 1 / 0.35, 1 / length)
waviness = waviness[waviness >= 1 / 91]
density = roads["d"].si * (0.1 / waviness) ** 2
phases = np.random.default_rng(8608).uniform(0, 2 * np.pi, waviness.size)
way = np.arange(0, length, step)
surface = np.sqrt(2 * density / length) @ np.cos(2 * np.pi * np.outer(waviness, way) + phases[:, None])
surface -= surface[0]
driven = {
    share: each.profile(speed=speed, time_step=0.005 * s, distance=way * m, height=surface * m) for share, each in dampers.items()
}

# %% tags=["drawing"]
figure = histories("time [s]", {share: driven[share] for share in (0.5, 1)}, slice(1040, 1640))
words = "Acceleration of the body, travel and tyre load over three seconds of a rough road, for the damper as drawn and one of half its force."
pictures.show(figure, "ride_road", words)

# %%
rows = []
for share, motion in driven.items():
    travel, load = motion["suspension_travel"].to(mm), motion["tyre_load_variation"].to(N) + weight
    touches = np.count_nonzero(np.diff((travel > touched.to(mm)).astype(int)) > 0)
    rows.append([
        f"× {share:g}", f"{np.std(motion['body_acceleration'].to(m_s2)):.2f} m/s²", f"{np.std(travel):.1f} mm",
        f"{travel.min():+.0f} to {travel.max():+.0f} mm", f"{touches}",
        f"{100 * np.std(load) / weight:.0f} %", f"{100 * np.mean(load <= 0):.1f} % of the time",
    ])
pictures.table(["damper", "body, rms", "travel, rms", "travel", "times on the stop", "tyre load, rms", "off the ground"], rows)

# %% [markdown]
# ## Front and rear
#
# The rear meets each bump later than the front. If the rear swings faster, it catches up with the front, and the van stops pitching.

# %%
wheel = {"wheel_damping": 2900 * Ns_m, "tyre_rate": 260 * N_mm}
body = {"sprung_mass": 2100 * kg, "pitch_inertia": 3900 * kg_m2, "front_distance": 1.2 * m, "rear_distance": 1.7 * m, "seat_forward": 0.8 * m}
front = wheel | {"unsprung_mass": 62 * kg, "wheel_rate": 34 * N_mm}
rear = wheel | {"unsprung_mass": 75 * kg, "wheel_rate": 40 * N_mm}
bumps = {"height": 80 * mm, "length": 6 * m, "duration": 2.5 * s, "time_step": 0.005 * s}
rates = {"as drawn": 40, "softer behind": 22}
halves = {name: ride.HalfCar(**body, front=front, rear=rear | {"wheel_rate": rate * N_mm}) for name, rate in rates.items()}

# %% tags=["drawing"]
figure, panels = pictures.curves("time from the bump [s]", 2, 1, 5.0)
for (name, half), style in zip(halves.items(), ("-", "--"), strict=True):
    motion = half.half_sine(**bumps, speed=speed)
    panels[0, 0].plot(motion["time"].to(s), motion["pitch"].to(deg), **pictures.PLAIN | {"linestyle": style})
    panels[1, 0].plot(motion["time"].to(s), motion["body_displacement"].to(mm), **pictures.PLAIN | {"linestyle": style})
panels[0, 0].set_ylabel("pitch, front down [deg]")
panels[1, 0].set_ylabel("body, up [mm]")
marks = [{"linestyle": style, "color": "black"} for style in ("-", "--")]
pictures.key(figure, 2, *(pictures.drawn(f"{name}: {rate} N/mm", mark) for (name, rate), mark in zip(rates.items(), marks, strict=True)))
pictures.show(figure, "ride_pitch", "Pitch and height of the body over time after a bump, with two rear rates.")
swings = halves["as drawn"].bounce_and_pitch()
words = []
for name, half in halves.items():
    try:
        flat = half.flat_ride(speed=speed)
        both = f"{flat.front_frequency.to(Hz):.2f} Hz in front, {flat.rear_frequency.to(Hz):.2f} Hz behind"
        words.append(f"{name}: {both}, together after {flat.cycles:.1f} swings of the front")
    except ValueError:  # the rear is no faster than the front
        words.append(f"{name}: never, the rear is no faster than the front")
pictures.say(
    f"{'; '.join(words)}. As drawn the body bounces at {swings.bounce_frequency.to(Hz):.2f} Hz about a point {abs(swings.bounce_centre.to(m)):.1f} m "
    f"{'in front of' if swings.bounce_centre > 0 * m else 'behind'} its centre of mass, and pitches at {swings.pitch_frequency.to(Hz):.2f} Hz "
    f"about one "
    f"{abs(swings.pitch_centre.to(m)):.1f} m {'in front of' if swings.pitch_centre > 0 * m else 'behind'} it."
)

# %% [markdown]
# ## Two wheels over a kerb
#
# The right wheels climb a kerb of 80 mm at 15 km/h, and the left wheels stay on the road. The pictures show the roll, the acceleration of the driver
# on the left, and the load of two tyres, with and without an anti-roll bar in front.

# %%
whole = {"roll_inertia": 900 * kg_m2, "front_track": 1.72 * m, "rear_track": 1.70 * m, "seat_left": 0.45 * m}
bars = {"with the bar": 18 * N_mm, "without": None}
vans = {name: ride.FullCar(**body, **whole, front=front, rear=rear, front_bar_rate=bar) for name, bar in bars.items()}
climbs = {
    name: van.ramp(left_height=0 * mm, right_height=80 * mm, length=0.25 * m, speed=15 * km_h, duration=3 * s, time_step=0.005 * s)
    for name, van in vans.items()
}

# %% tags=["drawing"]
figure, panels = pictures.curves("time from the foot of the kerb [s]", 2, 2, 5.6)
shown = [("roll", "roll, left side up [deg]", deg), ("seat_acceleration", "at the seat [m/s²]", m_s2)]
shown += [("front_right_tyre_load_variation", "front right tyre, change [kN]", kN)]
shown += [("rear_left_tyre_load_variation", "rear left tyre, change [kN]", kN)]
for axes, (name, words, unit) in zip(panels.flat, shown, strict=True):
    for motion, style in zip(climbs.values(), ("-", "--"), strict=True):
        axes.plot(motion["time"].to(s), motion[name].to(unit), **pictures.PLAIN | {"linestyle": style, "linewidth": 1.3})
    axes.set_ylabel(words)
pictures.key(figure, 2, *(pictures.drawn(name, mark) for name, mark in zip(bars, marks, strict=True)))
pictures.show(figure, "ride_two_wheels", "Roll, acceleration at the seat and load of two tyres over time, with and without an anti-roll bar.")
rows = []
for name, van in vans.items():
    on_road = van.on_road(roughness=roads["c"], speed=speed, **waves)
    least = min(float(np.min(climbs[name][f"{end}_{side}_tyre_load_variation"].to(kN))) for end in ("front", "rear") for side in ("left", "right"))
    rows.append([
        name, f"{np.max(np.abs(climbs[name]['roll'].to(deg))):.1f} deg", f"{least:+.1f} kN",
        f"{on_road.weighted_acceleration.to(m_s2):.2f} m/s²", on_road.comfort,
    ])
pictures.table(["front bar", "peak roll", "tyre that loses most", "at the seat on class c", "in the words of ISO 2631-1"], rows)
