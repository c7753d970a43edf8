"""Why a corner is planed off to one certain line, and what stands beyond the round when it is.

Everything starts from one picture: at every corner of a regular section the same length is set off along both
flats, and joined. What follows from it: the octagon in a square, the sixteen flats in an octagon, the compass
that finds the octagon's line without a number, and how little each doubling leaves for the gouge.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import Factor, Isolate, Substitute, equation
from woodmath.quantities import worded

SQUARE_SIDES, OCTAGON_SIDES, SIXTEEN_SIDES = 4, 8, 16

_WORDS = MappingProxyType(
    {
        "sides": ("n", "how many flats the section has now", "number", "positive"),
        "flat": ("f", "width of each flat now", "length", "positive"),
        "set_off": ("y", "set off along both flats from every corner", "length", "positive"),
        "across_flats": ("s", "from one flat to the flat opposite", "length", "positive"),
        "square": ("s", "side of the square", "length", "positive"),
        "from_far_corner": (
            "q",
            "the same line, from the corner at the flat's other end",
            "length",
            "positive",
        ),
        "half_diagonal": ("m", "from a corner of the square to its middle", "length", "positive"),
        "diameter": ("d", "the round that touches every flat", "length", "positive"),
        "off": (
            "g",
            "from the middle of the section to the marked centre, toward a face",
            "length",
            "nonnegative",
        ),
        "beyond": ("e", "how far each corner stands beyond the round", "length", "positive"),
    }
)

_HOLDS = (
    Limit(
        sympy.Symbol("sides", positive=True) > 2,
        "Two flats close no section: count at least three flats",
    ),
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that the derivations of turning speak of, always with the same letter and meaning.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("sides", "flat", "set_off")]
    ['n', 'f', 'y']
    """
    return worded(_WORDS, names)


@functools.cache
def doubling_derivation() -> Derivation:
    """Derive where the corners of a regular section are planed off, so that it has twice as many flats.

    Returns
    -------
    Derivation
        Speaks of `sides`, `flat`, `set_off`; its subject is the set-off.

    Source: plane trigonometry, the isosceles triangle that is cut away at a corner.

    >>> doubling_derivation().result
    Eq(set_off, flat/(2*(cos(pi/sides) + 1)))
    """
    spoken_of = quantities("sides", "flat", "set_off")
    sides, flat, set_off = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "From some flats to twice as many",
        spoken_of,
        equation(flat - 2 * set_off, 2 * set_off * sympy.cos(sympy.pi / sides)),
        "both corners of a flat take y from it, and f − 2y is left of the old flat. The new flat is the long side "
        "of the triangle that falls away: its two short sides are y, each of its two sharp corners is 180°/n, and "
        "so each half of the long side is y times the cosine of that. The section is regular when the old flat and "
        "the new one are equally wide",
        subject="set_off",
        example={sides: 3, flat: 3, set_off: 1},
        limits=_HOLDS,
    ).then(
        Isolate(set_off),
        "we want the length to set off: it has one place only, because a longer one narrows the old flat and "
        "widens the new",
    )


@functools.cache
def octagon_derivation() -> Derivation:
    """Derive the gauge line that makes an octagon of a square.

    Returns
    -------
    Derivation
        Speaks of `square` and `set_off`; its subject is the set-off, from each corner of the square.

    Source: plane trigonometry; takes up what `doubling_derivation` starts with, for four flats.

    >>> round(octagon_derivation().function("set_off")(square=1.0), 6)
    0.292893
    """
    start = doubling_derivation().steps[0].equation
    spoken_of = quantities("square", "set_off", "sides", "flat")
    square, set_off, sides, flat = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "From the square to the octagon",
            spoken_of,
            start,
            "this is the rule for any regular section: what is left of a flat is as wide as the new flat",
            subject="set_off",
            example={
                square: 2 + sympy.sqrt(2),
                set_off: 1,
                sides: SQUARE_SIDES,
                flat: 2 + sympy.sqrt(2),
            },
        )
        .then(
            Substitute(sides, sympy.Integer(SQUARE_SIDES)),
            "a square has four flats, and the sharp corners of what falls away are half right angles",
        )
        .then(Substitute(flat, square), "the flat of the square is its side")
        .then(
            Isolate(set_off),
            "so the line lies a little more than two sevenths of the side from the corner, in wood of any size",
        )
    )


@functools.cache
def compass_derivation() -> Derivation:
    """Derive how a compass finds the octagon's line with no number at all.

    Returns
    -------
    Derivation
        Speaks of `from_far_corner`, `square`, `half_diagonal`; its subject is the distance from the far corner.

    Source: Pythagoras in half a square; takes up the result of `octagon_derivation`.

    >>> compass_derivation().result
    Eq(from_far_corner, half_diagonal)
    """
    spoken_of = quantities("from_far_corner", "square", "set_off", "half_diagonal")
    from_far_corner, square, set_off, half_diagonal = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The octagon's line with a compass",
            spoken_of,
            equation(from_far_corner, square - set_off),
            "a line that lies y from one corner of the side lies the rest of the side from the other",
            subject="from_far_corner",
            example={
                from_far_corner: 1,
                square: sympy.sqrt(2),
                set_off: sympy.sqrt(2) - 1,
                half_diagonal: 1,
            },
        )
        .then(
            Substitute(set_off, octagon_derivation().result.rhs),
            "the octagon's line is known by the side of the square: the whole side falls out, and what is left is half "
            "the side times the root of two",
        )
        .then(
            Substitute(square, sympy.sqrt(2) * half_diagonal),
            "the diagonal is the long side of a right triangle with the square's side twice, so it is the side "
            "times the root of two (Pythagoras), and the side is half the diagonal times that root. What remains is "
            "half the diagonal itself: stand the compass on a corner, open it to the middle, and swing it to both "
            "sides",
        )
    )


@functools.cache
def flat_derivation() -> Derivation:
    """Derive how wide each flat of a regular section is, from the distance across its flats.

    Returns
    -------
    Derivation
        Speaks of `sides`, `across_flats`, `flat`; its subject is the flat.

    Source: plane trigonometry, the right triangle of the middle, a flat's middle and its end.

    >>> flat_derivation().result
    Eq(flat, across_flats*tan(pi/sides))
    """
    spoken_of = quantities("sides", "across_flats", "flat")
    sides, across_flats, flat = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The flat of a regular section",
        spoken_of,
        equation(sympy.tan(sympy.pi / sides), (flat / 2) / (across_flats / 2)),
        "from the middle of the section, each flat is seen under the n-th part of a whole turn, half a flat under "
        "half of that. The way to the flat's middle meets it square, and is half of what is measured across",
        subject="flat",
        example={sides: 4, across_flats: 1, flat: 1},
        limits=_HOLDS,
    ).then(Isolate(flat), "we want the flat; the two halves strike out")


@functools.cache
def sixteen_derivation() -> Derivation:
    """Derive the line that makes sixteen flats of an octagon.

    Returns
    -------
    Derivation
        Speaks of `square` and `set_off`; its subject is the set-off, from each corner of the octagon.

    Source: plane trigonometry; takes up `doubling_derivation` and `flat_derivation`, for eight flats.

    >>> round(sixteen_derivation().function("set_off")(square=1.0), 6)
    0.107651
    """
    spoken_of = quantities("square", "set_off", "sides", "flat")
    square, set_off, sides, flat = (quantity.symbol for quantity in spoken_of)
    across = flat_derivation().quantity("across_flats").symbol
    of_the_octagon = flat_derivation().result.rhs.subs({sides: OCTAGON_SIDES, across: square})
    cosine = sympy.cos(sympy.pi / OCTAGON_SIDES)
    return (
        Derivation.start(
            "From the octagon to sixteen flats",
            spoken_of,
            doubling_derivation().result,
            "this is the rule for any regular section",
            subject="set_off",
            example={
                square: (1 + sympy.sqrt(2)) * (2 + 2 * cosine),
                set_off: 1,
                sides: OCTAGON_SIDES,
                flat: 2 + 2 * cosine,
            },
        )
        .then(Substitute(sides, sympy.Integer(OCTAGON_SIDES)), "the octagon has eight flats")
        .then(
            Substitute(flat, of_the_octagon),
            "and is as wide across its flats as the square was, so each flat is the side times the tangent of an "
            "eighth of half a turn",
        )
        .then(Factor(), "so the line can be told by the side of the square that you began with")
    )


@functools.cache
def corner_derivation() -> Derivation:
    """Derive how far the corners of a regular section stand beyond the round that touches its flats.

    Returns
    -------
    Derivation
        Speaks of `sides`, `diameter`, `beyond`; its subject is what stands beyond the round.

    Source: plane trigonometry, the right triangle of the middle, a flat's middle and a corner.

    >>> round(corner_derivation().function("beyond")(sides=4, diameter=2.0), 6)
    0.414214
    """
    spoken_of = quantities("sides", "diameter", "beyond")
    sides, diameter, beyond = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "What the corners leave beyond the round",
        spoken_of,
        equation(sympy.cos(sympy.pi / sides) * (diameter / 2 + beyond), diameter / 2),
        "from the middle it is half the diameter to a flat, and so much more to a corner; the two ways close a right "
        "triangle with half a flat, and the angle between them is 180°/n",
        subject="beyond",
        example={sides: 3, diameter: 2, beyond: 1},
        limits=_HOLDS,
    ).then(
        Isolate(beyond),
        "what stands beyond is waste for the gouge: with every doubling of the flats about a quarter of it is left, "
        "because what the cosine of a small angle falls short of 1 goes with the square of the angle, and half the "
        "angle has a quarter of the square",
    )


@functools.cache
def off_centre_derivation() -> Derivation:
    """Derive the largest round of a square whose centre is marked beside the middle.

    Returns
    -------
    Derivation
        Speaks of `square`, `off`, `diameter`; its subject is the diameter.

    Source: plane geometry: the nearest face stops the round.

    >>> off_centre_derivation().result
    Eq(diameter, -2*off + square)
    """
    spoken_of = quantities("square", "off", "diameter")
    square, off, diameter = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The round about a centre that is off",
        spoken_of,
        equation(off + diameter / 2, square / 2),
        "from the middle of the square it is half its side to each face. Toward one of them the marked centre has come "
        "nearer by g, and that face stops the round: what is left of the half side is its radius",
        subject="diameter",
        example={square: 4, off: 1, diameter: 2},
        limits=(
            Limit(
                2 * off < square,
                "The centre is marked outside the wood: mark it less than half the side from the middle",
            ),
        ),
    ).then(
        Isolate(diameter),
        "the side less twice what the centre is off: what is missing on the near side is missing on the far side too",
    )
