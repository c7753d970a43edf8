"""How an end that is wider above than below follows from its widths and its height, step by step.

Each edge of the end runs along a post, so what is measured along the post is measured on this slope, and what
is measured square to the post is not what a level rule reads.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath import bevel
from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Add, Isolate, Substitute, equation
from woodmath.quantities import worded

# Outward, splay and place are real, not positive: an end may lean inward or stand upright, and a post has a foot.
_WORDS = MappingProxyType(
    {
        "top": ("w_t", "width at the upper edge, measured level", "length", "positive"),
        "bottom": ("w_b", "width at the lower edge, measured level", "length", "positive"),
        "outward": ("o_e", "how far the edge goes outward, bottom to top", "length", "real"),
        "height": ("h", "height of the end, measured upright", "length", "positive"),
        "slope_length": ("s", "length of the edge, along the slope", "length", "positive"),
        "splay": (r"\sigma", "lean of the edge from upright, outward", "degrees", "real"),
        "place": (
            "y",
            "height of the level cut above the lower edge, less than nothing below it",
            "length",
            "real",
        ),
        "beside": ("o_y", "how far the edge has gone outward at that height", "length", "real"),
        "width": ("w_y", "width between the shoulders at that height, measured level", "length", "positive"),
        "across": ("c", "a thickness on either side, measured square to the edge", "length", "positive"),
        "level": (r"\ell", "what a level rule reads of that thickness", "length", "positive"),
        "over_all": ("W", "width over both thicknesses, measured level", "length", "positive"),
        "lower_corner": (r"\lambda", "corner of the panel at its lower edge", "degrees", "positive"),
        "upper_corner": (r"\mu", "corner of the panel at its upper edge", "degrees", "positive"),
        "grain_angle": (r"\gamma", "from the grain to a tenon cut square to the edge", "degrees", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that the derivations of the splayed end speak of, always with the same letter.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("top", "bottom")]
    ['w_t', 'w_b']
    """
    return worded(_WORDS, names)


@functools.cache
def outward_derivation() -> Derivation:
    """Derive how far one edge of an end goes outward from the bottom to the top.

    Returns
    -------
    Derivation
        Its result gives `outward` from `top` and `bottom`; less than 0 where the end is narrower above.

    Source: plane geometry, widths set end to end.

    >>> outward_derivation().function("outward")(top=13.0, bottom=10.5)
    1.25
    """
    spoken_of = quantities("top", "bottom", "outward")
    top, bottom, outward = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "How far an edge goes outward",
        spoken_of,
        equation(top, bottom + 2 * outward),
        "the upper edge is as wide as the lower one and what both sloping edges go outward; they lean alike",
        subject="outward",
        example={top: 10, bottom: 4, outward: 3},
    ).then(Isolate(outward), "we want what one edge goes outward: half of the difference")


@functools.cache
def slope_derivation() -> Derivation:
    """Derive how long the sloping edge of an end is.

    Returns
    -------
    Derivation
        Its result gives `slope_length` from `outward` and `height`.

    Source: Pythagoras; as a rafter follows from its run and its rise.

    >>> slope_derivation().function("slope_length")(outward=3.0, height=4.0)
    5.0
    """
    spoken_of = quantities("outward", "height", "slope_length")
    outward, height, slope = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The length of the sloping edge",
        spoken_of,
        equation(slope**2, height**2 + outward**2),
        "the height, what the edge goes outward and the edge itself close a right triangle, and the edge lies "
        "opposite the right angle; so says Pythagoras",
        subject="slope_length",
        example={outward: 3, height: 4, slope: 5},
        keeps={"outward": "an end is wider above than below unless you say otherwise"},
    ).then(
        Isolate(slope, keep="an edge has a length, and a length is more than nothing"),
        "we want the length itself, so take the root",
    )


@functools.cache
def splay_derivation() -> Derivation:
    """Derive how much an edge leans from upright.

    Returns
    -------
    Derivation
        Its result gives `splay` (degrees) from `outward` and `height`.

    Source: plane trigonometry, the bevel struck by an offset across a thickness.

    >>> round(splay_derivation().function("splay")(outward=4.0, height=4.0), 9)
    45.0
    """
    rule = bevel.derivation()
    angle, offset, thickness = (rule.quantity(name).symbol for name in ("angle", "offset", "thickness"))
    spoken_of = quantities("splay", "outward", "height")
    splay, outward, height = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How much an edge leans from upright",
            (*rule.quantities, *spoken_of),
            rule.result,
            "a leaning edge crosses the height as a bevel crosses a thickness",
            subject="splay",
            example={
                angle: sympy.pi / 4,
                offset: 1,
                thickness: 1,
                splay: sympy.pi / 4,
                outward: 1,
                height: 1,
            },
        )
        .then(Substitute(thickness, height), "what it crosses here is the height")
        .then(Substitute(offset, outward), "and the offset is what the edge goes outward on the way")
        .then(
            Substitute(angle, splay),
            "off square becomes off upright, since upright is square to the floor; inward counts as less than "
            "nothing",
        )
    )


@functools.cache
def width_derivation() -> Derivation:
    """Derive how wide the end is between its shoulders at any height.

    Returns
    -------
    Derivation
        Its result gives `width` from `bottom`, `top`, `height` and `place`.

    Source: similar triangles.

    >>> width_derivation().function("width")(bottom=10.0, top=14.0, height=8.0, place=4.0)
    12.0
    """
    spoken_of = quantities("bottom", "top", "height", "outward", "place", "beside", "width")
    bottom, top, height, outward, place, beside, width = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How wide the end is at any height",
            spoken_of,
            equation(width, bottom + 2 * beside),
            "at every height the end is as wide as below and what both edges have gone outward so far",
            subject="width",
            example={bottom: 10, top: 14, height: 8, outward: 2, place: 4, beside: 1, width: 12},
        )
        .then(
            Substitute(beside, outward * place / height),
            "the small triangle up to this height has the same corners as the large one up to the top, so its "
            "sides stand in the same ratio",
        )
        .then(
            Substitute(outward, outward_derivation().solved_for("outward").rhs),
            "what one edge goes outward in all is half of the difference of the widths",
        )
    )


@functools.cache
def level_derivation() -> Derivation:
    """Derive what a level rule reads of a thickness that is measured square to a leaning edge.

    Returns
    -------
    Derivation
        Its result gives `level` from `across` and `splay`.

    Source: plane trigonometry, the cosine in a right triangle.

    >>> round(level_derivation().function("level")(across=1.0, splay=60.0), 9)
    2.0
    """
    spoken_of = quantities("across", "level", "splay")
    across, level, splay = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "What a level rule reads of a leaning thickness",
        spoken_of,
        equation(sympy.cos(splay), across / level),
        "square to the edge lies the thickness, level lies the rule, and between the two is the splay: the "
        "thickness is the side beside that angle, the reading lies opposite the right angle",
        subject="level",
        example={across: 1, level: 2, splay: sympy.pi / 3},
        keeps={"splay": "an end is wider above than below unless you say otherwise"},
    ).then(
        Isolate(level),
        "we want the reading: a level cut through a leaning post is longer than the post is thick",
    )


@functools.cache
def over_all_derivation() -> Derivation:
    """Derive the width over two posts, or over two tenon ends, measured level.

    Returns
    -------
    Derivation
        Its result gives `over_all` from `width`, `across` and `splay`.

    Source: `level_derivation`, widths set end to end.

    >>> round(over_all_derivation().function("over_all")(width=10.0, across=1.0, splay=60.0), 9)
    14.0
    """
    spoken_of = quantities("width", "across", "level", "splay", "over_all")
    width, across, level, splay, over_all = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The width over the posts, or over the tenon ends",
        spoken_of,
        equation(over_all, width + 2 * level),
        "from shoulder to shoulder, and on either side what a level rule reads of the post or the tenon",
        subject="over_all",
        example={width: 10, across: 1, level: 2, splay: sympy.pi / 3, over_all: 14},
        keeps={"splay": "an end is wider above than below unless you say otherwise"},
    ).then(
        Substitute(level, level_derivation().solved_for("level").rhs),
        "the post's square and the tenon's reach are measured square to the edge; level they read more",
    )


@functools.cache
def lower_corner_derivation() -> Derivation:
    """Derive the panel's corner at its lower edge.

    Returns
    -------
    Derivation
        Its result gives `lower_corner` (degrees) from `splay`.

    Source: plane geometry.

    >>> round(lower_corner_derivation().function("lower_corner")(splay=10.0), 9)
    100.0
    """
    spoken_of = quantities("lower_corner", "splay")
    corner, splay = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The corner at the lower edge",
        spoken_of,
        equation(corner - splay, sympy.pi / 2),
        "an upright edge would stand square to the level one; this one leans on by the splay",
        subject="lower_corner",
        example={corner: 2 * sympy.pi / 3, splay: sympy.pi / 6},
    ).then(Add(splay), "we want the corner itself")


@functools.cache
def upper_corner_derivation() -> Derivation:
    """Derive the panel's corner at its upper edge.

    Returns
    -------
    Derivation
        Its result gives `upper_corner` (degrees) from `splay`.

    Source: plane geometry.

    >>> round(upper_corner_derivation().function("upper_corner")(splay=10.0), 9)
    80.0
    """
    spoken_of = quantities("upper_corner", "splay")
    corner, splay = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "The corner at the upper edge",
        spoken_of,
        equation(corner + splay, sympy.pi / 2),
        "an upright let down from the upper edge makes a right triangle with it and the slope; its two sharp "
        "corners, this one and the splay, make a right angle together",
        subject="upper_corner",
        example={corner: sympy.pi / 3, splay: sympy.pi / 6},
    ).then(Add(-splay), "we want the corner itself")


@functools.cache
def grain_derivation() -> Derivation:
    """Derive at what angle to level grain a tenon runs that is cut square to a sloping edge.

    Returns
    -------
    Derivation
        Its result gives `grain_angle` (degrees) from `splay`.

    Source: plane geometry.

    >>> round(grain_derivation().function("grain_angle")(splay=10.0), 9)
    10.0
    """
    spoken_of = quantities("grain_angle", "upper_corner", "splay")
    grain, corner, splay = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "A tenon square to the edge does not follow the grain",
            spoken_of,
            equation(grain + corner, sympy.pi / 2),
            "grain runs level, as the upper edge does, so it meets the slope at the panel's upper corner; the "
            "tenon stands square to the slope, and the two angles fill that right angle",
            subject="grain_angle",
            example={grain: sympy.pi / 6, corner: sympy.pi / 3, splay: sympy.pi / 6},
        )
        .then(
            Substitute(corner, upper_corner_derivation().solved_for("upper_corner").rhs),
            "the upper corner is what the splay leaves of a right angle",
        )
        .then(Isolate(grain), "what is left is the splay itself, whatever the tenon's size")
    )
