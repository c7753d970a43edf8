"""A board that lies loose between two faces that lean outward is a wedge, and pushes them apart."""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def derivation() -> Derivation:
    """Derive how hard a loose bottom pushes each of two leaning sides outward.

    Returns
    -------
    Derivation
        Its result gives `push` from `load` and `splay` (degrees).

    Source: statics of a wedge without friction.

    >>> round(derivation().function("push")(load=2.0, splay=45.0), 9)
    1.0
    """
    load, push, against = sympy.symbols("load push against", positive=True)
    splay = sympy.Symbol("splay", positive=True)
    return (
        Derivation.start(
            "The push of a wedge",
            (
                Quantity(load, "W", "what lies on the board, with the board", "number"),
                Quantity(against, "N", "how hard each side presses square to its face", "number"),
                Quantity(splay, r"\sigma", "lean of the sides from upright", "degrees"),
                Quantity(push, "F", "how much of that is level, outward on each side", "number"),
            ),
            equation(load, 2 * against * sympy.sin(splay)),
            "a smooth face presses square to itself; leaning by the splay, it carries the sine of that upward, and "
            "two sides carry the load",
            subject="push",
            example={load: 2, splay: sympy.pi / 4, push: 1, against: sympy.sqrt(2)},
        )
        .then(
            Substitute(against, push / sympy.cos(splay)),
            "the level part of what a side presses is its cosine, so all of it is the push over the cosine",
        )
        .then(Isolate(push), "we want the push")
    )


def push_for_load(splay: float) -> float:
    """How many times the load a loose board pushes each of two leaning sides outward.

    Parameters
    ----------
    splay : float
        Lean of the sides in degrees from upright, more than 0 and less than 90.

    Returns
    -------
    float
        A number; friction would make it less.

    Raises
    ------
    ImpossibleShape
        If the sides do not lean outward.

    Source: `derivation`.

    >>> round(push_for_load(45.0), 9)
    0.5
    """
    return derivation().function("push")(load=1.0, splay=splay)
