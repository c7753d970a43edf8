"""A pattern: a drawing to be printed at true size, with the distances by which a sheet of it is checked."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.drawing import Drawing
from woodmath.outlines import Point


@dataclass(frozen=True)
class KnownLength:
    """A distance on a pattern that can be measured on the printed sheet.

    At both ends stands a line of the drawing that crosses the way from start to end near enough square, and goes
    on beyond it by 3 mm or more on one side: the distance is measured from the middle of one line to the middle of
    the other.

    Parameters
    ----------
    name : str
        What is measured.
    start, end : (float, float)
        In the drawing's length unit.

    >>> KnownLength("between the shoulders", (0.0, 1.0), (3.0, 5.0)).length
    5.0
    """

    name: str
    start: Point
    end: Point

    @property
    def length(self) -> float:
        """How far the two ends lie apart, in the drawing's unit."""
        return math.dist(self.start, self.end)


@dataclass(frozen=True)
class Pattern:
    """A drawing to be printed at true size.

    Parameters
    ----------
    name : str
        What it is called; its file is called after it.
    drawing : Drawing
        In the piece's unit; the scale of its frame is of no account on paper.
    known_lengths : tuple of KnownLength
        What a test measures on the rendered sheet, and a maker may with a rule.

    >>> from woodmath.drawing import Frame, Line
    >>> square = Line(((0, 0), (5, 0), (5, 5), (0, 5)), closed=True)
    >>> drawing = Drawing("a square", Frame(100, 80, 0, 0, 10), (square,), "It is square.")
    >>> Pattern("Square", drawing, (KnownLength("width", (0, 2), (5, 2)),)).known_lengths[0].length
    5.0
    """

    name: str
    drawing: Drawing
    known_lengths: tuple[KnownLength, ...] = ()
