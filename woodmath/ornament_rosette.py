"""The rosette from one radius: a circle divided evenly, and about each point an arc of the same radius.

Each arc goes through the middle. Two that meet there close a petal between them, and where the points stand so far
apart that the petals share the whole turn, they lie side by side and cover one another nowhere.
"""

from __future__ import annotations

import math

from woodmath.errors import ImpossibleShape
from woodmath.ornament_derivations import chord_derivation, derivation
from woodmath.ornament_strokes import CompassArc, Motif, Region, RuledLine, Step, Stroke, circle, divide
from woodmath.outlines import Points

FEWEST, MOST = 3, 12
"""Petals: below three there is no petal, beyond twelve they cross once more before they reach the rim."""

_TICK = 0.05
"""How far a mark of the dividers goes to either side of the circle, as a part of the radius."""


def petal_length(radius: float, petals: int) -> float:
    """Return how long the petals of a rosette are.

    Parameters
    ----------
    radius : float
        To which the compass is set, > 0.
    petals : int
        How many, 3 to 12.

    Returns
    -------
    float
        From the middle to a tip, in the radius's unit.

    Raises
    ------
    ImpossibleShape
        If the radius is not positive, or no rosette has so many petals.

    Source: `woodmath.ornament_derivations.derivation`.

    >>> round(petal_length(radius=1.0, petals=8), 3)
    0.765
    """
    return derivation().function("petal")(radius=radius, petals=_counted(petals))


def chord(radius: float, parts: int) -> float:
    """Return what the dividers are set to so that they step round a circle in equal parts.

    Parameters
    ----------
    radius : float
        Of the circle, > 0.
    parts : int
        Into how many, 2 or more.

    Returns
    -------
    float
        In the radius's unit.

    Raises
    ------
    ImpossibleShape
        If the radius is not positive, or there are fewer than two parts.

    Source: `woodmath.ornament_derivations.chord_derivation`.

    >>> round(chord(radius=3.0, parts=6), 9)
    3.0
    """
    return chord_derivation().function("chord")(radius=radius, parts=parts)


def reach(radius: float, petals: int) -> float:
    """Return how far from its middle a rosette reaches, its compass points among what must have room.

    Parameters
    ----------
    radius : float
        To which the compass is set, > 0.
    petals : int
        How many, 3 to 12.

    Returns
    -------
    float
        The radius, or the petal where that is longer (with five petals or fewer).

    >>> reach(2.0, 8), round(reach(2.0, 5), 3)
    (2.0, 2.351)
    """
    return max(radius, petal_length(radius, petals))


def points_to_divide(petals: int) -> int:
    """Return into how many parts the circle is divided: an odd rosette needs a compass point for every arc.

    Parameters
    ----------
    petals : int
        How many, 3 to 12.

    Returns
    -------
    int
        As many as petals where they are even, else twice as many.

    >>> points_to_divide(8), points_to_divide(7)
    (8, 14)
    """
    return petals if petals % 2 == 0 else 2 * petals


def compass_points(radius: float, petals: int, first: float = 90.0) -> Points:
    """Return the marks on the circle where the point of the compass stands, in the order of their numbers.

    Parameters
    ----------
    radius : float
        To which the compass is set, > 0.
    petals : int
        How many, 3 to 12.
    first : float
        Where the first petal's tip lies, in degrees from level.

    Returns
    -------
    tuple of (float, float)
        About the origin, counter-clockwise.

    Raises
    ------
    ImpossibleShape
        If the radius is not positive, or no rosette has so many petals.

    >>> [round(y, 3) for _, y in compass_points(2.0, 6)]
    [2.0, 1.0, -1.0, -2.0, -1.0, 1.0]
    """
    parts = points_to_divide(_counted(petals))
    return divide(circle((0.0, 0.0), radius), parts, _first_point(petals, first))


def petal(radius: float, petals: int, direction: float = 90.0) -> Region:
    """Return one petal with its foot at the origin: two arcs of one radius, from the middle to the tip and back.

    Parameters
    ----------
    radius : float
        To which the compass is set, > 0.
    petals : int
        How many lie side by side, 3 to 12: this says how wide one opens.
    direction : float
        Where its tip lies, in degrees from level.

    Returns
    -------
    Region
        Of kind "petal".

    Raises
    ------
    ImpossibleShape
        If the radius is not positive, or no rosette has so many petals.

    >>> one = petal(radius=2.0, petals=6)
    >>> round(one.strokes[0].ends[1][1], 9), one.gap < 1e-9
    (2.0, True)
    """
    before, after = _sides(radius, petals, direction)
    return Region("petal", (before, after))


def rosette(petals: int, radius: float, first: float = 90.0) -> Motif:
    """Return a rosette about the origin, drawn with one setting of the compass.

    Parameters
    ----------
    petals : int
        How many, 3 to 12.
    radius : float
        To which the compass is set, > 0.
    first : float
        Where the first petal's tip lies, in degrees from level.

    Returns
    -------
    Motif
        With its petals; beyond six petals the arcs run on to the rim and close buds there.

    Raises
    ------
    ImpossibleShape
        If the radius is not positive, or no rosette has so many petals.

    Source: `woodmath.ornament_derivations.derivation`.

    >>> [step.words for step in rosette(6, 40.0).steps][0]
    'Draw a circle about the middle, and do not touch the setting of the compass again.'
    """
    _counted(petals)
    axes = [first + 360.0 * number / petals for number in range(petals)]
    whole = circle((0.0, 0.0), radius)
    parts = points_to_divide(petals)
    steps = [
        Step(
            "Draw a circle about the middle, and do not touch the setting of the compass again.",
            (whole,),
            petals >= 6,
        ),
        _division(whole, parts, _first_point(petals, first)),
        *_arcs(radius, petals, first),
    ]
    if petals < 6:
        steps.append(
            Step(
                "Open the compass to the tips and draw the rim.",
                (circle((0.0, 0.0), petal_length(radius, petals)),),
            )
        )
    steps.append(
        Step(
            f"Rub out what was only a scaffold: {petals} petals lie side by side, and none covers another.",
            (),
        )
    )
    regions = [Region("petal", _sides(radius, petals, axis)) for axis in axes]
    if petals > 6:
        regions += [Region("bud", _bud(radius, petals, axis)) for axis in axes]
    regions += [Region("ground", _ground(radius, petals, axis)) for axis in axes]
    return Motif(f"rosette of {petals}", tuple(steps), tuple(regions))


def _counted(petals: int) -> int:
    if not (FEWEST <= petals <= MOST and petals % 1 == 0):
        raise ImpossibleShape(
            f"A rosette of {petals:g} petals cannot be drawn with one radius. Ask for a whole number from {FEWEST} "
            f"to {MOST}."
        )
    return petals


def _half_apart(petals: int) -> float:
    """Half of what lies between a petal's two compass points, in degrees: what half the petal leaves of 90."""
    return 90.0 - 180.0 / petals


def _first_point(petals: int, first: float) -> float:
    """Return the direction of the first compass point, on the first petal's own line or just beside it."""
    if petals % 4 == 2:
        return first
    return first + (180.0 if petals % 4 == 0 else 90.0) / petals


def _sides(radius: float, petals: int, axis: float) -> tuple[CompassArc, CompassArc]:
    """Return a petal's right side from the middle to the tip, and its left side back to the middle."""
    half = _half_apart(petals)
    left, right = axis + half, axis - half
    centres = circle((0.0, 0.0), radius)
    return (
        CompassArc(centres.at(left), radius, left + 180.0, left + 360.0 - 2 * half),
        CompassArc(centres.at(right), radius, right + 2 * half, right + 180.0),
    )


def _beyond(radius: float, petals: int, axis: float) -> tuple[CompassArc, CompassArc]:
    """Return the two arcs beyond a petal's tip: out to the rim on the left, and in from the rim on the right.

    The rim has the compass's own radius, so compass point, middle and the arc's end on the rim make a triangle with
    three equal sides: the arc ends 120 degrees from the way outward.
    """
    half = _half_apart(petals)
    left, right = axis + half, axis - half
    centres = circle((0.0, 0.0), radius)
    return (
        CompassArc(centres.at(left), radius, left + 360.0 - 2 * half, left + 240.0),
        CompassArc(centres.at(right), radius, right + 120.0, right + 2 * half),
    )


def _bud(radius: float, petals: int, axis: float) -> tuple[Stroke, ...]:
    out, back = _beyond(radius, petals, axis)
    wide = _half_apart(petals) - 60.0
    return (out, CompassArc((0.0, 0.0), radius, axis + wide, axis - wide), back)


def _ground(radius: float, petals: int, axis: float) -> tuple[Stroke, ...]:
    """Return what closes the ground between a petal and the next one to its left."""
    following = axis + 360.0 / petals
    (_, up), (down, _) = _sides(radius, petals, axis), _sides(radius, petals, following)
    if petals <= 6:
        rim = CompassArc((0.0, 0.0), petal_length(radius, petals), axis, following)
        return (up.backwards, rim, down.backwards)
    (out, _), (_, back) = _beyond(radius, petals, axis), _beyond(radius, petals, following)
    wide = _half_apart(petals) - 60.0
    rim = CompassArc((0.0, 0.0), radius, axis + wide, following - wide)
    return (up.backwards, out, rim, back, down.backwards)


def _division(whole: CompassArc, parts: int, first: float) -> Step:
    points = divide(whole, parts, first)
    if parts == 8:
        return Step(
            "Quarter the circle with two lines square to one another through the middle, and halve the quarters: "
            "eight points.",
            tuple(RuledLine(points[each], points[each + 4]) for each in range(4)),
            False,
        )
    opening = chord(whole.radius, parts)
    # A short mark on either side of the circle, struck from the point before.
    across = math.degrees(_TICK * whole.radius / opening)
    half_step = 180.0 / parts
    marks = tuple(
        CompassArc(points[each], opening, towards - across, towards + across)
        for each in range(parts)
        for towards in (first + 360.0 * each / parts + 90.0 + half_step,)
    )
    if parts == 6:
        words = "Step round the circle with the compass as it is: the radius goes in six times, and nothing is left."
    else:
        words = f"Set the dividers to one part and step round the circle: {parts} points, and the last on the first."
    return Step(words, marks, False)


def _arcs(radius: float, petals: int, first: float) -> list[Step]:
    """Return a step for each arc through the middle; for an odd rosette, whose arcs end there, one for each petal."""
    half = _half_apart(petals)
    end = 120.0 if petals >= 6 else 2 * half
    centres = circle((0.0, 0.0), radius)
    steps = []
    if petals % 2 == 0:
        start = _first_point(petals, first)
        for number in range(petals):
            direction = start + 360.0 * number / petals
            stroke = CompassArc(centres.at(direction), radius, direction + end, direction + 360.0 - end)
            words = (
                f"Point on mark {number + 1}, the compass as it is: an arc through the middle."
                if number
                else "Point on the first mark, the compass as it is: an arc from side to side, through the middle."
            )
            steps.append(Step(words, (stroke,)))
        return steps

    def mark(direction: float) -> int:
        """Return the number of the mark in a direction, counted from the first."""
        return round((direction - _first_point(petals, first)) / 180.0 * petals) % (2 * petals) + 1

    for number in range(petals):
        axis = first + 360.0 * number / petals
        left, right = axis + half, axis - half
        steps.append(
            Step(
                f"Petal {number + 1}: the point on mark {mark(left)} and then on mark {mark(right)}, the compass as it "
                "is; each arc ends in the middle.",
                (
                    CompassArc(centres.at(left), radius, left + 180.0, left + 360.0 - end),
                    CompassArc(centres.at(right), radius, right + end, right + 180.0),
                ),
            )
        )
    return steps
