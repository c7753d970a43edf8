"""The largest round that a stick holds: about a centre that is marked already, and about the best there is.

A section is convex: stock that is out of square, or planed to more on one side than on the other. From any point
inside, the nearest edge stops the round. The best centre has three edges equally near.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point, Points

_HAIR = 1e-9
"""Of the section's size: nearer than this, two distances are the same."""

_Edge = tuple[float, float, float]
"""(a, b, c): the distance inward of (x, y) from an edge is a x + b y + c."""


@dataclass(frozen=True)
class BestRound:
    """The largest round that a section holds.

    Parameters
    ----------
    centre : (float, float)
        Where it is turned about, in length units.
    diameter : float
        Of the round, > 0.

    >>> best_round(((0, 0), (2, 0), (2, 1), (0, 1))).diameter
    1.0
    """

    centre: Point
    diameter: float


def largest_round(outline: Points, centre: Point) -> float:
    """Diameter of the largest round that a section holds about a marked centre.

    Parameters
    ----------
    outline : tuple of (float, float)
        Corners of the section in order, convex, at least three, in any length unit.
    centre : (float, float)
        Where the lathe's centres are to bite.

    Returns
    -------
    float
        Twice the distance from the centre to the nearest edge, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the section is not convex, encloses nothing, or the centre does not lie within it.

    Source: plane geometry: the way from a point to a line is shortest square to it.

    >>> largest_round(((0, 0), (2, 0), (2, 2), (0, 2)), (0.75, 1.0))
    1.5
    """
    edges, size = _edges(outline)
    nearest = min(_inward(edge, centre) for edge in edges)
    if nearest <= _HAIR * size:
        raise ImpossibleShape(
            f"The centre ({centre[0]:g}, {centre[1]:g}) does not lie within the section, so nothing can be turned "
            "about it. Mark it inside."
        )
    return 2 * nearest


def best_round(outline: Points) -> BestRound:
    """Return the largest round that a section holds, and the centre to turn it about.

    Parameters
    ----------
    outline : tuple of (float, float)
        Corners of the section in order, convex, at least three, in any length unit.

    Returns
    -------
    BestRound
        In the same unit. Where rounds of that size have room to move, as in a board, the middle of their room.

    Raises
    ------
    ImpossibleShape
        If the section is not convex or encloses nothing.

    Source: plane geometry: the largest circle in a convex outline touches three of its edges, or two parallel
    ones; the centre at equal distance from three lines is found for every three edges in turn (Euclid,
    *Elements* IV. 4, for a triangle).

    >>> slanted = best_round(((0.0, 0.0), (2.0, 0.0), (1.5, 2.0), (0.0, 2.0)))
    >>> round(slanted.diameter, 4), round(slanted.centre[0], 4)
    (1.7538, 0.8769)
    """
    edges, size = _edges(outline)
    found: list[tuple[float, Point]] = []
    for three in itertools.combinations(edges, 3):
        centre = _equally_far(three)
        if centre is not None:
            found.append((min(_inward(edge, centre) for edge in edges), centre))
    most = max(radius for radius, _ in found)
    # Several centres as good as one another are the ends of the room that such a round has.
    best = [centre for radius, centre in found if radius >= most - _HAIR * size]
    low_x, high_x = min(x for x, _ in best), max(x for x, _ in best)
    low_y, high_y = min(y for _, y in best), max(y for _, y in best)
    middle = ((low_x + high_x) / 2, (low_y + high_y) / 2)
    return BestRound(middle if _is_as_good(edges, middle, most, size) else best[0], 2 * most)


def _is_as_good(edges: list[_Edge], centre: Point, radius: float, size: float) -> bool:
    return min(_inward(edge, centre) for edge in edges) >= radius - _HAIR * size


def _inward(edge: _Edge, point: Point) -> float:
    across, up, start = edge
    return across * point[0] + up * point[1] + start


def _edges(outline: Points) -> tuple[list[_Edge], float]:
    """Return every edge with its way inward, of length 1, and how large the section is."""
    corners = list(outline)
    size = max((math.dist(one, other) for one, other in itertools.combinations(corners, 2)), default=0.0)
    sides = list(zip(corners, (*corners[1:], *corners[:1]), strict=True))
    twice = math.fsum(x * t - s * y for (x, y), (s, t) in sides)
    if not math.isfinite(twice) or abs(twice) <= _HAIR * size * size:
        raise ImpossibleShape(
            f"A section with the corners {', '.join(f'({x:g}, {y:g})' for x, y in corners)} encloses nothing. Give at "
            "least three corners that do not lie on one line."
        )
    turn = math.copysign(1.0, twice)
    edges: list[_Edge] = []
    for (x, y), (s, t) in sides:
        length = math.hypot(s - x, t - y)
        if length <= _HAIR * size:
            continue
        across, up = turn * (y - t) / length, turn * (s - x) / length
        edges.append((across, up, -(across * x + up * y)))
    if any(_inward(edge, corner) < -_HAIR * size for edge in edges for corner in corners):
        raise ImpossibleShape(
            "The section has a hollow in it, and a round that spans a hollow cannot be turned out of it. Give the "
            "corners of a section without one, in order."
        )
    return edges, size


def _equally_far(three: tuple[_Edge, ...]) -> Point | None:
    """Return the point that lies equally far inward from three edges; None where no single point does."""
    (a, b, c), (d, e, f), (g, h, i) = three
    # Taken one from another, the three distances leave two straight lines, and they cross in the point.
    p, q, r = a - d, b - e, c - f
    s, t, u = a - g, b - h, c - i
    cross = p * t - q * s
    if abs(cross) <= _HAIR:
        return None
    return ((q * u - r * t) / cross, (r * s - p * u) / cross)
