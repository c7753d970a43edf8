"""Why an ornament fits: lengths divided with nothing over, margins beside a leaning edge, the largest circle.

The quantities are those of `woodmath.ornament_derivations`, which derives the rosette itself.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit
from woodmath.operations import Add, Divide, Expand, Gather, Isolate, Substitute, equation
from woodmath.ornament_derivations import quantities


@functools.cache
def unit_derivation() -> Derivation:
    """Derive the unit that divides a length into a whole number of equal parts.

    Returns
    -------
    Derivation
        Its result gives `unit` from `length` and `count`.

    Source: division.

    >>> unit_derivation().function("unit")(length=10, count=4)
    2.5
    """
    spoken_of = quantities("unit", "length", "count")
    unit, length, count = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "A length divided with nothing over",
        spoken_of,
        equation(count * unit, length),
        "the units stand end to end, from one end of the border to the other",
        subject="unit",
        example={unit: sympy.Rational(5, 2), length: 10, count: 4},
    ).then(
        Divide(count),
        "the count is settled first, and the unit gives way: it alone need not be a round number",
    )


@functools.cache
def running_derivation() -> Derivation:
    """Derive the radius of a row of circles that fills a length from end to end.

    Returns
    -------
    Derivation
        Its result gives `radius` from `length`, `count` and `overlap` (0 where they touch).

    Source: lengths set end to end.

    >>> running_derivation().function("radius")(length=12, count=3, overlap=0)
    2.0
    """
    spoken_of = quantities("length", "count", "step", "radius", "overlap")
    length, count, step, radius, overlap = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Circles that run from end to end",
            spoken_of,
            equation(length, (count - 1) * step + 2 * radius),
            "from the first centre to the last are steps, one fewer than circles; before the first centre and "
            "beyond the last is a radius more",
            subject="radius",
            example={length: 10, count: 4, step: 2, radius: 2, overlap: sympy.Rational(1, 2)},
            limits=(
                Limit(
                    overlap <= sympy.Rational(1, 2),
                    "A circle that covers more than half of the next one reaches the one after it as well: "
                    "overlap by a half at most",
                ),
            ),
        )
        .then(
            Substitute(step, 2 * radius * (1 - overlap)),
            "circles that touch step on by a diameter; each that covers a part of the next steps on by that "
            "part less",
        )
        .then(Isolate(radius), "the compass wants the radius")
    )


@functools.cache
def fan_derivation() -> Derivation:
    """Derive how long the ribs of a fan are when its scallops are to reach so far and no further.

    Returns
    -------
    Derivation
        Its result gives `rib` from `reach`, `spread` (degrees) and `bays`.

    Source: plane trigonometry, sine and cosine in a right triangle.

    >>> round(fan_derivation().function("rib")(reach=3, spread=90, bays=3), 4)
    2.4495
    """
    spoken_of = quantities("reach", "to_the_chord", "scallop", "rib", "half_bay", "spread", "bays")
    reach, to_the_chord, scallop, rib, half_bay, spread, bays = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The ribs of a fan",
            spoken_of,
            equation(reach, to_the_chord + scallop),
            "between two ribs' ends stands a half circle, the scallop: the way out to it goes to its centre, "
            "midway between the ends, and then on by its radius",
            subject="rib",
            example={
                reach: 2 + 2 * sympy.sqrt(3),
                to_the_chord: 2 * sympy.sqrt(3),
                scallop: 2,
                rib: 4,
                half_bay: sympy.pi / 6,
                spread: sympy.pi / 3,
                bays: 1,
            },
            keeps={
                "spread": "a bay opens to less than a right angle: of two openings it has the smaller",
                "bays": "a bay opens to less than a right angle: of two openings it has the smaller",
            },
        )
        .then(
            Substitute(to_the_chord, rib * sympy.cos(half_bay)),
            "foot, rib's end and that midway point make a right triangle, and the rib is its longest side",
        )
        .then(Substitute(scallop, rib * sympy.sin(half_bay)), "in the same triangle the radius lies opposite")
        .then(Isolate(rib), "the rib is what the rule draws")
        .then(
            Substitute(half_bay, spread / (2 * bays)),
            "the bays share the fan's spread evenly, and half a bay is wanted",
        )
    )


@functools.cache
def arc_derivation() -> Derivation:
    """Derive the radius of an arc from the width that it spans and the rise that it makes.

    Returns
    -------
    Derivation
        Its result gives `radius` from `half_width` and `rise`.

    Source: Pythagoras.

    >>> arc_derivation().function("radius")(half_width=4, rise=2)
    5.0
    """
    spoken_of = quantities("radius", "half_width", "rise")
    radius, half_width, rise = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The arc over a unit of the border",
            spoken_of,
            equation(radius**2, half_width**2 + (radius - rise) ** 2),
            "from the compass point to an end of the arc is a radius, and to its top another; what the rise "
            "leaves of the second, half the width and the first close a right triangle",
            subject="radius",
            example={radius: 5, half_width: 4, rise: 2},
            keeps={
                "rise": "an arc of a border is less than a half circle, or just a half: of the two rises it has the "
                "smaller",
                "half_width": "it is a length",
            },
        )
        .then(Expand(), "what stands on both sides shows once the bracket is gone")
        .then(Gather((radius,)), "the squares of the radius cancel, and a single one is left")
        .then(Divide(2 * rise), "the radius alone is wanted")
    )


@functools.cache
def level_margin() -> Derivation:
    """Derive how much of the panel's width a margin takes that is measured square to a leaning edge.

    Returns
    -------
    Derivation
        Its result gives `level` from `margin` and `splay` (degrees).

    Source: plane trigonometry, the cosine in a right triangle.

    >>> round(level_margin().function("level")(margin=3, splay=60), 9)
    6.0
    """
    spoken_of = quantities("level", "margin", "splay")
    level, margin, splay = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "A margin beside a leaning edge",
        spoken_of,
        equation(sympy.cos(splay), margin / level),
        "a margin is the same all the way if it stands square to its edge. Measured level it is longer: the "
        "longest side of a right triangle, turned from the square one by as much as the edge leans",
        subject="level",
        example={level: 6, margin: 3, splay: sympy.pi / 3},
        limits=(
            Limit(
                sympy.Abs(splay) < sympy.pi / 2,
                "An edge leans by less than 90 degrees from upright: measure its lean against the square",
            ),
        ),
        keeps={"splay": "an edge leans by less than a right angle, outward unless you say otherwise"},
    ).then(Isolate(level), "widths are taken off level")


@functools.cache
def between_edges() -> Derivation:
    """Derive the radius of a circle that touches the lower and the upper edge.

    Returns
    -------
    Derivation
        Its result gives `radius` from `height`.

    Source: a diameter is two radii.

    >>> between_edges().function("radius")(height=6)
    3.0
    """
    spoken_of = quantities("radius", "height")
    radius, height = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "A circle between the level edges",
        spoken_of,
        equation(2 * radius, height),
        "the circle's diameter stands upright from the one edge to the other",
        subject="radius",
        example={radius: 3, height: 6},
    ).then(Divide(sympy.Integer(2)), "the compass wants the radius")


@functools.cache
def in_the_corners() -> Derivation:
    """Derive the radius of a circle that touches the longer level edge and both leaning ones.

    Returns
    -------
    Derivation
        Its result gives `radius` from `half_edge` and `half_corner` (degrees).

    Source: plane trigonometry; the line that halves a corner is as far from one edge as from the other.

    >>> round(in_the_corners().function("radius")(half_edge=3, half_corner=45), 9)
    3.0
    """
    spoken_of = quantities("radius", "half_edge", "half_corner")
    radius, half_edge, half_corner = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "A circle between the leaning edges",
        spoken_of,
        equation(sympy.tan(half_corner), radius / half_edge),
        "a circle that touches both edges of a corner has its centre on the line that halves it. Here the "
        "centre lies over the middle of the longer edge too: half that edge lies beside half the corner, "
        "and the radius opposite",
        subject="radius",
        example={radius: sympy.sqrt(3), half_edge: 3, half_corner: sympy.pi / 6},
    ).then(Isolate(radius), "the compass wants the radius")


@functools.cache
def half_corner_derivation() -> Derivation:
    """Derive half the angle of the corner where a leaning edge meets the longer level one.

    Returns
    -------
    Derivation
        Its result gives `half_corner` (degrees) from `splay` (degrees, less than 0 at the shorter edge).

    Source: level and upright make a right angle.

    >>> half_corner_derivation().function("half_corner")(splay=0)
    45.0
    """
    spoken_of = quantities("half_corner", "splay")
    half_corner, splay = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Half a corner",
            spoken_of,
            equation(2 * half_corner + splay, sympy.pi / 2),
            "from the longer level edge to upright is a right angle, and the leaning edge stands short of upright "
            "by its splay",
            subject="half_corner",
            example={half_corner: sympy.pi / 6, splay: sympy.pi / 6},
        )
        .then(Add(-splay), "both halves of the corner are what the splay leaves of a right angle")
        .then(Divide(sympy.Integer(2)), "one half is wanted: along that line the corner is mitred")
    )


@functools.cache
def corner_run() -> Derivation:
    """Derive how much of an edge a border's corner takes, before the first whole unit can begin.

    Returns
    -------
    Derivation
        Its result gives `run` from `margin` (the border's height) and `half_corner` (degrees).

    Source: plane trigonometry, the tangent in a right triangle.

    >>> round(corner_run().function("run")(margin=2, half_corner=45), 9)
    2.0
    """
    spoken_of = quantities("run", "margin", "half_corner")
    run, margin, half_corner = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "A border's corner",
        spoken_of,
        equation(sympy.tan(half_corner), margin / run),
        "where two borders of one height meet, the mitre halves the corner. The border's height stands square to "
        "the edge, opposite half the corner; what the corner takes of the edge lies beside it",
        subject="run",
        example={run: 2, margin: 2, half_corner: sympy.pi / 4},
    ).then(Isolate(run), "so far from the corner the first unit begins, and the last one ends")
