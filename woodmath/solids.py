"""Solids of straight-sided wood: outlines pushed along a direction, put together and cut out of one another.

Plain geometry over points. A part is what was added less what was taken away; its volume is exact as long as
nothing is added twice and nothing is taken twice, which is how the parts of a piece are built up.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise

from woodmath.outlines import Points, rectangle

Vector = tuple[float, float, float]
"""Along x (the sides), y (the ends) and z (upward)."""


_ROUNDING = 1e-9
"""Rectangles thinner than this part of the whole are the computer's rounding, not wood."""


def dot(one: Vector, other: Vector) -> float:
    """Return the scalar product of two vectors.

    Parameters
    ----------
    one, other : Vector
        In any unit.

    Returns
    -------
    float
        In the units' product.

    >>> dot((1, 2, 3), (0, 1, 1))
    5
    """
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


@dataclass(frozen=True)
class Axes:
    """Three directions square to one another, and the point that they start from.

    Parameters
    ----------
    origin : Vector
        In length units.
    across, up, along : Vector
        Of length 1: an outline lies in the first two and is pushed along the third.

    >>> Axes((1, 0, 0), (0, 1, 0), (0, 0, 1), (1, 0, 0)).point(2, 3, 4)
    (5, 2, 3)
    """

    origin: Vector
    across: Vector
    up: Vector
    along: Vector

    def point(self, p: float, q: float, r: float) -> Vector:
        """Return the point so far across, up and along."""
        x, y, z = (
            o + p * a + q * u + r * g
            for o, a, u, g in zip(self.origin, self.across, self.up, self.along, strict=True)
        )
        return (x, y, z)

    def within(self, point: Vector) -> Vector:
        """Return how far across, up and along a point lies."""
        x, y, z = (there - here for there, here in zip(point, self.origin, strict=True))
        moved = (x, y, z)
        return (dot(moved, self.across), dot(moved, self.up), dot(moved, self.along))

    def mirrored(self, axis: int) -> Axes:
        """Return the axes in a mirror that stands square to x (0) or y (1) through the middle of the case."""

        def turned(vector: Vector) -> Vector:
            x, y, z = (-value if place == axis else value for place, value in enumerate(vector))
            return (x, y, z)

        return Axes(turned(self.origin), turned(self.across), turned(self.up), turned(self.along))


@dataclass(frozen=True)
class Prism:
    """An outline pushed along a direction square to it.

    Parameters
    ----------
    axes : Axes
        The outline lies across and up.
    outline : tuple of (float, float)
        Its corners in order, at least three.
    start, end : float
        Where it begins and ends along, start less than end.

    >>> from woodmath.outlines import rectangle
    >>> LEVEL = Axes((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1))
    >>> Prism(LEVEL, rectangle(0, 0, 2, 3), 0, 4).volume
    24.0
    """

    axes: Axes
    outline: Points
    start: float
    end: float

    @property
    def volume(self) -> float:
        """What it holds, in cubed length units."""
        return area(self.outline) * (self.end - self.start)

    @property
    def corners(self) -> tuple[Vector, ...]:
        """Every corner of both ends."""
        return tuple(self.axes.point(p, q, r) for r in (self.start, self.end) for p, q in self.outline)

    def holds(self, point: Vector) -> bool:
        """Tell whether a point lies inside."""
        p, q, r = self.axes.within(point)
        return self.start < r < self.end and _inside(self.outline, p, q)

    def mirrored(self, axis: int) -> Prism:
        """Return it in a mirror that stands square to x (0) or y (1) through the middle of the case."""
        return replace(self, axes=self.axes.mirrored(axis))


@dataclass(frozen=True)
class Solid:
    """A part of wood: what it is built up of, less what is cut out of it.

    Parameters
    ----------
    added : tuple of Prism
        None of them overlaps another.
    removed : tuple of Prism
        None of them overlaps another; each lies wholly in what is added.

    >>> from woodmath.outlines import rectangle
    >>> LEVEL = Axes((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1))
    >>> board = Prism(LEVEL, rectangle(0, 0, 8, 4), 0, 1)
    >>> hole = Prism(LEVEL, rectangle(1, 1, 2, 2), 0, 1)
    >>> Solid((board,), (hole,)).volume
    31.0
    """

    added: tuple[Prism, ...]
    removed: tuple[Prism, ...] = ()

    @property
    def volume(self) -> float:
        """What wood there is, in cubed length units."""
        return math.fsum(each.volume for each in self.added) - math.fsum(each.volume for each in self.removed)

    def holds(self, point: Vector) -> bool:
        """Tell whether there is wood at a point."""
        return any(each.holds(point) for each in self.added) and not any(
            each.holds(point) for each in self.removed
        )

    def extent(self, direction: Vector) -> tuple[float, float]:
        """Return where it begins and ends along a direction of length 1, in length units."""
        places = [dot(corner, direction) for each in self.added for corner in each.corners]
        return min(places), max(places)

    def mirrored(self, axis: int) -> Solid:
        """Return it in a mirror that stands square to x (0) or y (1) through the middle of the case."""
        return Solid(
            tuple(each.mirrored(axis) for each in self.added),
            tuple(each.mirrored(axis) for each in self.removed),
        )


def area(outline: Points) -> float:
    """Return the area of an outline.

    Parameters
    ----------
    outline : tuple of (float, float)
        Its corners in order, either way round.

    Returns
    -------
    float
        In squared length units, 0 or more.

    >>> area(((0, 0), (4, 0), (0, 3)))
    6.0
    """
    return abs(math.fsum(x * t - s * y for (x, y), (s, t) in pairwise((*outline, outline[0])))) / 2


def apart(one: Points, other: Points) -> tuple[Points, ...]:
    """Return upright rectangles that cover one rectangle where the other does not.

    Parameters
    ----------
    one, other : tuple of (float, float)
        Rectangles with sides along the axes, as `rectangle` gives them or in any order.

    Returns
    -------
    tuple of outlines
        None when the other covers the first, up to four, none overlapping another.

    >>> apart(rectangle(0, 0, 4, 1), rectangle(1, 0, 2, 5))
    (((0, 0), (1, 0), (1, 1), (0, 1)), ((2, 0), (4, 0), (4, 1), (2, 1)))
    """
    left, bottom, right, top = _sides(one)
    other_left, other_bottom, other_right, other_top = _sides(other)
    inner_left, inner_right = max(left, other_left), min(right, other_right)
    inner_bottom, inner_top = max(bottom, other_bottom), min(top, other_top)
    if inner_left >= inner_right or inner_bottom >= inner_top:
        return (rectangle(left, bottom, right, top),)
    pieces = (
        (left, bottom, inner_left, top),
        (inner_right, bottom, right, top),
        (inner_left, bottom, inner_right, inner_bottom),
        (inner_left, inner_top, inner_right, top),
    )
    thin = _ROUNDING * max(right - left, top - bottom)
    return tuple(
        rectangle(*sides) for sides in pieces if sides[2] - sides[0] > thin and sides[3] - sides[1] > thin
    )


def _sides(outline: Points) -> tuple[float, float, float, float]:
    acrosses, ups = zip(*outline, strict=True)
    return min(acrosses), min(ups), max(acrosses), max(ups)


def _inside(outline: Points, p: float, q: float) -> bool:
    crossings = 0
    for (x, y), (s, t) in pairwise((*outline, outline[0])):
        if (y > q) != (t > q) and p < x + (q - y) * (s - x) / (t - y):
            crossings += 1
    return crossings % 2 == 1
