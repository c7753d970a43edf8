"""The tenon of a leaning post's foot: how much room it has in the post, and how much post it needs.

The shoulders are level and so stand at the splay to the post. An upright tenon crosses the leaning grain: the
post moves sideways past it, and what is left in the whole length of the tenon is its room.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Substitute, equation
from woodmath.splay_derivations import level_derivation

_RIGHT_TRIANGLE = {"square": 8, "splay": sympy.atan(sympy.Rational(3, 4)), "level_width": 10}


@functools.cache
def room_derivation() -> Derivation:
    """Derive how much room an upright tenon has in a leaning post, along the rocker.

    Returns
    -------
    Derivation
        Its result gives `room` from `square`, `splay` (degrees) and `tenon_length`.

    Source: plane trigonometry.

    >>> round(room_derivation().function("room")(square=1.75, splay=0.0, tenon_length=0.75), 9)
    1.75
    """
    square, splay, width, length = _square(), _splay(), _level_width(), _tenon_length()
    level = level_derivation()
    across = level.quantity("across").symbol
    room = sympy.Symbol("room", real=True)
    return Derivation.start(
        "The room for an upright tenon in a leaning post",
        (
            square,
            splay,
            width,
            length,
            Quantity(room, "r", "what is left of the post over the tenon's whole length, measured level"),
        ),
        equation(room, width.symbol - length.symbol * sympy.tan(splay.symbol)),
        "at the shoulder the tenon has the whole level cut; by its end the post has gone sideways by the "
        "tenon's length times the tangent of the splay, and there it has lost that much",
        subject="room",
        example={**_example(square, splay, width), length.symbol: 4, room: 7},
    ).then(
        Substitute(width.symbol, level.result.rhs.subs(across, square.symbol)),
        "the level cut follows from the post's square and its splay",
    )


@functools.cache
def post_needed_derivation() -> Derivation:
    """Derive how much post an upright tenon needs below the shoulder, measured along the post's inside face.

    Returns
    -------
    Derivation
        Its result gives `post_needed` from `tenon_length`, `splay` (degrees) and `inset`.

    Source: plane trigonometry: a step down and a step sideways, each seen along the post.

    >>> rule = post_needed_derivation().function("post_needed")
    >>> round(rule(tenon_length=0.75, splay=0.0, inset=0.25), 9)
    0.75
    """
    splay, length = _splay(), _tenon_length()
    needed = sympy.Symbol("post_needed", real=True)
    down, sideways = sympy.symbols("along_down along_sideways", real=True)
    inset = sympy.Symbol("inset", nonnegative=True)
    return (
        Derivation.start(
            "The post that the tenon of its foot needs",
            (
                splay,
                length,
                Quantity(inset, "m", "post's inside face to the tenon's nearer cheek, measured level"),
                Quantity(down, "d_1", "what the way down counts along the post"),
                Quantity(sideways, "d_2", "what the way sideways counts along the post"),
                Quantity(needed, "n", "post below the shoulder, measured along its inside face"),
            ),
            equation(needed, down - sideways),
            "from the inside face at the shoulder, the tenon's last corner lies a way down and a way sideways; "
            "the way down asks for post, and the way sideways, toward which the post leans, gives some back",
            subject="post_needed",
            example={
                splay.symbol: sympy.atan(sympy.Rational(3, 4)),
                length.symbol: 10,
                inset: 5,
                down: 8,
                sideways: 3,
                needed: 5,
            },
        )
        .then(
            Substitute(down, length.symbol * sympy.cos(splay.symbol)),
            "the way down is the tenon's length, and shows its cosine along the post",
        )
        .then(
            Substitute(sideways, inset * sympy.sin(splay.symbol)),
            "the way sideways is the inset, and shows its sine along the post",
        )
    )


def level_width(square: float, splay: float) -> float:
    """How wide a leaning post is in a level cut.

    Parameters
    ----------
    square : float
        Side of the post's section, > 0, in any length unit.
    splay : float
        Lean of the post in degrees from upright, between -90 and 90.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If the square is not more than 0.

    Source: `woodmath.splay_derivations.level_derivation`.

    >>> level_width(square=2, splay=0)
    2.0
    """
    return level_derivation().function("level")(across=square, splay=splay)


def room(square: float, splay: float, tenon_length: float) -> float:
    """How much room an upright tenon has in a leaning post, along the rocker.

    Parameters
    ----------
    square : float
        Side of the post's section, > 0, in any length unit.
    splay : float
        Lean of the post in degrees from upright, between -90 and 90; inward or outward makes no difference.
    tenon_length : float
        From the shoulder to the end, > 0, in the same unit.

    Returns
    -------
    float
        In the same unit, measured level; less than 0 where such a tenon has no room at all.

    Raises
    ------
    ImpossibleShape
        If a length is not more than 0.

    Source: `room_derivation`.

    >>> room(square=2, splay=0, tenon_length=1)
    2.0
    """
    return room_derivation().function("room")(square=square, splay=abs(splay), tenon_length=tenon_length)


def post_needed(tenon_length: float, splay: float, inset: float) -> float:
    """How much post an upright tenon needs below the shoulder, measured along the post's inside face.

    Parameters
    ----------
    tenon_length : float
        From the shoulder to the end, > 0, in any length unit.
    splay : float
        Lean of the post in degrees from upright, between -90 and 90, outward more than 0.
    inset : float
        From the post's inside face to the tenon's nearer cheek, measured level at the shoulder, 0 or more.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If a length cannot be.

    Source: `post_needed_derivation`.

    >>> post_needed(tenon_length=1, splay=0, inset=0.25)
    1.0
    """
    return post_needed_derivation().function("post_needed")(
        tenon_length=tenon_length, splay=splay, inset=inset
    )


def _square() -> Quantity:
    return Quantity(sympy.Symbol("square", positive=True), "q", "side of the post's square section")


def _splay() -> Quantity:
    return level_derivation().quantity("splay")


def _level_width() -> Quantity:
    return Quantity(sympy.Symbol("level_width", positive=True), "w_h", "width of the post in a level cut")


def _tenon_length() -> Quantity:
    return Quantity(sympy.Symbol("tenon_length", positive=True), r"\ell", "shoulder to the tenon's end")


def _example(*quantities: Quantity) -> dict[sympy.Symbol, sympy.Expr]:
    return {quantity.symbol: _RIGHT_TRIANGLE[quantity.name] for quantity in quantities}
