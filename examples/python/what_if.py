# %% [markdown]
# # The Dunlin: what if?
#
# Tern Lane Fabrication turns an old forward-control van into a tow-capable work van. It asks four questions before anything
# is bought, cut or welded. All figures are invented.
#
# In every picture **hatched is what is wanted**, a **star is what we chose**, a **cross is what was quoted**.
# Change the next cell and run everything again.

# %%
import numpy as np
from axlewright import si, verdict_of_ratio
from axlewright.units import Hz, N_mm, delta_degF, ft, inch, km, kPa_gauge, lbf_in, m, mm, psi_gauge, rad_s, rpm

import dunlin  # the van as quoted
import pictures

spring, mount = 550 * lbf_in, 0.62  # chosen, the mount by its motion ratio
catalogue = np.arange(250, 751, 50) * lbf_in
mounts = [0.56, 0.62, 0.68, 0.74]
frequency_wanted = 1.1 * Hz, 1.5 * Hz

tyre, axle = "235/75R15", 4.10  # chosen
tyres = ["225/70R15C", "215/75R15C", "235/75R15", "LT245/75R16", "LT265/75R16"]
axles = [3.55, 3.73, 4.10, 4.56]
cruise_wanted = 1800 * rpm, 2400 * rpm

cap, altitude, mix = 15 * psi_gauge, 5000 * ft, 0.50  # chosen
caps, altitudes = np.linspace(7, 22, 61) * psi_gauge, np.linspace(0, 10_000, 51) * ft
mixes = [0.0, 0.30, 0.50, 0.60]
margin_wanted = 20 * delta_degF

shock_factor = None  # how much a dropped clutch multiplies the torque; None while nobody knows
shocks = [1.0, 1.5, 2.0, 3.0]
torque_wanted = 1.25


# %% tags=["drawing"]
def place(value, band, digits):
    """Verdict of a value in a band, and its distance from the band if it lies outside."""
    low, high = band
    if value < low:
        return f"{low - value:{digits}} below"
    return f"{value - high:{digits}} above" if value > high else "meets"


def between(band):
    """A band in words."""
    low, high = band
    return f"{low} to {high}"


# %% [markdown]
# ## Which spring, at which mount?
#
# Each circle is a spring of the catalogue at a mount that can be drilled. A full circle lies in the wanted band of ride
# frequency. Dashed lines show the sag at the wheel from the spring's free length. The picture leaves out the tyre's rate,
# and the effect of the load on the rate of an inclined spring.

# %%
rates = np.linspace(catalogue.to(lbf_in).min() - 50, catalogue.to(lbf_in).max() + 50, 200) * lbf_in
ratios = np.linspace(min(mounts) - 0.06, max(mounts) + 0.06, 200)
wheel_rate = si.spring.wheel_rate(rates.si, ratios[:, None], dunlin.SPRING_ANGLE.si)
frequency = Hz(si.spring.natural_frequency(wheel_rate, dunlin.SPRUNG_MASS.si))
sag = m(si.spring.static_deflection(dunlin.FRONT_LOAD.si, wheel_rate))

_, offered, _ = dunlin.front_corner(catalogue, np.array(mounts)[:, None])
fits = (frequency_wanted[0] <= offered) & (offered <= frequency_wanted[1])
_, ride, drop = dunlin.front_corner(spring, mount)
_, ride_quoted, drop_quoted = dunlin.front_corner(dunlin.SPRING_RATE, dunlin.MOTION_RATIO)

# %% tags=["drawing"]
figure, axes = pictures.frame("spring rate [lbf/in]", "motion ratio, mount over wheel [-]", height=6.4)
x, y = rates.to(lbf_in), ratios
low, high = (limit.to(Hz) for limit in frequency_wanted)
field = pictures.field(axes, x, y, frequency.to(Hz), np.arange(0.5, 2.2, 0.2), low, high, "{:.1f} Hz")
pictures.lines(axes, x, y, sag.to(inch), [3, 5, 7, 10, 15], "sag {:.0f} in", linestyles="dashed", linewidths=0.9)
pictures.points(axes, *np.meshgrid(catalogue.to(lbf_in), mounts), fits, "o")
pictures.mark(axes, spring.to(lbf_in), mount, f"chosen\n{ride:.2f}", pictures.CHOSEN, (10, 12))
pictures.mark(
    axes, dunlin.SPRING_RATE.to(lbf_in), dunlin.MOTION_RATIO, f"quoted\n{ride_quoted:.2f}", pictures.QUOTED, (10, 12)
)
pictures.second_axis(axes.xaxis, "spring rate [N/mm]", lbf_in, N_mm)
pictures.key(
    figure,
    3,
    pictures.wanted(between(frequency_wanted)),
    pictures.drawn("sag from the free length", {"linestyle": "--", "color": "black", "linewidth": 0.9}),
    pictures.drawn("spring and mount on offer that fit", {"marker": "o"} | pictures.FITS),
    pictures.drawn("on offer, but outside", {"marker": "o"} | pictures.MISSES),
    pictures.drawn("chosen", pictures.CHOSEN),
    pictures.drawn("quoted", pictures.QUOTED),
)
figure.colorbar(field, label="ride frequency [Hz]", aspect=35)
pictures.show(figure, "ride", f"Ride frequency over spring and mount: quoted {ride_quoted:.2f}, chosen {ride:.2f}.")
pictures.say(
    f"The quoted {dunlin.SPRING_RATE} at {dunlin.MOTION_RATIO} rides at {ride_quoted:.2f} and sags {drop_quoted:.1f} "
    f"({drop_quoted.to(mm):.0f} mm): **{place(ride_quoted, frequency_wanted, '.2f')}**, where {between(frequency_wanted)} is "
    f"wanted. {spring} at {mount} rides at {ride:.2f} and sags {drop:.1f} ({drop.to(mm):.0f} mm): "
    f"**{place(ride, frequency_wanted, '.2f')}**. {fits.sum()} of the {fits.size} pairs on offer lie in the band."
)

# %% [markdown]
# ## Which axle, on which tyres?
#
# Each line is an axle ratio, each row a tyre. Left of the band, the engine labours. Right of the band, it drones.

# %%
radii = np.array([dunlin.rolling_radius(marking).to(mm) for marking in tyres]) * mm
speeds = np.array([[dunlin.cruise_speed(marking, ratio).to(rpm) for ratio in axles] for marking in tyres]) * rpm
fits = (cruise_wanted[0] <= speeds) & (speeds <= cruise_wanted[1])
cruise, cruise_quoted = dunlin.cruise_speed(tyre, axle), dunlin.cruise_speed(dunlin.TYRE, dunlin.AXLE_RATIO)

radius = np.linspace(radii.si.min() - 0.005, radii.si.max() + 0.005, 200) * m
curves = rad_s(si.driveline.engine_speed(dunlin.CRUISE.si, dunlin.SIXTH_GEAR, np.array(axles)[:, None], radius.si))

# %% tags=["drawing"]
figure, axes = pictures.frame(f"engine speed at {dunlin.CRUISE} in sixth [rpm]", "tyre and its rolling radius")
pictures.band(axes, *(limit.to(rpm) for limit in cruise_wanted))
for n, ratio in enumerate(axles):
    curve = curves[n].to(rpm)
    axes.plot(curve, radius.to(inch), color="black", linestyle=pictures.STYLES[n % 4], linewidth=1.4)
    axes.annotate(f"{ratio:.2f}", (curve[-1], radius.to(inch)[-1]), (0, 3), textcoords="offset points", ha="center")
    pictures.points(axes, speeds[:, n].to(rpm), radii.to(inch), fits[:, n], pictures.MARKERS[n % 4])
axes.text(0, 1.01, "axle ratio", transform=axes.transAxes, ha="right", va="bottom")
axes.set_ylim(*radius.to(inch)[[0, -1]])
axes.set_yticks(radii.to(inch), [f"{t}, {r:.1f} in" for t, r in zip(tyres, radii.to(inch), strict=True)])
pictures.second_axis(axes.yaxis, "rolling radius [mm]", inch, mm)
pictures.mark(
    axes, cruise.to(rpm), dunlin.rolling_radius(tyre).to(inch), f"chosen\n{cruise:.0f}", pictures.CHOSEN, (-8, -6)
)
pictures.mark(
    axes,
    cruise_quoted.to(rpm),
    dunlin.rolling_radius(dunlin.TYRE).to(inch),
    f"quoted\n{cruise_quoted:.0f}",
    pictures.QUOTED,
    (12, 8),
)
marks = [{"marker": marker} for marker in pictures.MARKERS[: len(axles)]]
pictures.key(
    figure,
    2,
    pictures.wanted(between(cruise_wanted)),
    pictures.drawn("line: an axle ratio, named at its upper end", {"linestyle": "-", "color": "black"}),
    pictures.drawn("axle and tyre on offer that fit", *(mark | pictures.FITS for mark in marks)),
    pictures.drawn("on offer, but outside", *(mark | pictures.MISSES for mark in marks)),
    pictures.drawn("chosen", pictures.CHOSEN),
    pictures.drawn("quoted", pictures.QUOTED),
)
pictures.show(figure, "cruise", f"Engine speed over axle and tyre: quoted {cruise_quoted:.0f}, chosen {cruise:.0f}.")
pictures.say(
    f"The quoted {dunlin.AXLE_RATIO:.2f} on {dunlin.TYRE.split()[0]} turns the engine at {cruise_quoted:.0f}: "
    f"**{place(cruise_quoted, cruise_wanted, '.0f')}**, where {between(cruise_wanted)} is wanted. {axle:.2f} on {tyre} turns "
    f"it at {cruise:.0f}: **{place(cruise, cruise_wanted, '.0f')}**. Load index, speed symbol and clearance must suit too."
)

# %% [markdown]
# ## Which cap, on which mix, how high up?
#
# The picture shows the margin of the hottest coolant to boiling. It is an upper bound, because the system must first build
# its pressure. Above the bold line, the margin is as large as we want; at the dashed line, the coolant boils. A hollow star
# is the same cap on another mix. Until the cap is tested, no margin is better than tight.

# %%
coolant = dunlin.COOLANT.replace(cap=cap, altitude=altitude, volume_share=mix)
boiling = coolant.margin()
boiled = boiling.margin.to(delta_degF)
unknown = coolant.margin_open().cap_open
safe = dunlin.boiling_verdict(boiling.margin, margin_wanted, unknown)
here = coolant.margin_table(cap=[cap], altitude=[altitude], strength=mixes)
grid = coolant.margin_table(cap=caps, altitude=altitudes, strength=mixes)
margin = grid["margin"].to(delta_degF).reshape(caps.size, altitudes.size, len(mixes))

# %% tags=["drawing"]
figure, panels = pictures.frame("altitude [ft]", "cap rating [psi gauge]", (len(mixes) + 1) // 2, 2, height=8)
x, y, wanted = altitudes.to(ft), caps.to(psi_gauge), margin_wanted.to(delta_degF)
others = [level for level in range(-20, 81, 10) if level not in (0, wanted)]
for axes in panels.flat[len(mixes) :]:
    axes.set_visible(False)
for n, axes in enumerate(panels.flat[: len(mixes)]):
    axes.set_title(f"{100 * mixes[n]:.0f} % concentrate by volume" if mixes[n] else "water alone")
    if n in here.reasons:
        pictures.refuse(axes, here.reasons[n])
        continue
    pictures.field(axes, x, y, margin[:, :, n], range(-20, 81, 10), wanted, np.inf, "{:.0f} °F")
    pictures.lines(axes, x, y, margin[:, :, n], others, "{:.0f} °F", linestyles="solid", linewidths=0.7)
    pictures.lines(axes, x, y, margin[:, :, n], [0], "{:.0f} °F: boils", linestyles="dashed", linewidths=pictures.BOLD)
    there = dunlin.boiling_verdict(here["margin"][n], margin_wanted, here["cap_open"][n])
    words = f"{here['margin'][n].to(delta_degF):.0f} °F, {there}"
    style = pictures.CHOSEN if mixes[n] == mix else pictures.ELSEWHERE
    pictures.mark(axes, altitude.to(ft), cap.to(psi_gauge), words, style, (12, 6))
for axes in panels[0]:
    pictures.second_axis(axes.xaxis, "altitude [km]", ft, km)
for axes in panels[:, -1]:
    pictures.second_axis(axes.yaxis, "cap rating [kPa gauge]", psi_gauge, kPa_gauge)
pictures.key(
    figure,
    2,
    pictures.wanted(f"at least {wanted:.0f} °F below boiling"),
    pictures.drawn("at 0 °F the hottest coolant boils", pictures.LIMIT),
    pictures.drawn("hottest coolant so far below boiling", {"linestyle": "-", "color": "black", "linewidth": 0.7}),
    pictures.drawn("chosen", pictures.CHOSEN),
    pictures.drawn("the same cap over another mix", pictures.ELSEWHERE),
)
pictures.show(figure, "boiling", f"Boiling margin over cap, altitude and mix: chosen {boiling.margin:us}.")
pictures.say(
    f"Under {cap} at {altitude} the chosen {100 * mix:.0f} % mix boils at {boiling.boiling_temperature:us}, "
    f"{boiled:.0f} °F over the hottest coolant: **{safe}**, where {wanted:.0f} °F are wanted. "
    f"{f'It is no better than tight, since {unknown}. ' if unknown else ''}"
    f"{len(grid.reasons)} of the {grid.rows} cases were refused."
)

# %% [markdown]
# ## Which part of the driveline gives first?
#
# The picture compares the torque in each part, at full engine torque in first gear, with the part's own rating. A rating
# that is not continuous is compared with the torque of a dropped clutch: the clutch capacity times a shock factor. Without
# a shock factor, the margin is *not known*; hollow marks show the margin at some factors. A part that the engine alone
# overloads is short in any case.

# %%
torque = dunlin.TORQUE_CURVE.peaks().peak_torque
path = dunlin.TORQUE_PATH.replace(engine_torque=torque, shock_factor=shock_factor)
parts, weakest = path.parts_table(), path.weakest()
shocked = path.table(engine_torque=[torque], shock_factor=shocks)
at_best = path.table(engine_torque=[torque], shock_factor=1.0)["margin"]  # no shock factor is kinder
if_shocked = shocked["margin"].reshape(len(shocks), parts.rows).T
verdicts, known_verdicts = (verdict_of_ratio(margins, torque_wanted) for margins in (if_shocked, parts["margin"]))
hopeless = [part for part, words in zip(parts["part"], verdicts, strict=True) if set(words) == {"short"}]


def turns(verdicts):
    """Shock factors at which the verdict changes: `tight from ×1, short from ×1.5`."""
    before = [None, *verdicts[:-1]]
    steps = zip(shocks, before, verdicts, strict=True)
    return ", ".join(f"{now} from ×{shock:g}" for shock, was, now in steps if now != was)


# %% tags=["drawing"]
figure, axes = pictures.frame("margin, rating over torque [-]; × is the shock factor", "", height=5)
pictures.margin_axis(axes, if_shocked, torque_wanted)
for n, (part, known, verdict) in enumerate(zip(parts["part"], parts["margin"], known_verdicts, strict=True)):
    words = f"at most {at_best[n]:.2f}, not known: {turns(verdicts[n])}" if np.isnan(known) else f"{known:.2f}, {verdict}"
    words += ": the weakest that is known" if part == weakest.part else ""
    pictures.margin_row(axes, n, known, if_shocked[n], shocks, words)
labels = [f"{part}\nrated {rating:.0f}" for part, rating in zip(parts["part"], parts["rating"], strict=True)]
axes.set_yticks(range(parts.rows), labels)
axes.set_ylim(parts.rows - 0.4, -0.6)
pictures.key(
    figure,
    2,
    pictures.wanted(f"at least {torque_wanted:g}"),
    pictures.drawn("below 1 the part is overloaded", pictures.LIMIT),
    pictures.drawn("margin that is known", pictures.KNOWN),
    pictures.drawn("margin if a dropped clutch shocks it so much", pictures.IF_SHOCKED),
)
pictures.show(figure, "torque", f"Torque margin of each part: the weakest known is the {weakest.part}.")
pictures.say(
    f"The weakest part that is known is the **{weakest.part}**: {weakest.margin:.2f}, **{verdict_of_ratio(weakest.margin, torque_wanted)}**. "
    f"The margins of {weakest.not_known} parts are not known, and each of these parts may be weaker."
    + "".join(f" The **{part}** is short at every shock factor drawn." for part in hopeless)
)

# %% [markdown]
# ## Our choice, and what nobody knows yet

# %% tags=["drawing"]
fit, pace = place(ride, frequency_wanted, ".2f"), place(cruise, cruise_wanted, ".0f")
rows = [
    ["front springs", f"{spring} at {mount}", f"{ride:.2f}", between(frequency_wanted), fit],
    ["axle and tyres", f"{axle:.2f} on {tyre}", f"{cruise:.0f}", between(cruise_wanted), pace],
    ["cap and mix", f"{cap}, {100 * mix:.0f} %", f"{boiled:.0f} °F", f"at least {wanted:.0f} °F", safe],
]
columns = (parts[name] for name in ("part", "rating", "margin"))
for part, rating, known, verdict, best in zip(*columns, known_verdicts, at_best, strict=True):
    answer = f"at most {best:.2f}" if np.isnan(known) else f"{known:.2f}"
    rows.append([part, f"rated {rating:.0f}", answer, f"at least {torque_wanted}", verdict])
pictures.table(["part", "chosen", "answer", "wanted", "verdict"], rows)

for why in sorted(set(parts["why"]) - {""}):
    pictures.say(f"**Not known**: {', '.join(parts['part'][parts['why'] == why])}, because {why}.")

# %% [markdown]
# Nobody knows these four values yet, and no picture above counts them:
#
# - the pressure that the cap still holds after years of use;
# - the length of the chosen spring at ride height (an inclined spring under load loses some of its rate);
# - the rate of the tyres at tow pressure;
# - the grip of the tyres, which limits the torque in the driveline.
#
# **Caution.** Brakes, steering, frames, hot pressurised coolant, loaded springs and drivelines can maim and kill. These
# pictures help to choose what to ask for; local codes, the makers' ratings and licensed practice decide.
