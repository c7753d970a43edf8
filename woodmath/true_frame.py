"""The frame of a drawing that is meant for paper at true size: lettering beside it is as large as on the screen."""

from __future__ import annotations

from woodmath.drawing import Frame
from woodmath.outlines import Points
from woodmath.paper import UNITS_IN_A_MILLIMETRE
from woodmath.rule import Rule


def true_frame(points: Points, rule: Rule, margins: tuple[float, float, float, float]) -> Frame:
    """Return a frame in which a length is drawn as long as it is.

    Parameters
    ----------
    points : tuple of (float, float)
        What must be seen, in the rule's unit.
    rule : Rule
        Of the drawing's unit.
    margins : (float, float, float, float)
        Room kept at the top, right, bottom and left, in picture units.

    Returns
    -------
    Frame
        As large as what it shows.

    >>> true_frame(((0, 0), (2, 1)), Rule.inches(16), (10, 10, 10, 10)).scale
    96.0
    """
    top, right, bottom, left = margins
    scale = rule.millimetres_per_unit * UNITS_IN_A_MILLIMETRE
    low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
    low_y, high_y = min(y for _, y in points), max(y for _, y in points)
    return Frame(
        left + (high_x - low_x) * scale + right,
        top + (high_y - low_y) * scale + bottom,
        low_x - left / scale,
        low_y - bottom / scale,
        scale,
    )
