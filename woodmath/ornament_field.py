"""The field that an ornament may fill: a panel's trapezium inside its margins, and the largest circle in it."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.ornament_fitting_derivations import (
    between_edges,
    corner_run,
    half_corner_derivation,
    in_the_corners,
    level_margin,
)
from woodmath.ornament_strokes import RuledLine, Stroke
from woodmath.outlines import Point, Points
from woodmath.splay import SplayedPanel

_ROUNDING = 1e-12


@dataclass(frozen=True)
class LargestCircle:
    """The largest circle in a field, and what keeps it from being larger.

    Parameters
    ----------
    centre : (float, float)
        On the field's middle line.
    radius : float
        In the field's unit.
    limited_by : {"lower and upper edge", "the two sides"}
        What it touches: the lower and the upper edge, or both leaning edges and the longer level one.

    >>> LargestCircle((0.0, 2.0), 2.0, "lower and upper edge").radius
    2.0
    """

    centre: Point
    radius: float
    limited_by: str


@dataclass(frozen=True)
class Field:
    """A trapezium with two level edges, alike on both sides of an upright middle line at 0.

    Parameters
    ----------
    bottom, top : float
        Lengths of the lower and the upper edge, > 0.
    height : float
        From the one up to the other, > 0.
    low : float
        Where the lower edge lies.

    Raises
    ------
    ImpossibleShape
        If a length is not a positive number.

    >>> field = Field(bottom=10.0, top=12.0, height=6.0).inside_margin(1.0)
    >>> round(field.bottom, 3), field.height, field.low
    (8.306, 4.0, 1.0)
    """

    bottom: float
    top: float
    height: float
    low: float = 0.0

    def __post_init__(self) -> None:
        """Refuse sizes that are no panel's."""
        SplayedPanel(top=self.top, bottom=self.bottom, height=self.height)

    @property
    def splay(self) -> float:
        """Lean of the leaning edges, in degrees from upright; less than 0 where the field is narrower above."""
        return SplayedPanel(top=self.top, bottom=self.bottom, height=self.height).splay

    @property
    def high(self) -> float:
        """Where the upper edge lies."""
        return self.low + self.height

    @property
    def corners(self) -> Points:
        """Counter-clockwise from the lower left."""
        half_bottom, half_top = self.bottom / 2, self.top / 2
        return (
            (-half_bottom, self.low),
            (half_bottom, self.low),
            (half_top, self.high),
            (-half_top, self.high),
        )

    @property
    def half_corners(self) -> tuple[float, float, float, float]:
        """Half the angle at each corner, in degrees, in the order of `corners`."""
        half = half_corner_derivation().function("half_corner")
        lower, upper = half(splay=-self.splay), half(splay=self.splay)
        return (lower, lower, upper, upper)

    def width_at(self, up: float) -> float:
        """Return the width at a level, counted from where `low` is counted from.

        Parameters
        ----------
        up : float
            In the field's unit.

        Returns
        -------
        float
            Measured level.
        """
        panel = SplayedPanel(top=self.top, bottom=self.bottom, height=self.height)
        return panel.width_at(up - self.low)

    def inside(self, point: Point, slack: float = 0.0) -> bool:
        """Tell whether a point lies in the field, or outside it by no more than so much.

        Parameters
        ----------
        point : (float, float)
            Across from the middle line, and up.
        slack : float
            Square to the edge, 0 or more.

        Returns
        -------
        bool
            On an edge counts as inside.
        """
        return self.clear_of_edges(point) >= -slack

    def clear_of_edges(self, point: Point) -> float:
        """Return how far a point stands from the nearest edge, square to it; less than 0 outside the field.

        Parameters
        ----------
        point : (float, float)
            Across from the middle line, and up.

        Returns
        -------
        float
            In the field's unit.
        """
        return self.least_clear((RuledLine(point, point),))

    def least_clear(self, strokes: Iterable[Stroke]) -> float:
        """Return how far the stroke that comes nearest to an edge stays from it; less than 0 where one goes outside.

        Parameters
        ----------
        strokes : iterable of strokes
            One or more, across from the middle line, and up.

        Returns
        -------
        float
            Square to the edge, in the field's unit; exact, for an arc too.
        """
        corners, drawn = self.corners, tuple(strokes)
        found = math.inf
        for (from_x, from_y), (to_x, to_y) in zip(corners, (*corners[1:], corners[0]), strict=True):
            length = math.hypot(to_x - from_x, to_y - from_y)
            inward = (-(to_y - from_y) / length, (to_x - from_x) / length)
            begin = inward[0] * from_x + inward[1] * from_y
            found = min(found, min(stroke.least_along(inward) for stroke in drawn) - begin)
        return found

    def inside_margin(self, margin: float) -> Field:
        """Return the field that a margin leaves, measured square to each edge.

        Parameters
        ----------
        margin : float
            The same all round, 0 or more.

        Returns
        -------
        Field
            With the same lean.

        Raises
        ------
        ImpossibleShape
            If the margin is less than 0, or leaves no field.

        Source: `woodmath.ornament_fitting_derivations.level_margin`.
        """
        if margin == 0:
            return self
        level = level_margin().function("level")(margin=margin, splay=self.splay)
        height = self.height - 2 * margin
        if height <= 0:
            raise self._no_room(margin, self.height / 2)
        bottom = self.width_at(self.low + margin) - 2 * level
        top = self.width_at(self.high - margin) - 2 * level
        for whole, left in ((self.bottom, bottom), (self.top, top)):
            if left <= 0:
                raise self._no_room(margin, margin * whole / (whole - left))
        return Field(bottom, top, height, self.low + margin)

    def corner_runs(self, margin: float) -> tuple[float, float, float, float]:
        """Return how much of either edge each corner takes where a border of that height is mitred round it.

        Parameters
        ----------
        margin : float
            The border's height, > 0.

        Returns
        -------
        tuple of float
            In the order of `corners`.

        Source: `woodmath.ornament_fitting_derivations.corner_run`.
        """
        run = corner_run().function("run")
        lower, _, upper, _ = (run(margin=margin, half_corner=half) for half in self.half_corners)
        return (lower, lower, upper, upper)

    @property
    def largest_circle(self) -> LargestCircle:
        """The largest circle that has room.

        Between the level edges its diameter is the height. Where the leaning edges leave less than that, it touches
        both of them and the longer of the level edges.
        """
        level = between_edges().function("radius")(height=self.height)
        longer, half_corner = max((self.bottom, self.half_corners[0]), (self.top, self.half_corners[2]))
        leaning = in_the_corners().function("radius")(half_edge=longer / 2, half_corner=half_corner)
        if level <= leaning * (1 + _ROUNDING):
            return LargestCircle((0.0, self.low + level), level, "lower and upper edge")
        centre = self.high - leaning if self.top >= self.bottom else self.low + leaning
        return LargestCircle((0.0, centre), leaning, "the two sides")

    def _no_room(self, margin: float, most: float) -> ImpossibleShape:
        return ImpossibleShape(
            f"Margins of {margin:.4g} leave no room on a panel {self.bottom:.4g} wide below, {self.top:.4g} above and "
            f"{self.height:.4g} high. Make them less than {most:.4g}, or choose a larger panel."
        )
