# %% [markdown]
# # The Dunlin: from the first weighing to the parts to order
#
# Tern Lane Fabrication has the old van on four scales. What does that say, what is missing, which spring, which axle, and how
# sure is it? One document grows from cell to cell; nothing is guessed on the way. All figures are invented.
#
# Springs, brakes, steering, frames and hot coolant can injure and kill: local codes and licensed practice come first.

# %%
from pathlib import Path

import matplotlib.pyplot as plt
from axlewright.sheet import PriceList, Sheet, span

sheets = Path("../sheets")

# %% [markdown]
# ## The first weighing
# Four readings, the wheelbase and the tracks, each with what the scales and the tape are good for.

# %%
sheet = Sheet(
    {
        "scales.left_front": "612 kg +/- 2 kg",
        "scales.right_front": "598 kg +/- 2 kg",
        "scales.left_rear": "655 kg +/- 2 kg",
        "scales.right_rear": "667 kg +/- 2 kg",
        "vehicle.wheelbase": "2650 mm +/- 3 mm",
        "front.track": "1540 mm",
        "rear.track": "1520 mm",
    },
    name="Dunlin, first weighing",
)
first = sheet.assess()
print(first["vehicle.diagonal"])

# %% [markdown]
# One question has an answer; the others say what they need. For the front axle and the coolant, this is what to measure and to look up next.

# %%
for finding in first:
    if finding.verdict == "not known" and finding.path.startswith(("front.", "coolant.")):
        print(finding.missing)

# %% [markdown]
# ## The van as it is quoted
# The whole sheet, as the shop wrote it by hand.

# %%
sheet = Sheet.load(sheets / "dunlin.toml")
quoted = sheet.assess()
quoted

# %% [markdown]
# How does the library come to the worst of them? The work, with the numbers put in.

# %%
print(quoted.work("driveline.cruise"))

# %% [markdown]
# ## How sure is that?
# Which measurement moves the front frequency, and which verdicts turn within the tolerances? Ten thousand samples, the same for the same seed.

# %%
for of in quoted.sensitivity("front.frequency"):
    print(f"{of.path}, {of.tolerance} more: {of.change:+.4f}, {of.share:.0%} of the variance")
print()
for chance in quoted.chances(samples=10_000, seed=1):
    if chance.turns > 0:
        print(f"{chance.path}: {chance.verdict}; another verdict in {chance.turns:.1%} of the samples")

# %% [markdown]
# ## What if the spring changes, and the mount?
# Remaining travel in bump over spring rates and motion ratios. Words and hatching say what each region is.

# %%
sweep = sheet.what_if(
    {
        "front.spring.rate": span("400 lbf/in", "750 lbf/in", 36),
        "front.spring.motion_ratio": span(0.54, 0.70, 33),
    },
    outputs=["front.bump.margin", "front.bump.verdict", "front.frequency.margin", "front.frequency.verdict"],
)
figure, axes = plt.subplots(1, 2, figsize=(12, 4.5), layout="constrained")
sweep.plot("front.bump.margin", ax=axes[0])
sweep.plot("front.frequency.margin", ax=axes[1])
plt.show()

# %% [markdown]
# ## Which parts?
# A price list, what is required, and everything that meets it. Each part that is in no choice says why.

# %%
prices = PriceList.load(sheets / "tern_lane_prices.csv")
chosen = sheet.choose(
    prices,
    [
        "1.2 Hz <= front.natural_frequency <= 1.5 Hz",
        "1.3 Hz <= rear.natural_frequency <= 1.7 Hz",
        "driveline.cruise.verdict = tight",
        "cost <= 1500",
    ],
)
chosen

# %% [markdown]
# The cheapest choice on the sheet, beside the van as it was quoted: only what differs.

# %%
better = sheet.fit(chosen.cheapest)
print(quoted.compare(better.assess()))

# %% [markdown]
# What is left is named, not hidden: these are still short, tight or not known.

# %%
for finding in better.assess():
    if finding.verdict != "meets":
        print(f"{finding.verdict}: {finding.question}")
