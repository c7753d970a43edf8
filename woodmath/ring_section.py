"""What becomes of the end of a board when it dries: cupped, out of square, or split, as its rings ask for.

A ring's radius moves by the radial figure and its length by the tangential one; so it opens or closes, and the
section that was sawn out of it goes along. Seen from the heart that is all there is to cupping.
"""

from __future__ import annotations

import functools
import itertools
import math
from dataclasses import dataclass

import sympy

from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation
from woodmath.outlines import Point, Points
from woodmath.quantities import worded

_WORDS = {
    "turned": (
        r"\varphi'",
        "angle that a stretch of the ring spans afterwards, seen from the heart",
        "degrees",
        "real",
    ),
    "angle": (r"\varphi", "angle that it spanned before", "degrees", "real"),
    "radius": ("r", "of the ring before", "length", "positive"),
    "new_radius": ("r'", "of the ring afterwards", "length", "positive"),
    "ring_growth": ("e_T", "change along the ring, as a part of its length", "number", "real"),
    "ray_growth": ("e_R", "change across the rings, as a part of the radius", "number", "real"),
}
_FINE = 12
"""Stretches into which each edge of a section is cut, so that it can bend."""
_HAIR = 1e-9
"""Radians: so far beside the split its two sides begin, because on it a point would belong to either."""


@functools.cache
def ring_derivation() -> Derivation:
    """Derive how far a stretch of a growth ring opens or closes when wood moves along and across the rings.

    Returns
    -------
    Derivation
        Its result gives `turned` from `angle` (degrees), `ring_growth` and `ray_growth`, each a part of 1.

    Source: plane geometry, the length of an arc.

    >>> round(ring_derivation().function("turned")(angle=90, ring_growth=-0.08, ray_growth=-0.04), 2)
    86.25
    """
    quantities = worded(_WORDS, _WORDS)
    turned, angle, radius, new_radius, ring, ray = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "A growth ring that opens",
            quantities,
            equation(new_radius * turned, radius * angle * (1 + ring)),
            "a stretch of a ring is as long as its radius times the angle that it spans, and the wood's movement "
            "along the ring makes that length longer or shorter, whatever becomes of the radius",
            subject="turned",
            example={
                turned: sympy.Rational(23, 24) * sympy.pi / 2,
                angle: sympy.pi / 2,
                radius: 100,
                new_radius: 96,
                ring: sympy.Rational(-8, 100),
                ray: sympy.Rational(-4, 100),
            },
        )
        .then(
            Substitute(new_radius, radius * (1 + ray)),
            "the radius lies across the rings and moves by less",
        )
        .then(
            Isolate(turned),
            "the radius drops out: every ring closes alike, and a whole section closes like a fan. When wood "
            "dries, the way along the ring loses more than the way across it, so the fan closes",
        )
    )


@dataclass(frozen=True)
class RingSection:
    """The end of a board or post, where its rings lie, and what drying makes of it.

    Parameters
    ----------
    width, thickness : float
        Of the section, > 0, in any length unit; its middle is at (0, 0), its width level.
    heart : (float, float)
        Where the heart of the tree was, in the same unit and directions.
    ring_growth, ray_growth : float
        Change along and across the rings, as a part of 1; less than 0 when the wood dries.

    Raises
    ------
    ImpossibleShape
        If a size is not positive.

    >>> flat = RingSection(8.0, 1.0, (0.0, -6.0), ring_growth=-0.04, ray_growth=-0.02)
    >>> flat.cup > 0, flat.has_heart
    (True, False)
    """

    width: float
    thickness: float
    heart: Point
    ring_growth: float
    ray_growth: float

    def __post_init__(self) -> None:
        if not (self.width > 0 and self.thickness > 0):
            raise ImpossibleShape(
                f"A section {self.width:g} by {self.thickness:g} has no wood in it. Give it a width and a thickness."
            )

    @property
    def corners(self) -> Points:
        """Its corners as sawn, from the lower left round to the right."""
        x, y = self.width / 2, self.thickness / 2
        return ((-x, -y), (x, -y), (x, y), (-x, y))

    @property
    def has_heart(self) -> bool:
        """Whether the heart lies within it: then it cannot dry without splitting."""
        x, y = self.heart
        return abs(x) < self.width / 2 and abs(y) < self.thickness / 2

    @functools.cached_property
    def _way(self) -> float:
        """The direction from the heart to the middle of the section, in which it does not turn."""
        x, y = self.heart
        return math.atan2(-y, -x) if (x, y) != (0.0, 0.0) else math.pi / 2

    @functools.cached_property
    def _grown(self) -> tuple[float, float]:
        """What becomes of a radius, and of an angle seen from the heart, each as a factor."""
        turned = ring_derivation().function("turned")(
            angle=1.0, ring_growth=self.ring_growth, ray_growth=self.ray_growth
        )
        if self.has_heart and turned > 1:
            # Round its heart no ring has more than a whole turn: swollen, the wood presses on itself and only grows.
            return math.sqrt((1 + self.ring_growth) * (1 + self.ray_growth)), 1.0
        return 1 + self.ray_growth, turned

    def moved(self, point: Point) -> Point:
        """Return where a point of the section comes to lie, the middle staying where it is.

        Parameters
        ----------
        point : (float, float)
            As sawn, in the section's unit.

        Returns
        -------
        (float, float)
            In the same unit.
        """
        x, y = self._about_heart(point)
        middle_x, middle_y = self._about_heart((0.0, 0.0))
        return (x - middle_x, y - middle_y)

    def _about_heart(self, point: Point) -> Point:
        x, y = point[0] - self.heart[0], point[1] - self.heart[1]
        longer, turned = self._grown
        radius = math.hypot(x, y) * longer
        angle = math.remainder(math.atan2(y, x) - self._way, 2 * math.pi)
        angle = self._way + angle * turned
        return (radius * math.cos(angle), radius * math.sin(angle))

    @property
    def outline(self) -> Points:
        """Its outline after the movement; with the heart in it, open along the split that drying makes."""
        edges = [
            (one[0] + (other[0] - one[0]) * step / _FINE, one[1] + (other[1] - one[1]) * step / _FINE)
            for one, other in itertools.pairwise((*self.corners, self.corners[0]))
            for step in range(_FINE)
        ]
        if not self.has_heart:
            return tuple(map(self.moved, edges))
        # Begun where the split comes out, on the side of the heart that is farthest from the middle.
        out = self._split_end
        split = math.atan2(out[1] - self.heart[1], out[0] - self.heart[0])
        turns = {
            point: (math.atan2(point[1] - self.heart[1], point[0] - self.heart[0]) - split) % (2 * math.pi)
            for point in edges
        }
        placed = sorted(
            (point for point in edges if _HAIR < turns[point] < 2 * math.pi - _HAIR), key=turns.__getitem__
        )
        first, last = (self._beside_split(side * _HAIR) for side in (1.0, -1.0))
        return (self.moved(self.heart), first, *map(self.moved, placed), last)

    @property
    def _split_end(self) -> Point:
        """Where the line from the middle over the heart comes out of the section."""
        away = (math.cos(self._way + math.pi), math.sin(self._way + math.pi))
        reach = min(
            (math.copysign(half, part) - at) / part
            for at, part, half in zip(self.heart, away, (self.width / 2, self.thickness / 2), strict=True)
            if abs(part) > 1e-12
        )
        return (self.heart[0] + away[0] * reach, self.heart[1] + away[1] * reach)

    def _beside_split(self, hair: float) -> Point:
        x, y = (end - at for end, at in zip(self._split_end, self.heart, strict=True))
        turned = (
            self.heart[0] + x * math.cos(hair) - y * math.sin(hair),
            self.heart[1] + x * math.sin(hair) + y * math.cos(hair),
        )
        return self.moved(turned)

    @property
    def new_width(self) -> float:
        """From edge to edge afterwards, half way up its thickness."""
        return math.dist(self.moved((-self.width / 2, 0.0)), self.moved((self.width / 2, 0.0)))

    @property
    def cup(self) -> float:
        """How hollow its upper face has become: more than 0 hollow, less than 0 round, in the section's unit."""
        y = self.thickness / 2
        left, right = self.moved((-self.width / 2, y)), self.moved((self.width / 2, y))
        middle = self.moved((0.0, y))
        across = math.dist(left, right)
        return (
            (right[0] - left[0]) * (left[1] - middle[1]) - (left[0] - middle[0]) * (right[1] - left[1])
        ) / across

    @property
    def out_of_square(self) -> float:
        """By how much its lower left corner differs from a right angle afterwards, in degrees: open more than 0."""
        left, corner, up = (
            self.moved(point) for point in (self.corners[1], self.corners[0], self.corners[3])
        )
        one, other = (math.atan2(point[1] - corner[1], point[0] - corner[0]) for point in (left, up))
        return math.degrees(other - one) - 90.0

    def ring_as_sawn(self, radius: float, steps_round: int = 60) -> tuple[Points, ...]:
        """Return the stretches of a growth ring that lie in the section, before it has moved.

        Parameters
        ----------
        radius : float
            > 0, in the section's unit.
        steps_round : int
            Straight steps that a whole ring would have, 3 or more; every stretch has two at least.

        Returns
        -------
        tuple of tuples of (float, float)
            Empty where the ring does not meet the section.

        Raises
        ------
        ImpossibleShape
            If there is no such ring.
        """
        if not radius > 0:
            raise ImpossibleShape(
                f"A growth ring with a radius of {radius:g} cannot be drawn. Give a radius of more than 0."
            )
        heart_x, heart_y = self.heart
        crossings: list[float] = []
        for at, half, turn in ((heart_x, self.width / 2, 0.0), (heart_y, self.thickness / 2, math.pi / 2)):
            for side in (-half, half):
                part = (side - at) / radius
                if abs(part) <= 1:
                    crossings += [turn + math.acos(part), turn - math.acos(part)]
        if self.has_heart:
            # A ring that goes round the heart begins and ends at the split.
            crossings.append(self._way + math.pi)
        places = sorted({round(angle % (2 * math.pi), 12) for angle in crossings}) or [0.0]
        found: list[Points] = []
        for start, end in itertools.pairwise((*places, places[0] + 2 * math.pi)):
            x, y = self._on_ring(radius, (start + end) / 2)
            if abs(x) <= self.width / 2 and abs(y) <= self.thickness / 2 and end - start > 4 * _HAIR:
                count = max(2, math.ceil(steps_round * (end - start) / (2 * math.pi)))
                first, span = start + _HAIR, end - start - 2 * _HAIR
                steps = [first + span * step / count for step in range(count + 1)]
                found.append(tuple(self._on_ring(radius, angle) for angle in steps))
        return tuple(found)

    def _on_ring(self, radius: float, angle: float) -> Point:
        return (self.heart[0] + radius * math.cos(angle), self.heart[1] + radius * math.sin(angle))


def heart_for(rings: float, distance: float) -> Point:
    """Return where the heart lies when the rings meet a section's face at an angle in its middle.

    Parameters
    ----------
    rings : float
        Angle of the rings to the width, in degrees: 0 flat-sawn with the heart below, 90 quarter-sawn.
    distance : float
        From the section's middle to the heart, 0 or more, in any length unit.

    Returns
    -------
    (float, float)
        In the same unit.

    >>> heart_for(0.0, 5.0)
    (0.0, -5.0)
    """
    turn = math.radians(rings)
    return (0.0 - distance * math.sin(turn), -distance * math.cos(turn))
