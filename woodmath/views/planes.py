"""A wooden plane as it goes along an edge: its body, its iron at 45 degrees, and the shaving that comes up."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from woodmath.drawing import Frame, Line, Points, Shape, Wood

_AHEAD, _BEHIND = 74.0, 78.0
_SOLE_TO_TOP = 44.0
_IRON = 86.0
_THICK = 6.0
_HALF_RIGHT = math.sqrt(0.5)
_TIMES = 1.45
"""How much larger the plane is drawn than its sizes here."""


@dataclass(frozen=True)
class Cut:
    """A stroke of a plane along an edge, in picture units from the left.

    Parameters
    ----------
    upward : bool
        Whether it goes to the right in the picture, which is up along the edge.
    iron : float
        Where the cutting edge stands.
    depth : float
        Of the shaving, drawn much thicker than it is.
    torn : bool
        Whether it goes against the grain.

    >>> Cut(True, 50.0, 5.0, False).way
    1.0
    """

    upward: bool
    iron: float
    depth: float
    torn: bool

    @property
    def way(self) -> float:
        """1 to the right, -1 to the left."""
        return 1.0 if self.upward else -1.0


def plane_at_work(cut: Cut, edge: float, frame: Frame) -> Iterator[Shape]:
    """Yield a plane on an edge.

    Parameters
    ----------
    cut : Cut
        Its stroke.
    edge : float
        Where the edge lies before it is planed, in picture units from the top.
    frame : Frame
        Of the picture.

    Yields
    ------
    Shape
        Its body in two parts, iron, wedge and shaving.
    """

    def at(along: float, up: float) -> tuple[float, float]:
        return frame.at(cut.iron + cut.way * _TIMES * along, edge - _TIMES * up)

    def placed(points: Points) -> Points:
        return tuple(at(*point) for point in points)

    top, low = _SOLE_TO_TOP, -cut.depth / _TIMES
    behind = ((-2.0, low), (low - 2.0 - top, top), (-_BEHIND, top), (-_BEHIND, low))
    # The mouth opens upward before the iron, so that the shaving finds its way out.
    before = ((7.0, 0.0), (_AHEAD, 0.0), (_AHEAD, 0.6 * top), (_AHEAD - 12.0, top), (1.0, top))
    slope = _IRON * _HALF_RIGHT
    across = _THICK * _HALF_RIGHT
    iron = (
        (0.0, low),
        (-slope, low + slope),
        (-slope - across, low + slope - across),
        (-2 * across, low),
    )
    yield Wood(placed(behind), "post", "long", 0.0, line="edge")
    yield Wood(placed(before), "post", "long", 0.0, line="edge")
    yield Line(placed(iron), "edge", True, "steel")
    yield Line(placed(tuple(_shaving(cut))), "accent" if cut.torn else "string")


def _shaving(cut: Cut) -> Iterator[tuple[float, float]]:
    """Yield the shaving from the iron up through the mouth, curled where it is whole, broken where it tears."""
    yield (3.0, -0.4 * cut.depth)
    if cut.torn:
        for step in range(9):
            up = 4.0 + 7.5 * step
            yield (3.0 - 0.62 * up + (3.5 if step % 2 else -3.5), up)
        return
    yield (-8.0, 14.0)
    yield (-26.0, 40.0)
    centre, turns = (-23.0, 66.0), 1.6
    for step in range(41):
        part = step / 40
        radius = 20.0 * (1 - 0.72 * part)
        angle = math.radians(-90.0 + 360.0 * turns * part)
        yield (centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle))
