"""How much of a solid there is, where its centre lies, and how far it spreads about it.

Plain geometry over points: what an outline holds is summed along its edges, pushed along, turned into the
directions of the case, and put together with others. For straight-sided wood nothing of it is rounded.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise

from woodmath.errors import ImpossibleShape
from woodmath.moment_derivations import board_derivation, gyration_derivation, parallel_line_derivation
from woodmath.outlines import Points
from woodmath.solids import Prism, Solid, Vector

Spread = tuple[Vector, Vector, Vector]
"""Sums of products of two distances from the centre: along x, y and z with along x, y and z."""

_WAYS = (0, 1, 2)
NO_SPREAD: Spread = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.0), (0.0, 0.0, 0.0))
"""Of a body so small that it is a point."""


@dataclass(frozen=True)
class Body:
    """Something with an extent, by what matters for its balance and its turning.

    Parameters
    ----------
    amount : float
        How much of it there is: a volume in cubed length units, or a mass in kilograms; less than 0 for what is
        cut away.
    centre : Vector
        Its centre of gravity, in length units.
    spread : Spread
        Its second moments about the centre, in the amount's unit times squared length units.

    >>> Body(2.0, (0.0, 0.0, 1.0), NO_SPREAD).moment_about(0, (0.0, 3.0, 1.0))
    18.0
    """

    amount: float
    centre: Vector
    spread: Spread

    def moment(self, way: int) -> float:
        """Return the moment of inertia about the line along x (0), y (1) or z (2) through the centre."""
        return math.fsum(self.spread[other][other] for other in _WAYS if other != way)

    def moment_about(self, way: int, point: Vector) -> float:
        """Return the moment of inertia about the line along x (0), y (1) or z (2) through a point."""
        distance = math.hypot(*(self.centre[other] - point[other] for other in _WAYS if other != way))
        return parallel_line_derivation().function("moment")(
            own_moment=self.moment(way), mass=self.amount, distance=distance
        )

    def gyration_radius(self, way: int) -> float:
        """Return the gyration radius about the line along x (0), y (1) or z (2) through the centre."""
        moment = self.moment(way)
        # A body that is a point on its line has none, and the rule knows no radius of nothing.
        if moment == 0:
            return 0.0
        return gyration_derivation().function("gyration_radius")(moment=moment, mass=self.amount)

    def times(self, factor: float) -> Body:
        """Return the body with so many times as much in the same place, as a density makes mass of a volume."""
        return Body(self.amount * factor, self.centre, _spread(lambda i, j: self.spread[i][j] * factor))

    def mirrored(self, axis: int) -> Body:
        """Return it in a mirror that stands square to x (0) or y (1) through the middle of the case."""
        signs = [-1.0 if way == axis else 1.0 for way in _WAYS]
        x, y, z = (value * sign for value, sign in zip(self.centre, signs, strict=True))
        return Body(self.amount, (x, y, z), _spread(lambda i, j: self.spread[i][j] * signs[i] * signs[j]))


def outline_moments(outline: Points) -> tuple[float, tuple[float, float], tuple[float, float, float]]:
    """Return the area of an outline, its centroid, and its second moments about the centroid.

    Parameters
    ----------
    outline : tuple of (float, float)
        Its corners in order, either way round.

    Returns
    -------
    (float, (float, float), (float, float, float))
        In squared units; in units; and across with across, across with up, up with up, in units to the fourth.

    Raises
    ------
    ImpossibleShape
        If it encloses nothing.

    Source: Green's theorem: what lies between the first corner and each edge is a triangle.

    >>> outline_moments(((0, 0), (6, 0), (6, 2), (0, 2)))
    (12.0, (3.0, 1.0), (36.0, 0.0, 4.0))
    """
    start_p, start_q = outline[0]
    # From the first corner, so that nothing is lost where an outline lies far from where it is measured.
    corners = [(p - start_p, q - start_q) for p, q in outline]
    twice = [x * t - s * y for (x, y), (s, t) in pairwise((*corners, corners[0]))]
    edges = list(zip(twice, corners, (*corners[1:], corners[0]), strict=True))
    area = math.fsum(twice) / 2
    if area == 0:
        raise ImpossibleShape(
            "An outline encloses nothing: its corners lie on one line. Give it a length and a width."
        )
    p = math.fsum(c * (x + s) for c, (x, _), (s, _) in edges) / (6 * area)
    q = math.fsum(c * (y + t) for c, (_, y), (_, t) in edges) / (6 * area)
    pp = math.fsum(c * (x * x + x * s + s * s) for c, (x, _), (s, _) in edges) / 12
    qq = math.fsum(c * (y * y + y * t + t * t) for c, (_, y), (_, t) in edges) / 12
    pq = math.fsum(c * (2 * x * y + x * t + s * y + 2 * s * t) for c, (x, y), (s, t) in edges) / 24
    sign = math.copysign(1.0, area)
    about = (sign * (pp - area * p * p), sign * (pq - area * p * q), sign * (qq - area * q * q))
    return abs(area), (start_p + p, start_q + q), about


def prism_body(prism: Prism) -> Body:
    """Return the volume of a prism, its centre and its second moments.

    Parameters
    ----------
    prism : Prism
        With an outline that encloses something.

    Returns
    -------
    Body
        In the directions of the case, its amount in cubed length units.

    Raises
    ------
    ImpossibleShape
        If it holds nothing.

    Source: `outline_moments`; along it, a prism is a board (`woodmath.moment_derivations.board_derivation`).

    >>> from woodmath.case_solids import ALONG_X
    >>> prism_body(Prism(ALONG_X, ((0, 0), (3, 0), (3, 3), (0, 3)), 0, 4)).centre
    (2.0, 1.5, 1.5)
    """
    area, (p, q), (pp, pq, qq) = outline_moments(prism.outline)
    length = prism.end - prism.start
    gyration = board_derivation().function("gyration_radius")(breadth=length)
    across, up, along = prism.axes.across, prism.axes.up, prism.axes.along
    rr = area * gyration * gyration

    def turned(i: int, j: int) -> float:
        return length * (
            pp * across[i] * across[j]
            + pq * (across[i] * up[j] + up[i] * across[j])
            + qq * up[i] * up[j]
            + rr * along[i] * along[j]
        )

    centre = prism.axes.point(p, q, (prism.start + prism.end) / 2)
    return Body(area * length, centre, _spread(turned))


def solid_body(solid: Solid) -> Body:
    """Return the volume of a solid, its centre and its second moments: what is added less what is removed.

    Parameters
    ----------
    solid : Solid
        With more added than removed.

    Returns
    -------
    Body
        In the directions of the case, its amount in cubed length units.

    Raises
    ------
    ImpossibleShape
        If nothing is left of it.

    Source: `together`.

    >>> from woodmath.case_solids import ALONG_X
    >>> board = Prism(ALONG_X, ((0, 0), (4, 0), (4, 2), (0, 2)), 0, 1)
    >>> half = Prism(ALONG_X, ((2, 0), (4, 0), (4, 2), (2, 2)), 0, 1)
    >>> solid_body(Solid((board,), (half,))).centre
    (0.5, 1.0, 1.0)
    """
    return together(
        (*map(prism_body, solid.added), *(prism_body(each).times(-1.0) for each in solid.removed))
    )


def together(bodies: Iterable[Body]) -> Body:
    """Return several bodies as one.

    Parameters
    ----------
    bodies : iterable of Body
        All in the same units; what is cut away counts with an amount less than 0.

    Returns
    -------
    Body
        Their amounts together, their common centre, their spread about it.

    Raises
    ------
    ImpossibleShape
        If there is nothing.

    Source: the rule of the parallel line (`woodmath.moment_derivations.parallel_line_derivation`), in all
    directions at once.

    >>> together((Body(1.0, (0.0, 0.0, 0.0), NO_SPREAD), Body(3.0, (0.0, 4.0, 0.0), NO_SPREAD))).centre
    (0.0, 3.0, 0.0)
    """
    each = tuple(bodies)
    amount = math.fsum(body.amount for body in each)
    if amount <= 0:
        raise ImpossibleShape("There is nothing to weigh: put in at least one body with wood in it.")
    x, y, z = (math.fsum(body.amount * body.centre[way] for body in each) / amount for way in _WAYS)
    centre = (x, y, z)

    def about(i: int, j: int) -> float:
        return math.fsum(
            body.spread[i][j] + body.amount * (body.centre[i] - centre[i]) * (body.centre[j] - centre[j])
            for body in each
        )

    return Body(amount, centre, _spread(about))


def _spread(entry: Callable[[int, int], float]) -> Spread:
    xx, xy, xz, yy, yz, zz = (entry(i, j) for i, j in ((0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2)))
    return ((xx, xy, xz), (xy, yy, yz), (xz, yz, zz))
