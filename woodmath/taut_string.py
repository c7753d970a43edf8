"""How long a string is that is pulled tight round discs, such as two pins and a pencil of another thickness.

From every direction one disc reaches furthest and holds the string; the reaches of all directions, added up
over one full turn, are the string's length.
"""

from __future__ import annotations

import itertools
import math

from woodmath.errors import ImpossibleShape


def string_round_discs(*discs: tuple[float, float, float]) -> float:
    """Length of a string pulled tight round discs that lie flat on the board.

    Seen from each direction, the disc that reaches furthest holds the string, and so the string's length is
    the sum of the furthest reaches over all directions of one full turn (Cauchy's rule for the length of a
    convex outline). Between two directions in which the lead changes, that sum has a closed form.

    Parameters
    ----------
    *discs : tuple of three floats
        Across, up and diameter of each disc, in one length unit; diameters 0 or more.

    Returns
    -------
    float
        Length once round, in the same unit.

    Raises
    ------
    ImpossibleShape
        If a diameter is less than 0 or a number is not finite.

    Source: Cauchy, the length of a convex curve as the mean of its widths (from memory).

    >>> round(string_round_discs((0, 0, 2), (10, 0, 2)), 4)
    26.2832
    """
    for across, up, diameter in discs:
        if not (math.isfinite(across) and math.isfinite(up) and math.isfinite(diameter) and diameter >= 0):
            raise ImpossibleShape(
                f"A disc of diameter {diameter:g} at {across:g} across and {up:g} up cannot lie on the "
                "board. Give plain numbers, and a diameter of 0 or more."
            )
    turns = [0.0, math.tau]
    for place, (across, up, diameter) in enumerate(discs):
        for other_across, other_up, other_diameter in discs[:place]:
            apart = math.hypot(other_across - across, other_up - up)
            ahead = (diameter - other_diameter) / 2
            if apart > abs(ahead):
                towards = math.atan2(other_up - up, other_across - across)
                half = math.acos(ahead / apart)
                turns += [(towards - half) % math.tau, (towards + half) % math.tau]
    turns.sort()
    return math.fsum(_furthest_reach(discs, begin, end) for begin, end in itertools.pairwise(turns))


def _furthest_reach(discs: tuple[tuple[float, float, float], ...], begin: float, end: float) -> float:
    """Sum the reach of the one disc that lies furthest out over all directions from `begin` to `end`."""
    middle = (begin + end) / 2
    across, up, diameter = max(
        discs, key=lambda disc: disc[0] * math.cos(middle) + disc[1] * math.sin(middle) + disc[2] / 2
    )
    sideways = across * (math.sin(end) - math.sin(begin)) + up * (math.cos(begin) - math.cos(end))
    return sideways + diameter / 2 * (end - begin)
