"""How hard a body is to turn: about a line beside its centre, told as a radius, and for a plain board.

A board's own share needs no calculus: cut it in half, and each half is the same board at half the size.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def parallel_line_derivation() -> Derivation:
    """Derive the moment of inertia about a line from that about the parallel line through the centre.

    Returns
    -------
    Derivation
        Its result gives `moment` from `own_moment`, `mass` and `distance`.

    Source: the parallel-axis rule of every statics and mechanics text (from memory).

    >>> parallel_line_derivation().result
    Eq(moment, distance**2*mass + own_moment)
    """
    moment, mass = sympy.symbols("moment mass", positive=True)
    own_moment, distance = sympy.symbols("own_moment distance", nonnegative=True)
    off_centre = sympy.Symbol("off_centre", real=True)
    return Derivation.start(
        "Turning about a line beside the centre",
        (
            Quantity(moment, "I", "moment of inertia about the line", "number"),
            Quantity(own_moment, "I_G", "about the parallel line through the centre", "number"),
            Quantity(mass, "m", "mass", "number"),
            Quantity(distance, "d", "from the one line to the other"),
            Quantity(off_centre, r"\bar{s}", "from the line through the centre to the mean of all bits"),
        ),
        equation(moment, own_moment + 2 * distance * mass * off_centre + mass * distance**2),
        "a bit that lies s beyond the line through the centre lies s + d from the other. Its square is "
        "s² + 2ds + d²; add that up over all bits, each with its mass, and the squares s² are what the body "
        "has about its own centre",
        subject="moment",
        example={moment: 17, own_moment: 5, mass: 3, distance: 2, off_centre: 0},
        keeps={"distance": "it is a length, whichever side the line lies on"},
    ).then(
        Substitute(off_centre, sympy.Integer(0)),
        "the centre is where the bits on both sides balance, so that their mean is nothing",
    )


@functools.cache
def gyration_derivation() -> Derivation:
    """Derive the gyration radius: how far from the line all the mass would have to lie.

    Returns
    -------
    Derivation
        Its result gives `gyration_radius` from `moment` and `mass`.

    Source: the meaning of the gyration radius.

    >>> gyration_derivation().function("gyration_radius")(moment=12.0, mass=3.0)
    2.0
    """
    gyration_radius, moment, mass = sympy.symbols("gyration_radius moment mass", positive=True)
    return Derivation.start(
        "The gyration radius",
        (
            Quantity(gyration_radius, "k", "gyration radius"),
            Quantity(moment, "I", "moment of inertia", "number"),
            Quantity(mass, "m", "mass", "number"),
        ),
        equation(mass * gyration_radius**2, moment),
        "a ring of the same mass, as far from the line as this radius says, is as hard to turn",
        subject="gyration_radius",
        example={gyration_radius: 2, moment: 12, mass: 3},
    ).then(Isolate(gyration_radius), "the radius is wanted")


@functools.cache
def board_derivation() -> Derivation:
    """Derive the gyration radius of a thin board about the line across its middle.

    Returns
    -------
    Derivation
        Its result gives `gyration_radius` from `breadth`, measured square to the line.

    Source: a board's moment is m b² / 12 in every mechanics text (from memory); halving it needs no calculus.

    >>> board_derivation().result
    Eq(gyration_radius, sqrt(3)*breadth/6)
    """
    breadth, gyration_radius, of_half, distance = sympy.symbols(
        "breadth gyration_radius gyration_radius_of_half distance", positive=True
    )
    return (
        Derivation.start(
            "A board about its own middle",
            (
                Quantity(gyration_radius, "k", "gyration radius of the board"),
                Quantity(of_half, r"k_{\mathrm{half}}", "gyration radius of half the board"),
                Quantity(distance, "d", "from the board's middle to the middle of a half"),
                Quantity(breadth, "b", "breadth of the board"),
            ),
            equation(gyration_radius**2, of_half**2 + distance**2),
            "two halves make the board; each turns about its own middle, which lies to one side of the "
            "board's: the rule of the parallel line, divided by the mass",
            subject="gyration_radius",
            example={
                breadth: 12,
                gyration_radius: 2 * sympy.sqrt(3),
                of_half: sympy.sqrt(3),
                distance: 3,
            },
        )
        .then(
            Substitute(of_half, gyration_radius / 2),
            "half a board is the board at half the size, and a radius is a length like any other",
        )
        .then(Substitute(distance, breadth / 4), "the middle of a half lies a quarter of the breadth away")
        .then(Isolate(gyration_radius), "the radius is wanted; its square is b² over 12")
    )
