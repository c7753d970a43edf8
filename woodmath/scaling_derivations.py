"""What another scale does to a piece that keeps its stock, in symbols.

Every length of the outside is multiplied by one scale; the thickness of boards and posts is bought and stays.
So the inside, the mass and the proportions each follow a rule of their own, and none of them is the textbook's.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import Isolate, Multiply, Substitute, equation


@functools.cache
def scale_derivation() -> Derivation:
    """Derive the scale that makes a wanted length of a known one.

    Returns
    -------
    Derivation
        Speaks of `scale` (a number), `known` and `wanted` (lengths in one unit); its subject is the scale.

    Source: similar figures.

    >>> scale_derivation().result
    Eq(scale, wanted/known)
    """
    scale, known, wanted = sympy.symbols("scale known wanted", positive=True)
    return Derivation.start(
        "The scale from one length",
        (
            Quantity(scale, "k", "scale, how many times as long as in the drawing", "number"),
            Quantity(known, r"\ell", "length in the drawing"),
            Quantity(wanted, "L", "the same length in the piece"),
        ),
        equation(wanted, scale * known),
        "to scale is to multiply every length that is not stock by one and the same number",
        subject="scale",
        example={scale: sympy.Rational(5, 3), known: 18, wanted: 30},
    ).then(Isolate(scale), "one length that you know in both sizes settles the number for all")


@functools.cache
def inside_derivation() -> Derivation:
    """Derive the inside of a case whose outside is scaled and whose boards keep their thickness.

    Returns
    -------
    Derivation
        Speaks of `inside`, `outside` (of the drawing), `stock` (lengths) and `scale`; its subject is the
        inside after scaling.

    Source: adding up across the case, board, inside, board.

    >>> inside_derivation().result
    Eq(inside, outside*scale - 2*stock)
    """
    inside, outside_after, outside, stock, scale = sympy.symbols(
        "inside outside_after outside stock scale", positive=True
    )
    return (
        Derivation.start(
            "The inside, when the stock is kept",
            (
                Quantity(inside, "i", "inside, after scaling"),
                Quantity(outside_after, "O", "outside, after scaling"),
                Quantity(outside, "o", "outside in the drawing"),
                Quantity(stock, "t", "thickness of the board, kept"),
                Quantity(scale, "k", "scale", "number"),
            ),
            equation(outside_after, inside + 2 * stock),
            "straight across the case you meet a board, the inside, and a board again",
            subject="inside",
            example={inside: 28, outside_after: 30, outside: 18, stock: 1, scale: sympy.Rational(5, 3)},
            limits=(
                Limit(
                    2 * stock < scale * outside,
                    "Two boards of that thickness fill the whole outside and leave no inside: take thinner "
                    "stock, or a larger scale",
                ),
            ),
        )
        .then(Substitute(outside_after, scale * outside), "the outside is scaled, and the boards are not")
        .then(Isolate(inside), "the room within is what the piece is made for")
    )


@functools.cache
def inside_ratio_derivation() -> Derivation:
    """Derive how many times as large the inside becomes, which is not the scale.

    Returns
    -------
    Derivation
        Speaks of `inside_ratio`, `scale` (numbers), `outside` and `stock` (lengths of the drawing); its subject
        is the ratio of the inside after scaling to the inside before.

    Source: `inside_derivation`, once with the scale and once with 1.

    >>> inside_ratio_derivation().result
    Eq(inside_ratio, (outside*scale - 2*stock)/(outside - 2*stock))
    """
    after = inside_derivation()
    outside, stock, scale, inside = (after.quantity(name) for name in ("outside", "stock", "scale", "inside"))
    inside_ratio, before = sympy.symbols("inside_ratio inside_before", positive=True)
    return (
        Derivation.start(
            "How much the inside grows",
            (
                Quantity(inside_ratio, "q", "how many times the inside of the drawing", "number"),
                inside,
                Quantity(before, "j", "inside in the drawing"),
                outside,
                stock,
                scale,
            ),
            equation(inside_ratio, inside.symbol / before),
            "how much the inside grows is the inside after over the inside before",
            subject="inside_ratio",
            example={
                inside_ratio: sympy.Rational(7, 4),
                inside.symbol: 28,
                before: 16,
                outside.symbol: 18,
                stock.symbol: 1,
                scale.symbol: sympy.Rational(5, 3),
            },
            limits=(
                *after.limits,
                Limit(
                    2 * stock.symbol < outside.symbol,
                    "In the drawing two boards of that thickness fill the whole outside: it has no inside to "
                    "compare with",
                ),
            ),
        )
        .then(
            Substitute(inside.symbol, after.result.rhs), "after scaling the inside is what we have just found"
        )
        .then(
            Substitute(before, after.result.rhs.subs(scale.symbol, 1)),
            "before scaling it is the same rule with a scale of 1",
        )
    )


@functools.cache
def mass_derivation() -> Derivation:
    """Derive how many times as heavy a part becomes when each of its three directions has a ratio of its own.

    Returns
    -------
    Derivation
        Speaks of `mass_ratio`, `length_ratio`, `width_ratio` and `thickness_ratio`, all numbers; its subject is
        the mass's.

    Source: the volume of a board; the same timber before and after.

    >>> mass_derivation().result
    Eq(mass_ratio, length_ratio*thickness_ratio*width_ratio)
    """
    mass_ratio, after, before = sympy.symbols("mass_ratio volume_after volume_before", positive=True)
    length, width, thickness = sympy.symbols("length width thickness", positive=True)
    ratios = sympy.symbols("length_ratio width_ratio thickness_ratio", positive=True)
    along, across, through = ratios
    return (
        Derivation.start(
            "How much heavier a part becomes",
            (
                Quantity(mass_ratio, "m", "how many times as heavy", "number"),
                Quantity(after, "V", "volume after scaling", "volume"),
                Quantity(before, "v", "volume in the drawing", "volume"),
                Quantity(length, r"\ell", "length in the drawing"),
                Quantity(width, "w", "width in the drawing"),
                Quantity(thickness, "t", "thickness in the drawing"),
                Quantity(along, r"k_\ell", "how many times as long", "number"),
                Quantity(across, "k_w", "how many times as wide", "number"),
                Quantity(through, "k_t", "how many times as thick", "number"),
            ),
            equation(mass_ratio, after / before),
            "of the same timber, twice the volume is twice the mass",
            subject="mass_ratio",
            example={
                mass_ratio: 4,
                after: 96,
                before: 24,
                length: 6,
                width: 4,
                thickness: 1,
                along: 2,
                across: 2,
                through: 1,
            },
        )
        .then(
            Substitute(before, length * width * thickness),
            "a part is as much wood as length by width by thickness",
        )
        .then(
            Substitute(after, along * length * across * width * through * thickness),
            "each direction is multiplied by its own number: the sizes of the drawing cancel, and only the "
            "three numbers are left",
        )
    )


@functools.cache
def board_mass_derivation() -> Derivation:
    """Derive the mass of a board that is scaled in length and width and keeps its thickness.

    Returns
    -------
    Derivation
        Takes up `mass_derivation`; speaks of `mass_ratio` and `scale`.

    Source: `mass_derivation`.

    >>> board_mass_derivation().result
    Eq(mass_ratio, scale**2)
    """
    rule = mass_derivation()
    scale = scale_derivation().quantity("scale")
    mass_ratio, along, across, through = (
        rule.quantity(name) for name in ("mass_ratio", "length_ratio", "width_ratio", "thickness_ratio")
    )
    return (
        Derivation.start(
            "A board with its thickness kept",
            (mass_ratio, scale, along, across, through),
            rule.result,
            "this is the rule for any three directions",
            subject="mass_ratio",
            example={
                mass_ratio.symbol: 4,
                scale.symbol: 2,
                along.symbol: 2,
                across.symbol: 2,
                through.symbol: 1,
            },
        )
        .then(Substitute(along.symbol, scale.symbol), "the board is scaled in length")
        .then(Substitute(across.symbol, scale.symbol), "and in width")
        .then(
            Substitute(through.symbol, sympy.Integer(1)),
            "the thickness is stock and stays, so the scale counts twice, not three times",
        )
    )


@functools.cache
def slenderness_derivation() -> Derivation:
    """Derive how slender a part is after scaling its length and keeping its thickness.

    Returns
    -------
    Derivation
        Speaks of `slenderness`, `scale` (numbers), `length` (of the drawing) and `stock` (lengths); its subject
        is the length over the thickness, after scaling.

    Source: a ratio of two lengths; slenderness as the builders of columns use the word (from memory).

    >>> slenderness_derivation().result
    Eq(slenderness, length*scale/stock)
    """
    slenderness, after, length, stock, scale = sympy.symbols(
        "slenderness length_after length stock scale", positive=True
    )
    return Derivation.start(
        "How slender a part becomes",
        (
            Quantity(slenderness, r"\lambda", "length over thickness, after scaling", "number"),
            Quantity(after, "L", "length after scaling"),
            Quantity(length, r"\ell", "length in the drawing"),
            Quantity(stock, "t", "thickness, kept"),
            Quantity(scale, "k", "scale", "number"),
        ),
        equation(slenderness, after / stock),
        "a part looks slender, and bends, by how many times its own thickness it is long",
        subject="slenderness",
        example={slenderness: 15, after: 30, length: 18, stock: 2, scale: sympy.Rational(5, 3)},
    ).then(
        Substitute(after, scale * length),
        "the length is scaled and the thickness is not: the part grows more slender by the scale itself",
    )


@functools.cache
def paper_step_derivation() -> Derivation:
    """Derive the enlargement from one sheet of the A series to the next.

    Returns
    -------
    Derivation
        Speaks of `scale` alone: long edge over short edge, and the step from one sheet to the next.

    Source: ISO 216, sheets of one shape, each half of the one before.

    >>> paper_step_derivation().result
    Eq(scale, sqrt(2))
    """
    scale = sympy.Symbol("scale", positive=True)
    return (
        Derivation.start(
            "The step from A4 to A3",
            (Quantity(scale, "k", "long edge over short edge of every sheet", "number"),),
            equation(scale, 2 / scale),
            "take the short edge as 1, so the long one is k; two such sheets side by side make one that is 2 "
            "long and k wide, and it has the same shape",
            subject="scale",
            example={scale: sympy.sqrt(2)},
        )
        .then(Multiply(scale), "both sides times k clear the fraction")
        .then(
            Isolate(scale, keep="an enlargement is more than nothing"),
            "the short edge has become what the long one was, so this is also how much a copy grows",
        )
    )
