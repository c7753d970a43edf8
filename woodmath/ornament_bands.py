"""Bands that end exactly where they should: a border of leaves or of crossing arches, and a row of circles.

The count is settled first, as the whole number nearest to the wish; the unit gives way, and nothing is left over.
"""

from __future__ import annotations

import math
from itertools import pairwise

from woodmath.errors import ImpossibleShape
from woodmath.ornament_fitting_derivations import arc_derivation, running_derivation, unit_derivation
from woodmath.ornament_strokes import (
    CompassArc,
    Motif,
    Region,
    RuledLine,
    Step,
    Stroke,
    circle,
    moved,
    together,
)

KINDS = ("leaves", "crossing arches")
"""How a border may be filled."""


def even_division(length: float, wanted: float) -> tuple[int, float]:
    """Divide a length into equal units, as near to a wanted one as a whole number of them allows.

    Parameters
    ----------
    length : float
        What is to be divided, > 0.
    wanted : float
        The unit that would be welcome, > 0, in the same unit.

    Returns
    -------
    (int, float)
        How many, 1 or more, and how long each is: together exactly the length.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: `woodmath.ornament_fitting_derivations.unit_derivation`; the nearest count is a choice.

    >>> even_division(length=10.0, wanted=1.5)
    (7, 1.4285714285714286)
    """
    welcome = unit_derivation().function("count")(unit=wanted, length=length)
    count = max(1, math.floor(welcome + 0.5))
    return count, unit_derivation().function("unit")(length=length, count=count)


def circles_along(length: float, wanted: float, overlap: float = 0.0) -> tuple[int, float]:
    """Return how many circles run along a length from end to end, and their radius.

    Parameters
    ----------
    length : float
        What they are to fill, > 0.
    wanted : float
        The diameter that would be welcome, > 0, in the same unit.
    overlap : float
        Which part of its diameter each covers of the next, 0 to 1/2.

    Returns
    -------
    (int, float)
        How many, 1 or more, and the radius to which the compass is set.

    Raises
    ------
    ImpossibleShape
        If a length is not positive, or the overlap is none that there can be.

    Source: `woodmath.ornament_fitting_derivations.running_derivation`; the nearest count is a choice.

    >>> circles_along(length=12.0, wanted=4.2)
    (3, 2.0)
    """
    count = 1
    if not 0 < length <= wanted:
        welcome = running_derivation().function("count")(length=length, radius=wanted / 2, overlap=overlap)
        count = max(1, math.floor(welcome + 0.5))
    return count, running_derivation().function("radius")(length=length, count=count, overlap=overlap)


def border(length: float, wanted: float, height: float, kind: str = "leaves") -> Motif:
    """Return a border between two ruled lines, its lower left corner at the origin.

    Parameters
    ----------
    length : float
        From end to end, > 0.
    wanted : float
        The unit that would be welcome, > 0, in the same unit.
    height : float
        Of the band, > 0; no more than a unit comes out long.
    kind : {"leaves", "crossing arches"}
        What stands in it.

    Returns
    -------
    Motif
        That ends exactly at both ends.

    Raises
    ------
    ImpossibleShape
        If a length is not positive, the band is higher than a unit is long, or the kind is none of ours.

    Source: `woodmath.ornament_fitting_derivations.unit_derivation` and `arc_derivation`.

    >>> len(border(length=300.0, wanted=32.0, height=16.0).regions)
    9
    """
    if kind not in KINDS:
        raise ImpossibleShape(f"There is no border of {kind!r}. Choose {' or '.join(KINDS)}.")
    count, unit = even_division(length, wanted)
    if not 0 < height <= unit:
        raise ImpossibleShape(
            f"The border is {height:g} high and its unit comes out {unit:g} long. Make it lower than a unit is "
            "long, or ask for a longer unit."
        )
    places = [unit * number for number in range(count)] + [length]
    frame = (
        RuledLine((0.0, 0.0), (length, 0.0)),
        RuledLine((length, 0.0), (length, height)),
        RuledLine((length, height), (0.0, height)),
        RuledLine((0.0, height), (0.0, 0.0)),
    )
    drawn = _leaves(places, unit, height) if kind == KINDS[0] else _arches(places, unit, height)
    ruled = Step("Rule the border's two lines, and close its ends.", frame)
    return Motif(f"border of {kind}", (ruled, *drawn.steps), drawn.regions)


def running_circles(length: float, wanted: float, overlap: float = 0.0) -> Motif:
    """Return a row of equal circles between two ruled lines, their lower left end at the origin.

    Parameters
    ----------
    length : float
        From end to end, > 0.
    wanted : float
        The diameter that would be welcome, > 0, in the same unit.
    overlap : float
        Which part of its diameter each covers of the next, 0 to 1/2; with a half each goes through the next one's
        centre.

    Returns
    -------
    Motif
        As high as a diameter.

    Raises
    ------
    ImpossibleShape
        If a length is not positive, or the overlap is none that there can be.

    Source: `woodmath.ornament_fitting_derivations.running_derivation`.

    >>> row = running_circles(length=90.0, wanted=30.0, overlap=0.5)
    >>> len(row.centres), [region.kind for region in row.regions].count("leaf")
    (5, 4)
    """
    count, radius = circles_along(length, wanted, overlap)
    centres = [
        (radius + (length - 2 * radius) * number / max(count - 1, 1), radius) for number in range(count)
    ]
    circles = [circle(centre, radius) for centre in centres]
    # No further than the outermost circles touch them: beyond that a leaning edge would cut them off.
    rules = tuple(
        RuledLine((radius, level), (length - radius, level)) for level in (0.0, 2 * radius) if count > 1
    )
    steps = [
        Step("Rule two lines, a diameter apart, no further than the outermost circles touch them.", rules),
        Step(
            f"Rule the line midway between them, and step it off from end to end: {count} centres.",
            (RuledLine((0.0, radius), (length, radius)),),
            False,
        ),
        *(
            Step(
                f"Circle {number}, the point on its centre."
                if number > 1
                else "The first circle touches the end.",
                (each,),
            )
            for number, each in enumerate(circles, 1)
        ),
    ]
    return Motif(f"{count} running circles", tuple(steps), _parts_of_circles(circles))


def rows(motif: Motif, count: int, step: float) -> Motif:
    """Return a motif several times, one row above the other.

    Parameters
    ----------
    motif : Motif
        The lowest row.
    count : int
        How many, 1 or more.
    step : float
        From one row up to the next.

    Returns
    -------
    Motif
        All of them.

    Raises
    ------
    ImpossibleShape
        If there is no row.

    >>> len(rows(running_circles(60.0, 20.0), count=3, step=20.0).regions)
    9
    """
    if count < 1:
        raise ImpossibleShape(f"{count} rows are no ornament. Give one row or more.")
    return together(
        f"{motif.name}, {count} rows", *(moved(motif, (0.0, step * number)) for number in range(count))
    )


def _leaves(places: list[float], unit: float, height: float) -> Motif:
    """Return leaves that lie along the middle of a band, tip to tip, and touch both its lines."""
    middle = height / 2
    radius = arc_derivation().function("radius")(half_width=unit / 2, rise=middle)
    half = math.degrees(math.atan2(unit / 2, radius - middle))
    pairs: list[tuple[Stroke, Stroke]] = []
    for start, end in pairwise(places):
        x = (start + end) / 2
        lower = CompassArc((x, radius), radius, 270.0 - half, 270.0 + half)
        upper = CompassArc((x, height - radius), radius, 90.0 - half, 90.0 + half)
        pairs.append((lower, upper))
    return Motif(
        "leaves",
        (
            Step(
                f"Rule the middle of the band and step it off: {len(pairs)} units, and nothing over.",
                (RuledLine((0.0, middle), (places[-1], middle)),),
                False,
            ),
            Step(
                "An arc over each unit: the point below, on the line that halves the unit.",
                tuple(upper.backwards for _, upper in pairs),
            ),
            Step("The same under each unit, with the point above.", tuple(lower for lower, _ in pairs)),
        ),
        tuple(Region("leaf", pair) for pair in pairs),
    )


def _arches(places: list[float], unit: float, height: float) -> Motif:
    """Return arches two units wide that cross their neighbours, and half an arch at either end."""
    radius = arc_derivation().function("radius")(half_width=unit, rise=height)
    half = math.degrees(math.atan2(unit, radius - height))
    crossing = math.degrees(math.asin(unit / 2 / radius))

    def arch(place: float, start: float, end: float) -> CompassArc:
        return CompassArc((place, height - radius), radius, start, end)

    last = len(places) - 1
    arches = [
        arch(place, 90.0 + (half if number else 0.0), 90.0 - (half if number < last else 0.0))
        for number, place in enumerate(places)
    ]
    regions = [
        Region(
            "bay",
            (
                RuledLine((start, 0.0), (end, 0.0)),
                arch(start, 90.0 - half, 90.0 - crossing),
                arch(end, 90.0 + crossing, 90.0 + half),
            ),
        )
        for start, end in pairwise(places)
    ]
    return Motif(
        "arches",
        (
            Step(
                f"Step off the lower line: {last} units, and nothing over.",
                tuple(RuledLine((place, 0.0), (place, height / 8)) for place in places),
                False,
            ),
            Step("An arch over every second mark, and then over those between.", tuple(arches)),
        ),
        tuple(regions),
    )


def _parts_of_circles(circles: list[CompassArc]) -> tuple[Region, ...]:
    """Return the leaves that neighbours have in common, and what is left of each circle between two of them."""
    if len(circles) == 1:
        return (Region("bay", (circles[0],)),)
    radius = circles[0].radius
    half_step = (circles[1].centre[0] - circles[0].centre[0]) / 2
    half = math.degrees(math.acos(min(1.0, half_step / radius)))
    if half < 0.5:
        return tuple(Region("bay", (each,)) for each in circles)

    def part(number: int, start: float, end: float) -> CompassArc:
        return CompassArc(circles[number].centre, radius, start, end)

    leaves = [
        Region("leaf", (part(number, -half, half), part(number + 1, 180.0 - half, 180.0 + half)))
        for number in range(len(circles) - 1)
    ]
    last = len(circles) - 1
    rest = []
    for number in range(last + 1):
        strokes: list[Stroke] = [
            part(number, half if number < last else 0.0, 180.0 - half if number else 360.0 - half)
        ]
        if number == 0:
            strokes.append(part(1, 180.0 + half, 180.0 - half))
        elif number == last:
            strokes = [part(number, half - 180.0, 180.0 - half), part(number - 1, half, -half)]
        else:
            strokes += [
                part(number - 1, half, -half),
                part(number, 180.0 + half, 360.0 - half),
                part(number + 1, 180.0 + half, 180.0 - half),
            ]
        rest.append(Region("bay", tuple(strokes)))
    return (*leaves, *rest)
