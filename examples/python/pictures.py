"""Style of the pictures in the notebooks.

All pictures use the same marks. Hatching shows the wanted range, a star the chosen value, a cross the quoted value. A full
mark fits, a hollow mark does not. Labels stand beside what they name, and the key stands below the picture. No picture
needs colour.
"""

import os
from base64 import b64encode
from html import escape
from io import BytesIO
from pathlib import Path
from textwrap import fill

import matplotlib
import numpy as np
from IPython.display import HTML, Markdown, display
from matplotlib.colors import ListedColormap
from matplotlib.figure import Figure
from matplotlib.legend_handler import HandlerTuple
from matplotlib.lines import Line2D
from matplotlib.patches import Patch
from axlewright.units import mm
from matplotlib.patheffects import withStroke

matplotlib.rcParams.update(
    {
        "font.size": 11,
        "axes.titlesize": 12,
        "axes.spines.top": False,
        "axes.spines.right": False,
        "hatch.color": "0.35",
        "hatch.linewidth": 0.7,
    }
)

#: Pale yellow to slate, evenly darker in grey too, and light enough for black words.
FIELD = ListedColormap(1 - 0.6 * (1 - matplotlib.colormaps["cividis"](np.linspace(1, 0, 256))[:, :3]))
HATCH = "///"
STYLES = ["-", "--", "-.", ":"]
MARKERS = ["o", "s", "^", "D"]
BOLD = 2.6
HALO = [withStroke(linewidth=3, foreground="white")]
BOX = {"boxstyle": "round,pad=0.25", "facecolor": "white", "edgecolor": "0.3", "linewidth": 0.8}
CHOSEN = {"marker": "*", "markersize": 19, "color": "black", "markeredgecolor": "white", "markeredgewidth": 1.2}
ELSEWHERE = CHOSEN | {"color": "white", "markeredgecolor": "black"}
QUOTED = {"marker": "X", "markersize": 13, "color": "white", "markeredgecolor": "black", "markeredgewidth": 1.6}
FITS = {"color": "black", "markeredgecolor": "white", "markersize": 10}
MISSES = {"color": "white", "markeredgecolor": "black", "markersize": 8}
KNOWN = {"marker": "D", "color": "black", "markersize": 11}
IF_SHOCKED = {"marker": "o", "color": "black", "markerfacecolor": "white", "markersize": 9}
LIMIT = {"color": "black", "linewidth": BOLD, "linestyle": "--"}


def say(words):
    """Show a sentence under a picture."""
    display(Markdown(words))


def table(head, rows):
    """Show a table of words, with the last column (the verdict) in bold."""
    lines = [head, ["---"] * len(head), *([*row[:-1], f"**{row[-1]}**"] for row in rows)]
    say("\n".join(f"| {' | '.join(line)} |" for line in lines))


def show(figure, name, words):
    """Show the picture with a description in words; AXLEWRIGHT_PICTURES names a folder for a copy."""
    picture = BytesIO()
    figure.savefig(picture, format="png", dpi=110)
    if folder := os.environ.get("AXLEWRIGHT_PICTURES"):
        Path(folder, f"{name}.png").write_bytes(picture.getvalue())
    source = b64encode(picture.getvalue()).decode()
    display(HTML(f'<img src="data:image/png;base64,{source}" alt="{escape(words)}">'))


def wanted(words):
    """Entry of the key for hatching."""
    return Patch(facecolor="none", edgecolor="0.35", hatch=HATCH, linewidth=BOLD), f"wanted: {words}"


def drawn(words, *styles):
    """Entry of the key for a mark or a line; several marks may share one meaning."""
    return tuple(Line2D([], [], **{"linestyle": "none"} | style) for style in styles), words


def key(figure, columns, *entries):
    """Put the key below the picture."""
    handles, words = zip(*entries, strict=True)
    room = max([2.6, *(1.3 * len(handle) for handle in handles if isinstance(handle, tuple))])
    style = {"handler_map": {tuple: HandlerTuple(ndivide=None)}, "handlelength": room, "frameon": False}
    figure.legend(handles, words, loc="outside lower center", ncols=columns, **style)


def frame(across, up, rows=1, columns=1, height=5.6):
    """Make a figure with labelled axes."""
    figure = Figure(figsize=(8.6, height), layout="constrained")
    axes = figure.subplots(rows, columns, sharex=True, sharey=True, squeeze=False)
    for below in axes[-1]:
        below.set_xlabel(across)
    for beside in axes[:, 0]:
        beside.set_ylabel(up)
    return figure, axes if axes.size > 1 else axes[0, 0]


def second_axis(axis, label, here, there):
    """Add a second axis on the opposite side, in another unit with the same zero."""
    axes, factor = axis.axes, (1 * here).to(there)
    functions = (lambda value: value * factor, lambda value: value / factor)
    if axis is axes.xaxis:
        axes.secondary_xaxis("top", functions=functions).set_xlabel(label)
    else:
        axes.secondary_yaxis("right", functions=functions).set_ylabel(label)


def inward(value, limits, offset):
    """Offset of a label, turned away from a near edge."""
    share = (value - limits[0]) / (limits[1] - limits[0])
    return abs(offset) if share < 0.2 else -abs(offset) if share > 0.8 else offset


def mark(axes, x, y, words, style, towards):
    """Mark a point and name it; `towards` is the offset of the name in points, unless an edge is near."""
    axes.plot([x], [y], linestyle="none", zorder=6, clip_on=False, **style)
    across, up = inward(x, axes.get_xlim(), towards[0]), inward(y, axes.get_ylim(), towards[1])
    axes.annotate(
        words,
        (x, y),
        (across, up),
        textcoords="offset points",
        zorder=7,
        bbox=BOX,
        ha="left" if across > 0 else "right",
        va="bottom" if up > 0 else "top",
    )


def points(axes, x, y, fits, marker):
    """Draw points: full if they fit, hollow if not."""
    axes.plot(x[fits], y[fits], marker, **FITS)
    axes.plot(x[~fits], y[~fits], marker, **MISSES)


def lines(axes, x, y, values, levels, words, **style):
    """Draw labelled lines of equal value."""
    drawn = axes.contour(x, y, values, levels=levels, colors="black", **style)
    for label in axes.clabel(drawn, fmt=words.format, fontsize=10):
        label.set_path_effects(HALO)


def field(axes, x, y, values, levels, low, high, words):
    """Draw values as a filled field; the wanted range is hatched between bold, labelled lines."""
    drawn = axes.contourf(x, y, values, levels=levels, cmap=FIELD, extend="both")
    top = high if np.isfinite(high) else max(low, np.nanmax(values)) + 1
    axes.contourf(x, y, values, levels=[low, top], colors="none", hatches=[HATCH])
    lines(axes, x, y, values, [limit for limit in (low, high) if np.isfinite(limit)], words, linewidths=BOLD)
    return drawn


def band(axes, low, high):
    """Hatch the wanted range of the horizontal axis between bold lines."""
    axes.axvspan(low, high, facecolor="none", edgecolor="0.35", linewidth=0, hatch=HATCH)
    for limit in low, high:
        axes.axvline(limit, color="black", linewidth=BOLD)


def refuse(axes, reason):
    """Write the reason in place of a field that cannot be drawn."""
    axes.text(0.5, 0.5, fill(f"refused: {reason}", 30), transform=axes.transAxes, ha="center", va="center", bbox=BOX)


def margin_axis(axes, margins, wanted):
    """Set a logarithmic axis for these margins, with the limit at 1, the wanted margin, and the verdicts between."""
    least, most = min(0.5, 0.85 * np.nanmin(margins)), max(1.6 * wanted, 1.2 * np.nanmax(margins))
    axes.set_xscale("log")
    ticks = [tick for tick in (0.1, 0.2, 0.3, 0.5, 0.7, 1.0, wanted, 2.0, 3.0, 5.0) if least <= tick <= most]
    axes.set_xticks(ticks, [f"{tick:g}" for tick in ticks])
    axes.minorticks_off()
    band(axes, wanted, 2 * most)
    axes.axvline(1, **LIMIT)
    for left, right, verdict in (least, 1, "short"), (1, wanted, "tight"), (wanted, most, "meets"):
        middle = (left * right) ** 0.5
        axes.text(middle, 1.01, verdict, transform=axes.get_xaxis_transform(), ha="center", va="bottom")
    axes.set_xlim(least, most)


def margin_row(axes, row, known, if_shocked, shocks, words):
    """Margin of one part if it is known, its margin at each shock factor, and the words for it."""
    if np.isnan(known) or np.ptp(if_shocked):
        axes.plot(if_shocked, np.full(len(shocks), row), **IF_SHOCKED)
        for margin, shock in zip(if_shocked, shocks, strict=True):
            axes.annotate(
                f"×{shock:g}",
                (margin, row),
                (-4, -8),
                textcoords="offset points",
                ha="center",
                va="top",
                path_effects=HALO,
            )
    axes.plot([known], [row], zorder=5, **KNOWN)
    axes.text(0.01, row - 0.2, words, transform=axes.get_yaxis_transform(), weight="bold", path_effects=HALO)


#: How a position is drawn: droop, ride height, bump.
POSITIONS = [
    {"linestyle": ":", "linewidth": 1.3},
    {"linestyle": "-", "linewidth": 2.0},
    {"linestyle": "--", "linewidth": 1.3},
]
PLAIN = {"color": "black", "linewidth": 1.6}
WANTED_AREA = {"facecolor": "none", "edgecolor": "0.35", "hatch": HATCH, "linewidth": 0}


#: Where along a part its number may stand.
SHARES = (0.5, 0.35, 0.65, 0.2, 0.8)
#: A view: what runs across and up, and from where one looks.
VIEWS = {"front": ("y", "z", "from the front"), "side": ("x", "z", "from the left"), "plan": ("y", "x", "from above")}


def three_views(tables, wheels, words=("droop", "ride height", "bump"), widths=(1, 1), height=8.6):
    """Draw linkages in front, side and plan view, with one table of points for each position; `wheels` holds the points of the tyre outlines."""
    figure = Figure(figsize=(8.6, height), layout="constrained")
    panels = figure.subplot_mosaic([["front", "side"], ["plan", "key"]], width_ratios=widths)
    named = numbers(tables[0], VIEWS)
    for name in VIEWS:
        view(panels[name], name, tables, wheels, named)
    panels["key"].set_axis_off()
    panels["key"].legend(*view_key(words, named), loc="center", frameon=False)
    return figure


def one_view(name, tables, wheels, words=("droop", "ride height", "bump"), height=4.6):
    """Draw linkages in one view, with the key below."""
    figure = Figure(figsize=(8.6, height), layout="constrained")
    named = numbers(tables[0], [name])
    view(figure.subplots(), name, tables, wheels, named)
    figure.legend(*view_key(words, named), loc="outside lower center", ncols=4, frameon=False)
    return figure


def base(part):
    """Name of a part without its side."""
    return part.removesuffix(" left").removesuffix(" right")


def clearance(table, name):
    """Least length of a numbered part in this view, and least distance between numbers."""
    return 0.05 * max(np.ptp(table[along].to(mm)) for along in VIEWS[name][:2])


def first_stretch(table, part, name):
    """Points of a part in this view, and the range of points that may carry its number (for a leaf, the first half)."""
    at = table["part"] == part
    x, y = (table[along].to(mm)[at] for along in VIEWS[name][:2])
    leaf = np.any(table["point"][at] == "leaf")
    start, stop = 0, len(x) // 2 if leaf else 1
    return x, y, start, stop, np.hypot(x[stop] - x[start], y[stop] - y[start])


def numbers(table, views):
    """Number for each part that is long enough in one of these views, in the order of the table. A pair shares one number; wheels have none."""
    shown = [
        base(part)
        for part in dict.fromkeys(table["part"])
        if base(part) != "wheel" and any(first_stretch(table, part, name)[-1] > clearance(table, name) for name in views)
    ]
    return {part: number for number, part in enumerate(dict.fromkeys(shown), 1)}


def view(axes, name, tables, wheels, named):
    """Draw one view. Each part that is long enough has a number, one for a pair. A leaf has no marks along it. The view from the left omits the far side."""
    across, up, title = VIEWS[name]
    axes.set_title(title)
    axes.set_xlabel(f"{across} [mm]")
    axes.set_ylabel(f"{up} [mm]")
    axes.set_aspect("equal", adjustable="datalim")
    if name != "front":  # forward is to the left of who looks from the left, left is to the left of who looks from above
        axes.invert_xaxis()
    axes.locator_params(axis="x", nbins=4)
    room = clearance(tables[0], name)
    taken = []
    for table, rims, style in zip(tables, wheels, POSITIONS, strict=True):
        solid = style["linestyle"] == "-"
        for part in dict.fromkeys(table["part"]):
            if name == "side" and part.endswith(" right"):
                continue
            x, y, start, stop, length = first_stretch(table, part, name)
            joints = np.flatnonzero(table["point"][table["part"] == part] != "leaf")
            axes.plot(x, y, color="black", marker="o", markersize=3 if solid else 0, markevery=list(joints), **style)
            if solid and base(part) in named and not part.endswith(" right") and length > room:
                # From the middle outward, where no other number stands.
                places = [[np.interp(start + share * (stop - start), range(len(x)), ends) for ends in (x, y)] for share in SHARES]
                free = (here for here in places if all(np.hypot(*np.subtract(here, other)) > room for other in taken))
                taken.append(next(free, places[0]))
                axes.text(*taken[-1], str(named[base(part)]), fontsize=9, ha="center", va="center", path_effects=HALO)
        for rim in rims:
            axes.plot(rim["xyz".index(across)], rim["xyz".index(up)], color="0.45", **style | {"linewidth": 0.9})


def view_key(words, named):
    """Lines and words for the key of a view."""
    entries = [(drawn_line(style), word) for style, word in zip(POSITIONS, words, strict=True)]
    entries.append((drawn_line({"linestyle": "-", "color": "0.45", "linewidth": 0.9}), "tyre outline"))
    for part, number in named.items():
        entries.append((Line2D([], [], linestyle="none", marker=f"${number}$", color="black"), part))
    return zip(*entries, strict=True)


def drawn_line(style):
    """A line for the key."""
    return Line2D([], [], **{"color": "black"} | style)


def rim(centre, camber, toe, radius, side=1):
    """Points of the rim of a left (1) or right (-1) wheel, in mm: centre, angles in rad, radius."""
    axis = np.array([np.sin(toe) * np.cos(camber), side * np.cos(toe) * np.cos(camber), -np.sin(camber)])
    ahead = np.cross(axis, [0.0, 0.0, 1.0])
    ahead /= np.linalg.norm(ahead)
    turn = np.linspace(0, 2 * np.pi, 73)
    points = np.outer(ahead, np.cos(turn)) + np.outer(np.cross(ahead, axis), np.sin(turn))
    return (np.array(centre)[:, None] + radius * points) * 1000


def curves(across, rows, columns, height=None):
    """Make panels of curves over one quantity."""
    figure = Figure(figsize=(8.6, height or 2.6 * rows), layout="constrained")
    panels = figure.subplots(rows, columns, sharex=True, squeeze=False)
    for axes in panels[-1]:
        axes.set_xlabel(across)
    return figure, panels


def curve(axes, x, y, words, **style):
    """Draw one curve, and mark ride height by a thin line."""
    axes.plot(x, y, **PLAIN | style)
    axes.axvline(0, color="0.6", linewidth=0.8)
    axes.set_ylabel(words)


def limit(axes, value, words, side="left"):
    """Draw a limit, with its meaning in words at the left or right end."""
    axes.axhline(value, **LIMIT)
    place = {"left": 0.02, "right": 0.98}[side], value
    look = {"textcoords": "offset points", "ha": side, "path_effects": HALO}
    axes.annotate(words, place, (0, 4), xycoords=("axes fraction", "data"), **look)


def effects(rows, columns):
    """Draw the effect of each row as bars to either side of zero, one panel for each column of format and values."""
    figure = Figure(figsize=(8.6, 0.34 * len(rows) + 0.8), layout="constrained")
    panels = figure.subplots(1, len(columns), sharey=True)
    for axes, (words, (digits, values)) in zip(panels, columns.items(), strict=True):
        axes.barh(range(len(rows)), values, color="0.35", height=0.6)
        axes.axvline(0, color="black", linewidth=0.8)
        axes.set_xlim(*(1.9 * max(map(abs, values)) * side for side in (-1, 1)))
        axes.set_title(words, fontsize=11)
        for row, value in enumerate(values):
            side, away = ("left", 3) if value >= 0 else ("right", -3)
            words = f"{value:{digits}}"
            axes.annotate(
                words if float(words) else "0", (value, row), (away, 0), textcoords="offset points", ha=side, va="center", fontsize=9
            )
        axes.set_xticks([])
    panels[0].set_yticks(range(len(rows)), rows)
    panels[0].invert_yaxis()
    return figure
