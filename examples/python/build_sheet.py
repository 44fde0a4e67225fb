# %% [markdown]
# # The Dunlin: from the first weighing to the parts to order
#
# Tern Lane Fabrication has the old van on four scales. What follows from the readings, and what is missing? Which spring and
# which axle fit, and how sure is that? One document grows from cell to cell; nothing is guessed. All figures are invented.
#
# Springs, brakes, steering, frames and hot coolant can injure and kill: local codes and licensed practice come first.

# %%
from pathlib import Path

import matplotlib.pyplot as plt
from axlewright.sheet import PriceList, Sheet, span

sheets = Path("../sheets")

# %% [markdown]
# ## The first weighing
# The sheet starts with four readings, the wheelbase and the tracks, each with the tolerance of the scales or the tape.

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
# One question has an answer; the others say what they need. This list shows what to measure and to look up next for the front axle and the coolant.

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
# How did the library compute the worst of them? It shows each formula with the numbers put in.

# %%
print(quoted.work("driveline.cruise"))

# %% [markdown]
# ## How sure is that?
# Which measurement moves the front frequency most, and which verdicts can change within the tolerances? The chances come from ten thousand samples;
# one seed always gives the same samples.

# %%
for of in quoted.sensitivity("front.frequency"):
    print(of)
print()
for chance in quoted.chances(samples=10_000, seed=1):
    if chance.turns > 0:
        print(f"{chance.path}: {chance.verdict}; another verdict in {chance.turns:.1%} of the samples")

# %% [markdown]
# ## What if the spring changes, and the mount?
# The pictures show the margins of bump travel and front frequency over spring rates and motion ratios. Words and hatching give the verdict of each region.

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
# A price list and some requirements give all combinations that meet them. For each part that is in no combination, the library gives the reason.

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
# This compares the cheapest choice with the van as it was quoted, and shows the differences only.

# %%
better = sheet.fit(chosen.cheapest)
print(quoted.compare(better.assess()))

# %% [markdown]
# The findings that are still short, tight or not known are listed here.

# %%
for finding in better.assess():
    if finding.verdict != "meets":
        print(f"{finding.verdict}: {finding.question}")
