"""From square stock to a round: square to octagon, to sixteen flats, to round, and a top turned on the post.

The same length is set off along both flats from every corner, and what lies beyond the line is planed away. Each
doubling of the flats leaves about a quarter of what stood beyond the round.
"""

from __future__ import annotations

import math

from woodmath.errors import ImpossibleShape
from woodmath.largest_round import BestRound, best_round, largest_round
from woodmath.outlines import Points
from woodmath.turned_profile import CaliperSetting, Station, TurnedProfile
from woodmath.turning_derivations import (
    OCTAGON_SIDES,
    SIXTEEN_SIDES,
    SQUARE_SIDES,
    compass_derivation,
    corner_derivation,
    doubling_derivation,
    flat_derivation,
    octagon_derivation,
    off_centre_derivation,
    sixteen_derivation,
)

__all__ = [
    "OCTAGON_SIDES",
    "SIXTEEN_SIDES",
    "SQUARE_SIDES",
    "BestRound",
    "CaliperSetting",
    "Station",
    "TurnedProfile",
    "best_round",
    "compass_derivation",
    "corner_beyond_round",
    "corner_derivation",
    "doubling_derivation",
    "doubling_setting",
    "flat_derivation",
    "flat_of",
    "largest_round",
    "octagon_derivation",
    "octagon_setting",
    "off_centre_derivation",
    "polygon",
    "sixteen_derivation",
    "sixteen_setting",
]

FEWEST_SIDES = 3


def octagon_setting(square: float) -> float:
    """How far from each corner of a square the line lies to which the octagon is planed.

    Parameters
    ----------
    square : float
        Side of the square, > 0, in any length unit.

    Returns
    -------
    float
        The gauge's setting, from the corner along the side, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the side is not a positive number.

    Source: `octagon_derivation`.

    >>> round(octagon_setting(1.75), 4)
    0.5126
    """
    return octagon_derivation().function("set_off")(square=square)


def sixteen_setting(square: float) -> float:
    """How far from each corner of the octagon the line lies to which sixteen flats are planed.

    Parameters
    ----------
    square : float
        Side of the square that the octagon was planed from, > 0, in any length unit.

    Returns
    -------
    float
        From the corner along the octagon's flat, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the side is not a positive number.

    Source: `sixteen_derivation`.

    >>> round(sixteen_setting(1.75), 4)
    0.1884
    """
    return sixteen_derivation().function("set_off")(square=square)


def doubling_setting(sides: int, flat: float) -> float:
    """How far from each corner of a regular section the line lies that gives it twice as many flats.

    Parameters
    ----------
    sides : int
        How many flats it has now, 3 or more.
    flat : float
        Width of each, > 0, in any length unit.

    Returns
    -------
    float
        From the corner along the flat, in the same unit.

    Raises
    ------
    ImpossibleShape
        If there are fewer than three flats, or their width is not a positive number.

    Source: `doubling_derivation`.

    >>> round(doubling_setting(3, 3.0), 9)
    1.0
    """
    return doubling_derivation().function("set_off")(sides=_counted(sides), flat=flat)


def flat_of(sides: int, across_flats: float) -> float:
    """Width of each flat of a regular section.

    Parameters
    ----------
    sides : int
        How many flats it has, an even number of 4 or more: otherwise none lies opposite another.
    across_flats : float
        From one flat to the flat opposite, > 0, in any length unit.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If the number of flats is odd or too small, or the width is not a positive number.

    Source: `flat_derivation`.

    >>> round(flat_of(8, 1.75), 4)
    0.7249
    """
    if _counted(sides) % 2:
        raise ImpossibleShape(
            f"A section of {sides} flats has a corner opposite each flat, so nothing can be measured across its "
            "flats. Give an even number of them."
        )
    return flat_derivation().function("flat")(sides=sides, across_flats=across_flats)


def corner_beyond_round(sides: int, diameter: float) -> float:
    """How far each corner of a regular section stands beyond the round that touches its flats.

    Parameters
    ----------
    sides : int
        How many flats it has, 3 or more.
    diameter : float
        Of the round, > 0, in any length unit.

    Returns
    -------
    float
        Measured outward from the round, in the same unit.

    Raises
    ------
    ImpossibleShape
        If there are fewer than three flats, or the diameter is not a positive number.

    Source: `corner_derivation`.

    >>> [round(corner_beyond_round(sides, 1.75), 4) for sides in (4, 8, 16)]
    [0.3624, 0.0721, 0.0171]
    """
    return corner_derivation().function("beyond")(sides=_counted(sides), diameter=diameter)


def polygon(sides: int, across_flats: float, turned: float = 0.0) -> Points:
    """Return the corners of a regular section about its middle, for a drawing.

    Parameters
    ----------
    sides : int
        How many flats it has, 3 or more.
    across_flats : float
        Diameter of the round that touches every flat, > 0, in any length unit.
    turned : float
        How far it is turned, in degrees counter-clockwise; at 0 one flat lies level below.

    Returns
    -------
    tuple of (float, float)
        Counter-clockwise from the right-hand end of the lowest flat.

    Raises
    ------
    ImpossibleShape
        If there are fewer than three flats, or the width is not a positive number.

    Source: `corner_derivation`: every corner lies so far beyond the round.

    >>> [(round(x, 9), round(y, 9)) for x, y in polygon(4, 2.0)]
    [(1.0, -1.0), (1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0)]
    """
    reach = across_flats / 2 + corner_beyond_round(sides, across_flats)
    step = 2 * math.pi / sides
    first = math.radians(turned) - math.pi / 2 + step / 2
    return tuple(
        (reach * math.cos(first + step * corner), reach * math.sin(first + step * corner))
        for corner in range(sides)
    )


def _counted(sides: int) -> int:
    if not isinstance(sides, int) or sides < FEWEST_SIDES:
        raise ImpossibleShape(
            f"A section of {sides:g} flats is given. Give a whole number of flats, {FEWEST_SIDES} or more."
        )
    return sides
