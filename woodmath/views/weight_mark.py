"""The mark of a centre of gravity: a small disc in four quarters, two of them dark, as large at every scale."""

from __future__ import annotations

from woodmath.drawing import Circle, Frame, Line, Point, arc


def weight_mark(centre: Point, frame: Frame, radius: float = 9.0) -> tuple[Line | Circle, ...]:
    """Return the mark of a centre of gravity.

    Parameters
    ----------
    centre : (float, float)
        Where it is, in length units.
    frame : Frame
        Of the picture.
    radius : float
        Of the disc, in picture units, > 0.

    Returns
    -------
    tuple of Line and Circle
        For a drawing, or for a body that moves in it.

    Source: the usual sign of mechanics drawings (common practice).

    >>> [shape.fill for shape in weight_mark((0.0, 0.0), Frame(100, 100, 0.0, 0.0, 1.0))]
    ['paper', 'ink', 'ink']
    """
    size = frame.length(radius)
    quarters = (
        Line((centre, *arc(centre, size, start, start + 90.0, 6)), "edge", True, "ink")
        for start in (0.0, 180.0)
    )
    return (Circle(centre, size, "edge", "paper"), *quarters)
