"""How strokes, regions and a compass look: what the views and the pattern of an ornament have in common."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from woodmath.drawing import Circle, Line, MovingLine, Point, Points, Shape
from woodmath.ornament_strokes import CompassArc, Motif, Region, Stroke

PAINTS = {
    "petal": "post",
    "bud": "end",
    "ground": "side",
    "bay": "post",
    "between": "end",
    "leaf": "side",
    "corner": "post",
}
"""What each kind of region is painted with, three tints that differ in lightness; every second bay as "between"."""

FINELY = 0.4
"""By how many picture units a straight piece may miss its arc: less than anyone sees."""

_WHOLE = 359.0
_SAME_PLACE = 1e-6
_POINTS = 13
_GROWTH = 3
_LEG, _HEAD = 0.82, 0.045


def painted(regions: Iterable[Region], finely: float, paints: dict[str, str] | None = None) -> Iterator[Line]:
    """Yield the regions as areas of paint, without an outline.

    Parameters
    ----------
    regions : iterable of Region
        In the order in which they are painted.
    finely : float
        By how much a straight piece may miss its arc, > 0, in length units.
    paints : dict of str to str, optional
        Fill by kind of region; the usual three tints where nothing is said. A kind without a fill stays bare wood.

    Yields
    ------
    Line
        Closed and filled.

    >>> from woodmath.ornament import rosette
    >>> {line.fill for line in painted(rosette(6, 1.0).regions, 0.01)} == {"post", "side"}
    True
    """
    chosen = PAINTS if paints is None else paints
    bays = 0
    row: list[tuple[Points, Points]] = []
    colour = ""
    for region in regions:
        fill = chosen.get(region.kind, "")
        if region.kind == "bay" and fill:
            bays += 1
            fill = fill if bays % 2 else chosen.get("between", fill)
        if not fill:
            continue
        outlines = [_fine(stroke, finely) for stroke in region.strokes]
        if len(outlines) != 2:
            yield Line(tuple(point for points in outlines for point in points[:-1]), "", True, fill)
            continue
        # Leaves that hang together at their tips are one area: there along one side of all, and back along the other.
        if row and (fill != colour or math.dist(row[-1][0][-1], outlines[0][0]) > _SAME_PLACE * finely):
            yield _row_of_leaves(row, colour)
            row = []
        row.append((outlines[0], outlines[1]))
        colour = fill
    if row:
        yield _row_of_leaves(row, colour)


def _row_of_leaves(row: list[tuple[Points, Points]], fill: str) -> Line:
    there = [point for one, _ in row for point in one[:-1]]
    back = [point for _, other in reversed(row) for point in other[:-1]]
    return Line((*there, *back), "", True, fill)


def drawn(strokes: Iterable[Stroke], role: str, finely: float) -> Iterator[Line | Circle]:
    """Yield strokes as lines of one role, those that follow on one another as one; a whole circle as a circle.

    Parameters
    ----------
    strokes : iterable of strokes
        In the order in which they are drawn.
    role : str
        As for `woodmath.shapes.Line`.
    finely : float
        By how much a straight piece may miss its arc, > 0, in length units.

    Yields
    ------
    Line or Circle
        In that order.

    >>> from woodmath.ornament import circle
    >>> [type(shape).__name__ for shape in drawn([circle((0.0, 0.0), 1.0)], "pencil", 0.01)]
    ['Circle']
    """
    line: list[Point] = []
    for stroke in strokes:
        if isinstance(stroke, CompassArc) and abs(stroke.end - stroke.start) > _WHOLE:
            yield Circle(stroke.centre, stroke.radius, role)
            continue
        points = _fine(stroke, finely)
        if line and math.dist(line[-1], points[0]) < _SAME_PLACE * finely:
            line += points[1:]
            continue
        if line:
            yield Line(tuple(line), role)
        line = [*points]
    if line:
        yield Line(tuple(line), role)


def _fine(stroke: Stroke, finely: float) -> Points:
    """Return a stroke's points, no more of them than the eye needs: a small arc has few."""
    if not isinstance(stroke, CompassArc):
        return stroke.points
    piece = 2 * math.degrees(math.acos(max(0.5, 1 - finely / stroke.radius)))
    return stroke.along(max(2, math.ceil(abs(stroke.end - stroke.start) / piece)))


def growing(motif: Motif, seconds_a_step: float, role: str) -> Iterator[MovingLine]:
    """Yield strokes that the browser draws one step after another: each waits for its turn and then grows.

    Parameters
    ----------
    motif : Motif
        What is drawn.
    seconds_a_step : float
        How long a step takes, > 0.
    role : str
        As for `woodmath.shapes.Line`.

    Yields
    ------
    MovingLine
        One for each stroke; it stays when it is drawn.

    >>> from woodmath.ornament import rosette
    >>> len({len(line.frames[0]) for line in growing(rosette(6, 1.0), 0.5, "accent")})
    1
    """
    for number, step in enumerate(step for step in motif.steps if step.strokes):
        for stroke in step.strokes:
            points = stroke.along(_POINTS - 1)
            waiting = ((points[0],) * _POINTS,) * (number * _GROWTH + 1)
            grown = tuple(_so_far(points, part / _GROWTH) for part in range(1, _GROWTH + 1))
            yield MovingLine((*waiting, *grown), seconds_a_step * (number + 1), role, again=False)


def compass(point: Point, pencil: Point, towards: Point) -> Iterator[Shape]:
    """Yield a pair of compasses laid on the wood: the point, the pencil, and the hinge to one side.

    Parameters
    ----------
    point, pencil : (float, float)
        Where its two legs end.
    towards : (float, float)
        To which side of them the hinge lies.

    Yields
    ------
    Line or Circle
        Two legs and a hinge.

    >>> len(list(compass((0.0, 0.0), (2.0, 0.0), (1.0, 5.0))))
    5
    """
    open_by = math.dist(point, pencil)
    (x, y), (far_x, far_y) = point, pencil
    middle = ((x + far_x) / 2, (y + far_y) / 2)
    aside = (-(far_y - y) / open_by, (far_x - x) / open_by)
    if (towards[0] - middle[0]) * aside[0] + (towards[1] - middle[1]) * aside[1] < 0:
        aside = (-aside[0], -aside[1])
    high = open_by * math.sqrt(_LEG**2 - 0.25)
    hinge = (middle[0] + high * aside[0], middle[1] + high * aside[1])
    for foot in (point, pencil):
        yield Line(_leg(hinge, foot, open_by * _HEAD), "edge", True, "steel")
    yield Circle(hinge, open_by * _HEAD * 1.5, "edge", "steel")
    yield Circle(point, 0.0, "edge", "ink", dot=3.2)
    yield Circle(pencil, 0.0, "accent", "accent", dot=2.4)


def cross(at: Point, half: float, role: str) -> Iterator[Line]:
    """Yield a small upright cross.

    Parameters
    ----------
    at : (float, float)
        Its middle.
    half : float
        Half its height and its width.
    role : str
        As for `woodmath.shapes.Line`.

    Yields
    ------
    Line
        Two.

    >>> len(list(cross((0.0, 0.0), 1.0, "quiet")))
    2
    """
    x, y = at
    yield Line(((x - half, y), (x + half, y)), role)
    yield Line(((x, y - half), (x, y + half)), role)


def _so_far(points: Points, part: float) -> Points:
    """Return a line drawn so far: its later points wait at the pencil."""
    last = round(part * (len(points) - 1))
    return (*points[: last + 1], *(points[last],) * (len(points) - 1 - last))


def _leg(hinge: Point, foot: Point, half: float) -> Points:
    """Return a leg that tapers from the hinge to its foot."""
    length = math.dist(hinge, foot)
    aside = (-(foot[1] - hinge[1]) / length * half, (foot[0] - hinge[0]) / length * half)
    knee = (hinge[0] + (foot[0] - hinge[0]) * 0.72, hinge[1] + (foot[1] - hinge[1]) * 0.72)
    return (
        (hinge[0] + aside[0], hinge[1] + aside[1]),
        (knee[0] + aside[0] * 0.7, knee[1] + aside[1] * 0.7),
        foot,
        (knee[0] - aside[0] * 0.7, knee[1] - aside[1] * 0.7),
        (hinge[0] - aside[0], hinge[1] - aside[1]),
    )
