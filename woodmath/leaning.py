"""An end that is wider above than below: how far its edges go outward, how long they are, how much they lean.

Each edge of the end runs along a post, so what is measured along the post is measured on this slope.
"""

from __future__ import annotations

import functools

import sympy

from woodmath import bevel
from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, Substitute, equation


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
    top, bottom = sympy.symbols("top bottom", positive=True)
    outward = _outward()
    return Derivation.start(
        "How far an edge goes outward",
        (
            Quantity(top, "w_t", "width at the upper edge, measured level"),
            Quantity(bottom, "w_b", "width at the lower edge, measured level"),
            outward,
        ),
        equation(top, bottom + 2 * outward.symbol),
        "the upper edge is as wide as the lower one and what both sloping edges go outward; they lean alike",
        subject="outward",
        example={top: 10, bottom: 4, outward.symbol: 3},
    ).then(Isolate(outward.symbol), "we want what one edge goes outward: half of the difference")


@functools.cache
def slope_derivation() -> Derivation:
    """Derive how long the sloping edge of an end is.

    Returns
    -------
    Derivation
        Its result gives `slope_length` from `outward` and `height`.

    Source: Pythagoras.

    >>> slope_derivation().function("slope_length")(outward=3.0, height=4.0)
    5.0
    """
    slope = sympy.Symbol("slope_length", positive=True)
    outward, height = _outward(), _height()
    return Derivation.start(
        "The length of the sloping edge",
        (outward, height, Quantity(slope, "s", "length of the edge, along the slope")),
        equation(slope**2, height.symbol**2 + outward.symbol**2),
        "the height, what the edge goes outward and the edge itself close a right triangle, and the edge lies "
        "opposite the right angle; so says Pythagoras",
        subject="slope_length",
        example={outward.symbol: 3, height.symbol: 4, slope: 5},
        keeps={"outward": "an end is wider above than below unless you say otherwise"},
    ).then(
        Isolate(slope, keep="an edge has a length, and a length is more than nothing"),
        "we want the length itself, so take the root",
    )


@functools.cache
def lean_derivation() -> Derivation:
    """Derive how much an edge leans from upright.

    Returns
    -------
    Derivation
        Its result gives `lean` (degrees) from `outward` and `height`.

    Source: plane trigonometry, the bevel struck by an offset across a thickness.

    >>> round(lean_derivation().function("lean")(outward=4.0, height=4.0), 9)
    45.0
    """
    rule = bevel.derivation()
    angle, offset, thickness = (rule.quantity(name).symbol for name in ("angle", "offset", "thickness"))
    lean = sympy.Symbol("lean", real=True)
    outward, height = _outward(), _height()
    return (
        Derivation.start(
            "How much an edge leans from upright",
            (
                *rule.quantities,
                Quantity(lean, r"\sigma", "lean of the edge from upright, outward", "degrees"),
                outward,
                height,
            ),
            rule.result,
            "a leaning edge crosses the height as a bevel crosses a thickness",
            subject="lean",
            example={
                angle: sympy.pi / 4,
                offset: 1,
                thickness: 1,
                lean: sympy.pi / 4,
                outward.symbol: 1,
                height.symbol: 1,
            },
        )
        .then(Substitute(thickness, height.symbol), "what it crosses here is the height")
        .then(Substitute(offset, outward.symbol), "and the offset is what the edge goes outward on the way")
        .then(
            Substitute(angle, lean),
            "off square becomes off upright, since upright is square to the floor; inward counts as less than "
            "nothing",
        )
    )


def outward(top: float, bottom: float) -> float:
    """How far one edge of an end goes outward from the bottom to the top.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.

    Returns
    -------
    float
        In the same unit; 0 for an upright end, less than 0 for one that is narrower above.

    Raises
    ------
    ImpossibleShape
        If a width is not a positive number.

    Source: `outward_derivation`.

    >>> outward(top=13, bottom=10.5)
    1.25
    """
    return outward_derivation().function("outward")(top=top, bottom=bottom)


def slope_length(top: float, bottom: float, height: float) -> float:
    """Length of the sloping edge of an end.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.
    height : float
        Height of the end, measured upright, > 0, in the same unit.

    Returns
    -------
    float
        Along the slope, in the same unit; the height itself for an upright end.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: `slope_derivation`, Pythagoras.

    >>> slope_length(top=10, bottom=4, height=4)
    5.0
    """
    return slope_derivation().function("slope_length")(outward=outward(top, bottom), height=height)


def lean(top: float, bottom: float, height: float) -> float:
    """How much the sloping edge of an end leans from upright.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.
    height : float
        Height of the end, measured upright, > 0, in the same unit.

    Returns
    -------
    float
        Degrees from upright, between -90 and 90: outward more than 0, inward less.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: `lean_derivation`, plane trigonometry.

    >>> lean(top=300, bottom=300, height=320)
    0.0
    """
    return lean_derivation().function("lean")(outward=outward(top, bottom), height=height)


def _outward() -> Quantity:
    # Real, not positive: an end may lean inward, or stand upright.
    return Quantity(sympy.Symbol("outward", real=True), "o_e", "how far the edge goes outward, bottom to top")


def _height() -> Quantity:
    return Quantity(sympy.Symbol("height", positive=True), "h", "height of the end, measured upright")
