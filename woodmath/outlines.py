"""Outlines for drawings: the points of a rectangle, an arc, a board that goes on, and places kept apart."""

from __future__ import annotations

import math
from collections.abc import Sequence

Point = tuple[float, float]
Points = tuple[Point, ...]


def rectangle(left: float, bottom: float, right: float, top: float) -> Points:
    """Return the corners of a rectangle, counter-clockwise from the lower left.

    Parameters
    ----------
    left, bottom, right, top : float
        In length units.

    Returns
    -------
    tuple of (float, float)
        Four points.

    >>> rectangle(0, 0, 2, 1)
    ((0, 0), (2, 0), (2, 1), (0, 1))
    """
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def arc(centre: Point, radius: float, start: float, end: float, pieces: int = 24) -> Points:
    """Return points along an arc, from one direction to another.

    Parameters
    ----------
    centre : (float, float)
        In length units.
    radius : float
        In length units, >= 0.
    start, end : float
        Directions in degrees, counter-clockwise from level to the right.
    pieces : int
        Straight pieces that the arc is made of, >= 1.

    Returns
    -------
    tuple of (float, float)
        One point more than pieces.

    >>> [round(value, 6) for point in arc((0, 0), 1, 0, 90, 1) for value in point]
    [1.0, 0.0, 0.0, 1.0]
    """
    turns = [math.radians(start + (end - start) * step / pieces) for step in range(pieces + 1)]
    return tuple((centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns)


def break_line(start: Point, end: Point, pieces: int = 20) -> Points:
    """Return the wavy line that says: the board goes on beyond here.

    Parameters
    ----------
    start, end : (float, float)
        In length units.
    pieces : int
        Straight pieces that the wave is made of, >= 1.

    Returns
    -------
    tuple of (float, float)
        One point more than pieces.

    >>> break_line((0, 0), (0, 4))[0], break_line((0, 0), (0, 4))[-1]
    ((0.0, 0.0), (0.0, 4.0))
    """
    away = (end[0] - start[0], end[1] - start[1])
    waves = [(step / pieces, 0.04 * math.sin(2 * math.pi * step / pieces)) for step in range(pieces + 1)]
    waves[-1] = (1.0, 0.0)
    return tuple(
        (start[0] + along * away[0] - sway * away[1], start[1] + along * away[1] + sway * away[0])
        for along, sway in waves
    )


def spread(places: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Move places along a line so that each keeps a gap from the next and all stay between two bounds.

    Parameters
    ----------
    places : sequence of float
        In rising order.
    gap : float
        Least distance between neighbours, >= 0.
    low, high : float
        The bounds; when there is no room for every gap, all gaps shrink alike.

    Returns
    -------
    list of float
        As near to the given places as a push to either side allows.

    >>> spread([1.0, 1.2, 5.0], gap=1.0, low=0.0, high=6.0)
    [1.0, 2.0, 5.0]
    """
    if not places:
        return []
    room = (high - low) / max(len(places) - 1, 1)
    step = min(gap, room)
    moved = [max(places[0], low)]
    for place in places[1:]:
        moved.append(max(place, moved[-1] + step))
    moved[-1] = min(moved[-1], high)
    for index in range(len(moved) - 2, -1, -1):
        moved[index] = min(moved[index], moved[index + 1] - step)
    return moved
