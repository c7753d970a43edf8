"""The sloping edge of an end, by itself: places up along it, and outward square to it or level."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

from woodmath.drawing import Point
from woodmath.tenon_fibres import cut_through_derivation


@dataclass(frozen=True)
class EdgeAslant:
    """An edge that leans outward above, the panel to its left; it goes through (0, 0).

    Parameters
    ----------
    splay : float
        Lean from upright, in degrees.

    >>> EdgeAslant(0.0).at(2.0, 1.0)
    (1.0, 2.0)
    """

    splay: float

    @functools.cached_property
    def _up(self) -> Point:
        lean = math.radians(self.splay)
        return (math.sin(lean), math.cos(lean))

    def at(self, up: float, out: float = 0.0) -> Point:
        """Return the place so far up along the edge, and outward square to it."""
        (x, y) = self._up
        return (up * x + out * y, up * y - out * x)

    def level_rise(self, out: float) -> float:
        """Return how far up along the edge a level line gets while it goes outward, square to the edge."""
        return cut_through_derivation().function("cut_through")(reach=out, splay=self.splay)

    def level(self, up: float, out: float) -> Point:
        """Return the place to which a level line comes from a place of the edge, so far outward square to it."""
        return self.at(up + self.level_rise(out), out)
