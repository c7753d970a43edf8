"""The fan: ribs from one foot that divide an angle evenly, and a half circle from rib to rib."""

from __future__ import annotations

import math
from itertools import pairwise

from woodmath.errors import ImpossibleShape
from woodmath.ornament_fitting_derivations import fan_derivation
from woodmath.ornament_strokes import CompassArc, Motif, Region, RuledLine, Step

WIDEST = 180.0
"""Degrees over which a fan may open."""


def rib_length(ribs: int, radius: float, angle: float) -> float:
    """Return how long the ribs of a fan are when its scallops reach to a radius.

    Parameters
    ----------
    ribs : int
        How many, the two outer ones among them, 2 or more.
    radius : float
        From the foot to the outermost of the scallops, > 0.
    angle : float
        Over which the fan opens, in degrees, more than 0 and up to 180; a bay opens to 90 at most.

    Returns
    -------
    float
        In the radius's unit.

    Raises
    ------
    ImpossibleShape
        If there are too few ribs, or the angle is none that a fan can have.

    Source: `woodmath.ornament_fitting_derivations.fan_derivation`.

    >>> round(rib_length(ribs=4, radius=3.0, angle=90.0), 4)
    2.4495
    """
    if ribs < 2:
        raise ImpossibleShape(f"A fan of {ribs} ribs has no bay. Give two ribs or more.")
    if not 0 < angle <= min(WIDEST, 90.0 * (ribs - 1)):
        raise ImpossibleShape(
            f"A fan of {ribs} ribs cannot open over {angle:g} degrees. Give an angle up to "
            f"{min(WIDEST, 90.0 * (ribs - 1)):g} degrees, or more ribs."
        )
    return fan_derivation().function("rib")(reach=radius, spread=angle, bays=ribs - 1)


def fan(ribs: int, radius: float, angle: float, first: float | None = None) -> Motif:
    """Return a fan with its foot at the origin.

    Parameters
    ----------
    ribs : int
        How many, the two outer ones among them, 2 or more.
    radius : float
        From the foot to the outermost of the scallops, > 0.
    angle : float
        Over which it opens, in degrees, more than 0 and up to 180; a bay opens to 90 at most.
    first : float, optional
        Direction of the first rib, in degrees; where none is given the fan stands upright.

    Returns
    -------
    Motif
        One bay fewer than ribs.

    Raises
    ------
    ImpossibleShape
        If there are too few ribs, or the angle is none that a fan can have.

    Source: `woodmath.ornament_fitting_derivations.fan_derivation`.

    >>> len(fan(ribs=5, radius=60.0, angle=90.0).regions)
    4
    """
    length = rib_length(ribs, radius, angle)
    bays = ribs - 1
    start = 90.0 - angle / 2 if first is None else first
    spread = CompassArc((0.0, 0.0), length, start, start + angle)
    directions = [start + angle * rib / bays for rib in range(ribs)]
    lines = tuple(RuledLine((0.0, 0.0), spread.at(direction)) for direction in directions)
    one_to_next = math.dist(lines[0].end, lines[1].end)
    scallops = tuple(
        CompassArc(
            ((one.end[0] + other.end[0]) / 2, (one.end[1] + other.end[1]) / 2),
            one_to_next / 2,
            (before + after) / 2 - 90.0,
            (before + after) / 2 + 90.0,
        )
        for (one, other), (before, after) in zip(pairwise(lines), pairwise(directions), strict=True)
    )
    steps = (
        Step("Rule the two outer ribs from the foot.", (lines[0], lines[-1])),
        Step(
            "Strike an arc about the foot, and step it off with the dividers: as many parts as bays.",
            (spread,),
            False,
        ),
        *((Step("Rule the ribs between, from the foot to each mark.", lines[1:-1]),) if ribs > 2 else ()),
        Step("A half circle from rib to rib, its point midway between their ends.", scallops),
    )
    regions = tuple(
        Region("bay", (one, scallop, other.backwards))
        for (one, other), scallop in zip(pairwise(lines), scallops, strict=True)
    )
    return Motif(f"fan of {ribs} ribs", steps, regions)
