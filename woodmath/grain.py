"""How wood is told from air, and end grain from long grain: rings, lines along the board, hatching."""

from __future__ import annotations

import math
from collections.abc import Iterator

from woodmath.outlines import Point, Points
from woodmath.pens import PENS, Disc, Pen, Stroke


def _fraction(index: int) -> float:
    """Return a number between 0 and 1 that looks haphazard and is always the same for an index."""
    return (index * 0.6180339887) % 1.0


_SMALL = 80.0
"""Across an end this many picture units wide, or less, the rings stand as far apart as here."""


def rings(outline: Points, pith: Point | None, tint: str) -> Iterator[Disc]:
    """Yield growth rings about the pith, cut off at an outline: end grain.

    Parameters
    ----------
    outline : outline
        Of the cut wood, in picture units.
    pith : point or None
        Where the heart stood; beyond a corner where nothing is said.
    tint : str
        Which part it is.

    >>> square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    >>> len(list(rings(square, None, "post"))) > 20
    True
    """
    left, top = min(x for x, _ in outline), min(y for _, y in outline)
    right, bottom = max(x for x, _ in outline), max(y for _, y in outline)
    size = max(right - left, bottom - top)
    heart = pith or (left - 0.35 * size, bottom + 0.55 * size)
    corners = [math.dist(heart, corner) for corner in outline]
    inside = left <= heart[0] <= right and top <= heart[1] <= bottom
    nearest = math.hypot(
        max(left - heart[0], 0.0, heart[0] - right), max(top - heart[1], 0.0, heart[1] - bottom)
    )
    radius = size * 0.03 if inside else min(corners) * 0.7
    # In a small picture rings as close as in a large one would run into one grey.
    apart = max(size, _SMALL)
    radii: list[float] = []
    while radius < max(corners):
        radii.append(radius)
        radius += apart * (0.014 + 0.026 * _fraction(len(radii) - 1))
    for late, width in ((False, 0.7), (True, 1.5)):
        pen = Pen(f"{tint} grain", width)
        for place, ring in enumerate(radii):
            if (place % 3 == 2) == late and ring > nearest:
                yield Disc(heart, ring, pen, "", outline)


def long_grain(outline: Points, angle: float, tint: str) -> Iterator[Stroke]:
    """Yield the lines that run along a board, cut off at its outline: long grain.

    Parameters
    ----------
    outline : outline
        Of the wood, in picture units.
    angle : float
        Direction of the grain, in degrees from level, counter-clockwise.
    tint : str
        Which part it is.

    >>> square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    >>> [len(stroke.lines) > 10 for stroke in long_grain(square, 0.0, "end")]
    [True]
    """
    turn = math.radians(-angle)
    along, across = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    runs = [x * along[0] + y * along[1] for x, y in outline]
    rows = [x * across[0] + y * across[1] for x, y in outline]
    start, length = min(runs), max(runs) - min(runs)
    steps = max(2, min(40, round(length / 22)))
    row, index, lines = min(rows) + 3.0, 0, []
    gap = max(7.0, (max(rows) - min(rows)) / 36)
    last, (along_x, along_y), (across_x, across_y) = max(rows), along, across
    places = [start + length * step / steps for step in range(steps + 1)]
    while row < last:
        shift, height = 7 * _fraction(index), 1.3 * (0.4 + _fraction(index + 5))
        line = []
        for run in places:
            lift = row + height * math.sin(run / 23 + shift)
            line.append((run * along_x + lift * across_x, run * along_y + lift * across_y))
        lines.append(tuple(line))
        row += gap * (0.7 + 0.6 * _fraction(index))
        index += 1
    if lines:
        yield Stroke(tuple(lines), Pen(f"{tint} grain", 0.8), False, "", outline)


def hatching(outline: Points, angle: float, spacing: float, role: str) -> Iterator[Stroke]:
    """Yield an area filled and struck with parallel lines.

    Parameters
    ----------
    outline : outline
        Of the area, in picture units.
    angle : float
        Direction of the lines, in degrees from level, counter-clockwise.
    spacing : float
        From line to line, in picture units, > 0.
    role : str
        Fill and pen of that name.

    >>> square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    >>> len(list(hatching(square, 45.0, 8.0, "fault")))
    3
    """
    turn = math.radians(-angle)
    along, across = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    runs = [x * along[0] + y * along[1] for x, y in outline]
    rows = [x * across[0] + y * across[1] for x, y in outline]
    count = int((max(rows) - min(rows)) / spacing) + 1
    lines = tuple(
        tuple(
            (run * along[0] + row * across[0], run * along[1] + row * across[1])
            for run in (min(runs), max(runs))
        )
        for row in (min(rows) + spacing * (index + 0.5) for index in range(count))
    )
    yield Stroke((outline,), None, True, role)
    yield Stroke(lines, PENS[role], False, "", outline)
    yield Stroke((outline,), PENS[role], True)
