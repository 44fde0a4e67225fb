"""Drawings of a sweep: an output over one line or two, with the regions of its verdict."""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

from axlewright._table import Table, _shown

VERDICTS = ("meets", "tight", "short", "not known", "does not apply")
#: Hatching of the region of each verdict, which also bears its word.
HATCHES = {"meets": "", "tight": "//", "short": "xx", "not known": "..", "does not apply": "--"}


def draw_line(axes: Any, table: Table, across: str, name: str, verdict: str | None) -> None:
    x, y = _shown(table[across]), _shown(table[name])
    if x.dtype == object:
        axes.set_xticks(range(len(x)), x, rotation=30, ha="right")
        x = np.arange(len(x), dtype=float)
    axes.plot(x, y, color="black", marker="." if len(x) <= 50 else "")
    axes.set_xlabel(table._label(across))
    axes.set_ylabel(table._label(name))
    if verdict is None or len(x) == 0:
        return
    order = np.argsort(x, kind="stable")
    x, words = x[order], np.asarray(table[verdict])[order]
    changes = np.flatnonzero(words[1:] != words[:-1]) + 1
    edges = [float(x[0]), *((x[at - 1] + x[at]) / 2 for at in changes), float(x[-1])]
    for left, right, at in zip(edges, edges[1:], [0, *changes], strict=False):
        word = str(words[at])
        axes.axvspan(left, right, facecolor="none", edgecolor="0.75", hatch=HATCHES[word], linewidth=0, zorder=0)
        middle = (left + right) / 2
        axes.text(middle, 0.98, word, transform=axes.get_xaxis_transform(), ha="center", va="top", bbox=_BOX)


_BOX: dict[str, Any] = {"facecolor": "white", "edgecolor": "none", "pad": 1.5}


def draw_map(
    axes: Any, table: Table, across: list[str], shape: tuple[int, ...], name: str, verdict: str | None
) -> None:
    values = _shown(table[name]).reshape(shape)
    ticks = []
    for at, path in enumerate(across):
        places = _shown(table[path]).reshape(shape).take(0, axis=1 - at)
        if places.dtype == object:
            set_ticks = axes.set_xticks if at == 0 else axes.set_yticks
            set_ticks(range(len(places)), places)
            places = np.arange(len(places), dtype=float)
        ticks.append(places)
    x, y = ticks
    if min(shape) < 2:
        raise ValueError(f"a grid of {shape[0]} x {shape[1]} has no area to draw")
    regions = {}
    if verdict is not None:
        codes = np.array([VERDICTS.index(word) for word in table[verdict]], dtype=float).reshape(shape)
        for code, word in enumerate(VERDICTS):
            here = codes == code
            if not here.any():
                continue
            shade = f"{1.0 - 0.05 * code:.2f}"
            area = axes.contourf(x, y, here.T.astype(float), levels=[0.5, 1.5], hatches=[HATCHES[word]], colors=[shade])
            area.set(edgecolor="0.7", linewidth=0)
            regions[word] = here
    said = []
    known = values[np.isfinite(values)]
    if known.size and known.min() < known.max():
        lines = axes.contour(x, y, values.T, colors="black", linewidths=0.8)
        for label in axes.clabel(lines):
            label.set_bbox(_BOX)
            said.append(label)
    for word, here in regions.items():
        text = axes.text(x[0], y[0], word, ha="center", va="center", bbox=_BOX, zorder=3)
        apart = [_apart(axes, text, other, x, y) for other in said]
        row, column = _inside(here, np.minimum.reduce([*apart, _apart(axes, text, None, x, y)]))
        text.set_position((x[row], y[column]))
        for other, room in zip(list(said), apart, strict=True):
            if room[row, column] < 1.0 and other.get_text() not in regions:  # a region too small for both keeps its word
                other.remove()
                said.remove(other)
        said.append(text)
    axes.set_xlabel(table._label(across[0]))
    axes.set_ylabel(table._label(across[1]))
    axes.set_title(table._label(name))


def _half(axes: Any, text: Any) -> npt.NDArray[np.float64]:
    """Half of a text's width and height in parts of the axes; a letter is taken as 0.65 of the font's size wide."""
    letter, box, turn = text.get_fontsize(), 2.0 * _BOX["pad"], np.radians(text.get_rotation())
    width, height = 0.65 * letter * len(text.get_text()) + box, 1.3 * letter + box
    cosine, sine = abs(np.cos(turn)), abs(np.sin(turn))
    size = np.array([width * cosine + height * sine, width * sine + height * cosine])
    window = axes.get_window_extent()
    half: npt.NDArray[np.float64] = size * axes.figure.dpi / 72.0 / 2.0 / np.array([window.width, window.height])
    return half


def _apart(axes: Any, text: Any, other: Any, x: npt.NDArray[Any], y: npt.NDArray[Any]) -> npt.NDArray[np.float64]:
    """Distance of a text from another or from the edges, at each place of a grid; at most 1, for texts that are clear of each other."""
    (left, right), (low, high) = axes.get_xlim(), axes.get_ylim()
    along, up = (x - left) / (right - left), (y - low) / (high - low)
    width, height = _half(axes, text)
    if other is None:
        room = np.minimum.outer(np.minimum(along, 1.0 - along) / width, np.minimum(up, 1.0 - up) / height)
    else:
        at, over = other.get_position()
        wide, tall = _half(axes, other)
        across = np.abs(along - (at - left) / (right - left)) / (width + wide)
        room = np.maximum.outer(across, np.abs(up - (over - low) / (high - low)) / (height + tall))
    clear: npt.NDArray[np.float64] = np.minimum(room, 1.0)
    return clear


def _inside(here: npt.NDArray[np.bool_], room: npt.NDArray[np.float64]) -> tuple[int, int]:
    """The place of a region nearest to its middle of those with the most room."""
    places = np.argwhere(here)
    far = ((places - places.mean(axis=0)) ** 2).sum(axis=1)
    row, column = places[np.lexsort((far, -room[here]))[0]]
    return int(row), int(column)
